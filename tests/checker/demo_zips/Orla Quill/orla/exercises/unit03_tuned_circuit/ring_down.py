# O. Quill.  A pole and its conjugate.
import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    tau = quality_factor / (np.pi * resonant_frequency)
    return 1 / np.exp(time / tau)


def ring_energy(time, resonant_frequency, quality_factor):
    return ring_amplitude(2 * time, resonant_frequency, quality_factor)


def cycles_to_fall(quality_factor, fraction):
    left = np.asarray(fraction, dtype=float)
    if not ((0 < left) & (left <= 1)).all():
        raise ValueError("fraction from above 0 to 1")
    return (-np.log10(left) * np.log(10) * quality_factor / np.pi)[()]


def ring_voltage(time, resonant_frequency, quality_factor):
    Q = np.asarray(quality_factor, dtype=float)
    if (Q <= 0.5).any():
        raise ValueError("does not ring")
    w = 2 * np.pi * np.asarray(resonant_frequency, dtype=float)
    pole = w * (-1 / (2 * Q) + 1j * np.sqrt(1 - 1 / (4 * Q**2)))
    # starts at 1 with no slope: v = Re[A e^(pole t)], Re A = 1, Re(A pole) = 0
    A = 1 + 1j * pole.real / pole.imag
    return (A * np.exp(pole * time)).real[()]
