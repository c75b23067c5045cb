"""Air at the altitude of the site."""

from __future__ import annotations

from checker.calc.air import air_properties


def density(temperature_c: float, altitude_m: float | None) -> float:
    """Density of air, at sea level if the plan gives no altitude [kg/m3]."""
    return air_properties.air_density(temperature_c, air_properties.standard_pressure(altitude_m or 0.0))
