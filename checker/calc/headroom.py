"""Headroom over a straight flight, plumb from the line of nosings.

under the header of a floor opening   headroom_under_header, opening_length, headroom_by_risers
under a sloped ceiling                headroom_under_slope_at, headroom_under_slope_least

Distances along the flight are level and count downwards from the nosing of the top riser, which is the edge
of the upper floor. From there the line of nosings falls riser / going to the bottom nosing, one riser above
the lower floor; beyond the bottom nosing one stands on the lower floor.
"""

from __future__ import annotations

from checker.calc._checks import between, finite, not_negative, positive, reaches, whole
from checker.calc.errors import OutOfRange


def headroom_under_header(
    opening_length_m: float,
    floor_depth_m: float,
    riser_height_m: float,
    going_m: float,
    total_rise_m: float,
) -> float:
    """Headroom under the edge of a floor opening, the least over the flight below it. [m]

    Parameters
        opening_length_m: float — finished opening, from the nosing of the top riser level along the flight
            to the finished edge. [m], 0 or more
        floor_depth_m: float — upper floor, finished floor to finished ceiling below. [m], over 0, under the
            rise
        riser_height_m: float — riser height. [m], over 0, not over the total rise
        going_m: float — going from nosing to nosing. [m], over 0
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
    Returns
        float — headroom; negative if the edge is below the line of nosings. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        riser / going × opening − floor depth while the edge is over the flight, the edge straight over the
        bottom nosing included; total rise − floor depth once it is beyond it. Dropped beams, trim and light
        fittings come off this figure. Holds for an even flight.
    References
        Geometry; measured as in International Residential Code, 2018, R311.7.2.
    Examples
        At 45 degrees every inch of opening is an inch of height: 100 in of opening, 12 in of floor, 88 in
        clear.

        >>> inch = 0.0254
        >>> round(headroom_under_header(100 * inch, 12 * inch, 8 * inch, 8 * inch, 120 * inch) / inch, 6)
        88.0
    """
    not_negative("opening_length_m", opening_length_m)
    _check_floor_and_flight(floor_depth_m, riser_height_m, going_m, total_rise_m)
    total_going_m = (total_rise_m / riser_height_m - 1) * going_m
    if not reaches(total_going_m, opening_length_m):
        return total_rise_m - floor_depth_m
    return opening_length_m * riser_height_m / going_m - floor_depth_m


def opening_length(
    headroom_m: float,
    floor_depth_m: float,
    riser_height_m: float,
    going_m: float,
    total_rise_m: float,
    nosing_allowance_m: float = 0.0,
    riser_board_allowance_m: float = 0.0,
) -> float:
    """Length of floor opening that gives a wanted headroom. [m]

    Parameters
        headroom_m: float — headroom wanted at the edge. [m], over 0
        floor_depth_m: float — upper floor, finished floor to finished ceiling below. [m], over 0, under the
            rise
        riser_height_m: float — riser height. [m], over 0, not over the total rise
        going_m: float — going from nosing to nosing. [m], over 0
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
        nosing_allowance_m: float — added where the opening is measured from the riser. [m], 0 or more
        riser_board_allowance_m: float — added where it is measured from the framing. [m], 0 or more
    Returns
        float — length of opening, with both allowances. [m]
    Raises
        OutOfRange — a value outside its range; a headroom that the storey below does not have.
    Notes
        (headroom + floor depth) × going / riser + allowances. With both allowances 0 it undoes
        `headroom_under_header`. It is the least length while the edge is over the flight; where it comes out
        longer than the flight, any edge clear of the bottom nosing would do, and the figure is on the safe
        side by less than one going.
    References
        [1] Geometry.
        [2] Trade article on stair count and stairwell opening: headroom and floor, divided by the riser,
            times the tread, plus nosing and riser board.
    Examples
        [2] with 80 in of headroom, 11-1/4 in of floor, 7-1/2 and 10 in, 1 in of nosing, 3/4 in of board:
            123.42 in.

        >>> inch = 0.0254
        >>> stair = (80 * inch, 11.25 * inch, 7.5 * inch, 10 * inch, 105 * inch, 1 * inch, 0.75 * inch)
        >>> round(opening_length(*stair) / inch, 2)
        123.42
    """
    positive("headroom_m", headroom_m)
    _check_floor_and_flight(floor_depth_m, riser_height_m, going_m, total_rise_m)
    allowance = not_negative("nosing_allowance_m", nosing_allowance_m)
    allowance += not_negative("riser_board_allowance_m", riser_board_allowance_m)
    clear_below_m = total_rise_m - floor_depth_m
    if not reaches(clear_below_m, headroom_m):
        legal = f"at most the clear height of the storey below, {clear_below_m:.12g}"
        raise OutOfRange("headroom_m", headroom_m, legal)
    return (headroom_m + floor_depth_m) * going_m / riser_height_m + allowance


def headroom_by_risers(ceiling_height_m: float, riser_count_below_header: int, riser_height_m: float) -> float:
    """Headroom under a header by counting the risers up to the tread below it. [m]

    Parameters
        ceiling_height_m: float — lower floor to the underside of the header. [m], over 0
        riser_count_below_header: int — risers from the lower floor to the tread below the header. [count], 0
            or more
        riser_height_m: float — riser height. [m], over 0
    Returns
        float — headroom over that tread; negative if the tread is above the header. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        ceiling − risers × riser height: the old handbook form. It is the headroom over the tread, the same
        as over the line of nosings only where the header is straight over the nosing.
    References
        [1] Carpenter's Guide, Stairs.
        [2] Radford's Cyclopedia of Construction, vol. 3, Stair Building Simplified, figure 71.
    Examples
        [1]: 8 ft 6 in less three risers of 7 in is 6 ft 9 in.

        >>> round(headroom_by_risers(102 * 0.0254, 3, 7 * 0.0254) / 0.0254, 6)
        81.0
    """
    positive("ceiling_height_m", ceiling_height_m)
    whole("riser_count_below_header", riser_count_below_header, 0)
    return ceiling_height_m - riser_count_below_header * positive("riser_height_m", riser_height_m)


def headroom_under_slope_at(
    distance_m: float,
    top_ceiling_height_m: float,
    ceiling_slope_ratio: float,
    riser_height_m: float,
    going_m: float,
    riser_count: int,
) -> float:
    """Headroom under a sloped ceiling at a distance down the flight. [m]

    Parameters
        distance_m: float — level distance down the flight from the nosing of the top riser. [m], 0 to total
            going
        top_ceiling_height_m: float — upper floor to ceiling, plumb at the nosing of the top riser. [m], over
            0
        ceiling_slope_ratio: float — rise of the ceiling for one of level on the way down the flight,
            negative if it falls on the way down, 0 for a flight along the ridge. [ratio], any
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        float — headroom; negative if the ceiling is below the line of nosings. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        ceiling at the top + (slope + riser / going) × distance. For a flight along the ridge take the
        ceiling over the lower side of the stair's width.
    References
        Geometry; measured as in International Residential Code, 2018, R311.7.2.
    Examples
        A ceiling parallel to the nosings (8/12 over a flight of 8 and 12 in) keeps its height all the way.

        >>> round(headroom_under_slope_at(2.0, 2.1, -8 / 12, 8 * 0.0254, 12 * 0.0254, 14), 9)
        2.1
    """
    positive("riser_height_m", riser_height_m)
    positive("going_m", going_m)
    between("distance_m", distance_m, 0.0, going_m * (whole("riser_count", riser_count, 1) - 1))
    slope = finite("ceiling_slope_ratio", ceiling_slope_ratio)
    return positive("top_ceiling_height_m", top_ceiling_height_m) + distance_m * (slope + riser_height_m / going_m)


def headroom_under_slope_least(
    top_ceiling_height_m: float,
    ceiling_slope_ratio: float,
    riser_height_m: float,
    going_m: float,
    riser_count: int,
) -> float:
    """Least headroom under a sloped ceiling over a whole flight. [m]

    Parameters
        top_ceiling_height_m: float — upper floor to ceiling, plumb at the nosing of the top riser. [m], over
            0
        ceiling_slope_ratio: float — rise of the ceiling for one of level on the way down the flight,
            negative if it falls on the way down, 0 for a flight along the ridge. [ratio], any
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        float — headroom; negative if the ceiling is below the line of nosings. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Ceiling and nosings are straight lines, so the least is at one end: at the top nosing unless the
        ceiling falls more steeply than the flight, then at the bottom nosing. The landing at the top is not
        looked at.
    References
        Geometry; measured as in International Residential Code, 2018, R311.7.2.
    Examples
        A 12/12 ceiling that falls with a flight of 8 and 12 in loses 4 in a tread: 12 treads take 48 in.

        >>> inch = 0.0254
        >>> round(headroom_under_slope_least(120 * inch, -1.0, 8 * inch, 12 * inch, 13) / inch, 6)
        72.0
    """
    flight = (top_ceiling_height_m, ceiling_slope_ratio, riser_height_m, going_m, riser_count)
    at_top = headroom_under_slope_at(0.0, *flight)
    return min(at_top, headroom_under_slope_at(going_m * (riser_count - 1), *flight))


def _check_floor_and_flight(floor_depth_m: float, riser_height_m: float, going_m: float, total_rise_m: float) -> None:
    """Refuse a floor deeper than the storey, a riser higher than the flight and numbers not over 0."""
    positive("total_rise_m", total_rise_m)
    positive("floor_depth_m", floor_depth_m)
    positive("riser_height_m", riser_height_m)
    positive("going_m", going_m)
    if floor_depth_m >= total_rise_m:
        raise OutOfRange("floor_depth_m", floor_depth_m, f"under the total rise, {total_rise_m:.12g}")
    if not reaches(total_rise_m, riser_height_m):
        raise OutOfRange("riser_height_m", riser_height_m, f"at most the total rise, {total_rise_m:.12g}")
