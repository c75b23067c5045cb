"""Checks on lists that belong together: equal lengths, shares that make a whole."""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, between, finite, not_negative, positive
from checker.calc.errors import OutOfRange

_WHOLE = 1e-6


def same_length(name: str, values: Sequence[object], other_name: str, other: Sequence[object]) -> None:
    """Refuse two lists of unlike length."""
    if len(values) != len(other):
        raise OutOfRange(f"length of {name}", len(values), f"that of {other_name}, {len(other)}")


def all_not_negative(name: str, values: Sequence[float], least_count: int = 1) -> Sequence[float]:
    """Pass on a list of finite numbers of at least 0, refuse a shorter list or any other number."""
    if len(values) < least_count:
        raise OutOfRange(name, list(values), f"a list of {least_count} or more numbers, each 0 or more")
    for place, value in enumerate(values, start=1):
        not_negative(f"{name}, number {place},", value)
    return values


def all_finite(name: str, values: Sequence[float], least_count: int = 1) -> Sequence[float]:
    """Pass on a list of finite numbers, refuse a shorter list, NaN and infinity."""
    if len(values) < least_count:
        raise OutOfRange(name, list(values), f"a list of {least_count} or more numbers")
    for place, value in enumerate(values, start=1):
        finite(f"{name}, number {place},", value)
    return values


def shares(name: str, values: Sequence[float]) -> Sequence[float]:
    """Pass on shares that make 1 together, refuse any other list."""
    for place, value in enumerate(all_not_negative(name, values), start=1):
        between(f"{name}, number {place},", value, 0.0, 1.0)
    total = math.fsum(values)
    if not math.isclose(total, 1.0, abs_tol=_WHOLE):
        raise OutOfRange(f"sum of {name}", total, "1")
    return values


def paths(name: str, values: Sequence[Sequence[float]], count: int) -> Sequence[Sequence[float]]:
    """Pass on `count` paths with the same number of layers, each of 0 or more and each path over 0."""
    if len(values) != count:
        raise OutOfRange(f"length of {name}", len(values), f"the number of shares, {count}")
    for place, path in enumerate(values, start=1):
        all_not_negative(f"{name}, path {place}", path)
        same_length(f"{name}, path {place}", path, "path 1", values[0])
        positive(f"{name}, sum of path {place},", math.fsum(path))
    return values


def temperatures(name: str, values: Sequence[float], least_count: int = 1) -> Sequence[float]:
    """Pass on a list of temperatures that occur in buildings, refuse any other."""
    for place, value in enumerate(all_finite(name, values, least_count), start=1):
        temperature(f"{name}, number {place},", value)
    return values


def temperature(name: str, value: float) -> float:
    """Pass on a temperature from -100 to 100 degC, refuse any other."""
    return between(name, value, -100.0, 100.0)


def matching_positive(name: str, values: Sequence[float], other_name: str, other: Sequence[object]) -> Sequence[float]:
    """Pass on numbers over 0, as many as in another list."""
    same_length(name, values, other_name, other)
    return all_positive(name, values)
