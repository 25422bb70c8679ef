"""Put i2 = (s C + g) v into the rows. First row: 1 + s C1 (R1 + s L1), s² C1 M12 (s C + g), s² C1 M13. Second: s M12, 1 +
(R + s L)(s C + g), s M23. Third: s² C3 M13, s C3 (gm ra + s M23 (s C + g)), 1 + s C3 (ra + R3 + s L3). Return
.coef[::-1]. Pole: max(np.roots(coefficients), key=lambda p: (p.real, p.imag)).
"""
import numpy as np
from numpy.polynomial import Polynomial


def tuned_grid_polynomial(
    tuned_inductance,
    tuned_resistance,
    tuning_capacitance,
    tickler_inductance,
    anode_resistance,
    mutual_inductance,
    transconductance,
):
    L, R, C = tuned_inductance, tuned_resistance, tuning_capacitance
    L3, ra, M, gm = tickler_inductance, anode_resistance, mutual_inductance, transconductance
    return C * (L * L3 - M**2), C * (L * ra + L3 * R), R * C * ra + L3 - M * gm * ra, ra


def three_winding_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    M12, C, C3 = coupling, tuning, throttle
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, M23, M13 = tickler
    gm, ra = valve
    s = Polynomial([0, 1])
    grid = s * C + g
    a, b, c = 1 + s * C1 * (R1 + s * L1), s**2 * C1 * M12 * grid, s**2 * C1 * M13
    d, e, f = s * M12, 1 + (R + s * L) * grid, s * M23
    h, i, j = s**2 * C3 * M13, s * C3 * (gm * ra + s * M23 * grid), 1 + s * C3 * (ra + R3 + s * L3)
    determinant = a * (e * j - f * i) - b * (d * j - f * h) + c * (d * i - e * h)
    return determinant.coef[::-1]


def leading_pole(coefficients):
    return max(np.roots(coefficients), key=lambda p: (p.real, p.imag))
