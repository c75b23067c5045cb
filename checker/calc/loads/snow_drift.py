"""Snow on a lower roof beside a higher one, by ASCE 7: drifts at the step and snow that slides down.

snow    snow_density, snow_depth
drift   drift_height, drift_counts, drift_height_limited, drift_width, drift_surcharge, drift_at, drift_mean
slide   sliding_snow, sliding_line_load

The drift lies on the balanced snow: a triangle, highest at the wall. Leeward, the fetch is the length of the upper
roof; windward, that of the lower roof, and a share of the height. The greater of the two holds. Importance
factor 1.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, not_negative, positive, reaches
from checker.calc.loads._printed_units import FOOT_M, PCF_N_M3, PSF_PA

_DENSITY_SLOPE, _DENSITY_LEAST_PCF, _DENSITY_MOST_PCF = 0.13, 14.0, 30.0
_HEIGHT_FACTOR, _HEIGHT_ADDED_PSF, _HEIGHT_LESS_FT = 0.43, 10.0, 1.5
_WIDTH_IN_HEIGHTS, _WIDTH_MOST_IN_CLEAR_HEIGHTS = 4.0, 8.0


def snow_density(ground_pa: float) -> float:
    """Weight of snow on a roof by volume. [N/m3]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
    Returns
        float — weight by volume. [N/m3]
    Raises
        OutOfRange — a value outside its range.
    Notes
        0.13 × ground in psf + 14, at most 30 lb/ft3.
    References
        [1] ASCE 7, 2016, 7.7.1, equation (7.7-1).
        [2] Article on snow drift loads by two editions of ASCE 7.
    Examples
        [2]: 25 psf: 17.25 lb/ft3.

        >>> round(snow_density(25 * 47.88026) / 157.0875, 4)
        17.25
    """
    ground_psf = not_negative("ground_pa", ground_pa) / PSF_PA
    return min(_DENSITY_SLOPE * ground_psf + _DENSITY_LEAST_PCF, _DENSITY_MOST_PCF) * PCF_N_M3


def snow_depth(snow_pa: float, density_n_m3: float) -> float:
    """Depth of an even snow load. [m]

    Parameters
        snow_pa: float — snow load. [Pa], 0 or more
        density_n_m3: float — weight of snow by volume. [N/m3], over 0
    Returns
        float — depth. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.7.1: depth of the balanced snow.
    Examples
        17.5 psf at 17.25 lb/ft3: 1.01 ft.

        >>> round(snow_depth(17.5, 17.25), 2)
        1.01
    """
    return not_negative("snow_pa", snow_pa) / positive("density_n_m3", density_n_m3)


def drift_height(ground_pa: float, fetch_m: float, least_fetch_m: float, share_ratio: float) -> float:
    """Height of a drift before the height of the step limits it. [m]

    Parameters
        ground_pa: float — snow load on the ground. [Pa], 0 or more
        fetch_m: float — length of the roof from which the snow blows. [m], over 0
        least_fetch_m: float — least length to count; 25 ft in older, 20 ft in newer editions. [m], 0 or more
        share_ratio: float — 1 leeward, 0.75 windward in ASCE 7. [ratio], over 0 to 1
    Returns
        float — height over the balanced snow. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        share × (0.43 × cube root(fetch in ft) × fourth root(ground in psf + 10) - 1.5) ft, not under 0.
    References
        [1] ASCE 7, 2016, 7.7.1, figure 7.6-1.
        [2] Article on snow drift loads by two editions of ASCE 7.
    Examples
        [2]: 25 psf, 40 ft: printed 2.08 ft, exactly 2.077.

        >>> round(drift_height(25 * 47.88026, 40 * 0.3048, 25 * 0.3048, 1.0) / 0.3048, 3)
        2.077
    """
    ground_psf = not_negative("ground_pa", ground_pa) / PSF_PA
    fetch_ft = max(positive("fetch_m", fetch_m), not_negative("least_fetch_m", least_fetch_m)) / FOOT_M
    roots = math.cbrt(fetch_ft) * math.sqrt(math.sqrt(ground_psf + _HEIGHT_ADDED_PSF))
    height_ft = _HEIGHT_FACTOR * roots - _HEIGHT_LESS_FT
    share = between("share_ratio", positive("share_ratio", share_ratio), 0.0, 1.0)
    return max(0.0, share * height_ft) * FOOT_M


def drift_counts(clear_height_m: float, balanced_depth_m: float, least_ratio: float) -> bool:
    """Whether a step is high enough for a drift to be counted. [yes or no]

    Parameters
        clear_height_m: float — top of the balanced snow to the upper roof. [m], 0 or more
        balanced_depth_m: float — depth of the balanced snow. [m], over 0
        least_ratio: float — clear height over depth from which drifts count; 0.2 in ASCE 7. [ratio], 0 or more
    Returns
        bool — whether to count it. [yes or no]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.7.1; from memory.
    Examples
        >>> drift_counts(0.1, 0.6, 0.2)
        False
    """
    clear_m = not_negative("clear_height_m", clear_height_m)
    return reaches(clear_m / positive("balanced_depth_m", balanced_depth_m), not_negative("least_ratio", least_ratio))


def drift_height_limited(drift_height_m: float, clear_height_m: float) -> float:
    """Height of a drift that the step has room for. [m]

    Parameters
        drift_height_m: float — height by `drift_height`. [m], 0 or more
        clear_height_m: float — top of the balanced snow to the upper roof. [m], 0 or more
    Returns
        float — the smaller of the two. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.7.1; from memory.
    Examples
        >>> drift_height_limited(0.9, 0.5)
        0.5
    """
    return min(not_negative("drift_height_m", drift_height_m), not_negative("clear_height_m", clear_height_m))


def drift_width(drift_height_m: float, clear_height_m: float) -> float:
    """Width of a drift from the wall. [m]

    Parameters
        drift_height_m: float — height by `drift_height`, before the step limits it. [m], 0 or more
        clear_height_m: float — top of the balanced snow to the upper roof. [m], over 0
    Returns
        float — width; a lower roof that ends sooner cuts it off. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        4 × height where the step has room; otherwise 4 × height² / clear height, at most 8 × clear height.
    References
        [1] ASCE 7, 2016, 7.7.1; the limited width from memory.
    Examples
        >>> drift_width(0.6, 1.0)
        2.4
    """
    height_m = not_negative("drift_height_m", drift_height_m)
    clear_m = positive("clear_height_m", clear_height_m)
    if reaches(clear_m, height_m):
        return _WIDTH_IN_HEIGHTS * height_m
    return min(_WIDTH_IN_HEIGHTS * height_m**2 / clear_m, _WIDTH_MOST_IN_CLEAR_HEIGHTS * clear_m)


def drift_surcharge(drift_height_m: float, density_n_m3: float) -> float:
    """Greatest surcharge of a drift, at the wall. [Pa]

    Parameters
        drift_height_m: float — height of the drift. [m], 0 or more
        density_n_m3: float — weight of snow by volume. [N/m3], over 0
    Returns
        float — surcharge over the balanced snow. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.7.1.
        [2] Article on snow drift loads by two editions of ASCE 7.
    Examples
        [2]: 2.077 ft of 17.25 lb/ft3: 35.8 psf.

        >>> round(drift_surcharge(2.077, 17.25), 1)
        35.8
    """
    return not_negative("drift_height_m", drift_height_m) * positive("density_n_m3", density_n_m3)


def drift_at(distance_m: float, width_m: float, peak_pa: float) -> float:
    """Surcharge of a drift at a distance from the wall. [Pa]

    Parameters
        distance_m: float — from the wall, horizontal. [m], 0 or more
        width_m: float — width of the drift. [m], over 0
        peak_pa: float — surcharge at the wall. [Pa], 0 or more
    Returns
        float — surcharge, 0 past the width. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASCE 7, 2016, 7.7.1, figure 7.7-2: a triangle.
    Examples
        >>> drift_at(1.0, 4.0, 1600.0)
        1200.0
    """
    part = not_negative("distance_m", distance_m) / positive("width_m", width_m)
    return not_negative("peak_pa", peak_pa) * max(0.0, 1.0 - part)


def drift_mean(length_m: float, width_m: float, peak_pa: float) -> float:
    """Mean surcharge of a drift from the wall over a length. [Pa]

    Parameters
        length_m: float — from the wall, horizontal: the reach of a bearing line or the length of a rafter. [m], over 0
        width_m: float — width of the drift. [m], over 0
        peak_pa: float — surcharge at the wall. [Pa], 0 or more
    Returns
        float — mean. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The area of the triangle, cut off at the length, over the length.
    References
        [1] ASCE 7, 2016, 7.7.1, figure 7.7-2: a triangle.
    Examples
        Twice as far as the drift reaches: a quarter of the peak.

        >>> drift_mean(8.0, 4.0, 1600.0)
        400.0
    """
    length = positive("length_m", length_m)
    reach = min(length, positive("width_m", width_m))
    peak = not_negative("peak_pa", peak_pa)
    return peak * reach * (1.0 - reach / (2 * width_m)) / length


def sliding_snow(flat_pa: float, eave_to_ridge_m: float, share_ratio: float, spread_m: float) -> float:
    """Surcharge of snow sliding from an upper roof, even over a spread from its eave. [Pa]

    Parameters
        flat_pa: float — flat roof snow of the upper roof. [Pa], 0 or more
        eave_to_ridge_m: float — eave to ridge of the upper roof, horizontal. [m], over 0
        share_ratio: float — share that slides; 0.4 in ASCE 7. [ratio], 0 to 1
        spread_m: float — width over which it lies; 15 ft in ASCE 7. [m], over 0
    Returns
        float — surcharge over the balanced snow. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        share × flat × eave to ridge / spread. Counted where the upper roof is slippery and over 1/4 in 12, or
        not and over 2 in 12. Not combined with drifts, unbalanced or partial snow, or rain.
    References
        [1] ASCE 7, 2016, 7.9; from memory.
    Examples
        17.5 psf and 12 ft: 84 lb/ft over 15 ft, 5.6 psf.

        >>> round(sliding_snow(17.5, 12.0, 0.4, 15.0), 6)
        5.6
    """
    flat = not_negative("flat_pa", flat_pa) * positive("eave_to_ridge_m", eave_to_ridge_m)
    return flat * between("share_ratio", share_ratio, 0.0, 1.0) / positive("spread_m", spread_m)


def sliding_line_load(sliding_pa: float, lower_roof_m: float, spread_m: float) -> float:
    """Sliding snow that a lower roof takes, along the eave above. [N/m]

    Parameters
        sliding_pa: float — surcharge by `sliding_snow`. [Pa], 0 or more
        lower_roof_m: float — horizontal width of the lower roof from the eave above. [m], over 0
        spread_m: float — width over which the snow lies. [m], over 0
    Returns
        float — load along the eave. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A roof narrower than the spread takes its part of it; the rest falls past.
    References
        [1] ASCE 7, 2016, 7.9; from memory.
    Examples
        >>> round(sliding_line_load(5.6, 7.5, 15.0), 6)
        42.0
    """
    reach = min(positive("lower_roof_m", lower_roof_m), positive("spread_m", spread_m))
    return not_negative("sliding_pa", sliding_pa) * reach
