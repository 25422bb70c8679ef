"""Effective height, emf, capacitance and power of a short aerial, against integrals and published tables."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import mu_0, speed_of_light
from scipy.integrate import quad

from solutions.unit01_signal.aerial_voltage import aerial_capacitance, aerial_emf, effective_height
from solutions.unit01_signal.radiation_resistance import available_power, radiation_resistance

heights = st.floats(2, 30)
tops = st.floats(0, 60)
frequencies = st.floats(150e3, 1.7e6)
emfs = st.floats(1e-6, 1)
resistances = st.floats(0.01, 1000)
factors = st.floats(1.01, 100)


@given(heights, tops)
def test_effective_height_is_the_area_under_the_current(height, top):
    area, _ = quad(lambda z: 1 - z / (height + top), 0, height)  # referee: scipy
    assert effective_height(height, top) == pytest.approx(area)


@given(heights, tops, st.floats(0.1, 60))
def test_effective_height_lies_between_half_and_full(height, top, more):
    assert height / 2 <= effective_height(height, top) < height
    assert effective_height(height, top + more) > effective_height(height, top)


@given(heights)
def test_its_limits(height):
    assert effective_height(height, 0.0) == height / 2
    assert effective_height(height, 1e6 * height) == pytest.approx(height, rel=1e-6)


def test_effective_height_as_tabulated(published):
    # F. E. Terman, Radio Engineers' Handbook, 1943, sec. 11; Admiralty Handbook of Wireless Telegraphy, 1938, vol. II:
    # citations from memory; figures recomputed in closed form, five decimals.
    row = published("signal/aerial_effective_height")
    np.testing.assert_allclose(effective_height(row["h_m"], row["b_m"]), row["he_lf_m"], atol=6e-6)
    # The true current is a sine. For wire up to a tenth of a wave the straight line costs less than 2 %, and is low.
    short = row["h_m"] + row["b_m"] < row["lambda_m"] / 10
    ratio = effective_height(row["h_m"], row["b_m"]) / row["he_m"]
    assert short.sum() > 12
    assert np.all((ratio[short] > 0.98) & (ratio[short] < 1))


def test_radiation_resistance_and_emf_as_tabulated(published):
    # As above: 160π²(h/λ)² for 120π ohm, from memory; figures recomputed, four to seven figures.
    row = published("signal/aerial_effective_height")
    resistance = radiation_resistance(row["he_m"], row["f_khz"] * 1e3)
    np.testing.assert_allclose(resistance, row["rr_ohm"], rtol=2e-5)
    np.testing.assert_allclose(aerial_emf(1e-3, row["he_m"]) * 1e6, row["emf_uv_per_mv_per_m"], rtol=2e-6)


def test_radiation_resistance_is_the_power_that_leaves():
    # Poynting: a short current element over ground sends sin²θ into the upper half space.
    current, height, f = 2.0, 5.0, 1e6
    impedance = mu_0 * speed_of_light
    k = 2 * np.pi * f / speed_of_light
    density = impedance * (k * height * current / (2 * np.pi)) ** 2  # r.m.s. current, doubled by the image, times r²
    power, _ = quad(lambda theta: density * np.sin(theta) ** 3 * 2 * np.pi, 0, np.pi / 2)
    # 120π for 376.73 ohm: 0.07 %
    assert radiation_resistance(height, f) == pytest.approx(power / current**2, rel=1e-3)


@given(emfs, heights, factors)
def test_emf_is_linear(field, height, times):
    assert aerial_emf(times * field, height) == pytest.approx(times * aerial_emf(field, height))
    assert aerial_emf(field, times * height) == pytest.approx(times * aerial_emf(field, height))


@given(heights, frequencies, factors)
def test_radiation_resistance_goes_as_the_square_of_height_over_wavelength(height, f, times):
    assert radiation_resistance(times * height, f) == pytest.approx(times**2 * radiation_resistance(height, f))
    assert radiation_resistance(height, times * f) == pytest.approx(radiation_resistance(times * height, f))


@given(emfs, resistances, st.floats(0.01, 100))
def test_no_load_draws_more_than_the_available_power(emf, resistance, load_ratio):
    load = load_ratio * resistance
    drawn = (emf / (resistance + load)) ** 2 * load
    assert drawn <= available_power(emf, resistance) * (1 + 1e-12)


@given(emfs, resistances)
def test_and_a_matched_load_draws_it_all(emf, resistance):
    assert (emf / (2 * resistance)) ** 2 * resistance == pytest.approx(available_power(emf, resistance))


@given(emfs, heights, frequencies)
def test_a_lossless_aerial_gathers_the_same_whatever_its_height(field, height, f):
    # Equal to the wave's power flow over 3λ²/(16π), common practice, no source.
    power = available_power(aerial_emf(field, height), radiation_resistance(height, f))
    wavelength = speed_of_light / f
    assert power == pytest.approx(field**2 / (120 * np.pi) * 3 * wavelength**2 / (16 * np.pi))


def test_capacitance_against_the_method_of_moments(published):
    # G. W. O. Howe, The Electrician 73, 829 (1914), and NBS Circular 74, 1924: from memory; the moment method's figures
    # recomputed. The simple formula leaves out the wire's ends, where charge crowds: it is low, by 5 to 7 %.
    row = published("signal/aerial_capacitance")
    bent = row["kind"] == "inverted_L"
    height, top, radius, foot = (row[name][bent] for name in ("h_m", "l_m", "a_m", "g_m"))
    # These down-leads stop short of the ground by `foot`; the formula takes them all the way down.
    got = aerial_capacitance(height, top, radius) * (height - foot + top) / (height + top)
    ratio = got / (row["c_mom_pf"][bent] * 1e-12)
    assert np.all((ratio > 0.93) & (ratio < 0.96))


@given(st.floats(3, 30), st.floats(30, 60), st.floats(0.2e-3, 3e-3))
def test_capacitance_is_that_of_a_line_whose_wave_goes_at_the_speed_of_light(height, top, radius):
    # The same wire's inductance a metre, by images: (μ0/2π) ln(2h/a). L times C is 1/c² in any line in air.
    inductance = mu_0 / (2 * np.pi) * np.log(2 * height / radius) * (height + top)
    assert inductance * aerial_capacitance(height, top, radius) == pytest.approx(((height + top) / speed_of_light) ** 2)
