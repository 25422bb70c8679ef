"""middle/√((1 + (low/tone)²)(1 + (tone/high)²));  with s = 2π × 1j × tone, r = anode_resistance and n = ratio, c = n² ×
shunt_capacitance: amplification_factor × n/|(1 + r/(s × primary_inductance))(1 + s² × leakage_inductance × c) + s × r ×
c|;  with i0 = triode_current(anode_voltage, bias, …) and i1, i2 = operating_point(anode_voltage + i0 × load, load, bias
± swing, …)[1]: load × (i1 − i2)²/8, (i1 + i2 − 2 × i0)/(2 × (i1 − i2));  ratios[np.argmax(np.where(harmonic >
most_harmonic, 0, power))];  sensitivity + 10 log10 power − 20 log10 distance;  battery = supply × steady_current,
battery − tone_power, capacity/steady_current.
"""

import numpy as np

from exercises.unit05_valve.load_line import operating_point
from exercises.unit05_valve.stage_gain import band_edges, stage_gain
from exercises.unit05_valve.triode_current import triode_current


def resistance_gain(amplification_factor, anode_resistance, load, leak, coupling_capacitance, shunt_capacitance, tone):
    middle = stage_gain(amplification_factor, anode_resistance, load * leak / (load + leak))
    low, high = band_edges(anode_resistance, load, leak, coupling_capacitance, shunt_capacitance)
    return middle / np.sqrt((1 + (low / tone) ** 2) * (1 + (tone / high) ** 2))


def transformer_gain(
    amplification_factor, anode_resistance, ratio, primary_inductance, leakage_inductance, shunt_capacitance, tone
):
    s = 2j * np.pi * tone
    seen = ratio**2 * shunt_capacitance
    bass = 1 + anode_resistance / (s * primary_inductance)
    treble = 1 + s**2 * leakage_inductance * seen
    return amplification_factor * ratio / np.abs(bass * treble + s * anode_resistance * seen)


def output_power(anode_voltage, bias, swing, load, amplification_factor, perveance, offset):
    if np.any(swing > -bias):
        raise ValueError("the swing is larger than the bias: the grid would take current")
    law = (amplification_factor, perveance, offset)
    rest = triode_current(anode_voltage, bias, *law)
    supply = anode_voltage + rest * load
    crest = operating_point(supply, load, bias + swing, *law)[1]
    trough = operating_point(supply, load, bias - swing, *law)[1]
    power = load * (crest - trough) ** 2 / 8
    return power, (crest + trough - 2 * rest) / (2 * (crest - trough))


def best_tap(ratios, speaker_resistance, most_harmonic, anode_voltage, bias, amplification_factor, perveance, offset):
    load = ratios**2 * speaker_resistance
    power, harmonic = output_power(anode_voltage, bias, -bias, load, amplification_factor, perveance, offset)
    if np.all(harmonic > most_harmonic):
        raise ValueError("no tap keeps the second harmonic within what is allowed")
    return ratios[np.argmax(np.where(harmonic > most_harmonic, 0, power))]


def speaker_level(power, sensitivity, distance):
    return sensitivity + 10 * np.log10(power) - 20 * np.log10(distance)


def battery_needs(supply, steady_current, tone_power, capacity):
    battery = supply * steady_current
    if np.any(tone_power > battery / 2):
        raise ValueError("the tone cannot have more than half of the battery's power")
    return battery, battery - tone_power, capacity / steady_current
