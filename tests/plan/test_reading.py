"""What a plan comes to when it can be read: elements, statuses, open lists, what is left unknown."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.glossary import element_models
from checker.plan.elements import Status
from checker.plan.reader import ReadPlan, plan_from_text, read_plan
from checker.problems import Place, Unreadable
from tests.strategies import idents, inches, sixteenths, statuses


def _plan(lines: str) -> ReadPlan:
    return plan_from_text(f"plan: A house\n{lines}\n", "plan.yaml")


def test_a_title_is_a_plan() -> None:
    read = _plan("")
    assert list(read.elements) == [("permit", ""), ("site", ""), ("house", "")]
    assert read.plan.units == "us"
    assert read.plan.permit.stage is None


def test_elements_come_in_the_order_of_the_plan_with_what_holds_them() -> None:
    read = _plan(
        "stairs:\n"
        "  - id: main\n"
        "    status: new\n"
        "    flights: [{id: low, handrails: [{id: left}]}, {id: high}]\n"
        "    landings: [{id: half}]\n"
        "openings: {windows: [{id: w, status: existing, wells: [{id: w}]}]}"
    )
    holders = {key: found.holder for key, found in read.elements.items()}
    assert list(holders) == [
        ("permit", ""),
        ("site", ""),
        ("house", ""),
        ("window", "w"),
        ("window-well", "w"),
        ("stair", "main"),
        ("flight", "low"),
        ("handrail", "left"),
        ("flight", "high"),
        ("landing", "half"),
    ]
    assert holders["handrail", "left"] == ("flight", "low")
    assert holders["stair", "main"] is None
    assert read.place("handrail", "left") == Place("plan.yaml", 5, 37)
    assert read.place("handrail", "left", "id") == Place("plan.yaml", 5, 42)


@pytest.mark.parametrize("status", ["existing", "new", "removed", "replaced", "moved", "reused"])
def test_parts_have_the_status_of_what_holds_them(status: Status) -> None:
    read = _plan(f"stairs: [{{id: s, status: {status}, flights: [{{id: f, handrails: [{{id: h}}]}}]}}]")
    assert read.elements["flight", "f"].status == status
    assert read.elements["handrail", "h"].status == status


def test_a_part_may_have_a_status_of_its_own() -> None:
    read = _plan(
        "stairs: [{id: s, status: altered, flights: [{id: f, status: existing, handrails: [{id: h, status: new}]}]}]"
    )
    assert [found.status for (kind, _), found in read.elements.items() if kind not in ("permit", "site", "house")] == [
        "altered",
        "existing",
        "new",
    ]


def test_parts_of_a_part_follow_the_part() -> None:
    read = _plan("stairs: [{id: s, status: altered, flights: [{id: f, status: new, handrails: [{id: h}]}]}]")
    assert read.elements["handrail", "h"].status == "new"


@pytest.mark.parametrize("status", ["altered", "replaced", "moved", "reused"])
def test_was_goes_with_what_the_work_changes(status: Status) -> None:
    read = _plan(f"rooms: [{{id: den, status: {status}, was: {{use: hall}}, use: bedroom}}]")
    assert read.plan.rooms is not None
    was = read.plan.rooms[0].was
    assert was is not None
    assert was.use == "hall"


def test_the_same_id_may_name_elements_of_two_kinds() -> None:
    read = _plan("stairs: [{id: attic, status: new}]\nlevels: [{id: attic, status: new}]")
    assert {("stair", "attic"), ("level", "attic")} <= set(read.elements)


def test_lot_lines_permit_site_and_house_need_no_status() -> None:
    read = _plan("site: {lot_lines: [{id: north}]}")
    assert read.elements["lot-line", "north"].status is None
    assert read.elements["house", ""].status is None


def test_unknown_is_the_same_as_a_line_left_out() -> None:
    said, unsaid = (
        _plan(f"rooms: [{{id: den, status: new{rest}}}]")
        for rest in (", use: unknown, floor_area: unknown, windows: unknown", "")
    )
    assert said.plan == unsaid.plan
    assert said.complete_kinds == unsaid.complete_kinds


@pytest.mark.parametrize(
    ("rest", "listed", "is_open"),
    [
        ("", None, True),
        (", windows: unknown", None, True),
        (", windows: []", [], False),
        (", windows: [w]", ["w"], False),
        (", windows: [w, and others]", ["w"], True),
        (", windows: [and others]", [], True),
    ],
)
def test_a_list_is_complete_unless_it_is_left_out_or_ends_in_and_others(
    rest: str, listed: list[str] | None, is_open: bool
) -> None:
    plan = _plan(f"openings: {{windows: [{{id: w, status: new}}]}}\nrooms: [{{id: den, status: new{rest}}}]").plan
    assert plan.rooms is not None
    assert plan.rooms[0].windows == listed
    assert plan.rooms[0].is_open("windows") is is_open


@pytest.mark.parametrize(
    ("lines", "kind", "complete"),
    [
        ("", "room", False),
        ("rooms: []", "room", True),
        ("rooms: [{id: den, status: new}]", "room", True),
        ("rooms: [{id: den, status: new}, and others]", "room", False),
        ("rooms: unknown", "room", False),
        ("openings: {doors: []}", "door", True),
        ("openings: {doors: []}", "window", False),
        ("stairs: []", "handrail", True),
        ("stairs: [{id: s, status: new, flights: []}]", "handrail", True),
        ("stairs: [{id: s, status: new, flights: [{id: f, handrails: []}]}]", "handrail", True),
        ("stairs: [{id: s, status: new, flights: [{id: f}]}]", "handrail", False),
        ("stairs: [{id: s, status: new}]", "handrail", False),
        ("stairs: [{id: s, status: new, flights: []}, {id: t, status: new}]", "flight", False),
        ("stairs: [and others]", "handrail", False),
        ("site: {lot_lines: []}", "lot-line", True),
        ("", "lot-line", False),
        ("", "house", True),
    ],
)
def test_a_kind_is_complete_if_no_list_that_can_hold_it_is_open(lines: str, kind: str, complete: bool) -> None:
    assert kind in element_models()
    assert (kind in _plan(lines).complete_kinds) is complete


def test_a_plan_is_read_from_a_file_under_the_name_it_is_given(tmp_path: Path) -> None:
    file = tmp_path / "house.yaml"
    file.write_text("plan: A\nrooms: [{id: den}]\n", encoding="utf-8")
    with pytest.raises(Unreadable) as caught:
        read_plan(file, "house.yaml")
    assert caught.value.problems[0].place == Place("house.yaml", 2, 9)


@settings(deadline=None)
@given(st.lists(st.tuples(idents, statuses, sixteenths), max_size=6, unique_by=lambda each: each[0]))
def test_what_is_written_is_what_is_read(rooms: list[tuple[str, str, int]]) -> None:
    lines = [f"  - {{id: {id_}, status: {status}, width: {inches(width)}}}" for id_, status, width in rooms]
    read = _plan("\n".join(["rooms:", *lines]) if lines else "rooms: []")
    assert read.plan.rooms is not None
    assert [(room.id, room.status) for room in read.plan.rooms] == [(id_, status) for id_, status, _ in rooms]
    assert [room.width for room in read.plan.rooms] == pytest.approx([width * 0.0254 / 16 for *_, width in rooms])
    assert "room" in read.complete_kinds
    assert [read.place("room", id_).line for id_, *_ in rooms] == list(range(3, 3 + len(rooms)))


def test_a_window_stands_in_one_room_and_a_level_lies_under_one() -> None:
    """A second one that names it is a mistake, said at its place; a removed one does not count."""
    text = """\
plan: Twice
openings: {windows: [{id: w, status: new}]}
rooms:
  - {id: a, status: new, windows: [w]}
  - {id: b, status: new, windows: [w]}
levels:
  - {id: ground, status: existing}
  - {id: upper, status: existing, below: ground}
  - {id: other, status: existing, below: ground}
"""
    with pytest.raises(Unreadable) as caught:
        plan_from_text(text)
    assert (
        str(caught.value)
        == """\
plan.yaml:5:36: window “w” is named by two rooms, first on line 4
  it can belong to one only
plan.yaml:9:42: level “ground” is named by two levels, first on line 8
  it can belong to one only"""
    )
    plan_from_text(
        text.replace("{id: b, status: new", "{id: b, status: removed")
        .replace(", below: ground}\nx", "}")
        .replace("  - {id: other, status: existing, below: ground}\n", "")
    )
