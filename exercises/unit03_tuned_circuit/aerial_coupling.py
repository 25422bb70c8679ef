"""How closely should the aerial be coupled?   Lesson: Tuned circuit, section 7
(course/lessons/unit03_tuned_circuit/coupling.md)."""

import numpy as np

from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance


def loaded_quality_factor(
    frequency: float, mutual_inductance: float, aerial_impedance: complex, inductance: float, resistance: float
) -> float:
    """Q of the tuned circuit with the aerial coupled to it and the condenser brought back to resonance.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    mutual_inductance : float or ndarray, henry, of either sign, between the aerial coil and the tuned coil
    aerial_impedance : complex or ndarray, ohm, real part > 0, all the way round: aerial, coupling coil, earth
    inductance : float or ndarray, henry, > 0, of the tuned coil
    resistance : float or ndarray, ohm, > 0, of the tuned circuit by itself

    Returns
    -------
    float or ndarray, dimensionless; it gives the bandwidth where the aerial circuit itself tunes far more broadly

    Raises
    ------
    ValueError
        If the resistance is 0 or less anywhere: no coil is without loss.

    Source
    ------
    The aerial reflects (ωM)²/Za: its real part adds to the resistance, its imaginary part to the coil's reactance.
    """
    raise NotImplementedError


def tuned_voltage(
    emf: float,
    frequency: float,
    mutual_inductance: float,
    aerial_impedance: complex,
    inductance: float,
    resistance: float,
) -> float:
    """Voltage on the tuned condenser, brought back to resonance, from an e.m.f. in the aerial.

    Parameters
    ----------
    emf : float or ndarray, volt, >= 0, amplitude, in series with the aerial
    frequency, mutual_inductance, aerial_impedance, inductance, resistance : as in `loaded_quality_factor`

    Returns
    -------
    float or ndarray, volt, amplitude (or r.m.s. if `emf` is)

    Source
    ------
    The aerial current E/Za induces ωM times itself in the tuned coil; resonance magnifies that by the loaded Q.
    """
    raise NotImplementedError


def best_mutual_inductance(frequency: float, aerial_impedance: complex, resistance: float) -> float:
    """Mutual inductance that drives the most current round the retuned circuit: the critical coupling.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    aerial_impedance : complex or ndarray, ohm, real part > 0
    resistance : float or ndarray, ohm, > 0, of the tuned circuit by itself

    Returns
    -------
    float or ndarray, henry; the reflected resistance then equals the circuit's own

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def critical_coupling(primary_quality_factor: float, secondary_quality_factor: float) -> float:
    """Coupling coefficient that passes the most current between two circuits tuned alike.

    Parameters
    ----------
    primary_quality_factor : float or ndarray, dimensionless, > 0
    secondary_quality_factor : float or ndarray, dimensionless, > 0

    Returns
    -------
    float or ndarray, dimensionless

    Raises
    ------
    ValueError
        If the two Qs multiplied are below 1 anywhere: the coils would have to be coupled more closely than coils can be.

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError
