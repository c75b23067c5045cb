"""Laws of rooms under a roof: areas at a height, averages, dormers, what would mend them."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.calc import ceiling, dormer

WIDTHS = st.floats(0.5, 12.0)
KNEES = st.floats(0.0, 2.5)
PITCHES = st.floats(0.0, 2.0)
HEIGHTS = st.floats(0.1, 4.0)
FLATS = st.one_of(st.none(), st.floats(0.0, 3.0))  # above the knee wall


def flat_height(knee_m: float, above_m: float | None) -> float | None:
    """Height of a flat ceiling that lies above the knee wall."""
    return None if above_m is None else knee_m + above_m + 0.01


def strips(height_over: Callable[[float], float], width_m: float, count: int = 4000) -> list[float]:
    """Clear heights over the middles of narrow strips of floor."""
    return [height_over((place + 0.5) * width_m / count) for place in range(count)]


def gable_height(width_m: float, knee_m: float, pitch: float, flat_m: float | None) -> Callable[[float], float]:
    """Clear height of a gable room over a distance from one knee wall, straight from the section."""
    cap_m = float("inf") if flat_m is None else flat_m
    return lambda at_m: min(knee_m + pitch * min(at_m, width_m - at_m), cap_m)


def dormer_height(
    width_m: float, knee_m: float, pitch: float, wall_m: float, shed: float, flat_m: float | None
) -> Callable[[float], float]:
    """Clear height of a section through a shed dormer over a distance from the dormer wall."""
    cap_m = float("inf") if flat_m is None else flat_m

    def height(at_m: float) -> float:
        if at_m > width_m / 2:
            return min(knee_m + pitch * (width_m - at_m), cap_m)
        return min(max(wall_m + shed * at_m, knee_m + pitch * at_m), cap_m)

    return height


@settings(max_examples=40, deadline=None)
@given(HEIGHTS, WIDTHS, KNEES, PITCHES, FLATS)
def test_gable_agrees_with_counted_strips(
    height_m: float, width_m: float, knee_m: float, pitch: float, above_m: float | None
) -> None:
    """Average and width at a height agree with strips counted through the section."""
    flat_m = flat_height(knee_m, above_m)
    clear_m = strips(gable_height(width_m, knee_m, pitch, flat_m), width_m)
    average_m = ceiling.average_height_two_slope(width_m, knee_m, pitch, flat_m)
    assert average_m == pytest.approx(sum(clear_m) / len(clear_m), abs=1e-3)
    counted_m = width_m * sum(clear >= height_m for clear in clear_m) / len(clear_m)
    at_height_m = ceiling.width_at_height_two_slope(height_m, width_m, knee_m, pitch, flat_m)
    assert at_height_m == pytest.approx(counted_m, abs=3 * width_m / len(clear_m))


@settings(max_examples=40, deadline=None)
@given(HEIGHTS, WIDTHS, KNEES, st.floats(0.05, 2.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0), FLATS)
def test_dormer_agrees_with_counted_strips(
    height_m: float,
    width_m: float,
    knee_m: float,
    pitch: float,
    wall_share: float,
    shed_share: float,
    above_m: float | None,
) -> None:
    """The section through a dormer, too, agrees with strips counted through it."""
    ridge_m = ceiling.ridge_height(width_m, knee_m, pitch)
    wall_m = max(0.05, knee_m + wall_share * (ridge_m - knee_m))
    assume(wall_m <= ridge_m)
    shed = shed_share * (ridge_m - wall_m) / (width_m / 2)
    flat_m = flat_height(wall_m, above_m)
    section = (width_m, knee_m, pitch, wall_m, shed, flat_m)
    clear_m = strips(dormer_height(*section), width_m)
    average_m = dormer.average_height_shed_dormer(*section)
    assert average_m == pytest.approx(sum(clear_m) / len(clear_m), abs=2e-3)
    counted_m = width_m * sum(clear >= height_m for clear in clear_m) / len(clear_m)
    at_height_m = dormer.width_at_height_shed_dormer(height_m, *section)
    assert at_height_m == pytest.approx(counted_m, abs=4 * width_m / len(clear_m))
    area_m2 = dormer.area_at_height_shed_dormer(height_m, width_m, 3.0, *section[1:])
    assert area_m2 == pytest.approx(3 * at_height_m)


@settings(deadline=None)
@given(HEIGHTS, HEIGHTS, WIDTHS, st.floats(0.5, 12.0), KNEES, PITCHES, FLATS)
def test_areas_fall_with_the_height_and_stay_within_the_room(
    first_m: float,
    second_m: float,
    width_m: float,
    length_m: float,
    knee_m: float,
    pitch: float,
    above_m: float | None,
) -> None:
    """More height is never over more floor; no area is negative or larger than the room."""
    room = (width_m, length_m, knee_m, pitch, flat_height(knee_m, above_m))
    low_m, high_m = sorted((first_m, second_m))
    for area in (ceiling.area_at_height_one_slope, ceiling.area_at_height_two_slope):
        over_low_m2, over_high_m2 = area(low_m, *room), area(high_m, *room)
        assert 0 <= over_high_m2 <= over_low_m2 <= width_m * length_m * (1 + 1e-12)
        if knee_m > 0:
            assert area(knee_m, *room) == pytest.approx(width_m * length_m)


@settings(deadline=None)
@given(HEIGHTS, WIDTHS, st.floats(0.5, 12.0), KNEES, PITCHES, FLATS)
def test_one_slope_doubled_is_two_slopes(
    height_m: float,
    width_m: float,
    length_m: float,
    knee_m: float,
    pitch: float,
    above_m: float | None,
) -> None:
    """A gable room is two one-slope rooms back to back, in area, height and volume."""
    slope = (knee_m, pitch, flat_height(knee_m, above_m))
    one_m2 = ceiling.area_at_height_one_slope(height_m, width_m, length_m, *slope)
    two_m2 = ceiling.area_at_height_two_slope(height_m, 2 * width_m, length_m, *slope)
    assert two_m2 == pytest.approx(2 * one_m2)
    one_m = ceiling.average_height_one_slope(width_m, *slope)
    two_m = ceiling.average_height_two_slope(2 * width_m, *slope)
    assert two_m == pytest.approx(one_m)
    if one_m > 0:
        one_m3 = ceiling.volume(one_m, width_m, length_m)
        assert ceiling.volume(two_m, 2 * width_m, length_m) == pytest.approx(2 * one_m3)


@settings(deadline=None)
@given(HEIGHTS, KNEES, st.floats(0.05, 2.0))
def test_height_and_distance_are_inverse(height_m: float, knee_m: float, pitch: float) -> None:
    """At the distance found the ceiling is as high as asked, or the knee wall is higher."""
    distance_m = ceiling.distance_to_height(height_m, knee_m, pitch)
    assert ceiling.height_at(distance_m, knee_m, pitch) == pytest.approx(max(height_m, knee_m))


@settings(deadline=None)
@given(WIDTHS, KNEES, st.floats(0.05, 2.0), st.floats(0.01, 0.99))
def test_flat_ceiling_is_as_wide_as_wanted(width_m: float, knee_m: float, pitch: float, share: float) -> None:
    """The flat ceiling found leaves the wanted width at its own height, and none above it."""
    wanted_m = share * width_m
    rooms = (
        (ceiling.flat_height_for_width_one_slope, ceiling.width_at_height_one_slope),
        (ceiling.flat_height_for_width_two_slope, ceiling.width_at_height_two_slope),
    )
    for flat_for_width, width_at in rooms:
        flat_m = flat_for_width(wanted_m, width_m, knee_m, pitch)
        assert width_at(flat_m, width_m, knee_m, pitch, flat_m) == pytest.approx(wanted_m)
        assert width_at(flat_m + 0.001, width_m, knee_m, pitch, flat_m) == 0


@settings(deadline=None)
@given(WIDTHS, KNEES, HEIGHTS, st.floats(0.0, 0.95))
def test_pitch_gives_the_wanted_width(width_m: float, knee_m: float, height_m: float, share: float) -> None:
    """With the pitch found the wanted width has the height; with nine tenths of it, less has."""
    wanted_m = share * width_m
    rooms = (
        (ceiling.pitch_for_width_one_slope, ceiling.width_at_height_one_slope),
        (ceiling.pitch_for_width_two_slope, ceiling.width_at_height_two_slope),
    )
    for pitch_for_width, width_at in rooms:
        pitch = pitch_for_width(wanted_m, height_m, width_m, knee_m)
        if height_m <= knee_m:
            assert pitch == 0
            continue
        assume(height_m > knee_m + 0.01)
        assert width_at(height_m, width_m, knee_m, pitch) == pytest.approx(wanted_m, abs=1e-8)
        assert width_at(height_m, width_m, knee_m, 0.9 * pitch) <= max(0.0, wanted_m - 1e-6)


@settings(deadline=None)
@given(st.floats(1.0, 3.0))
def test_collars_at_the_height_count_and_below_it_do_not(height_m: float) -> None:
    """A flat ceiling exactly at the height makes its whole width count, a millimetre lower none of it."""
    room = (6.0, 4.0, 0.5, 1.0)
    whole_m2 = ceiling.area_at_height_two_slope(height_m, *room)
    assert ceiling.area_at_height_two_slope(height_m, *room, height_m) == whole_m2
    assert ceiling.area_at_height_two_slope(height_m, *room, height_m * (1 - 1e-15)) == whole_m2
    assert ceiling.area_at_height_two_slope(height_m, *room, height_m - 0.001) == 0
    assert whole_m2 > 0


def test_a_dormer_along_the_main_slope_changes_nothing() -> None:
    """A dormer as high as the knee wall and as steep as the roof is the roof."""
    gable = (6.0, 1.2, 0.8)
    for height_m in (1.0, 2.0, 3.0):
        plain_m = ceiling.width_at_height_two_slope(height_m, *gable)
        assert dormer.width_at_height_shed_dormer(height_m, *gable, 1.2, 0.8) == pytest.approx(plain_m)
    average_m = ceiling.average_height_two_slope(*gable)
    assert dormer.average_height_shed_dormer(*gable, 1.2, 0.8) == pytest.approx(average_m)


@settings(deadline=None)
@given(st.floats(0.0, 5.0), KNEES, PITCHES, FLATS)
def test_height_is_that_of_the_lower_of_slope_and_flat(
    distance_m: float, knee_m: float, pitch: float, above_m: float | None
) -> None:
    """A flat ceiling caps the slope; without one the slope goes on."""
    flat_m = flat_height(knee_m, above_m)
    height_m = ceiling.height_at(distance_m, knee_m, pitch, flat_m)
    rise_m = ceiling.height_at(distance_m, knee_m, pitch) - knee_m
    assert rise_m == pytest.approx(pitch * distance_m)
    assert height_m - knee_m == pytest.approx(rise_m if above_m is None else min(rise_m, above_m + 0.01))
