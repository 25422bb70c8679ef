"""The anode left alone: the lesson's closed forms against the network's poles, and what the page says of them."""

import numpy as np
import pytest

from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.anode_alone import (
    BARE_ANODE,
    anode_loss,
    early_threshold,
    reaction_off,
    sings_without_coupling,
    with_anode,
)
from solutions.unit06_reaction.network import BY_PASS, SALTMARSH_SET, THROTTLE_RANGE, saltmarsh_set
from solutions.unit06_reaction.stability import ring

DIAL = [531e3, 855e3, 1107e3, 1602e3]


@pytest.mark.parametrize("frequency", DIAL)
def test_toll_is_what_the_whole_network_says(frequency):
    toll, _ = anode_loss(frequency)
    assert toll == pytest.approx(club_set.feedback_on(frequency, THROTTLE_RANGE[0], 0.0)[0], rel=0.01)


@pytest.mark.parametrize("frequency", DIAL)
def test_toll_is_gm_times_the_ratio_of_the_condensers_and_falls_with_the_by_pass(frequency):
    of = saltmarsh_set(frequency)
    reactance = 2 * np.pi * frequency * of.tuned_inductance
    for by_pass in (300e-12, 500e-12):
        expected = of.transconductance * of.grid_anode_capacitance / (BARE_ANODE + by_pass) * reactance**2
        assert anode_loss(frequency, by_pass)[0] == pytest.approx(expected, rel=0.1)
    tolls = anode_loss(frequency, np.array([0.0, 100e-12, 200e-12, 400e-12]))[0]
    assert np.all(np.diff(tolls) < 0)
    assert tolls[2] / tolls[3] == pytest.approx(2, rel=0.12)  # "twice the by-pass: about half"


def test_set_with_its_own_by_pass_is_the_club_s():
    gain, width = reaction_off(1107e3)
    assert (gain, width) == pytest.approx(club_set.gain_and_bandwidth(1107e3, THROTTLE_RANGE[0]), rel=1e-6)
    assert with_anode(1107e3).anode_capacitance == pytest.approx(SALTMARSH_SET.anode_capacitance, rel=1e-12)
    assert pytest.approx(BARE_ANODE + BY_PASS) == SALTMARSH_SET.anode_capacitance
    # "A third of what it is": without capacitance from grid to anode, throttle shut.
    assert reaction_off(1107e3, BY_PASS, 0.0)[1] == pytest.approx(width / 3, rel=0.1)


def test_early_tickler_was_right_for_a_valve_without_capacitance_only():
    """Worked out independently for its early tickler: 13 pF, 68 pF and some 330 pF; none within reach at 531 kHz."""
    none, one, six = (early_threshold(1107e3, farads) for farads in (0.0, 1e-12, 6e-12))
    assert none == pytest.approx(13e-12, rel=0.15)
    assert one == pytest.approx(68e-12, rel=0.1)
    assert six == pytest.approx(330e-12, rel=0.15)
    assert early_threshold(531e3, 6e-12) > THROTTLE_RANGE[1]


def test_a_tickler_far_open_is_a_coil_and_sings_by_itself_at_the_top():
    assert sings_without_coupling(1602e3, THROTTLE_RANGE[1]) > 0
    assert sings_without_coupling(1602e3, 300e-12) < 0
    for throttle in (10e-12, 150e-12, 500e-12):
        assert sings_without_coupling(1107e3, throttle) < 0
    # Damped or not, it is the tuned circuit that rings.
    assert ring(with_anode(1602e3))[0] == pytest.approx(1602e3, rel=1e-6)
