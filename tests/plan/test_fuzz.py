"""Demo plans with random mistakes: they are read or refused, checked or refused, and nothing else happens."""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from checker.check import check_read, in_force
from checker.derive.derived import facts_of
from checker.engine.image import Cache
from checker.plan.reader import ReadPlan, plan_from_text
from checker.problems import Unreadable
from tests.plan.mutations import mutated

DEMOS = [path.read_text(encoding="utf-8") for path in sorted(Path(__file__).parents[2].glob("plans_demo/*/plan.yaml"))]
PLANS = 2_000
CHECKED = 200
RULES = "us"


@pytest.fixture(scope="module")
def readable() -> list[ReadPlan]:
    """Every mutated plan that can still be read."""
    random = Random(20260302)
    read: list[ReadPlan] = []
    chosen = random.choices(DEMOS, [1 / len(demo) ** 0.5 for demo in DEMOS], k=PLANS)
    texts = [mutated(demo, random) for demo in chosen]
    for text in texts:
        try:
            plan = plan_from_text(text, "plan.yaml")
        except Unreadable as error:
            assert error.problems
            assert all(each.place.file == "plan.yaml" and each.what for each in error.problems)
            continue
        facts_of(plan, {})
        read.append(plan)
    return read


def test_a_mutated_plan_is_read_or_refused(readable: list[ReadPlan]) -> None:
    assert 0.1 * PLANS < len(readable) < 0.9 * PLANS


def test_a_mutated_plan_that_can_be_read_can_be_checked(readable: list[ReadPlan], tmp_path: Path) -> None:
    cache = Cache(tmp_path)
    one_date = [each for each in readable if each.plan.permit.date in (None, "2026-03-02", "2026-02-10")]
    assert len(one_date) >= CHECKED
    in_force(one_date[0], RULES, cache)
    failing = 0
    for plan in one_date[:CHECKED]:
        try:
            result = check_read(plan, RULES, cache=cache)
        except Unreadable as error:  # the ruleset does not know a material that the mutation named
            assert all(each.place.file == "plan.yaml" and each.right for each in error.problems)
            continue
        assert result.exit_status in (0, 1, 3)
        failing += result.exit_status == 1
    assert failing > CHECKED / 2
