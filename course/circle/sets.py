"""The Circle's sets as networks and stages, which is how the engine of unit 7 and the bench play them.

All have the Circle's aerial and coils; what is new in each is the detector.
"""

from dataclasses import replace

from solutions.unit04_crystal_set import crystal_set
from solutions.unit06_reaction.network import ANODE_FILAMENT, ANODE_WIRING, SALTMARSH_SET
from solutions.unit07_oscillation.stage import BYPASS, GENTLE_STAGE, SALTMARSH_STAGE, Stage

COUPLING = 2e-6, 40e-6, SALTMARSH_SET.aerial_tuned  # henry: aerial far off, pushed home, and as the set is drawn
PHONES_CONDENSER = 1e-9  # farad, behind the crystal, as in the lesson
ISOLATING = "type 32"

# A crystal with its load is a grid with its leak, but that it also leaks backwards; and there is no valve behind it.
CRYSTAL_STAGE = Stage(
    amplification_factor=1.0,
    perveance=0.0,
    offset=0.0,
    supply=0.0,
    load_resistance=crystal_set.LOAD,
    bypass_capacitance=BYPASS,
    leak_resistance=crystal_set.LOAD,
    leak_return=crystal_set.SATURATION_CURRENT * crystal_set.LOAD,
    grid_capacitance=PHONES_CONDENSER,
    zero_current=crystal_set.SATURATION_CURRENT,
    slope_voltage=crystal_set.SLOPE_VOLTAGE,
    grid_anode=0.0,
    grid_filament=0.0,
)
UNCOUPLED = replace(SALTMARSH_SET, tuned_tickler=0.0, aerial_tickler=0.0)
CRYSTAL_WINDINGS = replace(
    UNCOUPLED,
    transconductance=0.0,
    grid_anode_capacitance=0.0,
    grid_conductance=crystal_set.SATURATION_CURRENT / crystal_set.SLOPE_VOLTAGE,
)
BOTH_WAYS = {"gentle": GENTLE_STAGE, "fierce": SALTMARSH_STAGE}
# One valve: no tickler to speak of, no choke; the condenser across the telephones holds the anode all but still at the carrier.
VALVE_WINDINGS = replace(
    UNCOUPLED, tickler_inductance=0.1e-6, throttle_capacitance=BYPASS, anode_capacitance=ANODE_FILAMENT + ANODE_WIRING
)
