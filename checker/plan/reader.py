"""Reading a plan file: from YAML with positions to a checked plan and its elements."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, cast

from pydantic import BaseModel, ValidationError

from checker.glossary import element_models, is_element, typed_fields
from checker.mistakes import problems_of
from checker.plan.consistency import Found, Steps, check_drawn_rooms, check_loops, check_pairs
from checker.plan.elements import STATUSES, Element, Single, Status
from checker.plan.fields import LinkTo
from checker.plan.model import Plan
from checker.problems import Place, Problem, Unreadable, nearest
from checker.source import Document, read, read_text

_PARTS_FOLLOW: frozenset[Status] = frozenset(STATUSES) - {"altered"}


@dataclass(frozen=True, slots=True)
class ReadPlan:
    """A plan that was read: the model, its text with positions, and its elements by kind and id."""

    plan: Plan
    document: Document
    elements: dict[tuple[str, str], Found]
    complete_kinds: frozenset[str]
    open_links: frozenset[tuple[str, str, str]] = frozenset()
    """Links that nobody has listed in full though their kind is complete: kind, id, link."""

    def place(self, kind: str, id_: str, field: str = "") -> Place:
        """Give the place of an element, or of one of its lines."""
        path = self.elements[kind, id_].path
        return self.document.place((*path, field) if field else path)


def read_plan(path: Path, shown_as: str | None = None) -> ReadPlan:
    """Read a plan file.

    path: the file; shown_as: the name that messages give it. Raises Unreadable with every problem of the file.
    """
    return plan_from(read(path, shown_as=shown_as))


def plan_from_text(text: str, shown_as: str = "plan.yaml") -> ReadPlan:
    """Read a plan from text. Raises Unreadable with every problem."""
    return plan_from(read_text(text, shown_as))


def plan_from(document: Document) -> ReadPlan:
    """Check a document as a plan. Raises Unreadable with every problem."""
    if not isinstance(document.data, dict):
        raise Unreadable(
            [
                Problem(
                    document.place(()),
                    "this is not a plan: `key: value` lines are needed",
                    "start with `plan: ` and a title",
                )
            ]
        )
    try:
        plan = Plan.model_validate(document.data)
    except ValidationError as error:
        found = list(problems_of(error, Plan, document))
        raise Unreadable([*found, *_further_problems(document, error)]) from None
    problems: list[Problem] = []
    elements = _elements(plan, document, problems)
    _check_links(elements, document, problems)
    for check in (check_pairs, check_loops, check_drawn_rooms):
        problems += check(elements, document)
    if problems:
        raise Unreadable(problems)
    return ReadPlan(plan, document, elements, _complete_kinds(plan))


def _further_problems(document: Document, error: ValidationError) -> list[Problem]:
    """What is wrong with ids, statuses and links in the rest of a plan that has lines which cannot be used."""
    data = copy.deepcopy(document.data)
    status_wrong: set[Place] = set()
    for detail in error.errors(include_url=False, include_context=False, include_input=False):
        path: Steps = tuple(detail["loc"])
        while path and (not document.has(path) or not isinstance(path[-1], str)):
            path = path[:-1]
        if not path or detail["type"] == "missing" or not _drop(data, path):
            return []
        if path[-1] == "status":
            status_wrong.add(document.place(path[:-1]))
    try:
        plan = Plan.model_validate(data)
    except ValidationError:
        return []
    problems: list[Problem] = []
    _check_links(_elements(plan, document, problems), document, problems)
    return [each for each in problems if each.place not in status_wrong]


def _drop(data: Any, path: Steps) -> bool:
    """Take a line out of the data; not one that holds elements, whose ids others may name."""
    for step in path[:-1]:
        data = data[step]
    value = data.get(path[-1])
    if isinstance(value, dict) or (isinstance(value, list) and any(isinstance(item, dict) for item in value)):
        return False
    data.pop(path[-1], None)
    return True


def _walk(section: BaseModel, path: Steps) -> Iterator[tuple[Element, Steps, Element | None]]:
    """Every element at or below a section, with its path and what holds it, holders first."""
    stack: list[tuple[BaseModel, Steps, Element | None]] = [(section, path, None)]
    while stack:
        model, at, holder = stack.pop()
        if isinstance(model, Element):
            yield model, at, holder
        inner: list[tuple[BaseModel, Steps, Element | None]] = []
        for name in type(model).model_fields:
            value = getattr(model, name)
            held_by = model if isinstance(model, Element) else None
            if isinstance(value, BaseModel) and name != "was":
                inner.append((value, (*at, name), held_by))
            elif isinstance(value, list):
                inner += [
                    (item, (*at, name, index), held_by)
                    for index, item in enumerate(value)
                    if isinstance(item, BaseModel)
                ]
        stack += reversed(inner)


def _elements(plan: Plan, document: Document, problems: list[Problem]) -> dict[tuple[str, str], Found]:
    elements: dict[tuple[str, str], Found] = {}
    for element, path, holder in _walk(plan, ()):
        key = (element.kind, "" if isinstance(element, Single) else element.id)
        if key in elements:
            first = document.place((*elements[key].path, "id"))
            problems.append(
                Problem(
                    document.place((*path, "id")),
                    f"the id “{element.id}” is used twice for a {element.kind}, first on line {first.line}",
                    "give each its own id",
                )
            )
            continue
        holder_key = (holder.kind, holder.id) if holder is not None else None
        status = cast("Status | None", getattr(element, "status", None))
        if status is None and element.has_status:
            above = elements.get(holder_key) if holder_key else None
            if above is not None and above.status in _PARTS_FOLLOW:
                status = above.status
            elif above is not None and above.status == "altered":
                problems.append(
                    Problem(
                        document.place(path),
                        f"{element.kind} “{element.id}” needs a status of its own: the {above.element.kind} that holds "
                        "it is altered, so its parts may be old or new",
                        f"add `status:` with one of: {', '.join(STATUSES)}",
                    )
                )
            elif above is None:
                problems.append(
                    Problem(
                        document.place(path),
                        f"{element.kind} “{element.id}” needs a status",
                        f"add `status:` with one of: {', '.join(STATUSES)}",
                    )
                )
        held = elements.get(holder_key) if holder_key else None
        if status == "existing" and held is not None and held.status in ("new", "replaced", "moved"):
            problems.append(
                Problem(
                    document.place((*path, "status")),
                    f"{element.kind} “{element.id}” is existing in a {held.element.kind} that is {held.status}",
                    "what is kept in new work is `reused`, and judged as new",
                )
            )
        if getattr(element, "was", None) is not None and status in ("new", "existing", "removed"):
            problems.append(
                Problem(
                    document.key_place((*path, "was")),
                    f"{element.kind} “{element.id}” is {status}, yet it says what it was",
                    "`was` goes with altered, replaced, moved or reused; a room that only changes its use is altered",
                )
            )
        elements[key] = Found(element, path, status, holder_key)
    return elements


def _check_links(elements: dict[tuple[str, str], Found], document: Document, problems: list[Problem]) -> None:
    ids: dict[str, list[str]] = {}
    for kind, id_ in elements:
        ids.setdefault(kind, []).append(id_)
    named_by: dict[tuple[str, str, str], tuple[str, Place]] = {}
    for found in elements.values():
        for name, of in typed_fields(type(found.element)):
            link = of.mark(LinkTo)
            value: Any = getattr(found.element, name)
            if link is None or value is None:
                continue
            named = (
                [(value, (*found.path, name))]
                if isinstance(value, str)
                else [(item, (*found.path, name, index)) for index, item in enumerate(value)]
            )
            for target, path in named:
                if target not in ids.get(link.kind, ()):
                    known = ids.get(link.kind, [])
                    right = nearest(target, known) or (
                        f"the plan has: {', '.join(known[:12])}" if known else f"the plan has no {link.kind}"
                    )
                    problems.append(Problem(document.place(path), f"no {link.kind} has the id “{target}”", right))
                elif [item for item, _ in named].count(target) > 1 and path[-1] == [item for item, _ in named].index(
                    target
                ):
                    problems.append(
                        Problem(document.place(path), f"“{target}” stands twice in this list", "name it once")
                    )
                elif (link.exclusive or link.inverse_to_one) and found.status != "removed":
                    first = named_by.setdefault(
                        (found.element.kind, name, target), (found.element.id, document.place(path))
                    )
                    if first[0] != found.element.id:
                        two = f"two {found.element.kind}s, first on line {first[1].line}"
                        what = f"{link.kind} “{target}” is named by {two}"
                        problems.append(Problem(document.place(path), what, "it can belong to one only"))


def _complete_kinds(plan: Plan) -> frozenset[str]:
    """Kinds of which the plan lists every element."""
    complete = set(element_models())

    def visit(model: BaseModel, declared: type[BaseModel]) -> None:
        for name, of in typed_fields(declared):
            if not (isinstance(of.base, type) and issubclass(of.base, BaseModel)) or name == "was":
                continue
            value = getattr(model, name)
            if of.is_list and is_element(of.base):
                if model.is_open(name):  # type: ignore[attr-defined]
                    complete.difference_update(_kinds_below(of.base))
                for item in value or ():
                    visit(item, of.base)
            elif isinstance(value, BaseModel):
                visit(value, of.base)

    visit(plan, Plan)
    return frozenset(complete)


def _kinds_below(model: Any) -> set[str]:
    kinds = {model.kind}
    for _, of in typed_fields(model):
        if is_element(of.base):
            kinds |= _kinds_below(of.base)
    return kinds
