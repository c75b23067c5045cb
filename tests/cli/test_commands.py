"""The commands: what they print, what they write, and the status they end with."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from tests.cli.conftest import Run
from tests.findings.small import small_plan

MEASURED = ", ".join(["7.7 in", "7.8 in", *["7.75 in"] * 12])
SOUND = small_plan(
    f"open_risers: false, width: 36 in, measured_risers: [{MEASURED}], going: 9 in, riser_height: 7.75 in"
).replace("109 in", "108-1/2 in")
MISSING = SOUND.replace("width: 36 in, ", "")
WRONG = SOUND.replace("width: 36 in", "width: 35 in")
COMMANDS = ("check", "rules", "facts", "glossary", "schema")


@pytest.fixture
def plans(tmp_path: Path) -> Path:
    """A folder with a sound plan, one with a line missing, one with a fault, and one that cannot be read."""
    for name, text in (("sound", SOUND), ("missing", MISSING), ("wrong", WRONG), ("bad", "plan: \n")):
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    return tmp_path


@pytest.mark.usefixtures("plans")
@pytest.mark.parametrize(
    ("names", "status"),
    [
        (["sound"], 0),
        (["missing"], 3),
        (["wrong"], 1),
        (["bad"], 2),
        (["sound", "sound"], 0),
        (["missing", "sound"], 3),
        (["missing", "wrong"], 1),
        (["wrong", "missing"], 1),
        (["wrong", "bad", "sound"], 2),
        (["bad", "wrong"], 2),
    ],
)
def test_the_status_is_that_of_the_worst_plan(dryfit: Run, county: Path, names: list[str], status: int) -> None:
    result = dryfit("check", *(f"{name}.yaml" for name in names), "--rules", county)
    assert result.exit_code == status
    assert result.stdout.count("A small house\n") == len([name for name in names if name != "bad"])
    assert ("bad.yaml:1:6: `plan` is empty" in result.stderr) is ("bad" in names)


@pytest.mark.usefixtures("plans")
def test_one_plan_as_json_is_a_report_several_are_a_list(dryfit: Run, county: Path) -> None:
    one = json.loads(dryfit("check", "wrong.yaml", "--rules", county, "--format", "json").stdout)
    assert one["plan"]["file"] == "wrong.yaml"
    two = json.loads(dryfit("check", "wrong.yaml", "sound.yaml", "--rules", county, "--format", "json").stdout)
    assert [each["plan"]["file"] for each in two["reports"]] == ["wrong.yaml", "sound.yaml"]
    assert two["reports"][0] == one


def test_a_report_carries_no_path_of_the_machine(dryfit: Run, county: Path, plans: Path) -> None:
    for form in ("json", "html"):
        result = dryfit("check", plans / "wrong.yaml", "--rules", county, "--format", form)
        assert "wrong.yaml" in result.stdout
        assert str(plans) not in result.stdout
        assert str(county.parent) not in result.stdout


@pytest.mark.parametrize("form", ["text", "json", "html"])
def test_a_report_is_written_to_a_file(dryfit: Run, county: Path, plans: Path, form: str) -> None:
    result = dryfit("check", "wrong.yaml", "--rules", county, "--format", form, "--output", "report")
    assert (result.exit_code, result.stdout, result.stderr) == (1, "", "written: report\n")
    text = (plans / "report").read_text(encoding="utf-8")
    assert text.startswith({"text": "A small house\n", "json": "{\n", "html": "<!DOCTYPE html>"}[form])
    assert "base/stairs.width" in text
    assert sorted(path.name for path in plans.iterdir()) == [
        "bad.yaml",
        "missing.yaml",
        "report",
        "sound.yaml",
        "wrong.yaml",
    ]


@pytest.mark.parametrize("form", ["text", "json", "html"])
def test_a_report_stays_as_it_was_if_the_plan_cannot_be_read(dryfit: Run, county: Path, plans: Path, form: str) -> None:
    (plans / "report").write_text("the last one", encoding="utf-8")
    result = dryfit("check", "bad.yaml", "--rules", county, "--format", form, "--output", "report")
    assert result.exit_code == 2
    assert (plans / "report").read_text(encoding="utf-8") == "the last one"


def test_a_report_on_several_plans_is_whole_or_not_written(dryfit: Run, county: Path, plans: Path) -> None:
    assert dryfit("check", "wrong.yaml", "bad.yaml", "--rules", county, "--output", "report").exit_code == 2
    assert not (plans / "report").exists()


def test_a_report_keeps_the_mode_of_the_file_it_replaces(dryfit: Run, county: Path, plans: Path) -> None:
    report = plans / "report"
    report.write_text("the last one", encoding="utf-8")
    report.chmod(0o640)
    dryfit("check", "sound.yaml", "--rules", county, "--output", "report")
    assert report.stat().st_mode & 0o777 == 0o640


@pytest.mark.usefixtures("plans")
def test_a_report_that_cannot_be_written_is_told(dryfit: Run, county: Path) -> None:
    result = dryfit("check", "sound.yaml", "--rules", county, "--output", "nowhere/report")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr == "Error: nowhere/report cannot be written: No such file or directory\n"


@pytest.mark.usefixtures("plans")
def test_one_page_holds_one_plan(dryfit: Run, county: Path) -> None:
    result = dryfit("check", "sound.yaml", "wrong.yaml", "--rules", county, "--format", "html", "--output", "report")
    assert result.exit_code == 2
    assert "an HTML page holds one plan: give one PLAN for each --output" in result.stderr


@pytest.mark.usefixtures("plans")
def test_each_reader_has_his_order(dryfit: Run, county: Path) -> None:
    contractor, reviewer = (
        dryfit("check", "wrong.yaml", "--rules", county, "--for", reader).stdout
        for reader in ("contractor", "reviewer")
    )
    assert "── Corrections (1) " in contractor
    assert "── Stair details · stairs · building (1) " in reviewer
    assert dryfit("check", "wrong.yaml", "--rules", county).stdout == contractor


@pytest.mark.usefixtures("plans")
def test_all_lists_what_raised_no_conflict(dryfit: Run, county: Path) -> None:
    assert "── Meets (" not in dryfit("check", "sound.yaml", "--rules", county).stdout
    assert "── Meets (" in dryfit("check", "sound.yaml", "--rules", county, "--all").stdout
    everything = json.loads(dryfit("check", "sound.yaml", "--rules", county, "--all", "--format", "json").stdout)
    assert {each["verdict"] for each in everything["findings"]} == {"meets", "does not apply"}


def test_rules_are_listed_with_citation(dryfit: Run, county: Path) -> None:
    result = dryfit("rules", "list", "--rules", county)
    assert result.exit_code == 0
    lines = result.stdout.splitlines()
    assert "base/guards.opening  [danger]" in lines
    assert "base/stairs.steepish  [concludes steepish]" in lines
    assert "    A rule — House rules 7" in lines
    assert not [line for line in lines if "comfort" in line]


def test_a_rule_is_shown_as_people_read_it(dryfit: Run) -> None:
    result = dryfit("rules", "show", "us/stairs.riser-height", "--date", "2020-01-01")
    assert result.exit_code == 0
    assert "(us/stairs.riser-height)" in result.stdout.splitlines()[0]
    for word in ("Severity", "Requires", "Says", "Decides", "Basis", "Example"):
        assert f"\n  {word:<10}" in result.stdout
    assert max(map(len, result.stdout.splitlines())) <= 80


def test_a_rule_that_is_not_there_is_named_with_its_nearest(dryfit: Run) -> None:
    result = dryfit("rules", "show", "us/stairs.riser-heigt")
    assert result.exit_code == 2
    assert result.stderr.endswith("no rule “us/stairs.riser-heigt” is in force; nearest: us/stairs.riser-height\n")


@pytest.mark.parametrize("command", [("list",), ("show", "us/stairs.riser-height")])
def test_a_date_that_is_none_is_refused(dryfit: Run, command: tuple[str, ...]) -> None:
    result = dryfit("rules", *command, "--date", "2026-02-30")
    assert result.exit_code == 2
    assert result.stderr.endswith("Error: --date: “2026-02-30” is no date; write it as 2026-03-31\n")


def test_examples_of_a_ruleset_are_run(dryfit: Run, county: Path) -> None:
    result = dryfit("rules", "test", county.parent / "base")
    assert result.exit_code == 1
    assert "base/stairs.rise has no example for: meets, fails, cannot tell, excused, does not apply\n" in result.stdout
    assert result.stdout.splitlines()[-1].startswith("base: 9 rules, 1 tables, 0 examples: ")
    assert dryfit("rules", "test", "practice").stdout.endswith(": all as stated\n")
    assert dryfit("rules", "test", "nowhere").exit_code == 2


@pytest.mark.usefixtures("plans")
def test_facts_are_listed_with_their_origin(dryfit: Run, county: Path) -> None:
    result = dryfit("facts", "missing.yaml", "--rules", county, "--missing")
    assert result.exit_code == 0
    lines = result.stdout.splitlines()
    assert "flight main  missing.yaml:9:9" in lines
    assert "  risers: 14  (stated, line 9)" in lines
    assert "  total_rise: 9'-0 1/2\"  (computed from total rise of stair main 9'-0 1/2\")" in lines
    assert "  steepish: no  (inferred)" in lines
    assert "  widest_flight: not known (needs width of flight main)" in lines


def test_the_glossary_lists_kinds(dryfit: Run) -> None:
    result = dryfit("glossary", "flight", "guard")
    assert result.exit_code == 0
    assert result.stdout.startswith("flight — a run of steps between floors or landings\n")
    assert "\n\nguard — " in result.stdout
    assert "  stair → one stair: the stair that holds it\n" in result.stdout
    assert "  handrails → several handrail: Handrails of the flight\n" in result.stdout


def test_a_kind_that_is_not_there_is_named_with_its_nearest(dryfit: Run) -> None:
    result = dryfit("glossary", "flght")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.endswith("there is no kind “flght”; nearest: flight\n")


@pytest.mark.parametrize("of", ["plan", "ruleset", "topic", "report"])
def test_every_schema_is_one(dryfit: Run, tmp_path: Path, of: str) -> None:
    result = dryfit("schema", of)
    assert result.exit_code == 0
    Draft202012Validator.check_schema(json.loads(result.stdout))
    assert dryfit("schema", of, "--output", "schema.json").exit_code == 0
    assert (tmp_path / "schema.json").read_text(encoding="utf-8") == result.stdout


def test_the_schemas_of_rulesets_accept_those_shipped() -> None:
    from checker.cli.schema import schema_of
    from checker.ruleset.places import shipped
    from checker.source import read

    head, topic = (Draft202012Validator(schema_of(of)) for of in ("ruleset", "topic"))
    for file in shipped().glob("**/*.yaml"):
        validator = head if file.name == "ruleset.yaml" else topic
        assert [error.message for error in validator.iter_errors(read(file).data)] == [], file.name


@pytest.mark.parametrize(
    ("word", "words"),
    [
        ("chek", "there is no command “chek”; nearest: check."),
        ("zzz", f"there is no command “zzz”; there are: {', '.join(COMMANDS)}."),
        (
            "house.yaml",
            f"there is no command “house.yaml”; there are: {', '.join(COMMANDS)}. "
            "To check a plan: dryfit check house.yaml",
        ),
    ],
)
def test_an_unknown_command_is_named_with_its_nearest(dryfit: Run, word: str, words: str) -> None:
    result = dryfit(word)
    assert result.exit_code == 2
    assert result.stderr.endswith(f"Error: {words}\n")


@pytest.mark.parametrize(
    "command",
    [(), *((each,) for each in COMMANDS), ("rules", "list"), ("rules", "show"), ("rules", "test")],
    ids=" ".join,
)
def test_every_command_has_help(dryfit: Run, command: tuple[str, ...]) -> None:
    for option in ("-h", "--help"):
        result = dryfit(*command, option)
        assert result.exit_code == 0
        assert result.stdout.startswith(f"Usage: {' '.join(('dryfit', *command))} ")
        assert len(result.stdout.splitlines()) > 4


def test_the_help_of_check_tells_every_status(dryfit: Run) -> None:
    text = " ".join(dryfit("check", "--help").stdout.split())
    assert "Exit status: 0 nothing to correct and nothing missing; 1 something does not meet; 2 a plan or " in text
    assert "3 only missing items; 4 the engine stopped." in text


def test_the_version_is_told(dryfit: Run) -> None:
    from checker import __version__

    assert dryfit("--version").stdout == f"dryfit, version {__version__}\n"


@pytest.mark.parametrize("command", [("glossary",), ("rules", "list"), ("schema", "plan")], ids=" ".join)
def test_a_reader_who_stops_reading_gets_no_traceback(command: tuple[str, ...], cache_folder: Path) -> None:
    running = subprocess.Popen(
        [sys.executable, "-c", "from checker.cli import main; main()", *command],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "DRYFIT_CACHE": str(cache_folder)},
        text=True,
    )
    assert running.stdout is not None
    assert running.stderr is not None
    assert running.stdout.readline()
    running.stdout.close()
    errors = running.stderr.read()
    running.stderr.close()
    running.wait()
    assert errors == ""


def test_an_engine_fault_is_told_as_ours_and_writes_nothing(
    dryfit: Run, county: Path, plans: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from checker import check
    from checker.engine.session import EngineFault

    def fail(*_: object, **__: object) -> None:
        raise EngineFault("it ran too long")

    monkeypatch.setattr(check, "check", fail)
    result = dryfit("check", "sound.yaml", "--rules", county, "--output", "report")
    assert result.exit_code == 4
    assert result.stderr == (
        "The rules engine stopped: it ran too long\n"
        "This is a fault of dryfit, not of your plan; please report it with the plan.\n"
    )
    assert not (plans / "report").exists()
