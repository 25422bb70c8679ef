"""The grid as a detector and the whole one-valve set: closed forms, and the set integrated cycle by cycle."""

import math
import tomllib

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import odeint
from scipy.optimize import brentq
from scipy.special import wrightomega

from solutions.unit04_crystal_set.detector_load import working_point
from solutions.unit05_valve import one_valve_set as club
from solutions.unit05_valve.grid_leak import (
    audio_cutoff,
    bias_with_carrier,
    grid_gain,
    rest_bias,
    time_constant_limits,
)
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import anode_slopes, detector_gain, louder_than_crystal, one_valve_set
from solutions.unit05_valve.triode_current import triode_current
from tests.physics.conftest import TABLES

# reaction.toml: ranges from memory (handbook practice), time constants and limits recomputed.
PRINTED = tomllib.loads((TABLES / "valve/reaction.toml").read_text())["grid_leak"]

leaks = st.floats(1e5, 1e7)
returns = st.floats(0, 6)
currents = st.floats(-8, -5).map(lambda power: 10**power)
slopes = st.floats(0.05, 0.3)
carriers = st.floats(-3, 0.7).map(lambda power: 10**power)
sources = st.floats(-3, 0.47).map(lambda power: 10**power)
resistances = st.floats(4, 6).map(lambda power: 10**power)
tones = st.floats(50, 5000)


def test_corners_as_printed():
    assert audio_cutoff(100e-12, 1e6, 0.0, 0.1) == pytest.approx(PRINTED["cutoff_hz_100pf_1m"], rel=1e-7)
    assert audio_cutoff(250e-12, 2e6, 0.0, 0.1) == pytest.approx(PRINTED["cutoff_hz_250pf_2m"], rel=1e-6)


@pytest.mark.parametrize(("depth", "tone", "key"), [(0.3, 4500, "rc_max_us_m0p3_4500hz"), (0.8, 4500, "rc_max_us_m0p8_4500hz"),
                                                    (0.8, 1000, "rc_max_us_m0p8_1000hz")])  # fmt: skip
def test_longest_time_constants_as_printed(depth, tone, key):
    assert time_constant_limits(1e6, tone, depth)[1] == pytest.approx(PRINTED[key] * 1e-6, rel=1e-6)


@given(tones, st.floats(0.05, 0.99))
def test_longest_time_constant_lets_the_leak_just_follow(tone, depth):
    """A discharging condenser falls by 1/RC of itself each second; the envelope, at its steepest, by just as much."""
    _, longest = time_constant_limits(1e6, tone, depth)
    phase = np.linspace(0, 2 * np.pi, 100001)
    steepest = np.max(2 * np.pi * tone * depth * np.sin(phase) / (1 + depth * np.cos(phase)))
    assert steepest == pytest.approx(1 / longest, rel=1e-5)


def test_shortest_time_constant_hardly_discharges_between_crests():
    # Ten cycles: common practice, no source. A tenth of a time constant passes from crest to crest.
    shortest, _ = time_constant_limits(500e3, 3000, 0.5)
    assert 1 - math.exp(-1 / (500e3 * shortest)) == pytest.approx(1 - math.exp(-0.1), rel=1e-12)


@given(leaks, returns, currents, slopes)
@settings(deadline=None)
def test_rest_by_a_root_finder_and_by_the_omega_function(leak, back, zero, slope):
    rest = rest_bias(leak, back, zero, slope)
    root = brentq(lambda v: zero * math.exp(v / slope) - (back - v) / leak, -50, back, xtol=1e-13)
    assert rest == pytest.approx(root, abs=1e-10)
    # (return − grid)/slope is the Wright omega function of ln(R z/n) + return/slope: referee scipy.
    closed = back - slope * float(wrightomega(np.log(leak * zero / slope) + back / slope))
    assert rest == pytest.approx(closed, abs=1e-9)


@given(carriers, leaks, returns, currents, slopes)
@settings(deadline=None)
def test_average_grid_current_is_the_leaks(carrier, leak, back, zero, slope):
    grid = bias_with_carrier(carrier, leak, back, zero, slope)
    with mpmath.workdps(30):
        average = zero * mpmath.exp(grid / slope) * mpmath.besseli(0, carrier / slope)
    assert float(average) == pytest.approx((back - grid) / leak, rel=1e-5)
    assert rest_bias(leak, back, zero, slope) - carrier <= grid <= rest_bias(leak, back, zero, slope)


@given(carriers, leaks, returns, currents, slopes)
@settings(deadline=None)
def test_grid_gain_is_the_slope_of_the_bias(carrier, leak, back, zero, slope):
    step = 1e-3 * carrier
    high, low = (bias_with_carrier(carrier + way * step, leak, back, zero, slope) for way in (-1, 1))
    current = (back - bias_with_carrier(carrier, leak, back, zero, slope)) / leak
    gain = grid_gain(carrier, 0.0, 100e-12, leak, current, slope)
    assert (high - low) / (2 * step) == pytest.approx(gain, rel=1e-3, abs=1e-7)
    cutoff = audio_cutoff(100e-12, leak, current, slope)
    assert grid_gain(carrier, cutoff, 100e-12, leak, current, slope) == pytest.approx(gain / math.sqrt(2))


@given(st.floats(20, 90), st.floats(-3, 0), st.floats(0.01, 3))
@settings(deadline=None)
def test_anode_slopes_are_those_of_the_averaged_current(anode, grid, carrier):
    round_the_cycle = np.cos(2 * np.pi * (np.arange(4000) + 0.5) / 4000)

    def average(bias, crest):
        return np.mean(triode_current(anode, bias + crest * round_the_cycle, *club.LAW))

    by_bias, by_carrier = anode_slopes(anode, grid, carrier, *club.LAW)
    step = 1e-3
    assert by_bias == pytest.approx(
        (average(grid + step, carrier) - average(grid - step, carrier)) / (2 * step), rel=5e-3, abs=1e-7
    )
    assert by_carrier == pytest.approx(
        (average(grid, carrier + step) - average(grid, carrier - step)) / (2 * step), rel=5e-3, abs=1e-6
    )


@given(sources, resistances, st.floats(0.05, 1), tones)
@settings(deadline=None, max_examples=40)
def test_telephones_get_less_than_the_battery_gives(source, resistance, depth, tone):
    heard = one_valve_set(source, resistance, depth, tone)
    rest = rest_bias(club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE)
    _, current = operating_point(club.HT, club.STEADY_RESISTANCE, rest, *club.LAW)
    assert 0 < heard < club.HT * current
    # A tone's crest is no larger than the steady current that carries it.
    assert math.sqrt(2 * heard / club.TONE_RESISTANCE) < current
    assert one_valve_set(source, resistance, depth / 2, tone) < heard


@given(sources, resistances, st.floats(0.05, 1))
@settings(deadline=None, max_examples=40)
def test_valve_beats_the_crystal_wherever_the_grid_is_not_overdriven(source, resistance, depth):
    assert louder_than_crystal(source, resistance, depth, 1000.0) > 10


def integrated(source, depth, tone, tones_run, source_resistance=None):
    """The club's set at its carrier's own rate by scipy's odeint; telephones taken alike for steady current and tone.

    The source is the carrier itself, or a tuned circuit of Q 50 with that resistance across it.
    """
    frequency = 200e3 if source_resistance is None else 1e6
    omega, factor, perveance, offset = 2 * math.pi * frequency, *club.LAW
    bypass = 1.5e-9

    def grid_current(grid):
        return club.ZERO_CURRENT * math.exp(grid / club.GRID_SLOPE)

    def anode_flow(grid, anode):
        drive = max(grid + anode / factor + offset, 0.0)
        return ((club.HT - anode) / club.TONE_RESISTANCE - perveance * drive**1.5) / bypass

    def wave(t):
        return source * (1 + depth * math.cos(2 * math.pi * tone * t)) * math.cos(omega * t)

    def stiff(state, t):
        held, anode = state
        grid = wave(t) - held
        current = grid_current(grid)
        return (current + (grid - club.LEAK_RETURN) / club.LEAK) / club.CONDENSER, anode_flow(grid, anode)

    def tuned(state, t):
        held, anode, flow, volts = state
        quality = 50.0
        coil = source_resistance / (quality * omega)
        grid = volts - held
        current = grid_current(grid) + (grid - club.LEAK_RETURN) / club.LEAK
        return (
            current / club.CONDENSER,
            anode_flow(grid, anode),
            (wave(t) / quality - omega * coil / quality * flow - volts) / coil,
            (flow - current) * omega**2 * coil,
        )

    rest = -rest_bias(club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE)
    anode = operating_point(club.HT, club.TONE_RESISTANCE, -rest, *club.LAW)[0]
    start = (rest, anode) if source_resistance is None else (rest, anode, 0.0, 0.0)
    time = np.arange(round(tones_run * frequency / tone) * 24 + 1) / (24 * frequency)
    run = odeint(stiff if source_resistance is None else tuned, start, time, rtol=1e-6, atol=1e-9, mxstep=10000)
    whole_tone = slice(-round(frequency / tone) * 24, None)
    swing = run[whole_tone, 1] * np.exp(-2j * np.pi * tone * time[whole_tone])
    return 2 * abs(np.mean(swing)), run[-24 * 20 :]


@pytest.mark.parametrize("carrier", [0.03, 0.2, 0.8])
def test_detector_gain_carrier_by_carrier(carrier, monkeypatch):
    monkeypatch.setattr(club, "STEADY_RESISTANCE", club.TONE_RESISTANCE)
    tone, depth = 1000.0, 0.2
    swing, _ = integrated(carrier, depth, tone, 3)
    # The grid's shift, the bend, the condenser's corner and the load, all computed; the anode's bypass takes a per cent.
    assert swing == pytest.approx(detector_gain(carrier, tone) * depth * carrier, rel=0.04)


def test_whole_set_carrier_by_carrier_on_a_tuned_circuit(monkeypatch):
    monkeypatch.setattr(club, "STEADY_RESISTANCE", club.TONE_RESISTANCE)
    source, resistance, depth, tone = 0.3, 60e3, 0.3, 1000.0
    swing, last = integrated(source, depth, tone, 1.5, resistance)
    heard = one_valve_set(source, resistance, depth, tone)
    assert swing == pytest.approx(math.sqrt(2 * club.TONE_RESISTANCE * heard), rel=0.03)
    assert np.ptp(last[:, 3]) > 0.2  # the tuned circuit does swing


def test_grid_loads_the_tuned_circuit_as_the_crystal_of_its_rest_current_does():
    # A grid at rest is a resistance of slope voltage over current: with a weak carrier the source halves into its like.
    rest_current = 1e-6
    at_rest = club.GRID_SLOPE / rest_current
    carrier, _ = working_point(1e-3, at_rest, club.LEAK, rest_current, club.GRID_SLOPE)
    assert carrier == pytest.approx(0.5e-3, rel=1e-4)


def test_arrays_broadcast():
    leak = np.array([[1e6], [2e6]])
    assert rest_bias(leak, np.array([0.0, 2.0, 3.0]), 1e-6, 0.1).shape == (2, 3)
    assert bias_with_carrier(np.array([0.1, 1.0]), leak, 2.0, 1e-6, 0.1).shape == (2, 2)
