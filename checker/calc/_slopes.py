"""The section under a sloped ceiling: run to a height, area, legal values."""

from __future__ import annotations

import math

from checker.calc._checks import not_negative, positive, reaches
from checker.calc.errors import OutOfRange


def run_to(height_m: float, start_height_m: float, pitch_ratio: float) -> float:
    """Level run until a slope reaches a height; infinite for a level ceiling below it."""
    if reaches(start_height_m, height_m):
        return 0.0
    return (height_m - start_height_m) / pitch_ratio if pitch_ratio > 0 else math.inf


def section_area(start_height_m: float, pitch_ratio: float, run_m: float, flat_height_m: float | None) -> float:
    """Area of the section under a slope over a run, capped by a flat ceiling. [m2]"""
    whole_m2 = run_m * (start_height_m + pitch_ratio * run_m / 2)
    if flat_height_m is None:
        return whole_m2
    capped_run_m = max(0.0, run_m - run_to(flat_height_m, start_height_m, pitch_ratio))
    lost_at_start_m = max(0.0, start_height_m - flat_height_m)
    return whole_m2 - capped_run_m * (lost_at_start_m + pitch_ratio * capped_run_m / 2)


def check_slope(knee_wall_height_m: float, pitch_ratio: float, flat_height_m: float | None) -> None:
    """Refuse a negative knee wall or pitch and a flat ceiling below the knee wall."""
    not_negative("knee_wall_height_m", knee_wall_height_m)
    not_negative("pitch_ratio", pitch_ratio)
    if flat_height_m is None:
        return
    if not reaches(positive("flat_height_m", flat_height_m), knee_wall_height_m):
        legal = f"at least the height of the knee wall, {knee_wall_height_m:.12g}"
        raise OutOfRange("flat_height_m", flat_height_m, legal)
