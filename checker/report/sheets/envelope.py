"""Sheets of the envelope: assemblies, heat loss by room and by surface, before and after the work."""

from __future__ import annotations

from collections.abc import Iterator

from checker.facts import Ref
from checker.findings.words import label
from checker.report.sheets.sheet import UNKNOWN, D, Reading, Row, Sheet, with_units
from checker.units import show


class EnvelopeSheets(Reading):
    """Sheets of the envelope."""

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
        return with_units(
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
        return with_units(
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
        return with_units(
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
