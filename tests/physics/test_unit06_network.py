"""The reaction set as a network: its states against its meshes, its poles against other ways to find them, and its laws."""

from dataclasses import fields, replace

import mpmath
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from solutions.unit05_valve.one_valve_set import CONDENSER, LAW
from solutions.unit06_reaction.characteristic_polynomial import (
    determinant,
    full_polynomial,
    leading_pole,
    three_winding_polynomial,
)
from solutions.unit06_reaction.network import (
    AERIAL,
    CONDENSERS,
    GRID,
    GRID_ANODE,
    GRID_FILAMENT,
    SALTMARSH_SET,
    TICKLER,
    TUNED,
    ReactionSet,
    drive,
    inductance_matrix,
    rates,
    state_matrix,
)
from solutions.unit06_reaction.oscillation_point import gain, steady_gain
from solutions.unit06_reaction.stability import from_parts, parts, poles, response, retuned, ring, steady_formula
from tests.physics import nodal

COLD = replace(SALTMARSH_SET, transconductance=0.0)


@st.composite
def sets(draw, most=2e-3):
    """Reaction sets as one could wind them: couplings of up to 0.4, and so far from that of coils wound into each other."""
    one, two, three = draw(st.floats(25e-6, 70e-6)), draw(st.floats(150e-6, 300e-6)), draw(st.floats(5e-6, 80e-6))
    k12, k23, k13 = draw(st.floats(-0.4, 0.4)), draw(st.floats(-0.4, 0.4)), draw(st.floats(-0.1, 0.1))
    return ReactionSet(
        aerial_resistance=draw(st.floats(5, 100)),
        aerial_capacitance=draw(st.floats(80e-12, 300e-12)),
        aerial_inductance=one,
        tuned_inductance=two,
        tuned_resistance=draw(st.floats(2, 20)),
        tuning_capacitance=draw(st.floats(40e-12, 500e-12)),
        tickler_inductance=three,
        tickler_resistance=draw(st.floats(0.1, 5)),
        throttle_capacitance=draw(st.floats(5e-12, 500e-12)),
        aerial_tuned=k12 * np.sqrt(one * two),
        tuned_tickler=k23 * np.sqrt(two * three),
        aerial_tickler=k13 * np.sqrt(one * three),
        grid_conductance=draw(st.floats(0, 30e-6)),
        transconductance=draw(st.floats(0, most)),
        anode_resistance=draw(st.floats(5e3, 30e3)),
        grid_anode_capacitance=draw(st.floats(0, 10e-12)),
        anode_capacitance=draw(st.floats(2e-12, 500e-12)),
    )


frequencies = st.floats(300e3, 3e6)


def energy(of, states):
    """Joules in coils and condensers."""
    currents = states[..., [AERIAL, TUNED, TICKLER]]
    magnetic = np.einsum("...i,ij,...j->...", currents, inductance_matrix(of), currents) / 2
    charge, _, grid, _, _, throttle, anode = np.moveaxis(states, -1, 0)
    return (
        magnetic
        + charge**2 / (2 * of.aerial_capacitance)
        + of.tuning_capacitance * grid**2 / 2
        + of.throttle_capacitance * throttle**2 / 2
        + of.anode_capacitance * anode**2 / 2
        + of.grid_anode_capacitance * (grid - anode) ** 2 / 2
    )


@given(sets())
@settings(deadline=None)
def test_poles_by_nodal_analysis(of):
    """Modified nodal analysis from the list of parts, with none of the network's own equations."""
    found, wanted = nodal.in_order(poles(of)), nodal.poles(of)
    apart = np.min(np.abs(wanted[:, None] - wanted + np.diag(np.full(7, np.inf))))
    assume(apart > 1e-3 * np.max(np.abs(wanted)))  # poles that nearly coincide are known to fewer figures, by any way
    assert found == pytest.approx(wanted, rel=1e-9)


@given(sets(), frequencies)
@settings(deadline=None)
def test_response_by_nodal_analysis(of, frequency):
    assert steady_formula(of, frequency) == pytest.approx(nodal.gain(of, frequency), rel=1e-9, abs=1e-12)


@given(st.lists(st.floats(-3, 3), min_size=32, max_size=32))
@settings(deadline=None)
def test_determinant_of_polynomials(numbers):
    """Against numpy's determinant of numbers, at some values of s."""
    entries = np.reshape(numbers, (4, 4, 2))
    found = determinant([[list(entry) for entry in row] for row in entries])
    for s in (0.0, 1.0, -0.7, 2j):
        assert np.polyval(found[::-1], s) == pytest.approx(np.linalg.det(entries @ [1, s]), rel=1e-6, abs=1e-6)


@given(sets())
@settings(deadline=None)
def test_without_capacitances_it_is_the_three_windings(of):
    *others, valve = parts(of)
    assert full_polynomial(*others, (*valve[:2], 0.0, 0.0))[1:] == pytest.approx(three_winding_polynomial(*others, valve[:2]))


@given(sets())
@settings(deadline=None)
def test_full_polynomial_is_a_straight_line_in_throttle_and_transconductance(of):
    """What lets a threshold be looked for between two polynomials."""
    for knob in ("throttle_capacitance", "transconductance"):
        low, middle, high = (full_polynomial(*parts(replace(of, **{knob: part * getattr(of, knob)}))) for part in (1, 2, 3))
        assert (low + high) / 2 == pytest.approx(middle, rel=1e-7)


@given(sets())
@settings(deadline=None)
def test_parts_there_and_back(of):
    assert from_parts(*parts(of)) == of


@given(sets())
@settings(deadline=None)
def test_eigenvalues_of_the_states_are_roots_of_the_meshes(of):
    """Two derivations, seven equations and four, must have one polynomial: it vanishes at every eigenvalue."""
    coefficients = full_polynomial(*parts(of))
    found = poles(of)
    size = np.polyval(np.abs(coefficients), np.abs(found))
    assert np.all(np.abs(np.polyval(coefficients, found)) < 1e-9 * size)
    assert leading_pole(coefficients) == pytest.approx(found[0], rel=1e-7)


@given(sets())
@settings(deadline=None, max_examples=25)
def test_poles_by_mpmath(of):
    coefficients = full_polynomial(*parts(of))
    with mpmath.workdps(40):
        scaled = [mpmath.mpf(c) * mpmath.mpf(10) ** (7 * power) for power, c in enumerate(coefficients[::-1])][::-1]
        roots = [complex(root) * 1e7 for root in mpmath.polyroots(scaled, maxsteps=500, extraprec=400)]
    assert max(root.real for root in roots) == pytest.approx(poles(of)[0].real, abs=1e-7 * abs(poles(of)[0]))
    for root in roots:
        assert np.min(np.abs(poles(of) - root)) < 1e-6 * abs(root)


@given(sets(most=0))
@settings(deadline=None)
def test_cold_valve_never_oscillates(of):
    assert np.all(poles(of).real < 0)


@given(sets(most=0), st.lists(st.floats(-1, 1), min_size=7, max_size=7))
@settings(deadline=None)
def test_cold_set_only_loses_energy(of, shares):
    """The rate of change of the energy is what the resistances turn into heat, by their own formulas."""
    sizes = [of.aerial_capacitance, 1e-3, 1.0, 1e-3, 1e-3, 1.0, 1.0]
    states = np.array(shares) * sizes
    step = 1 / np.max(np.abs(poles(of)))  # the energy is of second degree: the slope across any step is exact
    slope = state_matrix(of) @ states
    change = (energy(of, states + step * slope) - energy(of, states - step * slope)) / (2 * step)
    _, aerial, grid, tuned, tickler, _, anode = states
    heat = (
        of.aerial_resistance * aerial**2
        + of.tuned_resistance * tuned**2
        + of.grid_conductance * grid**2
        + of.tickler_resistance * tickler**2
        + anode**2 / of.anode_resistance
    )
    assert change == pytest.approx(-heat, rel=1e-3, abs=1e-9 * energy(of, states) / step + 1e-15)


@given(sets(most=0), frequencies)
@settings(deadline=None)
def test_reciprocity(of, frequency):
    """With a cold valve a volt in one mesh gives the same current in another as the other way round."""
    storage, flow = rates(of)
    transfer = np.linalg.inv(2j * np.pi * frequency * storage - flow)
    currents = transfer[np.ix_([AERIAL, TUNED, TICKLER], [AERIAL, TUNED, TICKLER])]
    assert currents == pytest.approx(currents.T, rel=1e-6, abs=1e-9 * np.max(np.abs(currents)))


@given(sets(), frequencies)
@settings(deadline=None)
def test_response_of_states_and_of_meshes(of, frequency):
    assert abs(steady_formula(of, frequency)) == pytest.approx(steady_gain(frequency, *parts(of)), rel=1e-6, abs=1e-12)
    assume(poles(of)[0].real < 0)
    assert abs(response(of, frequency)) == pytest.approx(gain(frequency, *parts(of)), rel=1e-6, abs=1e-12)


@given(sets())
@settings(deadline=None)
def test_windings_turned_in_pairs_change_nothing(of):
    """Which end of the aerial's coil goes to earth does not matter."""
    turned = replace(of, aerial_tuned=-of.aerial_tuned, aerial_tickler=-of.aerial_tickler)
    assert poles(turned) == pytest.approx(poles(of), rel=1e-7)


def scale(of):
    """The states that hold half a joule: measured in these all are of a size, as the integrator's tolerances want them."""
    return np.sqrt(
        [
            of.aerial_capacitance,
            1 / of.aerial_inductance,
            1 / of.tuning_capacitance,
            1 / of.tuned_inductance,
            1 / of.tickler_inductance,
            1 / of.throttle_capacitance,
            1 / of.anode_capacitance,
        ]
    )


@pytest.mark.parametrize("throttle", [60e-12, 100e-12, 140e-12, 300e-12])
def test_ring_in_the_time_domain(throttle):
    """Struck and integrated step by step for 60 µs: frequency and growth of the ring, counted from the grid's voltage."""
    of = replace(SALTMARSH_SET, throttle_capacitance=throttle)
    frequency, growth = ring(of)
    matrix = state_matrix(of) * scale(of) / scale(of)[:, None]
    start = np.zeros(7)
    start[GRID] = 1.0
    times = np.linspace(0, 60e-6, 60001)
    solved = solve_ivp(lambda t, x: matrix @ x, (0, times[-1]), start, method="DOP853", t_eval=times, rtol=1e-8, atol=1e-10)
    volts = solved.y[GRID]
    rising = np.flatnonzero((volts[:-1] < 0) & (volts[1:] >= 0))
    crossings = times[rising] - volts[rising] * (times[1] - times[0]) / (volts[rising + 1] - volts[rising])
    crossings = crossings[crossings > 30e-6]  # what is left of the other poles has died away
    assert 1 / np.mean(np.diff(crossings)) == pytest.approx(frequency, rel=1e-5)
    peaks = np.flatnonzero((volts[1:-1] > volts[:-2]) & (volts[1:-1] >= volts[2:])) + 1
    peaks = peaks[times[peaks] > 30e-6]
    slope = np.polyfit(times[peaks], np.log(volts[peaks]), 1)[0]
    assert slope == pytest.approx(growth, abs=20)


def test_driven_set_settles_to_the_response():
    """A carrier in the aerial, integrated until the ring has died away, against the response."""
    frequency = 1e6
    of = replace(SALTMARSH_SET, throttle_capacitance=50e-12)
    matrix, push = state_matrix(of), drive(of)
    matrix, push = matrix * scale(of) / scale(of)[:, None], push / scale(of)
    times = 200e-6 + np.linspace(0, 2 / frequency, 401)[:-1]
    solved = solve_ivp(
        lambda t, x: matrix @ x + push * np.cos(2 * np.pi * frequency * t),
        (0, times[-1]),
        np.zeros(7),
        method="DOP853",
        t_eval=times,
        rtol=1e-7,
        atol=1e-12,
    )
    volts = solved.y[GRID] * scale(of)[GRID]
    phasor = 2 * np.mean(volts * np.exp(-2j * np.pi * frequency * times))
    assert phasor == pytest.approx(complex(response(of, frequency)), rel=1e-3)


def test_arrays_give_what_single_sets_give():
    couplings, throttles = np.array([[0.0], [10e-6], [20e-6]]), np.array([50e-12, 120e-12])
    together = poles(replace(SALTMARSH_SET, aerial_tuned=couplings, throttle_capacitance=throttles))
    assert together.shape == (3, 2, 7)
    for row, coupling in enumerate(couplings[:, 0]):
        for column, throttle in enumerate(throttles):
            one = poles(replace(SALTMARSH_SET, aerial_tuned=coupling, throttle_capacitance=throttle))
            assert together[row, column] == pytest.approx(one, rel=1e-9)


def test_club_set_is_of_the_club_valve():
    """Behind the grid condenser: it gets a part of the swing, and through it the anode works back on itself."""
    for part in fields(SALTMARSH_SET):
        assert isinstance(getattr(SALTMARSH_SET, part.name), float), part.name
    divider = CONDENSER + GRID_ANODE + GRID_FILAMENT
    share, fed = CONDENSER / divider, GRID_ANODE / divider
    assert SALTMARSH_SET.grid_anode_capacitance == pytest.approx(share * GRID_ANODE)
    assert SALTMARSH_SET.transconductance * SALTMARSH_SET.anode_resistance == pytest.approx(share / (1 / LAW[0] + fed))


@pytest.mark.parametrize("part", CONDENSERS)
def test_a_condenser_of_nothing_is_refused(part):
    with pytest.raises(ValueError, match=f"{part} must be above 0"):
        state_matrix(replace(SALTMARSH_SET, **{part: 0.0}))


def test_impossible_windings_are_refused():
    with pytest.raises(ValueError, match="more closely than coils can be"):
        state_matrix(replace(SALTMARSH_SET, tuned_tickler=100e-6))


@pytest.mark.parametrize("frequency", [0.0, -1e6, np.array([1e6, 0.0])])
def test_no_condenser_tunes_a_set_to_nothing(frequency):
    with pytest.raises(ValueError, match="retuned: frequency must be above 0"):
        retuned(SALTMARSH_SET, frequency)


def test_cold_set_is_stable_from_end_to_end_of_the_dial():
    tunings = np.geomspace(40e-12, 500e-12, 40)
    assert np.all(poles(replace(COLD, tuning_capacitance=tunings)).real < 0)
