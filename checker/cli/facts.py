"""`dryfit facts`: every fact of a plan, with its value and where it comes from."""

from __future__ import annotations

from pathlib import Path

import click

from checker.cli.files import told_plainly


@click.command(short_help="List every fact of a plan.")
@click.argument("plan", type=click.Path(path_type=Path))
@click.option("--rules", default="", metavar="NAME|FOLDER", help="Ruleset whose assumptions are taken.")
@click.option("--missing", "with_missing", is_flag=True, help="Also list derived values that are not known, and why.")
def facts(plan: Path, rules: str, with_missing: bool) -> None:
    """List what is known of each element of PLAN, before and after the work: stated, computed or inferred."""
    with told_plainly():
        from checker.check import in_force
        from checker.derive.derived import facts_of
        from checker.engine.session import Session
        from checker.facts import Item
        from checker.findings.words import Sentences, element_name, label
        from checker.plan.reader import read_plan

        read = read_plan(plan)
        adopted, entry = in_force(read, rules)
        known = facts_of(read, adopted.assumed(), adopted.catalogue)
        program = adopted.program()
        words = Sentences(known, program.glossary, read.plan.units)
        with Session(program, entry.image) as session:
            session.judge(known)
            conclusions = session.conclusions()
        for ref, each in known.elements.items():
            if (ref.state == "before" and not each.values) or (each.status == "only" and ref.state == "before"):
                continue
            click.echo(click.style(element_name(ref), bold=True) + (f"  {each.place}" if each.place else ""))
            for name, fact in each.values.items():
                origin, how = words.how(fact, ref)
                where = f", line {fact.place.line}" if fact.place else ""
                comment = f"{origin}{where}" + (f" {how}" if how else "")
                click.echo(f"  {name}: {words.value(Item(ref, name), fact.value)}  ({comment})")
            for (at, name), truth in sorted(conclusions.items()):
                if at == ref:
                    click.echo(f"  {name}: {'yes' if truth else 'no'}  (inferred)")
            if with_missing:
                for name, items in each.missing.items():
                    lacks = ", ".join(dict.fromkeys(f"{label(i.name)} of {element_name(i.ref)}" for i in items))
                    click.echo(f"  {name}: not known" + (f" (needs {lacks})" if lacks else ""))
