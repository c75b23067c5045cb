"""Faults planted in the engine: the comparison with the oracle must find each, or it would prove nothing."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import clips
import pytest

from checker.engine import clips_text
from checker.engine.clips_text import _TESTS, PRELUDE, _not, _Writer
from checker.engine.conditions import Against, ConditionReader, LookUp, Node
from checker.engine.program import Logic, Program, TableRows
from checker.engine.session import Session
from checker.facts import Facts, Known, Ref
from checker.glossary import Kind
from tests.engine.random_rules import STATUSES
from tests.engine.survey import Surveyor

RULESETS = 40
PLANS = 4
Plant = Callable[[pytest.MonkeyPatch], None]


def in_rules(name: str, pattern: str, instead: str) -> Plant:
    """Rewrite the patterns of CLIPS rules whose name matches."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        write = _Writer._rule

        def rule(self: _Writer, name_: str, salience: int, when: list[str], then: str) -> None:
            if re.search(name, name_):
                when = [re.sub(pattern, instead, part) for part in when]
            write(self, name_, salience, when, then)

        patch.setattr(_Writer, "_rule", rule)

    return plant


def without_rules(name: str) -> Plant:
    """Leave out CLIPS rules whose name matches."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        write = _Writer._rule

        def rule(self: _Writer, name_: str, salience: int, when: list[str], then: str) -> None:
            if not re.search(name, name_):
                write(self, name_, salience, when, then)

        patch.setattr(_Writer, "_rule", rule)

    return plant


def in_conditions(change: Callable[[Node], Node]) -> Plant:
    """Compile other conditions than were read."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        write = _Writer._comparison

        def comparison(self: _Writer, node: Node, element: str, wanted: bool) -> str:
            return write(self, change(node), element, wanted)

        patch.setattr(_Writer, "_comparison", comparison)

    return plant


def in_comparisons(pattern: str, instead: str) -> Plant:
    """Rewrite the patterns of comparisons."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        write = _Writer._comparison

        def comparison(self: _Writer, node: Node, element: str, wanted: bool) -> str:
            return re.sub(pattern, instead, write(self, node, element, wanted))

        patch.setattr(_Writer, "_comparison", comparison)

    return plant


def in_logic(change: Callable[[Logic], Logic]) -> Plant:
    """Compile the verdicts of other rules than were read."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        write = _Writer._verdicts

        def verdicts(self: _Writer, index: int, rule: Logic) -> None:
            write(self, index, change(rule))

        patch.setattr(_Writer, "_verdicts", verdicts)

    return plant


def in_data(change: Callable[[str, dict[str, Any]], dict[str, Any]]) -> Plant:
    """Read other quantifiers than were written."""

    def plant(patch: pytest.MonkeyPatch) -> None:
        read = ConditionReader._quantifier

        def quantifier(self: ConditionReader, word: str, value: Any, of: Kind, path: Any) -> Node:
            return read(self, word, change(word, value), of, path)

        patch.setattr(ConditionReader, "_quantifier", quantifier)

    return plant


def as_test(word: str, other: str) -> Plant:
    """Compile one comparison as if it were another."""
    return lambda patch: patch.setitem(_TESTS, word, _TESTS[other])


def none_swapped(patch: pytest.MonkeyPatch) -> None:
    """Take surely true for surely false under `none`."""
    write = _Writer._pattern

    def pattern(self: _Writer, node: Node, element: str, wanted: bool) -> str:
        return write(self, node, element, wanted != (node.op == "none"))

    patch.setattr(_Writer, "_pattern", pattern)


def two_valued(patch: pytest.MonkeyPatch) -> None:
    """Take everything for false that is not surely true."""
    patch.setattr(_Writer, "false", lambda self, node, element: _not(self.true(node, element)))


def high_counts_miss_the_unknown(patch: pytest.MonkeyPatch) -> None:
    """Count a member of which nobody knows whether it holds as one that does not."""
    write = _Writer._running_counts

    def counts(self: _Writer, node: Node) -> int:
        with pytest.MonkeyPatch.context() as within:
            two_valued(within)
            return write(self, node)

    patch.setattr(_Writer, "_running_counts", counts)


def all_links_closed(patch: pytest.MonkeyPatch) -> None:
    """Forget that a link may have members that nobody listed."""
    put = Session._links

    def links(self: Session, known: Known, elements: dict[Ref, Known]) -> Iterator[Any]:
        for key, nothing in put(self, known, elements):
            yield key, nothing
            if key[0].endswith("#"):
                yield (f"{key[0][:-1]}!", key[1]), nothing

    patch.setattr(Session, "_links", links)


def nothing_retracted(patch: pytest.MonkeyPatch) -> None:
    """Keep the facts of the last fact set."""
    patch.setattr(clips.facts.Fact, "retract", lambda self: None)


def no_support(patch: pytest.MonkeyPatch) -> None:
    """Keep what was concluded when its support goes."""
    write = _Writer.write
    patch.setattr(_Writer, "write", lambda self: write(self).replace("(logical ", "(and "))


def columns_mixed_up(patch: pytest.MonkeyPatch) -> None:
    """Take the cells of a table's values in the wrong order."""
    write = _Writer._rows

    def rows(self: _Writer, table: TableRows) -> None:
        write(self, replace(table, rows=tuple((cells, values[::-1]) for cells, values in table.rows)))

    patch.setattr(_Writer, "_rows", rows)


def values_forgotten(patch: pytest.MonkeyPatch) -> None:
    """Judge without the values of one kind of element."""
    put = Session._assertions

    def assertions(self: Session, facts: Facts) -> Any:
        elements = {
            ref: replace(known, values={} if ref.kind == "wall" else known.values)
            for ref, known in facts.elements.items()
        }
        return put(self, Facts(elements))

    patch.setattr(Session, "_assertions", assertions)


def first_false_is_enough(patch: pytest.MonkeyPatch) -> None:
    """Take a conclusion for false when the first of its conditions is."""
    write = _Writer._rule

    def rule(self: _Writer, name: str, salience: int, when: list[str], then: str) -> None:
        write(self, name, salience, when[:2] if name.endswith("-not") else when, then)

    patch.setattr(_Writer, "_rule", rule)


def no_times(node: Node) -> Node:
    """Do not scale the other attribute."""
    argument = node.argument
    return replace(node, argument=replace(argument, times=1.0)) if isinstance(argument, Against) else node


def first_column(node: Node) -> Node:
    """Look up the first value column whatever was asked for."""
    argument = node.argument
    return replace(node, argument=replace(argument, column="limit")) if isinstance(argument, LookUp) else node


def no_upper_end(node: Node) -> Node:
    """Read `between` as if it had no upper end."""
    if node.op != "between":
        return node
    assert isinstance(node.argument, tuple)
    return replace(node, argument=(float(node.argument[0]), 1e30))


ALL_STANDINGS = tuple(f"{state}-{status}" for state in ("before", "after") for status in STATUSES)
FAULTS: dict[str, Plant] = {
    "none swapped": none_swapped,
    "two-valued": two_valued,
    "at_most is strict": as_test("at_most", "under"),
    "at_least is strict": as_test("at_least", "over"),
    "over is not strict": as_test("over", "at_least"),
    "under is not strict": as_test("under", "at_most"),
    "no allowance for float noise": lambda patch: patch.setattr(
        clips_text, "PRELUDE", PRELUDE.replace("(+ 1e-15 (* 1e-9 (abs ?b)))", "0")
    ),
    "between has no upper end": in_conditions(no_upper_end),
    "times ignored": in_conditions(no_times),
    "times ignored by is": in_conditions(lambda node: no_times(node) if node.op == "is" else node),
    "any element stands in for the linked one": in_comparisons(
        r"\((\w+)>wall \(e \S+\) \(m (\?v\d+)\)\)", r"(wall (id \2))"
    ),
    "open links taken for closed": all_links_closed,
    "high count misses the unknown": high_counts_miss_the_unknown,
    "low count starts at one": in_rules(r"^lo\d+-hit$", r"\?i \?n", "?i ?n&:(> ?i 0)"),
    "where ignored": in_data(lambda _, value: {key: each for key, each in value.items() if key != "where"}),
    "beyond the table ignored": without_rules("-beyond-"),
    "a key without a row passes": in_comparisons(r"\(exists \(found\S+ \?\S+ \?\)\)", ""),
    "interval closed above": in_rules("^found", r"\(not \(ge (\?k\d+) (\?d\d+)\)\)", r"(le \1 \2)"),
    "wrong column": in_conditions(first_column),
    "columns mixed up": columns_mixed_up,
    "exceptions ignored": in_logic(lambda rule: replace(rule, excuses=())),
    "exceptions in the wrong order": in_logic(lambda rule: replace(rule, excuses=rule.excuses[::-1])),
    "when ignored": in_logic(lambda rule: replace(rule, when=Node("all", rule.kind))),
    "standings ignored": in_logic(lambda rule: replace(rule, standings=ALL_STANDINGS)),
    "asking rules judge": in_logic(lambda rule: replace(rule, asks=False)),
    "no conclusion is false": without_rules(r"^\w+\.\w+-not$"),
    "one false condition makes a conclusion false": first_false_is_enough,
    "the state before is left out": lambda patch: patch.setattr(Program, "uses_before", False),
    "values forgotten": values_forgotten,
    "nothing retracted": nothing_retracted,
    "no support": no_support,
}


def is_found() -> bool:
    """Whether the engine and the oracle differ on some random plan."""
    return any(Surveyor(seed).run(PLANS, reasons=False).faults for seed in range(RULESETS))


def test_without_a_fault_nothing_is_found() -> None:
    """The same cases agree while the engine is sound."""
    assert not is_found()


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_is_found(fault: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A fault shows in the verdicts of some random plan."""
    FAULTS[fault](monkeypatch)
    assert is_found()
