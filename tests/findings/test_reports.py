"""The report as text and as JSON."""

from __future__ import annotations

import io
import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from checker.cli.schema import schema_of
from checker.findings.finding import Result
from checker.report.arrange import NOT_AN_APPROVAL
from checker.report.json import json_text
from checker.report.terminal import print_report
from tests.findings.small import Checker, small_plan

GUARD = "open_edges: [{id: well, status: new, guards: [{id: well, height: 38 in, largest_opening: 5 in}]}]\n"
EXPECTED = Path(__file__).parent / "small.txt"
DEMOS = sorted(Path(__file__).parents[2].glob("plans_demo/*/plan.yaml"))


@pytest.fixture(scope="module")
def result(small: Checker) -> Result:
    """Something of everything."""
    flight = "width: 35 in, riser_height: 7-25/32 in, going: 11 in"
    plan = small_plan(flight, status="replaced", permit="scope: [stairs]", more=GUARD)
    return small.check(plan.replace("109 in", "160 in"), rules=small.county)


def as_text(result: Result, width: int = 80, **options: Any) -> str:
    """The report as text."""
    file = io.StringIO()
    print_report(result, options.pop("reader", "contractor"), file=file, width=width, **options)
    return file.getvalue()


def test_the_text_report_is_as_it_was_agreed(result: Result) -> None:
    assert as_text(result) == EXPECTED.read_text(encoding="utf-8")


@pytest.mark.parametrize("reader", ["contractor", "reviewer"])
@pytest.mark.parametrize("width", [60, 80, 100])
@pytest.mark.parametrize("everything", [False, True])
def test_lines_keep_within_the_width_and_bear_no_colour(
    result: Result, width: int, reader: str, everything: bool
) -> None:
    text = as_text(result, width, reader=reader, everything=everything)
    for line in text.split("\n"):
        assert len(line) <= width
        assert line == line.rstrip()
    assert "\x1b" not in text
    assert text.isprintable() or set(re.findall(r"[^\x20-\uffff]", text)) == {"\n"}
    assert " ".join(NOT_AN_APPROVAL.split()) in " ".join(text.split())


def test_what_a_plan_says_cannot_reach_the_terminal(small: Checker) -> None:
    plan = small_plan().replace("A small house", '"A \\e[31mred\\e[0m house"')
    text = as_text(small.check(plan))
    assert "\x1b" not in text


def test_the_reviewer_s_report_is_by_sheet_without_remedies(result: Result) -> None:
    text = as_text(result, reader="reviewer")
    assert "── Stair details · stairs · building (" in text
    assert "── Dangers" not in text
    assert "mend     Add a riser" not in text


def test_all_lists_what_meets(small: Checker) -> None:
    plan = small_plan("width: 36 in")
    assert "── Meets (" not in as_text(small.check(plan))
    assert "── Meets (1) " in as_text(small.check(plan, explain_all=True), everything=True)


def test_no_fault_never_sounds_like_an_approval(small: Checker) -> None:
    text = " ".join(as_text(small.check(small_plan(status="existing"))).split())
    assert "No conflict was found in what the plan states." in text
    assert "That is not a permit." in text


def test_the_json_report_keeps_to_its_schema(result: Result) -> None:
    schema = schema_of("report")
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    for everything in (False, True):
        data = json.loads(json_text(result, everything=everything))
        assert [error.message for error in validator.iter_errors(data)] == []
    data["findings"][0]["verdict"] = "passes"
    assert len(list(validator.iter_errors(data))) == 1


def test_the_json_report_says_what_the_findings_say(result: Result) -> None:
    data = json.loads(json_text(result))
    assert data["schema"] == 1
    assert data["plan"] == {
        "title": "A small house",
        "file": "plan.yaml",
        "units": "us",
        "stage": "",
        "scope": ["stairs"],
    }
    assert data["summary"]["exit_status"] == result.exit_status == 1
    assert [each["key"] for each in data["findings"]] == [
        each.key for each in result.findings if each.listed and each.verdict not in ("meets", "does not apply")
    ]
    by_rule = {each["rule"]: each for each in data["findings"]}
    guard = by_rule["base/guards.height"]
    assert (guard["cite"], guard["base_cite"]) == ("County 4-2, amending House rules 7", "House rules 7")
    assert guard["amended_by"][0]["where"] == {"file": "county/changes.yaml", "line": 5, "column": 12}
    assert by_rule["base/guards.opening"]["because"][0]["value"] == pytest.approx(0.127)
    assert by_rule["base/stairs.width"]["beyond_table"]
    assert data["suspended"][0]["reason"] == "A matter of taste."
    assert [each["attribute"] for each in data["missing"]] == [each.item.name for each in result.missing]


def test_the_json_summary_counts_every_danger(result: Result) -> None:
    summary = json.loads(json_text(result))["summary"]
    assert summary["verdicts"]["does not meet"]["danger"] == 1
    assert summary["sentence"].startswith("1 danger to remove")
    assert summary["outside_scope"] == 1


def test_the_json_report_has_every_calculation(result: Result) -> None:
    calculations = json.loads(json_text(result))["calculations"]
    rise = next(each for each in calculations if each["attribute"] == "riser_height")
    assert rise["function"] == "calc.stair.riser_height"
    assert [(each["symbol"], each["shown"]) for each in rise["inputs"]] == [
        ("total_rise_m", "13'-4\""),
        ("riser_count", "14"),
    ]


def test_the_json_report_carries_no_path_of_the_machine(result: Result, small: Checker) -> None:
    text = json_text(result, everything=True)
    assert str(small.root) not in text
    assert not re.search(r'"(/|[A-Z]:\\\\)', text)


def test_two_runs_give_the_same_reports(small: Checker) -> None:
    plan = small_plan("width: 35 in", more=GUARD)
    one, two = (small.check(plan, rules=small.county, explain_all=True) for _ in range(2))
    assert json_text(one, everything=True) == json_text(two, everything=True)
    assert as_text(one) == as_text(two)


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.parent.name)
def test_a_demo_plan_s_report_keeps_to_the_schema_and_the_width(demo: Path, small: Checker) -> None:
    from checker.check import check

    found = check(demo, cache=small.cache, shown_as=demo.name)
    validator = Draft202012Validator(schema_of("report"))
    assert [error.message for error in validator.iter_errors(json.loads(json_text(found)))] == []
    assert max(map(len, as_text(found).split("\n"))) <= 80
