"""π × frequency × emf × (1/decay + 1/growth);   with up = growth × growing and down = decay × dying: π × frequency ×
(np.expm1(up)/growth − np.exp(up) × np.expm1(−down)/decay)/(1 − np.exp(up − down)), after `raise ValueError(…)` where
np.any(up >= down);   with w = 2π × offset: 1/np.sqrt((1 + (w/growth)²)(1 + (w/decay)²));   with x =
start/np.sqrt(limit² − start²): (limit/growth × (arcsinh(x × np.exp(up)) − arcsinh(x)) + amplitude(…)/decay × (1 −
np.exp(−down)))/(growing + dying), ValueError where np.any(start <= 0) or np.any(start >= limit);   limit ×
quench_frequency/growth times np.arctanh(depth), and times π/√24.
"""

import numpy as np

from exercises.unit07_oscillation.build_up import amplitude


def swing_after(time, start, growth, frequency, emf):
    factor = np.exp(growth * time)
    return start * factor + np.pi * frequency * emf / growth * (factor - 1)


def signal_start(frequency, emf, growth, decay):
    return np.pi * frequency * emf * (1 / decay + 1 / growth)


def linear_gain(frequency, growth, decay, growing, dying):
    up, down = growth * growing, decay * dying
    if np.any(up >= down):
        raise ValueError("a burst grows by as much as it dies, or more: the set oscillates")
    top = np.expm1(up) / growth - np.exp(up) * np.expm1(-down) / decay
    return np.pi * frequency * top / (1 - np.exp(up - down))


def relative_response(offset, growth, decay):
    w = 2 * np.pi * offset
    return 1 / np.sqrt((1 + (w / growth) ** 2) * (1 + (w / decay) ** 2))


def mean_swing(start, limit, growth, decay, growing, dying):
    if np.any(np.asarray(start) <= 0) or np.any(np.asarray(start) >= limit):
        raise ValueError("No burst grows from there.")
    x = start / np.sqrt(limit**2 - start**2)
    burst = limit / growth * (np.arcsinh(x * np.exp(growth * growing)) - np.arcsinh(x))
    tail = amplitude(growing, start, limit, growth) / decay * (1 - np.exp(-decay * dying))
    return (burst + tail) / (growing + dying)


def logarithmic_audio(depth, limit, growth, quench_frequency):
    for_each_neper = limit * quench_frequency / growth
    return for_each_neper * np.arctanh(depth), for_each_neper * np.pi / np.sqrt(24)
