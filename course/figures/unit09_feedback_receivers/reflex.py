"""Feedback receivers, sections 4 and 5: one valve that amplifies twice."""

import numpy as np

from course.circle.loudspeaker_set import LEAKAGE, PRIMARY, RATIO, SHUNT
from course.circle.reflex_set import (
    ANODE,
    AUDIO_GAIN,
    BIAS,
    BYPASS,
    CURRENT,
    DEPTH,
    DETECTOR,
    EFFICIENCY,
    LOWEST,
    PHONES,
    RADIO,
    RADIO_GAIN,
    RADIO_LOAD,
    RESISTANCE,
    TREBLE,
)
from course.figures import figure
from course.figures.kit.parts import (
    Aerial,
    Condenser,
    CrystalDetector,
    Dot,
    Earth,
    Headphones,
    Supply,
    Triode,
    VariableCondenser,
    Windings,
    ht_feed,
    schematic,
    wire,
)
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, label, marks, plot
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import LAW
from solutions.unit05_valve.stage_gain import stage_gain
from solutions.unit05_valve.triode_current import anode_resistance, drive
from solutions.unit09_feedback_receivers.reflex import bypass_limits, largest_carrier, path_gains, swings
from solutions.unit09_feedback_receivers.two_stage_audio import transformer_gain


@figure(
    caption="A reflex set. The carrier's way: aerial, grid, anode, and through the upper pair of coils to the crystal. The "
    "tone's way: crystal, transformer, up through the tuned coil to the *same* grid, and out of the same anode to "
    "the {{ term('headphones') }}. The condensers at the headphones and at the coil's foot let the carrier past "
    "what belongs to the tone. The resistor in the HT lead saves the filament.",
    alt="Circuit: an aerial coil is coupled to a tuned coil with its condenser. The coil's upper end goes to the grid of a "
    "triode; its lower end goes through the secondary of an audio transformer to minus 3 volts, with a condenser to "
    "earth. The anode goes up through the first of two coupled coils and the headphones, with a condenser across them, "
    "and then a resistor, to plus 90 volts. The second coil feeds a crystal, and that the transformer's primary, whose other end is "
    "earthed.",
)
def reflex_set():
    with schematic() as drawing:
        coils = Windings(3, 5).at((0.9, 2.75)).color(SEA)
        Aerial().at((0.1, 3.9)).label("aerial", loc="right", ofst=(0.12, 0.25))
        wire((0.1, 3.9), (0.1, coils.top1[1]), coils.top1)
        wire(coils.bottom1, (0.1, coils.bottom1[1]), (0.1, 1.7))
        Earth().at((0.1, 1.7))
        grid, foot = 3.8, 1.0
        x = coils.top2[0]
        wire(coils.top2, (x, grid), (2.5, grid), color=SEA)
        wire(coils.bottom2, (x, foot), (5.0, foot), color=RUST)
        VariableCondenser().at((2.5, grid)).to((2.5, foot)).color(SEA)
        valve = Triode().at((4.0, grid - 0.1))
        wire((2.5, grid), valve.grid)
        for place, colour in (((2.5, grid), SEA), ((2.5, foot), RUST), ((3.3, foot), RUST)):
            Dot().at(place).color(colour)
        Condenser().at((3.3, foot)).to((3.3, -0.5)).color(PLUM)
        Earth().at((3.3, -0.5))
        Earth().at((valve.filament1[0], valve.filament1[1] - 0.15))
        wire(valve.filament1, (valve.filament1[0], valve.filament1[1] - 0.15))
        x, y = valve.filament2
        wire((x, y), (x, y - 0.2), (x + 0.3, y - 0.2))
        Supply("LT+", side="right").at((x + 0.3, y - 0.2))
        audio = Windings(4, 4).at((5.0, foot - 0.68)).color(RUST)
        wire(audio.bottom1, (5.0, audio.bottom1[1] - 0.2))
        Supply("−3 V", side="bottom").at((5.0, audio.bottom1[1] - 0.2))
        radio = Windings(3, 3).at((4.0, 5.35)).color(SEA)
        wire(valve.anode, radio.bottom1)
        x, y = radio.top1
        Headphones().at((x, y + 0.35)).to((x, y + 2.05)).color(RUST).label("phones", loc="bottom", ofst=0.3, color=RUST)
        wire((x, y), (x, y + 0.35))
        Condenser().at((x - 1.1, y + 0.35)).to((x - 1.1, y + 2.05)).color(PLUM)
        wire((x, y + 0.35), (x - 1.1, y + 0.35), color=PLUM)
        wire((x, y + 2.05), (x - 1.1, y + 2.05), color=PLUM)
        ht_feed((x, y + 2.05), (x + 1.6, y + 2.05), name="+90 V", side="right")
        x, y = radio.top2
        CrystalDetector().at((x, y)).to((x + 2.2, y)).label("crystal", loc="top")
        wire((x + 2.2, y), (x + 2.2, audio.top2[1]), audio.top2, color=RUST)
        wire(radio.bottom2, (x + 0.9, radio.bottom2[1]), (x + 0.9, radio.bottom2[1] - 0.3))
        Earth().at((x + 0.9, radio.bottom2[1] - 0.3))
        wire(audio.bottom2, (audio.bottom2[0] + 0.5, audio.bottom2[1]), (audio.bottom2[0] + 0.5, audio.bottom2[1] - 0.2))
        Earth().at((audio.bottom2[0] + 0.5, audio.bottom2[1] - 0.2))
    return drawing


@figure(
    caption="What a condenser across the headphones leaves of each gain: 10 kΩ for the carrier (solid, at 531 kHz) and 20 "
    "kΩ for the tone (dashed, at 4.5 kHz). Between the marks both are nearly whole.",
    alt="Share of the gain against capacitance from 10 picofarads to 100 nanofarads. A solid curve for the carrier rises "
    "from 0.58 and is all but 1 from 0.2 nanofarads on. A dashed curve for the tone stays near 1 up to 1 nanofarad and "
    "falls to 0.05. Dotted lines mark 0.3 and 1.8 nanofarads; between them both are above 0.94.",
)
def bypass_window():
    drawing, axes = plot()
    capacitance = np.geomspace(1e-11, 1e-7, 200)
    kept = path_gains(LAW[0], RESISTANCE, RADIO_LOAD, PHONES, capacitance, LOWEST, TREBLE)
    whole = (stage_gain(LAW[0], RESISTANCE, load) for load in (RADIO_LOAD, PHONES))
    for share, all_of_it, colour, dashes in zip(kept, whole, (SEA, RUST), ((None, None), (6, 2)), strict=True):
        axes.semilogx(capacitance, share / all_of_it, color=colour, dashes=dashes)
    for limit in bypass_limits(RADIO_LOAD, PHONES, LOWEST, TREBLE):
        axes.axvline(limit, color=INK, linewidth=1, dashes=(2, 2))
    axes.text(6e-11, 0.72, "carrier", color=SEA, fontsize=SMALL_TEXT)
    axes.text(2.2e-8, 0.3, "tone", color=RUST, fontsize=SMALL_TEXT)
    axes.set(
        xlim=(1e-11, 1e-7),
        ylim=(0, 1.08),
        yticks=[0, 0.5, 1],
        ylabel="share of the gain",
        xlabel="condenser across the headphones",
    )
    marks(axes.xaxis, [1e-11, 1e-10, 1e-9, 1e-8, 1e-7], ["10 pF", "0.1 nF", "1 nF", "10 nF", "0.1 µF"])
    return drawing


@figure(
    caption="The grid of the example, moment by moment, with 0.2 V of carrier (above) and with twice what it has room for "
    "(below), depth 0.8. The band is the carrier, far too fast to draw; it rides on the tone that has come back. "
    "Beyond the upper line the grid takes current; beyond the lower one nothing flows.",
    alt="Two plots of grid volts against time over two cycles of the tone. Above, a thin band rides on a sine between "
    "minus 4.1 and minus 1.9 volts, well between a line at 0 and one at minus 7.8. Below, a band rides on a sine from "
    "minus 7.5 to plus 1.5 volts, broad at its crests and thin in its troughs; the crests reach plus 3, far beyond 0, "
    "and the troughs touch minus 7.8.",
)
def room_on_the_grid():
    drawing, both = plot(rows=2, height=4.6)
    time = np.linspace(0, 2, 161)
    most = largest_carrier(ANODE, BIAS, DEPTH, RADIO_GAIN, EFFICIENCY, RATIO, LAW[0], LAW[2])
    lowest = BIAS - drive(ANODE, BIAS, LAW[0], LAW[2])
    for axes, carrier in zip(both, (0.2, 2 * most), strict=True):
        _, audio, _ = swings(carrier, DEPTH, RADIO_GAIN, EFFICIENCY, RATIO, AUDIO_GAIN)
        wave = np.sin(2 * np.pi * time)
        middle, half = BIAS + audio * wave, carrier * (1 + DEPTH * wave)
        axes.fill_between(time, middle - half, middle + half, color=SEA, alpha=0.45, linewidth=0)
        axes.plot(time, middle, color=RUST)
        for limit in (0.0, lowest):
            axes.axhline(limit, color=INK, linewidth=1.2, dashes=(4, 2))
        axes.set(ylim=(-11, 5.5), yticks=[-8, -4, 0, 4], yticklabels=["−8", "−4", "0", "4"], ylabel="grid, V", xlim=(0, 2))
        axes.text(1.98, 0.4, "takes current", fontsize=SMALL_TEXT, ha="right", va="bottom")
        axes.text(1.98, lowest - 0.4, "cut off", fontsize=SMALL_TEXT, ha="right", va="top")
    both[1].set(xlabel="time, cycles of the tone", xticks=[0, 0.5, 1, 1.5, 2])
    return drawing


@figure(
    caption="The tone moves the grid, and the carrier's gain goes with it. The thick part is what the tone of the example "
    "travels over at the largest carrier that fits.",
    alt="Carrier gain against grid volts from minus 7 to 0: a nearly level curve that rises from 4.1 to 4.7. Dot at minus "
    "3 volts, 4.5. From minus 5.3 to minus 0.7 volts the curve is drawn thick; over it the gain goes from 4.3 to 4.7.",
)
def gain_against_grid():
    drawing, axes = plot()

    def gain(grid):
        """Carrier's gain while the tone holds the grid there and the anode moves on the telephones' load line."""
        anode, _ = operating_point(ANODE + CURRENT * PHONES, PHONES, grid, *LAW)
        return stage_gain(LAW[0], anode_resistance(anode, grid, *LAW), RADIO_LOAD)

    grid = np.linspace(-7, 0, 141)
    axes.plot(grid, gain(grid), color=SEA)
    most = largest_carrier(ANODE, BIAS, DEPTH, RADIO_GAIN, EFFICIENCY, RATIO, LAW[0], LAW[2])
    _, audio, _ = swings(most, DEPTH, RADIO_GAIN, EFFICIENCY, RATIO, AUDIO_GAIN)
    travelled = BIAS + audio * np.linspace(-1, 1, 61)
    axes.plot(travelled, gain(travelled), color=RUST, linewidth=4)
    axes.plot(BIAS, gain(BIAS), "o", color=INK)
    axes.set(
        xlim=(-7, 0),
        ylim=(0, 6),
        yticks=[0, 2, 4, 6],
        ylabel="carrier's gain",
        xlabel="grid, V",
        xticks=[-6, -4, -2, 0],
        xticklabels=["−6", "−4", "−2", "0"],
    )
    return drawing


@figure(
    caption="Once round, with three leaks from the anode to the detector: by how much a tone comes back stronger than it "
    "set out. Where a curve is above the line the set may sing, and it does if the tone also comes back in step. "
    "The hump at 9 kHz is the transformer's own.",
    alt="Strength once round against pitch from 100 hertz to 20 kilohertz, both on scales of tens. Three curves rise with "
    "pitch to a hump near 9 kilohertz and fall. With 10 picofarads the hump reaches 0.2; with 100 it is above a line "
    "at 1 from 6 to 14 kilohertz; with 250 from 3 kilohertz on.",
)
def once_round():
    drawing, axes = plot(height=3.4)
    tone = np.geomspace(100, 20e3, 240)
    stepped = transformer_gain(1.0, DETECTOR, RATIO, PRIMARY, LEAKAGE, SHUNT, tone)
    _, gain = path_gains(LAW[0], RESISTANCE, RADIO_LOAD, PHONES, BYPASS, RADIO, tone)
    for leak, colour, dashes, place, side in (
        (250e-12, RUST, (None, None), (-4, 5), "right"),
        (100e-12, BRASS, (6, 2), (4, -15), "left"),
        (10e-12, KELP, (2, 1.5), (4, -15), "left"),
    ):
        turned = 2 * np.pi * tone * leak * DETECTOR
        round_trip = gain * stepped * turned / np.hypot(1, turned)
        axes.loglog(tone, round_trip, color=colour, dashes=dashes)
        label(
            axes, f"{leak * 1e12:.0f} pF", (700, np.interp(700, tone, round_trip)), place, colour, fontsize=SMALL_TEXT, ha=side
        )
    axes.axhline(1, color=INK, linewidth=1.2, dashes=(4, 2))
    axes.axhspan(1, 100, color=FAINT, alpha=0.4, linewidth=0)
    axes.set(
        xlim=(100, 20e3),
        ylim=(3e-3, 20),
        ylabel="once round",
    )
    marks(axes.yaxis, [0.01, 0.1, 1, 10])
    marks(axes.xaxis, [100, 1e3, 1e4], ["100 Hz", "1 kHz", "10 kHz"])
    axes.set_xlabel("pitch")
    return drawing
