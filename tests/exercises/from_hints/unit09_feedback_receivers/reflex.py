"""1/(2π × lowest_radio × SMALL × radio_load), 1/(2π × highest_tone × audio_load);  np.abs of the two shares;  room =
np.minimum(−bias, drive(…)), ValueError if np.any(room <= 0), over 1 + depth + ratio × efficiency × depth × radio_gain;
with r = resistance_at(…): slope = amplification_factor × radio_load/(radio_load + r) × r/(r + radio_load)/(2 × drive) ×
r/(r + audio_load);  with b = audio_gain × ratio: leak = 1/(2π × highest_tone × detector_resistance × √(b² − 1)),
ValueError if np.any(b <= 1).
"""

import numpy as np

from exercises.unit05_valve.triode_current import anode_resistance as resistance_at
from exercises.unit05_valve.triode_current import drive

SMALL = 0.1  # of the radio load: what a bypass may leave in the carrier's way; common practice, no source


def bypass_limits(radio_load, audio_load, lowest_radio, highest_tone):
    smallest = 1 / (2 * np.pi * lowest_radio * SMALL * radio_load)
    largest = 1 / (2 * np.pi * highest_tone * audio_load)
    return smallest, largest


def bypassed(audio_load, bypass, frequency):
    return audio_load / (1 + 2j * np.pi * frequency * bypass * audio_load)


def path_gains(amplification_factor, anode_resistance, radio_load, audio_load, bypass, radio, tone):
    to_carrier = bypassed(audio_load, bypass, radio)
    to_tone = bypassed(audio_load, bypass, tone)
    return (
        np.abs(amplification_factor * radio_load / (anode_resistance + radio_load + to_carrier)),
        np.abs(amplification_factor * to_tone / (anode_resistance + to_tone)),
    )


def swings(carrier, depth, radio_gain, efficiency, ratio, audio_gain):
    audio = ratio * efficiency * depth * radio_gain * carrier
    return (1 + depth) * carrier, audio, audio_gain * audio


def largest_carrier(anode_voltage, bias, depth, radio_gain, efficiency, ratio, amplification_factor, offset):
    room = np.minimum(-bias, drive(anode_voltage, bias, amplification_factor, offset))
    if np.any(room <= 0):
        raise ValueError("there is no room on the grid")
    return room / (1 + depth + ratio * efficiency * depth * radio_gain)


def gain_slope(anode_voltage, grid_voltage, radio_load, audio_load, amplification_factor, perveance, offset):
    r = resistance_at(anode_voltage, grid_voltage, amplification_factor, perveance, offset)
    driven = drive(anode_voltage, grid_voltage, amplification_factor, offset)
    gain = amplification_factor * radio_load / (radio_load + r)
    return gain * r / (r + radio_load) / (2 * driven) * r / (r + audio_load)


def largest_leak(audio_gain, ratio, detector_resistance, highest_tone):
    once = audio_gain * ratio
    if np.any(once <= 1):
        raise ValueError("valve and transformer do not amplify: no leak can make it sing")
    return 1 / (2 * np.pi * highest_tone * detector_resistance * np.sqrt(once**2 - 1))
