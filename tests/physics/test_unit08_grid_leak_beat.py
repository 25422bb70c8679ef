"""Two stations on a grid leak: against the condenser's own equation integrated by SciPy, and in its two limits."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.special import ive

from solutions.unit05_valve.grid_leak import audio_cutoff, rest_bias
from solutions.unit05_valve.one_valve_set import CONDENSER, GRID_SLOPE, LEAK, LEAK_RETURN, ZERO_CURRENT
from solutions.unit08_two_stations.grid_leak_beat import beating_bias, left_of_programme
from solutions.unit08_two_stations.weak_signal_suppression import mean_envelope


@pytest.mark.parametrize("strong", [0.3, 1.0])
def test_the_bias_through_a_beat_by_scipy(strong):
    weak, beat = 0.1, 9e3

    def slope(time, voltage):
        crest = np.sqrt(strong**2 + weak**2 + 2 * strong * weak * np.cos(2 * np.pi * beat * time))
        taken = ZERO_CURRENT * ive(0, crest / GRID_SLOPE) * np.exp((voltage[0] + crest) / GRID_SLOPE)
        return [((LEAK_RETURN - voltage[0]) / LEAK - taken) / CONDENSER]

    solved = solve_ivp(slope, (0, 40 / beat), [-strong], method="LSODA", rtol=1e-9, atol=1e-12, dense_output=True)
    wanted = solved.sol((39 + (np.arange(256) + 1) / 256) / beat)[0]
    assert beating_bias(strong, weak, beat) == pytest.approx(wanted, abs=4e-3 * np.ptp(wanted) + 5e-4)


def test_9_khz_is_below_the_cut_off_at_rest_so_the_condenser_follows_part_of_the_way():
    at_rest = (LEAK_RETURN - rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)) / LEAK
    assert audio_cutoff(CONDENSER, LEAK, at_rest, GRID_SLOPE) == pytest.approx(13.5e3, rel=0.01)
    assert left_of_programme(0.3, 0.02, 9e3) == pytest.approx(0.58, abs=0.01)
    assert left_of_programme(1.0, 0.02, 9e3) == pytest.approx(0.30, abs=0.015)


def test_a_slow_beat_is_held_down_as_a_detector_s_that_follows_and_a_quick_one_is_not():
    followed = (mean_envelope(1.0, 0.26) - mean_envelope(1.0, 0.14)) / (0.26 - 0.14)  # crest for crest, B/2A
    assert followed == pytest.approx(0.1, rel=0.03)
    assert left_of_programme(1.0, 0.2, 50.0) < 0.3
    assert left_of_programme(1.0, 0.02, 9e3, 10e-9) > 0.95
    assert left_of_programme(0.0, 0.02, 9e3) == pytest.approx(1)
