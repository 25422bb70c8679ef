"""Unit 4: what the letters of its formulas stand for."""

import numpy as np
from scipy import constants

from solutions.unit04_crystal_set.crystal_reach import phone_power
from solutions.unit04_crystal_set.detect_step import detect_step
from solutions.unit04_crystal_set.detector_load import detector_resistance, quality_factor_with_detector, working_point
from solutions.unit04_crystal_set.diode_current import diode_current, slope_resistance, slope_voltage
from solutions.unit04_crystal_set.phone_loudness import (
    hearing_threshold,
    least_audible_power,
    sound_pressure,
    sound_pressure_level,
)
from solutions.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0, log_i0, no_load_output
from solutions.unit05_valve.grid_leak import time_constant_limits
from tests.lessons.holding import CYCLE, at, page

CRYSTAL = dict(I_s=(1e-6, 0.2e-6, 5e-6), n=(0.03, 0.0253, 0.045), θ=CYCLE)


def bessel(x):
    """The modified Bessel function of order 0."""
    return np.exp(log_i0(x))


def next_bessel(x):
    return i1_over_i0(x) * bessel(x)


PAGES = [
    page(
        "unit04_crystal_set/index.md",
        CRYSTAL
        | dict(
            N=(1.0, 1.2, 1.8),
            T=(293.15, 300.0, 250.0),
            V=(0.1, 0.02, 0.5),
            R=(20e3, 5e3, 100e3),
            x=lambda V, n: V / n,
            t=lambda V, n, θ: V / n * np.cos(θ),
            I_0=lambda: bessel,
            U=lambda V, n: no_load_output(V, n),
            v=lambda V, U, θ: V * np.cos(θ) - U,
            i=lambda v, I_s, n: diode_current(v, I_s, n),
            i_bar=lambda i: np.mean(i),
            r=lambda v, I_s, n: slope_resistance(v, I_s, n),
        ),
        at(
            r"\mathrm{e}^{-s/\tau}",
            V=(1.0, 0.3, 4.0),
            s=(1e-6, 50e-6, 3e-6),
            R=(20e3, 5e3, 100e3),
            C=(1e-9, 2e-9, 0.5e-9),
            τ=lambda R, C: R * C,
            v=lambda V, s, τ: detect_step(V, 0.0, s, τ),
        ),
        at(
            r"\frac{\sqrt{1 - m^2}}{2\pi F m}",
            m=(0.3, 0.8, 0.5),
            F=(4.5e3, 1e3, 300.0),
            τ=lambda m, F: time_constant_limits(531e3, F, m)[1],
        ),
        at(
            r"P = k",
            k=(0.1, 0.5, 1.0),
            E=(10e-3, 0.1, 1e-3),
            R=(40.0, 25.0, 80.0),
            P=lambda E, R, k: phone_power(E, R, k),
        ),
        at(r"n = N\,\frac{kT}{e}", n=lambda N, T: slope_voltage(N, T), k=constants.k, e=constants.e),
        at(r"r = \frac{n}", v=(0.06, -0.06, 0.2)),
        at(r"\bar{i} =", U=(0.02, 0.001, 0.3)),
        at(r"I_0 \approx", x=(0.01, 0.005, 0.02), I_0=lambda x: bessel(x), within=3e-9, because="the next term is x⁴/64"),
        at(r"U \approx \frac{V^2}{4n}", V=(1e-4, 3e-5, 2e-4), within=1e-5, because="the next term is x²/16 of it"),
        at(r"\cos\theta \approx", θ=(0.01, 0.02, 0.005), within=1e-8, because="the next term is θ⁴/24"),
        at(r"U \approx V -", V=(30.0, 20.0, 60.0), within=1e-6, because="the next term is n/8x of a carrier of 800 n or more"),
        at(r"\frac{U}{R}", U=lambda V, R, I_s, n: detector_output(V, R, I_s, n)),
    ),
    page(
        "unit04_crystal_set/load.md",
        CRYSTAL
        | dict(
            V=(0.1, 0.02, 0.5),
            R=(20e3, 5e3, 100e3),
            Q=(100.0, 50.0, 200.0),
            R_s=(100e3, 20e3, 60e3),
            x=lambda V, n: V / n,
            U=lambda V, R, I_s, n: detector_output(V, R, I_s, n),
            I=lambda U, R: U / R,
            i=lambda V, U, θ, I_s, n: diode_current(V * np.cos(θ) - U, I_s, n),
            R_d=lambda V, I, I_s, n: detector_resistance(V, I, I_s, n),
            i_1=lambda V, R_d: V / R_d,
            I_0=lambda: bessel,
            I_1=lambda: next_bessel,
            Q_dash=lambda Q, R_s, R_d: quality_factor_with_detector(Q, R_s, R_d),
        ),
        at(r"R_d = n/I_s", V=1e-7, I=0.0),
        at(
            r"R_d = R/2",
            V=(300.0, 200.0, 400.0),
            within=3e-3,
            because="what a strong carrier tends to, here one of ten thousand slope voltages",
        ),
        at(
            r"E = V + R_s",
            E=(0.1, 0.02, 1.0),
            within=1e-8,
            because="the working point is found by halving to a part in 10⁹",
            V=lambda E, R_s, R, I_s, n: working_point(E, R_s, R, I_s, n)[0],
            i_1=lambda R, I_s, n: lambda V: V / detector_resistance(V, detector_output(V, R, I_s, n) / R, I_s, n),
        ),
    ),
    page(
        "unit04_crystal_set/ear.md",
        dict(
            P=(1e-3, 1e-9, 2e-6),
            S=(110.0, 100.0, 125.0),
            L=lambda P, S: sound_pressure_level(P, S),
            p=lambda L: sound_pressure(L),
            f=(1e3, 300.0, 3e3),
            L_threshold=lambda f: hearing_threshold(f),
            P_least=lambda f, S: least_audible_power(f, S),
        ),
    ),
]
