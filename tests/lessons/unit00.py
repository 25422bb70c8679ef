"""Unit 0: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit00_bench.dropper_resistor import current_through_dropper, dropper_dissipation, dropper_resistance
from solutions.unit00_bench.metres import wavelength
from solutions.unit00_bench.prefixes import from_engineering
from solutions.unit00_bench.tone import tone
from solutions.unit03_tuned_circuit.response_curve import decibels
from tests.lessons.holding import at, page

PAGES = [
    page(
        "unit00_bench/index.md",
        dict(
            P_1=(1.0, 0.3, 5e-3),
            P_2=(10.0, 0.02, 7.0),
            V_1=(1.0, 0.3, 5e-3),
            V_2=(10.0, 0.02, 7.0),
            decibels=1.0,
            V=(4.5, 90.0, 0.02),
            R=(47.0, 20e3, 50.0),
            P=lambda V, R: dropper_dissipation(V, 0.0, V / R),
        ),
        at(r"365\ \mathrm{pF}", in_pF=lambda: from_engineering("1 pF"), in_F=lambda: from_engineering("1 F")),
        at(r"846\ \mathrm{kHz}", in_kHz=lambda: from_engineering("1 kHz"), in_Hz=lambda: from_engineering("1 Hz")),
        at(r"\frac{P_2}{P_1}", L=lambda P_1, P_2: decibels(np.sqrt(P_2 / P_1))),
        at(r"\frac{V_2^2}{V_1^2}", L=lambda V_1, V_2: decibels(V_2 / V_1)),
    ),
    page(
        "unit00_bench/tools.md",
        dict(
            c=299_792_458.0,
            f=(846e3, 200e3, 440.0),
            λ=lambda f: wavelength(f),
            A=(1.0, 0.2, 7.0),
            t=(0.0, 1 / 1760, 0.01),
            v=lambda t, f, A: tone(t, f, A),
        ),
    ),
    page(
        "unit00_bench/supply.md",
        dict(
            V=(4.5, 90.0, 6.0),
            R_m=(10e6, 1e6, 20e3),
            R_s=(1e6, 15.0, 10e3),
            V_read=lambda V, R_s, R_m: V - R_s * current_through_dropper(V, R_s, R_m, 1.0),
            V_rail=(4.5, 6.0, 3.0),
            V_f=(2.0, 5.0, 1.4),
            I=(0.06, 0.25, 0.05),
            I_f=(0.06, 0.25, 0.05),
            R=lambda V_rail, V_f, I: dropper_resistance(V_rail, V_f, I),
            P=lambda V_rail, V_f, I: dropper_dissipation(V_rail, V_f, I),
        ),
        at(r"R + V_f / I_f", R=(47.0, 4.7, 33.0), I=lambda V_rail, R, V_f, I_f: current_through_dropper(V_rail, R, V_f, I_f)),
    ),
]
