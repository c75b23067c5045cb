"""The report as text for a terminal: readable at 80 columns and without colour."""

from __future__ import annotations

from typing import TextIO

from rich.console import Console
from rich.text import Text

from checker.facts import Ref
from checker.findings.finding import Because, Result
from checker.findings.words import element_name, label
from checker.problems import visible
from checker.report.arrange import NOT_AN_APPROVAL, Group, Numbered, Reader, Together, arrange, count, together
from checker.report.sheets import Sheet, sheets_of

_INDENT = 5
_FEW_ASSUMED = 4
_STYLE = {"danger": "bold red", "correction": "bold", "advice": "dim"}


def print_report(
    result: Result, reader: Reader, *, everything: bool = False, file: TextIO | None = None, width: int | None = None
) -> None:
    """Print a result.

    reader: whose order it takes; everything: what meets too; file: where to, standard output if None; width: columns.
    """
    console = Console(file=file, width=width, highlight=False, soft_wrap=False, markup=False, emoji=False)
    if console.width > 100:
        console.width = 100
    printer = _Printer(console, result)
    printer.report(reader, everything)
    # One call for all lines: rich takes longer to begin a print than to write a line.
    console.print(Text("\n").join(printer.lines), no_wrap=True, overflow="ignore", crop=False)


class _Printer:
    def __init__(self, console: Console, result: Result) -> None:
        self.console = console
        self.result = result
        self.lines: list[Text] = []

    def line(self, text: str | Text = "", indent: int = 0, style: str = "", hang: int = 0) -> None:
        """A paragraph, indented; lines after the first hang further in."""
        text = Text(_printable(text), style=style) if isinstance(text, str) else text
        if not text.plain:
            self.lines.append(text)
            return
        for number, piece in enumerate(text.wrap(self.console, max(20, self.console.width - indent - hang))):
            piece.rstrip()
            self._put(Text.assemble(" " * (indent + (hang if number else 0)), piece))

    def _put(self, line: Text) -> None:
        if not line.plain.isprintable():
            line = Text(_printable(line.plain))
        self.lines.append(line)

    def labelled(self, word: str, text: str) -> None:
        """A short word in the margin and a paragraph that hangs beside it."""
        hang = _INDENT + 9
        for number, piece in enumerate(Text(_printable(text)).wrap(self.console, max(20, self.console.width - hang))):
            head = f"{'':{_INDENT}}{word if number == 0 else '':9}"
            piece.rstrip()
            self._put(Text.assemble((head, "dim"), piece))

    def report(self, reader: Reader, everything: bool) -> None:
        arranged = arrange(self.result, reader, everything=everything)
        self.line(arranged.title, style="bold")
        self.line(f"{self.result.file}  ·  judged by {'; '.join(arranged.basis)}")
        self.line()
        self.line(arranged.sentence, style="bold")
        for note in arranged.notes:
            self.line(f"Note: {note}")
        for group in arranged.groups:
            self.group(group, reader)
        self.untold()
        for sheet in sheets_of(self.result):
            if everything or not sheet.detailed:
                self.sheet(sheet)
        self.rest(arranged.clear, arranged.outside)
        if arranged.cautions:
            self.heading("Cautions")
            for trade, text in arranged.cautions:
                self.line(f"{trade}: {text}", 2)
        self.heading("What this is not")
        for text in (*arranged.closing, NOT_AN_APPROVAL):
            self.line(text, 2)

    def heading(self, title: str, lead: str = "") -> None:
        self.line()
        rule = "─" * max(3, self.console.width - len(title) - 4)
        self._put(Text.assemble((f"── {title} ", "bold"), (rule, "dim")))
        if lead:
            self.line(lead, style="dim")

    def group(self, group: Group, reader: Reader) -> None:
        perhaps = sum(1 for each in group.missing if each.perhaps)
        size = len(group.findings) + len(group.missing) - perhaps
        self.heading(f"{group.title} ({size}{f', and perhaps {perhaps}' if perhaps else ''})", group.lead)
        before = ""
        for each in group.findings:
            rule = each.finding.rule
            if each.finding.severity == "advice" and rule == before:
                self.once_more(each)
            else:
                self.finding(each, reader)
            before = rule
        for lacking in together(group.missing):
            self.missing(lacking)

    def once_more(self, numbered: Numbered) -> None:
        """Advice by the rule of the finding before it: only of what, and what was found."""
        found = numbered.finding
        where = f" (line {found.place.line})" if found.place else ""
        head = Text.assemble((f"{numbered.number:>3}. ", "bold"), (f"{element_name(found.subject)}: ", "dim"))
        head.append(f"{found.says}{where}")
        self.line(head, hang=_INDENT)

    def finding(self, numbered: Numbered, reader: Reader) -> None:
        found = numbered.finding
        self.line()
        head = Text.assemble(
            (f"{numbered.number:>3}. ", "bold"),
            (f"{found.title}, {element_name(found.subject)}", _STYLE[found.severity]),
        )
        if reader == "reviewer" and found.severity == "danger":
            head.append(" — danger")
        self.line(head, hang=_INDENT)
        margin = f" ({found.margin})" if found.margin and found.verdict == "does not meet" else ""
        self.line(f"{found.says}{margin}", _INDENT)
        if found.excused:
            self.labelled("excused", f"{found.excused.replace('-', ' ')} — {found.excuse_cite}")
        direct = [each for each in found.because if not each.behind]
        for each in direct[:5]:
            self.labelled("because", because_words(each, found.subject == each.item.ref))
        if found.cite:
            self.labelled("by", f"{found.cite}; {found.rule}")
        for amendment in found.amended_by:
            now = (
                f"{amendment.what}: {amendment.base} → {amendment.now}"
                if amendment.base
                else f"{amendment.what}: {amendment.now}"
            )
            self.labelled("amended", f"{amendment.cite}: {now}")
        if found.rests_on:
            self.labelled("assumed", assumed_words(found.rests_on))
        if found.remedy and (reader == "contractor" or found.severity == "danger"):
            self.labelled("mend", found.remedy)
        if found.caution:
            self.labelled("care", found.caution)
        where = f"plan line {found.place.line}" if found.place else ""
        self.labelled("decides", " · ".join(part for part in (found.decides, found.sheet, where) if part))

    def missing(self, group: Together) -> None:
        """Elements that lack the same lines, and the lines."""
        self.line()
        names = ", ".join(f"{element_name(ref)}{self._where(ref)}" for ref in group.refs)
        self.line(Text.assemble(("   ▪ ", "bold"), (names, "bold")), hang=_INDENT)
        perhaps = [each.item.name for each in group.items if each.perhaps]
        for each in (each for each in group.items if not each.perhaps):
            danger = ", danger" if each.severity == "danger" else ""
            waits = count(len(each.waiting), "check waits", "checks wait")
            self.line(f"{each.write}", _INDENT)
            due = "" if each.due_now else f"; due at {each.due}"
            self.line(f"{each.asks} — {waits}{danger}; {', '.join(each.sheets)}{due}", _INDENT + 2, "dim")
        if perhaps:
            self.line(f"these may settle it too, or be asked next: {', '.join(perhaps)}", _INDENT, "dim")

    def _where(self, ref: Ref) -> str:
        known = self.result.facts.elements.get(ref)
        return f" (line {known.place.line})" if known and known.place else ""

    def untold(self) -> None:
        """What cannot be told although nothing is missing, such as a size outside a table."""
        found = [each for each in self.result.of("cannot tell") if not each.needs]
        if not found:
            return
        lead = "The plan says enough, but the rule has no answer for this case. Ask who decides."
        self.heading(f"Cannot be told ({len(found)})", lead)
        for each in found:
            self.line()
            head = Text.assemble(("   ▪ ", "bold"), (f"{each.title}, {element_name(each.subject)}", "bold"))
            self.line(head, hang=_INDENT)
            self.line(each.says, _INDENT)
            self.labelled("by", f"{each.cite}; {each.rule}")
            where = f"plan line {each.place.line}" if each.place else ""
            self.labelled("decides", " · ".join(part for part in (each.decides, each.sheet, where) if part))

    def sheet(self, sheet: Sheet) -> None:
        """A calculation sheet, its columns as narrow as its cells; names wrap if the terminal is narrow."""
        self.heading(sheet.title)
        kept, widths, first, pad = _columns(sheet, self.console.width)
        heads, units = ([of[number] for number in kept] for of in (sheet.columns[1:], sheet.units))
        titles = pad.join(head.rjust(width) for head, width in zip(heads, widths, strict=True))
        self._put(Text(f"  {sheet.columns[0]:{first}}{pad}{titles}", style="dim"))
        if any(units):
            below = pad.join(unit.rjust(width) for unit, width in zip(units, widths, strict=True))
            self._put(Text(f"  {'':{first}}{pad}{below}", style="dim"))
        for title, those in sheet.groups:
            if title:
                self._put(Text(f"  {title}", style="bold"))
            for row in those:
                cells = pad.join(row.cells[number].rjust(width) for number, width in zip(kept, widths, strict=True))
                indent = row.name[: len(row.name) - len(row.name.lstrip())]
                pieces = Text(row.name.strip()).wrap(self.console, max(4, first - len(indent)))
                style = "bold" if row.level else ""
                for number, piece in enumerate(pieces):
                    piece.rstrip()
                    beside = f"{pad}{cells}" if number == 0 else ""
                    self._put(Text(f"  {indent + _printable(piece.plain):{first}}{beside}".rstrip(), style=style))
        for text in sheet.lines:
            self.line(text, 2, "dim")

    def rest(self, clear: tuple[tuple[str, int], ...], outside: int) -> None:
        if not clear and not outside:
            return
        self.heading("No conflict found")
        if clear:
            self.line("; ".join(f"{trade} {number}" for trade, number in clear) + "  (--all lists them)", 2)
        if outside:
            self.line(f"{count(outside, 'point')} outside this permit's scope not listed.", 2)


def _columns(sheet: Sheet, width: int) -> tuple[list[int], list[int], int, str]:
    """Columns of a sheet that a terminal has room for, how wide they are and that of the names, what stands between."""
    rows = [row for _, those in sheet.groups for row in those]
    cells = list(zip(*(row.cells for row in rows), strict=True))
    wide = [
        max(len(head), len(unit), *map(len, column))
        for head, unit, column in zip(sheet.columns[1:], sheet.units, cells, strict=True)
    ]
    names = max(12, *(len(row.name) for row in rows))
    kept = [number for number, column in enumerate(cells) if any(column)]
    for leave in ("", *sheet.spare):
        kept = [number for number in kept if sheet.columns[number + 1] != leave]
        needed = sum(wide[number] for number in kept) + names + 2
        if needed + len(kept) <= width:
            break
    gap = 2 if needed + 2 * len(kept) <= width else 1
    widths = [wide[number] for number in kept]
    return kept, widths, max(12, min(names, width - sum(widths) - gap * len(kept) - 2)), " " * gap


def _printable(text: str) -> str:
    """A text of a plan or ruleset without line ends and terminal controls."""
    return visible(text.replace("\n", " "))


def assumed_words(names: tuple[str, ...]) -> str:
    """The assumptions that a finding rests on, archetypes first, the rest counted where they are many."""
    ordered = sorted(map(label, names), key=lambda name: not name.startswith("archetype"))
    shown = max(_FEW_ASSUMED, sum(1 for name in ordered if name.startswith("archetype")))
    more = len(ordered) - shown
    return ", ".join(ordered[:shown]) + (f", and {more} more of the ruleset" if more > 0 else "")


def because_words(because: Because, own: bool) -> str:
    """One reason in words: whose value, how much, where from."""
    whose = "" if own else f" of {element_name(because.item.ref)}"
    origin = {"stated": "stated", "computed": "computed", "inferred": "inferred"}[because.origin]
    where = f", line {because.place.line}" if because.place and because.origin == "stated" else ""
    how = f" {because.how}" if because.how else ""
    return f"{label(because.item.name)}{whose} {because.shown} ({origin}{how}{where})"
