"""Mistakes in what a plan says of the frame: impossible sizes, links to nothing, circles, what excludes each other."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.check import check_read
from checker.engine.image import Cache
from checker.facts import Item, Ref
from checker.findings.finding import Finding, Result
from checker.plan.reader import plan_from_text
from checker.problems import Unreadable

MEMBER = "framing: {members: [{id: j, status: new, "
LINES = "framing: {bearing_lines: ["


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """Compiled rules of this run, shared with other tests of the frame."""
    return Cache(Path(tmp_path_factory.getbasetemp()) / "frame-rules")


def text_of(lines: str) -> str:
    """A plan of these lines, which stand on the second."""
    return f"plan: A house\n{lines}\n"


def said(lines: str) -> str:
    """What the reader says of a plan that it refuses."""
    with pytest.raises(Unreadable) as caught:
        plan_from_text(text_of(lines), "plan.yaml")
    return str(caught.value)


def place(lines: str, at: str) -> str:
    """Where something stands."""
    return f"plan.yaml:2:{lines.index(at) + 1}: "


@pytest.mark.parametrize(
    ("lines", "at", "what", "right"),
    [
        pytest.param(
            "width: 0 in, depth: 8 in", "0 in", "`width`: “0 in” is too small for a length here",
            "write: at least 1/2 in", id="no width",
        ),
        pytest.param(
            "width: 20 ft, depth: 8 in", "20 ft", "`width`: “20 ft” is too large for a length here",
            "write: at most 23-1/2 in", id="a width in feet",
        ),
        pytest.param("depth: 0 in", "0 in", "`depth`: “0 in” is too small", "write: at least 1 in", id="no depth"),
        pytest.param("depth: 8 ft", "8 ft", "`depth`: “8 ft” is too large", "write: at most 59 in",
                     id="a depth in feet"),
        pytest.param("span: 0 ft", "0 ft", "`span`: “0 ft” is too small", "write: more than 0 in", id="no span"),
        pytest.param("span: 80.1 ft", "80.1 ft", "`span`: “80.1 ft” is too large", "write: at most 80'-0\"",
                     id="a span over 80 ft"),
        pytest.param("spacing: 0 in", "0 in", "`spacing`: “0 in” is too small", "write: more than 0 in",
                     id="no spacing"),
        pytest.param("plies: 0", "0", "`plies`: “0” is too small", "write: at least 1", id="no ply"),
        pytest.param("plies: 1.5", "1.5", "`plies`: 1.5 is not whole", "write:", id="a ply and a half"),
        pytest.param("span: 12 lb", "12 lb", "`span`: 12 lb is a mass or a force; a length is needed", "7-3/4 in",
                     id="wrong dimension"),
        pytest.param("dead_load: 12 plf", "12 plf", "`dead_load`: 12 plf is a line load; a pressure is needed",
                     "write:", id="a line load on an area"),
        pytest.param("moment_capacity: 8925 lb", "8925 lb", "`moment_capacity`: 8925 lb is a mass or a force", "write:",
                     id="a force for a moment"),
        pytest.param("role: joist", "joist", "`role` is “joist”", "nearest: post, \"deck joist\", \"floor joist\"",
                     id="a role"),
        pytest.param("carries: people", "people", "`carries` is “people”", "one of: rooms, sleeping rooms",
                     id="a use"),
        pytest.param("cuts: [{id: c, depth: 0 in}]", "0 in", "`depth`: “0 in” is too small", "more than 0 in",
                     id="a cut of nothing"),
        pytest.param("spann: 3 ft", "spann", "`spann` is not known here", "nearest: span", id="misspelt"),
    ],
)  # fmt: skip
def test_a_value_that_cannot_be(lines: str, at: str, what: str, right: str) -> None:
    plan = f"{MEMBER}{lines}}}]}}"
    found = said(plan)
    assert f"plan.yaml:2:{len(MEMBER) + lines.index(at) + 1}: " in found
    assert what in found
    assert right in found


@pytest.mark.parametrize("lines", ["width: 1/2 in, depth: 1 in", "width: 23-1/2 in, depth: 59 in", "span: 80 ft"])
def test_the_least_and_the_most_may_be(lines: str) -> None:
    assert plan_from_text(text_of(f"{MEMBER}{lines}}}]}}")).elements


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("size: 2x8", "depth: 7-3/4 in"),
        ("size: 2x8", "width: 2 in"),
    ],
)
@pytest.mark.parametrize("status", ["new", "was"])
def test_a_nominal_size_does_not_go_with_a_measured_side(one: str, other: str, status: str) -> None:
    lines = f"{MEMBER}{one}, {other}}}]}}"
    if status == "was":
        lines = lines.replace("new, ", "altered, was: {").replace("}]}", "}}]}")
    name = other.partition(":")[0]
    found = said(lines)
    assert f"{place(lines, other)}member “j” says both `size` and `{name}`\n  keep one" in found


@pytest.mark.parametrize(
    ("lines", "at", "what", "right"),
    [
        (f"{MEMBER}bears_on: [nowhere]}}]}}", "[nowhere", "no bearing-line has the id “nowhere”", "no bearing-line"),
        (f"{MEMBER}carries_line: w}}], bearing_lines: [{{id: w1, status: new}}]}}", " w}",
         "no bearing-line has the id “w”", "nearest: w1"),
        (f"{MEMBER}held_by: [k]}}]}}", "[k]", "no member has the id “k”", "the plan has: j"),
        (f"{MEMBER}roof: north}}]}}", " north", "no roof-plane has the id “north”", "the plan has no roof-plane"),
        (f"{MEMBER}assembly: a}}]}}", " a}", "no assembly has the id “a”", "the plan has no assembly"),
        (f"{LINES}{{id: a, status: new, stands_on: b}}]}}", " b}", "no bearing-line has the id “b”", "the plan has: a"),
        (f"{LINES}{{id: a, status: new, stands_on_footing: f}}], footings: [{{id: g, status: new}}]}}", " f}",
         "no footing has the id “f”", "the plan has: g"),
        ("framing: {heavy_things: [{id: t, status: new, joists: j}]}", " j}", "no member has the id “j”", "no member"),
        ("framing: {footings: [{id: f, status: new, posts: [p, p]}], members: [{id: p, status: new}]}", "[p, p",
         "“p” stands twice in this list", "name it once"),
        ("framing: {roofs: [{id: r, status: new, opposite: s}]}", " s}", "no roof-plane has the id “s”", "has: r"),
    ],
)  # fmt: skip
def test_links_to_nothing(lines: str, at: str, what: str, right: str) -> None:
    found = said(lines)
    assert f"plan.yaml:2:{lines.index(at) + 2}: {what}" in found
    assert right in found


@pytest.mark.parametrize(
    ("links", "circle"),
    [
        ("a<a", "a → a"),
        ("a<b b<a", "a → b → a"),
        ("c<a b<c a<b", "a → b → c → a"),
        ("a<b b<c c<b", "b → c → b"),
    ],
)
def test_lines_that_stand_on_each_other(links: str, circle: str) -> None:
    parts = [link.split("<") for link in links.split()]
    rows = ", ".join(f"{{id: {id_}, status: new, stands_on: {on}}}" for id_, on in parts)
    found = said(f"{LINES}{rows}]}}")
    assert f"`stands_on` runs in a circle: {circle}\n  every chain of `stands_on` must end" in found
    assert found.count("circle") == 1


def test_lines_that_stand_on_one_are_no_circle() -> None:
    rows = "{id: a, status: new, stands_on: c}, {id: b, status: new, stands_on: c}, {id: c, status: new}"
    assert plan_from_text(text_of(f"{LINES}{rows}]}}")).elements


HELD = ("a<b b<a", "a<a", "a<b b<c c<a")


def posts(links: str) -> str:
    """A plan of posts that hold each other."""
    rows = ", ".join(
        f"{{id: {id_}, status: new, role: post, size: 4x4, span: 8 ft, held_by: [{by}]}}"
        for id_, by in (link.split("<") for link in links.split())
    )
    return f"framing: {{members: [{rows}]}}"


@pytest.mark.parametrize("links", HELD)
def test_members_that_hold_each_other(links: str) -> None:
    assert "`held_by` runs in a circle" in said(posts(links))


@pytest.mark.parametrize("links", HELD)
def test_loads_of_members_that_hold_each_other_come_to_an_end(cache: Cache, links: str) -> None:
    """Whether it is refused or not, nothing runs for ever."""
    try:
        found = checked(posts(links), cache)
    except Unreadable as refused:
        assert "circle" in str(refused)
    else:
        assert found.facts.value(Item(Ref("member", "a"), "post_load")) is None


# What can be read and cannot be worked out.


def checked(lines: str, cache: Cache) -> Result:
    """Check a plan."""
    return check_read(plan_from_text(text_of(f"{lines}\nrules: us")), cache=cache)


def senseless(result: Result) -> list[Finding]:
    """Findings that say a number makes no sense."""
    return [each for each in result.findings if each.rule.endswith("numbers-make-no-sense")]


THIN = "role: beam, size: 2x12, lumber: hem-fir no. 2, span: 60 ft, tributary_width: 4 ft, carries: rooms"


def test_a_beam_too_slender_to_be_checked_is_one_finding_with_its_place(cache: Cache) -> None:
    """It stops every check of the beam, and is told once."""
    lines = f"{MEMBER}{THIN}}}]}}"
    (found,) = senseless(checked(lines, cache))
    assert (found.subject.kind, found.subject.id) == ("member", "j")
    assert found.place is not None
    assert found.place.line == 2
    assert "slenderness" in found.says.lower()
    assert "50" in found.says
    held = checked(lines.replace("carries: rooms", "carries: rooms, edge_held: true"), cache)
    assert senseless(held) == []


def test_two_beams_too_slender_are_told_together(cache: Cache) -> None:
    lines = f"framing: {{members: [{{id: a, status: new, {THIN}}}, {{id: b, status: new, {THIN}}}]}}"
    (found,) = senseless(checked(lines, cache))
    assert "1 more" in found.says


def test_a_circle_cut_of_the_member_that_is_larger_than_it_is_told(cache: Cache) -> None:
    lines = f"{MEMBER}role: floor joist, size: 2x6, span: 12 ft, cuts: [{{id: c, form: hole, depth: 9 in}}]}}]}}"
    (found,) = senseless(checked(lines, cache))
    assert found.subject.kind == "cut"


def test_names_that_no_set_has_are_told_with_their_place(cache: Cache) -> None:
    lines = f"{MEMBER}size: 2x9, lumber: spruce pine fir no. 2}}]}}"
    with pytest.raises(Unreadable) as caught:
        checked(lines, cache)
    found = str(caught.value)
    assert f":2:{lines.index('2x9') + 1}: the ruleset has no lumber size “2x9”" in found
    assert f":2:{lines.index('spruce') + 1}: the ruleset has no lumber “spruce pine fir no. 2”" in found
    assert "2x8" in found
    assert "spruce-pine-fir no. 2" in found
