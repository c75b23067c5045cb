"""Materials and archetypes: those that are shipped, what is said of a faulty file, how they are kept and listed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from textwrap import indent

import pytest

from checker.check import adopted_ruleset
from checker.engine.image import Cache
from checker.findings.words import label
from checker.problems import Unreadable
from checker.ruleset.adopted import Adopted, adopted_from
from checker.ruleset.adopting import adopt
from checker.ruleset.catalogue import PROPERTIES, AdoptedEntry, Archetype, Material
from checker.ruleset.folders import Library
from checker.ruleset.places import shipped
from checker.units import show
from tests.cli.conftest import Run, cache_folder, dryfit
from tests.derive.test_envelope import us
from tests.ruleset.writing import STAIRS, adopted, topic, write_set

__all__ = ["cache_folder", "dryfit"]
ENTRIES: list[Material | Archetype] = []
for _topic in Library().folder("materials").topics:
    ENTRIES += [*_topic.model.materials, *_topic.model.archetypes]
SOME = {
    # name: a property, its value [SI], how far it may lie off, where that value is known from
    "softwood framing": ("conductivity", 0.12, 0.02),
    "gypsum board": ("conductivity", 0.16, 0.02),
    "plywood": ("conductivity", 0.115, 0.02),
    "xps": ("conductivity", 0.0288, 0.002),
    "batt r-13": ("resistance", 13 * 0.17611, 0.001),
    "batt r-38": ("resistance", 38 * 0.17611, 0.1),
    "face brick": ("conductivity", 1.0, 0.35),
    "concrete": ("conductivity", 1.9, 0.6),
    "closed-cell spray foam": ("conductivity", 0.025, 0.004),
    "polyethylene 6 mil": ("permeance", 0.06 * 5.72135e-11, 1e-13),
    "single pane, wood sash": ("u_factor", 0.9 * 5.678, 0.6),
    "double pane, low-e, argon": ("u_factor", 0.3 * 5.678, 0.3),
}


@cache
def names() -> Mapping[str, list[str]]:
    """Every name of every entry, by catalogue."""
    found: dict[str, list[str]] = {"material": [], "archetype": []}
    for entry in ENTRIES:
        found["material" if isinstance(entry, Material) else "archetype"] += [entry.id, *entry.also]
    return found


# What is shipped.


def test_every_name_is_one_entry_s() -> None:
    for those in names().values():
        assert len(those) > 50
        assert len(those) == len(set(those))


def test_every_name_leads_to_its_entry() -> None:
    for catalogue, those in names().items():
        assert set(us().catalogue[catalogue]) == set(those)
    for entry in ENTRIES:
        catalogue = "material" if isinstance(entry, Material) else "archetype"
        for name in (entry.id, *entry.also):
            assert us().catalogue[catalogue][name].name == entry.id


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.id)
def test_an_entry_is_cited_and_makes_sense(entry: Material | Archetype) -> None:
    assert entry.cite.strip()
    assert entry.known in ("read", "from memory")
    if isinstance(entry, Material):
        of = us().catalogue["material"][entry.id].properties
        conductivity, resistance = of.get("conductivity"), of.get("resistance")
        assert conductivity is None or resistance is None
        assert conductivity is None or 0.015 < float(str(conductivity)) < 250
        assert resistance is None or 0 <= float(str(resistance)) < 8
        assert of["sort"] == entry.sort
        return
    of = us().catalogue["archetype"][entry.id].properties
    assert entry.title.strip()
    for name in entry.gives:
        low, likely, high = (float(str(of[f"{name}{end}"])) for end in ("_low", "", "_high"))
        assert 0 < low <= likely <= high
        assert high < 8 * low


@pytest.mark.parametrize("name", SOME)
def test_a_well_known_value_is_near_what_handbooks_print(name: str) -> None:
    property_, wanted, within = SOME[name]
    entry = us().catalogue["archetype" if property_ == "u_factor" else "material"][name]
    assert entry.properties[property_] == pytest.approx(wanted, abs=within)


def test_insulation_resists_by_its_name() -> None:
    """A batt is called by its resistance in R."""
    for name, entry in us().catalogue["material"].items():
        if name == entry.name and name.startswith("batt r-") and "in" not in name:
            rated = float(name.removeprefix("batt r-").rstrip("c"))
            assert float(str(entry.properties["resistance"])) / 0.17611 == pytest.approx(rated, rel=0.08), name


@pytest.mark.parametrize("name", ["us", "canada"])
def test_sets_that_adopt_the_materials_have_them_all(name: str) -> None:
    of = adopt(name, Library()).catalogue
    for catalogue, those in names().items():
        assert set(of[catalogue]) == set(those)
    assert {*of} - {*names()} == {"lumber", "lumber size", "timber standard"}


def test_a_value_from_memory_says_so() -> None:
    for entries in us().catalogue.values():
        for entry in entries.values():
            assert entry.source.endswith("(from memory)") is (entry.known == "from memory")


# Kept.


def test_the_catalogue_comes_back_from_the_cache_as_it_was() -> None:
    adopted_ = us()
    back = adopted_from(json.loads(json.dumps(adopted_.to_data())))
    assert back.catalogue == adopted_.catalogue
    assert back.assumptions == adopted_.assumptions
    for name, entry in back.catalogue["material"].items():
        assert entry is back.catalogue["material"][entry.name], name


def test_a_compiled_ruleset_has_the_catalogue(tmp_path: Path) -> None:
    """First made, then read from the cache."""
    cache = Cache(tmp_path)
    made: Adopted = adopted_ruleset("us", "", (shipped(),), cache=cache)[0]
    kept: Adopted = adopted_ruleset("us", "", (shipped(),), cache=cache)[0]
    assert kept.catalogue == made.catalogue == us().catalogue


def test_another_value_is_another_compilation(tmp_path: Path) -> None:
    root, cache = tmp_path / "sets", Cache(tmp_path / "cache")
    found = []
    for value in ("0.16", "0.17"):
        write_set(root, stairs=STAIRS, boards=boards(material(f"conductivity: {value} W/mK")))
        of = adopted_ruleset(str(root / "base"), "", (root,), cache=cache)[0]
        found.append(of.catalogue["material"]["board"].properties["conductivity"])
    assert found == pytest.approx([0.16, 0.17])


# Faulty files.


CITED = "cite: House rules 7\nbasis: common practice\nknown: read"


def entry(id_: str, lines: str) -> str:
    """An entry of a list, its lines in block style."""
    return indent(f"id: {id_}\n{lines}\n{CITED}\n", "    ").replace("    id:", "  - id:", 1)


def material(lines: str, id_: str = "board") -> str:
    """A material with these lines."""
    return entry(id_, f"sort: wood panel\n{lines}")


def archetype(gives: str, of: str = "assembly", id_: str = "old wall") -> str:
    """An archetype that gives these values."""
    return entry(id_, f"of: {of}\ntitle: An old thing\ngives: {gives}")


def boards(*materials: str, archetypes: tuple[str, ...] = ()) -> str:
    """A topic file of materials and archetypes."""
    sections = ["materials:\n" + "".join(materials)] if materials else []
    sections += ["archetypes:\n" + "".join(archetypes)] if archetypes else []
    return topic("boards", *sections)


SPREAD = "{resistance: {likely: R-5, low: R-4, high: R-6}}"


@pytest.mark.parametrize(
    ("text", "place", "what"),
    [
        pytest.param(
            boards(material("conductivity: 0.1 W/mK\nresistance: R-1")),
            "7:17", "“board” has both conductivity and resistance\n  keep one of the two", id="both resistances",
        ),
        pytest.param(
            boards(material("permeability: 3 perm-in\npermeance: 3 perm")),
            "7:16", "“board” has both permeability and permeance\n  keep one of the two", id="both vapour values",
        ),
        pytest.param(
            boards(material("conductivity: 0.1 W/m")), "6:19", "`conductivity`: 0.1 W/m has an unknown unit", id="unit",
        ),
        pytest.param(
            boards(material("thickness: 1 kg")), "6:16", "`thickness`: 1 kg is a mass; a length is needed",
            id="unit of another",
        ),
        pytest.param(
            boards(material("conductivty: 0.1 W/mK")), "6:5", "`conductivty` is not known here", id="unknown property",
        ),
        pytest.param(
            boards(material("conductivity: 0.1 W/mK").replace("wood panel", "plastic")), "5:11",
            "`sort` is “plastic”", id="unknown sort",
        ),
        pytest.param(
            boards(material("conductivity: 0.1 W/mK").replace("    cite: House rules 7\n", "")), "4:5",
            "needs `cite`", id="no source",
        ),
        pytest.param(
            boards(material("resistance: R-1"), material("resistance: R-2")), "10:9",
            "two materials go by the name “board”\n  give each a name of its own", id="the same name",
        ),
        pytest.param(
            boards(material("resistance: R-1"), material("resistance: R-2\nalso: [board]", "other")), "10:9",
            "two materials go by the name “board”", id="the same other name",
        ),
        pytest.param(
            boards(archetypes=(archetype(SPREAD.replace("R-5", "R-7")),)), "7:25",
            "the likely value lies outside its low and high\n  low ≤ likely ≤ high", id="likely outside",
        ),
        pytest.param(
            boards(archetypes=(archetype(SPREAD.replace("R-4", "R-9")),)), "7:25",
            "the likely value lies outside its low and high", id="low over high",
        ),
        pytest.param(
            boards(archetypes=(archetype(SPREAD, of="window"),)), "7:12",
            "an archetype of a window gives other values\n  gives: u_factor, solar_gain", id="of another thing",
        ),
        pytest.param(
            boards(archetypes=(archetype("{}"),)), "7:12", "an archetype of an assembly gives other values",
            id="gives nothing",
        ),
        pytest.param(
            boards(archetypes=(archetype("{u_valu: {likely: 1, low: 1, high: 1}}"),)), "7:21", "`u_valu`",
            id="gives what",
        ),
        pytest.param(
            boards(archetypes=(archetype("{resistance: {likely: R-5, low: R-4}}"),)), "7:25", "needs `high`",
            id="no high",
        ),
    ],
)  # fmt: skip
def test_a_faulty_file_is_told_with_its_line(tmp_path: Path, text: str, place: str, what: str) -> None:
    write_set(tmp_path, stairs=STAIRS, boards=text)
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path)
    found = str(caught.value)
    assert what in found
    assert f"boards.yaml:{place}: " in found


def test_a_sound_file_is_taken_in(tmp_path: Path) -> None:
    text = boards(
        material("conductivity: 0.1 W/mK\nalso: [plank]"), archetypes=(archetype(SPREAD, id_="board"),)
    )  # a material and an archetype may share a name
    write_set(tmp_path, stairs=STAIRS, boards=text)
    of = adopted(tmp_path).catalogue
    assert set(of["material"]) == {"board", "plank"}
    assert of["material"]["plank"] is of["material"]["board"]
    found = of["archetype"]["board"]
    assert isinstance(found, AdoptedEntry)
    assert (found.of, found.title, found.source) == ("assembly", "An old thing", "House rules 7")
    spread = [found.properties[f"resistance{end}"] for end in ("_low", "", "_high")]
    assert spread == pytest.approx([4 * 0.176110, 5 * 0.176110, 6 * 0.176110], rel=1e-5)


# Listed.


def test_the_command_lists_every_entry_with_its_source(dryfit: Run) -> None:
    result = dryfit("rules", "materials")
    assert result.exit_code == 0
    for each in ENTRIES:
        assert each.id in result.output
    said = " ".join(result.output.split())
    assert said.count("(from memory)") >= sum(each.known == "from memory" for each in ENTRIES)


def test_the_command_finds_by_words_and_prints_in_the_units_asked_for(dryfit: Run) -> None:
    entry = us().catalogue["material"]["gypsum board"]
    for units in ("us", "metric"):
        result = dryfit("rules", "materials", "gypsum", "board", "--units", units)
        assert result.exit_code == 0
        conductivity = entry.properties["conductivity"]
        assert isinstance(conductivity, float)
        shown = show(conductivity, PROPERTIES["conductivity"], "us" if units == "us" else "metric")
        assert f"{label('conductivity')} {shown}" in " ".join(result.output.split())
        assert "xps" not in result.output


def test_the_command_says_so_if_nothing_has_the_words(dryfit: Run) -> None:
    result = dryfit("rules", "materials", "unobtainium")
    assert result.exit_code == 2
    assert "no material, archetype or lumber has “unobtainium” in its names" in result.output
    assert "Traceback" not in result.output


def test_the_command_takes_another_ruleset(dryfit: Run, tmp_path: Path) -> None:
    write_set(tmp_path / "sets", stairs=STAIRS, boards=boards(material("resistance: R-2")))
    result = dryfit("rules", "materials", "--rules", tmp_path / "sets" / "base")
    assert result.exit_code == 0
    assert "board" in result.output
    assert "R-2" in result.output
    assert "House rules 7" in result.output
