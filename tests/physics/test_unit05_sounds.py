"""Crystal set and one-valve set on one scale: what is heard is as much louder as the laws of `solutions/` make it."""

import io
import re

import numpy as np
import pytest
import soundfile

from course.circle import crystal_set
from course.circle.crystal_set import MUTUAL, across_the_load, source
from course.circle.levels import FULL_SCALE, RATE, pressure
from course.circle.one_valve_set import DRAWN_OFF, across_the_phones
from course.circle.stations import ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL, ON_THE_HEATH
from course.sounds.kit.level import files_of
from course.sounds.unit04_crystal_set import crystal
from course.sounds.unit05_valve import valve
from solutions.unit04_crystal_set.crystal_set import LOAD, SATURATION_CURRENT, SENSITIVITY, SLOPE_VOLTAGE
from solutions.unit04_crystal_set.detector_load import detector_powers
from solutions.unit04_crystal_set.phone_loudness import sound_pressure_level
from solutions.unit05_valve.one_valve_set import TONE_RESISTANCE, louder_than_crystal, one_valve_set

TIME = np.arange(RATE) / RATE
PAIRS = {  # sound: station, and mutual inductance of the one-valve set's aerial coil
    "crystal_then_valve": (ACROSS_THE_BAY, DRAWN_OFF),
    "out_of_nothing": (ON_THE_HEATH, MUTUAL),
}


def level(samples):
    """Decibels of sound pressure of pascals in the ear."""
    return 20 * np.log10(np.sqrt(np.mean(samples**2)) / 20e-6)


def powers(station, mutual, depth, tone):
    """Watts of a tone by crystal set and by one valve, from the functions that the lesson uses."""
    *_, by_crystal = detector_powers(*source(station), depth, LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)
    return by_crystal, one_valve_set(*source(station, mutual), depth, tone)


@pytest.mark.parametrize("tone", [300.0, 1000.0, 2000.0])
@pytest.mark.parametrize("depth", [0.05, 0.3, 0.6])
def test_a_tone_through_both_sounds_has_the_computed_ratio(depth, tone):
    strength = 1 + depth * np.sin(2 * np.pi * tone * TIME)
    by_crystal = pressure(across_the_load(ON_THE_HEATH, strength), LOAD, SENSITIVITY)
    by_valve = pressure(across_the_phones(ON_THE_HEATH, strength), TONE_RESISTANCE, SENSITIVITY)
    gained = level(by_valve) - level(by_crystal)
    assert gained == pytest.approx(louder_than_crystal(*source(ON_THE_HEATH), depth, tone), abs=0.1)
    # and both stand where the telephones' sensitivity puts them
    heard = [sound_pressure_level(power, SENSITIVITY) for power in powers(ON_THE_HEATH, MUTUAL, depth, tone)]
    assert [level(by_crystal), level(by_valve)] == pytest.approx(heard, abs=0.25)


@pytest.mark.parametrize("name", PAIRS)
@pytest.mark.parametrize("form", [".wav", ".mp3"])
def test_the_files_keep_the_ratio_that_their_caption_says(name, form):
    """The second half of the file against its first, decoded: as many decibels as the caption says and the laws make."""
    make = getattr(valve, name)
    by_crystal, by_valve = powers(*PAIRS[name], 0.3, 1000.0)
    computed = 10 * np.log10(by_valve / by_crystal)
    samples, _ = soundfile.read(io.BytesIO(files_of(make(), name, make.about)[form]))
    first, second = samples[: 4 * RATE], samples[-4 * RATE :]
    measured = level(second * FULL_SCALE) - level(first * FULL_SCALE)
    # A programme is no steady tone of one depth: half a decibel for that, and for the file's steps at so low a level.
    assert measured == pytest.approx(computed, abs=0.5)
    [said] = re.findall(r"(\d+) dB louder", make.about["caption"])
    assert float(said) == pytest.approx(computed, abs=0.5)


def test_the_stations_ratios_are_those_that_the_lesson_tells():
    loud, bay, far = (level(crystal_set.by_crystal(station)) for station in (LOCAL, ACROSS_THE_BAY, NEXT_CHANNEL))
    assert loud - bay == pytest.approx(20 * np.log10(4), abs=0.5)  # "its sound four times"
    assert loud - far > 20 * np.log10(3000)  # "more than three thousand times weaker"
    # Brought to 20 dB below full scale, Gannet Rock is "7800 times stronger" than on the common scale.
    assert 0.1 * FULL_SCALE / (20e-6 * 10 ** (far / 20)) == pytest.approx(7800, rel=0.02)


def test_all_that_are_to_be_compared_share_the_scale():
    compared = [crystal.saltmarsh_point, crystal.curlew_bank, *(getattr(valve, name) for name in PAIRS)]
    assert {make.about["full_scale"] for make in compared} == {FULL_SCALE}
