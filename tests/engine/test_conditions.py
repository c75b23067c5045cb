"""Reading conditions: what is refused, where and in which words, and what is read."""

from __future__ import annotations

import json
from dataclasses import replace
from random import Random
from typing import Any

import pytest

from checker.engine.conditions import (
    Against,
    ConditionReader,
    LookUp,
    Node,
    Path,
    TableShape,
    from_data,
    to_data,
)
from checker.engine.program import Program
from checker.glossary import Attribute, Glossary
from checker.problems import Place, Problem
from checker.units import Dimension
from tests.engine.random_rules import GLOSSARY, RuleMaker

_ROOM = GLOSSARY.kinds["room"]
_SERIES = Attribute("profile", "heights along it", "series", dimension=Dimension.LENGTH)
_AREA = Attribute("area", "its area", "quantity", dimension=Dimension.AREA)
WORDS = Glossary(
    {
        **GLOSSARY.kinds,
        "room": replace(_ROOM, attributes={**_ROOM.attributes, "profile": _SERIES, "area": _AREA}),
    }
)
TABLES = {
    "spans": TableShape(
        {"material": ("exact", None), "span": ("interval", Dimension.LENGTH)},
        {"limit": Dimension.LENGTH, "area": Dimension.AREA},
    )
}
SPAN = {"table": "spans", "by": {"material": "made_of", "span": "width"}}


def read(data: Any, *, asks: bool = False) -> tuple[Node, list[tuple[Path, str, str]]]:
    """Read a condition about a room: give it, and each problem with the path it is at."""
    paths: list[Path] = []
    problems: list[Problem] = []

    def place(path: Path) -> Place:
        paths.append(path)
        return Place("rules.yaml", len(paths), 1)

    node = ConditionReader(WORDS, TABLES, place, problems, asks).read(data, "room", ("require",))
    return node, [(paths[each.place.line - 1], each.what, each.right) for each in problems]


REFUSED: list[tuple[Any, Path, str, str]] = [
    (
        {"heigth": {"at_least": "7 ft"}},
        ("heigth",),
        "a room has no attribute or link `heigth`",
        "nearest: height",
    ),
    (
        {"zzz": {"at_least": "7 ft"}},
        ("zzz",),
        "a room has no attribute or link `zzz`",
        "see `dryfit glossary room`",
    ),
    (
        ["height"],
        (),
        "a condition is needed: a group of `attribute: {comparison: value}` lines",
        "",
    ),
    (
        {"height": {"at_least": "70 sq ft"}},
        ("height", "at_least"),
        "`height`: 70 sq ft is an area; a length is needed",
        "write: 7-3/4 in (units: in, ft, yd, mil, mm, cm, m, km)",
    ),
    ({"height": {"at_least": True}}, ("height", "at_least"), "a length is needed", "write: 7-3/4 in"),
    ({"height": "7 ft"}, ("height",), "`height` needs a comparison", "height: {at_least: …}"),
    ({"heated": {}}, ("heated",), "`heated` needs a comparison", "heated: {is: true}"),
    (
        {"height": {"at_leest": "7 ft"}},
        ("height", "at_leest"),
        "“at_leest” is no comparison for a quantity",
        "nearest: at_least",
    ),
    (
        {"heated": {"over": True}},
        ("heated", "over"),
        "“over” is no comparison for a flag",
        "for `heated`: is",
    ),
    ({"heated": {"is": "yes"}}, ("heated", "is"), "`heated` is true or false", "is: true"),
    (
        {"made_of": {"is": ["brick", "timbre"]}},
        ("made_of", "is", 1),
        "`made_of` is never “timbre”",
        "nearest: timber",
    ),
    (
        {"made_of": {"is": "zzz"}},
        ("made_of", "is"),
        "`made_of` is never “zzz”",
        "one of: brick, timber, steel",
    ),
    (
        {"made_of": {"is": []}},
        ("made_of", "is"),
        "`made_of` needs at least one choice",
        "one of: brick, timber, steel",
    ),
    (
        {"profile": {"at_least": "7 ft"}},
        ("profile",),
        "`profile` is a list of values, which rules cannot compare",
        "an `asks:` can ask whether it is there: profile: {stated: true}",
    ),
    (
        {"height": {"between": ["8 ft", "7 ft"]}},
        ("height", "between"),
        "the lower value of `between` is above the upper one",
        "swap them",
    ),
    (
        {"height": {"between": "7 ft"}},
        ("height", "between"),
        "`between` needs two values",
        "between: [34 in, 38 in]",
    ),
    (
        {"height": {"between": {"attribute": "width"}}},
        ("height", "between"),
        "`between` needs two values",
        "between: [34 in, 38 in]",
    ),
    (
        {"height": {"stated": True}},
        ("height", "stated"),
        "`stated` belongs to rules that ask for an item",
        "use `asks:` instead of `require:`",
    ),
    ({"all": []}, ("all",), "`all` needs a list of conditions", "all: [{…}, {…}]"),
    (
        {"any": [{"height": {"over": "7 ft"}}, {"hight": {"over": "7 ft"}}]},
        ("any", 1, "hight"),
        "a room has no attribute or link `hight`",
        "nearest: height",
    ),
    (
        {"windows": {"sill": {"at_most": "44 in"}}},
        ("windows",),
        "`windows` leads to several windows",
        "write some, every, no or count, as in some: {of: windows, that: {…}}",
    ),
    (
        {"party_wall": {"thicknes": {"at_least": "4 in"}}},
        ("party_wall", "thicknes"),
        "a wall has no attribute or link `thicknes`",
        "nearest: thickness",
    ),
    (
        {"some": {"that": {"sill": {"at_most": "44 in"}}}},
        ("some",),
        "`some` needs `of:` with a link",
        "some: {of: …, that: {…}}",
    ),
    (
        {"some": {"of": "windoes"}},
        ("some", "of"),
        "a room has no link `windoes`",
        "nearest: windows",
    ),
    (
        {"every": {"of": "windows", "at_least": 2}},
        ("every", "at_least"),
        "`every` has no `at_least`",
        "known here: of, where, that",
    ),
    (
        {"no": {"of": "windows", "where": {"sil": {"over": "44 in"}}}},
        ("no", "where", "sil"),
        "a window has no attribute or link `sil`",
        "nearest: sill",
    ),
    (
        {"count": {"of": "windows"}},
        ("count",),
        "`count` needs one of at_least, at_most, is, with a whole number",
        "at_least: 1",
    ),
    (
        {"count": {"of": "windows", "at_least": 1.5}},
        ("count",),
        "`count` needs one of at_least, at_most, is, with a whole number",
        "at_least: 1",
    ),
    (
        {"count": {"of": "windows", "at_least": 1, "at_most": 2}},
        ("count",),
        "`count` needs one of at_least, at_most, is, with a whole number",
        "at_least: 1",
    ),
    (
        {"height": {"at_least": {"atribute": "width"}}},
        ("height", "at_least", "atribute"),
        "“atribute” is not known here",
        "known: attribute, via, times",
    ),
    (
        {"height": {"at_least": {"attribute": "widht"}}},
        ("height", "at_least", "attribute"),
        "a room has no attribute “widht”",
        "nearest: width",
    ),
    (
        {"height": {"at_least": {"attribute": "area"}}},
        ("height", "at_least", "attribute"),
        "`height` and `area` do not measure the same thing",
        "compare attributes of one dimension",
    ),
    (
        {"height": {"at_least": {"attribute": "height", "via": "windows"}}},
        ("height", "at_least", "via"),
        "a room has no to-one link “windows”",
        "to-one links: party_wall, was",
    ),
    (
        {"height": {"at_least": {"attribute": "height", "via": ["party_wal"]}}},
        ("height", "at_least", "via"),
        "a room has no to-one link “['party_wal']”",
        "nearest: party_wall",
    ),
    (
        {"height": {"at_least": {"attribute": "width", "times": 0}}},
        ("height", "at_least", "times"),
        "`times` is a plain number above 0",
        "times: 0.5",
    ),
    (
        {"heated": {"is": {"attribute": "heated", "via": "was", "times": 2}}},
        ("heated", "is", "times"),
        "`times` cannot scale a flag",
        "take it out",
    ),
    (
        {"height": {"at_least": {**SPAN, "table": "span"}}},
        ("height", "at_least", "table"),
        "there is no table “span”",
        "nearest: spans",
    ),
    (
        {"height": {"at_least": {**SPAN, "colunm": "limit"}}},
        ("height", "at_least", "colunm"),
        "“colunm” is not known here",
        "known: table, by, column",
    ),
    (
        {"height": {"at_least": {**SPAN, "by": {"span": "width"}}}},
        ("height", "at_least"),
        "a look-up names an attribute for each key column",
        "by: {material: …, span: …}",
    ),
    (
        {"height": {"at_least": {**SPAN, "by": {"material": "made_of", "span": "widht"}}}},
        ("height", "at_least", "by", "span"),
        "a room has no attribute “widht”",
        "nearest: width",
    ),
    (
        {"height": {"at_least": {**SPAN, "by": {"material": "made_of", "span": "area"}}}},
        ("height", "at_least", "by", "span"),
        "`area` does not fit the column `span`",
        "use an attribute of the column's dimension",
    ),
    (
        {"height": {"at_least": {**SPAN, "by": {"material": "made_of", "span": "profile"}}}},
        ("height", "at_least", "by", "span"),
        "`profile` does not fit the column `span`",
        "use an attribute of the column's dimension",
    ),
    (
        {"height": {"at_least": {**SPAN, "column": ["limits"]}}},
        ("height", "at_least", "column"),
        "the table has no value column “['limits']”",
        "nearest: limit",
    ),
    (
        {"height": {"at_least": {**SPAN, "column": "area"}}},
        ("height", "at_least"),
        "the table's `area` and `height` do not measure the same thing",
        "",
    ),
]


@pytest.mark.parametrize(("data", "path", "what", "right"), REFUSED, ids=[each[2] for each in REFUSED])
def test_refusals(data: Any, path: Path, what: str, right: str) -> None:
    """A mistake is one problem, at its place, with what would do."""
    assert read(data)[1] == [(("require", *path), what, right)]


def test_every_problem_is_told_at_once() -> None:
    """Reading goes on behind a mistake."""
    _, problems = read({"heigth": {"at_least": "7 ft"}, "all": [{"made_of": {"is": "bricks"}}, {"some": {}}]})
    assert [path for path, _, _ in problems] == [
        ("require", "heigth"),
        ("require", "all", 0, "made_of", "is"),
        ("require", "all", 1, "some"),
    ]


def test_stated_is_always_true() -> None:
    """Rules that ask may say `stated: true` and nothing else."""
    assert read({"height": {"stated": True}}, asks=True) == (Node("stated", "room", "height"), [])
    _, problems = read({"height": {"stated": False}}, asks=True)
    assert problems == [(("require", "height", "stated"), "`stated` is always true", "stated: true")]


def test_what_is_read() -> None:
    """Limits are in SI, and every word that is not kept is rewritten."""
    wide = Node("at_least", "window", "width", 0.508)
    cases: dict[str, tuple[Any, Node]] = {
        "nothing": (None, Node("all", "room")),
        "one key": ({"height": {"at_most": "10 in"}}, Node("at_most", "room", "height", 0.254)),
        "several keys": (
            {"height": {"over": "1 m", "under": "2 m"}, "heated": {"is": True}},
            Node(
                "all",
                "room",
                kids=(
                    Node("over", "room", "height", 1.0),
                    Node("under", "room", "height", 2.0),
                    Node("is", "room", "heated", True),
                ),
            ),
        ),
        "to-one link": (
            {"party_wall": {"made_of": {"is": "brick"}}},
            Node("some", "room", link="party_wall", kids=(Node("is", "wall", "made_of", ("brick",)),)),
        ),
        "no": (
            {"no": {"of": "windows", "that": {"width": {"at_least": "20 in"}}}},
            Node(
                "none",
                "room",
                kids=(Node("some", "room", link="windows", kids=(Node("all", "window", kids=(wide,)),)),),
            ),
        ),
        "count": (
            {"count": {"of": "windows", "is": 2}},
            Node("count", "room", link="windows", kids=(Node("all", "window"),), count_op="is", argument=2.0),
        ),
        "another attribute": (
            {"height": {"at_least": {"attribute": "height", "via": "party_wall", "times": 0.5}}},
            Node("at_least", "room", "height", Against("height", "wall", "party_wall", 0.5)),
        ),
        "look-up": (
            {"height": {"at_least": SPAN}},
            Node(
                "at_least",
                "room",
                "height",
                LookUp("spans", (("material", "made_of"), ("span", "width")), "limit"),
            ),
        ),
    }
    for name, (data, node) in cases.items():
        assert read(data) == (node, []), name


def test_conditions_survive_the_cache() -> None:
    """As plain data, through JSON and back, every condition stays what it was."""
    seen: set[str] = set()
    for seed in range(30):
        program: Program = RuleMaker(Random(seed)).ruleset().program()
        for rule in program.rules:
            for node in program.conditions(rule):
                assert from_data(json.loads(json.dumps(to_data(node)))) == node
                seen |= {below.op for below in node.walk()}
    assert seen == {
        *("all", "any", "none", "some", "count", "stated"),
        *("at_least", "at_most", "over", "under", "is", "between"),
    }
