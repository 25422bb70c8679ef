"""The detector, against tables, other solutions of its equation, and the circuit integrated cycle by cycle."""

import math

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import odeint
from scipy.special import i0e, i1e, wrightomega

from solutions.unit04_crystal_set.detector_load import (
    detector_powers,
    detector_resistance,
    quality_factor_with_detector,
    working_point,
)
from solutions.unit04_crystal_set.rectified_voltage import (
    detector_output,
    i1_over_i0,
    log_i0,
    no_load_output,
    square_law_output,
)

crests = st.floats(-5, 1).map(lambda power: 10**power)
loads = st.floats(2, 6.5).map(lambda power: 10**power)
saturations = st.floats(-9, -4).map(lambda power: 10**power)
slopes = st.floats(0.025, 0.06)
depths = st.floats(0, 1)


def test_bessel_functions_as_tabulated(published):
    # bessel_i.csv: recomputed with mpmath at 30 digits; Abramowitz & Stegun 9.6.34.
    row = published("signal/bessel_i")
    assert log_i0(row["x"]) == pytest.approx(row["ln_i0"], rel=1e-9)
    assert i1_over_i0(row["x"]) == pytest.approx(row["i1_over_i0"], rel=1e-9)


@pytest.mark.parametrize("x", [1e-6, 1e-3, 0.5, 0.999, 1.001, 30, 500, 713, 2000, 9999])
def test_and_by_mpmath(x):
    with mpmath.workdps(40):  # referee: mpmath
        first, zeroth = mpmath.besseli(1, x), mpmath.besseli(0, x)
        assert log_i0(x) == pytest.approx(float(mpmath.log(zeroth)), rel=1e-8)
        assert i1_over_i0(x) == pytest.approx(float(first / zeroth), rel=1e-7)


@given(st.floats(-4, 3.9).map(lambda power: 10**power))
@settings(deadline=None)
def test_and_by_scipy(x):
    assert i1_over_i0(x) == pytest.approx(i1e(x) / i0e(x), rel=1e-7)
    if x > 0.1:
        assert log_i0(x) == pytest.approx(x + np.log(i0e(x)), rel=1e-8)


def test_detector_as_tabulated(published):
    # diode_detector_exact.csv: recomputed with mpmath; relations of K. K. Clarke and D. T. Hess, Communication
    # Circuits, 1971, ch. 10 (citation from memory). Volts and ohms such that n = 1 and n/Is = 1.
    row = published("signal/diode_detector_exact")
    output = detector_output(row["x"], row["r"], 1.0, 1.0)
    assert output == pytest.approx(row["y"], rel=1e-9)
    resistance = detector_resistance(row["x"], output / row["r"], 1.0, 1.0)
    assert resistance == pytest.approx(row["rin_over_r0"], rel=2e-9)
    efficiency = output**2 / row["r"] / (row["x"] ** 2 / (2 * resistance))
    assert efficiency == pytest.approx(row["p_dc_over_p_rf"], rel=1e-7)


@given(crests, loads, saturations, slopes)
@settings(deadline=None)
def test_output_by_the_wright_omega_function(crest, load, saturation, slope):
    # exp(-y) I0 - 1 = y/r has the closed form y + r = ω(ln I0 + r + ln r): referee scipy.
    r, drive = load * saturation / slope, log_i0(crest / slope)
    y = float(wrightomega(drive + r + np.log(r))) - r
    assert detector_output(crest, load, saturation, slope) == pytest.approx(slope * y, rel=1e-8, abs=1e-13 * slope * r)


@given(crests, loads, saturations, slopes)
@settings(deadline=None)
def test_average_current_is_the_loads_and_never_more_power_than_comes_in(crest, load, saturation, slope):
    output = detector_output(crest, load, saturation, slope)
    with mpmath.workdps(30):
        i0 = mpmath.besseli(0, crest / slope)
        average = saturation * (mpmath.exp(-output / slope) * i0 - 1)
    assert float(average) == pytest.approx(output / load, rel=1e-6, abs=1e-9 * saturation)
    resistance = detector_resistance(crest, output / load, saturation, slope)
    assert output**2 / load <= crest**2 / (2 * resistance)
    assert 0 < output < no_load_output(crest, slope) < crest


@given(slopes)
@settings(deadline=None)
def test_both_limits(slope):
    weak, strong = 0.01 * slope, 2000 * slope
    assert no_load_output(weak, slope) == pytest.approx(square_law_output(weak, slope), rel=1e-5)
    assert no_load_output(strong, slope) == pytest.approx(strong - slope / 2 * np.log(4000 * np.pi), rel=1e-6)
    # With a load, weak: the square law shared between diode and load at rest; strong and high: half the load.
    assert detector_output(weak, 3e4, 1e-6, slope) == pytest.approx(
        square_law_output(weak, slope) * 3e4 / (3e4 + slope / 1e-6), rel=1e-4
    )
    output = detector_output(strong, 3e5, 1e-6, slope)
    assert detector_resistance(strong, output / 3e5, 1e-6, slope) == pytest.approx(1.5e5, rel=0.02)


@given(crests, st.floats(3, 6).map(lambda power: 10**power), loads, saturations, slopes)
@settings(deadline=None, max_examples=50)
def test_working_point_obeys_ohms_law(source, source_resistance, load, saturation, slope):
    carrier, output = working_point(source, source_resistance, load, saturation, slope)
    resistance = detector_resistance(carrier, output / load, saturation, slope)
    assert carrier * (1 + source_resistance / resistance) == pytest.approx(source, rel=1e-6)
    assert 0 < carrier < source
    own_q = 100.0
    left = quality_factor_with_detector(own_q, source_resistance, resistance) / own_q
    assert carrier / source == pytest.approx(left, rel=1e-6)


@given(crests, st.floats(3, 6).map(lambda power: 10**power), depths, loads, saturations, slopes)
@settings(deadline=None, max_examples=50)
def test_no_setting_gives_more_than_it_gets(source, source_resistance, depth, load, saturation, slope):
    into, rectified, tone = detector_powers(source, source_resistance, depth, load, saturation, slope)
    available = source**2 / (8 * source_resistance) * (1 + depth**2 / 2)
    assert 0 <= tone <= rectified <= into <= available * (1 + 1e-9)


@given(crests, st.floats(3, 6).map(lambda power: 10**power), st.floats(0.1, 0.99), loads, saturations, slopes)
@settings(deadline=None, max_examples=25)
def test_tone_as_a_finer_average_finds_it(source, source_resistance, depth, load, saturation, slope):
    moments = np.cos(2 * np.pi * np.arange(200) / 200)
    _, output = working_point(source * (1 + depth * moments), source_resistance, load, saturation, slope)
    tone = 2 * np.mean(output * moments)
    assert detector_powers(source, source_resistance, depth, load, saturation, slope)[2] == pytest.approx(
        tone**2 / (2 * load), rel=1e-4
    )


def integrated(emf, depth, tone, cycles):
    """The circuit at its own rate, by scipy's odeint: coil loop, diode, condenser and load, 1 MHz carrier, Q 50."""
    coil, frequency, load, bypass, saturation, slope = 200e-6, 1e6, 20e3, 1e-9, 1e-6, 0.03
    omega = 2 * math.pi * frequency
    condenser, resistance = 1 / (omega**2 * coil), omega * coil / 50

    def change(state, t):
        current, tuned, output = state
        through = saturation * math.expm1((tuned - output) / slope)
        driven = emf * (1 + depth * math.cos(2 * math.pi * tone * t)) * math.cos(omega * t)
        return (
            (driven - resistance * current - tuned) / coil,
            (current - through) / condenser,
            (through - output / load) / bypass,
        )

    time = np.arange(cycles * 32 + 1) / (32 * frequency)
    _, tuned, output = odeint(change, (0.0, 0.0, 0.0), time, rtol=1e-7, atol=1e-10, mxstep=10000).T
    return time, tuned, output


@pytest.mark.parametrize(("emf", "near"), [(1e-3, 0.01), (5e-3, 0.01), (40e-3, 0.03)])
def test_carrier_by_carrier_unmodulated(emf, near):
    # The strongest leaves a Q of only 10, and the puffs of current bend the tuned circuit's wave a little.
    time, tuned, output = integrated(emf, 0.0, 1e3, 250)
    carrier, wanted = working_point(50 * emf, 50 * 2 * np.pi * 1e6 * 200e-6, 20e3, 1e-6, 0.03)
    last = slice(-32 * 20, None)
    assert np.mean(output[last]) == pytest.approx(wanted, rel=0.02)
    assert 2 * abs(np.mean(tuned[last] * np.exp(-2j * np.pi * 1e6 * time[last]))) == pytest.approx(carrier, rel=near)


@pytest.mark.parametrize(("emf", "depth"), [(2e-3, 0.5), (20e-3, 0.8)])
def test_carrier_by_carrier_with_a_tone(emf, depth):
    time, _, output = integrated(emf, depth, 2e3, 750)  # a quarter of a millisecond to settle, then one whole tone
    last = slice(-32 * 500, None)
    turning = np.exp(-2j * np.pi * 2e3 * time[last])
    tone = 2 * abs(np.mean(output[last] * turning))
    _, _, power = detector_powers(50 * emf, 50 * 2 * np.pi * 1e6 * 200e-6, depth, 20e3, 1e-6, 0.03)
    # Sidebands at the edge of the tuned circuit's band, and the bypass, take about 3 %.
    assert tone == pytest.approx(np.sqrt(2 * 20e3 * power), rel=0.05)


def test_arrays_broadcast():
    load = np.array([[1e3], [1e4]])
    assert detector_output(np.array([0.01, 0.1, 1]), load, 1e-6, 0.03).shape == (2, 3)
    assert working_point(np.array([0.01, 0.1, 1]), 1e5, load, 1e-6, 0.03)[1].shape == (2, 3)
