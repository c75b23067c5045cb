"""Rooms with their use before and after, their ceilings, and the alarms in them."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.calc.rooms_plan import Rect
from checker.plan.elements import Ident, Says, Worked
from checker.plan.fields import (
    Airflow,
    Area,
    Depth,
    Fraction,
    Illuminance,
    Length,
    LinkTo,
    Place,
    Slope,
    Temperature,
    Volume,
)

RoomUse = Literal[
    "living room",
    "dining room",
    "kitchen",
    "bedroom",
    "family room",
    "office",
    "bathroom",
    "toilet room",
    "laundry",
    "hall",
    "stair hall",
    "closet",
    "storage",
    "attic",
    "workshop",
    "mechanical room",
    "garage",
    "porch",
    "unfinished basement",
]


class RoomSays(Says):
    """What can be said of a room."""

    use: RoomUse | None = None
    """What the room is used for."""
    floor_area: Area | None = None
    """Floor area between the finished walls, under slopes too."""
    least_dimension: Length | None = None
    """Least horizontal dimension between finished walls or knee walls."""
    ceiling: Literal["level", "sloped"] | None = None
    """Whether the ceiling is level throughout or follows the roof in part."""
    ceiling_height: Length | None = None
    """Finished floor to finished ceiling; for a sloped ceiling, its highest part."""
    beam_clearance: Length | None = None
    """Finished floor to the underside of the lowest beam, duct or collar; the ceiling height if there is none."""
    beam_spacing: Length | None = None
    """Clear distance between such beams."""
    slopes: Literal["one", "two"] | None = None
    """Whether the ceiling slopes up from one knee wall or from two facing ones."""
    knee_wall_height: Length | None = None
    """Height of the low wall from which the ceiling slopes up."""
    ceiling_pitch: Slope | None = None
    """Pitch of the sloped ceiling's finish."""
    sloped_width: Length | None = None
    """Width of the room across the slope, knee wall to knee wall, or knee wall to high wall."""
    sloped_length: Length | None = None
    """Length of the sloped part along the ridge."""
    flat_ceiling_height: Length | None = None
    """Height of the level part that cuts the slopes at collars or ties; the height at the ridge if there is none."""
    level_ceiling_area: Area | None = None
    """Floor area under a level ceiling beside the sloped part, as under a dormer."""
    level_ceiling_height: Length | None = None
    """Height of that level ceiling."""
    area_at_counted_height: Area | None = None
    """Floor area under a ceiling at least as high as the counted height."""
    area_at_full_height: Area | None = None
    """Floor area under a ceiling at least as high as the full height."""
    area_at_conversion_height: Area | None = None
    """Floor area under a ceiling as high as an existing attic or basement may keep when it becomes habitable."""
    width_at_full_height: Length | None = None
    """Width of floor, across the slope, under a ceiling at least as high as the full height."""
    height_at_fixtures: Length | None = None
    """Ceiling height at the middle of the clear space in front of toilet and basin."""
    shower_head_clearance: Length | None = None
    """Ceiling height over the floor of the shower or tub at the shower head."""
    width: Length | None = None
    """Clear width of a hall or passage."""
    borrows_light: bool | None = None
    """Whether light and air come from an adjoining room instead of windows of its own."""
    borrowed_opening_share: Fraction | None = None
    """Open part of the wall shared with the room that light and air come from."""
    borrowed_opening_area: Area | None = None
    """Area of that opening."""
    mechanical_ventilation: bool | None = None
    """Whether a mechanical system ventilates the room."""
    exhaust_airflow: Airflow | None = None
    """Airflow of the room's exhaust fan."""
    exhaust_continuous: bool | None = None
    """Whether that fan runs all the time."""
    exhaust_ends: Literal["outdoors", "attic", "soffit", "crawl space", "recirculates"] | None = None
    """Where the exhaust ends."""
    artificial_light: Illuminance | None = None
    """Light of the fixtures, averaged 30 in above the floor."""
    heated: bool | None = None
    """Whether the heating system serves the room."""
    design_indoor_temperature: Temperature | None = None
    """Temperature that the heating holds in the room at the winter design condition."""
    fuel_burning_appliance: bool | None = None
    """Whether a fuel-burning appliance stands in the room or in a bathroom that opens from it."""
    volume: Volume | None = None
    """Volume of air in the room."""
    winter_temperature: Temperature | None = None
    """Of an unheated space, its temperature at the winter design condition."""
    closes_with_door: bool | None = None
    """Whether a door can shut the room off."""
    transfer_area: Area | None = None
    """Free area of grilles, jump ducts and the gap under the door, through which air finds its way back."""
    combustion_air_outdoors: Area | None = None
    """Free area of openings to the outdoors that bring air to flames in the room; 0 if none."""
    joined_volume: Volume | None = None
    """Volume of the room with those that open to it without a door, for air to flames."""


class Room(Worked, RoomSays):
    """A room or other space."""

    kind: ClassVar[str] = "room"
    meaning: ClassVar[str] = "a room or other space, with its use before and after"
    trade: ClassVar[str] = "rooms"

    level: Annotated[Ident | None, LinkTo("level", inverse="rooms")] = None
    """The level that the room is on."""
    from_west: Place | None = None
    """Of a room drawn as a rectangle, distance of its west side from a west line common to all floors."""
    from_south: Place | None = None
    """Of a room drawn as a rectangle, distance of its south side from a south line common to all floors."""
    size_west_east: Depth | None = None
    """Of a room drawn as a rectangle, its size from west to east, inside; a room whose walls move is another room."""
    size_south_north: Depth | None = None
    """Of a room drawn as a rectangle, its size from south to north, inside."""
    walls_as: Annotated[Ident | None, LinkTo("assembly", inverse="walls_of_rooms", absent_is_none=True)] = None
    """How its outside walls are built, if not as those of its level; for a room drawn as a rectangle."""
    inner_walls_as: Annotated[Ident | None, LinkTo("assembly", inverse="inner_walls_of", absent_is_none=True)] = None
    """How its walls to unheated rooms of the same storey are built, as one to a garage."""
    ceiling_as: Annotated[Ident | None, LinkTo("assembly", inverse="ceilings_of_rooms", absent_is_none=True)] = None
    """How the ceiling or roof over it is built, if not as that of its level."""
    floor_as: Annotated[Ident | None, LinkTo("assembly", inverse="floors_of_rooms", absent_is_none=True)] = None
    """How its floor is built, if not as that of its level."""
    opens_to: Annotated[Ident | None, LinkTo("room", inverse="serves_rooms")] = None
    """The hall or room right outside the door."""
    windows: Annotated[list[Ident] | None, LinkTo("window", inverse="rooms", exclusive=True)] = None
    """Windows of the room."""
    doors: Annotated[list[Ident] | None, LinkTo("door", inverse="rooms")] = None
    """Doors of the room."""
    skylights: Annotated[list[Ident] | None, LinkTo("skylight", inverse="rooms", exclusive=True)] = None
    """Skylights of the room."""
    was: RoomSays | None = None
    """What the room was before the work."""

    def rectangle(self) -> Rect | None:
        """West, south, east and north of the room [m], if it is drawn as a rectangle."""
        west, south = self.from_west, self.from_south
        across, along = self.size_west_east, self.size_south_north
        if west is None or south is None or across is None or along is None:
            return None
        return west, south, west + across, south + along


class AlarmSays(Says):
    """What can be said of an alarm."""

    detects: Literal["smoke", "carbon monoxide", "both"] | None = None
    """What the alarm detects."""
    power: Literal["wired with battery", "wired", "battery"] | None = None
    """Where its power comes from."""
    interconnected: bool | None = None
    """Whether one alarm that sounds sets off all."""
    distance_to_bathroom_door: Length | None = None
    """Horizontal distance to the door or opening of a bathroom with a tub or shower."""


class Alarm(Worked, AlarmSays):
    """A smoke or carbon monoxide alarm."""

    kind: ClassVar[str] = "alarm"
    meaning: ClassVar[str] = "a smoke or carbon monoxide alarm"
    trade: ClassVar[str] = "alarms"

    room: Annotated[Ident | None, LinkTo("room", inverse="alarms")] = None
    """The room that the alarm is in."""
    was: AlarmSays | None = None
    """What the alarm was before the work."""
