"""Sessions of the engine: silence, order, circles, changes, limits that are met exactly, and reasons."""

from __future__ import annotations

import gc
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.engine.conditions import ConditionReader, Node
from checker.engine.image import compiled
from checker.engine.program import CircleOfConclusions, Logic, Program
from checker.engine.session import EngineFault, Session, Verdict
from checker.engine.why import Reasons, Why
from checker.facts import Fact, Facts, Item, Known, Members, Ref, Value
from checker.glossary import Attribute, Glossary, Kind
from checker.problems import Place, Problem
from checker.units import Dimension, parse
from tests.engine.random_rules import PlanMaker, RuleMaker, Ruleset
from tests.engine.survey import findings

ROOM = Ref("room", "attic")
BEFORE = Ref("room", "attic", "before")
WINDOW = Ref("window", "rear")


@contextmanager
def session(program: Program) -> Iterator[Session]:
    """A session with a program of its own."""
    with TemporaryDirectory() as folder:
        image = Path(folder) / "rules.image"
        compiled(program, image)
        with Session(program, image) as opened:
            yield opened


def rules(*each: Mapping[str, Any]) -> Program:
    """A program of rules about the invented house."""
    numbered = [{"id": f"us/made-up.rule-{index}", **rule} for index, rule in enumerate(each)]
    return Ruleset(numbered, {}).program()


def element(ref: Ref, values: Mapping[str, Value], links: Mapping[str, Members] | None = None) -> Known:
    """An altered element."""
    stated = {name: Fact(value, "stated") for name, value in values.items()}
    return Known(ref, "altered", values=stated, links=dict(links or {}))


def facts(*each: Known) -> Facts:
    """A fact set of some elements."""
    return Facts({known.ref: known for known in each})


def judgements(found: Mapping[tuple[int, Ref], Verdict]) -> dict[tuple[int, Ref], str]:
    """The words of verdicts."""
    return {key: verdict.judgement for key, verdict in found.items()}


def reasons(program: Program, known: Facts) -> dict[tuple[int, Ref], Why]:
    """The reasons of every verdict."""
    with session(program) as opened:
        return Reasons(opened, known).of(opened.judge(known).values())


def test_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    """CLIPS has the standard output to itself and must not use it, whatever comes and goes."""
    for seed in range(5):
        random = Random(seed)
        with session(RuleMaker(random).ruleset().program()) as opened:
            for _ in range(3):
                known = PlanMaker(random).plan()
                Reasons(opened, known).of(opened.judge(known).values())
        del opened
        gc.collect()
    assert capfd.readouterr() == ("", "")


def test_the_file_of_a_session_goes_with_it() -> None:
    """A session leaves no temporary file."""
    with session(rules()) as opened:
        assert opened._file.exists()
    assert not opened._file.exists()


def test_circle_of_conclusions() -> None:
    """Conclusions that hang on each other are refused, and the circle is told from where it closes."""
    sleeping = {"for": "room", "concludes": "sleeping", "when": {"risky": {"is": False}}}
    risky = {
        "for": "room",
        "concludes": "risky",
        "when": {"some": {"of": "windows", "that": {"escape": {"is": False}}}},
    }
    escape = {"for": "window", "concludes": "escape", "when": {"room": {"risky": {"is": True}}}}
    with pytest.raises(CircleOfConclusions) as caught:
        rules(sleeping, risky, escape)
    assert caught.value.circle == (("room", "risky"), ("window", "escape"), ("room", "risky"))
    assert str(caught.value) == "room.risky → window.escape → room.risky"


def test_circle_through_another_attribute() -> None:
    """A circle may lead through an attribute that is compared with."""
    risky = {"for": "room", "concludes": "risky", "when": {"heated": {"is": {"attribute": "sleeping"}}}}
    sleeping = {
        "for": "room",
        "concludes": "sleeping",
        "when": {"heated": {"is": {"attribute": "risky", "via": "was"}}},
    }
    with pytest.raises(CircleOfConclusions) as caught:
        rules(risky, sleeping)
    assert caught.value.circle == (("room", "risky"), ("room", "sleeping"), ("room", "risky"))


def test_a_run_that_does_not_end_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    """The engine stops by itself and says that it did."""
    monkeypatch.setattr("checker.engine.session._RUN_LIMIT", 1)
    program = rules({"for": "room", "require": {"height": {"at_least": "2 m"}}})
    with session(program) as opened, pytest.raises(EngineFault, match="did not come to rest after 1 firings"):
        opened.judge(facts(element(ROOM, {"height": 2.1})))


@given(seed=st.integers(0, 10_000), data=st.data())
@settings(deadline=None, max_examples=30)
def test_order_changes_nothing(seed: int, data: st.DataObject) -> None:
    """Elements, values, links and rules may come in any order."""
    random = Random(seed)
    ruleset, known = RuleMaker(random).ruleset(), PlanMaker(random).plan()
    order = data.draw(st.permutations(range(len(ruleset.rules))))
    elements = data.draw(st.permutations(list(known.elements.values())))
    backward = {
        each.ref: replace(
            each,
            values=dict(reversed(each.values.items())),
            links={name: replace(members, refs=members.refs[::-1]) for name, members in reversed(each.links.items())},
        )
        for each in elements
    }
    with session(ruleset.program()) as opened:
        wanted = findings(opened.judge(known))
    with session(replace(ruleset, rules=[ruleset.rules[index] for index in order]).program()) as opened:
        found = findings(opened.judge(Facts(backward)))
    assert {(order[rule], ref): finding for (rule, ref), finding in found.items()} == wanted


@given(seed=st.integers(0, 10_000), changes=st.integers(1, 6))
@settings(deadline=None, max_examples=30)
def test_changes_one_after_another(seed: int, changes: int) -> None:
    """A session that has judged other fact sets judges as a new one does, conclusions and reasons too."""
    random = Random(seed)
    program, plans = RuleMaker(random).ruleset().program(), PlanMaker(random)
    known = plans.plan()
    with session(program) as used:
        for _ in range(changes):
            Reasons(used, known).of(used.judge(known).values())
            known = plans.changed(known)
        verdicts = used.judge(known)
        with session(program) as fresh:
            assert verdicts == fresh.judge(known)
            assert used.conclusions() == fresh.conclusions()
            assert Reasons(used, known).of(verdicts.values()) == Reasons(fresh, known).of(verdicts.values())


WRITTEN = [
    (Dimension.LENGTH, "7-3/4 in", "196.85 mm"),
    (Dimension.LENGTH, "14'-6 1/2\"", "4.4323 m"),
    (Dimension.LENGTH, "36 in", "914.4 mm"),
    (Dimension.AREA, "5.7 sq ft", "0.529547328 m2"),
    (Dimension.PRESSURE, "30 psf", "1436.40776941 Pa"),
    (Dimension.THERMAL_RESISTANCE, "R-20", "RSI 3.522203673646"),
    (Dimension.TEMPERATURE, "68 °F", "20 °C"),
    (Dimension.AIRFLOW, "50 cfm", "23.59737216 L/s"),
    (Dimension.SLOPE, "3:12", "25 %"),
]


@pytest.mark.parametrize(("dimension", "mine", "other"), WRITTEN, ids=[each[1] for each in WRITTEN])
def test_limits_are_met_exactly_in_every_system_of_units(dimension: Dimension, mine: str, other: str) -> None:
    """A value that equals its limit meets it, whichever units they are written in; one that differs does not."""
    words = {"at_least": "meets", "at_most": "meets", "is": "meets", "over": "fails", "under": "fails"}
    size = Attribute("size", "its size", "quantity", dimension=dimension)
    glossary = Glossary({"part": Kind("part", "a part", True, {"size": size}, {})})
    problems: list[Problem] = []
    reader = ConditionReader(glossary, {}, lambda path: Place("rules.yaml", 1, 1), problems)
    limits = [(word, limit) for word in words for limit in (mine, other)]
    logics = [
        Logic(
            f"us/made-up.{word}",
            "part",
            ("after-altered",),
            Node("all", "part"),
            reader.read({"size": {word: limit}}, "part", ()),
        )
        for word, limit in limits
    ]
    exact = [parse(written, dimension) for written in (mine, other)]
    parts = [Ref("part", "mine"), Ref("part", "other"), Ref("part", "more"), Ref("part", "less")]
    sizes = [*exact, exact[0] * 1.000001, exact[0] * 0.999999]
    known = facts(*(element(ref, {"size": value}) for ref, value in zip(parts, sizes, strict=True)))
    with session(Program(glossary, tuple(logics), {})) as opened:
        found = judgements(opened.judge(known))
    assert problems == []
    for rule, (word, _) in enumerate(limits):
        assert [found[rule, ref] for ref in parts[:2]] == [words[word]] * 2
        assert (found[rule, parts[2]] == "meets") == (word in ("at_least", "over"))
        assert (found[rule, parts[3]] == "meets") == (word in ("at_most", "under"))


def test_given_conclusions() -> None:
    """An example states a conclusion that no rule of the program draws; it is read like one that was drawn."""
    glossary = rules({"for": "room", "concludes": "sleeping", "when": {"heated": {"is": True}}}).glossary
    reader = ConditionReader(glossary, {}, lambda path: Place("rules.yaml", 1, 1), [])
    require = reader.read({"sleeping": {"is": True}}, "room", ())
    rule = Logic("us/made-up.sleeping", "room", ("after-altered",), Node("all", "room"), require)
    program = Program(glossary, (rule,), {}, given=frozenset({("room", "sleeping")}))
    with session(program) as opened:
        for values, wanted in (({"sleeping": True}, "meets"), ({"sleeping": False}, "fails"), ({}, "unsure")):
            known = facts(element(ROOM, values))
            verdicts = opened.judge(known)
            assert judgements(verdicts) == {(0, ROOM): wanted}
    assert reasons(program, known)[0, ROOM].needs == {Item(ROOM, "sleeping"): None}


def test_reasons_follow_a_conclusion_on_both_sides_of_the_work() -> None:
    """A conclusion compared with itself before the work is asked about in both states."""
    program = rules(
        {"for": "room", "concludes": "sleeping", "when": {"heated": {"is": True}}},
        {"for": "room", "require": {"sleeping": {"is": {"attribute": "sleeping", "via": "was"}}}},
    )
    was = {"was": Members((BEFORE,), True)}
    known = facts(element(ROOM, {"heated": True}, was), element(BEFORE, {"heated": True}))
    why = reasons(program, known)[1, ROOM]
    heated = [(program.nodes[number].attribute, ref) for number, ref in why.decided]
    assert {("heated", ROOM), ("heated", BEFORE)} <= set(heated)
    half_known = facts(element(ROOM, {}, was), element(BEFORE, {}))
    missing = reasons(program, half_known)[1, ROOM].needs
    assert missing == {Item(ROOM, "heated"): None, Item(BEFORE, "heated"): None}


def test_what_is_asked_for_of_linked_elements_is_missing() -> None:
    """A rule that asks something of every window names the windows that lack it, and no other."""
    every = {"of": "windows", "where": {"opens": {"is": True}}, "that": {"sill": {"stated": True}}}
    front, side = Ref("window", "front"), Ref("window", "side")
    known = facts(
        element(ROOM, {}, {"windows": Members((WINDOW, front, side), True)}),
        element(WINDOW, {"opens": True}),
        element(front, {"opens": True, "sill": 0.6}),
        element(side, {"opens": False}),
    )
    why = reasons(rules({"for": "room", "asks": {"every": every}}), known)[0, ROOM]
    assert (why.needs, why.beyond_table) == ({Item(WINDOW, "sill"): None}, False)


def test_what_would_make_a_derived_value_known_is_missing() -> None:
    """For an attribute that arithmetic yields, the plan lines that it needs are named."""
    needed = (Item(ROOM, "width"), Item(WINDOW, "width"))
    room = replace(element(ROOM, {}), missing={"height": needed})
    why = reasons(rules({"for": "room", "require": {"height": {"at_least": "2 m"}}}), facts(room))[0, ROOM]
    assert why.needs == dict.fromkeys(needed)


def test_a_rule_that_fails_if_it_applies() -> None:
    """Where the requirement surely fails and only its condition is not known, that is said."""
    rule = {"for": "room", "when": {"heated": {"is": True}}, "require": {"height": {"at_least": "2 m"}}}
    why = reasons(rules(rule), facts(element(ROOM, {"height": 1.9})))[0, ROOM]
    assert (why.if_it_applies, why.needs) == (True, {Item(ROOM, "heated"): None})


def test_what_may_still_excuse_is_told_apart() -> None:
    """What an exception lacks stands beside what the rule lacks."""
    rule = {
        "for": "room",
        "require": {"height": {"at_least": "2 m"}},
        "except": [{"when": {"heated": {"is": False}}}, {"when": {"width": {"under": "1 m"}}}],
    }
    why = reasons(rules(rule), facts(element(ROOM, {"height": 1.9, "heated": True})))[0, ROOM]
    assert (why.needs, why.needs_for_excuse) == ({}, {Item(ROOM, "width"): None})


def test_outside_the_table() -> None:
    """Known keys without a row: nothing is missing, and that is said."""
    table = {
        "keys": {
            "material": {"form": "exact", "exhaustive": False},
            "span": {"form": "interval", "exhaustive": False},
        },
        "values": ["limit"],
        "rows": [{"material": "brick", "span": ["1 m", "2 m"], "limit": "3 m"}],
    }
    look_up = {"table": "spans", "by": {"material": "made_of", "span": "width"}}
    rule = {"id": "us/made-up.span", "for": "room", "require": {"height": {"at_most": look_up}}}
    program = Ruleset([rule], {"spans": table}).program()
    cases = {1.0: "meets", 1.999999: "meets", 2.0: "unsure", 0.999999: "unsure"}
    with session(program) as opened:
        for width, wanted in cases.items():
            known = facts(element(ROOM, {"height": 2.5, "made_of": "brick", "width": width}))
            verdicts = opened.judge(known)
            assert judgements(verdicts) == {(0, ROOM): wanted}, width
            why = Reasons(opened, known).of(verdicts.values())[0, ROOM]
            assert (why.needs, why.beyond_table) == ({}, wanted == "unsure")
