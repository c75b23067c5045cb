"""Rows of calculation sheets: sums, units, what is not known; the same on a terminal, on a page and as data."""

from __future__ import annotations

import io
import json
import re

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
from checker.report.terminal import print_report
from checker.units import Dimension, show
from tests.report.test_html import read, words

PLAN = """\
plan: Lantern Lane 5
rules: us
units: {units}
site: {{heating_design_temperature: 0 F, altitude: 0 ft}}
house: {{air_changes_50_target: 4 /h, was: {{tightness: "leaky, before 1945"}}}}
levels:
  - {{id: up, name: Upper floor, status: existing, ceiling_height: 8 ft, walls: w, ceiling: c, floor: f}}
rooms:
  - {{id: den, name: Den with a name that is far too long for a narrow terminal, status: existing, level: up,
     use: family room, heated: true, ceiling: level, ceiling_height: 8 ft, floor_area: 150 ft2, from_west: 0 ft,
     from_south: 0 ft, size_west_east: 15 ft, size_south_north: 10 ft, windows: [big], doors: [], skylights: []}}
  - {{id: bed, status: new, level: up, use: bedroom, heated: true, ceiling: level, ceiling_height: 8 ft,
     floor_area: 100 ft2, from_west: 15.4 ft, from_south: 0 ft, size_west_east: 10 ft, size_south_north: 10 ft,
     windows: [], doors: [], skylights: []}}
  - {{id: store, status: existing, level: up, heated: false, from_west: 0 ft, from_south: 30 ft, size_west_east: 5 ft,
     size_south_north: 5 ft}}
openings:
  windows:
    - {{id: big, status: replaced, width: 4 ft, height: 5 ft, u_factor: U-0.25,
       was: {{width: 4 ft, height: 5 ft, archetype: "single pane, wood sash"}}}}
  doors: []
  skylights: []
envelope:
  assemblies:
    - {{id: w, status: existing, part: wall, archetype: "frame wall before 1945, empty"}}
    - {{id: c, status: existing, part: ceiling under attic, u_factor: U-0.05}}
    - {{id: f, status: existing, part: floor, u_factor: U-0.2}}
heating:
  ventilators: [{{id: v, status: new, type: exhaust only, airflow: 50 cfm, run_share: 100 %}}]
  heaters:
    - {{id: furnace, status: existing, type: furnace, fuel: natural gas, output: 60000 Btu/h, output_low: 40000 Btu/h,
       airflow: 1000 cfm, blower_pressure: 0.5 inwc, component_pressure: 0.25 inwc, filters: []}}
  ducts:
    - {{id: trunk, status: existing, role: supply, heater: furnace, shape: rectangular, width: 14 in, height: 8 in,
       material: sheet metal, length: 20 ft, fittings_length: 30 ft}}
    - {{id: to-den, status: existing, role: supply, fed_by: trunk, room: den, shape: round, diameter: 8 in,
       material: sheet metal, length: 15 ft, fittings_length: 60 ft}}
    - {{id: to-bed, status: new, role: supply, fed_by: trunk, room: bed, shape: round, diameter: 6 in,
       material: flexible, length: 25 ft, fittings_length: 60 ft}}
    - {{id: back, status: existing, role: return, heater: furnace, level: up, shape: rectangular, width: 20 in,
       height: 8 in, material: sheet metal, length: 10 ft, fittings_length: 30 ft}}
"""
SOLE = "plan: A stair\nrules: us\nstairs: [{id: s, status: new, flights: [{id: f, risers: 13}]}]\n"


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """Where compiled rules are kept."""
    return Cache(tmp_path_factory.mktemp("cache"))


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


def sheet(result: Result, key: str) -> Sheet:
    """A sheet by its key."""
    return {each.key: each for each in sheets_of(result)}[key]


def rows(of: Sheet) -> dict[str, Row]:
    """The rows of a sheet by name."""
    return {row.name.strip(): row for _, those in of.groups for row in those}


def amount(cell: str) -> float:
    """The number of a cell."""
    return float(cell.replace(",", ""))


def near(*parts: float) -> float:
    """How far a sum of rounded numbers may lie off."""
    return 0.5 * (len(parts) + 1)


# Columns and sums.


def test_which_sheets_there_are(us: Result) -> None:
    assert [(each.key, each.detailed) for each in sheets_of(us)] == [
        ("assemblies", False),
        ("heat-loss", False),
        ("surfaces", True),
        ("ducts", False),
    ]
    for each in sheets_of(us):
        for row in rows(each).values():
            assert len(row.cells) == len(each.columns) - 1 == len(each.units)


def test_a_room_s_parts_add_to_its_loss_and_the_rooms_to_the_house(us: Result) -> None:
    table = rows(sheet(us, "heat-loss"))
    names = [name for name in table if name not in ("Ventilation", "The house")]
    assert names == ["Den with a name that is far too long for a narrow terminal", "bed"]
    for name in names:
        *parts, _, after, _ = table[name].cells
        assert sum(map(amount, parts)) == pytest.approx(amount(after), abs=near(1, 2, 3))
    losses = [amount(table[name].cells[4]) for name in (*names, "Ventilation")]
    assert sum(losses) == pytest.approx(amount(table["The house"].cells[4]), abs=near(*losses))
    assert table["The house"].level == 1
    fact = us.facts.value(Item(Ref("house", ""), "heat_loss"))
    assert fact is not None
    assert isinstance(fact.value, float)
    assert amount(table["The house"].cells[4]) == pytest.approx(fact.value / 0.29307107, abs=1)


def test_surfaces_of_a_room_add_to_its_columns(us: Result) -> None:
    (_, den), *_ = [group for group in sheet(us, "surfaces").groups if group[0].startswith("Den")]
    surfaces = [amount(row.cells[5]) for row in den if not row.name.startswith("window")]
    openings = [amount(row.cells[5]) for row in den if row.name.startswith("window")]
    room = rows(sheet(us, "heat-loss"))["Den with a name that is far too long for a narrow terminal"]
    assert sum(surfaces) == pytest.approx(amount(room.cells[0]), abs=near(*surfaces))
    assert sum(openings) == pytest.approx(amount(room.cells[1]), abs=near(*openings))
    assert den[0].cells[0] == "w"


def test_a_new_room_has_no_before_and_an_unheated_one_no_row(us: Result) -> None:
    table = rows(sheet(us, "heat-loss"))
    assert table["bed"].cells[3] == "–"
    assert "store" not in table
    assert amount(table["The house"].cells[3]) > amount(table["The house"].cells[4]) / 2


def test_the_spread_stands_around_the_loss(us: Result) -> None:
    """The wall is known by its look alone; where all is known no spread is printed."""
    for name, row in rows(sheet(us, "heat-loss")).items():
        if name == "Ventilation":
            assert row.cells[5] == ""
            continue
        low, high = map(amount, row.cells[5].split(" to "))
        assert low < amount(row.cells[4]) < high


def test_nothing_is_spread_where_all_is_known(cache: Cache) -> None:
    known = PLAN.replace('archetype: "frame wall before 1945, empty"', "u_factor: U-0.1").format(units="us")
    assert {row.cells[5] for row in rows(sheet(checked(known, cache), "heat-loss")).values()} == {""}


def test_the_lines_below_say_what_it_rests_on(us: Result) -> None:
    said = " ".join(sheet(us, "heat-loss").lines)
    assert "Outdoors 0 °F; indoors 70 °F" in said
    assert "Air leakage before the work: 10.5 air changes/h at 50 Pa, class of tightness." in said
    assert "Air leakage after the work: 4 air changes/h at 50 Pa, target." in said
    ratio, low = (us.facts.value(Item(Ref("heater", "furnace"), name)) for name in ("size_ratio", "low_stage_ratio"))
    assert ratio is not None
    assert low is not None
    assert f"output 60,000 Btu/h, {ratio.value:.2f} times the loss; its low stage {low.value:.2f} times." in said


def test_the_schedule_of_ducts_runs_outward(us: Result) -> None:
    groups = sheet(us, "ducts").groups
    assert [(title, [row.name for row in those]) for title, those in groups] == [
        ("Supplies", ["trunk", "  to-den", "  to-bed"]),
        ("Returns", ["back"]),
    ]
    table = rows(sheet(us, "ducts"))
    carried = [amount(table[name].cells[2]) for name in ("to-den", "to-bed")]
    assert sum(carried) == pytest.approx(amount(table["trunk"].cells[2]), abs=near(*carried))
    assert table["trunk"].cells[2] == table["back"].cells[2] == "1,000"
    assert table["to-den"].cells[:2] == ("den", "8 in")
    assert table["trunk"].cells[1] == "14 × 8 in"
    assert table["back"].cells[0] == "up"
    line = sheet(us, "ducts").lines[0]
    assert "airflow 1,000 cfm (maker's table)" in line
    assert "pressure left for ducts 0.25 in. w.c." in line


def test_a_circle_that_the_plan_left_open_loses_no_run(cache: Cache) -> None:
    """A run that hangs on one that is gone after the work stands at the head."""
    gone = PLAN.replace("id: trunk, status: existing", "id: trunk, status: removed").format(units="us")
    table = rows(sheet(checked(gone, cache), "ducts"))
    assert set(table) == {"to-den", "to-bed", "back"}


# Units.


@pytest.mark.parametrize(
    ("system", "key", "units"),
    [
        ("us", "heat-loss", ("Btu/h", "Btu/h", "Btu/h", "Btu/h", "Btu/h", "Btu/h")),
        ("metric", "heat-loss", ("W", "W", "W", "W", "W", "W")),
        ("us", "surfaces", ("", "ft²", "", "", "Btu/h", "Btu/h")),
        ("metric", "surfaces", ("", "m²", "", "", "W", "W")),
        ("us", "ducts", ("", "", "cfm", "cfm", "fpm", "in. w.c.", "in")),
        ("metric", "ducts", ("", "", "L/s", "L/s", "m/s", "Pa", "mm")),
    ],
)
def test_units_stand_at_the_head(us: Result, metric: Result, system: str, key: str, units: tuple[str, ...]) -> None:
    of = sheet({"us": us, "metric": metric}[system], key)
    assert of.units == units
    for row in rows(of).values():
        for cell, unit in zip(row.cells, units, strict=True):
            assert not unit or re.fullmatch(r"([\d,./-]+( to [\d,./-]+)?|–|not known|)", cell), (row.name, cell)


def test_metric_and_united_states_units_are_the_same_losses(us: Result, metric: Result) -> None:
    for one, other in zip(
        rows(sheet(us, "heat-loss")).values(), rows(sheet(metric, "heat-loss")).values(), strict=True
    ):
        for btu, watts in zip(one.cells[:5], other.cells[:5], strict=True):
            if btu[:1].isdigit():
                assert amount(btu) * 0.29307107 == pytest.approx(amount(watts), abs=0.7)
    airflow = rows(sheet(metric, "ducts"))["trunk"].cells[2]
    assert f"{airflow} L/s" == show(0.47194745, Dimension.AIRFLOW, "metric")
    assert "mm" in rows(sheet(metric, "ducts"))["trunk"].cells[1]
    assert "°C" in sheet(metric, "heat-loss").lines[0]


# Unknown.


UNSAID = {
    "no design temperature": ("heating_design_temperature: 0 F, ", ""),
    "no tightness": ("air_changes_50_target: 4 /h, ", ""),
    "no windows": ("windows: [big]", "windows: unknown"),
    "no U of the ceiling": (", u_factor: U-0.05", ""),
    "no ventilation": ("ventilators: [{{id: v, status: new, type: exhaust only, airflow: 50 cfm, run_share: 100 %}}]",
                       "ventilators: unknown"),
    "no airflow": ("       airflow: 1000 cfm, ", "       "),
    "no filters": (", filters: []", ""),
    "no size": (", diameter: 8 in", ""),
}  # fmt: skip


def without(name: str, units: str = "us") -> str:
    """The plan without a line."""
    line, instead = UNSAID[name]
    assert PLAN.count(line) == 1
    return PLAN.replace(line, instead).format(units=units)


@pytest.mark.parametrize(
    ("name", "key", "row", "unknown", "known"),
    [
        ("no design temperature", "heat-loss", "bed", (0, 2, 4), (1,)),
        ("no design temperature", "heat-loss", "The house", (3, 4), ()),
        ("no tightness", "heat-loss", "bed", (2, 4), (0, 1)),
        ("no windows", "heat-loss", "bed", (), (0, 1, 2, 4)),
        ("no windows", "heat-loss", "The house", (4,), ()),
        ("no U of the ceiling", "heat-loss", "bed", (0, 4), (1, 2)),
        ("no ventilation", "heat-loss", "Ventilation", (3, 4), ()),
        ("no ventilation", "heat-loss", "bed", (), (0, 1, 2, 4)),
        ("no airflow", "ducts", "trunk", (2, 4, 5, 6), (1, 3)),
        ("no filters", "ducts", "trunk", (3, 6), (1, 2, 4)),
        ("no size", "ducts", "to-den", (1, 3, 4, 5), (2,)),
    ],
)
def test_what_is_not_known_says_so(
    cache: Cache, name: str, key: str, row: str, unknown: tuple[int, ...], known: tuple[int, ...]
) -> None:
    cells = rows(sheet(checked(without(name), cache), key))[row].cells
    assert {place for place in unknown if cells[place] != UNKNOWN} == set(), cells
    assert {place for place in known if cells[place] == UNKNOWN} == set(), cells


@pytest.mark.parametrize("name", UNSAID)
def test_a_plan_with_gaps_prints_everywhere(cache: Cache, name: str) -> None:
    for units in ("us", "metric"):
        result = checked(without(name, units), cache)
        assert "None" not in printed(result, everything=True)
        assert "nan" not in printed(result, everything=True)
        assert html_page(result, "contractor", everything=True)
        assert json_text(result)


def test_a_plan_without_heating_has_no_sheets(cache: Cache) -> None:
    for more in ("", "rooms: [{id: den, status: new, use: bedroom, heated: true, floor_area: 90 ft2}]\n"):
        result = checked(SOLE + more, cache)
        assert sheets_of(result) == ()
        assert "Heat loss" not in printed(result)
        assert 'id="sheet-' not in html_page(result, "contractor")
        assert json.loads(json_text(result))["sheets"] == []


def test_ducts_alone_have_their_schedule(cache: Cache) -> None:
    result = checked(
        "plan: Ducts\nrules: us\nheating: {ducts: [{id: a, status: new}, {id: b, status: new, role: return}]}\n", cache
    )
    assert [each.key for each in sheets_of(result)] == ["ducts"]
    assert [title for title, _ in sheet(result, "ducts").groups] == ["Returns", "Not told which"]
    assert rows(sheet(result, "ducts"))["a"].cells[2] == UNKNOWN


# The same everywhere.


def printed(result: Result, width: int = 80, everything: bool = False) -> str:
    """The report as a terminal of some width shows it."""
    file = io.StringIO()
    print_report(result, "contractor", everything=everything, file=file, width=width)
    return file.getvalue()


@settings(deadline=None, max_examples=12)
@given(st.integers(min_value=80, max_value=160), st.booleans())
def test_a_terminal_shows_every_row_within_its_width(us: Result, width: int, everything: bool) -> None:
    text = printed(us, width, everything)
    assert max(map(len, text.splitlines())) <= width
    joined = words(text)
    assert sheet(us, "heat-loss").title in text
    assert (sheet(us, "surfaces").title in text) is everything
    for name, row in rows(sheet(us, "heat-loss")).items():
        for cell in row.cells:
            assert cell in joined
        assert name.split()[0] in joined
    for row in rows(sheet(us, "ducts")).values():
        assert row.cells[2] in joined
        assert row.cells[6] in joined


def test_a_narrow_terminal_leaves_out_what_can_be_spared(us: Result) -> None:
    of = sheet(us, "ducts")
    assert of.spare == ("loses", "speed")

    def heads(width: int) -> str:
        lines = printed(us, width).splitlines()
        return lines[next(place for place, line in enumerate(lines) if line.startswith("── Ducts")) + 1]

    assert "loses" in heads(140)
    assert "to carry" in heads(80)
    assert "round needed" in heads(80)


def test_metric_sheets_fit_a_terminal_too(metric: Result) -> None:
    text = printed(metric, 80, everything=True)
    assert max(map(len, text.splitlines())) <= 80
    assert "L/s" in text
    assert "mm" in text
    assert "Btu" not in text[text.index("Heat loss by room") :]


def test_a_page_has_each_sheet_as_a_table_with_heads(us: Result, metric: Result) -> None:
    for result in (us, metric):
        tree = read(html_page(result, "contractor"))
        for of in sheets_of(result):
            assert words(tree.by_id(f"sheet-{of.key}-title").text) == of.title
            assert any(each.attributes.get("href") == f"#sheet-{of.key}" for each in tree.named("a"))
        heads = [words(each.text) for each in tree.named("th") if each.attributes.get("scope") == "col"]
        for of in sheets_of(result):
            for column, unit in zip(of.columns, ("", *of.units), strict=True):
                assert any(head.startswith(column) and head.endswith(unit) for head in heads), (column, unit)
        names = [words(each.text) for each in tree.named("th") if each.attributes.get("scope") == "row"]
        cells = [words(each.text) for each in tree.named("td")]
        for of in sheets_of(result):
            for name, row in rows(of).items():
                assert name in names
                assert set(row.cells) <= set(cells)


def test_a_page_escapes_the_names_of_rooms(cache: Cache) -> None:
    hostile = PLAN.replace("name: Den with", "name: <b>Den</b> with").format(units="us")
    page = html_page(checked(hostile, cache), "contractor")
    assert "<b>Den</b>" not in page
    assert "&lt;b&gt;Den&lt;/b&gt; with" in page


def test_the_data_have_what_is_printed(us: Result) -> None:
    data = {each["key"]: each for each in json.loads(json_text(us))["sheets"]}
    for of in sheets_of(us):
        found = data[of.key]
        assert found["title"] == of.title
        assert (found["columns"], found["units"]) == (list(of.columns), list(of.units))
        assert found["lines"] == list(of.lines)
        assert [(row["group"], row["name"], row["cells"]) for row in found["rows"]] == [
            (title, row.name.strip(), list(row.cells)) for title, those in of.groups for row in those
        ]
