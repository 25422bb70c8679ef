"""Edges by one equation, and the tickler chosen with them: against the poles, and against a nodal analysis."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from solutions.unit06_reaction.choosing import (
    CHOKE_SHARE,
    IN_HAND,
    TRAVEL,
    choose_tickler,
    edge,
    least_choke,
    threshold_span,
    tickler_for,
    with_tickler,
)
from solutions.unit06_reaction.grid_anode_admittance import balancing_inductance
from solutions.unit06_reaction.network import (
    ANODE_WIRING,
    BY_PASS,
    CHOKE,
    CHOKE_OWN,
    DIAL,
    SALTMARSH_SET,
    THROTTLE_RANGE,
    saltmarsh_set,
)
from solutions.unit06_reaction.stability import at_threshold, poles
from tests.physics import nodal

STATIONS = np.array([DIAL[0], 693e3, 855e3, 1107e3, 1449e3, DIAL[1]])
CLUB = saltmarsh_set(STATIONS)
COUPLING = SALTMARSH_SET.tuned_tickler / np.sqrt(SALTMARSH_SET.tuned_inductance * SALTMARSH_SET.tickler_inductance)


@given(
    st.floats(*DIAL),
    st.floats(0.1e-3, 3e-3),
    st.floats(0, 8e-12),
    st.floats(5e-12, 400e-12),
    st.floats(10e-6, 60e-6),
    st.floats(0.05, 0.3),
    st.floats(0, 25e-6),
    st.floats(0, 1e-3),
)
@settings(deadline=None)
def test_at_the_edge_a_pole_stands_on_the_axis(
    frequency, transconductance, between, capacitance, tickler, coupling, aerial, shunt
):
    of = replace(
        with_tickler(saltmarsh_set(frequency), tickler, coupling * np.sqrt(tickler * SALTMARSH_SET.tuned_inductance)),
        transconductance=transconductance,
        grid_anode_capacitance=between,
        anode_capacitance=capacitance,
        aerial_tuned=aerial,
        tickler_conductance=shunt,
    )
    throttle, tuning = edge(of, frequency)
    assume(np.isfinite(throttle))
    assert THROTTLE_RANGE[0] <= throttle <= THROTTLE_RANGE[1]
    there = replace(of, throttle_capacitance=throttle, tuning_capacitance=tuning)
    assert np.min(np.abs(nodal.poles(there) - 2j * np.pi * frequency)) < 1e-8 * frequency
    assert abs(nodal.grid_admittance(there, frequency)) < 1e-9
    # On the way from the low stop it is the first: less throttle, retuned, and the pole stands to the left.
    less = replace(there, throttle_capacitance=max(0.98 * throttle, THROTTLE_RANGE[0]))
    hanging = nodal.grid_admittance(less, frequency).real
    assert hanging >= 0 or throttle == pytest.approx(THROTTLE_RANGE[0])


def test_edges_are_those_of_the_operators_way():
    by_hand = at_threshold(CLUB, STATIONS)
    throttle, tuning = edge(CLUB, STATIONS)
    assert throttle == pytest.approx(by_hand.throttle_capacitance, rel=1e-6)
    assert tuning == pytest.approx(by_hand.tuning_capacitance, rel=1e-6)


def test_no_edge_is_said_and_not_made_up():
    turned = replace(CLUB, tuned_tickler=-SALTMARSH_SET.tuned_tickler)
    assert np.all(np.isnan(edge(turned, STATIONS).throttle)) and np.all(np.isnan(edge(turned, STATIONS).tuning))
    assert np.all(np.isnan(edge(replace(CLUB, transconductance=0.0), STATIONS).throttle))
    short_of = edge(CLUB, STATIONS, high=130e-12).throttle
    assert np.array_equal(np.isnan(short_of), edge(CLUB, STATIONS).throttle > 130e-12)
    assert np.all(np.isnan(edge(CLUB, STATIONS, low=250e-12).throttle))  # it sings at the low stop already
    assert np.isnan(threshold_span(CLUB, STATIONS, high=130e-12)).all()
    assert isinstance(edge(saltmarsh_set(1e6), 1e6).throttle, float)


def test_club_set_is_one_that_a_builder_could_have_chosen():
    least, greatest = threshold_span(CLUB, STATIONS)
    assert 50e-12 < least < greatest < 300e-12
    high = THROTTLE_RANGE[1]
    assert TRAVEL[0] * IN_HAND * high <= least and greatest <= TRAVEL[1] / IN_HAND * high
    chosen = tickler_for(CLUB, STATIONS, COUPLING)
    assert 0.85 * SALTMARSH_SET.tickler_inductance < chosen.tickler_inductance <= SALTMARSH_SET.tickler_inductance
    assert chosen.tuned_tickler == pytest.approx(COUPLING * np.sqrt(chosen.tickler_inductance * SALTMARSH_SET.tuned_inductance))
    before = with_tickler(chosen, chosen.tickler_inductance - 1e-6, chosen.tuned_tickler - 0.2e-6)
    assert threshold_span(before, STATIONS)[1] > TRAVEL[1] / IN_HAND * high  # no smaller one would have done


@given(st.floats(0.8, 1.3), st.floats(0.8, 1.5), st.floats(0.7, 1.2), st.floats(0.12, 0.35), st.floats(160e-6, 260e-6))
@settings(deadline=None, max_examples=25)
def test_whatever_the_parts_the_chosen_tickler_serves(slope, between, by_pass, coupling, coil):
    of = replace(
        CLUB,
        transconductance=slope * SALTMARSH_SET.transconductance,
        tuned_inductance=coil,
        grid_anode_capacitance=between * SALTMARSH_SET.grid_anode_capacitance,
        anode_capacitance=by_pass * SALTMARSH_SET.anode_capacitance,
    )
    try:
        chosen = tickler_for(of, STATIONS, coupling)
    except ValueError as refused:
        assert "bring the tickler nearer" in str(refused)
        return
    throttle, tuning = edge(chosen, STATIONS)
    assert np.all((throttle >= 75e-12) & (throttle <= 200e-12))
    little_more = replace(chosen, throttle_capacitance=1.02 * throttle, tuning_capacitance=tuning)
    little_less = replace(chosen, throttle_capacitance=0.98 * throttle, tuning_capacitance=tuning)
    assert np.all(poles(little_more)[..., 0].real > 0) and np.all(poles(little_less)[..., 0].real < 0)


def test_two_hundred_sets_at_once_are_two_hundred_sets():
    spread = np.random.default_rng(3).uniform(0.85, 1.15, (200, 1))
    many = replace(CLUB, transconductance=spread * SALTMARSH_SET.transconductance)
    least, greatest = threshold_span(many, STATIONS)
    assert least.shape == greatest.shape == (200,)
    for place in (0, 77, 199):
        one = replace(CLUB, transconductance=float(spread[place, 0]) * SALTMARSH_SET.transconductance)
        assert (least[place], greatest[place]) == pytest.approx(threshold_span(one, STATIONS), rel=1e-9)
    assert np.corrcoef(spread[:, 0], greatest)[0, 1] < -0.9  # a livelier valve wants less throttle


def test_none_that_serves_is_refused():
    with pytest.raises(ValueError, match="bring the tickler nearer to the tuned winding"):
        tickler_for(CLUB, STATIONS, 0.02)
    with pytest.raises(ValueError, match="with none of these ticklers"):
        choose_tickler([], STATIONS)


def test_choke_takes_back_a_twentieth_at_most_and_leaves_the_anode_a_condenser():
    least = least_choke(DIAL[0], SALTMARSH_SET.anode_capacitance)
    susceptance = 2 * np.pi * DIAL[0] * SALTMARSH_SET.anode_capacitance
    assert 1 / (2 * np.pi * DIAL[0] * least) == pytest.approx(CHOKE_SHARE * susceptance)
    assert 10 * least < CHOKE
    # Far below it lies the coil with which the anode would give the grid back what it takes: unit 06's exercise.
    capacitances = SALTMARSH_SET.grid_anode_capacitance, SALTMARSH_SET.anode_capacitance
    assert least > 15 * balancing_inductance(DIAL[0], 9.29, *capacitances)
    edges = [
        edge(
            replace(CLUB, anode_capacitance=SALTMARSH_SET.anode_capacitance - 1 / ((2 * np.pi * STATIONS) ** 2 * choke)),
            STATIONS,
        ).throttle
        for choke in (CHOKE, least)
    ]
    without = edge(CLUB, STATIONS).throttle
    assert edges[0] == pytest.approx(without, rel=0.005)
    assert edges[1] == pytest.approx(without, rel=0.05)
    assert SALTMARSH_SET.anode_capacitance > ANODE_WIRING + CHOKE_OWN + BY_PASS
