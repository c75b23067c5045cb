"""Why a verdict is what it is: the conditions that settled it, and what is missing where nothing did.

Every truth value comes from the engine; here they are only walked.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from checker.engine.conditions import Against, LookUp, Node
from checker.engine.program import Logic, Program
from checker.engine.session import Session, Verdict
from checker.facts import Facts, Item, Members, Ref

_OPEN = Members((), False)


@dataclass(slots=True)
class Why:
    """The reasons of one verdict.

    decided: the atomic conditions that settle it, each with its element and truth; behind: those of them that settle a
    conclusion which the rule reads; needs: what is missing for the rule itself; needs_to_apply: the part of it that
    tells whether the rule applies at all; needs_for_excuse: what is missing to know whether an exception excuses;
    beyond_table: a look-up has no row.
    """

    decided: dict[tuple[int, Ref], bool] = field(default_factory=dict)
    behind: set[tuple[int, Ref]] = field(default_factory=set)
    needs: dict[Item, None] = field(default_factory=dict)
    needs_to_apply: dict[Item, None] = field(default_factory=dict)
    needs_for_excuse: dict[Item, None] = field(default_factory=dict)
    beyond_table: bool = False
    if_it_applies: bool = False


class Reasons:
    """Finds the reasons of verdicts in the session that gave them."""

    def __init__(self, session: Session, facts: Facts) -> None:
        self.program: Program = session.program
        self.facts = facts
        self._session = session
        self._truths: Mapping[tuple[int, Ref], bool] = {}
        self._conclusions: Mapping[tuple[Ref, str], bool] = {}
        self._behind = 0

    def of(self, verdicts: Iterable[Verdict]) -> dict[tuple[int, Ref], Why]:
        """Give the reasons of verdicts."""
        verdicts = list(verdicts)
        self._truths = self._session.truths((verdict.rule, verdict.ref) for verdict in verdicts)
        self._conclusions = self._session.conclusions()
        return {(verdict.rule, verdict.ref): self._why(verdict) for verdict in verdicts}

    def _truth(self, node: Node, ref: Ref) -> bool | None:
        return self._truths.get((self.program.number(node), ref))

    def _why(self, verdict: Verdict) -> Why:
        rule, ref, why = self.program.rules[verdict.rule], verdict.ref, Why()
        if verdict.judgement == "unsure" and not rule.asks:
            self._unsure(rule, ref, why)
        elif verdict.judgement == "unsure":
            self._decide(rule.require, ref, why)
            self._applying(rule, ref, why)
            self._missing(rule.require, ref, why.needs, why)
        elif verdict.judgement == "na":
            self._decide(rule.when, ref, why)
        elif verdict.judgement == "meets":
            self._decide(rule.require, ref, why)
        else:
            for node in (rule.require, rule.when):
                if self._truth(node, ref) is not None:
                    self._decide(node, ref, why)
            excuses = [rule.excuses[verdict.by]] if verdict.judgement == "excused" else rule.excuses
            for node in excuses:
                self._decide(node, ref, why)
        return why

    def _unsure(self, rule: Logic, ref: Ref, why: Why) -> None:
        applies, met = self._truth(rule.when, ref), self._truth(rule.require, ref)
        why.if_it_applies = applies is None and met is False
        self._applying(rule, ref, why)
        if met is None:
            self._missing(rule.require, ref, why.needs, why)
        else:
            self._decide(rule.require, ref, why)
        if applies is not None:
            self._decide(rule.when, ref, why)
        for node in rule.excuses:
            if self._truth(node, ref) is None:
                self._missing(node, ref, why.needs_for_excuse, why)

    def _applying(self, rule: Logic, ref: Ref, why: Why) -> None:
        """What is missing to tell whether the rule applies."""
        if self._truth(rule.when, ref) is None:
            self._missing(rule.when, ref, why.needs_to_apply, why)
            why.needs.update(why.needs_to_apply)

    def _members(self, node: Node, ref: Ref) -> Members:
        known = self.facts.elements.get(ref)
        return known.links.get(node.link, _OPEN) if known else _OPEN

    def _is_known(self, ref: Ref, name: str) -> bool:
        known = self.facts.elements.get(ref)
        return known is not None and (name in known.values or (ref, name) in self._conclusions)

    def _lack(self, ref: Ref, name: str, out: dict[Item, None], why: Why) -> None:
        """Put down what would make an attribute known."""
        if self._is_known(ref, name):
            return
        concluding = self.program.concluding.get((ref.kind, name), ())
        for index in concluding:
            self._missing(self.program.rules[index].when, ref, out, why)
        if not concluding:
            known = self.facts.elements.get(ref)
            items = known.missing.get(name) if known else None
            out.update(dict.fromkeys(items if items is not None else (Item(ref, name),)))

    def _missing(self, node: Node, ref: Ref, out: dict[Item, None], why: Why) -> None:
        """Walk down the branches that are unknown."""
        truth = self._truth(node, ref)
        if truth is not None:
            self._unstated(node, ref, truth, out, why)
            return
        for name in node.attributes():
            self._lack(ref, name, out, why)
        if isinstance(node.argument, LookUp) and all(self._is_known(ref, name) for name in node.attributes()):
            why.beyond_table = True
        if isinstance(node.argument, Against) and node.argument.via:
            refs = self._via(node.argument, ref)
            if refs:
                self._lack(refs[0], node.argument.attribute, out, why)
            else:
                out[Item(ref, node.argument.via)] = None
        if node.link:
            members = self._members(node, ref)
            if not members.closed:
                out[Item(ref, node.link)] = None
            for member in members.refs:
                self._missing(node.kids[0], member, out, why)
        else:
            for kid in node.kids:
                self._missing(kid, ref, out, why)

    def _unstated(self, node: Node, ref: Ref, truth: bool, out: dict[Item, None], why: Why) -> None:
        """Walk down the branches that carry the truth of their parent: what is asked for and not stated is missing."""
        if node.op == "stated" and not truth:
            self._lack(ref, node.attribute, out, why)
        wanted = (not truth) if node.op == "none" else truth
        for kid in node.kids:
            for at in self._members(node, ref).refs if node.link else (ref,):
                kid_truth = self._truth(kid, at)
                if kid_truth is not None and (node.op == "count" or kid_truth == wanted):
                    self._unstated(kid, at, kid_truth, out, why)

    def _via(self, argument: Against, ref: Ref) -> tuple[Ref, ...]:
        known = self.facts.elements.get(ref)
        return known.links.get(argument.via, _OPEN).refs if known else ()

    def _decide(self, node: Node, ref: Ref, why: Why) -> None:
        """Walk down the branches that carry the truth of their parent."""
        truth = self._truth(node, ref)
        if truth is None:
            return
        if not node.kids or node.link:
            key = (self.program.number(node), ref)
            if self._behind and key not in why.decided:
                why.behind.add(key)
            elif not self._behind:
                why.behind.discard(key)
            why.decided[key] = truth
        for name in node.attributes():
            self._decide_conclusion(ref, name, why)
        if isinstance(node.argument, Against) and node.argument.via:
            for member in self._via(node.argument, ref):
                self._decide_conclusion(member, node.argument.attribute, why)
        wanted = (not truth) if node.op == "none" else truth
        for kid in node.kids:
            for at in self._members(node, ref).refs if node.link else (ref,):
                kid_truth = self._truth(kid, at)
                if kid_truth is not None and (node.op == "count" or kid_truth == wanted):
                    self._decide(kid, at, why)
                    if truth and node.op in ("some", "any"):
                        return  # one that holds is enough

    def _decide_conclusion(self, ref: Ref, name: str, why: Why) -> None:
        """What settled a conclusion settles what was read from it."""
        whens = [self.program.rules[index].when for index in self.program.concluding.get((ref.kind, name), ())]
        sure = [when for when in whens if self._truth(when, ref)]
        self._behind += 1
        for when in sure[:1] or whens:
            self._decide(when, ref, why)
        self._behind -= 1
