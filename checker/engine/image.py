"""Compiled rules on disk: a binary image and the adopted ruleset beside it, checked before they are loaded.

A damaged image crashes the process that loads it, so an entry carries the SHA-256 of its parts, is written by rename
and is thrown away when it does not check out.
"""

from __future__ import annotations

import atexit
import contextlib
import hashlib
import json
import os
import shutil
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import clips

from checker.engine.clips_text import clips_text
from checker.engine.program import Program

FORMAT = 1
_KEPT = 40


class CompileFault(RuntimeError):
    """CLIPS refused constructs that this package wrote: a fault of dryfit, not of the ruleset."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What the cache keeps of one adopted ruleset: its data, and the place of the image."""

    adopted: dict[str, Any]
    image: Path


def engine_version() -> str:
    """Everything an image depends on besides its rules."""
    from importlib.metadata import version

    return f"{FORMAT}/{version('clipspy')}/{sys.version_info[:2]}/{sys.platform}"


def key_of(*parts: bytes | str) -> str:
    """A cache key for contents, in order."""
    digest = hashlib.sha256()
    for part in (engine_version(), *parts):
        data = part.encode() if isinstance(part, str) else part
        digest.update(len(data).to_bytes(8, "big"))
        digest.update(data)
    return digest.hexdigest()


def cache_folder() -> Path:
    """Where compiled rules are kept: DRYFIT_CACHE, else the user's cache folder."""
    if chosen := os.environ.get("DRYFIT_CACHE"):
        return Path(chosen)
    base = os.environ.get("XDG_CACHE_HOME")
    with contextlib.suppress(RuntimeError):
        return (Path(base) if base else Path.home() / ".cache") / "dryfit"
    return Path(tempfile.gettempdir()) / f"dryfit-{os.getuid() if hasattr(os, 'getuid') else 'user'}"


def compiled(program: Program, image: Path) -> None:
    """Compile a program and save its image. Raises CompileFault."""
    environment = clips.Environment()
    # Without this, saving drops the slot constraints and says so on standard output.
    environment.eval("(set-dynamic-constraint-checking TRUE)")
    text = image.with_suffix(".clp")
    text.write_text(clips_text(program), encoding="ascii")
    try:
        environment.load(str(text))
        environment.save(str(image), binary=True)
    except clips.CLIPSError as error:
        raise CompileFault(str(error)) from None
    finally:
        text.unlink(missing_ok=True)


class Cache:
    """Entries of compiled rules in a folder; safe when several processes use it at once."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder or cache_folder()

    def get(self, key: str) -> Entry | None:
        """Give an entry that checks out; throw away one that does not."""
        try:
            raw = (self.folder / f"{key}.json").read_bytes()
        except OSError:
            return None
        try:
            seal, _, body = raw.partition(b"\n")
            image = self.folder / _image_name(key, seal.decode())
            digest = hashlib.sha256(body)
            digest.update(image.read_bytes())
            if seal.decode() != digest.hexdigest():
                raise ValueError("damaged")
            return Entry(json.loads(body), image)
        except (OSError, ValueError):
            _drop(self.folder, key)
            return None

    def put(self, key: str, adopted: dict[str, Any], program: Program) -> Entry:
        """Compile, keep, and give the entry; where the folder cannot be written, the entry is a temporary one."""
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            return self._put(self.folder, key, adopted, program)
        except OSError:
            folder = Path(tempfile.mkdtemp(prefix="dryfit-"))
            atexit.register(shutil.rmtree, folder, ignore_errors=True)
            return self._put(folder, key, adopted, program)

    def _put(self, folder: Path, key: str, adopted: dict[str, Any], program: Program) -> Entry:
        handle, name = tempfile.mkstemp(prefix=f"{key[:12]}-", suffix=".part", dir=folder)
        os.close(handle)
        part = Path(name)
        data_part = part.with_suffix(".jsonpart")
        try:
            compiled(program, part)
            body = json.dumps(adopted, ensure_ascii=False, separators=(",", ":")).encode()
            digest = hashlib.sha256(body)
            digest.update(part.read_bytes())
            data_part.write_bytes(digest.hexdigest().encode() + b"\n" + body)
            image = folder / _image_name(key, digest.hexdigest())
            part.replace(image)
            data_part.replace(folder / f"{key}.json")
        finally:
            part.unlink(missing_ok=True)
            data_part.unlink(missing_ok=True)
        self._prune(folder)
        return Entry(adopted, image)

    @staticmethod
    def _prune(folder: Path) -> None:
        """Keep the newest entries only."""
        with contextlib.suppress(OSError):
            entries = sorted(folder.glob("*.json"), key=lambda path: path.stat().st_mtime, reverse=True)
            for old in entries[_KEPT:]:
                _drop(folder, old.stem)


def _image_name(key: str, seal: str) -> str:
    """Two compilations of one program differ: each has its own file, so that two processes never mix theirs."""
    return f"{key}-{seal[:16]}.image"


def _drop(folder: Path, key: str) -> None:
    for path in (folder / f"{key}.json", *folder.glob(f"{key}-*.image")):
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)
