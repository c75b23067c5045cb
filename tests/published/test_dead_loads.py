"""Published dead loads of whole constructions against the weights of the set of materials.

The rows tell their source. Tolerances were set after a look at the differences: a table rounds to whole psf.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from checker.calc.loads import gravity, weights
from checker.ruleset.adopting import adopt
from checker.ruleset.catalogue import AdoptedEntry
from checker.ruleset.folders import Library

INCH_M = 0.0254
PSF_PA = 4.4482216152605 / 0.3048**2
ROWS: list[dict[str, Any]] = yaml.safe_load((Path(__file__).parent / "dead_loads.yaml").read_text("utf-8"))["rows"]
EQUAL = [row for row in ROWS if row["use"] == "check"]
BOUNDS = [row for row in ROWS if row["use"] == "upper bound"]


@cache
def materials() -> dict[str, AdoptedEntry]:
    """The materials by name."""
    return dict(adopt("materials", Library(), "").catalogue["material"])


def layer_pa(name: str, thickness_in: float | None) -> float:
    """Weight of a layer by the set."""
    properties = materials()[name].properties
    if "weight" in properties:
        return float(properties["weight"])  # type: ignore[arg-type]
    assert thickness_in is not None
    return gravity.layer_load(thickness_in * INCH_M, float(properties["density"]))  # type: ignore[arg-type]


def whole_psf(row: dict[str, Any]) -> float:
    """Weight of a construction: layers, members at their spacing, and what the row adds."""
    loads = [layer_pa(name, thickness) for name, thickness in row["layers"]]
    for each in row.get("framing", ()):
        density = float(materials()[each["material"]].properties["density"])  # type: ignore[arg-type]
        width_m, depth_m, spacing_m = (each[f"{side}_in"] * INCH_M for side in ("width", "depth", "spacing"))
        loads.append(weights.members_load(width_m, depth_m, spacing_m, density))
    return sum(loads) / PSF_PA + float(row.get("extra_psf", 0.0))


def test_there_are_rows() -> None:
    assert len(EQUAL) > 20
    assert len(BOUNDS) > 2
    assert all(row["source"] and row["certainty"] in ("read", "from memory") for row in ROWS)


@pytest.mark.parametrize("row", EQUAL, ids=lambda row: row["id"])
def test_a_published_weight(row: dict[str, Any]) -> None:
    assert whole_psf(row) == pytest.approx(row["published_psf"], rel=row["tolerance"])


@pytest.mark.parametrize("row", BOUNDS, ids=lambda row: row["id"])
def test_a_weight_with_allowances_is_not_passed(row: dict[str, Any]) -> None:
    """Published figures that count an allowance for what is no layer."""
    assert 0.4 * row["published_psf"] < whole_psf(row) <= row["published_psf"]
