"""Statics of a beam on two supports: reactions, moment, shear, deflection.

loads     Loads
supports  reactions
section   greatest_moment, greatest_shear
bending   deflection, tip_deflection

The beam stands on a support at its left end and on another after its span; an overhang may go on past the
second one. Loads act downward and are given by kind; a combination says how much of each kind counts. Line
loads lie over the whole beam or over parts of it, point loads anywhere. Between two points where the load
changes, shear, moment, slope and deflection are polynomials, carried along the beam piece by piece: no
approximation.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import pairwise

from checker.calc._checks import between, finite, not_negative, positive
from checker.calc.errors import OutOfRange
from checker.calc.framing.timber import LoadKind

_STEPS = 60
"""Most steps in search of the place of the greatest deflection; each at least halves what is left."""


@dataclass(frozen=True, slots=True)
class Loads:
    """What acts on a beam, by kind of load, downward positive; places are from the left support. [N/m, N, m]

    line: load a metre over the whole beam, overhang too; parts: kind, load a metre, from, to; points: kind,
    load, place.
    """

    line: Mapping[LoadKind, float] = field(default_factory=dict)
    parts: tuple[tuple[LoadKind, float, float, float], ...] = ()
    points: tuple[tuple[LoadKind, float, float], ...] = ()

    @property
    def uniform(self) -> bool:
        """Whether there is nothing but line loads over the whole beam."""
        return not self.parts and not self.points

    def kinds(self) -> frozenset[LoadKind]:
        """Kinds of load that are there and are not 0."""
        return frozenset(
            [kind for kind, load in self.line.items() if load]
            + [part[0] for part in self.parts if part[1]]
            + [point[0] for point in self.points if point[1]]
        )

    def total(self, kind: LoadKind, length_m: float) -> float:
        """All load of a kind on a beam of a length. [N]"""
        return (
            self.line.get(kind, 0.0) * length_m
            + math.fsum(load * (end - start) for of, load, start, end in self.parts if of == kind)
            + math.fsum(load for of, load, _ in self.points if of == kind)
        )


@dataclass(slots=True)
class _Piece:
    """A length without a change of load: load a metre, and shear and moment at its left end."""

    start_m: float
    length_m: float
    load_n_m: float
    shear_n: float
    moment_n_m: float
    slope: float = 0.0
    drop: float = 0.0
    """Slope and deflection at the left end, times the stiffness."""

    def moment_at(self, place_m: float) -> float:
        """Moment at a place of the piece, from its left end."""
        return self.moment_n_m + place_m * (self.shear_n - place_m * self.load_n_m / 2)

    def slope_at(self, place_m: float) -> float:
        """Slope times stiffness."""
        return self.slope - place_m * (self.moment_n_m + place_m * (self.shear_n / 2 - place_m * self.load_n_m / 6))

    def drop_at(self, place_m: float) -> float:
        """Deflection times stiffness."""
        return (
            self.drop
            + place_m * self.slope
            - place_m**2 * (self.moment_n_m / 2 + place_m * (self.shear_n / 6 - place_m * self.load_n_m / 24))
        )

    def turns(self) -> list[float]:
        """Places within the piece where the moment is 0, with both ends: between them the slope is monotone."""
        a, b, c = -self.load_n_m / 2, self.shear_n, self.moment_n_m
        at_end = self.moment_at(self.length_m)
        if (a <= 0 <= c and at_end >= 0) or (c * at_end > 0 and b * (b - self.load_n_m * self.length_m) >= 0):
            return [0.0, self.length_m]
        roots = []
        if a == 0.0:
            roots = [-c / b] if b else []
        elif (under_root := b * b - 4 * a * c) > 0:
            larger = -(b + math.copysign(math.sqrt(under_root), b)) / 2
            roots = [larger / a] + ([c / larger] if larger else [])
        return [0.0, *sorted(root for root in roots if 0.0 < root < self.length_m), self.length_m]


_Part = tuple[LoadKind, float, float, float]
_Point = tuple[LoadKind, float, float]
_Row = tuple[float, float, float, float, float]


def reactions(
    span_m: float, loads: Loads, factors: Mapping[LoadKind, float], overhang_m: float = 0.0
) -> tuple[float, float]:
    """Reactions at the left and the right support, upward positive. [N]

    Parameters
        span_m: float — centre to centre of the supports. [m], over 0
        loads: Loads — loads by kind. [N/m, N], each on the beam
        factors: Mapping[LoadKind, float] — how much of each kind counts; none of a kind that is not named.
            [ratio]
        overhang_m: float — length past the right support. [m], 0 or more
    Returns
        tuple[float, float] — left, right. [N]
    Raises
        OutOfRange — a value outside its range, a load that lies off the beam.
    References
        Statics.
    Examples
        8 ft at 600 lb/ft: 2400 lb at each end.

        >>> reactions(8.0, Loads({"live": 600.0}), {"live": 1.0})
        (2400.0, 2400.0)
    """
    return LoadedBeam(span_m, loads, overhang_m).reactions(factors)


def greatest_moment(span_m: float, loads: Loads, factors: Mapping[LoadKind, float], overhang_m: float = 0.0) -> float:
    """Greatest bending moment of either sense. [Nm]

    Parameters
        span_m: float — centre to centre of the supports. [m], over 0
        loads: Loads — loads by kind. [N/m, N], each on the beam
        factors: Mapping[LoadKind, float] — how much of each kind counts; none of a kind that is not named.
            [ratio]
        overhang_m: float — length past the right support. [m], 0 or more
    Returns
        float — moment. [Nm]
    Raises
        OutOfRange — a value outside its range, a load that lies off the beam.
    Notes
        With an overhang it may be the moment over the support. A load that may be away, as that of use on the
        overhang alone or on the span alone, is for the caller to try.
    References
        Statics; w L² / 8 of an even load, P L / 4 of a load at midspan.
    Examples
        >>> greatest_moment(4.0, Loads({"live": 500.0}), {"live": 1.0})
        1000.0
    """
    return LoadedBeam(span_m, loads, overhang_m).moment(factors)


def greatest_shear(
    span_m: float,
    loads: Loads,
    factors: Mapping[LoadKind, float],
    overhang_m: float = 0.0,
    left_out_m: float = 0.0,
) -> float:
    """Greatest shear of either sense. [N]

    Parameters
        span_m: float — centre to centre of the supports. [m], over 0
        loads: Loads — loads by kind. [N/m, N], each on the beam
        factors: Mapping[LoadKind, float] — how much of each kind counts; none of a kind that is not named.
            [ratio]
        overhang_m: float — length past the right support. [m], 0 or more
        left_out_m: float — line load nearer to a support than this is left out. [m], 0 or more
    Returns
        float — shear. [N]
    Raises
        OutOfRange — a value outside its range, a load that lies off the beam.
    Notes
        The standards let line load within the member's depth of a support be left out where the member bears
        on its full width and is loaded from the other side. Point loads count in full here, which is on the
        safe side.
    References
        Statics; [1] National Design Specification for Wood Construction, 2018, 3.4.3.1; from memory.
    Examples
        10 ft at 100 lb/ft, member 1 ft deep: 500 lb at the support, 400 lb a depth away.

        >>> greatest_shear(10.0, Loads({"live": 100.0}), {"live": 1.0}, 0.0, 1.0)
        400.0
    """
    return LoadedBeam(span_m, loads, overhang_m).shear(factors, left_out_m)


def deflection(
    span_m: float,
    loads: Loads,
    factors: Mapping[LoadKind, float],
    stiffness_n_m2: float,
    overhang_m: float = 0.0,
) -> float:
    """Greatest deflection between the supports, down or up. [m]

    Parameters
        span_m: float — centre to centre of the supports. [m], over 0
        loads: Loads — loads by kind. [N/m, N], each on the beam
        factors: Mapping[LoadKind, float] — how much of each kind counts; none of a kind that is not named.
            [ratio]
        stiffness_n_m2: float — modulus of elasticity times second moment of area. [N m2], over 0
        overhang_m: float — length past the right support. [m], 0 or more
    Returns
        float — deflection. [m]
    Raises
        OutOfRange — a value outside its range, a load that lies off the beam.
    Notes
        By bending alone; the deflection by shear of a joist is a few parts in a hundred and lies within the
        modulus of elasticity as published.
    References
        Elastic bending; 5 w L⁴ / (384 E I) of an even load, P L³ / (48 E I) of a load at midspan.
    Examples
        >>> round(deflection(4.0, Loads({"live": 768.0}), {"live": 1.0}, 1e5), 6)
        0.0256
    """
    positive("stiffness_n_m2", stiffness_n_m2)
    return LoadedBeam(span_m, loads, overhang_m).sag(factors) / stiffness_n_m2


def tip_deflection(
    span_m: float,
    loads: Loads,
    factors: Mapping[LoadKind, float],
    stiffness_n_m2: float,
    overhang_m: float,
) -> float:
    """Deflection of the end of an overhang, downward positive. [m]

    Parameters
        span_m: float — centre to centre of the supports. [m], over 0
        loads: Loads — loads by kind. [N/m, N], each on the beam
        factors: Mapping[LoadKind, float] — how much of each kind counts; none of a kind that is not named.
            [ratio]
        stiffness_n_m2: float — modulus of elasticity times second moment of area. [N m2], over 0
        overhang_m: float — length past the right support. [m], over 0
    Returns
        float — deflection; negative where load on the span lifts the end. [m]
    Raises
        OutOfRange — a value outside its range, a load that lies off the beam.
    References
        Elastic bending; P a² (L + a) / (3 E I) of a load at the end.
    Examples
        >>> tip = tip_deflection(4.0, Loads(points=(("live", 600.0, 5.0),)), {"live": 1.0}, 1e5, 1.0)
        >>> round(tip, 6)
        0.01
    """
    positive("stiffness_n_m2", stiffness_n_m2)
    positive("overhang_m", overhang_m)
    return LoadedBeam(span_m, loads, overhang_m).tip_drop(factors) / stiffness_n_m2


class LoadedBeam:
    """A beam whose loads are carried along it once, kind by kind; combinations are sums of what that gives.

    Deflections come times the stiffness. [N, N m, N m3]
    """

    def __init__(self, span_m: float, loads: Loads, overhang_m: float = 0.0) -> None:
        self._span_m = positive("span_m", span_m)
        self._length_m = span_m + not_negative("overhang_m", overhang_m)
        self._loads = loads
        self._line = {kind: load for kind, load in loads.line.items() if finite("loads", load)}
        self._even = loads.uniform and not overhang_m
        self._rows: dict[LoadKind, list[_Row]] = {}
        self._less: dict[float, LoadedBeam] = {}
        self._last: tuple[Mapping[LoadKind, float], list[_Piece]] | None = None
        if not self._even:
            self._carry(*_placed(loads, self._line, self._length_m))

    def reactions(self, factors: Mapping[LoadKind, float]) -> tuple[float, float]:
        """Reactions at the left and the right support. [N]"""
        if self._even:
            half_n = self._even_load(factors) * self._span_m / 2
            return half_n, half_n
        left = right = 0.0
        for kind, (at_left, at_right) in self._supports.items():
            factor = factors.get(kind, 0.0)
            left += factor * at_left
            right += factor * at_right
        return left, right

    def moment(self, factors: Mapping[LoadKind, float]) -> float:
        """Greatest moment of either sense. [N m]"""
        if self._even:
            return abs(self._even_load(factors)) * self._span_m**2 / 8
        greatest = 0.0
        for piece in self._pieces(factors):
            greatest = max(greatest, abs(piece.moment_n_m), abs(piece.moment_at(piece.length_m)))
            if piece.load_n_m and 0.0 < (place_m := piece.shear_n / piece.load_n_m) < piece.length_m:
                greatest = max(greatest, abs(piece.moment_at(place_m)))
        return greatest

    def shear(self, factors: Mapping[LoadKind, float], left_out_m: float = 0.0) -> float:
        """Greatest shear of either sense, without line load nearer to a support than a length. [N]"""
        not_negative("left_out_m", left_out_m)
        if self._even:
            return abs(self._even_load(factors)) * max(0.0, self._span_m / 2 - left_out_m)
        if left_out_m:
            if left_out_m not in self._less:
                self._less[left_out_m] = self._without(left_out_m)
            return self._less[left_out_m].shear(factors)
        return max(
            max(abs(piece.shear_n), abs(piece.shear_n - piece.load_n_m * piece.length_m))
            for piece in self._pieces(factors)
        )

    def sag(self, factors: Mapping[LoadKind, float]) -> float:
        """Greatest deflection between the supports, down or up, times the stiffness. [N m3]"""
        if self._even:
            return 5 * abs(self._even_load(factors)) * self._span_m**4 / 384
        greatest = 0.0
        for piece in self._pieces(factors):
            if piece.start_m >= self._span_m:
                break
            greatest = max(greatest, abs(piece.drop), *(abs(piece.drop_at(place_m)) for place_m in _levels(piece)))
        return greatest

    def tip_drop(self, factors: Mapping[LoadKind, float]) -> float:
        """Deflection of the right end, downward, times the stiffness. [N m3]"""
        if self._even:
            return 0.0
        last = self._pieces(factors)[-1]
        return last.drop_at(last.length_m)

    def _even_load(self, factors: Mapping[LoadKind, float]) -> float:
        """Line load that counts. [N/m]"""
        total = 0.0
        for kind, load in self._line.items():
            total += load * factors.get(kind, 0.0)
        return total

    def _without(self, left_out_m: float) -> LoadedBeam:
        """The beam without line load nearer to a support than a length."""
        kept_m = ((left_out_m, self._span_m - left_out_m), (self._span_m + left_out_m, self._length_m))
        parts = [(kind, load, 0.0, self._length_m) for kind, load in self._line.items()] + list(self._loads.parts)
        cut = tuple(
            (kind, load, max(start, low), min(end, high))
            for kind, load, start, end in parts
            for low, high in kept_m
            if max(start, low) < min(end, high)
        )
        return LoadedBeam(self._span_m, Loads({}, cut, self._loads.points), self._length_m - self._span_m)

    def _carry(self, parts: list[_Part], points: list[_Point]) -> None:
        """Carry the loads of each kind along the beam, over the same pieces."""
        ends = {0.0, self._span_m, self._length_m}
        ends.update(place for _, _, start, end in parts for place in (start, end))
        ends.update(place for _, _, place in points)
        self._places = list(pairwise(sorted(ends)))
        self._supports: dict[LoadKind, tuple[float, float]] = {}
        for kind in {part[0] for part in parts} | {point[0] for point in points}:
            own_parts = [part[1:] for part in parts if part[0] == kind]
            own_points = [point[1:] for point in points if point[0] == kind]
            left, right = _reactions(self._span_m, own_parts, own_points)
            self._supports[kind] = left, right
            steps = [(-left, 0.0), (-right, self._span_m), *own_points]
            self._rows[kind] = _bent(self._span_m, _carried(self._places, own_parts, steps))

    def _pieces(self, factors: Mapping[LoadKind, float]) -> list[_Piece]:
        """Pieces of the beam under a combination."""
        if self._last is not None and self._last[0] is factors:
            return self._last[1]
        counted = [(factors[kind], rows) for kind, rows in self._rows.items() if factors.get(kind)]
        pieces = []
        for index, (start_m, end_m) in enumerate(self._places):
            load = shear = moment = slope = drop = 0.0
            for factor, rows in counted:
                row = rows[index]
                load += factor * row[0]
                shear += factor * row[1]
                moment += factor * row[2]
                slope += factor * row[3]
                drop += factor * row[4]
            pieces.append(_Piece(start_m, end_m - start_m, load, shear, moment, slope, drop))
        self._last = factors, pieces
        return pieces


def _placed(loads: Loads, line: Mapping[LoadKind, float], length_m: float) -> tuple[list[_Part], list[_Point]]:
    """All line loads as parts, and the point loads, each of which must lie on the beam."""
    parts: list[_Part] = [(kind, load, 0.0, length_m) for kind, load in line.items()]
    for kind, load, start_m, end_m in loads.parts:
        start_m = between("loads, start of a part", start_m, 0.0, length_m)
        end_m = between("loads, end of a part", end_m, 0.0, length_m)
        if start_m >= end_m:
            raise OutOfRange("loads, end of a part", end_m, f"over its start, {start_m:.12g}")
        parts.append((kind, finite("loads", load), start_m, end_m))
    points: list[_Point] = [
        (kind, finite("loads", load), between("loads, place of a point load", place_m, 0.0, length_m))
        for kind, load, place_m in loads.points
    ]
    return parts, points


def _reactions(
    span_m: float, parts: list[tuple[float, float, float]], points: list[tuple[float, float]]
) -> tuple[float, float]:
    """Reactions of loads of one kind."""
    total = math.fsum([load * (end - start) for load, start, end in parts] + [load for load, _ in points])
    moments = [load * (end - start) * (start + end) / 2 for load, start, end in parts]
    right = math.fsum(moments + [load * place for load, place in points]) / span_m
    return total - right, right


def _carried(
    places: list[tuple[float, float]],
    parts: list[tuple[float, float, float]],
    steps: list[tuple[float, float]],
) -> list[_Piece]:
    """Pieces with the load, and the shear and the moment at the left end of each."""
    pieces: list[_Piece] = []
    shear = moment = 0.0
    for start_m, end_m in places:
        shear -= sum(step for step, place in steps if place == start_m)
        load = sum(load for load, start, end in parts if start <= start_m and end >= end_m)
        piece = _Piece(start_m, end_m - start_m, load, shear, moment)
        pieces.append(piece)
        shear, moment = shear - load * piece.length_m, piece.moment_at(piece.length_m)
    return pieces


def _bent(span_m: float, pieces: list[_Piece]) -> list[_Row]:
    """Load, shear, moment, slope and deflection of each piece; the deflection is 0 at both supports."""
    slope = drop = at_support = 0.0
    for piece in pieces:
        if piece.start_m == span_m:
            at_support = drop
        piece.slope, piece.drop = slope, drop
        slope, drop = piece.slope_at(piece.length_m), piece.drop_at(piece.length_m)
    if pieces[-1].start_m < span_m:
        at_support = drop
    first_slope = -at_support / span_m
    return [
        (
            piece.load_n_m,
            piece.shear_n,
            piece.moment_n_m,
            piece.slope + first_slope,
            piece.drop + first_slope * piece.start_m,
        )
        for piece in pieces
    ]


def _levels(piece: _Piece) -> list[float]:
    """Places within a piece where the bent beam is level."""
    found = []
    turns = piece.turns()
    for low, high in pairwise(turns):
        at_low, at_high = piece.slope_at(low), piece.slope_at(high)
        if at_low * at_high >= 0:
            found += [place for place, slope in ((low, at_low), (high, at_high)) if slope == 0.0]
            continue
        place = (low + high) / 2
        for _ in range(_STEPS):
            slope = piece.slope_at(place)
            if slope == 0.0:
                break
            if slope * at_low > 0:
                low = place
            else:
                high = place
            moment = piece.moment_at(place)
            following = place + slope / moment if moment else low
            following = following if low < following < high else (low + high) / 2
            if abs(following - place) <= 1e-9 * piece.length_m:
                break
            place = following
        found.append(place)
    return found
