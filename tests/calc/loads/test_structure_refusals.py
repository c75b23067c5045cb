"""What every function of checker.calc.loads, checker.calc.roof_frame and checker.calc.foundation refuses."""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from checker.calc.errors import OutOfRange
from checker.calc.foundation import footing, soil
from checker.calc.loads import gravity, lateral, live, snow, snow_canada, snow_drift, take_down, weights
from checker.calc.roof_frame import geometry, meeting, thrust

MODULES: tuple[ModuleType, ...] = (
    lateral,
    live,
    snow,
    snow_canada,
    snow_drift,
    take_down,
    weights,
    geometry,
    meeting,
    thrust,
    footing,
    soil,
)
GROUND = {"ground_pa": 1400.0, "importance_ratio": 1.0}
SLOPE = {"slope_rad": 0.3}
PEAK = {"width_m": 2.4, "peak_pa": 1700.0}
LOADS = {"loads_n_m": {"dead": 3000.0, "snow": 5000.0}}
RIDGE = {"run_m": 4.0, "pitch_ratio": 0.5, "heel_height_m": 0.15}
BIRDSMOUTH = {"depth_m": 0.184, "seat_m": 0.089, "pitch_ratio": 0.75}
FACING = {
    "span_m": 7.0,
    "left_pitch_ratio": 1.0,
    "right_pitch_ratio": 0.4,
    "left_height_m": 0.5,
    "right_height_m": 1.0,
}
SHED = {"dormer_height_m": 2.2, "dormer_pitch_ratio": 0.25, "main_height_m": 1.0, "main_pitch_ratio": 0.75}
RAFTER = {"load_n_m": 1200.0, "run_m": 3.6, "overhang_m": 0.5}
LEANING = {"load_n_m": 1200.0, "run_m": 3.6, "pitch_ratio": 0.5, "thrust_n": 4000.0}
STRIP = {"load_n_m": 30000.0, "soil_pa": 75000.0, "own_pa": 3600.0}
WALL = {"weight_n_m3": 4700.0, "backfill_m": 1.8}

# one legal call of each function
LEGAL: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (snow.flat_roof_snow, GROUND | {"exposure_ratio": 1.0, "thermal_ratio": 1.1, "basic_ratio": 0.7}),
    (snow.full_snow_slope, {"thermal_ratio": 1.1, "slippery": False}),
    (snow.slope_factor, {"slope_rad": 0.7, "full_to_rad": 0.52, "none_from_rad": 1.22}),
    (snow.sloped_roof_snow, {"flat_pa": 1000.0, "slope_ratio": 0.9}),
    (snow.least_snow, GROUND | SLOPE | {"ceiling_pa": 957.6, "below_rad": 0.26}),
    (snow.unbalanced_counts, SLOPE | {"least_rad": 0.04, "most_rad": 0.53}),
    (
        snow.unbalanced_snow,
        GROUND | {"sloped_pa": 900.0, "eave_to_ridge_m": 4.0, "narrow_to_m": 6.1, "simple_rafters": True},
    ),
    (snow.ridge_drift_surcharge, {"drift_height_m": 0.5, "density_n_m3": 2700.0, "pitch_ratio": 0.5}),
    (snow.ridge_drift_extent, {"drift_height_m": 0.5, "pitch_ratio": 0.5}),
    (
        snow.rain_on_snow,
        {"ground_pa": 700.0, "eave_to_ridge_m": 8.0, "surcharge_pa": 239.4, "ground_limit_pa": 957.6} | SLOPE,
    ),
    (snow_drift.snow_density, {"ground_pa": 1400.0}),
    (snow_drift.snow_depth, {"snow_pa": 900.0, "density_n_m3": 2700.0}),
    (snow_drift.drift_height, {"ground_pa": 1400.0, "fetch_m": 9.0, "least_fetch_m": 7.62, "share_ratio": 0.75}),
    (snow_drift.drift_counts, {"clear_height_m": 2.0, "balanced_depth_m": 0.3, "least_ratio": 0.2}),
    (snow_drift.drift_height_limited, {"drift_height_m": 0.6, "clear_height_m": 2.0}),
    (snow_drift.drift_width, {"drift_height_m": 0.6, "clear_height_m": 2.0}),
    (snow_drift.drift_surcharge, {"drift_height_m": 0.6, "density_n_m3": 2700.0}),
    (snow_drift.drift_at, PEAK | {"distance_m": 1.0}),
    (snow_drift.drift_mean, PEAK | {"length_m": 4.0}),
    (snow_drift.sliding_snow, {"flat_pa": 900.0, "eave_to_ridge_m": 4.0, "share_ratio": 0.4, "spread_m": 4.57}),
    (snow_drift.sliding_line_load, {"sliding_pa": 315.0, "lower_roof_m": 2.0, "spread_m": 4.57}),
    (
        snow_canada.housing_snow,
        {"ground_pa": 2500.0, "rain_pa": 400.0, "basic_ratio": 0.55, "least_pa": 1000.0},
    ),
    (snow_canada.characteristic_length, {"smaller_m": 8.0, "larger_m": 12.0}),
    (snow_canada.basic_snow_factor, {"characteristic_length_m": 90.0, "wind_ratio": 1.0}),
    (
        snow_canada.specified_snow,
        {
            "ground_pa": 2500.0,
            "rain_pa": 400.0,
            "basic_ratio": 0.8,
            "wind_ratio": 1.0,
            "slope_ratio": 0.9,
            "accumulation_ratio": 1.0,
            "importance_ratio": 1.0,
        },
    ),
    (
        snow_canada.spacing_for_load,
        {
            "table_spacing_m": 0.6,
            "table_load_pa": 2500.0,
            "load_pa": 3500.0,
            "standard_spacings_m": [0.3, 0.4, 0.6],
        },
    ),
    (live.area_reduction, {"area_m2": 24.0}),
    (live.pitch_reduction, {"pitch_ratio": 0.7}),
    (live.roof_live_load, {"live_pa": 957.6, "area_ratio": 0.9, "pitch_ratio": 0.8, "least_pa": 574.6}),
    (live.load_over_footprint, {"weight_n": 5000.0, "area_m2": 1.5}),
    (live.load_of_footprint, {"load_pa": 2400.0, "area_m2": 1.5}),
    (live.load_each_member, {"weight_n": 5000.0, "member_count": 3}),
    (live.line_load_each_member, {"weight_n": 5000.0, "member_count": 3, "length_m": 1.5}),
    (
        weights.build_up_load,
        {"thicknesses_m": [0.0127, 0.019], "densities_kg_m3": [800.0, 500.0], "product_loads_pa": [120.0]},
    ),
    (weights.members_load, {"width_m": 0.038, "depth_m": 0.235, "spacing_m": 0.4, "density_kg_m3": 500.0}),
    (weights.mass_load, {"mass_kg": 25.0, "area_m2": 10.0}),
    (weights.load_on_plan, {"slope_load_pa": 700.0, "pitch_ratio": 0.75}),
    (weights.area_weighted_load, {"loads_pa": [1250.0, 450.0], "areas_m2": [25.0, 375.0]}),
    (take_down.loaded_width, {"left_span_m": 3.6, "right_span_m": 4.0, "overhang_m": 0.3}),
    (take_down.area_line_load, {"width_m": 3.6, "pressures_pa": {"dead": 500.0, "live": 1900.0}}),
    (take_down.wall_line_load, {"height_m": 2.4, "wall_pa": 500.0}),
    (
        take_down.own_line_load,
        {
            "widths_m": [3.6, 2.0],
            "pressures_pa": [{"dead": 500.0, "live": 1900.0}, {"dead": 700.0, "snow": 1500.0}],
            "wall_heights_m": [2.4],
            "walls_pa": [500.0],
        },
    ),
    (take_down.loads_together, {"loads_n_m": [{"dead": 500.0}, {"dead": 700.0, "snow": 1500.0}]}),
    (take_down.beam_end_loads, LOADS | {"length_m": 5.0}),
    (take_down.even_line_load, {"loads_n": {"dead": 3000.0}, "length_m": 2.0}),
    (take_down.combined_load, LOADS | {"factors_ratio": {"dead": 1.0, "snow": 0.75}}),
    (take_down.governing_load, LOADS | {"combinations_ratio": [{"dead": 1.0}, {"dead": 1.0, "snow": 1.0}]}),
    (take_down.share_added, {"before_n_m": 9000.0, "after_n_m": 9900.0}),
    (lateral.wind_force, {"pressures_pa": [800.0, -400.0], "areas_m2": [30.0, 10.0]}),
    (
        lateral.wind_force_on_line,
        {"pressure_pa": 800.0, "height_m": 3.0, "left_distance_m": 6.0, "right_distance_m": 4.0},
    ),
    (
        lateral.braced_length,
        {"panel_lengths_m": [1.0, 1.4], "full_from_m": 1.2, "credits_m": [[0.9, 0.7], [1.05, 0.9]]},
    ),
    (lateral.braced_length_for_force, {"force_n": 9000.0, "resistance_n_m": 3280.0}),
    (lateral.unit_shear, {"force_n": 9000.0, "length_m": 3.0}),
    (lateral.overturning_moment, {"shear_n_m": 3000.0, "length_m": 1.2, "height_m": 2.4}),
    (
        lateral.resisting_moment,
        {"dead_n_m": 2000.0, "length_m": 1.2, "counted_ratio": 0.6, "far_end_n": 500.0},
    ),
    (
        lateral.end_uplift,
        {"overturning_nm": 8640.0, "resisting_nm": 1200.0, "lever_m": 1.1, "above_n": -300.0},
    ),
    (geometry.pitch_angle, {"pitch_ratio": 0.75}),
    (geometry.pitch_of_angle, {"angle_rad": 0.6}),
    (geometry.pitch_of_rise, {"rise_m": 2.0, "run_m": 4.0}),
    (geometry.ridge_height, RIDGE),
    (
        geometry.run_for_ridge_height,
        {"ridge_height_m": 2.15, "pitch_ratio": 0.5, "heel_height_m": 0.15},
    ),
    (geometry.pitch_for_ridge_height, {"ridge_height_m": 2.15, "run_m": 4.0, "heel_height_m": 0.15}),
    (geometry.plate_height_for_ridge, RIDGE | {"ridge_over_floor_m": 4.0}),
    (geometry.rafter_length, {"run_m": 4.0, "pitch_ratio": 0.5, "overhang_m": 0.4}),
    (geometry.plumb_cut, {"depth_m": 0.184, "pitch_ratio": 0.5}),
    (geometry.ridge_board_margin, {"board_depth_m": 0.235, "rafter_depth_m": 0.184, "pitch_ratio": 0.5}),
    (geometry.birdsmouth_plumb_depth, {"seat_m": 0.089, "pitch_ratio": 0.5}),
    (geometry.birdsmouth_depth, {"seat_m": 0.089, "pitch_ratio": 0.5}),
    (geometry.depth_left_at_birdsmouth, BIRDSMOUTH),
    (geometry.longest_seat, {"depth_m": 0.184, "pitch_ratio": 0.75, "share_ratio": 0.25}),
    (geometry.heel_height, BIRDSMOUTH),
    (geometry.tie_height_share, {"tie_height_m": 0.6, "ridge_height_m": 2.0}),
    (geometry.tie_height_of_share, {"share_ratio": 0.3, "ridge_height_m": 2.0}),
    (geometry.tie_length, {"span_m": 8.0, "share_ratio": 0.3}),
    (meeting.unequal_ridge_run, FACING),
    (meeting.unequal_ridge_height, FACING),
    (meeting.ridge_shift, {"span_m": 7.0, "ridge_run_m": 2.0}),
    (meeting.shed_dormer_run, SHED),
    (meeting.shed_dormer_top_height, SHED),
    (meeting.gable_dormer_ridge_run, {"ridge_height_m": 3.0, "main_height_m": 1.0, "main_pitch_ratio": 0.75}),
    (meeting.valley_length, {"half_width_m": 1.0, "dormer_pitch_ratio": 1.0, "main_pitch_ratio": 0.75}),
    (
        meeting.headroom_gained,
        {"distance_m": 1.2, "plate_raised_m": 0.9, "old_pitch_ratio": 0.75, "new_pitch_ratio": 0.3},
    ),
    (thrust.rafter_line_load, {"load_pa": 2000.0, "spacing_m": 0.6}),
    (thrust.plate_reaction, RAFTER),
    (thrust.plate_thrust, RAFTER | {"pitch_ratio": 0.5}),
    (
        thrust.unequal_thrust,
        {
            "left_load_n_m": 1200.0,
            "right_load_n_m": 800.0,
            "left_run_m": 2.0,
            "right_run_m": 5.0,
            "left_pitch_ratio": 1.0,
            "right_pitch_ratio": 0.4,
        },
    ),
    (thrust.unequal_plate_reaction, LEANING),
    (thrust.ridge_transfer, LEANING),
    (thrust.tie_force, {"thrust_n": 4000.0, "tie_height_ratio": 0.3}),
    (thrust.nails_needed, {"force_n": 4000.0, "nail_n": 700.0, "least_count": 3}),
    (thrust.nails_raised, {"nail_count": 11, "factor_ratio": 1.5}),
    (thrust.ridge_beam_reaction, RAFTER),
    (thrust.plate_reaction_beside_beam, RAFTER),
    (
        thrust.ridge_beam_line_load,
        {"left_pa": 1500.0, "right_pa": 900.0, "left_run_m": 3.0, "right_run_m": 4.0},
    ),
    (
        thrust.uplift_at_plate,
        {
            "wind_pa": 950.0,
            "dead_pa": 480.0,
            "counted_ratio": 0.6,
            "spacing_m": 0.6,
            "plate_length_m": 4.3,
        },
    ),
    (footing.own_pressure, {"thicknesses_m": [0.15, 1.0], "weights_n_m3": [23600.0, 18000.0]}),
    (footing.soil_pressure, {"load_n_m": 30000.0, "width_m": 0.4, "own_pa": 3600.0}),
    (footing.width_needed, STRIP),
    (footing.load_allowed, {"width_m": 0.4, "soil_pa": 75000.0, "own_pa": 3600.0}),
    (footing.pad_pressure, {"load_n": 40000.0, "area_m2": 0.6, "own_pa": 3600.0}),
    (footing.pad_area_needed, {"load_n": 40000.0, "soil_pa": 75000.0, "own_pa": 3600.0}),
    (footing.square_side, {"area_m2": 0.6}),
    (footing.width_stepped, {"width_m": 0.41, "step_m": 0.0254, "least_m": 0.3048}),
    (
        footing.width_for_house,
        {
            "table_width_m": 0.48,
            "house_width_m": 11.0,
            "basis_width_m": 9.7536,
            "per_m": 0.6096,
            "change_m": 0.0508,
            "least_m": 0.3048,
        },
    ),
    (
        footing.size_for_supported_lengths,
        {
            "table_size_m": 0.35,
            "supported_lengths_m": [5.6, 6.0],
            "storey_count": 2,
            "basis_length_m": 4.9,
        },
    ),
    (footing.projection, {"footing_width_m": 0.5, "wall_m": 0.2}),
    (footing.projection_fits, {"projection_m": 0.15, "thickness_m": 0.15, "least_m": 0.05, "most_ratio": 1.0}),
    (footing.thickness_needed, {"projection_m": 0.15, "most_ratio": 1.0, "least_m": 0.15}),
    (footing.frost_margin, {"bottom_depth_m": 1.0, "frost_depth_m": 1.2}),
    (soil.influence_depth, {"distance_m": 1.0, "fall_ratio": 1.0}),
    (soil.reaches_under_footing, {"depth_below_m": 0.5, "distance_m": 1.0, "fall_ratio": 1.0}),
    (soil.distance_needed, {"depth_below_m": 0.5, "fall_ratio": 1.0}),
    (soil.unbalanced_backfill, {"grade_m": 0.5, "floor_m": -1.5}),
    (soil.soil_force, WALL),
    (soil.soil_moment_at_foot, WALL),
    (soil.soil_reaction_at_top, WALL | {"wall_height_m": 2.4}),
    (soil.soil_moment_held, WALL | {"wall_height_m": 2.4}),
    (gravity.layer_load, {"thickness_m": 0.1, "density_kg_m3": 2400.0}),
]
# arguments of which either sign is legal
SIGNED = {
    *("pressures_pa", "loads_n_m", "loads_n", "above_n", "left_height_m", "right_height_m", "dormer_height_m"),
    *("main_height_m", "plate_raised_m", "projection_m", "depth_below_m", "grade_m", "floor_m"),
}


def planted(value: Any, wrong: float) -> Any:
    """The value with its last number replaced; None where it has no number."""
    if isinstance(value, bool):
        return None
    if isinstance(value, float):
        return wrong
    if isinstance(value, list):
        return [*value[:-1], planted(value[-1], wrong)]
    if isinstance(value, dict):
        return value | {list(value)[-1]: wrong}
    return None


def cases(wrong: float, skipped: set[str]) -> list[Any]:
    """Each legal call with one number replaced."""
    return [
        pytest.param(function, legal | {name: planted(value, wrong)}, id=f"{function.__name__}-{name}")
        for function, legal in LEGAL
        for name, value in legal.items()
        if name not in skipped and planted(value, wrong) is not None
    ]


def test_every_function_is_here() -> None:
    """No function of the modules goes without a legal call, and every legal call passes."""
    functions = {
        function
        for module in MODULES
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    }
    assert functions <= {function for function, _ in LEGAL}
    for function, legal in LEGAL:
        function(**legal)


@pytest.mark.parametrize(("function", "call"), cases(math.nan, set()))
def test_nan_is_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """A number that is none is refused wherever it comes in."""
    with pytest.raises(OutOfRange):
        function(**call)


@pytest.mark.parametrize(("function", "call"), cases(math.inf, set()))
def test_infinity_is_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Nothing is infinite."""
    with pytest.raises(OutOfRange):
        function(**call)


@pytest.mark.parametrize(("function", "call"), cases(-0.01, SIGNED))
def test_negative_sizes_are_refused(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Lengths, loads and factors have no negative values unless they say so."""
    with pytest.raises(OutOfRange):
        function(**call)


@pytest.mark.parametrize(
    ("function", "call"),
    [
        pytest.param(function, legal | {name: wrong}, id=f"{function.__name__}-{name}-{wrong}")
        for function, legal in LEGAL
        for name in legal
        if name.endswith("_count")
        for wrong in (0, -1, 1.5, True)
    ],
)
def test_counts_are_whole(function: Callable[..., Any], call: dict[str, Any]) -> None:
    """Members, nails and storeys are whole numbers from one on."""
    with pytest.raises(OutOfRange):
        function(**call)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: geometry.heel_height(0.184, 0.4, 0.75),
            "seat_m is 0.4: it must be under 0.306666666667",
        ),
        (
            lambda: geometry.plate_height_for_ridge(2.0, 4.0, 0.5, 0.1),
            "ridge_over_floor_m is 2: it must be at least 2.1, the roof's own height",
        ),
        (
            lambda: geometry.run_for_ridge_height(0.1, 0.5, 0.1),
            "ridge_height_m is 0.1: it must be over the heel height, 0.1",
        ),
        (
            lambda: meeting.shed_dormer_run(2.0, 0.75, 1.0, 0.75),
            "dormer_pitch_ratio is 0.75: it must be under the main pitch, 0.75",
        ),
        (lambda: thrust.tie_force(1000.0, 1.0), "tie_height_ratio is 1: it must be from 0 to under 1"),
        (
            lambda: footing.width_needed(30000.0, 3000.0, 3600.0),
            "soil_pa is 3000: it must be over the footing's own weight, 3600",
        ),
        (
            lambda: lateral.braced_length([1.0], 1.2, [[0.9, 0.7], [0.8, 0.6]]),
            "credits_m, a length, is 0.8: it must be over the length before it, 0.9",
        ),
        (
            lambda: snow_canada.spacing_for_load(0.6, 2500.0, 9000.0, [0.3, 0.4]),
            "least of standard_spacings_m is 0.3: it must be at most 0.166666666667",
        ),
        (
            lambda: take_down.own_line_load([3.0], []),
            "length of widths_m is 1: it must be that of pressures, 0",
        ),
        (
            lambda: take_down.governing_load({"dead": 1.0}, []),
            "combinations_ratio is []: it must be one combination or more",
        ),
        (
            lambda: weights.members_load(0.5, 0.2, 0.4, 500.0),
            "width_m is 0.5: it must be at most the spacing, 0.4",
        ),
    ],
)
def test_message(call: Callable[[], object], message: str) -> None:
    """The message gives name, value and the legal range."""
    with pytest.raises(OutOfRange) as refusal:
        call()
    assert str(refusal.value) == message
