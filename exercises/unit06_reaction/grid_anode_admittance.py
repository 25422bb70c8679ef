"""What does the anode do to the grid, by the condenser between them?   Lesson: Reaction, the anode
(course/lessons/unit06_reaction/anode.md).

Nobody built it in: two wires side by side in one bulb are a condenser. Its one end is on the tuned circuit, its other end on
the anode, which swings several times as far and the other way. How much current that draws from the tuned circuit, and in
which phase, depends on what the anode is joined to.
"""

import numpy as np


def anode_load(
    frequency: float,
    anode_capacitance: float,
    tickler_resistance: float,
    tickler_inductance: float,
    throttle: float,
) -> complex:
    """Admittance from the anode to earth, outside the valve: all condensers there, and beside them tickler and throttle.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    anode_capacitance : float or ndarray, farad, >= 0, of the valve, the wiring, the choke and the by-pass together
    tickler_resistance : float or ndarray, ohm, > 0
    tickler_inductance : float or ndarray, henry, >= 0
    throttle : float or ndarray, farad, > 0, in series with the tickler; the arguments broadcast

    Returns
    -------
    complex or ndarray of complex, siemens; a positive imaginary part acts like a condenser, a negative one like a coil

    Source
    ------
    Admittances side by side add; impedances one behind the other add.
    """
    raise NotImplementedError


def grid_admittance(
    frequency: float,
    transconductance: float,
    anode_resistance: float,
    grid_anode_capacitance: float,
    load: complex,
) -> complex:
    """Admittance that the condenser between grid and anode puts across the tuned circuit.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    transconductance : float or ndarray, siemens, >= 0; 0 is a cold valve
    anode_resistance : float or ndarray, ohm, > 0
    grid_anode_capacitance : float or ndarray, farad, >= 0
    load : complex or ndarray, siemens, real part at least 0, of all that the anode is joined to; the arguments broadcast

    Returns
    -------
    complex or ndarray of complex, siemens
        Its real part is what grid and anode take from the tuned circuit: a loss above 0, a gain below it. Its imaginary
        part acts like more tuning condenser.

    Source
    ------
    J. M. Miller, Dependence of the input impedance of a three-electrode vacuum tube upon the load in the plate circuit,
    Scientific Papers of the Bureau of Standards 351, 1919 (from memory); currents at the anode added up.
    """
    raise NotImplementedError


def balancing_inductance(
    frequency: float, amplification_factor: float, grid_anode_capacitance: float, anode_capacitance: float
) -> float:
    """Coil from the anode to earth with which the anode neither takes from the grid nor gives: less of it gives.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    amplification_factor : float or ndarray, a pure number, > 0, of the valve
    grid_anode_capacitance : float or ndarray, farad, > 0
    anode_capacitance : float or ndarray, farad, >= 0, across the coil; the arguments broadcast

    Returns
    -------
    float or ndarray, henry; of a coil without loss

    Source
    ------
    The real part of `grid_admittance` is 0 where the load's susceptance is −ω Cga (1 + 1/μ).
    """
    raise NotImplementedError


def quality_left(frequency: float, inductance: float, resistance: float, admittance: complex) -> float:
    """Q of a tuned circuit with an admittance across it, the circuit tuned to the frequency with that on it.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, tuned to
    inductance : float or ndarray, henry, > 0
    resistance : float or ndarray, ohm, >= 0, in series with the coil, all other losses counted in
    admittance : complex or ndarray, siemens, small beside the coil's own; the arguments broadcast

    Returns
    -------
    float or ndarray, a pure number

    Raises
    ------
    ValueError
        Where the admittance gives as much as the resistance takes, or more: the set oscillates without any tickler.

    Source
    ------
    A conductance G across a coil of reactance X takes what a resistance G X² in series with it would.
    """
    raise NotImplementedError
