"""Oscillation: one turn too far, as the set's owner hears it and as the neighbour does; on the scale of units 4 to 6.

The set and its gentler form, its stations and its knobs are in `course.circle.set_in_hand`.
"""

import numpy as np

from course.circle.levels import FULL_SCALE, RATE
from course.circle.oscillating import NEXT_DOOR, SHUT, STATION, field_of, fierce, gentle, ordinary, stuttering, swing_beyond
from course.circle.set_in_hand import aerial_crest, dialled, moments, noise_emf, station_emf, turned
from course.sounds import sound

SINGS = -17.5  # hertz: the gentle set, 3 % over the edge, sings so much above the frequency at which it would ring
FADED = 10.0  # times


@sound(
    caption="**One turn too far.** Gannet Rock on the Circle's set, made gentle. Three seconds with the reaction off; then "
    "it is advanced, slowly, until the programme is almost too loud; then over the edge. On the scale of units 4 to 6. "
    "Turn down first!",
    transcript="Next to nothing. Then a voice comes up, thin and clear; a tune; the voice again, loud and dull. Over the "
    "edge, at 16 seconds, it does not whistle at first: the station holds the set, and the tune only grows thick and "
    "rough. Then the set breaks loose: a growl under the voice, which climbs into a whistle, louder than the programme "
    "ever was, and the voice in it is torn.",
    full_scale=FULL_SCALE,
    moments=((0.0, "off"), (3.0, "advanced"), (13.0, "almost too loud"), (16.0, "over"), (20.0, "loose")),
)
def over_the_edge():
    time, fine = moments(24)
    edge = gentle().edge
    throttle = turned(time, (3, SHUT), (8, 0.9 * edge), (13, 0.985 * edge), (16, 0.99 * edge), (17, 1.01 * edge),
                      (24, 1.04 * edge))  # fmt: skip
    offset = turned(fine, (17, 0), (18.5, 60), (20, 60), (24, 1500))
    emf = station_emf(fine, STATION) * dialled(fine, offset) + noise_emf(fine, STATION.frequency)
    _, current = gentle().played(emf, throttle)
    return gentle().in_the_ear(current), RATE


DIAL = (0.5, 4500), (3, -4500), (3.3, -4500), (5.8, 4500), (6.2, 4500), (9.5, 0)  # second, hertz above the station


@sound(
    caption="**Tuning in with the set just oscillating.** The dial is turned across Gannet Rock and back; then slowly on "
    "to it, to zero beat; then the reaction is taken back.",
    transcript="A thin high whistle falls, faster and faster, to nothing, and climbs again: a chirp. The same once more. A "
    "third time it falls slowly, and near the bottom it becomes a growl and stops: now the programme is there, thick and "
    "rough. The reaction goes back, and the programme is clear.",
    full_scale=FULL_SCALE,
    moments=((0.5, "across"), (3.3, "and back"), (6.2, "on to it"), (9.5, "zero beat"), (12.5, "reaction back")),
)
def tuning_in():
    time, fine = moments(19)
    edge = gentle().edge
    throttle = turned(time, (11.5, 1.03 * edge), (13, 0.985 * edge))
    emf = station_emf(fine, STATION) * dialled(fine, turned(fine, *DIAL)) + noise_emf(fine, STATION.frequency)
    _, current = gentle().played(emf, throttle)
    return gentle().in_the_ear(current), RATE


@sound(
    caption="**The same next door.** An ordinary one-valve set without reaction, tuned to Gannet Rock, its aerial 30 m "
    "from that of the set which oscillates. First nobody oscillates; then the gentle set does, then the fierce one, each "
    "with its dial turned as in the sound before. All of it is played thirty times (30 dB) stronger than the scale, or "
    "there would be nothing to hear.",
    transcript="A voice and a tune, soft, in a little hiss. Then, with the gentle set, thin chirps behind them, down and "
    "up, down and up. Then, with the fierce set, the chirps cut through everything: voice and tune sink to nothing under "
    "each, and at zero beat they swell, thicken and fade.",
    full_scale=FULL_SCALE / 30,
    moments=((0.0, "nobody"), (4.0, "gentle"), (14.0, "fierce")),
)
def next_door():
    time, fine = moments(24)
    swings = turned(
        fine,
        (3.99, 0),
        (4, swing_beyond(gentle(), 1.03)),
        (13.99, swing_beyond(gentle(), 1.03)),
        (14, swing_beyond(fierce(), 1.03)),
    )
    offset = turned(fine % 10 - 4 + 10 * (fine % 10 < 4), *DIAL)
    disturbance = aerial_crest(field_of(1.0, gentle(), NEXT_DOOR)) * swings * np.conj(dialled(fine, offset))
    emf = station_emf(fine, STATION) + disturbance + noise_emf(fine, STATION.frequency)
    _, current = ordinary().played(emf, np.full(time.size, SHUT))
    return ordinary().in_the_ear(current), RATE


@sound(
    caption="**Near zero beat.** Bare carriers, the gentle set just oscillating, its dial turned slowly across. First a "
    "carrier as strong as Gannet Rock; then one ten times weaker.",
    transcript="A whistle falls, and from one moment to the next there is silence: the strong carrier has smothered it. It "
    "comes back as suddenly, and climbs. Then a much softer whistle falls lower and lower, to a growl, to single thuds; a "
    "short silence; thuds again, a growl, and the whistle climbs away.",
    full_scale=FULL_SCALE,
    moments=((0.0, "strong"), (6.0, "ten times weaker")),
)
def near_zero_beat():
    parts = []
    for weaker, farthest, seconds in ((1, 800.0, 6), (10, 250.0, 9)):
        time, fine = moments(seconds)
        offset = turned(fine, (0.2, farthest), (seconds - 0.2, -farthest)) - SINGS
        emf = aerial_crest(STATION.field / weaker) * dialled(fine, offset) + noise_emf(fine, STATION.frequency)
        _, current = gentle().played(emf, np.full(time.size, 1.03 * gentle().edge))
        parts.append(gentle().in_the_ear(current))
    return np.concatenate(parts), RATE


@sound(
    caption="**Gentle, then fierce.** Gannet Rock, tuned in. The throttle is opened past the edge and closed again, first "
    "on the gentle set, then on the fierce one.",
    transcript="A voice grows, thickens as the set goes over the edge, and thins again on the way back; nowhere is there a "
    "jump. Then the fierce set: the voice grows, and well short of the edge, with a thump, it is all but gone: a low hoot is "
    "there in its place. The throttle goes on, and comes back a long way, and the hoot stays; then a second thump, and the "
    "voice is there again, soft.",
    full_scale=FULL_SCALE,
    moments=((0.0, "gentle"), (3.3, "over"), (4.6, "back"), (8.0, "fierce"), (9.6, "over"), (12.2, "back"), (14.6, "stops")),
)
def gentle_then_fierce():
    parts = []
    for in_hand, back in ((gentle(), 0.85), (fierce(), 0.75)):
        time, fine = moments(8)
        throttle = in_hand.edge * turned(time, (0, 0.8), (3, 0.99), (3.6, 1.04), (4.2, 1.04), (7.2, back), (8, back))
        emf = station_emf(fine, STATION) + noise_emf(fine, STATION.frequency)
        _, current = in_hand.played(emf, throttle)
        parts.append(in_hand.in_the_ear(current))
    return np.concatenate(parts), RATE


@sound(
    caption="**Squegging.** The gentle set, throttle open to three times its edge, its leak 20 MΩ instead of half a megohm and "
    "a grid condenser of 3 nF, then of 500 pF; no station.",
    transcript="A steady stutter, like a motor-boat far out. Then a faster one: a low, hard buzz.",
    full_scale=FULL_SCALE,
    moments=((0.0, "3 nF"), (3.0, "500 pF")),
)
def stutter():
    parts = [stuttering(condenser, 3.0)[1] for condenser in (3e-9, 500e-12)]
    return np.concatenate(parts), RATE


@sound(
    caption="**A station fades.** Gannet Rock comes up out of almost nothing, is there for a while, and fades to a tenth: "
    "first on the gentle set, then on the fierce one. Both throttles stand still, 7 % short of the edge.",
    transcript="A voice comes up, stays, and sinks away to nothing. Then the fierce set: the voice comes up, a thump, and a "
    "low hoot stands in its place. It sinks with the station, but it does not go: the set sings on.",
    full_scale=FULL_SCALE,
    moments=((0.0, "gentle"), (1.0, "comes up"), (4.0, "fades"), (8.0, "fierce"), (9.0, "comes up"), (12.0, "fades")),
)
def fading():
    time, fine = moments(8)
    strength = np.exp(turned(fine, (1, -np.log(FADED)), (3, 0), (4, 0), (6, -np.log(FADED))))
    emf = strength * station_emf(fine, STATION) + noise_emf(fine, STATION.frequency)
    parts = [one.in_the_ear(one.played(emf, np.full(time.size, 0.93 * one.edge))[1]) for one in (gentle(), fierce())]
    return np.concatenate(parts), RATE


@sound(
    caption="**The carrier's own help.** A station eight times weaker than Gannet Rock. First just short of the edge; then "
    "just over it, at zero beat, the set held by the station. Played twelve times (22 dB) stronger than the scale.",
    transcript="A voice and a tune, faint, in hiss. At the eighth second both come five times as strong, and the hiss with "
    "them: the same voice and tune, near and a little rough.",
    full_scale=FULL_SCALE / 12,
    moments=((0.0, "just short"), (8.0, "over, and held")),
)
def own_help():
    time, fine = moments(16)
    throttle = gentle().edge * turned(time, (7.9, 0.97), (8.1, 1.01))
    emf = station_emf(fine, STATION, STATION.field / 8) + noise_emf(fine, STATION.frequency)
    _, current = gentle().played(emf, throttle)
    return gentle().in_the_ear(current), RATE


@sound(
    caption="**Hiss at the edge.** No station, only the noise of the air. The gentle set is brought to the edge and over "
    "it. Played thirty times (30 dB) stronger than the scale.",
    transcript="Silence. A soft hiss that grows, and narrows to a hollow rush. At the edge it swells within a second to a "
    "rough roar, and beyond it the roar stays.",
    full_scale=FULL_SCALE / 30,
    moments=((0.0, "far below"), (5.0, "near"), (9.0, "the edge")),
)
def hiss():
    time, fine = moments(12)
    throttle = gentle().edge * turned(time, (1, 0.7), (5, 0.97), (8, 0.998), (9, 1.0), (12, 1.03))
    _, current = gentle().played(noise_emf(fine, STATION.frequency), throttle)
    return gentle().in_the_ear(current), RATE
