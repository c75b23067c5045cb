"""Calculation sheets: heat loss, ducts, spans, the load take-down.

Every sheet is plain text in rows, so that terminal, page and JSON show the same. What is not known says so.
"""

from checker.findings.finding import Result
from checker.report.sheets.ducts import DuctSheets
from checker.report.sheets.envelope import EnvelopeSheets
from checker.report.sheets.framing import FramingSheets
from checker.report.sheets.sheet import UNKNOWN, Row, Sheet


def sheets_of(result: Result) -> tuple[Sheet, ...]:
    """The sheets of a result; none for a trade of which the plan says nothing."""
    envelope, ducts, framing = EnvelopeSheets(result), DuctSheets(result), FramingSheets(result)
    made = (
        envelope.assemblies(),
        envelope.rooms(),
        envelope.surfaces(),
        ducts.ducts(),
        framing.spans(),
        framing.take_down(),
        framing.footings(),
        framing.roofs(),
    )
    return tuple(each for each in made if each is not None)


__all__ = ["UNKNOWN", "Row", "Sheet", "sheets_of"]
