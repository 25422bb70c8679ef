"""Whistles, pulling and what the aerial sends out: Adler's equation integrated, squares taken, coupled circuits solved."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.constants import Boltzmann, epsilon_0, speed_of_light
from scipy.integrate import odeint, solve_ivp
from scipy.optimize import brentq

from solutions.unit01_signal.field_strength import unattenuated_field
from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance
from solutions.unit07_oscillation.beat_note import (
    autodyne_advantage,
    dial_pitch,
    hand_pitch,
    settings_for_pitch,
    two_stations,
)
from solutions.unit07_oscillation.pull_in import (
    holding_signal,
    locked_phase,
    locking_range,
    pulled_beat,
    slipping_phase,
)
from solutions.unit07_oscillation.radiated_field import (
    aerial_current,
    nearby_field,
    noise_field,
    radiated_power,
    spoiled_distance,
)

carriers = st.floats(500e3, 1.6e6)
coils = st.floats(100e-6, 300e-6)
condensers = st.floats(50e-12, 500e-12)
offsets = st.floats(10, 1e4)


@given(coils, st.floats(0, 15e3), carriers)
def test_the_two_settings_whistle_at_the_pitch_either_side(inductance, pitch, carrier):
    smaller, larger = settings_for_pitch(pitch, inductance, carrier)
    if pitch > 1:
        assert smaller < 1 / ((2 * math.pi * carrier) ** 2 * inductance) < larger
    for capacitance in (smaller, larger):
        assert dial_pitch(capacitance, inductance, carrier) == pytest.approx(pitch, abs=1e-3)
    middle = 1 / ((2 * math.pi * carrier) ** 2 * inductance)
    assert dial_pitch(middle, inductance, carrier) == pytest.approx(0, abs=1e-6)


@given(carriers, condensers, st.floats(1e-14, 5e-12))
def test_a_hand_moves_zero_beat_as_the_dial_would(carrier, capacitance, hand):
    inductance = 1 / ((2 * math.pi * carrier) ** 2 * capacitance)
    pitch = hand_pitch(carrier, capacitance, hand)
    assert pitch == pytest.approx(dial_pitch(capacitance + hand, inductance, carrier), abs=1e-4)
    assert pitch <= carrier * hand / (2 * capacitance) * (1 + 1e-9)


@given(carriers, carriers, carriers)
def test_whistles_of_two_stations_add_up(oscillation, first, second):
    with_first, with_second, between = two_stations(oscillation, first, second)
    assert between == pytest.approx(max(abs(with_first + s * with_second) for s in (1, -1)), abs=1e-6) or (
        between == pytest.approx(abs(with_first - with_second), abs=1e-6)
    )


def tone(samples, cycles):
    return 2 * abs(np.fft.rfft(samples)[cycles]) / samples.size


@given(st.floats(0.1, 10), st.floats(1e-5, 0.05), st.floats(0.1, 1))
@settings(max_examples=50)
def test_autodyne_advantage_by_squaring_both(oscillation, signal, depth):
    """Half the square of the swing itself, averaged over the carrier: 60 and 67 cycles beat seven times."""
    angle = 2 * np.pi * np.arange(4096) / 4096
    whistle = tone(0.5 * (oscillation * np.cos(60 * angle) + signal * np.cos(67 * angle)) ** 2, 7)
    programme = tone(0.5 * (signal * (1 + depth * np.cos(7 * angle)) * np.cos(60 * angle)) ** 2, 7)
    assert autodyne_advantage(oscillation, signal, depth) == pytest.approx(20 * math.log10(whistle / programme), abs=1e-4)


def test_locking_as_in_the_table(published):
    # Formulas from memory, numbers recomputed (closed form; the beat by quadrature of the slip too).
    table = published("valve/adler_locking")
    assert locking_range(table["f0_khz"] * 1e3, table["q"], table["e1_over_e"], 1.0) == pytest.approx(table["fl_hz"], rel=1e-9)
    assert pulled_beat(table["df_hz"], table["fl_hz"]) == pytest.approx(table["f_beat_hz"], abs=6e-5)
    for offset, hold, phase in zip(table["df_hz"], table["fl_hz"], table["phi_deg"], strict=True):
        if np.isnan(phase):
            with pytest.raises(ValueError, match="slips"):
                locked_phase(offset, hold)
        else:
            assert locked_phase(offset, hold) == pytest.approx(phase, abs=6e-5)


def adler(offset, hold, end, at=None):
    return solve_ivp(
        lambda t, angle: 2 * np.pi * (offset - hold * np.sin(angle)), (0, end), [0.0], rtol=1e-9, atol=1e-10, t_eval=at
    )


@given(offsets, st.floats(0, 0.98))
@settings(deadline=None, max_examples=40)
def test_slipping_phase_by_integration(offset, held):
    hold = held * offset
    beat = pulled_beat(offset, hold)
    times = np.linspace(0, 3.3 / beat, 50)
    run = adler(offset, hold, times[-1], times)
    assert slipping_phase(times, offset, hold) == pytest.approx(run.y[0], abs=2e-5)
    assert np.all(np.diff(slipping_phase(times, offset, hold)) > 0)
    # One turn of the angle to each beat.
    assert slipping_phase(1 / beat * (1 + 1e-9), offset, hold) == pytest.approx(2 * np.pi, abs=1e-4)


@given(st.floats(-0.99, 0.99), st.floats(10, 3e3))
@settings(deadline=None, max_examples=40)
def test_held_oscillation_settles_at_the_locked_phase(part, hold):
    run = adler(part * hold, hold, 30 / (2 * np.pi * hold * math.sqrt(1 - part**2)))
    assert math.degrees(run.y[0][-1]) == pytest.approx(locked_phase(part * hold, hold), abs=1e-3)
    assert pulled_beat(part * hold, hold) == 0


@given(offsets, carriers, st.floats(20, 200), st.floats(0.1, 10))
def test_holding_signal_just_holds(offset, carrier, quality, oscillation):
    signal = holding_signal(offset, carrier, quality, oscillation)
    if signal <= oscillation:
        assert locking_range(carrier, quality, signal, oscillation) == pytest.approx(offset)
    else:  # half the circuit's own bandwidth away: no station holds a set from there, it drives it
        assert offset > carrier / (2 * quality)
        with pytest.raises(ValueError, match="at most `oscillation`"):
            locking_range(carrier, quality, signal, oscillation)


@pytest.mark.parametrize(("part", "locks"), [(0.8, True), (1.3, False)])
def test_van_der_pols_oscillator_with_a_station_locks_and_slips_as_adler_says(part, locks):
    """x'' − (w/Q)(1 − x²) x' + w² x = (w²/Q) × the station's e.m.f., Q times as large on the circuit, by odeint."""
    w, quality, station, own = 2 * np.pi, 20.0, 0.1, 2.0
    alone = 1 / (1 + quality**-2 / 16)  # hertz: the oscillator by itself runs a little slow (van_der_pol.csv)
    hold = locking_range(1.0, quality, station, own)
    carrier = 2 * np.pi * (alone + part * hold)

    def flow(state, t):
        x, rate = state
        return rate, w / quality * ((1 - x**2) * rate + w * station * math.cos(carrier * t)) - w**2 * x

    times = np.arange(0, 4 / hold, 0.05)
    run = odeint(flow, (own, 0.0), times, rtol=1e-7, atol=1e-8)
    against = np.unwrap(np.angle((run[:, 0] - 1j * run[:, 1] / w) * np.exp(-1j * carrier * times)))
    late = np.flatnonzero(times > 1 / hold)
    if locks:
        assert abs(against[late[-1]] - against[late[0]]) < 0.1
    else:
        whole = late[np.flatnonzero(np.diff(np.floor(against[late] / (2 * np.pi))))]  # where it completes a turn
        turns = abs(round((against[whole[-1]] - against[whole[0]]) / (2 * np.pi)))
        assert turns >= 2
        assert turns / (times[whole[-1]] - times[whole[0]]) == pytest.approx(pulled_beat(part * hold, hold), rel=0.06)


# The aerial, and beyond


@given(st.floats(0.1, 20), carriers, condensers, st.floats(1e-6, 30e-6), st.floats(10, 100), st.floats(-1e3, 1e3))
def test_aerial_current_takes_the_power_that_the_tuned_circuit_loses(swing, frequency, capacitance, mutual, loss, reactance):
    aerial = complex(loss, reactance)
    current = aerial_current(swing, frequency, capacitance, mutual, aerial)
    circulating = 2 * np.pi * frequency * capacitance * swing / math.sqrt(2)
    given_up = circulating**2 * reflected_impedance(frequency, mutual, aerial).real
    assert current**2 * loss == pytest.approx(given_up, rel=1e-9)


def test_aerial_current_by_solving_both_meshes():
    frequency, inductance, resistance, capacitance, mutual, aerial = 846e3, 200e-6, 6.0, 177e-12, 10e-6, 30 - 400j
    w = 2 * np.pi * frequency
    tuned = resistance + 1j * w * inductance + 1 / (1j * w * capacitance)
    meshes = np.array([[aerial, 1j * w * mutual], [1j * w * mutual, tuned]])
    first, second = np.linalg.solve(meshes, [0.0, 1.0])
    swing = abs(second) / (w * capacitance)
    found = aerial_current(swing, frequency, capacitance, mutual, aerial)
    assert found == pytest.approx(abs(first) / math.sqrt(2), rel=1e-9)


def test_radiated_power_as_in_the_table(published):
    # Effective heights and resistances recomputed (closed form); citations from memory.
    table = published("signal/aerial_effective_height")
    lengths = np.isfinite(table["he_m"]) & np.isfinite(table["rr_ohm"])
    power = radiated_power(1.0, table["he_m"][lengths], table["f_khz"][lengths] * 1e3)
    assert power == pytest.approx(table["rr_ohm"][lengths], rel=2e-3)


@given(st.floats(0.5, 5e3), carriers)
def test_nearby_field_is_that_of_a_hertzian_dipole(distance, frequency):
    """Upright field in its equator, from the textbook sum of 1/r, 1/r² and 1/r³ with the constants of scipy."""
    k, current, height = 2 * np.pi * frequency / speed_of_light, 1e-3, 5.0
    impedance = 1 / (epsilon_0 * speed_of_light)
    # A wire of that height and its image in the ground: twice the moment.
    whole = impedance * current * 2 * height / (4 * np.pi) * (1j * k / distance + 1 / distance**2 - 1j / (k * distance**3))
    sent = radiated_power(current, height, frequency)
    assert nearby_field(sent, distance, frequency) == pytest.approx(abs(whole), rel=2e-3)


@given(st.floats(1e-9, 1e-3), carriers)
def test_far_away_only_the_far_field_is_left(power, frequency):
    assert nearby_field(power, 50e3, frequency) == pytest.approx(unattenuated_field(power, 50e3), rel=1e-3)


def test_noise_field_as_in_the_table(published):
    # Constants found in the ITU-R Study Group 3 software; fields recomputed.
    table = published("signal/noise_p372")
    for bandwidth, column in ((9e3, "en_1mhz_9khz"), (4.5e3, "en_1mhz_4k5")):
        found = 20 * np.log10(noise_field(1e6, bandwidth, table["c_db"], table["d_db"]) * 1e6)
        assert found == pytest.approx(table[column], abs=0.02)
    for megahertz, column in ((0.5, "fam_0p5"), (1.6, "fam_1p6")):
        field = noise_field(megahertz * 1e6, 1.0, table["c_db"], table["d_db"])
        figure = 20 * np.log10(field * 1e6) - 20 * math.log10(megahertz) + 95.5
        assert figure == pytest.approx(table[column], abs=2e-3)


def test_noise_constant_by_itself():
    # P.372's −95.5 dB (its value from memory) against E² = 640 π² k T0 b/λ².
    field = math.sqrt(640 * math.pi**2 * Boltzmann * 290 * (1e6 / speed_of_light) ** 2)
    assert noise_field(1e6, 1.0, 0.0, 27.7) == pytest.approx(field, rel=2e-3)


@given(st.floats(1e-12, 1e3), st.floats(1e-6, 1.0), st.floats(0, 60), carriers)
def test_at_the_spoiled_distance_the_station_is_just_so_far_above(power, wanted, protection, frequency):
    """Near and far alike; SciPy finds the same distance where the dipole's field has sunk to what it may be."""
    distance = spoiled_distance(power, wanted, protection, frequency)
    allowed = wanted * 10 ** (-protection / 20)
    assert nearby_field(power, distance, frequency) == pytest.approx(allowed, rel=1e-9)

    def above(log):
        return math.log(nearby_field(power, math.exp(log), frequency) / allowed)

    assert distance == pytest.approx(math.exp(brentq(above, -30, 40)), rel=1e-9)
    assert distance == pytest.approx(math.sqrt(90 * power) / allowed, rel=1e-9 + 2 * (48e6 / frequency / distance) ** 2)
