"""Rooms under a roof: clear heights and the floor below them.

one slope    the ceiling rises from a knee wall towards a full-height wall (or the ridge)
two slopes   a gable room: knee walls alike on both sides, the ridge over the middle

heights   height_at, distance_to_height, ridge_height
widths    width_at_height_one_slope, width_at_height_two_slope
areas     area_at_height_one_slope, area_at_height_two_slope, area_share
means     average_height_one_slope, average_height_two_slope, volume
to mend   flat_height_for_width_one_slope, flat_height_for_width_two_slope,
          pitch_for_width_one_slope, pitch_for_width_two_slope

Heights are from finished floor to finished ceiling; widths run across the ridge, lengths along it. A flat
ceiling (under collars) caps the slopes; None says there is none. A room with unlike sides is two one-slope
parts, a room with a shed dormer over a part of its length is a part of `dormer` and a gable part; areas and
volumes add up.
"""

from __future__ import annotations

from checker.calc._checks import between, not_negative, positive, reaches
from checker.calc._slopes import check_slope, run_to, section_area
from checker.calc.errors import OutOfRange


def height_at(
    distance_m: float, knee_wall_height_m: float, pitch_ratio: float, flat_height_m: float | None = None
) -> float:
    """Clear height under a slope at a level distance from the knee wall. [m]

    Parameters
        distance_m: float — level distance from the knee wall. [m], 0 or more
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee wall, or None
    Returns
        float — clear height. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A 12/12 slope over a knee wall of 5 ft, 2 ft out: 7 ft.

        >>> round(height_at(2 * 0.3048, 5 * 0.3048, 12 / 12) / 0.3048, 6)
        7.0
    """
    check_slope(knee_wall_height_m, pitch_ratio, flat_height_m)
    slope_m = knee_wall_height_m + pitch_ratio * not_negative("distance_m", distance_m)
    return slope_m if flat_height_m is None else min(slope_m, flat_height_m)


def distance_to_height(height_m: float, knee_wall_height_m: float, pitch_ratio: float) -> float:
    """Level distance from the knee wall at which a slope reaches a height. [m]

    Parameters
        height_m: float — clear height wanted. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], over 0
    Returns
        float — distance, 0 if the knee wall is as high. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Magazine answer on framing a roof between unequal walls: 24 in at 6/12 take a run of 48 in.
    Examples
        [1]: from an 8 ft wall to 10 ft at 6/12.

        >>> round(distance_to_height(120 * 0.0254, 96 * 0.0254, 6 / 12) / 0.0254, 6)
        48.0
    """
    not_negative("knee_wall_height_m", knee_wall_height_m)
    missing_m = positive("height_m", height_m) - knee_wall_height_m
    return max(0.0, missing_m) / positive("pitch_ratio", pitch_ratio)


def ridge_height(room_width_m: float, knee_wall_height_m: float, pitch_ratio: float) -> float:
    """Clear height under the ridge of a gable room without a flat ceiling. [m]

    Parameters
        room_width_m: float — knee wall to knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
    Returns
        float — clear height at the middle. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Owner-builder forum, loft of a 14 ft cottage: side walls of 2 ft 6 in at 12/12 give 9 ft 6 in.
    Examples
        [2]

        >>> round(ridge_height(14 * 0.3048, 2.5 * 0.3048, 12 / 12) / 0.3048, 6)
        9.5
    """
    return height_at(positive("room_width_m", room_width_m) / 2, knee_wall_height_m, pitch_ratio)


def width_at_height_one_slope(
    height_m: float,
    room_width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Width of floor with at least a given clear height, one slope. [m]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — knee wall to the opposite wall or to the ridge. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee wall, or None
    Returns
        float — width, 0 to the room's. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A ceiling exactly at the height counts: a flat ceiling of 7 ft makes the whole flat part 7 ft high,
        one a hair lower makes none of it.
    References
        Geometry; asked for in International Residential Code, 2018, R305.1, exception 1.
    Examples
        10 ft wide, 4 ft at the knee wall, 9/12: 7 ft is reached 4 ft out, which leaves 6 ft.

        >>> foot = 0.3048
        >>> round(width_at_height_one_slope(7 * foot, 10 * foot, 4 * foot, 9 / 12) / foot, 6)
        6.0
    """
    positive("height_m", height_m)
    positive("room_width_m", room_width_m)
    check_slope(knee_wall_height_m, pitch_ratio, flat_height_m)
    if flat_height_m is not None and not reaches(flat_height_m, height_m):
        return 0.0
    return room_width_m - min(room_width_m, run_to(height_m, knee_wall_height_m, pitch_ratio))


def width_at_height_two_slope(
    height_m: float,
    room_width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Width of floor with at least a given clear height, gable room. [m]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — knee wall to knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee walls, or None
    Returns
        float — width, 0 to the room's. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Owner-builder forum, loft of a 14 ft cottage: side walls of 2 ft 6 in at 12/12 give 9 ft over 5
            ft.
    Examples
        [2]

        >>> foot = 0.3048
        >>> round(width_at_height_two_slope(5 * foot, 14 * foot, 2.5 * foot, 12 / 12) / foot, 6)
        9.0
    """
    half_m = positive("room_width_m", room_width_m) / 2
    return 2 * width_at_height_one_slope(height_m, half_m, knee_wall_height_m, pitch_ratio, flat_height_m)


def area_at_height_one_slope(
    height_m: float,
    room_width_m: float,
    room_length_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Floor area with at least a given clear height, one slope. [m2]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — knee wall to the opposite wall or to the ridge. [m], over 0
        room_length_m: float — length along the slope's foot. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee wall, or None
    Returns
        float — area, 0 to the room's. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; asked for in International Residential Code, 2018, R305.1, exception 1.
    """
    section = (room_width_m, knee_wall_height_m, pitch_ratio, flat_height_m)
    return positive("room_length_m", room_length_m) * width_at_height_one_slope(height_m, *section)


def area_at_height_two_slope(
    height_m: float,
    room_width_m: float,
    room_length_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    flat_height_m: float | None = None,
) -> float:
    """Floor area with at least a given clear height, gable room. [m2]

    Parameters
        height_m: float — clear height asked for. [m], over 0
        room_width_m: float — knee wall to knee wall. [m], over 0
        room_length_m: float — length along the ridge. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee walls, or None
    Returns
        float — area, 0 to the room's. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; asked for in International Residential Code, 2018, R305.1, exception 1.
    Examples
        12/12 to a ridge of 9 ft, 12 ft long, 5 ft knee walls 8 ft apart: 48 ft2 over 7 ft; none under
        collars of 6 ft 6 in.

        >>> foot = 0.3048
        >>> room = (8 * foot, 12 * foot, 5 * foot, 12 / 12)
        >>> round(area_at_height_two_slope(7 * foot, *room) / foot**2, 6)
        48.0
        >>> area_at_height_two_slope(7 * foot, *room, flat_height_m=6.5 * foot)
        0.0
    """
    section = (room_width_m, knee_wall_height_m, pitch_ratio, flat_height_m)
    return positive("room_length_m", room_length_m) * width_at_height_two_slope(height_m, *section)


def area_share(part_area_m2: float, whole_area_m2: float) -> float:
    """Share that a part of a floor has of an area. [ratio]

    Parameters
        part_area_m2: float — the part. [m2], 0 or more
        whole_area_m2: float — the room's, or the required, area. [m2], over 0
    Returns
        float — share; over 1 where the part is more than a required area. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] City of Tacoma, Washington, Attic Conversion tip sheet: 35 ft2 of 70 ft2.
    Examples
        [1]

        >>> area_share(35.0, 70.0)
        0.5
    """
    return not_negative("part_area_m2", part_area_m2) / positive("whole_area_m2", whole_area_m2)


def average_height_one_slope(
    room_width_m: float, knee_wall_height_m: float, pitch_ratio: float, flat_height_m: float | None = None
) -> float:
    """Average clear height, one slope. [m]

    Parameters
        room_width_m: float — knee wall to the opposite wall or to the ridge. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee wall, or None
    Returns
        float — average over the width. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        From 4 ft to 8 ft over 6 ft (8/12): 6 ft.

        >>> round(average_height_one_slope(6 * 0.3048, 4 * 0.3048, 8 / 12) / 0.3048, 6)
        6.0
    """
    positive("room_width_m", room_width_m)
    check_slope(knee_wall_height_m, pitch_ratio, flat_height_m)
    return section_area(knee_wall_height_m, pitch_ratio, room_width_m, flat_height_m) / room_width_m


def average_height_two_slope(
    room_width_m: float, knee_wall_height_m: float, pitch_ratio: float, flat_height_m: float | None = None
) -> float:
    """Average clear height, gable room. [m]

    Parameters
        room_width_m: float — knee wall to knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
        flat_height_m: float | None — height of a flat ceiling. [m], not under the knee walls, or None
    Returns
        float — average over the width. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        The gable over a 20 ft wall of 10 ft, 8 ft high: 280 ft2 over 20 ft are 14 ft.

        >>> round(average_height_two_slope(20 * 0.3048, 10 * 0.3048, 8 / 10) / 0.3048, 6)
        14.0
    """
    half_m = positive("room_width_m", room_width_m) / 2
    return average_height_one_slope(half_m, knee_wall_height_m, pitch_ratio, flat_height_m)


def volume(average_height_m: float, room_width_m: float, room_length_m: float) -> float:
    """Volume of a room with one section along its length. [m3]

    Parameters
        average_height_m: float — average clear height of the section. [m], over 0
        room_width_m: float — width of the section. [m], over 0
        room_length_m: float — length along the ridge. [m], over 0
    Returns
        float — volume. [m3]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] North Carolina State University Extension, figure 1A: floor area times average height of the roof.
    Examples
        6 ft by 10 ft by 12 ft.

        >>> volume(6.0, 10.0, 12.0)
        720.0
    """
    floor_m2 = positive("room_width_m", room_width_m) * positive("room_length_m", room_length_m)
    return positive("average_height_m", average_height_m) * floor_m2


def flat_height_for_width_one_slope(
    flat_width_m: float, room_width_m: float, knee_wall_height_m: float, pitch_ratio: float
) -> float:
    """Height of the flat ceiling that is a wanted width wide, one slope. [m]

    Parameters
        flat_width_m: float — width of flat ceiling wanted. [m], 0 to the room's
        room_width_m: float — knee wall to the opposite wall or to the ridge. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
    Returns
        float — height; a lower one is wider. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        10 ft wide, 4 ft at the knee wall, 9/12: a flat of 4 ft lies at 8 ft 6 in.

        >>> foot = 0.3048
        >>> round(flat_height_for_width_one_slope(4 * foot, 10 * foot, 4 * foot, 9 / 12) / foot, 6)
        8.5
    """
    flat_m = between("flat_width_m", flat_width_m, 0.0, positive("room_width_m", room_width_m))
    return height_at(room_width_m - flat_m, knee_wall_height_m, pitch_ratio)


def flat_height_for_width_two_slope(
    flat_width_m: float, room_width_m: float, knee_wall_height_m: float, pitch_ratio: float
) -> float:
    """Height of the flat ceiling (of the collars) that is a wanted width wide, gable room. [m]

    Parameters
        flat_width_m: float — width of flat ceiling wanted. [m], 0 to the room's
        room_width_m: float — knee wall to knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
        pitch_ratio: float — rise of the ceiling for one of run. [ratio], 0 or more
    Returns
        float — height; a lower one is wider. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        14 ft at 12/12 over 2-1/2 ft: a flat of 3 ft lies at 8 ft.

        >>> foot = 0.3048
        >>> round(flat_height_for_width_two_slope(3 * foot, 14 * foot, 2.5 * foot, 12 / 12) / foot, 6)
        8.0
    """
    halves_m = (flat_width_m / 2, positive("room_width_m", room_width_m) / 2)
    return flat_height_for_width_one_slope(*halves_m, knee_wall_height_m, pitch_ratio)


def pitch_for_width_one_slope(
    wanted_width_m: float, height_m: float, room_width_m: float, knee_wall_height_m: float
) -> float:
    """Least pitch that gives a wanted width of floor a clear height, one slope. [ratio]

    Parameters
        wanted_width_m: float — width of floor at the height. [m], 0 or more, under the room's
        height_m: float — clear height wanted. [m], over 0
        room_width_m: float — knee wall to the opposite wall or to the ridge. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee wall. [m], 0 or more
    Returns
        float — rise for one of run, 0 if the knee wall is as high. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Home repair article on rafters: 20 in of rise in 5 ft of run is 4/12.
    Examples
        [2]

        >>> round(12 * pitch_for_width_one_slope(0.0, 20 * 0.0254, 60 * 0.0254, 0.0), 6)
        4.0
    """
    positive("room_width_m", room_width_m)
    if not_negative("wanted_width_m", wanted_width_m) >= room_width_m:
        raise OutOfRange("wanted_width_m", wanted_width_m, f"under the room's width, {room_width_m:.12g}")
    missing_m = positive("height_m", height_m) - not_negative("knee_wall_height_m", knee_wall_height_m)
    return max(0.0, missing_m) / (room_width_m - wanted_width_m)


def pitch_for_width_two_slope(
    wanted_width_m: float, height_m: float, room_width_m: float, knee_wall_height_m: float
) -> float:
    """Least pitch that gives a wanted width of floor a clear height, gable room. [ratio]

    Parameters
        wanted_width_m: float — width of floor at the height. [m], 0 or more, under the room's
        height_m: float — clear height wanted. [m], over 0
        room_width_m: float — knee wall to knee wall. [m], over 0
        knee_wall_height_m: float — floor to ceiling at the knee walls. [m], 0 or more
    Returns
        float — rise for one of run, 0 if the knee walls are as high. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        4 ft at 7 ft in a room 8 ft wide with knee walls of 5 ft: 12/12.

        >>> foot = 0.3048
        >>> round(12 * pitch_for_width_two_slope(4 * foot, 7 * foot, 8 * foot, 5 * foot), 6)
        12.0
    """
    halves_m = (wanted_width_m / 2, height_m, positive("room_width_m", room_width_m) / 2)
    return pitch_for_width_one_slope(*halves_m, knee_wall_height_m)
