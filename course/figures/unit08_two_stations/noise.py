"""Two stations: the noise of place, sky and set over the dial, and which of noise and ear decides what is heard."""

from typing import Annotated

import numpy as np

from course.figures import figure
from course.figures.kit.style import BRASS, DASH, DOTS, INK, KELP, PLUM, RUST, SEA, SOFT, engineering_axis, label, marks, plot
from course.settings import Between
from solutions.unit06_reaction.network import DIAL
from solutions.unit08_two_stations import club_noise as club
from solutions.unit08_two_stations.signal_to_noise import thermal_noise

GAINS = np.geomspace(3, 3000, 61)


@figure(
    caption="**What there is to be heard through**, as a field at the hut, r.m.s. in the 9 kHz of a channel. The place is the "
    "median of Recommendation ITU-R P.372's *country*, or *quiet country*, with its sky of a winter's day (12 to 16 h) or "
    "night (20 to 24 h). The set's own noise is told as the field that would make as much.",
    alt="Microvolts a metre, and decibels above one, against frequency from 530 to 1600 kilohertz. All curves fall. Country by "
    "night runs from 8 down to 4.5; country by day from 4.7 to 3.0; quiet country by night a little under country by night; "
    "quiet country by day from 1 to 0.6. Far below, the set's own noise falls from 0.17 to 0.02.",
)
def noise_on_the_dial():
    drawing, axes = plot(height=3.5)
    frequency = np.linspace(*DIAL, 81)
    curves = (
        ("country, night", club.outside_field(frequency, "winter night", "country"), SEA, "solid", 6e-6),
        ("country, day", club.outside_field(frequency, "winter day", "country"), RUST, DASH, 2e-6),
        ("quiet country, day", club.outside_field(frequency, "winter day", "quiet country"), KELP, DOTS, 9.5e-7),
        ("the set's own", club.own_noise(frequency) / club.AERIAL_HEIGHT, PLUM, "solid", 6e-8),
    )
    for name, values, colour, line, height in curves:
        axes.plot(frequency, values, color=colour, linestyle=line)
        axes.annotate(name, (DIAL[1], height), color=colour, ha="right")
    night = club.outside_field(frequency, "winter night", "quiet country")
    axes.plot(frequency, night, color=BRASS, linestyle=(0, (5, 2, 1.5, 2)), linewidth=1.4)
    axes.annotate("quiet, night", (0.56e6, 1.75e-6), color=BRASS)
    axes.annotate(
        "", (0.62e6, 5.7e-6), xytext=(0.64e6, 2.5e-6), arrowprops={"arrowstyle": "-", "color": BRASS, "linewidth": 0.9}
    )
    axes.set_yscale("log")
    axes.set_ylim(1.5e-8, 1.5e-5)
    places = 1e-6 * np.array([0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10])
    marks(axes.yaxis, places, ["0.02", "0.05", "0.1", "0.2", "0.5", "1", "2", "5", "10"])
    axes.set_ylabel("field in 9 kHz, µV/m")
    decibels = axes.secondary_yaxis(
        "right", functions=(lambda v: 20 * np.log10(np.maximum(v, 1e-12) / 1e-6), lambda d: 1e-6 * 10 ** (np.asarray(d) / 20))
    )
    decibels.set_yscale("linear")
    decibels.set_yticks([-30, -20, -10, 0, 10, 20], ["−30", "−20", "−10", "0", "10", "20"])
    decibels.set_ylabel("dB above 1 µV/m")
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="**What decides.** The least carrier, with a tone of 30 %, that is still heard on 1 MHz, by what circuit and "
    "reaction make of it before the grid. Level: the tone 6 dB above the noise outside, by winter's day and night. Falling: "
    "the tone 20 dB above the threshold of hearing, and 6 dB above the hiss of the detector. The highest line decides.",
    alt="Least field in microvolts a metre against gain from 3 to 3000, both in ratios. Two level lines: country by night at "
    "36, by day at 24, and one at 5 for quiet country by day. The ear's line falls from 210 at a gain of 3 and crosses the "
    "country's day at a gain of 26; the hiss's line lies at half of it. A mark at 11 shows the gain without reaction.",
)
def what_decides(
    ear: Annotated[float, Between("tone over the threshold of hearing", 0, 40, "dB")] = 20.0,
    ratio: Annotated[float, Between("tone over the noise", 6, 30, "dB")] = 6.0,
):
    drawing, axes = plot(height=3.4)
    for when, where, colour, line, name, lift in (
        ("winter night", "country", SEA, "solid", "country, night", 4),
        ("winter day", "country", RUST, DASH, "country, day", -14),
        ("winter day", "quiet country", KELP, DOTS, "quiet country, day", 4),
    ):
        least = club.least_through_noise(1e6, when, where, ratio)
        axes.axhline(least, color=colour, linestyle=line)
        label(axes, name, (GAINS[-1], least), (-2, lift), colour, ha="right")
    by_ear, by_hiss = club.least_by_ear(1.0, ear) / GAINS, club.least_by_hiss(1.0, ratio) / GAINS
    axes.plot(GAINS, by_ear, color=PLUM)
    label(axes, "the ear", (GAINS[2], by_ear[2]), (8, 0), PLUM)
    axes.plot(GAINS, by_hiss, color=SOFT, linestyle=DASH)
    axes.annotate("hiss", (3.3, 16e-6), color=SOFT, va="top")
    plain = club.plain_gain(1e6)
    axes.axvline(plain, color=INK, linewidth=0.9, linestyle=":")
    label(axes, "no reaction", (plain, 1.05e-6), (3, 3), INK)
    axes.set_xscale("log")
    axes.set_yscale("log")
    axes.set_xlim(GAINS[0], GAINS[-1])
    axes.set_ylim(1e-6, 3e-4)
    marks(axes.xaxis, [3, 10, 30, 100, 300, 1000, 3000])
    marks(axes.yaxis, 1e-6 * np.array([1, 3, 10, 30, 100, 300]), ["1", "3", "10", "30", "100", "300"])
    axes.set_xlabel("volts on the grid for each volt in the aerial")
    axes.set_ylabel("least field, µV/m")
    return drawing


@figure(
    caption="The noise of a resistance at 290 K, in a band of 9 kHz and in one of 1 Hz. A hundred times the resistance, ten times the noise.",
    alt="Noise voltage against resistance, both in powers of ten, two straight rising lines. In 9 kilohertz 1 kilohm makes 0.38 "
    "microvolts; in 1 hertz, 4 nanovolts.",
)
def hiss_of_a_resistance():
    drawing, axes = plot(height=2.7)
    resistance = np.geomspace(1, 1e6, 50)
    for band, colour, dashes, words in ((9e3, SEA, (None, None), "9 kHz"), (1.0, BRASS, (5, 2), "1 Hz")):
        axes.loglog(resistance, 1e9 * thermal_noise(resistance, band, 290.0), color=colour, dashes=dashes, label=words)
    axes.loglog(1e3, 1e9 * thermal_noise(1e3, 1.0, 290.0), "o", color=RUST)
    axes.annotate("4 nV", (1e3, 4.0), (2, -14), textcoords="offset points", color=RUST)
    axes.set(xlabel="resistance, Ω", ylabel="noise, nV", xlim=(1, 1e6), xticks=[1, 1e2, 1e4, 1e6])
    axes.legend(loc="upper left")
    return drawing
