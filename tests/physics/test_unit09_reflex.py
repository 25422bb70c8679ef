"""The reflex stage: against its circuits solved node by node, and its valve solved anew at each moment."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from solutions.unit05_valve.triode_current import anode_resistance, triode_current
from solutions.unit09_feedback_receivers.reflex import (
    bypass_limits,
    gain_slope,
    largest_carrier,
    largest_leak,
    path_gains,
    swings,
)

TYPE_30 = (9.29, 267e-6, -0.67)
factors, resistances = st.floats(3, 50), st.floats(3e3, 1e5)
radio_loads, audio_loads = st.floats(2e3, 1e5), st.floats(2e3, 5e4)
carriers, tones = st.floats(5e5, 1.6e6), st.floats(50, 5e3)


def solved_anode(frequency, radio, factor, resistance, radio_load, audio_load, bypass):
    """Volts across the tuned circuit and across the telephones for a volt on the grid, by the two nodes at the anode.

    The tuned circuit is a real one: a coil and a condenser of 100 Ω reactance, and the load that is left at resonance.
    """
    omega, tuned = 2 * np.pi * frequency, 2 * np.pi * radio
    across = 1 / radio_load + 1 / (1j * omega * 100 / tuned) + 1j * omega / (tuned * 100)
    phones = 1 / audio_load + 1j * omega * bypass
    nodes = np.array([[1 / resistance + across, -across], [-across, across + phones]])
    anode, foot = np.linalg.solve(nodes, [factor / resistance, 0])
    return abs(anode - foot), abs(foot)


@given(factors, resistances, radio_loads, audio_loads, st.floats(1e-10, 1e-8), carriers, tones)
@settings(deadline=None)
def test_each_path_as_the_solved_circuit_gives_it(factor, resistance, radio_load, audio_load, bypass, radio, tone):
    stage = (factor, resistance, radio_load, audio_load, bypass)
    radio_gain, audio_gain = path_gains(*stage, radio, tone)
    assert radio_gain == pytest.approx(solved_anode(radio, radio, *stage)[0], rel=1e-6)
    # The coil has less than an ohm at the tone: beside the anode resistance nothing.
    assert audio_gain == pytest.approx(solved_anode(tone, radio, *stage)[1], rel=1e-3)


@given(resistances, radio_loads, audio_loads, carriers, st.floats(1e3, 1e4))
@settings(deadline=None)
def test_within_the_limits_both_paths_keep_their_gain(resistance, radio_load, audio_load, radio, tone):
    smallest, largest = bypass_limits(radio_load, audio_load, radio, tone)
    assume(smallest < largest)
    free = 9.0 * radio_load / (resistance + radio_load), 9.0 * audio_load / (resistance + audio_load)
    for bypass in (smallest, np.sqrt(smallest * largest), largest):
        radio_gain, audio_gain = path_gains(9.0, resistance, radio_load, audio_load, bypass, radio, tone)
        assert radio_gain > free[0] * 0.9
        assert audio_gain > free[1] / np.sqrt(2)


def anode_on_its_load(grid, anode, rest_grid, load):
    """Anode voltage where the valve's curve and the load line through the point of rest cross, by a root finder."""
    rest = triode_current(anode, rest_grid, *TYPE_30)
    highest = 2 * anode + rest * load
    return brentq(lambda v: triode_current(v, grid, *TYPE_30) - rest - (anode - v) / load, 1e-3, highest, xtol=1e-12)


def carrier_gain(grid, anode, load, step=1e-4):
    """Gain of a small carrier about a moment of the tone: the anode solved on the radio load at both ends of the swing."""
    low, high = (anode_on_its_load(grid + way * step, anode, grid, load) for way in (1, -1))
    return (high - low) / (2 * step)


@given(st.floats(45, 180), st.floats(0.15, 0.7), st.floats(2e3, 5e4), st.floats(2e3, 5e4))
@settings(deadline=None, max_examples=50)
def test_slope_of_the_gain_with_the_valve_solved_anew(anode, part, radio_load, audio_load):
    grid = -part * anode / TYPE_30[0]
    step = 0.01 * (grid + anode / TYPE_30[0] + TYPE_30[2])
    assume(step > 0.005)
    gains = [
        carrier_gain(moved, anode_on_its_load(moved, anode, grid, audio_load), radio_load)
        for moved in (grid + step, grid - step)
    ]
    slope = gain_slope(anode, grid, radio_load, audio_load, *TYPE_30)
    assert (gains[0] - gains[1]) / (2 * step) == pytest.approx(slope, rel=2e-3)


@given(st.floats(45, 180), st.floats(0.1, 0.9), st.floats(0.1, 1), st.floats(1, 20), st.floats(0.2, 0.9), st.floats(1, 6))
@settings(deadline=None)
def test_the_largest_carrier_just_fits_and_a_larger_does_not(anode, part, depth, gain, efficiency, ratio):
    bias = -part * anode / TYPE_30[0]
    assume(bias + anode / TYPE_30[0] + TYPE_30[2] > 0.1)
    most = largest_carrier(anode, bias, depth, gain, efficiency, ratio, TYPE_30[0], TYPE_30[2])
    turn = np.linspace(0, 2 * np.pi, 721)
    for share, fits in ((0.999, True), (1.001, False)):
        carrier = share * most
        _, audio, _ = swings(carrier, depth, gain, efficiency, ratio, 1.0)
        # Every moment of the tone with both ends of the carrier there: whether it never cuts off and never goes positive.
        middle = bias + audio * np.cos(turn)
        swing = carrier * (1 + depth * np.cos(turn))
        high, low = np.max(middle + swing), bias - audio - (1 + depth) * carrier
        inside = high < 0 and triode_current(anode, low, *TYPE_30) > 0
        assert inside == fits


def test_a_tone_through_the_whole_set_moment_by_moment():
    """Envelope, detector, transformer, valve: in steps of time, against the chain of products."""
    time = np.linspace(0, 1e-3, 1001)
    carrier, depth, efficiency, ratio, audio_gain, radio_gain = 0.02, 0.6, 0.7, 3.0, 6.0, 5.0
    envelope = carrier * (1 + depth * np.cos(2 * np.pi * 1000 * time))
    detected = efficiency * radio_gain * envelope
    on_grid = ratio * (detected - detected.mean())
    wanted = envelope.max(), np.ptp(on_grid) / 2, np.ptp(audio_gain * on_grid) / 2
    assert swings(carrier, depth, radio_gain, efficiency, ratio, audio_gain) == pytest.approx(wanted, rel=1e-9)


@given(st.floats(2, 30), st.floats(1, 6), st.floats(2e3, 2e5), st.floats(1e3, 2e4))
@settings(deadline=None)
def test_at_the_largest_leak_the_tone_comes_round_as_strong_as_it_was(gain, ratio, resistance, tone):
    leak = largest_leak(gain, ratio, resistance, tone)
    for share, louder in ((0.99, False), (1.01, True)):
        # One node: the detector's resistance, fed through the leak from an anode that stands at `gain` volts.
        through = 2j * np.pi * tone * share * leak
        at_detector = gain * through / (through + 1 / resistance)
        assert (ratio * abs(at_detector) > 1) == louder


def test_of_type_30_as_the_lesson_has_it():
    resistance = anode_resistance(90.0, -3.0, *TYPE_30)
    assert path_gains(9.29, resistance, 10e3, 20e3, 1e-9, 846e3, 1e3)[0] == pytest.approx(4.77, abs=0.02)


@pytest.mark.parametrize(
    ("refused", "sentence"),
    [
        (lambda: largest_carrier(90.0, np.array([-3.0, 0.5]), 0.5, 5.0, 0.5, 3.0, 9.29, -0.67), "no room to swing"),
        (lambda: gain_slope(45.0, -6.0, 1e4, 1e4, *TYPE_30), "cut off"),
        (lambda: largest_leak(np.array([1.0, 5.0]), 0.9, 1e4, 5e3), "do not amplify"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(refused, sentence):
    with pytest.raises(ValueError, match=sentence):
        refused()
