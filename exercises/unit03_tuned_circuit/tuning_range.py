"""Which stations are on the dial, and where?   Lesson: Tuned circuit, section 8
(course/lessons/unit03_tuned_circuit/dial.md)."""

import numpy as np

from exercises.unit02_coil_and_condenser.vane_capacitance import LAWS, vane_capacitance
from exercises.unit03_tuned_circuit.resonance import resonant_frequency


def range_covered(inductance: float, minimum: float, maximum: float, stray: float) -> tuple[float, float]:
    """Lowest and highest frequency that a coil and a variable condenser tune to.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    minimum, maximum : float or ndarray, farad, > 0
        Capacitance of the condenser alone, plates out and plates in.
    stray : float or ndarray, farad, >= 0
        Everything else across the coil: its own capacitance, wiring, valve or detector.

    Returns
    -------
    lowest, highest : float or ndarray, hertz; the arguments broadcast
    """
    raise NotImplementedError


def tuning_inductance(lowest_frequency: float, maximum: float, stray: float) -> float:
    """Inductance of the coil that puts a frequency at the very end of the dial, plates in.

    Parameters
    ----------
    lowest_frequency : float or ndarray, hertz, > 0
    maximum : float or ndarray, farad, > 0, of the condenser alone, plates in
    stray : float or ndarray, farad, >= 0, everything else across the coil

    Returns
    -------
    float or ndarray, henry; the arguments broadcast
    """
    raise NotImplementedError


def dial_frequency(angle: float, law: str, minimum: float, maximum: float, stray: float, inductance: float) -> float:
    """Frequency tuned to at an angle of the condenser's spindle.

    Parameters
    ----------
    angle : float or ndarray, radian, 0 (plates out) to π (plates in)
    law : str, "capacitance", "wavelength" or "frequency"
        What the condenser alone is even in, as for `vane_capacitance` of unit 02.
    minimum, maximum : float or ndarray, farad, > 0, of the condenser alone
    stray : float or ndarray, farad, >= 0, everything else across the coil
    inductance : float or ndarray, henry, > 0

    Returns
    -------
    float or ndarray, hertz; the numbers broadcast

    Raises
    ------
    ValueError
        If there is no such law, or any angle is beyond a stop.
    """
    raise NotImplementedError


def dial_angle(frequency: float, law: str, minimum: float, maximum: float, stray: float, inductance: float) -> float:
    """Angle of the spindle at which a station is found.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    law, minimum, maximum, stray, inductance
        As for `dial_frequency`.

    Returns
    -------
    float or ndarray, radian, 0 (plates out) to π (plates in)

    Raises
    ------
    ValueError
        If there is no such law, or any frequency is outside the range covered by more than one part in 10⁹ (rounding).
    """
    raise NotImplementedError
