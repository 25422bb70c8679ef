"""Loudness, against the tabulated threshold of hearing."""

import tomllib

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit04_crystal_set.phone_loudness import (
    THRESHOLD_FREQUENCY,
    THRESHOLD_LEVEL,
    hearing_threshold,
    least_audible_power,
    sound_pressure,
    sound_pressure_level,
)
from tests.physics.conftest import TABLES

# Worked from the ISO 226:2003 threshold at 1 kHz (found); the telephones' sensitivities are from memory, low confidence.
PHONES = tomllib.loads((TABLES / "signal/headphones.toml").read_text())["least_audible"]
sensitivities = st.floats(90, 130)
audible = st.floats(20, 12500)


def test_threshold_is_the_published_table(published):
    # ISO 226:2003, Table 1, column T_f (values shared with ISO 389-7): found.
    row = published("signal/hearing_threshold")
    assert np.array_equal(THRESHOLD_FREQUENCY, row["f_hz"])
    assert np.array_equal(THRESHOLD_LEVEL, row["t_f_db"])
    assert hearing_threshold(row["f_hz"]) == pytest.approx(row["t_f_db"], abs=1e-9)
    assert sound_pressure(row["t_f_db"]) == pytest.approx(row["p_upa"] * 1e-6, abs=6e-10)


@pytest.mark.parametrize("sensitivity", [100, 115])
def test_least_audible_power_as_printed(sensitivity):
    assert least_audible_power(1000, sensitivity) == pytest.approx(PHONES[f"power_w_at_S_{sensitivity}"], rel=3e-4)


def test_quiet_room():
    power = PHONES["practical_power_w_at_S_105"]
    assert sound_pressure_level(power, 105) == pytest.approx(PHONES["practical_room_level_db_spl"], abs=1e-3)
    assert np.sqrt(power * 15e3) == pytest.approx(PHONES["practical_voltage_v_rms_15kohm"], rel=1e-3)


@given(audible, sensitivities)
def test_least_power_is_heard_and_less_is_not(frequency, sensitivity):
    power = least_audible_power(frequency, sensitivity)
    assert sound_pressure_level(power, sensitivity) == pytest.approx(hearing_threshold(frequency), abs=1e-9)
    assert sound_pressure_level(power / 2, sensitivity) < hearing_threshold(frequency)


@given(st.floats(-20, 120), st.floats(0.1, 40))
def test_pressure_squared_goes_as_power(level, more):
    times = (sound_pressure(level + more) / sound_pressure(level)) ** 2
    assert sound_pressure_level(1e-6 * times, 105) - sound_pressure_level(1e-6, 105) == pytest.approx(more)


@given(st.integers(0, len(THRESHOLD_FREQUENCY) - 2), st.floats(0, 1))
def test_threshold_lies_between_its_neighbours(place, part):
    low, high = THRESHOLD_FREQUENCY[place : place + 2]
    level = hearing_threshold(low ** (1 - part) * high**part)
    ends = sorted(THRESHOLD_LEVEL[place : place + 2])
    assert ends[0] - 1e-9 <= level <= ends[1] + 1e-9


@pytest.mark.parametrize("frequency", [19.9, 13e3, np.array([1e3, 2e4])])
def test_outside_the_table_is_refused(frequency):
    with pytest.raises(ValueError, match="20 Hz to 12500 Hz"):
        least_audible_power(frequency, 105)
