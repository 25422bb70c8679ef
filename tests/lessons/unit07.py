"""Unit 7: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit01_signal.channel_plan import wavelength
from solutions.unit01_signal.field_strength import unattenuated_field
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit07_oscillation.beat_note import autodyne_advantage, settings_for_pitch, two_stations
from solutions.unit07_oscillation.build_up import BOLTZMANN, amplitude, free_growth_time, growth_rate, starting_voltage
from solutions.unit07_oscillation.limit_amplitude import describing_conductance, van_der_pol_amplitude
from solutions.unit07_oscillation.pull_in import locked_phase, locking_range, pulled_beat, slipping_phase
from solutions.unit07_oscillation.radiated_field import aerial_current, nearby_field, radiated_power, spoiled_distance
from solutions.unit07_oscillation.squegging import ticking_frequency
from tests.lessons.holding import CYCLE, at, page


def nearness(P, d, E):
    """x, below the root of 2, at which the field is so much more than the far field."""
    more = (E / unattenuated_field(P, d)) ** 2
    return ((1 + np.sqrt(4 * more - 3)) / 2) ** -0.5


def by_derivative(x, x_dash, ε):
    """The acceleration that the device's cubic law, with van der Pol's numbers, leaves."""
    law = np.array([ε / 3, 0.0, -ε, 0.0])
    return -x - np.polyval(np.polyder(law), x) * x_dash


PAGES = [
    page(
        "unit07_oscillation/index.md",
        dict(
            f=(855e3, 600e3, 1.4e6),
            Q=(90.0, 50.0, 200.0),
            k=(1.05, 1.005, 1.3),
            σ=lambda f, Q, k: growth_rate(f, Q, k),
            C=(170e-12, 300e-12, 50e-12),
            T=(293.0, 300.0, 250.0),
            k_B=BOLTZMANN,
            V=lambda C, T: starting_voltage(C, T),
            t=lambda V, σ: free_growth_time(V, 1.0, σ),
            A=(7.5, 0.5, 20.0),
            a_0=(1e-3, 0.1, 3.0),
            a=lambda t, a_0, A, σ: amplitude(t, a_0, A, σ),
            u=lambda A, a_0, σ, t: (A - a_0) * (A + a_0) / a_0**2 / np.exp(2 * σ * t),
            g=(1e-3, 2e-3, 5e-4),
            c=(1e-4, 3e-3, 2e-5),
            θ=CYCLE,
            v=lambda V, θ: np.real(V * np.exp(1j * θ)),
            i=lambda g, c, v: np.polyval([c, 0.0, -g, 0.0], v),
            ε=(0.1, 1.0, 3.0),
            x=(0.3, 2.0, -1.5),
            x_dash=(1.0, -0.2, 3.0),
            x_dash_dash=by_derivative,
        ),
        at(r"\frac{da}{dt}", t=lambda σ: 0.7 / σ),
        at(r"a(t) =", a=lambda a_0, A, σ: lambda t: amplitude(t, a_0, A, σ), t=lambda σ: 0.7 / σ),
        at(r"u = A^2", t=lambda σ: 0.7 / σ),
        at(r"du/dt", t=lambda σ: 0.7 / σ),
        at(r"i = -g", V=(0.5, 2.0, 7.0)),
        at(r"v = V\cos", V=(0.5, 2.0, 7.0)),
        at(r"G(V) =", G=lambda g, c: lambda V: describing_conductance(V, g, c), V=(0.5, 2.0, 7.0)),
        at(r"V = 2\sqrt", V=lambda g, c: van_der_pol_amplitude(g, c)),
        at(r"c = \varepsilon/3", c=lambda ε: ε * van_der_pol_amplitude(1.0, 1.0) ** 2 / 4),
    ),
    page(
        "unit07_oscillation/neighbour.md",
        dict(
            f=(855e3, 600e3, 1.4e6),
            ω=lambda f: 2 * np.pi * f,
            λ=lambda f: wavelength(f),
            M=(20e-6, 5e-6, 40e-6),
            C=(170e-12, 300e-12, 50e-12),
            V=(7.5, 0.5, 20.0),
            Z=(30 - 700j, 80 - 300j, 25 + 60j),
            h=(6.6, 5.0, 10.0),
            I=lambda V, f, C, M, Z: aerial_current(V, f, C, M, Z),
            P=lambda I, h, f: radiated_power(I, h, f),
            R_r=lambda h, f: radiation_resistance(h, f),
            d=(10.0, 30.0, 40.0),
            E=lambda P, d, f: nearby_field(P, d, f),
            x=nearness,
            u=lambda d, f: (wavelength(f) / (2 * np.pi * d)) ** 2,
        ),
        at(
            r"= E\cdot 10^{-40/20}",
            E=(204e-6, 1e-3, 20e-6),
            d=lambda P, E, f: spoiled_distance(P, E, 40.0, f),
            x=lambda d, f: 2 * np.pi * d / wavelength(f),
        ),
        at(r"u - u^2", E=(204e-6, 1e-3, 20e-6), d=lambda P, E, f: spoiled_distance(P, E, 40.0, f)),
        at(r"u = 1/x^2", x=(0.5, 1.0, 4.0), u=(4.0, 1.0, 0.0625)),
    ),
    page(
        "unit07_oscillation/whistle.md",
        dict(
            f_set=(846e3, 860e3, 1.2e6),
            f_station=(855e3, 846e3, 1.1e6),
            p=(1e3, 400.0, 5e3),
            L=(200e-6, 170e-6, 300e-6),
            sign=(1.0, -1.0, 1.0),
            C=lambda p, L, f_station, sign: settings_for_pitch(p, L, f_station)[int(sign < 0)],
            f=lambda L, C: resonant_frequency(L, C),
            V=(0.5, 2.0, 7.0),
            m=(0.8, 0.3, 1.0),
            s=(5e-3, 1e-3, 0.02),
            Q=(80.0, 50.0, 200.0),
            E_1=(5e-3, 1e-3, 0.02),
            E=(0.5, 2.0, 7.5),
            B=lambda f, Q, E_1, E: locking_range(f, Q, E_1, E),
            Δ=lambda B, Q: B * (1 + Q / 100),
            t=(1e-3, 4e-3, 2e-3),
            φ=lambda t, Δ, B: slipping_phase(t, Δ, B),
            beat=lambda Δ, B: pulled_beat(Δ, B),
        ),
        at(r"|f_{\text{set}}", gives=lambda f_set, f_station: two_stations(f_set, f_station, 1e6)[0]),
        at(r"$\frac{V}{m\,s}$", gives=lambda V, s, m: 10 ** (autodyne_advantage(V, s, m) / 20)),
        at(r"\frac{E_1}{E}\,\sin\varphi", gives=lambda B, φ: 2 * np.pi * B * np.sin(φ)),
        at(r"\sin\varphi = \Delta/B", Δ=lambda B, Q: -B * Q / 300, φ=lambda Δ, B: np.radians(locked_phase(Δ, B))),
        at(
            r"t = RC",
            V_0=(0.0, 2.0, 1.0),
            V_1=(-6.0, -9.0, -3.0),
            V_2=(-2.0, -1.0, 0.5),
            R=(20e6, 2e6, 1e6),
            C=(3e-9, 1e-9, 2e-10),
            t=lambda V_1, V_2, V_0, R, C: 1 / ticking_frequency(V_1, V_2, V_0, R, C, 0.0),
        ),
    ),
]
