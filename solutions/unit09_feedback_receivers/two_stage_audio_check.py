"""How `two_stage_audio` is judged.

In the laws and slips: μ the amplification factor, r the anode resistance, R the load, G the leak, C and S the coupling
and the shunt capacitance, n the ratio, L and λ the primary and the leakage inductance, f_ the tone, a the anode's
voltage, g the bias, w the swing, P the power, d the distance, V and i supply and current, Q the capacity.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    amperes,
    at_most,
    decibels,
    drawn,
    equal,
    farads,
    henries,
    hertz,
    invariant,
    less,
    metres,
    number,
    ohms,
    physical,
    refusal,
    relative,
    slip,
    volts,
    watts,
)
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.stage_gain import band_edges, stage_gain
from solutions.unit05_valve.triode_current import triode_current

from .two_stage_audio import battery_needs, best_tap, output_power, resistance_gain, speaker_level, transformer_gain

CLOSE = relative(1e-9, because="a few operations, double precision")
SOLVED = relative(1e-6, because="found by halving, far below what a meter shows", floor=1e-9)
TYPE_31 = (3.8, 167e-6, 0.203)  # through 180 V, −30 V, 12.3 mA, 1050 µS of its manual
FACTOR, RESISTANCE = number(3, 100), ohms("1 kΩ", "100 kΩ")
LAW = {
    "amplification_factor": number(3, 9),
    "perveance": physical("A/V^1.5", "100 µA/V^1.5", "1 mA/V^1.5"),
    "offset": volts("-1 V", "1 V"),
}
REST = {"anode_voltage": volts("45 V", "250 V"), "bias": volts("-50 V", "-3 V")}
LOAD = ohms("2 kΩ", "50 kΩ")
TAPS = [
    np.array(taps, dtype=float)
    for taps in (
        (20, 30, 40, 60),
        (10, 20, 40),
        (15, 25, 35, 45, 55),
        (40, 30, 20),
        (12, 17, 24, 34, 48),
        (25, 50, 100),
        (18, 36, 72),
    )
]


# A transformer on which more power comes with more harmonic, all but at the tap that shows the valve next to nothing.
LADDER, SET_UP = np.array([1.02, 20, 30, 40, 60]), (180.0, -30.0, *TYPE_31)
HARMONICS = output_power(180.0, -30.0, 30.0, LADDER**2 * 8, *TYPE_31)[1]


def amplifies(a, g, w, R, μ, K, o):
    return w <= -g and g + a / μ + o > 0.5 and within_reach(a, g, w, R, μ, K, o)


def within_reach(a, g, w, R, *law):
    """Whether valve and load agree somewhere above the filament at the crest of the swing."""
    return triode_current(0.0, g + w, *law) * R < a + triode_current(a, g, *law) * R


def choosable(taps, Z, most, a, g, *law):
    if not g + a / law[0] + law[2] > 0.5 or not all(within_reach(a, g, -g, n * n * Z, *law) for n in taps):
        return False
    power, harmonic = output_power(a, g, -g, taps**2 * Z, *law)
    kept = np.sort(power[harmonic <= most])
    clear = kept.size == 1 or (kept.size > 1 and kept[-1] > 1.001 * kept[-2])
    return bool(clear and np.min(np.abs(harmonic - most)) > 1e-4)


def kept_most(taps, Z, most, a, g, law):
    power, harmonic = output_power(a, g, -g, taps**2 * Z, *law)
    return np.max(power[harmonic <= most])


def place_of(taps, tap):
    return float(np.flatnonzero(taps == tap)[0])


def most_power(taps, Z, most, a, g, *law):
    return taps[np.argmax(output_power(a, g, -g, taps**2 * Z, *law)[0])]


def least_harmonic(taps, Z, most, a, g, *law):
    return taps[np.argmin(output_power(a, g, -g, taps**2 * Z, *law)[1])]


def ratio_unsquared(taps, Z, most, a, g, *law):
    power, harmonic = output_power(a, g, -g, taps * Z, *law)
    return taps[np.argmax(np.where(harmonic > most, 0.0, power))]


def half_power(a, g, w, R, *law):
    power, second = output_power(a, g, w, R, *law)
    return np.array([2 * power, second])


def on_the_supply(a, g, w, R, *law):
    """The load line drawn from the HT, as if the load were a resistor."""
    rest, crest, trough = (operating_point(a, R, g + x, *law)[1] for x in (0.0, w, -w))
    return R * (crest - trough) ** 2 / 8, (crest + trough - 2 * rest) / (2 * (crest - trough))


def anode_held(a, g, w, R, *law):
    rest, crest, trough = (triode_current(a, g + x, *law) for x in (0.0, w, -w))
    return R * (crest - trough) ** 2 / 8, (crest + trough - 2 * rest) / (2 * (crest - trough))


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


EXERCISE = Exercise(
    title="Is it enough for a loudspeaker?",
    seconds=5.0,
    cases=5,
    questions=[
        Question(
            asks=resistance_gain,
            given={
                "amplification_factor": FACTOR,
                "anode_resistance": RESISTANCE,
                "load": ohms("10 kΩ", "500 kΩ"),
                "leak": ohms("100 kΩ", "5 MΩ"),
                "coupling_capacitance": farads("1 nF", "1 µF"),
                "shunt_capacitance": farads("10 pF", "500 pF"),
                "tone": hertz("20 Hz", "20 kHz"),
            },
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "never as much as the stage gives into load and leak",
                    lambda f, μ, r, R, G, C, S, f_: (f(μ, r, R, G, C, S, f_), stage_gain(μ, r, R * G / (R + G))),
                    less,
                ),
                invariant(
                    "far in the bass an octave down is half",
                    lambda f, μ, r, R, G, C, S, f_: (f(μ, r, R, G, C, S, 5e-5), f(μ, r, R, G, C, S, 1e-4) / 2),
                    nearly,
                ),
                invariant(
                    "far in the treble an octave up is half",
                    lambda f, μ, r, R, G, C, S, f_: (f(μ, r, R, G, C, S, 2e12), f(μ, r, R, G, C, S, 1e12) / 2),
                    nearly,
                ),
            ],
            no_published="The stage's gain and its edges, which have their figures; tests solve the circuit itself.",
            slips=[
                slip(
                    "left the leak out of the load: a tone finds both",
                    lambda μ, r, R, G, *rest: (
                        resistance_gain(μ, r, R, G, *rest) * stage_gain(μ, r, R) / stage_gain(μ, r, R * G / (R + G))
                    ),
                ),
                slip(
                    "added the two losses' amounts instead of multiplying",
                    lambda μ, r, R, G, C, S, f_: (
                        stage_gain(μ, r, R * G / (R + G))
                        / np.sqrt(1 + (band_edges(r, R, G, C, S)[0] / f_) ** 2 + (f_ / band_edges(r, R, G, C, S)[1]) ** 2)
                    ),
                ),
                slip(
                    "turned the bass's fraction over",
                    lambda μ, r, R, G, C, S, f_: (
                        stage_gain(μ, r, R * G / (R + G))
                        / np.sqrt(
                            (1 + (f_ / band_edges(r, R, G, C, S)[0]) ** 2) * (1 + (f_ / band_edges(r, R, G, C, S)[1]) ** 2)
                        )
                    ),
                ),
                slip(
                    "left out the squares and the root",
                    lambda μ, r, R, G, C, S, f_: (
                        stage_gain(μ, r, R * G / (R + G))
                        / ((1 + band_edges(r, R, G, C, S)[0] / f_) * (1 + f_ / band_edges(r, R, G, C, S)[1]))
                    ),
                ),
                slip(
                    "left out the edges: a coupling takes bass and treble",
                    lambda μ, r, R, G, C, S, f_: stage_gain(μ, r, R * G / (R + G)) + 0 * f_ * C * S,
                ),
            ],
        ),
        Question(
            asks=transformer_gain,
            given={
                "amplification_factor": FACTOR,
                "anode_resistance": RESISTANCE,
                "ratio": number(1, 6),
                "primary_inductance": henries("2 H", "100 H"),
                "leakage_inductance": henries("50 mH", "1 H"),
                "shunt_capacitance": farads("20 pF", "500 pF"),
                "tone": hertz("20 Hz", "20 kHz"),
            },
            edges=[lambda mu, r, n, primary, leakage, shunt, tone: (mu, r, n, primary, 0.99 * primary, shunt, tone)],
            agrees_within=relative(1e-7, because="a few operations, near a resonance with differences"),
            holds=[
                invariant(
                    "a perfect transformer gives ratio times μ: the grid takes nothing",
                    lambda f, μ, r, n, L, λ, C, f_: (f(μ, r, n, 1e9, 0.0, 0.0, f_), n * μ),
                    nearly,
                ),
                invariant(
                    "where the primary's reactance equals the anode resistance 3 dB are lost",
                    lambda f, μ, r, n, L, λ, C, f_: (f(μ, r, n, L, 0.0, 0.0, r / (2 * np.pi * L)), n * μ / np.sqrt(2)),
                ),
                invariant(
                    "at the leakage's resonance only the anode resistance stands against the shunt",
                    lambda f, μ, r, n, L, λ, C, f_: (
                        f(μ, r, n, L, λ, C, 1 / (2 * np.pi * n * np.sqrt(λ * C))),
                        μ / r * np.sqrt(λ / C),
                    ),
                ),
            ],
            no_published="A circuit of four parts; tests solve it as two coupled coils.",
            slips=[
                slip(
                    "left the shunt as it is: from the primary's side it is ratio² times as large",
                    lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, L, λ, C / n**2, f_),
                ),
                slip(
                    "multiplied the shunt by the ratio, not by its square",
                    lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, L, λ, C / n, f_),
                ),
                slip(
                    "left out the leakage inductance",
                    lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, L, 0.0, C, f_) + 0 * λ,
                ),
                slip(
                    "left out the ratio: the secondary has so many times the volts",
                    lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, L, λ, C, f_) / n,
                ),
                slip("left out 2π", lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, L, λ, C, f_ / (2 * np.pi))),
                slip(
                    "left out the primary inductance, which takes the bass",
                    lambda μ, r, n, L, λ, C, f_: transformer_gain(μ, r, n, 1e12 * L, λ, C, f_),
                ),
            ],
        ),
        Question(
            asks=output_power,
            given={**REST, "swing": volts("1 V", "50 V"), "load": LOAD, **LAW},
            edges=[lambda anode_voltage, bias, swing, *others: (anode_voltage, bias, -bias, *others)],
            where=amplifies,
            gives=("W", ""),
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "the tone never has more than half of what the battery gives",
                    lambda f, a, g, w, R, *law: (f(a, g, w, R, *law)[0], a * triode_current(a, g, *law) / 2),
                    at_most,
                ),
                invariant(
                    "a hundredth of the swing, a ten-thousandth of the power of a small tone: μ volts behind r",
                    lambda f, a, g, w, R, μ, K, o: (
                        f(a, g, 1e-3, R, μ, K, o)[0],
                        R / 2 * (1e-3 * μ / (R + μ / (1.5 * K * np.sqrt(g + a / μ + o)))) ** 2,
                    ),
                    nearly,
                ),
                invariant(
                    "a higher load bends less",
                    lambda f, a, g, w, R, *law: (f(a, g, w, 2 * R, *law)[1], f(a, g, w, R, *law)[1]),
                    at_most,
                ),
            ],
            no_published="Manuals name no harmonic with their power; tests hold the power of type 31 to its manual.",
            refuses=[
                refusal(
                    "a swing of 31 V on a bias of 30 V",
                    (180.0, -30.0, 31.0, 5700.0, *TYPE_31),
                    (180.0, -30.0, 30.01, 5700.0, *TYPE_31),
                )
            ],
            slips=[
                slip("taken the crests for r.m.s. values: the power is half of that", half_power),
                slip("drawn the load line from the HT: a transformer drops nothing at rest", on_the_supply),
                slip("held the anode still", anode_held),
                slip(
                    "left out the eight: swing from end to end squared is eight times the mean square",
                    lambda *inputs: np.array(output_power(*inputs)) * [8, 1],
                ),
                slip(
                    "taken the whole of the difference for the second harmonic: half of it is",
                    lambda *inputs: np.array(output_power(*inputs)) * [1, 2],
                ),
                slip("returned them the other way round", lambda *inputs: output_power(*inputs)[::-1]),
            ],
        ),
        Question(
            asks=best_tap,
            given={
                "ratios": drawn(TAPS, "arrays of three to five ratios from 10 to 100"),
                "speaker_resistance": drawn([8.0, 4.0, 16.0, 3.0, 6.0, 12.0], "3 Ω to 16 Ω", unit="Ω"),
                "most_harmonic": drawn([0.05, 0.03, 0.04, 0.1, 0.02, 0.01], "0.01 to 0.1"),
                **REST,
                **LAW,
            },
            where=choosable,
            edges=[
                lambda *inputs: (LADDER, 8.0, 1.01 * HARMONICS[-1], *SET_UP),  # one tap's harmonic is just within
                lambda *inputs: (LADDER, 8.0, 0.99 * HARMONICS[2], *SET_UP),  # and that of most power just without
            ],
            agrees_within=CLOSE,
            arrays=False,
            holds=[
                invariant(
                    "the tap's own power is no less than that of any tap which keeps the harmonic",
                    lambda f, taps, Z, most, a, g, *law: (
                        kept_most(taps, Z, most, a, g, law),
                        output_power(a, g, -g, f(taps, Z, most, a, g, *law) ** 2 * Z, *law)[0],
                    ),
                    at_most,
                ),
                invariant(
                    "the order of the taps does not matter", lambda f, taps, *rest: (f(taps[::-1], *rest), f(taps, *rest))
                ),
            ],
            refuses=[
                refusal(
                    "taps whose harmonic is above what is allowed, if only just", (LADDER, 8.0, 0.99 * HARMONICS[-1], *SET_UP)
                ),
            ],
            no_published="A choice among powers that have their figures.",
            slips=[
                slip("taken the most power, whatever the harmonic", most_power),
                slip("taken the least harmonic, whatever the power", least_harmonic),
                slip("forgotten to square the ratio: impedances go as its square", ratio_unsquared),
                slip(
                    "returned the load that the valve finds, not the ratio",
                    lambda taps, Z, *rest: best_tap(taps, Z, *rest) ** 2 * Z,
                ),
                slip("returned the place of the tap in the list", lambda taps, *rest: place_of(taps, best_tap(taps, *rest))),
            ],
        ),
        Question(
            asks=speaker_level,
            given={
                "power": watts("1 mW", "10 W"),
                "sensitivity": decibels("80 dB", "105 dB"),
                "distance": metres("0.5 m", "20 m"),
            },
            gives="dB",
            agrees_within=absolute(1e-6, because="levels to a millionth of a decibel"),
            holds=[
                invariant("one watt at one metre gives the sensitivity itself", lambda f, P, S, d: (f(1.0, S, 1.0), S)),
                invariant(
                    "ten times as far takes a hundred times the power", lambda f, P, S, d: (f(100 * P, S, 10 * d), f(P, S, d))
                ),
            ],
            no_published="The definition of a sensitivity.",
            slips=[
                slip(
                    "taken the sensitivity for a milliwatt's: a loudspeaker's is for a watt",
                    lambda P, S, d: speaker_level(1e3 * P, S, d),
                ),
                slip("used 20 log for the power", lambda P, S, d: S + 20 * np.log10(P) - 20 * np.log10(d)),
                slip(
                    "used 10 log for the distance: it is the pressure that falls with it",
                    lambda P, S, d: S + 10 * np.log10(P) - 10 * np.log10(d),
                ),
                slip("added the distance's decibels", lambda P, S, d: S + 10 * np.log10(P) + 20 * np.log10(d)),
                slip("left the distance out", lambda P, S, d: S + 10 * np.log10(P) + 0 * d),
            ],
        ),
        Question(
            asks=battery_needs,
            given={
                "supply": volts("45 V", "250 V"),
                "steady_current": amperes("1 mA", "50 mA"),
                "tone_power": watts("1 mW", "2 W"),
                "capacity": physical("C", "500 C", "50 kC"),
            },
            where=lambda V, i, P, Q: V * i / 2 >= P,
            gives=("W", "W", "s"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "what the battery gives goes to the loudspeaker or stays as heat",
                    lambda f, V, i, P, Q: (f(V, i, P, Q)[1] + P, f(V, i, P, Q)[0]),
                ),
                invariant(
                    "in silence the valve is as hot as it can be, and the battery lasts no longer",
                    lambda f, V, i, P, Q: (np.array(f(V, i, 0.0, Q))[1:], np.array([f(V, i, P, Q)[0], f(V, i, P, Q)[2]])),
                ),
                invariant(
                    "the most that can go out leaves as much behind",
                    lambda f, V, i, P, Q: (f(V, i, V * i / 2, Q)[1], V * i / 2),
                ),
                invariant("the battery's charge is current times time", lambda f, V, i, P, Q: (f(V, i, P, Q)[2] * i, Q)),
            ],
            refuses=[refusal("0.5 W of tone from 90 V and 10 mA", (90.0, 10e-3, 0.5, 1980.0), (90.0, 10e-3, 0.451, 1980.0))],
            no_published="Power, heat and charge are conserved.",
            slips=[
                slip("returned hours instead of seconds", lambda *inputs: np.array(battery_needs(*inputs)) * [1, 1, 1 / 3600]),
                slip(
                    "taken the ampere-hours for coulombs: the capacity is already in coulombs",
                    lambda *inputs: np.array(battery_needs(*inputs)) * [1, 1, 3600],
                ),
                slip(
                    "let the tone draw its power on top: it comes out of the same steady current",
                    lambda V, i, P, Q: (V * i + P, V * i, Q / i),
                ),
                slip("forgotten that the tone's power leaves the valve", lambda V, i, P, Q: (V * i, V * i + 0 * P, Q / i)),
                slip("divided the battery's charge by its power", lambda V, i, P, Q: (V * i, V * i - P, Q / (V * i))),
            ],
        ),
    ],
    hints=[
        "Each stage is μ volts behind its anode resistance. Ask what takes from them in the bass, and what in the treble. "
        "For the output valve draw the load line through the point of rest: a transformer lets the anode rise above the HT.",
        "Condenser: band_edges and stage_gain are there; each edge costs √(1 + x²), x being the edge over the tone, or the "
        "tone over the edge. Transformer: the shunt counts ratio² on the primary's side. Load line through the point of "
        "rest: that of a supply of anode voltage + current × load, which operating_point knows. A tap shows ratio² × speaker.",
        "middle/√((1 + (low/tone)²)(1 + (tone/high)²));  with s = 2π × 1j × tone, r = anode_resistance and n = ratio, c ="
        " n² × shunt_capacitance: amplification_factor × n/|(1 + r/(s × primary_inductance))(1 + s² × leakage_inductance "
        "× c) + s × r × c|;  with i0 = triode_current(anode_voltage, bias, …) and i1, i2 = operating_point(anode_voltage "
        "+ i0 × load, load, bias ± swing, …)[1]: load × (i1 − i2)²/8, (i1 + i2 − 2 × i0)/(2 × (i1 − i2));  "
        "ratios[np.argmax(np.where(harmonic > most_harmonic, 0, power))];  sensitivity + 10 log10 power − 20 log10 "
        "distance;  battery = supply × steady_current, battery − tone_power, capacity/steady_current.",
    ],
)
