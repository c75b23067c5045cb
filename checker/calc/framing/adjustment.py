"""Adjusted strengths of lumber: reference value, size, members side by side, service, lateral stability.

strengths  bending_strength, shear_strength, bearing_strength, tension_strength, compression_strength
stiffness  mean_stiffness, low_stiffness
stability  effective_unbraced_length, beam_slenderness, stability_factor, lateral_factor
bearing    bearing_length_factor

The strengths come without the factor of duration, which depends on the combination of loads, without that
of stability, and without the resistance factor of limit states.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, positive, reaches
from checker.calc.errors import OutOfRange
from checker.calc.framing.timber import DepthValues, Lumber, Section, SizeFactor, TimberStandard

_PLIES_MOST = 12
_DEPTH_RANGE_M = (0.015, 1.5)
_WIDTH_RANGE_M = (0.01, 0.6)
_SLENDEREST = 50.0
SLENDERNESS = "the slenderness of the beam"
"""Name under which a slenderness is refused."""
BEARING_ADDED_M = 0.375 * 0.0254
BEARING_LONG_M = 6.0 * 0.0254
_NO_FACTOR = SizeFactor(math.inf, 1.0)


def bending_strength(section: Section, lumber: Lumber, standard: TimberStandard, repetitive: bool, wet: bool) -> float:
    """Bending strength of a member without duration and stability. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — factors. [ratio]
        repetitive: bool — whether the member is one of several side by side under a deck. [yes or no]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — strength. [Pa]
    Raises
        OutOfRange — a section that lumber has not, or for which no size factor is published.
    Notes
        value × size × side by side × built up × wet. The factor of members side by side and that of plies are
        not taken together: the greater one holds.
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    factor = _size(section, lumber.sizes, standard).bending
    value = _values(section, lumber).bending_pa * factor
    return value * _together(section, standard, repetitive) * _wet("bending", value, standard, wet)


def shear_strength(section: Section, lumber: Lumber, standard: TimberStandard, repetitive: bool, wet: bool) -> float:
    """Strength in shear along the grain without duration. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — factors. [ratio]
        repetitive: bool — whether the member is one of several side by side under a deck. [yes or no]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — strength. [Pa]
    Raises
        OutOfRange — a section that lumber has not, or for which no size factor is published.
    Notes
        The factor of members side by side counts for shear in limit states only.
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
        [2] CSA O86, 2009, 5.5.5 (KH and KZv in shear); from memory.
    """
    value = lumber.shear_pa * _size(section, lumber.sizes, standard).shear
    if standard.method == "limit states":
        value *= _together(section, standard, repetitive)
    return value * _wet("shear", value, standard, wet)


def bearing_strength(section: Section, lumber: Lumber, standard: TimberStandard, wet: bool) -> float:
    """Strength in compression across the grain, at a bearing, without duration. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — factors. [ratio]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — strength. [Pa]
    Raises
        OutOfRange — a section that lumber has not.
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    _checked(section)
    return lumber.bearing_pa * _wet("bearing", lumber.bearing_pa, standard, wet)


def tension_strength(section: Section, lumber: Lumber, standard: TimberStandard, wet: bool) -> float:
    """Strength in tension along the grain without duration. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values, tension among them. [Pa]
        standard: TimberStandard — factors. [ratio]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — strength. [Pa]
    Raises
        OutOfRange — a section that lumber has not, lumber without a value for tension.
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    value = _values(section, lumber).tension_pa
    if not value:
        raise OutOfRange("lumber", lumber.name, "lumber with a value for tension")
    value *= _size(section, lumber.sizes, standard).tension
    return value * _wet("tension", value, standard, wet)


def compression_strength(section: Section, lumber: Lumber, standard: TimberStandard, wet: bool) -> float:
    """Strength in compression along the grain without duration and stability. [Pa]

    Parameters
        section: Section — plies and their section. [m], within the range of lumber
        lumber: Lumber — reference values, compression among them. [Pa]
        standard: TimberStandard — factors. [ratio]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — strength. [Pa]
    Raises
        OutOfRange — a section that lumber has not, lumber without a value for compression.
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    value = _values(section, lumber).compression_pa
    if not value:
        raise OutOfRange("lumber", lumber.name, "lumber with a value for compression along the grain")
    value *= _size(section, lumber.sizes, standard).compression
    return value * _wet("compression", value, standard, wet)


def mean_stiffness(lumber: Lumber, standard: TimberStandard, wet: bool) -> float:
    """Modulus of elasticity for deflection. [Pa]

    Parameters
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — factors. [ratio]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — modulus. [Pa]
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    return lumber.stiffness_pa * _wet("stiffness", lumber.stiffness_pa, standard, wet)


def low_stiffness(lumber: Lumber, standard: TimberStandard, wet: bool) -> float:
    """Modulus of elasticity for stability. [Pa]

    Parameters
        lumber: Lumber — reference values. [Pa]
        standard: TimberStandard — factors. [ratio]
        wet: bool — whether it is wet in service. [yes or no]
    Returns
        float — modulus. [Pa]
    References
        [1] National Design Specification for Wood Construction, 2018, 4.3.
    """
    return lumber.stiffness_low_pa * _wet("stiffness", lumber.stiffness_low_pa, standard, wet)


def effective_unbraced_length(unbraced_m: float, depth_m: float, even_load: bool) -> float:
    """Effective length of a beam's compression edge between points that hold it. [m]

    Parameters
        unbraced_m: float — distance of the points that hold the edge. [m], over 0
        depth_m: float — depth of the beam. [m], over 0
        even_load: bool — whether the beam is on two supports with an even load alone. [yes or no]
    Returns
        float — effective length. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        2.06 lu where lu is under 7 depths; from there 1.63 lu + 3 d, and for any other load than an even one
        1.84 lu from 14.3 depths.
    References
        [1] National Design Specification for Wood Construction, 2018, Table 3.3.3 and its footnote 1 (the
            footnote from memory).
    Examples
        [1]: 8 ft unbraced at 9-1/4 in, even load.

        >>> round(effective_unbraced_length(96.0, 9.25, True), 2)
        184.23
    """
    ratio = positive("unbraced_m", unbraced_m) / positive("depth_m", depth_m)
    if ratio < 7.0:
        return 2.06 * unbraced_m
    if ratio > 14.3 and not even_load:
        return 1.84 * unbraced_m
    return 1.63 * unbraced_m + 3.0 * depth_m


def beam_slenderness(effective_length_m: float, width_m: float, depth_m: float) -> float:
    """Slenderness of a beam against buckling sideways. [ratio]

    Parameters
        effective_length_m: float — effective length of the compression edge. [m], over 0
        width_m: float — width of the beam. [m], over 0
        depth_m: float — depth of the beam. [m], over 0
    Returns
        float — slenderness, 50 at most. [ratio]
    Raises
        OutOfRange — a value outside its range, a slenderness over 50.
    Notes
        sqrt(le d / b2).
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3.3.
        [2] CSA O86, 2009, 6.5.6.4 (the same form and limit); from memory.
    Examples
        [1]: 12 ft unbraced, 2 x 8.

        >>> round(beam_slenderness(1.63 * 144 + 3 * 7.25, 1.5, 7.25), 2)
        28.75
    """
    slenderness = math.sqrt(
        positive("effective_length_m", effective_length_m) * positive("depth_m", depth_m)
    ) / positive("width_m", width_m)
    return between(SLENDERNESS, slenderness, 0.0, _SLENDEREST)


def stability_factor(slenderness_ratio: float, stiffness_low_pa: float, bending_pa: float) -> float:
    """Beam stability factor CL of allowable-stress design. [ratio]

    Parameters
        slenderness_ratio: float — slenderness of the beam. [ratio], over 0 to 50
        stiffness_low_pa: float — modulus of elasticity for stability, adjusted. [Pa], over 0
        bending_pa: float — bending strength with all factors but this one. [Pa], over 0
    Returns
        float — CL, over 0 up to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        F = 1.20 Emin / (RB2 Fb*); CL = (1 + F) / 1.9 - sqrt(((1 + F) / 1.9)2 - F / 0.95).
    References
        [1] National Design Specification for Wood Construction, 2018, 3.3.3.
        [2] Structural Wood Design Examples, 2015/2018, E1.6: CL 0.404.
    Examples
        [2]: Hem-Fir No. 2, 2 x 8, 12 ft unbraced, dead with roof live and wind.

        >>> round(stability_factor(28.75, 470000.0, 850.0 * 1.2 * 1.6), 3)
        0.404
    """
    between("slenderness_ratio", positive("slenderness_ratio", slenderness_ratio), 0.0, _SLENDEREST)
    critical_pa = 1.20 * positive("stiffness_low_pa", stiffness_low_pa) / slenderness_ratio**2
    ratio = critical_pa / positive("bending_pa", bending_pa)
    half = (1.0 + ratio) / 1.9
    return half - math.sqrt(half * half - ratio / 0.95)


def lateral_factor(slenderness_ratio: float, stiffness_low_pa: float, bending_pa: float) -> float:
    """Factor KL of limit-states design for beams held at points only. [ratio]

    Parameters
        slenderness_ratio: float — slenderness of the beam. [ratio], over 0 to 50
        stiffness_low_pa: float — modulus of elasticity for stability, adjusted. [Pa], over 0
        bending_pa: float — bending strength with all factors but this one. [Pa], over 0
    Returns
        float — KL, over 0 up to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        With CK = sqrt(0.97 E / Fb): 1 up to a slenderness of 10; 1 - (CB / CK)4 / 3 up to CK; from there
        0.65 E / (CB2 Fb). The clause is written for glued beams and their mean E; the low E taken here is on the
        safe side.
    References
        [1] CSA O86, 2009, 6.5.6.4; from memory.
    Examples
        [1]: no reduction of a stout beam.

        >>> lateral_factor(10.0, 6500e6, 11.8e6)
        1.0
    """
    between("slenderness_ratio", positive("slenderness_ratio", slenderness_ratio), 0.0, _SLENDEREST)
    ratio = positive("stiffness_low_pa", stiffness_low_pa) / positive("bending_pa", bending_pa)
    if slenderness_ratio <= 10.0:
        return 1.0
    limit = math.sqrt(0.97 * ratio)
    if slenderness_ratio <= limit:
        return 1.0 - (slenderness_ratio / limit) ** 4 / 3.0
    return min(1.0, 0.65 * ratio / slenderness_ratio**2)


def bearing_length_factor(bearing_m: float) -> float:
    """Factor for a short bearing that is not at the member's end. [ratio]

    Parameters
        bearing_m: float — length of the bearing along the grain. [m], over 0
    Returns
        float — Cb (KB in Canada), 1 or more. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (lb + 3/8 in) / lb under 6 in, where the bearing is 3 in or more from the end; 1 elsewhere.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.10.4.
        [2] CSA O86, 2009, 5.5.7.6 (the same within the rounding of its table); from memory.
    Examples
        [1]: a bearing of 1-1/2 in.

        >>> bearing_length_factor(1.5 * 0.0254)
        1.25
    """
    if positive("bearing_m", bearing_m) >= BEARING_LONG_M:
        return 1.0
    return (bearing_m + BEARING_ADDED_M) / bearing_m


def _checked(section: Section) -> Section:
    """Pass on a section that lumber can have, refuse any other."""
    between("section, width of a ply", positive("section, width of a ply", section.ply_width_m), *_WIDTH_RANGE_M)
    between("section, depth", positive("section, depth", section.depth_m), *_DEPTH_RANGE_M)
    if not 1 <= section.plies <= _PLIES_MOST:
        raise OutOfRange("section, plies", section.plies, f"from 1 to {_PLIES_MOST}")
    return section


def _size(section: Section, sizes: str, standard: TimberStandard) -> SizeFactor:
    """Size factors of a section in a class: of the thickest group it reaches, those of the next depth."""
    _checked(section)
    if not sizes:
        return _NO_FACTOR
    if (rows := standard.size_factors.get(sizes)) is None:
        raise OutOfRange("sizes", sizes, f"one of {', '.join(sorted(standard.size_factors))}")
    found: SizeFactor | None = None
    group_m = max(
        (row.from_thickness_m for row in rows if reaches(section.ply_width_m, row.from_thickness_m)), default=0.0
    )
    for row in rows:
        if (
            row.from_thickness_m == group_m
            and reaches(row.up_to_depth_m, section.depth_m)
            and (found is None or row.up_to_depth_m < found.up_to_depth_m)
        ):
            found = row
    if found is None:
        raise OutOfRange(
            "section",
            f"{section.ply_width_m:.4g} m by {section.depth_m:.4g} m",
            f"a size for which “{sizes}” has factors; thicker beams and posts have values of their own",
        )
    return found


def _values(section: Section, lumber: Lumber) -> DepthValues:
    """Reference values of bending, tension and compression that hold for a section's depth."""
    if not lumber.by_depth:
        return DepthValues(math.inf, lumber.bending_pa, lumber.tension_pa or 0.0, lumber.compression_pa or 0.0)
    for values in lumber.by_depth:
        if reaches(values.up_to_depth_m, section.depth_m):
            return values
    most_m = lumber.by_depth[-1].up_to_depth_m
    raise OutOfRange("section, depth", section.depth_m, f"up to {most_m:.4g}, the deepest that has values")


def _together(section: Section, standard: TimberStandard, repetitive: bool) -> float:
    """Factor of members side by side or of plies, the greater of those that hold."""
    return max(
        standard.repetitive if repetitive else 1.0,
        standard.built_up if section.plies >= standard.built_up_plies else 1.0,
    )


def _wet(name: str, value_pa: float, standard: TimberStandard, wet: bool) -> float:
    """Wet factor of a property whose value, with its size factor, is given."""
    if not wet or value_pa <= standard.wet_exempt.get(name, 0.0):
        return 1.0
    return standard.wet.get(name, 1.0)
