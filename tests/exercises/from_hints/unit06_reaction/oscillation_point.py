"""routh_point: with a, b, c, d = tuned_grid_polynomial(…) and gm = the symbol of its transconductance: sympy.solve(b*c
- a*d, gm), sympy.sqrt(d/b). crossing: low, high = 0, 1; thirty-two times the middle; where the pole's real part is
above 0 put high = middle, else low = middle. threshold_transconductance: 20 mS × crossing(polynomial at 0, polynomial
at 20 mS). steady_gain: refuse_impossible_windings, then abs(np.linalg.solve(rows, [1, 0, 0, 0])[1]) with the rows of
full_polynomial at s = 2j × np.pi × frequency, the first divided by s times the capacitance in `aerial`, so that the
volt stays 1. gain: ValueError if leading_pole(…).real >= 0.
"""

import numpy as np
import sympy

from exercises.unit06_reaction.characteristic_polynomial import (
    full_polynomial,
    leading_pole,
    refuse_impossible_windings,
    tuned_grid_polynomial,
)

BEST_VALVE = 20e-3  # siemens: no receiving valve of the time came near
HALVINGS = 32  # of the interval that holds the answer


def routh_point(
    tuned_inductance, tuned_resistance, tuning_capacitance, tickler_inductance, anode_resistance, mutual_inductance
):
    gm = sympy.Symbol("gm")
    a, b, c, d = tuned_grid_polynomial(
        tuned_inductance,
        tuned_resistance,
        tuning_capacitance,
        tickler_inductance,
        anode_resistance,
        mutual_inductance,
        gm,
    )
    return sympy.solve(b * c - a * d, gm)[0], sympy.sqrt(d / b)


def crossing(silent, oscillating):
    if leading_pole(silent).real >= 0:
        raise ValueError("The first set oscillates already.")
    if leading_pole(oscillating).real <= 0:
        raise ValueError("The second set does not oscillate.")
    low, high = 0, 1
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if leading_pole((1 - middle) * silent + middle * oscillating).real > 0:
            high = middle
        else:
            low = middle
    return (low + high) / 2


def threshold_transconductance(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    without = full_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, (0, *valve))
    best = full_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, (BEST_VALVE, *valve))
    return BEST_VALVE * crossing(without, best)


def steady_gain(frequency, coupling, tuning, throttle, aerial, tuned, tickler, valve):
    refuse_impossible_windings(coupling, aerial, tuned, tickler)
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, M23, M13 = tickler
    gm, ra, Cga, Ca = valve
    s = 2j * np.pi * frequency
    C1s, C3s = s * C1, s * throttle
    G, A = s * (tuning + Cga) + g, -s * Cga
    rows = [
        [(1 + C1s * (R1 + s * L1)) / C1s, s * coupling * G, s * M13, s * coupling * A],
        [s * coupling, 1 + (R + s * L) * G, s * M23, (R + s * L) * A],
        [s * C3s * M13, s * C3s * M23 * G, 1 + C3s * (R3 + s * L3), C3s * (s * M23 * A - 1)],
        [0, (gm + A) * ra, ra, 1 + s * ra * (Ca + Cga)],
    ]
    return abs(np.linalg.solve(rows, [1, 0, 0, 0])[1])


def gain(frequency, coupling, tuning, throttle, aerial, tuned, tickler, valve):
    if leading_pole(full_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, valve)).real >= 0:
        raise ValueError("The set oscillates: there is no steady gain.")
    return steady_gain(frequency, coupling, tuning, throttle, aerial, tuned, tickler, valve)
