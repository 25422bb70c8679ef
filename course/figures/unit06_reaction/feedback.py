"""Reaction, sections 1 to 3: the push in step, negative resistance, sharper and louder."""

from dataclasses import replace
from typing import Annotated

import numpy as np

from course.circle.stations import ACROSS_THE_BAY
from course.figures import figure
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, marks, plot
from course.settings import Between
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.edge import after_rounds
from solutions.unit06_reaction.network import THROTTLE_RANGE, saltmarsh_set
from solutions.unit06_reaction.stability import response, retuned

STATION = ACROSS_THE_BAY.frequency


@figure(
    caption="Two swings, one thing under the other, for an anode circuit that is mostly resistance. The grid's voltage is a "
    "quarter of a swing late. What the tickler induces goes by the *change* of the anode current, and that is a "
    "quarter early. So the push is in step with the current that it pushes.",
    alt="Four waves of the same pitch against time. Current round the coil: crests at the start. Voltage on condenser and "
    "grid: crests a quarter later. Anode current: with the grid. Voltage pushed back into the coil: largest where the "
    "anode current rises fastest, so with crests at the start again.",
)
def push_in_step():
    drawing, rows = plot(4, height=4.6)
    time = np.linspace(0, 2, 201)
    swing = 2 * np.pi * time
    for axes, wave, name, colour in zip(
        rows,
        (np.cos(swing), np.sin(swing), np.sin(swing), np.cos(swing)),
        ("current round the coil", "voltage on the grid", "current of the anode", "pushed back into the coil"),
        (SEA, PLUM, BRASS, RUST),
        strict=True,
    ):
        axes.plot(time, wave, color=colour)
        axes.axhline(0, color=FAINT, linewidth=0.8)
        axes.set_title(name, color=colour, loc="left", fontsize=SMALL_TEXT, pad=3)
        axes.set(yticks=[], ylim=(-1.2, 1.2), xlim=(0, 2), xticks=[0, 0.5, 1, 1.5, 2])
        axes.spines["left"].set_visible(False)
    rows[-1].set_xlabel("swings")
    return drawing


@figure(
    caption="What is on the grid after so many times round, the station's own part being 1. Each round brings the fraction "
    "$k$ of the round before. Below 1 it comes to rest at $1/(1-k)$. At 1.1 it never rests, and the formula's −10 is "
    "nowhere to be seen.",
    alt="Sum against number of rounds, 0 to 40. For k of 0.5 it levels off at 2 after five rounds; for 0.8 at 5 after "
    "some twenty; for 0.9 it nears 10. For 1.1 it bends upwards and leaves the picture after seven rounds.",
)
def round_and_round():
    drawing, axes = plot()
    rounds = np.arange(41)
    for feedback, colour, dashes, at in (
        (0.5, KELP, (None, None), (30, 2.3)),
        (0.8, SEA, (6, 2), (30, 5.3)),
        (0.9, BRASS, (3, 1.5), (30, 8.3)),
        (1.1, RUST, (None, None), (4, 10.3)),
    ):
        axes.plot(rounds, np.cumsum(feedback**rounds), color=colour, dashes=dashes)
        axes.text(*at, f"k = {feedback:g}", color=colour, fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 40), ylim=(0, 12), yticks=[0, 2, 5, 10], xlabel="rounds", ylabel="times the station's")
    return drawing


@figure(
    caption="What the anode's side adds to the club's tuned circuit at 1107 kHz, in series with its coil, for weak signals. "
    "Dashed: the anode alone, the tickler turned away; it takes. Solid: with the tickler wound to help. Dotted: its two ends "
    "exchanged. Where the solid line reaches all that coil, aerial and grid lose, {{ "
    "number('unit06_reaction.club_set:threshold_throttle', '1107 kHz', unit='F', figures=3) }}, nothing is left to lose.",
    alt="Resistance in ohms against throttle capacitance from 10 to 200 picofarads. All curves begin near plus 38. The dashed "
    "one sinks slowly to plus 15. The dotted one rises to plus 86. The solid one sinks, crosses zero near 67 picofarads and a "
    "level line at minus 22, the loss of all else, at 113, and ends near minus 55.",
)
def ohms_by_throttle(station: Annotated[float, Between("frequency of the station", 700e3, 1500e3, "Hz")] = STATION):
    drawing, axes = plot(height=3.6)
    throttle = np.linspace(10e-12, 200e-12, 60)
    for sense, colour, dashes in ((1.0, SEA, (None, None)), (0.0, BRASS, (6, 2)), (-1.0, RUST, (1.5, 1.5))):
        axes.plot(throttle, club_set.feedback_on(station, throttle, sense)[0], color=colour, dashes=dashes)
    whole, edge = sum(club_set.losses(station)[:3]), club_set.threshold_throttle(station)
    axes.axhline(-whole, color=INK, linewidth=1.2, dashes=(2, 2))
    axes.axhline(0, color=FAINT, linewidth=0.8)
    axes.plot(edge, -whole, "o", color=INK)
    axes.text(12e-12, -whole - 11, "coil, aerial, grid", color=INK, fontsize=SMALL_TEXT)
    axes.text(150e-12, 88, "ends exchanged", color=RUST, ha="right", fontsize=SMALL_TEXT)
    axes.text(198e-12, 26, "anode alone", color=BRASS, ha="right", fontsize=SMALL_TEXT)
    axes.text(62e-12, 9, "wound to help", color=SEA, fontsize=SMALL_TEXT)
    axes.set(xlim=(10e-12, 200e-12), ylim=(-60, 100), ylabel="added, Ω")
    marks(axes.yaxis, [-50, 0, 50, 100])
    engineering_axis(axes.xaxis, "throttle", "F")
    return drawing


@figure(
    caption="The club's set at 1107 kHz, volts on the grid for each volt in the aerial, from a *weak* station: with the valve "
    "cold, and with the throttle at 10 (shut), 80, 105 and 112 pF. Dotted: at 80 pF with the tickler's ends exchanged. Warm, "
    "and with the throttle shut, the set is far worse than with its valve cold.",
    alt="Gain on a scale of tens from 2 to 800 against frequency, 20 kilohertz to either side of 1107. Broad and lowest, "
    "4 and 6, "
    "the dotted line and the shut throttle; the cold valve makes a hump of 15; the others rise from 20 at 80 picofarads over "
    "86 to a needle of 560.",
)
def sharper_and_louder():
    drawing, axes = plot(height=3.6)
    offset = np.unique(np.concatenate([np.linspace(-20e3, 20e3, 161), np.linspace(-2e3, 2e3, 81)]))
    here = saltmarsh_set(STATION)
    cold = retuned(replace(here, transconductance=0.0), STATION)
    turned = retuned(replace(here, tuned_tickler=-here.tuned_tickler, throttle_capacitance=80e-12), STATION)
    shut = club_set.on_station(STATION, THROTTLE_RANGE[0])
    curves = [(turned, INK, (1.5, 1.5)), (cold, RUST, (6, 2)), (shut, PLUM, (4, 1.5))]
    curves += [
        (club_set.on_station(STATION, pF * 1e-12), colour, (None, None))
        for pF, colour in ((80, BRASS), (105, KELP), (112, SEA))
    ]
    for parts, colour, dashes in curves:
        axes.semilogy(offset, np.abs(response(parts, STATION + offset)), color=colour, dashes=dashes)
    axes.text(1500, 400, "112 pF", color=SEA, fontsize=SMALL_TEXT)
    axes.text(2400, 60, "105 pF", color=KELP, fontsize=SMALL_TEXT)
    axes.text(-13e3, 13, "80 pF", color=BRASS, fontsize=SMALL_TEXT)
    axes.text(0, 8.4, "cold valve", color=RUST, fontsize=SMALL_TEXT, ha="center")
    axes.text(0, 4.3, "shut", color=PLUM, fontsize=SMALL_TEXT, ha="center")
    axes.set(xlim=(-20e3, 20e3), ylim=(2, 900), ylabel="gain")
    marks(axes.yaxis, [3, 10, 30, 100, 300])
    engineering_axis(axes.xaxis, "off 1107 kHz", "Hz")
    return drawing


@figure(
    caption="Gain and bandwidth for a weak station as the throttle is turned, at 1107 kHz. Their product stays the same to "
    "within three parts in a hundred. From 10 to 100 pF the gain grows nine times; in the thirteen picofarads after that, as "
    "much as you have the nerve for. The dotted line is the threshold.",
    alt="Two plots over throttle capacitance from 10 to 113 picofarads, both on scales of tens. Above, the gain: from 6, "
    "slowly and then ever more steeply, to over a thousand. Below, the bandwidth: the mirror image, from 43 "
    "kilohertz to 200 hertz.",
)
def last_picofarads(station: Annotated[float, Between("frequency of the station", 700e3, 1500e3, "Hz")] = STATION):
    drawing, (above, below) = plot(2, height=4.2)
    edge = club_set.threshold_throttle(station)
    throttle = edge - np.geomspace(edge - THROTTLE_RANGE[0], 2e-3 * edge, 60)
    gain, bandwidth = club_set.gain_and_bandwidth(station, throttle)
    above.semilogy(throttle, gain, color=SEA)
    below.semilogy(throttle, bandwidth, color=RUST)
    for axes, ticks, name in ((above, (10, 100, 1000), "gain"), (below, (1000, 10000), "bandwidth, Hz")):
        axes.axvline(edge, color=INK, linewidth=1.2, dashes=(2, 2))
        marks(axes.yaxis, ticks, [f"{tick:,}".replace(",", " ") for tick in ticks])
        axes.set_ylabel(name)
    above.set_ylim(3, 2500)
    below.set_ylim(100, 60000)
    engineering_axis(below.xaxis, "throttle", "F")
    return drawing


@figure(
    caption="A signal of 1 that goes round, with a half, nine tenths, all, and a tenth more than all of it coming back each time.",
    alt="Four staircases over twelve rounds. With one half the stairs end at 2. With nine tenths they climb more and more slowly. With "
    "one they climb evenly to 13. With eleven tenths each stair is higher than the last.",
)
def rounds():
    drawing, axes = plot(height=2.9)
    number = np.arange(13)
    for k, colour, dashes in ((1.1, RUST, (None, None)), (1.0, PLUM, (7, 2)), (0.9, BRASS, (4, 2)), (0.5, SEA, (None, None))):
        height = [after_rounds(k, int(n)) for n in number]
        axes.plot(number, height, color=colour, dashes=dashes, drawstyle="steps-post", label=f"k = {k:g}")
    axes.set(xlabel="rounds", ylabel="signal", xlim=(0, 12), ylim=(0, 22), xticks=[0, 3, 6, 9, 12])
    axes.legend(loc="upper left")
    return drawing
