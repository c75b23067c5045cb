"""Rooms of a storey as rectangles: worked by hand, counted on a grid, turned and moved."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc import rooms_plan
from checker.calc.errors import OutOfRange
from checker.calc.rooms_plan import Rect, Side

SMALL = st.integers(-8, 8)
SIXTEENTHS = st.integers(-800, 800).map(lambda count: count / 16)  # exact in floats
WALLS = st.integers(0, 3).map(float)
SIDES: tuple[Side, ...] = ("north", "east", "south", "west")
OPPOSITE: dict[Side, Side] = {"north": "south", "south": "north", "east": "west", "west": "east"}
SWAPPED: dict[Side, Side] = {"north": "east", "east": "north", "south": "west", "west": "south"}
FOOT = 0.3048
INCH = 0.0254


@st.composite
def rects(draw: st.DrawFn, numbers: st.SearchStrategy[float] = SMALL) -> Rect:
    """A rectangle with a width and a depth."""
    west, east = draw(st.lists(numbers, min_size=2, max_size=2, unique=True).map(sorted))
    south, north = draw(st.lists(numbers, min_size=2, max_size=2, unique=True).map(sorted))
    return float(west), float(south), float(east), float(north)


@st.composite
def partitions(draw: st.DrawFn) -> tuple[Rect, list[Rect]]:
    """A rectangle, and the rooms that straight cuts through it make."""
    xs = sorted(draw(st.lists(SIXTEENTHS, min_size=2, max_size=5, unique=True)))
    ys = sorted(draw(st.lists(SIXTEENTHS, min_size=2, max_size=5, unique=True)))
    rooms = [(west, south, east, north) for west, east in pairwise(xs) for south, north in pairwise(ys)]
    return (xs[0], ys[0], xs[-1], ys[-1]), rooms


ROOMS = st.lists(rects(), max_size=6)


def swapped(rect: Rect) -> Rect:
    """The rectangle mirrored so that north is east."""
    west, south, east, north = rect
    return south, west, north, east


def moved(rect: Rect, east_m: float, north_m: float) -> Rect:
    """The rectangle somewhere else."""
    return rect[0] + east_m, rect[1] + north_m, rect[2] + east_m, rect[3] + north_m


def cells(rect: Rect) -> set[tuple[int, int]]:
    """The squares of 1 m that a rectangle of whole metres is made of."""
    west, south, east, north = (int(edge) for edge in rect)
    return {(x, y) for x in range(west, east) for y in range(south, north)}


HOUSE: dict[str, Rect] = {
    # 12 m by 8 m outside walls left out; partitions of 0.125 m
    "living": (0.0, 0.0, 6.0, 4.0),
    "kitchen": (6.125, 0.0, 12.0, 4.0),
    "bedroom": (0.0, 4.125, 4.0, 8.0),
    "bath": (4.125, 4.125, 7.0, 8.0),
    "study": (7.125, 4.125, 12.0, 8.0),
}


def others(name: str) -> list[Rect]:
    """The other rooms of the house."""
    return [rect for other, rect in HOUSE.items() if other != name]


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        ("living", "kitchen", ("east", 4.0)),
        ("kitchen", "living", ("west", 4.0)),
        ("living", "bedroom", ("north", 4.0)),
        ("living", "bath", ("north", 1.875)),
        ("bath", "living", ("south", 1.875)),
        ("bath", "kitchen", ("south", 0.875)),
        ("living", "study", None),
        ("bedroom", "study", None),
        ("bedroom", "kitchen", None),
    ],
)
def test_walls_of_a_small_house(first: str, second: str, expected: tuple[Side, float] | None) -> None:
    """Measured on a drawing of five rooms."""
    assert rooms_plan.shared_side(HOUSE[first], HOUSE[second], 0.15) == expected


@pytest.mark.parametrize(
    ("name", "free"),
    [
        ("living", {"north": 0.125, "east": 0.0, "south": 6.0, "west": 4.0}),
        ("kitchen", {"north": 0.125, "east": 4.0, "south": 5.875, "west": 0.0}),
        ("bedroom", {"north": 4.0, "east": 0.0, "south": 0.0, "west": 3.875}),
        ("bath", {"north": 2.875, "east": 0.0, "south": 0.125, "west": 0.0}),
    ],
)
def test_free_sides_of_a_small_house(name: str, free: dict[Side, float]) -> None:
    """Outside walls, and the ends of the partitions that meet a side."""
    assert rooms_plan.free_sides(HOUSE[name], others(name), 0.15) == free


def test_a_sound_house_has_no_overlap() -> None:
    """Until a room is drawn over two others."""
    assert rooms_plan.overlapping_rooms(HOUSE) == []
    wrong = HOUSE | {"closet": (3.0, 3.0, 7.0, 3.5)}
    assert rooms_plan.overlapping_rooms(wrong) == [("living", "closet"), ("kitchen", "closet")]


def test_floor_under_an_upper_storey() -> None:
    """An attic room of 5 m by 4 m covers parts of four rooms and touches the fifth."""
    attic: Rect = (4.0, 2.0, 9.0, 6.0)
    covered = {name: rooms_plan.overlap_area(rect, attic) for name, rect in HOUSE.items()}
    assert covered == {"living": 4.0, "kitchen": 5.75, "bedroom": 0.0, "bath": 5.390625, "study": 3.515625}
    for name, rect in HOUSE.items():
        assert rooms_plan.uncovered_area(rect, [attic]) == rooms_plan.area(rect) - covered[name]
    # the other way round the partitions of the lower storey are left over
    over_partitions = 5 * 0.125 + 2 * 0.125 + 2 * 0.125 * 1.875
    assert rooms_plan.uncovered_area(attic, list(HOUSE.values())) == over_partitions


def test_feet_and_inches_leave_no_slivers() -> None:
    """Float noise of converted lengths makes neither a gap nor an overlap nor a free sliver."""
    width_m, south_m, north_m = 8 * FOOT + 3.75 * INCH, 0.1 * FOOT, 0.1 * FOOT + 9.7 * FOOT
    rooms: list[Rect] = [(place * width_m, south_m, place * width_m + width_m, north_m) for place in range(9)]
    gaps_m = [there[0] - here[2] for here, there in pairwise(rooms)]
    assert min(gaps_m) < 0 < max(gaps_m)  # there is noise both ways
    hall: Rect = (0.0, 9.8 * FOOT, sum([width_m] * 9), 15 * FOOT)
    named = {str(place): rect for place, rect in enumerate([*rooms, hall])}
    assert rooms_plan.overlapping_rooms(named) == []
    assert rooms_plan.free_sides(hall, rooms, 0.0)["south"] == 0
    for here, there in pairwise(rooms):
        assert rooms_plan.overlap_area(here, there) == 0
        assert rooms_plan.shared_side(here, there, 0.0) == ("east", north_m - south_m)
        assert rooms_plan.free_sides(here, [there, hall], 0.0) == pytest.approx(
            {"north": 0.0, "east": 0.0, "south": width_m, "west": north_m - south_m}, rel=1e-12, abs=0.0
        )
    whole: Rect = (0.0, south_m, 9 * width_m, 9.8 * FOOT)
    assert rooms_plan.uncovered_area(whole, rooms) == 0


def test_a_gap_as_thick_as_the_thickest_partition_is_one() -> None:
    """One a hair thicker is none: an outdoor passage, or a shaft."""
    room: Rect = (0.0, 0.0, 12 * FOOT, 10 * FOOT)
    at_limit: Rect = (12 * FOOT + 6.5 * INCH, 0.0, 20 * FOOT, 10 * FOOT)
    assert rooms_plan.shared_side(room, at_limit, 6.5 * INCH) == ("east", 10 * FOOT)
    assert rooms_plan.shared_side(room, moved(at_limit, 1e-6, 0.0), 6.5 * INCH) is None


def test_rooms_at_a_corner_share_no_wall() -> None:
    """Neither touching nor with a partition between."""
    assert rooms_plan.shared_side((0.0, 0.0, 2.0, 2.0), (2.0, 2.0, 4.0, 4.0), 1.0) is None
    assert rooms_plan.shared_side((0.0, 0.0, 2.0, 2.0), (2.5, 2.5, 4.0, 4.0), 1.0) is None


@settings(deadline=None)
@given(partitions())
def test_parts_make_the_whole(drawn: tuple[Rect, list[Rect]]) -> None:
    """Cut rooms add up to the whole, cover it, do not overlap, and only the outer walls are free."""
    whole, rooms = drawn
    assert math.fsum(map(rooms_plan.area, rooms)) == rooms_plan.area(whole)
    assert math.fsum(rooms_plan.overlap_area(whole, room) for room in rooms) == rooms_plan.area(whole)
    assert rooms_plan.uncovered_area(whole, rooms) == 0
    assert rooms_plan.uncovered_area(whole, rooms[1:]) == rooms_plan.area(rooms[0])
    assert rooms_plan.overlapping_rooms({str(place): room for place, room in enumerate(rooms)}) == []
    free_m = [
        length_m
        for place, room in enumerate(rooms)
        for length_m in rooms_plan.free_sides(room, rooms[:place] + rooms[place + 1 :], 0.0).values()
    ]
    assert math.fsum(free_m) == rooms_plan.perimeter(whole)


@settings(deadline=None, max_examples=300)
@given(rects(), ROOMS)
def test_areas_agree_with_counted_squares(room: Rect, rooms: list[Rect]) -> None:
    """Areas counted square by square, whatever overlaps."""
    assert rooms_plan.area(room) == len(cells(room))
    for other in rooms:
        assert rooms_plan.overlap_area(room, other) == len(cells(room) & cells(other))
    assert rooms_plan.uncovered_area(room, rooms) == len(cells(room).difference(*map(cells, rooms)))
    named = {str(place): other for place, other in enumerate(rooms)}
    overlapping = rooms_plan.overlapping_rooms(named)
    assert {(one, two) for one in named for two in named if one < two and cells(named[one]) & cells(named[two])} == {
        *overlapping
    }


@settings(deadline=None, max_examples=300)
@given(rects(), ROOMS, WALLS)
def test_free_and_shared_make_the_side(room: Rect, rooms: list[Rect], wall_m: float) -> None:
    """Each side metre by metre: free where no other room lies within a partition straight outside."""
    west, south, east, north = (int(edge) for edge in room)
    beside = [other for other in rooms if not cells(room) & cells(other)]
    reach = range(int(wall_m) + 1)

    def shared(side: Side, x: int, y: int) -> bool:
        """Whether a room begins within the partition, seen from the square (x, y) just outside the side."""
        step = {"north": (0, 1), "east": (1, 0), "south": (0, -1), "west": (-1, 0)}[side]
        at = [(x + step[0] * away, y + step[1] * away) for away in reach]
        back = [(x - step[0], y - step[1]) for x, y in at]
        return any(
            here in cells(other) and before not in cells(other)
            for other in beside
            for here, before in zip(at, back, strict=True)
        )

    outside: dict[Side, list[tuple[int, int]]] = {
        "north": [(x, north) for x in range(west, east)],
        "east": [(east, y) for y in range(south, north)],
        "south": [(x, south - 1) for x in range(west, east)],
        "west": [(west - 1, y) for y in range(south, north)],
    }
    free_m = rooms_plan.free_sides(room, rooms, wall_m)
    assert free_m == {side: sum(not shared(side, x, y) for x, y in outside[side]) for side in SIDES}


@settings(deadline=None)
@given(rects(SIXTEENTHS), rects(SIXTEENTHS), WALLS)
def test_sharing_is_mutual(first: Rect, second: Rect, wall_m: float) -> None:
    """What one room shares the other shares, on the opposite side; a thicker partition loses nothing."""
    forth = rooms_plan.shared_side(first, second, wall_m)
    back = rooms_plan.shared_side(second, first, wall_m)
    assert rooms_plan.overlap_area(first, second) == rooms_plan.overlap_area(second, first)
    if forth is None:
        assert back is None
        return
    assert back == (OPPOSITE[forth[0]], forth[1])
    assert rooms_plan.shared_side(first, second, wall_m + 1) == forth
    assert rooms_plan.overlap_area(first, second) == 0
    side, length_m = forth
    whole_m = rooms_plan.free_sides(first, [], wall_m)[side]
    assert rooms_plan.free_sides(first, [second], wall_m)[side] == whole_m - length_m
    assert rooms_plan.free_sides(first, [second, second], wall_m)[side] == whole_m - length_m


@settings(deadline=None)
@given(rects(SIXTEENTHS), st.lists(rects(SIXTEENTHS), max_size=5), WALLS, SIXTEENTHS, SIXTEENTHS)
def test_nothing_depends_on_where_the_house_stands(
    room: Rect, rooms: list[Rect], wall_m: float, east_m: float, north_m: float
) -> None:
    """The house moved gives the same, and mirrored so that north is east the same with the sides exchanged."""
    there, rooms_there = moved(room, east_m, north_m), [moved(other, east_m, north_m) for other in rooms]
    turned, rooms_turned = swapped(room), [swapped(other) for other in rooms]
    free_m = rooms_plan.free_sides(room, rooms, wall_m)
    assert rooms_plan.free_sides(there, rooms_there, wall_m) == free_m
    assert rooms_plan.free_sides(turned, rooms_turned, wall_m) == {SWAPPED[side]: free_m[side] for side in SIDES}
    uncovered_m2 = rooms_plan.uncovered_area(room, rooms)
    assert rooms_plan.uncovered_area(there, rooms_there) == uncovered_m2
    assert rooms_plan.uncovered_area(turned, rooms_turned) == pytest.approx(uncovered_m2, rel=1e-12)
    assert rooms_plan.area(turned) == rooms_plan.area(there) == rooms_plan.area(room)
    assert (
        rooms_plan.perimeter(turned)
        == rooms_plan.perimeter(there)
        == math.fsum(rooms_plan.free_sides(room, [], wall_m).values())
    )


ROOM: Rect = (0.0, 0.0, 4.0, 3.0)
CALLS: list[tuple[str, Callable[[Rect], Any]]] = [
    ("room_m", rooms_plan.area),
    ("room_m", rooms_plan.perimeter),
    ("first_m", lambda rect: rooms_plan.overlap_area(rect, ROOM)),
    ("second_m", lambda rect: rooms_plan.overlap_area(ROOM, rect)),
    ("first_m", lambda rect: rooms_plan.shared_side(rect, ROOM, 0.1)),
    ("second_m", lambda rect: rooms_plan.shared_side(ROOM, rect, 0.1)),
    ("room_m", lambda rect: rooms_plan.free_sides(rect, [ROOM], 0.1)),
    ("others_m, number 2", lambda rect: rooms_plan.free_sides(ROOM, [ROOM, rect], 0.1)),
    ("room_m", lambda rect: rooms_plan.uncovered_area(rect, [ROOM])),
    ("others_m, number 1", lambda rect: rooms_plan.uncovered_area(ROOM, [rect])),
    ("rooms_m, bath", lambda rect: rooms_plan.overlapping_rooms({"hall": ROOM, "bath": rect})),
]


@pytest.mark.parametrize(("name", "call"), CALLS)
@pytest.mark.parametrize(
    ("rect", "message"),
    [
        ((4.0, 0.0, 4.0, 3.0), "east, is 4: it must be over the west, 4"),
        ((0.0, 3.0, 4.0, 2.5), "north, is 2.5: it must be over the south, 3"),
        ((math.nan, 0.0, 4.0, 3.0), "west, is nan: it must be a finite number"),
        ((0.0, -math.inf, 4.0, 3.0), "south, is -inf: it must be a finite number"),
        ((0.0, 0.0, math.inf, 3.0), "east, is inf: it must be a finite number"),
        ((0.0, 0.0, 4.0, math.nan), "north, is nan: it must be a finite number"),
    ],
)
def test_what_is_no_rectangle_is_refused(name: str, call: Callable[[Rect], Any], rect: Rect, message: str) -> None:
    """The message names the rectangle, its edge and the value."""
    with pytest.raises(OutOfRange) as refusal:
        call(rect)
    assert str(refusal.value) == f"{name}, {message}"


def test_a_rectangle_has_four_edges() -> None:
    """Fewer or more numbers are none."""
    with pytest.raises(OutOfRange, match="it must be four numbers: west, south, east, north"):
        rooms_plan.area((0.0, 0.0, 4.0))  # type: ignore[arg-type]


@pytest.mark.parametrize("wall_m", [-0.1, math.nan, math.inf])
@pytest.mark.parametrize(
    "call",
    [
        lambda wall_m: rooms_plan.shared_side(ROOM, moved(ROOM, 5.0, 0.0), wall_m),
        lambda wall_m: rooms_plan.free_sides(ROOM, [], wall_m),
    ],
)
def test_a_partition_has_a_thickness(call: Callable[[float], Any], wall_m: float) -> None:
    """Not under 0, and finite."""
    with pytest.raises(OutOfRange, match=r"^wall_m is "):
        call(wall_m)
