"""Rafters from plate to ridge: pitch, heights, lengths, cuts, ties.

pitch       pitch_angle, pitch_of_angle, pitch_of_rise
ridge       ridge_height, run_for_ridge_height, pitch_for_ridge_height, plate_height_for_ridge
rafter      rafter_length, plumb_cut, ridge_board_margin
birdsmouth  birdsmouth_plumb_depth, birdsmouth_depth, depth_left_at_birdsmouth, longest_seat, heel_height
ties        tie_height_share, tie_height_of_share, tie_length
"""

from __future__ import annotations

import math

from checker.calc._checks import between, finite, not_negative, positive, reaches
from checker.calc.errors import OutOfRange


def pitch_angle(pitch_ratio: float) -> float:
    """Angle of a pitch to the level. [rad]

    Parameters
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — angle. [rad]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        8 in 12 is 33.7 deg.

        >>> round(math.degrees(pitch_angle(8 / 12)), 1)
        33.7
    """
    return math.atan(not_negative("pitch_ratio", pitch_ratio))


def pitch_of_angle(angle_rad: float) -> float:
    """Pitch of an angle to the level. [ratio]

    Parameters
        angle_rad: float — angle. [rad], 0 to under a right angle
    Returns
        float — rise for one of run. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> round(pitch_of_angle(math.radians(45)), 6)
        1.0
    """
    if reaches(finite("angle_rad", angle_rad), math.pi / 2):
        raise OutOfRange("angle_rad", angle_rad, "under a right angle")
    return math.tan(not_negative("angle_rad", angle_rad))


def pitch_of_rise(rise_m: float, run_m: float) -> float:
    """Pitch of a rise over a run. [ratio]

    Parameters
        rise_m: float — rise, plumb. [m], 0 or more
        run_m: float — run, level. [m], over 0
    Returns
        float — rise for one of run. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> pitch_of_rise(2.0, 4.0)
        0.5
    """
    return not_negative("rise_m", rise_m) / positive("run_m", run_m)


def ridge_height(run_m: float, pitch_ratio: float, heel_height_m: float = 0.0) -> float:
    """Height of the ridge over the plate. [m]

    Parameters
        run_m: float — outside of the plate to the middle of the ridge, on plan. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
        heel_height_m: float — top of the rafter over the outside of the plate. [m], 0 or more
    Returns
        float — height of the top of the rafters at the ridge. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        run × pitch + heel height. With a heel height of 0, the rise of a line through the plate, which is the
        height that ties and thrust are reckoned by.
    References
        Geometry; common practice, no source.
    Examples
        12 ft at 8 in 12.

        >>> round(ridge_height(12.0, 8 / 12), 6)
        8.0
    """
    rise_m = positive("run_m", run_m) * not_negative("pitch_ratio", pitch_ratio)
    return rise_m + not_negative("heel_height_m", heel_height_m)


def run_for_ridge_height(ridge_height_m: float, pitch_ratio: float, heel_height_m: float = 0.0) -> float:
    """Run that reaches a ridge height at a pitch. [m]

    Parameters
        ridge_height_m: float — top of the rafters at the ridge over the plate. [m], over the heel height
        pitch_ratio: float — rise for one of run. [ratio], over 0
        heel_height_m: float — top of the rafter over the outside of the plate. [m], 0 or more
    Returns
        float — run. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> round(run_for_ridge_height(8.0, 8 / 12), 6)
        12.0
    """
    return _rise(ridge_height_m, heel_height_m) / positive("pitch_ratio", pitch_ratio)


def pitch_for_ridge_height(ridge_height_m: float, run_m: float, heel_height_m: float = 0.0) -> float:
    """Pitch that reaches a ridge height over a run. [ratio]

    Parameters
        ridge_height_m: float — top of the rafters at the ridge over the plate. [m], over the heel height
        run_m: float — outside of the plate to the middle of the ridge, on plan. [m], over 0
        heel_height_m: float — top of the rafter over the outside of the plate. [m], 0 or more
    Returns
        float — rise for one of run. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A ridge of 8 ft over 16 ft of run: 6 in 12.

        >>> pitch_for_ridge_height(8.0, 16.0)
        0.5
    """
    return _rise(ridge_height_m, heel_height_m) / positive("run_m", run_m)


def plate_height_for_ridge(
    ridge_over_floor_m: float, run_m: float, pitch_ratio: float, heel_height_m: float = 0.0
) -> float:
    """Height of plate over the floor that meets a ridge at a pitch. [m]

    Parameters
        ridge_over_floor_m: float — top of the rafters at the ridge over the floor. [m], over 0
        run_m: float — outside of the plate to the middle of the ridge, on plan. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
        heel_height_m: float — top of the rafter over the outside of the plate. [m], 0 or more
    Returns
        float — top of the plate over the floor. [m]
    Raises
        OutOfRange — a value outside its range, a ridge that is too low for the pitch.
    References
        Geometry; common practice, no source.
    Examples
        A shed dormer at 3 in 12 over 12 ft of run under a ridge 12 ft up: a plate of 9 ft less the heel.

        >>> plate_height_for_ridge(12.0, 12.0, 3 / 12, 0.5)
        8.5
    """
    needed_m = ridge_height(run_m, pitch_ratio, heel_height_m)
    if not reaches(positive("ridge_over_floor_m", ridge_over_floor_m), needed_m):
        raise OutOfRange("ridge_over_floor_m", ridge_over_floor_m, f"at least {needed_m:.12g}, the roof's own height")
    return max(0.0, ridge_over_floor_m - needed_m)


def rafter_length(run_m: float, pitch_ratio: float, overhang_m: float = 0.0) -> float:
    """Length of a rafter along the slope, from the middle of the ridge to its end at the eave. [m]

    Parameters
        run_m: float — outside of the plate to the middle of the ridge, on plan. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
        overhang_m: float — outside of the plate to the end of the rafter, on plan. [m], 0 or more
    Returns
        float — length of its line; half the ridge board is taken off the run where there is one. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (run + overhang) × sqrt(1 + pitch²).
    References
        [1] Carpenters' tables of rafter length for one foot of run.
        [2] US Army engineer course EN5156, figure 3-26: length² = run² + rise².
    Examples
        [1]: 14.42 in for 12 in at 8 in 12.

        >>> round(rafter_length(12.0, 8 / 12), 2)
        14.42
    """
    level_m = positive("run_m", run_m) + not_negative("overhang_m", overhang_m)
    return level_m * math.hypot(1.0, not_negative("pitch_ratio", pitch_ratio))


def plumb_cut(depth_m: float, pitch_ratio: float) -> float:
    """Length of the plumb cut of a rafter. [m]

    Parameters
        depth_m: float — depth of the rafter, square to it. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — length of the cut. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        depth / cos(slope). A ridge board is at least this deep.
    References
        [1] International Residential Code, 2018, R802.3: depth of the ridge board.
    Examples
        [1]: 5-1/2 in at 12 in 12.

        >>> round(plumb_cut(5.5, 1.0), 2)
        7.78
    """
    return positive("depth_m", depth_m) * math.hypot(1.0, not_negative("pitch_ratio", pitch_ratio))


def ridge_board_margin(board_depth_m: float, rafter_depth_m: float, pitch_ratio: float) -> float:
    """How much deeper a ridge board is than the cut ends of the rafters. [m]

    Parameters
        board_depth_m: float — depth of the board. [m], over 0
        rafter_depth_m: float — depth of the rafters, square to them. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — board less plumb cut; negative where it is too shallow. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, R802.3.
    Examples
        A 1x8 under 2x6 rafters at 12 in 12 is 0.53 in short.

        >>> round(ridge_board_margin(7.25, 5.5, 1.0), 2)
        -0.53
    """
    return positive("board_depth_m", board_depth_m) - plumb_cut(rafter_depth_m, pitch_ratio)


def birdsmouth_plumb_depth(seat_m: float, pitch_ratio: float) -> float:
    """Plumb cut of a birdsmouth at the outside of the plate. [m]

    Parameters
        seat_m: float — level cut, on the plate. [m], 0 or more
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — length of the heel cut. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        3-1/2 in on the plate at 8 in 12.

        >>> round(birdsmouth_plumb_depth(3.5, 8 / 12), 3)
        2.333
    """
    return not_negative("seat_m", seat_m) * not_negative("pitch_ratio", pitch_ratio)


def birdsmouth_depth(seat_m: float, pitch_ratio: float) -> float:
    """Depth of a birdsmouth square to the rafter, as limits of notches count it. [m]

    Parameters
        seat_m: float — level cut, on the plate. [m], 0 or more
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — depth of the notch. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        seat × sin(slope).
    References
        Geometry; common practice, no source.
    Examples
        >>> round(birdsmouth_depth(3.5, 3 / 4), 6)
        2.1
    """
    return birdsmouth_plumb_depth(seat_m, pitch_ratio) / math.hypot(1.0, pitch_ratio)


def depth_left_at_birdsmouth(depth_m: float, seat_m: float, pitch_ratio: float) -> float:
    """Depth of rafter left over a birdsmouth, square to the rafter. [m]

    Parameters
        depth_m: float — depth of the rafter, square to it. [m], over 0
        seat_m: float — level cut, on the plate. [m], 0 or more
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — what is left; 0 or less where the cut goes through. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> round(depth_left_at_birdsmouth(7.25, 3.5, 3 / 4), 6)
        5.15
    """
    return positive("depth_m", depth_m) - birdsmouth_depth(seat_m, pitch_ratio)


def longest_seat(depth_m: float, pitch_ratio: float, share_ratio: float) -> float:
    """Longest level cut of a birdsmouth that keeps the notch within a share of the depth. [m]

    Parameters
        depth_m: float — depth of the rafter, square to it. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], over 0
        share_ratio: float — greatest depth of notch over depth of rafter; 1/4 in many codes. [ratio], 0 to 1
    Returns
        float — level cut. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        share × depth / sin(slope).
    References
        Geometry; common practice, no source.
    Examples
        2x8 at 9 in 12, a quarter of the depth: 3.02 in.

        >>> round(longest_seat(7.25, 9 / 12, 0.25), 2)
        3.02
    """
    notch_m = positive("depth_m", depth_m) * between("share_ratio", share_ratio, 0.0, 1.0)
    return notch_m * math.hypot(1.0, positive("pitch_ratio", pitch_ratio)) / pitch_ratio


def heel_height(depth_m: float, seat_m: float, pitch_ratio: float) -> float:
    """Height of the top of a rafter over the outside of the plate. [m]

    Parameters
        depth_m: float — depth of the rafter, square to it. [m], over 0
        seat_m: float — level cut, on the plate. [m], 0 or more
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — height above the plate: plumb cut of the rafter less that of the birdsmouth. [m]
    Raises
        OutOfRange — a value outside its range, a seat that cuts through the rafter.
    Notes
        depth / cos(slope) - seat × pitch: the room for insulation and air over the plate.
    References
        Geometry; common practice, no source.
    Examples
        2x8 at 9 in 12 with a seat of 3-1/2 in.

        >>> round(heel_height(7.25, 3.5, 9 / 12), 4)
        6.4375
    """
    height_m = plumb_cut(depth_m, pitch_ratio) - birdsmouth_plumb_depth(seat_m, pitch_ratio)
    if not height_m > 0:
        raise OutOfRange("seat_m", seat_m, f"under {plumb_cut(depth_m, pitch_ratio) / pitch_ratio:.12g}")
    return height_m


def tie_height_share(tie_height_m: float, ridge_height_m: float) -> float:
    """Height of a tie over the plate as a share of the ridge's. [ratio]

    Parameters
        tie_height_m: float — tie over the top of the plate, HC. [m], 0 up to the ridge
        ridge_height_m: float — ridge over the top of the plate, HR. [m], over 0
    Returns
        float — share, 0 to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, table R802.5.2: HC/HR.
    Examples
        16 in of 48 in.

        >>> round(tie_height_share(16.0, 48.0), 4)
        0.3333
    """
    ridge_m = positive("ridge_height_m", ridge_height_m)
    return between("tie_height_m", tie_height_m, 0.0, ridge_m) / ridge_m


def tie_height_of_share(share_ratio: float, ridge_height_m: float) -> float:
    """Height of a tie over the plate at a share of the ridge's. [m]

    Parameters
        share_ratio: float — HC/HR. [ratio], 0 to 1
        ridge_height_m: float — ridge over the top of the plate. [m], over 0
    Returns
        float — height. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, table R802.5.2: HC/HR.
    Examples
        >>> tie_height_of_share(0.25, 48.0)
        12.0
    """
    return between("share_ratio", share_ratio, 0.0, 1.0) * positive("ridge_height_m", ridge_height_m)


def tie_length(span_m: float, share_ratio: float) -> float:
    """Length of a tie between the lines of a pair of rafters of one pitch. [m]

    Parameters
        span_m: float — outside to outside of the plates. [m], over 0
        share_ratio: float — height of the tie over that of the ridge. [ratio], 0 to 1
    Returns
        float — length. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Similar triangles; common practice, no source.
    Examples
        >>> round(tie_length(24.0, 1 / 3), 6)
        16.0
    """
    return positive("span_m", span_m) * (1.0 - between("share_ratio", share_ratio, 0.0, 1.0))


def _rise(ridge_height_m: float, heel_height_m: float) -> float:
    """Rise over the run: ridge height less heel height, over 0."""
    heel_m = not_negative("heel_height_m", heel_height_m)
    if not finite("ridge_height_m", ridge_height_m) > heel_m:
        raise OutOfRange("ridge_height_m", ridge_height_m, f"over the heel height, {heel_m:.12g}")
    return ridge_height_m - heel_m
