"""No Python file and no folder of them grows beyond what one can hold in mind."""

from __future__ import annotations

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MOST_LINES = 600
MOST_FILES = 12
FILES = sorted(file for folder in ("checker", "tests") for file in (ROOT / folder).glob("**/*.py"))


def test_the_code_is_found() -> None:
    assert len(FILES) > 80
    assert Path(__file__) in FILES


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.relative_to(ROOT).as_posix())
def test_a_file_stays_short(file: Path) -> None:
    assert file.read_text(encoding="utf-8").count("\n") <= MOST_LINES


@pytest.mark.parametrize(
    "folder", sorted({file.parent for file in FILES}), ids=lambda folder: folder.relative_to(ROOT).as_posix()
)
def test_a_folder_stays_small(folder: Path) -> None:
    modules = [file.name for file in FILES if file.parent == folder and file.name != "__init__.py"]
    assert len(modules) <= MOST_FILES
