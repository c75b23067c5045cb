"""Stairs with their flights, winders, landings and handrails; open edges with their guards."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Worked
from checker.plan.fields import Angle, CountFromOne, Force, Holds, Length, LinkTo, Slope


class HandrailSays(Says):
    """What can be said of a handrail."""

    height: Length | None = None
    """Line of nosings to the top of the rail, plumb."""
    continuous: bool | None = None
    """Whether it runs without a break from above the top riser to above the bottom riser."""
    ends_returned: bool | None = None
    """Whether its ends return to the wall or end in a newel."""
    wall_clearance: Length | None = None
    """Clear space between rail and wall."""
    projection: Length | None = None
    """How far it stands into the stair's width."""
    profile: Literal["round", "shaped", "with finger recess", "flat board"] | None = None
    """Form of the grip: round; another closed profile; a larger rail with a recess for the fingers; a board on edge."""
    diameter: Length | None = None
    """Outside diameter of a round rail."""
    perimeter: Length | None = None
    """Perimeter of a shaped rail."""
    largest_cross_section: Length | None = None
    """Largest dimension across a shaped rail."""
    finger_recess_depth: Length | None = None
    """Depth of the finger recess on both sides."""


class Handrail(Worked, HandrailSays):
    """A handrail along a flight."""

    kind: ClassVar[str] = "handrail"
    meaning: ClassVar[str] = "a handrail along a flight"
    trade: ClassVar[str] = "stairs"

    was: HandrailSays | None = None
    """What the handrail was before the work."""


class WindersSays(Says):
    """What can be said of a turn of winders."""

    turn_angle: Angle | None = None
    """Angle of the whole turn."""
    count: CountFromOne | None = None
    """Number of winder treads in the turn."""
    going_at_walkline: Length | None = None
    """Going of the winders on the walkline."""
    smallest_going: Length | None = None
    """Going at the narrow end, within the clear width."""
    walkline_offset: Length | None = None
    """Distance of the walkline from the narrow side."""
    narrow_side_radius: Length | None = None
    """Radius of the narrow side, from the point that the risers aim at."""
    going_variation: Length | None = None
    """Largest difference between goings of winders on the walkline."""


class Winders(Worked, WindersSays):
    """A turn of tapered treads in a flight."""

    kind: ClassVar[str] = "winders"
    meaning: ClassVar[str] = "a turn of tapered treads in a flight"
    trade: ClassVar[str] = "stairs"

    was: WindersSays | None = None
    """What the winders were before the work."""


class GuardSays(Says):
    """What can be said of a guard."""

    height: Length | None = None
    """Walking surface, or line of nosings, to the top of the guard."""
    largest_opening: Length | None = None
    """Largest sphere that passes through the guard."""
    triangle_opening: Length | None = None
    """Largest sphere that passes the triangle of riser, tread and bottom rail."""
    bottom_rail_gap: Length | None = None
    """Gap between the line of nosings and the underside of the bottom rail, square to it."""
    serves_as_handrail: bool | None = None
    """Whether its top rail is the handrail of the stair."""
    anchorage_detailed: bool | None = None
    """Whether the drawings show how posts and newels are fixed to the framing."""
    top_load: Force | None = None
    """Concentrated load that the top rail is shown to carry."""
    infill: Literal["balusters", "glass", "cable", "panel", "solid wall"] | None = None
    """What fills the guard."""
    glass: Literal["ordinary", "tempered", "laminated"] | None = None
    """Kind of glass, if the infill is glass."""


class Guard(Worked, GuardSays):
    """A guard along an open edge."""

    kind: ClassVar[str] = "guard"
    meaning: ClassVar[str] = "a guard (railing or low wall) along an open edge"
    trade: ClassVar[str] = "guards"

    was: GuardSays | None = None
    """What the guard was before the work."""


class OpenEdgeSays(Says):
    """What can be said of an open edge."""

    along: Literal["stair", "floor", "landing", "porch or deck", "ramp"] | None = None
    """What the edge is an edge of."""
    drop: Length | None = None
    """Walking surface to the floor or ground below, at its deepest within 36 in of the edge."""
    length: Length | None = None
    """Length of the edge."""


class OpenEdge(Worked, OpenEdgeSays):
    """An edge that a person could fall over."""

    kind: ClassVar[str] = "open-edge"
    meaning: ClassVar[str] = "an edge of a floor, stair, landing or porch that a person could fall over"
    trade: ClassVar[str] = "guards"

    level: Annotated[Ident | None, LinkTo("level", inverse="open_edges")] = None
    """The level that the edge is on."""
    guards: Annotated[list[Guard] | None, Holds("edge")] = None
    """Guards along the edge; [] says that there is none."""
    was: OpenEdgeSays | None = None
    """What the edge was before the work."""


class FlightSays(Says):
    """What can be said of a flight."""

    risers: CountFromOne | None = None
    """Number of risers."""
    total_rise: Length | None = None
    """Finished floor or landing to finished floor or landing."""
    riser_height: Length | None = None
    """Height of each riser, nosing to nosing."""
    measured_risers: list[Length] | None = None
    """Every riser as measured, from the bottom."""
    riser_variation: Length | None = None
    """Largest riser less the smallest."""
    going: Length | None = None
    """Depth of each tread, nosing to nosing, level."""
    measured_goings: list[Length] | None = None
    """Every going as measured, from the bottom."""
    going_variation: Length | None = None
    """Largest going less the smallest."""
    run: Length | None = None
    """Length of the flight on plan, first riser to last."""
    nosing: Length | None = None
    """How far a nosing stands out over the tread below."""
    nosing_variation: Length | None = None
    """Largest nosing projection less the smallest."""
    nosing_radius: Length | None = None
    """Radius of curve, or bevel, of the nosing."""
    open_risers: bool | None = None
    """Whether the risers are open."""
    open_riser_gap: Length | None = None
    """Largest sphere that passes between two treads."""
    tread_slope: Slope | None = None
    """Slope of a tread."""
    width: Length | None = None
    """Clear width above the handrail and below the headroom, finish to finish."""
    width_at_handrails: Length | None = None
    """Clear width at and below the handrails."""
    headroom: Length | None = None
    """Least height, plumb, from the line of nosings to the finish above."""
    well_length: Length | None = None
    """Length of the floor opening above, from the top nosing along the flight."""
    floor_depth_above: Length | None = None
    """Depth of the floor that bounds the opening, finish to finish."""
    drop_beside: Length | None = None
    """Largest height of an open side above the floor beside it."""
    walkline_radius: Length | None = None
    """Radius of the walkline of a spiral flight."""


class Flight(Worked, FlightSays):
    """A run of steps between floors or landings."""

    kind: ClassVar[str] = "flight"
    meaning: ClassVar[str] = "a run of steps between floors or landings"
    trade: ClassVar[str] = "stairs"

    handrails: Annotated[list[Handrail] | None, Holds("flight")] = None
    """Handrails of the flight."""
    winders: Annotated[list[Winders] | None, Holds("flight")] = None
    """Turns of winders in the flight."""
    open_sides: Annotated[list[OpenEdge] | None, Holds("beside")] = None
    """Open sides of the flight with their guards; [] says that it runs between walls."""
    was: FlightSays | None = None
    """What the flight was before the work."""


class LandingSays(Says):
    """What can be said of a landing."""

    at: Literal["top", "bottom", "between flights"] | None = None
    """Where on the stair it is."""
    width: Length | None = None
    """Width across the direction of travel."""
    depth: Length | None = None
    """Depth in the direction of travel."""
    door_swings_over_steps: bool | None = None
    """Whether a door there swings over the steps."""
    headroom: Length | None = None
    """Least height above the landing."""


class Landing(Worked, LandingSays):
    """A level platform of a stair."""

    kind: ClassVar[str] = "landing"
    meaning: ClassVar[str] = "a level platform at the top, at the bottom or between flights of a stair"
    trade: ClassVar[str] = "stairs"

    was: LandingSays | None = None
    """What the landing was before the work."""


class StairSays(Says):
    """What can be said of a stair."""

    type: Literal[
        "straight", "with landing", "with winders", "spiral", "alternating tread", "ship ladder", "pull-down"
    ] | None = None  # fmt: skip
    """Form of the stair."""
    outdoors: bool | None = None
    """Whether the stair is outside the house."""
    total_rise: Length | None = None
    """Finished floor to finished floor."""
    lit: bool | None = None
    """Whether a light serves the flights and landings."""
    switch_at_each_level: bool | None = None
    """Whether a switch at each level works that light."""
    light_automatic: bool | None = None
    """Whether that light burns all the time or is switched by itself."""
    enclosed_below: bool | None = None
    """Whether there is an enclosed space under the stair that can be entered."""
    board_below: Length | None = None
    """Thickness of gypsum board on the walls and soffit of that space."""
    in_same_well: bool | None = None
    """Whether the stair stands where the old one stood."""
    space_limits_pitch: bool | None = None
    """Whether the existing space and construction leave no room for a gentler pitch."""
    stringers_cut_back: bool | None = None
    """Whether old stringers are kept and recut."""


class Stair(Worked, StairSays):
    """A stair between two levels."""

    kind: ClassVar[str] = "stair"
    meaning: ClassVar[str] = "a stair between two levels"
    trade: ClassVar[str] = "stairs"

    from_level: Annotated[Ident | None, LinkTo("level", inverse="stairs_up")] = None
    """The level it starts on."""
    to_level: Annotated[Ident | None, LinkTo("level", inverse="stairs_down")] = None
    """The level it leads to."""
    flights: Annotated[list[Flight] | None, Holds("stair")] = None
    """Its flights, from the bottom."""
    landings: Annotated[list[Landing] | None, Holds("stair")] = None
    """Its landings."""
    was: StairSays | None = None
    """What the stair was before the work."""
