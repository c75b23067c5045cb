"""Examples of rules and tables: those that agree pass, every other is told with its place."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.ruleset import examples as running
from checker.ruleset.folders import Library
from tests.ruleset.test_mistakes import TABLE
from tests.ruleset.writing import STAIRS, conclusion, topic, write_set

GOOD = ("meets: {riser_height: 8 in}", "fails: {riser_height: 8-1/16 in}", "cannot tell: {}")
OPEN = STAIRS.replace(
    "    require:",
    "    when: {open_risers: {is: true}}\n"
    "    except: [{id: old, cite: Rules 8, known: read, when: {status: {is: altered}}}]\n"
    "    require:",
)
GENTLE = topic("stairs", "rules:", conclusion("c", "gentle", "{going: {over: 9 in}}"))


def run(root: Path, text: str, *examples: str) -> running.Tested:
    """Run the examples of a set of one topic file, whose last rule or table has these."""
    listed = "".join(f"      - {each}\n" for each in examples)
    write_set(root, stairs=text + (f"    examples:\n{listed}" if examples else ""))
    library = Library((root,))
    return running.run_examples(library.folder("base"), library)


def told(tested: running.Tested) -> list[str]:
    """The problems, each as text, without the name of the file."""
    assert all(each.place.file == "rulesets/base/stairs.yaml" for each in tested.problems)
    return [str(each).removeprefix("rulesets/base/stairs.yaml:") for each in tested.problems]


def test_examples_that_agree_pass(tmp_path: Path) -> None:
    tested = run(tmp_path, STAIRS, *GOOD, 'meets: {riser_height: 9 in}\n        edition: "2020"')
    assert told(tested) == []
    assert (tested.ruleset, tested.rules, tested.tables, tested.examples) == ("base", 1, 0, 4)


@pytest.mark.parametrize(
    ("example", "words"),
    [
        pytest.param(
            "meets: {riser_height: 9 in}",
            "24:9: base/stairs.rise: the example expects “meets”, but the case “fails”\n  mend the rule or the example",
            id="disagrees",
        ),
        pytest.param(
            'meets: {riser_height: 9 in}\n        edition: "2023"',
            "24:9: base/stairs.rise: the example expects “meets”, but the case “fails”\n  mend the rule or the example",
            id="disagrees in its edition",
        ),
        pytest.param(
            "fails: {riser_height: 9 in, status: existing}",
            "24:9: base/stairs.rise: the example expects “fails”, but the case “is not judged”\n"
            "  mend the rule or the example",
            id="not judged",
        ),
        pytest.param(
            'meets: {riser_height: 9 in}\n        edition: "2021"',
            "25:18: base/stairs.rise is not in edition “2021”\n  editions: 2020, 2023",
            id="edition that is not there",
        ),
        pytest.param(
            "meets: {riser_height: 7 in}\n        fails: {}",
            "24:9: an example gives exactly one verdict with its facts\n  meets: {riser_height: 7-3/4 in}",
            id="two verdicts",
        ),
        pytest.param(
            "meets: {riser_heigt: 7 in}",
            "24:30: a flight has no attribute or link “riser_heigt”\n  nearest: riser_height",
            id="unknown attribute",
        ),
        pytest.param(
            "meets: {riser_height: 7 lb}",
            "24:31: `riser_height`: 7 lb is a mass or a force; a length is needed\n"
            "  write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)",
            id="wrong dimension",
        ),
        pytest.param(
            "meets: {riser_height: 7 in, open_risers: 3}",
            "24:50: `open_risers` cannot be “3”\n  true or false",
            id="number for a truth",
        ),
        pytest.param(
            "meets: {riser_height: 7 in, status: nw}",
            "24:45: `status` cannot be “nw”\n  nearest: new",
            id="wrong choice",
        ),
        pytest.param(
            "meets: {riser_height: 7 in, stair: 3}",
            "24:44: `stair` leads to a stair: what is known of it is needed\n  stair: {}, or [{}, {}] for several",
            id="number for an element",
        ),
    ],
)
def test_an_example_that_cannot_stand_is_told_at_its_place(tmp_path: Path, example: str, words: str) -> None:
    assert told(run(tmp_path, STAIRS, *GOOD, example)) == [words]


@pytest.mark.parametrize(
    ("text", "examples", "words"),
    [
        pytest.param(
            STAIRS,
            (),
            [
                "5:5: base/stairs.rise has no example for: meets, fails, cannot tell\n  add it under `examples:`",
                "5:5: base/stairs.rise has no example exactly at its limit\n  add one with riser_height at the limit",
            ],
            id="none",
        ),
        pytest.param(
            STAIRS,
            ("meets: {riser_height: 7 in}", *GOOD[1:]),
            ["5:5: base/stairs.rise has no example exactly at its limit\n  add one with riser_height at the limit"],
            id="none at the limit",
        ),
        pytest.param(
            OPEN,
            (
                "meets: {riser_height: 8 in, open_risers: true}",
                "fails: {riser_height: 9 in, open_risers: true}",
                "cannot tell: {}",
            ),
            ["5:5: base/stairs.rise has no example for: excused, does not apply\n  add it under `examples:`"],
            id="none that is excused or does not apply",
        ),
        pytest.param(
            OPEN,
            (
                "meets: {riser_height: 8 in, open_risers: true}",
                "fails: {riser_height: 9 in, open_risers: true}",
                "cannot tell: {}",
                "does not apply: {riser_height: 9 in, open_risers: false}",
                "excused: {riser_height: 9 in, open_risers: true, status: altered}",
            ),
            [],
            id="all kinds",
        ),
        pytest.param(
            GENTLE,
            (),
            ["4:5: base/stairs.c has no example for: holds, does not hold, cannot tell\n  add it under `examples:`"],
            id="conclusion with none",
        ),
        pytest.param(
            GENTLE,
            ("holds: {going: 10 in}", "does not hold: {going: 9 in}", "cannot tell: {}"),
            [],
            id="conclusion with all kinds",
        ),
        pytest.param(
            GENTLE,
            ("holds: {going: 9 in}", "does not hold: {going: 9 in}", "cannot tell: {}"),
            [
                "16:9: base/stairs.c: the example expects “holds”, but the case “does not hold”\n"
                "  mend the rule or the example"
            ],
            id="conclusion that disagrees",
        ),
    ],
)
def test_a_rule_needs_an_example_of_each_kind(
    tmp_path: Path, text: str, examples: tuple[str, ...], words: list[str]
) -> None:
    assert told(run(tmp_path, text, *examples)) == words


@pytest.mark.parametrize(
    ("examples", "words"),
    [
        pytest.param(
            (),
            [
                "4:5: base/stairs.rises has no example in a row, on a boundary, beyond the rows\n"
                "  add it under `examples:`"
            ],
            id="none",
        ),
        pytest.param(
            (
                "{when: {width: 10 in}, gives: {rise: 7 in}}",
                "{when: {width: 30 in}, gives: {rise: 8 in}}",
                "{when: {width: 40 in}, gives: beyond}",
            ),
            [],
            id="all as they are",
        ),
        pytest.param(
            (
                "{when: {width: 30 in}, gives: {rise: 7 in}}",
                "{when: {width: 39 in}, gives: beyond}",
                "{when: {width: 40 in}, gives: {rise: 8 in}}",
            ),
            [
                "15:9: base/stairs.rises gives something else here\n  mend the row or the example",
                "16:9: base/stairs.rises gives something else here\n  mend the row or the example",
                "17:9: base/stairs.rises has no row for this example\n  gives: beyond",
            ],
            id="none as it is",
        ),
        pytest.param(
            (
                "{when: {widt: 10 in}, gives: {rise: 7 in}}",
                "{when: {}, gives: {rise: 7 in}}",
                "{when: {width: 10 lb}, gives: {rise: 7 in}}",
                "{when: {width: 10 in}, gives: {rsie: 7 in}}",
            ),
            [
                "4:5: base/stairs.rises has no example on a boundary, beyond the rows\n  add it under `examples:`",
                "15:9: the table has no column “widt”\n  nearest: width",
                "16:9: an example gives every key of the table\n  keys: width",
                "17:9: 10 lb is a mass or a force; a length is needed\n"
                "  write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)",
                "18:9: the table has no column “rsie”\n  nearest: rise",
            ],
            id="mistakes",
        ),
    ],
)
def test_a_table_s_examples_are_looked_up(tmp_path: Path, examples: tuple[str, ...], words: list[str]) -> None:
    assert told(run(tmp_path, topic("stairs", TABLE).rstrip("\n") + "\n", *examples)) == words


def test_a_gap_between_rows_is_beyond_the_table(tmp_path: Path) -> None:
    text = topic("stairs", TABLE.replace("[30 in, 40 in]", "[32 in, and up]"))
    examples = ("{when: {width: 31 in}, gives: beyond}", "{when: {width: 32 in}, gives: {rise: 8 in}}")
    assert told(run(tmp_path, text, *examples)) == []
