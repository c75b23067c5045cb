"""Specified snow loads of the Canadian code, and the spacing of members under more snow than a table has.

housing_snow, basic_snow_factor, characteristic_length, specified_snow, spacing_for_load

The slope factor is `snow.slope_factor` with the slopes of this code. Specified loads are not factored.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, not_negative, positive, reaches
from checker.calc.errors import OutOfRange

_BASIC, _LONG_M, _LENGTH_M = 0.8, 70.0, 100.0


def housing_snow(ground_pa: float, rain_pa: float, basic_ratio: float, least_pa: float) -> float:
    """Specified snow load on the roof of a house, simplified. [Pa]

    Parameters
        ground_pa: float — ground snow load Ss. [Pa], 0 or more
        rain_pa: float — associated rain load Sr. [Pa], 0 or more
        basic_ratio: float — basic factor Cb; 0.45 for roofs up to 4.3 m wide, 0.55 for others. [ratio], over 0
        least_pa: float — least specified load; 1 kPa. [Pa], 0 or more
    Returns
        float — specified snow load. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Cb × Ss + Sr, not under the least. For light repetitive framing within the limits of the code.
    References
        [1] Ontario Building Code, O. Reg. 332/12, 9.4.2.2; the National Building Code of Canada has the same form.
    Examples
        0.55 × 2.5 + 0.4 kPa.

        >>> round(housing_snow(2500.0, 400.0, 0.55, 1000.0), 6)
        1775.0
    """
    ground = positive("basic_ratio", basic_ratio) * not_negative("ground_pa", ground_pa)
    return max(ground + not_negative("rain_pa", rain_pa), not_negative("least_pa", least_pa))


def characteristic_length(smaller_m: float, larger_m: float) -> float:
    """Characteristic length of a roof for the basic snow factor. [m]

    Parameters
        smaller_m: float — smaller dimension of the roof on plan. [m], over 0
        larger_m: float — larger dimension. [m], not under the smaller
    Returns
        float — length. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2 w - w² / l: the side of a square roof, twice the width of a very long one.
    References
        [1] National Building Code of Canada, 2015, 4.1.6.2.(2).
    Examples
        >>> characteristic_length(10.0, 20.0)
        15.0
    """
    smaller = positive("smaller_m", smaller_m)
    if not reaches(positive("larger_m", larger_m), smaller):
        raise OutOfRange("larger_m", larger_m, f"at least the smaller dimension, {smaller:.12g}")
    return 2 * smaller - smaller**2 / larger_m


def basic_snow_factor(characteristic_length_m: float, wind_ratio: float) -> float:
    """Basic roof snow factor Cb of a large or small roof. [ratio]

    Parameters
        characteristic_length_m: float — by `characteristic_length`. [m], over 0
        wind_ratio: float — wind exposure factor Cw. [ratio], over 0 to 1
    Returns
        float — basic factor. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        0.8 up to a length of 70 / Cw²; above, (1 - (1 - 0.8 Cw) × exp(-(length × Cw² - 70) / 100)) / Cw.
    References
        [1] National Building Code of Canada, 2015, 4.1.6.2.(2).
    Examples
        Any roof of a house.

        >>> basic_snow_factor(15.0, 1.0)
        0.8
    """
    wind = positive("wind_ratio", wind_ratio)
    if not reaches(1.0, wind):
        raise OutOfRange("wind_ratio", wind_ratio, "over 0 to 1")
    over_m = positive("characteristic_length_m", characteristic_length_m) * wind**2 - _LONG_M
    if reaches(0.0, over_m):
        return _BASIC
    return (1 - (1 - _BASIC * wind) * math.exp(-over_m / _LENGTH_M)) / wind


def specified_snow(
    ground_pa: float,
    rain_pa: float,
    basic_ratio: float,
    wind_ratio: float,
    slope_ratio: float,
    accumulation_ratio: float,
    importance_ratio: float,
) -> float:
    """Specified snow load on any roof. [Pa]

    Parameters
        ground_pa: float — ground snow load Ss. [Pa], 0 or more
        rain_pa: float — associated rain load Sr. [Pa], 0 or more
        basic_ratio: float — basic factor Cb. [ratio], over 0
        wind_ratio: float — wind exposure factor Cw. [ratio], over 0
        slope_ratio: float — slope factor Cs. [ratio], 0 or more
        accumulation_ratio: float — accumulation factor Ca. [ratio], 0 or more
        importance_ratio: float — importance factor Is. [ratio], over 0
    Returns
        float — specified snow load. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Is × (Ss × Cb × Cw × Cs × Ca + Sr), where the rain counts no more than the snow. Cs is 1 where Ca is for
        drifts.
    References
        [1] National Building Code of Canada, 2015, 4.1.6.2.(1).
    Examples
        2.5 kPa and 0.4 kPa on a house of ordinary slope: 2.4 kPa.

        >>> round(specified_snow(2500.0, 400.0, 0.8, 1.0, 1.0, 1.0, 1.0), 6)
        2400.0
    """
    factors = (
        positive("basic_ratio", basic_ratio)
        * positive("wind_ratio", wind_ratio)
        * not_negative("slope_ratio", slope_ratio)
        * not_negative("accumulation_ratio", accumulation_ratio)
    )
    snow_pa = not_negative("ground_pa", ground_pa) * factors
    rain = min(not_negative("rain_pa", rain_pa), snow_pa)
    return positive("importance_ratio", importance_ratio) * (snow_pa + rain)


def spacing_for_load(
    table_spacing_m: float, table_load_pa: float, load_pa: float, standard_spacings_m: Sequence[float] = ()
) -> float:
    """Spacing at which members carry more load over the span that a table gives for less. [m]

    Parameters
        table_spacing_m: float — spacing of the table. [m], over 0
        table_load_pa: float — load of the table. [Pa], over 0
        load_pa: float — load of the place. [Pa], over 0
        standard_spacings_m: Sequence[float] — spacings to choose from. [m], each over 0; empty for any spacing
    Returns
        float — the spacing, or the widest standard spacing within it. [m]
    Raises
        OutOfRange — a value outside its range, no standard spacing that is close enough.
    Notes
        table spacing × table load / load: the load on one member stays the same. Sheathing must span the
        spacing chosen in any case.
    References
        [1] Ontario Building Code, explanatory note B-9.23.4.2.
    Examples
        [1]: 2.5 kPa at 600 mm; under 3.5 kPa 429 mm, so 400.

        >>> round(spacing_for_load(0.6, 2500.0, 3500.0), 3)
        0.429
        >>> spacing_for_load(0.6, 2500.0, 3500.0, [0.3, 0.4, 0.6])
        0.4
    """
    per_load = positive("table_spacing_m", table_spacing_m) * positive("table_load_pa", table_load_pa)
    spacing_m = per_load / positive("load_pa", load_pa)
    if not all_positive("standard_spacings_m", standard_spacings_m, 0):
        return spacing_m
    within = [standard_m for standard_m in standard_spacings_m if reaches(spacing_m, standard_m)]
    if not within:
        raise OutOfRange("least of standard_spacings_m", min(standard_spacings_m), f"at most {spacing_m:.12g}")
    return max(within)
