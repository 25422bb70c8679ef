"""Tuned circuit, section 8: the dial."""

from typing import Annotated

import numpy as np

from course.circle.components import CONDENSER_LEAST, CONDENSER_MOST, STRAY
from course.circle.stations import NIGHT_ONLY, STATIONS
from course.figures import figure
from course.figures.kit.style import BRASS, INK, PLUM, SEA, SMALL_TEXT, THREE_LOOKS, engineering_axis, plot
from course.settings import RASTER
from solutions.unit01_signal.channel_plan import carriers
from solutions.unit02_coil_and_condenser.vane_capacitance import LAWS
from solutions.unit03_tuned_circuit.tuning_range import dial_angle, dial_frequency, range_covered
from solutions.unit04_crystal_set.crystal_set import COIL as INDUCTANCE

LOOKS = dict(zip(LAWS, THREE_LOOKS, strict=True))
DIAL = (CONDENSER_LEAST, CONDENSER_MOST, STRAY, INDUCTANCE)


@figure(
    caption="Three shapes of plate, one coil: 200 µH, 12 to 365 pF and 25 pF of strays. Half round plates (even in "
    "capacitance) crowd the upper stations into the first few degrees.",
    alt="Frequency against dial angle, 0 to 180 degrees, for three laws; all run from 1850 kilohertz down to 570. The "
    "capacitance law plunges at first and flattens; the wavelength law does the same more gently; the frequency law "
    "bulges the other way, for it does not know of the strays.",
)
def three_laws():
    drawing, axes = plot(height=3.4)
    angle = np.linspace(0, np.pi, 181)
    for law, (colour, dashes) in LOOKS.items():
        frequency = dial_frequency(angle, law, *DIAL)
        axes.plot(np.degrees(angle), frequency, color=colour, dashes=dashes, label=f"even in {law}")
    axes.set(xticks=[0, 45, 90, 135, 180], xlabel="dial, degrees", xlim=(0, 180), ylim=(400e3, 2.7e6))
    axes.legend(loc="upper right")
    engineering_axis(axes.yaxis, "frequency", "Hz", ticks=4)
    return drawing


@figure(
    caption="The same three dials as scales: a mark for every 100 kHz. The dots are the stations, from the right: "
    "Merrow Sound, Saltmarsh Point with Gannet Rock beside it, Curlew Bank, Skerry Vore, Holm Light.",
    alt="Three level scales from 0 to 180 degrees, marked with frequencies. Even in capacitance: 600 to 1000 "
    "kilohertz take up two thirds of the scale, the rest is crowded to the left. Even in wavelength: spread much "
    "more evenly. Even in frequency: room on the left, crowded to the right.",
)
def three_scales():
    drawing, rows = plot(rows=3, height=4.2)
    lowest, highest = range_covered(INDUCTANCE, CONDENSER_LEAST, CONDENSER_MOST, STRAY)
    marks = np.arange(np.ceil(lowest / 1e5), np.floor(highest / 1e5) + 1) * 1e5
    stations = np.array([station.frequency for station in (*STATIONS, NIGHT_ONLY)])
    for axes, (law, (colour, _)) in zip(rows, LOOKS.items(), strict=True):
        axes.axhline(0, color=INK, linewidth=1.2)
        for mark in marks:
            place = np.degrees(dial_angle(mark, law, *DIAL))
            axes.plot([place, place], [0, 0.35], color=INK, linewidth=1)
        for mark in (600e3, 800e3, 1e6, 1.2e6, 1.8e6):
            place = np.degrees(dial_angle(mark, law, *DIAL))
            axes.text(place, 0.42, f"{mark / 1e3:.0f}", ha="center", va="bottom", fontsize=SMALL_TEXT)
        axes.plot(np.degrees(dial_angle(stations, law, *DIAL)), 0 * stations - 0.2, "o", color=PLUM, markersize=5)
        axes.text(0, -0.42, f"even in {law}, kHz", color=colour, fontsize=SMALL_TEXT, va="top")
        axes.set(ylim=(-0.9, 0.95), yticks=[], xlim=(-4, 184))
        axes.spines["left"].set_visible(False)
        axes.spines["bottom"].set_visible(False)
        axes.grid(False)
        axes.tick_params(axis="x", length=0)
    rows[-1].set(xticks=[0, 45, 90, 135, 180], xlabel="dial, degrees")
    return drawing


@figure(
    caption="Strays narrow the range, and from the upper end. The band lies between the two lines.",
    alt="Upper and lower end of the range against stray capacitance from 0 to 100 picofarads. The lower end falls "
    "gently, from 589 to 522 kilohertz; the upper end plunges from 3250 to 1060 kilohertz, and passes the last "
    "channel of the medium waves, a dashed line, between 30 and 40 picofarads.",
)
def strays(raster: Annotated[int, RASTER] = 9_000):
    drawing, axes = plot()
    stray = np.linspace(0, 100e-12, 101)
    lowest, highest = range_covered(INDUCTANCE, CONDENSER_LEAST, CONDENSER_MOST, stray)
    axes.fill_between(stray, lowest, highest, color=SEA, alpha=0.15, linewidth=0)
    axes.plot(stray, highest, color=SEA)
    axes.plot(stray, lowest, color=BRASS, dashes=(5, 2))
    last = carriers(raster)[-1]
    axes.axhline(last, color=INK, linewidth=0.9, dashes=(1, 2))
    axes.text(99e-12, last + 48e3, f"last channel, {last / 1e3:.0f} kHz", ha="right", va="bottom", fontsize=SMALL_TEXT)
    axes.text(8e-12, 2.75e6, "plates out", color=SEA)
    axes.text(52e-12, 0.2e6, "plates in", color=BRASS)
    axes.set(ylim=(0, 3.4e6), xlim=(0, 100e-12))
    engineering_axis(axes.xaxis, "stray capacitance", "F")
    engineering_axis(axes.yaxis, "frequency", "Hz", ticks=4)
    return drawing
