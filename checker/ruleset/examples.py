"""Running a ruleset's own examples: each rule alone, through the same compiler as everything else."""

from __future__ import annotations

import contextlib
import math
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from checker.engine.image import compiled
from checker.engine.program import Judgement, Program
from checker.engine.session import Session
from checker.facts import Fact, Facts, Known, Members, Ref, State, Value
from checker.glossary import Glossary, Kind, glossary
from checker.problems import Place, Problem, nearest
from checker.ruleset.adopted import Adopted, AdoptedRule, AdoptedTable
from checker.ruleset.adopting import adopt_edition
from checker.ruleset.folders import Library, RulesetFolder, Topic
from checker.ruleset.model import Example, Rule, Table, TableExample
from checker.units import Dimension, QuantityError, parse

EXPECTED: Mapping[str, Judgement] = {
    "meets": "meets",
    "fails": "fails",
    "cannot tell": "unsure",
    "excused": "excused",
    "does not apply": "na",
    "holds": "meets",
    "does not hold": "fails",
}
IN_WORDS: Mapping[str, str] = {
    "meets": "meets",
    "fails": "fails",
    "unsure": "cannot tell",
    "excused": "excused",
    "na": "does not apply",
    "": "is not judged",
}


@dataclass(frozen=True, slots=True)
class Tested:
    """How the examples of a ruleset went."""

    ruleset: str
    rules: int
    tables: int
    examples: int
    problems: tuple[Problem, ...]


def run_examples(folder: RulesetFolder, library: Library) -> Tested:
    """Check a ruleset in every edition and run every example. Raises Unreadable if it cannot be adopted."""
    editions = folder.head.editions or [""]
    adopted = {edition: adopt_edition(folder, library, edition) for edition in editions}
    problems: list[Problem] = []
    rules = tables = examples = 0
    for id_, rule, topic, index in folder.rules():
        rules += 1
        path = ("rules", index)
        newest = next((edition for edition in reversed(editions) if _rule_of(adopted[edition], id_)), None)
        if rule.draft:
            continue
        if newest is None:
            continue  # suspended by its own set's amendments
        in_force = _rule_of(adopted[newest], id_)
        assert in_force is not None
        problems += _coverage(rule, in_force, topic, path, adopted[newest])
        for number, example in enumerate(rule.examples):
            examples += 1
            edition = example.edition or newest
            at = (*path, "examples", number)
            of = _rule_of(adopted[edition], id_) if edition in adopted else None
            if of is None:
                where = topic.document.place((*at, "edition"))
                problems.append(
                    Problem(where, f"{id_} is not in edition “{edition}”", f"editions: {', '.join(editions)}")
                )
                continue
            problems += _run(of, example, topic, at, adopted[edition])
    for topic in folder.topics:
        for index, table in enumerate(topic.model.tables):
            tables += 1
            found = adopted[editions[-1]].tables.get(folder.full_id(topic, table.id))
            if found:
                examples += len(table.examples)
                problems += _run_table(found, table, topic, index)
    return Tested(folder.name, rules, tables, examples, tuple(problems))


def _rule_of(adopted: Adopted, id_: str) -> AdoptedRule | None:
    return next((rule for rule in adopted.rules if rule.id == id_), None)


def stated(example: Example) -> tuple[str, dict[str, Any]] | None:
    """The verdict that an example expects, with its facts; None if it does not give exactly one."""
    given = example.model_dump(by_alias=True, exclude={"edition", "note"}, exclude_none=True)
    return next(iter(given.items())) if len(given) == 1 else None


def _coverage(
    rule: Rule, adopted: AdoptedRule, topic: Topic, path: tuple[str | int, ...], all_in_force: Adopted
) -> Iterator[Problem]:
    """Which examples a rule lacks."""
    words = [found[0] for example in rule.examples if (found := stated(example))]
    wanted = ["meets", "fails", "cannot tell"]
    if adopted.concludes:
        wanted = ["holds", "does not hold", "cannot tell"]
    elif adopted.asks:
        wanted = ["meets", "cannot tell"]
    missing = [word for word in wanted if word not in words]
    if adopted.excuses and "excused" not in words:
        missing.append("excused")
    if not adopted.when.always and not adopted.concludes and "does not apply" not in words:
        missing.append("does not apply")
    place = topic.document.place(path)
    if missing:
        yield Problem(place, f"{adopted.id} has no example for: {', '.join(missing)}", "add it under `examples:`")
    limits = [node for node in adopted.require.walk() if node.is_numeric() and isinstance(node.argument, float)]
    if len(limits) == 1 and not any(
        _has_value(found[1], limits[0].attribute, limits[0].argument, limits[0].kind)
        for example in rule.examples
        if (found := stated(example))
    ):
        yield Problem(
            place,
            f"{adopted.id} has no example exactly at its limit",
            f"add one with {limits[0].attribute} at the limit",
        )


def _has_value(facts: Any, attribute: str, wanted: object, kind: str) -> bool:
    if isinstance(facts, list):
        return any(_has_value(item, attribute, wanted, kind) for item in facts)
    if not isinstance(facts, dict):
        return False
    for name, value in facts.items():
        if name == attribute:
            known = glossary().kinds[kind].attributes.get(attribute)
            if known and known.dimension:
                try:
                    number = parse(value, known.dimension)
                except QuantityError:
                    continue
                if abs(number - float(str(wanted))) <= 1e-9 * max(abs(number), 1e-6):
                    return True
        elif isinstance(value, dict | list) and _has_value(value, attribute, wanted, kind):
            return True
    return False


def _run(
    rule: AdoptedRule, example: Example, topic: Topic, at: tuple[str | int, ...], adopted: Adopted
) -> Iterator[Problem]:
    place = topic.document.place(at)
    given = stated(example)
    if given is None:
        yield Problem(place, "an example gives exactly one verdict with its facts", "meets: {riser_height: 7-3/4 in}")
        return
    word, values = given
    problems: list[Problem] = []
    facts, subject, concluded = case_of(values, rule, adopted, topic, (*at, word), problems)
    if problems:
        yield from problems
        return
    found = judge_alone(rule, facts, subject, concluded, adopted)
    if found != EXPECTED[word]:
        says = IN_WORDS[found]
        if rule.concludes:
            says = {"meets": "holds", "fails": "does not hold"}.get(found, says)
        yield Problem(
            place, f"{rule.id}: the example expects “{word}”, but the case “{says}”", "mend the rule or the example"
        )


def judge_alone(
    rule: AdoptedRule, facts: Facts, subject: Ref, given: frozenset[tuple[str, str]], adopted: Adopted
) -> str:
    """The verdict of one rule on one case; for a conclusion: meets if it holds, fails if it does not."""
    words = glossary().with_conclusions(adopted.conclusions)
    tables = {id_: table.rows for id_, table in adopted.tables.items()}
    program = Program(words, (rule.logic(),), tables, given=given)
    with tempfile.TemporaryDirectory(prefix="dryfit-example-") as folder:
        image = Path(folder) / "example.image"
        compiled(program, image)
        with Session(program, image) as session:
            verdicts = session.judge(facts)
            if rule.concludes:
                holds = session.conclusions().get((subject, rule.concludes))
                return {True: "meets", False: "fails", None: "unsure"}[holds]
            found = verdicts.get((0, subject))
            return found.judgement if found else ""


def case_of(
    values: Mapping[str, Any],
    rule: AdoptedRule,
    adopted: Adopted,
    topic: Topic,
    at: tuple[str | int, ...],
    problems: list[Problem],
) -> tuple[Facts, Ref, frozenset[tuple[str, str]]]:
    """The facts that an example states: nested lists are complete, what is absent is unknown."""
    case = _Case(glossary().with_conclusions(adopted.conclusions), topic, problems)
    status = rule.judges[0] if rule.judges else "new"
    state: State = "before" if rule.state == "before" else "after"
    subject = case.add(rule.kind, values, state, status, at)
    return Facts(case.elements), subject, frozenset(case.given)


class _Case:
    def __init__(self, words: Glossary, topic: Topic, problems: list[Problem]) -> None:
        self.words = words
        self.topic = topic
        self.problems = problems
        self.elements: dict[Ref, Known] = {}
        self.given: set[tuple[str, str]] = set()

    def add(
        self, kind_name: str, values: Mapping[str, Any], state: State, status: str, at: tuple[str | int, ...]
    ) -> Ref:
        kind = self.words.kinds[kind_name]
        ref = Ref(kind_name, f"example-{len(self.elements)}", state)
        own = str(values.get("status", status))
        known = Known(ref, own if kind.has_status else "only")
        self.elements[ref] = known
        if kind.has_status:
            known.values["status"] = Fact(own, "stated")
        for name, value in values.items():
            self._put(known, kind, name, value, (*at, name))
        return ref

    def _put(self, known: Known, kind: Kind, name: str, value: Any, at: tuple[str | int, ...]) -> None:
        state = known.ref.state
        if name in kind.attributes:
            attribute = kind.attributes[name]
            plain: Value = value
            if attribute.dimension:
                try:
                    plain = parse(value, attribute.dimension)
                except QuantityError as error:
                    self.problems.append(Problem(self._place(at), f"`{name}`: {error.what}", error.right))
                    return
            elif (attribute.form == "flag") != isinstance(value, bool) or (
                attribute.form == "choice" and value not in attribute.choices
            ):
                right = nearest(str(value), attribute.choices) or "true or false"
                self.problems.append(Problem(self._place(at), f"`{name}` cannot be “{value}”", right))
                return
            known.values[name] = Fact(plain, "stated")
            if attribute.concluded:
                self.given.add((kind.name, name))
        elif name in kind.links:
            link = kind.links[name]
            listed = value if isinstance(value, list) else [value]
            if not all(item is None or isinstance(item, dict) for item in listed):
                what = f"`{name}` leads to a {link.target}: what is known of it is needed"
                self.problems.append(Problem(self._place(at), what, f"{name}: {{}}, or [{{}}, {{}}] for several"))
                return
            state = "before" if name == "was" else state
            refs = tuple(
                self.add(link.target, item or {}, state, known.status, (*at, index) if isinstance(value, list) else at)
                for index, item in enumerate(listed)
            )
            known.links[name] = Members(refs, True)
        else:
            right = nearest(name, [*kind.attributes, *kind.links])
            self.problems.append(Problem(self._place(at), f"a {kind.name} has no attribute or link “{name}”", right))

    def _place(self, at: tuple[str | int, ...]) -> Place:
        return self.topic.document.place(at)


def _run_table(found: AdoptedTable, table: Table, topic: Topic, index: int) -> Iterator[Problem]:
    """Look up every example; a table shows a row, a boundary and a case beyond."""
    path = ("tables", index)
    beyond = [example.gives == "beyond" for example in table.examples]
    lacks = [
        word
        for word, there in (
            ("in a row", not all(beyond)),
            ("on a boundary", _on_boundary(found, table)),
            ("beyond the rows", any(beyond)),
        )
        if not there
    ]
    if lacks:
        what = f"{found.id} has no example {', '.join(lacks)}"
        yield Problem(topic.document.place(path), what, "add it under `examples:`")
    for number, example in enumerate(table.examples):
        place = topic.document.place((*path, "examples", number))
        wanted = {} if example.gives == "beyond" else example.gives
        strange = next((name for name in (*example.when, *wanted) if name not in found.dimensions), None)
        if strange is not None:
            yield Problem(place, f"the table has no column “{strange}”", nearest(strange, found.dimensions))
        elif set(example.when) != set(table.keys):
            yield Problem(place, "an example gives every key of the table", f"keys: {', '.join(table.keys)}")
        else:
            yield from _run_look_up(found, example, place)


def _run_look_up(found: AdoptedTable, example: TableExample, place: Place) -> Iterator[Problem]:
    wanted = example.gives
    try:
        gives = look_up(found, example)
        if gives is None:
            if wanted != "beyond":
                yield Problem(place, f"{found.id} has no row for this example", "gives: beyond")
        elif wanted == "beyond" or any(
            abs(parse(value, Dimension(str(found.dimensions[name]))) - gives[name])
            > 1e-9 * max(1e-12, abs(gives[name]))
            for name, value in wanted.items()
        ):
            yield Problem(place, f"{found.id} gives something else here", "mend the row or the example")
    except QuantityError as error:
        yield Problem(place, error.what, error.right)


def _on_boundary(found: AdoptedTable, table: Table) -> bool:
    """Whether an example lies exactly where an interval begins; tables without intervals need none."""
    intervals = [index for index, column in enumerate(found.rows.keys) if column.form == "interval"]
    for index in intervals:
        name, dimension = found.rows.keys[index].name, found.dimensions[found.rows.keys[index].name]
        cells = (row_cells[index] for row_cells, _ in found.rows.rows)
        starts = [cell[0] for cell in cells if isinstance(cell, tuple)]
        for example in table.examples:
            with contextlib.suppress(QuantityError, KeyError):
                value = parse(example.when[name], Dimension(str(dimension)))
                if any(math.isclose(value, start, rel_tol=1e-9, abs_tol=1e-18) for start in starts):
                    return True
    return not intervals


def look_up(table: AdoptedTable, example: TableExample) -> dict[str, float] | None:
    """The row of a table for the keys of an example, by exact and interval columns; None beyond it."""
    keys = {
        name: parse(value, Dimension(str(table.dimensions[name]))) if table.dimensions[name] else value
        for name, value in example.when.items()
    }
    for cells, values in table.rows.rows:
        fits = all(
            cell[0] <= keys[column.name] * (1 + 1e-12) and keys[column.name] * (1 + 1e-12) < cell[1]
            if isinstance(cell, tuple)
            else cell == keys[column.name]
            for column, cell in zip(table.rows.keys, cells, strict=True)
        )
        if fits:
            return dict(zip(table.rows.values, values, strict=True))
    return None
