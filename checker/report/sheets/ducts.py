"""The schedule of ducts, from the blower outward."""

from __future__ import annotations

from collections.abc import Iterator

from checker.facts import Known, Ref
from checker.report.sheets.sheet import UNKNOWN, D, Reading, Row, Sheet, with_units


class DuctSheets(Reading):
    """The schedule of ducts."""

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
        return with_units(
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
