"""What the anode of the club's set takes from its grid, by-pass and tickler chosen otherwise.   Lesson: Reaction, the anode."""

from dataclasses import replace

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.grid_anode_admittance import anode_load, grid_admittance
from solutions.unit06_reaction.network import BY_PASS, GRID_ANODE, SALTMARSH_SET, THROTTLE_RANGE, saltmarsh_set
from solutions.unit06_reaction.stability import at_threshold, gain_and_bandwidth, poles, retuned
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, small_signal_set

BARE_ANODE = SALTMARSH_SET.anode_capacitance - BY_PASS  # farad: valve, wiring and choke
EARLY_TICKLER, EARLY_MUTUAL, EARLY_AERIAL = 12e-6, 6e-6, 0.2e-6  # henry: right for a valve without capacitances
WIDEST_THROTTLE = 3e-9  # farad, where one looks beyond the knob's stop


@check_ranges
def with_anode(frequency: float, by_pass: float = BY_PASS, throttle: float = THROTTLE_RANGE[0], grid_anode: float = GRID_ANODE):
    """The club's set tuned to a frequency, with another by-pass or another valve.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    by_pass : float or ndarray, farad, >= 0, from anode to earth
    throttle : float or ndarray, farad, > 0
    grid_anode : float, farad, >= 0, of the valve itself

    Returns
    -------
    ReactionSet

    Raises
    ------
    ValueError
        As `retuned`.
    """
    stage = SALTMARSH_STAGE._replace(grid_anode=grid_anode)
    there = replace(saltmarsh_set(frequency), anode_capacitance=BARE_ANODE + by_pass, throttle_capacitance=throttle)
    return retuned(small_signal_set(there, stage), frequency)


@check_ranges
def reaction_off(frequency: float, by_pass: float = BY_PASS, grid_anode: float = GRID_ANODE) -> tuple[float, float]:
    """Gain and bandwidth of the club's set for a weak station, its throttle shut.

    Parameters
    ----------
    frequency, by_pass, grid_anode
        As in `with_anode`.

    Returns
    -------
    gain : float or ndarray, volts on the tuned circuit for each volt in the aerial
    bandwidth : float or ndarray, hertz, between −3 dB points

    Raises
    ------
    ValueError
        As `gain_and_bandwidth`.
    """
    return gain_and_bandwidth(with_anode(frequency, by_pass, grid_anode=grid_anode))


@check_ranges
def anode_loss(frequency: float, by_pass: float = BY_PASS, throttle: float = THROTTLE_RANGE[0]) -> tuple[float, float]:
    """What the anode takes from the tuned circuit with the tickler turned away, and what coil and grid take, in series with it.

    Parameters
    ----------
    frequency, by_pass, throttle
        As in `with_anode`.

    Returns
    -------
    anode, others : float or ndarray, ohm

    Source
    ------
    A conductance G across a coil of reactance X takes what a resistance G X² in series with it would.
    """
    of = saltmarsh_set(frequency)
    load = anode_load(frequency, BARE_ANODE + by_pass, of.tickler_resistance, of.tickler_inductance, throttle)
    taken = grid_admittance(frequency, of.transconductance, of.anode_resistance, of.grid_anode_capacitance, load)
    reactance = 2 * np.pi * frequency * of.tuned_inductance
    return taken.real * reactance**2, of.tuned_resistance + of.grid_conductance * reactance**2


@check_ranges
def early_threshold(frequency: float, grid_anode: float) -> float:
    """Throttle at the threshold with the tickler that a valve without capacitances would want, and no by-pass.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    grid_anode : float, farad, >= 0, of the valve itself

    Returns
    -------
    float or ndarray, farad; beyond the throttle's stop where it is above 500 pF

    Raises
    ------
    ValueError
        As `at_threshold`.
    """
    there = replace(
        saltmarsh_set(frequency),
        tickler_inductance=EARLY_TICKLER,
        tuned_tickler=EARLY_MUTUAL,
        aerial_tickler=EARLY_AERIAL,
        anode_capacitance=BARE_ANODE,
    )
    small = small_signal_set(there, SALTMARSH_STAGE._replace(grid_anode=grid_anode))
    return at_threshold(small, frequency, low=2e-12, high=WIDEST_THROTTLE).throttle_capacitance


@check_ranges
def sings_without_coupling(frequency: float, throttle: float) -> float:
    """Growth of a swing in the club's set whose tickler is turned away from both other windings: anode and grid alone.

    Parameters
    ----------
    frequency, throttle
        As in `with_anode`; the tuning condenser stands where the coil alone would be tuned to the frequency.

    Returns
    -------
    float or ndarray, per second: above 0 it sings without a tickler
    """
    of = saltmarsh_set(frequency)
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * of.tuned_inductance)
    apart = replace(of, throttle_capacitance=throttle, tuned_tickler=0.0, aerial_tickler=0.0, tuning_capacitance=tuning)
    return poles(apart)[..., 0].real
