"""What lines of a plan must not say together: values the wrong way round, chains of links that come back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from checker.calc.rooms_plan import Rect, area, overlap_area, overlapping_rooms
from checker.glossary import typed_fields
from checker.plan.elements import Element, Section, Status, states_of
from checker.plan.fields import LinkTo
from checker.plan.trades.rooms import Room
from checker.problems import Problem
from checker.source import Document

Steps = tuple[str | int, ...]
MOST_OVERLAP = 0.02
"""Share of the smaller of two rooms that they may have in common: rounded drawings, no code limit."""


@dataclass(frozen=True, slots=True)
class Found:
    """An element of the plan: where it stands, its status, what holds it."""

    element: Element
    path: Steps
    status: Status | None
    holder: tuple[str, str] | None
    drawn: bool = False
    """Whether no line states it: it follows from rooms that are drawn as rectangles."""


def check_pairs(elements: Mapping[tuple[str, str], Found], document: Document) -> Iterator[Problem]:
    """Pairs of values the wrong way round, and lines that exclude each other."""
    for found in elements.values():
        says: list[tuple[Section, Steps]] = [(found.element, found.path)]
        if (was := getattr(found.element, "was", None)) is not None:
            says.append((was, (*found.path, "was")))
        for model, path in says:
            name = f"{found.element.kind} “{found.element.id}”" if found.element.id else f"the {found.element.kind}"
            yield from _lists(model, name, path, document)
            for lesser, greater in model.ordered():
                low, high = getattr(model, lesser), getattr(model, greater)
                if low is not None and high is not None and low > high * (1 + 1e-9):
                    place = document.place((*path, lesser))
                    line = document.place((*path, greater)).line
                    yield Problem(
                        place,
                        f"`{lesser}` of {name} is more than its `{greater}` on line {line}",
                        "look whether the two are the wrong way round",
                    )
            for one, other in model.EXCLUDE:
                if getattr(model, one) is not None and getattr(model, other) is not None:
                    right = "a framed layer has `fill`, an unbroken one `material`" if one == "material" else "keep one"
                    place = document.key_place((*path, other))
                    yield Problem(place, f"{name} says both `{one}` and `{other}`", right)


def _lists(model: Section, name: str, path: Steps, document: Document) -> Iterator[Problem]:
    """Lists that have not as many items as they must."""
    for field in model.MONTHLY:
        values = getattr(model, field)
        if values is not None and len(values) != 12:
            what = f"`{field}` of {name} has {len(values)} values"
            yield Problem(document.place((*path, field)), what, "give one for each month, from January: 12")
    for one, other in model.SAME_LENGTH:
        first, second = getattr(model, one), getattr(model, other)
        if first is not None and second is not None and len(first) != len(second):
            what = f"`{one}` of {name} has {len(first)} values, `{other}` {len(second)}"
            yield Problem(document.place((*path, one)), what, "the two belong together item by item")


def check_drawn_rooms(elements: Mapping[tuple[str, str], Found], document: Document) -> Iterator[Problem]:
    """Rooms of one level that are drawn over each other, in a state in which both stand."""
    drawn: dict[str, dict[str, tuple[Found, Rect]]] = {}
    for found in elements.values():
        room = found.element
        if isinstance(room, Room) and room.level is not None and (rect := room.rectangle()) is not None:
            drawn.setdefault(room.level, {})[room.id] = (found, rect)
    for rooms in drawn.values():
        for one, other in overlapping_rooms({id_: rect for id_, (_, rect) in rooms.items()}):
            (first, rect), (second, over) = rooms[one], rooms[other]
            never_together = not set(states_of(first.status)) & set(states_of(second.status))
            if never_together or overlap_area(rect, over) <= MOST_OVERLAP * min(area(rect), area(over)):
                continue
            place = document.place((*second.path, "from_west"))
            line = document.place((*first.path, "from_west")).line
            what = f"room “{other}” is drawn over room “{one}” on line {line}, on the same level"
            yield Problem(place, what, "look at where each begins and how large it is")


def check_loops(elements: Mapping[tuple[str, str], Found], document: Document) -> Iterator[Problem]:
    """Chains of links that must end and do not, as ducts that feed each other."""
    following: dict[tuple[str, str], dict[str, list[str]]] = {}
    for (kind, id_), found in elements.items():
        for name, of in typed_fields(type(found.element)):
            if (link := of.mark(LinkTo)) is not None and not link.loops:
                following.setdefault((kind, name), {})[id_] = _named(found, name)
    for (kind, name), links in following.items():
        for id_ in links:
            circle = _circle(id_, links)
            found = elements[kind, id_]
            if circle:
                place = document.place((*found.path, name))
                shown = " → ".join(circle)
                yield Problem(place, f"`{name}` runs in a circle: {shown}", f"every chain of `{name}` must end")


def _named(found: Found, link: str) -> list[str]:
    value = getattr(found.element, link)
    return [] if value is None else [value] if isinstance(value, str) else list(value)


def _circle(start: str, following: Mapping[str, list[str]]) -> list[str]:
    """The shortest way from an element back to it; each circle is told once, at its first in the alphabet."""
    ways: list[list[str]] = [[start]]
    seen: set[str] = set()
    for way in ways:
        for each in following.get(way[-1], ()):
            if each == start:
                return [*way, start]
            if each > start and each not in seen:
                seen.add(each)
                ways.append([*way, each])
    return []
