"""Properties of beams: superposition, mirror image, scale."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.framing import beam
from checker.calc.framing.beam import LoadedBeam, Loads
from checker.calc.framing.timber import LoadKind
from tests.strategies import from_nothing

ALL: dict[LoadKind, float] = {"dead": 1.0, "live": 1.0}
SPAN_M = 4.0
PARTS = st.tuples(from_nothing(0.8), st.floats(0.1, 1.0), st.floats(1.0, 4000.0)).map(
    lambda part: ("live", part[2], part[0] * SPAN_M, (part[0] + part[1] * (1 - part[0])) * SPAN_M)
)
POINTS = st.tuples(st.floats(0.01, 0.99), st.floats(1.0, 9000.0)).map(
    lambda point: ("live", point[1], point[0] * SPAN_M)
)
LOADS = st.builds(
    lambda line, parts, points: Loads({"dead": line}, tuple(parts), tuple(points)),
    st.floats(1.0, 3000.0),
    st.lists(PARTS, max_size=3),
    st.lists(POINTS, max_size=3),
)


def mirrored(loads: Loads) -> Loads:
    """The same loads seen from the other side."""
    return Loads(
        loads.line,
        tuple((kind, load, SPAN_M - end, SPAN_M - start) for kind, load, start, end in loads.parts),
        tuple((kind, load, SPAN_M - place) for kind, load, place in loads.points),
    )


@given(LOADS)
def test_reactions_carry_the_load(loads: Loads) -> None:
    """Both reactions together are the load."""
    total = loads.total("dead", SPAN_M) + loads.total("live", SPAN_M)
    assert sum(beam.reactions(SPAN_M, loads, ALL)) == pytest.approx(total)


@given(LOADS)
def test_mirror_image(loads: Loads) -> None:
    """Seen from behind, the reactions change sides and all else stays."""
    turned = mirrored(loads)
    assert beam.reactions(SPAN_M, turned, ALL) == pytest.approx(beam.reactions(SPAN_M, loads, ALL)[::-1], abs=1e-6)
    for effect in (beam.greatest_moment, beam.greatest_shear):
        assert effect(SPAN_M, turned, ALL) == pytest.approx(effect(SPAN_M, loads, ALL))
    assert beam.deflection(SPAN_M, turned, ALL, 1e6) == pytest.approx(beam.deflection(SPAN_M, loads, ALL, 1e6))


@given(LOADS, st.floats(0.2, 5.0))
def test_twice_the_load_does_twice_as_much(loads: Loads, factor: float) -> None:
    """All effects follow the factor of the combination."""
    more: dict[LoadKind, float] = dict.fromkeys(ALL, factor)
    assert beam.greatest_moment(SPAN_M, loads, more) == pytest.approx(factor * beam.greatest_moment(SPAN_M, loads, ALL))
    assert beam.greatest_shear(SPAN_M, loads, more) == pytest.approx(factor * beam.greatest_shear(SPAN_M, loads, ALL))
    assert beam.deflection(SPAN_M, loads, more, 1e6) == pytest.approx(factor * beam.deflection(SPAN_M, loads, ALL, 1e6))


@given(st.floats(1.0, 4000.0), st.floats(0.5, 12.0), from_nothing(0.4))
def test_a_part_over_all_is_a_line(load: float, span_m: float, left_out: float) -> None:
    """The closed forms of an even load and the pieces agree."""
    line, part = Loads({"live": load}), Loads(parts=(("live", load, 0.0, span_m),))
    left_out_m = left_out * span_m
    assert beam.greatest_moment(span_m, part, ALL) == pytest.approx(beam.greatest_moment(span_m, line, ALL))
    assert beam.deflection(span_m, part, ALL, 1e6) == pytest.approx(beam.deflection(span_m, line, ALL, 1e6))
    assert beam.greatest_shear(span_m, part, ALL, 0.0, left_out_m) == pytest.approx(
        beam.greatest_shear(span_m, line, ALL, 0.0, left_out_m)
    )


@settings(max_examples=25)
@given(LOADS)
def test_the_sag_is_the_greatest(loads: Loads) -> None:
    """No place of the beam, shifted loads aside, sags more than the sag given: by a dense look at the curve."""
    found = LoadedBeam(SPAN_M, loads)
    sag = found.sag(ALL)
    by_points = max(
        sum(load * _sag_of_point(place, at) for load, place in _as_points(loads))
        for at in [SPAN_M * step / 200 for step in range(201)]
    )
    assert by_points == pytest.approx(sag, rel=2e-3)


def _as_points(loads: Loads) -> list[tuple[float, float]]:
    """Line loads as many small point loads."""
    parts = [(load, 0.0, SPAN_M) for load in loads.line.values()] + [part[1:] for part in loads.parts]
    cut = 100
    return [
        (load * (end - start) / cut, start + (end - start) * (step + 0.5) / cut)
        for load, start, end in parts
        for step in range(cut)
    ] + [(load, place) for _, load, place in loads.points]


def _sag_of_point(place_m: float, at_m: float) -> float:
    """Deflection, times stiffness, at a place under a unit load at another: the textbook's formula."""
    if at_m > place_m:
        at_m, place_m = SPAN_M - at_m, SPAN_M - place_m
    b = SPAN_M - place_m
    return b * at_m * (SPAN_M**2 - b**2 - at_m**2) / (6 * SPAN_M)


def test_kinds_and_totals() -> None:
    """What is there, by kind."""
    loads = Loads({"dead": 100.0, "snow": 0.0}, (("live", 50.0, 1.0, 3.0),), (("live", 10.0, 2.0),))
    assert loads.kinds() == {"dead", "live"}
    assert loads.total("live", 4.0) == 110.0
    assert not loads.uniform
    assert Loads({"dead": 1.0}).uniform


def test_a_beam_without_load() -> None:
    """Nothing comes of nothing."""
    empty = Loads()
    assert beam.reactions(4.0, empty, ALL, 1.0) == (0.0, 0.0)
    assert beam.greatest_moment(4.0, empty, ALL, 1.0) == 0.0
    assert beam.greatest_shear(4.0, empty, ALL, 1.0, 0.2) == 0.0
    assert beam.deflection(4.0, empty, ALL, 1e6, 1.0) == 0.0
    assert beam.tip_deflection(4.0, empty, ALL, 1e6, 1.0) == 0.0


def test_shear_all_within_a_depth() -> None:
    """Line load that lies wholly within a depth of the supports leaves no shear."""
    assert beam.greatest_shear(1.0, Loads({"live": 500.0}), ALL, 0.0, 0.6) == 0.0
    assert beam.greatest_shear(1.0, Loads(parts=(("live", 500.0, 0.0, 1.0),)), ALL, 0.0, 0.6) == 0.0
