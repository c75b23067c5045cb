"""Lumber, sizes and the design standard as data: faulty files, unknown names, the cache, the list that people read."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from textwrap import dedent, indent

import pytest

from checker.calc.framing.timber import Lumber, TimberStandard
from checker.check import check_read
from checker.engine.image import Cache
from checker.plan.reader import plan_from_text
from checker.problems import Unreadable
from checker.ruleset.adopted import Adopted, adopted_from
from checker.ruleset.adopting import adopt
from checker.ruleset.folders import Library
from checker.ruleset.timber import STANDARD, design_from
from tests.cli.conftest import Run, cache_folder, dryfit
from tests.derive.framing import INCH, PSI, canada
from tests.derive.test_envelope import us
from tests.ruleset.writing import STAIRS, adopted, topic, write_set

__all__ = ["cache_folder", "dryfit"]
CITED = "cite: House rules 7\nbasis: common practice\nknown: read"
PINE = """\
also: [pine two]
sizes: dimension
bending: 900 psi
shear: 150 psi
bearing: 500 psi
stiffness: 1400 ksi
stiffness_low: 510 ksi
edition: NDS 2018
"""
DEPTHS = """\
by_depth:
  - {up_to_depth: 5.7 in, bending: 1000 psi, tension: 600 psi, compression: 1400 psi}
  - {up_to_depth: 24 in, bending: 800 psi, tension: 500 psi, compression: 1300 psi}
"""
METHOD = """\
title: A method
method: allowable stress
strength: [{name: D + L, factors: {dead: 1, live: 1}}, {name: D, factors: {dead: 1}, duration: 0.9}]
live_deflection: [{name: L, factors: {live: 1}}]
total_deflection: [{name: D + L, factors: {dead: 1, live: 1}}]
size_factors:
  dimension:
    - {up_to_depth: 7.7 in, bending: 1.2}
    - {up_to_depth: 24 in, bending: 1.0, from_thickness: 3.4 in}
repetitive: 1.15
repetitive_spacing: 24 in
repetitive_count: 3
"""


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """Compiled rules of this run, shared with other tests of the frame."""
    return Cache(Path(tmp_path_factory.getbasetemp()) / "frame-rules")


def entry(id_: str, lines: str) -> str:
    """An entry of a list, its lines in block style."""
    return indent(f"id: {id_}\n{dedent(lines).strip()}\n{CITED}\n", "    ").replace("    id:", "  - id:", 1)


def woods(*lumber: str, standards: tuple[str, ...] = (), sizes: tuple[str, ...] = ()) -> str:
    """A topic file of lumber, sizes and standards."""
    sections = {"lumber": lumber, "lumber_sizes": sizes, "timber_standard": standards}
    return topic("woods", *(f"{name}:\n{''.join(entries)}" for name, entries in sections.items() if entries))


def refused(tmp_path: Path, text: str) -> str:
    """What is said of a topic file that is refused."""
    write_set(tmp_path, stairs=STAIRS, woods=text)
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path)
    return str(caught.value)


def line_of(text: str, part: str) -> int:
    """The line on which a part stands."""
    return text[: text.index(part)].count("\n") + 1


# A sound file.


def test_a_sound_file_is_taken_in(tmp_path: Path) -> None:
    text = woods(
        entry("pine no. 2", PINE),
        entry("fir no. 2", PINE.replace("also: [pine two]\n", "").replace("bending: 900 psi\n", DEPTHS)),
        standards=(entry("method", METHOD),),
        sizes=(entry("2x8", "width: 1-1/2 in\ndepth: 7-1/4 in"),),
    )
    write_set(tmp_path, stairs=STAIRS, woods=text)
    of = adopted(tmp_path).catalogue
    assert set(of["lumber"]) == {"pine no. 2", "pine two", "fir no. 2"}
    pine, fir, standard = of["lumber"]["pine two"], of["lumber"]["fir no. 2"], of[STANDARD]["method"]
    assert isinstance(pine.design, Lumber)
    assert isinstance(fir.design, Lumber)
    assert isinstance(standard.design, TimberStandard)
    assert pine.design.bending_pa == pytest.approx(900 * PSI)
    assert pine.design.stiffness_pa == pytest.approx(1.4e6 * PSI)
    assert pine.design.compression_pa is None
    assert pine.properties["bending"] == pytest.approx(900 * PSI)
    assert [each.bending_pa / PSI for each in fir.design.by_depth] == pytest.approx([1000, 800])
    assert [each.up_to_depth_m / INCH for each in fir.design.by_depth] == pytest.approx([5.7, 24])
    assert "bending" not in fir.properties
    assert fir.properties["shear"] == pytest.approx(150 * PSI)
    assert standard.design.repetitive_spacing_m == pytest.approx(24 * INCH)
    assert standard.design.strength[1].duration == 0.9
    sizes = standard.design.size_factors["dimension"]
    assert [each.from_thickness_m / INCH for each in sizes] == pytest.approx([0, 3.4])
    assert of["lumber size"]["2x8"].properties["depth"] == pytest.approx(7.25 * INCH)
    assert pine.source == "House rules 7"


def test_a_set_without_a_standard_can_be_adopted(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=STAIRS, woods=woods(entry("pine no. 2", PINE)))
    assert STANDARD not in adopted(tmp_path).catalogue


# Faulty files.


def in_depths(value: str, instead: str) -> str:
    """Lumber by depth with another value."""
    return PINE.replace("bending: 900 psi\n", DEPTHS.replace(value, instead))


@pytest.mark.parametrize(
    ("lines", "at", "what"),
    [
        (PINE.replace("900 psi", "900 lb"), "900 lb", "`bending`: 900 lb is a mass or a force; a stress is needed"),
        (PINE.replace("150 psi", "150 psf/"), "150 psf/", "`shear`: 150 psf/"),
        (PINE.replace("1400 ksi", "fast"), "fast", "`stiffness`: "),
        (in_depths("600 psi", "600 ft"), "600 ft", "`tension`: 600 ft is a length"),
        (PINE + DEPTHS, "pine no. 2",
         "“pine no. 2” has no bending value, or two kinds of it\n  `bending:` or `by_depth:`"),
        (PINE.replace("bending: 900 psi\n", ""), "pine no. 2", "“pine no. 2” has no bending value, or two kinds of it"),
        (in_depths("5.7 in", "25 in"), "- {up",
         "the depths do not rise\n  from the least depth to the greatest"),
        (in_depths("5.7 in", "24 in"), "- {up", "the depths do not rise"),
        (PINE.replace("shear: 150 psi\n", ""), "- id", "needs `shear`"),
        (PINE.replace("edition: NDS 2018\n", ""), "- id", "needs `edition`"),
        (PINE.replace("bending:", "bendng:"), "bendng", "`bendng` is not known here\n  nearest: bending"),
    ],
)  # fmt: skip
def test_faulty_lumber_is_told_with_its_line(tmp_path: Path, lines: str, at: str, what: str) -> None:
    text = woods(entry("pine no. 2", lines))
    found = refused(tmp_path, text)
    assert what in found
    assert f"woods.yaml:{line_of(text, at)}:" in found
    assert found.count("woods.yaml:") == 1


@pytest.mark.parametrize(
    ("lines", "what"),
    [
        (METHOD.replace("allowable stress", "luck"), "`method` is “luck”"),
        (METHOD.replace("24 in\n", "24 psi\n"), "`repetitive_spacing`: 24 psi is"),
        (METHOD.replace("7.7 in", "7.7 psi"), "`up_to_depth`: 7.7 psi is a"),
        (METHOD.replace("3.4 in", "3.4 lb"), "`from_thickness`: 3.4 lb is a mass or a force"),
        (METHOD.replace("{live: 1}", "{lift: 1}"), "lift"),
        (METHOD.replace("repetitive: 1.15\n", ""), "needs `repetitive`"),
    ],
)
def test_a_faulty_standard_is_told_with_its_line(tmp_path: Path, lines: str, what: str) -> None:
    found = refused(tmp_path, woods(entry("pine no. 2", PINE), standards=(entry("method", lines),)))
    assert what in found
    assert "woods.yaml:" in found


def test_two_standards_are_one_too_many(tmp_path: Path) -> None:
    text = woods(standards=(entry("method", METHOD), entry("other", METHOD)))
    found = refused(tmp_path, text)
    assert (
        f"woods.yaml:{line_of(text, 'other')}:9: the design standard “other” is a second one beside “method”" in found
    )
    assert "adopt one set with a `timber_standard`" in found


def test_two_adopted_sets_with_a_standard_are_one_too_many(tmp_path: Path) -> None:
    write_set(tmp_path, "one", woods=woods(standards=(entry("method", METHOD),)))
    write_set(tmp_path, "two", woods=woods(standards=(entry("other", METHOD),)))
    more = 'adopts:\n  - {set: one, edition: "2023"}\n  - {set: two, edition: "2023"}\n'
    write_set(tmp_path, stairs=STAIRS, more=more)
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path)
    assert "is a second one beside" in str(caught.value)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (woods(entry("pine no. 2", PINE), entry("pine no. 2", PINE.replace("pine two", "pine ii"))),
         "two lumber go by the name “pine no. 2”"),
        (woods(entry("pine no. 2", PINE), entry("fir", PINE)), "two lumber go by the name “pine two”"),
        (woods(sizes=(entry("2x8", "width: 1-1/2 in\ndepth: 7-1/4 in"),) * 2), "two lumber_sizes go by the name “2x8”"),
        (woods(sizes=(entry("2x8", "width: 1-1/2 in\ndepth: 7 psi"),)), "`depth`: 7 psi is"),
        (woods(sizes=(entry("2x8", "width: 1-1/2 in"),)), "needs `depth`"),
    ],
)  # fmt: skip
def test_names_and_sizes(tmp_path: Path, text: str, what: str) -> None:
    assert what in refused(tmp_path, text)


# What is shipped.


@pytest.mark.parametrize("name", ["us", "canada"])
def test_a_set_has_one_standard_and_lumber_that_it_can_work_with(name: str) -> None:
    of = (us() if name == "us" else canada()).catalogue
    (standard,) = {id(entry): entry for entry in of[STANDARD].values()}.values()
    assert isinstance(standard.design, TimberStandard)
    assert standard.design.method == ("allowable stress" if name == "us" else "limit states")
    for entry_ in of["lumber"].values():
        lumber = entry_.design
        assert isinstance(lumber, Lumber)
        assert not lumber.sizes or lumber.sizes in standard.design.size_factors, entry_.name
        assert 0.3 * lumber.stiffness_pa < lumber.stiffness_low_pa < lumber.stiffness_pa, entry_.name
        bending = [each.bending_pa for each in lumber.by_depth] or [lumber.bending_pa]
        assert bending == sorted(bending, reverse=True), entry_.name
        assert all(250 * PSI < value < 4500 * PSI for value in bending), entry_.name
    for size in of["lumber size"].values():
        width, depth = float(str(size.properties["width"])), float(str(size.properties["depth"]))
        assert 0.015 < width <= depth < 0.45, size.name


# The cache.


@pytest.mark.parametrize("name", ["us", "canada"])
def test_lumber_and_standard_come_back_from_the_cache_as_they_were(name: str) -> None:
    made: Adopted = us() if name == "us" else canada()
    back = adopted_from(json.loads(json.dumps(made.to_data())))
    assert back.catalogue == made.catalogue
    for catalogue in ("lumber", STANDARD):
        for each, entry_ in back.catalogue[catalogue].items():
            was = made.catalogue[catalogue][each].design
            assert type(entry_.design) is type(was)
            assert entry_.design == was
            assert entry_ is back.catalogue[catalogue][entry_.name]


def test_the_cache_does_not_take_other_data_for_lumber() -> None:
    assert design_from("lumber", None) is None
    pine = us().catalogue["lumber"]["hem-fir no. 2"].design
    assert isinstance(pine, Lumber)
    data = {name: getattr(pine, name) for name in ("name", "bending_pa", "shear_pa", "bearing_pa", "stiffness_pa")}
    with pytest.raises(ValueError, match="stiffness_low_pa"):
        design_from("lumber", data)
    assert design_from("lumber", {**data, "stiffness_low_pa": pine.stiffness_low_pa}) == replace(
        Lumber(**data, stiffness_low_pa=pine.stiffness_low_pa)
    )


# Names that plans use.


@pytest.mark.parametrize(
    ("line", "what", "right"),
    [
        ("lumber: spf no. 22", "the ruleset has no lumber “spf no. 22”", 'nearest: "spf no. 2"'),
        ("lumber: hem fir no. 2", "the ruleset has no lumber “hem fir no. 2”", "hem-fir no. 2"),
        ("lumber: mahogany", "the ruleset has no lumber “mahogany”", "`dryfit rules materials us` lists"),
        ("size: 2x9", "the ruleset has no lumber size “2x9”", "2x"),
        ("size: 2x11", "the ruleset has no lumber size “2x11”", "2x1"),
        ("size: 38x235", "the ruleset has no lumber size “38x235”", "lists"),
    ],
)
def test_unknown_names_are_told_with_the_nearest(cache: Cache, line: str, what: str, right: str) -> None:
    plan = f"plan: A house\nframing:\n  members:\n    - id: j\n      status: altered\n      was:\n        {line}\n"
    with pytest.raises(Unreadable) as caught:
        check_read(plan_from_text(plan, "plan.yaml"), "us", cache=cache)
    found = str(caught.value)
    assert f"plan.yaml:7:{9 + line.index(':') + 2}: {what}" in found
    assert right in found


def test_names_do_not_depend_on_capitals(tmp_path: Path) -> None:
    plan = "plan: A\nframing: {members: [{id: j, status: new, size: 2X8, lumber: Hem-Fir No. 2}]}\n"
    write_set(tmp_path, stairs=STAIRS, woods=woods(entry("hem-fir no. 2", PINE), sizes=(
        entry("2x8", "width: 1-1/2 in\ndepth: 7-1/4 in"),)))  # fmt: skip
    result = check_read(plan_from_text(plan), str(tmp_path / "base"), cache=Cache(tmp_path / "cache"))
    member = next(known for ref, known in result.facts.elements.items() if ref.kind == "member")
    assert member.values["actual_depth"].value == pytest.approx(7.25 * INCH)


def test_a_size_of_another_country_is_known_there() -> None:
    """The nominal inches are another name of the millimetres."""
    metric = adopt("canada", Library()).catalogue["lumber size"]
    assert metric["2x10"] is metric["38x235"]
    assert "38x235" not in us().catalogue["lumber size"]


# Listed.


def test_the_command_lists_lumber_with_its_values(dryfit: Run) -> None:
    result = dryfit("rules", "materials", "hem-fir", "no. 2")
    assert result.exit_code == 0
    said = " ".join(result.output.split())
    assert "hem-fir no. 2" in said
    for value in ("bending 850 psi", "shear 150 psi", "National Design Specification"):
        assert value in said
    assert "spruce" not in said


def test_the_command_lists_every_lumber_size_and_standard(dryfit: Run) -> None:
    result = dryfit("rules", "materials")
    said = " ".join(result.output.split())
    for catalogue in ("lumber", "lumber size", STANDARD):
        for each in us().catalogue[catalogue].values():
            assert each.name in said, each.name
    assert "(or: 1 x 2; 1 by 2)" in said


def test_the_command_prints_metric_values(dryfit: Run) -> None:
    result = dryfit("rules", "materials", "s-p-f", "no. 3", "--rules", "canada", "--units", "metric")
    assert result.exit_code == 0
    assert "bending 7 MPa" in " ".join(result.output.split())
