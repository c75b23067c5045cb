"""Facts of members that come of their strength: how hard they work, how far they may span, what would be enough."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from copy import copy
from typing import Any, Literal

from checker.calc.errors import OutOfRange
from checker.calc.framing import column, sawn
from checker.calc.framing.beam import Loads
from checker.calc.framing.timber import Lumber, Section, TimberStandard
from checker.derive.framing.members import JOISTS, Entry, point_place
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension

UPRIGHT = frozenset({"post", "stud", "ridge board"})
"""Members that are not checked as beams."""
RECTANGULAR = frozenset({"laminated veneer lumber", "glued laminated timber"})
SAME_WIDTH_M = 0.0016
"""How far the width of a ply may lie from that of a nominal size that is tried in its place."""
_HALVINGS = 40
DIMENSION, TIMBERS = "dimension", "timbers"
"""Classes of size factors in a design standard: lumber up to and over a thickness."""
TIMBER_FROM_M = 0.1195
NO_LIMIT = 1.0
"""Stands for a limit of deflection that is not known, where nothing is taken from it."""
GOVERNING = ("bending", "shear", "bearing", "live deflection", "total deflection")

DEMAND = {
    "role": "role",
    "ply_width_m": "ply_width",
    "depth_m": "actual_depth",
    "plies": "plies?",
    "span_m": "span",
    "dead_n_m": "line_dead",
    "live_n_m": "line_live",
    "snow_n_m": "line_snow",
    "roof_live_n_m": "line_roof_live",
    "standards": "catalogue:timber standard",
    "spacing_m": "spacing?",
    "edge_held": "edge_held?",
    "unbraced_m": "unbraced_length?",
    "bearing_m": "bearing_length?",
    "limit": "deflection_limit?",
    "point_n": "point_load",
    "headers_m": "trims_openings[].header_to_bearing?",
    "wet": "wet?",
}
STRENGTH = {
    "engineered": "engineered",
    "lumber": "named:lumber.design?",
    "product": "product?",
    "moment_n_m": "moment_capacity?",
    "shear_n": "shear_capacity?",
    "modulus_pa": "elastic_modulus?",
}


class Demand:
    """A member with its loads, in the form that the calculation of wood members takes."""

    def __init__(
        self,
        role: str,
        ply_width_m: float,
        depth_m: float,
        plies: float | None,
        span_m: float,
        dead_n_m: float,
        live_n_m: float,
        snow_n_m: float,
        roof_live_n_m: float,
        standards: tuple[Entry, ...],
        spacing_m: float | None,
        edge_held: bool | None,
        unbraced_m: float | None,
        bearing_m: float | None,
        limit: float | None,
        point_n: float,
        headers_m: list[float] | None,
        wet: bool | None,
    ) -> None:
        self.beam = role not in UPRIGHT
        self.section = Section(ply_width_m, depth_m, int(plies or 1))
        self.span_m = span_m
        line = {"dead": dead_n_m, "live": live_n_m, "snow": snow_n_m, "roof live": roof_live_n_m}
        # What the point load is made of is not told apart; as floor load it has no shorter duration to its credit.
        points = (("live", point_n, point_place(span_m, headers_m)),) if point_n > 0.0 else ()
        self.loads = Loads(line, points=points)  # type: ignore[arg-type]
        self.loaded = point_n > 0.0 or any(line.values())
        self.standard = standards[0].design
        side_by_side = role in JOISTS and spacing_m is not None
        self.repetitive = side_by_side and (spacing_m or 0.0) <= self.standard.repetitive_spacing_m + 1e-6
        held = edge_held if edge_held is not None else role in JOISTS
        self.unbraced_m = unbraced_m if unbraced_m is not None else 0.0 if held else span_m
        self.bearing_m = bearing_m
        self.limit = limit or NO_LIMIT
        self.limited = limit is not None
        self.wet = bool(wet)
        thick = ply_width_m > TIMBER_FROM_M and TIMBERS in self.standard.size_factors
        self.sizes = TIMBERS if thick else DIMENSION

    def check(self, lumber: Lumber, loads: Loads) -> sawn.MemberCheck:
        """The check of the member under loads."""
        return sawn.check_member(
            self.section,
            lumber,
            self.standard,
            self.span_m,
            loads,
            repetitive=self.repetitive and bool(lumber.sizes or lumber.by_depth),
            unbraced_m=self.unbraced_m,
            bearing_m=self.bearing_m,
            live_limit=self.limit,
            wet=self.wet,
        )

    def does(self, lumber: Lumber) -> bool:
        """Whether the member does under its own loads."""
        return self.check(lumber, self.loads).worst <= 1.0

    def over(self, span_m: float, held: bool) -> Demand:
        """The same member over another span, point loads at the same part of it."""
        other = copy(self)
        points = tuple((kind, load_n, at_m / self.span_m * span_m) for kind, load_n, at_m in self.loads.points)
        other.loads = Loads(self.loads.line, points=points)
        other.span_m = span_m
        other.unbraced_m = self.unbraced_m if held else span_m
        return other

    def needed(self, loads: Loads) -> sawn.Needed:
        """The reference values that lumber of unknown grade would need."""
        return sawn.needed(
            self.section,
            self.standard,
            self.span_m,
            loads,
            repetitive=self.repetitive,
            sizes=self.sizes,
            live_limit=self.limit,
            wet=self.wet,
        )


def values_of(
    section: Section,
    standard: TimberStandard,
    engineered: bool,
    lumber: Lumber | None,
    product: str | None,
    moment_n_m: float | None,
    shear_n: float | None,
    modulus_pa: float | None,
) -> Lumber | Lacks:
    """The reference values of a member: of its lumber, or those that the maker's capacities of one ply come to."""
    if not engineered:
        return lacks("lumber") if lumber is None else lumber
    if product not in RECTANGULAR:
        return lacks()
    if moment_n_m is None or shear_n is None or modulus_pa is None:
        stated = {"moment_n_m": moment_n_m, "shear_n": shear_n, "modulus_pa": modulus_pa}
        return lacks(*(name for name, value in stated.items() if value is None))
    ply = Section(section.ply_width_m, section.depth_m)
    bending_pa = moment_n_m / ply.modulus_m3 / standard.resistance.get("bending", 1.0)
    shear_pa = 1.5 * shear_n / ply.area_m2 / standard.resistance.get("shear", 1.0)
    # The maker's values for bearing across the grain are in his sheet; the plan has no line for them.
    return Lumber("maker's values", bending_pa, shear_pa, bending_pa, modulus_pa, 0.5 * modulus_pa)


def checked(needs: dict[str, object], loads_of: Callable[[Demand], Loads] | None = None) -> sawn.MemberCheck | Lacks:
    """The check of a member by its needs, under its own loads or under others made from them."""
    demand = Demand(**{name: needs[name] for name in DEMAND})  # type: ignore[arg-type]
    if not demand.beam or not (demand.loaded or loads_of):
        return lacks()
    strength = {name: needs[name] for name in STRENGTH}
    values = values_of(demand.section, demand.standard, **strength)  # type: ignore[arg-type]
    if isinstance(values, Lacks):
        return values
    return demand.check(values, loads_of(demand) if loads_of else demand.loads)


_CHECK = {**DEMAND, **STRENGTH}


def _whole(ratio: float) -> float:
    """A span over its deflection in whole numbers, rounded down; what hardly bends is not told apart."""
    return float(min(math.floor(ratio + 1e-6), 9999)) if math.isfinite(ratio) else 9999.0


def _combination(found: sawn.MemberCheck) -> str | None:
    use = found.uses().get(found.governs)
    return use.combination if use else None


_OF_CHECK: tuple[tuple[str, Dimension | Literal["name"] | tuple[str, ...], str, Callable[[sawn.MemberCheck], Any]], ...]
_OF_CHECK = (
    ("bending_use", Dimension.FRACTION, "bending moment over its capacity", lambda found: found.bending.ratio),
    ("shear_use", Dimension.FRACTION, "shear over its capacity", lambda found: found.shear.ratio),
    (
        "live_deflection_ratio",
        Dimension.COUNT,
        "span over its deflection under live load",
        lambda found: _whole(found.live_span_ratio),
    ),
    (
        "total_deflection_ratio",
        Dimension.COUNT,
        "span over its deflection under all load",
        lambda found: _whole(found.total_span_ratio),
    ),
    ("governs", GOVERNING, "the check that comes nearest to its limit", lambda found: found.governs),
    ("combination", "name", "the combination of loads of the check that governs", _combination),
    (
        "worst_use",
        Dimension.FRACTION,
        "demand over capacity of the check that governs, deflection among them",
        lambda found: found.worst,
    ),
)


_LIMITED = frozenset({"governs", "combination", "worst_use"})
"""What hangs on the limit of deflection too."""


def _take(
    attribute: str,
    of: Dimension | Literal["name"] | tuple[str, ...],
    meaning: str,
    pick: Callable[[sawn.MemberCheck], Any],
) -> None:
    @derives(f"member.{attribute}", of, meaning, by=sawn.check_member, needs=_CHECK)
    def taken(**needs: object) -> Any:
        if attribute in _LIMITED and needs["limit"] is None:
            return lacks("limit")
        found = checked(needs)
        return found if isinstance(found, Lacks) else pick(found)


for _each in _OF_CHECK:
    _take(*_each)


@derives(
    "member.bearing_use",
    Dimension.FRACTION,
    "pressure across the grain at the shorter bearing over its capacity",
    by=sawn.check_member,
    needs={**_CHECK, "bearing_m": "bearing_length"},
)
def _bearing_use(**needs: object) -> float | Lacks:
    found = checked(needs)
    if isinstance(found, Lacks):
        return found
    return lacks() if found.bearing is None or needs["engineered"] else found.bearing.ratio


@derives(
    "member.allowable_span",
    Dimension.LENGTH,
    "greatest span of the same member under the same load",
    by=sawn.allowable_span,
    needs={**_CHECK, "span_m": "span?", "limit": "deflection_limit"},
)
def _allowable_span(**needs: object) -> float | Lacks:
    demand = Demand(**{**{name: needs[name] for name in DEMAND}, "span_m": needs["span_m"] or 1.0})  # type: ignore[arg-type]
    if not demand.beam or not demand.loaded:
        return lacks()
    values = values_of(demand.section, demand.standard, **{name: needs[name] for name in STRENGTH})  # type: ignore[arg-type]
    if isinstance(values, Lacks):
        return values

    def held_at(unbraced_m: float) -> float:
        return sawn.allowable_span(
            demand.section,
            values,
            demand.standard,
            demand.loads,
            repetitive=demand.repetitive and bool(values.sizes or values.by_depth),
            unbraced_m=unbraced_m,
            bearing_m=demand.bearing_m,
            live_limit=demand.limit,
            wet=demand.wet,
        )[0]

    held = needs["unbraced_m"] is not None or not demand.unbraced_m
    if demand.loads.points:
        return _just_enough(lambda span_m: demand.over(span_m, held).does(values))
    if held:
        return held_at(demand.unbraced_m)
    found_m = _just_enough(lambda span_m: held_at(span_m) >= span_m)  # an edge that is held at the ends alone
    return min(found_m, held_at(found_m))


def _just_enough(does: Callable[[float], bool]) -> float:
    """The greatest span that does, by halving."""
    low_m, high_m = sawn.SPAN_RANGE_M
    for _ in range(_HALVINGS):
        middle_m = (low_m + high_m) / 2.0
        try:
            enough = does(middle_m)
        except OutOfRange:
            enough = False
        low_m, high_m = (middle_m, high_m) if enough else (low_m, middle_m)
    return low_m


@derives(
    "member.least_depth",
    Dimension.LENGTH,
    "least depth of a size of the same width, lumber and plies that would do in bending, shear and deflection",
    by=sawn.least_section,
    needs={
        **DEMAND,
        "limit": "deflection_limit",
        "lumber": "named:lumber.design",
        "sizes": "catalogue:lumber size",
    },
)
def _least_depth(lumber: Lumber, sizes: Sequence[Entry], **needs: object) -> float | Lacks | None:
    demand = Demand(**needs)  # type: ignore[arg-type]
    if not demand.beam:
        return lacks()
    plies = demand.section.plies
    candidates = [
        Section(demand.section.ply_width_m, each.properties["depth"], plies)
        for each in sizes
        if abs(each.properties["width"] - demand.section.ply_width_m) <= SAME_WIDTH_M
    ]
    found = sawn.least_section(
        candidates,
        lumber,
        demand.standard,
        demand.span_m,
        demand.loads,
        repetitive=demand.repetitive,
        unbraced_m=demand.unbraced_m,
        live_limit=demand.limit,
        wet=demand.wet,
    )
    return None if found is None else found.depth_m


_NEEDED: tuple[tuple[str, str, Callable[[sawn.Needed], float]], ...] = (
    ("bending", "reference bending value that its lumber must at least have", lambda found: found.bending_pa),
    ("shear", "reference shear value that its lumber must at least have", lambda found: found.shear_pa),
    ("stiffness", "modulus of elasticity that its lumber must at least have", lambda found: found.stiffness_pa),
)


def _need_of_lumber(name: str, meaning: str, pick: Callable[[sawn.Needed], float]) -> None:
    needs = {**DEMAND, "engineered": "engineered?"}

    @derives(f"member.{name}_needed", Dimension.STRESS, f"{meaning}, before any factor", by=sawn.needed, needs=needs)
    def needed(engineered: bool | None, **needs: object) -> float | Lacks:
        demand = Demand(**needs)  # type: ignore[arg-type]
        if not demand.beam or not demand.loaded or engineered:
            return lacks()
        if name == "stiffness" and not demand.limited:
            return lacks("limit")
        if demand.unbraced_m > 0.0:
            return lacks("edge_held")  # how much an unheld edge takes away hangs on the lumber itself
        return pick(demand.needed(demand.loads))


for _one in _NEEDED:
    _need_of_lumber(*_one)


@derives(
    "member.post_use",
    Dimension.FRACTION,
    "load down a post over what it carries, held at head and foot only",
    by=column.check_post,
    needs={
        "load_n": "post_load",
        "ply_width_m": "ply_width",
        "depth_m": "actual_depth",
        "plies": "plies?",
        "height_m": "span",
        "lumber": "named:lumber.design",
        "standards": "catalogue:timber standard",
        "wet": "wet?",
    },
)
def _post_use(
    load_n: float,
    ply_width_m: float,
    depth_m: float,
    plies: float | None,
    height_m: float,
    lumber: Lumber,
    standards: tuple[Entry, ...],
    wet: bool | None,
) -> float | Lacks:
    if lumber.compression_pa is None and not lumber.by_depth:
        return lacks("lumber")
    section = Section(ply_width_m, depth_m, int(plies or 1))
    # What the post carries is not told apart by kind here; as floor load it has no shorter duration to its credit.
    found = column.check_post(
        section,
        lumber,
        standards[0].design,
        {"live": load_n},
        unbraced_depth_m=height_m,
        unbraced_width_m=height_m,
        fastening="nailed" if section.plies > 1 else "solid",
        wet=bool(wet),
    )
    return found.ratio
