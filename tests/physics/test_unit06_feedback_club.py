"""The Circle's set in numbers, and what its sounds and pictures are made of: against the network, in frequency and in time."""
import io
import re
from dataclasses import replace

import numpy as np
import pytest
import soundfile
from scipy.linalg import expm

from course.figures.stations import NEXT_CHANNEL
from course.figures.unit06_reaction_edge import BEFORE, BEYOND, STATION, switched_on
from course.sounds import unit06_reaction as heard
from course.sounds.level import files_of
from course.sounds.programme import FULL_SCALE, RATE
from solutions.unit05_valve.one_valve_set import detector_gain
from solutions.unit06_reaction import club_set, stability
from solutions.unit06_reaction.network import GRID, SALTMARSH_SET, THROTTLE_RANGE, drive, state_matrix
from solutions.unit06_reaction.treble_loss import tone_response

FREQUENCIES = [693e3, 1107e3, 1449e3]
TIME = np.arange(RATE) / RATE


def level(samples):
    return 20 * np.log10(np.sqrt(np.mean(samples**2)))


@pytest.mark.parametrize("frequency", FREQUENCIES[:2])
def test_losses_make_up_the_bandwidth_of_the_set_with_a_cold_valve(frequency):
    # All in series with the coil. Near the aerial's resonance, at the upper end, one circuit is no longer all of it.
    cold = stability.retuned(replace(SALTMARSH_SET, transconductance=0.0, tuned_tickler=0.0, aerial_tickler=0.0), frequency)
    _, width = stability.gain_and_bandwidth(cold)
    assert sum(club_set.losses(frequency)) / (2 * np.pi * SALTMARSH_SET.tuned_inductance) == pytest.approx(width, rel=0.06)


@pytest.mark.parametrize("frequency", FREQUENCIES)
def test_tickler_cancels_the_losses_at_the_threshold(frequency):
    throttle = club_set.threshold_throttle(frequency)
    added, _ = club_set.feedback_on(frequency, throttle)
    assert -added == pytest.approx(sum(club_set.losses(frequency)), rel=0.08)
    assert club_set.growth_rate(frequency, 0.97 * throttle) < 0 < club_set.growth_rate(frequency, 1.03 * throttle)
    assert club_set.threshold_slope(frequency, throttle) == pytest.approx(SALTMARSH_SET.transconductance, rel=1e-6)


def test_ends_exchanged_turn_the_sign():
    helping, hindering = (club_set.feedback_on(STATION, 12e-12, sense)[0] for sense in (1.0, -1.0))
    assert helping < 0 < hindering
    assert hindering == pytest.approx(-helping, rel=0.02)


def test_throttle_shifts_the_tuning_as_far_as_the_feedback_says():
    shut, opened = (club_set.feedback_on(STATION, throttle)[1] for throttle in (THROTTLE_RANGE[0], 12e-12))
    assert club_set.pulled(STATION, 12e-12) == pytest.approx(opened - shut, rel=0.1)
    assert club_set.pulled(STATION, THROTTLE_RANGE[0]) == pytest.approx(0, abs=1)


def test_formula_is_true_below_and_false_beyond_and_looks_the_same():
    """What the lesson says of 8 and 20 pF, from the state equations themselves in time."""
    below, beyond = club_set.formula_gain(STATION, BEFORE), club_set.formula_gain(STATION, BEYOND)
    assert below == pytest.approx(club_set.gain_and_bandwidth(STATION, BEFORE)[0], rel=1e-9)
    assert beyond == pytest.approx(below, rel=0.02)
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
    joined = np.zeros((7, 7), complex)
    joined[:6, :6], joined[:6, 6], joined[6, 6] = matrix, drive(parts), rate
    scale = np.diag([1, 1, 1e-9, 1, 1, 1e-9, 1])  # volts beside amperes: kept within the exponential's accuracy
    state = np.linalg.inv(scale) @ expm(scale @ joined @ np.linalg.inv(scale) * time) @ scale @ [0, 0, 0, 0, 0, 0, 1]
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
    volts = heard.detected(carrier * (1 + depth * np.cos(2 * np.pi * tone * TIME)), carrier)
    swing = 2 * abs(np.mean(volts * np.exp(-2j * np.pi * tone * TIME)))
    assert swing == pytest.approx(depth * carrier * detector_gain(carrier, tone), rel=0.03)


def test_demonstration_grows_as_the_lesson_says_and_stays_within_bounds():
    pressure, bare = heard.demonstration()
    first, last = pressure[: 2 * RATE], pressure[-2 * RATE :]
    assert 40 < level(last) - level(first) < 46  # "some ten thousand times" in power, "more than forty decibels"
    assert np.all(np.diff(bare) >= 0)
    assert bare[-1] < 0.5  # volt on the grid: not far beyond what small signals are
    assert np.abs(pressure).max() < 0.5 * FULL_SCALE
    gain, width = heard.knobs_turned(np.array([0.0, 20.0]))
    assert width == pytest.approx([club_set.gain_and_bandwidth(NEXT_CHANNEL.frequency, THROTTLE_RANGE[0])[1], 400], rel=0.02)
    assert bare[0] == pytest.approx(gain[0] * heard.emf_crest(NEXT_CHANNEL), rel=1e-6)


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
    assert {sound.about["full_scale"] for sound in (make, heard.reaction_advanced, heard.beside_the_peak)} == {FULL_SCALE}
