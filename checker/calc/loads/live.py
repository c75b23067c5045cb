"""Live loads: on roofs, with their reduction, and of a heavy thing such as a filled tub.

roof   area_reduction, pitch_reduction, roof_live_load
thing  load_over_footprint, load_of_footprint, load_each_member, line_load_each_member

The weight of a filled tub is `gravity.filled_weight`.
"""

from __future__ import annotations

from checker.calc._checks import not_negative, positive, reaches, whole
from checker.calc.errors import OutOfRange
from checker.calc.loads._printed_units import FOOT2_M2

_LARGE, _SMALL = 1.0, 0.6  # factors on either side of the band
_AREA_START, _AREA_SLOPE_FT2 = 1.2, 0.001
_PITCH_START, _PITCH_SLOPE_IN_12 = 1.2, 0.05


def area_reduction(area_m2: float) -> float:
    """Reduction of roof live load by the area that a member carries, R1. [ratio]

    Parameters
        area_m2: float — area on plan. [m2], 0 or more
    Returns
        float — factor, 0.6 to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1 up to 200 ft2, 0.6 from 600 ft2, between them 1.2 - 0.001 × area in ft2.
    References
        [1] ASCE 7, 2016, 4.8.2.
        [2] Course in wood design (CE 5260), problem 2.5.
    Examples
        [2]: 260 ft2.

        >>> round(area_reduction(260 * 0.3048**2), 6)
        0.94
    """
    area_ft2 = not_negative("area_m2", area_m2) / FOOT2_M2
    return min(_LARGE, max(_SMALL, _AREA_START - _AREA_SLOPE_FT2 * area_ft2))


def pitch_reduction(pitch_ratio: float) -> float:
    """Reduction of roof live load by the pitch, R2. [ratio]

    Parameters
        pitch_ratio: float — rise for one of run. [ratio], 0 or more
    Returns
        float — factor, 0.6 to 1. [ratio]
    Raises
        OutOfRange — a value outside its range.
    Notes
        1 up to 4 in 12, 0.6 from 12 in 12, between them 1.2 - 0.05 × rise in 12.
    References
        [1] ASCE 7, 2016, 4.8.2.
    Examples
        8 in 12.

        >>> round(pitch_reduction(8 / 12), 6)
        0.8
    """
    rise_in_12 = 12 * not_negative("pitch_ratio", pitch_ratio)
    return min(_LARGE, max(_SMALL, _PITCH_START - _PITCH_SLOPE_IN_12 * rise_in_12))


def roof_live_load(live_pa: float, area_ratio: float, pitch_ratio: float, least_pa: float) -> float:
    """Reduced roof live load on the horizontal projection. [Pa]

    Parameters
        live_pa: float — load before reduction. [Pa], 0 or more
        area_ratio: float — R1, by `area_reduction`. [ratio], over 0 to 1
        pitch_ratio: float — R2, by `pitch_reduction`. [ratio], over 0 to 1
        least_pa: float — load under which it is not reduced; 12 psf in ASCE 7. [Pa], 0 or more
    Returns
        float — reduced load. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load × R1 × R2, not under the least and not over the load itself.
    References
        [1] ASCE 7, 2016, 4.8.2.
        [2] Course in wood design (CE 5260), problem 2.5.
    Examples
        [2]: 20 psf on 260 ft2 at a low pitch: 18.8 psf.

        >>> round(roof_live_load(20.0, 0.94, 1.0, 12.0), 6)
        18.8
    """
    live = not_negative("live_pa", live_pa)
    for name, factor in (("area_ratio", area_ratio), ("pitch_ratio", pitch_ratio)):
        if not reaches(1.0, positive(name, factor)):
            raise OutOfRange(name, factor, "over 0 to 1")
    return min(live, max(live * area_ratio * pitch_ratio, not_negative("least_pa", least_pa)))


def load_over_footprint(weight_n: float, area_m2: float) -> float:
    """Even load of a thing over the floor it covers. [Pa]

    Parameters
        weight_n: float — weight. [N], 0 or more
        area_m2: float — area covered. [m2], over 0
    Returns
        float — load. [Pa]
    Raises
        OutOfRange — a value outside its range.
    Notes
        On feet, the weight comes down at points: the even load says how it compares with the floor's, no more.
    References
        Definition of pressure; common practice, no source.
    Examples
        1,200 lb over 18 ft2.

        >>> round(load_over_footprint(1200.0, 18.0), 1)
        66.7
    """
    return not_negative("weight_n", weight_n) / positive("area_m2", area_m2)


def load_of_footprint(load_pa: float, area_m2: float) -> float:
    """Weight that an even load has over an area. [N]

    Parameters
        load_pa: float — load. [Pa], 0 or more
        area_m2: float — area. [m2], over 0
    Returns
        float — weight. [N]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] Engineers' forum, thread on an upstairs tub.
    Examples
        [1]: 50 psf over 6 by 3 ft: 900 lb.

        >>> load_of_footprint(50.0, 18.0)
        900.0
    """
    return not_negative("load_pa", load_pa) * positive("area_m2", area_m2)


def load_each_member(weight_n: float, member_count: int) -> float:
    """Weight on each of the members that share it evenly. [N]

    Parameters
        weight_n: float — weight. [N], 0 or more
        member_count: int — joists under it. [count], 1 or more
    Returns
        float — weight on each. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        A tub along the joists may stand on one or two of them.
    References
        Even sharing; common practice, no source.
    Examples
        >>> load_each_member(1200.0, 3)
        400.0
    """
    return not_negative("weight_n", weight_n) / whole("member_count", member_count, 1)


def line_load_each_member(weight_n: float, member_count: int, length_m: float) -> float:
    """Weight on each member, even over the length that the thing covers. [N/m]

    Parameters
        weight_n: float — weight. [N], 0 or more
        member_count: int — joists under it. [count], 1 or more
        length_m: float — length covered along the joists. [m], over 0
    Returns
        float — load along each member. [N/m]
    Raises
        OutOfRange — a value outside its range.
    References
        Even sharing; common practice, no source.
    Examples
        >>> line_load_each_member(1200.0, 3, 5.0)
        80.0
    """
    return load_each_member(weight_n, member_count) / positive("length_m", length_m)
