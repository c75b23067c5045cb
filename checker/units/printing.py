"""Printing a quantity as the trade prints it, in either system of units.

Each dimension has a ladder of prints, the usual one first and then ever finer ones. The usual print is taken,
unless the value has to be told apart from another that prints the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from checker.units.dimensions import Dimension
from checker.units.grammar import awg_area, parse
from checker.units.table import FOOT_M, INCH_M, KCMIL_MM2, unit_named

D = Dimension  # the tables name it in every row
System = Literal["us", "metric"]

_FINER_STEPS = 14
_INCH_DIVISIONS = (16, 32, 64)
_SAME = 1e-9
_SAME_WIRE = 1e-6
_LEAST_WIRE_MM2 = 0.001


@dataclass(frozen=True, slots=True)
class _Style:
    """How a range of values prints: in which unit, with how many decimals, of which `keep` stay when zero."""

    symbol: str
    places: int
    keep: int = 0
    below: float = math.inf


_US: dict[D, tuple[_Style, ...]] = {
    D.AREA: (_Style("in²", 1, below=float(FOOT_M**2)), _Style("ft²", 1)),
    D.VOLUME: (_Style("in³", 2, below=float(FOOT_M**3)), _Style("ft³", 1)),
    D.TEMPERATURE: (_Style("°F", 1),),
    D.TEMPERATURE_DIFFERENCE: (_Style("°F", 1),),
    D.MASS: (_Style("lb", 1),),
    D.FORCE: (_Style("lb", 0),),
    D.LINE_LOAD: (_Style("plf", 0),),
    D.MOMENT: (_Style("lb ft", 0),),
    D.PRESSURE: (_Style("psf", 1),),
    D.STRESS: (_Style("psi", 0),),
    D.AIR_PRESSURE: (_Style("in. w.c.", 2),),
    D.WATER_PRESSURE: (_Style("psi", 1),),
    D.FRICTION_RATE: (_Style("in. w.c./100 ft", 3),),
    D.DENSITY: (_Style("pcf", 1),),
    D.HEAT_FLOW: (_Style("Btu/h", 0),),
    D.AIRFLOW: (_Style("cfm", 0),),
    D.WATER_FLOW: (_Style("gpm", 1),),
    D.VELOCITY: (_Style("fpm", 0),),
    D.WIND_SPEED: (_Style("mph", 0),),
    D.RESISTANCE_PER_LENGTH: (_Style("Ω/kft", 3),),
    D.THERMAL_RESISTANCE: (_Style("R", 1),),
    D.U_FACTOR: (_Style("U", 2, 2),),
    D.CONDUCTIVITY: (_Style("Btu·in/(h·ft²·°F)", 2),),
    D.PERMEANCE: (_Style("perm", 2),),
    D.PERMEABILITY: (_Style("perm-in", 2),),
    D.ILLUMINANCE: (_Style("fc", 1),),
}
_METRIC: dict[D, tuple[_Style, ...]] = {
    D.LENGTH: (_Style("mm", 0, below=10.0), _Style("m", 2)),
    D.AREA: (_Style("cm²", 1, below=0.1), _Style("m²", 2)),
    D.VOLUME: (_Style("cm³", 0, below=0.001), _Style("L", 1, below=1.0), _Style("m³", 1)),
    D.TEMPERATURE: (_Style("°C", 1),),
    D.TEMPERATURE_DIFFERENCE: (_Style("°C", 1),),
    D.MASS: (_Style("kg", 1),),
    D.FORCE: (_Style("N", 0, below=1000.0), _Style("kN", 2)),
    D.LINE_LOAD: (_Style("kN/m", 2),),
    D.MOMENT: (_Style("kN m", 2),),
    D.PRESSURE: (_Style("kPa", 2),),
    D.STRESS: (_Style("MPa", 1),),
    D.AIR_PRESSURE: (_Style("Pa", 0),),
    D.WATER_PRESSURE: (_Style("kPa", 0),),
    D.FRICTION_RATE: (_Style("Pa/m", 2),),
    D.DENSITY: (_Style("kg/m³", 0),),
    D.HEAT_FLOW: (_Style("W", 0, below=1000.0), _Style("kW", 2)),
    D.AIRFLOW: (_Style("L/s", 0),),
    D.WATER_FLOW: (_Style("L/s", 2),),
    D.VELOCITY: (_Style("m/s", 2),),
    D.WIND_SPEED: (_Style("km/h", 0),),
    D.RESISTANCE_PER_LENGTH: (_Style("Ω/km", 2),),
    D.THERMAL_RESISTANCE: (_Style("RSI", 2),),
    D.U_FACTOR: (_Style("USI", 2, 2),),
    D.CONDUCTIVITY: (_Style("W/(m·K)", 3),),
    D.PERMEANCE: (_Style("ng/(s·m²·Pa)", 0),),
    D.PERMEABILITY: (_Style("ng/(Pa·s·m)", 2),),
    D.ILLUMINANCE: (_Style("lx", 0),),
}
_BOTH: dict[D, tuple[_Style, ...]] = {
    D.ANGLE: (_Style("°", 1),),
    D.HOUSE_PRESSURE: (_Style("Pa", 1),),
    D.POWER: (_Style("W", 0, below=1000.0), _Style("kW", 2)),
    D.APPARENT_POWER: (_Style("VA", 0),),
    D.ENERGY: (_Style("kWh", 1),),
    D.CURRENT: (_Style("mA", 1, below=0.1), _Style("A", 1)),
    D.VOLTAGE: (_Style("V", 1),),
    D.AIR_CHANGES: (_Style("air changes/h", 1),),
    D.FRACTION: (_Style("%", 1),),
    D.COUNT: (_Style("", 0),),
    D.YEAR: (_Style("", 0),),
    D.NUMBER: (_Style("", 2),),
}


@lru_cache(maxsize=4096)
def show(si: float, dimension: D, system: System, *, apart_from: float | None = None) -> str:
    """Print a quantity.

    si          the quantity [dimension.si_unit]
    dimension   what it measures
    system      `us` or `metric`
    apart_from  another quantity of the dimension [dimension.si_unit]: if the two differ but would print
                the same, this one is printed as finely as it takes to tell them apart
    Returns     a text that `parse` reads back to within the last digit printed; a value other than zero
                never prints as zero (a temperature may)
    Raises      ValueError: a quantity is not finite
    """
    if not math.isfinite(si) or (apart_from is not None and not math.isfinite(apart_from)):
        raise ValueError(f"only finite quantities can be printed, not {si} apart from {apart_from}")
    prints = _ladder(si, dimension, system)
    text = next(prints)
    if apart_from is None or math.isclose(si, apart_from, rel_tol=_SAME):
        return text
    others = _ladder(apart_from, dimension, system)
    for other, finer in zip(others, prints, strict=False):
        if _in_order(si, text, apart_from, other, dimension):
            break
        text = finer
    return text


def _in_order(si: float, text: str, apart_from: float, other: str, dimension: D) -> bool:
    """Whether two prints say which quantity is more: 1000 L and 1 m³ do not, nor 60 min and 1 h."""
    if dimension.base is D.COUNT:  # one that is not whole does not read back
        return text != other
    one, two = parse(text, dimension), parse(other, dimension)
    return one < two if si < apart_from else one > two


def _ladder(si: float, dimension: D, system: System) -> Iterator[str]:
    """Give the prints of a quantity, the usual one first, each finer than the one before."""
    commas = system == "us" and dimension is not D.YEAR
    if dimension is D.TIME:
        return _time(si, commas)
    if dimension is D.WIRE_SIZE:
        return _wire(si, commas)
    if dimension is D.SLOPE:
        return _slope(si, system)
    if dimension is D.LENGTH and system == "us":
        return _feet_and_inches(si)
    own = _US if system == "us" else _METRIC
    styles = own.get(dimension) or _BOTH[dimension]
    small = abs(si) if si or dimension is D.LENGTH else math.inf  # nothing is 0 mm, but 0 m²
    style = next(style for style in styles if small < style.below or style.below == math.inf)
    return _styled(si, dimension, style, commas)


def _styled(si: float, dimension: D, style: _Style, commas: bool) -> Iterator[str]:
    unit = unit_named(style.symbol, dimension)
    if unit is None:
        return _decimals(si, style.places, style.keep, commas)
    if unit.before and si < 0:
        plain = "h·ft²·°F/Btu" if style.symbol == "R" else "m²·K/W"
        plain_u = "Btu/(h·ft²·°F)" if style.symbol == "U" else "W/(m²·K)"
        symbol = plain if dimension is D.THERMAL_RESISTANCE else plain_u
        return _styled(si, dimension, _Style(symbol, style.places, style.keep), commas)
    number = si / float(unit.factor) - float(unit.offset)
    numbers = _decimals(number, style.places, style.keep, commas, near_zero=not unit.offset)
    if unit.before:
        joint = "-" if len(unit.symbol) == 1 else " "
        return (unit.symbol + joint + text for text in numbers)
    joint = "" if unit.symbol == "°" else " "
    return (text + joint + unit.symbol for text in numbers)


def _decimals(number: float, places: int, keep: int, commas: bool, *, near_zero: bool = True) -> Iterator[str]:
    """Give a number with ever more decimals; below one (`near_zero`) from three digits that count."""
    size = abs(number)
    if size >= 1e15 or (near_zero and 0 < size < 1e-9):
        yield from (f"{number:.{digits}g}" for digits in range(9, 18))
        return
    if near_zero and 0 < size < 1:
        places = max(places, 2 - math.floor(math.log10(size)))
    for finer in range(_FINER_STEPS):
        text = f"{number:{',' if commas else ''}.{places + finer}f}"
        whole, _, decimals = text.partition(".")
        decimals = decimals[:keep] + decimals[keep:].rstrip("0")
        text = f"{whole}.{decimals}" if decimals else whole
        yield text if text.strip("-0.") else text.removeprefix("-")


def _feet_and_inches(si: float) -> Iterator[str]:
    """Give a length in inches, from 8 ft up in feet and inches: to 1/16, 1/32, 1/64, then in decimals."""
    sign = "-" if si < 0 else ""
    inches = abs(si) / float(INCH_M)
    if inches >= 1e12 or 0 < inches < 1e-9:
        yield from _styled(si, D.LENGTH, _Style("in", 0), commas=True)
        return
    # A length that is a whole number of sixty-fourths is not rounded onto its neighbour.
    exact = next((parts for parts in _INCH_DIVISIONS if abs(inches * parts - round(inches * parts)) < 1e-6), 0)
    for parts in _INCH_DIVISIONS:
        if parts < exact:
            continue
        pieces = round(round(inches * parts, 6))  # a half stays a half in spite of float noise
        if pieces or not si:
            yield sign + _in_inches(Fraction(pieces, parts))
    for places in range(3, 3 + _FINER_STEPS):
        rounded = Fraction(f"{inches:.{places}f}")
        if rounded or not si:
            yield sign + _in_inches(rounded, decimal=True)


def _in_inches(inches: Fraction, *, decimal: bool = False) -> str:
    if inches < 96:
        return f"{_inch_number(inches, decimal, '-')} in"
    feet, left = divmod(inches, 12)
    return f"{feet}'-{_inch_number(left, decimal, ' ', whole_zero=True)}\""


def _inch_number(inches: Fraction, decimal: bool, joint: str, *, whole_zero: bool = False) -> str:
    if decimal:
        return _terminating(inches)
    whole, part = divmod(inches, 1)
    if not part:
        return str(whole)
    return f"{whole}{joint}{part}" if whole or whole_zero else str(part)


def _terminating(number: Fraction) -> str:
    """Give a decimal fraction in full."""
    places = 0
    while number * 10**places % 1:
        places += 1
    digits = str(int(number * 10**places)).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits


def _slope(si: float, system: System) -> Iterator[str]:
    """Give a slope to a run of 12, or in degrees; in metric a slope beyond 10:1 as a ratio to 1."""
    if system == "us":
        return (f"{text}:12" for text in _decimals(si * 12, 1, 0, commas=False))
    if abs(si) > 10:
        return (f"{text}:1" for text in _decimals(si, 1, 0, commas=False))
    return (f"{text}°" for text in _decimals(math.degrees(math.atan(si)), 1, 0, commas=False))


def _time(si: float, commas: bool) -> Iterator[str]:
    """Give a time in the largest unit that makes it whole, otherwise in decimals of a fitting one."""
    scales = (("days", 86400), ("h", 3600), ("min", 60), ("s", 1))
    if si == 0.0:
        yield "0 min"
    for symbol, seconds in scales:
        number = si / seconds
        if round(number) and math.isclose(number, round(number), rel_tol=_SAME) and abs(number) < 1e12:
            name = "day" if symbol == "days" and abs(round(number)) == 1 else symbol
            yield f"{round(number)} {name}"
            break
    fitting = next((pair for pair in scales if abs(si) >= 2 * pair[1]), scales[-1])
    yield from (f"{text} {fitting[0]}" for text in _decimals(si / fitting[1], 1, 0, commas))


def _wire(si: float, commas: bool) -> Iterator[str]:
    """Give a wire size by gauge or whole kcmil if it is one, otherwise in decimals of kcmil or mm²."""
    gauge = round(39 / 2 * math.log(awg_area(36) / si, 92)) + 36 if si > _LEAST_WIRE_MM2 else 0
    kcmil = si / float(KCMIL_MM2)
    if si > _LEAST_WIRE_MM2 and -3 <= gauge <= 40 and math.isclose(si, awg_area(gauge), rel_tol=_SAME_WIRE):
        yield f"{gauge} AWG" if gauge > 0 else f"{1 - gauge}/0 AWG"
    elif 250 <= kcmil < 1e4 and math.isclose(kcmil, round(kcmil), rel_tol=_SAME_WIRE):
        yield f"{round(kcmil)} kcmil"
    if commas:
        yield from (f"{text} kcmil" for text in _decimals(kcmil, 1, 0, commas))
    else:
        yield from (f"{text} mm²" for text in _decimals(si, 2, 0, commas))
