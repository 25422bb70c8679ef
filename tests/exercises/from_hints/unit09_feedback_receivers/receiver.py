"""knobs: tuning from 1/((2πf)² COIL), throttle LEAST, then MOST. In one loop, ROUNDS times: `tuned_to`; tuning ×
(found/frequency)²; throttle² by the straight line through the last two. receiver: `first_circuit`;
`knobs(frequency, 700)`; `tuned_to` and `gain` with those; the gain times AMPLIFICATION. Multiply emf by min(1,
0.4/(crest × both gains)). `circuit_voltage` with the first circuit's width at frequency − frame, gain × width,
hardening 0; again with the second's and HARDENING; `telephones`.
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
COIL, COIL_RESISTANCE = 200e-6, 6.0  # henry, ohm: of either circuit

ISOLATING = 10.6e3, 500e-12, 40e-6  # ohm, farad, henry: the isolating valve stands where the reaction set had its aerial
AMPLIFICATION = 9.29  # of the isolating valve: it drives its winding with so many times the first circuit's voltage
COUPLING = 20e-6  # henry, mutual inductance of that winding and the second coil
TUNED = COIL_RESISTANCE, COIL, 8.5e-6  # ohm, henry, siemens: the grid of the detector loads it
TICKLER = 1.0, 12e-6, 6e-6, 0.2e-6  # ohm, henry, and henry shared with the second coil and with the isolating valve's
VALVE = 0.88e-3, 10.6e3  # siemens, ohm: the detector's
LEAST, MOST = 2e-12, 75e-12  # farad: the throttle condenser, its plates out and in
ROUNDS = 20  # of setting throttle and tuning in turn: more than it takes
HARDENING = 500.0  # hertz for a volt squared: the valve's curve broadens the circuit as its swing grows

LEAK, LEAK_RETURN, GRID_CONDENSER = 2e6, 2.0, 100e-12  # ohm, volt, farad
ZERO_CURRENT, GRID_SLOPE = 0.5e-6, 0.12  # ampere, volt: the grid's own law
LAW = 9.29, 267e-6, -0.67  # amplification factor, perveance, offset of the detector
SUPPLY, LOAD = 90.0, 14e3  # volt, ohm: telephones and dropping resistor


def first_circuit(frequency):
    w = 2 * np.pi * frequency
    resistance, capacitance, inductance = AERIAL
    aerial = resistance + 1j * w * inductance + 1 / (1j * w * capacitance)
    q = loaded_quality_factor(frequency, LOOSELY, aerial, COIL, COIL_RESISTANCE)
    return bandwidth_of(frequency, q), tuned_voltage(1.0, frequency, LOOSELY, aerial, COIL, COIL_RESISTANCE)


def knobs(frequency, bandwidth):
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * COIL)
    tried = []
    square = LEAST**2
    for _ in range(ROUNDS):
        throttle = square**0.5
        found, width = tuned_to(COUPLING, tuning, throttle, ISOLATING, TUNED, TICKLER, VALVE)
        if abs(width - bandwidth) < 1e-3 and abs(found - frequency) < 1e-3:
            return tuning, throttle
        tuning *= (found / frequency) ** 2
        tried.append((square, width))
        if len(tried) == 1:
            square = MOST**2
        elif tried[-1] != tried[-2]:
            (x1, y1), (x2, y2) = tried[-2:]
            square = min(max(x2 + (bandwidth - y2) * (x2 - x1) / (y2 - y1), LEAST**2), MOST**2)
    raise ValueError("no throttle makes the band so wide or so narrow here")


def circuit_voltage(emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    n = len(emf)
    offsets = np.broadcast_to(offset, n).tolist()
    bandwidths = np.broadcast_to(bandwidth, n).tolist()
    step = 1 / rate
    pushes = (np.pi * gain_bandwidth * np.asarray(emf)).tolist()
    v = start
    voltages = []
    for push, away, width in zip(pushes, offsets, bandwidths, strict=True):
        rate_of_change = -np.pi * (width + hardening * abs(v) ** 2) + 2j * np.pi * away
        factor = exp(rate_of_change * step)
        length = (factor - 1) / rate_of_change if rate_of_change != 0 else step
        v = v * factor + push * length
        voltages.append(v)
    return np.array(voltages, dtype=complex)


def telephones(grid, rate):
    crest = np.abs(grid)
    crests = np.linspace(crest.min(), crest.max(), 400)
    biases = bias_with_carrier(crests, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    bias = np.interp(crest, crests, biases)
    mean = np.mean(bias)
    cutoff = audio_cutoff(GRID_CONDENSER, LEAK, (LEAK_RETURN - mean) / LEAK, GRID_SLOPE)
    smooth = circuit_voltage(bias, rate, 0.0, 2 * cutoff, 2 * cutoff, 0.0, bias[0]).real
    places = np.linspace(smooth.min(), smooth.max(), 400)
    anode = np.interp(smooth, places, operating_point(SUPPLY, LOAD, places, *LAW)[0])
    return anode - np.mean(anode)


def receiver(emf, rate, frame, frequency, crest):
    first_width, first_gain = first_circuit(frequency)
    tuning, throttle = knobs(frequency, 700)
    second = (COUPLING, tuning, throttle, ISOLATING, TUNED, TICKLER, VALVE)
    _, second_width = tuned_to(*second)
    second_gain = gain(frequency, *second) * AMPLIFICATION
    volume = min(1, 0.4 / (crest * first_gain * second_gain))
    offset = frequency - frame
    middle = circuit_voltage(volume * emf, rate, offset, first_width, first_gain * first_width, 0, 0)
    grid = circuit_voltage(middle, rate, offset, second_width, second_gain * second_width, HARDENING, 0)
    return telephones(grid, rate)
