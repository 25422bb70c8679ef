"""The sounds of reflex and loudspeaker: as loud as the laws make them, and a squeal that an integrator gives too."""

import re

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from course.circle.levels import FULL_SCALE, RATE, pressure
from course.circle.loudspeaker_set import LAST_BIAS, LEAKAGE, LOAD, PRIMARY, RATIO, SENSITIVITY, SHUNT, TYPE_31
from course.circle.one_valve_set import DRAWN_OFF, across_the_phones, by_valve
from course.circle.programme import envelope, programme
from course.circle.reflex_set import (
    ANODE,
    AUDIO_GAIN,
    BIAS,
    BYPASS,
    CURRENT,
    DEPTH,
    DETECTOR,
    EFFICIENCY,
    PHONES,
    RADIO_GAIN,
    RADIO_LOAD,
)
from course.circle.stations import ACROSS_THE_BAY
from course.sounds.unit09_feedback_receivers import audio
from solutions.unit05_valve.one_valve_set import LAW, TONE_RESISTANCE
from solutions.unit05_valve.triode_current import anode_resistance, triode_current
from solutions.unit09_feedback_receivers.reflex import largest_leak, swings
from solutions.unit09_feedback_receivers.two_stage_audio import output_power, speaker_level

TIME = np.arange(RATE) / RATE
WRONG_WAY = -1  # the sense of the transformer in which a leak helps


def decibels(samples):
    return 20 * np.log10(np.sqrt(np.mean(samples**2)))


def said(make, pattern):
    return float(re.search(pattern, make.about["caption"])[1])


@pytest.mark.parametrize("swing", [1.0, 5.0, 15.0])
def test_a_tone_from_the_output_valve_has_the_computed_power_and_level(swing):
    heard = audio.from_output_valve(swing * np.sin(2 * np.pi * 500 * TIME))
    fundamental = 2 * abs(np.fft.rfft(heard)[500]) / RATE
    power, harmonic = output_power(90.0, LAST_BIAS, swing, LOAD, *TYPE_31)
    assert fundamental**2 / (2 * LOAD) == pytest.approx(power, rel=0.02)
    assert 2 * abs(np.fft.rfft(heard)[1000]) / RATE / fundamental == pytest.approx(harmonic, abs=0.005)
    level = decibels(pressure(heard, LOAD, SENSITIVITY - 30)) - 20 * np.log10(20e-6)
    assert level == pytest.approx(speaker_level(power, SENSITIVITY, 1.0), abs=0.15)


def test_headphones_and_loudspeaker_stand_as_the_caption_says():
    phones, speaker = by_valve(ACROSS_THE_BAY, DRAWN_OFF), audio.by_loudspeaker()
    assert decibels(phones) - decibels(speaker) == pytest.approx(said(audio.phones_then_speaker, r"(\d+) dB fainter"), abs=0.6)
    volts = across_the_phones(ACROSS_THE_BAY, envelope(), DRAWN_OFF)
    times = np.mean(speaker**2) / np.mean(phones**2) * 10 ** ((110 - (SENSITIVITY - 30)) / 10)
    assert np.mean(volts**2) / TONE_RESISTANCE * times == pytest.approx(2.8e-3, rel=0.02)  # the lesson's 2.8 mW
    assert times == pytest.approx(2400, rel=0.05)
    assert audio.phones_then_speaker.about["full_scale"] == FULL_SCALE


def test_an_overdriven_valve_makes_overtones_and_a_filled_one_few():
    tone = -LAST_BIAS * np.sin(2 * np.pi * 500 * TIME)
    kind, cruel = (abs(np.fft.rfft(audio.from_output_valve(times * tone)))[500::500] for times in (1, 4))
    assert np.sqrt(np.sum(kind[1:] ** 2)) / kind[0] < 0.06
    assert np.sqrt(np.sum(cruel[1:] ** 2)) / cruel[0] > 0.3


def test_each_coupling_takes_what_the_transcript_says():
    sent = programme()

    def lost(low, high, **parts):
        band = np.abs(audio.TONES - (low + high) / 2) < (high - low) / 2
        good, bad = (np.abs(np.fft.rfft(audio.through_first_stage(sent, **p))[band]) for p in ({}, parts))
        return decibels(good) - decibels(bad)

    _, thin, dull = audio.COUPLINGS
    assert lost(80, 200, **thin) > 15 and lost(2000, 4000, **thin) < 3
    assert lost(2000, 4000, **dull) > 15 and lost(80, 200, **dull) < 3


def test_the_reflex_set_gives_the_tone_that_its_products_make():
    depth = 0.1 * DEPTH
    strength = 1 + depth * np.sin(2 * np.pi * 1000 * TIME[: RATE // 2])
    heard = audio.from_reflex(strength, audio.LEAKS[0], sense=1)[RATE // 4 :]
    fundamental = 8 * abs(np.fft.rfft(heard)[250]) / RATE
    *_, wanted = swings(audio.CARRIER, depth, RADIO_GAIN, EFFICIENCY, RATIO, AUDIO_GAIN)
    # The products take the transformer for perfect; here its iron loads the detector's own resistance.
    iron = audio.LOSS / RATIO**2
    assert 20 * np.log10(fundamental / (wanted * iron / (iron + DETECTOR))) == pytest.approx(0, abs=0.3)


def growth(leak, sense):
    roots = np.linalg.eigvals(audio.reflex_circuit(leak, sense)[0])
    fastest = roots[np.argmax(roots.real)]
    return fastest.real, abs(fastest.imag) / (2 * np.pi)


def test_it_sings_from_the_leak_on_that_the_lesson_says_and_only_one_way_round():
    """By the roots of the whole circuit; the exercise's rule, with strengths alone, comes within a tenth of them."""
    assert growth(92e-12, WRONG_WAY)[0] < 0 < growth(95e-12, WRONG_WAY)[0]
    _, pitch = growth(95e-12, WRONG_WAY)
    assert pitch == pytest.approx(8.8e3, rel=0.01)
    assert largest_leak(AUDIO_GAIN, RATIO, DETECTOR, pitch) == pytest.approx(94e-12, rel=0.1)
    for leak in (*audio.LEAKS, 95e-12):
        assert growth(leak, -WRONG_WAY)[0] < 0
    assert growth(audio.LEAKS[0], WRONG_WAY)[0] < 0


def squeal(moment, state, leak):
    """The same circuit written as currents into nodes, with a grid that conducts, for an integrator of its own step."""
    anode, across, primary, through, secondary = state
    at_detector = anode - across
    grid = WRONG_WAY * RATIO * secondary
    pull = max(grid + BIAS + (anode + ANODE) / LAW[0] + LAW[2], 1e-6)
    gain = LAW[0] * RADIO_LOAD / (RADIO_LOAD + LAW[0] / (1.5 * LAW[1] * np.sqrt(pull)))
    emf = EFFICIENCY * audio.CARRIER * (gain - RADIO_GAIN)
    into_leak = primary + through - (emf - at_detector) / DETECTOR
    valve = triode_current(max(anode + ANODE, 0.0), grid + BIAS, *LAW) - CURRENT
    grid_current = max(grid + BIAS, 0) / 20 * WRONG_WAY * RATIO
    return [
        (-anode / PHONES - valve - into_leak) / BYPASS,
        into_leak / leak,
        at_detector / PRIMARY,
        (at_detector - secondary) / LEAKAGE,
        (through - secondary * RATIO**2 / audio.LOSS - grid_current) / (RATIO**2 * SHUNT),
    ]


def test_the_squeal_has_the_pitch_that_an_integrator_gives():
    leak = audio.LEAKS[1]
    times = np.arange(0.01, 0.03, 1 / 64e3)
    found = solve_ivp(squeal, (0, 0.03), [0.01, 0, 0, 0, 0], args=(leak,), t_eval=times, method="LSODA", rtol=1e-6, atol=1e-8)
    assert found.success

    def crossings(samples, rate):
        up = np.flatnonzero((samples[:-1] < samples.mean()) & (samples[1:] >= samples.mean()))
        return (len(up) - 1) / (up[-1] - up[0]) * rate

    steady = audio.from_reflex(1 + 1e-3 * np.sin(2 * np.pi * 500 * TIME[: RATE // 4]), leak)
    settled = np.fft.irfft(np.fft.rfft(steady), 4 * steady.size) * 4
    ours = crossings(settled[RATE // 2 : 3 * RATE // 4], 4 * RATE)
    assert ours == pytest.approx(crossings(found.y[0], 64e3), rel=0.05)
    assert ours == pytest.approx(1e3 * said(audio.reflex_sings, r"at ([\d.]+) kHz"), rel=0.02)
    assert np.std(settled[RATE // 2 : 3 * RATE // 4]) == pytest.approx(np.std(found.y[0]), rel=0.1)


def test_the_squeal_is_as_far_above_the_programme_as_the_caption_says():
    clean, singing = (audio.from_reflex(envelope()[: 2 * RATE], leak) for leak in audio.LEAKS)
    assert decibels(singing) - decibels(clean) == pytest.approx(said(audio.reflex_sings, r"(\d+) dB above"), abs=1)
    assert anode_resistance(ANODE, BIAS, *LAW) == pytest.approx(audio.RESISTANCE)
