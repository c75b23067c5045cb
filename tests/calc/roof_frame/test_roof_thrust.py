"""Laws of thrust, ties, heel joints and ridge beams."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.roof_frame import geometry, thrust
from tests.strategies import from_nothing

LOADS = from_nothing(5000.0)
RUNS = st.floats(1.0, 9.0)
PITCHES = st.floats(0.1, 2.0)
SHARES = from_nothing(0.9)


@settings(deadline=None)
@given(LOADS, RUNS, PITCHES, PITCHES)
def test_a_steeper_roof_has_less_thrust(load_n_m: float, run_m: float, first: float, second: float) -> None:
    """Thrust falls with the pitch and grows with load and run; the plumb load stays."""
    low, high = sorted((first, second))
    flatter_n = thrust.plate_thrust(load_n_m, run_m, low)
    assert thrust.plate_thrust(load_n_m, run_m, high) <= flatter_n * (1 + 1e-12)
    assert flatter_n <= thrust.plate_thrust(load_n_m, 1.1 * run_m, low) * (1 + 1e-12)
    assert 2 * flatter_n == pytest.approx(thrust.plate_thrust(2 * load_n_m, run_m, low))


@settings(deadline=None)
@given(LOADS, RUNS, PITCHES, from_nothing(1.0))
def test_a_rafter_is_in_balance(load_n_m: float, run_m: float, pitch: float, share: float) -> None:
    """About the ridge, the plate's reaction, the thrust and the load of rafter and overhang cancel out."""
    overhang_m = share * run_m
    up_nm = thrust.plate_reaction(load_n_m, run_m, overhang_m) * run_m
    out_nm = thrust.plate_thrust(load_n_m, run_m, pitch, overhang_m) * run_m * pitch
    down_nm = load_n_m * (run_m + overhang_m) ** 2 / 2
    assert up_nm == pytest.approx(out_nm + down_nm)


@settings(deadline=None)
@given(LOADS, LOADS, RUNS, RUNS, PITCHES, PITCHES)
def test_unlike_rafters_are_in_balance(
    left_load: float, right_load: float, left_run: float, right_run: float, left: float, right: float
) -> None:
    """Both rafters turn about the ridge in balance, all load reaches the plates, the ridge passes on what is left."""
    force_n = thrust.unequal_thrust(left_load, right_load, left_run, right_run, left, right)
    ends = [
        thrust.unequal_plate_reaction(load, run, pitch, force_n)
        for load, run, pitch in ((left_load, left_run, left), (right_load, right_run, right))
    ]
    assert ends[0] * left_run == pytest.approx(force_n * left_run * left + left_load * left_run**2 / 2)
    assert sum(ends) == pytest.approx(left_load * left_run + right_load * right_run)
    passed = thrust.ridge_transfer(left_load, left_run, left, force_n)
    taken = thrust.ridge_transfer(right_load, right_run, right, force_n)
    assert passed == pytest.approx(-taken, abs=1e-6)


@settings(deadline=None)
@given(LOADS, RUNS, PITCHES)
def test_like_rafters_are_a_case_of_unlike_ones(load_n_m: float, run_m: float, pitch: float) -> None:
    """Alike on both sides, the two formulas agree and nothing passes over the ridge."""
    force_n = thrust.unequal_thrust(load_n_m, load_n_m, run_m, run_m, pitch, pitch)
    assert force_n == pytest.approx(thrust.plate_thrust(load_n_m, run_m, pitch))
    assert thrust.ridge_transfer(load_n_m, run_m, pitch, force_n) == pytest.approx(0.0, abs=1e-6)


@settings(deadline=None)
@given(LOADS, RUNS, PITCHES)
def test_snow_on_one_side_halves_the_thrust_of_snow(load_n_m: float, run_m: float, pitch: float) -> None:
    """Unbalanced snow spreads the feet less than the same snow on both sides."""
    one_sided = thrust.unequal_thrust(load_n_m, 0.0, run_m, run_m, pitch, pitch)
    assert 2 * one_sided == pytest.approx(thrust.plate_thrust(load_n_m, run_m, pitch))


@settings(deadline=None)
@given(from_nothing(1e5), SHARES, SHARES)
def test_a_raised_tie_never_has_less_force(force_n: float, first: float, second: float) -> None:
    """The force grows with the height of the tie; on the plates it is the thrust."""
    lower, higher = sorted((first, second))
    assert thrust.tie_force(force_n, 0.0) == force_n
    assert thrust.tie_force(force_n, lower) <= thrust.tie_force(force_n, higher)


@settings(deadline=None)
@given(LOADS, RUNS, PITCHES, SHARES)
def test_a_raised_tie_holds_the_same_moment(load_n_m: float, run_m: float, pitch: float, share: float) -> None:
    """Tie force times its distance from the ridge is thrust times the height of the ridge."""
    force_n = thrust.plate_thrust(load_n_m, run_m, pitch)
    ridge_m = geometry.ridge_height(run_m, pitch)
    arm_m = ridge_m - geometry.tie_height_of_share(share, ridge_m)
    assert thrust.tie_force(force_n, share) * arm_m == pytest.approx(force_n * ridge_m)


@settings(deadline=None)
@given(from_nothing(50000.0), st.floats(100.0, 1500.0), st.integers(1, 4))
def test_nails_carry_the_force_and_one_fewer_does_not(force_n: float, nail_n: float, least: int) -> None:
    """The count is enough, is at least the least, and is the fewest."""
    count = thrust.nails_needed(force_n, nail_n, least)
    assert count >= least
    assert count * nail_n >= force_n * (1 - 1e-9)
    if count > least:
        assert (count - 1) * nail_n < force_n


@settings(deadline=None)
@given(st.integers(1, 40), st.floats(1.0, 3.0))
def test_adjusted_nails_are_rounded_up(count: int, factor: float) -> None:
    """A factor never takes nails away, and a whole product is not rounded past."""
    assert thrust.nails_raised(count, factor) >= count
    assert thrust.nails_raised(count, 1.0) == count
    assert thrust.nails_raised(3 * count, 4 / 3) == 4 * count


@settings(deadline=None)
@given(LOADS, RUNS, from_nothing(1.0))
def test_a_ridge_beam_and_the_plate_carry_all_of_a_rafter(load_n_m: float, run_m: float, share: float) -> None:
    """Beam and plate make the whole load; half each without overhang."""
    overhang_m = share * run_m
    beam_n = thrust.ridge_beam_reaction(load_n_m, run_m, overhang_m)
    plate_n = thrust.plate_reaction_beside_beam(load_n_m, run_m, overhang_m)
    assert beam_n + plate_n == pytest.approx(load_n_m * (run_m + overhang_m))
    assert thrust.ridge_beam_reaction(load_n_m, run_m) == pytest.approx(load_n_m * run_m / 2)


@settings(deadline=None)
@given(from_nothing(5000.0), RUNS, RUNS, st.floats(0.3, 0.8))
def test_line_load_of_a_ridge_beam_is_that_of_its_rafters(
    load_pa: float, left_m: float, right_m: float, spacing_m: float
) -> None:
    """Reactions of the rafters over their spacing make the line load."""
    load_n_m = thrust.rafter_line_load(load_pa, spacing_m)
    ends = [thrust.ridge_beam_reaction(load_n_m, run_m) for run_m in (left_m, right_m)]
    line_n_m = thrust.ridge_beam_line_load(load_pa, load_pa, left_m, right_m)
    assert math.fsum(ends) / spacing_m == pytest.approx(line_n_m)


@settings(deadline=None)
@given(from_nothing(3000.0), from_nothing(2000.0), from_nothing(1.0))
def test_dead_load_never_adds_to_uplift(wind_pa: float, dead_pa: float, share: float) -> None:
    """A heavier roof lifts no more; without dead load the whole wind lifts."""
    net_n = thrust.uplift_at_plate(wind_pa, dead_pa, share, 0.6, 4.0)
    assert net_n <= thrust.uplift_at_plate(wind_pa, 0.0, share, 0.6, 4.0) + 1e-9
    assert thrust.uplift_at_plate(wind_pa, 0.0, share, 0.6, 4.0) == pytest.approx(wind_pa * 2.4)
