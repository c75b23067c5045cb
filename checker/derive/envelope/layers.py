"""Facts of single layers: what they are made of, how they resist heat and vapour."""

from __future__ import annotations

from typing import get_args

from checker.calc.thermal import assembly, moisture
from checker.derive.registry import Lacks, derives, lacks
from checker.ruleset.catalogue import Sort
from checker.units import Dimension

SORTS = get_args(Sort)
INSULATING = frozenset(
    {
        "batt insulation",
        "loose insulation",
        "insulation board",
        "rigid foam",
        "closed-cell spray foam",
        "open-cell spray foam",
    }
)
FOAMS = frozenset({"rigid foam", "closed-cell spray foam", "open-cell spray foam"})
SAME_PRODUCT = 0.03
"""How far, as a share, a thickness may lie from that of the product whose resistance the table gives."""


@derives(
    "layer.framed",
    "flag",
    "whether members interrupt the layer: it has a fill, and not a material",
    by=bool,
    needs={"material": "material?", "fill": "fill?"},
)
def _framed(material: str | None, fill: str | None) -> bool | Lacks:
    if material is None and fill is None:
        return lacks("material")
    return fill is not None


@derives(
    "layer.sort",
    SORTS,
    "sort of material, or of what lies between the members",
    by=str,
    needs={"of_material": "named:material.sort?", "of_fill": "named:fill.sort?"},
)
def _sort(of_material: str | None, of_fill: str | None) -> str | Lacks:
    return of_material or of_fill or lacks("of_material")


@derives(
    "layer.insulates",
    "flag",
    "whether it is an insulation",
    by=bool,
    needs={"sort": "sort"},
)
def _insulates(sort: str) -> bool:
    return sort in INSULATING


@derives("layer.foam", "flag", "whether it is foam plastic", by=bool, needs={"sort": "sort"})
def _foam(sort: str) -> bool:
    return sort in FOAMS


@derives(
    "layer.thickness",
    Dimension.LENGTH,
    "thickness of the product that the table of materials gives",
    by=float,
    needs={"of_material": "named:material.thickness?", "of_fill": "named:fill.thickness?"},
    agrees_within=1.0,
)
def _thickness(of_material: float | None, of_fill: float | None) -> float | Lacks:
    found = of_material if of_material is not None else of_fill
    return lacks("of_material") if found is None else found


@derives(
    "layer.resistance",
    Dimension.THERMAL_RESISTANCE,
    "resistance of the material, or of what lies between the members",
    by=assembly.layer_resistance,
    needs={
        "sort": "sort?",
        "thickness_m": "thickness?",
        "conductivity": "named:material.conductivity?",
        "product": "named:material.resistance?",
        "product_thickness": "named:material.thickness?",
        "fill_conductivity": "named:fill.conductivity?",
        "fill_product": "named:fill.resistance?",
        "fill_product_thickness": "named:fill.thickness?",
    },
    agrees_within=0.5,
)
def _resistance(
    sort: str | None,
    thickness_m: float | None,
    conductivity: float | None,
    product: float | None,
    product_thickness: float | None,
    fill_conductivity: float | None,
    fill_product: float | None,
    fill_product_thickness: float | None,
) -> float | Lacks:
    if sort is None:
        return lacks("sort")
    conductivity = conductivity if conductivity is not None else fill_conductivity
    product = product if product is not None else fill_product
    of = product_thickness if product_thickness is not None else fill_product_thickness
    if product is not None:
        other = thickness_m is not None and of is not None and abs(thickness_m - of) > SAME_PRODUCT * of
        return lacks() if other else product
    if sort in ("membrane", "coating") and conductivity is None:
        return 0.0
    if thickness_m is None:
        return lacks("thickness_m")
    return lacks() if conductivity is None else assembly.layer_resistance(thickness_m, conductivity)


@derives(
    "layer.framing_share",
    Dimension.FRACTION,
    "part of the area that members take: width over spacing, and what plates, corners and headers add",
    by=assembly.framing_share,
    needs={
        "framed": "framed",
        "members": "members?",
        "member_width_m": "member_width?",
        "spacing_m": "spacing?",
        "extra_in_walls": "assumed:extra_framing_share_walls?",
        "extra_elsewhere": "assumed:extra_framing_share_elsewhere?",
    },
    agrees_within=0.5,
)
def _framing_share(
    framed: bool,
    members: str | None,
    member_width_m: float | None,
    spacing_m: float | None,
    extra_in_walls: float | None,
    extra_elsewhere: float | None,
) -> float | Lacks:
    if not framed:
        return 0.0
    if members is None or member_width_m is None or spacing_m is None:
        missing = {"members": members, "member_width_m": member_width_m, "spacing_m": spacing_m}
        return lacks(*(name for name, value in missing.items() if value is None))
    extra = 0.0 if members == "strapping" else (extra_in_walls if members == "studs" else extra_elsewhere)
    return assembly.framing_share(member_width_m, spacing_m) + (extra or 0.0)


@derives(
    "layer.member_resistance",
    Dimension.THERMAL_RESISTANCE,
    "resistance along a member of a framed layer; of an unbroken layer, its own",
    by=assembly.layer_resistance,
    needs={
        "framed": "framed",
        "resistance_m2k_w": "resistance?",
        "thickness_m": "thickness?",
        "of_member": "named:member_material.conductivity?",
        "member_material": "member_material?",
        "conductivity_w_mk": "assumed:framing_conductivity?",
    },
)
def _member_resistance(
    framed: bool,
    resistance_m2k_w: float | None,
    thickness_m: float | None,
    of_member: float | None,
    member_material: str | None,
    conductivity_w_mk: float | None,
) -> float | Lacks:
    if not framed:
        return lacks("resistance_m2k_w") if resistance_m2k_w is None else resistance_m2k_w
    if thickness_m is None:
        return lacks("thickness_m")
    if member_material is not None and of_member is None:
        return lacks("of_member")
    conductivity = of_member if of_member is not None else conductivity_w_mk
    return lacks("member_material") if conductivity is None else assembly.layer_resistance(thickness_m, conductivity)


@derives(
    "layer.permeance",
    Dimension.PERMEANCE,
    "vapour permeance of the layer, between the members of a framed one",
    by=moisture.layer_permeance,
    needs={
        "thickness_m": "thickness?",
        "permeability": "named:material.permeability?",
        "permeance": "named:material.permeance?",
        "of": "named:material.thickness?",
        "fill_permeability": "named:fill.permeability?",
        "fill_permeance": "named:fill.permeance?",
        "fill_of": "named:fill.thickness?",
    },
    agrees_within=1.0,
)
def _permeance(
    thickness_m: float | None,
    permeability: float | None,
    permeance: float | None,
    of: float | None,
    fill_permeability: float | None,
    fill_permeance: float | None,
    fill_of: float | None,
) -> float | Lacks:
    permeability = permeability if permeability is not None else fill_permeability
    permeance = permeance if permeance is not None else fill_permeance
    of = of if of is not None else fill_of
    if permeance is not None:
        other = thickness_m is not None and of is not None and abs(thickness_m - of) > SAME_PRODUCT * of
        return lacks() if other else permeance
    if permeability is None:
        return lacks()
    return lacks("thickness_m") if thickness_m is None else moisture.layer_permeance(permeability, thickness_m)
