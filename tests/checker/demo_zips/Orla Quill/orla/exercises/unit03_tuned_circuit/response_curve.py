# O. Quill.  cos φ for the size, φ for the phase.
import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    tangent = quality_factor * (frequency**2 - resonant_frequency**2) / (frequency * resonant_frequency)
    phi = np.arctan(tangent)
    return (np.cos(phi) * np.exp(-1j * phi)) if np.ndim(phi) else complex(np.cos(phi) * np.exp(-1j * phi))


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return (frequency - resonant_frequency) / (resonant_frequency / quality_factor)


def universal_response(detuning):
    return (1 - 2j * detuning) / (1 + 4 * detuning**2)


def decibels(response):
    return 10 * np.log10(np.real(response * np.conj(response)))
