"""Crystal set, section 6: where the power goes between the transmitter and the ear."""

from collections.abc import Sequence

import numpy as np
from matplotlib.figure import Figure

from course.circle.crystal_set import DEPTH, MUTUAL
from course.circle.stations import ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL, Station
from course.figures import figure
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, marks, plot
from solutions.unit04_crystal_set.crystal_set import SENSITIVITY, losses, power_budget
from solutions.unit04_crystal_set.phone_loudness import least_audible_power

PLACES = ("sent out", "in the wave", "aerial gives", "circuit gives", "crystal takes", "load gets", "tone in it")
JUST_HEARD = float(least_audible_power(1000.0, SENSITIVITY))


def powers(station: Station) -> tuple[float, ...]:
    """Watts at the seven places, for one of the stations."""
    return power_budget(station.power, station.field, station.frequency, MUTUAL, DEPTH)


def level(power):
    """Decibels above a milliwatt."""
    return 10 * np.log10(np.asarray(power) / 1e-3)


def minus(text: str) -> str:
    return text.replace("-", "−")


def budget_diagram(watts: Sequence[float]) -> Figure:
    """A stair of seven powers, each step as long as what is lost on it.

    Parameters
    ----------
    watts : sequence of seven floats, watt, > 0
        As `power_budget` gives them.
    """
    drawing, axes = plot(height=4.7)
    places, levels = np.arange(len(PLACES)), level(watts)
    for place, lost in enumerate(losses(watts)):
        start, end = levels[place : place + 2]
        axes.barh(place + 1, start - end, left=end, height=0.46, color=RUST, alpha=0.55)
        room = max(start, end) < 40
        axes.text(
            max(start, end) + 3 if room else min(start, end) - 4,
            place + 1,
            minus(f"{-lost:+.1f} dB"),
            ha="left" if room else "right",
            va="center",
            fontsize=SMALL_TEXT,
        )
        axes.plot([end, end], [place + 0.72, place + 2.28 if place + 2 < len(PLACES) else place + 1.5], color=INK, linewidth=1)
    axes.plot([levels[0]] * 2, [-0.3, 1.28], color=INK, linewidth=1)
    axes.plot(levels, places, "o", color=INK, markersize=5)
    axes.axvline(level(JUST_HEARD), color=SEA, linewidth=1.3, dashes=(4, 2))
    axes.text(level(JUST_HEARD) + 2, -0.28, "just\nheard", color=SEA, fontsize=SMALL_TEXT, va="center")
    axes.set(yticks=places, yticklabels=PLACES, ylim=(6.6, -0.75), xlim=(-125, 75), xlabel="power, dB above 1 mW")
    marks(axes.xaxis, [-100, -50, 0, 50])
    axes.grid(axis="y", visible=False)
    return drawing


@figure(
    caption="**The budget of Saltmarsh Point**, aerial coil at 20 µH, a tone at a depth of 0.3. Each step is as long as what "
    "is lost on it.",
    alt="A stair going down from 60 decibels above a milliwatt. Between transmitter and wave at the hut 40 decibels are "
    "lost, in the aerial 17, between aerial and tuned circuit 12, from there to the crystal 6, in the crystal 1, and 13.5 "
    "because most of the load's power is no tone. The last step stands at minus 29, far above a dashed line at minus 108, "
    "just heard.",
)
def strong():
    return budget_diagram(powers(LOCAL))


@figure(
    caption="**The budget of Gannet Rock**, the same set. The longest step after the journey is now the crystal's.",
    alt="The same stair. The journey loses 91 decibels; the aerial 17, the coupling 12, the way to the crystal 3, the "
    "crystal 29, and the tone 8.5. It ends at minus 100, only 8 decibels above the dashed line.",
)
def weak():
    return budget_diagram(powers(NEXT_CHANNEL))


@figure(
    caption="Three stations down the same stair. The lines keep their distance as far as the crystal. There the weak one "
    "falls away.",
    alt="Power in decibels above a milliwatt at seven places, a line for each station. From the wave to the crystal "
    "Saltmarsh Point, Curlew Bank and Gannet Rock run nearly parallel, at 20, 2 and minus 31 in the wave. At the load "
    "the first two have lost 1 and 3 decibels, Gannet Rock 29.",
)
def three_stations():
    drawing, axes = plot(height=4.2)
    places = np.arange(len(PLACES))
    for station, colour, dashes, mark, name, side in (
        (LOCAL, SEA, (None, None), "o", (-4, 3.5), "left"),
        (ACROSS_THE_BAY, BRASS, (5, 2), "s", (-38, 5.35), "right"),
        (NEXT_CHANNEL, RUST, (2, 1.5), "^", (-60, 2.5), "right"),
    ):
        axes.plot(level(powers(station)), places, color=colour, dashes=dashes, marker=mark, markersize=5)
        words = station.name if side == "left" else station.name.replace(" ", "\n")
        axes.text(*name, words, color=colour, fontsize=SMALL_TEXT, ha=side, va="center")
    axes.axvline(level(JUST_HEARD), color=PLUM, linewidth=1.3, dashes=(4, 2))
    axes.text(level(JUST_HEARD) + 2, 0.1, "just\nheard", color=PLUM, fontsize=SMALL_TEXT, va="center")
    axes.set(yticks=places, yticklabels=PLACES, ylim=(6.4, -0.4), xlim=(-125, 75), xlabel="power, dB above 1 mW")
    marks(axes.xaxis, [-100, -50, 0, 50])
    return drawing
