"""What does a strong station do to a weak one in the detector?   Lesson: Two stations, section 2
(course/lessons/unit08_two_stations/index.md).

Two carriers together swell and shrink: they beat. The detector's condenser follows the beat, and the ear, for which it
is too high, hears the average. What the weak station adds to that average, as its own modulation makes it stronger and
weaker, is all that is left of its programme.
"""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import elliptic_integrals
from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

BEAT = np.cos(np.pi * (np.arange(90) + 0.5) / 90)  # the angle between two carriers at 90 moments of half a beat


def mean_envelope(strong: float, weak: float) -> float:
    """Crest of two carriers together, averaged over a beat: what a perfect, linear rectifier makes of them.

    Parameters
    ----------
    strong : float or ndarray, volt, crest, >= 0, of the one carrier
    weak : float or ndarray, volt, crest, >= 0, not `strong`, of the other

    Returns
    -------
    float or ndarray, volt: a little above `strong`, by `weak`² over four times `strong` for a weak one

    Source
    ------
    The average of sqrt(A² + B² + 2AB cos φ) round the beat, (2/π) (A + B) E(m) with m = 4AB/(A + B)², E being the complete
    elliptic integral of the second kind (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, NBS AMS 55,
    1964, eq. 17.3.3).
    """
    raise NotImplementedError


def two_carrier_output(
    strong: float, weak: float, load_resistance: float, saturation_current: float, slope_voltage: float
) -> float:
    """Steady voltage on the load of a real diode that two carriers reach together, averaged over their beat.

    Parameters
    ----------
    strong, weak : float or ndarray, volt, crest, >= 0, of the two carriers at the diode
    load_resistance : float or ndarray, ohm, > 0; the condenser across it passes the carriers and follows the beat
    saturation_current : float or ndarray, ampere, > 0, of the diode
    slope_voltage : float or ndarray, volt, > 0, of the diode

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    `detector_output` of unit 04, worked at each moment with the crest sqrt(A² + B² + 2AB cos φ) that the two carriers
    then have together, and averaged over φ.
    """
    raise NotImplementedError


def suppression(
    strong: float, weak: float, depth: float, load_resistance: float, saturation_current: float, slope_voltage: float
) -> float:
    """Level of the weak station's programme beside the strong carrier, against its level with the strong one switched off.

    Parameters
    ----------
    strong : float or ndarray, volt, crest, >= 0, of the one carrier at the diode; without it the suppression is 0 dB
    weak : float or ndarray, volt, crest, > 0, of the other
    depth : float or ndarray, a fraction, above 0 to 1: the weak carrier swings between (1 − depth) and (1 + depth) times `weak`
    load_resistance, saturation_current, slope_voltage
        As in `two_carrier_output`.

    Returns
    -------
    float or ndarray, decibel, negative where the strong carrier holds the weak programme down, positive where it helps;
        the arguments broadcast together

    Raises
    ------
    ValueError
        If there is no weak station anywhere, or no modulation on it: there is then no programme to be held down.

    Source
    ------
    The swing of `two_carrier_output` from trough to crest of the weak station's modulation, with the strong carrier and
    without it. A linear rectifier would leave B/(2A) of it: R. T. Beatty, Experimental Wireless 5, 300 (1928), and
    S. Butterworth, Experimental Wireless 6, 619 (1929) (both from memory).
    """

    raise NotImplementedError


def faint_suppression(strong: float, load_resistance: float, saturation_current: float, slope_voltage: float) -> float:
    """Suppression of a station so faint that by itself it would be far down on the diode's square law.

    Parameters
    ----------
    strong : float or ndarray, volt, crest, >= 0, of the other carrier at the diode
    load_resistance : float or ndarray, ohm, > 0
    saturation_current : float or ndarray, ampere, > 0, of the diode
    slope_voltage : float or ndarray, volt, > 0, of the diode

    Returns
    -------
    float or ndarray, decibel, 0 without the other carrier; above 0 where that lifts a loaded diode over its bend and so
        helps the faint one; the arguments broadcast together

    Source
    ------
    A faint carrier B adds (B²/4)(F″ + F′/A) to the average of an output F(A). With x = A/n, r = R Is/n, y = F/n as in
    unit 04, s = y + r and q = I1(x)/I0(x), that is (s/(1 + s)) (1 − q² + q²/(1 + s)²) times B²/(4n), and r/(1 + r) times
    B²/(4n) where A is nothing.
    """
    raise NotImplementedError
