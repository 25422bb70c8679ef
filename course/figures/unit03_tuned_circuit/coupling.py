"""Tuned circuit, sections 6 and 7: two coupled circuits, and the aerial."""

import numpy as np

from course.circle.components import COIL_Q
from course.circle.components import FIRST_AERIAL_COIL as AERIAL_COIL
from course.circle.components import FIRST_TOP as TOP
from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.parts import (
    Aerial,
    Coil,
    Dot,
    Earth,
    Line,
    Oscillator,
    Resistor,
    VariableCondenser,
    Windings,
    schematic,
)
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from solutions.unit01_signal.aerial_voltage import aerial_capacitance, aerial_emf, effective_height
from solutions.unit03_tuned_circuit.aerial_coupling import (
    best_mutual_inductance,
    critical_coupling,
    loaded_quality_factor,
)
from solutions.unit03_tuned_circuit.reflected_impedance import (
    mutual_from_coupling,
    reflected_impedance,
    secondary_current,
    series_impedance,
)
from solutions.unit03_tuned_circuit.response_curve import decibels
from solutions.unit04_crystal_set.crystal_set import COIL as INDUCTANCE
from solutions.unit04_crystal_set.crystal_set import EARTH_RESISTANCE as AERIAL_RESISTANCE
from solutions.unit04_crystal_set.crystal_set import HEIGHT, WIRE_RADIUS

AERIAL_CAPACITANCE = aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS)
EMF = aerial_emf(LOCAL.field, effective_height(HEIGHT, TOP))
RESISTANCE = 2 * np.pi * LOCAL.frequency * INDUCTANCE / COIL_Q


def aerial_impedance(frequency):
    """Ohms all the way round the hut's aerial circuit."""
    return series_impedance(frequency, AERIAL_COIL, AERIAL_CAPACITANCE, AERIAL_RESISTANCE)


def current(frequency, mutual):
    """Amperes in the tuned circuit, per volt in the aerial, with the condenser set for the local station."""
    local = LOCAL.frequency
    reactance = 2 * np.pi * local * INDUCTANCE + reflected_impedance(local, mutual, aerial_impedance(local)).imag
    condenser = 1 / (2 * np.pi * local * reactance)
    tuned = series_impedance(frequency, INDUCTANCE, condenser, RESISTANCE)
    return np.abs(secondary_current(1.0, frequency, mutual, aerial_impedance(frequency), tuned))


@figure(
    caption="The hut's set as far as this unit goes. The aerial has a coil of its own, which slides: closer or further off.",
    alt="An aerial goes down through a small coil to earth. Beside that coil, coupled to it by an arrow that says "
    "variable, stands a larger coil with a variable condenser across it; its foot is earthed too.",
)
def aerial_and_circuit():
    with schematic() as drawing:
        coils = Windings(5, 7, gap=0.7, variable=(2,)).at((2, 1.5))
        Aerial().at((0.6, 3.1)).label("aerial", loc="right", ofst=(0.25, 0.35))
        for start, end in (
            ((0.6, 3.1), (0.6, 2.7)),
            ((0.6, 2.7), (2, 2.7)),
            ((2, 2.7), coils.top1),
            (coils.bottom1, (2, 0)),
            (coils.top2, (2.7, 3)),
            ((2.7, 3), (4.6, 3)),
            (coils.bottom2, (2.7, 0)),
            ((2, 0), (4.6, 0)),
        ):
            Line().at(start).to(end)
        VariableCondenser().at((4.6, 3)).to((4.6, 0)).label("C", loc="bottom", ofst=0.05)
        Earth().at((2, 0))
        for place in ((2, 0), (2.7, 0)):
            Dot().at(place)
        Line().at((1.5, 1.5)).to((1.5, 1.5)).label("L₁", loc="left", ofst=0.05)
        Line().at((3.15, 1.5)).to((3.15, 1.5)).label("L", loc="right", ofst=0.05)
    return drawing


@figure(
    caption="What the tuned circuit feels of it: one more impedance in the ring, and the aerial's signal as a source.",
    alt="A loop in series: a source marked j omega M I1, a box marked Z reflected, a resistor R, a coil L, and a "
    "variable condenser C.",
)
def as_the_circuit_sees_it():
    with schematic() as drawing:
        Line().at((0, 2)).to((0, 0))
        Line().at((0, 0)).to((2, 0))
        Oscillator().at((2, 0)).to((4, 0)).label("ωMI₁", loc="bottom", ofst=0.25).color(RUST)
        Resistor().at((0, 2)).to((2, 2)).label("reflected", loc="top").color(RUST)
        Resistor().at((2, 2)).to((4, 2)).label("R", loc="top")
        Coil().at((4, 2)).to((6, 2)).label("L", loc="top")
        VariableCondenser().at((6, 2)).to((6, 0)).label("C", loc="bottom", ofst=0.05)
        Line().at((6, 0)).to((4, 0))
    return drawing


@figure(
    caption="Two circuits tuned alike, 200 µH and Q 100 at 1 MHz. Below the critical coupling one low peak; at it the "
    "highest; beyond it two peaks with a dip between.",
    alt="Current in the second circuit against frequency, 970 to 1030 kilohertz, as a fraction of the greatest. Half "
    "the critical coupling: one peak of 0.8. Critical: one flat-topped peak of 1. Twice critical: two peaks of 1 "
    "near 991 and 1009 kilohertz with a dip to 0.8 between.",
)
def one_hump_or_two():
    drawing, axes = plot(height=3.3)
    resonance, q = 1e6, 100
    capacitance = 1 / ((2 * np.pi * resonance) ** 2 * INDUCTANCE)
    resistance = 2 * np.pi * resonance * INDUCTANCE / q
    frequency = np.linspace(970e3, 1030e3, 241)
    alone = series_impedance(frequency, INDUCTANCE, capacitance, resistance)
    for times, colour, dashes, name in (
        (0.5, RUST, (6, 2), "half"),
        (1, SEA, (None, None), "critical"),
        (2, BRASS, (3, 1.5), "twice"),
    ):
        mutual = mutual_from_coupling(times * critical_coupling(q, q), INDUCTANCE, INDUCTANCE)
        current = np.abs(secondary_current(1.0, frequency, mutual, alone, alone)) * 2 * resistance
        axes.plot(frequency, current, color=colour, dashes=dashes, label=name)
    axes.set(ylim=(0, 1.32), yticks=[0, 0.5, 1], ylabel="current, of the greatest", xlim=(970e3, 1030e3))
    axes.legend(loc="upper center", ncols=3, columnspacing=1.2, handlelength=2.2)
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="Sliding the aerial coil, with the set retuned each time. Above: the power that arrives, greatest at the "
    "critical coupling (line). Below: a neighbour 9 kHz off. The looser, the better it is kept out.",
    alt="Two plots against mutual inductance from 0 to 100 microhenries. Above, the power in the tuned circuit rises "
    "from 0, is greatest, 1.9 milliwatts, at 40 microhenries, and sinks to 0.9. Below, the neighbour's level rises "
    "steadily from minus 6.6 decibels at no coupling to minus 4.6.",
)
def volume_against_selectivity():
    drawing, (volume, neighbour) = plot(rows=2, height=4.6)
    mutual = np.linspace(0.5e-6, 100e-6, 200)
    aerial = aerial_impedance(LOCAL.frequency)
    best = best_mutual_inductance(LOCAL.frequency, aerial, RESISTANCE)
    wanted, unwanted = (current(station.frequency, mutual) for station in (LOCAL, NEXT_CHANNEL))
    volume.plot(mutual, (EMF * wanted) ** 2 * RESISTANCE, color=SEA)
    neighbour.plot(mutual, decibels(unwanted / wanted), color=RUST)
    for axes in (volume, neighbour):
        axes.axvline(best, color=PLUM, linewidth=1.2, dashes=(4, 2))
    label(volume, "critical", (best, 0.2e-3), (6, 0), PLUM, fontsize=SMALL_TEXT)
    volume.set(ylim=(0, 2.2e-3), xlim=(0, 100e-6))
    engineering_axis(volume.yaxis, "power", "W", ticks=4)
    neighbour.set(ylabel="neighbour, dB", ylim=(-8, 0))
    marks(neighbour.yaxis, [-8, -6, -4, -2, 0])
    engineering_axis(neighbour.xaxis, "mutual inductance", "H")
    return drawing


@figure(
    caption="The same slide seen as Q. At the critical coupling the aerial takes as much as the coil loses.",
    alt="Loaded Q against mutual inductance: 100 with the aerial coil far away, 56 at the critical coupling of 40 "
    "microhenries, 24 at 100 microhenries.",
)
def loaded_q():
    drawing, axes = plot(height=2.7)
    mutual = np.linspace(0, 100e-6, 200)
    aerial = aerial_impedance(LOCAL.frequency)
    best = best_mutual_inductance(LOCAL.frequency, aerial, RESISTANCE)
    axes.plot(mutual, loaded_quality_factor(LOCAL.frequency, mutual, aerial, INDUCTANCE, RESISTANCE), color=SEA)
    axes.axvline(best, color=PLUM, linewidth=1.2, dashes=(4, 2))
    axes.plot(best, loaded_quality_factor(LOCAL.frequency, best, aerial, INDUCTANCE, RESISTANCE), "o", color=INK)
    axes.set(ylim=(0, 108), yticks=[0, 50, 100], ylabel="loaded Q", xlim=(0, 100e-6))
    engineering_axis(axes.xaxis, "mutual inductance", "H")
    return drawing
