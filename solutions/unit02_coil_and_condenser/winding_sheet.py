"""How many turns shall I wind?   Lesson: Coil and condenser, section 7."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance

PRECISION = 1e-10  # of the turns: the last step is no larger


@check_ranges
def close_wound_inductance(turns: float, former_diameter: float, covered_diameter: float) -> float:
    """Inductance of a single layer wound turn against turn.

    Parameters
    ----------
    turns : float or ndarray, dimensionless, > 0
    former_diameter : float or ndarray, metre, > 0, broadcast with `turns`
        Outside of the tube the coil is wound on.
    covered_diameter : float or ndarray, metre, > 0, broadcast with `turns`
        Of the wire over its covering. It is the pitch of the winding; the wire's centre lies half of it above the tube.

    Returns
    -------
    float or ndarray, henry
    """
    return solenoid_inductance(turns, former_diameter + covered_diameter, turns * covered_diameter)


@check_ranges
def turns_needed(inductance: float, former_diameter: float, covered_diameter: float) -> float:
    """Turns, fractions and all, that give a close-wound coil the wanted inductance.

    Parameters
    ----------
    inductance : float, henry, > 0
    former_diameter : float, metre, > 0
    covered_diameter : float, metre, 0.0005 to 1 times `former_diameter`

    Returns
    -------
    float, dimensionless

    Raises
    ------
    ValueError
        If one turn is already too much, or a coil a thousand diameters long too little.
    """
    fewest, most = 1.0, 1000 * (former_diameter + covered_diameter) / covered_diameter
    least, greatest = close_wound_inductance(np.array([fewest, most]), former_diameter, covered_diameter)
    if not inductance >= least:
        raise ValueError("one turn on this former has more inductance than is wanted: use a smaller former")
    if inductance > greatest:
        raise ValueError("the coil would be over a thousand diameters long: use a larger former or a thinner wire")
    nearest, before = (most, greatest), (fewest, least)
    while abs(nearest[0] / before[0] - 1) > PRECISION:
        power = np.log(nearest[1] / before[1]) / np.log(nearest[0] / before[0])  # inductance goes as turns to about this
        turns = nearest[0] * (inductance / nearest[1]) ** (1 / power)
        nearest, before = (turns, close_wound_inductance(turns, former_diameter, covered_diameter)), nearest
    return float(nearest[0])


@check_ranges
def whole_turns(inductance: float, former_diameter: float, covered_diameter: float) -> int:
    """Whole number of turns whose inductance comes nearest to the wanted one.

    Parameters
    ----------
    inductance, former_diameter, covered_diameter
        As for `turns_needed`.

    Returns
    -------
    int

    Raises
    ------
    ValueError
        If one turn is already too much, or a coil a thousand diameters long too little.
    """
    fewer = int(turns_needed(inductance, former_diameter, covered_diameter))
    below, above = close_wound_inductance(np.array([fewer, fewer + 1]), former_diameter, covered_diameter)
    return fewer if inductance - below <= above - inductance else fewer + 1


@check_ranges
def wire_length(turns: float, former_diameter: float, covered_diameter: float) -> float:
    """Length of wire in a close-wound coil: each turn climbs one wire's width as it goes round. Leads not counted.

    Parameters
    ----------
    turns : float or ndarray, dimensionless, > 0
    former_diameter, covered_diameter : float or ndarray, metre, > 0, broadcast with `turns`

    Returns
    -------
    float or ndarray, metre
    """
    once_round = np.pi * (former_diameter + covered_diameter)
    return turns * np.sqrt(once_round**2 + covered_diameter**2)
