"""Reaction, sections 4 and 5: the poles, and what the steady-state formula says where nothing is steady."""

from dataclasses import replace

import numpy as np

from course.circle.stations import ACROSS_THE_BAY
from course.figures import figure
from course.figures.kit.style import FAINT, INK, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.network import GRID, drive, state_matrix
from solutions.unit06_reaction.stability import ring, steady_formula

STATION = ACROSS_THE_BAY.frequency
BEFORE, BEYOND = 80e-12, 150e-12  # farad


@figure(
    caption="The leading pole of the club's set as the throttle is turned from 10 to 150 pF, tuning left alone, no station on. "
    "Across: how fast the swing grows, or dies away if it is below 0. Upwards: how fast it swings. Solid: wound to help. "
    "Dashed: the ends exchanged. To the right of the line the set sings by itself.",
    alt="Frequency in kilohertz against growth in thousands a second. A solid trail of dots for 10, 50, 80, 100, 113 and 150 "
    "picofarads runs to the right and downwards, from minus 136 through zero at 113 picofarads to plus 36. A dashed "
    "trail of dots "
    "runs to the left, from minus 160 to minus 240.",
)
def poles_to_the_right():
    drawing, axes = plot(height=3.4)
    tuned = club_set.on_station(STATION, 100e-12)
    throttle, marks = np.linspace(10e-12, 150e-12, 60), np.array([10, 50, 80, 100, 113, 150]) * 1e-12
    for sense, colour, dashes in ((1, SEA, (None, None)), (-1, RUST, (6, 2))):
        turned = replace(tuned, tuned_tickler=sense * tuned.tuned_tickler)
        frequency, growth = ring(replace(turned, throttle_capacitance=throttle))
        axes.plot(growth, frequency, color=colour, dashes=dashes)
        frequency, growth = ring(replace(turned, throttle_capacitance=marks))
        axes.plot(growth, frequency, "o", color=colour, markersize=5)
        if sense == 1:
            for place, pF in enumerate(np.round(marks * 1e12)):
                mark = f"{pF:g} pF" if place == 0 else f"{pF:g}"
                aside = (-14, -13) if pF == 100 else (4, 7)
                label(axes, mark, (growth[place], frequency[place]), aside, colour, ha="center", fontsize=SMALL_TEXT)
    axes.axvline(0, color=INK, linewidth=1.4)
    axes.axvspan(0, 60e3, facecolor=FAINT, alpha=0.5, linewidth=0)
    axes.text(30e3, 1.1045e6, "sings", ha="center")
    axes.set(xlim=(-250e3, 60e3), ylim=(1.1035e6, 1.1105e6))
    axes.set_xticks([-200e3, -100e3, 0], ["−200", "−100", "0"])
    axes.set_xlabel("growth, thousands a second")
    axes.set_yticks([1.104e6, 1.106e6, 1.108e6, 1.11e6], ["1104", "1106", "1108", "1110"])
    axes.set_ylabel("swings at, kHz")
    return drawing


@figure(
    caption="Gain of the club's set for a weak station at 1107 kHz by the steady-state formula. Up to the threshold it "
    "is true. "
    "Beyond, it comes down again as if nothing had happened. The two dots have the same height; one of them is a lie.",
    alt="Gain on a scale of tens against throttle capacitance from 30 to 190 picofarads. A solid line rises from 7 to a "
    "spike at 113 picofarads. From there a dashed line falls to 11. A dot at 80 picofarads on the solid line and one "
    "at 150 on the dashed one both stand at 20.",
)
def false_number():
    drawing, axes = plot()
    edge = club_set.threshold_throttle(STATION)
    away = np.geomspace(1e-13, 83e-12, 60)
    for throttle, colour, dashes in ((edge - away, SEA, (None, None)), (edge + away, RUST, (5, 2))):
        axes.semilogy(throttle, club_set.formula_gain(STATION, throttle), color=colour, dashes=dashes)
    dots = np.array([BEFORE, BEYOND])
    axes.plot(dots, club_set.formula_gain(STATION, dots), "o", color=INK)
    axes.text(78e-12, 27, "true", color=SEA, ha="right")
    axes.text(153e-12, 27, "false", color=RUST)
    axes.set(xlim=(30e-12, 190e-12), ylim=(5, 6000), ylabel="gain, by the formula")
    marks(axes.yaxis, [10, 100, 1000])
    engineering_axis(axes.xaxis, "throttle", "F")
    return drawing


def switched_on(parts, frequency, time):
    """Size of the grid's swing from the moment at which a carrier of a volt begins in the aerial, without any steady state.

    The state equations solved in time: what is forced, less what the set does by itself with as much at the beginning.
    """
    matrix = state_matrix(parts)
    forced = np.linalg.solve(2j * np.pi * frequency * np.eye(len(matrix)) - matrix, drive(parts))
    rates, ways = np.linalg.eig(matrix)
    shares = np.linalg.solve(ways, forced)
    own = (ways * shares) @ np.exp(np.outer(rates, time))
    return np.abs(forced[GRID] * np.exp(2j * np.pi * frequency * time) - own[GRID])


@figure(
    caption="The truth about the two dots. At time 0 a carrier of 1 mV begins in the aerial. At 80 pF the grid's swing comes "
    "to rest at 20 mV, as the formula says. At 150 pF the formula says 21 mV too, and it passes that within a few "
    "hundredths of a millisecond on its way to volts. What stops it there is unit 7's business.",
    alt="Swing on the grid on a scale of tens, 1 millivolt to 10 volts, over half a millisecond. One line rises and "
    "levels off on a dashed line at 20 millivolts. The other rises with it at first, crosses the dashed line and goes "
    "on straight up and out of the picture.",
)
def what_really_happens():
    drawing, axes = plot()
    time = np.linspace(1e-6, 0.4e-3, 300)
    for throttle, colour in ((BEFORE, SEA), (BEYOND, RUST)):
        parts = club_set.on_station(STATION, throttle)
        axes.semilogy(time, 1e-3 * switched_on(parts, STATION, time), color=colour)
    level = 1e-3 * abs(steady_formula(club_set.on_station(STATION, BEYOND), STATION))
    axes.axhline(level, color=PLUM, linewidth=1.2, dashes=(4, 2))
    axes.text(0.39e-3, level * 1.25, "the formula, for both", color=PLUM, ha="right", fontsize=SMALL_TEXT)
    axes.text(0.12e-3, 2.5, "150 pF", color=RUST, ha="right")
    axes.text(0.2e-3, 0.009, "80 pF", color=SEA)
    axes.set(xlim=(0, 0.4e-3), ylim=(1e-3, 10), ylabel="on the grid")
    marks(axes.yaxis, [1e-3, 1e-2, 0.1, 1, 10], ["1 mV", "10 mV", "0.1 V", "1 V", "10 V"])
    engineering_axis(axes.xaxis, "time", "s")
    return drawing
