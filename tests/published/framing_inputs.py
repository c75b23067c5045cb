"""Sections, loads, lumber and the design standards for tests of members of wood, from the text of the data files."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import MemberCheck, Needed, Use
from checker.calc.framing.timber import (
    Combination,
    DepthValues,
    LoadKind,
    Lumber,
    Section,
    SizeFactor,
    TimberStandard,
)
from checker.units import Dimension, parse

RULESETS = Path(__file__).parents[2] / "rulesets"
INCH = 0.0254
FOOT = 0.3048
POUND = 4.4482216152605
PSF = POUND / FOOT**2
PSI = POUND / INCH**2
PLF = POUND / FOOT
DRESSED_IN = {"2x4": 3.5, "2x6": 5.5, "2x8": 7.25, "2x10": 9.25, "2x12": 11.25}
SPECIES = {
    "DF-L": "douglas fir-larch",
    "HF": "hem-fir",
    "SPF": "spruce-pine-fir",
    "SP": "southern pine",
    "SPF-S": "spruce-pine-fir south",
}
GRADES = {"SS": "select structural", "1": "no. 1", "2": "no. 2", "3": "no. 3"}


def dressed(size: str, plies: int = 1) -> Section:
    """Section of a nominal 2-inch size."""
    return Section(1.5 * INCH, DRESSED_IN[size] * INCH, plies)


def named(short: str, before: Mapping[str, str] | None = None) -> Lumber:
    """Lumber by a short name as the tables have it, `DF-L SS`; `before` names older values of a species or grade."""
    species, grade = short.rsplit(" ", 1)
    age = (before or {}).get(short, (before or {}).get(species, ""))
    return lumber("us")[f"{SPECIES[species]} {GRADES[grade]}{age}"]


def inches(text: str) -> int:
    """Inches of a span written as feet-inches, `12-6`."""
    feet, rest = text.split("-")
    return 12 * int(feet) + int(rest)


@cache
def standard(country: str) -> TimberStandard:
    """The design standard of the set of a country, `us` or `canada`."""
    path = RULESETS / f"lumber-{country}" / "design-standard.yaml"
    entry = yaml.safe_load(path.read_text(encoding="utf-8"))["timber_standard"][0]
    sizes = {name: tuple(_size(row) for row in rows) for name, rows in entry["size_factors"].items()}
    return TimberStandard(
        entry["title"],
        entry["method"],
        _combinations(entry["strength"]),
        _combinations(entry["live_deflection"]),
        _combinations(entry["total_deflection"]),
        sizes,
        entry["repetitive"],
        parse(entry["repetitive_spacing"], Dimension.LENGTH),
        entry["repetitive_count"],
        built_up=entry["built_up"],
        wet=entry["wet"],
        resistance=entry.get("resistance", {}),
        creep=entry["creep"],
    )


@cache
def lumber(country: str) -> dict[str, Lumber]:
    """Lumber of the set of a country, by every name that it has."""
    found: dict[str, Lumber] = {}
    for path in sorted((RULESETS / f"lumber-{country}").glob("lumber-*.yaml")):
        for entry in yaml.safe_load(path.read_text(encoding="utf-8")).get("lumber", []):
            for name in [entry["id"], *entry.get("also", [])]:
                assert name not in found, name
                found[name] = _lumber(entry)
    return found


def section(text: str) -> Section:
    """A section written as `2 x 1-1/2 in x 9-1/4 in`: plies, width of one, depth."""
    plies, width, depth = text.split(" x ")
    return Section(parse(width, Dimension.LENGTH), parse(depth, Dimension.LENGTH), int(plies))


def loads(written: Mapping[str, Any]) -> Loads:
    """Loads written as `{line: {live: 40 plf}, parts: [[live, 40 plf, 0 ft, 3 ft]], points: [[live, 9 lb, 3 ft]]}`."""
    return Loads(
        {kind: parse(text, Dimension.LINE_LOAD) for kind, text in written.get("line", {}).items()},
        tuple(
            (kind, parse(load, Dimension.LINE_LOAD), parse(start, Dimension.LENGTH), parse(end, Dimension.LENGTH))
            for kind, load, start, end in written.get("parts", [])
        ),
        tuple(
            (kind, parse(load, Dimension.FORCE), parse(place, Dimension.LENGTH))
            for kind, load, place in written.get("points", [])
        ),
    )


def by_area(kind: LoadKind, load_psf: float, dead_psf: float, spacing_in: float) -> Loads:
    """Loads of a square foot on members at a spacing."""
    return Loads({"dead": dead_psf * PSF * spacing_in * INCH, kind: load_psf * PSF * spacing_in * INCH})


BUILT: dict[str, Callable[[Any], Any]] = {
    "section": section,
    "candidates": lambda texts: [section(text) for text in texts],
    "lumber": lambda text: lumber(text.split(" ", 1)[0])[text.split(" ", 1)[1]],
    "standard": standard,
    "loads": loads,
}
"""Parameters that rows of data write as text, and how they are read."""


def plain(result: Any) -> Any:
    """Figures of a result that is a check, what is needed, or a section; any other result as it is."""
    if isinstance(result, MemberCheck):
        return {name: use.ratio for name, use in result.uses().items()}
    if isinstance(result, Use):
        return result.ratio
    if isinstance(result, Needed):
        return {"bending": result.bending_pa, "shear": result.shear_pa, "stiffness": result.stiffness_pa}
    if isinstance(result, Section):
        return f"{result.plies} x {result.ply_width_m / INCH:g} in x {result.depth_m / INCH:g} in"
    return result


def _size(row: Mapping[str, Any]) -> SizeFactor:
    return SizeFactor(
        parse(row["up_to_depth"], Dimension.LENGTH),
        row["bending"],
        row.get("tension", 1.0),
        row.get("compression", 1.0),
        row.get("shear", 1.0),
        parse(row["from_thickness"], Dimension.LENGTH) if "from_thickness" in row else 0.0,
    )


def _combinations(rows: list[dict[str, Any]]) -> tuple[Combination, ...]:
    return tuple(Combination(row["name"], row["factors"], row.get("duration", 1.0)) for row in rows)


def _stress(entry: Mapping[str, Any], name: str) -> float | None:
    return parse(entry[name], Dimension.STRESS) if name in entry else None


def _lumber(entry: Mapping[str, Any]) -> Lumber:
    depths = tuple(
        DepthValues(
            parse(row["up_to_depth"], Dimension.LENGTH),
            *(parse(row[name], Dimension.STRESS) for name in ("bending", "tension", "compression")),
        )
        for row in entry.get("by_depth", [])
    )
    bending_pa = depths[0].bending_pa if depths else parse(entry["bending"], Dimension.STRESS)
    return Lumber(
        entry["id"],
        bending_pa,
        parse(entry["shear"], Dimension.STRESS),
        parse(entry["bearing"], Dimension.STRESS),
        parse(entry["stiffness"], Dimension.STRESS),
        parse(entry["stiffness_low"], Dimension.STRESS),
        _stress(entry, "tension"),
        _stress(entry, "compression"),
        entry.get("sizes", ""),
        depths,
        entry["specific_gravity"],
        entry["edition"],
    )
