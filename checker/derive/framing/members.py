"""Facts of members: their section, what they carry, how far they may bend."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Protocol

from checker.calc.framing.timber import TimberStandard
from checker.calc.loads import gravity, take_down
from checker.derive.framing.weights import ROOFS, service_load
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

ATTICS = frozenset({"attic without storage", "ceiling only", "attic with storage"})
JOISTS = frozenset({"floor joist", "ceiling joist", "rafter", "deck joist"})
"""Like members side by side under a deck: each carries its spacing, and they share what they carry."""


class Entry(Protocol):
    """An entry of the catalogue of lumber sizes or of design standards."""

    @property
    def properties(self) -> dict[str, float]:
        """Width and depth of a size. [m]"""

    @property
    def design(self) -> TimberStandard:
        """The design standard."""


@derives(
    "member.engineered",
    "flag",
    "whether it is an engineered product and no sawn lumber",
    by=bool,
    needs={"product": "product?", "size": "size?", "lumber": "lumber?"},
)
def _engineered(product: str | None, size: str | None, lumber: str | None) -> bool | Lacks | Using:
    if product is not None:
        return using(product != "sawn lumber", "product")
    return lacks("product") if size is None and lumber is None else False


@derives(
    "member.ply_width",
    Dimension.LENGTH,
    "width of one ply, as measured or dressed",
    by=float,
    needs={"measured_m": "width?", "other_m": "depth?", "size": "size?", "dressed_m": "named:size.width?"},
)
def _ply_width(
    measured_m: float | None, other_m: float | None, size: str | None, dressed_m: float | None
) -> float | Lacks | Using:
    return _measured(measured_m, other_m, dressed_m)


@derives(
    "member.actual_depth",
    Dimension.LENGTH,
    "depth, as measured or dressed",
    by=float,
    needs={"measured_m": "depth?", "other_m": "width?", "size": "size?", "dressed_m": "named:size.depth?"},
)
def _actual_depth(
    measured_m: float | None, other_m: float | None, size: str | None, dressed_m: float | None
) -> float | Lacks | Using:
    return _measured(measured_m, other_m, dressed_m)


def _measured(measured_m: float | None, other_m: float | None, dressed_m: float | None) -> float | Lacks | Using:
    if measured_m is not None:
        return using(measured_m, "measured_m")
    if dressed_m is None:
        # A nominal size does not go with a measured side.
        return lacks("size" if other_m is None else "measured_m")
    return using(dressed_m, "dressed_m")


@derives(
    "member.load_width",
    Dimension.LENGTH,
    "width of floor or roof that it carries: tributary width, spacing of like members, half of both roof planes",
    by=float,
    needs={
        "role": "role",
        "tributary_width_m": "tributary_width?",
        "spacing_m": "spacing?",
        "run_m": "roof.run?",
        "other_run_m": "roof.opposite.run?",
    },
)
def _load_width(
    role: str,
    tributary_width_m: float | None,
    spacing_m: float | None,
    run_m: float | None,
    other_run_m: float | None,
) -> float | Lacks | Using:
    if tributary_width_m is not None:
        return using(tributary_width_m, "tributary_width_m")
    if role in JOISTS:
        return lacks("spacing_m") if spacing_m is None else using(spacing_m, "spacing_m")
    if role == "ridge beam" and run_m is not None:
        return using((run_m + (other_run_m or 0.0)) / 2.0, "run_m", "other_run_m")
    return lacks("tributary_width_m")


def _line_load(kind: str, meaning: str, of_line: str, further: str | None) -> None:
    needs = {
        "pressure_pa": f"{kind}_pressure?",
        "width_m": "load_width?",
        "line": "carries_line.status?",
        "line_n_m": f"carries_line.{of_line}?",
    }
    if further:
        needs["further_n_m"] = f"{further}?"

    @derives(f"member.line_{kind}", Dimension.LINE_LOAD, meaning, by=take_down.area_line_load, needs=needs)
    def line_load(
        pressure_pa: float | None,
        width_m: float | None,
        line: str | None,
        line_n_m: float | None,
        further_n_m: float | None = None,
    ) -> float | Lacks | Using:
        used = ["further_n_m"] if further_n_m is not None else []
        load_n_m = further_n_m or 0.0
        if line is not None:
            if line_n_m is None:
                return lacks("line_n_m")
            load_n_m += line_n_m
            used.append("line_n_m")
            if width_m is None:
                return using(load_n_m, *used)
        if width_m is None:
            return lacks("width_m")
        if pressure_pa is None:
            return lacks("pressure_pa")
        return using(load_n_m + pressure_pa * width_m, "pressure_pa", "width_m", *used)


_line_load("dead", "dead load along it", "dead_total", "line_dead_load")
_line_load("live", "live load along it", "live_total", "line_live_load")
_line_load("snow", "snow load along it, level", "snow_total", "line_snow_load")
_line_load("roof_live", "roof live load along it, level", "roof_live_total", None)


@derives(
    "member.deflection_limit",
    Dimension.COUNT,
    "span over the greatest live-load deflection that the ruleset allows it",
    by=float,
    needs={
        "carries": "carries",
        "ceiling": "ceiling_below?",
        "pitch_ratio": "roof.pitch?",
        "steep_ratio": "assumed:steep_rafter_pitch?",
        "floor": "assumed:deflection_floor?",
        "plaster": "assumed:deflection_plaster?",
        "gypsum": "assumed:deflection_gypsum?",
        "rafter": "assumed:deflection_rafter?",
        "other": "assumed:deflection_other?",
    },
)
def _deflection_limit(
    carries: str,
    ceiling: str | None,
    pitch_ratio: float | None,
    steep_ratio: float | None,
    **limits: float | None,
) -> float | Lacks | Using:
    if carries not in ROOFS and carries not in ATTICS:
        return _limit("floor", limits)
    if ceiling is None:
        return lacks("ceiling")
    if ceiling == "plaster":
        return _limit("plaster", limits, "ceiling")
    if ceiling == "gypsum board":
        return _limit("gypsum", limits, "ceiling")
    if ceiling == "none" and carries == "roof":
        if steep_ratio is None:
            return _limit("rafter", limits, "ceiling")
        if pitch_ratio is None:
            return lacks("pitch_ratio")
        name = "rafter" if pitch_ratio > steep_ratio else "other"
        return _limit(name, limits, "ceiling", "pitch_ratio", "steep_ratio")
    return _limit("other", limits, "ceiling")


def _limit(name: str, limits: Mapping[str, float | None], *used: str) -> Lacks | Using:
    value = limits[name]
    return lacks() if value is None else using(value, name, *used)


@derives(
    "member.bearing_length",
    Dimension.LENGTH,
    "length of bearing that the jack studs under its end give",
    by=float,
    needs={"jacks": "jack_studs", "sizes": "catalogue:lumber size"},
    agrees_within=0.02,
)
def _bearing_length(jacks: float, sizes: Sequence[Entry]) -> float | None:
    studs_m = sorted(each.properties["width"] for each in sizes if 0.085 < each.properties["depth"] < 0.095)
    thickness_m = next((each for each in studs_m if each > 0.03), None)
    return jacks * thickness_m if thickness_m and jacks > 0 else None


@derives(
    "level.joist_depth",
    Dimension.LENGTH,
    "depth of the deepest joists of its floor",
    by=max,
    needs={"roles": "members[].role", "depths_m": "members[].actual_depth"},
)
def _joist_depth(roles: list[str], depths_m: list[float]) -> float | None:
    return max((depth for role, depth in zip(roles, depths_m, strict=True) if role == "floor joist"), default=None)


@derives(
    "member.backspan_ratio",
    Dimension.NUMBER,
    "span over the overhang",
    by=float,
    needs={"span_m": "span", "overhang_m": "overhang"},
)
def _backspan(span_m: float, overhang_m: float) -> float | None:
    return span_m / overhang_m if overhang_m > 0.0 else None


service_load("member", "line_{}", "greatest load along it that acts together")


def _nothing_said(attribute: str, of: Dimension, value: float, meaning: str) -> None:
    """A value that holds where the plan says nothing; a stated one is not held against it."""

    @derives(attribute, of, meaning, by=float, needs={}, agrees_within=math.inf)
    def nothing_said() -> float:
        return value


_nothing_said("member.plies", Dimension.COUNT, 1.0, "1 where the plan says nothing")
_nothing_said("member.spans", Dimension.COUNT, 1.0, "1 where the plan says nothing")
_nothing_said("member.overhang", Dimension.LENGTH, 0.0, "none where the plan says nothing")
_nothing_said("member.offset_of_wall", Dimension.LENGTH, 0.0, "0 where the plan says nothing")
_nothing_said("bearing-line.offset_from_below", Dimension.LENGTH, 0.0, "0 where the plan says nothing")


@derives(
    "member.point_load",
    Dimension.FORCE,
    "load of the beams, headers and posts that it holds up, and of heavy things on joists that it holds up",
    by=sum,
    needs={"loads_n": "holds_up[].brings_down?", "held": "holds_up[].role?"},
)
def _point_load(loads_n: list[float] | None, held: list[str] | None) -> float | Lacks | Using:
    if not held:
        return using(0.0)
    return lacks("loads_n") if loads_n is None else sum(loads_n)


def point_place(span_m: float, headers_m: list[float] | None) -> float:
    """Where point loads stand: of a trimmer at its header, of others in the middle, the worst place."""
    inside_m = [each for each in headers_m or () if each < span_m]
    return min(inside_m, key=lambda each: abs(each - span_m / 2.0)) if inside_m else span_m / 2.0


@derives(
    "member.reaction",
    Dimension.FORCE,
    "load that comes to the end of a span that gets more, all that acts together",
    by=gravity.service_load,
    needs={
        "span_m": "span",
        "even_n_m": "service_load",
        "point_n": "point_load",
        "headers_m": "trims_openings[].header_to_bearing?",
    },
)
def _reaction(span_m: float, even_n_m: float, point_n: float, headers_m: list[float] | None) -> float:
    at_m = point_place(span_m, headers_m)
    return even_n_m * span_m / 2.0 + point_n * max(at_m, span_m - at_m) / span_m


@derives(
    "member.brings_down",
    Dimension.FORCE,
    "point load on what holds it up; of joists only that of heavy things, as widths count the rest",
    by=gravity.inner_support_load,
    needs={
        "role": "role",
        "end_n": "reaction?",
        "post_n": "post_load?",
        "spans": "spans",
        "heavy": "heavy_things[].status?",
        "heavy_n": "heavy_things[].weight?",
    },
)
def _brings_down(
    role: str,
    end_n: float | None,
    post_n: float | None,
    spans: float,
    heavy: list[str] | None,
    heavy_n: list[float] | None,
) -> float | Lacks | Using:
    if role in JOISTS:
        if not heavy:
            return using(0.0)
        return lacks("heavy_n") if heavy_n is None else using(sum(heavy_n), "heavy_n")
    if role == "post":
        return lacks("post_n") if post_n is None else using(post_n, "post_n")
    if end_n is None:
        return lacks("end_n")
    return using(gravity.inner_support_load(end_n) if spans > 1 else end_n, "end_n")
