"""1/(1j w C + 1/(R + 1j w L)); R + 1j w L + 1/(1j w C); np.abs((Za + Zs)/(Za + Zs + T)); np.abs(T/(T + P)) with P = Za
Zs/(Za + Zs); C = 1/((2π ft)² L), then 20 np.log10 of each; L/(R² + w² L²) and (R² + w² L²)/R.
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
