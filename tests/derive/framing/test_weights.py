"""Weights of layers and assemblies from plan lines: densities, products, frames, what is asked for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.derive.derived import facts_of
from checker.facts import Facts
from checker.plan.reader import plan_from_text
from tests.derive.framing import PSF, canada
from tests.derive.test_envelope import assembly, facts, lacking, number, us, value

few = settings(deadline=None, max_examples=25)
DENSITY = 157.0874638
"""Weight of a cubic foot that has a pound. [N/m3]"""


def layers(*lines: str) -> Facts:
    """The facts of an assembly of these layers."""
    return facts(assembly(list(lines)))


def psf(of: Facts, layer: str = "l0") -> float:
    """Weight of a layer. [psf]"""
    return number(of, "layer", layer, "dead_load") / PSF


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ("material: gypsum board, thickness: 1/2 in", 53 / 24),
        ("material: gypsum board, thickness: 5/8 in", 53 * 5 / 96),
        ("material: plywood, thickness: 3/4 in", 36 / 16),
        ("material: asphalt shingles", 2.5),
        ("material: vinyl siding", 1.0),
        ("material: vinyl siding, thickness: 1 in", 1.0),
        ("material: batt r-13", 0.2),
    ],
)
def test_a_layer_weighs_by_its_density_or_as_a_product(lines: str, wanted: float) -> None:
    assert psf(layers(lines)) == pytest.approx(wanted, rel=1e-5)


@pytest.mark.parametrize("air", ["air space, wall", "vented air space"])
def test_air_weighs_nothing(air: str) -> None:
    found = layers("material: gypsum board, thickness: 1/2 in", f'material: "{air}", thickness: 3/4 in')
    assert psf(found, "l1") == 0.0
    assert number(found, "assembly", "a", "dead_load") / PSF == pytest.approx(53 / 24, rel=1e-5)


@pytest.mark.parametrize(
    ("lines", "line"),
    [
        ("thickness: 1/2 in", "material"),
        ("material: gypsum board", "thickness"),
        ("thickness: 1/2 in, resistance: R-1", "material"),
    ],
)
def test_a_weight_that_does_not_follow_is_asked_for(lines: str, line: str) -> None:
    found = layers("material: plywood, thickness: 1/2 in", lines)
    assert lacking(found, "layer", "l1", "dead_load") == {("layer", "l1", line)}
    assert ("layer", "l1", line) in lacking(found, "assembly", "a", "dead_load")


def without_density(name: str, layer: str) -> Facts:
    """The facts of a layer, of a material whose density the set does not have."""
    materials = us().catalogue["material"]
    bare = {key: number for key, number in materials[name].properties.items() if key not in ("density", "weight")}
    catalogue = {**us().catalogue, "material": {**materials, name: replace(materials[name], properties=bare)}}
    return facts_of(plan_from_text(f"plan: A house\n{assembly([layer])}\n"), us().assumed(), catalogue)


@pytest.mark.parametrize(
    ("name", "lines", "line"),
    [
        ("gypsum board", "material: gypsum board, thickness: 1/2 in", "material"),
        ("batt r-13", "fill: batt r-13, members: studs, member_material: softwood framing, framing_share: 9 %", "fill"),
        (
            "softwood framing",
            "fill: batt r-13, members: studs, member_material: softwood framing, framing_share: 9 %",
            "member_material",
        ),
    ],
)
def test_a_material_without_a_density_is_asked_about(name: str, lines: str, line: str) -> None:
    assert lacking(without_density(name, lines), "layer", "l0", "dead_load") == {("layer", "l0", line)}


def test_an_empty_assembly_is_not_said_to_weigh_nothing() -> None:
    assert value(layers(), "assembly", "a", "dead_load") is None


FRAMED = "members: studs, member_material: softwood framing, framing_share: 10 %"


def test_a_framed_layer_is_members_and_what_lies_between() -> None:
    """A tenth of wood of 9-1/4 in, nine tenths of a batt of 0.2 psf or of air."""
    wood = us().catalogue["material"]["softwood framing"].properties["density"]
    assert isinstance(wood, float)
    members = 9.25 / 12 * wood * 9.80665 / DENSITY * 0.1
    filled = layers(f"fill: batt r-13, thickness: 9-1/4 in, {FRAMED}")
    assert psf(filled) == pytest.approx(members + 0.9 * 0.2, rel=1e-5)
    hollow = layers(f'fill: "air space, wall", thickness: 9-1/4 in, {FRAMED}')
    assert psf(hollow) == pytest.approx(members, rel=1e-5)


@pytest.mark.parametrize(
    ("lines", "line"),
    [
        (f'fill: "air space, wall", {FRAMED}', "thickness"),
        ("fill: batt r-13, thickness: 4 in, members: studs, framing_share: 10 %", "member_material"),
        ("fill: batt r-13, member_material: softwood framing, members: studs", "framing_share"),
    ],
)
def test_what_a_framed_layer_lacks(lines: str, line: str) -> None:
    assert lacking(layers(lines), "layer", "l0", "dead_load") >= {("layer", "l0", line)}


@few
@given(st.lists(st.sampled_from([1, 2, 3, 5, 8]), min_size=1, max_size=5))
def test_layers_add_up_and_twice_as_thick_is_twice_as_heavy(eighths: list[int]) -> None:
    def of(factor: int) -> Facts:
        return layers(*(f"material: gypsum board, thickness: {factor * each / 8} in" for each in eighths))

    once = sum(psf(of(1), f"l{place}") for place in range(len(eighths)))
    assert number(of(1), "assembly", "a", "dead_load") / PSF == pytest.approx(once)
    assert number(of(2), "assembly", "a", "dead_load") / PSF == pytest.approx(2 * once)


@pytest.mark.parametrize("name", ["us", "canada"])
def test_every_weight_is_one_that_a_building_has(name: str) -> None:
    """From loose fill to lead: a slip in a unit is a factor of 16 or more."""
    adopted = us() if name == "us" else canada()
    for entry in adopted.catalogue["material"].values():
        density, weight = entry.properties.get("density"), entry.properties.get("weight")
        assert density is None or 5 <= float(str(density)) <= 11500, entry.name
        assert weight is None or 0 <= float(str(weight)) / PSF <= 50, entry.name
