"""The engine against an independent judge, on thousands of random plans.

One survey makes all the cases; each test looks at one thing that must hold in every one of them.
"""

from __future__ import annotations

import multiprocessing

import pytest

from tests.engine.survey import Survey, Surveyor

RULESETS = 500
PLANS = 10
WORDS = (
    *("all", "any", "none", "some", "every", "no", "count", "to-one link"),
    *("at_least", "at_most", "over", "under", "is", "between", "attribute", "via", "table"),
)


def surveyed(seed: int) -> Survey:
    """Check the plans of one seed."""
    return Surveyor(seed).run(PLANS)


@pytest.fixture(scope="module")
def survey() -> Survey:
    """Everything that the random cases show."""
    total = Survey()
    with multiprocessing.get_context("spawn").Pool(2) as pool:
        for part in pool.imap_unordered(surveyed, range(RULESETS), chunksize=10):
            total.add(part)
    return total


def test_there_are_enough_cases(survey: Survey) -> None:
    """Every case counts once, and most changes of a plan change a verdict somewhere."""
    assert survey.cases == RULESETS * PLANS
    assert survey.done["changes that change a verdict"] > survey.cases / 4
    assert survey.done["lists of what is missing"] > survey.cases
    assert survey.done["lists of what decides"] > survey.cases
    assert survey.done["verdicts completed"] > survey.cases


@pytest.mark.parametrize("word", ["meets", "fails", "unsure"])
def test_the_verdicts_are_mixed(survey: Survey, word: str) -> None:
    """No verdict is rare."""
    assert survey.verdicts[word] >= 0.15 * survey.verdicts.total(), survey.verdicts


@pytest.mark.parametrize("word", ["na", "excused"])
def test_the_other_verdicts_are_met_too(survey: Survey, word: str) -> None:
    """Rules that do not apply and exceptions that excuse come up as well."""
    assert survey.verdicts[word] >= 0.04 * survey.verdicts.total(), survey.verdicts


@pytest.mark.parametrize("word", WORDS)
@pytest.mark.parametrize("truth", [True, False, None])
def test_every_word_is_met_often(survey: Survey, word: str, truth: bool | None) -> None:
    """Each word of a condition comes out true, false and not known."""
    assert survey.truths[word, truth] >= 500, survey.truths


@pytest.mark.parametrize("truth", [True, False])
def test_stated_is_met_often(survey: Survey, truth: bool) -> None:
    """`stated` is always known."""
    assert survey.truths["stated", truth] >= 500
    assert survey.truths["stated", None] == 0


@pytest.mark.parametrize(
    "subject",
    [
        pytest.param("verdicts", id="every verdict is the oracle's"),
        pytest.param("after a change", id="so it is after a change of values and links in the same session"),
        pytest.param("after changing back", id="and after the change is taken back"),
        pytest.param("completions", id="no completion of the unknown turns meets into fails or fails into else"),
        pytest.param("missing", id="nothing is missing that is not listed"),
        pytest.param("deciding", id="the deciding conditions suffice"),
    ],
)
def test_no_case_is_at_fault(survey: Survey, subject: str) -> None:
    """What the engine says holds in every case."""
    assert survey.faults.get(subject, []) == []
