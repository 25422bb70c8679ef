"""Signal, section 6: the dial, its channels and its images."""

from typing import Annotated

import numpy as np

from course.circle.stations import NIGHT_ONLY, STATIONS
from course.figures import figure
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, plot
from course.settings import RASTER, Between
from solutions.unit01_signal.channel_plan import carriers, image_reading, wavelength

OSCILLATOR = 350.0  # metres: the reading of a set that whistles


@figure(
    caption="A dial marked in metres, unrolled. Each tick is a channel of the {{ by_raster('9 kHz', '10 kHz') }} raster. "
    "In hertz they are evenly spaced; in metres they crowd together at the short end. Our stations are marked; Skerry "
    "Vore comes in at night only.",
    alt="A scale from 180 to 580 metres with a tick for each channel, dense at the short end and thin at the long end. Six "
    "stations are marked: Holm Light at 207 metres, Skerry Vore 249, Curlew Bank 271, Gannet Rock 351, "
    "Saltmarsh Point 354, Merrow Sound 433.",
)
def dial(raster: Annotated[int, RASTER] = 9_000):
    drawing, axes = plot(height=2.9)
    metres = wavelength(carriers(raster))
    axes.vlines(metres, 0, 0.35, color=INK, linewidth=0.6)
    axes.plot([min(180, metres[-1] - 4), 580], [0, 0], color=INK, linewidth=1.2)
    frequencies = {station.name: station.frequency for station in (*STATIONS, NIGHT_ONLY)}
    for name, level, side in (
        ("Holm Light", 1.0, "center"),
        ("Skerry Vore", 2.0, "center"),
        ("Curlew Bank", 1.0, "left"),
        ("Gannet Rock", 2.0, "right"),
        ("Saltmarsh Point", 1.0, "left"),
        ("Merrow Sound", 1.0, "left"),
    ):
        x = wavelength(frequencies[name])
        axes.plot([x, x], [0, level - 0.1], color=RUST, linewidth=1.6)
        axes.text(x, level, name.replace(" ", "\n"), ha=side, va="bottom", color=RUST, fontsize=SMALL_TEXT, linespacing=1)
    for reading in range(200, 600, 50):
        axes.text(reading, -0.15, f"{reading}", ha="center", va="top", fontsize=SMALL_TEXT)
    axes.text(380, -0.75, "metres", ha="center", va="top", fontsize=SMALL_TEXT)
    axes.set(xlim=(172, 592), ylim=(-1.1, 3.0), xticks=[], yticks=[])
    axes.spines[:].set_visible(False)
    return drawing


@figure(
    caption="A set that oscillates at 350 m makes a whistle with every station near it. Along the curve two readings "
    "give each note, one on each side: they lie evenly in hertz, so a little unevenly in metres.",
    alt="Whistle frequency against dial reading: a V with its point at 350 metres. A dashed level line at 3 "
    "kilohertz cuts it at 348.8 and 351.2 metres.",
)
def whistle_and_image(oscillator: Annotated[float, Between("dial reading of the oscillator", 200, 560, "m")] = OSCILLATOR):
    drawing, axes = plot(height=2.8)
    reading = oscillator + np.linspace(-3.5, 3.5, 201) * (oscillator / OSCILLATOR) ** 2
    axes.plot(reading, abs(wavelength(reading) - wavelength(oscillator)), color=SEA)
    station = float(wavelength(wavelength(oscillator) + 3e3))
    image = float(image_reading(station, oscillator))
    axes.plot([station, image], [3e3, 3e3], color=BRASS, dashes=(4, 2))
    for x, name, side, dx in ((station, "station", "right", -8), (image, "image", "left", 8)):
        axes.plot(x, 3e3, marker="o", color=PLUM)
        label(axes, f"{name}\n{x:.1f} m", (x, 3e3), (dx, -8), ha=side, va="center", fontsize=SMALL_TEXT)
    axes.set(ylim=(0, 6e3), xlabel="dial reading, m")
    engineering_axis(axes.yaxis, "whistle", "Hz")
    return drawing
