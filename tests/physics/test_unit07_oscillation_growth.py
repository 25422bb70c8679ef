"""How an oscillation builds up and where it stops: van der Pol's equation and the club's valve, integrated cycle by cycle."""

import math
import tomllib

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.special import gamma

from solutions.unit03_tuned_circuit.ring_down import ring_amplitude
from solutions.unit05_valve import one_valve_set as club
from solutions.unit05_valve.grid_leak import bias_with_carrier, rest_bias
from solutions.unit05_valve.triode_current import drive, mutual_conductance, triode_current
from solutions.unit07_oscillation.build_up import (
    amplitude,
    free_growth_time,
    growth_rate,
    starting_voltage,
    time_to_limit,
)
from solutions.unit07_oscillation.limit_amplitude import (
    describing_conductance,
    effective_transconductance,
    limit_amplitude,
    van_der_pol_amplitude,
)
from tests.physics.conftest import TABLES

# reaction.toml: relations derived with sympy, numbers recomputed.
REACTION = tomllib.loads((TABLES / "valve/reaction.toml").read_text())

frequencies = st.floats(150e3, 3e6)
qualities = st.floats(20, 300)
growths = st.floats(2, 5).map(lambda power: 10**power)
starts = st.floats(-6, -1).map(lambda power: 10**power)
limits = st.floats(-0.3, 1.3).map(lambda power: 10**power)
swings = st.floats(-1, 1.3).map(lambda power: 10**power)


def test_growth_and_decay_as_in_the_table():
    coil, growth = REACTION["example"], REACTION["growth"]
    for feedback, key, sign in ((0.9, "tau_us_k_0p9", -1), (1.1, "tau_us_k_1p1", 1)):
        rate = growth_rate(coil["f0_hz"], coil["q_unaided"], feedback)
        assert 1 / rate == pytest.approx(sign * growth[key] * 1e-6, rel=1e-6)


@given(frequencies, qualities, st.floats(0, 1e-3))
def test_without_reaction_growth_is_the_ring_down(frequency, quality, time):
    assert math.exp(growth_rate(frequency, quality, 0.0) * time) == pytest.approx(ring_amplitude(time, frequency, quality))


@given(frequencies, st.floats(30, 300), st.floats(0, 2))
@settings(deadline=None)
def test_growth_is_the_real_part_of_the_poles(frequency, quality, feedback):
    """The simple tuned-grid circuit, L C s² + (R C − M gm) s + 1 = 0 (reaction.toml), with M gm = feedback × R C."""
    w, capacitance = 2 * math.pi * frequency, 200e-12
    inductance = 1 / (w**2 * capacitance)
    resistance = w * inductance / quality
    poles = np.roots([inductance * capacitance, resistance * capacitance * (1 - feedback), 1])
    assert poles.real == pytest.approx(growth_rate(frequency, quality, feedback), rel=1e-6, abs=1e-5 * w / quality)


def test_noise_of_a_condenser_is_that_of_any_resistance_across_it():
    # Referee: Nyquist's 4kTR for each hertz through the one-pole filter of R and C, integrated by scipy.
    capacitance, resistance, temperature = 200e-12, 100e3, 290.0

    def spectrum(x):
        return 4 * 1.380649e-23 * temperature * resistance / (1 + x**2)

    power = quad(spectrum, 0, np.inf)[0] / (2 * math.pi * resistance * capacitance)
    assert starting_voltage(capacitance, temperature) == pytest.approx(math.sqrt(power), rel=1e-6)


@given(starts, limits, growths, st.floats(0.31, 0.99))
def test_time_to_limit_undoes_amplitude_and_free_growth_is_sooner(start, limit, growth, fraction):
    time = time_to_limit(start, limit, growth, fraction)
    assert amplitude(time, start, limit, growth) == pytest.approx(fraction * limit, rel=1e-9)
    assert free_growth_time(start, fraction * limit, growth) < time


@given(starts, limits, growths)
@settings(deadline=None, max_examples=30)
def test_amplitude_solves_its_equation(start, limit, growth):
    end = 2 * free_growth_time(start, limit, growth)
    run = solve_ivp(lambda t, a: growth * a * (1 - (a / limit) ** 2), (0, end), [start], rtol=1e-8, atol=1e-11)
    assert run.y[0] == pytest.approx(amplitude(run.t, start, limit, growth), rel=1e-5)


def van_der_pol(epsilon, start, end):
    """x'' − ε (1 − x²) x' + x = 0 by scipy: the crests and when they come."""
    crest = lambda t, y: y[1]  # noqa: E731
    crest.direction = -1
    run = solve_ivp(
        lambda t, y: (y[1], epsilon * (1 - y[0] ** 2) * y[1] - y[0]),
        (0, end),
        [start, 0.0],
        method="DOP853",
        rtol=1e-8,
        atol=1e-11,
        events=crest,
    )
    return run.t_events[0], run.y_events[0][:, 0]


@pytest.mark.parametrize("epsilon", [0.02, 0.1])
def test_build_up_of_van_der_pols_own_equation_cycle_by_cycle(epsilon):
    times, crests = van_der_pol(epsilon, 1e-3, 30 / epsilon)
    # Small swings grow as exp(ε t/2), and the device is 1 and 1/3 of ε.
    predicted = amplitude(times, 1e-3, van_der_pol_amplitude(epsilon, epsilon / 3), epsilon / 2)
    assert crests == pytest.approx(predicted, rel=0.7 * epsilon)
    assert crests[-1] == pytest.approx(2, abs=1e-3)


def test_van_der_pols_limit_as_in_the_table(published):
    table = published("valve/van_der_pol")
    for epsilon, wanted in zip(table["mu"], table["amplitude"], strict=True):
        formula = van_der_pol_amplitude(epsilon, epsilon / 3)
        assert formula == pytest.approx(2.0, rel=1e-12)
        assert formula == pytest.approx(wanted, rel=0.012)  # even far from small ε
        if epsilon <= 0.2:
            series = 2 + epsilon**2 / 96 - 1033 * epsilon**4 / 552960
            assert wanted == pytest.approx(series, rel=1e-7)  # so the formula is its first term


@given(swings, st.floats(1e-5, 2e-3), st.floats(1e-6, 1e-3))
def test_describing_conductance_is_the_first_term_of_a_fourier_series(swing, negative, cubic):
    wave = swing * np.cos(2 * np.pi * np.arange(64) / 64)
    first = 2 * np.fft.rfft(-negative * wave + cubic * wave**3)[1].real / 64
    assert describing_conductance(swing, negative, cubic) == pytest.approx(first / swing, rel=1e-9, abs=1e-12)


@given(st.floats(1e-5, 2e-3), st.floats(1e-6, 1e-3))
def test_at_its_limit_the_device_neither_feeds_nor_loads(negative, cubic):
    swing = van_der_pol_amplitude(negative, cubic)
    wave = swing * np.cos(2 * np.pi * np.arange(64) / 64)
    assert np.fft.rfft(-negative * wave + cubic * wave**3)[1].real / 32 == pytest.approx(0, abs=1e-9 * negative * swing)


@given(swings, st.floats(-10, 0), st.floats(20, 90))
@settings(deadline=None, max_examples=40)
def test_effective_transconductance_by_quadrature(swing, grid, anode):
    def flow(angle):
        return triode_current(anode, grid + swing * math.cos(angle), *club.LAW) * math.cos(angle)

    edge = -(grid + anode / club.LAW[0] + club.LAW[2]) / swing
    bounds = [math.acos(edge)] if abs(edge) < 1 else None
    first = 2 / math.pi * quad(flow, 0, math.pi, points=bounds, epsabs=1e-12)[0]
    assert effective_transconductance(swing, grid, anode, *club.LAW) == pytest.approx(first / swing, rel=1e-4, abs=1e-10)


def test_valve_biased_to_cut_off_by_the_gamma_function():
    factor, perveance, offset = club.LAW
    closed = perveance * gamma(1.75) / (math.sqrt(math.pi) * gamma(2.25))
    at_cut_off = -60 / factor - offset
    for swing in (0.5, 3.0, 12.0):
        found = effective_transconductance(swing, at_cut_off, 60.0, *club.LAW)
        assert found == pytest.approx(closed * math.sqrt(swing), rel=1e-5)


@given(st.floats(20, 90), st.floats(-2, 0))
def test_small_swing_finds_the_mutual_conductance(anode, grid):
    if drive(anode, grid, club.LAW[0], club.LAW[2]) > 0.5:
        small = effective_transconductance(1e-2, grid, anode, *club.LAW)
        assert small == pytest.approx(mutual_conductance(anode, grid, *club.LAW), rel=1e-3)


@given(st.floats(50e-6, 750e-6), st.floats(45, 90))
@settings(deadline=None, max_examples=25)
def test_at_the_limit_the_valve_offers_what_is_needed(needed, anode):
    swing = limit_amplitude(needed, anode)
    bias = bias_with_carrier(swing, club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE)
    assert effective_transconductance(swing, bias, anode, *club.LAW) == pytest.approx(needed, rel=1e-4)
    assert bias + swing < 1.0  # the crest hardly passes the voltage where the grid conducts


def test_too_little_reaction_is_refused_in_words():
    rest = rest_bias(club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE)
    edge = float(mutual_conductance(60.0, rest, *club.LAW))
    assert limit_amplitude(0.999 * edge, 60.0) < 0.5
    with pytest.raises(ValueError, match="does not oscillate"):
        limit_amplitude(1.001 * edge, 60.0)
    with pytest.raises(ValueError, match="nothing grows"):
        free_growth_time(1e-6, 1.0, np.array([1.0, -1.0]))
    with pytest.raises(ValueError, match="never quite reached"):
        time_to_limit(1e-6, 1.0, 1.0, 1.0)


@pytest.mark.parametrize("needed", [250e-6, 500e-6])
def test_limit_of_the_valve_with_its_grid_leak_cycle_by_cycle(needed):
    """A tuned circuit of Q 100 whose tickler feeds `gm/needed` of its loss back, grid leak and condenser, by scipy."""
    factor, perveance, offset = club.LAW
    anode, w, quality = 60.0, 2 * math.pi * 1e6, 100.0
    condenser = 10e-12  # small, so that the bias settles while it is watched

    def flow(t, state):
        volts, rate, held = state
        grid = volts - held
        pull = max(grid + anode / factor + offset, 0.0)
        slope = 1.5 * perveance * math.sqrt(pull)
        leak = (grid - club.LEAK_RETURN) / club.LEAK
        conduction = club.ZERO_CURRENT * math.exp(min(grid, 5.0) / club.GRID_SLOPE)
        held_rate = (conduction + leak) / condenser
        # L C v'' + (R C − M gm(v)) v' + v = 0: the valve's current is fed back through the tickler.
        return rate, w / quality * (slope * (rate - held_rate) / needed - rate) - w**2 * volts, held_rate

    run = solve_ivp(flow, (0, 400e-6), [1.0, 0.0, 0.0], rtol=1e-6, atol=1e-8, max_step=1e-7)
    last = run.y[0][run.t > 380e-6]
    bias = -np.mean(run.y[2][run.t > 380e-6])
    swing = limit_amplitude(needed, anode)
    assert np.max(last) == pytest.approx(swing, rel=0.02)
    wanted = bias_with_carrier(swing, club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE)
    assert bias == pytest.approx(wanted, rel=0.03)
