"""Humid air and vapour in a construction.

air         saturation_pressure, vapour_pressure, dew_point
layers      vapour_resistance_of_permeance, vapour_resistance_of_air_layer, layer_permeance
section     vapour_pressures, interface_humidities, condensing_interfaces
insulation  outboard_share, outboard_to_inboard_ratio

An indication, not a proof: steady diffusion alone. Air that leaks through a construction carries ten to a
hundred times more water than diffusion does, and rain, sun, storage in wood and capillary flow are left out.
The condensation over a year is in `monthly`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import accumulate

from checker.calc._checks import between, not_negative, positive
from checker.calc.air import _psychrometrics
from checker.calc.thermal import _sequences as lists
from checker.calc.thermal.section import section_temperatures

AIR_PERMEABILITY_KG_S_M_PA = 2e-10  # of still air, ISO 13788, 2012, 6.2

_NOISE = 1e-9


def saturation_pressure(temperature_c: float) -> float:
    """Vapour pressure of saturated air. [Pa]

    Parameters
        temperature_c: float — temperature of the air. [C], -100 to 100
    Returns
        float — pressure, over ice below freezing. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Formulas of Hyland and Wexler, as the library of psychrometrics has them.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 1, equations (5) and (6), table 3.
    Examples
        [1], table 3: 77 degF (25 degC) 0.45973 psia, which is 3170 Pa.

        >>> round(saturation_pressure(25.0))
        3169
    """
    return _psychrometrics.saturation_pressure(lists.temperature("temperature_c", temperature_c))


def vapour_pressure(temperature_c: float, relative_humidity_ratio: float) -> float:
    """Vapour pressure of air at a relative humidity. [Pa]

    Parameters
        temperature_c: float — temperature of the air. [C], -100 to 100
        relative_humidity_ratio: float — relative humidity. [ratio], 0 to 1
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 1, equation (22).
    Examples
        Half of the saturation pressure at 20 degC.

        >>> round(vapour_pressure(20.0, 0.5))
        1169
    """
    share = between("relative_humidity_ratio", relative_humidity_ratio, 0.0, 1.0)
    return share * saturation_pressure(temperature_c)


def dew_point(temperature_c: float, relative_humidity_ratio: float) -> float:
    """Temperature at which air begins to condense. [C]

    Parameters
        temperature_c: float — temperature of the air. [C], -60 to 100
        relative_humidity_ratio: float — relative humidity. [ratio], 0.01 to 1
    Returns
        float — dew point, frost point below freezing. [C]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 1, equation (36): the inverse of equation (5) or (6).
        [2] Journal of Light Construction, Where Does the Dew Drop: 70 degF and 50 % give about 50 degF.
    Examples
        [2]: 21.1 degC and 50 % give 10.3 degC (50.5 degF).

        >>> round(dew_point(21.1, 0.5), 1)
        10.3
    """
    between("temperature_c", temperature_c, -60.0, 100.0)
    share = between("relative_humidity_ratio", relative_humidity_ratio, 0.01, 1.0)
    return _psychrometrics.dew_point(share * _psychrometrics.saturation_pressure(temperature_c))


def vapour_resistance_of_permeance(permeance_kg_s_m2_pa: float) -> float:
    """Vapour resistance of a layer of known permeance. [m2 s Pa/kg]

    Parameters
        permeance_kg_s_m2_pa: float — permeance. [kg/(s m2 Pa)], over 0; 1 perm is 57.2e-12
    Returns
        float — resistance. [m2 s Pa/kg]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 25, water vapor transport.
    Examples
        60 ng/(s m2 Pa), the limit of the Canadian code for a vapour barrier.

        >>> round(vapour_resistance_of_permeance(60e-12) / 1e9, 3)
        16.667
    """
    return 1 / positive("permeance_kg_s_m2_pa", permeance_kg_s_m2_pa)


def vapour_resistance_of_air_layer(equivalent_thickness_m: float) -> float:
    """Vapour resistance of a layer given as a thickness of still air. [m2 s Pa/kg]

    Parameters
        equivalent_thickness_m: float — thickness of air that resists as much (sd). [m], 0 or more
    Returns
        float — resistance. [m2 s Pa/kg]
    Raises
        OutOfRange — a value outside its range.
    Notes
        thickness / 2e-10 kg/(s m Pa); for a material, thickness times its resistance factor.
    References
        [1] ISO 13788, 2012, 6.2.
    Examples
        >>> round(vapour_resistance_of_air_layer(1.0) / 1e9, 6)
        5.0
    """
    return not_negative("equivalent_thickness_m", equivalent_thickness_m) / AIR_PERMEABILITY_KG_S_M_PA


def layer_permeance(permeability_kg_s_m_pa: float, thickness_m: float) -> float:
    """Permeance of an even layer. [kg/(s m2 Pa)]

    Parameters
        permeability_kg_s_m_pa: float — permeability of the material. [kg/(s m Pa)], over 0
        thickness_m: float — thickness. [m], over 0
    Returns
        float — permeance. [kg/(s m2 Pa)]
    Raises
        OutOfRange — a value outside its range.
    Notes
        permeability / thickness; membranes, paints and papers have a permeance as a whole.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 25, water vapor transport.
    Examples
        1 perm-inch over two inches is half a perm.

        >>> layer_permeance(57.2e-12 * 0.0254, 2 * 0.0254) / 57.2e-12
        0.5
    """
    return positive("permeability_kg_s_m_pa", permeability_kg_s_m_pa) / positive("thickness_m", thickness_m)


def vapour_pressures(
    vapour_resistances_m2_s_pa_kg: Sequence[float], inside_pressure_pa: float, outside_pressure_pa: float
) -> tuple[float, ...]:
    """Vapour pressures through a construction as if nothing condensed. [Pa]

    Parameters
        vapour_resistances_m2_s_pa_kg: Sequence[float] — layers from inside to outside. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_pressure_pa: float — vapour pressure inside. [Pa], 0 or more
        outside_pressure_pa: float — vapour pressure outside. [Pa], 0 or more
    Returns
        tuple[float, ...] — one more than layers: inside air, each plane, outside air. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The fall over a layer is its share of the resistance, as with temperatures.
    References
        [1] ISO 13788, 2012, 6.4.2.
        [2] Masonry magazine, August 1988, page 18.
    Examples
        >>> vapour_pressures([3.0, 1.0], 1000.0, 200.0)
        (1000.0, 400.0, 200.0)
    """
    layers = lists.all_not_negative("vapour_resistances_m2_s_pa_kg", vapour_resistances_m2_s_pa_kg)
    total = positive("sum of vapour_resistances_m2_s_pa_kg", math.fsum(layers))
    inside = not_negative("inside_pressure_pa", inside_pressure_pa)
    outside = not_negative("outside_pressure_pa", outside_pressure_pa)
    planes = tuple(inside - (inside - outside) * min(1.0, so_far / total) for so_far in accumulate(layers))
    return (inside, *planes[:-1], outside)


def interface_humidities(
    resistances_m2k_w: Sequence[float],
    vapour_resistances_m2_s_pa_kg: Sequence[float],
    inside_temperature_c: float,
    inside_humidity_ratio: float,
    outside_temperature_c: float,
    outside_humidity_ratio: float,
) -> tuple[float, ...]:
    """Vapour pressure over saturation pressure at each plane between layers. [ratio]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        vapour_resistances_m2_s_pa_kg: Sequence[float] — the same layers; 0 for films. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        inside_humidity_ratio: float — relative humidity inside. [ratio], 0 to 1
        outside_temperature_c: float — outside air. [C], -100 to 100
        outside_humidity_ratio: float — relative humidity outside. [ratio], 0 to 1
    Returns
        tuple[float, ...] — one fewer than layers, the plane behind the first layer first; over 1 where
            vapour would condense. [ratio]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        Steady state at one condition; see the head of this module for what is left out.
    References
        [1] ISO 13788, 2012, 6.4.2.
    Examples
        Equal halves of heat and vapour resistance between 20 degC at 50 % and 0 degC at 80 %.

        >>> [round(humidity, 3) for humidity in interface_humidities([1.0, 1.0], [1.0, 1.0], 20.0, 0.5, 0.0, 0.8)]
        [0.675]
    """
    lists.same_length(
        "vapour_resistances_m2_s_pa_kg", vapour_resistances_m2_s_pa_kg, "resistances_m2k_w", resistances_m2k_w
    )
    temperatures = section_temperatures(resistances_m2k_w, inside_temperature_c, outside_temperature_c)
    pressures = vapour_pressures(
        vapour_resistances_m2_s_pa_kg,
        vapour_pressure(inside_temperature_c, inside_humidity_ratio),
        vapour_pressure(outside_temperature_c, outside_humidity_ratio),
    )
    planes = zip(pressures[1:-1], temperatures[1:-1], strict=True)
    return tuple(pressure / saturation_pressure(temperature) for pressure, temperature in planes)


def condensing_interfaces(
    resistances_m2k_w: Sequence[float],
    vapour_resistances_m2_s_pa_kg: Sequence[float],
    inside_temperature_c: float,
    inside_humidity_ratio: float,
    outside_temperature_c: float,
    outside_humidity_ratio: float,
) -> tuple[int, ...]:
    """Planes at which steady diffusion would condense at one condition. [count]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        vapour_resistances_m2_s_pa_kg: Sequence[float] — the same layers; 0 for films. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        inside_humidity_ratio: float — relative humidity inside. [ratio], 0 to 1
        outside_temperature_c: float — outside air. [C], -100 to 100
        outside_humidity_ratio: float — relative humidity outside. [ratio], 0 to 1
    Returns
        tuple[int, ...] — for each such plane the number of layers inboard of it; empty if there is none.
            [count]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        Planes where the straight run of vapour pressure is over saturation. Water then collects at fewer
        of them than are listed: see `monthly.condensation_rates`.
    References
        [1] ISO 13788, 2012, 6.4.2 and figure 4.
    Examples
        A vapour-tight layer outboard of the insulation.

        >>> condensing_interfaces([0.13, 3.5, 0.1, 0.04], [0.0, 1.0, 100.0, 0.0], 20.0, 0.5, -10.0, 0.8)
        (2,)
    """
    humidities = interface_humidities(
        resistances_m2k_w,
        vapour_resistances_m2_s_pa_kg,
        inside_temperature_c,
        inside_humidity_ratio,
        outside_temperature_c,
        outside_humidity_ratio,
    )
    return tuple(place for place, humidity in enumerate(humidities, start=1) if humidity > 1 + _NOISE)


def outboard_share(outboard_resistance_m2k_w: float, inboard_resistance_m2k_w: float) -> float:
    """Share of all insulation that lies outboard of a plane. [ratio]

    Parameters
        outboard_resistance_m2k_w: float — insulation outboard, rigid foam over a deck for instance. [m2K/W],
            0 or more
        inboard_resistance_m2k_w: float — insulation inboard. [m2K/W], 0 or more; one of the two over 0
    Returns
        float — outboard / (outboard + inboard). [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] PNNL Building America Solution Center, unvented flat roof: R-5 rigid with R-45 in the cavity, 10 %.
    Examples
        [1]

        >>> outboard_share(5.0, 45.0)
        0.1
    """
    outboard = not_negative("outboard_resistance_m2k_w", outboard_resistance_m2k_w)
    inboard = not_negative("inboard_resistance_m2k_w", inboard_resistance_m2k_w)
    return outboard / positive("sum of both resistances", outboard + inboard)


def outboard_to_inboard_ratio(outboard_resistance_m2k_w: float, inboard_resistance_m2k_w: float) -> float:
    """Resistance outboard of a plane over that inboard of it. [ratio]

    Parameters
        outboard_resistance_m2k_w: float — everything outboard of the inner face of a tight material.
            [m2K/W], 0 or more
        inboard_resistance_m2k_w: float — everything inboard of that face. [m2K/W], over 0
    Returns
        float — outboard / inboard. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The Canadian code compares this ratio, not the share of `outboard_share`: 0.2 here is a share of 1/6.
    References
        [1] National Building Code of Canada, 2020, 9.25.5.2.
    Examples
        >>> round(outboard_to_inboard_ratio(0.88, 2.2), 6)
        0.4
    """
    outboard = not_negative("outboard_resistance_m2k_w", outboard_resistance_m2k_w)
    return outboard / positive("inboard_resistance_m2k_w", inboard_resistance_m2k_w)
