"""Self-capacitance against Medhurst's measurements, and what a bench sees of it."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from solutions.unit02_coil_and_condenser.self_capacitance import (
    apparent_inductance,
    self_capacitance,
    self_capacitance_fit,
    self_capacitance_from_octave,
)

inductances, strays, frequencies = st.floats(1e-6, 1e-2), st.floats(1e-13, 1e-10), st.floats(1e4, 1e7)


@pytest.fixture
def medhurst(published):
    """R. G. Medhurst, Wireless Engineer 24, February 1947.

    The table found in an archived posting that quotes the paper; the fit from memory, its column recomputed.
    """
    return published("coils/medhurst_self_capacitance")


@pytest.fixture
def lengths(medhurst):
    """Of coils one centimetre across."""
    return medhurst["length_over_diameter"] * 0.01


def test_table_for_a_coil_one_centimetre_across(medhurst, lengths):
    assert 1e12 * self_capacitance(0.01, lengths) == pytest.approx(medhurst["H_pF_per_cm"], rel=1e-12)


def test_halfway_between_two_entries():
    assert 1e12 * self_capacitance(0.01, 0.0225) == pytest.approx(0.53)


def test_fit_column(medhurst, lengths):
    assert 1e12 * self_capacitance_fit(0.01, lengths) == pytest.approx(medhurst["H_fit_pF_per_cm"], abs=6e-5)


def test_fit_misses_the_table_by_less_than_eight_per_cent(medhurst, lengths):
    miss = self_capacitance_fit(0.01, lengths) / self_capacitance(0.01, lengths) - 1
    assert 100 * miss == pytest.approx(medhurst["fit_error_percent"], abs=0.06)
    assert np.abs(miss).max() == pytest.approx(0.077, abs=1e-3)


@given(st.floats(1e-3, 0.3), st.floats(0.1, 50), st.floats(0.1, 10))
def test_twice_the_coil_twice_the_capacitance(diameter, shape, factor):
    assume(0.11 < shape < 49)
    for capacitance in (self_capacitance, self_capacitance_fit):
        once = capacitance(diameter, shape * diameter)
        assert capacitance(factor * diameter, factor * shape * diameter) == pytest.approx(factor * once, rel=1e-9)


@pytest.mark.parametrize("length", [0.0049, 2.51, np.array([0.05, 3.0])])
def test_shapes_that_were_never_measured_are_refused(length):
    with pytest.raises(ValueError, match="0.1 to 50 diameters"):
        self_capacitance(0.05, length)


@given(inductances, strays, frequencies)
def test_octave_readings_give_the_self_capacitance_back(inductance, stray, frequency):
    total_low = 1 / ((2 * np.pi * frequency) ** 2 * inductance)
    total_high = 1 / ((4 * np.pi * frequency) ** 2 * inductance)
    assume(total_high > 1.01 * stray)
    found = self_capacitance_from_octave(total_low - stray, total_high - stray)
    assert found == pytest.approx(stray, rel=1e-9, abs=1e-12 * total_low)


@given(inductances, strays, st.floats(0.01, 0.95))
def test_apparent_inductance_is_that_of_the_two_in_parallel(inductance, stray, below):
    frequency = below / (2 * np.pi * np.sqrt(inductance * stray))
    seen = apparent_inductance(inductance, stray, frequency)
    s = 2j * np.pi * frequency
    together = 1 / (1 / (s * inductance) + s * stray)
    assert seen == pytest.approx((together / s).real, rel=1e-9)
    assert seen > inductance
    assert apparent_inductance(inductance, 0.0, frequency) == inductance
