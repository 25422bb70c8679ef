"""Valve, grid leak and anode feed, as the envelope's equation wants them."""

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from solutions.unit05_valve import one_valve_set as club
from solutions.unit05_valve.grid_leak import rest_bias
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance
from solutions.unit06_reaction.network import GRID_ANODE, GRID_FILAMENT, ReactionSet, through_grid_condenser


class Stage(NamedTuple):
    """Valve, grid condenser and leak, and what feeds the anode; a choke keeps the carrier out of the telephones.

    Parameters
    ----------
    amplification_factor, perveance, offset : float
        As in `triode_current`.
    supply : float, volt, > 0, of the HT battery
    load_resistance : float, ohm, > 0, of telephones and all else in the anode's feed, to steady current and tone alike
    bypass_capacitance : float, farad, > 0, from behind the choke to earth
    leak_resistance : float, ohm, > 0, from grid to filament
    leak_return : float, volt, of the filament's end that the leak is taken to
    grid_capacitance : float, farad, > 0, of the grid condenser
    zero_current, slope_voltage : float, ampere, volt
        As in `rest_bias`.
    grid_anode, grid_filament : float, farad, >= 0, the valve's own capacitances
    """

    amplification_factor: float
    perveance: float
    offset: float
    supply: float
    load_resistance: float
    bypass_capacitance: float
    leak_resistance: float
    leak_return: float
    grid_capacitance: float
    zero_current: float
    slope_voltage: float
    grid_anode: float
    grid_filament: float

    @property
    def grid_node(self) -> float:
        """Capacitance of all that meets at the grid, farad."""
        return self.grid_capacitance + self.grid_anode + self.grid_filament


BYPASS = 2e-9  # farad
SALTMARSH_STAGE = Stage(
    *club.LAW,
    club.HT,
    club.STEADY_RESISTANCE,
    BYPASS,
    club.LEAK,
    club.LEAK_RETURN,
    club.CONDENSER,
    club.ZERO_CURRENT,
    club.GRID_SLOPE,
    GRID_ANODE,
    GRID_FILAMENT,
)
# The same valve, made gentle: 45 V, telephones without a dropping resistor, half a megohm to the filament's negative end.
GENTLE_STAGE = SALTMARSH_STAGE._replace(supply=45.0, load_resistance=4e3, leak_resistance=0.5e6, leak_return=0.0)


@lru_cache(maxsize=16)
def at_rest(stage: Stage) -> tuple[float, float]:
    """Steady voltages of grid and anode when no carrier comes.

    Parameters
    ----------
    stage : Stage

    Returns
    -------
    bias, anode : float, volt

    Source
    ------
    `rest_bias` and `operating_point` of the one-valve set.
    """
    bias = float(rest_bias(stage.leak_resistance, stage.leak_return, stage.zero_current, stage.slope_voltage))
    law = stage.amplification_factor, stage.perveance, stage.offset
    anode, _ = operating_point(stage.supply, stage.load_resistance, bias, *law)
    return bias, float(anode)


@lru_cache(maxsize=16)
def slopes_at_rest(stage: Stage) -> tuple[float, float, float]:
    """What valve and grid are to a weak signal.

    Parameters
    ----------
    stage : Stage

    Returns
    -------
    transconductance, anode_resistance, grid_conductance : float, siemens, ohm, siemens; the last with the leak

    Raises
    ------
    ValueError
        If the valve is cut off at rest.

    Source
    ------
    Slopes of the three-halves law, and of the grid's exponential law beside the leak.
    """
    bias, anode = at_rest(stage)
    place = anode, bias, stage.amplification_factor, stage.perveance, stage.offset
    grid_slope = stage.zero_current * np.exp(bias / stage.slope_voltage) / stage.slope_voltage
    conductance = 1 / stage.leak_resistance + grid_slope
    return float(mutual_conductance(*place)), float(anode_resistance(*place)), float(conductance)


def small_signal_set(windings: ReactionSet, stage: Stage = SALTMARSH_STAGE) -> ReactionSet:
    """The set as weak signals find it: valve and grid put in by their slopes at rest.

    Parameters
    ----------
    windings : ReactionSet
        Its transconductance, anode resistance, grid conductance and capacitance from grid to anode are replaced by the
        stage's.
    stage : Stage

    Returns
    -------
    ReactionSet

    Raises
    ------
    ValueError
        If the valve is cut off at rest.
    """
    transconductance, resistance, conductance = slopes_at_rest(stage)
    seen = through_grid_condenser(
        stage.grid_capacitance, stage.grid_anode, stage.grid_filament, transconductance, resistance, conductance
    )
    return replace(
        windings,
        transconductance=seen[0],
        anode_resistance=seen[1],
        grid_conductance=seen[2],
        grid_anode_capacitance=seen[3],
    )
