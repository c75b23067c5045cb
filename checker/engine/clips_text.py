"""From conditions to CLIPS: each condition becomes two dual patterns, *surely true* and *surely false*.

Every element is one wide fact whose slot is `unknown` for what is not known; a conclusion is a fact of its own (TRUE,
FALSE or absent). Negation is pushed to the atoms, `any` is written not-and-not, predicates stand inside patterns and
never in `test`, and constants are folded: other shapes are slow, or are not kept up to date on retraction.
"""

from __future__ import annotations

import itertools

from checker.engine.conditions import Against, LookUp, Node
from checker.engine.program import Logic, Program, TableRows, symbols_of

ALWAYS, NEVER = "<always>", "<never>"

# One place for float noise: a limit that is typed exactly is met in every system of units.
PRELUDE = """(deffunction near (?b) (+ 1e-15 (* 1e-9 (abs ?b))))
(deffunction le (?a ?b) (<= ?a (+ ?b (near ?b))))
(deffunction ge (?a ?b) (>= ?a (- ?b (near ?b))))
(deffunction same (?a ?b) (if (and (numberp ?a) (numberp ?b)) then (and (le ?a ?b) (ge ?a ?b)) else (eq ?a ?b)))"""
_TESTS = {
    "at_least": "(ge {x} {y})",
    "at_most": "(le {x} {y})",
    "over": "(not (le {x} {y}))",
    "under": "(not (ge {x} {y}))",
    "is": "(same {x} {y})",
}
_TOP = 5000


def clips_text(program: Program) -> str:
    """The constructs of a program, as text for CLIPS."""
    return _Writer(program).write()


def conclusion_template(kind: str, name: str) -> str:
    """Name of the fact that carries a conclusion."""
    return f"{kind}.{name}"


def link_template(kind: str, link: str) -> str:
    """Name of the facts that carry a link; with `#` its size, with `!` that it is closed."""
    return f"{kind}>{link}"


def _both(parts: list[str]) -> str:
    parts = [part for part in parts if part != ALWAYS]
    if NEVER in parts:
        return NEVER
    if not parts:
        return ALWAYS
    return parts[0] if len(parts) == 1 else f"(and {' '.join(parts)})"


def _not(part: str) -> str:
    return NEVER if part == ALWAYS else ALWAYS if part == NEVER else f"(not {part})"


def _either(parts: list[str]) -> str:
    if ALWAYS in parts:
        return ALWAYS
    parts = [part for part in parts if part != NEVER]
    if len(parts) < 2:
        return parts[0] if parts else NEVER
    return f"(not (and {' '.join(f'(not {part})' for part in parts)}))"


class _Writer:
    def __init__(self, program: Program) -> None:
        self.program = program
        self.symbols = symbols_of(program.glossary)
        self.lines: list[str] = []
        self._names = itertools.count()
        self._written: set[str] = set()
        self._table_numbers = {id_: index for index, id_ in enumerate(program.tables)}

    def write(self) -> str:
        self.lines.append(PRELUDE)
        self._templates()
        for (kind, name), indices in self.program.concluding.items():
            self._conclusion(kind, name, indices)
        for index, rule in enumerate(self.program.rules):
            if not rule.concludes:
                self._verdicts(index, rule)
            for top in self.program.conditions(rule):
                self._traces(top, f"(why {index} ?e)", "?e")
        for table in self.program.tables.values():
            self._rows(table)
        return "\n".join(self.lines) + "\n"

    def _templates(self) -> None:
        program = self.program
        for kind in program.glossary.kinds:
            slots = " ".join(f"(slot {name} (default unknown))" for name in program.used_attributes[kind])
            self.lines.append(f"(deftemplate {kind} (slot id) (slot standing) {slots})")
            for link in program.used_links[kind]:
                name = link_template(kind, link)
                self.lines.append(
                    f"(deftemplate {name} (slot e) (slot m) (slot j)) (deftemplate {name}# (slot e) (slot k)) "
                    f"(deftemplate {name}! (slot e))"
                )
        for kind, name in sorted({*program.concluding, *program.given}):
            self.lines.append(f"(deftemplate {conclusion_template(kind, name)} (slot e) (slot v))")
        self.lines.append(
            "(deftemplate verdict (slot rule) (slot e) (slot is) (slot by))"
            " (deftemplate node (slot n) (slot e) (slot is))"
        )
        # Ordered facts are declared by a rule that names them; this one never fires.
        self.lines.append("(defrule declare-why (why -1 -1) =>)")

    def _variable(self) -> str:
        return f"?v{next(self._names)}"

    def _value(self, kind: str, attribute: str, element: str, test: str = "") -> str:
        """A pattern: the attribute is known, and its value passes the test."""
        if self.program.is_conclusion(kind, attribute):
            return f"({conclusion_template(kind, attribute)} (e {element}) (v {test or '?'}))"
        if not test:
            return f"({kind} (id {element}) ({attribute} ~unknown))"
        variable, _, predicate = test.partition("&")
        return f"({kind} (id {element}) ({attribute} {variable}&~unknown{'&' + predicate if predicate else ''}))"

    def _constant(self, value: object) -> str:
        if isinstance(value, bool):
            return "TRUE" if value else "FALSE"
        if isinstance(value, float):
            return repr(value)
        return self.symbols[str(value)]

    def true(self, node: Node, element: str) -> str:
        """Pattern of *surely true*."""
        return self._pattern(node, element, True)

    def false(self, node: Node, element: str) -> str:
        """Pattern of *surely false*."""
        return self._pattern(node, element, False)

    def _pattern(self, node: Node, element: str, wanted: bool) -> str:
        if node.op in ("all", "any", "none"):
            kids = [self._pattern(kid, element, wanted != (node.op == "none")) for kid in node.kids]
            return _both(kids) if (node.op == "any") != wanted else _either(kids)
        if node.op == "some":
            return self._some(node, element, wanted)
        if node.op == "count":
            return self._count(node, element, wanted)
        if node.op == "stated":
            known = f"(exists {self._value(node.kind, node.attribute, element)})"
            return known if wanted else f"(not {known})"
        return self._comparison(node, element, wanted)

    def _some(self, node: Node, element: str, wanted: bool) -> str:
        """Over linked elements; an open set has members that nobody listed."""
        link, member = link_template(node.kind, node.link), self._variable()
        kid = self._pattern(node.kids[0], member, wanted)
        linked = f"({link} (e {element}) (m {member}))"
        if wanted:
            return NEVER if kid == NEVER else f"(exists {_both([linked, kid])})"
        gap = _not(kid)
        return _both([f"({link}! (e {element}))", _not(NEVER if gap == NEVER else _both([linked, gap]))])

    def _count(self, node: Node, element: str, wanted: bool) -> str:
        """Low counts what surely holds; high what does not surely fail, and only of a closed set."""
        number, link = self._running_counts(node), link_template(node.kind, node.link)
        size, low, high = self._variable(), self._variable(), self._variable()
        limit = self._constant(node.argument)

        def least(test: str) -> str:
            return (
                f"(and ({link}# (e {element}) (k {size})) (lo{number} {element} {size} {low}&:({test} {low} {limit})))"
            )

        def most(test: str) -> str:
            return (
                f"(and ({link}! (e {element})) ({link}# (e {element}) (k {size})) "
                f"(hi{number} {element} {size} {high}&:({test} {high} {limit})))"
            )

        if node.count_op == "at_least":
            return least(">=") if wanted else most("<")
        if node.count_op == "at_most":
            return most("<=") if wanted else least(">")
        if wanted:
            return _both([least("="), most("=")])
        return _either([least(">"), most("<")])

    def _comparison(self, node: Node, element: str, wanted: bool) -> str:
        x, y = self._variable(), self._variable()

        def so(test: str) -> str:
            return test if wanted else f"(not {test})"

        argument = node.argument
        if isinstance(argument, LookUp):
            found = self._candidates(node.kind, argument)
            test = _TESTS[node.op].format(x=x, y=y)
            wrong = f"({found} {element} {y}&:(or (eq {y} beyond) {f'(not {test})' if wanted else test}))"
            mine = self._value(node.kind, node.attribute, element, x)
            return f"(and {mine} (exists ({found} {element} ?)) (not {wrong}))"
        if isinstance(argument, Against):
            scaled = y if argument.times == 1.0 else f"(* {argument.times!r} {y})"
            test = f"{y}&:{so(_TESTS[node.op].format(x=x, y=scaled))}"
            mine = self._value(node.kind, node.attribute, element, x)
            if argument.via:
                member = self._variable()
                linked = f"({link_template(node.kind, argument.via)} (e {element}) (m {member}))"
                return f"(exists {mine} {linked} {self._value(argument.kind, argument.attribute, member, test)})"
            return f"(exists {mine} {self._value(argument.kind, argument.attribute, element, test)})"
        if node.op == "between":
            assert isinstance(argument, tuple)
            low, high = (self._constant(each) for each in argument)
            test = f"(and (ge {x} {low}) (le {x} {high}))"
        elif isinstance(argument, tuple):
            test = "(or FALSE " + " ".join(f"(eq {x} {self._constant(each)})" for each in argument) + ")"
        else:
            test = _TESTS[node.op].format(x=x, y=self._constant(argument))
        return self._value(node.kind, node.attribute, element, f"{x}&:{so(test)}")

    def _rule(self, name: str, salience: int, when: list[str], then: str) -> None:
        conditions = _both(when)
        if conditions == NEVER:
            return
        if conditions.startswith("(and "):
            conditions = conditions[5:-1]
        self.lines.append(f"(defrule {name} (declare (salience {salience})) (logical {conditions}) => (assert {then}))")

    def _running_counts(self, node: Node) -> int:
        """Sums along the numbered links, one for what surely holds, one for what does not surely fail."""
        number = self.program.number(node)
        if f"count{number}" in self._written:
            return number
        self._written.add(f"count{number}")
        link, kid = link_template(node.kind, node.link), node.kids[0]
        salience = _TOP - 10 * self.program.node_level(node)
        holds, fails = self.true(kid, "?m"), self.false(kid, "?m")
        for name, hit, miss in (("lo", holds, _not(holds)), ("hi", _not(fails), fails)):
            step = [f"({name}{number} ?e ?i ?n)", f"({link} (e ?e) (m ?m) (j ?j&:(= ?j (+ ?i 1))))"]
            self._rule(f"{name}{number}-0", salience + 1, [f"({node.kind} (id ?e))"], f"({name}{number} ?e 0 0)")
            self._rule(f"{name}{number}-hit", salience, [*step, hit], f"({name}{number} ?e ?j (+ ?n 1))")
            self._rule(f"{name}{number}-miss", salience, [*step, miss], f"({name}{number} ?e ?j ?n)")
        return number

    def _candidates(self, kind: str, look_up: LookUp) -> str:
        """The values that no known key rules out; `beyond` while an unknown key may lie outside the table."""
        table = self.program.tables[look_up.table]
        number = self._table_numbers[look_up.table]
        attributes = dict(look_up.keys)
        by = [attributes[column.name] for column in table.keys]
        name = f"found{number}.{table.values.index(look_up.column)}:{kind}:{':'.join(by)}"
        if name in self._written:
            return name
        self._written.add(name)
        reading = Node("is", kind, "", look_up)
        salience = _TOP - 10 * self.program.node_level(reading) + 1
        cells: list[str] = []
        contradicted: list[str] = []
        for index, (column, attribute) in enumerate(zip(table.keys, by, strict=True)):
            x = f"?k{index}"
            if column.form == "exact":
                cells.append(f"?c{index}")
                test = f"(not (same {x} ?c{index}))"
            else:
                cells.append(f"?c{index} ?d{index}")
                test = f"(not (and (ge {x} ?c{index}) (not (ge {x} ?d{index}))))"
            contradicted.append(f"(not {self._value(kind, attribute, '?e', f'{x}&:{test}')})")
        values = ["?" if value != look_up.column else "?v" for value in table.values]
        element = f"({kind} (id ?e))"
        row = f"(table{number} {' '.join(cells)} {' '.join(values)})"
        self._rule(name, salience, [element, row, *contradicted], f"({name} ?e ?v)")
        for column, attribute in zip(table.keys, by, strict=True):
            if not column.exhaustive:
                unknown = f"(not {self._value(kind, attribute, '?e')})"
                self._rule(f"{name}-beyond-{attribute}", salience, [element, unknown], f"({name} ?e beyond)")
        return name

    def _conclusion(self, kind: str, name: str, indices: list[int]) -> None:
        template = conclusion_template(kind, name)
        salience = _TOP - 10 * self.program.level((kind, name))
        element = f"({kind} (id ?e))"
        for index in indices:
            when = self.program.rules[index].when
            self._rule(f"c{index}", salience, [element, self.true(when, "?e")], f"({template} (e ?e) (v TRUE))")
        falses = [self.false(self.program.rules[index].when, "?e") for index in indices]
        self._rule(f"{template}-not", salience, [element, *falses], f"({template} (e ?e) (v FALSE))")

    def _verdicts(self, index: int, rule: Logic) -> None:
        def verdict(word: str, by: int = 0) -> str:
            return f"(verdict (rule {index}) (e ?e) (is {word}) (by {by}))"

        element = f"({rule.kind} (id ?e) (standing {'|'.join(rule.standings)}))"
        applies, not_applies = self.true(rule.when, "?e"), self.false(rule.when, "?e")
        met, not_met = self.true(rule.require, "?e"), self.false(rule.require, "?e")
        maybe = [element, _not(not_applies)]
        excused = [self.true(excuse, "?e") for excuse in rule.excuses]
        never_excused = [self.false(excuse, "?e") for excuse in rule.excuses]
        self._rule(f"r{index}-na", 0, [element, not_applies], verdict("na"))
        self._rule(f"r{index}-meets", 0, [*maybe, met], verdict("meets"))
        if not rule.asks:
            self._rule(f"r{index}-fails", 0, [element, applies, not_met, *never_excused], verdict("fails"))
            for number, holds in enumerate(excused):
                name = f"r{index}-excused-{number}"
                self._rule(name, 0, [*maybe, _not(met), holds], verdict("excused", number))
        settled = f"(not (verdict (rule {index}) (e ?e) (is meets|fails|excused)))"
        self._rule(f"r{index}-unsure", -1, [*maybe, settled], verdict("unsure"))

    def _traces(self, node: Node, gate: str, element: str) -> None:
        """The truth of every condition, but only for pairs of rule and element that someone asks about."""
        number = self.program.number(node)
        for wanted, word in ((True, "T"), (False, "F")):
            self._rule(
                f"n{number}-{word}",
                -2,
                [gate, self._pattern(node, element, wanted)],
                f"(node (n {number}) (e {element}) (is {word}))",
            )
        for attribute in node.attributes():
            self._trace_conclusion(node.kind, attribute, number, gate, f"({node.kind} (id {element}))", element)
        if isinstance(node.argument, Against) and node.argument.via:
            member = self._variable()
            linked = f"({link_template(node.kind, node.argument.via)} (e {element}) (m {member}))"
            self._trace_conclusion(node.argument.kind, node.argument.attribute, number, gate, linked, member)
        for kid in node.kids:
            if node.link:
                member = self._variable()
                linked = f"({link_template(node.kind, node.link)} (e {element}) (m {member}))"
                self._traces(kid, f"{gate} {linked}", member)
            else:
                self._traces(kid, gate, element)

    def _trace_conclusion(self, kind: str, attribute: str, number: int, gate: str, there: str, element: str) -> None:
        """Whoever asks about a condition that reads a conclusion asks about the conclusion in its turn."""
        for index in self.program.concluding.get((kind, attribute), ()):
            name = f"n{number}-why-{next(self._names)}"
            self._rule(name, -2, [gate, there], f"(why {index} {element})")

    def _rows(self, table: TableRows) -> None:
        number = self._table_numbers[table.id]
        facts = []
        for cells, values in table.rows:
            keys = [
                " ".join(map(self._constant, cell)) if isinstance(cell, tuple) else self._constant(cell)
                for cell in cells
            ]
            facts.append(f"(table{number} {' '.join(keys)} {' '.join(map(self._constant, values))})")
        self.lines.append(f"(deffacts table{number}-rows {' '.join(facts)})")
