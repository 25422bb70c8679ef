"""What is the least that can be heard?   Lesson: Two stations, section 6 (course/lessons/unit08_two_stations/noise.md).

Noise is a voltage with no pattern. What counts of it is the r.m.s. value in the band that is let through, and of noises that
know nothing of each other the squares add. All of it is brought to one place: the aerial, in series with it.
"""

import numpy as np

from exercises.unit01_signal.radiation_resistance import radiation_resistance

BOLTZMANN = 1.380649e-23  # joule per kelvin, exact by definition
ELECTRON_CHARGE = 1.602176634e-19  # coulomb, exact by definition
ROOM = 290.0  # kelvin, the reference temperature of ITU-R P.372


def thermal_noise(resistance: float, bandwidth: float, temperature: float) -> float:
    """Voltage that the heat in a resistance makes in series with it.

    Parameters
    ----------
    resistance : float or ndarray, ohm, >= 0
    bandwidth : float or ndarray, hertz, >= 0
    temperature : float or ndarray, kelvin, >= 0

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    H. Nyquist, Physical Review 32, 110 (1928): its square is 4kTR for each hertz.
    """
    raise NotImplementedError


def shot_noise(current: float, bandwidth: float) -> float:
    """Fluctuation of a current whose electrons come one by one, each when it likes.

    Parameters
    ----------
    current : float or ndarray, ampere, >= 0
    bandwidth : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, ampere, r.m.s.; the arguments broadcast together

    Source
    ------
    W. Schottky, Annalen der Physik 57, 541 (1918) (from memory): its square is 2eI for each hertz. It holds for a grid's
    current, which no cloud of electrons holds back.
    """
    raise NotImplementedError


def country_noise(noise_figure: float, frequency: float, bandwidth: float, effective_height: float) -> float:
    """Voltage that the radio noise of a place puts in series with a short aerial.

    Parameters
    ----------
    noise_figure : float or ndarray, decibel, above the heat of a resistance at 290 K: the Fa of Recommendation ITU-R P.372
    frequency : float or ndarray, hertz, > 0
    bandwidth : float or ndarray, hertz, >= 0
    effective_height : float or ndarray, metre, > 0, of the aerial

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    Recommendation ITU-R P.372: what a short aerial without losses takes up is Fa above k × 290 K × bandwidth. So its
    radiation resistance is as noisy as if it were that many times as hot.
    """
    raise NotImplementedError


def circuit_noise(resistance: float, reactance: float, leak_resistance: float, grid_current: float, bandwidth: float) -> float:
    """Voltage that coil, leak and grid together put in series with the tuned coil, in a room of 290 K.

    Parameters
    ----------
    resistance : float or ndarray, ohm, >= 0, of the tuned coil, in series with it
    reactance : float or ndarray, ohm, > 0, of the tuning condenser, and so of the coil
    leak_resistance : float or ndarray, ohm, > 0, across the condenser
    grid_current : float or ndarray, ampere, >= 0, into the grid, which is joined across the condenser
    bandwidth : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    By Norton and Thévenin a current i into the two ends of a condenser of reactance X does to the circuit what a voltage
    iX does in series with it. The leak's current has the square 4kT/R for each hertz. The squares add.
    """
    raise NotImplementedError


def set_noise(
    circuit_noise: float,
    quality_factor: float,
    mutual_conductance: float,
    induced: float,
    aerial_resistance: float,
    bandwidth: float,
) -> float:
    """All noise that a set makes by itself, as a voltage in series with the aerial.

    Parameters
    ----------
    circuit_noise : float or ndarray, volt, r.m.s., >= 0, in series with the tuned coil
    quality_factor : float or ndarray, a pure number, > 0, of the tuned circuit with all that loads it, without reaction
    mutual_conductance : float or ndarray, siemens, > 0, of the valve, a triode
    induced : float or ndarray, a fraction, > 0: volts in series with the tuned coil for each volt in series with the aerial
    aerial_resistance : float or ndarray, ohm, >= 0, of earth and wire, which are as warm as the room
    bandwidth : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    A triode's anode current fluctuates as if 2.5/(mutual conductance) of resistance stood before its grid (W. A. Harris,
    RCA Review 5, 505, 1941, from memory). The circuit multiplies by Q what is in series with it, so 1/Q of the valve's
    voltage there does as much; reaction multiplies both alike. What is in series with the coil counts 1/`induced` times at
    the aerial. The squares add.
    """
    raise NotImplementedError


def noise_together(outside: float, own: float) -> tuple[float, float]:
    """The noise of the place and the set's own together, and how much of it is the set's own.

    Parameters
    ----------
    outside : float or ndarray, volt, r.m.s., > 0, of the place
    own : float or ndarray, volt, r.m.s., >= 0, of the set, at the same terminals

    Returns
    -------
    together : float or ndarray, volt, r.m.s.
    share : float or ndarray, a fraction of the noise power; the arguments broadcast together

    Source
    ------
    Two voltages that know nothing of each other add by their squares, as their powers do.
    """
    raise NotImplementedError


def least_field(noise: float, effective_height: float, depth: float, ratio: float) -> float:
    """Field of a carrier whose programme stands so many decibels above the noise, behind the detector.

    Parameters
    ----------
    noise : float or ndarray, volt, r.m.s., >= 0, in series with the aerial, in the whole band of both sidebands
    effective_height : float or ndarray, metre, > 0, of the aerial
    depth : float or ndarray, a fraction, above 0 to 1, to which a tone modulates the carrier
    ratio : float or ndarray, decibel, of the tone's power to the noise's

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together. It holds for a carrier some 10 dB or more
        above the noise: a weaker one is held down by it in the detector

    Raises
    ------
    ValueError
        If the depth is 0 or less, or more than 1.

    Source
    ------
    The crest of a strong carrier follows the part of the noise that is in step with it, whose r.m.s. value is that of all
    the noise; the tone swings the crest by depth × carrier (S. O. Rice, Bell System Technical Journal 24, 46, 1945, from
    memory). So the ratio of the powers is depth² × carrier²/noise², both r.m.s.
    """
    raise NotImplementedError
