"""Crystal set, section 4: what the crystal takes from the tuned circuit, and where to tap the coil."""

import numpy as np

from course.circle.crystal_set import CRYSTAL, DEPTH, source
from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.parts import Condenser, CrystalDetector, Dot, Line, Oscillator, Resistor, schematic
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from solutions.unit03_tuned_circuit.response_curve import decibels, relative_response
from solutions.unit04_crystal_set.crystal_set import COIL, LOAD, SENSITIVITY
from solutions.unit04_crystal_set.detector_load import (
    detector_powers,
    detector_resistance,
    quality_factor_with_detector,
    working_point,
)
from solutions.unit04_crystal_set.phone_loudness import sound_pressure_level
from solutions.unit04_crystal_set.rectified_voltage import detector_output


def carrier_current(carrier):
    """Crest, in amperes, of what the crystal takes in the carrier's own time."""
    mean = detector_output(carrier, LOAD, *CRYSTAL) / LOAD
    return carrier / detector_resistance(carrier, mean, *CRYSTAL)


def quality_factor(station, tap=1.0):
    """Q that is left with the crystal joined at a part of the coil's turns."""
    voltage, resistance = source(station)
    carrier, output = working_point(tap * voltage, tap**2 * resistance, LOAD, *CRYSTAL)
    loaded = resistance / (2 * np.pi * station.frequency * COIL)
    taken = detector_resistance(carrier, output / LOAD, *CRYSTAL)
    return quality_factor_with_detector(loaded, tap**2 * resistance, taken)


@figure(
    caption="All that the crystal knows of the aerial and the coil: a voltage behind a resistance.",
    alt="A loop: a source marked E, a resistor marked R s, a crystal, and a load R with a condenser across it.",
)
def as_the_crystal_sees_it():
    with schematic() as drawing:
        Oscillator().at((0, 0)).to((0, 2.4)).label("E", loc="top", ofst=0.3).color(SEA)
        Resistor().at((0, 2.4)).to((2.2, 2.4)).label("Rₛ", loc="top", color=SEA).color(SEA)
        CrystalDetector().at((2.2, 2.4)).to((4.2, 2.4)).color(RUST)
        Condenser().at((4.2, 2.4)).to((4.2, 0))
        Line().at((4.2, 2.4)).to((5.4, 2.4))
        Resistor().at((5.4, 2.4)).to((5.4, 0)).label("R", loc="bottom", ofst=0.1)
        Line().at((5.4, 0)).to((0, 0))
        for place in ((4.2, 2.4), (4.2, 0)):
            Dot().at(place)
    return drawing


@figure(
    caption="Curve: what the crystal takes at each carrier. Straight line: what the tuned circuit still gives at each, "
    "for Saltmarsh Point. Both must hold, so it works where they cross.",
    alt="Current against carrier at the crystal, 0 to 1.4 volts. A curve rises from the corner. A straight line falls "
    "slowly from 77 microamperes and crosses it at 0.9 volts and 72 microamperes.",
)
def crossing():
    drawing, axes = plot(height=2.9)
    voltage, resistance = source(LOCAL)
    carrier = np.linspace(1e-3, 1.4, 120)
    axes.plot(carrier, carrier_current(carrier), color=RUST)
    axes.plot(carrier, (voltage - carrier) / resistance, color=SEA, dashes=(6, 2))
    point, _ = working_point(voltage, resistance, LOAD, *CRYSTAL)
    axes.plot(point, carrier_current(point), "o", color=INK)
    label(axes, "taken", (0.45, carrier_current(0.45)), (8, -12), RUST, fontsize=SMALL_TEXT)
    axes.text(0.03, 82e-6, "given", color=SEA, fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 1.4), ylim=(0, 120e-6))
    engineering_axis(axes.xaxis, "carrier at the crystal", "V")
    engineering_axis(axes.yaxis, "current", "A", ticks=4)
    return drawing


@figure(
    caption="The crystal's resistance to the carrier, into 20 kΩ. A faint carrier finds the crystal at rest, 30 kΩ; a strong "
    "one finds half of the load. The dots are Gannet Rock and Saltmarsh Point.",
    alt="Resistance against carrier, 1 millivolt to 10 volts on a logarithmic scale: level at 30 kilohms up to about 20 "
    "millivolts, then falling to a level of 10 kilohms above 3 volts.",
)
def resistance_to_the_carrier():
    drawing, axes = plot(height=2.8)
    carrier = np.geomspace(1e-3, 10, 120)
    axes.plot(carrier, carrier / carrier_current(carrier), color=RUST)
    for station in (NEXT_CHANNEL, LOCAL):
        crest, _ = working_point(*source(station), LOAD, *CRYSTAL)
        axes.plot(crest, crest / carrier_current(crest), "o", color=INK)
    axes.axhline(LOAD / 2, color=PLUM, linewidth=1.2, dashes=(4, 2))
    axes.set(xscale="log", xlim=(1e-3, 10), ylim=(0, 34e3), xlabel="carrier at the crystal")
    engineering_axis(axes.yaxis, "resistance", "Ω", ticks=4)
    marks(axes.xaxis, [1e-3, 1e-2, 0.1, 1, 10], ["1 mV", "10 mV", "0.1 V", "1 V", "10 V"])
    axes.text(1.4e-3, LOAD / 2 + 1.2e3, "half the load", color=PLUM, fontsize=SMALL_TEXT)
    return drawing


@figure(
    caption="The same tuned circuit three ways: with the aerial alone, with the crystal on a third of its turns, and with the "
    "crystal across all of them. The line is Gannet Rock's channel.",
    alt="Response in decibels, 800 to 892 kilohertz. Without the crystal a sharp peak, 11 decibels down at Gannet Rock. "
    "With the crystal on a third of the turns, 4 down. Across the whole coil the curve is nearly flat.",
)
def spoilt():
    drawing, axes = plot()
    frequency = np.linspace(800e3, 892e3, 240)
    voltage, resistance = source(LOCAL)
    for q, colour, dashes, name in (
        (quality_factor(LOCAL), RUST, (None, None), "all"),
        (quality_factor(LOCAL, 1 / 3), SEA, (6, 2), "a third"),
        (resistance / (2 * np.pi * LOCAL.frequency * COIL), BRASS, (2, 1.5), "none"),
    ):
        axes.plot(
            frequency,
            decibels(np.abs(relative_response(frequency, LOCAL.frequency, q))),
            color=colour,
            dashes=dashes,
            label=name,
        )
    axes.axvline(NEXT_CHANNEL.frequency, color=PLUM, linewidth=1)
    axes.set(xlim=(800e3, 892e3), ylim=(-33, 0), ylabel="response, dB")
    marks(axes.yaxis, [0, -10, -20])
    axes.legend(loc="lower center", ncols=3, columnspacing=1.2, handlelength=2)
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="Where to tap. Above, how loud Saltmarsh Point's tone is; below, the Q that is left. A third of the turns "
    "is louder than all of them, and five times sharper.",
    alt="Two plots against the part of the turns that the crystal is joined to, 5 to 100 per cent. Above, the level rises "
    "to 87.6 decibels at about 25 per cent and falls to 81 at 100. Below, Q falls from about 160 to 60 at a third, and 11 "
    "at 100 per cent.",
)
def tapped():
    drawing, (loud, sharp) = plot(rows=2, height=4.4)
    taps = np.linspace(0.05, 1, 60)
    voltage, resistance = source(LOCAL)
    tones = np.array([detector_powers(t * voltage, t**2 * resistance, DEPTH, LOAD, *CRYSTAL)[2] for t in taps])
    loud.plot(taps, sound_pressure_level(tones, SENSITIVITY), color=RUST)
    sharp.plot(taps, [quality_factor(LOCAL, t) for t in taps], color=SEA)
    for axes in (loud, sharp):
        axes.axvline(1 / 3, color=PLUM, linewidth=1.2, dashes=(4, 2))
    loud.set(ylabel="level, dB", ylim=(78, 90), yticks=[80, 84, 88])
    sharp.set(ylabel="Q", ylim=(0, 175), yticks=[0, 50, 100, 150], xlim=(0, 1), xlabel="part of the turns")
    marks(sharp.xaxis, [0, 0.25, 0.5, 0.75, 1], ["0", "¼", "½", "¾", "all"])
    return drawing
