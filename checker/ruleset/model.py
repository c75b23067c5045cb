"""What the files of a ruleset may say: rules, editions, exceptions, conclusions, tables, assumptions, amendments."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, StringConstraints

from checker.plan.elements import Status
from checker.plan.house import Stage, Trade
from checker.ruleset.catalogue import Archetype, LumberSize, Material
from checker.ruleset.choices import Basis, Certainty, Decider, Severity, Sheet
from checker.ruleset.head import Part, Words
from checker.ruleset.timber import LumberEntry, StandardEntry

Name = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9-]{0,59}$")]
Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_]{0,59}$")]
FullId = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9/-]*\.[a-z][a-z0-9-]*$")]


class Edition(Part):
    """A rule, table or assumption as one edition of the code has it."""

    section: Words
    """Section of the code, as text."""
    known: Certainty | None = None
    """Whether the text of this edition was read or is from memory, where it differs from the rule's own `known`."""
    sets: dict[str, Any] = Field(default_factory=dict)
    """What this edition changes, by path, as in require.total_rise.at_most: 12 ft."""


class Excuse(Part):
    """A named exception of the law."""

    id: Name
    cite: Words
    """Document and section that grants it."""
    known: Certainty
    when: dict[str, Any]
    """Condition under which it excuses."""


class Example(Part):
    """A case that shows what the rule does; exactly one of the verdicts is given, with the facts of the case."""

    meets: dict[str, Any] | None = None
    fails: dict[str, Any] | None = None
    cannot_tell: dict[str, Any] | None = Field(default=None, alias="cannot tell")
    excused: dict[str, Any] | None = None
    does_not_apply: dict[str, Any] | None = Field(default=None, alias="does not apply")
    holds: dict[str, Any] | None = None
    does_not_hold: dict[str, Any] | None = Field(default=None, alias="does not hold")
    edition: str | None = None
    """Edition that the example is for; the newest that has the rule if none is given."""
    note: Words | None = None


class Rule(Part):
    """A rule that requires, asks for, or concludes something of a kind of element."""

    id: Name
    title: Words
    trade: Trade
    for_: str = Field(alias="for")
    """Kind of element."""
    judges: list[Status] | None = None
    """Statuses it judges; if none are given: new, altered, replaced, moved, reused."""
    state: Literal["after", "before"] = "after"
    """Whether it judges the house after the work or before."""
    when: dict[str, Any] | None = None
    """When it applies."""
    require: dict[str, Any] | None = None
    """What must hold."""
    asks: dict[str, Any] | None = None
    """What the submittal must state."""
    concludes: Identifier | None = None
    """The flag that it concludes of the element."""
    meaning: Words | None = None
    """Of a conclusion: what it means, for the glossary."""
    except_: list[Excuse] = Field(default_factory=list, alias="except")
    editions: dict[str, Edition] | None = None
    """Editions of the ruleset's code that have the rule, each with its section."""
    cite: Words | None = None
    """Source of a rule that has no editions."""
    basis: Basis
    known: Certainty
    """Whether the source was read or is from memory."""
    severity: Severity | None = None
    says: Words | None = None
    """What is found, in one sentence with {placeholders}."""
    remedy: Words | None = None
    caution: Words | None = None
    decides: Decider | None = None
    sheet: Sheet | None = None
    """The sheet of the submittal that shows it."""
    due: Stage | None = None
    """When what is missing is due."""
    draft: bool = False
    """A draft runs only in tests."""
    note: Words | None = None
    examples: list[Example] = Field(default_factory=list)


class Column(Part):
    """A key column of a table."""

    form: Literal["exact", "interval"]
    of: str
    """A dimension, choice or flag."""
    exhaustive: bool = False
    """Whether the rows cover every value that there is."""


class Row(Part):
    """A row of a table."""

    when: dict[str, Any]
    gives: dict[str, Any]


class TableExample(Part):
    """A look-up that shows what the table does; `gives: beyond` where there is no row."""

    when: dict[str, Any]
    gives: dict[str, Any] | Literal["beyond"]


class Table(Part):
    """A table of the code."""

    id: Name
    title: Words
    keys: dict[Identifier, Column]
    values: dict[Identifier, str]
    """Value columns, each with its dimension."""
    editions: dict[str, Edition] | None = None
    cite: Words | None = None
    basis: Basis
    known: Certainty
    rows: list[Row]
    examples: list[TableExample] = Field(default_factory=list)


class Assumption(Part):
    """A value or method that arithmetic takes where the plan has no line for it."""

    name: Identifier
    title: Words
    of: str
    """A dimension, or choice."""
    choices: list[str] | None = None
    value: str | int | float | bool
    editions: dict[str, Edition] | None = None
    cite: Words | None = None
    basis: Basis
    known: Certainty
    why: Words | None = None


class Retired(Part):
    """A rule id that is no longer used and never used again."""

    id: Name
    why: Words
    now: Words | None = None
    """What took its place."""


class Caution(Part):
    """What people should know before they do the work of a trade; a report prints it once."""

    trade: Trade
    says: Words


class Amendment(Part):
    """A local change to a base set: of a rule (by path, suspended, severity, excuses), a table or an assumption."""

    rule: FullId | None = None
    table: FullId | None = None
    assumption: Identifier | None = None
    sets: dict[str, Any] | None = None
    """New values by path."""
    suspend: bool = False
    severity: Severity | None = None
    except_: list[Excuse] = Field(default_factory=list, alias="except")
    """Exceptions added."""
    rows: list[Row] | None = None
    """All rows of the table, anew."""
    value: str | int | float | bool | None = None
    reason: Words | None = None
    """Why; needed to suspend what bears on a danger."""
    cite: Words
    """Local law."""
    known: Certainty


class TopicFile(Part):
    """A topic of a set: rules with the tables and assumptions they use, or local amendments."""

    topic: Name
    about: Words
    rules: list[Rule] = Field(default_factory=list)
    tables: list[Table] = Field(default_factory=list)
    assumptions: list[Assumption] = Field(default_factory=list)
    materials: list[Material] = Field(default_factory=list)
    archetypes: list[Archetype] = Field(default_factory=list)
    lumber: list[LumberEntry] = Field(default_factory=list)
    lumber_sizes: list[LumberSize] = Field(default_factory=list)
    timber_standard: list[StandardEntry] = Field(default_factory=list)
    amendments: list[Amendment] = Field(default_factory=list)
    cautions: list[Caution] = Field(default_factory=list)
    retired: list[Retired] = Field(default_factory=list)
