"""Unit 5: what the letters of its formulas stand for."""

import numpy as np
from scipy import constants

from solutions.unit04_crystal_set.diode_current import slope_resistance
from solutions.unit05_valve.emission import emission_current, emission_density
from solutions.unit05_valve.grid_leak import audio_cutoff, bias_with_carrier, grid_gain, rest_bias, time_constant_limits
from solutions.unit05_valve.load_line import load_line_current, operating_point
from solutions.unit05_valve.one_valve import gain, leak_time, level
from solutions.unit05_valve.one_valve_set import (
    CONDENSER,
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    TONE_RESISTANCE,
    ZERO_CURRENT,
    anode_slopes,
    detector_gain,
)
from solutions.unit05_valve.space_charge import (
    CHARGE_TO_MASS,
    PERMITTIVITY,
    gap_potential,
    space_charge_density,
    transit_time,
)
from solutions.unit05_valve.stage_gain import band_edges, input_capacitance, stage_gain
from solutions.unit05_valve.triode_current import (
    anode_resistance,
    drive,
    law_from_manual,
    mutual_conductance,
    triode_current,
)
from solutions.unit06_reaction.bench_readings import current_read
from solutions.unit06_reaction.cheap_measurements import grid_law_from_readings
from tests.lessons.holding import at, page
from tests.lessons.unit04 import bessel, next_bessel

TRIODE = dict(μ=(9.3, 20.0, 6.6), K=(270e-6, 150e-6, 1e-3), V_0=(-0.67, 0.5, 1.2))
MANUAL = dict(
    V_a=(90.0, 135.0, 180.0),
    V_g=(-4.5, -9.0, -13.5),
    I_a=(2.5e-3, 3e-3, 3.1e-3),
    g_m=(850e-6, 900e-6, 900e-6),
    μ=9.3,
    D=lambda V_a, V_g, μ, V_0: drive(V_a, V_g, μ, V_0),
    V_0=lambda V_a, V_g, I_a, μ, g_m: law_from_manual(V_a, V_g, I_a, μ, g_m)[1],
)


def grid_at(carrier):
    return bias_with_carrier(carrier, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)


def slopes_at(carrier):
    """Of the club's set: mutual conductance averaged over the carrier, and the anode's own slope against it."""
    grid = grid_at(carrier)
    return anode_slopes(operating_point(HT, STEADY_RESISTANCE, grid, *LAW)[0], grid, carrier, *LAW)


PAGES = [
    page(
        "unit05_valve/index.md",
        TRIODE
        | dict(
            T=(1000.0, 900.0, 2400.0),
            φ=(1.0, 1.1, 4.5),
            A=(100.0, 300.0, 6e5),
            k=constants.k,
            e=constants.e,
            m=constants.e / CHARGE_TO_MASS,
            d=(2.5e-3, 1e-3, 4e-3),
            l=(0.05, 0.1, 0.02),
            ε_0=PERMITTIVITY,
            V_a=(90.0, 45.0, 135.0),
            x=lambda d, l: d * (0.2 + 6 * l),
            V=lambda x, V_a, d: gap_potential(x, V_a, d),
            v=lambda V, d: 3 * d / transit_time(V, d),
            J=lambda V_a, d: space_charge_density(V_a, d),
            ρ=lambda J, v: J / v,
            p=lambda: np.log2(gap_potential(1.0, 1.0, 1.0) / gap_potential(0.5, 1.0, 1.0)),
            t=lambda V_a, d: transit_time(V_a, d),
            V_g=(-4.5, 0.0, -3.0),
            D=lambda V_a, V_g, μ, V_0: drive(V_a, V_g, μ, V_0),
            I_a=lambda V_a, V_g, μ, K, V_0: triode_current(V_a, V_g, μ, K, V_0),
            g_m=lambda V_a, V_g, μ, K, V_0: mutual_conductance(V_a, V_g, μ, K, V_0),
            r_a=lambda V_a, V_g, μ, K, V_0: anode_resistance(V_a, V_g, μ, K, V_0),
        ),
        at(
            r"A = g_m",
            g_m=(0.85e-3, 2e-3, 0.3e-3),
            r_a=(11e3, 5e3, 60e3),
            R=(22e3, 100e3, 10e3),
            A=lambda g_m, r_a, R: gain(g_m, r_a, R),
        ),
        at(r"L = 20", A=(6.2, 0.5, 100.0), L=lambda A: level(A)),
        at(r"\tau = R_g C", R_g=(2e6, 1e6, 5e6), C=(100e-12, 250e-12, 50e-12), τ=lambda R_g, C: leak_time(R_g, C)),
        at(r"$\mathrm{e}^{-\varphi/(kT/e)}$", gives=lambda T, φ: emission_density(T, 1.0, φ) / T**2),
        at(r"J = A\,T^2", J=lambda T, A, φ: emission_density(T, A, φ)),
        at(
            r"I = \pi d",
            d=(1e-4, 2e-4, 5e-5),
            J=lambda T, A, φ: emission_density(T, A, φ),
            I=lambda T, A, φ, l, d: emission_current(T, A, φ, l, d),
        ),
        at(r"V \propto x^{4/3}", V=lambda x: gap_potential(x, 1.0, 1.0)),
        at(r"t = 3d/v", V=lambda V_a: V_a),
        at(r"\frac{I_a}{g_m} =", **MANUAL),
        at(r"D = \tfrac32", **MANUAL),
        at(r"K = I_a", **MANUAL, K=lambda V_a, V_g, I_a, μ, g_m: law_from_manual(V_a, V_g, I_a, μ, g_m)[0]),
    ),
    page(
        "unit05_valve/stage.md",
        TRIODE
        | dict(
            V_HT=(90.0, 135.0, 180.0),
            R=(40e3, 20e3, 100e3),
            V_g=(-1.5, -1.0, -9.0),
            V_a=lambda V_HT, R, V_g, μ, K, V_0: operating_point(V_HT, R, V_g, μ, K, V_0)[0],
            I_a=lambda V_HT, R, V_g, μ, K, V_0: operating_point(V_HT, R, V_g, μ, K, V_0)[1],
            g_m=lambda V_a, V_g, μ, K, V_0: mutual_conductance(V_a, V_g, μ, K, V_0),
            r_a=lambda V_a, V_g, μ, K, V_0: anode_resistance(V_a, V_g, μ, K, V_0),
            A=lambda μ, r_a, R: stage_gain(μ, r_a, R),
            δV_g=(1e-3, 2e-3, -5e-3),
            δV_a=lambda A, δV_g: -A * δV_g,
            δI_a=lambda A, R, δV_g: A / R * δV_g,
            C_gf=(3e-12, 4e-12, 2e-12),
            C_ga=(6e-12, 8e-12, 5e-12),
            C_in=lambda C_gf, C_ga, A: input_capacitance(C_gf, C_ga, A),
            C=(10e-9, 1e-9, 50e-9),
            R_g=(1e6, 0.5e6, 2e6),
            C_s=(60e-12, 30e-12, 100e-12),
            R_out=lambda r_a, R: stage_gain(r_a, r_a, R),
            f_low=lambda r_a, R, R_g, C, C_s: band_edges(r_a, R, R_g, C, C_s)[0],
            f_high=lambda r_a, R, R_g, C, C_s: band_edges(r_a, R, R_g, C, C_s)[1],
        ),
        at(r"I_a = \frac{V_\text{HT}", I_a=lambda V_a, V_HT, R: load_line_current(V_a, V_HT, R)),
    ),
    page(
        "unit05_valve/bench.md",
        dict(
            V_r=(2.0, 0.0, 1.5),
            V_g=(0.08, -0.18, 0.02),
            R_g=(2e6, 2e6, 5e6),
            R_m=(10e6, 10e6, 1e6),
            I_g=lambda V_r, V_g, R_g, R_m: current_read(V_r, V_g, R_g, R_m),
            V_1=(0.08, 0.05, 0.2),
            V_2=(-0.18, -0.3, -0.05),
            I_1=(0.95e-6, 0.4e-6, 3e-6),
            I_2=(0.11e-6, 0.02e-6, 0.5e-6),
            n=lambda I_1, V_1, I_2, V_2: grid_law_from_readings(I_1, V_1, I_2, V_2)[1],
            I_zero=lambda I_1, V_1, I_2, V_2: grid_law_from_readings(I_1, V_1, I_2, V_2)[0],
        ),
        at(r"$I_g = I_\text{zero}\, \mathrm{e}^{V_g/n}$", I_g=lambda I_2: I_2, V_g=lambda V_2: V_2),
    ),
    page(
        "unit05_valve/detector.md",
        dict(
            I_zero=(0.5e-6, 0.3e-6, 1e-6),
            n=(0.12, 0.1, 0.15),
            V_r=(2.0, 0.0, 1.5),
            R_g=(2e6, 1e6, 5e6),
            V_g=lambda R_g, V_r, I_zero, n: rest_bias(R_g, V_r, I_zero, n),
            I_g=lambda V_g, V_r, R_g: load_line_current(V_g, V_r, R_g),
            r_g=lambda V_g, I_zero, n: slope_resistance(V_g, I_zero, n),
            m=(0.3, 0.8, 0.5),
            F=(4.5e3, 1e3, 300.0),
            C=(100e-12, 250e-12, 1e-9),
            V=(0.1, 1.0, 0.03),
            F_cut=lambda C, R_g, I_g, n: audio_cutoff(C, R_g, I_g, n),
            δV_crest=1e-3,
            δV_g=lambda V, C, R_g, I_g, n, δV_crest: grid_gain(V, 0.0, C, R_g, I_g, n) * δV_crest,
            I_0=lambda: bessel,
            I_1=lambda: next_bessel,
        ),
        at(r"\frac{m\,2\pi F}", gives=lambda F, m: 1 / time_constant_limits(531e3, F, m)[1]),
        at(
            r"$\frac{1}{\sqrt{1 + (F/F_\text{cut})^2}}$",
            gives=lambda V, F, C, R_g, I_g, n: grid_gain(V, F, C, R_g, I_g, n) / grid_gain(V, 0.0, C, R_g, I_g, n),
        ),
        at(
            r"\text{gain} =",
            gain=lambda V: detector_gain(V, 0.0),
            R=TONE_RESISTANCE,
            r_a=lambda g_m: LAW[0] / g_m,
            g_m=lambda V: slopes_at(V)[0],
            g_c=lambda V: slopes_at(V)[1],
            n=GRID_SLOPE,
            C=CONDENSER,
            R_g=LEAK,
            V_r=LEAK_RETURN,
            V_g=lambda V: grid_at(V),
        ),
    ),
]
