"""Two diodes back to back that keep a bang from the ears: where they go, and where they spoil the set.   Lesson: Safety,
headphones.

SATURATION, SLOPE    a small silicon diode's saturation current, ampere, and slope voltage, volt: unit 4's
"""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit04_crystal_set.phone_loudness import sound_pressure_level

SATURATION, SLOPE = 3e-9, 46e-3
HALVINGS = 60  # of the interval that holds the answer


@check_ranges
def across_the_pair(current: float, beside: float) -> float:
    """Voltage of two diodes back to back, with a resistance beside them, that a steady current is sent through.

    Parameters
    ----------
    current : float, ampere, >= 0
    beside : float, ohm, > 0; infinite where there is nothing

    Returns
    -------
    float, volt

    Raises
    ------
    ValueError
        If the current is below zero or the resistance not above it.

    Source
    ------
    The exponential law of both diodes: together they pass 2 I₀ sinh(V / slope).
    """
    low, high = 0.0, SLOPE * np.arcsinh(current / (2 * SATURATION))
    for _ in range(HALVINGS):
        voltage = 0.5 * (low + high)
        enough = 2 * SATURATION * np.sinh(voltage / SLOPE) + voltage / beside >= current
        low, high = (low, voltage) if enough else (voltage, high)
    return high


@check_ranges
def pair_resistance(current: float, beside: float) -> float:
    """What the pair is to a small tone while a steady current flows through it and the resistance beside it.

    Parameters
    ----------
    current : float, ampere, >= 0
    beside : float, ohm, > 0

    Returns
    -------
    float, ohm

    Raises
    ------
    ValueError
        As `across_the_pair`.

    Source
    ------
    The slope of 2 I₀ sinh(V / slope).
    """
    return SLOPE / (2 * SATURATION * np.cosh(across_the_pair(current, beside) / SLOPE))


@check_ranges
def tone_lost(current: float, resistance: float, impedance: float, anode_resistance: float) -> float:
    """By how much a small tone falls when the pair is put straight across the headphones.

    Parameters
    ----------
    current : float, ampere, >= 0
        Steady current through the headphones; with a condenser in line with the pair, 0.
    resistance : float, ohm, > 0
        Of the headphones, to that steady current.
    impedance : float, ohm, > 0
        Of the headphones, to the tone.
    anode_resistance : float, ohm, > 0
        Of the valve that sends the tone.

    Returns
    -------
    float, decibel

    Raises
    ------
    ValueError
        As `across_the_pair`.

    Source
    ------
    Three resistances side by side, fed with a current.
    """
    without = 1 / anode_resistance + 1 / impedance
    return 20 * np.log10(1 + 1 / (pair_resistance(current, resistance) * without))


@check_ranges
def loudest(crest: float, impedance: float, sensitivity: float, frequency: float, capacitance: float) -> float:
    """Most that a tone can be, in level, with the pair behind a condenser across the headphones.

    An upper bound: all of the current is taken to go through pair and condenser, and their voltages are added as crests.

    Parameters
    ----------
    crest : float, ampere, >= 0
        Of the tone's current. A valve at rest cannot swing by more than its steady current.
    impedance : float, ohm, > 0
        Of the headphones, to the tone.
    sensitivity : float, decibel of sound pressure from a milliwatt
    frequency : float, hertz, > 0
    capacitance : float, farad, > 0

    Returns
    -------
    float, decibel of sound pressure

    Raises
    ------
    ValueError
        As `across_the_pair`.

    Source
    ------
    The diodes' law, the condenser's reactance, and power into the headphones from a crest.
    """
    voltage = across_the_pair(crest, np.inf) + crest / (2 * np.pi * frequency * capacitance)
    return sound_pressure_level(voltage**2 / (2 * impedance), sensitivity)


@check_ranges
def loudest_bare(crest: float, impedance: float, anode_resistance: float, sensitivity: float) -> float:
    """Level of the same tone without the pair.

    Parameters
    ----------
    crest : float, ampere, > 0
    impedance : float, ohm, > 0
    anode_resistance : float, ohm, > 0
    sensitivity : float, decibel of sound pressure from a milliwatt

    Returns
    -------
    float, decibel of sound pressure

    Raises
    ------
    ValueError
        If the crest or a resistance is not above zero.

    Source
    ------
    The current's share in two resistances side by side, and power into the headphones from a crest.
    """
    voltage = crest / (1 / impedance + 1 / anode_resistance)
    return sound_pressure_level(voltage**2 / (2 * impedance), sensitivity)
