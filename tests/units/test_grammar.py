"""What the trade writes is read; what cannot be meant is refused, in words that help."""

from __future__ import annotations

import math
import pickle
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.units import Dimension, QuantityError, example_for, parse, units_for

D = Dimension
INCH = 0.0254

READ: list[tuple[object, Dimension, float]] = [
    ("""14'-6 1/2\"""", D.LENGTH, 174.5 * INCH),
    ("""14'-6-1/2\"""", D.LENGTH, 174.5 * INCH),
    ("""14' - 6 1/2\"""", D.LENGTH, 174.5 * INCH),
    ("""14'-6½\"""", D.LENGTH, 174.5 * INCH),
    ("""14'6\"""", D.LENGTH, 174 * INCH),
    ("14′-6″", D.LENGTH, 174 * INCH),
    ("14’-6”", D.LENGTH, 174 * INCH),
    ("14'-6''", D.LENGTH, 174 * INCH),
    ("14 ft 6 in", D.LENGTH, 174 * INCH),
    ("14 ft. 6 in.", D.LENGTH, 174 * INCH),
    ("14ft-6in", D.LENGTH, 174 * INCH),
    ("14 feet, 6 inches", D.LENGTH, 174 * INCH),
    ("-14'-6\"", D.LENGTH, -174 * INCH),
    ("14'", D.LENGTH, 168 * INCH),
    ("14 FT", D.LENGTH, 168 * INCH),
    ("0'-6\"", D.LENGTH, 6 * INCH),
    ("7-3/4 in", D.LENGTH, 7.75 * INCH),
    ("7 3/4 in", D.LENGTH, 7.75 * INCH),
    ("7 3⁄4 in", D.LENGTH, 7.75 * INCH),
    ("7–3/4 in", D.LENGTH, 7.75 * INCH),
    ("7.75 in", D.LENGTH, 7.75 * INCH),
    ('7-3/4"', D.LENGTH, 7.75 * INCH),
    ("7¾″", D.LENGTH, 7.75 * INCH),
    ("7-¾ in", D.LENGTH, 7.75 * INCH),
    ("7\u00a0¾\u00a0in", D.LENGTH, 7.75 * INCH),
    ("¾ in", D.LENGTH, 0.75 * INCH),
    ("3/4 in", D.LENGTH, 0.75 * INCH),
    (".75 in", D.LENGTH, 0.75 * INCH),
    ("−2 in", D.LENGTH, -2 * INCH),
    ("+2 in", D.LENGTH, 2 * INCH),
    ("16 in o.c.", D.LENGTH, 16 * INCH),
    ("16 in. o.c.", D.LENGTH, 16 * INCH),
    ('16" oc', D.LENGTH, 16 * INCH),
    ("16 in on center", D.LENGTH, 16 * INCH),
    ("400 mm on centre", D.LENGTH, 0.4),
    ("2438 mm", D.LENGTH, 2.438),
    ("2,438 mm", D.LENGTH, 2.438),
    ("2.4 m", D.LENGTH, 2.4),
    ("6 mil", D.LENGTH, 0.006 * INCH),
    ("1e3 mm", D.LENGTH, 1.0),
    ("1,250 ft2", D.AREA, 1250 * 0.3048**2),
    ("1,250 ft²", D.AREA, 1250 * 0.3048**2),
    ("1,250 sq ft", D.AREA, 1250 * 0.3048**2),
    ("1,250 sq. ft.", D.AREA, 1250 * 0.3048**2),
    ("1250 sf", D.AREA, 1250 * 0.3048**2),
    ("1250 SF", D.AREA, 1250 * 0.3048**2),
    ("18 in³", D.VOLUME, 18 * INCH**3),
    ("8/12", D.SLOPE, 8 / 12),
    ("2.5/12", D.SLOPE, 2.5 / 12),
    ("14/12", D.SLOPE, 14 / 12),
    ("3:12", D.SLOPE, 0.25),
    ("8-1/2:12", D.SLOPE, 8.5 / 12),
    ("1:1.5", D.SLOPE, 1 / 1.5),
    ("8 in 12", D.SLOPE, 8 / 12),
    ("1/4 in per ft", D.SLOPE, 0.25 / 12),
    ("1/4 in/ft", D.SLOPE, 0.25 / 12),
    ("20 mm/m", D.SLOPE, 0.02),
    ("2 %", D.SLOPE, 0.02),
    ("45°", D.SLOPE, math.tan(math.pi / 4)),
    ("35 deg", D.SLOPE, math.tan(math.radians(35))),
    ("-45°", D.SLOPE, -math.tan(math.pi / 4)),
    ("35°", D.ANGLE, 35.0),
    ("35 degrees", D.ANGLE, 35.0),
    ("68 F", D.TEMPERATURE, 20.0),
    ("68°F", D.TEMPERATURE, 20.0),
    ("68 °F", D.TEMPERATURE, 20.0),
    ("68 deg F", D.TEMPERATURE, 20.0),
    ("-40 °F", D.TEMPERATURE, -40.0),
    ("-18 °C", D.TEMPERATURE, -18.0),
    ("0 K", D.TEMPERATURE, -273.15),
    ("18 F", D.TEMPERATURE_DIFFERENCE, 10.0),
    ("20 °C", D.TEMPERATURE_DIFFERENCE, 20.0),
    ("45 F", D.TEMPERATURE_DIFFERENCE, 25.0),
    ("45 F°", D.TEMPERATURE_DIFFERENCE, 25.0),
    ("25 C°", D.TEMPERATURE_DIFFERENCE, 25.0),
    ("25 K", D.TEMPERATURE_DIFFERENCE, 25.0),
    ("-9 °F", D.TEMPERATURE_DIFFERENCE, -5.0),
    ("200 lb", D.MASS, 90.718474),
    ("200 lb", D.FORCE, 889.6443230521),
    ("200 lbf", D.FORCE, 889.6443230521),
    ("0.89 kN", D.FORCE, 890.0),
    ("50 plf", D.LINE_LOAD, 50 * 4.4482216152605 / 0.3048),
    ("30 psf", D.PRESSURE, 30 * 47.88025898033584),
    ("1.2 kPa", D.PRESSURE, 1200.0),
    ("0.5 in. w.c.", D.PRESSURE, 124.544455),
    ("0.5 in w.c.", D.AIR_PRESSURE, 124.544455),
    ("0.5 iwc", D.AIR_PRESSURE, 124.544455),
    ("0.5 in wc", D.AIR_PRESSURE, 124.544455),
    ("0.5 in. WC", D.AIR_PRESSURE, 124.544455),
    ("0.5 inch w.c.", D.AIR_PRESSURE, 124.544455),
    ('0.5" w.c.', D.AIR_PRESSURE, 124.544455),
    ('0.5"wc', D.AIR_PRESSURE, 124.544455),
    ("0.5″ w.g.", D.AIR_PRESSURE, 124.544455),
    ("0.5 in. of water", D.AIR_PRESSURE, 124.544455),
    ("125 Pa", D.AIR_PRESSURE, 125.0),
    ("1,500 psi", D.STRESS, 1500 * 6894.757293168361),
    ("9 MPa", D.STRESS, 9e6),
    ("12 kW", D.POWER, 12000.0),
    ("12 KW", D.POWER, 12000.0),
    ("60 kBtu/h", D.HEAT_FLOW, 60000 * 1055.05585262 / 3600),
    ("60,000 BTU/HR", D.POWER, 60000 * 1055.05585262 / 3600),
    ("60,000 Btu/h", D.HEAT_FLOW, 60000 * 1055.05585262 / 3600),
    ("1,500 VA", D.APPARENT_POWER, 1500.0),
    ("350 cfm", D.AIRFLOW, 350 * 0.3048**3 / 60),
    ("165 L/s", D.AIRFLOW, 0.165),
    ("25 l/s", D.AIRFLOW, 0.025),
    ("2.5 gpm", D.WATER_FLOW, 2.5 * 231 * INCH**3 / 60),
    ("115 mph", D.WIND_SPEED, 51.4096),
    ("100 A", D.CURRENT, 100.0),
    ("100 amp", D.CURRENT, 100.0),
    ("5 mA", D.CURRENT, 0.005),
    ("240V", D.VOLTAGE, 240.0),
    ("3.07 ohm/1000 ft", D.RESISTANCE_PER_LENGTH, 3.07 / 304.8),
    ("4/0 AWG", D.WIRE_SIZE, 107.2193),
    ("0000 AWG", D.WIRE_SIZE, 107.2193),
    ("14 AWG", D.WIRE_SIZE, 2.080908),
    ("#14 awg", D.WIRE_SIZE, 2.080908),
    ("No. 14 AWG", D.WIRE_SIZE, 2.080908),
    ("250 kcmil", D.WIRE_SIZE, 126.67687),
    ("2.5 mm²", D.WIRE_SIZE, 2.5),
    ("R-20", D.THERMAL_RESISTANCE, 3.5222036736),
    ("R20", D.THERMAL_RESISTANCE, 3.5222036736),
    ("R 20", D.THERMAL_RESISTANCE, 3.5222036736),
    ("r–20", D.THERMAL_RESISTANCE, 3.5222036736),
    ("RSI 3.5", D.THERMAL_RESISTANCE, 3.5),
    ("RSI-3.5", D.THERMAL_RESISTANCE, 3.5),
    ("20 h·ft2·F/Btu", D.THERMAL_RESISTANCE, 3.5222036736),
    ("20 hr-ft^2-°F/BTU", D.THERMAL_RESISTANCE, 3.5222036736),
    ("3.5 m²·K/W", D.THERMAL_RESISTANCE, 3.5),
    ("3.5 m2.K/W", D.THERMAL_RESISTANCE, 3.5),
    ("U-0.30", D.U_FACTOR, 1.703479002),
    ("USI 1.7", D.U_FACTOR, 1.7),
    ("0.30 Btu/(h·ft²·°F)", D.U_FACTOR, 1.703479002),
    ("0.30 Btu/(h ft2 F)", D.U_FACTOR, 1.703479002),
    ("0.30 BTU/hr.ft2.F", D.U_FACTOR, 1.703479002),
    ("0.30 Btu/(hr·sq ft·°F)", D.U_FACTOR, 1.703479002),
    ("1.7 W/m2K", D.U_FACTOR, 1.7),
    ("1.7 W/m².K", D.U_FACTOR, 1.7),
    ("0.12 W/mK", D.CONDUCTIVITY, 0.12),
    ("0.12 W/m.K", D.CONDUCTIVITY, 0.12),
    ("0.26 BTU/h ft F", D.CONDUCTIVITY, 0.44999113),
    ("1.0 Btu in/(h ft2 F)", D.CONDUCTIVITY, 0.14422792),
    ("1.0 BTU-in/hr-ft2-°F", D.CONDUCTIVITY, 0.14422792),
    ("1.0 Btu in./(ft² h °F)", D.CONDUCTIVITY, 0.14422792),
    ("0.5 perm", D.PERMEANCE, 2.8606747e-11),
    ("60 ng", D.PERMEANCE, 6e-11),
    ("60 ng/(Pa s m2)", D.PERMEANCE, 6e-11),
    ("60 ng/s.m2.Pa", D.PERMEANCE, 6e-11),
    ("6e-11 kg/(s m2 Pa)", D.PERMEANCE, 6e-11),
    ("1 perm-in", D.PERMEABILITY, 1.4532228e-12),
    ("1 perm in", D.PERMEABILITY, 1.4532228e-12),
    ("1 perm inch", D.PERMEABILITY, 1.4532228e-12),
    ("1 perm·in.", D.PERMEABILITY, 1.4532228e-12),
    ("2 ng/(Pa s m)", D.PERMEABILITY, 2e-12),
    ("2 ng/(s m Pa)", D.PERMEABILITY, 2e-12),
    ("2 ng/Pa.s.m", D.PERMEABILITY, 2e-12),
    ("2e-12 kg/(s m Pa)", D.PERMEABILITY, 2e-12),
    ("3.0 ACH50", D.AIR_CHANGES, 3.0),
    ("3 ACH@50", D.AIR_CHANGES, 3.0),
    ("3 ACH @ 50 Pa", D.AIR_CHANGES, 3.0),
    ("3 ach", D.AIR_CHANGES, 3.0),
    ("3 /h", D.AIR_CHANGES, 3.0),
    ("0.35/h", D.AIR_CHANGES, 0.35),
    ("1/3 /h", D.AIR_CHANGES, 1 / 3),
    ("0.35 1/h", D.AIR_CHANGES, 0.35),
    ("0.35 per hour", D.AIR_CHANGES, 0.35),
    ("1 h", D.TIME, 3600.0),
    ("1 h 30 min", D.TIME, 5400.0),
    ("20 min", D.TIME, 1200.0),
    ("3 days", D.TIME, 259200.0),
    ("10 fc", D.ILLUMINANCE, 107.63910417),
    ("8 %", D.FRACTION, 0.08),
    ("50 percent", D.FRACTION, 0.5),
    ("1/3", D.FRACTION, 1 / 3),
    ("0.5", D.FRACTION, 0.5),
    (0.5, D.FRACTION, 0.5),
    (1, D.FRACTION, 1.0),
    (14, D.COUNT, 14.0),
    ("14", D.COUNT, 14.0),
    (14.0, D.COUNT, 14.0),
    (1.25, D.NUMBER, 1.25),
    (-3, D.NUMBER, -3.0),
    (1e-07, D.NUMBER, 1e-07),
    ("1-1/2", D.NUMBER, 1.5),
]


@pytest.mark.parametrize(("written", "dimension", "inside"), READ)
def test_what_the_trade_writes_is_read(written: object, dimension: Dimension, inside: float) -> None:
    assert parse(written, dimension) == pytest.approx(inside, rel=1e-6, abs=0.0)


@pytest.mark.parametrize("dimension", D)
def test_every_example_is_read(dimension: Dimension) -> None:
    assert math.isfinite(parse(example_for(dimension), dimension))


@pytest.mark.parametrize("dimension", D)
def test_every_spelling_is_read(dimension: Dimension) -> None:
    for spelling in units_for(dimension):
        if spelling == ":12":
            assert parse(f"2{spelling}", dimension) > 0
        elif spelling in ("R", "RSI", "U", "USI"):
            assert parse(f"{spelling}-2", dimension) > 0
        else:
            assert math.isfinite(parse(f"2 {spelling}", dimension))


@pytest.mark.parametrize(
    ("one", "other", "dimension"),
    [
        ("7-3/4 in", "196.85 mm", D.LENGTH),
        ("7-3/4 in", "19.685 cm", D.LENGTH),
        ("14'-6\"", "4419.6 mm", D.LENGTH),
        ("36 in", "3 ft", D.LENGTH),
        ("0.1 m", "100 mm", D.LENGTH),
        ("144 in²", "1 ft²", D.AREA),
        ("70 ft²", "6.5032128 m²", D.AREA),
        ("68 °F", "20 °C", D.TEMPERATURE),
        ("1 psi", "144 psf", D.PRESSURE),
        ("60 kBtu/h", "60,000 Btu/h", D.POWER),
        ("8:12", "2:3", D.SLOPE),
        ("8/12", "8 in 12", D.SLOPE),
        ("R-20", "20 h·ft²·°F/Btu", D.THERMAL_RESISTANCE),
        ("90 min", "1 h 30 min", D.TIME),
    ],
)
def test_the_same_quantity_in_two_notations_is_equal(one: str, other: str, dimension: Dimension) -> None:
    assert parse(one, dimension) == parse(other, dimension)


@pytest.mark.parametrize(
    ("written", "as_temperature", "as_difference"),
    [("45 F", 65 / 9, 25.0), ("45 °F", 65 / 9, 25.0), ("25 °C", 25.0, 25.0), ("25 K", -248.15, 25.0)],
)
def test_a_rise_of_temperature_is_not_read_as_a_temperature(
    written: str, as_temperature: float, as_difference: float
) -> None:
    assert parse(written, D.TEMPERATURE) == pytest.approx(as_temperature, rel=1e-12, abs=0.0)
    assert parse(written, D.TEMPERATURE_DIFFERENCE) == pytest.approx(as_difference, rel=1e-12, abs=0.0)


LENGTHS = "write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)"
REFUSED: list[tuple[object, Dimension, str, str]] = [
    (7.75, D.LENGTH, "7.75 has no unit; a length is needed", LENGTHS),
    ("7.75", D.LENGTH, "7.75 has no unit; a length is needed", LENGTHS),
    (0, D.LENGTH, "0 has no unit; a length is needed", LENGTHS),
    ("30 psf", D.LENGTH, "30 psf is a pressure; a length is needed", LENGTHS),
    ("R-20", D.LENGTH, "R-20 is a thermal resistance; a length is needed", LENGTHS),
    ("8:12", D.LENGTH, "8:12 is a slope; a length is needed", LENGTHS),
    ("20 F", D.LENGTH, "20 F is a temperature or a temperature difference; a length is needed", LENGTHS),
    ("", D.LENGTH, "the text is blank; a length is needed", "write: 7-3/4 in"),
    (" \t\n", D.LENGTH, "the text is blank; a length is needed", "write: 7-3/4 in"),
    ("7-3/0 in", D.LENGTH, "3/0 divides by zero", "write a fraction such as 3/4"),
    ("7 inchs", D.LENGTH, "7 inchs has an unknown unit, inchs; a length is needed", "nearest: inches, inch"),
    ("7 8 in", D.LENGTH, "7 8 in cannot be read; a length is needed", LENGTHS),
    ("2x10", D.LENGTH, "2x10 has an unknown unit, x10; a length is needed", LENGTHS),
    ("14'-6", D.LENGTH, "14'-6 has no unit at its end; a length is needed", "write: 14'-6 1/2\""),
    (
        "5'-13\"",
        D.LENGTH,
        "13 in after ft is too much (12 make one more)",
        "write less than 12 in there, or in alone",
    ),
    (
        "5.5' 3\"",
        D.LENGTH,
        "5.5 ft is not whole, and a second part follows",
        "write whole ft first, as in 14'-6 1/2\"",
    ),
    (
        "2,4 m",
        D.LENGTH,
        "2,4 has a comma where no thousands end",
        "write: 2.4 (a comma only parts thousands, as in 1,250)",
    ),
    (
        "0,250 m",
        D.LENGTH,
        "0,250 has a comma where no thousands end",
        "write: 0.250 (a comma only parts thousands, as in 1,250)",
    ),
    ("1,2,3 in", D.LENGTH, "1,2,3 is not a number", "write digits with one point, as in 7.75 or 1,250.5"),
    ("1.2.3 in", D.LENGTH, "1.2.3 is not a number", "write digits with one point, as in 7.75 or 1,250.5"),
    (
        "73/4 in",
        D.LENGTH,
        "73/4 is not less than one, so its whole number may have run into it",
        "write: 18-1/4, or part the whole number off with a hyphen, as in 7-3/4",
    ),
    (
        "7.5-3/4 in",
        D.LENGTH,
        "7.5 is not whole, and stands in or before a fraction",
        "write a fraction such as 7-3/4, or a decimal",
    ),
    ("٣ in", D.LENGTH, "٣ is not one of the digits 0 to 9", "write the number with the digits 0 to 9"),
    ("1e999 in", D.LENGTH, "1e999 in is too large; a length is needed", "write: 7-3/4 in"),
    ("nan", D.LENGTH, "nan is not a finite number; a length is needed", "write: 7-3/4 in"),
    (True, D.LENGTH, "true is neither a number nor a quantity; a length is needed", "write: 7-3/4 in"),
    (None, D.LENGTH, "nothing is written here; a length is needed", "write: 7-3/4 in"),
    ([], D.LENGTH, "a list is not a quantity; a length is needed", "write: 7-3/4 in"),
    ({}, D.LENGTH, "a mapping is not a quantity; a length is needed", "write: 7-3/4 in"),
    ("5 \x1b[2J", D.LENGTH, "5 \\x1b[2J has an unknown unit, \\x1b[2J; a length is needed", LENGTHS),
    (
        "7" * 101,
        D.LENGTH,
        f"{'7' * 60}… is 101 characters long; a length is needed",
        "write: 7-3/4 in",
    ),
    (math.nan, D.NUMBER, "nan is not a finite number; a plain number is needed", "write: 1.25"),
    ("-.inf", D.NUMBER, "-.inf is not a finite number; a plain number is needed", "write: 1.25"),
    ("3 in", D.NUMBER, "3 in is a length; a plain number is needed", "write: 1.25"),
    (3.5, D.COUNT, "3.5 is not whole; a whole number is needed", "write: 14"),
    (True, D.COUNT, "true is neither a number nor a quantity; a whole number is needed", "write: 14"),
    ("8", D.FRACTION, "8 is more than one and has no %; a fraction is needed", "write: 8 %"),
    ("8:0", D.SLOPE, "the run of the slope is zero", "write rise over run, as in 8:12"),
    ("8/0", D.SLOPE, "the run of the slope is zero", "write rise over run, as in 8:12"),
    ("90°", D.SLOPE, "90° is upright or beyond: it has no slope", "write less than 90°"),
    (
        "1 perm",
        D.PERMEABILITY,
        "1 perm is a vapour permeance; a vapour permeability is needed",
        "write: 1.5 perm-in (units: perm-in, ng/(Pa·s·m), kg/(Pa·s·m))",
    ),
    (
        "1 perm-in",
        D.PERMEANCE,
        "1 perm-in is a vapour permeability; a vapour permeance is needed",
        "write: 0.5 perm (units: perm, ng/(s·m²·Pa), kg/(s·m²·Pa))",
    ),
    (
        "60 ng",
        D.PERMEABILITY,
        "60 ng is a vapour permeance; a vapour permeability is needed",
        "write: 1.5 perm-in (units: perm-in, ng/(Pa·s·m), kg/(Pa·s·m))",
    ),
    (
        "200 lb",
        D.PRESSURE,
        "200 lb is a mass or a force; a pressure is needed",
        "write: 30 psf (units: psf, psi, ksi, in. w.c., ft w.c., Pa, kPa, MPa)",
    ),
    (
        "60 MBtu/h",
        D.POWER,
        "60 MBtu/h has an unknown unit, MBtu/h; a power is needed",
        "nearest: Btu/h, kBtu/h, Btu/hr",
    ),
    (
        "14/2 AWG",
        D.WIRE_SIZE,
        "14/2 AWG is not a wire size",
        "write one gauge from 40 AWG to 4/0 AWG, or the size in kcmil",
    ),
    (14, D.WIRE_SIZE, "14 has no unit; a wire size is needed", "write: 14 AWG (units: AWG, kcmil, mm²)"),
]


@pytest.mark.parametrize(("written", "dimension", "what", "right"), REFUSED)
def test_what_cannot_be_meant_is_refused(written: object, dimension: Dimension, what: str, right: str) -> None:
    with pytest.raises(QuantityError) as refusal:
        parse(written, dimension)
    assert refusal.value.what == what
    assert refusal.value.right == right
    assert str(refusal.value) == f"{what}\n  {refusal.value.right}"


def test_a_number_too_long_to_print_is_refused() -> None:
    with pytest.raises(QuantityError, match=r"^the number has more than 30 digits before the point") as refusal:
        parse(10**5000, D.NUMBER)
    assert refusal.value.right == "write: 1.25"


@pytest.mark.parametrize(
    "written",
    [
        "in",
        "7 in in",
        "7 in - 3 in",
        "1/2/3 in",
        "7/in",
        "½½ in",
        "1/½ in",
        "7. in",
        "< 7 in",
        "7 ± 1 in",
        "--7 in",
    ],
)
def test_nonsense_is_refused(written: str) -> None:
    with pytest.raises(QuantityError):
        parse(written, D.LENGTH)


@pytest.mark.parametrize(("written", "dimension"), [("5 ma", D.CURRENT), ("5 MA", D.CURRENT), ("5 mPa", D.PRESSURE)])
def test_milli_and_mega_are_not_confused(written: str, dimension: Dimension) -> None:
    with pytest.raises(QuantityError):
        parse(written, dimension)


def test_the_error_crosses_to_another_process_whole() -> None:
    error = pickle.loads(pickle.dumps(QuantityError("a", "b")))
    assert (error.what, error.right) == ("a", "b")


@settings(deadline=None, max_examples=400)
@given(st.text(max_size=120), st.sampled_from(D))
def test_any_text_is_read_or_refused(text: str, dimension: Dimension) -> None:
    _read_or_refused(text, dimension)


@settings(deadline=None, max_examples=1500)
@given(
    st.lists(
        st.sampled_from(
            [
                *"0123456789.,-+/:'\"½¾ °%#eE()",
                "ft",
                "in",
                "AWG",
                "R-",
                "RSI",
                "psf",
                "o.c.",
                "²",
                " in ",
                "h",
                "min",
            ]
        ),
        max_size=12,
    ).map("".join),
    st.sampled_from(D),
)
def test_any_jumble_of_the_trades_signs_is_read_or_refused(text: str, dimension: Dimension) -> None:
    _read_or_refused(text, dimension)


@settings(deadline=None)
@given(st.one_of(st.integers(), st.floats(), st.booleans(), st.none(), st.binary()), st.sampled_from(D))
def test_any_value_is_read_or_refused(value: object, dimension: Dimension) -> None:
    _read_or_refused(value, dimension)


def _read_or_refused(value: object, dimension: Dimension) -> None:
    try:
        inside = parse(value, dimension)
    except QuantityError as refusal:
        assert refusal.what.isprintable()
        assert refusal.right.isprintable()
        assert refusal.right
    else:
        assert math.isfinite(inside)


@pytest.mark.parametrize("sign", ["1", "1 ", "1/", "1-", "1,", ".", " ", "(", "f", "'", "1'", "½", "e", "- "])
def test_refusing_takes_no_time(sign: str) -> None:
    started = time.perf_counter()
    for length in (99, 100_000):
        with pytest.raises(QuantityError):
            parse((sign * length)[:length] + "!", D.LENGTH)
    assert time.perf_counter() - started < 0.5


@pytest.mark.parametrize("text", ["8'-1e400\"", "1e400 ft 6 in", "1.5e400 ft 6 in", "1e400 in"])
def test_numbers_beyond_all_measure_are_refused(text: str) -> None:
    """Not an overflow: a message."""
    with pytest.raises(QuantityError):
        parse(text, D.LENGTH)
