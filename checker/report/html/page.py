"""One self-contained HTML page: no script, no network, every text of plan and ruleset escaped."""

from __future__ import annotations

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
    return environment


def _text(name: str) -> str:
    """A file of this package, from a checkout or a wheel."""
    return files(__package__).joinpath(*name.split("/")).read_text(encoding="utf-8")


def _coded(text: str) -> Markup:
    """A text in which `backquoted` words are plan lines."""
    pieces = str(_printable(text)).split("`")
    if len(pieces) % 2 == 0:
        return escape("`".join(pieces))
    return Markup("").join(
        Markup("<code>{}</code>").format(piece) if number % 2 else piece for number, piece in enumerate(pieces)
    )


def _printable(value: Any) -> Any:
    """A text on one line with its control signs spelled out; markup made here and other values as they are."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return visible(" ".join(value.split()))
    return value
