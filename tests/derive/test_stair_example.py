"""A stair worked out by hand: 9'-2-1/2" from floor to floor in 14 risers, treads of 10 in."""

from __future__ import annotations

import math
import re

import pytest

from checker.derive.derived import contradicts, facts_of
from checker.derive.registry import Derivation
from checker.facts import Fact, Facts, Item, Ref
from checker.plan.reader import plan_from_text
from tests.derive.test_derivations import ALL

INCH = 0.0254
PLAN = """\
plan: A stair
levels:
  - {id: low, status: existing, floor_to_floor: 9'-2 1/2"}
  - {id: up, status: existing, below: low, floor_thickness: 11 in}
stairs:
  - id: main
    status: new
    type: with winders
    from_level: low
    to_level: up
    flights:
      - id: main
        risers: 14
        going: 10 in
        width: 37 in
        well_length: 10 ft
        measured_risers:
          [7-7/8 in, 7-15/16 in, 7-3/4 in, 7-7/8 in, 7-7/8 in, 7-7/8 in, 7-7/8 in,
           7-7/8 in, 7-7/8 in, 7-7/8 in, 7-7/8 in, 7-7/8 in, 7-7/8 in, 7-7/8 in]
        measured_goings: [10 in, 10-1/8 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in, 10 in]
        handrails: [{id: left, projection: 3-1/2 in}]
        winders: [{id: turn, turn_angle: 90°, count: 3, narrow_side_radius: 6 in, walkline_offset: 12 in}]
        open_sides: [{id: side, guards: [{id: side, infill: balusters, bottom_rail_gap: 0 in}]}]
"""
RISE = 110.5
RISER = RISE / 14


@pytest.fixture(scope="module")
def facts() -> Facts:
    return facts_of(plan_from_text(PLAN), {})


@pytest.mark.parametrize(
    ("kind", "id_", "name", "inches"),
    [
        ("stair", "main", "total_rise", RISE),
        ("flight", "main", "total_rise", RISE),
        ("flight", "main", "riser_height", 7.892857),
        ("flight", "main", "total_going", 130),
        ("flight", "main", "step_length", 25.785714),
        ("flight", "main", "stringer_length", math.hypot(RISE, 130)),
        ("flight", "main", "largest_riser", 7.9375),
        ("flight", "main", "smallest_going", 10),
        ("flight", "main", "riser_variation", 0.1875),
        ("flight", "main", "going_variation", 0.125),
        ("flight", "main", "floor_depth_above", 11),
        ("flight", "main", "width_at_handrails", 33.5),
        ("winders", "turn", "going_at_walkline", 18 * math.radians(30)),
        ("winders", "turn", "smallest_going", 6 * math.radians(30)),
        ("stair", "main", "widest_flight", 37),
    ],
)
def test_a_length_is_as_worked_out_by_hand(facts: Facts, kind: str, id_: str, name: str, inches: float) -> None:
    fact = facts.value(Item(Ref(kind, id_), name))
    assert fact is not None
    assert fact.origin == "computed"
    assert isinstance(fact.value, float)
    assert fact.value / INCH == pytest.approx(inches, rel=1e-6)


def test_the_pitch_is_in_degrees(facts: Facts) -> None:
    fact = facts.value(Item(Ref("flight", "main"), "pitch"))
    assert fact is not None
    assert fact.value == pytest.approx(38.283, abs=0.01)


def test_the_risers_are_counted(facts: Facts) -> None:
    fact = facts.value(Item(Ref("stair", "main"), "risers"))
    assert fact is not None
    assert fact.value == 14


def test_the_guard_reads_the_flight_it_stands_beside(facts: Facts) -> None:
    fact = facts.value(Item(Ref("guard", "side"), "triangle_opening"))
    assert fact is not None
    hypotenuse = math.hypot(RISER, 10)
    assert fact.value == pytest.approx((RISER + 10 - hypotenuse) * INCH)


def test_a_solid_wall_leaves_no_opening() -> None:
    facts = facts_of(plan_from_text(PLAN.replace("balusters", "solid wall")), {})
    for name in ("largest_opening", "triangle_opening"):
        fact = facts.value(Item(Ref("guard", "side"), name))
        assert fact is not None
        assert fact.value == 0.0


def test_a_stair_of_two_flights_does_not_tell_the_rise_of_either() -> None:
    facts = facts_of(plan_from_text(PLAN.replace("    flights:\n", "    flights:\n      - {id: low}\n")), {})
    assert facts.value(Item(Ref("flight", "main"), "total_rise")) is None
    assert facts.elements[Ref("flight", "main")].missing["total_rise"] == (Item(Ref("flight", "main"), "total_rise"),)


@pytest.mark.parametrize(
    ("stated", "name", "against"),
    [
        ("riser_height: 7-7/8 in", "riser_height", False),
        ("riser_height: 7-15/16 in", "riser_height", False),
        ("riser_height: 7-1/2 in", "riser_height", True),
        ("riser_height: 8 in", "riser_height", True),
    ],
)
def test_a_stated_value_may_lie_a_little_off(stated: str, name: str, against: bool) -> None:
    facts = facts_of(plan_from_text(PLAN.replace("risers: 14", f"risers: 14\n        {stated}")), {})
    fact = facts.value(Item(Ref("flight", "main"), name))
    assert fact is not None
    assert contradicts(fact, _of(name)) is against


def _of(name: str) -> Derivation:
    return ALL["flight", name]


def test_a_value_with_nothing_to_hold_against_it_contradicts_nothing() -> None:
    assert not contradicts(Fact(1.0, "stated"), _of("riser_height"))


def test_some_of_the_steps_are_not_all_of_them() -> None:
    """Three risers of fourteen were measured: nothing can be said of the largest, and the list is asked for."""
    known = facts_of(
        plan_from_text(re.sub(r"measured_risers:[^]]*]", "measured_risers: [7-7/8 in, 8 in, 7 in]", PLAN)), {}
    )
    flight = known.elements[Ref("flight", "main")]
    assert "largest_riser" not in flight.values
    assert "riser_variation" not in flight.values
    assert [item.name for item in flight.missing["largest_riser"]] == ["measured_risers"]
