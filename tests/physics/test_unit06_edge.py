"""Loop gain against the roots of the tuned-grid equation, and the rounds against exact fractions."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit06_reaction.edge import after_rounds, loop_gain


@given(st.floats(1e-4, 3e-3), st.floats(1e-7, 3e-5), st.floats(3e-11, 5e-10), st.floats(1, 50))
def test_at_a_loop_gain_of_one_the_swing_neither_grows_nor_dies(conductance, mutual, capacitance, resistance):
    """L C s² + (R C - M g) s + 1 = 0 (the handbooks' tuned-grid case): the real part of its roots has the sign of k - 1."""
    k = loop_gain(conductance, mutual, capacitance, resistance)
    roots = np.roots([180e-6 * capacitance, resistance * capacitance - mutual * conductance, 1])
    if abs(k - 1) > 1e-6:
        assert np.sign(max(roots.real)) == np.sign(k - 1)


@given(st.fractions(-2, 2, max_denominator=64), st.integers(0, 20))
def test_the_rounds_add_up_exactly(k, rounds):
    wanted = Fraction(rounds + 1) if k == 1 else (1 - k ** (rounds + 1)) / (1 - k)
    assert after_rounds(float(k), rounds) == pytest.approx(float(wanted), rel=1e-9, abs=1e-6)
