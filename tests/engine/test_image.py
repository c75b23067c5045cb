"""The cache of compiled rules: damage, several processes at once, folders that cannot be written, old entries."""

from __future__ import annotations

import multiprocessing
import os
import tempfile
from pathlib import Path
from random import Random
from typing import Protocol

import pytest

from checker.engine import image
from checker.engine.image import Cache, CompileFault, cache_folder, compiled, key_of
from checker.engine.program import Program
from checker.engine.session import Session
from tests.engine.random_rules import PlanMaker, RuleMaker

ADOPTED = {"title": "Made-up code, 2021 – “quoted”", "rules": [1, 2.5, None, True]}
KEY = key_of("rules", b"of a test")


def program() -> Program:
    """A small program, the same each time."""
    return RuleMaker(Random(1)).ruleset(judging=2).program()


def names(folder: Path) -> list[str]:
    """What is in a folder."""
    return sorted(path.name for path in folder.iterdir())


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    """A cache in a folder that is not there yet."""
    return Cache(tmp_path / "made" / "when needed")


def test_keys_tell_parts_apart() -> None:
    """A key hangs on every part and on where one ends and the next begins."""
    assert key_of("a", "b") == key_of(b"a", b"b")
    assert len({key_of("a", "b"), key_of("ab"), key_of("b", "a"), key_of("a", "b", "")}) == 4


def test_empty_cache(cache: Cache) -> None:
    """Nothing is in a cache that nobody put anything in."""
    assert cache.get(KEY) is None


def test_what_was_put_is_given(cache: Cache) -> None:
    """An entry comes back with its data and an image that judges."""
    made = cache.put(KEY, ADOPTED, program())
    found = cache.get(KEY)
    assert found == made
    assert found is not None
    assert found.adopted == ADOPTED
    assert len(names(cache.folder)) == 2
    with Session(program(), found.image) as session:
        assert session.judge(PlanMaker(Random(2)).plan())
    assert cache.get(key_of("other rules")) is None


@pytest.mark.parametrize("left", [0, 1, 1000])
def test_truncated_image(cache: Cache, left: int) -> None:
    """A cut image would crash the process: the entry is thrown away and can be made again."""
    made = cache.put(KEY, ADOPTED, program())
    made.image.write_bytes(made.image.read_bytes()[:left])
    assert cache.get(KEY) is None
    assert names(cache.folder) == []
    cache.put(KEY, ADOPTED, program())
    assert cache.get(KEY) is not None


@pytest.mark.parametrize("position", [0, 20, 63, 64, 80, -1])
@pytest.mark.parametrize("flip", [0x01, 0x80])
def test_flipped_bit_in_the_data(cache: Cache, position: int, flip: int) -> None:
    """A changed bit in the seal or the data shows, and the entry is thrown away."""
    cache.put(KEY, ADOPTED, program())
    data = cache.folder / f"{KEY}.json"
    raw = bytearray(data.read_bytes())
    raw[position] ^= flip
    data.write_bytes(raw)
    assert cache.get(KEY) is None
    assert names(cache.folder) == []


def test_flipped_bit_in_the_image(cache: Cache) -> None:
    """So it does in the image."""
    made = cache.put(KEY, ADOPTED, program())
    raw = bytearray(made.image.read_bytes())
    raw[len(raw) // 2] ^= 1
    made.image.write_bytes(raw)
    assert cache.get(KEY) is None
    assert names(cache.folder) == []


def test_lost_image(cache: Cache) -> None:
    """Data without its image is no entry."""
    cache.put(KEY, ADOPTED, program()).image.unlink()
    assert cache.get(KEY) is None
    assert names(cache.folder) == []


class Barrier(Protocol):
    """Where processes wait for each other."""

    def wait(self, timeout: float) -> int:
        """Wait until all are here."""


def put_often(folder: Path, barrier: Barrier) -> None:
    """Put one entry again and again, at the same time as another process; each must find it in order."""
    cache, made_of = Cache(folder), program()
    for _ in range(5):
        barrier.wait(60)
        made = cache.put(KEY, ADOPTED, made_of)
        found = cache.get(KEY)
        if found is None or not made.image.exists():
            raise SystemExit(1)


def test_two_processes_put_one_entry(tmp_path: Path) -> None:
    """Whoever comes last, the entry is in order all the time, and no half of one is left."""
    context = multiprocessing.get_context("spawn")
    barrier = context.Barrier(2)
    processes = [context.Process(target=put_often, args=(tmp_path, barrier)) for _ in range(2)]
    for process in processes:
        process.start()
    for process in processes:
        process.join()
    assert [process.exitcode for process in processes] == [0, 0]
    assert Cache(tmp_path).get(KEY) is not None
    assert {path.suffix for path in tmp_path.iterdir()} == {".json", ".image"}


def test_folder_that_cannot_be_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing can be kept, the rules are compiled all the same, beside."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "temporary"))
    (tmp_path / "temporary").mkdir()
    (tmp_path / "file").write_text("in the way")
    made = Cache(tmp_path / "file" / "cache").put(KEY, ADOPTED, program())
    assert made.image.is_relative_to(tmp_path / "temporary")
    with Session(program(), made.image) as session:
        assert session.judge(PlanMaker(Random(2)).plan())
    assert Cache(tmp_path / "file" / "cache").get(KEY) is None


def test_only_the_newest_entries_are_kept(cache: Cache, monkeypatch: pytest.MonkeyPatch) -> None:
    """An old entry goes with its image when there are too many."""
    monkeypatch.setattr(image, "_KEPT", 2)
    keys = [key_of(str(number)) for number in range(4)]
    for age, key in enumerate(keys):
        cache.put(key, ADOPTED, program())
        os.utime(cache.folder / f"{key}.json", (1000 + age, 1000 + age))
    cache.put(keys[3], ADOPTED, program())
    assert [cache.get(key) is not None for key in keys] == [False, False, True, True]
    assert {name[:64] for name in names(cache.folder)} == set(keys[2:])


def test_constructs_that_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What CLIPS refuses is a fault of the engine, and nothing is left behind."""
    monkeypatch.setattr(image, "clips_text", lambda _: "(defrule broken (a ?x) => (assert (b ?y)))\n")
    with pytest.raises(CompileFault):
        compiled(program(), tmp_path / "broken.image")
    with pytest.raises(CompileFault):
        Cache(tmp_path).put(KEY, ADOPTED, program())
    assert names(tmp_path) == []


def test_where_the_cache_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """DRYFIT_CACHE names the folder; otherwise it is the user's cache folder."""
    monkeypatch.setenv("DRYFIT_CACHE", str(tmp_path / "mine"))
    assert Cache().folder == tmp_path / "mine"
    monkeypatch.delenv("DRYFIT_CACHE")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "user"))
    assert cache_folder() == tmp_path / "user" / "dryfit"
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setattr(Path, "home", lambda: tmp_path / "home")
    assert cache_folder() == tmp_path / "home" / ".cache" / "dryfit"


def test_a_user_without_a_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who has no home folder has a cache in the temporary one."""

    def no_home() -> Path:
        raise RuntimeError("no home")

    monkeypatch.delenv("DRYFIT_CACHE", raising=False)
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(Path, "home", no_home)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    assert cache_folder().parent == tmp_path
