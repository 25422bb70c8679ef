"""A set whose quench does not step from dying to growing, but swings there and back as a sine."""

import numpy as np

from solutions.ranges import check_ranges

MOMENTS = 2000  # of a cycle
PHASE = np.pi * (np.arange(MOMENTS) + 0.5) / MOMENTS


@check_ranges
def sine_response(offset: float, nepers: float, quench_frequency: float) -> float:
    """Burst that a signal off tune leaves, against one in tune, in a set whose rate of growth is a sine about nothing.

    Parameters
    ----------
    offset : float or ndarray, hertz, of the signal from the circuit's frequency, of either sign
    nepers : float or ndarray, > 0, by which a burst grows in its half of the cycle, and dies away in the other
    quench_frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, a pure number, 1 in tune; the arguments broadcast together

    Source
    ------
    The set listens with a weight of e to the minus (nepers grown since the turn), which for a sine is e^(z cos θ) with
    z = nepers/2: its cosine transform round the cycle. For an offset of n quench frequencies that is I_n(z)/I_0(z) (M.
    Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, NBS AMS 55, 1964, eq. 9.6.19).
    """
    turns, half = np.broadcast_arrays(np.divide(offset, quench_frequency), np.divide(nepers, 2))
    weight = np.exp(half[..., None] * (np.cos(PHASE) - 1))
    return (np.abs(np.sum(weight * np.cos(turns[..., None] * PHASE), axis=-1)) / np.sum(weight, axis=-1))[()]
