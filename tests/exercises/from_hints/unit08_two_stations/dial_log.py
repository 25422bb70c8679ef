"""intercept = mean(y) − slope × mean(x);   with squares = (SPEED_OF_LIGHT/frequencies)² and height, unsure =
line_at(reading, readings, squares): frequency = SPEED_OF_LIGHT/np.sqrt(height) with the uncertainty frequency/2 ×
np.hypot(unsure, scatter)/height, ValueError where height <= 0;   reading = ((SPEED_OF_LIGHT/frequency)² −
intercept)/slope with np.hypot(of line_at there, scatter)/np.abs(slope);   channels: with f, u = frequency_at(reading,
…): spacing × np.arange(np.ceil((f − 2 × u)/spacing), np.floor((f + 2 × u)/spacing) + 1).
"""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def fitted_line(x, y):
    if np.all(x == x[0]):
        raise ValueError("all of x are equal")
    away = x - np.mean(x)
    slope = np.sum(away * y) / np.sum(away**2)
    return np.mean(y) - slope * np.mean(x), slope


def scatter_about(x, y):
    n = len(x)
    if n < 3:
        raise ValueError("a scatter needs three points or more")
    intercept, slope = fitted_line(x, y)
    lack = y - (intercept + slope * x)
    return np.sqrt(np.sum(lack**2) / (n - 2))


def line_at(place, x, y):
    intercept, slope = fitted_line(x, y)
    middle = np.mean(x)
    share = 1 / len(x) + (place - middle) ** 2 / np.sum((x - middle) ** 2)
    return intercept + slope * place, scatter_about(x, y) * np.sqrt(share)


def squared_wavelength(frequency):
    return (SPEED_OF_LIGHT / frequency) ** 2


def frequency_at(reading, readings, frequencies):
    squares = squared_wavelength(frequencies)
    height, unsure = line_at(reading, readings, squares)
    if np.any(height <= 0):
        raise ValueError("the line gives no wavelength at this reading")
    frequency = SPEED_OF_LIGHT / np.sqrt(height)
    return frequency, frequency / 2 * np.hypot(unsure, scatter_about(readings, squares)) / height


def reading_for(frequency, readings, frequencies):
    squares = squared_wavelength(frequencies)
    intercept, slope = fitted_line(readings, squares)
    reading = (squared_wavelength(frequency) - intercept) / slope
    _, unsure = line_at(reading, readings, squares)
    return reading, np.hypot(unsure, scatter_about(readings, squares)) / np.abs(slope)


def likely_channels(reading, spacing, readings, frequencies):
    f, u = frequency_at(reading, readings, frequencies)
    return spacing * np.arange(np.ceil((f - 2 * u) / spacing), np.floor((f + 2 * u) / spacing) + 1)
