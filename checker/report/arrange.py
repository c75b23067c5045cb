"""The parts of a report, the same for every form it takes: what comes first, for whom, in which words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Literal

from checker.facts import Ref
from checker.findings.finding import Finding, MissingItem, Result
from checker.findings.words import label

Reader = Literal["contractor", "reviewer"]
NOT_AN_APPROVAL = (
    "This is a check of the plan's own statements before it is handed in. It is no approval, no inspection and no "
    "engineering. The code as adopted where the house stands governs, and the authority named beside each point "
    "decides."
)
LICENSED = {
    "licensed engineer": "a licensed engineer",
    "licensed designer": "a licensed designer",
}


@dataclass(frozen=True, slots=True)
class Numbered:
    """A finding with the number by which the report speaks of it."""

    number: int
    finding: Finding


@dataclass(frozen=True, slots=True)
class Group:
    """A part of the report: findings and missing items under a heading."""

    title: str
    lead: str = ""
    findings: tuple[Numbered, ...] = ()
    missing: tuple[MissingItem, ...] = ()

    @property
    def empty(self) -> bool:
        """Whether there is nothing under the heading."""
        return not self.findings and not self.missing


@dataclass(frozen=True, slots=True)
class Together:
    """Elements of one kind that lack the same plan lines, with those lines; the checks of all wait for each line."""

    refs: tuple[Ref, ...]
    items: tuple[MissingItem, ...]


def together(missing: Iterable[MissingItem]) -> list[Together]:
    """Put elements that lack the same lines together, in the order of the first of each."""
    by_element: dict[Ref, list[MissingItem]] = {}
    for each in missing:
        by_element.setdefault(each.item.ref, []).append(each)
    alike: dict[tuple[object, ...], list[Ref]] = {}
    for ref, items in by_element.items():
        items.sort(key=lambda each: each.perhaps)
        lines = tuple((each.item.name, each.perhaps, each.severity, each.due) for each in items)
        alike.setdefault((ref.kind, ref.state, lines), []).append(ref)
    groups: list[Together] = []
    for refs in alike.values():
        merged = []
        for position, first in enumerate(by_element[refs[0]]):
            waiting = dict.fromkeys(key for ref in refs for key in by_element[ref][position].waiting)
            merged.append(replace(first, waiting=tuple(waiting)))
        groups.append(Together(tuple(refs), tuple(merged)))
    return groups


@dataclass(frozen=True, slots=True)
class Arrangement:
    """A whole report, in order."""

    title: str
    basis: tuple[str, ...]
    notes: tuple[str, ...]
    sentence: str
    groups: tuple[Group, ...]
    clear: tuple[tuple[str, int], ...]
    outside: int
    cautions: tuple[tuple[str, str], ...]
    closing: tuple[str, ...]
    numbers: dict[str, int] = field(default_factory=dict)


def arrange(result: Result, reader: Reader = "contractor", *, everything: bool = False) -> Arrangement:
    """Put a result in the order of its reader: by consequence, or by sheet, discipline and authority."""
    shown = [each for each in result.findings if each.listed and each.verdict in ("does not meet", "excused")]
    if everything:
        shown += [each for each in result.findings if each.verdict == "meets" and each.listed]
    numbered = [Numbered(number, each) for number, each in enumerate(_in_order(shown), 1)]
    groups = _by_consequence(result, numbered) if reader == "contractor" else _by_sheet(result, numbered)
    return Arrangement(
        result.plan,
        tuple(_basis(result)),
        tuple(_notes(result)),
        sentence(result),
        tuple(group for group in groups if not group.empty),
        tuple(_clear(result)),
        sum(1 for each in result.findings if not each.listed and each.verdict in ("cannot tell", "does not meet")),
        tuple(_cautions(result)),
        tuple(_closing(result)),
        {each.finding.key: each.number for each in numbered},
    )


def _in_order(findings: Iterable[Finding]) -> list[Finding]:
    """In the order of the groups for the contractor; the reviewer reads the same numbers."""

    def rank(each: Finding) -> int:
        if each.verdict != "does not meet":
            return 2 if each.verdict == "excused" else 5
        if each.severity == "danger":
            return 0
        return 3 if each.severity == "advice" else 1 if each.in_scope else 4

    return sorted(findings, key=rank)


def count(number: int, one: str, many: str = "") -> str:
    """A number with its noun."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def sentence(result: Result) -> str:
    """The verdict in one sentence; it never sounds like an approval."""
    faults = [each for each in result.findings if each.is_fault]
    dangers = sum(1 for each in faults if each.severity == "danger")
    missing = sum(1 for each in result.missing if each.due_now and each.severity != "advice" and not each.perhaps)
    amounts = (
        (dangers, "danger to remove", "dangers to remove"),
        (len(faults) - dangers, "correction to make", "corrections to make"),
        (missing, "missing item to supply", "missing items to supply"),
    )
    parts = [count(number, one, many) for number, one, many in amounts if number]
    return f"{_and(parts)} before submitting." if parts else "No conflict was found in what the plan states."


def _and(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def _basis(result: Result) -> list[str]:
    adopted = result.adopted
    lines = [f"{adopted.title}"]
    for each in adopted.sets:
        if each.name != adopted.name:
            since = f", adopted {each.since}" if each.since else ""
            edition = f" {each.edition}" if each.document != "common practice" else ""
            lines.append(f"{each.document}{edition}{since}")
        elif len(adopted.sets) == 1 or each.name == "us":
            lines.append(f"{each.document} {each.edition}")
    if adopted.amendments:
        lines.append(count(len(adopted.amendments), "local amendment"))
    return lines


def _notes(result: Result) -> list[str]:
    adopted, notes = result.adopted, []
    taken = [f"{each.document} {each.edition}" for each in adopted.sets if each.newest_taken]
    if taken:
        why = "names no edition" if adopted.date else "gives no permit date"
        notes.append(f"The plan {why}, so the newest was taken: {', '.join(taken)}.")
    if not result.stage:
        notes.append("The plan gives no stage, so what is due at the application was looked for.")
    for each in adopted.suspended:
        reason = f": {each.reason}" if each.reason else "."
        notes.append(f"Not enforced here: {each.title} ({each.cite}){reason}")
    ruled = {rule.trade for rule in adopted.rules}
    bare = [trade for trade in result.scope if trade not in ruled]
    if bare:
        notes.append(f"The scope names {', '.join(bare)}, of which no rule in force speaks: nothing was checked there.")
    memory = sum(
        1
        for each in result.findings
        if each.cite
        and each.cite.known == "from memory"
        and each.listed
        and each.verdict in ("does not meet", "cannot tell")
    )
    if memory:
        notes.append(
            f"{count(memory, 'point')} below rest on a citation from memory: look the section up before you rely on it."
        )
    return notes


def _by_consequence(result: Result, numbered: list[Numbered]) -> list[Group]:
    def those(verdict: str, severity: str, in_scope: bool = True) -> tuple[Numbered, ...]:
        return tuple(
            each
            for each in numbered
            if each.finding.verdict == verdict
            and each.finding.severity == severity
            and (each.finding.in_scope == in_scope or severity == "danger")
        )

    now = [each for each in result.missing if each.due_now]
    later = tuple(each for each in result.missing if not each.due_now)
    return [
        Group("Dangers", "Someone can be hurt. Settle these first.", those("does not meet", "danger")),
        Group("Corrections", "A reviewer or inspector would mark these.", those("does not meet", "correction")),
        Group(
            "Missing",
            "Nothing can be said of these until the plan says more; where danger waits, it comes first.",
            missing=tuple(each for each in now if each.severity != "advice"),
        ),
        Group(
            "Excused",
            "Does not meet the rule; a named exception of the law lets it stand.",
            tuple(each for each in numbered if each.finding.verdict == "excused"),
        ),
        Group("Advice", "", those("does not meet", "advice"), tuple(each for each in now if each.severity == "advice")),
        Group(
            "Outside this permit",
            "Not in the permit's scope; no fault of this application.",
            those("does not meet", "correction", False),
        ),
        Group("Not due yet", "Due at a later stage of the work; no fault now.", missing=later),
        Group("Meets", "", tuple(each for each in numbered if each.finding.verdict == "meets")),
    ]


def _by_sheet(result: Result, numbered: list[Numbered]) -> list[Group]:
    groups: dict[tuple[str, str, str], tuple[list[Numbered], list[MissingItem]]] = {}
    trades = {each.key: each.trade for each in result.findings}
    for each in numbered:
        found = each.finding
        if found.verdict == "does not meet" and not (found.in_scope or found.severity == "danger"):
            continue
        groups.setdefault((found.sheet, found.trade, found.authority), ([], []))[0].append(each)
    for item in (each for each in result.missing if each.due_now):
        key = (item.sheets[0], trades[item.waiting[0]], item.authorities[0])
        groups.setdefault(key, ([], []))[1].append(item)
    arranged = [
        Group(" · ".join(dict.fromkeys((sheet.capitalize(), trade, authority))), "", tuple(findings), tuple(missing))
        for (sheet, trade, authority), (findings, missing) in sorted(groups.items())
    ]
    outside = tuple(each for each in numbered if not each.finding.in_scope and each.finding.severity != "danger")
    arranged.append(Group("Outside this permit", "", outside))
    later = tuple(each for each in result.missing if not each.due_now)
    arranged.append(Group("Not due yet", "Due at a later stage; no fault now.", missing=later))
    return arranged


def _clear(result: Result) -> list[tuple[str, int]]:
    """How many checks raised no conflict, by trade."""
    counts: dict[str, int] = {}
    for each in result.findings:
        if each.verdict == "meets":
            counts[each.trade] = counts.get(each.trade, 0) + 1
    return sorted(counts.items())


def _cautions(result: Result) -> list[tuple[str, str]]:
    """The usual caution of each trade that the report speaks of, once."""
    spoken = {each.trade for each in result.findings if each.listed and each.verdict != "does not apply"}
    return [(trade, text) for trade, text in sorted(result.adopted.cautions.items()) if trade in spoken]


def _closing(result: Result) -> list[str]:
    lines = []
    for decider, who in LICENSED.items():
        named = sorted(
            {
                each.title
                for each in result.findings
                if each.decides == decider and each.listed and each.verdict in ("does not meet", "cannot tell")
            }
        )
        if named:
            lines.append(f"For {who}: {', '.join(named).lower()}.")
    assumed = sorted({name for each in result.findings for name in each.rests_on if each.listed})
    if assumed:
        lines.append(f"Some points rest on assumptions of the ruleset: {', '.join(label(name) for name in assumed)}.")
    untold = sum(1 for each in result.findings if each.verdict == "cannot tell" and each.listed)
    if not any(each.is_fault for each in result.findings):
        lines.append(
            f"No conflict was found in what was stated, and {count(untold, 'point')} could not be told. "
            "That is not a permit."
        )
    return lines
