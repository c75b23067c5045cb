"""Reactions, moments, shears and deflections of beams against a general frame program (PyNiteFEA)."""

from __future__ import annotations

import importlib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.framing import beam
from checker.calc.framing.beam import Loads
from checker.calc.framing.timber import LoadKind

FEModel3D = importlib.import_module("Pynite").FEModel3D
E_PA, I_M4 = 1.0e10, 1.0e-4
STATIONS = 401
ALL: dict[LoadKind, float] = {"dead": 1.0, "live": 1.0}

Beam = tuple[float, Loads, float]
BEAMS: dict[str, Beam] = {
    "even": (4.0, Loads({"dead": 300.0, "live": 1200.0}), 0.0),
    "point": (5.0, Loads(points=(("live", 3000.0, 1.3),)), 0.0),
    "points": (5.0, Loads(points=(("live", 3000.0, 1.3), ("dead", 1500.0, 3.9), ("live", 800.0, 4.0))), 0.0),
    "part": (4.5, Loads(parts=(("live", 2500.0, 0.0, 1.7),)), 0.0),
    "parts that overlap": (
        6.0,
        Loads({"dead": 250.0}, (("live", 900.0, 0.8, 3.1), ("live", 1300.0, 2.2, 5.0)), (("dead", 4000.0, 4.1),)),
        0.0,
    ),
    "header of a stair opening": (
        3.6,
        Loads({"dead": 200.0, "live": 700.0}, (), (("dead", 900.0, 1.2), ("live", 3400.0, 1.2))),
        0.0,
    ),
    "overhang": (4.0, Loads({"dead": 400.0, "live": 1500.0}), 1.2),
    "wall on an overhang": (4.0, Loads({"dead": 300.0}, (), (("dead", 5000.0, 4.6),)), 0.6),
    "load on the span lifts the end": (4.0, Loads(parts=(("live", 2000.0, 0.0, 4.0),)), 1.5),
    "uplift on a part": (4.0, Loads({"dead": 100.0}, (("live", -900.0, 1.0, 4.0),)), 0.0),
}


def other_opinion(span_m: float, loads: Loads, overhang_m: float) -> Any:
    """The same beam in the frame program, solved."""
    model = FEModel3D()
    model.add_material("wood", E_PA, E_PA / 16, 0.3, 0.0)
    model.add_section("member", 0.01, I_M4, I_M4, I_M4)
    model.add_node("left", 0.0, 0.0, 0.0)
    model.add_node("right", span_m, 0.0, 0.0)
    end = "right"
    if overhang_m:
        model.add_node("end", span_m + overhang_m, 0.0, 0.0)
        end = "end"
    model.add_member("beam", "left", end, "wood", "member")
    model.def_support("left", True, True, True, True, False, False)
    model.def_support("right", False, True, True, False, False, False)
    for load in loads.line.values():
        model.add_member_dist_load("beam", "Fy", -load, -load)
    for _, load, start_m, end_m in loads.parts:
        model.add_member_dist_load("beam", "Fy", -load, -load, start_m, end_m)
    for _, load, place_m in loads.points:
        model.add_member_pt_load("beam", "Fy", -load, place_m)
    model.analyze_linear()
    return model


def agree(span_m: float, loads: Loads, overhang_m: float) -> None:
    """Reactions agree; of the rest the greatest at many stations is ours, but for the steps between them."""
    model = other_opinion(span_m, loads, overhang_m)
    left, right = beam.reactions(span_m, loads, ALL, overhang_m)
    scale = max(abs(left), abs(right), 1.0)
    assert left == pytest.approx(model.nodes["left"].RxnFY["Combo 1"], abs=1e-6 * scale)
    assert right == pytest.approx(model.nodes["right"].RxnFY["Combo 1"], abs=1e-6 * scale)
    member = model.members["beam"]
    length_m = span_m + overhang_m
    moment = beam.greatest_moment(span_m, loads, ALL, overhang_m)
    shear = beam.greatest_shear(span_m, loads, ALL, overhang_m)
    sag = beam.deflection(span_m, loads, ALL, E_PA * I_M4, overhang_m)
    stations = [length_m * index / (STATIONS - 1) for index in range(STATIONS)]
    moments = [abs(member.moment("Mz", station)) for station in stations]
    shears = [abs(member.shear("Fy", station)) for station in stations]
    sags = [abs(member.deflection("dy", station)) for station in stations if station <= span_m]
    step_m = length_m / (STATIONS - 1)
    steepest = sum(abs(load) for load in loads.line.values()) + sum(abs(part[1]) for part in loads.parts)
    for ours, theirs, slack in (
        (moment, max(moments), max(shears) * step_m),
        (shear, max(shears), steepest * step_m),
        (sag, max(sags), sag * 1e-4),
    ):
        assert theirs <= ours * (1 + 1e-6) + 1e-9
        assert ours <= theirs + slack + 1e-9
    if overhang_m:
        tip = beam.tip_deflection(span_m, loads, ALL, E_PA * I_M4, overhang_m)
        assert tip == pytest.approx(-member.deflection("dy", length_m), abs=1e-6 * max(sag, abs(tip)))


@pytest.mark.parametrize("name", BEAMS)
def test_beams_agree(name: str) -> None:
    """Beams of the sort that houses have."""
    agree(*BEAMS[name])


SHARES = st.floats(0.0, 0.98)
LOADS = st.builds(
    lambda span, line, parts, points: (
        span,
        Loads(
            {"dead": line},
            tuple(("live", load, start * span, (start + width * (1 - start)) * span) for load, start, width in parts),
            tuple(("live", load, place * span) for load, place in points),
        ),
        0.0,
    ),
    st.floats(1.0, 8.0),
    st.floats(10.0, 3000.0),
    st.lists(st.tuples(st.floats(10.0, 3000.0), SHARES, st.floats(0.05, 1.0)), max_size=3),
    st.lists(st.tuples(st.floats(10.0, 9000.0), st.floats(0.02, 0.98)), max_size=3),
)


@settings(max_examples=15, deadline=None)
@given(LOADS)
def test_any_beam_agrees(case: Beam) -> None:
    """Whatever lies on it, on two supports."""
    agree(*case)
