"""The vocabulary of rules: everything in it comes from the models and derivations, and hangs together."""

from __future__ import annotations

import re

import pytest

from checker.glossary import Kind, element_models, field_type, glossary
from checker.plan.elements import STATUSES, Single

WORDS = glossary()
KINDS = list(WORDS.kinds.values())
_NAME = re.compile(r"[a-z][a-z0-9_]*")


def test_every_element_of_a_plan_has_a_kind() -> None:
    assert list(WORDS.kinds) == list(element_models())
    assert {"permit", "site", "house", "lot-line", "level", "room", "window", "flight", "guard"} <= set(WORDS.kinds)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_names_are_plain_and_meanings_given(kind: Kind) -> None:
    assert kind.meaning
    for attribute in kind.attributes.values():
        assert _NAME.fullmatch(attribute.name)
        assert attribute.meaning, f"{kind.name}.{attribute.name}"
        assert (attribute.form in ("quantity", "series")) == (attribute.dimension is not None)
        assert (attribute.form == "choice") == bool(attribute.choices)
        assert attribute.on_plan or attribute.derived
    for link in kind.links.values():
        assert _NAME.fullmatch(link.name)
        assert link.meaning
    assert not set(kind.attributes) & set(kind.links)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_link_leads_to_a_kind_and_back(kind: Kind) -> None:
    for link in kind.links.values():
        target = WORDS.kinds[link.target]
        if link.inverse:
            back = target.links[link.inverse]
            assert back.target == kind.name
            assert back.inverse == link.name


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_kind_reaches_the_house_the_permit_and_the_site(kind: Kind) -> None:
    for name in ("house", "permit", "site"):
        if kind.name != name and not (kind.name == "permit" and name == "site"):
            assert kind.links[name].to_one
            assert kind.links[name].target == name


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_what_the_work_can_change_has_a_status_and_was(kind: Kind) -> None:
    if kind.has_status:
        assert kind.attributes["status"].choices == STATUSES
        assert kind.links["was"].target == kind.name
        assert kind.links["was"].to_one
    else:
        assert "status" not in kind.attributes
        assert "was" not in kind.links


def test_what_a_plan_has_once_has_no_status() -> None:
    singles = {name for name, model in element_models().items() if issubclass(model, Single)}
    assert singles == {"permit", "site", "house"}
    assert not any(WORDS.kinds[name].has_status for name in singles)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_what_was_is_said_in_the_words_of_what_is(kind: Kind) -> None:
    model = element_models()[kind.name]
    if "was" in model.model_fields:
        says = field_type(model.model_fields["was"]).base
        assert issubclass(model, says)
        assert not {"id", "status"} & set(says.model_fields)


def test_conclusions_join_the_attributes_of_their_kind() -> None:
    more = WORDS.with_conclusions({("flight", "steepish"): "whether it is steep", ("flght", "x"): "nothing"})
    added = more.kinds["flight"].attributes["steepish"]
    assert (added.form, added.meaning, added.concluded) == ("flag", "whether it is steep", True)
    assert "steepish" not in WORDS.kinds["flight"].attributes
    assert set(more.kinds) == set(WORDS.kinds)


def test_a_list_of_quantities_is_a_series_and_a_link_no_attribute() -> None:
    flight = WORDS.kinds["flight"]
    assert flight.attributes["measured_risers"].form == "series"
    assert "handrails" not in flight.attributes
    assert not flight.links["handrails"].to_one
    assert flight.links["stair"].to_one
    assert "name" not in flight.attributes
