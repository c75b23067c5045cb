"""The words of findings: values as the trade reads them, sentences with placeholders filled, limits and margins."""

from __future__ import annotations

import string
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from checker.derive.registry import DESIGN
from checker.engine.conditions import Against, LookUp, Node
from checker.facts import Calculation, Fact, Facts, Input, Item, Ref, Value
from checker.glossary import Attribute, Glossary
from checker.problems import visible
from checker.ruleset.adopted import AdoptedTable
from checker.ruleset.catalogue import PROPERTIES
from checker.units import Dimension, show

System = Literal["us", "metric"]
_SINGLE = ("permit", "site", "house")


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit with the value held against it, both [SI]."""

    item: Item
    dimension: Dimension
    value: float | None
    limit: float
    ends: tuple[float, float] | None = None
    """Of a range, both ends; `limit` is the nearer one."""

    def words(self, system: System) -> str:
        """The limit as the trade reads it; a range with both ends."""
        if self.ends is None:
            return show(self.limit, self.dimension, system, apart_from=self.value)
        low, high = (show(end, self.dimension, system, apart_from=self.value) for end in self.ends)
        return f"{low} to {high}"


def label(name: str) -> str:
    """An attribute's or link's name in words."""
    return name.replace("_", " ")


def element_name(ref: Ref) -> str:
    """An element as people speak of it: kind and id."""
    kind = ref.kind.replace("-", " ")
    named = f"the {kind}" if ref.kind in _SINGLE else f"{kind} {visible(ref.id)}"
    return f"{named} before the work" if ref.state == "before" else named


def shown(value: Value, attribute: Attribute | None, system: System, apart_from: float | None = None) -> str:
    """A value as the trade reads it; fine enough to tell it apart from a limit."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if attribute is None or attribute.dimension is None:
        return str(value)
    if isinstance(value, tuple):
        return ", ".join(show(each, attribute.dimension, system) for each in value)
    return show(value, attribute.dimension, system, apart_from=apart_from)


def limit_of(
    node: Node, ref: Ref, facts: Facts, glossary: Glossary, tables: Mapping[str, AdoptedTable]
) -> Limit | None:
    """The limit of a numeric condition for one element; None if it hangs on something unknown."""
    dimension = glossary.kinds[node.kind].attributes[node.attribute].dimension
    if dimension is None:
        return None
    item = Item(ref, node.attribute)
    fact = facts.value(item)
    value = float(fact.value) if fact and isinstance(fact.value, float | int) else None
    argument = node.argument
    limit: float | None = None
    if isinstance(argument, float):
        limit = argument
    elif isinstance(argument, tuple) and not isinstance(argument[0], str):
        low, high = float(argument[0]), float(argument[1])
        limit = high if value is not None and value > (low + high) / 2 else low
        return Limit(item, dimension, value, limit, (low, high))
    elif isinstance(argument, Against):
        limit = _against(argument, ref, facts)
    elif isinstance(argument, LookUp):
        limit = _looked_up(argument, ref, facts, tables)
    return None if limit is None else Limit(item, dimension, value, limit)


def _against(argument: Against, ref: Ref, facts: Facts) -> float | None:
    at = ref
    if argument.via:
        members = facts.elements[ref].links.get(argument.via)
        if not members or not members.refs:
            return None
        at = members.refs[0]
    fact = facts.value(Item(at, argument.attribute))
    return float(fact.value) * argument.times if fact and isinstance(fact.value, float | int) else None


def _looked_up(argument: LookUp, ref: Ref, facts: Facts, tables: Mapping[str, AdoptedTable]) -> float | None:
    rows = tables[argument.table].rows
    attributes = dict(argument.keys)
    keys: list[Value] = []
    for column in rows.keys:
        fact = facts.value(Item(ref, attributes[column.name]))
        if fact is None:
            return None
        keys.append(fact.value)
    for cells, values in rows.rows:
        if all(_fits(cell, key) for cell, key in zip(cells, keys, strict=True)):
            return values[rows.values.index(argument.column)]
    return None


def _fits(cell: object, key: Value) -> bool:
    if isinstance(cell, tuple) and isinstance(key, float | int):
        noise = 1e-9 * max(abs(key), 1e-6)
        return bool(cell[0] <= key + noise and key + noise < cell[1])
    return cell == key


def margin_words(limit: Limit, system: System) -> str:
    """How far a value lies over or under its limit, as a dimension; "" if it is unknown or exactly there."""
    if (
        limit.value is None
        or limit.dimension is Dimension.YEAR
        or abs(limit.value - limit.limit) <= 1e-9 * max(abs(limit.limit), 1e-6)
    ):
        return ""
    by = show(abs(limit.value - limit.limit), _difference(limit.dimension), system, apart_from=0.0)
    if limit.dimension is Dimension.FRACTION:
        by = by.replace(" %", " percentage points")
    return f"{by} {'over' if limit.value > limit.limit else 'under'}"


def _difference(dimension: Dimension) -> Dimension:
    return Dimension.TEMPERATURE_DIFFERENCE if dimension is Dimension.TEMPERATURE else dimension


def _blank(dimension: Dimension, system: System) -> str:
    """A blank to fill in, with the unit that the plan's system would take."""
    usual = {Dimension.TIME: "h", Dimension.SLOPE: "in 12", Dimension.ANGLE: "°"}
    if dimension in usual:
        return f"… {usual[dimension]}"
    one, _, unit = show(1.0, dimension, system).partition(" ")
    if not one[:1].isdigit():  # R-20, RSI 3.5: the unit comes first
        return f"{one.rstrip('0123456789.')}…" if "-" in one else f"{one} …"
    return f"… {unit}".rstrip()


def entry_value(each: Input, system: System) -> str:
    """A value of a material or archetype as the trade reads it."""
    dimension = PROPERTIES.get(each.entry_property)
    return (
        show(float(each.value), dimension, system) if dimension and isinstance(each.value, float) else str(each.value)
    )


_FEW = 3
"""Most values of one attribute that a reason spells out one by one."""
_MANY = 8
"""More inputs than this are not all spelled out."""


def plural_of(kind: str) -> str:
    """Several of a kind, as people say it."""
    words = kind.replace("-", " ")
    if words.endswith("y") and words[-2:-1] not in "aeiou":
        return f"{words[:-1]}ies"
    return words if words.endswith("s") else f"{words}s"


def _of_many(each: Input) -> tuple[str, str, str]:
    """What inputs over the members of a link have in common."""
    return (each.symbol, each.item.name, each.item.ref.kind) if each.item else (each.symbol, "", "")


class Sentences:
    """Fills the sentences of rules with the values of a plan."""

    def __init__(self, facts: Facts, glossary: Glossary, system: System) -> None:
        self.facts = facts
        self.glossary = glossary
        self.system = system

    def fill(self, text: str, ref: Ref, limit: Limit | None) -> str:
        """A sentence with its {placeholders} filled; what is not known says so."""
        parts: list[str] = []
        for literal, name, _, _ in string.Formatter().parse(text):
            parts.append(literal)
            if name is not None:
                parts.append(self._placeholder(name, ref, limit))
        return "".join(parts)

    def _placeholder(self, name: str, ref: Ref, limit: Limit | None) -> str:
        if name == "element":
            return element_name(ref)
        if name == "limit":
            if limit is None:
                return "not known"
            return limit.words(self.system)
        if name == "margin":
            return (margin_words(limit, self.system) if limit else "") or "nothing to spare"
        *links, attribute = name.split(".")
        at: Ref | None = ref
        for link in links:
            members = self.facts.elements[at].links.get(link) if at else None
            at = members.refs[0] if members and members.refs else None
        if at is None:
            return f"not known (needs {label(links[-1])})"
        fact = self.facts.value(Item(at, attribute))
        if fact is None:
            known = self.facts.elements.get(at)
            settled = known is not None and known.missing.get(attribute) == ()
            return "none" if settled else f"not known (needs {label(attribute)})"
        same = limit is not None and limit.item == Item(at, attribute)
        return self.value(Item(at, attribute), fact.value, limit.limit if limit and same else None)

    def value(self, item: Item, value: Value, apart_from: float | None = None) -> str:
        """A value of an attribute as the trade reads it."""
        attribute = self.glossary.kinds[item.ref.kind].attributes.get(item.name)
        return shown(value, attribute, self.system, apart_from)

    def how(self, fact: Fact | None, subject: Ref) -> tuple[str, str]:
        """Where a value comes from: the origin in one word, and how in a few."""
        if fact is None:
            return "inferred", ""
        if fact.origin == "stated" or fact.calculation is None:
            return "stated", ""
        return "computed", self.formula(fact.calculation, subject)

    def formula(self, calculation: Calculation, subject: Ref) -> str:
        """The inputs of a calculation in words; those of other elements than the subject say whose they are."""
        parts: list[str] = []
        apart: dict[Ref, list[str]] = {}
        alike = Counter(_of_many(each) for each in calculation.inputs)
        of = Counter(each.item.ref for each in calculation.inputs if each.item and each.item.ref != subject)
        long = len(calculation.inputs) > _MANY
        for each in calculation.inputs:
            many = alike[_of_many(each)]
            if each.item is not None and not each.entry and many > _FEW and each.item.name != "status":
                kind = each.item.ref.kind.replace("-", " ")
                parts.append(f"{label(each.item.name)} of {many} {kind}s")
            elif each.entry:
                parts += self._entry_words(each)
            elif each.item is not None and each.item.name != "status":
                # Of many inputs only numbers are spelled out, and of those not what adds nothing.
                if long and (isinstance(each.value, bool | str) or each.value == 0.0):
                    continue
                value, ref = self.value(each.item, each.value), each.item.ref
                if of[ref] > _MANY:
                    apart.setdefault(ref, []).append(f"{label(each.item.name)} {value}")
                    continue
                whose = "" if ref == subject else f" of {element_name(ref)}"
                parts.append(f"{label(each.item.name)}{whose} {value}")
            elif each.assumption:
                parts.append(f"{label(each.assumption)} as assumed")
        parts += [f"and of {element_name(ref)} {', '.join(dict.fromkeys(texts))}" for ref, texts in apart.items()]
        return f"from {', '.join(dict.fromkeys(parts))}" if parts else ""

    def _entry_words(self, each: Input) -> list[str]:
        """An entry of the catalogue among the inputs; the design standard is named once, on its sheet."""
        if each.entry_property == DESIGN:
            return [each.entry]
        value = entry_value(each, self.system)
        return [f"{label(each.entry_property)} {value} of {each.entry}"] if each.entry_property else []

    def ask(self, item: Item) -> tuple[str, str]:
        """What a missing item asks for, and how it would be written in the plan."""
        kind = self.glossary.kinds[item.ref.kind]
        if item.name in kind.attributes:
            attribute = kind.attributes[item.name]
            if attribute.dimension:
                example = _blank(attribute.dimension, self.system)
            elif attribute.form == "flag":
                example = "true or false"
            else:
                example = " | ".join(attribute.choices[:4]) + (" | …" if len(attribute.choices) > 4 else "")
            return attribute.meaning.rstrip("."), f"{item.name}: {example}"
        link = kind.links[item.name]
        if link.on_plan:
            return link.meaning.rstrip("."), f"{item.name}: {'…' if link.to_one else '[…], or [] if there is none'}"
        plural = plural_of(link.target)
        back = f", each with `{link.inverse}:`" if link.inverse and link.inverse != "house" else ""
        return f"all {plural} of {element_name(item.ref)}{back}", f"({plural}: list every one)"
