"""Quantities print as the trade prints them, and read back."""

from __future__ import annotations

import math
import re
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.units import Dimension, System, parse, show

D = Dimension

PRINTED: list[tuple[str, Dimension, str, str]] = [
    ("7-3/4 in", D.LENGTH, "7-3/4 in", "197 mm"),
    ("1912", D.YEAR, "1912", "1912"),
    ("80 in", D.LENGTH, "80 in", "2032 mm"),
    ("95-15/16 in", D.LENGTH, "95-15/16 in", "2437 mm"),
    ("95.99 in", D.LENGTH, "8'-0\"", "2438 mm"),
    ("12'-7\"", D.LENGTH, "12'-7\"", "3835 mm"),
    ("14'-6 1/2\"", D.LENGTH, "14'-6 1/2\"", "4432 mm"),
    ("11'-11.99\"", D.LENGTH, "12'-0\"", "3657 mm"),
    ("14'-0 1/2\"", D.LENGTH, "14'-0 1/2\"", "4280 mm"),
    ("12.34 m", D.LENGTH, "40'-5 13/16\"", "12.34 m"),
    ("6 mil", D.LENGTH, "0.006 in", "0.152 mm"),
    ("-7-3/4 in", D.LENGTH, "-7-3/4 in", "-197 mm"),
    ("0 in", D.LENGTH, "0 in", "0 mm"),
    ("70 ft²", D.AREA, "70 ft²", "6.5 m²"),
    ("5.7 ft²", D.AREA, "5.7 ft²", "0.53 m²"),
    ("1,250 ft²", D.AREA, "1,250 ft²", "116.13 m²"),
    ("50 in²", D.AREA, "50 in²", "322.6 cm²"),
    ("2.25 in³", D.VOLUME, "2.25 in³", "37 cm³"),
    ("8:12", D.SLOPE, "8:12", "33.7°"),
    ("1/4 in/ft", D.SLOPE, "0.25:12", "1.2°"),
    ("20:1", D.SLOPE, "240:12", "20:1"),
    ("35°", D.ANGLE, "35°", "35°"),
    ("68 °F", D.TEMPERATURE, "68 °F", "20 °C"),
    ("18 °F", D.TEMPERATURE_DIFFERENCE, "18 °F", "10 °C"),
    ("200 lb", D.FORCE, "200 lb", "890 N"),
    ("30 psf", D.PRESSURE, "30 psf", "1.44 kPa"),
    ("1,500 psi", D.STRESS, "1,500 psi", "10.3 MPa"),
    ("0.5 in. w.c.", D.AIR_PRESSURE, "0.5 in. w.c.", "125 Pa"),
    ("12 kW", D.POWER, "12 kW", "12 kW"),
    ("60 kBtu/h", D.HEAT_FLOW, "60,000 Btu/h", "17.58 kW"),
    ("350 cfm", D.AIRFLOW, "350 cfm", "165 L/s"),
    ("5 mA", D.CURRENT, "5 mA", "5 mA"),
    ("14 AWG", D.WIRE_SIZE, "14 AWG", "14 AWG"),
    ("4/0 AWG", D.WIRE_SIZE, "4/0 AWG", "4/0 AWG"),
    ("250 kcmil", D.WIRE_SIZE, "250 kcmil", "250 kcmil"),
    ("2.5 mm²", D.WIRE_SIZE, "4.9 kcmil", "2.5 mm²"),
    ("R-20", D.THERMAL_RESISTANCE, "R-20", "RSI 3.52"),
    ("U-0.30", D.U_FACTOR, "U-0.30", "USI 1.70"),
    ("1 perm", D.PERMEANCE, "1 perm", "57 ng/(s·m²·Pa)"),
    ("0.08 in wc/100 ft", D.FRICTION_RATE, "0.08 in. w.c./100 ft", "0.654 Pa/m"),
    ("3 Pa", D.HOUSE_PRESSURE, "3 Pa", "3 Pa"),
    ("1.5 perm-in", D.PERMEABILITY, "1.5 perm-in", "2.18 ng/(Pa·s·m)"),
    ("20 ng/(Pa s m)", D.PERMEABILITY, "13.76 perm-in", "20 ng/(Pa·s·m)"),
    ("0.1 perm-in", D.PERMEABILITY, "0.1 perm-in", "0.145 ng/(Pa·s·m)"),
    ("1 h", D.TIME, "1 h", "1 h"),
    ("0 h", D.TIME, "0 min", "0 min"),
    ("90 min", D.TIME, "90 min", "90 min"),
    ("1 day", D.TIME, "1 day", "1 day"),
    ("3 days", D.TIME, "3 days", "3 days"),
    ("8 %", D.FRACTION, "8 %", "8 %"),
    ("14", D.COUNT, "14", "14"),
]


@pytest.mark.parametrize(("written", "dimension", "us", "metric"), PRINTED)
def test_quantities_print_as_the_trade_prints_them(written: str, dimension: Dimension, us: str, metric: str) -> None:
    inside = parse(written, dimension)
    assert (show(inside, dimension, "us"), show(inside, dimension, "metric")) == (us, metric)


@pytest.mark.parametrize(
    ("value", "other", "dimension", "system", "expected"),
    [
        ("7.78125 in", "7-3/4 in", D.LENGTH, "us", "7-25/32 in"),
        ("7-3/4 in", "7.78125 in", D.LENGTH, "us", "7-3/4 in"),
        ("7.7501 in", "7-3/4 in", D.LENGTH, "us", "7.7501 in"),
        ("7-49/64 in", "7-3/4 in", D.LENGTH, "us", "7-49/64 in"),
        ("12'-7 1/64\"", "12'-7\"", D.LENGTH, "us", "12'-7 1/64\""),
        ("12'-7.001\"", "12'-7\"", D.LENGTH, "us", "12'-7.001\""),
        ("7-3/4 in", "7-1/2 in", D.LENGTH, "us", "7-3/4 in"),
        ("196.85 mm", "7-3/4 in", D.LENGTH, "us", "7-3/4 in"),
        ("197.2 mm", "196.85 mm", D.LENGTH, "metric", "197.2 mm"),
        ("30.04 psf", "30 psf", D.PRESSURE, "us", "30.04 psf"),
        ("68.01 °F", "68 °F", D.TEMPERATURE, "us", "68.01 °F"),
    ],
)
def test_two_different_quantities_never_print_the_same(
    value: str, other: str, dimension: Dimension, system: System, expected: str
) -> None:
    assert show(parse(value, dimension), dimension, system, apart_from=parse(other, dimension)) == expected


@pytest.mark.parametrize(
    ("one", "other", "dimension", "prints"),
    [
        (0.99999, 1.0, D.VOLUME, ("999.99 L", "1 m³")),
        (3599.99999, 3600.0, D.TIME, ("59.9999998 min", "60 min")),
    ],
)
def test_two_quantities_on_either_side_of_a_change_of_unit_are_told_apart(
    one: float, other: float, dimension: Dimension, prints: tuple[str, str]
) -> None:
    assert show(one, dimension, "metric", apart_from=other) == prints[0]
    assert show(other, dimension, "metric", apart_from=one) == prints[1]


@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_cannot_be_printed(bad: float) -> None:
    with pytest.raises(ValueError, match="only finite quantities can be printed"):
        show(bad, D.LENGTH, "us")
    with pytest.raises(ValueError, match="only finite quantities can be printed"):
        show(1.0, D.LENGTH, "us", apart_from=bad)


MEASURED = [dimension for dimension in D if dimension.base is not D.COUNT]
SYSTEMS: tuple[System, ...] = ("us", "metric")
USUAL: dict[Dimension, float] = {D.SLOPE: 9.0, D.PERMEANCE: 1e-8, D.PERMEABILITY: 1e-10}


def _half_a_last_digit(text: str, dimension: Dimension, system: System) -> float:
    """Give how far a printed text may be from the value: half its last digit, in the inside unit."""
    if dimension.base is D.COUNT:
        return 0.5
    if dimension is D.LENGTH and system == "us" and "." not in text:
        return 0.0254 / 32
    number = re.search(r"[0-9][0-9,]*(?:\.[0-9]+)?(?:e[+-]?[0-9]+)?", text)
    assert number
    written = Decimal(number[0].replace(",", ""))
    exponent = written.as_tuple().exponent
    assert isinstance(exponent, int)
    more = written + Decimal((0, (5,), exponent - 1))
    bumped = text[: number.start()] + str(more) + text[number.end() :]
    return abs(parse(bumped, dimension) - parse(text, dimension))


@settings(deadline=None, max_examples=1000)
@given(st.sampled_from(D), st.sampled_from(SYSTEMS), st.floats(-1, 1), st.sampled_from([1e-3, 1.0, 1e4]))
def test_what_is_printed_reads_back_to_its_last_digit(
    dimension: Dimension, system: System, part: float, size: float
) -> None:
    inside = part * min(size, USUAL.get(dimension, size))
    if dimension.base is D.COUNT:
        inside = round(inside)
    text = show(inside, dimension, system)
    allowed = 0.0 if "AWG" in text else _half_a_last_digit(text, dimension, system)
    assert abs(parse(text, dimension) - inside) <= allowed * (1 + 1e-6) + abs(inside) * 2e-6 + 1e-300


@settings(deadline=None, max_examples=300)
@given(st.sampled_from(D), st.sampled_from(SYSTEMS), st.floats(-1, 1))
def test_what_was_read_back_prints_the_same(dimension: Dimension, system: System, part: float) -> None:
    inside = part * USUAL.get(dimension, 1e4)
    if dimension.base is D.COUNT:
        inside = round(inside)
    text = show(inside, dimension, system)
    again = show(parse(text, dimension), dimension, system)
    assert parse(again, dimension) == pytest.approx(parse(text, dimension), rel=1e-6, abs=0.0)


@settings(deadline=None, max_examples=300)
@given(st.floats(0.01, 9.99), st.sampled_from(SYSTEMS))
def test_a_length_reads_back_to_a_sixteenth_or_a_millimetre(metres: float, system: System) -> None:
    half = 0.0254 / 32 if system == "us" else 0.0005
    assert abs(parse(show(metres, D.LENGTH, system), D.LENGTH) - metres) <= half * (1 + 1e-6)


@settings(deadline=None, max_examples=500)
@given(
    st.sampled_from(MEASURED),
    st.sampled_from(SYSTEMS),
    st.floats(0.001, 1000),
    st.sampled_from([1e-2, 1e-3, 1e-5, 1e-7, 1e-8]),
)
def test_apart_from_tells_any_two_quantities_apart(
    dimension: Dimension, system: System, inside: float, by: float
) -> None:
    inside = inside * {D.PERMEANCE: 1e-11, D.PERMEABILITY: 1e-12}.get(dimension, 1.0)
    inside = min(inside, 9.0) if dimension is D.SLOPE else inside
    other = inside * (1 + by)
    one = show(inside, dimension, system, apart_from=other)
    two = show(other, dimension, system, apart_from=inside)
    assert one != two
    assert parse(one, dimension) < parse(two, dimension)


@settings(deadline=None, max_examples=300)
@given(
    st.sampled_from(D),
    st.sampled_from(SYSTEMS),
    st.floats(-1e200, 1e200),
    st.floats(-9, 9),
)
def test_every_finite_number_prints(dimension: Dimension, system: System, inside: float, other: float) -> None:
    assert show(inside, dimension, system)
    assert show(other, dimension, system, apart_from=inside)


@settings(deadline=None)
@given(
    st.sampled_from([d for d in MEASURED if d is not D.TEMPERATURE]),
    st.sampled_from(SYSTEMS),
    st.floats(1e-14, 1e-3),
)
def test_what_is_not_zero_does_not_print_as_zero(dimension: Dimension, system: System, inside: float) -> None:
    assert parse(show(inside, dimension, system), dimension) > 0
