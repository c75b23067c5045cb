"""Roof planes from plan lines: snow by each method, heights and cuts, thrust and ties, drifts, the other side."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.derive.derived import contradicts
from checker.facts import Facts, Item, Ref
from tests.derive.framing import FOOT, INCH, PLF, POUND, PSF, STATES, canada, frame, member
from tests.derive.test_derivations import ALL
from tests.derive.test_envelope import facts, lacking, number, value

few = settings(deadline=None, max_examples=20)
SNOW = "site: {ground_snow_load: 30 psf}"
METRIC = "site: {snow_load_ss: 1.8 kPa, rain_load_sr: 0.4 kPa}"
MAIN = "run: 12 ft, rafter_spacing: 16 in, ridge: board"


def plane(lines: str, id_: str = "r", status: str = "existing") -> str:
    """A roof plane of these lines."""
    return f"{{id: {id_}, status: {status}, {lines}}}"


def roof(lines: str, more: str = SNOW, **assumed: str) -> Facts:
    """The facts of one plane."""
    return frame(more, assumed=dict(assumed), roofs=plane(lines))


def of_roof(of: Facts, name: str, id_: str = "r") -> float:
    """A quantity of a plane that must be known."""
    return number(of, "roof-plane", id_, name)


# Snow.


def test_snow_as_it_lies_on_the_ground() -> None:
    """As the span tables of the code are entered, whatever the slope."""
    for pitch in ("0:12", "6:12", "24:12"):
        found = roof(f'pitch: "{pitch}"')
        assert of_roof(found, "snow_load") / PSF == pytest.approx(30)
        assert of_roof(found, "ground_snow") / PSF == pytest.approx(30)
    assert number(found, "site", "", "roof_snow_load") / PSF == pytest.approx(30)


@pytest.mark.parametrize(
    ("pitch", "more", "wanted"),
    [
        ("3:12", "", 0.7 * 1.1 * 30),
        ("9:12", "", 0.77 * 30),
        ("12:12", "", 0.77 * 30 * (70 - 45) / (70 - 37.5)),
        ("36:12", "", 0.0),
        ("12:12", "slippery: true", 0.77 * 30 * (70 - 45) / (70 - 10)),
        ("12:12", "thermal_factor: 1.0", 0.7 * 30 * (70 - 45) / (70 - 30)),
        ("3:12", "exposure_factor: 0.9", 0.77 * 30 * 0.9),
        ("12:12", "thermal_factor: 1.2, slippery: true", 0.84 * 30 * (70 - 45) / (70 - 15)),
    ],
)
def test_snow_by_slope(pitch: str, more: str, wanted: float) -> None:
    """ASCE 7, 7.3 and 7.4: 0.7 Ce Ct of the ground snow, less above 37.5 degrees of a cold roof, 30 of a warm one."""
    found = roof(f'pitch: "{pitch}", {more}'.removesuffix(", "), roof_snow="sloped-roof snow")
    assert of_roof(found, "snow_load") / PSF == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize(
    ("lines", "site", "wanted"),
    [
        ("run: 4 m", METRIC, 0.55 * 1800 + 400),
        ("run: 2 m", METRIC, 0.45 * 1800 + 400),
        ("run: 2.15 m", METRIC, 0.45 * 1800 + 400),
        ("run: 2.2 m", METRIC, 0.55 * 1800 + 400),
        ('pitch: "6:12"', METRIC, 0.55 * 1800 + 400),
        ("run: 4 m", METRIC.replace("1.8", "0.8").replace("0.4", "0.1"), 1000.0),
    ],
)
def test_snow_on_houses_in_canada(lines: str, site: str, wanted: float) -> None:
    """NBC 9.4.2.2: 0.55 Ss + Sr, 0.45 where the roof spans 4.3 m at most, 1 kPa at least."""
    found = frame(site, by=canada(), roofs=plane(lines))
    assert of_roof(found, "snow_load") == pytest.approx(wanted)


def test_a_narrow_roof_is_narrow_over_both_planes() -> None:
    rows = f"{plane('run: 2 m, opposite: s')}, {plane('run: 3 m', 's')}"
    assert of_roof(frame(METRIC, by=canada(), roofs=rows), "snow_load") == pytest.approx(0.55 * 1800 + 400)


@pytest.mark.parametrize(
    ("method", "line"),
    [
        ("ground snow direct", ("site", "", "ground_snow_load")),
        ("sloped-roof snow", ("site", "", "ground_snow_load")),
    ],
)
def test_the_snow_of_the_place_is_asked_for(method: str, line: tuple[str, str, str]) -> None:
    assert lacking(roof('pitch: "6:12"', "", roof_snow=method), "roof-plane", "r", "snow_load") == {line}


def test_the_pitch_is_asked_for_by_slope_alone() -> None:
    found = roof("run: 12 ft", SNOW, roof_snow="sloped-roof snow")
    assert lacking(found, "roof-plane", "r", "snow_load") == {("roof-plane", "r", "pitch")}
    assert of_roof(roof("run: 12 ft"), "snow_load") / PSF == pytest.approx(30)


def test_both_loads_of_canada_are_asked_for() -> None:
    found = frame(by=canada(), roofs=plane("run: 4 m"))
    assert lacking(found, "roof-plane", "r", "snow_load") == {
        ("site", "", "snow_load_ss"),
        ("site", "", "rain_load_sr"),
    }
    assert lacking(found, "site", "", "roof_snow_load") == {("site", "", "snow_load_ss"), ("site", "", "rain_load_sr")}


def test_snow_of_a_site_without_planes() -> None:
    by_slope = facts(SNOW, roof_snow="sloped-roof snow")
    assert number(by_slope, "site", "", "roof_snow_load") / PSF == pytest.approx(0.77 * 30)
    assert number(frame(METRIC, by=canada()), "site", "", "roof_snow_load") == pytest.approx(1390)


@few
@given(st.integers(min_value=0, max_value=24), st.integers(min_value=1, max_value=12))
def test_a_steeper_roof_never_holds_more(twelfths: int, more: int) -> None:
    def held(pitch: int) -> float:
        return of_roof(roof(f'pitch: "{pitch}:12"', roof_snow="sloped-roof snow"), "snow_load")

    assert held(twelfths + more) <= held(twelfths) + 1e-9


# Geometry.


def test_a_rafter_by_hand() -> None:
    """8 in 12 over 12 ft, eave 1 ft, rafters of 7-1/4 in with a seat of 3-1/2 in."""
    found = roof('pitch: "8:12", run: 12 ft, overhang: 1 ft, rafter_depth: 7-1/4 in, seat_cut: 3-1/2 in')
    slope = math.hypot(1, 8 / 12)
    heel = 7.25 * slope - 3.5 * 8 / 12
    assert heel == pytest.approx(6.380, abs=0.001)
    for name, wanted in (
        ("plumb_cut", 7.25 * slope),
        ("heel_height", heel),
        ("ridge_height", 96 + heel),
        ("rafter_length", 13 * 12 * slope),
        ("span", 24 * 12),
    ):
        assert of_roof(found, name) / INCH == pytest.approx(wanted), name
    assert of_roof(found, "birdsmouth_share") == pytest.approx(3.5 * (8 / 12) / slope / 7.25)


def test_without_a_seat_the_ridge_is_that_of_the_lower_line() -> None:
    found = roof('pitch: "8:12", run: 12 ft')
    assert of_roof(found, "ridge_height") / FOOT == pytest.approx(8)
    assert of_roof(found, "rafter_length") / FOOT == pytest.approx(12 * math.hypot(1, 8 / 12))
    assert lacking(found, "roof-plane", "r", "heel_height") >= {("roof-plane", "r", "rafter_depth")}


def test_a_stated_ridge_far_from_pitch_and_run_contradicts_them() -> None:
    for height, against in (("8 ft", False), ("8'-6\"", False), ("10 ft", True)):
        fact = roof(f'pitch: "8:12", run: 12 ft, ridge_height: {height}').value(
            Item(Ref("roof-plane", "r"), "ridge_height")
        )
        assert fact is not None
        assert contradicts(fact, ALL["roof-plane", "ridge_height"]) is against


def test_the_depth_of_the_rafters_is_that_of_the_deepest() -> None:
    members = ", ".join(
        [
            member("role: rafter, size: 2x6, roof: r", "a"),
            member("role: rafter, size: 2x8, roof: r", "b"),
            member("role: ridge board, size: 2x12, roof: r", "c"),
        ]
    )
    found = frame(SNOW, members=members, roofs=plane('pitch: "6:12"'))
    assert of_roof(found, "depth_of_rafters") / INCH == pytest.approx(7.25)
    stated = frame(SNOW, members=members, roofs=plane('pitch: "6:12", rafter_depth: 9 in'))
    assert of_roof(stated, "depth_of_rafters") / INCH == pytest.approx(9)


def test_a_seat_that_cuts_through_is_a_fault_and_no_height() -> None:
    found = roof('pitch: "12:12", run: 12 ft, rafter_depth: 5-1/2 in, seat_cut: 10 in')
    assert value(found, "roof-plane", "r", "heel_height") is None
    assert {fault.item.name for fault in found.faults} == {"heel_height"}


# Thrust and ties.


def test_thrust_by_hand() -> None:
    """10 + 30 psf at 16 in over 12 ft at 8 in 12: 53.3 plf × 12 / (2 × 2/3) = 480 lb."""
    found = roof(f'pitch: "8:12", {MAIN}')
    assert of_roof(found, "design_load") / PSF == pytest.approx(40)
    assert of_roof(found, "thrust") / POUND == pytest.approx(480)
    assert of_roof(found, "tie_force") / POUND == pytest.approx(480)
    assert of_roof(found, "ridge_load") / PLF == pytest.approx(480)


def test_ties_take_more_the_higher_and_the_farther_apart() -> None:
    """At 3 of 8 ft and every second rafter: 480 / (1 - 3/8) × 2."""
    found = roof(f'pitch: "8:12", {MAIN}, tie_height: 3 ft, tie_spacing: 32 in')
    assert of_roof(found, "tie_height_share") == pytest.approx(3 / 8)
    assert of_roof(found, "tie_force") / POUND == pytest.approx(480 / (5 / 8) * 2)
    low = roof(f'pitch: "8:12", {MAIN}, tie_height: 0 ft, tie_spacing: 16 in')
    assert of_roof(low, "tie_force") / POUND == pytest.approx(480)


@few
@given(st.integers(min_value=1, max_value=23), st.integers(min_value=1, max_value=8))
def test_thrust_falls_with_pitch(twelfths: int, more: int) -> None:
    flat, steep = (
        of_roof(roof(f'pitch: "{pitch}:12", {MAIN}, dead_load: 0 psf'), "thrust")
        for pitch in (twelfths, twelfths + more)
    )
    assert steep < flat
    assert steep * (twelfths + more) == pytest.approx(flat * twelfths)


@pytest.mark.parametrize("ridge", ["beam", "bearing wall"])
def test_a_ridge_that_carries_leaves_no_thrust_and_asks_for_nothing(ridge: str) -> None:
    found = roof(f'pitch: "8:12", {MAIN}'.replace("board", ridge))
    assert lacking(found, "roof-plane", "r", "thrust") == set()
    assert of_roof(found, "ridge_load") / PLF == pytest.approx(40 * 12)


@pytest.mark.parametrize(
    ("lines", "line"),
    [
        (f'pitch: "8:12", {MAIN}'.replace(", ridge: board", ""), "ridge"),
        (f'pitch: "8:12", {MAIN}'.replace("rafter_spacing: 16 in, ", ""), "rafter_spacing"),
        (f'pitch: "8:12", {MAIN}'.replace("run: 12 ft, ", ""), "run"),
        (MAIN, "pitch"),
    ],
)
def test_what_a_thrust_lacks(lines: str, line: str) -> None:
    assert lacking(roof(lines), "roof-plane", "r", "thrust") == {("roof-plane", "r", line)}


def test_unequal_planes_push_alike() -> None:
    """40 psf on 12 ft at 9 in 12 against 40 psf on 8 ft at 3 in 12: 53.3 × (12 + 8) / (2 × (3/4 + 1/4))."""
    rows = ", ".join(
        [
            plane(f'pitch: "9:12", {MAIN}, opposite: s'),
            plane('pitch: "3:12", run: 8 ft, rafter_spacing: 16 in, ridge: board, opposite: r', "s"),
        ]
    )
    found = frame(SNOW, roofs=rows)
    wanted = 40 * 16 / 12 * (12 + 8) / (2 * (9 / 12 + 3 / 12))
    for id_ in "rs":
        assert of_roof(found, "thrust", id_) / POUND == pytest.approx(wanted)
        assert of_roof(found, "span", id_) / FOOT == pytest.approx(20)
        assert of_roof(found, "ridge_load", id_) / PLF == pytest.approx(40 * (12 + 8) / 2)


def test_a_heavier_roof_pushes_harder() -> None:
    """12 psf on the slope of 9 in 12 are 15 on plan; layers come with what no layer is, as everywhere."""
    stated = roof(f'pitch: "9:12", {MAIN}, dead_load: 12 psf')
    assert of_roof(stated, "design_load") / PSF == pytest.approx(45)
    layers = (
        "envelope: {assemblies: [{id: a, status: existing, part: roof, layers: ["
        "{id: s, material: asphalt shingles}, {id: p, material: plywood, thickness: 1/2 in}]}]}"
    )
    built = frame(f"{SNOW}\n{layers}", roofs=plane(f'pitch: "9:12", {MAIN}, assembly: a'))
    assert of_roof(built, "design_load") / PSF == pytest.approx(30 + (2.5 + 1.5 + 1.5) * 1.25, rel=1e-5)


def test_the_roof_live_load_counts_where_snow_is_less() -> None:
    found = roof('pitch: "6:12"', "site: {ground_snow_load: 10 psf}")
    assert of_roof(found, "design_load") / PSF == pytest.approx(10 + 20)


# Drifts.


def drift(fetch: float, wall: float) -> float:
    """Snow of a drift at its highest. [psf]"""
    lines = f'pitch: "3:12", roof_above_length: {fetch} ft, wall_above_height: {wall} ft'
    return of_roof(roof(lines), "drift_surcharge") / PSF


def test_a_drift_by_hand() -> None:
    """30 psf: 17.9 lb/ft3; 0.43 × cube root of 40 × fourth root of 40 less 1.5 ft."""
    height = 0.43 * 40 ** (1 / 3) * 40**0.25 - 1.5
    assert drift(40, 10) == pytest.approx(height * 17.9, rel=1e-4)


def test_a_low_wall_and_a_short_roof_limit_a_drift() -> None:
    """The wall over the balanced 23.1 psf; an upper roof under 25 ft counts as 25."""
    assert drift(40, 2) == pytest.approx((2 - 23.1 / 17.9) * 17.9, rel=1e-4)
    assert drift(40, 1) == 0.0
    assert drift(10, 10) == pytest.approx(drift(25, 10))
    assert drift(10, 10) < drift(26, 10) < drift(60, 10)


def test_what_a_drift_lacks() -> None:
    assert lacking(roof('pitch: "3:12"'), "roof-plane", "r", "drift_surcharge") == {
        ("roof-plane", "r", "roof_above_length"),
        ("roof-plane", "r", "wall_above_height"),
    }


# Before and after.


def test_a_roof_made_flatter_pushes_harder() -> None:
    lines = f'pitch: "4:12", {MAIN}, dead_load: 0 psf, was: {{pitch: "12:12", {MAIN}, dead_load: 0 psf}}'
    found = frame(SNOW, roofs=plane(lines, status="altered"))
    before, after = (number(found, "roof-plane", "r", "thrust", state) for state in STATES)
    assert after == pytest.approx(3 * before)
    heights = [number(found, "roof-plane", "r", "ridge_height", state) / FOOT for state in STATES]
    assert heights == pytest.approx([12, 4])


def test_height_gained_in_the_middle_of_the_run() -> None:
    """Plate up 4 ft, from 9 in 12 to 3 in 12: 6 ft in, 1 ft more."""
    lines = 'pitch: "3:12", run: 12 ft, plate_height: 5 ft, was: {pitch: "9:12", run: 12 ft, plate_height: 1 ft}'
    found = frame(SNOW, roofs=plane(lines, status="altered"))
    assert of_roof(found, "headroom_gained") / FOOT == pytest.approx(4 + 6 * (3 - 9) / 12)
