"""Laws of one duct and of its friction."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.calc.air import duct
from checker.calc.errors import OutOfRange

AIRFLOWS = st.floats(0.005, 1.0)
DIAMETERS = st.floats(0.05, 1.0)
SIDES = st.floats(0.05, 1.2)
ROUGHNESSES = st.floats(0.0, 0.001)
RATES = st.floats(0.1, 10.0)
DENSITY = 1.2
VISCOSITY = 1.82e-5
TIMES = st.floats(1.0001, 5.0)


def friction(airflow_m3_s: float, diameter_m: float, roughness_m: float = 9e-5, correction: float = 1.0) -> float:
    """Friction in common air."""
    return duct.friction_per_length(airflow_m3_s, diameter_m, roughness_m, DENSITY, VISCOSITY, correction)


@settings(deadline=None)
@given(st.floats(1e-5, 1.0), DIAMETERS, ROUGHNESSES)
def test_factor_solves_its_equation(airflow_m3_s: float, diameter_m: float, roughness_m: float) -> None:
    """The factor satisfies Colebrook's equation, and in laminar flow 64 / Re."""
    factor = duct.friction_factor(airflow_m3_s, diameter_m, roughness_m, DENSITY, VISCOSITY)
    reynolds = 4 * DENSITY * airflow_m3_s / (math.pi * diameter_m * VISCOSITY)
    if reynolds < 2040:
        assert factor == pytest.approx(64 / reynolds)
    else:
        root = math.sqrt(factor)
        right = -2 * math.log10(roughness_m / diameter_m / 3.7 + 2.51 / (reynolds * root))
        assert 1 / root == pytest.approx(right, rel=1e-6)


@settings(deadline=None)
@given(AIRFLOWS, DIAMETERS, ROUGHNESSES, TIMES)
def test_friction_grows_and_falls(airflow_m3_s: float, diameter_m: float, roughness_m: float, times: float) -> None:
    """More air and rougher walls take more pressure, a larger duct less."""
    here = friction(airflow_m3_s, diameter_m, roughness_m)
    assert friction(airflow_m3_s * times, diameter_m, roughness_m) > here
    assert friction(airflow_m3_s, diameter_m * times, roughness_m) < here
    rougher_m = min(roughness_m * times, 0.05 * diameter_m)
    assert friction(airflow_m3_s, diameter_m, rougher_m) >= here * (1 - 1e-12)
    assert friction(airflow_m3_s, diameter_m, roughness_m, times) == pytest.approx(here * times)


@settings(deadline=None)
@given(DIAMETERS, st.floats(10.0, 100.0), TIMES)
def test_rough_flow_goes_with_the_square(diameter_m: float, airflow_m3_s: float, times: float) -> None:
    """Between a rough wall's square law and a smooth wall's power of 1.75 lie all turbulent flows."""
    ratio = friction(airflow_m3_s * times, diameter_m, 0.001) / friction(airflow_m3_s, diameter_m, 0.001)
    assert times**1.75 <= ratio <= times**2 * (1 + 1e-9)


def test_still_air_takes_no_pressure() -> None:
    """No flow, no friction."""
    assert friction(0.0, 0.2) == 0


@settings(deadline=None)
@given(AIRFLOWS, RATES, ROUGHNESSES, TIMES)
def test_larger_flow_never_needs_a_smaller_duct(
    airflow_m3_s: float, rate_pa_m: float, roughness_m: float, times: float
) -> None:
    """The size grows with the flow and shrinks with the friction that is allowed."""
    needed_m = duct.diameter_for_friction(airflow_m3_s, rate_pa_m, roughness_m, DENSITY, VISCOSITY)
    more_m = duct.diameter_for_friction(airflow_m3_s * times, rate_pa_m, roughness_m, DENSITY, VISCOSITY)
    freer_m = duct.diameter_for_friction(airflow_m3_s, rate_pa_m * times, roughness_m, DENSITY, VISCOSITY)
    squeezed_m = duct.diameter_for_friction(airflow_m3_s, rate_pa_m, roughness_m, DENSITY, VISCOSITY, times)
    assert more_m >= needed_m >= freer_m
    assert squeezed_m >= needed_m


@settings(deadline=None)
@given(AIRFLOWS, RATES, ROUGHNESSES)
def test_size_keeps_to_the_rate_and_is_the_smallest(airflow_m3_s: float, rate: float, roughness_m: float) -> None:
    """The duct found keeps to the rate; one a little smaller does not."""
    diameter_m = duct.diameter_for_friction(airflow_m3_s, rate, roughness_m, DENSITY, VISCOSITY)
    assert friction(airflow_m3_s, diameter_m, roughness_m) <= rate
    smaller_m = diameter_m * (1 - 1e-9)
    if roughness_m / smaller_m <= 0.05:
        assert friction(airflow_m3_s, smaller_m, roughness_m) > rate


@settings(deadline=None)
@given(DIAMETERS, RATES, ROUGHNESSES)
def test_airflow_and_size_undo_each_other(diameter_m: float, rate_pa_m: float, roughness_m: float) -> None:
    """What a duct carries needs that duct; the flow found keeps to the rate."""
    carried_m3_s = duct.airflow_for_friction(diameter_m, rate_pa_m, roughness_m, DENSITY, VISCOSITY)
    assert friction(carried_m3_s, diameter_m, roughness_m) <= rate_pa_m
    assert friction(carried_m3_s * (1 + 1e-9), diameter_m, roughness_m) > rate_pa_m
    again_m = duct.diameter_for_friction(carried_m3_s, rate_pa_m, roughness_m, DENSITY, VISCOSITY)
    assert again_m <= diameter_m * (1 + 1e-9)


def test_hair_of_a_duct() -> None:
    """The smallest size is 1 mm, or 20 times the roughness."""
    assert duct.diameter_for_friction(1e-9, 10.0, 0.0, DENSITY, VISCOSITY) == 0.001
    rough_m = duct.diameter_for_friction(1e-7, 10.0, 0.001, DENSITY, VISCOSITY)
    assert rough_m == pytest.approx(0.02)


def test_no_duct_is_large_enough() -> None:
    """A size past all houses is refused."""
    with pytest.raises(OutOfRange, match="within what a house has"):
        duct.side_for_equivalent_diameter(1e9, 1e-9)


@settings(deadline=None)
@given(SIDES, SIDES, st.floats(0.1, 10.0))
def test_rectangles(width_m: float, height_m: float, scale: float) -> None:
    """A turned rectangle is the same, a scaled one scales, and a square is best for its area."""
    diameter_m = duct.rectangular_equivalent_diameter(width_m, height_m)
    assert duct.rectangular_equivalent_diameter(height_m, width_m) == pytest.approx(diameter_m)
    assert duct.rectangular_equivalent_diameter(width_m * scale, height_m * scale) == pytest.approx(diameter_m * scale)
    square_m = math.sqrt(duct.rectangular_area(width_m, height_m))
    assert diameter_m <= duct.rectangular_equivalent_diameter(square_m, square_m) * (1 + 1e-12)
    # the equivalent round duct is the smaller of the two in area, since it is the better shape
    assert duct.round_area(diameter_m) <= duct.rectangular_area(width_m, height_m)
    assert duct.side_for_equivalent_diameter(diameter_m, height_m) == pytest.approx(width_m, rel=1e-6)


@settings(deadline=None)
@given(SIDES, st.floats(1.0, 8.0))
def test_ovals(minor_m: float, aspect: float) -> None:
    """A flat oval lies between the round and the rectangle of its sizes."""
    major_m = minor_m * aspect
    assert duct.round_area(minor_m) <= duct.oval_area(major_m, minor_m) * (1 + 1e-12)
    assert duct.oval_area(major_m, minor_m) < duct.rectangular_area(major_m, minor_m)
    oval_m = duct.oval_equivalent_diameter(major_m, minor_m)
    assert minor_m <= oval_m < duct.rectangular_equivalent_diameter(major_m, minor_m) * 1.01


@settings(deadline=None)
@given(SIDES, SIDES, AIRFLOWS)
def test_equivalent_duct_is_within_a_few_per_cent_of_the_hydraulic_one(
    width_m: float, height_m: float, airflow_m3_s: float
) -> None:
    """An independent way: the hydraulic diameter with the true velocity gives nearly the same friction."""
    aspect = max(width_m, height_m) / min(width_m, height_m)
    assume(aspect <= 4)
    by_equal = friction(airflow_m3_s, duct.rectangular_equivalent_diameter(width_m, height_m))
    area_m2 = width_m * height_m
    hydraulic_m = 2 * area_m2 / (width_m + height_m)
    speed_m_s = duct.velocity(airflow_m3_s, area_m2)
    as_round_m3_s = speed_m_s * duct.round_area(hydraulic_m)
    factor = duct.friction_factor(as_round_m3_s, hydraulic_m, 9e-5, DENSITY, VISCOSITY)
    by_hydraulic = factor / hydraulic_m * duct.velocity_pressure(speed_m_s, DENSITY)
    assume(DENSITY * speed_m_s * hydraulic_m / VISCOSITY > 5000)
    assert by_equal == pytest.approx(by_hydraulic, rel=0.12)


@settings(deadline=None)
@given(AIRFLOWS, st.floats(0.5, 12.0))
def test_velocity_and_diameter_undo_each_other(airflow_m3_s: float, velocity_m_s: float) -> None:
    """The duct for a velocity has it."""
    diameter_m = duct.diameter_for_velocity(airflow_m3_s, velocity_m_s)
    assert duct.velocity(airflow_m3_s, duct.round_area(diameter_m)) == pytest.approx(velocity_m_s)


@settings(deadline=None)
@given(AIRFLOWS, DIAMETERS, st.floats(0.0, 3.0))
def test_a_fitting_is_its_equivalent_length(airflow_m3_s: float, diameter_m: float, coefficient: float) -> None:
    """Loss by the coefficient equals loss by the equivalent length."""
    factor = duct.friction_factor(airflow_m3_s, diameter_m, 9e-5, DENSITY, VISCOSITY)
    length_m = duct.fitting_equivalent_length(coefficient, diameter_m, factor)
    speed_m_s = duct.velocity(airflow_m3_s, duct.round_area(diameter_m))
    lost_pa = duct.fitting_loss(coefficient, speed_m_s, DENSITY)
    assert duct.pressure_loss(friction(airflow_m3_s, diameter_m), length_m) == pytest.approx(lost_pa)


@settings(deadline=None)
@given(DIAMETERS, st.floats(0.0, 0.9), st.floats(0.0, 0.9))
def test_compression_never_helps(diameter_m: float, one: float, other: float) -> None:
    """A duct squeezed more takes more, and a small duct suffers most."""
    less, more = sorted((one, other))
    light = duct.flex_compression_factor(diameter_m, less, 58.0, 4.96)
    assert 1 <= light <= duct.flex_compression_factor(diameter_m, more, 58.0, 4.96)
    assert duct.flex_compression_factor(diameter_m * 2, less, 58.0, 4.96) <= light
