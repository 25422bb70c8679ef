"""What the figures of this unit leave out, and how large each is."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit01_signal.club_stations import ACROSS_THE_BAY
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit09_feedback_receivers.isolated_set import (
    GRID_RESISTANCE,
    MUTUAL,
    VALVES,
    WINDING,
    WIRE_INDUCTANCE,
    aerial_impedance,
)
from solutions.unit09_feedback_receivers.isolating_stage import isolation
from solutions.unit09_feedback_receivers.quench import relative_response
from solutions.unit09_feedback_receivers.receiver import AMPLIFICATION, COIL, COUPLING, ISOLATING, first_circuit
from solutions.unit09_feedback_receivers.sine_quench import sine_response

ANODE_GRID = 6e-12  # farad: of a type 30, from memory
NO_COIL, LOOSE = 1e-13, 1e-9  # henry: a winding of next to nothing, and what it can have in common with the tuned coil
BAND = 700.0  # hertz: of the capstone's second circuit


@check_ranges
def winding_left_out(frequency: float, kind: str) -> float:
    """Decibels by which the isolation comes out otherwise when the aerial that it is compared with has no winding.

    Parameters
    ----------
    frequency : float, hertz, > 0
    kind : str, one of `VALVES`

    Returns
    -------
    float, decibel
    """
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * COIL)
    valve = VALVES[kind]
    with_it, without = (
        isolation(
            frequency,
            tuning,
            (coil, LOOSE),
            aerial_impedance(frequency),
            GRID_RESISTANCE,
            (WINDING, MUTUAL),
            (valve.anode_resistance, valve.anode_grid),
            0.0,
        )
        for coil in (SALTMARSH_SET.aerial_inductance - WIRE_INDUCTANCE, NO_COIL)
    )  # the coupling falls out of the difference
    return float(without - with_it)


@check_ranges
def sine_against_step(offset: float, nepers: float = 10.0, quench_frequency: float = 20e3) -> float:
    """Decibels by which a sine quench lets a station off tune through more than a stepped one of as many nepers.

    Parameters
    ----------
    offset : float, hertz, from the circuit's frequency
    nepers : float, > 0, by which a burst grows in half a cycle, and dies in the other
    quench_frequency : float, hertz, > 0

    Returns
    -------
    float, decibel
    """
    rate = 2 * quench_frequency * nepers
    return float(20 * np.log10(sine_response(offset, nepers, quench_frequency) / relative_response(offset, rate, rate)))


@check_ranges
def grid_anode_conductance(offset: float, frequency: float = ACROSS_THE_BAY.frequency) -> float:
    """Conductance that a triode's 6 pF would put across the capstone's first circuit, as a multiple of what that has.

    Parameters
    ----------
    offset : float, hertz, of the signal from the second circuit's frequency
    frequency : float, hertz, > 0, to which both circuits are tuned

    Returns
    -------
    float, a pure number; below −1 the stage sings by itself

    Source
    ------
    The anode's load is its winding with what the second circuit, its band already 700 Hz wide, reflects into it; the grid finds
    jωC (1 + gain).
    """
    angular = 2 * np.pi * (frequency + offset)
    second = 2 * np.pi * COIL * complex(BAND, 2 * offset)
    load = 1j * angular * ISOLATING[2] + (angular * COUPLING) ** 2 / second
    gain = AMPLIFICATION * load / (ISOLATING[0] + load)
    taken = 1j * angular * ANODE_GRID * (1 + gain)
    own = 2 * np.pi * first_circuit(frequency)[0] / ((2 * np.pi * frequency) ** 2 * COIL)
    return float(taken.real / own)


def grid_anode_worst() -> float:
    """The least of `grid_anode_conductance` within two bands of the station."""
    return min(grid_anode_conductance(offset) for offset in np.linspace(-2 * BAND, 2 * BAND, 201))
