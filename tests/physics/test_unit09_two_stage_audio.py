"""Two stages to a loudspeaker: against circuits solved node by node, coils that share their magnetism, and a root finder."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from solutions.unit04_crystal_set.phone_loudness import sound_pressure
from solutions.unit05_valve.stage_gain import band_edges
from solutions.unit05_valve.triode_current import anode_resistance, law_from_manual, triode_current
from solutions.unit09_feedback_receivers.two_stage_audio import (
    battery_needs,
    best_tap,
    output_power,
    resistance_gain,
    speaker_level,
    transformer_gain,
)
from tests.physics.test_unit05_stage import solved_stage

# RCA Receiving Tube Manual, type 31, class A (from memory): volts on anode and grid, amperes, siemens, load, watts of
# "undistorted" output, which in that manual means 5 % of second harmonic. The first line's current and slope are "found".
TYPE_31 = [
    (180.0, -30.0, 12.3e-3, 1050e-6, 5700.0, 0.375),
    (135.0, -22.5, 8.0e-3, 925e-6, 7000.0, 0.185),
]
factors, resistances = st.floats(3, 100), st.floats(1e3, 1e5)
tones = st.floats(20, 2e4)
anodes, grids = st.floats(60, 250), st.floats(0.2, 0.6)
laws = st.tuples(st.floats(3, 10), st.floats(1e-4, 1e-3), st.floats(-1, 1))


@given(factors, resistances, st.floats(1e4, 5e5), st.floats(2e5, 5e6), st.floats(5e-9, 5e-7), st.floats(1e-11, 5e-10), tones)
@settings(deadline=None)
def test_resistance_coupling_as_the_solved_circuit_gives_it(factor, resistance, load, leak, coupling, shunt, tone):
    lowest, highest = band_edges(resistance, load, leak, coupling, shunt)
    assume(highest > 1e3 * lowest and coupling > 300 * shunt)
    stage = (resistance, load, leak, coupling, shunt)
    assert resistance_gain(factor, *stage, tone) == pytest.approx(solved_stage(tone, factor, *stage), rel=0.03)


@given(factors, resistances, st.floats(1, 6), st.floats(2, 100), st.floats(0.002, 0.05), st.floats(2e-11, 5e-10), tones)
@settings(deadline=None)
def test_transformer_coupling_as_two_coupled_coils_give_it(factor, resistance, ratio, primary, leaking, shunt, tone):
    """The two meshes: anode resistance and primary; secondary and shunt. The leakage is what the coils do not share."""
    s = 2j * np.pi * tone
    mutual = ratio * primary
    secondary = ratio**2 * primary * (1 + leaking)
    # With the secondary shorted the primary's inductance is what its manual calls leakage, all but `leaking` of it.
    assert primary - mutual**2 / secondary == pytest.approx(primary * leaking / (1 + leaking))
    meshes = np.array([[resistance + s * primary, -s * mutual], [-s * mutual, s * secondary + 1 / (s * shunt)]])
    current = np.linalg.solve(meshes, [factor, 0])[1]
    wanted = abs(current / (s * shunt))
    gain = transformer_gain(factor, resistance, ratio, primary, leaking * primary, shunt, tone)
    assert gain == pytest.approx(wanted, rel=1e-6)


@given(factors, resistances, st.floats(1, 6), st.floats(2, 100))
@settings(deadline=None)
def test_the_bass_of_a_transformer_goes_below_anode_resistance_over_primary(factor, resistance, ratio, primary):
    edge = resistance / (2 * np.pi * primary)
    gains = transformer_gain(factor, resistance, ratio, primary, 0.0, 0.0, np.array([edge / 2, edge, 1e3 * edge]))
    assert gains / (factor * ratio) == pytest.approx([1 / np.sqrt(5), 1 / np.sqrt(2), 1], rel=1e-5)


def current_at(grid, anode, bias, load, law):
    """Anode current on the load line through the point of rest, by a root finder."""
    rest = triode_current(anode, bias, *law)
    highest = anode + rest * load + 1  # a valve cut off stands at the end of the line
    voltage = brentq(lambda v: triode_current(v, grid, *law) - rest - (anode - v) / load, 0, highest, xtol=1e-12)
    return triode_current(voltage, grid, *law)


@given(anodes, grids, st.floats(0.05, 1), st.floats(0.7, 6), laws)
@settings(deadline=None, max_examples=60)
def test_power_from_the_ends_of_the_swing(anode, part, share, loads, law):
    bias = -part * anode / law[0]
    assume(bias + anode / law[0] + law[2] > 1)
    load, swing = loads * anode_resistance(anode, bias, *law), -share * bias
    assume(triode_current(0.0, bias + swing, *law) * load < anode)
    power, harmonic = output_power(anode, bias, swing, load, *law)
    crest, rest, trough = (current_at(bias + way * swing, anode, bias, load, law) for way in (1, 0, -1))
    assert power == pytest.approx(load * ((crest - trough) / np.sqrt(8)) ** 2, rel=1e-6)
    assert harmonic == pytest.approx(((crest + trough) / 2 - rest) / (crest - trough), abs=1e-6)
    assert power <= anode * rest / 2


@pytest.mark.parametrize("load", [5000.0, 5700.0, 9000.0])
def test_fundamental_and_second_harmonic_of_the_whole_cycle(load):
    """While the current never stops, three points of the cycle do for all of it: Fourier's integrals, by SciPy."""
    anode, bias, current, slope, _, _ = TYPE_31[0]
    law = (3.8, *law_from_manual(anode, bias, current, 3.8, slope))
    power, harmonic = output_power(anode, bias, -bias, load, *law)
    parts = [
        quad(lambda turn, n=n: current_at(bias - bias * np.cos(turn), anode, bias, load, law) * np.cos(n * turn), 0, np.pi)[0]
        * 2
        / np.pi
        for n in (1, 2)
    ]
    assert power == pytest.approx(load * parts[0] ** 2 / 2, rel=0.03)
    assert harmonic == pytest.approx(parts[1] / parts[0], abs=0.005)


@pytest.mark.parametrize(("anode", "bias", "current", "slope", "load", "watts"), TYPE_31)
def test_type_31_gives_what_its_manual_says(anode, bias, current, slope, load, watts):
    power, harmonic = output_power(anode, bias, -bias, load, 3.8, *law_from_manual(anode, bias, current, 3.8, slope))
    assert power == pytest.approx(watts, rel=0.1)
    assert 0.03 < harmonic < 0.05


def test_a_small_tone_finds_most_at_the_anode_resistance():
    law = (3.8, 167e-6, 0.203)
    matched = anode_resistance(180.0, -30.0, *law)
    loads = matched * np.geomspace(0.2, 5, 401)
    power, _ = output_power(180.0, -30.0, 0.01, loads, *law)
    assert loads[np.argmax(power)] == pytest.approx(matched, rel=0.01)


@given(
    anodes, grids, laws, st.sampled_from([0.02, 0.05, 0.1]), st.lists(st.integers(8, 80), min_size=2, max_size=5, unique=True)
)
@settings(deadline=None, max_examples=40)
def test_the_tap_is_the_best_of_those_allowed(anode, part, law, most, ratios):
    bias = -part * anode / law[0]
    assume(bias + anode / law[0] + law[2] > 1 and law[2] < 0.5)
    allowed = {}
    for ratio in ratios:
        load = 8.0 * ratio**2
        assume(triode_current(0.0, 0.0, *law) * load < anode)
        crest, rest, trough = (current_at(grid, anode, bias, load, law) for grid in (0.0, bias, 2 * bias))
        if ((crest + trough) / 2 - rest) / (crest - trough) <= most:
            allowed[ratio] = load * (crest - trough) ** 2 / 8
    given = (np.array(ratios, dtype=float), 8.0, most, anode, bias, *law)
    if not allowed:
        with pytest.raises(ValueError, match="no tap keeps"):
            best_tap(*given)
    else:
        assert allowed[best_tap(*given)] == pytest.approx(max(allowed.values()), rel=1e-6)


@given(st.floats(1e-4, 10), st.floats(80, 105), st.floats(0.5, 20))
def test_pressure_goes_as_the_root_of_the_power_over_the_distance(power, sensitivity, distance):
    pressure = sound_pressure(speaker_level(power, sensitivity, distance))
    assert pressure == pytest.approx(sound_pressure(sensitivity) * np.sqrt(power) / distance)


@given(st.floats(45, 250), st.floats(1e-3, 0.05), st.floats(0, 0.5), st.floats(500, 5e4))
def test_the_battery_pays_for_all(supply, current, share, capacity):
    tone = share * supply * current
    battery, heat, time = battery_needs(supply, current, tone, capacity)
    assert heat + tone == pytest.approx(battery)
    assert battery * time == pytest.approx(supply * capacity)


@pytest.mark.parametrize(
    ("refused", "sentence"),
    [
        (lambda: output_power(180.0, -30.0, np.array([10.0, 31.0]), 5700.0, 3.8, 167e-6, 0.2), "larger than the bias"),
        (lambda: best_tap(np.array([10.0, 15.0]), 8.0, 0.01, 180.0, -30.0, 3.8, 167e-6, 0.2), "no tap keeps"),
        (lambda: battery_needs(90.0, 5e-3, 0.23, 1980.0), "more than half"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(refused, sentence):
    with pytest.raises(ValueError, match=sentence):
        refused()
