"""Notches and holes in members of wood: what is left, and the shear that a notched end carries.

what is left  depth_share, net_depth, net_modulus, holed_modulus
shear         notched_bottom_shear, notched_top_shear

Where a notch or a hole may be, and how large, is a matter of rules.
"""

from __future__ import annotations

from checker.calc._checks import between, not_negative, positive
from checker.calc.errors import OutOfRange


def depth_share(cut_m: float, depth_m: float) -> float:
    """Share of a member's depth that a notch or a hole takes. [ratio]

    Parameters
        cut_m: float — depth of the notch or diameter of the hole. [m], 0 up to the depth
        depth_m: float — depth of the member as it stands. [m], over 0
    Returns
        float — share. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A hole of 3 in in a joist of 9 in.

        >>> round(depth_share(3.0, 9.0), 3)
        0.333
    """
    return between("cut_m", cut_m, 0.0, positive("depth_m", depth_m)) / depth_m


def net_depth(depth_m: float, cut_m: float) -> float:
    """Depth that notches or holes at one place leave. [m]

    Parameters
        depth_m: float — depth of the member as it stands. [m], over 0
        cut_m: float — depth of the notches and holes at the place, together. [m], 0 or more, under the depth
    Returns
        float — depth left. [m]
    Raises
        OutOfRange — a value outside its range, nothing left.
    References
        Geometry; common practice, no source.
    Examples
        >>> net_depth(9.25, 1.25)
        8.0
    """
    if not_negative("cut_m", cut_m) >= positive("depth_m", depth_m):
        raise OutOfRange("cut_m", cut_m, f"under the depth, {depth_m:.12g}")
    return depth_m - cut_m


def net_modulus(width_m: float, depth_m: float, notch_m: float) -> float:
    """Section modulus where an edge is notched. [m3]

    Parameters
        width_m: float — width of the member. [m], over 0
        depth_m: float — depth of the member as it stands. [m], over 0
        notch_m: float — depth of the notch. [m], 0 or more, under the depth
    Returns
        float — section modulus of what is left. [m3]
    Raises
        OutOfRange — a value outside its range, nothing left.
    Notes
        Stress heaps up at the corner of a notch in the drawn edge; this modulus does not know of it.
    References
        Geometry; common practice, no source.
    Examples
        >>> net_modulus(1.5, 9.0, 3.0)
        9.0
    """
    return positive("width_m", width_m) * net_depth(depth_m, notch_m) ** 2 / 6


def holed_modulus(width_m: float, depth_m: float, hole_m: float) -> float:
    """Section modulus where a hole is bored at mid-depth. [m3]

    Parameters
        width_m: float — width of the member. [m], over 0
        depth_m: float — depth of the member. [m], over 0
        hole_m: float — diameter of the hole. [m], 0 or more, under the depth
    Returns
        float — section modulus. [m3]
    Raises
        OutOfRange — a value outside its range, nothing left.
    Notes
        b (d3 - h3) / (6 d).
    References
        Geometry; common practice, no source.
    Examples
        A hole of a third of the depth takes a twenty-seventh of the modulus.

        >>> round(holed_modulus(1.5, 9.0, 3.0) / holed_modulus(1.5, 9.0, 0.0), 4)
        0.963
    """
    net_depth(depth_m, hole_m)
    return positive("width_m", width_m) * (depth_m**3 - hole_m**3) / (6 * depth_m)


def notched_bottom_shear(shear_pa: float, width_m: float, depth_m: float, notch_m: float) -> float:
    """Shear that an end carries whose lower, drawn edge is notched at the support. [N]

    Parameters
        shear_pa: float — strength in shear with all factors. [Pa], over 0
        width_m: float — width of the member. [m], over 0
        depth_m: float — depth of the member as it stands. [m], over 0
        notch_m: float — depth of the notch. [m], 0 or more, under the depth
    Returns
        float — shear. [N]
    Raises
        OutOfRange — a value outside its range, nothing left.
    Notes
        (2/3) Fv' b dn (dn / d)2.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.4.3.2 (a).
    Examples
        A notch of a third of the depth leaves 30 % of the shear.

        >>> shear = notched_bottom_shear(135.0, 1.5, 9.0, 3.0) / notched_bottom_shear(135.0, 1.5, 9.0, 0.0)
        >>> round(shear, 3)
        0.296
    """
    left_m = net_depth(depth_m, notch_m)
    strength_pa = positive("shear_pa", shear_pa)
    return 2 / 3 * strength_pa * positive("width_m", width_m) * left_m * (left_m / depth_m) ** 2


def notched_top_shear(shear_pa: float, width_m: float, depth_m: float, notch_m: float, reach_m: float) -> float:
    """Shear that an end carries whose upper, pressed edge is notched at the support. [N]

    Parameters
        shear_pa: float — strength in shear with all factors. [Pa], over 0
        width_m: float — width of the member. [m], over 0
        depth_m: float — depth of the member as it stands. [m], over 0
        notch_m: float — depth of the notch. [m], 0 or more, under the depth
        reach_m: float — how far the notch goes in from the inner edge of the support. [m], 0 or more
    Returns
        float — shear. [N]
    Raises
        OutOfRange — a value outside its range, nothing left.
    Notes
        (2/3) Fv' b (d - (d - dn) e / dn), with dn for what is left; from e = dn on, dn alone counts.
    References
        [1] National Design Specification for Wood Construction, 2018, 3.4.3.2 (e); from memory.
    Examples
        A notch that does not go past the support takes nothing.

        >>> notched_top_shear(150.0, 1.5, 8.0, 2.0, 0.0)
        1200.0
    """
    left_m = net_depth(depth_m, notch_m)
    reach_m = min(not_negative("reach_m", reach_m), left_m)
    counted_m = depth_m - notch_m * reach_m / left_m
    return 2 / 3 * positive("shear_pa", shear_pa) * positive("width_m", width_m) * counted_m
