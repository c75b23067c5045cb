"""The rules in force for one permit: what adopting a ruleset on a date comes to, ready to compile, cache and print."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any, Literal

from checker.engine.conditions import Node, from_data, to_data
from checker.engine.program import Column, Logic, Program, TableRows
from checker.facts import Facts, Value
from checker.glossary import glossary
from checker.problems import Place
from checker.ruleset.catalogue import PROPERTIES, AdoptedEntry
from checker.ruleset.timber import design_from
from checker.units import show


@dataclass(frozen=True, slots=True)
class Citation:
    """Where a requirement comes from."""

    document: str
    edition: str
    section: str
    basis: str
    known: str

    def __str__(self) -> str:
        """As people cite it; says so if it is from memory."""
        if self.basis == "common practice" and self.section.startswith("common practice"):
            return self.section
        named = " ".join(part for part in (self.document, self.edition) if part)
        text = f"{named}, {self.section}" if named else self.section
        return f"{text} (from memory)" if self.known == "from memory" else text


@dataclass(frozen=True, slots=True)
class AdoptedExcuse:
    """A named exception in force."""

    id: str
    cite: str
    known: str
    when: Node


@dataclass(frozen=True, slots=True)
class Applied:
    """A local amendment that was applied: what it changed, from what to what, by which law."""

    ruleset: str
    target: str
    what: str
    base: str
    now: str
    cite: str
    reason: str
    place: Place


@dataclass(frozen=True, slots=True)
class AdoptedRule:
    """A rule in force."""

    id: str
    title: str
    trade: str
    kind: str
    judges: tuple[str, ...]
    state: str
    when: Node
    require: Node
    excuses: tuple[AdoptedExcuse, ...]
    concludes: str
    asks: bool
    severity: str
    says: str
    remedy: str
    caution: str
    decides: str
    sheet: str
    due: str
    cite: Citation
    amended_by: tuple[Applied, ...]
    note: str
    place: Place

    def logic(self) -> Logic:
        """What the engine needs of it."""
        standings = tuple(f"{self.state}-{status}" for status in (*self.judges, "only"))
        whens = tuple(excuse.when for excuse in self.excuses)
        return Logic(self.id, self.kind, standings, self.when, self.require, whens, self.concludes, self.asks)


@dataclass(frozen=True, slots=True)
class AdoptedTable:
    """A table in force."""

    id: str
    title: str
    rows: TableRows
    cite: Citation
    dimensions: Mapping[str, str | None]
    """Dimension of every column; None for choices and flags."""


@dataclass(frozen=True, slots=True)
class AdoptedAssumption:
    """An assumption in force."""

    name: str
    title: str
    dimension: str
    value: Value
    cite: Citation
    why: str
    amended_by: tuple[Applied, ...]


@dataclass(frozen=True, slots=True)
class AdoptedSet:
    """A set and the edition in which it is in force."""

    name: str
    title: str
    document: str
    edition: str
    since: str
    newest_taken: bool


@dataclass(frozen=True, slots=True)
class Suspended:
    """A rule that a jurisdiction does not enforce."""

    rule: str
    title: str
    severity: str
    cite: str
    reason: str


@dataclass(frozen=True, slots=True)
class Adopted:
    """Everything in force."""

    name: str
    title: str
    date: str
    sets: tuple[AdoptedSet, ...]
    rules: tuple[AdoptedRule, ...]
    tables: Mapping[str, AdoptedTable]
    assumptions: Mapping[str, AdoptedAssumption]
    amendments: tuple[Applied, ...]
    suspended: tuple[Suspended, ...]
    cautions: Mapping[str, str] = field(default_factory=dict)
    conclusions: Mapping[tuple[str, str], str] = field(default_factory=dict)
    catalogue: Mapping[str, Mapping[str, AdoptedEntry]] = field(default_factory=dict)
    """Materials and archetypes by each of their names."""

    def assumed(self) -> dict[str, Value]:
        """The assumed values by name [SI]."""
        return {name: assumption.value for name, assumption in self.assumptions.items()}

    def program(self) -> Program:
        """The program that the engine compiles."""
        words = glossary().with_conclusions(self.conclusions)
        return Program(
            words,
            tuple(rule.logic() for rule in self.rules),
            {id_: table.rows for id_, table in self.tables.items()},
        )

    def to_data(self) -> dict[str, Any]:
        """As plain data, for the cache."""
        data: dict[str, Any] = {
            "name": self.name,
            "title": self.title,
            "date": self.date,
            "sets": [asdict(each) for each in self.sets],
            "tables": [asdict(table) for table in self.tables.values()],
            "assumptions": [asdict(each) for each in self.assumptions.values()],
            "amendments": [asdict(each) for each in self.amendments],
            "suspended": [asdict(each) for each in self.suspended],
            "cautions": dict(self.cautions),
            "conclusions": [[kind, name, meaning] for (kind, name), meaning in self.conclusions.items()],
            "catalogue": self._catalogue_data(),
            "rules": [],
        }
        for rule in self.rules:
            row = {name: getattr(rule, name) for name in AdoptedRule.__dataclass_fields__}
            row["when"], row["require"] = to_data(rule.when), to_data(rule.require)
            row["excuses"] = [[each.id, each.cite, each.known, to_data(each.when)] for each in rule.excuses]
            row["cite"], row["place"] = asdict(rule.cite), asdict(rule.place)
            row["amended_by"] = [asdict(each) for each in rule.amended_by]
            data["rules"].append(row)
        return data

    def _catalogue_data(self) -> list[Any]:
        rows: dict[int, tuple[AdoptedEntry, list[str]]] = {}
        for entries in self.catalogue.values():
            for name, entry in entries.items():
                rows.setdefault(id(entry), (entry, []))[1].append(name)
        return [[asdict(entry), names] for entry, names in rows.values()]


def adopted_from(data: Mapping[str, Any]) -> Adopted:
    """Everything in force, from plain data."""
    return Adopted(
        data["name"],
        data["title"],
        data["date"],
        tuple(AdoptedSet(**each) for each in data["sets"]),
        tuple(_rule(each) for each in data["rules"]),
        {each["id"]: _table(each) for each in data["tables"]},
        {each["name"]: _assumption(each) for each in data["assumptions"]},
        tuple(_applied(each) for each in data["amendments"]),
        tuple(Suspended(**each) for each in data["suspended"]),
        data["cautions"],
        {(kind, name): meaning for kind, name, meaning in data["conclusions"]},
        _catalogue(data["catalogue"]),
    )


def _catalogue(rows: list[Any]) -> dict[str, dict[str, AdoptedEntry]]:
    found: dict[str, dict[str, AdoptedEntry]] = {}
    for data, names in rows:
        entry = AdoptedEntry(**{**data, "design": design_from(data["catalogue"], data["design"])})
        found.setdefault(entry.catalogue, {}).update(dict.fromkeys(names, entry))
    return found


def _rule(data: Mapping[str, Any]) -> AdoptedRule:
    return AdoptedRule(
        **{
            **data,
            "judges": tuple(data["judges"]),
            "when": from_data(data["when"]),
            "require": from_data(data["require"]),
            "excuses": tuple(
                AdoptedExcuse(id_, cite, known, from_data(when)) for id_, cite, known, when in data["excuses"]
            ),
            "cite": Citation(**data["cite"]),
            "amended_by": tuple(_applied(each) for each in data["amended_by"]),
            "place": Place(**data["place"]),
        }
    )


def _applied(data: Mapping[str, Any]) -> Applied:
    return Applied(**{**data, "place": Place(**data["place"])})


def _table(data: Mapping[str, Any]) -> AdoptedTable:
    rows = data["rows"]
    return AdoptedTable(
        data["id"],
        data["title"],
        TableRows(
            rows["id"],
            tuple(Column(**each) for each in rows["keys"]),
            tuple(rows["values"]),
            tuple(
                (tuple(tuple(cell) if isinstance(cell, list) else cell for cell in cells), tuple(values))
                for cells, values in rows["rows"]
            ),
        ),
        Citation(**data["cite"]),
        data["dimensions"],
    )


def _assumption(data: Mapping[str, Any]) -> AdoptedAssumption:
    return AdoptedAssumption(
        **{
            **data,
            "cite": Citation(**data["cite"]),
            "amended_by": tuple(_applied(each) for each in data["amended_by"]),
        }
    )


def archetypes_of(adopted: Adopted, facts: Facts, system: Literal["us", "metric"]) -> dict[str, AdoptedAssumption]:
    """The archetypes that values of a plan rest on, as the assumptions that they are, by name."""
    found: dict[str, AdoptedAssumption] = {}
    used = {
        each.entry
        for known in facts.elements.values()
        for fact in known.values.values()
        if (calculation := fact.calculation or fact.computed)
        for each in calculation.inputs
        if each.entry.startswith("archetype ")
    }
    entries = {entry.known_as: entry for entry in adopted.catalogue.get("archetype", {}).values()}
    for name in sorted(used):
        entry = entries[name]
        values = []
        for property_, dimension in PROPERTIES.items():
            low, likely, high = (entry.properties.get(property_ + end) for end in ("_low", "", "_high"))
            if isinstance(low, float) and isinstance(likely, float) and isinstance(high, float):
                first, middle, last = (show(each, dimension, system) for each in (low, likely, high))
                values.append(f"{middle}, from {first} to {last}")
        cite = Citation("", "", entry.cite, "", entry.known)
        title = f"{entry.title} ({entry.known_as})"
        found[name] = AdoptedAssumption(name, title, "", "; ".join(values), cite, entry.note, ())
    return found
