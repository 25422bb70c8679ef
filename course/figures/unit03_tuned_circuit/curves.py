"""Tuned circuit, sections 1 to 5: resonance, Q, the response curve and ringing."""

from typing import Annotated

import numpy as np

from course.circle.components import COIL_Q
from course.circle.components import LOCAL_CONDENSER as CAPACITANCE
from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.parts import Coil, Condenser, Line, Oscillator, Resistor, schematic
from course.figures.kit.style import (
    BRASS,
    FAINT,
    INK,
    PLUM,
    RUST,
    SEA,
    SMALL_TEXT,
    THREE_LOOKS,
    engineering_axis,
    label,
    marks,
    plot,
)
from course.settings import Between
from solutions.unit03_tuned_circuit.quality_factor import bandwidth, half_power_frequencies
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit03_tuned_circuit.response_curve import decibels, relative_response, universal_response
from solutions.unit03_tuned_circuit.ring_down import ring_amplitude, ring_energy, ring_voltage
from solutions.unit04_crystal_set.crystal_set import COIL as INDUCTANCE

LOOKS = dict(zip((30, 80, 200), THREE_LOOKS, strict=True))  # of each Q


@figure(
    caption="The tuned circuit. The signal drives a current round; the coil's loss is drawn as a resistance R by itself.",
    alt="A loop of four parts in series: a source of alternating voltage E, a resistor R, a coil L and a condenser C.",
)
def circuit():
    with schematic() as drawing:
        Line().at((0.4, 0)).to((0, 0))
        Line().at((0, 0)).to((0, 2))
        Line().at((0, 2)).to((0.4, 2))
        Oscillator().at((0.4, 0)).to((2.4, 0)).label("E", loc="bottom", ofst=0.25)
        Resistor().at((0.4, 2)).to((2.4, 2)).label("R", loc="top")
        Coil().at((2.4, 2)).to((4.4, 2)).label("L", loc="top")
        Line().at((4.4, 2)).to((4.8, 2))
        Condenser().at((4.8, 2)).to((4.8, 0)).label("C", loc="bottom", ofst=0.1)
        Line().at((4.8, 0)).to((2.4, 0))
    return drawing


@figure(
    caption="Where the energy is, in a circuit of Q 12 left to itself. It goes from condenser to coil and back, twice "
    "in each cycle. The sum (upper line) only falls, fastest when the current is strongest.",
    alt="Against time in cycles: the condenser's energy starts at 1 and swings between its crest and zero twice a "
    "cycle; the coil's does the same in between. Their sum steps down smoothly from 1 to about a quarter in two and "
    "a half cycles.",
)
def give_and_take(q: Annotated[float, Between("Q of the circuit", 3, 100)] = 12.0):
    drawing, axes = plot()
    frequency = 1.0
    time = np.linspace(0, 2.5, 401)
    voltage = ring_voltage(time, frequency, q)
    current = -np.gradient(voltage, time, edge_order=2) / (2 * np.pi * frequency)  # volts: times the reactance
    axes.plot(time, voltage**2, color=SEA, label="in the condenser")
    axes.plot(time, current**2, color=BRASS, dashes=(5, 2), label="in the coil")
    axes.plot(time, voltage**2 + current**2, color=INK, linewidth=1.2, label="in both")
    axes.set(xlabel="time, cycles", ylabel="energy, of the first", ylim=(0, 1.32), xlim=(0, 2.5), yticks=[0, 0.5, 1])
    axes.legend(loc="upper right", ncols=2, columnspacing=1)
    return drawing


@figure(
    caption="The two reactances, 200 µH and 177 pF. The coil's climbs with frequency, the condenser's sinks. They are "
    "equal in one place only.",
    alt="Reactance in kilohms against frequency from 300 kilohertz to 1.6 megahertz. A rising straight line, the "
    "coil, and a falling curve, the condenser, cross at 846 kilohertz and 1.06 kilohms.",
)
def reactances():
    drawing, axes = plot()
    frequency = np.linspace(300e3, 1.6e6, 200)
    coil = 2 * np.pi * frequency * INDUCTANCE
    condenser = coil - series_impedance(frequency, INDUCTANCE, CAPACITANCE, 0.0).imag
    axes.plot(frequency, coil, color=BRASS)
    axes.plot(frequency, condenser, color=SEA, dashes=(5, 2))
    resonance = resonant_frequency(INDUCTANCE, CAPACITANCE)
    meet = 2 * np.pi * resonance * INDUCTANCE
    axes.plot([resonance, resonance, 300e3], [0, meet, meet], color=INK, linewidth=0.9, dashes=(1, 2))
    axes.plot(resonance, meet, "o", color=INK)
    label(axes, f"equal at\n{resonance / 1e3:.0f} kHz", (resonance, meet), (0, 18), ha="center")
    axes.text(1.38e6, 1.95e3, "coil", color=BRASS, ha="right")
    axes.text(0.45e6, 2.35e3, "condenser", color=SEA)
    axes.set(xlim=(300e3, 1.6e6), ylim=(0, 3e3))
    engineering_axis(axes.xaxis, "frequency", "Hz")
    engineering_axis(axes.yaxis, "reactance", "Ω", ticks=4)
    return drawing


@figure(
    caption="The same stations through three coils. The neighbour, 9 kHz up, is {{ "
    "number('unit03_tuned_circuit.response_curve:decibels', "
    "value('unit03_tuned_circuit.response_curve:relative_response', '855 kHz', '846 kHz', 30), unit='dB', "
    "figures=2) }} at Q 30, {{ number('unit03_tuned_circuit.response_curve:decibels', "
    "value('unit03_tuned_circuit.response_curve:relative_response', '855 kHz', '846 kHz', 80), unit='dB', "
    "figures=2) }} at Q 80 and {{ number('unit03_tuned_circuit.response_curve:decibels', "
    "value('unit03_tuned_circuit.response_curve:relative_response', '855 kHz', '846 kHz', 200), unit='dB', "
    "figures=3) }} at Q 200.",
    alt="Response in decibels against frequency from 816 to 876 kilohertz: three peaks at 846 kilohertz, the broadest "
    "for Q 30, the narrowest for Q 200. An upright line marks the neighbour at 855 kilohertz; dots show where it "
    "meets each curve.",
)
def three_sharpnesses():
    drawing, axes = plot(height=3.5)
    frequency = np.linspace(LOCAL.frequency - 30e3, LOCAL.frequency + 30e3, 241)
    for station, side in ((LOCAL, "right"), (NEXT_CHANNEL, "left")):
        axes.axvline(station.frequency, color=FAINT, linewidth=1.2)
        label(
            axes,
            station.name,
            (station.frequency, 2.6),
            (5 if side == "left" else -5, 0),
            ha=side,
            va="center",
            fontsize=SMALL_TEXT,
        )
    for q, (colour, dashes) in LOOKS.items():
        axes.plot(frequency, decibels(relative_response(frequency, LOCAL.frequency, q)), color=colour, dashes=dashes)
        heard = decibels(relative_response(NEXT_CHANNEL.frequency, LOCAL.frequency, q))
        axes.plot(NEXT_CHANNEL.frequency, heard, "o", color=colour)
        level = decibels(relative_response(frequency[24], LOCAL.frequency, q))
        label(axes, f"Q {q}", (frequency[24], level), (0, 4), colour, ha="right", va="bottom", fontsize=SMALL_TEXT)
    axes.set(ylim=(-25, 4), yticks=[-20, -10, -3, 0], ylabel="response, dB")
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="The band of the club's coil, Q 100, on 846 kHz. Its edges are where the current has fallen to 0.707, and "
    "so the power to half.",
    alt="Response against frequency: a bell-like peak of height 1 at 846 kilohertz. A level line at 0.707 meets it at "
    "841.8 and 850.2 kilohertz; the part between is shaded and marked 8.46 kilohertz wide.",
)
def the_band(q: Annotated[float, Between("Q of the circuit", 40, 400)] = COIL_Q):
    drawing, axes = plot()
    frequency = np.linspace(LOCAL.frequency - 20e3, LOCAL.frequency + 20e3, 241)
    lower, upper = half_power_frequencies(LOCAL.frequency, q)
    inside = np.linspace(lower, upper, 60)
    let_through = np.abs(relative_response(inside, LOCAL.frequency, q))
    axes.fill_between(inside, let_through, color=SEA, alpha=0.2, linewidth=0)
    axes.plot(frequency, np.abs(relative_response(frequency, LOCAL.frequency, q)), color=SEA)
    edge = np.sqrt(0.5)
    axes.plot([frequency[0], upper], [edge, edge], color=INK, linewidth=0.9, dashes=(1, 2))
    axes.plot([lower, upper], [edge, edge], "o", color=INK)
    axes.annotate("", (lower, 0.4), (upper, 0.4), arrowprops={"arrowstyle": "<->", "color": INK, "shrinkA": 0, "shrinkB": 0})
    axes.text(LOCAL.frequency, 0.28, f"{bandwidth(LOCAL.frequency, q) / 1e3:.2f} kHz", ha="center", va="center")
    axes.set(ylim=(0, 1.08), yticks=[0, 0.5, edge, 1], yticklabels=["0", "0.5", "0.707", "1"], ylabel="response")
    engineering_axis(axes.xaxis, "frequency", "Hz")
    return drawing


@figure(
    caption="The universal curve: every tuned circuit, near its resonance, on one sheet. Dotted: the exact response "
    "for Q 10, where the difference can just be seen.",
    alt="Two plots against distance from resonance in bandwidths, from minus 3 to 3. Above, the size: 1 at the "
    "middle, 0.71 at half a bandwidth, 0.45 at one, 0.24 at two. Below, the phase: from plus 81 degrees through 0 "
    "to minus 81; 45 degrees at half a bandwidth.",
)
def universal_curve():
    drawing, (size, phase) = plot(rows=2, height=4.6)
    detuning = np.linspace(-3, 3, 241)
    curve, exact = universal_response(detuning), relative_response(1 + detuning / 10, 1.0, 10)
    for axes, part in ((size, np.abs), (phase, lambda response: np.degrees(np.angle(response)))):
        axes.plot(detuning, part(curve), color=SEA)
        axes.plot(detuning, part(exact), color=RUST, dashes=(1, 1.6))
    for a in (0.5, 1, 2):
        label(size, f"{np.abs(universal_response(a)):.2f}", (a, np.abs(universal_response(a))), (7, 3), fontsize=SMALL_TEXT)
        size.plot(a, np.abs(universal_response(a)), "o", color=SEA, markersize=5)
    size.set(ylim=(0, 1.08), yticks=[0, 0.5, 1], ylabel="response")
    phase.set(ylabel="phase, degrees", xlabel="bandwidths off resonance", xticks=np.arange(-3, 4))
    marks(phase.yaxis, [-90, -45, 0, 45, 90])
    return drawing


@figure(
    caption="Ringing at Q 30. The dashed envelope falls to 1/e, that is 37 %, in Q/π cycles: here {{ "
    "number('unit03_tuned_circuit.ring_down:cycles_to_fall', 30, 0.36787944117144233, unit='', figures=3) }}.",
    alt="A wave of even pace that starts at 1 volt and dies away evenly under a dashed envelope; after nine and a "
    "half cycles, marked by an upright line, the envelope has fallen to 0.37, and after 25 cycles to 0.07.",
)
def ringing(q: Annotated[float, Between("Q of the circuit", 3, 75)] = 30.0):
    drawing, axes = plot()
    cycles = np.linspace(0, 25, 751)
    axes.plot(cycles, ring_voltage(cycles, 1.0, q), color=SEA, linewidth=1)
    for sign in (1, -1):
        axes.plot(cycles[::10], sign * ring_amplitude(cycles[::10], 1.0, q), color=RUST, dashes=(4, 2), linewidth=1.3)
    fallen = q / np.pi
    axes.plot([fallen, fallen], [0, np.exp(-1)], color=PLUM)
    label(axes, "down to 37 %", (fallen, np.exp(-1)), (4, 12), PLUM, fontsize=SMALL_TEXT)
    axes.set(xlabel="time, cycles", ylabel="voltage, V", xlim=(0, 25))
    marks(axes.yaxis, [-1, 0, 1])
    return drawing


@figure(
    caption="What is left of the energy, on a scale of equal ratios. On it each Q is a straight line; a tenfold Q "
    "rings ten times as long.",
    alt="Energy left against time up to 100 microseconds at 846 kilohertz, on a logarithmic scale from 1 to 0.001. "
    "Straight falling lines: Q 30 reaches 0.001 after 39 microseconds, Q 80 is at 0.001 near 100 microseconds, Q "
    "200 is at 0.07 there.",
)
def energy_left():
    drawing, axes = plot()
    time = np.linspace(0, 100e-6, 101)
    for q, (colour, dashes) in LOOKS.items():
        axes.semilogy(time, ring_energy(time, LOCAL.frequency, q), color=colour, dashes=dashes)
    for q, place in ((30, 27e-6), (80, 63e-6), (200, 70e-6)):
        label(axes, f"Q {q}", (place, ring_energy(place, LOCAL.frequency, q)), (5, 4), LOOKS[q][0])
    axes.set(ylim=(1e-3, 1.2), xlim=(0, 100e-6))
    marks(axes.yaxis, [1e-3, 1e-2, 0.1, 1])
    axes.set_ylabel("energy left")
    engineering_axis(axes.xaxis, "time", "s")
    return drawing
