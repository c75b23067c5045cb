"""Laws of resistances in constructions, temperatures through them, and bays that hold them."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.errors import OutOfRange
from checker.calc.thermal import assembly, rafter_bay, section

RESISTANCES = st.floats(0.01, 10.0)
SHARES = st.floats(0.0, 1.0)
LENGTHS = st.floats(0.0, 0.4)


@st.composite
def constructions(draw: st.DrawFn) -> tuple[list[list[float]], list[float]]:
    """Two paths of the same layers, and their shares."""
    count = draw(st.integers(1, 6))
    share = draw(SHARES)
    return [draw(st.lists(RESISTANCES, min_size=count, max_size=count)) for _ in range(2)], [share, 1 - share]


@settings(deadline=None)
@given(constructions())
def test_the_methods_lie_in_their_order(built: tuple[list[list[float]], list[float]]) -> None:
    """Isothermal planes give least, whole paths most, the combined method between, all between the paths."""
    paths, shares = built
    lower = assembly.isothermal_planes(paths, shares)
    upper = assembly.parallel_path(paths, shares)
    assert lower <= upper * (1 + 1e-12)
    assert lower * (1 - 1e-12) <= assembly.combined_method(paths, shares) <= upper * (1 + 1e-12)
    assert min(map(sum, paths)) * (1 - 1e-12) <= upper <= max(map(sum, paths)) * (1 + 1e-12)


@settings(deadline=None)
@given(constructions(), st.integers(0, 5), st.floats(0.01, 5.0))
def test_more_insulation_never_lowers_a_resistance(
    built: tuple[list[list[float]], list[float]], layer: int, added: float
) -> None:
    """Each method rises, or stays where the path has no share."""
    paths, shares = built
    better = [list(path) for path in paths]
    better[0][layer % len(paths[0])] += added
    for method in (assembly.parallel_path, assembly.isothermal_planes, assembly.combined_method):
        assert method(better, shares) >= method(paths, shares) * (1 - 1e-12)


@settings(deadline=None)
@given(RESISTANCES, RESISTANCES, SHARES, st.lists(RESISTANCES, max_size=5))
def test_the_canadian_way_is_that_of_planes(member: float, cavity: float, share: float, others: list[float]) -> None:
    """With one framed layer the effective resistance is that of isothermal planes."""
    effective = assembly.effective_resistance(member, cavity, share, others)
    planes = assembly.isothermal_planes([[member, *others], [cavity, *others]], [share, 1 - share])
    assert effective == pytest.approx(planes)


@settings(deadline=None)
@given(constructions(), st.permutations(range(6)))
def test_order_of_layers_leaves_resistance_alone(
    built: tuple[list[list[float]], list[float]], order: list[int]
) -> None:
    """Layers may change places, in every path alike."""
    paths, shares = built
    wanted = [place for place in order if place < len(paths[0])]
    moved = [[path[place] for place in wanted] for path in paths]
    for method in (assembly.parallel_path, assembly.isothermal_planes):
        assert method(moved, shares) == pytest.approx(method(paths, shares))


WALLS = {
    "handbook": (0.17 + 0.81 + 1.32 + 0.45 + 0.68, 4.38, 13.0, 0.25),
    "washington": (0.68 + 0.45 + 0.62 + 0.81 + 0.17, 6.875, 21.0, 0.23),
    "canadian note": (0.0, 1.19, 3.34, 0.23),
    "heritage": (0.38, 0.7565, 2.46, 0.23),
    "scottish": (0.611, 1.167, 3.5, 0.15),
}


@pytest.mark.parametrize("wall", WALLS)
def test_a_stud_is_no_layer(wall: str) -> None:
    """Negative check: the stud added in series over the whole wall, as is printed now and then, is reproduced by no
    method; each stays under the wall without studs, which that way would surpass."""
    others, stud, cavity, share = WALLS[wall]
    wrong = assembly.series_resistance([others, stud, cavity])
    clear = assembly.series_resistance([others, cavity])
    paths = [[others, stud], [others, cavity]]
    figures = [
        assembly.parallel_path(paths, [share, 1 - share]),
        assembly.isothermal_planes(paths, [share, 1 - share]),
        assembly.combined_method(paths, [share, 1 - share]),
        assembly.effective_resistance(stud, cavity, share, [others]),
    ]
    for figure in figures:
        assert figure < clear < wrong
        assert figure < 0.8 * wrong


@settings(deadline=None)
@given(RESISTANCES, RESISTANCES, st.floats(0.05, 0.95))
def test_an_average_of_resistances_is_too_high(stud: float, cavity: float, share: float) -> None:
    """Negative check: resistances weighted by area, as is printed now and then, flatter the wall."""
    right = assembly.parallel_resistance([stud, cavity], [share, 1 - share])
    assert right <= (share * stud + (1 - share) * cavity) * (1 + 1e-12)


def test_cavity_insulation_is_worth_less_than_continuous() -> None:
    """Equal nominal sums, unlike walls: 20+5 is better than 25+0 (R of the layers, h ft2 F/Btu)."""
    cavity_alone = assembly.parallel_path([[25.0, 2.7], [6.9, 2.7]], [0.75, 0.25])
    with_continuous = assembly.parallel_path([[20.0, 5.0, 2.7], [6.9, 5.0, 2.7]], [0.75, 0.25])
    assert with_continuous > cavity_alone + 2
    assert assembly.nominal_resistances([20.0], [5.0]) != assembly.nominal_resistances([25.0], [])


@settings(deadline=None)
@given(st.floats(0.01, 1.0), st.floats(0.0, 1.0), st.floats(0.0, 20.0), st.floats(20.0, 40.0))
def test_extra_members_only_add(width_m: float, extra_share: float, extra_m2: float, gross_m2: float) -> None:
    """The share with extras is at least both parts and at most everything."""
    regular = assembly.framing_share(width_m, 1.0)
    share = assembly.framing_share_with_extras(regular, extra_m2, gross_m2)
    assert max(regular, extra_m2 / gross_m2) * (1 - 1e-12) <= share <= 1 + 1e-12


@settings(deadline=None)
@given(st.lists(RESISTANCES, min_size=1, max_size=8), st.floats(-40, 40), st.floats(-40, 40))
def test_temperatures_fall_one_way(layers: list[float], inside: float, outside: float) -> None:
    """From one air to the other without a turn, and in proportion to the resistance."""
    found = section.section_temperatures(layers, inside, outside)
    assert found[0] == inside
    assert found[-1] == outside
    assert list(found) == pytest.approx(sorted(found, reverse=inside > outside))
    drop = (inside - outside) / math.fsum(layers)
    assert [a - b for a, b in pairwise(found)] == pytest.approx([drop * r for r in layers], abs=1e-9)


@settings(deadline=None)
@given(st.lists(RESISTANCES, min_size=2, max_size=6), st.data())
def test_a_swap_moves_planes_between_alone(layers: list[float], data: st.DataObject) -> None:
    """Planes outside of both layers keep their temperature; a plane between changes by the difference of the layers."""
    first = data.draw(st.integers(1, len(layers) - 1))
    second = data.draw(st.integers(first + 1, len(layers)))
    plane = data.draw(st.integers(0, len(layers)))
    change = section.temperature_change_by_swap(layers, first, second, plane, 20.0, -20.0)
    expected = 0.0
    if first <= plane < second:
        expected = -40.0 * (layers[second - 1] - layers[first - 1]) / math.fsum(layers)
    assert change == pytest.approx(expected, abs=1e-9)


@settings(deadline=None)
@given(RESISTANCES, st.floats(-30.0, 0.0), st.floats(1.0, 19.0))
def test_the_wanted_temperature_is_reached(inboard: float, outside: float, wanted: float) -> None:
    """Foam of the needed resistance keeps the sheathing exactly there."""
    outboard = section.outboard_resistance_for(inboard, wanted, 20.0, outside)
    assert section.sheathing_temperature(inboard, outboard, 20.0, outside) == pytest.approx(wanted)


def test_no_foam_where_it_is_warm_outside() -> None:
    """Nothing is needed outboard if the outside itself is as warm as wanted."""
    assert section.outboard_resistance_for(2.0, 5.0, 20.0, 10.0) == 0


@settings(deadline=None)
@given(st.floats(0.05, 0.4), LENGTHS, LENGTHS, LENGTHS)
def test_a_bay_filled_to_fit_has_its_air(depth_m: float, air_m: float, outside_m: float, inside_m: float) -> None:
    """What fits leaves at least the air wanted, fills nothing above the member, and needs just that member."""
    fits_m = rafter_bay.insulation_that_fits(depth_m, air_m, outside_m, inside_m)
    assert fits_m <= depth_m + inside_m
    if fits_m > 1e-6:
        assert rafter_bay.air_space_left(depth_m, fits_m, outside_m, inside_m) >= max(air_m, outside_m) - 1e-9
        assert rafter_bay.member_depth_needed(fits_m, air_m, outside_m, inside_m) == pytest.approx(depth_m)
        assert rafter_bay.depth_to_add(depth_m, fits_m, air_m, outside_m, inside_m) == pytest.approx(0, abs=1e-9)
        assert rafter_bay.depth_to_add(depth_m, fits_m + 0.1, air_m, outside_m, inside_m) == pytest.approx(0.1)


def test_strapping_gives_air_and_not_depth() -> None:
    """Outside strapping that is thicker than the air wanted does not let insulation rise above the member."""
    assert rafter_bay.insulation_that_fits(0.2, 0.025, 0.038) == pytest.approx(0.2)
    assert rafter_bay.insulation_that_fits(0.05, 0.1) == 0
    assert rafter_bay.member_depth_needed(0.02, 0.0, 0.0, 0.05) == 0


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (
            lambda: assembly.parallel_resistance([1.0, 2.0], [0.5, 0.6]),
            "sum of shares_ratio is 1.1: it must be 1",
        ),
        (
            lambda: assembly.parallel_path([[1.0], [1.0, 2.0]], [0.5, 0.5]),
            "length of paths_m2k_w, path 2 is 2: it must be that of path 1, 1",
        ),
        (
            lambda: assembly.area_weighted_u([1.0], [2.0, 3.0]),
            "length of areas_m2 is 2: it must be that of u_values_w_m2k, 1",
        ),
        (
            lambda: section.interface_temperature([1.0], 2, 20.0, 0.0),
            "layers_inboard_count is 2: it must be at most the number of layers, 1",
        ),
        (
            lambda: section.outboard_resistance_for(1.0, 10.0, 20.0, 25.0),
            "outside_temperature_c is 25: it must be under that of the inside, 20",
        ),
        (
            lambda: section.outboard_resistance_for(1.0, 21.0, 20.0, 0.0),
            "wanted_temperature_c is 21: it must be under that of the inside, 20",
        ),
        (
            lambda: section.section_temperatures([0.0, 0.0], 20.0, 0.0),
            "sum of resistances_m2k_w is 0: it must be a finite number over 0",
        ),
        (
            lambda: assembly.framing_share(0.5, 0.4),
            "member_width_m is 0.5: it must be from 0 to 0.4",
        ),
    ],
)
def test_message(call: Any, message: str) -> None:
    """The message gives name, value and the legal range."""
    with pytest.raises(OutOfRange) as refusal:
        call()
    assert str(refusal.value) == message
