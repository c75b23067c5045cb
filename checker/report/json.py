"""The report as JSON. Fields are only ever added; `schema` counts changes that would break a reader of it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from checker.facts import Calculation, Item, Ref
from checker.findings.finding import VERDICTS, Because, Finding, MissingItem, Result
from checker.findings.words import entry_value, label
from checker.problems import Place
from checker.report.arrange import NOT_AN_APPROVAL, arrange
from checker.report.sheets import sheets_of
from checker.ruleset.adopted import Applied
from checker.ruleset.choices import SEVERITIES

SCHEMA = 1


class _Data(BaseModel):
    model_config = ConfigDict(extra="forbid", populate_by_name=True, defer_build=True)


class Where(_Data):
    """A place in a file; line and column count from 1."""

    file: str
    line: int
    column: int


class ElementData(_Data):
    """An element in one state."""

    kind: str
    id: str
    state: Literal["before", "after"]


class BecauseData(_Data):
    """A value that a verdict rests on."""

    element: ElementData
    attribute: str
    value: Any
    """SI value, choice or truth."""
    unit: str
    shown: str
    origin: Literal["stated", "computed", "inferred"]
    how: str
    behind: bool
    """Whether it settles a conclusion that the rule reads, rather than the rule itself."""
    where: Where | None


class NeedData(_Data):
    """Something that is not known."""

    element: ElementData
    attribute: str


class AmendmentData(_Data):
    """A local amendment."""

    ruleset: str
    target: str
    what: str
    base: str
    now: str
    cite: str
    reason: str
    where: Where


class FindingData(_Data):
    """One rule on one element."""

    key: str
    """Rule, element and state: the same finding has the same key in every report."""
    rule: str
    title: str
    trade: str
    elements: list[ElementData]
    state: Literal["before", "after"]
    verdict: Literal["does not meet", "cannot tell", "excused", "meets", "does not apply"]
    severity: Literal["danger", "correction", "advice"]
    says: str
    because: list[BecauseData]
    limit: str
    margin: str
    needs: list[NeedData]
    needs_to_apply: list[NeedData]
    needs_for_excuse: list[NeedData]
    cite: str
    base_cite: str
    amended_by: list[AmendmentData]
    excused: str
    rests_on: list[str]
    beyond_table: bool
    remedy: str
    caution: str
    decides: str
    authority: str
    sheet: str
    stage: str
    """Stage at which it is due."""
    due_now: bool
    in_scope: bool
    where: Where | None


class MissingData(_Data):
    """A plan line that is not there."""

    element: ElementData
    attribute: str
    asks: str
    write: str
    severity: Literal["danger", "correction", "advice"]
    sheets: list[str]
    authorities: list[str]
    stage: str
    due_now: bool
    perhaps: bool
    """Whether it is needed only if checks apply that other missing items decide on."""
    waiting: list[str]
    """Keys of the findings that wait for it."""
    where: Where | None


class InputData(_Data):
    """A number that went into a calculation."""

    symbol: str
    element: ElementData | None
    attribute: str
    value: Any
    shown: str
    assumption: str
    entry: str


class CalculationData(_Data):
    """A value that was computed."""

    element: ElementData
    attribute: str
    function: str
    inputs: list[InputData]
    result: Any
    unit: str
    shown: str


class AssumptionData(_Data):
    """A value that the ruleset assumes."""

    name: str
    title: str
    value: Any
    unit: str
    cite: str
    amended: bool


class RulesetData(_Data):
    """A set in force."""

    name: str
    title: str
    document: str
    edition: str
    since: str


class SuspendedData(_Data):
    """A rule that the jurisdiction does not enforce."""

    rule: str
    title: str
    severity: str
    cite: str
    reason: str


class PlanData(_Data):
    """The plan that was checked."""

    title: str
    file: str
    units: Literal["us", "metric"]
    stage: str
    scope: list[str]


class Summary(_Data):
    """Counts by verdict, and by severity within it; those outside the scope, dangers excepted, are counted apart."""

    sentence: str
    verdicts: dict[str, dict[str, int]]
    missing: int
    not_due_yet: int
    outside_scope: int
    exit_status: Literal[0, 1, 3]


class CautionData(_Data):
    """The usual caution of a trade."""

    trade: str
    says: str


class SheetRowData(_Data):
    """A row of a calculation sheet."""

    group: str
    name: str
    cells: list[str]


class SheetData(_Data):
    """A calculation sheet, as it is printed."""

    key: str
    title: str
    columns: list[str]
    units: list[str]
    """Of each column after the first; "" where its cells have units of their own or none."""
    rows: list[SheetRowData]
    lines: list[str]


class Report(_Data):
    """What a check of one plan found. It is no approval; local code governs."""

    schema_: int = Field(alias="schema")
    not_an_approval: str
    plan: PlanData
    rulesets: list[RulesetData]
    amendments: list[AmendmentData]
    suspended: list[SuspendedData]
    notes: list[str]
    summary: Summary
    findings: list[FindingData]
    """Without what meets or does not apply, unless all was asked for."""
    missing: list[MissingData]
    calculations: list[CalculationData]
    sheets: list[SheetData]
    assumptions: list[AssumptionData]
    cautions: list[CautionData]


class Reports(_Data):
    """What a check of several plans found."""

    schema_: int = Field(alias="schema")
    reports: list[Report]


def json_text(results: Result | list[Result], *, everything: bool = False) -> str:
    """The report of one plan, or of several, as JSON text."""
    if isinstance(results, Result):
        model: BaseModel = report_of(results, everything=everything)
    else:
        model = Reports(schema_=SCHEMA, reports=[report_of(each, everything=everything) for each in results])
    return json.dumps(model.model_dump(by_alias=True), ensure_ascii=False, indent=2) + "\n"


def report_of(result: Result, *, everything: bool = False) -> Report:
    """The report of one plan as data. everything: with what meets and what does not apply."""
    adopted = result.adopted
    arranged = arrange(result)
    kept = [each for each in result.findings if everything or each.verdict not in ("meets", "does not apply")]
    return Report(
        schema_=SCHEMA,
        not_an_approval=NOT_AN_APPROVAL,
        plan=PlanData(
            title=result.plan, file=result.file, units=result.units, stage=result.stage, scope=list(result.scope)
        ),
        rulesets=[
            RulesetData(
                name=each.name, title=each.title, document=each.document, edition=each.edition, since=each.since
            )
            for each in adopted.sets
        ],
        amendments=[_amendment(each) for each in adopted.amendments],
        suspended=[
            SuspendedData(rule=each.rule, title=each.title, severity=each.severity, cite=each.cite, reason=each.reason)
            for each in adopted.suspended
        ],
        notes=list(arranged.notes),
        summary=_summary(result, arranged.sentence),
        findings=[_finding(each) for each in kept if everything or each.listed],
        missing=[_missing(each) for each in result.missing],
        calculations=list(_calculations(result)),
        sheets=[
            SheetData(
                key=each.key,
                title=each.title,
                columns=list(each.columns),
                units=list(each.units),
                rows=[
                    SheetRowData(group=group, name=row.name.strip(), cells=list(row.cells))
                    for group, rows in each.groups
                    for row in rows
                ],
                lines=list(each.lines),
            )
            for each in sheets_of(result)
        ],
        assumptions=list(_assumptions(result)),
        cautions=[CautionData(trade=trade, says=says) for trade, says in arranged.cautions],
    )


def _where(place: Place | None) -> Where | None:
    return Where(file=place.file, line=place.line, column=place.column) if place else None


def _portable(file: str) -> str:
    """The name of a ruleset's file without the folders of this machine."""
    path = Path(file)
    return Path(*path.parts[-2:]).as_posix() if path.is_absolute() else file


def _element(ref: Ref) -> ElementData:
    return ElementData(kind=ref.kind, id=ref.id, state=ref.state)


def _need(item: Item) -> NeedData:
    return NeedData(element=_element(item.ref), attribute=item.name)


def _amendment(applied: Applied) -> AmendmentData:
    return AmendmentData(
        ruleset=applied.ruleset,
        target=applied.target,
        what=applied.what,
        base=applied.base,
        now=applied.now,
        cite=applied.cite,
        reason=applied.reason,
        where=Where(file=_portable(applied.place.file), line=applied.place.line, column=applied.place.column),
    )


def _because(because: Because) -> BecauseData:
    return BecauseData(
        element=_element(because.item.ref),
        attribute=because.item.name,
        value=because.value,
        unit=because.unit,
        shown=because.shown,
        origin=because.origin,
        how=because.how,
        behind=because.behind,
        where=_where(because.place),
    )


def _finding(found: Finding) -> FindingData:
    amended = found.amended_by
    return FindingData(
        key=found.key,
        rule=found.rule,
        title=found.title,
        trade=found.trade,
        elements=[_element(ref) for ref in found.elements],
        state=found.subject.state,
        verdict=found.verdict,
        severity=found.severity,
        says=found.says,
        because=[_because(each) for each in found.because],
        limit=found.limit,
        margin=found.margin,
        needs=[_need(each) for each in found.needs],
        needs_to_apply=[_need(each) for each in found.needs_to_apply],
        needs_for_excuse=[_need(each) for each in found.needs_for_excuse],
        cite=f"{amended[-1].cite}, amending {found.cite}" if amended else str(found.cite or ""),
        base_cite=str(found.cite or ""),
        amended_by=[_amendment(each) for each in amended],
        excused=f"{found.excused} ({found.excuse_cite})" if found.excused else "",
        rests_on=list(found.rests_on),
        beyond_table=found.beyond_table,
        remedy=found.remedy,
        caution=found.caution,
        decides=found.decides,
        authority=found.authority,
        sheet=found.sheet,
        stage=found.due,
        due_now=found.due_now,
        in_scope=found.in_scope,
        where=_where(found.place),
    )


def _missing(missing: MissingItem) -> MissingData:
    return MissingData(
        element=_element(missing.item.ref),
        attribute=missing.item.name,
        asks=missing.asks,
        write=missing.write,
        severity=missing.severity,
        sheets=list(missing.sheets),
        authorities=list(missing.authorities),
        stage=missing.due,
        due_now=missing.due_now,
        perhaps=missing.perhaps,
        waiting=list(missing.waiting),
        where=_where(missing.place),
    )


def _summary(result: Result, sentence: str) -> Summary:
    verdicts: dict[str, dict[str, int]] = {
        verdict: {
            severity: sum(
                1
                for each in result.findings
                if (each.verdict, each.severity) == (verdict, severity) and (each.in_scope or severity == "danger")
            )
            for severity in SEVERITIES
        }
        for verdict in VERDICTS
    }
    return Summary(
        sentence=sentence,
        verdicts=verdicts,
        missing=sum(1 for each in result.missing if each.due_now and not each.perhaps),
        not_due_yet=sum(1 for each in result.missing if not each.due_now),
        outside_scope=sum(
            1
            for each in result.findings
            if not (each.in_scope or each.severity == "danger") and each.verdict in VERDICTS[:2]
        ),
        exit_status=result.exit_status,
    )


def _calculations(result: Result) -> Iterable[CalculationData]:
    from checker.findings.words import Sentences
    from checker.glossary import glossary

    words = glossary().with_conclusions(result.adopted.conclusions)
    sentences = Sentences(result.facts, words, result.units)
    for ref, known in sorted(result.facts.elements.items()):
        for name, fact in sorted(known.values.items()):
            calculation = fact.calculation or fact.computed
            if calculation is None:
                continue
            attribute = words.kinds[ref.kind].attributes[name]
            yield CalculationData(
                element=_element(ref),
                attribute=name,
                function=calculation.function.removeprefix("checker."),
                inputs=list(_inputs(calculation, sentences, result)),
                result=calculation.result,
                unit=attribute.dimension.si_unit if attribute.dimension else "",
                shown=sentences.value(Item(ref, name), calculation.result),
            )


def _inputs(calculation: Calculation, sentences: Any, result: Result) -> Iterator[InputData]:
    for each in calculation.inputs:
        if each.entry:
            shown = f"{entry_value(each, result.units)} of {each.entry}"
        elif each.item is not None:
            shown = sentences.value(each.item, each.value)
        else:
            shown = f"{label(each.assumption)} as assumed"
        yield InputData(
            symbol=each.symbol,
            element=_element(each.item.ref) if each.item else None,
            attribute=each.item.name if each.item else "",
            value=each.value,
            shown=shown,
            assumption=each.assumption,
            entry=each.entry,
        )


def _assumptions(result: Result) -> Iterator[AssumptionData]:
    from checker.units import Dimension

    for each in result.adopted.assumptions.values():
        yield AssumptionData(
            name=each.name,
            title=each.title,
            value=each.value,
            unit=Dimension(each.dimension).si_unit if each.dimension else "",
            cite=str(each.cite),
            amended=bool(each.amended_by),
        )
