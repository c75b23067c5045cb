"""Laws of duct systems: trees, budgets, filters, openings."""

from __future__ import annotations

import math
import random
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.calc.air import duct_system
from checker.calc.errors import OutOfRange

FLOWS = st.floats(0.0, 0.5)
PRESSURES = st.floats(0.5, 250.0)


@st.composite
def trees(draw: st.DrawFn) -> tuple[dict[str, str | None], dict[str, float]]:
    """A tree of runs in any order, and the flows of its outlets."""
    count = draw(st.integers(1, 15))
    fed_by: dict[str, str | None] = {"r0": None}
    for place in range(1, count):
        fed_by[f"r{place}"] = draw(st.sampled_from([None, *(f"r{earlier}" for earlier in range(place))]))
    shuffled = list(fed_by)
    random.Random(draw(st.integers(0, 1000))).shuffle(shuffled)
    outlets = {run: draw(FLOWS) for run in shuffled if draw(st.booleans())}
    return {run: fed_by[run] for run in shuffled}, outlets


@settings(deadline=None)
@given(trees())
def test_flows_at_a_junction_add_up(tree: tuple[dict[str, str | None], dict[str, float]]) -> None:
    """What a run carries leaves it by its outlet and into what it feeds; the blower moves it all."""
    fed_by, outlets = tree
    flows = duct_system.run_airflows(fed_by, outlets)
    assert list(flows) == list(fed_by)
    for run, carried_m3_s in flows.items():
        onward = math.fsum(flows[fed] for fed, feeding in fed_by.items() if feeding == run)
        assert carried_m3_s == pytest.approx(onward + outlets.get(run, 0.0), abs=1e-12)
    at_blower = math.fsum(flow for run, flow in flows.items() if fed_by[run] is None)
    assert at_blower == pytest.approx(math.fsum(outlets.values()), abs=1e-12)


@settings(deadline=None)
@given(trees(), st.floats(0.1, 10.0))
def test_a_tree_scales(tree: tuple[dict[str, str | None], dict[str, float]], times: float) -> None:
    """All outlets times a number: all runs times that number."""
    fed_by, outlets = tree
    flows = duct_system.run_airflows(fed_by, outlets)
    scaled = duct_system.run_airflows(fed_by, {run: flow * times for run, flow in outlets.items()})
    for run, flow_m3_s in flows.items():
        assert scaled[run] == pytest.approx(flow_m3_s * times, abs=1e-12)


@settings(deadline=None)
@given(trees(), st.data())
def test_critical_path_has_the_largest_sum(
    tree: tuple[dict[str, str | None], dict[str, float]], data: st.DataObject
) -> None:
    """No path of the tree sums to more; each sum grows run by run."""
    fed_by, _ = tree
    values = {run: data.draw(st.floats(0.0, 50.0)) for run in fed_by}
    sums = duct_system.sums_from_blower(fed_by, values)
    path = duct_system.critical_path(fed_by, values)
    assert fed_by[path[0]] is None
    assert all(fed_by[after] == before for before, after in pairwise(path))
    assert path[-1] not in set(fed_by.values())
    assert math.fsum(values[run] for run in path) == pytest.approx(max(sums.values()))
    for run, feeding in fed_by.items():
        assert sums[run] == pytest.approx(values[run] + (sums[feeding] if feeding is not None else 0.0))
        assert duct_system.path_from_blower(fed_by, run)[-1] == run


def test_equal_paths_are_told_apart_by_name() -> None:
    """The order of the runs does not decide between equal paths."""
    values = {"t": 1.0, "a": 2.0, "b": 2.0}
    assert duct_system.critical_path({"t": None, "b": "t", "a": "t"}, values) == ("t", "a")


@pytest.mark.parametrize(
    ("fed_by", "message"),
    [
        ({}, "fed_by is {}: it must be a tree of one run or more"),
        ({"a": "a"}, "fed_by is 'a fed by a': it must be a tree without loops"),
        (
            {"t": None, "x": "c", "a": "b", "b": "c", "c": "a"},
            "fed_by is 'c fed by a fed by b fed by c': it must be a tree without loops",
        ),
        (
            {"t": None, "a": "nowhere"},
            "fed_by of 'a' is 'nowhere': it must be a run of the tree, or None at the blower",
        ),
    ],
)
def test_loops_and_orphans_are_refused(fed_by: dict[str, str | None], message: str) -> None:
    """Every function of the tree refuses what is not a tree, and says where."""
    calls = (
        lambda: duct_system.run_airflows(fed_by, {}),
        lambda: duct_system.path_from_blower(fed_by, "t"),
        lambda: duct_system.sums_from_blower(fed_by, dict.fromkeys(fed_by, 1.0)),
        lambda: duct_system.critical_path(fed_by, dict.fromkeys(fed_by, 1.0)),
    )
    for call in calls:
        with pytest.raises(OutOfRange) as refused:
            call()
        assert str(refused.value) == message


def test_unknown_runs_are_refused() -> None:
    """An outlet, a path or a value of a run that is not there."""
    fed_by: dict[str, str | None] = {"t": None, "a": "t"}
    with pytest.raises(OutOfRange, match=r"^run with an outlet is 'b': it must be one of "):
        duct_system.run_airflows(fed_by, {"b": 0.1})
    with pytest.raises(OutOfRange, match=r"^run is 'b': it must be one of "):
        duct_system.path_from_blower(fed_by, "b")
    with pytest.raises(OutOfRange, match=r"^runs with a value is "):
        duct_system.sums_from_blower(fed_by, {"t": 1.0})
    with pytest.raises(OutOfRange, match=r"^run_values of 'a' is -1: "):
        duct_system.sums_from_blower(fed_by, {"t": 1.0, "a": -1.0})
    with pytest.raises(OutOfRange, match=r"^outlet_airflows_m3_s of 'a' is nan: "):
        duct_system.run_airflows(fed_by, {"a": math.nan})


def test_a_long_duct_is_no_recursion() -> None:
    """Thousands of runs one behind the other."""
    fed_by: dict[str, str | None] = {f"r{n}": f"r{n - 1}" if n else None for n in range(3000)}
    assert duct_system.run_airflows(dict(reversed(fed_by.items())), {"r2999": 0.1})["r0"] == 0.1


@settings(deadline=None)
@given(st.lists(st.floats(0.0, 5000.0), min_size=1, max_size=12), FLOWS)
def test_room_shares_make_the_whole(losses_w: list[float], airflow_m3_s: float) -> None:
    """Rooms get the blower's air by their loads, none of it lost."""
    assume(sum(losses_w) >= 1.0)
    flows = duct_system.room_airflows(losses_w, airflow_m3_s)
    assert math.fsum(flows) == pytest.approx(airflow_m3_s, abs=1e-12)
    doubled = duct_system.room_airflows([2 * loss_w for loss_w in losses_w], airflow_m3_s)
    assert doubled == pytest.approx(flows, abs=1e-12)
    for one_w, flow_m3_s in zip(losses_w, flows, strict=True):
        assert flow_m3_s * sum(losses_w) == pytest.approx(one_w * airflow_m3_s, abs=1e-9)


@settings(deadline=None)
@given(PRESSURES, st.lists(st.floats(0.0, 50.0), max_size=6), st.lists(st.floats(0.1, 50.0), min_size=1, max_size=6))
def test_budget_is_used_up(blower_pa: float, losses_pa: list[float], lengths_m: list[float]) -> None:
    """Components and ducts at the friction rate together take the blower's pressure."""
    left_pa = duct_system.available_pressure(blower_pa, losses_pa)
    length_m = duct_system.total_effective_length(lengths_m, lengths_m)
    assert length_m == pytest.approx(2 * sum(lengths_m))
    if left_pa > 0:
        rate_pa_m = duct_system.friction_rate(left_pa, length_m)
        assert rate_pa_m * length_m + sum(losses_pa) == pytest.approx(blower_pa)


@settings(deadline=None)
@given(st.floats(1.0, 100.0), st.floats(0.5, 3.0), st.floats(0.01, 3.0), st.floats(1.0, 2.0))
def test_filters(rated_pa: float, rated_m_s: float, velocity_m_s: float, exponent: float) -> None:
    """At its rating a filter has its rated pressure; a faster face takes more, by at least the first power."""
    assert duct_system.filter_pressure(rated_pa, rated_m_s, rated_m_s, exponent) == pytest.approx(rated_pa)
    here_pa = duct_system.filter_pressure(rated_pa, rated_m_s, velocity_m_s, exponent)
    twice_pa = duct_system.filter_pressure(rated_pa, rated_m_s, 2 * velocity_m_s, exponent)
    assert twice_pa >= 2 * here_pa * (1 - 1e-12)


@settings(deadline=None)
@given(st.lists(st.tuples(st.sampled_from(["up", "down", "cellar"]), FLOWS), max_size=10))
def test_floors_add_up(registers: list[tuple[str, float]]) -> None:
    """The sums of the floors are the sum of the registers; a floor against itself is in balance."""
    sums = duct_system.airflows_by_floor([floor for floor, _ in registers], [flow for _, flow in registers])
    assert math.fsum(sums.values()) == pytest.approx(math.fsum(flow for _, flow in registers), abs=1e-12)
    assert set(sums) == {floor for floor, _ in registers}
    assert set(duct_system.floor_balance(sums, sums).values()) <= {0.0}
    assert duct_system.floor_balance(sums, {}) == sums
    assert duct_system.floor_balance({}, sums) == {floor: -flow for floor, flow in sums.items()}


@settings(deadline=None)
@given(st.floats(1e-4, 1.0), st.floats(0.1, 50.0), st.floats(0.9, 1.3), st.floats(0.3, 1.0))
def test_openings_undo_each_other(area_m2: float, pressure_pa: float, density: float, coefficient: float) -> None:
    """Area, pressure and airflow of an opening belong together; four times the pressure is twice the air."""
    flow_m3_s = duct_system.opening_airflow(area_m2, pressure_pa, density, coefficient)
    assert duct_system.opening_area(flow_m3_s, pressure_pa, density, coefficient) == pytest.approx(area_m2)
    assert duct_system.opening_pressure(flow_m3_s, area_m2, density, coefficient) == pytest.approx(pressure_pa)
    four = duct_system.opening_airflow(area_m2, 4 * pressure_pa, density, coefficient)
    assert four == pytest.approx(2 * flow_m3_s)
    both = duct_system.opening_airflow(2 * area_m2, pressure_pa, density, coefficient)
    assert both == pytest.approx(2 * flow_m3_s)
