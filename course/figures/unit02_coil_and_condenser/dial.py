"""Coil and condenser, sections 6 and 7: plates and their laws, gangs, and the winding sheet."""

import numpy as np
from matplotlib.patches import Polygon

from course.circle.components import CUT_OUT, DIAMETER, LENGTH, PLATE_GAP, PLATES, WITH_STRAYS
from course.figures import figure
from course.figures.kit.parts import Dot, Line, Supply, VariableCondenser, schematic
from course.figures.kit.style import BRASS, INK, SEA, SMALL_TEXT, SOFT, THREE_LOOKS, engineering_axis, label, plot
from course.figures.unit02_coil_and_condenser.coil import ARROW, bare, draw_winding
from solutions.unit02_coil_and_condenser.club_coil import COVERED, FORMER, TURNS
from solutions.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance
from solutions.unit02_coil_and_condenser.vane_capacitance import LAWS, vane_capacitance, vane_radius
from solutions.unit02_coil_and_condenser.winding_sheet import close_wound_inductance, turns_needed, wire_length
from solutions.unit04_crystal_set.crystal_set import COIL

LOOKS = dict(zip(LAWS, THREE_LOOKS, strict=True))


@figure(
    caption="Moving plates for the three laws, all of them for 30 to 365 pF, 23 plates with 0.35 mm between, drawn to one "
    "scale. Plates out; turned clockwise they enter the space below the line, right-hand edge first.",
    alt="Three plate outlines above a line, each round a spindle. The first is half a disc. The second grows steadily from "
    "its right-hand edge to its left. The third is slim at the right and sweeps out to a long tail at the left.",
)
def plate_shapes():
    drawing, axes = plot(height=2.2)
    angle = np.linspace(0, np.pi, 121)
    left = 0.0
    for law, (colour, _) in LOOKS.items():
        radius = 1e3 * vane_radius(angle, law, *WITH_STRAYS, PLATES, PLATE_GAP, CUT_OUT)
        middle = left + radius[-1]
        outline = np.column_stack([middle + radius * np.cos(angle), radius * np.sin(angle)])
        hole = 1e3 * CUT_OUT
        axes.add_patch(Polygon(outline, facecolor=colour, alpha=0.25, linewidth=0))
        axes.add_patch(Polygon(outline, facecolor="none", edgecolor=colour, linewidth=1.8))
        axes.plot(middle + hole * np.cos(angle), -hole * np.sin(angle), color=SOFT, linewidth=1.2, dashes=(3, 2))
        axes.plot(middle, 0, "o", color=INK, markersize=7)
        right = middle + max(radius * np.cos(angle))
        axes.text((left + right) / 2, -14, f"even in\n{law}", ha="center", va="top", color=colour, fontsize=SMALL_TEXT)
        left = right + 9
    axes.plot([-1, left - 8], [0, 0], color=INK, linewidth=0.9, dashes=(1, 2))
    axes.set(xlim=(-2, left - 7), ylim=(-32, 34))
    bare(axes)
    return drawing


@figure(
    caption="Capacitance against the angle of the spindle, for the three shapes.",
    alt="Three curves from 30 to 365 picofarads over 0 to 180 degrees. Even in capacitance: a straight line. Even in "
    "wavelength: a curve that sags below it, 151 picofarads half-way. Even in frequency: one that sags far more, 72 half-way.",
)
def three_curves():
    drawing, axes = plot()
    angle = np.linspace(0, np.pi, 121)
    for law, (colour, dashes) in LOOKS.items():
        axes.plot(
            np.degrees(angle),
            vane_capacitance(angle, law, *WITH_STRAYS),
            color=colour,
            dashes=dashes,
            label=f"even in {law}",
        )
    axes.set(xticks=[0, 45, 90, 135, 180], xlabel="angle, degrees", xlim=(0, 180), ylim=(0, 400e-12))
    axes.legend(loc="upper left")
    engineering_axis(axes.yaxis, "capacitance", "F")
    return drawing


@figure(
    caption="Two gangs in parallel: the capacitances add.",
    alt="Two variable condensers side by side between one wire above and one below, each ending in a terminal.",
)
def parallel():
    with schematic() as drawing:
        for y in (0, 2):
            Line().at((0, y)).to((3.4, y))
            Supply("", "left").at((0, y))
        for x, name in ((1.4, "C₁"), (3.4, "C₂")):
            VariableCondenser().at((x, 2)).to((x, 0)).label(name, loc="bottom", ofst=0.15)
    return drawing


@figure(
    caption="Two gangs in series, through their common spindle: less than either alone.",
    alt="Two variable condensers in a row between two terminals; the wire between them is marked as the spindle.",
)
def series():
    with schematic() as drawing:
        Supply("", "left").at((0, 0))
        VariableCondenser().at((0, 0)).to((2.6, 0)).label("C₁", loc="top", ofst=0.25)
        VariableCondenser().at((2.6, 0)).to((5.2, 0)).label("C₂", loc="top", ofst=0.25)
        Dot().at((2.6, 0)).label("spindle", loc="bottom", ofst=0.15)
        Supply("", "right").at((5.2, 0))
    return drawing


@figure(
    caption="Looking for the turns of 200 µH by halving. Each bar is the stretch in which the answer must lie; the next is "
    "its lower or upper half.",
    alt="Inductance of a close-wound coil against turns from 0 to 100: a curve that crosses the level line of 200 "
    "microhenries at 44.4 turns. Below the crossing six bars, one above another, each half as long as the one below it, "
    "close in on that place.",
)
def halving():
    drawing, axes = plot(height=3.4)
    turns = np.linspace(1, 100, 100)
    axes.plot(turns, close_wound_inductance(turns, FORMER, COVERED), color=SEA)
    axes.axhline(COIL, color=INK, linewidth=0.9, dashes=(1, 2))
    answer = turns_needed(COIL, FORMER, COVERED)
    fewest, most = 1.0, 100.0
    for step in range(6):
        axes.plot([fewest, most], [(20 + 28 * step) * 1e-6] * 2, color=BRASS, linewidth=5, solid_capstyle="butt")
        middle = (fewest + most) / 2
        fewest, most = (middle, most) if close_wound_inductance(middle, FORMER, COVERED) < COIL else (fewest, middle)
    axes.plot(answer, COIL, "o", color=INK)
    label(axes, f"{answer:.1f} turns", (answer, COIL), (-8, 8), ha="right", va="bottom")
    axes.set(xlabel="turns", xlim=(0, 100), ylim=(0, 520e-6))
    engineering_axis(axes.yaxis, "inductance", "H")
    return drawing


@figure(
    caption="The winding sheet of the club's coil, as it hangs over the bench.",
    alt="A tube 75 millimetres across with a winding 22 millimetres long, drawn to scale. Beside it: wanted 200 "
    "microhenries; 26 SWG, 0.50 millimetres over its covering; 44 turns, close wound; 10.4 metres of wire and 0.6 for the "
    "ends; it will have 197 microhenries.",
)
def sheet():
    drawing, axes = plot(height=3.5)
    millimetre = 1e3
    radius, half = millimetre * FORMER / 2, millimetre * LENGTH / 2
    axes.plot([-34, 34, 34, -34, -34], [-radius, -radius, radius, radius, -radius], color=SOFT, linewidth=1.2)
    draw_winding(axes, -half, half, millimetre * DIAMETER / 2 + 0.4, TURNS, linewidth=0.7)
    axes.annotate("", (-half, 46), (half, 46), arrowprops=ARROW)
    axes.text(0, 47.5, f"{millimetre * LENGTH:.0f} mm", ha="center", va="bottom")
    axes.annotate("", (-26, -radius), (-26, radius), arrowprops=ARROW)
    axes.text(-24, 0, f"{millimetre * FORMER:.0f}", va="center")
    length = wire_length(TURNS, FORMER, COVERED)
    made = solenoid_inductance(TURNS, DIAMETER, LENGTH)
    lines = (
        ("wanted", f"{1e6 * COIL:.0f} µH"),
        ("wire", "26 SWG"),
        ("covered", f"{millimetre * COVERED:.2f} mm"),
        ("turns", f"{TURNS}, close"),
        ("cut off", f"{length:.1f} + 0.6 m"),
        ("makes", f"{1e6 * made:.0f} µH"),
    )
    for place, (name, words) in enumerate(lines):
        axes.text(42, 32 - 13 * place, name, va="center", color=SOFT)
        axes.text(78, 32 - 13 * place, words, va="center")
    axes.set(xlim=(-38, 122), ylim=(-42, 58))
    bare(axes)
    return drawing
