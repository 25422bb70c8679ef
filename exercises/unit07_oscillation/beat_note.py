"""What pitch does it whistle?   Lesson: Oscillation, section 4 (course/lessons/unit07_oscillation/whistle.md).

A set that oscillates while it receives is called an autodyne: detecting both swings together it gives their difference.
"""

import numpy as np


def dial_pitch(capacitance: float, inductance: float, carrier: float) -> float:
    """Pitch of the whistle that an oscillating set makes with a station, at one setting of its tuning condenser.

    Parameters
    ----------
    capacitance : float or ndarray, farad, > 0, of the whole tuned circuit
    inductance : float or ndarray, henry, > 0, of the tuned coil
    carrier : float or ndarray, hertz, > 0, of the station

    Returns
    -------
    float or ndarray, hertz, never below zero; the arguments broadcast together

    Source
    ------
    Difference of the two frequencies; the set oscillates where its tuned circuit resonates.
    """
    raise NotImplementedError


def settings_for_pitch(pitch: float, inductance: float, carrier: float) -> tuple[float, float]:
    """The two settings of the tuning condenser, either side of zero beat, at which a station whistles at one pitch.

    Parameters
    ----------
    pitch : float or ndarray, hertz, >= 0, below `carrier`
    inductance : float or ndarray, henry, > 0, of the tuned coil
    carrier : float or ndarray, hertz, > 0, of the station

    Returns
    -------
    smaller, larger : float or ndarray, farad; the arguments broadcast together

    Source
    ------
    The resonant frequency, solved for the capacitance, above the carrier and below it.
    """
    raise NotImplementedError


def two_stations(oscillation: float, first: float, second: float) -> tuple[float, float, float]:
    """Pitches heard when an oscillating set hears two stations at once.

    Parameters
    ----------
    oscillation : float or ndarray, hertz, > 0, of the set
    first, second : float or ndarray, hertz, > 0, carriers of the stations

    Returns
    -------
    with_first, with_second, between : float or ndarray, hertz; the arguments broadcast together
        The set's whistle with each, which the dial moves, and the stations' whistle with each other, which it does not.

    Source
    ------
    Differences of the three frequencies.
    """
    raise NotImplementedError


def hand_pitch(carrier: float, capacitance: float, hand: float) -> float:
    """Pitch to which zero beat rises when a hand comes near and adds its capacitance to the tuned circuit's.

    Parameters
    ----------
    carrier : float or ndarray, hertz, > 0, to which the set was at zero beat
    capacitance : float or ndarray, farad, > 0, of the whole tuned circuit
    hand : float or ndarray, farad, >= 0

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast together

    Source
    ------
    Resonance goes as 1/sqrt(C).
    """
    raise NotImplementedError


def autodyne_advantage(oscillation: float, signal: float, depth: float) -> float:
    """How much stronger a square-law detector gives the whistle than it gave the programme without the oscillation.

    Parameters
    ----------
    oscillation : float or ndarray, volt, crest, > 0, at the detector
    signal : float or ndarray, volt, crest, > 0, of the carrier there
    depth : float or ndarray, depth of the carrier's modulation as a fraction, above 0 to 1

    Returns
    -------
    float or ndarray, decibel; the arguments broadcast together

    Source
    ------
    A square-law detector gives half the square of the envelope. Of the two swings beating that holds oscillation × signal
    at the whistle's pitch; of the modulated carrier alone, depth × signal² at the tone's.
    """
    raise NotImplementedError
