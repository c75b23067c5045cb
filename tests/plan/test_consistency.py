"""Lines that must not stand together: values the wrong way round, lines that exclude each other, circles, names."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.check import check_read
from checker.engine.image import Cache
from checker.findings.finding import Finding, Result
from checker.plan.consistency import Found, check_loops, check_pairs
from checker.plan.reader import ReadPlan, plan_from_text
from checker.problems import Unreadable


def said(text: str) -> str:
    """What the reader says of a plan that it refuses."""
    with pytest.raises(Unreadable) as caught:
        plan_from_text(f"plan: A house\n{text}\n")
    return str(caught.value)


ORDER = "look whether the two are the wrong way round"
FURNACE = "heating: {{heaters: [{{id: f, status: {status}, {lines}}}]}}"


def furnace(lines: str, status: str = "new") -> str:
    """A plan of one heater."""
    return FURNACE.format(lines=lines, status=status)


def layer(lines: str, status: str = "new") -> str:
    """A plan of one layer."""
    return f"envelope: {{assemblies: [{{id: a, status: {status}, layers: [{{id: l, {lines}}}]}}]}}"


def run(*links: str) -> str:
    """A plan of ducts that say what feeds them: `a<b` is fed by b."""
    rows = [f"{{id: {id_}, status: new{f', fed_by: {by}' if by else ''}}}" for id_, _, by in map(_parts, links)]
    return f"heating: {{ducts: [{', '.join(rows)}]}}"


def _parts(link: str) -> tuple[str, str, str]:
    return link.partition("<")


@pytest.mark.parametrize(
    ("text", "at", "what", "right"),
    [
        pytest.param(
            furnace("type: furnace, output: 90000 Btu/h, input: 80000 Btu/h"),
            "90000 Btu/h", "`output` of heater “f” is more than its `input` on line 2", ORDER, id="output over input",
        ),
        pytest.param(
            furnace("least_rise: 65 F, most_rise: 35 F"),
            "65 F", "`least_rise` of heater “f” is more than its `most_rise` on line 2", ORDER, id="rises",
        ),
        pytest.param(
            furnace("output_low: 60000 Btu/h, output: 50000 Btu/h"),
            "60000 Btu/h", "`output_low` of heater “f” is more than its `output` on line 2", ORDER, id="stages",
        ),
        pytest.param(
            furnace("airflow_low: 1200 cfm, airflow: 900 cfm"),
            "1200 cfm", "`airflow_low` of heater “f” is more than its `airflow` on line 2", ORDER, id="airflows",
        ),
        pytest.param(
            furnace("output: 4 kW, was: {output: 9 kW, input: 8 kW}", "replaced"),
            "9 kW", "`output` of heater “f” is more than its `input` on line 2", ORDER, id="what it was",
        ),
        pytest.param(
            "heating: {appliances: [{id: t, status: new, output: 9 kW, input: 8 kW}]}",
            "9 kW", "`output` of appliance “t” is more than its `input` on line 2", ORDER, id="appliance",
        ),
        pytest.param(
            "envelope: {surfaces: [{id: s, status: new, top_depth: 6 ft, bottom_depth: 2 ft}]}",
            "6 ft", "`top_depth` of surface “s” is more than its `bottom_depth` on line 2", ORDER, id="depths",
        ),
        pytest.param(
            "site: {coldest_months_temperature: -5 F, heating_design_temperature: 20 F}",
            "20 F", "`heating_design_temperature` of the site is more than its `coldest_months_temperature` on line 2",
            ORDER, id="temperatures of the site",
        ),
        pytest.param(
            layer("material: plywood, fill: batt r-13"),
            "fill:", "layer “l” says both `material` and `fill`",
            "a framed layer has `fill`, an unbroken one `material`", id="material and fill",
        ),
        pytest.param(
            "site: {monthly_temperatures: [1 C, 2 C]}",
            "[1 C", "`monthly_temperatures` of the site has 2 values", "give one for each month, from January: 12",
            id="months",
        ),
        pytest.param(
            "site: {bin_temperatures: [1 C, 2 C], bin_hours: [5]}",
            "[1 C", "`bin_temperatures` of the site has 2 values, `bin_hours` 1",
            "the two belong together item by item", id="bins",
        ),
        pytest.param(
            run("a<b", "b<c", "c<a"),
            "b}", "`fed_by` runs in a circle: a → b → c → a", "every chain of `fed_by` must end", id="circle of three",
        ),
        pytest.param(
            run("a<a"),
            "a}", "`fed_by` runs in a circle: a → a", "every chain of `fed_by` must end", id="fed by itself",
        ),
        pytest.param(
            run("x<y", "y<x", "z<x"),
            "y}", "`fed_by` runs in a circle: x → y → x", "every chain of `fed_by` must end",
            id="told once, not of what hangs on it",
        ),
        pytest.param(
            "levels: [{id: a, status: existing, below: b}, {id: b, status: existing, below: a}]",
            "b}", "`below` runs in a circle: a → b → a", "every chain of `below` must end", id="levels",
        ),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_told_with_its_place(text: str, at: str, what: str, right: str) -> None:
    """at: what stands at the place."""
    assert said(text) == f"plan.yaml:2:{text.index(at) + 1}: {what}\n  {right}"


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (layer("material: plywood, thickness: 0 in"), "“0 in” is too small for a length here\n  write: more than 0 in"),
        (furnace("efficiency: 105 %"), "“105 %” is too large for a fraction here"),
        (layer("fill: batt r-13, framing_share: 120 %"), "“120 %” is too large for a fraction here"),
        (layer("material: xps, resistance: R--5"), "R--5"),
        (layer("material: xps, resistance: 5 in"), "`resistance`"),
        ("rooms: [{id: a, status: new, size_west_east: 0 ft}]", "“0 ft” is too small for a length here"),
        ("house: {air_changes_50_measured: -2 /h}", "too small"),
        ("openings: {windows: [{id: w, status: new, u_factor: U-0}]}", "too small"),
        ("envelope: {assemblies: [{id: a, status: new, part: waal}]}", "nearest: wall"),
        ("heating: {ducts: [{id: d, status: new, fed_by: trunk}]}", "no duct has the id “trunk”"),
        ("envelope: {surfaces: [{id: s, status: new, assembly: x}]}", "no assembly has the id “x”"),
    ],
)
def test_values_that_no_thing_can_have_are_refused(text: str, what: str) -> None:
    found = said(text)
    assert what in found
    assert found.startswith("plan.yaml:2:")


@pytest.mark.parametrize(
    "text",
    [
        furnace("output: 80000 Btu/h, input: 80000 Btu/h"),
        furnace("least_rise: 35 F, most_rise: 35 F, output_low: 4 kW, output: 4 kW"),
        "envelope: {surfaces: [{id: s, status: new, top_depth: 0 ft, bottom_depth: 0 ft}]}",
        layer("material: plywood"),
        layer("fill: batt r-13"),
        run("a", "b<a", "c<a", "d<b"),
        "site: {monthly_temperatures: [0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C, 0 C]}",
        "site: {bin_temperatures: [1 C, 2 C]}",
        # One that feeds itself by way of doors is no chain: rooms may open to each other.
        "rooms: [{id: a, status: new, opens_to: b}, {id: b, status: new, opens_to: a}]",
    ],
)
def test_what_can_stand_together_is_read(text: str) -> None:
    read = plan_from_text(f"plan: A house\n{text}\n")
    assert list(check_pairs(read.elements, read.document)) == []
    assert list(check_loops(read.elements, read.document)) == []


def test_a_heat_pump_gives_more_than_it_takes() -> None:
    """Its input is what its compressor draws."""
    assert plan_from_text(f"plan: A house\n{furnace('type: heat pump, output: 9 kW, input: 3 kW')}\n")


def test_all_of_a_plan_is_told_at_once() -> None:
    found = said(
        "heating: {heaters: [{id: f, status: new, least_rise: 9 F, most_rise: 5 F}], ducts: [{id: a, status: new, "
        "fed_by: a}]}\nenvelope: {assemblies: [{id: a, status: new, layers: [{id: l, material: x, fill: y}]}]}"
    )
    assert found.count("plan.yaml:") == 3


def test_elements_are_found_with_their_holder() -> None:
    read: ReadPlan = plan_from_text(f"plan: A house\n{layer('material: plywood')}\n")
    found: Found = read.elements["layer", "l"]
    assert (found.holder, found.status, found.drawn) == (("assembly", "a"), "new", False)


# Against the ruleset: names, contradictions, faults.


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """Where compiled rules are kept."""
    return Cache(tmp_path_factory.mktemp("cache"))


def check(text: str, cache: Cache) -> Result:
    """Check a plan under the United States set."""
    return check_read(plan_from_text(f"plan: A house\nrules: us\n{text}\n"), cache=cache)


def refused(text: str, cache: Cache) -> str:
    """What is said of names that the ruleset does not know."""
    with pytest.raises(Unreadable) as caught:
        check(text, cache)
    return str(caught.value)


def built_in(result: Result, rule: str) -> list[Finding]:
    """The findings of the program itself."""
    return [each for each in result.findings if each.rule.endswith(f"/{rule}")]


@pytest.mark.parametrize(
    ("text", "at", "what", "right"),
    [
        (layer("material: plywod"), "plywod", "the ruleset has no material “plywod”", "nearest: plywood"),
        (layer("fill: batt r-14x, member_material: oak"), "batt r-14x", "no material “batt r-14x”", '"batt r-14"'),
        (layer("fill: batt r-13, member_material: softwud framing"), "softwud", "no material “softwud framing”",
         'nearest: "softwood framing"'),
        (layer("material: something green"), "something green", "the ruleset has no material “something green”",
         "`dryfit rules materials us` lists"),
        ("envelope: {assemblies: [{id: a, status: existing, archetype: 'frame wall before 1945, emty'}]}", "'frame",
         "the ruleset has no archetype “frame wall before 1945, emty”", 'nearest: "frame wall before 1945, empty"'),
        ("envelope: {assemblies: [{id: a, status: existing, archetype: 'single pane, wood sash'}]}", "'single",
         "“single pane, wood sash” is an archetype of a window, not of an assembly", "lists"),
        ("openings: {doors: [{id: d, status: existing, archetype: 'single pane, wood sash'}]}", "'single",
         "“single pane, wood sash” is an archetype of a window, not of a door", "lists"),
        ("house: {tightness: 'very leaky'}", "'very", "the ruleset has no archetype “very leaky”", "leaky"),
        ("house: {was: {tightness: 'leeky house'}}", "'leeky", "the ruleset has no archetype “leeky house”",
         'nearest: "leaky house"'),
        (layer("status: altered, material: plywood, was: {material: plywoood}", "altered"), "plywoood",
         "the ruleset has no material “plywoood”", "nearest: plywood"),
    ],
)  # fmt: skip
def test_an_unknown_name_is_told_with_its_place_and_what_is_near(
    text: str, at: str, what: str, right: str, cache: Cache
) -> None:
    found = refused(text, cache)
    assert found.startswith(f"plan.yaml:3:{text.index(at) + 1}: ")
    assert what in found
    assert right in found


def test_names_are_known_in_any_case_and_by_each_name(cache: Cache) -> None:
    for text in (layer("material: Plywood"), layer("material: PLYWOOD"), "house: {tightness: 'Old house, air sealed'}"):
        assert check(text, cache).plan == "A house"


def test_a_stated_transmittance_far_from_the_layers_is_a_finding(cache: Cache) -> None:
    wall = (
        "envelope: {{assemblies: [{{id: a, status: new, part: wall, u_factor: U-{u}, layers: [{{id: l, material: xps, "
        "thickness: 2 in}}]}}]}}"
    )
    (found,) = [
        each for each in built_in(check(wall.format(u=0.5), cache), "stated-against-computed") if each.subject.id == "a"
    ]
    assert found.place is not None
    assert found.place.line == 3
    assert "0.5" in found.says
    assert built_in(check(wall.format(u=0.091), cache), "stated-against-computed") == []


def test_openings_larger_than_their_wall_are_a_finding_with_a_place(cache: Cache) -> None:
    result = check(
        "rooms: [{id: den, status: new, heated: true}]\n"
        "openings: {windows: [{id: w, status: new, width: 9 ft, height: 9 ft}], doors: [], skylights: []}\n"
        "envelope: {assemblies: [{id: a, status: new, part: wall}], surfaces: [{id: s, status: new, room: den, "
        "assembly: a, faces: outdoors, area: 20 ft2, windows: [w], doors: [], skylights: []}]}",
        cache,
    )
    (found,) = built_in(result, "numbers-make-no-sense")
    assert (found.subject.kind, found.subject.id) == ("surface", "s")
    assert found.place is not None
    assert found.place.line == 5


def test_a_shipped_folder_of_rules_is_where_names_come_from(tmp_path: Path) -> None:
    """A set of its own without materials knows none, and says where they are."""
    from tests.ruleset.writing import STAIRS, write_set

    folder = write_set(tmp_path, stairs=STAIRS)
    read = plan_from_text(f"plan: A house\n{layer('material: plywood')}\n")
    with pytest.raises(Unreadable) as caught:
        check_read(read, str(folder), cache=Cache(tmp_path / "cache"))
    assert "the ruleset has no materials for a layer, so it does not know “plywood”" in str(caught.value)
    assert "adopt a set with materials" in str(caught.value)
