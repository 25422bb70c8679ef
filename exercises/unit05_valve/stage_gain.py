"""How much does a stage amplify?   Lesson: Valve, section 5 (course/lessons/unit05_valve/stage.md)."""

import numpy as np


def stage_gain(amplification_factor: float, anode_resistance: float, load: float) -> float:
    """Voltage that a stage gives for each volt on its grid. It comes out upside down: a rising grid lowers the anode.

    Parameters
    ----------
    amplification_factor : float or ndarray, a pure number, > 0
    anode_resistance : float or ndarray, ohm, > 0, of the valve where it works
    load : float or ndarray, ohm, > 0, that the tone finds between anode and filament

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory): μ volts behind the anode resistance.
    """
    raise NotImplementedError


def input_capacitance(grid_filament: float, grid_anode: float, gain: float) -> float:
    """Capacitance that a stage with a resistive load puts across whatever feeds its grid.

    Parameters
    ----------
    grid_filament : float or ndarray, farad, >= 0, between grid and filament
    grid_anode : float or ndarray, farad, >= 0, between grid and anode
    gain : float or ndarray, a pure number, >= 0, of the stage, as `stage_gain` gives it

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Source
    ------
    J. M. Miller, Scientific Papers of the Bureau of Standards 15, no. 351, 1919 (citation from memory): the anode moves
    against the grid, so the capacitance between them carries the current of one 1 + gain times as large.
    """
    raise NotImplementedError


def band_edges(
    anode_resistance: float, load: float, leak: float, coupling_capacitance: float, shunt_capacitance: float
) -> tuple[float, float]:
    """Frequencies at which a stage, coupled to the next by a condenser, has lost 3 dB in the bass and in the treble.

    Parameters
    ----------
    anode_resistance : float or ndarray, ohm, > 0
    load : float or ndarray, ohm, > 0, between battery and anode
    leak : float or ndarray, ohm, > 0, of the next grid
    coupling_capacitance : float or ndarray, farad, > 0, from anode to the next grid
    shunt_capacitance : float or ndarray, farad, > 0, across the next grid; far below `coupling_capacitance`

    Returns
    -------
    lowest, highest : float or ndarray, hertz; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory). In the bass the coupling condenser's reactance
    equals leak and output resistance in series; in the treble the shunt's equals them side by side.
    """
    raise NotImplementedError
