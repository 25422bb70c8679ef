"""Mutual inductance against Neumann's and Carlson's forms, dipoles far off, and coils of many turns."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, special

from solutions.unit02_coil_and_condenser.mutual_inductance import (
    coaxial_coils,
    coaxial_filaments,
    coupling_coefficient,
    mutual_from_series,
    turn_positions,
)
from solutions.unit02_coil_and_condenser.solenoid_inductance import MU_0, elliptic_integrals, solenoid_inductance

radii = st.floats(1e-3, 1)
apart = st.floats(0.01, 30)


def test_tabulated_filaments(published):
    """Maxwell's formula at 13 geometries, recomputed with mpmath in two forms."""
    table = published("coils/mutual_coaxial_filaments")
    radius, other, distance = (table[name] / 100 for name in ("radius_A_cm", "radius_a_cm", "distance_d_cm"))
    assert 1e9 * coaxial_filaments(radius, other, distance) == pytest.approx(table["M_nH"], rel=1e-11)


def test_scientific_paper_169_example():
    """E. B. Rosa and F. W. Grover, NBS Scientific Paper 169, 1916: geometry and printed 248.7875 nH from memory."""
    assert 1e9 * coaxial_filaments(0.25, 0.20, 0.10) == pytest.approx(248.7875, abs=2e-4)


@given(radii, st.floats(0.2, 5), apart)
def test_filaments_against_neumann(radius, ratio, distance):
    """Neumann's integral round both circles. Symmetry leaves one angle; a periodic integrand needs only a mean."""
    other = ratio * radius
    gap = np.hypot(distance * radius, radius - other)
    angles = np.linspace(0, 2 * np.pi, int(40 + 60 * (radius + other) / gap), endpoint=False)
    separation = np.sqrt(radius**2 + other**2 + (distance * radius) ** 2 - 2 * radius * other * np.cos(angles))
    neumann = MU_0 / 2 * radius * other * 2 * np.pi * np.mean(np.cos(angles) / separation)
    assert coaxial_filaments(radius, other, distance * radius) == pytest.approx(neumann, rel=1e-9)


@given(radii, st.floats(0.2, 5), apart)
def test_filaments_against_carlson(radius, ratio, distance):
    """NIST Digital Library of Mathematical Functions, 19.34.5 (found)."""
    other, along = ratio * radius, distance * radius
    far, near = along**2 + (radius + other) ** 2, along**2 + (radius - other) ** 2
    carlson = 3 * special.elliprf(0, far, near) - 2 * near * special.elliprd(0, far, near)
    carlson *= 2 / 3 * MU_0 * radius * other
    assert coaxial_filaments(radius, other, along) == pytest.approx(carlson, rel=1e-8)


@given(radii, st.floats(0.2, 5), st.floats(0.01, 5))
def test_filaments_by_the_elliptic_integrals_of_the_docstring(radius, ratio, distance):
    other, along = ratio * radius, distance * radius
    m = 4 * radius * other / ((radius + other) ** 2 + along**2)
    k = np.sqrt(m)
    first_kind, second_kind = elliptic_integrals(m)
    maxwell = MU_0 * np.sqrt(radius * other) * ((2 / k - k) * first_kind - 2 / k * second_kind)
    assert coaxial_filaments(radius, other, along) == pytest.approx(maxwell, rel=1e-10)


@given(radii, radii, st.floats(300, 3000))
def test_far_turns_are_dipoles(radius, other, distance):
    along = distance * max(radius, other)
    dipoles = MU_0 * np.pi * (radius * other) ** 2 / (2 * along**3)
    assert coaxial_filaments(radius, other, along) == pytest.approx(dipoles, rel=4 / distance**2)


def test_small_turn_catches_the_field_on_the_axis():
    """A small turn links B = μ₀ a² / 2 (a² + d²)^(3/2) through its area."""
    distance = np.array([0.0, 0.02, 0.05, 0.2])
    flux = MU_0 * 0.05**2 / (2 * (0.05**2 + distance**2) ** 1.5) * np.pi * 0.05e-3**2
    assert coaxial_filaments(0.05, 0.05e-3, distance) == pytest.approx(flux, rel=2e-6)


@given(radii, radii, st.floats(0.01, 10))
def test_reciprocity_and_fall_with_distance(radius, other, distance):
    here = coaxial_filaments(radius, other, distance)
    assert here > 0
    assert coaxial_filaments(other, radius, distance) == pytest.approx(here, rel=1e-12)
    assert coaxial_filaments(radius, other, -distance) == here
    assert coaxial_filaments(radius, other, 1.05 * distance) < here


def test_turns_are_a_pitch_apart_and_centred():
    assert turn_positions(4, 0.08) == pytest.approx([-0.03, -0.01, 0.01, 0.03])
    assert turn_positions(1, 0.08) == pytest.approx([0.0])


def test_coils_of_many_turns_come_near_two_current_sheets(published):
    """Six pairs of sheets, recomputed with mpmath by the method of Grover 1946 ch. 15; not published examples.

    The sum over turns is the midpoint rule for the sheets' integral: with twice the turns a quarter of the error,
    so that two sums point to the sheet.
    """
    table = published("coils/mutual_coaxial_solenoids")
    for row in range(6):
        turns_1, turns_2 = (int(table[name][row]) for name in ("N1", "N2"))
        radius_1, length_1, radius_2, length_2, distance = (
            table[name][row] / 100 for name in ("a1_cm", "l1_cm", "a2_cm", "l2_cm", "c_cm")
        )
        first, second = (turns_1, 2 * radius_1, length_1), (turns_2, 2 * radius_2, length_2)
        turns = coaxial_coils(*first, *second, distance)
        finer = coaxial_coils(2 * turns_1, *first[1:], 2 * turns_2, *second[1:], distance) / 4
        sheets = finer + (finer - turns) / 3
        assert 1e6 * sheets == pytest.approx(table["M_uH"][row], rel=1e-6)
        assert 1e6 * turns == pytest.approx(table["M_uH"][row], rel=3e-4)
        k = coupling_coefficient(sheets, solenoid_inductance(*first), solenoid_inductance(*second))
        assert k == pytest.approx(table["k"][row], rel=1e-6)


coil = st.tuples(st.integers(1, 40), st.floats(0.01, 0.2), st.floats(0.2, 3))


def laid_out(coil):
    count, diameter, shape = coil
    return count, diameter, shape * diameter


@given(coil, coil, st.floats(0.05, 3))
def test_coils_are_reciprocal_part_with_distance_and_never_couple_fully(first, second, gap):
    """Side by side, at least a twentieth of a diameter and one pitch apart."""
    first, second = laid_out(first), laid_out(second)
    pitches = first[2] / first[0] + second[2] / second[0]
    distance = (first[2] + second[2]) / 2 + gap * max(first[1], second[1]) + pitches
    mutual = coaxial_coils(*first, *second, distance)
    assert coaxial_coils(*second, *first, distance) == pytest.approx(mutual, rel=1e-12)
    assert coaxial_coils(*first, *second, 1.1 * distance) < mutual
    assert 0 < coupling_coefficient(mutual, solenoid_inductance(*first), solenoid_inductance(*second)) < 1


@given(st.floats(1e-6, 1e-3), st.floats(1e-6, 1e-3), st.floats(0.0, 0.99))
def test_series_readings_give_the_mutual_back(first, second, k):
    mutual = k * np.sqrt(first * second)
    assert mutual_from_series(first + second + 2 * mutual, first + second - 2 * mutual) == pytest.approx(
        mutual, rel=1e-9, abs=1e-18
    )


def test_k_and_the_energy_of_two_coils():
    """k is one exactly when some pair of currents would store no energy at all."""
    assert coupling_coefficient(60e-6, 180e-6, 20e-6) == pytest.approx(1)
    currents = np.array([1.0, -3.0])
    matrix = np.array([[180e-6, 60e-6], [60e-6, 20e-6]])
    assert currents @ matrix @ currents == pytest.approx(0, abs=1e-18)


def test_neumann_by_quadrature_once():
    value, _ = integrate.quad(lambda u: np.cos(u) / np.sqrt(0.25**2 + 0.2**2 + 0.1**2 - 0.1 * np.cos(u)), 0, np.pi)
    assert coaxial_filaments(0.25, 0.2, 0.1) == pytest.approx(MU_0 * 0.25 * 0.2 * value, rel=1e-9)
