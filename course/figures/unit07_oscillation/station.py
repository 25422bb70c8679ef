"""Oscillation: what a station's carrier takes of the way to the threshold, and what is left when it fades."""

from functools import cache
from typing import Annotated

import numpy as np

from course.circle.oscillating import fierce, gentle
from course.circle.set_in_hand import aerial_crest
from course.circle.stations import NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.style import INK, KELP, RUST, SEA, label, marks, plot
from course.settings import Between
from solutions.unit01_signal.channel_plan import FIRST_AND_LAST
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.station_on import margin_used, on_station, threshold_in_silence

CRESTS = np.array([3e-5, 3e-4, 2e-3, 1e-2, 0.1])  # volt
SWEEP, LEAST, MOST = 0.6, 1e-4, 10e-3  # second each way; volt, crest


@figure(
    caption="**What a carrier uses up.** The fierce set, tuned in, on three frequencies: of the throttle's way to the edge in "
    "silence, how much a station takes away, against the crest of its bare carrier in the club's aerial (engine of this unit). "
    "Level at the right: there the edge has come down to where the set stops by itself. The gentle set: "
    "nothing, at any strength.",
    alt="The carrier's crest in the aerial from thirty microvolts to a tenth of a volt on a logarithmic scale. Three curves "
    "rise from next to nothing at thirty microvolts, through 7 per cent at two millivolts on 531 kilohertz, 9 on 855 and 13 on "
    "1602, to a level of 18, 19 and 13 per cent.",
)
def margin_used_up():
    drawing, axes = plot()
    for frequency, colour, mark, above in (
        (FIRST_AND_LAST[9_000][0], KELP, "s", -15),
        (NEXT_CHANNEL.frequency, SEA, "o", 6),
        (FIRST_AND_LAST[9_000][1], RUST, "^", 6),
    ):
        used = [100 * margin_used(frequency, float(crest)) for crest in CRESTS]
        axes.semilogx(CRESTS, used, mark + "-", color=colour)
        label(axes, f"{frequency / 1e3:.0f} kHz", (CRESTS[-1], used[-1]), (0, above), colour, ha="right")
    gannet = aerial_crest(NEXT_CHANNEL.field)
    axes.axvline(gannet, color=INK, linewidth=0.8, linestyle=":")
    label(axes, "Gannet Rock", (gannet, 0.6), (5, 0), INK)
    axes.set_ylim(-0.5, 23)
    marks(axes.xaxis, [1e-5, 1e-4, 1e-3, 1e-2, 0.1], ["10 µV", "100 µV", "1 mV", "10 mV", "0.1 V"])
    axes.set_xlabel("carrier in the aerial, crest")
    axes.set_ylabel("margin used, %")
    return drawing


@cache
def up_and_down(fierce_one: bool, part: float) -> tuple[np.ndarray, np.ndarray]:
    """Crests of a carrier that comes up and fades, and the swings on the tuned circuit, the throttle at a part of its edge."""
    in_hand = fierce() if fierce_one else gentle()
    throttle = part * threshold_in_silence(in_hand.frequency, stage=in_hand.stage)
    there = on_station(in_hand.frequency, throttle, stage=in_hand.stage)
    rising = np.geomspace(LEAST, MOST, round(SWEEP * RATE))
    emf = np.concatenate([rising, rising[::-1]])
    swing = np.abs(follow(emf, RATE, in_hand.frequency, there, in_hand.stage, start(in_hand.stage)).grid)
    middle = [swing[max(place - 480, 0) : place + 480].mean() for place in range(0, swing.size, 480)]
    return emf[: swing.size : 480], np.array(middle)


@figure(
    caption="**Up with the station, and not down again.** Swing on the tuned circuit while a carrier on 855 kHz comes up "
    "(full) and fades (dashed), both throttles 7 % short of the edge. The fierce set is carried over and stays over; it stops "
    "only when its throttle is turned back.",
    alt="Both scales logarithmic: the carrier's crest from a tenth of a millivolt to ten, the swing from six millivolts to "
    "five volts. The gentle set's swing rises and goes back along one line. The fierce set's bends up steeply, leaps near "
    "one and a half millivolts to five volts, and on the way back stays there to the end.",
)
def up_with_the_station(short: Annotated[float, Between("throttle short of the edge", 5, 9, "%")] = 7.0):
    drawing, axes = plot()
    for fierce_one, colour, name, below in ((True, RUST, "fierce", 8), (False, SEA, "gentle", -16)):
        crest, swing = up_and_down(fierce_one, 1 - short / 100)
        half = crest.size // 2
        axes.loglog(crest[:half], swing[:half], color=colour)
        axes.loglog(crest[half:], swing[half:], color=colour, linestyle="--")
        at = half + half // 2
        label(axes, name, (crest[at], swing[at]), (0, below), colour)
    axes.set_xlabel("carrier in the aerial, crest")
    axes.set_xticks([1e-4, 1e-3, 1e-2], ["0.1 mV", "1 mV", "10 mV"])
    axes.set_yticks([0.01, 0.1, 1, 10], ["10 mV", "0.1 V", "1 V", "10 V"])
    axes.set_ylabel("swing")
    return drawing
