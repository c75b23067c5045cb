"""The JSON Schema of a plan: accepts what the reader accepts, and refuses what an editor can catch."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from checker.plan.schema import plan_schema
from checker.source import read, read_text

DEMOS = sorted((Path(__file__).parents[2] / "plans_demo").glob("*/plan.yaml"))


@pytest.fixture(scope="module")
def validator() -> Any:
    return Draft202012Validator(plan_schema())


def _mistakes(validator: Any, text: str) -> list[str]:
    return [error.message for error in validator.iter_errors(read_text(text, "plan.yaml").data)]


def test_it_is_a_json_schema() -> None:
    Draft202012Validator.check_schema(plan_schema())


def test_there_are_demo_plans() -> None:
    assert len(DEMOS) >= 2


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.parent.name)
def test_it_accepts_the_demo_plans(validator: Any, demo: Path) -> None:
    assert [error.message for error in validator.iter_errors(read(demo).data)] == []


@pytest.mark.parametrize(
    "lines",
    [
        "rooms: []",
        "rooms: unknown",
        "rooms: [and others]",
        "rooms: [{id: den, status: new, use: unknown, floor_area: unknown, windows: [w, and others]}]",
        "rooms: [{id: den, status: altered, was: {use: hall}, ceiling_height: 8 ft}]",
        "house: {storeys: 2.5, year_built: 1912, sprinklered: unknown}",
        "stairs: [{id: s, status: new, flights: [{id: f, measured_risers: [7 in, and others]}]}]",
    ],
)
def test_it_accepts_what_the_reader_accepts(validator: Any, lines: str) -> None:
    assert _mistakes(validator, f"plan: A\n{lines}\n") == []


@pytest.mark.parametrize(
    "lines",
    [
        "stair: []",
        "rooms: [{id: den, status: new, celing_height: 8 ft}]",
        "rooms: [{status: new}]",
        "rooms: [{id: den, status: nw}]",
        "rooms: [{id: a b, status: new}]",
        "rooms: {id: den}",
        "rooms: ",
        "rooms: [{id: den, status: new, use: }]",
        "house: {sprinklered: yes}",
        "stairs: [{id: s, status: new, flights: [{id: f, risers: 0}]}]",
        "permit: {scope: [gaurds]}",
        "units: imperial",
    ],
)
def test_it_refuses_what_the_reader_refuses(validator: Any, lines: str) -> None:
    assert len(_mistakes(validator, f"plan: A\n{lines}\n")) == 1
