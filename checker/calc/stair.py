"""Layout of a straight flight.

counts      riser_count_least, riser_count_most, riser_count_by_trial, tread_count
sizes       riser_height, going_for_run, total_rise, total_going, total_going_equal
the slope   pitch_angle, nosing_line_length, stringer_length
evenness    variation_in_flight, variation_adjacent, risers_after_new_finish
comfort     step_length, riser_plus_going, riser_times_going, going_from_step_length,
            riser_from_step_length, going_from_product
width       clear_width_at_handrails

Headroom is in `headroom`, turned flights in `winder`, openings of guards in `guard`.
A going is measured from nosing to nosing; the top riser ends at the upper floor, so that a flight has one
tread fewer than it has risers.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from checker.calc._checks import all_positive, count_down, count_up, finite, not_negative, positive, whole
from checker.calc.errors import OutOfRange


def riser_height(total_rise_m: float, riser_count: int) -> float:
    """Height of each riser of an even flight. [m]

    Parameters
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        float — riser height. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        total rise / count, not rounded: a riser rounded to the fraction of a rule and multiplied back does
        not give the total rise (94 in by 13 is 7.23 in; 13 risers of 7-1/4 in are 1/4 in too high).
    References
        [1] US Army engineer course EN5156, Stairway Calculations.
    Examples
        [1]: 94 in in 13 risers gives 7.23 in.

        >>> round(riser_height(94 * 0.0254, 13) / 0.0254, 2)
        7.23
    """
    return positive("total_rise_m", total_rise_m) / whole("riser_count", riser_count, 1)


def tread_count(riser_count: int) -> int:
    """Treads of a flight whose top riser ends at the upper floor. [count]

    Parameters
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        int — treads, one fewer than risers. [count]
    Raises
        OutOfRange — a count under 1.
    References
        [1] US Army engineer course EN5156, Figure 2-38, Stair Run.
    Examples
        [1]: 13 risers have 12 treads.

        >>> tread_count(13)
        12
    """
    return whole("riser_count", riser_count, 1) - 1


def riser_count_least(total_rise_m: float, riser_limit_m: float) -> int:
    """Fewest equal risers that keep each riser at or under a limit. [count]

    Parameters
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
        riser_limit_m: float — highest riser wanted. [m], over 0
    Returns
        int — risers. [count]
    Raises
        OutOfRange — a value outside its range.
    Notes
        total rise / limit, rounded up. A quotient that is whole but for float noise is taken as whole.
    References
        [1] Canada Mortgage and Housing Corporation, text on stairway design, figure 141.
    Examples
        [1]: 2718 mm with risers of at most 184 mm needs 15.

        >>> riser_count_least(2.718, 0.184)
        15
    """
    return count_up(positive("total_rise_m", total_rise_m) / positive("riser_limit_m", riser_limit_m))


def riser_count_most(total_going_m: float, going_limit_m: float) -> int:
    """Most risers of a straight flight that keep each going at or over a limit in a given run. [count]

    Parameters
        total_going_m: float — horizontal room for the flight, first to last nosing. [m], 0 or more
        going_limit_m: float — least going wanted. [m], over 0
    Returns
        int — risers. [count]
    Raises
        OutOfRange — a value outside its range.
    Notes
        total going / limit, rounded down, and one more for the top riser. Where this is under the count of
        `riser_count_least`, no straight flight meets both limits.
    References
        Geometry; common practice, no source.
    Examples
        104-1/2 in hold 11 goings of 9-1/2 in, so 12 risers.

        >>> riser_count_most(104.5 * 0.0254, 9.5 * 0.0254)
        12
    """
    run = not_negative("total_going_m", total_going_m)
    return count_down(run / positive("going_limit_m", going_limit_m)) + 1


def riser_count_by_trial(total_rise_m: float, trial_riser_m: float, rounding: Literal["nearest", "up"]) -> int:
    """Risers by a trial riser, as the handbooks do it. [count]

    Parameters
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
        trial_riser_m: float — riser to divide by. [m], over 0
        rounding: Literal["nearest", "up"] — how the quotient becomes a count. [choice], nearest or up
    Returns
        int — risers, at least 1. [count]
    Raises
        OutOfRange — a value outside its range, an unknown rounding.
    Notes
        Nearest is the older habit and can give a riser over the trial riser; a half goes up, to the lower
        riser.
    References
        [1] US Army engineer course EN5156, Stairway Calculations (nearest).
        [2] Canada Mortgage and Housing Corporation, text on stairway design, figure 141 (up).
    Examples
        [1]: 94 in by 7 in is 13.43, so 13. [2]: 2718 mm by 184 mm is 14.8, so 15.

        >>> riser_count_by_trial(94 * 0.0254, 7 * 0.0254, "nearest")
        13
        >>> riser_count_by_trial(2.718, 0.184, "up")
        15
    """
    quotient = positive("total_rise_m", total_rise_m) / positive("trial_riser_m", trial_riser_m)
    if rounding == "up":
        return count_up(quotient)
    if rounding == "nearest":
        return max(1, count_down(quotient + 0.5))
    raise OutOfRange("rounding", rounding, "'nearest' or 'up'")


def going_for_run(total_going_m: float, riser_count: int) -> float:
    """Going that a count of risers leaves in a given run. [m]

    Parameters
        total_going_m: float — horizontal room for the flight, first to last nosing. [m], over 0
        riser_count: int — risers in the flight. [count], 2 or more
    Returns
        float — going. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Cyclopedia of Carpentry and Building, Laying Out Stairs, figure 33.
    Examples
        [1]: 8 ft 8-1/2 in with 12 risers gives treads of 9-1/2 in.

        >>> round(going_for_run(104.5 * 0.0254, 12) / 0.0254, 3)
        9.5
    """
    return positive("total_going_m", total_going_m) / (whole("riser_count", riser_count, 2) - 1)


def total_rise(risers_m: Sequence[float]) -> float:
    """Total rise of measured risers. [m]

    Parameters
        risers_m: Sequence[float] — riser heights, bottom first. [m], each over 0, one or more
    Returns
        float — total rise. [m]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        Geometry; common practice, no source.
    """
    return math.fsum(all_positive("risers_m", risers_m))


def total_going(goings_m: Sequence[float]) -> float:
    """Total going of measured goings. [m]

    Parameters
        goings_m: Sequence[float] — goings from nosing to nosing. [m], each over 0, one or more
    Returns
        float — total going. [m]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        Geometry; common practice, no source.
    """
    return math.fsum(all_positive("goings_m", goings_m))


def total_going_equal(going_m: float, riser_count: int) -> float:
    """Total going of an even flight. [m]

    Parameters
        going_m: float — going from nosing to nosing. [m], over 0
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        float — total going. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        going × (risers − 1).
    References
        [1] US Army engineer course EN5156, Figure 2-38, Stair Run.
    Examples
        [1]: 13 risers with treads of 10-1/2 in run 126 in.

        >>> round(total_going_equal(10.5 * 0.0254, 13) / 0.0254, 6)
        126.0
    """
    return positive("going_m", going_m) * tread_count(riser_count)


def pitch_angle(riser_height_m: float, going_m: float) -> float:
    """Angle of the line of nosings against the level. [rad]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
    Returns
        float — pitch, between 0 and a right angle. [rad]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        Riser and going alike pitch at 45 degrees.

        >>> round(math.degrees(pitch_angle(0.2, 0.2)), 9)
        45.0
    """
    return math.atan2(positive("riser_height_m", riser_height_m), positive("going_m", going_m))


def nosing_line_length(riser_height_m: float, going_m: float, riser_count: int) -> float:
    """Length of the line of nosings from the bottom nosing to the nosing at the upper floor. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
        riser_count: int — risers in the flight. [count], 1 or more
    Returns
        float — length on the slope. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (risers − 1) × √(riser² + going²). The stringer is longer by its cuts at the floor and at the header.
    References
        Geometry; common practice, no source.
    Examples
        7-1/2 in by 10 in is the 3-4-5 triangle: 12-1/2 in a step.

        >>> round(nosing_line_length(7.5 * 0.0254, 10 * 0.0254, 2) / 0.0254, 6)
        12.5
    """
    step = math.hypot(positive("riser_height_m", riser_height_m), positive("going_m", going_m))
    return step * tread_count(riser_count)


def stringer_length(total_rise_m: float, total_going_m: float) -> float:
    """Length of a stringer as the handbooks take it, from the full rise and the full run. [m]

    Parameters
        total_rise_m: float — finished floor to finished floor, plumb. [m], over 0
        total_going_m: float — horizontal run of the flight. [m], over 0
    Returns
        float — length on the slope. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        √(rise² + run²). The run has one going fewer than there are risers, so this line is a little steeper
        than the line of nosings; it is a length for ordering, not for cutting.
    References
        [1] US Army engineer course EN5156, Figure 2-38, Stair Run (right triangle of rise, run and stringer).
    Examples
        9 ft up and 12 ft along take 15 ft.

        >>> round(stringer_length(9 * 0.3048, 12 * 0.3048) / 0.3048, 6)
        15.0
    """
    return math.hypot(positive("total_rise_m", total_rise_m), positive("total_going_m", total_going_m))


def variation_in_flight(sizes_m: Sequence[float]) -> float:
    """Largest less smallest of the risers (or goings) of a flight. [m]

    Parameters
        sizes_m: Sequence[float] — riser heights or goings of one flight. [m], each over 0, one or more
    Returns
        float — spread, 0 for an even flight. [m]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        [1] International Residential Code, 2018, R311.7.5.1 and R311.7.5.2 (how the variation is taken).
    Examples
        Risers of 7-1/2, 7-3/4 and 7-1/4 in spread 1/2 in.

        >>> round(variation_in_flight([7.5 * 0.0254, 7.75 * 0.0254, 7.25 * 0.0254]) / 0.0254, 6)
        0.5
    """
    sizes = all_positive("sizes_m", sizes_m)
    return max(sizes) - min(sizes)


def variation_adjacent(sizes_m: Sequence[float]) -> float:
    """Largest difference between two neighbouring risers (or goings) of a flight. [m]

    Parameters
        sizes_m: Sequence[float] — riser heights or goings in their order. [m], each over 0, one or more
    Returns
        float — largest difference, 0 for an even flight or a single riser. [m]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        [1] National Building Code of Canada, 2015, 9.8.4.4 (adjacent against whole flight); from memory.
    Examples
        Risers of 7-1/2, 7-3/4 and 7-1/4 in: the second step down is 1/2 in.

        >>> round(variation_adjacent([7.5 * 0.0254, 7.75 * 0.0254, 7.25 * 0.0254]) / 0.0254, 6)
        0.5
    """
    sizes = all_positive("sizes_m", sizes_m)
    return max((abs(above - below) for below, above in pairwise(sizes)), default=0.0)


def risers_after_new_finish(
    risers_m: Sequence[float], lower_finish_m: float, upper_finish_m: float, tread_finish_m: float
) -> tuple[float, ...]:
    """Risers of a standing flight after new finish goes on the floors and on the treads. [m]

    Parameters
        risers_m: Sequence[float] — risers as they stand, bottom first. [m], each over 0, one or more
        lower_finish_m: float — thickness added to the lower floor, negative if taken off. [m], any
        upper_finish_m: float — thickness added to the upper floor, negative if taken off. [m], any
        tread_finish_m: float — thickness added to every tread, negative if taken off. [m], any
    Returns
        tuple[float, ...] — risers afterwards, bottom first. [m]
    Raises
        OutOfRange — an empty list, a value outside its range, a riser that vanishes under the finish.
    Notes
        Only the bottom riser (tread on, floor up) and the top riser (floor up, tread on) change.
    References
        Geometry; common practice, no source.
    Examples
        3/4 in of flooring on both floors and none on the treads: bottom 3/4 in less, top 3/4 in more.

        >>> new = risers_after_new_finish([7.5 * 0.0254] * 3, 0.75 * 0.0254, 0.75 * 0.0254, 0.0)
        >>> [round(riser / 0.0254, 2) for riser in new]
        [6.75, 7.5, 8.25]
    """
    after = list(all_positive("risers_m", risers_m))
    finite("tread_finish_m", tread_finish_m)
    after[0] -= finite("lower_finish_m", lower_finish_m)
    after[-1] += finite("upper_finish_m", upper_finish_m)
    if len(after) > 1:
        after[0] += tread_finish_m
        after[-1] -= tread_finish_m
    return tuple(all_positive("risers_m after the new finish", after))


def step_length(riser_height_m: float, going_m: float) -> float:
    """Twice the riser and once the going. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
    Returns
        float — 2R + G. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] US Army engineer course EN5156, Stairway Calculations, rule 1 (25 in).
        [2] Cyclopedia of Carpentry and Building, Laying Out Stairs (24 in).
    Examples
        [1]: 7-1/2 in and 10 in give 25 in.

        >>> round(step_length(7.5 * 0.0254, 10 * 0.0254) / 0.0254, 6)
        25.0
    """
    return 2 * positive("riser_height_m", riser_height_m) + positive("going_m", going_m)


def riser_plus_going(riser_height_m: float, going_m: float) -> float:
    """Riser and going together. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
    Returns
        float — R + G. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] US Army engineer course EN5156, Stairway Calculations, rule 2 (17 to 19 in).
    Examples
        7-1/2 in and 10 in give 17-1/2 in.

        >>> round(riser_plus_going(7.5 * 0.0254, 10 * 0.0254) / 0.0254, 6)
        17.5
    """
    return positive("riser_height_m", riser_height_m) + positive("going_m", going_m)


def riser_times_going(riser_height_m: float, going_m: float) -> float:
    """Riser multiplied by going. [m2]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        going_m: float — going from nosing to nosing. [m], over 0
    Returns
        float — R × G. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] US Army engineer course EN5156, Stairway Calculations, rule 3 (about 75 in2).
    Examples
        [1]: 7-1/2 in by 10 in is 75 in2.

        >>> round(riser_times_going(7.5 * 0.0254, 10 * 0.0254) / 0.0254**2, 6)
        75.0
    """
    return positive("riser_height_m", riser_height_m) * positive("going_m", going_m)


def going_from_step_length(riser_height_m: float, step_length_m: float) -> float:
    """Going that makes 2R + G a wanted length. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        step_length_m: float — wanted 2R + G. [m], over twice the riser
    Returns
        float — going. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] US Army engineer course EN5156, Stairway Calculations, rule 1.
    Examples
        [1]: by 25 in a riser of 6-1/2 in takes a tread of 12 in.

        >>> round(going_from_step_length(6.5 * 0.0254, 25 * 0.0254) / 0.0254, 6)
        12.0
    """
    twice = 2 * positive("riser_height_m", riser_height_m)
    if positive("step_length_m", step_length_m) <= twice:
        raise OutOfRange("step_length_m", step_length_m, f"over twice the riser, {twice:.12g}")
    return step_length_m - twice


def riser_from_step_length(going_m: float, step_length_m: float) -> float:
    """Riser that makes 2R + G a wanted length. [m]

    Parameters
        going_m: float — going from nosing to nosing. [m], over 0
        step_length_m: float — wanted 2R + G. [m], over the going
    Returns
        float — riser height. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Cyclopedia of Carpentry and Building, Laying Out Stairs.
    Examples
        [1]: by 24 in a tread of 9 in takes a riser of 7-1/2 in.

        >>> round(riser_from_step_length(9 * 0.0254, 24 * 0.0254) / 0.0254, 6)
        7.5
    """
    positive("going_m", going_m)
    if positive("step_length_m", step_length_m) <= going_m:
        raise OutOfRange("step_length_m", step_length_m, f"over the going, {going_m:.12g}")
    return (step_length_m - going_m) / 2


def going_from_product(riser_height_m: float, product_m2: float) -> float:
    """Going that makes R × G a wanted product. [m]

    Parameters
        riser_height_m: float — riser height. [m], over 0
        product_m2: float — wanted R × G. [m2], over 0
    Returns
        float — going. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Cyclopedia of Architecture, Carpentry and Building, vol. 1, Inside Finish.
    Examples
        [1]: by 75 in2 a riser of 6 in takes a tread of 12-1/2 in.

        >>> round(going_from_product(6 * 0.0254, 75 * 0.0254**2) / 0.0254, 6)
        12.5
    """
    return positive("product_m2", product_m2) / positive("riser_height_m", riser_height_m)


def clear_width_at_handrails(wall_to_wall_m: float, left_projection_m: float, right_projection_m: float) -> float:
    """Clear width of a flight at the height of its handrails. [m]

    Parameters
        wall_to_wall_m: float — finished wall to finished wall or guard. [m], over 0
        left_projection_m: float — how far the left handrail stands in, 0 without one. [m], 0 or more
        right_projection_m: float — how far the right handrail stands in, 0 without one. [m], 0 or more
    Returns
        float — clear width. [m]
    Raises
        OutOfRange — a value outside its range, handrails that leave no width.
    References
        [1] International Residential Code, 2018, R311.7.1 (36 in; 31-1/2 in; 27 in).
    Examples
        [1]: 36 in less two projections of 4-1/2 in is 27 in.

        >>> round(clear_width_at_handrails(36 * 0.0254, 4.5 * 0.0254, 4.5 * 0.0254) / 0.0254, 6)
        27.0
    """
    rails = not_negative("left_projection_m", left_projection_m)
    rails += not_negative("right_projection_m", right_projection_m)
    if positive("wall_to_wall_m", wall_to_wall_m) <= rails:
        raise OutOfRange("wall_to_wall_m", wall_to_wall_m, f"over both projections together, {rails:.12g}")
    return wall_to_wall_m - rails
