"""Conditions of rules: from the data of a rule file to a checked tree.

A condition is a mapping; several keys must all hold. Keys are attributes (with comparisons), to-one links (with a
condition on the element they lead to), `all`, `any`, `none` (lists of conditions), and `some`, `every`, `no`, `count`
(over a to-many link: `of`, `where`, `that`).
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from checker.glossary import Attribute, Glossary, Kind
from checker.problems import Place, Problem, nearest
from checker.units import Dimension, QuantityError, example_for, parse
from checker.units.outside import parse_outside

Path = tuple[str | int, ...]
LOGIC = ("all", "any", "none")
QUANTIFIERS = ("some", "every", "no")
COMPARISONS = ("at_least", "at_most", "over", "under")
COUNTS = ("at_least", "at_most", "is")


@dataclass(frozen=True, slots=True)
class Against:
    """Another attribute to compare with: of the same element, or across a to-one link; `times` scales it."""

    attribute: str
    kind: str
    via: str = ""
    times: float = 1.0


@dataclass(frozen=True, slots=True)
class LookUp:
    """A value column of a table, found by attributes of the element: (column, attribute) pairs."""

    table: str
    keys: tuple[tuple[str, str], ...]
    column: str


Argument = float | bool | str | tuple[str, ...] | tuple[float, float] | Against | LookUp | None


@dataclass(frozen=True, slots=True)
class Node:
    """One condition about one element of `kind`.

    op: all, any, none; some, count (over `link`, whose members the only kid speaks of); at_least, at_most, over,
    under, is, between, stated (of `attribute`). `count_op` is the comparison of a count. Every other word is
    rewritten to these.
    """

    op: str
    kind: str
    attribute: str = ""
    argument: Argument = None
    link: str = ""
    kids: tuple[Node, ...] = ()
    count_op: str = ""

    def walk(self) -> Iterator[Node]:
        """This condition and every one below it."""
        yield self
        for kid in self.kids:
            yield from kid.walk()

    def attributes(self) -> Iterator[str]:
        """The attributes that this condition itself reads on its element."""
        if self.attribute:
            yield self.attribute
        if isinstance(self.argument, Against) and not self.argument.via:
            yield self.argument.attribute
        if isinstance(self.argument, LookUp):
            for _, attribute in self.argument.keys:
                yield attribute

    def is_numeric(self) -> bool:
        """Whether it compares a quantity with a limit."""
        return self.op in (*COMPARISONS, "between") or (self.op == "is" and isinstance(self.argument, float))

    @property
    def always(self) -> bool:
        """Whether it is the empty condition, which always holds."""
        return self.op == "all" and not self.kids


@dataclass(frozen=True, slots=True)
class TableShape:
    """What conditions need to know of a table."""

    keys: Mapping[str, tuple[Literal["exact", "interval"], Dimension | None]]
    values: Mapping[str, Dimension]


@dataclass(slots=True)
class ConditionReader:
    """Reads conditions of one file, collecting problems.

    place: gives the place of a path of keys in the file; stated_allowed: whether `stated` may be used (rules that ask).
    """

    glossary: Glossary
    tables: Mapping[str, TableShape]
    place: Callable[[Path], Place]
    problems: list[Problem]
    stated_allowed: bool = False
    _reading: list[str] = field(default_factory=list)

    def read(self, data: Any, kind: str, path: Path) -> Node:
        """Read the condition at `path` about an element of `kind`."""
        if data is None:
            return Node("all", kind)
        if not isinstance(data, dict):
            return self._wrong(path, kind, "a condition is needed: a group of `attribute: {comparison: value}` lines")
        kids = [kid for key, value in data.items() for kid in self._key(key, value, kind, (*path, key))]
        return kids[0] if len(kids) == 1 else Node("all", kind, kids=tuple(kids))

    def _wrong(self, path: Path, kind: str, what: str, right: str = "") -> Node:
        self.problems.append(Problem(self.place(path), what, right))
        return Node("all", kind)

    def _key(self, key: str, value: Any, kind: str, path: Path) -> list[Node]:
        of = self.glossary.kinds[kind]
        if key in LOGIC:
            if not isinstance(value, list) or not value:
                return [self._wrong(path, kind, f"`{key}` needs a list of conditions", f"{key}: [{{…}}, {{…}}]")]
            kids = tuple(self.read(item, kind, (*path, index)) for index, item in enumerate(value))
            return [Node(key, kind, kids=kids)]
        if key in (*QUANTIFIERS, "count"):
            return [self._quantifier(key, value, of, path)]
        if key in of.attributes:
            return self._comparisons(of.attributes[key], value, of, path)
        if key in of.links:
            link = of.links[key]
            if not link.to_one:
                return [
                    self._wrong(
                        path,
                        kind,
                        f"`{key}` leads to several {link.target}s",
                        f"write some, every, no or count, as in some: {{of: {key}, that: {{…}}}}",
                    )
                ]
            return [Node("some", kind, link=key, kids=(self.read(value, link.target, path),))]
        known = [*of.attributes, *of.links, *LOGIC, *QUANTIFIERS, "count"]
        right = nearest(key, known) or f"see `dryfit glossary {kind}`"
        return [self._wrong(path, kind, f"a {kind} has no attribute or link `{key}`", right)]

    def _quantifier(self, word: str, value: Any, of: Kind, path: Path) -> Node:
        allowed = ("of", "where", "that", *(COUNTS if word == "count" else ()))
        if not isinstance(value, dict) or "of" not in value:
            return self._wrong(path, of.name, f"`{word}` needs `of:` with a link", f"{word}: {{of: …, that: {{…}}}}")
        for key in value:
            if key not in allowed:
                self._wrong((*path, key), of.name, f"`{word}` has no `{key}`", f"known here: {', '.join(allowed)}")
        link = of.links.get(str(value["of"]))
        if link is None:
            right = nearest(str(value["of"]), of.links) or f"links: {', '.join(sorted(of.links))}"
            return self._wrong((*path, "of"), of.name, f"a {of.name} has no link `{value['of']}`", right)
        target = link.target
        where = self.read(value.get("where"), target, (*path, "where"))
        that = self.read(value.get("that"), target, (*path, "that"))
        if word == "every":
            body = Node("any", target, kids=(Node("none", target, kids=(where,)), that))
            return Node(
                "none",
                of.name,
                kids=(Node("some", of.name, link=link.name, kids=(Node("none", target, kids=(body,)),)),),
            )
        body = Node("all", target, kids=tuple(kid for kid in (where, that) if not kid.always))
        if word == "count":
            counts = [(op, value[op]) for op in COUNTS if op in value]
            if len(counts) != 1 or isinstance(counts[0][1], bool) or not isinstance(counts[0][1], int):
                return self._wrong(
                    path,
                    of.name,
                    "`count` needs one of at_least, at_most, is, with a whole number",
                    "at_least: 1",
                )
            return Node(
                "count",
                of.name,
                link=link.name,
                kids=(body,),
                count_op=counts[0][0],
                argument=float(counts[0][1]),
            )
        some = Node("some", of.name, link=link.name, kids=(body,))
        return Node("none", of.name, kids=(some,)) if word == "no" else some

    def _comparisons(self, attribute: Attribute, value: Any, of: Kind, path: Path) -> list[Node]:
        if attribute.form in ("series", "name") and (not isinstance(value, dict) or set(value) != {"stated"}):
            what = "a list of values" if attribute.form == "series" else "a name that the plan gives"
            right = f"an `asks:` can ask whether it is there: {attribute.name}: {{stated: true}}"
            return [self._wrong(path, of.name, f"`{attribute.name}` is {what}, which rules cannot compare", right)]
        if not isinstance(value, dict) or not value:
            example = {"quantity": "{at_least: …}", "flag": "{is: true}"}.get(attribute.form, "{is: …}")
            return [
                self._wrong(path, of.name, f"`{attribute.name}` needs a comparison", f"{attribute.name}: {example}")
            ]
        return [self._comparison(op, argument, attribute, of, (*path, op)) for op, argument in value.items()]

    def _comparison(self, op: str, value: Any, attribute: Attribute, of: Kind, path: Path) -> Node:
        allowed = {
            "quantity": (*COMPARISONS, "is", "between"),
            "flag": ("is",),
            "choice": ("is",),
        }.get(attribute.form, ())
        if op == "stated":
            if not self.stated_allowed:
                return self._wrong(
                    path,
                    of.name,
                    "`stated` belongs to rules that ask for an item",
                    "use `asks:` instead of `require:`",
                )
            if value is not True:
                return self._wrong(path, of.name, "`stated` is always true", "stated: true")
            return Node("stated", of.name, attribute.name)
        if op not in allowed:
            right = nearest(op, allowed) or f"for `{attribute.name}`: {', '.join(allowed)}"
            return self._wrong(path, of.name, f"“{op}” is no comparison for a {attribute.form}", right)
        argument = self._argument(op, value, attribute, of, path)
        if argument is None:
            return Node("all", of.name)
        return Node(op, of.name, attribute.name, argument)

    def _argument(self, op: str, value: Any, attribute: Attribute, of: Kind, path: Path) -> Argument:
        if isinstance(value, dict) and op != "between":
            if "table" in value:
                return self._look_up(value, attribute, of, path)
            return self._against(value, attribute, of, path)
        if op == "between":
            if not isinstance(value, list) or len(value) != 2:
                self._wrong(path, of.name, "`between` needs two values", "between: [34 in, 38 in]")
                return None
            low, high = (self._quantity(item, attribute, (*path, index)) for index, item in enumerate(value))
            if low is None or high is None:
                return None
            if low > high:
                self._wrong(path, of.name, "the lower value of `between` is above the upper one", "swap them")
                return None
            return (low, high)
        if attribute.form == "quantity":
            return self._quantity(value, attribute, path)
        if attribute.form == "flag":
            if not isinstance(value, bool):
                self._wrong(path, of.name, f"`{attribute.name}` is true or false", "is: true")
                return None
            return value
        wanted = value if isinstance(value, list) else [value]
        if not wanted:
            right = f"one of: {', '.join(attribute.choices)}"
            self._wrong(path, of.name, f"`{attribute.name}` needs at least one choice", right)
            return None
        for index, choice in enumerate(wanted):
            if choice not in attribute.choices:
                at = (*path, index) if isinstance(value, list) else path
                right = nearest(str(choice), attribute.choices) or f"one of: {', '.join(attribute.choices)}"
                self._wrong(at, of.name, f"`{attribute.name}` is never “{choice}”", right)
                return None
        return tuple(wanted)

    def _quantity(self, value: Any, attribute: Attribute, path: Path) -> float | None:
        dimension = attribute.dimension
        assert dimension is not None
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            self.problems.append(
                Problem(self.place(path), f"{dimension.phrase} is needed", f"write: {example_for(dimension)}")
            )
            return None
        try:
            return parse(value, dimension)
        except QuantityError as error:
            with contextlib.suppress(QuantityError):
                return parse_outside(str(value), dimension)
            self.problems.append(Problem(self.place(path), f"`{attribute.name}`: {error.what}", error.right))
            return None

    def _against(self, value: dict[str, Any], attribute: Attribute, of: Kind, path: Path) -> Against | None:
        for key in value:
            if key not in ("attribute", "via", "times"):
                self._wrong((*path, key), of.name, f"“{key}” is not known here", "known: attribute, via, times")
                return None
        target = of
        via = str(value.get("via", ""))
        if via:
            link = of.links.get(via)
            if link is None or not link.to_one:
                to_one = [name for name, each in of.links.items() if each.to_one]
                right = nearest(via, to_one) or f"to-one links: {', '.join(sorted(to_one))}"
                self._wrong((*path, "via"), of.name, f"a {of.name} has no to-one link “{via}”", right)
                return None
            target = self.glossary.kinds[link.target]
        name = str(value.get("attribute", ""))
        other = target.attributes.get(name)
        if other is None:
            right = nearest(name, target.attributes)
            self._wrong((*path, "attribute"), of.name, f"a {target.name} has no attribute “{name}”", right)
            return None
        if (other.form, other.dimension) != (attribute.form, attribute.dimension):
            what = f"`{attribute.name}` and `{name}` do not measure the same thing"
            self._wrong((*path, "attribute"), of.name, what, "compare attributes of one dimension")
            return None
        times = value.get("times", 1)
        if isinstance(times, bool) or not isinstance(times, int | float) or times <= 0:
            self._wrong((*path, "times"), of.name, "`times` is a plain number above 0", "times: 0.5")
            return None
        if times != 1 and attribute.form != "quantity":
            self._wrong((*path, "times"), of.name, f"`times` cannot scale a {attribute.form}", "take it out")
            return None
        return Against(name, target.name, via, float(times))

    def _look_up(self, value: dict[str, Any], attribute: Attribute, of: Kind, path: Path) -> LookUp | None:
        table = self.tables.get(str(value["table"]))
        if table is None:
            right = nearest(str(value["table"]), self.tables) or "add the table, or adopt the set that has it"
            self._wrong((*path, "table"), of.name, f"there is no table “{value['table']}”", right)
            return None
        for key in value:
            if key not in ("table", "by", "column"):
                self._wrong((*path, key), of.name, f"“{key}” is not known here", "known: table, by, column")
                return None
        by = value.get("by")
        if not isinstance(by, dict) or set(by) != set(table.keys):
            self._wrong(
                path,
                of.name,
                "a look-up names an attribute for each key column",
                f"by: {{{', '.join(f'{key}: …' for key in table.keys)}}}",
            )
            return None
        keys: list[tuple[str, str]] = []
        for column, name in by.items():
            attribute_of_key = of.attributes.get(str(name))
            if attribute_of_key is None:
                self._wrong(
                    (*path, "by", column),
                    of.name,
                    f"a {of.name} has no attribute “{name}”",
                    nearest(str(name), of.attributes),
                )
                return None
            if table.keys[column][1] != attribute_of_key.dimension or attribute_of_key.form in ("series", "name"):
                self._wrong(
                    (*path, "by", column),
                    of.name,
                    f"`{name}` does not fit the column `{column}`",
                    "use an attribute of the column's dimension",
                )
                return None
            keys.append((column, str(name)))
        column = str(value.get("column", next(iter(table.values))))
        if column not in table.values:
            self._wrong(
                (*path, "column"),
                of.name,
                f"the table has no value column “{column}”",
                nearest(column, table.values),
            )
            return None
        if table.values[column] != attribute.dimension:
            self._wrong(
                path,
                of.name,
                f"the table's `{column}` and `{attribute.name}` do not measure the same thing",
                "",
            )
            return None
        return LookUp(str(value["table"]), tuple(keys), column)


def to_data(node: Node) -> dict[str, Any]:
    """A condition as plain data, for the cache."""
    data: dict[str, Any] = {"op": node.op, "kind": node.kind}
    if node.attribute:
        data["attribute"] = node.attribute
    if node.link:
        data["link"] = node.link
    if node.count_op:
        data["count_op"] = node.count_op
    match node.argument:
        case None:
            pass
        case Against(attribute, kind, via, times):
            data["against"] = [attribute, kind, via, times]
        case LookUp(table, keys, column):
            data["look_up"] = [table, keys, column]
        case _:
            data["argument"] = node.argument
    if node.kids:
        data["kids"] = [to_data(kid) for kid in node.kids]
    return data


def from_data(data: Mapping[str, Any]) -> Node:
    """A condition from plain data."""
    argument: Argument = None
    if "against" in data:
        argument = Against(*data["against"])
    elif "look_up" in data:
        table, keys, column = data["look_up"]
        argument = LookUp(table, tuple((key, attribute) for key, attribute in keys), column)
    elif "argument" in data:
        argument = tuple(data["argument"]) if isinstance(data["argument"], list) else data["argument"]
    return Node(
        data["op"],
        data["kind"],
        data.get("attribute", ""),
        argument,
        data.get("link", ""),
        tuple(from_data(kid) for kid in data.get("kids", ())),
        data.get("count_op", ""),
    )
