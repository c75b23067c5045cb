"""`dryfit check`: one or several plans against a ruleset."""

from __future__ import annotations

import io
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from checker.cli.files import ENGINE_FAULT, UNREADABLE, told_plainly, write_whole

if TYPE_CHECKING:
    from checker.findings.finding import Result

Format = Literal["text", "json", "html"]


@click.command(short_help="Check a plan.")
@click.argument("plans", nargs=-1, required=True, metavar="PLAN…", type=click.Path(path_type=Path))
@click.option("--rules", default="", metavar="NAME|FOLDER", help="Ruleset to judge by, instead of the plan's own.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json", "html"]),
    default="text",
    show_default=True,
    help="Form of the report.",
)
@click.option(
    "--for",
    "reader",
    type=click.Choice(["contractor", "reviewer"]),
    default="contractor",
    show_default=True,
    help="Whose order: by consequence, or by sheet, discipline and authority.",
)
@click.option("--all", "everything", is_flag=True, help="List what raised no conflict, too.")
@click.option(
    "--output", metavar="FILE", type=click.Path(path_type=Path, dir_okay=False), help="Write the report to a file."
)
def check(
    plans: tuple[Path, ...],
    rules: str,
    form: Format,
    reader: Literal["contractor", "reviewer"],
    everything: bool,
    output: Path | None,
) -> None:
    """Check each PLAN and report what does not fit, what is missing, what can hurt someone, and who decides.

    \b
    Exit status: 0 nothing to correct and nothing missing; 1 something does not meet;
    2 a plan or ruleset cannot be read; 3 only missing items; 4 the engine stopped.
    """
    if output is not None and len(plans) > 1 and form == "html":
        raise click.UsageError("an HTML page holds one plan: give one PLAN for each --output")
    reports: list[str] = []
    results: list[Result] = []
    status = 0
    for number, plan in enumerate(plans, 1):
        if len(plans) > 2 and sys.stderr.isatty():
            click.echo(f"checking {number} of {len(plans)}: {plan}", err=True)
        try:
            with told_plainly():
                result = _checked(plan, rules, form, everything)
        except SystemExit as stop:
            status = _graver(status, int(stop.code or 0))
            continue
        status = _graver(status, result.exit_status)
        results.append(result)
        if form == "text" and output is None:
            if number > 1:
                click.echo()
            _to_terminal(result, reader, everything)
        elif form == "text":
            reports.append(_as_text(result, reader, everything))
        elif form == "html":
            from checker.report.html import html_page

            reports.append(html_page(result, reader, everything=everything))
    if form == "json" and results:
        from checker.report.json import json_text

        reports.append(json_text(results if len(plans) > 1 else results[0], everything=everything))
    if reports and not (output is not None and status in (UNREADABLE, ENGINE_FAULT)):
        text = "\n".join(reports)
        if output is not None:
            write_whole(output, text)
            click.echo(f"written: {output}", err=True)
        else:
            click.echo(text, nl=not text.endswith("\n"))
    raise SystemExit(status)


def _checked(plan: Path, rules: str, form: Format, everything: bool) -> Result:
    from checker.check import check as check_plan

    # A report that others read carries no path of this machine.
    shown_as = plan.name if form != "text" and plan.is_absolute() else None
    return check_plan(plan, rules, explain_all=everything, shown_as=shown_as)


def _graver(one: int, two: int) -> int:
    """The status that tells the worse of two stories."""
    order = (0, 3, 1, 2, 4)
    return max(one, two, key=order.index)


def _to_terminal(result: Result, reader: Literal["contractor", "reviewer"], everything: bool) -> None:
    from checker.report.terminal import print_report

    print_report(result, reader, everything=everything)


def _as_text(result: Result, reader: Literal["contractor", "reviewer"], everything: bool) -> str:
    from checker.report.terminal import print_report

    file = io.StringIO()
    print_report(result, reader, everything=everything, file=file, width=80)
    return file.getvalue()
