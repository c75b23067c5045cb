"""Facts of exterior walls and eaves that follow from the plan."""

from __future__ import annotations

from checker.calc import boundary
from checker.derive.registry import derives
from checker.units import Dimension


@derives(
    "exterior-wall.opening_area",
    Dimension.AREA,
    "area of the windows and doors in the wall",
    by=sum,
    needs={"windows_m2": "windows[].unit_area", "doors_m2": "doors[].unit_area"},
    agrees_within=0.03,
)
def _opening_area(windows_m2: list[float], doors_m2: list[float]) -> float:
    return sum([*windows_m2, *doors_m2])


@derives(
    "exterior-wall.opening_share",
    Dimension.FRACTION,
    "area of the openings as a share of the wall",
    by=boundary.openings_share,
    needs={"openings_area_m2": "opening_area", "wall_area_m2": "area"},
)
def _opening_share(openings_area_m2: float, wall_area_m2: float) -> float:
    return boundary.openings_share(openings_area_m2, wall_area_m2)


@derives(
    "eave.distance_to_lot_line",
    Dimension.LENGTH,
    "from the outer edge of the projection to the lot line",
    by=boundary.eave_distance,
    needs={"wall_distance_m": "of.distance_to_lot_line", "overhang_m": "projection"},
    agrees_within=0.0127,
)
def _eave_distance(wall_distance_m: float, overhang_m: float) -> float:
    return max(boundary.eave_distance(wall_distance_m, overhang_m), 0.0)
