"""Laws of footings and of the soil beside them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.foundation import footing, soil
from tests.strategies import from_nothing

INCH_M = 0.0254
LOADS = from_nothing(1e5)
SOILS = st.floats(30000.0, 600000.0)
OWN = from_nothing(20000.0)
WIDTHS = st.floats(0.2, 2.0)


@settings(deadline=None)
@given(LOADS, LOADS, SOILS, OWN)
def test_heavier_never_needs_a_narrower_footing(first: float, second: float, soil_pa: float, own_pa: float) -> None:
    """Width grows with the load, falls with the soil, grows with the footing's own weight."""
    lighter, heavier = sorted((first, second))
    width_m = footing.width_needed(lighter, soil_pa, own_pa)
    assert width_m <= footing.width_needed(heavier, soil_pa, own_pa)
    assert width_m >= footing.width_needed(lighter, 1.2 * soil_pa, own_pa)
    assert width_m >= footing.width_needed(lighter, soil_pa, 0.0)


@settings(deadline=None)
@given(st.floats(100.0, 1e5), SOILS, OWN)
def test_width_and_pressure_give_each_other(load_n_m: float, soil_pa: float, own_pa: float) -> None:
    """At the width found the soil is just enough, and that load is just allowed."""
    width_m = footing.width_needed(load_n_m, soil_pa, own_pa)
    assert footing.soil_pressure(load_n_m, width_m, own_pa) == pytest.approx(soil_pa)
    assert footing.load_allowed(width_m, soil_pa, own_pa) == pytest.approx(load_n_m)


@settings(deadline=None)
@given(st.floats(100.0, 1e6), SOILS, OWN)
def test_a_square_pad_is_just_enough(load_n: float, soil_pa: float, own_pa: float) -> None:
    """The area found, made square, presses just as the soil takes."""
    side_m = footing.square_side(footing.pad_area_needed(load_n, soil_pa, own_pa))
    assert footing.pad_pressure(load_n, side_m**2, own_pa) == pytest.approx(soil_pa)


@settings(deadline=None)
@given(from_nothing(2.0), from_nothing(0.5))
def test_stepped_widths_are_enough(width_m: float, least_m: float) -> None:
    """Rounded up by less than a step, never under the least."""
    stepped_m = footing.width_stepped(width_m, INCH_M, least_m)
    assert stepped_m >= least_m
    assert width_m - 1e-9 <= stepped_m <= max(width_m + INCH_M, least_m)


@settings(deadline=None)
@given(st.integers(1, 60))
def test_a_whole_width_is_not_rounded_up(inches: int) -> None:
    """An exact number of inches stays, in whatever float it comes."""
    assert footing.width_stepped(inches * INCH_M, INCH_M, 0.0) == pytest.approx(inches * INCH_M)


@settings(deadline=None)
@given(st.integers(16, 48), st.integers(16, 48))
def test_a_wider_house_never_has_a_narrower_footing(first_ft: int, second_ft: int) -> None:
    """Adjusted widths grow with the house; at the width of the table nothing changes."""
    narrow_ft, wide_ft = sorted((first_ft, second_ft))
    widths_in = [
        footing.width_for_house(20.0, float(house_ft), 32.0, 2.0, 2.0, 12.0) for house_ft in (narrow_ft, 32, wide_ft)
    ]
    assert widths_in[0] <= widths_in[2]
    assert widths_in[1] == 20.0


def test_steps_of_house_width() -> None:
    """A foot over takes the whole change; a foot under takes nothing off."""
    assert footing.width_for_house(20.0, 33.0, 32.0, 2.0, 2.0, 12.0) == 22.0
    assert footing.width_for_house(20.0, 31.0, 32.0, 2.0, 2.0, 12.0) == 20.0
    assert footing.width_for_house(20.0, 30.0, 32.0, 2.0, 2.0, 12.0) == 18.0
    assert footing.width_for_house(6.0, 30.0, 32.0, 2.0, 1.0, 6.0) == 6.0


def test_short_joists_never_narrow_a_table_width() -> None:
    """Joists shorter than the table's leave its width."""
    assert footing.size_for_supported_lengths(0.35, [3.0, 3.0], 2, 4.9) == 0.35
    assert footing.size_for_supported_lengths(0.4, [9.8], 1, 4.9) == pytest.approx(0.8)


@settings(deadline=None)
@given(WIDTHS, st.floats(0.1, 0.4))
def test_the_thickness_found_fits_its_projection(width_m: float, wall_m: float) -> None:
    """A footing as thick as needed fits unless it stands out too little."""
    out_m = footing.projection(width_m, wall_m)
    thickness_m = footing.thickness_needed(out_m, 1.0, 6 * INCH_M)
    assert footing.projection_fits(out_m, thickness_m, 2 * INCH_M, 1.0) == (out_m >= 2 * INCH_M - 1e-9)
    assert 2 * out_m + wall_m == pytest.approx(width_m)


def test_projections_at_their_limits() -> None:
    """Exactly the least and exactly the thickness fit."""
    assert footing.projection_fits(2 * INCH_M, 6 * INCH_M, 2 * INCH_M, 1.0)
    assert footing.projection_fits(6 * INCH_M, 6 * INCH_M, 2 * INCH_M, 1.0)
    assert not footing.projection_fits(-1 * INCH_M, 6 * INCH_M, 2 * INCH_M, 1.0)


@settings(deadline=None)
@given(from_nothing(2.0), from_nothing(2.0))
def test_frost(depth_m: float, frost_m: float) -> None:
    """A margin of nothing or more is below the frost."""
    assert (footing.frost_margin(depth_m, frost_m) >= 0) == (depth_m >= frost_m)


@settings(deadline=None)
@given(st.floats(-1.0, 4.0), from_nothing(5.0), st.floats(0.3, 1.5))
def test_digging(depth_m: float, distance_m: float, fall: float) -> None:
    """At the distance needed a dig is just clear; nearer it is not, farther it is."""
    needed_m = soil.distance_needed(depth_m, fall)
    assert not soil.reaches_under_footing(depth_m, needed_m, fall)
    assert not soil.reaches_under_footing(depth_m, needed_m + distance_m, fall)
    if depth_m > 0.01:
        assert soil.reaches_under_footing(depth_m, 0.9 * needed_m, fall)
    if depth_m <= 0:
        assert not soil.reaches_under_footing(depth_m, 0.0, fall)


@settings(deadline=None)
@given(from_nothing(2.0), st.floats(0.05, 1.0))
def test_a_flatter_line_never_lets_one_dig_deeper(distance_m: float, fall: float) -> None:
    """A line of less fall is nearer to the footing's level everywhere."""
    assert soil.influence_depth(distance_m, fall) <= soil.influence_depth(distance_m, 1.0)


@settings(deadline=None)
@given(st.floats(-2.0, 2.0), st.floats(-4.0, 2.0), st.floats(-1.0, 1.0))
def test_backfill_is_the_difference_over_any_level(grade_m: float, floor_m: float, shift_m: float) -> None:
    """Moving the level of reference changes nothing; a lower grade leaves none."""
    height_m = soil.unbalanced_backfill(grade_m, floor_m)
    assert height_m == pytest.approx(soil.unbalanced_backfill(grade_m + shift_m, floor_m + shift_m), abs=1e-9)
    assert height_m == max(0.0, grade_m - floor_m)


@settings(deadline=None)
@given(from_nothing(12000.0), st.floats(0.1, 3.0), st.floats(0.05, 1.0))
def test_soil_on_a_wall_by_slices(weight_n_m3: float, wall_m: float, share: float) -> None:
    """Force, moment and the greatest moment of a held wall agree with sums over thin slices."""
    fill_m = share * wall_m
    slices = 400
    depths = [(place + 0.5) / slices * fill_m for place in range(slices)]
    parts = [weight_n_m3 * depth_m * fill_m / slices for depth_m in depths]
    at_foot = math.fsum(part * (fill_m - depth_m) for part, depth_m in zip(parts, depths, strict=True))
    assert soil.soil_force(weight_n_m3, fill_m) == pytest.approx(math.fsum(parts), rel=1e-4)
    assert soil.soil_moment_at_foot(weight_n_m3, fill_m) == pytest.approx(at_foot, rel=1e-4)
    top_n_m = soil.soil_reaction_at_top(weight_n_m3, fill_m, wall_m)
    assert top_n_m * wall_m == pytest.approx(at_foot, rel=1e-4)
    moments = [top_n_m * (wall_m - fill_m + z) - weight_n_m3 * z**3 / 6 for z in depths]
    greatest = soil.soil_moment_held(weight_n_m3, fill_m, wall_m)
    assert greatest == pytest.approx(max(moments), rel=1e-3, abs=1e-9)
    assert greatest <= soil.soil_moment_at_foot(weight_n_m3, fill_m) * (1 + 1e-9)
