"""Places, problems and the error that carries them."""

from __future__ import annotations

import pickle

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.problems import Place, Problem, Unreadable, cut, nearest, visible


def test_a_place_prints_file_line_and_column() -> None:
    assert str(Place("plan.yaml", 3, 14)) == "plan.yaml:3:14"


def test_places_sort_by_file_line_and_column() -> None:
    places = [Place("b", 1, 1), Place("a", 10, 1), Place("a", 9, 2), Place("a", 9, 1)]
    assert sorted(places) == [Place("a", 9, 1), Place("a", 9, 2), Place("a", 10, 1), Place("b", 1, 1)]


def test_a_problem_prints_what_would_be_right_on_a_second_line() -> None:
    place = Place("plan.yaml", 3, 14)
    assert str(Problem(place, "7.75 has no unit")) == "plan.yaml:3:14: 7.75 has no unit"
    assert (
        str(Problem(place, "7.75 has no unit", "write: 7-3/4 in"))
        == "plan.yaml:3:14: 7.75 has no unit\n  write: 7-3/4 in"
    )


def test_the_error_sorts_its_problems_and_prints_them_all() -> None:
    later, earlier = Problem(Place("a", 2, 1), "late"), Problem(Place("a", 1, 1), "early", "mend it")
    also = Problem(Place("a", 2, 1), "a first letter")
    error = Unreadable([later, earlier, also])
    assert error.problems == (earlier, also, later)
    assert str(error) == "a:1:1: early\n  mend it\na:2:1: a first letter\na:2:1: late"


def test_the_error_crosses_to_another_process_whole() -> None:
    error = Unreadable([Problem(Place("a", 2, 1), "late", "mend it")])
    assert pickle.loads(pickle.dumps(error)).problems == error.problems


def test_terminal_controls_are_made_visible_everywhere() -> None:
    problem = Problem(Place("a\x1b[2J", 1, 1), "x\x07\n\u202e", "y\x9b")
    assert str(problem) == "a\\x1b[2J:1:1: x\\x07\\n\\u202e\n  y\\x9b"


@settings(deadline=None)
@given(st.text(alphabet=st.characters()))
def test_visible_text_prints_and_stays_the_same(text: str) -> None:
    shown = visible(text)
    assert shown.isprintable()
    assert visible(shown) == shown


@settings(deadline=None)
@given(st.text(alphabet=st.characters()))
def test_cut_text_is_short(text: str) -> None:
    assert len(cut(text)) <= 61
    assert cut(text).isprintable()


def test_long_text_is_cut_at_sixty_characters() -> None:
    assert cut("x" * 60) == "x" * 60
    assert cut("x" * 61) == "x" * 60 + "…"


@pytest.mark.parametrize(
    ("word", "choices", "expected"),
    [
        ("riser_hieght", ["riser_height", "tread_depth"], "nearest: riser_height"),
        ("Riser_Height", ["riser_height", "tread_depth"], "nearest: riser_height"),
        ("wal", ["wall", "walk", "door"], "nearest: wall, walk"),
        ("cubic foot", ["cubic feet", "in"], 'nearest: "cubic feet"'),
        ("riser-heigt", ["stairs.riser-height"], "nearest: stairs.riser-height"),
        ("zzz", ["riser_height"], ""),
        ("", ["riser_height"], ""),
        ("x" * 1_000_000, ["riser_height"], ""),
    ],
)
def test_the_nearest_names_are_named(word: str, choices: list[str], expected: str) -> None:
    assert nearest(word, choices) == expected
