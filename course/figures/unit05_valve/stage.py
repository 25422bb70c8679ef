"""Valve, sections 4 and 5: the load line and the gain of a stage."""

from typing import Annotated

import numpy as np

from course.figures import figure
from course.figures.kit.parts import Dot, Oscillator, Resistor, Supply, Triode, schematic, wire
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from course.settings import Between
from solutions.unit05_valve.load_line import load_line_current, operating_point
from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.stage_gain import stage_gain
from solutions.unit05_valve.triode_current import anode_resistance, triode_current

LOAD, BIAS = 20e3, -3.0


@figure(
    caption="One stage. The signal and a steady grid bias are in series at the grid; the anode draws its current "
    "through the load.",
    alt="Circuit diagram: a source of signal in series with a bias battery, minus 3 volts, goes to the grid of a "
    "triode. From its anode a resistor R leads up to HT plus 90 volts; the output is taken from the anode. "
    "Filament and both batteries join the earth line at the foot.",
)
def stage():
    with schematic() as drawing:
        valve = Triode().at((3.2, 2.2)).color(INK)
        x, y = valve.anode
        Resistor().at((x, y)).to((x, y + 1.7)).color(RUST).label("R", loc="bottom", color=RUST)
        Supply("+90 V").at((x, y + 1.7)).color(INK)
        Dot().at((x, y)).color(INK)
        wire((x, y), (x + 1.4, y))
        Supply("out", side="right").at((x + 1.4, y)).color(INK)
        wire(valve.grid, (0.6, valve.grid[1]))
        Oscillator().at((0.6, valve.grid[1])).to((0.6, 0.55)).color(SEA).label("signal", loc="top", color=SEA, ofst=0.15)
        Supply("−3 V", side="bottom").at((0.6, 0.55)).color(PLUM)
        left, right = valve.filament1, valve.filament2
        wire(left, (left[0], 0), (x + 1.4, 0))
        Supply("0 V", side="right").at((x + 1.4, 0)).color(INK)
        wire(right, (right[0], right[1] - 0.3), (right[0] + 0.5, right[1] - 0.3))
        Supply("LT+", side="right").at((right[0] + 0.5, right[1] - 0.3)).color(INK)
    return drawing


@figure(
    caption="The load line of 20 kΩ from 90 V, on the curves of a type 30. Valve and load must pass the same current:"
    " the dots are where they agree. A swing of the grid from −5 V to −1 V (between the outer dots) moves the"
    " anode from {{ number('unit05_valve.load_line:operating_point', '90 V', '20 kΩ', -5, 9.29, 267e-6, "
    "-0.67, part=0, unit='V', figures=3) }} to {{ number('unit05_valve.load_line:operating_point', '90 V', "
    "'20 kΩ', -1, 9.29, 267e-6, -0.67, part=0, unit='V', figures=3) }}.",
    alt="Anode current against anode voltage. A straight line falls from 4.5 milliamperes at 0 volts to nothing "
    "at 90 volts. It crosses five curves, for 0, minus 1, minus 3, minus 5 and minus 7 volts on the grid; "
    "dots mark the crossings from 44 to 84 volts.",
)
def load_line(
    supply: Annotated[float, Between("HT", 22.5, 105, "V")] = HT,
    load: Annotated[float, Between("load", 20e3, 200e3, "Ω")] = LOAD,
):
    drawing, axes = plot(height=3.6)
    voltage = np.linspace(0, 110, 221)
    for grid, colour in ((0.0, FAINT), (-1.0, SEA), (-3.0, RUST), (-5.0, SEA), (-7.0, FAINT)):
        current = triode_current(voltage, grid, *LAW)
        axes.plot(voltage, current, color=INK if colour == FAINT else colour, linewidth=1.0 if colour == FAINT else 1.8)
        anode, settled = operating_point(supply, load, grid, *LAW)
        axes.plot(anode, settled, "o", color=INK if colour == FAINT else colour)
        top = min(4.75e-3, triode_current(108.0, grid, *LAW))
        label(
            axes,
            f"{grid:g}".replace("-", "−"),
            (np.interp(top, current, voltage), top),
            (-4, 1),
            INK if colour == FAINT else colour,
            ha="right",
            fontsize=SMALL_TEXT,
        )
    line = np.array([0.0, supply])
    axes.plot(line, load_line_current(line, supply, load), color=BRASS, dashes=(6, 2))
    axes.text(5, load_line_current(5.0, supply, load) + 2e-4, "load", color=BRASS, fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 110), ylim=(0, 5.2e-3), xticks=[0, 30, 60, 90])
    engineering_axis(axes.xaxis, "anode voltage", "V")
    axes.set_xticks([0, 30, 60, 90])
    engineering_axis(axes.yaxis, "anode current", "A")
    return drawing


@figure(
    caption="The gain of a stage against its load. Solid: if the anode resistance stayed at 11 kΩ. Dashed: a real "
    "type 30 on 90 V with the grid at −3 V, where a larger load also starves the valve and its anode "
    "resistance climbs.",
    alt="Gain against load from 1 kilohm to 1 megohm, on a scale of tens. A solid curve climbs from 0.8 through "
    "half of 9.3 at 11 kilohms towards 9.3. A dashed one starts together with it and stays below from 10 "
    "kilohms on, reaching about 7.7 at 100 kilohms.",
)
def gain_and_load():
    drawing, axes = plot()
    load = np.logspace(3, 6, 121)
    axes.axhline(LAW[0], color=FAINT, linewidth=1.5)
    axes.text(1.15e3, LAW[0] - 0.25, "amplification factor", fontsize=SMALL_TEXT, va="top", color=INK)
    axes.semilogx(load, stage_gain(LAW[0], 11e3, load), color=SEA)
    anode, _ = operating_point(HT, load, BIAS, *LAW)
    axes.semilogx(load, stage_gain(LAW[0], anode_resistance(anode, BIAS, *LAW), load), color=RUST, dashes=(6, 2))
    axes.set(xlim=(1e3, 1e6), ylim=(0, 10), yticks=[0, 2, 4, 6, 8, 10], ylabel="gain")
    marks(axes.xaxis, [1e3, 1e4, 1e5, 1e6], ["1", "10", "100", "1000"])
    axes.set_xlabel("load, kΩ")
    return drawing


@figure(
    caption="What the tone finds between the anode and earth: µ times the signal, behind the anode resistance, and the load.",
    alt="Circuit: a source marked µ times V, in series with a resistor marked anode resistance, feeds a load resistor R.",
)
def equivalent():
    with schematic() as drawing:
        Oscillator().at((0, 0)).to((0, 2)).color(SEA).label("µV", loc="top", color=SEA, ofst=0.15)
        Resistor().at((0, 2)).to((3.2, 2)).color(BRASS).label("rₐ", loc="top", color=BRASS)
        Resistor().at((3.2, 2)).to((3.2, 0)).color(RUST).label("R", loc="bottom", color=RUST)
        wire((3.2, 2), (4.4, 2))
        wire((0, 0), (4.4, 0))
        Dot().at((3.2, 2)).color(INK)
        Dot().at((3.2, 0)).color(INK)
        Supply("out", side="right").at((4.4, 2)).color(INK)
        Supply("", side="right").at((4.4, 0)).color(INK)
    return drawing


@figure(
    caption="A tone of 2 V peak on the grid of that stage, and what the anode makes of it. It comes out upside down, "
    "and its lower half is the larger: the law's bend again.",
    alt="Two plots against time over two cycles. Above, the grid, a sine between minus 5 and minus 1 volts. "
    "Below, the anode, between 51 and 73 volts, low when the grid is high, the dips a little deeper than the "
    "crests are high.",
)
def upside_down(
    swing: Annotated[float, Between("crest of the tone on the grid", 0.2, 2.9, "V")] = 2.0,
    load: Annotated[float, Between("load", 5e3, 200e3, "Ω")] = LOAD,
):
    drawing, (above, below) = plot(rows=2, height=4.2)
    time = np.linspace(0, 2, 161)
    grid = BIAS + swing * np.sin(2 * np.pi * time)
    anode, _ = operating_point(HT, load, grid, *LAW)
    rest, _ = operating_point(HT, load, BIAS, *LAW)
    for axes, values, level, colour in ((above, grid, BIAS, PLUM), (below, anode, rest, SEA)):
        axes.axhline(level, color=KELP, linewidth=1, dashes=(4, 3))
        axes.plot(time, values, color=colour)
    above.set(ylabel="grid, V", yticks=[-5, -3, -1], yticklabels=["−5", "−3", "−1"])
    below.set(ylabel="anode, V", yticks=[50, 60, 70, 80], xlabel="time, cycles", xlim=(0, 2), xticks=[0, 0.5, 1, 1.5, 2])
    return drawing
