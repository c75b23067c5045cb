"""The strict YAML reader shared by plans and rulesets: plain data, and the place of every value in its file.

YAML 1.2 in its plainest form: `true` and `false`, decimal numbers, `null`; everything else is text, so that
`8:12`, `012`, `no` and `2021-01-01` stay as written. Keys are always text. Refused: keys given twice,
anchors, aliases, merge keys, tags, several documents, nesting beyond MAX_DEPTH, files beyond MAX_BYTES.
"""

from __future__ import annotations

import math
import re
import stat
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

import yaml

from checker.problems import Place, Problem, Unreadable, cut, nearest

MAX_DEPTH = 40
MAX_BYTES = 2_000_000
MAX_DIGITS = 30

Data: TypeAlias = "dict[str, Data] | list[Data] | str | int | float | bool | None"
Step: TypeAlias = str | int

_WORDS: dict[str, bool | None] = {"true": True, "false": False, "null": None, "~": None, "": None}
_NUMBER_START = frozenset("0123456789+-.")
_INTEGER = re.compile(r"[-+]?(?:0|[1-9][0-9]*)")
_DECIMAL = re.compile(r"[-+]?(?:\.[0-9]+|(?:0|[1-9][0-9]*)(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_NOT_TEXT = re.compile("[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")

_MARKED_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


class _Node:
    """A value and where it stands; lines and columns count from 0."""

    __slots__ = ("children", "column", "key_column", "key_line", "line", "quoted", "text", "value")

    def __init__(self, value: Data, line: int, column: int, text: str | None = None, quoted: bool = False) -> None:
        self.value = value
        self.line = line
        self.column = column
        self.key_line = line
        self.key_column = column
        self.text = text
        self.quoted = quoted
        self.children: dict[Step, _Node] = {}


@dataclass(frozen=True, slots=True)
class Document:
    """A file that was read.

    data      what it says, as plain mappings, lists, texts, numbers, booleans and None
    shown_as  the name of the file in messages
    """

    data: Data
    shown_as: str
    _root: _Node

    def place(self, path: Sequence[Step]) -> Place:
        """Give the place of a value.

        path     the keys and list positions that lead to it
        Returns  its place; if there is no such value, that of the nearest one on the way to it
        """
        node = self._reached(path)[0]
        return Place(self.shown_as, node.line + 1, node.column + 1)

    def key_place(self, path: Sequence[Step]) -> Place:
        """Give the place of the key of a value.

        path     the keys and list positions that lead to the value
        Returns  the place of its key (for an item of a list, of the item); if there is no such value,
                 the place of the key of the nearest one on the way to it
        """
        node = self._reached(path)[0]
        return Place(self.shown_as, node.key_line + 1, node.key_column + 1)

    def has(self, path: Sequence[Step]) -> bool:
        """Say whether there is a value.

        path     the keys and list positions that lead to it
        Returns  True if it was written, even if as nothing (`note:`)
        """
        return self._reached(path)[1]

    def text(self, path: Sequence[Step]) -> str:
        """Give a value as it was written, without quotes: `7.10` where the data has 7.1.

        path     the keys and list positions that lead to it
        Returns  the text
        Raises   KeyError: there is no such value, or it is a mapping or a list
        """
        text = self._scalar(path).text
        return "" if text is None else text

    def quoted(self, path: Sequence[Step]) -> bool:
        """Say whether a value was written as a text on purpose: in quotes, or as a block of text.

        path     the keys and list positions that lead to it
        Returns  True for a text in quotes or a block, False for a plain value
        Raises   KeyError: there is no such value, or it is a mapping or a list
        """
        return self._scalar(path).quoted

    def _reached(self, path: Sequence[Step]) -> tuple[_Node, bool]:
        node = self._root
        for step in path:
            child = node.children.get(step)
            if child is None:
                return node, False
            node = child
        return node, True

    def _scalar(self, path: Sequence[Step]) -> _Node:
        node, found = self._reached(path)
        if not found or node.text is None:
            raise KeyError(tuple(path))
        return node


def read(path: Path, *, shown_as: str | None = None) -> Document:
    """Read a file.

    path      the file
    shown_as  its name in messages; as `path` if not given
    Returns   the document
    Raises    Unreadable: with every problem of the file
    """
    name = str(path) if shown_as is None else shown_as
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            what = "this is a folder" if stat.S_ISDIR(found.st_mode) else "this is a device or a pipe"
            raise _at_start(name, f"{what}, not a file", "name a YAML file")
        if found.st_size > MAX_BYTES:
            raise _too_large(name, found.st_size)
        with path.open("rb") as file:
            raw = file.read(MAX_BYTES + 1)
    except FileNotFoundError:
        raise _at_start(name, "there is no such file", _file_near(path)) from None
    except PermissionError:
        raise _at_start(name, "the file may not be read: permission is denied", "allow it to be read") from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise _at_start(name, f"the file cannot be read: {reason}") from None
    if len(raw) > MAX_BYTES:
        raise _too_large(name, len(raw))
    return read_text(_decoded(raw, name), name)


def read_text(text: str, shown_as: str) -> Document:
    """Read a text.

    text      YAML
    shown_as  the name of its file in messages
    Returns   the document
    Raises    Unreadable: with every problem of the text
    """
    if len(text) > MAX_BYTES:
        raise _too_large(shown_as, len(text))
    text = text.removeprefix("\ufeff")
    odd = _NOT_TEXT.search(text)
    if odd:
        raise Unreadable([_odd_character(text, odd.start(), shown_as)])
    return _Reader(text, shown_as).document()


class _Reader:
    """Builds one document from the parser's events, with a stack of open collections instead of recursion."""

    def __init__(self, text: str, shown_as: str) -> None:
        self.source = text
        self.shown_as = shown_as
        self.problems: list[Problem] = []
        self.root: _Node | None = None
        self.open: list[_Node] = []
        self.keys: list[tuple[str, int, int] | None] = []

    def document(self) -> Document:
        loader = yaml.CSafeLoader(self.source)
        try:
            self._events(loader)
        except yaml.MarkedYAMLError as error:
            self.problems.append(self._syntax(error))
        finally:
            loader.dispose()
        if self.problems:
            raise Unreadable(self.problems)
        if self.root is None or (self.root.value is None and not self.root.quoted):
            raise _at_start(self.shown_as, "the file says nothing", "write at least one `name: value`")
        return Document(self.root.value, self.shown_as, self.root)

    def _events(self, loader: yaml.CSafeLoader) -> None:
        documents = 0
        while (event := loader.get_event()) is not None:
            if isinstance(event, yaml.ScalarEvent):
                self._scalar(event)
            elif isinstance(event, yaml.CollectionStartEvent):
                if not self._start(event, {} if isinstance(event, yaml.MappingStartEvent) else []):
                    return
            elif isinstance(event, yaml.CollectionEndEvent):
                self.open.pop()
                self.keys.pop()
            elif isinstance(event, yaml.AliasEvent):
                self._alias(event)
            elif isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    right = "keep one document a file: take out the line ---"
                    self._problem(event, "a second document begins here", right)
                    return

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        if event.anchor is not None or event.tag is not None:
            self._marked(event)
        line, column = _spot(event)
        quoted = event.style not in _PLAIN
        if self._awaits_key():
            if event.value == "<<" and not quoted:
                right = "write the values out where they are needed"
                self._problem(event, "the merge key << is not used here", right)
            self._key(event.value, line, column)
        else:
            value = event.value if quoted else _resolved(event.value)
            self._add(_Node(value, line, column, event.value, quoted))

    def _start(self, event: yaml.CollectionStartEvent, value: dict[str, Data] | list[Data]) -> bool:
        """Open a collection; False if the reading has to end here."""
        if event.anchor is not None or event.tag is not None:
            self._marked(event)
        if len(self.open) == MAX_DEPTH:
            self._problem(event, *_TOO_DEEP)
            return False
        if self._awaits_key():
            what = "a list or a mapping stands where a key is needed"
            self._problem(event, what, "write a name, a colon and a value; put text with brackets in quotes")
            return False
        node = _Node(value, *_spot(event))
        self._add(node)
        self.open.append(node)
        self.keys.append(None)
        return True

    def _alias(self, event: yaml.AliasEvent) -> None:
        name = f"*{event.anchor}"
        right = "write the value out, or put the text in quotes"
        self._problem(event, f"the alias {cut(name)} is not used here", right)
        if self._awaits_key():
            self._key(name, *_spot(event))
        else:
            self._add(_Node(None, *_spot(event), name))

    def _awaits_key(self) -> bool:
        return bool(self.open) and self.keys[-1] is None and type(self.open[-1].value) is dict

    def _key(self, name: str, line: int, column: int) -> None:
        earlier = self.open[-1].children.get(name)
        if earlier is not None:
            what = f"{cut(name)} is given twice: on line {earlier.key_line + 1} and on line {line + 1}"
            place = Place(self.shown_as, line + 1, column + 1)
            self.problems.append(Problem(place, what, "keep one of the two, or give one another name"))
        self.keys[-1] = (name, line, column)

    def _add(self, node: _Node) -> None:
        if not self.open:
            self.root = node
            return
        parent = self.open[-1]
        holder = parent.value
        key = self.keys[-1]
        if key is not None and isinstance(holder, dict):
            name, node.key_line, node.key_column = key
            self.keys[-1] = None
            holder[name] = node.value
            parent.children[name] = node
        elif isinstance(holder, list):
            parent.children[len(holder)] = node
            holder.append(node.value)

    def _marked(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> None:
        right = "take it out, or put the text in quotes"
        if event.anchor is not None:
            self._problem(event, f"the anchor &{cut(event.anchor)} is not used here", right)
        if event.tag is not None:
            self._problem(event, f"the tag {cut(event.tag)} is not used here", right)

    def _problem(self, event: yaml.Event, what: str, right: str) -> None:
        line, column = _spot(event)
        self.problems.append(Problem(Place(self.shown_as, line + 1, column + 1), what, right))

    def _syntax(self, error: yaml.MarkedYAMLError) -> Problem:
        """Turn the parser's message into a plain sentence with the line it is about."""
        lines = _LINE_END.split(self.source)
        fault = error.problem or ""
        unclosed = next((words for start, words in _UNCLOSED.items() if fault.startswith(start)), None)
        mark = error.context_mark if unclosed and error.context_mark else error.problem_mark
        line, column = (mark.line, mark.column) if mark else (0, 0)
        if line >= len(lines):  # the parser ran off the end
            line, column = len(lines) - 1, len(lines[-1])
        written = lines[line]
        what, right = unclosed or _sentence(fault, written, column)
        if written.strip():
            what += f"; the line reads: {cut(written.strip())}"
        return Problem(Place(self.shown_as, line + 1, column + 1), what, right)


def _spot(event: yaml.Event) -> tuple[int, int]:
    mark = event.start_mark
    return (mark.line, mark.column) if mark else (0, 0)


def _resolved(text: str) -> Data:
    """Give the value of a plain scalar."""
    if text in _WORDS:
        return _WORDS[text]
    if text[0] in _NUMBER_START:
        if _INTEGER.fullmatch(text):
            return int(text) if len(text) <= MAX_DIGITS else text
        if _DECIMAL.fullmatch(text) and math.isfinite(number := float(text)):
            return number
    return text


def _sentence(fault: str, written: str, column: int) -> tuple[str, str]:
    """Say in plain words what the parser found, and what would be right."""
    sign, before = written[column : column + 1], written[:column]
    if sign == "\t" and "any token" in fault:
        return _TAB
    if "any token" in fault:
        return f"a value cannot begin with {sign}", "put the text in quotes"
    if fault.startswith("mapping values are not allowed"):
        if ": " in before:
            return "a second colon stands in this line", "put the text in quotes, or begin a new line"
        right = "give the line before a colon, or indent this line like its neighbours"
        return "a name with a colon cannot stand here", right
    if fault.startswith("did not find expected key") and before.strip():
        return (
            "more text follows a value that has ended",
            "write the text without quotes, or double those inside",
        )
    return next(
        (words for start, words in _FAULTS.items() if fault.startswith(start)),
        (f"this is not YAML: {cut(fault)}", "compare with the lines around it"),
    )


_PLAIN = (None, "")
_LINE_END = re.compile("\r\n|\r|\n")
_TOO_DEEP = (
    f"lists and mappings are nested more than {MAX_DEPTH} deep",
    "close the brackets, or bring the indentation back",
)
_TAB = ("a tab stands in the indentation", "indent with spaces")
_INDENTED_ALIKE = "indent it like the lines it belongs with"
_BEGINS_WITH = ("a value cannot begin with & or * alone", "put the text in quotes")

# What the parser says when something is begun and not ended: the place is where it begins.
_UNCLOSED: dict[str, tuple[str, str]] = {
    "found unexpected end of stream": (
        "a quote is opened and never closed",
        "close it, or write the text without quotes",
    ),
    "found unexpected document indicator": ("a quote is opened and not closed before ---", "close it"),
    "did not find expected ',' or ']'": (
        "a list is opened with [ and not closed",
        "part its items with commas and close it with ]",
    ),
    "did not find expected ',' or '}'": (
        "a mapping is opened with { and not closed",
        "part its items with commas and close it with }",
    ),
}
_FAULTS: dict[str, tuple[str, str]] = {
    "exceeded maximum nesting depth": _TOO_DEEP,
    "found a tab character": _TAB,
    "did not find expected key": ("the indentation of this line fits no line above", _INDENTED_ALIKE),
    "did not find expected '-'": (
        "this line stands in a list and does not begin with -",
        "begin it with -, or bring its indentation back",
    ),
    "block sequence entries are not allowed": (
        "a list cannot begin behind a name",
        "begin it on a new line, or write it as [a, b]",
    ),
    "mapping keys are not allowed": ("a value cannot begin with ?", "put the text in quotes"),
    "did not find expected node content": (
        "a value is needed here",
        "write a value, or put the text in quotes",
    ),
    "did not find expected alphabetic": _BEGINS_WITH,
    "could not find expected ':'": (
        "a name stands here without its colon",
        "write a name, a colon and a value",
    ),
    "found unknown escape character": (
        "a backslash in double quotes begins no known escape",
        "write the text in single quotes",
    ),
    "did not find expected hexdecimal number": (
        "a backslash in double quotes begins no known escape",
        "write the text in single quotes",
    ),
    "found invalid Unicode character": (
        "a backslash in double quotes names no character",
        "write the character itself",
    ),
    "found undefined tag handle": ("a value cannot begin with !", "put the text in quotes"),
    "did not find the expected": ("a value cannot begin with !", "put the text in quotes"),
    "did not find expected comment or line break": (
        "text follows | or > in the same line",
        "begin the text on the next line",
    ),
    "did not find expected <document start>": (
        "more follows the end of the document",
        "take out the line ...",
    ),
}


def _at_start(name: str, what: str, right: str = "") -> Unreadable:
    return Unreadable([Problem(Place(name, 1, 1), what, right)])


def _too_large(name: str, size: int) -> Unreadable:
    what = f"the file has {size:,} bytes, more than {MAX_BYTES:,}"
    return _at_start(name, what, "split it, or take out what is no plan or rule")


def _file_near(path: Path) -> str:
    """Name the files of the folder whose names come close, or say that there is no such folder."""
    try:
        if not path.parent.is_dir():
            return f"there is no folder {cut(str(path.parent))} either"
        return nearest(path.name, sorted(item.name for item in path.parent.iterdir()))
    except OSError:
        return ""


def _decoded(raw: bytes, name: str) -> str:
    """Turn the bytes of a file into text."""
    if raw.startswith(_MARKED_UTF_16):
        raise _at_start(name, "the file is written in UTF-16", "save it as UTF-8")
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = _line_and_column(raw[: error.start].decode("utf-8"))
        what = f"byte {error.start + 1:,} of the file, 0x{raw[error.start]:02x}, is not UTF-8"
        raise Unreadable([Problem(Place(name, line, column), what, "save the file as UTF-8")]) from None


def _odd_character(text: str, start: int, name: str) -> Problem:
    sign = text[start]
    if sign == "\0":
        what, right = "a zero byte stands here: this is no text file", "name a YAML file"
    else:
        what, right = f"the character U+{ord(sign):04X} stands here and cannot be seen", "take it out"
    return Problem(Place(name, *_line_and_column(text[:start])), what, right)


def _line_and_column(before: str) -> tuple[int, int]:
    lines = _LINE_END.split(before)
    return len(lines), len(lines[-1]) + 1
