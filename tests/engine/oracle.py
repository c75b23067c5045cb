"""An independent judge of rules: Kleene's strong three-valued tables, straight from the data of a rule file.

It shares nothing with `checker.engine`: no reader, no tree of conditions, no engine. It is slow and plain on purpose.
Truths are True, False and None (not known). Quantities of rules are lengths, written as a number and a unit.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from checker.facts import Facts, Known, Members, Ref, Value

Data = Mapping[str, Any]
Truth = bool | None
Finding = tuple[str, int]
"""A verdict, and which exception excuses (0 where none does)."""

COMPARISONS = ("at_least", "at_most", "over", "under", "is", "between", "stated")
JUDGED_BY_DEFAULT = ("new", "altered", "replaced", "moved", "reused")
_METRES = {"in": 0.0254, "ft": 0.3048, "mm": 0.001, "m": 1.0}
_UNLISTED = Members((), False)


def length(written: str) -> float:
    """Give a length such as `3 in` in metres."""
    number, unit = written.split(" ")
    return float(number) * _METRES[unit]


def negation(truth: Truth) -> Truth:
    """Not."""
    return None if truth is None else not truth


def conjunction(truths: Iterable[Truth]) -> Truth:
    """And: false beats not known, not known beats true."""
    found = list(truths)
    return False if False in found else None if None in found else True


def disjunction(truths: Iterable[Truth]) -> Truth:
    """Or: true beats not known, not known beats false."""
    return negation(conjunction(negation(truth) for truth in truths))


def agreed(truths: Iterable[Truth]) -> Truth:
    """What every possibility gives, None if they differ or there is none."""
    found = set(truths)
    return found.pop() if len(found) == 1 else None


def same(mine: Value, other: Value) -> bool:
    """Whether two values are one, but for float noise."""
    if isinstance(mine, float) and isinstance(other, float):
        return math.isclose(mine, other, rel_tol=1e-9, abs_tol=1e-15)
    return mine == other


def compare(word: str, mine: Any, other: Any) -> bool:
    """Compare two known values."""
    equal = same(mine, other)
    match word:
        case "at_least":
            return equal or bool(mine > other)
        case "at_most":
            return equal or bool(mine < other)
        case "over":
            return not equal and bool(mine > other)
        case "under":
            return not equal and bool(mine < other)
    return equal


class Oracle:
    """Judges one fact set by the rules and tables of a rule file.

    rules, tables: as a rule file has them; seen: counts how often each word came out true, false or not known.
    """

    def __init__(
        self,
        rules: Sequence[Data],
        tables: Mapping[str, Data],
        facts: Facts,
        seen: Counter[tuple[str, Truth]] | None = None,
    ) -> None:
        self.rules = rules
        self.tables = tables
        self.elements: Mapping[Ref, Known] = facts.elements
        self.seen: Counter[tuple[str, Truth]] = Counter() if seen is None else seen
        self._concluded: dict[tuple[Ref, str], Truth] = {}

    def verdicts(self) -> dict[tuple[int, Ref], Finding]:
        """Judge every rule and every element it is for."""
        return {
            (index, ref): self.verdict(index, ref)
            for index, rule in enumerate(self.rules)
            if "concludes" not in rule
            for ref, known in self.elements.items()
            if ref.kind == rule["for"] and self.is_judged(rule, known)
        }

    @staticmethod
    def is_judged(rule: Data, known: Known) -> bool:
        """Whether a rule judges an element in the state and status it is in."""
        state = rule.get("state", "after")
        return known.ref.state == state and known.status in rule.get("judges", JUDGED_BY_DEFAULT)

    def verdict(self, index: int, ref: Ref) -> Finding:
        """Judge one element by one rule."""
        rule = self.rules[index]
        applies = self.truth(rule.get("when"), ref)
        met = self.truth(rule["asks"] if "asks" in rule else rule["require"], ref)
        if applies is False:
            return "na", 0
        if met:
            return "meets", 0
        if "asks" in rule:
            return "unsure", 0
        excuses = [self.truth(each["when"], ref) for each in rule.get("except", ())]
        if True in excuses:
            return "excused", excuses.index(True)
        if applies and met is False and disjunction(excuses) is False:
            return "fails", 0
        return "unsure", 0

    def truth(self, condition: Data | None, ref: Ref) -> Truth:
        """The truth of a condition: all of its keys together."""
        return conjunction(self._key(key, value, ref) for key, value in (condition or {}).items())

    def value(self, ref: Ref, name: str) -> Value | None:
        """The value of an attribute or conclusion, None if it is not known."""
        whens = [rule["when"] for rule in self.rules if rule.get("concludes") == name and rule["for"] == ref.kind]
        if not whens:
            fact = self.elements[ref].values.get(name)
            return None if fact is None else fact.value
        if (ref, name) not in self._concluded:
            self._concluded[ref, name] = disjunction(self.truth(when, ref) for when in whens)
        return self._concluded[ref, name]

    def _key(self, key: str, value: Any, ref: Ref) -> Truth:
        if key in ("all", "any", "none"):
            truth = self._logic(key, [self.truth(item, ref) for item in value])
        elif key in ("some", "every", "no", "count"):
            truth = self._quantifier(key, value, ref)
        elif value and set(value) <= set(COMPARISONS):
            return conjunction(self._comparison(ref, key, word, item) for word, item in value.items())
        else:
            truth = self._quantifier("some", {"of": key, "that": value}, ref)
            key = "to-one link"
        self.seen[key, truth] += 1
        return truth

    @staticmethod
    def _logic(word: str, truths: list[Truth]) -> Truth:
        if word == "all":
            return conjunction(truths)
        return disjunction(truths) if word == "any" else conjunction(map(negation, truths))

    def _quantifier(self, word: str, value: Data, ref: Ref) -> Truth:
        """Over linked elements; nobody knows of the unlisted members of an open link."""
        members = self.elements[ref].links.get(value["of"], _UNLISTED)
        rest: list[Truth] = [] if members.closed else [None]
        pairs = [
            (self.truth(value.get("where"), member), self.truth(value.get("that"), member)) for member in members.refs
        ]
        both = [conjunction(pair) for pair in pairs]
        if word == "every":
            return conjunction([disjunction([negation(where), that]) for where, that in pairs] + rest)
        if word == "some":
            return disjunction(both + rest)
        if word == "no":
            return negation(disjunction(both + rest))
        limits = {test: value[test] for test in ("at_least", "at_most", "is") if test in value}
        fewest = both.count(True)
        most = fewest + both.count(None) if members.closed else max(fewest, *limits.values()) + 1
        return agreed(
            all(compare(test, float(count), float(limit)) for test, limit in limits.items())
            for count in range(fewest, most + 1)
        )

    def _comparison(self, ref: Ref, name: str, word: str, limit: Any) -> Truth:
        value = self.value(ref, name)
        called = word
        if word == "stated":
            truth: Truth = value is not None
        elif isinstance(limit, Mapping) and "table" in limit:
            called = "table"
            truth = None if value is None else self._look_up(ref, value, word, limit)
        elif isinstance(limit, Mapping):
            called = "via" if "via" in limit else "attribute"
            other = self._other(ref, limit)
            truth = None if value is None or other is None else compare(word, value, other)
        else:
            truth = None if value is None else self._against_constant(value, word, limit)
        self.seen[called, truth] += 1
        if called != word:
            self.seen[word, truth] += 1
        return truth

    @staticmethod
    def _against_constant(value: Value, word: str, limit: Any) -> bool:
        if word == "between":
            low, high = map(length, limit)
            return compare("at_least", value, low) and compare("at_most", value, high)
        if isinstance(value, float):
            return compare(word, value, length(limit))
        return value in limit if isinstance(limit, list) else value == limit

    def _other(self, ref: Ref, limit: Data) -> Value | None:
        """The attribute to compare with: of the element itself or across a to-one link."""
        if "via" in limit:
            refs = self.elements[ref].links.get(limit["via"], _UNLISTED).refs
            if not refs:
                return None
            ref = refs[0]
        other = self.value(ref, limit["attribute"])
        return other * limit["times"] if isinstance(other, float) and "times" in limit else other

    def _look_up(self, ref: Ref, value: Value, word: str, limit: Data) -> Truth:
        """Compare with every row that may be meant; a key that is not known may lie outside the table."""
        table = self.tables[limit["table"]]
        keys = {column: self.value(ref, name) for column, name in limit["by"].items()}
        rows = [row for row in table["rows"] if all(_fits(key, row[column]) for column, key in keys.items())]
        outside = any(key is None and not table["keys"][column]["exhaustive"] for column, key in keys.items())
        if outside:
            return None
        return agreed(compare(word, value, length(row[limit["column"]])) for row in rows)


def _fits(key: Value | None, cell: Any) -> bool:
    """Whether a key may be the one that a cell of a table means: an interval is [from, to), None has no end."""
    if key is None:
        return True
    if not isinstance(cell, list):
        return bool(key == cell)
    low, high = cell
    return (low is None or compare("at_least", key, length(low))) and (
        high is None or compare("under", key, length(high))
    )
