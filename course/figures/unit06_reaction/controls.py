"""Reaction, four ways to turn it up: how the last stretch feels on each knob."""

import numpy as np

from course.circle.stations import ACROSS_THE_BAY
from course.figures import figure
from course.figures.kit.style import BRASS, FAINT, INK, KELP, RUST, SEA, SMALL_TEXT, plot
from solutions.unit06_reaction.network import saltmarsh_set
from solutions.unit06_reaction.reaction_controls import close_place, edge, turned
from solutions.unit06_reaction.stability import retuned, ring

STATION = ACROSS_THE_BAY.frequency
LOOKS = {
    "throttle": (SEA, (None, None)),
    "swinging tickler": (KELP, (6, 2)),
    "anode voltage": (RUST, (3, 1.5)),
    "resistor across the tickler": (BRASS, (1.5, 1.5)),
}


@figure(
    caption="**The last stretch on four knobs**, the club's set at 1107 kHz, its fierce feed, weak signals, kept tuned. "
    "Bandwidth "
    "against how far the knob still is from the edge, in hundredths of its whole way. The flatter a curve, the finer the "
    "knob; at the dots the band is 2 kHz.",
    alt="Bandwidth from 0 to 8 kilohertz against the way that is left to the edge, from 8 hundredths of the knob's way "
    "at the left to "
    "none at the right. All four lines fall to nothing at the edge. The throttle's is steepest and reaches 2 kilohertz 1.2 "
    "hundredths before it; the resistor's 1.5; the swinging tickler's 1.8; the anode voltage's is flattest, 3.7.",
)
def last_stretch_of_four():
    drawing, axes = plot(height=3.6)
    left = np.linspace(0.08, 1e-4, 40)
    for name, (colour, dashes) in LOOKS.items():
        begins = edge(name, STATION)
        widths = []
        for way in left[left < begins]:
            there, _ = turned(name, begins - way, saltmarsh_set(STATION))
            widths.append(-ring(retuned(there, STATION))[1] / np.pi)
        axes.plot(-100 * left[left < begins], np.array(widths) / 1e3, color=colour, dashes=dashes)
        axes.plot(100 * (close_place(name, STATION) - begins), 2, "o", color=colour, markersize=5)
    axes.axhline(2, color=FAINT, linewidth=0.8)
    axes.axvline(0, color=INK, linewidth=1.2)
    axes.text(-2.2, 5.1, "throttle", color=SEA, fontsize=SMALL_TEXT)
    axes.text(-5.15, 7.5, "resistor", color=BRASS, fontsize=SMALL_TEXT, ha="right")
    axes.text(-6.3, 5.6, "tickler", color=KELP, fontsize=SMALL_TEXT)
    axes.text(-7.4, 2.5, "anode voltage", color=RUST, fontsize=SMALL_TEXT)
    axes.set(xlim=(-8, 0.3), ylim=(0, 8), xlabel="hundredths of the knob's way to the edge", ylabel="bandwidth, kHz")
    axes.set_xticks([-8, -6, -4, -2, 0], ["8", "6", "4", "2", "0"])
    return drawing
