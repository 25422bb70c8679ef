"""Reaction, the anode that is left alone: what it takes from the grid, what it may give, and what by-pass and throttle do."""

import numpy as np

from course.circle.stations import ACROSS_THE_BAY
from course.figures import figure
from course.figures.kit.style import BRASS, FAINT, INK, KELP, PLUM, RUST, SEA, SMALL_TEXT, engineering_axis, label, marks, plot
from course.figures.unit06_reaction.knobs import dial_axis, pico_axis
from solutions.unit01_signal.channel_plan import FIRST_AND_LAST
from solutions.unit06_reaction.anode_alone import BARE_ANODE, anode_loss, early_threshold
from solutions.unit06_reaction.club_set import threshold_throttle
from solutions.unit06_reaction.grid_anode_admittance import grid_admittance
from solutions.unit06_reaction.network import BY_PASS, DIAL, SALTMARSH_SET

STATION = ACROSS_THE_BAY.frequency
FREQUENCIES = np.linspace(*DIAL, 40)


@figure(
    caption="**Coil or condenser?** What grid and anode, through the few picofarads between them, take from the tuned "
    "circuit at "
    "1107 kHz, over what the anode is joined to, for weak signals. To the right it sees a condenser: a loss, greatest where "
    "the condenser's reactance equals the anode resistance. To the left it sees a coil: a gain. The dots: the bare anode "
    "of the "
    "club's set, and the same with its by-pass of 200 pF.",
    alt="Conductance in microsiemens against the susceptance at the anode, from minus 2 millisiemens, a coil, to plus 2, a "
    "condenser. In the grey left half the curve lies below zero, with a deep trough of minus 100 close to the middle. In the "
    "right half it lies above, with a crest of 110 as close. From both it comes back towards zero. One dot stands near "
    "the crest "
    "at 105, one on the slope, at 20.",
)
def coil_or_condenser():
    drawing, axes = plot(height=3.6)
    of = SALTMARSH_SET
    susceptance = np.unique(np.concatenate([np.linspace(-2e-3, 2e-3, 161), np.linspace(-0.4e-3, 0.4e-3, 121)]))

    def taken(load):
        return grid_admittance(STATION, of.transconductance, of.anode_resistance, of.grid_anode_capacitance, 1j * load).real

    axes.plot(susceptance, taken(susceptance), color=SEA)
    axes.axhline(0, color=INK, linewidth=0.8)
    axes.axvspan(-2e-3, 0, facecolor=FAINT, alpha=0.5, linewidth=0)
    for capacitance, words, aside in ((BARE_ANODE, "bare", (8, 0)), (BARE_ANODE + BY_PASS, "by-pass", (-18, 8))):
        load = 2 * np.pi * STATION * capacitance
        axes.plot(load, taken(load), "o", color=RUST)
        label(axes, words, (load, taken(load)), aside, RUST, fontsize=SMALL_TEXT)
    axes.text(-1.9e-3, 120e-6, "anode sees\na coil: gives", fontsize=SMALL_TEXT)
    axes.text(0.5e-3, -150e-6, "anode sees a\ncondenser: takes", fontsize=SMALL_TEXT)
    axes.set(xlim=(-2e-3, 2e-3), ylim=(-200e-6, 200e-6))
    engineering_axis(axes.xaxis, "susceptance at the anode", "S", ticks=5)
    engineering_axis(axes.yaxis, "taken from the grid", "S", ticks=5)
    return drawing


@figure(
    caption="**What a by-pass does.** The anode's toll on the club's tuned circuit, as ohms in series with the coil, "
    "over the by-pass; "
    "throttle shut, tickler turned away, weak signals. The dashed lines are what coil and grid take by themselves. At the "
    "lower end a few picofarads make it worse. A hundred and more make it better everywhere.",
    alt="Ohms on a scale of tens against the by-pass from 0 to 500 picofarads. Three falling curves: for 531 kilohertz "
    "from 20 to 4, after "
    "a small crest, for 1107 from 215 to 16, for 1602 from 580 to 34. Short dashed lines at the right mark 8, 20 and 36 ohms.",
)
def loss_by_by_pass():
    drawing, axes = plot(height=3.6)
    by_pass = np.unique(np.concatenate([np.linspace(0, 40e-12, 41), np.linspace(40e-12, 500e-12, 60)]))
    lowest, highest = FIRST_AND_LAST[9_000]
    for frequency, colour, at in ((lowest, BRASS, (250e-12, 9)), (STATION, SEA, (213e-12, 21)), (highest, PLUM, (250e-12, 85))):
        toll, own = anode_loss(frequency, by_pass)
        axes.semilogy(by_pass, toll, color=colour)
        axes.plot([400e-12, 500e-12], [own, own], color=colour, dashes=(3, 2), linewidth=1.2)
        axes.text(*at, f"{frequency / 1e3:g} kHz", color=colour, fontsize=SMALL_TEXT)
    axes.axvline(BY_PASS, color=INK, linewidth=1.0, dashes=(2, 2))
    axes.text(BY_PASS + 6e-12, 400, "the club's", fontsize=SMALL_TEXT)
    axes.set(xlim=(0, 500e-12), ylim=(3, 700))
    marks(axes.yaxis, [3, 10, 30, 100, 300])
    axes.set_ylabel("taken, Ω")
    engineering_axis(axes.xaxis, "by-pass", "F")
    return drawing


@figure(
    caption="**The tickler that was meant to do.** Throttle at the threshold across the dial, no station on. With a "
    "tickler of 12 µH "
    "that shares 6 µH, and no by-pass: for a valve without capacitance from grid to anode, with 1 pF, and with the 6 pF of a "
    "type 30. Solid: the Circle's tickler of 48 µH and 14 µH, with the by-pass, and the type 30 as it is. In the grey field "
    "the throttle does not reach.",
    alt="Throttle in picofarads on a scale of tens against the dial from 530 to 1600 kilohertz. The dotted curve for 0 "
    "picofarads falls "
    "from 53 to 14. That for 1 picofarad falls from 150 to about 70. That for 6 begins at 640, in a grey field above "
    "500, and lies near "
    "300 from the middle on. The solid curve falls from 190 to 99.",
)
def early_tickler():
    drawing, axes = plot(height=3.8)
    for capacitance, colour, dashes, at in (
        (0.0, BRASS, (1.5, 1.5), (600e3, 22e-12)),
        (1e-12, KELP, (3, 1.5), (1250e3, 47e-12)),
        (6e-12, RUST, (6, 2), (1250e3, 360e-12)),
    ):
        axes.plot(FREQUENCIES, early_threshold(FREQUENCIES, capacitance), color=colour, dashes=dashes)
        axes.text(*at, f"{capacitance * 1e12:g} pF", color=colour, fontsize=SMALL_TEXT)
    axes.plot(FREQUENCIES, threshold_throttle(FREQUENCIES), color=SEA)
    axes.text(1250e3, 118e-12, "now", color=SEA, fontsize=SMALL_TEXT)
    axes.axhspan(500e-12, 1000e-12, facecolor=FAINT, alpha=0.6, linewidth=0)
    axes.set_ylim(8e-12, 1000e-12)
    pico_axis(axes, (10, 30, 100, 300, 1000))
    dial_axis(axes)
    return drawing
