"""Insulation and air space in the depth of a rafter or joist.

what fits     air_space_left, insulation_that_fits
what it needs  member_depth_needed, depth_to_add

Strapping nailed across the members on the outside lifts the deck: the air above the insulation is that much
higher and can pass across the bays, so insulation does not go into it. Strapping across the inside adds depth
for insulation.
"""

from __future__ import annotations

from checker.calc._checks import not_negative, positive


def air_space_left(
    member_depth_m: float,
    insulation_thickness_m: float,
    outside_strapping_m: float = 0.0,
    inside_strapping_m: float = 0.0,
) -> float:
    """Height of the air between insulation and deck. [m]

    Parameters
        member_depth_m: float — dressed depth of the rafter or joist. [m], over 0
        insulation_thickness_m: float — insulation as it lies, bulge included. [m], 0 or more
        outside_strapping_m: float — thickness of strapping across the outside. [m], 0 or more
        inside_strapping_m: float — thickness of strapping across the inside, filled too. [m], 0 or more
    Returns
        float — air space, negative if the insulation does not fit. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        depth + strapping - insulation.
    References
        [1] Ontario Building Code, 9.19.1: purlins of 38 mm over 25 mm, or 63 mm over the insulation.
    Examples
        [1]: both descriptions are the same space.

        >>> round(air_space_left(0.235, 0.210, 0.038), 6)
        0.063
    """
    depth = positive("member_depth_m", member_depth_m)
    strapping = not_negative("outside_strapping_m", outside_strapping_m)
    strapping += not_negative("inside_strapping_m", inside_strapping_m)
    return depth + strapping - not_negative("insulation_thickness_m", insulation_thickness_m)


def insulation_that_fits(
    member_depth_m: float,
    air_space_m: float,
    outside_strapping_m: float = 0.0,
    inside_strapping_m: float = 0.0,
) -> float:
    """Thickest insulation that leaves an air space. [m]

    Parameters
        member_depth_m: float — dressed depth of the rafter or joist. [m], over 0
        air_space_m: float — air wanted between insulation and deck, 0 for a filled bay. [m], 0 or more
        outside_strapping_m: float — thickness of strapping across the outside. [m], 0 or more
        inside_strapping_m: float — thickness of strapping across the inside. [m], 0 or more
    Returns
        float — thickness, 0 if there is no room. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        depth + inside strapping - what of the air space the outside strapping does not give.
    References
        Geometry; common practice, no source.
    Examples
        A 2x8 (7-1/4 in) with 1 in of air has 6-1/4 in left; with strapping of 1-1/2 in the whole depth.

        >>> round(insulation_that_fits(7.25, 1.0), 6), insulation_that_fits(7.25, 1.0, 1.5)
        (6.25, 7.25)
    """
    depth = positive("member_depth_m", member_depth_m) + not_negative("inside_strapping_m", inside_strapping_m)
    from_member = not_negative("air_space_m", air_space_m) - not_negative("outside_strapping_m", outside_strapping_m)
    return max(0.0, depth - max(0.0, from_member))


def member_depth_needed(
    insulation_thickness_m: float,
    air_space_m: float,
    outside_strapping_m: float = 0.0,
    inside_strapping_m: float = 0.0,
) -> float:
    """Depth of a member that holds an insulation and an air space. [m]

    Parameters
        insulation_thickness_m: float — insulation wanted. [m], over 0
        air_space_m: float — air wanted between insulation and deck. [m], 0 or more
        outside_strapping_m: float — thickness of strapping across the outside. [m], 0 or more
        inside_strapping_m: float — thickness of strapping across the inside. [m], 0 or more
    Returns
        float — depth, 0 if the strapping alone is enough. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        10-1/4 in of insulation under 1 in of air.

        >>> member_depth_needed(10.25, 1.0)
        11.25
    """
    insulation = positive("insulation_thickness_m", insulation_thickness_m)
    inside = insulation - not_negative("inside_strapping_m", inside_strapping_m)
    from_member = not_negative("air_space_m", air_space_m) - not_negative("outside_strapping_m", outside_strapping_m)
    return max(0.0, inside + max(0.0, from_member))


def depth_to_add(
    member_depth_m: float,
    insulation_thickness_m: float,
    air_space_m: float,
    outside_strapping_m: float = 0.0,
    inside_strapping_m: float = 0.0,
) -> float:
    """How much deeper members must become for an insulation and an air space. [m]

    Parameters
        member_depth_m: float — dressed depth of the members that are there. [m], over 0
        insulation_thickness_m: float — insulation wanted. [m], over 0
        air_space_m: float — air wanted between insulation and deck. [m], 0 or more
        outside_strapping_m: float — thickness of strapping across the outside. [m], 0 or more
        inside_strapping_m: float — thickness of strapping across the inside. [m], 0 or more
    Returns
        float — depth to add, 0 if they are deep enough. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source: rafters are often deepened for insulation rather than strength.
    Examples
        >>> depth_to_add(7.25, 10.25, 1.0)
        4.0
    """
    needed = member_depth_needed(insulation_thickness_m, air_space_m, outside_strapping_m, inside_strapping_m)
    return max(0.0, needed - positive("member_depth_m", member_depth_m))
