"""The vocabulary of rules: kinds of element, their attributes and links.

Collected from the plan models, the derivations and (through `Glossary.with_conclusions`) a ruleset's conclusions;
nothing in it is written by hand.
"""

from __future__ import annotations

import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from checker.documented import field_texts
from checker.plan.elements import STATUSES, Element
from checker.plan.fields import Holds, LinkTo, Measure, Named
from checker.plan.model import Plan
from checker.units import Dimension

HOUSE_LINK = "house"
WAS = "was"


@dataclass(frozen=True, slots=True)
class Attribute:
    """One thing that can be known of an element.

    form: quantity (with a dimension), choice (with choices), flag; and two that are not for rules: series (a list of
    quantities) and name (of an entry in the ruleset's catalogue).
    """

    name: str
    meaning: str
    form: Literal["quantity", "choice", "flag", "series", "name"]
    dimension: Dimension | None = None
    choices: tuple[str, ...] = ()
    on_plan: bool = False
    derived: bool = False
    concluded: bool = False


@dataclass(frozen=True, slots=True)
class Link:
    """A way from one element to others."""

    name: str
    target: str
    to_one: bool
    meaning: str
    inverse: str = ""
    on_plan: bool = False
    exclusive: bool = False
    ends: bool = False
    """Whether every chain of this link ends, as from a duct to the blower."""


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of element."""

    name: str
    meaning: str
    has_status: bool
    attributes: Mapping[str, Attribute] = field(default_factory=dict)
    links: Mapping[str, Link] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Glossary:
    """All kinds by name."""

    kinds: Mapping[str, Kind]

    def with_conclusions(self, conclusions: Mapping[tuple[str, str], str]) -> Glossary:
        """Give the glossary with a flag added for each conclusion: (kind, name) to meaning."""
        kinds = dict(self.kinds)
        for (kind, name), meaning in conclusions.items():
            if kind in kinds:
                concluded = Attribute(name, meaning, "flag", concluded=True)
                kinds[kind] = replace(kinds[kind], attributes={**kinds[kind].attributes, name: concluded})
        return Glossary(kinds)


@dataclass(frozen=True, slots=True)
class FieldType:
    """What the annotation of a plan field says."""

    base: Any
    marks: tuple[Any, ...]
    is_list: bool

    def mark(self, wanted: type) -> Any:
        """Give the first mark of a type, or None."""
        return next((mark for mark in self.marks if isinstance(mark, wanted)), None)


def field_type(info: FieldInfo) -> FieldType:
    """Peel a plan field's annotation: without None, list and Annotated, with every mark found on the way."""
    marks: list[Any] = list(info.metadata)
    annotation, is_list = info.annotation, False
    while True:
        origin = get_origin(annotation)
        if origin is Annotated:
            annotation, *found = get_args(annotation)
            marks += found
        elif origin in (Union, types.UnionType):
            annotation = next(arg for arg in get_args(annotation) if arg is not type(None))
        elif origin is list:
            is_list, annotation = True, get_args(annotation)[0]
        else:
            return FieldType(annotation, tuple(marks), is_list)


@cache
def typed_fields(model: type[BaseModel]) -> tuple[tuple[str, FieldType], ...]:
    """The fields of a model with what their annotations say."""
    return tuple((name, field_type(info)) for name, info in model.model_fields.items())


def attribute_of(name: str, of: FieldType, meaning: str) -> Attribute | None:
    """Give the attribute that a plan field declares; None for texts, links, lists of elements and sections."""
    if of.mark(LinkTo) or of.mark(Holds):
        return None
    if measure := of.mark(Measure):
        form: Literal["series", "quantity"] = "series" if of.is_list else "quantity"
        return Attribute(name, meaning, form, dimension=measure.dimension, on_plan=True)
    if of.is_list:
        return None
    if of.mark(Named):
        return Attribute(name, meaning, "name", on_plan=True)
    if of.base is bool:
        return Attribute(name, meaning, "flag", on_plan=True)
    if get_origin(of.base) is Literal:
        return Attribute(name, meaning, "choice", choices=get_args(of.base), on_plan=True)
    return None


def is_element(model: Any) -> bool:
    """Whether a field's type is a model of an element."""
    return isinstance(model, type) and issubclass(model, Element)


@lru_cache(maxsize=1)
def element_models() -> Mapping[str, type[Element]]:
    """Every element model that a plan can hold, by kind, in the order of the plan."""
    found: dict[str, type[Element]] = {}

    def visit(model: type[BaseModel]) -> None:
        for _, typed in typed_fields(model):
            of = typed.base
            if is_element(of) and of.kind not in found:
                found[of.kind] = of
                visit(of)
            elif isinstance(of, type) and issubclass(of, BaseModel) and not is_element(of):
                visit(of)

    visit(Plan)
    return found


def _links_of(model: type[Element]) -> Iterator[tuple[str, Link, Link]]:
    """Each link that a model declares, with the kind and the link that lead back."""
    for name, of in typed_fields(model):
        meaning = field_texts(model).get(name, "")
        if link := of.mark(LinkTo):
            back = Link(
                link.inverse,
                model.kind,
                link.inverse_to_one,
                f"{model.kind}s that name it",
                inverse=name,
                exclusive=link.exclusive or link.inverse_to_one,
                ends=not link.loops,
            )
            to_one, ends = not of.is_list, not link.loops
            yield link.kind, Link(name, link.kind, to_one, meaning, link.inverse, on_plan=True, ends=ends), back
        elif holds := of.mark(Holds):
            target: str = of.base.kind
            back = Link(holds.inverse, model.kind, True, f"the {model.kind} that holds it", inverse=name)
            yield target, Link(name, target, False, meaning, holds.inverse, on_plan=True), back


@lru_cache(maxsize=1)
def glossary() -> Glossary:
    """The glossary of the plan models and the derivations."""
    from checker.derive import derivations

    models = element_models()
    attributes: dict[str, dict[str, Attribute]] = {}
    links: dict[str, dict[str, Link]] = {kind: {} for kind in models}
    for kind, model in models.items():
        attributes[kind] = {}
        if model.has_status:
            attributes[kind]["status"] = Attribute(
                "status", "what the work does to it", "choice", choices=STATUSES, on_plan=True
            )
        texts = field_texts(model)
        for name, of in typed_fields(model):
            if name != "status" and (attribute := attribute_of(name, of, texts.get(name, ""))):
                attributes[kind][name] = attribute
        for target, link, back in _links_of(model):
            links[kind][link.name] = link
            links[target][back.name] = back
        if model.has_status:
            links[kind][WAS] = Link(WAS, kind, True, "the same element before the work")
        if kind in ("permit", "site"):
            links["house"][kind] = Link(kind, kind, True, f"the {kind}", HOUSE_LINK)
            links[kind][HOUSE_LINK] = Link(HOUSE_LINK, "house", True, "the house", kind)
        elif kind != "house":
            plural = kind.replace("-", "_").removesuffix("s") + "s"
            links["house"][plural] = Link(plural, kind, False, f"every {kind} of the plan", HOUSE_LINK)
            links[kind][HOUSE_LINK] = Link(HOUSE_LINK, "house", True, "the house", plural)
    for kind, name in [(kind, name) for kind in models for name in ("permit", "site")]:
        if kind not in (name, "house") and name not in links[kind]:
            links[kind][name] = Link(name, name, True, f"the {name}")
    for derivation in derivations().values():
        known = attributes[derivation.kind].get(derivation.attribute)
        attributes[derivation.kind][derivation.attribute] = (
            replace(known, derived=True) if known else derivation.as_attribute()
        )
    return Glossary(
        {
            kind: Kind(kind, model.meaning, model.has_status, attributes[kind], links[kind])
            for kind, model in models.items()
        }
    )
