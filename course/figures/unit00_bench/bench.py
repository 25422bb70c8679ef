"""Bench, sections 1, 2, 4 and 5: the table, the ladder of prefixes, a wave and a tone, the meter."""

from typing import Annotated

import numpy as np
from matplotlib.patches import Rectangle

from checker.checks.units import any_quantity, in_full
from course.circle.stations import ACROSS_THE_BAY, LOCAL
from course.figures import figure
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PAPER, RUST, SEA, SMALL_TEXT, plot
from course.settings import Between
from solutions.unit00_bench.dropper_resistor import current_through_dropper
from solutions.unit00_bench.metres import wavelength
from solutions.unit00_bench.prefixes import PREFIXES
from solutions.unit00_bench.tone import tone
from solutions.unit04_crystal_set.crystal_set import SENSITIVITY
from solutions.unit04_crystal_set.phone_loudness import least_audible_power

NAMES = {"f": "femto", "p": "pico", "n": "nano", "µ": "micro", "m": "milli", "": "", "k": "kilo", "M": "mega", "G": "giga"}
LARGE_TEXT = 14.0
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
ON_THE_LADDER = (
    (in_full(least_audible_power(1000.0, SENSITIVITY), "W", 2), "faintest tone heard"),
    ("5 pF", "from grid to anode"),
    ("365 pF", "a tuning condenser"),
    ("100 nF", "a by-pass condenser"),
    (in_full(1 / LOCAL.frequency, "s", 3), "one cycle of its wave"),
    ("200 µH", "a medium-wave coil"),
    ("60 mA", "a filament's current"),
    ("2 V", "its voltage"),
    ("15 m", "a garden aerial"),
    (in_full(ACROSS_THE_BAY.power, "W", 1), ACROSS_THE_BAY.name),
    (in_full(LOCAL.frequency, "Hz", 3), LOCAL.name),
    ("30 MHz", "end of short waves"),
    ("2.45 GHz", "a microwave oven"),
)
COLOURS = {"F": KELP, "H": BRASS, "Hz": SEA, "s": SEA}

TABLE = (  # left, foot, width, height, words
    (3, 4, 26, 15, "iron in\nits stand"),
    (3, 23, 26, 13, "mat, tools"),
    (37, 4, 27, 21, "the set\non a board"),
    (37, 29, 27, 10, "meter"),
    (71, 4, 26, 13, "headphones"),
    (71, 21, 26, 18, "supply,\nfuse first"),
)


@figure(
    caption="The bench at the hut, from above. What burns is on one side, what bites on the other, and somebody "
    "else can reach the switch.",
    alt="A plan of a table. The soldering iron in its stand and the tools are at the left, under an open window. "
    "The set on its board and the meter are in the middle, headphones and the fused supply at the right. In "
    "front sit you and, nearer to the main switch on the wall, somebody else.",
)
def bench_plan():
    drawing, axes = plot(height=3.7)
    axes.add_patch(Rectangle((0, 0), 100, 43, facecolor=FAINT, alpha=0.35, edgecolor=INK, linewidth=1.4))
    for left, foot, width, height, words in TABLE:
        colour = RUST if "iron" in words or "supply" in words else INK
        axes.add_patch(Rectangle((left, foot), width, height, facecolor=PAPER, edgecolor=colour, linewidth=1.6))
        middle = left + width / 2, foot + height / 2
        axes.text(*middle, words, ha="center", va="center", fontsize=SMALL_TEXT, color=colour)
    axes.plot([-4, 108, 108], [57, 57, -32], color=INK, linewidth=5, solid_joinstyle="miter")
    axes.plot([2, 36], [57, 57], color=PAPER, linewidth=3, solid_capstyle="butt")
    axes.text(2, 50, "window: fresh air", va="center", fontsize=SMALL_TEXT, color=SEA)
    axes.add_patch(Rectangle((104, -25), 4, 6, facecolor=RUST, edgecolor=RUST))
    axes.text(102, -22, "main switch", ha="right", va="center", fontsize=SMALL_TEXT, color=RUST)
    for x, words in ((18, "you"), (55, "somebody else")):
        axes.plot(x, -10, marker="o", markersize=15, color=KELP)
        axes.text(x + 6, -10, words, va="center")
    axes.set(xlim=(-5, 111), ylim=(-33, 60), aspect="equal")
    axes.axis("off")
    return drawing


@figure(
    caption="The ladder of prefixes. One step is a thousandfold; each quantity hangs where its number belongs.",
    alt="A ladder of nine rungs: femto, pico, nano, micro, milli, none, kilo, mega, giga. From 17 fW near the foot, the "
    "faintest tone that is heard in headphones, over 5 pF inside a valve, 365 pF, 200 µH, 60 mA, 2 V, 5 kW and 846 kHz, up "
    "to 2.45 GHz at the top.",
)
def ladder():
    drawing, axes = plot(height=6.9)
    for x in (0, 0.7):
        axes.plot([x, x], [-15.7, 10.3], color=INK, linewidth=2.4)
    for prefix, power in PREFIXES.items():
        axes.plot([0, 0.7], [power, power], color=INK, linewidth=2.4)
        factor = "10" + str(power).translate(RAISED) if power else "1"
        axes.text(-0.2, power, factor, ha="right", va="center", fontsize=LARGE_TEXT)
        axes.text(
            -1.75, power, f"{NAMES[prefix]} {prefix}", ha="right", va="center", color=SEA, weight="bold", fontsize=LARGE_TEXT
        )
    label = -np.inf
    for text, what in ON_THE_LADDER:
        value, unit = any_quantity(text)
        height = np.log10(value)
        label = max(height, label + 1.15)
        colour = COLOURS.get(unit, RUST)
        axes.plot([0.6, 0.85, 1.1, 1.25], [height, height, label, label], color=colour, linewidth=1.8)
        axes.text(1.4, label, text, va="center", ha="left", weight="bold", color=colour, fontsize=LARGE_TEXT)
        axes.text(4.0, label, what, va="center", ha="left", fontsize=LARGE_TEXT)
    axes.set(xlim=(-4.0, 8.4), ylim=(-15.9, 10.5))
    axes.axis("off")
    return drawing


@figure(
    caption="A meter on its 100 mA range. The pointer stands at "
    '{{ number("unit00_bench.dropper_resistor:current_through_dropper", "4.5 V", 47, "2 V", "60 mA", unit="A", '
    "figures=3) }}; "
    "an instrument of class 2.5 may be 2.5 mA out anywhere on it.",
    alt="The scale of a moving-coil meter, an arc from 0 to 100 milliamperes with a small line every 2. The pointer "
    "stands at 56. A narrow band about it shows the error allowed.",
)
def meter(resistance: Annotated[float, Between("dropping resistor", 13.5, 150, "Ω")] = 47.0):
    drawing, axes = plot(height=2.7)

    def on_the_arc(reading, radius):
        angle = np.radians(140 - np.asarray(reading))
        return radius * np.cos(angle), radius * np.sin(angle)

    reading = 1e3 * current_through_dropper(4.5, resistance, 2.0, 60e-3)
    axes.plot(*on_the_arc(np.linspace(0, 100, 101), 1.0), color=INK)
    for tick in range(0, 101, 2):
        length = 1.1 if tick % 20 == 0 else 1.07 if tick % 10 == 0 else 1.04
        mark = np.transpose([on_the_arc(tick, 1.0), on_the_arc(tick, length)])
        axes.plot(*mark, color=INK, linewidth=1.6 if tick % 10 == 0 else 0.8)
        if tick % 20 == 0:
            axes.text(*on_the_arc(tick, 1.19), str(tick), ha="center", va="center", rotation=50 - tick)
    band = np.linspace(reading - 2.5, reading + 2.5, 11)
    allowed = np.hstack([on_the_arc(band, 0.86), on_the_arc(band[::-1], 1.0)])
    axes.fill(*allowed, facecolor=BRASS, alpha=0.5, linewidth=0)
    axes.plot(*np.transpose([on_the_arc(reading, 0.28), on_the_arc(reading, 1.05)]), color=RUST, linewidth=2)
    axes.text(-0.3, 0.62, "mA", ha="center", weight="bold")
    axes.text(-0.3, 0.34, "class 2.5", ha="center", fontsize=SMALL_TEXT)
    axes.set(xlim=(-0.95, 0.95), ylim=(0.16, 1.3), aspect="equal")
    axes.axis("off")
    return drawing


@figure(
    caption="Saltmarsh Point's wave on its way out, a thousand metres of it. From crest to crest is one wavelength.",
    alt="A wave along a line from 0 to 1000 metres. An arrow from one crest to the next is marked with the wavelength, 354 metres.",
)
def wave_and_metres():
    drawing, axes = plot(height=2.2)
    distance, length = np.linspace(0, 1000, 401), wavelength(LOCAL.frequency)
    axes.plot(distance, np.sin(2 * np.pi * distance / length), color=SEA)
    first = length / 4
    axes.annotate("", (first, 1.25), (first + length, 1.25), arrowprops={"arrowstyle": "<->", "color": RUST})
    axes.text(first + length / 2, 1.35, f"one wave, {length:.0f} m", color=RUST, ha="center", va="bottom")
    axes.set(xlabel="distance, m", xlim=(0, 1000), ylim=(-1.2, 1.9), yticks=[])
    return drawing


@figure(
    caption="An A of 440 Hz with an amplitude of 1 V. The first crest comes after a quarter of a swing.",
    alt="Voltage against time for 5 milliseconds: a sine that starts at 0, rises to 1 volt at 0.57 milliseconds and makes a "
    "little more than two swings.",
)
def one_tone():
    drawing, axes = plot(height=2.4)
    time = np.linspace(0, 5e-3, 401)
    axes.plot(1e3 * time, tone(time, 440.0, 1.0), color=SEA)
    axes.plot(1e3 / 1760, 1.0, "o", color=RUST)
    axes.annotate("1/1760 s", (1e3 / 1760, 1.0), (8, 4), textcoords="offset points", color=RUST)
    axes.set(xlabel="time, ms", ylabel="V", xlim=(0, 5), ylim=(-1.2, 1.4), yticks=[-1, 0, 1])
    return drawing
