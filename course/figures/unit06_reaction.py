"""Reaction, sections 1 to 3: the push in step, negative resistance, sharper and louder."""

from dataclasses import replace
from typing import Annotated

import numpy as np

from course.figures import figure
from course.figures.stations import ACROSS_THE_BAY
from course.figures.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, plot
from course.settings import Between
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.network import SALTMARSH_SET
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
        (0.5, KELP, (None, None), (30, 2.3)), (0.8, SEA, (6, 2), (30, 5.3)), (0.9, BRASS, (3, 1.5), (30, 8.3)),
        (1.1, RUST, (None, None), (4, 10.3)),
    ):  # fmt: skip
        axes.plot(rounds, np.cumsum(feedback**rounds), color=colour, dashes=dashes)
        axes.text(*at, f"k = {feedback:g}", color=colour, fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 40), ylim=(0, 12), yticks=[0, 2, 5, 10], xlabel="rounds", ylabel="times the station's")
    return drawing


@figure(
    caption="What the tickler adds to the club's tuned circuit at 1107 kHz. Wound to help it takes loss away, and the more so "
    "the more capacitance the throttle has. Where it reaches the whole loss, {{ "
    "number('unit06_reaction.club_set:threshold_throttle', '1107 kHz', unit='F', figures=3) }}, nothing is left to "
    "lose. With its two ends exchanged it adds as much instead.",
    alt="Resistance in ohms against throttle capacitance from 3 to 75 picofarads. One curve sinks from about minus 3 to "
    "minus 58 ohms and crosses a level dashed line, minus the whole loss, at 13 picofarads. Its mirror image rises "
    "above zero.",
)
def ohms_by_throttle(station: Annotated[float, Between("frequency of the station", 700e3, 1500e3, "Hz")] = STATION):
    drawing, axes = plot(height=3.4)
    throttle = np.geomspace(3e-12, 75e-12, 120)
    for sense, colour, dashes in ((1.0, SEA, (None, None)), (-1.0, RUST, (6, 2))):
        axes.semilogx(throttle, club_set.feedback_on(station, throttle, sense)[0], color=colour, dashes=dashes)
    whole, edge = sum(club_set.losses(station)), club_set.threshold_throttle(station)
    axes.axhline(-whole, color=INK, linewidth=1.2, dashes=(2, 2))
    axes.axhline(0, color=FAINT, linewidth=0.8)
    axes.plot(edge, -whole, "o", color=INK)
    axes.text(3.2e-12, -whole + 3, "the whole loss", color=INK, fontsize=SMALL_TEXT)
    axes.text(14e-12, 40, "ends exchanged", color=RUST, ha="right", fontsize=SMALL_TEXT)
    axes.text(22e-12, -32, "wound\nto help", color=SEA, fontsize=SMALL_TEXT)
    axes.set(xlim=(3e-12, 75e-12), ylim=(-65, 65), yticks=[-60, -30, 0, 30, 60], ylabel="added, Ω")
    axes.set_yticklabels(["−60", "−30", "0", "30", "60"])
    axes.set_xticks([3e-12, 5e-12, 10e-12, 20e-12, 50e-12], ["3", "5", "10", "20", "50"])
    axes.minorticks_off()
    axes.set_xlabel("throttle, pF")
    return drawing


@figure(
    caption="The club's set on Curlew Bank, volts on the grid for each volt in the aerial: with the valve cold, and with the "
    "throttle at 8, 11 and 12.5 pF. The dotted line has the tickler's ends exchanged: weaker and broader than no "
    "reaction at all. The feet of all curves lie together; only the peak grows.",
    alt="Gain on a scale of tens from 3 to 500 against frequency, 20 kilohertz to either side of 1107. Five humps of one "
    "middle. From the lowest and broadest, 9, dotted, over 13, 28 and 79, up to a needle of over 400.",
)
def sharper_and_louder():
    drawing, axes = plot(height=3.6)
    offset = np.unique(np.concatenate([np.linspace(-20e3, 20e3, 161), np.linspace(-2e3, 2e3, 81)]))
    cold = retuned(replace(SALTMARSH_SET, transconductance=0.0), STATION)
    turned = retuned(replace(SALTMARSH_SET, tuned_tickler=-SALTMARSH_SET.tuned_tickler, throttle_capacitance=8e-12), STATION)
    curves = [(turned, INK, (1.5, 1.5)), (cold, RUST, (6, 2))]
    curves += [(club_set.on_station(STATION, pF * 1e-12), colour, (None, None))
               for pF, colour in ((8, BRASS), (11, KELP), (12.5, SEA))]  # fmt: skip
    for parts, colour, dashes in curves:
        axes.semilogy(offset, np.abs(response(parts, STATION + offset)), color=colour, dashes=dashes)
    axes.text(1500, 300, "12.5 pF", color=SEA, fontsize=SMALL_TEXT)
    axes.text(2400, 62, "11 pF", color=KELP, fontsize=SMALL_TEXT)
    axes.text(-8500, 24, "8 pF", color=BRASS, fontsize=SMALL_TEXT)
    axes.text(-19e3, 3.9, "cold valve", color=RUST, fontsize=SMALL_TEXT)
    axes.set(xlim=(-20e3, 20e3), ylim=(3, 600), ylabel="gain")
    axes.set_yticks([3, 10, 30, 100, 300], ["3", "10", "30", "100", "300"])
    axes.minorticks_off()
    engineering_axis(axes.xaxis, "off 1107 kHz", "Hz")
    return drawing


@figure(
    caption="Gain and bandwidth as the throttle is turned, at 1107 kHz. Their product stays the same to one part in a "
    "hundred. From 5 to 11 pF the gain grows five times; in the two picofarads after that, as much as you have the "
    "nerve for. The dotted line is the threshold.",
    alt="Two plots over throttle capacitance from 5 to 13 picofarads, both on scales of tens. Above, the gain: from 17, "
    "slowly and then ever more steeply, to over a thousand at 12.8. Below, the bandwidth: the mirror image, from 14 "
    "kilohertz to below 200 hertz.",
)
def last_picofarads(station: Annotated[float, Between("frequency of the station", 700e3, 1500e3, "Hz")] = STATION):
    drawing, (above, below) = plot(2, height=4.2)
    edge = club_set.threshold_throttle(station)
    throttle = edge - np.geomspace(edge - 5e-12, 0.01 * edge, 60)
    gain, bandwidth = club_set.gain_and_bandwidth(station, throttle)
    above.semilogy(throttle, gain, color=SEA)
    below.semilogy(throttle, bandwidth, color=RUST)
    for axes, ticks, name in ((above, (10, 100, 1000), "gain"), (below, (100, 1000, 10000), "bandwidth, Hz")):
        axes.axvline(edge, color=INK, linewidth=1.2, dashes=(2, 2))
        axes.set_yticks(ticks, [f"{tick:,}".replace(",", " ") for tick in ticks])
        axes.minorticks_off()
        axes.set_ylabel(name)
    above.set_ylim(8, 2500)
    below.set_ylim(80, 25000)
    engineering_axis(below.xaxis, "throttle", "F")
    return drawing
