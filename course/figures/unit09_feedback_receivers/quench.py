"""Super-regeneration: bursts, the two laws of loudness, selectivity."""

from typing import Annotated

import numpy as np

from course.circle.quenched import (
    DECAY,
    FREQUENCY,
    HALF,
    LIMIT,
    LINEAR,
    LOGARITHMIC,
    QUALITY,
    growth,
    heard,
    noise_start,
)
from course.figures import figure
from course.figures.kit.style import INK, KELP, RUST, SEA, SOFT, engineering_axis, label, plot
from course.settings import Between
from solutions.unit03_tuned_circuit.response_curve import relative_response as one_circuit
from solutions.unit07_oscillation.build_up import amplitude
from solutions.unit09_feedback_receivers.quench import relative_response, signal_start


def swing_in_time(emf: float, feedback: float, cycles: int, points: int = 60) -> tuple[np.ndarray, np.ndarray]:
    """Seconds and volts, crest, burst after burst, when each starts from the signal."""
    since = np.linspace(0, HALF, points, endpoint=False)
    rising = amplitude(since, signal_start(FREQUENCY, emf, growth(feedback), DECAY), LIMIT, growth(feedback))
    one = np.concatenate([rising, rising[-1] * np.exp(-DECAY * since)])
    return np.concatenate([np.concatenate([since, HALF + since]) + 2 * HALF * n for n in range(cycles)]), np.tile(one, cycles)


@figure(
    caption="**Bursts.** Swing of the quenched set through three quench cycles, with a signal and with one a tenth as strong. "
    "Above, the growth is stopped early: the bursts are as the signals. Below, it goes on to the limit: all bursts are as "
    "high, but the stronger signal's begin sooner.",
    alt="Two plots of swing against time over three cycles. Above: rounded spikes, those of the strong signal ten times as "
    "high as those of the weak one. Below: flat-topped bursts of the same height; those of the strong signal start a few "
    "microseconds earlier and so are wider.",
)
def bursts(
    strong: Annotated[float, Between("the stronger signal, in the coil", 1e-6, 33e-6, "V")] = 30e-6,
    weak: Annotated[float, Between("the weaker signal, in the coil", 1e-7, 33e-6, "V")] = 3e-6,
):
    drawing, axes = plot(2, height=4.2)
    for row, feedback in zip(axes, (LINEAR, LOGARITHMIC), strict=True):
        for emf, colour, dash in ((strong, SEA, "-"), (weak, RUST, "--")):
            time, swing = swing_in_time(emf, feedback, 3)
            row.plot(time, swing, color=colour, linestyle=dash, label=f"{1e6 * emf:.3g} µV")
        row.set_ylabel("swing, V")
    axes[0].legend(loc="upper right", ncols=2)
    axes[0].set_ylim(0, 0.7)
    axes[1].set_ylim(0, 3.4)
    engineering_axis(axes[1].xaxis, "time", "s")
    return drawing


@figure(
    caption="**Two laws.** Mean swing against the signal in the coil. Linear: ten times the signal, ten times the swing. "
    "Logarithmic: ten times the signal adds always the same, and a hundred times the signal does not even double it. "
    "Dotted: where the signal's start equals that of the circuit's own heat.",
    alt="Mean swing in volts against signal from a tenth of a microvolt to a millivolt, on a logarithmic axis. The linear "
    "mode's curve lies at nothing and then shoots up at the right. The logarithmic mode's is a straight rising line. A "
    "dotted upright at some tenths of a microvolt.",
)
def two_laws():
    drawing, axes = plot()
    emf = np.geomspace(1e-7, 2e-4, 200)
    for feedback, colour, name, place in ((LOGARITHMIC, SEA, "logarithmic", 60), (LINEAR, RUST, "linear", 172)):
        start = signal_start(FREQUENCY, emf, growth(feedback), DECAY)
        mean = heard(start, feedback)
        axes.semilogx(emf, mean, color=colour)
        side = ("left", (6, -16)) if feedback == LOGARITHMIC else ("right", (-8, 4))
        label(axes, name, (emf[place], mean[place]), side[1], colour, ha=side[0])
    heat = np.sqrt(2) * noise_start(LOGARITHMIC) / signal_start(FREQUENCY, 1.0, growth(LOGARITHMIC), DECAY)
    axes.axvline(heat, color=INK, linestyle=":", linewidth=1.1)
    axes.set_xticks([1e-7, 1e-6, 1e-5, 1e-4], ["0.1 µV", "1 µV", "10 µV", "100 µV"])
    axes.set_ylim(bottom=0)
    axes.set_xlabel("signal in the coil")
    axes.set_ylabel("mean swing, V")
    return drawing


@figure(
    caption="**Not sharp.** What a signal off tune leaves: the quenched set in logarithmic trim; the same circuit (Q 60) with "
    "no reaction; and with reaction that makes 90 % of the loss good, without a quench.",
    alt="Response in decibels against offset up to 1 megahertz either side of 30 megahertz. The steadily reacting circuit is a "
    "narrow peak. The plain circuit is broad. The quenched set has a round top of its own, between the two near the "
    "middle, and falls fastest far out.",
)
def not_sharp():
    drawing, axes = plot()
    offset = np.linspace(-1e6, 1e6, 301)
    quenched = relative_response(offset, growth(LOGARITHMIC), DECAY)
    for response, colour, dash, name, place in (
        (quenched, SEA, "-", "quenched", 205),
        (np.abs(one_circuit(FREQUENCY + offset, FREQUENCY, QUALITY)), SOFT, ":", "Q 60", 250),
        (np.abs(one_circuit(FREQUENCY + offset, FREQUENCY, 10 * QUALITY)), KELP, "--", "Q 600", 96),
    ):
        level = 20 * np.log10(response)
        axes.plot(offset, level, color=colour, linestyle=dash)
        side = ("right", (-6, 2)) if place < 150 else ("left", (4, 5))
        label(axes, name, (offset[place], level[place]), side[1], colour, ha=side[0])
    engineering_axis(axes.xaxis, "offset", "Hz")
    axes.set_ylabel("response, dB")
    return drawing
