"""Turned flights: winders and the line one walks on them.

the line     walkline_radius, walkline_length
a winder     winder_angle, winder_going, winder_going_at, winder_going_chord

The radius counts from the point in which the nosings of the winders meet. Nosings that do not meet in one
point (dancing steps) are outside these formulas.
"""

from __future__ import annotations

import math

from checker.calc._checks import not_negative, positive, whole
from checker.calc.errors import OutOfRange


def walkline_radius(narrow_end_radius_m: float, walkline_offset_m: float) -> float:
    """Radius of the walkline. [m]

    Parameters
        narrow_end_radius_m: float — centre of the turn to the narrow side, 0 for a point. [m], 0 or more
        walkline_offset_m: float — walkline from the narrow side. [m], 0 or more
    Returns
        float — radius. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; where the walkline lies is the code's (International Residential Code, 2018, R311.7.4: 12
        in).
    Examples
        7 in at the narrow side and 12 in from there.

        >>> round(walkline_radius(7 * 0.0254, 12 * 0.0254) / 0.0254, 6)
        19.0
    """
    return not_negative("narrow_end_radius_m", narrow_end_radius_m) + not_negative(
        "walkline_offset_m", walkline_offset_m
    )


def walkline_length(straight_going_m: float, turn_rad: float, walkline_radius_m: float) -> float:
    """Length of the walkline in plan over straight parts and one turn. [m]

    Parameters
        straight_going_m: float — total going of the straight parts. [m], 0 or more
        turn_rad: float — angle the stair turns through. [rad], over 0
        walkline_radius_m: float — radius of the walkline in the turn. [m], over 0
    Returns
        float — length in plan. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A quarter turn at a radius of 1 m after 2 m of straight flight.

        >>> round(walkline_length(2.0, math.pi / 2, 1.0), 4)
        3.5708
    """
    straight = not_negative("straight_going_m", straight_going_m)
    return straight + positive("turn_rad", turn_rad) * positive("walkline_radius_m", walkline_radius_m)


def winder_angle(turn_rad: float, winder_count: int) -> float:
    """Angle of each of a number of equal winders in a turn. [rad]

    Parameters
        turn_rad: float — angle the stair turns through. [rad], over 0
        winder_count: int — winders in the turn. [count], 1 or more
    Returns
        float — angle between two nosings. [rad]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Canada Mortgage and Housing Corporation, text on stairway design, figure 140.
    Examples
        [1]: three winders in a right angle are 30 degrees each.

        >>> round(math.degrees(winder_angle(math.pi / 2, 3)), 6)
        30.0
    """
    return positive("turn_rad", turn_rad) / whole("winder_count", winder_count, 1)


def winder_going(angle_rad: float, walkline_radius_m: float) -> float:
    """Going of a winder along the walkline. [m]

    Parameters
        angle_rad: float — angle between its two nosings. [rad], over 0, up to half a turn
        walkline_radius_m: float — radius of the walkline. [m], over 0
    Returns
        float — length of the arc. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        angle × radius. Measured straight from nosing to nosing it is a little shorter: `winder_going_chord`.
    References
        [1] Geometry.
        [2] Building Construction, part 3, Winders (chestofbooks.com): 9-3/7 in for three winders in a
            quarter turn.
    Examples
        [2]: three winders in a right angle, 18 in from the centre, are 9-3/7 in wide (with 22/7 for pi).

        >>> round(winder_going(math.pi / 6, 18 * 0.0254) / 0.0254, 2)
        9.42
    """
    return _check_angle(angle_rad) * positive("walkline_radius_m", walkline_radius_m)


def winder_going_at(angle_rad: float, narrow_end_radius_m: float, narrow_side_distance_m: float) -> float:
    """Going of a winder along the arc at a distance from its narrow side. [m]

    Parameters
        angle_rad: float — angle between its two nosings. [rad], over 0, up to half a turn
        narrow_end_radius_m: float — centre of the turn to the narrow side, 0 for a point. [m], 0 or more
        narrow_side_distance_m: float — how far out from the narrow side, 0 for the narrow end. [m], 0 or more
    Returns
        float — length of the arc; 0 at the narrow end of a winder that tapers to a point. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        Where 30 degrees leave 6 in at the narrow end, 12 in further out are 12.28 in.

        >>> inch = 0.0254
        >>> round(winder_going_at(math.pi / 6, 6 / (math.pi / 6) * inch, 12 * inch) / inch, 2)
        12.28
    """
    radius_m = not_negative("narrow_end_radius_m", narrow_end_radius_m)
    radius_m += not_negative("narrow_side_distance_m", narrow_side_distance_m)
    return _check_angle(angle_rad) * radius_m


def winder_going_chord(angle_rad: float, walkline_radius_m: float) -> float:
    """Going of a winder measured straight between the points where its nosings cross the walkline. [m]

    Parameters
        angle_rad: float — angle between its two nosings. [rad], over 0, up to half a turn
        walkline_radius_m: float — radius of the walkline. [m], over 0
    Returns
        float — length of the chord. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2 × radius × sin(angle / 2).
    References
        [1] Building Construction Handbook, 8th edition, Tapered Treads and Winder Flights (the same formula).
    Examples
        A chord of 60 degrees is as long as its radius.

        >>> round(winder_going_chord(math.pi / 3, 0.535), 6)
        0.535
    """
    return 2 * positive("walkline_radius_m", walkline_radius_m) * math.sin(_check_angle(angle_rad) / 2)


def _check_angle(angle_rad: float) -> float:
    """Refuse the angle of a single winder that is not over 0 and at most half a turn."""
    if not 0 < angle_rad <= math.pi:
        raise OutOfRange("angle_rad", angle_rad, f"over 0 and at most {math.pi:.12g}")
    return angle_rad
