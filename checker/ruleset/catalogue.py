"""Materials and archetypes: cited values that a plan asks for by name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from checker.calc.framing.timber import Lumber, TimberStandard
from checker.facts import Value
from checker.glossary import typed_fields
from checker.plan.fields import Named
from checker.problems import Place, Problem, nearest
from checker.ruleset.head import Entry, Part, Words
from checker.ruleset.timber import STANDARD, STRESSES, LumberEntry, StandardEntry, lumber_of, standard_of
from checker.units import Dimension, QuantityError, parse

if TYPE_CHECKING:
    from checker.plan.reader import ReadPlan
    from checker.ruleset.adopted import Adopted
    from checker.ruleset.folders import Topic

Sort = Literal[
    "wood",
    "wood panel",
    "masonry",
    "concrete",
    "plaster",
    "gypsum board",
    "batt insulation",
    "loose insulation",
    "insulation board",
    "rigid foam",
    "closed-cell spray foam",
    "open-cell spray foam",
    "membrane",
    "coating",
    "siding",
    "roofing",
    "flooring",
    "metal",
    "air space",
    "vented air space",
]

_PROPERTIES = {
    "conductivity": Dimension.CONDUCTIVITY,
    "resistance": Dimension.THERMAL_RESISTANCE,
    "thickness": Dimension.LENGTH,
    "permeability": Dimension.PERMEABILITY,
    "permeance": Dimension.PERMEANCE,
    "density": Dimension.DENSITY,
    "weight": Dimension.PRESSURE,
}
_SIZES = {"width": Dimension.LENGTH, "depth": Dimension.LENGTH}
_GIVES = {
    "resistance": Dimension.THERMAL_RESISTANCE,
    "u_factor": Dimension.U_FACTOR,
    "solar_gain": Dimension.FRACTION,
    "air_changes_50": Dimension.AIR_CHANGES,
}
PROPERTIES: Mapping[str, Dimension] = {
    **_PROPERTIES,
    **_SIZES,
    **dict.fromkeys(STRESSES, Dimension.STRESS),
    **_GIVES,
    **{f"{name}_{end}": dimension for name, dimension in _GIVES.items() for end in ("low", "high")},
}
"""The dimension of every property of an entry."""
_GIVEN_OF = {
    "assembly": ("resistance",),
    "window": ("u_factor", "solar_gain"),
    "door": ("u_factor",),
    "skylight": ("u_factor",),
    "house": ("air_changes_50",),
}


class Material(Entry):
    """A building material; its values scale with the thickness, or are those of a product."""

    sort: Sort
    conductivity: str | None = None
    resistance: str | None = None
    """Instead of a conductivity; with `thickness`, of that thickness only."""
    thickness: str | None = None
    permeability: str | None = None
    permeance: str | None = None
    """Instead of a permeability."""
    density: str | None = None
    weight: str | None = None
    """Load of a square metre, instead of a density, for a product of a given thickness."""


class LumberSize(Entry):
    """A nominal size of lumber."""

    width: str
    """Width of one ply, dressed and dry."""
    depth: str


class Spread(Part):
    """A value that nobody has measured here: the likely one, the least and the most."""

    likely: str | int | float
    low: str | int | float
    high: str | int | float


class Archetype(Entry):
    """What a contractor can see of a thing whose inside he cannot, with the values that go with it."""

    of: Literal["assembly", "window", "door", "skylight", "house"]
    title: Words
    gives: dict[Literal["resistance", "u_factor", "solar_gain", "air_changes_50"], Spread]


_SECTIONS = {
    "materials": "material",
    "archetypes": "archetype",
    "lumber": "lumber",
    "lumber_sizes": "lumber size",
    "timber_standard": STANDARD,
}


@dataclass(frozen=True, slots=True)
class AdoptedEntry:
    """An entry in force: its properties [SI], by whom."""

    name: str
    catalogue: str
    of: str
    title: str
    properties: Mapping[str, Value]
    cite: str
    known: str
    note: str = ""
    design: Lumber | TimberStandard | None = None
    """Of lumber its reference values, of a design standard its factors."""

    @property
    def known_as(self) -> str:
        """What reasons and assumptions call it."""
        return f"{self.catalogue} “{self.name}”"

    @property
    def source(self) -> str:
        """Its citation as people read it."""
        return f"{self.cite} (from memory)" if self.known == "from memory" else self.cite


Catalogue = Mapping[str, Mapping[str, AdoptedEntry]]


def take_in(topic: Topic, into: dict[str, dict[str, AdoptedEntry]], problems: list[Problem]) -> None:
    """Put a topic's materials, archetypes and lumber into the catalogue, under every name that they have."""
    for section, catalogue in _SECTIONS.items():
        entries: list[Material | Archetype | LumberSize | LumberEntry | StandardEntry] = getattr(topic.model, section)
        for index, entry in enumerate(entries):
            at = (section, index)
            adopted = _adopted(entry, topic, at, problems)
            if adopted is None:
                continue
            known = into.setdefault(catalogue, {})
            if catalogue == STANDARD and known:
                what = f"the design standard “{entry.id}” is a second one beside “{next(iter(known))}”"
                place = topic.document.place((*at, "id"))
                problems.append(Problem(place, what, "adopt one set with a `timber_standard`"))
                continue
            for name in (entry.id, *entry.also):
                if name in known:
                    place = topic.document.place((*at, "id"))
                    problems.append(
                        Problem(place, f"two {section} go by the name “{name}”", "give each a name of its own")
                    )
                known.setdefault(name, adopted)


def _adopted(
    entry: Material | Archetype | LumberSize | LumberEntry | StandardEntry,
    topic: Topic,
    at: tuple[str | int, ...],
    problems: list[Problem],
) -> AdoptedEntry | None:
    if isinstance(entry, LumberEntry):
        return _designed("lumber", entry, entry.edition, lumber_of(entry, topic, at, problems))
    if isinstance(entry, StandardEntry):
        return _designed(STANDARD, entry, entry.title, standard_of(entry, topic, at, problems))
    properties: dict[str, Value] = {}
    for name, dimension, text, where in _values(entry):
        try:
            properties[name] = parse(text, dimension)
        except QuantityError as error:
            problems.append(Problem(topic.document.place((*at, *where)), f"`{where[-1]}`: {error.what}", error.right))
            return None
    if isinstance(entry, Material):
        properties["sort"] = entry.sort
        for one, other in (("conductivity", "resistance"), ("permeability", "permeance"), ("density", "weight")):
            if one in properties and other in properties:
                place = topic.document.place((*at, other))
                problems.append(Problem(place, f"“{entry.id}” has both {one} and {other}", "keep one of the two"))
        return AdoptedEntry(
            entry.id, "material", entry.sort, entry.id, properties, entry.cite, entry.known, entry.note or ""
        )
    if isinstance(entry, LumberSize):
        return AdoptedEntry(
            entry.id, "lumber size", "", entry.id, properties, entry.cite, entry.known, entry.note or ""
        )
    wrong = [name for name in entry.gives if name not in _GIVEN_OF[entry.of]]
    if wrong or not entry.gives:
        place = topic.document.place((*at, "gives"))
        right = f"gives: {', '.join(_GIVEN_OF[entry.of])}"
        problems.append(Problem(place, f"an archetype of {_one(entry.of)} gives other values", right))
    for name in entry.gives:
        low, likely, high = (properties.get(name + end) for end in ("_low", "", "_high"))
        if not low <= likely <= high:  # type: ignore[operator]
            place = topic.document.place((*at, "gives", name))
            problems.append(Problem(place, "the likely value lies outside its low and high", "low ≤ likely ≤ high"))
    return AdoptedEntry(
        entry.id, "archetype", entry.of, entry.title, properties, entry.cite, entry.known, entry.note or ""
    )


def _designed(
    catalogue: str, entry: LumberEntry | StandardEntry, title: str, design: Lumber | TimberStandard | None
) -> AdoptedEntry | None:
    if design is None:
        return None
    properties: dict[str, Value] = {}
    if isinstance(design, Lumber):
        # Where bending, tension and compression are published by depth, no one value stands for them.
        by_depth = ("bending", "tension", "compression") if design.by_depth else ()
        stated = {name: getattr(design, f"{name}_pa") for name in STRESSES if name not in by_depth}
        properties = {name: value for name, value in stated.items() if value is not None}
    return AdoptedEntry(entry.id, catalogue, "", title, properties, entry.cite, entry.known, entry.note or "", design)


def _one(kind: str) -> str:
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"


def _values(entry: Material | Archetype | LumberSize) -> Iterator[tuple[str, Dimension, Any, tuple[str, ...]]]:
    if isinstance(entry, Material | LumberSize):
        for name, dimension in (_PROPERTIES if isinstance(entry, Material) else _SIZES).items():
            if (text := getattr(entry, name)) is not None:
                yield name, dimension, text, (name,)
        return
    for given, spread in entry.gives.items():
        for end in ("likely", "low", "high"):
            property_ = given if end == "likely" else f"{given}_{end}"
            yield property_, _GIVES[given], getattr(spread, end), ("gives", given, end)


def unknown_names(read: ReadPlan, adopted: Adopted) -> Iterator[Problem]:
    """What a plan asks for by a name that the adopted sets do not have, or that belongs to another kind of thing."""
    for found in read.elements.values():
        models = [(found.element, found.path)]
        if (was := getattr(found.element, "was", None)) is not None:
            models.append((was, (*found.path, "was")))
        for model, path in models:
            for name, of in typed_fields(type(model)):
                mark, value = of.mark(Named), getattr(model, name)
                if mark is None or value is None:
                    continue
                kind = found.element.kind
                yield from _name_problem(value, mark.catalogue, kind, read.document.place((*path, name)), adopted)


def _name_problem(value: str, catalogue: str, kind: str, place: Place, adopted: Adopted) -> Iterator[Problem]:
    entries = adopted.catalogue.get(catalogue, {})
    fitting = sorted(name for name, each in entries.items() if catalogue != "archetype" or each.of == kind)
    if value.lower() in fitting:
        return
    plural = catalogue if catalogue == "lumber" else f"{catalogue}s"
    if not fitting:
        what = f"the ruleset has no {plural} for {_one(kind)}, so it does not know “{value}”"
        yield Problem(place, what, f"adopt a set with {plural}")
        return
    words = set(value.lower().replace(",", " ").split())
    alike = [name for name in fitting if words & set(name.replace(",", " ").split())][:6]
    right = nearest(value.lower(), fitting) or (f"alike: {'; '.join(alike)}" if alike else "")
    listed = f"`dryfit rules materials {adopted.name}` lists {len({id(e) for e in entries.values()})}"
    what = f"the ruleset has no {catalogue} “{value}”"
    if value.lower() in entries:
        what = f"“{value}” is an archetype of {_one(entries[value.lower()].of)}, not of {_one(kind)}"
    yield Problem(place, what, f"{right}; {listed}" if right else listed)
