"""Statics of rafters: thrust at the plates, ties, heel joints, ridge beams, uplift.

load     rafter_line_load
pair     plate_reaction, plate_thrust, unequal_thrust, unequal_plate_reaction, ridge_transfer
ties     tie_force, nails_needed, nails_raised
beam     ridge_beam_reaction, plate_reaction_beside_beam, ridge_beam_line_load
uplift   uplift_at_plate

Rafters without a ridge beam lean on each other and spread their feet; on a ridge beam that does not give they
do not. Line loads are along the run, on plan; convert what lies on the slope before. The rafters are pinned at
plate and ridge.
"""

from __future__ import annotations

import math

from checker.calc._checks import between, count_up, not_negative, positive, whole
from checker.calc.errors import OutOfRange


def rafter_line_load(load_pa: float, spacing_m: float) -> float:
    """Load along the run of one rafter. [N/m]

    Parameters
        load_pa: float — load on plan. [Pa], 0 or more
        spacing_m: float — centre to centre; of the ties, where not every pair is tied. [m], over 0
    Returns
        float — line load on plan. [N/m]
    Raises
        OutOfRange — a value outside its range.
    References
        Statics; common practice, no source.
    Examples
        40 psf at 24 in.

        >>> rafter_line_load(40.0, 2.0)
        80.0
    """
    return not_negative("load_pa", load_pa) * positive("spacing_m", spacing_m)


def plate_reaction(load_n_m: float, run_m: float, overhang_m: float = 0.0) -> float:
    """Plumb load at the plate of one of a pair of like rafters. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan. [m], over 0
        overhang_m: float — plate to the end of the rafter, on plan. [m], 0 or more
    Returns
        float — load: all of one side. [N]
    Raises
        OutOfRange — a value outside its range.
    References
        Statics; common practice, no source.
    Examples
        >>> plate_reaction(80.0, 12.0, 2.0)
        1120.0
    """
    length_m = positive("run_m", run_m) + not_negative("overhang_m", overhang_m)
    return not_negative("load_n_m", load_n_m) * length_m


def plate_thrust(load_n_m: float, run_m: float, pitch_ratio: float, overhang_m: float = 0.0) -> float:
    """Outward thrust of one of a pair of like rafters at the height of the plates. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan: half the span. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], over 0
        overhang_m: float — plate to the end of the rafter, loaded alike. [m], 0 up to the run
    Returns
        float — thrust; the force in a tie on the plates. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load × (run - overhang² / run) / (2 × pitch). Without overhang, load × span / (4 × pitch). Heel-joint
        tables of the International Residential Code: 2012 to 2018 count an overhang of 2 ft and 15 psf dead,
        2021 no overhang and 12 psf; see `nails_needed`.
    References
        [1] International Residential Code, 2018, table R802.5.2.
        [2] Article on collar and rafter ties: 1,440 lb at 4 in 12, 480 lb at 12 in 12.
    Examples
        [2]: 24 ft wide, 80 plf along each rafter, which is our reading of it.

        >>> round(plate_thrust(80.0, 12.0, 4 / 12), 6), plate_thrust(80.0, 12.0, 12 / 12)
        (1440.0, 480.0)
    """
    run = positive("run_m", run_m)
    arm_m = run - between("overhang_m", overhang_m, 0.0, run) ** 2 / run
    return not_negative("load_n_m", load_n_m) * arm_m / (2 * positive("pitch_ratio", pitch_ratio))


def unequal_thrust(
    left_load_n_m: float,
    right_load_n_m: float,
    left_run_m: float,
    right_run_m: float,
    left_pitch_ratio: float,
    right_pitch_ratio: float,
) -> float:
    """Thrust of two rafters of unlike pitch, run or load that lean on each other. [N]

    Parameters
        left_load_n_m: float — load along the run of the left rafter. [N/m], 0 or more
        right_load_n_m: float — load along the run of the right rafter. [N/m], 0 or more
        left_run_m: float — plate to ridge of the left rafter, on plan. [m], over 0
        right_run_m: float — plate to ridge of the right rafter, on plan. [m], over 0
        left_pitch_ratio: float — rise for one of run of the left rafter. [ratio], over 0
        right_pitch_ratio: float — rise for one of run of the right rafter. [ratio], over 0
    Returns
        float — thrust, the same at both feet; the plates may lie at unlike heights. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        (left load × left run + right load × right run) / (2 × (left pitch + right pitch)): an arch with three
        hinges. With feet at unlike heights no level tie joins them: each wall has to take the thrust. What
        passes over the ridge is `ridge_transfer`; unbalanced snow is a case of unlike loads.
    References
        Statics of the arch with three hinges; no source.
    Examples
        One rafter like the other: `plate_thrust`.

        >>> round(unequal_thrust(80.0, 80.0, 12.0, 12.0, 4 / 12, 4 / 12), 6)
        1440.0
    """
    left_n = not_negative("left_load_n_m", left_load_n_m) * positive("left_run_m", left_run_m)
    right_n = not_negative("right_load_n_m", right_load_n_m) * positive("right_run_m", right_run_m)
    pitches = positive("left_pitch_ratio", left_pitch_ratio) + positive("right_pitch_ratio", right_pitch_ratio)
    return (left_n + right_n) / (2 * pitches)


def unequal_plate_reaction(load_n_m: float, run_m: float, pitch_ratio: float, thrust_n: float) -> float:
    """Plumb load at the plate of a rafter with a known thrust. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], over 0
        thrust_n: float — thrust by `unequal_thrust`. [N], 0 or more
    Returns
        float — load at the plate. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load × run / 2 + thrust × pitch.
    References
        Statics of the arch with three hinges; no source.
    Examples
        >>> round(unequal_plate_reaction(80.0, 12.0, 4 / 12, 1440.0), 6)
        960.0
    """
    half_n = not_negative("load_n_m", load_n_m) * positive("run_m", run_m) / 2
    return half_n + not_negative("thrust_n", thrust_n) * positive("pitch_ratio", pitch_ratio)


def ridge_transfer(load_n_m: float, run_m: float, pitch_ratio: float, thrust_n: float) -> float:
    """Plumb force that a rafter takes at the ridge from the one opposite. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan. [m], over 0
        pitch_ratio: float — rise for one of run. [ratio], over 0
        thrust_n: float — thrust by `unequal_thrust`. [N], 0 or more
    Returns
        float — force; negative where it gives to the other side, 0 in a pair of like rafters. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        Reaction at the plate less all load of the rafter. The joint at the ridge has to carry it.
    References
        Statics of the arch with three hinges; no source.
    Examples
        >>> round(ridge_transfer(80.0, 12.0, 4 / 12, 1440.0), 6)
        0.0
    """
    return unequal_plate_reaction(load_n_m, run_m, pitch_ratio, thrust_n) - load_n_m * run_m


def tie_force(thrust_n: float, tie_height_ratio: float) -> float:
    """Force in a tie that is raised above the plates. [N]

    Parameters
        thrust_n: float — thrust at the height of the plates. [N], 0 or more
        tie_height_ratio: float — height of the tie over that of the ridge, HC/HR. [ratio], 0 to under 1
    Returns
        float — force. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        thrust / (1 - HC/HR). The rafter bends between tie and plate besides.
    References
        [1] International Residential Code, 2018, table R802.5.2: factors 1.5, 1.33, 1.25, 1.2, 1.11.
        [2] Article on collar and rafter ties: 1,440 lb on the plate, 2,160 lb at a third of the height.
    Examples
        [2]

        >>> round(tie_force(1440.0, 1 / 3), 6)
        2160.0
    """
    share = not_negative("tie_height_ratio", tie_height_ratio)
    if not share < 1:
        raise OutOfRange("tie_height_ratio", tie_height_ratio, "from 0 to under 1")
    return not_negative("thrust_n", thrust_n) / (1.0 - share)


def nails_needed(force_n: float, nail_n: float, least_count: int) -> int:
    """Nails of a joint that takes a force. [count]

    Parameters
        force_n: float — force in the joint. [N], 0 or more
        nail_n: float — what one nail takes, with the duration of the load. [N], over 0
        least_count: int — fewest nails. [count], 1 or more
    Returns
        int — nails. [count]
    Raises
        OutOfRange — a value outside its range.
    Notes
        The tables of heel joints come out with 158.5 lb a nail in 2012 to 2018 and 177 lb in 2021 (16d common)
        and at least 3 nails, from 30 psf of ground snow on: fitted to the tables, no published basis.
    References
        [1] International Residential Code, 2018, table R802.5.2, and 2021, table R802.5.2(1).
    Examples
        [1]: 2021, 3 in 12, 36 ft, 16 in, 50 psf: 17 nails.

        >>> nails_needed(62.0 * 16 / 12 * 18 / (2 * 3 / 12), 177.0, 3)
        17
    """
    needed = count_up(not_negative("force_n", force_n) / positive("nail_n", nail_n))
    return max(whole("least_count", least_count, 1), needed)


def nails_raised(nail_count: int, factor_ratio: float) -> int:
    """Nails of a table, adjusted by a factor. [count]

    Parameters
        nail_count: int — nails of the table. [count], 1 or more
        factor_ratio: float — factor for a raised tie or for another nail. [ratio], over 0
    Returns
        int — nails, rounded up. [count]
    Raises
        OutOfRange — a value outside its range.
    References
        [1] International Residential Code, 2018, table R802.5.2, footnotes.
    Examples
        11 nails and a tie at a third of the height.

        >>> nails_raised(11, 1.5)
        17
    """
    return count_up(whole("nail_count", nail_count, 1) * positive("factor_ratio", factor_ratio))


def ridge_beam_reaction(load_n_m: float, run_m: float, overhang_m: float = 0.0) -> float:
    """Plumb load that one rafter brings to a ridge beam. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan. [m], over 0
        overhang_m: float — plate to the end of the rafter, loaded alike. [m], 0 up to the run
    Returns
        float — load. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load × (run² - overhang²) / (2 × run).
    References
        Statics; common practice, no source.
    Examples
        >>> ridge_beam_reaction(80.0, 12.0)
        480.0
    """
    run = positive("run_m", run_m)
    overhang = between("overhang_m", overhang_m, 0.0, run)
    return not_negative("load_n_m", load_n_m) * (run**2 - overhang**2) / (2 * run)


def plate_reaction_beside_beam(load_n_m: float, run_m: float, overhang_m: float = 0.0) -> float:
    """Plumb load at the plate of a rafter that rests on a ridge beam. [N]

    Parameters
        load_n_m: float — load along the run. [N/m], 0 or more
        run_m: float — plate to ridge, on plan. [m], over 0
        overhang_m: float — plate to the end of the rafter, loaded alike. [m], 0 or more
    Returns
        float — load. [N]
    Raises
        OutOfRange — a value outside its range.
    Notes
        load × (run + overhang)² / (2 × run).
    References
        Statics; common practice, no source.
    Examples
        >>> plate_reaction_beside_beam(80.0, 12.0)
        480.0
    """
    run = positive("run_m", run_m)
    length_m = run + not_negative("overhang_m", overhang_m)
    return not_negative("load_n_m", load_n_m) * length_m**2 / (2 * run)


def ridge_beam_line_load(left_pa: float, right_pa: float, left_run_m: float, right_run_m: float) -> float:
    """Load along a ridge beam. [N/m]

    Parameters
        left_pa: float — load on plan of the left side. [Pa], 0 or more
        right_pa: float — load on plan of the right side. [Pa], 0 or more
        left_run_m: float — plate to ridge on the left, on plan. [m], 0 or more
        right_run_m: float — plate to ridge on the right, on plan. [m], 0 or more
    Returns
        float — half of each side, its own weight not counted. [N/m]
    Raises
        OutOfRange — a value outside its range.
    Notes
        What overhangs take off is left on.
    References
        [1] Course in wood design (CE 5260), problem 2.5: the width on plan, not along the slope.
    Examples
        [1]: 13 ft of 18.8 psf, which is 26 ft of house.

        >>> round(ridge_beam_line_load(18.8, 18.8, 13.0, 13.0), 6)
        244.4
    """
    left_n_m = not_negative("left_pa", left_pa) * not_negative("left_run_m", left_run_m)
    right_n_m = not_negative("right_pa", right_pa) * not_negative("right_run_m", right_run_m)
    return math.fsum((left_n_m, right_n_m)) / 2


def uplift_at_plate(
    wind_pa: float, dead_pa: float, counted_ratio: float, spacing_m: float, plate_length_m: float
) -> float:
    """Net uplift of wind at the plate of one rafter. [N]

    Parameters
        wind_pa: float — uplift on plan, given. [Pa], 0 or more
        dead_pa: float — dead load on plan. [Pa], 0 or more
        counted_ratio: float — share of the dead load to count; 0.6 in ASCE 7. [ratio], 0 to 1
        spacing_m: float — centre to centre of the rafters. [m], over 0
        plate_length_m: float — length on plan whose load comes to the plate: half the span of a pair, half the
            run beside a ridge beam, and the overhang. [m], over 0
    Returns
        float — uplift to tie down; negative where the dead load is enough. [N]
    Raises
        OutOfRange — a value outside its range.
    References
        Statics; common practice, no source.
    Examples
        20 psf up, 0.6 of 10 psf down, 2 ft apart, 14 ft: 392 lb.

        >>> uplift_at_plate(20.0, 10.0, 0.6, 2.0, 14.0)
        392.0
    """
    held_pa = not_negative("dead_pa", dead_pa) * between("counted_ratio", counted_ratio, 0.0, 1.0)
    net_pa = not_negative("wind_pa", wind_pa) - held_pa
    return net_pa * positive("spacing_m", spacing_m) * positive("plate_length_m", plate_length_m)
