"""A gable room of which one side is raised by a shed dormer over its whole depth.

width_at_height_shed_dormer, area_at_height_shed_dormer, average_height_shed_dormer

The dormer wall stands in the line of the knee wall; the dormer's ceiling runs until the main slope of the
same side is higher, at the latest to the ridge. Heights, widths and the flat ceiling are as in `ceiling`;
its gable functions give the length of the room outside the dormer, its `volume` the volume of either part.
"""

from __future__ import annotations

from checker.calc._checks import between, positive, reaches
from checker.calc._slopes import section_area
from checker.calc.ceiling import ridge_height, width_at_height_one_slope
from checker.calc.errors import OutOfRange


def width_at_height_shed_dormer(
    height_m: float,
    room_width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    dormer_wall_height_m: float,
    dormer_pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Width of floor with at least a given clear height, section through a shed dormer. [m]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — dormer wall to the opposite knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the opposite knee wall. [m], 0 or more
        pitch_ratio: float — rise of the main slopes for one of run. [ratio], 0 or more
        dormer_wall_height_m: float — floor to ceiling at the dormer wall. [m], not under the knee wall
        dormer_pitch_ratio: float — rise of the dormer's ceiling for one of run. [ratio], 0 or more, and not
            so steep that it passes over the ridge
        flat_height_m: float | None — height of a flat ceiling. [m], not under the dormer wall, or None
    Returns
        float — width, 0 to the room's. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The dormer wall stands in the line of the knee wall. Its ceiling runs until the main slope of the
        same side is higher, at the latest to the ridge.
    References
        Geometry; asked for in International Residential Code, 2018, R305.1, exception 1.
    Examples
        14 ft at 12/12 over 2-1/2 ft: 5 ft of width over 7 ft; a flat dormer ceiling of 8 ft adds the
        4-1/2 ft on its side.

        >>> foot = 0.3048
        >>> section = (14 * foot, 2.5 * foot, 12 / 12, 8 * foot, 0.0)
        >>> round(width_at_height_shed_dormer(7 * foot, *section) / foot, 6)
        9.5
    """
    _check_dormer(room_width_m, knee_wall_height_m, pitch_ratio, dormer_wall_height_m, dormer_pitch_ratio)
    half_m = room_width_m / 2
    under_dormer_m = width_at_height_one_slope(
        height_m, half_m, dormer_wall_height_m, dormer_pitch_ratio, flat_height_m
    )
    under_slope_m = width_at_height_one_slope(height_m, half_m, knee_wall_height_m, pitch_ratio, flat_height_m)
    return max(under_dormer_m, under_slope_m) + under_slope_m


def area_at_height_shed_dormer(
    height_m: float,
    room_width_m: float,
    dormer_length_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    dormer_wall_height_m: float,
    dormer_pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Floor area with at least a given clear height, over the length of a shed dormer. [m2]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — dormer wall to the opposite knee wall. [m], over 0
        dormer_length_m: float — length of the dormer along the ridge, inside. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the opposite knee wall. [m], 0 or more
        pitch_ratio: float — rise of the main slopes for one of run. [ratio], 0 or more
        dormer_wall_height_m: float — floor to ceiling at the dormer wall. [m], not under the knee wall
        dormer_pitch_ratio: float — rise of the dormer's ceiling for one of run. [ratio], 0 or more, and not
            so steep that it passes over the ridge
        flat_height_m: float | None — height of a flat ceiling. [m], not under the dormer wall, or None
    Returns
        float — area, 0 to that of the part. [m2]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Add `area_at_height_two_slope` for the length of the room outside the dormer.
    References
        Geometry; asked for in International Residential Code, 2018, R305.1, exception 1.
    """
    main = (room_width_m, knee_wall_height_m, pitch_ratio)
    dormer = (dormer_wall_height_m, dormer_pitch_ratio, flat_height_m)
    return positive("dormer_length_m", dormer_length_m) * width_at_height_shed_dormer(height_m, *main, *dormer)


def average_height_shed_dormer(
    room_width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    dormer_wall_height_m: float,
    dormer_pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Average clear height of a section through a shed dormer. [m]

    Parameters
        room_width_m: float — dormer wall to the opposite knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the opposite knee wall. [m], 0 or more
        pitch_ratio: float — rise of the main slopes for one of run. [ratio], 0 or more
        dormer_wall_height_m: float — floor to ceiling at the dormer wall. [m], not under the knee wall
        dormer_pitch_ratio: float — rise of the dormer's ceiling for one of run. [ratio], 0 or more, and not
            so steep that it passes over the ridge
        flat_height_m: float | None — height of a flat ceiling. [m], not under the dormer wall, or None
    Returns
        float — average over the width. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A dormer that rises from 6 ft to the ridge at 9 ft (3 in 8) averages 7.5 ft, the other side from 1 ft
        5 ft.

        >>> foot = 0.3048
        >>> round(average_height_shed_dormer(16 * foot, 1 * foot, 8 / 8, 6 * foot, 3 / 8) / foot, 6)
        6.25
    """
    _check_dormer(room_width_m, knee_wall_height_m, pitch_ratio, dormer_wall_height_m, dormer_pitch_ratio)
    if flat_height_m is not None and not reaches(positive("flat_height_m", flat_height_m), dormer_wall_height_m):
        legal = f"at least the height of the dormer wall, {dormer_wall_height_m:.12g}"
        raise OutOfRange("flat_height_m", flat_height_m, legal)
    half_m = room_width_m / 2
    meets_m = half_m
    if pitch_ratio > dormer_pitch_ratio:
        raised_m = dormer_wall_height_m - knee_wall_height_m
        meets_m = min(half_m, raised_m / (pitch_ratio - dormer_pitch_ratio))
    under_dormer_m2 = section_area(dormer_wall_height_m, dormer_pitch_ratio, meets_m, flat_height_m)
    meeting_height_m = knee_wall_height_m + pitch_ratio * meets_m
    above_it_m2 = section_area(meeting_height_m, pitch_ratio, half_m - meets_m, flat_height_m)
    opposite_m2 = section_area(knee_wall_height_m, pitch_ratio, half_m, flat_height_m)
    return (under_dormer_m2 + above_it_m2 + opposite_m2) / room_width_m


def _check_dormer(
    room_width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    dormer_wall_height_m: float,
    dormer_pitch_ratio: float,
) -> None:
    """Refuse a dormer below the main slope or above the ridge."""
    ridge_m = ridge_height(room_width_m, knee_wall_height_m, pitch_ratio)
    between("dormer_wall_height_m", dormer_wall_height_m, knee_wall_height_m, ridge_m)
    steepest = (ridge_m - dormer_wall_height_m) / (room_width_m / 2)
    between("dormer_pitch_ratio", dormer_pitch_ratio, 0.0, max(0.0, steepest))
