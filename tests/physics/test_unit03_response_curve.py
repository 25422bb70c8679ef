"""Response of the tuned circuit against the tabulated universal curve, and against its own impedance."""

import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.response_curve import (
    decibels,
    detuning_in_bandwidths,
    relative_response,
    universal_response,
)

COILS = Path(__file__).parents[1] / "published" / "coils"
# Formulas from memory of F. E. Terman, Radio Engineers' Handbook, 1943, section 3; figures recomputed with mpmath.
SINGLE_TUNED = tomllib.loads((COILS / "tuned_circuits.toml").read_text())["single_tuned"]

hertz = st.floats(1e4, 1e8)
ratios = st.floats(0.01, 100)
q_factors = st.floats(0.1, 1e4)


@pytest.fixture
def curve(published):
    """F. E. Terman, Radio Engineers' Handbook, 1943, section 3, universal resonance curve.

    Recomputed with mpmath; the two figures in `table_value`, 0.707 and 0.447, from memory of his rule of thumb.
    """
    return published("coils/universal_resonance_curve")


def test_universal_curve_size_decibels_and_phase(curve):
    response = universal_response(curve["a"])
    assert np.abs(response) == pytest.approx(curve["response_ratio"], rel=1e-10)
    assert decibels(response) == pytest.approx(curve["response_dB"], abs=1e-8)
    assert -np.degrees(np.angle(response)) == pytest.approx(curve["phase_deg"], abs=1e-9)


def test_figures_recalled_from_the_printed_curve(curve):
    recalled = curve["table_how"] == "memory"
    assert recalled.sum() == 2
    expected = curve["table_value"][recalled]
    assert np.abs(universal_response(curve["a"][recalled])) == pytest.approx(expected, abs=5e-4)


@pytest.mark.parametrize("side, column", [(1, "exact_Q100_above"), (-1, "exact_Q100_below")])
def test_exact_response_beside_the_universal_curve(curve, side, column):
    frequency = 1e6 * (1 + side * curve["a"] / 100)
    assert np.abs(relative_response(frequency, 1e6, 100)) == pytest.approx(curve[column], rel=2e-9)


@pytest.mark.parametrize("example", SINGLE_TUNED, ids=lambda e: f"Q {e['Q']}")
def test_neighbour_nine_kilohertz_off(example):
    response = relative_response(1.009e6, 1e6, example["Q"])
    assert abs(response) == pytest.approx(example["response_at_9kHz_off"], rel=1e-11)


@given(frequency=hertz, ratio=ratios, q=q_factors, resistance=st.floats(0.01, 1e3))
def test_response_is_the_resistance_over_the_impedance(frequency, ratio, q, resistance):
    inductance = q * resistance / (2 * np.pi * frequency)
    capacitance = 1 / (2 * np.pi * frequency * q * resistance)
    impedance = series_impedance(ratio * frequency, inductance, capacitance, resistance)
    assert relative_response(ratio * frequency, frequency, q) == pytest.approx(resistance / impedance, rel=1e-9)


@given(frequency=hertz, ratio=ratios, q=q_factors)
def test_never_more_than_at_resonance(frequency, ratio, q):
    assert relative_response(frequency, frequency, q) == 1
    assert abs(relative_response(ratio * frequency, frequency, q)) <= 1


@given(frequency=hertz, ratio=ratios, q=q_factors)
def test_equal_ratios_above_and_below_respond_alike(frequency, ratio, q):
    above = relative_response(frequency * ratio, frequency, q)
    below = relative_response(frequency / ratio, frequency, q)
    assert above == pytest.approx(np.conj(below), rel=1e-9)


@given(frequency=hertz, detuning=st.floats(-5, 5), q=st.floats(100, 1e4))
def test_universal_curve_is_close_where_q_is_high(frequency, detuning, q):
    exact = relative_response(frequency * (1 + detuning / q), frequency, q)
    # f/f0 − f0/f is 2x − x² and smaller terms for x = a/Q, so the curve leaves out a²/Q in the denominator.
    left_out = 1.1 * detuning**2 / q
    assert exact == pytest.approx(universal_response(detuning), abs=left_out * abs(exact) + 1e-14 * q)


@given(frequency=hertz, detuning=st.floats(-5, 5), q=st.floats(10, 1e3))
def test_same_detuning_in_bandwidths_whatever_the_frequency(frequency, detuning, q):
    off_tune = frequency * (1 + detuning / q)
    assert detuning_in_bandwidths(off_tune, frequency, q) == pytest.approx(detuning, abs=1e-11 * q)


@given(first=st.floats(1e-6, 1e6), second=st.floats(1e-6, 1e6))
def test_decibels_of_two_stages_add(first, second):
    assert decibels(first * second) == pytest.approx(decibels(first) + decibels(second), abs=1e-9)
    assert decibels(10.0) == pytest.approx(20)


def test_arrays_broadcast():
    grid = relative_response(np.array([[9e5], [1e6], [1.1e6]]), 1e6, np.array([30, 80, 200]))
    assert grid.shape == (3, 3)
    assert grid[2, 1] == relative_response(1.1e6, 1e6, 80)
