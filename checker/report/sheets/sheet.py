"""What sheets are made of: rows, units at the head of columns, values as the trade reads them."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from checker.facts import Item, Known, Ref, State, Value
from checker.findings.finding import Result
from checker.units import Dimension, show

UNKNOWN = "not known"
D = Dimension
_UNIT = re.compile(r".*[\d/] (\D.*)$")


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a sheet: its name and a cell for each column after the first."""

    name: str
    cells: tuple[str, ...]
    level: int = 0
    """0 for a row, 1 for a sum of rows."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A table that people read beside the findings."""

    key: str
    title: str
    columns: tuple[str, ...]
    """Headings, that of the names first."""
    groups: tuple[tuple[str, tuple[Row, ...]], ...]
    """Rows under a heading each, "" for rows without one."""
    lines: tuple[str, ...] = ()
    """What the numbers rest on, under the table."""
    units: tuple[str, ...] = ()
    """Unit of each column, "" where its cells have their own or none."""
    spare: tuple[str, ...] = ()
    """Columns that a narrow terminal leaves out."""
    detailed: bool = False
    """Whether only a reader who wants everything reads it in a terminal."""


class Reading:
    """Reads the values of a result as the trade writes them."""

    def __init__(self, result: Result) -> None:
        self.result = result
        self.elements = result.facts.elements

    def kind(self, kind: str, state: State = "after") -> list[Known]:
        """Elements of a kind in one state, in the order of the plan."""
        return [known for ref, known in self.elements.items() if ref.kind == kind and ref.state == state]

    def value(self, ref: Ref, name: str) -> Value | None:
        """A value, None if it is not known."""
        fact = self.result.facts.value(Item(ref, name))
        return fact.value if fact else None

    def shown(self, ref: Ref | None, name: str, dimension: Dimension, none: str = UNKNOWN) -> str:
        """A value as the trade reads it."""
        if ref is None or ref not in self.elements:
            return "–"
        value = self.value(ref, name)
        if dimension is D.HEAT_FLOW and isinstance(value, float | int):
            return self.heat(value)
        return show(float(value), dimension, self.result.units) if isinstance(value, int | float) else none

    def name(self, ref: Ref) -> str:
        """What people call an element."""
        known = self.elements[ref]
        return known.name or ref.id

    def both(self, ref: Ref) -> tuple[Ref | None, Ref | None]:
        """An element before and after the work, None where it does not stand."""
        before, after = ref._replace(state="before"), ref._replace(state="after")
        return before if before in self.elements else None, after if after in self.elements else None

    def every(self, kind: str) -> list[Ref]:
        """Elements of a kind in either state, each once."""
        found = (ref._replace(state="after") for ref in self.elements if ref.kind == kind)
        return list(dict.fromkeys(found))

    def heat(self, watts: float) -> str:
        """A heat flow, in one unit throughout."""
        return show(watts, D.HEAT_FLOW, "us") if self.result.units == "us" else f"{watts:.0f} W"


def with_units(
    key: str,
    title: str,
    columns: tuple[str, ...],
    groups: tuple[tuple[str, tuple[Row, ...]], ...],
    lines: tuple[str, ...],
    *,
    spare: tuple[str, ...] = (),
    detailed: bool = False,
) -> Sheet:
    """A sheet whose units stand at the head of a column wherever all its cells have the same."""
    cells = list(zip(*(row.cells for _, rows in groups for row in rows), strict=True))
    units = [_unit(column) for column in cells]
    bare = tuple(
        (name, tuple(replace(row, cells=tuple(map(_without, row.cells, units))) for row in rows))
        for name, rows in groups
    )
    return Sheet(key, title, columns, bare, lines, tuple(units), spare, detailed)


def _unit(column: tuple[str, ...]) -> str:
    """The unit that all cells of a column end in, "" if they do not."""
    found = {match.group(1) if (match := _UNIT.match(cell)) else "" for cell in column if cell[:1].isdigit()}
    return found.pop() if len(found) == 1 and not any("×" in cell for cell in column) else ""


def _without(cell: str, unit: str) -> str:
    return cell.removesuffix(f" {unit}") if unit else cell
