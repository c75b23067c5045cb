"""Thermal resistance and U of layered and framed constructions.

layers        layer_resistance, series_resistance
inverses      u_from_resistance, resistance_from_u
framing       framing_share, framing_share_with_extras
side by side  parallel_resistance
methods       parallel_path, isothermal_planes, combined_method, effective_resistance
nominal       nominal_resistances
areas         area_weighted_u

The methods differ on purpose, and codes say which one their figures mean: parallel path takes whole paths
side by side (United States); isothermal planes takes each layer side by side, then the layers in series;
the combined method is the mean of both (ISO 6946); the effective resistance of the Canadian code takes the
framed layer alone side by side. A member never stands in series with its own cavity.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, between, positive
from checker.calc.thermal import _sequences as lists


def layer_resistance(thickness_m: float, conductivity_w_mk: float) -> float:
    """Thermal resistance of an even layer. [m2K/W]

    Parameters
        thickness_m: float — thickness of the layer. [m], over 0
        conductivity_w_mk: float — thermal conductivity. [W/mK], over 0
    Returns
        float — resistance. [m2K/W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        thickness / conductivity. Hollow, lapped and profiled products have a resistance an item and are not
        scaled by thickness.
    References
        [1] ISO 6946, 2007, 5.1, equation (1).
        [2] Scottish building standards, annex 6.B, 6.B.2, timber framed wall.
    Examples
        [2]: 140 mm of 0.04 W/mK give 3.5.

        >>> round(layer_resistance(0.140, 0.04), 6)
        3.5
    """
    return positive("thickness_m", thickness_m) / positive("conductivity_w_mk", conductivity_w_mk)


def series_resistance(resistances_m2k_w: Sequence[float]) -> float:
    """Resistance of layers one behind the other. [m2K/W]

    Parameters
        resistances_m2k_w: Sequence[float] — each layer, films and air spaces too. [m2K/W], each 0 or more,
            one or more
    Returns
        float — sum. [m2K/W]
    Raises
        OutOfRange — a value outside its range, an empty list.
    Notes
        Only for layers that cover the whole area: a stud beside its insulation is no layer of this kind.
    References
        [1] ISO 6946, 2007, 6.1, equation (4).
        [2] Scottish building standards, annex 6.B, 6.B.2, path through the insulation.
    Examples
        [2]

        >>> round(series_resistance([0.04, 0.132, 0.18, 0.069, 3.5, 0.06, 0.13]), 3)
        4.111
    """
    return math.fsum(lists.all_not_negative("resistances_m2k_w", resistances_m2k_w))


def u_from_resistance(resistance_m2k_w: float) -> float:
    """Thermal transmittance of a total resistance. [W/m2K]

    Parameters
        resistance_m2k_w: float — total resistance, both surface films included. [m2K/W], over 0
    Returns
        float — U. [W/m2K]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ISO 6946, 2007, 7.
    Examples
        Canadian code note A-9.36.2.4.(1): 2.36 gives 0.42.

        >>> round(u_from_resistance(2.36), 2)
        0.42
    """
    return 1 / positive("resistance_m2k_w", resistance_m2k_w)


def resistance_from_u(u_w_m2k: float) -> float:
    """Total resistance of a thermal transmittance. [m2K/W]

    Parameters
        u_w_m2k: float — U, both surface films included. [W/m2K], over 0
    Returns
        float — total resistance. [m2K/W]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ISO 6946, 2007, 7.
    Examples
        >>> resistance_from_u(0.25)
        4.0
    """
    return 1 / positive("u_w_m2k", u_w_m2k)


def framing_share(member_width_m: float, spacing_m: float) -> float:
    """Share of an area that regular members take. [ratio]

    Parameters
        member_width_m: float — face width of a member. [m], over 0 up to the spacing
        spacing_m: float — centre to centre. [m], over 0
    Returns
        float — share. [ratio], over 0 to 1
    Raises
        OutOfRange — a value outside its range.
    Notes
        width / spacing. Plates, corners, headers and blocking come on top: see
        `framing_share_with_extras`; measured walls reach 0.15 to 0.40.
    References
        Geometry; common practice, no source.
    Examples
        Studs of 1-1/2 in at 16 in.

        >>> framing_share(1.5, 16.0)
        0.09375
    """
    spacing = positive("spacing_m", spacing_m)
    return between("member_width_m", positive("member_width_m", member_width_m), 0.0, spacing) / spacing


def framing_share_with_extras(regular_share_ratio: float, extra_member_area_m2: float, gross_area_m2: float) -> float:
    """Share of an area that regular members, plates, corners, headers and blocking take together. [ratio]

    Parameters
        regular_share_ratio: float — share of the regular members between the extras. [ratio], 0 to 1
        extra_member_area_m2: float — face area of all other members. [m2], 0 up to the gross area
        gross_area_m2: float — opaque area, openings taken off. [m2], over 0
    Returns
        float — share. [ratio], 0 to 1
    Raises
        OutOfRange — a value outside its range.
    Notes
        (extras + regular share × (gross - extras)) / gross: where an extra member lies, no regular one is
        counted again.
    References
        Geometry; common practice, no source.
    Examples
        8 ft of wall 8 ft high, studs at 16 in, three plates of 1-1/2 in.

        >>> round(framing_share_with_extras(0.09375, 8 * 4.5 / 12, 64.0), 4)
        0.1362
    """
    regular = between("regular_share_ratio", regular_share_ratio, 0.0, 1.0)
    gross_m2 = positive("gross_area_m2", gross_area_m2)
    extra_m2 = between("extra_member_area_m2", extra_member_area_m2, 0.0, gross_m2)
    return (extra_m2 + regular * (gross_m2 - extra_m2)) / gross_m2


def parallel_resistance(resistances_m2k_w: Sequence[float], shares_ratio: Sequence[float]) -> float:
    """Resistance of parts side by side. [m2K/W]

    Parameters
        resistances_m2k_w: Sequence[float] — each part. [m2K/W], each over 0, one or more
        shares_ratio: Sequence[float] — share of the area, in the same order. [ratio], together 1
    Returns
        float — resistance. [m2K/W]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, shares that do not make 1.
    Notes
        1 / sum(share / resistance). An average of the resistances themselves is wrong, always too high.
    References
        [1] Canadian code note A-9.36.2.4.(1), example: 38 x 140 mm studs at 400 mm.
        [2] Conserve and Save, wall U-values: clad brick on battens.
    Examples
        [1]: 23 % of 1.19 and 77 % of 3.34 give 2.36.

        >>> round(parallel_resistance([1.19, 3.34], [0.23, 0.77]), 2)
        2.36
    """
    lists.same_length("resistances_m2k_w", resistances_m2k_w, "shares_ratio", shares_ratio)
    parts = zip(
        lists.shares("shares_ratio", shares_ratio), all_positive("resistances_m2k_w", resistances_m2k_w), strict=True
    )
    return 1 / math.fsum(share / resistance for share, resistance in parts)


def parallel_path(paths_m2k_w: Sequence[Sequence[float]], shares_ratio: Sequence[float]) -> float:
    """Resistance with whole heat paths side by side: the parallel-path method. [m2K/W]

    Parameters
        paths_m2k_w: Sequence[Sequence[float]] — for each path its layers from inside to outside, films
            included. [m2K/W], each layer 0 or more, each path over 0
        shares_ratio: Sequence[float] — share of the area of each path. [ratio], together 1
    Returns
        float — resistance. [m2K/W]
    Raises
        OutOfRange — a value outside its range, paths of unlike length, shares that do not make 1.
    Notes
        The upper limit of ISO 6946: heat is thought not to move sideways. Not for metal framing.
    References
        [1] ISO 6946, 2007, 6.2.3, equation (6).
        [2] Scottish building standards, annex 6.B, 6.B.2: upper limit 3.435.
    Examples
        [2]

        >>> insulation = [0.13, 0.06, 3.5, 0.069, 0.18, 0.132, 0.04]
        >>> timber = [0.13, 0.06, 1.167, 0.069, 0.18, 0.132, 0.04]
        >>> round(parallel_path([insulation, timber], [0.85, 0.15]), 3)
        3.435
    """
    checked = lists.paths("paths_m2k_w", paths_m2k_w, len(shares_ratio))
    return parallel_resistance([math.fsum(path) for path in checked], shares_ratio)


def isothermal_planes(paths_m2k_w: Sequence[Sequence[float]], shares_ratio: Sequence[float]) -> float:
    """Resistance with each layer side by side and then the layers in series. [m2K/W]

    Parameters
        paths_m2k_w: Sequence[Sequence[float]] — for each path its layers from inside to outside, films
            included; a layer has a resistance in every path or in none. [m2K/W], each layer 0 or more
        shares_ratio: Sequence[float] — share of the area of each path. [ratio], together 1
    Returns
        float — resistance. [m2K/W]
    Raises
        OutOfRange — a value outside its range, paths of unlike length, shares that do not make 1, a layer
        without resistance in some paths only.
    Notes
        The lower limit of ISO 6946: planes between layers are thought to have one temperature.
    References
        [1] ISO 6946, 2007, 6.2.4, equations (7) and (8).
        [2] Scottish building standards, annex 6.B, 6.B.2: lower limit 3.304.
    Examples
        [2]

        >>> insulation = [0.13, 0.06, 3.5, 0.069, 0.18, 0.132, 0.04]
        >>> timber = [0.13, 0.06, 1.167, 0.069, 0.18, 0.132, 0.04]
        >>> round(isothermal_planes([insulation, timber], [0.85, 0.15]), 3)
        3.304
    """
    checked = lists.paths("paths_m2k_w", paths_m2k_w, len(shares_ratio))
    layers = [layer for layer in zip(*checked, strict=True) if any(layer)]
    return math.fsum(parallel_resistance(layer, shares_ratio) for layer in layers)


def combined_method(paths_m2k_w: Sequence[Sequence[float]], shares_ratio: Sequence[float]) -> float:
    """Resistance as the mean of the upper and the lower limit: the combined method. [m2K/W]

    Parameters
        paths_m2k_w: Sequence[Sequence[float]] — as in `isothermal_planes`. [m2K/W], each layer 0 or more
        shares_ratio: Sequence[float] — share of the area of each path. [ratio], together 1
    Returns
        float — resistance. [m2K/W]
    Raises
        OutOfRange — as `isothermal_planes`.
    Notes
        (upper + lower) / 2. The standard does not allow it where upper / lower is over 1.5, nor for
        insulation bridged by metal.
    References
        [1] ISO 6946, 2007, 6.2.2, equation (5).
        [2] Scottish building standards, annex 6.B, 6.B.2: U 0.30.
    Examples
        [2]

        >>> insulation = [0.13, 0.06, 3.5, 0.069, 0.18, 0.132, 0.04]
        >>> timber = [0.13, 0.06, 1.167, 0.069, 0.18, 0.132, 0.04]
        >>> round(u_from_resistance(combined_method([insulation, timber], [0.85, 0.15])), 2)
        0.3
    """
    upper = parallel_path(paths_m2k_w, shares_ratio)
    return (upper + isothermal_planes(paths_m2k_w, shares_ratio)) / 2


def effective_resistance(
    member_resistance_m2k_w: float,
    cavity_resistance_m2k_w: float,
    framing_share_ratio: float,
    other_resistances_m2k_w: Sequence[float],
) -> float:
    """Effective resistance: the framed layer side by side, all other layers in series. [m2K/W]

    Parameters
        member_resistance_m2k_w: float — member, over the depth of the framed layer. [m2K/W], over 0
        cavity_resistance_m2k_w: float — what fills the cavity, over the same depth. [m2K/W], over 0
        framing_share_ratio: float — share of the members. [ratio], 0 to 1
        other_resistances_m2k_w: Sequence[float] — every other layer, films included. [m2K/W], each 0 or
            more; may be empty
    Returns
        float — effective RSI. [m2K/W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        sum(others) + 1 / (share / member + (1 - share) / cavity).
    References
        [1] National Building Code of Canada, 2020, note A-9.36.2.4.(1).
        [2] Thermal schedule of a heritage house conversion in British Columbia, wall W2: RSI 2.00.
    Examples
        [2]: a 38 x 89 mm stud wall, 23 % framing, RSI 2.46 in the cavity.

        >>> round(effective_resistance(89 * 0.0085, 2.46, 0.23, [0.03, 0.02, 0.11, 0.1, 0.12]), 2)
        2.0
    """
    share = between("framing_share_ratio", framing_share_ratio, 0.0, 1.0)
    framed = parallel_resistance(
        [
            positive("member_resistance_m2k_w", member_resistance_m2k_w),
            positive("cavity_resistance_m2k_w", cavity_resistance_m2k_w),
        ],
        [share, 1 - share],
    )
    return framed + math.fsum(lists.all_not_negative("other_resistances_m2k_w", other_resistances_m2k_w, 0))


def nominal_resistances(
    cavity_resistances_m2k_w: Sequence[float], continuous_resistances_m2k_w: Sequence[float]
) -> tuple[float, float]:
    """Nominal insulation between members and unbroken insulation, kept apart. [m2K/W]

    Parameters
        cavity_resistances_m2k_w: Sequence[float] — insulation between members. [m2K/W], each over 0; may be
            empty
        continuous_resistances_m2k_w: Sequence[float] — insulation that no member interrupts. [m2K/W], each
            over 0; may be empty
    Returns
        tuple[float, float] — cavity, continuous. [m2K/W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Only insulation counts here: no films, boards or claddings. The two are not added: a limit written
        20+5 is not met by 25 in the cavity.
    References
        [1] Article on continuous insulation (continuousinsulation.org): 20+5 and 25+0 are not the same wall.
    Examples
        >>> nominal_resistances([3.5], [0.9, 0.5])
        (3.5, 1.4)
    """
    cavity = math.fsum(all_positive("cavity_resistances_m2k_w", cavity_resistances_m2k_w, 0))
    return cavity, math.fsum(all_positive("continuous_resistances_m2k_w", continuous_resistances_m2k_w, 0))


def area_weighted_u(u_values_w_m2k: Sequence[float], areas_m2: Sequence[float]) -> float:
    """Mean U of several surfaces by area. [W/m2K]

    Parameters
        u_values_w_m2k: Sequence[float] — U of each surface. [W/m2K], each over 0, one or more
        areas_m2: Sequence[float] — area of each surface, in the same order. [m2], each over 0
    Returns
        float — mean U. [W/m2K]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        sum(U × area) / sum(area). Resistances must not be averaged this way.
    References
        [1] Journal of Light Construction, on total wall R-value: R-18 with 15 % windows of U 0.30 is about
            R-11.
    Examples
        [1]: exactly 10.84.

        >>> round(1 / area_weighted_u([1 / 18, 0.30], [0.85, 0.15]), 2)
        10.84
    """
    values = all_positive("u_values_w_m2k", u_values_w_m2k)
    areas = lists.matching_positive("areas_m2", areas_m2, "u_values_w_m2k", u_values_w_m2k)
    return math.fsum(u * area for u, area in zip(values, areas, strict=True)) / math.fsum(areas)
