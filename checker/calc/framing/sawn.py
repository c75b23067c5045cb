"""Members of lumber in bending: what they bear, how far they span, which section is enough.

one member   check_member, Use, MemberCheck
the inverse  allowable_span, least_section, needed, Needed

Both methods take the same way: the demand of each combination of loads over the capacity with its factors. In
allowable-stress design the duration of the loads raises the strengths but not those across the grain; in
limit states it counts for all strengths, the loads carry factors and the strengths a resistance factor.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checker.calc._checks import between, positive, reaches
from checker.calc.errors import OutOfRange
from checker.calc.framing import adjustment
from checker.calc.framing._combinations import duration_of, that_matter
from checker.calc.framing.beam import LoadedBeam, Loads
from checker.calc.framing.timber import Combination, Lumber, Section, TimberStandard

SPAN_RANGE_M = (0.1, 30.0)
"""Spans that a member can be checked for."""
_GUESS_M = 4.0


@dataclass(frozen=True, slots=True)
class Use:
    """How much of a capacity the worst combination uses; demand and capacity in SI."""

    ratio: float
    combination: str
    demand: float
    capacity: float


@dataclass(frozen=True, slots=True)
class MemberCheck:
    """Use of each capacity of a member, and which governs.

    bending in N m, shear and bearing in N, deflections in m.
    """

    bending: Use
    shear: Use
    bearing: Use | None
    live_deflection: Use
    total_deflection: Use | None
    governs: str
    worst: float
    live_span_ratio: float
    """Span over the deflection under live load; infinite without one."""
    total_span_ratio: float

    def uses(self) -> dict[str, Use]:
        """Those that were checked, by name."""
        return _named(self.bending, self.shear, self.bearing, self.live_deflection, self.total_deflection)


@dataclass(frozen=True, slots=True)
class Needed:
    """Reference values with which a member would just do; the bearing length for a given strength."""

    bending_pa: float
    shear_pa: float
    stiffness_pa: float
    bearing_length_m: float | None


def check_member(
    section: Section,
    lumber: Lumber,
    standard: TimberStandard,
    span_m: float,
    loads: Loads,
    *,
    repetitive: bool,
    unbraced_m: float = 0.0,
    bearing_m: float | None = None,
    live_limit: float = 360.0,
    total_limit: float | None = None,
    wet: bool = False,
    shear_within_depth: bool = True,
    away_from_end: bool = False,
    creep: bool = False,
    overhang_m: float = 0.0,
) -> MemberCheck:
    """Use of a member's bending, shear, bearing and stiffness under its loads. [ratio]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — combinations and factors. [ratio]
        span_m: float — centre to centre of the supports. [m], 0.1 to 30
        loads: Loads — loads by kind, without factors. [N/m, N]
        repetitive: bool — whether the member is one of several side by side under a deck. [yes or no]
        unbraced_m: float — distance of the points that hold the compression edge, 0 if held all along.
            [m], 0 or more
        bearing_m: float | None — length of bearing at a support; None leaves bearing out. [m], over 0
        live_limit: float — the deflection under live load may be span / this. [ratio], over 0
        total_limit: float | None — the same under all load; None leaves it out. [ratio], over 0
        wet: bool — whether the member is wet in service. [yes or no]
        shear_within_depth: bool — whether line load within the depth of a support counts for shear.
            [yes or no]
        away_from_end: bool — whether the bearings are 3 in or more from the member's ends, so that a short
            bearing is stronger. [yes or no]
        creep: bool — whether the deflection under all load takes the lasting load with its creep. [yes or no]
        overhang_m: float — length past the right support. [m], 0 or more
    Returns
        MemberCheck — uses, the one that governs and its ratio: 1 just does. [ratio]
    Raises
        OutOfRange — a value outside its range, a section without published factors, a slenderness over 50.
    Notes
        All plies act together and are held together against buckling. Of an overhang the same loads act on
        the whole length; a live load that is on one part alone is for the caller to try. The end of an
        overhang may drop twice its length / the limit. In limit states the duration factor falls where the
        lasting load is greater than the others: 1 - 0.5 log10(PL / PS), not under the lasting factor.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3 to 3.5, 3.10 and 4.3.
        [2] CSA O86, 2009, 4.3.2.3 and 5.5 (the fall of the duration factor from memory).
    """
    between("span_m", positive("span_m", span_m), *SPAN_RANGE_M)
    strengths = _Strengths(section, lumber, standard, repetitive, wet, unbraced_m, loads.uniform and not overhang_m)
    beam = LoadedBeam(span_m, loads, overhang_m)
    left_out_m = 0.0 if shear_within_depth else section.depth_m
    bearing_n = None
    if bearing_m is not None:
        bearing_n = strengths.bearing_pa * section.width_m * positive("bearing_m", bearing_m)
        if away_from_end:
            bearing_n *= adjustment.bearing_length_factor(bearing_m)
    bending: Use | None = None
    shear: Use | None = None
    bearing: Use | None = None
    for combination in that_matter(standard.strength, loads):
        factors = combination.factors
        duration = duration_of(combination, standard, loads, span_m + overhang_m)
        bending = _worse(
            bending,
            combination,
            beam.moment(factors),
            strengths.bending_with(duration) * section.modulus_m3,
        )
        shear = _worse(
            shear,
            combination,
            beam.shear(factors, left_out_m),
            strengths.shear_pa * duration * section.area_m2 / 1.5,
        )
        if bearing_n is not None:
            counted = duration if standard.method == "limit states" else 1.0
            pressed_n = max(0.0, *beam.reactions(factors))
            bearing = _worse(bearing, combination, pressed_n, bearing_n * counted)
    assert bending is not None
    assert shear is not None
    stiffness_n_m2 = adjustment.mean_stiffness(lumber, standard, wet) * section.inertia_m4
    live = _sag(standard.live_deflection, loads, beam, span_m, stiffness_n_m2, overhang_m, live_limit, 1.0)
    dead = standard.creep if creep else 1.0
    total = _sag(standard.total_deflection, loads, beam, span_m, stiffness_n_m2, overhang_m, total_limit or 1.0, dead)
    uses = _named(bending, shear, bearing, live, total if total_limit else None)
    governs = max(uses, key=lambda name: uses[name].ratio)
    return MemberCheck(
        bending,
        shear,
        bearing,
        live,
        total if total_limit else None,
        governs,
        uses[governs].ratio,
        live_limit / live.ratio if live.ratio else math.inf,
        (total_limit or 1.0) / total.ratio if total.ratio else math.inf,
    )


def allowable_span(
    section: Section,
    lumber: Lumber,
    standard: TimberStandard,
    loads: Loads,
    *,
    repetitive: bool,
    unbraced_m: float = 0.0,
    bearing_m: float | None = None,
    live_limit: float = 360.0,
    total_limit: float | None = None,
    wet: bool = False,
    shear_within_depth: bool = True,
    away_from_end: bool = False,
    creep: bool = False,
) -> tuple[float, str]:
    """Greatest span of a member under an even load, and what governs it. [m]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — combinations and factors. [ratio]
        loads: Loads — line loads by kind over the whole span. [N/m], together over 0
        repetitive: bool — as in `check_member`. [yes or no]
        unbraced_m: float — as in `check_member`. [m], 0 or more
        bearing_m: float | None — as in `check_member`. [m], over 0
        live_limit: float — as in `check_member`. [ratio], over 0
        total_limit: float | None — as in `check_member`. [ratio], over 0
        wet: bool — as in `check_member`. [yes or no]
        shear_within_depth: bool — as in `check_member`. [yes or no]
        away_from_end: bool — as in `check_member`. [yes or no]
        creep: bool — as in `check_member`. [yes or no]
    Returns
        tuple[float, str] — span, 30 m at most, and the name of the check that governs. [m]
    Raises
        OutOfRange — a value outside its range, parts or point loads, no load, a span under 0.1 m.
    Notes
        Under an even load each use follows a power of the span: bending the second, bearing the first,
        deflection the third, shear the span less the depths that are left out. One check gives them all.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3 to 3.5 and 3.10.
    """
    if not loads.uniform:
        raise OutOfRange("loads", loads, "line loads over the whole span")
    left_out_m = 0.0 if shear_within_depth else 2 * section.depth_m
    guess_m = max(_GUESS_M, 2 * left_out_m)
    check = check_member(
        section,
        lumber,
        standard,
        guess_m,
        loads,
        repetitive=repetitive,
        unbraced_m=unbraced_m,
        bearing_m=bearing_m,
        live_limit=live_limit,
        total_limit=total_limit,
        wet=wet,
        shear_within_depth=shear_within_depth,
        away_from_end=away_from_end,
        creep=creep,
    )
    if check.bending.demand == 0.0:
        raise OutOfRange("loads", loads, "a load that a combination counts")
    spans = {}
    for name, use in check.uses().items():
        if use.ratio == 0.0:
            continue
        if name == "shear":
            spans[name] = left_out_m + (guess_m - left_out_m) / use.ratio
        else:
            spans[name] = guess_m * use.ratio ** -_POWERS[name]
    governs = min(spans, key=lambda name: spans[name])
    if spans[governs] < SPAN_RANGE_M[0]:
        raise OutOfRange("the span that the load allows", spans[governs], f"{SPAN_RANGE_M[0]:.12g} or more")
    return min(spans[governs], SPAN_RANGE_M[1]), governs


def least_section(
    candidates: Sequence[Section],
    lumber: Lumber,
    standard: TimberStandard,
    span_m: float,
    loads: Loads,
    *,
    repetitive: bool,
    unbraced_m: float = 0.0,
    bearing_m: float | None = None,
    live_limit: float = 360.0,
    total_limit: float | None = None,
    wet: bool = False,
    shear_within_depth: bool = True,
    away_from_end: bool = False,
    creep: bool = False,
    overhang_m: float = 0.0,
) -> Section | None:
    """First section, in order of depth and then of plies, that does. [m]

    Parameters
        candidates: Sequence[Section] — sections to choose from, in any order. [m], each within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — combinations and factors. [ratio]
        span_m: float — centre to centre of the supports. [m], 0.1 to 30
        loads: Loads — loads by kind, without factors. [N/m, N]
        repetitive: bool — as in `check_member`. [yes or no]
        unbraced_m: float — as in `check_member`. [m], 0 or more
        bearing_m: float | None — as in `check_member`. [m], over 0
        live_limit: float — as in `check_member`. [ratio], over 0
        total_limit: float | None — as in `check_member`. [ratio], over 0
        wet: bool — as in `check_member`. [yes or no]
        shear_within_depth: bool — as in `check_member`. [yes or no]
        away_from_end: bool — as in `check_member`. [yes or no]
        creep: bool — as in `check_member`. [yes or no]
        overhang_m: float — as in `check_member`. [m], 0 or more
    Returns
        Section | None — the section; None if none of them does. [m]
    Raises
        OutOfRange — as `check_member`; a candidate too slender for its unbraced length is passed over.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3 to 3.5 and 3.10.
    """
    for section in sorted(candidates, key=lambda each: (each.depth_m, each.plies, each.ply_width_m)):
        try:
            check = check_member(
                section,
                lumber,
                standard,
                span_m,
                loads,
                repetitive=repetitive,
                unbraced_m=unbraced_m,
                bearing_m=bearing_m,
                live_limit=live_limit,
                total_limit=total_limit,
                wet=wet,
                shear_within_depth=shear_within_depth,
                away_from_end=away_from_end,
                creep=creep,
                overhang_m=overhang_m,
            )
        except OutOfRange as refusal:
            if refusal.name == adjustment.SLENDERNESS:
                continue
            raise
        if reaches(1.0, check.worst):
            return section
    return None


def needed(
    section: Section,
    standard: TimberStandard,
    span_m: float,
    loads: Loads,
    *,
    repetitive: bool,
    sizes: str = "dimension",
    bearing_pa: float | None = None,
    live_limit: float = 360.0,
    total_limit: float | None = None,
    wet: bool = False,
    shear_within_depth: bool = True,
    away_from_end: bool = False,
    creep: bool = False,
    overhang_m: float = 0.0,
) -> Needed:
    """Reference values that lumber would need for the member just to do. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        standard: TimberStandard — combinations and factors. [ratio]
        span_m: float — centre to centre of the supports. [m], 0.1 to 30
        loads: Loads — loads by kind, without factors. [N/m, N]
        repetitive: bool — as in `check_member`. [yes or no]
        sizes: str — class of size factors of the lumber sought; empty for none. [name]
        bearing_pa: float | None — strength across the grain, for the length of bearing. [Pa], over 0
        live_limit: float — as in `check_member`. [ratio], over 0
        total_limit: float | None — as in `check_member`. [ratio], over 0
        wet: bool — as in `check_member`. [yes or no]
        shear_within_depth: bool — as in `check_member`. [yes or no]
        away_from_end: bool — as in `check_member`. [yes or no]
        creep: bool — as in `check_member`. [yes or no]
        overhang_m: float — as in `check_member`. [m], 0 or more
    Returns
        Needed — bending, shear, modulus of elasticity, length of bearing. [Pa, m]
    Raises
        OutOfRange — as `check_member`.
    Notes
        The compression edge is held all along. The values are those before the size factor, as grading rules
        publish them. Lumber of unit values is checked: its uses are the values needed.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3 to 3.5, 3.10 and 4.3.
    """
    unit = Lumber("unit", 1.0, 1.0, 1.0, 1.0, 1.0, sizes=sizes)
    if bearing_pa is not None:
        unit = replace(unit, bearing_pa=positive("bearing_pa", bearing_pa))

    def uses(method: TimberStandard, is_wet: bool) -> MemberCheck:
        return check_member(
            section,
            unit,
            method,
            span_m,
            loads,
            repetitive=repetitive,
            bearing_m=None if bearing_pa is None else 1.0,
            live_limit=live_limit,
            total_limit=total_limit,
            wet=is_wet,
            shear_within_depth=shear_within_depth,
            creep=creep,
            overhang_m=overhang_m,
        )

    check = uses(replace(standard, wet_exempt={}) if wet else standard, wet)
    bending_pa = check.bending.ratio
    if wet and "bending" in standard.wet_exempt:
        dry_pa = uses(standard, False).bending.ratio
        sized = adjustment.bending_strength(
            section, unit, replace(standard, repetitive=1.0, built_up=1.0), False, False
        )
        bending_pa = dry_pa if dry_pa * sized <= standard.wet_exempt["bending"] else bending_pa
    length_m = check.bearing.ratio if check.bearing else None
    if length_m and away_from_end:
        length_m = _shortened(length_m)
    stiffness_pa = max(use.ratio for use in (check.live_deflection, check.total_deflection) if use)
    return Needed(bending_pa, check.shear.ratio, stiffness_pa, length_m)


_POWERS = {"bending": 1 / 2, "bearing": 1.0, "live deflection": 1 / 3, "total deflection": 1 / 3}


class _Strengths:
    """Strengths of a member with all factors but the duration and, in bending, stability."""

    def __init__(
        self,
        section: Section,
        lumber: Lumber,
        standard: TimberStandard,
        repetitive: bool,
        wet: bool,
        unbraced_m: float,
        even_load: bool,
    ) -> None:
        resistance = standard.resistance
        self.bending_pa = adjustment.bending_strength(section, lumber, standard, repetitive, wet)
        self.shear_pa = adjustment.shear_strength(section, lumber, standard, repetitive, wet) * resistance.get(
            "shear", 1.0
        )
        self.bearing_pa = adjustment.bearing_strength(section, lumber, standard, wet) * resistance.get("bearing", 1.0)
        self.phi = resistance.get("bending", 1.0)
        self.low_pa = adjustment.low_stiffness(lumber, standard, wet)
        self.limit_states = standard.method == "limit states"
        self.slenderness = 0.0
        if unbraced_m < 0 or not math.isfinite(unbraced_m):
            raise OutOfRange("unbraced_m", unbraced_m, "a finite number, 0 or more")
        if unbraced_m > 0 and section.depth_m > section.width_m:
            length_m = (
                1.92 * unbraced_m
                if self.limit_states
                else adjustment.effective_unbraced_length(unbraced_m, section.depth_m, even_load)
            )
            self.slenderness = adjustment.beam_slenderness(length_m, section.width_m, section.depth_m)

    def bending_with(self, duration: float) -> float:
        """Bending strength under a duration of load, with stability. [Pa]"""
        strength_pa = self.bending_pa * duration
        if self.slenderness:
            factor = adjustment.lateral_factor if self.limit_states else adjustment.stability_factor
            strength_pa *= factor(self.slenderness, self.low_pa, strength_pa)
        return strength_pa * self.phi


def _worse(so_far: Use | None, combination: Combination, demand: float, capacity: float) -> Use:
    """The greater use of two."""
    ratio = demand / capacity
    if so_far is not None and so_far.ratio >= ratio:
        return so_far
    return Use(ratio, combination.name, demand, capacity)


def _sag(
    combinations: Sequence[Combination],
    loads: Loads,
    beam: LoadedBeam,
    span_m: float,
    stiffness_n_m2: float,
    overhang_m: float,
    limit: float,
    dead: float,
) -> Use:
    """Deflection against its limit, between the supports or at the end of an overhang."""
    allowed_m = span_m / positive("the limit of the deflection", limit)
    worst: Use | None = None
    for combination in that_matter(combinations, loads):
        factors = combination.factors
        if dead != 1.0 and "dead" in factors:
            factors = {**factors, "dead": factors["dead"] * dead}
        sag_m = beam.sag(factors) / stiffness_n_m2
        worst = _worse(worst, combination, sag_m, allowed_m)
        if overhang_m:
            tip_m = abs(beam.tip_drop(factors)) / stiffness_n_m2
            worst = _worse(worst, combination, tip_m, 2 * overhang_m / limit)
    assert worst is not None
    return worst


def _named(bending: Use, shear: Use, bearing: Use | None, live: Use, total: Use | None) -> dict[str, Use]:
    """Uses by name, without those that were left out."""
    named = {
        "bending": bending,
        "shear": shear,
        "bearing": bearing,
        "live deflection": live,
        "total deflection": total,
    }
    return {name: use for name, use in named.items() if use is not None}


def _shortened(length_m: float) -> float:
    """Length of bearing away from the end that carries what a length does without the factor."""
    shorter_m = length_m - adjustment.BEARING_ADDED_M
    if shorter_m >= adjustment.BEARING_LONG_M:
        return length_m
    return max(shorter_m, 0.0)
