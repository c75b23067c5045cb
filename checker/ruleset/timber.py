"""Lumber and the design standard of wood members: cited values that a set carries as data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from pydantic import Field, TypeAdapter

from checker.calc.framing.timber import (
    Combination,
    DepthValues,
    LoadKind,
    Lumber,
    Method,
    SizeFactor,
    TimberStandard,
)
from checker.problems import Problem
from checker.ruleset.head import Entry, Part, Words
from checker.units import Dimension, QuantityError, parse

if TYPE_CHECKING:
    from checker.ruleset.folders import Topic

Steps = tuple[str | int, ...]
STANDARD = "timber standard"
STRESSES = ("bending", "tension", "shear", "bearing", "compression", "stiffness", "stiffness_low")
_NEEDED = ("shear", "bearing", "stiffness", "stiffness_low")
_PUBLISHED_BY_DEPTH = ("bending", "tension", "compression")


class DepthEntry(Part):
    """Reference values of members up to a depth."""

    up_to_depth: str
    bending: str
    tension: str
    compression: str


class LumberEntry(Entry):
    """A species and grade with its reference design values, or an engineered product with its maker's."""

    sizes: str = ""
    """Class of size factors in the design standard; left out where the values need none."""
    bending: str | None = None
    tension: str | None = None
    shear: str
    bearing: str
    """Compression across the grain."""
    compression: str | None = None
    """Compression along the grain."""
    stiffness: str
    """Modulus of elasticity, mean."""
    stiffness_low: str
    """Modulus of elasticity for stability: Emin, or its 5th percentile."""
    by_depth: list[DepthEntry] = Field(default_factory=list)
    """Instead of bending, tension and compression, where they are published by depth; from the least depth."""
    specific_gravity: float | None = None
    edition: str
    """Standard and edition that published the values."""


class CombinationEntry(Part):
    """A combination of loads."""

    name: Words
    factors: dict[LoadKind, float]
    duration: float = 1.0


class SizeEntry(Part):
    """Size factors of members up to a depth."""

    up_to_depth: str
    bending: float
    tension: float = 1.0
    compression: float = 1.0
    shear: float = 1.0
    from_thickness: str | None = None


class StandardEntry(Entry):
    """A published design method with its factors; a set has one."""

    title: Words
    method: Method
    strength: list[CombinationEntry]
    live_deflection: list[CombinationEntry]
    total_deflection: list[CombinationEntry]
    size_factors: dict[str, list[SizeEntry]]
    repetitive: float
    repetitive_spacing: str
    repetitive_count: int
    built_up: float = 1.0
    built_up_plies: int = 3
    wet: dict[str, float] = Field(default_factory=dict)
    resistance: dict[str, float] = Field(default_factory=dict)
    creep: float = 1.5
    wet_exempt: dict[str, str] = Field(default_factory=dict)
    """By property, the reference value times size factor up to which no wet factor is taken."""


class _Reading:
    """Reads quantities of an entry and keeps what is wrong with them."""

    def __init__(self, topic: Topic, at: Steps, problems: list[Problem]) -> None:
        self.topic, self.at, self.problems = topic, at, problems
        self.clean = True

    def quantity(self, text: str, dimension: Dimension, *where: str | int) -> float:
        try:
            return parse(text, dimension)
        except QuantityError as error:
            self.wrong(f"`{where[-1]}`: {error.what}", error.right, *where)
            return 0.0

    def wrong(self, what: str, right: str, *where: str | int) -> None:
        self.problems.append(Problem(self.topic.document.place((*self.at, *where)), what, right))
        self.clean = False


def lumber_of(entry: LumberEntry, topic: Topic, at: Steps, problems: list[Problem]) -> Lumber | None:
    """Read the values of a lumber entry; None, with the problems put down, if they cannot be read."""
    reading = _Reading(topic, at, problems)
    values: dict[str, float] = {}
    for name in STRESSES:
        if (text := getattr(entry, name)) is not None:
            values[f"{name}_pa"] = reading.quantity(text, Dimension.STRESS, name)
    depths = [
        DepthValues(
            reading.quantity(each.up_to_depth, Dimension.LENGTH, "by_depth", index, "up_to_depth"),
            *(
                reading.quantity(getattr(each, name), Dimension.STRESS, "by_depth", index, name)
                for name in _PUBLISHED_BY_DEPTH
            ),
        )
        for index, each in enumerate(entry.by_depth)
    ]
    if (entry.bending is None) == (not depths):
        reading.wrong(f"“{entry.id}” has no bending value, or two kinds of it", "`bending:` or `by_depth:`", "id")
    if [each.up_to_depth_m for each in depths] != sorted({each.up_to_depth_m for each in depths}):
        reading.wrong("the depths do not rise", "from the least depth to the greatest", "by_depth")
    if not reading.clean:
        return None
    if depths:
        values["bending_pa"] = depths[0].bending_pa
    return Lumber(
        entry.id,
        **values,
        sizes=entry.sizes,
        by_depth=tuple(depths),
        specific_gravity=entry.specific_gravity,
        standard=entry.edition,
    )


def standard_of(entry: StandardEntry, topic: Topic, at: Steps, problems: list[Problem]) -> TimberStandard | None:
    """Read a design standard; None, with the problems put down, if it cannot be read."""
    reading = _Reading(topic, at, problems)
    sizes: dict[str, tuple[SizeFactor, ...]] = {}
    for name, rows in entry.size_factors.items():
        sizes[name] = tuple(
            SizeFactor(
                reading.quantity(row.up_to_depth, Dimension.LENGTH, "size_factors", name, index, "up_to_depth"),
                row.bending,
                row.tension,
                row.compression,
                row.shear,
                reading.quantity(row.from_thickness, Dimension.LENGTH, "size_factors", name, index, "from_thickness")
                if row.from_thickness
                else 0.0,
            )
            for index, row in enumerate(rows)
        )
    spacing_m = reading.quantity(entry.repetitive_spacing, Dimension.LENGTH, "repetitive_spacing")
    exempt = {
        name: reading.quantity(text, Dimension.STRESS, "wet_exempt", name) for name, text in entry.wet_exempt.items()
    }
    if not reading.clean:
        return None
    return TimberStandard(
        entry.title,
        entry.method,
        _combinations(entry.strength),
        _combinations(entry.live_deflection),
        _combinations(entry.total_deflection),
        sizes,
        entry.repetitive,
        spacing_m,
        entry.repetitive_count,
        entry.built_up,
        entry.built_up_plies,
        entry.wet,
        entry.resistance,
        entry.creep,
        exempt,
    )


def _combinations(entries: Iterable[CombinationEntry]) -> tuple[Combination, ...]:
    return tuple(Combination(each.name, dict(each.factors), each.duration) for each in entries)


@cache
def _adapter(kind: type) -> TypeAdapter[Any]:
    return TypeAdapter(kind)


def design_from(catalogue: str, data: Mapping[str, Any] | None) -> Lumber | TimberStandard | None:
    """Lumber or a standard from the plain data that the cache keeps."""
    if data is None:
        return None
    design: Lumber | TimberStandard = _adapter(TimberStandard if catalogue == STANDARD else Lumber).validate_python(
        data
    )
    return design
