"""Calculation sheets: heat loss by room and by surface, before and after the work; the schedule of ducts.

Every sheet is plain text in rows, so that terminal, page and JSON show the same. What is not known says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from checker.facts import Item, Known, Ref, State, Value
from checker.findings.finding import Result
from checker.findings.words import label
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


def sheets_of(result: Result) -> tuple[Sheet, ...]:
    """The sheets of a result; none for a trade of which the plan says nothing."""
    of = _Sheets(result)
    return tuple(each for each in (of.assemblies(), of.rooms(), of.surfaces(), of.ducts()) if each is not None)


class _Sheets:
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

    # Assemblies.

    def assemblies(self) -> Sheet | None:
        """What each assembly resists, before and after."""
        rows = []
        for ref in self.every("assembly"):
            before, after = self.both(ref)
            rows.append(
                Row(
                    self.name(after or before or ref),
                    (
                        self.shown(after, "cavity_insulation", D.THERMAL_RESISTANCE),
                        self.shown(after, "continuous_insulation", D.THERMAL_RESISTANCE),
                        self.shown(before, "total_resistance", D.THERMAL_RESISTANCE),
                        self.shown(after, "total_resistance", D.THERMAL_RESISTANCE),
                        self.shown(after, "u_factor", D.U_FACTOR),
                        self.shown(after, "sheathing_temperature", D.TEMPERATURE, ""),
                    ),
                )
            )
        if not any(cell not in (UNKNOWN, "–", "") for row in rows for cell in row.cells):
            return None
        method = self.result.adopted.assumptions.get("resistance_method")
        lines = ["Before and after: from air to air, with the framing" + (f", by {method.value}." if method else ".")]
        if any(row.cells[-1] for row in rows):
            lines.append(
                "Winter face: temperature at the outer face of the framing in the three coldest months. Steady "
                "diffusion only: an indication. Air that leaks carries more water; rain, sun and drying are left out."
            )
        return _with_units(
            "assemblies",
            "Assemblies",
            ("Assembly", "in bays", "unbroken", "before", "after", "U after", "winter face"),
            (("", tuple(rows)),),
            tuple(lines),
        )

    # Heat loss.

    def rooms(self) -> Sheet | None:
        """Heat loss by room, before and after."""
        rows: dict[str, list[Row]] = {}
        for ref in self.every("room"):
            before, after = self.both(ref)
            if not any(each and self.value(each, "heated") is True for each in (before, after)):
                continue
            rows.setdefault(self.level(ref), []).append(self.room(ref, before, after))
        known = any(cell not in (UNKNOWN, "–") for those in rows.values() for row in those for cell in row.cells[3:5])
        if not known and not self.every("surface"):
            return None
        house = Ref("house", "")
        before = house._replace(state="before")
        name = "ventilation_heat_loss"
        ventilation = (self.shown(before, name, D.HEAT_FLOW), self.shown(house, name, D.HEAT_FLOW))
        total = (
            Row("Ventilation", ("", "", "", *ventilation, "")),
            Row("The house", ("", "", "", *self.losses(before, house)), 1),
        )
        return _with_units(
            "heat-loss",
            "Heat loss by room at the winter design condition",
            ("Room", "surfaces", "openings", "air", "before", "after", "may be"),
            (*((level, tuple(those)) for level, those in rows.items()), ("", total)),
            tuple(self.basis()),
        )

    def room(self, ref: Ref, before: Ref | None, after: Ref | None) -> Row:
        """The row of a room: what its loss is made of after the work, and the sums of both states."""
        surfaces, openings = (self.sum_over(after, name) for name in ("heat_loss", "openings_heat_loss"))
        air = self.shown(after, "infiltration_heat_loss", D.HEAT_FLOW)
        return Row(self.name(after or before or ref), (surfaces, openings, air, *self.losses(before, after)))

    def losses(self, before: Ref | None, after: Ref | None) -> tuple[str, str, str]:
        """The loss before and after, and what the latter may be."""
        low, high = (
            self.value(after, f"heat_loss_{end}") if after in self.elements and after else None
            for end in ("low", "high")
        )
        spread = ""
        if isinstance(low, float) and isinstance(high, float) and high - low > 0.02 * high:
            last = self.heat(high)
            spread = f"{self.heat(low).removesuffix(last.partition(' ')[2]).strip()} to {last}"
        return (
            self.shown(before, "heat_loss", D.HEAT_FLOW),
            self.shown(after, "heat_loss", D.HEAT_FLOW),
            spread,
        )

    def sum_over(self, room: Ref | None, name: str) -> str:
        """A sum over the surfaces of a room."""
        if room is None or room not in self.elements:
            return "–"
        members = self.elements[room].links.get("surfaces")
        if members is None or not members.closed:
            return UNKNOWN
        values = [value for each in members.refs if isinstance(value := self.value(each, name), float | int)]
        return UNKNOWN if len(values) < len(members.refs) else self.heat(sum(values))

    def heat(self, watts: float) -> str:
        """A heat flow, in one unit throughout."""
        return show(watts, D.HEAT_FLOW, "us") if self.result.units == "us" else f"{watts:.0f} W"

    def level(self, room: Ref) -> str:
        """The name of the level that a room is on."""
        for ref in self.both(room):
            members = self.elements[ref].links.get("level") if ref else None
            if members and members.refs:
                return self.name(members.refs[0])
        return ""

    def basis(self) -> Iterator[str]:
        """What the losses rest on."""
        house, site = Ref("house", ""), Ref("site", "")
        outdoors = self.shown(site, "heating_design_temperature", D.TEMPERATURE)
        assumed = self.result.adopted.assumptions.get("indoor_temperature")
        indoors = (
            show(assumed.value, D.TEMPERATURE, self.result.units)
            if assumed and isinstance(assumed.value, float)
            else UNKNOWN
        )
        yield f"Outdoors {outdoors}; indoors {indoors} where the plan gives no other (assumed)."
        for ref, word in ((house._replace(state="before"), "before"), (house, "after")):
            source = self.value(ref, "air_changes_50_from")
            rate = self.shown(ref, "air_changes_50", D.AIR_CHANGES)
            yield f"Air leakage {word} the work: {rate} at 50 Pa" + (f", {source}." if source else ".")
        for known in self.kind("heater"):
            ratio = self.value(known.ref, "size_ratio")
            output = self.shown(known.ref, "output_on_site", D.HEAT_FLOW)
            if isinstance(ratio, float):
                low = self.value(known.ref, "low_stage_ratio")
                stage = f"; its low stage {low:.2f} times" if isinstance(low, float) else ""
                yield f"{self.name(known.ref).capitalize()}: output {output}, {ratio:.2f} times the loss{stage}."
        yield (
            "The air is that of a mean winter day; a windy design night takes more. "
            "“May be” is what the loss can come to where layers, labels or tightness are not known. "
            "These are the plan's own numbers, added up; they are not the load report that the code names."
        )

    def surfaces(self) -> Sheet | None:
        """Heat loss by surface."""
        groups: dict[str, list[Row]] = {}
        for ref in self.every("surface"):
            before, after = self.both(ref)
            stands = after or before or ref
            members = self.elements[stands].links.get("room")
            room = self.name(members.refs[0]) if members and members.refs else ""
            groups.setdefault(room, []).append(
                Row(
                    self.surface_name(stands),
                    (
                        self.built_as(stands),
                        self.shown(stands, "net_area", D.AREA),
                        self.shown(before, "u_factor", D.U_FACTOR),
                        self.shown(after, "u_factor", D.U_FACTOR),
                        self.shown(before, "heat_loss", D.HEAT_FLOW),
                        self.shown(after, "heat_loss", D.HEAT_FLOW),
                    ),
                )
            )
            for link in ("windows", "doors", "skylights"):
                for opening in self.elements[stands].links[link].refs if link in self.elements[stands].links else ():
                    groups[room].append(self.opening(opening))
        if not groups:
            return None
        return _with_units(
            "surfaces",
            "Heat loss by surface at the winter design condition",
            ("Surface", "built as", "net area", "U before", "U after", "before", "after"),
            tuple((room, tuple(rows)) for room, rows in groups.items()),
            ("Areas are inside areas; of drawn rooms they follow from the rectangles.",),
            detailed=True,
        )

    def surface_name(self, ref: Ref) -> str:
        """A surface by what it is: its id without that of its room."""
        members = self.elements[ref].links.get("room")
        room = members.refs[0].id if members and members.refs else ""
        return label(ref.id.removeprefix(f"{room}-").replace("-", " "))

    def built_as(self, ref: Ref) -> str:
        """The assembly of a surface."""
        members = self.elements[ref].links.get("assembly")
        return members.refs[0].id if members and members.refs else UNKNOWN

    def opening(self, ref: Ref) -> Row:
        """A window, door or skylight of a surface."""
        before, after = self.both(ref)
        return Row(
            f"{ref.kind} {ref.id}",
            (
                "",
                self.shown(after or before, "unit_area", D.AREA),
                self.shown(before, "u_factor", D.U_FACTOR),
                self.shown(after, "u_factor", D.U_FACTOR),
                self.shown(before, "heat_loss", D.HEAT_FLOW),
                self.shown(after, "heat_loss", D.HEAT_FLOW),
            ),
        )

    # Ducts.

    def ducts(self) -> Sheet | None:
        """The schedule of ducts: from the blower outward."""
        runs = self.kind("duct")
        if not runs:
            return None
        groups = []
        for role, title in (("supply", "Supplies"), ("return", "Returns"), (None, "Not told which")):
            rows = [
                self.duct(known, depth)
                for known, depth in _outward(runs)
                if (self.value(known.ref, "role") or None) == role
            ]
            if rows:
                groups.append((title, tuple(rows)))
        return _with_units(
            "ducts",
            "Ducts",
            ("Run", "serves", "size", "to carry", "can carry", "speed", "loses", "round needed"),
            tuple(groups),
            tuple(self.duct_basis()),
            spare=("loses", "speed"),
        )

    def duct(self, known: Known, depth: int) -> Row:
        """The row of a run."""
        ref = known.ref
        return Row(
            "  " * depth + self.name(ref),
            (
                self.serves(known),
                self.size(ref),
                self.shown(ref, "airflow", D.AIRFLOW),
                self.shown(ref, "airflow_carried", D.AIRFLOW),
                self.shown(ref, "air_velocity", D.VELOCITY),
                self.shown(ref, "pressure", D.AIR_PRESSURE),
                self.shown(ref, "diameter_needed", D.LENGTH),
            ),
        )

    def serves(self, known: Known) -> str:
        """Where a run ends."""
        for link in ("room", "level"):
            members = known.links.get(link)
            if members and members.refs:
                return members.refs[0].id
        return ""

    def size(self, ref: Ref) -> str:
        """The section of a run."""
        if self.value(ref, "shape") == "round":
            return self.shown(ref, "diameter", D.LENGTH)
        if self.value(ref, "width") is None:
            return UNKNOWN
        sides = [self.shown(ref, side, D.LENGTH) for side in ("width", "height")]
        return " × ".join([sides[0].removesuffix(" in"), sides[1]])

    def duct_basis(self) -> Iterator[str]:
        """What the schedule rests on."""
        for known in self.kind("heater"):
            ref = known.ref
            airflow = self.shown(ref, "system_airflow", D.AIRFLOW)
            origin = self.value(ref, "system_airflow_from")
            left = self.shown(ref, "duct_pressure", D.AIR_PRESSURE)
            way = self.shown(ref, "longest_way", D.LENGTH)
            rate = self.shown(ref, "friction_rate", D.FRICTION_RATE)
            yield (
                f"{self.name(ref).capitalize()}: airflow {airflow}" + (f" ({origin})" if origin else "") + f"; "
                f"pressure left for ducts {left} over a longest way of {way}, so {rate}."
            )
        yield "Each room's air is its share of the heat loss; a run can carry what that friction allows."


def _outward(runs: list[Known]) -> Iterator[tuple[Known, int]]:
    """Runs in the order in which the air passes them, with how many lie before each."""
    by_ref = {known.ref: known for known in runs}
    feeds: dict[Ref | None, list[Known]] = {}
    for known in runs:
        members = known.links.get("fed_by")
        before = members.refs[0] if members and members.refs and members.refs[0] in by_ref else None
        feeds.setdefault(before, []).append(known)

    def follow(before: Ref | None, depth: int) -> Iterator[tuple[Known, int]]:
        for known in feeds.get(before, ()):
            yield known, depth
            yield from follow(known.ref, depth + 1)

    yield from follow(None, 0)


def _with_units(
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
