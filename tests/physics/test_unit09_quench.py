"""A quenched set: closed forms against SciPy's integration of the envelope, and against the engine of unit 07."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from solutions.unit03_tuned_circuit.ring_down import ring_amplitude
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit07_oscillation.envelope import follow, start
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, small_signal_set
from solutions.unit09_feedback_receivers.quench import (
    linear_gain,
    logarithmic_audio,
    mean_swing,
    relative_response,
    signal_start,
    swing_after,
)

frequencies = st.floats(500e3, 50e6)
growths = st.floats(20e3, 2e6)


def cycle(growth, decay, growing, dying, drive, begin, limit=np.inf):
    """One quench cycle by scipy: the envelope (and its time integral) at the top of the burst and at the end."""

    def up(t, y):
        return [growth * y[0] * (1 - abs(y[0]) ** 2 / limit**2) + drive(t), y[0]]

    def down(t, y):
        return [-decay * y[0] + drive(growing + t), y[0]]

    tight = {"rtol": 1e-9, "atol": 1e-13, "method": "DOP853"}
    top = solve_ivp(up, (0, growing), np.array([begin, 0], complex), **tight).y[:, -1]
    return top, solve_ivp(down, (0, dying), top, **tight).y[:, -1]


def test_with_no_reaction_it_is_unit_03_s_ring_down_and_resonance():
    rate = -np.pi * 1e6 / 90
    assert swing_after(30e-6, 2.0, rate, 1e6, 0.0) == pytest.approx(2 * ring_amplitude(30e-6, 1e6, 90))
    assert swing_after(1.0, 2.0, rate, 1e6, 1e-3) == pytest.approx(90e-3)


@given(frequencies, growths, growths, st.floats(1, 8), st.floats(0.05, 3))
@settings(deadline=None, max_examples=15)
def test_linear_gain_by_integration_from_cycle_to_cycle(frequency, growth, decay, nepers, beyond):
    growing, dying = nepers / growth, nepers * (1 + beyond) / decay
    swing = 0.0
    for _ in range(int(12 / (nepers * beyond)) + 2):  # what hangs over falls by e^(nepers × beyond) in a cycle
        (top, _), (swing, _) = cycle(growth, decay, growing, dying, lambda t: np.pi * frequency * 1e-3, swing)
    assert top.real == pytest.approx(1e-3 * linear_gain(frequency, growth, decay, growing, dying), rel=1e-4)


@given(frequencies, growths, growths)
@settings(deadline=None, max_examples=20)
def test_quenched_well_the_burst_is_the_start_times_the_growth(frequency, growth, decay):
    gain = linear_gain(frequency, growth, decay, 9 / growth, 40 / decay)
    assert gain == pytest.approx(signal_start(frequency, 1.0, growth, decay) * np.exp(9), rel=2e-4)


@given(growths, growths, st.floats(-3, 3))
@settings(deadline=None, max_examples=15)
def test_off_tune_by_integration(growth, decay, times):
    turning = times * min(growth, decay)

    def top(rate):
        # the quench before the burst, from the level at which the signal then stands, and the burst itself
        settled = growth / (decay + 1j * rate)
        (end, _), _ = cycle(growth, decay, 9 / growth, 1e-9, lambda t: growth * np.exp(1j * rate * t), settled)
        return abs(end)

    found = top(turning) / top(0.0)
    # the signal of the burst's last moments, which no growth has multiplied, is left out of the closed form
    assert relative_response(turning / (2 * np.pi), growth, decay) == pytest.approx(found, abs=2e-3)


@given(st.floats(1e-6, 0.1), st.floats(0.5, 20), growths, growths, st.floats(0.5, 25), st.floats(0.2, 6))
@settings(deadline=None, max_examples=25)
def test_mean_swing_by_integration(begin, limit, growth, decay, nepers, down):
    assume(begin < 0.5 * limit)
    growing, dying = nepers / growth, down / decay
    _, (_, area) = cycle(growth, decay, growing, dying, lambda t: 0.0, begin, limit)
    assert area.real / (growing + dying) == pytest.approx(mean_swing(begin, limit, growth, decay, growing, dying), rel=1e-5)


@given(st.floats(0.05, 0.9))
@settings(deadline=None, max_examples=20)
def test_at_the_limit_the_programme_comes_out_by_its_logarithm(depth):
    limit, growth, decay, growing, dying = 5.0, 4e5, 4e5, 40e-6, 60e-6
    quiet, loud = (mean_swing(1e-4 * (1 + m), limit, growth, decay, growing, dying) for m in (-depth, depth))
    programme, _ = logarithmic_audio(depth, limit, growth, 10e3)
    assert (loud - quiet) / 2 == pytest.approx(programme, rel=1e-3)


def test_the_rush_by_integration_over_rayleigh_s_law():
    def average(power):
        return quad(lambda x: np.log(x) ** power * x * np.exp(-x * x / 2), 0, np.inf)[0]

    _, rush = logarithmic_audio(0.0, 1.0, 1.0, 1.0)
    assert rush == pytest.approx(np.sqrt(average(2) - average(1) ** 2), rel=1e-6)


def test_the_rush_of_bursts_that_start_from_noise():
    generator = np.random.default_rng(3)
    noise = 1e-6 * np.abs(generator.standard_normal(200_000) + 1j * generator.standard_normal(200_000))
    heard = mean_swing(noise, 5.0, 4e5, 4e5, 60e-6, 60e-6)
    _, rush = logarithmic_audio(0.0, 5.0, 4e5, 1 / 120e-6)
    assert np.std(heard) == pytest.approx(rush, rel=0.01)


def test_a_set_that_hangs_over_is_refused_in_words():
    with pytest.raises(ValueError, match="dies away by only"):
        linear_gain(1e6, 1e5, np.array([3e5, 0.9e5]), 50e-6, 50e-6)


def test_the_circle_s_own_set_quenched_by_its_throttle_follows_the_closed_form():
    """Unit 07's engine: its growth and decay are watched without a signal, and then it is quenched with one."""
    frequency, rate, lasts = 855e3, 384e3, 500e-6
    small = small_signal_set(SALTMARSH_SET, SALTMARSH_STAGE)
    edge = stability.at_threshold(small, frequency).throttle_capacitance
    beyond, below = (stability.retuned(replace(small, throttle_capacitance=share * edge), frequency) for share in (1.15, 0.4))
    steps = round(lasts * rate)

    def swings(emf, knob, state):
        heard = follow(np.full(steps + 1, emf, complex), rate, frequency, knob, SALTMARSH_STAGE, state)
        return np.abs(heard.grid), heard.state

    def watched(knob):
        swing, _ = swings(0.0, knob, start(SALTMARSH_STAGE, 1e-6))
        return np.log(swing[-1] / swing[steps // 2 - 1]) / (lasts / 2)

    growth, decay = watched(beyond), -watched(below)
    state = start(SALTMARSH_STAGE, 0.0)
    for _ in range(12):
        top, state = swings(1e-6, beyond, state)
        left, state = swings(1e-6, below, state)
    # what stands in the coil for the aerial's e.m.f. is found from the swing that the quench leaves
    in_the_coil = left[-1] * decay / (np.pi * frequency)
    wanted = in_the_coil * linear_gain(frequency, growth, decay, lasts, lasts)
    assert growth * lasts > 2
    assert top[-1] == pytest.approx(wanted, rel=0.02)
