"""What the pages on reflex and loudspeaker say in words, held to the functions that they use."""

import numpy as np
import pytest

from course.circle import loudspeaker_set, reflex_set
from course.circle.crystal_set import source
from course.circle.one_valve_set import DRAWN_OFF
from course.circle.stations import ACROSS_THE_BAY
from course.figures.unit09_feedback_receivers import loudspeaker as speaker
from solutions.unit05_valve.one_valve_set import LAW, TONE_RESISTANCE, one_valve_set
from solutions.unit05_valve.triode_current import anode_resistance, triode_current
from solutions.unit09_feedback_receivers.reflex import gain_slope, largest_carrier, swings
from solutions.unit09_feedback_receivers.two_stage_audio import best_tap, output_power


def test_of_the_reflex():
    gained = loudspeaker_set.RATIO * reflex_set.AUDIO_GAIN
    assert gained == pytest.approx(18, rel=0.02) and 20 * np.log10(gained) == pytest.approx(25, abs=0.5)
    room = -reflex_set.BIAS
    assert room / (1 + reflex_set.DEPTH) == pytest.approx(1.7, abs=0.05)
    coils = reflex_set.RADIO_GAIN, reflex_set.EFFICIENCY, loudspeaker_set.RATIO
    most = largest_carrier(reflex_set.ANODE, reflex_set.BIAS, reflex_set.DEPTH, *coils, LAW[0], LAW[2])
    _, audio, _ = swings(most, reflex_set.DEPTH, *coils, reflex_set.AUDIO_GAIN)
    assert audio == pytest.approx(2.25, abs=0.01)
    slope = gain_slope(reflex_set.ANODE, reflex_set.BIAS, reflex_set.RADIO_LOAD, reflex_set.PHONES, *LAW)
    assert slope * audio / reflex_set.RADIO_GAIN == pytest.approx(0.04, abs=0.005)


def test_of_the_loudspeaker():
    power = one_valve_set(*source(ACROSS_THE_BAY, DRAWN_OFF), 0.3, 1000.0)
    assert np.sqrt(2 * power * TONE_RESISTANCE) == pytest.approx(0.268, abs=0.003)
    assert best_tap(loudspeaker_set.TAPS, 8.0, 0.05, 90.0, -15.0, *loudspeaker_set.TYPE_31) == 30
    full, _ = output_power(90.0, -15.0, 15.0, 7200.0, *loudspeaker_set.TYPE_31)
    assert 10 * np.log10(full / 2.8e-3) == pytest.approx(14, abs=0.5)
    assert full / (90 * loudspeaker_set.REST) == pytest.approx(0.18, abs=0.005)
    first = triode_current(90.0, loudspeaker_set.FIRST_BIAS, *LAW)
    assert 2.8e-3 + first + loudspeaker_set.REST == pytest.approx(9.8e-3, rel=0.01)
    assert speaker.sound_share(loudspeaker_set.SENSITIVITY) < 0.01
    more, _ = output_power(135.0, -22.5, 22.5, 7200.0, *loudspeaker_set.TYPE_31)
    assert 10 * np.log10(more / full) == pytest.approx(4, abs=0.5)
    for load, (volts, bias) in ((5700.0, (180.0, -30.0)), (7000.0, (135.0, -22.5))):
        assert 1.5 < load / anode_resistance(volts, bias, *loudspeaker_set.TYPE_31) < 2
