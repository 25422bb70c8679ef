"""Pictures of the capstone: what is on the air at Tern Spit, and what the reference receiver makes of it."""

import numpy as np
from matplotlib.figure import Figure

from checker.hear.listening import FAR, LOCAL, MOMENTS, SECONDS, moves, setting_times
from course.figures import figure
from course.figures.kit.style import BRASS, DASH, INK, RUST, SEA, SMALL_TEXT, engineering_axis, plot
from solutions.unit06_reaction.three_knobs import tuned_to
from solutions.unit09_feedback_receivers.evening import CRESTS, FREQUENCIES, NAMES
from solutions.unit09_feedback_receivers.receiver import COUPLING, ISOLATING, TICKLER, VALVE, first_circuit, knobs, second_coil
from solutions.unit09_feedback_receivers.receiver import receiver as reference_receiver
from solutions.unit09_feedback_receivers.receiver_check import GANNET_ROCK, SKIRT_RATE, SKIRTS, losses
from solutions.unit09_feedback_receivers.swing_step import swing_step


@figure(
    caption="What the aerial brings on Tern Spit, in decibels above a microvolt. The two in the middle stand 9 kHz apart: "
    "on this scale, one on top of the other.",
    alt="Six upright lines on the medium-wave dial. Merrow Sound at 693 kilohertz, 89 decibels; Saltmarsh Point at 846, "
    "95; Gannet Rock "
    "at 855, 68, close beside it; Curlew Bank at 1107, 98; Skerry Vore at 1206, 74; Holm Light at 1449, 64.",
)
def on_the_spit() -> Figure:
    drawing, axes = plot()
    for name, frequency, crest in zip(NAMES, FREQUENCIES, CRESTS, strict=True):
        level = 20 * np.log10(crest / np.sqrt(2) / 1e-6)
        far = name == "Gannet Rock"
        axes.plot([frequency, frequency], [30, level], color=RUST if far else SEA, linewidth=3)
        beside = -14e3 if name in ("Saltmarsh Point", "Holm Light") else 14e3
        axes.text(
            frequency + beside,
            level - 2,
            name,
            color=RUST if far else INK,
            size=SMALL_TEXT,
            rotation=90,
            va="top",
            ha="left" if beside > 0 else "right",
        )
    axes.set_xlim(600e3, 1550e3)
    axes.set_ylim(30, 102)
    engineering_axis(axes.xaxis, "frequency", "Hz")
    axes.set_ylabel("r.m.s. e.m.f., dBµV")
    return drawing


@figure(
    caption="The reference receiver on Gannet Rock, measured as the checker measures yours: how many decibels more a "
    "carrier needs, so "
    "far from the dial's setting, to sound as loud. Lines: both circuits, and the second by itself. Dots: as measured; "
    "far out they lie above the line, because between two of the 48 000 values a second the e.m.f. stands still.",
    alt="A sharp curve, 42 decibels down 10 kilohertz to either side. One circuit alone is at 29 decibels there.",
)
def both_circuits() -> Figure:
    drawing, axes = plot()
    offset = np.linspace(-24e3, 24e3, 241)
    first, _ = first_circuit(FREQUENCIES[GANNET_ROCK])
    _, second = tuned_to(
        COUPLING, *knobs(FREQUENCIES[GANNET_ROCK], 700.0), ISOLATING, second_coil(FREQUENCIES[GANNET_ROCK]), TICKLER, VALVE
    )
    alone = 10 * np.log10(1 + (2 * offset / second) ** 2)
    axes.plot(offset, -alone, color=BRASS, linestyle=DASH)
    axes.plot(offset, -alone - 10 * np.log10(1 + (2 * offset / first) ** 2), color=SEA)
    away, lost = losses(reference_receiver, GANNET_ROCK, SKIRTS, SKIRT_RATE)
    axes.plot(away, -lost, "o", color=RUST, markersize=5)
    axes.axhline(-40, color=INK, linewidth=0.8, linestyle=":")
    axes.axvline(LOCAL - FAR, color=RUST, linewidth=1, linestyle=":")
    axes.text(LOCAL - FAR - 600, -3, "the local", color=RUST, ha="right", va="top", size=SMALL_TEXT)
    axes.text(12e3, -24, "one circuit", color=BRASS, size=SMALL_TEXT)
    axes.text(9e3, -47, "both", color=SEA, ha="right", size=SMALL_TEXT)
    axes.set_ylim(-64, 3)
    engineering_axis(axes.xaxis, "offset from 855 kHz", "Hz")
    axes.set_ylabel("response, dB")
    return drawing


@figure(
    caption="The sixteen seconds of the first sound, seen on the dial from above. Grey: the two stations, as wide as "
    "their programmes. "
    "Blue: the band that the set takes in; where it is narrow, reaction is far advanced, and where it is red, the set "
    "oscillates.",
    alt="Time runs to the right, frequency upwards. A band 6 kilohertz wide lies on the local at 846 kilohertz until "
    "2.5 seconds, moves "
    "to 855 kilohertz by 4 seconds, and narrows from 5.5 to 9.5 seconds to 500 hertz. From 12 seconds it is red, and "
    "wanders 1.2 "
    "kilohertz up and back; from 14 seconds it is narrow again.",
)
def dial_from_above() -> Figure:
    drawing, axes = plot()
    for station, strength in ((LOCAL, 0.30), (FAR, 0.12)):
        axes.axhspan((station - 1.5e3) / 1e3, (station + 1.5e3) / 1e3, color=INK, alpha=strength, linewidth=0)
    time = np.unique(np.concatenate([np.linspace(0, SECONDS, 161), setting_times()]))
    frequency, width, _ = moves(time)
    sings = width < 0
    axes.fill_between(
        time, (frequency - width / 2) / 1e3, (frequency + width / 2) / 1e3, where=~sings, color=SEA, alpha=0.6, linewidth=0
    )
    axes.plot(time, np.where(sings, np.nan, frequency) / 1e3, color=SEA, linewidth=1)
    axes.plot(time, np.where(sings, frequency, np.nan) / 1e3, color=RUST, linewidth=2.2)
    for place, (second, says) in enumerate(MOMENTS):
        axes.axvline(second, color=BRASS, linewidth=0.8, linestyle=":")
        axes.text(second + 0.15, 863.4 - 1.5 * (place % 3), says, color=BRASS, size=SMALL_TEXT * 0.85, va="top")
    axes.text(15.8, LOCAL / 1e3, "the local", color=INK, ha="right", va="center", size=SMALL_TEXT)
    axes.text(0.2, FAR / 1e3, "Gannet Rock", color=INK, va="center", size=SMALL_TEXT)
    axes.set_xlim(0, SECONDS)
    axes.set_ylim(841, 864)
    axes.set_xlabel("seconds")
    axes.set_ylabel("frequency, kHz")
    axes.grid(False)
    return drawing


@figure(
    caption="A swing from nothing, pushed steadily. Where it dies by itself, it comes to rest; where it grows by itself, nothing stops it.",
    alt="Swing against time in time constants. A dashed curve rises to 0.63 after one and flattens at 1; another, of the same push, "
    "rises ever more steeply and passes 1.7 after one.",
)
def one_step():
    drawing, axes = plot(height=2.6)
    time = np.linspace(0, 3, 200)
    axes.plot(time, swing_step(0.0, 1.0, 1.0, time), color=RUST, label="grows by itself")
    axes.plot(time, swing_step(0.0, 1.0, -1.0, time), color=SEA, dashes=(5, 2), label="dies by itself")
    axes.plot(1.0, swing_step(0.0, 1.0, -1.0, 1.0), "o", color=SEA)
    axes.annotate("63.2 %", (1.0, 0.632), (6, -12), textcoords="offset points", color=SEA)
    axes.set(xlabel="time, time constants", ylabel="swing, V", xlim=(0, 3), ylim=(0, 4))
    axes.legend(loc="upper left")
    return drawing


@figure(
    caption="What a tuned circuit takes from a station or a tone that is off its middle, for a band of 700 Hz and one of 3 kHz.",
    alt="Decibels lost against the distance from the carrier, to 12 kilohertz, two curves. At 9 kilohertz the band of 700 hertz has lost "
    "28 decibels and that of 3 kilohertz 16; at 1 kilohertz, 10 and 2.",
)
def two_bands():
    drawing, axes = plot(height=2.8)
    off = np.linspace(0, 12e3, 241)
    for band, colour, dashes in ((700.0, SEA, (None, None)), (3e3, BRASS, (5, 2))):
        axes.plot(
            off / 1e3, -10 * np.log10(1 + (2 * off / band) ** 2), color=colour, dashes=dashes, label=f"{band / 1e3:g} kHz wide"
        )
    for place, words in ((1.0, "a tone"), (9.0, "the local")):
        axes.axvline(place, ymax=0.7, color=INK, linewidth=0.9, dashes=(1, 2))
        axes.annotate(words, (place, -38), (4, 0), textcoords="offset points")
    axes.set(xlabel="distance from the carrier, kHz", ylabel="dB", xlim=(0, 12), ylim=(-40, 0))
    axes.legend(loc="upper right")
    return drawing
