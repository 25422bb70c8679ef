"""The meter of a class A stage: against the same circuit integrated through time by SciPy, with a real primary."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from solutions.unit05_valve.triode_current import triode_current
from solutions.unit09_feedback_receivers.class_a import mean_current, meter_rise
from solutions.unit09_feedback_receivers.two_stage_audio import output_power

TYPE_31 = 3.8, 167e-6, 0.203


@pytest.mark.parametrize(("swing", "load"), [(15.0, 7.2e3), (15.0, 3.6e3), (7.6, 7.2e3)])
def test_by_a_transformer_followed_through_time(swing, load):
    inductance, tone = 2000.0, 1000.0  # henry: a primary so large that it takes next to none of the tone

    def slope(time, state):
        return [load / inductance * (triode_current(max(anode(time, state[0]), 0.0), grid(time), *TYPE_31) - state[0])]

    def grid(time):
        return -15 + swing * np.cos(2 * np.pi * tone * time)

    def anode(time, primary):
        low, high = 0.0, 400.0  # the voltage at which the valve passes what primary and load bring it
        for _ in range(60):
            middle = (low + high) / 2
            brought = primary + (90 - middle) / load
            low, high = (middle, high) if triode_current(middle, grid(time), *TYPE_31) < brought else (low, middle)
        return low

    time = np.arange(2000, 2400) / (200 * tone)
    start = [mean_current(90.0, -15.0, swing, load, *TYPE_31)]
    primary = solve_ivp(slope, (0, time[-1]), start, t_eval=time, max_step=2e-5, rtol=1e-8).y[0]
    assert np.mean(primary) == pytest.approx(start[0], rel=2e-3)


def test_it_rises_with_the_square_of_a_small_swing_and_as_the_second_harmonic_says():
    """A bend that makes a second harmonic of a share h moves the mean by h times the fundamental's crest (Fourier); where the
    load does not hinder the mean, as behind a transformer, by up to 1 + load/anode resistance times as much."""
    rises = [meter_rise(90.0, -15.0, swing, 7.2e3, *TYPE_31) for swing in (1.0, 2.0, 4.0)]
    assert rises[1] / rises[0] == pytest.approx(4, rel=0.02) and rises[2] / rises[1] == pytest.approx(4, rel=0.05)
    power, second = output_power(90.0, -15.0, 4.0, 7.2e3, *TYPE_31)
    crest = np.sqrt(2 * power / 7.2e3)
    mean = mean_current(90.0, -15.0, 4.0, 7.2e3, *TYPE_31) - mean_current(90.0, -15.0, 0.0, 7.2e3, *TYPE_31)
    assert 1 < mean / (second * crest) < 1 + 7.2 / 3.6


def test_at_full_swing_it_is_ten_per_cent_and_more():
    assert meter_rise(90.0, -15.0, 15.0, 7.2e3, *TYPE_31) == pytest.approx(0.10, abs=0.01)
    assert 0.15 < meter_rise(90.0, -15.0, 15.0, 3.6e3, *TYPE_31) < 0.26
