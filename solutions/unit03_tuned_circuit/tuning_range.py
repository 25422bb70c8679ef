"""Which stations are on the dial, and where?   Lesson: Tuned circuit, section 8."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit02_coil_and_condenser.vane_capacitance import power_of, vane_capacitance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency

ROUNDING = 1e-9  # a frequency outside by no more than this fraction is at the stop


@check_ranges
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
    lowest = resonant_frequency(inductance, capacitance=maximum + stray)
    return lowest, resonant_frequency(inductance, capacitance=minimum + stray)


@check_ranges
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
    return 1 / ((2 * np.pi * lowest_frequency) ** 2 * (maximum + stray))


@check_ranges(angle="the spindle turns from 0 to π radians: this is beyond a stop")
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
    return resonant_frequency(inductance, capacitance=vane_capacitance(angle, law, minimum, maximum) + stray)


@check_ranges
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
    power = power_of(law)
    lowest, highest = range_covered(inductance, minimum, maximum, stray)
    if np.any(frequency < lowest * (1 - ROUNDING)) or np.any(frequency > highest * (1 + ROUNDING)):
        raise ValueError("this set does not reach that frequency: change the coil, or the condenser across it")
    plates_out, plates_in = minimum**power, maximum**power
    wanted = 1 / ((2 * np.pi * frequency) ** 2 * inductance) - stray
    return np.pi * np.clip((wanted**power - plates_out) / (plates_in - plates_out), 0, 1)
