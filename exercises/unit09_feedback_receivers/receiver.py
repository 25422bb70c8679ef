"""A whole receiver, out of your own functions.   Lesson: Feedback receivers, sections 13 to 15
(course/lessons/unit09_feedback_receivers/receiver.md).

Aerial, a loosely coupled tuned circuit, an isolating valve, a second tuned circuit with reaction, a detector by grid leak,
telephones. Carriers are not followed from crest to crest: a signal is its envelope, complex, seen from a frame of some
frequency, so that a station 9 kHz above the frame turns 9000 times a second.
"""

from cmath import exp  # one number at a time; np.exp takes ten times as long for one

import numpy as np

from exercises.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor, tuned_voltage
from exercises.unit03_tuned_circuit.quality_factor import bandwidth as bandwidth_of
from exercises.unit05_valve.grid_leak import audio_cutoff, bias_with_carrier
from exercises.unit05_valve.load_line import operating_point
from exercises.unit06_reaction.oscillation_point import gain
from exercises.unit06_reaction.three_knobs import tuned_to

AERIAL = 30.0, 161e-12, 40e-6  # ohm, farad, henry: aerial and earth, with the winding that couples them to the first circuit
LOOSELY = 6e-6  # henry, mutual inductance of that winding and the first circuit's coil
COIL = 200e-6  # henry: of either circuit

ISOLATING = 10.6e3, 500e-12, 40e-6  # ohm, farad, henry: the isolating valve stands where the reaction set had its aerial
AMPLIFICATION = 9.29  # of the isolating valve: it drives its winding with so many times the first circuit's voltage
COUPLING = 20e-6  # henry, mutual inductance of that winding and the second coil
GRID_CONDUCTANCE = 7.2e-6  # siemens: the grid of the detector loads the second circuit
TICKLER = 2.0, 48e-6, 14e-6, 0.4e-6  # ohm, henry, and henry shared with the second coil and with the isolating valve's
VALVE = 0.807e-3, 6.98e3, 5.5e-12, 208e-12  # siemens, ohm, farad, farad: the detector's, behind its grid condenser
LEAST, MOST = 10e-12, 500e-12  # farad: the throttle condenser, its plates out and in
NEAR_EDGE = 80e-12, 100e-12  # farad: two throttles to begin from
ROUNDS = 20  # of setting throttle and tuning in turn: more than it takes
HARDENING = 500.0  # hertz for a volt squared: the valve's curve broadens the circuit as its swing grows

LEAK, LEAK_RETURN, GRID_CONDENSER = 2e6, 2.0, 100e-12  # ohm, volt, farad
ZERO_CURRENT, GRID_SLOPE = 0.5e-6, 0.12  # ampere, volt: the grid's own law
LAW = 9.29, 267e-6, -0.67  # amplification factor, perveance, offset of the detector
SUPPLY, LOAD = 90.0, 14e3  # volt, ohm: telephones and dropping resistor


def coil_resistance(frequency: float) -> float:
    """Resistance of either circuit's coil.

    Parameters
    ----------
    frequency : float or ndarray, hertz, 500 kHz to 1.7 MHz

    Returns
    -------
    float or ndarray, ohm

    Source
    ------
    Skin effect, as in unit 02: of thick wire the resistance is one part that stays and one that goes as the root of the
    frequency. Within a hundredth of `alternating_resistance` for the coil's wire, its turns lying close.
    """
    return 0.73 + 5.27 * np.sqrt(frequency / 1e6)


def second_coil(frequency: float) -> tuple[float, float, float]:
    """The second circuit's coil and what the detector's grid takes: `tuned`, as the functions of unit 06 have it.

    Parameters
    ----------
    frequency : float, hertz, as in `coil_resistance`

    Returns
    -------
    resistance, inductance, grid_conductance : float, ohm, henry, siemens
    """
    return coil_resistance(frequency), COIL, GRID_CONDUCTANCE


def first_circuit(frequency: float) -> tuple[float, float]:
    """Width of the first circuit's band, and its voltage for each volt in the aerial, tuned to a station.

    Parameters
    ----------
    frequency : float, hertz, of the station

    Returns
    -------
    bandwidth : float, hertz, between −3 dB points
    gain : float, a pure number

    Source
    ------
    `loaded_quality_factor` and `tuned_voltage` of unit 03, with the aerial's impedance at that frequency.
    """
    raise NotImplementedError


def knobs(frequency: float, bandwidth: float) -> tuple[float, float]:
    """Tuning and throttle condenser that put the second circuit on a station with just the bandwidth wanted.

    Parameters
    ----------
    frequency : float, hertz, of the station
    bandwidth : float, hertz, between −3 dB points; below 0 the set oscillates, and its swing grows as fast as a band that
        wide would let one die

    Returns
    -------
    tuning, throttle : float, farad; `tuned_to` gives the frequency back, and the bandwidth within 0.01 Hz

    Raises
    ------
    ValueError
        If the throttle does not reach so wide or so narrow a band.

    Source
    ------
    More throttle, narrower band, nearly in a straight line: solved by straight lines, from two throttles near the edge. Each
    new throttle shifts the tuning a little, which the condenser puts right: a frequency too high by a part in a hundred
    wants two parts in a hundred more capacitance.
    """
    raise NotImplementedError


def circuit_voltage(
    emf: np.ndarray,
    rate: float,
    offset: np.ndarray,
    bandwidth: np.ndarray,
    gain_bandwidth: float,
    hardening: float,
    start: complex,
) -> np.ndarray:
    """Envelope of the voltage on a tuned circuit, moment by moment, its knobs turning.

    Parameters
    ----------
    emf : ndarray of shape (n,), complex, volt, seen from the frame; each value lasts for one step
    rate : float, hertz, > 0, steps a second
    offset : float or ndarray of shape (n,), hertz, of the circuit's own frequency from the frame's
    bandwidth : float or ndarray of shape (n,), hertz, between −3 dB points of a weak signal; below 0 where it oscillates
    gain_bandwidth : float, hertz: the gain at resonance times the bandwidth
    hardening : float, hertz for a volt squared, >= 0: the swing squared, times this, adds to the bandwidth
    start : complex, volt, the envelope when the first step begins

    Returns
    -------
    ndarray of shape (n,), complex, volt, at the end of each step

    Source
    ------
    The envelope equation of unit 07, with van der Pol's curve: dv/dt = λv + π (gain × bandwidth) e, with
    λ = −π (bandwidth + hardening |v|²) + 2πj offset. Over a step in which λ and e stand still it is solved by
    v → v exp(λt) + π (gain × bandwidth) e (exp(λt) − 1)/λ.
    """
    raise NotImplementedError


def telephones(grid: np.ndarray, rate: float) -> np.ndarray:
    """What is heard of a swing on the detector's grid: the changing part of the voltage across the telephones.

    Parameters
    ----------
    grid : ndarray of shape (n,), complex or real, volt, envelope on the grid
    rate : float, hertz, > 0, values a second

    Returns
    -------
    ndarray of shape (n,), real, volt, with a mean of 0; above 0 where the carrier swells

    Source
    ------
    `bias_with_carrier` at every crest; the grid condenser smooths it, above `audio_cutoff` at the mean bias, as a tuned
    circuit twice as wide would smooth an envelope, starting at the first bias; `operating_point` turns the bias into the
    anode's voltage. The crests lie close together, and so straight lines between 400 points will do.
    """
    raise NotImplementedError


def receiver(emf: np.ndarray, rate: float, frame: float, frequency: float, crest: float) -> np.ndarray:
    """The whole receiver on one station: from what the aerial brings to what the telephones are given.

    Parameters
    ----------
    emf : ndarray of shape (n,), complex, volt, in the aerial: everything on the air near the station, seen from the frame
    rate : float, hertz, > 0, values a second
    frame : float, hertz, the frame's frequency
    frequency : float, hertz, of the station that is wanted
    crest : float, volt, > 0, of its carrier in the aerial, as the log has it; it fades about that

    Returns
    -------
    ndarray of shape (n,), real, volt, across the telephones

    Source
    ------
    Your own choice: how wide a band, and how much swing for the detector. What is asked of the sound is in the lesson.
    """
    raise NotImplementedError
