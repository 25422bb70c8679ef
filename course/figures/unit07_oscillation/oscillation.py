"""Oscillation: growth, limit, onset, whistles, pulling in, noise and the neighbour, by the envelope's equation."""

from functools import cache
from typing import Annotated

import numpy as np

from course.circle.levels import RATE
from course.circle.oscillating import STATION, field_of, fierce, gentle, stuttering, swing_beyond
from course.circle.set_in_hand import COUNTRY, EVERY, GENTLE, SetInHand, aerial_crest, moments, noise_emf, station_emf
from course.figures import figure
from course.figures.kit.style import INK, KELP, PLUM, RUST, SEA, SLIP, SOFT, engineering_axis, label, marks, plot
from course.settings import Between, Several
from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.one_valve_set import GRID_SLOPE, LAW, LEAK, LEAK_RETURN, ZERO_CURRENT
from solutions.unit06_reaction.stability import ring
from solutions.unit07_oscillation.beat_note import dial_pitch
from solutions.unit07_oscillation.build_up import amplitude
from solutions.unit07_oscillation.envelope import follow, start
from solutions.unit07_oscillation.limit_amplitude import effective_transconductance, limit_amplitude
from solutions.unit07_oscillation.pull_in import pulled_beat, slipping_phase
from solutions.unit07_oscillation.radiated_field import noise_field

FINE = EVERY * RATE  # steps a second


def settled(in_hand: SetInHand, part: float, state, seconds: float = 0.08):
    """The set, left for a while at so many times its edge: the swing it comes to, in volts, and its state."""
    quiet = np.full(round(seconds * FINE) + 1, 1e-7, complex)
    there = follow(quiet, FINE, in_hand.frequency, in_hand.at(part * in_hand.edge), in_hand.stage, state)
    return float(np.abs(there.grid[-1])), there.state


@figure(
    caption="**Growth, and a limit.** The swing on the grid of the gentle set, switched on at three settings of the "
    "throttle beyond the edge (engine of this unit). Straight on this scale: the same factor in each millisecond. Dashed: "
    "the formula of section 1, with the growth of the set's own pole.",
    alt="Swing from a microvolt to several volts on a logarithmic scale, against time in milliseconds. Three lines rise "
    "straight and then bend over to a level: the further beyond the edge, the steeper, and the higher the level. Dashed "
    "curves follow each.",
)
def growth_and_limit(
    parts: Annotated[tuple, Several(Between("throttle, in parts of the edge", 1.05, 2.5), 3)] = (1.5, 1.2, 1.1),
):
    drawing, axes = plot()
    in_hand = gentle()
    for part, (colour, level) in zip(parts, ((RUST, 0.1), (SEA, 2e-3), (KELP, 4e-5)), strict=False):
        there = in_hand.at(part * in_hand.edge)
        _, growth = ring(there)
        seconds = 0.007
        run = follow(np.zeros(round(seconds * FINE) + 1, complex), FINE, in_hand.frequency, there, GENTLE, start(GENTLE, 1e-6))
        time = np.arange(1, run.grid.size + 1) / FINE
        swing = np.abs(run.grid)
        axes.semilogy(time[::3], swing[::3], color=colour)
        axes.semilogy(time[::3], amplitude(time, 1e-6, swing[-1], growth)[::3], color=INK, linestyle="--", linewidth=0.9)
        first = np.argmax(swing > level)
        label(
            axes,
            f"{round(100 * (part - 1))} % beyond",
            (time[first], level),
            (7, -5),
            colour,
            bbox={"facecolor": SLIP, "edgecolor": "none", "pad": 0.5},
        )
    axes.set_ylim(5e-7, 20)
    axes.set_yticks([1e-6, 1e-3, 1])
    axes.set_yticklabels(["1 µV", "1 mV", "1 V"])
    engineering_axis(axes.xaxis, "time", "s")
    axes.set_ylabel("swing on the grid")
    return drawing


@figure(
    caption="**Offered and needed.** What the club's valve, with its grid leak, offers at its own frequency for each volt "
    "of swing, at three anode voltages. The set needs 300 µS, say: the oscillation grows until the offer has sunk to that.",
    alt="Three falling curves of microsiemens against swing in volts, level at first, then ever lower. A level dashed line "
    "at 300 µS cuts them at about 4, 7 and 12 volts.",
)
def offered_and_needed(
    needed: Annotated[float, Between("what the set needs", 100e-6, 700e-6, "S")] = 300e-6,
    anodes: Annotated[tuple, Several(Between("anode voltage", 30, 90, "V"), 3)] = (90.0, 60.0, 45.0),
):
    drawing, axes = plot()
    swing = np.linspace(0.05, 16, 160)
    bias = bias_with_carrier(swing, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    for anode, colour in zip(anodes, (RUST, SEA, KELP), strict=False):
        axes.plot(swing, effective_transconductance(swing, bias, anode, *LAW), color=colour)
        limit = limit_amplitude(needed, anode)
        axes.plot(limit, needed, "o", color=colour)
        label(axes, f"{anode:.0f} V", (limit, needed), (-5, -17), colour, ha="right")
    axes.axhline(needed, color=INK, linestyle="--", linewidth=0.9)
    axes.set_ylim(0, 1.3e-3)
    engineering_axis(axes.yaxis, "offered", "S")
    engineering_axis(axes.xaxis, "swing on the grid", "V")
    return drawing


@cache
def onset(fierce_one: bool) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Throttles as parts of the edge and the swings on the way up, and the same on the way back."""
    in_hand = fierce() if fierce_one else gentle()
    up, back = np.linspace(0.9, 1.2, 31), np.linspace(1.2, 0.7, 51)
    state, found = start(in_hand.stage, 1e-4), []
    for part in np.concatenate([up, back]):
        swing, state = settled(in_hand, part, state._replace(mode=state.mode + 1e-5))
        found.append(swing)
    return up, np.array(found[: up.size]), back, np.array(found[up.size :])


@figure(
    caption="**Gentle and fierce.** Swing against throttle, opened (full) and closed again (dashed). Fierce: the set as "
    "unit 5 left it, 90 V, 2 MΩ to the filament's positive end. Gentle: 45 V, no dropping resistor, 0.5 MΩ to the negative "
    "end.",
    alt="Against the throttle as a part of its setting at the edge. The gentle set's swing rises from nothing at 1, "
    "gradually, to two volts at 1.2, and goes back the same way. The fierce set's leaps, a hair beyond 1, to 6 volts and, on "
    "the way back, sinks only little by little, until at four fifths of the edge it drops from 3 volts to nothing.",
)
def gentle_and_fierce():
    drawing, axes = plot()
    for fierce_one, colour, name in ((True, RUST, "fierce"), (False, SEA, "gentle")):
        up, rising, back, falling = onset(fierce_one)
        axes.plot(up, rising, color=colour)
        axes.plot(back, falling, color=colour, linestyle="--")
        label(axes, name, (1.17, rising[-2]), (0, -15 if fierce_one else 7), colour, ha="right")
    axes.axvline(1, color=INK, linewidth=0.8, linestyle=":")
    axes.set_xlabel("throttle, parts of the edge")
    engineering_axis(axes.yaxis, "swing", "V")
    return drawing


@figure(
    caption="**Squegging.** Swing of the gentle set, throttle at three times its edge, with a leak of 20 MΩ and "
    "3 nF. A burst charges the condenser; the valve is cut off; the leak needs its time; and again.",
    alt="Six spikes of over seven volts in a quarter of a second, evenly spaced, each a few thousandths of a second wide, with "
    "nothing between them.",
)
def squegging(condenser: Annotated[float, Between("grid condenser", 1e-9, 20e-9, "F")] = 3e-9):
    drawing, axes = plot(height=2.2)
    swing, _ = stuttering(condenser, 0.6)
    last = swing[-round(0.25 * RATE) :]
    crest = last[: last.size // 10 * 10].reshape(-1, 10).max(axis=1)
    axes.fill_between(np.arange(crest.size) * 10 / RATE, crest, -crest, color=SEA, linewidth=0.8)
    engineering_axis(axes.xaxis, "time", "s")
    engineering_axis(axes.yaxis, "swing", "V")
    return drawing


@figure(
    caption="**Pitch against dial.** Gannet Rock's whistle as the tuning condenser is turned. Two settings for each pitch, "
    "and nothing between them: there the station holds the set.",
    alt="A V: the pitch falls from 4.5 kHz to nothing and rises again as the tuning condenser goes through nearly four "
    "picofarads. At its foot the V is cut short: a gap of a sixth of a picofarad without any pitch.",
)
def dial_and_pitch():
    drawing, axes = plot(height=2.6)
    inductance = 200e-6
    middle = 1 / ((2 * np.pi * STATION.frequency) ** 2 * inductance)
    capacitance = middle + np.linspace(-1.9e-12, 1.9e-12, 381)
    pitch = dial_pitch(capacitance, inductance, STATION.frequency)
    held = pitch < hold(*STRONG)
    axes.plot(capacitance, np.where(held, np.nan, pitch), color=SEA)
    axes.plot(capacitance[held], 0 * capacitance[held], color=RUST, linewidth=4)
    label(axes, "held", (middle, 0), (0, 8), RUST, ha="center")
    engineering_axis(axes.xaxis, "tuning condenser", "F", ticks=4)
    engineering_axis(axes.yaxis, "pitch", "Hz")
    return drawing


@cache
def sung() -> float:
    """Hertz by which the gentle set, 3 % over the edge and alone, sings above the frequency it is tuned to."""
    in_hand = gentle()
    quiet = np.zeros(round(0.2 * FINE) + 1, complex)
    run = follow(quiet, FINE, in_hand.frequency, in_hand.at(1.03 * in_hand.edge), GENTLE, start(GENTLE, 0.3))
    late = np.unwrap(np.angle(run.grid[run.grid.size // 2 :]))
    return float((late[-1] - late[0]) / (2 * np.pi) / ((late.size - 1) / FINE))


@cache
def beat(weaker: float, offset: float, seconds: float) -> float:
    """Turns a second of that set against a carrier so many times weaker than Gannet Rock, `offset` hertz above its song."""
    in_hand = gentle()
    time = np.arange(round(seconds * FINE) + 1) / FINE
    carrier = np.exp(2j * np.pi * (sung() + offset) * time)
    there = in_hand.at(1.03 * in_hand.edge)
    emf = aerial_crest(STATION.field) / weaker * carrier
    run = follow(emf, FINE, in_hand.frequency, there, GENTLE, start(GENTLE, 0.3))
    against = np.unwrap(np.angle(run.grid * np.conj(carrier[1:])))[run.grid.size // 3 :]
    turns = abs(against[-1] - against[0]) / (2 * np.pi)
    return turns / ((against.size - 1) / FINE) if turns > 0.6 else 0.0


@cache
def hold(weaker: float, seconds: float) -> float:
    """Hertz up to which such a station holds the set: found by halving."""
    low, high = 2.0, 800.0
    for _ in range(10):
        middle = np.sqrt(low * high)
        low, high = (low, middle) if beat(weaker, middle, seconds) else (middle, high)
    return float(middle)


STRONG, WEAK = (1.0, 0.3), (10.0, 1.2)  # times weaker than Gannet Rock; seconds that are watched


@figure(
    caption="**Pulled, and smothered.** Beat against offset, both over the hold, by the engine: a station ten times weaker "
    "than Gannet Rock (dots) follows Adler's line. Gannet Rock itself (crosses), as strong as the set's own swing, "
    "smothers it: no slow thuds, but silence, and then at once a whistle. Dashed: a whistle that nobody pulls.",
    alt="Beat against offset. Up to an offset of 1 the beat is nothing. Dots then leave zero steeply and bend towards the "
    "straight dashed line, along a curve. Crosses jump from nothing to three quarters of the hold, and then keep near to the "
    "dashed line.",
)
def pulled():
    drawing, axes = plot()
    line = np.linspace(0, 2.6, 401)
    axes.plot(line, pulled_beat(line, 1.0), color=SEA)
    axes.plot(line, line, color=SOFT, linestyle="--", linewidth=1)
    parts = np.array([0.5, 0.8, 0.95, 1.04, 1.1, 1.2, 1.35, 1.5, 1.75, 2.0, 2.5])
    for (weaker, seconds), mark, colour in ((STRONG, "x", RUST), (WEAK, "o", SEA)):
        held = hold(weaker, seconds)
        beats = [beat(weaker, float(part * held), seconds) / held for part in parts]
        axes.plot(parts, beats, mark, color=colour, markersize=7, markeredgewidth=2)
    label(axes, "Adler", (2.3, pulled_beat(2.3, 1.0)), (0, -16), SEA)
    axes.set_xlabel("offset, parts of the hold")
    axes.set_ylabel("beat, parts of the hold")
    return drawing


@figure(
    caption="**Why it growls.** The angle between set and station, in turns, at four offsets in parts of the hold. Just "
    "outside it lingers, then hurries round: a thud, and another.",
    alt="Turns against time. At three times the hold an almost straight line. Nearer to the hold, steps: long and nearly "
    "level, then a quick turn. Below the hold a line that becomes level and stays.",
)
def why_it_growls():
    drawing, axes = plot()
    time = np.linspace(0, 0.05, 400)
    for part, colour in ((3.0, KELP), (1.3, SEA), (1.03, RUST)):
        turns = slipping_phase(time, part * 100.0, 100.0) / (2 * np.pi)
        shown = turns < 8
        axes.plot(time[shown], turns[shown], color=colour)
        label(axes, f"{part:g}", (time[shown][-1], turns[shown][-1]), (3, 0), colour)
    held = np.arcsin(0.9) / (2 * np.pi) * (1 - np.exp(-time * 270))
    axes.plot(time, held, color=PLUM, linestyle="--")
    label(axes, "0.9: held", (0.03, held[-1]), (0, 6), PLUM)
    engineering_axis(axes.xaxis, "time, for a hold of 100 Hz", "s")
    axes.set_ylabel("turns")
    return drawing


@cache
def heard_against_field(part: float) -> tuple[np.ndarray, np.ndarray]:
    """Fields in volts per metre, and the programme's r.m.s. current in the telephones at zero beat, no noise."""
    in_hand = gentle()
    time, fine = moments(1.6)
    fields = STATION.field / np.array([1, 2, 4, 8, 16])
    out = []
    for field in fields:
        _, current = in_hand.played(station_emf(fine, STATION, field) + 0j, np.full(time.size, part * in_hand.edge))
        late = current[current.size // 4 :]
        out.append(np.std(late))
    return fields, np.array(out)


@figure(
    caption="**The carrier's own help.** Programme in the telephones of the gentle set against the station's field: 10 % "
    "short of the edge, and 1 % over it, held at zero beat. The weaker the station, the more the set's own swing helps.",
    alt="Both scales logarithmic. Short of the edge the line falls about four times as far as the field, by the square; "
    "over the edge it falls in proportion, and lies far higher for weak stations.",
)
def own_help():
    drawing, axes = plot()
    for part, colour, name in ((0.9, SEA, "10 % short"), (1.01, RUST, "1 % over, held")):
        fields, current = heard_against_field(part)
        axes.loglog(fields, current, "o-", color=colour)
        label(axes, name, (fields[3], current[3]), (8, -12), colour)
    marks(axes.xaxis, [2e-5, 5e-5, 1e-4, 2e-4], ["20", "50", "100", "200"])
    axes.set_xlabel("field, µV/m")
    axes.set_yticks([1e-8, 1e-7, 1e-6, 1e-5], ["10 nA", "100 nA", "1 µA", "10 µA"])
    axes.set_ylabel("programme")
    return drawing


@figure(
    caption="**Noise at the edge.** Hiss in the telephones of the gentle set with no station, against the throttle.",
    alt="Nanoamperes on a logarithmic scale against throttle from 0.6 to 1.05 of the edge: a slow rise, a steep climb of "
    "more than tenfold just at 1, and a little less beyond.",
)
def threshold_noise():
    drawing, axes = plot(height=2.6)
    parts = np.array([0.6, 0.7, 0.8, 0.85, 0.9, 0.94, 0.97, 0.985, 0.995, 1.0, 1.005, 1.01, 1.02, 1.05])
    in_hand, found = gentle(), []
    for part in parts:
        time, fine = moments(1.2)
        _, current = in_hand.played(noise_emf(fine, in_hand.frequency), np.full(time.size, part * in_hand.edge))
        found.append(np.std(current[current.size // 3 :]))
    axes.semilogy(parts, found, "o-", color=SEA)
    axes.axvline(1, color=INK, linewidth=0.8, linestyle=":")
    axes.set_yticks([1e-9, 1e-8, 1e-7, 1e-6], ["1 nA", "10 nA", "100 nA", "1 µA"])
    axes.set_xlabel("throttle, parts of the edge")
    axes.set_ylabel("hiss")
    return drawing


@figure(
    caption="**How far it carries.** Field of the oscillating set against distance, on 855 kHz; Gannet Rock's field, what "
    "would be left alone (40 dB below it, ITU-R BS.560), and the noise of the country and of a town in 9 kHz (ITU-R P.372).",
    alt="Both scales logarithmic. Two falling lines, fierce and gentle, steep for the first fifty metres, then in "
    "proportion. Level lines: Gannet Rock 204 microvolts a metre; 40 dB below it 2; noise of the country 4 and of a town "
    "12. The fierce set passes Gannet Rock's own field at some 35 metres and the 40 dB line at 1.6 kilometres; the gentle "
    "one at 17 metres and 160 metres.",
)
def how_far():
    drawing, axes = plot(height=3.4)
    distance = np.geomspace(10, 5e3, 120)
    for in_hand, colour, name in ((fierce(), RUST, "fierce"), (gentle(), SEA, "gentle")):
        field = field_of(swing_beyond(in_hand, 1.03), in_hand, distance)
        axes.loglog(distance, field, color=colour)
        label(axes, name, (distance[10], field[10]), (5, 5), colour)
    lines = (
        (STATION.field, INK, "-", "Gannet Rock"),
        (STATION.field / 100, INK, "--", "40 dB below"),
        (noise_field(STATION.frequency, 9e3, *COUNTRY), SOFT, ":", "noise, country"),
        (noise_field(STATION.frequency, 9e3, 76.8, 27.7), SOFT, ":", "noise, town"),
    )
    for place, (level, colour, dash, name) in enumerate(lines):
        axes.axhline(level, color=colour, linestyle=dash, linewidth=1.1)
        side, where = ("left", 10) if place in (1, 2) else ("right", 5e3)
        label(axes, name, (where, level), (0, -13 if place == 1 else 3), colour, ha=side)
    axes.set_ylim(1e-7, 2e-2)
    axes.set_xticks([10, 100, 1e3], ["10 m", "100 m", "1 km"])
    axes.set_yticks([1e-6, 1e-5, 1e-4, 1e-3, 1e-2], ["1 µV/m", "10", "100", "1 mV/m", "10"])
    axes.set_xlabel("distance")
    return drawing
