"""The reaction set at its carrier's own rate, integrated by SciPy: what the envelope's equation is held against.

Six states of the windings as in `unit06_reaction.network`, the grid condenser's voltage, the current of the choke that feeds
the anode, and the voltage behind it. The valve is its three-halves law at every moment, the grid its exponential law.
"""
import math
from dataclasses import replace

import numpy as np
from scipy.integrate import odeint

from solutions.unit06_reaction.network import AERIAL, GRID, THROTTLE, TICKLER, rates, state_matrix
from solutions.unit07_oscillation.stage import at_rest, small_signal_set

# The feeding choke, henry. Both are far from ideal in one way: the first delays the anode by 30 µs when the mean current
# changes, the second takes a little of the carrier. As much throttle is added as makes up for that at the carrier.
STEADY_CHOKE, QUICK_CHOKE = 0.8, 0.2
CUT_OFF_LEAK = 1e-7  # siemens, of grid drive: a valve that is cut off lets through next to nothing
CONDENSER, FEED, BEHIND = 6, 7, 8
TOLERANCES = [1e-16, 1e-8, 1e-6, 1e-8, 1e-8, 1e-5, 1e-6, 1e-9, 1e-5]
PER_CYCLE = 16


def rest(windings, stage):
    """The nine states when nothing swings."""
    bias, anode = at_rest(stage)
    state = np.zeros(9)
    state[THROTTLE] = state[BEHIND] = anode
    state[CONDENSER], state[FEED] = -bias, (stage.supply - anode) / stage.load_resistance
    return state


def swinging(windings, stage, frequency, crest, bias, anode):
    """Nine states near those of a swing that goes on: the windings' as for a weak signal, but no more than the anode passes."""
    state = rest(windings, stage)
    poles, shapes = np.linalg.eig(state_matrix(small_signal_set(windings, stage)))
    shape = shapes[:, np.argmin(np.abs(poles - 2j * np.pi * frequency))]
    state[:6] = (crest * shape / shape[GRID]).real
    state[FEED] = (stage.supply - anode) / stage.load_resistance
    state[TICKLER] = min(state[TICKLER], 0.9 * state[FEED])
    state[THROTTLE] += anode
    state[BEHIND], state[CONDENSER] = anode, -bias
    return state


def integrate(windings, stage, frequency, duration, start, emf=None, choke=QUICK_CHOKE, tolerance=1e-6):
    """Times and states, `PER_CYCLE` a cycle of `frequency`; `emf` is a function of time, volt."""
    turned_out = 1 / ((2 * np.pi * frequency) ** 2 * choke)
    parts = replace(
        windings,
        throttle_capacitance=windings.throttle_capacitance + turned_out,
        grid_conductance=0.0,
        transconductance=0.0,
        anode_resistance=1e-9,
    )
    storage, flow = rates(parts)
    matrix = np.zeros((9, 9))
    matrix[:6, :6] = np.linalg.solve(storage, flow)
    into = np.linalg.inv(storage)
    anode_in, grid_in, aerial_in = into[:, TICKLER], into[:, GRID], into[:, AERIAL]

    def slopes(time, state):
        grid = state[GRID] - state[CONDENSER]
        current = state[FEED] - state[TICKLER]
        drive = (current / stage.perveance) ** (2 / 3) if current > 0 else current / CUT_OFF_LEAK
        anode = stage.amplification_factor * (drive - stage.offset - grid)
        taken = stage.zero_current * math.exp(grid / stage.slope_voltage) + (grid - stage.leak_return) / stage.leak_resistance
        change = matrix @ state
        change[:6] += anode_in * anode - grid_in * taken
        if emf is not None:
            change[:6] += aerial_in * emf(time)
        change[CONDENSER] = taken / stage.grid_capacitance
        change[FEED] = (state[BEHIND] - anode) / choke
        change[BEHIND] = ((stage.supply - state[BEHIND]) / stage.load_resistance - state[FEED]) / stage.bypass_capacitance
        return change

    time = np.arange(int(duration * frequency * PER_CYCLE) + 1) / (PER_CYCLE * frequency)
    return time, odeint(slopes, start, time, tfirst=True, rtol=tolerance, atol=TOLERANCES, mxstep=5000)


def smoothed(samples, cycles=8):
    """A running average over some cycles, with a bell-shaped weight."""
    weight = np.hanning(cycles * PER_CYCLE + 1)
    return np.convolve(samples, weight / weight.sum(), mode="same")


def envelope_of(time, states, frequency):
    """Crest and phase of the grid's voltage in a frame that turns at `frequency`, and the grid's mean voltage."""
    turned = 2 * states[:, GRID] * np.exp(-2j * np.pi * frequency * time)
    return smoothed(turned), smoothed(-states[:, CONDENSER])
