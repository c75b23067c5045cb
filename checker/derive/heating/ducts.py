"""Facts of ducts and of the rooms and floors that they serve: airflows, sizes, friction, velocities, ways back."""

from __future__ import annotations

from checker.calc.air import air_properties, duct, duct_system
from checker.derive.heating import site_air
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension


@derives(
    "room.supplied",
    "flag",
    "whether a supply duct ends in the room",
    by=any,
    needs={"roles": "ducts[].role"},
)
def _supplied(roles: list[str]) -> bool:
    return "supply" in roles


@derives(
    "room.has_return",
    "flag",
    "whether a return duct ends in the room",
    by=any,
    needs={"roles": "ducts[].role"},
)
def _has_return(roles: list[str]) -> bool:
    return "return" in roles


@derives(
    "room.supply_airflow",
    Dimension.AIRFLOW,
    "air that the room needs: its share of the system's air by its share of the heat loss of the rooms with supplies",
    by=duct_system.room_airflows,
    needs={
        "supplied": "supplied",
        "heat_loss_w": "heat_loss?",
        "served_w": "house.supplied_heat_loss?",
        "systems_m3_s": "house.heaters[].system_airflow?",
    },
)
def _supply_airflow(
    supplied: bool,
    heat_loss_w: float | None,
    served_w: float | None,
    systems_m3_s: list[float] | None,
) -> float | Lacks | None:
    if not supplied:
        return 0.0
    if heat_loss_w is None or served_w is None or systems_m3_s is None:
        given = {"heat_loss_w": heat_loss_w, "served_w": served_w, "systems_m3_s": systems_m3_s}
        return lacks(*(name for name, value in given.items() if value is None))
    if len(systems_m3_s) != 1 or served_w <= 0.0:
        return None  # which system serves which room is not told
    own_w = max(heat_loss_w, 0.0)
    return duct_system.room_airflows([own_w, max(served_w - own_w, 0.0)], systems_m3_s[0])[0]


@derives(
    "house.supplied_heat_loss",
    Dimension.HEAT_FLOW,
    "heat loss of the rooms in which a supply duct ends",
    by=sum,
    needs={"supplied": "rooms[].supplied", "losses_w": "rooms[].heat_loss"},
)
def _supplied_heat_loss(supplied: list[bool], losses_w: list[float]) -> float:
    return sum(max(loss, 0.0) for loss, fed in zip(losses_w, supplied, strict=True) if fed)


@derives(
    "level.supply_airflow",
    Dimension.AIRFLOW,
    "air that the rooms of the level need",
    by=sum,
    needs={"rooms_m3_s": "rooms[].supply_airflow"},
)
def _level_airflow(rooms_m3_s: list[float]) -> float:
    return sum(rooms_m3_s)


@derives(
    "level.return_airflow",
    Dimension.AIRFLOW,
    "air that the level gives back through returns of its own: that of its rooms without a return",
    by=sum,
    needs={"rooms_m3_s": "rooms[].supply_airflow", "returned": "rooms[].has_return"},
)
def _level_return(rooms_m3_s: list[float], returned: list[bool]) -> float:
    return sum(airflow for airflow, own in zip(rooms_m3_s, returned, strict=True) if not own)


@derives(
    "level.supplied",
    "flag",
    "whether a supply duct ends in a room of the level",
    by=any,
    needs={"rooms": "rooms[].supplied"},
)
def _level_supplied(rooms: list[bool]) -> bool:
    return any(rooms)


@derives(
    "level.returned",
    "flag",
    "whether a return duct ends on the level",
    by=any,
    needs={"rooms": "rooms[].has_return", "roles": "ducts[].role"},
)
def _level_returned(rooms: list[bool], roles: list[str]) -> bool:
    return any(rooms) or "return" in roles


@derives(
    "level.heat_loss",
    Dimension.HEAT_FLOW,
    "heat loss of the rooms of the level",
    by=sum,
    needs={"rooms_w": "rooms[].heat_loss"},
)
def _level_loss(rooms_w: list[float]) -> float:
    return sum(rooms_w)


@derives(
    "duct.airflow",
    Dimension.AIRFLOW,
    "air that the run carries: what its rooms need, shared by the runs that end there, and what it feeds",
    by=duct_system.run_airflows,
    needs={
        "role": "role",
        "feeds_m3_s": "feeds[].airflow?",
        "room_m3_s": "room.supply_airflow?",
        "room_roles": "room.ducts[].role?",
        "level_m3_s": "level.return_airflow?",
        "level_roles": "level.ducts[].role?",
        "ends_in_room": "room.status?",
        "ends_on_level": "level.status?",
    },
    agrees_within=0.15,
)
def _airflow(
    role: str,
    feeds_m3_s: list[float] | None,
    room_m3_s: float | None,
    room_roles: list[str] | None,
    level_m3_s: float | None,
    level_roles: list[str] | None,
    ends_in_room: str | None,
    ends_on_level: str | None,
) -> float | Lacks:
    if feeds_m3_s is None:
        return lacks("feeds_m3_s")
    carried = sum(feeds_m3_s)
    if ends_in_room is not None:
        if room_m3_s is None or room_roles is None:
            return lacks("room_m3_s" if room_m3_s is None else "room_roles")
        carried += room_m3_s / room_roles.count(role)
    if ends_on_level is not None and role == "return":
        if level_m3_s is None or level_roles is None:
            return lacks("level_m3_s" if level_m3_s is None else "level_roles")
        carried += level_m3_s / level_roles.count(role)
    if ends_in_room is None and (ends_on_level is None or role == "supply") and not feeds_m3_s:
        return lacks("room_m3_s" if role == "supply" else "level_m3_s")
    return carried


_SIZE = {"shape": "shape", "diameter_m": "diameter?", "width_m": "width?", "height_m": "height?"}


def _missing_size(shape: str, diameter_m: float | None, width_m: float | None, height_m: float | None) -> list[str]:
    if shape == "round":
        return [] if diameter_m else ["diameter_m"]
    return [name for name, size in (("width_m", width_m), ("height_m", height_m)) if not size]


@derives(
    "duct.area",
    Dimension.AREA,
    "area of its section",
    by=duct.rectangular_area,
    needs=_SIZE,
)
def _area(shape: str, diameter_m: float | None, width_m: float | None, height_m: float | None) -> float | Lacks:
    if missing := _missing_size(shape, diameter_m, width_m, height_m):
        return lacks(*missing)
    if shape == "round":
        return duct.round_area(diameter_m or 0.0)
    if shape == "oval":
        return duct.oval_area(max(width_m or 0.0, height_m or 0.0), min(width_m or 0.0, height_m or 0.0))
    return duct.rectangular_area(width_m or 0.0, height_m or 0.0)


@derives(
    "duct.round_equivalent",
    Dimension.LENGTH,
    "diameter of the round duct that takes as much pressure at the same airflow",
    by=duct.rectangular_equivalent_diameter,
    needs=_SIZE,
)
def _round(shape: str, diameter_m: float | None, width_m: float | None, height_m: float | None) -> float | Lacks:
    if missing := _missing_size(shape, diameter_m, width_m, height_m):
        return lacks(*missing)
    if shape == "round":
        return diameter_m or 0.0
    if shape == "oval":
        return duct.oval_equivalent_diameter(max(width_m or 0.0, height_m or 0.0), min(width_m or 0.0, height_m or 0.0))
    return duct.rectangular_equivalent_diameter(width_m or 0.0, height_m or 0.0)


@derives(
    "duct.air_velocity",
    Dimension.VELOCITY,
    "mean velocity of its air",
    by=duct.velocity,
    needs={"airflow_m3_s": "airflow", "area_m2": "area"},
)
def _velocity(airflow_m3_s: float, area_m2: float) -> float:
    return duct.velocity(airflow_m3_s, area_m2)


@derives(
    "duct.effective_length",
    Dimension.LENGTH,
    "its length with what its fittings are equal to",
    by=duct_system.total_effective_length,
    needs={"length_m": "length", "fittings_m": "fittings_length"},
)
def _effective_length(length_m: float, fittings_m: float) -> float:
    return duct_system.total_effective_length([length_m], [fittings_m])


@derives(
    "duct.way_length",
    Dimension.LENGTH,
    "length from the blower to its end, fittings counted as straight duct",
    by=duct_system.sums_from_blower,
    needs={
        "own_m": "effective_length",
        "before_m": "fed_by.way_length?",
        "starts_at": "heater.status?",
    },
)
def _way_length(own_m: float, before_m: float | None, starts_at: str | None) -> float | Lacks:
    if starts_at is not None:
        return own_m
    return lacks("before_m") if before_m is None else before_m + own_m


@derives(
    "duct.design_friction",
    Dimension.FRICTION_RATE,
    "pressure that each length may take, by the blower that it hangs on",
    by=duct_system.friction_rate,
    needs={
        "of_heater": "heater.friction_rate?",
        "of_before": "fed_by.design_friction?",
        "starts_at": "heater.status?",
    },
)
def _design_friction(of_heater: float | None, of_before: float | None, starts_at: str | None) -> float | Lacks:
    found = of_heater if of_heater is not None else of_before
    return lacks("of_before" if starts_at is None else "of_heater") if found is None else found


_AIR = {
    "material": "material",
    "compression": "compression?",
    "smooth_m": "assumed:duct_roughness",
    "flexible_m": "assumed:flexible_duct_roughness",
    "board_m": "assumed:duct_board_roughness",
    "temperature_c": "assumed:indoor_temperature",
    "altitude_m": "site.altitude?",
    "growth": "assumed:flexible_growth?",
    "decay": "assumed:flexible_decay?",
}


def _air(
    diameter_m: float,
    material: str,
    compression: float | None,
    smooth_m: float,
    flexible_m: float,
    board_m: float,
    temperature_c: float,
    altitude_m: float | None,
    growth: float | None,
    decay: float | None,
) -> tuple[float, float, float, float]:
    """Roughness, density, viscosity, and what compression of a flexible run multiplies its friction by."""
    density = site_air.density(temperature_c, altitude_m)
    viscosity = air_properties.air_viscosity(temperature_c)
    if material == "flexible":
        by = 1.0
        if compression and growth is not None and decay is not None:
            by = duct.flex_compression_factor(diameter_m, compression, growth, decay)
        return flexible_m, density, viscosity, by
    rough = board_m if material in ("duct board", "wood framing") else smooth_m
    return rough, density, viscosity, 1.0


@derives(
    "duct.friction",
    Dimension.FRICTION_RATE,
    "pressure that each length takes at its airflow",
    by=duct.friction_per_length,
    needs={"airflow_m3_s": "airflow", "diameter_m": "round_equivalent", **_AIR},
)
def _friction(airflow_m3_s: float, diameter_m: float, **air: object) -> float:
    if airflow_m3_s == 0.0:
        return 0.0
    roughness, density, viscosity, by = _air(diameter_m, **air)  # type: ignore[arg-type]
    return duct.friction_per_length(airflow_m3_s, diameter_m, roughness, density, viscosity, by)


@derives(
    "duct.pressure",
    Dimension.AIR_PRESSURE,
    "pressure that it takes at its airflow, fittings included",
    by=duct.pressure_loss,
    needs={"friction_pa_m": "friction", "length_m": "effective_length"},
)
def _pressure(friction_pa_m: float, length_m: float) -> float:
    return duct.pressure_loss(friction_pa_m, length_m)


@derives(
    "duct.airflow_carried",
    Dimension.AIRFLOW,
    "most air that it carries at the pressure that each length may take",
    by=duct.airflow_for_friction,
    needs={"friction_pa_m": "design_friction", "diameter_m": "round_equivalent", **_AIR},
)
def _carried(friction_pa_m: float, diameter_m: float, **air: object) -> float:
    if friction_pa_m <= 0.0:
        return 0.0
    roughness, density, viscosity, by = _air(diameter_m, **air)  # type: ignore[arg-type]
    return duct.airflow_for_friction(diameter_m, friction_pa_m, roughness, density, viscosity, by)


@derives(
    "duct.diameter_needed",
    Dimension.LENGTH,
    "smallest round duct that carries its airflow at the pressure that each length may take",
    by=duct.diameter_for_friction,
    needs={"friction_pa_m": "design_friction", "airflow_m3_s": "airflow", "diameter_m": "round_equivalent?", **_AIR},
)
def _diameter_needed(
    friction_pa_m: float, airflow_m3_s: float, diameter_m: float | None, **air: object
) -> float | None:
    if friction_pa_m <= 0.0 or airflow_m3_s <= 0.0:
        return None
    roughness, density, viscosity, by = _air(diameter_m or 0.15, **air)  # type: ignore[arg-type]
    return duct.diameter_for_friction(airflow_m3_s, friction_pa_m, roughness, density, viscosity, by)


@derives(
    "duct.load_share",
    Dimension.FRACTION,
    "airflow that it is to carry over the most that it carries",
    by=float,
    needs={"airflow_m3_s": "airflow", "carried_m3_s": "airflow_carried"},
)
def _load_share(airflow_m3_s: float, carried_m3_s: float) -> float | None:
    return airflow_m3_s / carried_m3_s if carried_m3_s > 0.0 else None


@derives(
    "room.transfer_pressure",
    Dimension.HOUSE_PRESSURE,
    "pressure that builds up behind the closed door when the supply has only the transfer openings to leave by",
    by=duct_system.opening_pressure,
    needs={
        "airflow_m3_s": "supply_airflow",
        "area_m2": "transfer_area",
        "discharge": "assumed:transfer_discharge",
        "temperature_c": "assumed:indoor_temperature",
        "altitude_m": "site.altitude?",
    },
)
def _transfer_pressure(
    airflow_m3_s: float, area_m2: float, discharge: float, temperature_c: float, altitude_m: float | None
) -> float | None:
    if area_m2 <= 0.0:
        return None
    density = site_air.density(temperature_c, altitude_m)
    return duct_system.opening_pressure(airflow_m3_s, area_m2, density, discharge)
