"""The modulated wave and its power, against exact algebra, a Fourier transform and the handbook's table."""

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit01_signal.am_waveform import am_envelope, am_spectrum, am_waveform
from solutions.unit01_signal.sideband_power import (
    depth_from_aerial_current,
    sideband_power,
    sideband_share,
    total_power,
)

depths = st.floats(0, 1)
amplitudes = st.floats(1e-6, 1e3)
times = st.floats(0, 0.01)
tones = st.floats(50, 4500)
carriers = st.integers(150, 1700).map(lambda f: f * 1e3)


def test_the_three_lines_add_up_to_the_product():
    t, f, tone, m, a = sympy.symbols("t f F m A", positive=True)
    lower, carrier, upper = am_spectrum(m, a)
    product = a * (1 + m * sympy.cos(2 * sympy.pi * tone * t)) * sympy.cos(2 * sympy.pi * f * t)
    lines = sum(
        amplitude * sympy.cos(2 * sympy.pi * frequency * t)
        for amplitude, frequency in ((lower, f - tone), (carrier, f), (upper, f + tone))
    )
    assert sympy.simplify(sympy.expand_trig(sympy.expand(product - lines))) == 0


@given(st.integers(20, 60), st.integers(1, 9), depths, amplitudes)
def test_a_fourier_transform_finds_the_three_lines(carrier, tone, depth, amplitude):
    time = np.arange(256) / 256  # one second: whole numbers of hertz fall on single lines
    lines = 2 * np.abs(np.fft.rfft(am_waveform(time, carrier, tone, depth, amplitude))) / 256
    wanted = np.zeros(129)
    wanted[[carrier - tone, carrier, carrier + tone]] = [float(x) for x in am_spectrum(depth, amplitude)]
    np.testing.assert_allclose(lines, wanted, atol=1e-12 * amplitude)


@given(st.integers(20, 60), st.integers(1, 9), depths, amplitudes)
def test_power_in_the_waveform_is_the_sum_of_its_parts(carrier, tone, depth, amplitude):
    time = np.arange(256) / 256
    in_one_ohm = np.mean(am_waveform(time, carrier, tone, depth, amplitude) ** 2)
    lower, steady, upper = (float(x) ** 2 / 2 for x in am_spectrum(depth, amplitude))
    assert in_one_ohm == pytest.approx(lower + steady + upper)
    assert in_one_ohm == pytest.approx(total_power(steady, depth))
    assert lower + upper == pytest.approx(sideband_power(steady, depth), rel=1e-9, abs=1e-300)


@given(times, carriers, tones, depths, amplitudes)
def test_the_wave_stays_inside_an_envelope_that_is_never_negative(time, carrier, tone, depth, amplitude):
    crest = am_envelope(time, tone, depth, amplitude)
    assert 0 <= crest <= 2 * amplitude * (1 + 1e-12)
    assert abs(am_waveform(time, carrier, tone, depth, amplitude)) <= crest


@given(times, carriers, tones, amplitudes)
def test_no_modulation_leaves_a_plain_carrier(time, carrier, tone, amplitude):
    assert am_waveform(time, carrier, tone, 0.0, amplitude) == amplitude * np.cos(2 * np.pi * carrier * time)


@given(st.floats(1e-3, 1e6), depths)
def test_carrier_power_is_not_changed_by_the_tone(carrier_power, depth):
    assert total_power(carrier_power, depth) - sideband_power(carrier_power, depth) == pytest.approx(carrier_power)
    assert sideband_power(carrier_power, depth) == pytest.approx(sideband_share(depth) * total_power(carrier_power, depth))


@given(st.floats(0.01, 1))
def test_the_ammeter_gives_the_depth_back(depth):
    assert depth_from_aerial_current(np.sqrt(total_power(1.0, depth))) == pytest.approx(depth, rel=1e-9)


def test_power_against_depth_as_tabulated(published):
    # F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7, and F. Langford-Smith, Radiotron Designer's Handbook,
    # 4th ed., 1953, ch. 27: relations from memory, figures recomputed (exact algebra), seven decimals.
    row = published("signal/am_sidebands")
    np.testing.assert_allclose(total_power(1.0, row["m"]), row["total_power"], rtol=1e-12)
    np.testing.assert_allclose(sideband_power(1.0, row["m"]), 2 * row["each_sideband_power"], rtol=1e-12)
    np.testing.assert_allclose(sideband_share(row["m"]), row["sideband_share"], atol=6e-8)
    np.testing.assert_allclose(np.sqrt(total_power(1.0, row["m"])), row["rms_ratio"], atol=6e-8)
    some = row["m"] > 0
    np.testing.assert_allclose(depth_from_aerial_current(row["rms_ratio"])[some], row["m"][some], rtol=2e-5)
    np.testing.assert_allclose([float(am_spectrum(m, 1)[0]) for m in row["m"]], row["sideband_amp"], rtol=1e-12)
    np.testing.assert_allclose(am_envelope(0.0, 1000.0, row["m"], 1.0) ** 2, row["peak_power"], rtol=1e-12)


def test_an_aerial_current_that_falls_is_refused():
    with pytest.raises(ValueError, match="current_ratio must be at least 1.*0.9"):
        depth_from_aerial_current([1.1, 0.9])
