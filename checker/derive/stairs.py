"""Facts of stairs, winders, handrails and guards that follow from the plan."""

from __future__ import annotations

import math

from checker.calc import guard, headroom, stair, winder
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension


@derives(
    "stair.total_rise",
    Dimension.LENGTH,
    "finished floor to finished floor",
    by=stair.total_rise,
    needs={"floor_to_floor_m": "from_level.floor_to_floor"},
)
def _stair_total_rise(floor_to_floor_m: float) -> float:
    return stair.total_rise([floor_to_floor_m])


@derives(
    "flight.total_rise",
    Dimension.LENGTH,
    "rise of the flight: that of the stair, if it has no other flight",
    by=stair.total_rise,
    needs={"stair_rise_m": "stair.total_rise", "flights": "stair.flights[].status"},
)
def _flight_total_rise(stair_rise_m: float, flights: list[str]) -> float | None:
    return stair.total_rise([stair_rise_m]) if len(flights) == 1 else None


@derives(
    "flight.riser_height",
    Dimension.LENGTH,
    "height of each riser: the total rise shared equally",
    by=stair.riser_height,
    needs={"total_rise_m": "total_rise", "riser_count": "risers"},
    agrees_within=0.0016,
)
def _riser_height(total_rise_m: float, riser_count: float) -> float:
    return stair.riser_height(total_rise_m, int(riser_count))


@derives(
    "flight.going",
    Dimension.LENGTH,
    "depth of each tread: the run shared equally",
    by=stair.going_for_run,
    needs={"total_going_m": "run", "riser_count": "risers"},
)
def _going(total_going_m: float, riser_count: float) -> float | None:
    return stair.going_for_run(total_going_m, int(riser_count)) if riser_count > 1 else None


@derives(
    "flight.total_going",
    Dimension.LENGTH,
    "length of the flight on plan, first riser to last",
    by=stair.total_going_equal,
    needs={"going_m": "going", "riser_count": "risers"},
)
def _total_going(going_m: float, riser_count: float) -> float:
    return stair.total_going_equal(going_m, int(riser_count))


def _some_only(sizes_m: tuple[float, ...], count: float | None) -> bool:
    """Whether only some of the steps were measured: then nothing can be said of all."""
    return count is not None and len(sizes_m) != int(count)


@derives(
    "flight.largest_riser",
    Dimension.LENGTH,
    "largest riser of those measured",
    by=max,
    needs={"risers_m": "measured_risers?", "riser_count": "risers?"},
)
def _largest_riser(risers_m: tuple[float, ...] | None, riser_count: float | None) -> float | Lacks:
    return lacks("risers_m") if risers_m is None or _some_only(risers_m, riser_count) else max(risers_m)


@derives(
    "flight.smallest_going",
    Dimension.LENGTH,
    "smallest going of those measured",
    by=min,
    needs={"goings_m": "measured_goings?", "riser_count": "risers?"},
)
def _smallest_going(goings_m: tuple[float, ...] | None, riser_count: float | None) -> float | Lacks:
    treads = None if riser_count is None else riser_count - 1
    return lacks("goings_m") if goings_m is None or _some_only(goings_m, treads) else min(goings_m)


@derives(
    "flight.riser_variation",
    Dimension.LENGTH,
    "largest riser less the smallest, of those measured",
    by=stair.variation_in_flight,
    needs={"sizes_m": "measured_risers?", "riser_count": "risers?"},
)
def _riser_variation(sizes_m: tuple[float, ...] | None, riser_count: float | None) -> float | Lacks:
    if sizes_m is None or _some_only(sizes_m, riser_count):
        return lacks("sizes_m")
    return stair.variation_in_flight(sizes_m)


@derives(
    "flight.going_variation",
    Dimension.LENGTH,
    "largest going less the smallest, of those measured",
    by=stair.variation_in_flight,
    needs={"sizes_m": "measured_goings?", "riser_count": "risers?"},
)
def _going_variation(sizes_m: tuple[float, ...] | None, riser_count: float | None) -> float | Lacks:
    treads = None if riser_count is None else riser_count - 1
    if sizes_m is None or _some_only(sizes_m, treads):
        return lacks("sizes_m")
    return stair.variation_in_flight(sizes_m)


@derives(
    "flight.pitch",
    Dimension.ANGLE,
    "pitch of the flight against the level",
    by=stair.pitch_angle,
    needs={"riser_height_m": "riser_height", "going_m": "going"},
)
def _pitch(riser_height_m: float, going_m: float) -> float:
    return math.degrees(stair.pitch_angle(riser_height_m, going_m))


@derives(
    "flight.step_length",
    Dimension.LENGTH,
    "two risers and a going: the length of a step",
    by=stair.step_length,
    needs={"riser_height_m": "riser_height", "going_m": "going"},
)
def _step_length(riser_height_m: float, going_m: float) -> float:
    return stair.step_length(riser_height_m, going_m)


@derives(
    "flight.stringer_length",
    Dimension.LENGTH,
    "length of the line of nosings, for the stock that the stringers are cut from",
    by=stair.stringer_length,
    needs={"total_rise_m": "total_rise", "total_going_m": "total_going"},
)
def _stringer_length(total_rise_m: float, total_going_m: float) -> float:
    return stair.stringer_length(total_rise_m, total_going_m)


@derives(
    "flight.floor_depth_above",
    Dimension.LENGTH,
    "depth of the floor that bounds the opening: that of the level which the stair leads to",
    by=max,
    needs={"floor_thickness_m": "stair.to_level.floor_thickness"},
)
def _floor_depth_above(floor_thickness_m: float) -> float:
    return floor_thickness_m


@derives(
    "flight.headroom",
    Dimension.LENGTH,
    "headroom under the edge of the floor opening",
    by=headroom.headroom_under_header,
    needs={
        "opening_length_m": "well_length",
        "floor_depth_m": "floor_depth_above",
        "riser_height_m": "riser_height",
        "going_m": "going",
        "total_rise_m": "total_rise",
    },
    agrees_within=0.0127,
)
def _headroom(
    opening_length_m: float, floor_depth_m: float, riser_height_m: float, going_m: float, total_rise_m: float
) -> float | None:
    height = headroom.headroom_under_header(opening_length_m, floor_depth_m, riser_height_m, going_m, total_rise_m)
    return max(height, 0.0)


@derives(
    "flight.width_at_handrails",
    Dimension.LENGTH,
    "clear width at and below the handrails",
    by=stair.clear_width_at_handrails,
    needs={"wall_to_wall_m": "width", "projections_m": "handrails[].projection"},
)
def _width_at_handrails(wall_to_wall_m: float, projections_m: list[float]) -> float | None:
    if len(projections_m) > 2:
        return None
    left, right = [*projections_m, 0.0, 0.0][:2]
    return stair.clear_width_at_handrails(wall_to_wall_m, left, right)


@derives(
    "winders.going_at_walkline",
    Dimension.LENGTH,
    "going of the winders along the walkline",
    by=winder.winder_going_at,
    needs={
        "turn_deg": "turn_angle",
        "winder_count": "count",
        "narrow_end_radius_m": "narrow_side_radius",
        "narrow_side_distance_m": "walkline_offset",
    },
)
def _going_at_walkline(
    turn_deg: float, winder_count: float, narrow_end_radius_m: float, narrow_side_distance_m: float
) -> float:
    angle = winder.winder_angle(math.radians(turn_deg), int(winder_count))
    return winder.winder_going_at(angle, narrow_end_radius_m, narrow_side_distance_m)


@derives(
    "winders.smallest_going",
    Dimension.LENGTH,
    "going of the winders at the narrow side",
    by=winder.winder_going_at,
    needs={"turn_deg": "turn_angle", "winder_count": "count", "narrow_end_radius_m": "narrow_side_radius"},
)
def _winders_smallest_going(turn_deg: float, winder_count: float, narrow_end_radius_m: float) -> float:
    angle = winder.winder_angle(math.radians(turn_deg), int(winder_count))
    return winder.winder_going_at(angle, narrow_end_radius_m, 0.0)


@derives(
    "guard.largest_opening",
    Dimension.LENGTH,
    "largest sphere that passes through the guard: none through a solid wall",
    by=float,
    needs={"infill": "infill"},
)
def _largest_opening(infill: str) -> float | None:
    return 0.0 if infill == "solid wall" else None


@derives(
    "guard.triangle_opening",
    Dimension.LENGTH,
    "largest sphere that passes the triangle of riser, tread and bottom rail: none beside a solid wall",
    by=guard.largest_sphere_in_triangle,
    needs={
        "infill": "infill?",
        "riser_height_m": "edge.beside.riser_height?",
        "going_m": "edge.beside.going?",
        "rail_gap_m": "bottom_rail_gap?",
    },
)
def _triangle_opening(infill: str | None, **sizes_m: float | None) -> float | Lacks:
    if infill == "solid wall":
        return 0.0
    numbers = {name: size for name, size in sizes_m.items() if size is not None}
    if len(numbers) < len(sizes_m):
        return lacks(*(name for name in sizes_m if name not in numbers))
    return guard.largest_sphere_in_triangle(**numbers)


@derives(
    "stair.risers",
    Dimension.COUNT,
    "risers of all its flights",
    by=sum,
    needs={"risers": "flights[].risers"},
)
def _stair_risers(risers: list[float]) -> float | None:
    return sum(risers) if risers else None


@derives(
    "stair.widest_flight",
    Dimension.LENGTH,
    "clear width of its widest flight",
    by=max,
    needs={"widths_m": "flights[].width"},
)
def _widest_flight(widths_m: list[float]) -> float | None:
    return max(widths_m) if widths_m else None


@derives(
    "stair.steep_device",
    "flag",
    "whether it is a ladder-like device rather than a stair",
    by=bool,
    needs={"type": "type"},
)
def _steep_device(type: str) -> bool:  # noqa: A002 - the plan's own word
    return type in ("alternating tread", "ship ladder", "pull-down")


@derives(
    "open-edge.along",
    ("stair", "floor", "landing", "porch or deck", "ramp"),
    "what the edge is an edge of: a stair, if a flight lists it among its open sides",
    by=str,
    needs={"flight_status": "beside.status"},
)
def _along(flight_status: str) -> str:
    return "stair" if flight_status else ""
