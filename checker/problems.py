"""What is wrong in a file of the user's, and where: places, problems and the error that carries them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import SequenceMatcher, get_close_matches

_LONGEST = 60


def visible(text: str) -> str:
    """Give a text with everything that does not print (terminal controls, line ends) as its escape.

    text     any text of a plan or ruleset
    Returns  the text on one line, safe to print; giving it again changes nothing
    """
    if text.isprintable():
        return text
    return "".join(
        sign if sign.isprintable() else sign.encode("unicode_escape", "surrogatepass").decode("ascii") for sign in text
    )


def cut(text: str, longest: int = _LONGEST) -> str:
    """Give a text as a message quotes it: visible, and cut with `…` if it is long.

    text     any text of a plan or ruleset
    longest  how many characters are kept
    Returns  at most `longest` characters and `…`
    """
    shown = visible(text[: longest + 1])
    return shown if len(shown) <= longest else shown[:longest] + "…"


def nearest(word: str, choices: Iterable[str]) -> str:
    """Name the choices a misspelt word comes closest to.

    word     what was written
    choices  the names that would do
    Returns  `nearest: riser_height`, up to three names if they are equally close, "" if none is close;
             a name that is not one plain word stands in quotes
    """
    word = word[:_LONGEST].casefold()
    names: dict[str, str] = {}
    for choice in choices:
        names.setdefault(choice.casefold(), choice)
    matcher = SequenceMatcher(b=word)
    scores: dict[str, float] = {}
    for close in get_close_matches(word, names, n=3):
        matcher.set_seq1(close)
        scores[close] = matcher.ratio()
    if not scores:
        return ""
    least = max(scores.values()) - 0.1
    return "nearest: " + ", ".join(_named(names[close]) for close in scores if scores[close] >= least)


def _named(name: str) -> str:
    plain = name.replace("-", "_").replace(".", "_").replace("/", "_").isidentifier()
    return cut(name) if plain else f'"{cut(name)}"'


@dataclass(frozen=True, order=True, slots=True)
class Place:
    """A place in a file of the user's: line and column count from 1."""

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        """Give `file:line:column`."""
        return f"{visible(self.file)}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong at one place, and what would be right there."""

    place: Place
    what: str
    right: str = ""

    def __str__(self) -> str:
        """Give `file:line:column: what`, and `right` (if any) indented on a second line."""
        head = f"{self.place}: {visible(self.what)}"
        return f"{head}\n  {visible(self.right)}" if self.right else head


class Unreadable(Exception):
    """A file cannot be used: all its problems, sorted by place.

    problems  in any order; at least one
    """

    problems: tuple[Problem, ...]

    def __init__(self, problems: Iterable[Problem]) -> None:
        """Sort the problems by file, line, column and text."""
        self.problems = tuple(sorted(problems, key=lambda problem: (problem.place, problem.what)))
        super().__init__(self.problems)

    def __str__(self) -> str:
        """Give the problems one after another."""
        return "\n".join(str(problem) for problem in self.problems)
