"""Facts of heating equipment: output on the site, size against the load, airflow and temperature rise, filters."""

from __future__ import annotations

from checker.calc.air import duct, duct_system, equipment
from checker.calc.thermal import climate
from checker.derive.registry import Lacks, Using, derives, lacks, using
from checker.units import Dimension

_FUELS = frozenset({"natural gas", "propane"})
_AIRFLOW = {
    "measured_m3_s": "measured_airflow?",
    "stated_m3_s": "airflow?",
    "output_w": "output_on_site?",
    "rise_k": "measured_rise?",
    "density": "assumed:heating_air_density?",
    "heat": "assumed:air_specific_heat?",
}


@derives(
    "heater.output",
    Dimension.HEAT_FLOW,
    "output at the high stage, from input and efficiency",
    by=equipment.output_from_input,
    needs={"heat_input_w": "input", "efficiency_ratio": "efficiency"},
    agrees_within=0.05,
)
def _output(heat_input_w: float, efficiency_ratio: float) -> float:
    return equipment.output_from_input(heat_input_w, efficiency_ratio)


for _name, _of, _word in (
    ("output_on_site", "output", "output at the altitude of the site"),
    ("output_low_on_site", "output_low", "output of the low stage at the altitude of the site"),
):

    @derives(
        f"heater.{_name}",
        Dimension.HEAT_FLOW,
        f"{_word}; as rated if the plan gives no altitude",
        by=equipment.derated_input,
        needs={
            "output_w": _of,
            "fuel": "fuel?",
            "altitude_m": "site.altitude?",
            "share": "assumed:altitude_derating?",
            "step_m": "assumed:altitude_derating_step?",
            "over_m": "assumed:altitude_derating_over?",
        },
    )
    def _on_site(
        output_w: float,
        fuel: str | None,
        altitude_m: float | None,
        share: float | None,
        step_m: float | None,
        over_m: float | None,
    ) -> float | Lacks:
        if fuel is None:
            return lacks("fuel")
        if fuel not in _FUELS or altitude_m is None or share is None or step_m is None or over_m is None:
            return output_w
        return equipment.derated_input(output_w, altitude_m, share, step_m, over_m)


@derives(
    "heater.only_heater",
    "flag",
    "whether it heats the house alone",
    by=bool,
    needs={"statuses": "house.heaters[].status"},
)
def _only(statuses: list[str]) -> bool:
    return len(statuses) == 1


for _name, _output_of, _loss, _what in (
    (
        "size_ratio",
        "output_on_site",
        "heat_loss",
        "output over the heat loss, of equipment that heats the house alone",
    ),
    ("size_ratio_low", "output_on_site", "heat_loss_high", "output over the most that the heat loss may be"),
    ("size_ratio_high", "output_on_site", "heat_loss_low", "output over the least that the heat loss may be"),
    ("low_stage_ratio", "output_low_on_site", "heat_loss", "output of the low stage over the heat loss of the house"),
):

    @derives(
        f"heater.{_name}",
        Dimension.NUMBER,
        _what,
        by=equipment.size_ratio,
        needs={"output_w": _output_of, "alone": "only_heater", "heat_loss_w": f"house.{_loss}"},
    )
    def _size_ratio(output_w: float, alone: bool, heat_loss_w: float) -> float | None:
        return equipment.size_ratio(output_w, heat_loss_w) if alone and heat_loss_w > 0.0 else None


_SEASON = {
    "output_w": "output_low_on_site",
    "bin_temperatures_c": "site.bin_temperatures",
    "bin_hours_h": "site.bin_hours",
    "design_loss_w": "house.heat_loss",
    "design_temperature_c": "site.heating_design_temperature",
    "balance_temperature_c": "assumed:balance_temperature",
}


derives(
    "heater.low_stage_hours",
    Dimension.FRACTION,
    "share of the heating hours that the low stage carries alone",
    by=climate.hours_share_carried,
    needs=_SEASON,
)(climate.hours_share_carried)

derives(
    "heater.low_stage_heat",
    Dimension.FRACTION,
    "share of the season's heat that the low stage can give",
    by=climate.heat_share_carried,
    needs=_SEASON,
)(climate.heat_share_carried)


@derives(
    "heater.system_airflow",
    Dimension.AIRFLOW,
    "airflow of the system: measured, else by output and measured rise, else by the maker's table",
    by=equipment.airflow_for_rise,
    needs=_AIRFLOW,
)
def _system_airflow(
    measured_m3_s: float | None,
    stated_m3_s: float | None,
    output_w: float | None,
    rise_k: float | None,
    density: float | None,
    heat: float | None,
) -> Using | Lacks:
    if measured_m3_s is not None:
        return using(measured_m3_s, "measured_m3_s")
    if rise_k is not None and output_w is not None and density is not None and heat is not None:
        airflow = equipment.airflow_for_rise(output_w, rise_k, density, heat)
        return using(airflow, "output_w", "rise_k", "density", "heat")
    return lacks("stated_m3_s") if stated_m3_s is None else using(stated_m3_s, "stated_m3_s")


@derives(
    "heater.system_airflow_from",
    ("measured airflow", "measured temperature rise", "maker's table"),
    "where the airflow of the system comes from",
    by=str,
    needs=_AIRFLOW,
)
def _system_airflow_from(
    measured_m3_s: float | None,
    stated_m3_s: float | None,
    output_w: float | None,
    rise_k: float | None,
    **_: float | None,
) -> str | Lacks:
    if measured_m3_s is not None:
        return "measured airflow"
    if rise_k is not None and output_w is not None:
        return "measured temperature rise"
    return lacks("stated_m3_s") if stated_m3_s is None else "maker's table"


@derives(
    "heater.temperature_rise",
    Dimension.TEMPERATURE_DIFFERENCE,
    "temperature rise of the air at the high stage: measured, else by output and airflow",
    by=equipment.temperature_rise,
    needs={
        "measured_k": "measured_rise?",
        "output_w": "output_on_site?",
        "airflow_m3_s": "system_airflow?",
        "density": "assumed:heating_air_density",
        "heat": "assumed:air_specific_heat",
    },
)
def _rise(
    measured_k: float | None, output_w: float | None, airflow_m3_s: float | None, density: float, heat: float
) -> float | Lacks:
    if measured_k is not None:
        return measured_k
    if output_w is None or airflow_m3_s is None or airflow_m3_s == 0.0:
        return lacks("output_w" if output_w is None else "airflow_m3_s")
    return equipment.temperature_rise(output_w, airflow_m3_s, density, heat)


for _name, _of, _word in (
    ("airflow_least", "most_rise", "least airflow that keeps the temperature rise within the plate"),
    ("airflow_most", "least_rise", "most airflow that keeps the temperature rise within the plate"),
):

    @derives(
        f"heater.{_name}",
        Dimension.AIRFLOW,
        _word,
        by=equipment.airflow_for_rise,
        needs={
            "output_w": "output_on_site",
            "rise_k": _of,
            "density": "assumed:heating_air_density",
            "heat": "assumed:air_specific_heat",
        },
    )
    def _airflow_limit(output_w: float, rise_k: float, density: float, heat: float) -> float:
        return equipment.airflow_for_rise(output_w, rise_k, density, heat)


@derives(
    "air-filter.face_velocity",
    Dimension.VELOCITY,
    "velocity of the system's air at the face of the filter",
    by=duct.velocity,
    needs={"width_m": "width", "height_m": "height", "airflow_m3_s": "heater.system_airflow"},
)
def _face_velocity(width_m: float, height_m: float, airflow_m3_s: float) -> float | None:
    if width_m == 0.0 or height_m == 0.0:
        return None
    return duct.velocity(airflow_m3_s, duct.rectangular_area(width_m, height_m))


@derives(
    "air-filter.pressure",
    Dimension.AIR_PRESSURE,
    "pressure that the clean filter takes at that velocity",
    by=duct_system.filter_pressure,
    needs={
        "rated_pa": "rated_pressure",
        "rated_m_s": "rated_velocity",
        "velocity_m_s": "face_velocity",
        "exponent": "flow_exponent?",
        "assumed": "assumed:filter_exponent?",
    },
)
def _filter_pressure(
    rated_pa: float, rated_m_s: float, velocity_m_s: float, exponent: float | None, assumed: float | None
) -> float | Lacks:
    by = exponent if exponent is not None else assumed
    return lacks("exponent") if by is None else duct_system.filter_pressure(rated_pa, rated_m_s, velocity_m_s, by)


@derives(
    "heater.duct_pressure",
    Dimension.AIR_PRESSURE,
    "pressure that the blower has left for the ducts, after filter, coil, grilles and dampers; 0 if nothing is left",
    by=duct_system.available_pressure,
    needs={"blower_pa": "blower_pressure", "parts_pa": "component_pressure", "filters_pa": "filters[].pressure"},
)
def _duct_pressure(blower_pa: float, parts_pa: float, filters_pa: list[float]) -> float:
    losses = [parts_pa, *filters_pa]
    return duct_system.available_pressure(blower_pa, losses) if sum(losses) < blower_pa else 0.0


@derives(
    "heater.longest_way",
    Dimension.LENGTH,
    "longest supply and longest return together, fittings counted as straight duct",
    by=duct_system.total_effective_length,
    needs={"lengths_m": "house.ducts[].way_length", "roles": "house.ducts[].role"},
)
def _longest_way(lengths_m: list[float], roles: list[str]) -> float | None:
    ways = {
        role: max((m for m, of in zip(lengths_m, roles, strict=True) if of == role), default=0.0)
        for role in ("supply", "return")
    }
    return ways["supply"] + ways["return"] if ways["supply"] else None


@derives(
    "heater.friction_rate",
    Dimension.FRICTION_RATE,
    "pressure that each length of duct may take, so that the longest way uses what the blower has left",
    by=duct_system.friction_rate,
    needs={"available_pa": "duct_pressure", "length_m": "longest_way"},
)
def _friction_rate(available_pa: float, length_m: float) -> float | None:
    if not length_m:
        return None
    return duct_system.friction_rate(available_pa, length_m) if available_pa else 0.0
