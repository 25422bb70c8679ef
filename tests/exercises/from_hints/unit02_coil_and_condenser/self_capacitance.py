"""np.interp(length / diameter, LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE) * diameter * 100 * 1e-12. Fit: with
long = 100 × length and wide = 100 × diameter, in centimetres, 1e-12 × (0.1126 × long + 0.08 × wide + 0.27
sqrt(wide³/long)). By the octave: (capacitance_low − 4 × capacitance_high) / 3. Apparent: inductance / (1 − (2π ×
frequency)² × inductance × self_capacitance).
"""

import numpy as np

# R. G. Medhurst, "H.F. Resistance and Self-Capacitance of Single-Layer Solenoids", Wireless Engineer 24, February 1947.
LENGTH_OVER_DIAMETER = np.array([
    0.10, 0.15, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50, 0.60, 0.70, 0.80, 0.90, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5,
    4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0, 10, 15, 20, 25, 30, 40, 50,
])  # fmt: skip
PICOFARADS_PER_CENTIMETRE = np.array([
    0.96, 0.79, 0.70, 0.64, 0.60, 0.57, 0.54, 0.52, 0.50, 0.48, 0.47, 0.46, 0.46, 0.46, 0.47, 0.50, 0.56, 0.61, 0.67,
    0.72, 0.77, 0.81, 0.92, 1.01, 1.12, 1.22, 1.32, 1.86, 2.36, 2.9, 3.4, 4.6, 5.8,
])  # fmt: skip


def self_capacitance(diameter: float, length: float) -> float:
    ratio = length / diameter
    if np.any(ratio < 0.1) or np.any(ratio > 50):
        raise ValueError("the length must be 0.1 to 50 diameters: nothing else was measured")
    return np.interp(ratio, LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE) * diameter * 100 * 1e-12


def self_capacitance_fit(diameter: float, length: float) -> float:
    d = diameter * 100
    ell = length * 100
    return 1e-12 * (0.1126 * ell + 0.08 * d + 0.27 * np.sqrt(d**3 / ell))


def self_capacitance_from_octave(capacitance_low: float, capacitance_high: float) -> float:
    return (capacitance_low - 4 * capacitance_high) / 3


def apparent_inductance(inductance: float, self_capacitance: float, frequency: float) -> float:
    return inductance / (1 - (2 * np.pi * frequency) ** 2 * inductance * self_capacitance)
