"""Heating equipment with its filters, other appliances, the flues they share, and mechanical ventilation."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from checker.plan.elements import Ident, Says, Worked
from checker.plan.fields import (
    Airflow,
    AirPressure,
    Area,
    HeatFlow,
    Holds,
    Length,
    LinkTo,
    Number,
    Share,
    TemperatureDifference,
    Velocity,
)

Fuel = Literal["natural gas", "propane", "oil", "electricity", "wood", "pellets", "coal"]
Venting = Literal["natural draught", "fan-assisted", "direct vent", "power vent", "unvented", "none needed"]


class AirFilterSays(Says):
    """What can be said of an air filter."""

    width: Length | None = None
    """Width of the face."""
    height: Length | None = None
    """Height of the face."""
    thickness: Length | None = None
    """Nominal thickness."""
    rated_pressure: AirPressure | None = None
    """Pressure drop, clean, at the rated face velocity, by the maker."""
    rated_velocity: Velocity | None = None
    """Face velocity at which that drop was measured."""
    flow_exponent: Number | None = None
    """How the drop grows with velocity: 1 for deep pleats, up to 2 for open media."""
    reachable: bool | None = None
    """Whether it can be changed without tools and without moving ducts."""


class AirFilter(Worked, AirFilterSays):
    """An air filter of a furnace or air handler."""

    kind: ClassVar[str] = "air-filter"
    meaning: ClassVar[str] = "an air filter of a furnace or air handler"
    trade: ClassVar[str] = "heating"
    was: AirFilterSays | None = None
    """What the filter was before the work."""


class HeaterSays(Says):
    """What can be said of heating equipment."""

    ORDERED: ClassVar[tuple[tuple[str, str], ...]] = (
        ("output_low", "output"),
        ("output", "input"),
        ("least_rise", "most_rise"),
        ("airflow_low", "airflow"),
    )

    type: (
        Literal[
            "furnace",
            "boiler",
            "heat pump",
            "electric baseboard",
            "electric furnace",
            "stove",
            "space heater",
        ]
        | None
    ) = None
    """What it is."""
    fuel: Fuel | None = None
    """What it burns or runs on."""
    input: HeatFlow | None = None
    """Rated input at the high stage, at sea level."""
    output: HeatFlow | None = None
    """Rated output at the high stage."""
    output_low: HeatFlow | None = None
    """Rated output at the low stage of equipment with stages."""
    stages: Literal["one", "two", "modulating"] | None = None
    """How the output is staged."""
    efficiency: Share | None = None
    """Output over input, on the rating plate."""
    condensing: bool | None = None
    """Whether it condenses its flue gas."""
    venting: Venting | None = None
    """How the flue gas leaves."""
    least_rise: TemperatureDifference | None = None
    """Least air-temperature rise on the rating plate."""
    most_rise: TemperatureDifference | None = None
    """Most air-temperature rise on the rating plate."""
    airflow: Airflow | None = None
    """Airflow of the blower at the high stage, by the maker's table at the pressure below."""
    airflow_low: Airflow | None = None
    """Airflow of the blower at the low stage."""
    blower_pressure: AirPressure | None = None
    """External static pressure at which the blower gives that airflow, by the maker's table."""
    component_pressure: AirPressure | None = None
    """Pressure that coil, grilles and dampers take, without filter and ducts."""
    measured_airflow: Airflow | None = None
    """Airflow measured on site."""
    measured_rise: TemperatureDifference | None = None
    """Air-temperature rise measured on site."""
    measured_pressure: AirPressure | None = None
    """External static pressure measured on site."""
    chosen: bool | None = None
    """Whether the equipment has been chosen; false while the load comes first."""
    sized_by: Literal["heat-loss calculation", "old nameplate", "floor area rule", "supplier's advice"] | None = None
    """What its size was taken from."""
    load_report_attached: bool | None = None
    """Whether the load calculation that the code names is in the package."""
    thermostat: Literal["one stage", "two stages", "programmable", "none"] | None = None
    """What the thermostat can call for."""
    manual_attached: bool | None = None
    """Whether the maker's installation instructions are in the package or on site."""
    condensate_to: Literal["floor drain with air gap", "indirect waste", "pump", "outdoors", "nowhere"] | None = None
    """Where its condensate goes."""
    condensate_neutralised: bool | None = None
    """Whether acid condensate is neutralised before metal or concrete drains."""
    overflow_protected: bool | None = None
    """Whether a pan with drain or a float switch guards what lies below."""
    vent_ends: Literal["roof", "wall", "chimney", "soffit", "garage", "crawl space"] | None = None
    """Where the vent ends."""
    vent_above_grade: Length | None = None
    """Height of a wall vent end above grade or expected snow."""
    vent_to_opening: Length | None = None
    """Distance of a wall vent end to the nearest door or window that opens, or gravity air inlet."""
    vent_to_air_inlet: Length | None = None
    """Distance of a vent end to a mechanical air inlet."""
    clearance_front: Length | None = None
    """Working space in front of it."""
    in_bedroom_or_bath: bool | None = None
    """Whether it stands in, or draws its air from, a bedroom, bathroom or closet."""
    combustion_air_from: Literal["outdoors, piped", "outdoors, openings", "indoors", "indoors and outdoors"] | None = (
        None
    )
    """Where its flame takes its air."""

    def ordered(self) -> tuple[tuple[str, str], ...]:
        """A heat pump gives more heat than it takes power."""
        return tuple(pair for pair in self.ORDERED if self.type != "heat pump" or pair != ("output", "input"))


class Heater(Worked, HeaterSays):
    """Heating equipment."""

    kind: ClassVar[str] = "heater"
    meaning: ClassVar[str] = "heating equipment: a furnace, boiler, heat pump, baseboard or stove"
    trade: ClassVar[str] = "heating"

    room: Annotated[Ident | None, LinkTo("room", inverse="heaters")] = None
    """Where it stands."""
    flue: Annotated[Ident | None, LinkTo("flue", inverse="heaters", absent_is_none=True)] = None
    """The flue that it vents into; one without this line vents into none that is listed."""
    filters: Annotated[list[AirFilter] | None, Holds("heater")] = None
    """Its air filters."""
    was: HeaterSays | None = None
    """What stood here before the work."""


class ApplianceSays(Says):
    """What can be said of another appliance."""

    ORDERED: ClassVar[tuple[tuple[str, str], ...]] = (("output", "input"),)

    type: (
        Literal[
            "water heater",
            "range hood",
            "clothes dryer",
            "fireplace",
            "range",
            "bath fan",
            "whole-house exhaust fan",
            "downdraft exhaust",
        ]
        | None
    ) = None
    """What it is."""
    fuel: Fuel | None = None
    """What it burns or runs on."""
    input: HeatFlow | None = None
    """Rated input."""
    output: HeatFlow | None = None
    """Rated output."""
    venting: Venting | None = None
    """How its flue gas leaves."""
    draught_hood: bool | None = None
    """Whether it has a draught hood, open to the room."""
    outlet_area: Area | None = None
    """Area of its flue outlet or draught hood outlet."""
    exhaust_airflow: Airflow | None = None
    """Air that its fan takes out of the house."""
    exhaust_ends: Literal["outdoors", "attic", "soffit", "crawl space", "recirculates"] | None = None
    """Where that air ends."""
    make_up_airflow: Airflow | None = None
    """Outdoor air that a fan or damper brings in while it runs; 0 if none."""
    combustion_air_from: Literal["outdoors, piped", "outdoors, openings", "indoors", "indoors and outdoors"] | None = (
        None
    )
    """Where its flame takes its air."""


class Appliance(Worked, ApplianceSays):
    """A water heater, hood, dryer, fireplace or fan."""

    kind: ClassVar[str] = "appliance"
    meaning: ClassVar[str] = "a water heater, hood, dryer, fireplace or exhaust fan"
    trade: ClassVar[str] = "heating"

    room: Annotated[Ident | None, LinkTo("room", inverse="appliances")] = None
    """Where it stands."""
    flue: Annotated[Ident | None, LinkTo("flue", inverse="appliances", absent_is_none=True)] = None
    """The flue that it vents into; one without this line vents into none that is listed."""
    was: ApplianceSays | None = None
    """What it was before the work."""


class FlueSays(Says):
    """What can be said of a flue."""

    type: (
        Literal[
            "clay-lined chimney",
            "unlined chimney",
            "metal liner",
            "type B vent",
            "plastic vent",
            "steel vent for condensing or powered equipment",
        ]
        | None
    ) = None
    """What it is."""
    area: Area | None = None
    """Inside area."""
    outside_wall: bool | None = None
    """Whether the chimney stands outside the heated house on one side or more."""
    inspected: bool | None = None
    """Whether it was inspected for this work."""
    sized_by: Literal["vent tables", "maker's instructions", "not sized"] | None = None
    """What its size was checked by for the appliances that stay on it."""


class Flue(Worked, FlueSays):
    """A chimney flue or vent."""

    kind: ClassVar[str] = "flue"
    meaning: ClassVar[str] = "a chimney flue or vent that carries flue gas out"
    trade: ClassVar[str] = "heating"
    was: FlueSays | None = None
    """What the flue was before the work."""


class VentilatorSays(Says):
    """What can be said of a ventilation system."""

    type: Literal["exhaust only", "supply only", "balanced with recovery", "balanced without recovery"] | None = None
    """How it moves air."""
    airflow: Airflow | None = None
    """Outdoor airflow while it runs."""
    run_share: Share | None = None
    """Part of each hour that it runs; 100 % if it runs all the time."""
    recovery: Share | None = None
    """Part of the sensible heat that it recovers at the winter design condition."""
    airflow_measured: bool | None = None
    """Whether that airflow was measured on site."""
    controlled: bool | None = None
    """Whether it has a control of its own that people can find."""
    ducted_to_bedrooms: bool | None = None
    """Whether its air reaches every bedroom, by its own ducts or through the furnace's."""
    inlet_distance: Length | None = None
    """Distance of its air inlet to the nearest vent end, exhaust or other foul air."""


class Ventilator(Worked, VentilatorSays):
    """A mechanical ventilation system of the whole house."""

    kind: ClassVar[str] = "ventilator"
    meaning: ClassVar[str] = "a mechanical ventilation system of the whole house"
    trade: ClassVar[str] = "heating"
    was: VentilatorSays | None = None
    """What it was before the work."""
