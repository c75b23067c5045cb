"""Adopting on a date: which editions hold, which amendments apply, and what is then in force."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from checker.facts import Value
from checker.problems import Unreadable
from checker.ruleset.adopted import Adopted, adopted_from
from checker.ruleset.folders import Library
from tests.ruleset.test_mistakes import ASSUMED, RISER, TABLE
from tests.ruleset.writing import STAIRS, adopted, conclusion, rule, topic, write_set

ADOPTS = """\
adopts:
  - {set: base, edition: "2020", from: "2020-07-01", to: "2024-01-01"}
  - {set: base, edition: "2023", from: "2024-01-01"}
"""
RISE = "require.riser_height.at_most"
DANGER = STAIRS.replace("severity: correction", "severity: danger")
CHAIN = topic(
    "stairs",
    "rules:",
    rule("a", f"{RISER}\n    when: {{steepish: {{is: true}}}}", severity="danger"),
    conclusion("b", "steepish", "{any: [{gentle: {is: false}}, {going: {under: 6 in}}]}"),
    conclusion("c", "gentle", "{going: {over: 9 in}}"),
    conclusion("d", "gentle", "{going: {over: 10 in}}"),
)


def amendment(**lines: str) -> str:
    """One amendment in the flow style; `except_` stands for `except`."""
    given = ", ".join(f"{name.rstrip('_')}: {value}" for name, value in lines.items())
    return f"  - {{{given}, cite: Ord. 1, known: read}}"


def county(root: Path, *amendments: str, base: str = STAIRS, more: str = ADOPTS) -> None:
    """A county that adopts a base set and amends it."""
    write_set(root, stairs=base)
    changes = {"changes": topic("changes", "amendments:", *amendments)} if amendments else {}
    write_set(root, "county", editions='["2025"]', title="County", short="County", more=more, **changes)


def refused(root: Path, date: str = "2025-01-01", name: str = "county") -> str:
    """What is said of a set that cannot be adopted."""
    with pytest.raises(Unreadable) as caught:
        adopted(root, name, date)
    return str(caught.value)


def limit(of: Adopted, index: int = 0) -> float:
    """The limit of a rule's only comparison [in]."""
    argument = of.rules[index].require.argument
    assert isinstance(argument, float)
    return argument / 0.0254


@pytest.mark.parametrize(
    ("date", "edition", "most"),
    [
        ("2020-07-01", "2020", 9),
        ("2023-12-31", "2020", 9),
        ("2024-01-01", "2023", 8),
        ("2031-05-05", "2023", 8),
        ("", "2023", 8),
    ],
)
def test_the_date_of_the_permit_picks_the_edition(tmp_path: Path, date: str, edition: str, most: float) -> None:
    county(tmp_path)
    found = adopted(tmp_path, "county", date)
    base, own = found.sets
    assert (base.name, base.edition, base.newest_taken) == ("base", edition, not date)
    assert base.since == ("2020-07-01" if edition == "2020" else "2024-01-01")
    assert (own.name, own.edition) == ("county", "2025")
    assert limit(found) == pytest.approx(most)
    assert str(found.rules[0].cite) == f"Base {edition}, S-{1 if edition == '2020' else 2}"
    assert found.date == date


def test_the_newest_edition_is_the_one_adopted_last_wherever_it_is_listed(tmp_path: Path) -> None:
    head, old, new = ADOPTS.splitlines()
    county(tmp_path, more="\n".join([head, new, old]) + "\n")
    assert limit(adopted(tmp_path, "county")) == pytest.approx(8)


def test_a_set_without_dates_always_holds(tmp_path: Path) -> None:
    county(tmp_path, more='adopts: [{set: base, edition: "2020"}]\n')
    for date in ("1990-01-01", "2025-01-01", ""):
        found = adopted(tmp_path, "county", date)
        assert found.sets[0].edition == "2020"
        assert not found.sets[0].newest_taken


@pytest.mark.parametrize(
    ("more", "date", "words"),
    [
        pytest.param(
            ADOPTS,
            "2020-06-30",
            "8:11: no editions of base hold on 2020-06-30: 2020 from 2020-07-01 to 2024-01-01; 2023 from 2024-01-01 to "
            "now\n  exactly one edition must hold on a permit's date",
            id="no edition on the date",
        ),
        pytest.param(
            ADOPTS.replace('to: "2024-01-01"', 'to: "2024-06-01"'),
            "2024-03-01",
            "8:11: 2 editions of base hold on 2024-03-01: 2020 from 2020-07-01 to 2024-06-01; 2023 from 2024-01-01 to "
            "now\n  exactly one edition must hold on a permit's date",
            id="two editions on the date",
        ),
        pytest.param(
            'adopts: [{set: base, edition: "2021"}]\n',
            "",
            '7:16: base has no edition “2021”\n  nearest: "2023", "2020"',
            id="edition that is not there",
        ),
        pytest.param(
            'adopts: [{set: bse, edition: "2020"}]\n',
            "",
            "7:16: there is no ruleset “bse”\n  nearest: base",
            id="set that is not there",
        ),
        pytest.param(
            "adopts: [{set: base, edition: 2020}]\n",
            "",
            "7:31: `edition` is a number (“2020”): a text is needed\n  put it in quotes",
            id="edition that is no text",
        ),
        pytest.param(
            'adopts: [{set: base, edition: "2020", from: "2020-13-01"}]\n',
            "",
            '7:45: `from`: “2020-13-01” is no date\n  write: "2026-03-31"',
            id="date that is none",
        ),
        pytest.param(
            'adopts: [{set: county, edition: "2025"}]\n',
            "",
            "7:9: sets adopt each other: county → county\n  break the circle",
            id="set that adopts itself",
        ),
    ],
)
def test_adoptions_that_cannot_stand(tmp_path: Path, more: str, date: str, words: str) -> None:
    county(tmp_path, more=more)
    assert refused(tmp_path, date) == f"rulesets/county/ruleset.yaml:{words}"


def test_amendments_of_a_set_that_does_not_hold_are_not_blamed(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", severity="advice"))
    assert refused(tmp_path, "1990-01-01") == (
        "rulesets/county/ruleset.yaml:8:11: no editions of base hold on 1990-01-01: 2020 from 2020-07-01 to "
        "2024-01-01; 2023 from 2024-01-01 to now\n  exactly one edition must hold on a permit's date"
    )


def test_sets_that_adopt_each_other_are_an_error(tmp_path: Path) -> None:
    write_set(tmp_path, "one", editions='["1"]', more='adopts: [{set: two, edition: "1"}]\n')
    write_set(tmp_path, "two", editions='["1"]', more='adopts: [{set: one, edition: "1"}]\n')
    assert refused(tmp_path, name="one") == (
        "rulesets/one/ruleset.yaml:7:9: sets adopt each other: one → two → one\n  break the circle"
    )


def test_a_set_in_two_editions_at_once_is_an_error(tmp_path: Path) -> None:
    county(tmp_path)
    more = 'adopts: [{set: base, edition: "2020"}, {set: county, edition: "2025"}]\n'
    write_set(tmp_path, "town", editions='["1"]', more=more)
    assert refused(tmp_path, name="town") == (
        "rulesets/base/ruleset.yaml:1:1: base is adopted in two editions, 2020 and 2023\n  adopt one"
    )


def test_an_amendment_changes_a_limit_by_its_path_and_says_so(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 9-1/2 in}}", reason="Old houses."))
    found = adopted(tmp_path, "county", "2025-01-01")
    assert limit(found) == pytest.approx(9.5)
    (applied,) = found.amendments
    assert found.rules[0].amended_by == (applied,)
    assert (applied.ruleset, applied.target, applied.what) == ("county", "base/stairs.rise", RISE)
    assert (applied.base, applied.now, applied.cite, applied.reason) == ("8 in", "9-1/2 in", "Ord. 1", "Old houses.")
    assert str(applied.place) == "rulesets/county/changes.yaml:4:37"


def test_an_amendment_from_memory_says_so(tmp_path: Path) -> None:
    written = amendment(rule="base/stairs.rise", severity="advice").replace("known: read", "known: from memory")
    county(tmp_path, written)
    assert adopted(tmp_path, "county").amendments[0].cite == "Ord. 1 (from memory)"


def test_an_amendment_changes_the_edition_in_force(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 9-1/2 in}}"))
    assert adopted(tmp_path, "county", "2021-01-01").amendments[0].base == "9 in"


def test_an_amendment_changes_severity_and_adds_an_exception(tmp_path: Path) -> None:
    excuse = "[{id: old, cite: Ord. 2, known: read, when: {status: {is: altered}}}]"
    county(tmp_path, amendment(rule="base/stairs.rise", severity="danger", except_=excuse))
    (found,) = adopted(tmp_path, "county").rules
    assert found.severity == "danger"
    assert [(each.id, each.cite) for each in found.excuses] == [("old", "Ord. 2")]
    assert [(each.what, each.base, each.now) for each in found.amended_by] == [
        ("severity", "correction", "danger"),
        ("except", "", "old"),
    ]


def test_a_rule_can_be_suspended(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", suspend="true"))
    found = adopted(tmp_path, "county")
    assert found.rules == ()
    (suspended,) = found.suspended
    assert (suspended.rule, suspended.title, suspended.severity, suspended.cite, suspended.reason) == (
        "base/stairs.rise",
        "Rise",
        "correction",
        "Ord. 1",
        "",
    )


def test_a_danger_is_suspended_only_with_a_reason_which_is_kept(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", suspend="true"), base=DANGER)
    assert refused(tmp_path) == (
        "rulesets/county/changes.yaml:4:39: base/stairs.rise bears on a danger: suspending it needs a reason\n"
        "  add `reason:`; the report prints it"
    )
    county(tmp_path, amendment(rule="base/stairs.rise", suspend="true", reason="Another law."), base=DANGER)
    assert adopted(tmp_path, "county").suspended[0].reason == "Another law."


def test_a_danger_s_severity_is_lowered_only_with_a_reason(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", severity="advice"), base=DANGER)
    assert refused(tmp_path) == (
        "rulesets/county/changes.yaml:4:40: base/stairs.rise is a danger: lowering its severity needs a reason\n"
        "  add `reason:`"
    )
    county(tmp_path, amendment(rule="base/stairs.rise", severity="advice", reason="Another law."), base=DANGER)
    assert adopted(tmp_path, "county").rules[0].severity == "advice"


def test_a_conclusion_that_a_danger_reaches_is_suspended_only_with_a_reason(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.d", suspend="true"), base=CHAIN)
    assert refused(tmp_path) == (
        "rulesets/county/changes.yaml:4:36: base/stairs.d bears on a danger: suspending it needs a reason\n"
        "  add `reason:`; the report prints it"
    )
    county(tmp_path, amendment(rule="base/stairs.d", suspend="true", reason="Another law."), base=CHAIN)
    assert [each.id[-1] for each in adopted(tmp_path, "county").rules] == ["a", "b", "c"]


def test_a_conclusion_that_no_danger_reaches_is_suspended_without_a_reason(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.d", suspend="true"), base=CHAIN.replace("danger", "advice"))
    assert [each.rule for each in adopted(tmp_path, "county").suspended] == ["base/stairs.d"]


def test_a_conclusion_that_is_read_cannot_be_suspended_altogether(tmp_path: Path) -> None:
    reasons = [amendment(rule=f"base/stairs.{each}", suspend="true", reason="Another law.") for each in "cd"]
    county(tmp_path, *reasons, base=CHAIN)
    assert refused(tmp_path) == (
        "rulesets/base/stairs.yaml:19:5: base/stairs.b reads the conclusion flight.gentle, which no rule in force "
        "concludes\n  do not suspend what concludes it, or add a rule"
    )


def test_an_amendment_replaces_the_rows_of_a_table(tmp_path: Path) -> None:
    rows = "[{when: {width: [0 in, and up]}, gives: {rise: 7 in}}]"
    county(tmp_path, amendment(table="base/stairs.rises", rows=rows), base=STAIRS + TABLE)
    found = adopted(tmp_path, "county")
    ((cells, values),) = found.tables["base/stairs.rises"].rows.rows
    assert cells == ((0.0, 1e30),)
    assert values == pytest.approx((0.1778,))
    assert [(each.what, each.base, each.now) for each in found.amendments] == [("rows", "2 rows", "1 rows")]


def test_an_amendment_replaces_an_assumption(tmp_path: Path) -> None:
    county(tmp_path, amendment(assumption="counted_height", value="6 ft"), base=STAIRS + ASSUMED)
    assumed: dict[str, Value] = adopted(tmp_path, "county").assumed()
    assert assumed == {"counted_height": pytest.approx(1.8288)}
    assert adopted(tmp_path).assumed() == {"counted_height": pytest.approx(1.524)}


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        pytest.param(
            {"rule": "base/stairs.ris", "severity": "advice"},
            "4:12: no rule “base/stairs.ris” is in force to amend\n  nearest: base/stairs.rise",
            id="dangling rule",
        ),
        pytest.param(
            {"table": "base/stairs.ries", "rows": "[]"},
            "4:13: no table “base/stairs.ries” is in force to amend\n  nearest: base/stairs.rises",
            id="dangling table",
        ),
        pytest.param(
            {"assumption": "counted_hight", "value": "6 ft"},
            "4:18: no assumption “counted_hight” is in force to amend\n  nearest: counted_height",
            id="dangling assumption",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": "{require.riser_heigt.at_most: 9 in}"},
            "4:66: base/stairs.rise has no “riser_heigt” in “require.riser_heigt.at_most”\n  nearest: riser_height",
            id="dangling path",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": "{require.riser_height.at_mst: 9 in}"},
            "4:66: base/stairs.rise has no “at_mst” in “require.riser_height.at_mst”\n  nearest: at_most",
            id="dangling end of a path",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": "{says.x: y}"},
            "4:45: base/stairs.rise has no “x” in “says.x”\n  as in require.riser_height.at_most",
            id="path into a text",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": "{trade: guards}"},
            "4:44: “trade” is not a path that can be changed\n  as in require.riser_height.at_most",
            id="path that cannot be changed",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": f"{{{RISE}: 9 lb}}"},
            "4:67: `riser_height`: 9 lb is a mass or a force; a length is needed\n"
            "  write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)",
            id="wrong dimension",
        ),
        pytest.param({"rule": "base/stairs.rise", "sets": "{says: 4}"}, "4:43: `says` cannot be “4”", id="no text"),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": "{due: never}"},
            "4:42: `due` cannot be “never”\n  one of: application, before work, rough-in or final",
            id="no choice",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "sets": '{says: "Over {riser_heigt}."}'},
            "4:43: {riser_heigt}: a flight has no attribute “riser_heigt”\n  nearest: riser_height",
            id="unknown placeholder",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "except_": "[{id: o, cite: Ord., known: read, when: {stats: {is: new}}}]"},
            "4:86: a flight has no attribute or link `stats`\n  nearest: status",
            id="unknown attribute in an added exception",
        ),
        pytest.param(
            {"table": "base/stairs.rises", "value": "3"},
            "4:13: a table is amended by giving all its rows anew\n  add `rows:`",
            id="table without rows",
        ),
        pytest.param(
            {"assumption": "counted_height"},
            "4:18: an assumption is amended by its value\n  add `value:`",
            id="assumption without a value",
        ),
        pytest.param(
            {"assumption": "counted_height", "value": "6 lb"},
            "4:41: 6 lb is a mass or a force; a length is needed\n"
            "  write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)",
            id="assumption of the wrong dimension",
        ),
        pytest.param(
            {"rule": "base/stairs.rise", "table": "base/stairs.rises"},
            "4:5: an amendment changes one thing\n  name one of rule, table, assumption",
            id="two targets",
        ),
        pytest.param(
            {"reason": "none"},
            "4:5: an amendment changes one thing\n  name one of rule, table, assumption",
            id="no target",
        ),
    ],
)
def test_amendments_that_cannot_stand(tmp_path: Path, lines: dict[str, str], words: str) -> None:
    county(tmp_path, amendment(**lines), base=STAIRS + TABLE + ASSUMED)
    assert refused(tmp_path) == f"rulesets/county/changes.yaml:{words}"


def test_one_path_is_amended_once(tmp_path: Path) -> None:
    same = amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 9 in}}")
    county(tmp_path, same, same)
    assert refused(tmp_path) == (
        f"rulesets/county/changes.yaml:5:37: base/stairs.rise {RISE} is amended twice, first at "
        "rulesets/county/changes.yaml:4:37\n  keep one of the two"
    )


def test_two_sets_side_by_side_cannot_amend_one_path(tmp_path: Path) -> None:
    write_set(tmp_path, stairs=STAIRS)
    same = topic("changes", "amendments:", amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 9 in}}"))
    for name in ("one", "two"):
        write_set(tmp_path, name, editions='["1"]', more='adopts: [{set: base, edition: "2023"}]\n', changes=same)
    more = 'adopts: [{set: one, edition: "1"}, {set: two, edition: "1"}]\n'
    write_set(tmp_path, "both", editions='["1"]', more=more)
    assert refused(tmp_path, name="both") == (
        f"rulesets/two/changes.yaml:4:37: base/stairs.rise {RISE} is amended twice, first at "
        "rulesets/one/changes.yaml:4:37\n  keep one of the two"
    )


def test_a_set_amends_what_a_set_it_adopts_has_amended(tmp_path: Path) -> None:
    county(tmp_path, amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 9-1/2 in}}"))
    changes = topic("changes", "amendments:", amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 10 in}}"))
    more = 'adopts: [{set: county, edition: "2025"}]\n'
    write_set(tmp_path, "town", editions='["1"]', title="Town", more=more, changes=changes)
    found = adopted(tmp_path, "town", "2025-01-01")
    assert limit(found) == pytest.approx(10)
    assert [(each.ruleset, each.base, each.now) for each in found.rules[0].amended_by] == [
        ("county", "8 in", "9-1/2 in"),
        ("town", "9-1/2 in", "10 in"),
    ]


def _everything(root: Path) -> None:
    chain = CHAIN.removeprefix("topic: stairs\nabout: A topic.\n")
    excuse = "[{id: old, cite: Ord. 2, known: read, when: {count: {of: handrails, at_least: 2}}}]"
    look_up = (
        "    require: {riser_height: {at_most: {table: base/stairs.rises, by: {width: width}, column: rise}},\n"
        "      going: {at_least: {attribute: riser_height, times: 1.5}}, width: {between: [3 ft, 4 ft]}}"
    )
    base = topic("stairs", "cautions: [{trade: stairs, says: Mind the step.}]", TABLE + ASSUMED + chain)
    county(
        root,
        amendment(rule="base/stairs.e", severity="danger", except_=excuse),
        amendment(assumption="counted_height", value="6 ft"),
        amendment(rule="base/stairs.d", suspend="true", reason="Another law."),
        base=base + rule("e", look_up),
    )


def test_what_is_in_force_crosses_to_json_and_back_whole(tmp_path: Path) -> None:
    _everything(tmp_path)
    found = adopted(tmp_path, "county", "2025-01-01")
    assert len(found.rules) == 4
    assert adopted_from(json.loads(json.dumps(found.to_data()))) == found


@pytest.mark.parametrize("name", ["us", "practice", "local/harrow-vale"])
def test_a_shipped_ruleset_crosses_to_json_and_back_whole(name: str) -> None:
    from checker.ruleset.adopting import adopt

    found = adopt(name, Library())
    assert adopted_from(json.loads(json.dumps(found.to_data()))) == found


def test_an_edition_may_be_named_after_the_set(tmp_path: Path) -> None:
    """As in base:2020; without one the newest is taken, and the report is told so."""
    write_set(tmp_path, stairs=STAIRS)
    editions = adopted(tmp_path, "base").sets[0]
    older = adopted(tmp_path, "base:2020").sets[0]
    assert (editions.edition, editions.newest_taken) == ("2023", True)
    assert (older.edition, older.newest_taken) == ("2020", False)
    assert refused(tmp_path, name="base:2022").startswith("rulesets/base/ruleset.yaml:")
    assert "base has no edition “2022”" in refused(tmp_path, name="base:2022")


def test_two_amendments_of_overlapping_paths_are_one_too_many(tmp_path: Path) -> None:
    """One of the whole condition and one of a limit inside it."""
    county(
        tmp_path,
        amendment(rule="base/stairs.rise", sets=f"{{{RISE}: 8 in}}"),
        amendment(rule="base/stairs.rise", sets="{require: {riser_height: {at_most: 9 in}}}"),
    )
    assert "is amended twice" in refused(tmp_path)
