"""How much condenser hides in a coil?   Lesson: Coil and condenser, section 5
(course/lessons/unit02_coil_and_condenser/two_coils.md)."""

import numpy as np

# R. G. Medhurst, "H.F. Resistance and Self-Capacitance of Single-Layer Solenoids", Wireless Engineer 24, February 1947.
LENGTH_OVER_DIAMETER = np.array([
    0.10, 0.15, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50, 0.60, 0.70, 0.80, 0.90, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5,
    4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0, 10, 15, 20, 25, 30, 40, 50,
])  # fmt: skip
PICOFARADS_PER_CENTIMETRE = np.array([
    0.96, 0.79, 0.70, 0.64, 0.60, 0.57, 0.54, 0.52, 0.50, 0.48, 0.47, 0.46, 0.46, 0.46, 0.47, 0.50, 0.56, 0.61, 0.67,
    0.72, 0.77, 0.81, 0.92, 1.01, 1.12, 1.22, 1.32, 1.86, 2.36, 2.9, 3.4, 4.6, 5.8,
])  # fmt: skip


def self_capacitance(diameter: float, length: float) -> float:
    """Self-capacitance of a single-layer coil with one end earthed, by straight lines between Medhurst's measurements.

    Parameters
    ----------
    diameter : float or ndarray, metre, > 0
    length : float or ndarray, metre, broadcast with `diameter`

    Returns
    -------
    float or ndarray, farad

    Raises
    ------
    ValueError
        If any length is less than 0.1 or more than 50 diameters: nothing was measured there.

    Source
    ------
    R. G. Medhurst, Wireless Engineer 24, February 1947: picofarads per centimetre of diameter, good to some 5 per cent.
    """
    raise NotImplementedError


def self_capacitance_fit(diameter: float, length: float) -> float:
    """Self-capacitance of a single-layer coil with one end earthed, by one formula through the measurements.

    Parameters
    ----------
    diameter : float or ndarray, metre, > 0
    length : float or ndarray, metre, > 0, broadcast with `diameter`

    Returns
    -------
    float or ndarray, farad

    Source
    ------
    Attributed to Medhurst 1947, from memory: picofarads from centimetres, 0.1126 l + 0.08 D + 0.27 √(D³/l).
    """
    raise NotImplementedError


def self_capacitance_from_octave(capacitance_low: float, capacitance_high: float) -> float:
    """Self-capacitance from two bench readings: what the condenser stood at to tune the coil to f, and then to 2 f.

    Parameters
    ----------
    capacitance_low : float or ndarray, farad, at least 4 `capacitance_high`
        At the lower frequency.
    capacitance_high : float or ndarray, farad, > 0, broadcast with `capacitance_low`
        At twice that frequency.

    Returns
    -------
    float or ndarray, farad
    """
    raise NotImplementedError


def apparent_inductance(inductance: float, self_capacitance: float, frequency: float) -> float:
    """Inductance a coil seems to have, measured below its own resonance, with its self-capacitance across it.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    self_capacitance : float or ndarray, farad, >= 0, broadcast with `inductance`
    frequency : float or ndarray, hertz, below self-resonance, broadcast with `inductance`

    Returns
    -------
    float or ndarray, henry
    """
    raise NotImplementedError
