"""Adopting a ruleset on a date: which sets in which editions, which local amendments, and what is then in force."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from checker.problems import Place, Problem, Unreadable, cut, nearest
from checker.ruleset.adopted import (
    Adopted,
    AdoptedAssumption,
    AdoptedSet,
    AdoptedTable,
    Applied,
    Citation,
    Suspended,
)
from checker.ruleset.catalogue import AdoptedEntry, take_in
from checker.ruleset.checking import SetInForce, check_assumption, check_rules, check_table, conclusions_of
from checker.ruleset.folders import Library, RulesetFolder, Topic
from checker.ruleset.model import Amendment, Assumption, Edition, Rule, Table
from checker.ruleset.places import name_and_edition

Path = tuple[str | int, ...]


@dataclass(slots=True)
class RuleInForce:
    """A rule with its edition's and the amendments' changes, on the way to being checked."""

    id: str
    rule: Rule
    data: dict[str, Any]
    cite: Citation
    topic: Topic
    path: Path
    places: dict[Path, Place] = field(default_factory=dict)
    amended_by: list[Applied] = field(default_factory=list)
    severity: str = ""

    def place(self, path: Path) -> Place:
        """Place of a line of the rule: in its own file, or in that of the change that put it there."""
        for length in range(len(path), 0, -1):
            if path[:length] in self.places:
                return self.places[path[:length]]
        return self.topic.document.place((*self.path, *path))


def adopt(name: str, library: Library, date: str = "", asked_at: Place | None = None) -> Adopted:
    """Work out what is in force.

    name: a ruleset's name or folder, with one of its editions after a colon or without; library: where sets are looked
    up; date: of the permit, "" if it has none; asked_at: the place that names the ruleset, for messages.
    Raises Unreadable with every problem.
    """
    base, edition = name_and_edition(name)
    folder = library.folder(base, asked_at)
    if edition and edition not in folder.head.editions:
        right = nearest(edition, folder.head.editions) or f"editions: {', '.join(folder.head.editions)}"
        place = asked_at or folder.head_document.place(("editions",))
        raise Unreadable([Problem(place, f"{base} has no edition “{edition}”", right)])
    adopting = _Adopting(library, date)
    adopting.own_edition = edition
    return adopting.adopt(folder)


def adopt_edition(folder: RulesetFolder, library: Library, edition: str) -> Adopted:
    """Work out what one edition of one set, with all that it adopts, comes to. Raises Unreadable."""
    adopting = _Adopting(library, "")
    adopting.own_edition = edition
    return adopting.adopt(folder)


class _Adopting:
    def __init__(self, library: Library, date: str) -> None:
        self.library = library
        self.date = date
        self.own_edition = ""
        self.problems: list[Problem] = []
        self.sets: dict[str, SetInForce] = {}
        self.gathering: list[str] = []
        self.incomplete = False
        self.rules: dict[str, RuleInForce] = {}
        self.tables: dict[str, tuple[Table, Topic, Path, Citation, list[Any] | None, Place | None]] = {}
        self.assumptions: dict[str, tuple[Assumption, Topic, Path, Citation, list[Applied]]] = {}
        self.catalogue: dict[str, dict[str, AdoptedEntry]] = {}
        self.amendments: list[Applied] = []
        self.suspended: dict[str, tuple[Suspended, Place]] = {}
        self.changed: dict[tuple[str, str], tuple[str, Place]] = {}

    def adopt(self, folder: RulesetFolder) -> Adopted:
        newest = folder.head.editions[-1] if folder.head.editions else ""
        chosen = self.own_edition or newest
        self._gather(folder, chosen, "", not self.own_edition and len(folder.head.editions) > 1)
        if self.incomplete:
            raise Unreadable(self.problems)  # what amends a set that is not there says nothing of its own
        for each in self.sets.values():
            self._amend(each)
        if self.problems:
            raise Unreadable(self.problems)
        meanings = conclusions_of(list(self.rules.values()), self.problems)
        tables: dict[str, AdoptedTable] = {}
        for id_, (table, topic, path, cite, rows, rows_at) in self.tables.items():
            checked = check_table(id_, table, topic, path, cite, rows, rows_at, self.problems)
            if checked:
                tables[id_] = checked
        assumptions: dict[str, AdoptedAssumption] = {}
        for name, (assumption, topic, path, cite, applied) in self.assumptions.items():
            checked_assumption = check_assumption(assumption, topic, path, cite, applied, self.problems)
            if checked_assumption:
                assumptions[name] = checked_assumption
        rules = check_rules(list(self.rules.values()), meanings, tables, self.problems)
        self._check_suspensions(rules, tables)
        if self.problems:
            raise Unreadable(self.problems)
        cautions: dict[str, str] = {}
        for set_in_force in self.sets.values():
            for topic in set_in_force.folder.topics:
                for caution in topic.model.cautions:
                    cautions[caution.trade] = f"{cautions.get(caution.trade, '')} {caution.says}".strip()
        return Adopted(
            folder.name,
            folder.head.title,
            self.date,
            tuple(each.adopted for each in self.sets.values()),
            tuple(sorted(rules, key=lambda rule: rule.id)),
            tables,
            assumptions,
            tuple(self.amendments),
            tuple(each for each, _ in self.suspended.values()),
            cautions,
            meanings,
            self.catalogue,
        )

    # Which sets, in which editions.

    def _gather(self, folder: RulesetFolder, edition: str, since: str, newest_taken: bool) -> None:
        """Put a set in force after the sets that it adopts."""
        if folder.name in self.gathering:
            circle = " → ".join([*self.gathering[self.gathering.index(folder.name) :], folder.name])
            self.problems.append(
                Problem(folder.head_document.place(("adopts",)), f"sets adopt each other: {circle}", "break the circle")
            )
            self.incomplete = True
            return
        if folder.name in self.sets:
            held = self.sets[folder.name].adopted.edition
            if held != edition:
                what = f"{folder.name} is adopted in two editions, {held} and {edition}"
                self.problems.append(Problem(folder.head_document.place(()), what, "adopt one"))
            return
        adoptions = self._chosen(folder)
        self.gathering.append(folder.name)
        for adopted_name, place, adopted_edition, from_, newest in adoptions:
            below = self.library.folder(adopted_name, place)
            if adopted_edition not in below.head.editions:
                right = nearest(adopted_edition, below.head.editions) or f"editions: {', '.join(below.head.editions)}"
                self.problems.append(Problem(place, f"{adopted_name} has no edition “{adopted_edition}”", right))
                self.incomplete = True
                continue
            self._gather(below, adopted_edition, from_, newest)
        self.gathering.pop()
        adopted = AdoptedSet(folder.name, folder.head.title, folder.head.document, edition, since, newest_taken)
        above = {adopted_name for adopted_name, *_ in adoptions}
        for adopted_name in list(above):
            above |= self.sets[adopted_name].adopts if adopted_name in self.sets else set()
        self.sets[folder.name] = SetInForce(folder, adopted, above)
        self._take_in(folder, edition)

    def _chosen(self, folder: RulesetFolder) -> list[tuple[str, Place, str, str, bool]]:
        by_set: dict[str, list[int]] = {}
        for index, adoption in enumerate(folder.head.adopts):
            by_set.setdefault(adoption.set, []).append(index)
        chosen: list[tuple[str, Place, str, str, bool]] = []
        for name, indices in by_set.items():
            places = {index: folder.head_document.place(("adopts", index, "set")) for index in indices}
            entries = [(index, folder.head.adopts[index]) for index in indices]
            if self.date:
                holding = [
                    (index, each)
                    for index, each in entries
                    if (each.from_ or "") <= self.date and (not each.to or self.date < each.to)
                ]
                if len(holding) != 1:
                    listed = "; ".join(
                        f"{e.edition} from {e.from_ or 'the beginning'} to {e.to or 'now'}" for _, e in entries
                    )
                    what = f"{len(holding) or 'no'} editions of {name} hold on {self.date}: {listed}"
                    self.problems.append(
                        Problem(places[indices[0]], what, "exactly one edition must hold on a permit's date")
                    )
                    self.incomplete = True
                    continue
            else:
                holding = [max(entries, key=lambda entry: (entry[1].from_ or "", entry[0]))]
            index, adoption = holding[0]
            newest = not self.date and len(entries) > 1
            chosen.append((name, places[index], adoption.edition, adoption.from_ or "", newest))
        return chosen

    # What a set brings.

    def _take_in(self, folder: RulesetFolder, edition: str) -> None:
        for id_, rule, topic, index in folder.rules():
            path: Path = ("rules", index)
            if rule.draft:
                continue
            cited = self._citation(folder, edition, rule, topic, path)
            if cited is None:
                continue
            cite, changes = cited
            data = copy.deepcopy(_data(topic, path))
            taken = RuleInForce(id_, rule, data, cite, topic, path, severity=rule.severity or "")
            self.rules[id_] = taken
            for dotted, value in changes.items():
                where: Path = (*path, "editions", edition, "sets", dotted)
                self._set(taken, dotted, value, topic.document.place(where), where, topic)
        for topic in folder.topics:
            take_in(topic, self.catalogue, self.problems)
            for index, table in enumerate(topic.model.tables):
                cited = self._citation(folder, edition, table, topic, ("tables", index))
                if cited:
                    rows = cited[1].get("rows")
                    at: Path = ("tables", index)
                    rows_at = topic.document.place((*at, "editions", edition, "sets", "rows")) if rows else None
                    self.tables[folder.full_id(topic, table.id)] = (table, topic, at, cited[0], rows, rows_at)
            for index, assumption in enumerate(topic.model.assumptions):
                path = ("assumptions", index)
                cited = self._citation(folder, edition, assumption, topic, path)
                if cited is None:
                    continue
                if assumption.name in self.assumptions:
                    what = f"the assumption “{assumption.name}” is made twice"
                    self.problems.append(
                        Problem(topic.document.place((*path, "name")), what, "amend the first instead")
                    )
                    continue
                if "value" in cited[1]:
                    assumption = assumption.model_copy(update={"value": cited[1]["value"]})
                    path = (*path, "editions", edition, "sets")
                self.assumptions[assumption.name] = (assumption, topic, path, cited[0], [])

    def _citation(
        self, folder: RulesetFolder, edition: str, item: Rule | Table | Assumption, topic: Topic, path: Path
    ) -> tuple[Citation, dict[str, Any]] | None:
        """The citation of an item and what its edition changes; None if the edition does not have it."""
        id_ = item.name if isinstance(item, Assumption) else item.id
        if (item.editions is None) == (item.cite is None):
            what = f"“{id_}” needs either `editions:` or `cite:`"
            right = 'editions: {"2021": {section: R311.7.5.1}}, or cite: common practice, no source'
            if item.cite is not None:
                what, right = f"“{id_}” has both `editions:` and `cite:`", "keep one of the two"
            self.problems.append(Problem(topic.document.place(path), what, right))
            return None
        if item.editions is None:
            return Citation("", "", item.cite or "", item.basis, item.known), {}
        for named in item.editions:
            if named not in folder.head.editions:
                right = nearest(named, folder.head.editions) or f"editions: {', '.join(folder.head.editions)}"
                self.problems.append(
                    Problem(
                        topic.document.key_place((*path, "editions", named)),
                        f"{folder.name} has no edition “{named}”",
                        right,
                    )
                )
        found: Edition | None = item.editions.get(edition)
        if found is None:
            return None
        return Citation(folder.head.short, edition, found.section, item.basis, found.known or item.known), found.sets

    # What the amendments change.

    def _amend(self, in_force: SetInForce) -> None:
        for topic in in_force.folder.topics:
            for index, amendment in enumerate(topic.model.amendments):
                path: Path = ("amendments", index)
                targets = [each for each in (amendment.rule, amendment.table, amendment.assumption) if each]
                place = topic.document.place(path)
                allowed = "rule" if amendment.rule else "table" if amendment.table else "assumption"
                does = {
                    "rule": bool(amendment.sets or amendment.suspend or amendment.severity or amendment.except_),
                    "table": amendment.rows is not None,
                    "assumption": amendment.value is not None,
                }
                stray = [name for name, there in does.items() if there and name != allowed]
                if len(targets) == 1 and (does[allowed] if stray else allowed == "rule" and not does[allowed]):
                    how = {
                        "rule": "sets, suspend, severity or except",
                        "table": "rows",
                        "assumption": "value",
                    }[allowed]
                    what = f"this amendment of {targets[0]} does nothing, or more than it can"
                    self.problems.append(Problem(place, what, f"amend {targets[0]} by {how}"))
                elif len(targets) != 1:
                    self.problems.append(
                        Problem(place, "an amendment changes one thing", "name one of rule, table, assumption")
                    )
                elif amendment.rule:
                    self._amend_rule(in_force, amendment, topic, path)
                elif amendment.table:
                    self._amend_table(in_force, amendment, topic, path)
                else:
                    self._amend_assumption(in_force, amendment, topic, path)

    def _once(self, in_force: SetInForce, target: str, what: str, place: Place) -> bool:
        """Whether nobody else changed the same thing, unless this set adopts whoever did."""
        overlapping = (
            found
            for (changed, path), found in self.changed.items()
            if changed == target and f"{path}.".startswith(f"{what}.") | f"{what}.".startswith(f"{path}.")
        )
        before = next(overlapping, None)
        self.changed[target, what] = (in_force.folder.name, place)
        if before and before[0] not in in_force.adopts:
            self.problems.append(
                Problem(place, f"{target} {what} is amended twice, first at {before[1]}", "keep one of the two")
            )
            return False
        return True

    def _applied(
        self,
        in_force: SetInForce,
        target: str,
        what: str,
        base: object,
        now: object,
        amendment: Amendment,
        place: Place,
    ) -> Applied:
        memory = " (from memory)" if amendment.known == "from memory" else ""
        applied = Applied(
            in_force.folder.name,
            target,
            what,
            _text(base),
            _text(now),
            amendment.cite + memory,
            amendment.reason or "",
            place,
        )
        self.amendments.append(applied)
        return applied

    def _amend_rule(self, in_force: SetInForce, amendment: Amendment, topic: Topic, path: Path) -> None:
        id_ = amendment.rule or ""
        place = topic.document.place((*path, "rule"))
        rule = self.rules.get(id_)
        if rule is None:
            right = nearest(id_, self.rules) or "see `dryfit rules list`"
            self.problems.append(Problem(place, f"no rule “{id_}” is in force to amend", right))
            return
        for at, value in (amendment.sets or {}).items():
            where: Path = (*path, "sets", at)
            if self._once(in_force, id_, at, topic.document.key_place(where)):
                base = self._set(rule, at, value, topic.document.place(where), where, topic)
                rule.amended_by.append(
                    self._applied(in_force, id_, at, base, value, amendment, topic.document.key_place(where))
                )
        if amendment.severity:
            where = (*path, "severity")
            if self._once(in_force, id_, "severity", topic.document.place(where)):
                if rule.severity == "danger" and not amendment.reason:
                    what = f"{id_} is a danger: lowering its severity needs a reason"
                    self.problems.append(Problem(topic.document.place(where), what, "add `reason:`"))
                rule.amended_by.append(
                    self._applied(
                        in_force,
                        id_,
                        "severity",
                        rule.severity,
                        amendment.severity,
                        amendment,
                        topic.document.place(where),
                    )
                )
                rule.severity = amendment.severity
        if amendment.except_:
            data = _data(topic, (*path, "except"))
            listed = rule.data.setdefault("except", [])
            for number, excuse in enumerate(data):
                where = (*path, "except", number)
                _map_places(rule.places, ("except", len(listed)), topic, where, excuse)
                listed.append(excuse)
                rule.amended_by.append(
                    self._applied(
                        in_force,
                        id_,
                        "except",
                        "",
                        amendment.except_[number].id,
                        amendment,
                        topic.document.place(where),
                    )
                )
        if amendment.suspend and self._once(in_force, id_, "suspend", topic.document.place(path)):
            memory = " (from memory)" if amendment.known == "from memory" else ""
            suspended = Suspended(
                id_,
                rule.rule.title,
                rule.rule.severity or rule.severity,
                amendment.cite + memory,
                amendment.reason or "",
            )
            self.suspended[id_] = (suspended, topic.document.place((*path, "suspend")))
            self._applied(in_force, id_, "suspend", "in force", "suspended", amendment, topic.document.place(path))

    def _amend_table(self, in_force: SetInForce, amendment: Amendment, topic: Topic, path: Path) -> None:
        id_ = amendment.table or ""
        place = topic.document.place((*path, "table"))
        if id_ not in self.tables:
            right = nearest(id_, self.tables) or f"tables: {', '.join(sorted(self.tables))}"
            self.problems.append(Problem(place, f"no table “{id_}” is in force to amend", right))
        elif amendment.rows is None:
            self.problems.append(Problem(place, "a table is amended by giving all its rows anew", "add `rows:`"))
        elif self._once(in_force, id_, "rows", place):
            table, base_topic, base_path, cite, rows, _ = self.tables[id_]
            data = _data(topic, (*path, "rows"))
            self.tables[id_] = (
                table,
                base_topic,
                base_path,
                cite,
                data,
                topic.document.place((*path, "rows")),
            )
            base = f"{len(rows if rows is not None else table.rows)} rows"
            self._applied(in_force, id_, "rows", base, f"{len(data)} rows", amendment, place)

    def _amend_assumption(self, in_force: SetInForce, amendment: Amendment, topic: Topic, path: Path) -> None:
        name = amendment.assumption or ""
        place = topic.document.place((*path, "assumption"))
        if name not in self.assumptions:
            right = nearest(name, self.assumptions) or f"assumptions: {', '.join(sorted(self.assumptions))}"
            self.problems.append(Problem(place, f"no assumption “{name}” is in force to amend", right))
        elif amendment.value is None:
            self.problems.append(Problem(place, "an assumption is amended by its value", "add `value:`"))
        elif self._once(in_force, name, "value", place):
            assumption, _, _, cite, applied = self.assumptions[name]
            now = self._applied(in_force, name, "value", assumption.value, amendment.value, amendment, place)
            changed = assumption.model_copy(update={"value": amendment.value})
            self.assumptions[name] = (changed, topic, path, cite, [*applied, now])

    def _set(self, rule: RuleInForce, at: str, value: Any, place: Place, where: Path, topic: Topic) -> Any:
        """Change a rule's data at a dotted path; gives what stood there."""
        steps = _steps(at)
        if steps[0] not in (
            "require",
            "asks",
            "when",
            "says",
            "remedy",
            "caution",
            "due",
            "decides",
            "except",
        ):
            self.problems.append(
                Problem(
                    place,
                    f"“{cut(at)}” is not a path that can be changed",
                    "as in require.riser_height.at_most",
                )
            )
            return None
        holder: Any = rule.data
        for step in steps[:-1]:
            known = list(holder) if isinstance(holder, dict) else []
            if (isinstance(holder, list) and isinstance(step, int) and step < len(holder)) or (
                isinstance(holder, dict) and step in holder
            ):
                holder = holder[step]  # type: ignore[index]
            else:
                right = nearest(str(step), map(str, known)) or _there(known)
                self.problems.append(Problem(place, f"{rule.id} has no “{step}” in “{cut(at)}”", right))
                return None
        last: Any = steps[-1]
        exists = last in holder if isinstance(holder, dict) else isinstance(last, int) and last < len(holder)
        if not exists:
            known = list(holder) if isinstance(holder, dict) else []
            right = nearest(str(last), map(str, known)) or _there(known)
            self.problems.append(Problem(place, f"{rule.id} has no “{last}” in “{cut(at)}”", right))
            return None
        base = holder[last]
        holder[last] = value
        _map_places(rule.places, tuple(steps), topic, where, value)
        return base

    def _check_suspensions(self, rules: list[Any], tables: dict[str, AdoptedTable]) -> None:
        """Take suspended rules out; one that bears on a danger needs a reason."""
        bearing = _bearing_on_danger(rules, {id_ for id_, each in self.rules.items() if each.rule.severity == "danger"})
        for id_, (suspended, place) in self.suspended.items():
            if id_ in bearing and not suspended.reason:
                self.problems.append(
                    Problem(
                        place,
                        f"{id_} bears on a danger: suspending it needs a reason",
                        "add `reason:`; the report prints it",
                    )
                )
            rule = next((each for each in rules if each.id == id_), None)
            if rule is not None:
                rules.remove(rule)
        concluded = {(rule.kind, rule.concludes) for rule in rules if rule.concludes}
        for rule in rules:
            for kind, name, place in _read_conclusions(rule, self.rules[rule.id]):
                if (kind, name) not in concluded:
                    what = f"{rule.id} reads the conclusion {kind}.{name}, which no rule in force concludes"
                    self.problems.append(Problem(place, what, "do not suspend what concludes it, or add a rule"))


def _bearing_on_danger(rules: list[Any], base_dangers: set[str]) -> set[str]:
    """Ids of dangers, by the base set or as amended, and of the conclusions that they reach."""
    by_conclusion: dict[tuple[str, str], list[Any]] = {}
    for rule in rules:
        if rule.concludes:
            by_conclusion.setdefault((rule.kind, rule.concludes), []).append(rule)
    found: set[str] = set()
    stack = [rule for rule in rules if rule.severity == "danger" or rule.id in base_dangers]
    while stack:
        rule = stack.pop()
        if rule.id in found:
            continue
        found.add(rule.id)
        for top in (rule.when, rule.require, *(excuse.when for excuse in rule.excuses)):
            for node in top.walk():
                for name in node.attributes():
                    stack += by_conclusion.get((node.kind, name), [])
    return found


def _read_conclusions(rule: Any, source: RuleInForce) -> Iterator[tuple[str, str, Place]]:
    from checker.glossary import glossary

    kinds = glossary().kinds
    for top in (rule.when, rule.require, *(excuse.when for excuse in rule.excuses)):
        for node in top.walk():
            for name in node.attributes():
                if name not in kinds[node.kind].attributes:
                    yield node.kind, name, source.place(())


def _data(topic: Topic, path: Path) -> Any:
    """What stands at a path of a topic's file."""
    data: Any = topic.document.data
    for step in path:
        data = data[step]
    return data


def _steps(at: str) -> list[str | int]:
    return [int(step) if step.isdigit() else step for step in at.split(".")]


def _map_places(places: dict[Path, Place], at: Path, topic: Topic, where: Path, value: Any) -> None:
    """Note the place of a changed value and of everything inside it."""
    places[at] = topic.document.place(where)
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in items:
        _map_places(places, (*at, step), topic, (*where, step), inner)


def _there(known: list[Any]) -> str:
    return f"there: {', '.join(map(str, known))}" if known else "as in require.riser_height.at_most"


def _text(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return ", ".join(f"{key}: {_text(inner)}" for key, inner in value.items())
    if isinstance(value, list):
        return ", ".join(_text(inner) for inner in value)
    return str(value)
