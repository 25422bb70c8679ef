"""A coil by a pencil's formula.   Lesson: Coil and condenser, section 2 (course/lessons/unit02_coil_and_condenser/index.md)."""

import numpy as np

INCH = 0.0254  # metre, exact by definition


def inductance(turns: float, diameter: float, length: float) -> float:
    """Inductance of a single-layer coil; within one per cent if it is longer than 0.4 of its diameter.

    Parameters
    ----------
    turns : float or ndarray, dimensionless, > 0
    diameter : float or ndarray, metre, > 0, from wire centre to wire centre
    length : float or ndarray, metre, > 0, of the winding

    Returns
    -------
    float or ndarray, henry; the arguments broadcast together

    Source
    ------
    H. A. Wheeler, "Simple Inductance Formulas for Radio Coils", Proc. IRE 16, October 1928:
    microhenries from the radius and length in inches, r² N² / (9 r + 10 l).
    """
    raise NotImplementedError


def turns_for(inductance: float, diameter: float, length: float) -> float:
    """Turns that give a wanted inductance on a given former, with a fraction where it needs one.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    diameter : float or ndarray, metre, > 0, from wire centre to wire centre
    length : float or ndarray, metre, > 0, of the winding

    Returns
    -------
    float or ndarray, dimensionless; the arguments broadcast together

    Source
    ------
    The formula of `inductance`, solved for the turns.
    """
    raise NotImplementedError
