"""Every published row, run against checker.calc.

Numbers are written as in their source; the unit of a parameter is the ending of its name.
"""

from __future__ import annotations

import importlib
import inspect
import math
import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.published.framing_inputs import BUILT, plain

FOLDER = Path(__file__).parent
FILES = (
    "stairs.yaml",
    "ceilings.yaml",
    "openings.yaml",
    "rooms.yaml",
    "thermal_assembly.yaml",
    "thermal_moisture.yaml",
    "thermal_ground.yaml",
    "thermal_loss.yaml",
    "air_properties.yaml",
    "air_equipment.yaml",
    "air_ducts.yaml",
    "air_friction.yaml",
    "air_systems.yaml",
    "air_ventilation.yaml",
    "air_combustion.yaml",
    "framing_beams.yaml",
    "framing_members.yaml",
    "framing_columns.yaml",
    "framing_cuts.yaml",
    "framing_cases.yaml",
    "loads_snow.yaml",
    "loads_house.yaml",
    "roof_frame.yaml",
    "foundation.yaml",
    "loads_cases.yaml",
)
MODULES = (
    "stair",
    "headroom",
    "winder",
    "guard",
    "ceiling",
    "dormer",
    "opening",
    "boundary",
    "rooms_plan",
    "thermal.assembly",
    "thermal.section",
    "thermal.moisture",
    "thermal.monthly",
    "thermal.rafter_bay",
    "thermal.ground",
    "thermal.infiltration",
    "thermal.room_loss",
    "thermal.climate",
    "air.air_properties",
    "air.equipment",
    "air.duct",
    "air.duct_system",
    "air.ventilation",
    "air.combustion",
    "framing.beam",
    "framing.adjustment",
    "framing.sawn",
    "framing.column",
    "framing.cuts",
    "loads.gravity",
    "loads.weights",
    "loads.live",
    "loads.snow",
    "loads.snow_drift",
    "loads.snow_canada",
    "loads.take_down",
    "loads.lateral",
    "roof_frame.geometry",
    "roof_frame.meeting",
    "roof_frame.thrust",
    "foundation.footing",
    "foundation.soil",
)
INCH = Fraction(254, 10000)
FOOT = 12 * INCH
BTU_H = Fraction("1055.05585262") / 3600
INCH_OF_WATER = 1000 * Fraction("9.80665") * INCH
R_VALUE = FOOT**2 * Fraction(5, 9) / BTU_H
POUND = Fraction("4.4482216152605")
KGF = Fraction("9.80665")
PERM = Fraction("0.45359237") / 7000 / (3600 * FOOT**2 * Fraction("133.322387415") * Fraction("25.4"))

# unit as written: (ending of the parameter's name, size in SI)
UNITS: dict[str, tuple[str, Fraction | float]] = {
    "in": ("m", INCH),
    "ft": ("m", FOOT),
    "mm": ("m", Fraction(1, 1000)),
    "m": ("m", Fraction(1)),
    "in2": ("m2", INCH**2),
    "ft2": ("m2", FOOT**2),
    "m2": ("m2", Fraction(1)),
    "ft3": ("m3", FOOT**3),
    "deg": ("rad", math.pi / 180),
    "%": ("ratio", Fraction(1, 100)),
    "": ("ratio", Fraction(1)),
    "RSI": ("m2k_w", Fraction(1)),
    "R": ("m2k_w", R_VALUE),
    "USI": ("w_m2k", Fraction(1)),
    "U": ("w_m2k", 1 / R_VALUE),
    "W/mK": ("w_mk", Fraction(1)),
    "Btu/h.ft.F": ("w_mk", FOOT / R_VALUE),
    "degC": ("c", Fraction(1)),
    "degF": ("c", Fraction(5, 9)),
    "K": ("k", Fraction(1)),
    "Fdiff": ("k", Fraction(5, 9)),
    "Pa": ("pa", Fraction(1)),
    "psia": ("pa", Fraction("4.4482216152605") / INCH**2),
    "ng": ("kg_s_m2_pa", Fraction(1, 10**12)),
    "perm": ("kg_s_m2_pa", PERM),
    "perm.in": ("kg_s_m_pa", PERM * INCH),
    "GNs/kg": ("m2_s_pa_kg", Fraction(10**9)),
    "g/m2.day": ("kg_m2_s", Fraction(1, 86400 * 1000)),
    "g/m2": ("kg_m2", Fraction(1, 1000)),
    "W": ("w", Fraction(1)),
    "Btu/h": ("w", BTU_H),
    "W/K": ("w_k", Fraction(1)),
    "Btu/h.F": ("w_k", BTU_H * Fraction(9, 5)),
    "ACH": ("per_h", Fraction(1)),
    "cfm": ("m3_s", FOOT**3 / 60),
    "L/s": ("m3_s", Fraction(1, 1000)),
    "kg/m3": ("kg_m3", Fraction(1)),
    "lb/ft3": ("kg_m3", Fraction("0.45359237") / FOOT**3),
    "h": ("h", Fraction(1)),
    "K.d": ("k_d", Fraction(1)),
    "HDD": ("k_d", Fraction(5, 9)),
    "Btu": ("j", Fraction("1055.05585262")),
    "mm2": ("m2", Fraction(1, 10**6)),
    "kW": ("w", Fraction(1000)),
    "m3/s": ("m3_s", Fraction(1)),
    "m/s": ("m_s", Fraction(1)),
    "fpm": ("m_s", FOOT / 60),
    "inwc": ("pa", INCH_OF_WATER),
    "Pa/m": ("pa_m", Fraction(1)),
    "inwc/100ft": ("pa_m", INCH_OF_WATER / (100 * FOOT)),
    "Pa.s": ("pa_s", Fraction(1)),
    "lb/ft.s": ("pa_s", Fraction("0.45359237") / FOOT),
    "Btu/lb.F": ("j_kgk", Fraction("4186.8")),
    "per.m": ("per_m", Fraction(1)),
    "ft3/kBtuh": ("m3_w", FOOT**3 / (1000 * BTU_H)),
    "ft3/kBtu": ("m3_j", FOOT**3 / (1000 * 3600 * BTU_H)),
    "in2/kBtuh": ("m2_w", INCH**2 / (1000 * BTU_H)),
    "mm2/kW": ("m2_w", Fraction(1, 10**9)),
    "in3": ("m3", INCH**3),
    "psi": ("pa", POUND / INCH**2),
    "MPa": ("pa", Fraction(10**6)),
    "N": ("n", Fraction(1)),
    "ft.lb": ("nm", POUND * FOOT),
    "in.lb": ("nm", POUND * INCH),
    "kN.m": ("nm", Fraction(1000)),
    "lb.in2": ("n_m2", POUND * INCH**2),
    "psf": ("pa", POUND / FOOT**2),
    "kPa": ("pa", Fraction(1000)),
    "kgf/m2": ("pa", KGF),
    "tf/m2": ("pa", 1000 * KGF),
    "lb": ("n", POUND),
    "kN": ("n", Fraction(1000)),
    "plf": ("n_m", POUND / FOOT),
    "lb/in": ("n_m", POUND / INCH),
    "kN/m": ("n_m", Fraction(1000)),
    "kgf/m": ("n_m", KGF),
    "tf/m": ("n_m", 1000 * KGF),
    "pcf": ("n_m3", POUND / FOOT**3),
    "tf/m3": ("n_m3", 1000 * KGF),
    "ft.lb/ft": ("nm_m", POUND),
    "lbm": ("kg", Fraction("0.45359237")),
    "gal": ("m3", 231 * INCH**3),
}
EXACT = ("count", "names", "any_unit", "yes_or_no")
ZERO = {"degF": Fraction(32)}  # what is taken off a number first
ENDING = re.compile(rf"_({'|'.join(sorted({ending for ending, _ in UNITS.values()}, key=len, reverse=True))})$")
PART = re.compile(r"(-?)(?:(\d+)-)?(\d+(?:\.\d+)?)(?:/(\d+))?(?: ([A-Za-z%][\w./]*))?(?: |$)")

Row = dict[str, Any]


def rows() -> list[Row]:
    """All rows of the data files, in their order."""
    return [row for name in FILES for row in yaml.safe_load((FOLDER / name).read_text(encoding="utf-8"))]


def si(text: str) -> tuple[str, float]:
    """Ending of the unit and SI value of a number as written: `7-1/4 in`, `12 ft 8 in`, `8/12`, `30 deg`."""
    total: Fraction | float = Fraction(0)
    endings = set()
    position = 0
    while position < len(text):
        part = PART.match(text, position)
        if part is None:
            raise ValueError(f"cannot read {text!r} from {text[position:]!r}")
        minus, whole, number, divisor, unit = part.groups()
        ending, size = UNITS[unit or ""]
        value = Fraction(whole or 0) + Fraction(number) / Fraction(divisor or 1)
        total = total + ((-value if minus else value) - ZERO.get(unit, 0)) * size
        endings.add(ending)
        position = part.end()
    if len(endings) != 1:
        raise ValueError(f"{text!r} mixes {sorted(endings)}")
    return endings.pop(), float(total)


def argument(parameter: str, written: Any) -> Any:
    """The value a parameter takes: numbers with a unit in SI, counts and choices as they stand."""
    if parameter in BUILT:
        return BUILT[parameter](written)
    if isinstance(written, list):
        return [argument(parameter, item) for item in written]
    if isinstance(written, dict):
        return {key: argument(parameter, value) for key, value in written.items()}
    wanted = ENDING.search(parameter)
    if wanted is None:
        return written
    ending, value = si(str(written))
    assert ending == wanted.group(1), f"{parameter} is given {written!r}"
    return value


def call(row: Row) -> tuple[Any, str]:
    """Result of the row's function, and the unit that its docstring gives the result."""
    module_name, function_name = row["function"].rsplit(".", 1)
    function: Callable[..., Any] = getattr(importlib.import_module(f"checker.calc.{module_name}"), function_name)
    parameters = {ENDING.sub("", name): name for name in inspect.signature(function).parameters}
    assert len(parameters) == len(inspect.signature(function).parameters)
    arguments = {parameters[key]: argument(parameters[key], value) for key, value in row["inputs"].items()}
    unit = re.search(r"\[([^\]]+)\]$", (function.__doc__ or "").splitlines()[0])
    assert unit is not None
    return plain(function(**arguments)), re.sub(r"\W+", "_", unit.group(1).lower()).strip("_")


def flat(result: Any) -> list[Any]:
    """The figures of a result that may be one, several, several of each of several, or one for each name."""
    if isinstance(result, dict):
        return flat([result[name] for name in sorted(result)])
    return [figure for part in result for figure in flat(part)] if isinstance(result, tuple | list) else [result]


@pytest.mark.parametrize("row", rows(), ids=lambda row: str(row["id"]))
def test_row_agrees(row: Row) -> None:
    """The calculation gives the expected figure within the row's tolerance."""
    result, unit = call(row)
    if isinstance(result, dict):
        assert set(result) == set(row["expect"])
    if unit in EXACT:
        assert "tolerance" not in row
        assert flat(result) == flat(row["expect"])
        return
    ending, tolerance = si(str(row["tolerance"]))
    assert ending == ("k" if unit == "c" else unit)
    for figure, written in zip(flat(result), flat(row["expect"]), strict=True):
        if figure is None or isinstance(figure, str):
            assert figure == written
            continue
        wanted_unit, wanted = si(str(written))
        assert wanted_unit == unit
        assert abs(figure - wanted) <= tolerance


@pytest.mark.parametrize("row", rows(), ids=lambda row: str(row["id"]))
def test_row_is_complete(row: Row) -> None:
    """A row has the known keys, and either a source or the basis it stands on."""
    known = {"id", "function", "inputs", "expect", "tolerance", "source", "basis", "note", "disagrees"}
    assert set(row) <= known
    assert {"id", "function", "inputs", "expect"} <= set(row)
    assert ("source" in row) != ("basis" in row)
    if "source" in row:
        assert {"title", "section", "read"} <= set(row["source"]) <= {"title", "section", "read", "address"}
    else:
        assert row["basis"] in ("common practice", "geometry, recomputed", "formula, worked by hand")


@pytest.mark.parametrize("module_name", MODULES)
def test_every_function_has_a_row(module_name: str) -> None:
    """No function of house geometry goes without a figure from outside."""
    module = importlib.import_module(f"checker.calc.{module_name}")
    functions = {
        name
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    }
    assert functions
    checked = {row["function"] for row in rows()}
    assert {f"{module_name}.{name}" for name in functions} <= checked


def test_ids_are_unique() -> None:
    """No two rows share an id."""
    ids = [row["id"] for row in rows()]
    assert sorted(set(ids)) == sorted(ids)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("7-1/4 in", ("m", 0.18415)),
        ("12 ft 8 in", ("m", 3.8608)),
        ("9 ft 1/2 in", ("m", 2.7559)),
        ("123/17 in", ("m", 123 / 17 * 0.0254)),
        ("-8/12", ("ratio", -2 / 3)),
        ("25 %", ("ratio", 0.25)),
        ("1 ft2", ("m2", 0.09290304)),
        ("180 deg", ("rad", math.pi)),
        ("-40 degF", ("c", -40.0)),
        ("20 R", ("m2k_w", 3.522203673646117)),
        ("1 perm", ("kg_s_m2_pa", 5.72134946709451e-11)),
        ("100 Btu/h.F", ("w_k", 52.752792631)),
    ],
)
def test_reading_of_numbers(text: str, expected: tuple[str, float]) -> None:
    """The row notation is read as the trade means it."""
    ending, value = si(text)
    assert ending == expected[0]
    assert value == pytest.approx(expected[1], rel=1e-12)


@pytest.mark.parametrize("text", ["", "in", "7 cubits", "7 in 3 deg", "7-1/4in"])
def test_unreadable_numbers_are_refused(text: str) -> None:
    """A number that the notation does not cover is an error, not a guess."""
    with pytest.raises((ValueError, KeyError)):
        si(text)
