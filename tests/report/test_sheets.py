"""Calculation sheets: what they add up, what they say of the unknown, and that every form of the report has them."""

from __future__ import annotations

import json
from io import StringIO
from pathlib import Path

import pytest

from checker.check import check, check_read
from checker.engine.image import Cache
from checker.findings.finding import Result
from checker.plan.reader import plan_from_text
from checker.report.html.page import html_page
from checker.report.json import json_text
from checker.report.sheets import UNKNOWN, Row, Sheet, sheets_of
from checker.report.terminal import print_report

DEMOS = Path(__file__).parents[2] / "plans_demo"


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """A cache of this run's own."""
    return Cache(tmp_path_factory.mktemp("cache"))


@pytest.fixture(scope="module")
def quince(cache: Cache) -> Result:
    """The demo house with mistakes."""
    return check(DEMOS / "quince-street" / "plan.yaml", cache=cache)


def sheet(result: Result, key: str) -> Sheet:
    """One sheet of a result."""
    return next(each for each in sheets_of(result) if each.key == key)


def rows(of: Sheet) -> list[Row]:
    """All rows of a sheet."""
    return [row for _, those in of.groups for row in those]


def number(cell: str) -> float:
    """A cell as a number."""
    return float(cell.replace(",", ""))


def test_the_rooms_add_up_to_the_house(quince: Result) -> None:
    """Before and after, with the ventilation, to the rounding of each row."""
    every = rows(sheet(quince, "heat-loss"))
    for column in (3, 4):
        parts = [number(row.cells[column]) for row in every[:-1] if row.cells[column] not in ("–", "")]
        assert number(every[-1].cells[column]) == pytest.approx(sum(parts), abs=len(parts))


def test_a_room_adds_up_from_surfaces_openings_and_air(quince: Result) -> None:
    """The loss after the work is what the first three columns come to."""
    for row in rows(sheet(quince, "heat-loss"))[:-2]:
        assert number(row.cells[4]) == pytest.approx(sum(map(number, row.cells[:3])), abs=2), row.name


def test_the_surfaces_of_a_room_are_its_row(quince: Result) -> None:
    """Surfaces and openings of the sheet by surface come to the room's first two columns."""
    by_room = dict(sheet(quince, "surfaces").groups)
    for row in rows(sheet(quince, "heat-loss"))[:-2]:
        lost = [number(each.cells[5]) for each in by_room[row.name] if each.cells[5] != "–"]
        assert sum(lost) == pytest.approx(number(row.cells[0]) + number(row.cells[1]), abs=len(lost)), row.name


def test_ducts_stand_below_what_feeds_them(quince: Result) -> None:
    """The trunk comes first, and carries what its branches carry."""
    supplies = next(those for title, those in sheet(quince, "ducts").groups if title == "Supplies")
    depth = [len(row.name) - len(row.name.lstrip()) for row in supplies]
    assert depth[0] == 0
    assert max(depth) == 4
    branches = [number(row.cells[2]) for row, at in zip(supplies, depth, strict=True) if at == 2]
    assert number(supplies[0].cells[2]) == pytest.approx(sum(branches), abs=len(branches))


def test_a_unit_that_a_column_shares_stands_at_its_head(quince: Result) -> None:
    """And no longer in the cells."""
    of = sheet(quince, "heat-loss")
    assert of.units == ("Btu/h",) * 6
    assert not any("Btu" in cell for row in rows(of) for cell in row.cells)


def test_a_metric_plan_prints_metric(cache: Cache) -> None:
    """Watts, litres a second and millimetres, by the plan's own system."""
    result = check(DEMOS / "osprey-close" / "plan.yaml", cache=cache)
    assert set(sheet(result, "heat-loss").units) == {"W"}
    assert {"L/s", "mm", "Pa", "m/s"} <= set(sheet(result, "ducts").units)
    assert any("RSI" in cell for row in rows(sheet(result, "assemblies")) for cell in row.cells)


def test_the_unknown_is_said_to_be(cache: Cache) -> None:
    """A room without a design temperature of the site has no loss, and its row says so."""
    text = (DEMOS / "quince-street" / "plan.yaml").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if "heating_design_temperature" not in line]
    result = check_read(plan_from_text("\n".join(lines) + "\n"), cache=cache)
    every = rows(sheet(result, "heat-loss"))
    assert every[0].cells[4] == UNKNOWN
    assert every[-1].cells[4] == UNKNOWN


def test_a_plan_without_the_trade_has_no_sheets(cache: Cache) -> None:
    """A stair has no heat loss."""
    assert sheets_of(check(DEMOS / "stair-only" / "plan.yaml", cache=cache)) == ()


def test_a_terminal_of_80_columns_holds_every_line(quince: Result) -> None:
    """Sheets too; the one by surface only when everything is asked for."""
    short, full = StringIO(), StringIO()
    print_report(quince, "contractor", file=short, width=80)
    print_report(quince, "contractor", everything=True, file=full, width=80)
    assert "Heat loss by room" in short.getvalue()
    assert "Heat loss by surface" not in short.getvalue()
    assert "Heat loss by surface" in full.getvalue()
    at = full.getvalue().index("── Assemblies")
    assert max(len(line) for line in full.getvalue()[at:].splitlines()) <= 80


def test_page_and_data_have_the_same_sheets(quince: Result) -> None:
    """With headings for people who read tables by ear."""
    page = html_page(quince, "contractor")
    data = json.loads(json_text(quince))["sheets"]
    assert [each["key"] for each in data] == [each.key for each in sheets_of(quince)]
    for each in data:
        assert f'id="sheet-{each["key"]}"' in page
        assert all(len(row["cells"]) == len(each["columns"]) - 1 for row in each["rows"])
    assert '<th scope="col" class="amount">after' in page
