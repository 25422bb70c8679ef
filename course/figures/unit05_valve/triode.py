"""Valve, sections 1 to 3: emission, space charge, the grid and the three numbers."""

import numpy as np

from course.figures import figure
from course.figures.kit.style import (
    BRASS,
    FAINT,
    INK,
    KELP,
    PLUM,
    RUST,
    SEA,
    SMALL_TEXT,
    SOFT,
    engineering_axis,
    label,
    marks,
    plot,
)
from solutions.unit05_valve.emission import emission_density, temperature_for
from solutions.unit05_valve.one_valve import gain
from solutions.unit05_valve.one_valve_set import LAW
from solutions.unit05_valve.space_charge import anode_density, gap_potential
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance, triode_current
from solutions.unit05_valve.triodes import MANUAL

OXIDE, THORIATED, TUNGSTEN = (100.0, 1.0), (3.0e4, 2.63), (60.0e4, 4.52)
GAP = 2.5e-3  # metre


@figure(
    caption="What a square metre of three surfaces can give. Each needs its own heat for the same current; each of "
    "them climbs as steeply. The dots: 1000 A/m², a tenth of an ampere from a square centimetre.",
    alt="Emission in amperes per square metre, on a scale of tens from 1 to 100 thousand, against temperature "
    "from 600 to 2800 kelvin. Three steep curves: oxide reaches a thousand at about 1000 kelvin, thoriated "
    "tungsten near 1650, tungsten near 2400.",
)
def three_surfaces():
    drawing, axes = plot(height=3.3)
    for name, surface, colour, dashes, ends in (
        ("oxide", OXIDE, RUST, (None, None), (650, 1300)),
        ("thoriated", THORIATED, BRASS, (6, 2), (1200, 2200)),
        ("tungsten", TUNGSTEN, SEA, (3, 1.5), (1850, 2800)),
    ):
        temperature = np.linspace(*ends, 120)
        axes.semilogy(temperature, emission_density(temperature, *surface), color=colour, dashes=dashes)
        wanted = float(temperature_for(1000.0, *surface))
        axes.plot(wanted, 1000.0, "o", color=colour)
        label(axes, f"{name}\n{wanted:.0f} K", (wanted, 1000.0), (7, -5), colour, va="top", fontsize=SMALL_TEXT)
    axes.set(ylim=(1, 1e5), xlim=(600, 2900), xticks=[1000, 1500, 2000, 2500])
    marks(axes.yaxis, [1, 10, 100, 1e3, 1e4, 1e5], ["1", "10", "100", "1000", "10⁴", "10⁵"])
    axes.set(xlabel="temperature, K", ylabel="emission, A/m²")
    return drawing


@figure(
    caption="The voltage on the way from filament to anode, 90 V over 2.5 mm. Without electrons it rises evenly. With"
    " as many as can pass, it starts level: those on the way just cancel the anode's pull on those that have "
    "not left.",
    alt="Voltage against distance. A dashed straight line from 0 to 90 volts; below it a curve that leaves zero "
    "level and bends up to the same end. Half way it is at 36 volts instead of 45.",
)
def sagging_voltage():
    drawing, axes = plot()
    place = np.linspace(0, GAP, 101)
    axes.plot(place, 90 * place / GAP, color=INK, dashes=(5, 3), linewidth=1.3)
    axes.plot(place, gap_potential(place, 90.0, GAP), color=SEA)
    axes.text(1.0e-3, 45, "empty", ha="right", color=INK)
    axes.text(1.45e-3, 33, "full of electrons", color=SEA)
    axes.set(xlim=(0, GAP), ylim=(0, 92), yticks=[0, 30, 60, 90], ylabel="voltage, V")
    engineering_axis(axes.xaxis, "from the filament", "m")
    return drawing


@figure(
    caption="The current across 2.5 mm, for a filament of oxide at three temperatures. All three follow one curve, "
    "the three-halves law, as far as their heat will carry them. (In a real valve the corners are round.)",
    alt="Current density against anode voltage from 0 to 200 volts. All curves climb together along one bent "
    "line; one leaves it for the level at 204 amperes a square metre, the next at 447, while the third is "
    "still on it at 912 near 180 volts.",
)
def two_limits():
    drawing, axes = plot()
    voltage = np.linspace(0, 220, 221)
    for temperature, colour, dashes in ((900.0, BRASS, (3, 1.5)), (950.0, RUST, (6, 2)), (1000.0, SEA, (None, None))):
        emission = emission_density(temperature, *OXIDE)
        axes.plot(voltage, anode_density(voltage, GAP, emission), color=colour, dashes=dashes)
        label(
            axes,
            f"{temperature:.0f} K",
            (220, anode_density(220.0, GAP, emission)),
            (0, 4),
            colour,
            ha="right",
            fontsize=SMALL_TEXT,
        )
    axes.set(xlim=(0, 220), ylim=(0, 1050))
    engineering_axis(axes.xaxis, "anode voltage", "V")
    engineering_axis(axes.yaxis, "current", "A/m²")
    return drawing


@figure(
    caption="Type 30: anode current by the law, one curve for each grid voltage. The dots are the "
    "three lines of its manual, at −4.5 V, −9 V and −13.5 V.",
    alt="Anode current from 0 to 8 milliamperes against anode voltage from 0 to 200 volts. Five curves of one "
    "bent shape, for 0, minus 2, minus 4.5, minus 9 and minus 13.5 volts, each shifted to the right of the "
    "one before. Three dots lie on or beside the curves of minus 4.5, 9 and 13.5 volts.",
)
def family():
    drawing, axes = plot(height=3.6)
    voltage = np.linspace(0, 210, 211)
    for grid, colour in ((0.0, SEA), (-2.0, SEA), (-4.5, RUST), (-9.0, BRASS), (-13.5, KELP)):
        current = triode_current(voltage, grid, *LAW)
        at = min(7.2e-3, 0.75 * current[-1])
        axes.plot(voltage, current, color=colour)
        reached = np.interp(at, current, voltage)
        label(axes, f"{grid:g}".replace("-", "−"), (reached, at), (-4, 2), colour, ha="right", fontsize=SMALL_TEXT)
    for line in MANUAL["30"]:
        axes.plot(line.anode_voltage, line.anode_current, "o", color=INK, markersize=6)
    axes.set(xlim=(0, 210), ylim=(0, 8e-3))
    label(axes, "grid, V", (20, 7.2e-3), (-14, 2), PLUM, ha="center", fontsize=SMALL_TEXT)
    engineering_axis(axes.xaxis, "anode voltage", "V")
    engineering_axis(axes.yaxis, "anode current", "A")
    return drawing


@figure(
    caption="The same law from the other side: anode current against grid voltage, for two anode voltages. The slope "
    "at the dot is the mutual conductance. The flat way across, at the same current, is the amplification "
    "factor: 45 V on the anode do as much as 4.8 V on the grid.",
    alt="Anode current against grid voltage from minus 14 to 0 volts. Two curves of the same shape, for 90 and "
    "135 volts, 4.8 volts apart. A straight line touches the 90 volt curve at minus 4.5 volts and 2.5 "
    "milliamperes, marked 0.85 milliampere a volt. A level arrow joins the two curves.",
)
def slope_and_shift():
    drawing, axes = plot(height=3.6)
    grid = np.linspace(-14, 0, 141)
    for anode, colour, dashes in ((90.0, SEA, (None, None)), (135.0, BRASS, (6, 2))):
        axes.plot(grid, triode_current(anode, grid, *LAW), color=colour, dashes=dashes)
    here, slope = triode_current(90.0, -4.5, *LAW), mutual_conductance(90.0, -4.5, *LAW)
    touch = np.array([-6.6, -1.8])
    axes.plot(touch, here + slope * (touch + 4.5), color=RUST, linewidth=1.3)
    axes.plot(-4.5, here, "o", color=INK)
    axes.text(-3.0, 3.0e-3, f"{slope * 1e3:.2f} mA\na volt", color=RUST, fontsize=SMALL_TEXT, va="top")
    shift = (135.0 - 90.0) / LAW[0]
    axes.annotate(
        "", (-4.5 - shift, here), (-4.5, here), arrowprops={"arrowstyle": "<->", "color": PLUM, "shrinkA": 0, "shrinkB": 3}
    )
    axes.text(-4.5 - shift / 2, here + 0.15e-3, f"{shift:.1f} V", color=PLUM, ha="center", fontsize=SMALL_TEXT)
    axes.text(-0.9, 6.7e-3, "90 V", color=SEA, ha="right", fontsize=SMALL_TEXT)
    axes.text(-5.3, 6.7e-3, "135 V", color=BRASS, ha="right", fontsize=SMALL_TEXT)
    axes.set(xlim=(-14, 0), ylim=(0, 8e-3), xlabel="grid voltage, V")
    marks(axes.xaxis, [-12, -9, -6, -3, 0])
    engineering_axis(axes.yaxis, "anode current", "A")
    return drawing


@figure(
    caption="The three numbers of a type 30 at 90 V as its grid changes, each as a part of what it is at 0 V. The "
    "amplification factor is built into the wires and stays. The other two move against each other, and their"
    " product is that factor.",
    alt="Against grid voltage from minus 8 to 0 volts, relative to the value at 0 volts: a level line, the "
    "amplification factor, at 1; the mutual conductance, falling to the left to 0.4; the anode resistance, "
    "rising to the left to 2.4.",
)
def three_numbers():
    drawing, axes = plot()
    grid = np.linspace(-8, 0, 81)
    slope, resistance = mutual_conductance(90.0, grid, *LAW), anode_resistance(90.0, grid, *LAW)
    for values, colour, dashes, name, at in (
        (resistance / resistance[-1], BRASS, (6, 2), "anode resistance", (-5.6, 1.85)),
        (slope * resistance / LAW[0], INK, (2, 1.5), "amplification factor", (-7.9, 1.06)),
        (slope / slope[-1], SEA, (None, None), "mutual conductance", (-4.7, 0.55)),
    ):
        axes.plot(grid, values, color=colour, dashes=dashes)
        axes.text(*at, name, color=colour, fontsize=SMALL_TEXT)
    axes.axhline(0, color=FAINT, linewidth=0.8)
    axes.set(xlim=(-8, 0), ylim=(0, 2.7), xlabel="grid voltage, V", ylabel="of that at 0 V")
    marks(axes.xaxis, [-8, -6, -4, -2, 0])
    return drawing


@figure(
    caption="A type 30 at 90 V: how many volts at the anode for each volt at the grid, by the load. It comes near 9.35, and never there.",
    alt="Gain against load from 0 to 100 kilohms: a curve that rises steeply, passes half of 9.35 at 11 kilohms and flattens out "
    "below a dashed line at 9.35.",
)
def gain_and_load():
    drawing, axes = plot(height=2.6)
    conductance, own = 0.85e-3, 11e3
    load = np.linspace(1.0, 100e3, 300)
    axes.plot(load / 1e3, gain(conductance, own, load), color=SEA)
    axes.axhline(conductance * own, color=SOFT, dashes=(5, 2), linewidth=1)
    axes.plot(own / 1e3, gain(conductance, own, own), "o", color=RUST)
    axes.annotate(
        "half of it, at 11 kΩ", (own / 1e3, gain(conductance, own, own)), (9, -5), textcoords="offset points", color=RUST
    )
    axes.set(xlabel="load, kΩ", ylabel="gain", xlim=(0, 100), ylim=(0, 10.5))
    return drawing
