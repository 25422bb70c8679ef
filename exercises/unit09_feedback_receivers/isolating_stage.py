"""How much still gets out?   Lesson: Feedback receivers, sections 2 and 3
(course/lessons/unit09_feedback_receivers/isolating.md).

A valve between aerial and reaction set: the aerial on its grid, and in its anode a winding on the reaction set's tuned coil.

tuned circuit     the reaction set's, with its tuning condenser; its swing is the crest across that condenser
anode winding     in the isolating valve's anode, coupled to the tuned coil
stray             capacitance from the top of the tuned circuit straight to the aerial's lead
"""

import numpy as np

from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance
from exercises.unit07_oscillation.radiated_field import aerial_current


def carried_gain(
    frequency: float,
    amplification_factor: float,
    anode_resistance: float,
    winding_inductance: float,
    mutual_inductance: float,
    tuned_resistance: float,
    tuning_capacitance: float,
) -> float:
    """Voltage on the reaction set's tuned circuit, at resonance, for each volt on the isolating valve's grid.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, to which the tuned circuit is tuned
    amplification_factor : float or ndarray, a pure number, > 0
    anode_resistance : float or ndarray, ohm, > 0
    winding_inductance : float or ndarray, henry, > 0, of the anode winding
    mutual_inductance : float or ndarray, henry, of anode winding and tuned coil
    tuned_resistance : float or ndarray, ohm, > 0, in series with the tuned coil: what reaction has left of it
    tuning_capacitance : float or ndarray, farad, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Raises
    ------
    ValueError
        If nothing is left of the loss, or the windings are coupled more closely than coils can be; the tuned coil is that
        which the condenser tunes to the frequency.

    Source
    ------
    μ volts behind the anode resistance, which finds in its way the winding and what the tuned circuit reflects into it
    (`reflected_impedance`); ω M volts for each ampere there; and at resonance 1/(ω C r) times that on the condenser.
    """
    raise NotImplementedError


def anode_swing(
    swing: float,
    frequency: float,
    tuning_capacitance: float,
    mutual_inductance: float,
    winding_inductance: float,
    anode_resistance: float,
) -> complex:
    """What an oscillation on the tuned circuit leaves on the isolating valve's anode.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, across the tuning condenser
    frequency : float or ndarray, hertz, > 0, of the oscillation
    tuning_capacitance : float or ndarray, farad, > 0
    mutual_inductance : float or ndarray, henry, of anode winding and tuned coil; negative if the winding is turned over
    winding_inductance : float or ndarray, henry, > 0, of the anode winding
    anode_resistance : float or ndarray, ohm, > 0

    Returns
    -------
    complex or ndarray of complex, volt, crest, the swing's phase being 0; the arguments broadcast together

    Raises
    ------
    ValueError
        If the windings are coupled more closely than coils can be, as in `carried_gain`.

    Source
    ------
    The tuned coil carries jωC times the swing, and jωM volts come for each ampere of it; winding and anode resistance
    share them.
    """
    raise NotImplementedError


def grid_swing(
    frequency: float,
    anode_swing: complex,
    anode_grid: float,
    tuned_swing: float,
    stray: float,
    grid_impedance: complex,
) -> complex:
    """What of it gets back to the grid, where the aerial is: through the valve's own capacitance, and past the valve.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    anode_swing : complex or ndarray, volt, crest
    anode_grid : float or ndarray, farad, >= 0, from anode to grid inside the valve
    tuned_swing : float or ndarray, volt, crest, at the top of the tuned circuit
    stray : float or ndarray, farad, >= 0, from there to the aerial's lead
    grid_impedance : complex or ndarray, ohm, of all that lies from the grid to earth, the aerial among it

    Returns
    -------
    complex or ndarray of complex, volt, crest; the arguments broadcast together

    Source
    ------
    The currents into the grid add up to nothing (Kirchhoff): two capacitances bring what the rest takes to earth.
    """
    raise NotImplementedError


def isolation(
    frequency: float,
    tuning_capacitance: float,
    aerial_winding: tuple[float, float],
    aerial_impedance: complex,
    grid_resistance: float,
    anode_winding: tuple[float, float],
    valve: tuple[float, float],
    stray: float,
) -> float:
    """By how much less of an oscillation runs in the aerial with the isolating stage than with the aerial on the set itself.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the oscillation
    tuning_capacitance : float or ndarray, farad, > 0
    aerial_winding : tuple of two floats, henry: inductance, > 0, of the winding that the aerial has where there is no stage,
        and its mutual inductance with the tuned coil
    aerial_impedance : complex or ndarray, ohm, all the way round aerial and earth, without that winding
    grid_resistance : float or ndarray, ohm, > 0, from the isolating valve's grid to earth
    anode_winding : tuple of two floats, henry: its inductance, > 0, and its mutual inductance with the tuned coil
    valve : tuple of two floats: anode resistance in ohms, > 0, and capacitance from anode to grid in farads, >= 0
    stray : float or ndarray, farad, >= 0, from the top of the tuned circuit to the aerial's lead

    Returns
    -------
    float or ndarray, decibel, above 0 where the stage helps; the arguments but the tuples broadcast together

    Raises
    ------
    ValueError
        If either winding and the tuned coil are coupled more closely than coils can be, as in `carried_gain`.

    Source
    ------
    Unit 07's `aerial_current`, the winding in the aerial, against `grid_swing` over the aerial's impedance, without it, for
    one and the same swing.
    """
    raise NotImplementedError


def stable_gain(transconductance: float, anode_grid: float, frequency: float) -> float:
    """Greatest gain of a stage between two like tuned circuits before it oscillates by itself.

    Parameters
    ----------
    transconductance : float or ndarray, siemens, > 0
    anode_grid : float or ndarray, farad, > 0, from anode to grid
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    R. T. Beatty, Experimental Wireless 5, 1928 (from memory): with the circuits at their worst tunings the stage oscillates
    where gm ω C R² passes 2, R being the resistance of either circuit at resonance; and the gain is gm R.
    """
    raise NotImplementedError
