"""Crystal set, sections 1 to 3: the circuit, the crystal's curve, and how much it rectifies."""

from typing import Annotated

import numpy as np

from checker.checks.units import in_full
from course.circle.crystal_set import CRYSTAL, GERMANIUM, SCHOTTKY, SILICON, source
from course.circle.stations import ACROSS_THE_BAY, FAR_OVER_SEA, LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.parts import (
    Aerial,
    Condenser,
    CrystalDetector,
    Dot,
    Earth,
    Headphones,
    Line,
    Resistor,
    VariableCondenser,
    Windings,
    schematic,
)
from course.figures.kit.style import BRASS, INK, KELP, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from course.settings import Between
from solutions.unit01_signal.inverse_distance import field
from solutions.unit04_crystal_set.crystal_reach import reach
from solutions.unit04_crystal_set.crystal_set import (
    LOAD,
    SLOPE_VOLTAGE,
)
from solutions.unit04_crystal_set.detect_step import detect_step
from solutions.unit04_crystal_set.detector_load import working_point
from solutions.unit04_crystal_set.diode_current import diode_current
from solutions.unit04_crystal_set.rectified_voltage import no_load_output, square_law_output


def wires(*pairs):
    for start, end in pairs:
        Line().at(start).to(end)


@figure(
    caption="The Circle's crystal set. The telephones have 4 kΩ to a steady current and about 20 kΩ to a tone; 16 kΩ in "
    "line, with a condenser that lets the tone past it, makes the two alike.",
    alt="Circuit. An aerial through a small coil to earth; coupled to it, variably, a larger coil with a variable "
    "condenser across it. From the top of that through a crystal to a condenser of 1 nanofarad and, beside it, the "
    "telephones in line with 16 kilohms that have 0.1 microfarad across them, back to earth.",
)
def the_set():
    with schematic() as drawing:
        coils = Windings(4, 6, gap=0.7, variable=(2,)).at((1.1, 1.75))
        Aerial().at((0.3, 3.5))
        wires(
            ((0.3, 3.5), (0.3, 2.9)),
            ((0.3, 2.9), (1.1, 2.9)),
            ((1.1, 2.9), coils.top1),
            (coils.bottom1, (1.1, 0)),
            (coils.top2, (1.8, 3.5)),
            ((1.8, 3.5), (3, 3.5)),
            (coils.bottom2, (1.8, 0)),
            ((1.1, 0), (7.1, 0)),
        )
        VariableCondenser().at((3, 3.5)).to((3, 0))
        CrystalDetector().at((3, 3.5)).to((4.7, 3.5)).label("crystal", loc="top", color=RUST).color(RUST)
        Condenser().at((4.7, 3.5)).to((4.7, 0)).label("1 nF", loc="bottom", ofst=0.1)
        wires(((4.7, 3.5), (6.3, 3.5)))
        Headphones().at((6.3, 3.5)).to((6.3, 1.7)).label("phones", loc="bottom", ofst=0.35)
        Resistor().at((6.3, 1.7)).to((6.3, 0)).label("16 kΩ", loc="top", ofst=0.08)
        wires(((6.3, 1.7), (7.1, 1.7)))
        Condenser().at((7.1, 1.7)).to((7.1, 0)).label("0.1 µF", loc="bottom", ofst=0.1)
        for place in ((1.8, 0), (3, 0), (3, 3.5), (4.7, 3.5), (4.7, 0), (6.3, 1.7), (6.3, 0)):
            Dot().at(place)
        Earth().at((1.1, 0))
    return drawing


@figure(
    caption="The current that three kinds of diode let through, typical ones. None of them waits for a threshold: the "
    "curve bends everywhere, and bends in its own step of voltage.",
    alt="Current in microamperes against voltage from minus 100 to 300 millivolts. The germanium curve rises at about "
    "100 millivolts and is just below zero backwards. The Schottky curve rises at about 200 millivolts; silicon is still "
    "near zero at 300 millivolts.",
)
def three_crystals():
    drawing, axes = plot()
    voltage = np.linspace(-0.1, 0.36, 160)
    for diode, colour, dashes, name, place in (
        (GERMANIUM, RUST, (None, None), "germanium", (0.098, 47e-6)),
        (SCHOTTKY, SEA, (6, 2), "Schottky", (0.192, 40e-6)),
        (SILICON, BRASS, (2, 1.5), "silicon", (0.29, 9e-6)),
    ):
        axes.plot(voltage, diode_current(voltage, *diode), color=colour, dashes=dashes)
        axes.text(*place, name, color=colour, fontsize=SMALL_TEXT, ha="right")
    axes.set(xlim=(-0.1, 0.36), ylim=(-6e-6, 60e-6))
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.axvline(0, color=INK, linewidth=0.8)
    engineering_axis(axes.xaxis, "voltage", "V")
    engineering_axis(axes.yaxis, "current", "A", ticks=4)
    return drawing


@figure(
    caption="Two carriers at the same crystal, with no load. Above, crest 10 mV: what comes back in the hard half of the "
    "cycle nearly undoes the easy half. Below, crest 100 mV: puffs, and next to nothing back.",
    alt="Two plots of current against time over two cycles. Above, nearly a sine wave, its upper half waves only a little "
    "taller than the lower. Below, tall narrow peaks of 27 microamperes, and between them a flat line just under zero.",
)
def weak_and_strong(
    weak: Annotated[float, Between("crest of the carrier above", 1e-3, 0.3, "V")] = 0.01,
    strong: Annotated[float, Between("crest of the carrier below", 1e-3, 0.3, "V")] = 0.1,
):
    drawing, panes = plot(rows=2, height=4.3)
    cycles = np.linspace(0, 2, 241)
    for axes, crest in zip(panes, (weak, strong), strict=True):
        current = diode_current(crest * np.cos(2 * np.pi * (cycles - 0.25)), *CRYSTAL)
        axes.fill_between(cycles, current, 0, where=current >= 0, color=KELP, alpha=0.45, linewidth=0)
        axes.fill_between(cycles, current, 0, where=current <= 0, color=RUST, alpha=0.45, linewidth=0)
        axes.plot(cycles, current, color=INK, linewidth=1.4)
        axes.axhline(0, color=INK, linewidth=0.8)
        axes.set_xlim(0, 2)
        engineering_axis(axes.yaxis, "current", "A", ticks=4)
    panes[1].set(xticks=[0, 1, 2], xlabel="cycles of the carrier")
    return drawing


@figure(
    caption="What an unloaded crystal of slope voltage 30 mV makes of a carrier. Both scales are logarithmic. Where the "
    "curve is twice as steep as the line on the right, half the carrier gives a quarter of the output.",
    alt="Output against crest of the carrier, 1 millivolt to 3 volts, on logarithmic scales. Up to 30 millivolts the "
    "curve lies on a steep dashed line, the square law; from there it bends and comes close to a dotted line of equal "
    "output and carrier. Points: Gannet Rock at 5.7 millivolts, Merrow Sound at 0.12, Curlew Bank at 0.3 and Saltmarsh "
    "Point at 0.9 volts.",
)
def two_laws():
    drawing, axes = plot(height=3.9)
    carrier = np.geomspace(1e-3, 3, 120)
    axes.plot(carrier, no_load_output(carrier, SLOPE_VOLTAGE), color=SEA)
    axes.plot(carrier, square_law_output(carrier, SLOPE_VOLTAGE), color=RUST, dashes=(6, 2), linewidth=1.3)
    axes.plot(carrier, carrier, color=BRASS, dashes=(1.5, 1.5), linewidth=1.3)
    for station, shift, side in (
        (NEXT_CHANNEL, (8, -6), "left"),
        (FAR_OVER_SEA, (9, -7), "left"),
        (ACROSS_THE_BAY, (9, -8), "left"),
        (LOCAL, (-9, 4), "right"),
    ):
        crest, _ = working_point(*source(station), LOAD, *CRYSTAL)
        axes.plot(crest, no_load_output(crest, SLOPE_VOLTAGE), "o", color=INK, markersize=5)
        label(axes, station.name, (crest, no_load_output(crest, SLOPE_VOLTAGE)), shift, ha=side, fontsize=SMALL_TEXT)
    axes.set(xscale="log", yscale="log", xlim=(1e-3, 20), ylim=(3e-6, 8))
    axes.text(3.2e-3, 2.2e-5, "square law", color=RUST, fontsize=SMALL_TEXT, ha="left")
    axes.text(2e-3, 4.5e-3, "all of it", color=BRASS, fontsize=SMALL_TEXT, ha="left")
    marks(axes.xaxis, [1e-3, 1e-2, 0.1, 1], ["1 mV", "10 mV", "0.1 V", "1 V"])
    marks(axes.yaxis, [1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1], ["10 µV", "0.1 mV", "1 mV", "10 mV", "0.1 V", "1 V"])
    axes.set(xlabel="crest of the carrier", ylabel="output")
    return drawing


@figure(
    caption="The same at a tone's pace: the envelope that comes in, and what an unloaded crystal makes of it, each drawn "
    "from 0 to its own crest. The strong station keeps its shape; the weak one is bent.",
    alt="Two curves over two cycles of a tone at a depth of 0.8. One, for a carrier of 1 volt, is nearly the dotted "
    "sine of the envelope. The other, for 5 millivolts, has narrow crests and broad shallow troughs.",
)
def bent(
    strong: Annotated[float, Between("crest of the strong carrier", 1e-3, 3, "V")] = 1.0,
    weak: Annotated[float, Between("crest of the weak carrier", 1e-4, 3, "V")] = 5e-3,
    depth: Annotated[float, Between("depth of modulation", 0.1, 1)] = 0.8,
):
    drawing, axes = plot(height=2.9)
    cycles = np.linspace(0, 2, 200)
    envelope = 1 + depth * np.cos(2 * np.pi * (cycles - 0.5))
    axes.plot(cycles, envelope / (1 + depth), color=BRASS, dashes=(1.5, 1.5), label="envelope")
    for crest, colour, dashes in ((strong, SEA, (6, 2)), (weak, RUST, (None, None))):
        output = no_load_output(crest * envelope, SLOPE_VOLTAGE)
        axes.plot(cycles, output / output.max(), color=colour, dashes=dashes, label=in_full(crest, "V", 3))
    axes.set(
        xlim=(0, 2), ylim=(0, 1.32), xticks=[0, 1, 2], yticks=[0, 0.5, 1], xlabel="cycles of the tone", ylabel="of the crest"
    )
    axes.legend(loc="upper center", ncols=3, columnspacing=1.1, handlelength=2)
    return drawing


@figure(
    caption="Behind a perfect crystal, with a slow carrier so that its pushes can be seen. A short time constant leaves the pushes in, a "
    "fair one follows the voice, a long one cannot follow it down.",
    alt="A carrier whose strength rises and falls, and three voltages held on a condenser. The one of the short time constant "
    "sags between the crests; the fair one runs along the crests; the long one stays high while the crests fall away.",
)
def held():
    drawing, axes = plot(height=2.8)
    time = np.linspace(0, 1, 401)
    wave = (1 + 0.7 * np.cos(2 * np.pi * time)) * np.cos(2 * np.pi * 25 * time)
    axes.plot(time, wave, color=SEA, linewidth=0.8)
    for constant, colour, dashes, words in (
        (0.02, KELP, (1.5, 1.5), "short"),
        (0.15, INK, (None, None), "fair"),
        (0.8, RUST, (5, 2), "long"),
    ):
        voltage = [wave[0]]
        for now in wave[1:]:
            voltage.append(detect_step(voltage[-1], now, time[1] - time[0], constant))
        axes.plot(time, voltage, color=colour, dashes=dashes, linewidth=1.4, label=words)
    axes.set(xlabel="time, cycles of the tone", ylabel="V", xlim=(0, 1), ylim=(-1.8, 2.5), yticks=[-1, 0, 1])
    axes.legend(loc="upper center", ncols=3)
    return drawing


@figure(
    caption="How far out a station of 1 kW makes 5 mV/m, over perfect ground.",
    alt="Field in millivolts a metre against distance to 100 kilometres, a falling curve. It meets a line at 5 millivolts a metre "
    "at 60 kilometres.",
)
def how_far():
    drawing, axes = plot(height=2.5)
    distance, need, power = np.linspace(10e3, 100e3, 200), 5e-3, 1e3
    axes.plot(distance / 1e3, 1e3 * field(power, distance), color=SEA)
    axes.axhline(1e3 * need, color=RUST, dashes=(5, 2), linewidth=1.2)
    out = reach(power, need) / 1e3
    axes.plot([out, out], [0, 1e3 * need], color=RUST, linewidth=1.2)
    axes.annotate(f"{out:.0f} km", (out, 1e3 * need), (4, 5), textcoords="offset points", color=RUST)
    axes.set(xlabel="distance, km", ylabel="field, mV/m", xlim=(10, 100), ylim=(0, 20))
    return drawing
