"""With w = 2π × frequency and coil = resistance + 1j × w × inductance: 1/(1j × w × capacitance + 1/coil);   coil +
1/(1j × w × capacitance);   np.abs((aerial_impedance + set_impedance)/(aerial_impedance + set_impedance +
trap_impedance));   np.abs(trap_impedance/(trap_impedance + both)) with both = aerial_impedance ×
set_impedance/(aerial_impedance + set_impedance);   for the levels capacitance = 1/((2π × trapped_frequency)² ×
inductance), then 20 np.log10 of each;   with square = resistance² + angular_frequency² × inductance²: inductance/square
and square/resistance.
"""

import numpy as np


def parallel_trap(frequency, inductance, capacitance, resistance):
    w = 2 * np.pi * frequency
    return 1 / (1j * w * capacitance + 1 / (resistance + 1j * w * inductance))


def series_trap(frequency, inductance, capacitance, resistance):
    w = 2 * np.pi * frequency
    return resistance + 1j * w * inductance + 1 / (1j * w * capacitance)


def left_in_the_lead(trap_impedance, aerial_impedance, set_impedance):
    without = aerial_impedance + set_impedance
    return np.abs(without / (without + trap_impedance))


def left_across_the_set(trap_impedance, aerial_impedance, set_impedance):
    together = aerial_impedance * set_impedance / (aerial_impedance + set_impedance)
    return np.abs(trap_impedance / (trap_impedance + together))


def trapped_levels(frequency, trapped_frequency, inductance, resistance, aerial_impedance, set_impedance):
    capacitance = 1 / ((2 * np.pi * trapped_frequency) ** 2 * inductance)
    parallel = parallel_trap(frequency, inductance, capacitance, resistance)
    series = series_trap(frequency, inductance, capacitance, resistance)
    return (
        20 * np.log10(left_in_the_lead(parallel, aerial_impedance, set_impedance)),
        20 * np.log10(left_across_the_set(series, aerial_impedance, set_impedance)),
    )


def trap_without_reactance(angular_frequency, inductance, resistance):
    size = resistance**2 + angular_frequency**2 * inductance**2
    return inductance / size, size / resistance
