"""The field over perfect ground: what it carries through a whole hemisphere, added up by SciPy, is the power sent out."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.integrate import quad

from solutions.unit01_signal.inverse_distance import distance_for, field

SPACE = constants.mu_0 * constants.c  # ohm


@given(st.floats(1, 1e6), st.floats(10, 1e6))
def test_all_the_power_goes_through_the_hemisphere(power, distance):
    def through_a_ring(elevation):  # the field of a short upright wire falls as the cosine of the elevation
        return (field(power, distance) * np.cos(elevation)) ** 2 / SPACE * 2 * np.pi * distance**2 * np.cos(elevation)

    through, _ = quad(through_a_ring, 0, np.pi / 2)
    assert abs(through / power - 1) < 1e-3  # 120 pi is 0.07 % from the impedance of space


def test_300_millivolts_a_metre_at_a_kilometre():
    """Recommendation ITU-R P.368, Annex 1: the reference field of its curves."""
    assert abs(field(1e3, 1e3) - 0.3) < 1e-15
    assert abs(distance_for(1e3, 0.3) - 1e3) < 1e-9
