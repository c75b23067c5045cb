"""Assemblies, layers and surfaces from plan lines: each method, both states, what is stated, unknown or contradicts."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.errors import OutOfRange
from checker.calc.thermal import assembly as calc
from checker.derive.derived import contradicts, facts_of
from checker.facts import Facts, Item, Known, Ref, State, Value
from checker.plan.reader import plan_from_text
from checker.ruleset.adopted import Adopted
from checker.ruleset.adopting import adopt
from checker.ruleset.folders import Library
from tests.derive.test_derivations import ALL

R = 0.1761101836823
"""One unit of R in m2K/W."""
STUDS = "members: studs, member_width: 1-1/2 in, spacing: 16 in"
WALL = [
    "material: gypsum board, thickness: 1/2 in",
    f"fill: batt r-13, {STUDS}",
    "material: plywood, thickness: 1/2 in",
    "material: vinyl siding",
]
few = settings(deadline=None, max_examples=40)
rsi = st.floats(min_value=0.05, max_value=6.0, allow_nan=False).map(lambda value: round(value, 4))


@cache
def us() -> Adopted:
    """The United States set in its newest edition."""
    return adopt("us", Library())


def facts(lines: str, **changes: Value) -> Facts:
    """The facts of a plan of these lines under the United States set; changes: other assumptions."""
    read = plan_from_text(f"plan: A house\n{lines}\n")
    return facts_of(read, {**us().assumed(), **changes}, us().catalogue)


def value(of: Facts, kind: str, id_: str, name: str, state: State = "after") -> Any:
    """The value of an attribute, None if it is not known."""
    fact = of.value(Item(Ref(kind, id_, state), name))
    return fact.value if fact else None


def number(of: Facts, kind: str, id_: str, name: str, state: State = "after") -> float:
    """The value of a quantity that must be known."""
    found = value(of, kind, id_, name, state)
    missing = of.elements[Ref(kind, id_, state)].missing.get(name)
    assert isinstance(found, float | int) and not isinstance(found, bool), (kind, id_, name, state, missing)
    return found


def lacking(of: Facts, kind: str, id_: str, name: str, state: State = "after") -> set[tuple[str, str, str]]:
    """The plan lines without which an attribute is not known: kind, id, line."""
    known: Known = of.elements[Ref(kind, id_, state)]
    assert name not in known.values
    return {(item.ref.kind, item.ref.id, item.name) for item in known.missing[name]}


def assembly(layers: list[str], more: str = "part: wall", status: str = "new") -> str:
    """Plan lines of one assembly; its layers are numbered l0, l1 and so on, from inside."""
    rows = ", ".join(f"{{id: l{place}, {layer}}}" for place, layer in enumerate(layers))
    return f"envelope: {{assemblies: [{{id: a, status: {status}, {more}, layers: [{rows}]}}]}}"


def built(layers: list[str], more: str = "part: wall", **changes: Value) -> Callable[[str], float]:
    """The facts of one assembly, by name."""
    found = facts(assembly(layers, more), **changes)
    return lambda name: number(found, "assembly", "a", name)


# By hand.


def test_a_wall_by_hand_in_each_method() -> None:
    """Gypsum 1/2 in, batt R-13, plywood 1/2 in, siding; studs of 3-1/2 in are a quarter of the wall."""
    wall = built(WALL)
    films, board, panel, siding = 0.68 * R + 0.17 * R, 0.0127 / 0.16, 0.0127 / 0.115, 0.11
    share = 1.5 / 16 + 0.156
    batt, stud = 13 * R, 0.0889 / 0.12
    rest = films + board + panel + siding
    parallel = 1 / ((1 - share) / (rest + batt) + share / (rest + stud))
    layer = 1 / ((1 - share) / batt + share / stud)
    assert wall("resistance_by_parallel_paths") == pytest.approx(parallel, rel=1e-6)
    assert wall("resistance_by_isothermal_planes") == pytest.approx(rest + layer, rel=1e-6)
    assert wall("resistance_by_combined_method") == pytest.approx((parallel + rest + layer) / 2, rel=1e-6)
    assert wall("effective_resistance") == pytest.approx(rest + layer, rel=1e-6)
    assert wall("u_factor") == pytest.approx(1 / parallel, rel=1e-6)
    assert wall("cavity_insulation") == pytest.approx(13 * R)
    assert wall("continuous_insulation") == 0.0


@pytest.mark.parametrize(
    ("method", "by"),
    [
        ("parallel paths", "resistance_by_parallel_paths"),
        ("isothermal planes", "resistance_by_isothermal_planes"),
        ("combined", "resistance_by_combined_method"),
        ("framed layers only", "effective_resistance"),
    ],
)
def test_the_ruleset_picks_the_method(method: str, by: str) -> None:
    wall = built(WALL, resistance_method=method)
    assert wall("u_factor") == pytest.approx(1 / wall(by))


@pytest.mark.parametrize(
    ("more", "inside", "outside"),
    [
        ("part: wall", 0.68, 0.17),
        ("part: roof", 0.61, 0.17),
        ("part: floor", 0.92, 0.17),
        ("part: ceiling under attic", 0.61, 0.61),
        ("part: knee wall", 0.68, 0.68),
        ("part: partition", 0.68, 0.68),
        ("part: wall below grade", 0.68, 0.0),
        ("part: slab", 0.92, 0.0),
        ("part: floor, heated_other_side: true", 0.92, 0.92),
    ],
)
def test_each_part_has_its_films(more: str, inside: float, outside: float) -> None:
    found = built(["material: plywood, resistance: R-1"], more)("total_resistance")
    assert found == pytest.approx((1 + inside + outside) * R)


def test_what_lies_outside_a_vented_space_does_not_count() -> None:
    board = "material: plywood, resistance: R-1"
    brick = "material: face brick, thickness: 4 in"
    behind = built([board, "material: vented air space, thickness: 1 in", brick])
    assert behind("total_resistance") == pytest.approx((1 + 0.68 + 0.68) * R)
    thicker = built([board, "material: vented air space, thickness: 1 in", brick, brick])
    assert thicker("total_resistance") == behind("total_resistance")


# Rules that hold for every wall.


@few
@given(st.lists(rsi, min_size=1, max_size=4), rsi, st.floats(min_value=0.0, max_value=1.0), st.data())
def test_isothermal_combined_parallel_stand_in_order(
    flat: list[float], batt: float, share: float, data: st.DataObject
) -> None:
    """And a wall of studs only, or of fill only, is the same by every method."""
    share = round(share, 4)
    layers = [f"material: plywood, resistance: RSI-{each}" for each in flat]
    framed = f"fill: batt r-13, resistance: RSI-{batt}, framing_share: {share * 100:.2f} %, {STUDS}"
    layers.insert(data.draw(st.integers(min_value=0, max_value=len(flat))), framed)
    wall = built(layers)
    low, mean, high = (
        wall(f"resistance_by_{name}") for name in ("isothermal_planes", "combined_method", "parallel_paths")
    )
    assert low <= mean * (1 + 1e-9)
    assert mean <= high * (1 + 1e-9)
    stud = 0.0889 / 0.12
    rest = sum(flat) + 0.85 * R
    assert rest + min(batt, stud) - 1e-6 <= low
    assert high <= rest + max(batt, stud) + 1e-6
    if share in (0.0, 1.0):
        assert low == pytest.approx(high)


def test_a_stud_is_never_added_to_its_insulation() -> None:
    """More wood makes an insulated wall worse; in series it would make it better."""
    bare = [f"fill: batt r-13, framing_share: {share} %, {STUDS}" for share in (0, 10, 25, 40, 100)]
    found = [built([layer])("resistance_by_isothermal_planes") for layer in bare]
    assert found == sorted(found, reverse=True)
    series = (13 + 0.85) * R + 0.0889 / 0.12
    assert all(each < series - 0.5 for each in found)


def test_that_check_sees_a_stud_in_series(monkeypatch: pytest.MonkeyPatch) -> None:
    """The fault planted: fill and member one behind the other."""
    monkeypatch.setattr(calc, "isothermal_planes", lambda paths, shares: sum(map(sum, paths)) / 2)
    with pytest.raises(AssertionError):
        test_a_stud_is_never_added_to_its_insulation()


@few
@given(rsi, rsi, rsi)
def test_more_of_any_insulation_never_lowers_the_resistance(batt: float, board: float, more: float) -> None:
    def wall(cavity: float, outside: float) -> float:
        framed = f"fill: batt r-13, resistance: RSI-{cavity:.4f}, {STUDS}"
        return built([WALL[0], framed, f"material: xps, resistance: RSI-{outside:.4f}"])("total_resistance")

    plain = wall(batt, board)
    assert wall(batt + more, board) > plain
    assert wall(batt, board + more) > plain


COLD = "site: {coldest_months_temperature: 0 F, heating_design_temperature: -10 F}\n"


@few
@given(rsi, rsi, st.sampled_from(["xps", "mineral wool board"]))
def test_layers_that_change_places_leave_the_resistance_but_move_the_sheathing(
    inner: float, outer: float, sort: str
) -> None:
    framed = f"fill: batt r-13, {STUDS}"
    one, other = (f"material: {sort}, thickness: 1 in, resistance: RSI-{each}" for each in (inner, outer))
    first = facts(COLD + assembly([one, framed, other]))
    second = facts(COLD + assembly([other, framed, one]))
    total, swapped = (number(each, "assembly", "a", "total_resistance") for each in (first, second))
    assert swapped == pytest.approx(total, rel=1e-9)
    cold, warm = (number(each, "assembly", "a", "sheathing_temperature") for each in (first, second))
    if outer == inner:
        assert warm == pytest.approx(cold)
    else:
        assert (warm > cold) is (inner > outer)


def test_insulation_outside_keeps_the_sheathing_over_the_dew_point_inside_it_does_not() -> None:
    foam, framed = "material: xps, thickness: 4 in", f"fill: batt r-13, {STUDS}"
    panel = "material: osb, thickness: 7/16 in"
    outside = facts(COLD + assembly([framed, foam, panel]))
    inside = facts(COLD + assembly([foam, framed, panel]))
    assert value(outside, "assembly", "a", "sheathing_below_dew_point") is False
    assert value(inside, "assembly", "a", "sheathing_below_dew_point") is True
    dew = number(outside, "assembly", "a", "indoor_dew_point")
    assert dew == pytest.approx(5.0, abs=0.6)
    share = number(outside, "assembly", "a", "outboard_share")
    warm, cold = us().assumed()["indoor_temperature"], -160 / 9
    assert isinstance(warm, float)
    assert number(outside, "assembly", "a", "sheathing_temperature") == pytest.approx(cold + share * (warm - cold))
    assert number(outside, "assembly", "a", "total_resistance") == pytest.approx(
        number(inside, "assembly", "a", "total_resistance")
    )


def test_what_lies_inboard_and_outboard_by_hand() -> None:
    """The plane is the outer face of the studs: R 0.68 + 0.45 + 13 inside of it, 5 + 0.17 outside of it."""
    board, foam = "material: gypsum board, resistance: R-0.45, thickness: 1/2 in", "material: xps, resistance: R-5"
    found = facts(COLD + assembly([board, f"fill: batt r-13, {STUDS}", f"{foam}, thickness: 1 in"]))
    assert number(found, "assembly", "a", "inboard_resistance") == pytest.approx(14.13 * R)
    assert number(found, "assembly", "a", "outboard_resistance") == pytest.approx(5.17 * R)
    assert number(found, "assembly", "a", "outboard_insulation") == pytest.approx(5 * R)
    assert number(found, "assembly", "a", "foam_outside_thickness") == pytest.approx(0.0254)
    fahrenheit = number(found, "assembly", "a", "sheathing_temperature") * 1.8 + 32
    assert fahrenheit == pytest.approx(70 * 5.17 / 19.3)
    warm = number(found, "layer", "l0", "permeance")
    assert number(found, "assembly", "a", "inside_permeance") == pytest.approx(warm)


# Both states.


LAYERED = """
envelope:
  assemblies:
    - id: a
      status: altered
      part: wall
      layers:
        - {id: old-board, status: removed, material: lath and plaster, resistance: R-0.5}
        - {id: panel, status: existing, material: plywood, resistance: R-1}
        - {id: studs, status: altered,
           was: {fill: "air space, wall", thickness: 3-1/2 in, framing_share: 20 %, members: studs},
           fill: batt r-13, framing_share: 25 %, members: studs, member_width: 1-1/2 in, spacing: 16 in}
        - {id: foam, status: new, material: xps, resistance: R-5, thickness: 1 in}
"""


def test_before_has_removed_and_existing_layers_after_existing_and_new() -> None:
    found = facts(LAYERED, resistance_method="framed layers only")
    films = 0.85 * R
    stud = 0.0889 / 0.12
    before = films + 1.5 * R + 1 / (0.8 / 0.18 + 0.2 / stud)
    after = films + 6 * R + 1 / (0.75 / (13 * R) + 0.25 / stud)
    assert number(found, "assembly", "a", "effective_resistance", "before") == pytest.approx(before, rel=1e-6)
    assert number(found, "assembly", "a", "effective_resistance") == pytest.approx(after, rel=1e-6)
    assert value(found, "assembly", "a", "cavities_empty", "before") is True
    assert value(found, "assembly", "a", "cavities_empty") is False
    assert number(found, "assembly", "a", "continuous_insulation", "before") == 0.0
    assert number(found, "assembly", "a", "continuous_insulation") == pytest.approx(5 * R)


def test_what_an_altered_assembly_is_a_part_of_holds_in_both_states() -> None:
    """`part` is no line of `was`, so it cannot change."""
    found = facts(LAYERED)
    assert value(found, "assembly", "a", "part", "before") == "wall"
    assert value(found, "assembly", "a", "vented", "before") is None
    with_was = LAYERED.replace(
        "      part: wall\n", "      part: wall\n      vented: true\n      was: {vented: false}\n"
    )
    assert value(facts(with_was), "assembly", "a", "vented", "before") is False
    assert value(facts(with_was), "assembly", "a", "vented") is True


# Unknown.


def test_a_plan_of_assemblies_alone_gives_their_transmittance() -> None:
    assert built(WALL)("u_factor") == pytest.approx(0.44, abs=0.05)


BY_LAYERS = "resistance_by_parallel_paths"


@pytest.mark.parametrize(
    ("layers", "name", "lines"),
    [
        pytest.param([WALL[0], "material: plywood"], BY_LAYERS, {("layer", "l1", "resistance")}, id="no thickness"),
        pytest.param(
            ["thickness: 1 in"],
            BY_LAYERS,
            {("layer", "l0", "material"), ("layer", "l0", "resistance"), ("layer", "l0", "framing_share")},
            id="no material",
        ),
        pytest.param(
            ["fill: fibreglass batt, thickness: 3-1/2 in, members: studs, spacing: 16 in"],
            BY_LAYERS,
            {("layer", "l0", "framing_share")},
            id="no width of the members",
        ),
        pytest.param(
            ["material: batt r-13, thickness: 6 in"],
            BY_LAYERS,
            {("layer", "l0", "resistance")},
            id="a product in another thickness",
        ),
        pytest.param(
            [f"fill: fibreglass batt, {STUDS}"],
            "thickness",
            {("layer", "l0", "thickness")},
            id="how deep the fill is",
        ),
        pytest.param(
            ["material: asbestos insulation, thickness: 1 in", f"fill: batt r-13, {STUDS}"],
            "inside_permeance",
            {("layer", "l0", "permeance")},
            id="no permeance in the table",
        ),
        pytest.param(
            [f"fill: batt r-13, {STUDS}", "material: osb, thickness: 1/2 in"],
            "sheathing_temperature",
            {("site", "", "coldest_months_temperature")},
            id="no winter temperature",
        ),
    ],
)
def test_what_is_missing_is_told_by_its_line(layers: list[str], name: str, lines: set[tuple[str, str, str]]) -> None:
    """A line that can state the very value is the one asked for."""
    assert lacking(facts(assembly(layers)), "assembly", "a", name) == lines


@pytest.mark.parametrize("layers", ["", ", layers: unknown", ", layers: [{id: l, material: vinyl siding}, and others]"])
def test_layers_that_nobody_listed_are_asked_for(layers: str) -> None:
    found = facts(f"envelope: {{assemblies: [{{id: a, status: new, part: wall{layers}}}]}}")
    for name in (BY_LAYERS, "insulation"):
        assert ("assembly", "a", "layers") in lacking(found, "assembly", "a", name)
    assert lacking(found, "assembly", "a", "total_resistance") == {("assembly", "a", "u_factor")}


def test_no_part_is_asked_for() -> None:
    found = facts("envelope: {assemblies: [{id: a, status: new, layers: [{id: l, material: vinyl siding}]}]}")
    assert lacking(found, "assembly", "a", BY_LAYERS) == {("assembly", "a", "part")}


# Stated values and archetypes.


@pytest.mark.parametrize(
    ("layer", "name", "si"),
    [
        ("material: batt r-13, resistance: R-15", "resistance", 15 * R),
        ("material: xps, thickness: 1 in, resistance: R-5.6", "resistance", 5.6 * R),
        ("material: osb, thickness: 1/2 in, permeance: 2 perm", "permeance", 2 * 5.72135e-11),
        ("material: batt r-13, thickness: 4 in, resistance: R-13", "thickness", 0.1016),
        (f"fill: batt r-13, {STUDS}, framing_share: 12 %", "framing_share", 0.12),
    ],
)
def test_what_is_stated_outranks_the_table(layer: str, name: str, si: float) -> None:
    found = facts(assembly([layer]))
    fact = found.value(Item(Ref("layer", "l0"), name))
    assert fact is not None
    assert fact.origin == "stated"
    assert fact.value == pytest.approx(si, rel=1e-4)


@pytest.mark.parametrize(("stated", "against"), [("U-0.08", False), ("U-0.0745", False), ("U-0.12", True)])
def test_a_stated_transmittance_holds_and_may_contradict_the_layers(stated: str, against: bool) -> None:
    found = facts(assembly(WALL, f"part: wall, u_factor: {stated}"))
    fact = found.value(Item(Ref("assembly", "a"), "u_factor"))
    assert fact is not None
    assert fact.origin == "stated"
    assert fact.computed is not None
    assert contradicts(fact, ALL["assembly", "u_factor"]) is against
    assert number(found, "assembly", "a", "total_resistance") == pytest.approx(1 / float(str(fact.value)))


def test_a_closed_wall_is_known_by_what_it_looks_like_and_says_so() -> None:
    name = "frame wall before 1945, empty"
    found = facts(f'envelope: {{assemblies: [{{id: a, status: existing, part: wall, archetype: "{name}"}}]}}')
    entry = us().catalogue["archetype"][name].properties
    likely, low, high = (number(found, "assembly", "a", f"u_factor{end}") for end in ("", "_low", "_high"))
    assert (likely, low, high) == pytest.approx(
        (1 / float(str(entry["resistance"])), 1 / float(str(entry["resistance_high"])),
         1 / float(str(entry["resistance_low"])))
    )  # fmt: skip
    assert low < likely < high
    fact = found.value(Item(Ref("assembly", "a"), "u_factor"))
    assert fact is not None
    assert f"archetype “{name}”" in fact.rests_on


@pytest.mark.parametrize("known", ["layers", "u_factor"])
def test_with_layers_or_a_stated_value_the_archetype_spreads_nothing(known: str) -> None:
    look = 'part: wall, archetype: "frame wall before 1945, empty"'
    lines = assembly(WALL, look) if known == "layers" else (
        f"envelope: {{assemblies: [{{id: a, status: existing, {look}, u_factor: U-0.2}}]}}"
    )  # fmt: skip
    found = facts(lines)
    u = number(found, "assembly", "a", "u_factor")
    assert [number(found, "assembly", "a", f"u_factor_{end}") for end in ("low", "high")] == pytest.approx([u, u])


# Surfaces.


ROOM = (
    "site: {{heating_design_temperature: 0 F{site}}}\n"
    "rooms: [{{id: den, status: new, heated: true{room}}}]\n"
    "openings: {{windows: [{{id: w, status: new, width: 4 ft, height: 5 ft, {window}}}], doors: [], skylights: []}}\n"
    "envelope: {{assemblies: [{{id: a, status: new, part: {part}, u_factor: U-0.1, layers: []}}], surfaces: ["
    "{{id: s, status: new, room: den, assembly: a, {surface}, windows: [w], doors: [], skylights: []}}]}}"
)


def room(
    surface: str = "faces: outdoors, area: 100 ft2",
    window: str = "u_factor: U-0.5",
    site: str = "",
    room: str = "",
    part: str = "wall",
) -> Facts:
    """A heated room at 70 °F with one surface and a window of 20 ft2 in it."""
    return facts(ROOM.format(surface=surface, window=window, site=site, room=room, part=part))


BTU = 0.29307107


def test_a_surface_loses_by_its_net_area_its_window_by_its_own() -> None:
    found = room()
    assert number(found, "surface", "s", "heat_loss") / BTU == pytest.approx(0.1 * 80 * 70, rel=1e-4)
    assert number(found, "surface", "s", "openings_heat_loss") / BTU == pytest.approx(0.5 * 20 * 70, rel=1e-4)
    assert number(found, "surface", "s", "conductance") == pytest.approx((8 + 10) * BTU * 1.8, rel=1e-4)


def test_windows_larger_than_their_wall_are_a_fault() -> None:
    found = room("faces: outdoors, area: 15 ft2")
    assert value(found, "surface", "s", "net_area") is None
    (fault,) = found.faults
    assert fault.item == Item(Ref("surface", "s"), "net_area")
    assert "opening_areas_m2" in fault.what
    assert value(found, "surface", "s", "heat_loss") is None


def test_a_room_colder_than_outdoors_is_a_fault() -> None:
    found = room(site="", room=", design_indoor_temperature: -5 F")
    assert [fault.item.name for fault in found.faults] == ["temperature_difference"]


@pytest.mark.parametrize(
    ("change", "name", "lines"),
    [
        ({"surface": "area: 100 ft2"}, "heat_loss", {("surface", "s", "faces")}),
        ({"surface": "faces: outdoors"}, "heat_loss", {("surface", "s", "area")}),
        ({"surface": "faces: ground, area: 100 ft2, top_depth: 0 ft", "part": "wall below grade"}, "u_factor",
         {("surface", "s", "bottom_depth")}),
        ({"surface": "faces: ground, area: 100 ft2", "part": "slab"}, "u_factor",
         {("surface", "s", "bottom_depth"), ("surface", "s", "floor_width")}),
        ({"surface": "faces: ground, area: 100 ft2, perimeter_factor: 1.2 W/mK", "part": "slab"}, "u_factor",
         {("surface", "s", "exposed_perimeter")}),
        ({"surface": "faces: ground, area: 100 ft2, top_depth: 0 ft, bottom_depth: 6 ft", "part": "wall below grade"},
         "heat_loss", {("site", "", "ground_temperature")}),
        ({"window": "glass: ordinary"}, "conductance", {("window", "w", "u_factor")}),
    ],
)  # fmt: skip
def test_a_surface_tells_which_line_it_lacks(
    change: dict[str, str], name: str, lines: set[tuple[str, str, str]]
) -> None:
    assert lacking(room(**change), "surface", "s", name) == lines


def test_no_list_of_windows_leaves_the_net_area_unknown() -> None:
    found = facts(ROOM.format(surface="faces: outdoors, area: 100 ft2", window="u_factor: U-0.5", site="", room="",
                              part="wall").replace("windows: [w]", "windows: unknown"))  # fmt: skip
    assert lacking(found, "surface", "s", "net_area") == {("surface", "s", "windows")}


def test_no_design_temperature_leaves_the_loss_unknown() -> None:
    found = facts(ROOM.format(surface="faces: outdoors, area: 100 ft2", window="u_factor: U-0.5", site="", room="",
                              part="wall").replace("heating_design_temperature: 0 F", "altitude: 0 ft"))  # fmt: skip
    assert lacking(found, "surface", "s", "heat_loss") == {("site", "", "heating_design_temperature")}
    assert number(found, "surface", "s", "conductance") > 0


def test_a_slab_loses_by_its_edge_to_the_outdoors() -> None:
    found = room("faces: ground, area: 100 ft2, perimeter_factor: 1.2 W/mK, exposed_perimeter: 10 m", part="slab")
    assert number(found, "surface", "s", "u_factor") * 100 * 0.09290304 == pytest.approx(12.0)
    assert number(found, "surface", "s", "other_side_temperature") == pytest.approx(-17.7778, abs=1e-3)


def test_a_label_outranks_what_a_window_looks_like_and_spreads_nothing() -> None:
    found = room(window='u_factor: U-0.28, archetype: "single pane, wood sash"')
    loss = number(found, "window", "w", "heat_loss")
    assert number(found, "window", "w", "u_factor") == pytest.approx(0.28 * 5.678263, rel=1e-5)
    for end in ("low", "high"):
        assert number(found, "window", "w", f"heat_loss_{end}") == pytest.approx(loss)


def test_without_a_label_a_window_spreads() -> None:
    found = room(window='archetype: "single pane, wood sash"')
    low, likely, high = (number(found, "window", "w", f"heat_loss{end}") for end in ("_low", "", "_high"))
    assert low < likely < high


@few
@given(st.sampled_from([-10, 40, 60, 75, 90]), st.sampled_from(["solid brick 8 in, plastered", "old slab"]))
def test_bounds_stand_around_the_loss_even_of_a_gain(beyond: int, look: str) -> None:
    """A warmer room on the other side gives heat: its bounds change places."""
    lines = (
        f"rooms: [{{id: den, status: existing, heated: true}}, {{id: by, status: existing, heated: false, "
        f"winter_temperature: {beyond} F}}]\n"
        f'envelope: {{assemblies: [{{id: a, status: existing, part: wall, archetype: "{look}"}}], surfaces: ['
        "{id: s, status: existing, room: den, assembly: a, faces: room, neighbour: by, area: 90 ft2, windows: [], "
        "doors: [], skylights: []}]}"
    )
    found = facts(lines)
    low, likely, high = (number(found, "surface", "s", f"heat_loss{end}") for end in ("_low", "", "_high"))
    assert low <= likely <= high
    assert low < high


def test_the_calculation_refuses_what_it_cannot_do() -> None:
    with pytest.raises(OutOfRange):
        calc.parallel_path([[1.0], [2.0]], [0.7, 0.7])
