"""Strip footings and pads: pressure on the soil, sizes for a load, plain concrete, frost.

strip  own_pressure, soil_pressure, width_needed, load_allowed
pad    pad_pressure, pad_area_needed, square_side
table  width_stepped, width_for_house, size_for_supported_lengths
plain  projection, projection_fits, thickness_needed
frost  frost_margin

Loads are unfactored, at the top of the footing. The soil needed for a width is `soil_pressure` itself.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, count_down, count_up, finite, not_negative, positive, reaches, whole
from checker.calc.errors import OutOfRange


def own_pressure(thicknesses_m: Sequence[float], weights_n_m3: Sequence[float]) -> float:
    """Pressure of a footing's own weight, and of soil on it, on the soil under it. [Pa]

    Parameters
        thicknesses_m: Sequence[float] — footing, soil over it. [m], each 0 or more; may be empty
        weights_n_m3: Sequence[float] — weight of each by volume, in the same order. [N/m3], each over 0
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        sum(thickness × weight). Soil that the footing displaces may be taken off by the caller.
    References
        [1] Course in reinforced concrete, example 12.3: 0.3 m of concrete and 1.2 m of soil.
    Examples
        [1]: 0.3 × 2.4 + 1.2 × 2.0 t/m2.

        >>> round(own_pressure([0.3, 1.2], [2.4, 2.0]), 6)
        3.12
    """
    if len(thicknesses_m) != len(weights_n_m3):
        raise OutOfRange("length of thicknesses_m", len(thicknesses_m), f"that of weights, {len(weights_n_m3)}")
    weights = all_positive("weights_n_m3", weights_n_m3, 0)
    layers = zip(thicknesses_m, weights, strict=True)
    return math.fsum(not_negative("thicknesses_m", thickness) * weight for thickness, weight in layers)


def soil_pressure(load_n_m: float, width_m: float, own_pa: float = 0.0) -> float:
    """Pressure under a strip footing, loaded in the middle; the soil that its width needs. [Pa]

    Parameters
        load_n_m: float — load along the footing. [N/m], 0 or more
        width_m: float — width. [m], over 0
        own_pa: float — own weight, by `own_pressure`. [Pa], 0 or more
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load / width + own. Each linear foot of a footing 1 ft wide carries the load over 1 ft2.
    References
        Definition of pressure; common practice, no source.
    Examples
        2,500 plf on 20 in.

        >>> round(soil_pressure(2500.0, 20 / 12), 6)
        1500.0
    """
    return not_negative("load_n_m", load_n_m) / positive("width_m", width_m) + not_negative("own_pa", own_pa)


def width_needed(load_n_m: float, soil_pa: float, own_pa: float = 0.0) -> float:
    """Width of strip footing that keeps the pressure within what the soil takes. [m]

    Parameters
        load_n_m: float — load along the footing. [N/m], 0 or more
        soil_pa: float — what the soil takes. [Pa], over the own weight
        own_pa: float — own weight, by `own_pressure`. [Pa], 0 or more
    Returns
        float — width, not rounded. [m]
    Raises
        OutOfRange — a value outside its range, soil that the footing alone is too heavy for.
    Notes
        load / (soil - own).
    References
        [1] Course in reinforced concrete, example 12.3.
        [2] Building Construction Handbook, 8th edition, Foundations, calculated sizing.
    Examples
        [1]: 20 t/m, 10 t/m2 less 3.12.

        >>> round(width_needed(20.0, 10.0, 3.12), 2)
        2.91
    """
    return not_negative("load_n_m", load_n_m) / _net(soil_pa, own_pa)


def load_allowed(width_m: float, soil_pa: float, own_pa: float = 0.0) -> float:
    """Load that a strip footing may bring to the soil. [N/m]

    Parameters
        width_m: float — width. [m], over 0
        soil_pa: float — what the soil takes. [Pa], over the own weight
        own_pa: float — own weight, by `own_pressure`. [Pa], 0 or more
    Returns
        float — load along the footing. [N/m]
    Raises
        OutOfRange — a value outside its range, soil that the footing alone is too heavy for.
    References
        Definition of pressure; common practice, no source.
    Examples
        12 in on 1,500 psf.

        >>> load_allowed(1.0, 1500.0)
        1500.0
    """
    return positive("width_m", width_m) * _net(soil_pa, own_pa)


def pad_pressure(load_n: float, area_m2: float, own_pa: float = 0.0) -> float:
    """Pressure under a pad, loaded in the middle. [Pa]

    Parameters
        load_n: float — load of the post. [N], 0 or more
        area_m2: float — area of the pad. [m2], over 0
        own_pa: float — own weight, by `own_pressure`. [Pa], 0 or more
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        Definition of pressure; common practice, no source.
    Examples
        >>> pad_pressure(9000.0, 6.0)
        1500.0
    """
    return not_negative("load_n", load_n) / positive("area_m2", area_m2) + not_negative("own_pa", own_pa)


def pad_area_needed(load_n: float, soil_pa: float, own_pa: float = 0.0) -> float:
    """Area of pad that keeps the pressure within what the soil takes. [m2]

    Parameters
        load_n: float — load of the post. [N], 0 or more
        soil_pa: float — what the soil takes. [Pa], over the own weight
        own_pa: float — own weight, by `own_pressure`. [Pa], 0 or more
    Returns
        float — area, not rounded. [m2]
    Raises
        OutOfRange — a value outside its range, soil that the footing alone is too heavy for.
    References
        Definition of pressure; common practice, no source.
    Examples
        >>> pad_area_needed(9000.0, 1575.0, 75.0)
        6.0
    """
    return not_negative("load_n", load_n) / _net(soil_pa, own_pa)


def square_side(area_m2: float) -> float:
    """Side of a square pad of an area. [m]

    Parameters
        area_m2: float — area. [m2], 0 or more
    Returns
        float — side. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> square_side(2.25)
        1.5
    """
    return math.sqrt(not_negative("area_m2", area_m2))


def width_stepped(width_m: float, step_m: float, least_m: float) -> float:
    """Width rounded up to a step, not under the least. [m]

    Parameters
        width_m: float — width needed. [m], 0 or more
        step_m: float — step, as an inch. [m], over 0
        least_m: float — least width. [m], 0 or more
    Returns
        float — width to build. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Common practice, no source.
    Examples
        >>> round(width_stepped(17.2, 1.0, 12.0), 6), width_stepped(9.0, 1.0, 12.0)
        (18.0, 12.0)
    """
    steps = count_up(not_negative("width_m", width_m) / positive("step_m", step_m))
    return max(steps * step_m, not_negative("least_m", least_m))


def width_for_house(
    table_width_m: float,
    house_width_m: float,
    basis_width_m: float,
    per_m: float,
    change_m: float,
    least_m: float,
) -> float:
    """Table width of a footing, or its thickness, adjusted for a wider or narrower house. [m]

    Parameters
        table_width_m: float — width of the table. [m], over 0
        house_width_m: float — width of the house. [m], over 0
        basis_width_m: float — width that the table is for; 32 ft. [m], over 0
        per_m: float — width of house for one change; 2 ft in 2018, 4 ft in 2021. [m], over 0
        change_m: float — change of the footing; 2 in of width, 1 in of thickness. [m], 0 or more
        least_m: float — least width; 12 in, of thickness 6 in. [m], 0 or more
    Returns
        float — adjusted width. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A step begun adds the whole change; only a full step takes it off.
    References
        [1] International Residential Code, 2018 and 2021, tables R403.1(1) to (3), footnotes.
    Examples
        [1]: 19 in, a house 36 ft wide by the 2018 table: 23 in.

        >>> width_for_house(19.0, 36 * 12.0, 32 * 12.0, 24.0, 2.0, 12.0)
        23.0
    """
    over = positive("house_width_m", house_width_m) - positive("basis_width_m", basis_width_m)
    steps = over / positive("per_m", per_m)
    changes = count_up(steps) if steps > 0 else -count_down(-steps)
    adjusted_m = positive("table_width_m", table_width_m) + changes * not_negative("change_m", change_m)
    return max(adjusted_m, not_negative("least_m", least_m))


def size_for_supported_lengths(
    table_size_m: float, supported_lengths_m: Sequence[float], storey_count: int, basis_length_m: float
) -> float:
    """Table width of a footing enlarged for joists longer than the table is for. [m]

    Parameters
        table_size_m: float — width of the table. [m], over 0
        supported_lengths_m: Sequence[float] — supported length of joists of each storey whose load comes down.
            [m], each over 0, one or more
        storey_count: int — storeys that the table counts. [count], 1 or more
        basis_length_m: float — supported length that the table is for; 4.9 m. [m], over 0
    Returns
        float — width; that of the table where the joists are no longer. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        table width × sum(lengths) / (storeys × basis). The area of a column's footing grows in the same way.
    References
        [1] Ontario Building Code, O. Reg. 332/12, 9.15.3.4.
    Examples
        [1]: two storeys, 350 mm; joists of 5.6 m on both: 400 mm.

        >>> round(size_for_supported_lengths(0.35, [5.6, 5.6], 2, 4.9), 6)
        0.4
    """
    lengths_m = math.fsum(all_positive("supported_lengths_m", supported_lengths_m))
    basis_m = whole("storey_count", storey_count, 1) * positive("basis_length_m", basis_length_m)
    return positive("table_size_m", table_size_m) * max(1.0, lengths_m / basis_m)


def projection(footing_width_m: float, wall_m: float) -> float:
    """How far a footing stands out on each side of the wall in its middle. [m]

    Parameters
        footing_width_m: float — width of the footing. [m], over 0
        wall_m: float — thickness of the wall. [m], 0 or more
    Returns
        float — projection; negative where the wall is wider. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        20 in under 8 in.

        >>> projection(20.0, 8.0)
        6.0
    """
    return (positive("footing_width_m", footing_width_m) - not_negative("wall_m", wall_m)) / 2


def projection_fits(projection_m: float, thickness_m: float, least_m: float, most_ratio: float) -> bool:
    """Whether a projection of plain concrete is neither too short nor too long for its thickness. [yes or no]

    Parameters
        projection_m: float — projection on one side. [m], either sign
        thickness_m: float — thickness of the footing. [m], over 0
        least_m: float — least projection; 2 in. [m], 0 or more
        most_ratio: float — greatest projection over thickness; 1. [ratio], over 0
    Returns
        bool — whether it fits. [yes or no]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, R403.1.1.
    Examples
        6 in on a thickness of 6 in fits, 7 in does not.

        >>> projection_fits(6.0, 6.0, 2.0, 1.0), projection_fits(7.0, 6.0, 2.0, 1.0)
        (True, False)
    """
    most_m = positive("thickness_m", thickness_m) * positive("most_ratio", most_ratio)
    least_fits = reaches(finite("projection_m", projection_m), not_negative("least_m", least_m))
    return least_fits and reaches(most_m, projection_m)


def thickness_needed(projection_m: float, most_ratio: float, least_m: float) -> float:
    """Thickness of plain concrete for a projection. [m]

    Parameters
        projection_m: float — projection on one side. [m], either sign
        most_ratio: float — greatest projection over thickness; 1. [ratio], over 0
        least_m: float — least thickness; 6 in. [m], 0 or more
    Returns
        float — thickness. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, R403.1.1.
    Examples
        A 28 in footing under a 10 in wall.

        >>> thickness_needed(9.0, 1.0, 6.0)
        9.0
    """
    needed_m = finite("projection_m", projection_m) / positive("most_ratio", most_ratio)
    return max(needed_m, not_negative("least_m", least_m))


def frost_margin(bottom_depth_m: float, frost_depth_m: float) -> float:
    """How far the bottom of a footing lies below the frost. [m]

    Parameters
        bottom_depth_m: float — bottom of the footing below the finished grade beside it. [m], 0 or more
        frost_depth_m: float — depth that frost reaches. [m], 0 or more
    Returns
        float — margin; negative where frost reaches under it. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Difference; common practice, no source.
    Examples
        >>> frost_margin(42.0, 48.0)
        -6.0
    """
    return not_negative("bottom_depth_m", bottom_depth_m) - not_negative("frost_depth_m", frost_depth_m)


def _net(soil_pa: float, own_pa: float) -> float:
    """What the soil takes beside the footing itself."""
    own = not_negative("own_pa", own_pa)
    if not positive("soil_pa", soil_pa) > own:
        raise OutOfRange("soil_pa", soil_pa, f"over the footing's own weight, {own:.12g}")
    return soil_pa - own
