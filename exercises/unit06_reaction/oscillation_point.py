"""Where does it begin to oscillate?   Lesson: Reaction, section 5 (course/lessons/unit06_reaction/edge.md)."""

import numpy as np
import sympy

from exercises.unit06_reaction.characteristic_polynomial import (
    full_polynomial,
    leading_pole,
    refuse_impossible_windings,
    tuned_grid_polynomial,
)

BEST_VALVE = 20e-3  # siemens: no receiving valve of the time came near
HALVINGS = 28  # of the interval that holds the answer


def routh_point(
    tuned_inductance: sympy.Symbol,
    tuned_resistance: sympy.Symbol,
    tuning_capacitance: sympy.Symbol,
    tickler_inductance: sympy.Symbol,
    anode_resistance: sympy.Symbol,
    mutual_inductance: sympy.Symbol,
) -> tuple[sympy.Expr, sympy.Expr]:
    """Transconductance at which tuned circuit and tickler just oscillate, and how fast they then swing, as formulas.

    Parameters
    ----------
    tuned_inductance, tuned_resistance, tuning_capacitance : sympy symbols, positive
    tickler_inductance, anode_resistance : sympy symbols, positive
    mutual_inductance : sympy symbol, positive: the tickler is wound so as to help

    Returns
    -------
    transconductance : sympy expression, siemens
    angular_frequency : sympy expression, radian per second

    Source
    ------
    E. J. Routh, Dynamics of a System of Rigid Bodies, advanced part, on the stability of motion (from memory): a cubic
    a s³ + b s² + c s + d with a, b, d above 0 has all roots to the left only while b c > a d. At b c = a d it is
    (a s + b)(s² + d/b).
    """
    raise NotImplementedError


def crossing(silent: np.ndarray, oscillating: np.ndarray) -> float:
    """How far along from one polynomial to another the leading pole crosses from left to right.

    Parameters
    ----------
    silent, oscillating : ndarray of shape (n + 1,), real, from the coefficient of the highest power to the constant
        The leading pole's real part is below 0 in the first and above 0 in the second.

    Returns
    -------
    float, from 0 to 1: the polynomial there is (1 − share) × silent + share × oscillating

    Raises
    ------
    ValueError
        If the first oscillates, or the second does not.

    Source
    ------
    The real part passes through 0 on the way.
    """
    raise NotImplementedError


def threshold_transconductance(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float],
) -> float:
    """Transconductance at which the whole set begins to oscillate.

    Parameters
    ----------
    coupling, tuning, throttle, aerial, tuned, tickler
        As in `full_polynomial`.
    valve : (anode resistance, grid-anode capacitance, anode capacitance): ra, Cga, Ca; ohm, farad, farad

    Returns
    -------
    float, siemens

    Raises
    ------
    ValueError
        If the set would not oscillate with a valve of 20 mS either: the tickler is too far away, or wound the wrong way. Also
        as `full_polynomial`.

    Source
    ------
    Every coefficient of the polynomial is a straight line in the transconductance: `crossing` between none and 20 mS.
    """
    raise NotImplementedError


def steady_gain(
    frequency: float,
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> float:
    """Volts on the grid for each volt in the aerial, as the steady-state formula has it: true only below the threshold.

    Parameters
    ----------
    frequency : float, hertz, > 0
    coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `full_polynomial`.

    Returns
    -------
    float, a pure number >= 0, amplitude over amplitude

    Raises
    ------
    ValueError
        As `refuse_impossible_windings`.

    Source
    ------
    The four equations of `full_polynomial` at s = jω, with a volt in the aerial's mesh, solved for v.
    """
    raise NotImplementedError


def gain(
    frequency: float,
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> float:
    """Volts on the grid for each volt in the aerial, refused where there is no steady state.

    Parameters
    ----------
    frequency, coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `steady_gain`.

    Returns
    -------
    float, a pure number >= 0, amplitude over amplitude

    Raises
    ------
    ValueError
        If the leading pole's real part is 0 or more: the set oscillates, with or without a station. `steady_gain` gives a
        number there too, and it looks like any other. Also as `full_polynomial`.

    Source
    ------
    What the set does by itself dies away only while all poles lie to the left; only then is the steady state what is left.
    """
    raise NotImplementedError
