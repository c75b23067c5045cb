"""The table of units: how each is written, what it measures, and its exact factor to the unit held inside.

Every factor is an exact fraction of the defining constants below, except where π comes in (kcmil).
The tests hold every row against an independent library of units; a row that library lacks names its `basis`.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from checker.units.dimensions import Dimension

D = Dimension  # the table names it in every row

FOOT_M = Fraction("0.3048")
INCH_M = Fraction("0.0254")
POUND_KG = Fraction("0.45359237")
GRAVITY_M_S2 = Fraction("9.80665")
BTU_J = Fraction("1055.05585262")
GALLON_M3 = 231 * INCH_M**3
KCMIL_MM2 = Fraction(1000 * math.pi / 4 * 0.0254**2)

_POUND_FORCE_N = POUND_KG * GRAVITY_M_S2
_WATER_PA_M = 1000 * GRAVITY_M_S2
_MERCURY_INCH_PA = Fraction("133.322387415") * Fraction("25.4")
_GRAIN_KG = POUND_KG / 7000
_PERM = _GRAIN_KG / (3600 * FOOT_M**2 * _MERCURY_INCH_PA)
_BTU_H_W = BTU_J / 3600
_KELVIN_PER_F = Fraction(5, 9)
_R_VALUE = FOOT_M**2 * _KELVIN_PER_F / _BTU_H_W


@dataclass(frozen=True, slots=True)
class Unit:
    """A row of the table.

    symbol     the spelling that is printed
    dimension  what it measures
    factor     the inside unit per this unit: inside = (number + offset) × factor
    spellings  what else is read; capitals do not matter unless `cased`
    offset     what is added to the number first: temperatures only
    cased      capitals matter: mega and milli
    before     written before the number: R-20
    basis      where the factor comes from, if the tests' library of units has no such unit
    """

    symbol: str
    dimension: D
    factor: Fraction
    spellings: tuple[str, ...] = ()
    offset: Fraction = Fraction(0)
    cased: bool = False
    before: bool = False
    basis: str = ""


def _row(
    symbol: str,
    dimension: D,
    factor: Fraction | int | str,
    *spellings: str,
    offset: str = "0",
    cased: bool = False,
    before: bool = False,
    basis: str = "",
) -> Unit:
    return Unit(symbol, dimension, Fraction(factor), spellings, Fraction(offset), cased, before, basis)


_STANDARD_PERM = "ASTM E96: 1 perm = 1 grain/(h·ft2·inHg) = 57.2 ng/(s·m2·Pa), mercury at 0 degC; from memory"

UNITS: tuple[Unit, ...] = (
    _row("in", D.LENGTH, INCH_M, '"', "inch", "inches", "ins"),
    _row("ft", D.LENGTH, FOOT_M, "'", "foot", "feet"),
    _row("yd", D.LENGTH, 3 * FOOT_M, "yard", "yards"),
    _row("mil", D.LENGTH, INCH_M / 1000, "mils"),
    _row("mm", D.LENGTH, "0.001", "millimetre", "millimetres", "millimeter", "millimeters"),
    _row("cm", D.LENGTH, "0.01", "centimetre", "centimetres", "centimeter", "centimeters"),
    _row("m", D.LENGTH, 1, "metre", "metres", "meter", "meters"),
    _row("km", D.LENGTH, 1000),
    _row("ft²", D.AREA, FOOT_M**2, "sq ft", "sf", "sqft", "square foot", "square feet", "feet2"),
    _row("in²", D.AREA, INCH_M**2, "sq in", "square inch", "square inches", "inches2"),
    _row("m²", D.AREA, 1, "sq m", "square metre", "square metres", "square meter", "square meters"),
    _row("cm²", D.AREA, "0.0001", "sq cm"),
    _row("mm²", D.AREA, "0.000001", "sq mm"),
    _row("acre", D.AREA, 43560 * FOOT_M**2, "acres"),
    _row("ft³", D.VOLUME, FOOT_M**3, "cu ft", "cf", "cubic foot", "cubic feet"),
    _row("in³", D.VOLUME, INCH_M**3, "cu in", "cubic inch", "cubic inches"),
    _row("yd³", D.VOLUME, 27 * FOOT_M**3, "cu yd", "cubic yard", "cubic yards"),
    _row("gal", D.VOLUME, GALLON_M3, "US gal", "gallon", "gallons", "US gallons"),
    _row("m³", D.VOLUME, 1, "cu m", "cubic metre", "cubic metres", "cubic meter", "cubic meters"),
    _row("L", D.VOLUME, "0.001", "litre", "litres", "liter", "liters"),
    _row("cm³", D.VOLUME, "0.000001", "mL"),
    _row("%", D.SLOPE, "0.01", "percent", "per cent"),
    _row("in/ft", D.SLOPE, Fraction(1, 12), "in per ft", "inch per foot", "in per foot", "inches per foot"),
    _row("mm/m", D.SLOPE, "0.001", "mm per m"),
    _row("°", D.ANGLE, 1, "deg", "degree", "degrees"),
    _row("°F", D.TEMPERATURE, _KELVIN_PER_F, "degF", "degrees F", offset="-32"),
    _row("°C", D.TEMPERATURE, 1, "degC", "degrees C"),
    _row("K", D.TEMPERATURE, 1, offset="-273.15"),
    _row("°F", D.TEMPERATURE_DIFFERENCE, _KELVIN_PER_F, "degF", "degrees F", "F°"),
    _row("°C", D.TEMPERATURE_DIFFERENCE, 1, "degC", "degrees C", "C°"),
    _row("K", D.TEMPERATURE_DIFFERENCE, 1),
    _row("lb", D.MASS, POUND_KG, "lbs", "lbm", "pound", "pounds"),
    _row("oz", D.MASS, POUND_KG / 16, "ounce", "ounces"),
    _row("kg", D.MASS, 1, "kilogram", "kilograms"),
    _row("g", D.MASS, "0.001", "gram", "grams"),
    _row("lb", D.FORCE, _POUND_FORCE_N, "lbs", "lbf", "pound", "pounds"),
    _row("kip", D.FORCE, 1000 * _POUND_FORCE_N, "kips"),
    _row("N", D.FORCE, 1, "newton", "newtons"),
    _row("kN", D.FORCE, 1000),
    _row("plf", D.LINE_LOAD, _POUND_FORCE_N / FOOT_M, "lb/ft", "lbf/ft", "lb per ft", "pounds per foot"),
    _row("kip/ft", D.LINE_LOAD, 1000 * _POUND_FORCE_N / FOOT_M, "klf"),
    _row("kN/m", D.LINE_LOAD, 1000),
    _row("N/m", D.LINE_LOAD, 1),
    _row("lb ft", D.MOMENT, _POUND_FORCE_N * FOOT_M, "ft lb", "ft-lb", "lb-ft", "lbf ft", "ft lbf", "foot-pounds"),
    _row("lb in", D.MOMENT, _POUND_FORCE_N * INCH_M, "in lb", "in-lb", "lb-in", "inch-pounds"),
    _row("kip ft", D.MOMENT, 1000 * _POUND_FORCE_N * FOOT_M, "ft kip", "ft-kip", "kip-ft", "ft-kips", "ft kips"),
    _row("kN m", D.MOMENT, 1000, "kN·m", "kNm"),
    _row("N m", D.MOMENT, 1, "N·m", "Nm"),
    _row("psf", D.PRESSURE, _POUND_FORCE_N / FOOT_M**2, "lb/ft²", "lbf/ft²", "lb/sq ft", "lb/sf"),
    _row("psi", D.PRESSURE, _POUND_FORCE_N / INCH_M**2, "lb/in²", "lbf/in²", "lb/sq in", "psig"),
    _row("ksi", D.PRESSURE, 1000 * _POUND_FORCE_N / INCH_M**2),
    _row(
        "in. w.c.",
        D.PRESSURE,
        _WATER_PA_M * INCH_M,
        "iwc",
        "in wg",
        "iwg",
        "in H2O",
        "inch w.c.",
        "inches w.c.",
        '" w.c.',
        '"w.c.',
        '" w.g.',
        '"w.g.',
        "in of water",
        "inch of water",
        "inches of water",
    ),
    _row("ft w.c.", D.PRESSURE, _WATER_PA_M * FOOT_M, "ft H2O", "feet w.c.", "ft of head", "feet of head"),
    _row(
        "in. w.c./100 ft",
        D.FRICTION_RATE,
        _WATER_PA_M * INCH_M / (100 * FOOT_M),
        "iwc/100 ft",
        "in wg/100 ft",
        "in. w.c. per 100 ft",
        "in. w.g. per 100 ft",
    ),
    _row("Pa/m", D.FRICTION_RATE, 1),
    _row("Pa", D.PRESSURE, 1, "N/m²", "pascal", "pascals"),
    _row("kPa", D.PRESSURE, 1000, "kN/m²"),
    _row("MPa", D.PRESSURE, 1000000, "N/mm²", cased=True),
    _row("pcf", D.DENSITY, POUND_KG / FOOT_M**3, "lb/ft³", "lb/cu ft", "lb/cf"),
    _row("kg/m³", D.DENSITY, 1),
    _row("W", D.POWER, 1, "watt", "watts"),
    _row("kW", D.POWER, 1000, "kilowatt", "kilowatts"),
    _row("Btu/h", D.POWER, _BTU_H_W, "Btuh", "Btu/hr", "Btu per hour"),
    _row("kBtu/h", D.POWER, 1000 * _BTU_H_W, "kBtuh", "kBtu/hr"),
    _row("hp", D.POWER, 550 * FOOT_M * _POUND_FORCE_N, "horsepower"),
    _row("VA", D.APPARENT_POWER, 1, "volt-ampere", "volt-amperes"),
    _row("kVA", D.APPARENT_POWER, 1000),
    _row("kWh", D.ENERGY, 3600000),
    _row("Wh", D.ENERGY, 3600),
    _row("J", D.ENERGY, 1),
    _row("kJ", D.ENERGY, 1000),
    _row("MJ", D.ENERGY, 1000000, cased=True),
    _row("Btu", D.ENERGY, BTU_J),
    _row("kBtu", D.ENERGY, 1000 * BTU_J),
    _row("cfm", D.AIRFLOW, FOOT_M**3 / 60, "ft³/min", "cu ft/min"),
    _row("L/s", D.AIRFLOW, "0.001", "lps"),
    _row("m³/h", D.AIRFLOW, Fraction(1, 3600), "m³/hr"),
    _row("m³/s", D.AIRFLOW, 1),
    _row("gpm", D.WATER_FLOW, GALLON_M3 / 60, "gal/min", "US gpm"),
    _row("L/min", D.WATER_FLOW, Fraction(1, 60000), "lpm"),
    _row("L/s", D.WATER_FLOW, "0.001", "lps"),
    _row("m³/h", D.WATER_FLOW, Fraction(1, 3600), "m³/hr"),
    _row("fpm", D.VELOCITY, FOOT_M / 60, "ft/min"),
    _row("mph", D.VELOCITY, 5280 * FOOT_M / 3600, "mi/h"),
    _row("ft/s", D.VELOCITY, FOOT_M, "fps"),
    _row("m/s", D.VELOCITY, 1),
    _row("km/h", D.VELOCITY, Fraction(1000, 3600), "kph"),
    _row("A", D.CURRENT, 1, "amp", "amps", "ampere", "amperes"),
    _row("mA", D.CURRENT, "0.001", "milliamp", "milliamps", cased=True),
    _row("V", D.VOLTAGE, 1, "volt", "volts"),
    _row("mV", D.VOLTAGE, "0.001", cased=True),
    _row("kV", D.VOLTAGE, 1000),
    _row(
        "Ω/kft",
        D.RESISTANCE_PER_LENGTH,
        1 / (1000 * FOOT_M),
        "ohm/kft",
        "Ω/1000 ft",
        "ohm/1000 ft",
        "ohms/1000 ft",
    ),
    _row("Ω/km", D.RESISTANCE_PER_LENGTH, "0.001", "ohm/km", "ohms/km"),
    _row("Ω/ft", D.RESISTANCE_PER_LENGTH, 1 / FOOT_M, "ohm/ft"),
    _row("Ω/m", D.RESISTANCE_PER_LENGTH, 1, "ohm/m"),
    _row("kcmil", D.WIRE_SIZE, KCMIL_MM2, "MCM"),
    _row("mm²", D.WIRE_SIZE, 1, "sq mm"),
    _row("R", D.THERMAL_RESISTANCE, _R_VALUE, before=True),
    _row("RSI", D.THERMAL_RESISTANCE, 1, before=True),
    _row(
        "h·ft²·°F/Btu",
        D.THERMAL_RESISTANCE,
        _R_VALUE,
        "hr·ft²·°F/Btu",
        "ft²·h·°F/Btu",
        "ft²·hr·°F/Btu",
        "ft²·°F·h/Btu",
    ),
    _row("m²·K/W", D.THERMAL_RESISTANCE, 1, "K·m²/W", "m²·°C/W"),
    _row("U", D.U_FACTOR, 1 / _R_VALUE, before=True),
    _row("USI", D.U_FACTOR, 1, before=True),
    _row(
        "Btu/(h·ft²·°F)",
        D.U_FACTOR,
        1 / _R_VALUE,
        "Btu/(hr·ft²·°F)",
        "Btu/(ft²·h·°F)",
        "Btu/(ft²·hr·°F)",
        "Btu/(h·sq ft·°F)",
        "Btu/(hr·sq ft·°F)",
    ),
    _row("W/(m²·K)", D.U_FACTOR, 1, "W/(m²·°C)"),
    _row(
        "Btu·in/(h·ft²·°F)",
        D.CONDUCTIVITY,
        INCH_M / _R_VALUE,
        "Btu·in/(hr·ft²·°F)",
        "Btu·in/(ft²·h·°F)",
        "Btu·in/(ft²·hr·°F)",
        "Btu·in/(h·sq ft·°F)",
        "Btu·in/(hr·sq ft·°F)",
    ),
    _row(
        "Btu/(h·ft·°F)",
        D.CONDUCTIVITY,
        FOOT_M / _R_VALUE,
        "Btu/(hr·ft·°F)",
        "Btu/(ft·h·°F)",
        "Btu/(ft·hr·°F)",
    ),
    _row("W/(m·K)", D.CONDUCTIVITY, 1, "W/(m·°C)"),
    _row("perm", D.PERMEANCE, _PERM, "perms", "US perm", "US perms", basis=_STANDARD_PERM),
    _row("ng/(s·m²·Pa)", D.PERMEANCE, Fraction(1, 10**12), "ng", "ng/(Pa·s·m²)", "ng/(m²·s·Pa)"),
    _row("kg/(s·m²·Pa)", D.PERMEANCE, 1, "kg/(Pa·s·m²)", "kg/(m²·s·Pa)"),
    _row(
        "perm-in",
        D.PERMEABILITY,
        _PERM * INCH_M,
        "perm-inch",
        "perm-inches",
        "perms-in",
        "US perm-in",
        "US perm-inch",
        basis=_STANDARD_PERM,
    ),
    _row("ng/(Pa·s·m)", D.PERMEABILITY, Fraction(1, 10**12), "ng/(s·m·Pa)", "ng/(m·s·Pa)"),
    _row("kg/(Pa·s·m)", D.PERMEABILITY, 1, "kg/(s·m·Pa)", "kg/(m·s·Pa)"),
    _row(
        "air changes/h",
        D.AIR_CHANGES,
        1,
        "air changes per hour",
        "air change per hour",
        "air changes/hr",
        "1/h",
        "/h",
        "/hr",
        "per h",
        "per hour",
        "ACH",
        "ACH50",
        "ACH@50",
        "ACH@50 Pa",
        "ACH @ 50 Pa",
        "ACH at 50 Pa",
        "ac/h",
    ),
    _row("s", D.TIME, 1, "sec", "second", "seconds"),
    _row("min", D.TIME, 60, "minute", "minutes", "mins"),
    _row("h", D.TIME, 3600, "hr", "hrs", "hour", "hours"),
    _row("days", D.TIME, 86400, "day", "d"),
    _row("weeks", D.TIME, 7 * 86400, "week", "wk"),
    _row("fc", D.ILLUMINANCE, 1 / FOOT_M**2, "footcandle", "footcandles", "foot-candle", "foot-candles"),
    _row("lx", D.ILLUMINANCE, 1, "lux"),
    _row("%", D.FRACTION, "0.01", "percent", "per cent"),
)

# What is written without a unit of the table: these forms are read by the grammar.
_FORMS: dict[D, tuple[str, ...]] = {D.SLOPE: (":12", "°", "deg"), D.WIRE_SIZE: ("AWG",)}

# The units a dimension prints in, where these are not the first rows of its base.
_PREFERRED: dict[D, tuple[str, ...]] = {
    D.STRESS: ("psi", "MPa"),
    D.AIR_PRESSURE: ("in. w.c.", "Pa"),
    D.WATER_PRESSURE: ("psi", "kPa"),
    D.HOUSE_PRESSURE: ("Pa", "in. w.c."),
    D.HEAT_FLOW: ("Btu/h", "kW"),
    D.WIND_SPEED: ("mph", "km/h"),
}

_EXAMPLES: dict[D, str] = {
    D.LENGTH: "7-3/4 in",
    D.AREA: "70 ft²",
    D.VOLUME: "1,200 ft³",
    D.SLOPE: "8:12",
    D.ANGLE: "35°",
    D.TEMPERATURE: "68 °F",
    D.TEMPERATURE_DIFFERENCE: "20 °F",
    D.MASS: "200 lb",
    D.FORCE: "200 lb",
    D.LINE_LOAD: "50 plf",
    D.MOMENT: "2,500 ft-lb",
    D.PRESSURE: "30 psf",
    D.STRESS: "1,500 psi",
    D.AIR_PRESSURE: "0.5 in. w.c.",
    D.WATER_PRESSURE: "60 psi",
    D.HOUSE_PRESSURE: "3 Pa",
    D.FRICTION_RATE: "0.08 in. w.c./100 ft",
    D.DENSITY: "35 pcf",
    D.POWER: "12 kW",
    D.HEAT_FLOW: "60,000 Btu/h",
    D.APPARENT_POWER: "1,500 VA",
    D.ENERGY: "10 kWh",
    D.AIRFLOW: "350 cfm",
    D.WATER_FLOW: "2.5 gpm",
    D.VELOCITY: "700 fpm",
    D.WIND_SPEED: "115 mph",
    D.CURRENT: "100 A",
    D.VOLTAGE: "240 V",
    D.RESISTANCE_PER_LENGTH: "3.07 Ω/kft",
    D.WIRE_SIZE: "14 AWG",
    D.THERMAL_RESISTANCE: "R-20",
    D.U_FACTOR: "U-0.30",
    D.CONDUCTIVITY: "0.8 Btu·in/(h·ft²·°F)",
    D.PERMEANCE: "0.5 perm",
    D.PERMEABILITY: "1.5 perm-in",
    D.AIR_CHANGES: "3.0 ACH50",
    D.TIME: "20 min",
    D.ILLUMINANCE: "10 fc",
    D.FRACTION: "8 %",
    D.COUNT: "14",
    D.YEAR: "1912",
    D.NUMBER: "1.25",
}

SAME_SIGN = str.maketrans(
    {"²": "2", "³": "3", "º": "°", "⋅": "·", "∙": "·", "*": "·", "\N{OHM SIGN}": "Ω", "\N{MICRO SIGN}": "μ"}
)
_POINT = re.compile(r"(?<=[A-Za-z])\.|(?<=[A-Za-z][23])\.(?=[A-Za-z°])")
_JOINT = re.compile(r"(?<=[\w)])[ ·-]+(?=[\w(])")
_SLASH = re.compile(r" */ *")
_BRACKETS = re.compile(r"\(([^()]*)\)")
_DEGREE = re.compile(r"°(?=[FCK])")
_POWER = re.compile(r"\^(?=[23])")


def _key(spelling: str) -> str:
    """Reduce a spelling to what distinguishes it: `Btu/(h·ft²·°F)` and `Btu / h-ft^2-F` are one."""
    text = _POWER.sub("", spelling.strip().translate(SAME_SIGN))
    text = _DEGREE.sub("", _POINT.sub("", text))
    return _JOINT.sub("", _BRACKETS.sub(r"\1", _SLASH.sub("/", text)))


def _indexed() -> dict[tuple[D, str], Unit]:
    index: dict[tuple[D, str], Unit] = {}
    for unit in UNITS:
        for spelling in (unit.symbol, *unit.spellings):
            key = _key(spelling)
            index.setdefault((unit.dimension, spelling), unit)
            index.setdefault((unit.dimension, key), unit)
            if not unit.cased:
                index.setdefault((unit.dimension, key.casefold()), unit)
    return index


_INDEX = _indexed()


def unit_named(spelling: str, dimension: D) -> Unit | None:
    """Find the unit of a dimension that a spelling names.

    spelling   the unit as written, without the number
    dimension  what is measured
    Returns    the unit, or None
    """
    base = dimension.base
    unit = _INDEX.get((base, spelling))
    if unit is None:
        key = _key(spelling)
        unit = _INDEX.get((base, key)) or _INDEX.get((base, key.casefold()))
    return unit


def units_of(dimension: D) -> Iterator[Unit]:
    """Go through the units of a dimension.

    dimension  what is measured
    Returns    the rows of the table, in its order
    """
    return (unit for unit in UNITS if unit.dimension is dimension.base)


def symbols_for(dimension: D) -> list[str]:
    """List the units of a dimension by symbol.

    dimension  what is measured
    Returns    one symbol a unit, those the dimension prints in first; empty if it needs no unit
    """
    symbols = [
        *_PREFERRED.get(dimension, ()),
        *_FORMS.get(dimension, ()),
        *(u.symbol for u in units_of(dimension)),
    ]
    return list(dict.fromkeys(symbols))


def units_for(dimension: D) -> list[str]:
    """List every accepted spelling of the units of a dimension.

    dimension  what is measured
    Returns    first a symbol for each unit (those the dimension prints in first), then the other spellings;
               empty if the dimension needs no unit
    """
    others = (spelling for unit in units_of(dimension) for spelling in unit.spellings)
    return list(dict.fromkeys([*symbols_for(dimension), *others]))


def example_for(dimension: D) -> str:
    """Give an example of a quantity as the trade writes it.

    dimension  what is measured
    Returns    a text that `parse` reads
    """
    return _EXAMPLES[dimension]
