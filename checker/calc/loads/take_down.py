"""Line loads down the bearing lines of a house, by kind of load.

widths    loaded_width
one line  area_line_load, wall_line_load, own_line_load, loads_together
downward  beam_end_loads, even_line_load
in all    combined_load, governing_load, share_added

A line of walls or beams carries areas beside it, its own weight, and what stands on it. Loads are kept by kind
until they are combined: a mapping from the kind to N/m, or to N at a point. The order of the lines is the
caller's; each function takes one line at a time. Uplift is negative.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from checker.calc._checks import finite, not_negative, positive
from checker.calc.errors import OutOfRange
from checker.calc.framing.timber import LoadKind


def loaded_width(left_span_m: float, right_span_m: float, overhang_m: float = 0.0) -> float:
    """Width of floor or roof that a line carries, from the spans beside it. [m]

    Parameters
        left_span_m: float — span on one side, on plan. [m], 0 or more
        right_span_m: float — span on the other side, 0 for an outer line. [m], 0 or more
        overhang_m: float — what hangs over past an outer line, on plan. [m], 0 or more
    Returns
        float — half of each span and the overhang. [m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Joists in one piece over the line put more on it; the whole of an overhang is counted, and what it takes
        off the next line is left there.
    References
        [1] Article on loads on headers and beams, university extension: joists of 12 ft on both sides.
    Examples
        [1]

        >>> loaded_width(12.0, 12.0)
        12.0
    """
    spans_m = not_negative("left_span_m", left_span_m) + not_negative("right_span_m", right_span_m)
    return spans_m / 2 + not_negative("overhang_m", overhang_m)


def area_line_load(width_m: float, pressures_pa: Mapping[LoadKind, float]) -> dict[LoadKind, float]:
    """Line load of an area beside a line, by kind. [N/m]

    Parameters
        width_m: float — loaded width, on plan. [m], 0 or more
        pressures_pa: Mapping[LoadKind, float] — loads on plan by kind. [Pa], uplift negative
    Returns
        dict[LoadKind, float] — load along the line by kind. [N/m]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Article on loads on headers and beams, university extension.
    Examples
        [1]: 12 ft of 40 psf live and 10 psf dead, in plf.

        >>> area_line_load(12.0, {"live": 40.0, "dead": 10.0})
        {'live': 480.0, 'dead': 120.0}
    """
    width = not_negative("width_m", width_m)
    return {kind: width * pressure for kind, pressure in _checked("pressures_pa", pressures_pa).items()}


def wall_line_load(height_m: float, wall_pa: float) -> float:
    """Weight of a wall along its line. [N/m]

    Parameters
        height_m: float — height; the mean under a slope. [m], 0 or more
        wall_pa: float — weight over the face of the wall. [Pa], 0 or more
    Returns
        float — load along the line. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Openings are not taken off.
    References
        [1] Article on loads on headers and beams, university extension.
    Examples
        [1]: a partition of 10 psf, 8 ft high, in plf.

        >>> wall_line_load(8.0, 10.0)
        80.0
    """
    return not_negative("height_m", height_m) * not_negative("wall_pa", wall_pa)


def own_line_load(
    widths_m: Sequence[float],
    pressures_pa: Sequence[Mapping[LoadKind, float]],
    wall_heights_m: Sequence[float] = (),
    walls_pa: Sequence[float] = (),
) -> dict[LoadKind, float]:
    """What a line takes by itself: the areas beside it and its own walls, by kind. [N/m]

    Parameters
        widths_m: Sequence[float] — loaded width of each area. [m], each 0 or more; may be empty
        pressures_pa: Sequence[Mapping[LoadKind, float]] — loads of each area by kind. [Pa], as many as widths
        wall_heights_m: Sequence[float] — height of each wall of the line. [m], each 0 or more; may be empty
        walls_pa: Sequence[float] — weight over the face of each, counted as dead. [Pa], as many as heights
    Returns
        dict[LoadKind, float] — load along the line by kind. [N/m]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    References
        [1] Article on loads on headers and beams, university extension.
    Examples
        [1]: two floors of 12 ft and the partition between them: 1,160 plf in all.

        >>> floors = [{"live": 40.0, "dead": 10.0}, {"live": 30.0, "dead": 10.0}]
        >>> own_line_load([12.0, 12.0], floors, [8.0], [10.0])
        {'live': 840.0, 'dead': 320.0}
    """
    if len(widths_m) != len(pressures_pa):
        raise OutOfRange("length of widths_m", len(widths_m), f"that of pressures, {len(pressures_pa)}")
    if len(wall_heights_m) != len(walls_pa):
        raise OutOfRange("length of wall_heights_m", len(wall_heights_m), f"that of walls, {len(walls_pa)}")
    areas = [area_line_load(width, pressures) for width, pressures in zip(widths_m, pressures_pa, strict=True)]
    walls = [wall_line_load(height, wall) for height, wall in zip(wall_heights_m, walls_pa, strict=True)]
    own: Mapping[LoadKind, float] = {"dead": math.fsum(walls)} if walls else {}
    return loads_together([*areas, own])


def loads_together(loads_n_m: Sequence[Mapping[LoadKind, float]]) -> dict[LoadKind, float]:
    """Sum of line loads, kind by kind: a line's own and those of the lines that stand on it. [N/m]

    Parameters
        loads_n_m: Sequence[Mapping[LoadKind, float]] — loads by kind, each. [N/m], uplift negative; may be empty
    Returns
        dict[LoadKind, float] — sum by kind, of every kind that occurs. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Loads at points add up in the same way, in N.
    References
        Sum; common practice, no source.
    Examples
        >>> loads_together([{"dead": 100.0, "snow": 300.0}, {"dead": 50.0}])
        {'dead': 150.0, 'snow': 300.0}
    """
    parts: dict[LoadKind, list[float]] = {}
    for loads in loads_n_m:
        for kind, load in _checked("loads_n_m", loads).items():
            parts.setdefault(kind, []).append(load)
    return {kind: math.fsum(loads) for kind, loads in parts.items()}


def beam_end_loads(loads_n_m: Mapping[LoadKind, float], length_m: float) -> dict[LoadKind, float]:
    """Load at each end of a simple beam that carries an even line load, by kind. [N]

    Parameters
        loads_n_m: Mapping[LoadKind, float] — loads along the beam by kind, its own weight too. [N/m], uplift negative
        length_m: float — span, or the sum of the spans on both sides of a post. [m], over 0
    Returns
        dict[LoadKind, float] — half of each. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        For a post between two simple spans: half of both, so the sum of the spans. A beam in one piece over
        the post puts more on it.
    References
        Statics; common practice, no source.
    Examples
        >>> beam_end_loads({"dead": 100.0, "snow": 300.0}, 4.0)
        {'dead': 200.0, 'snow': 600.0}
    """
    half_m = positive("length_m", length_m) / 2
    return {kind: load * half_m for kind, load in _checked("loads_n_m", loads_n_m).items()}


def even_line_load(loads_n: Mapping[LoadKind, float], length_m: float) -> dict[LoadKind, float]:
    """Load at a point spread evenly over a length of the line below it, by kind. [N/m]

    Parameters
        loads_n: Mapping[LoadKind, float] — loads at the point by kind. [N], uplift negative
        length_m: float — length over which the wall or footing spreads them. [m], over 0
    Returns
        dict[LoadKind, float] — load along the line by kind. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        How far a wall spreads a load is the caller's judgement.
    References
        Statics; common practice, no source.
    Examples
        >>> even_line_load({"dead": 200.0, "snow": 600.0}, 2.0)
        {'dead': 100.0, 'snow': 300.0}
    """
    length = positive("length_m", length_m)
    return {kind: load / length for kind, load in _checked("loads_n", loads_n).items()}


def combined_load(loads_n_m: Mapping[LoadKind, float], factors_ratio: Mapping[LoadKind, float]) -> float:
    """Sum of the kinds that a combination counts, each with its factor. [N/m]

    Parameters
        loads_n_m: Mapping[LoadKind, float] — loads by kind. [N/m], uplift negative
        factors_ratio: Mapping[LoadKind, float] — factor of each kind. [ratio], 0 or more; a kind that is absent
            is not counted
    Returns
        float — combined load. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Loads at points combine in the same way, in N.
    References
        Sum; common practice, no source.
    Examples
        >>> combined_load({"dead": 400.0, "live": 800.0, "snow": 200.0}, {"dead": 1.0, "live": 0.75, "snow": 0.75})
        1150.0
    """
    for factor in factors_ratio.values():
        not_negative("factors_ratio", factor)
    loads = _checked("loads_n_m", loads_n_m)
    return math.fsum(load * factors_ratio.get(kind, 0.0) for kind, load in loads.items())


def governing_load(
    loads_n_m: Mapping[LoadKind, float], combinations_ratio: Sequence[Mapping[LoadKind, float]]
) -> float:
    """Greatest of several combinations. [N/m]

    Parameters
        loads_n_m: Mapping[LoadKind, float] — loads by kind. [N/m], uplift negative
        combinations_ratio: Sequence[Mapping[LoadKind, float]] — factors by kind of each. [ratio], one or more
    Returns
        float — greatest combined load. [N/m]
    Raises
        OutOfRange — a value outside its range, no combination.
    References
        Greatest of sums; common practice, no source.
    Examples
        >>> governing_load({"dead": 400.0, "live": 800.0}, [{"dead": 1.0}, {"dead": 1.0, "live": 1.0}])
        1200.0
    """
    if not combinations_ratio:
        raise OutOfRange("combinations_ratio", [], "one combination or more")
    return max(combined_load(loads_n_m, factors) for factors in combinations_ratio)


def share_added(before_n_m: float, after_n_m: float) -> float:
    """Share by which a load grows. [ratio]

    Parameters
        before_n_m: float — load before the work. [N/m], over 0
        after_n_m: float — load after it. [N/m], 0 or more
    Returns
        float — after / before - 1; negative where it falls. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Codes for existing buildings allow some growth without looking at the member or footing again.
    References
        [1] International Existing Building Code, 2018, 806.2: compared with a share of growth.
    Examples
        >>> round(share_added(1160.0, 1218.0), 6)
        0.05
    """
    return not_negative("after_n_m", after_n_m) / positive("before_n_m", before_n_m) - 1.0


def _checked(name: str, loads: Mapping[LoadKind, float]) -> Mapping[LoadKind, float]:
    """Pass on loads by kind that are finite numbers, refuse any other."""
    for kind, load in loads.items():
        finite(f"{name}, {kind},", load)
    return loads
