"""mean_envelope: with m = 4 × strong × weak/(strong + weak)² and _, E = elliptic_integrals(m): 2/π × (strong + weak) ×
E. two_carrier_output: give strong, weak and the diode's three numbers a last axis by np.asarray(value)[...,
np.newaxis], work the crest with BEAT for the cosine of the angle, np.mean(…, axis=-1)[()]. suppression: 20 log10 of the
two differences' ratio, ValueError where np.any(weak <= 0) or np.any(depth <= 0). faint_suppression: with r =
load_resistance × saturation_current/slope_voltage, s = detector_output(strong, …)/slope_voltage + r and q =
i1_over_i0(strong/slope_voltage): 20 np.log10(s/(1 + s) × (1 − q² + (q/(1 + s))²) × (1 + r)/r).
"""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import elliptic_integrals
from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

BEAT = np.cos(np.pi * (np.arange(90) + 0.5) / 90)  # the angle between two carriers at 90 moments of half a beat


def mean_envelope(strong, weak):
    total = strong + weak
    _, e = elliptic_integrals(4 * strong * weak / total**2)
    return 2 / np.pi * total * e


def two_carrier_output(strong, weak, load_resistance, saturation_current, slope_voltage):
    a = np.asarray(strong)[..., np.newaxis]
    b = np.asarray(weak)[..., np.newaxis]
    load = np.asarray(load_resistance)[..., np.newaxis]
    saturation = np.asarray(saturation_current)[..., np.newaxis]
    slope = np.asarray(slope_voltage)[..., np.newaxis]
    crest = np.sqrt(a**2 + b**2 + 2 * a * b * BEAT)
    return np.mean(detector_output(crest, load, saturation, slope), axis=-1)[()]


def suppression(strong, weak, depth, load_resistance, saturation_current, slope_voltage):
    if np.any(np.asarray(weak) <= 0) or np.any(np.asarray(depth) <= 0):
        raise ValueError("There is no programme to be held down.")
    diode = (load_resistance, saturation_current, slope_voltage)
    crest, trough = weak * (1 + depth), weak * (1 - depth)
    beside = two_carrier_output(strong, crest, *diode) - two_carrier_output(strong, trough, *diode)
    alone = two_carrier_output(0.0, crest, *diode) - two_carrier_output(0.0, trough, *diode)
    return 20 * np.log10(beside / alone)


def faint_suppression(strong, load_resistance, saturation_current, slope_voltage):
    r = load_resistance * saturation_current / slope_voltage
    y = detector_output(strong, load_resistance, saturation_current, slope_voltage) / slope_voltage
    s = y + r
    q = i1_over_i0(strong / slope_voltage)
    return 20 * np.log10(s / (1 + s) * (1 - q**2 + (q / (1 + s)) ** 2) * (1 + r) / r)
