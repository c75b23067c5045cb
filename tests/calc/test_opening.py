"""Laws of windows, walls and boundaries."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc import boundary, opening

SIZES = st.floats(0.3, 2.5)
SMALL = st.floats(0.0, 0.1)
SHARES = st.floats(0.05, 0.95)
ANGLES = st.floats(0.01, math.pi / 2)


@settings(deadline=None)
@given(SIZES, SMALL, SMALL, SHARES)
def test_sliding_sash_and_its_unit_are_inverse(clear_m: float, frame_m: float, sash_m: float, share: float) -> None:
    """A unit made for a clear size has it, standing or lying."""
    height_m = opening.hung_unit_height(clear_m, frame_m, sash_m, share)
    assert opening.hung_clear_height(height_m, frame_m, sash_m, share) == pytest.approx(clear_m)
    width_m = opening.slider_unit_width(clear_m, frame_m, sash_m, share)
    assert opening.slider_clear_width(width_m, frame_m, sash_m, share) == pytest.approx(clear_m)
    assert width_m >= 2 * clear_m


@settings(deadline=None)
@given(SIZES, SHARES)
def test_a_sliding_sash_opens_half_at_most(unit_m: float, share: float) -> None:
    """A tall sash and the short one that leaves the same rest open alike; halves open most."""
    opened_m = opening.hung_clear_height(unit_m, 0.0, 0.0, share)
    assert opened_m == pytest.approx(opening.hung_clear_height(unit_m, 0.0, 0.0, 1 - share))
    assert opened_m <= opening.hung_clear_height(unit_m, 0.0, 0.0) == unit_m / 2


@settings(deadline=None)
@given(SIZES, st.floats(0.01, 3.0))
def test_a_hinge_only_takes_away(unit_m: float, throw_m: float) -> None:
    """The throw limits the casement and never widens it."""
    free_m = opening.side_hung_clear_width(unit_m, 0.1, 0.05)
    assert free_m == pytest.approx(unit_m - 0.15)
    limited_m = opening.side_hung_clear_width(unit_m, 0.1, 0.05, hinge_throw_m=throw_m)
    assert limited_m == min(free_m, throw_m)


@settings(deadline=None)
@given(SIZES, SIZES, ANGLES)
def test_swinging_sash(length_m: float, depth_m: float, angle: float) -> None:
    """Air finds more room than the plane of the wall shows, and never more than the sash."""
    in_plane_m2 = length_m * opening.swing_clear_depth(depth_m, angle)
    free_m2 = opening.swing_free_area(length_m, depth_m, angle)
    assert in_plane_m2 <= free_m2 * (1 + 1e-12)
    assert free_m2 <= length_m * depth_m
    # law of cosines: from the free edge to where it was
    edge_m = math.sqrt(2 * depth_m**2 * (1 - math.cos(angle)))
    sides_m2 = 2 * 0.5 * depth_m * depth_m * math.sin(angle)
    assert free_m2 == pytest.approx(min(length_m * depth_m, length_m * edge_m + sides_m2))


@settings(deadline=None)
@given(SIZES, ANGLES, SMALL)
def test_awning(height_m: float, angle: float, sash_m: float) -> None:
    """An awning's clear height is what its sash does not hide, and not under 0."""
    clear_m = opening.projecting_clear_height(height_m, 0.05, sash_m, angle)
    hidden_m = (height_m - 0.05) * math.cos(angle)
    assert clear_m == pytest.approx(max(0.0, height_m - 0.05 - hidden_m - sash_m), abs=1e-12)
    assert opening.projecting_clear_height(height_m, 0.05, 0.0, 0.0) == 0


@settings(deadline=None)
@given(st.floats(0.1, 3.0), SIZES)
def test_area_and_its_sides(area_m2: float, side_m: float) -> None:
    """The side found for an area makes that area."""
    width_m = opening.width_for_area(area_m2, side_m)
    height_m = opening.height_for_area(area_m2, side_m)
    assert opening.clear_area(width_m, side_m) == pytest.approx(area_m2)
    assert opening.clear_area(side_m, height_m) == pytest.approx(area_m2)


@settings(deadline=None)
@given(st.floats(0.0, 1.0), st.floats(1.0, 100.0))
def test_shares(share: float, area_m2: float) -> None:
    """The area of a share has that share, of a floor and of a wall."""
    assert opening.floor_share(opening.area_for_share(share, area_m2), area_m2) == pytest.approx(share)
    openings_m2 = boundary.openings_area_allowed(share, area_m2)
    assert boundary.openings_share(openings_m2, area_m2) == pytest.approx(share)


@settings(deadline=None)
@given(SIZES, SIZES)
def test_glass_is_within_the_unit(width_m: float, height_m: float) -> None:
    """Deductions of width and height come off as strips round the glass."""
    glass_m2 = opening.glazed_area(width_m, height_m, 0.1, 0.2)
    strips_m2 = 0.1 * height_m + 0.2 * width_m - 0.1 * 0.2
    assert glass_m2 == pytest.approx(width_m * height_m - strips_m2)
    assert opening.hung_clear_width(width_m, 0.1) == pytest.approx(width_m - 0.1)


@settings(deadline=None)
@given(st.floats(1.0, 20.0), st.floats(0.0, 10.0), st.floats(0.0, 2.0))
def test_gable_wall_lies_between_its_rectangles(width_m: float, eaves_m: float, pitch: float) -> None:
    """The wall averages the heights of eaves and ridge."""
    rise_m = boundary.gable_rise(width_m, pitch)
    area_m2 = boundary.gable_wall_area(width_m, eaves_m, rise_m)
    assert area_m2 == pytest.approx(width_m * (eaves_m + (eaves_m + rise_m)) / 2)
    if area_m2 > 0:
        average_m = boundary.average_wall_height([area_m2, 12.0], [width_m, 4.0])
        assert min(area_m2 / width_m, 3.0) - 1e-9 <= average_m <= max(area_m2 / width_m, 3.0) + 1e-9


ELEVATIONS = st.floats(-50.0, 50.0)


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0.1, 30.0), ELEVATIONS, ELEVATIONS), min_size=1, max_size=12))
def test_grade_plane(walls: list[tuple[float, float, float]]) -> None:
    """The grade plane lies within the ground, moves with the datum, and does not mind a wall cut in two."""
    lengths_m, starts_m, ends_m = (list(column) for column in zip(*walls, strict=True))
    plane_m = boundary.grade_plane_elevation(lengths_m, starts_m, ends_m)
    assert min(starts_m + ends_m) - 1e-9 <= plane_m <= max(starts_m + ends_m) + 1e-9
    raised_m = boundary.grade_plane_elevation(
        lengths_m, [start + 100 for start in starts_m], [end + 100 for end in ends_m]
    )
    assert boundary.height_above_grade_plane(raised_m, plane_m) == pytest.approx(100)
    middle_m = (starts_m[0] + ends_m[0]) / 2
    cut_m = boundary.grade_plane_elevation(
        [lengths_m[0] / 2, lengths_m[0] / 2, *lengths_m[1:]],
        [starts_m[0], middle_m, *starts_m[1:]],
        [middle_m, *ends_m],
    )
    assert cut_m == pytest.approx(plane_m, abs=1e-9)


def test_a_longer_wall_weighs_more() -> None:
    """The average goes by length, not by the number of walls."""
    assert boundary.grade_plane_elevation([30.0, 10.0], [100.0, 104.0], [100.0, 104.0]) == 101.0


@settings(deadline=None)
@given(st.floats(0.0, 2.0), st.floats(0.0, 2.0), st.floats(0.0, 5.0))
def test_eaves(tail_m: float, pitch: float, wall_m: float) -> None:
    """A steeper tail stands out less; the eave may cross the line, and the sign says so."""
    overhang_m = boundary.overhang_of_rafter_tail(tail_m, pitch)
    assert overhang_m**2 * (1 + pitch**2) == pytest.approx(tail_m**2)
    assert boundary.eave_distance(wall_m, overhang_m) == wall_m - overhang_m
    assert boundary.eave_distance(0.1, 0.3) < 0


def test_a_full_storey_over_a_smaller_one() -> None:
    """A share of storeys may pass 1."""
    assert boundary.storey_share(110.0, 100.0) == pytest.approx(1.1)
