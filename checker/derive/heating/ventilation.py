"""Facts of ventilation and of air for flames: rates, balance, depressurisation, volumes and openings."""

from __future__ import annotations

from checker.calc.air import combustion, ventilation
from checker.derive.registry import Lacks, derives, lacks
from checker.units import Dimension

TEST_PA = 50.0
"""The pressure of the air-leakage test that gives the air changes at 50 Pa."""


@derives(
    "ventilator.mean_airflow",
    Dimension.AIRFLOW,
    "mean outdoor airflow over the hours that it runs and rests",
    by=float,
    needs={"airflow_m3_s": "airflow", "run_share": "run_share"},
)
def _mean_airflow(airflow_m3_s: float, run_share: float) -> float:
    return airflow_m3_s * run_share


@derives(
    "house.ventilation_airflow",
    Dimension.AIRFLOW,
    "mean outdoor airflow of all ventilation systems",
    by=sum,
    needs={"airflows_m3_s": "ventilators[].mean_airflow"},
)
def _ventilation_airflow(airflows_m3_s: list[float]) -> float:
    return sum(airflows_m3_s)


@derives(
    "house.ventilation_needed",
    Dimension.AIRFLOW,
    "continuous outdoor airflow that the ruleset asks for by floor area and bedrooms",
    by=ventilation.whole_house_rate,
    needs={
        "area_m2": "conditioned_area",
        "bedrooms": "bedrooms",
        "per_area_m_s": "assumed:ventilation_per_area",
        "per_person_m3_s": "assumed:ventilation_per_person",
    },
)
def _ventilation_needed(area_m2: float, bedrooms: float, per_area_m_s: float, per_person_m3_s: float) -> float:
    return ventilation.whole_house_rate(area_m2, int(bedrooms), per_area_m_s, per_person_m3_s)


@derives(
    "house.ventilation_share",
    Dimension.FRACTION,
    "outdoor airflow of the systems over that asked for",
    by=float,
    needs={"airflow_m3_s": "ventilation_airflow", "needed_m3_s": "ventilation_needed"},
)
def _ventilation_share(airflow_m3_s: float, needed_m3_s: float) -> float | None:
    return airflow_m3_s / needed_m3_s if needed_m3_s > 0.0 else None


@derives(
    "house.largest_exhaust",
    Dimension.AIRFLOW,
    "airflow of the largest single exhaust",
    by=max,
    needs={"exhausts_m3_s": "appliances[].exhaust"},
)
def _largest_exhaust(exhausts_m3_s: list[float]) -> float:
    return max(exhausts_m3_s, default=0.0)


@derives(
    "appliance.exhaust",
    Dimension.AIRFLOW,
    "air that it takes out of the house; none from one that has no fan to the outdoors",
    by=float,
    needs={"type": "type", "ends": "exhaust_ends?", "airflow_m3_s": "exhaust_airflow?"},
)
def _exhaust(
    type: str,  # noqa: A002 - the plan's own word
    ends: str | None,
    airflow_m3_s: float | None,
) -> float | Lacks:
    if type in ("water heater", "range", "fireplace") or ends == "recirculates":
        return 0.0
    return lacks("airflow_m3_s") if airflow_m3_s is None else airflow_m3_s


@derives(
    "house.net_exhaust",
    Dimension.AIRFLOW,
    "what all exhausts together take out of the house beyond the air brought in for them",
    by=ventilation.exhaust_less_supply,
    needs={"exhausts_m3_s": "appliances[].exhaust", "supplies_m3_s": "appliances[].make_up"},
)
def _net_exhaust(exhausts_m3_s: list[float], supplies_m3_s: list[float]) -> float:
    return max(ventilation.exhaust_less_supply(exhausts_m3_s, supplies_m3_s), 0.0)


@derives(
    "appliance.make_up",
    Dimension.AIRFLOW,
    "outdoor air brought in while it runs; none for one that exhausts nothing",
    by=float,
    needs={"exhaust_m3_s": "exhaust", "make_up_m3_s": "make_up_airflow?"},
)
def _make_up(exhaust_m3_s: float, make_up_m3_s: float | None) -> float | Lacks:
    if exhaust_m3_s == 0.0:
        return 0.0
    return lacks("make_up_m3_s") if make_up_m3_s is None else make_up_m3_s


@derives(
    "house.depressurisation",
    Dimension.HOUSE_PRESSURE,
    "how far all exhausts together pull the house below the outdoors",
    by=ventilation.depressurisation,
    needs={
        "net_m3_s": "net_exhaust",
        "air_changes_50": "air_changes_50",
        "volume_m3": "heated_volume",
        "exponent": "assumed:leakage_exponent",
    },
)
def _depressurisation(net_m3_s: float, air_changes_50: float, volume_m3: float, exponent: float) -> float | None:
    if net_m3_s == 0.0:
        return 0.0
    if air_changes_50 == 0.0:
        return None
    return ventilation.depressurisation(net_m3_s, air_changes_50 * volume_m3 / 3600.0, TEST_PA, exponent)


for _kind in ("heater", "appliance"):

    @derives(
        f"{_kind}.flame_from_room",
        Dimension.HEAT_FLOW,
        "input of a flame that takes its air from the room; 0 if it has no flame or takes its air from outdoors",
        by=float,
        needs={"fuel": "fuel", "input_w": "input?", "air_from": "combustion_air_from?"},
    )
    def _flame(fuel: str, input_w: float | None, air_from: str | None) -> float | Lacks:
        if fuel == "electricity":
            return 0.0
        if air_from is None:
            return lacks("air_from")
        if air_from == "outdoors, piped":
            return 0.0
        return lacks("input_w") if input_w is None else input_w


@derives(
    "room.flame_input",
    Dimension.HEAT_FLOW,
    "input of all flames that take their air from the room",
    by=sum,
    needs={"heaters_w": "heaters[].flame_from_room", "appliances_w": "appliances[].flame_from_room"},
)
def _flame_input(heaters_w: list[float], appliances_w: list[float]) -> float:
    return sum([*heaters_w, *appliances_w])


@derives(
    "room.flame_volume_needed",
    Dimension.VOLUME,
    "volume of rooms that gives those flames enough air",
    by=combustion.indoor_volume_standard,
    needs={"input_w": "flame_input", "per_input": "assumed:flame_volume_per_input"},
)
def _flame_volume(input_w: float, per_input: float) -> float:
    return combustion.indoor_volume_standard(input_w, per_input)


@derives(
    "room.flame_volume_share",
    Dimension.FRACTION,
    "volume that the flames have, of the room with what opens to it, over what they need",
    by=float,
    needs={"needed_m3": "flame_volume_needed", "joined_m3": "joined_volume?", "volume_m3": "volume?"},
)
def _flame_volume_share(needed_m3: float, joined_m3: float | None, volume_m3: float | None) -> float | Lacks | None:
    if needed_m3 == 0.0:
        return None
    has = joined_m3 if joined_m3 is not None else volume_m3
    return lacks("joined_m3") if has is None else has / needed_m3


@derives(
    "room.flame_opening_needed",
    Dimension.AREA,
    "free area of all openings to the outdoors together that gives those flames enough air",
    by=combustion.opening_area_for_input,
    needs={"input_w": "flame_input", "per_input": "assumed:flame_opening_per_input"},
)
def _flame_opening(input_w: float, per_input: float) -> float:
    return combustion.opening_area_for_input(input_w, per_input) if input_w else 0.0


@derives(
    "room.flame_opening_share",
    Dimension.FRACTION,
    "free area of the openings to the outdoors over what the flames need",
    by=float,
    needs={"needed_m2": "flame_opening_needed", "has_m2": "combustion_air_outdoors"},
)
def _flame_opening_share(needed_m2: float, has_m2: float) -> float | None:
    return has_m2 / needed_m2 if needed_m2 else None


@derives(
    "flue.area_ratio",
    Dimension.NUMBER,
    "area of the flue over the smallest outlet that draws through it",
    by=combustion.flue_area_ratio,
    needs={"flue_area_m2": "area", "outlets_m2": "appliances[].outlet_area"},
)
def _area_ratio(flue_area_m2: float, outlets_m2: list[float]) -> float | None:
    return combustion.flue_area_ratio(flue_area_m2, outlets_m2) if outlets_m2 else None
