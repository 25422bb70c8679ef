"""What feedback does to the loss, and to gain and bandwidth: against the exact network, Routh's condition and limits.

The network is solved as a matrix; the exercises under test know only one tuned circuit and what is reflected into it. Their
valve has no capacitances, so the network's has none here either; what those do is in test_unit06_feedback_club.
"""

import tomllib
from dataclasses import replace

import numpy as np
import pytest
import sympy
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar

from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance, series_impedance
from solutions.unit06_reaction.feedback_resistance import circuit_with_feedback, feedback_impedance, feedback_resistance
from solutions.unit06_reaction.network import AERIAL, GRID, SALTMARSH_SET, TUNED, rates, state_matrix
from solutions.unit06_reaction.q_multiplication import (
    feedback_for_bandwidth,
    feedback_fraction,
    gain_and_bandwidth,
    multiplied_q,
    touchiness,
)
from tests.physics.conftest import TABLES

REACTION = tomllib.loads((TABLES / "valve/reaction.toml").read_text())  # recomputed; relations derived with sympy
EXAMPLE, MULTIPLIED = REACTION["example"], REACTION["q_multiplication"]

frequencies = st.floats(500e3, 1.6e6)
mutuals = st.floats(0.2e-6, 30e-6)
condensers = st.floats(50e-12, 500e-12)
throttles = st.floats(4e-12, 500e-12)
ticklers = st.floats(10e-6, 100e-6)
factors = st.floats(3, 30)
resistances = st.floats(5e3, 3e4)
qualities = st.floats(20, 300)
feedbacks = st.floats(-2, 0.999)


# The club's aerial and coil with a simple valve, whose anode has no capacitance, and the small tickler that such a one wants.
SIMPLE_SET = replace(
    SALTMARSH_SET, grid_anode_capacitance=0.0, anode_capacitance=1e-20, tickler_inductance=12e-6, tickler_resistance=1.0,
    tuned_tickler=6e-6, aerial_tickler=0.2e-6, throttle_capacitance=10e-12, transconductance=0.88e-3, anode_resistance=10.6e3,
    tuned_resistance=6.0, tuning_capacitance=126e-12,
)  # fmt: skip


def solved(reaction_set, frequency, mesh):
    """The states from a volt in one mesh, by the network's own equations."""
    storage, flow = rates(reaction_set)
    forced = np.zeros(len(storage))
    forced[mesh] = 1
    return np.linalg.solve(2j * np.pi * frequency * storage - flow, forced)


def on_grid(reaction_set, frequency):
    return abs(solved(reaction_set, frequency, AERIAL)[GRID])


def slowest_pole(reaction_set):
    """The pole of the tuned circuit: the one nearest to growing, of those that swing at a frequency of the dial."""
    poles = np.linalg.eigvals(state_matrix(reaction_set))
    swinging = poles[(poles.imag > 2 * np.pi * 450e3) & (poles.imag < 2 * np.pi * 1.8e6)]
    return swinging[np.argmax(swinging.real)]


def measured(reaction_set):
    """Gain at the peak and width between −3 dB points, swept as an instrument would."""
    pole = slowest_pole(reaction_set)
    assert pole.real < 0
    middle, width = pole.imag / (2 * np.pi), -pole.real / np.pi
    edges = middle - 4 * width, middle + 4 * width
    found = minimize_scalar(lambda f: -on_grid(reaction_set, f), bounds=edges, method="bounded", options={"xatol": 1e-3})

    def above(frequency):
        return on_grid(reaction_set, frequency) + found.fun / np.sqrt(2)

    return -found.fun, brentq(above, found.x, edges[1]) - brentq(above, edges[0], found.x)


def threshold(reaction_set):
    """Throttle condenser at which the set just begins to oscillate."""
    return brentq(lambda c: slowest_pole(replace(reaction_set, throttle_capacitance=c)).real, 3e-12, 60e-12)


EDGE_OF_OSCILLATION = threshold(SIMPLE_SET)


def mesh_feedback(reaction_set, frequency):
    """`feedback_impedance` of the set, from its parts."""
    anode = series_impedance(
        frequency,
        reaction_set.tickler_inductance,
        reaction_set.throttle_capacitance,
        reaction_set.tickler_resistance + reaction_set.anode_resistance,
    )
    factor = reaction_set.transconductance * reaction_set.anode_resistance
    return feedback_impedance(frequency, reaction_set.tuned_tickler, reaction_set.tuning_capacitance, factor, anode)


def single_circuit(reaction_set, frequency):
    """Resistance without and with feedback, as one tuned circuit with everything else reflected into it."""
    aerial = series_impedance(
        frequency, reaction_set.aerial_inductance, reaction_set.aerial_capacitance, reaction_set.aerial_resistance
    )
    reflected = reflected_impedance(frequency, reaction_set.aerial_tuned, aerial)
    susceptance = 2 * np.pi * frequency * reaction_set.tuning_capacitance
    resistance = reaction_set.tuned_resistance + reflected.real + reaction_set.grid_conductance / susceptance**2
    left, _ = circuit_with_feedback(reaction_set.tuned_inductance, resistance, mesh_feedback(reaction_set, frequency))
    return resistance, left


@given(frequencies, mutuals, st.sampled_from([-1, 1]), condensers, throttles, ticklers, factors, resistances)
def test_feedback_impedance_is_what_the_network_adds(f, mutual, sense, condenser, throttle, tickler, factor, resistance):
    """Drive the tuned mesh of the network, the aerial uncoupled: volts over amperes, less coil, condenser and loss."""
    assume(mutual**2 < 0.9 * tickler * SIMPLE_SET.tuned_inductance)
    network = replace(
        SIMPLE_SET,
        aerial_tuned=0.0,
        aerial_tickler=0.0,
        grid_conductance=0.0,
        tuned_tickler=sense * mutual,
        tuning_capacitance=condenser,
        throttle_capacitance=throttle,
        tickler_inductance=tickler,
        transconductance=factor / resistance,
        anode_resistance=resistance,
    )
    all_round = 1 / solved(network, f, TUNED)[TUNED]
    alone = series_impedance(f, network.tuned_inductance, condenser, network.tuned_resistance)
    assert mesh_feedback(network, f) == pytest.approx(all_round - alone, rel=1e-7, abs=1e-8)


@given(frequencies, mutuals, condensers, factors, throttles, ticklers, resistances)
def test_winding_sense(f, mutual, condenser, factor, throttle, tickler, resistance):
    anode = series_impedance(f, tickler, throttle, resistance)
    helping, hindering = (feedback_impedance(f, way * mutual, condenser, factor, anode).real for way in (1, -1))
    assert hindering > 0
    assert hindering > helping
    assert hindering + helping == pytest.approx(2 * reflected_impedance(f, mutual, anode).real, rel=1e-6, abs=1e-9)


@pytest.mark.parametrize("throttle", [5e-12, 8e-12, 11e-12, 13e-12])
def test_pole_of_the_circuit_is_where_resistance_and_shift_put_it(throttle):
    network = replace(
        SIMPLE_SET,
        aerial_tuned=0.0,
        aerial_tickler=0.0,
        grid_conductance=0.0,
        tuned_resistance=24.0,
        throttle_capacitance=throttle,
    )
    coil = network.tuned_inductance
    alone = 1 / (2 * np.pi * np.sqrt(coil * network.tuning_capacitance))
    left, shift = circuit_with_feedback(coil, network.tuned_resistance, mesh_feedback(network, alone))
    pole = slowest_pole(network)
    assert -2 * coil * pole.real == pytest.approx(left, abs=0.02 * network.tuned_resistance)
    assert pole.imag / (2 * np.pi) - alone == pytest.approx(shift, rel=0.03)
    assert shift > 1000  # a throttle condenser's reactance in the anode circuit tunes the set upwards


@given(frequencies, mutuals, condensers, factors, resistances, ticklers, throttles)
@settings(deadline=None)
def test_formula_is_the_real_part(f, mutual, condenser, factor, resistance, tickler, throttle):
    symbols = sympy.symbols("w M C mu r L3 C3", positive=True)
    formula = feedback_resistance(*symbols)
    at = dict(zip(symbols, (2 * np.pi * f, mutual, condenser, factor, resistance, tickler, throttle), strict=True))
    numeric = feedback_impedance(f, mutual, condenser, factor, series_impedance(f, tickler, throttle, resistance))
    assert float(formula.evalf(25, subs=at)) == pytest.approx(numeric.real, rel=1e-6, abs=1e-9)


def test_formula_in_the_simple_case_is_the_handbooks():
    """R' = R − M gm/C (reaction.toml, tuned_grid_simple): μ = gm ra, ra endless, tickler small, throttle a short circuit."""
    w, M, C, gm, r, L3, C3 = sympy.symbols("w M C gm r L3 C3", positive=True)
    formula = feedback_resistance(w, M, C, gm * r, r, L3, C3)
    no_throttle = sympy.limit(sympy.together(formula), C3, sympy.oo)
    assert sympy.simplify(sympy.limit(no_throttle, r, sympy.oo) + M * gm / C) == 0


def test_thresholds_of_the_example_as_printed():
    inductance, loss, condenser = EXAMPLE["L_h"], EXAMPLE["R_ohm"], EXAMPLE["C_f"]
    # Simple: anode resistance endless, so that only gm counts.
    simple = feedback_impedance(1e6, EXAMPLE["M_tuned_grid_simple_h"], condenser, EXAMPLE["gm_s"] * 1e9, 1e9)
    assert loss + simple.real == pytest.approx(0, abs=1e-6)
    # Textbook: ra counts, the tickler's own inductance does not.
    textbook = EXAMPLE["M_tuned_grid_textbook_h"]
    resistive = feedback_impedance(1e6, textbook, condenser, EXAMPLE["mu"], EXAMPLE["ra_ohm"])
    assert loss + resistive.real == pytest.approx(0, abs=2e-4)
    # Exact, by Routh: at the frequency of oscillation nothing at all is left of the circuit's impedance.
    frequency = EXAMPLE["f_osc_tuned_grid_hz"]
    anode = complex(EXAMPLE["ra_ohm"], 2 * np.pi * frequency * EXAMPLE["L2_h"])
    feedback = feedback_impedance(frequency, EXAMPLE["M_tuned_grid_full_h"], condenser, EXAMPLE["mu"], anode)
    assert abs(series_impedance(frequency, inductance, condenser, loss) + feedback) < 1e-5
    _, shift = circuit_with_feedback(inductance, loss, feedback)
    assert 1e6 + shift == pytest.approx(frequency, abs=0.1)


def test_multiplied_q_as_printed():
    factors, widths = multiplied_q(1.0, np.array(MULTIPLIED["k"])), gain_and_bandwidth(1e6, 100.0, np.array(MULTIPLIED["k"]))[1]
    assert factors == pytest.approx(MULTIPLIED["q_ratio"], rel=1e-12)
    assert widths == pytest.approx(1e3 * np.array(MULTIPLIED["bw_khz_for_f0_1mhz_q100"]), rel=1e-12)


@given(frequencies, qualities, feedbacks)
def test_gain_times_bandwidth_does_not_depend_on_the_feedback(f, quality, feedback):
    gain, width = gain_and_bandwidth(f, quality, feedback)
    assert gain * width == pytest.approx(f, rel=1e-12)
    assert feedback_for_bandwidth(f, quality, width) == pytest.approx(feedback, rel=1e-9, abs=1e-9)


@given(st.floats(1, 50), st.floats(-2, 0.999))
def test_fraction_of_the_loss_taken_away(resistance, feedback):
    left, _ = circuit_with_feedback(200e-6, resistance, complex(-feedback * resistance, 3.0))
    assert feedback_fraction(resistance, left) == pytest.approx(feedback, abs=1e-9)


@given(st.floats(0.01, 0.99))
def test_touchiness_is_the_change_of_q_for_a_change_of_feedback(feedback):
    step = 1e-6
    high, low = (np.log(multiplied_q(100.0, feedback * (1 + way * step))) for way in (1, -1))
    assert touchiness(feedback) == pytest.approx((high - low) / (2 * step), rel=1e-4)


@pytest.mark.parametrize("beyond", [1.0, 1.2, np.array([0.5, 3.0])])
def test_no_q_at_the_threshold_or_beyond(beyond):
    with pytest.raises(ValueError, match="oscillates"):
        multiplied_q(100.0, beyond)
    with pytest.raises(ValueError, match="oscillates"):
        gain_and_bandwidth(1e6, 100.0, beyond)
    with pytest.raises(ValueError, match="oscillates"):
        touchiness(beyond)


@pytest.mark.parametrize("part", [0.3, 0.6, 0.8, 0.9, 0.97])
def test_exact_set_has_the_bandwidth_of_the_single_circuit(part):
    """The Circle's set, aerial and all: what is left of the bandwidth, to 1/30 of the bandwidth without reaction."""
    network = replace(SIMPLE_SET, throttle_capacitance=part * EDGE_OF_OSCILLATION)
    _, width = measured(network)
    frequency = slowest_pole(network).imag / (2 * np.pi)
    resistance, left = single_circuit(network, frequency)
    own = resistance / (2 * np.pi * network.tuned_inductance)
    feedback = feedback_fraction(resistance, left)
    assert feedback < 1
    assert gain_and_bandwidth(frequency, frequency / own, feedback)[1] == pytest.approx(width, abs=own / 30)


def test_exact_set_keeps_gain_times_bandwidth_up_to_the_threshold():
    products = []
    for part in (0.3, 0.6, 0.8, 0.9, 0.97, 0.99):
        gain, width = measured(replace(SIMPLE_SET, throttle_capacitance=part * EDGE_OF_OSCILLATION))
        products.append(gain * width)
    assert width < 400  # the last one stands close under the threshold
    assert max(products) / min(products) < 1.02


def test_gain_times_bandwidth_is_not_kept_where_a_second_circuit_tunes_as_sharply():
    """An aerial tuned to the station and of little loss: two circuits, and the product departs by more than half."""
    second = 1 / ((2 * np.pi * 1.003e6) ** 2 * SIMPLE_SET.aerial_capacitance)
    tuned_aerial = replace(SIMPLE_SET, aerial_inductance=second, aerial_resistance=4.0, aerial_tuned=2e-6)
    edge = threshold(tuned_aerial)
    products = [np.prod(measured(replace(tuned_aerial, throttle_capacitance=part * edge))) for part in (0.3, 0.6, 0.9)]
    assert max(products) / min(products) > 1.5


def test_wound_the_other_way_round_the_set_is_weaker_and_broader():
    without = measured(replace(SIMPLE_SET, tuned_tickler=0.0, aerial_tickler=0.0))
    turned = measured(replace(SIMPLE_SET, tuned_tickler=-SIMPLE_SET.tuned_tickler, aerial_tickler=0.0))
    right = measured(SIMPLE_SET)
    assert turned[0] < without[0] < right[0]
    assert turned[1] > without[1] > right[1]


def test_arrays_broadcast():
    mutual, condenser = np.array([[1e-6], [5e-6]]), np.array([100e-12, 200e-12, 300e-12])
    impedance = feedback_impedance(1e6, mutual, condenser, 9.3, 10e3 - 5e3j)
    assert impedance.shape == (2, 3)
    resistance, shift = circuit_with_feedback(200e-6, 10.0, impedance)
    assert resistance.shape == shift.shape == (2, 3)
    assert multiplied_q(100.0, np.array([0.0, 0.5])) == pytest.approx([100, 200])
