"""Emission and space charge, against CODATA, published constants and Poisson's equation."""

import tomllib

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.constants import Boltzmann, electron_mass, elementary_charge, epsilon_0, h
from scipy.integrate import solve_ivp

from solutions.unit05_valve.emission import VOLTS_PER_KELVIN, emission_current, emission_density, temperature_for
from solutions.unit05_valve.space_charge import (
    CHARGE_TO_MASS,
    PERMITTIVITY,
    anode_density,
    gap_potential,
    space_charge_density,
    transit_time,
)
from tests.physics.conftest import TABLES

# emission.toml: tungsten's constants found in problem sets (4.52 eV from memory), thoriated tungsten's found in the
# abstract of Dushman & Ewald 1927, the oxide's from memory; all current densities recomputed.
EMISSION = tomllib.loads((TABLES / "valve/emission.toml").read_text())

temperatures = st.floats(600, 3000)
constants = st.floats(1e2, 1.2e6)
work_functions = st.floats(0.8, 5)
voltages = st.floats(0.1, 1000)
gaps = st.floats(1e-4, 1e-2)


def test_constants_of_codata():
    # CODATA by way of scipy.constants: found.
    assert pytest.approx(Boltzmann / elementary_charge, rel=1e-9) == VOLTS_PER_KELVIN
    assert pytest.approx(elementary_charge / electron_mass, rel=1e-8) == CHARGE_TO_MASS
    assert pytest.approx(epsilon_0, rel=1e-9) == PERMITTIVITY
    ideal = 4 * np.pi * electron_mass * Boltzmann**2 * elementary_charge / h**3
    assert ideal == pytest.approx(EMISSION["richardson"]["a0_a_per_m2_k2"], rel=1e-8)


@pytest.mark.parametrize("cathode", EMISSION["cathode"], ids=lambda cathode: cathode["name"])
def test_three_cathodes(cathode):
    work_function = cathode["b_k"] * VOLTS_PER_KELVIN if "b_k" in cathode else cathode["phi_ev"]
    surface = cathode["a_a_per_m2_k2"], work_function
    assert emission_density(cathode["t_k"], *surface) == pytest.approx(cathode["j_a_per_m2"], rel=2e-5)
    assert temperature_for(cathode["j_a_per_m2"], *surface) == pytest.approx(cathode["t_k"], rel=1e-5)


def test_problem_of_two_filaments():
    # H. C. Verma, Concepts of Physics (inputs found on answer sites; answer recomputed): 2000 K, 100 mA thoriated.
    check = EMISSION["contact_check"]
    plain = emission_density(2000, check["a_w"], check["phi_w_ev"])
    thoriated = emission_density(2000, check["a_th"], check["phi_th_ev"])
    assert 1e3 * check["thoriated_ma"] * plain / thoriated == pytest.approx(check["tungsten_ua"], rel=1e-5)


@given(temperatures, constants, work_functions, st.floats(1.001, 1.5))
@settings(deadline=None)
def test_heat_always_helps(temperature, constant, work_function, times):
    hotter = emission_density(times * temperature, constant, work_function)
    assert hotter > emission_density(temperature, constant, work_function)
    # and the exponential makes it grow faster than the fourth power of heat radiated, wherever φ > 2 kT/e
    assume(work_function > 2 * VOLTS_PER_KELVIN * temperature * times)
    assert hotter > times**4 * emission_density(temperature, constant, work_function) * (1 - 1e-9)


@given(st.floats(1e-3, 1e5), constants, work_functions)
@settings(deadline=None)
def test_temperature_gives_the_current_back(density, constant, work_function):
    assume(emission_density(300, constant, work_function) < density < emission_density(4000, constant, work_function))
    found = temperature_for(density, constant, work_function)
    assert emission_density(found, constant, work_function) == pytest.approx(density, rel=1e-6)


def test_current_of_a_filament_and_arrays():
    density = emission_density(2500, 6e5, 4.52)
    assert emission_current(2500, 6e5, 4.52, 0.05, 100e-6) == pytest.approx(density * np.pi * 100e-6 * 0.05)
    assert temperature_for(np.array([1.0, 100.0]), 6e5, np.array([[4.5], [4.6]])).shape == (2, 2)


@pytest.mark.parametrize("density", [1e12, np.array([1.0, 1e12])])
def test_more_than_any_temperature_gives_is_refused(density):
    with pytest.raises(ValueError, match="4000 K"):
        temperature_for(density, 100.0, 1.5)


def test_child_and_langmuirs_constant():
    # C. D. Child 1911, I. Langmuir 1913: recomputed from CODATA; 2.3340 found on a page that cites CODATA 2006.
    row = EMISSION["child_langmuir"]
    assert space_charge_density(1.0, 1.0) == pytest.approx(row["constant_a_per_v1p5"], rel=1e-8)
    assert space_charge_density(row["example_v"], row["example_d_m"]) == pytest.approx(row["example_j_a_per_m2"], rel=1e-8)


@given(voltages, gaps)
@settings(deadline=None)
def test_poissons_equation_by_an_independent_solver(voltage, gap):
    """From rest at a level cathode the integrated potential climbs to the anode's voltage exactly at the anode."""
    density = space_charge_density(voltage, gap)

    def poisson(x, state):
        potential, slope = state
        return slope, density / (epsilon_0 * np.sqrt(2 * CHARGE_TO_MASS * potential))

    start = 1e-3 * gap  # a little way out, where the field is no longer nothing
    first = gap_potential(start, voltage, gap)
    climbed = solve_ivp(
        poisson, (start, gap), (first, 4 / 3 * first / start), rtol=1e-9, atol=1e-12 * voltage, t_eval=[gap / 2, gap]
    )
    assert climbed.y[0] == pytest.approx(gap_potential(np.array([gap / 2, gap]), voltage, gap), rel=1e-6)


@given(voltages, gaps)
@settings(deadline=None)
def test_electrons_arrive_after_the_transit_time(voltage, gap):
    # x grows with the cube of the time, and the field with the time: m x'' = e V'(x) held along the way.
    time = transit_time(voltage, gap) * np.linspace(0.1, 1, 10)
    place = gap * np.linspace(0.1, 1, 10) ** 3
    acceleration = 6 * gap * time / transit_time(voltage, gap) ** 3
    field = 4 / 3 * gap_potential(place, voltage, gap) / place
    assert acceleration == pytest.approx(CHARGE_TO_MASS * field, rel=1e-9)


@given(st.floats(-100, 1000), gaps, st.floats(0, 1e5), st.floats(0, 100))
@settings(deadline=None)
def test_no_more_than_either_limit_and_never_less_for_more_pull(voltage, gap, emission, more):
    density = anode_density(voltage, gap, emission)
    assert 0 <= density <= emission
    assert density <= anode_density(voltage + more, gap, emission)
    if voltage <= 0:
        assert density == 0
