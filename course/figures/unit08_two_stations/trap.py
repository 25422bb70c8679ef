"""Two stations: the wave trap, in the aerial's lead and across the set."""

import numpy as np

from course.circle.stations import ACROSS_THE_BAY, FAR_OVER_SEA, ON_THE_HEATH
from course.figures import figure
from course.figures.kit.parts import Aerial, Coil, Dot, Earth, Line, Resistor, VariableCondenser, schematic
from course.figures.kit.style import DASH, DOTS, INK, KELP, RUST, SEA, SMALL_TEXT, SOFT, engineering_axis, plot
from solutions.unit08_two_stations.club_evening import TRAPPED, with_trap


def trap_parts(d, parallel, top, foot):
    """One trap between two places, drawn upright."""
    (x, high), (_, low) = top, foot
    if parallel:
        d += Coil().at((x - 0.55, high)).to((x - 0.55, low)).color(RUST)
        d += VariableCondenser().at((x + 0.55, high)).to((x + 0.55, low)).color(RUST)
        for y in (high, low):
            d += Line().at((x - 0.55, y)).to((x + 0.55, y)).color(RUST)
    else:
        middle = (high + low) / 2
        d += Coil().at((x, high)).to((x, middle)).color(RUST)
        d += VariableCondenser().at((x, middle)).to((x, low)).color(RUST)


@figure(
    caption="**Two places for a trap**, in red, both tuned to the station that is *not* wanted. Left: coil and condenser "
    "side by side, in the aerial's lead. Right: one after the other, across the set. The set is drawn as a box: all that "
    "the trap sees of it is an impedance.",
    alt="Two small circuits. On the left an aerial whose lead goes down through a coil with a variable condenser beside it and "
    "then to a box marked set, and on to earth. On the right the aerial goes straight to the box, and from the same point a "
    "coil and a variable condenser in series go down to earth.",
)
def two_places():
    with schematic() as d:
        for x, parallel in ((0, True), (4.2, False)):
            d += Aerial().at((x, 4.6))
            if parallel:
                d += Line().at((x, 4.6)).to((x, 4.2))
                trap_parts(d, True, (x, 4.2), (x, 2.6))
                d += Line().at((x, 2.6)).to((x, 2.0))
            else:
                d += Line().at((x, 4.6)).to((x, 2.0))
                d += Dot().at((x, 2.6))
                d += Line().at((x, 2.6)).to((x + 1.4, 2.6))
                trap_parts(d, False, (x + 1.4, 2.6), (x + 1.4, -0.2))
                d += Earth().at((x + 1.4, -0.2))
            d += Resistor().at((x, 2.0)).to((x, 0.4)).label("set", loc="top", ofst=0.15)
            d += Line().at((x, 0.4)).to((x, -0.2))
            d += Earth().at((x, -0.2))
    return d


def marked(axes, low, high):
    """The stations at the foot of the plot, but for the trapped one and its neighbour, whose names the curves would hide."""
    for station in (FAR_OVER_SEA, ACROSS_THE_BAY, ON_THE_HEATH):
        axes.axvline(station.frequency, color=SOFT, linewidth=0.8, linestyle=":")
        axes.text(station.frequency + 6e3, low, station.name, size=SMALL_TEXT, color=SOFT, va="bottom", rotation=90)
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.set_ylim(low - 2, high)


def drawn(part, coils, low, high):
    drawing, axes = plot()
    frequency = np.unique(np.concatenate([np.linspace(550e3, 1600e3, 211), TRAPPED + np.linspace(-30e3, 30e3, 121)]))
    for inductance, colour, line in coils:
        axes.plot(
            frequency, with_trap(frequency, inductance)[part], color=colour, linestyle=line, label=f"{inductance * 1e6:.0f} µH"
        )
    marked(axes, low, high)
    axes.legend(loc="upper right")
    engineering_axis(axes.xaxis, "frequency", "Hz")
    axes.set_ylabel("change at the set, dB")
    return drawing


@figure(
    caption="**A trap in the lead**, tuned to the local, with the hut's aerial and the crystal set. The large coil catches "
    "more of the local, and takes more from the others; and below the local, where it looks like a coil, it tunes the "
    "aerial and lets in *more* than before.",
    alt="Change in decibels from 550 to 1600 kilohertz. With 10 microhenry a narrow notch of minus 22 at 846, a small hump "
    "just below it, and next to nothing elsewhere. With 100 microhenry a notch of minus 42, nine decibels lost above it, "
    "and below it a hump of plus 25 near 683 kilohertz, where Merrow Sound is.",
)
def in_the_lead():
    return drawn(0, ((100e-6, RUST, "solid"), (10e-6, SEA, DASH)), -50, 30)


@figure(
    caption="**A trap across the set**, tuned to the local. Here it is the *small* coil that robs the others: its "
    "condenser is large, and to every station the two together are nearly a short.",
    alt="Change in decibels from 550 to 1600 kilohertz. With 300 microhenry a notch of minus 33 at 846 and little "
    "elsewhere but a hump below it. With 100 microhenry the notch is minus 43, and nine decibels are lost above it. With "
    "10 microhenry minus 63, and 20 to 27 are lost everywhere.",
)
def across_the_set():
    return drawn(1, ((300e-6, KELP, DOTS), (100e-6, RUST, "solid"), (10e-6, SEA, DASH)), -68, 42)
