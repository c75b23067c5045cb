"""The one door to the library of psychrometrics.

The library keeps its system of units in a global variable; it is set to SI here and nowhere else.
"""

from __future__ import annotations

from functools import cache
from types import ModuleType


@cache
def _psychrolib() -> ModuleType:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    module: ModuleType = psychrolib
    return module


def saturation_pressure(temperature_c: float) -> float:
    """Saturation vapour pressure, over ice below the triple point of water. [Pa]"""
    return float(_psychrolib().GetSatVapPres(temperature_c))


def dew_point(vapour_pressure_pa: float) -> float:
    """Temperature at which a vapour pressure saturates, over ice below the triple point. [C]"""
    return float(_psychrolib().GetTDewPointFromVapPres(100.0, vapour_pressure_pa))


def standard_pressure(altitude_m: float) -> float:
    """Pressure of the standard atmosphere at an altitude. [Pa]"""
    return float(_psychrolib().GetStandardAtmPressure(altitude_m))


def dry_air_density(temperature_c: float, pressure_pa: float) -> float:
    """Density of dry air. [kg/m3]"""
    return float(_psychrolib().GetDryAirDensity(temperature_c, pressure_pa))
