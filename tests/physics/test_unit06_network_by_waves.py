"""The reaction set against scikit-rf, a general library of radio-frequency networks, which reckons in scattered waves."""

from dataclasses import replace

import numpy as np
import pytest
import skrf
from hypothesis import given, settings
from hypothesis import strategies as st
from skrf.circuit import Circuit

from solutions.unit06_reaction.grid_anode_admittance import anode_load, grid_admittance
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit06_reaction.stability import response
from solutions.unit08_two_stations.wave_trap import left_across_the_set, left_in_the_lead, parallel_trap, series_trap
from tests.physics import nodal

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


def valve_of(s):
    """Grid and anode as two ports: the valve and all condensers at them, the tuning condenser apart."""
    between, at_anode = JW * s.grid_anode_capacitance, JW * s.anode_capacitance + 1 / s.anode_resistance
    return of_admittances("valve", [[between, -between], [s.transconductance - between, at_anode + between]])


def volts_on_the_grid(s):
    """Voltage on the grid for a volt in the aerial, from the impedance matrix between the aerial's end and the grid."""
    one, two, three = s.aerial_inductance, s.tuned_inductance, s.tickler_inductance
    # The tuned winding's current is counted towards its condenser, so it leaves the winding's upper end.
    windings = of_impedances(
        "windings",
        [
            [JW * one, -JW * s.aerial_tuned, JW * s.aerial_tickler],
            [-JW * s.aerial_tuned, JW * two + s.tuned_resistance, -JW * s.tuned_tickler],
            [JW * s.aerial_tickler, -JW * s.tuned_tickler, JW * three],
        ],
    )
    aerial = in_series("aerial", s.aerial_resistance + 1 / (JW * s.aerial_capacitance))
    tuning = of_admittances("tuning", [[JW * s.tuning_capacitance + s.grid_conductance]])
    valve = valve_of(s)
    throttle = in_series("throttle", s.tickler_resistance + 1 / (JW * s.throttle_capacitance))
    emf, grid = (Circuit.Port(BAND, name, z0=1000) for name in ("emf", "grid"))
    joined = Circuit(
        [
            [(emf, 0), (aerial, 0)],
            [(aerial, 1), (windings, 0)],
            [(windings, 1), (tuning, 0), (valve, 0), (grid, 0)],
            [(valve, 1), (throttle, 0)],
            [(throttle, 1), (windings, 2)],
        ]
    )
    z = joined.network.z
    return z[:, 1, 0] / z[:, 0, 0]


@settings(max_examples=15, deadline=None)
@given(st.floats(0.0, 0.9), st.floats(0.2, 3.0), st.floats(0.05, 0.95), st.sampled_from([1, -1]))
def test_the_set_answers_as_its_waves_do(transconductance, coupling, throttle, sense):
    """Below the threshold, where there is a steady answer; wound to help or the other way."""
    coldest = replace(
        SALTMARSH_SET,
        aerial_tuned=coupling * SALTMARSH_SET.aerial_tuned,
        tuned_tickler=sense * SALTMARSH_SET.tuned_tickler,
        throttle_capacitance=throttle * 75e-12,
        transconductance=transconductance * SALTMARSH_SET.transconductance,
    )
    assert response(coldest, FREQUENCIES) == pytest.approx(volts_on_the_grid(coldest), rel=1e-9)


@settings(max_examples=25, deadline=None)
@given(
    st.floats(0.0, 3e-3),
    st.floats(5e3, 50e3),
    st.floats(0.5e-12, 10e-12),
    st.floats(2e-12, 500e-12),
    st.floats(0.5, 10),
    st.floats(10e-6, 100e-6),
    st.floats(10e-12, 500e-12),
)
def test_what_the_grid_sees_of_the_anode(transconductance, resistance, between, capacitance, loss, tickler, throttle):
    """The exercise's two functions, by waves, and by the nodal analysis with all other windings far away."""
    s = replace(
        SALTMARSH_SET,
        transconductance=transconductance,
        anode_resistance=resistance,
        grid_anode_capacitance=between,
        anode_capacitance=capacitance,
        tickler_resistance=loss,
        tickler_inductance=tickler,
        throttle_capacitance=throttle,
        tuned_tickler=0.0,
        aerial_tickler=0.0,
        aerial_tuned=0.0,
    )
    load = anode_load(FREQUENCIES, capacitance, loss, tickler, throttle)
    found = grid_admittance(FREQUENCIES, transconductance, resistance, between, load)
    grid = Circuit.Port(BAND, "grid", z0=1000)
    way = of_admittances("way", [[1 / (loss + JW * tickler + 1 / (JW * throttle))]])
    joined = Circuit([[(grid, 0), (valve_of(s), 0)], [(valve_of(s), 1), (way, 0)]])
    assert found == pytest.approx(joined.network.y[:, 0, 0], rel=1e-8)
    for frequency, one in zip(FREQUENCIES, found, strict=True):
        s_of = 2j * np.pi * frequency
        tuned = s_of * s.tuning_capacitance + s.grid_conductance + 1 / (s.tuned_resistance + s_of * s.tuned_inductance)
        assert nodal.grid_admittance(s, frequency) - tuned == pytest.approx(one, rel=1e-7, abs=1e-11)


@given(st.floats(20e-6, 400e-6), st.floats(50e-12, 500e-12), st.floats(1, 30), st.floats(5, 60), st.floats(100, 2000))
@settings(max_examples=15, deadline=None)
def test_traps_leave_what_their_waves_do(inductance, capacitance, resistance, earth, set_resistance):
    aerial, receiver = earth + 1 / (JW * 200e-12), set_resistance + 20e-6 * JW

    def at_the_set(*between):
        emf, ear = (Circuit.Port(BAND, name, z0=1000) for name in ("emf", "ear"))
        load = of_admittances("set", [[1 / receiver]])
        parts = [in_series("aerial", aerial), *between]
        joints = [
            [(emf, 0), (parts[0], 0)],
            *([(one, 1), (other, 0)] for one, other in zip(parts, parts[1:], strict=False)),
            [(parts[-1], 1), (load, 0), (ear, 0)],
        ]
        z = Circuit(joints).network.z
        return z[:, 1, 0] / z[:, 0, 0]

    stopping = parallel_trap(FREQUENCIES, inductance, capacitance, resistance)
    leading = series_trap(FREQUENCIES, inductance, capacitance, resistance)
    across = of_impedances("trap", [[leading, leading], [leading, leading]])
    plain = at_the_set()
    in_the_lead = np.abs(at_the_set(in_series("trap", stopping)) / plain)
    assert left_in_the_lead(stopping, aerial, receiver) == pytest.approx(in_the_lead, rel=1e-6)
    assert left_across_the_set(leading, aerial, receiver) == pytest.approx(np.abs(at_the_set(across) / plain), rel=1e-6)
