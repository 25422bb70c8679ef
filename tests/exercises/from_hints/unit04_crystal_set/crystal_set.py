"""ValueError if mutual_inductance² > AERIAL_COIL × COIL: no coils are coupled so closely. Budget: radiated_power,
available_power with the radiation resistance alone, then with the aerial's whole resistance, then of the tuned source
(r.m.s.), each of these three times (1 + depth²/2); then the three of the detector. Loudness: sound_pressure_level(the
power of the tone, SENSITIVITY) − hearing_threshold(tone).
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


def aerial_impedance(frequency, height, top_length, wire_radius, loss_resistance, coil_inductance):
    resistance = radiation_resistance(effective_height(height, top_length), frequency) + loss_resistance
    capacitance = aerial_capacitance(height, top_length, wire_radius)
    return series_impedance(frequency, coil_inductance, capacitance, resistance)


def tuned_source(emf, frequency, mutual_inductance, aerial_impedance, inductance, resistance):
    reflected = reflected_impedance(frequency, mutual_inductance, aerial_impedance)
    reactance = 2 * np.pi * frequency * inductance + np.imag(reflected)
    if np.any(reactance <= 0):
        raise ValueError("no condenser tunes this circuit: draw the aerial coil off")
    crest = np.sqrt(2) * tuned_voltage(emf, frequency, mutual_inductance, aerial_impedance, inductance, resistance)
    q = loaded_quality_factor(frequency, mutual_inductance, aerial_impedance, inductance, resistance)
    return crest, q * reactance


def power_budget(radiated_power, field, frequency, mutual_inductance, depth):
    if mutual_inductance**2 > AERIAL_COIL * COIL:
        raise ValueError("no coils are coupled so closely")
    height = effective_height(HEIGHT, TOP)
    emf = aerial_emf(field, height)
    impedance = aerial_impedance(frequency, HEIGHT, TOP, WIRE_RADIUS, EARTH_RESISTANCE, AERIAL_COIL)
    voltage, source_resistance = tuned_source(emf, frequency, mutual_inductance, impedance, COIL, coil_resistance(frequency))
    wave = available_power(emf, radiation_resistance(height, frequency))
    if wave > radiated_power:
        raise ValueError("the wave cannot give more than the transmitter sent out")
    aerial = available_power(emf, np.real(impedance))
    circuit = available_power(voltage / np.sqrt(2), source_resistance)
    with_tone = 1 + depth**2 / 2
    diode, load, tone = detector_powers(voltage, source_resistance, depth, LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)
    return radiated_power * with_tone, wave * with_tone, aerial * with_tone, circuit * with_tone, diode, load, tone


def losses(powers):
    powers = np.asarray(powers)
    return 10 * np.log10(powers[:-1] / powers[1:])


def crystal_set(radiated_power, distance, frequency, conductivity, relative_permittivity, mutual_inductance, depth, tone):
    field = ground_wave_field(radiated_power, distance, frequency, conductivity, relative_permittivity)
    in_the_tone = power_budget(radiated_power, field, frequency, mutual_inductance, depth)[-1]
    return sound_pressure_level(in_the_tone, SENSITIVITY) - hearing_threshold(tone)
