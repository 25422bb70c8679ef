"""How many turns shall I wind?   Lesson: Coil and condenser, section 7
(course/lessons/unit02_coil_and_condenser/dial_and_sheet.md)."""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError
