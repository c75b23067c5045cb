"""The load take-down from plan lines: three storeys by hand, what is open or unknown, studs, footings, bracing."""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.facts import Facts, Ref, State
from tests.derive.framing import FOOT, INCH, PLF, POUND, PSF, STATES, frame, member
from tests.derive.test_envelope import lacking, number, value

few = settings(deadline=None, max_examples=20)
LEVELS = (
    "site: {ground_snow_load: 30 psf}\n"
    "levels: [{id: base, status: existing, use: basement}, {id: first, status: existing, use: storey, below: base}, "
    "{id: second, status: existing, use: storey, below: first}]"
)
UPPER = (
    "{id: w2, status: existing, form: stud wall, height: 8 ft, level: second, stands_on: w1, loads: ["
    "{id: roof, status: altered, carries: roof and ceiling, tributary_width: 13 ft, "
    "was: {carries: roof, tributary_width: 13 ft}}, "
    "{id: attic, status: altered, carries: habitable attic, tributary_width: 6 ft, "
    "was: {carries: attic without storage, tributary_width: 6 ft}}]}"
)
MIDDLE = (
    "{id: w1, status: existing, form: stud wall, height: 8-1/2 ft, level: first, stands_on: w0, loads: ["
    "{id: beds, status: existing, carries: sleeping rooms, tributary_width: 6 ft}]}"
)
LOWER = (
    "{id: w0, status: existing, form: foundation wall, height: 7 ft, wall_weight: 150 psf, level: base, "
    "stands_on_footing: f, loads: [{id: rooms, status: existing, carries: rooms, tributary_width: 6 ft}]}"
)
FOOTING = "{id: f, status: existing, width: 16 in, wall_thickness: 12 in, soil: clay or silt}"
BY_HAND: dict[State, dict[str, tuple[float, float, float, float]]] = {
    # dead, live, snow, all that acts together: dead and 0.75 of live and snow, or dead and snow. plf
    "before": {
        "w2": (130 + 30 + 96, 60, 390, 256 + 390),
        "w1": (256 + 60 + 102, 240, 390, 418 + 0.75 * 630),
        "w0": (418 + 60 + 1050, 480, 390, 1528 + 0.75 * 870),
    },
    "after": {
        "w2": (195 + 60 + 96, 180, 390, 351 + 0.75 * 570),
        "w1": (351 + 60 + 102, 360, 390, 513 + 0.75 * 750),
        "w0": (513 + 60 + 1050, 600, 390, 1623 + 0.75 * 990),
    },
}


def house(*lines: str, footing: str = FOOTING) -> Facts:
    """The facts of bearing lines on a footing."""
    return frame(LEVELS, bearing_lines=", ".join(lines or (UPPER, MIDDLE, LOWER)), footings=footing)


def of_line(of: Facts, id_: str, name: str, state: State = "after") -> float:
    """A load of a line that must be known. [plf]"""
    return number(of, "bearing-line", id_, name, state) / PLF


def wall(id_: str, lines: str = "", loads: str = "", status: str = "existing") -> str:
    """A stud wall of 8 ft with loaded areas."""
    more = f", {lines}" if lines else ""
    return f"{{id: {id_}, status: {status}, form: stud wall, height: 8 ft, loads: [{loads}]{more}}}"


def area(id_: str, width: str, carries: str = "rooms") -> str:
    """A loaded area."""
    return f"{{id: {id_}, status: existing, carries: {carries}, tributary_width: {width}}}"


# By hand.


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("line", ["w2", "w1", "w0"])
def test_three_storeys_by_hand(state: State, line: str) -> None:
    found = house()
    dead, live, snow, together = BY_HAND[state][line]
    for name, wanted in (("dead", dead), ("live", live), ("snow", snow), ("roof_live", 20 * 13)):
        assert of_line(found, line, f"{name}_total", state) == pytest.approx(wanted), name
    assert of_line(found, line, "service_load", state) == pytest.approx(together)


def test_what_the_work_adds() -> None:
    found = house()
    for line in ("w2", "w1", "w0"):
        before, after = (BY_HAND[state][line][3] for state in STATES)
        assert number(found, "bearing-line", line, "load_added") == pytest.approx(after / before - 1)
    assert number(found, "footing", "f", "load_added") == pytest.approx(2365.5 / 2180.5 - 1)


def test_own_loads_are_those_of_one_storey() -> None:
    found = house()
    assert of_line(found, "w1", "dead_own") == pytest.approx(60 + 102)
    assert of_line(found, "w1", "live_own") == pytest.approx(180)
    assert of_line(found, "w1", "snow_own") == 0.0
    assert number(found, "bearing-line", "w0", "wall_load") / PLF == pytest.approx(1050)


def test_the_footing_by_hand() -> None:
    """16 in under 2,365.5 plf on clay of 1,500 psf."""
    found = house()
    assert number(found, "footing", "f", "line_load") / PLF == pytest.approx(2365.5)
    assert number(found, "footing", "f", "soil_pressure") / PSF == pytest.approx(2365.5 / (16 / 12))
    assert number(found, "footing", "f", "soil_pressure", "before") / PSF == pytest.approx(2180.5 / (16 / 12))
    assert number(found, "footing", "f", "width_needed") / FOOT == pytest.approx(2365.5 / 1500)
    assert number(found, "footing", "f", "projection") / INCH == pytest.approx(2)


def test_the_order_of_the_lines_does_not_matter() -> None:
    wanted = [(ref, known.values) for ref, known in house().elements.items() if ref.kind == "bearing-line"]
    for lines in permutations((UPPER, MIDDLE, LOWER)):
        found = house(*lines)
        for ref, values in wanted:
            for name, fact in values.items():
                assert value(found, *ref[:2], name, ref.state) == pytest.approx(fact.value), (ref, name)


def test_two_walls_on_one_and_two_lines_on_a_footing() -> None:
    rows = (
        wall("a", "stands_on: c", area("x", "5 ft")),
        wall("b", "stands_on: c", area("y", "7 ft", "sleeping rooms")),
        wall("c", "stands_on_footing: f", area("z", "4 ft")),
        wall("d", "stands_on_footing: f", area("u", "2 ft")),
    )
    found = house(*rows)
    assert of_line(found, "c", "live_total") == pytest.approx(40 * 5 + 30 * 7 + 40 * 4)
    assert of_line(found, "c", "dead_total") == pytest.approx(10 * (5 + 7 + 4) + 3 * 96)
    both = of_line(found, "c", "service_load") + of_line(found, "d", "service_load")
    assert number(found, "footing", "f", "line_load") / PLF == pytest.approx(both)


def test_what_a_line_carries_by_floors_and_roof() -> None:
    """A floor counts once, however many widths of it; a deck and an attic without storage are none."""
    found = house()
    for line, before, after in (("w2", 0, 1), ("w1", 1, 2), ("w0", 2, 3)):
        assert value(found, "bearing-line", line, "floors_carried", "before") == before
        assert value(found, "bearing-line", line, "floors_carried") == after
        assert value(found, "bearing-line", line, "carries_roof") is True
    rows = (
        wall("a", "stands_on: c", f"{area('x', '5 ft')}, {area('y', '5 ft', 'stairs')}"),
        wall("b", "stands_on: c", area("z", "5 ft")),
        wall("c", "", area("u", "5 ft", "deck")),
    )
    several = house(*rows)
    assert value(several, "bearing-line", "a", "floors_carried") == 1
    assert value(several, "bearing-line", "c", "floors_carried") == 1
    assert value(several, "bearing-line", "c", "carries_roof") is False


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ("form: stud wall", 12.0),
        ("form: stud wall, wall_weight: 15 psf", 15.0),
        ("form: masonry wall, wall_weight: 80 psf", 80.0),
        ("form: beam", 0.0),
        ("form: posts", 0.0),
        ("form: masonry wall, assembly: a", 2 * 36 / 12),
        ("assembly: a, wall_weight: 9 psf", 9.0),
    ],
)
def test_what_a_wall_weighs(lines: str, wanted: float) -> None:
    built = (
        "envelope: {assemblies: [{id: a, status: existing, part: wall, layers: ["
        "{id: p, material: plywood, thickness: 1 in}, {id: q, material: plywood, thickness: 1 in}]}]}"
    )
    found = frame(built, bearing_lines=f"{{id: w, status: existing, height: 10 ft, loads: [], {lines}}}")
    assert number(found, "bearing-line", "w", "wall_pressure") / PSF == pytest.approx(wanted, rel=1e-5)
    assert of_line(found, "w", "dead_own") == pytest.approx(10 * wanted, rel=1e-5)


@pytest.mark.parametrize(
    ("lines", "line"),
    [("height: 8 ft", "form"), ("form: masonry wall, height: 8 ft", "wall_weight"), ("form: stud wall", "height")],
)
def test_what_the_weight_of_a_wall_lacks(lines: str, line: str) -> None:
    found = frame(bearing_lines=f"{{id: w, status: existing, loads: [], {lines}}}")
    assert lacking(found, "bearing-line", "w", "wall_load") == {("bearing-line", "w", line)}


# What is open or unknown.


def test_a_list_of_lines_that_goes_on_leaves_totals_open() -> None:
    found = house(UPPER, MIDDLE, LOWER, "and others")
    assert of_line(found, "w2", "dead_own") == pytest.approx(BY_HAND["after"]["w2"][0])
    for line in ("w2", "w1", "w0"):
        assert "dead_total" not in found.elements[Ref("bearing-line", line)].values
        assert "service_load" not in found.elements[Ref("bearing-line", line)].values
    assert value(found, "footing", "f", "soil_pressure") is None


def test_loads_that_go_on_leave_a_line_and_those_below_open() -> None:
    found = house(UPPER.replace("tributary_width: 6 ft}}]}", "tributary_width: 6 ft}}, and others]}"), MIDDLE, LOWER)
    for line in ("w2", "w1", "w0"):
        assert lacking(found, "bearing-line", line, "dead_total") == {("bearing-line", "w2", "loads")}
    assert of_line(found, "w1", "dead_own") == pytest.approx(162)


def test_lines_without_loads_ask_for_them_and_none_is_none() -> None:
    found = frame(bearing_lines="{id: w, status: existing, form: stud wall, height: 8 ft}")
    assert lacking(found, "bearing-line", "w", "live_own") == {("bearing-line", "w", "loads")}
    none = frame(bearing_lines="{id: w, status: existing, form: stud wall, height: 8 ft, loads: []}")
    assert of_line(none, "w", "dead_total") == pytest.approx(96)
    assert of_line(none, "w", "live_total") == 0.0


@pytest.mark.parametrize("line", ["w2", "w1", "w0"])
def test_a_width_that_is_not_known_is_told_on_every_line_below(line: str) -> None:
    unknown = UPPER.replace(
        "carries: habitable attic, tributary_width: 6 ft", "carries: habitable attic, tributary_width: unknown"
    )
    found = house(unknown, MIDDLE, LOWER)
    wanted = {("loaded-area", "attic", "tributary_width")}
    for name in ("dead_total", "live_total", "snow_total", "service_load"):
        assert lacking(found, "bearing-line", line, name) == wanted, name
    assert lacking(found, "footing", "f", "soil_pressure") == wanted
    assert of_line(found, line, "service_load", "before") == pytest.approx(BY_HAND["before"][line][3])
    assert "load_added" not in found.elements[Ref("bearing-line", line)].values


def test_snow_that_is_not_known_leaves_dead_and_live_loads() -> None:
    found = frame(LEVELS.replace("30 psf", "unknown"), bearing_lines=f"{UPPER}, {MIDDLE}, {LOWER}", footings=FOOTING)
    assert of_line(found, "w0", "dead_total") == pytest.approx(1623)
    assert lacking(found, "bearing-line", "w0", "service_load") == {("site", "", "ground_snow_load")}


# Lines that go and come.


def test_a_line_that_the_work_takes_away() -> None:
    found = house(UPPER, MIDDLE.replace("status: existing, form", "status: removed, form"), LOWER)
    assert value(found, "level", "first", "bearing_removed") is True
    assert value(found, "level", "base", "bearing_removed") is False
    assert of_line(found, "w0", "dead_total", "before") == pytest.approx(1528)
    assert of_line(found, "w0", "dead_total") == pytest.approx(60 + 1050)
    assert Ref("bearing-line", "w1", "after") not in found.elements


def test_whether_a_line_goes_is_open_where_lines_are_not_all_told() -> None:
    gone = MIDDLE.replace("status: existing, form", "status: removed, form")
    assert value(house(UPPER, gone, LOWER, "and others"), "level", "base", "bearing_removed") is None
    assert value(frame(LEVELS), "level", "base", "bearing_removed") is None
    assert value(house(UPPER, LOWER.replace("w0", "w1")), "level", "first", "bearing_removed") is False


def test_a_new_line_has_no_before() -> None:
    found = house(UPPER.replace("status: existing, form", "status: new, form"), MIDDLE, LOWER)
    assert Ref("bearing-line", "w2", "before") not in found.elements
    assert of_line(found, "w1", "dead_total", "before") == pytest.approx(162)
    assert number(found, "bearing-line", "w1", "load_added") == pytest.approx((513 + 0.75 * 750) / (162 + 180) - 1)


# Studs.


STUDS = (
    "form: stud wall, height: 8 ft, stud_size: 2x4, stud_spacing: 16 in, stud_lumber: spruce-pine-fir stud, "
    "loads: [{id: x, status: existing, carries: rooms, tributary_width: 18 ft}]"
)


def studs(lines: str = STUDS) -> Facts:
    """The facts of a wall of these studs."""
    return frame(bearing_lines=f"{{id: w, status: existing, {lines}}}")


def test_studs_by_hand() -> None:
    """996 plf at 16 in; stud grade, 725 psi × 1.05, Emin 440 ksi, 96 in over 3-1/2 in, held along the wall."""
    load = (10 * 18 + 96 + 40 * 18) * 16 / 12
    along = 725 * 1.05
    critical = 0.822 * 440_000 / (96 / 3.5) ** 2
    half = (1 + critical / along) / 1.6
    kept = half - (half**2 - critical / along / 0.8) ** 0.5
    wanted = load / (along * kept * 1.5 * 3.5)
    assert number(studs(), "bearing-line", "w", "stud_use") == pytest.approx(wanted, rel=1e-6)


def test_old_studs_count_as_measured() -> None:
    old = STUDS.replace("stud_size: 2x4", "stud_width: 2 in, stud_depth: 3-3/4 in")
    assert number(studs(old), "bearing-line", "w", "stud_actual_depth") / INCH == pytest.approx(3.75)
    assert number(studs(old), "bearing-line", "w", "stud_use") < number(studs(), "bearing-line", "w", "stud_use")


@pytest.mark.parametrize(
    ("left_out", "line"),
    [
        ("stud_size: 2x4, ", "stud_size"),
        ("stud_spacing: 16 in, ", "stud_spacing"),
        ("stud_lumber: spruce-pine-fir stud, ", "stud_lumber"),
        ("height: 8 ft, ", "height"),
    ],
)
def test_what_studs_lack(left_out: str, line: str) -> None:
    found = studs(STUDS.replace(left_out, ""))
    assert ("bearing-line", "w", line) in lacking(found, "bearing-line", "w", "stud_use")


def test_a_measured_depth_alone_asks_for_the_width() -> None:
    found = studs(STUDS.replace("stud_size: 2x4", "stud_depth: 3-3/4 in"))
    assert lacking(found, "bearing-line", "w", "stud_use") == {("bearing-line", "w", "stud_width")}


# Footings.


@pytest.mark.parametrize(
    ("soil", "psf"),
    [
        ("bedrock", 12000),
        ("sedimentary rock", 4000),
        ("sandy gravel or gravel", 3000),
        ("sand or silty sand", 2000),
        ("clay or silt", 1500),
    ],
)
def test_what_soils_are_presumed_to_bear(soil: str, psf: float) -> None:
    """IRC table R401.4.1."""
    found = frame(footings=f"{{id: f, status: existing, soil: {soil}}}")
    assert number(found, "footing", "f", "allowable_bearing") / PSF == pytest.approx(psf)
    tested = frame(footings=f"{{id: f, status: existing, soil: {soil}, soil_bearing: 1800 psf}}")
    assert number(tested, "footing", "f", "allowable_bearing") / PSF == pytest.approx(1800)


@pytest.mark.parametrize(("lines", "line"), [("soil: organic or fill", "soil_bearing"), ("width: 20 in", "soil")])
def test_fill_asks_for_a_test_and_no_soil_for_the_soil(lines: str, line: str) -> None:
    found = house(footing=f"{{id: f, status: existing, {lines}}}")
    assert lacking(found, "footing", "f", "allowable_bearing") == {("footing", "f", line)}
    assert ("footing", "f", line) in lacking(found, "footing", "f", "width_needed")


POST = 'role: post, size: 4x4, lumber: "spf no. 2", span: 8 ft'
PAD = "{{id: f, status: new, pad: true, width: 24 in, soil: clay or silt, {}}}"


def test_a_pad_carries_its_posts() -> None:
    """4,000 and 2,000 lb on 2 ft × 2 ft; 1,500 psf would do with 2 ft."""
    posts = ", ".join(member(f"{POST}, axial_load: {load} lb", id_) for id_, load in (("a", 4000), ("b", 2000)))
    found = frame(members=posts, footings=PAD.format("posts: [a, b]"))
    assert number(found, "footing", "f", "pad_load") / POUND == pytest.approx(6000)
    assert number(found, "footing", "f", "soil_pressure") / PSF == pytest.approx(1500)
    assert number(found, "footing", "f", "width_needed") / FOOT == pytest.approx(2)
    stated = frame(members=posts, footings=PAD.format("posts: [a, b], point_load: 3000 lb"))
    assert number(stated, "footing", "f", "soil_pressure") / PSF == pytest.approx(750)


@pytest.mark.parametrize("lines", ["depth_below_grade: 3 ft", "posts: []"])
def test_a_pad_of_which_no_post_is_told_asks_for_its_load(lines: str) -> None:
    found = frame(footings=PAD.format(lines))
    assert lacking(found, "footing", "f", "pad_load") == {("footing", "f", "point_load")}


def test_a_post_of_unknown_load_leaves_the_pad_open() -> None:
    found = frame(members=member(POST, "a"), footings=PAD.format("posts: [a]"))
    assert value(found, "footing", "f", "soil_pressure") is None


def test_a_footing_under_a_wall_is_no_pad() -> None:
    found = house(footing=FOOTING.replace("{id: f", "{id: f, pad: false"))
    assert lacking(found, "footing", "f", "pad_load") == set()
    assert number(found, "footing", "f", "soil_pressure") / PSF == pytest.approx(2365.5 * 12 / 16)


def test_a_footing_narrower_than_its_wall_stands_out_by_nothing() -> None:
    found = frame(footings="{id: f, status: existing, width: 10 in, wall_thickness: 12 in}")
    assert number(found, "footing", "f", "projection") == 0.0


# Bracing.


@pytest.mark.parametrize(
    ("method", "inches", "count"),
    [("wood panel", 100.0, 2), ("let-in bracing", 100.0, 2), ("continuous wood panel", 154.0, 4)],
)
def test_panels_count_from_the_least_length_on(method: str, inches: float, count: int) -> None:
    """48 in each, 24 in where the wall is sheathed throughout; just the least length counts."""
    lines = f"panels: [48 in, 23 in, 24 in, 52 in, 30 in], method: {method}"
    found = frame(braced_lines=f"{{id: b, status: existing, {lines}}}")
    assert number(found, "braced-line", "b", "available_length") / INCH == pytest.approx(inches)
    assert number(found, "braced-line", "b", "panels_counted") == count


# Properties.


feet = st.integers(min_value=0, max_value=30)
uses = st.sampled_from(["rooms", "sleeping rooms", "roof", "roof and ceiling", "attic with storage", "deck"])


def two(areas: list[tuple[int, str]]) -> Facts:
    """A wall with areas over another on a footing."""
    rows = ", ".join(area(f"x{place}", f"{width} ft", use) for place, (width, use) in enumerate(areas))
    return house(wall("a", "stands_on: b", rows), wall("b", "stands_on_footing: f", area("z", "4 ft")))


@few
@given(st.lists(st.tuples(feet, uses), max_size=4), feet, uses)
def test_another_area_never_lowers_a_total_or_the_pressure(areas: list[tuple[int, str]], width: int, use: str) -> None:
    fewer, more = two(areas), two([*areas, (width, use)])
    for line in "ab":
        for name in ("dead_total", "live_total", "snow_total", "roof_live_total", "service_load", "floors_carried"):
            one, other = (number(of, "bearing-line", line, name) for of in (fewer, more))
            assert other >= one - 1e-9, (line, name)
    pressures = [number(of, "footing", "f", "soil_pressure") for of in (fewer, more)]
    assert pressures[1] >= pressures[0] - 1e-9
    if width:
        assert number(more, "bearing-line", "b", "dead_total") > number(fewer, "bearing-line", "b", "dead_total")


@few
@given(st.lists(st.tuples(feet, uses), min_size=1, max_size=4))
def test_twice_the_width_is_twice_the_load(areas: list[tuple[int, str]]) -> None:
    once, twice = two(areas), two([(2 * width, use) for width, use in areas])
    found: dict[str, tuple[Any, ...]] = {
        kind: tuple(of_line(of, "a", f"{kind}_own") for of in (once, twice))
        for kind in ("dead", "live", "snow", "roof_live")
    }
    for kind, (single, double) in found.items():
        wall_plf = 96.0 if kind == "dead" else 0.0
        assert double - wall_plf == pytest.approx(2 * (single - wall_plf), abs=1e-6), kind
