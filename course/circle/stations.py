"""The stations of `solutions/unit01_signal/club_stations.py`, and where each stands on the Circle's chart."""

from solutions.unit01_signal.club_stations import (
    ACROSS_THE_BAY,
    FAR_OVER_SEA,
    LOCAL,
    NEXT_CHANNEL,
    NIGHT_ONLY,
    ON_THE_HEATH,
    STATIONS,
)
from solutions.unit01_signal.club_stations import GROUNDS as GROUNDS
from solutions.unit01_signal.club_stations import Station as Station

BY_FREQUENCY = tuple(sorted((*STATIONS, NIGHT_ONLY), key=lambda station: station.frequency))
BEARINGS = {LOCAL: 20, ACROSS_THE_BAY: 100, NEXT_CHANNEL: 330, ON_THE_HEATH: 265, FAR_OVER_SEA: 130}  # degree, from the hut
