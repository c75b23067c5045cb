"""Derivations: which attribute follows from which others, by which calculation.

    @derives("flight.riser_height", Dimension.LENGTH, "riser height by the count", by=stair.riser_height,
             needs={"total_rise_m": "total_rise", "risers": "risers"})

The decorated function gets the values of its needs by name and nothing else, so it cannot read what it does not
declare; it is not called at all while one of them is unknown. A need is an attribute of the same element
(`total_rise`), an attribute across to-one links (`stair.total_rise`), of every member of a to-many link
(`flights[].total_rise`), an assumption of the ruleset (`assumed:counted_height`), a value of the ruleset's catalogue
for the entry that the element, or one across to-one links, names (`named:material.conductivity`; the whole of it is
`named:lumber.design`), or all entries of a catalogue (`catalogue:timber standard`). It returns None where the needs
do not settle the value. A need that ends in `?` is passed as None while it is unknown; a function that finds it needs
it after all returns `lacks("its_name")`, and the need is reported as missing; one that takes only some of those that
are known returns `using(value, "their_names")`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from checker.units import Dimension

if TYPE_CHECKING:
    from checker.glossary import Attribute

_STEP = re.compile(r"^[a-z][a-z0-9_]*(\[\])?$")
ASSUMED = "assumed:"
NAMED = "named:"
CATALOGUE = "catalogue:"
DESIGN = "design"
"""Of an entry, the whole of it, where others are asked for a property."""


@dataclass(frozen=True, slots=True)
class Need:
    """Where a value of a derivation comes from: an assumption, or a path of links that ends in an attribute."""

    steps: tuple[str, ...]
    attribute: str
    many: bool
    assumption: str = ""
    optional: bool = False
    entry_property: str = ""
    """Of the catalogue's entry that the attribute names."""
    catalogue: str = ""
    """All entries of it."""


class Lacks(tuple[str, ...]):
    """The parameters without which a value cannot be worked out."""


def lacks(*parameters: str) -> Lacks:
    """Say which optional needs a derivation cannot do without in the case at hand."""
    return Lacks(parameters)


@dataclass(frozen=True, slots=True)
class Using:
    """A value with the optional needs that it was made from; the others do not count as its inputs."""

    value: Any
    parameters: frozenset[str]


def using(value: Any, *parameters: str) -> Using:
    """Say which optional needs a value was made from, where it was one of several."""
    return Using(value, frozenset(parameters))


@dataclass(frozen=True, slots=True)
class Derivation:
    """One attribute that follows from others."""

    kind: str
    attribute: str
    form: Literal["quantity", "flag", "choice", "name"]
    dimension: Dimension | None
    choices: tuple[str, ...]
    meaning: str
    needs: Mapping[str, Need]
    function: Callable[..., Any]
    by: Callable[..., Any]
    agrees_within: float

    def as_attribute(self) -> Attribute:
        """The glossary entry of an attribute that no plan line states."""
        from checker.glossary import Attribute

        return Attribute(self.attribute, self.meaning, self.form, self.dimension, self.choices, derived=True)


_DERIVATIONS: dict[tuple[str, str], Derivation] = {}


def _need(text: str) -> Need:
    optional = text.endswith("?")
    if text.startswith(ASSUMED):
        return Need((), "", False, text.removeprefix(ASSUMED).removesuffix("?"), optional)
    if text.startswith(NAMED):
        *links, attribute, entry_property = text.removeprefix(NAMED).removesuffix("?").split(".")
        return Need(tuple(links), attribute, False, optional=optional, entry_property=entry_property)
    if text.startswith(CATALOGUE):
        return Need((), "", False, optional=optional, catalogue=text.removeprefix(CATALOGUE).removesuffix("?"))
    *steps, attribute = text.removesuffix("?").split(".")
    if not all(_STEP.match(step) for step in [*steps, attribute]) or attribute.endswith("[]"):
        raise ValueError(f"a need is written link.attribute or link[].attribute, not {text!r}")
    many = [step for step in steps if step.endswith("[]")]
    if len(many) > 1:
        raise ValueError(f"{text!r} crosses two to-many links: derive the inner one first")
    return Need(tuple(step.removesuffix("[]") for step in steps), attribute, bool(many), optional=optional)


def derives(
    target: str,
    of: Dimension | Literal["flag", "name"] | tuple[str, ...],
    meaning: str,
    *,
    by: Callable[..., Any],
    needs: Mapping[str, str],
    agrees_within: float = 0.0032,
) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Declare that a function derives an attribute.

    target: kind.attribute; of: its dimension, "flag", "name" for words that only reports read, or its choices;
    meaning: for the glossary and calculation sheets; by: the calculation, whose docstring names the source; needs:
    parameter name to where its value comes from; agrees_within: how far a stated value may lie from this one before
    the two contradict each other, as a share of the value, except for lengths: metres (3.2 mm, what a tape and a
    fraction of an inch leave open; no code limit).
    """
    kind, attribute = target.split(".")

    def register(function: Callable[..., Any]) -> Callable[..., Any]:
        if (kind, attribute) in _DERIVATIONS:
            raise ValueError(f"{target} is derived twice")
        form: Literal["quantity", "flag", "choice", "name"] = (
            "quantity" if isinstance(of, Dimension) else "choice" if isinstance(of, tuple) else of
        )
        _DERIVATIONS[kind, attribute] = Derivation(
            kind,
            attribute,
            form,
            of if isinstance(of, Dimension) else None,
            of if isinstance(of, tuple) else (),
            meaning,
            {name: _need(text) for name, text in needs.items()},
            function,
            by,
            agrees_within,
        )
        return function

    return register


def declared() -> Mapping[tuple[str, str], Derivation]:
    """Every derivation declared so far."""
    return _DERIVATIONS
