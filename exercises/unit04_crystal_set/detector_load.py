"""What does the crystal take from the tuned circuit?   Lesson: Crystal set, section 4
(course/lessons/unit04_crystal_set/load.md)."""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

MOMENTS = np.cos(np.pi * (np.arange(24) + 0.5) / 24)  # a tone of crest 1, at 24 moments of half a cycle


def detector_resistance(carrier: float, mean_current: float, saturation_current: float, slope_voltage: float) -> float:
    """Resistance that a working detector seems to be, to the carrier that feeds it.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, > 0, at the diode
    mean_current : float or ndarray, ampere, through the load: rectified voltage over load resistance
    saturation_current : float or ndarray, ampere, > 0, of the diode
    slope_voltage : float or ndarray, volt, > 0, of the diode

    Returns
    -------
    float or ndarray, ohm; the arguments broadcast together

    Source
    ------
    K. K. Clarke and D. T. Hess, Communication Circuits, 1971, ch. 10 (from memory): the part of the diode's current
    that keeps the carrier's time has a crest of 2 (I + Is) I1(x)/I0(x), where x is the carrier over the slope voltage.
    """
    raise NotImplementedError


def quality_factor_with_detector(quality_factor: float, dynamic_resistance: float, detector_resistance: float) -> float:
    """Q of a tuned circuit with a detector across it.

    Parameters
    ----------
    quality_factor : float or ndarray, a pure number, > 0, without the detector
    dynamic_resistance : float or ndarray, ohm, > 0, of the circuit at resonance without the detector
    detector_resistance : float or ndarray, ohm, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    Q goes as the resistance across the circuit: here two of them side by side.
    """
    raise NotImplementedError


def working_point(
    source_voltage: float,
    source_resistance: float,
    load_resistance: float,
    saturation_current: float,
    slope_voltage: float,
) -> tuple[float, float]:
    """Carrier at the diode and voltage on its load, when each depends on the other.

    The carrier falls because the diode loads the tuned circuit; how much it loads depends on the carrier.

    Parameters
    ----------
    source_voltage : float or ndarray, volt, crest, >= 0, on the tuned circuit before the diode is joined to it
    source_resistance : float or ndarray, ohm, > 0, of the tuned circuit at resonance
    load_resistance : float or ndarray, ohm, > 0, on which the diode works
    saturation_current : float or ndarray, ampere, > 0, of the diode
    slope_voltage : float or ndarray, volt, > 0, of the diode

    Returns
    -------
    carrier : float or ndarray, volt, crest, at the diode
    output : float or ndarray, volt, across the load; the arguments broadcast together

    Source
    ------
    Ohm's law for the carrier, source voltage = carrier + source resistance × 2 (I + Is) I1(x)/I0(x), whose right side
    only grows with the carrier: one carrier makes it hold.
    """
    raise NotImplementedError


def detector_powers(
    source_voltage: float,
    source_resistance: float,
    depth: float,
    load_resistance: float,
    saturation_current: float,
    slope_voltage: float,
) -> tuple[float, float, float]:
    """Powers, averaged over a cycle of the tone, on their way through the detector.

    The tone is slow: tuned circuit, diode and load follow the envelope from moment to moment.

    Parameters
    ----------
    source_voltage : float, volt, crest of the unmodulated carrier on the tuned circuit, > 0, before the diode is joined
    source_resistance : float, ohm, > 0, of the tuned circuit at resonance
    depth : float, depth of modulation as a fraction, 0 to 1
    load_resistance : float, ohm, > 0
    saturation_current : float, ampere, > 0, of the diode
    slope_voltage : float, volt, > 0, of the diode

    Returns
    -------
    into_diode, rectified, tone : float, watt
        What the diode takes from the tuned circuit; what it gives to the load, steady current, tone and overtones
        together; and what of that is the tone.

    Source
    ------
    The working point at each moment; the tone's crest is twice the average of output times cos over its cycle.
    """
    raise NotImplementedError
