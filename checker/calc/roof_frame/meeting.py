"""Where planes of a roof meet, and what a changed roof does to the headroom under it.

ridge     unequal_ridge_run, unequal_ridge_height, ridge_shift
dormer    shed_dormer_run, shed_dormer_top_height, gable_dormer_ridge_run, valley_length
headroom  headroom_gained

Two planes face each other over a span; each has its pitch and the height of its line at its own wall over one
level, the finished floor or the lower plate.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, finite, not_negative, positive, reaches
from checker.calc.errors import OutOfRange


def unequal_ridge_run(
    span_m: float, left_pitch_ratio: float, right_pitch_ratio: float, left_height_m: float, right_height_m: float
) -> float:
    """Distance from the left wall to where two facing planes meet. [m]

    Parameters
        span_m: float — wall to wall, on plan. [m], over 0
        left_pitch_ratio: float — rise for one of run of the left plane. [ratio], 0 or more
        right_pitch_ratio: float — rise for one of run of the right plane. [ratio], 0 or more, not both 0
        left_height_m: float — line of the left plane at its wall. [m]
        right_height_m: float — line of the right plane at its wall. [m]
    Returns
        float — distance. [m]
    Raises
        OutOfRange — a value outside its range, planes that do not meet between the walls.
    Notes
        (span × right pitch + right height - left height) / (left pitch + right pitch).
    References
        Geometry; common practice, no source.
    Examples
        12 in 12 against 4 in 12 over 24 ft, walls of one height: a quarter of the span.

        >>> round(unequal_ridge_run(24.0, 12 / 12, 4 / 12, 0.0, 0.0), 6)
        6.0
    """
    span = positive("span_m", span_m)
    left = not_negative("left_pitch_ratio", left_pitch_ratio)
    both = positive(
        "left_pitch_ratio and right_pitch_ratio", left + not_negative("right_pitch_ratio", right_pitch_ratio)
    )
    step_m = finite("right_height_m", right_height_m) - finite("left_height_m", left_height_m)
    return between("distance at which the planes meet", (span * right_pitch_ratio + step_m) / both, 0.0, span)


def unequal_ridge_height(
    span_m: float, left_pitch_ratio: float, right_pitch_ratio: float, left_height_m: float, right_height_m: float
) -> float:
    """Height at which two facing planes meet. [m]

    Parameters
        span_m: float — wall to wall, on plan. [m], over 0
        left_pitch_ratio: float — rise for one of run of the left plane. [ratio], 0 or more
        right_pitch_ratio: float — rise for one of run of the right plane. [ratio], 0 or more, not both 0
        left_height_m: float — line of the left plane at its wall. [m]
        right_height_m: float — line of the right plane at its wall. [m]
    Returns
        float — height over the same level. [m]
    Raises
        OutOfRange — a value outside its range, planes that do not meet between the walls.
    References
        Geometry; common practice, no source.
    Examples
        >>> round(unequal_ridge_height(24.0, 12 / 12, 4 / 12, 0.0, 0.0), 6)
        6.0
    """
    run_m = unequal_ridge_run(span_m, left_pitch_ratio, right_pitch_ratio, left_height_m, right_height_m)
    return left_height_m + run_m * left_pitch_ratio


def ridge_shift(span_m: float, ridge_run_m: float) -> float:
    """How far a ridge stands from the middle of the span. [m]

    Parameters
        span_m: float — wall to wall, on plan. [m], over 0
        ridge_run_m: float — left wall to the ridge, on plan. [m], 0 up to the span
    Returns
        float — distance; negative to the left of the middle. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> ridge_shift(24.0, 6.0)
        -6.0
    """
    span = positive("span_m", span_m)
    return between("ridge_run_m", ridge_run_m, 0.0, span) - span / 2


def shed_dormer_run(
    dormer_height_m: float, dormer_pitch_ratio: float, main_height_m: float, main_pitch_ratio: float
) -> float:
    """Run of a shed dormer's roof from its front wall until it meets the main roof. [m]

    Parameters
        dormer_height_m: float — line of the dormer's roof at its front wall. [m]
        dormer_pitch_ratio: float — rise for one of run of the dormer. [ratio], 0 up to under the main pitch
        main_height_m: float — line of the main roof over the same wall. [m], not over the dormer's
        main_pitch_ratio: float — rise for one of run of the main roof. [ratio], over 0
    Returns
        float — run on plan; past the ridge of the main roof the two do not meet. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (dormer height - main height) / (main pitch - dormer pitch).
    References
        Geometry; common practice, no source.
    Examples
        3 in 12 against 9 in 12, the dormer's wall 4 ft up through the roof: 8 ft.

        >>> shed_dormer_run(4.0, 3 / 12, 0.0, 9 / 12)
        8.0
    """
    main = positive("main_pitch_ratio", main_pitch_ratio)
    dormer = not_negative("dormer_pitch_ratio", dormer_pitch_ratio)
    if reaches(dormer, main):
        raise OutOfRange("dormer_pitch_ratio", dormer_pitch_ratio, f"under the main pitch, {main:.12g}")
    raised_m = finite("dormer_height_m", dormer_height_m) - finite("main_height_m", main_height_m)
    return not_negative("dormer_height_m less main_height_m", raised_m) / (main - dormer)


def shed_dormer_top_height(
    dormer_height_m: float, dormer_pitch_ratio: float, main_height_m: float, main_pitch_ratio: float
) -> float:
    """Height at which a shed dormer's roof meets the main roof. [m]

    Parameters
        dormer_height_m: float — line of the dormer's roof at its front wall. [m]
        dormer_pitch_ratio: float — rise for one of run of the dormer. [ratio], 0 up to under the main pitch
        main_height_m: float — line of the main roof over the same wall. [m], not over the dormer's
        main_pitch_ratio: float — rise for one of run of the main roof. [ratio], over 0
    Returns
        float — height over the same level; compare it with the ridge. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        >>> shed_dormer_top_height(4.0, 3 / 12, 0.0, 9 / 12)
        6.0
    """
    run_m = shed_dormer_run(dormer_height_m, dormer_pitch_ratio, main_height_m, main_pitch_ratio)
    return dormer_height_m + run_m * dormer_pitch_ratio


def gable_dormer_ridge_run(ridge_height_m: float, main_height_m: float, main_pitch_ratio: float) -> float:
    """Run of a gable dormer's level ridge from its front wall back to the main roof. [m]

    Parameters
        ridge_height_m: float — line of the dormer's ridge. [m]
        main_height_m: float — line of the main roof over the front wall. [m], not over the ridge
        main_pitch_ratio: float — rise for one of run of the main roof. [ratio], over 0
    Returns
        float — run on plan. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        Geometry; common practice, no source.
    Examples
        A ridge 6 ft over the main roof at the front, 9 in 12: 8 ft.

        >>> gable_dormer_ridge_run(6.0, 0.0, 9 / 12)
        8.0
    """
    raised_m = finite("ridge_height_m", ridge_height_m) - finite("main_height_m", main_height_m)
    return not_negative("ridge_height_m less main_height_m", raised_m) / positive("main_pitch_ratio", main_pitch_ratio)


def valley_length(half_width_m: float, dormer_pitch_ratio: float, main_pitch_ratio: float) -> float:
    """Length of a valley from the dormer's eave to its ridge, along the slope. [m]

    Parameters
        half_width_m: float — eave to ridge of the dormer, on plan. [m], over 0
        dormer_pitch_ratio: float — rise for one of run of the dormer's sides. [ratio], over 0
        main_pitch_ratio: float — rise for one of run of the main roof. [ratio], over 0
    Returns
        float — length. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The rise is half width × dormer pitch; the run up the main roof, that rise / main pitch.
    References
        Geometry; common practice, no source.
    Examples
        Pitches of 12 in 12, half of 4 ft: the diagonal of a cube.

        >>> round(valley_length(4.0, 1.0, 1.0) / math.sqrt(3), 6)
        4.0
    """
    half_m = positive("half_width_m", half_width_m)
    rise_m = half_m * positive("dormer_pitch_ratio", dormer_pitch_ratio)
    return math.hypot(half_m, rise_m, rise_m / positive("main_pitch_ratio", main_pitch_ratio))


def headroom_gained(distance_m: float, plate_raised_m: float, old_pitch_ratio: float, new_pitch_ratio: float) -> float:
    """Height gained under a slope by raising its plate and changing its pitch. [m]

    Parameters
        distance_m: float — from the wall, on plan. [m], 0 or more
        plate_raised_m: float — new plate over the old; negative if lowered. [m]
        old_pitch_ratio: float — rise for one of run before. [ratio], 0 or more
        new_pitch_ratio: float — rise for one of run after. [ratio], 0 or more
    Returns
        float — gain at that distance; negative where the roof comes down. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        raise + distance × (new pitch - old pitch).
    References
        Geometry; common practice, no source.
    Examples
        Plate up 3 ft, 9 in 12 made 4 in 12: 4 ft in, 1.33 ft more.

        >>> round(headroom_gained(4.0, 3.0, 9 / 12, 4 / 12), 2)
        1.33
    """
    change = not_negative("new_pitch_ratio", new_pitch_ratio) - not_negative("old_pitch_ratio", old_pitch_ratio)
    return finite("plate_raised_m", plate_raised_m) + not_negative("distance_m", distance_m) * change
