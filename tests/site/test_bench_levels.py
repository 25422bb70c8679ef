"""How loud the bench is when it is first listened to: what its audio thread sends out, in Node."""

import re

import numpy as np
import pytest

from course.circle.levels import RATE as SENT_RATE
from course.circle.programme import programme
from course.press.boxes.bench_box import read_goals

from .bench_asked import asked
from .conftest import ROOT

RATE = 32_000  # the least at which no station far off the set's own frequency is heard as a beat
SECONDS = 1.6
LOUD_ENOUGH, SOFT_ENOUGH = -30.0, -16.0  # dB r.m.s. below full scale
OPENED = {
    page: re.search(r'bench\("([^"]*)", size="(?:whole|opening)"\)', (ROOT / f"course/lessons/{page}.md").read_text("utf-8"))[1]
    for page in ("bench", "index")
}
FAINT = "whistle"  # a goal: where it begins, 55 dB below full scale as loud as life; tests/benchmarks/bench_levels.py does all


def sent_out(figures, states, seconds=SECONDS):
    """Samples for each state, from pressing the button on."""
    samples = programme()
    sent = np.interp(np.arange(round(seconds * RATE)) / RATE, np.arange(samples.size) / SENT_RATE, samples)
    given = {"states": states, "programme": np.round(sent, 5).tolist(), "sampleRate": RATE}
    return np.array(asked(figures, [("sentOut", given)])[0])


def opened(figures, settings):
    return [answer["opened"] for answer in asked(figures, [("setting", {"text": text}) for text in settings])]


def decibels(sound):
    return 20 * np.log10(np.maximum(np.abs(sound), 1e-9))


@pytest.fixture(scope="module")
def heard(figures):
    """By name, what every set sends out as it is taken, the bench's page as it opens, and a faint goal."""
    begun = asked(figures, [("bench", {"call": "startingState", "args": [name]}) for name in figures["order"]])
    settings = [OPENED["bench"], *(goal["start"] for goal in read_goals() if goal["name"] == FAINT)]
    names = [*figures["order"], "the page", FAINT]
    return dict(zip(names, sent_out(figures, [*begun, *opened(figures, settings)]), strict=True))


def test_every_set_is_heard_at_once_and_none_is_loud(heard):
    last = {name: decibels(np.std(sound[-round(0.4 * RATE) :])) for name, sound in heard.items()}
    assert all(LOUD_ENOUGH < level < SOFT_ENOUGH for level in last.values()), last


def test_the_sound_begins_softly_and_has_no_direct_component(heard):
    for name, sound in heard.items():
        assert decibels(np.std(sound[: RATE // 10])) < SOFT_ENOUGH - 12, name
        assert decibels(np.mean(sound[RATE // 2 :])) < -60, name


def test_pages_open_on_a_station(figures):
    for setting in OPENED.values():
        (found,) = asked(figures, [("measured", {"setting": setting})])
        assert not found["faults"] and found["above"] > 50 and not found["oscillates"], setting


def test_the_automatic_gain_falls_at_once_rises_steadily_and_holds_in_a_pause(figures):
    block, rate = 100, 10_000
    pressure = np.sqrt(2) * np.sin(np.arange(8 * rate) * 0.7)
    size = np.ones(8 * rate)
    size[2 * rate : 4 * rate] = 100.0
    size[round(3.2 * rate) : round(3.6 * rate)] = 1e-3  # a pause
    given = {"pressure": (pressure * size).tolist(), "sampleRate": rate, "block": block}
    gain = decibels(np.array(asked(figures, [("gained", given)])[0]))
    at = [gain[round(second * rate / block)] for second in (1.9, 2.1, 3.1, 3.59, 6.5)]
    assert at[0] == pytest.approx(at[4], abs=0.2)  # as loud again, once the loud one has gone
    assert at[0] - at[1] == pytest.approx(40, abs=0.2)
    assert at[1] == pytest.approx(at[2], abs=0.2) and at[2] == pytest.approx(at[3], abs=0.2)
    assert np.max(np.diff(gain)) * rate / block < 51  # decibel a second
