import numpy as np

# from the stub
LENGTH_OVER_DIAMETER = np.array([0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.5, 2.0, 2.5,
                                 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0, 10, 15, 20, 25, 30, 40, 50])
PICOFARADS_PER_CENTIMETRE = np.array([0.96, 0.79, 0.7, 0.64, 0.6, 0.57, 0.54, 0.52, 0.5, 0.48, 0.47, 0.46, 0.46, 0.46, 0.47,
                                      0.5, 0.56, 0.61, 0.67, 0.72, 0.77, 0.81, 0.92, 1.01, 1.12, 1.22, 1.32, 1.86, 2.36,
                                      2.9, 3.4, 4.6, 5.8])


def self_capacitance(diameter, length):
    shape = length / diameter
    if np.any(shape < 0.1) or np.any(shape > 50):
        raise ValueError("nobody measured a coil of that shape")
    return np.interp(shape, LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE) * 1e-12 * (100 * diameter)


def self_capacitance_fit(diameter, length):
    D, b = 100 * diameter, 100 * length
    return (0.1126 * b + 0.08 * D + 0.27 * np.sqrt(D**3 / b)) * 1e-12


def self_capacitance_from_octave(capacitance_low, capacitance_high):
    return (capacitance_low - 4 * capacitance_high) / 3


def apparent_inductance(inductance, self_capacitance, frequency):
    w = 2 * np.pi * frequency
    return inductance / (1 - w**2 * inductance * self_capacitance)
