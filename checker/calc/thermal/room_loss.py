"""Heat losses of rooms and of a house at design temperatures.

surfaces   net_area, conductance, transmission_loss, reduced_transmission_loss
unheated   unheated_temperature, reduction_factor
sums       room_loss, house_loss
changes    loss_saved, loss_saved_share

A loss to a warmer neighbour is negative, a gain. A partition is a loss of one room and the same gain of the
other, so that the sum of the rooms is the loss of the house.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, between, finite, not_negative, positive
from checker.calc.thermal import _sequences as lists


def net_area(gross_area_m2: float, opening_areas_m2: Sequence[float]) -> float:
    """Area of a wall or roof without its openings. [m2]

    Parameters
        gross_area_m2: float — openings included. [m2], over 0
        opening_areas_m2: Sequence[float] — windows, doors, hatches. [m2], each over 0; may be empty
    Returns
        float — net area. [m2]
    Raises
        OutOfRange — a value outside its range, openings that exceed the surface.
    References
        [1] Figuring heat loss (popular energy article): 8 × 60 ft of wall with six windows 2-1/2 × 4 ft.
    Examples
        [1]

        >>> net_area(480.0, [10.0] * 6)
        420.0
    """
    gross_m2 = positive("gross_area_m2", gross_area_m2)
    openings_m2 = math.fsum(all_positive("opening_areas_m2", opening_areas_m2, 0))
    return gross_m2 - between("sum of opening_areas_m2", openings_m2, 0.0, gross_m2)


def conductance(u_values_w_m2k: Sequence[float], areas_m2: Sequence[float]) -> float:
    """Heat that surfaces pass for a degree of difference. [W/K]

    Parameters
        u_values_w_m2k: Sequence[float] — U of each surface. [W/m2K], each over 0, one or more
        areas_m2: Sequence[float] — area of each surface, in the same order. [m2], each over 0
    Returns
        float — sum of U × area. [W/K]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    References
        [1] ISO 13789, 2007, 4.3.
    Examples
        >>> conductance([0.25, 1.5], [40.0, 6.0])
        19.0
    """
    values = all_positive("u_values_w_m2k", u_values_w_m2k)
    areas = lists.matching_positive("areas_m2", areas_m2, "u_values_w_m2k", u_values_w_m2k)
    return math.fsum(u * area for u, area in zip(values, areas, strict=True))


def transmission_loss(u_w_m2k: float, area_m2: float, inside_temperature_c: float, other_temperature_c: float) -> float:
    """Loss of a surface to the outdoors, the ground or another room. [W]

    Parameters
        u_w_m2k: float — U of the surface. [W/m2K], over 0
        area_m2: float — its area, openings taken off. [m2], over 0
        inside_temperature_c: float — temperature of the room. [C], -100 to 100
        other_temperature_c: float — temperature on the other side. [C], -100 to 100
    Returns
        float — loss, negative for a gain from a warmer side. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        U × area × (inside - other).
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 17, heating load.
        [2] DIY Data, worked calculations for a semi-detached house: dining room back wall 518 Btu/h.
    Examples
        [2]: 72 ft2 of 0.18 Btu/h ft2 F over 40 degF.

        >>> round(transmission_loss(0.18 * 5.678263, 72 * 0.09290304, 40 / 1.8, 0.0) / 0.29307107)
        518
    """
    u_area = positive("u_w_m2k", u_w_m2k) * positive("area_m2", area_m2)
    inside = lists.temperature("inside_temperature_c", inside_temperature_c)
    return u_area * (inside - lists.temperature("other_temperature_c", other_temperature_c))


def reduced_transmission_loss(
    u_w_m2k: float,
    area_m2: float,
    inside_temperature_c: float,
    outside_temperature_c: float,
    reduction_ratio: float,
) -> float:
    """Loss of a surface to an unheated space, by a factor on the difference to the outdoors. [W]

    Parameters
        u_w_m2k: float — U of the surface between the two. [W/m2K], over 0
        area_m2: float — its area. [m2], over 0
        inside_temperature_c: float — temperature of the room. [C], -100 to 100
        outside_temperature_c: float — outside air. [C], -100 to 100
        reduction_ratio: float — 0 as warm as the room, 1 as cold as the outdoors. [ratio], 0 to 1
    Returns
        float — loss. [W]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ISO 13789, 2007, 6, equation (6).
    Examples
        A ceiling of 50 m2 and 0.5 W/m2K under an attic, factor 0.9, 20 and -20 degC.

        >>> reduced_transmission_loss(0.5, 50.0, 20.0, -20.0, 0.9)
        900.0
    """
    share = between("reduction_ratio", reduction_ratio, 0.0, 1.0)
    return share * transmission_loss(u_w_m2k, area_m2, inside_temperature_c, outside_temperature_c)


def unheated_temperature(
    heated_conductances_w_k: Sequence[float],
    heated_temperatures_c: Sequence[float],
    outdoor_conductance_w_k: float,
    outdoor_temperature_c: float,
    gain_w: float = 0.0,
) -> float:
    """Temperature of an unheated space, by the balance of its losses and gains. [C]

    Parameters
        heated_conductances_w_k: Sequence[float] — to each heated room, leaking air included. [W/K], each 0
            or more
        heated_temperatures_c: Sequence[float] — temperature of each, in the same order. [C], -100 to 100
        outdoor_conductance_w_k: float — to the outdoors: surfaces and air exchange. [W/K], 0 or more; with
            the others over 0
        outdoor_temperature_c: float — outside air. [C], -100 to 100
        gain_w: float — heat given off in the space, by ducts or a boiler. [W], 0 or more
    Returns
        float — temperature. [C]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        (sum of conductance × temperature + gain) / sum of conductances. Steady state.
    References
        [1] ISO 13789, 2007, annex A, equation (A.1).
    Examples
        >>> unheated_temperature([30.0], [20.0], 90.0, -20.0)
        -10.0
    """
    lists.same_length(
        "heated_temperatures_c", heated_temperatures_c, "heated_conductances_w_k", heated_conductances_w_k
    )
    inner = lists.all_not_negative("heated_conductances_w_k", heated_conductances_w_k, 0)
    outer = not_negative("outdoor_conductance_w_k", outdoor_conductance_w_k)
    warm = lists.temperatures("heated_temperatures_c", heated_temperatures_c, 0)
    heat_w = outer * lists.temperature("outdoor_temperature_c", outdoor_temperature_c) + not_negative("gain_w", gain_w)
    heat_w += math.fsum(part * temperature for part, temperature in zip(inner, warm, strict=True))
    return heat_w / positive("sum of all conductances", outer + math.fsum(inner))


def reduction_factor(heated_conductance_w_k: float, outdoor_conductance_w_k: float) -> float:
    """Share of the difference to the outdoors that lies before an unheated space. [ratio]

    Parameters
        heated_conductance_w_k: float — from the heated rooms to the space. [W/K], 0 or more
        outdoor_conductance_w_k: float — from the space to the outdoors, air exchange included. [W/K], 0 or
            more; one of the two over 0
    Returns
        float — 0 as warm as the house, 1 as cold as the outdoors. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        outdoor / (heated + outdoor).
    References
        [1] ISO 13789, 2007, 6, equation (6).
    Examples
        >>> reduction_factor(30.0, 90.0)
        0.75
    """
    outer = not_negative("outdoor_conductance_w_k", outdoor_conductance_w_k)
    inner = not_negative("heated_conductance_w_k", heated_conductance_w_k)
    return outer / positive("sum of both conductances", inner + outer)


def room_loss(surface_losses_w: Sequence[float], air_losses_w: Sequence[float]) -> float:
    """Loss of a room: its surfaces and its air. [W]

    Parameters
        surface_losses_w: Sequence[float] — each surface, gains negative. [W], may be empty
        air_losses_w: Sequence[float] — infiltration and ventilation. [W], may be empty
    Returns
        float — loss, negative if the room gains on the whole. [W]
    Raises
        OutOfRange — NaN or infinity.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 17, heating load.
        [2] DIY Data, worked calculations for a semi-detached house: kitchen.
    Examples
        >>> room_loss([1512.0, 577.5, 210.0, 525.0], [1701.0])
        4525.5
    """
    surfaces_w = math.fsum(lists.all_finite("surface_losses_w", surface_losses_w, 0))
    return surfaces_w + math.fsum(lists.all_finite("air_losses_w", air_losses_w, 0))


def house_loss(room_losses_w: Sequence[float]) -> float:
    """Loss of a house: the sum of its rooms. [W]

    Parameters
        room_losses_w: Sequence[float] — each room with gains from and losses to its neighbours. [W], one or
            more
    Returns
        float — loss; what passes between rooms cancels. [W]
    Raises
        OutOfRange — an empty list, NaN or infinity.
    Notes
        Not the sum of the losses of rooms with their gains left out. Ventilation with one recovery unit may
        be counted once for the house instead.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 17, heating load.
    Examples
        >>> house_loss([900.0, -50.0, 1200.0])
        2050.0
    """
    return math.fsum(lists.all_finite("room_losses_w", room_losses_w))


def loss_saved(loss_before_w: float, loss_after_w: float) -> float:
    """Loss that a retrofit takes away. [W]

    Parameters
        loss_before_w: float — loss before. [W], any
        loss_after_w: float — loss after, at the same temperatures. [W], any
    Returns
        float — before less after, negative if it grew. [W]
    Raises
        OutOfRange — NaN or infinity.
    References
        [1] EGEE 102, calculating heat loss of windows: saving by better windows.
    Examples
        >>> loss_saved(12000.0, 7500.0)
        4500.0
    """
    return finite("loss_before_w", loss_before_w) - finite("loss_after_w", loss_after_w)


def loss_saved_share(loss_before_w: float, loss_after_w: float) -> float:
    """Share of the loss that a retrofit takes away. [ratio]

    Parameters
        loss_before_w: float — loss before. [W], over 0
        loss_after_w: float — loss after, at the same temperatures. [W], any
    Returns
        float — share of the loss before, negative if it grew. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] EGEE 102, calculating heat loss of windows: 45 % by better windows.
    Examples
        >>> loss_saved_share(12000.0, 7500.0)
        0.375
    """
    return loss_saved(loss_before_w, loss_after_w) / positive("loss_before_w", loss_before_w)
