"""Winding sheet: the turns it asks for give back the coil that was wanted."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import integrate, optimize

from solutions.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance
from solutions.unit02_coil_and_condenser.winding_sheet import (
    close_wound_inductance,
    turns_needed,
    whole_turns,
    wire_length,
)

inductances, formers, wires = st.floats(20e-6, 3e-3), st.floats(0.02, 0.15), st.floats(1e-4, 1e-3)
unhurried = settings(deadline=None)  # a first call may take a while on a busy machine


@given(st.floats(1, 300), formers, wires)
@unhurried
def test_close_winding_is_a_solenoid_with_its_wire_outside_the_tube(turns, former, wire):
    assert close_wound_inductance(turns, former, wire) == solenoid_inductance(turns, former + wire, turns * wire)


@given(inductances, formers, wires)
@unhurried
def test_turns_give_the_inductance_back(inductance, former, wire):
    turns = turns_needed(inductance, former, wire)
    assert close_wound_inductance(turns, former, wire) == pytest.approx(inductance, rel=1e-12)


@given(inductances, formers, wires)
@unhurried
def test_turns_against_a_library_root_finder(inductance, former, wire):
    wanted = optimize.brentq(lambda n: close_wound_inductance(n, former, wire) - inductance, 1, 1e5, xtol=1e-10)
    assert turns_needed(inductance, former, wire) == pytest.approx(wanted, rel=1e-10)


@given(st.integers(2, 400), formers, wires)
@unhurried
def test_a_whole_number_of_turns_comes_back(turns, former, wire):
    assert whole_turns(close_wound_inductance(turns, former, wire), former, wire) == turns


@given(inductances, formers, wires)
@unhurried
def test_no_neighbouring_whole_number_is_nearer(inductance, former, wire):
    turns = whole_turns(inductance, former, wire)
    assert isinstance(turns, int)
    neighbours = np.array([turns - 1, turns, turns + 1])
    fewer, chosen, more = np.abs(close_wound_inductance(neighbours, former, wire) - inductance)
    assert chosen <= fewer and chosen <= more


@given(inductances, formers, wires)
@unhurried
def test_more_inductance_wants_more_turns_and_thicker_wire_too(inductance, former, wire):
    turns = turns_needed(inductance, former, wire)
    assert turns_needed(1.1 * inductance, former, wire) > turns
    assert turns_needed(inductance, former, 1.1 * wire) > turns
    assert turns_needed(inductance, 1.1 * former, wire) < turns


@pytest.mark.parametrize(
    "inductance, former, message",
    [(1e-9, 0.075, "smaller former"), (np.nan, 0.075, "smaller former"), (1000.0, 0.02, "larger former")],
)
def test_what_cannot_be_wound_is_refused(inductance, former, message):
    with pytest.raises(ValueError, match=message):
        turns_needed(inductance, former, 0.5e-3)


@given(st.floats(1, 300), formers, wires)
@unhurried
def test_wire_length_is_that_of_a_helix(turns, former, wire):
    radius = (former + wire) / 2

    def speed(angle):
        return np.sqrt((radius * np.sin(angle)) ** 2 + (radius * np.cos(angle)) ** 2 + (wire / (2 * np.pi)) ** 2)

    helix, _ = integrate.quad(speed, 0, 2 * np.pi)
    assert wire_length(turns, former, wire) == pytest.approx(turns * helix, rel=1e-9)
    assert wire_length(turns, former, wire) > turns * np.pi * (former + wire)


def test_coil_that_is_a_single_turn_is_allowed():
    one = close_wound_inductance(1, 0.075, 0.5e-3)
    assert whole_turns(one * 1.000001, 0.075, 0.5e-3) == 1
