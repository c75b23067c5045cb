"""Running the command line with a cache and a ruleset of its own."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from checker.cli.main import _dryfit
from tests.findings.small import write_small

Run = Callable[..., Result]


@pytest.fixture(scope="session")
def county(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a small ruleset."""
    return write_small(tmp_path_factory.mktemp("rulesets"))


@pytest.fixture(scope="session")
def cache_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the command keeps compiled rules."""
    return tmp_path_factory.mktemp("cache")


@pytest.fixture
def dryfit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, cache_folder: Path) -> Run:
    """Run `dryfit` in an empty folder."""
    monkeypatch.chdir(tmp_path)

    def run(*args: str | Path) -> Result:
        environment = {"DRYFIT_CACHE": str(cache_folder), "COLUMNS": "80"}
        result = CliRunner().invoke(_dryfit, [str(arg) for arg in args], prog_name="dryfit", env=environment)
        assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
        return result

    return run
