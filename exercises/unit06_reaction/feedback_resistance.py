"""What does a little of the output, fed back, do to the loss?   Lesson: Reaction, section 2
(course/lessons/unit06_reaction/index.md).

The voltage on the tuned condenser is the grid's; times μ it acts in the anode circuit, which is the anode resistance,
the tickler and the throttle condenser in series. The tickler's current induces a voltage back into the tuned coil.
The valve is the simple one: it has no capacitances of its own. What they do comes in `grid_anode_admittance`.
"""

import numpy as np
import sympy


def feedback_impedance(
    frequency: float,
    mutual_inductance: float,
    tuning_capacitance: float,
    amplification_factor: float,
    anode_impedance: complex,
) -> complex:
    """Impedance that valve and tickler together seem to put in series with the tuned coil.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    mutual_inductance : float or ndarray, henry, of tickler and tuned coil; positive when the tickler is wound so as to
        help, negative when it is wound the other way round
    tuning_capacitance : float or ndarray, farad, > 0; the grid is joined across it
    amplification_factor : float or ndarray, a pure number, >= 0, of the valve
    anode_impedance : complex or ndarray, ohm, real part > 0, all the way round the anode circuit: anode resistance,
        tickler and throttle condenser in series

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast. A negative real part takes loss away; a positive
        imaginary part acts like more coil

    Source
    ------
    The two mesh equations, with v = I2/(jωC) on the grid: Za I3 = μ v + jωM I2, and jωM I3 taken from the tuned
    circuit's own drop. The simple case is in F. E. Terman, Radio Engineers' Handbook, 1943, section 6 (from memory).
    """
    raise NotImplementedError


def circuit_with_feedback(inductance: float, resistance: float, feedback: complex) -> tuple[float, float]:
    """Resistance of the tuned circuit with the feedback, and how far the feedback moves its tuning.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0, of the tuned coil
    resistance : float or ndarray, ohm, > 0, in series with it, all other losses counted in
    feedback : complex or ndarray, ohm, as `feedback_impedance` gives it at the frequency tuned to

    Returns
    -------
    resistance : float or ndarray, ohm; at 0 or below it the circuit needs no station any more: it oscillates
    shift : float or ndarray, hertz, of the resonance, for a shift of a few per cent at most; negative: downwards

    Source
    ------
    The real parts add. The imaginary part is made up by the coil's and the condenser's reactance together, which
    rises by 2L for each radian per second.
    """
    raise NotImplementedError


def feedback_resistance(
    angular_frequency: sympy.Symbol,
    mutual_inductance: sympy.Symbol,
    tuning_capacitance: sympy.Symbol,
    amplification_factor: sympy.Symbol,
    anode_resistance: sympy.Symbol,
    tickler_inductance: sympy.Symbol,
    throttle_capacitance: sympy.Symbol,
) -> sympy.Expr:
    """Resistance that the feedback adds to the tuned circuit, as a formula: negative where it helps.

    Parameters
    ----------
    angular_frequency, mutual_inductance, tuning_capacitance, amplification_factor : sympy symbols, positive
    anode_resistance, tickler_inductance, throttle_capacitance : sympy symbols, positive, in series round the anode circuit

    Returns
    -------
    sympy expression, ohm
        The real part of `feedback_impedance`, with the anode circuit's impedance written out.

    Source
    ------
    The real part of 1/(r + jX) is r/(r² + X²).
    """
    raise NotImplementedError
