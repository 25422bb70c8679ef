"""Where in a wire does an alternating current flow?   Lesson: Coil and condenser, section 3."""

import numpy as np

from solutions.ranges import check_ranges

TERMS = 80  # of the power series: enough for a wire of twenty skin depths


@check_ranges(radius_over_skin_depth="the series serves wires of up to 20 skin depths, and this one is thicker")
def current_density(radius_fraction: float, radius_over_skin_depth: float) -> float:
    """Size of the current density inside a round wire, as a fraction of what it is at the surface.

    Parameters
    ----------
    radius_fraction : float or ndarray, dimensionless, 0 (axis) to 1 (surface)
    radius_over_skin_depth : float or ndarray, dimensionless, 0 to 20, broadcast with `radius_fraction`

    Returns
    -------
    float or ndarray, dimensionless, between 0 and 1

    Raises
    ------
    ValueError
        If any wire is more than 20 skin depths in radius: the series would lose too many figures.

    Source
    ------
    Lord Kelvin 1889: the size of J₀(z s) / J₀(z), with z² = -2j (radius / skin depth)² and s the fraction of the radius.
    """
    here = _bessel(radius_fraction * radius_over_skin_depth)
    return np.abs(here / _bessel(radius_over_skin_depth))


def _bessel(scaled_radius):
    """J₀(z) for z² = -2j times the square of the argument, by its power series."""
    total = term = np.ones_like(scaled_radius, dtype=complex)
    for k in range(1, TERMS):
        term = term * 0.5j * np.square(scaled_radius) / k**2
        total = total + term
    return total
