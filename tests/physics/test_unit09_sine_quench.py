"""The slit of a sine quench: against Bessel functions, and against the envelope's own equation."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.special import iv

from solutions.unit09_feedback_receivers.quench import relative_response
from solutions.unit09_feedback_receivers.sine_quench import sine_response


@pytest.mark.parametrize("nepers", [2.0, 10.0, 25.0])
@pytest.mark.parametrize("order", [0, 1, 2, 5])
def test_at_whole_quench_frequencies_by_bessel_functions(order, nepers):
    # SciPy's iv as referee of A&S 9.6.19.
    wanted = iv(order, nepers / 2) / iv(0, nepers / 2)
    assert sine_response(order * 20e3, nepers, 20e3) == pytest.approx(wanted, rel=1e-6, abs=1e-9)


@pytest.mark.parametrize("offset", [0.0, 9e3, 40e3])
def test_by_following_a_burst(offset):
    """dv/dt = G sin(2πqt) v + e^(2πj offset t), from the depth of a dying half to the top of the growing one, by SciPy."""
    quench, nepers = 20e3, 16.0
    most = nepers * np.pi * quench  # of the rate: its half cycle's integral is the nepers

    def top(away):
        def slope(t, v):
            return most * np.sin(2 * np.pi * quench * t) * v + np.exp(2j * np.pi * away * t)

        return abs(solve_ivp(slope, (-0.5 / quench, 0.5 / quench), [0j], rtol=1e-9, atol=1e-12).y[0, -1])

    assert top(offset) / top(0.0) == pytest.approx(sine_response(offset, nepers, quench), rel=1e-6)


def test_it_is_as_broad_as_a_stepped_quench_of_as_many_nepers():
    offset = np.array([9e3, 20e3, 40e3])
    stepped = relative_response(offset, 400e3, 400e3)  # 10 nepers in 25 µs
    assert np.all(np.abs(sine_response(offset, 10.0, 20e3) - stepped) < 0.08)
    assert sine_response(9e3, 10.0, 20e3) > 0.97
