"""Sections, loads, lumber and the design standards for tests of members of wood, from the text of the data files."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import MemberCheck, Needed, Use
from checker.calc.framing.timber import LoadKind, Lumber, Section, TimberStandard
from checker.ruleset.adopted import Adopted
from checker.ruleset.adopting import adopt
from checker.ruleset.folders import Library
from checker.ruleset.timber import STANDARD
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
def _adopted(country: str) -> Adopted:
    return adopt(f"lumber-{country}", Library(), "")


def standard(country: str) -> TimberStandard:
    """The design standard of the set of a country, `us` or `canada`."""
    (entry,) = _adopted(country).catalogue[STANDARD].values()
    assert isinstance(entry.design, TimberStandard)
    return entry.design


@cache
def lumber(country: str) -> dict[str, Lumber]:
    """Lumber of the set of a country, by every name that it has."""
    found = {name: entry.design for name, entry in _adopted(country).catalogue["lumber"].items()}
    return {name: design for name, design in found.items() if isinstance(design, Lumber)}


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


def _stress(entry: Mapping[str, Any], name: str) -> float | None:
    return parse(entry[name], Dimension.STRESS) if name in entry else None
