"""The first two exercises: metres against the wavelengths of a printed channel plan, a tone against mpmath's sine."""

import csv

import mpmath
import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from checker.course import ROOT
from solutions.unit00_bench.metres import wavelength
from solutions.unit00_bench.tone import tone


def test_metres_of_the_medium_wave_channels():
    with open(ROOT / "tests/published/signal/mw_channels.csv", encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(rows) > 200
    for row in rows:
        assert abs(wavelength(1e3 * float(row["f_khz"])) - float(row["lambda_m"])) < 6e-5


@given(st.floats(0, 0.02), st.floats(50, 5000), st.floats(0.01, 100))
def test_a_tone_is_a_sine(time, frequency, amplitude):
    with mpmath.workdps(40):
        wanted = amplitude * mpmath.sin(2 * mpmath.pi * mpmath.mpf(frequency) * mpmath.mpf(time))
    assert abs(tone(time, frequency, amplitude) - float(wanted)) < 1e-11 * amplitude


def test_a_tone_of_440_hz_crosses_zero_880_times_a_second():
    heard = tone(np.arange(48_000) / 48_000 + 1e-6, 440.0, 1.0)
    assert np.count_nonzero(np.diff(np.signbit(heard))) == 879
    assert np.argmax(np.abs(np.fft.rfft(heard))) == 440
