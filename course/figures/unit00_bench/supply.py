"""Bench, section 6: a filament from a fixed rail."""

import numpy as np
from schemdraw.elements import CurrentLabel, FuseIEC, MeterV

from checker.checks.units import in_full
from course.figures import figure
from course.figures.kit.parts import Dot, Resistor, Supply, Switch, Triode, schematic, wire
from course.figures.kit.style import BRASS, FAINT, INK, KELP, RUST, SEA, SMALL_TEXT, engineering_axis, label, plot
from solutions.unit00_bench.dropper_resistor import current_through_dropper, dropper_resistance, next_preferred

RAIL, FILAMENT, RATED = 4.5, 2.0, 60e-3
HOT = FILAMENT / RATED


@figure(
    caption="The filament circuit: supply, fuse, switch, dropper, filament. Nothing else is connected yet.",
    alt="A circuit diagram. From the terminal marked 4.5 V a wire runs through a fuse, a switch and the dropper "
    "resistor R to one end of a valve's filament; the other end goes back to 0 V. A voltmeter V stands across "
    "the filament. Grid and anode are not connected.",
)
def filament_circuit():
    with schematic() as drawing:
        top, foot = 2.2, 0.0
        Supply("+4.5 V", side="left").at((0, top)).color(INK)
        Supply("0 V", side="left").at((0, foot)).color(INK)
        FuseIEC().at((0, top)).to((1.5, top)).label("fuse").color(INK)
        Switch(contacts=False).at((1.5, top)).to((2.9, top)).color(INK)
        resistor = Resistor().at((2.9, top)).to((4.9, top)).color(RUST).label("R", color=RUST)
        CurrentLabel(top=False, ofst=0.15).at(resistor).color(RUST).label("I", loc="bottom")
        wire((4.9, top), (6.98, top), (6.98, 2.6))
        Dot().at((5.6, top)).color(INK)
        MeterV().at((5.6, foot)).to((5.6, top)).color(INK)
        Dot().at((5.6, foot)).color(INK)
        Triode().at((7.2, 3.6)).color(INK)
        wire((7.42, 2.6), (7.42, foot), (0, foot))
    return drawing


@figure(
    caption="What the choice of dropper does to a filament of 2 V, 60 mA on a rail of 4.5 V. Dots: the values in "
    "the E12 drawer.",
    alt="Two curves against resistance from 30 to 72 ohms. Above, the current falls from about 71 to 43 "
    "milliamperes and crosses the rating of 60 at 42 ohms, between the preferred values 39 and 47. Below, the "
    "heat in the dropper stays near 0.15 watt throughout, while that in the filament falls from a sixth "
    "of a watt to a sixteenth.",
)
def current_and_heat():
    drawing, (above, below) = plot(rows=2, height=4.9)
    resistance = np.linspace(30, 72, 169)
    dots = [next_preferred(30.0)]
    while dots[-1] < 68:
        dots.append(next_preferred(dots[-1] * 1.01))
    dots = np.array(dots)
    wanted = dropper_resistance(RAIL, FILAMENT, RATED)

    def current(r):
        return current_through_dropper(RAIL, r, FILAMENT, RATED)

    above.plot(resistance, current(resistance), color=SEA)
    above.plot(dots, current(dots), linestyle="none", marker="o", color=SEA)
    above.axhline(RATED, color=RUST, linewidth=1.2, dashes=(5, 3))
    above.text(72, RATED + 1e-3, f"rated {in_full(RATED, 'A', 2)}", ha="right", color=RUST, fontsize=SMALL_TEXT)
    for r in dots:
        label(above, f"{r:g}", (r, current(r)), (4, 7), fontsize=SMALL_TEXT)
    above.set_ylim(40e-3, 75e-3)
    engineering_axis(above.yaxis, "current", "A")
    for heat, colour, dashes, words, at in (
        (lambda r: current(r) ** 2 * HOT, BRASS, (None, None), "filament", 31.0),
        (lambda r: current(r) ** 2 * r, KELP, (6, 2), "dropper", 60.0),
    ):
        below.plot(resistance, heat(resistance), color=colour, dashes=dashes)
        below.plot(dots, heat(dots), linestyle="none", marker="o", color=colour)
        below.text(at, heat(at) + 11e-3, words, color=colour)
    for axes in (above, below):
        axes.axvline(wanted, color=FAINT, linewidth=3, zorder=0)
    below.set_ylim(0, 0.2)
    engineering_axis(below.yaxis, "heat", "W")
    engineering_axis(below.xaxis, "dropper", "Ω")
    return drawing
