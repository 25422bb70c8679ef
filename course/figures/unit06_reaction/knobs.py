"""Reaction, section 6: three knobs, each of which moves the others."""

from dataclasses import replace

import numpy as np

from course.circle.stations import ACROSS_THE_BAY, STATIONS
from course.figures import figure
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, marks, plot
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.network import DIAL, SALTMARSH_SET
from solutions.unit06_reaction.stability import gain_and_bandwidth, poles

STATION = ACROSS_THE_BAY.frequency
COUPLINGS = np.linspace(0.5e-6, 30e-6, 41)
FREQUENCIES = np.linspace(*DIAL, 45)
SHOWN = 50e-12, 300e-12  # farad: that part of the throttle's range in which the set does something


def silent_map(frequency, throttle, coupling):
    """Gain and bandwidth over two knobs, blank where the set oscillates."""
    parts = club_set.on_station(frequency, throttle, coupling)
    sings = poles(parts)[..., 0].real >= 0
    calm = replace(parts, transconductance=np.where(sings, 0.0, parts.transconductance))
    return [np.ma.masked_where(sings, values) for values in gain_and_bandwidth(calm)]


def contours(axes, across, up, values, levels, colour, text, log=False):
    """Lines of one height, each with its height written on it."""
    lines = axes.contour(
        across, up, np.ma.log(values) if log else values, np.log(levels) if log else levels, colors=colour, linewidths=1.5
    )
    heights = {level: text(height) for level, height in zip(lines.levels, levels, strict=True)}
    axes.clabel(lines, fmt=heights, fontsize=SMALL_TEXT, inline_spacing=4)


def dial_axis(axes):
    axes.set_xlim(*DIAL)
    axes.set_xticks([600e3, 900e3, 1200e3, 1500e3], ["600", "900", "1200", "1500"])
    axes.set_xlabel("tuned to, kHz")


def pico_axis(axes, ticks):
    axes.set_yscale("log")
    marks(axes.yaxis, np.array(ticks) * 1e-12, [f"{tick}" for tick in ticks])
    axes.set_ylabel("throttle, pF")


@figure(
    caption="**Gain** for a weak station at 1107 kHz, over aerial coupling and reaction. Follow a line downwards: a "
    "looser aerial "
    "brings less in, and more reaction makes up for it. In the grey field the set sings. Its edge leans a little: the "
    "looser the "
    "aerial, the sooner it sings.",
    alt="A map. Across, the throttle from 10 to 130 picofarads; upwards, the aerial coupling from 0 to 30 microhenries. "
    "Lines of equal gain, 5, 10, 20, 40, 80 and 200, run down to the right and all meet at the foot of a grey field, "
    "whose edge leans from 109 picofarads at the bottom to 119 at the top.",
)
def gain_map():
    drawing, axes = plot(height=3.6)
    throttle = np.linspace(10e-12, 120e-12, 70)
    gain, _ = silent_map(STATION, throttle, COUPLINGS[:, None])
    contours(axes, throttle, COUPLINGS, gain, [5, 10, 20, 40, 80, 200], SEA, lambda height: f"{height:g}", log=True)
    field(axes)
    return drawing


@figure(
    caption="**Bandwidth** for a weak station, over the same two knobs, in kilohertz. The lines stand nearly upright: "
    "beside the "
    "anode, which sees the throttle too, the aerial takes little.",
    alt="The same map with lines of equal bandwidth: 32, 16, 8, 4 and 2 kilohertz from left to right, nearly upright, "
    "parallel to "
    "the edge of the grey field.",
)
def bandwidth_map():
    drawing, axes = plot(height=3.6)
    throttle = np.linspace(10e-12, 120e-12, 70)
    _, width = silent_map(STATION, throttle, COUPLINGS[:, None])
    contours(axes, throttle, COUPLINGS, width, [2e3, 4e3, 8e3, 16e3, 32e3], RUST, lambda height: f"{height / 1e3:g}")
    field(axes)
    return drawing


def field(axes):
    """The part of a map of throttle and coupling in which the set sings, and the map's axes."""
    edge = club_set.threshold_throttle(STATION, COUPLINGS)
    axes.fill_betweenx(COUPLINGS, edge, 130e-12, color=FAINT, alpha=0.5, linewidth=0)
    axes.plot(edge, COUPLINGS, color=INK, linewidth=1.4)
    axes.text(123e-12, 7e-6, "sings", ha="center", rotation=90)
    axes.set(xlim=(10e-12, 130e-12), ylim=(0.5e-6, 30e-6))
    engineering_axis(axes.xaxis, "throttle", "F")
    engineering_axis(axes.yaxis, "aerial coupling", "H")


@figure(
    caption="**Bandwidth over tuning and reaction** for weak stations, in kilohertz, at the club's coupling of 20 µH. "
    "Tune up the "
    "dial with the throttle left alone, and you run into the grey field: the set breaks into song. Tune down, and it "
    "goes deaf.",
    alt="A map. Across, the dial from 530 to 1600 kilohertz; upwards, the throttle from 50 to 300 picofarads on a scale of "
    "tens. Lines of 2 and 4 kilohertz of bandwidth fall to the right, close under the edge of a "
    "grey field that covers all above; those of 8 and 16 lie lower and rise. The edge falls from 190 picofarads to 99 at "
    "1500 kilohertz and is level from there.",
)
def dial_map():
    drawing, axes = plot(height=3.6)
    throttle = np.geomspace(*SHOWN, 60)
    _, width = silent_map(FREQUENCIES, throttle[:, None], club_set.COUPLING)
    contours(axes, FREQUENCIES, throttle, width, [2e3, 4e3, 8e3, 16e3], RUST, lambda height: f"{height / 1e3:g}")
    edge = club_set.threshold_throttle(FREQUENCIES)
    axes.fill_between(FREQUENCIES, edge, SHOWN[1], color=FAINT, alpha=0.5, linewidth=0)
    axes.plot(FREQUENCIES, edge, color=INK, linewidth=1.4)
    axes.text(1250e3, 180e-12, "sings", ha="center")
    axes.set_ylim(*SHOWN)
    pico_axis(axes, (50, 100, 200, 300))
    dial_axis(axes)
    return drawing


@figure(
    caption="**The threshold over tuning and aerial coupling**: throttle, in picofarads, at which the set begins to sing, no "
    "station on. At the lower end the aerial hardly matters. At the upper end, near the aerial's own resonance, it "
    "matters most.",
    alt="A map. Across, the dial; upwards, the aerial coupling from 0 to 25 microhenries. Lines of equal threshold: "
    "upright ones of 170, 150, 130 and 120 picofarads at the left, and on the right lines of 110, 100 and 90 picofarads that "
    "bend over towards the right.",
)
def threshold_map():
    drawing, axes = plot(height=3.6)
    couplings = np.linspace(0.5e-6, 25e-6, 11)
    edge = club_set.threshold_throttle(FREQUENCIES, couplings[:, None])
    contours(axes, FREQUENCIES, couplings, edge * 1e12, [90, 100, 110, 120, 130, 150, 170], PLUM, lambda height: f"{height:g}")
    axes.set(ylim=(0.5e-6, 25e-6))
    engineering_axis(axes.yaxis, "aerial coupling", "H")
    dial_axis(axes)
    return drawing


@figure(
    caption="Throttle at the threshold across the dial, no station on, for three couplings of the aerial. The dots are the "
    "stations. The aerial's own resonance lies beyond the upper end; closely coupled, it takes so much up there that the curve "
    "turns up again.",
    alt="Throttle in picofarads on a scale of tens against the dial from 530 to 1600 kilohertz. Three curves leave 191 "
    "picofarads together and fall. With 5 microhenries the curve sinks to 83; with 20 it turns near 1500 kilohertz "
    "at 99; with 25 near 1450 at 105.",
)
def across_the_dial():
    drawing, axes = plot(height=3.4)
    for coupling, colour, dashes, at in (
        (5e-6, BRASS, (3, 1.5), (1600e3, 75e-12)),
        (20e-6, SEA, (None, None), (1600e3, 91e-12)),
        (25e-6, RUST, (6, 2), (1600e3, 114e-12)),
    ):
        axes.plot(FREQUENCIES, club_set.threshold_throttle(FREQUENCIES, coupling), color=colour, dashes=dashes)
        axes.text(*at, f"{coupling * 1e6:g} µH", color=colour, ha="right", fontsize=SMALL_TEXT)
    there = np.array([station.frequency for station in STATIONS])
    axes.plot(there, club_set.threshold_throttle(there), "o", color=SEA, markersize=5)
    axes.set_ylim(60e-12, 250e-12)
    pico_axis(axes, (70, 100, 150, 200))
    dial_axis(axes)
    return drawing


@figure(
    caption="How good a valve the set needs to sing, across the dial, with the throttle at four settings, no station on. The "
    "wider it is open, the less is needed, and the flatter the curve. The dotted line is the club's type 30, as much of it as "
    "the grid condenser passes on.",
    alt="Mutual conductance in milliamperes a volt on a scale of tens against the dial. With 80 picofarads it falls from "
    "17 to 1.6; with 100, from 3 to 0.8; with 150, from 1.1 to 0.36; with 200, from 0.76 to 0.23. A "
    "level dotted line stands at 0.81.",
)
def level_by_an_open_throttle():
    drawing, axes = plot(height=3.6)
    for throttle, colour, dashes, at in (
        (80e-12, RUST, (None, None), (800e3, 8.2e-3)),
        (100e-12, BRASS, (6, 2), (640e3, 2.7e-3)),
        (150e-12, KELP, (3, 1.5), (640e3, 1.06e-3)),
        (200e-12, SEA, (None, None), (580e3, 0.36e-3)),
    ):
        axes.semilogy(FREQUENCIES, club_set.threshold_slope(FREQUENCIES, throttle), color=colour, dashes=dashes)
        axes.text(*at, f"{throttle * 1e12:g} pF", color=colour, fontsize=SMALL_TEXT)
    axes.axhline(SALTMARSH_SET.transconductance, color=INK, linewidth=1.2, dashes=(2, 2))
    axes.text(1590e3, SALTMARSH_SET.transconductance * 1.08, "type 30", ha="right", fontsize=SMALL_TEXT)
    axes.set_ylim(0.2e-3, 20e-3)
    marks(axes.yaxis, [0.3e-3, 1e-3, 3e-3, 10e-3], ["0.3", "1", "3", "10"])
    axes.set_ylabel("needed, mA a volt")
    dial_axis(axes)
    return drawing
