"""The isolating stage: what it keeps from the aerial."""

import numpy as np

from course.circle.oscillating import STRAY
from course.circle.stations import NEXT_CHANNEL as STATION
from course.figures import figure
from course.figures.kit.style import INK, RUST, SEA, label, plot
from solutions.unit09_feedback_receivers.isolated_set import kept_back


@figure(
    caption="**What the stage keeps from the aerial**, on 855 kHz with the Circle's coils, against the stray capacitance from "
    "the tuned circuit to the aerial's lead. Dotted: the stage in its box. With a screened grid the strays decide. Each "
    "peak is where the valve's own capacitance and the strays work against each other: neutralising does that on purpose.",
    alt="Decibels kept back against stray capacitance from 0.001 to 3 picofarads. The screened-grid valve begins near 80 dB, "
    "has a peak beyond the picture's top, and falls by 20 dB for each tenfold capacitance, to under 20 dB at 3 picofarads. The "
    "triode stays near 25 dB, has a peak a little above 1 picofarad, and falls beyond.",
)
def kept_from_the_aerial():
    drawing, axes = plot()
    stray = np.geomspace(1e-15, 3e-12, 240)
    for kind, colour, name, place in (("type 32", SEA, "screened grid", 112), ("type 30", RUST, "triode", 8)):
        kept = kept_back(STATION.frequency, kind, stray)
        axes.semilogx(1e12 * stray, kept, color=colour)
        label(axes, name, (1e12 * stray[place], kept[place]), (4, 7), colour)
    axes.axvline(1e12 * STRAY, color=INK, linestyle=":", linewidth=1.1)
    axes.set_xticks([0.001, 0.01, 0.1, 1], ["0.001", "0.01", "0.1", "1"])
    axes.set_ylim(0, 90)
    axes.set_xlabel("stray capacitance, pF")
    axes.set_ylabel("kept back, dB")
    return drawing
