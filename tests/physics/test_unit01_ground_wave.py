"""The ground wave, against the complex error function, another model's fields and a published reference."""

import mpmath
import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.constants import epsilon_0, speed_of_light
from scipy.special import ai_zeros, airy, wofz

from solutions.unit01_signal.field_strength import (
    ground_attenuation,
    ground_wave_field,
    numerical_distance,
    unattenuated_field,
)

powers = st.floats(1, 1e6)
distances = st.floats(100, 1e6)
frequencies = st.floats(150e3, 1.7e6)
conductivities = st.floats(1e-4, 5)
permittivities = st.floats(3, 80)


def decibels_above_microvolt(field):
    return 20 * np.log10(field / 1e-6)


def test_the_ground_is_looked_up_with_the_constants_of_codata():
    # CODATA 2022 by way of scipy: found.
    omega = 2 * np.pi * 1e6
    ground = 22 - 1j * 0.003 / (omega * epsilon_0)
    wanted = -0.5j * omega / speed_of_light * 1e4 * (ground - 1) / ground**2
    assert numerical_distance(1e4, 1e6, 0.003, 22) == pytest.approx(wanted, rel=1e-8)


def test_300_millivolts_a_metre_at_1_km_for_1_kw():
    # Recommendation ITU-R P.368 (editions 7 to 9, Annex 1): exact clause from memory, sqrt(90 P) recomputed.
    assert unattenuated_field(1000, 1000) == pytest.approx(0.3, rel=1e-12)
    # With 376.73 ohm for 120π it is 299.79 mV/m: 109.5367 dB, the NTIA set's figure over sea (found).
    assert decibels_above_microvolt(unattenuated_field(1000, 1000)) == pytest.approx(109.5367, abs=0.0062)


@pytest.mark.parametrize("degrees", [0, 0.05, 5, 23, 42, 60, 89.9])
def test_the_two_series_agree_with_the_complex_error_function(degrees):
    p = np.logspace(-6, 4, 500) * np.exp(-1j * np.radians(degrees))
    exact = np.abs(1 - 1j * np.sqrt(np.pi * p) * wofz(-np.sqrt(p)))  # referee: scipy
    np.testing.assert_allclose(ground_attenuation(p), exact, rtol=5e-6)


@pytest.mark.parametrize("p", [0.001, 0.5 - 0.3j, 3 - 1j, 15 - 12j, 40 - 30j])
def test_and_with_it_at_thirty_digits(p):
    with mpmath.workdps(30):  # referee: mpmath
        z = mpmath.mpmathify(p)
        exact = abs(1 - 1j * mpmath.sqrt(mpmath.pi * z) * mpmath.exp(-z) * mpmath.erfc(1j * mpmath.sqrt(z)))
    assert ground_attenuation(p) == pytest.approx(float(exact), rel=5e-6)


def test_numerical_distance_and_attenuation_as_tabulated(published):
    # K. A. Norton, Proc. IRE 24, 1367 (1936) and 29, 623 (1941): citations from memory, figures recomputed with
    # scipy.special.wofz; six figures printed, fields to 0.001 dB.
    row = published("signal/groundwave_recomputed")
    p = numerical_distance(row["d_km"] * 1e3, 1e6, row["sigma_s_per_m"], row["eps_r"])
    np.testing.assert_allclose(np.abs(p), row["p_abs"], rtol=5e-6)
    np.testing.assert_allclose(np.degrees(np.angle(p)), row["p_phase_deg"], atol=1e-4)
    np.testing.assert_allclose(ground_attenuation(p), row["F_abs"], atol=6e-7)
    field = ground_wave_field(1e3, row["d_km"] * 1e3, 1e6, row["sigma_s_per_m"], row["eps_r"])
    np.testing.assert_allclose(decibels_above_microvolt(field), row["e_plane_dbuvm"], atol=0.001)


@pytest.mark.parametrize(("far", "most"), [(5, 0.02), (10, 0.06), (20, 0.16), (50, 0.7)])
def test_near_by_the_flat_earth_agrees_with_a_round_one(published, far, most):
    # NTIA/ITS LF/MF smooth-earth validation set (NTIA Report 99-368, 1999), found. The flat formula leaves out the
    # earth's curve, which only ever takes field away, and takes more with every kilometre; `most` is what it takes
    # from the worst of the grounds and frequencies, in dB.
    row = published("signal/groundwave_ntia_lfmf")
    row = {name: column[row["d_km"] <= far] for name, column in row.items()}
    field = ground_wave_field(1e3, row["d_km"] * 1e3, row["f_mhz"] * 1e6, row["sigma_s_per_m"], row["eps_r"])
    too_strong = decibels_above_microvolt(field) - row["e_dbuvm"]
    assert np.all(too_strong > 0)
    assert most / 2 < too_strong.max() < most


def test_fair_range_costs_less_than_a_decibel(published):
    # Rule 80 km / cube root of MHz, from memory; the NTIA set, found.
    row = published("signal/groundwave_ntia_lfmf")
    fair = row["d_km"] <= 80 / np.cbrt(row["f_mhz"])
    field = ground_wave_field(1e3, row["d_km"] * 1e3, row["f_mhz"] * 1e6, row["sigma_s_per_m"], row["eps_r"])
    too_strong = decibels_above_microvolt(field) - row["e_dbuvm"]
    assert too_strong[fair].max() < 1
    assert too_strong[row["d_km"] >= 500].min() > 6


@given(powers, distances, frequencies, conductivities, permittivities, st.floats(1.01, 100))
def test_field_goes_as_the_root_of_power_and_never_beats_perfect_ground(power, distance, f, sigma, eps, times):
    field = ground_wave_field(power, distance, f, sigma, eps)
    assert ground_wave_field(times * power, distance, f, sigma, eps) == pytest.approx(np.sqrt(times) * field)
    assert 0 < field <= unattenuated_field(power, distance)


@given(distances, frequencies, conductivities, permittivities, st.floats(1.01, 100))
def test_ground_takes_more_from_a_wave_that_goes_further(distance, f, sigma, eps, times):
    p = numerical_distance(distance, f, sigma, eps)
    assert ground_attenuation(times * p) < ground_attenuation(p)
    assert numerical_distance(times * distance, f, sigma, eps) == pytest.approx(times * p)


@given(distances, frequencies, conductivities, permittivities, st.floats(1.01, 10))
def test_poorer_ground_takes_more(distance, f, sigma, eps, times):
    # As long as the ground conducts more than it stores: σ > ω ε0 εr; a drier, thinner soil then only takes more.
    poorer = sigma / times
    assume(poorer > 2 * np.pi * f * epsilon_0 * eps)
    assert ground_attenuation(numerical_distance(distance, f, poorer, eps)) < ground_attenuation(
        numerical_distance(distance, f, sigma, eps)
    )


@given(st.floats(-90, 0), st.floats(1e-9, 1e-6), st.floats(1e5, 1e9))
def test_near_by_no_loss_and_far_off_the_inverse_square(degrees, near, far):
    turn = np.exp(1j * np.radians(degrees))
    assert ground_attenuation(near * turn) == pytest.approx(1, abs=2 * np.sqrt(near))
    assert ground_attenuation(far * turn) == pytest.approx(1 / (2 * far), rel=1e-4)


def round_globe_loss(distance, frequency, conductivity, permittivity):
    """dB that the globe's curve takes beyond flat ground: Fock's residue series, with scipy as referee."""
    k = 2 * np.pi * frequency / speed_of_light
    ground = permittivity - 1j * conductivity / (2 * np.pi * frequency * epsilon_0)
    impedance = np.sqrt(ground - 1) / ground
    radius = 6370e3 / (1 - 0.04665 * np.exp(0.005577 * 315))  # bent rays, 315 N-units, as in the NTIA set
    size = np.cbrt(k * radius / 2)
    q, x = -1j * size * impedance, size * distance / radius
    turn = np.exp(-2j * np.pi / 3)
    zeros, zeros_of_slope, _, _ = ai_zeros(30)
    t = (zeros_of_slope if abs(q) < 1 else zeros) * -np.exp(-1j * np.pi / 3)
    for _ in range(20):  # Newton's method on w' = q w, with w'' = t w
        value, slope, _, _ = airy(t * turn)
        t = t - (turn * slope - q * value) / (t * value - q * turn * slope)
    globe = abs(np.sqrt(np.pi * x) * np.sum(np.exp(-1j * x * t) / (t - q**2)))
    return 20 * np.log10(ground_attenuation(-0.5j * k * distance * impedance**2) / globe)


@pytest.mark.parametrize(
    ("distance", "frequency", "conductivity", "permittivity", "loss"),
    [
        # V. A. Fock 1945 and J. R. Wait, from memory: e_plane - e_sphere in groundwave_recomputed.csv, recomputed there
        # with 60 modes at 30 digits.
        (100e3, 1e6, 5, 70, 69.498 - 68.518),
        (200e3, 1e6, 0.003, 22, 26.782 - 22.471),
        # What the lesson says of Merrow Sound, recomputed.
        (280e3, 693e3, 5, 70, 3.796),
    ],
)
def test_far_off_the_globe_takes_what_the_lesson_says(distance, frequency, conductivity, permittivity, loss):
    assert round_globe_loss(distance, frequency, conductivity, permittivity) == pytest.approx(loss, abs=0.002)
