"""From pydantic's errors to problems that a plan or ruleset author can act on: place, what is wrong, what would do."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from checker.plan.elements import EMPTY
from checker.problems import Problem, cut, nearest
from checker.source import Document

_WANTED = {
    "list_type": "a list is needed",
    "dict_type": "a group of `key: value` lines is needed",
    "model_type": "a group of `key: value` lines is needed",
    "model_attributes_type": "a group of `key: value` lines is needed",
    "string_type": "a text is needed",
    "bool_type": "true or false is needed",
    "int_type": "a whole number is needed",
    "float_type": "a number is needed",
}
_FORM = "write letters, digits, `-`, `_` and `.`, at most 60, starting with a letter or digit"
_FOUND = {
    dict: "a group of lines",
    list: "a list",
    str: "a text",
    bool: "true or false",
    int: "a number",
    float: "a number",
}


def problems_of(error: ValidationError, model: type[BaseModel], document: Document) -> Iterator[Problem]:
    """Give the problems behind a validation error.

    error: what pydantic raised; model: the model of the whole document; document: the text it was read from.
    """
    for detail in error.errors(include_url=False):
        yield _problem(detail, model, document)


def _problem(detail: ErrorDetails, model: type[BaseModel], document: Document) -> Problem:
    path = tuple(step for step in detail["loc"])
    while path and not document.has(path) and detail["type"] != "missing":
        path = path[:-1]
    holder = _model_at(model, path[:-1])
    name = _named(path)
    value = detail["input"]
    kind = detail["type"]
    if kind == "extra_forbidden":
        known = sorted(holder.model_fields) if holder else []
        near = nearest(str(path[-1]), known)
        if value is None or value is EMPTY:
            what = f"{name} is not known here and has no value"
            return Problem(
                document.key_place(path),
                what,
                near or "if it belongs to the value before the comma, put both in quotes",
            )
        right = near or (f"known here: {', '.join(known)}" if len(known) <= 24 else "see `dryfit glossary`")
        return Problem(document.key_place(path), f"{name} is not known here", right)
    if kind == "missing":
        return Problem(document.place(path[:-1]), f"{_named(path[:-1])} needs `{path[-1]}`", "add the line")
    place = document.place(path)
    if value is None or value is EMPTY:
        return Problem(place, f"{name} is empty", "write a value, write `unknown`, or leave the line out")
    if kind == "literal_error":
        choices = _choices(model, path)
        if not isinstance(value, str) and str(value) in choices:
            return Problem(place, f"{name} is the number {value}: a word is needed", f'put it in quotes: "{value}"')
        right = nearest(str(value), choices)
        listed = f"one of: {', '.join(choices)}"
        return Problem(place, f"{name} is {_shown(value)}", f"{right}; {listed}" if right else listed)
    context: dict[str, Any] = detail.get("ctx") or {}
    if kind == "quantity":
        return Problem(place, f"{name}: {context['what']}", str(context["right"]))
    if kind == "string_pattern_mismatch":
        return Problem(place, f"{name} is {_shown(value)}: it does not have the form that is needed", _FORM)
    if kind == "string_too_short":
        return Problem(place, f"{name} is empty", "write a text")
    if kind == "string_too_long":
        return Problem(
            place, f"{name} has {len(str(value))} characters, more than {context['max_length']}", "shorten it"
        )
    if kind in _WANTED:
        found = _FOUND.get(type(value), "something else")
        right = "put it in quotes" if kind == "string_type" and isinstance(value, int | float) else ""
        as_written = document.text(path) if type(value) is float else value
        written = "" if isinstance(value, dict | list) else f" ({_shown(as_written)})"
        return Problem(place, f"{name} is {found}{written}: {_WANTED[kind]}", right)
    return Problem(place, f"{name}: {detail['msg']}")


def _shown(value: Any) -> str:
    if value is None or value is EMPTY:
        return "empty"
    if isinstance(value, dict | list):
        return "…"
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"“{cut(str(value))}”"


def _named(path: tuple[int | str, ...]) -> str:
    words = [f"item {step + 1}" if isinstance(step, int) else f"`{cut(step)}`" for step in path[-2:]]
    if not words:
        return "the file"
    return words[-1] if isinstance(path[-1], str) else " ".join([*words[:-1], words[-1]])


def _model_at(model: type[BaseModel], path: tuple[int | str, ...]) -> type[BaseModel] | None:
    found: Any = model
    for step in path:
        if isinstance(step, int):
            continue
        if not (isinstance(found, type) and issubclass(found, BaseModel)) or step not in found.model_fields:
            return None
        found = _model_in(found.model_fields[step].annotation)
    return found if isinstance(found, type) and issubclass(found, BaseModel) else None


def _model_in(annotation: Any) -> Any:
    """The first model inside an annotation."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for arg in get_args(annotation):
        if (found := _model_in(arg)) is not None:
            return found
    return None


def _choices(model: type[BaseModel], path: tuple[int | str, ...]) -> tuple[str, ...]:
    """The choices of the field at a path, or of the list that holds the item at it."""
    while path and isinstance(path[-1], int):
        path = path[:-1]
    holder, name = _model_at(model, path[:-1]), path[-1] if path else ""
    if holder is None or name not in holder.model_fields:
        return ()

    def literal(annotation: Any) -> tuple[str, ...]:
        if type(annotation).__name__ == "_LiteralGenericAlias":
            return tuple(str(choice) for choice in get_args(annotation))
        return next((found for arg in get_args(annotation) if (found := literal(arg))), ())

    return literal(holder.model_fields[str(name)].annotation)
