"""What valve and grid do, averaged round a carrier's cycle.

The valve's drive, grid voltage and anode voltage over μ together, is a steady part, the carrier's crest, and a few
overtones that its own current makes in the circuits round it. Its current is summed from moments spread evenly round a
cycle: no table, and every set alike. The grid's exponential law has a table, which serves every set too.
"""

import math
from functools import lru_cache

import numpy as np

from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0, log_i0
from solutions.unit07_oscillation.compiling import INTO_ITS_CALLER, njit

MOMENTS = 24  # of a cycle
OVERTONES = 3  # that are followed: the second harmonic, the third and the fourth
PHASE = 2 * np.pi * (np.arange(MOMENTS) + 0.5) / MOMENTS
WAVES = np.array([[np.cos(k * PHASE), -np.sin(k * PHASE)] for k in range(1, OVERTONES + 2)])
GRID_POINTS, GRID_LIMIT = 400, 1000.0  # a carrier's crest in slope voltages


@njit(**INTO_ITS_CALLER)
def anode_cycle(steady: float, crest: float, second: complex, third: complex, fourth: complex, perveance: float) -> tuple:
    """Mean, fundamental and overtones of a three-halves law's current round a cycle, and its mean slope.

    Parameters
    ----------
    steady, crest : float, volt: the drive is steady + crest cos θ + the overtones
    second, third, fourth : complex, volt, crests of the drive's overtones, by the phase of the carrier's crest
    perveance : float, ampere for each volt^1.5

    Returns
    -------
    mean : float, ampere
    fundamental, second, third, fourth : complex, ampere, crests by the same phase
    slope : float, siemens, averaged

    Source
    ------
    Fourier's integrals by the rule of the rectangle, which is all but exact for a periodic wave.
    """
    mean, slope = 0.0, 0.0
    ones, twos, threes, fours = 0j, 0j, 0j, 0j
    for n in range(MOMENTS):
        cosine, sine = WAVES[0, 0, n], WAVES[0, 1, n]
        cosine2, sine2 = WAVES[1, 0, n], WAVES[1, 1, n]
        cosine3, sine3 = WAVES[2, 0, n], WAVES[2, 1, n]
        cosine4, sine4 = WAVES[3, 0, n], WAVES[3, 1, n]
        drive = (
            steady
            + crest * cosine
            + second.real * cosine2
            + second.imag * sine2
            + third.real * cosine3
            + third.imag * sine3
            + fourth.real * cosine4
            + fourth.imag * sine4
        )
        if drive > 0.0:
            root = math.sqrt(drive)
            current = drive * root
            slope += root
            mean += current
            ones += current * complex(cosine, sine)
            twos += current * complex(cosine2, sine2)
            threes += current * complex(cosine3, sine3)
            fours += current * complex(cosine4, sine4)
    share = perveance / MOMENTS
    return share * mean, 2 * share * ones, 2 * share * twos, 2 * share * threes, 2 * share * fours, 1.5 * share * slope


@lru_cache(maxsize=1)
def grid_table() -> np.ndarray:
    """What an exponential grid passes when a carrier comes: ln I0(a) − a, and 2 I1(a)/(a I0(a)), a in slope voltages.

    Returns
    -------
    ndarray of shape (GRID_POINTS, 2), evenly spaced in ln(1 + a)
        Its mean current is e^a times the first's exponential; the second times the mean is its conductance to the
        carrier, both in units of what it passes without a carrier.
    """
    crest = np.expm1(np.linspace(0.0, np.log1p(GRID_LIMIT), GRID_POINTS))
    crest[0] = 1e-9
    return np.stack([log_i0(crest) - crest, 2 * i1_over_i0(crest) / crest], axis=-1)
