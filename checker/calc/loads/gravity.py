"""Loads that gravity makes: of a layer, of what is full and in use, of what acts together.

layer_load, filled_weight, service_load, inner_support_load
"""

from __future__ import annotations

from checker.calc._checks import between, not_negative, whole

GRAVITY_M_S2 = 9.80665
"""Standard acceleration of free fall."""
WATER_KG_M3 = 1000.0
"""Density of water, as loads are reckoned."""


def layer_load(thickness_m: float, density_kg_m3: float) -> float:
    """Load of a layer on its own area. [Pa]

    Parameters
        thickness_m: float — thickness. [m], 0 or more
        density_kg_m3: float — density. [kg/m3], 0 or more
    Returns
        float — weight over area. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        Definition of density; standard acceleration 9.80665 m/s2, ISO 80000-3.
    Examples
        An inch of oak at 45 lb/ft3: 3.75 lb/ft2, which is 180 Pa.

        >>> round(layer_load(0.0254, 45 * 0.45359237 / 0.3048**3), 1)
        179.6
    """
    return not_negative("thickness_m", thickness_m) * not_negative("density_kg_m3", density_kg_m3) * GRAVITY_M_S2


def filled_weight(empty_kg: float, water_m3: float, people: int, person_kg: float) -> float:
    """Weight of a tub or tank, full and with people in it. [N]

    Parameters
        empty_kg: float — mass of the thing. [kg], 0 or more
        water_m3: float — water that it holds. [m3], 0 or more
        people: int — people in it at once. [count], 0 or more
        person_kg: float — mass of one. [kg], 0 or more
    Returns
        float — weight. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Nothing is taken off for the water that people displace.
    References
        Definition of weight; density of water 1000 kg/m3.
    Examples
        A cast-iron tub of 300 lb with 45 gal and a person of 175 lb: 850 lb.

        >>> pound, gallon = 0.45359237, 0.003785411784
        >>> round(filled_weight(300 * pound, 45 * gallon, 1, 175 * pound) / (pound * 9.80665))
        851
    """
    people_kg = whole("people", people, 0) * not_negative("person_kg", person_kg)
    water_kg = not_negative("water_m3", water_m3) * WATER_KG_M3
    return (not_negative("empty_kg", empty_kg) + water_kg + people_kg) * GRAVITY_M_S2


def service_load(dead_n: float, live_n: float, roof_n: float, companion_ratio: float) -> float:
    """Greatest load that acts together, unfactored. [N]

    Parameters
        dead_n: float — dead load. [N], or N/m, or Pa, as the others; 0 or more
        live_n: float — live load of floors. [N], 0 or more
        roof_n: float — snow or roof live load, the greater. [N], 0 or more
        companion_ratio: float — part of both that counts where both act. [ratio], 0 to 1
    Returns
        float — the greatest of dead and live, dead and roof, dead and that part of both. [N]
    Raises
        OutOfRange — a value outside its range.
    References
        ASCE/SEI 7-16, 2.4.1, combinations 2 to 4, with 0.75 of both; from memory.
    Examples
        >>> service_load(100.0, 400.0, 300.0, 0.75)
        625.0
        >>> service_load(100.0, 400.0, 0.0, 0.75)
        500.0
    """
    dead_n, live_n, roof_n = (
        not_negative(name, value) for name, value in (("dead_n", dead_n), ("live_n", live_n), ("roof_n", roof_n))
    )
    both_n = between("companion_ratio", companion_ratio, 0.0, 1.0) * (live_n + roof_n)
    return dead_n + max(live_n, roof_n, both_n)


def inner_support_load(end_n: float) -> float:
    """Load that a beam over two or more equal spans brings to an inner support. [N]

    Parameters
        end_n: float — load at the end of one such span alone. [N], 0 or more
    Returns
        float — 2-1/2 times that. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Two equal spans under an even load: 10/8 of the load of a span; more spans bring less, cut beams twice the end.
    References
        AWC Design Aid 6, beam formulas, continuous beam, two equal spans, uniformly loaded; from memory.
    Examples
        >>> inner_support_load(1000.0)
        2500.0
    """
    return 2.5 * not_negative("end_n", end_n)
