"""Files that are no plans: status 2, a few lines that help, no traceback, nothing written."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.cli.conftest import Run

MOST_LINES = 62


def _binary(file: Path) -> None:
    file.write_bytes(bytes(range(256)) * 8)


def _huge(file: Path) -> None:
    with file.open("wb") as out:
        out.truncate(50_000_000)


def _bomb(file: Path) -> None:
    lines = ['a: &a ["x", "x"]']
    for one, two in zip("abcdefgh", "bcdefghi", strict=True):
        lines.append(f"{two}: &{two} [{', '.join([f'*{one}'] * 9)}]")
    file.write_text("\n".join(lines), encoding="utf-8")


@pytest.mark.parametrize(
    ("make", "words"),
    [
        pytest.param(lambda file: None, "x.yaml:1:1: there is no such file\n", id="missing"),
        pytest.param(Path.mkdir, "x.yaml:1:1: this is a folder, not a file\n  name a YAML file\n", id="folder"),
        pytest.param(os.mkfifo, "x.yaml:1:1: this is a device or a pipe, not a file\n  name a YAML file\n", id="pipe"),
        pytest.param(
            _binary,
            "x.yaml:3:115: byte 129 of the file, 0x80, is not UTF-8\n  save the file as UTF-8\n",
            id="binary",
        ),
        pytest.param(
            lambda file: file.write_bytes("plan: Caf\xe9\n".encode("latin-1")),
            "x.yaml:1:10: byte 10 of the file, 0xe9, is not UTF-8\n  save the file as UTF-8\n",
            id="another encoding",
        ),
        pytest.param(
            _huge,
            "x.yaml:1:1: the file has 50,000,000 bytes, more than 2,000,000\n"
            "  split it, or take out what is no plan or rule\n",
            id="huge",
        ),
        pytest.param(lambda file: file.write_text(""), "x.yaml:1:1: the file says nothing\n", id="empty"),
        pytest.param(
            lambda file: file.write_text(f"plan: {'[' * 10_000}{']' * 10_000}\n"),
            "x.yaml:1:1006: lists and mappings are nested more than 40 deep; the line reads: ",
            id="nested deep in brackets",
        ),
        pytest.param(
            lambda file: file.write_text("".join(f"{' ' * depth}a:\n" for depth in range(1_900))),
            "x.yaml:41:41: lists and mappings are nested more than 40 deep\n",
            id="nested deep in lines",
        ),
        pytest.param(
            lambda file: file.write_text("plan: A\nrooms: []\nplan: B\n"),
            "x.yaml:3:1: plan is given twice: on line 1 and on line 3\n",
            id="key twice",
        ),
        pytest.param(
            lambda file: file.write_text("plan: A\nhouse:\n\tsprinklered: true\n"),
            "x.yaml:3:1: a tab stands in the indentation; the line reads: sprinklered: true\n  indent with spaces\n",
            id="tab",
        ),
        pytest.param(_bomb, "x.yaml:1:4: the anchor &a is not used here\n", id="anchors"),
        pytest.param(
            lambda file: file.write_text("plan: A\n"),
            "x.yaml:1:1: the plan does not say which ruleset it goes by\n",
            id="no ruleset",
        ),
        pytest.param(
            lambda file: file.write_text("plan: A\nrules: nowhere\n"),
            "x.yaml:2:8: there is no ruleset “nowhere”\n",
            id="ruleset that is not there",
        ),
    ],
)
@pytest.mark.parametrize("form", ["text", "json", "html"])
def test_a_file_that_is_no_plan_is_refused(dryfit: Run, tmp_path: Path, make: object, words: str, form: str) -> None:
    file = tmp_path / "x.yaml"
    make(file)  # type: ignore[operator]
    result = dryfit("check", "x.yaml", "--format", form, "--output", "report")
    assert result.exit_code == 2
    assert result.stdout == ""
    assert result.stderr.startswith(words)
    assert "Traceback" not in result.output
    assert len(result.stderr.splitlines()) <= MOST_LINES
    assert [path.name for path in tmp_path.iterdir()] in ([], ["x.yaml"])


def test_of_very_many_problems_the_first_are_shown(dryfit: Run, tmp_path: Path) -> None:
    (tmp_path / "x.yaml").write_text("plan: A\n" + "".join(f"wrong{number}: 1\n" for number in range(5_000)))
    lines = dryfit("check", "x.yaml").stderr.splitlines()
    assert lines[0] == "x.yaml:2:1: `wrong0` is not known here"
    assert lines[-2:] == ["… and 4970 more", "5000 problems; nothing was checked."]
    assert len(lines) <= MOST_LINES


def test_a_file_that_may_not_be_read_is_refused(dryfit: Run, tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    file.write_text("plan: A\n")
    file.chmod(0)
    if os.access(file, os.R_OK):
        pytest.skip("this user may read everything")
    result = dryfit("check", "x.yaml")
    assert result.exit_code == 2
    assert result.stderr == ("x.yaml:1:1: the file may not be read: permission is denied\n  allow it to be read\n")


@pytest.mark.parametrize("command", ["facts", "check"])
def test_every_command_that_reads_a_plan_refuses_alike(dryfit: Run, tmp_path: Path, command: str) -> None:
    (tmp_path / "x.yaml").write_text("plan: A\nrules: us\nrooms: [{id: den}]\n")
    result = dryfit(command, "x.yaml")
    assert result.exit_code == 2
    assert result.stderr == (
        "x.yaml:3:9: room “den” needs a status\n"
        "  add `status:` with one of: existing, altered, new, removed, replaced, moved, reused\n"
    )
