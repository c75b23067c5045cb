"""Members from plan lines: section, loads, what they carry, how far they may bend, before and after."""

from __future__ import annotations

import math

import pytest

from checker.facts import Facts, Ref
from tests.derive.framing import INCH, PLF, POUND, PSF, STATES, canada, frame, member, of_member
from tests.derive.test_envelope import lacking, value

SNOW = "site: {ground_snow_load: 30 psf}"
JOIST = 'role: floor joist, size: 2x8, lumber: "spf no. 2", spacing: 16 in, span: 12 ft, carries: rooms'
HEADER = "role: header, size: 2x10, plies: 2, lumber: douglas fir-larch no. 2, span: 6 ft, edge_held: true"
CHECKS = ("bending_use", "shear_use", "live_deflection_ratio", "total_deflection_ratio", "governs", "worst_use")


def one(lines: str, more: str = SNOW, roofs: str = "", bearing_lines: str = "") -> Facts:
    """The facts of one member of these lines."""
    lists = {"roofs": roofs, "bearing_lines": bearing_lines}
    return frame(more, None, None, members=member(lines), **{name: rows for name, rows in lists.items() if rows})


def missing(of: Facts, name: str, id_: str = "j") -> set[tuple[str, str, str]]:
    """The lines without which a value of a member is not known."""
    return lacking(of, "member", id_, name)


# Section.


@pytest.mark.parametrize(
    ("lines", "width", "depth"),
    [
        ("size: 2x8", 1.5, 7.25),
        ('size: "2 by 10"', 1.5, 9.25),
        ("size: 4X6", 3.5, 5.5),
        ("size: 6x10", 5.5, 9.5),
        ("width: 2 in, depth: 7-3/4 in", 2.0, 7.75),
        ("width: 1-3/4 in, depth: 11-7/8 in", 1.75, 11.875),
    ],
)
def test_the_section_is_dressed_or_as_measured(lines: str, width: float, depth: float) -> None:
    found = one(f"role: floor joist, {lines}")
    assert of_member(found, "ply_width") / INCH == pytest.approx(width)
    assert of_member(found, "actual_depth") / INCH == pytest.approx(depth)


def test_a_size_measures_otherwise_in_canada() -> None:
    found = frame(by=canada(), members=member("role: floor joist, size: 2x10"))
    assert of_member(found, "ply_width") == pytest.approx(0.038)
    assert of_member(found, "actual_depth") == pytest.approx(0.235)


@pytest.mark.parametrize(
    ("lines", "name", "line"),
    [
        ("spacing: 16 in", "ply_width", "size"),
        ("spacing: 16 in", "actual_depth", "size"),
        ("width: 2 in", "actual_depth", "depth"),
        ("depth: 8 in", "ply_width", "width"),
    ],
)
def test_a_section_half_told_asks_for_the_other_half(lines: str, name: str, line: str) -> None:
    """Beside a measured side the nominal size would be refused."""
    assert missing(one(f"role: floor joist, {lines}"), name) == {("member", "j", line)}


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ("size: 2x8", False),
        ('lumber: "spf no. 2"', False),
        ("product: sawn lumber", False),
        ("product: I-joist", True),
        ("product: steel", True),
    ],
)
def test_a_member_with_a_size_or_a_grade_is_sawn(lines: str, wanted: bool) -> None:
    assert value(one(f"role: beam, {lines}"), "member", "j", "engineered") is wanted


def test_what_a_measured_member_is_made_of_is_asked_for() -> None:
    assert missing(one("role: beam, width: 3 in, depth: 9 in"), "engineered") == {("member", "j", "product")}


# Loads.


@pytest.mark.parametrize(
    ("carries", "dead", "live", "snow", "roof_live"),
    [
        ("rooms", 10, 40, 0, 0),
        ("sleeping rooms", 10, 30, 0, 0),
        ("attic without storage", 5, 10, 0, 0),
        ("attic with storage", 10, 20, 0, 0),
        ("habitable attic", 10, 30, 0, 0),
        ("stairs", 10, 40, 0, 0),
        ("deck", 10, 40, 0, 0),
        ("ceiling only", 5, 10, 0, 0),
        ("roof", 10, 0, 30, 20),
        ("roof and ceiling", 15, 0, 30, 20),
    ],
)
def test_loads_by_use(carries: str, dead: float, live: float, snow: float, roof_live: float) -> None:
    """Live and roof live loads of IRC tables R301.5 and R301.6; dead loads as the span tables have them."""
    found = one(f"role: floor joist, carries: {carries}, spacing: 24 in")
    for name, wanted in (("dead", dead), ("live", live), ("snow", snow), ("roof_live", roof_live)):
        assert of_member(found, f"{name}_pressure") / PSF == pytest.approx(wanted), name
        assert of_member(found, f"line_{name}") / PLF == pytest.approx(2 * wanted), name


def test_stated_loads_outrank_those_of_the_use() -> None:
    found = one("role: floor joist, carries: rooms, dead_load: 18 psf, live_load: 55 psf")
    assert of_member(found, "dead_pressure") / PSF == pytest.approx(18)
    assert of_member(found, "live_pressure") / PSF == pytest.approx(55)
    alone = one("role: floor joist, dead_load: 18 psf, live_load: 55 psf")
    assert of_member(alone, "live_pressure") / PSF == pytest.approx(55)


def test_without_a_use_the_use_is_asked_for() -> None:
    found = one("role: floor joist, spacing: 16 in")
    for name in ("dead_pressure", "live_pressure", "snow_pressure", "roof_live_pressure", "line_live"):
        assert missing(found, name) == {("member", "j", "carries")}


FLOOR = (
    "envelope: {assemblies: [{id: a, status: existing, part: floor, layers: ["
    "{id: b, material: gypsum board, thickness: 1/2 in}, {id: p, material: plywood, thickness: 3/4 in}]}]}"
)
ROOF = (
    "envelope: {assemblies: [{id: a, status: existing, part: roof, layers: ["
    "{id: s, material: asphalt shingles}, {id: p, material: plywood, thickness: 1/2 in}]}]}"
)
PLANE = "{{id: r, status: existing, {}}}"


def test_dead_load_by_the_layers_of_its_assembly() -> None:
    """Half an inch of board at 53 lb/ft3, three quarters of plywood at 36, and 1.5 psf of what no layer is."""
    found = one("role: floor joist, carries: rooms, assembly: a", FLOOR)
    assert of_member(found, "dead_pressure") / PSF == pytest.approx(53 / 24 + 36 / 16 + 1.5, rel=1e-5)


def test_layers_of_a_roof_weigh_more_on_plan() -> None:
    """Shingles of 2.5 psf and half an inch of plywood, on a slope of 9 in 12: a quarter more."""
    lines = "role: rafter, carries: roof, assembly: a, roof: r"
    found = one(lines, ROOF, roofs=PLANE.format('pitch: "9:12"'))
    assert of_member(found, "dead_pressure") / PSF == pytest.approx((2.5 + 36 / 24 + 1.5) * 1.25, rel=1e-5)
    unsaid = one(lines, ROOF, roofs=PLANE.format("overhang: 1 ft"))
    assert missing(unsaid, "dead_pressure") == {("roof-plane", "r", "pitch")}


def test_dead_load_of_the_roof_plane() -> None:
    """12 psf on the slope are 15 psf on plan at 9 in 12; a floor under that roof has its own."""
    plane = PLANE.format('pitch: "9:12", dead_load: 12 psf')
    for carries, wanted in (("roof", 15.0), ("rooms", 10.0)):
        found = one(f"role: rafter, carries: {carries}, roof: r", SNOW, roofs=plane)
        assert of_member(found, "dead_pressure") / PSF == pytest.approx(wanted), carries
    stated = one("role: rafter, carries: roof, roof: r, dead_load: 9 psf", SNOW, roofs=plane)
    assert of_member(stated, "dead_pressure") / PSF == pytest.approx(9)


def test_snow_of_the_roof_plane_outranks_that_of_the_site() -> None:
    """By slope: 0.7 × 1.1 × 30 psf at 12 in 12, of which a slope of 45 degrees keeps 25 / 32.5."""
    rafter, plane = member("role: rafter, carries: roof, roof: r"), PLANE.format('pitch: "12:12"')
    found = frame(SNOW, assumed={"roof_snow": "sloped-roof snow"}, members=rafter, roofs=plane)
    assert of_member(found, "snow_pressure") / PSF == pytest.approx(0.77 * 30 * 25 / 32.5)
    flat = frame(SNOW, assumed={"roof_snow": "sloped-roof snow"}, members=member("role: rafter, carries: roof"))
    assert of_member(flat, "snow_pressure") / PSF == pytest.approx(0.77 * 30)


def test_snow_is_asked_for_of_roofs_alone() -> None:
    assert missing(one("role: rafter, carries: roof", ""), "snow_pressure") == {("site", "", "ground_snow_load")}
    assert of_member(one("role: floor joist, carries: rooms", ""), "snow_pressure") == 0.0


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ("role: floor joist, spacing: 16 in", 16.0),
        ("role: rafter, spacing: 24 in", 24.0),
        ("role: beam, tributary_width: 10 ft", 120.0),
        ("role: beam, tributary_width: 10 ft, spacing: 16 in", 120.0),
        ("role: floor joist, tributary_width: 2 ft, spacing: 16 in", 24.0),
    ],
)
def test_what_width_a_member_carries(lines: str, wanted: float) -> None:
    assert of_member(one(lines), "load_width") / INCH == pytest.approx(wanted)


@pytest.mark.parametrize(
    ("lines", "line"), [("role: deck joist", "spacing"), ("role: header, spacing: 16 in", "tributary_width")]
)
def test_a_width_that_is_not_told_is_asked_for(lines: str, line: str) -> None:
    found = one(f"{lines}, carries: rooms")
    assert missing(found, "load_width") == {("member", "j", line)}
    assert missing(found, "line_dead") == {("member", "j", line)}


def test_further_loads_along_a_member_are_added() -> None:
    lines = "role: beam, carries: rooms, tributary_width: 8 ft"
    also = "line_dead_load: 60 plf, line_live_load: 5 plf, line_snow_load: 70 plf"
    plain, found = one(lines), one(f"{lines}, {also}")
    for name, more in (("dead", 60), ("live", 5), ("snow", 70), ("roof_live", 0)):
        difference = of_member(found, f"line_{name}") - of_member(plain, f"line_{name}")
        assert difference / PLF == pytest.approx(more), name


LINE = (
    "{{id: w, status: existing, form: stud wall, height: 8 ft, loads: [{{id: r, carries: roof, tributary_width: {}}}, "
    "{{id: f, carries: rooms, tributary_width: 6 ft}}]}}"
)


def test_a_header_under_a_bearing_line_takes_all_that_comes_down() -> None:
    """Roof of 13 ft, floor of 6 ft and a wall of 8 ft; further loads come on top."""
    found = one(
        f"{HEADER}, carries: rooms, carries_line: w, line_dead_load: 20 plf", bearing_lines=LINE.format("13 ft")
    )
    for name, wanted in (("dead", 130 + 60 + 96 + 20), ("live", 240), ("snow", 390), ("roof_live", 260)):
        assert of_member(found, f"line_{name}") / PLF == pytest.approx(wanted), name
    both = 306 + 0.75 * (240 + 390)
    assert of_member(found, "service_load") / PLF == pytest.approx(both)
    assert of_member(found, "reaction") / POUND == pytest.approx(both * 3)


def test_a_header_under_a_line_that_is_not_known_asks_for_what_the_line_lacks() -> None:
    """Its own tributary width would be refused beside the line."""
    found = one(f"{HEADER}, carries: rooms, carries_line: w", bearing_lines=LINE.format("unknown"))
    for name in ("line_dead", "line_snow", "bending_use"):
        assert missing(found, name) == {("loaded-area", "r", "tributary_width")}


def test_what_acts_together_comes_to_the_ends() -> None:
    """Dead 15, snow 30 over 2 ft: 90 plf, 12 ft; the roof live load of 20 does not come on top."""
    found = one("role: rafter, carries: roof and ceiling, spacing: 24 in, span: 12 ft")
    assert of_member(found, "service_load") / PLF == pytest.approx(90)
    assert of_member(found, "reaction") / POUND == pytest.approx(540)


# Deflection.


@pytest.mark.parametrize(
    ("lines", "pitch", "wanted"),
    [
        ("carries: rooms", "", 360),
        ("carries: rooms, ceiling_below: gypsum board", "", 360),
        ("carries: habitable attic", "", 360),
        ("carries: deck", "", 360),
        ("carries: attic without storage, ceiling_below: plaster", "", 360),
        ("carries: attic without storage, ceiling_below: gypsum board", "", 240),
        ("carries: ceiling only, ceiling_below: other boards", "", 240),
        ("carries: attic with storage, ceiling_below: none", "", 240),
        ("carries: roof and ceiling, ceiling_below: plaster", "8:12", 360),
        ("carries: roof and ceiling, ceiling_below: gypsum board", "8:12", 240),
        ("carries: roof and ceiling, ceiling_below: none", "8:12", 240),
        ("carries: roof, ceiling_below: none", "3.5:12", 180),
        ("carries: roof, ceiling_below: none", "3:12", 240),
        ("carries: roof, ceiling_below: none", "1:12", 240),
    ],
)
def test_how_far_it_may_bend(lines: str, pitch: str, wanted: float) -> None:
    """IRC table R301.7: rafters over 3 in 12 without a ceiling 180, floors and plaster 360, others 240."""
    roof = PLANE.format(f'pitch: "{pitch}"' if pitch else "overhang: 1 ft")
    found = one(f"role: rafter, {lines}, roof: r", roofs=roof)
    assert of_member(found, "deflection_limit") == wanted


@pytest.mark.parametrize(
    ("lines", "line"),
    [
        ("carries: attic without storage", ("member", "j", "ceiling_below")),
        ("carries: roof", ("member", "j", "ceiling_below")),
        ("carries: roof, ceiling_below: none, roof: r", ("roof-plane", "r", "pitch")),
        ("roof: r", ("member", "j", "carries")),
    ],
)
def test_what_the_limit_of_bending_lacks(lines: str, line: tuple[str, str, str]) -> None:
    found = one(f"role: rafter, {lines}", roofs=PLANE.format("overhang: 1 ft"))
    assert missing(found, "deflection_limit") == {line}


def test_canada_has_no_line_between_flat_and_steep_rafters() -> None:
    found = frame(by=canada(), members=member("role: rafter, carries: roof, ceiling_below: none"))
    assert of_member(found, "deflection_limit") == 180


# Before and after.


def test_joists_whose_attic_is_made_a_room() -> None:
    """From 5 + 10 to 10 + 30 psf; the same joist, so the use of its bending grows as the load."""
    same = 'size: 2x6, lumber: "spf no. 2", spacing: 16 in, span: 9 ft, ceiling_below: gypsum board'
    lines = f"role: floor joist, {same}, carries: habitable attic, was: {{{same}, carries: attic without storage}}"
    found = frame(members=member(lines, status="altered"))
    dead, live = ([of_member(found, f"line_{kind}", state) / PLF for state in STATES] for kind in ("dead", "live"))
    assert dead == pytest.approx([5 * 4 / 3, 10 * 4 / 3])
    assert live == pytest.approx([10 * 4 / 3, 30 * 4 / 3])
    before, after = (of_member(found, "bending_use", state) for state in STATES)
    assert after / before == pytest.approx(40 / 15)
    assert of_member(found, "load_added") == pytest.approx(40 / 15 - 1)
    assert [of_member(found, "deflection_limit", state) for state in STATES] == [240, 360]


def test_what_was_says_is_all_that_is_known_of_before() -> None:
    lines = f"{JOIST}, was: {{carries: attic without storage}}"
    found = frame(members=member(lines, status="altered"))
    assert of_member(found, "dead_pressure", "before") / PSF == pytest.approx(5)
    assert lacking(found, "member", "j", "line_dead", "before") == {("member", "j", "spacing")}
    assert "load_added" not in found.elements[Ref("member", "j")].values
    assert of_member(found, "worst_use") > 0


def test_a_member_that_stays_has_no_more_to_carry_and_a_new_one_no_before() -> None:
    assert of_member(one(JOIST), "load_added") == pytest.approx(0.0)
    new = frame(members=member(JOIST, status="new"))
    assert Ref("member", "j", "before") not in new.elements
    assert value(new, "member", "j", "load_added") is None


def test_an_old_joist_takes_the_added_load_of_the_roof_plane_that_changes() -> None:
    """A rafter of an altered roof: dead load on plan before and after by the pitch of each."""
    roof = '{id: r, status: altered, pitch: "4:12", dead_load: 10 psf, was: {pitch: "12:12", dead_load: 10 psf}}'
    found = one("role: rafter, carries: roof, spacing: 24 in, roof: r", roofs=roof)
    before, after = (of_member(found, "dead_pressure", state) / PSF for state in STATES)
    assert before == pytest.approx(10 * math.sqrt(2))
    assert after == pytest.approx(10 * math.hypot(1, 1 / 3))
    assert of_member(found, "load_added") == pytest.approx((after + 30) / (before + 30) - 1)
