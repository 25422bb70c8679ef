"""Rejection, suppression, traps: meshes of real parts solved whole, averages by other means, a detector cycle by cycle."""

import math

import numpy as np
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import odeint, quad
from scipy.optimize import brentq
from scipy.special import ive

from solutions.unit08_two_stations.rejection import (
    circuit_rejection,
    coupled_rejection,
    protection_left,
    quality_factor_needed,
)
from solutions.unit08_two_stations.wave_trap import (
    left_across_the_set,
    left_in_the_lead,
    parallel_trap,
    series_trap,
    trap_without_reactance,
    trapped_levels,
)
from solutions.unit08_two_stations.weak_signal_suppression import (
    faint_suppression,
    mean_envelope,
    suppression,
    two_carrier_output,
)

carriers = st.floats(600e3, 1.5e6)
offsets = st.floats(-40e3, 40e3)
qualities = st.floats(20, 400)
fields = st.floats(-5, -0.3).map(lambda power: 10**power)
strong_carriers = st.floats(0.01, 1)
ratios = st.floats(0.02, 0.85)
loads = st.floats(3.3, 6).map(lambda power: 10**power)
leaks = st.floats(-7, -5).map(lambda power: 10**power)
slopes = st.floats(0.025, 0.06)
coils = st.floats(20e-6, 300e-6)
losses = st.floats(0.5, 30)
aerials = st.builds(complex, st.floats(10, 80), st.floats(-1000, 0))
sets = st.builds(complex, st.floats(100, 3000), st.floats(0, 800))


def series_circuit(frequency, tuned_to, quality, inductance=200e-6):
    """Impedance of a series circuit of real parts."""
    angular, resonant = 2 * math.pi * frequency, 2 * math.pi * tuned_to
    capacitance = 1 / (resonant**2 * inductance)
    return resonant * inductance / quality + 1j * angular * inductance + 1 / (1j * angular * capacitance)


@given(carriers, offsets, qualities)
@settings(deadline=None)
def test_rejection_of_a_circuit_of_real_parts(carrier, offset, quality):
    currents = [1 / abs(series_circuit(f, carrier, quality)) for f in (carrier, carrier + offset)]
    assert circuit_rejection(carrier, offset, quality) == pytest.approx(20 * math.log10(currents[0] / currents[1]), abs=1e-8)


def test_rejection_as_in_the_universal_curve(published):
    # F. E. Terman, Radio Engineers' Handbook, 1943, section 3; figures recomputed.
    rows = published("coils/universal_resonance_curve")
    for way, column in ((1, "exact_Q100_above"), (-1, "exact_Q100_below")):
        got = circuit_rejection(1e6, way * rows["a"] * 1e4, 100)
        assert got == pytest.approx(-20 * np.log10(rows[column]), abs=1e-8)


@given(carriers, offsets, qualities, qualities, st.floats(0.001, 0.05))
@settings(deadline=None)
def test_rejection_of_two_coupled_circuits_of_real_parts(carrier, offset, first, second, coupling):
    def current(frequency):
        mutual = 2j * math.pi * frequency * coupling * math.sqrt(200e-6 * 120e-6)
        meshes = [
            [series_circuit(frequency, carrier, first), mutual],
            [mutual, series_circuit(frequency, carrier, second, 120e-6)],
        ]
        return abs(np.linalg.solve(meshes, [1, 0])[1])

    wanted = 20 * math.log10(current(carrier) / current(carrier + offset))
    assert coupled_rejection(carrier, offset, first, second, coupling) == pytest.approx(wanted, abs=1e-7)


def test_rejection_of_two_circuits_as_in_the_table(published):
    # Mesh equations to 40 digits (method of F. E. Terman, 1943, section 3): recomputed.
    rows = published("coils/coupled_two_circuit_response")
    at_resonance = 2 * rows["kQ"] / (1 + rows["kQ"] ** 2)
    got = coupled_rejection(1e6, rows["offset_kHz"] * 1e3, 100, 100, rows["kQ"] / 100)
    assert got == pytest.approx(-20 * np.log10(rows["normalised_exact"] / at_resonance), abs=1e-8)


@given(carriers, offsets.filter(lambda offset: abs(offset) > 500), fields, fields, st.floats(6, 60))
@settings(deadline=None)
def test_needed_quality_gives_the_protection(carrier, offset, wanted, unwanted, protection):
    quality = quality_factor_needed(carrier, offset, wanted, unwanted, protection)
    left = protection_left(wanted, unwanted, circuit_rejection(carrier, offset, quality))
    if protection_left(wanted, unwanted, 0) >= protection:
        assert quality == 0
    else:
        assert left == pytest.approx(protection, abs=1e-6)


def test_protections_of_the_regulations():
    # 47 CFR 73.37(a), 2005 edition, contours that must not overlap, mV/m: found. Ratios recomputed to 0.01 dB.
    wanted, unwanted = np.array([0.1, 0.5, 0.5, 5.0, 25.0]), np.array([0.005, 0.025, 0.25, 5.0, 25.0])
    assert protection_left(wanted, unwanted, 0.0) == pytest.approx([26.02, 26.02, 6.02, 0, 0], abs=0.005)
    # Recommendation ITU-R BS.560-4 (1997), section 1: 40 dB, found: a field a hundred times the other's.
    assert protection_left(100e-3, 1e-3, 0.0) == pytest.approx(40)
    assert quality_factor_needed(846e3, 9e3, 100e-3, 1e-3, 40.0 - 1e-9) == 0


@given(strong_carriers, st.floats(0, 0.95))
@settings(deadline=None)
def test_mean_envelope_by_quadrature(strong, ratio):
    weak = strong * ratio
    around, _ = quad(lambda phase: abs(strong + weak * np.exp(1j * phase)), 0, math.pi, epsrel=1e-11)
    assert mean_envelope(strong, weak) == pytest.approx(around / math.pi, rel=1e-9)


def rectified(crest, load, leak, slope):
    """One carrier through the exact law: scipy's Bessel function and a root finder."""
    drive, r = math.log(ive(0, crest / slope)) + crest / slope, load * leak / slope
    return slope * brentq(lambda y: y + math.log1p(y / r) - drive, 0, drive + 1e-30, xtol=1e-14 * (1 + drive), rtol=1e-14)


@given(strong_carriers, ratios, loads, leaks, slopes)
@settings(deadline=None, max_examples=30)
def test_output_of_two_carriers_by_quadrature(strong, ratio, load, leak, slope):
    around, _ = quad(
        lambda phase: rectified(abs(strong + strong * ratio * np.exp(1j * phase)), load, leak, slope), 0, math.pi, epsrel=1e-9
    )
    assert two_carrier_output(strong, strong * ratio, load, leak, slope) == pytest.approx(around / math.pi, rel=1e-7)


@pytest.mark.parametrize(("strong", "weak"), [(0.1, 0.05), (0.15, 0.03)])
def test_output_of_two_carriers_cycle_by_cycle(strong, weak):
    """Diode, condenser and load integrated through one whole beat of 1 kHz between carriers of 1 MHz."""
    load, leak, slope, capacitance = 25e3, 1e-6, 0.025, 400e-12

    def charging(voltage, t):
        crest = strong * math.cos(2e6 * math.pi * t) + weak * math.cos(2 * math.pi * 1.001e6 * t)
        return (leak * math.expm1((crest - voltage[0]) / slope) - voltage[0] / load) / capacitance

    start = rectified(strong + weak, load, leak, slope)
    times = np.linspace(0, 1e-3, 8001)[:-1]
    got = np.mean(odeint(charging, start, times, rtol=1e-6, atol=1e-9, hmax=2e-7, mxstep=100000))
    assert two_carrier_output(strong, weak, load, leak, slope) == pytest.approx(got, rel=0.01)


@given(strong_carriers, loads, leaks, slopes, st.floats(0.1, 1))
@settings(deadline=None, max_examples=40)
def test_faint_stations_tend_to_the_closed_form(strong, load, leak, slope, depth):
    weak = 3e-3 * min(slope, strong)
    closed = faint_suppression(strong, load, leak, slope)
    assert suppression(strong, weak, depth, load, leak, slope) == pytest.approx(closed, abs=2e-3)


def test_limits_of_suppression():
    slope, leak, load = 0.025, 1e-6, 1e9
    # Far below the bend: square law, two stations leave each other alone.
    assert faint_suppression(slope / 100, load, leak, slope) == pytest.approx(0, abs=1e-3)
    # Strong carrier far above the bend, faint one below it: n/A is left.
    assert faint_suppression(1e3 * slope, load, leak, slope) == pytest.approx(-60, abs=0.01)
    # Both far above it: the B/(2A) of R. T. Beatty, 1928, and S. Butterworth, 1929 (from memory).
    strong, weak = 2000 * slope, 200 * slope
    left = suppression(strong, weak, 0.1, load, leak, slope)
    assert left == pytest.approx(20 * math.log10(weak / (2 * strong)), abs=0.1)
    # And by the complete elliptic integral, for stations of like strength.
    alike = (mean_envelope(1, 0.7 * 1.1) - mean_envelope(1, 0.7 * 0.9)) / (2 * 0.7 * 0.1)
    got = suppression(2000 * slope, 1400 * slope, 0.1, load, leak, slope)
    assert got == pytest.approx(20 * math.log10(alike), abs=0.1)


@given(strong_carriers, leaks, slopes)
@settings(deadline=None)
def test_high_load_never_helps_and_follows_the_bessel_ratio(strong, leak, slope):
    x = strong / slope
    left = 1 - (ive(1, x) / ive(0, x)) ** 2
    got = faint_suppression(strong, 1e7 * slope / leak, leak, slope)
    assert got == pytest.approx(20 * math.log10(left), abs=1e-4)
    assert got < 0


def at_the_set(aerial, receiver, lead, across):
    """Voltage at the set per volt in the aerial, by two meshes that share what lies across the set."""
    meshes = [[aerial + lead + across, -across], [-across, across + receiver]]
    return abs(np.linalg.solve(meshes, [1, 0])[1] * receiver)


@given(carriers, carriers, coils, losses, aerials, sets)
@settings(deadline=None)
def test_traps_by_mesh_equations(listened, trapped, coil, loss, aerial, receiver):
    angular, capacitance = 2 * math.pi * listened, 1 / ((2 * math.pi * trapped) ** 2 * coil)
    branch, condenser = loss + 1j * angular * coil, 1 / (1j * angular * capacitance)
    side_by_side, in_line = branch * condenser / (branch + condenser), branch + condenser
    bare = abs(receiver / (aerial + receiver))
    nothing = 1e12  # ohm across the set
    expected = [at_the_set(aerial, receiver, side_by_side, nothing) / bare, at_the_set(aerial, receiver, 0, in_line) / bare]
    assert parallel_trap(listened, coil, capacitance, loss) == pytest.approx(side_by_side, rel=1e-6)
    assert series_trap(listened, coil, capacitance, loss) == pytest.approx(in_line, rel=1e-9, abs=1e-6)
    assert left_in_the_lead(side_by_side, aerial, receiver) == pytest.approx(expected[0], rel=1e-5)
    assert left_across_the_set(in_line, aerial, receiver) == pytest.approx(expected[1], rel=1e-5)
    levels = trapped_levels(listened, trapped, coil, loss, aerial, receiver)
    assert levels == pytest.approx(20 * np.log10(expected), abs=1e-4)


@given(carriers, coils, losses, sets)
@settings(deadline=None)
def test_trap_among_resistances_never_adds(trapped, coil, loss, receiver):
    listened = np.linspace(0.5, 2, 301) * trapped
    for levels in trapped_levels(listened, trapped, coil, loss, 40 + 0j, receiver.real + 0j):
        assert np.all(levels <= 1e-9)
        assert abs(listened[np.argmin(levels)] / trapped - 1) < 0.05


@given(st.floats(3e6, 1e7), coils, losses)
@settings(deadline=None)
def test_formula_leaves_no_reactance(angular, coil, loss):
    symbols = sympy.symbols("w L R", positive=True)
    capacitance, resistance = (
        float(part.subs(dict(zip(symbols, (angular, coil, loss), strict=True)))) for part in trap_without_reactance(*symbols)
    )
    impedance = parallel_trap(angular / (2 * math.pi), coil, capacitance, loss)
    assert impedance == pytest.approx(resistance, rel=1e-6)


def test_saltmarsh_points_evening():
    """Gannet Rock, 9 kHz above the local: no circuit alone parts them. A trap on the local spares Curlew Bank."""
    assert protection_left(50e-6, 100e-3, circuit_rejection(855e3, -9e3, 100)) < -50
    assert quality_factor_needed(855e3, -9e3, 50e-6, 100e-3, 0.0) > 50_000
    local, _ = trapped_levels(846e3, 846e3, 100e-6, 2.5, 30 - 500j, 500 + 0j)
    curlew, _ = trapped_levels(1107e3, 846e3, 100e-6, 2.5, 30 - 500j, 500 + 0j)
    assert local < -35
    assert curlew > -12
