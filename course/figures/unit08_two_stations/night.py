"""Two stations: the night path from Skerry Vore, and the hop that it takes."""

import numpy as np

from course.circle.stations import NIGHT_ONLY
from course.figures import figure
from course.figures.kit.style import BRASS, DASH, DOTS, FAINT, INK, KELP, RUST, SEA, SMALL_TEXT, SOFT, label, plot
from solutions.unit08_two_stations.club_evening import DARK_HEIGHT, HUT, SKERRY_VORE, YEAR, dark_hours
from solutions.unit08_two_stations.night_path import (
    EARTH_RADIUS,
    dark_elevation,
    days_since_2000,
    hop,
    path_middle,
    sun_elevation,
)

MONTHS = "JFMAMJJASOND"


def clock_axis(axis, first, last, step):
    hours = np.arange(first, last + 1, step)
    axis.set_ticks(hours, [f"{hour % 24}" for hour in hours])


@figure(
    caption="**The sun over the middle of the path** from Skerry Vore, from noon to noon, on four dates. Below the dashed "
    'line, at {{ number("unit08_two_stations.night_path:dark_elevation", "80 km", unit="°", figures=2) }}, the air 80 km up '
    "is in the earth's shadow too: the path is open.",
    alt="Height of the sun in degrees against the hour, noon to noon. Four bowls. In December it is below the dashed line "
    "from about half past four in the afternoon to half past seven; in March from seven to five; in June it dips to minus "
    "8.7 and does not reach the line.",
)
def sun_over_the_path():
    drawing, axes = plot()
    hours = np.linspace(12, 36, 193)
    latitude, longitude, _ = path_middle(*HUT, *SKERRY_VORE)
    for (month, name), colour, line in zip(
        ((6, "June"), (4, "April"), (3, "March"), (12, "December")),
        (RUST, BRASS, KELP, SEA),
        ("solid", DOTS, DASH, "solid"),
        strict=True,
    ):
        height = sun_elevation(days_since_2000(YEAR, month, 21, 0.0) + hours / 24, latitude, longitude)
        axes.plot(hours, height, color=colour, linestyle=line, label=f"21 {name}")
    axes.axhline(dark_elevation(DARK_HEIGHT), color=INK, linestyle=DASH, linewidth=1.1)
    axes.axhline(0, color=SOFT, linewidth=0.8)
    axes.set_ylim(-58, 62)
    clock_axis(axes.xaxis, 12, 36, 4)
    axes.legend(loc="upper center", fontsize=SMALL_TEXT, ncols=1, handlelength=1.8, labelspacing=0.2)
    axes.set_xlabel("hour, universal time")
    axes.set_ylabel("height of the sun, °")
    return drawing


@figure(
    caption="**The dark hours of Skerry Vore's path**, through the year. Shaded: the air 80 km up over its middle is dark. "
    "Lines: the sun is down on the ground there. In June there is a sunset, and no opening.",
    alt="A band that runs from January to December between evening and morning. It is fifteen hours wide in December and "
    "January, narrows to nothing in June, is gone for some three weeks, and widens again. Two dotted lines outside it, an "
    "hour to three away, never meet.",
)
def dark_hours_of_a_year():
    drawing, axes = plot()
    dates = [(month, day) for month in range(1, 13) for day in (1, 8, 15, 22)]
    place = np.array([month - 1 + (day - 1) / 30 for month, day in dates])
    dark = np.array([dark_hours(month, day) for month, day in dates])
    ground = np.array([dark_hours(month, day, 0.0) for month, day in dates])
    axes.fill_between(place, dark[:, 0], dark[:, 1], color=SEA, alpha=0.35, linewidth=0)
    axes.plot(place, dark, color=SEA, linewidth=1.2)
    axes.plot(place, ground, color=RUST, linestyle=DOTS)
    axes.annotate("open", (1.0, 24), color=SEA, ha="center", va="center")
    label(axes, "sunset", (5.5, 20.9), (0, -15), RUST, ha="center")
    label(axes, "sunrise", (5.5, 27.2), (0, 5), RUST, ha="center")
    axes.set_xticks(np.arange(12) + 0.5, MONTHS)
    axes.tick_params(axis="x", length=0)
    axes.set_xlim(0, 12)
    clock_axis(axes.yaxis, 14, 34, 4)
    axes.set_ylim(14, 34)
    axes.set_ylabel("hour, universal time")
    return drawing


@figure(
    caption="**One hop**, all to one scale. The earth's curve hides Skerry Vore from the hut far below the horizon; a "
    "layer 100 km up throws its wave back, and one 220 km up does too, on a steeper and longer way. Dotted: 60 km, the "
    "foot of the air that soaks the wave up by day.",
    alt="A piece of the earth's rim, 900 kilometres long, with its bulge. From its left end a line rises at 10 degrees to "
    "a dashed arc 100 kilometres up, above the middle, and comes down at the right end. A second, steeper pair of lines "
    "goes up to an arc at 220 kilometres.",
)
def one_hop():
    drawing, axes = plot(height=1.9)
    half = NIGHT_ONLY.distance / (2 * EARTH_RADIUS)
    angle = np.linspace(-1.12 * half, 1.12 * half, 101)

    def place(turned, height):
        radius = (EARTH_RADIUS + height) / 1e3
        return radius * np.sin(turned), radius * np.cos(turned) - EARTH_RADIUS / 1e3 * np.cos(half)

    across, up = place(angle, 0.0)
    axes.fill_between(across, up, -60, color=FAINT, linewidth=0)
    axes.plot(across, up, color=INK)
    for height, colour, name, raised in ((60e3, SOFT, "", 0), (100e3, SEA, "E", -22), (220e3, RUST, "F", 5)):
        axes.plot(*place(angle, height), color=colour, linestyle=":" if not name else DASH, linewidth=1.1)
        if name:
            axes.plot(*zip(place(-half, 0), place(0, height), place(half, 0), strict=True), color=colour)
            elevation, _ = hop(NIGHT_ONLY.distance, height)
            label(axes, f"{name}: {height / 1e3:.0f} km, {elevation:.0f}°", place(0, height), (0, raised), colour, ha="center")
    label(axes, "hut", place(-half, 0), (-2, -18), ha="center")
    label(axes, "Skerry Vore", place(half, 0), (-12, -18), ha="center")
    axes.set_aspect("equal")
    axes.set_ylim(-70, 285)
    axes.set_axis_off()
    return drawing
