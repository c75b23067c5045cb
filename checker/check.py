"""One check, from a plan file to its findings: read, adopt, derive, judge, assemble."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from checker import __version__
from checker.derive.derived import facts_of
from checker.engine.image import Cache, Entry, key_of
from checker.engine.session import Session
from checker.findings.assemble import Assembler
from checker.findings.finding import Result
from checker.findings.words import element_name
from checker.glossary import glossary
from checker.plan.reader import ReadPlan, read_plan
from checker.problems import Place, Problem, Unreadable
from checker.ruleset.adopted import Adopted, adopted_from, archetypes_of
from checker.ruleset.catalogue import unknown_names
from checker.ruleset.places import Roots, available, every_file, shipped


def check(
    path: Path, rules: str = "", *, explain_all: bool = False, cache: Cache | None = None, shown_as: str | None = None
) -> Result:
    """Check a plan file.

    path: the plan; rules: name or folder of the ruleset, the plan's own if "" ; explain_all: reasons also for what
    meets; cache: of compiled rules; shown_as: the plan's name in messages. Raises Unreadable, EngineFault.
    """
    return check_read(read_plan(path, shown_as), rules, explain_all=explain_all, cache=cache)


def check_read(read: ReadPlan, rules: str = "", *, explain_all: bool = False, cache: Cache | None = None) -> Result:
    """Check a plan that was read; as `check`."""
    adopted, entry = in_force(read, rules, cache)
    facts = facts_of(read, adopted.assumed(), adopted.catalogue)
    with Session(adopted.program(), entry.image) as session:
        verdicts = session.judge(facts)
        assembler = Assembler(read, adopted, facts, session)
        findings = assembler.findings(verdicts, explain_all=explain_all)
        missing = assembler.missing(findings)
    adopted = replace(adopted, assumptions={**adopted.assumptions, **archetypes_of(adopted, facts, read.plan.units)})
    permit = read.plan.permit
    return Result(
        read.plan.plan,
        read.document.shown_as,
        read.plan.units,
        permit.stage or "",
        tuple(permit.scope or ()),
        adopted,
        facts,
        tuple(findings),
        tuple(missing),
        {ref: known.name or element_name(ref) for ref, known in facts.elements.items()},
    )


def in_force(read: ReadPlan, rules: str = "", cache: Cache | None = None) -> tuple[Adopted, Entry]:
    """The ruleset that a plan is judged by, compiled; it knows what the plan names. Raises Unreadable."""
    asked_at: Place | None = None
    if not rules:
        rules, asked_at = read.plan.rules or "", read.document.place(("rules",))
    if not rules:
        right = f"add `rules:` to the plan, or give --rules; there are: {', '.join(available())}"
        raise Unreadable([Problem(read.document.place(()), "the plan does not say which ruleset it goes by", right)])
    adopted, entry = adopted_ruleset(rules, read.plan.permit.date or "", (shipped(),), asked_at, cache)
    if problems := list(unknown_names(read, adopted)):
        raise Unreadable(problems)
    return adopted, entry


def adopted_ruleset(
    name: str, date: str, roots: Roots, asked_at: Place | None = None, cache: Cache | None = None
) -> tuple[Adopted, Entry]:
    """A ruleset as adopted on a date, compiled: from the cache, or made and kept there. Raises Unreadable."""
    cache = cache or Cache()
    contents = [part for file in every_file(name, roots, asked_at) for part in (file.name.encode(), _content(file))]
    key = key_of(_compiler(), name, date, *contents)
    entry = cache.get(key)
    if entry is not None:
        return adopted_from(entry.adopted), entry
    from checker.ruleset.adopting import adopt
    from checker.ruleset.folders import Library

    adopted = adopt(name, Library(roots), date, asked_at)
    return adopted, cache.put(key, adopted.to_data(), adopted.program())


def _content(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError:
        return b""  # the reader will say what is wrong with it


@lru_cache(maxsize=1)
def _compiler() -> str:
    """A digest of everything in the program that compiled rules depend on."""
    digest = hashlib.sha256(__version__.encode())
    here = Path(__file__).parent
    for file in sorted([*here.glob("engine/*.py"), *here.glob("ruleset/*.py")]):
        digest.update(file.read_bytes())
    digest.update(repr(glossary()).encode())
    return digest.hexdigest()
