"""The demo houses give the findings expected of them, in full."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from checker.check import check
from checker.engine.image import Cache
from checker.plan.schema import plan_schema
from tests.demos import DEMOS, SCHEMA, found, plans


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """A cache of this run's own."""
    return Cache(tmp_path_factory.mktemp("cache"))


@pytest.mark.parametrize("plan", plans(), ids=lambda plan: plan.parent.name)
def test_findings_are_those_expected(plan: Path, cache: Cache) -> None:
    """Every finding and missing item, word for word; `python -m tests.demos` writes them anew."""
    assert found(plan, cache) == json.loads((plan.parent / "expected.json").read_text(encoding="utf-8"))


def test_the_schema_beside_the_plans_is_the_one_we_print() -> None:
    """The demo plans name it, so that an editor completes and checks."""
    assert json.loads(SCHEMA.read_text(encoding="utf-8")) == plan_schema()


def test_the_mended_house_has_nothing_to_correct(cache: Cache) -> None:
    """What was wrong in Quince Street is put right: no fault, nothing missing."""
    result = check(DEMOS / "quince-street-mended" / "plan.yaml", cache=cache)
    assert [each.key for each in result.findings if each.is_fault] == []
    assert [each.item for each in result.missing if each.due_now and each.severity != "advice"] == []
    assert result.exit_status == 0


def test_every_mistake_of_quince_street_is_found(cache: Cache) -> None:
    """The mistakes that its README lists, each by the rule that is meant to find it."""
    readme = (DEMOS / "quince-street" / "README.md").read_text(encoding="utf-8")
    meant = {
        word.strip("`")
        for line in readme.splitlines()
        if line.startswith("| ")
        for word in line.split("|")[3:4][0].split()
        if word.startswith("`")
    }
    keys = {
        each.rule
        for each in check(DEMOS / "quince-street" / "plan.yaml", cache=cache).findings
        if each.verdict == "does not meet"
    }
    assert len(meant) >= 15
    assert meant <= keys, meant - keys
