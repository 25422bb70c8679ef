"""The threshold of oscillation: against Routh's condition done in sympy, and what the three knobs do to it."""

import tomllib
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import sympy
from hypothesis import assume, given, reject, settings
from hypothesis import strategies as st

from solutions.unit06_reaction.characteristic_polynomial import full_polynomial, leading_pole, tuned_grid_polynomial
from solutions.unit06_reaction.choosing import edge
from solutions.unit06_reaction.given_sets import tuned_circuit_leads
from solutions.unit06_reaction.network import DIAL, SALTMARSH_SET, THROTTLE_RANGE, ReactionSet, saltmarsh_set
from solutions.unit06_reaction.oscillation_point import BEST_VALVE, crossing, gain, routh_point, threshold_transconductance
from solutions.unit06_reaction.stability import (
    at_threshold,
    gain_and_bandwidth,
    parts,
    poles,
    response,
    retuned,
    ring,
    steady_formula,
    threshold,
)
from solutions.unit06_reaction.three_knobs import detuning, reaction_setting, settings_for, tuned_to
from tests.physics import nodal

PUBLISHED = tomllib.loads((Path(__file__).parents[1] / "published/valve/reaction.toml").read_text(encoding="utf-8"))
NOTHING = 1e-18  # farad
KNOBS = [
    ("transconductance", 1e-5, 5e-3),
    ("throttle_capacitance", *THROTTLE_RANGE),
    ("tuned_tickler", 0.5e-6, 20e-6),
    ("tuned_resistance", 1.0, 60.0),
    ("grid_conductance", 1e-6, 100e-6),
]
REACTED = replace(SALTMARSH_SET, throttle_capacitance=200e-12)
THRESHOLD = threshold(SALTMARSH_SET, "throttle_capacitance", *THROTTLE_RANGE)
MORE = st.floats(1.05, 3)


@st.composite
def helping(draw):
    """Sets whose tickler helps, and is not coupled to the aerial; the aerial is broader than the tuned circuit, and
    resonates well above the frequency to which that is tuned."""
    one, two, three = draw(st.floats(25e-6, 45e-6)), draw(st.floats(150e-6, 300e-6)), draw(st.floats(15e-6, 50e-6))
    frequency = draw(st.floats(*DIAL))
    return ReactionSet(
        aerial_resistance=draw(st.floats(40, 100)),
        aerial_capacitance=draw(st.floats(0.05, 0.3)) / ((2 * np.pi * frequency) ** 2 * one),
        aerial_inductance=one,
        tuned_inductance=two,
        tuned_resistance=draw(st.floats(2, 10)),
        tuning_capacitance=1 / ((2 * np.pi * frequency) ** 2 * two),
        tickler_inductance=three,
        tickler_resistance=draw(st.floats(0.1, 5)),
        throttle_capacitance=draw(st.floats(*THROTTLE_RANGE)),
        aerial_tuned=draw(st.floats(0.05, 0.25)) * np.sqrt(one * two),
        tuned_tickler=draw(st.floats(0.1, 0.2)) * np.sqrt(two * three),
        aerial_tickler=0.0,
        grid_conductance=draw(st.floats(0, 8e-6)),
        transconductance=draw(st.floats(0.2e-3, 1e-3)),
        anode_resistance=draw(st.floats(5e3, 20e3)),
        grid_anode_capacitance=draw(st.floats(0, 6e-12)),
        anode_capacitance=draw(st.floats(5e-12, 250e-12)),
    )


def routh_array(coefficients):
    """First column of Routh's array, in fractions without rounding: a change of sign for each root on the right."""
    upper, lower = coefficients[0::2], coefficients[1::2]
    column = [upper[0]]
    while any(lower):
        column.append(lower[0])
        pairs = zip(upper[1:], [*lower[1:], *[0] * len(upper)], strict=False)
        upper, lower = lower, [(lower[0] * a - upper[0] * b) / lower[0] for a, b in pairs]
    return column


def roots_on_the_right(coefficients):
    """How many, by Routh's condition; time is counted in tenths of a microsecond, so that numbers stay of a size."""
    exact = [sympy.Rational(float(c)) * 10 ** (7 * power) for power, c in zip(range(7, -1, -1), coefficients, strict=True)]
    column = routh_array(exact)
    assert len(column) == 8
    return sum(bool(a * b < 0) for a, b in zip(column, column[1:], strict=False))


@given(helping(), st.floats(0, 4e-3))
@settings(deadline=None, max_examples=40)
def test_poles_on_the_right_as_routh_counts_them(of, transconductance):
    of = replace(of, transconductance=transconductance)
    assume(abs(poles(of)[0].real) > 1e-6 * abs(poles(of)[0]))
    assert np.sum(poles(of).real > 0) == roots_on_the_right(full_polynomial(*parts(of)))


@pytest.mark.parametrize(("knob", "low", "high"), KNOBS)
def test_routh_changes_its_mind_at_the_threshold_of_every_knob(knob, low, high):
    at = threshold(REACTED, knob, low, high)
    counted = [
        roots_on_the_right(full_polynomial(*parts(replace(REACTED, **{knob: part * at})))) for part in (1 - 1e-5, 1 + 1e-5)
    ]
    assert sorted(counted) == [0, 2]


def test_routh_point_by_sympys_own_routh_array():
    """Of the cubic the third entry of the array is zero at the threshold, and the pair that is left swings at its frequency."""
    symbols = sympy.symbols("L R C L3 ra M", positive=True)
    transconductance, angular = routh_point(*symbols)
    cubic = [sympy.expand(c) for c in tuned_grid_polynomial(*symbols, transconductance)]
    assert sympy.simplify((cubic[1] * cubic[2] - cubic[0] * cubic[3]) / cubic[1]) == 0
    at_axis = sum(c * (sympy.I * angular) ** power for power, c in zip((3, 2, 1, 0), cubic, strict=True))
    assert sympy.simplify(at_axis) == 0


def test_published_tuned_grid_oscillator():
    """reaction.toml, tuned_grid_full and example: derived and recomputed there with sympy."""
    of = PUBLISHED["example"]
    numbers = of["L_h"], of["R_ohm"], of["C_f"], of["L2_h"], of["ra_ohm"], of["M_tuned_grid_full_h"]
    transconductance, angular = (float(value) for value in routh_point(*map(sympy.Float, numbers)))
    assert transconductance == pytest.approx(of["gm_s"], rel=1e-7)
    assert angular / (2 * np.pi) == pytest.approx(of["f_osc_tuned_grid_hz"], rel=1e-8)
    without_aerial = ReactionSet(
        30.0,
        160e-12,
        40e-6,
        *numbers[:3],
        numbers[3],
        0.0,
        1e-6,
        0.0,
        numbers[5],
        0.0,
        0.0,
        of["gm_s"],
        of["ra_ohm"],
        0.0,
        NOTHING,
    )
    found = threshold(without_aerial, "tuned_tickler", 1e-6, 2e-6)
    assert found == pytest.approx(of["M_tuned_grid_full_h"], rel=1e-5)
    assert ring(replace(without_aerial, tuned_tickler=found))[0] == pytest.approx(of["f_osc_tuned_grid_hz"], rel=1e-6)


@given(helping())
@settings(deadline=None, max_examples=40)
def test_two_ways_to_the_threshold(of):
    """Halving on the polynomial's roots, and on the states' eigenvalues."""
    assume(poles(replace(of, transconductance=BEST_VALVE))[0].real > 0)
    found = threshold_transconductance(*parts(of)[:-1], parts(of)[-1][1:])
    assert found == pytest.approx(threshold(of, "transconductance", 0.0, BEST_VALVE), rel=1e-5)


@given(helping(), st.floats(0.0, 0.95))
@settings(deadline=None, max_examples=40)
def test_gain_at_the_threshold_frequency(of, share):
    """The determinant on the axis is a straight line in the transconductance: the gain is 1/(1 − share) of the unaided."""
    assume(poles(replace(of, transconductance=BEST_VALVE))[0].real > 0)
    critical = threshold(of, "transconductance", 0.0, BEST_VALVE)
    frequency, _ = ring(replace(of, transconductance=critical))
    unaided = abs(steady_formula(replace(of, transconductance=0.0), frequency))
    below, beyond = (replace(of, transconductance=part * critical) for part in (share, 2 - share))
    assert abs(response(below, frequency)) == pytest.approx(unaided / (1 - share), rel=1e-4)
    # As far beyond, the formula gives the very same number, and it is false: the set oscillates.
    assert abs(steady_formula(beyond, frequency)) == pytest.approx(unaided / (1 - share), rel=1e-4)
    with pytest.raises(ValueError, match="turn the reaction back"):
        response(beyond, frequency)
    with pytest.raises(ValueError, match="turn the reaction back"):
        gain(frequency, *parts(beyond))


@given(helping())
@settings(deadline=None)
def test_reversed_tickler_gives_less_gain_and_a_broader_band(of):
    """The tuning corrected each time, so that all three listen to one station."""
    frequency, _ = ring(replace(of, tuned_tickler=0.0))
    helped = retuned(of, frequency)
    assume(poles(helped)[0].real < 0)
    try:
        others = [retuned(replace(of, tuned_tickler=way * of.tuned_tickler), frequency) for way in (0.0, -1.0)]
    except ValueError:  # so much damped that no ring is the tuned circuit's own
        reject()
    assume(all(poles(other)[0].real < 0 for other in others))  # a tickler turned round can let the anode's circuit sing
    (most, narrow), (some, middling), (least, broad) = map(gain_and_bandwidth, [helped, *others])
    assert narrow < middling < broad
    assert most > some > least


@given(helping(), st.floats(0.0, 0.9))
@settings(deadline=None)
def test_loosening_the_aerial_brings_oscillation_nearer(of, part):
    assume(np.all(poles(replace(of, transconductance=BEST_VALVE))[0].real > 0))
    loose = replace(of, aerial_tuned=part * of.aerial_tuned)
    assert threshold(loose, "transconductance", 0.0, BEST_VALVE) < threshold(of, "transconductance", 0.0, BEST_VALVE)


@given(st.floats(150e-6, 300e-6), st.floats(2, 20), st.floats(*DIAL), st.floats(0.0, 0.98))
@settings(deadline=None)
def test_gain_times_bandwidth_is_constant_in_the_single_circuit_limit(inductance, resistance, frequency, share):
    """An aerial that hardly touches, a valve that loads nothing, a throttle that stops nothing."""
    capacitance = 1 / ((2 * np.pi * frequency) ** 2 * inductance)
    of = ReactionSet(
        30.0,
        160e-12,
        40e-6,
        inductance,
        resistance,
        capacitance,
        1e-6,
        0.0,
        1e-9,
        0.1e-6,
        1e-6,
        0.0,
        0.0,
        0.0,
        anode_resistance=1e5,
        grid_anode_capacitance=0.0,
        anode_capacitance=NOTHING,
    )
    critical = threshold(of, "transconductance", 0.0, BEST_VALVE)
    assert critical == pytest.approx(resistance * capacitance / of.tuned_tickler, rel=0.02)
    unaided, aided = (gain_and_bandwidth(replace(of, transconductance=part * critical)) for part in (0.0, share))
    assert np.prod(aided) == pytest.approx(np.prod(unaided), rel=0.02)
    assert aided[0] == pytest.approx(unaided[0] / (1 - share), rel=0.03)


def test_gain_times_bandwidth_departs_where_the_aerial_is_tuned_too():
    """The club's set keeps its product within 1 %; with the aerial tuned to the station it changes by 3 %."""
    into_tune = 1 / ((2 * np.pi * 1e6) ** 2 * SALTMARSH_SET.aerial_capacitance)
    for of, low, high in ((REACTED, 0.99, 1.01), (replace(REACTED, aerial_inductance=into_tune), 1.02, 1.1)):
        critical = threshold(of, "transconductance", 0.0, BEST_VALVE)
        products = [np.prod(gain_and_bandwidth(replace(of, transconductance=part * critical))) for part in (0.0, 0.99)]
        assert low < products[1] / products[0] < high


@pytest.mark.parametrize("throttle", [40e-12, 80e-12, 110e-12])
def test_bandwidth_is_where_the_response_is_down_by_3_db(throttle):
    of = replace(SALTMARSH_SET, throttle_capacitance=throttle)
    (gain_there, width), (frequency, _) = gain_and_bandwidth(of), ring(of)
    around = frequency + np.linspace(-width, width, 40001)
    heard = np.abs(response(of, around))
    within = around[heard >= np.max(heard) / np.sqrt(2)]
    assert within[-1] - within[0] == pytest.approx(width, rel=2e-3)
    assert np.max(heard) == pytest.approx(gain_there, rel=1e-3)


def test_club_set_reaches_the_threshold_over_the_whole_dial():
    """Between 50 and 300 pF of a throttle of 500 everywhere, by the states, by the polynomial's roots and by one equation."""
    dial = np.array([DIAL[0], 693e3, 846e3, 1e6, 1107e3, 1449e3, DIAL[1]])
    there = at_threshold(saltmarsh_set(dial), dial)
    frequency, growth = ring(there)
    assert frequency == pytest.approx(dial, rel=1e-6)
    assert np.all(np.abs(growth) < 1)
    assert np.all((there.throttle_capacitance > 50e-12) & (there.throttle_capacitance < 300e-12))
    for station, tuning, throttle in zip(dial, there.tuning_capacitance, there.throttle_capacitance, strict=True):
        *_, aerial, tuned, tickler, valve = parts(saltmarsh_set(station))
        by_roots = settings_for(station, SALTMARSH_SET.aerial_tuned, *THROTTLE_RANGE, aerial, tuned, tickler, valve)
        assert by_roots == pytest.approx((tuning, throttle), rel=1e-4)
        on_the_axis = nodal.poles(replace(saltmarsh_set(station), tuning_capacitance=tuning, throttle_capacitance=throttle))
        assert np.min(np.abs(on_the_axis - 2j * np.pi * station)) < 1e-6 * station
        assert np.all(on_the_axis.real < 1)


def test_the_sets_whole_story_hangs_on_the_condenser_within_the_valve():
    """With nothing between grid and anode a fraction of the throttle would do; with twice as much, far more."""
    dial = np.array([DIAL[0], 1e6, DIAL[1]])
    between = SALTMARSH_SET.grid_anode_capacitance
    other = [replace(saltmarsh_set(dial), grid_anode_capacitance=part * between) for part in (0.0, 1.0, 2.0)]
    edges = [edge(one, dial).throttle for one in other]
    assert np.all(edges[0] < 0.6 * edges[1]) and np.all(edges[1] < edges[2])


def test_what_makes_the_reaction_level_across_the_dial():
    """R C and g L must be made up by M gm. R C is the same all over the dial if the resistance goes as the frequency squared;
    and the throttle must stop nothing, nor the aerial take anything, nor the anode."""
    dial = np.linspace(*DIAL, 9)
    of = replace(
        SALTMARSH_SET,
        aerial_tuned=0.0,
        aerial_tickler=0.0,
        throttle_capacitance=1e-9,
        grid_anode_capacitance=0.0,
        anode_capacitance=NOTHING,
    )

    def spread(of):
        needed = at_threshold(of, dial, "transconductance", 1e-5, 5e-3).transconductance
        simple = (
            of.tuned_resistance / ((2 * np.pi * dial) ** 2 * of.tuned_inductance) + of.grid_conductance * of.tuned_inductance
        ) / of.tuned_tickler
        assert needed == pytest.approx(simple, rel=0.09)
        return np.max(needed) / np.min(needed)

    assert spread(of) > 1.9
    assert spread(replace(of, tuned_resistance=of.tuned_resistance * (dial / 1e6) ** 2)) < 1.08
    with_throttle = at_threshold(saltmarsh_set(dial), dial).throttle_capacitance
    assert 1.8 < np.max(with_throttle) / np.min(with_throttle) < 2.2


@given(helping())
@settings(deadline=None)
def test_knobs_of_the_exercises_and_of_the_states(of):
    assume(tuned_circuit_leads(*parts(of)) and tuned_circuit_leads(*parts(replace(of, aerial_tuned=0.0))))
    frequency, growth = ring(of)
    assert tuned_to(*parts(of)) == pytest.approx((frequency, -growth / np.pi), rel=1e-6, abs=0.01)
    alone, _ = ring(replace(of, aerial_tuned=0.0))
    assert detuning(*parts(of)) == pytest.approx(frequency - alone, rel=1e-5, abs=0.1)
    assert detuning(*parts(of)) < 0  # an aerial that resonates above the station acts as more coil
    assert ring(retuned(of, alone))[0] == pytest.approx(alone, rel=1e-6)


@given(helping())
@settings(deadline=None, max_examples=40)
def test_reaction_setting_is_the_threshold_of_the_throttle(of):
    stops = [poles(replace(of, throttle_capacitance=stop))[0].real for stop in THROTTLE_RANGE]
    assume(stops[0] < -1 and stops[1] > 1)
    coupling, tuning, _, *fixed = parts(of)
    found = reaction_setting(coupling, tuning, *THROTTLE_RANGE, *fixed)
    assert found == pytest.approx(threshold(of, "throttle_capacitance", *THROTTLE_RANGE), rel=1e-5)


def test_thresholds_for_maps():
    """A map over two knobs in one call gives what single calls give; the throttle wants more with a closer aerial."""
    couplings = np.array([2e-6, 10e-6, 20e-6])
    found = threshold(replace(SALTMARSH_SET, aerial_tuned=couplings), "throttle_capacitance", *THROTTLE_RANGE)
    assert found[-1] == pytest.approx(THRESHOLD, rel=1e-6)
    assert np.all(np.diff(found) > 0)


@pytest.mark.parametrize("stops", [(5e-12, 9e-12), (30e-12, 75e-12)])
def test_a_knob_that_does_not_reach_the_threshold_is_refused(stops):
    with pytest.raises(ValueError, match="no threshold between throttle_capacitance"):
        threshold(SALTMARSH_SET, "throttle_capacitance", *stops)


def test_crossing_refuses_what_does_not_cross():
    silent, oscillating = np.array([1.0, 1.0, 1.0]), np.array([1.0, -1.0, 1.0])
    assert crossing(silent, oscillating) == pytest.approx(0.5, abs=1e-9)
    assert leading_pole(silent).real < 0 < leading_pole(oscillating).real
    for ends in ((silent, silent), (oscillating, oscillating), (oscillating, silent)):
        with pytest.raises(ValueError, match="oscillates"):
            crossing(*ends)


@pytest.mark.parametrize("turn", [retuned, at_threshold])
def test_a_station_hidden_by_the_aerials_own_resonance_is_refused(turn):
    """An aerial coil of 60 µH puts the aerial's resonance at 1620 kHz: a dead spot at the top of the dial."""
    with pytest.raises(ValueError, match="loosen the aerial's coupling"):
        turn(replace(SALTMARSH_SET, aerial_inductance=60e-6), 1.6e6)
