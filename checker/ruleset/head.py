"""ruleset.yaml: what a set is and what it adopts, which every check reads; what catalogue entries have in common."""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from checker.plan.fields import Date
from checker.ruleset.choices import Basis, Certainty

SetName = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9-]*(/[a-z][a-z0-9-]*)?$")]
Words = Annotated[str, StringConstraints(min_length=1, max_length=600, strip_whitespace=True)]
EntryName = Annotated[str, StringConstraints(pattern=r"^[a-z0-9][a-z0-9 ,./&-]{0,59}$")]


class Part(BaseModel):
    """A part of a ruleset file: unknown keys are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True, allow_inf_nan=False, defer_build=True)


class Adoption(Part):
    """A set that is adopted, in one edition, for a time."""

    set: SetName
    edition: str
    from_: Date | None = Field(default=None, alias="from")
    to: Date | None = None
    """First day on which it no longer holds."""


class RulesetFile(Part):
    """ruleset.yaml: what the set is and what it adopts."""

    ruleset: SetName
    title: Words
    document: Words
    """The code or ordinance that it paraphrases."""
    short: Words
    """Its name in citations."""
    editions: list[str]
    """From the oldest to the newest."""
    adopts: list[Adoption] = Field(default_factory=list)
    maintained_by: Words
    note: Words | None = None


class Entry(Part):
    """What every entry of the catalogue has: its names, its source."""

    id: EntryName
    """The name that plans use."""
    also: list[EntryName] = Field(default_factory=list)
    """Other names for it."""
    cite: Words
    basis: Basis
    known: Certainty
    note: Words | None = None
