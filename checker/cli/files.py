"""Writing a file whole or not at all, and telling a user what is wrong with his files."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

import click

from checker.problems import Unreadable, visible

UNREADABLE = 2
ENGINE_FAULT = 4
_MOST_SHOWN = 30


class CannotWrite(click.ClickException):
    """A report cannot be written where it should go."""

    exit_code = UNREADABLE


def write_whole(path: Path, text: str) -> None:
    """Write a file by rename, so that a reader sees the old one or the new one. Raises CannotWrite."""
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}-", dir=path.parent or Path())
        part = Path(name)
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(text)
            mode = path.stat().st_mode & 0o777 if path.exists() else 0o666 & ~_umask()
            part.chmod(mode)
            part.replace(path)
        finally:
            part.unlink(missing_ok=True)
    except OSError as error:
        raise CannotWrite(f"{visible(str(path))} cannot be written: {error.strerror or error}") from None


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


@contextlib.contextmanager
def told_plainly() -> Iterator[None]:
    """Turn what is wrong with a user's files, or with the engine, into a message and an exit status."""
    from checker.engine.image import CompileFault
    from checker.engine.session import EngineFault

    try:
        yield
    except Unreadable as error:
        wrong = len(error.problems)
        for problem in error.problems[:_MOST_SHOWN]:
            click.echo(str(problem), err=True)
        if wrong > _MOST_SHOWN:
            click.echo(f"… and {wrong - _MOST_SHOWN} more", err=True)
        if wrong > 1:
            click.echo(f"{wrong} problems; nothing was checked.", err=True)
        raise SystemExit(UNREADABLE) from None
    except (EngineFault, CompileFault) as error:
        click.echo(f"The rules engine stopped: {visible(str(error))}", err=True)
        click.echo("This is a fault of dryfit, not of your plan; please report it with the plan.", err=True)
        raise SystemExit(ENGINE_FAULT) from None
