"""Air for flames and the flues they draw through.

room        indoor_volume_standard, indoor_volume_by_infiltration
openings    opening_area_for_input, gross_opening_area, outdoor_reduction, combined_opening_area
flues       flue_area_ratio, largest_flue_area, least_common_flue_area, capacity_fits

For fuel-burning equipment that takes its air from the house; sealed appliances are left out. All coefficients
come from the fuel gas code that applies. An appliance left alone on a flue is checked with its own outlet only.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.calc._checks import all_positive, between, not_negative, positive, reaches
from checker.calc.errors import OutOfRange

_SECONDS_IN_HOUR = 3600.0


def indoor_volume_standard(heat_input_w: float, volume_per_input_m3_w: float) -> float:
    """Volume of rooms that gives enough air to appliances, by their input alone. [m3]

    Parameters
        heat_input_w: float — input of all appliances that take air from the space. [W], 0 or more
        volume_per_input_m3_w: float — volume for each unit of input. [m3/W], 0 or more
    Returns
        float — volume. [m3]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Holds for houses that are not tight; the codes name the air changes under which it may not be used.
    References
        [1] NFPA 54, 2012, 9.3.2.1 (50 ft3 for each 1000 Btu/h).
        [2] NFPA 54, annex I, example of combined indoor and outdoor air.
    Examples
        [2]: 140,000 Btu/h need 7000 ft3.

        >>> indoor_volume_standard(140000.0, 50 / 1000)
        7000.0
    """
    volume = not_negative("volume_per_input_m3_w", volume_per_input_m3_w)
    return not_negative("heat_input_w", heat_input_w) * volume


def indoor_volume_by_infiltration(
    heat_input_w: float, air_per_heat_m3_j: float, air_changes_per_h: float, most_air_changes_per_h: float
) -> float:
    """Volume of rooms that gives enough air to appliances, by a known rate of infiltration. [m3]

    Parameters
        heat_input_w: float — input of the appliances of one kind. [W], 0 or more
        air_per_heat_m3_j: float — air for each unit of heat in the fuel, by kind of appliance. [m3/J], 0 or
            more
        air_changes_per_h: float — natural air changes of the house. [per h], over 0
        most_air_changes_per_h: float — most air changes that may be counted. [per h], over 0
    Returns
        float — volume; those of several kinds add up. [m3]
    Raises
        OutOfRange — a value outside its range.
    Notes
        input × air per heat / air changes. Air changes of a test at 50 Pa are not natural ones.
    References
        [1] NFPA 54, 2012, 9.3.2.2 (21 ft3 for each 1000 Btu, 15 if fan-assisted, 0.60 air changes at most).
        [2] Furnace installation manual, table 2, minimum space volumes.
    Examples
        [2]: 40,000 Btu/h, not fan-assisted, 0.30 air changes: 2800 ft3.

        >>> round(indoor_volume_by_infiltration(40000 / 3600, 21 / 1000, 0.30, 0.60), 6)
        2800.0
    """
    air_m3_h = (
        not_negative("heat_input_w", heat_input_w)
        * not_negative("air_per_heat_m3_j", air_per_heat_m3_j)
        * _SECONDS_IN_HOUR
    )
    counted = min(
        positive("air_changes_per_h", air_changes_per_h), positive("most_air_changes_per_h", most_air_changes_per_h)
    )
    return air_m3_h / counted


def opening_area_for_input(heat_input_w: float, area_per_input_m2_w: float, least_area_m2: float = 0.0) -> float:
    """Free area of an opening for combustion air. [m2]

    Parameters
        heat_input_w: float — input of all appliances in the space. [W], 0 or more
        area_per_input_m2_w: float — free area for each unit of input, by kind of opening. [m2/W], 0 or more
        least_area_m2: float — free area that the opening has at any input. [m2], 0 or more
    Returns
        float — free area of each such opening. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] NFPA 54, 2012, 9.3.2.3 and 9.3.3 (1 in2 for each 1000, 2000, 3000 or 4000 Btu/h).
        [2] Furnace installation manual, table 2, examples of free area.
    Examples
        [2]: 140,000 Btu/h, two vertical ducts: 35 in2 each.

        >>> opening_area_for_input(140000.0, 1 / 4000)
        35.0
    """
    area = not_negative("area_per_input_m2_w", area_per_input_m2_w)
    return max(not_negative("heat_input_w", heat_input_w) * area, not_negative("least_area_m2", least_area_m2))


def gross_opening_area(free_area_m2: float, free_share_ratio: float) -> float:
    """Size of a louvre or grille that has a free area. [m2]

    Parameters
        free_area_m2: float — free area. [m2], 0 or more
        free_share_ratio: float — free area over whole area. [ratio], over 0 up to 1
    Returns
        float — whole area. [m2]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Furnace installation manual, combustion air (wood louvres 20 %, metal 60 % where not known).
    Examples
        [1]: 30 in2 through a metal louvre.

        >>> round(gross_opening_area(30.0, 0.60), 9)
        50.0
    """
    share = between("free_share_ratio", positive("free_share_ratio", free_share_ratio), 0.0, 1.0)
    return not_negative("free_area_m2", free_area_m2) / share


def outdoor_reduction(available_volume_m3: float, required_volume_m3: float) -> float:
    """Share of the outdoor opening that is still needed where indoor air does a part. [ratio]

    Parameters
        available_volume_m3: float — volume of the rooms. [m3], 0 or more
        required_volume_m3: float — volume that would suffice without outdoor air. [m3], over 0
    Returns
        float — 1 − available / required, 0 where the rooms suffice. [ratio]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] NFPA 54, 2012, 9.3.4.
        [2] NFPA 54, annex I, example of combined indoor and outdoor air.
    Examples
        [2]: 3600 of 7000 ft3.

        >>> round(outdoor_reduction(3600.0, 7000.0), 2)
        0.49
    """
    part = not_negative("available_volume_m3", available_volume_m3) / positive("required_volume_m3", required_volume_m3)
    return max(0.0, 1 - part)


def combined_opening_area(full_area_m2: float, available_volume_m3: float, required_volume_m3: float) -> float:
    """Free area of an outdoor opening where indoor air does a part. [m2]

    Parameters
        full_area_m2: float — free area for outdoor air alone, see `opening_area_for_input`. [m2], 0 or more
        available_volume_m3: float — volume of the rooms. [m3], 0 or more
        required_volume_m3: float — volume that would suffice without outdoor air. [m3], over 0
    Returns
        float — free area. [m2]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A single opening keeps the area of the vent connectors that the code asks for besides.
    References
        [1] NFPA 54, 2012, 9.3.4.
    Examples
        140,000 Btu/h by one opening of 1 in2 for each 3000, with 3600 of 7000 ft3.

        >>> round(combined_opening_area(140000 / 3000, 3600.0, 7000.0), 1)
        22.7
    """
    reduction = outdoor_reduction(available_volume_m3, required_volume_m3)
    return not_negative("full_area_m2", full_area_m2) * reduction


def flue_area_ratio(flue_area_m2: float, outlet_areas_m2: Sequence[float]) -> float:
    """Area of a flue over the smallest outlet that draws through it. [ratio]

    Parameters
        flue_area_m2: float — inside area of the chimney, liner or common vent. [m2], over 0
        outlet_areas_m2: Sequence[float] — flue collar or draught hood outlet of each appliance that stays on
            it. [m2], each over 0, one or more
    Returns
        float — ratio. [ratio]
    Raises
        OutOfRange — an empty list, a value outside its range.
    Notes
        With the outlets that remain after an appliance has gone it shows the flue left too large.
    References
        [1] NFPA 54, 2012, 12.6.3 and 13.2 (at most seven times).
        [2] Heating contractor's page on the flue of a water heater (12 in by 12 in, 3 in outlet).
    Examples
        [2]: 144 in2 over 7.07 in2.

        >>> round(flue_area_ratio(144.0, [3.0**2 * math.pi / 4]), 1)
        20.4
    """
    return positive("flue_area_m2", flue_area_m2) / min(all_positive("outlet_areas_m2", outlet_areas_m2))


def largest_flue_area(outlet_areas_m2: Sequence[float], most_times_ratio: float) -> float:
    """Largest flue for the smallest outlet that draws through it. [m2]

    Parameters
        outlet_areas_m2: Sequence[float] — flue collar or draught hood outlet of each appliance. [m2], each over
            0, one or more
        most_times_ratio: float — flue over outlet at most. [ratio], 1 or more
    Returns
        float — area. [m2]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        [1] International Fuel Gas Code, vent sizing examples, example 5(b) (seven times 12.2 in2).
    Examples
        [1]: 85.4 in2.

        >>> round(largest_flue_area([12.2], 7.0), 1)
        85.4
    """
    times = positive("most_times_ratio", most_times_ratio)
    if times < 1:
        raise OutOfRange("most_times_ratio", times, "1 or more")
    return min(all_positive("outlet_areas_m2", outlet_areas_m2)) * times


def least_common_flue_area(outlet_areas_m2: Sequence[float], added_share_ratio: float) -> float:
    """Smallest flue for draught hood appliances together: the largest outlet and a share of the others. [m2]

    Parameters
        outlet_areas_m2: Sequence[float] — draught hood outlet of each appliance. [m2], each over 0, one or more
        added_share_ratio: float — share of each outlet but the largest. [ratio], 0 to 1
    Returns
        float — area. [m2]
    Raises
        OutOfRange — an empty list, a value outside its range.
    References
        [1] NFPA 54, 2012, 12.7.3 (the larger and half the smaller); from memory.
    Examples
        Outlets of 4 in and 3 in.

        >>> round(least_common_flue_area([12.57, 7.07], 0.5), 1)
        16.1
    """
    outlets = sorted(all_positive("outlet_areas_m2", outlet_areas_m2))
    share = between("added_share_ratio", added_share_ratio, 0.0, 1.0)
    return outlets[-1] + share * math.fsum(outlets[:-1])


def capacity_fits(heat_input_w: float, least_w: float, most_w: float) -> bool:
    """Whether an input lies between the least and the most that a vent carries, both included. [yes or no]

    Parameters
        heat_input_w: float — input of the appliance. [W], 0 or more
        least_w: float — least input, under which a fan-assisted appliance wets the vent. [W], 0 or more
        most_w: float — most input. [W], at least the least
    Returns
        bool — whether it fits, float noise apart. [yes or no]
    Raises
        OutOfRange — a value outside its range, ends the wrong way round.
    References
        [1] International Fuel Gas Code, vent sizing examples, example 2.
    Examples
        [1]: 80,000 Btu/h on 4 in single wall, 10 ft lateral: under the least of 91,000.

        >>> capacity_fits(80000.0, 91000.0, 144000.0)
        False
    """
    if not_negative("least_w", least_w) > not_negative("most_w", most_w):
        raise OutOfRange("least_w", least_w, f"at most most_w, {most_w:.12g}")
    return reaches(not_negative("heat_input_w", heat_input_w), least_w) and reaches(most_w, heat_input_w)
