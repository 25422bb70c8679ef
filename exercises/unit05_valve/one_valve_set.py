"""One valve, one pair of telephones.   Lesson: Valve, section 7 (course/lessons/unit05_valve/detector.md).

The club's set: the same aerial and coil as the crystal set; a type 30 with grid condenser and leak in the crystal's
place; in its anode the telephones and a dropping resistor with a condenser across it, fed from 90 V.
"""

import numpy as np

from exercises.unit04_crystal_set.crystal_set import LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE
from exercises.unit04_crystal_set.detector_load import detector_powers, working_point
from exercises.unit05_valve.grid_leak import audio_cutoff, bias_with_carrier, grid_gain, rest_bias
from exercises.unit05_valve.load_line import operating_point
from exercises.unit05_valve.triode_current import mutual_conductance

LAW = 9.29, 267e-6, -0.67  # type 30: amplification factor, perveance, offset, fitted to its manual
HT = 90.0  # volt
STEADY_RESISTANCE = 14e3  # ohm: telephones and dropping resistor
TONE_RESISTANCE = 20e3  # ohm: the telephones at the tone
LEAK, CONDENSER = 2e6, 100e-12  # ohm, farad
LEAK_RETURN = 2.0  # volt: the leak goes to the positive end of the filament
ZERO_CURRENT, GRID_SLOPE = 0.5e-6, 0.12  # ampere, volt: the grid's own law, typical of such a filament


def anode_slopes(
    anode_voltage: float,
    grid_voltage: float,
    carrier: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> tuple[float, float]:
    """What the anode current, averaged over the carrier's cycle, gains from a volt of bias and from a volt of carrier.

    Parameters
    ----------
    anode_voltage : float, volt, >= 0, steady: a condenser carries the carrier past the load
    grid_voltage : float, volt, averaged over the carrier's cycle
    carrier : float, volt, crest, >= 0, at the grid
    amplification_factor, perveance, offset : float
        As in `triode_current`.

    Returns
    -------
    by_bias, by_carrier : float, siemens
        The second is the valve's own detection at the anode's bend, which works against that at the grid.

    Source
    ------
    The law differentiated under the average: mutual conductance, and mutual conductance times cos, round a cycle.
    """
    raise NotImplementedError


def detector_gain(carrier: float, tone: float) -> float:
    """Tone at the telephones for each volt by which it swings the carrier's crest at the grid, the swing being small.

    Parameters
    ----------
    carrier : float, volt, crest, > 0, at the grid of the club's set
    tone : float, hertz, >= 0

    Returns
    -------
    float, a pure number

    Source
    ------
    The grid's gain, lagging behind the tone by the condenser's arc tangent, times the slope by bias, less the slope by
    carrier; that current flows into telephones and anode resistance side by side.
    """
    raise NotImplementedError


def one_valve_set(source_voltage: float, source_resistance: float, depth: float, tone: float) -> float:
    """Power of the tone in the telephones of the club's one-valve set.

    Parameters
    ----------
    source_voltage : float, volt, crest of the unmodulated carrier on the tuned circuit, above 0 to about 3, before the
        grid is joined to it
    source_resistance : float, ohm, > 0, of the tuned circuit at resonance
    depth : float, depth of modulation as a fraction, 0 to 1
    tone : float, hertz, >= 0

    Returns
    -------
    float, watt

    Source
    ------
    The leak lies across the tuned circuit: with it, by Thévenin, voltage and resistance are smaller by one and the same
    share. The grid loads what is left as a crystal does whose saturation current is the grid's at rest. The tone's swing
    is half the difference of the carriers at the envelope's crest and trough; overtones are left out.
    """
    raise NotImplementedError


def louder_than_crystal(source_voltage: float, source_resistance: float, depth: float, tone: float) -> float:
    """How much louder the one-valve set is than the crystal set on the same aerial, coil and telephones.

    Parameters
    ----------
    source_voltage, source_resistance, tone
        As in `one_valve_set`.
    depth : float, depth of modulation as a fraction, above 0 to 1

    Returns
    -------
    float, decibel

    Source
    ------
    Ratio of the two powers in the telephones.
    """
    raise NotImplementedError
