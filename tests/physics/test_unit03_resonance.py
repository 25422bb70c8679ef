"""Resonance against recomputed handbook figures, and the formula against what it must do."""

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import speed_of_light
from scipy.optimize import brentq

from solutions.unit03_tuned_circuit.resonance import resonance_condition, resonant_frequency

henries = st.floats(1e-6, 1e-2)
farads = st.floats(1e-12, 1e-8)
factors = st.floats(0.01, 100)

COIL, CONDENSER = sympy.symbols("L C", positive=True)
FORMULA = resonance_condition(COIL, CONDENSER)


def test_frequency_and_wavelength_table(published):
    """f = 1/(2π sqrt(LC)) for eight coils and condensers chosen here; recomputed with mpmath to 12 figures."""
    rows = published("coils/resonance_lc")
    found = resonant_frequency(rows["L_uH"] * 1e-6, rows["C_pF"] * 1e-12)
    assert found == pytest.approx(rows["f_kHz"] * 1e3, rel=1e-11)
    assert speed_of_light / found == pytest.approx(rows["wavelength_m"], rel=1e-11)


def test_product_against_wavelength_table(published):
    """NBS Circular 74, table of LC against wavelength: printed column from memory, with light at 300 000 km/s."""
    rows = published("coils/lc_product_wavelength")
    exact = resonant_frequency(1e-6, rows["LC_recomputed_c_exact"] * 1e-6)
    assert speed_of_light / exact == pytest.approx(rows["wavelength_m"], rel=1e-9)
    printed = resonant_frequency(1e-6, rows["LC_uH_uF_table"] * 1e-6)
    assert 3e8 / printed == pytest.approx(rows["wavelength_m"], rel=2.5e-4)


@given(inductance=henries, capacitance=farads)
def test_the_two_reactances_cross_there_and_nowhere_else(inductance, capacitance):
    found = resonant_frequency(inductance, capacitance)

    def difference(frequency):
        return 2 * np.pi * frequency * inductance - 1 / (2 * np.pi * frequency * capacitance)

    assert brentq(difference, found / 10, found * 10, xtol=1e-9 * found, rtol=1e-12) == pytest.approx(found, rel=1e-8)


@given(inductance=henries, capacitance=farads, factor=factors)
def test_coil_and_condenser_scale_against_each_other(inductance, capacitance, factor):
    found = resonant_frequency(inductance, capacitance)
    assert resonant_frequency(factor * inductance, capacitance / factor) == pytest.approx(found, rel=1e-12)
    assert resonant_frequency(inductance, factor**2 * capacitance) == pytest.approx(found / factor, rel=1e-12)


@given(inductance=henries, capacitance=farads)
def test_formula_and_number_say_the_same(inductance, capacitance):
    angular = float(FORMULA.subs({COIL: inductance, CONDENSER: capacitance}))
    assert angular == pytest.approx(2 * np.pi * resonant_frequency(inductance, capacitance), rel=1e-12)


def test_formula_makes_the_reactances_equal():
    assert FORMULA.free_symbols == {COIL, CONDENSER}
    assert sympy.simplify(FORMULA * COIL - 1 / (FORMULA * CONDENSER)) == 0


def test_arrays_broadcast():
    table = resonant_frequency(np.array([[1e-4], [2e-4]]), np.array([1e-10, 2e-10, 5e-10]))
    assert table.shape == (2, 3)
    assert table[1, 0] == table[0, 1]
