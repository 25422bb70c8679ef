"""Ring-down against an independent integration of the circuit's equations, and against the energy it may not gain."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from solutions.unit03_tuned_circuit.ring_down import cycles_to_fall, ring_amplitude, ring_energy, ring_voltage

INDUCTANCE, CAPACITANCE = 200e-6, 126.651479553e-12  # henry, farad: 1 MHz, chosen here
RESONANCE = 1 / (2 * np.pi * np.sqrt(INDUCTANCE * CAPACITANCE))

q_factors = st.floats(0.6, 1e4)
hertz = st.floats(1e4, 1e8)
cycles = st.floats(0, 1000)


def integrated(q, time):
    """Voltage and current of the charged condenser let go, by SciPy's eighth-order Runge-Kutta method."""
    resistance = 2 * np.pi * RESONANCE * INDUCTANCE / q

    def slopes(_, state):
        voltage, current = state
        return [-current / CAPACITANCE, (voltage - resistance * current) / INDUCTANCE]

    solved = solve_ivp(slopes, (0, time[-1]), [1.0, 0.0], "DOP853", t_eval=time, rtol=1e-11, atol=1e-14)
    return solved.y


@pytest.mark.parametrize("q", [0.501, 0.7, 2.0, 30.0, 200.0])
def test_voltage_against_integrated_circuit_equations(q):
    time = np.linspace(0, 8, 801) / RESONANCE
    voltage, _ = integrated(q, time)
    assert ring_voltage(time, RESONANCE, q) == pytest.approx(voltage, abs=1e-8)


@pytest.mark.parametrize("q", [5.0, 30.0, 200.0])
def test_energy_against_integrated_circuit_equations(q):
    time = np.linspace(0, 8, 801) / RESONANCE
    voltage, current = integrated(q, time)
    energy = voltage**2 + INDUCTANCE / CAPACITANCE * current**2
    # The loss comes in two gulps a cycle, so the true energy ripples about the average by some 1/(2Q).
    assert energy / ring_energy(time, RESONANCE, q) == pytest.approx(1, abs=0.6 / q)
    whole_cycles = np.arange(0, 801, 100)
    slowed = time[whole_cycles] / np.sqrt(1 - 1 / (4 * q**2))
    voltage, current = integrated(q, slowed)
    exact = voltage**2 + INDUCTANCE / CAPACITANCE * current**2
    assert ring_energy(slowed, RESONANCE, q) == pytest.approx(exact, rel=1e-8)


@given(frequency=hertz, q=q_factors, first=cycles, second=cycles)
def test_energy_only_falls(frequency, q, first, second):
    early, late = np.sort([first, second]) / frequency
    assert 0 <= ring_energy(late, frequency, q) <= ring_energy(early, frequency, q) <= 1


@given(frequency=hertz, q=q_factors, first=cycles, second=cycles)
def test_waiting_twice_is_waiting_longer(frequency, q, first, second):
    first, second = first / frequency, second / frequency
    product = ring_amplitude(first, frequency, q) * ring_amplitude(second, frequency, q)
    assert ring_amplitude(first + second, frequency, q) == pytest.approx(product, rel=1e-9)


@given(frequency=hertz, q=q_factors)
def test_q_over_pi_cycles_to_one_over_e(frequency, q):
    count = cycles_to_fall(q, np.exp(-1))
    assert count == pytest.approx(q / np.pi, rel=1e-12)
    assert ring_amplitude(count / frequency, frequency, q) == pytest.approx(np.exp(-1), rel=1e-9)


@given(q=q_factors, fraction=st.floats(1e-9, 1))
def test_cycles_undo_the_amplitude(q, fraction):
    assert ring_amplitude(cycles_to_fall(q, fraction) / 1e6, 1e6, q) == pytest.approx(fraction, rel=1e-9)


@given(frequency=hertz, q=st.floats(20, 1e4))
def test_energy_lost_in_the_first_radian_is_one_part_in_q(frequency, q):
    lost = 1 - ring_energy(1 / (2 * np.pi * frequency), frequency, q)
    assert lost == pytest.approx(1 / q, rel=1 / q)


@given(frequency=hertz, q=q_factors, since=cycles)
def test_voltage_stays_under_its_envelope(frequency, q, since):
    envelope = ring_amplitude(since / frequency, frequency, q) / np.sqrt(1 - 1 / (4 * q**2))
    assert abs(ring_voltage(since / frequency, frequency, q)) <= envelope * (1 + 1e-12)


def test_no_time_is_needed_to_stay_whole():
    assert cycles_to_fall(100, 1.0) == 0


@pytest.mark.parametrize("fraction", [0, -0.1, 1.01, np.array([0.5, 2.0])])
def test_fraction_that_cannot_be_reached_is_refused(fraction):
    with pytest.raises(ValueError, match="fraction must be"):
        cycles_to_fall(100, fraction)


@pytest.mark.parametrize("q", [0.5, 0.1, np.array([10.0, 0.2])])
def test_circuit_too_lossy_to_ring_is_refused(q):
    with pytest.raises(ValueError, match="quality_factor must be"):
        ring_voltage(1e-6, 1e6, q)


def test_arrays_broadcast():
    time = np.linspace(0, 1e-4, 5)
    table = ring_voltage(time, 1e6, np.array([[30.0], [200.0]]))
    assert table.shape == (2, 5)
    assert np.all(table[:, 0] == 1)
