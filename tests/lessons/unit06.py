"""Unit 6: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.response_curve import universal_response
from solutions.unit06_reaction.characteristic_polynomial import leading_pole, tuned_grid_polynomial
from solutions.unit06_reaction.cheap_measurements import threshold_from_clicks
from solutions.unit06_reaction.edge import loop_gain
from solutions.unit06_reaction.feedback_resistance import circuit_with_feedback, feedback_impedance, feedback_resistance
from solutions.unit06_reaction.grid_anode_admittance import anode_load, grid_admittance
from solutions.unit06_reaction.oscillation_point import routh_point
from solutions.unit06_reaction.q_multiplication import multiplied_q, touchiness
from solutions.unit06_reaction.treble_loss import highest_tone, tone_response
from tests.lessons.holding import at, page, words

PARTS = dict(
    L=(180e-6, 180e-6, 250e-6),
    R=(9.0, 12.0, 20.0),
    C=(140.7e-12, 140.7e-12, 300e-12),
    L_3=(30e-6, 30e-6, 50e-6),
    r_a=(10.3e3, 10.3e3, 20e3),
    M=(1.409e-6, 1.409e-6, 5e-6),
    g_m=(0.5e-3, 0.9e-3, 1.5e-3),
)

STARTS, STOPS = np.array([109.0, 108.2, 110.1, 108.7]) * 1e-12, np.array([104.0, 103.1, 104.9]) * 1e-12


def coefficients(L, R, C, L_3, r_a, M, g_m):
    return np.array([float(one) for one in tuned_grid_polynomial(L, R, C, L_3, r_a, M, g_m)])


def threshold(L, R, C, L_3, r_a, M):
    return tuple(map(float, routh_point(L, R, C, L_3, r_a, M)))


def through_tickler(f, C_3, L_3, C_a):
    """Of an ampere into the anode's capacitance and all beside it, what goes through tickler and throttle; 0.01 Ω of wire."""
    whole = anode_load(f, C_a, 0.01, L_3, C_3)
    return (1 - 2j * np.pi * f * C_a / whole).real


PAGES = [
    page(
        "unit06_reaction/index.md",
        PARTS
        | dict(
            f=(1e6, 700e3, 500e3),
            ω=lambda f: 2 * np.pi * f,
            I=(1e-3, 2e-3, 1e-4),
            C_3=(20e-12, 70e-12, 300e-12),
            v=lambda I, f, C: I * series_impedance(f, 0.0, C, 0.0),
            μ=lambda g_m, r_a: g_m * r_a,
            Z=lambda f, L_3, C_3, r_a: series_impedance(f, L_3, C_3, r_a),
            X=lambda Z: Z.imag,
            Z_f=lambda f, M, C, μ, Z: feedback_impedance(f, M, C, μ, Z),
            I_3=lambda Z_f, I, ω, M: -Z_f * I / (1j * ω * M),
            R_f=lambda ω, M, C, μ, r_a, L_3, C_3: float(feedback_resistance(ω, M, C, μ, r_a, L_3, C_3)),
            X_f=lambda Z_f: Z_f.imag,
            Δf=lambda L, R, Z_f: circuit_with_feedback(L, R, Z_f)[1],
            Q=(100.0, 60.0, 200.0),
            k=(0.5, 0.9, -0.3),
            Q_dash=lambda Q, k: multiplied_q(Q, k),
            dk=1e-3,
            dQ_dash=lambda Q_dash, k, dk: Q_dash * touchiness(k) * dk / k,
        ),
        at(r"k = \frac{g_m M}{C R}", k=lambda g_m, M, C, R: loop_gain(g_m, M, C, R)),
        at(
            r"\frac{I_3}{I_a}",
            C_a=(208e-12, 108e-12, 308e-12),
            f=(531e3, 1107e3, 1602e3),
            L_3=48e-6,
            within=1e-3,
            because="only a few ohms of wire are left out, which the tickler has",
            I_a=1.0,
            I_3=lambda f, C_3, L_3, C_a: through_tickler(f, C_3, L_3, C_a),
        ),
        at(
            r"R' = R -",
            R_dash=lambda L, R, M, C, μ, r_a: circuit_with_feedback(L, R, feedback_impedance(1e-3, M, C, μ, r_a))[0],
        ),
        at(r"1 + k + k^2", k=(1e-3, -2e-3, 3e-3), within=1e-10, because="cut after the third power: the rest is below 9e-11"),
        at(r"\frac{dQ'}{Q'}", k=(0.5, 0.9, 0.3)),
    ),
    page(
        "unit06_reaction/bench.md",
        dict(
            n_on=float(len(STARTS)),
            n_off=float(len(STOPS)),
            s_on=lambda: np.std(STARTS, ddof=1),
            s_off=lambda: np.std(STOPS, ddof=1),
            U=lambda: threshold_from_clicks(STARTS, STOPS)[2],
        ),
    ),
    page(
        "unit06_reaction/anode.md",
        dict(
            f=(531e3, 1107e3, 1602e3),
            ω=lambda f: 2 * np.pi * f,
            g_m=(0.8e-3, 0.5e-3, 1.2e-3),
            C_ga=(5.5e-12, 2e-12, 8e-12),
            C_a=(208e-12, 60e-12, 400e-12),
            r_a=(7e3, 12e3, 20e3),
            v=(1.0, 0.3, 2.0),
            Y_a=lambda f, r_a, C_a: 1 / r_a + anode_load(f, C_a, 2.0, 48e-6, 100e-12),
            Y=lambda f, g_m, r_a, C_ga, Y_a: grid_admittance(f, g_m, r_a, C_ga, Y_a - 1 / r_a),
            v_a=lambda Y, v, ω, C_ga: v - Y * v / (1j * ω * C_ga),
        ),
        at(
            r"Y \approx",
            B=(20e-3, -20e-3, 60e-3),
            within=2e-3,
            because="the susceptance is taken much larger than all else",
            g_m=(0.8e-3, 0.5e-3, 1.2e-3),
            Y=lambda f, g_m, C_ga, B: grid_admittance(f, g_m, 1e9, C_ga, 1j * B),
        ),
        words(r"$B = \omega C_a$", "names the susceptance of a condenser"),
        words(r"$Y_a = jB$", "names the case of a load that takes no power"),
    ),
    page(
        "unit06_reaction/edge.md",
        PARTS
        | dict(
            pole=lambda L, R, C, L_3, r_a, M, g_m: leading_pole(coefficients(L, R, C, L_3, r_a, M, g_m)),
            s=lambda pole: pole,
            σ=lambda pole: pole.real,
            ω=lambda pole: pole.imag,
            t=(1e-7, 3e-6, 5e-6),
            v=1.0,
            I_3=lambda s, M, C, g_m, r_a, L_3: feedback_impedance(s / 2j / np.pi, M, C, g_m * r_a, r_a + s * L_3) * C / M,
            a=lambda L, R, C, L_3, r_a, M, g_m: coefficients(L, R, C, L_3, r_a, M, g_m)[0],
            b=lambda L, R, C, L_3, r_a, M, g_m: coefficients(L, R, C, L_3, r_a, M, g_m)[1],
            c=lambda L, R, C, L_3, r_a, M, g_m: coefficients(L, R, C, L_3, r_a, M, g_m)[2],
            d=lambda L, R, C, L_3, r_a, M, g_m: coefficients(L, R, C, L_3, r_a, M, g_m)[3],
        ),
        at(r"e^{st}", gives=lambda s, t: np.exp(s * t)),
        at(
            r"C(LL_3 - M^2)",
            s=(1e6 + 2e6j, -3e5 + 6e6j, 4e6j),
            gives=lambda s, L, R, C, L_3, r_a, M, g_m: np.polyval(coefficients(L, R, C, L_3, r_a, M, g_m), s),
        ),
        at(
            r"bc > ad",
            g_m=lambda L, R, C, L_3, r_a, M, share: share * threshold(L, R, C, L_3, r_a, M)[0],
            share=(0.5, 0.999, 1.001),
            true=lambda pole: pole.real < 0,
        ),
        at(r"bc = ad", g_m=lambda L, R, C, L_3, r_a, M: threshold(L, R, C, L_3, r_a, M)[0]),
        at(r"\omega = \sqrt{d/b}", ω=lambda L, R, C, L_3, r_a, M: threshold(L, R, C, L_3, r_a, M)[1]),
        words(r"s = j\omega", "names the case of a steady carrier"),
        words(r"v(t) = \underbrace", "a general form: what stands before each exponential is whatever the start has made it"),
    ),
    page(
        "unit06_reaction/knobs.md",
        dict(
            C_a=(208e-12, 108e-12, 308e-12),
            C_3=(113e-12, 190e-12, 100e-12),
            f=(1107e3, 531e3, 1602e3),
            L_3=48e-6,
            ω=lambda f: 2 * np.pi * f,
            I_a=1.0,
            I_3=lambda f, C_3, L_3, C_a: through_tickler(f, C_3, L_3, C_a),
        ),
        at(r"\frac{I_3}{I_a}", within=1e-3, because="only a few ohms of wire are left out, which the tickler has"),
    ),
    page(
        "unit06_reaction/treble.md",
        dict(
            B=(1e3, 400.0, 9e3),
            F=(500.0, 3.4e3, 50.0),
            d=(300.0, -700.0, 5e3),
            x=(20.0, -900.0, 4e3),
            H=lambda B: lambda x: universal_response(x / B),
        ),
        at(r"\frac{1}{\sqrt{1 + (2F/B)^2}}", gives=lambda F, B: tone_response(F, B, 0.0)),
        at(r"F = B/2", F=lambda B: highest_tone(B, 10 * np.log10(2))),
        at(r"\frac12 \left|", gives=lambda F, B, d: tone_response(F, B, d)),
    ),
]
