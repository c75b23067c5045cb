"""Facts of rooms and levels that follow from the plan: area under enough height, use, light and air."""

from __future__ import annotations

from checker.calc import boundary, ceiling, opening
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension

_CEILING = {
    "ceiling": "ceiling",
    "floor_area_m2": "floor_area?",
    "ceiling_height_m": "ceiling_height?",
    "slopes": "slopes?",
    "knee_wall_height_m": "knee_wall_height?",
    "pitch_ratio": "ceiling_pitch?",
    "width_m": "sloped_width?",
    "length_m": "sloped_length?",
    "flat_height_m": "flat_ceiling_height?",
    "level_area_m2": "level_ceiling_area?",
    "level_height_m": "level_ceiling_height?",
}
_SLOPED = ("slopes", "knee_wall_height_m", "pitch_ratio", "width_m", "length_m")


def _area_at_height(height_m: float, ceiling: str, **sizes: float | str | None) -> float | Lacks:
    """Floor area under a ceiling at least so high, for a level or a sloped ceiling."""
    if ceiling == "level":
        return _level_area(height_m, sizes, "floor_area_m2", "ceiling_height_m")
    missing = [name for name in _SLOPED if sizes[name] is None]
    if missing:
        return lacks(*missing)
    beside = _level_area(height_m, sizes, "level_area_m2", "level_height_m") if sizes["level_area_m2"] else 0.0
    return beside if isinstance(beside, Lacks) else _sloped_area(height_m, sizes) + beside


def _level_area(height_m: float, sizes: dict[str, float | str | None], area: str, height: str) -> float | Lacks:
    """The whole area under a level ceiling that is high enough, or none of it."""
    area_m2, ceiling_m = sizes[area], sizes[height]
    if not isinstance(ceiling_m, float):
        return lacks(height)
    if ceiling_m < height_m * (1 - 1e-9):
        return 0.0
    return area_m2 if isinstance(area_m2, float) else lacks(area)


def _sloped_area(height_m: float, sizes: dict[str, float | str | None]) -> float:
    of = ceiling.area_at_height_two_slope if sizes["slopes"] == "two" else ceiling.area_at_height_one_slope
    numbers = {name: size for name, size in sizes.items() if isinstance(size, float)}
    return of(
        height_m,
        numbers["width_m"],
        numbers["length_m"],
        numbers["knee_wall_height_m"],
        numbers["pitch_ratio"],
        numbers.get("flat_height_m"),
    )


@derives(
    "room.area_at_counted_height",
    Dimension.AREA,
    "floor area under a ceiling at least as high as the counted height",
    by=ceiling.area_at_height_two_slope,
    needs={"height_m": "assumed:counted_ceiling_height", **_CEILING},
    agrees_within=0.03,
)
def _area_at_counted_height(height_m: float, ceiling: str, **sizes: float | str | None) -> float | Lacks:
    return _area_at_height(height_m, ceiling, **sizes)


@derives(
    "room.area_at_full_height",
    Dimension.AREA,
    "floor area under a ceiling at least as high as the full height",
    by=ceiling.area_at_height_two_slope,
    needs={"height_m": "assumed:full_ceiling_height", **_CEILING},
    agrees_within=0.03,
)
def _area_at_full_height(height_m: float, ceiling: str, **sizes: float | str | None) -> float | Lacks:
    return _area_at_height(height_m, ceiling, **sizes)


@derives(
    "room.area_at_conversion_height",
    Dimension.AREA,
    "floor area under a ceiling as high as an existing attic or basement may keep when it becomes habitable",
    by=ceiling.area_at_height_two_slope,
    needs={"height_m": "assumed:conversion_ceiling_height", **_CEILING},
    agrees_within=0.03,
)
def _area_at_conversion_height(height_m: float, ceiling: str, **sizes: float | str | None) -> float | Lacks:
    return _area_at_height(height_m, ceiling, **sizes)


@derives(
    "room.volume",
    Dimension.VOLUME,
    "volume of air in the room",
    by=ceiling.volume,
    needs=_CEILING,
    agrees_within=0.1,
)
def _volume(ceiling: str, **sizes: float | str | None) -> float | Lacks:
    numbers = {name: size for name, size in sizes.items() if isinstance(size, float | int)}
    if ceiling == "level":
        area_m2, height_m = numbers.get("floor_area_m2"), numbers.get("ceiling_height_m")
        if area_m2 is None or height_m is None:
            return lacks("floor_area_m2", "ceiling_height_m")
        return area_m2 * height_m
    if any(sizes[name] is None for name in _SLOPED):
        return lacks()  # the volume itself is asked for, not every size of the slopes
    return _sloped_volume(sizes["slopes"] == "two", numbers)


def _sloped_volume(two_slopes: bool, numbers: dict[str, float]) -> float:
    average = ceiling.average_height_two_slope if two_slopes else ceiling.average_height_one_slope
    width_m, beside_m2 = numbers["width_m"], numbers.get("level_area_m2", 0.0)
    height_m = average(width_m, numbers["knee_wall_height_m"], numbers["pitch_ratio"], numbers.get("flat_height_m"))
    return ceiling.volume(height_m, width_m, numbers["length_m"]) + beside_m2 * numbers.get("level_height_m", 0.0)


@derives(
    "room.width_at_full_height",
    Dimension.LENGTH,
    "width of floor, across the slope, under a ceiling at least as high as the full height",
    by=ceiling.width_at_height_two_slope,
    needs={
        "height_m": "assumed:full_ceiling_height",
        "slopes": "slopes",
        "width_m": "sloped_width",
        "knee_wall_height_m": "knee_wall_height",
        "pitch_ratio": "ceiling_pitch",
        "flat_height_m": "flat_ceiling_height?",
    },
    agrees_within=0.0127,
)
def _width_at_full_height(
    height_m: float,
    slopes: str,
    width_m: float,
    knee_wall_height_m: float,
    pitch_ratio: float,
    flat_height_m: float | None,
) -> float:
    of = ceiling.width_at_height_two_slope if slopes == "two" else ceiling.width_at_height_one_slope
    return of(height_m, width_m, knee_wall_height_m, pitch_ratio, flat_height_m)


@derives(
    "room.floor_area",
    Dimension.AREA,
    "floor area of a room under two slopes: its sloped part and the part under a level ceiling",
    by=opening.clear_area,
    needs={"width_m": "sloped_width", "length_m": "sloped_length", "level_area_m2": "level_ceiling_area?"},
    agrees_within=0.03,
)
def _floor_area(width_m: float, length_m: float, level_area_m2: float | None) -> float:
    return opening.clear_area(width_m, length_m) + (level_area_m2 or 0.0)


@derives(
    "room.use_changes",
    "flag",
    "whether the room gets a use that it did not have",
    by=bool,
    needs={"status": "status", "use": "use", "use_before": "was.use?"},
)
def _use_changes(status: str, use: str, use_before: str | None) -> bool | Lacks:
    if status == "new":
        return True
    if status == "existing":
        return False
    return lacks("use_before") if use_before is None else use != use_before


@derives(
    "room.glazed_area",
    Dimension.AREA,
    "area of glass in windows, skylights and outside doors of the room",
    by=sum,
    needs={
        "windows_m2": "windows[].glazed_area",
        "skylights_m2": "skylights[].glazed_area",
        "doors_m2": "doors[].daylight_area",
    },
)
def _glazed_area(windows_m2: list[float], skylights_m2: list[float], doors_m2: list[float]) -> float:
    return sum([*windows_m2, *skylights_m2, *doors_m2])


@derives(
    "room.openable_area",
    Dimension.AREA,
    "area of the room's windows, skylights and outside doors that opens",
    by=sum,
    needs={
        "windows_m2": "windows[].openable_area",
        "skylights_m2": "skylights[].openable_area",
        "doors_m2": "doors[].air_area",
    },
)
def _openable_area(windows_m2: list[float], skylights_m2: list[float], doors_m2: list[float]) -> float:
    return sum([*windows_m2, *skylights_m2, *doors_m2])


@derives(
    "room.glazed_share",
    Dimension.FRACTION,
    "area of glass as a share of the floor area",
    by=opening.floor_share,
    needs={"opening_area_m2": "glazed_area", "floor_area_m2": "floor_area"},
)
def _glazed_share(opening_area_m2: float, floor_area_m2: float) -> float:
    return opening.floor_share(opening_area_m2, floor_area_m2)


@derives(
    "room.openable_share",
    Dimension.FRACTION,
    "openable area as a share of the floor area",
    by=opening.floor_share,
    needs={"opening_area_m2": "openable_area", "floor_area_m2": "floor_area"},
)
def _openable_share(opening_area_m2: float, floor_area_m2: float) -> float:
    return opening.floor_share(opening_area_m2, floor_area_m2)


@derives(
    "level.habitable_share",
    Dimension.FRACTION,
    "habitable area as a share of the floor area of the level below",
    by=boundary.storey_share,
    needs={"upper_area_m2": "habitable_area", "lower_area_m2": "below.floor_area"},
)
def _habitable_share(upper_area_m2: float, lower_area_m2: float) -> float:
    return boundary.storey_share(upper_area_m2, lower_area_m2)


@derives(
    "level.changes",
    "flag",
    "whether the level becomes something it was not",
    by=bool,
    needs={"status": "status", "use": "use", "use_before": "was.use?"},
)
def _level_changes(status: str, use: str, use_before: str | None) -> bool | Lacks:
    if status == "new":
        return True
    if status == "existing":
        return False
    return lacks("use_before") if use_before is None else use != use_before
