"""Slopes: the mean of mutual_conductance at grid_voltage + carrier × cos θ and that of the same × cos θ, θ = 2π ×
k/1000, k = 0 … 999. Gain: bias = bias_with_carrier(carrier, …); current = (LEAK_RETURN − bias)/LEAK; reached =
grid_gain(carrier, tone, …) times exp(−1j arctan(tone over audio_cutoff(…))); anode from operating_point(HT,
STEADY_RESISTANCE, bias, *LAW); gain = |reached × first − second| / (1/TONE_RESISTANCE + first/LAW[0]). working_point
takes the rest current ZERO_CURRENT × exp(rest/GRID_SLOPE) for the saturation current, and source_voltage and
source_resistance both times LEAK/(LEAK + source_resistance). Power: (gain × (crest − trough)/2)² over twice
TONE_RESISTANCE.
"""

import numpy as np

from exercises.unit04_crystal_set.crystal_set import LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE
from exercises.unit04_crystal_set.detector_load import detector_powers, working_point
from exercises.unit05_valve.grid_leak import audio_cutoff, bias_with_carrier, grid_gain, rest_bias
from exercises.unit05_valve.load_line import operating_point
from exercises.unit05_valve.triode_current import mutual_conductance

LAW = 9.29, 267e-6, -0.67  # type 30: amplification factor, perveance, offset, fitted to its manual
HT = 90.0  # volt
STEADY_RESISTANCE = 14e3  # ohm: telephones and dropping resistor
TONE_RESISTANCE = 20e3  # ohm: the telephones at the tone
LEAK, CONDENSER = 2e6, 100e-12  # ohm, farad
LEAK_RETURN = 2.0  # volt: the leak goes to the positive end of the filament
ZERO_CURRENT, GRID_SLOPE = 0.5e-6, 0.12  # ampere, volt: the grid's own law, typical of such a filament

CYCLE = np.cos(2 * np.pi * np.arange(1000) / 1000)  # a thousand moments of the carrier


def anode_slopes(anode_voltage, grid_voltage, carrier, amplification_factor, perveance, offset):
    law = amplification_factor, perveance, offset
    slope = mutual_conductance(anode_voltage, grid_voltage + carrier * CYCLE, *law)
    return np.mean(slope), np.mean(slope * CYCLE)


def detector_gain(carrier, tone):
    bias = bias_with_carrier(carrier, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    grid_current = (LEAK_RETURN - bias) / LEAK
    cutoff = audio_cutoff(CONDENSER, LEAK, grid_current, GRID_SLOPE)
    on_grid = grid_gain(carrier, tone, CONDENSER, LEAK, grid_current, GRID_SLOPE) * np.exp(-1j * np.arctan(tone / cutoff))
    anode_voltage, _ = operating_point(HT, STEADY_RESISTANCE, bias, *LAW)
    by_bias, by_carrier = anode_slopes(anode_voltage, bias, carrier, *LAW)
    return np.abs(on_grid * by_bias - by_carrier) / (1 / TONE_RESISTANCE + by_bias / LAW[0])


def one_valve_set(source_voltage, source_resistance, depth, tone):
    share = LEAK / (LEAK + source_resistance)
    rest = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    rest_current = ZERO_CURRENT * np.exp(rest / GRID_SLOPE)

    def carrier_at_grid(envelope):
        voltage = source_voltage * share * envelope
        return working_point(voltage, source_resistance * share, LEAK, rest_current, GRID_SLOPE)[0]

    swing = (carrier_at_grid(1 + depth) - carrier_at_grid(1 - depth)) / 2
    return (detector_gain(carrier_at_grid(1), tone) * swing) ** 2 / (2 * TONE_RESISTANCE)


def louder_than_crystal(source_voltage, source_resistance, depth, tone):
    valve = one_valve_set(source_voltage, source_resistance, depth, tone)
    crystal = detector_powers(source_voltage, source_resistance, depth, LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)[2]
    return 10 * np.log10(valve / crystal)
