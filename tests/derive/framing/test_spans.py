"""Strength of members from plan lines: uses, the inverse, maker's capacities; printed tables through the whole way."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.framing.timber import Lumber
from checker.derive.derived import contradicts, facts_of
from checker.facts import Facts, Item, Ref
from checker.plan.reader import plan_from_text
from checker.ruleset.catalogue import AdoptedEntry
from tests.derive.framing import FOOT, INCH, PSI, canada, frame, member, of_member
from tests.derive.framing.test_members import CHECKS, HEADER, JOIST, PLANE, SNOW, missing, one
from tests.derive.test_derivations import ALL
from tests.derive.test_envelope import us, value
from tests.published.framing_inputs import DRESSED_IN, GRADES, SPECIES, inches
from tests.published.test_span_tables import MISSES, SPANS

few = settings(deadline=None, max_examples=15)
LVL = (
    "role: beam, product: laminated veneer lumber, width: 1-3/4 in, depth: 11-7/8 in, plies: 2, span: 12 ft, "
    "tributary_width: 12 ft, carries: rooms, edge_held: true"
)
MAKER = {
    "moment_capacity": "moment_capacity: 8925 ft-lb",
    "shear_capacity": "shear_capacity: 3950 lb",
    "elastic_modulus": "elastic_modulus: 2000 ksi",
}


# How hard it works.


def test_a_joist_by_hand() -> None:
    """2 x 8 at 16 in, 50 psf over 12 ft: 875 psi × 1.2 × 1.15; shear 135 psi; E 1400 ksi."""
    found = one(JOIST)
    load, modulus, area, inertia = 50 * 16 / 12, 1.5 * 7.25**2 / 6, 1.5 * 7.25, 1.5 * 7.25**3 / 12
    bending = load * 12**2 / 8 * 12 / modulus / (875 * 1.2 * 1.15)
    live = 40 * 16 / 12 / 12
    assert of_member(found, "bending_use") == pytest.approx(bending)
    assert of_member(found, "shear_use") == pytest.approx(1.5 * load * 6 / area / 135)
    sag = 5 * live * 144**4 / (384 * 1.4e6 * inertia)
    assert of_member(found, "live_deflection_ratio") == math.floor(144 / sag)
    assert of_member(found, "total_deflection_ratio") == math.floor(144 / sag * 0.8)
    assert of_member(found, "worst_use") == pytest.approx(max(bending, 360 * sag / 144))
    assert value(found, "member", "j", "governs") == "live deflection"
    assert value(found, "member", "j", "combination") == "L"


def test_snow_lasts_less_long_than_people() -> None:
    """Dead 10, snow 30: the strength counts for 1.15; the roof live load of 20 for 1.25 is less."""
    found = one('role: rafter, size: 2x8, lumber: "spf no. 2", spacing: 24 in, span: 10 ft, carries: roof, '
                'ceiling_below: gypsum board')  # fmt: skip
    wanted = 80 * 100 / 8 * 12 / (1.5 * 7.25**2 / 6) / (875 * 1.2 * 1.15 * 1.15)
    assert of_member(found, "bending_use") == pytest.approx(wanted)
    assert value(found, "member", "j", "combination") == "D + S"


def test_members_share_up_to_24_inches() -> None:
    """Beyond that one joist has not the help of its neighbours, of 15 %."""
    near, far = (of_member(one(JOIST.replace("16 in", spacing)), "bending_use") for spacing in ("24 in", "25 in"))
    assert far / near == pytest.approx(25 / 24 * 1.15)


def test_an_edge_that_nothing_holds_weakens_a_beam() -> None:
    lines = HEADER.replace("6 ft, edge_held: true", "12 ft") + ", carries: rooms, tributary_width: 3 ft"
    uses = [
        of_member(one(f"{lines}, {more}"), "bending_use")
        for more in ("edge_held: true", "unbraced_length: 4 ft", "edge_held: false", "unbraced_length: 12 ft")
    ]
    assert uses[0] < uses[1] < uses[2]
    assert uses[2] == pytest.approx(uses[3])
    assert of_member(one(lines), "bending_use") == pytest.approx(uses[2])


def test_the_deck_holds_joists_unless_said_otherwise() -> None:
    said = [of_member(one(f"{JOIST}{more}"), "bending_use") for more in ("", ", edge_held: true", ", edge_held: false")]
    assert said[0] == pytest.approx(said[1])
    assert said[2] > said[0]


def test_bearing_by_hand() -> None:
    """Reaction 400 lb on 1-1/2 in × 1-1/2 in of 425 psi."""
    assert missing(one(JOIST), "bearing_use") == {("member", "j", "bearing_length")}
    found = one(f"{JOIST}, bearing_length: 1-1/2 in")
    assert of_member(found, "bearing_use") == pytest.approx(400 / (1.5 * 1.5 * 425))


def test_jack_studs_give_the_bearing() -> None:
    """Two jacks are 3 in, or 76 mm; a stated length that is far off contradicts them."""
    lines = f"{HEADER}, carries: rooms, tributary_width: 4 ft, jack_studs: 2"
    assert of_member(one(lines), "bearing_length") / INCH == pytest.approx(3)
    metric = frame(by=canada(), members=member("role: header, jack_studs: 2"))
    assert of_member(metric, "bearing_length") == pytest.approx(0.076)
    for length, against in (("3-1/2 in", False), ("4-1/2 in", True)):
        found = one(f"{lines}, bearing_length: {length}").value(Item(Ref("member", "j"), "bearing_length"))
        assert found is not None
        assert contradicts(found, ALL["member", "bearing_length"]) is against
    without = one(lines.replace("jack_studs: 2", "jack_studs: 0"))
    assert value(without, "member", "j", "bearing_length") is None


@pytest.mark.parametrize(("overhang", "wanted"), [("2 ft", 6.0), ("0 ft", None)])
def test_backspan(overhang: str, wanted: float | None) -> None:
    assert value(one(f"{JOIST}, overhang: {overhang}"), "member", "j", "backspan_ratio") == pytest.approx(wanted)


@pytest.mark.parametrize("role", ["post", "stud", "ridge board"])
def test_what_stands_upright_is_no_beam(role: str) -> None:
    found = one(JOIST.replace("floor joist", role) + ", tributary_width: 4 ft")
    for name in (*CHECKS, "allowable_span", "least_depth", "bending_needed"):
        assert missing(found, name) == set(), name


# The inverse.


MEASURED = (
    "role: floor joist, product: sawn lumber, width: 2 in, depth: 7-3/4 in, spacing: 16 in, span: 13 ft, carries: rooms"
)


def with_lumber(values: Lumber, lines: str) -> Facts:
    """The facts of a joist of a lumber that no set has."""
    entry = AdoptedEntry("just so", "lumber", "", "just so", {}, "a test", "read", design=values)
    catalogue = {**us().catalogue, "lumber": {"just so": entry}}
    return facts_of(
        plan_from_text(f"plan: A house\nframing: {{members: [{member(f'{lines}, lumber: just so')}]}}\n"),
        us().assumed(),
        catalogue,
    )


def test_lumber_that_nobody_knows_leaves_the_uses_open_and_says_what_it_must_bear() -> None:
    """A joist of 2 × 7-3/4 in with 50 psf over 13 ft: 1408 ft-lb each; 8 in at most counts as a 10, so 1.1."""
    found = one(MEASURED)
    for name in (*CHECKS, "allowable_span", "least_depth"):
        assert missing(found, name) == {("member", "j", "lumber")}, name
    needed = 50 * 16 / 12 * 13**2 / 8 * 12 / (2 * 7.75**2 / 6) / (1.1 * 1.15)
    assert of_member(found, "bending_needed") / PSI == pytest.approx(needed, rel=1e-6)
    sag = 5 * (40 * 16 / 12 / 12) * 156**4 / (384 * 2 * 7.75**3 / 12)
    assert of_member(found, "stiffness_needed") / PSI == pytest.approx(sag / (156 / 360))
    assert of_member(found, "shear_needed") / PSI == pytest.approx(1.5 * 50 * 16 / 12 * 6.5 / (2 * 7.75))


@pytest.mark.parametrize("name", ["bending", "shear", "stiffness"])
@pytest.mark.parametrize(
    "lines", [MEASURED, MEASURED.replace("7-3/4 in", "11-1/4 in").replace("16 in", "30 in").replace("13", "20")]
)
def test_lumber_with_just_the_value_needed_does_and_one_psi_less_does_not(name: str, lines: str) -> None:
    found = one(lines)
    strong = {"bending_pa": 5000 * PSI, "shear_pa": 900 * PSI, "stiffness_pa": 9e6 * PSI}
    strong[f"{name}_pa"] = of_member(found, f"{name}_needed")
    worst = []
    for less in (0.0, PSI):
        values: dict[str, Any] = {**strong, f"{name}_pa": strong[f"{name}_pa"] - less}
        lumber = Lumber("just so", bearing_pa=500 * PSI, stiffness_low_pa=4e6 * PSI, sizes="dimension", **values)
        worst.append(of_member(with_lumber(lumber, lines), "worst_use"))
    assert worst[0] == pytest.approx(1.0, rel=1e-9)
    assert worst[1] > 1.0


@pytest.mark.parametrize("carries", ["rooms", "sleeping rooms", "attic with storage"])
def test_the_least_depth_does_and_the_next_smaller_does_not(carries: str) -> None:
    """Every size under the same floor: those from the least depth on do, all others do not."""
    sizes = ("2x4", "2x6", "2x8", "2x10", "2x12", "2x14", "2x16")
    seen = set()
    for span in (6, 9, 12, 14, 18):
        rows = [
            member(f"role: floor joist, size: {size}, lumber: hem-fir no. 2, spacing: 16 in, span: {span} ft, "
                   f"carries: {carries}, ceiling_below: plaster", size)
            for size in sizes
        ]  # fmt: skip
        found = frame(members=", ".join(rows))
        (least,) = {round(of_member(found, "least_depth", id_=size) / INCH, 6) for size in sizes}
        seen.add(least)
        for size in sizes:
            depth = of_member(found, "actual_depth", id_=size) / INCH
            assert (of_member(found, "worst_use", id_=size) <= 1.0) is (depth >= least - 1e-6), (span, size)
    assert len(seen) > 2


def test_no_size_of_the_same_width_may_be_enough() -> None:
    found = one(JOIST.replace("12 ft", "40 ft"))
    assert value(found, "member", "j", "least_depth") is None
    assert of_member(found, "worst_use") > 1


SPANNING = {
    "joist": 'role: floor joist, size: 2x10, lumber: "spf no. 2", spacing: 19.2 in, carries: rooms',
    "stiff": 'role: floor joist, size: 2x8, lumber: "spf ss", spacing: 12 in, carries: rooms',
    "depth": "role: floor joist, size: 2x12, lumber: southern pine no. 2, spacing: 24 in, carries: rooms",
    "rafter": "role: rafter, size: 2x6, lumber: hem-fir no. 2, spacing: 24 in, carries: roof and ceiling, "
              "ceiling_below: gypsum board",
    "bearing": "role: rafter, size: 2x12, lumber: hem-fir no. 1, spacing: 24 in, carries: roof and ceiling, "
               "ceiling_below: gypsum board, bearing_length: 1 in",
    "header": "role: header, size: 2x10, plies: 3, lumber: hem-fir no. 2, tributary_width: 14 ft, carries: rooms, "
              "edge_held: true",
    "held here and there": "role: beam, size: 2x12, plies: 2, lumber: hem-fir no. 2, tributary_width: 5 ft, "
                           "carries: rooms, unbraced_length: 4 ft",
    "not held": "role: beam, size: 2x12, plies: 2, lumber: hem-fir no. 2, tributary_width: 5 ft, carries: rooms",
    "engineered": f"{LVL}, {', '.join(MAKER.values())}".replace("span: 12 ft, ", ""),
}  # fmt: skip


@pytest.mark.parametrize("name", SPANNING)
def test_at_the_span_that_it_may_have_a_member_is_just_used_up(name: str) -> None:
    """Whatever span the plan has: a beam that nothing holds buckles the sooner the longer it is."""
    found = one(f"{SPANNING[name]}, span: 7 ft")
    longest = of_member(found, "allowable_span")
    assert longest != pytest.approx(7 * FOOT)
    at = one(f"{SPANNING[name]}, span: {longest:.9f} m")
    assert of_member(at, "worst_use") == pytest.approx(1.0, rel=1e-5)
    assert of_member(at, "allowable_span") == pytest.approx(longest, rel=1e-5)
    assert of_member(one(f"{SPANNING[name]}"), "allowable_span") == pytest.approx(longest, rel=1e-5)


# Engineered members.


def test_a_beam_by_the_capacities_that_its_maker_states() -> None:
    """600 plf over 12 ft on two plies: 10,800 ft-lb, 3,600 lb; E 2000 ksi."""
    found = one(f"{LVL}, {', '.join(MAKER.values())}")
    assert of_member(found, "bending_use") == pytest.approx(600 * 144 / 8 / (2 * 8925))
    assert of_member(found, "shear_use") == pytest.approx(3600 / (2 * 3950))
    inertia = 3.5 * 11.875**3 / 12
    assert of_member(found, "live_deflection_ratio") == math.floor(384 * 2e6 * inertia / (5 * 40 * 144**3))
    assert missing(found, "least_depth") == {("member", "j", "lumber")}


@pytest.mark.parametrize("left_out", MAKER)
def test_each_capacity_of_an_engineered_beam_is_asked_for(left_out: str) -> None:
    found = one(f"{LVL}, {', '.join(line for name, line in MAKER.items() if name != left_out)}")
    for name in (*CHECKS, "allowable_span"):
        assert missing(found, name) == {("member", "j", left_out)}, name


def test_capacities_of_a_maker_count_as_they_are_in_limit_states() -> None:
    lines = LVL.replace("12 ft", "4 m").replace("1-3/4 in", "44 mm").replace("11-7/8 in", "302 mm")
    rows = member(f"{lines}, moment_capacity: 24 kN-m, shear_capacity: 26 kN, elastic_modulus: 13800 MPa")
    found = frame(by=canada(), members=rows)
    load = (1.25 * 0.5 + 1.5 * 1.9) * 4
    assert of_member(found, "bending_use") == pytest.approx(load * 4**2 / 8 / (2 * 24))
    assert of_member(found, "shear_use") == pytest.approx(load * 2 / (2 * 26))


@pytest.mark.parametrize("product", ["I-joist", "truss", "steel"])
def test_what_is_no_rectangle_is_not_computed_and_nothing_is_asked_for(product: str) -> None:
    lines = LVL.replace("laminated veneer lumber", product)
    found = one(f"{lines}, {', '.join(MAKER.values())}")
    for name in (*CHECKS, "allowable_span"):
        assert missing(found, name) == set(), name


# Printed tables, from plan lines to the span.


USES = {
    ("R502.3.1(1)", "10"): "role: floor joist, carries: sleeping rooms",
    ("R502.3.1(2)", "10"): "role: floor joist, carries: rooms",
    ("R502.3.1(2)", "20"): "role: floor joist, carries: rooms, dead_load: 20 psf",
    ("R802.4.1(3)", "10"): "role: rafter, carries: roof, ceiling_below: none, roof: r, bearing_length: 1.834 in",
    ("R802.4.1(4)", "10"): "role: rafter, carries: roof and ceiling, ceiling_below: gypsum board, dead_load: 10 psf, "
                           "roof: r, bearing_length: 1.834 in",
    ("R802.5.1(1)", "5"): "role: ceiling joist, carries: attic without storage, ceiling_below: gypsum board",
    ("R802.5.1(2)", "10"): "role: ceiling joist, carries: attic with storage, ceiling_below: gypsum board",
}  # fmt: skip


def cells(name: str, dead: str) -> Iterator[tuple[str, str, str, str]]:
    """Cells of a table with a dead load, at 16 and 24 in: spacing, lumber, size, span as printed."""
    for block, rows in SPANS[name]["cells"].items():
        load, spacing = block.removeprefix("DL").split(" @")
        if load != dead or spacing not in ("16", "24"):
            continue
        for short, printed in rows.items():
            for size, span in printed.items():
                if (block, short, size) not in MISSES.get(name, {}) and span != "NB":
                    yield spacing, short, size, span


@pytest.mark.parametrize(("table", "dead"), USES)
def test_cells_of_the_code_tables_through_the_whole_way(table: str, dead: str) -> None:
    """Every cell at 16 and at 24 in, from what a plan says; the tables round to the inch."""
    wanted: dict[str, tuple[str, str, str, str]] = {}
    rows = []
    for place, (spacing, short, size, span) in enumerate(cells(table, dead)):
        species, grade = short.rsplit(" ", 1)
        wanted[f"j{place}"] = (spacing, short, size, span)
        lumber = f"lumber: {SPECIES[species]} {GRADES[grade]}, size: {size}, spacing: {spacing} in"
        rows.append(member(f"{USES[table, dead]}, {lumber}", f"j{place}"))
    assert len(rows) > 60
    found = frame(SNOW, members=", ".join(rows), roofs=PLANE.format('pitch: "6:12"'))
    far = {
        cell: of_member(found, "allowable_span", id_=id_) / INCH
        for id_, cell in wanted.items()
        if abs(of_member(found, "allowable_span", id_=id_) / INCH - inches(cell[3])) > 1.0
    }
    assert far == {}


def test_two_cells_that_everybody_knows() -> None:
    """Spruce-pine-fir no. 2 at 16 in: 2 x 8 under bedrooms 13-6, 2 x 10 under other rooms 15-5."""
    for size, carries, feet, inch in (("2x8", "sleeping rooms", 13, 6), ("2x10", "rooms", 15, 5)):
        found = one(JOIST.replace("2x8", size).replace("carries: rooms", f"carries: {carries}"))
        assert of_member(found, "allowable_span") / INCH == pytest.approx(12 * feet + inch, abs=1.0)
        assert of_member(found, "actual_depth") / INCH == pytest.approx(DRESSED_IN[size])


# Limit states.


def test_a_joist_in_canada_by_hand() -> None:
    """38 × 235 mm at 400 mm, 4.4 m: 1.25 × 0.5 + 1.5 × 1.9 kPa; 0.9 × 11.8 MPa × 1.1 × 1.4; E 9500 MPa."""
    lines = 'role: floor joist, size: 38x235, lumber: "s-p-f no. 2", spacing: 400 mm, span: 4.4 m, carries: rooms'
    found = frame(by=canada(), members=member(lines))
    load = (1.25 * 0.5 + 1.5 * 1.9) * 0.4
    modulus, inertia = 38 * 235**2 / 6, 38 * 235**3 / 12
    assert of_member(found, "bending_use") == pytest.approx(
        load * 4.4**2 / 8 * 1e6 / (0.9 * 11.8 * 1.1 * 1.4 * modulus), rel=1e-6
    )
    assert of_member(found, "live_deflection_ratio") == math.floor(384 * 9500 * inertia / (5 * 1.9 * 0.4 * 4400**3))
    assert value(found, "member", "j", "combination") == "L + S"


def test_snow_on_a_rafter_in_canada() -> None:
    """0.55 × 2.0 + 0.4 kPa of snow, factor 1.5, with 1.25 × 0.5 kPa."""
    lines = 'role: rafter, size: 38x184, lumber: "s-p-f no. 2", spacing: 600 mm, span: 3 m, carries: roof'
    rows = member(f"{lines}, ceiling_below: none")
    found = frame("site: {snow_load_ss: 2.0 kPa, rain_load_sr: 0.4 kPa}", by=canada(), members=rows)
    assert of_member(found, "snow_pressure") == pytest.approx(1500)
    load = (1.25 * 0.5 + 1.5 * 1.5) * 0.6
    assert of_member(found, "bending_use") == pytest.approx(
        load * 9 / 8 * 1e6 / (0.9 * 11.8 * 1.2 * 1.4 * 38 * 184**2 / 6), rel=1e-6
    )
    assert value(found, "member", "j", "combination") == "1.25 D + 1.5 S + 1.0 L"


# Properties.


@few
@given(
    st.integers(min_value=48, max_value=240),
    st.integers(min_value=1, max_value=60),
    st.integers(min_value=5, max_value=60),
    st.integers(min_value=1, max_value=40),
)
def test_longer_and_heavier_never_works_less(span: int, longer: int, load: int, more: int) -> None:
    lines = 'role: floor joist, size: 2x10, lumber: "spf no. 2", spacing: 16 in, carries: rooms'
    rows = ", ".join(
        member(f"{lines}, span: {span_} in, dead_load: {load_} psf", f"j{place}")
        for place, (span_, load_) in enumerate([(span, load), (span + longer, load), (span, load + more)])
    )
    found = frame(members=rows)
    for name in ("bending_use", "shear_use", "bending_needed", "shear_needed", "worst_use", "reaction"):
        base, long, heavy = (of_member(found, name, id_=f"j{place}") for place in range(3))
        assert long > base, name
        assert heavy >= base, name
    assert of_member(found, "allowable_span", id_="j2") <= of_member(found, "allowable_span", id_="j0")
    spans = [of_member(found, "allowable_span", id_=f"j{place}") for place in range(2)]
    assert spans[0] == pytest.approx(spans[1])


@few
@given(st.integers(min_value=1, max_value=5))
def test_plies_share_alike(plies: int) -> None:
    lines = HEADER.replace("plies: 2", "plies: {}") + ", carries: rooms, tributary_width: 5 ft"
    found = frame(members=f"{member(lines.format(1), 'a')}, {member(lines.format(plies), 'b')}")
    for name in ("bending_use", "shear_use"):
        single, several = (of_member(found, name, id_=id_) for id_ in "ab")
        assert single / several == pytest.approx(plies)
    needed = [of_member(found, "stiffness_needed", id_=id_) for id_ in "ab"]
    assert needed[0] / needed[1] == pytest.approx(plies)
