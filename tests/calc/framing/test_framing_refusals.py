"""What the calculations of wood members refuse, and how they say so."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from checker.calc.errors import OutOfRange
from checker.calc.framing import adjustment, column, cuts
from checker.calc.framing.beam import Loads
from checker.calc.framing.sawn import allowable_span, check_member, least_section, needed
from checker.calc.framing.timber import Section
from tests.published.framing_inputs import INCH, dressed, lumber, standard

# one legal call of each function with numbers
LEGAL: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (adjustment.effective_unbraced_length, {"unbraced_m": 2.0, "depth_m": 0.2, "even_load": True}),
    (adjustment.stability_factor, {"slenderness_ratio": 20.0, "stiffness_low_pa": 3e9, "bending_pa": 1e7}),
    (adjustment.lateral_factor, {"slenderness_ratio": 20.0, "stiffness_low_pa": 6e9, "bending_pa": 1e7}),
    (adjustment.bearing_length_factor, {"bearing_m": 0.05}),
    (column.column_slenderness, {"unbraced_m": 2.4, "side_m": 0.09, "end_factor_ratio": 1.0}),
    (column.euler_stress, {"stiffness_low_pa": 3e9, "slenderness_ratio": 20.0}),
    (
        column.column_stability_factor,
        {"slenderness_ratio": 20.0, "stiffness_low_pa": 3e9, "compression_pa": 1e7, "built_up_ratio": 1.0},
    ),
    (column.column_size_factor, {"side_m": 0.14, "unbraced_m": 2.4}),
    (
        column.column_slenderness_factor,
        {"slenderness_ratio": 20.0, "stiffness_low_pa": 6e9, "compression_pa": 1e7, "size_factor_ratio": 1.2},
    ),
    (
        column.bending_with_compression,
        {
            "axial_pa": 1e6,
            "bending_pa": 3e6,
            "compression_strength_pa": 6e6,
            "bending_strength_pa": 9e6,
            "euler_stress_pa": 7e6,
        },
    ),
    (
        column.bending_with_tension,
        {
            "axial_pa": 1e6,
            "bending_pa": 3e6,
            "tension_strength_pa": 6e6,
            "bending_strength_pa": 9e6,
            "bending_strength_stable_pa": 7e6,
        },
    ),
    (cuts.depth_share, {"cut_m": 0.05, "depth_m": 0.2}),
    (cuts.net_depth, {"depth_m": 0.2, "cut_m": 0.05}),
    (cuts.net_modulus, {"width_m": 0.04, "depth_m": 0.2, "notch_m": 0.05}),
    (cuts.holed_modulus, {"width_m": 0.04, "depth_m": 0.2, "hole_m": 0.05}),
    (cuts.notched_bottom_shear, {"shear_pa": 1e6, "width_m": 0.04, "depth_m": 0.2, "notch_m": 0.05}),
    (
        cuts.notched_top_shear,
        {"shear_pa": 1e6, "width_m": 0.04, "depth_m": 0.2, "notch_m": 0.05, "reach_m": 0.1},
    ),
]
NUMBERS = [
    pytest.param(function, legal, name, id=f"{function.__name__}-{name}")
    for function, legal in LEGAL
    for name, value in legal.items()
    if isinstance(value, float)
]


@pytest.mark.parametrize(("function", "legal", "name"), NUMBERS)
@pytest.mark.parametrize("broken", [math.nan, math.inf, -math.inf, -1.0])
def test_broken_numbers_are_refused(
    function: Callable[..., Any], legal: dict[str, Any], name: str, broken: float
) -> None:
    """No function computes with a number that is none, nor with a negative size."""
    assert math.isfinite(function(**legal))
    with pytest.raises(OutOfRange):
        function(**{**legal, name: broken})


def check(**changes: Any) -> Any:
    """A legal check with changes."""
    legal: dict[str, Any] = {
        "section": dressed("2x10"),
        "lumber": lumber("us")["spf no.2"],
        "standard": standard("us"),
        "span_m": 4.0,
        "loads": Loads({"dead": 200.0, "live": 700.0}),
        "repetitive": True,
    }
    return check_member(**{**legal, **changes})


def test_the_legal_check_is_legal() -> None:
    """What follows is refused for the change alone."""
    assert check().worst < 1.0


@pytest.mark.parametrize(
    ("changes", "name"),
    [
        ({"span_m": 0.05}, "span_m"),
        ({"span_m": 31.0}, "span_m"),
        ({"span_m": math.nan}, "span_m"),
        ({"section": Section(1.5 * INCH, 0.0)}, "section, depth"),
        ({"section": Section(1.5 * INCH, 2.0)}, "section, depth"),
        ({"section": Section(0.001, 0.2)}, "section, width of a ply"),
        ({"section": Section(1.5 * INCH, 0.2, 0)}, "section, plies"),
        ({"section": Section(5.5 * INCH, 7.5 * INCH)}, "section"),
        ({"section": Section(1.5 * INCH, 30 * INCH)}, "section"),
        ({"lumber": lumber("us")["spf stud"]}, "section"),
        ({"lumber": replace(lumber("us")["spf no.2"], sizes="unheard of")}, "sizes"),
        ({"lumber": lumber("us")["sp no.2"], "section": Section(1.5 * INCH, 30 * INCH)}, "section"),
        ({"unbraced_m": -1.0}, "unbraced_m"),
        ({"unbraced_m": 29.0}, adjustment.SLENDERNESS),
        ({"bearing_m": 0.0}, "bearing_m"),
        ({"live_limit": 0.0}, "the limit of the deflection"),
        ({"overhang_m": -0.5}, "overhang_m"),
        ({"loads": Loads({"live": math.nan})}, "loads"),
        ({"loads": Loads(parts=(("live", math.inf, 0.0, 1.0),))}, "loads"),
        ({"loads": Loads(parts=(("live", 10.0, 2.0, 2.0),))}, "loads, end of a part"),
        ({"loads": Loads(parts=(("live", 10.0, 2.0, 4.5),))}, "loads, end of a part"),
        ({"loads": Loads(parts=(("live", 10.0, -1.0, 2.0),))}, "loads, start of a part"),
        ({"loads": Loads(points=(("live", 10.0, 4.2),))}, "loads, place of a point load"),
    ],
)
def test_checks_that_cannot_be(changes: dict[str, Any], name: str) -> None:
    """Impossible sizes, spans and loads are refused under their name."""
    with pytest.raises(OutOfRange) as refusal:
        check(**changes)
    assert refusal.value.name == name


def test_spans_that_cannot_be() -> None:
    """Point loads, no load, and a load that nothing spans."""
    member, of, method = dressed("2x10"), lumber("us")["spf no.2"], standard("us")
    for loads in (Loads({"live": 1.0}, (), (("live", 5.0, 1.0),)), Loads(), Loads({"live": 1e9})):
        with pytest.raises(OutOfRange):
            allowable_span(member, of, method, loads, repetitive=True)
    assert allowable_span(member, of, method, Loads({"live": 0.01}), repetitive=True)[0] == 30.0


def test_other_refusals_come_through_the_choice() -> None:
    """Only a candidate that is too slender is passed over."""
    with pytest.raises(OutOfRange):
        least_section(
            [dressed("2x10")], lumber("us")["spf no.2"], standard("us"), 99.0, Loads({"live": 1.0}), repetitive=True
        )


def test_needed_needs_a_strength_across_the_grain_over_0() -> None:
    """As every strength."""
    with pytest.raises(OutOfRange):
        needed(dressed("2x10"), standard("us"), 3.0, Loads({"live": 9.0}), repetitive=True, bearing_pa=0.0)


def test_lumber_without_a_value() -> None:
    """Tension and compression are asked for only where lumber has them."""
    bare = replace(lumber("us")["spf no.2"], tension_pa=None, compression_pa=None)
    for strength in (adjustment.tension_strength, adjustment.compression_strength):
        with pytest.raises(OutOfRange) as refusal:
            strength(dressed("2x10"), bare, standard("us"), False)
        assert refusal.value.name == "lumber"


def test_an_axial_stress_that_buckles() -> None:
    """At the buckling stress there is no amplification any more."""
    with pytest.raises(OutOfRange) as refusal:
        column.bending_with_compression(5e6, 1e6, 6e6, 9e6, 5e6)
    assert refusal.value.name == "axial_pa"
