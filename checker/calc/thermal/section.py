"""Steady temperatures through a construction.

profile   section_temperatures
a plane   interface_temperature, sheathing_temperature
remedies  outboard_resistance_for, temperature_change_by_swap

Layers are listed from inside to outside, both surface films included. Steady state, one dimension: no sun,
no storage, no air movement; beside a stud or at an edge the temperatures differ.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import accumulate

from checker.calc._checks import not_negative, positive, whole
from checker.calc.errors import OutOfRange
from checker.calc.thermal import _sequences as lists


def section_temperatures(
    resistances_m2k_w: Sequence[float], inside_temperature_c: float, outside_temperature_c: float
) -> tuple[float, ...]:
    """Temperatures from the inside air through every plane to the outside air. [C]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
    Returns
        tuple[float, ...] — one more than layers: inside air, each plane, outside air. [C]
    Raises
        OutOfRange — a value outside its range.
    Notes
        inside - (inside - outside) × resistance so far / total resistance.
    References
        [1] ISO 13788, 2012, 4.4.3 and 6.3.
        [2] Masonry magazine, August 1988, page 18: the drop over a part is its share of the resistance.
    Examples
        >>> section_temperatures([0.5, 1.0, 0.5], 20.0, 0.0)
        (20.0, 15.0, 5.0, 0.0)
    """
    layers = lists.all_not_negative("resistances_m2k_w", resistances_m2k_w)
    total = positive("sum of resistances_m2k_w", math.fsum(layers))
    inside = lists.temperature("inside_temperature_c", inside_temperature_c)
    outside = lists.temperature("outside_temperature_c", outside_temperature_c)
    planes = tuple(inside - (inside - outside) * min(1.0, so_far / total) for so_far in accumulate(layers))
    return (inside, *planes[:-1], outside)


def interface_temperature(
    resistances_m2k_w: Sequence[float],
    layers_inboard_count: int,
    inside_temperature_c: float,
    outside_temperature_c: float,
) -> float:
    """Temperature at the plane behind a number of layers, counted from inside. [C]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        layers_inboard_count: int — layers between the inside air and the plane. [count], 0 up to all
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
    Returns
        float — temperature. [C]
    Raises
        OutOfRange — a value outside its range, more layers than there are.
    References
        [1] ISO 13788, 2012, 4.4.3 and 6.3.
    Examples
        >>> interface_temperature([0.5, 1.0, 0.5], 2, 20.0, 0.0)
        5.0
    """
    _check_layers("layers_inboard_count", layers_inboard_count, resistances_m2k_w, 0)
    return section_temperatures(resistances_m2k_w, inside_temperature_c, outside_temperature_c)[layers_inboard_count]


def sheathing_temperature(
    inboard_resistance_m2k_w: float,
    outboard_resistance_m2k_w: float,
    inside_temperature_c: float,
    outside_temperature_c: float,
) -> float:
    """Temperature of the inner face of sheathing, from the resistances on its two sides. [C]

    Parameters
        inboard_resistance_m2k_w: float — everything inside of that face. [m2K/W], 0 or more
        outboard_resistance_m2k_w: float — the sheathing and everything outside of it. [m2K/W], 0 or more;
            one of the two over 0
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air, a mean or a design value. [C], -100 to 100
    Returns
        float — temperature. [C]
    Raises
        OutOfRange — a value outside its range.
    Notes
        outside + (inside - outside) × outboard / (inboard + outboard).
    References
        [1] Journal of Light Construction, Where Does the Dew Drop: R-7 of R-18 outboard, 32 and 70 degF.
    Examples
        [1]: 47 degF, which is 8.2 degC.

        >>> round(sheathing_temperature(11.0, 7.0, 70 / 1.8 - 32 / 1.8, 0.0), 1)
        8.2
    """
    inboard = not_negative("inboard_resistance_m2k_w", inboard_resistance_m2k_w)
    outboard = not_negative("outboard_resistance_m2k_w", outboard_resistance_m2k_w)
    return section_temperatures([inboard, outboard], inside_temperature_c, outside_temperature_c)[1]


def outboard_resistance_for(
    inboard_resistance_m2k_w: float,
    wanted_temperature_c: float,
    inside_temperature_c: float,
    outside_temperature_c: float,
) -> float:
    """Resistance needed outside of a plane to keep it at a wanted temperature. [m2K/W]

    Parameters
        inboard_resistance_m2k_w: float — everything inside of the plane. [m2K/W], over 0
        wanted_temperature_c: float — temperature to keep, a dew point for instance. [C], under that of the
            inside
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], under that of the inside
    Returns
        float — outboard resistance, outer film included; 0 where the outside is as warm. [m2K/W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        inboard × (wanted - outside) / (inside - wanted).
    References
        [1] Journal of Light Construction, Where Does the Dew Drop: the temperature falls with the resistance.
    Examples
        47-7/9 degF (8.77 degC) is kept by 7 where 11 are inboard.

        >>> round(outboard_resistance_for(11.0, 70 / 1.8 * 7 / 18, 70 / 1.8, 0.0), 6)
        7.0
    """
    inboard = positive("inboard_resistance_m2k_w", inboard_resistance_m2k_w)
    inside = lists.temperature("inside_temperature_c", inside_temperature_c)
    outside = lists.temperature("outside_temperature_c", outside_temperature_c)
    wanted = lists.temperature("wanted_temperature_c", wanted_temperature_c)
    if outside >= inside:
        raise OutOfRange("outside_temperature_c", outside, f"under that of the inside, {inside:.12g}")
    if wanted >= inside:
        raise OutOfRange("wanted_temperature_c", wanted, f"under that of the inside, {inside:.12g}")
    return inboard * max(0.0, wanted - outside) / (inside - wanted)


def temperature_change_by_swap(
    resistances_m2k_w: Sequence[float],
    first_layer_number: int,
    second_layer_number: int,
    layers_inboard_count: int,
    inside_temperature_c: float,
    outside_temperature_c: float,
) -> float:
    """Change of the temperature at a plane when two layers change places. [K]

    Parameters
        resistances_m2k_w: Sequence[float] — layers from inside to outside, films included. [m2K/W], each 0
            or more, together over 0
        first_layer_number: int — one of the two, counted from inside. [count], 1 up to all
        second_layer_number: int — the other. [count], 1 up to all
        layers_inboard_count: int — layers between the inside air and the plane. [count], 0 up to all
        inside_temperature_c: float — inside air. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
    Returns
        float — after less before, negative if the plane gets colder. [K]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The total resistance stays, the plane moves within it.
    References
        [1] ISO 13788, 2012, 4.4.3: temperatures follow the order of the layers.
    Examples
        Insulation from outside of a board to inside of it: the board is 10 K colder.

        >>> temperature_change_by_swap([0.5, 0.5, 1.5, 0.5], 2, 3, 2, 30.0, 0.0)
        -10.0
    """
    _check_layers("first_layer_number", first_layer_number, resistances_m2k_w, 1)
    _check_layers("second_layer_number", second_layer_number, resistances_m2k_w, 1)
    swapped = list(resistances_m2k_w)
    swapped[first_layer_number - 1], swapped[second_layer_number - 1] = (
        swapped[second_layer_number - 1],
        swapped[first_layer_number - 1],
    )
    after = interface_temperature(swapped, layers_inboard_count, inside_temperature_c, outside_temperature_c)
    return after - interface_temperature(
        resistances_m2k_w, layers_inboard_count, inside_temperature_c, outside_temperature_c
    )


def _check_layers(name: str, number: int, layers: Sequence[float], least: int) -> None:
    if whole(name, number, least) > len(layers):
        raise OutOfRange(name, number, f"at most the number of layers, {len(layers)}")
