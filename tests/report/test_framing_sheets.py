"""Sheets of the frame: spans, take-down, footings and roofs; the same on a terminal, on a page and as data."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.check import check_read
from checker.engine.image import Cache
from checker.facts import Item, Ref
from checker.findings.finding import Result
from checker.plan.reader import plan_from_text
from checker.report.html import html_page
from checker.report.json import json_text
from checker.report.sheets import UNKNOWN, Row, Sheet, sheets_of
from tests.report.test_html import read, words
from tests.report.test_sheet_rows import SOLE, printed, rows, sheet

KEYS = ("spans", "take-down", "footings", "roofs")
PLAN = """\
plan: Heron Yard 3
rules: us
units: {units}
site: {{ground_snow_load: 30 psf}}
levels:
  - {{id: base, name: Cellar, status: existing, use: basement}}
  - {{id: first, name: Ground floor, status: existing, use: storey, below: base}}
framing:
  members:
    - {{id: j, name: Joists of the attic with a name that is far too long for a narrow terminal, status: altered,
       role: floor joist, size: 2x8, lumber: "spf no. 2", spacing: 16 in, span: 12 ft, carries: habitable attic,
       was: {{size: 2x8, spacing: 16 in, span: 12 ft, carries: attic without storage, ceiling_below: plaster}}}}
    - {{id: old, name: Old joists, status: existing, role: floor joist, product: sawn lumber, width: 1-3/4 in,
       depth: 7-3/4 in, spacing: 16 in, span: 13 ft, carries: rooms}}
    - {{id: lvl, status: new, role: beam, product: laminated veneer lumber, width: 1-3/4 in, depth: 11-7/8 in, plies: 2,
       span: 12 ft, tributary_width: 12 ft, carries: rooms, moment_capacity: 8925 ft-lb, shear_capacity: 3950 lb,
       elastic_modulus: 2000 ksi, edge_held: true}}
    - {{id: head, status: new, role: header, size: 2x10, plies: 2, lumber: douglas fir-larch no. 2, span: 6 ft,
       carries_line: w1, carries: rooms, edge_held: true}}
    - {{id: hip, status: existing, role: hip or valley, size: 2x10}}
    - {{id: what, status: existing, size: 2x6}}
    - {{id: gone, status: removed, role: beam, size: 2x12}}
    - {{id: post, status: new, role: post, size: 4x4, span: 8 ft, axial_load: 4000 lb}}
    - {{id: board, status: existing, role: ridge board, size: 2x10}}
  bearing_lines:
    - {{id: w0, name: Cellar wall, status: existing, form: foundation wall, height: 7 ft, wall_weight: 150 psf,
       level: base, stands_on_footing: f, loads: [{{id: a0, carries: rooms, tributary_width: 6 ft}}]}}
    - {{id: w1, name: South wall, status: existing, form: stud wall, height: 8 ft, level: first, stands_on: w0, loads: [
       {{id: a1, carries: roof, tributary_width: 13 ft}}, {{id: a2, status: altered, carries: habitable attic,
       tributary_width: 6 ft, was: {{carries: attic without storage, tributary_width: 6 ft}}}}]}}
    - {{id: new, status: new, form: stud wall, height: 8 ft, level: first, stands_on: w0, loads: []}}
    - {{id: out, status: removed, form: stud wall, height: 8 ft, level: first, stands_on: w0, loads: []}}
    - {{id: vague, status: existing, form: stud wall, height: 8 ft, loads: [{{id: a3, carries: rooms}}]}}
  footings:
    - {{id: f, name: South footing, status: existing, width: 16 in, soil: clay or silt}}
    - {{id: pad, status: new, pad: true, width: 24 in, soil: organic or fill, posts: [post]}}
  roofs:
    - {{id: main, status: altered, pitch: "6:12", run: 12 ft, rafter_spacing: 16 in, ridge: board,
       rafter_depth: 7-1/4 in, seat_cut: 3-1/2 in, was: {{pitch: "9:12", run: 12 ft}}}}
    - {{id: porch, status: new, pitch: "3:12", run: 8 ft, rafter_spacing: 16 in, ridge: bearing wall}}
"""


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """Compiled rules of this run, shared with other tests of the frame."""
    return Cache(Path(tmp_path_factory.getbasetemp()) / "frame-rules")


def checked(text: str, cache: Cache) -> Result:
    """Check a plan."""
    return check_read(plan_from_text(text), cache=cache)


@pytest.fixture(scope="module")
def us(cache: Cache) -> Result:
    """The plan in United States units."""
    return checked(PLAN.format(units="us"), cache)


@pytest.fixture(scope="module")
def metric(cache: Cache) -> Result:
    """The plan in metric units."""
    return checked(PLAN.format(units="metric"), cache)


def cell(of: Sheet, row: str, column: str) -> str:
    """A cell by the name of its row and the heading of its column."""
    found: Row = next(each for name, each in rows(of).items() if name.startswith(row))
    return found.cells[of.columns.index(column) - 1]


# Which there are.


def test_every_trade_of_the_frame_has_its_sheet(us: Result) -> None:
    assert tuple(each.key for each in sheets_of(us)) == KEYS
    for each in sheets_of(us):
        for row in rows(each).values():
            assert len(row.cells) == len(each.columns) - 1 == len(each.units)


@pytest.mark.parametrize(
    ("lines", "key"),
    [
        ("members: [{id: a, status: new}]", "spans"),
        ("bearing_lines: [{id: a, status: new}]", "take-down"),
        ("footings: [{id: a, status: new}]", "footings"),
        ("roofs: [{id: a, status: new}]", "roofs"),
    ],
)
def test_a_sheet_stands_for_itself_and_says_what_it_does_not_know(cache: Cache, lines: str, key: str) -> None:
    result = checked(f"plan: A\nrules: us\nframing: {{{lines}}}\n", cache)
    assert [each.key for each in sheets_of(result)] == [key]
    cells = rows(sheet(result, key))["a"].cells
    assert set(cells) <= {UNKNOWN, "?", "–", ""}
    assert UNKNOWN in cells
    text = printed(result, everything=True)
    assert sheet(result, key).title in text
    assert "None" not in text
    assert "nan" not in text
    assert html_page(result, "contractor")


@pytest.mark.parametrize(
    "more",
    ["", "framing: {members: [], bearing_lines: [], footings: [], roofs: []}\n", "framing: {members: unknown}\n"],
)
def test_a_plan_that_says_nothing_of_the_frame_has_none(cache: Cache, more: str) -> None:
    result = checked(SOLE + more, cache)
    assert sheets_of(result) == ()
    assert "Span schedule" not in printed(result, everything=True)
    assert json.loads(json_text(result))["sheets"] == []


# Spans.


def test_members_stand_under_what_they_do(us: Result) -> None:
    """Posts, ridge boards and what is gone have no span."""
    groups = {title: [row.name for row in those] for title, those in sheet(us, "spans").groups}
    assert {title: len(those) for title, those in groups.items()} == {
        "Floor joists": 2,
        "Beams": 1,
        "Headers": 1,
        "Hips and valleys": 1,
        "Not told what they do": 1,
    }
    assert groups["Beams"] == ["lvl"]
    assert groups["Not told what they do"] == ["what"]


def test_the_schedule_has_what_the_facts_have(us: Result) -> None:
    of = sheet(us, "spans")
    for id_, name in (("j", "Joists"), ("lvl", "lvl"), ("head", "head")):
        for column, attribute in (("bending", "bending_use"), ("shear", "shear_use")):
            fact = us.facts.value(Item(Ref("member", id_), attribute))
            assert fact is not None
            assert isinstance(fact.value, float)
            assert cell(of, name, column) == f"{100 * fact.value:.0f}"
    assert of.units[of.columns.index("bending") - 1] == "%"
    assert [cell(of, name, "size") for name in ("Joists", "Old", "lvl", "head")] == [
        "2x8",
        "1-3/4 × 7-3/4",
        "(2) 1-3/4 × 11-7/8",
        "(2) 2x10",
    ]
    assert cell(of, "Joists", "may span") == "13'-6\""
    assert cell(of, "Joists", "span") == "12'-0\""
    assert re.fullmatch(r"L/5\d\d", cell(of, "Joists", "defl."))
    assert cell(of, "Joists", "limit") == "L/360"
    assert cell(of, "lvl", "governs").startswith("bending")


def test_old_lumber_has_no_use_and_what_it_must_bear(us: Result) -> None:
    of = sheet(us, "spans")
    for column in ("may span", "bending", "shear", "defl.", "governs"):
        assert cell(of, "Old", column) == ("?" if column in ("bending", "shear", "defl.") else UNKNOWN), column
    assert 500 < float(cell(of, "Old", "needs Fb").replace(",", "")) < 1000
    for name in ("hip", "what"):
        assert {cell(of, name, column) for column in of.columns[2:]} == {UNKNOWN, "?"}


def test_the_lines_below_name_the_method(us: Result) -> None:
    said = " ".join(sheet(us, "spans").lines)
    assert "Allowable-stress design of wood" in said
    assert "licensed engineer" in said


# Take-down.


def test_the_take_down_runs_from_the_top(us: Result) -> None:
    of = sheet(us, "take-down")
    titles = [title for title, _ in of.groups]
    assert titles.index("Ground floor") < titles.index("Cellar")
    assert "Storey not told" in titles
    assert [row.name for row in dict(of.groups)["Ground floor"]] == ["South wall", "new", "out"]


def test_the_take_down_by_hand(us: Result) -> None:
    """South wall: 13 ft of roof, 6 ft of attic, 8 ft of wall; the cellar wall with the new and the old wall on it."""
    of = sheet(us, "take-down")
    before, after = 130 + 30 + 96 + 390, 130 + 60 + 96 + 0.75 * (180 + 390)
    assert cell(of, "South wall", "all before") == f"{before:,}"
    assert float(cell(of, "South wall", "all after")) == pytest.approx(after, abs=0.5)
    assert cell(of, "South wall", "added") == f"{100 * (after / before - 1):+.0f} %"
    assert [cell(of, "South wall", column) for column in ("dead", "floors", "roof")] == ["286", "180", "390"]
    dead = 286 + 96 + 60 + 1050
    assert cell(of, "Cellar wall", "dead") == f"{dead:,}"
    assert cell(of, "Cellar wall", "all after") == f"{dead + 0.75 * (180 + 240 + 390):,.0f}"
    assert of.units[:5] == ("plf",) * 5


def test_what_comes_and_what_goes_has_one_side_only(us: Result) -> None:
    of = sheet(us, "take-down")
    assert (cell(of, "new", "all before"), cell(of, "new", "all after")) == ("–", "96")
    assert (cell(of, "out", "all before"), cell(of, "out", "all after")) == ("96", "–")
    assert cell(of, "new", "added") == cell(of, "out", "added") == "–"
    assert cell(of, "vague", "floors") == UNKNOWN
    assert cell(of, "vague", "all after") == UNKNOWN
    assert cell(of, "vague", "added") == "–"


def test_a_change_under_half_a_percent_has_no_minus_zero(cache: Cache) -> None:
    lines = (
        "{{id: w, status: existing, form: stud wall, height: 8 ft, loads: [{{id: a, status: altered, carries: rooms, "
        "tributary_width: {}, was: {{carries: rooms, tributary_width: 10 ft}}}}]}}"
    )
    for width, wanted in (("9.99 ft", "+0 %"), ("10.01 ft", "+0 %"), ("9 ft", "-8 %"), ("11 ft", "+8 %")):
        result = checked(f"plan: A\nrules: us\nframing: {{bearing_lines: [{lines.format(width)}]}}\n"
                         "site: {ground_snow_load: 0 psf}\n", cache)  # fmt: skip
        assert cell(sheet(result, "take-down"), "w", "added") == wanted, width


# Footings and roofs.


def test_footings_before_and_after(us: Result) -> None:
    of = sheet(us, "footings")
    after = 1492 + 0.75 * 810
    assert float(cell(of, "South footing", "soil after").replace(",", "")) == pytest.approx(after * 12 / 16, abs=0.1)
    assert cell(of, "South footing", "allowed") == "1,500"
    assert cell(of, "South footing", "width") == "16"
    assert cell(of, "pad", "soil before") == "–"
    assert cell(of, "pad", "soil after") == "1,000"
    assert cell(of, "pad", "allowed") == UNKNOWN
    assert cell(of, "pad", "width needed") == UNKNOWN


def test_roof_planes_before_and_after(us: Result) -> None:
    """A thrust where nothing carries the ridge: 40 psf at 16 in over 12 ft at 6 in 12."""
    of = sheet(us, "roofs")
    assert (cell(of, "main", "pitch before"), cell(of, "main", "after")) == ("9:12", "6:12")
    assert cell(of, "porch", "pitch before") == "–"
    assert cell(of, "main", "thrust") == "640"
    assert cell(of, "porch", "thrust") == "–"
    assert cell(of, "main", "snow") == "30"
    assert cell(of, "porch", "plumb cut") == UNKNOWN


# Units.


def test_metric_is_the_same_house(us: Result, metric: Result) -> None:
    """Percentages and pitches stay; loads and lengths are the same in other units."""
    one, other = sheet(us, "take-down"), sheet(metric, "take-down")
    assert set(other.units[:5]) == {"kN/m"}
    for column in ("dead", "floors", "roof", "all before", "all after"):
        plf, metres = (float(cell(of, "Cellar wall", column).replace(",", "")) for of in (one, other))
        assert metres == pytest.approx(plf * 0.0145939, abs=0.02)
    assert cell(one, "Cellar wall", "added") == cell(other, "Cellar wall", "added")
    spans = sheet(metric, "spans")
    assert cell(spans, "Old", "size") == "44 × 197"
    assert cell(spans, "Joists", "bending") == cell(sheet(us, "spans"), "Joists", "bending")
    assert spans.units[spans.columns.index("needs Fb") - 1] == "MPa"
    footings = sheet(metric, "footings")
    assert footings.units[footings.columns.index("soil after") - 1] == "kPa"


def test_metric_prints_no_feet(metric: Result) -> None:
    text = " ".join(" ".join(row.cells) for each in sheets_of(metric) for row in rows(each).values())
    assert not re.search(r"\bpsf\b|\bplf\b|\bpsi\b|\d'|\bin\b", text)


# The same everywhere.


@settings(deadline=None, max_examples=10)
@given(st.integers(min_value=80, max_value=170), st.booleans())
def test_a_terminal_shows_every_row_within_its_width(us: Result, width: int, everything: bool) -> None:
    text = printed(us, width, everything)
    assert max(map(len, text.splitlines())) <= width
    joined = words(text)
    for key in KEYS:
        of = sheet(us, key)
        assert of.title in text
        for name, row in rows(of).items():
            assert name.split()[0] in joined
            for column, shown in zip(of.columns[1:], row.cells, strict=True):
                assert column in of.spare or shown in joined, (key, name, column)


def test_a_metric_terminal_is_as_narrow(metric: Result) -> None:
    assert max(map(len, printed(metric, 80, everything=True).splitlines())) <= 80


def test_page_and_data_have_every_row(us: Result) -> None:
    tree = read(html_page(us, "contractor"))
    names = [words(each.text) for each in tree.named("th") if each.attributes.get("scope") == "row"]
    cells = {words(each.text) for each in tree.named("td")}
    data = {each["key"]: each for each in json.loads(json_text(us))["sheets"]}
    for key in KEYS:
        of = sheet(us, key)
        assert words(tree.by_id(f"sheet-{key}-title").text) == of.title
        assert data[key]["columns"] == list(of.columns)
        assert data[key]["units"] == list(of.units)
        assert [(row["group"], row["name"], row["cells"]) for row in data[key]["rows"]] == [
            (title, row.name.strip(), list(row.cells)) for title, those in of.groups for row in those
        ]
        for name, row in rows(of).items():
            assert name in names
            assert set(row.cells) <= cells


def test_a_page_escapes_the_names_of_members(cache: Cache) -> None:
    page = html_page(checked(PLAN.replace("name: Old", "name: <b>Old</b>").format(units="us"), cache), "contractor")
    assert "<b>Old</b>" not in page
    assert "&lt;b&gt;Old&lt;/b&gt; joists" in page
