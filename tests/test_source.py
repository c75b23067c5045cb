"""The strict reader: what it gives, where things stand, and what it refuses in which words."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.problems import Place, Unreadable
from checker.source import MAX_BYTES, MAX_DEPTH, Document, read, read_text

PLAN = """\
house:
  built: 1926
  riser: 7-3/4 in
  pitch: 8:12
rooms:
  - id: kitchen
    area: 70.50
    section: "7.10"
    windows: []
  - {id: bath, heated: true, note: }
"""


def _document(text: str) -> Document:
    return read_text(text, "plan.yaml")


def test_a_plan_becomes_plain_data() -> None:
    assert _document(PLAN).data == {
        "house": {"built": 1926, "riser": "7-3/4 in", "pitch": "8:12"},
        "rooms": [
            {"id": "kitchen", "area": 70.5, "section": "7.10", "windows": []},
            {"id": "bath", "heated": True, "note": None},
        ],
    }


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        ((), 1, 1),
        (("house",), 2, 3),
        (("house", "riser"), 3, 10),
        (("rooms",), 6, 3),
        (("rooms", 0), 6, 5),
        (("rooms", 0, "area"), 7, 11),
        (("rooms", 0, "windows"), 9, 14),
        (("rooms", 1, "heated"), 10, 24),
        (("house", "missing"), 2, 3),
        (("house", "missing", "deeper"), 2, 3),
        (("rooms", 7, "id"), 6, 3),
        (("nowhere",), 1, 1),
    ],
)
def test_every_value_has_its_place(path: tuple[str | int, ...], line: int, column: int) -> None:
    assert _document(PLAN).place(path) == Place("plan.yaml", line, column)


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        (("house", "riser"), 3, 3),
        (("rooms",), 5, 1),
        (("rooms", 0), 6, 5),
        (("rooms", 1, "heated"), 10, 16),
        (("house", "missing"), 1, 1),
    ],
)
def test_every_key_has_its_place(path: tuple[str | int, ...], line: int, column: int) -> None:
    assert _document(PLAN).key_place(path) == Place("plan.yaml", line, column)


def test_a_document_says_what_it_has() -> None:
    document = _document(PLAN)
    assert document.has(())
    assert document.has(("rooms", 1, "note"))
    assert not document.has(("rooms", 2))
    assert not document.has(("house", "missing"))


def test_a_value_is_kept_as_it_was_written() -> None:
    document = _document(PLAN)
    assert document.text(("rooms", 0, "area")) == "70.50"
    assert document.text(("rooms", 0, "section")) == "7.10"
    assert document.text(("rooms", 1, "note")) == ""
    for path in [("rooms",), ("rooms", 9), ("house", "missing")]:
        with pytest.raises(KeyError):
            document.text(path)
        with pytest.raises(KeyError):
            document.quoted(path)


@pytest.mark.parametrize(
    ("written", "quoted"),
    [("7.10", False), ('"7.10"', True), ("'7.10'", True), ("|\n  7.10", True), ("", False)],
)
def test_quotes_are_remembered(written: str, quoted: bool) -> None:
    assert _document(f"a: {written}").quoted(("a",)) is quoted


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("true", True),
        ("false", False),
        ("True", "True"),
        ("no", "no"),
        ("on", "on"),
        ("yes", "yes"),
        ("null", None),
        ("~", None),
        ("", None),
        ("NULL", "NULL"),
        ("'null'", "null"),
        ("12", 12),
        ("-12", -12),
        ("+12", 12),
        ("0", 0),
        ("012", "012"),
        ("09", "09"),
        ("0x10", "0x10"),
        ("0o17", "0o17"),
        ("1_000", "1_000"),
        ("1,000", "1,000"),
        ("7.10", 7.1),
        (".5", 0.5),
        ("7.", 7.0),
        ("00.5", "00.5"),
        ("1e3", 1000.0),
        ("1.5E-3", 0.0015),
        ("1e400", "1e400"),
        (".nan", ".nan"),
        ("-.inf", "-.inf"),
        ("nan", "nan"),
        ("8:12", "8:12"),
        ("12:30:45", "12:30:45"),
        ("3/4", "3/4"),
        ("2021-01-01", "2021-01-01"),
        ("=", "="),
        ("-", "-"),
        ("٣", "٣"),
        ("9" * 30, int("9" * 30)),
        ("9" * 31, "9" * 31),
        ("9" * 10_000, "9" * 10_000),
        ("14'-6 1/2\"", "14'-6 1/2\""),
        ('"tab\\there"', "tab\there"),
        ("|\n  two\n  lines", "two\nlines\n"),
    ],
)
def test_only_plain_yaml_1_2_is_resolved(written: str, value: object) -> None:
    written = f"'{written}'" if written == "-" else written
    data = _document(f"a: {written}\n").data
    assert isinstance(data, dict)
    assert data["a"] == value
    assert type(data["a"]) is type(value)


def test_keys_are_always_text() -> None:
    assert _document("on: 1\n1: 2\ntrue: 3\nnull: 4\n7.10: 5\n").data == {
        "on": 1,
        "1": 2,
        "true": 3,
        "null": 4,
        "7.10": 5,
    }


def test_a_byte_order_mark_and_other_line_ends_are_accepted() -> None:
    document = _document("\ufeffa: 1\r\nb: 2\r\n")
    assert document.data == {"a": 1, "b": 2}
    assert document.place(("b",)) == Place("plan.yaml", 2, 4)


def test_columns_count_characters() -> None:
    assert _document("é: {ü: 1}").place(("é", "ü")) == Place("plan.yaml", 1, 8)


QUOTES = "put the text in quotes"
REFUSED: list[tuple[str, str]] = [
    ("", "plan.yaml:1:1: the file says nothing\n  write at least one `name: value`"),
    ("# only a remark\n", "plan.yaml:1:1: the file says nothing\n  write at least one `name: value`"),
    (
        "a: 1\nb: 2\na: 3\n",
        "plan.yaml:3:1: a is given twice: on line 1 and on line 3\n  keep one of the two, or give one another name",
    ),
    (
        "a:\n\tb: 1\n",
        "plan.yaml:2:1: a tab stands in the indentation; the line reads: b: 1\n  indent with spaces",
    ),
    (
        "a: 1\n\tb: 1\n",
        "plan.yaml:2:1: a tab stands in the indentation; the line reads: b: 1\n  indent with spaces",
    ),
    (
        "a: b: c",
        "plan.yaml:1:5: a second colon stands in this line; the line reads: a: b: c"
        "\n  put the text in quotes, or begin a new line",
    ),
    (
        "a: 1\n b: 2\n",
        "plan.yaml:2:3: a name with a colon cannot stand here; the line reads: b: 2"
        "\n  give the line before a colon, or indent this line like its neighbours",
    ),
    (
        "a:\n  b: 1\n c: 2\n",
        "plan.yaml:3:2: the indentation of this line fits no line above; the line reads: c: 2"
        "\n  indent it like the lines it belongs with",
    ),
    (
        "a: '14'-6\"'",
        "plan.yaml:1:8: more text follows a value that has ended; the line reads: a: '14'-6\"'"
        "\n  write the text without quotes, or double those inside",
    ),
    ("a: @x", f"plan.yaml:1:4: a value cannot begin with @; the line reads: a: @x\n  {QUOTES}"),
    (
        'b: 1\na: "x\nc: 2',
        'plan.yaml:2:4: a quote is opened and never closed; the line reads: a: "x'
        "\n  close it, or write the text without quotes",
    ),
    (
        "a: [1, 2\nb: 3\n",
        "plan.yaml:1:4: a list is opened with [ and not closed; the line reads: a: [1, 2"
        "\n  part its items with commas and close it with ]",
    ),
    (
        "- a\nb: 1\n",
        "plan.yaml:2:1: this line stands in a list and does not begin with -; the line reads: b: 1"
        "\n  begin it with -, or bring its indentation back",
    ),
    (
        "a: 1\n---\nb: 2\n",
        "plan.yaml:2:1: a second document begins here\n  keep one document a file: take out the line ---",
    ),
    (
        "[a, b]: c",
        "plan.yaml:1:1: a list or a mapping stands where a key is needed"
        "\n  write a name, a colon and a value; put text with brackets in quotes",
    ),
    ("a: \x1b[2J", "plan.yaml:1:4: the character U+001B stands here and cannot be seen\n  take it out"),
    ("a: 1\nb: \u2028", "plan.yaml:2:4: the character U+2028 stands here and cannot be seen\n  take it out"),
    ("a: \ud800", "plan.yaml:1:4: the character U+D800 stands here and cannot be seen\n  take it out"),
    ("a\0b", "plan.yaml:1:2: a zero byte stands here: this is no text file\n  name a YAML file"),
    (
        "a: &x 1\nb: *x\nc: !!str 5\n<<: {a: 1}\n",
        "plan.yaml:1:4: the anchor &x is not used here\n  take it out, or put the text in quotes\n"
        "plan.yaml:2:4: the alias *x is not used here\n  write the value out, or put the text in quotes\n"
        "plan.yaml:3:4: the tag tag:yaml.org,2002:str is not used here"
        "\n  take it out, or put the text in quotes\n"
        "plan.yaml:4:1: the merge key << is not used here\n  write the values out where they are needed",
    ),
    (
        "a: 1\na: 2\nb: *x\nc: [",
        "plan.yaml:2:1: a is given twice: on line 1 and on line 2"
        "\n  keep one of the two, or give one another name\n"
        "plan.yaml:3:4: the alias *x is not used here\n  write the value out, or put the text in quotes\n"
        "plan.yaml:4:5: a value is needed here; the line reads: c: ["
        "\n  write a value, or put the text in quotes",
    ),
]


@pytest.mark.parametrize(("text", "message"), REFUSED)
def test_what_is_refused_is_said_in_plain_words(text: str, message: str) -> None:
    with pytest.raises(Unreadable) as refusal:
        _document(text)
    assert str(refusal.value) == message


@pytest.mark.parametrize("text", ["!x a", "a: !x {b: 1}", "a: !!python/object:os.system x", "*a : 1", "a: &b [1]"])
def test_tags_anchors_and_aliases_are_refused_everywhere(text: str) -> None:
    with pytest.raises(Unreadable, match="is not used here"):
        _document(text)


@pytest.mark.parametrize("unit", ["[", "{", "- ", "? ", "{a: ", "[a: ", "a: [", "- - "])
@pytest.mark.parametrize("times", [10_000, 300_000])
def test_deep_nesting_is_refused_safely_and_fast(unit: str, times: int) -> None:
    started = time.perf_counter()
    with pytest.raises(Unreadable):
        _document(unit * times)
    assert time.perf_counter() - started < 1


def test_a_million_brackets_are_refused_as_too_deep() -> None:
    with pytest.raises(Unreadable, match="nested more than 40 deep"):
        _document("[" * 1_000_000)


def test_the_greatest_depth_is_still_read() -> None:
    assert _document("[" * MAX_DEPTH + "]" * MAX_DEPTH).data
    with pytest.raises(Unreadable, match=r"1:41: lists and mappings are nested more than 40 deep"):
        _document("[" * (MAX_DEPTH + 1) + "]" * (MAX_DEPTH + 1))


def _refusal(path: Path) -> str:
    with pytest.raises(Unreadable) as refusal:
        read(path, shown_as="plan.yaml")
    return str(refusal.value)


def test_a_file_is_read_and_named(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text(PLAN, encoding="utf-8")
    assert read(path).data == _document(PLAN).data
    assert read(path).place(()).file == str(path)
    assert read(path, shown_as="my plan").place(()).file == "my plan"


def test_a_missing_file_is_refused_with_the_nearest_name(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text("a: 1")
    assert _refusal(tmp_path / "plam.yaml") == "plan.yaml:1:1: there is no such file\n  nearest: plan.yaml"
    assert "there is no folder" in _refusal(tmp_path / "nowhere" / "plan.yaml")


def test_a_folder_is_refused(tmp_path: Path) -> None:
    assert _refusal(tmp_path) == "plan.yaml:1:1: this is a folder, not a file\n  name a YAML file"


def test_a_pipe_or_device_is_refused_without_waiting(tmp_path: Path) -> None:
    expected = "plan.yaml:1:1: this is a device or a pipe, not a file\n  name a YAML file"
    os.mkfifo(tmp_path / "pipe")
    assert _refusal(tmp_path / "pipe") == expected
    assert _refusal(Path(os.devnull)) == expected


def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text("a: 1")

    def denied(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", denied)
    assert _refusal(path) == ("plan.yaml:1:1: the file may not be read: permission is denied\n  allow it to be read")


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000])
def test_an_impossible_name_is_refused(tmp_path: Path, name: str) -> None:
    assert _refusal(tmp_path / name).startswith("plan.yaml:1:1: ")


def test_a_circle_of_links_is_refused(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").symlink_to(tmp_path / "plan.yaml")
    assert "the file cannot be read" in _refusal(tmp_path / "plan.yaml")


def test_a_file_that_is_too_large_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(b"#" * (MAX_BYTES + 1))
    assert _refusal(path) == (
        "plan.yaml:1:1: the file has 2,000,001 bytes, more than 2,000,000"
        "\n  split it, or take out what is no plan or rule"
    )
    with pytest.raises(Unreadable, match="more than 2,000,000"):
        _document("#" * (MAX_BYTES + 1))


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (
            b"a: 1\nb: caf\xe9\n",
            "plan.yaml:2:7: byte 12 of the file, 0xe9, is not UTF-8\n  save the file as UTF-8",
        ),
        ("a: 1".encode("utf-16"), "plan.yaml:1:1: the file is written in UTF-16\n  save it as UTF-8"),
        (
            b"\x7fELF\x00\x01",
            "plan.yaml:1:1: the character U+007F stands here and cannot be seen\n  take it out",
        ),
        (b"a: 1\0", "plan.yaml:1:5: a zero byte stands here: this is no text file\n  name a YAML file"),
        (b"\xef\xbb\xbf", "plan.yaml:1:1: the file says nothing\n  write at least one `name: value`"),
    ],
)
def test_what_is_no_text_in_utf_8_is_refused(tmp_path: Path, raw: bytes, message: str) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(raw)
    assert _refusal(path) == message


def test_a_file_name_cannot_command_the_terminal(tmp_path: Path) -> None:
    with pytest.raises(Unreadable) as refusal:
        read(tmp_path / "\x1b[2J")
    assert str(refusal.value).replace("\n", "").isprintable()


PIECES = [
    *"abc:-?[]{}#&*!|>'\"%@`,~.<= \n\t0179",
    ": ",
    "- ",
    "\n  ",
    "---",
    "...",
    "<<",
    "null",
    "é",
    "\x00",
    "\ufeff",
]


@settings(deadline=None, max_examples=1500)
@given(st.lists(st.sampled_from(PIECES), max_size=40).map("".join))
def test_any_jumble_of_yaml_signs_is_read_or_refused(text: str) -> None:
    _read_or_refused(text)


@settings(deadline=None, max_examples=500)
@given(st.text(alphabet=st.characters(), max_size=80))
def test_any_text_is_read_or_refused(text: str) -> None:
    _read_or_refused(text)


@settings(deadline=None, max_examples=300)
@given(st.integers(0, len(PLAN)), st.sampled_from(PIECES))
def test_any_slip_in_a_plan_is_read_or_refused(where: int, slip: str) -> None:
    _read_or_refused(PLAN[:where] + slip + PLAN[where:])


def _read_or_refused(text: str) -> None:
    try:
        document = _document(text)
    except Unreadable as refusal:
        assert refusal.problems
        for problem in refusal.problems:
            assert 1 <= problem.place.line <= len(text.splitlines()) + 1
            assert problem.right
            assert str(problem).replace("\n", "").isprintable()
    else:
        assert document.place(()).line >= 1


TEXTS = st.text(alphabet=st.characters(exclude_categories=("Cs", "Cc")), max_size=12)
VALUES = st.recursive(
    st.one_of(TEXTS, st.integers(-(10**20), 10**20), st.booleans(), st.none()),
    lambda inner: st.one_of(st.lists(inner, max_size=4), st.dictionaries(TEXTS, inner, max_size=4)),
    max_leaves=15,
)


@settings(deadline=None, max_examples=300)
@given(st.dictionaries(TEXTS, VALUES, min_size=1, max_size=4), st.booleans())
def test_what_another_program_wrote_reads_back(data: dict[str, object], flow: bool) -> None:
    text = yaml.safe_dump(data, default_flow_style=flow, default_style='"')
    if "!!" in text:
        text = text.replace("!!int ", "").replace("!!bool ", "").replace("!!null ", "")
        with_text = yaml.load(text, Loader=yaml.BaseLoader)
        assert _document(text).data == with_text
    else:
        assert _document(text).data == data


def test_a_long_plan_is_read_quickly() -> None:
    room = "  - id: room-{}\n    status: new\n    area: 70 ft²\n    pitch: 8:12\n    walls: [R-20]\n    n: 3\n"
    text = "rooms:\n" + "".join(room.format(number) for number in range(750))
    started = time.perf_counter()
    _document(text)
    assert time.perf_counter() - started < 0.5
