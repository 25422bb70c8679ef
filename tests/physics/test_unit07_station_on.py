"""The threshold with a station on: against the whole circuit at its carrier's own rate, and what physics asks of it."""

import re

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.course import ROOT
from course.circle.set_in_hand import aerial_crest
from course.circle.stations import STATIONS
from solutions.unit07_oscillation.stage import GENTLE_STAGE, SALTMARSH_STAGE, at_rest
from solutions.unit07_oscillation.station_on import (
    margin_left,
    margin_used,
    on_station,
    sings_after,
    threshold_in_silence,
    threshold_with_station,
)
from tests.physics.carrier_rate import envelope_of, integrate, rest

GANNET = 855e3, 1.98e-3  # hertz; volt, crest
SETTLES, FADED = 5e-3, 2e-3  # second with the station on, and after it has gone


def left_at_carrier_rate(frequency, throttle, emf, stage):
    """Swing on the tuned circuit with the station on, and two milliseconds after it has gone, integrated by SciPy."""
    set_ = on_station(frequency, throttle, stage=stage)
    _, states = integrate(set_, stage, frequency, SETTLES, rest(set_, stage), (emf, frequency), tolerance=1e-6)
    time, after = integrate(set_, stage, frequency, FADED, states[-1], tolerance=1e-6)
    grid, _ = envelope_of(time, after, frequency)
    return np.abs(grid[200]), np.abs(grid[-200])


@pytest.mark.parametrize("frequency, emf", [GANNET, (1107e3, 108e-3)])
def test_the_threshold_with_a_station_on_at_carrier_rate(frequency, emf):
    """Three per cent below it the set falls silent when the station goes; three per cent above it sings on."""
    threshold = threshold_with_station(frequency, emf)
    _, left = left_at_carrier_rate(frequency, 0.97 * threshold, emf, SALTMARSH_STAGE)
    on, sings = left_at_carrier_rate(frequency, 1.03 * threshold, emf, SALTMARSH_STAGE)
    assert left < 0.05 < 1.0 < sings < on


def test_the_gentle_set_at_carrier_rate_falls_silent_just_below_its_edge():
    throttle = 0.95 * threshold_in_silence(GANNET[0], stage=GENTLE_STAGE)
    on, left = left_at_carrier_rate(GANNET[0], throttle, 20e-3, GENTLE_STAGE)
    assert left < 0.3 * on


@given(st.floats(540e3, 1.6e6), st.floats(1e-5, 3e-2), st.floats(1.5, 10))
@settings(deadline=None, max_examples=5)
def test_a_stronger_station_leaves_no_more_margin(frequency, emf, times):
    weak, strong = (threshold_with_station(frequency, crest) for crest in (emf, times * emf))
    assert strong <= 1.003 * weak
    assert 0.997 * threshold_with_station(frequency, np.inf) <= strong <= threshold_in_silence(frequency)


@pytest.mark.parametrize("frequency", [531e3, 855e3, 1602e3])
def test_the_gentle_set_loses_none_of_its_margin(frequency):
    for emf in (1e-4, 2e-3, 0.1):
        assert margin_used(frequency, emf, stage=GENTLE_STAGE) < 0.005


def test_no_carrier_uses_no_margin_and_what_is_left_is_counted_from_the_throttle():
    assert margin_used(GANNET[0], 0.0) == 0
    threshold = threshold_with_station(*GANNET)
    assert margin_left(GANNET[0], threshold / 1.1, GANNET[1]) == pytest.approx(0.1)
    assert margin_left(GANNET[0], threshold * 1.1, GANNET[1]) < 0
    assert sings_after(GANNET[0], 1.01 * threshold, GANNET[1])
    assert not sings_after(GANNET[0], 0.99 * threshold, GANNET[1])
    assert at_rest(SALTMARSH_STAGE)[0] > 0 > at_rest(GENTLE_STAGE)[0]  # what makes the one fierce


def test_the_lesson_s_table_holds_each_station_s_own_carrier():
    page = (ROOT / "course/lessons/unit07_oscillation/index.md").read_text("utf-8")
    rows = re.findall(r"^\| ([A-Z][\w ]+), (\d+) kHz \| ([\d.]+) mV", page, re.M)
    assert len(rows) == 4
    for name, kilohertz, millivolts in rows:
        station = next(one for one in STATIONS if one.name == name)
        assert station.frequency == 1e3 * float(kilohertz)
        assert aerial_crest(station.field) == pytest.approx(1e-3 * float(millivolts), rel=5e-3)
