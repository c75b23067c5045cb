"""Rulesets with random mistakes: adopted or refused, and nothing else happens."""

from __future__ import annotations

from pathlib import Path
from random import Random

from checker.problems import Unreadable
from checker.ruleset.examples import run_examples
from checker.ruleset.folders import Library
from tests.findings.small import write_small
from tests.plan.mutations import mutated
from tests.ruleset.writing import adopted

CASES = 800


def test_a_mutated_ruleset_is_adopted_or_refused(tmp_path: Path) -> None:
    random = Random(20260302)
    write_small(tmp_path)
    files = {file: file.read_text(encoding="utf-8") for file in sorted(tmp_path.glob("*/*.yaml"))}
    stood = 0
    for _ in range(CASES):
        file = random.choice(list(files))
        file.write_text(mutated(files[file], random), encoding="utf-8")
        try:
            found = adopted(tmp_path, "county", random.choice(("", "2025-01-01")))
            found.program()
            stood += 1
            if stood % 10 == 0:
                library = Library((tmp_path,))
                run_examples(library.folder("base"), library)
        except Unreadable as error:
            assert error.problems
            assert all(each.what and Path(each.place.file).suffix in (".yaml", "") for each in error.problems)
        file.write_text(files[file], encoding="utf-8")
    assert 0.1 * CASES < stood < 0.9 * CASES
