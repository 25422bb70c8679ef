"""Unit 8: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit01_signal.channel_plan import SPEED_OF_LIGHT, wavelength
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit03_tuned_circuit.quality_factor import quality_factor
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit08_two_stations.dial_log import fitted_line, line_at, scatter_about
from solutions.unit08_two_stations.least_heard import (
    BOLTZMANN,
    ELECTRON_CHARGE,
    circuit_noise,
    country_noise,
    least_field,
    noise_together,
    set_noise,
    shot_noise,
    thermal_noise,
)
from solutions.unit08_two_stations.night_path import EARTH_RADIUS, dark_elevation, hop, sun_elevation, sun_place, unit_arrow
from solutions.unit08_two_stations.rejection import (
    circuit_rejection,
    coupled_rejection,
    protection_left,
    quality_factor_needed,
)
from solutions.unit08_two_stations.signal_to_noise import ratio
from solutions.unit08_two_stations.wave_trap import (
    left_across_the_set,
    left_in_the_lead,
    parallel_trap,
    series_trap,
    trap_without_reactance,
)
from solutions.unit08_two_stations.weak_signal_suppression import faint_suppression, mean_envelope
from tests.lessons.holding import CYCLE, at, page

PLACES, VALUES = np.array([3.0, 7.0, 18.0, 26.0, 29.5]), np.array([4.1, 5.3, 9.9, 13.2, 14.1])


def unlikeness(f, f_0):
    """f/f₀ − f₀/f, from what a circuit with a Q of 1 rejects."""
    return np.sign(f - f_0) * np.sqrt(10 ** (circuit_rejection(f_0, f - f_0, 1.0) / 10) - 1)


def slope_of_mean(A, B):
    step = 1e-3 * B
    return (mean_envelope(A, B + step) - mean_envelope(A, B - step)) / (2 * step)


PAGES = [
    page(
        "unit08_two_stations/index.md",
        dict(
            W=(0.1, 2e-3, 5e-4),
            U=(0.05, 6e-3, 1e-4),
            f=(846e3, 1.1e6, 900e3),
            f_0=(855e3, 855e3, 1.4e6),
            Q=(100.0, 30.0, 5.0),
            d=unlikeness,
            r=(40.0, 10.0, 25.0),
            Q_1=(100.0, 60.0, 20.0),
            Q_2=(80.0, 60.0, 150.0),
            k=(0.01, 0.05, 0.002),
            x=lambda f, f_0: SPEED_OF_LIGHT / wavelength(f) / f_0,
            A=(1.0, 0.3, 5.0),
            B=lambda A, Q: A / Q,
            φ=CYCLE,
            crest_bar=lambda A, B: mean_envelope(A, B),
            n=lambda A: A / 1e3,
        ),
        at(r"20 \log_{10} \frac{W}{U}", gives=lambda W, U: protection_left(W, U, 0.0)),
        at(r"|1 + jQd\right|", gives=lambda f, f_0, Q: 10 ** (circuit_rejection(f_0, f - f_0, Q) / 20)),
        at(r"10 \log_{10}\left(1 + Q^2 d^2\right)", gives=lambda f, f_0, Q: circuit_rejection(f_0, f - f_0, Q)),
        at(r"Q = \frac{\sqrt", Q=lambda f, f_0, r: quality_factor_needed(f_0, f - f_0, 1.0, 1.0, r)),
        at(
            r"k^2x^2",
            taken=np.abs,
            gives=lambda f, f_0, Q_1, Q_2, k: (
                10 ** (-coupled_rejection(f_0, f - f_0, Q_1, Q_2, k) / 20) / (1 / (Q_1 * Q_2) + k**2)
            ),
        ),
        at(r"2AB\cos\varphi", gives=lambda A, B, φ: np.abs(A + B * np.exp(1j * φ))),
        at(r"\overline{\text{crest}}", Q=(100.0, 200.0, 150.0), within=1e-9, because="the next term is B⁴/64A³"),
        at(
            r"$\frac{B}{2A}$",
            Q=(100.0, 200.0, 150.0),
            gives=slope_of_mean,
            within=2e-5,
            because="the next term is B²/8A² of it",
        ),
        at(
            r"$\frac{n}{A}$",
            gives=lambda A, n: 10 ** (faint_suppression(A, 1e12, 1e-6, n) / 20),
            within=0.01,
            because="what a strong carrier tends to, here one of a thousand slope voltages",
        ),
    ),
    page(
        "unit08_two_stations/log.md",
        dict(
            c_0=SPEED_OF_LIGHT,
            L=(200e-6, 170e-6, 300e-6),
            C_0=(40e-12, 60e-12, 30e-12),
            c=(3e-12, 2e-12, 1e-12),
            θ=(7.0, 26.0, 90.0),
            C=lambda C_0, c, θ: np.polyval([c, C_0], θ),
            f=lambda L, C: resonant_frequency(L, C),
            λ=lambda f: wavelength(f),
            x=PLACES,
            y=VALUES,
            x_bar=np.mean(PLACES),
            y_bar=np.mean(VALUES),
            x_i=PLACES,
            n=len(PLACES),
            slope=lambda: fitted_line(PLACES, VALUES)[1],
            intercept=lambda: fitted_line(PLACES, VALUES)[0],
            s=lambda: scatter_about(PLACES, VALUES),
            lack=lambda slope, intercept: VALUES - np.polyval([slope, intercept], PLACES),
        ),
        at(r"s\,\sqrt{\frac1n", x=(18.5, 1.0, 40.0), gives=lambda x: line_at(x, PLACES, VALUES)[1]),
    ),
    page(
        "unit08_two_stations/night.md",
        dict(
            φ=(0.94, -0.3, 1.2),
            λ=(0.03, -2.0, 1.5),
            R=EARTH_RADIUS,
            h=(100e3, 220e3, 90e3),
            ψ=(0.07, 0.02, 0.15),
            elevation=lambda ψ, h: np.radians(hop(2 * EARTH_RADIUS * ψ, h)[0]),
            days=(8000.25, 9300.6, 9400.9),
            δ=lambda days, λ: np.radians(sun_place(days, np.degrees(λ))[0]),
            H=lambda days, λ: np.radians(sun_place(days, np.degrees(λ))[1]),
            η=lambda days, φ, λ: np.radians(sun_elevation(days, np.degrees(φ), np.degrees(λ))),
            part=(0.99, 1.01, 0.3),
        ),
        at(r"\cos\varphi\cos\lambda", gives=lambda φ, λ: tuple(unit_arrow(np.degrees(φ), np.degrees(λ)))),
        at(r"\cos\eta >", η=lambda h, part: part * np.radians(dark_elevation(h)), true=lambda part: part < 1),
    ),
    page(
        "unit08_two_stations/noise.md",
        dict(
            k=BOLTZMANN,
            e=ELECTRON_CHARGE,
            T=290.0,
            T_0=290.0,
            B=(9e3, 4.5e3, 2e3),
            R=(6.0, 10.0, 3.0),
            I=(1e-6, 0.2e-6, 3e-6),
            F_a=(67.2, 53.6, 30.0),
            f=(1e6, 600e3, 1.5e6),
            h=(6.9, 1.0, 3.0),
            R_r=lambda h, f: radiation_resistance(h, f),
            v_1=(5e-6, 1e-6, 3e-5),
            v_2=(2e-6, 4e-6, 1e-5),
            X=(1257.0, 754.0, 1885.0),
            R_l=(2e6, 0.5e6, 10e6),
            Q=(60.0, 90.0, 30.0),
            g_m=(0.9e-3, 0.5e-3, 2e-3),
            g=(0.17, 0.05, 0.6),
            R_a=(30.0, 50.0, 10.0),
            m=(0.3, 0.5, 1.0),
            r=(6.0, 26.0, 40.0),
        ),
        at(r"A = 20", v_s=(1e-6, 3e-6, 1e-3), v=(30e-9, 5e-6, 1e-6), A=lambda v_s, v: ratio(v_s, v)),
        at(r"v = \sqrt{4kTRB}", v=lambda R, B, T: thermal_noise(R, B, T)),
        at(r"i = \sqrt{2eIB}", i=lambda I, B: shot_noise(I, B)),
        at(r"v_1^2 + v_2^2", v=lambda v_1, v_2: noise_together(v_1, v_2)[0]),
        at(r"10^{F_a/10}\, R_r", v=lambda F_a, f, B, h: country_noise(F_a, f, B, h)),
        at(
            r"\frac{B}{g^2}",
            v=lambda R, X, R_l, I, B, Q, g_m, g, R_a: set_noise(circuit_noise(R, X, R_l, I, B), Q, g_m, g, R_a, B),
        ),
        at(r"E = \frac{v}{m h}", v=lambda v_1: v_1, E=lambda v, h, m, r: least_field(v, h, m, r)),
    ),
    page(
        "unit08_two_stations/trap.md",
        dict(
            f=(846e3, 900e3, 1.1e6),
            ω=lambda f: 2 * np.pi * f,
            L=(100e-6, 200e-6, 50e-6),
            C=(354e-12, 200e-12, 500e-12),
            R=(2.5, 8.0, 30.0),
            Z=lambda f, L, C, R: parallel_trap(f, L, C, R),
            Q=lambda L, R, f: quality_factor(L, R, f),
            Z_a=(31 - 1170j, 80 - 300j, 25 + 60j),
            Z_s=(15 + 266j, 40 + 100j, 5 - 20j),
            Z_p=lambda Z_a, Z_s: 1 / (1 / Z_a + 1 / Z_s),
        ),
        at(r"\frac{L}{CR} =", f=lambda L, C: resonant_frequency(L, C)),
        at(r"C = L/(R^2", C=lambda ω, L, R: float(trap_without_reactance(ω, L, R)[0])),
        at(r"Z = R + j\omega L", Z=lambda f, L, C, R: series_trap(f, L, C, R)),
        at(r"\frac{Z_a + Z_s}{Z_a + Z_s + Z}", gives=lambda Z, Z_a, Z_s: left_in_the_lead(Z, Z_a, Z_s)),
        at(r"\frac{Z}{Z + Z_p}", gives=lambda Z, Z_a, Z_s: left_across_the_set(Z, Z_a, Z_s)),
    ),
]
