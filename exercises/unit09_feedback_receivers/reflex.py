"""Can one valve amplify twice?   Lesson: Feedback receivers, sections 4 and 5
(course/lessons/unit09_feedback_receivers/reflex.md).

The carrier goes through the valve and is detected; the tone goes back to the same grid through a transformer and
through the valve once more. At the anode two loads stand in series: a tuned circuit for the carrier, which a tone does
not notice, and the telephones for the tone, with a condenser across them, which the carrier does not notice.
"""

import numpy as np

from exercises.unit05_valve.stage_gain import stage_gain
from exercises.unit05_valve.triode_current import anode_resistance as resistance_at
from exercises.unit05_valve.triode_current import drive

SMALL = 0.1  # of the radio load: what a bypass may leave in the carrier's way; common practice, no source


def bypass_limits(radio_load: float, audio_load: float, lowest_radio: float, highest_tone: float) -> tuple[float, float]:
    """Between what limits the condenser across the telephones should lie.

    Parameters
    ----------
    radio_load : float or ndarray, ohm, > 0, of the tuned circuit at resonance
    audio_load : float or ndarray, ohm, > 0, that the telephones are to a tone
    lowest_radio : float or ndarray, hertz, > 0, to be let past
    highest_tone : float or ndarray, hertz, > 0, to be kept

    Returns
    -------
    smallest : float or ndarray, farad; its reactance to the lowest carrier is a tenth of the radio load
    largest : float or ndarray, farad; its reactance to the highest tone is the audio load; the arguments broadcast

    Source
    ------
    A tenth: common practice, no source. Reactance 1/(2πfC).
    """
    raise NotImplementedError


def path_gains(
    amplification_factor: float,
    anode_resistance: float,
    radio_load: float,
    audio_load: float,
    bypass: float,
    radio: float,
    tone: float,
) -> tuple[float, float]:
    """How much the valve amplifies the carrier, and how much the tone.

    Parameters
    ----------
    amplification_factor : float or ndarray, a pure number, > 0
    anode_resistance : float or ndarray, ohm, > 0
    radio_load : float or ndarray, ohm, > 0, of the tuned circuit to the carrier it is tuned to; nothing to a tone
    audio_load : float or ndarray, ohm, > 0, of the telephones without their condenser
    bypass : float or ndarray, farad, >= 0, across the telephones
    radio : float or ndarray, hertz, > 0, of the carrier
    tone : float or ndarray, hertz, > 0

    Returns
    -------
    radio_gain : float or ndarray, a pure number, carrier on the tuned circuit for a volt of it on the grid
    audio_gain : float or ndarray, a pure number, tone on the telephones for a volt of it on the grid; all broadcast

    Source
    ------
    μ volts behind the anode resistance, once for each frequency.
    """
    raise NotImplementedError


def swings(
    carrier: float, depth: float, radio_gain: float, efficiency: float, ratio: float, audio_gain: float
) -> tuple[float, float, float]:
    """What carrier and tone do to the grid, and what comes out.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, > 0, on the grid, unmodulated
    depth : float or ndarray, depth of modulation as a fraction, 0 to 1
    radio_gain : float or ndarray, a pure number, > 0
    efficiency : float or ndarray, a fraction, tone from the detector for the swing of the carrier's crest at it
    ratio : float or ndarray, a pure number, > 0, of the transformer that takes the tone back to the grid, step up
    audio_gain : float or ndarray, a pure number, > 0

    Returns
    -------
    radio : float or ndarray, volt, crest, on the grid when the tone is at its height
    audio : float or ndarray, volt, crest, on the grid
    heard : float or ndarray, volt, crest, on the telephones; the arguments broadcast together

    Source
    ------
    One step after the other.
    """
    raise NotImplementedError


def largest_carrier(
    anode_voltage: float,
    bias: float,
    depth: float,
    radio_gain: float,
    efficiency: float,
    ratio: float,
    amplification_factor: float,
    offset: float,
) -> float:
    """Carrier on the grid at which both swings together fill the room between cut-off and grid current.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, > 0, at rest
    bias : float or ndarray, volt, of the grid at rest
    depth, radio_gain, efficiency, ratio
        As in `swings`.
    amplification_factor, offset
        As in `triode_current`.

    Returns
    -------
    float or ndarray, volt, crest, of the unmodulated carrier; the arguments broadcast together

    Raises
    ------
    ValueError
        If there is no room: the grid rests at or above 0 V, or the valve is cut off.

    Source
    ------
    Room upwards: from the bias to 0 V. Room downwards: the drive. The smaller counts, and the swings of `swings` add.
    """
    raise NotImplementedError


def gain_slope(
    anode_voltage: float,
    grid_voltage: float,
    radio_load: float,
    audio_load: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> float:
    """By how much the carrier's gain changes for each volt that the tone moves the grid, the tone being small.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, > 0, at rest
    grid_voltage : float or ndarray, volt, at rest
    radio_load, audio_load
        As in `path_gains`; the bypass is perfect.
    amplification_factor, perveance, offset
        As in `triode_current`; current must flow.

    Returns
    -------
    float or ndarray, per volt; the arguments broadcast together

    Raises
    ------
    ValueError
        If the valve is cut off anywhere.

    Source
    ------
    The slope of μ R/(R + r), where r goes as one over the root of the drive: gain × r/(r + R)/(2 drive). With the tone the
    anode moves against the grid, so that the drive follows the grid by r/(r + audio load) only.
    """
    raise NotImplementedError


def largest_leak(audio_gain: float, ratio: float, detector_resistance: float, highest_tone: float) -> float:
    """Capacitance from anode to detector beyond which the tone may go round and round: the set sings.

    Parameters
    ----------
    audio_gain : float or ndarray, a pure number, from the grid to the anode
    ratio : float or ndarray, a pure number, of the transformer from detector to grid, step up
    detector_resistance : float or ndarray, ohm, > 0, that the tone finds at the detector
    highest_tone : float or ndarray, hertz, > 0, that transformer and valve still pass

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Raises
    ------
    ValueError
        If valve and transformer together amplify no more than once: no leak can then make it sing.

    Source
    ------
    Once round the tone must not grow: audio gain × ratio times the detector's share of what the capacitance passes,
    R/|R + 1/(2πj f C)|, is 1 there.
    """
    raise NotImplementedError
