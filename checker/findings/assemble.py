"""From verdicts to findings: words, reasons, limits, who decides, in an order that does not hang on the engine's."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from checker.derive import derivations
from checker.derive.derived import contradicts
from checker.engine.conditions import Against, Node
from checker.engine.program import Program
from checker.engine.session import Session, Verdict
from checker.engine.why import Reasons, Why
from checker.facts import Facts, Fault, Item, Ref
from checker.findings.finding import BUILT_IN, Because, Finding, MissingItem, VerdictWord
from checker.findings.words import Limit, Sentences, element_name, label, limit_of, margin_words
from checker.glossary import element_models
from checker.plan.elements import CHANGED
from checker.plan.house import STAGES
from checker.plan.reader import ReadPlan
from checker.problems import Place
from checker.ruleset.adopted import Adopted, AdoptedRule
from checker.ruleset.choices import AUTHORITY_OF, SEVERITIES

_WORD: Mapping[str, VerdictWord] = {
    "meets": "meets",
    "fails": "does not meet",
    "unsure": "cannot tell",
    "excused": "excused",
    "na": "does not apply",
}
ALWAYS_IN_SCOPE = ("permit", "hazards")
"""Trades that belong to every permit, whatever its scope."""
_WORKED_ON = CHANGED | {"new"}
_ORDER = {"does not meet": 0, "cannot tell": 1, "excused": 2, "meets": 3, "does not apply": 4}


class Assembler:
    """Makes the findings of one plan."""

    def __init__(self, read: ReadPlan, adopted: Adopted, facts: Facts, session: Session) -> None:
        self.read = read
        self.adopted = adopted
        self.facts = facts
        self.session = session
        self.program: Program = session.program
        self.words = Sentences(facts, self.program.glossary, read.plan.units)
        self.scope = frozenset(read.plan.permit.scope or ())
        self.stage = STAGES.index(read.plan.permit.stage or STAGES[0])

    def findings(self, verdicts: Mapping[tuple[int, Ref], Verdict], *, explain_all: bool = False) -> list[Finding]:
        """Every finding, sorted. explain_all: give reasons for what meets and does not apply too."""
        judged = [each for each in verdicts.values() if not self.program.rules[each.rule].concludes]
        asked = [each for each in judged if explain_all or each.judgement not in ("meets", "na")]
        reasons = Reasons(self.session, self.facts)
        whys = reasons.of(asked)
        self._inferred = self.session.conclusions()
        found = [self._finding(each, whys.get((each.rule, each.ref))) for each in judged]
        found += self._contradictions()
        found += self._outside_scope()
        return sorted(found, key=_sort_key)

    def _finding(self, verdict: Verdict, why: Why | None) -> Finding:
        rule, ref = self.adopted.rules[verdict.rule], verdict.ref
        word = _WORD[verdict.judgement]
        limit = None if word == "does not apply" else self._limit(rule, ref, why)
        because = tuple(self._because(why, limit)) if why else ()
        excuse = rule.excuses[verdict.by] if word == "excused" else None
        memory = " (from memory)" if excuse and excuse.known == "from memory" else ""
        needs = tuple(why.needs) if why else ()
        for_excuse = tuple(why.needs_for_excuse) if why else ()
        known = self.facts.elements[ref]
        others = (each.item.ref for each in because if not each.behind)
        elements = tuple(dict.fromkeys([ref, *(at for at in others if at.kind not in ("house", "permit", "site"))]))
        state = ref.state
        return Finding(
            key="|".join([rule.id, f"{ref.kind} {ref.id}".strip(), state]),
            rule=rule.id,
            title=rule.title,
            trade=rule.trade,
            subject=ref,
            elements=elements,
            verdict=word,
            severity=rule.severity,
            says=self._says(rule, ref, word, why, limit),
            because=because,
            limit=limit.words(self.words.system) if limit else "",
            margin=margin_words(limit, self.words.system) if limit and word != "cannot tell" else "",
            needs=needs or for_excuse,
            needs_to_apply=tuple(why.needs_to_apply) if why else (),
            needs_for_excuse=for_excuse,
            cite=rule.cite,
            amended_by=rule.amended_by,
            excused=excuse.id if excuse else "",
            excuse_cite=f"{excuse.cite}{memory}" if excuse else "",
            rests_on=self._rests_on(because),
            beyond_table=bool(why and why.beyond_table and not needs),
            remedy=self.words.fill(rule.remedy, ref, limit) if word == "does not meet" else "",
            caution=rule.caution,
            decides=rule.decides,
            authority=AUTHORITY_OF.get(rule.decides, ""),
            sheet=rule.sheet,
            due=rule.due,
            due_now=STAGES.index(rule.due) <= self.stage if rule.due else True,
            in_scope=not self.scope or rule.trade in (*self.scope, *ALWAYS_IN_SCOPE),
            place=known.place,
        )

    def _says(self, rule: AdoptedRule, ref: Ref, word: VerdictWord, why: Why | None, limit: Limit | None) -> str:
        if why is None:
            return ""  # nobody asked for reasons: it is only counted
        said = self.words.fill(rule.says, ref, limit)
        if word == "excused":
            return f"But for the exception: {said}"
        if word == "meets":
            return f"Meets: {said}"
        if word != "cannot tell" or why is None:
            return said
        needs = list(why.needs) or list(why.needs_for_excuse)
        if why.beyond_table and not why.needs:
            return f"Outside the table: {said}"
        wants = ", ".join(self._wants(each, ref) for each in needs[:4]) + (" and more" if len(needs) > 4 else "")
        if why.if_it_applies and not wants:
            return f"Does not meet if it applies, which cannot be told. {said}"
        if why.if_it_applies:
            return f"Does not meet if it applies, which hangs on {wants}. {said}"
        if not why.needs and why.needs_for_excuse:
            return f"Does not meet unless an exception holds, which hangs on {wants}. {said}"
        return f"Needs {wants}." if wants else said

    @staticmethod
    def _wants(item: Item, subject: Ref) -> str:
        return label(item.name) if item.ref == subject else f"{label(item.name)} of {element_name(item.ref)}"

    def _limit(self, rule: AdoptedRule, ref: Ref, why: Why | None) -> Limit | None:
        """The one numeric limit of a rule, on the element that decides it."""
        numeric = [node for node in rule.require.walk() if node.is_numeric()]
        counted = any(node.op == "count" for node in rule.require.walk())
        if len(numeric) != 1 or counted:
            return None
        node = numeric[0]
        at = ref if node.kind == ref.kind else None
        if why is not None:
            number = self.program.number(node)
            at = next((each for decided, each in why.decided if decided == number), at)
        if at is None or at not in self.facts.elements:
            return None
        return limit_of(node, at, self.facts, self.program.glossary, self.adopted.tables)

    def _because(self, why: Why, limit: Limit | None) -> Iterator[Because]:
        seen: set[Item] = set()
        for number, ref in why.decided:
            for item in self._items(self.program.nodes[number], ref):
                fact = self.facts.value(item)
                inferred = self._inferred.get((item.ref, item.name))
                if item in seen or (fact is None and inferred is None) or item.name == "status":
                    continue
                seen.add(item)
                attribute = self.program.glossary.kinds[item.ref.kind].attributes.get(item.name)
                value = fact.value if fact else inferred
                assert value is not None
                apart = limit.limit if limit and limit.item == item else None
                origin, how = self.words.how(fact, item.ref)
                yield Because(
                    item,
                    value,
                    self.words.value(item, value, apart),
                    attribute.dimension.si_unit if attribute and attribute.dimension else "",
                    origin,
                    how,
                    fact.place if fact else None,
                    (number, ref) in why.behind,
                )

    def _items(self, node: Node, ref: Ref) -> Iterator[Item]:
        for name in node.attributes():
            yield Item(ref, name)
        if isinstance(node.argument, Against) and node.argument.via:
            members = self.facts.elements[ref].links.get(node.argument.via)
            for member in members.refs if members else ():
                yield Item(member, node.argument.attribute)

    def _rests_on(self, because: Iterable[Because]) -> tuple[str, ...]:
        names: dict[str, None] = {}
        for each in because:
            fact = self.facts.value(each.item)
            names.update(dict.fromkeys(fact.rests_on if fact else ()))
        return tuple(names)

    # Findings that no ruleset makes.

    def _contradictions(self) -> Iterator[Finding]:
        """A stated value that lies too far from what the plan's own numbers give; numbers that make no sense."""
        for ref, known in self.facts.elements.items():
            for name, fact in known.values.items():
                derivation = derivations().get((ref.kind, name))
                if derivation is None or fact.computed is None or not contradicts(fact, derivation):
                    continue
                item = Item(ref, name)
                other = fact.computed.result
                apart = other if isinstance(other, float) else None
                says = (
                    f"The plan states {label(name)} {self.words.value(item, fact.value, apart)}; its own numbers give "
                    f"{self.words.value(item, other)} ({self.words.formula(fact.computed, ref)})."
                )
                yield self._built_in(
                    "stated-against-computed",
                    "Stated and computed values",
                    ref,
                    says,
                    fact.place,
                    "State the one that is right and leave the other out.",
                )
        alike: dict[tuple[str, str, str], list[Fault]] = {}
        for fault in self.facts.faults:
            alike.setdefault((fault.item.ref.kind, self._fault_words(fault), fault.legal), []).append(fault)
        for faults in alike.values():
            fault = next((each for each in faults if each.item.ref.state == "after"), faults[0])
            others = len({each.item.ref.id for each in faults}) - 1
            more = f" The same of {others} more." if others else ""
            names = list(dict.fromkeys(label(each.item.name) for each in faults))
            named = names[0] if len(names) == 1 else f"{', '.join(names[:3])}{' and more' if len(names) > 3 else ''}"
            says = f"{named.capitalize()} cannot be worked out: {self._fault_words(fault)}.{more}"
            place = self.facts.elements[fault.item.ref].place
            yield self._built_in(
                "numbers-make-no-sense",
                "Numbers that do not fit together",
                fault.item.ref,
                says,
                place,
                "Check the numbers that go into it.",
            )

    def _fault_words(self, fault: Fault) -> str:
        """What is out of range, as the trade reads it where it is a value of the plan."""
        of = next((each for each in fault.inputs if each.symbol == fault.symbol and each.item and not each.entry), None)
        if of is None or of.item is None:
            return fault.what
        whose = "" if of.item.ref == fault.item.ref else f" of {element_name(of.item.ref)}"
        value = self.words.value(of.item, of.value)
        return f"{label(of.item.name)}{whose} is {value}; it must be {fault.legal}"

    def _outside_scope(self) -> Iterator[Finding]:
        """A trade that the plan changes although the permit's scope leaves it out."""
        if not self.scope:
            return
        first: dict[str, tuple[Ref, Place | None, int]] = {}
        models = element_models()
        for ref, known in self.facts.elements.items():
            trade = models[ref.kind].trade
            if ref.state == "after" and known.status in _WORKED_ON and trade and trade not in self.scope:
                held = first.get(trade)
                first[trade] = (held[0], held[1], held[2] + 1) if held else (ref, known.place, 1)
        there = {models[ref.kind].trade for ref in self.facts.elements if ref.state == "after"}
        covered = {model.trade for model in models.values() if model.has_status}
        for trade in sorted(self.scope & covered - there):
            yield self._scope_without_work(trade)
        for trade, (ref, place, count) in first.items():
            more = f" and {count - 1} more" if count > 1 else ""
            says = f"The plan changes {element_name(ref)}{more}, but “{trade}” is not in the permit's scope."
            yield self._built_in(
                "outside-the-scope",
                "Work outside the permit's scope",
                ref,
                says,
                place,
                f"Add {trade} to `permit: scope:`, or take the change out.",
            )

    def _scope_without_work(self, trade: str) -> Finding:
        """A trade that the permit is for and of which the plan has nothing."""
        permit = Ref("permit", "")
        says = f"The permit's scope names {trade}, but the plan has nothing of that trade."
        place = self.read.document.place(("permit", "scope"))
        found = self._built_in("scope-without-work", "Scope without a plan", permit, says, place, "")
        return replace(found, trade=trade, verdict="cannot tell", remedy="")

    def _built_in(self, rule: str, title: str, ref: Ref, says: str, place: Place | None, remedy: str) -> Finding:
        return Finding(
            key="|".join([f"{BUILT_IN}/{rule}", f"{ref.kind} {ref.id} {says[:40]}".strip(), ref.state]),
            rule=f"{BUILT_IN}/{rule}",
            title=title,
            trade=element_models()[ref.kind].trade or "order of work",
            subject=ref,
            elements=(ref,),
            verdict="does not meet",
            severity="correction",
            says=says,
            remedy=remedy,
            decides="building official",
            authority="building",
            sheet="application form",
            due="application",
            place=place,
        )

    def missing(self, findings: Iterable[Finding]) -> list[MissingItem]:
        """One entry for each plan line that checks wait for, gravest first."""
        waiting: dict[Item, list[Finding]] = {}
        for finding in findings:
            if finding.verdict == "cannot tell" and finding.listed:
                for item in finding.needs:
                    waiting.setdefault(item, []).append(finding)
        items = [self._missing_item(item, checks) for item, checks in waiting.items()]
        return sorted(
            items,
            key=lambda each: (
                not each.due_now,
                each.perhaps,
                SEVERITIES.index(each.severity),
                -len(each.waiting),
                each.item.ref.kind,
                each.item.ref.id,
                each.item.ref.state,
                each.item.name,
            ),
        )

    def _missing_item(self, item: Item, checks: list[Finding]) -> MissingItem:
        asks, write = self.words.ask(item)
        now = [each for each in checks if each.due_now]
        severity = min((each.severity for each in now or checks), key=SEVERITIES.index)
        due = min((each.due for each in checks), key=STAGES.index)
        place = self.facts.elements[item.ref].place if item.ref in self.facts.elements else None
        return MissingItem(
            item,
            asks,
            write,
            severity,
            tuple(sorted({each.sheet for each in checks})),
            tuple(sorted({each.authority for each in checks})),
            due,
            bool(now),
            tuple(sorted({each.key for each in checks})),
            all(each.needs_to_apply and item not in each.needs_to_apply for each in checks),
            place,
        )


def _sort_key(finding: Finding) -> tuple[object, ...]:
    return (
        SEVERITIES.index(finding.severity),
        _ORDER[finding.verdict],
        not finding.in_scope,
        finding.trade,
        finding.rule,
        finding.subject.kind,
        finding.subject.id,
        finding.subject.state,
        finding.key,
    )
