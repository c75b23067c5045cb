"""Range checks and the treatment of float noise, shared by the calculations."""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc.errors import OutOfRange

_NOISE_RELATIVE = 1e-9
_NOISE_ABSOLUTE = 1e-12


def positive(name: str, value: float) -> float:
    """Pass on a finite number over 0, refuse any other."""
    if not (math.isfinite(value) and value > 0):
        raise OutOfRange(name, value, "a finite number over 0")
    return value


def not_negative(name: str, value: float) -> float:
    """Pass on a finite number of at least 0, refuse any other."""
    if not (math.isfinite(value) and value >= 0):
        raise OutOfRange(name, value, "a finite number, 0 or more")
    return value


def finite(name: str, value: float) -> float:
    """Pass on a finite number of either sign, refuse NaN and infinity."""
    if not math.isfinite(value):
        raise OutOfRange(name, value, "a finite number")
    return value


def between(name: str, value: float, low: float, high: float) -> float:
    """Pass on a number from low to high, both included (float noise allowed), refuse any other."""
    if not (math.isfinite(value) and reaches(value, low) and reaches(high, value)):
        raise OutOfRange(name, value, f"from {low:.12g} to {high:.12g}")
    return min(max(value, low), high)


def whole(name: str, value: int, least: int) -> int:
    """Pass on a whole number of at least `least`, refuse any other."""
    if isinstance(value, bool) or not isinstance(value, int) or value < least:
        raise OutOfRange(name, value, f"a whole number, {least} or more")
    return value


def all_positive(name: str, values: Sequence[float], least_count: int = 1) -> Sequence[float]:
    """Pass on a list of finite numbers over 0, refuse a shorter list or any other number."""
    if len(values) < least_count:
        raise OutOfRange(name, list(values), f"a list of {least_count} or more numbers over 0")
    for place, value in enumerate(values, start=1):
        positive(f"{name}, number {place},", value)
    return values


def reaches(value: float, limit: float) -> bool:
    """Whether a value is at or above a limit, float noise apart."""
    return value >= limit or math.isclose(value, limit, rel_tol=_NOISE_RELATIVE, abs_tol=_NOISE_ABSOLUTE)


def count_up(quotient: float) -> int:
    """Next whole number at or above a quotient, float noise apart."""
    nearest = round(quotient)
    return nearest if reaches(nearest, quotient) and reaches(quotient, nearest) else math.ceil(quotient)


def count_down(quotient: float) -> int:
    """Next whole number at or below a quotient, float noise apart."""
    nearest = round(quotient)
    return nearest if reaches(nearest, quotient) and reaches(quotient, nearest) else math.floor(quotient)
