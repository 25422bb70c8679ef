"""How long does it ring?   Lesson: Tuned circuit, section 5 (course/lessons/unit03_tuned_circuit/index.md)."""

import numpy as np


def ring_amplitude(time: float, resonant_frequency: float, quality_factor: float) -> float:
    """Fraction of the first amplitude left in a tuned circuit that was struck and left alone.

    Parameters
    ----------
    time : float or ndarray, second, >= 0, since the blow
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0.5

    Returns
    -------
    float or ndarray, dimensionless, 1 at time 0

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3, on free oscillation (from memory).
    """
    raise NotImplementedError


def ring_energy(time: float, resonant_frequency: float, quality_factor: float) -> float:
    """Fraction of the first energy left, averaged over a cycle.

    Parameters
    ----------
    time : float or ndarray, second, >= 0, since the blow
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0.5

    Returns
    -------
    float or ndarray, dimensionless, 1 at time 0

    Source
    ------
    Energy goes as the square of the amplitude.
    """
    raise NotImplementedError


def cycles_to_fall(quality_factor: float, fraction: float) -> float:
    """Number of cycles in which the amplitude falls to a given fraction of what it was.

    Parameters
    ----------
    quality_factor : float or ndarray, dimensionless, > 0.5
    fraction : float or ndarray, dimensionless, between 0 and 1

    Returns
    -------
    float or ndarray, cycles of the resonant frequency

    Raises
    ------
    ValueError
        Where `fraction` is not above 0 and at most 1: a circuit left alone never gets louder, and never quite stops.

    Source
    ------
    The time at which `ring_amplitude` reaches the fraction, counted in cycles of the resonant frequency.
    """
    raise NotImplementedError


def ring_voltage(time: float, resonant_frequency: float, quality_factor: float) -> float:
    """Voltage on the condenser, charged to 1 volt and then let ring through the coil.

    Parameters
    ----------
    time : float or ndarray, second, >= 0, since the condenser was connected to the coil
    resonant_frequency : float or ndarray, hertz, > 0, that of coil and condenser without loss
    quality_factor : float or ndarray, dimensionless, > 0.5

    Returns
    -------
    float or ndarray, volt, 1 at time 0; exact for a resistance in series with the coil

    Raises
    ------
    ValueError
        Where the Q is 0.5 or less: such a circuit does not ring, its voltage only sinks.

    Source
    ------
    Solution of L dI/dt + RI = V, C dV/dt = −I from V = 1, I = 0.
    """
    raise NotImplementedError
