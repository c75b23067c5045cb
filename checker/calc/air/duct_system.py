"""A whole duct system: pressure budget, shares of the air, a tree of runs, filters, returns, transfer openings.

budget      available_pressure, total_effective_length, friction_rate
rooms       room_airflows
tree        run_airflows, path_from_blower, sums_from_blower, critical_path
filters     filter_pressure (the face velocity is `duct.velocity`)
returns     airflows_by_floor, floor_balance
openings    opening_airflow, opening_area, opening_pressure

A tree is plain data: for each run the run it is fed by, None at the blower. Returns are the same tree with the
air going the other way. The order of the runs does not matter.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from checker.calc._checks import finite, not_negative, positive
from checker.calc.errors import OutOfRange


def available_pressure(blower_pressure_pa: float, component_losses_pa: Sequence[float]) -> float:
    """Pressure that a blower has left for the ducts. [Pa]

    Parameters
        blower_pressure_pa: float — external static pressure at the airflow. [Pa], 0 or more
        component_losses_pa: Sequence[float] — coil, filter, grilles, registers, dampers at the airflow, each
            unless the blower's table already has it. [Pa], each 0 or more; may be empty
    Returns
        float — what is left; 0 or under: nothing. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Contractors' association, example of duct sizing.
    Examples
        [1]: 0.50 less 0.10, 0.15, 0.03 and 0.03 leave 0.19 in of water.

        >>> round(available_pressure(0.50, [0.10, 0.15, 0.03, 0.03]), 2)
        0.19
    """
    losses = _all_not_negative("component_losses_pa", component_losses_pa)
    return not_negative("blower_pressure_pa", blower_pressure_pa) - math.fsum(losses)


def total_effective_length(straight_lengths_m: Sequence[float], fitting_lengths_m: Sequence[float]) -> float:
    """Length of the longest supply and return path together, fittings counted as straight duct. [m]

    Parameters
        straight_lengths_m: Sequence[float] — measured lengths of the two paths. [m], each 0 or more
        fitting_lengths_m: Sequence[float] — equivalent lengths of their fittings. [m], each 0 or more
    Returns
        float — total effective length. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Contractors' association, example of duct sizing.
    Examples
        [1]: 65 ft and 190 ft of fittings.

        >>> total_effective_length([65.0], [190.0])
        255.0
    """
    straight = _all_not_negative("straight_lengths_m", straight_lengths_m)
    fittings = _all_not_negative("fitting_lengths_m", fitting_lengths_m)
    return math.fsum([*straight, *fittings])


def friction_rate(available_pressure_pa: float, total_effective_length_m: float) -> float:
    """Friction per length that uses up the available pressure over the longest path. [Pa/m]

    Parameters
        available_pressure_pa: float — see `available_pressure`. [Pa], over 0
        total_effective_length_m: float — see `total_effective_length`. [m], over 0
    Returns
        float — friction rate. [Pa/m]
    Raises
        OutOfRange — a value outside its range; no pressure left for the ducts.
    References
        [1] Study help page, friction rate of a duct system.
    Examples
        [1]: 0.18 in of water over 285 ft is 0.0632 in 100 ft.

        >>> round(friction_rate(0.18, 285.0) * 100, 4)
        0.0632
    """
    pressure_pa = positive("available_pressure_pa", available_pressure_pa)
    return pressure_pa / positive("total_effective_length_m", total_effective_length_m)


def room_airflows(room_heat_losses_w: Sequence[float], airflow_m3_s: float) -> tuple[float, ...]:
    """Airflow of each room by its share of the load. [m3/s]

    Parameters
        room_heat_losses_w: Sequence[float] — load of each room. [W], each 0 or more, one of them over 0
        airflow_m3_s: float — airflow of the blower. [m3/s], 0 or more
    Returns
        tuple[float, ...] — airflow of each room, in the same order; together that of the blower. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        All rooms get air of one temperature; heat lost by ducts on the way is left out.
    References
        [1] Contractors' association, example of duct sizing.
    Examples
        [1]: a room with 3000 of 28,000 Btu/h gets 107 of 1000 cfm.

        >>> round(room_airflows([3000.0, 25000.0], 1000.0)[0])
        107
    """
    losses = _all_not_negative("room_heat_losses_w", room_heat_losses_w)
    whole_w = positive("sum of room_heat_losses_w", math.fsum(losses))
    flow_m3_s = not_negative("airflow_m3_s", airflow_m3_s)
    return tuple(flow_m3_s * (loss_w / whole_w) for loss_w in losses)


def run_airflows(fed_by: Mapping[str, str | None], outlet_airflows_m3_s: Mapping[str, float]) -> dict[str, float]:
    """Airflow in each run of a tree: what leaves it and all it feeds. [m3/s]

    Parameters
        fed_by: Mapping[str, str | None] — for each run the run that feeds it, None at the blower. [names]
        outlet_airflows_m3_s: Mapping[str, float] — airflow that leaves a run to rooms, for the runs that have
            outlets. [m3/s], each 0 or more
    Returns
        dict[str, float] — airflow of each run. [m3/s]
    Raises
        OutOfRange — a loop, a run fed by one that is not there, an outlet on no run, a value outside its range.
    References
        Conservation of volume at one density; common practice, no source.
    Examples
        A trunk with two branches.

        >>> run_airflows({"trunk": None, "a": "trunk", "b": "trunk"}, {"a": 0.03, "b": 0.05})
        {'trunk': 0.08, 'a': 0.03, 'b': 0.05}
    """
    paths = _paths(fed_by)
    gathered: dict[str, list[float]] = {run: [] for run in fed_by}
    for run, flow_m3_s in outlet_airflows_m3_s.items():
        not_negative(f"outlet_airflows_m3_s of {run!r}", flow_m3_s)
        for passed in _path(paths, "run with an outlet", run):
            gathered[passed].append(flow_m3_s)
    return {run: math.fsum(flows) for run, flows in gathered.items()}


def path_from_blower(fed_by: Mapping[str, str | None], run: str) -> tuple[str, ...]:
    """Runs that the air passes from the blower to a run, that run included. [names]

    Parameters
        fed_by: Mapping[str, str | None] — for each run the run that feeds it, None at the blower. [names]
        run: str — the run to reach. [name]
    Returns
        tuple[str, ...] — names, from the blower on. [names]
    Raises
        OutOfRange — a loop, a run fed by one that is not there, an unknown run.
    References
        Common practice, no source.
    Examples
        A branch behind two pieces of trunk.

        >>> path_from_blower({"trunk": None, "end": "trunk", "a": "end"}, "a")
        ('trunk', 'end', 'a')
    """
    return _path(_paths(fed_by), "run", run)


def sums_from_blower(fed_by: Mapping[str, str | None], run_values: Mapping[str, float]) -> dict[str, float]:
    """Sum of a value over the runs from the blower to the end of each run. [any unit]

    Parameters
        fed_by: Mapping[str, str | None] — for each run the run that feeds it, None at the blower. [names]
        run_values: Mapping[str, float] — length or pressure loss of each run, fittings included. [any unit],
            each 0 or more
    Returns
        dict[str, float] — sum for each run. [any unit]
    Raises
        OutOfRange — a loop, a run fed by one that is not there, a run without a value, a value outside its range.
    References
        Common practice, no source.
    Examples
        A trunk of 6 m with branches of 4 m and 9 m.

        >>> sums_from_blower({"trunk": None, "a": "trunk", "b": "trunk"}, {"trunk": 6.0, "a": 4.0, "b": 9.0})
        {'trunk': 6.0, 'a': 10.0, 'b': 15.0}
    """
    paths = _paths(fed_by)
    if set(run_values) != set(fed_by):
        raise OutOfRange("runs with a value", sorted(run_values), f"the runs of the tree, {sorted(fed_by)}")
    for run, value in run_values.items():
        not_negative(f"run_values of {run!r}", value)
    return {run: math.fsum(run_values[passed] for passed in path) for run, path in paths.items()}


def critical_path(fed_by: Mapping[str, str | None], run_values: Mapping[str, float]) -> tuple[str, ...]:
    """Runs of the path with the largest sum of a value: the longest, or the one with most pressure loss. [names]

    Parameters
        fed_by: Mapping[str, str | None] — for each run the run that feeds it, None at the blower. [names]
        run_values: Mapping[str, float] — length or pressure loss of each run, fittings included. [any unit],
            each 0 or more
    Returns
        tuple[str, ...] — names, from the blower on; of equal paths that whose last name comes first in the
            alphabet. [names]
    Raises
        OutOfRange — a loop, a run fed by one that is not there, a run without a value, a value outside its range.
    References
        Common practice, no source.
    Examples
        The far branch decides.

        >>> critical_path({"trunk": None, "a": "trunk", "b": "trunk"}, {"trunk": 6.0, "a": 4.0, "b": 9.0})
        ('trunk', 'b')
    """
    sums = sums_from_blower(fed_by, run_values)
    feeding = set(fed_by.values())
    last = min((run for run in fed_by if run not in feeding), key=lambda run: (-sums[run], run))
    return path_from_blower(fed_by, last)


def filter_pressure(
    rated_pressure_pa: float, rated_velocity_m_s: float, velocity_m_s: float, exponent_ratio: float
) -> float:
    """Pressure that a filter takes at a face velocity, from a rated point. [Pa]

    Parameters
        rated_pressure_pa: float — pressure at the rated velocity, clean or loaded. [Pa], 0 or more
        rated_velocity_m_s: float — face velocity of the rating. [m/s], over 0
        velocity_m_s: float — face velocity in question, airflow over face area. [m/s], 0 or more
        exponent_ratio: float — power of the velocity: 1 through fine media, 2 through openings. [ratio], 1 to 2
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Filter maker's sample calculation (pressure in proportion to the airflow).
    Examples
        [1]: 55 Pa at 3400 m3/h is 29 Pa at 450 of 850 m3/h.

        >>> round(filter_pressure(55.0, 850.0, 450.0, 1.0))
        29
    """
    rated_pa = not_negative("rated_pressure_pa", rated_pressure_pa)
    if not 1 <= finite("exponent_ratio", exponent_ratio) <= 2:
        raise OutOfRange("exponent_ratio", exponent_ratio, "from 1 to 2")
    faster = not_negative("velocity_m_s", velocity_m_s) / positive("rated_velocity_m_s", rated_velocity_m_s)
    return float(rated_pa * faster**exponent_ratio)


def airflows_by_floor(floors: Sequence[str], airflows_m3_s: Sequence[float]) -> dict[str, float]:
    """Sum of the airflows on each floor. [m3/s]

    Parameters
        floors: Sequence[str] — floor of each register or grille. [names]
        airflows_m3_s: Sequence[float] — its airflow, in the same order. [m3/s], each 0 or more
    Returns
        dict[str, float] — sum for each floor, in the order in which they are met. [m3/s]
    Raises
        OutOfRange — lists of unlike length, a value outside its range.
    References
        Common practice, no source.
    Examples
        Two registers up, one down.

        >>> airflows_by_floor(["up", "down", "up"], [0.02, 0.05, 0.03])
        {'up': 0.05, 'down': 0.05}
    """
    if len(floors) != len(airflows_m3_s):
        raise OutOfRange("length of floors", len(floors), f"that of airflows_m3_s, {len(airflows_m3_s)}")
    _all_not_negative("airflows_m3_s", airflows_m3_s)
    grouped: dict[str, list[float]] = {floor: [] for floor in floors}
    for floor, flow_m3_s in zip(floors, airflows_m3_s, strict=True):
        grouped[floor].append(flow_m3_s)
    return {floor: math.fsum(flows) for floor, flows in grouped.items()}


def floor_balance(
    supply_airflows_m3_s: Mapping[str, float], return_airflows_m3_s: Mapping[str, float]
) -> dict[str, float]:
    """Supply less return on each floor: what must find another way back. [m3/s]

    Parameters
        supply_airflows_m3_s: Mapping[str, float] — supply of each floor. [m3/s], each 0 or more
        return_airflows_m3_s: Mapping[str, float] — return of each floor; a floor without one may be left out.
            [m3/s], each 0 or more
    Returns
        dict[str, float] — difference for each floor of either list; under 0: more return than supply. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    References
        Common practice, no source.
    Examples
        A top floor that is supplied and not returned.

        >>> floor_balance({"up": 0.25, "down": 0.5}, {"down": 0.75})
        {'up': 0.25, 'down': -0.25}
    """
    for name, flows in (("supply_airflows_m3_s", supply_airflows_m3_s), ("return_airflows_m3_s", return_airflows_m3_s)):
        for floor, flow_m3_s in flows.items():
            not_negative(f"{name} of {floor!r}", flow_m3_s)
    floors = dict.fromkeys([*supply_airflows_m3_s, *return_airflows_m3_s])
    return {floor: supply_airflows_m3_s.get(floor, 0.0) - return_airflows_m3_s.get(floor, 0.0) for floor in floors}


def opening_airflow(
    area_m2: float, pressure_pa: float, density_kg_m3: float, discharge_coefficient_ratio: float
) -> float:
    """Airflow that a pressure drives through an opening. [m3/s]

    Parameters
        area_m2: float — free area. [m2], 0 or more
        pressure_pa: float — pressure across it. [Pa], 0 or more
        density_kg_m3: float — density of the air. [kg/m3], over 0
        discharge_coefficient_ratio: float — coefficient; near 0.6 at a sharp edge. [ratio], over 0 up to 1
    Returns
        float — airflow. [m3/s]
    Raises
        OutOfRange — a value outside its range.
    Notes
        C A √(2 p / density).
    References
        [1] Building Science Corporation, RR-0005, Transfer Grille Sizing (Q = 1.07 A √p; cfm, in2, Pa).
    Examples
        [1]: 27 in2 pass 50 cfm at 3 Pa.

        >>> inch, cfm = 0.0254, 0.3048**3 / 60
        >>> round(opening_airflow(27 * inch**2, 3.0, 1.2014, 0.6067) / cfm)
        50
    """
    return not_negative("area_m2", area_m2) * _jet(
        not_negative("pressure_pa", pressure_pa), density_kg_m3, discharge_coefficient_ratio
    )


def opening_area(
    airflow_m3_s: float, pressure_pa: float, density_kg_m3: float, discharge_coefficient_ratio: float
) -> float:
    """Free area that passes an airflow at a pressure. [m2]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], 0 or more
        pressure_pa: float — pressure across the opening. [Pa], over 0
        density_kg_m3: float — density of the air. [kg/m3], over 0
        discharge_coefficient_ratio: float — coefficient; near 0.6 at a sharp edge. [ratio], over 0 up to 1
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Undoes `opening_airflow`. With the flow of a tightness test it is the leakage area: coefficient 1 at
        4 Pa or 0.611 at 10 Pa, by the standard.
    References
        [1] Building Science Corporation, RR-0005, Transfer Grille Sizing.
    Examples
        [1]: 100 cfm at 3 Pa need 54 in2.

        >>> inch, cfm = 0.0254, 0.3048**3 / 60
        >>> round(opening_area(100 * cfm, 3.0, 1.2014, 0.6067) / inch**2, 1)
        54.0
    """
    jet_m_s = _jet(positive("pressure_pa", pressure_pa), density_kg_m3, discharge_coefficient_ratio)
    return not_negative("airflow_m3_s", airflow_m3_s) / jet_m_s


def opening_pressure(
    airflow_m3_s: float, area_m2: float, density_kg_m3: float, discharge_coefficient_ratio: float
) -> float:
    """Pressure that drives an airflow through an opening. [Pa]

    Parameters
        airflow_m3_s: float — airflow. [m3/s], 0 or more
        area_m2: float — free area of all openings together. [m2], over 0
        density_kg_m3: float — density of the air. [kg/m3], over 0
        discharge_coefficient_ratio: float — coefficient; near 0.6 at a sharp edge. [ratio], over 0 up to 1
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        What a closed bedroom door with an undercut does to the room behind it.
    References
        [1] Building Science Corporation, RR-0005, Transfer Grille Sizing.
    Examples
        [1]: 50 cfm through 27 in2 take 3 Pa.

        >>> inch, cfm = 0.0254, 0.3048**3 / 60
        >>> round(opening_pressure(50 * cfm, 27 * inch**2, 1.2014, 0.6067), 1)
        3.0
    """
    unit_m3_s = _jet(1.0, density_kg_m3, discharge_coefficient_ratio) * positive("area_m2", area_m2)
    return (not_negative("airflow_m3_s", airflow_m3_s) / unit_m3_s) ** 2


def _jet(pressure_pa: float, density_kg_m3: float, discharge_coefficient_ratio: float) -> float:
    coefficient = positive("discharge_coefficient_ratio", discharge_coefficient_ratio)
    if coefficient > 1:
        raise OutOfRange("discharge_coefficient_ratio", coefficient, "over 0, at most 1")
    return coefficient * math.sqrt(2 * pressure_pa / positive("density_kg_m3", density_kg_m3))


def _all_not_negative(name: str, values: Sequence[float]) -> Sequence[float]:
    for place, value in enumerate(values, start=1):
        not_negative(f"{name}, number {place},", value)
    return values


def _paths(fed_by: Mapping[str, str | None]) -> dict[str, tuple[str, ...]]:
    """For each run the runs from the blower to it; refuses loops and runs that hang on nothing."""
    if not fed_by:
        raise OutOfRange("fed_by", {}, "a tree of one run or more")
    paths: dict[str, tuple[str, ...]] = {}
    for start in fed_by:
        walked: list[str] = []
        run: str | None = start
        while run is not None and run not in paths:
            if run in walked:
                loop = [*walked[walked.index(run) :], run]
                raise OutOfRange("fed_by", " fed by ".join(loop), "a tree without loops")
            if run not in fed_by:
                raise OutOfRange(f"fed_by of {walked[-1]!r}", run, "a run of the tree, or None at the blower")
            walked.append(run)
            run = fed_by[run]
        path = paths[run] if run is not None else ()
        for passed in reversed(walked):
            path = (*path, passed)
            paths[passed] = path
    return {run: paths[run] for run in fed_by}


def _path(paths: Mapping[str, tuple[str, ...]], name: str, run: str) -> tuple[str, ...]:
    if run not in paths:
        raise OutOfRange(name, run, f"one of {sorted(paths)}")
    return paths[run]
