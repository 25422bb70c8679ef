"""Coupled circuits against the solved mesh equations, tabulated responses, and what no passive circuit can do."""

import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar

from solutions.unit03_tuned_circuit.aerial_coupling import (
    best_mutual_inductance,
    critical_coupling,
    loaded_quality_factor,
    tuned_voltage,
)
from solutions.unit03_tuned_circuit.reflected_impedance import (
    mutual_from_coupling,
    reflected_impedance,
    secondary_current,
    series_impedance,
)

COILS = Path(__file__).parents[1] / "published" / "coils"
# Method of F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (from memory); figures here and in
# coupled_two_circuit_response.csv recomputed with mpmath from the mesh equations, not published examples.
COUPLED = tomllib.loads((COILS / "tuned_circuits.toml").read_text())["coupled_example"]
# J. Bird, Electrical Circuit Theory and Technology, problem 43.06 (book title from memory, data found, k recomputed).
TWO_COILS = tomllib.loads((COILS / "textbook_examples_tuned.toml").read_text())["example"][-1]

INDUCTANCE, RESONANCE, Q = 200e-6, 1e6, 100  # the circuits of both tables
CAPACITANCE = 1 / ((2 * np.pi * RESONANCE) ** 2 * INDUCTANCE)
RESISTANCE = 2 * np.pi * RESONANCE * INDUCTANCE / Q

hertz = st.floats(1e5, 1e7)
henries = st.floats(1e-6, 1e-2)
couplings = st.floats(-0.9, 0.9).filter(lambda k: abs(k) > 1e-6)
resistances = st.floats(0.1, 1e3)
reactances = st.floats(-1e4, 1e4)


def current_through_identical_circuits(frequency, coupling):
    mutual = mutual_from_coupling(coupling, INDUCTANCE, INDUCTANCE)
    alone = series_impedance(frequency, INDUCTANCE, CAPACITANCE, RESISTANCE)
    return secondary_current(1.0, frequency, mutual, alone, alone)


def test_coupled_response_table(published):
    response = published("coils/coupled_two_circuit_response")
    current = current_through_identical_circuits(RESONANCE + 1e3 * response["offset_kHz"], response["kQ"] / Q)
    assert 1e3 * np.abs(current) == pytest.approx(response["I2_mA_per_V"], rel=1e-10)
    assert 2 * RESISTANCE * np.abs(current) == pytest.approx(response["normalised_exact"], rel=1e-10)


@pytest.mark.parametrize("example", COUPLED, ids=lambda e: f"{e['k_over_kc']} critical")
def test_coupled_examples(example):
    coupling = example["k_over_kc"] * critical_coupling(Q, Q)
    assert coupling == pytest.approx(example["k"], rel=1e-12)
    assert mutual_from_coupling(coupling, INDUCTANCE, INDUCTANCE) == pytest.approx(example["M_uH"] * 1e-6, rel=1e-12)
    at_resonance = abs(current_through_identical_circuits(RESONANCE, coupling))
    assert 1e3 * at_resonance == pytest.approx(example["I2_at_f0_mA_per_V"], rel=1e-10)
    for frequency, height in zip(example.get("peak_frequencies_Hz", []), example.get("peak_normalised", []), strict=True):
        peak = minimize_scalar(
            lambda f: -abs(current_through_identical_circuits(f, coupling)),
            bounds=(frequency - 3e3, frequency + 3e3),
            method="bounded",
            options={"xatol": 1e-3},
        )
        assert peak.x == pytest.approx(frequency, abs=1)
        assert 2 * RESISTANCE * -peak.fun == pytest.approx(height, rel=1e-6)


def test_textbook_pair_of_coils():
    mutual = mutual_from_coupling(TWO_COILS["k"], TWO_COILS["La_H"], TWO_COILS["Lb_H"])
    assert mutual == pytest.approx(TWO_COILS["M_H"], rel=1e-9)


@given(
    frequency=hertz, first=henries, second=henries, k=couplings, r1=resistances, r2=resistances, x1=reactances, x2=reactances
)
def test_secondary_current_solves_the_mesh_equations(frequency, first, second, k, r1, r2, x1, x2):
    mutual = mutual_from_coupling(k, first, second)
    crossed = 2j * np.pi * frequency * mutual
    mesh = np.array([[r1 + 1j * x1, crossed], [crossed, r2 + 1j * x2]])
    primary, secondary = np.linalg.solve(mesh, [1.0, 0.0])
    assert secondary_current(1.0, frequency, mutual, r1 + 1j * x1, r2 + 1j * x2) == pytest.approx(secondary, rel=1e-6)
    seen = r1 + 1j * x1 + reflected_impedance(frequency, mutual, r2 + 1j * x2)
    assert 1 / seen == pytest.approx(primary, rel=1e-6)


@given(frequency=hertz, mutual=st.floats(-1e-3, 1e-3), resistance=st.floats(0, 1e3), reactance=reactances)
def test_passive_secondary_never_reflects_negative_resistance(frequency, mutual, resistance, reactance):
    if abs(resistance + 1j * reactance) > 1e-9:
        assert reflected_impedance(frequency, mutual, resistance + 1j * reactance).real >= 0


@given(frequency=hertz, mutual=st.floats(1e-9, 1e-3), resistance=resistances, reactance=reactances)
def test_reactance_comes_back_with_its_sign_turned(frequency, mutual, resistance, reactance):
    reflected = reflected_impedance(frequency, mutual, resistance + 1j * reactance)
    assert np.sign(reflected.imag) == -np.sign(reactance)
    assert reflected == reflected_impedance(frequency, -mutual, resistance + 1j * reactance)
    again = reflected_impedance(frequency, mutual, reflected)
    assert again == pytest.approx(resistance + 1j * reactance, rel=1e-9)


@given(frequency=hertz, mutual=st.floats(1e-9, 1e-3), r1=resistances, r2=resistances, x1=reactances, x2=reactances)
def test_power_into_the_primary_is_the_power_lost_in_both(frequency, mutual, r1, r2, x1, x2):
    first, second = r1 + 1j * x1, r2 + 1j * x2
    primary = 1 / (first + reflected_impedance(frequency, mutual, second))
    lost = abs(primary) ** 2 * r1 + abs(secondary_current(1.0, frequency, mutual, first, second)) ** 2 * r2
    assert primary.real == pytest.approx(lost, rel=1e-6)


@given(frequency=hertz, mutual=st.floats(1e-9, 1e-3), r1=resistances, r2=resistances, x1=reactances, x2=reactances)
def test_emf_and_ammeter_may_change_places(frequency, mutual, r1, r2, x1, x2):
    forward = secondary_current(1.0, frequency, mutual, r1 + 1j * x1, r2 + 1j * x2)
    backward = secondary_current(1.0, frequency, mutual, r2 + 1j * x2, r1 + 1j * x1)
    assert forward == pytest.approx(backward, rel=1e-6)


def test_coupling_may_be_complete():
    assert mutual_from_coupling(np.array([1.0, -1.0]), 4e-4, 1e-4) == pytest.approx([2e-4, -2e-4])


@pytest.mark.parametrize("k", [1.0001, -2, np.array([0.1, 1.5])])
def test_coupling_closer_than_complete_is_refused(k):
    with pytest.raises(ValueError, match="coupling_coefficient must be at"):
        mutual_from_coupling(k, 1e-4, 1e-4)


@given(frequency=hertz, mutual=st.floats(1e-8, 1e-5), ra=resistances, xa=reactances, q=st.floats(10, 500))
def test_tuned_voltage_against_solved_circuit(frequency, mutual, ra, xa, q):
    """The condenser that brings the tuned circuit to resonance is found by search, in the solved mesh equations."""
    angular, inductance = 2 * np.pi * frequency, 200e-6
    resistance = angular * inductance / q
    crossed = 1j * angular * mutual
    reactance = angular * inductance - (angular * mutual) ** 2 * xa / (ra**2 + xa**2)
    if reactance <= 0:
        return  # coupled so closely to so small an impedance that no condenser tunes it
    mesh = np.array([[ra + 1j * xa, crossed], [crossed, resistance + 1j * (angular * inductance - reactance)]])
    _, current = np.linalg.solve(mesh, [1.0, 0.0])
    expected = abs(current) * reactance
    found = tuned_voltage(1.0, frequency, mutual, ra + 1j * xa, inductance, resistance)
    assert found == pytest.approx(expected, rel=1e-6)


@given(frequency=hertz, mutual=st.floats(1e-8, 1e-5), ra=resistances, xa=st.floats(-1e4, 0), resistance=resistances)
def test_turning_the_aerial_coil_over_changes_no_loudness(frequency, mutual, ra, xa, resistance):
    one_way = tuned_voltage(1.0, frequency, mutual, ra + 1j * xa, 200e-6, resistance)
    assert one_way == tuned_voltage(1.0, frequency, -mutual, ra + 1j * xa, 200e-6, resistance) > 0


@given(frequency=hertz, ra=resistances, resistance=resistances)
def test_critical_coupling_gives_most_voltage_when_both_are_tuned(frequency, ra, resistance):
    best = best_mutual_inductance(frequency, ra, resistance)
    peak = minimize_scalar(
        lambda scale: -tuned_voltage(1.0, frequency, scale * best, ra + 0j, 200e-6, resistance),
        bounds=(0.1, 10),
        method="bounded",
    )
    assert peak.x == pytest.approx(1, abs=1e-3)
    both_q = 2 * np.pi * frequency * np.array([50e-6 / ra, 200e-6 / resistance])
    if np.prod(both_q) > 1:
        expected = mutual_from_coupling(critical_coupling(*both_q), 50e-6, 200e-6)
        assert best == pytest.approx(expected, rel=1e-9)


@given(frequency=hertz, ra=resistances, xa=reactances, resistance=resistances, scale=st.floats(0.01, 100))
def test_best_coupling_takes_all_the_power_the_aerial_can_give(frequency, ra, xa, resistance, scale):
    def power(mutual):
        reflected_back = reflected_impedance(frequency, mutual, ra + 1j * xa)
        retuned = resistance - 1j * reflected_back.imag
        return abs(secondary_current(1.0, frequency, mutual, ra + 1j * xa, retuned)) ** 2 * resistance

    best = best_mutual_inductance(frequency, ra + 1j * xa, resistance)
    available = 1 / (4 * ra)
    assert power(best) == pytest.approx(available, rel=1e-9)
    assert power(scale * best) <= available * (1 + 1e-9)


@given(frequency=hertz, ra=resistances, q=st.floats(10, 500), scale=st.floats(0, 10))
def test_closer_coupling_always_costs_selectivity(frequency, ra, q, scale):
    resistance = 2 * np.pi * frequency * 200e-6 / q
    best = best_mutual_inductance(frequency, ra, resistance)
    at_best = loaded_quality_factor(frequency, best, ra + 0j, 200e-6, resistance)
    assert at_best == pytest.approx(q / 2, rel=1e-9)
    loaded = loaded_quality_factor(frequency, scale * best, ra + 0j, 200e-6, resistance)
    assert loaded == pytest.approx(q / (1 + scale**2), rel=1e-9)


def test_arrays_broadcast():
    mutual = np.array([1e-6, 2e-6, 4e-6])
    aerial = np.array([[20 - 500j], [60 - 300j]])
    assert tuned_voltage(1.0, 1e6, mutual, aerial, 200e-6, 10.0).shape == (2, 3)
    assert reflected_impedance(1e6, mutual, aerial).shape == (2, 3)
    assert best_mutual_inductance(1e6, aerial, 10.0).shape == (2, 1)
