"""Reaction, sections 8 to 10: three windings on one tube, and the set with places to measure at."""

import numpy as np
from schemdraw.elements import FuseIEC

from course.circle.components import AERIAL_GAP, AERIAL_TURNS, TICKLER_GAP, TICKLER_TURNS, mutual
from course.figures import figure
from course.figures.kit.parts import (
    Coil,
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
from course.figures.kit.style import BRASS, INK, RUST, SEA, SMALL_TEXT, engineering_axis, plot
from solutions.unit02_coil_and_condenser.club_coil import COVERED, TURNS
from solutions.unit06_reaction.network import SALTMARSH_SET


@figure(
    caption="Three windings on one tube, all wound the same way round, and where each end goes. Grid and anode have the two "
    "ends that are furthest from each other, of these two windings. Lengths along the tube are to scale.",
    alt="A tube seen from the side, upright. At the top the aerial's winding of 12 turns; its upper end goes to the "
    "aerial, its lower to earth. Below, after 8 millimetres, the tuned winding of 44 turns: upper end to the grid "
    "condenser, lower end to earth. 25 millimetres below, the tickler of 18 turns: upper end to the throttle "
    "condenser, lower end to the anode. All wires slant the same way.",
)
def three_windings():
    drawing, axes = plot(height=4.6)
    axes.axis("off")
    axes.set(xlim=(-62, 92), ylim=(88, -8))
    axes.plot([-38, -38], [-6, 86], color=INK, linewidth=1)
    axes.plot([38, 38], [-6, 86], color=INK, linewidth=1)
    top = 2.0
    for turns, after, colour, name, ends in (
        (AERIAL_TURNS, AERIAL_GAP, BRASS, "12 turns", ("aerial", "earth")),
        (TURNS, TICKLER_GAP, SEA, "44 turns", ("grid condenser", "earth")),
        (TICKLER_TURNS, 0.0, RUST, "18 turns", ("throttle", "anode")),
    ):
        length = turns * COVERED * 1e3
        for turn in range(turns):
            start = top + turn * COVERED * 1e3
            axes.plot([-38, 38], [start, start + COVERED * 1e3], color=colour, linewidth=0.9)
        axes.text(-42, top + length / 2, name, color=colour, ha="right", va="center", fontsize=SMALL_TEXT, rotation=90)
        for at, end in ((top, ends[0]), (top + length, ends[1])):
            axes.plot([38, 46], [at, at], color=colour, linewidth=1.3)
            axes.text(48, at, end, color=colour, va="center", fontsize=SMALL_TEXT)
        top += length + after * 1e3
    return drawing


@figure(
    caption="What the tuned winding catches of the other two, for the space between their nearest ends. The dots are the set "
    "of these pages: 20 µH and 14 µH.",
    alt="Mutual inductance against the gap from 2 to 50 millimetres. The aerial's winding: from 25 microhenries through "
    "20 at 8 millimetres to 5. The tickler: from 34 through 14 at 25 millimetres to 6.",
)
def gaps_between():
    drawing, axes = plot(height=3.0)
    gap = np.linspace(2e-3, 50e-3, 49)
    wanted = SALTMARSH_SET.aerial_tuned, SALTMARSH_SET.tuned_tickler
    for turns, aim, colour, dashes, name, at in (
        (AERIAL_TURNS, wanted[0], BRASS, (None, None), "aerial", (3e-3, 15e-6)),
        (TICKLER_TURNS, wanted[1], RUST, (6, 2), "tickler", (16e-3, 22e-6)),
    ):
        coupled = np.array([mutual(turns, space) for space in gap])
        axes.plot(gap, coupled, color=colour, dashes=dashes)
        axes.plot(np.interp(-aim, -coupled, gap), aim, "o", color=INK)
        axes.text(*at, name, color=colour, fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 50e-3), ylim=(0, 36e-6))
    engineering_axis(axes.xaxis, "gap between the windings", "m")
    engineering_axis(axes.yaxis, "mutual inductance", "H", ticks=4)
    return drawing


@figure(
    caption="The reaction set. New against the one-valve set is all that is coloured red: the tickler, the throttle condenser "
    "with a fixed one of 1 nF for safety, the by-pass of 200 pF, and the choke. Dashed is what nobody builds in: the "
    "valve's own "
    "capacitance from grid to anode, some 6 pF. The letters are those of unit 5, and T is new.",
    alt="Circuit diagram. Three windings side by side; the first from the aerial to earth; the second with the tuning "
    "condenser to the grid condenser, C the grid of a type 30 with its leak to LT plus. The anode, D, goes through a "
    "fixed condenser of 1 nanofarad to the tickler, and from there, T, through the throttle condenser to earth. From "
    "D a by-pass of 200 picofarads goes to earth, and a choke of 100 millihenries leads to the headphones, then, at E, "
    "10 kilohms with 1 microfarad to earth, and at "
    "F a fuse to HT plus 90 volts, with 100 kilohms from F to earth.",
)
def set_with_places():
    with schematic() as drawing:
        top = 2.6
        coils = Windings(3, 5, 3, dots="bbt").at((0.8, 1.5))
        wire(coils.top1, (0.1, coils.top1[1]))
        Supply("aerial", side="top").at((0.1, coils.top1[1]))
        wire(coils.bottom1, (0.1, coils.bottom1[1]), (0.1, 0))
        Earth().at((0.1, 0))
        live = 2.9
        wire(coils.top2, (coils.top2[0], top), (live, top))
        wire(coils.bottom2, (coils.bottom2[0], 0))
        Dot().at((coils.bottom2[0], 0))
        VariableCondenser().at((live, top)).to((live, 0))
        Dot().at((live, top)).label("B", loc="top", ofst=0.15)
        Dot().at((live, 0))
        Condenser().at((live, top)).to((4.3, top))
        Dot().at((4.3, top)).label("C", loc="top", ofst=0.15)
        Resistor().at((4.3, top)).to((4.3, 0.75)).label("2 MΩ", loc="bottom", ofst=0.12)
        valve = Triode().at((5.9, top - 0.1))
        wire((4.3, top), valve.grid)
        left, right = valve.filament1, valve.filament2
        wire_over(left, 0.75, (left[0], 0))
        Dot().at((left[0], 0))
        wire(right, (right[0], 0.75), (4.3, 0.75))
        Dot().at((right[0], 0.75))
        wire((right[0], 0.75), (6.9, 0.75))
        Supply("A: LT+", side="right").at((6.9, 0.75))
        wire((0.1, 0), (6.9, 0))
        Supply("0 V", side="right").at((6.9, 0))
        x, y = valve.anode
        Dot().at((x, y)).label("D", loc="right", ofst=0.15)
        tickler = coils.top3[0]
        wire((x, y), (x, y + 0.35), (x - 1.4, y + 0.35), color=RUST)
        Condenser().at((x - 1.4, y + 0.35)).to((x - 2.9, y + 0.35)).color(RUST).label("1 nF", loc="top", color=RUST, ofst=0.1)
        wire((x - 2.9, y + 0.35), (tickler, y + 0.35), color=RUST)
        wire_over((tickler, y + 0.35), top, coils.top3, color=RUST)
        VariableCondenser().at(coils.bottom3).to((tickler, 0)).color(RUST)
        Dot().at(coils.bottom3).color(RUST).label("T", loc="right", ofst=0.12)
        Dot().at((tickler, 0))
        Coil().at((x, y + 0.35)).to((x, y + 1.75)).color(RUST).label("100 mH", loc="bottom", color=RUST, ofst=0.1)
        Dot().at((x, y + 0.35)).color(RUST)
        wire((x, y + 0.35), (x + 1.3, y + 0.35), color=RUST)
        by_pass = Condenser().at((x + 1.3, y + 0.35)).to((x + 1.3, y - 0.85)).color(RUST)
        by_pass.label("200 pF", loc="bottom", color=RUST, ofst=0.1)
        Earth().at((x + 1.3, y - 0.85)).color(RUST)
        Condenser().at((4.75, top)).to((4.75, y + 0.35)).linestyle("--").color(RUST)
        Headphones().at((x, y + 1.75)).to((x, y + 3.35))
        wire((x, y + 1.75), (x + 1.2, y + 1.75), (x + 1.2, y + 1.95))
        Condenser().at((x + 1.2, y + 1.95)).to((x + 1.2, y + 3.15))
        wire((x + 1.2, y + 3.15), (x + 1.2, y + 3.35), (x, y + 3.35))
        Dot().at((x, y + 1.75))
        Dot().at((x, y + 3.35)).label("E", loc="top", ofst=0.15)
        wire((x, y + 3.35), (x - 1.4, y + 3.35))
        Condenser().at((x - 1.4, y + 3.35)).to((x - 1.4, y + 1.9)).label("1 µF", loc="top", ofst=0.1)
        Earth().at((x - 1.4, y + 1.9))
        Resistor().at((x - 1.4, y + 3.35)).to((x - 3.4, y + 3.35)).label("10 kΩ", loc="top", ofst=0.12)
        Dot().at((x - 3.4, y + 3.35)).label("F", loc="top", ofst=0.15)
        Resistor().at((x - 3.4, y + 3.35)).to((x - 3.4, y + 1.5)).label("100 kΩ", loc="top", ofst=0.12)
        Earth().at((x - 3.4, y + 1.5))
        FuseIEC().at((x - 3.4, y + 3.35)).to((x - 5.0, y + 3.35)).label("fuse")
        Supply("+90 V", side="bottom").at((x - 5.0, y + 3.35))
    return drawing
