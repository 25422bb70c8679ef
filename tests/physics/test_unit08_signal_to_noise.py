"""Thermal noise against SciPy's constant and Nyquist's figure; decibels against powers."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from solutions.unit08_two_stations.signal_to_noise import ratio, thermal_noise


@given(st.floats(1, 1e6), st.floats(1, 2e4), st.floats(77, 3000))
def test_a_load_as_large_as_the_resistance_takes_ktb(resistance, bandwidth, temperature):
    taken = (thermal_noise(resistance, bandwidth, temperature) / 2) ** 2 / resistance
    assert abs(taken / (constants.k * temperature * bandwidth) - 1) < 1e-9


def test_four_nanovolts_in_a_kilohm():
    assert f"{thermal_noise(1e3, 1.0, 290.0) * 1e9:.2f}" == "4.00"


@given(st.floats(1e-7, 1e-2), st.floats(1e-7, 1e-2))
def test_decibels_of_voltages_are_those_of_their_powers(signal, noise):
    assert abs(10 ** (ratio(signal, noise) / 10) / (signal**2 / noise**2) - 1) < 1e-9
    assert abs(ratio(signal, noise) - 10 * np.log10(signal**2 / noise**2)) < 1e-9
