"""Windows with their wells, doors and skylights."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Says, Text, Worked
from checker.plan.fields import Angle, Area, Holds, Length, Named, Share, UFactor

Glass = Literal["ordinary", "tempered", "laminated", "wired", "leaded or art glass"]


class WindowWellSays(Says):
    """What can be said of a window well."""

    area: Area | None = None
    """Horizontal area of the well."""
    projection: Length | None = None
    """From the wall to the far side of the well."""
    width: Length | None = None
    """Width along the wall."""
    depth: Length | None = None
    """Depth below the ground beside it."""
    ladder_or_steps: bool | None = None
    """Whether a ladder or steps lead out of it."""
    drained: bool | None = None
    """Whether it drains to the foundation drain."""
    cover_opens_from_inside: bool | None = None
    """Whether any cover or grille opens from inside without key, tool or force; true if there is none."""


class WindowWell(Worked, WindowWellSays):
    """A pit outside a window below grade."""

    kind: ClassVar[str] = "window-well"
    meaning: ClassVar[str] = "a pit outside a window whose sill is below grade"
    trade: ClassVar[str] = "openings"

    was: WindowWellSays | None = None
    """What the well was before the work."""


class WindowSays(Says):
    """What can be said of a window."""

    type: Literal[
        "single-hung", "double-hung", "slider", "casement", "awning", "hopper", "tilt-turn", "fixed"
    ] | None = None  # fmt: skip
    """How the window opens."""
    width: Length | None = None
    """Width of the unit."""
    height: Length | None = None
    """Height of the unit."""
    frame_deduction: Length | None = None
    """What the frame takes from the width, and from the height, of the unit, both sides together; by the maker."""
    sash_deduction: Length | None = None
    """What the open sash, its rails and stops leave standing in the opening, by the maker's data."""
    hinge_throw: Length | None = None
    """Widest opening that the hinges of a casement allow, if they limit it."""
    opening_angle: Angle | None = None
    """Angle to which an awning or hopper sash opens."""
    clear_width: Length | None = None
    """Net clear width when fully open, by the maker's data."""
    clear_height: Length | None = None
    """Net clear height when fully open, by the maker's data."""
    clear_area: Area | None = None
    """Net clear area when fully open."""
    glazed_area: Area | None = None
    """Area of glass."""
    openable_area: Area | None = None
    """Area that opens to the outdoors."""
    sill_height: Length | None = None
    """Finished floor to the bottom of the clear opening."""
    drop_outside: Length | None = None
    """Bottom of the clear opening to the ground or surface below, outside."""
    sill_at_grade: bool | None = None
    """Whether it is a grade-floor opening: the bottom of the clear opening at most 44 in above or below the ground."""
    opens_without_key: bool | None = None
    """Whether it opens from inside without key, tool or special knowledge."""
    opens_to: Literal[
        "yard or street", "court", "porch roof", "under a deck", "another room", "light well"
    ] | None = None  # fmt: skip
    """Where a person who climbs out arrives."""
    under_deck_clearance: Length | None = None
    """Height of the way out below a deck or porch over the opening."""
    largest_standard_size: bool | None = None
    """Whether a replacement is the maker's largest standard size that fits, of the same or a better type."""
    fall_protection: Literal["none", "opening limiter", "guard", "fixed lower part"] | None = None
    """What keeps a child from falling out."""
    glass: Glass | None = None
    """Kind of glass."""
    pane_area: Area | None = None
    """Area of the largest single pane."""
    pane_bottom: Length | None = None
    """Walking surface inside to the bottom edge of that pane."""
    pane_top: Length | None = None
    """Walking surface inside to the top edge of that pane."""
    walking_surface_distance: Length | None = None
    """Horizontal distance from the glass to the nearest walking surface."""
    stands_clear: bool | None = None
    """Whether no door, stair, landing, tub, shower, sauna or pool is within 6 ft of the glass; it settles the rest."""
    door_distance: Length | None = None
    """Least distance from the glass to the edge of a door that it stands beside, door closed; or it stands clear."""
    tub_distance: Length | None = None
    """Horizontal distance from the glass to the water's edge of a tub, shower, sauna or pool; or it stands clear."""
    beside_stair: bool | None = None
    """Whether the glass is beside a flight or a landing, within 36 in of the walking surface."""
    bottom_of_stair_distance: Length | None = None
    """Horizontal distance from the glass to the bottom tread of a stair that leads toward it; or it stands clear."""
    in_wet_room: bool | None = None
    """Whether it is in a wall that encloses a tub or shower."""
    u_factor: UFactor | None = None
    """Heat transmittance of the whole window, frame included,, by its label or the maker's data."""
    archetype: Annotated[Text | None, Named("archetype")] = None
    """Without a label, what it looks like, by its name in the ruleset's archetypes."""
    solar_gain: Share | None = None
    """Part of the sun's heat that comes through, by its label."""
    only_glass_replaced: bool | None = None
    """Whether only glass or sash is replaced and the frame stays."""
    sill_pan: bool | None = None
    """Whether a pan, sloped out or with a back dam, lies under the sill and drains outside."""
    flashing_order: Literal["shingle fashion", "reverse lapped", "not flashed"] | None = None
    """How sill, jamb and head flashings and the water barrier overlap."""
    head_flashed: bool | None = None
    """Whether the head flashing laps under the water barrier above."""
    drains_to_gap: bool | None = None
    """Whether water that gets past the window drains into an open gap or onto the face of the water barrier."""
    jamb_depth: Length | None = None
    """Depth of the frame with its extensions, inside face to outside face."""
    sealed_to_air_barrier: bool | None = None
    """Whether the frame is sealed to the wall's air barrier."""


class Window(Worked, WindowSays):
    """A window."""

    kind: ClassVar[str] = "window"
    meaning: ClassVar[str] = "a window"
    trade: ClassVar[str] = "openings"

    wells: Annotated[list[WindowWell] | None, Holds("window")] = None
    """The window well, if its sill is below grade."""
    was: WindowSays | None = None
    """What the window was before the work."""


class DoorSays(Says):
    """What can be said of a door."""

    exit_door: bool | None = None
    """Whether it is the door by which the house is left: it leads straight outdoors, side-hinged."""
    side_hinged: bool | None = None
    """Whether it swings on side hinges."""
    clear_width: Length | None = None
    """Clear width between the face of the door opened 90 degrees and the stop."""
    clear_height: Length | None = None
    """Clear height from the threshold to the stop."""
    opens_without_key: bool | None = None
    """Whether it opens from inside without key or special knowledge."""
    leads_to: Literal["outdoors", "room", "garage", "stair"] | None = None
    """What lies behind it."""
    swings_over_stair: bool | None = None
    """Whether the leaf swings over steps."""
    glass: Glass | None = None
    """Kind of glass in the door, if it has any."""
    glazed: bool | None = None
    """Whether there is glass in the door."""
    glazed_area: Area | None = None
    """Area of glass."""
    openable_area: Area | None = None
    """Area that opens to the outdoors."""
    self_closing: bool | None = None
    """Whether it closes itself."""
    solid_thickness: Length | None = None
    """Thickness of a solid wood or steel leaf."""
    fire_rated: bool | None = None
    """Whether the door is rated for 20 minutes or more."""
    width: Length | None = None
    """Width of the unit."""
    height: Length | None = None
    """Height of the unit."""
    u_factor: UFactor | None = None
    """Heat transmittance of the whole door, frame included,, by its label or the maker's data."""
    archetype: Annotated[Text | None, Named("archetype")] = None
    """Without a label, what it looks like, by its name in the ruleset's archetypes."""


class Door(Worked, DoorSays):
    """A door."""

    kind: ClassVar[str] = "door"
    meaning: ClassVar[str] = "a door"
    trade: ClassVar[str] = "openings"

    was: DoorSays | None = None
    """What the door was before the work."""


class SkylightSays(Says):
    """What can be said of a skylight."""

    glazed_area: Area | None = None
    """Area of glass."""
    openable_area: Area | None = None
    """Area that opens to the outdoors."""
    glass: Glass | None = None
    """Kind of glass of the lowest pane."""
    screen_below: bool | None = None
    """Whether a screen hangs below the glass."""
    height_above_floor: Length | None = None
    """Height of the glass above the floor."""
    area: Area | None = None
    """Area of the whole unit in the roof."""
    u_factor: UFactor | None = None
    """Heat transmittance of the whole skylight, frame included,, by its label or the maker's data."""
    archetype: Annotated[Text | None, Named("archetype")] = None
    """Without a label, what it looks like, by its name in the ruleset's archetypes."""


class Skylight(Worked, SkylightSays):
    """A skylight or roof window."""

    kind: ClassVar[str] = "skylight"
    meaning: ClassVar[str] = "a skylight or roof window"
    trade: ClassVar[str] = "openings"

    was: SkylightSays | None = None
    """What the skylight was before the work."""
