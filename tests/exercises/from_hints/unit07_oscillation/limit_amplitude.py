"""−negative + 0.75 × cubic × swing²;  2 sqrt(negative/(3 × cubic));  2 × np.mean(current × cos θ)/swing with current =
triode_current(anode_voltage, grid_voltage + swing × cos θ, …) and θ = π (k + ½)/360, k = 0 … 359. For arrays give each
input a last axis for the moments, np.asarray(swing)[..., None], and take the mean over axis=-1.  In limit_amplitude:
low = 1e-6, high = 200; if the transconductance at low is not above needed, or that at high is, raise ValueError; else
halve 24 times: where it is above needed at the middle, low = middle.
"""

import numpy as np

from exercises.unit05_valve.grid_leak import bias_with_carrier
from exercises.unit05_valve.one_valve_set import GRID_SLOPE, LAW, LEAK, LEAK_RETURN, ZERO_CURRENT
from exercises.unit05_valve.triode_current import triode_current


def describing_conductance(swing, negative, cubic):
    return -negative + 0.75 * cubic * swing**2


def van_der_pol_amplitude(negative, cubic):
    return 2 * np.sqrt(negative / (3 * cubic))


def effective_transconductance(swing, grid_voltage, anode_voltage, amplification_factor, perveance, offset):
    # a last axis for the moments of the cycle, so that arrays work too
    V, Vg, Va, mu, K, shift = (
        np.asarray(x)[..., None] for x in (swing, grid_voltage, anode_voltage, amplification_factor, perveance, offset)
    )
    cos = np.cos(np.pi * (np.arange(360) + 0.5) / 360)
    current = triode_current(Va, Vg + V * cos, mu, K, shift)
    return 2 * np.mean(current * cos, axis=-1) / swing


def limit_amplitude(needed, anode_voltage):
    def offered(swing):
        bias = bias_with_carrier(swing, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
        return effective_transconductance(swing, bias, anode_voltage, *LAW)

    low, high = 1e-6, 200
    if not offered(low) > needed:
        raise ValueError("The valve at rest gives no more than is needed: the set does not oscillate.")
    if offered(high) > needed:
        raise ValueError("It would swing beyond 200 V.")
    for _ in range(24):
        middle = (low + high) / 2
        if offered(middle) > needed:
            low = middle
        else:
            high = middle
    return (low + high) / 2
