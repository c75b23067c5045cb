"""Wind on a line of braced walls: force, length of bracing, overturning of a panel.

force   wind_force, wind_force_on_line
length  braced_length, braced_length_for_force, unit_shear
panel   overturning_moment, resisting_moment, end_uplift

The length that a prescriptive table requires is data of a ruleset.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from checker.calc._checks import all_positive, between, finite, not_negative, positive, reaches
from checker.calc.errors import OutOfRange


def wind_force(pressures_pa: Sequence[float], areas_m2: Sequence[float]) -> float:
    """Force of wind on the parts of a face. [N]

    Parameters
        pressures_pa: Sequence[float] — net pressure on each part. [Pa], either sign, one or more
        areas_m2: Sequence[float] — area of each, in the same order. [m2], each over 0
    Returns
        float — force. [N]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    References
        Definition of pressure; common practice, no source.
    Examples
        Wall and roof of 16 and 8 psf.

        >>> wind_force([16.0, 8.0], [100.0, 50.0])
        2000.0
    """
    if not pressures_pa or len(pressures_pa) != len(areas_m2):
        raise OutOfRange("length of areas_m2", len(areas_m2), f"that of pressures, {len(pressures_pa)}, 1 or more")
    areas = all_positive("areas_m2", areas_m2)
    return math.fsum(finite("pressures_pa", p) * area for p, area in zip(pressures_pa, areas, strict=True))


def wind_force_on_line(pressure_pa: float, height_m: float, left_distance_m: float, right_distance_m: float) -> float:
    """Force of wind that a line of walls takes from half of the face on each side. [N]

    Parameters
        pressure_pa: float — net pressure on the face. [Pa], 0 or more
        height_m: float — height of face that bears on the storey's top. [m], over 0
        left_distance_m: float — to the next line on one side. [m], 0 or more
        right_distance_m: float — to the next line on the other side, 0 for an outer line. [m], 0 or more
    Returns
        float — force. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        pressure × height × half of both distances: a floor or roof that is no stiffer than the walls.
    References
        Simple spans between lines; common practice, no source.
    Examples
        Lines 20 ft apart, 20 psf on 12 ft of face: 2,400 lb on an outer line.

        >>> wind_force_on_line(20.0, 12.0, 20.0, 0.0)
        2400.0
    """
    distances = not_negative("left_distance_m", left_distance_m) + not_negative("right_distance_m", right_distance_m)
    return not_negative("pressure_pa", pressure_pa) * positive("height_m", height_m) * distances / 2


def braced_length(
    panel_lengths_m: Sequence[float], full_from_m: float, credits_m: Sequence[Sequence[float]] = ()
) -> float:
    """Length of bracing in a line, panels that are too short left out or counted in part. [m]

    Parameters
        panel_lengths_m: Sequence[float] — full-height panels of the line. [m], each over 0; may be empty
        full_from_m: float — length from which a panel counts in full. [m], over 0
        credits_m: Sequence[Sequence[float]] — shorter lengths and what they count, pairs in growing order.
            [m], may be empty
    Returns
        float — length that counts. [m]
    Raises
        OutOfRange — a value outside its range, pairs out of order, a credit over its length.
    Notes
        Under the first pair a panel counts nothing; between pairs, and between the last pair and the full
        length, it counts in a straight line.
    References
        [1] British Columbia Building Code, 2024, note A-9.23.13.6.(5): panels are added up.
    Examples
        [1]: 5, 3 and 1 m, all long enough.

        >>> braced_length([5.0, 3.0, 1.0], 0.6)
        9.0

        48 in counts in full, 36 in as 27 in; 42 in between them.

        >>> braced_length([42.0], 48.0, [[36.0, 27.0]])
        37.5
    """
    full_from = positive("full_from_m", full_from_m)
    steps: list[tuple[float, float]] = []
    for pair in [*credits_m, (full_from, full_from)]:
        if len(pair) != 2:
            raise OutOfRange("credits_m", list(pair), "pairs of a length and what it counts")
        length = positive("credits_m, a length,", pair[0])
        if steps and not length > steps[-1][0]:
            raise OutOfRange("credits_m, a length,", length, f"over the length before it, {steps[-1][0]:.12g}")
        steps.append((length, between("credits_m, a credit,", pair[1], 0.0, length)))
    return math.fsum(_credit(length, steps) for length in all_positive("panel_lengths_m", panel_lengths_m, 0))


def _credit(length_m: float, steps: Sequence[tuple[float, float]]) -> float:
    """What a panel counts."""
    if reaches(length_m, steps[-1][0]):
        return length_m
    if reaches(length_m, steps[0][0]):
        for (low, low_credit), (high, high_credit) in pairwise(steps):
            if reaches(high, length_m):
                return low_credit + (high_credit - low_credit) * (length_m - low) / (high - low)
    return 0.0


def braced_length_for_force(force_n: float, resistance_n_m: float) -> float:
    """Length of bracing that resists a force. [m]

    Parameters
        force_n: float — force on the line. [N], 0 or more
        resistance_n_m: float — resistance of the bracing along its length. [N/m], over 0
    Returns
        float — length. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] British Columbia Building Code, 2024, table 9.23.13.7.-A and note A-9.23.13.7.(3).
    Examples
        4.725 kN on bracing of 3.28 kN/m.

        >>> round(braced_length_for_force(4725.0, 3280.0), 2)
        1.44
    """
    return not_negative("force_n", force_n) / positive("resistance_n_m", resistance_n_m)


def unit_shear(force_n: float, length_m: float) -> float:
    """Shear along the bracing of a line. [N/m]

    Parameters
        force_n: float — force on the line. [N], 0 or more
        length_m: float — length of bracing. [m], over 0
    Returns
        float — shear over length. [N/m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASD/LRFD Manual for Engineered Wood Construction, M14.3.
    Examples
        >>> unit_shear(2400.0, 12.0)
        200.0
    """
    return not_negative("force_n", force_n) / positive("length_m", length_m)


def overturning_moment(shear_n_m: float, length_m: float, height_m: float) -> float:
    """Moment that turns a panel over its end. [Nm]

    Parameters
        shear_n_m: float — shear along the panel. [N/m], 0 or more
        length_m: float — length of the panel. [m], over 0
        height_m: float — height at which the force acts. [m], over 0
    Returns
        float — moment. [Nm]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASD/LRFD Manual for Engineered Wood Construction, M14.3.
    Examples
        >>> overturning_moment(200.0, 4.0, 8.0)
        6400.0
    """
    force_n = not_negative("shear_n_m", shear_n_m) * positive("length_m", length_m)
    return force_n * positive("height_m", height_m)


def resisting_moment(dead_n_m: float, length_m: float, counted_ratio: float, far_end_n: float = 0.0) -> float:
    """Moment by which dead load holds a panel down. [Nm]

    Parameters
        dead_n_m: float — dead load along the panel, its own weight too. [N/m], 0 or more
        length_m: float — length of the panel. [m], over 0
        counted_ratio: float — share of the dead load to count; 0.6 in ASCE 7. [ratio], 0 to 1
        far_end_n: float — dead load at the end that lifts. [N], 0 or more
    Returns
        float — moment about the other end. [Nm]
    Raises
        OutOfRange — a value outside its range.
    Notes
        share × (dead × length² / 2 + end load × length).
    References
        [1] ASD/LRFD Manual for Engineered Wood Construction, M14.3: with the reduction that the code sets.
        [2] ASCE 7, 2016, 2.4.1: 0.6 dead with wind.
    Examples
        >>> round(resisting_moment(150.0, 4.0, 0.6), 6)
        720.0
    """
    length = positive("length_m", length_m)
    even = not_negative("dead_n_m", dead_n_m) * length**2 / 2
    return between("counted_ratio", counted_ratio, 0.0, 1.0) * (even + not_negative("far_end_n", far_end_n) * length)


def end_uplift(overturning_nm: float, resisting_nm: float, lever_m: float, above_n: float = 0.0) -> float:
    """Net uplift at the end of a panel. [N]

    Parameters
        overturning_nm: float — overturning moment. [Nm], 0 or more
        resisting_nm: float — moment of the dead load that is counted. [Nm], 0 or more
        lever_m: float — hold-down to the far end of the panel. [m], over 0
        above_n: float — uplift of a panel that stands on this one. [N], either sign
    Returns
        float — uplift to hold down; negative where the dead load is enough. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (overturning - resisting) / lever + above. Without dead load and with the lever the whole length, this
        is shear along the panel × height.
    References
        [1] ASD/LRFD Manual for Engineered Wood Construction, M14.3.
    Examples
        200 plf on 4 ft of panel 8 ft high under 150 plf of dead load.

        >>> round(end_uplift(6400.0, 720.0, 4.0), 6)
        1420.0
    """
    net = not_negative("overturning_nm", overturning_nm) - not_negative("resisting_nm", resisting_nm)
    return net / positive("lever_m", lever_m) + finite("above_n", above_n)
