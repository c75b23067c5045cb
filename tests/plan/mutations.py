"""Plans with one or a few things changed at random, as tired hands change them."""

from __future__ import annotations

import re
import string
from collections.abc import Callable
from random import Random

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_TOKEN = re.compile(r"[^\s,:{}\[\]]+")
_KEY = re.compile(r"[a-z_]{3,}(?=:)")
_SIGNS = string.printable + "°½²′″“”–…éß漢\u0000\u2028\U0001f600"
_NUMBERS = ("0", "-1", "1e9", "1e-9", "1e400", "0.5", "7/0", "999999999999", "1,5", "NaN", "12 ft", "3:12", "true")

Lines = list[str]
Mutation = Callable[[Lines, Random], None]


def _delete(lines: Lines, random: Random) -> None:
    del lines[random.randrange(len(lines))]


def _double(lines: Lines, random: Random) -> None:
    at = random.randrange(len(lines))
    lines.insert(random.randrange(len(lines) + 1), lines[at])


def _swap(lines: Lines, random: Random) -> None:
    one, two = random.randrange(len(lines)), random.randrange(len(lines))
    lines[one], lines[two] = lines[two], lines[one]


def _indent(lines: Lines, random: Random) -> None:
    at = random.randrange(len(lines))
    lines[at] = random.choice((" ", "  ", "    ", "\t", "- ")) + lines[at] if random.random() < 0.5 else lines[at][2:]


def _replaced(pattern: re.Pattern[str], make: Callable[[str, Random], str]) -> Mutation:
    def mutate(lines: Lines, random: Random) -> None:
        places = [(at, found.span()) for at, line in enumerate(lines) for found in pattern.finditer(line)]
        if places:
            at, (start, end) = random.choice(places)
            lines[at] = lines[at][:start] + make(lines[at][start:end], random) + lines[at][end:]

    return mutate


def _gibberish(_: str, random: Random) -> str:
    return "".join(random.choice(_SIGNS) for _ in range(random.randrange(12)))


def _other_number(written: str, random: Random) -> str:
    scaled = f"{float(written) * random.choice((0.001, 0.1, 0.9, 2, 10, 1000)):.4g}"
    return random.choice((scaled, scaled, *_NUMBERS))


def _misspelt(written: str, random: Random) -> str:
    at = random.randrange(len(written))
    return written[:at] + random.choice(("", written[at] * 2, "x")) + written[at + 1 :]


def _other_token(lines: Lines, random: Random) -> None:
    """A word of the plan where another stood: a link, a choice or a unit that does not belong there."""
    words = _TOKEN.findall("\n".join(lines))
    _replaced(_TOKEN, lambda _, chance: chance.choice(words))(lines, random)


MUTATIONS: tuple[Mutation, ...] = (
    _delete,
    _double,
    _swap,
    _indent,
    _replaced(_TOKEN, _gibberish),
    _replaced(_NUMBER, _other_number),
    _replaced(_NUMBER, _other_number),
    _replaced(_KEY, _misspelt),
    _other_token,
)


def mutated(text: str, random: Random) -> str:
    """A plan with one to three changes."""
    lines = text.split("\n")
    for _ in range(random.choice((1, 1, 1, 2, 3))):
        if lines:
            random.choice(MUTATIONS)(lines, random)
    return "\n".join(lines)
