"""What does the grid do?   Lesson: Valve, section 3 (course/lessons/unit05_valve/index.md).

A triode's law has three numbers, found from its manual's figures:
amplification_factor    μ: a volt on the grid does as much as μ volts on the anode
perveance               ampere for a volt of drive, and 2.83 times that for two
offset                  volt: what contact potential, the electrons' own speed and the filament's drop add to the grid
"""

import numpy as np
import sympy


def drive(anode_voltage: float, grid_voltage: float, amplification_factor: float, offset: float) -> float:
    """Voltage that, on the grid alone, would pull as hard as grid and anode do together.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, >= 0
    grid_voltage : float or ndarray, volt
    amplification_factor : float or ndarray, a pure number, > 0
    offset : float or ndarray, volt

    Returns
    -------
    float or ndarray, volt, never below zero: a grid more negative than cut-off can do no more; the arguments broadcast

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 4 (from memory): Vg + Va/μ, with the offset added.
    """
    raise NotImplementedError


def triode_current(
    anode_voltage: float,
    grid_voltage: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
    emission: float = np.inf,
) -> float:
    """Anode current of a triode: the three-halves law, with grid and anode pulling together.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, >= 0
    grid_voltage : float or ndarray, volt
    amplification_factor : float or ndarray, a pure number, > 0
    perveance : float or ndarray, ampere per volt to the power of 1.5, > 0
    offset : float or ndarray, volt
    emission : float or ndarray, ampere, > 0, that the filament can give; the law holds as far as that, and no more comes. Left
        out, the law has no end, as if the filament gave all that is drawn; no filament does

    Returns
    -------
    float or ndarray, ampere; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 4 (from memory): perveance × drive^1.5.
    """
    raise NotImplementedError


def mutual_conductance(
    anode_voltage: float, grid_voltage: float, amplification_factor: float, perveance: float, offset: float
) -> float:
    """Change of anode current for each volt of change on the grid, the anode's voltage held.

    Parameters
    ----------
    anode_voltage, grid_voltage, amplification_factor, perveance, offset
        As in `triode_current`.

    Returns
    -------
    float or ndarray, siemens; the arguments broadcast together

    Source
    ------
    The slope of the law: 1.5 × perveance × drive^0.5.
    """
    raise NotImplementedError


def anode_resistance(
    anode_voltage: float, grid_voltage: float, amplification_factor: float, perveance: float, offset: float
) -> float:
    """Change of anode voltage for each ampere of change in its current, the grid's voltage held.

    Parameters
    ----------
    anode_voltage, grid_voltage, amplification_factor, perveance, offset
        As in `triode_current`; current must flow.

    Returns
    -------
    float or ndarray, ohm; the arguments broadcast together

    Raises
    ------
    ValueError
        If the valve is cut off anywhere: it then passes no current whose change could be counted.

    Source
    ------
    The slope of the law, which the anode's voltage climbs μ times more slowly than the grid's.
    """
    raise NotImplementedError


def coefficients(
    anode_voltage: sympy.Symbol,
    grid_voltage: sympy.Symbol,
    amplification_factor: sympy.Symbol,
    perveance: sympy.Symbol,
    offset: sympy.Symbol,
) -> tuple[sympy.Expr, sympy.Expr, sympy.Expr]:
    """Mutual conductance, anode resistance and their product, as formulas found by differentiating the law.

    Parameters
    ----------
    anode_voltage, grid_voltage, amplification_factor, perveance, offset : sympy symbols
        As in `triode_current`; the drive is above zero.

    Returns
    -------
    tuple of three sympy expressions: siemens, ohm, a pure number
        Slope with the grid's voltage; one over the slope with the anode's voltage; the two multiplied.

    Source
    ------
    Definition of the coefficients.
    """
    raise NotImplementedError


def law_from_manual(
    anode_voltage: float,
    grid_voltage: float,
    anode_current: float,
    amplification_factor: float,
    mutual_conductance: float,
) -> tuple[float, float]:
    """Perveance and offset of the law that goes through one line of a valve manual.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, of the line
    grid_voltage : float or ndarray, volt, of the line
    anode_current : float or ndarray, ampere, > 0, that the line gives
    amplification_factor : float or ndarray, a pure number, > 0, that the line gives
    mutual_conductance : float or ndarray, siemens, > 0, that the line gives

    Returns
    -------
    perveance : float or ndarray, ampere per volt to the power of 1.5
    offset : float or ndarray, volt; the arguments broadcast together

    Source
    ------
    Current over slope of the three-halves law is two thirds of the drive.
    """
    raise NotImplementedError
