"""Slabs and basement walls against soil.

ISO 13370    characteristic_dimension, equivalent_thickness, slab_u, edge_insulation_psi, basement_floor_u,
             basement_wall_u
ASHRAE       below_grade_wall_u, below_grade_floor_u
by the edge  perimeter_conductance

The two sets are different methods and are not mixed in one house. ISO 13370 gives yearly means against the
mean outdoor temperature; the ASHRAE figures go with the coldest ground-surface temperature of the year.
"""

from __future__ import annotations

import math
from typing import Literal

from checker.calc._checks import not_negative, positive
from checker.calc.errors import OutOfRange


def characteristic_dimension(floor_area_m2: float, exposed_perimeter_m: float) -> float:
    """Characteristic dimension B' of a floor on the ground. [m]

    Parameters
        floor_area_m2: float — area of the floor. [m2], over 0
        exposed_perimeter_m: float — perimeter towards the outside or unheated space. [m], over 0
    Returns
        float — B'. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        area / half the exposed perimeter: the width of an endless strip.
    References
        [1] ISO 13370, 2007, 8.1, equation (2).
        [2] Building regulations textbook page, solid ground floor over clay: 58.89 m2, 33.8 m.
    Examples
        [2]: the page gives its inverse, perimeter over area 0.57.

        >>> round(2 / characteristic_dimension(58.89, 33.8), 2)
        0.57
    """
    return positive("floor_area_m2", floor_area_m2) / (0.5 * positive("exposed_perimeter_m", exposed_perimeter_m))


def equivalent_thickness(
    wall_thickness_m: float,
    soil_conductivity_w_mk: float,
    construction_resistance_m2k_w: float,
    inside_film_m2k_w: float,
    outside_film_m2k_w: float,
) -> float:
    """Thickness of soil that resists as much as a floor or wall with its films. [m]

    Parameters
        wall_thickness_m: float — full thickness of the outer walls at the floor; 0 for a basement wall. [m],
            0 or more
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
        construction_resistance_m2k_w: float — floor or wall with insulation and finish, without a dense slab
            or thin finish. [m2K/W], 0 or more
        inside_film_m2k_w: float — inside surface film. [m2K/W], 0 or more
        outside_film_m2k_w: float — outside surface film. [m2K/W], 0 or more
    Returns
        float — equivalent thickness. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        wall + soil conductivity × (inside film + construction + outside film).
    References
        [1] ISO 13370, 2007, equations (3) and (12).
    Examples
        An uninsulated floor on clay, walls of 0.3 m.

        >>> round(equivalent_thickness(0.3, 1.5, 0.0, 0.17, 0.04), 6)
        0.615
    """
    resistance = not_negative("construction_resistance_m2k_w", construction_resistance_m2k_w)
    resistance += not_negative("inside_film_m2k_w", inside_film_m2k_w)
    resistance += not_negative("outside_film_m2k_w", outside_film_m2k_w)
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    return not_negative("wall_thickness_m", wall_thickness_m) + soil * resistance


def slab_u(characteristic_dimension_m: float, equivalent_thickness_m: float, soil_conductivity_w_mk: float) -> float:
    """U of a slab on the ground, without edge insulation. [W/m2K]

    Parameters
        characteristic_dimension_m: float — B'. [m], over 0
        equivalent_thickness_m: float — of the floor, see `equivalent_thickness`. [m], over 0
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
    Returns
        float — U from the inside to the outside air. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Little insulated (thickness under B'): 2 k / (pi B' + d) × ln(pi B' / d + 1). Well insulated:
        k / (0.457 B' + d).
    References
        [1] ISO 13370, 2007, 9.1, equations (4) and (5).
    Examples
        Perimeter over area 0.55 on clay: 0.74.

        >>> round(slab_u(2 / 0.55, 0.615, 1.5), 2)
        0.74
    """
    return basement_floor_u(characteristic_dimension_m, equivalent_thickness_m, 0.0, soil_conductivity_w_mk)


def edge_insulation_psi(
    insulation_reach_m: float,
    placing: Literal["level", "upright"],
    insulation_thickness_m: float,
    insulation_resistance_m2k_w: float,
    equivalent_thickness_m: float,
    soil_conductivity_w_mk: float,
) -> float:
    """What insulation along the edge of a slab takes off, for a length of perimeter. [W/mK]

    Parameters
        insulation_reach_m: float — width inward if level, depth below ground if upright. [m], over 0
        placing: Literal['level', 'upright'] — how the insulation lies. [choice]
        insulation_thickness_m: float — thickness of the insulation. [m], 0 or more
        insulation_resistance_m2k_w: float — its resistance. [m2K/W], at least that of the soil it replaces
        equivalent_thickness_m: float — of the floor. [m], over 0
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
    Returns
        float — to add to the loss along the perimeter, 0 or negative. [W/mK]
    Raises
        OutOfRange — a value outside its range.
    Notes
        -k / pi × (ln(D / d + 1) - ln(D / (d + d') + 1)), d' = (R - thickness / k) k, D the reach, twice the
        reach if upright. Added to U as 2 psi / B'.
    References
        [1] ISO 13370, 2007, annex B, equations (B.1) to (B.5).
    Examples
        R 1.76 (R-10) to a depth of 0.61 m (2 ft).

        >>> round(edge_insulation_psi(0.61, "upright", 0.05, 1.76, 0.615, 1.5), 3)
        -0.368
    """
    reach = positive("insulation_reach_m", insulation_reach_m) * {"level": 1.0, "upright": 2.0}[placing]
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    d = positive("equivalent_thickness_m", equivalent_thickness_m)
    replaced = not_negative("insulation_thickness_m", insulation_thickness_m) / soil
    resistance = not_negative("insulation_resistance_m2k_w", insulation_resistance_m2k_w)
    if resistance < replaced:
        raise OutOfRange("insulation_resistance_m2k_w", resistance, f"at least that of the soil, {replaced:.12g}")
    extra = (resistance - replaced) * soil
    return -soil / math.pi * (math.log(reach / d + 1) - math.log(reach / (d + extra) + 1))


def basement_floor_u(
    characteristic_dimension_m: float,
    equivalent_thickness_m: float,
    depth_m: float,
    soil_conductivity_w_mk: float,
) -> float:
    """U of the floor of a heated basement. [W/m2K]

    Parameters
        characteristic_dimension_m: float — B'. [m], over 0
        equivalent_thickness_m: float — of the floor, see `equivalent_thickness`. [m], over 0
        depth_m: float — floor below the ground outside. [m], 0 or more
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
    Returns
        float — U from the inside to the outside air. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        As `slab_u`, with the thickness and half the depth for the thickness.
    References
        [1] ISO 13370, 2007, 9.3.2, equations (10) and (11).
    Examples
        >>> round(basement_floor_u(4.0, 0.615, 2.0, 1.5), 3)
        0.46
    """
    width = positive("characteristic_dimension_m", characteristic_dimension_m)
    d = positive("equivalent_thickness_m", equivalent_thickness_m) + not_negative("depth_m", depth_m) / 2
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    if d < width:
        return 2 * soil / (math.pi * width + d) * math.log(math.pi * width / d + 1)
    return soil / (0.457 * width + d)


def basement_wall_u(
    wall_equivalent_thickness_m: float,
    floor_equivalent_thickness_m: float,
    depth_m: float,
    soil_conductivity_w_mk: float,
) -> float:
    """U of the walls of a heated basement below ground. [W/m2K]

    Parameters
        wall_equivalent_thickness_m: float — of the wall, its own thickness not counted again. [m], over 0
        floor_equivalent_thickness_m: float — of the floor. [m], over 0
        depth_m: float — floor below the ground outside. [m], over 0
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
    Returns
        float — U from the inside to the outside air. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2 k / (pi z) × (1 + 0.5 d / (d + z)) × ln(z / w + 1); d no more than w.
    References
        [1] ISO 13370, 2007, 9.3.3, equations (13) and (14).
    Examples
        >>> round(basement_wall_u(0.3, 0.615, 2.0, 1.5), 3)
        1.036
    """
    w = positive("wall_equivalent_thickness_m", wall_equivalent_thickness_m)
    d = min(w, positive("floor_equivalent_thickness_m", floor_equivalent_thickness_m))
    z = positive("depth_m", depth_m)
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    return 2 * soil / (math.pi * z) * (1 + 0.5 * d / (d + z)) * math.log(z / w + 1)


def below_grade_wall_u(
    top_depth_m: float, bottom_depth_m: float, soil_conductivity_w_mk: float, wall_resistance_m2k_w: float
) -> float:
    """Mean U of a stretch of basement wall, by circular heat paths. [W/m2K]

    Parameters
        top_depth_m: float — top of the stretch below ground. [m], 0 or more
        bottom_depth_m: float — bottom of the stretch below ground. [m], over the top
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
        wall_resistance_m2k_w: float — wall, insulation and inside film. [m2K/W], over 0
    Returns
        float — U from the inside to the ground surface. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2 k / (pi (z2 - z1)) × (ln(z2 + 2 k R / pi) - ln(z1 + 2 k R / pi)). Divide a wall where its
        insulation ends.
    References
        [1] ASHRAE Handbook Fundamentals, 2009, chapter 17, basement walls with uniform insulation.
    Examples
        [1]: 8 ft of wall with R-15 beside R-1.47, soil of 0.8 Btu/h ft F: 0.043 Btu/h ft2 F.

        >>> u = below_grade_wall_u(0.0, 8 * 0.3048, 0.8 * 1.730735, 16.47 * 0.17611018)
        >>> round(u * 0.17611018, 3)
        0.043
    """
    top = not_negative("top_depth_m", top_depth_m)
    bottom = positive("bottom_depth_m", bottom_depth_m)
    if bottom <= top:
        raise OutOfRange("bottom_depth_m", bottom, f"over the top of the stretch, {top:.12g}")
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    around = 2 * soil * positive("wall_resistance_m2k_w", wall_resistance_m2k_w) / math.pi
    return 2 * soil / (math.pi * (bottom - top)) * math.log((bottom + around) / (top + around))


def below_grade_floor_u(
    floor_depth_m: float, floor_width_m: float, soil_conductivity_w_mk: float, floor_resistance_m2k_w: float
) -> float:
    """Mean U of a basement floor, by circular heat paths. [W/m2K]

    Parameters
        floor_depth_m: float — floor below the ground outside. [m], 0 or more
        floor_width_m: float — shorter side of the floor. [m], over 0
        soil_conductivity_w_mk: float — conductivity of the soil. [W/mK], over 0
        floor_resistance_m2k_w: float — floor, insulation and inside film. [m2K/W], over 0
    Returns
        float — U from the inside to the ground surface. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2 k / (pi w) × (ln(w / 2 + z / 2 + k R / pi) - ln(z / 2 + k R / pi)). Handbooks up to 2005 print
        lower figures by another method.
    References
        [1] ASHRAE Handbook Fundamentals, 2009, chapter 17, basement floors.
    Examples
        [1]: 6 ft deep and 24 ft wide, R-1.47: 0.032 Btu/h ft2 F.

        >>> u = below_grade_floor_u(6 * 0.3048, 24 * 0.3048, 0.8 * 1.730735, 1.47 * 0.17611018)
        >>> round(u * 0.17611018, 3)
        0.032
    """
    width = positive("floor_width_m", floor_width_m)
    soil = positive("soil_conductivity_w_mk", soil_conductivity_w_mk)
    start = not_negative("floor_depth_m", floor_depth_m) / 2
    start += soil * positive("floor_resistance_m2k_w", floor_resistance_m2k_w) / math.pi
    return 2 * soil / (math.pi * width) * math.log((width / 2 + start) / start)


def perimeter_conductance(f_factor_w_mk: float, exposed_perimeter_m: float) -> float:
    """Loss of a slab or foundation by its perimeter, for a degree of difference to the outdoors. [W/K]

    Parameters
        f_factor_w_mk: float — F-factor of the edge as built. [W/mK], over 0
        exposed_perimeter_m: float — perimeter towards the outside. [m], over 0
    Returns
        float — conductance. [W/K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        F × perimeter, whatever the area of the slab.
    References
        [1] ASHRAE Handbook Fundamentals, 2009, chapter 17, slab floors.
        [2] Northeast Sustainable Energy Association, Heat Loss To The Ground, part 2: 0.36 over 120 ft.
    Examples
        [2]: 43 Btu/h F.

        >>> round(perimeter_conductance(0.36 * 1.730735, 120 * 0.3048) / 0.527528)
        43
    """
    return positive("f_factor_w_mk", f_factor_w_mk) * positive("exposed_perimeter_m", exposed_perimeter_m)
