"""Soil beside a foundation: digging below an old footing, backfill, pressure on a wall.

digging  influence_depth, reaches_under_footing, distance_needed
wall     unbalanced_backfill, soil_force, soil_moment_at_foot, soil_reaction_at_top, soil_moment_held
"""

from __future__ import annotations

import math

from checker.calc._checks import between, finite, not_negative, positive, reaches


def influence_depth(distance_m: float, fall_ratio: float) -> float:
    """Depth below an old footing to which one may dig at a distance from it. [m]

    Parameters
        distance_m: float — edge of the footing to the edge of the dig, on plan. [m], 0 or more
        fall_ratio: float — fall of the line for one of run: 1 for 45 deg, 1/1.5 for 1-1/2 to 1. [ratio], over 0
    Returns
        float — depth below the bottom of the footing. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        distance × fall: a line that falls from the bottom edge of the footing. Which fall is right depends on
        the soil; old footings and weak soil call for a flatter line.
    References
        [1] Article on undercutting of a footing: no deeper below it than the distance from it.
    Examples
        [1]: 3 ft away, 3 ft down.

        >>> influence_depth(3.0, 1.0)
        3.0
    """
    return not_negative("distance_m", distance_m) * positive("fall_ratio", fall_ratio)


def reaches_under_footing(depth_below_m: float, distance_m: float, fall_ratio: float) -> bool:
    """Whether a dig takes soil that an old footing rests on. [yes or no]

    Parameters
        depth_below_m: float — bottom of the dig below the bottom of the footing. [m], negative if above
        distance_m: float — edge of the footing to the edge of the dig, on plan. [m], 0 or more
        fall_ratio: float — fall of the line for one of run. [ratio], over 0
    Returns
        bool — whether the dig passes the line; a dig just on it does not. [yes or no]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Article on undercutting of a footing.
    Examples
        >>> reaches_under_footing(4.0, 3.0, 1.0)
        True
    """
    return not reaches(influence_depth(distance_m, fall_ratio), finite("depth_below_m", depth_below_m))


def distance_needed(depth_below_m: float, fall_ratio: float) -> float:
    """Distance from an old footing at which one may dig to a depth below it. [m]

    Parameters
        depth_below_m: float — bottom of the dig below the bottom of the footing. [m], negative if above
        fall_ratio: float — fall of the line for one of run. [ratio], over 0
    Returns
        float — distance on plan, 0 for a dig that is no deeper. [m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Article on undercutting of a footing.
    Examples
        2 ft down at 1-1/2 to 1.

        >>> round(distance_needed(2.0, 1 / 1.5), 6)
        3.0
    """
    return max(0.0, finite("depth_below_m", depth_below_m) / positive("fall_ratio", fall_ratio))


def unbalanced_backfill(grade_m: float, floor_m: float) -> float:
    """Height of soil on one side of a wall that has none on the other. [m]

    Parameters
        grade_m: float — finished grade outside, over any level. [m]
        floor_m: float — floor or ground inside, over the same level. [m]
    Returns
        float — height, 0 where the grade is no higher. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The top of a concrete floor where it holds the wall's foot; otherwise the ground inside.
    References
        [1] International Residential Code, 2018, R404.1: difference of outside finish and inside grade.
    Examples
        >>> unbalanced_backfill(2.0, 0.5)
        1.5
    """
    return max(0.0, finite("grade_m", grade_m) - finite("floor_m", floor_m))


def soil_force(weight_n_m3: float, backfill_m: float) -> float:
    """Sideways force of soil on a wall. [N/m]

    Parameters
        weight_n_m3: float — equivalent fluid weight of the soil. [N/m3], 0 or more
        backfill_m: float — unbalanced backfill. [m], 0 or more
    Returns
        float — force along the wall, at a third of the height. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        weight × height² / 2: a triangle. Surcharges and ground water come on top.
    References
        [1] Text on theory of soil pressure: thrust of a fluid, half of weight × height².
    Examples
        30 lb/ft3, 7 ft: 735 plf.

        >>> soil_force(30.0, 7.0)
        735.0
    """
    return not_negative("weight_n_m3", weight_n_m3) * not_negative("backfill_m", backfill_m) ** 2 / 2


def soil_moment_at_foot(weight_n_m3: float, backfill_m: float) -> float:
    """Moment at the foot of a wall that stands free against soil. [Nm/m]

    Parameters
        weight_n_m3: float — equivalent fluid weight of the soil. [N/m3], 0 or more
        backfill_m: float — unbalanced backfill. [m], 0 or more
    Returns
        float — moment along the wall. [Nm/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        force × height / 3.
    References
        [1] Text on theory of soil pressure: thrust at a third of the height.
    Examples
        30 lb/ft3, 6 ft: 540 lb at 2 ft.

        >>> soil_moment_at_foot(30.0, 6.0)
        1080.0
    """
    return soil_force(weight_n_m3, backfill_m) * backfill_m / 3


def soil_reaction_at_top(weight_n_m3: float, backfill_m: float, wall_height_m: float) -> float:
    """Force that a floor takes at the top of a wall against soil. [N/m]

    Parameters
        weight_n_m3: float — equivalent fluid weight of the soil. [N/m3], 0 or more
        backfill_m: float — unbalanced backfill. [m], 0 up to the wall's height
        wall_height_m: float — foot to the floor that holds the top. [m], over 0
    Returns
        float — force along the wall. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        moment about the foot / height of the wall.
    References
        Statics of a simple span; common practice, no source.
    Examples
        >>> soil_reaction_at_top(30.0, 6.0, 8.0)
        135.0
    """
    height_m = positive("wall_height_m", wall_height_m)
    fill_m = between("backfill_m", backfill_m, 0.0, height_m)
    return soil_moment_at_foot(weight_n_m3, fill_m) / height_m


def soil_moment_held(weight_n_m3: float, backfill_m: float, wall_height_m: float) -> float:
    """Greatest moment in a wall against soil that is held at foot and top. [Nm/m]

    Parameters
        weight_n_m3: float — equivalent fluid weight of the soil. [N/m3], 0 or more
        backfill_m: float — unbalanced backfill. [m], 0 up to the wall's height
        wall_height_m: float — foot to the floor that holds the top. [m], over 0
    Returns
        float — moment along the wall. [Nm/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        At the depth below the grade where the shear is nothing, fill × sqrt(fill / (3 × height)):
        reaction × (height - fill + 2/3 of that depth).
    References
        Statics of a simple span; common practice, no source.
    Examples
        Fill to the top: force × height × 2 / (9 × sqrt(3)), the textbook's triangle.

        >>> round(soil_moment_held(30.0, 8.0, 8.0), 1), round(960 * 8 * 2 / (9 * math.sqrt(3)), 1)
        (985.3, 985.3)
    """
    top_n_m = soil_reaction_at_top(weight_n_m3, backfill_m, wall_height_m)
    depth_m = backfill_m * math.sqrt(backfill_m / (3 * wall_height_m))
    return top_n_m * (wall_height_m - backfill_m + 2 * depth_m / 3)
