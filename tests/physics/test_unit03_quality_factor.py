"""Quality factor and bandwidth against textbook data, and the half-power points against the response itself."""

import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit03_tuned_circuit.quality_factor import (
    bandwidth,
    dynamic_resistance,
    half_power_frequencies,
    quality_factor,
)
from solutions.unit03_tuned_circuit.response_curve import relative_response

COILS = Path(__file__).parents[1] / "published" / "coils"
# J. Bird, Electrical Circuit Theory and Technology, problem 29.07, and two textbook exercises (book titles from memory,
# data found; answers recomputed with mpmath from ωL/R, f0/Q and L/(CR), the books' printed answers not seen).
TEXTBOOK = tomllib.loads((COILS / "textbook_examples_tuned.toml").read_text())["example"]
# Formulas from memory of F. E. Terman, Radio Engineers' Handbook, 1943, section 3; figures recomputed with mpmath.
SINGLE_TUNED = tomllib.loads((COILS / "tuned_circuits.toml").read_text())["single_tuned"]

henries = st.floats(1e-6, 1e-2)
farads = st.floats(1e-12, 1e-8)
hertz = st.floats(1e4, 1e8)
q_factors = st.floats(0.1, 1e4)


@pytest.mark.parametrize("example", [e for e in TEXTBOOK if "L_uH" in e], ids=lambda e: f"{e['L_uH']} µH")
def test_textbook_circuits_given_by_their_parts(example):
    inductance, capacitance, resistance = example["L_uH"] * 1e-6, example["C_pF"] * 1e-12, example["R_ohm"]
    q = quality_factor(inductance, resistance, example["f0_Hz"])
    assert q == pytest.approx(example["Q"], rel=1e-10)
    assert bandwidth(example["f0_Hz"], q) == pytest.approx(example["bandwidth_Hz"], rel=1e-10)
    if "dynamic_resistance_ohm" in example:
        expected = example["dynamic_resistance_ohm"]
        assert dynamic_resistance(inductance, capacitance, resistance) == pytest.approx(expected, rel=1e-10)


def test_textbook_circuit_given_by_its_bandwidth():
    example = next(e for e in TEXTBOOK if "bandwidth_Hz" in e and "L_uH" not in e)
    frequency, capacitance = example["f0_kHz"] * 1e3, example["C_nF"] * 1e-9
    assert bandwidth(frequency, example["Q"]) == pytest.approx(example["bandwidth_Hz"])
    inductance = 1 / ((2 * np.pi * frequency) ** 2 * capacitance)
    resistance = 2 * np.pi * frequency * inductance / example["Q"]
    expected = example["dynamic_resistance_ohm"]
    assert dynamic_resistance(inductance, capacitance, resistance) == pytest.approx(expected, rel=1e-10)


@pytest.mark.parametrize("example", SINGLE_TUNED, ids=lambda e: f"Q {e['Q']}")
def test_single_tuned_circuits(example):
    inductance, capacitance, frequency = example["L_uH"] * 1e-6, example["C_pF"] * 1e-12, example["f0_kHz"] * 1e3
    q = quality_factor(inductance, example["series_R_ohm"], frequency)
    assert q == pytest.approx(example["Q"], rel=1e-10)
    assert bandwidth(frequency, q) == pytest.approx(example["bandwidth_3dB_Hz"], rel=1e-10)
    expected_ends = (example["f_lower_Hz"], example["f_upper_Hz"])
    assert half_power_frequencies(frequency, q) == pytest.approx(expected_ends, rel=1e-11)
    resistance = dynamic_resistance(inductance, capacitance, example["series_R_ohm"])
    assert resistance == pytest.approx(example["dynamic_resistance_ohm"], rel=1e-10)


@given(frequency=hertz, q=q_factors)
def test_half_power_points_are_where_the_current_is_down_by_root_two(frequency, q):
    for edge in half_power_frequencies(frequency, q):
        assert abs(relative_response(edge, frequency, q)) == pytest.approx(1 / np.sqrt(2), rel=1e-9)


@given(frequency=hertz, q=q_factors)
def test_half_power_points_lie_about_resonance_as_their_bandwidth_says(frequency, q):
    lower, upper = half_power_frequencies(frequency, q)
    assert upper - lower == pytest.approx(bandwidth(frequency, q), rel=1e-9)
    assert lower * upper == pytest.approx(frequency**2, rel=1e-12)


@given(inductance=henries, capacitance=farads, resistance=st.floats(0.01, 1e3))
def test_dynamic_resistance_is_q_squared_times_the_resistance(inductance, capacitance, resistance):
    resonance = 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
    q = quality_factor(inductance, resistance, resonance)
    assert dynamic_resistance(inductance, capacitance, resistance) == pytest.approx(q**2 * resistance, rel=1e-12)


@given(inductance=henries, resistance=st.floats(0.01, 1e3), frequency=hertz)
def test_q_is_radians_times_stored_over_lost_energy(inductance, resistance, frequency):
    stored = inductance / 2  # joule at the crest of 1 ampere
    lost = resistance / 2 / frequency  # joule in one cycle
    assert quality_factor(inductance, resistance, frequency) == pytest.approx(2 * np.pi * stored / lost, rel=1e-12)


def test_arrays_broadcast():
    inductance = np.array([[1e-4], [2e-4]])
    frequency = np.array([5e5, 1e6, 2e6])
    table = quality_factor(inductance, 10.0, frequency)
    assert table.shape == (2, 3)
    assert table[1, 2] == quality_factor(2e-4, 10.0, 2e6)
    lower, upper = half_power_frequencies(frequency, table)
    assert lower.shape == upper.shape == (2, 3)
