"""Can the near station be caught on the way in?   Lesson: Two stations, section 3 (course/lessons/unit08_two_stations/trap.md).

A trap is one more tuned circuit, set to the station that is not wanted. A parallel trap stands in the aerial's lead and
stops it there; a series trap lies across the set's terminals and leads it to earth.
"""

import numpy as np
import sympy


def parallel_trap(frequency: float, inductance: float, capacitance: float, resistance: float) -> complex:
    """Impedance of a coil with a condenser across it: very high at one frequency.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    inductance : float or ndarray, henry, > 0
    capacitance : float or ndarray, farad, > 0
    resistance : float or ndarray, ohm, > 0, in series with the coil

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast together

    Source
    ------
    Two branches side by side: their admittances add.
    """
    raise NotImplementedError


def series_trap(frequency: float, inductance: float, capacitance: float, resistance: float) -> complex:
    """Impedance of a coil and a condenser one after the other: very low at one frequency.

    Parameters
    ----------
    frequency, inductance, capacitance, resistance
        As in `parallel_trap`.

    Returns
    -------
    complex or ndarray of complex, ohm; the arguments broadcast together

    Source
    ------
    One after the other: impedances add.
    """
    raise NotImplementedError


def left_in_the_lead(trap_impedance: complex, aerial_impedance: complex, set_impedance: complex) -> float:
    """Part of a station's voltage at the set that is left with a trap in the aerial's lead.

    Parameters
    ----------
    trap_impedance : complex or ndarray, ohm, at the station's frequency
    aerial_impedance : complex or ndarray, ohm, real part > 0, of aerial and earth, at that frequency
    set_impedance : complex or ndarray, ohm, real part > 0, of the set between its two terminals, at that frequency

    Returns
    -------
    float or ndarray, a pure number: 1 for no loss; above 1 where the trap tunes out some of the aerial's reactance and
        so lets in more than before; the arguments broadcast together

    Source
    ------
    Ohm's law round the aerial, with the trap and without it.
    """
    raise NotImplementedError


def left_across_the_set(trap_impedance: complex, aerial_impedance: complex, set_impedance: complex) -> float:
    """Part of a station's voltage at the set that is left with a trap across the set's terminals.

    Parameters
    ----------
    trap_impedance, aerial_impedance, set_impedance
        As in `left_in_the_lead`.

    Returns
    -------
    float or ndarray, a pure number: 1 for no loss; above 1 where trap, aerial and set tune together and more comes in than
        before; the arguments broadcast together

    Source
    ------
    Thévenin's theorem: aerial and set together are a source whose impedance is that of the two side by side.
    """
    raise NotImplementedError


def trapped_levels(
    frequency: float,
    trapped_frequency: float,
    inductance: float,
    resistance: float,
    aerial_impedance: complex,
    set_impedance: complex,
) -> tuple[float, float]:
    """What a parallel trap in the lead, and a series trap across the set, each tuned to one station, do to another.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the station listened for: give `trapped_frequency` itself to see what is left
        of the trapped one
    trapped_frequency : float or ndarray, hertz, > 0, at which the trap's coil and condenser have reactances of one size
    inductance : float or ndarray, henry, > 0, of the trap's coil
    resistance : float or ndarray, ohm, > 0, in series with it
    aerial_impedance, set_impedance : complex or ndarray, ohm, real part > 0, at `frequency`

    Returns
    -------
    in_the_lead, across_the_set : float or ndarray, decibel, 0 for no change, below it for a loss; the arguments broadcast

    Source
    ------
    The four functions above, with the condenser that resonates with the coil.
    """
    raise NotImplementedError


def trap_without_reactance(
    angular_frequency: sympy.Symbol, inductance: sympy.Symbol, resistance: sympy.Symbol
) -> tuple[sympy.Expr, sympy.Expr]:
    """Condenser with which a parallel trap is a pure resistance, and that resistance, as formulas.

    With losses this is not quite the condenser of equal reactances.

    Parameters
    ----------
    angular_frequency, inductance, resistance : sympy symbols, positive; the resistance is in series with the coil

    Returns
    -------
    capacitance, trap_resistance : sympy expressions, farad and ohm

    Source
    ------
    The imaginary part of jωC + 1/(R + jωL) is nothing; the real part is one over the trap's resistance.
    """
    raise NotImplementedError
