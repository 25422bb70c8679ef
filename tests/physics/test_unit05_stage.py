"""Load line and stage: against a root finder and the circuit solved mesh by mesh."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from solutions.unit05_valve.load_line import grid_voltage_for, load_line_current, operating_point, power_shares
from solutions.unit05_valve.stage_gain import band_edges, input_capacitance, stage_gain
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance, triode_current

supplies = st.floats(20, 400)
loads = st.floats(1e3, 1e6)
grids = st.floats(-30, 0)
laws = st.tuples(st.floats(3, 100), st.floats(1e-5, 3e-3), st.floats(-2, 2))


def settles(supply, load, grid, law):
    return triode_current(0.0, grid, *law) * load < supply


@given(supplies, loads, grids, laws)
@settings(deadline=None)
def test_operating_point_as_a_root_finder_finds_it(supply, load, grid, law):
    assume(settles(supply, load, grid, law))
    voltage, current = operating_point(supply, load, grid, *law)
    root = brentq(lambda v: triode_current(v, grid, *law) - load_line_current(v, supply, load), 0, supply, xtol=1e-11)
    assert voltage == pytest.approx(root, abs=1e-8)
    assert current == pytest.approx(triode_current(root, grid, *law), rel=1e-6, abs=1e-12)


@given(supplies, loads, grids, laws)
@settings(deadline=None)
def test_battery_pays_for_both(supply, load, grid, law):
    assume(settles(supply, load, grid, law))
    battery, in_load, in_valve = power_shares(supply, load, grid, *law)
    assert in_load + in_valve == pytest.approx(battery, rel=1e-9, abs=1e-15)
    assert 0 <= in_valve <= supply**2 / (4 * load) * (1 + 1e-9)


@given(supplies, loads, st.floats(0.01, 0.99), laws)
@settings(deadline=None)
def test_wanted_current_is_found_again(supply, load, part, law):
    wanted = part * supply / load
    grid = grid_voltage_for(wanted, supply, load, *law)
    assert triode_current(supply - wanted * load, grid, *law) == pytest.approx(wanted, rel=1e-9)
    assume(settles(supply, load, grid, law))
    assert operating_point(supply, load, grid, *law)[1] == pytest.approx(wanted, rel=1e-6)


@given(st.floats(60, 300), st.floats(5e3, 2e5), st.floats(0.1, 0.9), laws)
@settings(deadline=None)
def test_gain_is_the_slope_of_the_operating_point(supply, load, part, law):
    """A small step of the grid, the operating point solved anew each time, against μR/(R + ra) there."""
    grid = grid_voltage_for(part * supply / load, supply, load, *law)
    assume(settles(supply, load, grid + 0.01, law))
    voltage, _ = operating_point(supply, load, grid, *law)
    pull = grid + voltage / law[0] + law[2]
    assume(pull > 0.1)
    step = 1e-4 * pull
    high, low = (operating_point(supply, load, grid + way * step, *law)[0] for way in (-1, 1))
    gain = stage_gain(law[0], anode_resistance(voltage, grid, *law), load)
    assert (high - low) / (2 * step) == pytest.approx(gain, rel=1e-3)
    slope = mutual_conductance(voltage, grid, *law)
    assert gain == pytest.approx(slope / (1 / load + slope / law[0]), rel=1e-9)


@given(st.floats(3, 100), st.floats(500, 1e5), loads)
@settings(deadline=None)
def test_gain_never_reaches_mu(factor, resistance, load):
    assert 0 < stage_gain(factor, resistance, load) < factor
    assert stage_gain(factor, resistance, resistance) == pytest.approx(factor / 2)


def solved_stage(frequency, factor, resistance, load, leak, coupling, shunt):
    """Volts on the next grid from a volt on this one, by the two nodes of the circuit."""
    omega = 2 * np.pi * frequency
    through = 1j * omega * coupling
    nodes = np.array([[1 / resistance + 1 / load + through, -through], [-through, through + 1 / leak + 1j * omega * shunt]])
    return np.abs(np.linalg.solve(nodes, [factor / resistance, 0])[1])


@given(st.floats(2e3, 1e5), st.floats(1e4, 3e5), st.floats(2e5, 5e6), st.floats(5e-9, 5e-7), st.floats(1e-11, 5e-10))
@settings(deadline=None)
def test_edges_of_the_band_in_the_solved_circuit(resistance, load, leak, coupling, shunt):
    lowest, highest = band_edges(resistance, load, leak, coupling, shunt)
    assume(highest > 1e3 * lowest and coupling > 300 * shunt)
    stage = (10.0, resistance, load, leak, coupling, shunt)
    middle = solved_stage(np.sqrt(lowest * highest), *stage)
    # The coupling condenser is so large that it passes the middle freely: the gain there is that into load and leak.
    assert middle == pytest.approx(stage_gain(10.0, resistance, load * leak / (load + leak)), rel=0.03)
    assert solved_stage(lowest, *stage) == pytest.approx(middle / np.sqrt(2), rel=0.03)
    assert solved_stage(highest, *stage) == pytest.approx(middle / np.sqrt(2), rel=0.03)


@given(st.floats(1e-12, 1e-11), st.floats(1e-12, 1e-11), st.floats(0, 80), st.floats(1e3, 1e5))
@settings(deadline=None)
def test_miller_in_the_solved_circuit(to_filament, to_anode, gain, frequency):
    # The current that a volt drives into both capacitances, the anode standing at minus gain volts.
    omega = 2 * np.pi * frequency
    current = 1j * omega * to_filament * 1 + 1j * omega * to_anode * (1 - -gain)
    assert omega * input_capacitance(to_filament, to_anode, gain) == pytest.approx(abs(current), rel=1e-12)


@pytest.mark.parametrize("current", [10e-3, np.array([1e-3, 9.1e-3])])
def test_more_than_the_load_passes_is_refused(current):
    with pytest.raises(ValueError, match="cannot pass so much"):
        grid_voltage_for(current, 90.0, 10e3, 9.3, 2.67e-4, -0.67)


def test_no_crossing_is_refused_and_arrays_broadcast():
    with pytest.raises(ValueError, match="below the filament"):
        operating_point(90.0, 1e6, 5.0, 9.3, 2.67e-4, -0.67)
    voltage, current = operating_point(np.array([[90.0], [180.0]]), 1e4, np.array([-1.0, -3.0, -5.0]), 9.3, 2.67e-4, -0.67)
    assert voltage.shape == current.shape == (2, 3)
