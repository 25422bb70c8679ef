"""Unit 9: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance, series_impedance
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.stage_gain import band_edges, stage_gain
from solutions.unit05_valve.triode_current import anode_resistance, drive, triode_current
from solutions.unit07_oscillation.build_up import amplitude, growth_rate
from solutions.unit09_feedback_receivers.far_station import feedback, widest
from solutions.unit09_feedback_receivers.isolating_stage import anode_swing, carried_gain, grid_swing, stable_gain
from solutions.unit09_feedback_receivers.quench import (
    linear_gain,
    logarithmic_audio,
    mean_swing,
    relative_response,
    signal_start,
    swing_after,
)
from solutions.unit09_feedback_receivers.receiver import circuit_voltage
from solutions.unit09_feedback_receivers.reflex import (
    bypass_limits,
    gain_slope,
    largest_carrier,
    largest_leak,
    path_gains,
    swings,
)
from solutions.unit09_feedback_receivers.sine_quench import sine_response
from solutions.unit09_feedback_receivers.swing_step import swing_step
from solutions.unit09_feedback_receivers.two_stage_audio import (
    output_power,
    resistance_gain,
    speaker_level,
    transformer_gain,
)
from tests.lessons.holding import CYCLE, at, page

NO_CONDENSER = np.inf


def neutralised(f, V, C_ag, C_s, Z):
    """Anode swing at which nothing comes to the grid: where a straight line crosses zero."""
    none, one = (grid_swing(f, swing, C_ag, V, C_s, Z) for swing in (0.0, 1.0))
    return none / (none - one)


def current_at(swing, V_a, bias, i_0, R, law):
    return operating_point(V_a + i_0 * R, R, bias + swing, *law)[1]


def between(part, R, Z, f_lowest, f_highest):
    least, most = bypass_limits(R, Z, f_lowest, f_highest)
    return least + part * (most - least)


def rate_of_change(v, e, Δ, B, GB, h):
    """What the circuit's voltage gains in a second, from six ever shorter steps continued to none."""
    lengths = 1e-6 / np.arange(1, 7)
    gained = [(circuit_voltage([e], 1 / one, Δ, B, GB, h, v)[0] - v) / one for one in lengths]
    weights = [np.prod([other / (other - one) for other in lengths if other != one]) for one in lengths]
    return np.dot(weights, gained)


PAGES = [
    page(
        "unit09_feedback_receivers/index.md",
        dict(
            v=(0.1, 0.0, 2.0),
            p=(1.0, 300.0, 50.0),
            g=(2e3, -3e3, -100.0),
            t=(455e-6, 1e-3, 20e-6),
            v_dash=lambda v, p, g, t: swing_step(v, p, g, t),
            d=(9e3, 1e3, 18e3),
            A=(28.2, 10.0, 40.0),
            B=lambda d, A: widest(d, A),
        ),
        at(
            r"k = 1 - \frac{BQ}{f_0}",
            B=(700.0, 3e3, 10e3),
            Q=(100.0, 60.0, 200.0),
            f_0=(855e3, 1.1e6, 600e3),
            k=lambda f_0, Q, B: feedback(f_0, Q, B),
        ),
    ),
    page(
        "unit09_feedback_receivers/isolating.md",
        dict(
            f=(855e3, 1.1e6, 600e3),
            ω=lambda f: 2 * np.pi * f,
            L=(60e-6, 30e-6, 80e-6),
            M=(40e-6, 20e-6, 50e-6),
            C=(173e-12, 100e-12, 300e-12),
            r=(3.0, 8.0, 1.0),
            r_a=(10e3, 1e6, 20e3),
            μ=(9.3, 780.0, 20.0),
            v=(1e-3, 0.02, 1.0),
            i=lambda μ, v, r_a, f, L, M, r: μ * v / (series_impedance(f, L, NO_CONDENSER, r_a) + reflected_impedance(f, M, r)),
            v_tuned=lambda v, f, μ, r_a, L, M, r, C: v * carried_gain(f, μ, r_a, L, M, r, C),
            V=(7.5, 1.0, 0.3),
            V_a=lambda V, f, C, M, L, r_a: anode_swing(V, f, C, M, L, r_a),
            g_m=(900e-6, 650e-6, 1e-3),
            C_ag=(6e-12, 0.015e-12, 8e-12),
            C_s=(0.1e-12, 0.02e-12, 1e-12),
            Z=(30 - 1170j, 80 - 300j, 25 + 60j),
            V_g=lambda f, V_a, C_ag, V, C_s, Z: grid_swing(f, V_a, C_ag, V, C_s, Z),
            A=lambda g_m, C_ag, f: stable_gain(g_m, C_ag, f),
        ),
        at(r"C_{ag}V_a = -C_sV", V_a=neutralised),
    ),
    page(
        "unit09_feedback_receivers/reflex.md",
        dict(
            R=(10e3, 20e3, 5e3),
            Z=(20e3, 8e3, 40e3),
            f=(846e3, 1e3, 50e3),
            C=(1e-9, 300e-12, 2e-9),
            μ=(9.29, 20.0, 6.6),
            K=(267e-6, 150e-6, 300e-6),
            V_0=(-0.67, 0.5, -0.5),
            V_a=(78.7, 120.0, 90.0),
            V_g=(-3.0, -2.0, -5.0),
            r=lambda V_a, V_g, μ, K, V_0: anode_resistance(V_a, V_g, μ, K, V_0),
            A_carrier=lambda μ, r, R, Z, C, f: path_gains(μ, r, R, Z, C, f, f)[0],
            A_tone=lambda μ, r, R, Z, C, f: path_gains(μ, r, R, Z, C, f, f)[1],
            Z_C=lambda Z, f, C: 1 / (1 / Z + 1 / series_impedance(f, 0.0, C, 0.0)),
            n=(3.0, 4.0, 2.0),
            η=(0.5, 0.7, 0.3),
            m=(0.8, 0.3, 1.0),
            V=(0.02, 0.1, 0.005),
            a=lambda V, m, A_carrier, η, n: swings(V, m, A_carrier, η, n, 1.0)[1],
            drive=lambda V_a, V_g, μ, V_0: drive(V_a, V_g, μ, V_0),
            room=lambda V_g, drive: min(-V_g, drive),
            V_most=lambda V_a, V_g, m, A_carrier, η, n, μ, V_0: largest_carrier(V_a, V_g, m, A_carrier, η, n, μ, V_0),
            A=lambda μ, r, R: stage_gain(μ, r, R),
            dA_dV_g=lambda V_a, V_g, R, Z, μ, K, V_0: gain_slope(V_a, V_g, R, Z, μ, K, V_0),
            R_d=(10e3, 20e3, 5e3),
            f_lowest=(531e3, 529e3, 1.5e6),
            f_highest=(4.5e3, 26.44e3, 9e3),
        ),
        at(
            r"\;\le\; C \;\le\;",
            R=(10e3, 10e3, 5e3),
            Z=(20e3, 20e3, 40e3),
            part=(-1e-3, 0.5, 1.001),
            C=between,
            true=lambda part: (part > 0, part < 1),
        ),
        at(r"$A\,\frac{r}{r + R}\cdot\frac{1}{2\,\text{drive}}$", gives=lambda dA_dV_g, r, Z: dA_dV_g * (r + Z) / r),
        at(r"C = \frac{1}{2\pi f R_d", A_tone=(6.1, 8.0, 3.0), C=lambda A_tone, n, R_d, f: largest_leak(A_tone, n, R_d, f)),
    ),
    page(
        "unit09_feedback_receivers/loudspeaker.md",
        dict(
            μ=(9.29, 20.0, 6.6),
            r=(10.9e3, 18.2e3, 30e3),
            load=(100e3, 50e3, 20e3),
            leak=(500e3, 1e6, 2e6),
            coupling=(10e-9, 1e-9, 50e-9),
            stray=(60e-12, 30e-12, 100e-12),
            f=(31.0, 1e3, 12e3),
            f_low=lambda r, load, leak, coupling, stray: band_edges(r, load, leak, coupling, stray)[0],
            f_high=lambda r, load, leak, coupling, stray: band_edges(r, load, leak, coupling, stray)[1],
            A_middle=lambda μ, r, load, leak: stage_gain(μ, r, load * leak / (load + leak)),
            A=lambda μ, r, load, leak, coupling, stray, f: resistance_gain(μ, r, load, leak, coupling, stray, f),
            n=(3.0, 5.0, 2.0),
            L_p=(20.0, 8.0, 50.0),
            ell=(0.3, 0.1, 1.0),
            C=(100e-12, 60e-12, 200e-12),
            s=lambda f: series_impedance(f, 1.0, NO_CONDENSER, 0.0),
            C_dash=lambda n, C: C / (1 / n) ** 2,
            N=(30.0, 20.0, 40.0),
            Ω=1.0,
            R=lambda N: 8.0 / (1 / N) ** 2,
            law=((3.8, 167e-6, 0.203),) * 3,
            V_a=(90.0, 120.0, 180.0),
            bias=(-15.0, -18.0, -30.0),
            swing=(7.9, 18.0, 25.0),
            i_0=lambda V_a, bias, law: triode_current(V_a, bias, *law),
            i_1=lambda swing, V_a, bias, i_0, R, law: current_at(swing, V_a, bias, i_0, R, law),
            i_2=lambda swing, V_a, bias, i_0, R, law: current_at(-swing, V_a, bias, i_0, R, law),
            P=lambda V_a, bias, swing, R, law: output_power(V_a, bias, swing, R, *law)[0],
            h=lambda V_a, bias, swing, R, law: output_power(V_a, bias, swing, R, *law)[1],
            S=(90.0, 85.0, 95.0),
            d=(1.0, 3.0, 0.5),
            L=lambda P, S, d: speaker_level(P, S, d),
        ),
        at(r"A = \frac{\mu\,n}", A=lambda μ, r, n, L_p, ell, C, f: transformer_gain(μ, r, n, L_p, ell, C, f)),
        at(r"N^2 = 7200/4", N=42.0, within=0.03, because="the ratio is given as 42:1"),
    ),
    page(
        "unit09_feedback_receivers/quench.md",
        dict(
            f=(850e3, 1.2e6, 500e3),
            E=(1e-3, 1e-4, 5e-3),
            Q=(80.0, 100.0, 50.0),
            v_0=(0.02, 1e-3, 0.3),
            σ=lambda f, Q: growth_rate(f, Q, 0.0),
            t=lambda σ: -0.7 / σ,
            v=lambda t, v_0, σ, f, E: swing_after(t, v_0, σ, f, E),
            g=(400e3, 300e3, 500e3),
            d=(450e3, 600e3, 500e3),
            T=(25e-6, 20e-6, 12e-6),
            T_dash=(25e-6, 20e-6, 14e-6),
            q=lambda T, T_dash: 1 / (T + T_dash),
            v_s=lambda f, E, g, d: signal_start(f, E, g, d),
            A=(1.0, 0.5, 7.0),
            x=lambda v_s, A: np.tan(np.arcsin(v_s / A)),
            v_T=lambda T, v_s, A, g: amplitude(T, v_s, A, g),
            v_bar=lambda v_s, A, g, d, T, T_dash: mean_swing(v_s, A, g, d, T, T_dash),
            m=(0.8, 0.3, 0.5),
            δ=(40e3, 9e3, 100e3),
            ω=lambda δ: 2 * np.pi * δ,
            N=(10.0, 4.0, 16.0),
            z=lambda N: N / 2,
        ),
        at(r"v(t) =", v=lambda v_0, σ, f, E: lambda t: swing_after(t, v_0, σ, f, E)),
        at(r"A = \pi f\;", A=lambda f, g, d, T, T_dash: linear_gain(f, g, d, T, T_dash)),
        at(r"\frac{A\,q}{g}", gives=lambda A, g, q: logarithmic_audio(0.0, A, g, q)[1] * np.sqrt(24) / np.pi),
        at(r"\text{artanh}\,m", gives=lambda m, A, g, q: logarithmic_audio(m, A, g, q)[0]),
        at(r"\frac{1}{\sqrt{\left(1+\omega^2/g^2\right)", gives=lambda δ, g, d: relative_response(δ, g, d)),
        at(r"\overline{e^{z\cos\theta}", p=(1, 2, 3), θ=CYCLE, gives=lambda z, p: sine_response(p * 20e3, 2 * z, 20e3)),
    ),
    page(
        "unit09_feedback_receivers/receiver.md",
        dict(
            v=(0.3 + 0.1j, -0.02j, 1.0),
            e=(1e-3, 0.02j, 0.1),
            Δ=(300.0, -900.0, 50.0),
            B=(700.0, 4800.0, -250.0),
            h=(500.0, 0.0, 300.0),
            G=(200.0, 30.0, 50.0),
            t=(1e-4, 2e-5, 3e-4),
            dv_dt=lambda v, e, Δ, B, G, h: rate_of_change(v, e, Δ, B, G * B, h),
            λ=lambda dv_dt, v, e, G, B: (dv_dt - np.pi * G * B * e) / v,
        ),
        at(r"\to", gives=lambda v, e, t, Δ, B, G, h: circuit_voltage([e], 1 / t, Δ, B, G * B, h, v)[0]),
        at(
            r"h|v|^2 = -B",
            B=(-250.0, -100.0, -600.0),
            h=(500.0, 300.0, 200.0),
            v=lambda Δ, B, G, h: circuit_voltage(np.zeros(600), 5e3, Δ, B, G * B, h, 0.5)[-1],
        ),
        at(r"\sqrt{250/500}", within=5e-3, because="printed to two figures"),
        at(r"10\log_{10}\left(1 + (18", within=2e-3, because="printed to three figures"),
    ),
    page("unit09_feedback_receivers/instructor.md", {}),
]
