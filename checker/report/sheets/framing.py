"""Sheets of the frame: the span schedule, the load take-down, footings, roofs."""

from __future__ import annotations

from collections.abc import Iterator

from checker.facts import Ref, Value
from checker.report.sheets.sheet import UNKNOWN, D, Reading, Row, Sheet, with_units
from checker.ruleset.timber import STANDARD
from checker.units import show

_USES = ("bending_use", "shear_use", "live_deflection_ratio")


class FramingSheets(Reading):
    """Sheets of the frame."""

    def spans(self) -> Sheet | None:
        """The span schedule: every member that is checked as a beam, after the work."""
        rows: dict[str, list[Row]] = {}
        for ref in self.every("member"):
            _, after = self.both(ref)
            role = self.value(after, "role") if after else None
            if after is None or role in ("post", "stud", "ridge board"):
                continue
            rows.setdefault(_heading(role), []).append(self.member(after))
        if not rows:
            return None
        return with_units(
            "spans",
            "Span schedule",
            ("Member", "size", "span", "may span", "bending", "shear", "defl.", "limit", "needs Fb", "governs"),
            tuple((role, tuple(those)) for role, those in rows.items()),
            tuple(self.spans_basis()),
            spare=("governs", "shear", "limit"),
        )

    def member(self, ref: Ref) -> Row:
        """The row of a member."""
        governs, combination = self.value(ref, "governs"), self.value(ref, "combination")
        return Row(
            self.name(ref),
            (
                self.section(ref),
                self.shown(ref, "span", D.LENGTH),
                self.whole_span(ref),
                self.percent(ref, "bending_use"),
                self.percent(ref, "shear_use"),
                self.ratio(ref, "live_deflection_ratio"),
                self.ratio(ref, "deflection_limit"),
                self.shown(ref, "bending_needed", D.STRESS),
                f"{governs}, {combination}" if governs else UNKNOWN,
            ),
        )

    def section(self, ref: Ref) -> str:
        """Plies and size of a member, the nominal one where the plan has it."""
        plies, size = self.value(ref, "plies"), self.value(ref, "size")
        if size is None:
            width, depth = (self.shown(ref, name, D.LENGTH) for name in ("ply_width", "actual_depth"))
            if UNKNOWN in (width, depth):
                return UNKNOWN
            size = " × ".join(side.removesuffix(" in").removesuffix(" mm") for side in (width, depth))
        return f"({int(plies)}) {size}" if isinstance(plies, int | float) and plies > 1 else str(size)

    def whole_span(self, ref: Ref) -> str:
        """The greatest span, in whole inches or centimetres below it, as span tables print theirs."""
        value = self.value(ref, "allowable_span")
        if not isinstance(value, float):
            return UNKNOWN
        step = 0.0254 if self.result.units == "us" else 0.01
        return show(int(value / step + 1e-6) * step, D.LENGTH, self.result.units)

    def percent(self, ref: Ref, name: str) -> str:
        """A use as a percentage without decimals."""
        value = self.value(ref, name)
        if not isinstance(value, float):
            return "?"
        # What passes its limit by little must not read as 100 %.
        return f"{100 * value:.{1 if 1.0 < value < 1.005 else 0}f} %"

    def ratio(self, ref: Ref, name: str) -> str:
        """A span over a deflection, as drawings write it."""
        value = self.value(ref, name)
        return f"L/{value:.0f}" if isinstance(value, float) else "?"

    def spans_basis(self) -> Iterator[str]:
        """What the spans rest on."""
        standards = {entry.title: entry for entry in self.result.adopted.catalogue.get(STANDARD, {}).values()}
        for title, entry in standards.items():
            document = entry.cite.partition(",")[0]
            yield f"{title} ({document}), every combination of loads; clear spans, held at both ends."
        yield (
            "“Needs Fb”: the least reference bending value that would do, for members whose grade nobody "
            "knows. Percentages are demand over capacity; a question mark stands for what is not known."
        )
        yield (
            "Simple spans only: what continues over a support, cantilevers with a load at their end, and members that "
            "brace or hang are for a licensed engineer."
        )

    def take_down(self) -> Sheet | None:
        """The load take-down, storey by storey."""
        groups: dict[str, list[Row]] = {}
        for ref in self.downward():
            before, after = self.both(ref)
            groups.setdefault(self.storey(after or before or ref), []).append(
                Row(
                    self.name(after or before or ref),
                    (
                        self.shown(after, "dead_total", D.LINE_LOAD),
                        self.shown(after, "live_total", D.LINE_LOAD),
                        self.roof(after),
                        self.shown(before, "service_load", D.LINE_LOAD),
                        self.shown(after, "service_load", D.LINE_LOAD),
                        self.added(after),
                    ),
                )
            )
        if not groups:
            return None
        share = self.result.adopted.assumptions.get("companion_share")
        both = f"{100 * float(share.value):.0f} %" if share and isinstance(share.value, float) else ""
        return with_units(
            "take-down",
            "Load take-down along bearing lines",
            ("Line", "dead", "floors", "roof", "all before", "all after", "added"),
            tuple((storey, tuple(rows)) for storey, rows in groups.items()),
            (
                "At the foot of each line, with all that stands on it. All: the greatest of dead and floors, dead and "
                f"roof, and dead with {both} of both. Roof: snow or roof live load, the greater.",
            ),
        )

    def downward(self) -> list[Ref]:
        """Bearing lines from the top: each after those that stand on it."""
        depths: dict[Ref, int] = {}

        def depth_of(ref: Ref) -> int:
            if ref not in depths:
                found = 0
                for state in self.both(ref):
                    members = self.elements[state].links.get("lines_above") if state else None
                    for above in members.refs if members else ():
                        found = max(found, 1 + depth_of(above._replace(state="after")))
                depths[ref] = found
            return depths[ref]

        return sorted(self.every("bearing-line"), key=depth_of)

    def storey(self, ref: Ref) -> str:
        """The level of a line."""
        members = self.elements[ref].links.get("level")
        return self.name(members.refs[0]) if members and members.refs else "Storey not told"

    def roof(self, ref: Ref | None) -> str:
        """Snow or roof live load along a line, the greater."""
        if ref is None or ref not in self.elements:
            return "–"
        values = [self.value(ref, name) for name in ("snow_total", "roof_live_total")]
        if not all(isinstance(value, float | int) for value in values):
            return UNKNOWN
        name = "snow_total" if values[0] >= values[1] else "roof_live_total"  # type: ignore[operator]
        return self.shown(ref, name, D.LINE_LOAD)

    def added(self, ref: Ref | None) -> str:
        """The part that the work adds."""
        value = self.value(ref, "load_added") if ref and ref in self.elements else None
        return f"{round(100 * value):+d} %" if isinstance(value, float) else "–"

    def footings(self) -> Sheet | None:
        """Footings with what the soil carries."""
        rows = []
        for ref in self.every("footing"):
            before, after = self.both(ref)
            if after is None:
                continue
            rows.append(
                Row(
                    self.name(after),
                    (
                        self.shown(after, "width", D.LENGTH),
                        self.shown(before, "soil_pressure", D.PRESSURE),
                        self.shown(after, "soil_pressure", D.PRESSURE),
                        self.shown(after, "allowable_bearing", D.PRESSURE),
                        self.shown(after, "width_needed", D.LENGTH),
                        self.added(after),
                    ),
                )
            )
        if not rows:
            return None
        return with_units(
            "footings",
            "Footings",
            ("Footing", "width", "soil before", "soil after", "allowed", "width needed", "added"),
            (("", tuple(rows)),),
            ("Pressure of the load alone: footing and soil over it are left out on both sides.",),
        )

    def thrust(self, ref: Ref | None) -> str:
        """The thrust of a plane whose ridge carries nothing."""
        carried = ref is not None and self.value(ref, "ridge") in ("beam", "bearing wall")
        return "–" if carried else self.shown(ref, "thrust", D.FORCE)

    def roofs(self) -> Sheet | None:
        """Roof planes with their geometry."""
        rows = []
        for ref in self.every("roof-plane"):
            before, after = self.both(ref)
            rows.append(
                Row(
                    self.name(after or before or ref),
                    (
                        self.shown(before, "pitch", D.SLOPE),
                        self.shown(after, "pitch", D.SLOPE),
                        self.shown(after, "ridge_height", D.LENGTH),
                        self.shown(after, "rafter_length", D.LENGTH),
                        self.shown(after, "plumb_cut", D.LENGTH),
                        self.shown(after, "headroom_gained", D.LENGTH, ""),
                        self.shown(after, "snow_load", D.PRESSURE),
                        self.thrust(after),
                    ),
                )
            )
        if not rows:
            return None
        return with_units(
            "roofs",
            "Roof planes",
            ("Plane", "pitch before", "after", "ridge over plate", "rafter", "plumb cut", "gained", "snow", "thrust"),
            (("", tuple(rows)),),
            (
                "Gained: height under the slope in the middle of its run, against before.",
                "Thrust: of each rafter at the plate, where neither a beam nor a wall carries the ridge.",
            ),
            spare=("plumb cut", "rafter"),
        )


def _heading(role: Value | None) -> str:
    """What members of a role are called together."""
    if role is None:
        return "Not told what they do"
    return "Hips and valleys" if role == "hip or valley" else f"{role}s".capitalize()
