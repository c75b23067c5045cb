"""From a plan to facts: both states of every element, their links, what is stated and what follows from it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from functools import cache
from typing import Any, Protocol, cast

from checker.calc.errors import OutOfRange
from checker.derive import derivations
from checker.derive.envelope.drawn_rooms import with_drawn_surfaces
from checker.derive.registry import DESIGN, Derivation, Lacks, Need, Using
from checker.facts import Calculation, Fact, Facts, Fault, Input, Item, Known, Members, Ref, State, Value
from checker.glossary import HOUSE_LINK, WAS, Glossary, element_models, glossary, typed_fields
from checker.plan.consistency import Found
from checker.plan.elements import CHANGED, Element, Says, Section, states_of
from checker.plan.fields import Holds, LinkTo, Named
from checker.plan.reader import ReadPlan
from checker.ruleset.timber import STANDARD
from checker.units import Dimension

Entries = Mapping[str, Mapping[str, "Entry"]]


class Entry(Protocol):
    """A material or an archetype of the ruleset."""

    @property
    def known_as(self) -> str:
        """What reasons and assumptions call it, whichever of its names the plan uses."""

    @property
    def properties(self) -> Mapping[str, Value]:
        """Its values [SI]."""

    @property
    def title(self) -> str:
        """What sheets print for the whole of it."""

    @property
    def design(self) -> object:
        """The whole of it, for lumber and a design standard."""


def facts_of(read: ReadPlan, assumptions: Mapping[str, Value], catalogue: Entries | None = None) -> Facts:
    """Work out every fact of a plan.

    read: the plan; assumptions: the values that the ruleset assumes, by name [SI]; catalogue: its materials and
    archetypes by name. Returns the facts in both states.
    """
    read = with_drawn_surfaces(read)
    elements = _elements(read)
    _link(read, elements)
    worked = Deriver(elements, assumptions, catalogue or {})
    for ref in elements:
        worked.derive_all(ref)
    return Facts(elements, tuple(worked.faults))


def _elements(read: ReadPlan) -> dict[Ref, Known]:
    elements: dict[Ref, Known] = {}
    for (kind, id_), found in read.elements.items():
        status = found.status or ""
        for state in states_of(found.status):
            ref = Ref(kind, id_, state)
            known = Known(ref, status or "only", found.element.name or "", read.place(kind, id_))
            was = getattr(found.element, "was", None)
            if state == "before" and (status in CHANGED or found.element.kind == "house"):
                if status in ("altered", ""):
                    _state(read, known, found, found.element, set(says_of(type(found.element)).model_fields))
                if was is not None:
                    _state(read, known, replace(found, path=(*found.path, "was")), was)
            else:
                _state(read, known, found, found.element)
            if status:
                known.values["status"] = Fact(status, "stated", read.place(kind, id_, "status"))
            elements[ref] = known
    return elements


@cache
def says_of(element: type[Element]) -> type[Says]:
    """The class of what can be said of an element in one state: what `was` says; the rest of its lines hold in both."""
    return next(base for base in element.__mro__ if issubclass(base, Says) and not issubclass(base, Element))


def _state(read: ReadPlan, known: Known, found: Found, says: Section, without: Collection[str] = frozenset()) -> None:
    """Put down the values that plan lines state, or that drawn rooms give."""
    attributes = glossary().kinds[known.ref.kind].attributes
    for name in type(says).model_fields:
        if name in without or name not in attributes or name == "status":
            continue
        value = getattr(says, name)
        if value is None:
            continue
        value = tuple(value) if isinstance(value, list) else value
        if found.drawn:
            drawing = Calculation("checker.calc.rooms_plan.free_sides", (), value)
            known.values[name] = Fact(value, "computed", calculation=drawing)
        else:
            known.values[name] = Fact(value, "stated", read.document.place((*found.path, name)))


def _link(read: ReadPlan, elements: dict[Ref, Known]) -> None:
    words = glossary()
    back: dict[tuple[Ref, str], list[Ref]] = {}
    open_back: set[tuple[str, str, State]] = set()
    states: tuple[State, ...] = ("before", "after")
    for state in states:
        for (kind, id_), found in read.elements.items():
            ref = Ref(kind, id_, state)
            if ref in elements:
                _forward(elements, elements[ref], found, back, open_back)
        for kind, known in ((ref.kind, known) for ref, known in elements.items() if ref.state == state):
            for link in words.kinds[kind].links.values():
                if link.name in known.links or link.on_plan:
                    continue
                key = (link.target, link.inverse)
                if link.name == WAS:
                    before = Ref(kind, known.ref.id, "before")
                    known.links[WAS] = Members((before,) if before in elements and state == "after" else (), True)
                elif link.name in (HOUSE_LINK, "permit", "site") and link.to_one and link.target == link.name:
                    known.links[link.name] = Members((Ref(link.target, "", state),), True)
                elif kind == "house":
                    members = tuple(ref for ref in elements if ref.kind == link.target and ref.state == state)
                    known.links[link.name] = Members(members, link.target in read.complete_kinds)
                else:
                    members = tuple(back.get((known.ref, link.name), ()))
                    listed = (kind, known.ref.id, link.name) not in read.open_links
                    closed = listed and link.target in read.complete_kinds and (*key, state) not in open_back
                    known.links[link.name] = Members(
                        members, closed or ((link.to_one or link.exclusive) and bool(members))
                    )


def _forward(
    elements: dict[Ref, Known],
    known: Known,
    found: Found,
    back: dict[tuple[Ref, str], list[Ref]],
    open_back: set[tuple[str, str, State]],
) -> None:
    """The links that the element's own lines state, and their inverses."""
    kind, _, state = known.ref
    for name, of in typed_fields(type(found.element)):
        link, holds = of.mark(LinkTo), of.mark(Holds)
        if link is None and holds is None:
            continue
        value: Any = getattr(found.element, name)
        target = link.kind if link else of.base.kind
        inverse = link.inverse if link else holds.inverse
        ids: Iterable[str] = ()
        if value is not None:
            ids = [value] if isinstance(value, str) else [item if isinstance(item, str) else item.id for item in value]
        refs = tuple(ref for id_ in ids if (ref := Ref(target, id_, state)) in elements)
        none = link is not None and link.absent_is_none and value is None
        closed = none or (value is not None and not (of.is_list and found.element.is_open(name)))
        known.links[name] = Members(refs, closed)
        for ref in refs:
            back.setdefault((ref, inverse), []).append(known.ref)
        if not closed:
            open_back.add((kind, name, state))


class Deriver:
    """Works out derived attributes, each once, needs first."""

    def __init__(self, elements: dict[Ref, Known], assumptions: Mapping[str, Value], catalogue: Entries) -> None:
        self.elements = elements
        self.assumptions = assumptions
        self.catalogue = catalogue
        self.faults: list[Fault] = []
        self._done: set[Item] = set()
        self._by_kind: dict[str, list[Derivation]] = {}
        for derivation in derivations().values():
            self._by_kind.setdefault(derivation.kind, []).append(derivation)
        self._words: Glossary = glossary()

    def derive_all(self, ref: Ref) -> None:
        """Derive every attribute of one element."""
        for derivation in self._by_kind.get(ref.kind, ()):
            self._derive(ref, derivation)

    def _fact(self, item: Item) -> Fact | None:
        known = self.elements[item.ref]
        derivation = derivations().get((item.ref.kind, item.name))
        if derivation is not None:
            self._derive(item.ref, derivation)
        return known.values.get(item.name)

    def _derive(self, ref: Ref, derivation: Derivation) -> None:
        item = Item(ref, derivation.attribute)
        if item in self._done:
            return
        self._done.add(item)
        known = self.elements[ref]
        inputs: list[Input] = []
        missing: dict[Item, None] = {}
        rests: dict[str, dict[str, None]] = {}
        values: dict[str, Any] = {}
        without: dict[str, dict[Item, None]] = {}
        settled = True
        for name, need in derivation.needs.items():
            lacking = without.setdefault(name, {}) if need.optional else missing
            values[name] = self._need(ref, name, need, inputs, lacking, rests.setdefault(name, {}))
            settled = settled and (need.optional or values[name] is not None)
        stated = known.values.get(derivation.attribute)
        calculation: Calculation | None = None
        if settled:
            try:
                result = derivation.function(**values)
            except OutOfRange as error:
                self.faults.append(Fault(item, error.name, str(error), error.legal, tuple(inputs)))
                result = None
            if isinstance(result, Lacks):
                for name in result:
                    # A value that is known but is not enough, as some risers of a flight, is asked for anew.
                    need = derivation.needs[name]
                    missing.update(without[name] or ({} if need.steps else {Item(ref, need.attribute): None}))
            elif result is not None:
                by = derivation.by
                if isinstance(result, Using):
                    idle = {
                        name
                        for name, need in derivation.needs.items()
                        if need.optional and name not in result.parameters
                    }
                    inputs = [each for each in inputs if each.symbol not in idle]
                    rests = {name: names for name, names in rests.items() if name not in idle}
                    result = result.value
                calculation = Calculation(f"{by.__module__}.{by.__name__}", tuple(inputs), result)
        if stated is not None:
            if calculation is not None:
                known.values[derivation.attribute] = Fact(stated.value, "stated", stated.place, computed=calculation)
        elif calculation is not None:
            known.values[derivation.attribute] = Fact(
                calculation.result,
                "computed",
                calculation=calculation,
                rests_on=_each_once(rests.values()),
            )
        else:
            on_plan = self._words.kinds[ref.kind].attributes[derivation.attribute].on_plan
            known.missing[derivation.attribute] = (item,) if on_plan else tuple(missing)

    def _need(
        self,
        ref: Ref,
        symbol: str,
        need: Need,
        inputs: list[Input],
        missing: dict[Item, None],
        rests_on: dict[str, None],
    ) -> Any:
        """The value of a need; None, with what is missing put down, if it is unknown."""
        if need.assumption:
            value = self.assumptions.get(need.assumption)
            if value is not None:
                inputs.append(Input(symbol, None, value, need.assumption))
                rests_on[need.assumption] = None
            return value
        if need.catalogue:
            entries = tuple({id(entry): entry for entry in self.catalogue.get(need.catalogue, {}).values()}.values())
            if entries and need.catalogue == STANDARD:
                inputs.append(Input(symbol, None, entries[0].title, entry=entries[0].known_as))
            return entries or None
        if need.entry_property:
            return self._entry_value(ref, symbol, need, inputs, missing, rests_on)
        refs: tuple[Ref, ...] = (ref,)
        known_all = True
        for step in need.steps:
            following: list[Ref] = []
            for at in refs:
                members = self.elements[at].links.get(step, Members((), False))
                to_one = self._words.kinds[at.kind].links[step].to_one
                if not members.closed or (to_one and not members.refs):
                    missing[self._line_of(at, step)] = None
                    known_all = False
                following += members.refs
            refs = tuple(following)
        found: list[Value] = []
        for at in refs:
            fact = self._fact(Item(at, need.attribute))
            if fact is None:
                for item in self.elements[at].missing.get(need.attribute, (Item(at, need.attribute),)):
                    missing[item] = None
                known_all = False
                continue
            found.append(fact.value)
            inputs.append(Input(symbol, Item(at, need.attribute), fact.value))
            rests_on.update(dict.fromkeys(fact.rests_on))
        if not known_all:
            return None
        return found if need.many else found[0]

    def _line_of(self, ref: Ref, link: str) -> Item:
        """The plan line that states a link: a surface of a drawn room has no lines, its room has."""
        faces = self.elements[ref].values.get("faces")
        if ref.kind == "surface" and faces is not None and faces.origin == "computed":
            (room,) = self.elements[ref].links["room"].refs
            name = ref.id.removeprefix(f"{room.id}-").partition("-")[0]
            if link in ("windows", "doors", "skylights"):
                return Item(room, link)
            if link == "assembly":
                return Item(room, "inner_walls_as" if name == "wall" else f"{name}_as")
        return Item(ref, link)

    def _entry_value(
        self,
        ref: Ref,
        symbol: str,
        need: Need,
        inputs: list[Input],
        missing: dict[Item, None],
        rests_on: dict[str, None],
    ) -> Any:
        """A value of the entry that the element names; an archetype is an assumption, and said to be one."""
        for step in need.steps:
            members = self.elements[ref].links.get(step, Members((), False))
            if not members.refs:
                missing[Item(ref, step)] = None
                return None
            ref = members.refs[0]
        item = Item(ref, need.attribute)
        fact = self._fact(item)
        if fact is None:
            missing[item] = None
            return None
        catalogue = _catalogue_of(ref.kind, need.attribute)
        entry = self.catalogue.get(catalogue, {}).get(str(fact.value).lower())
        if entry is not None and need.entry_property == DESIGN:
            inputs.append(Input(symbol, item, entry.title, entry=entry.known_as, entry_property=DESIGN))
            return entry.design
        value = entry.properties.get(need.entry_property) if entry else None
        if entry is None or value is None:
            missing[item] = None
            return None
        inputs.append(Input(symbol, item, value, entry=entry.known_as, entry_property=need.entry_property))
        if catalogue == "archetype":
            rests_on[entry.known_as] = None
        return value


@cache
def _catalogue_of(kind: str, attribute: str) -> str:
    """Which catalogue an attribute names an entry of."""
    field = next(of for name, of in typed_fields(element_models()[kind]) if name == attribute)
    return cast(Named, field.mark(Named)).catalogue


def _each_once(groups: Iterable[Iterable[str]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for group in groups for name in group))


def contradicts(fact: Fact, derivation: Derivation) -> bool:
    """Whether a stated value lies too far from what the plan's own numbers give."""
    if fact.computed is None:
        return False
    stated, computed = fact.value, fact.computed.result
    if derivation.form != "quantity":
        return stated != computed
    one, other = cast(float, stated), cast(float, computed)
    allowed = derivation.agrees_within
    if derivation.dimension is not Dimension.LENGTH:
        allowed *= max(abs(one), abs(other))
    return abs(one - other) > allowed
