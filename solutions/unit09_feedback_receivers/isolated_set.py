"""The Circle's reaction set behind an isolating valve: unit 06's network with that valve where the aerial was.

The first of the three windings is no longer in the aerial but in the valve's anode; the e.m.f. in that mesh is μ times the
grid's voltage, and the mesh's resistance the valve's. A condenser from the foot of the winding to earth closes it.
"""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import SALTMARSH_SET, ReactionSet, saltmarsh_set
from solutions.unit09_feedback_receivers.isolating_stage import isolation


class IsolatingValve(NamedTuple):
    """Manual figures: a pure number, ohm, siemens, and the capacitance from anode to grid in farads."""

    amplification_factor: float
    anode_resistance: float
    transconductance: float
    anode_grid: float


# RCA Receiving Tube Manual, from memory: type 30 at 180 V (its three coefficients are "found", see triodes.csv; 6.0 pF is
# not) and the screened-grid type 32 at 180 V with 67.5 V on its screen (0.015 pF at most, with a shield).
VALVES = {
    "type 30": IsolatingValve(9.3, 10.3e3, 900e-6, 6.0e-12),
    "type 32": IsolatingValve(780.0, 1.2e6, 650e-6, 0.015e-12),
}
WINDING, MUTUAL = 60e-6, 40e-6  # henry: the anode winding, and its mutual inductance with the tuned coil
TO_EARTH = 0.1e-6  # farad
WIRE_INDUCTANCE = 15e-6  # henry, of the aerial's wire
GRID_RESISTANCE = 10e3  # ohm, from the valve's grid to earth


@check_ranges
def isolated_set(kind: str, frequency: float = 1e6) -> ReactionSet:
    """The set's windings, valve and all, as the isolating valve finds them.

    Parameters
    ----------
    kind : str, one of `VALVES`
    frequency : float, hertz, > 0, at which the coil's loss is taken

    Returns
    -------
    ReactionSet
        Its e.m.f. is the amplification factor times the voltage on the isolating valve's grid.
    """
    return replace(
        saltmarsh_set(frequency),
        aerial_resistance=VALVES[kind].anode_resistance,
        aerial_capacitance=TO_EARTH,
        aerial_inductance=WINDING,
        aerial_tuned=MUTUAL,
    )


@check_ranges
def aerial_impedance(frequency: float) -> complex:
    """Impedance of the Circle's aerial and earth with 15 µH of wire and no coil.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    complex or ndarray of complex, ohm
    """
    return series_impedance(frequency, WIRE_INDUCTANCE, SALTMARSH_SET.aerial_capacitance, SALTMARSH_SET.aerial_resistance)


@check_ranges
def gain_and_bandwidth(frequency: float, throttle: float, kind: str) -> tuple[float, float]:
    """Volts on the detector's grid for each volt in the aerial, and the band taken in.

    Parameters
    ----------
    frequency : float, hertz, > 0, of the station; the set is tuned to it
    throttle : float, farad, > 0
    kind : str, one of `VALVES`

    Returns
    -------
    gain : float, a pure number
    bandwidth : float, hertz

    Raises
    ------
    ValueError
        If the set oscillates.
    """
    there = stability.retuned(replace(isolated_set(kind, frequency), throttle_capacitance=throttle), frequency)
    gain, bandwidth = stability.gain_and_bandwidth(there)
    share = GRID_RESISTANCE / (GRID_RESISTANCE + aerial_impedance(frequency))
    return float(VALVES[kind].amplification_factor * np.abs(share) * gain), float(bandwidth)


@check_ranges
def threshold_throttle(frequency: float, kind: str) -> float:
    """Throttle capacitance at which the set behind the valve begins to oscillate.

    Parameters
    ----------
    frequency : float, hertz, > 0
    kind : str, one of `VALVES`

    Returns
    -------
    float, farad

    Raises
    ------
    ValueError
        If the throttle's range does not reach it.
    """
    return float(stability.at_threshold(isolated_set(kind, frequency), frequency).throttle_capacitance)


@check_ranges
def kept_back(frequency: float, kind: str, stray: float) -> float:
    """By how much less of an oscillation runs in the Circle's aerial behind the valve than with the aerial on the coil.

    Parameters
    ----------
    frequency : float, hertz, > 0
    kind : str, one of `VALVES`
    stray : float or ndarray, farad, >= 0, from the top of the tuned circuit to the aerial's lead

    Returns
    -------
    float or ndarray, decibel
    """
    valve = VALVES[kind]
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * SALTMARSH_SET.tuned_inductance)
    aerial = aerial_impedance(frequency)
    within = valve.anode_resistance, valve.anode_grid
    joined = SALTMARSH_SET.aerial_inductance - WIRE_INDUCTANCE, SALTMARSH_SET.aerial_tuned
    return isolation(frequency, tuning, joined, aerial, GRID_RESISTANCE, (WINDING, MUTUAL), within, stray)


@check_ranges
def swayed(frequency: float, throttle: float, more: float) -> tuple[float, float]:
    """What a change of the aerial's capacitance does to the set that has its aerial on the coil, with no stage between.

    Parameters
    ----------
    frequency : float, hertz, > 0, on which it was tuned
    throttle : float, farad, > 0
    more : float, by which fraction the capacitance grows: an aerial that sways, a wet insulator

    Returns
    -------
    shift : float, hertz, of its tuning
    growth : float, neper a second, by which its rate of growth changes: below 0, it is further from the edge
    """
    before = stability.retuned(replace(saltmarsh_set(frequency), throttle_capacitance=throttle), frequency)
    after = replace(before, aerial_capacitance=before.aerial_capacitance * (1 + more))
    (tuned, rate), (moved, other) = stability.ring(before), stability.ring(after)
    return float(moved - tuned), float(other - rate)
