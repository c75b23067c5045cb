"""Every cell of the printed span tables, worked with the shipped design values.

The tables round to the nearest inch and stop at 26 ft. Floors: live load for the duration of 1.0, L/360. Ceilings:
L/240. Rafters: snow for 1.15 (the full ground snow), the roof live load of 20 psf for 1.25, L/180 or L/240, and a
bearing that the tables do not name (below). Members side by side; spans are horizontal.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml

from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import allowable_span, check_member
from checker.calc.framing.timber import LoadKind, Lumber
from tests.published.framing_inputs import (
    FOOT,
    INCH,
    PLF,
    PSF,
    PSI,
    by_area,
    dressed,
    inches,
    lumber,
    named,
    section,
    standard,
)

FOLDER = Path(__file__).parent
Cell = tuple[str, str, str]
LONGEST_IN = 312
RAFTER_BEARING_M = 1.834 * INCH
"""Ten cells of Hem-Fir and Spruce-Pine-Fir rafters are shorter than bending and stiffness make them. All but one fit
one length of bearing; it is inferred from them, the tables do not name it."""
OLDER = {
    "SP": ", before 2013",
    "DF-L": ", before 2015",
    "HF 1": ", before 2015",
    "SPF-S": ", 1991",
    "SPF-S SS": "",
}
"""Which lumber had other values when the older tables were made."""
HEADER_FACTORS = {1: 1.0, 2: 1.1, 3: 1.15, 4: 1.15}
"""Factors on bending by plies, inferred: with them all headers come out."""
WALL_PLF = 121.0
"""Weight of a wall between floors that the header tables carry, inferred."""

# misses of more than an inch, with what is thought of them
SLIP = "a slip of the print or of the copy that was read: the cells beside it fit"
MISSES: dict[str, dict[Cell, str]] = {
    "R502.3.1(1)": {("DL10 @19.2", "HF 2", "2x12"): SLIP + "; 17-11 read as 17-1"},
    "R802.4.1(1)": {("DL20 @16", "DF-L 3", "2x8"): SLIP + "; 12-12 is no span, 12-2 is"},
    "R802.4.1(4)": {("DL20 @19.2", "DF-L 2", "2x6"): SLIP + "; 9-11 read as 9-1"},
    "R802.4.1(5)": {
        ("DL20 @16", "SPF SS", "2x10"): SLIP + "; the table for L/240 has the span worked here",
        ("DL20 @19.2", "HF 1", "2x4"): SLIP + "; 5-11 read as 8-11",
        ("DL20 @24", "HF 1", "2x4"): SLIP + "; 5-4 read as 8-4",
    },
    "R802.4.1(7)": {
        ("DL10 @24", "SPF SS", "2x12"): "the one cell that the inferred bearing does not fit; bending does",
        ("DL20 @24", "DF-L 3", "2x12"): SLIP + "; 9-0 read as 9-10",
    },
    "R802.5.1(1)": {("DL5 @16", "SP 1", "2x8"): SLIP},
}
CELLS = {
    "R502.3.1(1)": 320,
    "R502.3.1(2)": 337,
    "R802.4.1(1)": 370,
    "R802.4.1(2)": 397,
    "R802.4.1(3)": 383,
    "R802.4.1(4)": 399,
    "R802.4.1(5)": 370,
    "R802.4.1(6)": 385,
    "R802.4.1(7)": 397,
    "R802.4.1(8)": 408,
    "R802.5.1(1)": 141,
    "R802.5.1(2)": 161,
}


def read(name: str) -> Any:
    """A data file beside this one."""
    return yaml.safe_load((FOLDER / name).read_text(encoding="utf-8"))


SPANS = {table["table"]: table for table in read("framing_spans_us.yaml")}
OTHERS = read("framing_spans_others.yaml")
HEADERS = read("framing_headers_us.yaml")
IN_2012 = read("framing_tables_2012.yaml")


def worked_in(table: Mapping[str, Any], block: str, wood: Lumber, size: str) -> float:
    """Span that a table's basis gives for a cell. [in]"""
    dead, spacing = block.removeprefix("DL").split(" @")
    kind: LoadKind = "live"
    if table["use"] == "rafter":
        kind = "roof live" if table["load_psf"] == 20 else "snow"
    span_m, _ = allowable_span(
        dressed(size),
        wood,
        standard("us"),
        by_area(kind, table["load_psf"], float(dead), float(spacing)),
        repetitive=True,
        live_limit=table["limit"],
        bearing_m=RAFTER_BEARING_M if kind == "snow" else None,
    )
    return span_m / INCH


def misses(table: Mapping[str, Any], before: Mapping[str, str] | None) -> tuple[set[Cell], int]:
    """Cells that are more than an inch away, and how many there are in all."""
    missed: set[Cell] = set()
    count = 0
    for block, rows in table["cells"].items():
        for short, cells in rows.items():
            wood = named(short, before)
            for size, printed in cells.items():
                count += 1
                span_in = worked_in(table, block, wood, size)
                wanted = LONGEST_IN if printed == "NB" else inches(printed)
                if abs(min(span_in, LONGEST_IN) - wanted) > 1.0:
                    missed.add((block, short, size))
    return missed, count


@pytest.mark.parametrize("name", SPANS)
def test_cells_of_the_code_tables(name: str) -> None:
    """All cells but those listed are within an inch; those listed are not."""
    missed, count = misses(SPANS[name], None)
    assert missed == set(MISSES.get(name, {}))
    assert count == CELLS[name]


def test_how_many_cells_there_are() -> None:
    """4,059 of 4,068 cells within an inch."""
    assert set(CELLS) == set(SPANS)
    assert sum(CELLS.values()) == 4068
    assert sum(len(cells) for cells in MISSES.values()) == 9


@pytest.mark.parametrize("index", range(len(OTHERS)))
def test_cells_printed_elsewhere(index: int) -> None:
    """494 of 495 cells of other printings and charts, newer and older, within an inch."""
    table = OTHERS[index]
    missed, _ = misses(table, OLDER if table["older"] else None)
    last = table["source"]["section"] == "Table R802.4.1(7)"
    assert missed == ({("DL10 @24", "SPF SS", "2x12")} if last else set())
    assert sum(len(cells) for each in OTHERS for rows in each["cells"].values() for cells in rows.values()) == 495


def test_rafters_of_2012() -> None:
    """367 cells with the design values of their time, all within an inch."""
    missed, count = misses({"use": "rafter", **IN_2012["rafters"]}, OLDER)
    assert missed == set()
    assert count == 367


def test_rounding_is_to_the_nearest_inch() -> None:
    """Nearly all cells of the floor tables are the worked span to the nearest inch."""
    apart = [
        inches(printed) - worked_in(table, block, named(short), size)
        for table in (SPANS["R502.3.1(1)"], SPANS["R502.3.1(2)"])
        for block, rows in table["cells"].items()
        for short, cells in rows.items()
        for size, printed in cells.items()
        if (block, short, size) not in MISSES.get(table["table"], {})
    ]
    assert max(abs(each) for each in apart) <= 0.51


# Headers: the weakest of the No. 2 grades of four species in each property.
WEAKEST = replace(
    named("SP 2"),
    name="weakest of four",
    bearing_pa=405 * PSI,
    shear_pa=135 * PSI,
    stiffness_pa=1.3e6 * PSI,
    stiffness_low_pa=470000 * PSI,
)
JACK_M = 1.5 * INCH


def header_loads(table: Mapping[str, Any], snow_psf: float, width_ft: float) -> Loads:
    """Line loads of a header, on the basis inferred from the table.

    Roof and ceiling 20 psf over half the width and 2 ft of eaves; the snow on one slope only, with its eaves, carried
    as on a beam across the building; floors 10 and 40 psf; a wall under each floor but the lowest of an interior line.
    """
    floors, inner = table["floors"], not table["roof"]
    floor_ft = width_ft / table["floor_width_over"]
    walls = floors - 1 if inner else floors
    dead = floors * 10 * floor_ft + walls * WALL_PLF
    snow = 0.0
    if table["roof"]:
        half_ft = width_ft / 2 + 2
        dead += 20 * half_ft
        snow = snow_psf * half_ft * (width_ft + 2 - half_ft / 2) / width_ft
    return Loads({"dead": dead * PLF, "live": floors * 40 * floor_ft * PLF, "snow": snow * PLF})


def header_span(size: str, plies: int, wood: Lumber, on_it: Loads) -> float:
    """Span of a header in feet and inches of the table. [in]"""
    method = replace(standard("us"), built_up=HEADER_FACTORS[plies], built_up_plies=1)
    span_m, _ = allowable_span(
        dressed(size, plies), wood, method, on_it, repetitive=False, live_limit=240, shear_within_depth=False
    )
    return span_m / INCH


@pytest.mark.parametrize("index", range(len(HEADERS)))
def test_headers(index: int) -> None:
    """741 header spans, all within an inch, with all their jack studs by the bearing on 1-1/2 in of each."""
    table = HEADERS[index]
    missed, other_jacks = [], []
    for plies_and_size, cells in table["cells"].items():
        plies, size = plies_and_size.split("-")
        for key, printed in cells.items():
            snow, width = (0.0, float(key)) if table["roof"] is False else map(float, key.split("/"))
            span, jacks = printed.split(" ")
            on_it = header_loads(table, snow, width)
            span_in = header_span(size, int(plies), WEAKEST, on_it)
            if abs(span_in - inches(span)) > 1.0:
                missed.append((plies_and_size, key, span, span_in))
            use = check_member(
                dressed(size, int(plies)),
                WEAKEST,
                standard("us"),
                span_in * INCH,
                on_it,
                repetitive=False,
                bearing_m=JACK_M,
            ).bearing
            assert use is not None
            if math.ceil(use.ratio - 1e-9) != int(jacks):
                other_jacks.append((plies_and_size, key))
    assert missed == []
    assert other_jacks == []


def test_how_many_headers_there_are() -> None:
    """741 in the two tables."""
    assert sum(len(cells) for table in HEADERS for cells in table["cells"].values()) == 741


def test_headers_of_2012() -> None:
    """61 of 63 headers under roof and ceiling: 20 psf and two thirds of the ground snow, both over the eaves too."""
    wood = lumber("us")["hem-fir no. 2"]
    count = 0
    missed = []
    for plies_and_size, cells in IN_2012["headers"]["roof and ceiling"].items():
        plies, size = plies_and_size.split("-")
        for key, printed in cells.items():
            snow, width = map(float, key.split("/"))
            reach_ft = width / 2 + 2
            on_it = Loads({"dead": 20 * reach_ft * PLF, "snow": snow * 2 / 3 * reach_ft * PLF})
            span_in = header_span(size, int(plies), wood, on_it)
            if abs(span_in - inches(printed.split(" ")[0])) > 1.0:
                missed.append((plies_and_size, key))
            count += 1
    assert count == 63
    # printed 2-1/2 and 3 in shorter than their neighbours would have it; no reason found
    assert missed == [("2-2x4", "30/20"), ("3-2x8", "30/20")]


def test_rafter_of_a_handbook_with_older_values() -> None:
    """Southern Pine No. 1 before 2013, 2 x 10 at 16 in, 70 psf of snow, 20 psf dead: 14.33 ft."""
    span_m, governs = allowable_span(
        dressed("2x10"),
        named("SP 1", OLDER),
        standard("us"),
        by_area("snow", 70, 20, 16),
        repetitive=True,
        live_limit=180,
    )
    assert span_m / FOOT == pytest.approx(14.33, abs=0.1)
    assert governs == "bending"


def test_bearing_of_a_canadian_joist() -> None:
    """S-P-F 38 mm on 20 mm of bearing for a short load: 3.71 kN (a worked notebook to CSA O86-09)."""
    short = replace(
        standard("canada"),
        strength=tuple(replace(each, duration=1.15) for each in standard("canada").strength),
    )
    use = check_member(
        section("1 x 38 mm x 140 mm"),
        lumber("canada")["s-p-f no.2"],
        short,
        2.0,
        Loads({"live": 500.0}),
        repetitive=True,
        bearing_m=0.020,
    ).bearing
    assert use is not None
    assert use.capacity == pytest.approx(3710.0, rel=0.01)


# Ontario Building Code 2024, Table 9.23.4.2.-A, S-P-F No. 1/No. 2 with bridging, 1.9 kPa live, 0.5 kPa dead; read.
# Vibration governs there, which is not worked here: strength and L/360 must allow more.
CANADIAN_JOISTS = [(235, 0.3, 4.44), (235, 0.4, 4.17), (286, 0.3, 5.01), (286, 0.4, 4.71)]


@pytest.mark.parametrize(("depth_mm", "spacing_m", "printed_m"), CANADIAN_JOISTS)
def test_canadian_joists_are_limited_by_vibration(depth_mm: int, spacing_m: float, printed_m: float) -> None:
    """Strength and stiffness alone allow a tenth to a third more than the tables."""
    span_m, _ = allowable_span(
        section(f"1 x 38 mm x {depth_mm} mm"),
        lumber("canada")["s-p-f no. 1/no. 2"],
        standard("canada"),
        Loads({"dead": 500.0 * spacing_m, "live": 1900.0 * spacing_m}),
        repetitive=True,
    )
    assert 1.1 * printed_m < span_m < 1.35 * printed_m


# Built-up beams, Northern species, as a transcription of the National Building Code has them: plies, depth, grade,
# supported length, span. Their loads are not known; 0.5 kPa dead and 1.9 kPa live give 0.91 of the span in all three.
CANADIAN_BEAMS = [
    (5, 235, "select structural", 4.8, 3.41),
    (5, 286, "select structural", 4.8, 3.96),
    (4, 235, "no. 1/no. 2", 3.6, 2.98),
]


@pytest.mark.parametrize(("plies", "depth_mm", "grade", "reach_m", "printed_m"), CANADIAN_BEAMS)
def test_canadian_beams_are_on_the_safe_side(
    plies: int, depth_mm: int, grade: str, reach_m: float, printed_m: float
) -> None:
    """The standard's own loads give nine tenths of the printed spans."""
    span_m, governs = allowable_span(
        section(f"{plies} x 38 mm x {depth_mm} mm"),
        lumber("canada")[f"northern {grade}"],
        standard("canada"),
        Loads({"dead": 500.0 * reach_m, "live": 1900.0 * reach_m}),
        repetitive=False,
        shear_within_depth=False,
    )
    assert governs == "bending"
    assert span_m / printed_m == pytest.approx(0.91, abs=0.01)


def test_loads_of_the_tables() -> None:
    """40 psf at 16 in is 53.3 plf."""
    assert by_area("live", 40, 10, 16).line["live"] == pytest.approx(40 * PSF * 16 * INCH)
    assert by_area("live", 40, 10, 16).line["live"] / PLF == pytest.approx(53.33, abs=0.01)
