"""The dimensions a quantity of a plan can have, each with the unit it is held in."""

from __future__ import annotations

from enum import StrEnum


class Dimension(StrEnum):
    """What a quantity measures.

    si_unit  the unit `parse` gives and `show` takes: SI, but degC, degrees, mm2 (wires) and 1/h (air changes)
    phrase   the dimension in words, with its article, as messages say it

    A stress is written in the units of a pressure, but prints in psi where a floor load prints in psf:
    so it is a dimension of its own that shares the units of its `base`.
    """

    si_unit: str
    phrase: str
    _shares: str

    def __new__(cls, name: str, si_unit: str = "", phrase: str = "", base: str = "") -> Dimension:
        """Make a member whose value is its name; the rest may be left out only to look a member up."""
        member = str.__new__(cls, name)
        member._value_ = name
        member.si_unit = si_unit
        member.phrase = phrase
        member._shares = base
        return member

    @property
    def base(self) -> Dimension:
        """Give the dimension whose units this one shares, itself if its units are its own."""
        return _BY_NAME[self._shares] if self._shares else self

    LENGTH = "length", "m", "a length"
    AREA = "area", "m2", "an area"
    VOLUME = "volume", "m3", "a volume"
    SLOPE = "slope", "1", "a slope"
    ANGLE = "angle", "deg", "an angle"
    TEMPERATURE = "temperature", "degC", "a temperature"
    TEMPERATURE_DIFFERENCE = "temperature_difference", "K", "a temperature difference"
    MASS = "mass", "kg", "a mass"
    FORCE = "force", "N", "a force"
    LINE_LOAD = "line_load", "N/m", "a line load"
    MOMENT = "moment", "N m", "a bending moment"
    PRESSURE = "pressure", "Pa", "a pressure"
    STRESS = "stress", "Pa", "a stress", "pressure"
    AIR_PRESSURE = "air_pressure", "Pa", "an air pressure", "pressure"
    HOUSE_PRESSURE = "house_pressure", "Pa", "a pressure across a house or a door", "pressure"
    FRICTION_RATE = "friction_rate", "Pa/m", "a friction rate"
    WATER_PRESSURE = "water_pressure", "Pa", "a water pressure", "pressure"
    DENSITY = "density", "kg/m3", "a density"
    POWER = "power", "W", "a power"
    HEAT_FLOW = "heat_flow", "W", "a heat flow", "power"
    APPARENT_POWER = "apparent_power", "VA", "an apparent power"
    ENERGY = "energy", "J", "an energy"
    AIRFLOW = "airflow", "m3/s", "an airflow"
    WATER_FLOW = "water_flow", "m3/s", "a water flow"
    VELOCITY = "velocity", "m/s", "a velocity"
    WIND_SPEED = "wind_speed", "m/s", "a wind speed", "velocity"
    CURRENT = "current", "A", "a current"
    VOLTAGE = "voltage", "V", "a voltage"
    RESISTANCE_PER_LENGTH = "resistance_per_length", "ohm/m", "a resistance per length"
    WIRE_SIZE = "wire_size", "mm2", "a wire size"
    THERMAL_RESISTANCE = "thermal_resistance", "m2K/W", "a thermal resistance"
    U_FACTOR = "u_factor", "W/m2K", "a U-factor"
    CONDUCTIVITY = "conductivity", "W/mK", "a thermal conductivity"
    PERMEANCE = "permeance", "kg/(s m2 Pa)", "a vapour permeance"
    PERMEABILITY = "permeability", "kg/(s m Pa)", "a vapour permeability"
    AIR_CHANGES = "air_changes", "1/h", "a rate of air changes"
    TIME = "time", "s", "a time"
    ILLUMINANCE = "illuminance", "lx", "an illuminance"
    FRACTION = "fraction", "1", "a fraction"
    COUNT = "count", "1", "a whole number"
    YEAR = "year", "1", "a year", "count"
    NUMBER = "number", "1", "a plain number"


_BY_NAME = {dimension.value: dimension for dimension in Dimension}
