"""Quantities as the trade writes them: SI floats inside, the plan's own system of units outside."""

from checker.units.dimensions import Dimension
from checker.units.grammar import QuantityError, parse
from checker.units.printing import System, show
from checker.units.table import UNITS, Unit, example_for, units_for

__all__ = [
    "UNITS",
    "Dimension",
    "QuantityError",
    "System",
    "Unit",
    "example_for",
    "parse",
    "show",
    "units_for",
]
