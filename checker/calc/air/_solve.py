"""Where a condition that grows with a number begins to hold."""

from __future__ import annotations

from collections.abc import Callable

from checker.calc.errors import OutOfRange

_TOLERANCE = 1e-12
_DOUBLINGS = 60


def turning_point(name: str, holds: Callable[[float], bool], low: float) -> tuple[float, float]:
    """Two numbers next to each other between which a condition begins to hold; both are `low` if it holds there."""
    if holds(low):
        return low, low
    high = 2 * low
    for _ in range(_DOUBLINGS):
        if holds(high):
            break
        low, high = high, 2 * high
    else:
        raise OutOfRange(name, high, "within what a house has")
    while high - low > _TOLERANCE * high:
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (low, middle) if holds(middle) else (middle, high)
    return low, high
