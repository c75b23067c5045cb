"""The load take-down: what bearing lines carry, storey by storey, down to the footings; studs and bracing."""

from __future__ import annotations

from checker.calc.foundation import footing
from checker.calc.framing import column
from checker.calc.framing.timber import Lumber, Section
from checker.calc.loads import lateral, take_down, weights
from checker.derive.framing.members import Entry
from checker.derive.framing.weights import ROOFS, load_added, service_load
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

FLOORS = frozenset({"rooms", "sleeping rooms", "habitable attic", "stairs", "attic with storage"})
KINDS = ("dead", "live", "snow", "roof_live")
_MEANT = {"dead": "dead load", "live": "live load of floors", "snow": "snow load", "roof_live": "roof live load"}


@derives(
    "bearing-line.wall_pressure",
    Dimension.PRESSURE,
    "weight of the wall on its face",
    by=weights.build_up_load,
    needs={
        "own_pa": "wall_weight?",
        "layers_pa": "assembly.dead_load?",
        "form": "form?",
        "assumed_pa": "assumed:dead_load_wall?",
    },
)
def _wall_pressure(
    own_pa: float | None, layers_pa: float | None, form: str | None, assumed_pa: float | None
) -> float | Lacks | Using:
    if own_pa is not None:
        return using(own_pa, "own_pa")
    if layers_pa is not None:
        return using(layers_pa, "layers_pa")
    if form is None:
        return lacks("form")
    if form in ("beam", "posts"):
        return using(0.0, "form")
    if form != "stud wall" or assumed_pa is None:
        return lacks("own_pa")
    return using(assumed_pa, "form", "assumed_pa")


@derives(
    "bearing-line.wall_load",
    Dimension.LINE_LOAD,
    "weight of the wall along the line",
    by=take_down.wall_line_load,
    needs={"pressure_pa": "wall_pressure", "height_m": "height?"},
)
def _wall_load(pressure_pa: float, height_m: float | None) -> float | Lacks | Using:
    if pressure_pa == 0.0:
        return using(0.0)
    return lacks("height_m") if height_m is None else take_down.wall_line_load(height_m, pressure_pa)


def _area_load(kind: str) -> None:
    @derives(
        f"loaded-area.{kind}_line",
        Dimension.LINE_LOAD,
        f"{_MEANT[kind]} that it brings to the line",
        by=take_down.area_line_load,
        needs={"pressure_pa": f"{kind}_pressure", "width_m": "tributary_width"},
    )
    def area_load(pressure_pa: float, width_m: float) -> float:
        return pressure_pa * width_m


def _line_load(kind: str) -> None:
    own = {"areas_n_m": f"loads[].{kind}_line"}

    @derives(
        f"bearing-line.{kind}_own",
        Dimension.LINE_LOAD,
        f"{_MEANT[kind]} that comes to the line at its own storey" + (", with the wall" if kind == "dead" else ""),
        by=take_down.own_line_load,
        needs={**own, "wall_n_m": "wall_load"} if kind == "dead" else own,
    )
    def own_load(areas_n_m: list[float], wall_n_m: float = 0.0) -> float:
        return sum(areas_n_m) + wall_n_m

    @derives(
        f"bearing-line.{kind}_total",
        Dimension.LINE_LOAD,
        f"{_MEANT[kind]} along the foot of the line, with all that stands on it",
        by=take_down.loads_together,
        needs={"own_n_m": f"{kind}_own", "above_n_m": f"lines_above[].{kind}_total"},
    )
    def total(own_n_m: float, above_n_m: list[float]) -> float:
        return own_n_m + sum(above_n_m)


for _kind in KINDS:
    _area_load(_kind)
    _line_load(_kind)


service_load("bearing-line", "{}_total", "greatest load that acts together along the foot of the line")


@derives(
    "bearing-line.floors_carried",
    Dimension.COUNT,
    "number of floors that come down on it, each storey's once",
    by=sum,
    needs={"own": "loads[].carries", "above": "lines_above[].floors_carried"},
)
def _floors(own: list[str], above: list[float]) -> float:
    return float(any(each in FLOORS for each in own)) + max(above, default=0.0)


@derives(
    "bearing-line.carries_roof",
    "flag",
    "whether a roof comes down on it",
    by=any,
    needs={"own": "loads[].carries", "above": "lines_above[].carries_roof"},
)
def _carries_roof(own: list[str], above: list[bool]) -> bool:
    return any(each in ROOFS for each in own) or any(above)


@derives(
    "bearing-line.stud_actual_depth",
    Dimension.LENGTH,
    "depth of the studs, as measured or dressed",
    by=float,
    needs={"measured_m": "stud_depth?", "size": "stud_size?", "dressed_m": "named:stud_size.depth?"},
)
def _stud_depth(measured_m: float | None, size: str | None, dressed_m: float | None) -> float | Lacks | Using:
    if measured_m is not None:
        return using(measured_m, "measured_m")
    return lacks("size") if dressed_m is None else using(dressed_m, "dressed_m")


@derives(
    "bearing-line.stud_use",
    Dimension.FRACTION,
    "load down each stud over what it carries, held along the wall by its sheathing; wind is left out",
    by=column.check_post,
    needs={
        "dead_n_m": "dead_total",
        "live_n_m": "live_total",
        "snow_n_m": "snow_total",
        "roof_live_n_m": "roof_live_total",
        "spacing_m": "stud_spacing",
        "height_m": "height",
        "depth_m": "stud_actual_depth",
        "width_m": "stud_width?",
        "dressed_m": "named:stud_size.width?",
        "lumber": "named:stud_lumber.design",
        "standards": "catalogue:timber standard",
    },
)
def _stud_use(
    dead_n_m: float,
    live_n_m: float,
    snow_n_m: float,
    roof_live_n_m: float,
    spacing_m: float,
    height_m: float,
    depth_m: float,
    width_m: float | None,
    dressed_m: float | None,
    lumber: Lumber,
    standards: tuple[Entry, ...],
) -> float | Lacks:
    width_m = width_m or dressed_m
    if width_m is None:
        return lacks("width_m")
    if lumber.compression_pa is None and not lumber.by_depth:
        return lacks("lumber")
    found = column.check_post(
        Section(width_m, depth_m),
        lumber,
        standards[0].design,
        {
            "dead": dead_n_m * spacing_m,
            "live": live_n_m * spacing_m,
            "snow": snow_n_m * spacing_m,
            "roof live": roof_live_n_m * spacing_m,
        },
        unbraced_depth_m=height_m,
        unbraced_width_m=0.0,
    )
    return found.ratio


@derives(
    "level.bearing_removed",
    "flag",
    "whether the work takes a bearing line of this level away",
    by=any,
    needs={"statuses": "was.bearing_lines[].status"},
)
def _bearing_removed(statuses: list[str]) -> bool:
    return "removed" in statuses


@derives(
    "footing.line_load",
    Dimension.LINE_LOAD,
    "load along the footing, all that acts together",
    by=take_down.loads_together,
    needs={"loads_n_m": "lines[].service_load"},
)
def _footing_load(loads_n_m: list[float]) -> float | None:
    return sum(loads_n_m) if loads_n_m else None


@derives(
    "footing.allowable_bearing",
    Dimension.PRESSURE,
    "bearing that the soil is allowed, as tested or as presumed",
    by=float,
    needs={
        "stated_pa": "soil_bearing?",
        "soil": "soil?",
        "bedrock_pa": "assumed:bearing_bedrock?",
        "sedimentary_pa": "assumed:bearing_sedimentary?",
        "gravel_pa": "assumed:bearing_gravel?",
        "sand_pa": "assumed:bearing_sand?",
        "clay_pa": "assumed:bearing_clay?",
    },
)
def _allowable(stated_pa: float | None, soil: str | None, **presumed_pa: float | None) -> float | Lacks | Using:
    if stated_pa is not None:
        return using(stated_pa, "stated_pa")
    if soil is None:
        return lacks("soil")
    if soil == "organic or fill":
        return lacks("stated_pa")
    name = {
        "bedrock": "bedrock_pa",
        "sedimentary rock": "sedimentary_pa",
        "sandy gravel or gravel": "gravel_pa",
        "sand or silty sand": "sand_pa",
        "clay or silt": "clay_pa",
    }[soil]
    value_pa = presumed_pa[name]
    return lacks() if value_pa is None else using(value_pa, "soil", name)


@derives(
    "footing.pad_load",
    Dimension.FORCE,
    "load on the pad: as stated, or of the posts on it",
    by=sum,
    needs={
        "pad": "pad?",
        "stated_n": "point_load?",
        "posts_n": "posts[].post_load?",
        "lines": "lines[].status?",
    },
)
def _pad_load(
    pad: bool | None, stated_n: float | None, posts_n: list[float] | None, lines: list[str] | None
) -> float | Lacks | Using:
    if not pad:
        return lacks("pad") if pad is None else lacks()
    if stated_n is not None:
        return using(stated_n, "pad", "stated_n")
    if lines:
        return lacks("stated_n")  # what a line brings to one pad hangs on how far it reaches
    return using(sum(posts_n), "pad", "posts_n") if posts_n else lacks("stated_n")


_CARRIED = {"pad": "pad?", "line_n_m": "line_load?", "pad_n": "pad_load?"}


@derives(
    "footing.soil_pressure",
    Dimension.PRESSURE,
    "pressure under the footing, without its own weight",
    by=footing.soil_pressure,
    needs={**_CARRIED, "width_m": "width"},
)
def _soil_pressure(pad: bool | None, line_n_m: float | None, pad_n: float | None, width_m: float) -> float | Lacks:
    if pad:
        return lacks("pad_n") if pad_n is None else footing.pad_pressure(pad_n, width_m**2)
    return lacks("line_n_m") if line_n_m is None else footing.soil_pressure(line_n_m, width_m)


@derives(
    "footing.width_needed",
    Dimension.LENGTH,
    "width at which the soil would carry the load",
    by=footing.width_needed,
    needs={**_CARRIED, "allowed_pa": "allowable_bearing"},
)
def _width_needed(pad: bool | None, line_n_m: float | None, pad_n: float | None, allowed_pa: float) -> float | Lacks:
    if pad:
        return lacks("pad_n") if pad_n is None else footing.square_side(footing.pad_area_needed(pad_n, allowed_pa))
    return lacks("line_n_m") if line_n_m is None else footing.width_needed(line_n_m, allowed_pa)


load_added("footing", "line_load")


@derives(
    "footing.projection",
    Dimension.LENGTH,
    "how far the footing stands out on each side of the wall",
    by=footing.projection,
    needs={"width_m": "width", "wall_m": "wall_thickness"},
)
def _projection(width_m: float, wall_m: float) -> float:
    return max(0.0, footing.projection(width_m, wall_m))


@derives(
    "braced-line.engineered",
    "flag",
    "whether a design by an engineer takes the place of the table, as its method says",
    by=bool,
    needs={"method": "method"},
)
def _engineered(method: str) -> bool:
    return method == "engineered"


_PANELS = {
    "panels_m": "panels",
    "method": "method",
    "least_m": "assumed:least_braced_panel",
    "least_continuous_m": "assumed:least_continuous_panel",
}


def _least_panel(method: str, least_m: float, least_continuous_m: float) -> float:
    return least_continuous_m if method in ("continuous wood panel", "portal frame") else least_m


@derives(
    "braced-line.available_length",
    Dimension.LENGTH,
    "length of its panels that are long enough to count",
    by=lateral.braced_length,
    needs=_PANELS,
)
def _available(panels_m: tuple[float, ...], **least: object) -> float:
    return lateral.braced_length(panels_m, _least_panel(**least))  # type: ignore[arg-type]


@derives(
    "braced-line.panels_counted",
    Dimension.COUNT,
    "number of its panels that are long enough to count",
    by=sum,
    needs=_PANELS,
)
def _counted(panels_m: tuple[float, ...], **least: object) -> float:
    least_m = _least_panel(**least)  # type: ignore[arg-type]
    return float(sum(1 for each in panels_m if each >= least_m - 1e-6))
