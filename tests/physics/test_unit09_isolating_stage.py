"""The isolating stage: its gain and its leaks against the whole network solved at once, its stability against the poles."""

from dataclasses import replace

import mpmath
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit06_reaction.stability import response, retuned
from solutions.unit09_feedback_receivers.isolating_stage import (
    anode_swing,
    carried_gain,
    grid_swing,
    isolation,
    stable_gain,
)

frequencies = st.floats(500e3, 1.6e6)
anode_resistances = st.floats(3.7, 6).map(lambda power: 10**power)
mutuals = st.floats(5e-6, 50e-6)
condensers = st.floats(60e-12, 500e-12)
aerials = st.builds(complex, st.floats(10, 100), st.floats(-1500, 300))


@given(st.floats(600e3, 1.4e6), st.floats(8e3, 1e6), st.floats(10e-6, 40e-6), st.floats(5, 30))
@settings(deadline=None, max_examples=40)
def test_gain_is_that_of_unit_06_s_network_with_the_valve_in_the_aerial_s_place(frequency, resistance, mutual, loss):
    """Seven state equations instead of three lines; the coupled winding moves the tuning, so the set is tuned again."""
    bare = replace(
        SALTMARSH_SET,
        aerial_resistance=resistance,
        aerial_capacitance=1e-6,
        aerial_inductance=60e-6,
        aerial_tuned=mutual,
        tuned_resistance=loss,
        tuned_tickler=1e-12,
        aerial_tickler=0.0,
        grid_conductance=0.0,
        transconductance=0.0,
        grid_anode_capacitance=0.0,
    )
    there = retuned(bare, frequency)
    nearby = np.linspace(0.98, 1.02, 401) * frequency
    found = np.max(np.abs(response(there, nearby)))
    wanted = carried_gain(frequency, 1.0, resistance, 60e-6, mutual, loss, there.tuning_capacitance)
    assert found == pytest.approx(wanted, rel=0.02)


@given(
    frequencies,
    condensers,
    mutuals,
    anode_resistances,
    st.floats(0, 10e-12),
    st.floats(1e-15, 1e-12),
    st.floats(1e3, 1e5),
    aerials,
    st.sampled_from([-1, 1]),
)
@settings(deadline=None, max_examples=40)
def test_both_ways_back_by_a_network_of_nodes(frequency, tuning, mutual, resistance, anode_grid, stray, leak, aerial, sense):
    """Nodes: the aerial's lead, the anode; and the winding's current. All at once, by mpmath, for 1 V on the tuned circuit."""
    s = 2j * mpmath.pi * frequency
    winding, mutual = 60e-6, sense * mutual
    assume(mutual**2 < winding / ((2 * np.pi * frequency) ** 2 * tuning))
    induced = s * mutual * s * tuning
    matrix = mpmath.matrix(
        [
            [1 / mpmath.mpmathify(aerial) + 1 / leak + s * (anode_grid + stray), -s * anode_grid, 0],
            [-s * anode_grid, 1 / resistance + s * anode_grid, -1],
            [0, 1, s * winding],
        ]
    )
    lead, anode, _ = mpmath.lu_solve(matrix, mpmath.matrix([s * stray, 0, induced]))
    alone = anode_swing(1.0, frequency, tuning, mutual, winding, resistance)
    # What the anode loses to the grid by so small a capacitance is left out of the exercise's formula.
    small = np.hypot(1, 2 * np.pi * frequency * winding / resistance) * 2 * np.pi * frequency * anode_grid * resistance
    near = min(small, 2 * np.pi * frequency * anode_grid * 2 * np.pi * frequency * winding) + 1e-9
    assert complex(anode) == pytest.approx(alone, rel=2 * near)
    through = grid_swing(frequency, complex(anode), anode_grid, 1.0, stray, 1 / (1 / aerial + 1 / leak))
    assert complex(lead) == pytest.approx(through, rel=1e-9, abs=1e-15)


def test_isolation_by_two_whole_networks():
    """Without a stage: two coupled circuits. With it: the nodes above. Currents in the aerial compared by hand."""
    frequency, tuning, direct, winding, aerial, leak, stray = 855e3, 171e-12, 20e-6, 25e-6, 30 - 1076j, 10e3, 0.1e-12
    s = 2j * np.pi * frequency
    without = np.abs(s * direct * s * tuning / (aerial + s * winding))
    for resistance, anode_grid in ((10.3e3, 6e-12), (1.2e6, 15e-15)):
        matrix = np.array(
            [
                [1 / aerial + 1 / leak + s * (anode_grid + stray), -s * anode_grid, 0],
                [-s * anode_grid, 1 / resistance + s * anode_grid, -1],
                [0, 1, s * 60e-6],
            ]
        )
        lead, *_ = np.linalg.solve(matrix, [s * stray, 0, s * 40e-6 * s * tuning])
        wanted = 20 * np.log10(without / np.abs(lead / aerial))
        found = isolation(frequency, tuning, (winding, direct), aerial, leak, (60e-6, 40e-6), (resistance, anode_grid), stray)
        assert found == pytest.approx(wanted, abs=0.1)


@pytest.mark.parametrize("anode_grid", [15e-15, 0.5e-12])
def test_stable_gain_by_the_poles_of_the_two_circuits(anode_grid):
    """Two like circuits, the second tuned every way against the first: the stage is silent just below, and sings just above."""
    slope, frequency, coil = 800e-6, 1e6, 200e-6
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * coil)

    def most_growth(resistance):
        found = []
        for first in np.linspace(-2, 2, 41):
            for second in np.linspace(-2, 2, 41):
                width = 1 / (2 * np.pi * frequency * tuning * resistance)
                one, two = tuning * (1 + first * width), tuning * (1 + second * width)
                storage = np.array(
                    [
                        [one + anode_grid, -anode_grid, 0, 0],
                        [-anode_grid, two + anode_grid, 0, 0],
                        [0, 0, coil, 0],
                        [0, 0, 0, coil],
                    ]
                )
                flow = np.array([[-1 / resistance, 0, -1, 0], [-slope, -1 / resistance, 0, -1], [1, 0, 0, 0], [0, 1, 0, 0]])
                found.append(np.linalg.solve(storage, flow))
        return np.max(np.linalg.eigvals(np.array(found)).real)

    resistance = stable_gain(slope, anode_grid, frequency) / slope
    assert most_growth(0.96 * resistance) < 0
    assert most_growth(1.04 * resistance) > 0
