"""Random rules, tables and plans about an invented house, as a rule file and a derivation would give them.

Rules are data; `Ruleset.program` reads them with the reader of the engine. Every random choice comes from the `Random`
that is passed in, so a seed gives the same case again.
"""

from __future__ import annotations

import itertools
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from checker.engine.conditions import ConditionReader, Node, TableShape
from checker.engine.program import Column, Logic, Program, TableRows
from checker.facts import Fact, Facts, Item, Known, Members, Ref, State, Value
from checker.glossary import Attribute, Glossary, Kind, Link
from checker.problems import Place, Problem
from checker.units import Dimension, parse
from tests.engine.oracle import JUDGED_BY_DEFAULT

MATERIALS = ("brick", "timber", "steel")
STATUSES = ("existing", "altered", "new", "removed", "replaced", "moved", "reused")
STAYS = ("existing", "altered", "replaced", "removed")
"""Statuses of what was there before the work."""
CONCLUSIONS = (("wall", "sturdy"), ("window", "escape"), ("room", "sleeping"), ("room", "risky"))
WHOLE_NUMBERS = range(5)
TIMES = (0.5, 1, 2)


def _quantities(*names: str) -> list[Attribute]:
    return [Attribute(name, f"its {name}", "quantity", dimension=Dimension.LENGTH) for name in names]


def _kind(name: str, attributes: list[Attribute], links: list[Link]) -> Kind:
    was = Link("was", name, True, "the same element before the work")
    return Kind(
        name,
        f"a {name}",
        True,
        {attribute.name: attribute for attribute in attributes},
        {link.name: link for link in (*links, was)},
    )


def _glossary() -> Glossary:
    made_of = Attribute("made_of", "what it is made of", "choice", choices=MATERIALS)
    room = _kind(
        "room",
        [*_quantities("height", "width", "depth"), made_of, Attribute("heated", "whether it is heated", "flag")],
        [
            Link("windows", "window", False, "its windows"),
            Link("walls", "wall", False, "its walls"),
            Link("party_wall", "wall", True, "the wall it shares"),
        ],
    )
    window = _kind(
        "window",
        [*_quantities("height", "width", "sill"), made_of, Attribute("opens", "whether it opens", "flag")],
        [
            Link("wall", "wall", True, "the wall it stands in"),
            Link("room", "room", True, "the room it lights"),
            Link("doubles", "window", False, "windows of its size"),
        ],
    )
    wall = _kind(
        "wall",
        [*_quantities("height", "thickness"), made_of, Attribute("bears", "whether it bears", "flag")],
        [Link("windows", "window", False, "its windows")],
    )
    return Glossary({kind.name: kind for kind in (room, window, wall)})


GLOSSARY = _glossary()
NO_END = 1e30


@dataclass(frozen=True, slots=True)
class Ruleset:
    """Rules and tables as a rule file has them."""

    rules: list[dict[str, Any]]
    tables: dict[str, dict[str, Any]]

    def program(self) -> Program:
        """Read the conditions and put the rules in order for the engine."""
        glossary = GLOSSARY.with_conclusions(
            {(rule["for"], rule["concludes"]): "a conclusion" for rule in self.rules if "concludes" in rule}
        )
        problems: list[Problem] = []
        shapes = {name: _shape(table) for name, table in self.tables.items()}
        reader = ConditionReader(glossary, shapes, lambda path: Place("rules.yaml", 1, 1), problems)
        asking = replace(reader, stated_allowed=True)
        logics = tuple(_logic(rule, reader, asking) for rule in self.rules)
        assert not problems, problems
        return Program(glossary, logics, {name: _rows(name, table) for name, table in self.tables.items()})


def _logic(rule: dict[str, Any], reader: ConditionReader, asking: ConditionReader) -> Logic:
    kind, state = rule["for"], rule.get("state", "after")
    if "asks" in rule:
        require = asking.read(rule["asks"], kind, ("asks",))
    else:
        require = reader.read(rule.get("require"), kind, ("require",))
    excuses: list[Node] = [
        reader.read(each["when"], kind, ("except", index, "when")) for index, each in enumerate(rule.get("except", ()))
    ]
    return Logic(
        rule["id"],
        kind,
        tuple(f"{state}-{status}" for status in rule.get("judges", JUDGED_BY_DEFAULT)),
        reader.read(rule.get("when"), kind, ("when",)),
        require,
        tuple(excuses),
        rule.get("concludes", ""),
        "asks" in rule,
    )


def _shape(table: dict[str, Any]) -> TableShape:
    return TableShape(
        {
            name: (key["form"], Dimension.LENGTH if key["form"] == "interval" else None)
            for name, key in table["keys"].items()
        },
        dict.fromkeys(table["values"], Dimension.LENGTH),
    )


def _rows(name: str, table: dict[str, Any]) -> TableRows:
    def metres(written: str | None, otherwise: float) -> float:
        return otherwise if written is None else parse(written, Dimension.LENGTH)

    def cell(written: Any) -> Any:
        if not isinstance(written, list):
            return written
        return metres(written[0], -NO_END), metres(written[1], NO_END)

    keys = tuple(Column(key, each["form"], each["exhaustive"]) for key, each in table["keys"].items())
    rows = tuple(
        (
            tuple(cell(row[key.name]) for key in keys),
            tuple(metres(row[value], 0.0) for value in table["values"]),
        )
        for row in table["rows"]
    )
    return TableRows(name, keys, tuple(table["values"]), rows)


class RuleMaker:
    """Makes random rules; conclusions that exist so far may be read."""

    def __init__(self, random: Random) -> None:
        self.random = random
        self.concluded: dict[str, list[str]] = {kind: [] for kind in GLOSSARY.kinds}

    def ruleset(self, judging: int = 8) -> Ruleset:
        """Make a ruleset: tables, conclusions, and a number of judging rules, in random order."""
        random, rules = self.random, []
        for kind, name in CONCLUSIONS:
            for _ in range(random.randint(1, 2)):
                rules.append({"for": kind, "when": self.condition(kind, 2), "concludes": name})
            self.concluded[kind].append(name)
        rules += [self._judging_rule() for _ in range(judging)]
        random.shuffle(rules)
        for index, rule in enumerate(rules):
            rule["id"] = f"us/made-up.rule-{index}"
        return Ruleset(rules, {"spans": self._table(2), "sizes": self._table(3)})

    def _judging_rule(self) -> dict[str, Any]:
        random = self.random
        kind = random.choice(["room", "room", "window", "wall"])
        rule: dict[str, Any] = {"for": kind}
        if random.random() < 0.4:
            rule["when"] = self.condition(kind, 2)
        if random.random() < 0.15:
            rule["asks"] = self.condition(kind, 2, stated=0.6)
        else:
            rule["require"] = self.condition(kind, 3)
            if random.random() < 0.3:
                rule["except"] = [{"when": self.condition(kind, 1)} for _ in range(random.randint(1, 3))]
        place = random.random()
        if place < 0.2:
            rule |= {"state": "before", "judges": random.sample(STAYS, random.randint(1, 4))}
        elif place < 0.5:
            rule["judges"] = random.sample(STATUSES, random.randint(3, 6))
        return rule

    def condition(self, kind: str, depth: int, stated: float = 0.0) -> dict[str, Any]:
        """Make a condition on an element of a kind; stated: how likely a comparison asks whether it is stated."""
        random, toss = self.random, self.random.random()
        if depth == 0 or toss < 0.3:
            merged: dict[str, Any] = {}
            for _ in range(1 if random.random() < 0.8 else 2):
                merged |= self._comparison(kind, stated)
            return merged
        if toss < 0.6:
            word = random.choice(["all", "any", "any", "none"])
            count = random.randint(1, 3)
            return {word: [self.condition(kind, depth - 1, stated) for _ in range(count)]}
        links = GLOSSARY.kinds[kind].links.values()
        if toss < 0.7:
            link = random.choice([link for link in links if link.to_one])
            return {link.name: self.condition(link.target, depth - 1, stated)}
        link = random.choice([link for link in links if not link.to_one])
        over: dict[str, Any] = {"of": link.name}
        if random.random() < 0.5:
            over["where"] = self.condition(link.target, depth - 1)
        if random.random() < 0.8:
            over["that"] = self.condition(link.target, depth - 1, stated)
        if random.random() < 0.4:
            return {"count": over | {random.choice(["at_least", "at_most", "is"]): random.randint(0, 3)}}
        return {random.choice(["some", "every", "no"]): over}

    def _comparison(self, kind: str, stated: float) -> dict[str, Any]:
        random, of = self.random, GLOSSARY.kinds[kind]
        flags = self._flags(kind)
        name = random.choice([*of.attributes, *self.concluded[kind]])
        if random.random() < stated:
            return {name: {"stated": True}}
        if name in flags:
            if random.random() < 0.15:
                return {name: {"is": self._other(kind, "flag")}}
            return {name: {"is": random.random() < 0.6}}
        if of.attributes[name].form == "choice":
            if random.random() < 0.15:
                return {name: {"is": self._other(kind, "choice")}}
            wanted = random.sample(MATERIALS, random.randint(1, 2))
            return {name: {"is": wanted if len(wanted) > 1 or random.random() < 0.5 else wanted[0]}}
        return {name: self._about_a_quantity(kind)}

    def _about_a_quantity(self, kind: str) -> dict[str, Any]:
        random, toss = self.random, self.random.random()
        word = random.choice(["at_least", "at_most", "over", "under", "is"])
        if toss < 0.25:
            return {word: self._other(kind, "quantity")}
        if toss < 0.5:
            return {word: self._look_up(kind)}
        if toss < 0.65:
            low, high = sorted((random.choice(WHOLE_NUMBERS), random.choice(WHOLE_NUMBERS)))
            return {"between": [self._written(low), self._written(high)]}
        if toss < 0.7:
            return {"at_least": self._written(1), "at_most": self._written(3)}
        return {word: self._written(random.choice(WHOLE_NUMBERS))}

    def _written(self, inches: int) -> str:
        return self.random.choice([f"{inches} in", f"{inches * 254 / 10} mm"])

    def _flags(self, kind: str) -> list[str]:
        own = [each.name for each in GLOSSARY.kinds[kind].attributes.values() if each.form == "flag"]
        return [*own, *self.concluded[kind]]

    def _named(self, kind: str, form: str) -> list[str]:
        if form == "flag":
            return self._flags(kind)
        return [each.name for each in GLOSSARY.kinds[kind].attributes.values() if each.form == form]

    def _other(self, kind: str, form: str) -> dict[str, Any]:
        """Another attribute of the same form: of the element itself or across a to-one link."""
        random = self.random
        other: dict[str, Any] = {}
        if random.random() < 0.6:
            link = random.choice([link for link in GLOSSARY.kinds[kind].links.values() if link.to_one])
            kind, other["via"] = link.target, link.name
        other["attribute"] = random.choice(self._named(kind, form))
        if form == "quantity" and random.random() < 0.7:
            other["times"] = random.choice(TIMES)
        return other

    def _look_up(self, kind: str) -> dict[str, Any]:
        random = self.random
        lengths = self._named(kind, "quantity")
        by = {"material": "made_of", "span": random.choice(lengths)}
        table = random.choice(["spans", "sizes"])
        if table == "sizes":
            by |= {"third": random.choice(self._flags(kind))}
        return {"table": table, "by": by, "column": random.choice(["limit", "other"])}

    def _table(self, columns: int) -> dict[str, Any]:
        """A table whose exhaustive columns have a row for every value, whatever the other columns say."""
        random = self.random
        cells: dict[str, list[Any]] = {"material": list(MATERIALS), "span": self._intervals()}
        if columns == 3:
            cells["third"] = [True, False]
        keys: dict[str, dict[str, Any]] = {}
        for name, column in cells.items():
            exhaustive = random.random() < 0.5
            keys[name] = {"form": "interval" if name == "span" else "exact", "exhaustive": exhaustive}
            if not exhaustive:
                cells[name] = random.sample(column, random.randint(1, len(column) - 1))
        partial = [name for name, key in keys.items() if not key["exhaustive"]]
        groups = list(itertools.product(*(cells[name] for name in partial)))
        kept = random.sample(groups, random.randint(max(1, len(groups) - 1), len(groups)))
        rows = [
            dict(zip(partial, group, strict=True)) | dict(zip(whole, rest, strict=True))
            for whole in [[name for name in keys if name not in partial]]
            for group in kept
            for rest in itertools.product(*(cells[name] for name in whole))
        ]
        for row in rows:
            row |= {name: self._written(random.choice(WHOLE_NUMBERS)) for name in ("limit", "other")}
        return {"keys": keys, "values": ["limit", "other"], "rows": rows}

    def _intervals(self) -> list[Any]:
        low, high = sorted(self.random.sample(WHOLE_NUMBERS, 2))
        first, second = self._written(low), self._written(high)
        return [[None, first], [first, second], [second, None]]


class PlanMaker:
    """Makes random fact sets, and others that differ from them.

    unknown: how likely a value is not known; open_: how likely a link may have more members than are listed.
    """

    def __init__(self, random: Random, unknown: float = 0.2, open_: float = 0.15) -> None:
        self.random = random
        self.unknown = unknown
        self.open = open_

    def plan(self) -> Facts:
        """A house of a few elements, some before the work, some after, some both."""
        random = self.random
        elements: dict[Ref, Known] = {}
        for kind, most in (("room", 2), ("window", 3), ("wall", 2)):
            for number in range(random.randint(1, most)):
                status = random.choices(STATUSES, weights=(3, 4, 4, 1, 2, 1, 1))[0]
                states: list[State] = ["before"] if status in STAYS else []
                states += ["after"] if status != "removed" else []
                for state in states:
                    ref = Ref(kind, f"{kind}-{number}", state)
                    elements[ref] = Known(ref, status)
        for known in elements.values():
            for name in GLOSSARY.kinds[known.ref.kind].attributes:
                if random.random() >= self.unknown:
                    known.values[name] = self.value(known.ref.kind, name)
            for link in GLOSSARY.kinds[known.ref.kind].links.values():
                if random.random() < 0.9:
                    known.links[link.name] = self.members(known.ref, link, list(elements))
        order = list(elements.values())
        random.shuffle(order)
        return Facts({known.ref: known for known in order})

    def value(self, kind: str, name: str) -> Fact:
        """A value: a length now and then carries the noise of arithmetic."""
        attribute, random = GLOSSARY.kinds[kind].attributes[name], self.random
        value: Value
        if attribute.form == "flag":
            value = random.random() < 0.5
        elif attribute.form == "choice":
            value = random.choice(MATERIALS)
        else:
            value = random.choice(WHOLE_NUMBERS) * 0.0254 * random.choice([1, 1, 1 + 1e-12, 1 - 1e-12])
        return Fact(value, "stated")

    def members(self, ref: Ref, link: Link, refs: Collection[Ref]) -> Members:
        """Members of a link, closed or open."""
        random = self.random
        if link.name == "was":
            was = Ref(ref.kind, ref.id, "before")
            found = (was,) if ref.state == "after" and was in refs else ()
            return Members(found, random.random() >= self.open)
        there = [each for each in refs if each.kind == link.target and each.state == ref.state]
        most = min(len(there), 1) if link.to_one else len(there)
        chosen = random.sample(there, random.randint(0, most))
        if link.to_one and not chosen and there and random.random() < 0.7:
            chosen = [random.choice(there)]
        return Members(tuple(chosen), random.random() >= self.open)

    def changed(self, facts: Facts) -> Facts:
        """A fact set in which values became known, unknown or others, links too, and an element may be gone."""
        random = self.random
        elements = {ref: _copy(known) for ref, known in facts.elements.items()}
        for known in random.sample(list(elements.values()), min(3, len(elements))):
            kind = GLOSSARY.kinds[known.ref.kind]
            name = random.choice(list(kind.attributes))
            if random.random() < 0.3:
                known.values.pop(name, None)
            else:
                known.values[name] = self.value(kind.name, name)
            link = random.choice(list(kind.links.values()))
            if random.random() < 0.2:
                known.links.pop(link.name, None)
            else:
                known.links[link.name] = self.members(known.ref, link, list(elements))
        if random.random() < 0.15:
            gone = random.choice(list(elements))
            elements = without(elements, gone)
        return Facts(elements)

    def completed(self, facts: Facts, but: Collection[Item] = ()) -> Facts:
        """A fact set in which everything unknown became known, except some items."""
        elements = {ref: _copy(known) for ref, known in facts.elements.items()}
        for ref, known in elements.items():
            kind = GLOSSARY.kinds[ref.kind]
            for name in kind.attributes:
                if name not in known.values and Item(ref, name) not in but:
                    known.values[name] = self.value(kind.name, name)
            for link in kind.links.values():
                members = known.links.get(link.name, Members((), False))
                if not members.closed and Item(ref, link.name) not in but:
                    more = () if link.to_one and members.refs else self.members(ref, link, list(elements)).refs
                    refs = tuple(dict.fromkeys((*members.refs, *more)))
                    known.links[link.name] = Members(refs, True)
        return Facts(elements)


def without(elements: Mapping[Ref, Known], gone: Ref) -> dict[Ref, Known]:
    """The elements without one of them, which no link leads to any more."""
    left = {ref: _copy(known) for ref, known in elements.items() if ref != gone}
    for known in left.values():
        for name, members in known.links.items():
            known.links[name] = replace(members, refs=tuple(ref for ref in members.refs if ref != gone))
    return left


def bare(facts: Facts, kept: Collection[Item]) -> Facts:
    """A fact set in which only some values and links are known."""
    return Facts(
        {
            ref: replace(
                known,
                values={name: fact for name, fact in known.values.items() if Item(ref, name) in kept},
                links={name: members for name, members in known.links.items() if Item(ref, name) in kept},
            )
            for ref, known in facts.elements.items()
        }
    )


def _copy(known: Known) -> Known:
    return replace(known, values=dict(known.values), links=dict(known.links))
