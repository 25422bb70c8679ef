"""The aerial, the coils and the condensers on the Circle's table.

What the references of `solutions/` work with is theirs: `club_coil` the tube and its wire, `crystal_set` aerial, earth and the
two inductances, `network` the set with its tickler.
"""

from solutions.unit02_coil_and_condenser.club_coil import COVERED, FORMER, TURNS
from solutions.unit02_coil_and_condenser.mutual_inductance import coaxial_coils

FIRST_TOP = 15.0  # metre: of the aerial until unit 4 gives it a longer one, as high and with the same earth
FIRST_AERIAL_COIL = 200e-6  # henry, in unit 3

DIAMETER, LENGTH = FORMER + COVERED, TURNS * COVERED  # metre: the long coil, wound close
COIL_Q = 100  # on the local's frequency
LOCAL_CONDENSER = 177e-12  # farad: what it takes to bring the local station in

LOOSE_TURNS = 15  # of Nell's second coil, on a tube of the same size
LOOSE_GAPS = 160e-3, 80e-3, 40e-3, 20e-3, 10e-3  # metre, from the long one: the five places of the sound
CRYSTAL_AERIAL_TURNS = 19  # of the crystal set's aerial coil
AERIAL_TURNS, TICKLER_TURNS = 12, 18  # of the reaction set's windings
AERIAL_GAP, TICKLER_GAP = 8.4e-3, 25e-3  # metre: from the tuned winding to the aerial's, and to the tickler

CONDENSER_LEAST, CONDENSER_MOST = 12e-12, 365e-12  # farad: the tuning condenser, its plates out and in
STRAY = 25e-12  # farad, of coil and wiring
WITH_STRAYS = 30e-12, CONDENSER_MOST  # farad: as unit 2 draws plates for it
PLATES, PLATE_GAP, CUT_OUT = 23, 0.35e-3, 9e-3  # plates, metre, metre


def middle_to_middle(turns: int, gap: float) -> float:
    """Metres between the middles of the long coil and of another winding, `gap` metres between their near ends."""
    return gap + (LENGTH + turns * COVERED) / 2


def mutual(turns: int, gap: float) -> float:
    """Henries between the long coil and another winding on a tube of its size, for the space between their near ends."""
    return coaxial_coils(TURNS, DIAMETER, LENGTH, turns, DIAMETER, turns * COVERED, middle_to_middle(turns, gap))
