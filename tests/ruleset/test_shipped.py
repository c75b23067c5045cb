"""The rulesets that come with dryfit: every example agrees, every rule is cited, no file grows too long."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from checker.problems import Unreadable
from checker.ruleset.examples import run_examples
from checker.ruleset.folders import LONGEST_TOPIC_LINES, MOST_RULES, Library, RulesetFolder
from checker.ruleset.model import Assumption, Rule, Table
from checker.ruleset.places import available, shipped

LONGEST_PATH = 120
NAMES = available()


def test_rulesets_are_shipped() -> None:
    assert {"us", "practice"} <= set(NAMES)


@pytest.fixture(scope="module")
def folders() -> dict[str, RulesetFolder]:
    library = Library()
    return {name: library.folder(name) for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
def test_every_example_agrees(name: str) -> None:
    library = Library()
    try:
        problems = run_examples(library.folder(name), library).problems
    except Unreadable as error:
        problems = error.problems
    assert [str(each) for each in problems] == []


@pytest.mark.parametrize("name", NAMES)
def test_a_topic_file_stays_short(name: str, folders: dict[str, RulesetFolder]) -> None:
    for topic in folders[name].topics:
        lines = (folders[name].path / f"{topic.name}.yaml").read_text(encoding="utf-8").count("\n")
        assert lines <= LONGEST_TOPIC_LINES, topic.name
        assert len(topic.model.rules) <= MOST_RULES, topic.name


@pytest.mark.parametrize("name", NAMES)
def test_the_folder_s_name_is_the_set_s(name: str, folders: dict[str, RulesetFolder]) -> None:
    assert folders[name].name == name


def test_ids_are_unique(folders: dict[str, RulesetFolder]) -> None:
    ids = [id_ for folder in folders.values() for id_, *_ in folder.rules()]
    ids += [folder.full_id(topic, table.id) for folder in folders.values() for topic in folder.topics
            for table in topic.model.tables]  # fmt: skip
    assert len(ids) == len(set(ids))


def test_every_rule_table_and_assumption_is_cited(folders: dict[str, RulesetFolder]) -> None:
    for folder in folders.values():
        for topic in folder.topics:
            items: list[Rule | Table | Assumption] = [*topic.model.rules, *topic.model.tables, *topic.model.assumptions]
            for item in items:
                assert item.cite or item.editions, item
                assert all(edition.section for edition in (item.editions or {}).values()), item


def test_every_sentence_ends_like_one(folders: dict[str, RulesetFolder]) -> None:
    for folder in folders.values():
        for id_, rule, *_ in folder.rules():
            for sentence in (rule.says, rule.remedy, rule.caution):
                assert sentence is None or re.search(r"[.?!]$", sentence), (id_, sentence)


def test_no_path_is_too_long_for_any_system() -> None:
    root: Path = shipped().parent
    for file in shipped().glob("**/*"):
        assert len(file.relative_to(root).as_posix()) <= LONGEST_PATH
