"""Facts of surfaces and of what stands in them: areas, transmittance, temperatures on both sides, heat loss."""

from __future__ import annotations

import math
from collections.abc import Callable

from checker.calc import opening
from checker.calc.errors import OutOfRange
from checker.calc.thermal import assembly, ground, room_loss
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension


@derives(
    "surface.area",
    Dimension.AREA,
    "area of a rectangle",
    by=opening.clear_area,
    needs={"width_m": "length", "height_m": "height"},
    agrees_within=0.03,
)
def _area(width_m: float, height_m: float) -> float:
    return opening.clear_area(width_m, height_m) if width_m and height_m else 0.0


@derives(
    "skylight.unit_area",
    Dimension.AREA,
    "area of the whole unit in the roof",
    by=float,
    needs={"area_m2": "area"},
)
def _skylight_area(area_m2: float) -> float:
    return area_m2


@derives(
    "surface.net_area",
    Dimension.AREA,
    "area without its windows, doors and skylights",
    by=room_loss.net_area,
    needs={
        "gross_area_m2": "area",
        "windows_m2": "windows[].unit_area",
        "doors_m2": "doors[].unit_area",
        "skylights_m2": "skylights[].unit_area",
    },
)
def _net_area(gross_area_m2: float, windows_m2: list[float], doors_m2: list[float], skylights_m2: list[float]) -> float:
    return room_loss.net_area(gross_area_m2, [*windows_m2, *doors_m2, *skylights_m2])


@derives(
    "surface.inside_temperature",
    Dimension.TEMPERATURE,
    "temperature of the room at the winter design condition",
    by=float,
    needs={"held_c": "room.held_temperature"},
)
def _inside(held_c: float) -> float:
    return held_c


@derives(
    "surface.other_side_temperature",
    Dimension.TEMPERATURE,
    "temperature on the other side at the winter design condition",
    by=float,
    needs={
        "faces": "faces",
        "outdoors_c": "site.heating_design_temperature?",
        "ground_c": "site.ground_temperature?",
        "neighbour_c": "neighbour.winter_temperature?",
        "edge": "perimeter_factor?",
    },
)
def _other_side(
    faces: str, outdoors_c: float | None, ground_c: float | None, neighbour_c: float | None, edge: float | None
) -> Using | Lacks:
    if faces == "ground" and edge is not None:  # the edge of a slab loses to the outdoors
        return lacks("outdoors_c") if outdoors_c is None else using(outdoors_c, "outdoors_c", "edge")
    name, value = {
        "outdoors": ("outdoors_c", outdoors_c),
        "ground": ("ground_c", ground_c),
        "room": ("neighbour_c", neighbour_c),
    }[faces]
    return lacks(name) if value is None else using(value, name)


@derives(
    "surface.temperature_difference",
    Dimension.TEMPERATURE_DIFFERENCE,
    "temperature inside less that on the other side",
    by=float,
    needs={"inside_c": "inside_temperature", "other_c": "other_side_temperature", "faces": "faces"},
)
def _difference(inside_c: float, other_c: float, faces: str) -> float:
    if faces == "outdoors" and inside_c <= other_c:
        raise OutOfRange("inside_c", inside_c, "over the outdoor temperature at the winter design condition")
    return inside_c - other_c


_GROUND = {
    "faces": "faces",
    "part": "assembly.part?",
    "u_w_m2k": "assembly.u_factor?",
    "top_m": "top_depth?",
    "bottom_m": "bottom_depth?",
    "width_m": "floor_width?",
    "edge_w_mk": "perimeter_factor?",
    "edge_m": "exposed_perimeter?",
    "area_m2": "area?",
    "soil": "assumed:soil_conductivity?",
}


@derives(
    "surface.u_factor",
    Dimension.U_FACTOR,
    "transmittance of the surface: of its assembly, with the soil's resistance if it lies against soil",
    by=ground.below_grade_wall_u,
    needs=_GROUND,
)
def _u_factor(
    faces: str,
    part: str | None,
    u_w_m2k: float | None,
    top_m: float | None,
    bottom_m: float | None,
    width_m: float | None,
    edge_w_mk: float | None,
    edge_m: float | None,
    area_m2: float | None,
    soil: float | None,
) -> float | Using | Lacks:
    if faces == "ground" and edge_w_mk is not None:
        if edge_m is None or not area_m2:
            return lacks("edge_m" if edge_m is None else "area_m2")
        return ground.perimeter_conductance(edge_w_mk, edge_m) / area_m2
    if u_w_m2k is None:
        return lacks("u_w_m2k")
    if faces != "ground":
        return using(u_w_m2k, "u_w_m2k")
    resistance = assembly.resistance_from_u(u_w_m2k)
    if part is None or soil is None:
        return lacks("part")
    if part == "slab" or part == "floor":
        if bottom_m is None or width_m is None:
            return lacks(*(name for name, value in (("bottom_m", bottom_m), ("width_m", width_m)) if value is None))
        return ground.below_grade_floor_u(bottom_m, width_m, soil, resistance)
    if top_m is None or bottom_m is None:
        return lacks(*(name for name, value in (("top_m", top_m), ("bottom_m", bottom_m)) if value is None))
    return ground.below_grade_wall_u(top_m, bottom_m, soil, resistance)


@derives(
    "surface.conductance",
    Dimension.NUMBER,
    "heat that it passes with its openings for each degree, in W/K",
    by=room_loss.conductance,
    needs={
        "u_w_m2k": "u_factor",
        "net_m2": "net_area",
        "windows": "windows[].conductance",
        "doors": "doors[].conductance",
        "skylights": "skylights[].conductance",
    },
)
def _conductance(
    u_w_m2k: float, net_m2: float, windows: list[float], doors: list[float], skylights: list[float]
) -> float:
    return room_loss.conductance([u_w_m2k], [net_m2]) + sum([*windows, *doors, *skylights])


@derives(
    "surface.heat_loss",
    Dimension.HEAT_FLOW,
    "heat that passes it at the winter design condition, without its openings",
    by=room_loss.transmission_loss,
    needs={
        "u_w_m2k": "u_factor",
        "net_m2": "net_area",
        "inside_c": "inside_temperature",
        "other_c": "other_side_temperature",
    },
)
def _heat_loss(u_w_m2k: float, net_m2: float, inside_c: float, other_c: float) -> float:
    return room_loss.transmission_loss(u_w_m2k, net_m2, inside_c, other_c)


def _bounds(loss_w: float, u_w_m2k: float | None, *bounds_w_m2k: float | None) -> list[float]:
    """The loss at each bound of the transmittance, in no order: a gain from a warmer side turns them round."""
    return [loss_w * (bound / u_w_m2k if u_w_m2k and bound else 1.0) for bound in bounds_w_m2k]


for _end, _what in (
    ("", "heat that passes its windows, doors and skylights at the winter design condition"),
    ("_low", "least that the heat through its openings may be"),
    ("_high", "most that the heat through its openings may be"),
):

    @derives(
        f"surface.openings_heat_loss{_end}",
        Dimension.HEAT_FLOW,
        _what,
        by=sum,
        needs={
            "windows_w": f"windows[].heat_loss{_end}",
            "doors_w": f"doors[].heat_loss{_end}",
            "skylights_w": f"skylights[].heat_loss{_end}",
        },
    )
    def _openings_loss(windows_w: list[float], doors_w: list[float], skylights_w: list[float]) -> float:
        return sum([*windows_w, *doors_w, *skylights_w])


_Pick = Callable[[list[float]], float]
_ENDS: tuple[tuple[str, str, _Pick], ...] = (("low", "least", min), ("high", "most", max))


def _declare_bound_of_surface(end: str, word: str, pick: _Pick) -> None:
    """The least or the most that the heat through a surface may be."""

    @derives(
        f"surface.heat_loss_{end}",
        Dimension.HEAT_FLOW,
        f"{word} that the heat through it and its openings may be, if layers or labels are not known",
        by=room_loss.transmission_loss,
        needs={
            "loss_w": "heat_loss",
            "openings_w": f"openings_heat_loss_{end}",
            "u_w_m2k": "assembly.u_factor?",
            "low_w_m2k": "assembly.u_factor_low?",
            "high_w_m2k": "assembly.u_factor_high?",
        },
    )
    def bound(
        loss_w: float, openings_w: float, u_w_m2k: float | None, low_w_m2k: float | None, high_w_m2k: float | None
    ) -> float:
        return pick(_bounds(loss_w, u_w_m2k, low_w_m2k, high_w_m2k)) + openings_w


for _end, _word, _pick in _ENDS:
    _declare_bound_of_surface(_end, _word, _pick)


def _declare_opening(kind: str) -> None:
    """The same facts of windows, doors and skylights."""

    @derives(
        f"{kind}.u_factor",
        Dimension.U_FACTOR,
        "heat transmittance of what it looks like",
        by=float,
        needs={"archetype": "named:archetype.u_factor?"},
        agrees_within=1.0,
    )
    def u_factor(archetype: float | None) -> float | Lacks:
        return lacks() if archetype is None else archetype

    @derives(
        f"{kind}.conductance",
        Dimension.NUMBER,
        "heat that it passes for each degree, in W/K",
        by=room_loss.conductance,
        needs={"u_w_m2k": "u_factor", "area_m2": "unit_area"},
    )
    def conductance(u_w_m2k: float, area_m2: float) -> float:
        return room_loss.conductance([u_w_m2k], [area_m2])

    @derives(
        f"{kind}.heat_loss",
        Dimension.HEAT_FLOW,
        "heat that passes it at the winter design condition",
        by=room_loss.transmission_loss,
        needs={
            "u_w_m2k": "u_factor",
            "area_m2": "unit_area",
            "inside_c": "surface.inside_temperature",
            "other_c": "surface.other_side_temperature",
        },
    )
    def heat_loss(u_w_m2k: float, area_m2: float, inside_c: float, other_c: float) -> float:
        return room_loss.transmission_loss(u_w_m2k, area_m2, inside_c, other_c)

    def bound(pick: _Pick) -> Callable[..., float]:
        def of(
            loss_w: float, u_w_m2k: float, likely: float | None, lowest: float | None, highest: float | None
        ) -> float:
            if likely is None or not math.isclose(u_w_m2k, likely):  # by its label
                return loss_w
            return pick(_bounds(loss_w, u_w_m2k, lowest, highest))

        return of

    for end, word, pick in _ENDS:
        derives(
            f"{kind}.heat_loss_{end}",
            Dimension.HEAT_FLOW,
            f"{word} that the heat through it may be, if it has no label",
            by=room_loss.transmission_loss,
            needs={
                "loss_w": "heat_loss",
                "u_w_m2k": "u_factor",
                "likely": "named:archetype.u_factor?",
                "lowest": "named:archetype.u_factor_low?",
                "highest": "named:archetype.u_factor_high?",
            },
        )(bound(pick))


for _kind in ("window", "door", "skylight"):
    _declare_opening(_kind)


@derives(
    "window.jamb_short",
    Dimension.LENGTH,
    "how much thicker the wall is than the frame with its extensions",
    by=float,
    needs={"wall_m": "surface.assembly.thickness", "jamb_m": "jamb_depth"},
)
def _jamb_short(wall_m: float, jamb_m: float) -> float:
    return max(wall_m - jamb_m, 0.0)
