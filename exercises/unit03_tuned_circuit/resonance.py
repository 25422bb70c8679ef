"""Where does it tune?   Lesson: Tuned circuit, section 2 (course/lessons/unit03_tuned_circuit/index.md)."""

import numpy as np
import sympy


def resonant_frequency(inductance: float, capacitance: float) -> float:
    """Frequency at which a coil and a condenser in parallel resonate, losses neglected.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    capacitance : float or ndarray, farad, > 0, broadcast with `inductance`

    Returns
    -------
    float or ndarray, hertz

    Source
    ------
    US National Bureau of Standards, Circular 74, 1924, on simple resonance: the two reactances are equal.
    """
    raise NotImplementedError


def resonance_condition(inductance: sympy.Symbol, capacitance: sympy.Symbol) -> sympy.Expr:
    """Angular frequency at which the reactances of coil and condenser are equal, as a formula.

    Parameters
    ----------
    inductance, capacitance : sympy symbols, positive

    Returns
    -------
    sympy expression, radian per second
        The solution of w L = 1/(w C) for w.
    """
    raise NotImplementedError
