"""Small rulesets written into a folder, for tests that need one of their own."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent

from checker.ruleset.adopted import Adopted
from checker.ruleset.adopting import adopt
from checker.ruleset.folders import Library

HEAD = """\
ruleset: {name}
title: {title}
document: {title} Code
short: {short}
editions: {editions}
maintained_by: nobody
"""
STAIRS = """\
topic: stairs
about: Stairs.

rules:
  - id: rise
    title: Rise
    trade: stairs
    for: flight
    require: {riser_height: {at_most: 8 in}}
    editions:
      "2020": {section: S-1, sets: {require.riser_height.at_most: 9 in}}
      "2023": {section: S-2}
    basis: model code
    known: read
    severity: correction
    says: Each riser is {riser_height}; the limit is {limit}.
    decides: building official
    sheet: stair details
    due: application
"""
RULE = """\
  - id: {id}
    title: A rule
    trade: stairs
    for: {kind}
{lines}
    cite: {cite}
    basis: common practice
    known: read
    severity: {severity}
    says: {says}
    decides: building official
    sheet: stair details
    due: {due}
"""
CONCLUSION = """\
  - id: {id}
    title: A conclusion
    trade: stairs
    for: {kind}
    concludes: {concludes}
    meaning: whether it is so
    when: {when}
    cite: House rules 7
    basis: common practice
    known: read
"""


def write_set(
    root: Path,
    name: str = "base",
    *,
    editions: str = '["2020", "2023"]',
    title: str = "Base",
    short: str = "Base",
    more: str = "",
    **topics: str,
) -> Path:
    """Write a ruleset. root: folder of rulesets; more: further lines of its head; topics: text of each topic file."""
    folder = root / name
    folder.mkdir(parents=True, exist_ok=True)
    head = HEAD.format(name=name, title=title, short=short, editions=editions) + dedent(more)
    (folder / "ruleset.yaml").write_text(head, encoding="utf-8")
    for topic, text in topics.items():
        (folder / f"{topic}.yaml").write_text(text, encoding="utf-8")
    return folder


def topic(name: str, *sections: str) -> str:
    """A topic file of sections, each as YAML."""
    return "\n".join([f"topic: {name}", "about: A topic.", *sections]) + "\n"


def rule(
    id_: str,
    lines: str,
    *,
    kind: str = "flight",
    cite: str = "House rules 7",
    severity: str = "correction",
    says: str = "It does not fit.",
    due: str = "application",
) -> str:
    """A judging rule; lines: its `when`, `require` or `asks`, and whatever else, each indented by four."""
    return RULE.format(id=id_, kind=kind, lines=lines, cite=cite, severity=severity, says=says, due=due)


def conclusion(id_: str, concludes: str, when: str, *, kind: str = "flight") -> str:
    """A rule that concludes."""
    return CONCLUSION.format(id=id_, kind=kind, concludes=concludes, when=when)


def adopted(root: Path, name: str = "base", date: str = "") -> Adopted:
    """Adopt a ruleset from a folder of rulesets."""
    return adopt(name, Library((root,)), date)
