"""Laws of roof snow, drifts and roof live load."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.loads import live, snow, snow_canada, snow_drift
from tests.strategies import from_nothing

PSF_PA = 47.88025898
FOOT_M = 0.3048
GROUND = from_nothing(100 * PSF_PA)
SLOPES = from_nothing(math.radians(89))
LENGTHS = st.floats(1.0, 40.0)
HEIGHTS = st.floats(0.05, 3.0)


@settings(deadline=None)
@given(SLOPES, SLOPES, st.sampled_from([0.85, 1.0, 1.1, 1.2, 1.3]), st.booleans())
def test_a_steeper_roof_keeps_no_more_snow(first: float, second: float, thermal: float, slippery: bool) -> None:
    """The slope factor falls with the slope, stays within 0 and 1, and a slippery roof keeps no more."""
    low, high = sorted((first, second))
    none_from = math.radians(70)
    start = snow.full_snow_slope(thermal, slippery)
    factor = snow.slope_factor(low, start, none_from)
    assert 0.0 <= snow.slope_factor(high, start, none_from) <= factor <= 1.0
    assert snow.slope_factor(low, snow.full_snow_slope(thermal, True), none_from) <= factor or slippery


@settings(deadline=None)
@given(st.floats(0.5, 1.3), st.floats(0.5, 1.3))
def test_a_colder_roof_keeps_no_less_snow(first: float, second: float) -> None:
    """The slope up to which all snow stays grows with the thermal factor."""
    warm, cold = sorted((first, second))
    assert snow.full_snow_slope(warm, False) <= snow.full_snow_slope(cold, False)


def test_thermal_factors_between_two_figures_take_the_colder_one() -> None:
    """A factor over 1.0 is no warm roof, one over 1.1 no ventilated cold roof."""
    assert snow.full_snow_slope(1.05, False) == snow.full_snow_slope(1.1, False)
    assert snow.full_snow_slope(1.15, False) == snow.full_snow_slope(1.2, False)


@settings(deadline=None)
@given(GROUND, st.floats(0.8, 1.2), st.floats(0.85, 1.3))
def test_flat_roof_snow_is_in_proportion(ground_pa: float, exposure: float, thermal: float) -> None:
    """Twice the ground snow is twice the roof snow; ordinary roofs have less than the ground."""
    flat_pa = snow.flat_roof_snow(ground_pa, exposure, thermal, 1.0, 0.7)
    assert snow.flat_roof_snow(2 * ground_pa, exposure, thermal, 1.0, 0.7) == pytest.approx(2 * flat_pa)
    assert snow.flat_roof_snow(ground_pa, 1.0, 1.0, 1.0, 0.7) <= ground_pa


def test_cases_at_their_limits() -> None:
    """Limits as the code words them: a range with both ends, slopes less than a limit, snow up to a limit."""
    half_in_12, seven_in_12 = math.atan(0.5 / 12), math.atan(7 / 12)
    assert snow.unbalanced_counts(half_in_12, half_in_12, seven_in_12)
    assert snow.unbalanced_counts(seven_in_12, half_in_12, seven_in_12)
    limit = math.radians(15)
    assert snow.least_snow(500.0, 1.0, 957.6, limit, limit) == 0.0
    assert snow.least_snow(500.0, 1.0, 957.6, limit - 0.01, limit) == 500.0
    assert snow.rain_on_snow(957.6, 0.0, 6.0, 239.4, 957.6) == 239.4
    assert snow.rain_on_snow(0.0, 0.0, 6.0, 239.4, 957.6) == 0.0
    assert snow.rain_on_snow(957.6, math.radians(0.5), 25 * FOOT_M, 239.4, 957.6) == 0.0
    narrow = snow.unbalanced_snow(1000.0, 700.0, 1.0, 20 * FOOT_M, 20 * FOOT_M, True)
    assert narrow == (0.0, 1000.0)
    assert snow.unbalanced_snow(1000.0, 700.0, 1.0, 4.0, 20 * FOOT_M, False) == pytest.approx((210.0, 700.0))


@settings(deadline=None)
@given(GROUND, GROUND, LENGTHS, LENGTHS)
def test_more_snow_or_a_longer_roof_makes_no_lower_drift(
    first_pa: float, second_pa: float, first_m: float, second_m: float
) -> None:
    """Height and density grow with ground snow, height with the fetch; windward is three quarters."""
    less_pa, more_pa = sorted((first_pa, second_pa))
    shorter_m, longer_m = sorted((first_m, second_m))
    least_m = 20 * FOOT_M
    height_m = snow_drift.drift_height(less_pa, shorter_m, least_m, 1.0)
    assert height_m <= snow_drift.drift_height(more_pa, longer_m, least_m, 1.0) + 1e-12
    assert snow_drift.drift_height(less_pa, shorter_m, least_m, 0.75) == pytest.approx(0.75 * height_m)
    assert snow_drift.snow_density(less_pa) <= snow_drift.snow_density(more_pa) <= 30 * 157.0875


@settings(deadline=None)
@given(HEIGHTS, HEIGHTS)
def test_a_drift_never_passes_the_step(height_m: float, clear_m: float) -> None:
    """The height is limited by the step and the width by eight clear heights; a lower drift is no narrower."""
    limited_m = snow_drift.drift_height_limited(height_m, clear_m)
    width_m = snow_drift.drift_width(height_m, clear_m)
    assert limited_m <= min(height_m, clear_m)
    assert 4 * limited_m <= width_m + 1e-12
    assert width_m <= max(4 * height_m, 8 * clear_m) + 1e-12


@settings(deadline=None)
@given(st.floats(0.5, 12.0), st.floats(0.5, 12.0), st.floats(100.0, 5000.0))
def test_mean_of_a_drift_is_that_of_its_parts(length_m: float, width_m: float, peak_pa: float) -> None:
    """The mean equals a sum of slices, is at most the peak, and all of the drift is half of width × peak."""
    slices = 2000
    steps = ((place + 0.5) / slices * length_m for place in range(slices))
    by_slices = math.fsum(snow_drift.drift_at(step_m, width_m, peak_pa) for step_m in steps) / slices
    mean_pa = snow_drift.drift_mean(length_m, width_m, peak_pa)
    assert mean_pa == pytest.approx(by_slices, rel=1e-3)
    assert mean_pa <= peak_pa
    assert snow_drift.drift_mean(width_m, width_m, peak_pa) == pytest.approx(peak_pa / 2)


@settings(deadline=None)
@given(from_nothing(3000.0), LENGTHS, LENGTHS)
def test_sliding_snow_is_all_on_a_wide_lower_roof(flat_pa: float, upper_m: float, lower_m: float) -> None:
    """Over a roof as wide as the spread the share that slides is all there; on a narrower one, less."""
    spread_m = 15 * FOOT_M
    pressure_pa = snow_drift.sliding_snow(flat_pa, upper_m, 0.4, spread_m)
    line_n_m = snow_drift.sliding_line_load(pressure_pa, lower_m, spread_m)
    assert line_n_m <= 0.4 * flat_pa * upper_m * (1 + 1e-12)
    if lower_m >= spread_m:
        assert line_n_m == pytest.approx(0.4 * flat_pa * upper_m)


@settings(deadline=None)
@given(st.floats(0.5, 6.0), from_nothing(1.0))
def test_housing_snow_is_no_more_than_that_of_any_roof(ground_kpa: float, rain_kpa: float) -> None:
    """The simplified load is lower than that of Part 4 for a plain roof, or the least load."""
    ground_pa, rain_pa = 1000 * ground_kpa, 1000 * rain_kpa
    simple_pa = snow_canada.housing_snow(ground_pa, rain_pa, 0.55, 1000.0)
    full_pa = snow_canada.specified_snow(ground_pa, rain_pa, 0.8, 1.0, 1.0, 1.0, 1.0)
    assert simple_pa == 1000.0 or rain_pa > 0.8 * ground_pa or simple_pa <= full_pa
    assert simple_pa >= 1000.0


@settings(deadline=None)
@given(st.floats(10.0, 400.0), st.floats(10.0, 400.0), st.sampled_from([0.5, 0.75, 1.0]))
def test_larger_roofs_have_no_lower_basic_factor(first_m: float, second_m: float, wind: float) -> None:
    """The basic factor begins at 0.8, grows with the length and tends to 1 over the wind factor."""
    shorter_m, longer_m = sorted((first_m, second_m))
    factor = snow_canada.basic_snow_factor(shorter_m, wind)
    assert 0.8 <= factor <= snow_canada.basic_snow_factor(longer_m, wind) <= 1 / wind


@settings(deadline=None)
@given(st.floats(1.0, 50.0), st.floats(1.0, 50.0))
def test_characteristic_length(first_m: float, second_m: float) -> None:
    """Between the side and twice the side; a square has its own side."""
    smaller_m, larger_m = sorted((first_m, second_m))
    length_m = snow_canada.characteristic_length(smaller_m, larger_m)
    assert smaller_m * (1 - 1e-12) <= length_m < 2 * smaller_m
    assert snow_canada.characteristic_length(smaller_m, smaller_m) == pytest.approx(smaller_m)


@settings(deadline=None)
@given(st.floats(1000.0, 4000.0), st.floats(1000.0, 8000.0))
def test_spacing_keeps_the_load_of_a_member(table_pa: float, load_pa: float) -> None:
    """Load × spacing stays that of the table; more load never spreads members."""
    spacing_m = snow_canada.spacing_for_load(0.6, table_pa, load_pa)
    assert spacing_m * load_pa == pytest.approx(0.6 * table_pa)
    assert snow_canada.spacing_for_load(0.6, table_pa, 1.1 * load_pa) < spacing_m


def test_a_spacing_just_at_a_standard_one_is_taken() -> None:
    """Float noise does not push a spacing to the next closer one."""
    assert snow_canada.spacing_for_load(0.6, 2000.0, 3000.0, [0.3, 0.4, 0.6]) == 0.4


@settings(deadline=None)
@given(from_nothing(100.0), from_nothing(100.0), from_nothing(2.0))
def test_roof_live_load_falls_with_area_and_pitch(first_m2: float, second_m2: float, pitch: float) -> None:
    """Factors stay within 0.6 and 1; the load falls with the area, never under the least or over itself."""
    smaller_m2, larger_m2 = sorted((first_m2, second_m2))
    factors = live.area_reduction(smaller_m2), live.area_reduction(larger_m2), live.pitch_reduction(pitch)
    assert 0.6 <= factors[1] <= factors[0] <= 1.0
    assert 0.6 <= factors[2] <= 1.0
    less_pa = live.roof_live_load(957.6, factors[1], factors[2], 574.6)
    assert 574.6 <= less_pa <= live.roof_live_load(957.6, factors[0], factors[2], 574.6) <= 957.6
    assert live.roof_live_load(400.0, 0.6, 0.6, 574.6) == 400.0
