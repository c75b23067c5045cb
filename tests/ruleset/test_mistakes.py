"""Every kind of mistake in a ruleset: what is said of it, and where."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.problems import Unreadable
from tests.ruleset.writing import STAIRS, adopted, conclusion, rule, topic, write_set

RISER = "    require: {riser_height: {at_most: 8 in}}"
LENGTH = "write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)"
TABLE = """\
tables:
  - id: rises
    title: Rises
    keys: {width: {form: interval, of: length}}
    values: {rise: length}
    cite: House rules 9
    basis: common practice
    known: read
    rows:
      - {when: {width: [0 in, 30 in]}, gives: {rise: 7 in}}
      - {when: {width: [30 in, 40 in]}, gives: {rise: 8 in}}
"""
ASSUMED = """\
assumptions:
  - {name: counted_height, title: Height, of: length, value: 5 ft, cite: House rules 3, basis: standard, known: read}
"""
LOOK_UP = "    require: {riser_height: {at_most: {table: base/stairs.rises, by: {width: width}, column: rise}}}"


def said(root: Path, text: str, date: str = "") -> str:
    """What is said of a set whose topic file `stairs.yaml` has this text."""
    write_set(root, stairs=text)
    with pytest.raises(Unreadable) as caught:
        adopted(root, date=date)
    return str(caught.value)


def _rules(*rules: str) -> str:
    return topic("stairs", "rules:", *rules)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        pytest.param(
            _rules(rule("a", f"{RISER}\n    reqire: {{}}")),
            "9:5: `reqire` is not known here\n  nearest: require",
            id="unknown key in a rule",
        ),
        pytest.param(
            topic("stair"), "1:8: the topic is “stair”, the file stairs.yaml\n  topic: stairs", id="topic name"
        ),
        pytest.param(
            _rules(rule("a", RISER).replace("    cite: House rules 7\n", "")),
            "4:5: “a” needs either `editions:` or `cite:`\n"
            '  editions: {"2021": {section: R311.7.5.1}}, or cite: common practice, no source',
            id="no citation",
        ),
        pytest.param(
            _rules(rule("a", RISER + '\n    editions: {"2023": {section: S-1}}')),
            "4:5: “a” has both `editions:` and `cite:`\n  keep one of the two",
            id="two citations",
        ),
        pytest.param(
            STAIRS.replace('"2023"', '"2032"'),
            '12:7: base has no edition “2032”\n  nearest: "2023", "2020"',
            id="unknown edition",
        ),
        pytest.param(
            STAIRS.replace("S-2", "7.10"),
            "12:25: `section` is a number (“7.10”): a text is needed\n  put it in quotes",
            id="section number that is no text",
        ),
        pytest.param(
            _rules(rule("a", RISER + "\n    when: {riser_heigt: {over: 1 in}}")),
            "9:25: a flight has no attribute or link `riser_heigt`\n  nearest: riser_height",
            id="unknown attribute in when",
        ),
        pytest.param(
            _rules(rule("a", "    require: {riser_heigt: {over: 1 in}}")),
            "8:28: a flight has no attribute or link `riser_heigt`\n  nearest: riser_height",
            id="unknown attribute in require",
        ),
        pytest.param(
            _rules(
                rule(
                    "a",
                    RISER + "\n    except: [{id: x, cite: Rules 8, known: read, when: {riser_heigt: {over: 1 in}}}]",
                )
            ),
            "9:70: a flight has no attribute or link `riser_heigt`\n  nearest: riser_height",
            id="unknown attribute in except",
        ),
        pytest.param(
            _rules(rule("a", "    require: {stair: {to_level: {floor_are: {over: 1 ft2}}}}")),
            "8:45: a level has no attribute or link `floor_are`\n  nearest: floor_area",
            id="unknown attribute across links",
        ),
        pytest.param(
            _rules(rule("a", "    require: {riser_height: {at_most: 8 lb}}", says="At most {limit}.")),
            f"8:39: `riser_height`: 8 lb is a mass or a force; a length is needed\n  {LENGTH}",
            id="wrong dimension, said once",
        ),
        pytest.param(
            _rules(rule("a", "    require: {riser_height: {at_most: 8}}")),
            f"8:39: `riser_height`: 8 has no unit; a length is needed\n  {LENGTH}",
            id="no unit",
        ),
        pytest.param(
            _rules(rule("a", RISER, says="Each is {riser_heigt}.")),
            "13:11: {riser_heigt}: a flight has no attribute “riser_heigt”\n  nearest: riser_height",
            id="unknown placeholder",
        ),
        pytest.param(
            _rules(rule("a", RISER, says="Each is {stiar.total_rise}.")),
            "13:11: {stiar.total_rise}: a flight has no to-one link “stiar”\n  nearest: stair",
            id="unknown link in a placeholder",
        ),
        pytest.param(
            _rules(rule("a", RISER, says='"Each { is"')),
            "13:11: `says` has a stray brace\n  write {attribute}",
            id="stray brace",
        ),
        pytest.param(
            _rules(
                rule("a", "    require: {riser_height: {at_most: 8 in}, going: {at_least: 9 in}}", says="Over {limit}.")
            ),
            "13:11: {limit} needs exactly one numeric comparison in `require`; there are 2\n"
            "  split the rule, or say it in words",
            id="limit of two comparisons",
        ),
        pytest.param(
            _rules(rule("a", "    require: {open_risers: {is: true}}", says="By {margin}.")),
            "13:11: {margin} needs exactly one numeric comparison in `require`; there are 0\n"
            "  split the rule, or say it in words",
            id="margin of no comparison",
        ),
        pytest.param(
            _rules(rule("a", LOOK_UP)),
            "8:47: there is no table “base/stairs.rises”\n  add the table, or adopt the set that has it",
            id="table that is not there",
        ),
        pytest.param(
            topic("stairs", TABLE, "rules:", rule("a", LOOK_UP.replace("stairs.rises", "stairs.rise"))),
            "20:47: there is no table “base/stairs.rise”\n  nearest: base/stairs.rises",
            id="misspelt table",
        ),
        pytest.param(
            _rules(conclusion("a", "one", "{two: {is: true}}"), conclusion("b", "two", "{one: {is: true}}")),
            "8:16: conclusions go in a circle: flight.one → flight.two → flight.one\n  break it at one of them",
            id="circle of conclusions",
        ),
        pytest.param(
            _rules(rule("a", RISER + "\n    when: {steepish: {is: true}}")),
            "9:22: a flight has no attribute or link `steepish`\n  see `dryfit glossary flight`",
            id="conclusion that no rule concludes",
        ),
        pytest.param(
            topic("stairs", "retired: [{id: a, why: it was split, now: base/stairs.b}]", "rules:", rule("a", RISER)),
            "5:9: the id “a” is retired: it was split\n  see base/stairs.b",
            id="retired id",
        ),
        pytest.param(
            _rules(rule("a", RISER), rule("a", RISER)),
            "18:9: the id “a” is used twice, first on line 4\n  give each its own id",
            id="id twice",
        ),
        pytest.param(
            topic("stairs", TABLE + TABLE.removeprefix("tables:\n")),
            "14:9: the id “rises” is used twice, first on line 4\n  give each its own id",
            id="table id twice",
        ),
        pytest.param(
            _rules(rule("a", RISER, kind="flght")),
            "7:10: there is no kind of element “flght”\n  nearest: flight",
            id="unknown kind",
        ),
        pytest.param(
            _rules(rule("a", "    when: {riser_height: {at_most: 8 in}}")),
            "4:5: base/stairs.a needs exactly one of require, asks, concludes\n  a rule does one thing",
            id="rule that does nothing",
        ),
        pytest.param(
            _rules(rule("a", RISER + "\n    asks: {going: {stated: true}}")),
            "4:5: base/stairs.a needs exactly one of require, asks, concludes\n  a rule does one thing",
            id="rule that does two things",
        ),
        pytest.param(
            _rules(rule("a", "    require: {going: {stated: true}}")),
            "8:31: `stated` belongs to rules that ask for an item\n  use `asks:` instead of `require:`",
            id="stated in a requirement",
        ),
        pytest.param(
            _rules(rule("a", RISER).replace("    says: It does not fit.\n", "")),
            "4:5: base/stairs.a needs `says:`\n  add the line",
            id="rule that says nothing",
        ),
        pytest.param(
            _rules(conclusion("a", "one", "{going: {over: 1 in}}").replace("    meaning: whether it is so\n", "")),
            "8:16: a conclusion needs a meaning\n  add `meaning:`",
            id="conclusion without a meaning",
        ),
        pytest.param(
            _rules(conclusion("a", "handrails", "{going: {over: 1 in}}")),
            "8:16: a flight already has “handrails”: a conclusion needs a name of its own\n  choose another",
            id="conclusion with the name of a link",
        ),
        pytest.param(
            _rules(conclusion("a", "one", "{going: {over: 1 in}}") + "    severity: danger\n"),
            "4:5: a rule that concludes has no severity and no exceptions\n  remove them",
            id="conclusion with a severity",
        ),
        pytest.param(
            _rules(rule("a", RISER, severity="dangerous")),
            "12:15: `severity` is “dangerous”\n  nearest: danger; one of: danger, correction, advice",
            id="wrong choice",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("[30 in, 40 in]", "[29 in, 40 in]")),
            "13:9: row 2 overlaps row 1\n  intervals run from, up to but not with",
            id="rows that overlap",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("[30 in, 40 in]", "[40 in, 30 in]")),
            "13:24: the interval ends before it starts\n  [3 ft, 5 ft], or [5 ft, and up]",
            id="interval the wrong way round",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("{width: [30 in, 40 in]}", "{width: 30 in}")),
            "13:24: an interval needs two ends: from, and up to but not with\n  [3 ft, 5 ft]",
            id="interval of one end",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("gives: {rise: 8 in}", "gives: {rise: 8 lb}")),
            f"13:55: 8 lb is a mass or a force; a length is needed\n  {LENGTH}",
            id="cell of the wrong dimension",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("gives: {rise: 8 in}", "gives: {}")),
            "13:48: a cell of the table is missing or of the wrong kind\n  write: 7-3/4 in",
            id="cell missing",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("gives: {rise: 8 in}", "gives: {rise: 8 in, ris: 7 in}")),
            "13:9: the table has no column “ris”\n  nearest: rise",
            id="unknown column",
        ),
        pytest.param(
            topic("stairs", TABLE.replace("of: length", "of: lenght")),
            "6:19: “lenght” is no dimension\n  nearest: length",
            id="column of no dimension",
        ),
        pytest.param(
            topic("stairs", ASSUMED.replace("5 ft", "5 lb")),
            f"4:62: 5 lb is a mass or a force; a length is needed\n  {LENGTH}",
            id="assumption of the wrong dimension",
        ),
        pytest.param(
            topic(
                "stairs", ASSUMED.replace("of: length, value: 5 ft", "of: choice, choices: [slow, fast], value: fst")
            ),
            "4:85: “fst” is none of the choices\n  nearest: fast",
            id="assumption that is no choice",
        ),
        pytest.param(
            topic("stairs", ASSUMED + ASSUMED.removeprefix("assumptions:\n")),
            "5:12: the assumption “counted_height” is made twice\n  amend the first instead",
            id="assumption twice",
        ),
    ],
)
def test_a_mistake_is_said_with_its_place_and_what_would_do(tmp_path: Path, text: str, words: str) -> None:
    assert said(tmp_path, text) == f"rulesets/base/stairs.yaml:{words}"


def test_an_edition_s_change_is_checked_where_it_stands(tmp_path: Path) -> None:
    text = STAIRS.replace("sets: {require.riser_height.at_most: 9 in}", "sets: {require.riser_heigt.at_most: 9 in}")
    write_set(
        tmp_path,
        "county",
        editions='["2025"]',
        more='adopts: [{set: base, edition: "2020"}]\n',
    )
    write_set(tmp_path, stairs=text)
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path, "county")
    assert str(caught.value) == (
        "rulesets/base/stairs.yaml:11:66: base/stairs.rise has no “riser_heigt” in “require.riser_heigt.at_most”\n"
        "  nearest: riser_height"
    )


def test_all_mistakes_of_all_files_come_in_one_run(tmp_path: Path) -> None:
    write_set(
        tmp_path, stairs=_rules(rule("a", f"{RISER}\n    reqire: {{}}")), rooms=topic("room"), more="titel: Base\n"
    )
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path)
    assert [(Path(each.place.file).name, each.what) for each in caught.value.problems] == [
        ("rooms.yaml", "the topic is “room”, the file rooms.yaml"),
        ("ruleset.yaml", "`titel` is not known here"),
        ("stairs.yaml", "`reqire` is not known here"),
    ]


def test_conditions_of_several_rules_are_checked_in_one_run(tmp_path: Path) -> None:
    words = said(
        tmp_path,
        _rules(rule("a", "    require: {riser_heigt: {over: 1 in}}"), rule("b", "    require: {goin: {over: 1 in}}")),
    )
    assert [line for line in words.splitlines() if not line.startswith(" ")] == [
        "rulesets/base/stairs.yaml:8:28: a flight has no attribute or link `riser_heigt`",
        "rulesets/base/stairs.yaml:22:21: a flight has no attribute or link `goin`",
    ]


def test_a_ruleset_that_is_not_there_is_named_with_its_nearest(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=STAIRS)
    with pytest.raises(Unreadable) as caught:
        adopted(tmp_path, "bas")
    assert str(caught.value) == "bas:1:1: there is no ruleset “bas”\n  nearest: base"


def test_drafts_are_not_in_force(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=_rules(rule("a", RISER), rule("b", RISER + "\n    draft: true")))
    assert [each.id for each in adopted(tmp_path).rules] == ["base/stairs.a"]


def test_a_rule_is_in_force_in_the_editions_that_it_names(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=STAIRS.replace('      "2023": {section: S-2}\n', ""))
    assert adopted(tmp_path).rules == ()


def test_rows_may_leave_a_gap(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=topic("stairs", TABLE.replace("[30 in, 40 in]", "[32 in, and up]")))
    table = adopted(tmp_path).tables["base/stairs.rises"]
    assert [cells for cells, _ in table.rows.rows] == [
        ((0.0, pytest.approx(0.762)),),
        ((pytest.approx(0.8128), 1e30),),
    ]
