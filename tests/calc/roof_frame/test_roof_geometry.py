"""Laws of rafters, birdsmouths, ties and meeting planes."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.calc import ceiling
from checker.calc.errors import OutOfRange
from checker.calc.roof_frame import geometry, meeting
from tests.strategies import from_nothing

RUNS = st.floats(1.0, 9.0)
PITCHES = st.floats(0.1, 2.0)
DEPTHS = st.floats(0.09, 0.40)
HEELS = from_nothing(0.6)
SPANS = st.floats(3.0, 14.0)
WALLS = st.floats(-1.0, 1.0)


@settings(deadline=None)
@given(RUNS, PITCHES, HEELS)
def test_ridge_run_and_pitch_give_each_other(run_m: float, pitch: float, heel_m: float) -> None:
    """Any two of height, run and pitch give the third."""
    height_m = geometry.ridge_height(run_m, pitch, heel_m)
    assert geometry.run_for_ridge_height(height_m, pitch, heel_m) == pytest.approx(run_m)
    assert geometry.pitch_for_ridge_height(height_m, run_m, heel_m) == pytest.approx(pitch)
    assert geometry.plate_height_for_ridge(height_m, run_m, pitch, heel_m) == 0.0
    assert geometry.plate_height_for_ridge(height_m + 2.0, run_m, pitch, heel_m) == pytest.approx(2.0)


@settings(deadline=None)
@given(PITCHES)
def test_pitch_and_angle_give_each_other(pitch: float) -> None:
    """A pitch survives the angle and the rise over a run."""
    assert geometry.pitch_of_angle(geometry.pitch_angle(pitch)) == pytest.approx(pitch)
    assert geometry.pitch_of_rise(3.0 * pitch, 3.0) == pytest.approx(pitch)
    with pytest.raises(OutOfRange):
        geometry.pitch_of_angle(math.pi / 2)


@settings(deadline=None)
@given(RUNS, PITCHES, from_nothing(1.0))
def test_rafter_is_the_long_side(run_m: float, pitch: float, overhang_m: float) -> None:
    """Length² is run² and rise²; the overhang adds in proportion."""
    length_m = geometry.rafter_length(run_m, pitch)
    assert length_m == pytest.approx(math.hypot(run_m, geometry.ridge_height(run_m, pitch)))
    longer_m = geometry.rafter_length(run_m, pitch, overhang_m)
    assert longer_m / length_m == pytest.approx((run_m + overhang_m) / run_m)


@settings(deadline=None)
@given(DEPTHS, PITCHES, from_nothing(0.5))
def test_birdsmouth_and_what_is_left_are_the_depth(depth_m: float, pitch: float, share: float) -> None:
    """The longest seat for a share leaves the rest, square and plumb alike."""
    seat_m = geometry.longest_seat(depth_m, pitch, share)
    assert geometry.birdsmouth_depth(seat_m, pitch) == pytest.approx(share * depth_m)
    assert geometry.depth_left_at_birdsmouth(depth_m, seat_m, pitch) == pytest.approx((1 - share) * depth_m)
    heel_m = geometry.heel_height(depth_m, seat_m, pitch)
    assert heel_m == pytest.approx((1 - share) * geometry.plumb_cut(depth_m, pitch))


@settings(deadline=None)
@given(DEPTHS, PITCHES, from_nothing(0.08))
def test_a_longer_seat_lowers_the_heel(depth_m: float, pitch: float, seat_m: float) -> None:
    """The heel falls by the plumb cut of the seat; a flat rafter sits with its whole depth."""
    assume(seat_m * pitch < geometry.plumb_cut(depth_m, pitch) - 0.001)
    full_m = geometry.heel_height(depth_m, 0.0, pitch)
    assert geometry.heel_height(depth_m, seat_m, pitch) == pytest.approx(
        full_m - geometry.birdsmouth_plumb_depth(seat_m, pitch)
    )
    assert geometry.heel_height(depth_m, seat_m, 0.0) == depth_m


@settings(deadline=None)
@given(DEPTHS, PITCHES, PITCHES)
def test_a_steeper_roof_needs_no_shallower_ridge_board(depth_m: float, first: float, second: float) -> None:
    """The plumb cut grows with the pitch; a board as deep as the cut has no margin."""
    low, high = sorted((first, second))
    cut_m = geometry.plumb_cut(depth_m, low)
    assert depth_m <= cut_m <= geometry.plumb_cut(depth_m, high)
    assert geometry.ridge_board_margin(cut_m, depth_m, low) == 0.0


@settings(deadline=None)
@given(SPANS, st.floats(0.5, 5.0), from_nothing(1.0))
def test_ties(span_m: float, ridge_m: float, share: float) -> None:
    """Share and height give each other; a tie on the plates is the span, at the ridge nothing."""
    height_m = geometry.tie_height_of_share(share, ridge_m)
    assert geometry.tie_height_share(height_m, ridge_m) == pytest.approx(share)
    assert geometry.tie_length(span_m, 0.0) == span_m
    assert geometry.tie_length(span_m, 1.0) == 0.0
    pitch = ridge_m / (span_m / 2)
    assert geometry.tie_length(span_m, share) == pytest.approx(span_m - 2 * height_m / pitch)


@settings(deadline=None)
@given(SPANS, PITCHES, PITCHES, WALLS, WALLS)
def test_planes_meet_at_one_height(span_m: float, left: float, right: float, left_m: float, right_m: float) -> None:
    """From either wall the ridge is as high; mirrored, it is as far from the other wall."""
    place_m = (span_m * right + right_m - left_m) / (left + right)
    assume(0.0 < place_m < span_m)
    run_m = meeting.unequal_ridge_run(span_m, left, right, left_m, right_m)
    height_m = meeting.unequal_ridge_height(span_m, left, right, left_m, right_m)
    assert height_m == pytest.approx(right_m + (span_m - run_m) * right)
    mirrored_m = meeting.unequal_ridge_run(span_m, right, left, right_m, left_m)
    assert run_m + mirrored_m == pytest.approx(span_m)
    assert meeting.ridge_shift(span_m, run_m) == pytest.approx(-meeting.ridge_shift(span_m, mirrored_m), abs=1e-9)


@settings(deadline=None)
@given(SPANS, PITCHES)
def test_like_planes_meet_in_the_middle(span_m: float, pitch: float) -> None:
    """Equal pitches and walls leave the ridge where the gable room has it."""
    run_m = meeting.unequal_ridge_run(span_m, pitch, pitch, 0.5, 0.5)
    assert meeting.ridge_shift(span_m, run_m) == pytest.approx(0.0, abs=1e-9)
    height_m = meeting.unequal_ridge_height(span_m, pitch, pitch, 0.5, 0.5)
    assert height_m == pytest.approx(ceiling.ridge_height(span_m, 0.5, pitch))


def test_planes_that_do_not_meet_are_refused() -> None:
    """A wall that stands over the plane opposite leaves no ridge between."""
    with pytest.raises(OutOfRange, match="distance at which the planes meet"):
        meeting.unequal_ridge_run(6.0, 0.2, 0.2, 3.0, 0.0)
    with pytest.raises(OutOfRange):
        meeting.unequal_ridge_run(6.0, 0.0, 0.0, 1.0, 1.0)


@settings(deadline=None)
@given(from_nothing(3.0), from_nothing(0.5), st.floats(0.6, 2.0))
def test_a_shed_dormer_meets_the_main_roof(raised_m: float, dormer: float, main: float) -> None:
    """Where they meet, both lines have one height; a dormer that starts on the roof has no run."""
    run_m = meeting.shed_dormer_run(2.0 + raised_m, dormer, 2.0, main)
    top_m = meeting.shed_dormer_top_height(2.0 + raised_m, dormer, 2.0, main)
    assert top_m == pytest.approx(2.0 + run_m * main)
    assert meeting.shed_dormer_run(2.0, dormer, 2.0, main) == 0.0


@settings(deadline=None)
@given(st.floats(0.3, 3.0), PITCHES, PITCHES)
def test_a_gable_dormer_ends_where_its_valleys_do(half_m: float, dormer: float, main: float) -> None:
    """The ridge of a dormer whose eaves lie on the main roof runs back as far as the valleys do."""
    rise_m = half_m * dormer
    run_m = meeting.gable_dormer_ridge_run(rise_m, 0.0, main)
    assert meeting.valley_length(half_m, dormer, main) == pytest.approx(math.hypot(half_m, rise_m, run_m))


@settings(deadline=None)
@given(from_nothing(4.0), from_nothing(2.0), PITCHES, PITCHES)
def test_headroom_gained_is_the_difference_of_two_ceilings(
    distance_m: float, raised_m: float, old: float, new: float
) -> None:
    """The gain is what the height under the slope says before and after."""
    before_m = ceiling.height_at(distance_m, 1.0, old)
    after_m = ceiling.height_at(distance_m, 1.0 + raised_m, new)
    assert meeting.headroom_gained(distance_m, raised_m, old, new) == pytest.approx(after_m - before_m)
