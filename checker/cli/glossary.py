"""`dryfit glossary`: every kind, attribute and link that plans and rules can speak of, made from the code."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from checker.glossary import Attribute, Kind


@click.command(short_help="List what plans and rules can speak of.")
@click.argument("kinds", nargs=-1, metavar="[KIND…]")
def glossary(kinds: tuple[str, ...]) -> None:
    """List every kind of element with its attributes (unit, choices, meaning) and links; or only the KINDs named."""
    from checker.glossary import glossary as all_words
    from checker.problems import cut, nearest

    words = all_words().kinds
    for name in kinds:
        if name not in words:
            right = nearest(name, words) or f"kinds: {', '.join(words)}"
            raise click.UsageError(f"there is no kind “{cut(name)}”; {right}")
    for number, kind in enumerate(words[name] for name in (kinds or words)):
        if number:
            click.echo()
        _print(kind)


def _print(kind: Kind) -> None:
    click.echo(click.style(kind.name, bold=True) + f" — {kind.meaning}")
    for attribute in kind.attributes.values():
        click.echo(f"  {attribute.name}: {_form(attribute)}")
        click.echo(f"      {attribute.meaning.rstrip('.')}{_origin(attribute)}")
    for link in sorted(kind.links.values(), key=lambda each: each.name):
        arrow = "→ one" if link.to_one else "→ several"
        click.echo(f"  {link.name} {arrow} {link.target}: {link.meaning.rstrip('.')}")


def _form(attribute: Attribute) -> str:
    from checker.units import units_for

    if attribute.dimension:
        units = ", ".join(units_for(attribute.dimension)[:5])
        several = "list of " if attribute.form == "series" else ""
        named = attribute.dimension.value.replace("_", " ")
        return f"{several}{named}, held in {attribute.dimension.si_unit}" + (f" ({units}, …)" if units else "")
    if attribute.form == "flag":
        return "true or false"
    return " | ".join(attribute.choices)


def _origin(attribute: Attribute) -> str:
    if attribute.on_plan:
        return " [stated, or derived]" if attribute.derived else ""
    return " [derived]"
