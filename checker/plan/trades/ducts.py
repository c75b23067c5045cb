"""Runs of duct, supply and return."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Worked
from checker.plan.fields import Airflow, Length, LinkTo, Share, ThermalResistance


class DuctSays(Says):
    """What can be said of a duct run."""

    role: Literal["supply", "return"] | None = None
    """Whether it brings air to rooms or takes it back."""
    shape: Literal["round", "rectangular", "oval", "building cavity"] | None = None
    """Shape of its section; a building cavity is a stud or joist bay used as a duct."""
    material: Literal["sheet metal", "flexible", "duct board", "wood framing", "plastic"] | None = None
    """What it is made of."""
    diameter: Length | None = None
    """Inside diameter of a round run."""
    width: Length | None = None
    """Inside width of a rectangular or oval run."""
    height: Length | None = None
    """Inside height of a rectangular or oval run."""
    length: Length | None = None
    """Straight length."""
    fittings_length: Length | None = None
    """Straight duct that its elbows, boots and take-off are equal to; 0 if none."""
    compression: Share | None = None
    """Of a flexible run, by how much it is shorter than stretched."""
    runs_in: (
        Literal[
            "heated space",
            "unheated attic",
            "unheated basement",
            "crawl space",
            "outside wall",
            "garage",
            "outdoors",
            "under slab",
        ]
        | None
    ) = None
    """Where it runs."""
    insulation: ThermalResistance | None = None
    """Insulation around it."""
    sealed: Literal["mastic or listed tape", "cloth tape", "not sealed"] | None = None
    """How its joints are sealed."""
    tested_leakage: Airflow | None = None
    """Leakage measured at 25 Pa."""
    airflow: Airflow | None = None
    """Airflow that it is to carry, if it is given rather than computed."""
    damper: bool | None = None
    """Whether the branch has a balancing damper."""


class Duct(Worked, DuctSays):
    """A run of duct."""

    kind: ClassVar[str] = "duct"
    meaning: ClassVar[str] = "a run of duct, trunk or branch, that brings air to rooms or takes it back"
    trade: ClassVar[str] = "heating"

    heater: Annotated[Ident | None, LinkTo("heater", inverse="trunks", absent_is_none=True)] = None
    """Of a run that starts at the blower, the heater."""
    fed_by: Annotated[Ident | None, LinkTo("duct", inverse="feeds", loops=False, absent_is_none=True)] = None
    """The next run toward the blower."""
    room: Annotated[Ident | None, LinkTo("room", inverse="ducts", absent_is_none=True)] = None
    """The room where it ends; a run without this line ends in none."""
    level: Annotated[Ident | None, LinkTo("level", inverse="ducts", absent_is_none=True)] = None
    """Of a return that serves a whole floor, the level."""
    was: DuctSays | None = None
    """What the run was before the work."""
