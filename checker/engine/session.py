"""One environment of CLIPS that judges fact sets: asserts what differs from the last one, runs, reads verdicts."""

from __future__ import annotations

import os
import re
import tempfile
from collections.abc import Iterable, Mapping
from pathlib import Path
from types import TracebackType
from typing import Any, NamedTuple

import clips

from checker.engine.clips_text import conclusion_template, link_template
from checker.engine.program import Judgement, Program, symbols_of
from checker.facts import Facts, Known, Members, Ref, Value

# clipspy 1.0.6 calls ReleaseFact with one argument too many and swallows the TypeError: every fact that is read leaks,
# and CLIPS prints a warning on standard output when the environment goes.
clips.facts.Fact.__del__ = lambda self: clips.facts.lib.ReleaseFact(self._fact)

_VERDICT = re.compile(r"\(verdict \(rule (\d+)\) \(e (\d+)\) \(is (\w+)\) \(by (\d+)\)\)")
_RUN_LIMIT = 2_000_000
_STATED = clips.Symbol("stated")
_OPEN = Members((), False)


class EngineFault(RuntimeError):
    """The engine stopped before it was done: a fault of dryfit, never of a plan."""


class Verdict(NamedTuple):
    """What the engine found of one rule and one element; `by` numbers the exception that excuses it."""

    rule: int
    ref: Ref
    judgement: Judgement
    by: int = 0


class Session:
    """Judges fact sets, one after another, with one program. Use it as a context, or call `close`."""

    def __init__(self, program: Program, image: Path) -> None:
        self.program = program
        self._symbols = {choice: clips.Symbol(symbol) for choice, symbol in symbols_of(program.glossary).items()}
        self._environment = clips.Environment()
        self._environment.load(str(image), binary=True)
        self._environment.reset()
        self._templates = {template.name: template for template in self._environment.templates()}
        self._asserted: dict[tuple[Any, ...], Any] = {}
        self._asked: dict[tuple[int, Ref], Any] = {}
        self._numbers: dict[Ref, int] = {}
        self._refs: list[Ref] = []
        handle, name = tempfile.mkstemp(prefix="dryfit-facts-")
        os.close(handle)
        self._file = Path(name)

    def __enter__(self) -> Session:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the environment."""
        self._asserted.clear()
        self._asked.clear()
        self._templates.clear()
        self._file.unlink(missing_ok=True)

    def judge(self, facts: Facts) -> dict[tuple[int, Ref], Verdict]:
        """Judge a fact set by every rule. Raises EngineFault."""
        self._forget_questions()
        wanted = dict(self._assertions(facts))
        for key in [key for key in self._asserted if key not in wanted]:
            self._asserted.pop(key).retract()
        for key in wanted:
            if key not in self._asserted:
                self._asserted[key] = self._templates[key[0]].assert_fact(**dict(key[1:]))
        self._run()
        found: dict[tuple[int, Ref], Verdict] = {}
        for rule, element, word, by in _VERDICT.findall(self._saved("verdict")):
            key = (int(rule), self._refs[int(element)])
            if by == "0" or key not in found or found[key].by > int(by):
                found[key] = Verdict(*key, word, int(by))
        return found

    def conclusions(self) -> dict[tuple[Ref, str], bool]:
        """The conclusions that the last fact set settles."""
        names = {conclusion_template(kind, name): name for kind, name in self.program.concluding}
        return {
            (self._refs[int(element)], names[template]): value == "TRUE"
            for template, element, value in self._read(*names)
        }

    def truths(self, pairs: Iterable[tuple[int, Ref]]) -> dict[tuple[int, Ref], bool]:
        """The truth of the conditions of the rules asked about: (number of the condition, element) to true or false."""
        for rule, ref in pairs:
            if (rule, ref) not in self._asked:
                asked = self._environment.assert_string(f"(why {rule} {self._numbers[ref]})")
                self._asked[rule, ref] = asked
        self._run()
        return {(int(number), self._refs[int(element)]): word == "T" for _, number, element, word in self._read("node")}

    def _forget_questions(self) -> None:
        for asked in self._asked.values():
            asked.retract()
        self._asked.clear()

    def _run(self) -> None:
        fired = self._environment.run(_RUN_LIMIT)
        if fired >= _RUN_LIMIT:
            raise EngineFault(f"the rules did not come to rest after {_RUN_LIMIT:,} firings")
        if self._environment.error_state is not None:
            raise EngineFault(str(self._environment.error_state))

    def _read(self, *templates: str) -> list[list[str]]:
        """Template and slot values of every fact of templates."""
        rows: list[list[str]] = []
        for line in self._saved(*templates).splitlines():
            # (node (n 3) (e 12) (is T))
            template, *slots = line[1:].replace(")", "").split(" (")
            rows.append([template, *(slot.split(" ")[1] for slot in slots)])
        return rows

    def _saved(self, *templates: str) -> str:
        """Every fact of templates as CLIPS saves it; a file is by far the fastest way out."""
        if not templates:
            return ""
        path = str(self._file).replace("\\", "/")
        self._environment.eval(f'(save-facts "{path}" visible {" ".join(templates)})')
        return self._file.read_text(encoding="ascii")

    def _number(self, ref: Ref) -> int:
        if ref not in self._numbers:
            self._numbers[ref] = len(self._refs)
            self._refs.append(ref)
        return self._numbers[ref]

    def _plain(self, value: Value) -> Any:
        if isinstance(value, bool):
            return clips.Symbol("TRUE" if value else "FALSE")
        if isinstance(value, int | float):
            return float(value)
        # Of names and series, rules only ask whether they are stated.
        return self._symbols.get(value, _STATED) if isinstance(value, str) else _STATED

    def _assertions(self, facts: Facts) -> Iterable[tuple[tuple[Any, ...], None]]:
        """Every fact to assert, as (template, (slot, value), …); links before the elements they join."""
        before = self.program.uses_before
        elements = [known for ref, known in facts.elements.items() if before or ref.state == "after"]
        for known in elements:
            self._number(known.ref)
        for known in elements:
            yield from self._links(known, facts.elements)
        for known in elements:
            yield from self._element(known)

    def _links(self, known: Known, elements: Mapping[Ref, Known]) -> Iterable[tuple[tuple[Any, ...], None]]:
        number = self._numbers[known.ref]
        for link in self.program.used_links[known.ref.kind]:
            name = link_template(known.ref.kind, link)
            members = known.links.get(link, _OPEN)
            refs = [ref for ref in members.refs if ref in elements]
            yield (f"{name}#", ("e", number), ("k", len(refs))), None
            for position, ref in enumerate(refs, 1):
                yield (name, ("e", number), ("m", self._number(ref)), ("j", position)), None
            if members.closed:
                yield (f"{name}!", ("e", number)), None

    def _element(self, known: Known) -> Iterable[tuple[tuple[Any, ...], None]]:
        kind, number = known.ref.kind, self._numbers[known.ref]
        slots: list[tuple[str, Any]] = [("id", number), ("standing", clips.Symbol(known.standing))]
        for name in self.program.used_attributes[kind]:
            if name in known.values:
                slots.append((name, self._plain(known.values[name].value)))
        yield (kind, *slots), None
        for given_kind, name in self.program.given:
            if given_kind == kind and name in known.values:
                value = self._plain(known.values[name].value)
                yield (conclusion_template(kind, name), ("e", number), ("v", value)), None
