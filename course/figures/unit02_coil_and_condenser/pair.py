"""Coil and condenser, sections 1, 4 and 5: two coils together, and the condenser that hides in one."""

import numpy as np

from course.circle.components import DIAMETER, LENGTH, LOOSE_GAPS, LOOSE_TURNS, mutual
from course.figures import figure
from course.figures.kit.parts import Coil, Condenser, Dot, Line, Supply, schematic
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from course.figures.unit02_coil_and_condenser.coil import ARROW, bare, draw_winding
from solutions.unit02_coil_and_condenser.club_coil import COVERED, TURNS
from solutions.unit02_coil_and_condenser.mutual_inductance import (
    coaxial_filaments,
    coupling_coefficient,
    turn_positions,
)
from solutions.unit02_coil_and_condenser.self_capacitance import (
    LENGTH_OVER_DIAMETER,
    PICOFARADS_PER_CENTIMETRE,
    apparent_inductance,
    self_capacitance,
    self_capacitance_fit,
)
from solutions.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance

LOOSE_LENGTH = LOOSE_TURNS * COVERED


@figure(
    caption="Nell's experiment: a tone goes into the long coil, headphones hang on the loose one.",
    alt="Two coils on one axis. The left one, long, is joined to a source of a tone. The right one, short, is joined to "
    "headphones. An arrow marks the gap between their near ends.",
)
def two_coils():
    drawing, axes = plot(height=2.4)
    draw_winding(axes, -2.2, -0.8, 1, 14)
    draw_winding(axes, 0.9, 1.4, 1, 5, SEA)
    axes.annotate("", (-0.8, 0), (0.9, 0), arrowprops=ARROW)
    axes.text(0.05, 0.1, "gap", ha="center", va="bottom")
    for x, words, colour in ((-1.5, "tone in", BRASS), (1.15, "headphones", SEA)):
        axes.text(x, -1.25, words, ha="center", va="top", color=colour)
    axes.set(xlim=(-2.6, 2.6), ylim=(-1.75, 1.15))
    bare(axes)
    return drawing


@figure(
    caption="The lines of the long coil's field, and the loose coil at two places. Of the twenty lines or so, four still go "
    "through it near by; farther out, one.",
    alt="A long coil cut open along its axis, with its field lines. Close to its end stands a short coil, and four lines "
    "pass between its upper and lower wires on either side of the axis. Farther out a second one, drawn pale, has one.",
)
def caught():
    drawing, axes = plot(height=3.2)
    along, across = np.meshgrid(np.linspace(-1.6, 3.4, 101), np.linspace(0.03, 1.9, 39))
    places = turn_positions(12, 1.2)
    flux = sum(coaxial_filaments(0.8, across, along - place) for place in places)
    for side in (1, -1):
        axes.contour(along, side * across, flux, levels=np.arange(0.02, 0.95, 0.045) * flux.max(), colors=BRASS, linewidths=0.8)
        axes.plot(places, 0 * places + side * 0.8, "o", color=BRASS, markersize=4.5, markeredgecolor=INK, markeredgewidth=0.5)
        for start, strength in ((1.0, 1.0), (2.4, 0.4)):
            loose = start + 0.1 * np.arange(5)
            axes.plot(loose, 0 * loose + side * 0.8, "s", color=SEA, markersize=4.5, alpha=strength)
    for x, name in ((1.2, "near"), (2.6, "farther out")):
        axes.text(x, 0, name, ha="center", va="center")
    axes.set(xlim=(-1.6, 3.4), ylim=(-1.7, 1.7))
    bare(axes)
    return drawing


@figure(
    caption="Coupling of the loose coil to the long one against the gap between their near ends. The dots are the five "
    "places of Nell's experiment.",
    alt="Coupling coefficient in per cent, on a scale of ratios, against a gap of 0 to 160 millimetres. It falls from over 40 "
    "per cent to half of one per cent, steeply at first and then more and more evenly.",
)
def coupling_against_gap():
    drawing, axes = plot()
    inductances = solenoid_inductance(TURNS, DIAMETER, LENGTH), solenoid_inductance(LOOSE_TURNS, DIAMETER, LOOSE_LENGTH)
    gaps = np.linspace(1e-3, 160e-3, 54)
    axes.plot(gaps, [100 * coupling_coefficient(mutual(LOOSE_TURNS, gap), *inductances) for gap in gaps], color=SEA)
    for gap in LOOSE_GAPS:
        axes.plot(gap, 100 * coupling_coefficient(mutual(LOOSE_TURNS, gap), *inductances), "o", color=INK)
    axes.set(yscale="log", ylabel="coupling k, %", ylim=(0.3, 60), xlim=(0, 165e-3))
    marks(axes.yaxis, [0.5, 1, 2, 5, 10, 20, 50])
    engineering_axis(axes.xaxis, "gap", "m")
    return drawing


def in_series(second_dot):
    """Two coils in a row, with the dots of their sense."""
    Line().at((0, 0)).to((0.6, 0))
    Coil().at((0.6, 0)).to((2.6, 0)).label("L₁", loc="bottom")
    Line().at((2.6, 0)).to((3.4, 0))
    Coil().at((3.4, 0)).to((5.4, 0)).label("L₂", loc="bottom")
    Line().at((5.4, 0)).to((6, 0))
    Supply("", "left").at((0, 0))
    Supply("", "right").at((6, 0))
    for x in (0.75, second_dot):
        Dot(radius=0.06).at((x, 0.36))


@figure(
    caption="Two coils in series. The dots mark ends of like sense: with current into both dotted ends the fields help "
    "each other, and the meter reads L₁ + L₂ + 2M.",
    alt="Two coils in a row between two terminals; the dot of each stands at its left end.",
)
def aiding():
    with schematic() as drawing:
        in_series(3.55)
    return drawing


@figure(
    caption="The same with the second coil's ends exchanged: the fields oppose, and the meter reads L₁ + L₂ − 2M.",
    alt="The same two coils in a row; the dot of the second now stands at its right end.",
)
def opposing():
    with schematic() as drawing:
        in_series(5.25)
    return drawing


@figure(
    caption="A coil as the rest of the circuit meets it: with a small condenser of its own across the ends.",
    alt="A coil L between two terminals, and across it, on dashed wires, a small condenser C₀.",
)
def hidden_condenser():
    with schematic() as drawing:
        Supply("", "left").at((0, 0))
        Supply("", "right").at((4, 0))
        Line().at((0, 0)).to((1, 0))
        Coil().at((1, 0)).to((3, 0)).label("L", loc="bottom")
        Line().at((3, 0)).to((4, 0))
        Line(ls="--").at((0.7, 0)).to((0.7, 1.3))
        Line(ls="--").at((0.7, 1.3)).to((1.2, 1.3))
        Condenser().at((1.2, 1.3)).to((2.8, 1.3)).label("C₀", loc="top")
        Line(ls="--").at((2.8, 1.3)).to((3.3, 1.3))
        Line(ls="--").at((3.3, 1.3)).to((3.3, 0))
    return drawing


@figure(
    caption="Medhurst's measurements (dots) and the formula fitted to them (line). A coil about as long as it is wide hides "
    "the least for its diameter.",
    alt="Picofarads per centimetre of diameter against length over diameter from 0.1 to 50, both in ratios. The dots come "
    "down from 0.96 to a flat bottom of 0.46 between 0.8 and 1, and then climb to 5.8. The line follows them, up to 8 "
    "per cent below near 4.",
)
def medhurst():
    drawing, axes = plot()
    shape = np.geomspace(0.1, 50, 120)
    axes.plot(shape, 1e12 * self_capacitance_fit(0.01, 0.01 * shape), color=BRASS, linewidth=1.2)
    axes.plot(LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE, "o", color=SEA, markersize=4)
    axes.set(xscale="log", yscale="log", xlabel="length / diameter", ylabel="pF for each cm", ylim=(0.35, 7))
    marks(axes.xaxis, [0.1, 0.3, 1, 3, 10, 50])
    marks(axes.yaxis, [0.5, 1, 2, 5])
    return drawing


@figure(
    caption="What the condenser stood at, against one over the square of the frequency it tuned to. The points lie on a "
    "straight line, and the line meets the axis at −C₀.",
    alt="A straight line rising through four dots, at 1.6, 1.2, 0.8 and 0.6 megahertz, from left to right. Carried on to "
    "the left it does not go through the origin but meets the upright axis a little below zero, at minus the coil's "
    "own capacitance.",
)
def octave_line():
    drawing, axes = plot()
    inductance, own = solenoid_inductance(TURNS, DIAMETER, LENGTH), self_capacitance(DIAMETER, LENGTH)

    def needed(frequency):
        return 1 / ((2 * np.pi * frequency) ** 2 * inductance) - own

    frequency = np.array([1.6e6, 1.2e6, 0.8e6, 0.6e6])
    ends = np.array([0, 2.9])  # one over megahertz squared
    axes.plot(ends, ends * 1e-12 / ((2 * np.pi) ** 2 * inductance) - own, color=SEA)
    axes.plot(1e12 / frequency**2, needed(frequency), "o", color=INK)
    for each in frequency:
        label(axes, f"{each / 1e6:.1f} MHz", (1e12 / each**2, needed(each)), (7, -5), va="top", fontsize=SMALL_TEXT)
    axes.axhline(0, color=INK, linewidth=0.9)
    label(axes, "−C₀", (0, -own), (40, -16), RUST, va="center", arrowprops={"arrowstyle": "->", "color": RUST})
    axes.set(xlim=(0, 3.4), ylim=(-60e-12, 380e-12), xlabel="one over frequency², 1/MHz²")
    engineering_axis(axes.yaxis, "condenser", "F", ticks=4)
    return drawing


@figure(
    caption="The inductance that the club's coil seems to have. The nearer its own resonance, the more of the condenser's "
    "work it does itself.",
    alt="Apparent inductance against frequency from 0 to 4.5 megahertz. It starts level at 197 microhenries, passes 203 at "
    "846 kilohertz, and climbs ever faster, beyond twice its value before 4 megahertz, towards an upright dotted line at "
    "5.3 megahertz.",
)
def seeming():
    drawing, axes = plot(height=2.7)
    inductance, own = solenoid_inductance(TURNS, DIAMETER, LENGTH), self_capacitance(DIAMETER, LENGTH)
    frequency = np.linspace(1e3, 4.5e6, 160)
    axes.plot(frequency, apparent_inductance(inductance, own, frequency), color=SEA)
    axes.axvline(1 / (2 * np.pi * np.sqrt(inductance * own)), color=PLUM, linewidth=1.2, dashes=(1, 2))
    axes.set(ylim=(0, 800e-6), xlim=(0, 5.6e6))
    engineering_axis(axes.xaxis, "frequency", "Hz")
    engineering_axis(axes.yaxis, "seems to have", "H", ticks=4)
    return drawing
