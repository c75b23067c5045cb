"""The text under the fields of a model: what glossary and schemas say of each.

pydantic can collect these itself, but re-reads the source of every class at import, which costs a check more time than
everything else; here a module's source is parsed once, and only when somebody asks.
"""

from __future__ import annotations

import ast
import inspect
import sys
from collections.abc import Mapping
from functools import cache
from typing import Any

from pydantic import BaseModel


@cache
def _classes(module: str) -> Mapping[str, Mapping[str, str]]:
    """The documented fields of every class of a module."""
    found: dict[str, dict[str, str]] = {}
    for node in ast.parse(inspect.getsource(sys.modules[module])).body:
        if not isinstance(node, ast.ClassDef):
            continue
        texts = found.setdefault(node.name, {})
        for line, below in zip(node.body, node.body[1:], strict=False):
            is_text = isinstance(below, ast.Expr) and isinstance(below.value, ast.Constant)
            if not isinstance(line, ast.AnnAssign) or "ClassVar" in ast.unparse(line.annotation):
                continue
            if isinstance(line.target, ast.Name) and is_text:
                texts[line.target.id] = inspect.cleandoc(str(below.value.value))  # type: ignore[attr-defined]
    return found


@cache
def field_texts(model: type[BaseModel]) -> Mapping[str, str]:
    """The text under each field of a model, its own or inherited."""
    texts: dict[str, str] = {}
    for base in reversed(model.__mro__):
        if issubclass(base, BaseModel) and base is not BaseModel:
            texts.update(_classes(base.__module__).get(base.__name__, {}))
    return texts


def described(schema: dict[str, Any], *models: type[BaseModel]) -> dict[str, Any]:
    """Put the texts of models' fields into a JSON Schema that was made from them."""
    parts = {**schema.get("$defs", {}), schema.get("title", ""): schema}
    for model in models:
        part = parts.get(model.__name__)
        if part is None:
            continue
        for name, text in field_texts(model).items():
            field = part.get("properties", {}).get(model.model_fields[name].alias or name)
            if field is not None:
                field["description"] = text
    return schema


def models_below(model: type[BaseModel]) -> list[type[BaseModel]]:
    """A model and every model that its fields lead to."""
    found: dict[type[BaseModel], None] = {}

    def visit(annotation: Any) -> None:
        if isinstance(annotation, type) and issubclass(annotation, BaseModel):
            if annotation not in found:
                found[annotation] = None
                for info in annotation.model_fields.values():
                    visit(info.annotation)
            return
        for arg in getattr(annotation, "__args__", ()):
            visit(arg)

    visit(model)
    return list(found)
