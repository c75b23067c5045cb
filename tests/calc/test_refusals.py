"""What every function of the house-geometry modules refuses, and how it says so."""

from __future__ import annotations

import math
import pickle
from collections.abc import Callable
from typing import Any

import pytest

from checker.calc import boundary, ceiling, dormer, guard, headroom, opening, stair, winder
from checker.calc.errors import OutOfRange

# one legal call of each function
LEGAL: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (stair.riser_height, {"total_rise_m": 2.7, "riser_count": 15}),
    (stair.tread_count, {"riser_count": 15}),
    (stair.riser_count_least, {"total_rise_m": 2.7, "riser_limit_m": 0.19}),
    (stair.riser_count_most, {"total_going_m": 3.5, "going_limit_m": 0.25}),
    (stair.riser_count_by_trial, {"total_rise_m": 2.7, "trial_riser_m": 0.18, "rounding": "up"}),
    (stair.going_for_run, {"total_going_m": 3.5, "riser_count": 15}),
    (stair.total_going_equal, {"going_m": 0.25, "riser_count": 15}),
    (stair.pitch_angle, {"riser_height_m": 0.18, "going_m": 0.25}),
    (stair.nosing_line_length, {"riser_height_m": 0.18, "going_m": 0.25, "riser_count": 15}),
    (stair.stringer_length, {"total_rise_m": 2.7, "total_going_m": 3.5}),
    (stair.step_length, {"riser_height_m": 0.18, "going_m": 0.25}),
    (stair.riser_plus_going, {"riser_height_m": 0.18, "going_m": 0.25}),
    (stair.riser_times_going, {"riser_height_m": 0.18, "going_m": 0.25}),
    (stair.going_from_step_length, {"riser_height_m": 0.18, "step_length_m": 0.63}),
    (stair.riser_from_step_length, {"going_m": 0.25, "step_length_m": 0.63}),
    (stair.going_from_product, {"riser_height_m": 0.18, "product_m2": 0.045}),
    (
        stair.clear_width_at_handrails,
        {"wall_to_wall_m": 0.9, "left_projection_m": 0.1, "right_projection_m": 0.05},
    ),
    (
        headroom.headroom_under_header,
        {
            "opening_length_m": 3.0,
            "floor_depth_m": 0.3,
            "riser_height_m": 0.18,
            "going_m": 0.25,
            "total_rise_m": 2.7,
        },
    ),
    (
        headroom.opening_length,
        {
            "headroom_m": 2.0,
            "floor_depth_m": 0.3,
            "riser_height_m": 0.18,
            "going_m": 0.25,
            "total_rise_m": 2.7,
            "nosing_allowance_m": 0.025,
            "riser_board_allowance_m": 0.02,
        },
    ),
    (
        headroom.headroom_by_risers,
        {"ceiling_height_m": 2.4, "riser_count_below_header": 2, "riser_height_m": 0.18},
    ),
    (
        headroom.headroom_under_slope_at,
        {
            "distance_m": 1.0,
            "top_ceiling_height_m": 2.0,
            "ceiling_slope_ratio": -0.5,
            "riser_height_m": 0.18,
            "going_m": 0.25,
            "riser_count": 15,
        },
    ),
    (
        headroom.headroom_under_slope_least,
        {
            "top_ceiling_height_m": 2.0,
            "ceiling_slope_ratio": -0.5,
            "riser_height_m": 0.18,
            "going_m": 0.25,
            "riser_count": 15,
        },
    ),
    (winder.walkline_radius, {"narrow_end_radius_m": 0.1, "walkline_offset_m": 0.3}),
    (winder.walkline_length, {"straight_going_m": 2.0, "turn_rad": 1.5, "walkline_radius_m": 0.4}),
    (winder.winder_angle, {"turn_rad": 1.5, "winder_count": 3}),
    (winder.winder_going, {"angle_rad": 0.5, "walkline_radius_m": 0.4}),
    (
        winder.winder_going_at,
        {"angle_rad": 0.5, "narrow_end_radius_m": 0.1, "narrow_side_distance_m": 0.3},
    ),
    (winder.winder_going_chord, {"angle_rad": 0.5, "walkline_radius_m": 0.4}),
    (guard.largest_sphere_in_triangle, {"riser_height_m": 0.18, "going_m": 0.25, "rail_gap_m": 0.02}),
    (guard.rail_gap_for_sphere, {"sphere_diameter_m": 0.15, "riser_height_m": 0.18, "going_m": 0.25}),
    (guard.open_riser_gap, {"riser_height_m": 0.18, "tread_thickness_m": 0.04}),
    (guard.baluster_gap, {"clear_length_m": 1.5, "baluster_width_m": 0.04, "baluster_count": 11}),
    (guard.baluster_count_least, {"clear_length_m": 1.5, "baluster_width_m": 0.04, "gap_limit_m": 0.1}),
    (
        ceiling.height_at,
        {"distance_m": 1.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8, "flat_height_m": 2.4},
    ),
    (ceiling.distance_to_height, {"height_m": 2.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8}),
    (ceiling.ridge_height, {"room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8}),
    (
        ceiling.width_at_height_one_slope,
        {"height_m": 2.0, "room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (
        ceiling.width_at_height_two_slope,
        {"height_m": 2.0, "room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (
        ceiling.area_at_height_one_slope,
        {
            "height_m": 2.0,
            "room_width_m": 4.0,
            "room_length_m": 5.0,
            "knee_wall_height_m": 1.2,
            "pitch_ratio": 0.8,
        },
    ),
    (
        ceiling.area_at_height_two_slope,
        {
            "height_m": 2.0,
            "room_width_m": 4.0,
            "room_length_m": 5.0,
            "knee_wall_height_m": 1.2,
            "pitch_ratio": 0.8,
            "flat_height_m": 2.4,
        },
    ),
    (ceiling.area_share, {"part_area_m2": 3.0, "whole_area_m2": 6.5}),
    (
        ceiling.average_height_one_slope,
        {"room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (
        ceiling.average_height_two_slope,
        {"room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (ceiling.volume, {"average_height_m": 2.0, "room_width_m": 4.0, "room_length_m": 5.0}),
    (
        ceiling.flat_height_for_width_one_slope,
        {"flat_width_m": 1.0, "room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (
        ceiling.flat_height_for_width_two_slope,
        {"flat_width_m": 1.0, "room_width_m": 4.0, "knee_wall_height_m": 1.2, "pitch_ratio": 0.8},
    ),
    (
        ceiling.pitch_for_width_one_slope,
        {"wanted_width_m": 1.0, "height_m": 2.1, "room_width_m": 4.0, "knee_wall_height_m": 1.2},
    ),
    (
        ceiling.pitch_for_width_two_slope,
        {"wanted_width_m": 1.0, "height_m": 2.1, "room_width_m": 4.0, "knee_wall_height_m": 1.2},
    ),
    (
        dormer.width_at_height_shed_dormer,
        {
            "height_m": 2.0,
            "room_width_m": 4.0,
            "knee_wall_height_m": 1.2,
            "pitch_ratio": 0.8,
            "dormer_wall_height_m": 2.1,
            "dormer_pitch_ratio": 0.2,
            "flat_height_m": 2.4,
        },
    ),
    (
        dormer.area_at_height_shed_dormer,
        {
            "height_m": 2.0,
            "room_width_m": 4.0,
            "dormer_length_m": 3.0,
            "knee_wall_height_m": 1.2,
            "pitch_ratio": 0.8,
            "dormer_wall_height_m": 2.1,
            "dormer_pitch_ratio": 0.2,
        },
    ),
    (
        dormer.average_height_shed_dormer,
        {
            "room_width_m": 4.0,
            "knee_wall_height_m": 1.2,
            "pitch_ratio": 0.8,
            "dormer_wall_height_m": 2.1,
            "dormer_pitch_ratio": 0.2,
            "flat_height_m": 2.4,
        },
    ),
    (opening.hung_clear_width, {"unit_width_m": 0.9, "frame_deduction_m": 0.1}),
    (
        opening.hung_clear_height,
        {
            "unit_height_m": 1.5,
            "frame_deduction_m": 0.1,
            "sash_deduction_m": 0.04,
            "lower_sash_share_ratio": 0.5,
        },
    ),
    (
        opening.hung_unit_height,
        {"clear_height_m": 0.6, "frame_deduction_m": 0.1, "sash_deduction_m": 0.04},
    ),
    (
        opening.slider_clear_width,
        {
            "unit_width_m": 1.5,
            "frame_deduction_m": 0.1,
            "sash_deduction_m": 0.04,
            "moving_sash_share_ratio": 0.5,
        },
    ),
    (
        opening.slider_unit_width,
        {"clear_width_m": 0.6, "frame_deduction_m": 0.1, "sash_deduction_m": 0.04},
    ),
    (
        opening.side_hung_clear_width,
        {"unit_width_m": 0.7, "frame_deduction_m": 0.1, "sash_deduction_m": 0.04, "hinge_throw_m": 0.5},
    ),
    (
        opening.projecting_clear_height,
        {
            "unit_height_m": 0.9,
            "frame_deduction_m": 0.1,
            "sash_deduction_m": 0.02,
            "opening_angle_rad": 0.8,
        },
    ),
    (opening.swing_clear_depth, {"sash_depth_m": 0.6, "opening_angle_rad": 0.8}),
    (opening.swing_free_area, {"hinge_length_m": 1.2, "sash_depth_m": 0.6, "opening_angle_rad": 0.8}),
    (opening.clear_area, {"clear_width_m": 0.6, "clear_height_m": 0.9}),
    (
        opening.glazed_area,
        {"unit_width_m": 0.9, "unit_height_m": 1.5, "width_deduction_m": 0.1, "height_deduction_m": 0.2},
    ),
    (opening.width_for_area, {"area_m2": 0.53, "clear_height_m": 0.7}),
    (opening.height_for_area, {"area_m2": 0.53, "clear_width_m": 0.7}),
    (opening.floor_share, {"opening_area_m2": 1.0, "floor_area_m2": 12.0}),
    (opening.area_for_share, {"share_ratio": 0.08, "floor_area_m2": 12.0}),
    (boundary.gable_rise, {"wall_width_m": 8.0, "pitch_ratio": 0.8}),
    (boundary.gable_wall_area, {"wall_width_m": 8.0, "eaves_height_m": 5.0, "gable_rise_m": 3.0}),
    (boundary.openings_share, {"openings_area_m2": 3.0, "wall_area_m2": 40.0}),
    (boundary.openings_area_allowed, {"share_ratio": 0.25, "wall_area_m2": 40.0}),
    (boundary.height_above_grade_plane, {"top_elevation_m": 108.0, "grade_plane_elevation_m": 100.0}),
    (boundary.overhang_of_rafter_tail, {"tail_length_m": 0.5, "pitch_ratio": 0.8}),
    (boundary.eave_distance, {"wall_distance_m": 1.5, "overhang_m": 0.4}),
    (boundary.storey_share, {"upper_area_m2": 40.0, "lower_area_m2": 90.0}),
]
NUMBERS = [
    pytest.param(function, legal, name, id=f"{function.__name__}-{name}")
    for function, legal in LEGAL
    for name, value in legal.items()
    if not isinstance(value, str)
]


@pytest.mark.parametrize(("function", "legal", "name"), NUMBERS)
@pytest.mark.parametrize("broken", [math.nan, math.inf, -math.inf])
def test_nan_and_infinity_are_refused(
    function: Callable[..., Any], legal: dict[str, Any], name: str, broken: float
) -> None:
    """No function computes with a number that is none, and the message names the parameter and the value."""
    assert math.isfinite(function(**legal))
    with pytest.raises(OutOfRange) as refusal:
        function(**{**legal, name: broken})
    assert str(refusal.value).startswith(f"{name} is {broken}: it must be ")


SIGNED = {
    "ceiling_slope_ratio",
    "top_elevation_m",
    "grade_plane_elevation_m",
}


@pytest.mark.parametrize(
    ("function", "legal", "name"), [number for number in NUMBERS if number.values[2] not in SIGNED]
)
def test_negative_sizes_are_refused(function: Callable[..., Any], legal: dict[str, Any], name: str) -> None:
    """Sizes, counts, angles and shares have no negative values."""
    with pytest.raises(OutOfRange) as refusal:
        function(**{**legal, name: -legal[name]})
    assert refusal.value.name == name


LISTS: list[tuple[Callable[..., Any], tuple[list[float], ...], int]] = [
    (stair.total_rise, ([0.18, 0.18],), 0),
    (stair.total_going, ([0.25, 0.25],), 0),
    (stair.variation_in_flight, ([0.18, 0.19],), 0),
    (stair.variation_adjacent, ([0.18, 0.19],), 0),
    (boundary.average_wall_height, ([40.0, 40.0], [8.0, 8.0]), 0),
    (boundary.average_wall_height, ([40.0, 40.0], [8.0, 8.0]), 1),
    (boundary.grade_plane_elevation, ([8.0, 8.0], [0.0, 1.0], [1.0, 1.0]), 0),
    (boundary.grade_plane_elevation, ([8.0, 8.0], [0.0, 1.0], [1.0, 1.0]), 1),
    (boundary.grade_plane_elevation, ([8.0, 8.0], [0.0, 1.0], [1.0, 1.0]), 2),
]


@pytest.mark.parametrize(("function", "lists", "which"), LISTS)
@pytest.mark.parametrize("change", [[], [1.0, math.nan], [1.0, math.inf]])
def test_broken_lists_are_refused(
    function: Callable[..., Any], lists: tuple[list[float], ...], which: int, change: list[float]
) -> None:
    """An empty list, one of another length than its partner, and one with a number that is none."""
    assert math.isfinite(function(*lists))
    with pytest.raises(OutOfRange):
        function(*(change if place == which else values for place, values in enumerate(lists)))


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: stair.riser_height(0.0, 13),
            "total_rise_m is 0: it must be a finite number over 0",
        ),
        (
            lambda: stair.riser_height(2.4, 0),
            "riser_count is 0: it must be a whole number, 1 or more",
        ),
        (
            lambda: stair.going_for_run(3.0, 1),
            "riser_count is 1: it must be a whole number, 2 or more",
        ),
        (
            lambda: stair.tread_count(True),
            "riser_count is True: it must be a whole number, 1 or more",
        ),
        (
            lambda: stair.riser_count_by_trial(2.4, 0.18, "down"),  # type: ignore[arg-type]
            "rounding is 'down': it must be 'nearest' or 'up'",
        ),
        (
            lambda: stair.variation_in_flight([]),
            "sizes_m is []: it must be a list of 1 or more numbers over 0",
        ),
        (
            lambda: stair.variation_in_flight([0.18, -0.18]),
            "sizes_m, number 2, is -0.18: it must be a finite number over 0",
        ),
        (
            lambda: stair.going_from_step_length(0.2, 0.4),
            "step_length_m is 0.4: it must be over twice the riser, 0.4",
        ),
        (
            lambda: stair.riser_from_step_length(0.3, 0.3),
            "step_length_m is 0.3: it must be over the going, 0.3",
        ),
        (
            lambda: stair.clear_width_at_handrails(0.2, 0.1, 0.1),
            "wall_to_wall_m is 0.2: it must be over both projections together, 0.2",
        ),
        (
            lambda: stair.risers_after_new_finish([0.02, 0.18], 0.03, 0.0, 0.0),
            "risers_m after the new finish, number 1, is -0.01: it must be a finite number over 0",
        ),
        (
            lambda: headroom.opening_length(2.5, 0.3, 0.18, 0.25, 2.7),
            "headroom_m is 2.5: it must be at most the clear height of the storey below, 2.4",
        ),
        (
            lambda: headroom.headroom_under_header(3.0, 2.7, 0.18, 0.25, 2.7),
            "floor_depth_m is 2.7: it must be under the total rise, 2.7",
        ),
        (
            lambda: headroom.headroom_under_header(3.0, 0.3, 2.8, 0.25, 2.7),
            "riser_height_m is 2.8: it must be at most the total rise, 2.7",
        ),
        (
            lambda: headroom.headroom_under_slope_at(3.6, 2.0, 0.0, 0.18, 0.25, 15),
            "distance_m is 3.6: it must be from 0 to 3.5",
        ),
        (
            lambda: winder.winder_going(3.2, 0.3),
            "angle_rad is 3.2: it must be over 0 and at most 3.14159265359",
        ),
        (
            lambda: guard.largest_sphere_in_triangle(6.0, 8.0, 10.0),
            "rail_gap_m is 10: it must be from 0 to 9.6",
        ),
        (
            lambda: guard.rail_gap_for_sphere(12.5, 6.0, 8.0),
            "sphere_diameter_m is 12.5: it must be over 0 and at most 12",
        ),
        (
            lambda: guard.open_riser_gap(0.18, 0.18),
            "tread_thickness_m is 0.18: it must be under the riser, 0.18",
        ),
        (
            lambda: guard.baluster_gap(1.0, 0.1, 11),
            "clear_length_m is 1: it must be at least the balusters together, 1.1",
        ),
        (
            lambda: ceiling.height_at(1.0, 2.0, 0.5, 1.9),
            "flat_height_m is 1.9: it must be at least the height of the knee wall, 2",
        ),
        (
            lambda: ceiling.flat_height_for_width_one_slope(4.1, 4.0, 1.2, 0.8),
            "flat_width_m is 4.1: it must be from 0 to 4",
        ),
        (
            lambda: ceiling.pitch_for_width_one_slope(4.0, 2.1, 4.0, 1.2),
            "wanted_width_m is 4: it must be under the room's width, 4",
        ),
        (
            lambda: dormer.average_height_shed_dormer(4.0, 1.2, 0.8, 1.1, 0.0),
            "dormer_wall_height_m is 1.1: it must be from 1.2 to 2.8",
        ),
        (
            lambda: dormer.average_height_shed_dormer(4.0, 1.2, 0.8, 2.0, 0.5),
            "dormer_pitch_ratio is 0.5: it must be from 0 to 0.4",
        ),
        (
            lambda: dormer.average_height_shed_dormer(4.0, 1.2, 0.8, 2.0, 0.2, 1.9),
            "flat_height_m is 1.9: it must be at least the height of the dormer wall, 2",
        ),
        (
            lambda: opening.hung_clear_width(0.5, 0.5),
            "frame_deduction_m is 0.5: it must be from 0 to under the unit_width_m, 0.5",
        ),
        (
            lambda: opening.hung_clear_height(1.0, 0.2, 0.4),
            "sash_deduction_m is 0.4: it must be from 0 to under the height of the opened sash, 0.4",
        ),
        (
            lambda: opening.hung_clear_height(1.0, 0.2, 0.1, 1.0),
            "lower_sash_share_ratio is 1: it must be over 0 and under 1",
        ),
        (
            lambda: boundary.openings_share(41.0, 40.0),
            "openings_area_m2 is 41: it must be from 0 to 40",
        ),
        (
            lambda: boundary.average_wall_height([40.0], [8.0, 8.0]),
            "wall_areas_m2 is [40.0]: it must be one number for each of 2 wall lengths",
        ),
    ],
)
def test_message(call: Callable[[], object], message: str) -> None:
    """The message gives name, value and the legal range."""
    with pytest.raises(OutOfRange) as refusal:
        call()
    assert str(refusal.value) == message


def test_a_refusal_is_a_value_error_and_survives_a_pickle() -> None:
    """Callers may catch ValueError; name, value and range stay readable across processes."""
    refusal = OutOfRange("riser_count", 0, "a whole number, 1 or more")
    assert isinstance(refusal, ValueError)
    again = pickle.loads(pickle.dumps(refusal))
    assert (again.name, again.value, again.legal) == ("riser_count", 0, "a whole number, 1 or more")
    assert str(again) == str(refusal)
