"""Unit 2: what the letters of its formulas stand for."""

import numpy as np
from scipy.optimize import brentq
from scipy.special import jv

from solutions.unit02_coil_and_condenser.coil import inductance
from solutions.unit02_coil_and_condenser.mutual_inductance import (
    coaxial_filaments,
    coupling_coefficient,
    mutual_from_series,
    turn_positions,
)
from solutions.unit02_coil_and_condenser.self_capacitance import (
    apparent_inductance,
    self_capacitance_fit,
    self_capacitance_from_octave,
)
from solutions.unit02_coil_and_condenser.solenoid_inductance import (
    INCH,
    MU_0,
    common_mean,
    elliptic_integrals,
    nagaoka_coefficient,
    solenoid_inductance,
    wheeler_inductance,
)
from solutions.unit02_coil_and_condenser.vane_capacitance import (
    EPSILON_0,
    gangs_in_parallel,
    gangs_in_series,
    plate_capacitance,
    power_of,
    vane_capacitance,
    vane_radius,
)
from solutions.unit02_coil_and_condenser.winding_sheet import close_wound_inductance, wire_length
from solutions.unit02_coil_and_condenser.wire_resistance import (
    awg_diameter,
    copper_resistivity,
    direct_resistance,
    skin_depth,
    skin_effect_ratio,
)
from solutions.unit06_reaction.cheap_measurements import self_capacitance_from_two, self_capacitance_uncertainty
from tests.lessons.holding import CYCLE, at, page


def kelvin(w):
    """(z/2) J₀(z)/J₁(z) for z² = w, by scipy."""
    z = np.sqrt(w)
    return z / 2 * jv(0, z) / jv(1, z)


def energy(L_1, L_2, M, I_1, I_2):
    currents = np.array([I_1, I_2])
    return currents @ np.array([[L_1, M], [M, L_2]]) @ currents / 2


def least(L_1, L_2, M):
    """The second current at which the energy is least, the first being 1: where a parabola through three points turns."""
    below, middle, above = (energy(L_1, L_2, M, 1.0, I_2) for I_2 in (-1.0, 0.0, 1.0))
    return (below - above) / (below - 2 * middle + above) / 2


def winding_length(N, tube, w):
    """Length at which a coil has the inductance of the close-wound one."""
    wanted = close_wound_inductance(N, tube, w)
    return brentq(lambda length: solenoid_inductance(N, tube + w, length) / wanted - 1, 1e-4, 1.0, xtol=1e-14)


PAGES = [
    page(
        "unit02_coil_and_condenser/index.md",
        dict(
            N=(44.0, 120.0, 9.0),
            l=(0.022, 0.3, 0.05),
            D=(0.0755, 0.04, 0.1),
            I=(1.0, 0.3, 2.0),
            μ_0=MU_0,
            A=lambda D: np.pi * D**2 / 4,
            k_N=lambda u: nagaoka_coefficient(u),
            u=lambda D, l: np.tan(np.arctan2(D, l)),
            L=lambda N, D, l: solenoid_inductance(N, D, l),
            Φ=lambda L, I, N: L * I / N,
            B=lambda Φ, A: Φ / A,
            m=lambda u: np.sin(np.arctan(u)) ** 2,
            k=lambda u: np.sin(np.arctan(u)),
            k_dash=lambda u: np.cos(np.arctan(u)),
            K=lambda m: elliptic_integrals(m)[0],
            E=lambda m: elliptic_integrals(m)[1],
            b=lambda k_dash: k_dash,
            a=lambda b: common_mean(1.0, b)[0],
            s=lambda b: common_mean(1.0, b)[1],
            n=(26.0, 36.0, 10.0),
            d=lambda n: awg_diameter(n),
            length=(10.0, 3.0, 100.0),
            temperature=(293.15, 320.0, 260.0),
            ρ=lambda temperature: copper_resistivity(temperature),
            R=lambda length, d, temperature: direct_resistance(length, d, temperature),
            f=(1e6, 50.0, 3e5),
            ω=lambda f: 2 * np.pi * f,
            δ=lambda f, ρ: skin_depth(f, ρ),
            q=lambda δ: np.sqrt(2j) / δ,
            x=lambda δ, n: n / 26 * δ,
            J_0=(1.0, 3.0, 0.2),
            J=lambda J_0, q, x: J_0 * np.exp(-q * x),
            H=lambda J, q: -J / q,
            r=lambda δ, n: δ * n / 150,
            w=lambda r, δ: (r / δ * np.sqrt(-2j)) ** 2,
        ),
        at(r"B = \mu_0", L=lambda N, D, l, k_N: solenoid_inductance(N, D, l) / k_N),
        at(r"L = \frac{N \Phi}{I}", L=lambda N, D, l, k_N: solenoid_inductance(N, D, l) / k_N),
        at(r"K = E", m=0.0),
        at(
            r"\frac{10^{-6}}{0.0254}",
            l=(0.06, 0.3, 0.05),
            r=(0.03775, 0.02, 0.05),
            L=lambda N, r, l: inductance(N, 2 * r, l),
        ),
        at(
            r"L = \frac{r^2 N^2}",
            l=(1.0, 12.0, 2.0),
            r=(1.5, 0.8, 2.0),
            L=lambda N, r, l: wheeler_inductance(N, 2 * r * INCH, l * INCH) / 1e-6,
        ),
        at(r"\rho = 1/58", ρ=lambda: copper_resistivity() / 1e-6),
        at(r"{dE}{dx}", E=lambda ρ, J: ρ * J),
        at(r"E = \rho J", E=lambda J, R, d, length: J * R * np.pi * d**2 / 4 / length),
        at(
            r"1 - \cfrac{w/2}",
            within=1e-9,
            because="cut after the 8: for a wire so thin the rest is below 1e-9",
            gives=lambda w, r, δ: skin_effect_ratio(r / δ) + 1j * kelvin(w).imag,
        ),
    ),
    page(
        "unit02_coil_and_condenser/bench.md",
        dict(
            f_1=(600e3, 500e3, 700e3),
            C_1=(352e-12, 480e-12, 250e-12),
            f_2=(1.2e6, 1.5e6, 1e6),
            C_2=(84.5e-12, 40e-12, 90e-12),
            k=lambda f_1, f_2: (f_2 / f_1) ** 2,
            u=(1e-12, 0.1e-12, 2e-12),
            w=(1e-3, 5e-3, 0.01),
            C_0=lambda f_1, C_1, f_2, C_2: self_capacitance_from_two(f_1, C_1, f_2, C_2)[0],
            L=lambda f_1, C_1, f_2, C_2: self_capacitance_from_two(f_1, C_1, f_2, C_2)[1],
            U=lambda f_1, C_1, f_2, C_2, u, w: self_capacitance_uncertainty(f_1, C_1, f_2, C_2, u, w),
        ),
    ),
    page(
        "unit02_coil_and_condenser/two_coils.md",
        dict(
            r_1=(0.0377, 0.02, 0.05),
            r_2=(0.0377, 0.05, 0.03),
            d=(0.01, 0.04, 0.1),
            μ_0=MU_0,
            φ=CYCLE,
            α=lambda φ: (np.pi - φ) / 2,
            s=lambda r_1, r_2, d, φ: np.hypot(abs(r_1 - r_2 * np.exp(1j * φ)), d),
            M=lambda r_1, r_2, d: coaxial_filaments(r_1, r_2, d),
            m=lambda s: 1 - (s.min() / s.max()) ** 2,
            k=lambda m: np.sqrt(m),
            K=lambda m: elliptic_integrals(m)[0],
            E=lambda m: elliptic_integrals(m)[1],
            N=(15, 44, 7),
            n=(0, 40, 3),
            l=(0.0075, 0.022, 0.05),
            L_1=(177e-6, 50e-6, 300e-6),
            L_2=(20e-6, 60e-6, 250e-6),
            I_1=(1.0, -0.2, 3.0),
            I_2=(0.7, 2.0, -1.5),
            L_aiding=lambda L_1, L_2: 1.2 * (L_1 + L_2),
            L_opposing=lambda L_1, L_2: 0.8 * (L_1 + L_2),
            L=(172e-6, 2e-3, 60e-6),
            f=(1e6, 100e3, 1.5e6),
            C_low=(352e-12, 300e-12, 500e-12),
            C_high=(84.5e-12, 70e-12, 120e-12),
            C_0=lambda C_low, C_high: self_capacitance_from_octave(C_low, C_high),
            L_seeming=lambda L, C_0, f: apparent_inductance(L, C_0, f),
        ),
        at(r"\left(n + \tfrac12\right)", gives=lambda N, l, n: turn_positions(N, l)[n]),
        at(r"\tfrac12 L_1 I_1^2", M=(9e-6, 60e-6, -80e-6), gives=energy),
        at(r"I_2 = -M/L_2", M=(9e-6, 60e-6, -80e-6), I_2=least),
        at(r"\ge 0", M=(9e-6, 60e-6, 300e-6), true=lambda L_1, L_2, M: energy(L_1, L_2, M, 1.0, least(L_1, L_2, M)) >= 0),
        at(r"k = \frac{M}{\sqrt{L_1 L_2}}", M=(9e-6, 50e-6, -80e-6), k=lambda M, L_1, L_2: coupling_coefficient(M, L_1, L_2)),
        at(r"L_\text{aiding} = ", M=lambda L_aiding, L_opposing: mutual_from_series(L_aiding, L_opposing)),
        at(r"L_\text{opposing} = ", M=lambda L_aiding, L_opposing: mutual_from_series(L_aiding, L_opposing)),
        at(r"M = \frac{L_\text{aiding}", M=lambda L_aiding, L_opposing: mutual_from_series(L_aiding, L_opposing)),
        at(
            r"C_0 = 0.1126",
            l=(2.2, 10.0, 7.55),
            D=(7.55, 4.0, 5.0),
            C_0=lambda l, D: self_capacitance_fit(D / 100, l / 100) / 1e-12,
        ),
        at(r"L_\text{seeming}", C_0=(5e-12, 9e-12, 3e-12)),
    ),
    page(
        "unit02_coil_and_condenser/dial_and_sheet.md",
        dict(
            N=(23, 11, 5),
            A=(0.00066, 0.0004, 0.001),
            d=(0.35e-3, 0.3e-3, 0.5e-3),
            ε_0=EPSILON_0,
            E=(1e4, 2e5, 3e3),
            V=lambda E, d: E * d,
            Q=lambda A, d, V: plate_capacitance(2, A, d) * V,
            C=lambda θ, law, C_min, C_max: vane_capacitance(θ, law, C_min, C_max),
            law=("capacitance", "wavelength", "frequency"),
            p=lambda law: power_of(law),
            θ=(1.0, 0.5, 2.5),
            C_min=(30e-12, 10e-12, 20e-12),
            C_max=(365e-12, 500e-12, 250e-12),
            r_1=(5e-3, 6e-3, 3e-3),
            r=lambda θ, law, C_min, C_max, N, d, r_1: vane_radius(θ, law, C_min, C_max, N, d, r_1),
            C_1=(365e-12, 500e-12, 30e-12),
            C_2=(365e-12, 200e-12, 15e-12),
            w=(0.55e-3, 0.3e-3, 1.2e-3),
            tube=(0.075, 0.05, 0.1),
            l=winding_length,
            wire=lambda N, tube, w: wire_length(N, tube, w),
            D=lambda N, w, wire: np.sqrt((wire / N) ** 2 - w**2) / np.pi,
        ),
        at(r"C = \varepsilon_0", C=lambda A, d: plate_capacitance(2, A, d)),
        at(r"C = (N - 1)", C=lambda N, A, d: plate_capacitance(N, A, d)),
        at(r"C = C_1 + C_2", C=lambda C_1, C_2: gangs_in_parallel(C_1, C_2)),
        at(r"\frac{1}{C} = \frac{1}{C_1}", C=lambda C_1, C_2: gangs_in_series(C_1, C_2)),
    ),
]
