"""What every element of a plan has in common: an id, a status, lists that may be open, values that may be unknown."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar, Literal

from pydantic import (
    BaseModel,
    ConfigDict,
    Field,
    ModelWrapValidatorHandler,
    PrivateAttr,
    StringConstraints,
    model_validator,
)

from checker.plan.fields import AND_OTHERS, UNKNOWN

Status = Literal["existing", "altered", "new", "removed", "replaced", "moved", "reused"]
STATUSES: tuple[Status, ...] = ("existing", "altered", "new", "removed", "replaced", "moved", "reused")
STOOD_BEFORE: frozenset[Status] = frozenset(STATUSES) - {"new"}
"""Statuses of what stood before the work."""
CHANGED: frozenset[Status] = frozenset({"altered", "replaced", "moved", "reused"})
"""Statuses of what stood before and is something else after: what it was, it says in `was`."""
Ident = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9][A-Za-z0-9_.-]{0,59}$")]
Text = Annotated[str, StringConstraints(min_length=1, max_length=400, strip_whitespace=True)]


def states_of(status: Status | None) -> tuple[Literal["before", "after"], ...]:
    """The states in which something stands; both for what has no status."""
    if status is not None and status not in STOOD_BEFORE:
        return ("after",)
    return ("before",) if status == "removed" else ("before", "after")


class _Empty:
    """Stands for a line with a key and no value, which no field accepts."""


EMPTY = _Empty()


class Section(BaseModel):
    """A group of plan lines: keys are checked, `unknown` counts as not stated, a list may end in `and others`."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        strict=True,
        allow_inf_nan=False,
        validate_default=False,
        defer_build=True,
    )
    ORDERED: ClassVar[tuple[tuple[str, str], ...]] = ()
    """Pairs of fields of which the first cannot be more than the second."""
    EXCLUDE: ClassVar[tuple[tuple[str, str], ...]] = ()
    """Pairs of fields that exclude each other."""
    SAME_LENGTH: ClassVar[tuple[tuple[str, str], ...]] = ()
    """Pairs of lists that belong together item by item."""
    MONTHLY: ClassVar[tuple[str, ...]] = ()
    """Lists of a value for each month."""
    _open_lists: frozenset[str] = PrivateAttr(default=frozenset())

    @model_validator(mode="wrap")
    @classmethod
    def _not_stated_and_open(cls, data: Any, handler: ModelWrapValidatorHandler[Section]) -> Section:
        open_lists: set[str] = set()
        if isinstance(data, dict):
            data = {key: EMPTY if value is None else value for key, value in data.items() if value != UNKNOWN}
            for key, value in data.items():
                if isinstance(value, list) and value and value[-1] == AND_OTHERS:
                    data[key] = value[:-1]
                    open_lists.add(key)
        section = handler(data)
        section._open_lists = frozenset(open_lists)
        return section

    def ordered(self) -> tuple[tuple[str, str], ...]:
        """The pairs that must be in order for what is said here."""
        return self.ORDERED

    def is_open(self, field: str) -> bool:
        """Whether the list in `field` may have members that nobody listed."""
        return getattr(self, field) is None or field in self._open_lists


class Says(Section):
    """What can be said of an element in one state; the attributes of a kind are the fields of its `Says` class."""


class Element(Section):
    """One thing of the house that rules can judge."""

    kind: ClassVar[str]
    meaning: ClassVar[str]
    trade: ClassVar[str] = ""
    has_status: ClassVar[bool] = True

    id: Ident
    """Name by which other lines, findings and the report speak of this element."""
    name: Text | None = None
    """What people call it, for the report."""
    note: Text | None = None
    """Free text; no rule reads it."""


class Worked(Element):
    """An element that the work may change."""

    status: Status | None = None
    """existing, altered, new, removed, replaced, moved or reused; a part may leave it to what holds it."""


class Single(Element):
    """An element that a plan has once: the permit, the site, the house."""

    has_status: ClassVar[bool] = False
    id: Ident = Field(default="", exclude=True)
