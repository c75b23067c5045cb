"""What brings loads down: bearing lines storey by storey, footings, walls below grade, digging beside them, bracing."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Text, Worked
from checker.plan.fields import (
    Count,
    Depth,
    Force,
    Holds,
    Length,
    LinkTo,
    LumberDepth,
    LumberWidth,
    Named,
    Pressure,
)
from checker.plan.trades.framing import Carries

Soil = Literal[
    "bedrock",
    "sedimentary rock",
    "sandy gravel or gravel",
    "sand or silty sand",
    "clay or silt",
    "organic or fill",
]


class LoadedAreaSays(Says):
    """What can be said of a width of floor or roof that a line carries."""

    tributary_width: Length | None = None
    """Width that the line carries: half the span on each side of it, and overhangs."""
    carries: Carries | None = None
    """What lies on it."""
    dead_load: Pressure | None = None
    """Dead load; without it, by the layers of its assembly, or as the ruleset assumes."""
    live_load: Pressure | None = None
    """Live load, if not that of its use."""
    snow_load: Pressure | None = None
    """Roof snow load, if not by the site's."""


class LoadedArea(Worked, LoadedAreaSays):
    """A width of floor, ceiling or roof that a bearing line carries."""

    kind: ClassVar[str] = "loaded-area"
    meaning: ClassVar[str] = "a width of floor, ceiling or roof that a bearing line carries"
    trade: ClassVar[str] = "framing"

    level: Annotated[Ident | None, LinkTo("level", inverse="loaded_areas", absent_is_none=True)] = None
    """The level whose floor it is."""
    assembly: Annotated[Ident | None, LinkTo("assembly", inverse="loaded_areas", absent_is_none=True)] = None
    """How it is built, for the weight of its layers."""
    roof: Annotated[Ident | None, LinkTo("roof-plane", inverse="loaded_areas", absent_is_none=True)] = None
    """The roof plane that it is part of."""
    was: LoadedAreaSays | None = None
    """What it was before the work."""


class BearingLineSays(Says):
    """What can be said of a bearing line."""

    form: Literal["stud wall", "masonry wall", "foundation wall", "beam", "posts"] | None = None
    """What carries along the line."""
    length: Depth | None = None
    """Length of the line."""
    height: Length | None = None
    """Height of the wall, between what holds it sideways."""
    wall_weight: Pressure | None = None
    """Weight of the wall, of its face; without it, by the layers of its assembly, or as the ruleset assumes."""
    framing: Literal["platform", "balloon", "plank", "post and beam"] | None = None
    """How the wall is framed."""
    stud_size: Annotated[Text | None, Named("lumber size")] = None
    """Nominal size of the studs."""
    stud_width: LumberWidth | None = None
    """Width of the studs as measured."""
    stud_depth: LumberDepth | None = None
    """Depth of the studs as measured."""
    stud_spacing: Depth | None = None
    """Centre to centre of the studs."""
    stud_lumber: Annotated[Text | None, Named("lumber")] = None
    """Species and grade of the studs."""
    top_plates: Count | None = None
    """Number of top plates."""
    plate_offset: Length | None = None
    """How far rafters or joists stand from the studs below them."""
    plate_cut: bool | None = None
    """Whether a pipe or duct cuts more than half of a top plate."""
    plate_tied: bool | None = None
    """Whether a metal tie bridges a cut plate."""
    fire_blocked: bool | None = None
    """Whether stud spaces are blocked at each floor and ceiling."""
    offset_from_below: Length | None = None
    """How far the line stands from the bearing line below it, on plan; 0 unless said."""
    continuous_down: bool | None = None
    """Whether posts and studs are stacked, with blocking through the floor, down to the footing."""
    uplift_path: bool | None = None
    """Whether ties run from the roof down to the foundation."""
    sound: bool | None = None
    """Whether the wall was opened and is without rot or crushed plates."""


class BearingLine(Worked, BearingLineSays):
    """A wall, beam or row of posts that brings loads down."""

    kind: ClassVar[str] = "bearing-line"
    meaning: ClassVar[str] = "a wall, beam or row of posts of one storey that brings loads down"
    trade: ClassVar[str] = "framing"

    level: Annotated[Ident | None, LinkTo("level", inverse="bearing_lines")] = None
    """The level on which it stands."""
    outside: bool | None = None
    """Whether it is in an outside wall."""
    assembly: Annotated[Ident | None, LinkTo("assembly", inverse="bearing_lines", absent_is_none=True)] = None
    """How the wall is built, for the weight of its layers."""
    loads: Annotated[list[LoadedArea] | None, Holds("line")] = None
    """Widths of floor, ceiling and roof that bear on it at its head."""
    stands_on: Annotated[
        Ident | None, LinkTo("bearing-line", inverse="lines_above", loops=False, absent_is_none=True)
    ] = None
    """The bearing line below."""
    stands_on_footing: Annotated[Ident | None, LinkTo("footing", inverse="lines", absent_is_none=True)] = None
    """The footing that it stands on, at the foot of the way down."""
    was: BearingLineSays | None = None
    """What it was before the work."""


class FootingSays(Says):
    """What can be said of a footing."""

    material: Literal["concrete", "stone", "brick", "none found"] | None = None
    """What it is made of."""
    width: Depth | None = None
    """Width across the wall; of a pad, its side."""
    thickness: Depth | None = None
    """Thickness."""
    wall_thickness: Depth | None = None
    """Thickness of the wall or post on it."""
    pad: bool | None = None
    """Whether it is a square pad under a post."""
    depth_below_grade: Length | None = None
    """Bottom of the footing below finished grade."""
    soil: Soil | None = None
    """Soil under it."""
    soil_bearing: Pressure | None = None
    """Allowable bearing of the soil by a test or by the authority; without it, as presumed for the soil."""
    seen: Literal["test pit", "drawings", "guess"] | None = None
    """How width and depth are known."""
    reinforced: bool | None = None
    """Whether it has reinforcement."""
    point_load: Force | None = None
    """Load of a post on a pad, if not that of the members that stand on it."""


class Footing(Worked, FootingSays):
    """A footing."""

    kind: ClassVar[str] = "footing"
    meaning: ClassVar[str] = "a footing under a wall, or a pad under a post"
    trade: ClassVar[str] = "framing"

    posts: Annotated[list[Ident] | None, LinkTo("member", inverse="pads")] = None
    """Posts that stand on a pad."""
    was: FootingSays | None = None
    """What it was before the work."""


class FoundationWallSays(Says):
    """What can be said of a wall below grade."""

    material: Literal["concrete", "concrete block", "stone", "brick", "insulated concrete forms", "wood"] | None = None
    """What it is made of."""
    thickness: Depth | None = None
    """Thickness."""
    height: Depth | None = None
    """Top of footing or slab to the top of the wall."""
    backfill: Length | None = None
    """Height of soil outside over the floor inside."""
    soil: Literal["gravel or sand", "silty or clayey gravel or sand", "clay or silt"] | None = None
    """Soil that is filled against it."""
    reinforced: bool | None = None
    """Whether it is reinforced for the soil."""
    top_held: bool | None = None
    """Whether the floor holds its top before backfill."""
    drain: bool | None = None
    """Whether drain tile or a gravel drain runs at the footing."""
    damp_proofed: bool | None = None
    """Whether its outside is damp-proofed."""
    waterproofed: bool | None = None
    """Whether it is waterproofed."""
    high_water_table: bool | None = None
    """Whether ground water stands high against it."""
    anchor_spacing: Depth | None = None
    """Distance between anchor bolts in the sill."""
    anchor_from_end: Length | None = None
    """Distance from a bolt to the end of each sill."""
    anchor_diameter: Depth | None = None
    """Diameter of the bolts."""
    sill_treated: bool | None = None
    """Whether the sill is treated or naturally durable."""
    above_grade: Length | None = None
    """How far its top stands above the finished grade."""
    grade_fall: Length | None = None
    """Fall of the finished grade within 10 ft of the wall."""
    condition_seen: bool | None = None
    """Whether bulging, cracks and mortar were looked at."""


class FoundationWall(Worked, FoundationWallSays):
    """A wall below grade."""

    kind: ClassVar[str] = "foundation-wall"
    meaning: ClassVar[str] = "a wall of a basement or crawl space with soil against it"
    trade: ClassVar[str] = "framing"

    level: Annotated[Ident | None, LinkTo("level", inverse="foundation_walls")] = None
    """The level that it encloses."""
    line: Annotated[Ident | None, LinkTo("bearing-line", inverse="foundation_walls", absent_is_none=True)] = None
    """The bearing line that it is."""
    was: FoundationWallSays | None = None
    """What it was before the work."""


class DiggingSays(Says):
    """What can be said of digging."""

    below_footing: Length | None = None
    """How far it goes below the bottom of the old footing."""
    distance: Length | None = None
    """From the face of the footing to the foot of the cut."""
    depth: Length | None = None
    """Depth of the cut below the ground beside it."""
    face: Literal["upright", "sloped", "benched", "shored"] | None = None
    """How its sides stand."""
    underpinned: bool | None = None
    """Whether the footing is underpinned."""
    designed_by: Literal["engineer", "builder", "nobody"] | None = None
    """Who designed support and order."""
    pit_length: Depth | None = None
    """Length of footing laid bare at once."""
    order_stated: bool | None = None
    """Whether the plan numbers the pits and says what stands before the next is dug."""
    needled: bool | None = None
    """Whether needles or shores hold the house while the wall below is away."""
    utilities_located: bool | None = None
    """Whether buried pipes and cables were located."""


class Digging(Worked, DiggingSays):
    """Digging beside or below a house that stands."""

    kind: ClassVar[str] = "digging"
    meaning: ClassVar[str] = "digging beside or below a house that stands: to lower a floor, to lay a drain"
    trade: ClassVar[str] = "framing"

    beside: Annotated[Ident | None, LinkTo("footing", inverse="diggings")] = None
    """The footing that it goes along."""
    was: DiggingSays | None = None
    """What it was before the work."""


class BracedLineSays(Says):
    """What can be said of a braced wall line."""

    length: Depth | None = None
    """Length of the line."""
    panels: list[Depth] | None = None
    """Lengths of wall without openings, full height, that brace it, from one end."""
    method: (
        Literal[
            "continuous wood panel",
            "wood panel",
            "let-in bracing",
            "diagonal boards",
            "gypsum board",
            "plaster and lath",
            "portal frame",
            "engineered",
        ]
        | None
    ) = None
    """How the panels brace."""
    line_spacing: Depth | None = None
    """Distance to the next braced wall line on either side, the greater."""
    required_length: Length | None = None
    """Length of bracing that the code's table asks, with its adjustments."""
    first_panel_from_end: Length | None = None
    """From the end of the line to the first panel, at the end where it is more."""
    largest_gap: Length | None = None
    """Greatest distance between panels, edge to edge."""
    storeys_above: Count | None = None
    """Storeys, a habitable attic among them, that stand on this one, without the roof."""
    hold_downs: bool | None = None
    """Whether hold-downs tie the ends of panels to the foundation."""
    panels_over_panels: bool | None = None
    """Whether panels stand over panels or solid wall below."""
    sides_tied: bool | None = None
    """Whether its plates are tied to roof and floor as collectors, with blocking at panel ends."""


class BracedLine(Worked, BracedLineSays):
    """A line of walls of one storey that keeps it from racking."""

    kind: ClassVar[str] = "braced-line"
    meaning: ClassVar[str] = "a line of walls of one storey that keeps it from racking"
    trade: ClassVar[str] = "framing"

    level: Annotated[Ident | None, LinkTo("level", inverse="braced_lines")] = None
    """The storey that it braces."""
    engineered: bool | None = None
    """Whether a design by an engineer takes the place of the table."""
    was: BracedLineSays | None = None
    """What it was before the work."""
