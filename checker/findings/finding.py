"""What a check comes to: findings, missing items, and what they rest on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from checker.facts import Facts, Item, Ref
from checker.problems import Place
from checker.ruleset.adopted import Adopted, Applied, Citation

VerdictWord = Literal["meets", "does not meet", "cannot tell", "does not apply", "excused"]
VERDICTS: tuple[VerdictWord, ...] = ("does not meet", "cannot tell", "excused", "meets", "does not apply")
BUILT_IN = "built-in"


@dataclass(frozen=True, slots=True)
class Because:
    """One value that a verdict rests on: whose, how much, and where it comes from."""

    item: Item
    value: object
    shown: str
    unit: str
    origin: str
    how: str
    place: Place | None
    behind: bool = False
    """Whether it settles a conclusion that the rule reads, rather than the rule itself."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One rule on one element."""

    key: str
    rule: str
    title: str
    trade: str
    subject: Ref
    elements: tuple[Ref, ...]
    verdict: VerdictWord
    severity: str
    says: str
    because: tuple[Because, ...] = ()
    limit: str = ""
    margin: str = ""
    needs: tuple[Item, ...] = ()
    needs_to_apply: tuple[Item, ...] = ()
    needs_for_excuse: tuple[Item, ...] = ()
    cite: Citation | None = None
    amended_by: tuple[Applied, ...] = ()
    excused: str = ""
    excuse_cite: str = ""
    rests_on: tuple[str, ...] = ()
    beyond_table: bool = False
    remedy: str = ""
    caution: str = ""
    decides: str = ""
    authority: str = ""
    sheet: str = ""
    due: str = ""
    due_now: bool = True
    in_scope: bool = True
    place: Place | None = None

    @property
    def listed(self) -> bool:
        """Whether it is shown: outside the permit's scope only what does not meet, and every danger."""
        return (
            self.in_scope
            or self.severity == "danger"
            or (self.verdict == "does not meet" and self.severity == "correction")
        )

    @property
    def is_fault(self) -> bool:
        """Whether it must be put right before this permit goes on."""
        if self.verdict != "does not meet" or self.severity == "advice":
            return False
        return self.in_scope or self.severity == "danger"


@dataclass(frozen=True, slots=True)
class MissingItem:
    """One plan line that is not there, with every check that waits for it."""

    item: Item
    asks: str
    write: str
    severity: str
    sheets: tuple[str, ...]
    authorities: tuple[str, ...]
    due: str
    due_now: bool
    waiting: tuple[str, ...]
    perhaps: bool = False
    """Whether it is needed only if checks apply that other missing items decide on."""
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Result:
    """Everything that a check of one plan comes to."""

    plan: str
    file: str
    units: Literal["us", "metric"]
    stage: str
    scope: tuple[str, ...]
    adopted: Adopted
    facts: Facts
    findings: tuple[Finding, ...]
    missing: tuple[MissingItem, ...]
    names: Mapping[Ref, str] = field(default_factory=dict)

    def of(self, *verdicts: VerdictWord, listed: bool = True) -> list[Finding]:
        """Findings with one of the verdicts, in order of consequence."""
        return [each for each in self.findings if each.verdict in verdicts and (each.listed or not listed)]

    @property
    def exit_status(self) -> int:
        """0 nothing to correct and nothing missing; 1 something does not meet; 3 only what cannot be told."""
        if any(each.is_fault for each in self.findings):
            return 1
        untold = (each for each in self.findings if each.verdict == "cannot tell" and each.listed and each.due_now)
        return 3 if any(each.severity != "advice" for each in untold) else 0
