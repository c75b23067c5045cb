"""Dead loads of constructions: layers together, members at a spacing, products by mass, loads on plan.

build_up_load, members_load, mass_load, load_on_plan, area_weighted_load

A single layer is `gravity.layer_load`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, not_negative, positive, reaches
from checker.calc.errors import OutOfRange
from checker.calc.loads.gravity import GRAVITY_M_S2, layer_load


def build_up_load(
    thicknesses_m: Sequence[float], densities_kg_m3: Sequence[float], product_loads_pa: Sequence[float] = ()
) -> float:
    """Dead load of a construction on its own area. [Pa]

    Parameters
        thicknesses_m: Sequence[float] — layers that are known by density. [m], each 0 or more; may be empty
        densities_kg_m3: Sequence[float] — density of each, in the same order. [kg/m3], each 0 or more
        product_loads_pa: Sequence[float] — products that are known by weight over area. [Pa], each 0 or more;
            may be empty
    Returns
        float — sum. [Pa]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    References
        Sum of layers; common practice, no source.
    Examples
        Half an inch of gypsum board at 50 lb/ft3 and shingles of 2.5 psf.

        >>> round(build_up_load([0.0127], [800.0], [119.7]), 1)
        219.3
    """
    if len(thicknesses_m) != len(densities_kg_m3):
        raise OutOfRange("length of thicknesses_m", len(thicknesses_m), f"that of densities, {len(densities_kg_m3)}")
    layers = (layer_load(*layer) for layer in zip(thicknesses_m, densities_kg_m3, strict=True))
    products = (not_negative("product_loads_pa", load_pa) for load_pa in product_loads_pa)
    return math.fsum([*layers, *products])


def members_load(width_m: float, depth_m: float, spacing_m: float, density_kg_m3: float) -> float:
    """Dead load of joists, rafters or studs over the area they frame. [Pa]

    Parameters
        width_m: float — width of a member. [m], over 0 up to the spacing
        depth_m: float — depth of a member. [m], over 0
        spacing_m: float — centre to centre. [m], over 0
        density_kg_m3: float — density of the wood. [kg/m3], over 0
    Returns
        float — load over the area. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        Section over spacing; common practice, no source.
    Examples
        2x10 at 16 in of 35 lb/ft3: 2.5 psf.

        >>> round(members_load(1.5 * 0.0254, 9.25 * 0.0254, 16 * 0.0254, 560.65) / 47.88026, 2)
        2.53
    """
    share = positive("width_m", width_m) / positive("spacing_m", spacing_m)
    if not reaches(1.0, share):
        raise OutOfRange("width_m", width_m, f"at most the spacing, {spacing_m:.12g}")
    return share * layer_load(positive("depth_m", depth_m), positive("density_kg_m3", density_kg_m3))


def mass_load(mass_kg: float, area_m2: float) -> float:
    """Load of a thing of a known mass, even over an area. [Pa]

    Parameters
        mass_kg: float — mass. [kg], 0 or more
        area_m2: float — area it stands on or covers. [m2], over 0
    Returns
        float — load. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        Definition of weight; standard acceleration 9.80665 m/s2, ISO 80000-3.
    Examples
        A roll of 25 kg that covers 10 m2.

        >>> round(mass_load(25.0, 10.0), 3)
        24.517
    """
    return not_negative("mass_kg", mass_kg) * GRAVITY_M_S2 / positive("area_m2", area_m2)


def load_on_plan(slope_load_pa: float, pitch_ratio: float) -> float:
    """Load on the horizontal projection of what weighs so much on the slope. [Pa]

    Parameters
        slope_load_pa: float — load over the sloped area. [Pa], 0 or more
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — load over the area on plan. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load / cos(slope).
    References
        Geometry; common practice, no source.
    Examples
        15 psf at 9 in 12.

        >>> load_on_plan(15.0, 0.75)
        18.75
    """
    return not_negative("slope_load_pa", slope_load_pa) * math.hypot(1.0, not_negative("pitch_ratio", pitch_ratio))


def area_weighted_load(loads_pa: Sequence[float], areas_m2: Sequence[float]) -> float:
    """Mean load of parts by area. [Pa]

    Parameters
        loads_pa: Sequence[float] — load of each part. [Pa], each 0 or more, one or more
        areas_m2: Sequence[float] — area of each, in the same order. [m2], each over 0
    Returns
        float — mean. [Pa]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    References
        [1] British Columbia Building Code, 2024, note A-9.23.13.2.(3).
    Examples
        [1]: 25 m2 of 1.25 kPa and 375 m2 of 0.45 kPa.

        >>> area_weighted_load([1250.0, 450.0], [25.0, 375.0])
        500.0
    """
    if len(loads_pa) != len(areas_m2):
        raise OutOfRange("length of areas_m2", len(areas_m2), f"that of loads, {len(loads_pa)}")
    areas = all_positive("areas_m2", areas_m2)
    whole = (not_negative("loads_pa", load) * area for load, area in zip(loads_pa, areas, strict=True))
    return math.fsum(whole) / math.fsum(areas)
