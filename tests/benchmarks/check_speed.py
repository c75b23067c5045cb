"""How fast a check is: `make bench`. No test asserts a time; the figures go into notes.

cold: the command as a user runs it, compiled rules cached; warm: again inside one process; re-check: one value changed
in a session that stands; large: 120 elements against 450 rules, made for the purpose.
"""

from __future__ import annotations

import copy
import dataclasses
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
from checker.plan.reader import ReadPlan, plan_from_text, read_plan

DEMO = Path(__file__).parent.parent.parent / "plans_demo" / "quince-street" / "plan.yaml"
RULES = 450


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


def large_plan(elements: int = 120) -> ReadPlan:
    """A plan with so many elements: stairs of one flight with one handrail."""
    lines = ["plan: Many stairs", "rules: us", "stairs:"]
    for number in range(elements // 3):
        lines += [
            f"  - id: s{number}",
            "    status: new",
            "    type: straight",
            f"    total_rise: {100 + number % 12} in",
            f"    flights: [{{id: f{number}, risers: 14, going: 10 in, handrails: [{{id: h{number}, height: 36 in}}]}}]",
        ]
    return plan_from_text("\n".join(lines))


def many_rules(program: Program, count: int = RULES) -> Program:
    """A program with so many rules: those in force for stairs, again and again."""
    logics = [rule for rule in program.rules if rule.kind in ("stair", "flight", "handrail") and not rule.concludes]
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
    plan = large_plan()
    adopted, _ = in_force(plan)
    facts = facts_of(plan, adopted.assumed())
    program = many_rules(adopted.program())
    with tempfile.TemporaryDirectory() as folder:
        image = Path(folder) / "large.image"
        start = time.perf_counter()
        compiled(program, image)
        print(f"compiling {len(program.rules)} rules: {(time.perf_counter() - start) * 1000:.0f} ms")

        def engine() -> None:
            with Session(program, image) as session:
                session.judge(facts)

        print(f"engine, 120 elements × {len(program.rules)} rules: {median_ms(engine):.1f} ms")
        with Session(program, image) as session:
            session.judge(facts)
            states = [facts, changed(facts)]

            def again() -> None:
                states.reverse()
                session.judge(states[0])

            print(f"re-check after one changed value: {median_ms(again, 20):.2f} ms")


if __name__ == "__main__":
    main()
