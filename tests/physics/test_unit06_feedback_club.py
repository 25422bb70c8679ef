"""The Circle's set in numbers, and what its sounds and pictures are made of: against the network, in frequency and in time."""

import io
import re
from dataclasses import replace

import numpy as np
import pytest
import soundfile
from scipy.linalg import expm

from course.circle.demonstration import demonstration, knobs_turned
from course.circle.levels import FULL_SCALE, RATE
from course.circle.one_valve_set import behind_a_circuit
from course.circle.set_in_hand import aerial_crest
from course.circle.stations import NEXT_CHANNEL
from course.figures.unit06_reaction.edge import BEFORE, BEYOND, STATION, switched_on
from course.sounds.kit.level import files_of
from course.sounds.unit06_reaction import reaction as heard
from solutions.unit05_valve.one_valve_set import detector_gain
from solutions.unit06_reaction import club_set, stability
from solutions.unit06_reaction.grid_anode_admittance import anode_load, grid_admittance
from solutions.unit06_reaction.network import GRID, SALTMARSH_SET, THROTTLE_RANGE, drive, saltmarsh_set, state_matrix
from solutions.unit06_reaction.treble_loss import tone_response

FREQUENCIES = [693e3, 1107e3, 1449e3]
TIME = np.arange(RATE) / RATE


def level(samples):
    return 20 * np.log10(np.sqrt(np.mean(samples**2)))


@pytest.mark.parametrize("frequency", FREQUENCIES[:2])
@pytest.mark.parametrize("transconductance", [0.0, SALTMARSH_SET.transconductance])
def test_losses_make_up_the_bandwidth_of_the_set_without_its_tickler(frequency, transconductance):
    # All in series with the coil. Near the aerial's resonance, at the upper end, one circuit is no longer all of it.
    alone = replace(
        saltmarsh_set(frequency),
        tuned_tickler=0.0,
        aerial_tickler=0.0,
        throttle_capacitance=THROTTLE_RANGE[0],
        transconductance=transconductance,
    )
    _, width = stability.gain_and_bandwidth(stability.retuned(alone, frequency))
    coil, aerial, grid, anode = club_set.losses(frequency)
    whole = coil + aerial + grid + anode * (transconductance > 0)
    assert whole / (2 * np.pi * SALTMARSH_SET.tuned_inductance) == pytest.approx(width, rel=0.06)
    assert anode > coil  # the club's anode, left alone, takes more than the whole coil


@pytest.mark.parametrize("frequency", FREQUENCIES)
def test_tickler_cancels_the_losses_at_the_threshold(frequency):
    throttle = club_set.threshold_throttle(frequency)
    added, _ = club_set.feedback_on(frequency, throttle)
    coil, aerial, grid, anode = club_set.losses(frequency, throttle=throttle)
    assert -added == pytest.approx(coil + aerial + grid, rel=0.04)
    assert anode == pytest.approx(club_set.feedback_on(frequency, throttle, 0.0)[0])
    assert club_set.growth_rate(frequency, 0.97 * throttle) < 0 < club_set.growth_rate(frequency, 1.03 * throttle)
    assert club_set.threshold_slope(frequency, throttle) == pytest.approx(SALTMARSH_SET.transconductance, rel=1e-6)


def aerial_away(frequency, throttle, sense=1.0):
    """The set with its aerial away, tuned to a station by its poles."""
    of = saltmarsh_set(frequency)
    return stability.retuned(
        replace(
            of, aerial_tuned=0.0, aerial_tickler=0.0, throttle_capacitance=throttle, tuned_tickler=sense * of.tuned_tickler
        ),
        frequency,
    )


@pytest.mark.parametrize("frequency", FREQUENCIES)
@pytest.mark.parametrize("part", [0.2, 0.6, 0.9, 1.2])
def test_feedback_is_what_the_poles_say(frequency, part):
    """To the first order: the real part of the pole is the resistance left, over 2 L; the tuning condenser is the same."""
    throttle = part * club_set.threshold_throttle(frequency)
    for sense in (1.0, 0.0, -0.2):
        there = aerial_away(frequency, throttle, sense)
        added, shift = club_set.feedback_on(frequency, throttle, sense)
        coil, _, grid, _ = club_set.losses(frequency, 0.0)
        unaided = coil + grid + club_set.feedback_on(frequency, throttle, 0.0)[0]
        growth = -(coil + grid + added) / (2 * SALTMARSH_SET.tuned_inductance)
        assert stability.ring(there)[1] == pytest.approx(growth, abs=0.03 * unaided / (2 * SALTMARSH_SET.tuned_inductance))
        alone = 1 / (2 * np.pi * np.sqrt(SALTMARSH_SET.tuned_inductance * there.tuning_capacitance))
        assert shift == pytest.approx(frequency - alone, rel=0.03)


def test_the_anodes_share_is_what_the_exercise_gives():
    """With no current from coil to tickler: the conductance at the grid, times the square of the coil's reactance."""
    of, throttle = saltmarsh_set(STATION), 60e-12
    load = anode_load(STATION, of.anode_capacitance, of.tickler_resistance, of.tickler_inductance, throttle)
    seen = grid_admittance(STATION, of.transconductance, of.anode_resistance, of.grid_anode_capacitance, load)
    anode, shift = club_set.feedback_on(STATION, throttle, 0.0)
    reactance = 2 * np.pi * STATION * of.tuned_inductance
    assert anode == pytest.approx(seen.real * reactance**2, rel=0.01)
    assert shift == pytest.approx(STATION - STATION / np.sqrt(1 - seen.imag * reactance), rel=0.03)


def test_ends_exchanged_take_as_much_as_they_would_give():
    helping, alone, hindering = (club_set.feedback_on(STATION, 120e-12, sense)[0] for sense in (1.0, 0.0, -1.0))
    assert helping < 0 < alone < hindering
    assert hindering - alone == pytest.approx(alone - helping, rel=0.05)


def test_throttle_shifts_the_tuning_as_far_as_the_feedback_says():
    shut, opened = (club_set.feedback_on(STATION, throttle)[1] for throttle in (THROTTLE_RANGE[0], 100e-12))
    assert club_set.pulled(STATION, 100e-12) == pytest.approx(opened - shut, rel=0.25)  # the rest by way of the aerial
    assert club_set.pulled(STATION, THROTTLE_RANGE[0]) == pytest.approx(0, abs=1)


def test_formula_is_true_below_and_false_beyond_and_looks_the_same():
    """What the lesson says of 8 and 20 pF, from the state equations themselves in time."""
    below, beyond = club_set.formula_gain(STATION, BEFORE), club_set.formula_gain(STATION, BEYOND)
    assert below == pytest.approx(club_set.gain_and_bandwidth(STATION, BEFORE)[0], rel=1e-9)
    assert beyond == pytest.approx(below, rel=0.05)
    with pytest.raises(ValueError, match="oscillates"):
        club_set.gain_and_bandwidth(STATION, BEYOND)
    [settled] = switched_on(club_set.on_station(STATION, BEFORE), STATION, np.array([1e-3]))
    passed, early, late = switched_on(club_set.on_station(STATION, BEYOND), STATION, np.array([0.05e-3, 0.3e-3, 0.5e-3]))
    assert settled == pytest.approx(below, rel=1e-6)
    assert passed > 1.5 * beyond
    assert np.log(late / early) / 0.2e-3 == pytest.approx(club_set.growth_rate(STATION, BEYOND), rel=0.01)


def test_switching_on_agrees_with_the_matrix_exponential():
    parts, time = club_set.on_station(STATION, BEYOND), 0.02e-3
    matrix, rate = state_matrix(parts), 2j * np.pi * STATION
    joined = np.zeros((8, 8), complex)
    joined[:7, :7], joined[:7, 7], joined[7, 7] = matrix, drive(parts), rate
    scale = np.diag([1, 1, 1e-9, 1, 1, 1e-9, 1e-9, 1])  # volts beside amperes: kept within the exponential's accuracy
    state = np.linalg.inv(scale) @ expm(scale @ joined @ np.linalg.inv(scale) * time) @ scale @ [0, 0, 0, 0, 0, 0, 0, 1]
    assert switched_on(parts, STATION, np.array([time]))[0] == pytest.approx(abs(state[GRID]), rel=1e-6)


@pytest.mark.parametrize("detuning", [0.0, 800.0])
@pytest.mark.parametrize("tone", [200.0, 1000.0, 3000.0])
@pytest.mark.parametrize("width", [300.0, 4e3])
def test_envelope_behind_the_circuit_keeps_the_computed_part_of_a_tone(width, tone, detuning):
    depth = 0.01
    passed = np.abs(heard.behind(1 + depth * np.cos(2 * np.pi * tone * TIME), width, detuning))[RATE // 2 :]
    time = TIME[RATE // 2 :]
    swing = 2 * abs(np.mean(passed * np.exp(-2j * np.pi * tone * time))) / np.mean(passed)
    assert swing / depth == pytest.approx(tone_response(tone, width, detuning), rel=0.015)


def test_detector_of_the_sounds_is_that_of_unit_5():
    carrier, depth, tone = 0.1, 0.02, 1000.0
    volts = behind_a_circuit(carrier * (1 + depth * np.cos(2 * np.pi * tone * TIME)), carrier)
    swing = 2 * abs(np.mean(volts * np.exp(-2j * np.pi * tone * TIME)))
    assert swing == pytest.approx(depth * carrier * detector_gain(carrier, tone), rel=0.03)


def test_demonstration_grows_as_the_lesson_says_and_stays_within_bounds():
    pressure, crest = demonstration()
    first, last = pressure[: 2 * RATE], pressure[-2 * RATE :]
    assert 50 < level(last) - level(first) < 57  # "some hundred thousand times" in power, "some fifty decibels"
    bare = np.array([np.mean(crest[begin : begin + RATE]) for begin in range(0, crest.size, RATE)])
    assert np.all(np.diff(bare[2:14]) > 0)
    assert bare.max() < 0.5  # volt on the grid: it has neither burst into song nor tripped
    assert np.abs(pressure).max() < 0.9 * heard.reaction_advanced.about["full_scale"]
    gain, width = knobs_turned(np.array([0.0, 20.0]))
    assert width == pytest.approx([20.7e3, 400], rel=0.02)
    assert bare[0] == pytest.approx(gain[0] * aerial_crest(NEXT_CHANNEL.field), rel=0.05)


def test_what_the_anode_takes_is_heard_as_the_transcript_says():
    """Far away, soft, loud: each of the three at least twelve decibels above the one before, in the file itself."""
    make = heard.anode_takes
    samples, _ = soundfile.read(io.BytesIO(files_of(make(), "anode_takes", make.about)[".wav"]))
    levels = [level(samples[int(start * RATE) : int((start + 4) * RATE)]) for start, _ in make.about["moments"]]
    assert np.all(np.diff(levels) > 12)
    assert levels[0] == pytest.approx(-50, abs=2) and levels[2] == pytest.approx(-15, abs=2)


def test_treble_goes_in_the_file_itself():
    """Four parts of the WAV: each has less above 1 kHz, against all of it, than the one before, and none is the louder."""
    make = heard.treble_going
    samples, _ = soundfile.read(io.BytesIO(files_of(make(), "treble_going", make.about)[".wav"]))
    starts = [moment for moment, _ in make.about["moments"]]
    parts = [samples[int(start * RATE) : int((start + 4) * RATE)] for start in starts]
    shares = []
    for part in parts:
        power = np.abs(np.fft.rfft(part)) ** 2
        shares.append(10 * np.log10(power[4000:].sum() / power.sum()))
    assert np.all(np.diff(shares) < -0.8)
    assert shares[0] - shares[-1] > 10
    levels = [level(part) for part in parts]
    assert np.all(np.diff(levels) < 0) and levels[0] - levels[-1] < 10
    widths = re.findall(r"([\d.]+) (k?)Hz", make.about["caption"])
    assert [float(number) * (1e3 if kilo else 1) for number, kilo in widths] == [16e3, 4e3, 1e3, 300]
    assert {sound.about["full_scale"] for sound in (make, heard.beside_the_peak)} == {FULL_SCALE}
    louder = 20 * np.log10(FULL_SCALE / heard.reaction_advanced.about["full_scale"])
    assert louder == pytest.approx(12, abs=0.1) and "Twelve decibels louder" in heard.reaction_advanced.about["caption"]
