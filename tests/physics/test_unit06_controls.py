"""Four ways to turn reaction up: nodal analysis, knobs turned slowly through the engine, and what the lesson says."""

from dataclasses import replace

import numpy as np
import pytest

from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.one_valve_set import LAW, STEADY_RESISTANCE, TONE_RESISTANCE, anode_slopes, detector_gain
from solutions.unit06_reaction import club_set, reaction_controls
from solutions.unit06_reaction.network import SALTMARSH_SET, saltmarsh_set
from solutions.unit06_reaction.reaction_controls import (
    CLOSE,
    CONTROLS,
    DEPTH,
    TONE,
    WEAK,
    backlash,
    edge,
    last_stretch,
    loudness,
    pulls,
    turned,
)
from solutions.unit06_reaction.stability import poles, retuned, ring
from solutions.unit06_reaction.treble_loss import tone_response
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, at_rest, slopes_at_rest

GENTLE = SALTMARSH_STAGE._replace(supply=45.0, load_resistance=4e3, leak_resistance=0.5e6, leak_return=0.0)
CURLEW_BANK = 1107e3
DIAL = [531e3, 855e3, 1107e3, 1602e3]
NAMES = list(CONTROLS)


def nodal(of, s):
    """Determinant of the set by nodes, in nothing but admittances and the inverse of the inductances; scaled by its size."""
    inverse = np.linalg.inv(
        s
        * np.array(
            [
                [of.aerial_inductance, of.aerial_tuned, of.aerial_tickler],
                [of.aerial_tuned, of.tuned_inductance, of.tuned_tickler],
                [of.aerial_tickler, of.tuned_tickler, of.tickler_inductance],
            ]
        )
        + np.diag([of.aerial_resistance, of.tuned_resistance, of.tickler_resistance])
    )
    aerial, grid, throttle, anode = np.eye(4)
    # Windings: aerial to earth, grid to earth as the currents of the network run, throttle to anode.
    across = np.array([aerial, grid, throttle - anode])
    nodes = across.T @ inverse @ across
    for place, admittance in (
        (aerial, s * of.aerial_capacitance),
        (grid, s * of.tuning_capacitance + of.grid_conductance),
        (throttle, s * of.throttle_capacitance),
        (anode, s * of.anode_capacitance + 1 / of.anode_resistance),
        (grid - anode, s * of.grid_anode_capacitance),
        (throttle - anode, of.tickler_conductance),
    ):
        nodes = nodes + admittance * np.outer(place, place)
    return nodes + of.transconductance * np.outer(anode, grid)


@pytest.mark.parametrize("ohms", [300.0, 2e3, 50e3])
def test_poles_with_a_resistor_across_the_tickler_by_nodes(ohms):
    of = replace(SALTMARSH_SET, tickler_conductance=1 / ohms, throttle_capacitance=300e-12)
    for pole in poles(of):
        values = np.abs(np.linalg.svd(nodal(of, pole), compute_uv=False))
        beside = np.abs(np.linalg.svd(nodal(of, pole * (1 + 1e-3)), compute_uv=False))
        assert values[-1] < 1e-6 * beside[-1]


def test_no_resistor_and_a_short_circuit_are_the_ends_of_it():
    there = replace(SALTMARSH_SET, tickler_conductance=1e-12)
    assert np.array(ring(there)) == pytest.approx(np.array(ring(SALTMARSH_SET)), rel=1e-6)
    # A winding joined end to end links the tuned coil as a shorted turn: its inductance falls by 1 − k², whatever the valve.
    shorted = replace(SALTMARSH_SET, tickler_conductance=1e6, tickler_resistance=1e-6, transconductance=0.0)
    turns = 1 - SALTMARSH_SET.tuned_tickler**2 / (SALTMARSH_SET.tuned_inductance * SALTMARSH_SET.tickler_inductance)
    assert ring(shorted)[0] / ring(replace(shorted, tuned_tickler=1e-9))[0] == pytest.approx(turns**-0.5, rel=0.01)


@pytest.mark.parametrize("frequency", DIAL)
def test_throttle_is_the_one_of_the_other_pages(frequency):
    farads = CONTROLS["throttle"].value(edge("throttle", frequency))
    assert farads == pytest.approx(club_set.threshold_throttle(frequency), rel=1e-5)


@pytest.mark.parametrize("frequency", DIAL)
@pytest.mark.parametrize("stage", [SALTMARSH_STAGE, GENTLE])
@pytest.mark.parametrize("name", NAMES)
def test_each_reaches_its_edge_all_over_the_dial(name, stage, frequency):
    place = edge(name, frequency, stage)
    assert 0 < place < 1
    there, _ = turned(name, place, saltmarsh_set(frequency), stage)
    assert ring(retuned(there, frequency))[1] == pytest.approx(0, abs=50)


@pytest.mark.parametrize("name", NAMES)
def test_backlash_of_a_knob_turned_slowly_up_and_down(name):
    """The knob of the fierce set moved in steps of a thousandth, the engine carried on from step to step."""
    begins, back = edge(name, CURLEW_BANK), backlash(name, CURLEW_BANK)
    there, _ = turned(name, begins, saltmarsh_set(CURLEW_BANK))
    tuning = retuned(there, CURLEW_BANK).tuning_capacitance
    silence, state, last = np.zeros(int(8e-3 * 4 * RATE) + 1, complex), start(SALTMARSH_STAGE, 1.0), None
    for place in np.arange(begins + 2e-3, begins - back - 8e-3, -1e-3):
        windings, stage = turned(name, place, saltmarsh_set(CURLEW_BANK))
        heard = follow(silence, 4 * RATE, CURLEW_BANK, replace(windings, tuning_capacitance=tuning), stage, state)
        state = heard.state
        last = place if abs(heard.grid[-1]) > 0.05 else last
    assert begins - last == pytest.approx(back, abs=3e-3)


def test_what_the_lesson_says_of_the_four():
    smooth = {name: last_stretch(name, CURLEW_BANK) for name in NAMES}
    assert max(smooth, key=smooth.get) == "anode voltage"
    assert min(smooth, key=smooth.get) == "throttle"
    assert smooth["anode voltage"] > 2.5 * smooth["throttle"]
    drawn = {name: abs(pulls(name, CURLEW_BANK)) for name in NAMES}
    assert min(drawn, key=drawn.get) == "anode voltage" and drawn["anode voltage"] < 40 < 100 < drawn["throttle"]
    for name in NAMES:
        assert backlash(name, CURLEW_BANK) > smooth[name]  # the fierce set lets go only outside its last 2 kHz
        assert backlash(name, CURLEW_BANK, GENTLE) < 0.2 * last_stretch(name, CURLEW_BANK, GENTLE)
    loud = {name: loudness(name, CURLEW_BANK) for name in NAMES}
    assert min(loud, key=loud.get) == "anode voltage"
    assert 20 * np.log10(loud["throttle"] / loud["anode voltage"]) == pytest.approx(6, abs=0.3)
    assert loud["swinging tickler"] == pytest.approx(loud["throttle"], rel=0.02)


def test_starved_valve_is_quieter_as_its_slope_at_the_edge_says():
    """Same grid, carrier and band: the tone goes with the slopes that are left, and with what the load leaves of them."""
    _, fed = turned("anode voltage", reaction_controls.close_place("anode voltage", CURLEW_BANK))
    bias, anode = at_rest(fed)
    full_bias, full = at_rest(SALTMARSH_STAGE)
    assert bias == full_bias
    stage = SALTMARSH_STAGE
    grid = stage.leak_resistance, stage.leak_return, stage.zero_current, stage.slope_voltage
    sinks = (bias_with_carrier(1.01 * WEAK, *grid) - bias_with_carrier(0.99 * WEAK, *grid)) / (0.02 * WEAK)

    def current(volts):
        by_bias, by_carrier = anode_slopes(volts, bias, WEAK, *LAW)
        return (by_bias * sinks + by_carrier) / (1 + stage.load_resistance * by_bias / LAW[0])

    ratio = loudness("anode voltage", CURLEW_BANK) / loudness("throttle", CURLEW_BANK)
    assert ratio == pytest.approx(current(anode) / current(full), rel=0.03)


@pytest.mark.parametrize("frequency", DIAL)
def test_loudness_is_the_one_valve_sets(frequency):
    """Unit 5's detector, by its own closed form, behind the treble that 2 kHz leave; its load is 20 kΩ to a tone, here 14."""
    swing = WEAK * DEPTH * tone_response(TONE, CLOSE, 0.0)
    _, resistance, _ = slopes_at_rest(SALTMARSH_STAGE)
    another_load = (resistance + TONE_RESISTANCE) / (resistance + STEADY_RESISTANCE)
    expected = detector_gain(WEAK, TONE) * swing / TONE_RESISTANCE * another_load
    assert loudness("throttle", frequency) == pytest.approx(expected, rel=0.25)


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (lambda: turned("filament", 0.5), "choose one of throttle"),
        (lambda: turned("throttle", 1.5), "from 0 to 1"),
        (lambda: edge("filament", CURLEW_BANK), "choose one of throttle"),
        (lambda: edge("throttle", 150e3), "does not reach"),
    ],
)
def test_wrong_knobs_are_refused_in_a_sentence(asked, says):
    with pytest.raises(ValueError, match=says):
        asked()
