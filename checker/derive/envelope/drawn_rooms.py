"""Surfaces of rooms that are drawn as rectangles: outside walls, ceilings, floors, and walls to unheated rooms.

A heated room under a level ceiling that lists no surfaces of its own gets those that its rectangle, its level and its
neighbours give. What cannot be told (a room above that is not drawn, a sloped ceiling) leaves the room's surfaces open,
and the report asks for them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Literal, cast

from checker.calc.rooms_plan import Rect, free_sides, overlap_area, shared_side, uncovered_area
from checker.plan.consistency import Found
from checker.plan.elements import CHANGED, Status, states_of
from checker.plan.house import Level, LevelSays
from checker.plan.reader import ReadPlan
from checker.plan.trades.assemblies import Surface, SurfaceSays
from checker.plan.trades.openings import Door
from checker.plan.trades.rooms import Room, RoomSays

THICKEST_WALL_M = 0.3
"""Widest gap between two drawn rooms that counts as a wall between them; how plans are drawn, no code limit."""
LEAST_M2 = 0.05
"""Areas below this are what wall thicknesses leave over between storeys."""
_AS_OUTDOORS = frozenset({"", "attic", "crawl space"})
"""Uses of a level without rooms that is as cold as the outdoors, "" if it does not stand; of others, rooms are told."""

_Faces = Literal["outdoors", "ground", "room"]
_Part = tuple[_Faces, str, str | None]  # faces, assembly, neighbour
_Sizes = dict[tuple[str, str], tuple[_Part, dict[str, float]]]


def with_drawn_surfaces(read: ReadPlan) -> ReadPlan:
    """Give the plan with the surfaces that drawn rooms have; as it is if no room is drawn and none is listed."""
    rooms = {id_: found for (kind, id_), found in read.elements.items() if kind == "room"}
    listed = {cast(Surface, found.element).room for (kind, _), found in read.elements.items() if kind == "surface"}
    drawn = {id_ for id_, found in rooms.items() if id_ not in listed and cast(Room, found.element).rectangle()}
    if not drawn and not listed:
        return read
    open_rooms: set[str] = set()
    before, after = (_Storeys(read, rooms, state) for state in ("before", "after"))
    elements = dict(read.elements)
    for id_ in rooms:
        if id_ in listed:
            continue
        if id_ not in drawn:
            open_rooms.add(id_)
            continue
        sizes = [storeys.surfaces(id_) for storeys in (before, after)]
        if any(each is None for each in sizes):
            open_rooms.add(id_)
        _put(elements, rooms[id_], sizes[0] or {}, sizes[1] or {})
    none_listed = read.plan.envelope.surfaces is None
    return replace(
        read,
        elements=elements,
        complete_kinds=read.complete_kinds | ({"surface"} if none_listed else set()),
        open_links=read.open_links | {("room", id_, "surfaces") for id_ in open_rooms},
    )


def _to_middle_of_walls(rect: Rect) -> Rect:
    """A room with half of the walls around it, so that no strip is left between rooms of a storey."""
    half = THICKEST_WALL_M / 2
    return rect[0] - half, rect[1] - half, rect[2] + half, rect[3] + half


class _Storeys:
    """The rooms of a house in one state."""

    def __init__(self, read: ReadPlan, rooms: Mapping[str, Found], state: str) -> None:
        self.read = read
        self.rooms = {id_: found for id_, found in rooms.items() if state in states_of(found.status)}
        self.state = state
        self.above: dict[str, str] = {}
        for (kind, id_), found in read.elements.items():
            if kind == "level" and (below := cast(Level, found.element).below) is not None:
                self.above[below] = id_

    def says(self, id_: str) -> RoomSays:
        """What is said of a room in this state."""
        room = cast(Room, self.rooms[id_].element)
        return room.was or RoomSays() if self._was(self.rooms[id_]) else room

    def _was(self, found: Found) -> bool:
        """Whether something is, in this state, what it says in `was`."""
        return self.state == "before" and found.status in CHANGED

    def surfaces(self, id_: str) -> _Sizes | None:
        """The surfaces of a drawn room with their sizes; None if not all of them can be told."""
        if id_ not in self.rooms:
            return {}
        says, found = self.says(id_), self.rooms[id_]
        if says.heated is False:
            return {}
        room = cast(Room, found.element)
        rect, level_id = room.rectangle(), room.level
        level = self._level(level_id)
        if rect is None or level is None or level_id is None or says.ceiling == "sloped":
            return None
        height = says.ceiling_height or level.ceiling_height
        others = self._on(level_id, but=id_)
        if height is None or others is None:
            return None
        sizes: _Sizes = {}
        free = free_sides(rect, list(others.values()), THICKEST_WALL_M)
        if (length := sum(free.values())) > 0:
            sizes["walls", ""] = (
                ("outdoors", room.walls_as or level.walls or "", None),
                {"length": length, "height": height},
            )
        for other, other_rect in others.items():
            shared = shared_side(rect, other_rect, THICKEST_WALL_M)
            if shared and self.says(other).heated is False:
                part: _Part = ("room", room.inner_walls_as or "", other)
                sizes["wall", other] = (part, {"length": shared[1], "height": height})
        for name, beyond, assembly in (
            ("ceiling", self.above.get(level_id), room.ceiling_as or level.ceiling),
            ("floor", level.below, room.floor_as or level.floor),
        ):
            whole = self._horizontal(name, rect, beyond, assembly or "", sizes)
            if not whole:
                return None
        return sizes

    def _horizontal(self, name: str, rect: Rect, beyond: str | None, assembly: str, sizes: _Sizes) -> bool:
        """Put down a ceiling or floor toward the level beyond; whether all of it can be told."""
        faces: _Faces = "outdoors"
        if name == "floor" and beyond is None:
            faces = "ground" if self._part(assembly) == "slab" else "outdoors"
        rects: list[Rect] = []
        if beyond is not None:
            there = {id_: room for id_, room in self.rooms.items() if cast(Room, room.element).level == beyond}
            if not there and self._use(beyond) not in _AS_OUTDOORS:
                return False
            drawn = self._on(beyond)
            if drawn is None and len(there) == 1:  # one room that is not drawn lies over or under all of it
                drawn = {next(iter(there)): rect}
            if drawn is None:
                return False
            for id_, other in drawn.items():
                says = self.says(id_)
                if says.heated is None:
                    return False
                if not says.heated and says.use == "attic":
                    continue  # as cold as the outdoors: its insulation lies in the floor
                area = overlap_area(rect, other)
                rects.append(_to_middle_of_walls(other))
                if not says.heated and area > LEAST_M2:
                    sizes[name, id_] = (("room", assembly, id_), {"area": area})
        rest = uncovered_area(rect, rects)
        if rest > LEAST_M2:
            sizes[name, ""] = ((faces, assembly, None), {"area": rest})
        return True

    def _on(self, level: str, but: str = "") -> dict[str, Rect] | None:
        """The rooms of a level with their rectangles; None if one of them is not drawn."""
        found: dict[str, Rect] = {}
        for id_, room in self.rooms.items():
            if id_ == but or cast(Room, room.element).level != level:
                continue
            rect = cast(Room, room.element).rectangle()
            if rect is None:
                return None
            found[id_] = rect
        return found

    def _level(self, id_: str | None) -> Level | None:
        found = self.read.elements.get(("level", id_ or ""))
        return cast(Level, found.element) if found else None

    def _use(self, id_: str) -> str | None:
        """What a level is in this state, "" if it does not stand."""
        found = self.read.elements["level", id_]
        if self.state not in states_of(found.status):
            return ""
        level = cast(Level, found.element)
        return (level.was or LevelSays()).use if self._was(found) else level.use

    def _part(self, assembly: str) -> str | None:
        found = self.read.elements.get(("assembly", assembly))
        return getattr(found.element, "part", None) if found else None


def _put(elements: dict[tuple[str, str], Found], room: Found, before: _Sizes, after: _Sizes) -> None:
    """Add the surfaces of a room, each with what it was before the work."""
    openings = cast(Room, room.element)
    names = Counter(name for name, _ in {*before, *after})
    for key in dict.fromkeys([*before, *after]):
        name, other = key
        id_ = f"{openings.id}-{name}" + (f"-{other}" if other and names[name] > 1 else "")
        part, sizes = after.get(key) or before[key]
        status: Status = "existing" if key in before and key in after else "new" if key in after else "removed"
        was = None
        if status == "existing" and before[key] != after[key]:
            earlier: dict[str, Any] = {"faces": before[key][0][0], **before[key][1]}
            status, was = "altered", SurfaceSays.model_construct(**earlier)
        faces, assembly, neighbour = part
        if ("surface", id_) in elements:
            continue
        outdoors = faces == "outdoors"
        lines: dict[str, Any] = dict(
            id=id_,
            room=openings.id,
            faces=faces,
            assembly=assembly or None,
            neighbour=neighbour,
            windows=openings.windows if name == "walls" else [],
            doors=_outside_doors(elements, openings) if name == "walls" else [],
            skylights=openings.skylights if name == "ceiling" and outdoors else [],
            was=was,
            status=status,
            **sizes,
        )
        surface = Surface.model_construct(**lines)
        elements["surface", id_] = Found(surface, room.path, status, None, drawn=True)


def _outside_doors(elements: Mapping[tuple[str, str], Found], room: Room) -> list[str] | None:
    """The room's doors to the outdoors; None if its doors are not listed."""
    if room.doors is None:
        return None
    doors = {id_: cast(Door, elements["door", id_].element) for id_ in room.doors if ("door", id_) in elements}
    return [id_ for id_, door in doors.items() if door.leads_to in ("outdoors", "garage")]
