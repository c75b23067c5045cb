"""The heating season: degree days, bins, and what a stage of heating carries.

degree days  degree_days_of_bins, seasonal_heat
a stage      load_at, lowest_temperature_carried, hours_share_carried, heat_share_carried

The load is taken as a straight line from the balance temperature, where it is 0, through the design point.
Sun, wind, setback and warming up again are left out.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import not_negative, positive
from checker.calc.errors import OutOfRange
from checker.calc.thermal import _sequences as lists


def degree_days_of_bins(bin_temperatures_c: Sequence[float], bin_hours_h: Sequence[float], base_c: float) -> float:
    """Heating degree days from hours in bins of temperature. [K d]

    Parameters
        bin_temperatures_c: Sequence[float] — middle of each bin. [C], one or more
        bin_hours_h: Sequence[float] — hours of a year in each bin, in the same order. [h], each 0 or more
        base_c: float — base temperature. [C], -100 to 100
    Returns
        float — degree days. [K d]
    Raises
        OutOfRange — a value outside its range, lists of unlike length.
    Notes
        sum of hours × (base - temperature) / 24 over the bins below the base; a little under or over the
        degree days of daily means.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 19, degree-day and bin methods.
    Examples
        >>> degree_days_of_bins([-5.0, 8.0, 21.0], [480.0, 2400.0, 5880.0], 18.0)
        1460.0
    """
    bins = _bins(bin_temperatures_c, bin_hours_h)
    base = lists.temperature("base_c", base_c)
    return math.fsum(hours * max(0.0, base - temperature) for temperature, hours in bins) / 24


def seasonal_heat(conductance_w_k: float, degree_days_k_d: float) -> float:
    """Heat that a conductance loses over a season. [J]

    Parameters
        conductance_w_k: float — U × area, or that of a house. [W/K], 0 or more
        degree_days_k_d: float — heating degree days. [K d], 0 or more
    Returns
        float — heat. [J]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] EGEE 102, calculating heat loss of windows: 24 × area × degree days / R.
    Examples
        [1]: 380 ft2 of R-1.1 in 6000 degF days: 49.75 million Btu.

        >>> joule = seasonal_heat(380 * 0.09290304 / (1.1 * 0.17611018), 6000 / 1.8)
        >>> round(joule / 1055.05585 / 1e6, 2)
        49.75
    """
    conductance = not_negative("conductance_w_k", conductance_w_k)
    return conductance * not_negative("degree_days_k_d", degree_days_k_d) * 86400


def load_at(
    temperature_c: float, design_loss_w: float, design_temperature_c: float, balance_temperature_c: float
) -> float:
    """Heating load at an outdoor temperature. [W]

    Parameters
        temperature_c: float — outside air. [C], -100 to 100
        design_loss_w: float — loss at the design temperature. [W], over 0
        design_temperature_c: float — outdoor design temperature. [C], under the balance temperature
        balance_temperature_c: float — outdoor temperature at which no heating is needed. [C], -100 to 100
    Returns
        float — load, 0 above the balance temperature. [W]
    Raises
        OutOfRange — a value outside its range.
    Notes
        design loss × (balance - temperature) / (balance - design).
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 19, bin method.
        [2] Siegenthaler, An Internal Matter, PM Engineer: load in proportion to the difference.
    Examples
        Half way between the two temperatures, half the load.

        >>> load_at(0.0, 12000.0, -15.0, 15.0)
        6000.0
    """
    outside = lists.temperature("temperature_c", temperature_c)
    return _slope(design_loss_w, design_temperature_c, balance_temperature_c) * max(
        0.0, balance_temperature_c - outside
    )


def lowest_temperature_carried(
    output_w: float, design_loss_w: float, design_temperature_c: float, balance_temperature_c: float
) -> float:
    """Outdoor temperature down to which an output carries the load. [C]

    Parameters
        output_w: float — output of the stage at the altitude. [W], 0 or more
        design_loss_w: float — loss at the design temperature. [W], over 0
        design_temperature_c: float — outdoor design temperature. [C], under the balance temperature
        balance_temperature_c: float — outdoor temperature at which no heating is needed. [C], -100 to 100
    Returns
        float — temperature; under the design temperature if the output is over the design loss. [C]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 19, bin method.
    Examples
        >>> lowest_temperature_carried(8000.0, 12000.0, -15.0, 15.0)
        -5.0
    """
    slope = _slope(design_loss_w, design_temperature_c, balance_temperature_c)
    return balance_temperature_c - not_negative("output_w", output_w) / slope


def hours_share_carried(
    output_w: float,
    bin_temperatures_c: Sequence[float],
    bin_hours_h: Sequence[float],
    design_loss_w: float,
    design_temperature_c: float,
    balance_temperature_c: float,
) -> float:
    """Share of the heating hours in which an output carries the load alone. [ratio]

    Parameters
        output_w: float — output of the low stage at the altitude. [W], 0 or more
        bin_temperatures_c: Sequence[float] — middle of each bin. [C], one or more, one below the balance
            temperature
        bin_hours_h: Sequence[float] — hours of a year in each bin, in the same order. [h], each 0 or more
        design_loss_w: float — loss at the design temperature. [W], over 0
        design_temperature_c: float — outdoor design temperature. [C], under the balance temperature
        balance_temperature_c: float — outdoor temperature at which no heating is needed. [C], -100 to 100
    Returns
        float — share of the hours below the balance temperature. [ratio]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, no heating hours.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 19, bin method.
    Examples
        >>> hours_share_carried(6000.0, [-10.0, 5.0, 20.0], [1000.0, 4000.0, 3760.0], 12000.0, -15.0, 15.0)
        0.8
    """
    lowest = lowest_temperature_carried(output_w, design_loss_w, design_temperature_c, balance_temperature_c)
    bins = [bin_ for bin_ in _bins(bin_temperatures_c, bin_hours_h) if bin_[0] < balance_temperature_c]
    heating_h = positive("hours below the balance temperature", math.fsum(hours for _, hours in bins))
    return math.fsum(hours for temperature, hours in bins if temperature >= lowest - 1e-9) / heating_h


def heat_share_carried(
    output_w: float,
    bin_temperatures_c: Sequence[float],
    bin_hours_h: Sequence[float],
    design_loss_w: float,
    design_temperature_c: float,
    balance_temperature_c: float,
) -> float:
    """Share of the season's heat that an output can give. [ratio]

    Parameters
        output_w: float — output of the low stage at the altitude. [W], 0 or more
        bin_temperatures_c: Sequence[float] — middle of each bin. [C], one or more, one below the balance
            temperature
        bin_hours_h: Sequence[float] — hours of a year in each bin, in the same order. [h], each 0 or more
        design_loss_w: float — loss at the design temperature. [W], over 0
        design_temperature_c: float — outdoor design temperature. [C], under the balance temperature
        balance_temperature_c: float — outdoor temperature at which no heating is needed. [C], -100 to 100
    Returns
        float — share of the heat over all bins. [ratio]
    Raises
        OutOfRange — a value outside its range, lists of unlike length, no heating hours.
    Notes
        In bins with more load than output the output counts in full: a stage that helps another.
    References
        [1] ASHRAE Handbook Fundamentals, 2017, chapter 19, bin method.
    Examples
        10,000 W at -10 degC for 1000 h, 4000 W at 5 degC for 4000 h: 22 of 26 MWh.

        >>> bins, hours = [-10.0, 5.0, 20.0], [1000.0, 4000.0, 3760.0]
        >>> round(heat_share_carried(6000.0, bins, hours, 12000.0, -15.0, 15.0), 4)
        0.8462
    """
    output = not_negative("output_w", output_w)
    loads = [
        (load_at(temperature, design_loss_w, design_temperature_c, balance_temperature_c), hours)
        for temperature, hours in _bins(bin_temperatures_c, bin_hours_h)
    ]
    whole = positive("heat over all bins", math.fsum(load * hours for load, hours in loads))
    return math.fsum(min(load, output) * hours for load, hours in loads) / whole


def _bins(temperatures_c: Sequence[float], hours_h: Sequence[float]) -> list[tuple[float, float]]:
    lists.same_length("bin_hours_h", hours_h, "bin_temperatures_c", temperatures_c)
    return list(
        zip(
            lists.temperatures("bin_temperatures_c", temperatures_c),
            lists.all_not_negative("bin_hours_h", hours_h),
            strict=True,
        )
    )


def _slope(design_loss_w: float, design_temperature_c: float, balance_temperature_c: float) -> float:
    """Load for a degree below the balance temperature. [W/K]"""
    loss_w = positive("design_loss_w", design_loss_w)
    design = lists.temperature("design_temperature_c", design_temperature_c)
    balance = lists.temperature("balance_temperature_c", balance_temperature_c)
    if design >= balance:
        raise OutOfRange("design_temperature_c", design, f"under the balance temperature, {balance:.12g}")
    return loss_w / (balance - design)
