"""Windows: net clear opening, glazed and openable area, their shares of a floor.

sliding sash   hung_clear_width, hung_clear_height, hung_unit_height, slider_clear_width, slider_unit_width
hinged sash    side_hung_clear_width, projecting_clear_height, swing_clear_depth, swing_free_area
areas          clear_area, glazed_area, width_for_area, height_for_area
shares         floor_share, area_for_share

What frame, sash, track and hinge take away are parameters: they come from the maker's sheet or from a tape,
and no figure of any maker is kept here. The net clear opening is what stays free with the sash in its normal
open position; net clear width and height are taken at right angles in the plane of the wall.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, not_negative, positive
from checker.calc.errors import OutOfRange


def hung_clear_width(unit_width_m: float, frame_deduction_m: float) -> float:
    """Net clear width of a single- or double-hung window. [m]

    Parameters
        unit_width_m: float — width of the unit. [m], over 0
        frame_deduction_m: float — both jambs with their tracks together. [m], 0 or more, under the width
    Returns
        float — net clear width. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The same holds for the clear height of a slider, with head and sill for the jambs.
    References
        Geometry; common practice, no source.
    Examples
        A 36 in unit with jambs of 2 in each side leaves 32 in.

        >>> round(hung_clear_width(36 * 0.0254, 4 * 0.0254) / 0.0254, 6)
        32.0
    """
    return _less("unit_width_m", unit_width_m, "frame_deduction_m", frame_deduction_m)


def hung_clear_height(
    unit_height_m: float,
    frame_deduction_m: float,
    sash_deduction_m: float,
    lower_sash_share_ratio: float = 0.5,
) -> float:
    """Net clear height of a single- or double-hung window with its lower sash up. [m]

    Parameters
        unit_height_m: float — height of the unit. [m], over 0
        frame_deduction_m: float — head and sill of the frame together. [m], 0 or more, under the height
        sash_deduction_m: float — meeting rail, lift and stops that stay in the opening. [m], 0 or more
        lower_sash_share_ratio: float — lower sash of the height within the frame. [ratio], over 0, under 1
    Returns
        float — net clear height. [m]
    Raises
        OutOfRange — a value outside its range, deductions that leave nothing.
    Notes
        (unit − frame) × the smaller share − sash deduction: a tall lower sash stops at the head, a short one
        opens its own height.
    References
        Geometry; common practice, no source.
    Examples
        A 62 in unit, 4 in of frame, half of it open, 1-1/2 in of meeting rail: 27-1/2 in.

        >>> inch = 0.0254
        >>> round(hung_clear_height(62 * inch, 4 * inch, 1.5 * inch) / inch, 6)
        27.5
    """
    within_m = _less("unit_height_m", unit_height_m, "frame_deduction_m", frame_deduction_m)
    opened_m = within_m * _open_share("lower_sash_share_ratio", lower_sash_share_ratio)
    return _less("height of the opened sash", opened_m, "sash_deduction_m", sash_deduction_m)


def hung_unit_height(
    clear_height_m: float,
    frame_deduction_m: float,
    sash_deduction_m: float,
    lower_sash_share_ratio: float = 0.5,
) -> float:
    """Height of a hung unit that gives a wanted net clear height. [m]

    Parameters
        clear_height_m: float — net clear height wanted. [m], over 0
        frame_deduction_m: float — head and sill of the frame together. [m], 0 or more
        sash_deduction_m: float — meeting rail, lift and stops that stay in the opening. [m], 0 or more
        lower_sash_share_ratio: float — lower sash of the height within the frame. [ratio], over 0, under 1
    Returns
        float — height of the unit. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Undoes `hung_clear_height`.
    References
        Geometry; common practice, no source.
    Examples
        27-1/2 in clear with 4 in of frame and 1-1/2 in of meeting rail: a 62 in unit.

        >>> inch = 0.0254
        >>> round(hung_unit_height(27.5 * inch, 4 * inch, 1.5 * inch) / inch, 6)
        62.0
    """
    opened_m = positive("clear_height_m", clear_height_m) + not_negative("sash_deduction_m", sash_deduction_m)
    within_m = opened_m / _open_share("lower_sash_share_ratio", lower_sash_share_ratio)
    return within_m + not_negative("frame_deduction_m", frame_deduction_m)


def slider_clear_width(
    unit_width_m: float,
    frame_deduction_m: float,
    sash_deduction_m: float,
    moving_sash_share_ratio: float = 0.5,
) -> float:
    """Net clear width of a horizontal slider with one sash open. [m]

    Parameters
        unit_width_m: float — width of the unit. [m], over 0
        frame_deduction_m: float — both jambs of the frame together. [m], 0 or more, under the width
        sash_deduction_m: float — meeting stile, pull and stops that stay in the opening. [m], 0 or more
        moving_sash_share_ratio: float — moving sash of the width within the frame. [ratio], over 0, under 1
    Returns
        float — net clear width. [m]
    Raises
        OutOfRange — a value outside its range, deductions that leave nothing.
    Notes
        As `hung_clear_height`, turned on its side. Of three lites with the two end ones moving, each has its
        share.
    References
        Geometry; common practice, no source.
    Examples
        A 48 in unit, 3 in of frame, half of it open, 1-1/2 in of meeting stile: 21 in.

        >>> inch = 0.0254
        >>> round(slider_clear_width(48 * inch, 3 * inch, 1.5 * inch) / inch, 6)
        21.0
    """
    within_m = _less("unit_width_m", unit_width_m, "frame_deduction_m", frame_deduction_m)
    opened_m = within_m * _open_share("moving_sash_share_ratio", moving_sash_share_ratio)
    return _less("width of the opened sash", opened_m, "sash_deduction_m", sash_deduction_m)


def slider_unit_width(
    clear_width_m: float,
    frame_deduction_m: float,
    sash_deduction_m: float,
    moving_sash_share_ratio: float = 0.5,
) -> float:
    """Width of a slider that gives a wanted net clear width. [m]

    Parameters
        clear_width_m: float — net clear width wanted. [m], over 0
        frame_deduction_m: float — both jambs of the frame together. [m], 0 or more
        sash_deduction_m: float — meeting stile, pull and stops that stay in the opening. [m], 0 or more
        moving_sash_share_ratio: float — moving sash of the width within the frame. [ratio], over 0, under 1
    Returns
        float — width of the unit. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Undoes `slider_clear_width`.
    References
        Geometry; common practice, no source.
    Examples
        21 in clear with 3 in of frame and 1-1/2 in of meeting stile: a 48 in unit.

        >>> inch = 0.0254
        >>> round(slider_unit_width(21 * inch, 3 * inch, 1.5 * inch) / inch, 6)
        48.0
    """
    opened_m = positive("clear_width_m", clear_width_m) + not_negative("sash_deduction_m", sash_deduction_m)
    within_m = opened_m / _open_share("moving_sash_share_ratio", moving_sash_share_ratio)
    return within_m + not_negative("frame_deduction_m", frame_deduction_m)


def side_hung_clear_width(
    unit_width_m: float,
    frame_deduction_m: float,
    sash_deduction_m: float,
    hinge_throw_m: float | None = None,
) -> float:
    """Net clear width of a casement, or of a tilt-turn window turned in. [m]

    Parameters
        unit_width_m: float — width of the unit. [m], over 0
        frame_deduction_m: float — both jambs of the frame together. [m], 0 or more, under the width
        sash_deduction_m: float — edge of the open sash and its hinge that stay in the opening. [m], 0 or more
        hinge_throw_m: float | None — widest opening the hinge allows, None if it does not limit. [m], over 0
    Returns
        float — net clear width. [m]
    Raises
        OutOfRange — a value outside its range, deductions that leave nothing.
    Notes
        The smaller of (unit − frame − sash) and the throw. The throw of a hinge that stops at an angle is
        `swing_clear_depth` of the sash. A tilt-turn window only tilted in is a `projecting_clear_height`.
    References
        Geometry; common practice, no source.
    Examples
        A 28 in unit less 3 in and 2 in leaves 23 in; a hinge that stops at 20 in leaves those.

        >>> inch = 0.0254
        >>> round(side_hung_clear_width(28 * inch, 3 * inch, 2 * inch) / inch, 6)
        23.0
        >>> round(side_hung_clear_width(28 * inch, 3 * inch, 2 * inch, hinge_throw_m=20 * inch) / inch, 6)
        20.0
    """
    within_m = _less("unit_width_m", unit_width_m, "frame_deduction_m", frame_deduction_m)
    clear_m = _less("width within the frame", within_m, "sash_deduction_m", sash_deduction_m)
    return clear_m if hinge_throw_m is None else min(clear_m, positive("hinge_throw_m", hinge_throw_m))


def projecting_clear_height(
    unit_height_m: float, frame_deduction_m: float, sash_deduction_m: float, opening_angle_rad: float
) -> float:
    """Net clear height of an awning or hopper window, or of a tilt-turn window tilted in. [m]

    Parameters
        unit_height_m: float — height of the unit. [m], over 0
        frame_deduction_m: float — head and sill of the frame together. [m], 0 or more, under the height
        sash_deduction_m: float — edge of the open sash and its stay that stay in the opening. [m], 0 or more
        opening_angle_rad: float — angle of the open sash against the wall. [rad], 0 to a right angle
    Returns
        float — net clear height in the plane of the wall, 0 if the deduction takes all. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The sash hides its own height × cos(angle) of the opening: an awning at 45 degrees leaves 29 % of it.
    References
        Geometry; common practice, no source.
    Examples
        A 40 in sash at 60 degrees hides half.

        >>> round(projecting_clear_height(40 * 0.0254, 0.0, 0.0, math.pi / 3) / 0.0254, 6)
        20.0
    """
    within_m = _less("unit_height_m", unit_height_m, "frame_deduction_m", frame_deduction_m)
    opened_m = swing_clear_depth(within_m, opening_angle_rad)
    return max(0.0, opened_m - not_negative("sash_deduction_m", sash_deduction_m))


def swing_clear_depth(sash_depth_m: float, opening_angle_rad: float) -> float:
    """Part of an opening that a hinged sash leaves free in the plane of the wall. [m]

    Parameters
        sash_depth_m: float — sash from hinge edge to free edge. [m], over 0
        opening_angle_rad: float — angle of the open sash against the wall. [rad], 0 to a right angle
    Returns
        float — free width (side-hung) or height (top- or bottom-hung). [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        depth × (1 − cos(angle)).
    References
        Geometry; common practice, no source.
    Examples
        At a right angle all of it is free.

        >>> round(swing_clear_depth(0.6, math.pi / 2), 9)
        0.6
    """
    angle = between("opening_angle_rad", opening_angle_rad, 0.0, math.pi / 2)
    return positive("sash_depth_m", sash_depth_m) * (1 - math.cos(angle))


def swing_free_area(hinge_length_m: float, sash_depth_m: float, opening_angle_rad: float) -> float:
    """Area that is free to the air round an open hinged sash. [m2]

    Parameters
        hinge_length_m: float — sash along its hinge. [m], over 0
        sash_depth_m: float — sash from hinge edge to free edge. [m], over 0
        opening_angle_rad: float — angle of the open sash against the wall. [rad], 0 to a right angle
    Returns
        float — area, at most that of the sash. [m2]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Rectangle between free edge and frame, length × 2 × depth × sin(angle / 2), and the two triangles at
        the sides, depth² × sin(angle) together; never more than the opening itself. Air, not a person, goes
        this way.
    References
        [1] Geometry.
        [2] Answers on the operable area of a top-hung window, leeduser.buildinggreen.com: a rectangle and a
            triangle on each side.
    Examples
        1.2 m by 0.6 m at 30 degrees: 0.3727 and 0.18 m2.

        >>> round(swing_free_area(1.2, 0.6, math.pi / 6), 3)
        0.553
    """
    angle = between("opening_angle_rad", opening_angle_rad, 0.0, math.pi / 2)
    depth_m = positive("sash_depth_m", sash_depth_m)
    front_m2 = positive("hinge_length_m", hinge_length_m) * 2 * depth_m * math.sin(angle / 2)
    return min(hinge_length_m * depth_m, front_m2 + depth_m**2 * math.sin(angle))


def clear_area(clear_width_m: float, clear_height_m: float) -> float:
    """Area of a rectangular opening. [m2]

    Parameters
        clear_width_m: float — net clear width. [m], 0 or more
        clear_height_m: float — net clear height. [m], 0 or more
    Returns
        float — net clear area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Inspectors' forum on escape windows: 20 in by 24 in is 3.33 ft2, under the 5.7 ft2 asked for.
    Examples
        [2]

        >>> round(clear_area(20 * 0.0254, 24 * 0.0254) / 0.3048**2, 2)
        3.33
    """
    return not_negative("clear_width_m", clear_width_m) * not_negative("clear_height_m", clear_height_m)


def glazed_area(
    unit_width_m: float, unit_height_m: float, width_deduction_m: float, height_deduction_m: float
) -> float:
    """Area of glass of a window. [m2]

    Parameters
        unit_width_m: float — width of the unit. [m], over 0
        unit_height_m: float — height of the unit. [m], over 0
        width_deduction_m: float — all stiles and mullions in the width together. [m], 0 or more, under the
            width
        height_deduction_m: float — all rails and bars in the height together. [m], 0 or more, under the
            height
    Returns
        float — glazed area. [m2]
    Raises
        OutOfRange — a value outside its range.
    Notes
        For lites in rows and columns; units side by side are added up.
    References
        [1] Geometry.
        [2] Home repair article on light and ventilation: a window of 3 ft by 4 ft counts 12 ft2.
    Examples
        [2], which takes nothing off for the sash.

        >>> round(glazed_area(3 * 0.3048, 4 * 0.3048, 0.0, 0.0) / 0.3048**2, 6)
        12.0
    """
    width_m = _less("unit_width_m", unit_width_m, "width_deduction_m", width_deduction_m)
    return width_m * _less("unit_height_m", unit_height_m, "height_deduction_m", height_deduction_m)


def width_for_area(area_m2: float, clear_height_m: float) -> float:
    """Net clear width that gives an area at a net clear height. [m]

    Parameters
        area_m2: float — net clear area wanted. [m2], over 0
        clear_height_m: float — net clear height. [m], over 0
    Returns
        float — net clear width. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Inspectors' forum on escape windows: 5.7 ft2 at a height of 24 in takes 34.2 in.
    Examples
        [2]

        >>> round(width_for_area(5.7 * 0.3048**2, 24 * 0.0254) / 0.0254, 1)
        34.2
    """
    return positive("area_m2", area_m2) / positive("clear_height_m", clear_height_m)


def height_for_area(area_m2: float, clear_width_m: float) -> float:
    """Net clear height that gives an area at a net clear width. [m]

    Parameters
        area_m2: float — net clear area wanted. [m2], over 0
        clear_width_m: float — net clear width. [m], over 0
    Returns
        float — net clear height. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Ontario Regulation 332/12, Division B, 9.9.10.1 (0.35 m2, no dimension under 380 mm).
    Examples
        [1]: 380 mm wide takes 921 mm.

        >>> round(1000 * height_for_area(0.35, 0.38))
        921
    """
    return positive("area_m2", area_m2) / positive("clear_width_m", clear_width_m)


def floor_share(opening_area_m2: float, floor_area_m2: float) -> float:
    """Glazed or openable area as a share of the floor it serves. [ratio]

    Parameters
        opening_area_m2: float — glazed, or openable, area of the room. [m2], 0 or more
        floor_area_m2: float — floor area served. [m2], over 0
    Returns
        float — share. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Geometry.
        [2] Home repair article on light and ventilation: 12 ft2 of window for 120 ft2 of floor.
    Examples
        [2]

        >>> floor_share(12.0, 120.0)
        0.1
    """
    return not_negative("opening_area_m2", opening_area_m2) / positive("floor_area_m2", floor_area_m2)


def area_for_share(share_ratio: float, floor_area_m2: float) -> float:
    """Glazed or openable area that a share of the floor asks for. [m2]

    Parameters
        share_ratio: float — share of the floor wanted. [ratio], 0 or more
        floor_area_m2: float — floor area served. [m2], over 0
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Examination question on apartments: 5 % of 300 ft2 is 15 ft2.
    Examples
        [1]

        >>> area_for_share(0.05, 300.0)
        15.0
    """
    return not_negative("share_ratio", share_ratio) * positive("floor_area_m2", floor_area_m2)


def _less(size_name: str, size_m: float, deduction_name: str, deduction_m: float) -> float:
    """Size less a deduction that must leave something."""
    positive(size_name, size_m)
    if not_negative(deduction_name, deduction_m) >= size_m:
        raise OutOfRange(deduction_name, deduction_m, f"from 0 to under the {size_name}, {size_m:.12g}")
    return size_m - deduction_m


def _open_share(name: str, sash_share_ratio: float) -> float:
    """Share of the frame that a sliding sash opens: its own, or what is left for it to slide into."""
    if not 0 < sash_share_ratio < 1:
        raise OutOfRange(name, sash_share_ratio, "over 0 and under 1")
    return min(sash_share_ratio, 1 - sash_share_ratio)
