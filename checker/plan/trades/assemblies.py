"""Assemblies of walls, roofs and floors layer by layer, and the surfaces of rooms that they make."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Text, Worked
from checker.plan.fields import (
    Area,
    Conductivity,
    Depth,
    Holds,
    Length,
    LinkTo,
    Named,
    Permeance,
    Pressure,
    Share,
    Slope,
    ThermalResistance,
    UFactor,
)

AssemblyPart = Literal[
    "wall",
    "roof",
    "ceiling under attic",
    "floor",
    "knee wall",
    "wall below grade",
    "slab",
    "partition",
]


class LayerSays(Says):
    """What can be said of a layer."""

    EXCLUDE: ClassVar[tuple[tuple[str, str], ...]] = (("material", "fill"),)

    material: Annotated[Text | None, Named("material")] = None
    """Material of an unbroken layer, by its name in the ruleset's table of materials."""
    fill: Annotated[Text | None, Named("material")] = None
    """Of a framed layer, what lies between its members, by its name in the table of materials."""
    thickness: Depth | None = None
    """Thickness of the layer; of a framed one, how deep the fill is."""
    resistance: ThermalResistance | None = None
    """Thermal resistance by the maker's data or label, of the material or the fill; it outranks the table."""
    permeance: Permeance | None = None
    """Vapour permeance by the maker's data; it outranks the table."""
    members: Literal["studs", "joists", "rafters", "trusses", "strapping"] | None = None
    """Of a framed layer, what its members are."""
    member_material: Annotated[Text | None, Named("material")] = None
    """Of a framed layer, the material of its members."""
    member_width: Depth | None = None
    """Width of a member on its face, 1-1/2 in for a sawn stud."""
    spacing: Depth | None = None
    """Spacing of the members, centre to centre."""
    framing_share: Share | None = None
    """Part of the area that members take, with plates, corners and headers."""
    covers_members: bool | None = None
    """Whether an unbroken insulation runs past every member, rim and header without a gap."""


class Layer(Worked, LayerSays):
    """A layer of an assembly."""

    kind: ClassVar[str] = "layer"
    meaning: ClassVar[str] = "a layer of an assembly; layers are listed from inside to outside"
    trade: ClassVar[str] = "envelope"
    was: LayerSays | None = None
    """What the layer was before the work."""


class AssemblySays(Says):
    """What can be said of an assembly."""

    archetype: Annotated[Text | None, Named("archetype")] = None
    """For a closed one whose layers nobody has seen: what it looks like, by its name in the ruleset's archetypes."""
    u_factor: UFactor | None = None
    """Heat transmittance air to air, if it is known from a test or from the maker."""
    bay_depth: Length | None = None
    """Depth of the rafter or joist bay that insulation and air share."""
    strapping_outside: Length | None = None
    """Strapping across the top of the members, under the deck, that adds to the air space; 0 if none."""
    strapping_inside: Length | None = None
    """Strapping across the underside of the members that adds to the depth for insulation; 0 if none."""
    vented: bool | None = None
    """Whether outdoor air passes over the insulation of a roof."""
    cross_ventilation: bool | None = None
    """Whether air can pass from bay to bay, over cross strapping or an open ridge space."""
    pitch: Slope | None = None
    """Pitch of the roof."""
    vent_area_low: Area | None = None
    """Net free vent area in the lower part, at the eaves."""
    vent_area_high: Area | None = None
    """Net free vent area in the upper part, within 3 ft of the ridge."""
    vented_area: Area | None = None
    """Area of insulated ceiling that the vents serve."""
    insulation_depth: Length | None = None
    """Depth of the insulation in the bay."""
    air_space: Length | None = None
    """Height of the air between the insulation and the deck."""
    insulation_reaches_eave: bool | None = None
    """Whether attic insulation keeps its full thickness over the outside wall, or a raised heel lets it."""
    cavity_opened: bool | None = None
    """Whether the work opens the cavity between the members."""
    heated_other_side: bool | None = None
    """Whether what lies on the other side is heated too."""
    air_barrier: (
        Literal[
            "none",
            "taped sheet insulation",
            "taped sheathing",
            "sealed membrane",
            "sealed gypsum board",
            "spray foam",
            "fluid-applied membrane",
        ]
        | None
    ) = None
    """What stops air."""
    air_barrier_continuous: bool | None = None
    """Whether that layer joins, sealed, the one of every part around it."""
    water_barrier: (
        Literal[
            "none",
            "building paper",
            "housewrap",
            "sheet insulation",
            "coated sheathing",
            "fluid-applied membrane",
        ]
        | None
    ) = None
    """The layer behind the cladding that sheds water."""
    water_barrier_joints: (
        Literal["lapped shingle fashion", "taped", "lapped and taped", "reverse lapped", "open"] | None
    ) = None
    """How the sheets of that layer meet."""
    drained_gap: Length | None = None
    """Depth of the open, drained gap behind the cladding; 0 if the cladding lies flat on the wall."""
    cladding_weight: Pressure | None = None
    """Weight of the cladding for each area of wall."""
    cladding_fastened_to: (
        Literal["studs", "furring fastened to studs", "sheathing", "old boards", "furring on old boards"] | None
    ) = None
    """What the fasteners of the cladding, or of its furring, hold in."""
    fastener_penetration: Length | None = None
    """How deep those fasteners go into sound wood of the members; old boards do not count."""
    foam_cover: (
        Literal["gypsum board", "plaster", "wood panel", "tested covering", "masonry or concrete", "none"] | None
    ) = None
    """What stands between foam plastic and the room."""
    foam_cover_thickness: Length | None = None
    """How thick that cover is."""
    old_wiring_in_cavity: bool | None = None
    """Whether knob-and-tube or other old open wiring runs in the space that is insulated."""
    insulated_behind_old_work: Literal["drained", "not drained", "nothing behind"] | None = None
    """Whether new insulation lies against old masonry or sheathing, and whether water that gets there can leave."""


class Assembly(Worked, AssemblySays):
    """How a wall, roof, floor or ceiling is built."""

    kind: ClassVar[str] = "assembly"
    meaning: ClassVar[str] = "how a wall, roof, floor or ceiling is built, layer by layer"
    trade: ClassVar[str] = "envelope"

    part: AssemblyPart | None = None
    """What it is a part of."""
    layers: Annotated[list[Layer] | None, Holds("assembly")] = None
    """The layers from inside to outside."""
    was: AssemblySays | None = None
    """What the assembly was before the work."""


class SurfaceSays(Says):
    """What can be said of a surface of a room."""

    ORDERED: ClassVar[tuple[tuple[str, str], ...]] = (("top_depth", "bottom_depth"),)

    faces: Literal["outdoors", "ground", "room"] | None = None
    """What lies on the other side."""
    orientation: (
        Literal["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west", "up", "down"]
        | None
    ) = None
    """Where it looks."""
    length: Length | None = None
    """Length on plan, inside."""
    height: Length | None = None
    """Height, or length up the slope."""
    area: Area | None = None
    """Area with its windows and doors."""
    top_depth: Length | None = None
    """Of a wall against soil, depth of its upper edge below grade; 0 at grade."""
    bottom_depth: Length | None = None
    """Of a wall or floor against soil, depth of its lower edge below grade."""
    floor_width: Length | None = None
    """Of a floor against soil, the shorter side of the whole floor."""
    exposed_perimeter: Length | None = None
    """Of a floor on the ground, the length of its edge along outside walls."""
    perimeter_factor: Conductivity | None = None
    """Of a floor on the ground, heat loss for each length of that edge and each degree to the outdoors."""


class Surface(Worked, SurfaceSays):
    """A part of what encloses a room."""

    kind: ClassVar[str] = "surface"
    meaning: ClassVar[str] = "a part of what encloses a room: a wall, ceiling, roof slope or floor"
    trade: ClassVar[str] = "heating"

    room: Annotated[Ident | None, LinkTo("room", inverse="surfaces")] = None
    """The room that it encloses."""
    assembly: Annotated[Ident | None, LinkTo("assembly", inverse="surfaces")] = None
    """How it is built."""
    neighbour: Annotated[Ident | None, LinkTo("room", inverse="bounds", absent_is_none=True)] = None
    """The room on its other side; a surface without this line faces none."""
    windows: Annotated[list[Ident] | None, LinkTo("window", inverse="surface", inverse_to_one=True)] = None
    """Windows in it."""
    doors: Annotated[list[Ident] | None, LinkTo("door", inverse="surface", inverse_to_one=True)] = None
    """Outside doors in it."""
    skylights: Annotated[list[Ident] | None, LinkTo("skylight", inverse="surface", inverse_to_one=True)] = None
    """Skylights in it."""
    was: SurfaceSays | None = None
    """What the surface was before the work."""
