"""Units outside our own table, for rulesets that name one: pint knows them, and is imported only then.

pint never sees raw text: it reads `7 3/4 in` as 5.25 in. Number and unit are told apart here, and the unit goes to
pint only if each of its names is a whole one of three letters or more: with prefixes, `cfm` would be a centifermi and
`pin` a picoinch.
"""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from checker.problems import cut
from checker.units.dimensions import Dimension
from checker.units.grammar import QuantityError
from checker.units.table import example_for, unit_named

if TYPE_CHECKING:
    import pint

_PLAIN = re.compile(r"^\s*(-?[0-9]{1,15}(?:\.[0-9]{1,15})?)\s*([A-Za-zµ°][A-Za-z0-9µ°/*^ ]{0,30})\s*$")
_AS_PINT = {
    "degC": "degree_Celsius",
    "deg": "degree",
    "m2": "m**2",
    "m3": "m**3",
    "mm2": "mm**2",
    "kg/m3": "kg/m**3",
    "m3/s": "m**3/s",
    "m2K/W": "m**2*K/W",
    "W/m2K": "W/(m**2*K)",
    "W/mK": "W/(m*K)",
    "kg/(s m2 Pa)": "kg/(s*m**2*Pa)",
    "VA": "V*A",
    "ohm/m": "ohm/m",
    "1/h": "1/hour",
    "lx": "lux",
}


def parse_outside(text: str, dimension: Dimension) -> float:
    """Read a plain number with a unit that our own table lacks.

    text: as in `12 furlong`; dimension: what is needed. Returns the value in the dimension's unit.
    Raises QuantityError.
    """
    found = _PLAIN.match(text)
    if found is None or any(unit_named(found[2].strip(), each) for each in Dimension):
        raise QuantityError(
            f"“{cut(text)}” is no number with a unit outside the table", f"write: {example_for(dimension)}"
        )
    import pint

    registry: pint.UnitRegistry[float] = pint.UnitRegistry(cache_folder=None)
    target = _AS_PINT.get(dimension.si_unit, dimension.si_unit)
    names = re.findall(r"[A-Za-z]+", found[2])
    try:
        if any(len(name) < 3 or not _whole(registry, name) for name in names):
            raise ValueError(found[2])
        value = registry.Quantity(float(found[1]), registry.parse_units(found[2].replace("^", "**")))
        number = float(value.to(target).magnitude)
    except (pint.PintError, AttributeError, ValueError, TypeError, OverflowError):
        raise QuantityError(
            f"“{cut(text)}” has a unit that is not known for {dimension.phrase}", f"write: {example_for(dimension)}"
        ) from None
    if not math.isfinite(number):
        raise QuantityError(f"“{cut(text)}” is out of range", f"write: {example_for(dimension)}")
    return number


def _whole(registry: pint.UnitRegistry[float], name: str) -> bool:
    """Whether a name is a unit without any prefix."""
    return any(prefix == "" for prefix, _, _ in registry.parse_unit_name(name))
