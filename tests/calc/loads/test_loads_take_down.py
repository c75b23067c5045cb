"""Laws of the way down: sums, kinds, combinations, weights."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.foundation import footing
from checker.calc.framing.timber import LOAD_KINDS, LoadKind
from checker.calc.loads import gravity, live, take_down, weights
from tests.strategies import from_nothing

Loads = dict[LoadKind, float]
PRESSURES = from_nothing(5000.0)
WIDTHS = from_nothing(8.0)
BY_KIND: st.SearchStrategy[Loads] = st.dictionaries(st.sampled_from(LOAD_KINDS), from_nothing(40000.0))
FACTORS: st.SearchStrategy[Loads] = st.dictionaries(st.sampled_from(LOAD_KINDS), from_nothing(1.6))
EVERY: Loads = dict.fromkeys(LOAD_KINDS, 1.0)


@settings(deadline=None)
@given(st.lists(st.tuples(WIDTHS, BY_KIND), max_size=5), st.integers(0, 5))
def test_areas_may_be_taken_in_parts(areas: list[tuple[float, Loads]], cut: int) -> None:
    """Areas taken together or in two parts bring the same load."""
    widths, pressures = [width for width, _ in areas], [pressure for _, pressure in areas]
    whole = take_down.own_line_load(widths, pressures)
    parts = [
        take_down.own_line_load(widths[:cut], pressures[:cut]),
        take_down.own_line_load(widths[cut:], pressures[cut:]),
    ]
    assert take_down.loads_together(parts) == pytest.approx(whole)


@settings(deadline=None)
@given(st.lists(BY_KIND, max_size=6))
def test_the_order_of_lines_does_not_matter(lines: list[Loads]) -> None:
    """What stands on a line adds up in any order, line by line or at once, to the last digit."""
    at_once = take_down.loads_together(lines)
    assert take_down.loads_together(lines[::-1]) == at_once
    step: Loads = {}
    for line in lines:
        step = take_down.loads_together([step, line])
    assert step == pytest.approx(at_once)


@settings(deadline=None)
@given(BY_KIND, BY_KIND, FACTORS)
def test_combining_and_adding_may_change_places(first: Loads, second: Loads, factors: Loads) -> None:
    """The combination of a sum is the sum of combinations."""
    together = take_down.combined_load(take_down.loads_together([first, second]), factors)
    apart = take_down.combined_load(first, factors) + take_down.combined_load(second, factors)
    assert together == pytest.approx(apart)


@settings(deadline=None)
@given(BY_KIND, FACTORS)
def test_a_kind_without_a_factor_does_not_count(loads: Loads, factors: Loads) -> None:
    """Leaving a factor out is the same as 0; with all at 1 everything counts."""
    assert take_down.combined_load(loads, factors) == take_down.combined_load(
        loads, {kind: factors.get(kind, 0.0) for kind in LOAD_KINDS}
    )
    assert take_down.combined_load(loads, EVERY) == pytest.approx(math.fsum(loads.values()))


@settings(deadline=None)
@given(BY_KIND, st.lists(FACTORS, min_size=1, max_size=5))
def test_the_governing_combination_is_the_greatest(loads: Loads, combinations: list[Loads]) -> None:
    """No combination passes it, and one reaches it."""
    found = [take_down.combined_load(loads, factors) for factors in combinations]
    assert take_down.governing_load(loads, combinations) == max(found)


def test_uplift_is_taken_off() -> None:
    """A negative load lightens a line and may lift it."""
    loads = take_down.own_line_load([4.0], [{"dead": 500.0, "wind": -900.0}])
    assert take_down.combined_load(loads, {"dead": 0.6, "wind": 0.6}) == pytest.approx(-960.0)


@settings(deadline=None)
@given(WIDTHS, WIDTHS, PRESSURES)
def test_spans_share_their_load_between_lines(left_m: float, right_m: float, load_pa: float) -> None:
    """Outer lines and the one between them take all of two spans."""
    widths = [
        take_down.loaded_width(0.0, left_m),
        take_down.loaded_width(left_m, right_m),
        take_down.loaded_width(right_m, 0.0),
    ]
    total = math.fsum(take_down.area_line_load(width, {"live": load_pa})["live"] for width in widths)
    assert total == pytest.approx((left_m + right_m) * load_pa)


@settings(deadline=None)
@given(BY_KIND, st.floats(0.5, 10.0))
def test_both_ends_of_a_beam_carry_all_of_it(loads: Loads, length_m: float) -> None:
    """Two ends, spread over half the beam each, make the line load again."""
    ends = take_down.beam_end_loads(loads, length_m)
    assert take_down.even_line_load(ends, length_m / 2) == pytest.approx(loads)


@settings(deadline=None)
@given(st.floats(1.0, 1e5), from_nothing(1e5))
def test_share_added(before: float, after: float) -> None:
    """Nothing changed is 0; the share gives the load after again."""
    assert take_down.share_added(before, before) == 0.0
    assert before * (1 + take_down.share_added(before, after)) == pytest.approx(after, abs=1e-6)


@settings(deadline=None)
@given(st.lists(BY_KIND, min_size=1, max_size=4), BY_KIND)
def test_a_storey_added_never_needs_a_narrower_footing(lines: list[Loads], storey: Loads) -> None:
    """More load on the way down never ends on less footing."""
    before = take_down.combined_load(take_down.loads_together(lines), EVERY)
    after = take_down.combined_load(take_down.loads_together([*lines, storey]), EVERY)
    widths = [footing.width_needed(load, 75000.0, 3600.0) for load in (before, after)]
    assert widths[1] >= widths[0] - 1e-9


@settings(deadline=None)
@given(st.lists(st.tuples(from_nothing(0.3), st.floats(10.0, 2500.0)), max_size=6))
def test_layers_add_up(layers: list[tuple[float, float]]) -> None:
    """A construction weighs what its layers weigh, and a layer cut in two the same."""
    thicknesses, densities = [layer[0] for layer in layers], [layer[1] for layer in layers]
    whole_pa = weights.build_up_load(thicknesses, densities)
    halves_pa = weights.build_up_load([t / 2 for t in thicknesses] * 2, densities * 2)
    assert halves_pa == pytest.approx(whole_pa)
    assert whole_pa == pytest.approx(math.fsum(gravity.layer_load(*layer) for layer in layers))


def test_members_side_by_side_are_a_solid_layer() -> None:
    """At a spacing of their own width, members weigh as a layer."""
    assert weights.members_load(0.1, 0.2, 0.1, 500.0) == pytest.approx(gravity.layer_load(0.2, 500.0))


@settings(deadline=None)
@given(from_nothing(3.0), st.floats(1.0, 2000.0))
def test_load_on_the_slope_is_more_on_plan(pitch: float, load_pa: float) -> None:
    """All of a sloped roof weighs the same over its plan."""
    assert weights.load_on_plan(load_pa, pitch) >= load_pa
    slope_m = math.hypot(1.0, pitch)
    assert weights.load_on_plan(load_pa, pitch) * 1.0 == pytest.approx(load_pa * slope_m)


@settings(deadline=None)
@given(from_nothing(1e5), st.integers(1, 9), st.floats(0.2, 3.0))
def test_members_that_share_a_weight_carry_all_of_it(weight_n: float, count: int, length_m: float) -> None:
    """Shares and line loads make the weight again."""
    assert count * live.load_each_member(weight_n, count) == pytest.approx(weight_n)
    assert count * length_m * live.line_load_each_member(weight_n, count, length_m) == pytest.approx(weight_n)
    assert live.load_of_footprint(live.load_over_footprint(weight_n, length_m), length_m) == pytest.approx(weight_n)
