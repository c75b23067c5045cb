"""A house against its lot line and its zone: walls, openings in them, grade, eaves, storeys.

walls     gable_rise, gable_wall_area, average_wall_height
openings  openings_share, openings_area_allowed
grade     grade_plane_elevation, height_above_grade_plane
eaves     overhang_of_rafter_tail, eave_distance
storeys   storey_share
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, between, finite, not_negative, positive
from checker.calc.errors import OutOfRange


def gable_rise(wall_width_m: float, pitch_ratio: float) -> float:
    """Rise of the gable over a wall, from the eaves to the ridge over the middle. [m]

    Parameters
        wall_width_m: float — width of the gable wall. [m], over 0
        pitch_ratio: float — rise of the roof for one of run. [ratio], 0 or more
    Returns
        float — rise. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] US Army engineer course EN5156, figure 3-28, Roof Pitch: a pitch of 1/3 of the span rises 8 in 12.
    Examples
        [1]: 24 ft at 8 in 12 rise a third of 24 ft.

        >>> round(gable_rise(24 * 0.3048, 8 / 12) / 0.3048, 6)
        8.0
    """
    return positive("wall_width_m", wall_width_m) / 2 * not_negative("pitch_ratio", pitch_ratio)


def gable_wall_area(wall_width_m: float, eaves_height_m: float, gable_rise_m: float) -> float:
    """Area of a gable wall: rectangle up to the eaves and triangle above. [m2]

    Parameters
        wall_width_m: float — width of the wall. [m], over 0
        eaves_height_m: float — grade (or floor) to the eaves, 0 for the triangle alone. [m], 0 or more
        gable_rise_m: float — eaves to the ridge. [m], 0 or more
    Returns
        float — area, openings included. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Video page on measuring for siding: 20 ft by 10 ft and a gable of 8 ft are 200 and 80 ft2.
    Examples
        [1]

        >>> round(gable_wall_area(20 * 0.3048, 10 * 0.3048, 8 * 0.3048) / 0.3048**2, 6)
        280.0
    """
    rectangle_m2 = positive("wall_width_m", wall_width_m) * not_negative("eaves_height_m", eaves_height_m)
    return rectangle_m2 + wall_width_m * not_negative("gable_rise_m", gable_rise_m) / 2


def average_wall_height(wall_areas_m2: Sequence[float], wall_lengths_m: Sequence[float]) -> float:
    """Average height of the walls of a building above grade, by area. [m]

    Parameters
        wall_areas_m2: Sequence[float] — area of each wall above grade. [m2], each over 0, one or more
        wall_lengths_m: Sequence[float] — length of each wall, in the same order. [m], each over 0, one or
            more
    Returns
        float — average height. [m]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        sum of areas / sum of lengths.
    References
        [1] Dictionary of contract terms, mean height: the elevation's area divided by its length.
    Examples
        The wall of 20 ft with 280 ft2 is 14 ft high on average.

        >>> average_wall_height([280.0], [20.0])
        14.0
    """
    _check_same_length("wall_areas_m2", wall_areas_m2, wall_lengths_m)
    areas_m2 = all_positive("wall_areas_m2", wall_areas_m2)
    return math.fsum(areas_m2) / math.fsum(all_positive("wall_lengths_m", wall_lengths_m))


def openings_share(openings_area_m2: float, wall_area_m2: float) -> float:
    """Share of a wall that is openings. [ratio]

    Parameters
        openings_area_m2: float — windows, doors and other openings together. [m2], 0 up to the wall's area
        wall_area_m2: float — area of the wall, openings included. [m2], over 0
    Returns
        float — share, 0 to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Home repair article on light and ventilation: 44 ft2 open in a partition of 88 ft2.
    Examples
        [2]

        >>> openings_share(44.0, 88.0)
        0.5
    """
    wall_m2 = positive("wall_area_m2", wall_area_m2)
    return between("openings_area_m2", openings_area_m2, 0.0, wall_m2) / wall_m2


def openings_area_allowed(share_ratio: float, wall_area_m2: float) -> float:
    """Area of openings that a share of a wall comes to. [m2]

    Parameters
        share_ratio: float — share of the wall. [ratio], 0 to 1
        wall_area_m2: float — area of the wall, openings included. [m2], over 0
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Home repair article on light and ventilation: half of a partition of 88 ft2 is 44 ft2.
    Examples
        [2]

        >>> openings_area_allowed(0.5, 88.0)
        44.0
    """
    return between("share_ratio", share_ratio, 0.0, 1.0) * positive("wall_area_m2", wall_area_m2)


def grade_plane_elevation(
    wall_lengths_m: Sequence[float], start_elevations_m: Sequence[float], end_elevations_m: Sequence[float]
) -> float:
    """Elevation of the grade plane: finished ground along all exterior walls, averaged by length. [m]

    Parameters
        wall_lengths_m: Sequence[float] — length of each stretch of wall. [m], each over 0, one or more
        start_elevations_m: Sequence[float] — ground at the start of each stretch. [m], any
        end_elevations_m: Sequence[float] — ground at the end of each stretch. [m], any
    Returns
        float — elevation over the same datum. [m]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        Each stretch counts the mean of its two ends, weighted by its length; where the ground bends or
        steps, divide the wall there. Where ground falls away from the wall, the codes have the lowest point
        within a distance entered instead of the ground at the wall. Some zoning codes average corners
        without weights.
    References
        [1] Geometry.
        [2] Architects' note on height limits (modearchitecture.com): midpoints of the walls, weighted by
            length.
        [3] International Residential Code, 2018, R202, Grade Plane.
    Examples
        10 m along a slope from 100 to 102 and 10 m level at 102: 101.5.

        >>> grade_plane_elevation([10.0, 10.0], [100.0, 102.0], [102.0, 102.0])
        101.5
    """
    _check_same_length("start_elevations_m", start_elevations_m, wall_lengths_m)
    _check_same_length("end_elevations_m", end_elevations_m, wall_lengths_m)
    lengths_m = all_positive("wall_lengths_m", wall_lengths_m)
    stretches = zip(lengths_m, start_elevations_m, end_elevations_m, strict=True)
    weighted = math.fsum(length * (start + end) / 2 for length, start, end in stretches)
    return finite("average of the elevations", weighted / math.fsum(lengths_m))


def height_above_grade_plane(top_elevation_m: float, grade_plane_elevation_m: float) -> float:
    """Height of a roof, eaves or floor over the grade plane. [m]

    Parameters
        top_elevation_m: float — elevation of the point that the code names. [m], any
        grade_plane_elevation_m: float — elevation of the grade plane over the same datum. [m], any
    Returns
        float — height, negative below the grade plane. [m]
    Raises
        OutOfRange — NaN or infinity.
    References
        [1] International Residential Code, 2018, R202, Height, Building.
    Examples
        A ridge at 110 over a grade plane of 101.5.

        >>> height_above_grade_plane(110.0, 101.5)
        8.5
    """
    top_m = finite("top_elevation_m", top_elevation_m)
    return top_m - finite("grade_plane_elevation_m", grade_plane_elevation_m)


def overhang_of_rafter_tail(tail_length_m: float, pitch_ratio: float) -> float:
    """Level overhang of a rafter tail measured on the slope. [m]

    Parameters
        tail_length_m: float — tail on the slope, from the wall face to its end. [m], 0 or more
        pitch_ratio: float — rise of the roof for one of run. [ratio], 0 or more
    Returns
        float — level overhang; fascia and gutter come on top. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        At 9/12 a tail of 15 in stands out 12 in.

        >>> round(overhang_of_rafter_tail(15 * 0.0254, 9 / 12) / 0.0254, 6)
        12.0
    """
    tail_m = not_negative("tail_length_m", tail_length_m)
    return tail_m / math.hypot(1.0, not_negative("pitch_ratio", pitch_ratio))


def eave_distance(wall_distance_m: float, overhang_m: float) -> float:
    """Distance from the edge of an eave to the line that its wall is measured to. [m]

    Parameters
        wall_distance_m: float — face of the wall to the line, square to the wall. [m], 0 or more
        overhang_m: float — level overhang, fascia and gutter included. [m], 0 or more
    Returns
        float — distance, negative if the eave crosses the line. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; the distance of projections asked for in International Residential Code, 2018, table
        R302.1(1).
    Examples
        A wall 5 ft from the line with 18 in of eave: 3 ft 6 in.

        >>> round(eave_distance(5 * 0.3048, 18 * 0.0254) / 0.3048, 6)
        3.5
    """
    return not_negative("wall_distance_m", wall_distance_m) - not_negative("overhang_m", overhang_m)


def storey_share(upper_area_m2: float, lower_area_m2: float) -> float:
    """Floor area of a storey as a share of the storey below. [ratio]

    Parameters
        upper_area_m2: float — floor area counted of the upper storey. [m2], 0 or more
        lower_area_m2: float — floor area of the storey below. [m2], over 0
    Returns
        float — share, over 1 where the upper storey is larger. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        What of the upper storey counts (over 5 ft, over 7 ft, finished) is the code's to say.
    References
        [1] Zoning code of Struthers, Ohio, 1111.07, Half Story (compares with the floor below).
    Examples
        400 ft2 counted over 1,000 ft2.

        >>> storey_share(400.0, 1000.0)
        0.4
    """
    return not_negative("upper_area_m2", upper_area_m2) / positive("lower_area_m2", lower_area_m2)


def _check_same_length(name: str, values: Sequence[float], others: Sequence[float]) -> None:
    """Refuse a list that has not one entry for each wall."""
    if len(values) != len(others):
        raise OutOfRange(name, list(values), f"one number for each of {len(others)} wall lengths")
