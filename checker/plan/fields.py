"""The kinds of value a plan line can hold: quantities as the trade writes them, choices, links to other elements."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BeforeValidator, Field, WithJsonSchema
from pydantic_core import PydanticCustomError

from checker.problems import cut
from checker.units import Dimension, QuantityError, example_for, parse, show

AND_OTHERS = "and others"
UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Measure:
    """Marks a field as a quantity of one dimension."""

    dimension: Dimension


@dataclass(frozen=True, slots=True)
class LinkTo:
    """Marks a field as naming another element of `kind`; `inverse` is the link that leads back.

    exclusive: whether an element is named by one only, so that whoever names it is all that there is;
    loops: whether a chain of such links may come back to where it began; absent_is_none: whether an element without
    the line has no such link, where otherwise it would not be known.
    """

    kind: str
    inverse: str
    inverse_to_one: bool = False
    exclusive: bool = False
    loops: bool = True
    absent_is_none: bool = False


@dataclass(frozen=True, slots=True)
class Named:
    """Marks a field as the name of an entry of the ruleset's catalogue, as a material or a lumber size."""

    catalogue: Literal["material", "archetype", "lumber", "lumber size"]


@dataclass(frozen=True, slots=True)
class Holds:
    """Marks a list of elements written inside this one; `inverse` is the link from each to its holder."""

    inverse: str


def _reader(dimension: Dimension, low: float, above: bool, high: float) -> Callable[[Any], float]:
    def read(value: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            found = {bool: "true or false", list: "a list", dict: "a group of keys"}.get(type(value), "empty")
            raise PydanticCustomError(
                "quantity", "{what}", {"what": f"is {found}", "right": f"write: {example_for(dimension)}"}
            )
        try:
            number = parse(value, dimension)
        except QuantityError as error:
            raise PydanticCustomError("quantity", "{what}", {"what": error.what, "right": error.right}) from None
        if number < low or (above and number == low):
            least = show(low, dimension, "us")
            raise PydanticCustomError(
                "quantity",
                "{what}",
                {
                    "what": f"“{cut(str(value))}” is too small for {dimension.phrase} here",
                    "right": f"write: {'more than' if above else 'at least'} {least}",
                },
            )
        if number > high:
            raise PydanticCustomError(
                "quantity",
                "{what}",
                {
                    "what": f"“{cut(str(value))}” is too large for {dimension.phrase} here",
                    "right": f"write: at most {show(high, dimension, 'us')}",
                },
            )
        return number

    return read


def quantity(dimension: Dimension, *, low: float = 0.0, above: bool = False, high: float = math.inf) -> Any:
    """The annotated type of a quantity field.

    dimension: what is measured; low: the least value that makes sense [SI]; above: whether it must be more than `low`;
    high: the most.
    """
    schema: dict[str, Any] = {"type": ["string", "number"], "examples": [example_for(dimension)]}
    if dimension in (Dimension.COUNT, Dimension.YEAR, Dimension.NUMBER):
        schema = {"type": "number" if dimension is Dimension.NUMBER else "integer", "minimum": low}
    return Annotated[
        float,
        BeforeValidator(_reader(dimension, low, above, high)),
        Field(strict=False),
        WithJsonSchema(schema),
        Measure(dimension),
    ]


def is_date(text: str) -> bool:
    """Whether a text is a day of the calendar as year, month and day: dates are compared as texts."""
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _real_date(text: str) -> str:
    if not is_date(text):
        raise PydanticCustomError(
            "quantity", "{what}", {"what": f"“{cut(text)}” is no date", "right": 'write: "2026-03-31"'}
        )
    return text


Date = Annotated[str, AfterValidator(_real_date), WithJsonSchema({"type": "string", "format": "date"})]
Length = quantity(Dimension.LENGTH)
Area = quantity(Dimension.AREA)
Angle = quantity(Dimension.ANGLE)
Slope = quantity(Dimension.SLOPE)
Pressure = quantity(Dimension.PRESSURE)
Force = quantity(Dimension.FORCE)
Mass = quantity(Dimension.MASS)
LineLoad = quantity(Dimension.LINE_LOAD)
Moment = quantity(Dimension.MOMENT, above=True)
Stress = quantity(Dimension.STRESS, above=True)
Airflow = quantity(Dimension.AIRFLOW)
WindSpeed = quantity(Dimension.WIND_SPEED)
Time = quantity(Dimension.TIME)
Illuminance = quantity(Dimension.ILLUMINANCE)
Fraction = quantity(Dimension.FRACTION)
Temperature = quantity(Dimension.TEMPERATURE, low=-273.15)
Count = quantity(Dimension.COUNT)
Year = quantity(Dimension.YEAR, low=1.0)
CountFromOne = quantity(Dimension.COUNT, low=1.0)
Number = quantity(Dimension.NUMBER)
Place = quantity(Dimension.LENGTH, low=-1000.0)
Depth = quantity(Dimension.LENGTH, above=True)
LumberWidth = quantity(Dimension.LENGTH, low=0.0127, high=0.5969)
LumberDepth = quantity(Dimension.LENGTH, low=0.0254, high=1.4986)
Span = quantity(Dimension.LENGTH, above=True, high=24.384)
Volume = quantity(Dimension.VOLUME, above=True)
Share = quantity(Dimension.FRACTION, high=1.0)
TemperatureDifference = quantity(Dimension.TEMPERATURE_DIFFERENCE, above=True)
ThermalResistance = quantity(Dimension.THERMAL_RESISTANCE)
Conductivity = quantity(Dimension.CONDUCTIVITY, above=True)
UFactor = quantity(Dimension.U_FACTOR, above=True)
Permeance = quantity(Dimension.PERMEANCE)
HeatFlow = quantity(Dimension.HEAT_FLOW)
AirPressure = quantity(Dimension.AIR_PRESSURE)
AirChanges = quantity(Dimension.AIR_CHANGES)
Velocity = quantity(Dimension.VELOCITY)
