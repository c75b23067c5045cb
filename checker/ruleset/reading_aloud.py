"""Conditions in words, as `dryfit rules show` prints them."""

from __future__ import annotations

from checker.engine.conditions import Against, LookUp, Node
from checker.glossary import glossary
from checker.units import show

_COMPARED = {
    "at_least": "at least",
    "at_most": "at most",
    "over": "over",
    "under": "under",
    "is": "",
    "between": "from",
}


def in_words(node: Node) -> str:
    """A condition as a person would read it out."""
    match node.op:
        case "all":
            return ", and ".join(_inner(kid) for kid in node.kids)
        case "any":
            return "either " + ", or ".join(_inner(kid) for kid in node.kids)
        case "none":
            return _none(node)
        case "some":
            return _some(node)
        case "count":
            compared = {"at_least": "at least", "at_most": "at most", "is": "exactly"}[node.count_op]
            which = f" with {in_words(node.kids[0])}" if not node.kids[0].always else ""
            number = node.argument if isinstance(node.argument, float) else 0.0
            return f"{compared} {number:.0f} of its {_name(node.link)}{which}"
        case "stated":
            return f"{_name(node.attribute)} on the plan"
    return _comparison(node)


def _inner(node: Node) -> str:
    words = in_words(node)
    return f"({words})" if node.op in ("all", "any") and len(node.kids) > 1 else words


def _none(node: Node) -> str:
    only = node.kids[0] if len(node.kids) == 1 else None
    if only is not None and only.op == "some" and only.kids[0].op == "none" and len(only.kids[0].kids) == 1:
        return f"each of its {_name(only.link)} with {_inner(only.kids[0].kids[0])}"
    if only is not None and only.op == "some":
        return f"none of its {_name(only.link)}" + ("" if only.kids[0].always else f" with {_inner(only.kids[0])}")
    return "not " + ", nor ".join(_inner(kid) for kid in node.kids)


def _some(node: Node) -> str:
    kid = node.kids[0]
    link = glossary().kinds[node.kind].links[node.link]
    if link.to_one:
        return f"its {_name(node.link)} with {_inner(kid)}" if not kid.always else f"it has a {_name(node.link)}"
    return f"one of its {_name(node.link)}" + ("" if kid.always else f" with {_inner(kid)}")


def _comparison(node: Node) -> str:
    known = glossary().kinds[node.kind].attributes.get(node.attribute)
    name = _name(node.attribute)
    argument = node.argument
    if isinstance(argument, bool):
        return name if argument else f"not {name}"
    compared = f"{name} {_COMPARED[node.op]}".rstrip()
    if isinstance(argument, Against):
        times = f"{argument.times:g} times " if argument.times != 1 else ""
        via = f" of its {_name(argument.via)}" if argument.via else ""
        return f"{compared} {times}its {_name(argument.attribute)}{via}".replace("its width of its", "the width of its")
    if isinstance(argument, LookUp):
        by = " and ".join(_name(attribute) for _, attribute in argument.keys)
        return f"{compared} {_name(argument.column)} in {argument.table} by {by}"
    if isinstance(argument, tuple):
        if node.op == "between":
            low, high = (_quantity(each, known) for each in argument)
            return f"{name} from {low} to {high}"
        return f"{compared} {' or '.join(str(each) for each in argument)}"
    return f"{compared} {_quantity(argument, known)}"


def _quantity(value: object, known: object) -> str:
    dimension = getattr(known, "dimension", None)
    return show(float(str(value)), dimension, "us") if dimension else str(value)


def _name(name: str) -> str:
    return name.replace("_", " ")
