"""Signal, section 3: the coast, and how the wave fares over sea and land."""

import numpy as np

from course.circle.stations import ACROSS_THE_BAY, BEARINGS, FAR_OVER_SEA, GROUNDS, LOCAL, NEXT_CHANNEL, ON_THE_HEATH, STATIONS
from course.figures import figure
from course.figures.kit.style import (
    BRASS,
    FAINT,
    INK,
    KELP,
    PLUM,
    RUST,
    SEA,
    SMALL_TEXT,
    engineering_axis,
    label,
    marks,
    plot,
)
from solutions.unit01_signal.field_strength import (
    ground_attenuation,
    ground_wave_field,
    numerical_distance,
)
from solutions.unit01_signal.inverse_distance import field

LOOKS = {  # colour and dash of each ground
    "sea": (SEA, (None, None)),
    "salt marsh": (KELP, (7, 2)),
    "average land": (BRASS, (4, 2)),
    "dry heath": (RUST, (1.5, 1.5)),
}
NEAR_LAND = [
    (-90, -62),
    (-52, -60),
    (-30, -40),
    (-21, -25),
    (-8, -15),
    (-2, -5),
    (1, 0),
    (4, 5),
    (13, 7),
    (6, 11),
    (7, 19),
    (17, 31),
    (14, 44),
    (0, 55),
    (-17, 59),
    (-32, 63),
    (-46, 61),
    (-60, 66),
    (-90, 63),
]
FAR_LAND = [(108, 20), (78, 6), (62, 0), (57, -10), (61, -22), (76, -33), (108, -40)]
HEATH = [(-20, -9), (-33, 5), (-26, -18), (-43, 8), (-48, 0), (-56, 6), (-58, -4), (-36, -22), (-56, -21)]
ROCK = [(-42, 69), (-40, 71.5), (-37.5, 69.5), (-39.5, 67)]


def smooth(points, closed=False):
    """A curve through points (Catmull and Rom's), as x and y."""
    points = np.array(points, dtype=float)
    padded = np.vstack([points[-1], points, points[:2]] if closed else [points[0], points, points[-1]])
    t = np.linspace(0, 1, 12, endpoint=False)[:, None]
    pieces = [
        ((-t + 2 * t**2 - t**3) * a + (2 - 5 * t**2 + 3 * t**3) * b + (t + 4 * t**2 - 3 * t**3) * c + (t**3 - t**2) * d) / 2
        for a, b, c, d in zip(padded, padded[1:], padded[2:], padded[3:], strict=False)
    ]
    return np.vstack([*pieces, padded[-2]]).T


def place(station):
    """East and north of the hut, km."""
    bearing = np.radians(BEARINGS[station])
    return station.distance / 1e3 * np.array([np.sin(bearing), np.cos(bearing)])


@figure(
    caption="The coast as the Circle's chart has it, with the hut where the lines meet. The lines are the stations' "
    "paths: full over sea, dashed over land, dotted over dry heath.",
    alt="A chart. Land to the west, a bay to the east. From the hut on the shore lines run to Saltmarsh Point "
    "close by, to Curlew Bank 60 kilometres east across the bay, to Gannet Rock 80 kilometres north-west over "
    "land, to Holm Light 35 kilometres west over heath, and off the chart to Merrow Sound, 280 kilometres "
    "south-east over sea.",
)
def coast():
    drawing, axes = plot(height=3.95)
    for shore in (NEAR_LAND, FAR_LAND):
        axes.fill(*smooth(shore), facecolor=FAINT, alpha=0.55, linewidth=0)
        axes.plot(*smooth(shore), color=INK, linewidth=1.2)
    axes.fill(*smooth(ROCK, closed=True), facecolor=FAINT, edgecolor=INK, linewidth=1)
    axes.plot(*np.transpose(HEATH), linestyle="none", marker="2", markersize=7, markeredgewidth=1, color=RUST)
    for station in STATIONS:
        end = place(station)
        colour, dashes = LOOKS[station.ground]
        if station is FAR_OVER_SEA:
            end = end / np.linalg.norm(end) * 64
            axes.annotate("", end, end * 0.98, arrowprops={"arrowstyle": "->", "color": colour, "linewidth": 1.8})
        else:
            axes.plot(*end, marker="o", color=colour, markersize=6)
        axes.plot([0, end[0]], [0, end[1]], color=colour, dashes=dashes)
    axes.plot(0, 0, marker="s", color=INK, markersize=6)
    for text, x, y, side in (
        ("the hut", -7, 6, "right"),
        (LOCAL.name, 10, 17, "left"),
        (f"{ACROSS_THE_BAY.name}\n60 km", 64, -13, "left"),
        (f"{NEXT_CHANNEL.name}, 80 km", -33, 71, "left"),
        (f"{ON_THE_HEATH.name}\n35 km", -40, -13, "center"),
        (f"{FAR_OVER_SEA.name}\n280 km", 53, -47, "left"),
        ("heath", -46, 16, "center"),
    ):
        axes.text(x, y, text, ha=side, va="center", fontsize=SMALL_TEXT)
    axes.text(36, 6, "the bay", ha="center", style="italic", color=SEA)
    axes.plot([-64, -44], [-50, -50], color=INK, linewidth=3, solid_capstyle="butt")
    axes.text(-54, -47, "20 km", ha="center", fontsize=SMALL_TEXT)
    axes.annotate("N", (80, 64), (80, 46), ha="center", va="center", arrowprops={"arrowstyle": "->", "color": INK})
    axes.set(xlim=(-68, 104), ylim=(-58, 78), xticks=[], yticks=[], aspect="equal")
    axes.spines[["top", "right"]].set_visible(True)
    return drawing


@figure(
    caption="Field of a 1 kW station at 1 MHz over four kinds of ground. The dots are our stations, each with its own "
    "power and frequency. To the right of 80 km, where the lines thin out, the curve of the globe takes more "
    "than they show: Merrow Sound's hollow dot is some 4 dB too high.",
    alt="Field against distance, both on logarithmic scales, from 1 to 300 kilometres. Over sea it falls in a "
    "straight line with distance. Over land it bends away, sooner the poorer the ground: at 50 km sea gives 6 "
    "millivolts a metre, dry heath about 0.15. Saltmarsh Point lies at 72 millivolts a metre, Curlew Bank at "
    "11, Merrow Sound at 7.5, Holm Light at 0.24 and Gannet Rock at 0.2.",
)
def field_against_distance():
    drawing, axes = plot(height=4.2)
    axes.set(xscale="log", yscale="log", xlim=(1e3, 4e5), ylim=(2e-5, 0.6))
    fair, beyond = np.geomspace(1e3, 80e3, 80), np.geomspace(80e3, 4e5, 30)
    for ground, (colour, dashes) in LOOKS.items():
        for distance, width in ((fair, 1.8), (beyond, 0.8)):
            axes.plot(
                distance,
                ground_wave_field(1e3, distance, 1e6, *GROUNDS[ground]),
                color=colour,
                dashes=dashes,
                linewidth=width,
            )
    for text, distance, up, ground in (
        ("sea", 13e3, 1.7, "sea"),
        ("salt\nmarsh", 34e3, 0.45, "salt marsh"),
        ("average\nland", 64e3, 2.9, "average land"),
        ("dry heath", 3.6e3, 0.3, "dry heath"),
    ):
        level = ground_wave_field(1e3, distance, 1e6, *GROUNDS[ground]) * up
        axes.text(distance, level, text, color=LOOKS[ground][0], fontsize=SMALL_TEXT, va="center", ha="center")
    for station, dx, dy, side in (
        (LOCAL, 7, 8, "left"),
        (ACROSS_THE_BAY, -4, 10, "center"),
        (NEXT_CHANNEL, 8, -5, "left"),
        (ON_THE_HEATH, -8, -10, "right"),
        (FAR_OVER_SEA, 0, 10, "center"),
    ):
        solid = station is not FAR_OVER_SEA
        axes.plot(station.distance, station.field, marker="o", color=PLUM, markersize=6, fillstyle="full" if solid else "none")
        label(axes, station.name, (station.distance, station.field), (dx, dy), ha=side, fontsize=SMALL_TEXT)
    engineering_axis(axes.xaxis, "distance", "m")
    axes.set_xticks([1e3, 3e3, 10e3, 30e3, 100e3, 300e3])
    axes.minorticks_off()
    marks(axes.yaxis, [1e-4, 1e-3, 1e-2, 1e-1], ["0.1", "1", "10", "100"])
    axes.set_ylabel("field, mV/m")
    return drawing


@figure(
    caption="What the ground leaves of the field. Close in, all of it (left, 1). Far off, half of one over p (the "
    "straight dotted line): then field falls as the square of distance. Over sea p hardly leaves the left "
    "edge.",
    alt="Attenuation against the size of the numerical distance, logarithmic scales. A curve for phase 0 and a "
    "lower one for phase minus 60 degrees start at 1, bend down near p = 1, and run into a straight line of "
    "slope minus one.",
)
def attenuation():
    drawing, axes = plot()
    size = np.geomspace(1e-3, 1e3, 150)
    for degrees, colour, dashes in ((0, SEA, (None, None)), (60, RUST, (5, 2))):
        p = size * np.exp(-1j * np.radians(degrees))
        axes.loglog(size, ground_attenuation(p), color=colour, dashes=dashes)
    axes.loglog(size[size > 0.4], 1 / (2 * size[size > 0.4]), color=INK, dashes=(1, 2), linewidth=1.2)
    axes.text(5, 0.5, "wet ground:\nphase 0", color=SEA, fontsize=SMALL_TEXT, va="center")
    axes.text(0.4, 0.12, "dry ground:\nphase −60°", color=RUST, fontsize=SMALL_TEXT, ha="right", va="center")
    places = [
        (station, abs(numerical_distance(station.distance, station.frequency, *GROUNDS[station.ground])))
        for station in (ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL, ON_THE_HEATH)
    ]
    for _, p in places:
        axes.plot([p, p], [4e-4, 6e-4], color=PLUM, linewidth=2)
    for (station, p), level, side in zip(
        places, (9e-4, 2.2e-3, 9e-4, 2.2e-3), ("center", "center", "right", "center"), strict=True
    ):
        axes.text(p, level, station.name, ha=side, va="center", fontsize=SMALL_TEXT, color=PLUM)
    axes.set(ylim=(4e-4, 2), xlabel="size of the numerical distance p", ylabel="fraction left")
    marks(axes.xaxis, [1e-3, 1e-2, 0.1, 1, 10, 100, 1e3], ["0.001", "", "0.1", "", "10", "", "1000"])
    marks(axes.yaxis, [1e-3, 1e-2, 0.1, 1])
    return drawing


@figure(
    caption="The field of 1 kW and of 4 kW over perfect ground. Twice as far, half the field; four times the power, twice the field.",
    alt="Field in millivolts a metre against distance from 1 to 10 kilometres, two falling curves. That of 1 kilowatt begins at "
    "300, and is at 150 at 2 kilometres and at 75 at 4. That of 4 kilowatts is twice as high everywhere.",
)
def half_the_field():
    drawing, axes = plot(height=2.6)
    distance, marked = np.linspace(1e3, 10e3, 200), np.array([1e3, 2e3, 4e3, 8e3])
    for power, colour, dashes in ((4e3, BRASS, (5, 2)), (1e3, SEA, (None, None))):
        axes.plot(distance / 1e3, 1e3 * field(power, distance), color=colour, dashes=dashes, label=f"{power / 1e3:.0f} kW")
    axes.plot(marked / 1e3, 1e3 * field(1e3, marked), "o", color=SEA)
    axes.set(xlabel="distance, km", ylabel="field, mV/m", xlim=(0.8, 10), ylim=(0, 640), xticks=[1, 2, 4, 6, 8, 10])
    axes.legend(loc="upper right")
    return drawing
