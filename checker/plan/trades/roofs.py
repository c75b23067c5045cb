"""Roofs plane by plane: pitch, ridge and ties, covering and what lies under it, where they meet walls."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Worked
from checker.plan.fields import Count, Depth, Force, Length, LinkTo, Number, Pressure, Slope


class RoofPlaneSays(Says):
    """What can be said of a roof plane."""

    pitch: Slope | None = None
    """Rise over run."""
    run: Depth | None = None
    """Horizontal distance from the outside of the plate to the middle of the ridge."""
    overhang: Length | None = None
    """Horizontal projection of the eave."""
    plate_height: Length | None = None
    """Top of the plate over the finished floor of the storey in the roof."""
    ridge_over_floor: Length | None = None
    """Height wanted of the rafters' top at the ridge over the finished floor of the storey in the roof."""
    ridge_height: Length | None = None
    """Top of the rafters at the ridge over the top of the plate."""
    seat_cut: Length | None = None
    """Length of the birdsmouth's level cut."""
    rafter_depth: Depth | None = None
    """Depth of the rafters, if no member says it."""
    ridge: Literal["beam", "board", "bearing wall", "none"] | None = None
    """What stands at its top: a beam or wall that carries, a board that does not, or nothing."""
    ridge_board_depth: Depth | None = None
    """Depth of the ridge board."""
    thrust_held_by: (
        Literal["ceiling joists", "rafter ties", "raised ties", "ridge", "engineered frame", "nothing"] | None
    ) = None
    """What keeps the feet of the rafters from spreading."""
    tie_height: Length | None = None
    """Height of the ties over the plate."""
    tie_spacing: Depth | None = None
    """Distance between ties."""
    rafter_spacing: Depth | None = None
    """Centre to centre of the rafters."""
    joint_nails: Count | None = None
    """Nails, 16d common, in each joint of rafter and tie."""
    ceiling_joists_parallel: bool | None = None
    """Whether the ceiling joists run with the rafters and are lapped into a tie across the house."""
    collar_ties: bool | None = None
    """Whether collar ties or ridge straps hold the rafters together at the top."""
    collar_tie_spacing: Depth | None = None
    """Distance between collar ties or straps."""
    covering: (
        Literal[
            "asphalt shingles",
            "wood shingles",
            "wood shakes",
            "slate",
            "tile",
            "metal shingles",
            "metal panels, lapped",
            "metal panels, lapped and sealed",
            "standing seam metal",
            "mineral roll roofing",
            "modified bitumen",
            "single-ply membrane",
            "built-up roofing",
            "liquid membrane",
        ]
        | None
    ) = None
    """What sheds the water."""
    underlayment_layers: Count | None = None
    """Layers of underlayment."""
    underlayment: Literal["felt", "synthetic", "self-adhering", "none"] | None = None
    """Kind of underlayment."""
    ice_barrier: Literal["self-adhering", "two felts cemented", "none"] | None = None
    """What keeps water of melting ice out at the eave."""
    ice_barrier_reach: Length | None = None
    """How far it reaches inside the line of the exterior wall, level."""
    ice_dams_known: bool | None = None
    """Whether ice dams are known in the place, or the authority asks for an ice barrier."""
    old_layers: Count | None = None
    """Layers of old roofing that stay under the new one."""
    old_covering_wet: bool | None = None
    """Whether old roofing that stays is wet, decayed, or slate, tile or wood shakes."""
    sheathing: Literal["boards", "spaced boards", "wood panel", "none"] | None = None
    """What the covering lies on."""
    sheathing_thickness: Depth | None = None
    """Thickness of the sheathing."""
    panel_span_rating: Length | None = None
    """Of wood panels, greatest spacing of supports by their stamp for roofs."""
    panel_edges_supported: bool | None = None
    """Whether clips or blocks support the long edges."""
    nail_base: bool | None = None
    """Over foam, whether a panel or strapping into the rafters takes the fasteners of the covering."""
    drip_edge: bool | None = None
    """Whether eaves and rakes have a drip edge."""
    meets_wall: Literal["no", "beside it", "at its top", "both"] | None = None
    """Whether it meets a wall that goes up: beside it, at its upper end."""
    wall_flashing: Literal["step", "continuous", "none"] | None = None
    """Flashing where it meets a wall."""
    kick_out: bool | None = None
    """Whether a kick-out turns water off the wall at the lower end."""
    valley_lined: bool | None = None
    """Whether valleys are lined."""
    cricket: bool | None = None
    """Whether a cricket stands behind each chimney or penetration wider than the code lets pass."""
    chimney_width: Length | None = None
    """Width across the slope of a chimney or penetration."""
    slippery: bool | None = None
    """Whether snow slides off freely: metal or glass without snow guards."""
    wall_above_height: Length | None = None
    """Height of a wall that rises from this roof above its surface."""
    roof_above_length: Depth | None = None
    """Length of the upper roof from which snow drifts onto this one."""
    drift_checked: bool | None = None
    """Whether the rafters under a drift were designed for it."""
    exposure_factor: Number | None = None
    """Exposure factor Ce for snow."""
    thermal_factor: Number | None = None
    """Thermal factor Ct for snow."""
    uplift: Force | None = None
    """Net uplift on each rafter by the table or design."""
    uplift_capacity: Force | None = None
    """Capacity of the tie at each rafter."""
    rafters_tied: Literal["toenails", "ties", "straps to studs", "none"] | None = None
    """How rafters are fastened to the plate."""
    dead_load: Pressure | None = None
    """Dead load of the roof on its slope."""
    open_days: Number | None = None
    """Days for which the roof is to stand open."""
    cover_planned: bool | None = None
    """Whether a cover is planned for the time when the roof is open."""
    ends_held: bool | None = None
    """While the roof opposite is away, whether ridge and rafters are shored, tied and braced."""


class RoofPlane(Worked, RoofPlaneSays):
    """One plane of a roof."""

    kind: ClassVar[str] = "roof-plane"
    meaning: ClassVar[str] = "one plane of a roof: a side of the main roof, of a wing, of a dormer"
    trade: ClassVar[str] = "roof"

    part: Literal["main roof", "wing", "dormer", "porch", "lower roof"] | None = None
    """Which roof it is part of."""
    level: Annotated[Ident | None, LinkTo("level", inverse="roof_planes")] = None
    """The storey or attic under it."""
    opposite: Annotated[Ident | None, LinkTo("roof-plane", inverse="opposed_by", absent_is_none=True)] = None
    """The plane on the other side of the ridge."""
    assembly: Annotated[Ident | None, LinkTo("assembly", inverse="roof_planes", absent_is_none=True)] = None
    """How it is built."""
    ridge_member: Annotated[Ident | None, LinkTo("member", inverse="ridge_of", absent_is_none=True)] = None
    """The beam or board at its ridge."""
    was: RoofPlaneSays | None = None
    """What it was before the work."""
