"""The plan of a storey made of rectangles: shared walls, free walls, what lies over what.

one room   area, perimeter
two rooms  overlap_area, shared_side
a storey   free_sides, overlapping_rooms
storeys    uncovered_area

A rectangle is west, south, east and north in one grid for the whole house: x runs east, y runs north, and the
house may be turned so that its walls follow the grid. Rooms of one storey are drawn to their finished walls, or
to the middles of them: the gap between two that share a wall is at most a partition. Of rooms that overlap
neither shares a wall with the other; `overlapping_rooms` finds them.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations, pairwise
from typing import Literal

from checker.calc._checks import finite, not_negative, reaches
from checker.calc.errors import OutOfRange

Rect = tuple[float, float, float, float]  # west, south, east, north
Side = Literal["north", "east", "south", "west"]

_Range = tuple[float, float]
_EDGES = ("west", "south", "east", "north")


def area(room_m: Rect) -> float:
    """Area of a rectangle. [m2]

    Parameters
        room_m: Rect — west, south, east, north. [m], east over west, north over south
    Returns
        float — area. [m2]
    Raises
        OutOfRange — a rectangle that is none.
    References
        Geometry; common practice, no source.
    Examples
        >>> area((1.0, 2.0, 5.0, 5.0))
        12.0
    """
    west, south, east, north = _checked("room_m", room_m)
    return (east - west) * (north - south)


def perimeter(room_m: Rect) -> float:
    """Perimeter of a rectangle. [m]

    Parameters
        room_m: Rect — west, south, east, north. [m], east over west, north over south
    Returns
        float — length of the four sides. [m]
    Raises
        OutOfRange — a rectangle that is none.
    References
        Geometry; common practice, no source.
    Examples
        >>> perimeter((1.0, 2.0, 5.0, 5.0))
        14.0
    """
    west, south, east, north = _checked("room_m", room_m)
    return 2 * (east - west) + 2 * (north - south)


def overlap_area(first_m: Rect, second_m: Rect) -> float:
    """Area that two rectangles have in common. [m2]

    Parameters
        first_m: Rect — west, south, east, north. [m], east over west, north over south
        second_m: Rect — the other one, on the same storey or another. [m], likewise
    Returns
        float — area, 0 for rectangles that only touch. [m2]
    Raises
        OutOfRange — a rectangle that is none.
    References
        Geometry; common practice, no source.
    Examples
        A room of 4 m by 3 m, and one above it that is set off by 1 m to the east and by 2 m to the north.

        >>> overlap_area((0.0, 0.0, 4.0, 3.0), (1.0, 2.0, 5.0, 5.0))
        3.0
    """
    first, second = _checked("first_m", first_m), _checked("second_m", second_m)
    across, along = _common(_across(first), _across(second)), _common(_along(first), _along(second))
    return _length(across) * _length(along) if across and along else 0.0


def shared_side(first_m: Rect, second_m: Rect, wall_m: float) -> tuple[Side, float] | None:
    """Side of a room that is a wall shared with another room, and its length. [m]

    Parameters
        first_m: Rect — room of a storey: west, south, east, north. [m], east over west, north over south
        second_m: Rect — other room of the storey. [m], likewise
        wall_m: float — thickest partition between rooms. [m], 0 or more
    Returns
        tuple[Side, float] | None — side of the first room, and the length along which both lie; None if they
            share no wall. [m]
    Raises
        OutOfRange — a rectangle that is none, a value outside its range.
    Notes
        Two rooms share a wall where the gap between facing sides is from 0 to a partition. Rooms that touch at a
        corner only share none, nor do rooms that overlap.
    References
        Geometry; common practice, no source.
    Examples
        A partition of 0.125 m, the second room 1 m further north.

        >>> shared_side((0.0, 0.0, 4.0, 3.0), (4.125, 1.0, 8.0, 4.0), 0.25)
        ('east', 2.0)
    """
    first, second = _checked("first_m", first_m), _checked("second_m", second_m)
    shared = _shared(first, second, not_negative("wall_m", wall_m))
    return None if shared is None else (shared[0], _length(shared[1]))


def free_sides(room_m: Rect, others_m: Sequence[Rect], wall_m: float) -> dict[Side, float]:
    """Length of each side of a room that no other room of the storey shares. [m]

    Parameters
        room_m: Rect — room: west, south, east, north. [m], east over west, north over south
        others_m: Sequence[Rect] — the other rooms of the storey. [m], likewise; may be empty
        wall_m: float — thickest partition between rooms. [m], 0 or more
    Returns
        dict[Side, float] — length for north, east, south and west, 0 where the whole side is shared. [m]
    Raises
        OutOfRange — a rectangle that is none, a value outside its range.
    Notes
        The side less the union of what is shared: two neighbours over one stretch count once. Where a partition
        between two neighbours meets the side, its thickness stays free.
    References
        Geometry; common practice, no source.
    Examples
        A room of 4 m by 3 m with a neighbour along half of its north side.

        >>> free_sides((0.0, 0.0, 4.0, 3.0), [(0.0, 3.125, 2.0, 6.0)], 0.25)
        {'north': 2.0, 'east': 3.0, 'south': 4.0, 'west': 3.0}
    """
    room = _checked("room_m", room_m)
    not_negative("wall_m", wall_m)
    ranges: dict[Side, list[_Range]] = {"north": [], "east": [], "south": [], "west": []}
    for other in _all_checked("others_m", others_m):
        shared = _shared(room, other, wall_m)
        if shared is not None:
            ranges[shared[0]].append(shared[1])
    across_m, along_m = _length(_across(room)), _length(_along(room))
    wholes_m: dict[Side, float] = {"north": across_m, "east": along_m, "south": across_m, "west": along_m}
    return {side: _rest(whole_m, _union_length(ranges[side])) for side, whole_m in wholes_m.items()}


def uncovered_area(room_m: Rect, others_m: Sequence[Rect]) -> float:
    """Area of a room over which none of other rectangles lies. [m2]

    Parameters
        room_m: Rect — room: west, south, east, north. [m], east over west, north over south
        others_m: Sequence[Rect] — rooms of the storey above, or below, for instance. [m], likewise; may be
            empty, may overlap
    Returns
        float — area, 0 where they cover all of it. [m2]
    Raises
        OutOfRange — a rectangle that is none.
    Notes
        The room less the union of the others, strip by strip between their west and east edges. Strips under the
        partitions of the other storey are uncovered too.
    References
        Geometry; common practice, no source.
    Examples
        A room of 4 m by 3 m under two that overlap in 1 m2.

        >>> uncovered_area((0.0, 0.0, 4.0, 3.0), [(0.0, 0.0, 2.0, 2.0), (1.0, 1.0, 3.0, 3.0)])
        5.0
    """
    west, south, east, north = room = _checked("room_m", room_m)
    others = _all_checked("others_m", others_m)
    edges_m = {west, east, *(edge for other in others for edge in _across(other) if west < edge < east)}
    covered_m2 = []
    for strip in pairwise(sorted(edges_m)):
        over = [other for other in others if other[0] <= strip[0] and other[2] >= strip[1]]
        ranges = (_common((south, north), _along(other)) for other in over)
        covered_m2.append(_length(strip) * _union_length(part for part in ranges if part is not None))
    return _rest(_length(_across(room)) * _length(_along(room)), math.fsum(covered_m2))


def overlapping_rooms(rooms_m: Mapping[str, Rect]) -> list[tuple[str, str]]:
    """Pairs of rooms of one storey that overlap: an error in its plan. [names]

    Parameters
        rooms_m: Mapping[str, Rect] — for each room west, south, east, north. [m], east over west, north over
            south
    Returns
        list[tuple[str, str]] — pairs in the order of the rooms; empty if none overlap. [names]
    Raises
        OutOfRange — a rectangle that is none.
    Notes
        Rooms that only touch do not overlap, float noise apart.
    References
        Geometry; common practice, no source.
    Examples
        >>> overlapping_rooms({"hall": (0.0, 0.0, 2.0, 5.0), "bath": (2.0, 0.0, 4.0, 2.0), "den": (1.5, 2.0, 5.0, 5.0)})
        [('hall', 'den')]
    """
    checked = {name: _checked(f"rooms_m, {name},", rect) for name, rect in rooms_m.items()}
    return [(one, other) for one, other in combinations(checked, 2) if overlap_area(checked[one], checked[other]) > 0]


def _checked(name: str, rect: Rect) -> Rect:
    """Pass on a rectangle of finite numbers with a width and a depth, refuse any other."""
    if len(rect) != len(_EDGES):
        raise OutOfRange(name, rect, "four numbers: west, south, east, north")
    start = name if name.endswith(",") else f"{name},"
    west, south, east, north = (finite(f"{start} {edge},", value) for edge, value in zip(_EDGES, rect, strict=True))
    if east <= west:
        raise OutOfRange(f"{start} east,", east, f"over the west, {west:.12g}")
    if north <= south:
        raise OutOfRange(f"{start} north,", north, f"over the south, {south:.12g}")
    return west, south, east, north


def _all_checked(name: str, rects: Sequence[Rect]) -> list[Rect]:
    return [_checked(f"{name}, number {place},", rect) for place, rect in enumerate(rects, start=1)]


def _across(rect: Rect) -> _Range:
    return rect[0], rect[2]


def _along(rect: Rect) -> _Range:
    return rect[1], rect[3]


def _length(part: _Range) -> float:
    return part[1] - part[0]


def _common(one: _Range, other: _Range) -> _Range | None:
    """What two ranges have in common, None if that is float noise or nothing."""
    low, high = max(one[0], other[0]), min(one[1], other[1])
    return None if reaches(low, high) else (low, high)


def _shared(first: Rect, second: Rect, wall_m: float) -> tuple[Side, _Range] | None:
    across, along = _common(_across(first), _across(second)), _common(_along(first), _along(second))
    if along is not None:
        if _is_wall(first[2], second[0], wall_m):
            return "east", along
        return ("west", along) if _is_wall(second[2], first[0], wall_m) else None
    if across is not None:
        if _is_wall(first[3], second[1], wall_m):
            return "north", across
        return ("south", across) if _is_wall(second[3], first[1], wall_m) else None
    return None


def _is_wall(near_m: float, far_m: float, wall_m: float) -> bool:
    """Whether the gap from one side to the facing one is from 0 to a partition."""
    return reaches(far_m, near_m) and reaches(near_m + wall_m, far_m)


def _union_length(parts: Iterable[_Range]) -> float:
    """Length that ranges cover together."""
    lengths = []
    reached = -math.inf
    for low, high in sorted(parts):
        if high > reached:
            lengths.append(high - max(low, reached))
            reached = high
    return math.fsum(lengths)


def _rest(whole: float, part: float) -> float:
    """What a part leaves of a whole, 0 if that is float noise."""
    return 0.0 if reaches(part, whole) else whole - part
