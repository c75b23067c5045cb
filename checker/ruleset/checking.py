"""Checking what an adopted ruleset says: conditions, placeholders, tables, assumptions, conclusions."""

from __future__ import annotations

import string
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from checker.engine.conditions import ConditionReader, LookUp, Node, Path, TableShape
from checker.engine.program import CircleOfConclusions, Column, Program, TableRows
from checker.facts import Value
from checker.glossary import Glossary, Kind, glossary
from checker.problems import Place, Problem, cut, nearest
from checker.ruleset.adopted import (
    AdoptedAssumption,
    AdoptedExcuse,
    AdoptedRule,
    AdoptedSet,
    AdoptedTable,
    Applied,
    Citation,
)
from checker.ruleset.folders import RulesetFolder, Topic
from checker.ruleset.model import Assumption, Rule, Table
from checker.units import Dimension, QuantityError, example_for, parse

if TYPE_CHECKING:
    from checker.ruleset.adopting import RuleInForce

DEFAULT_JUDGED = ("new", "altered", "replaced", "moved", "reused")
AND_UP = "and up"
_WORDS = {"limit", "margin", "element"}


@dataclass(slots=True)
class SetInForce:
    """A set with its edition, and the names of the sets below it."""

    folder: RulesetFolder
    adopted: AdoptedSet
    adopts: set[str] = field(default_factory=set)


def conclusions_of(rules: list[RuleInForce], problems: list[Problem]) -> dict[tuple[str, str], str]:
    """The meaning of every conclusion."""
    kinds = glossary().kinds
    meanings: dict[tuple[str, str], str] = {}
    for each in rules:
        if not each.rule.concludes:
            continue
        key = (each.rule.for_, each.rule.concludes)
        kind = kinds.get(key[0])
        if kind and key[1] in (*kind.attributes, *kind.links):
            what = f"a {key[0]} already has “{key[1]}”: a conclusion needs a name of its own"
            problems.append(Problem(each.place(("concludes",)), what, "choose another"))
        meanings[key] = each.rule.meaning or meanings.get(key, "")
    for each in rules:
        if each.rule.concludes and not meanings[each.rule.for_, each.rule.concludes]:
            problems.append(Problem(each.place(("concludes",)), "a conclusion needs a meaning", "add `meaning:`"))
    return meanings


def check_rules(
    rules: list[RuleInForce],
    meanings: Mapping[tuple[str, str], str],
    tables: Mapping[str, AdoptedTable],
    problems: list[Problem],
) -> list[AdoptedRule]:
    """Read the conditions of every rule and check the rest of it; mistakes go to `problems`."""
    words = glossary().with_conclusions(meanings)
    shapes = {id_: table_shape(table) for id_, table in tables.items()}
    before = len(problems)
    checked = [adopted for each in rules if (adopted := _check_rule(each, words, shapes, problems))]
    for each, adopted in ((each, adopted) for each in rules for adopted in checked if adopted.id == each.id):
        problems += _look_ups(each, adopted, words, tables)
    if len(problems) == before:
        try:
            Program(
                words,
                tuple(rule.logic() for rule in checked),
                {id_: table.rows for id_, table in tables.items()},
            )
        except CircleOfConclusions as error:
            first = next(each for each in rules if (each.rule.for_, each.rule.concludes) == error.circle[0])
            problems.append(
                Problem(
                    first.place(("concludes",)),
                    f"conclusions go in a circle: {error}",
                    "break it at one of them",
                )
            )
    return checked


def table_shape(table: AdoptedTable) -> TableShape:
    """What conditions need to know of a table."""
    dimensions = table.dimensions
    return TableShape(
        {column.name: (column.form, _dimension(dimensions.get(column.name))) for column in table.rows.keys},
        {name: Dimension(str(dimensions[name])) for name in table.rows.values},
    )


def _look_ups(
    each: RuleInForce, rule: AdoptedRule, words: Glossary, tables: Mapping[str, AdoptedTable]
) -> Iterator[Problem]:
    """Cells of looked-up tables that no value of the attribute can ever match."""
    for top in (rule.when, rule.require, *(excuse.when for excuse in rule.excuses)):
        for node in top.walk():
            if not isinstance(node.argument, LookUp):
                continue
            rows = tables[node.argument.table].rows
            for index, column in enumerate(rows.keys):
                attribute = words.kinds[node.kind].attributes[dict(node.argument.keys)[column.name]]
                cells = {cells[index] for cells, _ in rows.rows}
                if attribute.form == "choice" and not cells <= set(attribute.choices):
                    strange = ", ".join(sorted(f"“{cell}”" for cell in cells - set(attribute.choices)))
                    right = f"choices: {', '.join(attribute.choices)}"
                    what = f"{rows.id} has cells that `{attribute.name}` never is: {strange}"
                    yield Problem(each.place(()), what, right)


def _dimension(name: str | None) -> Dimension | None:
    return Dimension(name) if name else None


def _check_rule(
    each: RuleInForce, words: Glossary, tables: Mapping[str, TableShape], problems: list[Problem]
) -> AdoptedRule | None:
    rule, data, before = each.rule, each.data, len(problems)
    kind = words.kinds.get(rule.for_)
    if kind is None:
        right = nearest(rule.for_, words.kinds) or f"kinds: {', '.join(words.kinds)}"
        problems.append(Problem(each.place(("for",)), f"there is no kind of element “{rule.for_}”", right))
        return None
    problems += _misfits(each)
    if len(problems) > before:
        return None
    forms = [name for name in ("require", "asks", "concludes") if name in data]
    if len(forms) != 1:
        what = f"{each.id} needs exactly one of require, asks, concludes"
        problems.append(Problem(each.place(()), what, "a rule does one thing"))
        return None
    reader = ConditionReader(words, tables, each.place, problems)
    when = reader.read(data.get("when"), rule.for_, ("when",))
    asking = ConditionReader(words, tables, each.place, problems, stated_allowed=True)
    require = (
        (asking if forms[0] == "asks" else reader).read(data.get(forms[0]), rule.for_, (forms[0],))
        if forms[0] != "concludes"
        else Node("all", rule.for_)
    )
    if forms[0] != "concludes":
        sound = len(problems) == before
        _check_judging_rule(each, data, require if sound else None, kind, words, problems)
    elif rule.except_ or "severity" in data:
        problems.append(
            Problem(each.place(()), "a rule that concludes has no severity and no exceptions", "remove them")
        )
    excuses = tuple(
        AdoptedExcuse(
            excuse["id"],
            excuse["cite"],
            excuse["known"],
            reader.read(excuse["when"], rule.for_, ("except", index, "when")),
        )
        for index, excuse in enumerate(data.get("except", ()))
    )
    if len(problems) > before:
        return None
    return AdoptedRule(
        id=each.id,
        title=rule.title,
        trade=rule.trade,
        kind=rule.for_,
        judges=tuple(rule.judges or DEFAULT_JUDGED),
        state=rule.state,
        when=when,
        require=require,
        excuses=excuses,
        concludes=rule.concludes or "",
        asks=forms[0] == "asks",
        severity=each.severity,
        says=data.get("says", ""),
        remedy=data.get("remedy", ""),
        caution=data.get("caution", ""),
        decides=data.get("decides", ""),
        sheet=rule.sheet or "",
        due=data.get("due", ""),
        cite=each.cite,
        amended_by=tuple(each.amended_by),
        note=rule.note or "",
        place=each.topic.document.place(each.path),
    )


def _misfits(each: RuleInForce) -> Iterator[Problem]:
    """What editions and amendments put where it cannot stand, such as a number for a sentence."""
    if not each.places:
        return
    try:
        Rule.model_validate(each.data)
    except ValidationError as error:
        for detail in error.errors(include_url=False):
            path = detail["loc"]
            expected = str(detail.get("ctx", {}).get("expected", "")).replace("'", "")
            what = f"`{'.'.join(map(str, path))}` cannot be “{cut(str(detail['input']))}”"
            yield Problem(each.place(path), what, f"one of: {expected}" if expected else "")


def _check_judging_rule(
    each: RuleInForce,
    data: dict[str, Any],
    require: Node | None,
    kind: Kind,
    words: Glossary,
    problems: list[Problem],
) -> None:
    for name in ("severity", "says", "decides", "sheet", "due"):
        if name not in data:
            problems.append(Problem(each.place(()), f"{each.id} needs `{name}:`", "add the line"))
    numeric = [node for node in require.walk() if node.is_numeric()] if require else []
    for name in ("says", "remedy"):
        for placeholder in placeholders(str(data.get(name, ""))):
            if placeholder is None:
                problems.append(Problem(each.place((name,)), f"`{name}` has a stray brace", "write {attribute}"))
            elif placeholder in ("limit", "margin"):
                if require and len(numeric) != 1:
                    what = (
                        f"{{{placeholder}}} needs exactly one numeric comparison in `require`; there are {len(numeric)}"
                    )
                    problems.append(Problem(each.place((name,)), what, "split the rule, or say it in words"))
            elif placeholder != "element":
                _check_placeholder(each, name, placeholder, kind, words, problems)


def placeholders(text: str) -> Iterator[str | None]:
    """The names in braces; None where the braces do not close."""
    try:
        for _, name, _, _ in string.Formatter().parse(text):
            if name is not None:
                yield name
    except ValueError:
        yield None


def _check_placeholder(
    each: RuleInForce, name: str, placeholder: str, kind: Kind, words: Glossary, problems: list[Problem]
) -> None:
    *links, attribute = placeholder.split(".")
    at = kind
    for link in links:
        if link not in at.links or not at.links[link].to_one:
            right = nearest(link, [one for one, each_link in at.links.items() if each_link.to_one])
            problems.append(
                Problem(each.place((name,)), f"{{{placeholder}}}: a {at.name} has no to-one link “{link}”", right)
            )
            return
        at = words.kinds[at.links[link].target]
    if attribute not in at.attributes:
        right = nearest(attribute, [*at.attributes, *_WORDS]) or f"see `dryfit glossary {at.name}`"
        problems.append(
            Problem(each.place((name,)), f"{{{placeholder}}}: a {at.name} has no attribute “{attribute}”", right)
        )


def check_table(
    id_: str,
    table: Table,
    topic: Topic,
    path: Path,
    cite: Citation,
    rows: list[Any] | None,
    rows_at: Place | None,
    problems: list[Problem],
) -> AdoptedTable | None:
    """Read the cells of a table, with the rows that amend it; refuse rows that overlap."""
    before = len(problems)
    dimensions: dict[str, str | None] = {}
    for section, columns in (
        ("keys", {name: key.of for name, key in table.keys.items()}),
        ("values", table.values),
    ):
        for name, of in columns.items():
            allowed = [
                *(each.value for each in Dimension),
                *(("choice", "flag") if section == "keys" else ()),
            ]
            if of not in allowed:
                problems.append(
                    Problem(
                        topic.document.place((*path, section, name)),
                        f"“{of}” is no dimension",
                        nearest(of, allowed),
                    )
                )
            dimensions[name] = of if of in [each.value for each in Dimension] else None
    if len(problems) > before:
        return None

    def place(index: int, *steps: str) -> Place:
        return rows_at or topic.document.place((*path, "rows", index, *steps))

    read: list[tuple[tuple[Any, ...], tuple[float, ...]]] = []
    source = rows if rows is not None else [row.model_dump() for row in table.rows]
    for index, row in enumerate(source):
        cells = tuple(
            _cell(row["when"].get(name), key.form, dimensions[name], place(index, "when", name), problems)
            for name, key in table.keys.items()
        )
        values = tuple(
            _number(row["gives"].get(name), dimensions[name], place(index, "gives", name), problems)
            for name in table.values
        )
        for extra in (*(set(row["when"]) - set(table.keys)), *(set(row["gives"]) - set(table.values))):
            known = [*table.keys, *table.values]
            problems.append(Problem(place(index), f"the table has no column “{extra}”", nearest(str(extra), known)))
        read.append((cells, values))
    if len(problems) > before:
        return None
    for index, (cells, _) in enumerate(read):
        for other, (other_cells, _) in enumerate(read[:index]):
            if all(_meet(one, two) for one, two in zip(cells, other_cells, strict=True)):
                problems.append(
                    Problem(
                        place(index),
                        f"row {index + 1} overlaps row {other + 1}",
                        "intervals run from, up to but not with",
                    )
                )
    columns_read = tuple(Column(name, key.form, key.exhaustive) for name, key in table.keys.items())
    return AdoptedTable(
        id_, table.title, TableRows(id_, columns_read, tuple(table.values), tuple(read)), cite, dimensions
    )


def _meet(one: Any, two: Any) -> bool:
    if isinstance(one, tuple):
        return bool(one[0] < two[1] and two[0] < one[1])
    return bool(one == two)


def _cell(value: Any, form: str, dimension: str | None, place: Place, problems: list[Problem]) -> Any:
    if form == "exact":
        if dimension is None and isinstance(value, str | bool):
            return value
        return _number(value, dimension, place, problems)
    if not isinstance(value, list) or len(value) != 2:
        problems.append(Problem(place, "an interval needs two ends: from, and up to but not with", "[3 ft, 5 ft]"))
        return (0.0, 0.0)
    low = _number(value[0], dimension, place, problems)
    high = 1e30 if value[1] == AND_UP else _number(value[1], dimension, place, problems)
    if low >= high:
        problems.append(Problem(place, "the interval ends before it starts", "[3 ft, 5 ft], or [5 ft, and up]"))
    return (low, high)


def _number(value: Any, dimension: str | None, place: Place, problems: list[Problem]) -> float:
    if dimension is None or isinstance(value, bool) or not isinstance(value, str | int | float):
        right = f"write: {example_for(Dimension(dimension))}" if dimension else "write one of the choices"
        problems.append(Problem(place, "a cell of the table is missing or of the wrong kind", right))
        return 0.0
    try:
        return parse(value, Dimension(dimension))
    except QuantityError as error:
        problems.append(Problem(place, error.what, error.right))
        return 0.0


def check_assumption(
    assumption: Assumption,
    topic: Topic,
    path: Path,
    cite: Citation,
    applied: list[Applied],
    problems: list[Problem],
) -> AdoptedAssumption | None:
    """Read the value of an assumption."""
    place = topic.document.place((*path, "value"))
    before = len(problems)
    value: Value
    if assumption.of == "choice":
        choices = assumption.choices or []
        if assumption.value not in choices:
            right = nearest(str(assumption.value), choices) or f"one of: {', '.join(choices)}"
            problems.append(Problem(place, f"“{assumption.value}” is none of the choices", right))
        value = str(assumption.value)
    elif assumption.of in [each.value for each in Dimension]:
        value = _number(assumption.value, assumption.of, place, problems)
    else:
        right = nearest(assumption.of, [*(each.value for each in Dimension), "choice"])
        problems.append(Problem(place, f"“{assumption.of}” is no dimension", right))
        return None
    if len(problems) > before:
        return None
    return AdoptedAssumption(
        assumption.name,
        assumption.title,
        "" if assumption.of == "choice" else assumption.of,
        value,
        cite,
        assumption.why or "",
        tuple(applied),
    )
