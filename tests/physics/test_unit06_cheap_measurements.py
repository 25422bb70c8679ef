"""Measurements turned round: parts put through the course's formulas, and through whole networks, come back as they were."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy import constants, stats
from scipy.optimize import brentq

from solutions.unit02_coil_and_condenser.self_capacitance import apparent_inductance, self_capacitance_from_octave
from solutions.unit03_tuned_circuit.quality_factor import quality_factor
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit05_valve.grid_leak import rest_bias
from solutions.unit06_reaction import bench_readings as bench
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.cheap_measurements import (
    grid_law_from_readings,
    quality_from_added_resistance,
    quality_from_detuning,
    self_capacitance_from_two,
    self_capacitance_uncertainty,
    threshold_from_clicks,
)

coils, losses = st.floats(50e-6, 1e-3), st.floats(2, 40)
zero_currents, slopes = st.floats(0.05e-6, 3e-6), st.floats(0.08, 0.2)
leaks, returns = st.floats(0.5e6, 10e6), st.floats(0, 3)


@given(zero_currents, slopes, leaks, leaks, returns, returns)
@settings(deadline=None)
def test_a_grids_law_comes_back_from_two_leaks(zero_current, slope, leak_1, leak_2, return_1, return_2):
    grids = [rest_bias(leak, end, zero_current, slope) for leak, end in ((leak_1, return_1), (leak_2, return_2))]
    assume(abs(grids[0] - grids[1]) > 0.02)
    currents = (return_1 - grids[0]) / leak_1, (return_2 - grids[1]) / leak_2
    found = grid_law_from_readings(currents[0], grids[0], currents[1], grids[1])
    assert found == pytest.approx((zero_current, slope), rel=1e-6)


@given(zero_currents, slopes, leaks, returns, st.floats(1e6, 20e6))
@settings(deadline=None)
def test_what_the_leak_brings_less_what_the_meter_takes_is_the_grids_current(zero_current, slope, leak, end, meter):
    # By Thévenin: leak and meter together are one leak, to a lower voltage.
    grid = rest_bias(leak * meter / (leak + meter), end * meter / (leak + meter), zero_current, slope)
    assert bench.current_read(end, grid, leak, meter) == pytest.approx(zero_current * np.exp(grid / slope), rel=1e-6)


def test_slope_of_electrons_that_leave_a_filament_by_heat_alone():
    # Retarding field: the current is multiplied by e for each kT/e. 86.17333 µV a kelvin, CODATA.
    heat = constants.k * 1160 / constants.e
    found = grid_law_from_readings(1e-6, 0.0, 1e-6 * np.exp(-0.25 / heat), -0.25)
    assert found == pytest.approx((1e-6, 0.099961), rel=1e-5)


@given(coils, losses, st.floats(1, 50), st.floats(500e3, 1.6e6))
def test_q_comes_back_from_a_resistance_put_in(inductance, resistance, added, frequency):
    tuned = 1 / ((2 * np.pi * frequency) ** 2 * inductance)
    alone, spoiled = (1 / abs(series_impedance(frequency, inductance, tuned, r)) for r in (resistance, resistance + added))
    reactance = 2 * np.pi * frequency * inductance
    found = quality_from_added_resistance(alone, spoiled, added, reactance)
    assert found == pytest.approx(quality_factor(inductance, resistance, frequency), rel=1e-6)


@given(coils, losses, st.floats(500e3, 1.6e6))
def test_q_comes_back_from_two_settings_of_the_condenser(inductance, resistance, frequency):
    angular = 2 * np.pi * frequency
    tuned, quality = 1 / (angular**2 * inductance), angular * inductance / resistance
    assume(quality > 5)

    def down(capacitance):
        return 1 / abs(resistance + 1j * angular * inductance + 1 / (1j * angular * capacitance)) - 0.5**0.5 / resistance

    edges = (
        brentq(down, tuned / (1 + 3 / quality), tuned, xtol=1e-24),
        brentq(down, tuned, tuned / (1 - 3 / quality), xtol=1e-24),
    )
    assert quality_from_detuning(*edges) == pytest.approx(quality, rel=1e-6)


def test_a_voltmeter_across_the_condenser_tells_nearly_the_same():
    # The voltage there is the current's times 1/(ωC): the edges move, and Q with them, by a part in 1/Q² only.
    angular, inductance, resistance = 2 * np.pi * 846e3, 200e-6, 10.6
    tuned = 1 / (angular**2 * inductance)

    def volts(capacitance):
        return 1 / abs(1 - angular**2 * inductance * capacitance + 1j * angular * resistance * capacitance)

    top = max(volts(c) for c in np.linspace(0.99 * tuned, 1.01 * tuned, 20001))
    edges = [
        brentq(lambda c: volts(c) - top / np.sqrt(2), *ends, xtol=1e-24)
        for ends in ((0.97 * tuned, tuned), (tuned, 1.03 * tuned))
    ]
    assert quality_from_detuning(*edges) == pytest.approx(angular * inductance / resistance, rel=1e-3)


@given(coils, st.floats(1e-12, 20e-12), st.floats(500e3, 700e3), st.floats(1.2, 2.6))
def test_a_coil_comes_back_from_what_tunes_it_to_two_frequencies(inductance, own, frequency, step):
    frequencies = frequency, step * frequency
    scales = [1 / ((2 * np.pi * f) ** 2 * inductance) - own for f in frequencies]
    assume(min(scales) > 1e-12)
    found = self_capacitance_from_two(frequencies[0], scales[0], frequencies[1], scales[1])
    assert found[0] == pytest.approx(own, rel=1e-6, abs=1e-18)
    assert found[1] == pytest.approx(inductance, rel=1e-9)
    assert resonant_frequency(found[1], scales[1] + found[0]) == pytest.approx(frequencies[1], rel=1e-9)
    # The scale alone tunes what the coil seems to have.
    seems = apparent_inductance(found[1], found[0], frequencies[0])
    assert resonant_frequency(seems, scales[0]) == pytest.approx(frequencies[0], rel=1e-9)


def test_an_octave_is_the_rule_of_unit_02():
    # F. E. Terman, Radio Engineers' Handbook, 1943, section 13 (from memory): (C1 − 4 C2)/3.
    by_rule = self_capacitance_from_octave(352e-12, 84.5e-12)
    assert self_capacitance_from_two(*bench.OCTAVE)[0] == pytest.approx(by_rule, rel=1e-12)


@given(st.floats(2e-10, 5e-10), st.floats(2e-11, 9e-11), st.floats(1.3, 3), st.floats(1e-13, 3e-12), st.floats(1e-4, 5e-3))
def test_the_formulas_uncertainty_is_that_of_moving_each_reading(low, high, step, scale, frequency):
    readings = np.array([600e3, low, step * 600e3, high])
    by_moving = bench.doubt(
        lambda *r: self_capacitance_from_two(*r)[0], readings, [frequency * readings[0], scale, frequency * readings[2], scale]
    )
    assert self_capacitance_uncertainty(*readings, scale, frequency) == pytest.approx(by_moving, rel=1e-3)


@pytest.mark.parametrize(("measure", "readings", "doubts", "found"), [
    (lambda *r: self_capacitance_from_two(*r)[0], bench.WIDER, (600.0, 1e-12, 1500.0, 1e-12), bench.self_capacitance_doubt()),
    (bench.grid_law, (bench.PLUS_END, bench.MINUS_END, 2.0, 2e6, 10e6), (2e-3, 2e-3, 0.01, 2e4, 1e5), bench.grid_law_doubt()),
    (quality_from_added_resistance, bench.ADDED, bench.ADDED_DOUBT, bench.quality_by_resistance_doubt()),
    (quality_from_detuning, bench.DETUNED, bench.DETUNED_DOUBT, bench.quality_by_detuning_doubt()),
])  # fmt: skip
def test_doubts_by_lot(measure, readings, doubts, found):
    # JCGM 101:2008: draw each reading many times from its bell curve, and look how the result scatters.
    lot = np.random.default_rng(4).standard_normal((20_000, len(readings)))
    drawn = np.asarray(measure(*(np.array(readings) + lot * doubts).T))
    assert np.std(drawn, axis=-1) == pytest.approx(found, rel=0.05)


@given(st.lists(st.floats(50, 60), min_size=2, max_size=8), st.lists(st.floats(40, 55), min_size=2, max_size=8))
def test_clicks_as_statisticians_compare_two_means(starts, stops):
    assume(np.ptp(starts) > 0.01 and np.ptp(stops) > 0.01)
    threshold, backlash, uncertainty = threshold_from_clicks(np.array(starts), np.array(stops))
    assert threshold == pytest.approx(np.mean(starts))
    welch = stats.ttest_ind(starts, stops, equal_var=False)
    assert backlash / uncertainty == pytest.approx(welch.statistic, rel=1e-9, abs=1e-9)


def test_clicks_of_the_guide():
    # JCGM 100:2008, annex H.2, table H.2 (from memory): mean 4.9990 V, standard uncertainty of the mean 0.0032 V.
    volts = np.array([5.007, 4.994, 5.005, 4.990, 4.999])
    threshold, _, uncertainty = threshold_from_clicks(volts, np.array([0.0, 0.0]))
    assert (threshold, uncertainty) == (pytest.approx(4.9990, abs=5e-5), pytest.approx(0.0032, abs=5e-5))


def test_readings_that_make_no_sense_are_refused():
    for call, words in (
        (lambda: grid_law_from_readings(1e-7, 0.1, 1e-6, -0.1), "higher voltage"),
        (lambda: grid_law_from_readings(1e-6, 0.1, 1e-6, -0.1), "higher voltage"),
        (lambda: quality_from_added_resistance(3.0, 3.0, 10.0, 1e3), "must fall"),
        (lambda: quality_from_detuning(2e-10, 1e-10), "capacitance_above"),
        (lambda: self_capacitance_from_two(6e5, 3e-10, 6e5, 1e-10), "frequency_2"),
        (lambda: self_capacitance_from_two(6e5, 1e-10, 9e5, 3e-10), "capacitance_2"),
        (lambda: threshold_from_clicks(np.array([1e-10]), np.array([1e-10, 2e-10])), "two starts"),
    ):
        with pytest.raises(ValueError, match=words):
            call()


def test_the_click_weighs_the_valve():
    there = club_set.threshold_throttle(bench.FREQUENCY, bench.NO_AERIAL)
    slope = club_set.threshold_slope(bench.FREQUENCY, there, bench.NO_AERIAL)
    assert slope == pytest.approx(club_set.SALTMARSH_SET.transconductance, rel=1e-6)
    assert bench.threshold_for_slope(1.0) == pytest.approx(there, rel=1e-6)
    assert bench.threshold_for_slope(0.9) > there
    weaker = club_set.threshold_slope(bench.FREQUENCY, bench.threshold_for_slope(0.9), bench.NO_AERIAL)
    assert weaker == pytest.approx(0.9 * slope, rel=1e-6)


def test_what_the_bench_pages_say():
    threshold, backlash, uncertainty = bench.clicks()
    assert 8 < backlash / uncertainty < 12  # "ten times its doubt"
    assert abs(threshold / club_set.threshold_throttle(bench.FREQUENCY, bench.NO_AERIAL) - 1) < 0.01
    assert 0.8 < bench.self_capacitance_doubt() / bench.self_capacitance_doubt(wider=False) < 1  # "not by much"
    fine = self_capacitance_uncertainty(*bench.WIDER, 0.1e-12, 1e-3)
    assert self_capacitance_uncertainty(*bench.WIDER, 0.0, 1e-3) > 0.8 * fine  # "nearly all of it the frequency's doing"
    apart = abs(bench.quality_by_resistance() - bench.quality_by_detuning())
    assert apart < np.hypot(bench.quality_by_resistance_doubt(), bench.quality_by_detuning_doubt())
    upper = bench.doubt(quality_from_added_resistance, np.array(bench.ADDED), (0, 0.1, 0, 0))
    assert upper**2 > 0.6 * bench.quality_by_resistance_doubt() ** 2  # "most of the doubt is the smaller reading's"
    assert bench.grid_law() == pytest.approx((0.5e-6, 0.12), rel=0.05)  # near the club's own, and within its doubt
    assert np.all(np.abs(np.subtract(bench.grid_law(), (0.5e-6, 0.12))) < 2 * bench.grid_law_doubt())
