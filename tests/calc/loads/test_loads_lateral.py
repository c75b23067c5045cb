"""Laws of braced lines and panels."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.calc.errors import OutOfRange
from checker.calc.loads import lateral
from tests.strategies import from_nothing

CREDITS = [[0.9, 0.7], [1.05, 0.9]]
PANELS = st.lists(st.floats(0.2, 4.0), max_size=8)


@settings(deadline=None)
@given(PANELS, PANELS)
def test_panels_add_up(first: list[float], second: list[float]) -> None:
    """Panels count one by one."""
    apart = lateral.braced_length(first, 1.2, CREDITS) + lateral.braced_length(second, 1.2, CREDITS)
    assert lateral.braced_length(first + second, 1.2, CREDITS) == pytest.approx(apart)


@settings(deadline=None)
@given(st.floats(0.1, 4.0), st.floats(0.1, 4.0))
def test_a_longer_panel_never_counts_less(first_m: float, second_m: float) -> None:
    """Credit grows with the length and is never over it."""
    shorter_m, longer_m = sorted((first_m, second_m))
    credit_m = lateral.braced_length([shorter_m], 1.2, CREDITS)
    assert credit_m <= lateral.braced_length([longer_m], 1.2, CREDITS) + 1e-12
    assert credit_m <= shorter_m
    assert lateral.braced_length([shorter_m], 1.2) <= credit_m


def test_panels_at_their_limits() -> None:
    """A panel just long enough counts, in full and in part; one under the first credit does not."""
    assert lateral.braced_length([1.2], 1.2) == 1.2
    assert lateral.braced_length([1.19], 1.2) == 0.0
    assert lateral.braced_length([0.9], 1.2, CREDITS) == pytest.approx(0.7)
    assert lateral.braced_length([0.89], 1.2, CREDITS) == 0.0
    assert lateral.braced_length([], 1.2) == 0.0
    assert lateral.braced_length([0.3 + 0.9 - 1e-13], 1.2) == pytest.approx(1.2)
    with pytest.raises(OutOfRange):
        lateral.braced_length([1.0], 1.2, [[0.9]])
    with pytest.raises(OutOfRange):
        lateral.braced_length([1.0], 1.2, [[0.9, 1.0]])


@settings(deadline=None)
@given(from_nothing(50000.0), st.floats(0.5, 10.0), st.floats(1.0, 4.0))
def test_uplift_without_dead_load_is_shear_times_height(force_n: float, length_m: float, height_m: float) -> None:
    """A hold-down at the end of a light panel takes the unit shear times the height."""
    shear_n_m = lateral.unit_shear(force_n, length_m)
    moment_nm = lateral.overturning_moment(shear_n_m, length_m, height_m)
    assert lateral.end_uplift(moment_nm, 0.0, length_m) == pytest.approx(shear_n_m * height_m)


@settings(deadline=None)
@given(from_nothing(20000.0), from_nothing(20000.0), st.floats(0.5, 6.0), from_nothing(1.0))
def test_more_dead_load_never_lifts_more(first: float, second: float, length_m: float, share: float) -> None:
    """Resisting grows with dead load and with the share that counts; uplift falls."""
    less, more = sorted((first, second))
    held = [lateral.resisting_moment(dead, length_m, share, 100.0) for dead in (less, more)]
    assert held[0] <= held[1]
    assert held[0] <= lateral.resisting_moment(less, length_m, 1.0, 100.0)
    uplift = [lateral.end_uplift(9000.0, moment, length_m) for moment in held]
    assert uplift[0] >= uplift[1]


def test_uplift_of_the_storey_above_comes_on_top() -> None:
    """A panel that stands on another hands its uplift down, and its weight too."""
    assert lateral.end_uplift(6400.0, 720.0, 4.0, 500.0) == pytest.approx(1920.0)
    assert lateral.end_uplift(6400.0, 720.0, 4.0, -2000.0) == pytest.approx(-580.0)


@settings(deadline=None)
@given(from_nothing(2000.0), st.floats(2.0, 4.0), st.floats(1.0, 12.0), st.floats(1.0, 12.0))
def test_lines_share_the_wind(pressure_pa: float, height_m: float, first_m: float, second_m: float) -> None:
    """Three lines take all the wind on the face between the outer two."""
    forces = [
        lateral.wind_force_on_line(pressure_pa, height_m, 0.0, first_m),
        lateral.wind_force_on_line(pressure_pa, height_m, first_m, second_m),
        lateral.wind_force_on_line(pressure_pa, height_m, second_m, 0.0),
    ]
    face_m2 = height_m * (first_m + second_m)
    assert sum(forces) == pytest.approx(lateral.wind_force([pressure_pa], [face_m2]))


@settings(deadline=None)
@given(st.floats(1.0, 50000.0), st.floats(500.0, 10000.0))
def test_length_for_a_force_just_resists_it(force_n: float, resistance_n_m: float) -> None:
    """The shear along the length found is the resistance."""
    length_m = lateral.braced_length_for_force(force_n, resistance_n_m)
    assert lateral.unit_shear(force_n, length_m) == pytest.approx(resistance_n_m)
