"""Backlash and ticking: the exercises' formulas against the whole set, followed step by step, and against closed forms."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from solutions.unit05_valve.one_valve_set import CONDENSER, GRID_SLOPE, HT, LAW, LEAK, LEAK_RETURN
from solutions.unit06_reaction.network import SALTMARSH_SET, state_matrix
from solutions.unit07_oscillation import ticking
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.hysteresis import grid_load, returned_for, start_and_stop, swing_at
from solutions.unit07_oscillation.returned import by_throttle, loss_and_returned
from solutions.unit07_oscillation.squegging import largest_leak, starting_bias, swing_exponent, ticking_frequency
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, at_rest, small_signal_set
from solutions.unit07_oscillation.station_on import on_station, threshold_in_silence
from solutions.unit07_oscillation.ticking import FREQUENCY as TICKING
from tests.physics.carrier_rate import envelope_of, integrate, swinging

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
    return replace(
        SALTMARSH_SET,
        tuned_tickler=mutual,
        throttle_capacitance=1.5e-9,
        aerial_tuned=0.0,
        aerial_tickler=0.0,
        tickler_inductance=4e-6,
    )


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
    begins, goes_on = onset_of(stage)
    (loss, at_start), (_, at_stop) = (
        loss_and_returned(small_signal_set(near_coil(mutual), stage), REFERENCE) for mutual in (begins, goes_on)
    )
    starts, stops = start_and_stop(loss, LEAK, return_voltage, 60.0)
    assert at_start == pytest.approx(starts, rel=0.03)
    assert at_stop / at_start == pytest.approx(stops / starts, rel=0.03)


@pytest.mark.parametrize("frequency", [531e3, 855e3, 1107e3, 1602e3])
def test_the_throttle_of_the_fierce_set_goes_back_less_far_than_its_reaction(frequency):
    """What the anode takes stays as it is: of what the tickler brings a large part only makes that good."""
    throttle, returned = by_throttle(frequency)
    start = on_station(frequency, threshold_in_silence(frequency))
    loss, _ = loss_and_returned(start, frequency)
    starts, stops = start_and_stop(loss, LEAK, LEAK_RETURN, at_rest(SALTMARSH_STAGE)[1])
    assert returned == pytest.approx(stops / starts, rel=0.05)
    assert throttle > returned + 0.05


def test_loss_and_returned_are_the_network_s():
    """At the edge of oscillation what is returned makes good all that is lost: the pole knows nothing of the two."""
    start = on_station(855e3, threshold_in_silence(855e3))
    loss, returned = loss_and_returned(start, 855e3)
    # the anode's voltage at the carrier, which the two leave out, counts for µ times less than the grid's
    assert returned * start.transconductance == pytest.approx(loss + start.grid_conductance, rel=0.03)


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


def with_leak(leak, condenser, part=1.0):
    """The set that ticks, its throttle at a part of where the lesson has it."""
    stage, _ = ticking.with_leak(leak, condenser)
    return stage, on_station(TICKING, part * ticking.far_open(), stage=stage)


def followed(stage, set_, seconds, seed=0.5):
    emf = np.full(int(seconds * FINE) + 1, 1e-6)  # about what the air's noise brings
    return follow(emf, FINE, TICKING, set_, stage, start(stage, seed))


@pytest.mark.parametrize("leak, condenser, ticks", [(5e6, 1e-9, False), (20e6, 1e-9, True), (20e6, 3e-9, True)])
def test_it_ticks_at_the_carrier_s_own_rate(leak, condenser, ticks):
    """Referee: all ten states of the circuit, integrated by SciPy. The swing dies, or does not, and when, and at what bias."""
    stage, set_ = with_leak(leak, condenser)
    duration = 6e-3
    begin = swinging(set_, stage, TICKING, 0.5, *at_rest(stage))
    time, states = integrate(set_, stage, TICKING, duration, begin, tolerance=1e-6)
    grid, bias = envelope_of(time, states, TICKING)
    ours = followed(stage, set_, duration)
    crest, blocked = np.abs(ours.grid), ours.bias
    assert np.max(crest) == pytest.approx(np.max(np.abs(grid[200:-200])), rel=0.01)
    assert np.min(blocked) == pytest.approx(np.min(bias[200:-200]), rel=0.01)
    assert (np.abs(grid[-400]) < 1e-3) == (crest[-400] < 1e-3) == ticks
    if ticks:
        dies = [np.flatnonzero(swing > 1.0)[-1] * step for swing, step in ((np.abs(grid), time[1]), (crest, 1 / FINE))]
        assert dies[1] == pytest.approx(dies[0], rel=0.03)


@pytest.mark.parametrize("part", [0.8, 1.0])
@pytest.mark.parametrize("condenser", [500e-12, 1e-9, 3e-9])
def test_largest_leak_parts_steady_from_ticking(condenser, part):
    stage, set_ = with_leak(5e6, condenser, part)
    steady = followed(stage, set_, 0.05)
    crest, bias = abs(steady.grid[-1]), steady.bias[-1]
    assert np.ptp(np.abs(steady.grid[-2000:])) < 1e-3 * crest
    exponent = swing_exponent(crest, bias, steady.state.anode, *LAW)
    quality = 2 * np.pi * TICKING * set_.tuned_inductance / set_.tuned_resistance
    limit = largest_leak(exponent, TICKING, quality, set_.tuning_capacitance, condenser, -bias, GRID_SLOPE)
    assert 10e6 < limit < 30e6
    if part == 1:
        assert ticking.leak_limit(condenser) == pytest.approx(limit, rel=0.01)
    below, above = (followed(stage._replace(leak_resistance=leak), set_, 0.1) for leak in (limit / 1.25, limit * 1.25))
    assert np.min(np.abs(below.grid[-20000:])) > 0.9 * np.max(np.abs(below.grid[-20000:]))
    assert np.min(np.abs(above.grid)) < 1e-2 * np.max(np.abs(above.grid))


@pytest.mark.parametrize("condenser", [1e-9, 3e-9])
def test_ticks_come_as_often_as_the_leak_allows(condenser):
    leak = 20e6
    stage, set_ = with_leak(leak, condenser)
    heard = followed(stage, set_, 0.2)
    crest = np.abs(heard.grid)
    begins = np.flatnonzero((crest[1:] > 1.0) & (crest[:-1] <= 1.0))
    assert len(begins) >= 3
    period = np.diff(begins)[-1] / FINE
    last = slice(begins[-2], begins[-1])
    burst = np.sum(crest[last] > 1.0) / FINE
    lowest, restart = heard.bias[last].min(), heard.bias[begins[-1]]
    assert 1 / ticking_frequency(lowest, restart, 0.0, leak, condenser, burst) == pytest.approx(period, rel=0.05)
    # It starts about where the silent valve's slope makes good what is lost, and has to grow.
    loss, returned = loss_and_returned(set_, TICKING)
    edge = starting_bias((loss + 1 / leak) / returned, heard.state.anode, *LAW)
    assert restart == pytest.approx(edge, rel=0.1)


def test_the_club_s_grid_condenser_does_not_tick_with_a_leak_that_one_can_buy():
    for leak in (10e6, 20e6):
        stage, set_ = with_leak(leak, CONDENSER)
        crest = np.abs(followed(stage, set_, 0.05).grid)[4000:]
        assert np.ptp(crest) < 0.02 * np.max(crest)
