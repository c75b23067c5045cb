"""`dryfit schema`: JSON Schemas, so that an editor completes and checks as one types."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from checker.cli.files import write_whole


@click.command(short_help="Print a JSON Schema.")
@click.argument("of", type=click.Choice(["plan", "ruleset", "topic", "report"]))
@click.option("--output", metavar="FILE", type=click.Path(path_type=Path, dir_okay=False), help="Write it to a file.")
def schema(of: str, output: Path | None) -> None:
    """Print the JSON Schema of a plan, of a ruleset's head (ruleset.yaml), of a topic file, or of a report."""
    text = json.dumps(schema_of(of), indent=2, ensure_ascii=False) + "\n"
    if output is None:
        click.echo(text, nl=False)
    else:
        write_whole(output, text)


def schema_of(of: str) -> dict[str, Any]:
    """The schema of a kind of file."""
    if of == "plan":
        from checker.plan.schema import plan_schema

        return plan_schema()
    from checker.documented import described, models_below

    if of == "ruleset":
        from checker.ruleset.head import RulesetFile

        return described(RulesetFile.model_json_schema(by_alias=True), *models_below(RulesetFile))
    if of == "topic":
        from checker.ruleset.model import TopicFile

        return described(TopicFile.model_json_schema(by_alias=True), *models_below(TopicFile))
    from checker.report.json import Report

    return described(Report.model_json_schema(by_alias=True), *models_below(Report))
