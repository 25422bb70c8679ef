"""Variable condenser: its laws, the plates that give them, and gangs together."""

import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants, integrate

from solutions.unit02_coil_and_condenser.vane_capacitance import (
    EPSILON_0,
    gangs_in_parallel,
    gangs_in_series,
    plate_capacitance,
    power_of,
    vane_capacitance,
    vane_radius,
)

COILS = Path(__file__).parents[1] / "published" / "coils"
COLUMNS = {"capacitance": "slc", "wavelength": "slw", "frequency": "slf"}

laws = st.sampled_from(sorted(COLUMNS))
angles = st.floats(0, np.pi)
minima, ranges = st.floats(5e-12, 5e-11), st.floats(2, 20)
capacitances = st.floats(1e-12, 1e-9)


@pytest.mark.parametrize("law", COLUMNS)
def test_dial_table(law, published):
    """The plate laws from memory of NBS Circular 74 and Terman, each an elementary derivation; figures recomputed."""
    dial = published("coils/variable_capacitor_laws")
    picofarads = 1e12 * vane_capacitance(np.radians(dial["angle_deg"]), law, 50e-12, 500e-12)
    assert picofarads == pytest.approx(dial[f"C_{COLUMNS[law]}_pF"], rel=1e-9)


@given(angles, minima, ranges)
def test_each_law_is_even_in_what_it_names(angle, minimum, ratio):
    maximum, part = ratio * minimum, angle / np.pi
    even = {"capacitance": lambda c: c, "wavelength": np.sqrt, "frequency": lambda c: 1 / np.sqrt(c)}
    for law, scale in even.items():
        along = scale(minimum) + (scale(maximum) - scale(minimum)) * part
        assert scale(vane_capacitance(angle, law, minimum, maximum)) == pytest.approx(along, rel=1e-12)


@given(laws, minima, ranges, st.floats(0, 3.1))
def test_capacitance_rises_from_plates_out_to_plates_in(law, minimum, ratio, angle):
    maximum = ratio * minimum
    assert vane_capacitance(0.0, law, minimum, maximum) == pytest.approx(minimum)
    assert vane_capacitance(np.pi, law, minimum, maximum) == pytest.approx(maximum)
    assert vane_capacitance(angle, law, minimum, maximum) < vane_capacitance(angle + 0.02, law, minimum, maximum)


@given(st.floats(0.1, 3.0), minima, ranges)
def test_half_circles_run_ahead_of_the_shaped_plates(angle, minimum, ratio):
    half_circle, square_law, even_frequency = (
        vane_capacitance(angle, law, minimum, ratio * minimum) for law in ("capacitance", "wavelength", "frequency")
    )
    assert half_circle > square_law > even_frequency


@pytest.mark.parametrize("angle", [-0.01, 3.15, np.array([1.0, 180.0])])
def test_beyond_the_stops_is_refused(angle):
    with pytest.raises(ValueError, match="beyond a stop"):
        vane_capacitance(angle, "capacitance", 10e-12, 365e-12)


def test_an_unknown_law_is_refused_by_name():
    with pytest.raises(ValueError, match="no law 'cosine'.*capacitance, wavelength, frequency"):
        power_of("cosine")
    with pytest.raises(ValueError, match="no law"):
        vane_radius(1.0, "square", 10e-12, 365e-12, 19, 0.4e-3, 8e-3)


@given(laws, angles, minima, ranges)
def test_plates_of_the_outline_have_the_capacitance_of_the_law(law, angle, minimum, ratio):
    """Area that has entered, between outline and cut-out, makes up the capacitance above the minimum."""
    plates, gap, cut_out = 19, 0.4e-3, 8e-3

    def area(at):
        return (vane_radius(at, law, minimum, ratio * minimum, plates, gap, cut_out) ** 2 - cut_out**2) / 2

    entered, _ = integrate.quad(area, 0, angle, epsrel=1e-10)
    built = minimum + plate_capacitance(plates, entered, gap)
    assert built == pytest.approx(vane_capacitance(angle, law, minimum, ratio * minimum), rel=1e-8)


def test_half_circle_plates_have_one_radius():
    radius = vane_radius(np.linspace(0, np.pi, 7), "capacitance", 10e-12, 365e-12, 19, 0.4e-3, 8e-3)
    assert np.ptp(radius) < 1e-12 * radius[0]


def test_plates_against_the_si():
    """CODATA 2018 (recalled), and whatever set scipy carries, which differs by less than 2 in 10⁹."""
    assert tomllib.loads((COILS / "variable_capacitor_laws.toml").read_text())["eps0_F_per_m"] == EPSILON_0
    assert pytest.approx(constants.epsilon_0, rel=2e-9) == EPSILON_0
    assert plate_capacitance(2, 1.0, 1e-3) == pytest.approx(8.854e-9, rel=1e-4)
    assert plate_capacitance(3, 1.0, 1e-3) == pytest.approx(2 * 8.854e-9, rel=1e-4)


@given(capacitances, capacitances)
def test_series_below_the_smaller_parallel_above_the_larger(first, second):
    series, parallel = gangs_in_series(first, second), gangs_in_parallel(first, second)
    assert series < min(first, second) <= max(first, second) < parallel
    assert series * parallel == pytest.approx(first * second)
    assert 4 * series <= parallel * (1 + 1e-12)
    assert gangs_in_series(first, first) == pytest.approx(first / 2)
