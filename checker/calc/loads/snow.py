"""Roof snow of ASCE 7 from the snow on the ground.

uniform     flat_roof_snow, full_snow_slope, slope_factor, sloped_roof_snow, least_snow
unbalanced  unbalanced_counts, unbalanced_snow, ridge_drift_surcharge, ridge_drift_extent
rain        rain_on_snow

Drifts at a step and sliding snow are in `snow_drift`. Span tables of the United States take the snow on the
ground itself: whether to use that or a roof snow is the caller's choice. Equations of the 2016 edition; the 2022
edition has other ground snow and no importance factor, and the two are not to be mixed.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, finite, not_negative, positive, reaches
from checker.calc.loads._printed_units import FOOT_M

_WARM, _COLD = 1.0, 1.1  # thermal factors of the first two slope-factor figures
_FULL_SNOW_DEG = {"other": (30.0, 37.5, 45.0), "slippery": (5.0, 10.0, 15.0)}
_WINDWARD = 0.3  # share of the sloped roof snow left on the windward side of a wide roof
_RIDGE_DRIFT_EXTENT = 8 / 3
_RAIN_FEET_A_DEGREE = 50.0


def flat_roof_snow(
    ground_pa: float, exposure_ratio: float, thermal_ratio: float, importance_ratio: float, basic_ratio: float
) -> float:
    """Snow load on a flat roof. [Pa]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
        exposure_ratio: float — exposure factor Ce. [ratio], over 0
        thermal_ratio: float — thermal factor Ct. [ratio], over 0
        importance_ratio: float — importance factor Is. [ratio], over 0
        basic_ratio: float — roof to ground before the factors; 0.7 in ASCE 7. [ratio], over 0
    Returns
        float — flat roof snow. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        basic × Ce × Ct × Is × ground.
    References
        [1] ASCE 7, 2016, 7.3, equation (7.3-1).
        [2] Article on snow drift loads by two editions of ASCE 7.
    Examples
        [2]: 25 psf on the ground, all factors 1: 17.5 psf.

        >>> round(flat_roof_snow(25 * 47.88026, 1.0, 1.0, 1.0, 0.7) / 47.88026, 6)
        17.5
    """
    factors = (
        positive("exposure_ratio", exposure_ratio)
        * positive("thermal_ratio", thermal_ratio)
        * positive("importance_ratio", importance_ratio)
        * positive("basic_ratio", basic_ratio)
    )
    return not_negative("ground_pa", ground_pa) * factors


def full_snow_slope(thermal_ratio: float, slippery: bool) -> float:
    """Slope up to which a roof keeps all its snow. [rad]

    Parameters
        thermal_ratio: float — thermal factor Ct. [ratio], over 0
        slippery: bool — whether the surface is slippery and nothing stops the snow from sliding off. [yes or no]
    Returns
        float — slope. [rad]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Ct up to 1.0: 30 deg, slippery 5; up to 1.1: 37.5 and 10; above: 45 and 15. Shingles are not slippery.
        A warm slippery roof must be insulated as the section says, otherwise it counts as any other.
    References
        [1] ASCE 7, 2016, 7.4.1 and 7.4.2, figure 7.4-1; from memory.
    Examples
        A ventilated cold roof with shingles.

        >>> round(math.degrees(full_snow_slope(1.1, False)), 6)
        37.5
    """
    thermal = positive("thermal_ratio", thermal_ratio)
    curve = 0 if reaches(_WARM, thermal) else 1 if reaches(_COLD, thermal) else 2
    return math.radians(_FULL_SNOW_DEG["slippery" if slippery else "other"][curve])


def slope_factor(slope_rad: float, full_to_rad: float, none_from_rad: float) -> float:
    """Share of the snow that a slope keeps: all, falling in a straight line to none. [ratio]

    Parameters
        slope_rad: float — slope of the roof. [rad], 0 to a right angle
        full_to_rad: float — slope up to which all stays. [rad], 0 up to under a right angle
        none_from_rad: float — slope from which none stays; 70 deg in ASCE 7. [rad], over the former
    Returns
        float — share, 0 to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The Canadian code has the same form: 30 and 70 deg, slippery 15 and 60.
    References
        [1] ASCE 7, 2016, figure 7.4-1; from memory.
        [2] National Building Code of Canada, 4.1.6.2.(5) and (6).
    Examples
        [2]: (70 - 40)/40 at 40 deg.

        >>> round(slope_factor(math.radians(40), math.radians(30), math.radians(70)), 6)
        0.75
    """
    slope = between("slope_rad", slope_rad, 0.0, math.pi / 2)
    full_to = between("full_to_rad", full_to_rad, 0.0, math.pi / 2)
    band = positive("none_from_rad less full_to_rad", finite("none_from_rad", none_from_rad) - full_to)
    return min(1.0, max(0.0, 1.0 - (slope - full_to) / band))


def sloped_roof_snow(flat_pa: float, slope_ratio: float) -> float:
    """Balanced snow load on a sloped roof, on the horizontal projection. [Pa]

    Parameters
        flat_pa: float — flat roof snow. [Pa], 0 or more
        slope_ratio: float — slope factor Cs. [ratio], 0 to 1
    Returns
        float — sloped roof snow. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.4, equation (7.4-1).
    Examples
        >>> round(sloped_roof_snow(1000.0, 0.75), 6)
        750.0
    """
    return not_negative("flat_pa", flat_pa) * between("slope_ratio", slope_ratio, 0.0, 1.0)


def least_snow(
    ground_pa: float, importance_ratio: float, ceiling_pa: float, slope_rad: float, below_rad: float
) -> float:
    """Least uniform snow load of a roof of low slope, a case of its own. [Pa]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
        importance_ratio: float — importance factor Is. [ratio], over 0
        ceiling_pa: float — snow on the ground above which the least grows no more; 20 psf in ASCE 7. [Pa], over 0
        slope_rad: float — slope of the roof. [rad], 0 to a right angle
        below_rad: float — slope below which the case holds; 15 deg in ASCE 7. [rad], 0 to a right angle
    Returns
        float — least snow; 0 where the case does not hold. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Is × the smaller of ground and ceiling. Not combined with drifts, sliding or unbalanced snow.
    References
        [1] ASCE 7, 2016, 7.3.4; from memory.
    Examples
        30 psf on the ground, a roof of 3 in 12: 20 psf.

        >>> round(least_snow(30 * 47.88026, 1.0, 20 * 47.88026, math.atan(3 / 12), math.radians(15)) / 47.88026, 6)
        20.0
    """
    slope = between("slope_rad", slope_rad, 0.0, math.pi / 2)
    least_pa = min(not_negative("ground_pa", ground_pa), positive("ceiling_pa", ceiling_pa))
    least_pa *= positive("importance_ratio", importance_ratio)
    return 0.0 if reaches(slope, between("below_rad", below_rad, 0.0, math.pi / 2)) else least_pa


def unbalanced_counts(slope_rad: float, least_rad: float, most_rad: float) -> bool:
    """Whether a gable or hip roof is looked at with unbalanced snow. [yes or no]

    Parameters
        slope_rad: float — slope of the roof. [rad], 0 to a right angle
        least_rad: float — least slope of the case; 1/2 in 12 in ASCE 7. [rad], 0 to a right angle
        most_rad: float — greatest slope of the case; 7 in 12 in ASCE 7. [rad], 0 to a right angle
    Returns
        bool — yes from the least to the greatest slope, both included. [yes or no]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.6.1; the range of slopes from memory.
    Examples
        >>> unbalanced_counts(math.atan(7 / 12), math.atan(0.5 / 12), math.atan(7 / 12))
        True
        >>> unbalanced_counts(math.atan(8 / 12), math.atan(0.5 / 12), math.atan(7 / 12))
        False
    """
    slope = between("slope_rad", slope_rad, 0.0, math.pi / 2)
    least = between("least_rad", least_rad, 0.0, math.pi / 2)
    return reaches(slope, least) and reaches(between("most_rad", most_rad, 0.0, math.pi / 2), slope)


def unbalanced_snow(
    ground_pa: float,
    sloped_pa: float,
    importance_ratio: float,
    eave_to_ridge_m: float,
    narrow_to_m: float,
    simple_rafters: bool,
) -> tuple[float, float]:
    """Uniform part of unbalanced snow: windward side, leeward side. [Pa]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
        sloped_pa: float — balanced snow on the slope. [Pa], 0 or more
        importance_ratio: float — importance factor Is. [ratio], over 0
        eave_to_ridge_m: float — eave to ridge, horizontal. [m], over 0
        narrow_to_m: float — eave to ridge up to which the simple case holds; 20 ft in ASCE 7. [m], over 0
        simple_rafters: bool — whether rafters of one section span from eave to ridge. [yes or no]
    Returns
        tuple[float, float] — windward, leeward. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Narrow roofs with simple rafters: nothing to windward, Is × ground to leeward. All others: 0.3 of the
        sloped roof snow to windward, all of it to leeward and the drift at the ridge on top
        (`ridge_drift_surcharge`).
    References
        [1] ASCE 7, 2016, 7.6.1, figure 7.6-2.
        [2] American Wood Council, answer to a frequent question on roof pitch and unbalanced snow.
    Examples
        [2]: up to 20 ft, 30 psf on the ground: 0 and 30 psf.

        >>> windward, leeward = unbalanced_snow(30 * 47.88026, 21 * 47.88026, 1.0, 4.0, 20 * 0.3048, True)
        >>> windward, round(leeward / 47.88026, 6)
        (0.0, 30.0)
    """
    ground = not_negative("ground_pa", ground_pa) * positive("importance_ratio", importance_ratio)
    sloped = not_negative("sloped_pa", sloped_pa)
    narrow = reaches(positive("narrow_to_m", narrow_to_m), positive("eave_to_ridge_m", eave_to_ridge_m))
    return (0.0, ground) if narrow and simple_rafters else (_WINDWARD * sloped, sloped)


def ridge_drift_surcharge(drift_height_m: float, density_n_m3: float, pitch_ratio: float) -> float:
    """Surcharge of the drift on the leeward side of a ridge. [Pa]

    Parameters
        drift_height_m: float — height of the drift for the length of the windward side. [m], 0 or more
        density_n_m3: float — weight of snow by volume. [N/m3], over 0
        pitch_ratio: float — rise of the roof for one of run. [ratio], over 0
    Returns
        float — even surcharge over the extent of `ridge_drift_extent`. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        height × density / sqrt(run for one of rise). The height of the drift is that of `snow_drift.drift_height`
        with the eave-to-ridge length of the windward side as fetch.
    References
        [1] ASCE 7, 2016, 7.6.1, figure 7.6-2; from memory.
    Examples
        At 4 in 12 the run for one of rise is 3.

        >>> round(ridge_drift_surcharge(1.0, 2700.0, 4 / 12) * math.sqrt(3), 6)
        2700.0
    """
    height_pa = not_negative("drift_height_m", drift_height_m) * positive("density_n_m3", density_n_m3)
    return height_pa * math.sqrt(positive("pitch_ratio", pitch_ratio))


def ridge_drift_extent(drift_height_m: float, pitch_ratio: float) -> float:
    """Horizontal extent of the drift on the leeward side, from the ridge. [m]

    Parameters
        drift_height_m: float — height of the drift for the length of the windward side. [m], 0 or more
        pitch_ratio: float — rise of the roof for one of run. [ratio], over 0
    Returns
        float — extent. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        8/3 × height × sqrt(run for one of rise); not past the eave.
    References
        [1] ASCE 7, 2016, 7.6.1, figure 7.6-2; from memory.
    Examples
        >>> round(ridge_drift_extent(3.0, 4 / 16), 6)
        16.0
    """
    height_m = not_negative("drift_height_m", drift_height_m)
    return _RIDGE_DRIFT_EXTENT * height_m / math.sqrt(positive("pitch_ratio", pitch_ratio))


def rain_on_snow(
    ground_pa: float, slope_rad: float, eave_to_ridge_m: float, surcharge_pa: float, ground_limit_pa: float
) -> float:
    """Rain on a nearly flat roof where there is little snow, added to the balanced snow. [Pa]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
        slope_rad: float — slope of the roof. [rad], 0 to a right angle
        eave_to_ridge_m: float — eave to ridge, horizontal. [m], over 0
        surcharge_pa: float — surcharge; 5 psf in ASCE 7. [Pa], 0 or more
        ground_limit_pa: float — ground snow up to which it is added; 20 psf in ASCE 7. [Pa], over 0
    Returns
        float — the surcharge, or 0 where it is not added. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Added where there is snow, no more than the limit, and the slope in degrees is under the length from
        eave to ridge in feet / 50. Not combined with drifts, sliding, unbalanced or least snow.
    References
        [1] ASCE 7, 2016, 7.10; from memory.
    Examples
        25 ft at 1/4 in 12, which is 1.19 deg: over 25/50.

        >>> rain_on_snow(957.6, math.atan(0.25 / 12), 25 * 0.3048, 239.4, 957.6)
        0.0
    """
    ground = not_negative("ground_pa", ground_pa)
    slope = math.degrees(between("slope_rad", slope_rad, 0.0, math.pi / 2))
    flat_below = positive("eave_to_ridge_m", eave_to_ridge_m) / FOOT_M / _RAIN_FEET_A_DEGREE
    surcharge = not_negative("surcharge_pa", surcharge_pa)
    little = ground > 0 and reaches(positive("ground_limit_pa", ground_limit_pa), ground)
    return surcharge if little and not reaches(slope, flat_below) else 0.0
