"""Facts of moisture in assemblies: vapour through the layers at design and over a year, as an indication."""

from __future__ import annotations

import math
from functools import lru_cache

from checker.calc.thermal import moisture, monthly, rafter_bay
from checker.derive.envelope.assemblies import counted
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension

SLICE_M2K_W = 0.25
"""Thickest slice, as a resistance, into which insulation is cut so that water can show inside it."""
MOST_SLICES = 60
"""Slices that all layers together may be cut into; of more insulation the slices are thicker."""


@derives(
    "assembly.indoor_dew_point",
    Dimension.TEMPERATURE,
    "dew point of the indoor air in winter",
    by=moisture.dew_point,
    needs={"temperature_c": "assumed:indoor_temperature", "humidity_ratio": "assumed:indoor_humidity"},
)
def _indoor_dew_point(temperature_c: float, humidity_ratio: float) -> float:
    return moisture.dew_point(temperature_c, humidity_ratio)


@derives(
    "assembly.sheathing_below_dew_point",
    "flag",
    "whether the outer face of the framing lies below the indoor dew point in the three coldest months",
    by=moisture.dew_point,
    needs={"sheathing_c": "sheathing_temperature", "dew_point_c": "indoor_dew_point"},
)
def _below(sheathing_c: float, dew_point_c: float) -> bool:
    return sheathing_c < dew_point_c


_YEAR = {
    "sorts": "layers[].sort",
    "resistances": "layers[].resistance",
    "permeances": "layers[].permeance",
    "inside_film": "assumed:film_inside_wall",
    "outside_film": "assumed:film_outside",
    "inside_c": "assumed:indoor_temperature",
    "inside_ratio": "assumed:indoor_humidity",
    "outside_c": "site.monthly_temperatures",
    "outside_ratio": "site.monthly_humidities",
}


def _water(
    sorts: list[str],
    resistances: list[float],
    permeances: list[float],
    inside_film: float,
    outside_film: float,
    inside_c: float,
    inside_ratio: float,
    outside_c: tuple[float, ...],
    outside_ratio: tuple[float, ...],
) -> tuple[tuple[float, ...], ...] | None:
    """Water at each plane at the end of each month, through the fills; None if the plan has not twelve months."""
    count = counted(sorts)
    if count == 0 or len(outside_c) != 12 or len(outside_ratio) != 12:
        return None
    slice_m2k_w = max(SLICE_M2K_W, sum(resistances[:count]) / MOST_SLICES)
    heat, vapour = [inside_film], [0.0]
    for resistance, permeance in zip(resistances[:count], permeances[:count], strict=True):
        slices = max(1, math.ceil(resistance / slice_m2k_w))
        heat += [resistance / slices] * slices
        vapour += [moisture.vapour_resistance_of_permeance(permeance) / slices] * slices
    heat.append(outside_film)
    vapour.append(0.0)
    warm = [max(inside_c, outdoors) for outdoors in outside_c]
    return _months(tuple(heat), tuple(vapour), tuple(warm), (inside_ratio,) * 12, outside_c, outside_ratio)


@lru_cache(maxsize=32)
def _months(*year: tuple[float, ...]) -> tuple[tuple[float, ...], ...]:
    """The year of `monthly.water_after_months`, worked out once for all that is asked of it."""
    return monthly.water_after_months(*year)


@derives(
    "assembly.winter_water",
    Dimension.NUMBER,
    "most water that diffusion leaves in it over a year, in kg/m2",
    by=monthly.water_after_months,
    needs=_YEAR,
)
def _winter_water(**year: object) -> float | None:
    months = _water(**year)  # type: ignore[arg-type]
    return None if months is None else max(sum(planes) for planes in months)


@derives(
    "assembly.dries_within_year",
    "flag",
    "whether what diffusion leaves in winter is gone by the end of the year",
    by=monthly.water_after_months,
    needs=_YEAR,
)
def _dries(**year: object) -> bool | None:
    months = _water(**year)  # type: ignore[arg-type]
    return None if months is None else sum(months[-1]) < 1e-6


_BAY = {
    "insulation_m": "insulation_depth",
    "outside_m": "strapping_outside?",
    "inside_m": "strapping_inside?",
}


@derives(
    "assembly.insulation_depth",
    Dimension.LENGTH,
    "depth of the insulation in the bay, under the strapping too",
    by=sum,
    needs={"depths_m": "layers[].depth_in_bay"},
    agrees_within=0.0064,
)
def _insulation_depth(depths_m: list[float]) -> float | None:
    return sum(depths_m) or None


@derives(
    "layer.depth_in_bay",
    Dimension.LENGTH,
    "depth that an insulation takes between studs, joists or rafters; 0 for every other layer",
    by=float,
    needs={"main": "main_framing", "insulates": "insulates", "thickness_m": "thickness?"},
)
def _depth_in_bay(main: bool, insulates: bool, thickness_m: float | None) -> float | Lacks:
    if not main or not insulates:
        return 0.0
    return lacks("thickness_m") if thickness_m is None else thickness_m


@derives(
    "assembly.air_space",
    Dimension.LENGTH,
    "height of the air between the insulation and the deck; 0 if the insulation is deeper than the bay",
    by=rafter_bay.air_space_left,
    needs={"depth_m": "bay_depth", **_BAY},
    agrees_within=0.0064,
)
def _air_space(depth_m: float, insulation_m: float, outside_m: float | None, inside_m: float | None) -> float:
    return max(rafter_bay.air_space_left(depth_m, insulation_m, outside_m or 0.0, inside_m or 0.0), 0.0)


@derives(
    "assembly.overfilled",
    "flag",
    "whether the insulation is deeper than the bay that holds it, so that it is pressed or does not fit",
    by=rafter_bay.air_space_left,
    needs={"depth_m": "bay_depth", **_BAY},
)
def _overfilled(depth_m: float, insulation_m: float, outside_m: float | None, inside_m: float | None) -> bool:
    return rafter_bay.air_space_left(depth_m, insulation_m, outside_m or 0.0, inside_m or 0.0) < -1e-4


@derives(
    "assembly.bay_depth_needed",
    Dimension.LENGTH,
    "depth of member that holds this insulation and the air space",
    by=rafter_bay.member_depth_needed,
    needs={"air_space_m": "assumed:rafter_air_space", **_BAY},
)
def _bay_depth_needed(
    air_space_m: float, insulation_m: float, outside_m: float | None, inside_m: float | None
) -> float:
    return rafter_bay.member_depth_needed(insulation_m, air_space_m, outside_m or 0.0, inside_m or 0.0)


@derives(
    "assembly.insulation_depth_that_fits",
    Dimension.LENGTH,
    "thickest insulation that leaves the air space in the bay",
    by=rafter_bay.insulation_that_fits,
    needs={
        "depth_m": "bay_depth",
        "air_space_m": "assumed:rafter_air_space",
        "outside_m": "strapping_outside?",
        "inside_m": "strapping_inside?",
    },
)
def _insulation_that_fits(depth_m: float, air_space_m: float, outside_m: float | None, inside_m: float | None) -> float:
    return rafter_bay.insulation_that_fits(depth_m, air_space_m, outside_m or 0.0, inside_m or 0.0)


@derives(
    "assembly.vent_share",
    Dimension.FRACTION,
    "net free vent area over the ceiling area that it serves",
    by=float,
    needs={"low_m2": "vent_area_low", "high_m2": "vent_area_high", "served_m2": "vented_area"},
)
def _vent_share(low_m2: float, high_m2: float, served_m2: float) -> float | None:
    return (low_m2 + high_m2) / served_m2 if served_m2 else None


@derives(
    "assembly.high_vent_share",
    Dimension.FRACTION,
    "part of the vent area that lies high",
    by=float,
    needs={"low_m2": "vent_area_low", "high_m2": "vent_area_high"},
)
def _high_vent_share(low_m2: float, high_m2: float) -> float | None:
    return high_m2 / (low_m2 + high_m2) if low_m2 + high_m2 else None
