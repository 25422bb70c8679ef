"""((w × mutual_inductance)² − amplification_factor × mutual_inductance/tuning_capacitance) / anode_impedance with w =
2π × frequency;   resistance + np.real(feedback) and −np.imag(feedback)/(4π × inductance);   for the formula x =
angular_frequency × tickler_inductance − 1/(angular_frequency × throttle_capacitance), and 1/(anode_resistance + j x)
has the real part anode_resistance/(anode_resistance² + x²).
"""

import numpy as np


def feedback_impedance(frequency, mutual_inductance, tuning_capacitance, amplification_factor, anode_impedance):
    omega = 2 * np.pi * frequency
    reflected = (omega * mutual_inductance) ** 2
    by_the_valve = amplification_factor * mutual_inductance / tuning_capacitance
    return (reflected - by_the_valve) / anode_impedance


def circuit_with_feedback(inductance, resistance, feedback):
    shift = -np.imag(feedback) / (4 * np.pi * inductance)
    return resistance + np.real(feedback), shift


def feedback_resistance(
    angular_frequency,
    mutual_inductance,
    tuning_capacitance,
    amplification_factor,
    anode_resistance,
    tickler_inductance,
    throttle_capacitance,
):
    w, M, r = angular_frequency, mutual_inductance, anode_resistance
    X = w * tickler_inductance - 1 / (w * throttle_capacitance)
    return ((w * M) ** 2 - amplification_factor * M / tuning_capacitance) * r / (r**2 + X**2)
