"""Air itself: pressure at an altitude, density, viscosity.

pressure   standard_pressure, altitude_density_ratio
density    air_density
viscosity  air_viscosity

Standard air of the trade is what `air_density` gives for dry air of about 20 degC at sea level.
"""

from __future__ import annotations

from checker.calc._checks import between, positive
from checker.calc.air import _psychrometrics
from checker.calc.errors import OutOfRange

_VAPOUR_TO_DRY_MASS = 0.621945
_ZERO_CELSIUS_K = 273.15


def standard_pressure(altitude_m: float) -> float:
    """Air pressure of the standard atmosphere at an altitude. [Pa]

    Parameters
        altitude_m: float — above sea level, negative below it. [m], -500 to 10000
    Returns
        float — pressure. [Pa]
    Raises
        OutOfRange — an altitude outside its range.
    Notes
        The weather moves the true pressure by a few per cent about this figure.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 1, equation 3 and table 1.
    Examples
        [1], table 1: 89.875 kPa at 1000 m.

        >>> round(standard_pressure(1000.0))
        89875
    """
    return _psychrometrics.standard_pressure(between("altitude_m", altitude_m, -500.0, 10000.0))


def altitude_density_ratio(altitude_m: float) -> float:
    """Density of air at an altitude over that at sea level, at one temperature. [ratio]

    Parameters
        altitude_m: float — above sea level, negative below it. [m], -500 to 10000
    Returns
        float — ratio, 1 at sea level. [ratio]
    Raises
        OutOfRange — an altitude outside its range.
    Notes
        Ratio of the pressures. Air of a house keeps its temperature on a mountain; tables of the standard
        atmosphere that cool the air with height print a larger ratio.
    References
        [1] US Bureau of Reclamation, Design Guide for Heating, Ventilating, and Air Conditioning Systems,
            2006, table 6a.
    Examples
        [1]: 0.801 at 6000 ft.

        >>> round(altitude_density_ratio(6000 * 0.3048), 3)
        0.801
    """
    return standard_pressure(altitude_m) / standard_pressure(0.0)


def air_density(temperature_c: float, pressure_pa: float, relative_humidity_ratio: float = 0.0) -> float:
    """Density of dry or moist air. [kg/m3]

    Parameters
        temperature_c: float — temperature of the air. [C], -60 to 100
        pressure_pa: float — air pressure. [Pa], over 0
        relative_humidity_ratio: float — relative humidity. [ratio], 0 to 1
    Returns
        float — mass of air and vapour in a volume. [kg/m3]
    Raises
        OutOfRange — a value outside its range, a vapour pressure that reaches the air pressure.
    Notes
        Dry air at its share of the pressure, and W times its mass of vapour, W = 0.621945 pv / (p − pv). The
        saturation pressure is over ice below freezing. Ideal gases: good to about 0.1 per cent.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 1, equations 11, 20 and 26, table 2.
    Examples
        [1], table 2: dry air of 25 degC takes 0.8443 m3/kg.

        >>> round(1 / air_density(25.0, 101325.0), 2)
        0.84
    """
    between("temperature_c", temperature_c, -60.0, 100.0)
    positive("pressure_pa", pressure_pa)
    humidity = between("relative_humidity_ratio", relative_humidity_ratio, 0.0, 1.0)
    vapour_pa = humidity * _psychrometrics.saturation_pressure(temperature_c)
    dry_pa = pressure_pa - vapour_pa
    if dry_pa <= 0:
        raise OutOfRange("pressure_pa", pressure_pa, f"over the vapour pressure, {vapour_pa:.6g}")
    return _psychrometrics.dry_air_density(temperature_c, dry_pa) * (1 + _VAPOUR_TO_DRY_MASS * vapour_pa / dry_pa)


def air_viscosity(temperature_c: float) -> float:
    """Dynamic viscosity of air. [Pa s]

    Parameters
        temperature_c: float — temperature of the air. [C], -60 to 100
    Returns
        float — dynamic viscosity. [Pa s]
    Raises
        OutOfRange — a temperature outside its range.
    Notes
        Sutherland's formula; vapour and altitude hardly matter.
    References
        [1] US Standard Atmosphere, 1976, equation 51 and table I.
    Examples
        [1]: 1.7894e-5 Pa s at 15 degC.

        >>> round(air_viscosity(15.0) * 1e5, 4)
        1.7894
    """
    from fluids.atmosphere import ATMOSPHERE_1976

    kelvin = between("temperature_c", temperature_c, -60.0, 100.0) + _ZERO_CELSIUS_K
    return float(ATMOSPHERE_1976.viscosity(kelvin))
