"""Two stations: what circuits part, and what the detector makes of two carriers at once."""

from typing import Annotated

import numpy as np

from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.style import DASH, DOTS, INK, KELP, PLUM, RUST, SEA, SOFT, engineering_axis, label, marks, plot
from course.settings import Between, Several
from solutions.unit04_crystal_set.crystal_set import SATURATION_CURRENT, SLOPE_VOLTAGE
from solutions.unit08_two_stations.club_evening import CREEK, gannet_rock, local_at
from solutions.unit08_two_stations.rejection import circuit_rejection, coupled_rejection, protection_left
from solutions.unit08_two_stations.weak_signal_suppression import (
    faint_suppression,
    mean_envelope,
    suppression,
    two_carrier_output,
)

WANTED, OFFSET = NEXT_CHANNEL.frequency, LOCAL.frequency - NEXT_CHANNEL.frequency
HIGH_LOAD, PHONES = 1e6, 2e3  # ohm


@figure(
    caption="**What one circuit leaves between the two.** Gannet Rock's carrier over the local's behind one circuit on 855 "
    "kHz, at the hut and at Eelgrass Creek. Above 0 dB Gannet Rock is the stronger. Dashed: 40 dB, which planners ask for "
    "between stations on *one* channel.",
    alt="Decibels against Q from 20 to 20 000. Two parallel lines, level at first, then rising by 20 dB for each ten times "
    "in Q. That of the creek starts at minus 36, is at minus 30 with a Q of 80 and crosses zero at 3000. That of the hut "
    "lies 15 dB lower and crosses zero at 17 000. The dashed line at plus 40 is out of reach of both.",
)
def left_between():
    drawing, axes = plot()
    quality = np.geomspace(20, 20000, 121)
    rejection = circuit_rejection(WANTED, OFFSET, quality)
    for metres, colour, name in ((CREEK, SEA, "the creek, 20 km"), (LOCAL.distance, RUST, "the hut, 4 km")):
        axes.plot(quality, protection_left(gannet_rock(), local_at(metres), rejection), color=colour)
        above = metres == CREEK
        place = 7000 if above else 2500
        at = protection_left(gannet_rock(), local_at(metres), circuit_rejection(WANTED, OFFSET, place))
        label(axes, name, (place, at), (-8, 4) if above else (6, -12), colour, ha="right" if above else "left")
    axes.axhline(0, color=INK, linewidth=0.9)
    axes.axhline(40, color=SOFT, linestyle=DASH, linewidth=1.2)
    label(axes, "40 dB", (21, 40), (0, -15), SOFT)
    axes.set_xscale("log")
    marks(axes.xaxis, [30, 100, 1000, 10000], ["30", "100", "1000", "10 000"])
    axes.set_ylim(-58, 48)
    axes.set_xlabel("Q of the circuit")
    axes.set_ylabel("wanted over local, dB")
    return drawing


@figure(
    caption="**One circuit and two.** How far a station is held back, by its distance from the wanted one at 855 kHz, all with "
    "a Q of 150. Two parted by a valve add up; two coupled critically hold back 6 dB less than those; coupled "
    "three times as closely, they let what stands on a hump through better than the wanted station.",
    alt="Rejection in decibels against offset from minus 40 to plus 40 kilohertz. One circuit: a bowl that reaches 10 dB at 9 "
    "kilohertz. Two parted: twice as deep. Two coupled critically: flat at the bottom, 6 dB less than two parted at the "
    "edges. Coupled closely: two humps, at 8 kilohertz either side, that lie 4 dB below zero.",
)
def one_and_two_circuits(q: Annotated[float, Between("Q of each circuit", 50, 200)] = 150.0):
    drawing, axes = plot()
    offset = np.linspace(-40e3, 40e3, 321)
    alone = circuit_rejection(WANTED, offset, q)
    curves = (
        ("one", alone, SEA, "solid"),
        ("two, parted", 2 * alone, RUST, "solid"),
        ("critical", coupled_rejection(WANTED, offset, q, q, 1 / q), KELP, DASH),
        ("too close", coupled_rejection(WANTED, offset, q, q, 3 / q), PLUM, DOTS),
    )
    for name, rejection, colour, line in curves:
        axes.plot(offset, rejection, color=colour, linestyle=line, label=name)
    for side in (-9e3, 9e3):
        axes.axvline(side, color=SOFT, linewidth=0.9, linestyle=":")
    axes.set_ylim(64, -8)
    axes.legend(loc="lower center", ncols=2, handlelength=1.6, columnspacing=1.0)
    engineering_axis(axes.xaxis, "offset", "Hz")
    axes.set_ylabel("held back by, dB")
    return drawing


@figure(
    caption="**Two carriers beat.** Their common crest, over two beats, for a second carrier of 0.3 and of 0.6 of the first. "
    "Dashed: its mean, which is only a little above the first one's own.",
    alt="Crest against time in beats, for a first carrier of 1. Two waves about 1: one from 0.7 to 1.3, one from 0.4 to 1.6, "
    "with sharp troughs and round crests. Dashed level lines at 1.02 and 1.09.",
)
def the_beat(parts: Annotated[tuple, Several(Between("second carrier, in parts of the first", 0.05, 0.7), 2)] = (0.6, 0.3)):
    drawing, axes = plot(height=2.7)
    turns = np.linspace(0, 2, 241)
    for weak, colour in zip(parts, (RUST, SEA), strict=False):
        axes.plot(turns, np.abs(1 + weak * np.exp(2j * np.pi * turns)), color=colour)
        axes.axhline(mean_envelope(1.0, weak), color=colour, linestyle=DASH, linewidth=1.1)
        label(axes, f"{weak:g} A", (1.0, 1 + weak), (0, 2), colour, ha="center")
    axes.set_ylim(0.3, 1.8)
    axes.set_xlabel("time, beats")
    axes.set_ylabel("crest, parts of A")
    return drawing


@figure(
    caption="**Held down, the exact law and its limits.** What is left of the weak station's programme beside a strong "
    "carrier, germanium on 1 MΩ, depth 0.3. Full: strong carriers of 0.1, 0.3 and 1 V. Dashed: B/(2A), a linear "
    "rectifier's. Each line leaves it on the left, where the weak carrier alone is down on the square law and has little "
    "to lose.",
    alt="Decibels left against the weak carrier over the strong, from 0.01 to 0.9. The dashed line climbs from minus 46 to "
    "minus 7, 20 dB for each ten times. Three full lines are level at the left, at minus 10, minus 20 and minus 30, and "
    "bend up towards the dashed line on the right.",
)
def held_down():
    drawing, axes = plot()
    ratio = np.geomspace(0.01, 0.9, 61)
    for strong, colour in ((0.1, KELP), (0.3, SEA), (1.0, RUST)):
        left = suppression(strong, strong * ratio, 0.3, HIGH_LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)
        axes.plot(ratio, left, color=colour)
        label(axes, f"{strong:g} V", (ratio[0], left[0]), (2, 5), colour)
    axes.plot(ratio, 20 * np.log10(ratio / 2), color=INK, linestyle=DASH, linewidth=1.1)
    axes.set_xscale("log")
    marks(axes.xaxis, [0.01, 0.1, 0.5])
    axes.set_xlabel("weak carrier over strong, B/A")
    axes.set_ylabel("left of it, dB")
    return drawing


@figure(
    caption="**A faint station, and the load.** What a strong carrier leaves of a station so faint that alone it lies far "
    "down on the square law; germanium with 30 mV. On a high load it only harms: dashed, n/A. On 2 kΩ, far below the "
    "crystal's own 30 kΩ, it first *helps*: it lifts the crystal over its bend.",
    alt="Decibels against the strong carrier from 5 millivolts to 2 volts. On 1 megohm a fall from zero to minus 36, along a "
    "dashed line. On 20 kilohms the same, 8 dB higher. On 2 kilohms a hill first: plus 10 at 0.15 volts, zero again at half a "
    "volt.",
)
def faint_station():
    drawing, axes = plot()
    strong = np.geomspace(5e-3, 2, 121)
    for load, colour, name in ((PHONES, RUST, "2 kΩ"), (20e3, KELP, "20 kΩ"), (HIGH_LOAD, SEA, "1 MΩ")):
        left = faint_suppression(strong, load, SATURATION_CURRENT, SLOPE_VOLTAGE)
        axes.plot(strong, left, color=colour)
        place = 88 if load == PHONES else 70
        label(axes, name, (strong[place], left[place]), (4, 6 if load == PHONES else 3), colour)
    limit = strong > 0.06
    axes.plot(strong[limit], 20 * np.log10(SLOPE_VOLTAGE / strong[limit]), color=INK, linestyle=DASH, linewidth=1.1)
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.set_xscale("log")
    marks(axes.xaxis, [0.01, 0.1, 1], ["10 mV", "0.1 V", "1 V"])
    axes.set_xlabel("the strong carrier")
    axes.set_ylabel("left of the faint one, dB")
    return drawing


@figure(
    caption="**Which programme wins?** The wanted programme over the other one in the headphones, both modulated alike, "
    "against how its carrier stands over the other at the detector. Dotted: the carriers themselves. Far up on the "
    "crystal's curve (1 V) the detector sides with the stronger and doubles the decibels; far down on it (10 mV) squares "
    "do the same.",
    alt="Decibels of programme against decibels of carrier, from minus 20 to plus 20. Two curves that nearly fall "
    "together, through zero, about twice as steep as the dotted diagonal: where the carrier is 10 above, the programme is "
    "20 and 25 above.",
)
def which_wins():
    drawing, axes = plot()
    above = np.concatenate([np.linspace(-20, -1, 20), np.linspace(1, 20, 20)])
    for total, colour, line in ((1.0, SEA, "solid"), (0.01, RUST, DASH)):
        axes.plot(above, programme_over_other(above, total), color=colour, linestyle=line, label=f"{total:g} V")
    axes.plot(above, above, color=SOFT, linestyle=":")
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.legend(loc="upper left")
    axes.set_xlabel("wanted carrier over the other, dB")
    axes.set_ylabel("its programme, dB")
    return drawing


def programme_over_other(above: np.ndarray, stronger: float, load: float = HIGH_LOAD) -> np.ndarray:
    """Decibels by which one programme stands over the other, when its carrier stands so many above; the stronger in volts."""
    wanted, other = (stronger * 10 ** (np.minimum(side * above, 0.0) / 20) for side in (1, -1))
    return 20 * np.log10(tone_of(wanted, other, load) / tone_of(other, wanted, load))


def tone_of(carrier: np.ndarray, beside: np.ndarray, load: float, depth: float = 0.1) -> np.ndarray:
    """Volts by which the detector's output swings with one carrier's modulation, another beside it."""
    high, low = (
        two_carrier_output(carrier * factor, beside, load, SATURATION_CURRENT, SLOPE_VOLTAGE)
        for factor in (1 + depth, 1 - depth)
    )
    return high - low
