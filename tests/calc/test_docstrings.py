"""The docstrings of checker.calc are held to the functions, and their examples are run."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable
from typing import Any

import pytest

import checker.calc

MODULES = [
    importlib.import_module(found.name)
    for found in pkgutil.walk_packages(checker.calc.__path__, "checker.calc.")
    if "._" not in found.name
]
FUNCTIONS = [
    function
    for module in MODULES
    for name, function in inspect.getmembers(module, inspect.isfunction)
    if function.__module__ == module.__name__ and not name.startswith("_")
]
SECTIONS = ("Parameters", "Returns", "Raises", "Notes", "References", "Examples")
ENTRY = re.compile(r"(\w+): (\S.*?) — ")
BRACKET = re.compile(r"\[[^\]\d][^\]]*\]")


def label(function: Callable[..., Any]) -> str:
    """Module and name of a function."""
    return f"{function.__module__}.{function.__name__}"


def sections(function: Callable[..., Any]) -> dict[str, list[str]]:
    """Sections of a docstring; in each, one text an entry, continuation lines joined to it."""
    found: dict[str, list[str]] = {}
    entries: list[str] = []
    for line in inspect.getdoc(function).splitlines():  # type: ignore[union-attr]
        if line in SECTIONS:
            entries = found.setdefault(line, [])
        elif line.startswith("        ") and entries:
            entries[-1] += " " + line.strip()
        elif line.startswith("    "):
            entries.append(line.strip())
    return found


def test_there_is_something_to_look_at() -> None:
    """The collection finds the modules and their functions."""
    assert {"checker.calc.stair", "checker.calc.ceiling"} <= {module.__name__ for module in MODULES}
    assert len(FUNCTIONS) > 50


@pytest.mark.parametrize("function", FUNCTIONS, ids=label)
def test_parameters_are_those_of_the_signature(function: Callable[..., Any]) -> None:
    """Names, order and types agree; a function without parameters has no such section."""
    documented = []
    for entry in sections(function).get("Parameters", []):
        head = ENTRY.match(entry)
        assert head is not None, entry
        documented.append((head.group(1), head.group(2).replace('"', "'")))
    signature = inspect.signature(function)
    assert documented == [(name, str(value.annotation)) for name, value in signature.parameters.items()]


@pytest.mark.parametrize("function", FUNCTIONS, ids=label)
def test_every_quantity_has_a_unit(function: Callable[..., Any]) -> None:
    """The first line, each parameter and the result say their unit in brackets."""
    found = sections(function)
    first_line = (inspect.getdoc(function) or "").splitlines()[0]
    for text in [first_line, *found.get("Parameters", []), *found["Returns"]]:
        assert BRACKET.search(text), text


@pytest.mark.parametrize("function", FUNCTIONS, ids=label)
def test_there_is_a_reference(function: Callable[..., Any]) -> None:
    """A function says where its formula comes from, and what it raises if it raises."""
    found = sections(function)
    assert found.get("References")
    assert found.get("Raises") or "OutOfRange" not in inspect.getsource(function)


@pytest.mark.parametrize("module", MODULES, ids=lambda module: str(module.__name__))
def test_examples_run(module: Any) -> None:
    """The examples in the docstrings give what they print."""
    for example in doctest.DocTestFinder().find(module):
        runner = doctest.DocTestRunner(verbose=False)
        told: list[str] = []
        runner.run(example, out=told.append)
        assert runner.summarize(verbose=False).failed == 0, "".join(told)
