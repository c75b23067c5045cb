"""Every factor of the table of units is held against pint, or against the constant its row cites."""

from __future__ import annotations

from collections.abc import Iterator

import pint
import pytest

from checker.units import UNITS, Dimension, Unit, parse
from checker.units.grammar import awg_area

D = Dimension

INSIDE: dict[Dimension, str] = {
    D.SLOPE: "dimensionless",
    D.FRACTION: "dimensionless",
    D.ANGLE: "degree",
    D.THERMAL_RESISTANCE: "m**2*K/W",
    D.U_FACTOR: "W/(m**2*K)",
    D.CONDUCTIVITY: "W/(m*K)",
    D.PERMEANCE: "kg/(s*m**2*Pa)",
    D.PERMEABILITY: "kg/(s*m*Pa)",
    D.WIRE_SIZE: "mm**2",
    D.AREA: "m**2",
    D.VOLUME: "m**3",
    D.DENSITY: "kg/m**3",
    D.AIRFLOW: "m**3/s",
    D.WATER_FLOW: "m**3/s",
    D.AIR_CHANGES: "1/hour",
    D.FRICTION_RATE: "Pa/m",
    D.TEMPERATURE_DIFFERENCE: "delta_degC",
    D.APPARENT_POWER: "VA",
}
R_VALUE = "hour*foot**2*delta_degF/Btu_it"
IN_PINT: dict[str, str] = {
    "in": "inch",
    "ft": "foot",
    "yd": "yard",
    "mil": "inch/1000",
    "ft²": "foot**2",
    "in²": "inch**2",
    "m²": "m**2",
    "cm²": "cm**2",
    "mm²": "mm**2",
    "acre": "43560*foot**2",
    "ft³": "foot**3",
    "in³": "inch**3",
    "yd³": "yard**3",
    "gal": "gallon",
    "m³": "m**3",
    "cm³": "cm**3",
    "%": "percent",
    "in/ft": "inch/foot",
    "°": "degree",
    "K": "kelvin",
    "kip": "kip",
    "plf": "force_pound/foot",
    "lb ft": "force_pound*foot",
    "lb in": "force_pound*inch",
    "kip ft": "kip*foot",
    "kip/ft": "kip/foot",
    "psf": "force_pound/foot**2",
    "psi": "psi",
    "ksi": "kip/inch**2",
    "in. w.c.": "inch*1000*kg/m**3*g_0",
    "in. w.c./100 ft": "inch*1000*kg/m**3*g_0/(100*foot)",
    "Pa/m": "Pa/m",
    "ft w.c.": "foot*1000*kg/m**3*g_0",
    "pcf": "pound/foot**3",
    "kg/m³": "kg/m**3",
    "Btu/h": "Btu_it/hour",
    "kBtu/h": "1000*Btu_it/hour",
    "hp": "horsepower",
    "Btu": "Btu_it",
    "kBtu": "1000*Btu_it",
    "kWh": "kilowatt*hour",
    "Wh": "watt*hour",
    "cfm": "foot**3/minute",
    "m³/h": "m**3/hour",
    "m³/s": "m**3/s",
    "gpm": "gallon/minute",
    "L/s": "liter/second",
    "L/min": "liter/minute",
    "fpm": "foot/minute",
    "mph": "mile/hour",
    "ft/s": "foot/second",
    "km/h": "km/hour",
    "Ω/kft": "ohm/(1000*foot)",
    "Ω/km": "ohm/km",
    "Ω/ft": "ohm/foot",
    "Ω/m": "ohm/m",
    "kcmil": "1000*circular_mil",
    "R": R_VALUE,
    "h·ft²·°F/Btu": R_VALUE,
    "RSI": "m**2*K/W",
    "m²·K/W": "m**2*K/W",
    "U": f"1/({R_VALUE})",
    "Btu/(h·ft²·°F)": f"1/({R_VALUE})",
    "USI": "W/(m**2*K)",
    "W/(m²·K)": "W/(m**2*K)",
    "Btu·in/(h·ft²·°F)": f"inch/({R_VALUE})",
    "Btu/(h·ft·°F)": f"foot/({R_VALUE})",
    "W/(m·K)": "W/(m*K)",
    "ng/(s·m²·Pa)": "ng/(s*m**2*Pa)",
    "kg/(s·m²·Pa)": "kg/(s*m**2*Pa)",
    "ng/(Pa·s·m)": "ng/(Pa*s*m)",
    "kg/(Pa·s·m)": "kg/(Pa*s*m)",
    "air changes/h": "1/hour",
    "h": "hour",
    "min": "minute",
    "days": "day",
    "weeks": "week",
    "fc": "lumen/foot**2",
    "lx": "lux",
}
SAME_NAME = {
    D.MASS: {"lb": "pound", "oz": "ounce"},
    D.FORCE: {"lb": "force_pound"},
    D.TEMPERATURE_DIFFERENCE: {"°F": "delta_degF", "°C": "delta_degC"},
}


@pytest.fixture(scope="module")
def pint_units() -> Iterator[pint.UnitRegistry[float]]:
    yield pint.UnitRegistry()


def _name(unit: Unit) -> str:
    return f"{unit.dimension}: {unit.symbol}"


SCALES = [unit for unit in UNITS if unit.dimension is not D.TEMPERATURE and not unit.basis]


@pytest.mark.parametrize("unit", SCALES, ids=_name)
def test_every_factor_agrees_with_pint(unit: Unit, pint_units: pint.UnitRegistry[float]) -> None:
    theirs = SAME_NAME.get(unit.dimension, {}).get(unit.symbol) or IN_PINT.get(unit.symbol, unit.symbol)
    inside = INSIDE.get(unit.dimension, unit.dimension.si_unit)
    one = pint_units.parse_expression(theirs)
    assert float(unit.factor) == pytest.approx(
        pint_units.Quantity(1.0, one.units).to(inside).magnitude * one.magnitude, rel=1e-12, abs=0.0
    )


@pytest.mark.parametrize(("symbol", "theirs"), [("°F", "degF"), ("°C", "degC"), ("K", "kelvin")])
@pytest.mark.parametrize("number", [-40, 0, 68, 300.5])
def test_every_temperature_agrees_with_pint(
    symbol: str, theirs: str, number: float, pint_units: pint.UnitRegistry[float]
) -> None:
    expected = pint_units.Quantity(number, theirs).to("degC").magnitude
    assert parse(f"{number} {symbol}", D.TEMPERATURE) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("unit", [unit for unit in UNITS if unit.basis], ids=_name)
def test_a_unit_that_pint_lacks_agrees_with_the_constant_it_cites(
    unit: Unit, pint_units: pint.UnitRegistry[float]
) -> None:
    # ASTM E96 prints 1 perm = 57.2 ng/(s·m2·Pa); the rest of the digits follow from its definition.
    # A perm-inch is a perm through an inch. Mercury at 23 degC makes both units 0.4 per cent larger.
    printed, definition = {
        "perm": (57.2e-12, "grain/(hour*foot**2*inHg)"),
        "perm-in": (57.2e-12 * 0.0254, "grain*inch/(hour*foot**2*inHg)"),
    }[unit.symbol]
    assert float(unit.factor) == pytest.approx(printed, rel=5e-4, abs=0.0)
    defined = pint_units.Quantity(1.0, definition).to(INSIDE[unit.dimension]).magnitude
    assert float(unit.factor) == pytest.approx(defined, rel=1e-9, abs=0.0)


def test_a_layer_of_one_inch_has_the_permeance_of_its_permeability() -> None:
    through_an_inch = parse("1 perm-in", D.PERMEABILITY) / parse("1 in", D.LENGTH)
    assert through_an_inch == pytest.approx(parse("1 perm", D.PERMEANCE), rel=1e-12, abs=0.0)


@pytest.mark.parametrize(
    ("gauge", "circular_mils"),
    # Circular mils of solid conductors, National Electrical Code, chapter 9, table 8; from memory.
    [(18, 1620), (14, 4110), (12, 6530), (10, 10380), (6, 26240), (2, 66360), (0, 105600), (-3, 211600)],
)
def test_wire_gauges_agree_with_the_published_circular_mils(gauge: int, circular_mils: int) -> None:
    assert awg_area(gauge) == pytest.approx(parse(f"{circular_mils / 1000} kcmil", D.WIRE_SIZE), rel=3e-3)
