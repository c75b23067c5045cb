"""Facts of windows and doors that follow from the plan: clear openings, glass, air."""

from __future__ import annotations

import math

from checker.calc import opening
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension


@derives(
    "window.clear_width",
    Dimension.LENGTH,
    "net clear width of the open window, from the unit's size and the maker's deductions",
    by=opening.side_hung_clear_width,
    needs={
        "type": "type",
        "unit_width_m": "width?",
        "frame_m": "frame_deduction?",
        "sash_m": "sash_deduction?",
        "hinge_throw_m": "hinge_throw?",
    },
)
def _clear_width(
    type: str,  # noqa: A002 - the plan's own word
    unit_width_m: float | None,
    frame_m: float | None,
    sash_m: float | None,
    hinge_throw_m: float | None,
) -> float | Lacks:
    if type == "fixed":
        return 0.0
    if unit_width_m is None or frame_m is None:
        return lacks("unit_width_m", "frame_m")
    if type in ("single-hung", "double-hung", "awning", "hopper"):
        return opening.hung_clear_width(unit_width_m, frame_m)
    if sash_m is None:
        return lacks("sash_m")
    if type == "slider":
        return opening.slider_clear_width(unit_width_m, frame_m, sash_m)
    return opening.side_hung_clear_width(unit_width_m, frame_m, sash_m, hinge_throw_m)


@derives(
    "window.clear_height",
    Dimension.LENGTH,
    "net clear height of the open window, from the unit's size and the maker's deductions",
    by=opening.hung_clear_height,
    needs={
        "type": "type",
        "unit_height_m": "height?",
        "frame_m": "frame_deduction?",
        "sash_m": "sash_deduction?",
        "angle_deg": "opening_angle?",
    },
)
def _clear_height(
    type: str,  # noqa: A002 - the plan's own word
    unit_height_m: float | None,
    frame_m: float | None,
    sash_m: float | None,
    angle_deg: float | None,
) -> float | Lacks:
    if type == "fixed":
        return 0.0
    if unit_height_m is None or frame_m is None:
        return lacks("unit_height_m", "frame_m")
    if type in ("casement", "slider", "tilt-turn"):
        return opening.hung_clear_width(unit_height_m, frame_m)
    if sash_m is None:
        return lacks("sash_m")
    if type in ("single-hung", "double-hung"):
        return opening.hung_clear_height(unit_height_m, frame_m, sash_m)
    if angle_deg is None:
        return lacks("angle_deg")
    return opening.projecting_clear_height(unit_height_m, frame_m, sash_m, math.radians(angle_deg))


@derives(
    "window.only_glass_replaced",
    "flag",
    "whether the frame stays: never that of a new window",
    by=bool,
    needs={"status": "status"},
)
def _only_glass(status: str) -> bool | None:
    return False if status == "new" else None


@derives(
    "window.clear_area",
    Dimension.AREA,
    "net clear area of the open window",
    by=opening.clear_area,
    needs={"clear_width_m": "clear_width", "clear_height_m": "clear_height"},
    agrees_within=0.01,
)
def _clear_area(clear_width_m: float, clear_height_m: float) -> float:
    if clear_width_m == 0.0 or clear_height_m == 0.0:
        return 0.0
    return opening.clear_area(clear_width_m, clear_height_m)


@derives(
    "window.unit_area",
    Dimension.AREA,
    "area of the whole unit in the wall",
    by=opening.clear_area,
    needs={"width_m": "width", "height_m": "height"},
)
def _unit_area(width_m: float, height_m: float) -> float:
    return opening.clear_area(width_m, height_m)


@derives(
    "window.openable_area",
    Dimension.AREA,
    "area that opens to the outdoors: the net clear opening",
    by=opening.clear_area,
    needs={"clear_area_m2": "clear_area"},
    agrees_within=1.0,
)
def _openable_area(clear_area_m2: float) -> float:
    return clear_area_m2


@derives(
    "door.unit_area",
    Dimension.AREA,
    "area of the door's opening: of the unit, or of what it leaves clear if the plan does not give the unit",
    by=opening.clear_area,
    needs={
        "width_m": "width?",
        "height_m": "height?",
        "clear_width_m": "clear_width?",
        "clear_height_m": "clear_height?",
    },
)
def _door_area(
    width_m: float | None, height_m: float | None, clear_width_m: float | None, clear_height_m: float | None
) -> float | Lacks:
    across, up = width_m or clear_width_m, height_m or clear_height_m
    if not across or not up:
        return lacks(*(name for name, size in (("width_m", across), ("height_m", up)) if not size))
    return opening.clear_area(across, up)


@derives(
    "door.daylight_area",
    Dimension.AREA,
    "area of glass to the outdoors; none in a door that leads elsewhere",
    by=sum,
    needs={"leads_to": "leads_to", "glazed": "glazed?", "glazed_area_m2": "glazed_area?"},
)
def _daylight_area(leads_to: str, glazed: bool | None, glazed_area_m2: float | None) -> float | Lacks:
    if leads_to != "outdoors" or glazed is False:
        return 0.0
    return lacks("glazed_area_m2") if glazed_area_m2 is None else glazed_area_m2


@derives(
    "door.air_area",
    Dimension.AREA,
    "area that opens to the outdoors; none in a door that leads elsewhere",
    by=sum,
    needs={"leads_to": "leads_to", "openable_area_m2": "openable_area?", "unit_area_m2": "unit_area?"},
)
def _air_area(leads_to: str, openable_area_m2: float | None, unit_area_m2: float | None) -> float | Lacks:
    if leads_to != "outdoors":
        return 0.0
    if openable_area_m2 is not None:
        return openable_area_m2
    return lacks("openable_area_m2") if unit_area_m2 is None else unit_area_m2


@derives(
    "door.exit_door",
    "flag",
    "whether it is the door by which the house is left; never one that leads elsewhere than outdoors",
    by=bool,
    needs={"leads_to": "leads_to"},
)
def _exit_door(leads_to: str) -> bool | None:
    return None if leads_to == "outdoors" else False


_CLEAR_M = 1.8288
"""Six feet: by the meaning of `stands_clear` nothing that makes glass a hazard is nearer."""


def _far_off(stands_clear: bool) -> float | None:
    return _CLEAR_M if stands_clear else None


for _distance, _from in (
    ("door_distance", "the edge of a door"),
    ("tub_distance", "the water of a tub, shower, sauna or pool"),
    ("bottom_of_stair_distance", "the bottom tread of a stair"),
):
    derives(
        f"window.{_distance}",
        Dimension.LENGTH,
        f"least distance from the glass to {_from}, if the window stands clear",
        by=float,
        needs={"stands_clear": "stands_clear"},
        agrees_within=1e6,
    )(_far_off)


@derives(
    "window.beside_stair",
    "flag",
    "whether the glass is beside a flight or a landing: not if it stands clear",
    by=bool,
    needs={"stands_clear": "stands_clear"},
)
def _beside_stair(stands_clear: bool) -> bool | None:
    return False if stands_clear else None


@derives(
    "window.in_wet_room",
    "flag",
    "whether the glass is in a wall that encloses a tub or shower: not if it stands clear",
    by=bool,
    needs={"stands_clear": "stands_clear"},
)
def _in_wet_room(stands_clear: bool) -> bool | None:
    return False if stands_clear else None


@derives(
    "window.sill_at_grade",
    "flag",
    "whether the bottom of the clear opening is near enough to the ground to be a grade-floor opening",
    by=bool,
    needs={"reach_m": "assumed:grade_opening_reach", "drop_m": "drop_outside"},
)
def _sill_at_grade(reach_m: float, drop_m: float) -> bool:
    return drop_m <= reach_m * (1 + 1e-9)
