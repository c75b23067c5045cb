"""One self-contained HTML page: no script, no network, every text of plan and ruleset escaped."""

from __future__ import annotations

import re
from functools import lru_cache
from importlib.resources import files
from typing import Any

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup, escape

from checker import __version__
from checker.findings.finding import Result
from checker.problems import visible
from checker.report.arrange import NOT_AN_APPROVAL, Reader, count
from checker.report.html.rows import Page, page_of
from checker.report.sheets import sheets_of

_FEET = r"""'-\d{1,2}(?: \d{1,2}/\d{1,2})?"?"""
_UNITS = r"(?:(?:in|ft|mm|cm|m)[²³]?|lb|kg|psf|psi|kPa|Pa|kN|N|cfm|L/s|kW|W|A|V|h|min|s)(?!\w)|%"
_MEASURE = re.compile(
    rf"(?<![\w.])(\d{{1,4}}(?:\.\d{{1,4}}|{_FEET}|[- ]\d{{1,2}}/\d{{1,3}}|/\d{{1,3}})?(?: (?:{_UNITS}))?)"
)


def html_page(result: Result, reader: Reader, *, everything: bool = False) -> str:
    """The report of one plan as an HTML page.

    result: what a check came to; reader: whose order it takes; everything: list what meets too.
    """
    page: Page = page_of(result, reader, everything=everything)
    text = (
        _environment()
        .get_template("page.jinja")
        .render(
            page=page,
            arranged=page.arranged,
            adopted=result.adopted,
            result=result,
            sheets=sheets_of(result),
            reader=reader,
            version=__version__,
            not_an_approval=NOT_AN_APPROVAL,
            style=Markup(_text("page.css")),
        )
    )
    return text if text.endswith("\n") else text + "\n"


@lru_cache(maxsize=1)
def _environment() -> Environment:
    environment = Environment(
        loader=FunctionLoader(lambda name: _text(f"templates/{name}")),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_printable,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals["count"] = count
    environment.filters["coded"] = _coded
    environment.filters["plain"] = _plain
    return environment


def _text(name: str) -> str:
    """A file of this package, from a checkout or a wheel."""
    return files(__package__).joinpath(*name.split("/")).read_text(encoding="utf-8")


def _printable(value: Any) -> Any:
    """A text on one line, control signs spelled out, measures unbroken; markup and other values as they are."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return _unbroken(_on_one_line(value))
    return value


def _on_one_line(text: str) -> str:
    return visible(" ".join(text.split()))


def _unbroken(text: str) -> Markup:
    """A text in which no line ends inside a measure, such as 8-3/16 in."""
    pieces = _MEASURE.split(text)
    return Markup("").join(
        Markup('<span class="unbroken">{}</span>').format(piece) if number % 2 and {"-", " "} & set(piece) else piece
        for number, piece in enumerate(pieces)
    )


def _coded(text: str) -> Markup:
    """A text in which `backquoted` words are plan lines."""
    pieces = _on_one_line(text).split("`")
    if len(pieces) % 2 == 0:
        return _unbroken("`".join(pieces))
    return Markup("").join(
        Markup("<code>{}</code>").format(piece) if number % 2 else _unbroken(piece)
        for number, piece in enumerate(pieces)
    )


def _plain(text: str) -> Markup:
    """A text where no markup may stand."""
    return escape(_on_one_line(text))
