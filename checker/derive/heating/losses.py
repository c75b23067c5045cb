"""Facts of rooms and of the house: temperatures, air, heat loss at the winter design condition."""

from __future__ import annotations

from checker.calc.air import air_properties, equipment
from checker.calc.thermal import infiltration, room_loss
from checker.derive.heating import site_air
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension


@derives(
    "room.held_temperature",
    Dimension.TEMPERATURE,
    "temperature that the heating holds at the winter design condition; of heated rooms only",
    by=float,
    needs={"heated": "heated", "stated_c": "design_indoor_temperature?", "assumed_c": "assumed:indoor_temperature?"},
)
def _held(heated: bool, stated_c: float | None, assumed_c: float | None) -> Using | Lacks | None:
    if not heated:
        return None
    if stated_c is not None:
        return using(stated_c, "stated_c")
    return lacks("stated_c") if assumed_c is None else using(assumed_c, "assumed_c")


@derives(
    "room.winter_temperature",
    Dimension.TEMPERATURE,
    "temperature at the winter design condition: as heated, or by the balance of an unheated space",
    by=room_loss.unheated_temperature,
    needs={"heated": "heated", "held_c": "held_temperature?", "balance_c": "unheated_temperature?"},
    agrees_within=0.5,
)
def _winter(heated: bool, held_c: float | None, balance_c: float | None) -> Using | Lacks:
    if heated:
        return lacks("held_c") if held_c is None else using(held_c, "held_c")
    return lacks() if balance_c is None else using(balance_c, "balance_c")


@derives(
    "room.unheated_temperature",
    Dimension.TEMPERATURE,
    "temperature of an unheated space between heated rooms and the outdoors, by the balance of its heat",
    by=room_loss.unheated_temperature,
    needs={
        "heated": "heated",
        "toward_rooms": "bounds[].conductance",
        "rooms_c": "bounds[].inside_temperature",
        "outward": "surfaces[].conductance",
        "outward_faces": "surfaces[].faces",
        "outdoors_c": "site.heating_design_temperature",
    },
)
def _unheated(
    heated: bool,
    toward_rooms: list[float],
    rooms_c: list[float],
    outward: list[float],
    outward_faces: list[str],
    outdoors_c: float,
) -> float | None:
    # Soil and further unheated spaces are not in this balance: then the temperature is asked for.
    if heated or not toward_rooms or not outward or any(faces != "outdoors" for faces in outward_faces):
        return None
    return room_loss.unheated_temperature(toward_rooms, rooms_c, sum(outward), outdoors_c)


@derives(
    "house.air_changes_50",
    Dimension.AIR_CHANGES,
    "air changes at 50 Pa: measured, else the target, else of the class of tightness",
    by=float,
    needs={
        "measured": "air_changes_50_measured?",
        "target": "air_changes_50_target?",
        "archetype": "named:tightness.air_changes_50?",
    },
)
def _air_changes_50(measured: float | None, target: float | None, archetype: float | None) -> Using | Lacks:
    for name, value in (("measured", measured), ("target", target), ("archetype", archetype)):
        if value is not None:
            return using(value, name)
    return lacks("measured")


@derives(
    "house.air_changes_50_from",
    ("measured", "target", "class of tightness"),
    "where the air changes at 50 Pa come from",
    by=str,
    needs={
        "measured": "air_changes_50_measured?",
        "target": "air_changes_50_target?",
        "archetype": "named:tightness.air_changes_50?",
    },
)
def _air_changes_50_from(measured: float | None, target: float | None, archetype: float | None) -> str | Lacks:
    if measured is not None:
        return "measured"
    if target is not None:
        return "target"
    return lacks("measured") if archetype is None else "class of tightness"


for _end, _word in (("low", "least"), ("high", "most")):

    @derives(
        f"house.air_changes_50_{_end}",
        Dimension.AIR_CHANGES,
        f"{_word} that the air changes at 50 Pa may be, if they are neither measured nor a target",
        by=float,
        needs={
            "value": "air_changes_50",
            "origin": "air_changes_50_from",
            "bound": f"named:tightness.air_changes_50_{_end}?",
        },
    )
    def _bound(value: float, origin: str, bound: float | None) -> float:
        return bound if origin == "class of tightness" and bound is not None else value


@derives(
    "house.natural_air_changes",
    Dimension.AIR_CHANGES,
    "mean air changes in winter under natural pressures",
    by=infiltration.natural_air_changes,
    needs={"air_changes_50_per_h": "air_changes_50", "factor": "assumed:leakage_factor"},
)
def _natural(air_changes_50_per_h: float, factor: float) -> float:
    return infiltration.natural_air_changes(air_changes_50_per_h, factor)


@derives(
    "room.air_density",
    Dimension.DENSITY,
    "density of the indoor air at the altitude of the site, sea level if the plan does not give it",
    by=air_properties.air_density,
    needs={"temperature_c": "held_temperature", "altitude_m": "site.altitude?"},
)
def _density(temperature_c: float, altitude_m: float | None) -> float:
    return site_air.density(temperature_c, altitude_m)


@derives(
    "room.infiltration_airflow",
    Dimension.AIRFLOW,
    "outdoor air that leaks into the room, by its share of the volume",
    by=infiltration.airflow_of_air_changes,
    needs={"air_changes_per_h": "house.natural_air_changes", "volume_m3": "volume"},
)
def _infiltration(air_changes_per_h: float, volume_m3: float) -> float:
    return infiltration.airflow_of_air_changes(air_changes_per_h, volume_m3)


@derives(
    "room.infiltration_heat_loss",
    Dimension.HEAT_FLOW,
    "heat to warm the outdoor air that leaks in at the winter design condition",
    by=infiltration.air_heat_loss,
    needs={
        "airflow_m3_s": "infiltration_airflow",
        "density_kg_m3": "air_density",
        "inside_c": "held_temperature",
        "outdoors_c": "site.heating_design_temperature",
    },
)
def _infiltration_loss(airflow_m3_s: float, density_kg_m3: float, inside_c: float, outdoors_c: float) -> float:
    return infiltration.air_heat_loss(airflow_m3_s, density_kg_m3, inside_c, outdoors_c)


@derives(
    "room.transmission_heat_loss",
    Dimension.HEAT_FLOW,
    "heat that passes the room's surfaces with their openings at the winter design condition",
    by=sum,
    needs={"surfaces_w": "surfaces[].heat_loss", "openings_w": "surfaces[].openings_heat_loss"},
)
def _transmission(surfaces_w: list[float], openings_w: list[float]) -> float | None:
    return sum([*surfaces_w, *openings_w])


@derives(
    "room.heat_loss",
    Dimension.HEAT_FLOW,
    "heat loss of a heated room at the winter design condition; 0 for a space that is not heated",
    by=room_loss.room_loss,
    needs={"heated": "heated", "surfaces_w": "transmission_heat_loss?", "air_w": "infiltration_heat_loss?"},
)
def _room_loss(heated: bool, surfaces_w: float | None, air_w: float | None) -> float | Lacks:
    if not heated:
        return 0.0
    if surfaces_w is None or air_w is None:
        missing = (("surfaces_w", surfaces_w), ("air_w", air_w))
        return lacks(*(name for name, value in missing if value is None))
    return room_loss.room_loss([surfaces_w], [air_w])


for _end, _word in (("low", "least"), ("high", "most")):

    @derives(
        f"room.heat_loss_{_end}",
        Dimension.HEAT_FLOW,
        f"{_word} that the heat loss may be, by what is not known of layers, labels and tightness",
        by=room_loss.room_loss,
        needs={
            "heated": "heated",
            "surfaces_w": f"surfaces[].heat_loss_{_end}?",
            "air_w": "infiltration_heat_loss?",
            "likely": "house.air_changes_50?",
            "bound": f"house.air_changes_50_{_end}?",
        },
    )
    def _room_bound(
        heated: bool, surfaces_w: list[float] | None, air_w: float | None, likely: float | None, bound: float | None
    ) -> float | Lacks:
        if not heated:
            return 0.0
        if surfaces_w is None or air_w is None or likely is None or bound is None:
            return lacks("surfaces_w" if surfaces_w is None else "air_w")
        return room_loss.room_loss(surfaces_w, [air_w * bound / likely if likely else 0.0])

    @derives(
        f"house.heat_loss_{_end}",
        Dimension.HEAT_FLOW,
        f"{_word} that the heat loss of the house may be",
        by=room_loss.house_loss,
        needs={"rooms_w": f"rooms[].heat_loss_{_end}", "ventilation_w": "ventilation_heat_loss"},
    )
    def _house_bound(rooms_w: list[float], ventilation_w: float) -> float | None:
        return room_loss.house_loss([*rooms_w, ventilation_w]) if rooms_w else None


@derives(
    "ventilator.heat_loss",
    Dimension.HEAT_FLOW,
    "heat to warm its outdoor air at the winter design condition, after recovery",
    by=infiltration.ventilation_heat_loss,
    needs={
        "airflow_m3_s": "mean_airflow",
        "type": "type",
        "recovery": "recovery?",
        "inside_c": "assumed:indoor_temperature",
        "outdoors_c": "site.heating_design_temperature",
        "altitude_m": "site.altitude?",
    },
)
def _ventilator_loss(
    airflow_m3_s: float,
    type: str,  # noqa: A002 - the plan's own word
    recovery: float | None,
    inside_c: float,
    outdoors_c: float,
    altitude_m: float | None,
) -> float | Lacks:
    if type == "balanced with recovery" and recovery is None:
        return lacks("recovery")
    density = site_air.density(inside_c, altitude_m)
    recovered = (recovery or 0.0) if type == "balanced with recovery" else 0.0
    return infiltration.ventilation_heat_loss(airflow_m3_s, density, inside_c, outdoors_c, recovered)


@derives(
    "house.ventilation_heat_loss",
    Dimension.HEAT_FLOW,
    "heat to warm the air of the ventilation systems at the winter design condition",
    by=sum,
    needs={"systems_w": "ventilators[].heat_loss"},
)
def _ventilation_loss(systems_w: list[float]) -> float:
    return sum(systems_w)


@derives(
    "house.heat_loss",
    Dimension.HEAT_FLOW,
    "heat loss of the house at the winter design condition: its heated rooms and its ventilation",
    by=room_loss.house_loss,
    needs={"rooms_w": "rooms[].heat_loss", "ventilation_w": "ventilation_heat_loss"},
)
def _house_loss(rooms_w: list[float], ventilation_w: float) -> float | None:
    return room_loss.house_loss([*rooms_w, ventilation_w]) if rooms_w else None


@derives(
    "house.heating_output",
    Dimension.HEAT_FLOW,
    "output of all heating equipment at the site",
    by=sum,
    needs={"outputs_w": "heaters[].output_on_site"},
)
def _heating_output(outputs_w: list[float]) -> float | None:
    return sum(outputs_w) if outputs_w else None


for _name, _loss, _word in (
    ("size_ratio", "heat_loss", "output of all heating equipment over the heat loss"),
    ("size_ratio_low", "heat_loss_high", "the same over the most that the heat loss may be"),
    ("size_ratio_high", "heat_loss_low", "the same over the least that the heat loss may be"),
):

    @derives(
        f"house.{_name}",
        Dimension.NUMBER,
        _word,
        by=equipment.size_ratio,
        needs={"output_w": "heating_output", "heat_loss_w": _loss},
    )
    def _size(output_w: float, heat_loss_w: float) -> float | None:
        return equipment.size_ratio(output_w, heat_loss_w) if heat_loss_w > 0.0 else None
