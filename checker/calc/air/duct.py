"""One duct: areas, velocities, friction, sizes, fittings.

sections    round_area, rectangular_area, oval_area, velocity, diameter_for_velocity
equal ducts rectangular_equivalent_diameter, oval_equivalent_diameter, side_for_equivalent_diameter
friction    friction_factor, friction_per_length, flex_compression_factor
sizes       diameter_for_friction, airflow_for_friction
fittings    velocity_pressure, fitting_loss, fitting_equivalent_length, pressure_loss

Friction is that of Darcy and Weisbach with the factor of Colebrook, in laminar flow 64 / Re. A duct that is
not round is treated as the round one with equal friction at equal flow; its velocity is that of its own area.
Roughness, density and viscosity are parameters.
"""

from __future__ import annotations

import math

from checker.calc._checks import not_negative, positive, reaches
from checker.calc.air._solve import turning_point
from checker.calc.errors import OutOfRange

_ROUGHEST = 0.05
_SMALLEST_DIAMETER_M = 0.001
_SMALLEST_AIRFLOW_M3_S = 1e-9


def round_area(diameter_m: float) -> float:
    """Area of a round duct. [m2]

    Parameters
        diameter_m: float — inside diameter. [m], over 0
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A 6 in pipe has 28.3 in2.

        >>> round(round_area(6.0), 1)
        28.3
    """
    return math.pi / 4 * positive("diameter_m", diameter_m) ** 2


def rectangular_area(width_m: float, height_m: float) -> float:
    """Area of a rectangular duct or grille. [m2]

    Parameters
        width_m: float — one inside dimension. [m], over 0
        height_m: float — the other. [m], over 0
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        12 in by 8 in.

        >>> rectangular_area(12.0, 8.0)
        96.0
    """
    return positive("width_m", width_m) * positive("height_m", height_m)


def oval_area(major_m: float, minor_m: float) -> float:
    """Area of a flat oval duct: a rectangle with half-round ends. [m2]

    Parameters
        major_m: float — inside size the long way. [m], at least the minor
        minor_m: float — inside size the short way. [m], over 0
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range, axes the wrong way round.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 27 (flat oval section).
    Examples
        An oval as wide as it is high is round.

        >>> oval_area(6.0, 6.0) == round_area(6.0)
        True
    """
    flat_m = _not_under_minor(major_m, minor_m) - minor_m
    return math.pi / 4 * minor_m**2 + minor_m * flat_m


def velocity(airflow_m3_s: float, area_m2: float) -> float:
    """Mean velocity in a duct, at a grille or at the face of a filter. [m/s]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], 0 or more
        area_m2: float — true area, not that of the equivalent round duct. [m2], over 0
    Returns
        float — velocity. [m/s]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Trade magazine on sheet metal, article on duct velocities (7500 cfm in 35 in by 20 in).
    Examples
        [1]: 1543 ft/min.

        >>> round(velocity(7500.0, 35 * 20 / 144))
        1543
    """
    return not_negative("airflow_m3_s", airflow_m3_s) / positive("area_m2", area_m2)


def diameter_for_velocity(airflow_m3_s: float, velocity_m_s: float) -> float:
    """Diameter of a round duct in which an airflow has a velocity. [m]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], over 0
        velocity_m_s: float — velocity wanted. [m/s], over 0
    Returns
        float — diameter. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        0.0785 m3/s at 10 m/s needs 100 mm.

        >>> round(diameter_for_velocity(0.0785398, 10.0), 6)
        0.1
    """
    area_m2 = positive("airflow_m3_s", airflow_m3_s) / positive("velocity_m_s", velocity_m_s)
    return math.sqrt(4 * area_m2 / math.pi)


def rectangular_equivalent_diameter(width_m: float, height_m: float) -> float:
    """Diameter of the round duct with the friction of a rectangular one at equal flow. [m]

    Parameters
        width_m: float — one inside dimension. [m], over 0
        height_m: float — the other. [m], over 0
    Returns
        float — equivalent diameter. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1.30 (ab)^0.625 / (a + b)^0.25; tried on metal ducts up to 8 times as wide as high.
    References
        [1] Huebscher, Friction Equivalents for Round, Square and Rectangular Ducts, 1948.
        [2] ASHAE Heating Ventilating Air Conditioning Guide, 1956, chapter 32, table 1.
    Examples
        [2]: 12 in by 8 in is as good as 10.7 in round.

        >>> round(rectangular_equivalent_diameter(12.0, 8.0), 1)
        10.7
    """
    area_m2 = rectangular_area(width_m, height_m)
    return float(1.30 * area_m2**0.625 / (width_m + height_m) ** 0.25)


def oval_equivalent_diameter(major_m: float, minor_m: float) -> float:
    """Diameter of the round duct with the friction of a flat oval one at equal flow. [m]

    Parameters
        major_m: float — inside size the long way. [m], at least the minor
        minor_m: float — inside size the short way. [m], over 0
    Returns
        float — equivalent diameter. [m]
    Raises
        OutOfRange — a value outside its range, axes the wrong way round.
    Notes
        1.55 area^0.625 / perimeter^0.25. A round duct comes out 0.1 per cent too large.
    References
        [1] Heyt and Diaz, Pressure Drop in Flat-Oval Spiral Air Duct, ASHRAE Transactions, 1975.
        [2] ASHRAE Handbook Fundamentals, 2017, chapter 21, equations 26 to 28.
    Examples
        A round duct as an oval.

        >>> round(oval_equivalent_diameter(6.0, 6.0), 2)
        6.01
    """
    area_m2 = oval_area(major_m, minor_m)
    perimeter_m = math.pi * minor_m + 2 * (major_m - minor_m)
    return float(1.55 * area_m2**0.625 / perimeter_m**0.25)


def side_for_equivalent_diameter(equivalent_diameter_m: float, other_side_m: float) -> float:
    """Side that a rectangular duct needs to be as good as a round one. [m]

    Parameters
        equivalent_diameter_m: float — diameter of the round duct. [m], over 0
        other_side_m: float — the side that is given, such as the free height. [m], over 0
    Returns
        float — the other side. [m]
    Raises
        OutOfRange — a value outside its range, a given side far too small for the diameter.
    Notes
        Undoes `rectangular_equivalent_diameter` by halving an interval.
    References
        [1] ASHAE Heating Ventilating Air Conditioning Guide, 1956, chapter 32, table 1.
    Examples
        [1]: 10.66 in round in 8 in of height needs a width of 12 in.

        >>> round(side_for_equivalent_diameter(10.656 * 0.0254, 8 * 0.0254) / 0.0254, 1)
        12.0
    """
    wanted_m = positive("equivalent_diameter_m", equivalent_diameter_m)
    positive("other_side_m", other_side_m)
    _, side_m = turning_point(
        "side", lambda side: rectangular_equivalent_diameter(side, other_side_m) >= wanted_m, wanted_m * 1e-3
    )
    return side_m


def friction_factor(
    airflow_m3_s: float, diameter_m: float, roughness_m: float, density_kg_m3: float, viscosity_pa_s: float
) -> float:
    """Friction factor of Darcy for a round duct. [ratio]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], over 0
        diameter_m: float — inside or equivalent diameter. [m], over 0
        roughness_m: float — absolute roughness of the wall. [m], 0 up to a twentieth of the diameter
        density_kg_m3: float — density of the air. [kg/m3], over 0
        viscosity_pa_s: float — dynamic viscosity of the air. [Pa s], over 0
    Returns
        float — factor. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1 / √f = −2 log10(roughness / 3.7 D + 2.51 / (Re √f)) from Re 2040, below it 64 / Re; the factor jumps
        there, in flows too small to size a duct by.
    References
        [1] Colebrook, Turbulent Flow in Pipes, Journal of the Institution of Civil Engineers, 1939.
        [2] ASHRAE Handbook Fundamentals, 2017, chapter 21, equations 17 to 20.
    Examples
        Re 100,000 and a roughness of 1/10,000 of the diameter give 0.018514.

        >>> round(friction_factor(math.pi / 4, 1.0, 1e-4, 1.0, 1e-5), 6)
        0.018514
    """
    from fluids.friction import friction_factor as darcy_factor

    speed_m_s = velocity(positive("airflow_m3_s", airflow_m3_s), round_area(diameter_m))
    relative = not_negative("roughness_m", roughness_m) / diameter_m
    if not reaches(_ROUGHEST, relative):
        raise OutOfRange("roughness_m", roughness_m, f"at most {_ROUGHEST} of the diameter, {diameter_m:.6g}")
    mass_flow = positive("density_kg_m3", density_kg_m3) * speed_m_s * diameter_m
    return float(darcy_factor(Re=mass_flow / positive("viscosity_pa_s", viscosity_pa_s), eD=relative))


def friction_per_length(
    airflow_m3_s: float,
    diameter_m: float,
    roughness_m: float,
    density_kg_m3: float,
    viscosity_pa_s: float,
    correction_ratio: float = 1.0,
) -> float:
    """Pressure that a length of straight duct takes. [Pa/m]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], 0 or more
        diameter_m: float — inside or equivalent diameter. [m], over 0
        roughness_m: float — absolute roughness of the wall. [m], 0 up to a twentieth of the diameter
        density_kg_m3: float — density of the air. [kg/m3], over 0
        viscosity_pa_s: float — dynamic viscosity of the air. [Pa s], over 0
        correction_ratio: float — factor for flexible duct that is not stretched. [ratio], 1 or more
    Returns
        float — pressure per length. [Pa/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        f / D × density × velocity² / 2 × correction. Steady, fully developed flow; leaks and the heat in the
        air are left out.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 17.
        [2] Field duct sizing chart, 2005, round metal at 0.06 in of water in 100 ft.
    Examples
        [2]: 325 cfm in a 10 in pipe.

        >>> cfm, inch, inch_water_100ft = 0.3048**3 / 60, 0.0254, 249.089 / 30.48
        >>> round(friction_per_length(325 * cfm, 10 * inch, 9e-5, 1.2, 1.82e-5) / inch_water_100ft, 2)
        0.06
    """
    if not math.isfinite(correction_ratio) or correction_ratio < 1:
        raise OutOfRange("correction_ratio", correction_ratio, "a finite number, 1 or more")
    if not_negative("airflow_m3_s", airflow_m3_s) == 0:
        return 0.0
    factor = friction_factor(airflow_m3_s, diameter_m, roughness_m, density_kg_m3, viscosity_pa_s)
    pressure_pa = velocity_pressure(velocity(airflow_m3_s, round_area(diameter_m)), density_kg_m3)
    return factor / diameter_m * pressure_pa * correction_ratio


def flex_compression_factor(
    diameter_m: float, compression_ratio: float, growth_ratio: float, decay_per_m: float
) -> float:
    """Friction of compressed flexible duct over that of the same duct stretched. [ratio]

    Parameters
        diameter_m: float — inside diameter. [m], over 0
        compression_ratio: float — share by which the duct is shorter than stretched. [ratio], 0 up to under 1
        growth_ratio: float — coefficient of the compression. [ratio], 0 or more
        decay_per_m: float — coefficient of the diameter. [per m], 0 or more
    Returns
        float — factor, 1 if stretched. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1 + growth × compression × e^(−decay × diameter); growth 58 and decay 4.96 per metre were fitted to
        ducts of 6, 8 and 10 in compressed up to 30 per cent. Sag and bends come on top.
    References
        [1] Abushakra, Walker and Sherman, Compression Effects on Pressure Loss in Flexible HVAC Ducts, 2004.
        [2] ASHRAE Handbook Fundamentals, 2009, chapter 21, equation for the correction; from memory.
    Examples
        [1] tells of factors close to ten; 6 in compressed by 30 per cent.

        >>> round(flex_compression_factor(6 * 0.0254, 0.30, 58.0, 4.96), 1)
        9.2
    """
    squeezed = not_negative("compression_ratio", compression_ratio)
    if squeezed >= 1:
        raise OutOfRange("compression_ratio", compression_ratio, "from 0, under 1")
    fade = math.exp(-not_negative("decay_per_m", decay_per_m) * positive("diameter_m", diameter_m))
    return 1 + not_negative("growth_ratio", growth_ratio) * squeezed * fade


def diameter_for_friction(
    airflow_m3_s: float,
    friction_pa_m: float,
    roughness_m: float,
    density_kg_m3: float,
    viscosity_pa_s: float,
    correction_ratio: float = 1.0,
) -> float:
    """Smallest round duct that carries an airflow with no more friction than wanted. [m]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], over 0
        friction_pa_m: float — pressure per length to keep to. [Pa/m], over 0
        roughness_m: float — absolute roughness of the wall. [m], 0 or more
        density_kg_m3: float — density of the air. [kg/m3], over 0
        viscosity_pa_s: float — dynamic viscosity of the air. [Pa s], over 0
        correction_ratio: float — factor for flexible duct that is not stretched. [ratio], 1 or more
    Returns
        float — diameter, not rounded to what is sold. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Halves an interval of `friction_per_length`. Never under 1 mm nor under 20 times the roughness.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 17; equal friction method.
        [2] Field duct sizing chart, 2005, round metal at 0.06 in of water in 100 ft.
    Examples
        [2]: 325 cfm need a 10 in pipe.

        >>> cfm, inch, inch_water_100ft = 0.3048**3 / 60, 0.0254, 249.089 / 30.48
        >>> round(diameter_for_friction(325 * cfm, 0.06 * inch_water_100ft, 9e-5, 1.2, 1.82e-5) / inch)
        10
    """
    positive("airflow_m3_s", airflow_m3_s)
    rate_pa_m = positive("friction_pa_m", friction_pa_m)

    def enough(diameter_m: float) -> bool:
        friction = friction_per_length(
            airflow_m3_s, diameter_m, roughness_m, density_kg_m3, viscosity_pa_s, correction_ratio
        )
        return friction <= rate_pa_m

    low_m = max(_SMALLEST_DIAMETER_M, not_negative("roughness_m", roughness_m) / _ROUGHEST)
    return turning_point("diameter", enough, low_m)[1]


def airflow_for_friction(
    diameter_m: float,
    friction_pa_m: float,
    roughness_m: float,
    density_kg_m3: float,
    viscosity_pa_s: float,
    correction_ratio: float = 1.0,
) -> float:
    """Most airflow that a round duct carries with no more friction than wanted. [m3/s]

    Parameters
        diameter_m: float — inside or equivalent diameter. [m], over 0
        friction_pa_m: float — pressure per length to keep to. [Pa/m], over 0
        roughness_m: float — absolute roughness of the wall. [m], 0 up to a twentieth of the diameter
        density_kg_m3: float — density of the air. [kg/m3], over 0
        viscosity_pa_s: float — dynamic viscosity of the air. [Pa s], over 0
        correction_ratio: float — factor for flexible duct that is not stretched. [ratio], 1 or more
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        What a standing duct can carry. Halves an interval of `friction_per_length`.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 17; equal friction method.
        [2] Field duct sizing chart, 2005, round metal at 0.06 in of water in 100 ft.
    Examples
        [2]: about 325 cfm in a 10 in pipe.

        >>> cfm, inch, inch_water_100ft = 0.3048**3 / 60, 0.0254, 249.089 / 30.48
        >>> round(airflow_for_friction(10 * inch, 0.06 * inch_water_100ft, 9e-5, 1.2, 1.82e-5) / cfm, -1)
        330.0
    """
    rate_pa_m = positive("friction_pa_m", friction_pa_m)

    def too_much(airflow_m3_s: float) -> bool:
        friction = friction_per_length(
            airflow_m3_s, diameter_m, roughness_m, density_kg_m3, viscosity_pa_s, correction_ratio
        )
        return friction > rate_pa_m

    return turning_point("airflow", too_much, _SMALLEST_AIRFLOW_M3_S)[0]


def velocity_pressure(velocity_m_s: float, density_kg_m3: float) -> float:
    """Pressure of moving air. [Pa]

    Parameters
        velocity_m_s: float — velocity. [m/s], 0 or more
        density_kg_m3: float — density of the air. [kg/m3], over 0
    Returns
        float — density × velocity² / 2. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 8 (0.602 V² for standard air).
    Examples
        [1]: 10 m/s of standard air.

        >>> round(velocity_pressure(10.0, 1.204), 1)
        60.2
    """
    return positive("density_kg_m3", density_kg_m3) * not_negative("velocity_m_s", velocity_m_s) ** 2 / 2


def fitting_loss(loss_coefficient_ratio: float, velocity_m_s: float, density_kg_m3: float) -> float:
    """Pressure that a fitting takes, by its loss coefficient. [Pa]

    Parameters
        loss_coefficient_ratio: float — loss over velocity pressure. [ratio], 0 or more
        velocity_m_s: float — velocity in the section that the coefficient is told for. [m/s], 0 or more
        density_kg_m3: float — density of the air. [kg/m3], over 0
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equation 29.
    Examples
        A coefficient of 0.22 at 10 m/s of standard air.

        >>> round(fitting_loss(0.22, 10.0, 1.204), 2)
        13.24
    """
    coefficient = not_negative("loss_coefficient_ratio", loss_coefficient_ratio)
    return coefficient * velocity_pressure(velocity_m_s, density_kg_m3)


def fitting_equivalent_length(loss_coefficient_ratio: float, diameter_m: float, friction_factor_ratio: float) -> float:
    """Straight duct that takes as much pressure as a fitting. [m]

    Parameters
        loss_coefficient_ratio: float — loss over velocity pressure. [ratio], 0 or more
        diameter_m: float — diameter of the straight duct. [m], over 0
        friction_factor_ratio: float — its friction factor, see `friction_factor`. [ratio], over 0
    Returns
        float — equivalent length. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        C D / f: it grows as the duct gets smoother, so that a table of lengths holds for one friction rate.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 21, equations 17 and 29 set equal.
    Examples
        A coefficient of 1 in a 6 in duct with a factor of 0.02 is 50 diameters, 25 ft.

        >>> fitting_equivalent_length(1.0, 0.5, 0.02)
        25.0
    """
    coefficient = not_negative("loss_coefficient_ratio", loss_coefficient_ratio)
    return coefficient * positive("diameter_m", diameter_m) / positive("friction_factor_ratio", friction_factor_ratio)


def pressure_loss(friction_pa_m: float, effective_length_m: float) -> float:
    """Pressure that a run takes. [Pa]

    Parameters
        friction_pa_m: float — pressure per length. [Pa/m], 0 or more
        effective_length_m: float — straight length and equivalent lengths of the fittings. [m], 0 or more
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Ducting design lecture, equal friction example (0.145 in of water in 100 ft over 229 ft).
    Examples
        [1]: 0.332 in of water.

        >>> round(pressure_loss(0.145 / 100, 229.0), 3)
        0.332
    """
    return not_negative("friction_pa_m", friction_pa_m) * not_negative("effective_length_m", effective_length_m)


def _not_under_minor(major_m: float, minor_m: float) -> float:
    if positive("major_m", major_m) < positive("minor_m", minor_m):
        raise OutOfRange("major_m", major_m, f"at least minor_m, {minor_m:.12g}")
    return major_m
