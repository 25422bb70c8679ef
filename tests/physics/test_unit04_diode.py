"""The diode's law, against CODATA and a maker's data sheets."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import Boltzmann, elementary_charge
from scipy.integrate import quad

from solutions.unit04_crystal_set.diode_current import VOLTS_PER_KELVIN, diode_current, slope_resistance, slope_voltage

voltages = st.floats(-1, 0.5)
saturations = st.floats(1e-9, 1e-4)
slopes = st.floats(0.02, 0.06)


def test_constant_of_codata():
    # CODATA by way of scipy.constants: found.
    assert pytest.approx(Boltzmann / elementary_charge, rel=1e-9) == VOLTS_PER_KELVIN


@pytest.mark.parametrize(("celsius", "millivolts"), [(20, 25.2617), (25, 25.6926), (26.85, 25.8520)])
def test_thermal_voltage_as_printed(celsius, millivolts):
    # diodes.csv, header: recomputed from CODATA.
    assert slope_voltage(1, celsius + 273.15) == pytest.approx(millivolts * 1e-3, abs=5e-8)


def test_resistance_at_rest_of_real_diodes(published):
    # HP/Agilent/Avago Schottky data sheets HSMS-28xx: Is and n found; the resistance recomputed with CODATA's k/e.
    row = published("signal/diodes")
    maker = row["how"] == "found"
    assert maker.sum() == 5
    saturation, ideality, resistance = (row[name][maker].astype(float) for name in ("is_a", "n", "r0_ohm"))
    at_rest = slope_resistance(0.0, saturation, slope_voltage(ideality, 298.15))
    assert at_rest == pytest.approx(resistance, rel=1e-5)


def test_slope_as_the_maker_prints_it():
    # The same sheets: R = 8.33e-5 n T/(I + Is), found; its rounded constant is 3.3 % below CODATA's.
    n = slope_voltage(1.06, 298.15)
    voltage = np.linspace(-0.1, 0.2, 31)
    printed = 8.33e-5 * 1.06 * 298.15 / (diode_current(voltage, 3e-6, n) + 3e-6)
    assert slope_resistance(voltage, 3e-6, n) / printed == pytest.approx(1.0345, abs=1e-4)


@given(voltages, saturations, slopes)
def test_passes_through_zero_and_never_makes_power(voltage, saturation, slope):
    assert diode_current(0.0, saturation, slope) == 0
    assert voltage * diode_current(voltage, saturation, slope) >= 0
    assert diode_current(voltage, saturation, slope) >= -saturation


@given(voltages, st.floats(0.001, 0.2), saturations, slopes)
def test_slope_resistance_is_the_slope_of_the_curve(voltage, step, saturation, slope):
    climbed, _ = quad(lambda v: 1 / slope_resistance(v, saturation, slope), voltage, voltage + step)
    rise = diode_current(voltage + step, saturation, slope) - diode_current(voltage, saturation, slope)
    assert climbed == pytest.approx(rise, rel=1e-6)
