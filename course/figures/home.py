"""The picture on the first page: the question of the whole course."""

import numpy as np
from matplotlib.figure import Figure

from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.style import BRASS, DASH, INK, RUST, SEA, SMALL_TEXT, engineering_axis, plot
from solutions.unit03_tuned_circuit.response_curve import decibels, relative_response

PLAIN_Q, REACTION_Q = 80, 800


@figure(
    caption="The same coil and condenser, tuned to Gannet Rock at 855 kHz. Alone (Q 80, dashed) the circuit "
    'lets the local station through at {{ number("unit03_tuned_circuit.response_curve:decibels", '
    'value("unit03_tuned_circuit.response_curve:relative_response", 846e3, 855e3, 80), unit="dB", figures=2) }}. With '
    "reaction, nine tenths of its losses made good (Q 800, full line), the local falls to "
    '{{ number("unit03_tuned_circuit.response_curve:decibels", '
    'value("unit03_tuned_circuit.response_curve:relative_response", 846e3, 855e3, 800), unit="dB", figures=2) }}.',
    alt="Two response curves with their peaks at 855 kilohertz. The dashed one is broad: at 846 kilohertz, "
    "where the local station is, it has fallen by only 6 decibels. The full one is a narrow spike: at 846 "
    "kilohertz it has fallen by 25.",
)
def under_the_local() -> Figure:
    drawing, axes = plot()
    frequency = np.linspace(829e3, 871e3, 337)
    for quality, colour, line in ((PLAIN_Q, BRASS, DASH), (REACTION_Q, SEA, "solid")):
        axes.plot(
            frequency, decibels(relative_response(frequency, NEXT_CHANNEL.frequency, quality)), color=colour, linestyle=line
        )
    axes.set_ylim(-34, 4)
    axes.set_xlim(frequency[0], frequency[-1])
    axes.axvline(LOCAL.frequency, color=RUST, linewidth=1, linestyle=":")
    axes.text(LOCAL.frequency - 500, 2, "Saltmarsh Point,\nthe local", color=RUST, ha="right", va="top", size=SMALL_TEXT)
    axes.text(NEXT_CHANNEL.frequency + 1200, 0.8, "Gannet Rock", color=INK, size=SMALL_TEXT)
    axes.text(NEXT_CHANNEL.frequency + 10e3, -6, "alone", color=BRASS, size=SMALL_TEXT)
    axes.text(NEXT_CHANNEL.frequency + 4.2e3, -15, "with reaction", color=SEA, size=SMALL_TEXT)
    engineering_axis(axes.xaxis, "frequency", "Hz")
    axes.set_ylabel("response, dB")
    return drawing
