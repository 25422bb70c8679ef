"""Coil and condenser, sections 2 and 3: the coil with its dimensions, Nagaoka's coefficient, the skin of the wire."""

from typing import Annotated

import numpy as np
from matplotlib.patches import Circle, FancyBboxPatch, Rectangle
from matplotlib.transforms import ScaledTranslation

from course.circle.components import DIAMETER, LENGTH
from course.figures import figure
from course.figures.kit.style import (
    BRASS,
    FAINT,
    INK,
    PLUM,
    RUST,
    SEA,
    SMALL_TEXT,
    SOFT,
    label,
    marks,
    plot,
)
from course.settings import Between, Several
from solutions.unit01_signal.channel_plan import FIRST_AND_LAST
from solutions.unit02_coil_and_condenser.current_crowding import current_density
from solutions.unit02_coil_and_condenser.mutual_inductance import coaxial_filaments, turn_positions
from solutions.unit02_coil_and_condenser.solenoid_inductance import (
    common_mean,
    nagaoka_coefficient,
    solenoid_inductance,
    wheeler_inductance,
)
from solutions.unit02_coil_and_condenser.wire_resistance import (
    alternating_resistance,
    direct_resistance,
    skin_depth,
    swg_diameter,
)

ARROW = {"arrowstyle": "<->", "color": INK, "shrinkA": 0, "shrinkB": 0, "linewidth": 1}


def bare(axes):
    """Leave nothing but the drawing, to scale."""
    axes.set_aspect("equal")
    axes.axis("off")


def draw_winding(axes, left, right, radius, turns, colour=BRASS, linewidth=2.2):
    """A winding seen from the side: strokes that lean by one pitch."""
    pitch = (right - left) / turns
    for turn in range(turns):
        start = left + turn * pitch
        axes.plot([start + pitch * 0.25, start + pitch * 0.75], [-radius, radius], color=colour, linewidth=linewidth)


@figure(
    caption="What to measure on a coil. The diameter D runs from wire centre to wire centre, so it is the tube's and one "
    "wire's. The length l is the number of turns times the pitch p.",
    alt="A tube seen from the side with twelve turns of wire on it. Arrows mark the diameter D from the middle of the wire "
    "on one side to the middle on the other, the length l of the winding, and, enlarged below, the pitch p from one "
    "wire's centre to the next.",
)
def what_to_measure():
    drawing, axes = plot(height=3.5)
    axes.add_patch(
        FancyBboxPatch(
            (-2.6, -1.1), 5.2, 2.2, "round,pad=0,rounding_size=0.06", facecolor="none", edgecolor=SOFT, linewidth=1.2
        )
    )
    draw_winding(axes, -1.2, 1.2, 1.16, 12)
    axes.annotate("", (-1.75, -1.16), (-1.75, 1.16), arrowprops=ARROW)
    axes.text(-1.85, 0, "dia-\nmeter\nD", ha="right", va="center")
    axes.annotate("", (-1.2, 1.5), (1.2, 1.5), arrowprops=ARROW)
    axes.text(0, 1.58, "length l", ha="center", va="bottom")
    axes.text(1.4, 0, "tube", ha="left", va="center", color=SOFT)
    for turn in range(3):
        axes.add_patch(Circle((-0.5 + 0.5 * turn, -1.85), 0.24, facecolor=BRASS, edgecolor=INK))
    axes.plot([-1.0, 1.0], [-2.1, -2.1], color=SOFT, linewidth=1.2)
    for x in (-0.5, 0):
        axes.plot([x, x], [-1.85, -1.35], color=INK, linewidth=0.8)
    axes.annotate("", (-0.5, -1.42), (0, -1.42), arrowprops=ARROW)
    axes.text(0.12, -1.42, "pitch p", ha="left", va="center")
    axes.set(xlim=(-2.8, 2.8), ylim=(-2.25, 1.95))
    bare(axes)
    return drawing


def flux_lines(axes, turns, length, radius):
    """The lines of a coil's field: along each, the same part of the flux of one turn goes through the circle of its radius."""
    along, across = np.meshgrid(np.linspace(-2.2, 2.2, 89), np.linspace(0.03, 1.9, 45))
    places = turn_positions(turns, length)
    flux = sum(coaxial_filaments(radius, across, along - place) for place in places)
    levels = np.linspace(0.06, 0.9, 8) * flux.max()
    for side in (1, -1):
        axes.contour(along, side * across, flux, levels=levels, colors=SEA, linewidths=1.1)
        axes.plot(
            places, side * radius * np.ones(turns), "o", color=BRASS, markersize=4.5, markeredgecolor=INK, markeredgewidth=0.5
        )


@figure(
    caption="Lines of the magnetic field, through a long coil and a short one, cut open along the axis. In the long coil "
    "nearly every line goes through every turn. In the short one many slip out between.",
    alt="Two coils in section, each a row of dots above and below an axis. In the long coil the field lines run straight "
    "and close together from end to end and spread only at the mouths. In the short coil they begin to bend at once, "
    "and most loop round near the wire.",
)
def long_and_short():
    drawing, rows = plot(rows=2, height=4.5)
    for axes, turns, length, name in zip(rows, (24, 6), (2.9, 0.6), ("long", "short"), strict=True):
        flux_lines(axes, turns, length, 0.5)
        axes.text(-2.1, 0, name, va="center")
        axes.set(xlim=(-2.2, 2.2), ylim=(-1.12, 1.12))
        bare(axes)
    return drawing


@figure(
    caption="Nagaoka's coefficient. The three outlines show the shape of the coil: long, square, flat. The ring marks the "
    "club's coil.",
    alt="Curve of the coefficient against diameter over length from 0.1 to 20, on a scale of ratios. It falls from 0.96 for a "
    "coil ten times as long as wide, through 0.69 for a coil as long as wide, to 0.12 for one a twentieth as long. A ring "
    "marks the club's coil at 3.4 and 0.4.",
)
def nagaoka():
    drawing, axes = plot()
    shape = np.geomspace(0.1, 20, 160)
    axes.plot(shape, nagaoka_coefficient(shape), color=SEA)
    club = DIAMETER / LENGTH
    axes.plot(club, nagaoka_coefficient(club), "o", color=INK, markersize=9, markerfacecolor="none", markeredgewidth=1.6)
    label(axes, "the club's coil", (club, nagaoka_coefficient(club)), (10, 6))
    axes.set(
        xscale="log",
        ylim=(0, 1.05),
        yticks=[0, 0.25, 0.5, 0.75, 1],
        xlabel="diameter / length",
        ylabel="coefficient",
        xlim=(0.1, 20),
    )
    marks(axes.xaxis, [0.1, 0.5, 1, 2, 5, 20])
    for x, wide, high in ((0.17, 34, 6), (1.0, 17, 17), (13, 4, 40)):
        axes.add_patch(
            Rectangle(
                (-wide / 2, -high / 2),
                wide,
                high,
                facecolor="none",
                edgecolor=BRASS,
                linewidth=1.8,
                transform=_at(axes, x, 0.13),
            )
        )
    return drawing


def _at(axes, x, y):
    """Points on paper, counted from a place in the plot."""
    return axes.figure.dpi_scale_trans.frozen().scale(1 / 72) + ScaledTranslation(x, y, axes.transData)


@figure(
    caption="The mean of two numbers, by turns: each round puts the arithmetic mean above and the geometric mean below. "
    "From 1 and 0.1 they meet, to the eye, after three.",
    alt="Two rows of dots against rounds 0 to 4. The upper starts at 1 and comes down, the lower starts at 0.1 and climbs; "
    "at round 3 they lie on one another at 0.425.",
)
def two_means():
    drawing, axes = plot(height=2.7)
    upper, lower = [1.0], [0.1]
    for _ in range(4):
        upper, lower = upper + [(upper[-1] + lower[-1]) / 2], lower + [np.sqrt(upper[-1] * lower[-1])]
    axes.axhline(common_mean(1.0, 0.1)[0], color=INK, linewidth=0.9, dashes=(1, 2))
    axes.plot(upper, "o-", color=RUST)
    axes.plot(lower, "s--", color=SEA)
    axes.text(0.3, 0.9, "arithmetic", color=RUST)
    axes.text(0.35, 0.12, "geometric", color=SEA)
    axes.text(4, 0.5, f"{common_mean(1.0, 0.1)[0]:.4f}", ha="right")
    axes.set(xlabel="round", xticks=range(5), ylim=(0, 1.05), yticks=[0, 0.5, 1])
    return drawing


@figure(
    caption="How far Wheeler's short formula is off. Between the two dotted lines it keeps its promise of one per cent.",
    alt="Error in per cent against length over diameter from 0.1 to 10. It rises from minus 11 per cent at 0.1, crosses "
    "minus 1 at about 0.35, lies at zero near 0.6, and stays above minus 0.6 from there on.",
)
def wheeler_error():
    drawing, axes = plot(height=2.7)
    shape = np.geomspace(0.1, 10, 160)
    axes.plot(shape, 100 * (wheeler_inductance(1, 1.0, shape) / solenoid_inductance(1, 1.0, shape) - 1), color=SEA)
    for edge in (-1, 1):
        axes.axhline(edge, color=INK, linewidth=0.9, dashes=(1, 2))
    axes.set(
        xscale="log", xlabel="length / diameter", ylabel="error, %", ylim=(-6, 2), yticks=[-6, -4, -2, 0, 2], xlim=(0.1, 10)
    )
    marks(axes.xaxis, [0.1, 0.4, 1, 3, 10])
    return drawing


@figure(
    caption="Where the current flows in the club's wire, 26 SWG, cut across. The larger the dot, the denser the current. At "
    "10 kHz the whole wire works; at 1 MHz little but its skin.",
    alt="Three discs filled with dots. At 10 and at 100 kilohertz all dots are of one size; at 1 megahertz they are as large "
    "at the rim and shrink to specks in the middle. Under each stands how much the resistance has grown: 1.00, 1.03 and "
    "2.00 times.",
)
def crowding():
    drawing, axes = plot(height=2.3)
    diameter, dots = swg_diameter(26), np.arange(180)
    spread, turned = np.sqrt((dots + 0.5) / 180), dots * np.pi * (3 - np.sqrt(5))  # evenly, as in a sunflower
    for place, (frequency, name) in enumerate(((10e3, "10 kHz"), (100e3, "100 kHz"), (1e6, "1 MHz"))):
        ratio = diameter / 2 / skin_depth(frequency)
        sizes = np.round(3.6 * np.sqrt(current_density(spread, ratio)), 1)
        for size in np.unique(sizes):
            of_size = 0.94 * spread[sizes == size]
            axes.plot(
                2.5 * place + of_size * np.cos(turned[sizes == size]),
                of_size * np.sin(turned[sizes == size]),
                "o",
                color=SEA,
                markersize=size,
                markeredgewidth=0,
            )
        axes.add_patch(Circle((2.5 * place, 0), 1, facecolor="none", edgecolor=INK, linewidth=1.2))
        grown = alternating_resistance(1.0, diameter, frequency) / direct_resistance(1.0, diameter)
        axes.text(2.5 * place, 1.2, name, ha="center", va="bottom")
        axes.text(2.5 * place, -1.2, f"R × {grown:.2f}", ha="center", va="top", fontsize=SMALL_TEXT)
    axes.set(xlim=(-1.15, 6.15), ylim=(-1.75, 1.75))
    bare(axes)
    return drawing


@figure(
    caption="Resistance of one metre of copper wire. Each line is level while the wire is thinner than two skin depths, and "
    "then climbs with the root of the frequency. On medium waves (shaded) thick wire gains less than its copper.",
    alt="Resistance in ohms against frequency from 1 kilohertz to 10 megahertz, both in ratios, for 18, 26 and 36 gauge. "
    "The thin wire lies highest and stays level up to half a megahertz; the thick one starts forty times lower and "
    "bends upwards from 20 kilohertz.",
)
def resistance_against_frequency(
    gauges: Annotated[tuple, Several(Between("gauge of the wire, SWG", 14, 44), 3)] = (36, 26, 18),
):
    drawing, axes = plot(height=3.4)
    frequency = np.geomspace(1e3, 1e7, 160)
    axes.axvspan(*FIRST_AND_LAST[9_000], color=FAINT, alpha=0.5, linewidth=0)
    looks = (RUST, (6, 2)), (SEA, (None, None)), (PLUM, (3, 1.5))
    for gauge, (colour, dashes) in zip(map(round, gauges), looks, strict=False):
        axes.plot(frequency, alternating_resistance(1.0, swg_diameter(gauge), frequency), color=colour, dashes=dashes)
        start = direct_resistance(1.0, swg_diameter(gauge))
        above = gauge > 18
        axes.text(
            1.4e3,
            start * (1.2 if above else 0.85),
            f"{gauge} SWG: {1e3 * swg_diameter(gauge):.2f} mm",
            color=colour,
            va="bottom" if above else "top",
        )
    axes.set(xscale="log", yscale="log", xlim=(1e3, 1e7), ylim=(0.006, 4))
    marks(axes.xaxis, [1e3, 1e4, 1e5, 1e6, 1e7], ["1 kHz", "10", "100", "1 MHz", "10"])
    marks(axes.yaxis, [0.01, 0.1, 1])
    axes.set(xlabel="frequency", ylabel="resistance, Ω")
    return drawing
