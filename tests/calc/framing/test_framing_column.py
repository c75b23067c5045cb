"""Posts: longer is weaker, fastening counts, and each direction on its own."""

from __future__ import annotations

from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.calc.errors import OutOfRange
from checker.calc.framing.column import Fastening, check_post, column_stability_factor
from checker.calc.framing.sawn import Use
from checker.calc.framing.timber import Section
from tests.published.framing_inputs import FOOT, INCH, POUND, PSI, lumber, standard

COUNTRIES: tuple[Literal["us", "canada"], ...] = ("us", "canada")
WOOD = {"us": "spf no.2", "canada": "s-p-f no.2"}


def post(country: str, plies: int = 1, **changes: Any) -> Use:
    """A post of 2 x 6 plies of 8 ft under 2,000 lb of live load."""
    legal: dict[str, Any] = {"unbraced_depth_m": 8 * FOOT, "unbraced_width_m": 0.0, "fastening": "solid"}
    return check_post(
        Section(1.5 * INCH, 5.5 * INCH, plies),
        lumber(country)[WOOD[country]],
        standard(country),
        {"dead": 500 * POUND, "live": 2000 * POUND},
        **{**legal, **changes},
    )


@given(st.sampled_from(COUNTRIES), st.floats(0.5, 3.0), st.floats(1.0, 2.0))
def test_longer_is_never_stronger(country: str, length_m: float, longer: float) -> None:
    """In the direction of the depth."""
    short = post(country, unbraced_depth_m=length_m)
    assert post(country, unbraced_depth_m=length_m * longer).ratio >= short.ratio - 1e-12


@pytest.mark.parametrize("country", COUNTRIES)
def test_fastening(country: str) -> None:
    """Solid is not for plies; bolted is no weaker than nailed; held across the plies it does not matter."""
    uses: dict[Fastening, float] = {}
    ways: tuple[Fastening, ...] = ("nailed", "bolted")
    for way in ways:
        uses[way] = post(country, 3, fastening=way, unbraced_width_m=8 * FOOT).ratio
        held = post(country, 3, fastening=way, unbraced_width_m=0.0)
        assert held.ratio < uses[way]
    assert uses["bolted"] <= uses["nailed"]
    with pytest.raises(OutOfRange) as refusal:
        post(country, 3)
    assert refusal.value.name == "fastening"


@pytest.mark.parametrize("country", COUNTRIES)
def test_a_built_up_post_is_no_weaker_than_its_plies(country: str) -> None:
    """Plies that are short count one by one."""
    one = post(country, 1, unbraced_depth_m=0.3, unbraced_width_m=0.3)
    three = post(country, 3, unbraced_depth_m=0.3, unbraced_width_m=0.3, fastening="nailed")
    assert three.capacity >= 3 * one.capacity * (1 - 1e-12)


@pytest.mark.parametrize("country", COUNTRIES)
def test_too_slender(country: str) -> None:
    """A 2 x 6 free over 8 ft in its width is over 50."""
    with pytest.raises(OutOfRange) as refusal:
        post(country, unbraced_width_m=8 * FOOT)
    assert refusal.value.name == "the slenderness of the post"


def test_a_post_held_all_along() -> None:
    """Its strength is that of the grain."""
    use = post("us", unbraced_depth_m=0.0)
    assert use.capacity == pytest.approx(1150 * PSI * 1.1 * 8.25 * INCH**2)
    assert use.demand == pytest.approx(2500 * POUND)
    assert use.combination == "D + L"


@given(st.floats(1.0, 50.0), st.floats(1e9, 5e9), st.floats(5e6, 2e7))
def test_the_stability_factor_is_a_share(slenderness: float, low_pa: float, strength_pa: float) -> None:
    """Over 0, at most 1, and never over what buckling alone allows."""
    factor = column_stability_factor(slenderness, low_pa, strength_pa, 1.0)
    assert 0.0 < factor <= 1.0
    assert factor * strength_pa <= 0.822 * low_pa / slenderness**2 * (1 + 1e-9)
