"""The envelope against the same set at its carrier's own rate (SciPy), against its own small signals, and in known limits."""
import importlib.util
import sys
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from solutions.unit06_reaction.network import GRID, SALTMARSH_SET, drive, state_matrix
from solutions.unit07_oscillation import stepping
from solutions.unit07_oscillation.cycle import anode_cycle, anode_table, grid_table
from solutions.unit07_oscillation.envelope import (
    RATE,
    carrier,
    follow,
    frequency_offset,
    render,
    start,
    thermal_noise,
)
from solutions.unit07_oscillation.slow_mode import slow_mode
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, at_rest, small_signal_set
from tests.physics.carrier_rate import QUICK_CHOKE, STEADY_CHOKE, envelope_of, integrate, rest, swinging

FINE = 400e3  # hertz, steps a second
AMPLITUDE, FREQUENCY, BIAS = 0.01, 10.0, 0.02


def windings(throttle, tuning=126e-12):
    return replace(SALTMARSH_SET, throttle_capacitance=throttle, tuning_capacitance=tuning)


def settled(set_, stage, reference, seed=3.0, seconds=5e-3):
    return follow(np.zeros(int(seconds * FINE)), FINE, reference, set_, stage, start(stage, seed))


DEEP_LEAK = SALTMARSH_STAGE._replace(leak_return=0.0, leak_resistance=1e6, supply=75.0)


@pytest.mark.parametrize(
    ("throttle", "tuning", "stage", "near"),
    [
        (20e-12, 126e-12, SALTMARSH_STAGE, 995.25e3),
        (70e-12, 126e-12, SALTMARSH_STAGE, 994.5e3),
        (45e-12, 350e-12, SALTMARSH_STAGE, 601.0e3),
        (12e-12, 60e-12, SALTMARSH_STAGE, 1418.8e3),
        (30e-12, 126e-12, DEEP_LEAK, 995.0e3),
    ],
)
def test_limit_of_an_oscillation_at_carrier_rate(throttle, tuning, stage, near):
    set_ = windings(throttle, tuning)
    ours = settled(set_, stage, near)
    begin = swinging(set_, stage, near, abs(ours.grid[-1]), ours.bias[-1], ours.state.anode)
    time, states = integrate(set_, stage, near, 3e-4, begin, choke=STEADY_CHOKE)
    grid, bias = envelope_of(time, states, near)
    last = slice(-len(time) // 3, -200)
    assert np.mean(np.abs(grid[last])) == pytest.approx(abs(ours.grid[-1]), rel=AMPLITUDE)
    assert np.mean(bias[last]) == pytest.approx(ours.bias[-1], rel=BIAS)
    # How far the crest reaches above 0 V is what the grid current sees: closer than bias and crest by themselves.
    assert np.mean(np.abs(grid[last]) + bias[last]) == pytest.approx(abs(ours.grid[-1]) + ours.bias[-1], abs=0.012)
    turning = np.polyfit(time[last], np.unwrap(np.angle(grid[last])), 1)[0] / (2 * np.pi)
    assert turning == pytest.approx(frequency_offset(ours.grid, FINE)[-1], abs=FREQUENCY)


def compared(set_, near, duration, emf_crest, offset, state, begin, choke):
    """Envelope and carrier-rate run with a station, at the envelope's own times; the start left out."""
    time = np.arange(int(duration * FINE) + 1) / FINE
    ours = follow(carrier(time, offset, emf_crest), FINE, near, set_, SALTMARSH_STAGE, state)
    turning = 2 * np.pi * (near + offset)
    full_time, states = integrate(
        set_, SALTMARSH_STAGE, near, duration, begin, lambda t: emf_crest * np.cos(turning * t), choke
    )
    grid, bias = envelope_of(full_time, states, near)
    here = slice(int(0.3 * len(time)), int(0.95 * len(time)))
    at = time[1:][here]
    full = np.interp(at, full_time, grid.real) + 1j * np.interp(at, full_time, grid.imag)
    return ours.grid[here], ours.bias[here], full, np.interp(at, full_time, bias)


def test_carrier_below_the_threshold_at_carrier_rate():
    set_, near = windings(10e-12), 1e6
    begin = rest(set_, SALTMARSH_STAGE)
    ours, bias, full, full_bias = compared(set_, near, 3e-4, 8e-3, 2e3, start(), begin, STEADY_CHOKE)
    assert 0.2 < np.abs(full[-1]) < 0.5
    assert np.abs(ours) == pytest.approx(np.abs(full), rel=AMPLITUDE)
    assert bias == pytest.approx(full_bias, rel=BIAS, abs=2e-3)  # it passes through nothing
    assert np.angle(ours * np.conj(full)) == pytest.approx(0, abs=0.02)


def test_beat_with_a_station_at_carrier_rate():
    set_, near = windings(20e-12), 995.25e3
    limit = settled(set_, SALTMARSH_STAGE, near)
    crest = limit.grid[-1]
    state = limit.state._replace(mode=limit.state.mode * abs(crest) / crest)
    begin = swinging(set_, SALTMARSH_STAGE, near, abs(crest), limit.bias[-1], limit.state.anode)
    ours, bias, full, full_bias = compared(set_, near, 4e-4, 0.15, 6e3, state, begin, QUICK_CHOKE)
    assert np.ptp(np.abs(full)) > 0.05 * np.mean(np.abs(full))  # the beat is there
    assert np.abs(ours) == pytest.approx(np.abs(full), rel=AMPLITUDE)
    assert bias == pytest.approx(full_bias, rel=BIAS)
    times = np.arange(len(ours)) / FINE
    apart = np.polyfit(times, np.unwrap(np.angle(ours * np.conj(full))), 1)[0] / (2 * np.pi)
    assert abs(apart) < FREQUENCY


def test_build_up_to_the_limit_at_carrier_rate():
    set_, near = windings(35e-12), 0.9975e6
    begin = swinging(set_, SALTMARSH_STAGE, near, 0.2, *at_rest(SALTMARSH_STAGE))
    time, states = integrate(set_, SALTMARSH_STAGE, near, 2.5e-4, begin)
    grid, _ = envelope_of(time, states, near)
    ours = follow(np.zeros(int(2.5e-4 * FINE)), FINE, near, set_, state=start(seed=0.2))
    own_time = np.arange(1, len(ours.grid) + 1) / FINE
    reached = [
        [t[np.argmax(np.abs(z) > crest)] for crest in (1.0, 3.0, 9.0)]
        for t, z in ((time[200:], grid[200:]), (own_time, ours.grid))
    ]
    assert np.diff(reached[1]) == pytest.approx(np.diff(reached[0]), rel=0.04)
    assert reached[1][0] == pytest.approx(reached[0][0], abs=4e-6)  # the swing put in is not quite the slow mode alone


def test_anode_cycle_by_integration_over_many_cycles():
    """The driven anode circuit followed cycle after cycle by SciPy until it repeats."""
    from scipy.integrate import solve_ivp

    angle, share = 0.3, 0.4
    kappa = share / (1 - share)
    mean, fundamental, _ = anode_cycle(angle, share)

    def slopes(phase, state):
        return [-(max(np.sin(angle) + np.cos(angle) * np.cos(phase) + state[0], 0.0) ** 1.5 - mean) / kappa]

    phase = np.linspace(0, 60 * np.pi, 30 * 256 + 1)
    swing = solve_ivp(slopes, (0, phase[-1]), [0.0], t_eval=phase, rtol=1e-9, atol=1e-11).y[0][-257:-1]
    last = phase[-257:-1]
    assert np.mean(swing) == pytest.approx(0, abs=2e-4)
    current = np.maximum(np.sin(angle) + np.cos(angle) * np.cos(last) + swing, 0) ** 1.5
    assert np.mean(current) == pytest.approx(mean, rel=2e-4)
    assert 2 * np.mean(current * np.exp(-1j * last)) / np.cos(angle) == pytest.approx(fundamental, rel=5e-4)


@given(st.floats(-0.7, 1.5), st.floats(0.08, 1.0))
@settings(deadline=None, max_examples=40)
def test_anode_table_gives_what_it_was_made_from(angle, share):
    mean, fundamental, overtones = anode_cycle(angle, share)
    throttle = share / (1 - share) if share < 1 else 1e12
    got = stepping.anode_currents(np.cos(angle), np.sin(angle), throttle, 1.0, 1.0, anode_table(0.0))
    assert got[0] == pytest.approx(float(mean), abs=5e-4)
    assert got[1] == pytest.approx(complex(fundamental), abs=5e-4)
    assert got[2] == pytest.approx(float(overtones), abs=2e-3)


@given(st.floats(1.4, 1.5707), st.floats(0.1, 0.98))
@settings(deadline=None, max_examples=40)
def test_anode_table_is_closest_where_the_swing_is_small(angle, share):
    mean, fundamental, _ = anode_cycle(angle, share)
    got = stepping.anode_currents(np.cos(angle), np.sin(angle), share / (1 - share), 1.0, 1.0, anode_table(0.0))
    assert got[0] == pytest.approx(float(mean), abs=1e-5)
    assert got[1] == pytest.approx(complex(fundamental), abs=1.2e-4)


@given(st.floats(0, 1), st.floats(0, 1))
@settings(deadline=None, max_examples=25)
def test_a_weak_swing_grows_and_turns_as_the_networks_pole_says(throttle, tuning):
    # A large grid condenser: the network of unit 06 leaves out its little reactance.
    stage = SALTMARSH_STAGE._replace(grid_capacitance=1e-6)
    set_ = windings(5e-12 + 40e-12 * throttle, 60e-12 + 200e-12 * tuning)
    near = 1 / (2 * np.pi * np.sqrt(set_.tuned_inductance * set_.tuning_capacitance))
    poles = np.linalg.eigvals(state_matrix(small_signal_set(set_, stage)))
    pole = poles[np.argmin(np.abs(poles - 2j * np.pi * near))]
    reference = pole.imag / (2 * np.pi) + 1e3
    grid = follow(np.zeros(int(1e-4 * FINE)), FINE, reference, set_, stage, start(stage, 1e-6)).grid
    rate = np.log(grid[-1] / grid[0]) * FINE / (len(grid) - 1)
    assert rate.real == pytest.approx(pole.real, abs=3e-3 * abs(pole.imag) * 0.01 + 20)
    assert rate.imag == pytest.approx(-2e3 * np.pi, abs=2 * np.pi * 5)


@given(st.floats(5e-12, 12e-12), st.floats(-5e3, 5e3))
@settings(deadline=None, max_examples=25)
def test_a_weak_station_is_heard_as_the_network_says(throttle, offset):
    stage = SALTMARSH_STAGE._replace(grid_capacitance=1e-6)
    set_ = windings(throttle)
    reference, emf = 1e6, 1e-6
    time = np.arange(int(1.5e-3 * FINE)) / FINE
    heard = follow(carrier(time, offset, emf), FINE, reference, set_, stage).grid[-1]
    small = small_signal_set(set_, stage)
    turning = 2j * np.pi * (reference + offset)
    exact = np.linalg.solve(turning * np.eye(6) - state_matrix(small), drive(small))[GRID]
    assert heard == pytest.approx(emf * exact * np.exp(2j * np.pi * offset * time[-1]), rel=5e-3)


def plain_valve(excess, drive_voltage=6.0):
    """A set near van der Pol's: no grid current, an anode that does not matter; `excess` more transconductance than needed."""
    stage = SALTMARSH_STAGE._replace(
        amplification_factor=1e3, offset=drive_voltage - SALTMARSH_STAGE.supply / 1e3, load_resistance=1.0,
        bypass_capacitance=1e-5, leak_return=0.0, zero_current=1e-40,
    )  # fmt: skip
    slope = small_signal_set(SALTMARSH_SET, stage).transconductance

    def growth(mutual):
        set_ = replace(small_signal_set(windings(20e-12), stage), tuned_tickler=mutual, transconductance=slope * (1 - excess))
        return np.max(np.linalg.eigvals(state_matrix(set_)).real)

    return replace(windings(20e-12), tuned_tickler=brentq(growth, 1e-8, 6e-6, xtol=1e-15)), stage, slope


@pytest.mark.parametrize(("excess", "drive_voltage"), [(0.002, 6.0), (0.003, 3.0)])
def test_amplitude_2_of_van_der_pol(excess, drive_voltage):
    # B. van der Pol, Phil. Mag. 2, 978 (1926) (from memory): amplitude 2 where conductance and cubic term are normalised,
    # 2 sqrt(negative/(3 cubic)) otherwise. The three-halves law's cubic term is slope/(24 drive²), by Taylor.
    set_, stage, slope = plain_valve(excess, drive_voltage)
    heard = settled(set_, stage, 1.0023e6, seed=1.0, seconds=60e-3)
    negative, cubic = excess * slope, slope / (24 * drive_voltage**2)
    assert abs(heard.grid[-1]) / np.sqrt(negative / (3 * cubic)) == pytest.approx(2, rel=0.015)


def test_adlers_locking_range_and_beat():
    # R. Adler, Proc. IRE 34, 351 (1946) (from memory): locked while the offset is below the push over the amplitude; beyond
    # it the beat is the root of the difference of their squares.
    set_, stage, _ = plain_valve(0.03)
    free = follow(np.zeros(int(20e-3 * RATE)), RATE, 1.0023e6, set_, stage, start(stage, 5.0))
    own = 1.0023e6 + frequency_offset(free.grid, RATE)[-1]
    net = slow_mode(set_, stage, own)
    emf = 5e-4
    hold = abs(net.by_emf) * emf / (2 * np.pi * abs(free.grid[-1]))
    assert 5 < hold < 30  # so weak that the amplitude hardly heeds it
    time = np.arange(int(0.6 * RATE)) / RATE

    def slips(offset):
        frame = own + offset
        phase = np.unwrap(np.angle(follow(np.full(len(time), emf), RATE, frame, set_, stage, free.state).grid))
        turns = -(phase[-1] - phase[len(time) // 3]) / (2 * np.pi)
        return turns / (time[-1] - time[len(time) // 3])

    assert abs(slips(0.95 * hold)) < 0.02 * hold
    assert slips(1.05 * hold) > 0.2 * hold
    assert slips(2 * hold) == pytest.approx(np.sqrt(3) * hold, rel=0.05)


def test_same_in_plain_python(monkeypatch):
    monkeypatch.setitem(sys.modules, "numba", None)
    spec = importlib.util.spec_from_file_location("plain_stepping", stepping.__file__)
    plain = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(plain)
    assert not hasattr(plain.march, "py_func")
    time = np.arange(400) / RATE
    emf = carrier(time, 1e3, 0.2) + thermal_noise(400, RATE, 30.0, np.random.default_rng(7))
    inputs = (emf, 1 / RATE, 2e6 * np.pi, *start(seed=0.5), slow_mode(windings(25e-12), SALTMARSH_STAGE, 1e6), SALTMARSH_STAGE,
              anode_table(0.02), grid_table())  # fmt: skip
    for ours, theirs in zip(stepping.march(*inputs), plain.march(*inputs), strict=True):
        assert np.asarray(ours) == pytest.approx(np.asarray(theirs), rel=1e-7, abs=1e-12)


def test_a_run_in_blocks_is_the_run_in_one():
    set_ = windings(20e-12)

    def emf(time):
        return carrier(time, 1.5e3, 5e-3, 0.3 * np.sin(2 * np.pi * 400 * time))

    whole = follow(emf(np.arange(int(0.02 * RATE) + 1) / RATE), RATE, 1e6, set_, state=start(seed=1e-3))
    parts = list(render(0.02, 1e6, emf, set_, state=start(seed=1e-3)))
    assert len(parts) > 1
    assert np.concatenate([part.grid for part in parts]) == pytest.approx(whole.grid, rel=1e-6)
    thin = np.concatenate([part.phones for part in render(0.02, 1e6, emf, lambda _: set_, state=start(seed=1e-3), every=4)])
    assert thin == pytest.approx(np.mean(whole.phones.reshape(-1, 4), axis=1), rel=1e-6)


def test_longer_steps_and_another_frame_change_little():
    set_ = windings(20e-12)
    fine = follow(np.zeros(4000), 1e6, 0.9952e6, set_, state=start(seed=2.0))
    for rate, reference in ((RATE, 0.9952e6), (RATE, 1.0e6)):
        coarse = follow(np.zeros(int(4e-3 * rate)), rate, reference, set_, state=start(seed=2.0))
        assert abs(coarse.grid[-1]) == pytest.approx(abs(fine.grid[-1]), rel=5e-3)
        own = reference + frequency_offset(coarse.grid, rate)[-1]
        assert own == pytest.approx(0.9952e6 + frequency_offset(fine.grid, 1e6)[-1], abs=2)


def test_steps_half_as_long_are_four_times_as_good():
    set_, seconds = windings(20e-12), 2e-3

    def beat(rate):
        time = np.arange(int(seconds * rate) + 1) / rate
        heard = follow(carrier(time, 4e3, 0.1), rate, 0.995e6, set_, state=start(seed=2.0))
        return np.abs(heard.grid[int(rate / 48e3) - 1 :: int(rate / 48e3)])[48:]

    best = beat(16 * 96e3)
    coarse, fine = (np.max(np.abs(beat(rate) - best)) for rate in (96e3, 192e3))
    assert coarse < 0.01 * np.mean(best)
    assert 3 < coarse / fine < 6


def test_thermal_noise_swings_the_cold_circuit_as_equipartition_says():
    # C v²/2 is kT/2 on average, all losses at one temperature: here the noise of the aerial's resistance alone, and so less.
    set_ = replace(windings(10e-12), tuned_resistance=1e-6, tuned_tickler=0.0, aerial_tickler=0.0, tickler_resistance=1e-6)
    stage = SALTMARSH_STAGE._replace(zero_current=1e-40, leak_return=0.0, leak_resistance=1e12)
    pole = slow_mode(set_, stage, 1e6).rate
    noise = thermal_noise(400_000, RATE, set_.aerial_resistance, np.random.default_rng(3))
    grid = follow(noise, RATE, 1e6 + pole.imag / (2 * np.pi), set_, stage).grid
    volts = np.mean(np.abs(grid[20_000:]) ** 2) / 2
    assert volts * set_.tuning_capacitance / (1.380649e-23 * 290) == pytest.approx(1, rel=0.15)


@pytest.mark.parametrize(
    ("emf", "rate", "reference", "set_", "says"),
    [
        (np.zeros(1), RATE, 1e6, windings(20e-12), "two or more finite"),
        (np.array([0, np.nan]), RATE, 1e6, windings(20e-12), "two or more finite"),
        (np.zeros(9), RATE, 1.2e6, windings(20e-12), "Hz from the reference"),
        (np.zeros(9), RATE, 1e6, windings(0.05e-12), "all but shut"),
        (np.zeros(9), RATE, 1e6, windings(9e-9), "resonate below the carrier"),
        (np.zeros(9), 1e6, 1e6, replace(windings(20e-12), aerial_inductance=157e-6, aerial_tuned=5e-6), "aerial's circuit"),
        (np.full(99, 1e5), RATE, 1e6, windings(20e-12), "swings further"),
    ],
)
def test_what_cannot_be_followed_is_said(emf, rate, reference, set_, says):
    with pytest.raises(ValueError, match=says):
        follow(emf, rate, reference, set_)
