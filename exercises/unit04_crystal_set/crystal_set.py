"""From the transmitter to the ear.   Lesson: Crystal set, section 6 (course/lessons/unit04_crystal_set/ear.md).

The club's set: an inverted-L aerial and an earth, a coil in the aerial that can be slid along the tuned coil, a
germanium crystal, and telephones. In series with the telephones is a resistor with a condenser across it, which makes
the steady current find the same resistance as the tone does.
"""

import numpy as np

from exercises.unit01_signal.aerial_voltage import aerial_capacitance, aerial_emf, effective_height
from exercises.unit01_signal.field_strength import ground_wave_field
from exercises.unit01_signal.radiation_resistance import available_power, radiation_resistance
from exercises.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor, tuned_voltage
from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance, series_impedance
from exercises.unit04_crystal_set.detector_load import detector_powers
from exercises.unit04_crystal_set.phone_loudness import hearing_threshold, sound_pressure_level

HEIGHT, TOP, WIRE_RADIUS = 8.0, 20.0, 1e-3  # metre: the club's aerial
EARTH_RESISTANCE = 30.0  # ohm, with the wire's own
AERIAL_COIL = 50e-6  # henry
COIL = 200e-6  # henry
SATURATION_CURRENT, SLOPE_VOLTAGE = 1e-6, 30e-3  # ampere, volt: a germanium point contact
LOAD = 20e3  # ohm, steady current and tone alike
SENSITIVITY = 110.0  # decibel of sound pressure from a milliwatt


def coil_resistance(frequency: float) -> float:
    """Resistance of the tuned coil, in series with it.

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
    return 0.73 + 5.27 * np.sqrt(np.asarray(frequency) / 1e6)


def aerial_impedance(
    frequency: float,
    height: float,
    top_length: float,
    wire_radius: float,
    loss_resistance: float,
    coil_inductance: float,
) -> complex:
    """Impedance all the way round the aerial: wire, aerial coil and earth.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    height : float or ndarray, metre, of the upright part, > 0
    top_length : float or ndarray, metre, of the level part, at least `height`
    wire_radius : float or ndarray, metre, > 0
    loss_resistance : float or ndarray, ohm, >= 0, of wire and earth
    coil_inductance : float or ndarray, henry, >= 0, of the aerial coil

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast together

    Source
    ------
    An aerial much shorter than a quarter of a wave is its capacitance in series with its radiation and loss resistance.
    """
    raise NotImplementedError


def tuned_source(
    emf: float,
    frequency: float,
    mutual_inductance: float,
    aerial_impedance: complex,
    inductance: float,
    resistance: float,
) -> tuple[float, float]:
    """What the diode is joined to: aerial and tuned circuit, at resonance, as one voltage behind one resistance.

    Parameters
    ----------
    emf : float or ndarray, volt, r.m.s., >= 0, in series with the aerial
    frequency : float or ndarray, hertz, > 0
    mutual_inductance : float or ndarray, henry, between the aerial coil and the tuned coil
    aerial_impedance : complex or ndarray, ohm, real part > 0, all the way round
    inductance : float or ndarray, henry, > 0, of the tuned coil
    resistance : float or ndarray, ohm, > 0, of the tuned circuit by itself

    Returns
    -------
    voltage : float or ndarray, volt, crest, across the tuned condenser
    source_resistance : float or ndarray, ohm; the arguments broadcast together

    Raises
    ------
    ValueError
        If the reflected reactance takes away all of the coil's own: no condenser tunes such a circuit.

    Source
    ------
    With Q that of the circuit loaded by the aerial and ω (L + L') its coil's reactance, the reflected one included, the
    resistance across a circuit of high Q is Q ω (L + L').
    """
    raise NotImplementedError


def power_budget(
    radiated_power: float, field: float, frequency: float, mutual_inductance: float, depth: float
) -> tuple[float, float, float, float, float, float, float]:
    """Power at seven places between the transmitter and the telephones of the club's set, averaged over the tone.

    Parameters
    ----------
    radiated_power : float, watt, > 0, of the carrier alone
    field : float, volt per metre, r.m.s., > 0, of the carrier at the set
    frequency : float, hertz, > 0
    mutual_inductance : float, henry, > 0, between the aerial coil and the tuned coil
    depth : float, depth of modulation as a fraction, 0 to 1

    Returns
    -------
    transmitter, wave, aerial, circuit, diode, load, tone : float, watt
        Sent out; what an aerial without losses could take from the wave; what the club's aerial can give; what the
        tuned circuit can give; what the diode takes; what it gives to the load; what of that is the tone.

    Raises
    ------
    ValueError
        If the wave would give more than was sent out: no transmitter of that power makes such a field, unless the set
        stands so close to it that the field is no wave yet. If the coils are coupled more closely than coils can be.

    Source
    ------
    Available power at each place; the tone adds depth²/2 to a carrier's power.
    """
    raise NotImplementedError


def losses(powers: float) -> float:
    """What is lost at each step of a chain of powers.

    Parameters
    ----------
    powers : sequence of float or ndarray of shape (n,), watt, > 0

    Returns
    -------
    ndarray of shape (n - 1,), decibel, positive where power is lost

    Source
    ------
    Definition of the decibel.
    """
    raise NotImplementedError


def crystal_set(
    radiated_power: float,
    distance: float,
    frequency: float,
    conductivity: float,
    relative_permittivity: float,
    mutual_inductance: float,
    depth: float,
    tone: float,
) -> float:
    """How far above the faintest that can be heard a station's tone is, in the telephones of the club's set.

    Parameters
    ----------
    radiated_power : float, watt, > 0, of the station's carrier
    distance : float, metre, > 0
    frequency : float, hertz, > 0
    conductivity : float, siemens per metre, of the ground between, > 0
    relative_permittivity : float, a ratio, of the ground between, >= 1
    mutual_inductance : float, henry, > 0, between the aerial coil and the tuned coil
    depth : float, depth of modulation as a fraction, above 0 to 1
    tone : float, hertz, 20 to 12500; far less than half the width of the tuned circuit's band

    Returns
    -------
    float, decibel above the threshold of hearing; negative for a tone that cannot be heard

    Raises
    ------
    ValueError
        As `power_budget`: within some half a wavelength of the transmitter, or coils coupled too closely.

    Source
    ------
    The ground wave, the power budget, the telephones' sensitivity and the threshold of hearing, one after the other.
    """
    raise NotImplementedError
