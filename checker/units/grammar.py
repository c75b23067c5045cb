"""Reading a quantity as the trade writes it.

    quantity  = amount unit | amount unit [-] amount unit | letter [-] amount | slope | wire size
    amount    = [-] number [number/number]      7.75   7-3/4   7 3/4   3/4   1,250
    slope     = amount : amount | number / number | amount in amount | an angle
    wire size = [#] number AWG | number/0 AWG

Everything is reckoned in exact fractions and rounded once, at the end: 7-3/4 in and 196.85 mm are equal.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from functools import lru_cache

from checker.problems import cut, nearest
from checker.units.dimensions import Dimension
from checker.units.table import SAME_SIGN, Unit, example_for, symbols_for, unit_named, units_for

LONGEST_TEXT = 100
_LONGEST_INTEGER = 10**30

_WITHOUT_UNIT = frozenset({Dimension.COUNT, Dimension.YEAR, Dimension.NUMBER, Dimension.FRACTION})

# The second part of a quantity in two parts, and how many of it make one of the first.
_SMALLER: dict[str, tuple[str, int]] = {
    "ft": ("in", 12),
    "days": ("h", 24),
    "h": ("min", 60),
    "min": ("s", 60),
}

_SAME_MARK = str.maketrans(
    dict.fromkeys("′’‘ʹ´", "'")
    | dict.fromkeys("″“”ʺ˝", '"')
    | dict.fromkeys("‐‑‒–—−", "-")
    | {"⁄": "/", "∕": "/", "∶": ":"}
)
_VULGAR = {
    "½": "1/2",
    "⅓": "1/3",
    "⅔": "2/3",
    "¼": "1/4",
    "¾": "3/4",
    "⅕": "1/5",
    "⅖": "2/5",
    "⅗": "3/5",
    "⅘": "4/5",
    "⅙": "1/6",
    "⅚": "5/6",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
}

_AMOUNT = re.compile(
    r"(?=[.,]?[0-9])(?P<first>[0-9.,]+(?:[eE][+-]?[0-9]{1,3}(?![0-9]))?)"
    r"(?:\s*/\s*(?P<under>[0-9.,]+)|(?:-\s?|\s+)(?P<top>[0-9.,]+)\s*/\s*(?P<bottom>[0-9.,]+))?\s*"
)
_NUMBER = re.compile(r"(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE].*)?")
_DECIMAL_COMMA = re.compile(r"[0-9]+,[0-9]+")
_FIRST_PART = re.compile(r"(?P<unit>'|[A-Za-z]+\.?)\s*[,-]?\s*(?=[0-9.])")
_UNIT_BEFORE = re.compile(r"(?P<unit>[A-Za-z]+)\s*-?\s*(?=[0-9.])")
_ON_CENTER = re.compile(r"(?<=['\"\s.])(?:o\.?\s?c\.?|on cent(?:er|re)s?)$", re.IGNORECASE)
_WIRE = re.compile(r"(?:#|no\.?)?\s*(?P<size>[1-4]/0|0{1,4}|[1-9][0-9]?)\s*awg", re.IGNORECASE)
_SLASH_RATIO = re.compile(r"(?P<rise>[0-9.,]+)\s*/\s*(?P<run>[0-9.,]+)")
_FINEST_WIRE = 40
_FEET_AND_INCHES = """14'-6 1/2\""""


class QuantityError(ValueError):
    """A text or number is not a quantity of the dimension that is needed.

    what   what is wrong, beginning with the value as written
    right  what would be right
    """

    def __init__(self, what: str, right: str) -> None:
        """Keep both halves of the message."""
        self.what = what
        self.right = right
        super().__init__(what, right)

    def __str__(self) -> str:
        """Give both halves, the second on a line of its own."""
        return f"{self.what}\n  {self.right}"


def parse(value: object, dimension: Dimension) -> float:
    """Read a quantity.

    value      a text, or a number where the dimension needs no unit
    dimension  what it has to measure
    Returns    the quantity in `dimension.si_unit`
    Raises     QuantityError: what is wrong with the value and what would be right
    """
    if isinstance(value, str):
        return _text(value, dimension)
    if isinstance(value, bool):
        raise _refused("true" if value else "false", "is neither a number nor a quantity", dimension)
    if isinstance(value, int | float):
        if abs(value) >= _LONGEST_INTEGER:
            raise _refused("the number", "has more than 30 digits before the point", dimension)
        return _text(repr(value), dimension)
    if value is None:
        raise _refused("nothing", "is written here", dimension)
    kind = "a list" if isinstance(value, list | tuple) else "a mapping" if isinstance(value, dict) else "this"
    raise _refused(kind, "is not a quantity", dimension)


def awg_area(gauge: int) -> float:
    """Give the cross-section of a solid round wire of the American wire gauge. [mm2]

    gauge    the gauge number; 1/0 is 0, 4/0 is -3
    Returns  the area [mm2]
    Source   ASTM B258: diameter 0.005 in × 92^((36 - gauge)/39); from memory
    """
    diameter_mm = 0.127 * math.pow(92, (36 - gauge) / 39)
    return math.pi / 4 * diameter_mm * diameter_mm


def _refused(written: str, fault: str, dimension: Dimension, right: str = "") -> QuantityError:
    return QuantityError(
        f"{written} {fault}; {dimension.phrase} is needed", right or f"write: {example_for(dimension)}"
    )


@lru_cache(maxsize=4096)
def _text(text: str, dimension: Dimension) -> float:
    if len(text) > LONGEST_TEXT:
        raise _refused(cut(text), f"is {len(text):,} characters long", dimension)
    line = _in_plain_signs(text)
    if not line:
        raise _refused("the text", "is blank", dimension)
    if line.lower().lstrip("+-.") in {"nan", "inf", "infinity"}:
        raise _refused(cut(text), "is not a finite number", dimension)
    found = _read(line, dimension)
    if found is None:
        raise _misfit(line, cut(text.strip()), dimension)
    try:
        inside = float(found)
    except OverflowError:
        inside = math.inf
    if not math.isfinite(inside):
        raise _refused(cut(text), "is too large", dimension)
    return inside


def _in_plain_signs(text: str) -> str:
    """Give a text with one sign for each meaning: primes, dashes, powers, fractions and blanks."""
    line = text
    if not line.isascii():
        line = line.translate(_SAME_MARK).translate(SAME_SIGN)
        line = "".join(_plain(sign) for sign in line)
    return line.replace("''", '"').strip()


def _plain(sign: str) -> str:
    if sign in _VULGAR:
        return f" {_VULGAR[sign]} "
    if sign.isspace():
        return " "
    if sign.isnumeric() and not sign.isascii():
        raise QuantityError(f"{cut(sign)} is not one of the digits 0 to 9", "write the number with the digits 0 to 9")
    return sign


def _read(line: str, dimension: Dimension) -> Fraction | float | None:
    """Read a quantity; None if neither its form nor its unit is one of the dimension's."""
    negative = line.startswith("-")
    line = line[1:].lstrip() if negative or line.startswith("+") else line
    found: Fraction | float | None
    if dimension is Dimension.SLOPE:
        found = _slope(line)
    elif dimension is Dimension.WIRE_SIZE:
        found = _wire(line)
    elif dimension in _WITHOUT_UNIT:
        found = _bare(line, dimension)
    else:
        found = None
    if found is not None:
        return -found if negative else found
    return _with_unit(line, dimension, negative)


def _bare(line: str, dimension: Dimension) -> Fraction | None:
    amount = _amount_alone(line, improper=True)
    if amount is None:
        return None
    if dimension.base is Dimension.COUNT and amount.denominator != 1:
        return None
    if dimension is Dimension.FRACTION and amount > 1 and "/" not in line:
        return None
    return amount


def _with_unit(line: str, dimension: Dimension, negative: bool) -> Fraction | None:
    if dimension is Dimension.LENGTH:
        line = _ON_CENTER.sub("", line).rstrip()
    started = _amount(line)
    if started is None:
        found = None if negative else _unit_before(line, dimension)
    else:
        amount, rest = started
        amount = -amount if negative else amount
        unit = unit_named(rest, dimension)
        if unit is None or unit.before:
            found = _two_parts(amount, rest, dimension, negative)
        else:
            found = (amount + unit.offset if unit.offset else amount) * unit.factor
    return found


def _unit_before(line: str, dimension: Dimension) -> Fraction | None:
    start = _UNIT_BEFORE.match(line)
    unit = unit_named(start["unit"], dimension) if start else None
    if start is None or unit is None or not unit.before:
        return None
    amount = _amount_alone(line[start.end() :])
    return None if amount is None else amount * unit.factor


def _two_parts(amount: Fraction, rest: str, dimension: Dimension, negative: bool) -> Fraction | None:
    start = _FIRST_PART.match(rest)
    larger = unit_named(start["unit"], dimension) if start else None
    second = _amount(rest[start.end() :]) if start else None
    if larger is None or second is None or larger.symbol not in _SMALLER:
        return None
    symbol, times = _SMALLER[larger.symbol]
    smaller = unit_named(second[1], dimension)
    if smaller is None or smaller.symbol != symbol:
        return None
    _whole_first(amount, larger)
    if second[0] >= times:
        raise QuantityError(
            f"{_said(second[0])} {symbol} after {larger.symbol} is too much ({times} make one more)",
            f"write less than {times} {symbol} there, or {symbol} alone",
        )
    small = -second[0] if negative else second[0]
    return amount * larger.factor + small * smaller.factor


def _said(amount: Fraction) -> str:
    """An amount as a message says it, however large it is."""
    try:
        return f"{float(amount):g}"
    except OverflowError:
        return "so many"


def _whole_first(amount: Fraction, larger: Unit) -> None:
    if amount.denominator != 1:
        example = _FEET_AND_INCHES if larger.symbol == "ft" else "1 h 30 min"
        raise QuantityError(
            f"{_said(amount)} {larger.symbol} is not whole, and a second part follows",
            f"write whole {larger.symbol} first, as in {example}",
        )


def _slope(line: str) -> Fraction | float | None:
    slash = _SLASH_RATIO.fullmatch(line)
    if slash:
        return _ratio(_number(slash["rise"]), _number(slash["run"]))
    for word in (":", " in ", " to "):
        rise, found, run = line.partition(word)
        if found:
            up, along = _amount_alone(rise.strip()), _amount_alone(run.strip())
            return None if up is None or along is None else _ratio(up, along)
    degrees = _with_unit(line, Dimension.ANGLE, negative=False)
    if degrees is None:
        return None
    if degrees >= 90:
        raise QuantityError(f"{float(degrees):g}° is upright or beyond: it has no slope", "write less than 90°")
    return math.tan(math.radians(degrees))


def _ratio(rise: Fraction, run: Fraction) -> Fraction:
    if run == 0:
        raise QuantityError("the run of the slope is zero", "write rise over run, as in 8:12")
    return rise / run


def _wire(line: str) -> float | None:
    wire = _WIRE.fullmatch(line)
    if wire is None and not line.lower().endswith("awg"):
        return None
    size = wire["size"] if wire else ""
    if size.endswith("/0"):
        return awg_area(1 - int(size[0]))
    if size.startswith("0"):
        return awg_area(1 - len(size))
    if size and int(size) <= _FINEST_WIRE:
        return awg_area(int(size))
    raise QuantityError(
        f"{cut(line)} is not a wire size", "write one gauge from 40 AWG to 4/0 AWG, or the size in kcmil"
    )


def _amount_alone(line: str, *, improper: bool = False) -> Fraction | None:
    started = _amount(line, improper=improper)
    return started[0] if started and not started[1] else None


def _amount(line: str, *, improper: bool = False) -> tuple[Fraction, str] | None:
    """Read the amount a text begins with, and give it with the rest; None if it begins otherwise."""
    found = _AMOUNT.match(line)
    if found is None:
        return None
    first, under, top, bottom = found.group("first", "under", "top", "bottom")
    rest = line[found.end() :]
    if under is not None:
        return _fraction(first, under, improper=improper), rest
    if top is not None:
        return _number(first, whole=True) + _fraction(top, bottom, improper=False), rest
    return _number(first), rest


def _fraction(top: str, bottom: str, *, improper: bool) -> Fraction:
    above, below = _number(top, whole=True), _number(bottom, whole=True)
    if below == 0:
        raise QuantityError(f"{top}/{bottom} divides by zero", "write a fraction such as 3/4")
    if above >= below and not improper:
        whole, left = divmod(above, below)
        mixed = f"{whole}-{left}/{below}" if left else f"{whole}"
        raise QuantityError(
            f"{top}/{bottom} is not less than one, so its whole number may have run into it",
            f"write: {mixed}, or part the whole number off with a hyphen, as in 7-3/4",
        )
    return above / below


def _number(text: str, *, whole: bool = False) -> Fraction:
    """Read a number without sign: digits, a point, well-formed thousands."""
    if text.isdigit():
        return Fraction(int(text))
    if whole:
        raise QuantityError(
            f"{cut(text)} is not whole, and stands in or before a fraction",
            "write a fraction such as 7-3/4, or a decimal",
        )
    if not _NUMBER.fullmatch(text):
        if _DECIMAL_COMMA.fullmatch(text):
            right = f"write: {text.replace(',', '.')} (a comma only parts thousands, as in 1,250)"
            raise QuantityError(f"{cut(text)} has a comma where no thousands end", right)
        raise QuantityError(f"{cut(text)} is not a number", "write digits with one point, as in 7.75 or 1,250.5")
    return Fraction(text.replace(",", ""))


def _misfit(line: str, written: str, dimension: Dimension) -> QuantityError:
    """Say why a text that is no quantity of the dimension is none."""
    unsigned = line.lstrip("+-").lstrip()
    units = symbols_for(dimension)
    started = _amount(unsigned, improper=True)
    if started and not started[1]:
        return _unit_lacks(written, started[0], dimension, units)
    larger = _FIRST_PART.match(started[1]) if started else None
    second = _amount(started[1][larger.end() :]) if started and larger else None
    if larger and second and not second[1] and unit_named(larger["unit"], dimension):
        example = _FEET_AND_INCHES if dimension is Dimension.LENGTH else example_for(dimension)
        return _refused(written, "has no unit at its end", dimension, f"write: {example}")
    others = [other.phrase for other in Dimension if _is_also(line, other)]
    if others:
        return _refused(written, f"is {' or '.join(others)}", dimension, _units_that_do(dimension, units))
    if started and not started[1][0].isdigit() and not _amount_follows(started[1]):
        unit = cut(started[1])
        near = nearest(started[1], units_for(dimension))
        return _refused(written, f"has an unknown unit, {unit}", dimension, near or _units_that_do(dimension, units))
    return _refused(written, "cannot be read", dimension, _units_that_do(dimension, units))


def _unit_lacks(written: str, amount: Fraction, dimension: Dimension, units: list[str]) -> QuantityError:
    if dimension.base is Dimension.COUNT:
        return _refused(written, "is not whole", dimension)
    if dimension is Dimension.FRACTION:
        return _refused(written, "is more than one and has no %", dimension, f"write: {float(amount):g} %")
    return _refused(written, "has no unit", dimension, _units_that_do(dimension, units))


def _units_that_do(dimension: Dimension, units: list[str]) -> str:
    example = example_for(dimension)
    return f"write: {example} (units: {', '.join(units)})" if units else f"write: {example}"


def _amount_follows(rest: str) -> bool:
    """Whether another amount stands behind a unit: the text is more than a number with a misspelt unit."""
    return any(_amount(word) is not None for word in rest.split()[1:])


def _is_also(line: str, other: Dimension) -> bool:
    """Whether a text is a quantity of another dimension, its units not merely shared."""
    if other.base is not other or other in _WITHOUT_UNIT:
        return False
    try:
        return _read(line, other) is not None
    except QuantityError:
        return False
