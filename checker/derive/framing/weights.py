"""Loads of what is built and used: weights of layers, dead, live and snow loads of areas."""

from __future__ import annotations

from collections.abc import Mapping

from checker.calc.loads import gravity, take_down, weights
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

ROOFS = frozenset({"roof", "roof and ceiling"})
LIVE_BY_USE: Mapping[str, str] = {
    "rooms": "live_rooms_pa",
    "sleeping rooms": "live_sleeping_pa",
    "attic without storage": "live_attic_pa",
    "ceiling only": "live_attic_pa",
    "attic with storage": "live_storage_pa",
    "habitable attic": "live_habitable_pa",
    "stairs": "live_stairs_pa",
    "deck": "live_deck_pa",
}
LIVE_ASSUMED = {
    "live_rooms_pa": "assumed:live_load_rooms?",
    "live_sleeping_pa": "assumed:live_load_sleeping_rooms?",
    "live_attic_pa": "assumed:live_load_attic?",
    "live_storage_pa": "assumed:live_load_attic_storage?",
    "live_habitable_pa": "assumed:live_load_habitable_attic?",
    "live_stairs_pa": "assumed:live_load_stairs?",
    "live_deck_pa": "assumed:live_load_deck?",
}
_DEAD_BY_USE: Mapping[str, tuple[str, ...]] = {
    "rooms": ("dead_floor_pa",),
    "sleeping rooms": ("dead_floor_pa",),
    "habitable attic": ("dead_floor_pa",),
    "stairs": ("dead_floor_pa",),
    "deck": ("dead_floor_pa",),
    "attic with storage": ("dead_floor_pa",),
    "attic without storage": ("dead_ceiling_pa",),
    "ceiling only": ("dead_ceiling_pa",),
    "roof": ("dead_roof_pa",),
    "roof and ceiling": ("dead_roof_pa", "dead_ceiling_pa"),
}
_DEAD_ASSUMED = {
    "dead_floor_pa": "assumed:dead_load_floor?",
    "dead_ceiling_pa": "assumed:dead_load_ceiling?",
    "dead_roof_pa": "assumed:dead_load_roof?",
    "dead_extra_pa": "assumed:dead_load_extra?",
}


@derives(
    "layer.dead_load",
    Dimension.PRESSURE,
    "weight of the layer over its area",
    by=gravity.layer_load,
    needs={
        "sort": "sort?",
        "thickness_m": "thickness?",
        "share_ratio": "framing_share?",
        "framed": "framed",
        "density_kg_m3": "named:material.density?",
        "weight_pa": "named:material.weight?",
        "fill_density_kg_m3": "named:fill.density?",
        "fill_weight_pa": "named:fill.weight?",
        "member_density_kg_m3": "named:member_material.density?",
    },
)
def _layer_load(
    sort: str | None,
    thickness_m: float | None,
    share_ratio: float | None,
    framed: bool,
    density_kg_m3: float | None,
    weight_pa: float | None,
    fill_density_kg_m3: float | None,
    fill_weight_pa: float | None,
    member_density_kg_m3: float | None,
) -> float | Lacks | Using:
    if not framed:
        if weight_pa is not None:
            return using(weight_pa, "weight_pa")
        if sort in ("air space", "vented air space"):
            return using(0.0, "sort")
        if density_kg_m3 is None:
            return lacks("density_kg_m3")
        if thickness_m is None:
            return lacks("thickness_m")
        return using(gravity.layer_load(thickness_m, density_kg_m3), "thickness_m", "density_kg_m3")
    if thickness_m is None or share_ratio is None or member_density_kg_m3 is None:
        known = {"thickness_m": thickness_m, "share_ratio": share_ratio, "member_density_kg_m3": member_density_kg_m3}
        return lacks(*(name for name, value in known.items() if value is None))
    members_pa = gravity.layer_load(thickness_m, member_density_kg_m3) * share_ratio
    if sort in ("air space", "vented air space"):
        return using(members_pa, "thickness_m", "share_ratio", "member_density_kg_m3", "sort")
    if fill_weight_pa is not None:
        fill_pa = fill_weight_pa
    elif fill_density_kg_m3 is not None:
        fill_pa = gravity.layer_load(thickness_m, fill_density_kg_m3)
    else:
        return lacks("fill_density_kg_m3")
    return members_pa + fill_pa * (1.0 - share_ratio)


@derives(
    "assembly.dead_load",
    Dimension.PRESSURE,
    "weight of its layers over its own area, along the slope of a roof",
    by=sum,
    needs={"loads_pa": "layers[].dead_load"},
)
def _assembly_load(loads_pa: list[float]) -> float | None:
    return sum(loads_pa) if loads_pa else None


def dead_needs(own: str = "dead_load?") -> dict[str, str]:
    """The needs of `dead_pressure` for an element that carries something."""
    return {
        "own_pa": own,
        "carries": "carries?",
        "layers_pa": "assembly.dead_load?",
        "pitch_ratio": "roof.pitch?",
        "roof_dead_pa": "roof.dead_load?",
        **_DEAD_ASSUMED,
    }


def dead_pressure(
    own_pa: float | None,
    carries: str | None,
    layers_pa: float | None,
    pitch_ratio: float | None,
    roof_dead_pa: float | None,
    ceiling: str | None = None,
    plaster_pa: float | None = None,
    **assumed_pa: float | None,
) -> float | Lacks | Using:
    """Dead load over the level area: as stated, of the roof plane, by its layers, or as assumed for its use."""
    if own_pa is not None:
        return using(own_pa, "own_pa")
    if carries is None:
        return lacks("carries")
    sloped_pa = (roof_dead_pa if carries in ROOFS else None) if layers_pa is None else layers_pa
    if sloped_pa is not None:
        if layers_pa is not None:
            sloped_pa += assumed_pa["dead_extra_pa"] or 0.0
        used = ("layers_pa", "dead_extra_pa") if layers_pa is not None else ("roof_dead_pa",)
        if carries not in ROOFS:
            return using(sloped_pa, *used, "carries")
        if pitch_ratio is None:
            return lacks("pitch_ratio")
        if layers_pa is None and carries == "roof and ceiling":
            level_pa = weights.load_on_plan(sloped_pa, pitch_ratio) + (assumed_pa["dead_ceiling_pa"] or 0.0)
            return using(level_pa, *used, "carries", "pitch_ratio", "dead_ceiling_pa")
        return using(weights.load_on_plan(sloped_pa, pitch_ratio), *used, "carries", "pitch_ratio")
    taken = _DEAD_BY_USE[carries]
    parts_pa = [value for name in taken if (value := assumed_pa[name]) is not None]
    if len(parts_pa) < len(taken):
        return lacks()
    if ceiling == "plaster" and carries != "roof":
        return using(sum(parts_pa) + (plaster_pa or 0.0), "carries", "ceiling", "plaster_pa", *taken)
    return using(sum(parts_pa), "carries", *taken)


def live_pressure(own_pa: float | None, carries: str | None, **assumed_pa: float | None) -> float | Lacks | Using:
    """Live load of floors, ceilings and attics: as stated, or as the ruleset has it for the use; 0 of a roof."""
    if own_pa is not None:
        return using(own_pa, "own_pa")
    if carries is None:
        return lacks("carries")
    name = LIVE_BY_USE.get(carries)
    if name is None:
        return using(0.0, "carries")
    value_pa = assumed_pa[name]
    return lacks() if value_pa is None else using(value_pa, "carries", name)


def snow_pressure(
    carries: str | None, plane_pa: float | None, site_pa: float | None, own_pa: float | None = None
) -> float | Lacks | Using:
    """Roof snow load over the level area: as stated, of the roof plane, or of the site; 0 of what is not a roof."""
    if own_pa is not None:
        return using(own_pa, "own_pa")
    if carries is None:
        return lacks("carries")
    if carries not in ROOFS:
        return using(0.0, "carries")
    if plane_pa is not None:
        return using(plane_pa, "carries", "plane_pa")
    return lacks("site_pa") if site_pa is None else using(site_pa, "carries", "site_pa")


def roof_live_pressure(carries: str | None, roof_live_pa: float | None) -> float | Lacks | Using:
    """Roof live load over the level area, 0 of what is not a roof and where the code has none."""
    if carries is None:
        return lacks("carries")
    if carries not in ROOFS or roof_live_pa is None:
        return using(0.0, "carries")
    return using(roof_live_pa, "carries", "roof_live_pa")


def _pressures(kind: str, dead: Mapping[str, str], snow: Mapping[str, str]) -> None:
    """The loads over the level area of an element that carries something; its further needs of dead load and snow."""

    @derives(
        f"{kind}.dead_pressure",
        Dimension.PRESSURE,
        "dead load over the level area that it carries",
        by=weights.load_on_plan,
        needs={**dead_needs(), **dead},
    )
    def of_dead(**needs: object) -> float | Lacks | Using:
        return dead_pressure(**needs)  # type: ignore[arg-type]

    @derives(
        f"{kind}.live_pressure",
        Dimension.PRESSURE,
        "live load of floors, ceilings and attics that it carries",
        by=float,
        needs={"own_pa": "live_load?", "carries": "carries?", **LIVE_ASSUMED},
    )
    def of_live(**needs: object) -> float | Lacks | Using:
        return live_pressure(**needs)  # type: ignore[arg-type]

    @derives(
        f"{kind}.snow_pressure",
        Dimension.PRESSURE,
        "roof snow load that it carries, over the level area",
        by=float,
        needs={"carries": "carries?", "plane_pa": "roof.snow_load?", "site_pa": "site.roof_snow_load?", **snow},
    )
    def of_snow(**needs: object) -> float | Lacks | Using:
        return snow_pressure(**needs)  # type: ignore[arg-type]

    @derives(
        f"{kind}.roof_live_pressure",
        Dimension.PRESSURE,
        "roof live load that it carries, over the level area",
        by=float,
        needs={"carries": "carries?", "roof_live_pa": "assumed:roof_live_load?"},
    )
    def of_roof_live(carries: str | None, roof_live_pa: float | None) -> float | Lacks | Using:
        return roof_live_pressure(carries, roof_live_pa)


_pressures("member", {"ceiling": "ceiling_below?", "plaster_pa": "assumed:dead_load_plaster?"}, {})
_pressures("loaded-area", {}, {"own_pa": "snow_load?"})


def load_added(kind: str, attribute: str) -> None:
    """Declare by which part a load of a kind grows."""

    @derives(
        f"{kind}.load_added",
        Dimension.FRACTION,
        "part by which its load grows",
        by=take_down.share_added,
        needs={"after_n_m": attribute, "before_n_m": f"was.{attribute}"},
    )
    def added(after_n_m: float, before_n_m: float) -> float | None:
        return take_down.share_added(before_n_m, after_n_m) if before_n_m > 0.0 else None


def service_load(kind: str, attribute: str, meaning: str) -> None:
    """Declare the greatest line load of a kind that acts together, from its loads by kind, and how it grows."""

    @derives(
        f"{kind}.service_load",
        Dimension.LINE_LOAD,
        meaning,
        by=gravity.service_load,
        needs={
            "dead_n_m": attribute.format("dead"),
            "live_n_m": attribute.format("live"),
            "snow_n_m": attribute.format("snow"),
            "roof_live_n_m": attribute.format("roof_live"),
            "companion_ratio": "assumed:companion_share",
        },
    )
    def service(
        dead_n_m: float, live_n_m: float, snow_n_m: float, roof_live_n_m: float, companion_ratio: float
    ) -> float:
        return gravity.service_load(dead_n_m, live_n_m, max(snow_n_m, roof_live_n_m), companion_ratio)

    load_added(kind, "service_load")
