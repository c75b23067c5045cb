"""One small ruleset, compiled once, for every test of findings."""

from __future__ import annotations

import pytest

from tests.findings.small import Checker


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory) -> Checker:
    """The checker of the small ruleset."""
    return Checker(tmp_path_factory.mktemp("rulesets"))
