"""Laws of air itself, of heating equipment, of ventilation and of combustion air."""

from __future__ import annotations

import math

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.air import air_properties, combustion, equipment, ventilation

OUTPUTS = st.floats(1000.0, 50000.0)
FLOWS = st.floats(0.01, 1.0)
EXPONENTS = st.floats(0.5, 1.0)
ALTITUDES = st.floats(-400.0, 4000.0)
ROOMS = st.floats(-40.0, 60.0)
DENSITY = 1.2
HEAT = 1005.0


@settings(deadline=None)
@given(ROOMS, ALTITUDES, st.floats(0.0, 1.0))
def test_moist_air_against_the_library(temperature_c: float, altitude_m: float, humidity: float) -> None:
    """Partial pressures give the density that the library of psychrometrics finds by another way."""
    pressure_pa = air_properties.standard_pressure(altitude_m)
    density = air_properties.air_density(temperature_c, pressure_pa, humidity)
    ratio = psychrolib.GetHumRatioFromRelHum(temperature_c, humidity, pressure_pa)
    assert density == pytest.approx(psychrolib.GetMoistAirDensity(temperature_c, ratio, pressure_pa), rel=1e-4)
    assert density <= air_properties.air_density(temperature_c, pressure_pa)


@settings(deadline=None)
@given(ROOMS, ALTITUDES, st.floats(1.0, 500.0))
def test_air_thins_upward_and_with_warmth(temperature_c: float, altitude_m: float, more: float) -> None:
    """Higher and warmer air is lighter, warmer air more viscous; the ideal gas as a second opinion."""
    pressure_pa = air_properties.standard_pressure(altitude_m)
    assert air_properties.standard_pressure(altitude_m + more) < pressure_pa
    here = air_properties.air_density(temperature_c, pressure_pa)
    assert air_properties.air_density(temperature_c + 1, pressure_pa) < here
    assert air_properties.air_viscosity(temperature_c + 1) > air_properties.air_viscosity(temperature_c)
    sea_level = air_properties.air_density(temperature_c, air_properties.standard_pressure(0.0))
    assert here / sea_level == pytest.approx(air_properties.altitude_density_ratio(altitude_m))
    assert here == pytest.approx(pressure_pa / 287.05 / (temperature_c + 273.15), rel=1e-3)


@settings(deadline=None)
@given(OUTPUTS, st.floats(5.0, 50.0), st.floats(0.8, 1.3))
def test_airflow_and_rise_belong_together(output_w: float, rise_k: float, density: float) -> None:
    """Airflow, rise and output undo each other; thin air needs more of it."""
    flow_m3_s = equipment.airflow_for_rise(output_w, rise_k, density, HEAT)
    assert equipment.temperature_rise(output_w, flow_m3_s, density, HEAT) == pytest.approx(rise_k)
    assert equipment.heat_carried(flow_m3_s, rise_k, density, HEAT) == pytest.approx(output_w)
    assert equipment.heat_carried(flow_m3_s, -rise_k, density, HEAT) == pytest.approx(-output_w)
    assert equipment.airflow_for_rise(output_w, rise_k, density * 0.8, HEAT) == pytest.approx(flow_m3_s / 0.8)


@settings(deadline=None)
@given(OUTPUTS, st.floats(10.0, 25.0), st.floats(0.0, 25.0), FLOWS)
def test_an_airflow_fits_where_its_rise_does(output_w: float, low_k: float, span_k: float, flow_m3_s: float) -> None:
    """Within the airflows of a plate exactly if the rise is within the rises."""
    least, most = equipment.airflow_range(output_w, low_k, low_k + span_k, DENSITY, HEAT)
    assert least <= most
    rise_k = equipment.temperature_rise(output_w, flow_m3_s, DENSITY, HEAT)
    near = min(abs(rise_k - low_k), abs(rise_k - low_k - span_k)) < 1e-6
    assert near or equipment.airflow_fits(flow_m3_s, least, most) == (low_k <= rise_k <= low_k + span_k)
    assert equipment.airflow_fits(least, least, most)
    assert equipment.airflow_fits(most, least, most)


@settings(deadline=None)
@given(OUTPUTS, OUTPUTS, st.floats(0.5, 1.0))
def test_sizes(output_w: float, loss_w: float, efficiency: float) -> None:
    """Sizes scale with the output and undo; the high stage is the size of the whole."""
    size = equipment.size_ratio(output_w, loss_w)
    assert equipment.output_for_size_ratio(loss_w, size) == pytest.approx(output_w)
    stages = equipment.stage_size_ratios([output_w * 0.6, output_w], loss_w)
    assert stages == pytest.approx((0.6 * size, size))
    assert equipment.output_from_input(output_w, efficiency) == pytest.approx(efficiency * output_w)


@settings(deadline=None)
@given(OUTPUTS, ALTITUDES, st.floats(0.0, 0.05), st.floats(0.0, 1500.0))
def test_altitude_only_takes_away(heat_w: float, altitude_m: float, share: float, start_m: float) -> None:
    """No derating up to the start, more the higher; counting from the start takes less than from the sea."""
    left_w = equipment.derated_input(heat_w, altitude_m, share, 304.8, start_m)
    milder_w = equipment.derated_input(heat_w, altitude_m, share, 304.8, start_m, start_m)
    assert left_w <= milder_w <= heat_w
    if altitude_m <= start_m:
        assert left_w == heat_w
    assert equipment.derated_input(heat_w, altitude_m + 10, share, 304.8, start_m) <= left_w


@settings(deadline=None)
@given(st.floats(20.0, 500.0), st.integers(0, 7), st.floats(0.0, 0.001), st.floats(0.0, 0.01))
def test_ventilation_rates(area_m2: float, bedrooms: int, by_area: float, by_person: float) -> None:
    """A bedroom more is one person more; an intermittent fan moves the same air on average."""
    rate_m3_s = ventilation.whole_house_rate(area_m2, bedrooms, by_area, by_person)
    assert ventilation.whole_house_rate(area_m2, bedrooms + 1, by_area, by_person) == pytest.approx(
        rate_m3_s + by_person
    )
    twice = ventilation.whole_house_rate(2 * area_m2, bedrooms, 2 * by_area, by_person)
    assert twice - rate_m3_s == pytest.approx(3 * area_m2 * by_area, abs=1e-12)
    assert ventilation.intermittent_rate(rate_m3_s, 0.25) * 0.25 == pytest.approx(rate_m3_s)


@settings(deadline=None)
@given(FLOWS, st.floats(0.05, 2.0), st.floats(4.0, 75.0), EXPONENTS)
def test_depressurisation(exhaust: float, test_flow: float, test_pa: float, exponent: float) -> None:
    """At the pressure found the leaks let in what the fans take out; a tighter house goes deeper."""
    depth_pa = ventilation.depressurisation(exhaust, test_flow, test_pa, exponent)
    assert ventilation.leakage_airflow(depth_pa, test_flow, test_pa, exponent) == pytest.approx(exhaust)
    coefficient = ventilation.leakage_coefficient(test_flow, test_pa, exponent)
    assert coefficient * depth_pa**exponent == pytest.approx(exhaust)
    assert ventilation.depressurisation(exhaust, test_flow * 0.9, test_pa, exponent) > depth_pa
    assert ventilation.tightness_for_depressurisation(exhaust, depth_pa, test_pa, exponent) == pytest.approx(test_flow)


@settings(deadline=None)
@given(FLOWS, st.floats(1.0, 10.0), st.floats(0.05, 2.0), EXPONENTS)
def test_make_up_air_keeps_the_limit(exhaust: float, limit_pa: float, test_flow: float, exponent: float) -> None:
    """With the make-up air the limit is kept, and just reached where any was needed."""
    added = ventilation.make_up_airflow(exhaust, limit_pa, test_flow, 50.0, exponent)
    net = ventilation.exhaust_less_supply([exhaust], [added])
    assert 0 <= added <= exhaust
    depth_pa = ventilation.depressurisation(max(net, 0.0), test_flow, 50.0, exponent)
    assert depth_pa <= limit_pa * (1 + 1e-9)
    if added > 1e-6:
        assert depth_pa == pytest.approx(limit_pa)


@settings(deadline=None)
@given(st.lists(FLOWS, max_size=5), st.lists(FLOWS, max_size=5))
def test_balance_is_antisymmetric(out: list[float], into: list[float]) -> None:
    """Exhaust and supply exchanged change the sign."""
    assert ventilation.exhaust_less_supply(out, into) == -ventilation.exhaust_less_supply(into, out)


@settings(deadline=None)
@given(OUTPUTS, OUTPUTS, st.floats(0.05, 0.6), st.floats(0.05, 0.6))
def test_room_volumes_add_up(one_w: float, other_w: float, changes: float, more_changes: float) -> None:
    """Inputs add, a leakier house needs less room, and air changes over the cap do not count."""
    unit = 21 * 0.3048**3 / 1055055.85
    low, high = sorted((changes, more_changes))

    def needed(heat_w: float, air_changes_per_h: float) -> float:
        return combustion.indoor_volume_by_infiltration(heat_w, unit, air_changes_per_h, 0.6)

    assert needed(one_w + other_w, low) == pytest.approx(needed(one_w, low) + needed(other_w, low))
    assert needed(one_w, high) <= needed(one_w, low)
    assert needed(one_w, 5.0) == needed(one_w, 0.6)
    # the standard method is that of a house at 0.42 air changes
    standard = combustion.indoor_volume_standard(one_w, 50 * 0.3048**3 / (1055055.85 / 3600))
    assert standard == pytest.approx(needed(one_w, 0.42), rel=1e-6)


@settings(deadline=None)
@given(st.floats(0.0, 200.0), st.floats(1.0, 200.0), st.floats(0.0, 0.2), st.floats(0.1, 1.0))
def test_openings_for_combustion(volume: float, required: float, area: float, share: float) -> None:
    """Indoor air only shrinks the outdoor opening; a louvre is larger than what is free in it."""
    reduced = combustion.combined_opening_area(area, volume, required)
    assert 0 <= reduced <= area
    assert reduced == pytest.approx(area * combustion.outdoor_reduction(volume, required))
    if volume >= required:
        assert reduced == 0
    assert combustion.gross_opening_area(area, share) * share == pytest.approx(area)


@settings(deadline=None)
@given(st.lists(st.floats(0.002, 0.05), min_size=2, max_size=4), st.floats(0.005, 0.3))
def test_flues_follow_the_smallest_outlet(outlets: list[float], flue: float) -> None:
    """The smallest outlet alone leaves the ratio as it was, the largest alone never raises it."""
    together = combustion.flue_area_ratio(flue, outlets)
    assert combustion.flue_area_ratio(flue, [max(outlets)]) <= together
    assert combustion.flue_area_ratio(flue, [min(outlets)]) == together
    assert combustion.largest_flue_area(outlets, 7.0) == pytest.approx(7 * flue / together)
    least = combustion.least_common_flue_area(outlets, 0.5)
    assert max(outlets) < least <= math.fsum(outlets)
    assert combustion.least_common_flue_area([outlets[0]], 0.5) == outlets[0]


@settings(deadline=None)
@given(OUTPUTS, OUTPUTS, OUTPUTS)
def test_capacity(heat_w: float, one_w: float, other_w: float) -> None:
    """Both ends of a vent's capacities fit, and nothing outside."""
    least_w, most_w = sorted((one_w, other_w))
    assert combustion.capacity_fits(least_w, least_w, most_w)
    assert combustion.capacity_fits(most_w, least_w, most_w)
    if not math.isclose(heat_w, least_w) and not math.isclose(heat_w, most_w):
        assert combustion.capacity_fits(heat_w, least_w, most_w) == (least_w < heat_w < most_w)
