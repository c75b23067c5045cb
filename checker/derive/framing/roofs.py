"""Facts of roof planes: snow by each method, heights and lengths, thrust and ties, drifts."""

from __future__ import annotations

import math

from checker.calc.loads import snow, snow_canada, snow_drift, weights
from checker.calc.roof_frame import geometry, meeting, thrust
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

CARRYING = frozenset({"beam", "bearing wall"})
"""What at a ridge carries the rafters, so that they push nothing outward."""


@derives(
    "site.roof_snow_load",
    Dimension.PRESSURE,
    "snow on an ordinary roof of the place, by the ruleset's method",
    by=snow_canada.housing_snow,
    needs={
        "method": "assumed:roof_snow",
        "ground_pa": "ground_snow_load?",
        "ss_pa": "snow_load_ss?",
        "sr_pa": "rain_load_sr?",
        "basic_ratio": "assumed:snow_basic_factor?",
        "least_pa": "assumed:snow_least?",
        "flat_ratio": "assumed:snow_flat_factor?",
        "exposure_ratio": "assumed:snow_exposure_factor?",
        "thermal_ratio": "assumed:snow_thermal_factor?",
    },
)
def _site_snow(
    method: str,
    ground_pa: float | None,
    ss_pa: float | None,
    sr_pa: float | None,
    basic_ratio: float | None,
    least_pa: float | None,
    flat_ratio: float | None,
    exposure_ratio: float | None,
    thermal_ratio: float | None,
) -> float | Lacks | Using:
    if method == "housing snow":
        if ss_pa is None or sr_pa is None or basic_ratio is None or least_pa is None:
            return lacks("ss_pa", "sr_pa")
        found = snow_canada.housing_snow(ss_pa, sr_pa, basic_ratio, least_pa)
        return using(found, "ss_pa", "sr_pa", "basic_ratio", "least_pa")
    if ground_pa is None:
        return lacks("ground_pa")
    if method == "ground snow direct":
        return using(ground_pa, "ground_pa")
    if flat_ratio is None or exposure_ratio is None or thermal_ratio is None:
        return lacks()
    flat_pa = snow.flat_roof_snow(ground_pa, exposure_ratio, thermal_ratio, 1.0, flat_ratio)
    return using(flat_pa, "ground_pa", "flat_ratio", "exposure_ratio", "thermal_ratio")


@derives(
    "roof-plane.snow_by_slope",
    Dimension.PRESSURE,
    "balanced snow on the slope by ASCE 7, over the level area",
    by=snow.sloped_roof_snow,
    needs={
        "ground_pa": "site.ground_snow_load",
        "pitch_ratio": "pitch",
        "slippery": "slippery?",
        "exposure_ratio": "exposure_factor?",
        "thermal_ratio": "thermal_factor?",
        "assumed_exposure_ratio": "assumed:snow_exposure_factor",
        "assumed_thermal_ratio": "assumed:snow_thermal_factor",
        "flat_ratio": "assumed:snow_flat_factor",
        "none_from_deg": "assumed:snow_none_from",
    },
)
def _by_slope(
    ground_pa: float,
    pitch_ratio: float,
    slippery: bool | None,
    exposure_ratio: float | None,
    thermal_ratio: float | None,
    assumed_exposure_ratio: float,
    assumed_thermal_ratio: float,
    flat_ratio: float,
    none_from_deg: float,
) -> float:
    exposure = assumed_exposure_ratio if exposure_ratio is None else exposure_ratio
    thermal = assumed_thermal_ratio if thermal_ratio is None else thermal_ratio
    flat_pa = snow.flat_roof_snow(ground_pa, exposure, thermal, 1.0, flat_ratio)
    full_to_rad = snow.full_snow_slope(thermal, bool(slippery))
    kept = snow.slope_factor(math.atan(pitch_ratio), full_to_rad, math.radians(none_from_deg))
    return snow.sloped_roof_snow(flat_pa, kept)


@derives(
    "roof-plane.snow_by_housing",
    Dimension.PRESSURE,
    "roof snow of a house by the National Building Code, Part 9",
    by=snow_canada.housing_snow,
    needs={
        "ss_pa": "site.snow_load_ss",
        "sr_pa": "site.rain_load_sr",
        "run_m": "run?",
        "basic_ratio": "assumed:snow_basic_factor",
        "narrow_ratio": "assumed:snow_narrow_factor",
        "narrow_m": "assumed:snow_narrow_width",
        "least_pa": "assumed:snow_least",
        "span_m": "span?",
    },
)
def _by_housing(
    ss_pa: float,
    sr_pa: float,
    run_m: float | None,
    basic_ratio: float,
    narrow_ratio: float,
    narrow_m: float,
    least_pa: float,
    span_m: float | None,
) -> float | Using:
    if span_m is not None and span_m <= narrow_m:
        return using(snow_canada.housing_snow(ss_pa, sr_pa, narrow_ratio, least_pa), "span_m")
    return using(snow_canada.housing_snow(ss_pa, sr_pa, basic_ratio, least_pa))


@derives(
    "roof-plane.snow_load",
    Dimension.PRESSURE,
    "roof snow by the ruleset's method, over the level area",
    by=snow.sloped_roof_snow,
    needs={
        "method": "assumed:roof_snow",
        "ground_pa": "site.ground_snow_load?",
        "slope_pa": "snow_by_slope?",
        "housing_pa": "snow_by_housing?",
    },
)
def _snow_load(
    method: str, ground_pa: float | None, slope_pa: float | None, housing_pa: float | None
) -> float | Lacks | Using:
    name = {"ground snow direct": "ground_pa", "sloped-roof snow": "slope_pa", "housing snow": "housing_pa"}[method]
    value = {"ground_pa": ground_pa, "slope_pa": slope_pa, "housing_pa": housing_pa}[name]
    return lacks(name) if value is None else using(value, name)


@derives(
    "roof-plane.ground_snow",
    Dimension.PRESSURE,
    "ground snow load of the site, as tables are entered with it",
    by=float,
    needs={"ground_pa": "site.ground_snow_load"},
)
def _ground_snow(ground_pa: float) -> float:
    return ground_pa


@derives(
    "member.ground_snow",
    Dimension.PRESSURE,
    "ground snow load of the site, as tables are entered with it",
    by=float,
    needs={"ground_pa": "site.ground_snow_load"},
)
def _member_ground_snow(ground_pa: float) -> float:
    return ground_pa


@derives(
    "roof-plane.drift_surcharge",
    Dimension.PRESSURE,
    "greatest snow of a drift at the wall above, on top of the balanced snow",
    by=snow_drift.drift_height,
    needs={
        "ground_pa": "site.ground_snow_load",
        "fetch_m": "roof_above_length",
        "wall_m": "wall_above_height",
        "balanced_pa": "snow_by_slope",
        "least_fetch_m": "assumed:drift_least_fetch",
    },
)
def _drift(ground_pa: float, fetch_m: float, wall_m: float, balanced_pa: float, least_fetch_m: float) -> float:
    density = snow_drift.snow_density(ground_pa)
    clear_m = max(0.0, wall_m - snow_drift.snow_depth(balanced_pa, density))
    height_m = snow_drift.drift_height(ground_pa, fetch_m, least_fetch_m, 1.0)
    return density * snow_drift.drift_height_limited(height_m, clear_m)


@derives(
    "roof-plane.span",
    Dimension.LENGTH,
    "plate to plate across both planes, or twice the run of a plane whose opposite is not told",
    by=sum,
    needs={"run_m": "run", "other_m": "opposite.run?"},
)
def _span(run_m: float, other_m: float | None) -> float | Using:
    return using(2.0 * run_m) if other_m is None else run_m + other_m


@derives(
    "roof-plane.ridge_height",
    Dimension.LENGTH,
    "top of the plate to the top of the rafters at the ridge; without a seat cut and a depth, to their lower line",
    by=geometry.ridge_height,
    needs={"run_m": "run", "pitch_ratio": "pitch", "heel_m": "heel_height?"},
    agrees_within=0.35,
)
def _ridge_height(run_m: float, pitch_ratio: float, heel_m: float | None) -> float:
    return geometry.ridge_height(run_m, pitch_ratio, heel_m or 0.0)


@derives(
    "roof-plane.rafter_length",
    Dimension.LENGTH,
    "length of a rafter along the slope, eave with it",
    by=geometry.rafter_length,
    needs={"run_m": "run", "overhang_m": "overhang?", "pitch_ratio": "pitch"},
)
def _rafter_length(run_m: float, overhang_m: float | None, pitch_ratio: float) -> float:
    return geometry.rafter_length(run_m, pitch_ratio, overhang_m or 0.0)


@derives(
    "roof-plane.depth_of_rafters",
    Dimension.LENGTH,
    "depth of the rafters: as stated here, or the greatest of its rafters",
    by=max,
    needs={"stated_m": "rafter_depth?", "roles": "members[].role?", "depths_m": "members[].actual_depth?"},
)
def _rafter_depth(
    stated_m: float | None, roles: list[str] | None, depths_m: list[float] | None
) -> float | Lacks | Using:
    if stated_m is not None:
        return using(stated_m, "stated_m")
    if roles is None or depths_m is None:
        return lacks("stated_m")
    found = [depth for role, depth in zip(roles, depths_m, strict=True) if role == "rafter"]
    return using(max(found), "roles", "depths_m") if found else lacks("stated_m")


@derives(
    "roof-plane.plumb_cut",
    Dimension.LENGTH,
    "height of the rafters' plumb cut at the ridge",
    by=geometry.plumb_cut,
    needs={"depth_m": "depth_of_rafters", "pitch_ratio": "pitch"},
)
def _plumb_cut(depth_m: float, pitch_ratio: float) -> float:
    return geometry.plumb_cut(depth_m, pitch_ratio)


@derives(
    "roof-plane.birdsmouth_share",
    Dimension.FRACTION,
    "part of the rafters' depth that the birdsmouth takes, square to the slope",
    by=geometry.birdsmouth_depth,
    needs={"seat_m": "seat_cut", "depth_m": "depth_of_rafters", "pitch_ratio": "pitch"},
)
def _birdsmouth(seat_m: float, depth_m: float, pitch_ratio: float) -> float:
    return geometry.birdsmouth_depth(seat_m, pitch_ratio) / depth_m


@derives(
    "roof-plane.heel_height",
    Dimension.LENGTH,
    "top of the plate to the top edge of the rafters, plumb over the outside of the wall",
    by=geometry.heel_height,
    needs={"seat_m": "seat_cut", "depth_m": "depth_of_rafters", "pitch_ratio": "pitch"},
)
def _heel(seat_m: float, depth_m: float, pitch_ratio: float) -> float:
    return geometry.heel_height(depth_m, seat_m, pitch_ratio)


@derives(
    "roof-plane.plate_height",
    Dimension.LENGTH,
    "height of plate over the floor at which the ridge comes to the height wanted",
    by=geometry.plate_height_for_ridge,
    needs={"ridge_m": "ridge_over_floor", "run_m": "run", "pitch_ratio": "pitch", "heel_m": "heel_height?"},
    agrees_within=0.025,
)
def _plate_height(ridge_m: float, run_m: float, pitch_ratio: float, heel_m: float | None) -> float:
    return geometry.plate_height_for_ridge(ridge_m, run_m, pitch_ratio, heel_m or 0.0)


@derives(
    "roof-plane.headroom_gained",
    Dimension.LENGTH,
    "height gained under the slope in the middle of its run",
    by=meeting.headroom_gained,
    needs={
        "run_m": "run",
        "plate_m": "plate_height",
        "old_plate_m": "was.plate_height",
        "pitch_ratio": "pitch",
        "old_pitch_ratio": "was.pitch",
    },
)
def _headroom_gained(
    run_m: float, plate_m: float, old_plate_m: float, pitch_ratio: float, old_pitch_ratio: float
) -> float:
    return meeting.headroom_gained(run_m / 2.0, plate_m - old_plate_m, old_pitch_ratio, pitch_ratio)


@derives(
    "roof-plane.tie_height_share",
    Dimension.FRACTION,
    "height of the ties over the plate as a part of the height of the ridge",
    by=geometry.tie_height_share,
    needs={"tie_m": "tie_height", "ridge_m": "ridge_height"},
)
def _tie_share(tie_m: float, ridge_m: float) -> float:
    return geometry.tie_height_share(tie_m, ridge_m)


_ROOF_LOAD = {
    "snow_pa": "snow_load",
    "roof_live_pa": "assumed:roof_live_load?",
    "dead_pa": "dead_load?",
    "layers_pa": "assembly.dead_load?",
    "extra_pa": "assumed:dead_load_extra?",
    "assumed_pa": "assumed:dead_load_roof?",
    "pitch_ratio": "pitch",
}


@derives(
    "roof-plane.design_load",
    Dimension.PRESSURE,
    "dead load with snow or roof live load, the greater, over the level area",
    by=snow.sloped_roof_snow,
    needs=_ROOF_LOAD,
)
def _design_load(
    snow_pa: float,
    roof_live_pa: float | None,
    dead_pa: float | None,
    layers_pa: float | None,
    extra_pa: float | None,
    assumed_pa: float | None,
    pitch_ratio: float,
) -> float | Lacks | Using:
    passing_pa = max(snow_pa, roof_live_pa or 0.0)
    also = () if roof_live_pa is None else ("roof_live_pa",)
    if dead_pa is not None:
        return using(passing_pa + weights.load_on_plan(dead_pa, pitch_ratio), "dead_pa", *also)
    if layers_pa is not None:
        whole_pa = weights.load_on_plan(layers_pa + (extra_pa or 0.0), pitch_ratio)
        return using(passing_pa + whole_pa, "layers_pa", "extra_pa", *also)
    return lacks("dead_pa") if assumed_pa is None else using(passing_pa + assumed_pa, "assumed_pa", *also)


@derives(
    "roof-plane.thrust",
    Dimension.FORCE,
    "outward push of each rafter at the plate where the ridge carries nothing",
    by=thrust.unequal_thrust,
    needs={
        "ridge": "ridge",
        "load_pa": "design_load",
        "run_m": "run",
        "spacing_m": "rafter_spacing",
        "pitch_ratio": "pitch",
        "other_load_pa": "opposite.design_load?",
        "other_run_m": "opposite.run?",
        "other_ratio": "opposite.pitch?",
    },
)
def _thrust(
    ridge: str,
    load_pa: float,
    run_m: float,
    spacing_m: float,
    pitch_ratio: float,
    other_load_pa: float | None,
    other_run_m: float | None,
    other_ratio: float | None,
) -> float | Lacks | Using:
    if ridge in CARRYING:
        return lacks()
    load_n_m = thrust.rafter_line_load(load_pa, spacing_m)
    if other_load_pa is None or other_run_m is None or other_ratio is None:
        return using(thrust.plate_thrust(load_n_m, run_m, pitch_ratio))
    other_n_m = thrust.rafter_line_load(other_load_pa, spacing_m)
    found = thrust.unequal_thrust(load_n_m, other_n_m, run_m, other_run_m, pitch_ratio, other_ratio)
    return using(found, "other_load_pa", "other_run_m", "other_ratio")


@derives(
    "roof-plane.tie_force",
    Dimension.FORCE,
    "pull in each tie, for its spacing and height",
    by=thrust.tie_force,
    needs={
        "thrust_n": "thrust",
        "share_ratio": "tie_height_share?",
        "tie_spacing_m": "tie_spacing?",
        "spacing_m": "rafter_spacing",
    },
)
def _tie_force(
    thrust_n: float, share_ratio: float | None, tie_spacing_m: float | None, spacing_m: float
) -> float | Using:
    stated = (("share_ratio", share_ratio), ("tie_spacing_m", tie_spacing_m))
    raised_n = thrust.tie_force(thrust_n, share_ratio or 0.0)
    used = [name for name, value in stated if value is not None]
    return using(raised_n * (tie_spacing_m or spacing_m) / spacing_m, *used)


@derives(
    "roof-plane.ridge_load",
    Dimension.LINE_LOAD,
    "load along a ridge that is a beam: half of what both planes carry",
    by=thrust.ridge_beam_line_load,
    needs={
        "load_pa": "design_load",
        "run_m": "run",
        "other_load_pa": "opposite.design_load?",
        "other_run_m": "opposite.run?",
    },
)
def _ridge_load(load_pa: float, run_m: float, other_load_pa: float | None, other_run_m: float | None) -> float | Using:
    if other_load_pa is None or other_run_m is None:
        return using(thrust.ridge_beam_line_load(load_pa, load_pa, run_m, run_m))
    return thrust.ridge_beam_line_load(load_pa, other_load_pa, run_m, other_run_m)
