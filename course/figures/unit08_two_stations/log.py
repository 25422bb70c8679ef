"""Two stations: Mabel's dial log, its line, and how sure it is."""

import numpy as np

from course.circle.stations import LOCAL, NIGHT_ONLY
from course.figures import figure
from course.figures.kit.style import DASH, INK, KELP, RUST, SEA, SMALL_TEXT, SOFT, engineering_axis, label, plot
from solutions.unit08_two_stations.club_evening import LOGGED, READINGS, frequency_by_log, reading_by_log
from solutions.unit08_two_stations.dial_log import SPEED_OF_LIGHT, fitted_line, line_at, scatter_about

SQUARES = (SPEED_OF_LIGHT / LOGGED) ** 2
SOUGHT = NIGHT_ONLY.frequency
SPACING = 9e3


@figure(
    caption="**Mabel's log.** Above: the square of the wavelength against the reading of the dial, and the line. Below: by "
    "how much each station lies off the line, in degrees of the dial; shaded, where the line may be (twice its standard "
    "uncertainty), and dashed, where one more reading may be.",
    alt="Above, five points on a rising straight line from 7 degrees and 43 000 square metres to 92 degrees and 187 000. "
    "Below, the same points about zero, none more than half a degree off; a shaded band, narrowest in the middle of the "
    "log and widening to both sides, and two dashed curves some one and a half degrees either side.",
)
def log_and_lacks():
    drawing, (above, below) = plot(rows=2, height=4.2, height_ratios=(1.2, 1))
    reading = np.linspace(0, 110, 111)
    intercept, slope = fitted_line(READINGS, SQUARES)
    height, uncertainty = line_at(reading, READINGS, SQUARES)
    above.plot(reading, height, color=SEA)
    above.plot(READINGS, SQUARES, "o", color=RUST)
    for place, frequency in zip(READINGS, LOGGED, strict=True):
        if frequency != LOCAL.frequency:
            label(
                above, f"{frequency / 1e3:.0f} kHz", (place, (SPEED_OF_LIGHT / frequency) ** 2), (7, -11), RUST, size=SMALL_TEXT
            )
    above.set_yticks([0, 1e5, 2e5], ["0", "100", "200"])
    above.set_ylim(0, 2.3e5)
    above.set_ylabel("λ², 1000 m²")
    whole = np.hypot(uncertainty, scatter_about(READINGS, SQUARES))
    below.fill_between(reading, 2 * uncertainty / slope, -2 * uncertainty / slope, color=SEA, alpha=0.3, linewidth=0)
    for side in (2, -2):
        below.plot(reading, side * whole / slope, color=SEA, linestyle=DASH, linewidth=1.1)
    below.plot(READINGS, READINGS - (SQUARES - intercept) / slope, "o", color=RUST)
    below.axhline(0, color=INK, linewidth=0.8)
    below.set_ylim(-2, 2)
    below.set_ylabel("off the line, °")
    below.set_xlabel("reading of the dial, °")
    return drawing


@figure(
    caption="**How sure is the dial?** Standard uncertainty of the frequency that Mabel's log gives for a reading. Dashed: "
    "half of a channel. Where the curve is above it, the reading alone cannot name the station.",
    alt="Kilohertz of uncertainty against frequency from 600 to 1500 kilohertz: 2 at the low end, 5 at 960, 10 at 1206 and "
    "17 at 1450. A dashed level line at 4.5 is crossed at about 930 kilohertz.",
)
def how_sure():
    drawing, axes = plot(height=2.7)
    frequency = np.linspace(600e3, 1460e3, 121)
    found, uncertainty = frequency_by_log(reading_by_log(frequency)[0])
    axes.plot(found, uncertainty, color=SEA)
    axes.axhline(SPACING / 2, color=SOFT, linestyle=DASH)
    axes.plot(LOGGED, 0 * LOGGED, "o", color=RUST, clip_on=False)
    axes.plot(SOUGHT, frequency_by_log(reading_by_log(SOUGHT)[0])[1], "s", color=KELP)
    label(axes, "Skerry Vore", (SOUGHT, frequency_by_log(reading_by_log(SOUGHT)[0])[1]), (-6, 6), KELP, ha="right")
    axes.set_ylim(0, 18e3)
    engineering_axis(axes.xaxis, "frequency", "Hz")
    engineering_axis(axes.yaxis, "uncertainty", "Hz")
    return drawing
