"""Unit 3: what the letters of its formulas stand for."""

import numpy as np

from solutions.unit02_coil_and_condenser.vane_capacitance import power_of, vane_capacitance
from solutions.unit03_tuned_circuit.aerial_coupling import (
    best_mutual_inductance,
    critical_coupling,
    loaded_quality_factor,
    tuned_voltage,
)
from solutions.unit03_tuned_circuit.quality_factor import bandwidth, dynamic_resistance, half_power_frequencies, quality_factor
from solutions.unit03_tuned_circuit.reflected_impedance import (
    mutual_from_coupling,
    reflected_impedance,
    secondary_current,
    series_impedance,
)
from solutions.unit03_tuned_circuit.resonance import resonance_condition, resonant_frequency
from solutions.unit03_tuned_circuit.response_curve import (
    decibels,
    detuning_in_bandwidths,
    relative_response,
    universal_response,
)
from solutions.unit03_tuned_circuit.ring_down import ring_amplitude, ring_energy, ring_voltage
from solutions.unit03_tuned_circuit.tuning import tuning_capacitance
from solutions.unit03_tuned_circuit.tuning_range import dial_angle, dial_frequency, range_covered, tuning_inductance
from solutions.unit06_reaction.cheap_measurements import quality_from_added_resistance, quality_from_detuning
from tests.lessons.holding import at, page

NO_COIL, NO_CONDENSER = 0.0, np.inf


def at_resonance(f_0):
    return f_0


PAGES = [
    page(
        "unit03_tuned_circuit/index.md",
        dict(
            f=(700e3, 1.1e6, 1.5e6),
            L=(200e-6, 170e-6, 2e-3),
            C=(177e-12, 400e-12, 20e-12),
            R=(10.6, 3.0, 250.0),
            E=(1e-3, 0.02, 0.5),
            f_0=lambda L, C: resonant_frequency(L, C),
            X_L=lambda f, L: series_impedance(f, L, NO_CONDENSER, 0.0).imag,
            X_C=lambda f, C: -series_impedance(f, NO_COIL, C, 0.0).imag,
            Z=lambda f, L, C, R: series_impedance(f, L, C, R),
            Q=lambda L, R, f_0: quality_factor(L, R, f_0),
            X=lambda f_0, L: series_impedance(f_0, L, NO_CONDENSER, 0.0).imag,
            bandwidth=lambda f_0, Q: bandwidth(f_0, Q),
            R_d=lambda L, C, R: dynamic_resistance(L, C, R),
            I_0=lambda E, L, C, R, f_0: E / series_impedance(f_0, L, C, R),
            t=(1e-6, 7e-6, 30e-6),
            W_0=(1e-9, 3e-9, 2e-3),
            W=lambda W_0, t, f_0, Q: W_0 * ring_energy(t, f_0, Q),
            V_0=(1.0, 3.0, 0.2),
            V=lambda V_0, t, f_0, Q: V_0 * ring_amplitude(t, f_0, Q),
            s=lambda Q: (1 - (2 * Q) ** -2.0) ** 0.5,
            f_1=lambda s, f_0: s * f_0,
            a=lambda f, f_0, Q: detuning_in_bandwidths(f, f_0, Q),
        ),
        at(
            r"C = \frac{1}{(2\pi f_0)^2",
            f_0=(846e3, 1107e3, 5e6),
            L=(200e-6, 180e-6, 3e-6),
            C=lambda f_0, L: tuning_capacitance(f_0, L),
        ),
        at(r"(2\pi f_0)^2 =", f_0=lambda L, C: float(resonance_condition(L, C)) / (2 * np.pi)),
        at(r"200\,\mathrm{\mu H}", L=200e-6, C=177e-12, within=2e-3, because="the result is printed to three figures"),
        at(r"Q = \frac{X_L}{R}", Q=lambda L, R, f: quality_factor(L, R, f)),
        at(
            r"V = \frac{E}{R}\, X_C",
            f=at_resonance,
            V=lambda E, f_0, L, C, R: abs(E / series_impedance(f_0, L, C, R) * series_impedance(f_0, NO_COIL, C, 0.0)),
        ),
        at(r"f^2 - \frac{f_0}{Q}", f=lambda f_0, Q: half_power_frequencies(f_0, Q)[1]),
        at(r"f = f_0\left(", f=lambda f_0, Q: half_power_frequencies(f_0, Q)[1]),
        at(r"\frac{I}{I_0} = \frac{R}{Z}", I=lambda I_0, f, f_0, Q: I_0 * relative_response(f, f_0, Q)),
        at(
            r"\frac{I}{I_0} \approx",
            I_0=1.0,
            I=lambda a: universal_response(a),
            a=(0.2, -0.5, 3.0),
            because="exact for the universal curve; how near a circuit comes to it is held in test_unit03_response_curve.py",
        ),
        at(r"10 \log_{10} \left|", I=lambda I_0, f, f_0, Q: I_0 * 10 ** (decibels(relative_response(f, f_0, Q)) / 20)),
        at(r"\cos 2\pi f_1 t", V=lambda t, f_0, Q: ring_voltage(t, f_0, Q)),
        at(r"t = Q/(\pi f_0)", t=lambda Q, f_0: -(np.log(ring_amplitude(1e-6, f_0, Q)) ** -1) * 1e-6),
    ),
    page(
        "unit03_tuned_circuit/coupling.md",
        dict(
            f=(1e6, 700e3, 1.4e6),
            ω=lambda f: 2 * np.pi * f,
            k=(0.01, 0.3, -0.05),
            L_1=(200e-6, 170e-6, 50e-6),
            L_2=(200e-6, 20e-6, 300e-6),
            E=(1.0, 0.02, 3.0),
            M=lambda k, L_1, L_2: mutual_from_coupling(k, L_1, L_2),
            Z_1=(12 + 3j, 50 - 200j, 5 + 0j),
            Z_2=(12 - 40j, 900 + 20j, 3 + 7j),
            I_2=lambda E, f, M, Z_1, Z_2: secondary_current(E, f, M, Z_1, Z_2),
            I_1=lambda E, f, M, Z_1, Z_2: E / (Z_1 + reflected_impedance(f, M, Z_2)),
            Z_reflected=lambda f, M, Z_2: reflected_impedance(f, M, Z_2),
            R_1=(12.0, 5.0, 40.0),
            R_2=(8.0, 30.0, 11.0),
            Q_1=(100.0, 50.0, 200.0),
            Q_2=(100.0, 80.0, 30.0),
            k_c=lambda Q_1, Q_2: critical_coupling(Q_1, Q_2),
            Z_a=(30 - 700j, 80 + 5j, 25 - 90j),
            R_a=lambda Z_a: Z_a.real,
            L=(200e-6, 170e-6, 300e-6),
            R=(10.6, 4.0, 20.0),
            R_reflected=lambda f, M, Z_a: reflected_impedance(f, M, Z_a).real,
            X_reflected=lambda f, M, Z_a: reflected_impedance(f, M, Z_a).imag,
            Q_loaded=lambda f, M, Z_a, L, R: loaded_quality_factor(f, M, Z_a, L, R),
            V=lambda E, f, M, Z_a, L, R: tuned_voltage(E, f, M, Z_a, L, R),
        ),
        at(
            r"I_2 = \frac{\omega M\,E}",
            k=(0.01, 0.3, 0.05),
            I_2=lambda E, f, M, R_1, R_2: abs(secondary_current(E, f, M, R_1, R_2)),
        ),
        at(r"\omega M = \sqrt{R_1 R_2}", M=lambda f, R_1, R_2: best_mutual_inductance(f, R_1, R_2)),
        at(r"V = \frac{\omega M", k=(0.01, 0.3, 0.05)),
        at(r"\omega M = |Z_a|", M=lambda f, Z_a, R: best_mutual_inductance(f, Z_a, R)),
    ),
    page(
        "unit03_tuned_circuit/bench.md",
        dict(
            V_0=(6.0, 5.0, 9.0),
            R=(10.6, 4.0, 30.0),
            R_1=(10.0, 5.0, 3.0),
            X=(1063.0, 600.0, 2e3),
            ω=(5e6, 4e6, 9e6),
            V_1=lambda V_0, R, R_1: V_0 * R / (R + R_1),
            Q=lambda X, R: X / R,
            C_1=lambda X, R, ω: 1 / (ω * (X + R)),
            C_2=lambda X, R, ω: 1 / (ω * (X - R)),
        ),
        at(r"\left(\frac{V_0}{V_1} - 1\right)", Q=lambda V_0, V_1, R_1, X: quality_from_added_resistance(V_0, V_1, R_1, X)),
        at(r"\frac{C_2 + C_1}{C_2 - C_1}", Q=lambda C_1, C_2: quality_from_detuning(C_1, C_2)),
    ),
    page(
        "unit03_tuned_circuit/dial.md",
        dict(
            L=(200e-6, 170e-6, 300e-6),
            C_min=(12e-12, 10e-12, 20e-12),
            C_max=(365e-12, 500e-12, 250e-12),
            C_stray=(25e-12, 40e-12, 10e-12),
            f_lowest=lambda L, C_min, C_max, C_stray: range_covered(L, C_min, C_max, C_stray)[0],
            f_highest=lambda L, C_min, C_max, C_stray: range_covered(L, C_min, C_max, C_stray)[1],
            law=("capacitance", "wavelength", "frequency"),
            p=lambda law: power_of(law),
            θ=(1.0, 0.3, 2.5),
            C=lambda θ, law, C_min, C_max: vane_capacitance(θ, law, C_min, C_max),
            f=lambda θ, law, C_min, C_max, C_stray, L: dial_frequency(θ, law, C_min, C_max, C_stray, L),
        ),
        at(
            r"L = \frac{1}{(2\pi f_\text{lowest}",
            f_lowest=(560e3, 500e3, 650e3),
            L=lambda f_lowest, C_max, C_stray: tuning_inductance(f_lowest, C_max, C_stray),
        ),
        at(
            r"\frac{\theta}{\pi}",
            f=(900e3, 700e3, 1.1e6),
            C=lambda f, L, C_stray: resonant_frequency(L, 1.0) ** 2 / f**2 - C_stray,
            θ=lambda f, law, C_min, C_max, C_stray, L: dial_angle(f, law, C_min, C_max, C_stray, L),
        ),
    ),
]
