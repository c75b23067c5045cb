"""Laws of the layout of a flight, its headroom, its winders and its guards."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.calc import guard, headroom, stair, winder
from checker.calc.errors import OutOfRange

RISERS = st.floats(0.10, 0.30)
GOINGS = st.floats(0.15, 0.45)
COUNTS = st.integers(2, 25)
RISES = st.floats(0.3, 5.0)


@settings(deadline=None)
@given(RISES, COUNTS)
def test_equal_risers_sum_to_the_total_rise(total_rise_m: float, count: int) -> None:
    """Risers found by division add up to what was divided."""
    risers_m = [stair.riser_height(total_rise_m, count)] * count
    assert stair.total_rise(risers_m) == pytest.approx(total_rise_m, rel=1e-12)
    assert stair.variation_in_flight(risers_m) == 0


@settings(deadline=None)
@given(RISES, RISERS)
def test_least_count_keeps_the_limit_and_one_fewer_does_not(total_rise_m: float, limit_m: float) -> None:
    """The least count is legal and is the least."""
    count = stair.riser_count_least(total_rise_m, limit_m)
    assert stair.riser_height(total_rise_m, count) <= limit_m * (1 + 1e-9)
    if count > 1:
        assert stair.riser_height(total_rise_m, count - 1) > limit_m


@settings(deadline=None)
@given(st.integers(1, 40), st.integers(100, 250))
def test_a_whole_quotient_is_not_rounded_up_by_float_noise(count: int, limit_mm: int) -> None:
    """Risers exactly at the limit are enough, in whatever float the product ends."""
    limit_m = limit_mm / 1000
    assert stair.riser_count_least(count * limit_m, limit_m) == count
    assert stair.riser_count_most(count * limit_m, limit_m) == count + 1


@settings(deadline=None)
@given(st.floats(0.2, 8.0), GOINGS)
def test_most_count_keeps_the_going_and_one_more_does_not(run_m: float, limit_m: float) -> None:
    """The most risers in a run leave the going wanted; one more does not."""
    count = stair.riser_count_most(run_m, limit_m)
    if count >= 2:
        assert stair.going_for_run(run_m, count) >= limit_m * (1 - 1e-9)
    assert stair.going_for_run(run_m, count + 1) < limit_m


@settings(deadline=None)
@given(RISES, RISERS)
def test_trial_counts(total_rise_m: float, trial_m: float) -> None:
    """Rounding up is the least count; nearest is that or one fewer, and off by half a riser at most."""
    up = stair.riser_count_by_trial(total_rise_m, trial_m, "up")
    nearest = stair.riser_count_by_trial(total_rise_m, trial_m, "nearest")
    assert up == stair.riser_count_least(total_rise_m, trial_m)
    assert nearest in {up, up - 1}
    assert nearest == 1 or abs(total_rise_m / trial_m - nearest) <= 0.5 + 1e-6


@settings(deadline=None)
@given(GOINGS, COUNTS)
def test_goings(going_m: float, count: int) -> None:
    """Total going and going for a run undo each other; listing the goings gives the same."""
    run_m = stair.total_going_equal(going_m, count)
    assert stair.going_for_run(run_m, count) == pytest.approx(going_m)
    assert stair.total_going([going_m] * stair.tread_count(count)) == pytest.approx(run_m)


@settings(deadline=None)
@given(RISERS, GOINGS, COUNTS)
def test_slope(riser_m: float, going_m: float, count: int) -> None:
    """Nosing line and pitch give back rise and run of the nosings; the stringer climbs one riser more."""
    pitch = stair.pitch_angle(riser_m, going_m)
    length_m = stair.nosing_line_length(riser_m, going_m, count)
    assert length_m * math.sin(pitch) == pytest.approx(riser_m * (count - 1))
    assert length_m * math.cos(pitch) == pytest.approx(going_m * (count - 1))
    stringer_m = stair.stringer_length(riser_m * count, going_m * (count - 1))
    assert length_m < stringer_m < length_m + riser_m


@settings(deadline=None)
@given(st.lists(RISERS, min_size=1, max_size=20))
def test_variation_of_neighbours_is_within_that_of_the_flight(risers_m: list[float]) -> None:
    """Neighbours differ by no more than the extremes; sorting leaves the flight's figure alone."""
    assert 0 <= stair.variation_adjacent(risers_m) <= stair.variation_in_flight(risers_m)
    assert stair.variation_in_flight(sorted(risers_m)) == stair.variation_in_flight(risers_m)


def test_variation_of_neighbours_looks_at_the_order() -> None:
    """A flight that grows step by step is uneven as a whole, not between neighbours."""
    risers_m = [0.17, 0.18, 0.19]
    assert stair.variation_adjacent(risers_m) == pytest.approx(0.01)
    assert stair.variation_in_flight(risers_m) == pytest.approx(0.02)
    assert stair.variation_adjacent([0.17, 0.19, 0.18]) == pytest.approx(0.02)


FINISHES = st.floats(-0.03, 0.05)


@settings(deadline=None)
@given(st.lists(RISERS, min_size=1, max_size=20), FINISHES, FINISHES, FINISHES)
def test_new_finish_moves_the_total_rise_by_the_floors_alone(
    risers_m: list[float], lower_m: float, upper_m: float, tread_m: float
) -> None:
    """Treads move within the flight; only the floors change its height, and only the end risers change."""
    after_m = stair.risers_after_new_finish(risers_m, lower_m, upper_m, tread_m)
    assert stair.total_rise(after_m) == pytest.approx(stair.total_rise(risers_m) + upper_m - lower_m)
    assert list(after_m[1:-1]) == risers_m[1:-1]


@pytest.mark.parametrize("place", [1, 2, 3])
def test_a_finish_that_is_no_number_is_refused(place: int) -> None:
    """Each of the three thicknesses must be finite, in a flight of one riser too."""
    finishes = [0.01, 0.01, 0.01]
    finishes[place - 1] = math.nan
    with pytest.raises(OutOfRange):
        stair.risers_after_new_finish([0.18], *finishes)


@settings(deadline=None)
@given(RISERS, GOINGS)
def test_comfort_sums_and_their_inverses(riser_m: float, going_m: float) -> None:
    """A going or riser taken from a sum gives the sum again."""
    step_m = stair.step_length(riser_m, going_m)
    assert stair.going_from_step_length(riser_m, step_m) == pytest.approx(going_m)
    assert stair.riser_from_step_length(going_m, step_m) == pytest.approx(riser_m)
    assert step_m - stair.riser_plus_going(riser_m, going_m) == pytest.approx(riser_m)
    product_m2 = stair.riser_times_going(riser_m, going_m)
    assert stair.going_from_product(riser_m, product_m2) == pytest.approx(going_m)


@settings(deadline=None)
@given(RISERS, GOINGS, st.integers(8, 25), st.floats(0.1, 0.5), st.floats(0.2, 2.5))
def test_headroom_and_opening_length_are_inverse(
    riser_m: float, going_m: float, count: int, floor_m: float, wanted_m: float
) -> None:
    """Over the flight the opening for a headroom has that headroom; a shorter opening has less."""
    rise_m = riser_m * count
    assume(wanted_m + floor_m < rise_m - riser_m)
    flight = (floor_m, riser_m, going_m, rise_m)
    length_m = headroom.opening_length(wanted_m, *flight)
    assert headroom.headroom_under_header(length_m, *flight) == pytest.approx(wanted_m)
    assert headroom.headroom_under_header(0.9 * length_m, *flight) < wanted_m
    longer_m = headroom.opening_length(wanted_m, *flight, 0.025, 0.02)
    assert longer_m == pytest.approx(length_m + 0.045)


@settings(deadline=None)
@given(RISERS, GOINGS, st.integers(3, 25), st.floats(0.1, 0.3), st.floats(0.0, 1.0))
def test_the_opening_always_gives_the_headroom(
    riser_m: float, going_m: float, count: int, floor_m: float, share: float
) -> None:
    """Any headroom up to the clear height of the storey below has an opening that gives at least it."""
    rise_m = riser_m * count
    assume(floor_m < rise_m - 0.01)
    wanted_m = 0.005 + share * (rise_m - floor_m - 0.005)
    flight = (floor_m, riser_m, going_m, rise_m)
    length_m = headroom.opening_length(wanted_m, *flight)
    assert headroom.headroom_under_header(length_m, *flight) >= wanted_m - 1e-9
    assert length_m <= going_m * count * (1 + 1e-9)


@settings(deadline=None)
@given(RISERS, GOINGS, st.integers(3, 25), st.floats(0.0, 10.0), st.floats(0.0, 10.0))
def test_a_longer_opening_never_lowers_the_headroom(
    riser_m: float, going_m: float, count: int, first_m: float, second_m: float
) -> None:
    """Headroom grows with the opening, through the step at the bottom nosing too."""
    shorter_m, longer_m = sorted((first_m, second_m))
    flight = (0.2, riser_m, going_m, riser_m * count)
    lower_m = headroom.headroom_under_header(shorter_m, *flight)
    assert lower_m <= headroom.headroom_under_header(longer_m, *flight) + 1e-12


def test_the_edge_over_the_bottom_nosing_still_counts_from_the_nosing() -> None:
    """A tape from the bottom nosing meets the edge straight above; just beyond it stands on the floor."""
    flight = (0.3, 0.2, 0.2, 2.4)
    assert headroom.headroom_under_header(11 * 0.2, *flight) == pytest.approx(2.4 - 0.2 - 0.3)
    assert headroom.headroom_under_header(11 * 0.2 + 0.001, *flight) == pytest.approx(2.4 - 0.3)


@settings(deadline=None)
@given(RISERS, GOINGS, st.integers(4, 20), st.integers(1, 3))
def test_counting_risers_agrees_with_the_line_of_nosings(
    riser_m: float, going_m: float, count: int, below: int
) -> None:
    """With the header straight over a nosing the old form and the line of nosings are one."""
    rise_m, floor_m = riser_m * count, 0.5 * riser_m
    by_count_m = headroom.headroom_by_risers(rise_m - floor_m, below, riser_m)
    by_line_m = headroom.headroom_under_header((count - below) * going_m, floor_m, riser_m, going_m, rise_m)
    assert by_count_m == pytest.approx(by_line_m)


@settings(deadline=None)
@given(RISERS, GOINGS, COUNTS, st.floats(-3.0, 3.0), st.floats(1.0, 4.0), st.floats(0.0, 1.0))
def test_no_place_under_a_slope_is_lower_than_the_least(
    riser_m: float, going_m: float, count: int, slope: float, top_m: float, share: float
) -> None:
    """The least headroom is found at one end and undercut nowhere between."""
    flight = (top_m, slope, riser_m, going_m, count)
    run_m = stair.total_going_equal(going_m, count)
    least_m = headroom.headroom_under_slope_least(*flight)
    assert headroom.headroom_under_slope_at(share * run_m, *flight) >= least_m - 1e-9
    ends = [headroom.headroom_under_slope_at(distance_m, *flight) for distance_m in (0.0, run_m)]
    assert least_m == pytest.approx(min(ends))


@settings(deadline=None)
@given(st.floats(0.05, 3.0), st.floats(0.05, 2.0))
def test_chord_is_shorter_than_arc(angle: float, radius_m: float) -> None:
    """The chord never exceeds the arc, and a many-sided chord line comes close to it."""
    arc_m = winder.winder_going(angle, radius_m)
    assert winder.winder_going_chord(angle, radius_m) < arc_m
    assert 1000 * winder.winder_going_chord(angle / 1000, radius_m) == pytest.approx(arc_m, rel=1e-6)


@settings(deadline=None)
@given(st.floats(0.5, 4.0), st.integers(2, 8), st.floats(0.0, 1.0), st.floats(0.05, 1.0))
def test_winders_fill_their_turn(turn: float, count: int, narrow_m: float, offset_m: float) -> None:
    """The goings of all winders of a turn make up the walkline."""
    radius_m = winder.walkline_radius(narrow_m, offset_m)
    going_m = winder.winder_going_at(winder.winder_angle(turn, count), narrow_m, offset_m)
    assert count * going_m == pytest.approx(winder.walkline_length(0.0, turn, radius_m))
    assert winder.walkline_length(1.5, turn, radius_m) - count * going_m == pytest.approx(1.5)


def test_a_winder_that_tapers_to_a_point_has_no_going_there() -> None:
    """The narrow end of a winder round a point is nothing."""
    assert winder.winder_going_at(0.5, 0.0, 0.0) == 0


@settings(deadline=None)
@given(RISERS, GOINGS, st.floats(0.0, 0.10))
def test_sphere_touches_riser_tread_and_rail(riser_m: float, going_m: float, gap_m: float) -> None:
    """A circle of the radius found, set into the corner of riser and tread, is its radius from the rail."""
    radius_m = guard.largest_sphere_in_triangle(riser_m, going_m, gap_m) / 2
    # corner of riser and tread at the origin, nosings at (going, 0) and (0, riser)
    slope_m = math.hypot(riser_m, going_m)
    to_nosings_m = (riser_m * going_m - (riser_m + going_m) * radius_m) / slope_m
    assert to_nosings_m + gap_m == pytest.approx(radius_m)
    assert guard.rail_gap_for_sphere(2 * radius_m, riser_m, going_m) == pytest.approx(gap_m, abs=1e-12)


@settings(deadline=None)
@given(st.floats(0.2, 5.0), st.floats(0.01, 0.15), st.floats(0.03, 0.2))
def test_fewest_balusters(length_m: float, width_m: float, limit_m: float) -> None:
    """The fewest balusters keep the gap; one fewer leaves it too wide."""
    count = guard.baluster_count_least(length_m, width_m, limit_m)
    if count * width_m <= length_m:
        assert guard.baluster_gap(length_m, width_m, count) <= limit_m * (1 + 1e-8)
    if count > 0:
        assert guard.baluster_gap(length_m, width_m, count - 1) > limit_m


def test_balusters_may_fill_the_guard() -> None:
    """Balusters side by side leave no gap, which is a legal guard."""
    assert guard.baluster_gap(1.0, 0.125, 8) == 0


def test_the_sphere_may_reach_the_end_of_the_riser() -> None:
    """At its limits the circle touches the rail, the tread, and the riser just at the nosing."""
    assert guard.largest_sphere_in_triangle(6.0, 8.0, 9.6) == pytest.approx(12.0)
    assert guard.rail_gap_for_sphere(12.0, 6.0, 8.0) == pytest.approx(9.6)


def test_a_winder_without_an_angle_is_refused() -> None:
    """Two nosings in one line make no winder; half a turn is the widest."""
    with pytest.raises(OutOfRange):
        winder.winder_going(0.0, 0.3)
    assert winder.winder_going_chord(math.pi, 0.3) == pytest.approx(0.6)
