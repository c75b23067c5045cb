"""The JSON Schema of a plan: as the models have it, with `unknown` for every value and `and others` in every list."""

from __future__ import annotations

from typing import Any

from checker.documented import described, models_below
from checker.plan.fields import AND_OTHERS, UNKNOWN
from checker.plan.model import Plan

_ALWAYS_STATED = ("id", "plan", "units", "rules", "name", "note")


def plan_schema() -> dict[str, Any]:
    """Give the schema that an editor can complete and check plans by."""
    schema = described(Plan.model_json_schema(), *models_below(Plan))
    for model in [schema, *schema.get("$defs", {}).values()]:
        for name, field in model.get("properties", {}).items():
            if name not in _ALWAYS_STATED and "$ref" not in field:
                _admit_unknown(field)
            _admit_and_others(field)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return schema


def _admit_unknown(field: dict[str, Any]) -> None:
    options = field.pop("anyOf", None)
    if options is None:
        kept = {key: field.pop(key) for key in list(field) if key not in ("title", "description", "default")}
        options = [kept]
    # An empty line is refused when a plan is read: `unknown` says it on purpose.
    field["anyOf"] = [option for option in options if option.get("type") != "null"] + [{"const": UNKNOWN}]
    if field.get("default", 0) is None:
        del field["default"]


def _admit_and_others(field: dict[str, Any]) -> None:
    for option in [field, *field.get("anyOf", [])]:
        if option.get("type") == "array":
            option["items"] = {"anyOf": [option["items"], {"const": AND_OTHERS}]}
