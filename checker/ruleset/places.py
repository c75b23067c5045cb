"""Where rulesets are: by name in folders of rulesets, or by the path to one."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from checker.mistakes import problems_of
from checker.problems import Place, Problem, Unreadable, nearest
from checker.ruleset.head import RulesetFile
from checker.source import read

HEAD = "ruleset.yaml"
Roots = tuple[Path, ...]


def shipped() -> Path:
    """The folder of the rulesets that come with dryfit."""
    inside = Path(__file__).parent.parent / "_rulesets"
    return inside if inside.is_dir() else Path(__file__).parent.parent.parent / "rulesets"


def available(root: Path | None = None) -> list[str]:
    """Names of the rulesets in a folder of rulesets."""
    root = root or shipped()
    return sorted(path.parent.relative_to(root).as_posix() for path in root.glob(f"**/{HEAD}"))


def name_and_edition(name: str) -> tuple[str, str]:
    """A ruleset's name and the edition that may follow it after a colon, as in us:2018; "" if none does."""
    base, colon, edition = name.rpartition(":")
    return (base, edition) if colon and edition.isalnum() else (name, "")


def locate(name: str, roots: Roots, asked_at: Place | None = None) -> Path:
    """The folder of a ruleset, by its name in one of the roots, or by a path to it. Raises Unreadable."""
    for root in roots:
        if (root / name / HEAD).is_file() and ".." not in Path(name).parts:
            return root / name
    if (Path(name) / HEAD).is_file():
        return Path(name)
    names = sorted({each for root in roots for each in available(root)})
    right = nearest(name, names) or f"there are: {', '.join(names)}; or give a folder with a {HEAD}"
    raise Unreadable([Problem(asked_at or Place(name, 1, 1), f"there is no ruleset “{name}”", right)])


def shown_folder(path: Path, roots: Roots) -> str:
    """A ruleset's folder as messages name it."""
    for root in roots:
        if path.is_relative_to(root):
            return (Path("rulesets") / path.relative_to(root)).as_posix()
    return path.as_posix()


def roots_with(path: Path, name: str, roots: Roots) -> Roots:
    """The roots, with the one that a named set stands in: its neighbours can be adopted by name too."""
    root = path
    for _ in Path(name).parts:
        root = root.parent
    stands_there = root not in roots and path.relative_to(root).as_posix() == name
    return (root, *roots) if stands_there else roots


def files_of(path: Path) -> list[Path]:
    """Every YAML file of a ruleset's folder, without those of sets in folders below it."""
    return sorted(path.glob("*.yaml"))


def every_file(name: str, roots: Roots, asked_at: Place | None = None) -> list[Path]:
    """Every file that a ruleset and the sets it adopts consist of, read no further than their heads."""
    found: dict[Path, None] = {}
    stack: list[tuple[str, Place | None]] = [(name_and_edition(name)[0], asked_at)]
    while stack:
        wanted, place = stack.pop()
        path = locate(wanted, roots, place)
        if path in found:
            continue
        found[path] = None
        document = read(path / HEAD, shown_as=f"{shown_folder(path, roots)}/{HEAD}")
        try:
            head = RulesetFile.model_validate(document.data)
        except ValidationError as error:
            raise Unreadable(problems_of(error, RulesetFile, document)) from None
        roots = roots_with(path, head.ruleset, roots)
        stack += [
            (adoption.set, document.place(("adopts", index, "set"))) for index, adoption in enumerate(head.adopts)
        ]
    return [file for path in found for file in files_of(path)]
