"""Surfaces of rooms drawn as rectangles: what is outside, what is shared, what cannot be told, the losses of it."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.derive.derived import facts_of
from checker.facts import Facts, Item, Ref, State
from checker.plan.reader import plan_from_text
from checker.problems import Unreadable
from tests.derive.test_envelope import facts, lacking, number, value

few = settings(deadline=None, max_examples=30)
FT = 0.3048
NO_OPENINGS = "windows: [], doors: [], skylights: []"
LEVEL = "{{id: {id}, status: existing, ceiling_height: 8 ft, walls: w, ceiling: c, floor: f{more}}}"
HOUSE = """\
site: {{heating_design_temperature: 0 F, altitude: 0 ft}}
house: {{air_changes_50_target: 5 /h}}
levels: [{levels}]
rooms: [{rooms}]
openings: {{windows: [{windows}], doors: [{doors}], skylights: []}}
envelope:
  assemblies:
    - {{id: w, status: existing, part: wall, u_factor: U-0.1}}
    - {{id: c, status: existing, part: ceiling under attic, u_factor: U-0.05}}
    - {{id: f, status: existing, part: {floor}, u_factor: U-0.2}}
{surfaces}
heating: {{ventilators: []}}
"""


def level(id_: str = "up", more: str = "") -> str:
    """A level 8 ft high."""
    return LEVEL.format(id=id_, more=f", {more}" if more else "")


def drawn(
    id_: str,
    west: float,
    south: float,
    across: float,
    along: float,
    more: str = "",
    on: str = "up",
    heated: str = "true",
    status: str = "existing",
) -> str:
    """A room drawn as a rectangle, in feet."""
    return (
        f"{{id: {id_}, status: {status}, level: {on}, heated: {heated}, ceiling: level, ceiling_height: 8 ft, "
        f"floor_area: {across * along:.4f} ft2, from_west: {west} ft, from_south: {south} ft, "
        f"size_west_east: {across} ft, size_south_north: {along} ft, {more or NO_OPENINGS}}}"
    )


def house(
    *rooms: str,
    levels: tuple[str, ...] = (),
    windows: str = "",
    doors: str = "",
    floor: str = "floor",
    surfaces: str = "",
) -> Facts:
    """The facts of a house of drawn rooms on one level or more."""
    return facts(
        HOUSE.format(
            levels=", ".join(levels or (level(),)), rooms=", ".join(rooms), windows=windows, doors=doors,
            floor=floor, surfaces=surfaces,
        )
    )  # fmt: skip


def surfaces(found: Facts, room: str, state: State = "after") -> dict[str, Any]:
    """The area of each surface of a room in square feet, rounded, by its id without the room's."""
    members = found.elements[Ref("room", room, state)].links["surfaces"]
    assert members.closed, "not every surface can be told"
    return {
        ref.id.removeprefix(f"{room}-"): round(number(found, "surface", ref.id, "area", state) / FT**2, 3)
        for ref in members.refs
    }


def is_open(found: Facts, room: str, state: State = "after") -> bool:
    """Whether some surface of a room cannot be told."""
    return not found.elements[Ref("room", room, state)].links["surfaces"].closed


# One storey.


def test_a_room_alone_has_walls_ceiling_and_floor() -> None:
    found = house(drawn("den", 3, 5, 20, 10))
    assert surfaces(found, "den") == {"walls": 480.0, "ceiling": 200.0, "floor": 200.0}
    assert {value(found, "surface", f"den-{name}", "faces") for name in ("walls", "ceiling", "floor")} == {"outdoors"}
    fact = found.value(Item(Ref("surface", "den-walls"), "length"))
    assert fact is not None
    assert fact.origin == "computed"
    assert fact.calculation is not None
    assert fact.calculation.function == "checker.calc.rooms_plan.free_sides"
    assert found.elements[Ref("surface", "den-walls")].place is not None


def test_a_floor_that_is_a_slab_lies_on_the_ground() -> None:
    found = house(drawn("den", 0, 0, 20, 10), floor="slab")
    assert value(found, "surface", "den-floor", "faces") == "ground"


def test_rooms_of_equal_heat_share_no_surface() -> None:
    found = house(drawn("a", 0, 0, 10, 10), drawn("b", 10.4, 0, 10, 10))
    assert surfaces(found, "a") == {"walls": 240.0, "ceiling": 100.0, "floor": 100.0}


def test_a_gap_wider_than_a_wall_makes_two_outside_walls() -> None:
    found = house(drawn("a", 0, 0, 10, 10), drawn("b", 11.1, 0, 10, 10))
    assert surfaces(found, "a")["walls"] == 320.0


cuts = st.lists(st.integers(min_value=1, max_value=59), max_size=3, unique=True).map(sorted)


@few
@given(cuts, cuts)
def test_the_walls_of_a_storey_are_its_perimeter_times_its_height(across: list[int], along: list[int]) -> None:
    """However a storey of 60 by 60 ft is cut into rectangles; so are ceilings and floors its area."""
    xs, ys = [0, *across, 60], [0, *along, 60]
    rooms = {
        f"r{x}-{y}": (xs[x], ys[y], xs[x + 1] - xs[x], ys[y + 1] - ys[y])
        for x in range(len(xs) - 1)
        for y in range(len(ys) - 1)
    }
    found = house(*(drawn(id_, *rect) for id_, rect in rooms.items()))
    of = {id_: surfaces(found, id_) for id_ in rooms}
    assert sum(each.get("walls", 0.0) for each in of.values()) == pytest.approx(240 * 8, abs=0.1)
    for name in ("ceiling", "floor"):
        assert sum(each[name] for each in of.values()) == pytest.approx(3600, abs=0.1)


@few
@given(st.floats(min_value=3.0, max_value=27.0), st.booleans())
def test_a_wall_inside_leaves_the_loss_of_the_house_alone(cut: float, north: bool) -> None:
    cut = round(cut, 2)
    whole = house(drawn("a", 0, 0, 30, 30))
    halves = (
        (drawn("a", 0, 0, 30, cut), drawn("b", 0, cut, 30, 30 - cut))
        if north
        else (drawn("a", 0, 0, cut, 30), drawn("b", cut, 0, 30 - cut, 30))
    )
    parted = house(*halves)
    for end in ("", "_low", "_high"):
        wanted = number(whole, "house", "", f"heat_loss{end}")
        assert number(parted, "house", "", f"heat_loss{end}") == pytest.approx(wanted, rel=1e-6)


@few
@given(st.integers(min_value=1, max_value=40), st.integers(min_value=1, max_value=40))
def test_a_drawn_room_loses_what_the_same_surfaces_listed_lose(across: int, along: int) -> None:
    by_drawing = house(drawn("den", 0, 0, across, along))
    row = (
        "    - {{id: s{}, status: existing, room: den, assembly: {}, faces: outdoors, area: {} ft2, "
        + NO_OPENINGS
        + "}}"
    )
    rows = "\n".join(
        row.format(place, *of)
        for place, of in enumerate((("w", 16 * (across + along)), ("c", across * along), ("f", across * along)))
    )
    by_list = house(drawn("den", 0, 0, across, along), surfaces=f"  surfaces:\n{rows}")
    assert {ref.id for ref in by_list.elements if ref.kind == "surface"} == {"s0", "s1", "s2"}
    assert number(by_drawing, "room", "den", "heat_loss") == pytest.approx(number(by_list, "room", "den", "heat_loss"))


# Beside, above and below.


def test_an_unheated_room_beside_takes_a_wall_of_its_own() -> None:
    found = house(drawn("den", 0, 0, 10, 10), drawn("shed", 10.4, 2, 10, 6, heated="false"))
    of = surfaces(found, "den")
    assert of == {"walls": 272.0, "wall": 48.0, "ceiling": 100.0, "floor": 100.0}
    assert value(found, "surface", "den-wall", "faces") == "room"
    assert found.elements[Ref("surface", "den-wall")].links["neighbour"].refs == (Ref("room", "shed"),)
    assert lacking(found, "surface", "den-wall", "u_factor") == {("room", "den", "inner_walls_as")}


def test_two_unheated_rooms_beside_take_a_wall_each() -> None:
    found = house(
        drawn("den", 0, 0, 10, 10),
        drawn("shed", 10.4, 0, 10, 5, heated="false"),
        drawn("porch", 0, 10.4, 10, 5, heated="false"),
    )
    assert surfaces(found, "den") == {
        "walls": 200.0,
        "wall-shed": 40.0,
        "wall-porch": 80.0,
        "ceiling": 100.0,
        "floor": 100.0,
    }


UP = level("top", "below: up")


def test_an_unheated_attic_above_is_as_good_as_outdoors() -> None:
    attic = "{id: attic, status: existing, level: top, use: attic, heated: false}"
    found = house(drawn("den", 0, 0, 10, 10), attic, levels=(level(), UP))
    assert surfaces(found, "den") == {"walls": 320.0, "ceiling": 100.0, "floor": 100.0}
    assert value(found, "surface", "den-ceiling", "faces") == "outdoors"


def test_a_room_above_at_the_same_heat_takes_its_part_of_the_ceiling() -> None:
    found = house(drawn("den", 0, 0, 20, 10), drawn("bed", 0, 0, 20, 10, on="top"), levels=(level(), UP))
    assert surfaces(found, "den") == {"walls": 480.0, "floor": 200.0}
    assert surfaces(found, "bed") == {"walls": 480.0, "ceiling": 200.0}


def test_a_smaller_room_above_leaves_the_rest_of_the_ceiling_to_the_sky() -> None:
    """Up to the middle of the wall of the room above: 0.15 m of the ceiling lies under that wall."""
    found = house(drawn("den", 0, 0, 20, 10), drawn("bed", 0, 0, 8, 10, on="top"), levels=(level(), UP))
    assert surfaces(found, "den")["ceiling"] == pytest.approx((12 - 0.15 / FT) * 10, abs=0.01)
    assert "floor" not in surfaces(found, "bed")


def test_an_unheated_room_above_that_is_no_attic_is_a_neighbour() -> None:
    found = house(
        drawn("den", 0, 0, 10, 10),
        drawn("store", 0, 0, 10, 10, on="top", heated="false"),
        levels=(level(), UP),
    )
    assert surfaces(found, "den") == {"walls": 320.0, "ceiling": 100.0, "floor": 100.0}
    assert value(found, "surface", "den-ceiling", "faces") == "room"


DOWN = (level("cellar"), level("up", "below: cellar"))


def test_a_cellar_below_has_its_own_temperature() -> None:
    cellar = "{id: cellar, status: existing, level: cellar, heated: false, winter_temperature: 50 F}"
    found = house(drawn("den", 0, 0, 10, 10), cellar, levels=DOWN)
    assert value(found, "surface", "den-floor", "faces") == "room"
    loss = number(found, "surface", "den-floor", "heat_loss")
    assert loss / 0.29307107 == pytest.approx(0.2 * 100 * 20, rel=1e-4)
    unsaid = house(drawn("den", 0, 0, 10, 10), cellar.replace(", winter_temperature: 50 F", ""), levels=DOWN)
    assert lacking(unsaid, "surface", "den-floor", "heat_loss") == {("room", "cellar", "winter_temperature")}


def test_a_heated_cellar_below_takes_no_heat() -> None:
    found = house(drawn("den", 0, 0, 10, 10), drawn("cellar", 0, 0, 10, 10, on="cellar"), levels=DOWN)
    assert surfaces(found, "den") == {"walls": 320.0, "ceiling": 100.0}


# What cannot be told.


@pytest.mark.parametrize(
    "rooms",
    [
        pytest.param((drawn("den", 0, 0, 10, 10).replace("ceiling: level", "ceiling: sloped"),), id="sloped"),
        pytest.param((drawn("den", 0, 0, 10, 10).replace("level: up, ", ""),), id="no level"),
        pytest.param(
            (drawn("den", 0, 0, 10, 10), "{id: by, status: existing, level: up, heated: true}"), id="not drawn beside"
        ),
        pytest.param(
            (drawn("den", 0, 0, 10, 10), "{id: x, status: existing, level: top, heated: true}",
             "{id: y, status: existing, level: top, heated: false, use: storage}"), id="two not drawn above",
        ),
        pytest.param(
            (drawn("den", 0, 0, 10, 10), "{id: x, status: existing, level: top}"), id="not told whether heated above"
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_told_leaves_the_surfaces_open(rooms: tuple[str, ...]) -> None:
    found = house(*rooms, levels=(level(), UP))
    assert is_open(found, "den")
    assert ("room", "den", "surfaces") in lacking(found, "room", "den", "transmission_heat_loss")
    assert value(found, "room", "den", "heat_loss") is None
    assert value(found, "house", "", "heat_loss") is None


def test_a_level_without_rooms_is_not_taken_for_the_outdoors() -> None:
    """Below stands a cellar of which nobody has said a word: its floor cannot be told."""
    for use in ("basement", "storey", "unknown"):
        cellar = level("cellar", f"use: {use}")
        assert is_open(house(drawn("den", 0, 0, 10, 10), levels=(cellar, level("up", "below: cellar"))), "den")


def test_an_attic_or_crawl_space_without_rooms_is_as_cold_as_the_outdoors() -> None:
    levels = (level("crawl", "use: crawl space"), level("up", "below: crawl"), level("top", "below: up, use: attic"))
    found = house(drawn("den", 0, 0, 10, 10), levels=levels)
    assert surfaces(found, "den") == {"walls": 320.0, "ceiling": 100.0, "floor": 100.0}
    for name in ("ceiling", "floor"):
        assert value(found, "surface", f"den-{name}", "faces") == "outdoors"


def test_a_storey_that_is_added_was_not_there_before() -> None:
    top = level("top", "below: up, use: storey").replace("existing", "new")
    found = house(drawn("den", 0, 0, 10, 10), drawn("bed", 0, 0, 10, 10, on="top", status="new"), levels=(level(), top))
    assert surfaces(found, "den", "before")["ceiling"] == 100.0
    assert "ceiling" not in surfaces(found, "den")


def test_no_height_leaves_the_surfaces_open() -> None:
    room = drawn("den", 0, 0, 10, 10).replace(", ceiling_height: 8 ft", "")
    bare = "{id: up, status: existing, walls: w, ceiling: c, floor: f}"
    assert is_open(house(room, levels=(bare,)), "den")
    assert surfaces(house(room), "den")["walls"] == 320.0


def test_one_room_is_open_the_others_are_not() -> None:
    found = house(
        drawn("den", 0, 0, 10, 10),
        drawn("loft", 10.4, 0, 10, 10).replace("ceiling: level", "ceiling: sloped"),
    )
    assert is_open(found, "loft")
    assert surfaces(found, "den")["walls"] == 240.0


def test_a_room_that_is_not_drawn_is_open_where_another_is() -> None:
    found = house(drawn("den", 0, 0, 10, 10, on="up"), "{id: other, status: existing, level: top, heated: true}",
                  levels=(level(), level("top")))  # fmt: skip
    assert is_open(found, "other")


# Listed surfaces, windows, states.


def test_listed_surfaces_take_precedence_room_by_room() -> None:
    rows = (
        "  surfaces:\n    - {id: only, status: existing, room: den, assembly: w, faces: outdoors, area: 77 ft2, "
        + NO_OPENINGS
        + "}"
    )
    found = house(drawn("den", 0, 0, 10, 10), drawn("by", 10.4, 0, 10, 10), surfaces=rows)
    assert surfaces(found, "den") == {"only": 77.0}
    assert surfaces(found, "by") == {"walls": 240.0, "ceiling": 100.0, "floor": 100.0}


def test_surfaces_that_may_not_be_all_leave_drawn_rooms_open_too() -> None:
    rows = "  surfaces: [{id: x, status: existing, room: den, faces: outdoors, area: 9 ft2}, and others]"
    found = house(drawn("den", 0, 0, 10, 10), drawn("by", 10.4, 0, 10, 10), surfaces=rows)
    assert is_open(found, "den")


def test_windows_and_outside_doors_stand_in_the_walls() -> None:
    found = house(
        drawn("den", 0, 0, 10, 10, "windows: [w1], doors: [front, inner], skylights: []"),
        windows="{id: w1, status: existing, width: 3 ft, height: 4 ft, u_factor: U-0.3}",
        doors="{id: front, status: existing, leads_to: outdoors, width: 3 ft, height: 7 ft, u_factor: U-0.4}, "
        "{id: inner, status: existing, leads_to: room, width: 3 ft, height: 7 ft}",
    )
    assert number(found, "surface", "den-walls", "net_area") / FT**2 == pytest.approx(320 - 12 - 21)
    assert [ref.id for ref in found.elements[Ref("surface", "den-walls")].links["doors"].refs] == ["front"]
    assert number(found, "surface", "den-walls", "openings_heat_loss") / 0.29307107 == pytest.approx(
        (0.3 * 12 + 0.4 * 21) * 70, rel=1e-4
    )


def test_windows_larger_than_the_walls_are_a_fault_at_the_room() -> None:
    found = house(
        drawn("den", 0, 0, 10, 10, "windows: [w1], doors: [], skylights: []"),
        windows="{id: w1, status: existing, width: 30 ft, height: 20 ft, u_factor: U-0.3}",
    )
    faults = [fault for fault in found.faults if fault.item.ref.state == "after"]
    assert [fault.item for fault in faults] == [Item(Ref("surface", "den-walls"), "net_area")]
    place = found.elements[faults[0].item.ref].place
    assert place is not None
    assert place.line == found.elements[Ref("room", "den")].place.line  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("lists", "line"),
    [("doors: [], skylights: []", "windows"), ("windows: [], skylights: []", "doors")],
)
def test_a_drawn_room_without_a_list_of_openings_is_asked_for_it(lists: str, line: str) -> None:
    """A drawn surface has no line in the plan; the room has."""
    found = house(drawn("den", 0, 0, 10, 10, lists))
    assert lacking(found, "room", "den", "heat_loss") == {("room", "den", line)}


@pytest.mark.parametrize("line", ["walls", "ceiling", "floor"])
def test_a_drawn_room_without_an_assembly_is_asked_for_it(line: str) -> None:
    part = {"walls": "w", "ceiling": "c", "floor": "f"}[line]
    found = house(drawn("den", 0, 0, 10, 10), levels=(level().replace(f", {line}: {part}", ""),))
    assert lacking(found, "room", "den", "heat_loss") == {("room", "den", f"{line}_as")}


def test_an_attic_that_becomes_a_room_changes_what_lies_above() -> None:
    """Before, the ceiling was the edge of the heat; after, the roof over the attic is."""
    attic = drawn("bed", 0, 0, 10, 10, on="top", status="altered").replace(
        "level: top", "level: top, was: {use: attic, heated: false}"
    )
    found = house(drawn("den", 0, 0, 10, 10), attic, levels=(level(), UP))
    assert surfaces(found, "den", "before") == {"walls": 320.0, "ceiling": 100.0, "floor": 100.0}
    assert surfaces(found, "den") == {"walls": 320.0, "floor": 100.0}
    assert Ref("surface", "den-ceiling") not in found.elements
    assert Ref("surface", "bed-walls", "before") not in found.elements
    assert surfaces(found, "bed") == {"walls": 320.0, "ceiling": 100.0}
    assert number(found, "room", "bed", "heat_loss", "before") == 0.0


def test_the_rectangle_of_an_altered_room_holds_in_both_states() -> None:
    room = drawn("den", 0, 0, 10, 10, status="altered").replace(
        "level: up", "level: up, was: {heated: true, ceiling: level, ceiling_height: 7 ft}"
    )
    found = house(room)
    assert surfaces(found, "den", "before")["walls"] == 280.0
    assert surfaces(found, "den")["walls"] == 320.0
    assert found.elements[Ref("room", "den", "before")].links["level"].refs == (Ref("level", "up", "before"),)


def test_an_addition_takes_a_wall_away() -> None:
    found = house(drawn("den", 0, 0, 10, 10), drawn("new", 10.4, 0, 10, 10, status="new"))
    assert surfaces(found, "den", "before")["walls"] == 320.0
    assert surfaces(found, "den")["walls"] == 240.0
    assert number(found, "room", "den", "transmission_heat_loss") < number(
        found, "room", "den", "transmission_heat_loss", "before"
    )


def test_a_room_s_own_assemblies_outrank_its_level_s() -> None:
    found = house(drawn("den", 0, 0, 10, 10, f"{NO_OPENINGS}, walls_as: f, ceiling_as: w"))
    assert found.elements[Ref("surface", "den-walls")].links["assembly"].refs == (Ref("assembly", "f"),)
    assert found.elements[Ref("surface", "den-ceiling")].links["assembly"].refs == (Ref("assembly", "w"),)


def test_a_plan_that_draws_and_lists_nothing_has_no_surfaces() -> None:
    found = facts("rooms: [{id: den, status: existing, heated: true, level: up}]\nlevels: [{id: up, status: existing}]")
    assert not any(ref.kind == "surface" for ref in found.elements)
    assert is_open(found, "den")


BESIDE_A_GARAGE = """
plan: Beside a garage
site: {heating_design_temperature: 5 F}
levels:
  - {id: g, status: existing, use: storey, ceiling_height: 8 ft, walls: w, ceiling: w, floor: w}
rooms:
  - {id: den, status: existing, level: g, heated: true, ceiling: level, ceiling_height: 8 ft, from_west: 0 ft,
     from_south: 0 ft, size_west_east: 20 ft, size_south_north: 10 ft, windows: [], doors: [], skylights: [], WALL}
  - {id: car, status: existing, level: g, use: garage, heated: false, winter_temperature: 25 F, from_west: 20.5 ft,
     from_south: 0 ft, size_west_east: 12 ft, size_south_north: 10 ft}
envelope:
  assemblies:
    - {id: w, status: existing, part: wall, u_factor: U-0.1}
    - {id: p, status: existing, part: partition, u_factor: U-0.2}
openings: {windows: [], doors: [], skylights: []}
"""


def test_a_wall_to_a_garage_is_built_as_its_room_says() -> None:
    """80 ft2 of U-0.2 between 70 and 25 degF pass 720 Btu/h."""
    read = plan_from_text(BESIDE_A_GARAGE.replace("WALL", "inner_walls_as: p"))
    found = facts_of(read, {"indoor_temperature": 21.0 + 1 / 9})
    fact = found.value(Item(Ref("surface", "den-wall"), "heat_loss"))
    assert fact is not None
    assert float(fact.value) == pytest.approx(720 * 0.29307107, rel=1e-4)  # type: ignore[arg-type]


def test_without_it_the_room_is_asked() -> None:
    """The line that is missing can be written: it is the room's."""
    found = facts_of(plan_from_text(BESIDE_A_GARAGE.replace(", WALL", "")), {"indoor_temperature": 21.0})
    missing = found.elements[Ref("surface", "den-wall")].missing["heat_loss"]
    assert missing == (Item(Ref("room", "den"), "inner_walls_as"),)


def test_rooms_drawn_over_each_other_are_refused() -> None:
    """With both lines; a room that goes may lie where a new one comes."""
    over = BESIDE_A_GARAGE.replace(", WALL", "").replace("from_west: 20.5 ft", "from_west: 15 ft")
    with pytest.raises(Unreadable, match="drawn over room “den” on line 7"):
        plan_from_text(over)
    one_goes = over.replace("{id: den, status: existing", "{id: den, status: removed")
    plan_from_text(one_goes.replace("{id: car, status: existing", "{id: car, status: new"))
