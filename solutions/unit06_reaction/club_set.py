"""The Circle's reaction set on a station: its knobs as plain numbers, what it gains, and where its threshold lies.

The tuning condenser is turned until the set rings on the station; so the knobs that are left are aerial coupling and
throttle.
"""

from dataclasses import replace

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance, series_impedance
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import BY_PASS, SALTMARSH_SET, THROTTLE_RANGE, TUNED, ReactionSet, rates, saltmarsh_set

COUPLING = SALTMARSH_SET.aerial_tuned  # henry
ONE_VALVE_BY_PASS = 2e-9  # farad


@check_ranges
def on_station(frequency: float, throttle: float, coupling: float = COUPLING) -> ReactionSet:
    """The set tuned to a station with its knobs so.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    throttle : float or ndarray, farad, > 0
    coupling : float or ndarray, henry, mutual inductance of aerial and tuned coil; the arguments broadcast together

    Returns
    -------
    ReactionSet
    """
    return stability.retuned(replace(saltmarsh_set(frequency), throttle_capacitance=throttle, aerial_tuned=coupling), frequency)


@check_ranges
def gain_and_bandwidth(frequency: float, throttle: float, coupling: float = COUPLING) -> tuple[float, float]:
    """Volts on the grid for each volt in the aerial, and the band taken in.

    Parameters
    ----------
    frequency, throttle, coupling
        As in `on_station`.

    Returns
    -------
    gain : float or ndarray, a pure number
    bandwidth : float or ndarray, hertz, between −3 dB points

    Raises
    ------
    ValueError
        If the set oscillates.
    """
    return stability.gain_and_bandwidth(on_station(frequency, throttle, coupling))


@check_ranges
def one_valve_set(frequency: float, coupling: float = COUPLING) -> ReactionSet:
    """The same set before it had a tickler, unit 05's: a by-pass of 2 nF at the anode; its tuning condenser is left alone.

    Parameters
    ----------
    frequency, coupling
        As in `on_station`.

    Returns
    -------
    ReactionSet
    """
    parts = saltmarsh_set(frequency)
    bypassed = parts.anode_capacitance - BY_PASS + ONE_VALVE_BY_PASS
    return replace(parts, tuned_tickler=0.0, aerial_tickler=0.0, anode_capacitance=bypassed, aerial_tuned=coupling)


@check_ranges
def without_reaction(frequency: float, coupling: float = COUPLING) -> tuple[float, float]:
    """What `one_valve_set` gains for a weak station: no feedback is left but the valve's own.

    Parameters
    ----------
    frequency, coupling
        As in `on_station`.

    Returns
    -------
    gain : float or ndarray, volts on the tuned circuit for each volt in the aerial
    bandwidth : float or ndarray, hertz, between −3 dB points

    Raises
    ------
    ValueError
        As `stability.retuned`.
    """
    return stability.gain_and_bandwidth(stability.retuned(one_valve_set(frequency, coupling), frequency))


@check_ranges
def threshold_throttle(frequency: float, coupling: float = COUPLING) -> float:
    """Throttle capacitance at which the set, on a station, begins to oscillate.

    Parameters
    ----------
    frequency, coupling
        As in `on_station`.

    Returns
    -------
    float or ndarray, farad

    Raises
    ------
    ValueError
        If the throttle's range does not reach it.
    """
    return stability.at_threshold(replace(saltmarsh_set(frequency), aerial_tuned=coupling), frequency).throttle_capacitance


@check_ranges
def threshold_slope(frequency: float, throttle: float, coupling: float = COUPLING) -> float:
    """Mutual conductance with which the set, on a station, would just oscillate.

    Parameters
    ----------
    frequency, throttle, coupling
        As in `on_station`.

    Returns
    -------
    float or ndarray, siemens; a throttle well open takes less, and more nearly the same across the dial
    """
    there = replace(saltmarsh_set(frequency), aerial_tuned=coupling, throttle_capacitance=throttle)
    return stability.at_threshold(there, frequency, "transconductance", 0.0, 0.1).transconductance


@check_ranges
def losses(
    frequency: float, coupling: float = COUPLING, throttle: float = THROTTLE_RANGE[0]
) -> tuple[float, float, float, float]:
    """What the tuned circuit loses by its coil, to the aerial, to the grid, and to the anode with the tickler turned away.

    Parameters
    ----------
    frequency, coupling, throttle
        As in `on_station`; the throttle shut if none is given. It is part of what the anode sees.

    Returns
    -------
    coil, aerial, grid, anode : float or ndarray, ohm, each as a resistance in series with the coil

    Source
    ------
    The aerial's by `reflected_impedance`; a conductance g across a condenser of reactance X is g X² in series; the anode's
    by `feedback_on`.
    """
    parts = saltmarsh_set(frequency)
    aerial = series_impedance(frequency, parts.aerial_inductance, parts.aerial_capacitance, parts.aerial_resistance)
    reflected = reflected_impedance(frequency, coupling, aerial)
    reactance = 2 * np.pi * frequency * parts.tuned_inductance + reflected.imag
    anode, _ = feedback_on(frequency, throttle, 0.0)
    return parts.tuned_resistance, reflected.real, parts.grid_conductance * reactance**2, anode


@check_ranges
def loop_impedance(reaction_set: ReactionSet, frequency: float) -> complex:
    """Impedance all the way round the tuned circuit: a volt in the coil over the current that it drives.

    Parameters
    ----------
    reaction_set : ReactionSet
    frequency : float or ndarray, hertz, > 0, broadcast with the set

    Returns
    -------
    complex or ndarray of complex, ohm; no resistance is left of it where the set begins to oscillate

    Raises
    ------
    ValueError
        As `rates`.

    Source
    ------
    The network's equations at s = jω.
    """
    storage, flow = rates(reaction_set)
    s = 2j * np.pi * np.asarray(frequency)
    return 1 / np.linalg.inv(s[..., None, None] * storage - flow)[..., TUNED, TUNED]


@check_ranges
def feedback_on(frequency: float, throttle: float, sense: float = 1.0) -> tuple[float, float]:
    """What anode and tickler add to the tuned circuit of the set, tuned to a station with the aerial away: ohms, and hertz.

    Parameters
    ----------
    frequency, throttle
        As in `on_station`.
    sense : float, 1 as the tickler is wound, -1 with its ends exchanged, 0 turned away from the coil: the anode alone

    Returns
    -------
    resistance : float or ndarray, ohm, in series with the coil, negative where they help
    shift : float or ndarray, hertz, from where coil and condenser alone would be tuned; below 0: downwards

    Source
    ------
    `loop_impedance`, its reactance made 0 by the condenser, less the loss of the coil, and of the grid as in `losses`.
    """
    parts, angular = saltmarsh_set(frequency), 2 * np.pi * frequency
    there = replace(
        parts,
        throttle_capacitance=throttle,
        tuned_tickler=sense * parts.tuned_tickler,
        aerial_tuned=0.0,
        aerial_tickler=0.0,
        tuning_capacitance=1 / (angular**2 * parts.tuned_inductance),
    )
    for _ in range(stability.ROUNDS):
        elastance = 1 / there.tuning_capacitance + angular * loop_impedance(there, frequency).imag
        there = replace(there, tuning_capacitance=1 / elastance)
    own = parts.tuned_resistance + parts.grid_conductance * (angular * parts.tuned_inductance) ** 2
    alone = 1 / (2 * np.pi * np.sqrt(parts.tuned_inductance * there.tuning_capacitance))
    return loop_impedance(there, frequency).real - own, frequency - alone


@check_ranges
def growth_rate(frequency: float, throttle: float, coupling: float = COUPLING) -> float:
    """Rate at which a swing of the set grows by itself; below 0 it dies away.

    Parameters
    ----------
    frequency, throttle, coupling
        As in `on_station`.

    Returns
    -------
    float or ndarray, per second: the swing grows 2.718 times in one over this
    """
    return stability.ring(on_station(frequency, throttle, coupling))[1]


@check_ranges
def formula_gain(frequency: float, throttle: float, coupling: float = COUPLING) -> float:
    """What the steady-state formula gives for the gain, be it true or not.

    Parameters
    ----------
    frequency, throttle, coupling
        As in `on_station`.

    Returns
    -------
    float or ndarray, a pure number; beyond the threshold it is false
    """
    there = on_station(frequency, throttle, coupling)
    return np.abs(stability.steady_formula(there, stability.ring(there)[0]))


@check_ranges
def pulled(frequency: float, throttle: float, coupling: float = COUPLING) -> float:
    """How far two knobs draw the set off a station it was tuned to, with the throttle shut and the club's coupling.

    Parameters
    ----------
    frequency, throttle, coupling
        As in `on_station`: the station, and where the two knobs are turned to; the tuning condenser is left alone.

    Returns
    -------
    float or ndarray, hertz, positive upwards
    """
    tuned = on_station(frequency, THROTTLE_RANGE[0])
    turned = replace(tuned, throttle_capacitance=throttle, aerial_tuned=coupling)
    return stability.ring(turned)[0] - frequency
