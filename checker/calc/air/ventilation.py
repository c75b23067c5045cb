"""Ventilation of a house: rates, balance, tightness, depressurisation, make-up air.

rates       whole_house_rate, intermittent_rate
balance     exhaust_less_supply
tightness   leakage_coefficient, leakage_airflow
pressure    depressurisation, tightness_for_depressurisation, make_up_airflow

Leakage follows Q = C p^n. A test gives one point of it: an airflow at a pressure, mostly 50 Pa; the exponent
comes from a test at several pressures, or is assumed, near 0.65. Wind and the stack effect are left out. Air
changes and airflows are turned into each other in `thermal.infiltration`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import between, not_negative, positive, whole


def whole_house_rate(
    floor_area_m2: float, bedroom_count: int, airflow_per_area_m_s: float, airflow_per_person_m3_s: float
) -> float:
    """Outdoor airflow of a dwelling by floor area and bedrooms. [m3/s]

    Parameters
        floor_area_m2: float — conditioned floor area. [m2], 0 or more
        bedroom_count: int — bedrooms. [count], 0 or more
        airflow_per_area_m_s: float — airflow for each unit of floor area. [m/s], 0 or more
        airflow_per_person_m3_s: float — airflow for each person. [m3/s], 0 or more
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        area × airflow per area + (bedrooms + 1) × airflow per person. Printed tables are this formula at the
        upper end of each step, and so ask for a little more.
    References
        [1] ASHRAE 62.2, 2010 (0.01 and 7.5) and 2016 (0.03 and 7.5; cfm, ft2).
        [2] International Residential Code, 2018, M1505.4.3.
    Examples
        [1], 2016, table: 90 cfm for 2000 ft2 with 3 bedrooms.

        >>> whole_house_rate(2000.0, 3, 0.03, 7.5)
        90.0
    """
    by_area = not_negative("floor_area_m2", floor_area_m2) * not_negative("airflow_per_area_m_s", airflow_per_area_m_s)
    people = whole("bedroom_count", bedroom_count, 0) + 1
    return by_area + people * not_negative("airflow_per_person_m3_s", airflow_per_person_m3_s)


def intermittent_rate(continuous_airflow_m3_s: float, run_share_ratio: float) -> float:
    """Airflow of a fan that runs a share of the time, for the same mean airflow. [m3/s]

    Parameters
        continuous_airflow_m3_s: float — airflow if it ran all the time. [m3/s], 0 or more
        run_share_ratio: float — share of each period that it runs. [ratio], over 0 up to 1
    Returns
        float — airflow while it runs. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        airflow / share; long periods need more, since what gathers between runs is not thinned as well.
    References
        [1] International Residential Code, 2018, table M1505.4.3(2) (factor 4 at 25 %).
    Examples
        [1]: 60 cfm, a quarter of the time.

        >>> intermittent_rate(60.0, 0.25)
        240.0
    """
    share = between("run_share_ratio", positive("run_share_ratio", run_share_ratio), 0.0, 1.0)
    return not_negative("continuous_airflow_m3_s", continuous_airflow_m3_s) / share


def exhaust_less_supply(exhaust_airflows_m3_s: Sequence[float], supply_airflows_m3_s: Sequence[float]) -> float:
    """What fans take out of a house beyond what fans bring in. [m3/s]

    Parameters
        exhaust_airflows_m3_s: Sequence[float] — kitchen, baths, dryer, recovery ventilator and others that run
            together. [m3/s], each 0 or more; may be empty
        supply_airflows_m3_s: Sequence[float] — outdoor air brought in by fans. [m3/s], each 0 or more; may be
            empty
    Returns
        float — net exhaust; under 0 the house is under pressure. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    References
        Common practice, no source.
    Examples
        A hood, a dryer and a balanced ventilator.

        >>> exhaust_less_supply([0.25, 0.0625, 0.03125], [0.03125])
        0.3125
    """
    for name, flows in (
        ("exhaust_airflows_m3_s", exhaust_airflows_m3_s),
        ("supply_airflows_m3_s", supply_airflows_m3_s),
    ):
        for place, flow_m3_s in enumerate(flows, start=1):
            not_negative(f"{name}, number {place},", flow_m3_s)
    return math.fsum([*exhaust_airflows_m3_s, *(-flow_m3_s for flow_m3_s in supply_airflows_m3_s)])


def leakage_coefficient(test_airflow_m3_s: float, test_pressure_pa: float, exponent_ratio: float) -> float:
    """Coefficient of the leakage of a house: its airflow at 1 Pa. [m3/s]

    Parameters
        test_airflow_m3_s: float — airflow of a tightness test. [m3/s], over 0
        test_pressure_pa: float — pressure of the test. [Pa], over 0
        exponent_ratio: float — exponent of the leakage. [ratio], 0.5 to 1
    Returns
        float — C of Q = C p^n with p in Pa. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASTM E779, Determining Air Leakage Rate by Fan Pressurization (power law).
    Examples
        1 m3/s at 100 Pa with square-root flow.

        >>> leakage_coefficient(1.0, 100.0, 0.5)
        0.1
    """
    return leakage_airflow(1.0, positive("test_airflow_m3_s", test_airflow_m3_s), test_pressure_pa, exponent_ratio)


def leakage_airflow(
    pressure_pa: float, test_airflow_m3_s: float, test_pressure_pa: float, exponent_ratio: float
) -> float:
    """Airflow through the leaks of a house at a pressure. [m3/s]

    Parameters
        pressure_pa: float — pressure across the envelope. [Pa], 0 or more
        test_airflow_m3_s: float — airflow of a tightness test. [m3/s], 0 or more
        test_pressure_pa: float — pressure of the test. [Pa], over 0
        exponent_ratio: float — exponent of the leakage. [ratio], 0.5 to 1
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        test airflow × (pressure / test pressure)^n. Far below the test pressure the exponent decides: from
        50 to 5 Pa, 0.6 gives 15 per cent more than 0.66.
    References
        [1] ASTM E779, Determining Air Leakage Rate by Fan Pressurization (power law).
    Examples
        1000 cfm at 50 Pa are 224 at 5 Pa with an exponent of 0.65.

        >>> round(leakage_airflow(5.0, 1000.0, 50.0, 0.65))
        224
    """
    share = not_negative("pressure_pa", pressure_pa) / positive("test_pressure_pa", test_pressure_pa)
    flow_m3_s = not_negative("test_airflow_m3_s", test_airflow_m3_s)
    return float(flow_m3_s * share ** between("exponent_ratio", exponent_ratio, 0.5, 1.0))


def depressurisation(
    net_exhaust_m3_s: float, test_airflow_m3_s: float, test_pressure_pa: float, exponent_ratio: float
) -> float:
    """Pressure by which exhaust pulls a house below the outdoors. [Pa]

    Parameters
        net_exhaust_m3_s: float — exhaust less supply by fans, see `exhaust_less_supply`. [m3/s], 0 or more
        test_airflow_m3_s: float — airflow of a tightness test. [m3/s], over 0
        test_pressure_pa: float — pressure of the test. [Pa], over 0
        exponent_ratio: float — exponent of the leakage. [ratio], 0.5 to 1
    Returns
        float — depth below the outdoors. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        test pressure × (net exhaust / test airflow)^(1/n), with fans that hold their airflow. In a tight house
        the true fans slacken first, and this says too much; it is no substitute for a test on site.
    References
        [1] ASTM E779, Determining Air Leakage Rate by Fan Pressurization (power law), solved for the pressure.
    Examples
        An exhaust as large as the test airflow makes the test pressure.

        >>> depressurisation(0.4, 0.4, 50.0, 0.65)
        50.0
    """
    share = not_negative("net_exhaust_m3_s", net_exhaust_m3_s) / positive("test_airflow_m3_s", test_airflow_m3_s)
    power = 1 / between("exponent_ratio", exponent_ratio, 0.5, 1.0)
    return float(positive("test_pressure_pa", test_pressure_pa) * share**power)


def tightness_for_depressurisation(
    net_exhaust_m3_s: float, limit_pa: float, test_pressure_pa: float, exponent_ratio: float
) -> float:
    """Tightness at which an exhaust just reaches a limit of depressurisation, as a test airflow. [m3/s]

    Parameters
        net_exhaust_m3_s: float — exhaust less supply by fans. [m3/s], 0 or more
        limit_pa: float — most depressurisation allowed. [Pa], over 0
        test_pressure_pa: float — pressure of the test. [Pa], over 0
        exponent_ratio: float — exponent of the leakage. [ratio], 0.5 to 1
    Returns
        float — test airflow; a house that leaks less goes past the limit. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Undoes `depressurisation` for the tightness: the threshold where it has not been measured.
    References
        [1] ASTM E779, Determining Air Leakage Rate by Fan Pressurization (power law), solved for the airflow.
    Examples
        150 cfm at 5 Pa with an exponent of 0.65: 670 cfm at 50 Pa.

        >>> round(tightness_for_depressurisation(150.0, 5.0, 50.0, 0.65))
        670
    """
    exhaust_m3_s = not_negative("net_exhaust_m3_s", net_exhaust_m3_s)
    return exhaust_m3_s / leakage_airflow(positive("limit_pa", limit_pa), 1.0, test_pressure_pa, exponent_ratio)


def make_up_airflow(
    net_exhaust_m3_s: float,
    limit_pa: float,
    test_airflow_m3_s: float,
    test_pressure_pa: float,
    exponent_ratio: float,
) -> float:
    """Air that must be brought in so that an exhaust keeps to a limit of depressurisation. [m3/s]

    Parameters
        net_exhaust_m3_s: float — exhaust less supply by fans, make-up air left out. [m3/s], 0 or more
        limit_pa: float — most depressurisation allowed. [Pa], 0 or more
        test_airflow_m3_s: float — airflow of a tightness test. [m3/s], 0 or more
        test_pressure_pa: float — pressure of the test. [Pa], over 0
        exponent_ratio: float — exponent of the leakage. [ratio], 0.5 to 1
    Returns
        float — make-up airflow, 0 where the leaks suffice. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Net exhaust less the leakage at the limit. A code may ask for the whole exhaust instead.
    References
        [1] ASTM E779, Determining Air Leakage Rate by Fan Pressurization (power law).
    Examples
        400 cfm, at most 5 Pa, 1000 cfm at 50 Pa, exponent 0.65.

        >>> round(make_up_airflow(400.0, 5.0, 1000.0, 50.0, 0.65))
        176
    """
    leaks_m3_s = leakage_airflow(
        not_negative("limit_pa", limit_pa), test_airflow_m3_s, test_pressure_pa, exponent_ratio
    )
    return max(0.0, not_negative("net_exhaust_m3_s", net_exhaust_m3_s) - leaks_m3_s)
