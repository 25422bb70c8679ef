"""What does the crystal take from the tuned circuit?   Lesson: Crystal set, section 4."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

STEPS = 11  # each nearly doubles the number of right figures
FAINT = 1e-3  # slope voltages: up to here I1/I0 is half the carrier
MOMENTS = np.cos(np.pi * (np.arange(24) + 0.5) / 24)  # a tone of crest 1, at 24 moments of half a cycle


@check_ranges
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
    return carrier / (2 * (mean_current + saturation_current) * i1_over_i0(carrier / slope_voltage))


@check_ranges
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
    return quality_factor / (1 + dynamic_resistance / detector_resistance)


@check_ranges
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
    carrier = most = np.asarray(source_voltage, dtype=float)
    for _ in range(STEPS):
        output = detector_output(carrier, load_resistance, saturation_current, slope_voltage)
        current, x = output / load_resistance + saturation_current, carrier / slope_voltage
        share = i1_over_i0(x)
        share_over_x = np.where(x < FAINT, 0.5, share / np.maximum(x, FAINT))
        grows = share**2 / (1 + load_resistance * current / slope_voltage) + 1 - share_over_x - share**2
        slope = 1 + 2 * source_resistance * current * grows / slope_voltage
        carrier = np.clip(carrier - (carrier + 2 * source_resistance * current * share - source_voltage) / slope, 0, most)
    return carrier[()], output


@check_ranges
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
    carrier, output = working_point(
        source_voltage * (1 + depth * MOMENTS), source_resistance, load_resistance, saturation_current, slope_voltage
    )
    resistance = detector_resistance(carrier, output / load_resistance, saturation_current, slope_voltage)
    tone = 2 * np.mean(output * MOMENTS)
    return np.mean(carrier**2 / (2 * resistance)), np.mean(output**2) / load_resistance, tone**2 / (2 * load_resistance)
