"""Unit 1: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit01_signal.aerial_voltage import PERMITTIVITY, aerial_capacitance, aerial_emf, effective_height
from solutions.unit01_signal.am_waveform import am_envelope, am_waveform
from solutions.unit01_signal.channel_plan import SPEED_OF_LIGHT, image_reading, wavelength
from solutions.unit01_signal.field_strength import (
    attenuation_far,
    attenuation_near,
    numerical_distance,
    unattenuated_field,
)
from solutions.unit01_signal.inverse_distance import distance_for
from solutions.unit01_signal.radiation_resistance import available_power, radiation_resistance
from solutions.unit01_signal.sideband_power import depth_from_aerial_current, sideband_power, sideband_share, total_power
from tests.lessons.holding import at, page


def ground(p, d, λ):
    """The complex permittivity that makes p the numerical distance: the larger root of a quadratic."""
    part = p / (-1j * np.pi * d / λ)
    return (1 + np.sqrt(1 - 4 * part)) / (2 * part)


PAGES = [
    page(
        "unit01_signal/index.md",
        dict(
            A=(10.0, 0.3, 2.0),
            f=(846e3, 1.1e6, 20e3),
            F=(400.0, 3e3, 1e3),
            m=(0.3, 1.0, 0.7),
            t=(1e-5, 2.3e-4, 7e-3),
            v=lambda t, f, F, m, A: am_waveform(t, f, F, m, A),
            a=(0.3, 2.0, -1.0),
            b=(1.1, 0.4, 5.0),
            P=(1e3, 50.0, 7e3),
            P_sidebands=lambda P, m: sideband_power(P, m),
            P_total=lambda P, m: total_power(P, m),
            r=(1.08, 1.2, 1.01),
        ),
        at(r"v = A \cos 2\pi f t", v=lambda t, f, F, A: am_waveform(t, f, F, 0.0, A)),
        at(r"$A\,(1 + m \cos 2\pi F t)$", gives=lambda t, F, m, A: am_envelope(t, F, m, A)),
        at(r"\frac{m^2}{2 + m^2}", P_total=lambda P_sidebands, m: P_sidebands / sideband_share(m)),
        at(r"r^2 & =", m=lambda r: depth_from_aerial_current(r)),
    ),
    page(
        "unit01_signal/ground.md",
        dict(
            P=(1e3, 50.0, 7e3),
            d=(1e3, 4e3, 60e3),
            Z_0=120 * np.pi,
            E=lambda P, d: unattenuated_field(P, d),
            S=lambda P, d: unattenuated_field(P, d) ** 2 / (120 * np.pi),
            f=(846e3, 1.1e6, 1.4e6),
            λ=lambda f: wavelength(f),
            σ=(0.03, 1e-3, 5.0),
            ε_r=(40.0, 15.0, 70.0),
            ε_0=PERMITTIVITY,
            p=lambda d, f, σ, ε_r: numerical_distance(d, f, σ, ε_r),
            e=ground,
        ),
        at(r"d = \frac{\sqrt{90\,P}}{E}", d=lambda P, E: distance_for(P, E), E=(0.3, 1e-3, 0.02)),
        at(
            r"\exp(-p)",
            p=(5e-3, 4e-3 - 2e-3j, 5e-3j),
            F=lambda p: attenuation_near(p),
            within=2e-10,
            because="cut after three terms of the sum: the next is below 1e-10",
        ),
        at(
            r"F = -\frac{1}{2p}",
            p=(5e3, 4e3 - 2e3j, -5e3j),
            F=lambda p: attenuation_far(p),
            within=2e-10,
            because="cut after three terms: the next is below 2e-10 of the first",
        ),
    ),
    page(
        "unit01_signal/aerial.md",
        dict(
            h=(8.0, 12.0, 3.0),
            b=(15.0, 12.0, 40.0),
            h_e=lambda h, b: effective_height(h, b),
            a=(1e-3, 2e-3, 0.5e-3),
            ε_0=PERMITTIVITY,
            C=lambda h, b, a: aerial_capacitance(h, b, a),
            E=(0.02, 1e-3, 0.3),
            V=lambda E, h_e: aerial_emf(E, h_e),
            R=(30.0, 80.0, 5.0),
            R_L=(30.0, 10.0, 400.0),
            P_max=lambda V, R: available_power(V, R),
            I=(1.0, 0.3, 20.0),
            d=(1e3, 4e3, 60e3),
            f=(846e3, 1.1e6, 1.4e6),
            λ=lambda f: wavelength(f),
            R_r=lambda h_e, f: radiation_resistance(h_e, f),
            P=lambda I, R_r: I**2 * R_r,
        ),
        at(r"$\frac{b}{h + b}$", gives=lambda h_e, h: 2 * h_e / h - 1),
        at(r"P = \left( \frac{V}{R + R_L}", P=lambda V, R, R_L: available_power(V, R) * (1 - ((R_L - R) / (R_L + R)) ** 2)),
        at(r"E = \frac{120\pi", E=lambda P, d: unattenuated_field(P, d)),
        at(r"P = (E d)^2", E=lambda P, d: unattenuated_field(P, d)),
    ),
    page(
        "unit01_signal/dial.md",
        dict(
            c=SPEED_OF_LIGHT,
            f=(846e3, 1.1e6, 1.4e6),
            λ=lambda f: wavelength(f),
            f_osc=(900e3, 1e6, 1.3e6),
            f_image=lambda f, f_osc: SPEED_OF_LIGHT / image_reading(wavelength(f), wavelength(f_osc)),
        ),
    ),
]
