"""Posts and studs: buckling, capacity, and axial load together with bending.

slenderness    column_slenderness
allowable      euler_stress, column_stability_factor
limit states   column_size_factor, column_slenderness_factor
posts          check_post
with bending   bending_with_compression, bending_with_tension
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from checker.calc._checks import between, not_negative, positive
from checker.calc.errors import OutOfRange
from checker.calc.framing import adjustment
from checker.calc.framing._combinations import duration_of, that_matter
from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import Use
from checker.calc.framing.timber import Combination, LoadKind, Lumber, Section, TimberStandard

Fastening = Literal["solid", "nailed", "bolted"]
"""How the plies of a built-up post are held together."""
_SLENDEREST = 50.0
_SAWN = 0.8
_ALLOWABLE_BUILT_UP: Mapping[Fastening, float] = {"solid": 1.0, "nailed": 0.6, "bolted": 0.75}
_LIMIT_BUILT_UP: Mapping[Fastening, float] = {"solid": 1.0, "nailed": 0.6, "bolted": 0.8}


def column_slenderness(unbraced_m: float, side_m: float, end_factor_ratio: float) -> float:
    """Slenderness of a post about one axis. [ratio]

    Parameters
        unbraced_m: float — length between points that hold the post in this direction. [m], 0 or more
        side_m: float — side of the post in this direction. [m], over 0
        end_factor_ratio: float — effective over real length; 1 for ends that are held but turn. [ratio], over 0
    Returns
        float — slenderness, 50 at most. [ratio]
    Raises
        OutOfRange — a value outside its range, a slenderness over 50.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.7.1 (the limit of 50 from memory).
    Examples
        A 4 x 4 of 8 ft.

        >>> round(column_slenderness(96.0, 3.5, 1.0), 2)
        27.43
    """
    effective_m = positive("end_factor_ratio", end_factor_ratio) * not_negative("unbraced_m", unbraced_m)
    return between("the slenderness of the post", effective_m / positive("side_m", side_m), 0.0, _SLENDEREST)


def euler_stress(stiffness_low_pa: float, slenderness_ratio: float) -> float:
    """Critical buckling stress of a post. [Pa]

    Parameters
        stiffness_low_pa: float — modulus of elasticity for stability, adjusted. [Pa], over 0
        slenderness_ratio: float — slenderness. [ratio], over 0 to 50
    Returns
        float — stress. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        0.822 Emin / (le / d)2.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.7.1.
    Examples
        >>> euler_stress(500000.0, 10.0)
        4110.0
    """
    between("slenderness_ratio", positive("slenderness_ratio", slenderness_ratio), 0.0, _SLENDEREST)
    return 0.822 * positive("stiffness_low_pa", stiffness_low_pa) / slenderness_ratio**2


def column_stability_factor(
    slenderness_ratio: float, stiffness_low_pa: float, compression_pa: float, built_up_ratio: float
) -> float:
    """Column stability factor CP of allowable-stress design, of sawn lumber. [ratio]

    Parameters
        slenderness_ratio: float — slenderness, 0 if held all along. [ratio], 0 to 50
        stiffness_low_pa: float — modulus of elasticity for stability, adjusted. [Pa], over 0
        compression_pa: float — strength along the grain with all factors but this one. [Pa], over 0
        built_up_ratio: float — Kf: 1 of a solid post, 0.6 across the plies of a nailed one. [ratio], over 0 to 1
    Returns
        float — CP, over 0 up to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        With r = FcE / Fc* and c = 0.8: Kf ((1 + r) / 2c - sqrt(((1 + r) / 2c)2 - r / c)).
    References
        [1] National Design Specification for Wood Construction, 2018, 3.7.1 and 15.3.2.
        [2] Structural Wood Design, a practice-oriented approach, 2007, example 5.7: 0.1679.
    Examples
        [2]: three 2 x 6 nailed, Douglas Fir-Larch No. 1, 12 ft.

        >>> round(column_stability_factor(32.0, 620000.0, 1650.0, 0.6), 4)
        0.1679
    """
    between("built_up_ratio", positive("built_up_ratio", built_up_ratio), 0.0, 1.0)
    positive("compression_pa", compression_pa)
    if slenderness_ratio == 0.0:
        return built_up_ratio
    ratio = euler_stress(stiffness_low_pa, slenderness_ratio) / compression_pa
    half = (1.0 + ratio) / (2 * _SAWN)
    return built_up_ratio * (half - math.sqrt(half * half - ratio / _SAWN))


def column_size_factor(side_m: float, unbraced_m: float) -> float:
    """Size factor KZc of limit-states design in compression along the grain. [ratio]

    Parameters
        side_m: float — side of the post in the direction of buckling. [m], over 0
        unbraced_m: float — length between points that hold it. [m], over 0
    Returns
        float — KZc, 1.3 at most. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        6.3 (d L) to the -0.13, in millimetres.
    References
        [1] CSA O86, 2009, 5.5.6.2.2; from memory.
    Examples
        [1]: 140 mm and 3 m.

        >>> round(column_size_factor(0.140, 3.0), 3)
        1.17
    """
    product = positive("side_m", side_m) * 1000 * positive("unbraced_m", unbraced_m) * 1000
    return min(1.3, 6.3 / math.pow(product, 0.13))


def column_slenderness_factor(
    slenderness_ratio: float, stiffness_low_pa: float, compression_pa: float, size_factor_ratio: float
) -> float:
    """Slenderness factor KC of limit-states design. [ratio]

    Parameters
        slenderness_ratio: float — slenderness. [ratio], 0 to 50
        stiffness_low_pa: float — E05, adjusted. [Pa], over 0
        compression_pa: float — strength along the grain, adjusted. [Pa], over 0
        size_factor_ratio: float — KZc. [ratio], over 0
    Returns
        float — KC, over 0 up to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1 / (1 + Fc KZc CC3 / (35 E05)).
    References
        [1] CSA O86, 2009, 5.5.6.2.4; from memory.
    Examples
        [1]: S-P-F No. 2, slenderness 20.

        >>> round(column_slenderness_factor(20.0, 6500e6, 11.5e6, 1.2), 3)
        0.673
    """
    between("slenderness_ratio", slenderness_ratio, 0.0, _SLENDEREST)
    strength_pa = positive("compression_pa", compression_pa) * positive("size_factor_ratio", size_factor_ratio)
    return 1 / (1 + strength_pa * slenderness_ratio**3 / (35 * positive("stiffness_low_pa", stiffness_low_pa)))


def check_post(
    section: Section,
    lumber: Lumber,
    standard: TimberStandard,
    loads_n: Mapping[LoadKind, float],
    *,
    unbraced_depth_m: float,
    unbraced_width_m: float,
    fastening: Fastening = "solid",
    end_factor: float = 1.0,
    wet: bool = False,
) -> Use:
    """Use of a post's capacity under loads along its axis. [ratio]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values, compression among them. [Pa]
        standard: TimberStandard — combinations and factors. [ratio]
        loads_n: Mapping[LoadKind, float] — axial loads by kind, without factors. [N], each 0 or more
        unbraced_depth_m: float — length free to buckle in the direction of the depth. [m], 0 or more
        unbraced_width_m: float — the same in the direction of the width, across the plies. [m], 0 or more
        fastening: Fastening — how plies are held together; of one ply, solid. [choice]
        end_factor: float — effective over real length. [ratio], over 0
        wet: bool — whether the post is wet in service. [yes or no]
    Returns
        Use — demand over capacity, in newtons. [ratio]
    Raises
        OutOfRange — a value outside its range, a slenderness over 50, plies with nothing that holds them.
    Notes
        The weaker of the two directions holds; only across its plies is a built-up post weaker than a solid one,
        and there it is no weaker than its plies one by one. In limit states a built-up post has 60 % (nailed)
        or 80 % (bolted) of a solid one across the plies; factors of members side by side are not taken.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.6, 3.7 and 15.3.
        [2] CSA O86, 2009, 5.5.6; from memory.
    """
    if section.plies > 1 and fastening not in ("nailed", "bolted"):
        raise OutOfRange("fastening", fastening, "'nailed' or 'bolted' for a post of several plies")
    loads = Loads(points=tuple((kind, not_negative("loads_n", load), 0.0) for kind, load in loads_n.items()))
    compression_pa = adjustment.compression_strength(section, lumber, standard, wet)
    low_pa = adjustment.low_stiffness(lumber, standard, wet)
    allowable = standard.method == "allowable stress"
    built_up = (_ALLOWABLE_BUILT_UP if allowable else _LIMIT_BUILT_UP)[fastening if section.plies > 1 else "solid"]
    ways = [(section.depth_m, unbraced_depth_m, 1.0), (section.width_m, unbraced_width_m, built_up)]
    for side_m, length_m, _ in ways:
        column_slenderness(length_m, side_m, end_factor)
    worst: Use | None = None
    for combination in that_matter(standard.strength, loads):
        stress_pa = compression_pa * duration_of(combination, standard, loads, 0.0)
        reduced = min(
            max(
                together * _stable(side_m, length_m, end_factor, low_pa, stress_pa, allowable),
                _stable(section.ply_width_m, length_m, end_factor, low_pa, stress_pa, allowable)
                if together < 1.0
                else 0.0,
            )
            for side_m, length_m, together in ways
        )
        capacity_n = stress_pa * reduced * section.area_m2 * standard.resistance.get("compression", 1.0)
        demand_n = _axial(combination, loads_n)
        if worst is None or demand_n / capacity_n > worst.ratio:
            worst = Use(demand_n / capacity_n, combination.name, demand_n, capacity_n)
    assert worst is not None
    return worst


def bending_with_compression(
    axial_pa: float,
    bending_pa: float,
    compression_strength_pa: float,
    bending_strength_pa: float,
    euler_stress_pa: float,
) -> float:
    """Use of a member that is pressed along its axis and bent about its strong axis. [ratio]

    Parameters
        axial_pa: float — stress along the axis. [Pa], 0 or more and under the buckling stress
        bending_pa: float — bending stress about the strong axis. [Pa], 0 or more
        compression_strength_pa: float — strength along the grain with all factors, of the weaker axis. [Pa],
            over 0
        bending_strength_pa: float — bending strength with all factors. [Pa], over 0
        euler_stress_pa: float — buckling stress in the plane of bending. [Pa], over 0
    Returns
        float — use. [ratio]
    Raises
        OutOfRange — a value outside its range, an axial stress that reaches the buckling stress.
    Notes
        (fc / Fc')2 + fb / (Fb' (1 - fc / FcE)).
    References
        [1] National Design Specification for Wood Construction, 2018, 3.9.2, equation (3.9-3).
        [2] Structural Wood Design Examples, 2015/2018, E1.7.
    Examples
        >>> bending_with_compression(100.0, 500.0, 1000.0, 1000.0, 1000.0)
        0.5655555555555556
    """
    not_negative("axial_pa", axial_pa)
    left = 1 - axial_pa / positive("euler_stress_pa", euler_stress_pa)
    if left <= 0:
        raise OutOfRange("axial_pa", axial_pa, f"under the buckling stress, {euler_stress_pa:.12g}")
    pressed = axial_pa / positive("compression_strength_pa", compression_strength_pa)
    bent = not_negative("bending_pa", bending_pa) / positive("bending_strength_pa", bending_strength_pa)
    return pressed**2 + bent / left


def bending_with_tension(
    axial_pa: float,
    bending_pa: float,
    tension_strength_pa: float,
    bending_strength_pa: float,
    bending_strength_stable_pa: float,
) -> float:
    """Use of a member that is drawn along its axis and bent. [ratio]

    Parameters
        axial_pa: float — stress along the axis. [Pa], 0 or more
        bending_pa: float — bending stress. [Pa], 0 or more
        tension_strength_pa: float — strength in tension with all factors. [Pa], over 0
        bending_strength_pa: float — bending strength with all factors but that of stability. [Pa], over 0
        bending_strength_stable_pa: float — bending strength with all factors. [Pa], over 0
    Returns
        float — the greater of the uses of the two edges. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        ft / Ft' + fb / Fb* of the drawn edge, (fb - ft) / Fb** of the pressed edge.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.9.1, equations (3.9-1) and (3.9-2).
        [2] Structural Wood Design Examples, 2015/2018, E1.6.
    Examples
        >>> bending_with_tension(100.0, 500.0, 500.0, 1000.0, 400.0)
        1.0
    """
    drawn = not_negative("axial_pa", axial_pa) / positive("tension_strength_pa", tension_strength_pa)
    bent = not_negative("bending_pa", bending_pa) / positive("bending_strength_pa", bending_strength_pa)
    pressed_pa = max(0.0, bending_pa - axial_pa)
    return max(drawn + bent, pressed_pa / positive("bending_strength_stable_pa", bending_strength_stable_pa))


def _stable(
    side_m: float, unbraced_m: float, end_factor: float, low_pa: float, stress_pa: float, allowable: bool
) -> float:
    """Factor of buckling in one direction, with the size factor of limit states; 0 of what is too slender."""
    slenderness = unbraced_m * end_factor / side_m
    if slenderness > _SLENDEREST:
        return 0.0
    if allowable:
        return column_stability_factor(slenderness, low_pa, stress_pa, 1.0)
    size = column_size_factor(side_m, unbraced_m) if unbraced_m else 1.0
    return size * column_slenderness_factor(slenderness, low_pa, stress_pa, size)


def _axial(combination: Combination, loads_n: Mapping[LoadKind, float]) -> float:
    """Axial load of a combination. [N]"""
    return math.fsum(factor * loads_n.get(kind, 0.0) for kind, factor in combination.factors.items())
