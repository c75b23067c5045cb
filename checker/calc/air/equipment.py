"""Heating equipment: output, derating, size against the load, airflow and temperature rise.

output      output_from_input, derated_input
size        size_ratio, stage_size_ratios, output_for_size_ratio
air side    airflow_for_rise, temperature_rise, heat_carried, airflow_range, airflow_fits

Sensible heat only: W = density × specific heat × airflow × temperature difference, with the airflow at the
density that is given. Density 1.2014 kg/m3 (0.075 lb/ft3) and specific heat 1005 J/kgK (0.24 Btu/lb F) make
the 1.08 Btu/h per cfm and degree F of the trade at sea level; it shrinks with the density on a mountain.
"""

from __future__ import annotations

from collections.abc import Sequence

from checker.calc._checks import all_positive, between, finite, not_negative, positive, reaches
from checker.calc.errors import OutOfRange


def output_from_input(heat_input_w: float, efficiency_ratio: float) -> float:
    """Heat that fuel-burning equipment gives to the air or water. [W]

    Parameters
        heat_input_w: float — heat of the fuel, as on the plate. [W], 0 or more
        efficiency_ratio: float — steady-state efficiency. [ratio], over 0 up to 1
    Returns
        float — output. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A seasonal efficiency in place of the steady one errs by a few per cent. An output stated on the plate
        is better than this product.
    References
        [1] Contractor's licensing exam page, furnace airflow question (output = input × efficiency).
    Examples
        [1]: 75,000 Btu/h at 80 % give 60,000.

        >>> round(output_from_input(75000.0, 0.80))
        60000
    """
    efficiency = between("efficiency_ratio", positive("efficiency_ratio", efficiency_ratio), 0.0, 1.0)
    return not_negative("heat_input_w", heat_input_w) * efficiency


def derated_input(
    heat_input_w: float,
    altitude_m: float,
    derating_per_step_ratio: float,
    step_m: float,
    starts_over_m: float,
    counted_from_m: float = 0.0,
) -> float:
    """Input of a gas burner that is set back for altitude. [W]

    Parameters
        heat_input_w: float — input as rated at sea level. [W], 0 or more
        altitude_m: float — above sea level, negative below it. [m], any
        derating_per_step_ratio: float — share taken off for each step. [ratio], 0 to 1
        step_m: float — height of a step. [m], over 0
        starts_over_m: float — altitude up to which nothing is taken off. [m], any
        counted_from_m: float — altitude that the steps are counted from. [m], up to `starts_over_m`
    Returns
        float — input at the altitude. [W]
    Raises
        OutOfRange — a value outside its range, a derating that leaves nothing.
    Notes
        input × (1 − share × (altitude − counted from) / step) over `starts_over_m`, else the whole input. The
        fuel gas codes count from sea level, so that the input drops at once where derating starts; other
        texts count from where it starts. The maker's instructions and the gas's own heating value at the
        altitude come before any rule.
    References
        [1] NFPA 54, 2012, 11.1.2, and International Fuel Gas Code (4 % for each 1000 ft over sea level, over
            2000 ft); from memory.
        [2] Retailer's article on furnaces at altitude, worked examples A and B (counted from 2000 ft).
    Examples
        [2], example A: 80,000 Btu/h at 5000 ft leave 70,400. [1]: 64,000.

        >>> round(derated_input(80000.0, 5000.0, 0.04, 1000.0, 2000.0, 2000.0))
        70400
        >>> round(derated_input(80000.0, 5000.0, 0.04, 1000.0, 2000.0))
        64000
    """
    heat_w = not_negative("heat_input_w", heat_input_w)
    share = between("derating_per_step_ratio", derating_per_step_ratio, 0.0, 1.0)
    positive("step_m", step_m)
    if finite("counted_from_m", counted_from_m) > finite("starts_over_m", starts_over_m):
        raise OutOfRange("counted_from_m", counted_from_m, f"at most starts_over_m, {starts_over_m:.12g}")
    if reaches(starts_over_m, finite("altitude_m", altitude_m)):
        return heat_w
    left = 1 - share * (altitude_m - counted_from_m) / step_m
    if left <= 0:
        raise OutOfRange("altitude_m", altitude_m, "low enough that the derating leaves some of the input")
    return heat_w * left


def size_ratio(output_w: float, heat_loss_w: float) -> float:
    """Output over load: 1 fits, over 1 is oversized, under 1 undersized. [ratio]

    Parameters
        output_w: float — output of the equipment at the site. [W], 0 or more
        heat_loss_w: float — heat loss of what it heats at design. [W], over 0
    Returns
        float — output / load. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Common practice, no source.
    Examples
        60,000 Btu/h for a loss of 40,000 is half again too large.

        >>> size_ratio(60000.0, 40000.0)
        1.5
    """
    return not_negative("output_w", output_w) / positive("heat_loss_w", heat_loss_w)


def stage_size_ratios(stage_outputs_w: Sequence[float], heat_loss_w: float) -> tuple[float, ...]:
    """Output over load at each stage, lowest first. [ratio]

    Parameters
        stage_outputs_w: Sequence[float] — output of each stage, rising. [W], each over 0, one or more
        heat_loss_w: float — heat loss of what it heats at design. [W], over 0
    Returns
        tuple[float, ...] — output / load of each stage. [ratio]
    Raises
        OutOfRange — a value outside its range, stages that do not rise.
    Notes
        The last is the size of the equipment; the first is the part of the design load that the low stage
        carries alone.
    References
        Common practice, no source.
    Examples
        Stages of 39,000 and 60,000 Btu/h for a loss of 50,000.

        >>> stage_size_ratios([39000.0, 60000.0], 50000.0)
        (0.78, 1.2)
    """
    outputs = all_positive("stage_outputs_w", stage_outputs_w)
    if list(outputs) != sorted(set(outputs)):
        raise OutOfRange("stage_outputs_w", list(outputs), "a list that rises from the lowest stage")
    return tuple(size_ratio(output_w, heat_loss_w) for output_w in outputs)


def output_for_size_ratio(heat_loss_w: float, wanted_size_ratio: float) -> float:
    """Output that has a wanted size against the load. [W]

    Parameters
        heat_loss_w: float — heat loss of what it heats at design. [W], over 0
        wanted_size_ratio: float — output over load. [ratio], over 0
    Returns
        float — output. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Undoes `size_ratio`.
    References
        Common practice, no source.
    Examples
        1.4 times a loss of 40,000 Btu/h.

        >>> round(output_for_size_ratio(40000.0, 1.4))
        56000
    """
    return positive("heat_loss_w", heat_loss_w) * positive("wanted_size_ratio", wanted_size_ratio)


def airflow_for_rise(
    output_w: float, temperature_rise_k: float, density_kg_m3: float, specific_heat_j_kgk: float
) -> float:
    """Airflow that an output warms by a temperature rise. [m3/s]

    Parameters
        output_w: float — output, not input. [W], 0 or more
        temperature_rise_k: float — supply less return. [K], over 0
        density_kg_m3: float — density of the air that the flow is told in. [kg/m3], over 0
        specific_heat_j_kgk: float — specific heat of the air. [J/kgK], over 0
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 18, sensible heat gain of an airflow.
        [2] Contractor's licensing exam page, furnace airflow question (factor 1.1).
    Examples
        [2]: 60,000 Btu/h and a rise of 45 F take 1212 cfm.

        >>> round(airflow_for_rise(60000.0, 45.0, 1.1, 1.0))
        1212
    """
    carried_w_k = positive("density_kg_m3", density_kg_m3) * positive("specific_heat_j_kgk", specific_heat_j_kgk)
    return not_negative("output_w", output_w) / (carried_w_k * positive("temperature_rise_k", temperature_rise_k))


def temperature_rise(output_w: float, airflow_m3_s: float, density_kg_m3: float, specific_heat_j_kgk: float) -> float:
    """Temperature rise of an airflow through a heater. [K]

    Parameters
        output_w: float — output, not input. [W], 0 or more
        airflow_m3_s: float — airflow at the density. [m3/s], over 0
        density_kg_m3: float — density of the air that the flow is told in. [kg/m3], over 0
        specific_heat_j_kgk: float — specific heat of the air. [J/kgK], over 0
    Returns
        float — supply less return. [K]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 18, sensible heat gain of an airflow.
    Examples
        1200 W warm 0.1 m3/s of air of 1.2 kg/m3 by 10 K, with 1000 J/kgK.

        >>> round(temperature_rise(1200.0, 0.1, 1.2, 1000.0), 9)
        10.0
    """
    carried_w_k = positive("density_kg_m3", density_kg_m3) * positive("specific_heat_j_kgk", specific_heat_j_kgk)
    return not_negative("output_w", output_w) / (carried_w_k * positive("airflow_m3_s", airflow_m3_s))


def heat_carried(
    airflow_m3_s: float, temperature_difference_k: float, density_kg_m3: float, specific_heat_j_kgk: float
) -> float:
    """Sensible heat that an airflow carries. [W]

    Parameters
        airflow_m3_s: float — airflow at the density. [m3/s], 0 or more
        temperature_difference_k: float — warmer less colder; negative takes heat away. [K], any
        density_kg_m3: float — density of the air that the flow is told in. [kg/m3], over 0
        specific_heat_j_kgk: float — specific heat of the air. [J/kgK], over 0
    Returns
        float — heat, of the sign of the difference. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        What a measured flow and a measured rise say of the true output.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 18, sensible heat gain of an airflow.
    Examples
        0.1 m3/s of air of 1.2 kg/m3, 10 K warmer, with 1000 J/kgK.

        >>> round(heat_carried(0.1, 10.0, 1.2, 1000.0), 9)
        1200.0
    """
    carried_w_k = positive("density_kg_m3", density_kg_m3) * positive("specific_heat_j_kgk", specific_heat_j_kgk)
    return (
        not_negative("airflow_m3_s", airflow_m3_s)
        * carried_w_k
        * finite("temperature_difference_k", temperature_difference_k)
    )


def airflow_range(
    output_w: float,
    least_rise_k: float,
    most_rise_k: float,
    density_kg_m3: float,
    specific_heat_j_kgk: float,
) -> tuple[float, float]:
    """Least and most airflow that keep the temperature rise within a plate's range. [m3/s]

    Parameters
        output_w: float — output, not input. [W], 0 or more
        least_rise_k: float — low end of the rise on the plate. [K], over 0
        most_rise_k: float — high end of the rise on the plate. [K], at least the low end
        density_kg_m3: float — density of the air that the flow is told in. [kg/m3], over 0
        specific_heat_j_kgk: float — specific heat of the air. [J/kgK], over 0
    Returns
        tuple[float, float] — least and most airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range, ends the wrong way round.
    Notes
        The least airflow belongs to the most rise.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 18, sensible heat gain of an airflow.
    Examples
        1200 W between 10 and 20 K of rise, air of 1.2 kg/m3 and 1000 J/kgK.

        >>> [round(flow, 9) for flow in airflow_range(1200.0, 10.0, 20.0, 1.2, 1000.0)]
        [0.05, 0.1]
    """
    if positive("least_rise_k", least_rise_k) > positive("most_rise_k", most_rise_k):
        raise OutOfRange("least_rise_k", least_rise_k, f"at most most_rise_k, {most_rise_k:.12g}")
    return (
        airflow_for_rise(output_w, most_rise_k, density_kg_m3, specific_heat_j_kgk),
        airflow_for_rise(output_w, least_rise_k, density_kg_m3, specific_heat_j_kgk),
    )


def airflow_fits(airflow_m3_s: float, least_airflow_m3_s: float, most_airflow_m3_s: float) -> bool:
    """Whether an airflow lies within a range, both ends included. [yes or no]

    Parameters
        airflow_m3_s: float — airflow in question. [m3/s], 0 or more
        least_airflow_m3_s: float — low end of the range. [m3/s], 0 or more
        most_airflow_m3_s: float — high end of the range. [m3/s], at least the low end
    Returns
        bool — whether it fits, float noise apart. [yes or no]
    Raises
        OutOfRange — a value outside its range, ends the wrong way round.
    References
        Common practice, no source.
    Examples
        An airflow at the low end fits.

        >>> airflow_fits(0.3, 0.3, 0.5)
        True
    """
    not_negative("airflow_m3_s", airflow_m3_s)
    least_m3_s = not_negative("least_airflow_m3_s", least_airflow_m3_s)
    if least_m3_s > not_negative("most_airflow_m3_s", most_airflow_m3_s):
        raise OutOfRange("least_airflow_m3_s", least_m3_s, f"at most most_airflow_m3_s, {most_airflow_m3_s:.12g}")
    return reaches(airflow_m3_s, least_m3_s) and reaches(most_airflow_m3_s, airflow_m3_s)
