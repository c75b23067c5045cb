"""How fast a check is: `make bench`. No test asserts a time; the figures go into notes.

cold: the command as a user runs it, compiled rules cached; warm: again inside one process; re-check: one value changed
in a session that stands; large: 120 elements against 450 rules, made for the purpose.
"""

from __future__ import annotations

import copy
import dataclasses
import itertools
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from checker.check import check_read, in_force
from checker.derive.derived import facts_of
from checker.engine.image import compiled
from checker.engine.program import Logic, Program
from checker.engine.session import Session
from checker.facts import Fact, Facts
from checker.plan.reader import read_plan

DEMO = Path(__file__).parent.parent.parent / "plans_demo" / "quince-street" / "plan.yaml"
RULES = 450
ELEMENTS = 120


def median_ms(task: Callable[[], object], times: int = 9) -> float:
    """Median time of a task in milliseconds."""
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        task()
        spent.append((time.perf_counter() - start) * 1000)
    return statistics.median(spent)


def cold() -> tuple[float, float]:
    """Wall time [ms] and peak memory [MB] of the whole command."""
    command = [sys.executable, "-m", "checker", "check", str(DEMO)]
    subprocess.run(command, capture_output=True, check=False)
    spent = median_ms(lambda: subprocess.run(command, capture_output=True, check=False))
    return spent, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024


def large(facts: Facts, elements: int = ELEMENTS) -> Facts:
    """So many elements after the work, of the kinds and with the values and links of the demo house, copied over."""
    after = {ref: known for ref, known in facts.elements.items() if ref.state == "after"}
    found = dict(after)
    for number in itertools.count(1):
        for ref, known in after.items():
            if len(found) >= elements:
                return Facts(found)
            if ref.id:
                copied = ref._replace(id=f"{ref.id}-{number}")
                found[copied] = dataclasses.replace(known, ref=copied)
    raise AssertionError


def many_rules(program: Program, count: int = RULES) -> Program:
    """A program with so many rules: those in force, again and again."""
    logics = [rule for rule in program.rules if not rule.concludes]
    concluding = [rule for rule in program.rules if rule.concludes]
    repeated = [dataclasses.replace(logics[n % len(logics)], id=f"r{n}") for n in range(count - len(concluding))]
    fresh = [_copied(rule) for rule in (*concluding, *repeated)]
    return Program(program.glossary, tuple(fresh), program.tables)


def _copied(rule: Logic) -> Logic:
    """Conditions are numbered by identity, so a repeated rule needs its own."""
    return copy.deepcopy(rule)


def changed(facts: Facts) -> Facts:
    """The same facts with one riser height moved."""
    elements = dict(facts.elements)
    ref = next(ref for ref in elements if ref.kind == "flight" and ref.state == "after")
    known = dataclasses.replace(elements[ref], values=dict(elements[ref].values))
    known.values["riser_height"] = Fact(0.3, "stated")
    elements[ref] = known
    return Facts(elements)


def main() -> None:
    """Print the figures."""
    spent, memory = cold()
    print(f"cold `dryfit check` of the demo house: {spent:.0f} ms, {memory:.0f} MB")
    read = read_plan(DEMO)
    check_read(read)
    print(f"warm check of the demo house in one process: {median_ms(lambda: check_read(read)):.1f} ms")
    adopted, _ = in_force(read)
    facts = large(facts_of(read, adopted.assumed(), adopted.catalogue))
    program = many_rules(adopted.program())
    with tempfile.TemporaryDirectory() as folder:
        image = Path(folder) / "large.image"
        start = time.perf_counter()
        compiled(program, image)
        print(f"compiling {len(program.rules)} rules: {(time.perf_counter() - start) * 1000:.0f} ms")

        def engine() -> None:
            with Session(program, image) as session:
                session.judge(facts)

        with Session(program, image) as session:
            verdicts = len(session.judge(facts))
        size = f"{len(facts.elements)} elements × {len(program.rules)} rules, {verdicts:,} verdicts"
        print(f"engine, {size}: {median_ms(engine):.1f} ms")
        with Session(program, image) as session:
            session.judge(facts)
            states = [facts, changed(facts)]

            def again() -> None:
                states.reverse()
                session.judge(states[0])

            print(f"re-check after one changed value: {median_ms(again, 20):.2f} ms")


if __name__ == "__main__":
    main()
