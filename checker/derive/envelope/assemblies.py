"""Facts of assemblies: resistance by each published method, nominal insulation, what lies inboard and outboard."""

from __future__ import annotations

import math
from itertools import product

from checker.calc.errors import OutOfRange
from checker.calc.thermal import assembly, moisture, section
from checker.derive.envelope.layers import FOAMS, INSULATING
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

VENTED = "vented air space"
MOST_FRAMED = 6
"""Framed layers whose paths are followed: each doubles their number."""
_MAIN = frozenset({"studs", "joists", "rafters", "trusses"})
_LAYERS = {
    "sorts": "layers[].sort",
    "fills_m2k_w": "layers[].resistance",
    "members_m2k_w": "layers[].member_resistance",
    "shares_ratio": "layers[].framing_share",
    "part": "part",
    "inside_wall": "assumed:film_inside_wall",
    "inside_up": "assumed:film_inside_heat_upward",
    "inside_down": "assumed:film_inside_heat_downward",
    "outside": "assumed:film_outside",
    "heated_other_side": "heated_other_side?",
}


def counted(sorts: list[str]) -> int:
    """Number of layers up to the vented space; what lies outside of it neither insulates nor holds vapour back."""
    return sorts.index(VENTED) if VENTED in sorts else len(sorts)


def _films(
    part: str, sheltered: bool, inside_wall: float, inside_up: float, inside_down: float, outside: float
) -> tuple[float, float]:
    """Film resistances inside and outside of a part; against soil there is none outside."""
    inside = (
        inside_up
        if part in ("roof", "ceiling under attic")
        else inside_down
        if part in ("floor", "slab")
        else inside_wall
    )
    if part in ("wall below grade", "slab"):
        return inside, 0.0
    return inside, inside if sheltered or part in ("partition", "knee wall", "ceiling under attic") else outside


def _paths(
    sorts: list[str],
    fills_m2k_w: list[float],
    members_m2k_w: list[float],
    shares_ratio: list[float],
    part: str,
    inside_wall: float,
    inside_up: float,
    inside_down: float,
    outside: float,
    heated_other_side: bool | None,
) -> tuple[list[list[float]], list[float], tuple[float, float]]:
    """Every path through fills and members with its share of the area; what lies outside a vented space is left out."""
    count = counted(sorts)
    sheltered = count < len(sorts) or bool(heated_other_side)
    films = _films(part, sheltered, inside_wall, inside_up, inside_down, outside)
    framed = [index for index in range(count) if shares_ratio[index] > 0.0]
    if len(framed) > MOST_FRAMED:
        raise OutOfRange("layers", len(framed), f"at most {MOST_FRAMED} framed layers one behind the other")
    paths: list[list[float]] = []
    shares: list[float] = []
    for in_members in product((False, True), repeat=len(framed)):
        crossing = dict(zip(framed, in_members, strict=True))
        share = 1.0
        for index, member in crossing.items():
            share *= shares_ratio[index] if member else 1.0 - shares_ratio[index]
        through = [members_m2k_w[index] if crossing.get(index, False) else fills_m2k_w[index] for index in range(count)]
        paths.append([films[0], *through, films[1]])
        shares.append(share)
    return paths, shares, films


@derives(
    "assembly.resistance_by_parallel_paths",
    Dimension.THERMAL_RESISTANCE,
    "resistance air to air, whole heat paths side by side",
    by=assembly.parallel_path,
    needs=_LAYERS,
)
def _parallel(sorts: list[str], **layers: object) -> float | None:
    paths, shares, _ = _paths(sorts, **layers)  # type: ignore[arg-type]
    return assembly.parallel_path(paths, shares) if sorts else None


@derives(
    "assembly.resistance_by_isothermal_planes",
    Dimension.THERMAL_RESISTANCE,
    "resistance air to air, each layer side by side and then in series",
    by=assembly.isothermal_planes,
    needs=_LAYERS,
)
def _isothermal(sorts: list[str], **layers: object) -> float | None:
    paths, shares, _ = _paths(sorts, **layers)  # type: ignore[arg-type]
    return assembly.isothermal_planes(paths, shares) if sorts else None


@derives(
    "assembly.resistance_by_combined_method",
    Dimension.THERMAL_RESISTANCE,
    "resistance air to air, mean of upper and lower limit",
    by=assembly.combined_method,
    needs=_LAYERS,
)
def _combined(sorts: list[str], **layers: object) -> float | None:
    paths, shares, _ = _paths(sorts, **layers)  # type: ignore[arg-type]
    return assembly.combined_method(paths, shares) if sorts else None


@derives(
    "assembly.effective_resistance",
    Dimension.THERMAL_RESISTANCE,
    "effective resistance air to air: framed layers side by side, all others in series",
    by=assembly.effective_resistance,
    needs=_LAYERS,
)
def _effective(
    sorts: list[str],
    fills_m2k_w: list[float],
    members_m2k_w: list[float],
    shares_ratio: list[float],
    **rest: object,
) -> float | None:
    paths, _, films = _paths(sorts, fills_m2k_w, members_m2k_w, shares_ratio, **rest)  # type: ignore[arg-type]
    if not sorts:
        return None
    total = sum(films)
    for index in range(len(paths[0]) - 2):
        share = shares_ratio[index]
        total += (
            assembly.effective_resistance(members_m2k_w[index], fills_m2k_w[index], share, [])
            if share > 0.0
            else fills_m2k_w[index]
        )
    return total


@derives(
    "assembly.u_factor",
    Dimension.U_FACTOR,
    "heat transmittance air to air, by the method that the ruleset takes, or of what it looks like",
    by=assembly.u_from_resistance,
    needs={
        "method": "assumed:resistance_method",
        "parallel": "resistance_by_parallel_paths?",
        "isothermal": "resistance_by_isothermal_planes?",
        "combined": "resistance_by_combined_method?",
        "effective": "effective_resistance?",
        "archetype": "named:archetype.resistance?",
    },
    agrees_within=0.15,
)
def _u_factor(method: str, archetype: float | None, **by: float | None) -> Using | Lacks:
    name = {
        "parallel paths": "parallel",
        "isothermal planes": "isothermal",
        "combined": "combined",
        "framed layers only": "effective",
    }[method]
    resistance = by[name]
    if resistance is not None:
        return using(assembly.u_from_resistance(resistance), name)
    return lacks(name) if archetype is None else using(assembly.u_from_resistance(archetype), "archetype")


for _end, _other, _word in (("low", "high", "least"), ("high", "low", "most")):

    @derives(
        f"assembly.u_factor_{_end}",
        Dimension.U_FACTOR,
        f"{_word} that the transmittance may be, if its layers are not known",
        by=assembly.u_from_resistance,
        needs={
            "u_w_m2k": "u_factor",
            "layered_m2k_w": "resistance_by_parallel_paths?",
            "likely": "named:archetype.resistance?",
            "bound": f"named:archetype.resistance_{_other}?",
        },
    )
    def _u_bound(u_w_m2k: float, layered_m2k_w: float | None, likely: float | None, bound: float | None) -> float:
        # The bound goes with what it looks like, not with layers or a transmittance that a plan line gives.
        if layered_m2k_w or likely is None or bound is None:
            return u_w_m2k
        by_look = math.isclose(u_w_m2k, assembly.u_from_resistance(likely))
        return assembly.u_from_resistance(bound) if by_look else u_w_m2k


@derives(
    "assembly.total_resistance",
    Dimension.THERMAL_RESISTANCE,
    "resistance air to air that goes with the transmittance",
    by=assembly.resistance_from_u,
    needs={"u_w_m2k": "u_factor"},
)
def _total(u_w_m2k: float) -> float:
    return assembly.resistance_from_u(u_w_m2k)


_NOMINAL = {"sorts": "layers[].sort", "resistances": "layers[].resistance", "framed": "layers[].framed"}


def _nominal(sorts: list[str], resistances: list[float], framed: list[bool]) -> tuple[float, float]:
    """Insulation between members and unbroken insulation."""
    layers = [
        (r, inside) for sort, r, inside in zip(sorts, resistances, framed, strict=True) if sort in INSULATING and r
    ]
    return assembly.nominal_resistances(
        [r for r, inside in layers if inside], [r for r, inside in layers if not inside]
    )


@derives(
    "assembly.cavity_insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of the insulation between members",
    by=assembly.nominal_resistances,
    needs=_NOMINAL,
)
def _cavity(sorts: list[str], resistances: list[float], framed: list[bool]) -> float:
    return _nominal(sorts, resistances, framed)[0]


@derives(
    "assembly.continuous_insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of the unbroken insulation",
    by=assembly.nominal_resistances,
    needs=_NOMINAL,
)
def _continuous(sorts: list[str], resistances: list[float], framed: list[bool]) -> float:
    return _nominal(sorts, resistances, framed)[1]


@derives(
    "assembly.insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of all insulation, between members and unbroken",
    by=sum,
    needs={"cavity": "cavity_insulation", "continuous": "continuous_insulation"},
)
def _insulation(cavity: float, continuous: float) -> float:
    return cavity + continuous


@derives(
    "assembly.cavities_empty",
    "flag",
    "whether a bay between members holds no insulation",
    by=any,
    needs={"framed": "layers[].framed", "insulates": "layers[].insulates", "members": "layers[].main_framing"},
)
def _cavities_empty(framed: list[bool], insulates: list[bool], members: list[bool]) -> bool:
    bays = [filled for is_framed, filled, main in zip(framed, insulates, members, strict=True) if is_framed and main]
    return bool(bays) and not any(bays)


@derives(
    "layer.main_framing",
    "flag",
    "whether its members are studs, joists, rafters or trusses rather than strapping",
    by=bool,
    needs={"framed": "framed", "members": "members?"},
)
def _main_framing(framed: bool, members: str | None) -> bool | Lacks:
    if not framed:
        return False
    return lacks("members") if members is None else members in _MAIN


_PLANE = {"main": "layers[].main_framing", "sorts": "layers[].sort"}


def _plane(main: list[bool]) -> int | None:
    """Number of layers inboard of the outer face of the framing, where sheathing stands."""
    last = [index for index, framed in enumerate(main) if framed]
    return last[-1] + 1 if last else None


@derives(
    "assembly.outboard_insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of the insulation outboard of the framing",
    by=sum,
    needs={**_PLANE, "resistances": "layers[].resistance"},
)
def _outboard_insulation(main: list[bool], sorts: list[str], resistances: list[float]) -> float | None:
    plane = _plane(main)
    if plane is None:
        return None
    return sum(resistances[i] for i in range(plane, len(sorts)) if sorts[i] in INSULATING)


@derives(
    "assembly.outboard_resistance",
    Dimension.THERMAL_RESISTANCE,
    "resistance of everything outboard of the framing, with the outer film",
    by=assembly.series_resistance,
    needs={**_PLANE, "resistances": "layers[].resistance", "outside": "assumed:film_outside"},
)
def _outboard(main: list[bool], sorts: list[str], resistances: list[float], outside: float) -> float | None:
    plane = _plane(main)
    if plane is None:
        return None
    return assembly.series_resistance([*resistances[plane : max(plane, counted(sorts))], outside])


@derives(
    "assembly.inboard_resistance",
    Dimension.THERMAL_RESISTANCE,
    "resistance of everything inboard of the outer face of the framing, between members, with the inner film",
    by=assembly.series_resistance,
    needs={**_PLANE, "resistances": "layers[].resistance", "inside": "assumed:film_inside_wall"},
)
def _inboard(main: list[bool], sorts: list[str], resistances: list[float], inside: float) -> float | None:
    plane = _plane(main)
    return None if plane is None else assembly.series_resistance([inside, *resistances[:plane]])


@derives(
    "assembly.outboard_ratio",
    Dimension.NUMBER,
    "resistance outboard of the framing over that inboard of it",
    by=moisture.outboard_to_inboard_ratio,
    needs={"outboard": "outboard_resistance", "inboard": "inboard_resistance"},
)
def _outboard_ratio(outboard: float, inboard: float) -> float:
    return moisture.outboard_to_inboard_ratio(outboard, inboard)


@derives(
    "assembly.outboard_share",
    Dimension.FRACTION,
    "share of the resistance that lies outboard of the framing",
    by=moisture.outboard_share,
    needs={"outboard": "outboard_resistance", "inboard": "inboard_resistance"},
)
def _outboard_share(outboard: float, inboard: float) -> float:
    return moisture.outboard_share(outboard, inboard)


@derives(
    "assembly.inside_permeance",
    Dimension.PERMEANCE,
    "permeance of the tightest layer on the warm side of the framing",
    by=min,
    needs={**_PLANE, "permeances": "layers[].permeance"},
)
def _inside_permeance(main: list[bool], sorts: list[str], permeances: list[float]) -> float | None:
    plane = _plane(main)
    inboard = [permeances[i] for i in range(plane or 0) if not main[i]]
    return min(inboard) if inboard else None


@derives(
    "assembly.outside_permeance",
    Dimension.PERMEANCE,
    "permeance of the tightest layer outboard of the framing, as far as the vented space if there is one",
    by=min,
    needs={**_PLANE, "permeances": "layers[].permeance"},
)
def _outside_permeance(main: list[bool], sorts: list[str], permeances: list[float]) -> float | None:
    plane = _plane(main)
    if plane is None:
        return None
    outboard = permeances[plane : max(plane, counted(sorts)) + 1]  # as far as the vented space, which lets all through
    return min(outboard) if outboard else None


@derives(
    "assembly.sheathing_temperature",
    Dimension.TEMPERATURE,
    "temperature at the outer face of the framing in the mean of the three coldest months",
    by=section.sheathing_temperature,
    needs={
        "inboard": "inboard_resistance",
        "outboard": "outboard_resistance",
        "inside": "assumed:indoor_temperature",
        "outdoors": "site.coldest_months_temperature",
    },
)
def _sheathing_temperature(inboard: float, outboard: float, inside: float, outdoors: float) -> float:
    return section.sheathing_temperature(inboard, outboard, inside, outdoors)


@derives(
    "assembly.air_permeable_insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of insulation that air can pass: batts, loose fill, fibre boards",
    by=sum,
    needs={"sorts": "layers[].sort", "resistances": "layers[].resistance"},
)
def _air_permeable(sorts: list[str], resistances: list[float]) -> float:
    return sum(r for sort, r in zip(sorts, resistances, strict=True) if sort in INSULATING - FOAMS)


@derives(
    "assembly.air_impermeable_insulation",
    Dimension.THERMAL_RESISTANCE,
    "nominal resistance of insulation that stops air: foam boards and spray foam",
    by=sum,
    needs={"sorts": "layers[].sort", "resistances": "layers[].resistance"},
)
def _air_impermeable(sorts: list[str], resistances: list[float]) -> float:
    return sum(r for sort, r in zip(sorts, resistances, strict=True) if sort in FOAMS)


@derives(
    "assembly.has_foam",
    "flag",
    "whether it has foam plastic",
    by=any,
    needs={"foams": "layers[].foam"},
)
def _has_foam(foams: list[bool]) -> bool:
    return any(foams)


@derives(
    "assembly.foam_outside_thickness",
    Dimension.LENGTH,
    "thickness of the foam sheets outboard of the framing",
    by=sum,
    needs={**_PLANE, "thicknesses_m": "layers[].solid_thickness"},
)
def _foam_outside(main: list[bool], sorts: list[str], thicknesses_m: list[float]) -> float | None:
    plane = _plane(main)
    if plane is None:
        return None
    return sum(thicknesses_m[i] for i in range(plane, len(sorts)) if sorts[i] == "rigid foam")


@derives(
    "layer.solid_thickness",
    Dimension.LENGTH,
    "thickness that the layer adds to the assembly; membranes and coatings add none",
    by=float,
    needs={"sort": "sort", "thickness_m": "thickness?"},
)
def _solid_thickness(sort: str, thickness_m: float | None) -> float | Lacks:
    if thickness_m is None:
        return 0.0 if sort in ("membrane", "coating") else lacks("thickness_m")
    return thickness_m


@derives(
    "assembly.layers_reversed",
    "flag",
    "whether the layers seem to be listed from outside: cladding or roofing first, or the room's finish last",
    by=bool,
    needs={"sorts": "layers[].sort", "part": "part"},
)
def _reversed(sorts: list[str], part: str) -> bool:
    if len(sorts) < 2 or part in ("partition", "floor", "slab"):
        return False
    outer, inner = ("siding", "roofing"), ("gypsum board", "plaster")
    first, last = sorts[0], next((sort for sort in reversed(sorts) if sort not in ("coating", "membrane")), sorts[-1])
    return first in outer or (last == "gypsum board" and sorts[0] not in inner and first not in ("coating", "membrane"))


@derives(
    "assembly.thickness",
    Dimension.LENGTH,
    "thickness of all its layers",
    by=sum,
    needs={"thicknesses_m": "layers[].solid_thickness"},
)
def _assembly_thickness(thicknesses_m: list[float]) -> float | None:
    return sum(thicknesses_m) if thicknesses_m else None
