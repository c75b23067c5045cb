"""Properties of members: deeper spans further, closer spans further, the least section is the least."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.calc.framing.adjustment import bending_strength
from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import (
    MemberCheck,
    allowable_span,
    check_member,
    least_section,
    needed,
)
from checker.calc.framing.timber import LoadKind, Lumber, Section
from tests.published.framing_inputs import INCH, PLF, PSI, by_area, dressed, lumber, standard

Country = Literal["us", "canada"]
COUNTRIES: tuple[Country, ...] = ("us", "canada")
SIZES = ("2x4", "2x6", "2x8", "2x10", "2x12")
WOODS = {
    "us": ("spf no.2", "df-l ss", "hf no. 3", "sp no.2", "spf stud"),
    "canada": ("s-p-f no.2", "d fir-l ss", "northern no. 3"),
}
DIMENSION = [(country, wood) for country in COUNTRIES for wood in WOODS[country] if wood != "spf stud"]
KINDS: tuple[LoadKind, ...] = ("live", "snow", "roof live")
LOADS = st.tuples(st.sampled_from(KINDS), st.floats(10.0, 70.0), st.floats(5.0, 25.0))


def span(country: Country, wood: str, size: str, loads: Loads, plies: int = 1) -> float:
    """Span of a member side by side with others. [m]"""
    member = dressed(size, plies)
    return allowable_span(member, lumber(country)[wood], standard(country), loads, repetitive=True)[0]


@given(st.sampled_from(DIMENSION), LOADS)
def test_deeper_never_spans_less(case: tuple[Country, str], load: tuple[LoadKind, float, float]) -> None:
    """The size factor falls with the depth, but never as fast as the section modulus rises."""
    loads = by_area(*load, 16.0)
    spans = [span(*case, size, loads) for size in SIZES]
    assert spans == sorted(spans)


@given(st.sampled_from(DIMENSION), LOADS, st.sampled_from(SIZES))
def test_closer_never_spans_less(case: tuple[Country, str], load: tuple[LoadKind, float, float], size: str) -> None:
    """12, 16, 19.2 and 24 in."""
    spans = [span(*case, size, by_area(*load, spacing)) for spacing in (12.0, 16.0, 19.2, 24.0)]
    assert spans == sorted(spans, reverse=True)


@given(st.sampled_from(DIMENSION), LOADS, st.sampled_from(SIZES))
def test_more_plies_never_span_less(case: tuple[Country, str], load: tuple[LoadKind, float, float], size: str) -> None:
    """One to four plies."""
    spans = [span(*case, size, by_area(*load, 48.0), plies) for plies in (1, 2, 3, 4)]
    assert spans == sorted(spans)


def worked(
    case: tuple[Country, str], size: str, span_m: float, loads: Loads, bearing_m: float | None = None
) -> MemberCheck:
    """A check with everything in it."""
    country, wood = case
    return check_member(
        dressed(size),
        lumber(country)[wood],
        standard(country),
        span_m,
        loads,
        repetitive=True,
        bearing_m=bearing_m,
        total_limit=240,
        shear_within_depth=False,
    )


@given(
    st.sampled_from(DIMENSION),
    LOADS,
    st.sampled_from(SIZES),
    st.one_of(st.none(), st.floats(0.02, 0.2)),
    st.booleans(),
)
def test_the_allowable_span_just_does(
    case: tuple[Country, str],
    load: tuple[LoadKind, float, float],
    size: str,
    bearing_m: float | None,
    shear_within_depth: bool,
) -> None:
    """The check at the span found has a use of 1, by the same name."""
    country, wood = case
    loads = by_area(*load, 16.0)
    span_m, governs = allowable_span(
        dressed(size),
        lumber(country)[wood],
        standard(country),
        loads,
        repetitive=True,
        bearing_m=bearing_m,
        total_limit=240,
        shear_within_depth=shear_within_depth,
    )
    check = check_member(
        dressed(size),
        lumber(country)[wood],
        standard(country),
        span_m,
        loads,
        repetitive=True,
        bearing_m=bearing_m,
        total_limit=240,
        shear_within_depth=shear_within_depth,
    )
    assert check.worst == pytest.approx(1.0)
    assert check.uses()[governs].ratio == pytest.approx(check.worst)


@given(st.sampled_from(DIMENSION), LOADS, st.sampled_from(SIZES), st.floats(1.0, 6.0), st.floats(1.01, 2.0))
def test_a_longer_span_never_has_a_lower_use(
    case: tuple[Country, str],
    load: tuple[LoadKind, float, float],
    size: str,
    span_m: float,
    longer: float,
) -> None:
    """Every use rises with the span, under even loads."""
    loads = by_area(*load, 16.0)
    short, long = worked(case, size, span_m, loads, 0.04), worked(case, size, span_m * longer, loads, 0.04)
    for name, use in short.uses().items():
        assert long.uses()[name].ratio >= use.ratio


@given(st.sampled_from(DIMENSION), LOADS, st.floats(1.0, 5.0), st.floats(500.0, 9000.0), st.floats(0.1, 0.9))
def test_the_least_section_does_and_the_one_before_it_does_not(
    case: tuple[Country, str],
    load: tuple[LoadKind, float, float],
    span_m: float,
    point_n: float,
    place: float,
) -> None:
    """In the order of depth and plies."""
    country, wood = case
    loads = Loads(by_area(*load, 16.0).line, (), (("live", point_n, place * span_m),))
    candidates = [dressed(size, plies) for size in reversed(SIZES) for plies in (2, 1, 3)]
    method, of = standard(country), lumber(country)[wood]
    found = least_section(candidates, of, method, span_m, loads, repetitive=False)
    ordered = sorted(candidates, key=lambda each: (each.depth_m, each.plies))
    uses = [check_member(each, of, method, span_m, loads, repetitive=False).worst for each in ordered]
    if found is None:
        assert min(uses) > 1.0
    else:
        index = ordered.index(found)
        assert uses[index] <= 1.0 + 1e-9
        assert all(use > 1.0 for use in uses[:index])


@given(st.sampled_from(COUNTRIES), LOADS, st.sampled_from(SIZES), st.floats(1.0, 6.0), st.booleans())
def test_the_values_needed_just_do(
    country: Country, load: tuple[LoadKind, float, float], size: str, span_m: float, total: bool
) -> None:
    """Lumber with the values needed has a use of 1 in each."""
    loads = by_area(*load, 16.0)
    limit = 240.0 if total else None
    values = needed(dressed(size), standard(country), span_m, loads, repetitive=True, bearing_pa=3e6, total_limit=limit)
    just = Lumber("just", values.bending_pa, values.shear_pa, 3e6, values.stiffness_pa, 1.0, sizes="dimension")
    check = check_member(
        dressed(size),
        just,
        standard(country),
        span_m,
        loads,
        repetitive=True,
        bearing_m=values.bearing_length_m,
        total_limit=limit,
    )
    assert check.bending.ratio == pytest.approx(1.0)
    assert check.shear.ratio == pytest.approx(1.0)
    assert check.bearing is not None
    assert check.bearing.ratio == pytest.approx(1.0)
    deflections = [use.ratio for use in (check.live_deflection, check.total_deflection) if use]
    assert max(deflections) == pytest.approx(1.0)


@pytest.mark.parametrize("size", ["2x6", "2x12"])
def test_the_values_needed_wet(size: str) -> None:
    """Below the value up to which no wet factor is taken, none is needed; above it, it is."""
    method = replace(standard("us"), wet_exempt={"bending": 1150 * PSI})
    for load in (5.0, 300.0):
        loads = Loads({"live": load * PLF})
        values = needed(dressed(size), method, 3.0, loads, repetitive=False, wet=True)
        just = Lumber("just", values.bending_pa, 1e9, 1e9, 1e15, 1.0, sizes="dimension")
        check = check_member(dressed(size), just, method, 3.0, loads, repetitive=False, wet=True)
        assert check.bending.ratio == pytest.approx(1.0)


@pytest.mark.parametrize("length_in", [0.5, 3.0, 5.8, 7.0])
def test_the_bearing_length_away_from_the_end(length_in: float) -> None:
    """The length needed just does, with the factor for short bearings."""
    loads = Loads({"live": 2 * length_in * INCH * 1.5 * INCH * 3e6 / 3.0})
    values = needed(dressed("2x10"), standard("us"), 3.0, loads, repetitive=False, bearing_pa=3e6, away_from_end=True)
    assert values.bearing_length_m is not None
    assert values.bearing_length_m <= length_in * INCH
    if values.bearing_length_m == 0.0:
        return
    just = Lumber("just", 1e9, 1e9, 3e6, 1e15, 1.0)
    check = check_member(
        dressed("2x10"),
        just,
        standard("us"),
        3.0,
        loads,
        repetitive=False,
        bearing_m=values.bearing_length_m,
        away_from_end=True,
    )
    assert check.bearing is not None
    assert check.bearing.ratio <= 1.0 + 1e-9


@given(st.floats(0.5, 2.0), LOADS)
def test_scale(factor: float, load: tuple[LoadKind, float, float]) -> None:
    """A model with every length scaled and the same pressures has the same uses of bending and shear."""
    method = standard("us")
    plain = replace(lumber("us")["spf no.2"], sizes="")
    loads = by_area(*load, 16.0)
    small = check_member(dressed("2x8"), plain, method, 3.0, loads, repetitive=True)
    member = Section(1.5 * INCH * factor, 7.25 * INCH * factor)
    large = check_member(member, plain, method, 3.0 * factor, by_area(*load, 16.0 * factor), repetitive=True)
    for name, use in small.uses().items():
        assert large.uses()[name].ratio == pytest.approx(use.ratio)


@given(LOADS, st.floats(0.3, 6.0))
def test_an_edge_held_further_apart_is_never_stronger(load: tuple[LoadKind, float, float], unbraced_m: float) -> None:
    """In both methods."""
    for country, wood in (("us", "spf no.2"), ("canada", "s-p-f no.2")):
        uses = [
            check_member(
                Section(1.5 * INCH, 7.25 * INCH, 2),
                lumber(country)[wood],
                standard(country),
                4.0,
                by_area(*load, 16.0),
                repetitive=False,
                unbraced_m=apart_m,
            ).bending.ratio
            for apart_m in (0.0, unbraced_m, 1.5 * unbraced_m)
        ]
        assert uses[0] <= uses[1] + 1e-12
        assert uses[1] <= uses[2] + 1e-12


def test_every_duration_is_tried() -> None:
    """A heavy dead load governs bending alone, with its own duration."""
    loads = Loads({"dead": 1000.0, "live": 50.0})
    check = check_member(dressed("2x10"), lumber("us")["spf no.2"], standard("us"), 3.0, loads, repetitive=False)
    assert check.bending.combination == "D"
    both = check_member(
        dressed("2x10"),
        lumber("us")["spf no.2"],
        standard("us"),
        3.0,
        Loads({"dead": 1000.0, "live": 120.0}),
        repetitive=False,
    )
    assert both.bending.combination == "D + L"


def test_only_combinations_with_loads_that_are_there() -> None:
    """Snow is not named where there is none."""
    loads = Loads({"dead": 200.0, "live": 900.0})
    check = check_member(
        dressed("2x10"), lumber("us")["spf no.2"], standard("us"), 3.0, loads, repetitive=False, total_limit=240
    )
    assert check.bending.combination == check.shear.combination == "D + L"
    assert check.live_deflection.combination == "L"
    assert check.total_deflection is not None
    assert check.total_deflection.combination == "D + L"
    assert check.live_span_ratio == pytest.approx(360 / check.live_deflection.ratio)
    assert check.total_span_ratio == pytest.approx(240 / check.total_deflection.ratio)


def test_a_member_with_dead_load_alone() -> None:
    """No live deflection, no limit on it."""
    check = check_member(
        dressed("2x10"), lumber("us")["spf no.2"], standard("us"), 3.0, Loads({"dead": 200.0}), repetitive=False
    )
    assert check.live_deflection.ratio == 0.0
    assert check.live_span_ratio == math.inf
    assert check.bending.combination == "D"


def test_creep_counts_the_lasting_load_more() -> None:
    """With creep the deflection under all load takes one and a half times the dead load."""
    loads = Loads({"dead": 400.0, "live": 600.0})
    member, of, method = dressed("2x10"), lumber("us")["spf no.2"], standard("us")
    now = check_member(member, of, method, 3.0, loads, repetitive=False, total_limit=240).total_deflection
    later = check_member(member, of, method, 3.0, loads, repetitive=False, total_limit=240, creep=True).total_deflection
    assert now is not None
    assert later is not None
    assert later.demand / now.demand == pytest.approx(1200 / 1000)


def test_lasting_load_lowers_the_duration_factor_in_limit_states() -> None:
    """Under a dead load ten times the live one, 1 - 0.5 log10(10) is under the lasting factor, which holds."""
    member, of, method = dressed("2x10"), lumber("canada")["s-p-f no.2"], standard("canada")

    def strength(dead_n_m: float, live_n_m: float) -> float:
        loads = Loads({"dead": dead_n_m, "live": live_n_m})
        combination = "1.25 D + 1.5 L + 1.0 S"
        only = replace(method, strength=tuple(each for each in method.strength if each.name in ("1.4 D", combination)))
        found = [check_member(member, of, only, 3.0, loads, repetitive=False).bending]
        assert found[0].combination == combination
        return found[0].capacity

    assert strength(900.0, 1000.0) == pytest.approx(strength(100.0, 1000.0))
    assert strength(1500.0, 1000.0) / strength(900.0, 1000.0) == pytest.approx(1 - 0.5 * math.log10(1.5))


def test_an_overhang_drops_to_twice_its_length_over_the_limit() -> None:
    """The end of an overhang has its own limit."""
    member, of, method = dressed("2x10"), lumber("us")["spf no.2"], standard("us")
    loads = Loads(points=(("live", 900.0, 5.0),))
    check = check_member(member, of, method, 4.0, loads, repetitive=False, overhang_m=1.0)
    assert check.live_deflection.capacity == pytest.approx(2.0 / 360)
    assert check.bending.demand == pytest.approx(900.0)
    assert check.governs == "live deflection"


def test_size_factors_of_old_lumber() -> None:
    """Green and older dressed sizes count as their nominal size; anything between counts as the next deeper one."""
    spf, method = lumber("us")["spf no.2"], standard("us")

    def factor(width_in: float, depth_in: float) -> float:
        member = Section(width_in * INCH, depth_in * INCH)
        return bending_strength(member, spf, method, False, False) / (875 * PSI)

    assert factor(1.5, 7.25) == factor(1.5625, 7.5) == factor(1.625, 7.625) == pytest.approx(1.2)
    assert factor(2.0, 7.75) == factor(2.0, 8.0) == factor(1.5, 9.25) == pytest.approx(1.1)
    assert factor(1.625, 3.625) == pytest.approx(1.5)
    assert factor(3.5, 7.25) == pytest.approx(1.3)
    assert factor(1.5, 13.25) == pytest.approx(0.9)


def test_no_candidate_is_none() -> None:
    """Nothing to choose from, nothing that does, and a candidate too slender for its unbraced length."""
    method, of = standard("us"), lumber("us")["spf no.2"]
    loads = Loads({"live": 20000.0})
    assert least_section([], of, method, 3.0, loads, repetitive=True) is None
    assert least_section([dressed("2x4")], of, method, 3.0, loads, repetitive=True) is None
    slim, stout = Section(0.75 * INCH, 11.25 * INCH), Section(3.5 * INCH, 11.25 * INCH)
    light = Loads({"live": 100.0})
    assert least_section([slim, stout], of, method, 8.0, light, repetitive=False, unbraced_m=8.0) == stout
