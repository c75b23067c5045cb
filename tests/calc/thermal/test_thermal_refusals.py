"""What every function of checker.calc.thermal refuses."""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from checker.calc.errors import OutOfRange
from checker.calc.thermal import (
    assembly,
    climate,
    ground,
    infiltration,
    moisture,
    monthly,
    rafter_bay,
    room_loss,
    section,
)

MODULES: tuple[ModuleType, ...] = (
    assembly,
    climate,
    ground,
    infiltration,
    moisture,
    monthly,
    rafter_bay,
    room_loss,
    section,
)
PATHS = {"paths_m2k_w": [[0.1, 3.0], [0.1, 1.0]], "shares_ratio": [0.8, 0.2]}
AIRS = {
    "inside_temperature_c": 20.0,
    "inside_humidity_ratio": 0.5,
    "outside_temperature_c": -5.0,
    "outside_humidity_ratio": 0.8,
}
LAYERS = {"resistances_m2k_w": [3.0, 0.1], "vapour_resistances_m2_s_pa_kg": [1e9, 9e9]}
YEAR = LAYERS | {
    "inside_temperatures_c": [20.0] * 12,
    "inside_humidities_ratio": [0.5] * 12,
    "outside_temperatures_c": [5.0] * 12,
    "outside_humidities_ratio": [0.8] * 12,
}
BAY = {"air_space_m": 0.025, "outside_strapping_m": 0.02, "inside_strapping_m": 0.02}
LINE = {"design_loss_w": 9000.0, "design_temperature_c": -15.0, "balance_temperature_c": 15.0}
BINS = {"bin_temperatures_c": [-5.0, 5.0], "bin_hours_h": [900.0, 2000.0]}
FLOW = {
    "airflow_m3_s": 0.05,
    "air_density_kg_m3": 1.2,
    "inside_temperature_c": 20.0,
    "outside_temperature_c": -5.0,
}
SURFACE = {"u_w_m2k": 0.3, "area_m2": 20.0, "inside_temperature_c": 20.0}

# one legal call of each function
LEGAL: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (assembly.layer_resistance, {"thickness_m": 0.1, "conductivity_w_mk": 0.04}),
    (assembly.series_resistance, {"resistances_m2k_w": [0.1, 2.0]}),
    (assembly.u_from_resistance, {"resistance_m2k_w": 2.0}),
    (assembly.resistance_from_u, {"u_w_m2k": 0.5}),
    (assembly.framing_share, {"member_width_m": 0.038, "spacing_m": 0.4}),
    (
        assembly.framing_share_with_extras,
        {"regular_share_ratio": 0.1, "extra_member_area_m2": 1.0, "gross_area_m2": 9.0},
    ),
    (assembly.parallel_resistance, {"resistances_m2k_w": [1.0, 3.0], "shares_ratio": [0.2, 0.8]}),
    (assembly.parallel_path, PATHS),
    (assembly.isothermal_planes, PATHS),
    (assembly.combined_method, PATHS),
    (
        assembly.effective_resistance,
        {
            "member_resistance_m2k_w": 1.2,
            "cavity_resistance_m2k_w": 3.3,
            "framing_share_ratio": 0.23,
            "other_resistances_m2k_w": [0.12, 0.03],
        },
    ),
    (
        assembly.nominal_resistances,
        {"cavity_resistances_m2k_w": [3.5], "continuous_resistances_m2k_w": [0.9]},
    ),
    (assembly.area_weighted_u, {"u_values_w_m2k": [0.3, 1.5], "areas_m2": [40.0, 6.0]}),
    (
        section.section_temperatures,
        {"resistances_m2k_w": [0.1, 3.0], "inside_temperature_c": 20.0, "outside_temperature_c": -5.0},
    ),
    (
        section.interface_temperature,
        {
            "resistances_m2k_w": [0.1, 3.0],
            "layers_inboard_count": 1,
            "inside_temperature_c": 20.0,
            "outside_temperature_c": -5.0,
        },
    ),
    (
        section.sheathing_temperature,
        {
            "inboard_resistance_m2k_w": 2.0,
            "outboard_resistance_m2k_w": 1.0,
            "inside_temperature_c": 20.0,
            "outside_temperature_c": -5.0,
        },
    ),
    (
        section.outboard_resistance_for,
        {
            "inboard_resistance_m2k_w": 2.0,
            "wanted_temperature_c": 8.0,
            "inside_temperature_c": 20.0,
            "outside_temperature_c": -5.0,
        },
    ),
    (
        section.temperature_change_by_swap,
        {
            "resistances_m2k_w": [0.1, 3.0],
            "first_layer_number": 1,
            "second_layer_number": 2,
            "layers_inboard_count": 1,
            "inside_temperature_c": 20.0,
            "outside_temperature_c": -5.0,
        },
    ),
    (moisture.saturation_pressure, {"temperature_c": 20.0}),
    (moisture.vapour_pressure, {"temperature_c": 20.0, "relative_humidity_ratio": 0.5}),
    (moisture.dew_point, {"temperature_c": 20.0, "relative_humidity_ratio": 0.5}),
    (moisture.vapour_resistance_of_permeance, {"permeance_kg_s_m2_pa": 60e-12}),
    (moisture.vapour_resistance_of_air_layer, {"equivalent_thickness_m": 2.0}),
    (moisture.layer_permeance, {"permeability_kg_s_m_pa": 2e-12, "thickness_m": 0.05}),
    (
        moisture.vapour_pressures,
        {
            "vapour_resistances_m2_s_pa_kg": [1e9, 2e9],
            "inside_pressure_pa": 1200.0,
            "outside_pressure_pa": 400.0,
        },
    ),
    (moisture.interface_humidities, LAYERS | AIRS),
    (moisture.condensing_interfaces, LAYERS | AIRS),
    (moisture.outboard_share, {"outboard_resistance_m2k_w": 1.0, "inboard_resistance_m2k_w": 3.0}),
    (moisture.outboard_to_inboard_ratio, {"outboard_resistance_m2k_w": 1.0, "inboard_resistance_m2k_w": 3.0}),
    (monthly.condensation_rates, LAYERS | AIRS),
    (monthly.first_condensing_month, YEAR),
    (monthly.water_after_months, YEAR),
    (
        rafter_bay.air_space_left,
        {
            "member_depth_m": 0.2,
            "insulation_thickness_m": 0.15,
            "outside_strapping_m": 0.02,
            "inside_strapping_m": 0.02,
        },
    ),
    (rafter_bay.insulation_that_fits, {"member_depth_m": 0.2} | BAY),
    (rafter_bay.member_depth_needed, {"insulation_thickness_m": 0.15} | BAY),
    (rafter_bay.depth_to_add, {"member_depth_m": 0.1, "insulation_thickness_m": 0.15} | BAY),
    (ground.characteristic_dimension, {"floor_area_m2": 80.0, "exposed_perimeter_m": 36.0}),
    (
        ground.equivalent_thickness,
        {
            "wall_thickness_m": 0.3,
            "soil_conductivity_w_mk": 1.5,
            "construction_resistance_m2k_w": 1.0,
            "inside_film_m2k_w": 0.17,
            "outside_film_m2k_w": 0.04,
        },
    ),
    (
        ground.slab_u,
        {"characteristic_dimension_m": 4.0, "equivalent_thickness_m": 0.6, "soil_conductivity_w_mk": 1.5},
    ),
    (
        ground.edge_insulation_psi,
        {
            "insulation_reach_m": 0.6,
            "placing": "level",
            "insulation_thickness_m": 0.05,
            "insulation_resistance_m2k_w": 1.7,
            "equivalent_thickness_m": 0.6,
            "soil_conductivity_w_mk": 1.5,
        },
    ),
    (
        ground.basement_floor_u,
        {
            "characteristic_dimension_m": 4.0,
            "equivalent_thickness_m": 0.6,
            "depth_m": 2.0,
            "soil_conductivity_w_mk": 1.5,
        },
    ),
    (
        ground.basement_wall_u,
        {
            "wall_equivalent_thickness_m": 0.4,
            "floor_equivalent_thickness_m": 0.6,
            "depth_m": 2.0,
            "soil_conductivity_w_mk": 1.5,
        },
    ),
    (
        ground.below_grade_wall_u,
        {
            "top_depth_m": 0.5,
            "bottom_depth_m": 2.0,
            "soil_conductivity_w_mk": 1.4,
            "wall_resistance_m2k_w": 1.0,
        },
    ),
    (
        ground.below_grade_floor_u,
        {
            "floor_depth_m": 2.0,
            "floor_width_m": 8.0,
            "soil_conductivity_w_mk": 1.4,
            "floor_resistance_m2k_w": 0.3,
        },
    ),
    (ground.perimeter_conductance, {"f_factor_w_mk": 1.2, "exposed_perimeter_m": 36.0}),
    (
        infiltration.lbl_factor,
        {"climate_ratio": 18.5, "height_ratio": 0.8, "shielding_ratio": 1.0, "leakiness_ratio": 1.0},
    ),
    (infiltration.natural_air_changes, {"air_changes_50_per_h": 7.0, "lbl_factor_ratio": 17.0}),
    (infiltration.natural_air_changes_by_twenty, {"air_changes_50_per_h": 7.0}),
    (infiltration.airflow_of_air_changes, {"air_changes_per_h": 0.4, "volume_m3": 300.0}),
    (infiltration.air_changes_of_airflow, {"airflow_m3_s": 0.05, "volume_m3": 300.0}),
    (infiltration.air_heat_loss, FLOW),
    (infiltration.ventilation_heat_loss, FLOW | {"recovery_efficiency_ratio": 0.6}),
    (room_loss.net_area, {"gross_area_m2": 30.0, "opening_areas_m2": [2.0, 1.5]}),
    (room_loss.conductance, {"u_values_w_m2k": [0.3, 1.5], "areas_m2": [40.0, 6.0]}),
    (room_loss.transmission_loss, SURFACE | {"other_temperature_c": -5.0}),
    (
        room_loss.reduced_transmission_loss,
        SURFACE | {"outside_temperature_c": -5.0, "reduction_ratio": 0.8},
    ),
    (
        room_loss.unheated_temperature,
        {
            "heated_conductances_w_k": [30.0],
            "heated_temperatures_c": [20.0],
            "outdoor_conductance_w_k": 90.0,
            "outdoor_temperature_c": -5.0,
            "gain_w": 100.0,
        },
    ),
    (room_loss.reduction_factor, {"heated_conductance_w_k": 30.0, "outdoor_conductance_w_k": 90.0}),
    (room_loss.room_loss, {"surface_losses_w": [500.0], "air_losses_w": [200.0]}),
    (room_loss.house_loss, {"room_losses_w": [500.0, -20.0]}),
    (room_loss.loss_saved, {"loss_before_w": 9000.0, "loss_after_w": 6000.0}),
    (room_loss.loss_saved_share, {"loss_before_w": 9000.0, "loss_after_w": 6000.0}),
    (climate.degree_days_of_bins, BINS | {"base_c": 18.0}),
    (climate.seasonal_heat, {"conductance_w_k": 200.0, "degree_days_k_d": 3500.0}),
    (climate.load_at, LINE | {"temperature_c": 0.0}),
    (climate.lowest_temperature_carried, LINE | {"output_w": 6000.0}),
    (climate.hours_share_carried, LINE | BINS | {"output_w": 6000.0}),
    (climate.heat_share_carried, LINE | BINS | {"output_w": 6000.0}),
]
SIGNED = ("temperature_c", "temperatures_c", "base_c", "losses_w", "loss_before_w", "loss_after_w")
COUNTS = ("count", "number")


def broken(value: Any, number: float) -> list[Any]:
    """The value with one of its numbers replaced, in every way."""
    if isinstance(value, list):
        return [
            [*value[:place], other, *value[place + 1 :]]
            for place, part in enumerate(value)
            for other in broken(part, number)
        ]
    return [number] if isinstance(value, float) else []


def cases(number: float, *but: str) -> list[Any]:
    """Every call with one number broken, parameters of the given endings left alone."""
    return [
        pytest.param(function, legal | {name: wrong}, id=f"{function.__name__}-{name}-{place}")
        for function, legal in LEGAL
        for name, value in legal.items()
        if not name.endswith(but or ("(none)",))
        for place, wrong in enumerate(broken(value, number))
    ]


def test_every_function_has_a_legal_call() -> None:
    """The table above leaves none out, names all parameters that have no default, and its calls go through."""
    public = {
        function
        for module in MODULES
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    }
    assert {function for function, _ in LEGAL} == public
    for function, legal in LEGAL:
        function(**legal)


@pytest.mark.parametrize(("function", "call"), cases(math.nan))
def test_what_is_no_number_is_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """NaN goes nowhere, neither alone nor in a list."""
    with pytest.raises(OutOfRange, match="is nan: it must be "):
        function(**call)


@pytest.mark.parametrize(("function", "call"), [*cases(math.inf), *cases(-math.inf)])
def test_infinity_is_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Nor does infinity."""
    with pytest.raises(OutOfRange, match=r"is -?inf: it must be "):
        function(**call)


@pytest.mark.parametrize(("function", "call"), cases(-0.01, *SIGNED))
def test_negative_sizes_are_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Resistances, areas, flows and shares have no negative values."""
    with pytest.raises(OutOfRange, match=r"is -0\.01: it must be "):
        function(**call)


@pytest.mark.parametrize(
    ("function", "call"),
    [
        pytest.param(function, legal | {name: [*value, value[0]]}, id=f"{function.__name__}-{name}")
        for function, legal in LEGAL
        for name, value in legal.items()
        if isinstance(value, list) and sum(isinstance(other, list) for other in legal.values()) > 1
        if function not in (assembly.nominal_resistances, room_loss.room_loss)
    ],
)
def test_lists_of_unlike_length_are_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Lists that belong together have one length."""
    with pytest.raises(OutOfRange):
        function(**call)


@pytest.mark.parametrize(
    ("function", "call"),
    [
        pytest.param(function, legal | {name: wrong}, id=f"{function.__name__}-{name}-{wrong}")
        for function, legal in LEGAL
        for name in legal
        if name.endswith(COUNTS)
        for wrong in (-1, 99, 1.5, True)
    ],
)
def test_counts_are_whole_and_within_the_layers(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Numbers of layers are whole, not negative, and no more than there are."""
    with pytest.raises(OutOfRange):
        function(**call)
