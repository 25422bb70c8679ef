"""Signal, sections 1 and 2: the wave, its spectrum and its power."""

from typing import Annotated

import numpy as np

from course.circle.stations import LOCAL
from course.figures import figure
from course.figures.kit.style import BRASS, INK, KELP, RUST, SEA, SMALL_TEXT, engineering_axis, label, plot
from course.settings import Between
from solutions.unit01_signal.am_waveform import am_envelope, am_spectrum, am_waveform
from solutions.unit01_signal.sideband_power import sideband_share, total_power

CARRIER, TONE, DEPTH = LOCAL.frequency, 1e3, 0.6
SLOWED = 20e3  # a carrier slow enough to be drawn


@figure(
    caption="One tone of 1 kHz on a carrier, 60 % deep. The carrier is drawn slow, at 20 kHz, so that its cycles can "
    "be seen; at 846 kHz there would be 846 of them in each swell. Dashed: the envelope, and its mirror "
    "image.",
    alt="A fast wave whose height swells and shrinks twice in two milliseconds. A dashed line along its crests is "
    "a cosine between 0.4 and 1.6 volts; its mirror image runs along the troughs.",
)
def wave_and_envelope(depth: Annotated[float, Between("depth of modulation", 0, 1)] = DEPTH):
    drawing, axes = plot()
    time = np.linspace(0, 2e-3, 801)
    axes.plot(time, am_waveform(time, SLOWED, TONE, depth, 1.0), color=SEA, linewidth=0.8)
    for sign in (1, -1):
        axes.plot(time[::4], sign * am_envelope(time[::4], TONE, depth, 1.0), color=RUST, dashes=(4, 2))
    engineering_axis(axes.xaxis, "time", "s")
    axes.set_ylabel("voltage, V")
    axes.set_yticks([sign * (1 + swing) for sign in (-1, 1) for swing in (-depth, 0, depth)])
    return drawing


@figure(
    caption="The same wave sorted by frequency: three steady waves and nothing else. The carrier in the middle is the "
    "same whether or not anyone speaks. The two side frequencies hold the tone, twice over.",
    alt="Three upright lines: 0.3 volts at 845 kilohertz, 1 volt at 846 kilohertz, 0.3 volts at 847 kilohertz.",
)
def spectrum(depth: Annotated[float, Between("depth of modulation", 0, 1)] = DEPTH):
    drawing, axes = plot(height=2.7)
    amplitudes = am_spectrum(depth, 1.0)
    names = ("lower\nside", "carrier", "upper\nside")
    for frequency, amplitude, name in zip((CARRIER - TONE, CARRIER, CARRIER + TONE), amplitudes, names, strict=True):
        axes.plot([frequency, frequency], [0, amplitude], color=SEA, linewidth=3)
        label(axes, f"{name}\n{amplitude:.1f} V", (frequency, amplitude), (0, 4), ha="center", va="bottom", fontsize=SMALL_TEXT)
    axes.set(xlim=(CARRIER - 2.2e3, CARRIER + 2.2e3), ylim=(0, 1.45), yticks=[0, 0.5, 1])
    axes.set_ylabel("amplitude, V")
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="Power sent by a 1 kW transmitter against depth of modulation. Only what lies above the line at 1 kW "
    "carries sound: a third of the whole at full depth, but {{ "
    "number('unit01_signal.sideband_power:sideband_share', 0.3, unit='%', times=100, figures=2) }} of it at a "
    "depth of 0.3, where talk and music spend much of their time.",
    alt="A level band from 0 to 1 kilowatt marked carrier. Above it a wedge marked sidebands, thin at first, "
    "reaching 1.5 kilowatts at depth 1.",
)
def power_against_depth():
    drawing, axes = plot()
    depth = np.linspace(0, 1, 101)
    power = total_power(1e3, depth)
    axes.fill_between(depth, 1e3, color=SEA, alpha=0.25, linewidth=0)
    axes.fill_between(depth, 1e3, power, color=BRASS, alpha=0.45, linewidth=0)
    axes.plot(depth, power, color=BRASS)
    axes.plot(depth, 0 * depth + 1e3, color=SEA, dashes=(5, 2))
    axes.text(0.5, 500, "carrier: no sound in it", ha="center", va="center")
    axes.annotate(
        f"sidebands: at full depth\n{100 * sideband_share(1.0):.0f} % of all",
        (0.93, 1.2e3),
        (0.45, 1.42e3),
        ha="center",
        va="center",
        arrowprops={"arrowstyle": "-", "color": INK},
    )
    axes.set(xlim=(0, 1), ylim=(0, 1.6e3), xlabel="depth of modulation")
    engineering_axis(axes.yaxis, "power", "W")
    return drawing


@figure(
    caption="Too deep. Past a depth of 1 the carrier vanishes twice in each swell, and the envelope that a detector "
    "follows is folded over (heavy line). The ear hears the fold as roughness.",
    alt="Two curves of the envelope over two cycles of the tone. At depth 1 it just touches zero. At depth 1.5 it "
    "would go below zero, dotted; what the detector follows is folded upwards instead, into a small extra "
    "hump.",
)
def too_deep(depth: Annotated[float, Between("depth of modulation", 1, 2)] = 1.5):
    drawing, axes = plot(height=2.7)
    time = np.linspace(0, 2e-3, 401)
    wanted = am_envelope(time, TONE, depth, 1.0)
    axes.plot(time, am_envelope(time, TONE, 1.0, 1.0), color=KELP, dashes=(5, 2), label="depth 1")
    axes.plot(time, np.abs(wanted), color=RUST, label=f"depth {depth:g}, as detected")
    axes.plot(time, np.where(wanted < 0, wanted, np.nan), color=RUST, dashes=(1, 1.5))
    axes.axhline(0, color=INK, linewidth=0.9)
    axes.legend(loc="upper center")
    axes.set(ylim=(-0.7, 4.0), ylabel="envelope, V", yticks=[0, 1, 2])
    engineering_axis(axes.xaxis, "time", "s")
    return drawing
