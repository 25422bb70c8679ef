"""What the lesson of unit 08 says, in words, of its stations, sounds and night is what the physics gives."""

import numpy as np
import pytest
from scipy.special import i0

from checker.course import ROOT
from course.circle.levels import RATE
from course.circle.stations import NIGHT_ONLY
from course.sounds.unit08_two_stations import evening as sounds
from solutions.unit04_crystal_set.crystal_set import SATURATION_CURRENT, SLOPE_VOLTAGE
from solutions.unit08_two_stations.club_evening import (
    HUT,
    LOGGED,
    READINGS,
    SKERRY_VORE,
    aerial_alone,
    clock,
    dark_hours,
    line_of_log,
    night_length,
    set_alone,
    with_trap,
)
from solutions.unit08_two_stations.dial_log import SPEED_OF_LIGHT
from solutions.unit08_two_stations.night_path import hop, path_middle, path_night
from solutions.unit08_two_stations.rejection import circuit_rejection
from solutions.unit08_two_stations.sky_wave import magnetic_latitude, median_night_field, night_field
from solutions.unit08_two_stations.weak_signal_suppression import faint_suppression

LESSON = ROOT / "course/lessons/unit08_two_stations"


def page(name):
    return (LESSON / f"{name}.md").read_text("utf-8")


def loudness(voltage):
    return 20 * np.log10(np.sqrt(np.mean(voltage**2)))


def test_night_field_as_in_the_table(published):
    # 47 CFR 73.190(b), Formula 1 (found); the table's figures recomputed from it, for 100 mV/m at a kilometre.
    rows = published("signal/skywave_fcc")
    got = median_night_field(0.1, rows["d_km"] * 1e3, rows["phim_deg"])
    assert 20 * np.log10(got / 1e-6) == pytest.approx(rows["fc50_dbuvm"], abs=6e-4)


def test_the_rule_counts_from_its_own_pole_and_no_farther_than_sixty_degrees():
    assert magnetic_latitude(78.5, -69.0) == pytest.approx(90)
    assert magnetic_latitude(0.0, 21.0) == pytest.approx(0, abs=1e-9)
    assert median_night_field(0.1, 1e6, 75.0) == median_night_field(0.1, 1e6, 60.0)
    assert night_field(4e3, 900e3, 50.0) == pytest.approx(2 * night_field(1e3, 900e3, 50.0))


def test_skerry_vore_is_as_far_as_the_course_says():
    assert path_middle(*HUT, *SKERRY_VORE)[2] == pytest.approx(NIGHT_ONLY.distance, rel=1e-3)


def test_clock():
    assert [clock(hours) for hours in (12.0, 28.5, 23.999, 35.25)] == ["12:00", "04:30", "00:00", "11:15"]


@pytest.mark.parametrize(
    ("strong", "load"), [(0.1, sounds.HIGH_LOAD), (1.0, sounds.HIGH_LOAD), (0.1, sounds.PHONES), (1.0, sounds.PHONES)]
)
def test_the_sound_of_a_faint_station_follows_the_formula(strong, load):
    heard = loudness(sounds.beside(strong, load)) - loudness(sounds.beside(0.0, load))
    assert heard == pytest.approx(faint_suppression(strong, load, SATURATION_CURRENT, SLOPE_VOLTAGE), abs=0.3)


def test_the_voice_comes_out_from_under_the_tune_only_with_the_trap():
    """How much of each programme, as the circuit lets it through, is in what is heard."""

    def voice_over_tune(quality, trapped=0.0):
        crests = (sounds.spoken(sounds.PART), sounds.WANTED), (sounds.played(sounds.PART), sounds.OTHER)
        voice, tune = (sounds.audible(sounds.behind(crest, carrier, sounds.WANTED, quality)) for crest, carrier in crests)
        heard = sounds.receiving(quality, trapped)
        (first, second), *_ = np.linalg.lstsq(np.stack([voice, tune], axis=1), heard, rcond=None)
        return 20 * np.log10(abs(first) * np.std(voice) / (abs(second) * np.std(tune)))

    plain, sharp = voice_over_tune(80), voice_over_tune(800)
    level, trapped = voice_over_tune(3000), voice_over_tune(3000, sounds.won_by_the_trap())
    assert plain < -60 and -35 < sharp < -25
    assert f"still {-level:.0f} dB below the tune" in page("index") and f"{trapped:.0f} dB *above* the tune" in page("index")


def test_the_night_is_longer_in_what_comes_last():
    thirds = [loudness(third) for third in np.split(sounds.night_opens()[0][: 21 * RATE], 3)]
    assert thirds[0] + 1 < thirds[1] < thirds[2] - 8


def test_the_trap_page_s_numbers_in_words():
    words = page("trap")
    aerial, receiver = aerial_alone(846e3), set_alone(846e3)
    assert f"{aerial.real:.0f} Ω and −{-round(aerial.imag, -1):.0f} Ω of reactance" in words
    assert f"the crystal set {receiver.real:.0f} Ω and {receiver.imag:.0f} Ω" in words
    won = with_trap(855e3, 100e-6)[0] - with_trap(846e3, 100e-6)[0]
    assert f"makes a difference of {won:.0f} dB" in words and f"A [trap](trap.md) won {won:.0f} dB more" in page("index")
    assert f"| a trap, Q 213 | {won:.0f} dB |" in page("bench")


def test_the_night_page_s_numbers_in_words():
    words = page("night")
    (_, near), (_, far) = (hop(NIGHT_ONLY.distance, height) for height in (100e3, 220e3))
    waves = (far - near) * 1206e3 / SPEED_OF_LIGHT
    assert f"some {round(waves, -1):.0f} waves" in words and "by 87 km" in words and round((far - near) / 1e3) == 87
    assert f"later by {1e3 * (far - near) / SPEED_OF_LIGHT:.2f} ms" in words
    higher = hop(NIGHT_ONLY.distance, 220e3 + 130)[1] - far
    assert "rise by some 130 m" in words and higher * 1206e3 / SPEED_OF_LIGHT == pytest.approx(0.5, abs=0.05)
    nights = [night_length(6, day) for day in (10, 12, 28, 30)]
    assert nights[1:3] == pytest.approx([0, 0], abs=1e-6) and min(nights[0], nights[3]) > 0.1


def test_the_self_test_of_the_eastern_and_western_path():
    """1500 km along 50° north: the west end has an hour of day left, the middle half of that."""
    east, west = path_night(2026, 3, 21, 50, 10, 50, 10, 0.0), path_night(2026, 3, 21, 50, -11, 50, -11, 0.0)
    middle = path_night(2026, 3, 21, 50, 10, 50, -11, 0.0)
    assert path_middle(50, 10, 50, -11)[2] == pytest.approx(1500e3, rel=0.01)
    assert west[0] - east[0] == pytest.approx(1.4, abs=0.1) and middle[0] - east[0] == pytest.approx(0.7, abs=0.1)


def test_the_last_sum_of_the_bench_page():
    added = -51 + round(circuit_rejection(855e3, -9e3, 800)) + 13 + round(circuit_rejection(855e3, -9e3, 150))
    assert "−51 + 25 + 13 + 10: about −3 dB" in page("bench") and added == -3


def test_mabels_log_is_the_one_on_the_page():
    for reading, frequency in zip(READINGS, LOGGED, strict=True):
        assert f"| {reading:.1f}° | {frequency / 1e3:.0f} kHz |" in page("log")
    assert line_of_log()[2] == pytest.approx(0.5, abs=0.05)


def test_the_hours_of_the_sound_of_nightfall():
    sunset, last = (dark_hours(11, 25, height)[0] for height in (0.0, sounds.CEILING))
    assert last + 0.15 - sunset == pytest.approx(1.5, abs=0.15)


def test_a_condenser_too_slow_for_the_beat_lets_two_stations_add():
    """A high load, one steady voltage: it is the logarithm of the average of exp(v/n), round carrier and beat."""
    strong, weak = 8.0, 3.0  # over the slope voltage
    beat = np.pi * (np.arange(720) + 0.5) / 720
    averaged = np.mean(i0(np.abs(strong + weak * np.exp(1j * beat))))
    assert np.log(averaged) == pytest.approx(np.log(i0(strong)) + np.log(i0(weak)), rel=1e-9)
    assert "1/(2πRC) is 8 kHz" in page("index") and round(1 / (2 * np.pi * 20e3 * 1e-9) / 1e3) == 8
