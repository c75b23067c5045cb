"""From a plan to facts: both states, links, what is stated, computed, assumed and missing."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from checker.derive.derived import facts_of
from checker.facts import Facts, Item, Known, Members, Ref, State, Value
from checker.plan.reader import plan_from_text
from tests.strategies import statuses

INCH = 0.0254
ASSUMED: dict[str, Value] = {"counted_ceiling_height": 5 * 12 * INCH, "full_ceiling_height": 7 * 12 * INCH}


def facts(lines: str, assumptions: dict[str, Value] | None = None) -> Facts:
    """The facts of a plan of these lines."""
    return facts_of(plan_from_text(f"plan: A house\n{lines}\n"), ASSUMED if assumptions is None else assumptions)


def known(of: Facts, kind: str, id_: str, state: State = "after") -> Known:
    """What is known of an element."""
    return of.elements[Ref(kind, id_, state)]


def value(of: Facts, kind: str, id_: str, name: str, state: State = "after") -> Value | None:
    """The value of an attribute."""
    fact = of.value(Item(Ref(kind, id_, state), name))
    return fact.value if fact else None


@pytest.mark.parametrize(
    ("status", "before", "after"),
    [
        ("existing", "hall", "hall"),
        ("altered", "attic", "hall"),
        ("new", None, "hall"),
        ("removed", "hall", None),
        ("replaced", "attic", "hall"),
        ("moved", "attic", "hall"),
        ("reused", "attic", "hall"),
    ],
)
def test_each_status_has_its_states(status: str, before: str | None, after: str | None) -> None:
    was = ", was: {use: attic}" if status in ("altered", "replaced", "moved", "reused") else ""
    found = facts(f"rooms: [{{id: den, status: {status}, use: hall{was}}}]")
    assert value(found, "room", "den", "use", "before") == before
    assert value(found, "room", "den", "use", "after") == after
    states: tuple[tuple[State, str | None], ...] = (("before", before), ("after", after))
    for state, use in states:
        assert (Ref("room", "den", state) in found.elements) is (use is not None)


def test_what_an_altered_element_was_is_unknown_unless_the_plan_says() -> None:
    found = facts("rooms: [{id: den, status: altered, use: hall}]")
    assert list(known(found, "room", "den", "before").values) == ["status"]


def test_permit_site_and_house_stand_in_both_states() -> None:
    found = facts("house: {year_built: 1912}")
    assert {(ref.kind, ref.state) for ref in found.elements} == {
        (kind, state) for kind in ("permit", "site", "house") for state in ("before", "after")
    }
    assert known(found, "house", "").status == "only"
    assert known(found, "house", "").standing == "after-only"


def test_a_stated_value_has_its_place_and_name() -> None:
    found = facts("rooms:\n  - {id: den, name: Den, status: new, floor_area: 100 ft2}")
    den = known(found, "room", "den")
    assert den.name == "Den"
    assert str(den.place) == "plan.yaml:3:5"
    fact = den.values["floor_area"]
    assert (fact.origin, str(fact.place)) == ("stated", "plan.yaml:3:51")
    assert fact.value == pytest.approx(9.290304)


def test_what_is_unknown_is_no_value_and_no_default() -> None:
    den = known(facts("rooms: [{id: den, status: new, use: unknown}]"), "room", "den")
    assert list(den.values) == ["status"]


def test_was_leads_to_the_element_before_the_work() -> None:
    found = facts("rooms: [{id: den, status: altered}, {id: bath, status: new}]")
    assert known(found, "room", "den").links["was"] == Members((Ref("room", "den", "before"),), True)
    assert known(found, "room", "den", "before").links["was"] == Members((), True)
    assert known(found, "room", "bath").links["was"] == Members((), True)


def test_links_lead_within_one_state() -> None:
    found = facts(
        "openings: {windows: [{id: old, status: removed}, {id: new, status: new}, {id: kept, status: existing}]}\n"
        "rooms: [{id: den, status: existing, windows: [old, new, kept]}]"
    )
    expected: tuple[tuple[State, list[str]], ...] = (("before", ["old", "kept"]), ("after", ["new", "kept"]))
    for state, ids in expected:
        members = known(found, "room", "den", state).links["windows"]
        assert [(ref.id, ref.state) for ref in members.refs] == [(id_, state) for id_ in ids]
        assert members.closed


@pytest.mark.parametrize(
    ("rest", "ids", "closed"),
    [
        (", windows: [w]", ["w"], True),
        (", windows: []", [], True),
        (", windows: [w, and others]", ["w"], False),
        (", windows: unknown", [], False),
        ("", [], False),
    ],
)
def test_a_link_is_closed_if_the_plan_lists_every_member(rest: str, ids: list[str], closed: bool) -> None:
    found = facts(f"openings: {{windows: [{{id: w, status: new}}]}}\nrooms: [{{id: den, status: new{rest}}}]")
    members = known(found, "room", "den").links["windows"]
    assert ([ref.id for ref in members.refs], members.closed) == (ids, closed)


@pytest.mark.parametrize(
    ("rooms", "ids", "closed"),
    [
        ("[{id: a, status: new, level: up}, {id: b, status: new, level: up}]", ["a", "b"], True),
        ("[{id: a, status: new, level: up}, {id: b, status: new}]", ["a"], False),
        ("[{id: a, status: new, level: up}, and others]", ["a"], False),
        ("[{id: a, status: removed, level: up}]", [], True),
        ("[]", [], True),
        ("unknown", [], False),
    ],
)
def test_an_inverse_link_is_closed_if_every_element_says_where_it_leads(
    rooms: str, ids: list[str], closed: bool
) -> None:
    found = facts(f"levels: [{{id: up, status: existing}}]\nrooms: {rooms}")
    members = known(found, "level", "up").links["rooms"]
    assert ([ref.id for ref in members.refs], members.closed) == (ids, closed)


def test_an_inverse_that_leads_to_one_is_closed_as_soon_as_it_leads_there() -> None:
    found = facts("levels: [{id: low, status: existing}, {id: up, status: existing, below: low}, and others]")
    assert known(found, "level", "low").links["above"] == Members((Ref("level", "up", "after"),), True)
    assert known(found, "level", "up").links["above"] == Members((), False)


def test_parts_lead_back_to_what_holds_them() -> None:
    found = facts("stairs: [{id: s, status: new, flights: [{id: f}]}]")
    assert known(found, "flight", "f").links["stair"] == Members((Ref("stair", "s", "after"),), True)


def test_the_house_leads_to_every_element_and_back() -> None:
    found = facts("rooms: [{id: a, status: new}, {id: b, status: removed}]")
    house = known(found, "house", "")
    assert house.links["rooms"] == Members((Ref("room", "a", "after"),), True)
    assert house.links["windows"] == Members((), False)
    for name in ("house", "permit", "site"):
        assert known(found, "room", "a").links[name] == Members((Ref(name, "", "after"),), True)


def test_stated_beats_computed_and_keeps_it() -> None:
    stair = "stairs: [{id: s, status: new, flights: [{id: f, total_rise: 105 in, risers: 14, riser_height: 8 in}]}]"
    fact = known(facts(stair), "flight", "f").values["riser_height"]
    assert fact.origin == "stated"
    assert fact.value == pytest.approx(8 * INCH)
    assert fact.computed is not None
    assert fact.computed.result == pytest.approx(7.5 * INCH)
    assert fact.calculation is None


def test_rules_and_further_arithmetic_take_the_stated_value() -> None:
    stair = (
        "stairs: [{id: s, status: new, flights: [{id: f, total_rise: 105 in, risers: 14, riser_height: 8 in, "
        "going: 10 in}]}]"
    )
    assert value(facts(stair), "flight", "f", "step_length") == pytest.approx(26 * INCH)


def test_a_computed_value_shows_its_calculation() -> None:
    stair = "stairs: [{id: s, status: new, total_rise: 105 in, flights: [{id: f, risers: 14}]}]"
    fact = known(facts(stair), "flight", "f").values["riser_height"]
    assert fact.origin == "computed"
    assert fact.place is None
    assert fact.calculation is not None
    assert fact.calculation.function == "checker.calc.stair.riser_height"
    assert [(each.symbol, each.item and each.item.name) for each in fact.calculation.inputs] == [
        ("total_rise_m", "total_rise"),
        ("riser_count", "risers"),
    ]


def test_what_a_derived_value_lacks_are_plan_lines() -> None:
    flight = known(facts("stairs: [{id: s, status: new, flights: [{id: f, going: 10 in}]}]"), "flight", "f")
    ref = flight.ref
    assert flight.missing["riser_height"] == (Item(ref, "riser_height"),)
    assert flight.missing["pitch"] == (Item(ref, "riser_height"),)
    assert flight.missing["stringer_length"] == (Item(ref, "total_rise"), Item(ref, "risers"))
    assert flight.missing["largest_riser"] == (Item(ref, "measured_risers"),)


def test_a_need_across_a_link_that_leads_nowhere_lacks_the_link() -> None:
    lines = "eaves: [{id: e, status: new, projection: 1 ft}]"
    ref = Ref("eave", "e", "after")
    assert known(facts(lines), "eave", "e").missing["distance_to_lot_line"] == (Item(ref, "distance_to_lot_line"),)
    lines = "levels: [{id: up, status: new, habitable_area: 100 ft2}]"
    level = known(facts(lines), "level", "up")
    assert level.missing["habitable_share"] == (Item(level.ref, "below"),)


def test_a_sum_over_an_open_list_is_unknown() -> None:
    lines = (
        "openings: {{windows: [{{id: w, status: new, glazed_area: 8 ft2}}], doors: [], skylights: []}}\n"
        "rooms: [{{id: den, status: new, windows: [w{more}], doors: [], skylights: []}}]"
    )
    assert value(facts(lines.format(more="")), "room", "den", "glazed_area") == pytest.approx(8 * 0.09290304)
    open_room = known(facts(lines.format(more=", and others")), "room", "den")
    assert open_room.missing["glazed_area"] == (Item(open_room.ref, "windows"),)


def test_a_sum_over_nothing_is_nothing() -> None:
    lines = "rooms: [{id: den, status: new, windows: [], doors: [], skylights: []}]"
    assert value(facts(lines), "room", "den", "glazed_area") == 0.0


@pytest.mark.parametrize(
    ("rest", "lacking"),
    [
        ("status: new, use: hall", None),
        ("status: existing, use: hall", None),
        ("status: altered, use: hall, was: {use: attic}", None),
        ("status: altered, use: hall", Item(Ref("room", "den", "before"), "use")),
        ("status: altered, was: {use: attic}", Item(Ref("room", "den", "after"), "use")),
    ],
)
def test_only_what_the_case_at_hand_needs_is_lacking(rest: str, lacking: Item | None) -> None:
    room = known(facts(f"rooms: [{{id: den, {rest}}}]"), "room", "den")
    assert room.missing.get("use_changes") == ((lacking,) if lacking else None)
    assert ("use_changes" in room.values) is (lacking is None)


def test_a_level_ceiling_too_low_needs_no_floor_area() -> None:
    room = "rooms: [{id: den, status: new, ceiling: level, ceiling_height: 6 ft}]"
    assert value(facts(room), "room", "den", "area_at_full_height") == 0.0


def test_an_optional_need_is_lacking_only_where_it_is_called_for() -> None:
    lines = "openings: {doors: [{id: d, status: new, leads_to: outdoors, glazed: true}, {id: e, status: new}]}"
    found = facts(lines)
    door = known(found, "door", "d")
    assert door.missing["daylight_area"] == (Item(door.ref, "glazed_area"),)
    assert known(found, "door", "e").missing["daylight_area"] == (Item(Ref("door", "e"), "leads_to"),)
    inner = facts("openings: {doors: [{id: d, status: new, leads_to: room}]}")
    assert value(inner, "door", "d", "daylight_area") == 0.0


def test_a_value_rests_on_the_assumptions_under_it() -> None:
    room = "rooms: [{id: den, status: new, ceiling: level, ceiling_height: 7 ft, floor_area: 100 ft2}]"
    fact = known(facts(room), "room", "den").values["area_at_full_height"]
    assert fact.value == pytest.approx(9.290304)
    assert fact.rests_on == ("full_ceiling_height",)
    assert fact.calculation is not None
    assert [(each.symbol, each.assumption) for each in fact.calculation.inputs if each.item is None] == [
        ("height_m", "full_ceiling_height")
    ]


def test_without_the_assumption_the_value_is_unknown_and_no_plan_line_would_help() -> None:
    room = "rooms: [{id: den, status: new, ceiling: level, ceiling_height: 7 ft, floor_area: 100 ft2}]"
    found = known(facts(room, {}), "room", "den")
    assert "area_at_full_height" not in found.values


def test_another_assumption_gives_another_value() -> None:
    room = "rooms: [{id: den, status: new, ceiling: level, ceiling_height: 7 ft, floor_area: 100 ft2}]"
    assert value(facts(room, {"full_ceiling_height": 2.2}), "room", "den", "area_at_full_height") == 0.0


def test_numbers_that_make_no_sense_together_are_a_fault_and_leave_the_value_unknown() -> None:
    found = facts(
        "openings: {windows: [{id: w, status: new, type: double-hung, width: 2 in, height: 4 ft, "
        "frame_deduction: 3 in}]}"
    )
    (fault,) = found.faults
    assert fault.item == Item(Ref("window", "w"), "clear_width")
    assert {each.symbol for each in fault.inputs} == {"type", "unit_width_m", "frame_m"}
    assert fault.what
    assert "clear_width" not in known(found, "window", "w").values


def test_sensible_numbers_are_no_fault() -> None:
    assert facts("stairs: [{id: s, status: new, flights: [{id: f, total_rise: 9 ft, risers: 14}]}]").faults == ()


@settings(deadline=None)
@given(statuses, statuses)
def test_every_link_leads_to_an_element_of_the_same_state(stair: str, room: str) -> None:
    found = facts(
        f"levels: [{{id: up, status: {room}}}]\nrooms: [{{id: den, status: {room}, level: up}}]\n"
        f"stairs: [{{id: s, status: {stair}, to_level: up, flights: [{{id: f, status: {stair}}}]}}]"
    )
    for ref, each in found.elements.items():
        for name, members in each.links.items():
            for member in members.refs:
                assert member in found.elements
                assert member.state == ("before" if name == "was" else ref.state)
