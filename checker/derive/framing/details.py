"""Facts of holes and notches, of heavy things on floors, and of posts."""

from __future__ import annotations

from checker.calc.framing import cuts, sawn
from checker.calc.framing.beam import Loads
from checker.calc.loads import gravity, live
from checker.derive.framing.spans import DEMAND, STRENGTH, Demand, checked
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension


def share(part_m: float, whole_m: float) -> float:
    """Part of a whole."""
    return part_m / whole_m


@derives(
    "cut.depth_share",
    Dimension.FRACTION,
    "depth of the hole or notch over the depth of the member",
    by=cuts.depth_share,
    needs={"cut_m": "depth", "depth_m": "member.actual_depth"},
)
def _depth_share(cut_m: float, depth_m: float) -> float:
    return cuts.depth_share(cut_m, depth_m)


@derives(
    "cut.length_share",
    Dimension.FRACTION,
    "length of the notch over the depth of the member",
    by=share,
    needs={"part_m": "length", "whole_m": "member.actual_depth"},
)
def _length_share(part_m: float, whole_m: float) -> float:
    return share(part_m, whole_m)


@derives(
    "cut.support_share",
    Dimension.FRACTION,
    "distance of the cut from the nearer support over the span",
    by=share,
    needs={"part_m": "from_support", "whole_m": "member.span"},
)
def _support_share(part_m: float, whole_m: float) -> float:
    return share(part_m, whole_m)


@derives(
    "cut.support_depths",
    Dimension.NUMBER,
    "distance of the cut from the nearer support in depths of the member",
    by=share,
    needs={"part_m": "from_support", "whole_m": "member.actual_depth"},
)
def _support_depths(part_m: float, whole_m: float) -> float:
    return share(part_m, whole_m)


@derives(
    "cut.depth_left",
    Dimension.LENGTH,
    "depth of the member that is left",
    by=cuts.net_depth,
    needs={"part_m": "depth", "whole_m": "member.actual_depth"},
)
def _depth_left(part_m: float, whole_m: float) -> float:
    return max(0.0, whole_m - part_m)


@derives(
    "heavy-thing.weight",
    Dimension.FORCE,
    "weight of the thing, full and in use",
    by=gravity.filled_weight,
    needs={
        "empty_kg": "empty_weight",
        "water_m3": "water?",
        "holds_water": "holds_water?",
        "people": "people?",
        "person_kg": "assumed:person_weight",
    },
)
def _weight(
    empty_kg: float, water_m3: float | None, holds_water: bool | None, people: float | None, person_kg: float
) -> float | Lacks:
    if water_m3 is None and holds_water is not False:
        return lacks("water_m3")
    if people is None and holds_water is not False:
        return lacks("people")
    return gravity.filled_weight(empty_kg, water_m3 or 0.0, int(people or 0), person_kg)


@derives(
    "heavy-thing.pressure",
    Dimension.PRESSURE,
    "its weight over the floor that it covers",
    by=live.load_over_footprint,
    needs={"weight_n": "weight", "footprint_m2": "footprint"},
)
def _pressure(weight_n: float, footprint_m2: float) -> float | None:
    return live.load_over_footprint(weight_n, footprint_m2) if footprint_m2 > 0 else None


_JOISTS = {name: f"joists.{need}" if ":" not in need else need for name, need in {**DEMAND, **STRENGTH}.items()}
_JOISTS["lumber"] = "named:joists.lumber.design?"
_LOADED = {
    **_JOISTS,
    "weight_n": "weight",
    "joists_under": "joists_under",
    "from_support_m": "from_support?",
}


def _with_it(needs: dict[str, object]) -> sawn.MemberCheck | Lacks:
    return checked(needs, lambda demand: _loads_with(demand, needs))


def _loads_with(demand: Demand, needs: dict[str, object]) -> Loads:
    """The joists' own loads, and on each its part of the thing, at midspan if no line says where."""
    weight_n, joists_under = needs["weight_n"], needs["joists_under"]
    at_m = needs["from_support_m"]
    at_m = demand.span_m / 2.0 if at_m is None else min(float(at_m), demand.span_m)  # type: ignore[arg-type]
    each_n = live.load_each_member(float(weight_n), int(joists_under))  # type: ignore[call-overload, arg-type]
    return Loads(demand.loads.line, points=(*demand.loads.points, ("live", each_n, at_m)))


@derives(
    "heavy-thing.joist_bending_use",
    Dimension.FRACTION,
    "bending of the joists with it on them, over their capacity",
    by=sawn.check_member,
    needs=_LOADED,
)
def _joist_bending(**needs: object) -> float | Lacks:
    found = _with_it(needs)
    return found if isinstance(found, Lacks) else found.bending.ratio


@derives(
    "heavy-thing.joist_shear_use",
    Dimension.FRACTION,
    "shear of the joists with it on them, over their capacity",
    by=sawn.check_member,
    needs=_LOADED,
)
def _joist_shear(**needs: object) -> float | Lacks:
    found = _with_it(needs)
    return found if isinstance(found, Lacks) else found.shear.ratio


@derives(
    "heavy-thing.joist_bending_needed",
    Dimension.STRESS,
    "reference bending value that joists under it must at least have",
    by=sawn.needed,
    needs={name: need for name, need in _LOADED.items() if name not in STRENGTH},
)
def _joist_needed(**needs: object) -> float | Lacks:
    demand = Demand(**{name: needs[name] for name in DEMAND})  # type: ignore[arg-type]
    if not demand.beam:
        return lacks()
    if demand.unbraced_m > 0.0:
        return lacks("edge_held")
    return demand.needed(_loads_with(demand, needs)).bending_pa


@derives(
    "member.post_load",
    Dimension.FORCE,
    "load down a post: as stated, or of the beams that it holds up",
    by=sum,
    needs={"role": "role", "stated_n": "axial_load?", "reactions_n": "holds_up[].brings_down?"},
)
def _post_load(role: str, stated_n: float | None, reactions_n: list[float] | None) -> float | Lacks | Using:
    if role not in ("post", "stud"):
        return lacks()
    if stated_n is not None:
        return using(stated_n, "stated_n")
    if not reactions_n:
        return lacks("stated_n")
    return using(sum(reactions_n), "reactions_n")
