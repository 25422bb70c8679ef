"""Valve, sections 6 and 7: the grid leak, the one-valve set and what it gains."""

import numpy as np
from schemdraw.elements import FuseIEC, Label

from course.figures import figure
from course.figures.kit.parts import (
    Condenser,
    Dot,
    Earth,
    Headphones,
    Resistor,
    Supply,
    Triode,
    VariableCondenser,
    Windings,
    schematic,
    wire,
    wire_over,
)
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, marks, plot
from solutions.unit04_crystal_set.crystal_set import LOAD, SATURATION_CURRENT, SENSITIVITY, SLOPE_VOLTAGE
from solutions.unit04_crystal_set.detector_load import detector_powers
from solutions.unit04_crystal_set.phone_loudness import hearing_threshold, sound_pressure_level
from solutions.unit05_valve.grid_leak import bias_with_carrier, grid_gain, rest_bias
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import (
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    ZERO_CURRENT,
    detector_gain,
    one_valve_set,
)
from solutions.unit05_valve.triode_current import triode_current

SOURCE = 190e3  # ohm: aerial and tuned circuit of the club's set, loosely coupled
TONE, DEPTH = 1000.0, 0.3


@figure(
    caption="The one-valve set. New against the crystal set is all that is coloured: the grid condenser with its "
    "leak, the valve, and the supply with its fuse and the resistor that empties the condenser. The letters "
    "are places to measure at.",
    alt="Circuit diagram. The tuned circuit's upper end, B, goes through a condenser of 100 picofarads to the "
    "grid, C, of a type 30. A leak of 2 megohms joins the grid to the positive end of the filament, A. The "
    "anode, D, is joined to headphones with a condenser across them, then, at E, to a resistor of 10 kilohms "
    "with a condenser to earth, then, at F, through a fuse to HT plus 90 volts. From F 100 kilohms lead to "
    "earth.",
)
def set_with_places():
    with schematic() as drawing:
        top = 2.6
        coils = Windings(3, 5).at((0.7, 1.3)).color(INK)
        wire(coils.top1, (0.1, coils.top1[1]))
        Supply("aerial", side="top").at((0.1, coils.top1[1])).color(INK)
        wire(coils.bottom1, (0.1, coils.bottom1[1]), (0.1, 0))
        Earth().at((0.1, 0)).color(INK)
        wire(coils.top2, (coils.top2[0], top), (2.1, top))
        wire(coils.bottom2, (coils.bottom2[0], 0))
        VariableCondenser().at((2.1, top)).to((2.1, 0)).color(INK)
        Dot().at((2.1, top)).color(INK).label("B", loc="top", ofst=0.15)
        Dot().at((2.1, 0)).color(INK)
        Dot().at((coils.bottom2[0], 0)).color(INK)
        Condenser().at((2.1, top)).to((3.6, top)).color(RUST)
        Dot().at((3.6, top)).color(RUST).label("C", loc="top", ofst=0.15)
        Resistor().at((3.6, top)).to((3.6, 0.75)).color(RUST).label("2 MΩ", loc="top", color=RUST, ofst=0.12)
        valve = Triode().at((5.1, top - 0.1)).color(SEA)
        wire((3.6, top), valve.grid)
        left, right = valve.filament1, valve.filament2
        wire_over(left, 0.75, (left[0], 0))
        wire(right, (right[0], 0.75), (3.6, 0.75))
        Dot().at((right[0], 0.75)).color(INK)
        wire((right[0], 0.75), (6.1, 0.75))
        Supply("A: LT+ 2 V", side="right").at((6.1, 0.75)).color(SEA)
        wire((0.1, 0), (6.1, 0))
        Dot().at((left[0], 0)).color(INK)
        Supply("0 V", side="right").at((6.1, 0)).color(INK)
        x, y = valve.anode
        Dot().at((x, y)).color(INK).label("D", loc="left", ofst=0.15)
        wire((x, y), (x, y + 0.1))
        Headphones().at((x, y + 0.1)).to((x, y + 1.7)).color(INK)
        wire((x, y), (x + 1.2, y), (x + 1.2, y + 0.3))
        Condenser().at((x + 1.2, y + 0.3)).to((x + 1.2, y + 1.5)).color(INK)
        wire((x + 1.2, y + 1.5), (x + 1.2, y + 1.7), (x, y + 1.7))
        Dot().at((x, y + 1.7)).color(INK)
        Label().at((x + 0.5, y + 2.05)).label("E").color(INK)
        Resistor().at((x, y + 1.7)).to((x, y + 3.3)).color(SEA).label("10 kΩ", loc="top", color=SEA, ofst=0.12)
        wire((x, y + 1.7), (x - 1.6, y + 1.7), (x - 1.6, y + 1.5))
        Condenser().at((x - 1.6, y + 1.5)).to((x - 1.6, y + 0.6)).color(SEA).label("1 µF", loc="top", color=SEA, ofst=0.1)
        Earth().at((x - 1.6, y + 0.6)).color(SEA)
        Dot().at((x, y + 3.3)).color(INK).label("F", loc="top", ofst=0.15)
        wire((x, y + 3.3), (x - 2.9, y + 3.3), color=RUST)
        Resistor().at((x - 2.9, y + 3.3)).to((x - 2.9, y + 1.3)).color(RUST).label("100 kΩ", loc="top", color=RUST, ofst=0.12)
        Earth().at((x - 2.9, y + 1.3)).color(RUST)
        FuseIEC().at((x, y + 3.3)).to((x + 1.5, y + 3.3)).color(RUST).label("fuse", color=RUST)
        Supply("+90 V", side="right").at((x + 1.5, y + 3.3)).color(RUST)
    return drawing


@figure(
    caption="The grid's own current, and what a leak of 2 MΩ brings. Where they cross, the grid settles: with the "
    "leak to the filament's positive end at {{ number('unit05_valve.grid_leak:rest_bias', '2 MΩ', 2.0, '0.5 "
    "µA', 0.12, unit='V', figures=2) }}, with the leak to its negative end at {{ "
    "number('unit05_valve.grid_leak:rest_bias', '2 MΩ', 0.0, '0.5 µA', 0.12, unit='V', figures=2) }}.",
    alt="Current in microamperes against grid voltage from minus 0.8 to 0.2 volts. A curve that is nearly nothing"
    " on the left and climbs ever more steeply to half a microampere at 0 volts. Two slanting straight lines "
    "cross it: one at nearly 1 microampere a little above 0 volts, the other at a tenth of a microampere and "
    "minus a fifth of a volt.",
)
def where_the_grid_settles():
    drawing, axes = plot()
    grid = np.linspace(-0.8, 0.12, 185)
    axes.plot(grid, ZERO_CURRENT * np.exp(grid / GRID_SLOPE), color=SEA)
    for back, colour, dashes, name, at in (
        (LEAK_RETURN, RUST, (6, 2), "leak to LT+", (-0.78, 1.42e-6)),
        (0.0, BRASS, (3, 1.5), "leak to LT−", (-0.78, 0.46e-6)),
    ):
        axes.plot(grid, (back - grid) / LEAK, color=colour, dashes=dashes)
        rest = rest_bias(LEAK, back, ZERO_CURRENT, GRID_SLOPE)
        axes.plot(rest, (back - rest) / LEAK, "o", color=colour)
        axes.text(*at, name, color=colour, fontsize=SMALL_TEXT)
    axes.text(-0.19, 0.36e-6, "grid", color=SEA)
    axes.axvline(0, color=FAINT, linewidth=1.2)
    axes.set(xlim=(-0.8, 0.12), ylim=(0, 2e-6), xlabel="grid voltage, V")
    marks(axes.xaxis, [-0.8, -0.6, -0.4, -0.2, 0])
    engineering_axis(axes.yaxis, "current", "A", ticks=4)
    return drawing


@figure(
    caption="A carrier of 1 V at the grid, its strength swung by 60 % (drawn with far too few cycles). The grid "
    "charges the condenser until only the very tips are positive: all crests stand on one level, and the "
    "middle (thick) carries the tone. The anode's current follows that middle.",
    alt="Two plots against time over two cycles of a tone. Above, a dense wave whose crests all lie a quarter to "
    "half a volt above zero and whose troughs swing between minus 0.5 and minus 2.8 volts; a thick line along"
    " its middle swings from minus 0.1 to minus 1.2. Below, the averaged anode current swings in step with "
    "that line, from 3 to 2.2 milliamperes.",
)
def crests_on_a_level():
    drawing, (above, below) = plot(rows=2, height=4.6)
    time = np.linspace(0, 2, 601)
    crest = 1.0 - 0.6 * np.cos(2 * np.pi * time)
    middle = bias_with_carrier(crest, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    above.plot(time, middle + crest * np.cos(2 * np.pi * 25 * time), color=SEA, linewidth=0.8)
    above.plot(time, middle, color=RUST, linewidth=2.6)
    above.axhline(0, color=INK, linewidth=0.9)
    above.set(ylabel="grid, V")
    marks(above.yaxis, [-3, -2, -1, 0])
    round_a_cycle = np.cos(np.pi * (np.arange(32) + 0.5) / 32)
    anode, _ = operating_point(HT, STEADY_RESISTANCE, bias_with_carrier(1.0, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE), *LAW)
    swing = middle[:, None] + crest[:, None] * round_a_cycle
    below.plot(time, 1e3 * triode_current(anode, swing, *LAW).mean(axis=1), color=KELP)
    below.set(ylabel="anode, mA", xlabel="time, cycles of the tone", xlim=(0, 2), xticks=[0, 0.5, 1, 1.5, 2])
    return drawing


@figure(
    caption="What each grid condenser lets through, with a leak of 2 MΩ and a carrier of 0.1 V. Its value hardly "
    "matters until it is too large: then the treble goes.",
    alt="Decibels against the tone from 50 hertz to 5 kilohertz. Four curves start together at 0: 50 and 100 "
    "picofarads stay within half a decibel; 250 picofarads has lost 2.4 decibels at 5 kilohertz; 1 nanofarad "
    "has lost over 11.",
)
def treble():
    drawing, axes = plot()
    tone = np.logspace(np.log10(50), np.log10(5000), 101)
    grid = bias_with_carrier(0.1, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    current = (LEAK_RETURN - grid) / LEAK
    for capacitance, colour, dashes, name in (
        (50e-12, SEA, (None, None), "50 pF"),
        (100e-12, KELP, (6, 2), "100 pF"),
        (250e-12, BRASS, (3, 1.5), "250 pF"),
        (1e-9, RUST, (1, 1.2), "1000 pF"),
    ):
        gain = grid_gain(0.1, tone, capacitance, LEAK, current, GRID_SLOPE)
        level = 20 * np.log10(gain / grid_gain(0.1, 0.0, capacitance, LEAK, current, GRID_SLOPE))
        axes.semilogx(tone, level, color=colour, dashes=dashes, label=name)
    axes.legend(loc="lower left")
    axes.set(xlim=(50, 5000), ylim=(-12.5, 1), ylabel="treble, dB")
    marks(axes.yaxis, [-12, -9, -6, -3, 0])
    marks(axes.xaxis, [50, 200, 1000, 5000])
    axes.set_xlabel("tone, Hz")
    return drawing


@figure(
    caption="Volts of tone at the telephones for each volt by which it swings the carrier. A weak carrier is detected"
    " poorly, as by a crystal; a very strong one drives the grid so far down that the valve tires.",
    alt="Gain against carrier from 3 millivolts to 3 volts on a scale of tens. The curve climbs in proportion "
    "from 0.07, bends at a few tenths of a volt and is flat at about 5 near 1 volt, then sinks to 4. A dashed"
    " level line at 1 is marked: as much as it swings.",
)
def gain_of_the_detector():
    drawing, axes = plot()
    carrier = np.logspace(np.log10(3e-3), np.log10(3), 60)
    axes.loglog(carrier, [detector_gain(volts, TONE) for volts in carrier], color=SEA)
    axes.axhline(1, color=BRASS, dashes=(5, 3), linewidth=1.2)
    axes.text(3.4e-3, 1.12, "as much as it swings", color=BRASS, fontsize=SMALL_TEXT)
    axes.set(xlim=(3e-3, 3), ylim=(0.05, 10), ylabel="gain")
    marks(axes.yaxis, [0.1, 1, 10])
    marks(axes.xaxis, [0.01, 0.1, 1])
    axes.set_xlabel("carrier at the grid, V")
    return drawing


@figure(
    caption="How loud a tone of 1 kHz is, depth 30 %, from the same aerial, coil and telephones: crystal set and "
    "one-valve set. The valve is never less than 28 dB ahead.",
    alt="Sound pressure level in decibels against the carrier's voltage on the tuned circuit, from 3 millivolts "
    "to 3 volts. Two lines climb together; the valve's from 0 to 105 decibels, the crystal's 29 to 38 "
    "decibels below it. A level line at 2 decibels marks the threshold of hearing.",
)
def against_the_crystal():
    drawing, axes = plot(height=3.4)
    carrier = np.logspace(np.log10(4e-3), np.log10(3), 40)
    valve = [sound_pressure_level(one_valve_set(volts, SOURCE, DEPTH, TONE), SENSITIVITY) for volts in carrier]
    crystal = [
        sound_pressure_level(detector_powers(volts, SOURCE, DEPTH, LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)[-1], SENSITIVITY)
        for volts in carrier
    ]
    axes.semilogx(carrier, valve, color=SEA)
    axes.semilogx(carrier, crystal, color=RUST, dashes=(6, 2))
    axes.axhline(hearing_threshold(TONE), color=PLUM, linewidth=1.2, dashes=(2, 2))
    axes.text(2.8, hearing_threshold(TONE) + 2, "threshold of hearing", color=PLUM, fontsize=SMALL_TEXT, ha="right")
    axes.text(0.045, 62, "one valve", color=SEA, ha="right")
    axes.text(0.25, 22, "crystal", color=RUST)
    axes.set(xlim=(4e-3, 3), ylim=(-32, 115), yticks=[0, 30, 60, 90], ylabel="in the ear, dB")
    marks(axes.xaxis, [0.01, 0.1, 1])
    axes.set_xlabel("carrier on the tuned circuit, V")
    return drawing
