"""Air leakage and ventilation: rates and the heat they take.

rates      lbl_factor, natural_air_changes, natural_air_changes_by_twenty
airflow    airflow_of_air_changes, air_changes_of_airflow
heat       air_heat_loss, ventilation_heat_loss

The density of air, at an altitude too, is in `air.air_properties`.
"""

from __future__ import annotations

from checker.calc._checks import between, not_negative, positive
from checker.calc.thermal import _sequences as lists

HEAT_CAPACITY_J_KGK = 1006.0  # of dry air at room temperature, ASHRAE Handbook Fundamentals, 2017, chapter 1

_HOUR_S = 3600.0


def lbl_factor(climate_ratio: float, height_ratio: float, shielding_ratio: float, leakiness_ratio: float) -> float:
    """The factor N between air changes at 50 Pa and the yearly mean under natural pressures. [ratio]

    Parameters
        climate_ratio: float — climate factor from the map, about 14 to 25. [ratio], over 0
        height_ratio: float — 1 for one storey down to 0.7 for three. [ratio], over 0
        shielding_ratio: float — 1.2 well shielded, 1 normal, 0.9 exposed. [ratio], over 0
        leakiness_ratio: float — 1.4 for small cracks, 1 normal, 0.7 for large holes. [ratio], over 0
    Returns
        float — N, the product. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Sherman, Estimation of Infiltration from Leakage and Climate Indicators, Energy and Buildings 10,
            1986, pages 81-86.
    Examples
        Climate 18.5, two storeys, exposed: 13.3 in the table made from it.

        >>> round(lbl_factor(18.5, 0.8, 0.9, 1.0), 1)
        13.3
    """
    climate = positive("climate_ratio", climate_ratio) * positive("height_ratio", height_ratio)
    return climate * positive("shielding_ratio", shielding_ratio) * positive("leakiness_ratio", leakiness_ratio)


def natural_air_changes(air_changes_50_per_h: float, lbl_factor_ratio: float) -> float:
    """Mean air changes under natural pressures from those at 50 Pa. [per h]

    Parameters
        air_changes_50_per_h: float — air changes at 50 Pa, measured or a target. [per h], 0 or more
        lbl_factor_ratio: float — N, see `lbl_factor`. [ratio], over 0
    Returns
        float — air changes. [per h]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A mean over the year for a whole house; on a design day it is more, in a single room anything.
    References
        [1] Sherman, Estimation of Infiltration from Leakage and Climate Indicators, Energy and Buildings 10,
            1986, pages 81-86.
    Examples
        >>> natural_air_changes(7.0, 17.5)
        0.4
    """
    return not_negative("air_changes_50_per_h", air_changes_50_per_h) / positive("lbl_factor_ratio", lbl_factor_ratio)


def natural_air_changes_by_twenty(air_changes_50_per_h: float) -> float:
    """Mean air changes under natural pressures by the rule of the twentieth. [per h]

    Parameters
        air_changes_50_per_h: float — air changes at 50 Pa. [per h], 0 or more
    Returns
        float — air changes. [per h]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A twentieth, for any climate and height: common practice, to be called an estimate.
    References
        [1] Sherman, 1986 (see `natural_air_changes`), on the rule he attributes to Kronvall and Persily.
    Examples
        >>> natural_air_changes_by_twenty(15.0)
        0.75
    """
    return natural_air_changes(air_changes_50_per_h, 20.0)


def airflow_of_air_changes(air_changes_per_h: float, volume_m3: float) -> float:
    """Airflow of an air-change rate. [m3/s]

    Parameters
        air_changes_per_h: float — air changes. [per h], 0 or more
        volume_m3: float — volume of the room or house. [m3], over 0
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 16, air change rate.
    Examples
        >>> airflow_of_air_changes(0.5, 360.0)
        0.05
    """
    return not_negative("air_changes_per_h", air_changes_per_h) * positive("volume_m3", volume_m3) / _HOUR_S


def air_changes_of_airflow(airflow_m3_s: float, volume_m3: float) -> float:
    """Air-change rate of an airflow. [per h]

    Parameters
        airflow_m3_s: float — airflow, that of a fan test for instance. [m3/s], 0 or more
        volume_m3: float — volume of the room or house. [m3], over 0
    Returns
        float — air changes. [per h]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 16, air change rate.
    Examples
        1600 cfm in a house of 12,000 ft3.

        >>> round(air_changes_of_airflow(1600 * 0.3048**3 / 60, 12000 * 0.3048**3), 6)
        8.0
    """
    return not_negative("airflow_m3_s", airflow_m3_s) * _HOUR_S / positive("volume_m3", volume_m3)


def air_heat_loss(
    airflow_m3_s: float, air_density_kg_m3: float, inside_temperature_c: float, outside_temperature_c: float
) -> float:
    """Heat to warm outdoor air that leaks in. [W]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], 0 or more
        air_density_kg_m3: float — density, see `air.air_properties.air_density`. [kg/m3], over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
    Returns
        float — sensible loss, negative for a gain. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        airflow × density × 1006 J/kgK × difference; the 1.08 (or 0.018 an air change) of the trade at
        0.075 lb/ft3. Take the density at the temperature and the place where the airflow is measured.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 16, sensible load of air exchange.
        [2] NORA Advanced Hydronics, pages 23-24: 1350 ft3, one air change, 70 degF: 1701 Btu/h.
    Examples
        [2]

        >>> flow = 1350 * 0.3048**3 / 3600
        >>> abs(air_heat_loss(flow, 1.2014, 70 / 1.8, 0.0) / 0.29307107 - 1701) < 10
        True
    """
    return ventilation_heat_loss(airflow_m3_s, air_density_kg_m3, inside_temperature_c, outside_temperature_c, 0.0)


def ventilation_heat_loss(
    airflow_m3_s: float,
    air_density_kg_m3: float,
    inside_temperature_c: float,
    outside_temperature_c: float,
    recovery_efficiency_ratio: float,
) -> float:
    """Heat to warm ventilation air after recovery. [W]

    Parameters
        airflow_m3_s: float — outdoor airflow, balanced. [m3/s], 0 or more
        air_density_kg_m3: float — density, see `air.air_properties.air_density`. [kg/m3], over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
        recovery_efficiency_ratio: float — sensible recovery at this airflow, 0 for none. [ratio], 0 to 1
    Returns
        float — sensible loss, negative for a gain. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (1 - efficiency) × airflow × density × 1006 J/kgK × difference. On the coldest days units defrost and
        recover less.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 16, sensible load of air exchange.
        [2] Engineering tables, ventilation heat recovery (engineeringtoolbox.com): 1.08 × cfm × difference
            × efficiency is recovered.
    Examples
        [2]: 40,000 cfm over 15 degF recover 473,040 Btu/h at 73 %; the rest of the heat is lost.

        >>> flow = 40000 * 0.3048**3 / 60
        >>> lost = ventilation_heat_loss(flow, 1.2014, 15 / 1.8, 0.0, 0.73)
        >>> abs(lost / 0.29307107 - 473040 / 0.73 * 0.27) < 1000
        True
    """
    kept = 1 - between("recovery_efficiency_ratio", recovery_efficiency_ratio, 0.0, 1.0)
    mass_kg_s = not_negative("airflow_m3_s", airflow_m3_s) * positive("air_density_kg_m3", air_density_kg_m3)
    inside = lists.temperature("inside_temperature_c", inside_temperature_c)
    outside = lists.temperature("outside_temperature_c", outside_temperature_c)
    return kept * mass_kg_s * HEAT_CAPACITY_J_KGK * (inside - outside)
