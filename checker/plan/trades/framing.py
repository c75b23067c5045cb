"""Members of the frame, their holes and notches, openings in floors and roofs, heavy things, supports for a time."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Text, Worked
from checker.plan.fields import (
    Area,
    Count,
    CountFromOne,
    Depth,
    Force,
    Holds,
    Length,
    LineLoad,
    LinkTo,
    LumberDepth,
    LumberWidth,
    Mass,
    Moment,
    Named,
    Pressure,
    Span,
    Stress,
    Volume,
)

Carries = Literal[
    "rooms",
    "sleeping rooms",
    "attic without storage",
    "attic with storage",
    "habitable attic",
    "stairs",
    "deck",
    "roof",
    "roof and ceiling",
    "ceiling only",
]
"""What lies on a floor, ceiling or roof: it sets the live load."""


class CutSays(Says):
    """What can be said of a hole or a notch."""

    form: Literal["hole", "notch", "end notch"] | None = None
    """Hole bored through, notch in an edge, or notch at the end over the bearing."""
    depth: Depth | None = None
    """Diameter of the hole, or depth of the notch."""
    length: Depth | None = None
    """Length of the notch along the member."""
    face: Literal["top", "bottom"] | None = None
    """Edge that a notch is cut into."""
    from_support: Length | None = None
    """From the face of the nearer support to the middle of the cut."""
    to_edge: Length | None = None
    """From a hole to the nearer edge of the member."""
    to_next: Length | None = None
    """From a hole to the next hole or notch; a long way if there is none."""
    maker_allows: bool | None = None
    """In an engineered member, whether the maker's hole table allows it at this place and size."""


class Cut(Worked, CutSays):
    """A hole or a notch in a member."""

    kind: ClassVar[str] = "cut"
    meaning: ClassVar[str] = "a hole or a notch in a member of the frame"
    trade: ClassVar[str] = "framing"

    made_for: Literal["plumbing", "heating", "electrical", "framing", "old work"] | None = None
    """The trade that cuts."""
    was: CutSays | None = None
    """What the cut was before the work."""


class MemberSays(Says):
    """What can be said of a member, or of a set of like members."""

    EXCLUDE: ClassVar[tuple[tuple[str, str], ...]] = (("size", "depth"), ("size", "width"))

    product: Literal[
        "sawn lumber", "I-joist", "laminated veneer lumber", "glued laminated timber", "truss", "steel"
    ] | None = None  # fmt: skip
    """What it is made of; a member with a lumber size or a grade is sawn lumber."""
    size: Annotated[Text | None, Named("lumber size")] = None
    """Nominal size of one ply by its name, as 2x10 or 38x235."""
    width: LumberWidth | None = None
    """Width of one ply as measured: the size of old and of engineered members."""
    depth: LumberDepth | None = None
    """Depth as measured."""
    plies: CountFromOne | None = None
    """Number of plies side by side; 1 unless said."""
    lumber: Annotated[Text | None, Named("lumber")] = None
    """Species and grade by their name in the ruleset, as spruce-pine-fir no. 2."""
    graded: Literal["stamp", "certificate", "engineer", "not graded"] | None = None
    """How the grade is known."""
    sound: bool | None = None
    """Whether the member was looked at from end to end and has no rot, insects, splits or long cuts."""
    spacing: Depth | None = None
    """Centre to centre of like members."""
    span: Span | None = None
    """Clear span between supports; of rafters, its horizontal projection; of posts and studs, their height."""
    spans: CountFromOne | None = None
    """Number of spans in a row that it runs over, each as long as `span`; 1 unless said."""
    overhang: Length | None = None
    """Length beyond the last support, on plan; none unless said."""
    overhang_carries: Literal["nothing", "wall and roof", "balcony", "floor above"] | None = None
    """What stands on or beyond the overhang."""
    load_bearing: bool | None = None
    """Of studs, whether they carry more than their own wall."""
    bearing_length: Length | None = None
    """Length of the member that lies on its support, at its shorter end."""
    bearing_on: Literal["wood", "metal", "masonry", "concrete", "hanger", "let-in board"] | None = None
    """What it bears on."""
    tributary_width: Length | None = None
    """Of a beam or header, width of floor or roof that it carries; like members carry their spacing."""
    carries: Carries | None = None
    """What lies on it."""
    ceiling_below: Literal["none", "plaster", "gypsum board", "other boards"] | None = None
    """Ceiling fixed to it or to what it carries."""
    dead_load: Pressure | None = None
    """Dead load of what it carries; without it, by the layers of its assembly, or as the ruleset assumes."""
    live_load: Pressure | None = None
    """Live load of what it carries, if not that of its use."""
    line_dead_load: LineLoad | None = None
    """Further dead load along it, as of a wall that stands on it."""
    line_live_load: LineLoad | None = None
    """Further live load along it."""
    line_snow_load: LineLoad | None = None
    """Further snow load along it."""
    edge_held: bool | None = None
    """Whether decking or sheathing holds its compression edge all along; without a word: of joists yes, of beams no."""
    wet: bool | None = None
    """Whether it gets wet in service, as on a deck or over a damp crawl space."""
    unbraced_length: Depth | None = None
    """Distance between places at which its compression edge is held."""
    end_restraint: Literal["rim or blocking", "hangers", "none"] | None = None
    """What keeps its ends from rolling over."""
    bridging_spacing: Depth | None = None
    """Distance between lines of bridging, and from bridging to support."""
    strapped: bool | None = None
    """Whether strapping or a ceiling ties the bottom edges of the joists."""
    partition_on_it: Literal["none", "bearing", "not bearing"] | None = None
    """Kind of wall that runs along it and stands on it."""
    offset_of_wall: Length | None = None
    """Where a bearing wall crosses it, how far that wall stands from its support; 0 unless said."""
    maker_sheet: bool | None = None
    """Whether the maker's table or a design sheet for this member comes with the plan."""
    moment_capacity: Moment | None = None
    """Moment that the maker states, one ply."""
    shear_capacity: Force | None = None
    """Shear that the maker states, one ply."""
    elastic_modulus: Stress | None = None
    """Modulus of elasticity that the maker states."""
    squash_blocks: bool | None = None
    """Whether squash blocks or blocking panels carry walls above over I-joists."""
    bearing_even: bool | None = None
    """Whether the plates or pockets that it lands on are level and whole, or are made so."""
    jack_studs: Count | None = None
    """Jack studs under each end of a header."""
    king_studs: Count | None = None
    """Full-height studs at each end of a header."""
    building_width: Depth | None = None
    """Of a header in an outside wall, width of the building across the rafters."""
    axial_load: Force | None = None
    """Load down a post, if not that of the beams it holds up."""
    base_fixed: bool | None = None
    """Whether a post is held at its foot and head against moving sideways."""
    on_pad: bool | None = None
    """Whether a post stands on a footing or on framing that carries it down to one."""
    tail_depth: Length | None = None
    """Depth left of a rafter where its tail is cut."""
    connection: Literal["nailed", "hanger", "strap", "bolted", "none"] | None = None
    """How its ends are joined to what holds them."""


class Member(Worked, MemberSays):
    """A member of the frame, or a set of like members."""

    kind: ClassVar[str] = "member"
    meaning: ClassVar[str] = "a member of the frame, or a set of like ones: joists, rafters, a beam, a header, a post"
    trade: ClassVar[str] = "framing"

    role: (
        Literal[
            "floor joist",
            "ceiling joist",
            "rafter",
            "beam",
            "header",
            "ridge beam",
            "ridge board",
            "hip or valley",
            "post",
            "stud",
            "trimmer",
            "deck joist",
        ]
        | None
    ) = None
    """What it does in the frame."""
    level: Annotated[Ident | None, LinkTo("level", inverse="members")] = None
    """The level whose floor, ceiling or walls it belongs to."""
    assembly: Annotated[Ident | None, LinkTo("assembly", inverse="members", absent_is_none=True)] = None
    """The floor, ceiling or roof that it carries, for the weight of its layers."""
    roof: Annotated[Ident | None, LinkTo("roof-plane", inverse="members", absent_is_none=True)] = None
    """The roof plane that a rafter, ridge, hip or valley belongs to."""
    bears_on: Annotated[list[Ident] | None, LinkTo("bearing-line", inverse="members_on")] = None
    """The bearing lines that hold it up."""
    carries_line: Annotated[Ident | None, LinkTo("bearing-line", inverse="carried_by", absent_is_none=True)] = None
    """Of a beam or header, the bearing line it carries over an opening; what else lies on it is its tributary width."""
    held_by: Annotated[list[Ident] | None, LinkTo("member", inverse="holds_up", loops=False, absent_is_none=True)] = (
        None
    )
    """The beams, headers, trimmers or posts that hold it up."""
    cuts: Annotated[list[Cut] | None, Holds("member")] = None
    """Holes and notches in it; [] says none."""
    was: MemberSays | None = None
    """What it was before the work."""


class FramedOpeningSays(Says):
    """What can be said of an opening in framing."""

    header_length: Depth | None = None
    """Length of the header between trimmers."""
    header_plies: CountFromOne | None = None
    """Members side by side in the header."""
    trimmer_plies: CountFromOne | None = None
    """Members side by side in each trimmer."""
    header_to_bearing: Length | None = None
    """From the header to the nearer bearing of the trimmers."""
    header_on_hangers: bool | None = None
    """Whether hangers or a beam hold the ends of the header."""
    tail_length: Length | None = None
    """Length of the longest joist cut off by the opening."""
    tails_on_hangers: bool | None = None
    """Whether hangers or a ledger hold the cut joists."""
    chimney_clearance: Length | None = None
    """Clear space between framing and masonry of a chimney."""
    infill_hung: bool | None = None
    """Of an opening that is closed up, whether its new joists hang from sound trimmers and bear in full."""
    framing_shown: bool | None = None
    """Whether the drawings show header, trimmers and hangers."""


class FramedOpening(Worked, FramedOpeningSays):
    """An opening cut in a floor, a ceiling or a roof."""

    kind: ClassVar[str] = "framed-opening"
    meaning: ClassVar[str] = "an opening framed in a floor, a ceiling or a roof: for a stair, a chimney, a dormer"
    trade: ClassVar[str] = "framing"

    through: Literal["floor", "ceiling", "roof"] | None = None
    """What it is cut in."""
    serves: Literal["stair", "chimney", "dormer", "skylight", "hatch", "shaft"] | None = None
    """What it is for."""
    level: Annotated[Ident | None, LinkTo("level", inverse="framed_openings")] = None
    """The level whose floor, or whose ceiling, it is cut in."""
    header: Annotated[Ident | None, LinkTo("member", inverse="heads_opening")] = None
    """The member that is its header."""
    trimmers: Annotated[list[Ident] | None, LinkTo("member", inverse="trims_openings")] = None
    """The members that are its trimmers."""
    stair: Annotated[Ident | None, LinkTo("stair", inverse="framed_openings", absent_is_none=True)] = None
    """The stair that comes up through it."""
    was: FramedOpeningSays | None = None
    """What it was before the work."""


class HeavyThingSays(Says):
    """What can be said of a heavy thing."""

    empty_weight: Mass | None = None
    """Weight of the thing itself."""
    water: Volume | None = None
    """Water that it holds when full; 0 is written by leaving it out and saying `holds_water: false`."""
    holds_water: bool | None = None
    """Whether it is filled with water in use."""
    people: Count | None = None
    """People in it or on it at once."""
    footprint: Area | None = None
    """Floor that it covers."""
    joists_under: CountFromOne | None = None
    """Joists that share it."""
    from_support: Length | None = None
    """From its middle to the nearer support of the joists."""
    along_joists: bool | None = None
    """Whether its long side lies along the joists."""
    way_in_checked: bool | None = None
    """Whether stairs, floors and openings on its way in are known to be wide and strong enough."""


class HeavyThing(Worked, HeavyThingSays):
    """Something heavy that stands on a floor."""

    kind: ClassVar[str] = "heavy-thing"
    meaning: ClassVar[str] = "something heavy on a floor: a filled tub, a stove, a safe, a water tank, stone"
    trade: ClassVar[str] = "framing"

    sort: Literal["tub", "hot tub", "chimney", "stone", "tank", "stove", "piano", "other"] | None = None
    """What it is."""
    room: Annotated[Ident | None, LinkTo("room", inverse="heavy_things")] = None
    """The room that it stands in."""
    joists: Annotated[Ident | None, LinkTo("member", inverse="heavy_things", absent_is_none=True)] = None
    """The joists that it stands on."""
    was: HeavyThingSays | None = None
    """What it was before the work."""


class Shoring(Worked):
    """A support for a time."""

    kind: ClassVar[str] = "shoring"
    meaning: ClassVar[str] = "a support for a time: shores, needles, a braced ridge, a cover over an open roof"
    trade: ClassVar[str] = "framing"

    form: Literal["shores", "needles", "ridge shores", "bracing", "roof over the roof", "tarpaulin"] | None = None
    """What it is."""
    lines: Annotated[list[Ident] | None, LinkTo("bearing-line", inverse="shoring")] = None
    """The bearing lines whose load it takes."""
    roofs: Annotated[list[Ident] | None, LinkTo("roof-plane", inverse="shoring")] = None
    """The roof planes that it holds or covers."""
    in_place: Literal["before the support goes", "after the support goes"] | None = None
    """When it stands."""
    stands_on: Literal["footing or slab", "floor with posts below", "floor only", "soil"] | None = None
    """What it brings the load to."""
    designed_by: Literal["engineer", "builder", "nobody"] | None = None
    """Who sized it."""
    load: Force | None = None
    """Load that it is made for."""
    removal_stated: bool | None = None
    """Whether the plan says when it may go."""
    level: Annotated[Ident | None, LinkTo("level", inverse="shoring")] = None
    """The level that it stands on."""
    number: CountFromOne | None = None
    """How many shores."""
