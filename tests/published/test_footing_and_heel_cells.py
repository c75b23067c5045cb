"""Footing widths and heel-joint nails of the International Residential Code, cell by cell, from loads.

The cells are published; the loads behind them are not, beyond what the footnotes say. What is fitted is said so.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from checker.calc.foundation import footing
from checker.calc.framing.timber import LoadKind
from checker.calc.loads import take_down
from checker.calc.roof_frame import thrust

FOLDER = Path(__file__).parent
INCH_M = 0.0254
FOOT_M = 12 * INCH_M
POUND_N = 4.4482216152605
PLF_N_M = POUND_N / FOOT_M
PSF_PA = POUND_N / FOOT_M**2
SOILS_PSF = (1500, 2000, 2500, 3000, 3500, 4000)
LEAST_IN = 12
FACTORS: dict[LoadKind, float] = {"dead": 1.0, "live": 0.75, "snow": 0.75}

# By footnote (2021): a house 32 ft wide, 15 psf roof and ceiling, 10 psf floors, 12 psf walls of 9 ft, 40 psf live on
# the first floor and 30 psf above, a bearing line inside at each floor. Assumed: an overhang of 2 ft, and the same for
# 2018. Fitted: snow on the roof for one psf on the ground, weights of the wall below the first floor and beside it in
# plf, of claddings in psf.
FITTED: dict[str, dict[str, Any]] = {
    "2018": {
        "snow": 0.9333,
        "first band": 20,
        "below": {"slab-on-grade": 386.0, "crawl space": 714.5, "basement": 1461.5},
        "walls": {"light frame": 0.0, "brick veneer": 29.43, "concrete/masonry": 85.41},
    },
    "2021": {
        "snow": 0.7467,
        "first band": 25,
        "below": {"slab-on-grade": 619.5, "crawl space": 604.4, "basement": 1006.1},
        "walls": {"light frame": 0.0, "brick veneer": 32.67, "concrete/masonry": 42.73},
    },
}
# nails from 30 psf on: overhang, dead load, value of a nail, fitted
NAILS: dict[str, tuple[float, float, float]] = {"2018": (2.0, 15.0, 158.5), "2021": (0.0, 12.0, 177.0)}


def read(name: str) -> Any:
    """Cells of a file."""
    return yaml.safe_load((FOLDER / name).read_text(encoding="utf-8"))


def line_load(edition: str, wall: str, ground_psf: int, building: str) -> float:
    """Load along the outer footing of a building of the tables. [N/m]"""
    fitted = FITTED[edition]
    storeys = int(building[0])
    snow_psf = fitted["snow"] * (fitted["first band"] if ground_psf == 20 else ground_psf)
    below_plf = next(plf for name, plf in fitted["below"].items() if name in building)
    roof: dict[LoadKind, float] = {"dead": 15 * PSF_PA, "snow": snow_psf * PSF_PA}
    upper: dict[LoadKind, float] = {"dead": 10 * PSF_PA, "live": 30 * PSF_PA}
    first: dict[LoadKind, float] = {"dead": 10 * PSF_PA, "live": 40 * PSF_PA}
    floors = [upper] * (storeys - 1) + ([first] if "slab" not in building else [])
    walls_pa = [(12 + fitted["walls"][wall]) * PSF_PA] * storeys
    house = take_down.own_line_load(
        [18 * FOOT_M] + [8 * FOOT_M] * len(floors), [roof, *floors], [9 * FOOT_M] * storeys, walls_pa
    )
    return take_down.combined_load(take_down.loads_together([house, {"dead": below_plf * PLF_N_M}]), FACTORS)


def widths(edition: str) -> Iterator[tuple[str, int, int]]:
    """Each cell of an edition: its name, the width printed and the width from loads, rounded to the inch."""
    for wall, snows in read("foundation_table_cells.yaml")[edition].items():
        for ground_psf, buildings in snows.items():
            for building, printed in buildings.items():
                load_n_m = line_load(edition, wall, ground_psf, building)
                for soil_psf, width_in in zip(SOILS_PSF, printed, strict=True):
                    needed_in = footing.width_needed(load_n_m, soil_psf * PSF_PA) / INCH_M
                    name = f"{wall}, {ground_psf} psf, {building}, {soil_psf} psf"
                    yield name, width_in, max(LEAST_IN, int(needed_in + 0.5))


@pytest.mark.parametrize(("edition", "alike", "within_an_inch"), [("2018", 613, 647), ("2021", 641, 646)])
def test_footing_widths(edition: str, alike: int, within_an_inch: int) -> None:
    """Most widths follow from one set of loads; a larger miss is a slip of the printed table."""
    cells = list(widths(edition))
    assert len(cells) == 648
    assert sum(printed == found for _, printed, found in cells) == alike
    assert sum(abs(printed - found) <= 1 for _, printed, found in cells) == within_an_inch


def test_slips_of_the_footing_tables() -> None:
    """Cells that no load explains: they contradict the other cells of their own row."""
    far = {
        edition: [name for name, printed, found in widths(edition) if abs(printed - found) > 1] for edition in FITTED
    }
    assert far == {
        "2018": ["brick veneer, 50 psf, 3 storey slab-on-grade, 1500 psf"],
        "2021": [
            "light frame, 30 psf, 3 storey slab-on-grade, 2000 psf",
            "brick veneer, 70 psf, 1 storey slab-on-grade, 1500 psf",
        ],
    }


def test_footing_thickness() -> None:
    """In 2021 a footing is as thick as it stands out beside a wall of 8 in, to the inch above, and 6 in at least."""
    cells = [(18, 6), (20, 6), (21, 7), (22, 7), (25, 9), (26, 9), (27, 10), (29, 11), (31, 12), (33, 13), (34, 13)]
    for width_in, thickness_in in cells:
        out_m = footing.projection(width_in * INCH_M, 8 * INCH_M)
        needed_m = footing.thickness_needed(out_m, 1.0, 6 * INCH_M)
        assert footing.width_stepped(needed_m, INCH_M, 0.0) == pytest.approx(thickness_in * INCH_M)


def nails(edition: str, ground_psf: int) -> Iterator[tuple[int, int]]:
    """Each cell of an edition and ground snow: nails printed and nails from loads."""
    overhang_ft, dead_psf, nail_lb = NAILS[edition]
    table = read("roof_frame_table_cells.yaml")[edition]
    for rise_in_12, spacings in table[ground_psf].items():
        for spacing_in, printed in spacings.items():
            load_n_m = thrust.rafter_line_load((dead_psf + ground_psf) * PSF_PA, spacing_in * INCH_M)
            for span_ft, count in zip(table["spans_ft"], printed, strict=True):
                force_n = thrust.plate_thrust(load_n_m, span_ft / 2 * FOOT_M, rise_in_12 / 12, overhang_ft * FOOT_M)
                yield count, thrust.nails_needed(force_n, nail_lb * POUND_N, 3)


@pytest.mark.parametrize("edition", ["2018", "2021"])
@pytest.mark.parametrize("ground_psf", [30, 50, 70])
def test_heel_joints(edition: str, ground_psf: int) -> None:
    """All 216 cells of either edition from 30 psf on follow from one overhang, dead load and nail."""
    cells = list(nails(edition, ground_psf))
    assert len(cells) == 72
    assert [found for _, found in cells] == [printed for printed, _ in cells]


@pytest.mark.parametrize("edition", ["2018", "2021"])
def test_first_column_of_heel_joints_is_for_roof_live_load(edition: str) -> None:
    """The column of 20 psf stands for roof live load too, and asks for no fewer nails than 20 psf of snow."""
    assert all(printed >= found for printed, found in nails(edition, 20))
