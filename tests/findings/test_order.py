"""The order of plan elements, of rule files and of rules changes nothing that is found."""

from __future__ import annotations

import json
import re
import tempfile
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from checker.engine.image import Cache
from checker.findings.finding import Result
from checker.report.json import json_text
from tests.findings.small import GUARDS, STAIRS, Checker
from tests.ruleset.writing import write_set

ROOMS = (
    "  - {id: den, status: altered, use: bedroom, was: {use: hall}}",
    "  - {id: bath, status: new, use: bathroom}",
)
STAIR = """\
  - id: {id}
    status: {status}
    total_rise: {rise}
    flights: [{{id: {id}, risers: {risers}, {more}}}]
"""
STAIRS_ON_PLAN = (
    STAIR.format(id="main", status="new", rise="109 in", risers=14, more="width: 35 in, open_risers: true"),
    STAIR.format(id="attic", status="replaced", rise="8 ft", risers=10, more="handrails: [{id: left}]"),
    STAIR.format(id="cellar", status="removed", rise="8 ft", risers=10, more="width: 20 in"),
    STAIR.format(id="porch", status="altered", rise="2 ft", risers=3, more="status: new, going: 11 in"),
)
EDGES = "open_edges:\n  - {id: well, status: new, guards: [{id: a, largest_opening: 5 in}, {id: b, height: 30 in}]}\n"
SECTIONS = ("rooms", "stairs", "open_edges", "permit")


def without_places(result: Result) -> dict[str, Any]:
    """The JSON report without the lines that things stand on."""

    def bare(data: Any) -> Any:
        if isinstance(data, dict):
            return {key: bare(value) for key, value in data.items() if key != "where"}
        return [bare(each) for each in data] if isinstance(data, list) else data

    report: dict[str, Any] = bare(json.loads(json_text(result, everything=True)))
    return report


def plan_of(stairs: list[str], rooms: list[str], sections: list[str]) -> str:
    """A plan with its parts in an order."""
    parts = {
        "rooms": "rooms:\n" + "\n".join(rooms) + "\n",
        "stairs": "stairs:\n" + "".join(stairs),
        "open_edges": EDGES,
        "permit": "permit: {scope: [stairs, rooms]}\n",
    }
    return "plan: A house\n" + "".join(parts[section] for section in sections)


@settings(deadline=None, max_examples=25)
@given(st.permutations(STAIRS_ON_PLAN), st.permutations(ROOMS), st.permutations(SECTIONS))
def test_the_order_of_the_plan_changes_nothing(
    small: Checker, stairs: list[str], rooms: list[str], sections: list[str]
) -> None:
    as_written = without_places(small.check(plan_of(list(STAIRS_ON_PLAN), list(ROOMS), list(SECTIONS))))
    assert len(as_written["findings"]) > 15
    assert without_places(small.check(plan_of(stairs, rooms, sections))) == as_written


def _rules(text: str) -> tuple[str, list[str]]:
    """A topic's text before its rules, and its rules."""
    before, _, rules = text.partition("rules:\n")
    return before, re.split(r"(?m)^(?=  - id:)", rules)[1:]


@settings(deadline=None, max_examples=12)
@given(st.data())
def test_the_order_of_rules_and_files_changes_nothing(small: Checker, data: st.DataObject) -> None:
    plan = plan_of(list(STAIRS_ON_PLAN), list(ROOMS), list(SECTIONS))
    as_written = without_places(small.check(plan))
    before, rules = _rules(STAIRS)
    shuffled = before + "rules:\n" + "\n".join(data.draw(st.permutations(rules)))
    topics = {"stairs": shuffled, "guards": GUARDS}
    with tempfile.TemporaryDirectory() as folder:
        other = Checker.__new__(Checker)
        other.base = write_set(
            Path(folder), **{name: topics[name] for name in data.draw(st.permutations(list(topics)))}
        )
        other.cache = Cache(Path(folder) / "cache")
        assert without_places(other.check(plan)) == as_written


def test_rules_split_over_files_find_the_same(small: Checker, tmp_path: Path) -> None:
    plan = plan_of(list(STAIRS_ON_PLAN), list(ROOMS), list(SECTIONS))
    before, rules = _rules(STAIRS)
    first = before.replace("topic: stairs", "topic: first") + "rules:\n" + "\n".join(rules[4:])
    last = "topic: zlast\nabout: A topic.\nrules:\n" + "\n".join(rules[:4])
    other = Checker.__new__(Checker)
    other.base = write_set(
        tmp_path,
        first=first.replace("base/stairs.widths", "base/first.widths"),
        guards=GUARDS,
        zlast=last.replace("base/stairs.widths", "base/first.widths"),
    )
    other.cache = Cache(tmp_path / "cache")
    renamed = json.dumps(without_places(other.check(plan))).replace("base/first.", "base/stairs.").replace(
        "base/zlast.", "base/stairs."
    )  # fmt: skip
    found = {(each["rule"], *map(str, each["elements"])): each for each in json.loads(renamed)["findings"]}
    as_written = without_places(small.check(plan))["findings"]
    assert found == {(each["rule"], *map(str, each["elements"])): each for each in as_written}
