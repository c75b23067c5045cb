"""From member to member: headers on trimmers, beams on posts, tubs on beams; what holds where the plan says nothing."""

from __future__ import annotations

import pytest

from checker.derive.derived import contradicts
from checker.facts import Item, Ref
from tests.derive.framing import FOOT, INCH, POUND, PSI, canada, frame, member, of_member
from tests.derive.test_derivations import ALL
from tests.derive.test_envelope import facts, lacking, number, value

PINE = "size: 2x10, lumber: spf no. 2, carries: rooms, edge_held: true"
HEADER = f"role: header, {PINE}, plies: 3, span: 11 ft, tributary_width: 5 ft"
TRIMMER = f"role: trimmer, {PINE}, plies: 2, span: 14.5 ft, tributary_width: 1 ft"
OPENING = "framed_openings: [{id: o, status: new, trimmers: [t], header: h, header_to_bearing: 4 ft}]"


def with_opening(header: str) -> float:
    """Bending use of a trimmer beside an opening."""
    rows = f"{member(header, 'h')}, {member(TRIMMER, 't')}"
    found = facts(f"framing: {{members: [{rows}], {OPENING}}}")
    return number(found, "member", "t", "bending_use")


def test_a_trimmer_bears_the_end_of_its_header() -> None:
    """50 plf even; a header of 5 ft at 50 psf over 11 ft brings 1,375 lb to 4 ft from the end of 14-1/2 ft."""
    alone, loaded = with_opening(HEADER), with_opening(f"{HEADER}, held_by: [t]")
    reaction = 50 * 14.5 / 2 + 1375 * (14.5 - 4) / 14.5
    at = 4.0  # the even load adds most of its moment here or further in: the greatest lies where shear is nothing
    moment = max(
        reaction * x - 50 * x * x / 2 - (1375 * (x - at) if x > at else 0.0)
        for x in [at + step / 100 for step in range(600)]
    )
    stress = moment * 12 / (2 * 1.5 * 9.25**2 / 6)
    assert alone == pytest.approx(50 * 14.5**2 / 8 * 12 / (2 * 1.5 * 9.25**2 / 6) / (875 * 1.1), rel=1e-3)
    assert loaded == pytest.approx(stress / (875 * 1.1), rel=1e-3)


BEAM = f"role: beam, {PINE}, plies: 3, span: 10 ft, tributary_width: 4 ft, held_by: [p]"
POST = "role: post, size: 4x4, lumber: df-l no. 1, span: 8 ft"


@pytest.mark.parametrize(("more", "pounds"), [("", 1000.0), (", spans: 2", 2500.0), (", spans: 3", 2500.0)])
def test_a_post_under_a_beam(more: str, pounds: float) -> None:
    """50 psf over 4 ft and 10 ft; an inner support of a beam that runs on gets two and a half ends."""
    found = frame(members=f"{member(BEAM + more)}, {member(POST, 'p')}")
    assert number(found, "member", "p", "post_load") / POUND == pytest.approx(pounds)


def test_a_post_on_a_beam() -> None:
    """What the upper post carries comes down in the middle of the lower beam, and half of it to each end."""
    lower = f"role: beam, {PINE}, plies: 3, span: 10 ft, tributary_width: 4 ft"
    upper = f"{POST}, axial_load: 600 lb, held_by: [b]"
    found = frame(members=f"{member(lower, 'b')}, {member(upper, 'p')}")
    assert number(found, "member", "b", "point_load") / POUND == pytest.approx(600)
    assert number(found, "member", "b", "reaction") / POUND == pytest.approx(1000 + 300)
    span = number(found, "member", "b", "allowable_span")
    longer = frame(members=f"{member(lower.replace('span: 10 ft', f'span: {span} m'), 'b')}, {member(upper, 'p')}")
    assert number(longer, "member", "b", "worst_use") == pytest.approx(1.0, abs=0.002)


def test_a_tub_comes_down_on_the_beam_that_holds_its_joists() -> None:
    joists = f"role: floor joist, {PINE}, spacing: 16 in, span: 10 ft, held_by: [b]"
    beam = f"role: beam, {PINE}, plies: 3, span: 10 ft, tributary_width: 4 ft"
    tub = "{id: t, status: new, empty_weight: 300 lb, water: 45 gal, people: 1, joists: j, joists_under: 3}"
    rows = f"{member(joists)}, {member(beam, 'b')}"
    without, found = frame(members=rows, heavy_things=""), frame(members=rows, heavy_things=tub)
    weight = number(found, "heavy-thing", "t", "weight")
    assert number(found, "member", "b", "point_load") == pytest.approx(weight)
    assert number(without, "member", "b", "point_load") == 0.0


def test_a_load_that_is_not_known_makes_the_one_below_unknown() -> None:
    rows = f"{member('role: header, size: 2x10, span: 6 ft, held_by: [t]', 'h')}, {member(TRIMMER, 't')}"
    found = frame(members=rows)
    assert value(found, "member", "t", "bending_use") is None
    assert ("member", "h", "tributary_width") in lacking(found, "member", "t", "bending_use")


def test_a_header_carries_its_line_and_the_floor_beside_it() -> None:
    line = "{id: w, status: existing, form: stud wall, height: 10 ft, wall_weight: 10 psf, loads: []}"
    header = "role: header, size: 2x10, plies: 2, lumber: spf no. 2, span: 6 ft, carries_line: w, edge_held: true"
    alone = frame(members=member(header), bearing_lines=line)
    assert of_member(alone, "line_dead") * FOOT / POUND == pytest.approx(100)
    assert of_member(alone, "bending_use") > 0
    assert value(alone, "member", "j", "governs") is None
    assert lacking(alone, "member", "j", "governs") == {("member", "j", "carries")}
    both = frame(members=member(f"{header}, carries: rooms, tributary_width: 5 ft"), bearing_lines=line)
    assert of_member(both, "line_dead") * FOOT / POUND == pytest.approx(150)
    assert of_member(both, "line_live") * FOOT / POUND == pytest.approx(200)


def test_a_ridge_beam_carries_half_of_both_planes() -> None:
    planes = (
        "{id: n, status: new, pitch: 4:12, run: 12 ft, opposite: s, ridge: beam}, "
        "{id: s, status: new, pitch: 4:12, run: 10 ft, opposite: n, ridge: beam}"
    )
    found = frame(members=member("role: ridge beam, size: 2x12, span: 10 ft, roof: n"), roofs=planes)
    assert of_member(found, "load_width") / FOOT == pytest.approx(11)


# Wet service.


def test_a_wet_joist_in_canada_as_published() -> None:
    """A course on timber design, 38x184 northern select structural, 3.2 m: bending 58.3 %, shear 23.9 %, L/424."""
    joist = (
        "role: floor joist, size: 2x8, lumber: northern select structural, spacing: 406.4 mm, span: 3.2 m, "
        "carries: rooms, dead_load: 0.32 kPa, wet: {wet}"
    )
    found = frame(members=member(joist.format(wet="true")), by=canada())
    assert of_member(found, "bending_use") == pytest.approx(0.583, abs=0.004)
    assert of_member(found, "shear_use") == pytest.approx(0.239, abs=0.004)
    assert of_member(found, "live_deflection_ratio") == pytest.approx(424, abs=2)
    dry = frame(members=member(joist.format(wet="false")), by=canada())
    assert of_member(dry, "bending_use") < 0.5
    for name in ("bending_needed", "allowable_span"):
        assert of_member(found, name) != pytest.approx(of_member(dry, name))


def test_a_wet_post_carries_less() -> None:
    post = "role: post, size: 4x4, lumber: df-l no. 1, span: 8 ft, axial_load: 5000 lb, wet: {wet}"
    wet, dry = (of_member(frame(members=member(post.format(wet=word))), "post_use") for word in ("true", "false"))
    assert wet > 1.05 * dry


# Where the plan says nothing.


@pytest.mark.parametrize(
    ("kind", "name", "wanted", "stated"),
    [
        ("member", "plies", 1.0, "3"),
        ("member", "spans", 1.0, "2"),
        ("member", "overhang", 0.0, "2 ft"),
        ("member", "offset_of_wall", 0.0, "6 in"),
        ("bearing-line", "offset_from_below", 0.0, "4 in"),
    ],
)
def test_what_holds_where_nothing_is_said(kind: str, name: str, wanted: float, stated: str) -> None:
    section = "members" if kind == "member" else "bearing_lines"
    assert number(facts(f"framing: {{{section}: [{{id: j, status: new}}]}}"), kind, "j", name) == wanted
    found = facts(f"framing: {{{section}: [{{id: j, status: new, {name}: {stated}}}]}}")
    fact = found.value(Item(Ref(kind, "j"), name))
    assert fact is not None
    assert fact.origin == "stated"
    assert fact.value != wanted
    assert not contradicts(fact, ALL[kind, name])


def test_plaster_weighs_more_than_board() -> None:
    joist = "role: floor joist, spacing: 16 in, carries: {carries}, ceiling_below: {ceiling}"
    for carries, psf in (("rooms", 15.0), ("ceiling only", 10.0), ("roof and ceiling", 20.0)):
        plaster, board = (
            of_member(frame(members=member(joist.format(carries=carries, ceiling=ceiling))), "dead_pressure")
            for ceiling in ("plaster", "gypsum board")
        )
        assert plaster / (POUND / FOOT**2) == pytest.approx(psf)
        assert (plaster - board) / (POUND / FOOT**2) == pytest.approx(5.0)


def test_a_member_without_load_has_no_use() -> None:
    """Nothing to bend it: no fault, no number."""
    found = frame(members=member(f"role: beam, {PINE}, span: 10 ft, tributary_width: 0 ft"))
    assert value(found, "member", "j", "bending_use") is None
    assert found.faults == ()


def test_no_lumber_is_asked_for_where_the_maker_states_capacities() -> None:
    lvl = (
        "role: beam, product: laminated veneer lumber, width: 1-3/4 in, depth: 14 in, span: 12 ft, carries: rooms, "
        "tributary_width: 8 ft, edge_held: true, moment_capacity: 12100 ft-lb, shear_capacity: 4650 lb, "
        "elastic_modulus: 2000 ksi"
    )
    found = frame(members=member(lvl))
    assert of_member(found, "bending_use") > 0
    assert value(found, "member", "j", "bending_needed") is None


def test_needs_of_an_edge_that_nothing_holds_are_not_told() -> None:
    """How much an unheld edge takes away hangs on the lumber itself."""
    section = "width: 2 in, depth: 10 in, product: sawn lumber"
    beam = f"role: beam, {section}, span: 12 ft, carries: rooms, tributary_width: 4 ft"
    found = frame(members=member(beam))
    assert value(found, "member", "j", "bending_needed") is None
    assert ("member", "j", "edge_held") in lacking(found, "member", "j", "bending_needed")
    held = of_member(frame(members=member(f"{beam}, edge_held: true")), "bending_needed") / PSI
    assert held == pytest.approx(200 * 144 / 8 * 12 / (2 * 100 / 6), rel=0.1)


def test_a_pad_under_a_line_asks_for_its_load() -> None:
    line = "{id: w, status: existing, form: posts, loads: [], stands_on_footing: f}"
    found = frame(
        members=member(f"{POST}, axial_load: 3000 lb", "p"),
        bearing_lines=line,
        footings="{id: f, status: existing, pad: true, width: 24 in, posts: [p]}",
    )
    assert value(found, "footing", "f", "soil_pressure") is None
    assert lacking(found, "footing", "f", "pad_load") == {("footing", "f", "point_load")}


def test_a_cut_deeper_than_its_member_is_told_in_its_own_terms() -> None:
    joist = member("role: floor joist, size: 2x10, cuts: [{id: c, status: new, form: hole, depth: 12 in}]")
    (fault,) = frame(members=joist).faults
    assert fault.symbol == "cut_m"
    assert [each.symbol for each in fault.inputs] == ["cut_m", "depth_m"]
    assert INCH


def test_a_tub_comes_on_top_of_what_the_joists_hold_up() -> None:
    """Joists that hold a header bear its end and the tub: more than under either of the two."""
    joists = f"role: floor joist, {PINE}, spacing: 16 in, span: 10 ft"
    header = "role: header, size: 2x10, span: 4 ft, carries: rooms, tributary_width: 2 ft, held_by: [j]"
    tub = "{id: t, status: new, empty_weight: 300 lb, water: 45 gal, people: 1, joists: j, joists_under: 3}"
    found = frame(members=f"{member(joists)}, {member(header, 'h')}", heavy_things=tub)
    alone = frame(members=member(joists), heavy_things=tub)
    both = number(found, "heavy-thing", "t", "joist_bending_use")
    assert both > number(alone, "heavy-thing", "t", "joist_bending_use")
    assert both > of_member(found, "bending_use")
