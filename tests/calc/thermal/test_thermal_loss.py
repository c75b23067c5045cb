"""Laws of losses: rooms, ground, air and season."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.errors import OutOfRange
from checker.calc.thermal import climate, ground, infiltration, room_loss

U = st.floats(0.05, 5.0)
AREAS = st.floats(0.5, 200.0)
TEMPERATURES = st.floats(-40.0, 30.0)
LOSSES = st.lists(st.floats(-1e4, 1e4), min_size=1, max_size=8)
BINS = st.lists(st.tuples(st.floats(-30.0, 30.0), st.floats(0.0, 1500.0)), min_size=1, max_size=10)


@settings(deadline=None)
@given(U, AREAS, TEMPERATURES, TEMPERATURES)
def test_a_partition_cancels(u: float, area_m2: float, one: float, other: float) -> None:
    """What one room loses through a partition the other gains; the house loses nothing."""
    across = room_loss.transmission_loss(u, area_m2, one, other)
    back = room_loss.transmission_loss(u, area_m2, other, one)
    assert room_loss.house_loss([across, back]) == pytest.approx(0, abs=1e-9)


@settings(deadline=None)
@given(U, AREAS, st.floats(1.0, 30.0), st.floats(0.1, 3.0))
def test_loss_is_linear_in_the_difference(u: float, area_m2: float, difference: float, times: float) -> None:
    """Twice the difference is twice the loss."""
    once = room_loss.transmission_loss(u, area_m2, difference, 0.0)
    assert room_loss.transmission_loss(u, area_m2, difference * times, 0.0) == pytest.approx(once * times)


@settings(deadline=None)
@given(st.floats(0.1, 10.0), st.floats(0.01, 10.0), AREAS, st.floats(-40.0, 19.0))
def test_more_insulation_never_raises_a_loss(resistance: float, added: float, area_m2: float, outside: float) -> None:
    """A greater resistance loses less to a colder side."""
    before = room_loss.transmission_loss(1 / resistance, area_m2, 20.0, outside)
    after = room_loss.transmission_loss(1 / (resistance + added), area_m2, 20.0, outside)
    assert after < before
    assert room_loss.loss_saved(before, after) > 0
    assert 0 < room_loss.loss_saved_share(before, after) < 1


@settings(deadline=None)
@given(LOSSES, LOSSES)
def test_sums(surfaces: list[float], air: list[float]) -> None:
    """Rooms add to the house in any division."""
    assert room_loss.house_loss([room_loss.room_loss(surfaces, []), room_loss.room_loss([], air)]) == pytest.approx(
        room_loss.room_loss(surfaces, air), abs=1e-6
    )


@settings(deadline=None)
@given(st.floats(1.0, 200.0), st.floats(1.0, 400.0), st.floats(15.0, 25.0), st.floats(-40.0, 10.0))
def test_balance_and_factor_agree(inner: float, outer: float, inside: float, outside: float) -> None:
    """The loss to the space at its own temperature is the loss reduced by the factor."""
    between = room_loss.unheated_temperature([inner], [inside], outer, outside)
    assert outside <= between <= inside
    direct = room_loss.transmission_loss(0.5, inner / 0.5, inside, between)
    factor = room_loss.reduction_factor(inner, outer)
    assert direct == pytest.approx(room_loss.reduced_transmission_loss(0.5, inner / 0.5, inside, outside, factor))
    assert room_loss.unheated_temperature([inner], [inside], outer, outside, 500.0) > between


@settings(deadline=None)
@given(AREAS, st.lists(st.floats(0.1, 5.0), max_size=5))
def test_openings_are_taken_off(gross_m2: float, openings: list[float]) -> None:
    """Net and openings make the gross area; openings that exceed it are refused."""
    if math.fsum(openings) > gross_m2 * (1 + 1e-6):
        with pytest.raises(OutOfRange, match="opening_areas_m2"):
            room_loss.net_area(gross_m2, openings)
    else:
        assert room_loss.net_area(gross_m2, openings) + math.fsum(openings) == pytest.approx(gross_m2)


WIDTHS = st.floats(1.0, 30.0)
SOILS = st.floats(0.5, 3.5)


@settings(deadline=None)
@given(WIDTHS, st.floats(0.1, 10.0), SOILS)
def test_a_slab_is_a_basement_of_no_depth(width_m: float, d_m: float, soil: float) -> None:
    """The floor of a basement loses less the deeper it is, and at no depth what a slab loses."""
    slab = ground.slab_u(width_m, d_m, soil)
    assert ground.basement_floor_u(width_m, d_m, 0.0, soil) == slab
    assert ground.basement_floor_u(width_m, d_m, 2.0, soil) < slab
    assert ground.slab_u(width_m, d_m + 0.5, soil) < slab < ground.slab_u(width_m, d_m, soil * 1.1)


@settings(deadline=None)
@given(WIDTHS, SOILS)
def test_the_two_formulas_for_floors_meet(width_m: float, soil: float) -> None:
    """Where insulation is as thick as the floor is wide, little and well insulated are the same."""
    below = ground.slab_u(width_m, width_m * (1 - 1e-9), soil)
    assert ground.slab_u(width_m, width_m, soil) == pytest.approx(below, rel=1e-3)


@settings(deadline=None)
@given(st.floats(0.1, 3.0), st.floats(0.1, 3.0), st.floats(0.3, 3.0), SOILS)
def test_basement_walls(w_m: float, d_m: float, z_m: float, soil: float) -> None:
    """A wall loses less with more insulation and more depth; a floor thicker than the wall counts as the wall."""
    u = ground.basement_wall_u(w_m, d_m, z_m, soil)
    assert ground.basement_wall_u(w_m, d_m, z_m + 0.5, soil) < u
    assert ground.basement_wall_u(w_m + 1.0, min(d_m, w_m), z_m, soil) < u
    assert ground.basement_wall_u(w_m, w_m + 1.0, z_m, soil) == ground.basement_wall_u(w_m, w_m, z_m, soil)


@settings(deadline=None)
@given(st.floats(0.0, 1.0), st.floats(0.1, 1.0), st.floats(0.1, 1.0), SOILS, st.floats(0.1, 5.0))
def test_stretches_of_a_wall_add(top: float, upper: float, lower: float, soil: float, resistance: float) -> None:
    """Two stretches by their heights make the wall; the lower one loses less."""
    first = ground.below_grade_wall_u(top, top + upper, soil, resistance)
    second = ground.below_grade_wall_u(top + upper, top + upper + lower, soil, resistance)
    whole = ground.below_grade_wall_u(top, top + upper + lower, soil, resistance)
    assert first * upper + second * lower == pytest.approx(whole * (upper + lower))
    assert second < first < 1 / resistance * (1 + 1e-12)


@settings(deadline=None)
@given(st.floats(0.5, 4.0), st.floats(2.0, 15.0), SOILS, st.floats(0.1, 4.0))
def test_below_grade_floors(depth_m: float, width_m: float, soil: float, resistance: float) -> None:
    """A floor loses less if deeper, wider or better insulated."""
    u = ground.below_grade_floor_u(depth_m, width_m, soil, resistance)
    assert ground.below_grade_floor_u(depth_m + 0.5, width_m, soil, resistance) < u
    assert ground.below_grade_floor_u(depth_m, width_m + 1.0, soil, resistance) < u
    assert ground.below_grade_floor_u(depth_m, width_m, soil, resistance + 0.5) < u


@settings(deadline=None)
@given(st.floats(0.2, 2.0), st.floats(0.2, 3.0), st.floats(0.1, 4.0))
def test_edge_insulation_takes_off(reach_m: float, resistance: float, d_m: float) -> None:
    """More reach and more resistance take off more; insulation no better than soil nothing."""
    psi = ground.edge_insulation_psi(reach_m, "upright", 0.05, resistance, d_m, 1.5)
    assert psi < 0
    assert ground.edge_insulation_psi(reach_m + 0.3, "upright", 0.05, resistance, d_m, 1.5) < psi
    assert ground.edge_insulation_psi(reach_m, "upright", 0.05, resistance + 1, d_m, 1.5) < psi
    assert psi < ground.edge_insulation_psi(reach_m, "level", 0.05, resistance, d_m, 1.5)
    assert ground.edge_insulation_psi(reach_m, "level", 0.06, 0.06 / 1.5, d_m, 1.5) == 0


def test_edge_insulation_worse_than_soil_is_refused() -> None:
    """What conducts more than the soil it replaces is no insulation."""
    with pytest.raises(OutOfRange) as refusal:
        ground.edge_insulation_psi(1.0, "level", 0.15, 0.05, 0.6, 1.5)
    assert str(refusal.value) == "insulation_resistance_m2k_w is 0.05: it must be at least that of the soil, 0.1"


@settings(deadline=None)
@given(st.floats(0.0, 20.0), AREAS)
def test_air_changes_and_airflow_undo_each_other(changes: float, volume_m3: float) -> None:
    """A rate made airflow and back is the rate."""
    flow = infiltration.airflow_of_air_changes(changes, volume_m3)
    assert infiltration.air_changes_of_airflow(flow, volume_m3) == pytest.approx(changes)


@settings(deadline=None)
@given(st.floats(0.01, 0.2), st.floats(0.0, 1.0), TEMPERATURES)
def test_recovery_keeps_its_share(airflow: float, efficiency: float, outside: float) -> None:
    """What recovery leaves is the rest; all recovered loses nothing."""
    open_w = infiltration.air_heat_loss(airflow, 1.2, 20.0, outside)
    left_w = infiltration.ventilation_heat_loss(airflow, 1.2, 20.0, outside, efficiency)
    assert left_w == pytest.approx(open_w * (1 - efficiency), abs=1e-9)
    assert infiltration.ventilation_heat_loss(airflow, 1.2, 20.0, outside, 1.0) == 0


@settings(deadline=None)
@given(BINS, st.floats(0.0, 15000.0), st.floats(100.0, 5000.0))
def test_a_bigger_stage_carries_more(bins: list[tuple[float, float]], output: float, more: float) -> None:
    """Shares lie from 0 to 1, rise with the output, and are whole where the output covers the coldest bin."""
    temperatures, hours = [bin_[0] for bin_ in bins], [bin_[1] for bin_ in bins]
    line = (12000.0, -15.0, 15.0)
    if not any(temperature < 14.999 and spent > 0.001 for temperature, spent in bins):
        return
    for share in (climate.hours_share_carried, climate.heat_share_carried):
        small = share(output, temperatures, hours, *line)
        assert 0 <= small <= share(output + more, temperatures, hours, *line) + 1e-12
        coldest = climate.load_at(min(temperatures), *line)
        assert share(coldest, temperatures, hours, *line) == pytest.approx(1)


@settings(deadline=None)
@given(st.floats(100.0, 30000.0))
def test_the_lowest_temperature_is_where_load_and_output_meet(output: float) -> None:
    """At that temperature the load is the output."""
    lowest = climate.lowest_temperature_carried(output, 12000.0, -15.0, 15.0)
    assert climate.load_at(lowest, 12000.0, -15.0, 15.0) == pytest.approx(output)


def test_no_heating_no_share() -> None:
    """Without an hour below the balance temperature there is no share to give."""
    for share in (climate.hours_share_carried, climate.heat_share_carried):
        with pytest.raises(OutOfRange, match="finite number over 0"):
            share(6000.0, [20.0], [8760.0], 12000.0, -15.0, 15.0)


def test_design_must_be_colder_than_balance() -> None:
    """Temperatures the wrong way round are refused."""
    with pytest.raises(OutOfRange) as refusal:
        climate.load_at(0.0, 12000.0, 15.0, 15.0)
    assert str(refusal.value) == "design_temperature_c is 15: it must be under the balance temperature, 15"


def test_a_house_that_gains_has_no_share_to_save() -> None:
    """A difference can be had of gains too, a share only of a loss."""
    assert room_loss.loss_saved(-100.0, -300.0) == 200.0
    with pytest.raises(OutOfRange) as refusal:
        room_loss.loss_saved_share(-100.0, -300.0)
    assert str(refusal.value) == "loss_before_w is -100: it must be a finite number over 0"
