"""What does one circuit do to the other?   Lesson: Tuned circuit, section 6
(course/lessons/unit03_tuned_circuit/coupling.md)."""

import numpy as np


def mutual_from_coupling(coupling_coefficient: float, primary_inductance: float, secondary_inductance: float) -> float:
    """Mutual inductance of two coils from how closely they are coupled.

    Parameters
    ----------
    coupling_coefficient : float or ndarray, dimensionless, from -1 to 1; negative with one coil turned over
    primary_inductance : float or ndarray, henry, > 0
    secondary_inductance : float or ndarray, henry, > 0

    Returns
    -------
    float or ndarray, henry, with the sign of the coupling coefficient

    Raises
    ------
    ValueError
        Where the coupling coefficient is beyond 1: no coil can catch more than all of another's field.

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def series_impedance(frequency: float, inductance: float, capacitance: float, resistance: float) -> complex:
    """Impedance of a coil, a condenser and a resistance in series.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    inductance : float or ndarray, henry, >= 0
    capacitance : float or ndarray, farad, > 0
    resistance : float or ndarray, ohm, >= 0

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast

    Source
    ------
    The reactances of coil and condenser are opposite in sign and add.
    """
    raise NotImplementedError


def reflected_impedance(frequency: float, mutual_inductance: float, secondary_impedance: complex) -> complex:
    """Impedance that a coupled secondary circuit seems to put in series with the primary.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    mutual_inductance : float or ndarray, henry, of either sign
    secondary_impedance : complex or ndarray, ohm, not zero, all the way round the secondary, its coil included

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def secondary_current(
    emf: complex, frequency: float, mutual_inductance: float, primary_impedance: complex, secondary_impedance: complex
) -> complex:
    """Current round the secondary when an e.m.f. acts in the primary.

    Parameters
    ----------
    emf : complex or ndarray, volt, in series with the primary
    frequency : float or ndarray, hertz, > 0
    mutual_inductance : float or ndarray, henry, of either sign
    primary_impedance : complex or ndarray, ohm, all the way round the primary, on its own
    secondary_impedance : complex or ndarray, ohm, not zero, all the way round the secondary, on its own

    Returns
    -------
    complex or ndarray of complex, ampere; both currents counted positive into the ends marked alike

    Source
    ------
    The two mesh equations Z1 I1 + jωM I2 = E and jωM I1 + Z2 I2 = 0.
    """
    raise NotImplementedError
