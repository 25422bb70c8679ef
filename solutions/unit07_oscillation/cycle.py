"""What valve and grid do, averaged round a carrier's cycle: two tables that serve every set.

The carrier reaches the anode's circuit as y cos θ, in volts of grid drive; x is the steady drive. The throttle lets the
anode swing, and its swing u, counted as grid drive, adds to them: the valve passes (x + y cos θ + u)^1.5, and
du/dθ = −κ⁻¹ (that − its mean), where κ = μωC/(perveance √size). Only the size of the drive, √(x² + y²), its direction,
the angle whose sine is x's share, and κ count; a drive of size 1 stands for all.
"""
from functools import lru_cache

import numpy as np

from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0, log_i0

MOMENTS = 49  # of a cycle; an odd number, so that a periodic wave has one slope
NEWTON_STEPS, CLOSE = 40, 1e-10
ANGLES, SHARES = 49, 33
LITTLE_COIL = 0.02
LOWEST_ANGLE, LOWEST_SHARE = -np.pi / 4, 0.02  # radian: cut-off all round the cycle; less throttle than any condenser's
GRID_POINTS, GRID_LIMIT = 400, 1000.0  # a carrier's crest in slope voltages


def slope_of_waves() -> np.ndarray:
    """The matrix that turns a wave's samples, `MOMENTS` round a cycle, into samples of its slope.

    Returns
    -------
    ndarray of shape (MOMENTS, MOMENTS)

    Source
    ------
    L. N. Trefethen, Spectral Methods in MATLAB, 2000, chapter 3 (from memory), for an odd number of samples.
    """
    apart = np.subtract.outer(np.arange(MOMENTS), np.arange(MOMENTS))
    return np.divide((-1.0) ** apart, 2 * np.sin(np.pi * apart / MOMENTS), out=np.zeros(apart.shape), where=apart != 0)


def overtone_filter() -> np.ndarray:
    """The matrix that leaves of a wave its overtones from the second to the fourth, times k² − 1.

    Returns
    -------
    ndarray of shape (MOMENTS, MOMENTS)
    """
    order = np.abs(np.fft.fftfreq(MOMENTS, 1 / MOMENTS))
    weight = np.where((order > 1.5) & (order < 4.5), order**2 - 1, 0.0)
    return np.fft.ifft(weight[:, None] * np.fft.fft(np.eye(MOMENTS), axis=0), axis=0).real


def anode_cycle(angle: float, share: float, coil: float = 0.0) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Mean, fundamental and overtones of the three-halves law round a cycle, for a drive of size 1.

    Parameters
    ----------
    angle : float or ndarray, radian, −π/4 to below π/2: steady drive sin(angle), carrier cos(angle)
    share : float or ndarray, κ/(1 + κ), above 0 to 1: near 0 the throttle is shut, at 1 the anode does not swing
    coil : float, what the coils' reactance takes off the throttle's, as a fraction of the latter; 0 to about 0.1

    Returns
    -------
    mean : ndarray, in units of perveance × size^1.5
    fundamental : ndarray, complex, in units of perveance × size^0.5 for each volt of carrier
    overtones : ndarray, in units of perveance × size^1.5; the arguments broadcast
        Sum over the harmonics from the second of k/(k² − 1) times the sine part. What a harmonic induces in a circuit
        tuned to the carrier goes as k/(k² − 1); this is all that it adds up to at the crest of the carrier.

    Source
    ------
    The periodic solution of the equation at the head of this module, by Newton's method on samples of u. Coils make
    the reactance to the k-th overtone smaller by (k² − 1) coil, k being 2 to 4; κ counts them at the carrier.
    """
    steady, crest, hold = np.broadcast_arrays(np.sin(angle), np.cos(angle), (1 - np.asarray(share)) / share)
    steady, crest, hold = (part[..., None] for part in (steady, crest, hold))
    moment = 2 * np.pi * np.arange(MOMENTS) / MOMENTS
    slope, mean = slope_of_waves(), np.full((MOMENTS, MOMENTS), 1 / MOMENTS)
    swings = np.eye(MOMENTS) - mean - coil * overtone_filter()
    outside = steady + crest * np.cos(moment)
    swing = np.zeros_like(outside)
    for _ in range(NEWTON_STEPS):
        drive = np.maximum(outside + swing, 0.0)
        missed = swing @ (slope + mean).T + hold * (drive**1.5 @ swings.T)
        rate = slope + mean + (hold * 1.5 * np.sqrt(drive))[..., None, :] * swings
        step = np.linalg.solve(rate, missed[..., None])[..., 0]
        swing = swing - step
        if np.max(np.abs(step)) < CLOSE:
            break
    current = np.maximum(outside + swing, 0.0) ** 1.5
    mean, first, *higher = (2 * np.mean(current * np.exp(-1j * k * moment), axis=-1) for k in range(MOMENTS // 2 + 1))
    overtones = sum(k / (k**2 - 1) * harmonic.imag for k, harmonic in enumerate(higher, start=2))
    return mean.real / 2, first / crest[..., 0], overtones


def with_margins(table: np.ndarray) -> np.ndarray:
    """A table with one more row and column all round: cubic interpolation looks one node ahead.

    Parameters
    ----------
    table : ndarray of shape (m, n, ...)

    Returns
    -------
    ndarray of shape (m + 2, n + 2, ...)
        Continued with the same curvature; beyond the last row, where the carrier vanishes, mirrored: its sign is nothing.
    """
    table = np.concatenate([3 * table[:1] - 3 * table[1:2] + table[2:3], table, table[-2:-1]])
    before = 3 * table[:, :1] - 3 * table[:, 1:2] + table[:, 2:3]
    after = 3 * table[:, -1:] - 3 * table[:, -2:-1] + table[:, -3:-2]
    return np.concatenate([before, table, after], axis=1)


@lru_cache(maxsize=1)
def anode_tables() -> tuple[np.ndarray, np.ndarray]:
    """`anode_cycle` at evenly spaced angles and shares, margins included.

    Returns
    -------
    plain, by_coil : ndarray of shape (ANGLES + 2, SHARES + 2, 4)
        Mean, fundamental's real and imaginary part, overtones, without coils; and by how much each grows with `coil`.
    """
    angle = np.linspace(LOWEST_ANGLE, np.pi / 2 - 1e-6, ANGLES)
    share = np.linspace(LOWEST_SHARE, 1.0, SHARES)
    tables = []
    for coil in (0.0, LITTLE_COIL):
        mean, fundamental, overtones = anode_cycle(angle[:, None], share, coil)
        tables.append(with_margins(np.stack([mean, fundamental.real, fundamental.imag, overtones], axis=-1)))
    plain, wound = tables
    return plain, (wound - plain) / LITTLE_COIL


def anode_table(coil: float) -> np.ndarray:
    """`anode_cycle` at evenly spaced angles and shares, for one set's coils.

    Parameters
    ----------
    coil : float
        As in `anode_cycle`.

    Returns
    -------
    ndarray of shape (ANGLES + 2, SHARES + 2, 4)
    """
    plain, by_coil = anode_tables()
    return plain + coil * by_coil


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
