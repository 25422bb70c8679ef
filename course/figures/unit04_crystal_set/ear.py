"""Crystal set, section 5: how loud it is, against the faintest that can be heard."""

import numpy as np

from course.circle.crystal_set import CRYSTAL, DEPTH, source
from course.circle.stations import ACROSS_THE_BAY, FAR_OVER_SEA, LOCAL, NEXT_CHANNEL
from course.figures import figure
from course.figures.kit.style import BRASS, INK, PLUM, RUST, SEA, SMALL_TEXT, label, marks, plot
from solutions.unit04_crystal_set.crystal_set import LOAD, SENSITIVITY
from solutions.unit04_crystal_set.detector_load import detector_powers
from solutions.unit04_crystal_set.phone_loudness import hearing_threshold, sound_pressure_level


def level(station, diode=CRYSTAL):
    """Sound pressure level of a station's tone in the telephones."""
    return sound_pressure_level(detector_powers(*source(station), DEPTH, LOAD, *diode)[2], SENSITIVITY)


@figure(
    caption="The faintest tones that young ears can hear (ISO 226:2003), and the set's tones of 1 kHz. A quiet room has 30 dB "
    "or so of its own, and what is below that is soon covered.",
    alt="Sound pressure level against pitch, 20 hertz to 12.5 kilohertz. The threshold falls from 78 decibels at 20 hertz "
    "to 2 at 1 kilohertz and minus 6 at 3 kilohertz, then rises to 14. Dots at 1 kilohertz: Saltmarsh Point 81, Curlew "
    "Bank 69, Merrow Sound 58, Gannet Rock 10. A dashed line at 30.",
)
def threshold():
    drawing, axes = plot(height=3.7)
    pitch = np.geomspace(20, 12500, 120)
    axes.fill_between(pitch, hearing_threshold(pitch), -12, color=SEA, alpha=0.2, linewidth=0)
    axes.plot(pitch, hearing_threshold(pitch), color=SEA)
    axes.plot([20, 12500], [30, 30], color=BRASS, dashes=(4, 2), linewidth=1.3)
    axes.text(2.4e3, 32, "quiet room", color=BRASS, fontsize=SMALL_TEXT)
    for station in (LOCAL, ACROSS_THE_BAY, FAR_OVER_SEA, NEXT_CHANNEL):
        axes.plot(1e3, level(station), "o", color=RUST)
        label(axes, station.name, (1e3, level(station)), (9, 0), va="center", fontsize=SMALL_TEXT)
    axes.set(xscale="log", xlim=(20, 12500), ylim=(-12, 92), yticks=[0, 20, 40, 60, 80], ylabel="level, dB", xlabel="pitch")
    marks(axes.xaxis, [20, 100, 1000, 10000], ["20 Hz", "100 Hz", "1 kHz", "10 kHz"])
    axes.text(75, 4, "not heard", color=SEA, fontsize=SMALL_TEXT, ha="center")
    return drawing


@figure(
    caption="Diodes of every leakage, at the club's set, slope voltage 30 mV. For a strong station it hardly matters which. "
    "For Gannet Rock it decides. The line is the crystal that the lesson takes.",
    alt="Level of the tone against saturation current, 1 nanoampere to 100 microamperes. Saltmarsh Point stays near 81 "
    "decibels up to 10 microamperes. Curlew Bank stays near 69. Gannet Rock has a hump: minus 9 decibels "
    "at 1 nanoampere, 19 at 0.1 microamperes, 10 at 1 microampere, below minus 20 at 10.",
)
def which_crystal():
    drawing, axes = plot(height=3.5)
    saturation = np.geomspace(1e-9, 1e-4, 60)
    for station, colour, dashes, rise in (
        (LOCAL, SEA, (None, None), 4),
        (ACROSS_THE_BAY, PLUM, (4, 2), -13),
        (NEXT_CHANNEL, RUST, (6, 2), 7),
    ):
        levels = [level(station, (current, CRYSTAL[1])) for current in saturation]
        axes.plot(saturation, levels, color=colour, dashes=dashes)
        label(
            axes,
            station.name,
            (saturation[2], levels[14 if station is NEXT_CHANNEL else 2]),
            (0, rise),
            colour,
            fontsize=SMALL_TEXT,
        )
    axes.axvline(CRYSTAL[0], color=INK, linewidth=1, dashes=(2, 2))
    axes.axhline(float(hearing_threshold(1000.0)), color=BRASS, linewidth=1.3, dashes=(4, 2))
    axes.text(9e-5, 5, "just heard", color=BRASS, fontsize=SMALL_TEXT, ha="right")
    axes.set(xscale="log", xlim=(1e-9, 1e-4), ylim=(-25, 95), ylabel="level, dB", xlabel="saturation current")
    marks(axes.yaxis, [-20, 0, 20, 40, 60, 80])
    marks(axes.xaxis, [1e-9, 1e-7, 1e-5], ["1 nA", "0.1 µA", "10 µA"])
    return drawing
