"""Condensation in a construction over a year of monthly means, by the procedure of ISO 13788.

one condition  condensation_rates
a year         first_condensing_month, water_after_months

Vapour pressure through a construction is a string pulled tight under the saturation pressures, over the
vapour resistance. Where the string is held down, vapour condenses; a plane that is still wet from a month
before is held at saturation and may dry. The heads of `moisture` and of each function say what is left out.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from checker.calc._checks import between, positive
from checker.calc.errors import OutOfRange
from checker.calc.thermal import _sequences as lists
from checker.calc.thermal.moisture import saturation_pressure, vapour_pressure
from checker.calc.thermal.section import section_temperatures

DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_DAY_S = 86400.0
_NEGLIGIBLE_KG_M2 = 1e-12
_NEGLIGIBLE_KG_S_M2 = 1e-16

_Point = tuple[float, float, int]  # vapour resistance from the inside, pressure, plane


@dataclass(frozen=True)
class _Month:
    """Saturation pressure at each plane, and the vapour pressures of the air on both sides."""

    saturation_pa: tuple[float, ...]
    inside_pa: float
    outside_pa: float
    seconds: float


def condensation_rates(
    resistances_m2k_w: Sequence[float],
    vapour_resistances_m2_s_pa_kg: Sequence[float],
    inside_temperature_c: float,
    inside_humidity_ratio: float,
    outside_temperature_c: float,
    outside_humidity_ratio: float,
    wet_interfaces: Sequence[int] = (),
) -> tuple[float, ...]:
    """Water that condenses or dries at each plane in steady state. [kg/(m2 s)]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        vapour_resistances_m2_s_pa_kg: Sequence[float] — the same layers; 0 for films. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        inside_humidity_ratio: float — relative humidity inside. [ratio], 0 to 1
        outside_temperature_c: float — outside air. [C], -100 to 100
        outside_humidity_ratio: float — relative humidity outside. [ratio], 0 to 1
        wet_interfaces: Sequence[int] — planes that hold water already: layers inboard of each. [count], 1 up
            to one fewer than layers
    Returns
        tuple[float, ...] — one fewer than layers, the plane behind the first layer first: condensing
            positive, drying negative. [kg/(m2 s)]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, a wet plane that cannot
        hold water (at a surface, or with no vapour resistance to the next).
    Notes
        rate = fall of pressure before the plane / resistance before it - the same behind it. Planes with no
        vapour resistance between them and the air are surfaces and do not count; of planes with none between
        them the outermost stands for all.
    References
        [1] ISO 13788, 2012, 6.4.2 to 6.4.4, equations (17) to (20).
    Examples
        Insulation with a tight skin outside: what comes in stays.

        >>> rates = condensation_rates([3.0, 0.0], [5e9, 5e12], 20.0, 0.5, -10.0, 1.0)
        >>> [round(rate * 86400 * 1000, 1) for rate in rates]
        [15.7]
    """
    month = _month(
        resistances_m2k_w,
        inside_temperature_c,
        inside_humidity_ratio,
        outside_temperature_c,
        outside_humidity_ratio,
        1.0,
    )
    path = _path(resistances_m2k_w, vapour_resistances_m2_s_pa_kg)
    holding = [planes[-1] for _, planes in path.nodes]
    for number in wet_interfaces:
        if number not in holding:
            raise OutOfRange(
                "wet_interfaces, one of them,", number, f"one of the planes that can hold water, {holding}"
            )
    return _rates(month, path, frozenset(wet_interfaces))


def first_condensing_month(
    resistances_m2k_w: Sequence[float],
    vapour_resistances_m2_s_pa_kg: Sequence[float],
    inside_temperatures_c: Sequence[float],
    inside_humidities_ratio: Sequence[float],
    outside_temperatures_c: Sequence[float],
    outside_humidities_ratio: Sequence[float],
) -> int:
    """Month in which a dry construction first condenses, where the account of the year starts. [count]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        vapour_resistances_m2_s_pa_kg: Sequence[float] — the same layers; 0 for films. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_temperatures_c: Sequence[float] — monthly means, January first. [C], 12
        inside_humidities_ratio: Sequence[float] — relative humidities inside. [ratio], 12, each 0 to 1
        outside_temperatures_c: Sequence[float] — monthly means. [C], 12
        outside_humidities_ratio: Sequence[float] — relative humidities outside. [ratio], 12, each 0 to 1
    Returns
        int — 1 for January to 12, 0 if no month condenses. [count]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, other than 12 months.
    Notes
        Of several, the one after the longest run of months that do not condense; January if every month does.
    References
        [1] ISO 13788, 2012, 6.3.
    Examples
        >>> outside = [-10.0] * 2 + [15.0] * 9 + [-10.0]
        >>> first_condensing_month([3.0, 0.0], [5e9, 5e12], [20.0] * 12, [0.5] * 12, outside, [0.8] * 12)
        12
    """
    path = _path(resistances_m2k_w, vapour_resistances_m2_s_pa_kg)
    months = _months(
        resistances_m2k_w,
        inside_temperatures_c,
        inside_humidities_ratio,
        outside_temperatures_c,
        outside_humidities_ratio,
    )
    return _first(months, path)


def water_after_months(
    resistances_m2k_w: Sequence[float],
    vapour_resistances_m2_s_pa_kg: Sequence[float],
    inside_temperatures_c: Sequence[float],
    inside_humidities_ratio: Sequence[float],
    outside_temperatures_c: Sequence[float],
    outside_humidities_ratio: Sequence[float],
) -> tuple[tuple[float, ...], ...]:
    """Water held at each plane at the end of each month of a year that starts dry. [kg/m2]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        vapour_resistances_m2_s_pa_kg: Sequence[float] — the same layers; 0 for films. [m2 s Pa/kg], each 0
            or more, together over 0
        inside_temperatures_c: Sequence[float] — monthly means, January first. [C], 12
        inside_humidities_ratio: Sequence[float] — relative humidities inside. [ratio], 12, each 0 to 1
        outside_temperatures_c: Sequence[float] — monthly means. [C], 12
        outside_humidities_ratio: Sequence[float] — relative humidities outside. [ratio], 12, each 0 to 1
    Returns
        tuple[tuple[float, ...], ...] — twelve months from `first_condensing_month` on (from January if none
            condenses); in each, the planes from inside to outside. [kg/m2]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, other than 12 months.
    Notes
        Where the last month holds water, it gathers from year to year. A month in which a plane dries out is
        divided at that moment. Insulation with much resistance should be listed as layers of at most
        0.25 m2K/W, so that condensation inside it is found. Indication only: diffusion alone, no storage, no
        sun or rain, no air leakage.
    References
        [1] ISO 13788, 2012, clause 6.
    Examples
        Three cold months, then warm and dry ones: all gone at the end.

        >>> outside = [-10.0] * 2 + [15.0] * 9 + [-10.0]
        >>> layers, vapour = [3.0, 0.0], [5e9, 5e10]
        >>> held = water_after_months(layers, vapour, [20.0] * 12, [0.5] * 12, outside, [0.6] * 12)
        >>> [round(month[0], 3) for month in held][:4], held[-1]
        ([0.482, 0.963, 1.398, 1.075], (0.0,))
    """
    path = _path(resistances_m2k_w, vapour_resistances_m2_s_pa_kg)
    months = _months(
        resistances_m2k_w,
        inside_temperatures_c,
        inside_humidities_ratio,
        outside_temperatures_c,
        outside_humidities_ratio,
    )
    start = max(_first(months, path), 1) - 1
    held = [0.0] * path.plane_count
    after = []
    for month in (*months[start:], *months[:start]):
        held = _through(month, path, held)
        after.append(tuple(held))
    return tuple(after)


@dataclass(frozen=True)
class _Path:
    """The way of the vapour: planes that hold water, and where they lie along the vapour resistance.

    Planes with no vapour resistance between them are one node: it is named for the outermost and has the
    lowest saturation pressure of them all.
    """

    total: float
    nodes: tuple[tuple[float, tuple[int, ...]], ...]
    plane_count: int


def _path(resistances: Sequence[float], vapour_resistances: Sequence[float]) -> _Path:
    lists.same_length("vapour_resistances_m2_s_pa_kg", vapour_resistances, "resistances_m2k_w", resistances)
    checked = lists.all_not_negative("vapour_resistances_m2_s_pa_kg", vapour_resistances)
    total = positive("sum of vapour_resistances_m2_s_pa_kg", math.fsum(checked))
    nodes: list[tuple[float, tuple[int, ...]]] = []
    so_far = 0.0
    for number, layer in enumerate(checked[:-1], start=1):
        so_far += layer
        if so_far == 0 or not any(checked[number:]):
            continue
        inboard = nodes.pop()[1] if nodes and layer == 0 else ()
        nodes.append((so_far, (*inboard, number)))
    return _Path(total, tuple(nodes), len(checked) - 1)


def _month(
    resistances: Sequence[float],
    inside_c: float,
    inside_humidity: float,
    outside_c: float,
    outside_humidity: float,
    seconds: float,
) -> _Month:
    temperatures = section_temperatures(resistances, inside_c, outside_c)
    return _Month(
        tuple(saturation_pressure(temperature) for temperature in temperatures),
        vapour_pressure(inside_c, inside_humidity),
        vapour_pressure(outside_c, outside_humidity),
        seconds,
    )


def _months(
    resistances: Sequence[float],
    inside_c: Sequence[float],
    inside_humidities: Sequence[float],
    outside_c: Sequence[float],
    outside_humidities: Sequence[float],
) -> tuple[_Month, ...]:
    given = {
        "inside_temperatures_c": inside_c,
        "inside_humidities_ratio": inside_humidities,
        "outside_temperatures_c": outside_c,
        "outside_humidities_ratio": outside_humidities,
    }
    for name, values in given.items():
        if len(values) != len(DAYS):
            raise OutOfRange(f"length of {name}", len(values), f"{len(DAYS)}, one for each month")
        for place, value in enumerate(values, start=1):
            if name.endswith("ratio"):
                between(f"{name}, number {place},", value, 0.0, 1.0)
            else:
                lists.temperature(f"{name}, number {place},", value)
    rows = zip(inside_c, inside_humidities, outside_c, outside_humidities, DAYS, strict=True)
    return tuple(_month(resistances, *row[:4], row[4] * _DAY_S) for row in rows)


def _first(months: Sequence[_Month], path: _Path) -> int:
    wet = [any(rate > 0 for rate in _rates(month, path, frozenset())) for month in months]
    if all(wet) or not any(wet):
        return int(all(wet))

    def dry_run(number: int) -> int:
        return next(back for back in range(len(wet)) if wet[number - 1 - back])

    starts = [number for number in range(len(wet)) if wet[number] and not wet[number - 1]]
    return max(starts, key=dry_run) + 1


def _through(month: _Month, path: _Path, held: Sequence[float]) -> list[float]:
    """Water at each plane after a month, the month divided whenever a plane dries out."""
    water = list(held)
    left_s = month.seconds
    while left_s > 0:
        wet = frozenset(number for number, amount in enumerate(water, start=1) if amount > 0)
        rates = _rates(month, path, wet)
        drying = [amount / -rate for amount, rate in zip(water, rates, strict=True) if rate < 0 < amount]
        step_s = min([left_s, *drying])
        after = [amount + rate * step_s for amount, rate in zip(water, rates, strict=True)]
        water = [amount if amount > _NEGLIGIBLE_KG_M2 else 0.0 for amount in after]
        left_s -= step_s
    return water


def _rates(month: _Month, path: _Path, wet: frozenset[int]) -> tuple[float, ...]:
    """Rates at the planes between layers: bends of the tight string that runs through the wet planes."""
    string: list[_Point] = []
    stretch: list[_Point] = [(0.0, month.inside_pa, 0)]
    for place, planes in path.nodes:
        stretch.append((place, min(month.saturation_pa[plane] for plane in planes), planes[-1]))
        if planes[-1] in wet:
            string += _pulled_tight(stretch)[:-1]
            stretch = [stretch[-1]]
    string += _pulled_tight([*stretch, (path.total, month.outside_pa, 0)])

    rates = [0.0] * path.plane_count
    for before, at, behind in zip(string, string[1:], string[2:], strict=False):
        rate = _flow(before, at) - _flow(at, behind)
        rates[at[2] - 1] = rate if abs(rate) > _NEGLIGIBLE_KG_S_M2 else 0.0
    return tuple(rates)


def _flow(start: _Point, end: _Point) -> float:
    return (start[1] - end[1]) / (end[0] - start[0])


def _pulled_tight(points: Sequence[_Point]) -> list[_Point]:
    """The string from the first to the last point that passes above none of the others."""
    string: list[_Point] = []
    for point in points:
        while len(string) > 1 and _flow(string[-2], string[-1]) <= _flow(string[-1], point):
            string.pop()
        string.append(point)
    return string
