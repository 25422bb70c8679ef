"""Feedback receivers, sections 6 to 8: from the detector to a loudspeaker."""

import numpy as np

from course.circle.loudspeaker_set import (
    COUPLING,
    LAST_BIAS,
    LEAK,
    LOAD,
    MOST_HARMONIC,
    PRIMARY,
    RESISTOR,
    RESISTOR_BIAS,
    REST,
    SENSITIVITY,
    SPEAKER,
    STRAY,
    TAPS,
    TYPE_31,
    first_stage,
)
from course.figures import figure
from course.figures.kit.parts import (
    Condenser,
    Dot,
    Earth,
    Loudspeaker,
    Resistor,
    Supply,
    Triode,
    Windings,
    ht_feed,
    schematic,
    wire,
)
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from solutions.unit04_crystal_set.phone_loudness import sound_pressure_level
from solutions.unit05_valve.load_line import load_line_current, operating_point
from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.triode_current import anode_resistance, triode_current
from solutions.unit09_feedback_receivers.two_stage_audio import (
    battery_needs,
    output_power,
    resistance_gain,
    speaker_level,
)


@figure(
    caption="Two stages to a loudspeaker, after any detector: a type 30 and a type 31. Each grid has a bias of its own, "
    "and the last one the largest. The resistors in the HT leads save the filaments.",
    alt="Circuit: the tone comes through a condenser to the grid of a first triode, with a leak to minus 4.5 volts. Its "
    "anode works a transformer, fed from HT through a resistor, whose secondary goes to the grid of the output triode "
    "and to minus 15 volts. Its anode works an output transformer, fed from HT through a resistor too, with a "
    "loudspeaker on the secondary.",
)
def two_stages():
    with schematic() as drawing:
        level = 2.2
        first, second = Triode().at((2.3, level)), Triode().at((5.6, level)).color(RUST)
        between = Windings(3, 4).at((3.6, level - 0.58)).color(PLUM)
        out = Windings(5, 3).at((7.2, level + 0.1)).color(RUST)
        x, y = first.grid
        Condenser().at((-0.4, y)).to((0.7, y))
        wire((0.7, y), (x, y))
        Dot().at((0.7, y))
        Supply("tone", side="bottom").at((-0.4, y))
        Resistor().at((0.7, y)).to((0.7, 0.5))
        Supply("−4.5 V", side="bottom").at((0.7, 0.5))
        wire(between.top2, (between.top2[0], y), second.grid)
        wire(between.bottom2, (between.bottom2[0], -1.0))
        Supply("−15 V", side="bottom").at((between.bottom2[0], -1.0))
        for valve, coils in ((first, between), (second, out)):
            x, y = valve.anode
            wire(valve.anode, (x, y + 0.3), (coils.top1[0], y + 0.3), coils.top1)
            x, y = coils.bottom1
            ht_feed((x, y), (x, y - 1.3), side="bottom")
            left, right = valve.filament1, valve.filament2
            wire(left, (left[0], left[1] - 0.15))
            Earth().at((left[0], left[1] - 0.15))
            wire(right, (right[0], right[1] - 0.2), (right[0] + 0.15, right[1] - 0.2))
            Supply("LT", side="right").at((right[0] + 0.15, right[1] - 0.2))
        speaker = Loudspeaker().at((8.4, level + 0.33)).color(RUST)
        wire(out.top2, (out.top2[0], speaker.in1[1]), speaker.in1, color=RUST)
        wire(out.bottom2, (out.bottom2[0], speaker.in2[1]), speaker.in2, color=RUST)
    return drawing


@figure(
    caption="Two ways from one anode to the next grid. A resistor's volts go through a condenser; a transformer's "
    "secondary gives them several times over, and no condenser is needed.",
    alt="Two circuits side by side. Left: an anode joined to a resistor up to HT and to a condenser C that leads to the "
    "next grid, where a leak goes to bias. Right: an anode's current goes through a primary and a small resistor to HT; the secondary, with "
    "three times the turns, stands between the next grid and bias.",
)
def two_couplings():
    with schematic() as drawing:
        wire((0, 1.6), (1.0, 1.6))
        wire((2.2, 1.6), (2.9, 1.6))
        Supply("anode", side="left").at((0, 1.6))
        Resistor().at((0.6, 1.6)).to((0.6, 3.2)).color(BRASS).label("R", loc="top", color=BRASS)
        Supply("HT+").at((0.6, 3.2))
        Dot().at((0.6, 1.6))
        Condenser().at((1.0, 1.6)).to((2.2, 1.6)).color(BRASS).label("C", loc="top", color=BRASS)
        Resistor().at((2.5, 1.6)).to((2.5, 0)).color(BRASS).label("leak", loc="bottom", color=BRASS)
        Supply("bias", side="bottom").at((2.5, 0))
        Dot().at((2.5, 1.6))
        Supply("grid", side="right").at((2.9, 1.6))
        coils = Windings(3, 6).at((6.1, 1.6)).color(SEA)
        wire(coils.top1, (5.5, coils.top1[1]))
        Supply("anode", side="left").at((5.5, coils.top1[1]))
        wire(coils.bottom1, (5.8, coils.bottom1[1]))
        ht_feed((5.8, coils.bottom1[1]), (5.8, coils.bottom1[1] - 1.3), side="bottom")
        wire(coils.top2, (7.2, coils.top2[1]))
        Supply("grid", side="right").at((7.2, coils.top2[1]))
        wire(coils.bottom2, (coils.bottom2[0] + 0.4, coils.bottom2[1]), (coils.bottom2[0] + 0.4, 0.3))
        Supply("bias", side="bottom").at((coils.bottom2[0] + 0.4, 0.3))
    return drawing


@figure(
    caption="Gain of the first stage against pitch: a type 30 coupled by a 1:3 transformer (solid), by 100 kΩ and 10 nF "
    "(dashed), and by a cheap small transformer with a quarter of the primary (dotted).",
    alt="Gain in decibels against pitch from 20 hertz to 20 kilohertz. The transformer gives 29 decibels in the middle, "
    "loses 3 at 85 hertz, and has a hump of 5 decibels at 9 kilohertz before it falls to 18. The resistor gives 18, "
    "level from 60 hertz to the end. The small transformer has lost 11 decibels at 100 hertz.",
)
def couplings():
    drawing, axes = plot(height=3.5)
    tone = np.geomspace(20, 20e3, 240)
    anode, _ = operating_point(HT, RESISTOR, RESISTOR_BIAS, *LAW)
    by_resistor = resistance_gain(LAW[0], anode_resistance(anode, RESISTOR_BIAS, *LAW), RESISTOR, LEAK, COUPLING, STRAY, tone)
    for gain, colour, dashes, words, place in (
        (first_stage(tone), SEA, (None, None), "1:3 transformer", (400, 30)),
        (by_resistor, BRASS, (6, 2), "resistor", (400, 14.5)),
        (first_stage(tone, PRIMARY / 4), RUST, (2, 1.5), "small primary", (75, 8)),
    ):
        axes.semilogx(tone, 20 * np.log10(gain), color=colour, dashes=dashes)
        axes.text(*place, words, color=colour, fontsize=SMALL_TEXT, va="bottom")
    axes.set(xlim=(20, 20e3), ylim=(0, 38), yticks=[0, 10, 20, 30], ylabel="gain, dB", xlabel="pitch")
    marks(axes.xaxis, [100, 1e3, 1e4], ["100 Hz", "1 kHz", "10 kHz"])
    return drawing


@figure(
    caption="Type 31 on 90 V. The load line goes through the point of rest, not through the battery's 90 V: on its upward "
    "swing the anode stands above the HT, for the transformer gives back what it stored. The shaded triangle is "
    "the power of the tone.",
    alt="Anode current against anode volts. Curves for 0, minus 7.5, minus 15, minus 22.5 and minus 30 volts on the grid. "
    "A straight line falls from 13 milliamperes at 28 volts through dots at 55 volts and 9.3 milliamperes, 90 volts "
    "and 4.4, and 119 volts and 0.3. A right-angled triangle under the line between the outer dots is shaded.",
)
def output_line():
    drawing, axes = plot(height=3.7)
    voltage = np.linspace(0, 150, 151)
    for grid in (0.0, -7.5, -15.0, -22.5, -30.0):
        current = triode_current(voltage, grid, *TYPE_31)
        colour = RUST if grid == LAST_BIAS else INK
        axes.plot(voltage, current, color=colour, linewidth=1.8 if grid == LAST_BIAS else 1.0)
        top = min(11.5e-3, current[-8])
        label(
            axes,
            f"{grid:g}".replace("-", "−"),
            (np.interp(top, current, voltage), top),
            (-4, 1),
            colour,
            ha="right",
            fontsize=SMALL_TEXT,
        )
    virtual = HT + REST * LOAD
    ends = [operating_point(virtual, LOAD, grid, *TYPE_31) for grid in (0.0, 2 * LAST_BIAS)]
    line = np.array([20.0, virtual])
    axes.plot(line, load_line_current(line, virtual, LOAD), color=BRASS, dashes=(6, 2))
    (low, high), (far, little) = ends
    axes.fill([low, far, low], [high, little, little], color=BRASS, alpha=0.25, linewidth=0)
    axes.plot([low, HT, far], [high, REST, little], "o", color=INK)
    axes.axvline(HT, color=FAINT, linewidth=1.5, zorder=0)
    axes.set(xlim=(0, 150), ylim=(0, 13e-3))
    engineering_axis(axes.xaxis, "anode voltage", "V")
    axes.set_xticks([0, 30, 60, 90, 120, 150])
    engineering_axis(axes.yaxis, "anode current", "A")
    return drawing


@figure(
    caption="Power to the loudspeaker (above) and second harmonic (below) against the load, at full swing. The dots are "
    "the taps of the transformer; the filled one is the best that keeps 5 %. The dotted line is the valve's own "
    "resistance.",
    alt="Two plots against load from 2 to 30 kilohms. Above, power climbs from 48 milliwatts to a flat top of 73 at 7 "
    "kilohms and falls to 39. Below, second harmonic falls from 18 per cent through 5 per cent at 6.8 kilohms to under "
    "1 per cent. Five dots lie on each curve at 3.2, 5, 7.2, 9.8 and 12.8 kilohms; that at 7.2 is filled. A dotted "
    "line at 5.1 kilohms.",
)
def power_and_load():
    drawing, (above, below) = plot(rows=2, height=4.6)
    load = np.geomspace(2e3, 30e3, 121)
    taps = SPEAKER * TAPS**2
    for axes, part, scale, colour in ((above, 0, 1e3, SEA), (below, 1, 100, RUST)):
        axes.semilogx(load, scale * output_power(HT, LAST_BIAS, -LAST_BIAS, load, *TYPE_31)[part], color=colour)
        at_taps = scale * output_power(HT, LAST_BIAS, -LAST_BIAS, taps, *TYPE_31)[part]
        axes.plot(taps, at_taps, "o", color=INK, fillstyle="none")
        axes.plot(LOAD, at_taps[taps == LOAD], "o", color=INK)
        axes.axvline(anode_resistance(HT, LAST_BIAS, *TYPE_31), color=INK, linewidth=1, dashes=(1, 2))
    above.set(ylabel="power, mW", ylim=(0, 85), yticks=[0, 40, 80])
    below.axhline(100 * MOST_HARMONIC, color=KELP, linewidth=1.3, dashes=(4, 2))
    below.set(ylabel="harmonic, %", ylim=(0, 25), yticks=[0, 5, 10, 20], xlim=(2e3, 30e3), xlabel="load")
    marks(below.xaxis, [2e3, 5e3, 1e4, 2e4], ["2 kΩ", "5 kΩ", "10 kΩ", "20 kΩ"])
    return drawing


@figure(
    caption="Where the output stage's battery power goes at full swing, on a scale of tens. The last bar takes the "
    "loudspeaker for one of 90 dB that sounds forwards only.",
    alt="Four bars on a scale of tens: battery 398 milliwatts, heat in the valve 326, tone to the loudspeaker 73, sound in "
    "the room 0.44.",
)
def power_budget():
    drawing, axes = plot()
    tone, _ = output_power(HT, LAST_BIAS, -LAST_BIAS, LOAD, *TYPE_31)
    battery, heat, _ = battery_needs(HT, REST, tone, 1.0)
    names, powers = ("battery", "heat in valve", "tone", "sound"), (battery, heat, tone, tone * sound_share(SENSITIVITY))
    for place, (watts, colour) in enumerate(zip(powers, (SEA, RUST, BRASS, KELP), strict=True)):
        axes.barh(place, watts, left=0, color=colour, alpha=0.7, height=0.55)
        axes.text(watts * 1.15, place, f"{1e3 * watts:{'.0f' if watts > 1e-2 else '.2f'}} mW", va="center", fontsize=SMALL_TEXT)
    axes.set(xscale="log", xlim=(1e-4, 3), ylim=(3.6, -0.6), yticks=range(4), yticklabels=names, xlabel="power")
    marks(axes.xaxis, [1e-4, 1e-3, 1e-2, 1e-1, 1], ["0.1 mW", "1", "10", "100", "1 W"])
    axes.grid(axis="y", visible=False)
    return drawing


def sound_share(sensitivity):
    """Sound power from an electrical watt: intensity at a metre over the half sphere in front, air of 413 Pa s/m."""
    pressure = 20e-6 * 10 ** (sensitivity / 20)
    return pressure**2 / 413 * 2 * np.pi


@figure(
    caption="The same power in headphones on the ear and in a loudspeaker a metre away. The two lines are 50 dB apart. "
    "What a room and a talker make is from memory.",
    alt="Sound pressure level against power from 1 nanowatt to 1 watt. Two parallel straight lines, 50 decibels apart. The "
    "headphones' passes 80 decibels at 1 microwatt; the loudspeaker's at 0.1 watt. Dashed lines at 30 decibels, quiet "
    "room, and 65, talking.",
)
def phones_and_speaker():
    drawing, axes = plot(height=3.4)
    power = np.geomspace(1e-9, 1, 60)
    for level, colour, dashes, words, place in (
        (sound_pressure_level(power, 110.0), SEA, (None, None), "headphones", (1.7e-9, 76)),
        (speaker_level(power, SENSITIVITY, 1.0), RUST, (6, 2), "loudspeaker", (3e-5, 36)),
    ):
        axes.semilogx(power, level, color=colour, dashes=dashes)
        axes.text(*place, words, color=colour, fontsize=SMALL_TEXT)
    for level, words in ((30, "quiet room"), (65, "talking")):
        axes.axhline(level, color=INK, linewidth=1, dashes=(4, 2))
        axes.text(0.9, level - 1.5, words, fontsize=SMALL_TEXT, ha="right", va="top")
    axes.set(xlim=(1e-9, 1), ylim=(0, 120), yticks=[0, 30, 60, 90, 120], ylabel="level, dB", xlabel="power")
    marks(axes.xaxis, [1e-9, 1e-6, 1e-3, 1], ["1 nW", "1 µW", "1 mW", "1 W"])
    return drawing
