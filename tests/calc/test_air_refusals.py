"""What every function of checker.calc.air refuses, and how it says so."""

from __future__ import annotations

import importlib
import inspect
import math
from collections.abc import Callable
from typing import Any

import pytest

from checker.calc.air import air_properties, combustion, duct, duct_system, equipment, ventilation
from checker.calc.errors import OutOfRange

AIR = {"density_kg_m3": 1.2, "viscosity_pa_s": 1.82e-5}
WARM = {"density_kg_m3": 1.2, "specific_heat_j_kgk": 1005.0}
EDGE = {"density_kg_m3": 1.2, "discharge_coefficient_ratio": 0.6}
LEAKS = {"test_pressure_pa": 50.0, "exponent_ratio": 0.65}
TREE: dict[str, str | None] = {"t": None, "a": "t"}

# one legal call of each function
LEGAL: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (air_properties.standard_pressure, {"altitude_m": 100.0}),
    (air_properties.altitude_density_ratio, {"altitude_m": 100.0}),
    (
        air_properties.air_density,
        {"temperature_c": 20.0, "pressure_pa": 101325.0, "relative_humidity_ratio": 0.5},
    ),
    (air_properties.air_viscosity, {"temperature_c": 20.0}),
    (equipment.output_from_input, {"heat_input_w": 20000.0, "efficiency_ratio": 0.8}),
    (
        equipment.derated_input,
        {
            "heat_input_w": 20000.0,
            "altitude_m": 1500.0,
            "derating_per_step_ratio": 0.04,
            "step_m": 304.8,
            "starts_over_m": 609.6,
            "counted_from_m": 0.0,
        },
    ),
    (equipment.size_ratio, {"output_w": 20000.0, "heat_loss_w": 15000.0}),
    (equipment.stage_size_ratios, {"stage_outputs_w": [12000.0, 20000.0], "heat_loss_w": 15000.0}),
    (equipment.output_for_size_ratio, {"heat_loss_w": 15000.0, "wanted_size_ratio": 1.4}),
    (equipment.airflow_for_rise, {"output_w": 20000.0, "temperature_rise_k": 25.0, **WARM}),
    (equipment.temperature_rise, {"output_w": 20000.0, "airflow_m3_s": 0.5, **WARM}),
    (equipment.heat_carried, {"airflow_m3_s": 0.5, "temperature_difference_k": 25.0, **WARM}),
    (equipment.airflow_range, {"output_w": 20000.0, "least_rise_k": 20.0, "most_rise_k": 35.0, **WARM}),
    (
        equipment.airflow_fits,
        {"airflow_m3_s": 0.5, "least_airflow_m3_s": 0.4, "most_airflow_m3_s": 0.6},
    ),
    (duct.round_area, {"diameter_m": 0.2}),
    (duct.rectangular_area, {"width_m": 0.3, "height_m": 0.2}),
    (duct.oval_area, {"major_m": 0.3, "minor_m": 0.2}),
    (duct.velocity, {"airflow_m3_s": 0.1, "area_m2": 0.03}),
    (duct.diameter_for_velocity, {"airflow_m3_s": 0.1, "velocity_m_s": 4.0}),
    (duct.rectangular_equivalent_diameter, {"width_m": 0.3, "height_m": 0.2}),
    (duct.oval_equivalent_diameter, {"major_m": 0.3, "minor_m": 0.2}),
    (duct.side_for_equivalent_diameter, {"equivalent_diameter_m": 0.3, "other_side_m": 0.2}),
    (duct.friction_factor, {"airflow_m3_s": 0.1, "diameter_m": 0.2, "roughness_m": 9e-5, **AIR}),
    (
        duct.friction_per_length,
        {"airflow_m3_s": 0.1, "diameter_m": 0.2, "roughness_m": 9e-5, **AIR, "correction_ratio": 1.5},
    ),
    (
        duct.flex_compression_factor,
        {"diameter_m": 0.2, "compression_ratio": 0.1, "growth_ratio": 58.0, "decay_per_m": 4.96},
    ),
    (
        duct.diameter_for_friction,
        {"airflow_m3_s": 0.1, "friction_pa_m": 0.6, "roughness_m": 9e-5, **AIR, "correction_ratio": 1.5},
    ),
    (
        duct.airflow_for_friction,
        {"diameter_m": 0.2, "friction_pa_m": 0.6, "roughness_m": 9e-5, **AIR, "correction_ratio": 1.5},
    ),
    (duct.velocity_pressure, {"velocity_m_s": 4.0, "density_kg_m3": 1.2}),
    (duct.fitting_loss, {"loss_coefficient_ratio": 0.5, "velocity_m_s": 4.0, "density_kg_m3": 1.2}),
    (
        duct.fitting_equivalent_length,
        {"loss_coefficient_ratio": 0.5, "diameter_m": 0.2, "friction_factor_ratio": 0.02},
    ),
    (duct.pressure_loss, {"friction_pa_m": 0.6, "effective_length_m": 30.0}),
    (duct_system.available_pressure, {"blower_pressure_pa": 125.0, "component_losses_pa": [60.0]}),
    (
        duct_system.total_effective_length,
        {"straight_lengths_m": [20.0], "fitting_lengths_m": [50.0]},
    ),
    (duct_system.friction_rate, {"available_pressure_pa": 45.0, "total_effective_length_m": 70.0}),
    (duct_system.room_airflows, {"room_heat_losses_w": [500.0, 800.0], "airflow_m3_s": 0.5}),
    (duct_system.run_airflows, {"fed_by": TREE, "outlet_airflows_m3_s": {"a": 0.1}}),
    (duct_system.path_from_blower, {"fed_by": TREE, "run": "a"}),
    (duct_system.sums_from_blower, {"fed_by": TREE, "run_values": {"t": 3.0, "a": 2.0}}),
    (duct_system.critical_path, {"fed_by": TREE, "run_values": {"t": 3.0, "a": 2.0}}),
    (
        duct_system.filter_pressure,
        {"rated_pressure_pa": 50.0, "rated_velocity_m_s": 1.5, "velocity_m_s": 2.0, "exponent_ratio": 1.5},
    ),
    (duct_system.airflows_by_floor, {"floors": ["up"], "airflows_m3_s": [0.1]}),
    (
        duct_system.floor_balance,
        {"supply_airflows_m3_s": {"up": 0.1}, "return_airflows_m3_s": {"down": 0.1}},
    ),
    (duct_system.opening_airflow, {"area_m2": 0.02, "pressure_pa": 3.0, **EDGE}),
    (duct_system.opening_area, {"airflow_m3_s": 0.02, "pressure_pa": 3.0, **EDGE}),
    (duct_system.opening_pressure, {"airflow_m3_s": 0.02, "area_m2": 0.02, **EDGE}),
    (
        ventilation.whole_house_rate,
        {
            "floor_area_m2": 200.0,
            "bedroom_count": 3,
            "airflow_per_area_m_s": 5e-5,
            "airflow_per_person_m3_s": 0.0035,
        },
    ),
    (ventilation.intermittent_rate, {"continuous_airflow_m3_s": 0.03, "run_share_ratio": 0.5}),
    (
        ventilation.exhaust_less_supply,
        {"exhaust_airflows_m3_s": [0.1], "supply_airflows_m3_s": [0.05]},
    ),
    (ventilation.leakage_coefficient, {"test_airflow_m3_s": 0.5, **LEAKS}),
    (ventilation.leakage_airflow, {"pressure_pa": 5.0, "test_airflow_m3_s": 0.5, **LEAKS}),
    (ventilation.depressurisation, {"net_exhaust_m3_s": 0.1, "test_airflow_m3_s": 0.5, **LEAKS}),
    (ventilation.tightness_for_depressurisation, {"net_exhaust_m3_s": 0.1, "limit_pa": 5.0, **LEAKS}),
    (
        ventilation.make_up_airflow,
        {"net_exhaust_m3_s": 0.1, "limit_pa": 5.0, "test_airflow_m3_s": 0.5, **LEAKS},
    ),
    (combustion.indoor_volume_standard, {"heat_input_w": 20000.0, "volume_per_input_m3_w": 0.005}),
    (
        combustion.indoor_volume_by_infiltration,
        {
            "heat_input_w": 20000.0,
            "air_per_heat_m3_j": 5e-7,
            "air_changes_per_h": 0.4,
            "most_air_changes_per_h": 0.6,
        },
    ),
    (
        combustion.opening_area_for_input,
        {"heat_input_w": 20000.0, "area_per_input_m2_w": 1e-6, "least_area_m2": 0.06},
    ),
    (combustion.gross_opening_area, {"free_area_m2": 0.02, "free_share_ratio": 0.6}),
    (combustion.outdoor_reduction, {"available_volume_m3": 100.0, "required_volume_m3": 200.0}),
    (
        combustion.combined_opening_area,
        {"full_area_m2": 0.03, "available_volume_m3": 100.0, "required_volume_m3": 200.0},
    ),
    (combustion.flue_area_ratio, {"flue_area_m2": 0.04, "outlet_areas_m2": [0.008]}),
    (combustion.largest_flue_area, {"outlet_areas_m2": [0.008], "most_times_ratio": 7.0}),
    (combustion.least_common_flue_area, {"outlet_areas_m2": [0.008, 0.005], "added_share_ratio": 0.5}),
    (combustion.capacity_fits, {"heat_input_w": 20000.0, "least_w": 10000.0, "most_w": 30000.0}),
]
NUMBERS = [
    pytest.param(function, legal, name, id=f"{function.__name__}-{name}")
    for function, legal in LEGAL
    for name, value in legal.items()
    if isinstance(value, float | int)
]
COLLECTIONS = [
    pytest.param(function, legal, name, id=f"{function.__name__}-{name}")
    for function, legal in LEGAL
    for name, value in legal.items()
    if isinstance(value, list | dict) and name not in ("fed_by", "floors")
]
SIGNED = {"altitude_m", "temperature_c", "temperature_difference_k", "starts_over_m", "counted_from_m"}


def test_no_function_is_left_out() -> None:
    """Each public function of the package has its legal call above."""
    names = ("air_properties", "equipment", "duct", "duct_system", "ventilation", "combustion")
    modules = [importlib.import_module(f"checker.calc.air.{name}") for name in names]
    functions = {
        function
        for module in modules
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    }
    assert functions == {function for function, _ in LEGAL}


@pytest.mark.parametrize(("function", "legal", "name"), NUMBERS)
@pytest.mark.parametrize("broken", [math.nan, math.inf, -math.inf])
def test_nan_and_infinity_are_refused(
    function: Callable[..., Any], legal: dict[str, Any], name: str, broken: float
) -> None:
    """No function computes with a number that is none, and the message names the parameter and the value."""
    function(**legal)
    with pytest.raises(OutOfRange) as refusal:
        function(**{**legal, name: broken})
    assert str(refusal.value).startswith(f"{name} is {broken}: it must be ")


@pytest.mark.parametrize(
    ("function", "legal", "name"), [number for number in NUMBERS if number.values[2] not in SIGNED]
)
def test_negative_quantities_are_refused(function: Callable[..., Any], legal: dict[str, Any], name: str) -> None:
    """Flows, pressures, sizes and shares have no negative values."""
    with pytest.raises(OutOfRange) as refusal:
        function(**{**legal, name: -1})
    assert refusal.value.name == name


@pytest.mark.parametrize(("function", "legal", "name"), COLLECTIONS)
@pytest.mark.parametrize("broken", [math.nan, math.inf, -1.0])
def test_collections_with_a_broken_number_are_refused(
    function: Callable[..., Any], legal: dict[str, Any], name: str, broken: float
) -> None:
    """The message names the collection and the member."""
    members = legal[name]
    spoiled = [*members[:-1], broken] if isinstance(members, list) else {**members, list(members)[-1]: broken}
    with pytest.raises(OutOfRange) as refusal:
        function(**{**legal, name: spoiled})
    assert refusal.value.name.startswith(name)
    assert refusal.value.value is broken


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: air_properties.standard_pressure(20000.0),
            "altitude_m is 20000: it must be from -500 to 10000",
        ),
        (
            lambda: air_properties.air_density(100.0, 50000.0, 1.0),
            "pressure_pa is 50000: it must be over the vapour pressure, 101419",
        ),
        (
            lambda: equipment.output_from_input(1000.0, 1.02),
            "efficiency_ratio is 1.02: it must be from 0 to 1",
        ),
        (
            lambda: equipment.derated_input(1000.0, 8000.0, 0.04, 304.8, 609.6),
            "altitude_m is 8000: it must be low enough that the derating leaves some of the input",
        ),
        (
            lambda: equipment.derated_input(1000.0, 0.0, 0.04, 304.8, 609.6, 700.0),
            "counted_from_m is 700: it must be at most starts_over_m, 609.6",
        ),
        (
            lambda: equipment.stage_size_ratios([], 1000.0),
            "stage_outputs_w is []: it must be a list of 1 or more numbers over 0",
        ),
        (
            lambda: equipment.stage_size_ratios([2000.0, 1000.0], 1000.0),
            "stage_outputs_w is [2000.0, 1000.0]: it must be a list that rises from the lowest stage",
        ),
        (
            lambda: equipment.stage_size_ratios([1000.0, 1000.0], 1000.0),
            "stage_outputs_w is [1000.0, 1000.0]: it must be a list that rises from the lowest stage",
        ),
        (
            lambda: equipment.airflow_range(1000.0, 36.0, 19.0, 1.2, 1005.0),
            "least_rise_k is 36: it must be at most most_rise_k, 19",
        ),
        (
            lambda: equipment.airflow_fits(0.5, 0.6, 0.4),
            "least_airflow_m3_s is 0.6: it must be at most most_airflow_m3_s, 0.4",
        ),
        (
            lambda: duct.oval_area(0.1, 0.2),
            "major_m is 0.1: it must be at least minor_m, 0.2",
        ),
        (
            lambda: duct.friction_factor(0.1, 0.1, 0.006, 1.2, 1.8e-5),
            "roughness_m is 0.006: it must be at most 0.05 of the diameter, 0.1",
        ),
        (
            lambda: duct.friction_per_length(0.1, 0.1, 9e-5, 1.2, 1.8e-5, 0.9),
            "correction_ratio is 0.9: it must be a finite number, 1 or more",
        ),
        (
            lambda: duct.flex_compression_factor(0.15, 1.0, 58.0, 4.96),
            "compression_ratio is 1: it must be from 0, under 1",
        ),
        (
            lambda: duct_system.friction_rate(0.0, 70.0),
            "available_pressure_pa is 0: it must be a finite number over 0",
        ),
        (
            lambda: duct_system.room_airflows([], 0.5),
            "sum of room_heat_losses_w is 0: it must be a finite number over 0",
        ),
        (
            lambda: duct_system.filter_pressure(50.0, 1.5, 2.0, 2.5),
            "exponent_ratio is 2.5: it must be from 1 to 2",
        ),
        (
            lambda: duct_system.airflows_by_floor(["up"], [0.1, 0.2]),
            "length of floors is 1: it must be that of airflows_m3_s, 2",
        ),
        (
            lambda: duct_system.opening_area(0.1, 3.0, 1.2, 1.1),
            "discharge_coefficient_ratio is 1.1: it must be over 0, at most 1",
        ),
        (
            lambda: ventilation.whole_house_rate(100.0, True, 1e-5, 0.003),
            "bedroom_count is True: it must be a whole number, 0 or more",
        ),
        (
            lambda: ventilation.leakage_airflow(5.0, 0.5, 50.0, 0.4),
            "exponent_ratio is 0.4: it must be from 0.5 to 1",
        ),
        (
            lambda: combustion.largest_flue_area([0.01], 0.5),
            "most_times_ratio is 0.5: it must be 1 or more",
        ),
        (
            lambda: combustion.flue_area_ratio(0.04, []),
            "outlet_areas_m2 is []: it must be a list of 1 or more numbers over 0",
        ),
        (
            lambda: combustion.capacity_fits(1000.0, 3000.0, 2000.0),
            "least_w is 3000: it must be at most most_w, 2000",
        ),
    ],
)
def test_message(call: Callable[[], Any], message: str) -> None:
    """The whole text of a refusal: name, value, legal range."""
    with pytest.raises(OutOfRange) as refusal:
        call()
    assert str(refusal.value) == message
