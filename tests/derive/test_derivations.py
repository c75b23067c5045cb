"""The derivations as a whole: what they need exists, none goes in a circle, and a badly declared one is refused."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

import pytest

from checker.derive import derivations
from checker.derive.registry import Derivation, Need, derives, lacks
from checker.glossary import Glossary, glossary
from checker.units import Dimension

Key = tuple[str, str]
ALL = derivations()


def needed(of: Derivation, need: Need, words: Glossary) -> Iterator[Key | str]:
    """The attribute that a need reads, as (kind, attribute); what is wrong with it, as text."""
    at = words.kinds[of.kind]
    for number, step in enumerate(need.steps):
        link = at.links.get(step)
        if link is None:
            yield f"{at.name} has no link {step}"
            return
        if not link.to_one and not (need.many and number <= len(need.steps)):
            yield f"{at.name}.{step} leads to several"
        at = words.kinds[link.target]
    if need.attribute not in at.attributes:
        yield f"{at.name} has no attribute {need.attribute}"
    else:
        yield at.name, need.attribute


def faults(of: Iterable[Derivation]) -> list[str]:
    """What is wrong with the needs of derivations."""
    words = glossary()
    return [
        f"{each.kind}.{each.attribute} {name}: {found}"
        for each in of
        for name, need in each.needs.items()
        if not need.assumption and not need.catalogue
        for found in needed(each, need, words)
        if isinstance(found, str)
    ]


def circle(of: Mapping[Key, Derivation]) -> tuple[Key, ...]:
    """A circle of attributes that need each other, the first again at the end; () if there is none."""
    words, done = glossary(), set[Key]()

    def visit(key: Key, above: tuple[Key, ...]) -> tuple[Key, ...]:
        if key in above:
            return (*above[above.index(key) :], key)
        if key in done or key not in of:
            return ()
        done.add(key)
        for need in of[key].needs.values():
            # Along a chain that ends, as from duct to duct, an attribute may need itself.
            if any(words.kinds[key[0]].links[step].ends for step in need.steps[:1]):
                continue
            for below in needed(of[key], need, words) if not need.assumption and not need.catalogue else ():
                if isinstance(below, tuple) and (found := visit(below, (*above, key))):
                    return found
        return ()

    return next((found for key in of if (found := visit(key, ()))), ())


def _derivation(target: str, **needs: Need) -> Derivation:
    kind, attribute = target.split(".")
    return replace(ALL["flight", "riser_height"], kind=kind, attribute=attribute, needs=needs)


def _same(attribute: str) -> Need:
    return Need((), attribute, False)


def test_there_are_derivations() -> None:
    assert len(ALL) > 30
    assert all(key == (each.kind, each.attribute) for key, each in ALL.items())


def test_every_need_is_there() -> None:
    assert faults(ALL.values()) == []


@pytest.mark.parametrize(
    ("need", "words"),
    [
        (Need((), "risres", False), "flight has no attribute risres"),
        (Need(("stiar",), "risers", False), "flight has no link stiar"),
        (Need(("stair",), "gong", False), "stair has no attribute gong"),
        (Need(("handrails",), "height", False), "flight.handrails leads to several"),
    ],
)
def test_a_need_that_is_not_there_would_be_found(need: Need, words: str) -> None:
    assert faults([_derivation("flight.pitch", some_m=need)]) == [f"flight.pitch some_m: {words}"]


def test_no_derivation_goes_in_a_circle() -> None:
    assert circle(ALL) == ()


def test_a_planted_circle_would_be_found() -> None:
    planted = {**ALL, ("flight", "risers"): _derivation("flight.risers", one=_same("pitch"))}
    assert circle(planted) == (
        ("flight", "riser_height"),
        ("flight", "risers"),
        ("flight", "pitch"),
        ("flight", "riser_height"),
    )


def test_a_planted_circle_across_links_would_be_found() -> None:
    rises = Need(("stairs_up",), "total_rise", True)
    planted = {**ALL, ("level", "floor_to_floor"): _derivation("level.floor_to_floor", one=rises)}
    assert circle(planted) == (("stair", "total_rise"), ("level", "floor_to_floor"), ("stair", "total_rise"))


def test_a_need_of_itself_is_a_circle() -> None:
    assert circle({("flight", "pitch"): _derivation("flight.pitch", one=_same("pitch"))}) == (
        ("flight", "pitch"),
        ("flight", "pitch"),
    )


@pytest.mark.parametrize("each", ALL.values(), ids=lambda each: f"{each.kind}.{each.attribute}")
def test_a_derivation_fits_the_glossary(each: Derivation) -> None:
    attribute = glossary().kinds[each.kind].attributes[each.attribute]
    assert attribute.derived
    assert (attribute.form, attribute.dimension) == (each.form, each.dimension)
    assert attribute.meaning
    assert callable(each.by)
    assert each.agrees_within >= 0


@pytest.mark.parametrize(
    "text",
    ["Stair.rise", "stair.flights[]", "stair..rise", "a[].b[].c", "", "stair.total rise"],
)
def test_a_need_that_is_badly_written_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"a need is written|crosses two to-many"):
        derives("flight.nothing", Dimension.LENGTH, "nothing", by=max, needs={"some_m": text})(max)
    assert ("flight", "nothing") not in derivations()


def test_an_attribute_is_derived_once() -> None:
    with pytest.raises(ValueError, match=r"flight\.pitch is derived twice"):
        derives("flight.pitch", Dimension.ANGLE, "pitch", by=max, needs={"some_m": "going"})(max)


def test_what_is_lacking_is_named() -> None:
    assert tuple(lacks("one", "two")) == ("one", "two")
