"""Signal, sections 4 and 5: the wire, its current, and what it can give."""

import numpy as np

from course.circle.components import FIRST_TOP as TOP
from course.circle.stations import ACROSS_THE_BAY
from course.figures import figure
from course.figures.kit.parts import Aerial, Condenser, Dot, Earth, Line, Oscillator, Resistor, schematic
from course.figures.kit.style import BRASS, INK, KELP, PAPER, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from solutions.unit01_signal.aerial_voltage import aerial_capacitance, aerial_emf, effective_height
from solutions.unit01_signal.radiation_resistance import available_power, radiation_resistance
from solutions.unit04_crystal_set.crystal_set import EARTH_RESISTANCE as RESISTANCE
from solutions.unit04_crystal_set.crystal_set import HEIGHT, WIRE_RADIUS


@figure(
    caption="The aerial at the hut: 8 m up and 15 m along. The coloured band beside the wire is as wide as the "
    "current is strong. Hatched: the part that counts. Its area, spread evenly at full width, would reach the "
    "dashed line: the effective height, {{ number('unit01_signal.aerial_voltage:effective_height', '8 m', '15 "
    "m', unit='m', figures=3) }}.",
    alt="An inverted L: a wire from the ground 8 metres up, then 15 metres level. A band along it is widest at "
    "the foot, still two thirds as wide at the bend, and comes to a point at the far end. A dashed line marks "
    "6.6 metres.",
)
def aerial_current():
    drawing, axes = plot(height=3.0)
    at_bend = TOP / (HEIGHT + TOP)
    width = 2.2
    axes.fill([0, width, width * at_bend, 0], [0, 0, HEIGHT, HEIGHT], facecolor=BRASS, alpha=0.5, hatch="//", linewidth=0)
    axes.fill([0, 0, TOP], [HEIGHT, HEIGHT - width * at_bend, HEIGHT], facecolor=SEA, alpha=0.3, linewidth=0)
    axes.plot([0, 0, TOP], [0, HEIGHT, HEIGHT], color=INK, linewidth=2.4)
    reach = effective_height(HEIGHT, TOP)
    axes.plot([-1.6, width + 0.5], [reach, reach], color=RUST, dashes=(4, 2))
    axes.text(width + 0.8, 1.2, "full current\nat the foot", fontsize=SMALL_TEXT, va="center")
    axes.text(TOP, HEIGHT - 0.5, "none at the end", fontsize=SMALL_TEXT, ha="right", va="top")
    axes.text(width + 0.8, 4.2, "effective height", color=RUST, fontsize=SMALL_TEXT, va="center")
    axes.plot([width + 0.4, width - 0.2], [4.6, reach - 0.1], color=RUST, linewidth=0.9)
    axes.annotate("", (0, HEIGHT + 1), (TOP, HEIGHT + 1), arrowprops={"arrowstyle": "<->", "color": INK})
    axes.text(TOP / 2, HEIGHT + 1.15, "15 m", ha="center", va="bottom", fontsize=SMALL_TEXT)
    axes.annotate("", (-2, 0), (-2, HEIGHT), arrowprops={"arrowstyle": "<->", "color": INK})
    axes.text(-2.3, HEIGHT / 2, "8 m", ha="right", va="center", fontsize=SMALL_TEXT)
    axes.axhline(0, color=KELP, linewidth=3)
    axes.set(xlim=(-4.5, 16), ylim=(-0.6, 10.6), xticks=[], yticks=[])
    axes.spines[:].set_visible(False)
    return drawing


@figure(
    caption="Left: aerial, set and earth connection as they stand. Right: what the set sees. The wave is a source of "
    "voltage, field times effective height; in series with it lie what is lost in wire and earth, and the "
    "wire's capacitance.",
    alt="Left, an aerial symbol, a box marked set, and an earth symbol one below the other. Right, a loop: a "
    "source marked E times h, a resistor marked 30 ohms, a condenser marked 132 picofarads, and the set.",
)
def aerial_circuit():
    capacitance = aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS)
    with schematic() as drawing:
        Aerial().at((0, 2.8))
        Line().at((0, 2.8)).to((0, 2.4))
        Resistor().at((0, 2.4)).to((0, 0.4)).label("set", loc="bottom", ofst=0.2)
        Line().at((0, 0.4)).to((0, 0))
        Earth().at((0, 0))
        left, right, top = 3.0, 7.6, 2.8
        Oscillator().at((left, 0)).to((left, top)).label("E × h", loc="top", ofst=0.2)
        Resistor().at((left, top)).to((left + 2.2, top)).label(f"{RESISTANCE:.0f} Ω", loc="top", ofst=0.1)
        Condenser().at((left + 2.2, top)).to((right, top)).label(f"{capacitance * 1e12:.0f} pF", loc="top", ofst=0.1)
        Resistor().at((right, top)).to((right, 0)).label("set", loc="bottom", ofst=0.2)
        Line().at((right, 0)).to((left, 0))
        Dot(open=True).at((right, top)).fill(PAPER)
        Dot(open=True).at((right, 0)).fill(PAPER)
    return drawing


@figure(
    caption="Power that Curlew Bank puts into a load, against the load's resistance, with 30 Ω in the aerial and its "
    "reactance tuned out. It is greatest where the two are equal, and the top is broad: twice or half as much "
    "loses only a ninth.",
    alt="A hump over a logarithmic axis of load resistance from 1 to 1000 ohms, with its top at 30 ohms and 45 microwatts.",
)
def load_sweep():
    drawing, axes = plot(height=2.8)
    emf = aerial_emf(ACROSS_THE_BAY.field, effective_height(HEIGHT, TOP))
    load = np.geomspace(1, 1000, 121)
    axes.semilogx(load, (emf / (RESISTANCE + load)) ** 2 * load, color=SEA)
    best = available_power(emf, RESISTANCE)
    axes.plot(RESISTANCE, best, marker="o", color=RUST)
    label(axes, "load = aerial", (RESISTANCE, best), (0, 8), ha="center", fontsize=SMALL_TEXT)
    axes.set(ylim=(0, 1.25 * best))
    marks(axes.xaxis, [1, 10, 100, 1000])
    axes.set_xlabel("load, Ω")
    engineering_axis(axes.yaxis, "power", "W")
    return drawing


@figure(
    caption="What aerials of different height could give from Curlew Bank's field. Dashed: with nothing lost in wire "
    "and earth, as much at any height. Full line: with 30 Ω lost, almost four times for each doubling.",
    alt="Available power against effective height, 1 to 20 metres, logarithmic scales. A level dashed line at 1.4 "
    "milliwatts. A full line rises steeply from 1 microwatt at 1 metre to about 300 microwatts at 20 metres.",
)
def height_pays():
    drawing, axes = plot(height=2.9)
    height = np.geomspace(1, 20, 61)
    emf = aerial_emf(ACROSS_THE_BAY.field, height)
    radiation = radiation_resistance(height, ACROSS_THE_BAY.frequency)
    axes.loglog(height, available_power(emf, radiation), color=SEA, dashes=(5, 2))
    axes.loglog(height, available_power(emf, radiation + RESISTANCE), color=RUST)
    axes.text(2, 1.7e-3, "nothing lost", color=SEA, fontsize=SMALL_TEXT, va="bottom", ha="center")
    axes.text(7, 2.2e-5, "30 Ω lost", color=RUST, fontsize=SMALL_TEXT, va="center")
    axes.set(ylim=(5e-7, 6e-3), xlim=(1, 20))
    marks(axes.xaxis, [1, 2, 5, 10, 20])
    axes.set_xlabel("effective height, m")
    marks(axes.yaxis, [1e-6, 1e-5, 1e-4, 1e-3], ["1 µW", "10 µW", "100 µW", "1 mW"])
    axes.set_ylabel("power")
    return drawing
