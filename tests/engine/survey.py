"""Random plans judged by the engine and by the oracle: everything that must hold in each of them."""

from __future__ import annotations

import tempfile
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from checker.engine.conditions import Against
from checker.engine.image import compiled
from checker.engine.program import Program
from checker.engine.session import Session, Verdict
from checker.engine.why import Reasons, Why
from checker.facts import Facts, Item, Ref
from tests.engine.oracle import Finding, Oracle, Truth
from tests.engine.random_rules import PlanMaker, RuleMaker, Ruleset, bare

COMPLETIONS = 2


@dataclass
class Survey:
    """What was found: how often each verdict and truth came up, and every fault, told so that it can be made again."""

    cases: int = 0
    verdicts: Counter[str] = field(default_factory=Counter)
    truths: Counter[tuple[str, Truth]] = field(default_factory=Counter)
    done: Counter[str] = field(default_factory=Counter)
    faults: dict[str, list[str]] = field(default_factory=dict)

    def fault(self, subject: str, *details: object) -> None:
        """Note a fault."""
        self.faults.setdefault(subject, []).append(" ".join(map(str, details)))

    def add(self, other: Survey) -> None:
        """Add what another survey found."""
        self.cases += other.cases
        self.verdicts += other.verdicts
        self.truths += other.truths
        self.done += other.done
        for subject, details in other.faults.items():
            self.faults.setdefault(subject, []).extend(details)


def findings(verdicts: dict[tuple[int, Ref], Verdict]) -> dict[tuple[int, Ref], Finding]:
    """Verdicts of the engine as the oracle gives them."""
    return {key: (verdict.judgement, verdict.by) for key, verdict in verdicts.items()}


class Surveyor:
    """Checks random plans against one random ruleset."""

    def __init__(self, seed: int) -> None:
        self.seed = seed
        self.random = Random(seed)
        self.ruleset: Ruleset = RuleMaker(self.random).ruleset()
        self.program: Program = self.ruleset.program()
        self.plans = PlanMaker(self.random)
        self.survey = Survey()

    def run(self, plans: int, reasons: bool = True) -> Survey:
        """Check a number of plans; reasons: look at the reasons and at completions too, not at verdicts only."""
        with tempfile.TemporaryDirectory() as folder:
            image = Path(folder) / "rules.image"
            compiled(self.program, image)
            for _ in range(plans):
                self.survey.cases += 1
                with Session(self.program, image) as session:
                    self.check(session, reasons)
        return self.survey

    def oracle(self, facts: Facts) -> Oracle:
        """The independent judge of a fact set."""
        return Oracle(self.ruleset.rules, self.ruleset.tables, facts)

    def check(self, session: Session, reasons: bool) -> None:
        """Check one plan: judge it, ask why, change it and change it back."""
        facts = self.plans.plan()
        verdicts = session.judge(facts)
        wanted = Oracle(self.ruleset.rules, self.ruleset.tables, facts, self.survey.truths).verdicts()
        self.compare("verdicts", verdicts, wanted)
        self.survey.verdicts.update(word for word, _ in wanted.values())
        if reasons:
            self.check_reasons(facts, Reasons(session, facts).of(verdicts.values()), wanted)
            self.check_completions(facts, wanted)
        other = self.plans.changed(facts)
        changed = self.oracle(other).verdicts()
        self.compare("after a change", session.judge(other), changed)
        self.compare("after changing back", session.judge(facts), wanted)
        self.survey.done["changes that change a verdict"] += changed != wanted

    def compare(
        self, subject: str, verdicts: dict[tuple[int, Ref], Verdict], wanted: dict[tuple[int, Ref], Finding]
    ) -> None:
        """Note every verdict that differs from the oracle's."""
        found = findings(verdicts)
        for key in sorted(found.keys() | wanted.keys()):
            if found.get(key) != wanted.get(key):
                self.survey.fault(subject, self.seed, key, found.get(key), "instead of", wanted.get(key))

    def check_reasons(
        self, facts: Facts, whys: dict[tuple[int, Ref], Why], wanted: dict[tuple[int, Ref], Finding]
    ) -> None:
        """Check the reasons of every verdict."""
        for key, why in whys.items():
            if wanted[key][0] == "unsure":
                self.check_missing(facts, key, why)
            else:
                self.check_deciding(facts, key, why, wanted[key])

    def check_missing(self, facts: Facts, key: tuple[int, Ref], why: Why) -> None:
        """Whatever else becomes known, the verdict stays unsure while the items listed as missing do not."""
        self.survey.done["lists of what is missing"] += 1
        listed = {*why.needs, *why.needs_for_excuse}
        if not listed:
            self.survey.done["unsure with nothing missing"] += 1
        else_known = self.plans.completed(facts, listed)
        if self.oracle(else_known).verdict(*key)[0] != "unsure":
            self.survey.fault("missing", self.seed, key, "listed:", listed)

    def check_deciding(self, facts: Facts, key: tuple[int, Ref], why: Why, wanted: Finding) -> None:
        """Where nothing is known but what the deciding conditions read, the verdict is the same."""
        self.survey.done["lists of what decides"] += 1
        found = self.oracle(bare(facts, self.read_by(why, facts))).verdict(*key)
        if found != wanted:
            self.survey.fault("deciding", self.seed, key, found, "instead of", wanted)

    def read_by(self, why: Why, facts: Facts) -> set[Item]:
        """The values and links that the deciding conditions read."""
        read: set[Item] = set()
        for number, ref in why.decided:
            node = self.program.nodes[number]
            read |= {Item(ref, name) for name in (*node.attributes(), node.link) if name}
            if isinstance(node.argument, Against) and node.argument.via:
                read.add(Item(ref, node.argument.via))
                links = facts.elements[ref].links
                read |= {Item(member, node.argument.attribute) for member in links[node.argument.via].refs}
        return read

    def check_completions(self, facts: Facts, wanted: dict[tuple[int, Ref], Finding]) -> None:
        """However the unknown turns out, what meets does not fail, and what fails, fails.

        Rules that ask are left out: whether a value is stated is meant to change.
        """
        for _ in range(COMPLETIONS):
            complete = self.oracle(self.plans.completed(facts))
            for key, (word, _) in wanted.items():
                if "asks" in self.ruleset.rules[key[0]] or word == "unsure":
                    continue
                self.survey.done["verdicts completed"] += 1
                now = complete.verdict(*key)[0]
                if (now == "fails") != (word == "fails"):
                    self.survey.fault("completions", self.seed, key, word, "turned into", now)
