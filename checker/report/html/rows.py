"""What the templates print: findings, missing items, calculations and assumptions, put into words row by row."""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from importlib import import_module
from itertools import groupby
from pathlib import PurePosixPath, PureWindowsPath

from checker.derive.registry import DESIGN
from checker.facts import Calculation, Fact, Item, Ref
from checker.findings.finding import Because, Finding, MissingItem, Result
from checker.findings.words import Sentences, element_name, entry_value, label
from checker.glossary import glossary
from checker.report.arrange import Arrangement, Group, Numbered, Reader, arrange, together
from checker.ruleset.adopted import AdoptedAssumption, Applied, Citation
from checker.units import Dimension, show

_LONG_INPUTS = 4
_CHECKS_NAMED = 6
_CALC = "checker.calc."
_MARK = {"excused": "excused", "meets": "meets"}


@dataclass(frozen=True, slots=True)
class Link:
    """A word that leads to another place of the page; no place if there is none."""

    text: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Element:
    """An element as the page speaks of it: kind and id, its own name if it has one, its plan line."""

    text: str
    name: str
    line: int | None


@dataclass(frozen=True, slots=True)
class Reason:
    """One value that a finding rests on."""

    what: str
    value: str
    origin: Link
    how: str
    line: int | None


@dataclass(frozen=True, slots=True)
class Change:
    """A local amendment in words."""

    what: str
    base: str
    now: str
    cite: str
    reason: str
    target: str
    title: str


@dataclass(frozen=True, slots=True)
class Entry:
    """A finding as the page prints it."""

    number: int
    found: Finding
    element: Element
    others: tuple[Element, ...]
    mark: str
    word: str
    reasons: tuple[Reason, ...]
    changes: tuple[Change, ...]
    cite: str
    excuse: str
    assumed: tuple[Link, ...]
    remedy: str
    line: int | None


@dataclass(frozen=True, slots=True)
class Lacking:
    """A plan line that is not there."""

    item: MissingItem
    checks: tuple[Link, ...]
    more: int


@dataclass(frozen=True, slots=True)
class Part:
    """A group of the arrangement: its findings, and its missing items by element."""

    anchor: str
    title: str
    lead: str
    size: int
    perhaps: int
    entries: tuple[Entry, ...]
    lacking: tuple[tuple[tuple[Element, ...], tuple[Lacking, ...]], ...]


@dataclass(frozen=True, slots=True)
class Waiting:
    """A check that cannot tell."""

    anchor: str
    found: Finding
    element: Element
    cite: str


@dataclass(frozen=True, slots=True)
class Sum:
    """A value that was computed; one that follows without a formula has neither source nor function."""

    anchor: str
    what: str
    meaning: str
    inputs: tuple[str, ...]
    result: str
    stated: str
    source: str
    function: str


@dataclass(frozen=True, slots=True)
class Assumed:
    """A value that the ruleset assumes."""

    anchor: str
    assumption: AdoptedAssumption
    value: str
    cite: str
    changes: tuple[Change, ...]
    findings: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Page:
    """Everything on the page, in order."""

    arranged: Arrangement
    file: str
    parts: tuple[Part, ...]
    waiting: tuple[Waiting, ...]
    sums: tuple[tuple[Element, tuple[Sum, ...]], ...]
    plain_sums: tuple[tuple[Element, tuple[Sum, ...]], ...]
    assumed: tuple[Assumed, ...]
    amendments: tuple[Change, ...]
    cautions: tuple[tuple[str, tuple[str, ...]], ...]
    unfolded: bool = False
    """Whether the calculations lie open, for a reader who wants everything."""


def page_of(result: Result, reader: Reader, *, everything: bool = False) -> Page:
    """Put a result into the rows of a page.

    result: what a check came to; reader: whose order it takes; everything: what meets too.
    """
    return _Rows(result, reader, everything).page()


def source_of(function: str) -> str:
    """The first entry under References in the docstring of a calculation; "" if there is none.

    function: module and name, such as checker.calc.stair.riser_height.
    """
    return _source(function)


@lru_cache(maxsize=512)
def _source(function: str) -> str:
    module, _, name = function.rpartition(".")
    text = inspect.getdoc(getattr(import_module(module), name)) or ""
    lines = iter(text.splitlines())
    entry: list[str] = []
    for line in lines:
        if line.strip() == "References":
            break
    for line in lines:
        if not line.startswith(" ") or (entry and line.lstrip().startswith("[")):
            break
        entry.append(line.strip())
    return " ".join(entry).removeprefix("[1]").strip()


def change_of(applied: Applied, titles: Mapping[str, str]) -> Change:
    """A local amendment in words. titles: of what can be amended, by id."""
    what = " ".join(label(step) for step in applied.what.removeprefix("require.").split("."))
    title = titles.get(applied.target, "")
    return Change(what, applied.base, applied.now, applied.cite, applied.reason, applied.target, title)


def file_name(file: str) -> str:
    """A plan's name for others to read: a path from the root of a machine is cut to its last part."""
    if PurePosixPath(file).is_absolute() or PureWindowsPath(file).is_absolute():
        return PureWindowsPath(file).name
    return file


class _Rows:
    """Makes the rows of one page."""

    def __init__(self, result: Result, reader: Reader, everything: bool) -> None:
        self.result = result
        self.reader = reader
        self.everything = everything
        self.arranged = arrange(result, reader, everything=everything)
        self.words = Sentences(result.facts, glossary().with_conclusions(result.adopted.conclusions), result.units)
        self.amendable = {each.id: each.title for each in result.adopted.rules}
        self.amendable |= {id_: each.title for id_, each in result.adopted.tables.items()}
        self.amendable |= {name: each.title for name, each in result.adopted.assumptions.items()}
        self.waits = [
            each
            for each in result.findings
            if each.verdict == "cannot tell" and each.listed and each.key not in self.arranged.numbers
        ]
        self.titles = {each.key: each.title for each in result.findings}
        self.anchors = {each.key: f"waits-{number}" for number, each in enumerate(self.waits, 1)}
        self.anchors |= {key: f"finding-{number}" for key, number in self.arranged.numbers.items()}
        rested_on = None if everything else self._rested_on()
        computed = (
            (Item(ref, name), fact)
            for ref, known in sorted(result.facts.elements.items())
            for name, fact in sorted(known.values.items())
            if (fact.calculation or fact.computed) and (rested_on is None or Item(ref, name) in rested_on)
        )
        self.computed: dict[Item, tuple[str, Fact]] = {
            item: (f"sum-{number}", fact) for number, (item, fact) in enumerate(computed, 1)
        }
        self.assumptions = {
            name: f"assumption-{number}" for number, name in enumerate(sorted(result.adopted.assumptions), 1)
        }

    def _rested_on(self) -> set[Item]:
        """Every value that something the page lists rests on, directly or through a calculation."""
        stack = [
            because.item
            for each in self.result.findings
            if each.listed and each.verdict not in ("meets", "does not apply")
            for because in each.because
        ]
        found: set[Item] = set()
        while stack:
            item = stack.pop()
            fact = self.result.facts.value(item)
            if item in found or fact is None:
                continue
            found.add(item)
            calculation = fact.calculation or fact.computed
            stack += [each.item for each in calculation.inputs if each.item] if calculation else []
        return found

    def page(self) -> Page:
        arranged = self.arranged
        sums = [(self._element(item.ref), self._sum(item)) for item in self.computed]
        return Page(
            arranged,
            file_name(self.result.file),
            tuple(self._part(number, group) for number, group in enumerate(arranged.groups, 1)),
            tuple(
                Waiting(self.anchors[each.key], each, self._element(each.subject), _cited(each.cite))
                for each in self.waits
            ),
            _by_element(each for each in sums if each[1].function),
            _by_element(each for each in sums if not each[1].function),
            tuple(self._assumed(name) for name in self.assumptions),
            tuple(change_of(each, self.amendable) for each in self.result.adopted.amendments),
            tuple(_by_trade(arranged.cautions)),
            self.everything,
        )

    def _element(self, ref: Ref) -> Element:
        text = element_name(ref)
        known = self.result.facts.elements.get(ref)
        name = self.result.names.get(ref, text)
        return Element(text, "" if name == text else name, known.place.line if known and known.place else None)

    def _part(self, number: int, group: Group) -> Part:
        perhaps = sum(1 for each in group.missing if each.perhaps)
        return Part(
            f"part-{number}",
            group.title,
            group.lead,
            len(group.findings) + len(group.missing) - perhaps,
            perhaps,
            tuple(self._entry(each) for each in group.findings),
            tuple(
                (tuple(self._element(ref) for ref in each.refs), tuple(self._lacking(item) for item in each.items))
                for each in together(group.missing)
            ),
        )

    def _entry(self, numbered: Numbered) -> Entry:
        found = numbered.finding
        mark = _MARK.get(found.verdict, found.severity)
        outside = found.verdict == "does not meet" and not found.in_scope
        return Entry(
            numbered.number,
            found,
            self._element(found.subject),
            tuple(self._element(ref) for ref in found.elements if ref != found.subject),
            mark,
            f"{mark}, outside this permit" if outside else mark,
            tuple(self._reason(each, found.subject) for each in found.because if not each.behind or self.everything),
            tuple(change_of(each, self.amendable) for each in found.amended_by),
            _cited(found.cite),
            f"{found.excused.replace('-', ' ')} — {found.excuse_cite}" if found.excused else "",
            tuple(Link(label(name), self.assumptions.get(name, "")) for name in found.rests_on),
            found.remedy if self.reader == "contractor" or found.severity == "danger" else "",
            found.place.line if found.place else None,
        )

    def _reason(self, because: Because, subject: Ref) -> Reason:
        item = because.item
        whose = "" if item.ref == subject else f" of {element_name(item.ref)}"
        anchor = self.computed[item][0] if because.origin == "computed" and item in self.computed else ""
        line = because.place.line if because.place and because.origin == "stated" else None
        return Reason(f"{label(item.name)}{whose}", because.shown, Link(because.origin, anchor), because.how, line)

    def _lacking(self, item: MissingItem) -> Lacking:
        named: dict[str, Link] = {}
        for key in item.waiting:
            rule = key.split("|")[0]
            named.setdefault(rule, Link(self.titles.get(key, rule), self.anchors.get(key, "")))
        links = tuple(named.values())
        return Lacking(item, links[:_CHECKS_NAMED], max(0, len(links) - _CHECKS_NAMED))

    def _sum(self, item: Item) -> Sum:
        anchor, fact = self.computed[item]
        calculation = fact.calculation or fact.computed
        assert calculation is not None
        attribute = self.words.glossary.kinds[item.ref.kind].attributes.get(item.name)
        formula = calculation.function.startswith(_CALC)
        return Sum(
            anchor,
            label(item.name),
            attribute.meaning.rstrip(".") if attribute else "",
            tuple(dict.fromkeys(self._inputs(calculation, item.ref, bool(attribute and attribute.dimension)))),
            self.words.value(item, calculation.result),
            self.words.value(item, fact.value) if fact.origin == "stated" else "",
            source_of(calculation.function) or "no source named" if formula else "",
            calculation.function.removeprefix(_CALC) if formula else "",
        )

    def _inputs(self, calculation: Calculation, subject: Ref, numeric: bool) -> Iterator[str]:
        for each in calculation.inputs:
            if numeric and each.item is not None and each.item.name == "status":
                continue
            if each.entry:
                value = entry_value(each, self.result.units)
                named = each.entry_property in ("", DESIGN)
                yield f"{value}, {each.entry}" if named else f"{label(each.entry_property)} {value} of {each.entry}"
                continue
            if each.item is None:
                yield f"{label(each.assumption)} {self._assumed_value(each.assumption)} (assumed)"
                continue
            whose = "" if each.item.ref == subject else f" of {element_name(each.item.ref)}"
            yield f"{label(each.item.name)}{whose} {self.words.value(each.item, each.value)}"

    def _assumed_value(self, name: str) -> str:
        assumption = self.result.adopted.assumptions[name]
        value = assumption.value
        if isinstance(value, float) and assumption.dimension:
            return show(value, Dimension(assumption.dimension), self.result.units)
        return str(value)

    def _assumed(self, name: str) -> Assumed:
        assumption = self.result.adopted.assumptions[name]
        numbers: Mapping[str, int] = self.arranged.numbers
        return Assumed(
            self.assumptions[name],
            assumption,
            self._assumed_value(name),
            str(assumption.cite),
            tuple(change_of(each, self.amendable) for each in assumption.amended_by),
            tuple(numbers[each.key] for each in self.result.findings if name in each.rests_on and each.key in numbers),
        )


def _cited(cite: Citation | None) -> str:
    return str(cite) if cite else ""


def _by_element(sums: Iterable[tuple[Element, Sum]]) -> tuple[tuple[Element, tuple[Sum, ...]], ...]:
    return tuple(
        (of, tuple(_inputs_once(each for _, each in those))) for of, those in groupby(sums, key=lambda each: each[0])
    )


def _inputs_once(sums: Iterable[Sum]) -> Iterator[Sum]:
    """Values of one element; a long list of inputs that several have stands at the first."""
    first: dict[tuple[str, ...], str] = {}
    for each in sums:
        of = first.setdefault(each.inputs, each.what)
        long = len(each.inputs) > _LONG_INPUTS and of != each.what
        yield replace(each, inputs=(f"as for {of}",)) if long else each


def _by_trade(cautions: Iterable[tuple[str, str]]) -> Iterator[tuple[str, tuple[str, ...]]]:
    gathered: dict[str, dict[str, None]] = {}
    for trade, text in cautions:
        gathered.setdefault(trade, {})[text] = None
    for trade, texts in sorted(gathered.items()):
        yield trade, tuple(texts)
