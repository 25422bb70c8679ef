"""How loud is it in the telephones?   Lesson: Crystal set, section 5 (course/lessons/unit04_crystal_set/ear.md).

Levels are those in an ear of average size with the telephone pressed on it; the threshold is that of young ears in the
open, facing the sound. The two are not measured alike and may differ by several decibels: good enough to tell loud from
faint, not for testing anyone's hearing.
"""

import numpy as np

REFERENCE_PRESSURE = 20e-6  # pascal r.m.s.: 0 dB of sound pressure level
# Hertz, and decibels above the reference pressure: ISO 226:2003, Table 1, threshold shared with ISO 389-7.
THRESHOLD_FREQUENCY = np.array([
    20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150,
    4000, 5000, 6300, 8000, 10000, 12500])  # fmt: skip
THRESHOLD_LEVEL = np.array([
    78.5, 68.7, 59.5, 51.1, 44.0, 37.5, 31.5, 26.5, 22.1, 17.9, 14.4, 11.4, 8.6, 6.2, 4.4, 3.0, 2.2, 2.4, 3.5, 1.7,
    -1.3, -4.2, -6.0, -5.4, -1.5, 6.0, 12.6, 13.9, 12.3])  # fmt: skip


def sound_pressure_level(power: float, sensitivity: float) -> float:
    """Sound pressure level that a telephone makes in the ear.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, electrical, into the telephones
    sensitivity : float or ndarray, decibel, sound pressure level from 1 milliwatt, broadcast with `power`

    Returns
    -------
    float or ndarray, decibel above 20 micropascal

    Source
    ------
    Definition of the sensitivity.
    """
    raise NotImplementedError


def sound_pressure(level: float) -> float:
    """Pressure of a sound from its level.

    Parameters
    ----------
    level : float or ndarray, decibel above 20 micropascal

    Returns
    -------
    float or ndarray, pascal, r.m.s.

    Source
    ------
    Definition of the sound pressure level: 20 decibels for each ten times in pressure.
    """
    raise NotImplementedError


def hearing_threshold(frequency: float) -> float:
    """Level of the faintest tone that young, healthy ears hear: on a straight line between the table's entries.

    Parameters
    ----------
    frequency : float or ndarray, hertz, 20 to 12500

    Returns
    -------
    float or ndarray, decibel above 20 micropascal

    Raises
    ------
    ValueError
        If any frequency is outside the table.

    Source
    ------
    ISO 226:2003, Table 1, whose thresholds are those of ISO 389-7, in steps of a third of an octave; between entries
    the level is taken as a straight line against the logarithm of the frequency.
    """
    raise NotImplementedError


def least_audible_power(frequency: float, sensitivity: float) -> float:
    """Electrical power that makes a tone just heard.

    Parameters
    ----------
    frequency : float or ndarray, hertz, 20 to 12500
    sensitivity : float or ndarray, decibel, sound pressure level from 1 milliwatt, broadcast with `frequency`

    Returns
    -------
    float or ndarray, watt

    Raises
    ------
    ValueError
        If any frequency is outside the table.

    Source
    ------
    `sound_pressure_level` turned round, at the threshold of hearing.
    """
    raise NotImplementedError
