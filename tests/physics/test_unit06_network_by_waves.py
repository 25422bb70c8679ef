"""The reaction set against scikit-rf, a general library of radio-frequency networks, which reckons in scattered waves."""
from dataclasses import replace

import numpy as np
import pytest
import skrf
from hypothesis import given, settings
from hypothesis import strategies as st
from skrf.circuit import Circuit

from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit06_reaction.stability import response
from solutions.unit08_two_stations.wave_trap import left_across_the_set, left_in_the_lead, parallel_trap, series_trap

FREQUENCIES = np.array([530e3, 855e3, 1100e3, 1107e3, 1116e3, 1600e3])
BAND = skrf.Frequency.from_f(FREQUENCIES, unit="Hz")
JW = 2j * np.pi * FREQUENCIES
EVERYWHERE = np.ones_like(JW)


def of_impedances(name, rows):
    return skrf.Network(frequency=BAND, z=np.moveaxis(np.array(rows) * EVERYWHERE, -1, 0), z0=1000, name=name)


def of_admittances(name, rows):
    return skrf.Network(frequency=BAND, y=np.moveaxis(np.array(rows) * EVERYWHERE, -1, 0), z0=1000, name=name)


def in_series(name, impedance):
    return of_admittances(name, [[1 / impedance, -1 / impedance], [-1 / impedance, 1 / impedance]])


def volts_on_the_grid(s):
    """Voltage on the grid for a volt in the aerial, from the impedance matrix between the aerial's end and the grid."""
    one, two, three = s.aerial_inductance, s.tuned_inductance, s.tickler_inductance
    # The tuned winding's current is counted towards its condenser, so it leaves the winding's upper end.
    windings = of_impedances("windings", [
        [JW * one, -JW * s.aerial_tuned, JW * s.aerial_tickler],
        [-JW * s.aerial_tuned, JW * two + s.tuned_resistance, -JW * s.tuned_tickler],
        [JW * s.aerial_tickler, -JW * s.tuned_tickler, JW * three]])
    aerial = in_series("aerial", s.aerial_resistance + 1 / (JW * s.aerial_capacitance))
    tuning = of_admittances("tuning", [[JW * s.tuning_capacitance + s.grid_conductance]])
    nothing = 0 * JW
    valve = of_admittances("valve", [[nothing, nothing], [s.transconductance + nothing, 1 / s.anode_resistance + nothing]])
    throttle = in_series("throttle", s.tickler_resistance + 1 / (JW * s.throttle_capacitance))
    emf, grid = (Circuit.Port(BAND, name, z0=1000) for name in ("emf", "grid"))
    joined = Circuit([
        [(emf, 0), (aerial, 0)], [(aerial, 1), (windings, 0)], [(windings, 1), (tuning, 0), (valve, 0), (grid, 0)],
        [(valve, 1), (throttle, 0)], [(throttle, 1), (windings, 2)]])
    z = joined.network.z
    return z[:, 1, 0] / z[:, 0, 0]


@settings(max_examples=15, deadline=None)
@given(st.floats(0.0, 0.9), st.floats(0.2, 3.0), st.floats(0.05, 0.95), st.sampled_from([1, -1]))
def test_the_set_answers_as_its_waves_do(transconductance, coupling, throttle, sense):
    """Below the threshold, where there is a steady answer; wound to help or the other way."""
    coldest = replace(
        SALTMARSH_SET, aerial_tuned=coupling * SALTMARSH_SET.aerial_tuned, tuned_tickler=sense * SALTMARSH_SET.tuned_tickler,
        throttle_capacitance=throttle * 12e-12, transconductance=transconductance * SALTMARSH_SET.transconductance)
    assert response(coldest, FREQUENCIES) == pytest.approx(volts_on_the_grid(coldest), rel=1e-9)


@given(st.floats(20e-6, 400e-6), st.floats(50e-12, 500e-12), st.floats(1, 30), st.floats(5, 60), st.floats(100, 2000))
@settings(max_examples=15, deadline=None)
def test_traps_leave_what_their_waves_do(inductance, capacitance, resistance, earth, set_resistance):
    aerial, receiver = earth + 1 / (JW * 200e-12), set_resistance + 20e-6 * JW

    def at_the_set(*between):
        emf, ear = (Circuit.Port(BAND, name, z0=1000) for name in ("emf", "ear"))
        load = of_admittances("set", [[1 / receiver]])
        parts = [in_series("aerial", aerial), *between]
        joints = [[(emf, 0), (parts[0], 0)], *([(one, 1), (other, 0)] for one, other in zip(parts, parts[1:], strict=False)),
                  [(parts[-1], 1), (load, 0), (ear, 0)]]
        z = Circuit(joints).network.z
        return z[:, 1, 0] / z[:, 0, 0]

    stopping = parallel_trap(FREQUENCIES, inductance, capacitance, resistance)
    leading = series_trap(FREQUENCIES, inductance, capacitance, resistance)
    across = of_impedances("trap", [[leading, leading], [leading, leading]])
    plain = at_the_set()
    assert left_in_the_lead(stopping, aerial, receiver) == pytest.approx(np.abs(at_the_set(in_series("trap", stopping)) / plain), rel=1e-6)
    assert left_across_the_set(leading, aerial, receiver) == pytest.approx(np.abs(at_the_set(across) / plain), rel=1e-6)
