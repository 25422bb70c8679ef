"""Treble behind a sharp circuit: a modulated wave sent through the circuit itself, the exact network, and printed levels."""

import tomllib
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.signal import hilbert

from solutions.unit03_tuned_circuit.response_curve import relative_response
from solutions.unit06_reaction.network import AERIAL, GRID, SALTMARSH_SET, rates, state_matrix
from solutions.unit06_reaction.treble_loss import highest_tone, programme_left, tone_level, tone_response
from tests.physics.conftest import TABLES

CUT = tomllib.loads((TABLES / "valve/reaction.toml").read_text())["sideband_cutting"]  # recomputed, at 1 MHz
CARRIER = 1e6

tones = st.floats(50, 10e3)
widths = st.floats(200, 20e3)
detunings = st.floats(-5e3, 5e3)


@pytest.mark.parametrize("quality", [100, 500, 2000])
def test_levels_as_printed(quality):
    levels = tone_level(np.array(CUT["f_a_hz"]), CARRIER / quality)
    assert levels == pytest.approx(CUT[f"db_q{quality}"], abs=6e-5)


def through_the_circuit(tone, quality, detuning, depth):
    """Depth of the envelope's tone behind a series circuit of that Q: the wave itself, filtered, and its envelope taken."""
    count, seconds = 2**18, 0.05
    time = np.arange(count) * seconds / count
    wave = (1 + depth * np.cos(2 * np.pi * tone * time)) * np.cos(2 * np.pi * CARRIER * time)
    spectrum = np.fft.rfft(wave)
    frequency = np.fft.rfftfreq(count, seconds / count)
    passed = np.zeros_like(spectrum)
    passed[1:] = spectrum[1:] * relative_response(frequency[1:], CARRIER - detuning, quality)
    envelope = np.abs(hilbert(np.fft.irfft(passed)))
    return 2 * abs(np.mean(envelope * np.exp(-2j * np.pi * tone * time))) / np.mean(envelope) / depth


@pytest.mark.parametrize("detuning", [0.0, 800.0, -800.0, 2500.0])
@pytest.mark.parametrize("tone", [200.0, 1000.0, 4000.0])
@pytest.mark.parametrize("quality", [100.0, 800.0])
def test_wave_sent_through_the_circuit_itself(quality, tone, detuning):
    width = CARRIER / quality
    heard = through_the_circuit(tone, quality, detuning, 0.01)
    # A circuit's own curve is not quite even about its peak; a percent of depth keeps the envelope's bend below that.
    assert heard == pytest.approx(tone_response(tone, width, detuning), rel=0.01)


def test_far_down_the_slope_treble_gains():
    assert through_the_circuit(2500.0, 1000.0, 2500.0, 0.01) > 2
    assert tone_response(2500.0, 1000.0, 2500.0) > 2


@pytest.mark.parametrize("throttle", [50e-12, 80e-12, 100e-12, 115e-12])
@pytest.mark.parametrize("tone", [300.0, 1000.0, 3000.0])
def test_exact_set_holds_the_treble_back_as_its_bandwidth_says(throttle, tone):
    network = replace(SALTMARSH_SET, throttle_capacitance=throttle)
    poles = np.linalg.eigvals(state_matrix(network))
    pole = poles[(poles.imag > 2e6 * np.pi * 0.9) & (poles.imag < 2e6 * np.pi * 1.1)][0]
    carrier, width = pole.imag / (2 * np.pi), -pole.real / np.pi
    assert width > 0
    storage, flow = rates(network)
    forced = np.zeros((len(poles), 1))
    forced[AERIAL] = 1
    frequency = (carrier + np.array([0, tone, -tone]))[:, None, None]
    middle, upper, lower = np.linalg.solve(2j * np.pi * frequency * storage - flow, forced)[:, GRID, 0]
    heard = abs(upper / middle + np.conj(lower / middle)) / 2
    assert heard == pytest.approx(tone_response(tone, width, 0.0), rel=0.01)


@given(tones, widths, detunings)
def test_sides_alike_and_slow_tones_whole(tone, width, detuning):
    assert tone_response(tone, width, detuning) == pytest.approx(tone_response(tone, width, -detuning), rel=1e-9)
    assert tone_response(0.0, width, detuning) == pytest.approx(1, rel=1e-9)
    on_peak = tone_response(tone, width, 0.0)
    assert on_peak == pytest.approx(1 / np.hypot(1, 2 * tone / width), rel=1e-9)


@given(tones, widths)
def test_highest_tone_is_found_again(tone, width):
    assert highest_tone(width, -tone_level(tone, width)) == pytest.approx(tone, rel=1e-5)
    assert highest_tone(width, 10 * np.log10(2)) == pytest.approx(width / 2, rel=1e-9)


@given(widths, st.dictionaries(st.integers(1, 400), st.floats(0.01, 5), min_size=1, max_size=12))
@settings(deadline=None)
def test_programme_left_is_the_power_of_the_sound_itself(width, programme):
    """The programme played for a second, before and behind the circuit: mean squares by the clock, not by the spectrum."""
    counts, sizes = (np.array(column, float) for column in zip(*programme.items(), strict=True))
    tones_played = 20 * counts
    time = np.arange(2000) / 40e3
    sounds = np.cos(2 * np.pi * tones_played[:, None] * time)
    before = sizes @ sounds
    behind = (sizes * tone_response(tones_played, width, 0.0)) @ sounds
    assert programme_left(tones_played, sizes, width) == pytest.approx(np.mean(behind**2) / np.mean(before**2), rel=1e-6)


def test_arrays_broadcast():
    assert tone_response(np.array([[300.0], [3000.0]]), np.array([1e3, 2e3, 4e3]), 0.0).shape == (2, 3)
    assert highest_tone(np.array([1e3, 2e3]), 3.0).shape == (2,)
