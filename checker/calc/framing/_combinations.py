"""Which combinations of loads count for a member, and how long their loads last."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from checker.calc.framing.beam import Loads
from checker.calc.framing.timber import Combination, TimberStandard


def that_matter(combinations: Sequence[Combination], loads: Loads) -> Iterable[Combination]:
    """Combinations but those whose passing loads are all absent; all of them if that leaves none."""
    kinds = loads.kinds()
    kept = [
        each
        for each in combinations
        if not (passing := {kind for kind in each.factors if kind != "dead"}) or passing & kinds
    ]
    return kept or combinations


def duration_of(combination: Combination, standard: TimberStandard, loads: Loads, length_m: float) -> float:
    """Duration factor of a combination; in limit states it falls where lasting load is the greater."""
    if standard.method != "limit states" or "wind" in combination.factors:
        return combination.duration
    passing_n = [
        loads.total(kind, length_m) for kind, factor in combination.factors.items() if kind != "dead" and factor
    ]
    lasting_n = loads.total("dead", length_m)
    standing_n = (math.fsum(passing_n) + max(passing_n)) / 2 if passing_n else 0.0
    if standing_n <= 0 or lasting_n <= standing_n:
        return combination.duration
    lasting = min(each.duration for each in standard.strength)
    return min(combination.duration, max(lasting, 1.0 - 0.5 * math.log10(lasting_n / standing_n)))
