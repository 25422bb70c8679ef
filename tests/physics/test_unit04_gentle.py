"""The peak detector against the exact fall between two crests, and its longest time constant found by trying; the reach by P.368."""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from solutions.unit04_crystal_set.crystal_reach import phone_power, reach
from solutions.unit04_crystal_set.detect_step import detect_step

DEPTH, TONE = 0.5, 1000.0


def held_over(envelope, step, time_constant):
    held = [envelope[0]]
    for wave in envelope[1:]:
        held.append(float(detect_step(held[-1], wave, step, time_constant)))
    return np.array(held)


def test_left_alone_it_falls_as_an_integrator_says():
    fall = solve_ivp(lambda time, volts: -volts / 200e-6, (0, 1e-3), [1.0], rtol=1e-10, atol=1e-12, t_eval=[200e-6, 1e-3])
    for time, wanted in zip(fall.t, fall.y[0], strict=True):
        assert abs(detect_step(1.0, 0.0, time, 200e-6) - wanted) < 1e-8
    assert abs(detect_step(1.0, 0.0, 200e-6, 200e-6) - 0.3678794412) < 1e-10


def test_the_longest_time_constant_that_follows():
    """sqrt(1 - m²)/(2πFm) (F. E. Terman, Radio Engineers' Handbook, 1943, section 7, from memory): just below, the envelope is
    followed all the way; just above, it is not."""
    longest = np.sqrt(1 - DEPTH**2) / (2 * np.pi * TONE * DEPTH)
    time = np.linspace(0, 2e-3, 20_001)
    envelope = 1 + DEPTH * np.cos(2 * np.pi * TONE * time)
    assert np.allclose(held_over(envelope, time[1], 0.98 * longest), envelope, atol=1e-4)
    assert np.max(held_over(envelope, time[1], 1.1 * longest) - envelope) > 1e-3


def test_a_quarter_of_e_squared_over_r_is_the_most_that_any_load_takes():
    most = minimize_scalar(lambda load: -((10e-3 / (40 + load)) ** 2) * load, bounds=(1, 1000), method="bounded")
    assert abs(phone_power(10e-3, 40.0, 1.0) / -most.fun - 1) < 1e-9


def test_1_kw_and_5_mv_a_metre():
    """Recommendation ITU-R P.368, Annex 1: 300 mV/m at 1 km, so 5 mV/m at 60."""
    assert abs(reach(1e3, 5e-3) - 60e3) < 1e-6
