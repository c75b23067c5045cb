"""Hypothesis strategies that several tests share."""

from __future__ import annotations

from hypothesis import strategies as st

from checker.plan.elements import STATUSES

statuses = st.sampled_from(STATUSES)
"""What the work does to an element."""

idents = st.from_regex(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,11}", fullmatch=True).map(lambda text: f"e{text}")
"""Ids that YAML reads as text."""

sixteenths = st.integers(min_value=1, max_value=4000)
"""Lengths in sixteenths of an inch."""


def inches(count: int) -> str:
    """A length in sixteenths of an inch as the trade writes it."""
    whole, part = divmod(count, 16)
    return f"{whole}-{part}/16 in" if part and whole else f"{part}/16 in" if part else f"{whole} in"


def from_nothing(most: float) -> st.SearchStrategy[float]:
    """Nothing, or from a millionth to `most`: numbers so small that products of them vanish are no loads or lengths."""
    return st.just(0.0) | st.floats(1e-6, most)
