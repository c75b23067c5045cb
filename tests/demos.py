"""The findings expected of the demo houses. `python -m tests.demos` writes them anew: read the difference."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from checker.check import check
from checker.engine.image import Cache
from checker.findings.finding import Result

DEMOS = Path(__file__).parent.parent / "plans_demo"
SCHEMA = DEMOS / "plan.schema.json"


def plans() -> list[Path]:
    """Every demo plan."""
    return sorted(DEMOS.glob("*/plan.yaml"))


def found(plan: Path, cache: Cache | None = None) -> dict[str, Any]:
    """What a check of a demo plan finds, as the expected file keeps it."""
    return as_data(check(plan, cache=cache, shown_as="plan.yaml"))


def as_data(result: Result) -> dict[str, Any]:
    """A result in short: every finding but those that meet or do not apply, every missing item, counts."""
    counts: dict[str, int] = {}
    for each in result.findings:
        counts[each.verdict] = counts.get(each.verdict, 0) + 1
    return {
        "exit_status": result.exit_status,
        "counts": dict(sorted(counts.items())),
        "findings": [
            {
                "key": each.key,
                "verdict": each.verdict,
                "severity": each.severity,
                "listed": each.listed,
                "says": each.says,
                "limit": each.limit,
                "margin": each.margin,
                "cite": str(each.cite or ""),
                "amended": [amendment.cite for amendment in each.amended_by],
                "excused": each.excused,
                "needs": [f"{item.ref.kind} {item.ref.id}".strip() + f": {item.name}" for item in each.needs],
                "line": each.place.line if each.place else 0,
            }
            for each in result.findings
            if each.verdict not in ("meets", "does not apply")
        ],
        "missing": [
            {
                "of": f"{each.item.ref.kind} {each.item.ref.id}".strip(),
                "item": each.item.name,
                "severity": each.severity,
                "due": each.due,
                "due_now": each.due_now,
                "perhaps": each.perhaps,
                "waiting": list(each.waiting),
            }
            for each in result.missing
        ],
    }


def text(data: Any) -> str:
    """The data as the expected file has it."""
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def main() -> None:
    """Write the expected findings of every demo plan, and the schema that they name."""
    from checker.plan.schema import plan_schema

    SCHEMA.write_text(text(plan_schema()), encoding="utf-8")
    for plan in plans():
        (plan.parent / "expected.json").write_text(text(found(plan)), encoding="utf-8")
        print(f"written: {plan.parent.name}/expected.json")


if __name__ == "__main__":
    main()
