"""Plans of a frame for tests of its facts; units as hand calculations have them."""

from __future__ import annotations

from functools import cache

from checker.derive.derived import facts_of
from checker.facts import Facts, State, Value
from checker.plan.reader import plan_from_text
from checker.ruleset.adopted import Adopted
from checker.ruleset.adopting import adopt
from checker.ruleset.folders import Library
from tests.derive.test_envelope import number, us

INCH = 0.0254
FOOT = 0.3048
POUND = 4.4482216152605
PSF = POUND / FOOT**2
PLF = POUND / FOOT
PSI = POUND / INCH**2
STATES: tuple[State, ...] = ("before", "after")
LISTS = ("members", "bearing_lines", "footings", "roofs", "heavy_things", "braced_lines")


@cache
def canada() -> Adopted:
    """The Canadian set in its newest edition."""
    return adopt("canada", Library())


def frame(more: str = "", by: Adopted | None = None, assumed: dict[str, Value] | None = None, **lists: str) -> Facts:
    """The facts of a frame.

    more: further sections of the plan; by: the ruleset, without it that of the United States; assumed: other
    assumptions; lists: elements of each list of the section, as YAML in braces with commas between.
    """
    assert set(lists) <= set(LISTS)
    section = ", ".join(f"{name}: [{rows}]" for name, rows in lists.items())
    read = plan_from_text(f"plan: A house\nframing: {{{section}}}\n{more}\n")
    adopted = by or us()
    return facts_of(read, {**adopted.assumed(), **(assumed or {})}, adopted.catalogue)


def member(lines: str, id_: str = "j", status: str = "existing") -> str:
    """A member of these lines."""
    return f"{{id: {id_}, status: {status}, {lines}}}"


def of_member(of: Facts, name: str, state: State = "after", id_: str = "j") -> float:
    """A quantity of a member that must be known."""
    return number(of, "member", id_, name, state)
