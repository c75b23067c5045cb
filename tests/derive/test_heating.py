"""Heat losses, equipment, ducts and ventilation from plan lines: sums, states, what is measured, stated or unknown."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.derive.derived import contradicts
from checker.facts import Facts, Item, Ref, State
from checker.units import Dimension, parse
from tests.derive.test_derivations import ALL
from tests.derive.test_envelope import facts, lacking, number, value

BTU = 0.29307107
CFM = 0.00047194745
few = settings(deadline=None, max_examples=25)
STATES: tuple[State, ...] = ("before", "after")
ROOM = (
    "{{id: {id}, status: existing, level: up, heated: true, ceiling: level, ceiling_height: 8 ft, floor_area: 150 ft2}}"
)
SURFACE = (
    "{{id: {id}-s, status: existing, room: {id}, assembly: a, faces: outdoors, area: {area} ft2, windows: [], "
    "doors: [], skylights: []}}"
)


def house(
    areas: dict[str, float],
    u: str = "U-0.1",
    outdoors: str = "0 F",
    tightness: str = "air_changes_50_target: 5 ACH50",
    heating: str = "ventilators: []",
    layers: str = "",
    site: str = "",
) -> Facts:
    """A house of rooms, each with one outside surface of so many square feet."""
    rooms = ", ".join(ROOM.format(id=id_) for id_ in areas)
    surfaces = ", ".join(SURFACE.format(id=id_, area=area) for id_, area in areas.items())
    built = f"layers: [{layers}]" if layers else f"u_factor: {u}, layers: []"
    return facts(
        f"site: {{heating_design_temperature: {outdoors}, altitude: 0 ft{site}}}\n"
        f"house: {{{tightness}}}\n"
        "levels: [{id: up, status: existing}]\n"
        f"rooms: [{rooms}]\n"
        f"envelope: {{assemblies: [{{id: a, status: existing, part: wall, {built}}}], surfaces: [{surfaces}]}}\n"
        "openings: {windows: [], doors: [], skylights: []}\n"
        f"heating: {{{heating}}}"
    )


# Loss.


def test_a_room_by_hand() -> None:
    """U-0.1 over 200 ft2 and 70 °F; 5/20 air changes of 1200 ft3, 1.08 Btu/h for each cfm and degree, near enough."""
    found = house({"den": 200})
    assert number(found, "room", "den", "transmission_heat_loss") / BTU == pytest.approx(1400, rel=1e-4)
    air = number(found, "room", "den", "infiltration_heat_loss") / BTU
    assert air == pytest.approx(1.08 * 1200 * 5 / 20 / 60 * 70, rel=0.01)
    assert number(found, "room", "den", "heat_loss") / BTU == pytest.approx(1400 + air, rel=1e-4)


@few
@given(st.lists(st.integers(min_value=1, max_value=900), min_size=1, max_size=5))
def test_rooms_add_to_the_house_and_to_their_level(areas: list[int]) -> None:
    found = house({f"r{place}": area for place, area in enumerate(areas)})
    rooms = [number(found, "room", f"r{place}", "heat_loss") for place in range(len(areas))]
    assert number(found, "house", "", "heat_loss") == pytest.approx(sum(rooms))
    assert number(found, "level", "up", "heat_loss") == pytest.approx(sum(rooms))
    surfaces = [number(found, "surface", f"r{place}-s", "area") for place in range(len(areas))]
    assert sum(surfaces) == pytest.approx(sum(areas) * 0.09290304)


@few
@given(st.integers(min_value=-40, max_value=60), st.integers(min_value=10, max_value=900))
def test_the_loss_grows_straight_with_the_difference(outdoors: int, area: int) -> None:
    here, there = house({"den": area}, outdoors=f"{outdoors} F"), house({"den": area}, outdoors="0 F")
    share = (70 - outdoors) / 70
    for name in ("transmission_heat_loss", "infiltration_heat_loss", "heat_loss"):
        assert number(here, "room", "den", name) == pytest.approx(number(there, "room", "den", name) * share, rel=1e-6)


@few
@given(st.floats(min_value=0.2, max_value=6.0), st.floats(min_value=0.01, max_value=4.0), st.booleans())
def test_more_insulation_never_raises_a_loss(resistance: float, more: float, between_studs: bool) -> None:
    framed = (
        "{{id: l, status: existing, fill: batt r-13, resistance: RSI-{r:.4f}, framing_share: 25 %, members: studs}}"
    )
    flat = "{{id: l, status: existing, material: xps, resistance: RSI-{r:.4f}}}"
    layer = framed if between_studs else flat
    thin, thick = (house({"den": 100}, layers=layer.format(r=each)) for each in (resistance, resistance + more))
    assert number(thick, "room", "den", "heat_loss") < number(thin, "room", "den", "heat_loss")
    assert number(thick, "house", "", "heat_loss") < number(thin, "house", "", "heat_loss")


def test_an_unheated_room_loses_nothing_and_needs_no_more_lines() -> None:
    found = facts("rooms: [{id: attic, status: existing, heated: false}]")
    assert value(found, "room", "attic", "heat_loss") == 0.0
    assert value(found, "room", "attic", "held_temperature") is None


def test_the_balance_of_a_space_between() -> None:
    """10 W/K from a room at 20 °C, 30 W/K to outdoors at -20 °C: the space is at -10 °C."""
    surface = (
        "{{id: {}, status: existing, room: {}, assembly: {}, {}, area: 10 m2, windows: [], doors: [], skylights: []}}"
    )
    found = facts(
        "site: {heating_design_temperature: -20 C}\n"
        "rooms: [{id: den, status: existing, heated: true, design_indoor_temperature: 20 C},"
        " {id: shed, status: existing, heated: false}]\n"
        "openings: {windows: [], doors: [], skylights: []}\n"
        "envelope: {assemblies: [{id: one, status: existing, part: partition, u_factor: 1 W/m2K}, "
        "{id: three, status: existing, part: wall, u_factor: 3 W/m2K}], surfaces: ["
        + surface.format("in", "den", "one", "faces: room, neighbour: shed")
        + ", "
        + surface.format("out", "shed", "three", "faces: outdoors")
        + "]}"
    )
    assert number(found, "room", "shed", "winter_temperature") == pytest.approx(-10.0)
    assert number(found, "surface", "in", "heat_loss") == pytest.approx(10 * 30)


def test_tightness_measured_outranks_target_and_class_and_only_a_class_spreads() -> None:
    measured, target, look = (
        "air_changes_50_measured: 8 /h",
        "air_changes_50_target: 3 /h",
        'tightness: "leaky, before 1945"',
    )
    for lines, likely, origin in (
        (f"{measured}, {target}, {look}", 8.0, "measured"),
        (f"{target}, {look}", 3.0, "target"),
        (look, 10.5, "class of tightness"),
    ):
        found = house({"den": 100}, tightness=lines)
        assert number(found, "house", "", "air_changes_50") == pytest.approx(likely)
        assert value(found, "house", "", "air_changes_50_from") == origin
        low, loss, high = (number(found, "room", "den", f"heat_loss{end}") for end in ("_low", "", "_high"))
        if origin == "class of tightness":
            assert low < loss < high
            air = number(found, "room", "den", "infiltration_heat_loss")
            assert high - loss == pytest.approx(air * (19 / 10.5 - 1))
        else:
            assert low == pytest.approx(loss)
            assert high == pytest.approx(loss)


def test_the_house_was_leakier() -> None:
    found = house({"den": 100}, tightness="air_changes_50_target: 4 /h, was: {air_changes_50_measured: 12 /h}")
    before, after = (number(found, "room", "den", "infiltration_heat_loss", state) for state in STATES)
    assert before == pytest.approx(3 * after)
    unsaid = house({"den": 100}, tightness="air_changes_50_target: 4 /h")
    assert value(unsaid, "house", "", "air_changes_50", "before") is None


def test_a_window_was_worse() -> None:
    lines = (
        "site: {heating_design_temperature: 0 F}\n"
        "rooms: [{id: den, status: existing, heated: true}]\n"
        "openings: {windows: [{id: w, status: replaced, width: 3 ft, height: 4 ft, u_factor: U-0.25, "
        "was: {width: 3 ft, height: 5 ft, archetype: single pane}}], doors: [], skylights: []}\n"
        "envelope: {assemblies: [{id: a, status: existing, part: wall, u_factor: U-0.1}], surfaces: [{id: s, "
        "status: existing, room: den, assembly: a, faces: outdoors, area: 80 ft2, windows: [w], doors: [], "
        "skylights: []}]}"
    ).replace("single pane}", '"single pane, wood sash"}')
    found = facts(lines)
    assert number(found, "surface", "s", "net_area") / 0.09290304 == pytest.approx(68)
    assert number(found, "surface", "s", "net_area", "before") / 0.09290304 == pytest.approx(65)
    single = number(found, "window", "w", "u_factor", "before")
    assert number(found, "surface", "s", "openings_heat_loss", "before") == pytest.approx(
        single * 15 * 0.09290304 * 70 / 1.8, rel=1e-5
    )
    assert number(found, "surface", "s", "openings_heat_loss") / BTU == pytest.approx(0.25 * 12 * 70, rel=1e-4)


@pytest.mark.parametrize(
    ("change", "element", "name", "lines"),
    [
        ({"outdoors": "unknown"}, ("room", "den"), "heat_loss", {("site", "", "heating_design_temperature")}),
        ({"tightness": ""}, ("room", "den"), "heat_loss", {("house", "", "air_changes_50_measured")}),
        ({"heating": ""}, ("house", ""), "heat_loss", {("house", "", "ventilators")}),
        ({"heating": "ventilators: [{id: v, status: new, type: exhaust only, airflow: 50 cfm}]"}, ("house", ""),
         "heat_loss", {("ventilator", "v", "run_share")}),
        ({"heating": "ventilators: [{id: v, status: new, type: balanced with recovery, airflow: 50 cfm, run_share: "
          "100 %}]"}, ("house", ""), "heat_loss", {("ventilator", "v", "recovery")}),
    ],
)  # fmt: skip
def test_what_a_loss_lacks_is_told_by_its_line(
    change: dict[str, str], element: tuple[str, str], name: str, lines: set[tuple[str, str, str]]
) -> None:
    assert lacking(house({"den": 100}, **change), *element, name) == lines


@pytest.mark.parametrize(
    "lines", ["ceiling: level, ceiling_height: 8 ft", "ceiling: level, floor_area: 90 ft2", "ceiling: sloped"]
)
def test_a_volume_that_does_not_follow_is_asked_for(lines: str) -> None:
    found = facts(f"rooms: [{{id: den, status: new, heated: true, {lines}}}]")
    assert lacking(found, "room", "den", "volume") == {("room", "den", "volume")}


def test_ventilation_with_recovery_loses_what_it_does_not_recover() -> None:
    lines = "ventilators: [{{id: v, status: new, type: {type}, airflow: 100 cfm, run_share: 60 %, recovery: 75 %}}]"
    with_it = house({"den": 100}, heating=lines.format(type="balanced with recovery"))
    without = house({"den": 100}, heating=lines.format(type="exhaust only"))
    plain = number(without, "ventilator", "v", "heat_loss")
    assert plain / BTU == pytest.approx(1.08 * 60 * 70, rel=0.01)
    assert number(with_it, "ventilator", "v", "heat_loss") == pytest.approx(plain / 4)
    rooms = number(without, "room", "den", "heat_loss")
    assert number(without, "house", "", "heat_loss") == pytest.approx(rooms + plain)


# Equipment.


FURNACE = "id: f, status: new, type: furnace, fuel: natural gas"


def heaters(lines: str, **more: str) -> Facts:
    """A house of one room with a heater of these lines."""
    return house({"den": 400}, heating=f"ventilators: [], heaters: [{{{FURNACE}, {lines}}}]", **more)


def test_a_plan_of_a_furnace_alone_gives_output_and_rise() -> None:
    found = facts(f"heating: {{heaters: [{{{FURNACE}, input: 80000 Btu/h, efficiency: 95 %, airflow: 1200 cfm}}]}}")
    assert number(found, "heater", "f", "output") / BTU == pytest.approx(76000)
    assert number(found, "heater", "f", "temperature_rise") * 1.8 == pytest.approx(76000 / 1.08 / 1200, rel=0.01)
    assert lacking(found, "heater", "f", "size_ratio") >= {("house", "", "rooms")}


@pytest.mark.parametrize(
    ("lines", "name", "missing"),
    [
        ("output: 60000 Btu/h", "temperature_rise", {("heater", "f", "airflow")}),
        ("input: 60000 Btu/h, airflow: 1000 cfm", "temperature_rise", {("heater", "f", "output")}),
        ("output: 60000 Btu/h", "airflow_least", {("heater", "f", "most_rise")}),
        ("blower_pressure: 0.5 inwc, component_pressure: 0.2 inwc", "duct_pressure", {("heater", "f", "filters")}),
    ],
)
def test_what_a_heater_lacks_is_told_by_its_line(lines: str, name: str, missing: set[tuple[str, str, str]]) -> None:
    assert lacking(heaters(lines), "heater", "f", name) == missing


def test_measured_airflow_outranks_measured_rise_and_that_the_makers_table() -> None:
    plate = "output: 60000 Btu/h, airflow: 1000 cfm"
    for lines, cfm, origin in (
        (f"{plate}, measured_rise: 60 F, measured_airflow: 800 cfm", 800.0, "measured airflow"),
        (f"{plate}, measured_rise: 60 F", 60000 / 1.08 / 60, "measured temperature rise"),
        (plate, 1000.0, "maker's table"),
    ):
        found = heaters(lines)
        assert number(found, "heater", "f", "system_airflow") / CFM == pytest.approx(cfm, rel=0.01)
        assert value(found, "heater", "f", "system_airflow_from") == origin
    both = heaters(f"{plate}, measured_rise: 60 F, measured_airflow: 800 cfm")
    assert number(both, "heater", "f", "temperature_rise") * 1.8 == pytest.approx(60)


def test_a_burner_loses_output_with_altitude_a_resistance_does_not() -> None:
    heater = "heating: {{heaters: [{{id: f, status: new, fuel: {fuel}, output: 50000 Btu/h}}]}}"
    for fuel, btu in (("natural gas", 40000), ("propane", 40000), ("electricity", 50000), ("oil", 50000)):
        found = facts("site: {altitude: 5000 ft}\n" + heater.format(fuel=fuel))
        assert number(found, "heater", "f", "output_on_site") / BTU == pytest.approx(btu)


def test_a_stated_output_far_from_input_and_efficiency_contradicts() -> None:
    for output, against in (("76000", False), ("79000", False), ("60000", True)):
        found = heaters(f"input: 80000 Btu/h, efficiency: 95 %, output: {output} Btu/h")
        fact = found.value(Item(Ref("heater", "f"), "output"))
        assert fact is not None
        assert contradicts(fact, ALL["heater", "output"]) is against


def test_the_heater_that_was() -> None:
    found = house(
        {"den": 400},
        heating="ventilators: [], heaters: [{id: f, status: replaced, type: furnace, fuel: natural gas, output: 40000 "
        "Btu/h, was: {fuel: oil, output: 90000 Btu/h}}]",
        tightness="air_changes_50_target: 5 /h, was: {air_changes_50_measured: 5 /h}",
    )
    before, after = (number(found, "heater", "f", "size_ratio", state) for state in STATES)
    assert before == pytest.approx(after * 90 / 40)
    assert value(found, "heater", "f", "type", "before") is None


def test_one_of_two_heaters_is_not_held_against_the_whole_loss() -> None:
    two = "{id: f, status: new, fuel: oil, output: 9 kW}, {id: g, status: new, fuel: oil, output: 6 kW}"
    found = house({"den": 400}, heating=f"ventilators: [], heaters: [{two}]")
    assert value(found, "heater", "f", "size_ratio") is None
    loss = number(found, "house", "", "heat_loss")
    assert number(found, "house", "", "size_ratio") == pytest.approx(15000 / loss)


def test_size_ratios_stand_in_order() -> None:
    found = heaters("output: 40000 Btu/h", tightness='tightness: "leaky, before 1945"')
    low, likely, high = (number(found, "heater", "f", f"size_ratio{end}") for end in ("_low", "", "_high"))
    assert low < likely < high


# Ducts.


TREE = """ventilators: [], heaters: [{{id: f, status: existing, type: furnace, fuel: natural gas, output: 60000 Btu/h,
    airflow: 1000 cfm, blower_pressure: 0.5 inwc, component_pressure: 0.25 inwc, filters: {filters}}}], ducts: [
    {{id: trunk, status: existing, role: supply, heater: f, {size}, length: 20 ft, fittings_length: 30 ft}},
    {{id: to-a, status: existing, role: supply, fed_by: trunk, room: a, {small}, length: {length} ft,
    fittings_length: 70 ft}},
    {{id: to-a2, status: existing, role: supply, fed_by: trunk, room: a, {small}, length: 10 ft,
    fittings_length: 70 ft}},
    {{id: to-b, status: existing, role: supply, fed_by: trunk, room: b, {small}, length: 15 ft,
    fittings_length: 60 ft}},
    {{id: back, status: existing, role: return, heater: f, {size}, length: 10 ft, fittings_length: 40 ft}},
    {{id: up-return, status: existing, role: return, fed_by: back, level: up, {size}, length: 10 ft,
    fittings_length: 30 ft}}{more}]"""
LARGE = "shape: rectangular, width: 20 in, height: 8 in, material: sheet metal"
FILTER = (
    "[{{id: x, width: {w} in, height: 20 in, rated_pressure: 0.1 inwc, rated_velocity: 300 fpm, flow_exponent: 1.5}}]"
)


def ducts(
    size: str = LARGE,
    small: str = "shape: round, diameter: 8 in, material: sheet metal",
    filters: str = "[]",
    length: float = 30,
    more: str = "",
    **rest: str,
) -> Facts:
    """Two rooms, one of them with two supplies, and a return for the floor; room a loses three times as much as b."""
    tree = TREE.format(size=size, small=small, filters=filters, length=length, more=more)
    return house({"a": 300, "b": 100, "c": 200}, heating=tree, tightness="air_changes_50_target: 0 /h", **rest)


def cfm(of: Facts, id_: str) -> float:
    """The airflow of a run."""
    return number(of, "duct", id_, "airflow") / CFM


def test_a_trunk_carries_what_its_branches_do() -> None:
    """Room c has no supply and takes no share."""
    found = ducts()
    assert [cfm(found, id_) for id_ in ("to-a", "to-a2", "to-b")] == pytest.approx([375, 375, 250], rel=1e-4)
    assert cfm(found, "trunk") == pytest.approx(1000, rel=1e-4)
    assert number(found, "room", "c", "supply_airflow") == 0.0


def test_a_return_takes_back_what_its_level_gets() -> None:
    found = ducts()
    assert cfm(found, "up-return") == pytest.approx(1000, rel=1e-4)
    assert cfm(found, "back") == pytest.approx(1000, rel=1e-4)
    own = "{{id: own, status: existing, role: return, fed_by: back, room: b, {}, length: 9 ft, fittings_length: 9 ft}}"
    found = ducts(more=", " + own.format(LARGE))
    assert cfm(found, "own") == pytest.approx(250, rel=1e-4)
    assert cfm(found, "up-return") == pytest.approx(750, rel=1e-4)
    assert cfm(found, "back") == pytest.approx(1000, rel=1e-4)


def test_the_longest_way_shares_what_the_blower_has_left() -> None:
    """0.25 in of water over 150 ft of supply and 90 ft of return."""
    found = ducts()
    assert number(found, "heater", "f", "longest_way") / 0.3048 == pytest.approx(50 + 100 + 50 + 40)
    wanted = parse("0.25 inwc", Dimension.AIR_PRESSURE) / (240 * 0.3048)
    assert number(found, "heater", "f", "friction_rate") == pytest.approx(wanted, rel=1e-4)
    assert number(found, "duct", "to-b", "design_friction") == pytest.approx(wanted, rel=1e-4)
    assert number(found, "duct", "to-a", "way_length") / 0.3048 == pytest.approx(150)


@few
@given(st.integers(min_value=8, max_value=24), st.integers(min_value=1, max_value=12))
def test_a_smaller_filter_never_lets_a_duct_carry_more(width: int, less: int) -> None:
    wide, narrow = (ducts(filters=FILTER.format(w=each)) for each in (width + less, width))
    pressure, higher = (number(each, "air-filter", "x", "pressure") for each in (wide, narrow))
    assert higher > pressure
    for id_ in ("trunk", "to-a", "back"):
        roomy, tight = (number(each, "duct", id_, "airflow_carried") for each in (wide, narrow))
        assert tight < roomy or roomy == tight == 0.0


@few
@given(st.integers(min_value=1, max_value=200), st.integers(min_value=1, max_value=100))
def test_a_longer_duct_never_lets_a_duct_carry_more(length: int, more: int) -> None:
    short, long = (ducts(length=each) for each in (length, length + more))
    for id_ in ("trunk", "to-a", "to-b", "up-return"):
        assert number(long, "duct", id_, "airflow_carried") <= number(short, "duct", id_, "airflow_carried")


def test_a_filter_that_takes_everything_leaves_nothing_to_carry() -> None:
    found = ducts(filters=FILTER.format(w=6))
    assert number(found, "heater", "f", "duct_pressure") == 0.0
    assert number(found, "duct", "to-a", "airflow_carried") == 0.0
    assert value(found, "duct", "to-a", "load_share") is None
    assert value(found, "duct", "to-a", "diameter_needed") is None
    assert found.faults == ()


def test_without_the_filter_s_size_every_duct_of_the_system_asks_for_it() -> None:
    found = ducts(filters=FILTER.format(w=14).replace("width: 14 in, ", ""))
    for id_ in ("trunk", "to-a", "back", "up-return"):
        assert lacking(found, "duct", id_, "airflow_carried") == {("air-filter", "x", "width")}


@few
@given(st.integers(min_value=4, max_value=20), st.sampled_from(["sheet metal", "flexible", "duct board", "plastic"]))
def test_what_a_duct_carries_and_the_size_that_it_needs_agree(inches: int, material: str) -> None:
    """At its own load share of 1 a duct is as large as it must be; flexible takes more than metal."""
    found = ducts(small=f"shape: round, diameter: {inches} in, material: {material}")
    metal = ducts(small=f"shape: round, diameter: {inches} in, material: sheet metal")
    share, needed = (number(found, "duct", "to-b", name) for name in ("load_share", "diameter_needed"))
    assert (share > 1) is (needed > inches * 0.0254)
    carried, by_metal = (number(each, "duct", "to-b", "airflow_carried") for each in (found, metal))
    assert carried < by_metal if material in ("flexible", "duct board") else carried == by_metal
    speed = number(found, "duct", "to-b", "air_velocity")
    assert speed == pytest.approx(cfm(found, "to-b") * CFM / (3.14159265 * (inches * 0.0254 / 2) ** 2), rel=1e-6)


@pytest.mark.parametrize(
    ("change", "name", "lines"),
    [
        ({"small": "shape: round, material: sheet metal"}, "airflow_carried", {("duct", "to-a", "diameter")}),
        ({"small": "shape: rectangular, width: 8 in, material: flexible"}, "area", {("duct", "to-a", "height")}),
        ({"small": "diameter: 8 in, material: sheet metal"}, "area", {("duct", "to-a", "shape")}),
        ({"outdoors": "unknown"}, "air_velocity", {("duct", "to-a", "airflow")}),
    ],
)
def test_what_a_duct_lacks_is_told_by_its_line(
    change: dict[str, str], name: str, lines: set[tuple[str, str, str]]
) -> None:
    assert lacking(ducts(**change), "duct", "to-a", name) == lines  # type: ignore[arg-type]


def test_a_room_s_air_is_unknown_without_the_system_s() -> None:
    heating = (
        "heaters: [{id: f, status: new, fuel: oil}], ducts: [{id: d, status: new, role: supply, heater: f, room: a}]"
    )
    found = house({"a": 100}, heating="ventilators: [], " + heating)
    assert lacking(found, "room", "a", "supply_airflow") == {("heater", "f", "airflow")}
    assert value(found, "duct", "d", "airflow") is None


def test_a_supply_that_ends_nowhere_is_asked_where_it_ends() -> None:
    """Also one that names a level, which only a return can serve."""
    for more in ("", ", level: up"):
        stray = f"{{id: stray, status: existing, role: supply, fed_by: trunk, length: 9 ft{more}}}"
        assert value(ducts(more=f", {stray}"), "duct", "stray", "airflow") is None


# Ventilation and flames.


def test_the_ventilation_asked_for_and_given() -> None:
    found = facts(
        "house: {conditioned_area: 2000 ft2, bedrooms: 3}\n"
        "heating: {ventilators: [{id: v, status: new, type: exhaust only, airflow: 100 cfm, run_share: 50 %}]}"
    )
    assert number(found, "house", "", "ventilation_needed") / CFM == pytest.approx(50, rel=1e-4)
    assert number(found, "house", "", "ventilation_airflow") / CFM == pytest.approx(50, rel=1e-4)
    assert number(found, "house", "", "ventilation_share") == pytest.approx(1, rel=1e-4)
    assert lacking(facts("house: {bedrooms: 3}"), "house", "", "ventilation_needed") == {
        ("house", "", "conditioned_area")
    }


def test_exhausts_pull_a_tighter_house_further_down() -> None:
    lines = (
        "house: {{air_changes_50_measured: {} /h, heated_volume: 12000 ft3}}\n"
        "heating: {{appliances: [{{id: hood, status: new, type: range hood, exhaust_airflow: {} cfm, "
        "make_up_airflow: {} cfm}}]}}"
    )
    loose, tight, fed = (
        number(facts(lines.format(*of)), "house", "", "depressurisation")
        for of in ((6, 400, 0), (2, 400, 0), (2, 400, 400))
    )
    assert tight == pytest.approx(loose * 3 ** (1 / 0.65))
    assert fed == 0.0


def test_a_flame_needs_air_only_if_it_takes_it_from_the_room() -> None:
    lines = (
        "rooms: [{{id: cellar, status: existing, volume: 4000 ft3}}]\n"
        "heating: {{heaters: [], appliances: [{{id: tank, status: existing, type: water heater, room: cellar, "
        "fuel: natural gas, input: 40000 Btu/h, combustion_air_from: {}}}]}}"
    )
    indoors, piped = (facts(lines.format(of)) for of in ("indoors", "'outdoors, piped'"))
    assert number(indoors, "room", "cellar", "flame_volume_share") == pytest.approx(2.0, rel=1e-4)
    assert number(piped, "room", "cellar", "flame_input") == 0.0
    assert value(piped, "room", "cellar", "flame_volume_share") is None
    assert lacking(facts(lines.format("unknown")), "room", "cellar", "flame_input") == {
        ("appliance", "tank", "combustion_air_from")
    }
