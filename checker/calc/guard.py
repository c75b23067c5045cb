"""Openings of guards: the triangle under the bottom rail of a stair guard, open risers, balusters.

the triangle   largest_sphere_in_triangle, rail_gap_for_sphere
open risers    open_riser_gap
balusters      baluster_gap, baluster_count_least
"""

from __future__ import annotations

import math

from checker.calc._checks import count_up, not_negative, positive, whole
from checker.calc.errors import OutOfRange


def largest_sphere_in_triangle(riser_height_m: float, going_m: float, rail_gap_m: float) -> float:
    """Diameter of the largest sphere that passes between riser, tread and bottom rail. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
        rail_gap_m: float — line of nosings to the underside of the rail, square to the slope. [m], 0 or
            more, and not so large that the sphere stands beyond the end of the riser or of the tread
    Returns
        float — diameter. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The rail moves the long side of the right triangle out by the gap: the inscribed circle (R + G − L)
        grows by (h + gap) / h, with L = √(R² + G²) and h = R × G / L. A nosing that stands out over the
        riser below makes the opening a little larger than this.
    References
        Geometry of the opening named in International Residential Code, 2018, R312.1.3, exception 1.
    Examples
        7-1/2 and 10 in, a gap of 1 in: 5.83 in.

        >>> round(largest_sphere_in_triangle(7.5 * 0.0254, 10 * 0.0254, 0.0254) / 0.0254, 2)
        5.83
    """
    bare_m, height_m = _bare_triangle(riser_height_m, going_m)
    gap_limit_m = height_m * (2 * min(riser_height_m, going_m) / bare_m - 1)
    if not_negative("rail_gap_m", rail_gap_m) > gap_limit_m:
        raise OutOfRange("rail_gap_m", rail_gap_m, f"from 0 to {gap_limit_m:.12g}")
    return bare_m * (height_m + rail_gap_m) / height_m


def rail_gap_for_sphere(sphere_diameter_m: float, riser_height_m: float, going_m: float) -> float:
    """Gap under the bottom rail at which a sphere of a given diameter just passes. [m]

    Parameters
        sphere_diameter_m: float — diameter of the sphere. [m], over 0, up to twice the smaller of riser and
            going
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
    Returns
        float — gap square to the slope; negative if the sphere passes with the rail on the nosings. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry of the opening named in International Residential Code, 2018, R312.1.3, exception 1.
    Examples
        7-1/2 and 10 in: a 6 in sphere just passes at 1.2 in.

        >>> round(rail_gap_for_sphere(6 * 0.0254, 7.5 * 0.0254, 10 * 0.0254) / 0.0254, 6)
        1.2
    """
    bare_m, height_m = _bare_triangle(riser_height_m, going_m)
    limit_m = 2 * min(riser_height_m, going_m)
    if positive("sphere_diameter_m", sphere_diameter_m) > limit_m:
        raise OutOfRange("sphere_diameter_m", sphere_diameter_m, f"over 0 and at most {limit_m:.12g}")
    return height_m * (sphere_diameter_m / bare_m - 1)


def open_riser_gap(riser_height_m: float, tread_thickness_m: float) -> float:
    """Clear opening between two treads without a riser board. [m]

    Parameters
        riser_height_m: float — riser height, top of tread to top of tread. [m], over 0
        tread_thickness_m: float — thickness of the upper tread with anything under it. [m], over 0, under
            the riser
    Returns
        float — clear opening, plumb. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A 7-1/2 in riser over a 1-1/2 in tread leaves 6 in.

        >>> round(open_riser_gap(7.5 * 0.0254, 1.5 * 0.0254) / 0.0254, 6)
        6.0
    """
    positive("riser_height_m", riser_height_m)
    if positive("tread_thickness_m", tread_thickness_m) >= riser_height_m:
        raise OutOfRange("tread_thickness_m", tread_thickness_m, f"under the riser, {riser_height_m:.12g}")
    return riser_height_m - tread_thickness_m


def baluster_gap(clear_length_m: float, baluster_width_m: float, baluster_count: int) -> float:
    """Clear gap between evenly spaced balusters, the gaps at both ends included. [m]

    Parameters
        clear_length_m: float — newel to newel or post to wall, clear. [m], over 0
        baluster_width_m: float — width of a baluster along the guard. [m], over 0
        baluster_count: int — balusters. [count], 0 or more
    Returns
        float — clear gap. [m]
    Raises
        OutOfRange — a value outside its range, balusters wider together than the length.
    Notes
        (length − count × width) / (count + 1). For turned balusters take the width at the narrowest place.
    References
        Geometry; common practice, no source.
    Examples
        Eleven 1-1/2 in balusters in 60 in leave 3.625 in.

        >>> round(baluster_gap(60 * 0.0254, 1.5 * 0.0254, 11) / 0.0254, 6)
        3.625
    """
    filled_m = positive("baluster_width_m", baluster_width_m) * whole("baluster_count", baluster_count, 0)
    if positive("clear_length_m", clear_length_m) < filled_m:
        raise OutOfRange("clear_length_m", clear_length_m, f"at least the balusters together, {filled_m:.12g}")
    return (clear_length_m - filled_m) / (baluster_count + 1)


def baluster_count_least(clear_length_m: float, baluster_width_m: float, gap_limit_m: float) -> int:
    """Fewest evenly spaced balusters that keep the gap at or under a limit. [count]

    Parameters
        clear_length_m: float — newel to newel or post to wall, clear. [m], over 0
        baluster_width_m: float — width of a baluster along the guard. [m], over 0
        gap_limit_m: float — widest clear gap wanted. [m], over 0
    Returns
        int — balusters, 0 if the length is itself within the limit. [count]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (length − limit) / (width + limit), rounded up. Where a sphere must not pass, a gap exactly at its
        diameter is the limit case; ask for a little less.
    References
        Geometry; common practice, no source.
    Examples
        60 in with 1-1/2 in balusters and gaps of at most 4 in needs 11.

        >>> baluster_count_least(60 * 0.0254, 1.5 * 0.0254, 4 * 0.0254)
        11
    """
    open_m = positive("clear_length_m", clear_length_m) - positive("gap_limit_m", gap_limit_m)
    return max(0, count_up(open_m / (positive("baluster_width_m", baluster_width_m) + gap_limit_m)))


def _bare_triangle(riser_height_m: float, going_m: float) -> tuple[float, float]:
    """Diameter of the inscribed circle and height of the triangle of riser, tread and line of nosings."""
    slope_m = math.hypot(positive("riser_height_m", riser_height_m), positive("going_m", going_m))
    return riser_height_m + going_m - slope_m, riser_height_m * going_m / slope_m
