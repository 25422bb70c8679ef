"""Backlash and ticking: the exercises' formulas against the whole set, followed step by step, and against closed forms."""
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from solutions.unit05_valve.one_valve_set import GRID_SLOPE, HT, LAW, LEAK, LEAK_RETURN
from solutions.unit06_reaction.network import SALTMARSH_SET, state_matrix
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.hysteresis import grid_load, returned_for, start_and_stop, swing_at
from solutions.unit07_oscillation.limit_amplitude import effective_transconductance
from solutions.unit07_oscillation.squegging import largest_leak, starting_bias, swing_exponent, ticking_frequency
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, small_signal_set

FINE = 400e3
REFERENCE = 0.998e6
circuits = st.tuples(st.floats(2e-6, 1e-4), st.floats(5e5, 5e6), st.floats(0, 4), st.floats(45, 90))


@given(circuits)
@settings(deadline=None, max_examples=10)
def test_stop_is_the_least_of_the_curve(circuit):
    _, stop = start_and_stop(*circuit)
    least = minimize_scalar(lambda log: returned_for(np.exp(log), *circuit), bounds=np.log([1e-3, 20]), method="bounded")
    assert stop == pytest.approx(min(least.fun, start_and_stop(*circuit)[0]), rel=2e-3)


@given(circuits, st.floats(1.02, 1.5))
@settings(deadline=None, max_examples=10)
def test_a_swing_is_kept_up_by_the_reaction_it_was_found_for(circuit, turned):
    needed = turned * start_and_stop(*circuit)[0]
    assert returned_for(swing_at(turned, False, *circuit), *circuit) == pytest.approx(needed, rel=3e-3)


def fixed_anode(**changes):
    """A stage whose anode does not move, neither at the carrier nor slowly, as the exercises take it."""
    factor = 1e3
    stage = SALTMARSH_STAGE._replace(
        amplification_factor=factor, offset=LAW[2] + 60 / LAW[0] - HT / factor, load_resistance=1.0, bypass_capacitance=1e-5
    )
    return stage._replace(**changes)


def near_coil(mutual):
    return replace(SALTMARSH_SET, tuned_tickler=mutual, throttle_capacitance=1.5e-9, aerial_tuned=0.0, aerial_tickler=0.0,
                   tickler_inductance=4e-6)  # fmt: skip


def onset_of(stage):
    """Mutual inductance at which a silent set starts, and at which it stops when that is turned down little by little."""

    def growth(mutual):
        return np.max(np.linalg.eigvals(state_matrix(small_signal_set(near_coil(mutual), stage))).real)

    begins = brentq(growth, 1e-8, 6e-6)
    mutual = 1.1 * begins
    state = start(stage, 0.1)
    while True:
        heard = follow(np.full(int(8e-3 * RATE) + 1, 1e-6), RATE, REFERENCE, near_coil(mutual), stage, state)
        if abs(heard.grid[-1]) < 0.05:
            return begins, mutual
        state = heard.state
        mutual *= 0.99


@pytest.mark.parametrize("return_voltage", [0.0, 2.0, 4.0])
def test_backlash_is_that_of_the_whole_set(return_voltage):
    stage = fixed_anode(leak_return=return_voltage, grid_capacitance=300e-12)
    circuit = small_signal_set(SALTMARSH_SET, stage)
    # all that the coil loses, as a conductance across it
    loss = circuit.tuned_resistance * circuit.tuning_capacitance / circuit.tuned_inductance
    begins, goes_on = onset_of(stage)
    starts, stops = start_and_stop(loss, LEAK, return_voltage, 60.0)
    assert goes_on / begins == pytest.approx(stops / starts, rel=0.03)


def test_a_leak_to_the_positive_end_makes_backlash_and_to_the_negative_end_none():
    # Common practice, no source: leak to the negative end for a smooth reaction.
    start_negative, stop_negative = start_and_stop(10e-6, LEAK, 0.0, 60.0)
    start_positive, stop_positive = start_and_stop(10e-6, LEAK, LEAK_RETURN, 60.0)
    assert stop_negative / start_negative > 0.999
    assert stop_positive / start_positive < 0.8
    assert grid_load(5.0, LEAK, LEAK_RETURN) < 0.25 * grid_load(1e-3, LEAK, LEAK_RETURN)


@given(st.floats(1, 20), st.floats(-0.8, 3))
@settings(deadline=None, max_examples=30)
def test_swing_exponent_by_quadrature(swing, share):
    drive = share * swing

    def average(power, times):
        cut = np.pi if share >= 1 else np.arccos(-share)
        return quad(lambda angle: (drive + swing * np.cos(angle)) ** power * np.cos(angle) ** times, 0, cut, limit=200)[0]

    # current K w^1.5, slope 1.5 K w^0.5: what is common to both averages falls out
    expected = swing * 1.5 * average(0.5, 2) / average(1.5, 1) - 1
    assert swing_exponent(swing, drive - 90 / 9, 90.0, 9.0, 3e-4, 0.0) == pytest.approx(expected, abs=2e-3)


def ticking(leak, condenser, seconds):
    stage = fixed_anode(leak_resistance=leak, grid_capacitance=condenser, leak_return=0.0)
    set_ = replace(near_coil(3e-6), aerial_tuned=1e-6)  # so that the station gets in
    emf = np.full(int(seconds * FINE), 1e-3)
    return stage, set_, follow(emf, FINE, REFERENCE, set_, stage, start(stage, 0.1))


def test_largest_leak_parts_steady_from_ticking():
    condenser = 1e-9
    stage, set_, steady = ticking(5e6, condenser, 0.05)
    crest, bias = abs(steady.grid[-1]), steady.bias[-1]
    assert np.ptp(np.abs(steady.grid[-2000:])) < 1e-3 * crest
    exponent = swing_exponent(crest, bias, 60.0, *LAW)
    quality = 2 * np.pi * REFERENCE * set_.tuned_inductance / set_.tuned_resistance
    limit = largest_leak(exponent, REFERENCE, quality, set_.tuning_capacitance, condenser, -bias, GRID_SLOPE)
    assert limit > 10e6
    *_, below = ticking(limit / 3, condenser, 0.3)
    *_, above = ticking(limit * 3, condenser, 0.3)
    assert np.min(np.abs(below.grid[-20000:])) > 0.9 * np.max(np.abs(below.grid[-20000:]))
    assert np.min(np.abs(above.grid)) < 1e-3 * np.max(np.abs(above.grid))


def test_ticks_come_as_often_as_the_leak_allows():
    leak, condenser = 300e6, 0.2e-9
    stage, set_, heard = ticking(leak, condenser, 0.4)
    crest = np.abs(heard.grid)
    begins = np.flatnonzero((crest[1:] > 1.0) & (crest[:-1] <= 1.0))
    assert len(begins) >= 3
    period = np.diff(begins)[-1] / FINE
    last = slice(begins[-2], begins[-1])
    loud = crest[last] > 1.0
    burst = np.sum(loud) / FINE
    lowest, restart = heard.bias[last].min(), heard.bias[begins[-1]]
    assert 1 / ticking_frequency(lowest, restart, 0.0, leak, condenser, burst) == pytest.approx(period, rel=0.05)
    # It starts where the silent valve's slope is what the set needs, and a little later: the swing has to grow.
    silent = small_signal_set(set_, stage)

    def growth(slope):
        return np.max(np.linalg.eigvals(state_matrix(replace(silent, transconductance=slope, grid_conductance=1 / leak))).real)

    low, high = 1e-6, 5e-3
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if growth(middle) > 0 else (middle, high)
    edge = starting_bias(middle, 60.0, *LAW)
    assert edge < restart < edge + 0.15 * abs(edge)
    assert effective_transconductance(1e-3, edge, 60.0, *LAW) == pytest.approx(middle, rel=1e-3)
