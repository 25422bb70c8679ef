"""Reaction, section 7: what a narrow band does to the sound."""

import numpy as np

from course.circle.demonstration import demonstration, knobs_turned
from course.circle.levels import RATE
from course.figures import figure
from course.figures.kit.style import BRASS, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, marks, plot
from solutions.unit06_reaction.treble_loss import tone_level, tone_response

BANDS = ((16e3, SEA, (None, None)), (4e3, KELP, (6, 2)), (1e3, BRASS, (3, 1.5)), (300.0, RUST, (None, None)))
HEARD = 20e-6  # pascal: 0 dB of sound pressure
STEP = 0.25  # second


def tone_axis(axes):
    axes.set_xlim(100, 5000)
    marks(axes.xaxis, [100, 300, 1000, 3000])
    axes.set_xlabel("tone, Hz")


@figure(
    caption="What is left of each tone behind four bands, with the carrier on the peak. Each curve is 3 dB down at half its "
    "bandwidth, and from there on falls by 6 dB an octave.",
    alt="Level in decibels against tone from 100 to 5000 hertz. Behind 16 kilohertz it stays level and is 1.4 decibels "
    "down at the right. Behind 4 kilohertz it is 3 down at 2000 hertz and 8 at the right; behind 1 kilohertz, 3 at "
    "500 and 20; behind 300 hertz, 3 at 150 and 30.",
)
def treble_by_bandwidth():
    drawing, axes = plot(height=3.4)
    tone = np.geomspace(100, 5000, 120)
    for width, colour, dashes in BANDS:
        axes.semilogx(tone, tone_level(tone, width), color=colour, dashes=dashes)
        axes.plot(width / 2, tone_level(width / 2, width), "o", color=colour, markersize=5)
    axes.text(105, 0.9, "16 kHz", color=SEA, fontsize=SMALL_TEXT)
    axes.text(2100, -2.6, "4 kHz", color=KELP, fontsize=SMALL_TEXT)
    axes.text(1350, -8, "1 kHz", color=BRASS, fontsize=SMALL_TEXT)
    axes.text(420, -16, "300 Hz", color=RUST, fontsize=SMALL_TEXT, ha="right")
    axes.set(ylim=(-33, 4), ylabel="level, dB")
    marks(axes.yaxis, [-30, -20, -10, 0])
    tone_axis(axes)
    return drawing


@figure(
    caption="The same for a band of 1 kHz and a carrier that stands beside the peak by nothing, 500 Hz, 800 Hz and 2 kHz. The "
    "nearer side frequency then finds the peak, and the carrier does not. So treble comes up, in part far beyond what "
    "was sent.",
    alt="Level in decibels against tone from 100 to 5000 hertz. On the peak it falls from 500 hertz on. With 500 hertz beside, "
    "it stays level to 500 first. With 800 hertz, it rises to plus 1.5 near 700. With 2 kilohertz, a hump of 7 decibels "
    "near 2000.",
)
def beside_the_peak():
    drawing, axes = plot(height=3.4)
    tone = np.geomspace(100, 5000, 160)
    for detuning, colour, dashes, at in (
        (0.0, BRASS, (3, 1.5), (900, -9)),
        (500.0, KELP, (6, 2), (1900, -5)),
        (800.0, SEA, (None, None), (330, 1.6)),
        (2000.0, PLUM, (None, None), (1050, 5)),
    ):
        axes.semilogx(tone, 20 * np.log10(tone_response(tone, 1e3, detuning)), color=colour, dashes=dashes)
        axes.text(*at, f"{detuning:g} Hz", color=colour, fontsize=SMALL_TEXT, ha="right")
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.set(ylim=(-22, 9), ylabel="level, dB")
    marks(axes.yaxis, [-20, -10, 0])
    tone_axis(axes)
    return drawing


@figure(
    caption="Reaction advanced on Gannet Rock, the set with its gentle feed. Above, how loud it is in the ear, each "
    "quarter second "
    "by itself, in decibels over 20 µPa, about the faintest that can be heard: by the engine, the station's own carrier on. "
    "Below, the bandwidth for weak signals.",
    alt="Two plots over 16 seconds. Above, loudness with its syllables: below 20 decibels for two seconds, then climbing "
    "to some 70. Below, bandwidth on a scale of tens: level at 21 kilohertz for two seconds, then falling evenly to "
    "400 hertz.",
)
def turning_it_up():
    drawing, (above, below) = plot(2, height=4.4)
    pressure, _ = demonstration()
    pieces = pressure[: pressure.size // int(STEP * RATE) * int(STEP * RATE)].reshape(-1, int(STEP * RATE))
    time = (np.arange(len(pieces)) + 0.5) * STEP
    loudness = 10 * np.log10(np.mean(pieces**2, axis=1) / HEARD**2)
    above.plot(time, loudness, color=SEA)
    above.set(ylim=(0, 80), yticks=[0, 30, 60], ylabel="in the ear, dB")
    below.semilogy(time, knobs_turned(time)[1], color=RUST)
    marks(below.yaxis, [300, 1000, 3000, 10000], ["300", "1000", "3000", "10 000"])
    below.set(ylim=(250, 30000), ylabel="bandwidth, Hz", xlim=(0, 16))
    engineering_axis(below.xaxis, "time", "s")
    return drawing
