"""What the engine runs: the logic of rules and tables, with every condition numbered."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from checker.engine.conditions import Against, LookUp, Node
from checker.glossary import Glossary

Judgement = Literal["meets", "fails", "unsure", "excused", "na"]


class CircleOfConclusions(ValueError):
    """Conclusions that hang on each other in a circle."""

    def __init__(self, circle: tuple[tuple[str, str], ...]) -> None:
        self.circle = circle
        super().__init__(" → ".join(f"{kind}.{name}" for kind, name in circle))


@dataclass(frozen=True, slots=True)
class Logic:
    """The logic of one rule: what it is for, when it applies, what it requires, what excuses, what it concludes."""

    id: str
    kind: str
    standings: tuple[str, ...]
    when: Node
    require: Node
    excuses: tuple[Node, ...] = ()
    concludes: str = ""
    asks: bool = False


@dataclass(frozen=True, slots=True)
class Column:
    """A key column of a table."""

    name: str
    form: Literal["exact", "interval"]
    exhaustive: bool


@dataclass(frozen=True, slots=True)
class TableRows:
    """A table: rows of key cells (a choice, a number, or a low and a high end) and of values [SI]."""

    id: str
    keys: tuple[Column, ...]
    values: tuple[str, ...]
    rows: tuple[tuple[tuple[str | float | bool | tuple[float, float], ...], tuple[float, ...]], ...]


@dataclass(slots=True)
class Program:
    """Rules and tables ready to compile.

    numbers: of every condition, by identity; nodes: by number.
    """

    glossary: Glossary
    rules: tuple[Logic, ...]
    tables: Mapping[str, TableRows]
    numbers: dict[int, int] = field(default_factory=dict)
    nodes: list[Node] = field(default_factory=list)
    concluding: dict[tuple[str, str], list[int]] = field(default_factory=dict)
    used_attributes: dict[str, list[str]] = field(default_factory=dict)
    used_links: dict[str, list[str]] = field(default_factory=dict)
    given: frozenset[tuple[str, str]] = frozenset()
    _levels: dict[tuple[str, str], int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Number the conditions and find what they use."""
        attributes: dict[str, dict[str, None]] = {kind: {} for kind in self.glossary.kinds}
        links: dict[str, dict[str, None]] = {kind: {} for kind in self.glossary.kinds}
        for index, rule in enumerate(self.rules):
            if rule.concludes:
                self.concluding.setdefault((rule.kind, rule.concludes), []).append(index)
        for rule in self.rules:
            for node in self.conditions(rule):
                for below in node.walk():
                    self.numbers[id(below)] = len(self.nodes)
                    self.nodes.append(below)
                    for name in below.attributes():
                        attributes[below.kind][name] = None
                    if below.link:
                        links[below.kind][below.link] = None
                    if isinstance(below.argument, Against) and below.argument.via:
                        links[below.kind][below.argument.via] = None
                        attributes[below.argument.kind][below.argument.attribute] = None
        self.used_attributes = {
            kind: [name for name in names if not self.is_conclusion(kind, name)] for kind, names in attributes.items()
        }
        self.used_links = {kind: list(names) for kind, names in links.items()}
        for key in self.concluding:
            self.level(key)

    @staticmethod
    def conditions(rule: Logic) -> Iterable[Node]:
        """Every top condition of a rule."""
        return (rule.when, rule.require, *rule.excuses)

    def number(self, node: Node) -> int:
        """The number of a condition."""
        return self.numbers[id(node)]

    def is_conclusion(self, kind: str, name: str) -> bool:
        """Whether an attribute is concluded by rules (or given as if it were, in an example)."""
        return (kind, name) in self.concluding or (kind, name) in self.given

    def level(self, key: tuple[str, str], seen: tuple[tuple[str, str], ...] = ()) -> int:
        """How many conclusions, counts and look-ups lie under a conclusion; raises CircleOfConclusions."""
        if key not in self.concluding:
            return 0
        if key in seen:
            raise CircleOfConclusions((*seen[seen.index(key) :], key))
        if key not in self._levels:
            seen = (*seen, key)
            self._levels[key] = 1 + max(self.node_level(self.rules[index].when, seen) for index in self.concluding[key])
        return self._levels[key]

    def node_level(self, node: Node, seen: tuple[tuple[str, str], ...] = ()) -> int:
        """How many conclusions, counts and look-ups lie under a condition."""
        read = [self.level((node.kind, name), seen) for name in node.attributes()]
        if isinstance(node.argument, Against) and node.argument.via:
            read.append(self.level((node.argument.kind, node.argument.attribute), seen))
        own = max(read, default=0) + isinstance(node.argument, LookUp)
        return max([own, *(self.node_level(kid, seen) for kid in node.kids)]) + (node.op == "count")

    @property
    def uses_before(self) -> bool:
        """Whether any condition or rule reads the state before the work."""
        return any("was" in links for links in self.used_links.values()) or any(
            standing.startswith("before") for rule in self.rules for standing in rule.standings
        )


def symbols_of(glossary: Glossary) -> dict[str, str]:
    """A generated CLIPS symbol for every choice of the glossary; no text of a plan or ruleset enters CLIPS."""
    choices = sorted(
        {choice for kind in glossary.kinds.values() for each in kind.attributes.values() for choice in each.choices}
    )
    return {choice: f"s{index}" for index, choice in enumerate(choices)}
