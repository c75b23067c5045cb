"""Every kind of mistake in a plan: what is said of it, and where."""

from __future__ import annotations

import pytest

from checker.plan.reader import plan_from_text
from checker.problems import Unreadable

_STATUSES = "add `status:` with one of: existing, altered, new, removed, replaced, moved, reused"
_EMPTY = "write a value, write `unknown`, or leave the line out"
_LENGTH = "write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)"
_AREA = "write: 70 ft² (units: ft², in², m², cm², mm², acre)"
_TRADES = (
    "one of: permit, zoning, stairs, guards, rooms, openings, alarms, fire, envelope, heating, framing, roof, "
    "electrical, plumbing, gas, hazards, order of work"
)
_USES = (
    "one of: living room, dining room, kitchen, bedroom, family room, office, bathroom, toilet room, laundry, hall, "
    "stair hall, closet, storage, attic, workshop, mechanical room, garage, porch, unfinished basement"
)
_WAS = "`was` goes with altered, replaced, moved or reused; a room that only changes its use is altered"


def said(text: str) -> str:
    """What the reader says of a plan that it refuses."""
    with pytest.raises(Unreadable) as caught:
        plan_from_text(text, "plan.yaml")
    return str(caught.value)


@pytest.mark.parametrize(
    ("line", "place", "what", "right"),
    [
        pytest.param("stair: []", "2:1", "`stair` is not known here", "nearest: stairs", id="unknown section"),
        pytest.param(
            "rooms: [{id: den, status: new, celing_height: 8 ft}]",
            "2:32",
            "`celing_height` is not known here",
            "nearest: ceiling_height",
            id="unknown attribute",
        ),
        pytest.param(
            "permit: {xyz: 1}",
            "2:10",
            "`xyz` is not known here",
            "known here: date, exterior_work_only, id, name, note, plumbing_or_mechanical_only, route, scope, "
            "share_altered, stage, value_of_work",
            id="unknown attribute like no other",
        ),
        pytest.param("rooms: [{status: new}]", "2:9", "`rooms` item 1 needs `id`", "add the line", id="no id"),
        pytest.param("rooms: [{id: den}]", "2:9", "room “den” needs a status", _STATUSES, id="no status"),
        pytest.param(
            "rooms: [{id: den, status: nw}]",
            "2:27",
            "`status` is “nw”",
            "nearest: new; one of: existing, altered, new, removed, replaced, moved, reused",
            id="misspelt status, said once",
        ),
        pytest.param(
            "stairs: [{id: main, status: altered, flights: [{id: up, risers: 3}]}]",
            "2:48",
            "flight “up” needs a status of its own: the stair that holds it is altered, so its parts may be old or new",
            _STATUSES,
            id="part of an altered element",
        ),
        *(
            pytest.param(
                f"rooms: [{{id: den, status: {status}, was: {{use: hall}}}}]",
                f"2:{29 + len(status)}",
                f"room “den” is {status}, yet it says what it was",
                _WAS,
                id=f"was on {status}",
            )
            for status in ("new", "existing", "removed")
        ),
        pytest.param(
            "rooms: [{id: den, status: new}, {id: den, status: existing}]",
            "2:38",
            "the id “den” is used twice for a room, first on line 2",
            "give each its own id",
            id="id twice",
        ),
        pytest.param(
            "levels: [{id: upper, status: new}]\nrooms: [{id: den, status: new, level: uper}]",
            "3:39",
            "no level has the id “uper”",
            "nearest: upper",
            id="dangling link, near",
        ),
        pytest.param(
            "levels: [{id: upper, status: new}, {id: attic, status: new}]\nrooms: [{id: den, status: new, level: zz}]",
            "3:39",
            "no level has the id “zz”",
            "the plan has: upper, attic",
            id="dangling link, far",
        ),
        pytest.param(
            "rooms: [{id: den, status: new, windows: [w]}]",
            "2:42",
            "no window has the id “w”",
            "the plan has no window",
            id="dangling link to what the plan has none of",
        ),
        pytest.param(
            "openings: {windows: [{id: w, status: new}]}\nrooms: [{id: den, status: new, windows: [w, w, w]}]",
            "3:42",
            "“w” stands twice in this list",
            "name it once",
            id="twice in a list",
        ),
        pytest.param("rooms: [{id: den, status: new, use: }]", "2:37", "`use` is empty", _EMPTY, id="empty value"),
        pytest.param("rooms:", "2:7", "`rooms` is empty", _EMPTY, id="empty section"),
        pytest.param("rules: ''", "2:8", "`rules` is empty", "write a text", id="empty text"),
        pytest.param(
            "rooms: [{id: den, status: new, floor_area: 12 ft}]",
            "2:44",
            "`floor_area`: 12 ft is a length; an area is needed",
            _AREA,
            id="wrong dimension",
        ),
        pytest.param(
            "rooms: [{id: den, status: new, floor_area: 120}]",
            "2:44",
            "`floor_area`: 120 has no unit; an area is needed",
            _AREA,
            id="no unit",
        ),
        pytest.param(
            "rooms: [{id: den, status: new, ceiling_height: -8 ft}]",
            "2:48",
            "`ceiling_height`: “-8 ft” is too small for a length here",
            "write: at least 0 in",
            id="negative length",
        ),
        pytest.param(
            "stairs: [{id: s, status: new, flights: [{id: f, risers: 0}]}]",
            "2:57",
            "`risers`: “0” is too small for a whole number here",
            "write: at least 1",
            id="no risers",
        ),
        pytest.param(
            "stairs: [{id: s, status: new, flights: [{id: f, risers: 2.5}]}]",
            "2:57",
            "`risers`: 2.5 is not whole; a whole number is needed",
            "write: 14",
            id="half a riser",
        ),
        pytest.param(
            "stairs: [{id: s, status: new, flights: [{id: f, risers: true}]}]",
            "2:57",
            "`risers`: is true or false",
            "write: 14",
            id="truth for a number",
        ),
        pytest.param(
            "stairs: [{id: s, status: new, flights: [{id: f, measured_risers: [7 in, 8]}]}]",
            "2:73",
            "`measured_risers` item 2: 8 has no unit; a length is needed",
            _LENGTH,
            id="item of a list of quantities",
        ),
        pytest.param(
            'permit: {date: "2026-02-30"}', "2:16", "`date`: “2026-02-30” is no date", 'write: "2026-03-31"', id="date"
        ),
        pytest.param(
            "permit: {date: 20260331}",
            "2:16",
            "`date` is a number (“20260331”): a text is needed",
            "put it in quotes",
            id="date without hyphens",
        ),
        pytest.param(
            'permit: {date: "20260331"}',
            "2:16",
            "`date`: “20260331” is no date",
            'write: "2026-03-31"',
            id="date without hyphens, quoted",
        ),
        pytest.param(
            "permit: {date: next week}", "2:16", "`date`: “next week” is no date", 'write: "2026-03-31"', id="no date"
        ),
        pytest.param(
            "permit: {date: 2026}",
            "2:16",
            "`date` is a number (“2026”): a text is needed",
            "put it in quotes",
            id="date as a number",
        ),
        pytest.param(
            "rooms: [{id: den, status: new, use: bedrom}]",
            "2:37",
            "`use` is “bedrom”",
            f"nearest: bedroom; {_USES}",
            id="wrong choice",
        ),
        pytest.param(
            "permit: {scope: [stairs, gaurds]}",
            "2:26",
            "`scope` item 2 is “gaurds”",
            f"nearest: guards; {_TRADES}",
            id="wrong choice in a list",
        ),
        pytest.param(
            "permit: {scope: [7]}", "2:18", "`scope` item 1 is “7”", _TRADES, id="number for a choice in a list"
        ),
        pytest.param("units: imperial", "2:8", "`units` is “imperial”", "one of: us, metric", id="system of units"),
        pytest.param(
            "permit: [a]",
            "2:9",
            "`permit` is a list: a group of `key: value` lines is needed",
            "",
            id="list where a group is needed",
        ),
        pytest.param(
            "rooms: {id: den}", "2:8", "`rooms` is a group of lines: a list is needed", "", id="group for a list"
        ),
        pytest.param(
            "stairs: [den]",
            "2:10",
            "`stairs` item 1 is a text (“den”): a group of `key: value` lines is needed",
            "",
            id="text where an element is needed",
        ),
        pytest.param(
            "house: {sprinklered: yes}",
            "2:22",
            "`sprinklered` is a text (“yes”): true or false is needed",
            "",
            id="yes for true",
        ),
        pytest.param(
            "house: {attached_garage: 1}",
            "2:26",
            "`attached_garage` is a number (“1”): true or false is needed",
            "",
            id="1 for true",
        ),
        pytest.param(
            "rooms: [{id: 14, status: new}]",
            "2:14",
            "`id` is a number (“14”): a text is needed",
            "put it in quotes",
            id="id as a number",
        ),
        pytest.param(
            "site: {climate_zone: 5}",
            "2:22",
            "`climate_zone` is the number 5: a word is needed",
            'put it in quotes: "5"',
            id="choice as a number",
        ),
        pytest.param(
            "rooms: [{id: a b, status: new}]",
            "2:14",
            "`id` is “a b”: it does not have the form that is needed",
            "write letters, digits, `-`, `_` and `.`, at most 60, starting with a letter or digit",
            id="id of two words",
        ),
        pytest.param(
            f"rules: {'x' * 401}", "2:8", "`rules` has 401 characters, more than 400", "shorten it", id="long text"
        ),
        pytest.param(
            "rooms: [{id: den, status: new, windows: [and others, w]}]",
            "2:42",
            "`windows` item 1 is “and others”: it does not have the form that is needed",
            "write letters, digits, `-`, `_` and `.`, at most 60, starting with a letter or digit",
            id="and others that is not the last",
        ),
    ],
)
def test_a_mistake_is_said_with_its_place_and_what_would_do(line: str, place: str, what: str, right: str) -> None:
    assert said(f"plan: A house\n{line}\n") == f"plan.yaml:{place}: {what}" + (f"\n  {right}" if right else "")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("rules: us\n", "plan.yaml:1:1: the file needs `plan`\n  add the line"),
        (
            "- a\n",
            "plan.yaml:1:1: this is not a plan: `key: value` lines are needed\n  start with `plan: ` and a title",
        ),
        ("", "plan.yaml:1:1: the file says nothing\n  write at least one `name: value`"),
        ("plan: 27\n", "plan.yaml:1:7: `plan` is a number (“27”): a text is needed\n  put it in quotes"),
    ],
)
def test_a_file_that_is_no_plan_is_refused(text: str, words: str) -> None:
    assert said(text) == words


def test_all_mistakes_come_in_one_run_sorted_by_place_links_and_statuses_too() -> None:
    text = """\
plan: A house
rooms:
  - {id: den, status: new, level: nowhere, use: bedrom}
  - {id: hall, ceiling_hieght: 8 ft}
house: {sprinklered: yes}
stairs:
  - {id: main, status: existing, was: {total_rise: 9 ft}, to_level: uper}
levels: [{id: upper, status: existing}]
"""
    assert said(text).splitlines() == [
        "plan.yaml:3:35: no level has the id “nowhere”",
        "  the plan has: upper",
        "plan.yaml:3:49: `use` is “bedrom”",
        f"  nearest: bedroom; {_USES}",
        "plan.yaml:4:5: room “hall” needs a status",
        f"  {_STATUSES}",
        "plan.yaml:4:16: `ceiling_hieght` is not known here",
        "  nearest: ceiling_height",
        "plan.yaml:5:22: `sprinklered` is a text (“yes”): true or false is needed",
        "plan.yaml:7:34: stair “main” is existing, yet it says what it was",
        f"  {_WAS}",
        "plan.yaml:7:69: no level has the id “uper”",
        "  nearest: upper",
    ]


def test_links_wait_while_it_is_not_known_which_elements_there_are() -> None:
    text = "plan: A\nrooms: [{id: den, status: new, level: upper}]\nlevels: [{status: existing}]\n"
    assert said(text) == "plan.yaml:3:10: `levels` item 1 needs `id`\n  add the line"


def test_a_wrong_line_that_holds_elements_does_not_make_links_to_them_dangle() -> None:
    text = "plan: A\nopening: {windows: [{id: w, status: new}]}\nrooms: [{id: den, status: new, windows: [w]}]\n"
    assert said(text) == "plan.yaml:2:1: `opening` is not known here\n  nearest: openings"
