"""Random rules, tables and plans about an invented house, as a rule file and a derivation would give them.

Rules are data; `Ruleset.program` reads them with the reader of the engine. Every random choice comes from the `Random`
that is passed in, so a seed gives the same case again.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Collection, Iterator, Mapping
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
CHANGED = {"some", "every", "no", "count"}
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
