"""Where does it tune?   Lesson: Tuned circuit, section 2."""

import numpy as np
import sympy

from solutions.ranges import check_ranges


@check_ranges
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
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


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
    w = sympy.Symbol("w", positive=True)
    [solution] = sympy.solve(sympy.Eq(w * inductance, 1 / (w * capacitance)), w)
    return solution
