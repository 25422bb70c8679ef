"""knobs: tuning from 1/((2π × frequency)² × COIL), throttle NEAR_EDGE[0], then NEAR_EDGE[1]. In one loop, ROUNDS times:
`tuned_to`, its `tuned` from second_coil(frequency); tuning × (found/frequency)²; throttle by the straight line through
the last two, but never beyond LEAST or MOST. receiver: `first_circuit`; `knobs(frequency, 700)`; `tuned_to` and `gain`
with those; the gain times AMPLIFICATION. Multiply emf by min(1, 0.4/(crest × both gains)). `circuit_voltage` with the
first circuit's width at frequency − frame, gain × width, hardening 0; again with the second's and HARDENING;
`telephones`.
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


def first_circuit(frequency):
    w = 2 * np.pi * frequency
    resistance, capacitance, inductance = AERIAL
    aerial = resistance + 1j * w * inductance + 1 / (1j * w * capacitance)
    q = loaded_quality_factor(frequency, LOOSELY, aerial, COIL, coil_resistance(frequency))
    return bandwidth_of(frequency, q), tuned_voltage(1.0, frequency, LOOSELY, aerial, COIL, coil_resistance(frequency))


def knobs(frequency, bandwidth):
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * COIL)
    tried = []
    throttle = NEAR_EDGE[0]
    for _ in range(ROUNDS):
        found, width = tuned_to(COUPLING, tuning, throttle, ISOLATING, second_coil(frequency), TICKLER, VALVE)
        if abs(width - bandwidth) < 1e-3 and abs(found - frequency) < 1e-3:
            return tuning, throttle
        tuning *= (found / frequency) ** 2
        tried.append((throttle, width))
        if len(tried) == 1:
            throttle = NEAR_EDGE[1]
        elif tried[-1] != tried[-2]:
            (x1, y1), (x2, y2) = tried[-2:]
            throttle = min(max(x2 + (bandwidth - y2) * (x2 - x1) / (y2 - y1), LEAST), MOST)
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
    second = (COUPLING, tuning, throttle, ISOLATING, second_coil(frequency), TICKLER, VALVE)
    _, second_width = tuned_to(*second)
    second_gain = gain(frequency, *second) * AMPLIFICATION
    volume = min(1, 0.4 / (crest * first_gain * second_gain))
    offset = frequency - frame
    middle = circuit_voltage(volume * emf, rate, offset, first_width, first_gain * first_width, 0, 0)
    grid = circuit_voltage(middle, rate, offset, second_width, second_gain * second_width, HARDENING, 0)
    return telephones(grid, rate)
