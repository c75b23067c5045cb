"""Facts: what is known of each element, before and after the work, and where each value comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from checker.problems import Place

State = Literal["before", "after"]
Value = float | bool | str | tuple[float, ...]


class Ref(NamedTuple):
    """An element in one state."""

    kind: str
    id: str
    state: State = "after"


class Item(NamedTuple):
    """Something that is not known: an attribute or a link of an element."""

    ref: Ref
    name: str


@dataclass(frozen=True, slots=True)
class Input:
    """A number that went into a calculation; from an assumption of the ruleset or an entry of its catalogue."""

    symbol: str
    item: Item | None
    value: Value
    assumption: str = ""
    entry: str = ""
    entry_property: str = ""


@dataclass(frozen=True, slots=True)
class Calculation:
    """How a value was computed: the function of `checker.calc`, what went in, what came out."""

    function: str
    inputs: tuple[Input, ...]
    result: Value


@dataclass(frozen=True, slots=True)
class Fact:
    """A known value of an attribute.

    origin: stated (on a plan line) or computed; rests_on: the ruleset assumptions it hangs on;
    computed: for a stated value, what the plan's own numbers give.
    """

    value: Value
    origin: Literal["stated", "computed"]
    place: Place | None = None
    calculation: Calculation | None = None
    rests_on: tuple[str, ...] = ()
    computed: Calculation | None = None


@dataclass(frozen=True, slots=True)
class Members:
    """The elements that a link leads to; closed if nobody is left out."""

    refs: tuple[Ref, ...]
    closed: bool


@dataclass(slots=True)
class Known:
    """Everything known of one element in one state."""

    ref: Ref
    status: str
    name: str = ""
    place: Place | None = None
    values: dict[str, Fact] = field(default_factory=dict)
    links: dict[str, Members] = field(default_factory=dict)
    missing: dict[str, tuple[Item, ...]] = field(default_factory=dict)
    """For each unknown derived attribute, the plan lines that would make it known."""

    @property
    def standing(self) -> str:
        """State and status in one word, as the engine tells elements apart."""
        return f"{self.ref.state}-{self.status}"


@dataclass(frozen=True, slots=True)
class Fault:
    """An attribute that cannot be computed because the plan's numbers make no sense together."""

    item: Item
    symbol: str
    """Of the input that is out of range; of another value, its name in the calculation."""
    what: str
    legal: str
    inputs: tuple[Input, ...]


@dataclass(frozen=True, slots=True)
class Facts:
    """All facts of a plan."""

    elements: Mapping[Ref, Known]
    faults: tuple[Fault, ...] = ()

    def value(self, item: Item) -> Fact | None:
        """Give the fact for an attribute, None if it is not known."""
        known = self.elements.get(item.ref)
        return known.values.get(item.name) if known else None
