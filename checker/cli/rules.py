"""`dryfit rules`: list, show and test the rules of rulesets."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Literal

import click

from checker.cli.files import told_plainly

if TYPE_CHECKING:
    from checker.ruleset.adopted import Adopted, AdoptedRule


@click.group(short_help="List, show and test rules.")
def rules() -> None:
    """List, show and test the rules of rulesets."""


@rules.command(name="list", short_help="List the rules in force.")
@click.option("--rules", "name", default="us", show_default=True, metavar="NAME|FOLDER", help="Ruleset.")
@click.option("--date", default="", metavar="YYYY-MM-DD", help="Date of the permit; the newest edition if none.")
def list_(name: str, date: str) -> None:
    """List every rule in force, with its severity, title and citation."""
    with told_plainly():
        for rule in _adopted(name, date).rules:
            what = f"concludes {rule.concludes}" if rule.concludes else rule.severity
            click.echo(f"{rule.id}  [{what}]\n    {rule.title} — {rule.cite}")


@rules.command(short_help="Print a rule as people read it.")
@click.argument("rule")
@click.option("--rules", "name", default="", metavar="NAME|FOLDER", help="Ruleset; by default the rule's own set.")
@click.option("--date", default="", metavar="YYYY-MM-DD", help="Date of the permit; the newest edition if none.")
def show(rule: str, name: str, date: str) -> None:
    """Print RULE (as in us/stairs.riser-height): what it asks, of what, why, its citation, amendments and examples."""
    from checker.problems import cut, nearest

    with told_plainly():
        own_set, _, topic = rule.rpartition("/")
        adopted = _adopted(name or own_set or "us", date)
        found = next((each for each in adopted.rules if each.id == rule), None)
        if found is None:
            short = {each.id.rpartition("/")[2]: each for each in adopted.rules}
            found = short.get(topic)
        if found is None:
            ids = [each.id for each in adopted.rules]
            right = nearest(rule, ids) or "see `dryfit rules list`"
            raise click.UsageError(f"no rule “{cut(rule)}” is in force; {right}")
        _show(found, adopted, name)


def _show(rule: AdoptedRule, adopted: Adopted, name: str) -> None:
    from checker.ruleset.reading_aloud import in_words

    click.echo(click.style(f"{rule.title}", bold=True) + f"  ({rule.id})")
    of = f"{rule.kind.replace('-', ' ')}"
    if rule.concludes:
        meaning = adopted.conclusions[rule.kind, rule.concludes]
        _paragraph("Concludes", f"of a {of}: {rule.concludes.replace('_', ' ')} — {meaning}")
        _paragraph("When", in_words(rule.when) or "always")
    else:
        judged = f"{rule.severity}; judges {', '.join(rule.judges)} {of}s"
        _paragraph("Severity", judged + (" before the work" if rule.state == "before" else ""))
        if not rule.when.always:
            _paragraph("When", in_words(rule.when))
        _paragraph("Asks for" if rule.asks else "Requires", in_words(rule.require))
    for excuse in rule.excuses:
        memory = " (from memory)" if excuse.known == "from memory" else ""
        _paragraph("Except", f"{excuse.id.replace('-', ' ')}, by {excuse.cite}{memory}: when {in_words(excuse.when)}")
    _paragraph("Says", rule.says)
    _paragraph("Mend", rule.remedy)
    _paragraph("Caution", rule.caution)
    _paragraph("Decides", f"{rule.decides}; {rule.sheet}; due at {rule.due}" if rule.decides else "")
    _paragraph("Basis", f"{rule.cite.basis}: {rule.cite}")
    for amendment in rule.amended_by:
        changed = f"{amendment.what} was {amendment.base or 'not there'}, now {amendment.now}"
        _paragraph("Amended", f"{amendment.cite}: {changed} ({amendment.place})")
    _paragraph("Note", rule.note)
    _paragraph("Written", str(rule.place))
    _examples(rule, name)


def _examples(rule: AdoptedRule, name: str) -> None:
    from checker.ruleset.examples import stated
    from checker.ruleset.folders import Library
    from checker.ruleset.places import name_and_edition

    library = Library()
    given_folder = library.folder(name_and_edition(name)[0]) if name else None
    own = rule.id.rpartition("/")[0]
    folder = given_folder if given_folder is not None and given_folder.name == own else library.folder(own)
    for id_, written, _, _ in folder.rules():
        if id_ == rule.id:
            for example in written.examples:
                given = stated(example)
                if given:
                    edition = f" ({example.edition})" if example.edition else ""
                    _paragraph("Example", f"{given[0]}{edition}: {_plain(given[1])}")


def _plain(value: object) -> str:
    if isinstance(value, dict):
        return (
            ", ".join(f"{str(key).replace('_', ' ')} {_plain(inner)}" for key, inner in value.items())
            or "nothing known"
        )
    if isinstance(value, list):
        return "[" + "; ".join(_plain(inner) for inner in value) + "]"
    return "yes" if value is True else "no" if value is False else str(value)


def _paragraph(word: str, text: str) -> None:
    from checker.problems import visible

    if text:
        click.echo(
            textwrap.fill(
                visible(" ".join(text.split())), 80, initial_indent=f"  {word:<10}", subsequent_indent=" " * 12
            )
        )


@rules.command(short_help="Run the examples of rulesets.")
@click.argument("folders", nargs=-1, metavar="[NAME|FOLDER…]")
def test(folders: tuple[str, ...]) -> None:
    """Run every rule's own examples, in every ruleset or only those named; exit status 1 if any disagrees."""
    with told_plainly():
        from checker.ruleset.examples import run_examples
        from checker.ruleset.folders import Library
        from checker.ruleset.places import available

        library = Library()
        wrong = 0
        for name in folders or available():
            tested = run_examples(library.folder(name), library)
            wrong += len(tested.problems)
            for problem in tested.problems:
                click.echo(str(problem))
            verdict = f"{len(tested.problems)} disagree" if tested.problems else "all as stated"
            counted = f"{tested.rules} rules, {tested.tables} tables, {tested.examples} examples"
            click.echo(f"{tested.ruleset}: {counted}: {verdict}")
    raise SystemExit(1 if wrong else 0)


@rules.command(short_help="List the materials, archetypes and lumber that plans may name.")
@click.argument("words", nargs=-1, metavar="[WORD…]")
@click.option("--rules", "name", default="us", show_default=True, metavar="NAME|FOLDER", help="Ruleset.")
@click.option("--units", type=click.Choice(["us", "metric"]), default="us", show_default=True, help="Units to print.")
def materials(words: tuple[str, ...], name: str, units: Literal["us", "metric"]) -> None:
    """List materials, archetypes and lumber with their sources: all, or those with every WORD in a name or sort."""
    from checker.findings.words import label
    from checker.ruleset.catalogue import PROPERTIES
    from checker.units import show

    with told_plainly():
        adopted = _adopted(name, "")
        found = 0
        for entries in adopted.catalogue.values():
            names: dict[str, list[str]] = {}
            for each, entry in entries.items():
                names.setdefault(entry.name, []).append(each)
            for entry in {entry.name: entry for entry in entries.values()}.values():
                searched = " ".join([*names[entry.name], entry.of, entry.title]).lower()
                if not all(word.lower() in searched for word in words):
                    continue
                found += 1
                others = [each for each in names[entry.name] if each != entry.name]
                click.echo(click.style(entry.name, bold=True) + (f"  (or: {'; '.join(others)})" if others else ""))
                values = [
                    f"{label(property_)} {show(value, PROPERTIES[property_], units)}"
                    for property_, value in entry.properties.items()
                    if isinstance(value, float)
                ]
                what = {"material": entry.of, "archetype": f"{entry.of}: {entry.title}"}.get(entry.catalogue)
                what = what or (f"lumber, {entry.title}" if entry.catalogue == "lumber" else entry.catalogue)
                _paragraph("", f"{what} — {', '.join(values) or 'no values'}")
                _paragraph("", f"{entry.source}. {entry.note}".strip())
        if not found:
            raise click.UsageError(f"no material, archetype or lumber has “{' '.join(words)}” in its names")


def _adopted(name: str, date: str) -> Adopted:
    from checker.plan.fields import is_date
    from checker.problems import cut
    from checker.ruleset.adopting import adopt
    from checker.ruleset.folders import Library

    if date and not is_date(date):
        raise click.UsageError(f"--date: “{cut(date)}” is no date; write it as 2026-03-31")
    return adopt(name, Library(), date)
