"""The dial against the tabulated plate laws, and against what any coil and condenser must do."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import speed_of_light
from scipy.optimize import brentq

from solutions.unit03_tuned_circuit.tuning_range import dial_angle, dial_frequency, range_covered, tuning_inductance

laws = st.sampled_from(["capacitance", "wavelength", "frequency"])
henries = st.floats(1e-5, 1e-2)
minima = st.floats(5e-12, 30e-12)
maxima = st.floats(100e-12, 1e-9)
strays = st.floats(0, 100e-12)
turns = st.floats(0, 1)


@pytest.mark.parametrize("law, column", [("capacitance", "slc"), ("wavelength", "slw"), ("frequency", "slf")])
def test_dial_table(published, law, column):
    """Plate laws of NBS Circular 74 and Terman 1943 (formulas from memory); dial table recomputed with mpmath."""
    dial = published("coils/variable_capacitor_laws")
    angle, expected = np.radians(dial["angle_deg"]), 1e3 * dial[f"f_{column}_kHz"]
    assert dial_frequency(angle, law, 50e-12, 500e-12, 0.0, 200e-6) == pytest.approx(expected, rel=1e-9)
    found = dial_angle(expected, law, 50e-12, 500e-12, 0.0, 200e-6)
    assert found == pytest.approx(angle, abs=1e-7)
    assert found.min() >= 0 and found.max() <= np.pi  # though the last printed figure lies a trace outside the range


def test_range_and_coil_of_the_dial_table(published):
    frequencies = 1e3 * published("coils/variable_capacitor_laws")["f_slc_kHz"]
    covered = range_covered(200e-6, 50e-12, 500e-12, 0.0)
    assert covered == pytest.approx((frequencies[-1], frequencies[0]), rel=1e-9)
    assert tuning_inductance(frequencies[-1], 500e-12, 0.0) == pytest.approx(200e-6, rel=1e-9)


def test_coil_from_the_wavelength_table(published):
    """NBS Circular 74, table of LC against wavelength: printed column from memory, exact column recomputed."""
    product = published("coils/lc_product_wavelength")
    frequency = speed_of_light / product["wavelength_m"]
    found = tuning_inductance(frequency, 450e-12, 50e-12) * 1e6 * 500e-6
    assert found == pytest.approx(product["LC_recomputed_c_exact"], rel=1e-9)
    assert found == pytest.approx(product["LC_uH_uF_table"], rel=2e-3)  # printed with light at 300 000 km/s


@given(law=laws, minimum=minima, maximum=maxima, stray=strays, inductance=henries, turn=turns)
def test_angle_and_frequency_undo_each_other(law, minimum, maximum, stray, inductance, turn):
    frequency = dial_frequency(turn * np.pi, law, minimum, maximum, stray, inductance)
    assert dial_angle(frequency, law, minimum, maximum, stray, inductance) == pytest.approx(turn * np.pi, abs=1e-6)


@given(law=laws, minimum=minima, maximum=maxima, stray=strays, inductance=henries, turn=st.floats(0.01, 0.99))
def test_angle_against_a_search_along_the_dial(law, minimum, maximum, stray, inductance, turn):
    frequency = np.sqrt(np.prod(range_covered(inductance, minimum, maximum, stray)))
    searched = brentq(
        lambda angle: dial_frequency(angle, law, minimum, maximum, stray, inductance) - frequency, 0, np.pi, xtol=1e-12
    )
    assert dial_angle(frequency, law, minimum, maximum, stray, inductance) == pytest.approx(searched, abs=1e-7)


@given(law=laws, minimum=minima, maximum=maxima, stray=strays, inductance=henries, first=turns, second=turns)
def test_more_capacitance_always_tunes_lower(law, minimum, maximum, stray, inductance, first, second):
    out, further_in = np.sort([first, second]) * np.pi
    higher = dial_frequency(out, law, minimum, maximum, stray, inductance)
    lower = dial_frequency(further_in, law, minimum, maximum, stray, inductance)
    assert lower <= higher * (1 + 1e-12)
    lowest, highest = range_covered(inductance, minimum, maximum, stray)
    assert lowest * (1 - 1e-12) <= lower <= higher <= highest * (1 + 1e-12)


@given(minimum=minima, maximum=maxima, stray=strays, more=st.floats(1e-12, 1e-10), inductance=henries)
def test_strays_narrow_the_range_from_its_upper_end(minimum, maximum, stray, more, inductance):
    lowest, highest = range_covered(inductance, minimum, maximum, stray)
    lowest_then, highest_then = range_covered(inductance, minimum, maximum, stray + more)
    assert highest_then / lowest_then < highest / lowest
    assert highest / highest_then > lowest / lowest_then > 1


@given(minimum=minima, maximum=maxima, stray=strays, inductance=henries, smaller=st.floats(0.1, 10))
def test_another_coil_moves_the_whole_range_by_one_factor(minimum, maximum, stray, inductance, smaller):
    before = np.array(range_covered(inductance, minimum, maximum, stray))
    after = np.array(range_covered(inductance * smaller, minimum, maximum, stray))
    assert after * np.sqrt(smaller) == pytest.approx(before, rel=1e-12)


@given(lowest=st.floats(1e5, 1e7), maximum=maxima, stray=strays)
def test_chosen_coil_reaches_just_what_was_asked(lowest, maximum, stray):
    inductance = tuning_inductance(lowest, maximum, stray)
    assert range_covered(inductance, 10e-12, maximum, stray)[0] == pytest.approx(lowest, rel=1e-12)


@pytest.mark.parametrize("frequency", [500e3, 1600e3, np.array([800e3, 400e3])])
def test_station_off_the_dial_is_refused(frequency):
    with pytest.raises(ValueError, match="does not reach"):
        dial_angle(frequency, "capacitance", 50e-12, 500e-12, 0.0, 200e-6)


def test_angle_and_law_that_do_not_exist_are_refused():
    with pytest.raises(ValueError, match="beyond a stop"):
        dial_frequency(3.2, "capacitance", 50e-12, 500e-12, 0.0, 200e-6)
    with pytest.raises(ValueError, match="no law"):
        dial_frequency(1.0, "logarithm", 50e-12, 500e-12, 0.0, 200e-6)


def test_arrays_broadcast():
    angle, stray = np.linspace(0, np.pi, 4), np.array([[0.0], [20e-12]])
    table = dial_frequency(angle, "wavelength", 15e-12, 365e-12, stray, 200e-6)
    assert table.shape == (2, 4)
    assert dial_angle(table, "wavelength", 15e-12, 365e-12, stray, 200e-6).shape == (2, 4)
