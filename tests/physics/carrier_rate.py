"""The reaction set at its carrier's own rate, integrated by SciPy: what the envelope's equation is held against.

The whole circuit, each condenser where it stands: three coupled windings, the tuned circuit's top, the grid behind its
condenser, the anode, the choke that feeds it and the voltage behind that. The valve is its three-halves law at every
moment, the grid its exponential law. Nothing is averaged and nothing is reduced to a mode.
"""

import numpy as np
from scipy.integrate import odeint

from solutions.unit06_reaction.network import CHOKE
from solutions.unit07_oscillation.compiling import njit
from solutions.unit07_oscillation.stage import at_rest, small_signal_set

CHARGE, AERIAL, TOP, TUNED, TICKLER, THROTTLE, ANODE, GRID, FEED, BEHIND = range(10)
TOLERANCES = np.array([1e-16, 1e-8, 1e-6, 1e-8, 1e-8, 1e-5, 1e-5, 1e-6, 1e-9, 1e-5])
PER_CYCLE = 16


def rest(windings, stage):
    """The ten states when nothing swings."""
    bias, anode = at_rest(stage)
    state = np.zeros(10)
    state[[THROTTLE, ANODE, BEHIND]] = anode
    state[GRID], state[FEED] = bias, (stage.supply - anode) / stage.load_resistance
    return state


def capacitances(windings, stage, frequency, choke):
    """Of the nodes top, grid and anode. The choke's inductance, which the model leaves out, is tuned out at the carrier."""
    node = stage.grid_capacitance + stage.grid_anode + stage.grid_filament
    top = windings.tuning_capacitance - stage.grid_capacitance * stage.grid_filament / node
    anode = windings.anode_capacitance + 1 / ((2 * np.pi * frequency) ** 2 * choke)
    return np.array(
        [
            [top + stage.grid_capacitance, -stage.grid_capacitance, 0.0],
            [-stage.grid_capacitance, node, -stage.grid_anode],
            [0.0, -stage.grid_anode, anode + stage.grid_anode],
        ]
    )


def linear_part(windings, stage, frequency, choke):
    """Storage and flow of the ten states without valve and grid current."""
    w = windings
    storage, flow = np.eye(10), np.zeros((10, 10))
    nodes, coils = [TOP, GRID, ANODE], [AERIAL, TUNED, TICKLER]
    storage[np.ix_(nodes, nodes)] = capacitances(windings, stage, frequency, choke)
    storage[np.ix_(coils, coils)] = [
        [w.aerial_inductance, w.aerial_tuned, w.aerial_tickler],
        [w.aerial_tuned, w.tuned_inductance, w.tuned_tickler],
        [w.aerial_tickler, w.tuned_tickler, w.tickler_inductance],
    ]
    storage[THROTTLE, THROTTLE], storage[FEED, FEED], storage[BEHIND, BEHIND] = (
        w.throttle_capacitance,
        choke,
        stage.bypass_capacitance,
    )
    flow[CHARGE, AERIAL] = 1
    flow[AERIAL, [AERIAL, CHARGE]] = -w.aerial_resistance, -1 / w.aerial_capacitance
    flow[TOP, TUNED] = 1
    flow[TUNED, [TUNED, TOP]] = -w.tuned_resistance, -1
    flow[TICKLER, [TICKLER, THROTTLE, ANODE]] = -w.tickler_resistance, -1, 1
    flow[THROTTLE, TICKLER] = 1
    flow[ANODE, [TICKLER, FEED]] = -1, 1
    flow[FEED, [BEHIND, ANODE]] = 1, -1
    flow[BEHIND, [BEHIND, FEED]] = -1 / stage.load_resistance, -1
    return storage, flow


@njit(cache=True)
def slopes(time, state, matrix, supply_in, anode_in, grid_in, aerial_in, stage, crest, turning):
    grid, anode = state[GRID], state[ANODE]
    drive = grid + anode / stage[0] + stage[2]
    passed = stage[1] * drive * np.sqrt(drive) if drive > 0 else 0.0
    taken = stage[9] * np.exp(min(grid / stage[10], 50.0)) + (grid - stage[7]) / stage[6]
    emf = crest * np.cos(turning * time)
    return matrix @ state + supply_in - anode_in * passed - grid_in * taken + aerial_in * emf


def integrate(windings, stage, frequency, duration, start, emf=(0.0, 0.0), choke=CHOKE, tolerance=1e-7):
    """Times and states, `PER_CYCLE` a cycle of `frequency`; `emf` is a crest, volt, and a frequency, hertz."""
    storage, flow = linear_part(windings, stage, frequency, choke)
    into = np.linalg.inv(storage)
    supply_in = into[:, BEHIND] * stage.supply / stage.load_resistance
    inputs = (
        into @ flow,
        supply_in,
        into[:, ANODE].copy(),
        into[:, GRID].copy(),
        into[:, AERIAL].copy(),
        np.array(stage, float),
        emf[0],
        2 * np.pi * emf[1],
    )
    time = np.arange(int(duration * frequency * PER_CYCLE) + 1) / (PER_CYCLE * frequency)
    return time, odeint(
        slopes, start, time, args=inputs, tfirst=True, rtol=tolerance, atol=1e7 * tolerance * TOLERANCES, mxstep=5000
    )


def swinging(windings, stage, frequency, crest, bias, anode):
    """Ten states near those of a swing that goes on, `crest` volt at the top: the windings' as for a weak signal."""
    small = small_signal_set(windings, stage)
    storage, flow = linear_part(small, stage, frequency, CHOKE)
    flow[ANODE, [GRID, ANODE]] -= 1 / small.anode_resistance / stage.amplification_factor, 1 / small.anode_resistance
    poles, shapes = np.linalg.eig(np.linalg.solve(storage, flow))
    shape = shapes[:, np.argmin(np.abs(poles - 2j * np.pi * frequency))]
    state = (crest * shape / shape[TOP]).real
    state[FEED] = (stage.supply - anode) / stage.load_resistance
    state[THROTTLE] += anode
    state[ANODE] += anode
    state[BEHIND] = anode
    state[GRID] += bias
    return state


def smoothed(samples, cycles=8):
    """A running average over some cycles, with a bell-shaped weight."""
    weight = np.hanning(cycles * PER_CYCLE + 1)
    return np.convolve(samples, weight / weight.sum(), mode="same")


def envelope_of(time, states, frequency):
    """Crest and phase of the tuned circuit's voltage in a frame that turns at `frequency`, and the grid's mean voltage."""
    turned = 2 * states[:, TOP] * np.exp(-2j * np.pi * frequency * time)
    return smoothed(turned), smoothed(states[:, GRID])
