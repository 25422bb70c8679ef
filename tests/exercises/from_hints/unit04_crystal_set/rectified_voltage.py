"""log_i0: np.where(x < 700, np.log(np.i0(np.minimum(x, 700))), x − ln(2π × x)/2 + 1/(8 × x) for np.maximum(x, 700)).
Ratio: θ = 2π × k/1000, k = 0 … 999; w = np.exp(np.asarray(x)[..., np.newaxis] × (cos θ − 1)); the mean of w cos θ over
that of w, both by np.mean(…, axis=-1). Output: with x = carrier/slope_voltage and r = load_resistance ×
saturation_current/slope_voltage it is y × slope_voltage, where y + ln(1 + y/r) = log_i0(x). With u = ln(1 + y/r), start
from u = ln(1 + log_i0(x)/r) and take u − (u + r (exp(u) − 1) − log_i0(x))/(1 + r exp(u)) for u, seven times; then y = r
(exp(u) − 1), by np.expm1.
"""

import numpy as np

THETA = 2 * np.pi * np.arange(1000) / 1000  # a thousand moments of a cycle


def log_i0(x):
    small = np.minimum(x, 700)
    large = np.maximum(x, 700)
    far = large - np.log(2 * np.pi * large) / 2 + 1 / (8 * large)
    return np.where(x < 700, np.log(np.i0(small)), far)


def i1_over_i0(x):
    weight = np.exp(np.asarray(x)[..., np.newaxis] * (np.cos(THETA) - 1))
    return np.mean(weight * np.cos(THETA), axis=-1) / np.mean(weight, axis=-1)


def square_law_output(carrier, slope_voltage):
    return carrier**2 / (4 * slope_voltage)


def no_load_output(carrier, slope_voltage):
    return slope_voltage * log_i0(carrier / slope_voltage)


def detector_output(carrier, load_resistance, saturation_current, slope_voltage):
    r = load_resistance * saturation_current / slope_voltage
    log = log_i0(carrier / slope_voltage)
    u = np.log(1 + log / r)
    for _ in range(7):
        u = u - (u + r * (np.exp(u) - 1) - log) / (1 + r * np.exp(u))
    return slope_voltage * r * np.expm1(u)
