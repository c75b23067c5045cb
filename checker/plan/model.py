"""The whole plan: one file, one section a trade."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from checker.plan.elements import Section, Text
from checker.plan.house import Eave, ExteriorWall, House, Level, Permit, Site
from checker.plan.trades.assemblies import Assembly, Surface
from checker.plan.trades.bearing import BearingLine, BracedLine, Digging, Footing, FoundationWall
from checker.plan.trades.ducts import Duct
from checker.plan.trades.framing import FramedOpening, HeavyThing, Member, Shoring
from checker.plan.trades.heating import Appliance, Flue, Heater, Ventilator
from checker.plan.trades.openings import Door, Skylight, Window
from checker.plan.trades.roofs import RoofPlane
from checker.plan.trades.rooms import Alarm, Room
from checker.plan.trades.stairs import OpenEdge, Stair


class Openings(Section):
    """Windows, doors and skylights."""

    windows: list[Window] | None = None
    """Windows."""
    doors: list[Door] | None = None
    """Doors."""
    skylights: list[Skylight] | None = None
    """Skylights and roof windows."""


class Envelope(Section):
    """What encloses the heated rooms."""

    assemblies: list[Assembly] | None = None
    """Walls, roofs and floors by how they are built."""
    surfaces: list[Surface] | None = None
    """Surfaces of rooms; those of rooms drawn as rectangles need not be listed."""


class Heating(Section):
    """Heating, ducts, ventilation and what burns fuel."""

    heaters: list[Heater] | None = None
    """Heating equipment."""
    appliances: list[Appliance] | None = None
    """Water heaters, hoods, dryers, fireplaces and fans."""
    flues: list[Flue] | None = None
    """Chimney flues and vents."""
    ducts: list[Duct] | None = None
    """Runs of duct, supply and return."""
    ventilators: list[Ventilator] | None = None
    """Mechanical ventilation systems of the whole house."""


class Framing(Section):
    """The frame, from the ridge to the footings."""

    members: list[Member] | None = None
    """Joists, rafters, beams, headers, ridges, posts."""
    framed_openings: list[FramedOpening] | None = None
    """Openings cut or closed in floors, ceilings and roofs."""
    heavy_things: list[HeavyThing] | None = None
    """Tubs, stoves, tanks, stone."""
    bearing_lines: list[BearingLine] | None = None
    """Walls and beams that bring loads down, storey by storey."""
    footings: list[Footing] | None = None
    """Footings and pads."""
    foundation_walls: list[FoundationWall] | None = None
    """Walls with soil against them."""
    diggings: list[Digging] | None = None
    """Digging beside or below the house."""
    braced_lines: list[BracedLine] | None = None
    """Lines of walls that keep storeys from racking."""
    roofs: list[RoofPlane] | None = None
    """Roofs plane by plane."""
    shoring: list[Shoring] | None = None
    """Supports and covers for a time."""


class Plan(Section):
    """A retrofit plan: what every trade will do to one house. A section that is left out is not known."""

    plan: Text
    """Title of the plan, as it stands on the report."""
    rules: Text | None = None
    """Ruleset of the jurisdiction, such as local/harrow-vale or us."""
    units: Literal["us", "metric"] = "us"
    """System of units in which results are printed; any unit may be used to write."""
    permit: Permit = Field(default_factory=Permit)
    """The permit applied for."""
    site: Site = Field(default_factory=Site)
    """The lot and the design data of the place."""
    house: House = Field(default_factory=House)
    """The building as a whole."""
    levels: list[Level] | None = None
    """Floors of the house, from the bottom."""
    exterior_walls: list[ExteriorWall] | None = None
    """Outside walls and dormer sides with their distance to the lot line."""
    eaves: list[Eave] | None = None
    """Eaves and other projections."""
    rooms: list[Room] | None = None
    """Rooms with their use before and after."""
    alarms: list[Alarm] | None = None
    """Smoke and carbon monoxide alarms."""
    openings: Openings = Field(default_factory=Openings)
    """Windows, doors and skylights."""
    stairs: list[Stair] | None = None
    """Stairs with flights, landings and handrails."""
    open_edges: list[OpenEdge] | None = None
    """Edges that a person could fall over, with their guards."""
    framing: Framing = Field(default_factory=Framing)
    """Members, bearing lines, roofs and footings."""
    envelope: Envelope = Field(default_factory=Envelope)
    """Assemblies and the surfaces of rooms."""
    heating: Heating = Field(default_factory=Heating)
    """Heating equipment, ducts, ventilation, flues."""
