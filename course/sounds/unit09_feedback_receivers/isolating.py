"""The neighbour again: the same oscillating set with its aerial on the coil, and behind two kinds of isolating stage."""

import numpy as np

from course.circle.levels import FULL_SCALE, RATE
from course.circle.oscillating import NEXT_DOOR, SHUT, STRAY, field_of, fierce, ordinary, swing_beyond
from course.circle.set_in_hand import aerial_crest, dialled, moments, noise_emf, station_emf, turned
from course.circle.stations import NEXT_CHANNEL as STATION
from course.sounds import sound
from solutions.unit09_feedback_receivers.isolated_set import kept_back

PIECE = 6.0  # seconds with each


@sound(
    caption="**The same, next door.** Mabel Sedge's ordinary set on Gannet Rock, while Orla's fierce set oscillates 30 m away "
    "and is tuned to and fro: aerial on the coil; behind a triode; behind a screened-grid valve in a box. Played thirty "
    "times (30 dB) stronger than the scale, as in unit 7.",
    transcript="Chirps that drown voice and tune altogether, down and up. Then the voice is there, and the chirps lie under "
    "it, thin but plain. Then voice and tune alone, in a little hiss.",
    full_scale=FULL_SCALE / 30,
    moments=((0.0, "on the coil"), (6.0, "behind a triode"), (12.0, "screened grid")),
)
def next_door_again():
    time, fine = moments(3 * PIECE)
    decibels = np.array([0.0, *(kept_back(STATION.frequency, kind, STRAY) for kind in ("type 30", "type 32"))])
    swing = swing_beyond(fierce(), 1.03) * 10 ** (-decibels[np.minimum(fine // PIECE, 2).astype(int)] / 20)
    offset = turned(fine % PIECE, (0.5, 4500), (2.8, -4500), (3.2, -4500), (5.5, 4500))
    disturbance = aerial_crest(field_of(1.0, fierce(), NEXT_DOOR)) * swing * np.conj(dialled(fine, offset))
    emf = station_emf(fine, STATION) + disturbance + noise_emf(fine, STATION.frequency)
    _, current = ordinary().played(emf, np.full(time.size, SHUT))
    return ordinary().in_the_ear(current), RATE
