"""How `receiver` is judged: its parts against the reference, the whole by what is measured on the sound."""

from functools import cache

import numpy as np

from checker import (
    Exercise,
    Question,
    drawn,
    hertz,
    invariant,
    less,
    measurement,
    one_of,
    refusal,
    relative,
    slip,
    value,
)

from ..unit03_tuned_circuit.aerial_coupling import loaded_quality_factor, tuned_voltage
from ..unit05_valve.load_line import operating_point
from ..unit06_reaction.oscillation_point import gain
from ..unit06_reaction.three_knobs import tuned_to
from .evening import CRESTS, FREQUENCIES, NAMES, SETTLING, evening, frame_of, tones
from .receiver import (
    AERIAL,
    AMPLIFICATION,
    COIL,
    COUPLING,
    HARDENING,
    ISOLATING,
    LAW,
    LOAD,
    LOOSELY,
    SUPPLY,
    TICKLER,
    VALVE,
    circuit_voltage,
    coil_resistance,
    first_circuit,
    knobs,
    receiver,
    second_coil,
    telephones,
)

PLACES, GANNET_ROCK = range(6), 2
RATES = 12e3, 48e3, 48e3, 12e3, 12e3, 12e3  # hertz, of each station's evening: more where two are to be parted
BENCH_RATE, SKIRT_RATE = 20e3, 48e3
WINDOW = 0.125  # second, of an evening that is measured
# A signal generator stands in the aerial's place: (offset, level, tone, depth), one piece after another. Levels are in
# decibels against the station's carrier; each piece has settled before it is measured.
PIECE, SETTLED = 0.015, 0.005  # second
LEVELS = -16.0, -20.0, -23.0, -27.0, -32.0, -40.0  # on the station's frequency: how the sound goes with the strength
OFFSETS = 100.0, 250.0, 450.0, 700.0, 1000.0, 2000.0, 9000.0  # hertz, to either side
SKIRT = 6e3, 9e3, 12e3, 16e3, 23e3  # hertz, to either side, a hundred times as strong
KNOWN = tuple((0.0, level, 100.0, 0.3) for level in LEVELS)
BENCH = (
    (0.0, 0.0, 400.0, 0.3), (700.0, 0.0, 100.0, 0.0), *KNOWN,
    *((side * offset, -20.0, 100.0, 0.3) for offset in OFFSETS for side in (-1, 1)),
)  # fmt: skip
SKIRTS = *KNOWN, *((side * offset, 20.0, 100.0, 0.3) for offset in SKIRT for side in (-1, 1))


@cache
def generator(pieces, crest, rate):
    """What the signal generator gives, seen from the station's frequency."""
    time = np.arange(round(PIECE * rate)) / rate
    carriers = (
        crest * 10 ** (level / 20) * (1 + depth * np.sin(2 * np.pi * tone * time)) * np.exp(2j * np.pi * offset * time)
        for offset, level, tone, depth in pieces
    )
    return np.concatenate(list(carriers))


def on_the_bench(f, place, pieces=BENCH, rate=BENCH_RATE):
    """The sound of each piece once it has settled: an array with a row for each."""
    emf = generator(pieces, CRESTS[place], rate)
    sound = np.asarray(f(emf, rate, FREQUENCIES[place], FREQUENCIES[place], CRESTS[place]), dtype=float)
    return sound.reshape(len(pieces), -1)[:, round(SETTLED * rate) :]


def strength(sound, rate, tone):
    """Crest of a tone that goes through whole cycles in each row of a sound."""
    turning = np.exp(-2j * np.pi * tone * np.arange(sound.shape[-1]) / rate)
    return 2 * np.abs(np.sum(sound * turning, axis=-1)) / sound.shape[-1]


def losses(f, place, pieces, rate):
    """(offset, loss): how many decibels more a carrier needs at each offset to sound as loud as on the station's frequency."""
    heard = np.log10(strength(on_the_bench(f, place, pieces, rate), rate, 100.0))
    at = [number for number, piece in enumerate(pieces) if piece in KNOWN]
    levels, known = np.array(LEVELS)[::-1], heard[at][::-1]
    rise = (levels[1] - levels[0]) / (known[1] - known[0])
    offset, level, sound = np.array(
        [(*piece[:2], one) for piece, one in zip(pieces, heard, strict=True) if piece[0] and piece[3]]
    ).T
    alike = np.interp(sound, known, levels) + rise * (np.minimum(sound - known[0], 0) + np.maximum(sound - known[-1], 0))
    return offset, level - alike


def resonance(f, place):
    """(peak, width) of the receiver set to a station: offset, and −3 dB band, by a parabola through the power lost."""
    offset, loss = losses(f, place, BENCH, BENCH_RATE)
    offset, power = np.append(offset, 0.0), np.append(10 ** (loss / 10), 1.0)
    best = np.argsort(power)[:7]
    if abs(offset[best[0]]) > 3000:
        return offset[best[0]], np.nan
    square, slope, level = np.polyfit(offset[best], power[best], 2)
    least = level - slope**2 / (4 * square)
    width = 2 * np.sqrt(np.maximum(least / square, 0))
    # as wide as all that was looked at, or upside down: there is no band
    return -slope / (2 * square), width if 0 < width < 2 * OFFSETS[-1] else np.nan


def worst(values, badness):
    """The worst of the values for the six stations, and the station; what is no number is worst of all."""
    values = np.array(values, dtype=float)
    place = int(np.argmax(np.where(np.isfinite(values), badness(values), np.inf)))
    return values[place], NAMES[place]


def tuning_error(f, seed):
    return worst([abs(resonance(f, place)[0]) for place in PLACES], np.abs)


def width(f, seed):
    return worst([resonance(f, place)[1] for place in PLACES], lambda widths: np.abs(np.log(widths / 850)))


def foot_width(f, seed):
    offset, loss = losses(f, GANNET_ROCK, SKIRTS, SKIRT_RATE)
    below, above = offset < 0, offset > 0
    return np.interp(40, loss[below], -offset[below]) + np.interp(40, loss[above], offset[above]), NAMES[GANNET_ROCK]


def distortion(f, seed):
    percent = []
    for place in PLACES:
        orders = [float(strength(on_the_bench(f, place)[0], BENCH_RATE, 400.0 * order)) for order in range(1, 9)]
        percent.append(100 * np.sqrt(np.sum(np.square(orders[1:]))) / orders[0])
    return worst(percent, np.abs)


def whistle(f, seed):
    decibels = []
    for place in PLACES:
        modulated, unmodulated, *_ = on_the_bench(f, place)
        decibels.append(20 * np.log10(np.sqrt(2) * np.std(unmodulated) / strength(modulated, BENCH_RATE, 400.0) + 1e-6))
    return worst(decibels, lambda values: values)


def powers(f, seed, place):
    """Power of each station's programme in the sound of the evening, with the receiver set to one."""
    rate = RATES[place]
    emf = evening(seed, place, rate, SETTLING + WINDOW)
    sound = np.asarray(f(emf, rate, frame_of(place), FREQUENCIES[place], CRESTS[place]), dtype=float)[round(SETTLING * rate) :]
    spectrum = 2 * np.abs(np.fft.rfft(sound)) / sound.size
    return np.sum(spectrum[np.round(tones(seed) * WINDOW).astype(int)] ** 2, axis=1) / 2


def level(f, seed):
    return worst([np.sqrt(powers(f, seed, place)[place]) for place in PLACES], lambda values: -values)


def wanted_to_unwanted(f, seed):
    ratios = []
    for place in PLACES:
        each = powers(f, seed, place)
        ratios.append(10 * np.log10(each[place] / np.max(np.delete(each, place))))
    return worst(ratios, lambda values: -values)


def built(bandwidth=700.0, swing=0.4, shift=0.0, retuned=True, reaction=True):
    """The reference's receiver with a choice made otherwise, mostly wrongly; without `swing` nothing is turned down."""

    def otherwise(emf, rate, frame, frequency, crest):
        first_width, first_gain = first_circuit(frequency + shift)
        right = knobs(frequency, 700.0)
        amplified = AMPLIFICATION * gain(frequency, COUPLING, *right, ISOLATING, second_coil(frequency), TICKLER, VALVE)
        tuning, throttle = knobs(frequency + shift, bandwidth if reaction else frequency / 75)
        tuning = tuning if retuned else 1 / ((2 * np.pi * frequency) ** 2 * COIL)
        found, width = tuned_to(COUPLING, tuning, throttle, ISOLATING, second_coil(frequency), TICKLER, VALVE)
        volume = min(1.0, swing * max(width, 100.0) / (700.0 * crest * first_gain * amplified)) if swing else 1.0
        middle = circuit_voltage(volume * emf, rate, frequency + shift - frame, first_width, first_gain * first_width, 0.0, 0.0)
        grid = circuit_voltage(middle, rate, found - frame, width, amplified * 700.0, HARDENING, 0.0)
        return telephones(grid, rate)

    return otherwise


def without_the_condenser(frequency):
    aerial = AERIAL[0] + 2j * np.pi * frequency * AERIAL[2]
    first = frequency, LOOSELY, aerial, COIL, coil_resistance(frequency)
    return frequency / loaded_quality_factor(*first), tuned_voltage(1.0, *first)


SMALL = np.arange(120) / 12e3
EMFS = (
    np.full(120, 10e-3 + 0j),
    10e-3 * np.exp(2j * np.pi * 900 * SMALL),
    5e-3 * (1 + 0.5 * np.sin(2 * np.pi * 400 * SMALL)) * np.exp(1j),
    np.concatenate([np.full(40, 20e-3j), np.zeros(80)]),
)
SWINGS = (
    0.3 * (1 + 0.5 * np.sin(2 * np.pi * 400 * SMALL)) * np.exp(1j),
    0.5 * (1 + 0.8 * np.sin(2 * np.pi * 300 * SMALL)) * np.exp(2j * np.pi * 100 * SMALL),
    0.1 * (1 + 0.3 * np.sin(2 * np.pi * 1200 * SMALL)) + 0j,
    0.2 + 0.1 * np.exp(2j * np.pi * 700 * SMALL),
)
VOLTS = relative(1e-9, because="one step's exact solution after another, in double precision", floor=1e-12)
STILL = np.zeros(600, complex)
# 600 steps in which a swing of 0.1 grows by exp(ε t/2), ε = 2π × 40, at first: van der Pol's equation, averaged.
GROWING = np.sqrt(4 / (1 + (4 / 0.1**2 - 1) * np.exp(-2 * np.pi * 40 * (np.arange(600) + 1) / 12e3)))


def turned_about(emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    return circuit_voltage(emf, rate, -offset, bandwidth, gain_bandwidth, hardening, start)


def half_as_lossy(emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    return circuit_voltage(emf, rate, offset, bandwidth / 2, gain_bandwidth, hardening, start)


def soft(emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    return circuit_voltage(emf, rate, offset, bandwidth, gain_bandwidth, 0.0, start)


def from_rest(emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    return circuit_voltage(emf, rate, offset, bandwidth, gain_bandwidth, hardening, 0.0)


def not_retuned(frequency, bandwidth):
    return 1 / ((2 * np.pi * frequency) ** 2 * COIL), knobs(frequency, bandwidth)[1]


def unsmoothed(grid, rate):
    return telephones(np.repeat(grid, 64), 4096 * rate)[63::64]


def in_two_goes(f, emf, rate, offset, bandwidth, gain_bandwidth, hardening, start):
    """The last value of the second half, and of the whole."""
    half = len(emf) // 2
    rest = rate, offset, bandwidth, gain_bandwidth, hardening
    middle = f(emf[:half], *rest, start)[-1]
    return f(emf[half:], *rest, middle)[-1], f(emf, *rest, start)[-1]


CHOSEN = "measured: the choice of band and of swing is yours"
EXERCISE = Exercise(
    title="An evening on Tern Spit",
    marks=20,
    seconds=10.0,
    cases=4,
    questions=[
        Question(
            asks=first_circuit,
            given={"frequency": hertz("530 kHz", "1600 kHz")},
            gives=("Hz", ""),
            agrees_within=relative(1e-9, because="a few formulas, double precision"),
            holds=[
                invariant(
                    "further up the dial the aerial brings more of a station, as its condenser is in the way less",
                    lambda f, F: (f(F)[1], f(1.05 * F)[1]),
                    less,
                ),
            ],
            no_published="The aerial is the club's own; the formulas behind it are held to published figures in unit 03.",
            slips=[
                slip("left the aerial's own capacitance out", without_the_condenser),
                slip(
                    "left out what the aerial takes from the circuit",
                    lambda F: (coil_resistance(F) / (2 * np.pi * COIL), first_circuit(F)[1]),
                ),
                slip("returned the Q instead of the bandwidth", lambda F: (F / first_circuit(F)[0], first_circuit(F)[1])),
            ],
        ),
        Question(
            asks=knobs,
            given={"frequency": hertz("600 kHz", "1500 kHz"), "bandwidth": hertz("200 Hz", "3 kHz")},
            gives=("F", "F"),
            agrees_within=relative(1e-6, because="a band that is within 0.01 Hz needs the throttle no nearer"),
            arrays=False,
            holds=[
                invariant("a narrower band takes more throttle", lambda f, F, B: (f(F, B)[1], f(F, B / 2)[1]), less),
                invariant(
                    "further up the dial both condensers are smaller",
                    lambda f, F, B: (np.array(f(1.02 * F, B)), np.array(f(F, B))),
                    less,
                ),
            ],
            no_published="The set is the club's own; the network behind it is held to published figures in unit 06.",
            refuses=[
                refusal("a band of 100 kHz, which no throttle makes", (1000e3, 100e3)),
                refusal(
                    "a band of −11 kHz at 600 kHz, just narrower than the throttle makes with its plates in", (600e3, -11e3)
                ),
                refusal("a band of 20 kHz at 600 kHz, wider than it leaves with its plates out", (600e3, 20e3)),
            ],
            slips=[
                slip("left the tuning where it stands without the throttle: the throttle shifts it", not_retuned),
                slip("counted the bandwidth to one side of the peak only: it is the whole width", lambda F, B: knobs(F, 2 * B)),
                slip("stopped at the threshold of oscillation", lambda F, B: knobs(F, 0.0)),
                slip("given the throttle first and the tuning second", lambda F, B: knobs(F, B)[::-1]),
            ],
        ),
        Question(
            asks=circuit_voltage,
            given={
                "emf": drawn(EMFS, "120 values, up to 20 mV"),
                "rate": hertz("8 kHz", "48 kHz"),
                "offset": hertz("-2 kHz", "2 kHz"),
                "bandwidth": hertz("200 Hz", "5 kHz"),
                "gain_bandwidth": hertz("2 kHz", "200 kHz"),
                "hardening": drawn((500.0, 100.0, 2000.0), "100, 500 or 2000 Hz/V²"),
                "start": drawn((0.5 + 0j, 1j, -0.2 + 0.1j), "a complex voltage up to 1 V"),
            },
            gives="V",
            agrees_within=VOLTS,
            arrays=False,
            holds=[
                invariant(
                    "what is done in two goes, the second starting where the first ended, is done as in one", in_two_goes
                ),
                invariant(
                    "a weak signal twice as strong comes out twice as strong",
                    lambda f, e, r, o, B, W, S, v: (f(2 * e, r, o, B, W, 0.0, 2 * v), 2 * f(e, r, o, B, W, 0.0, v)),
                ),
                invariant(
                    "a band of no width at all neither gains nor loses: a steady signal builds up evenly",
                    lambda f, e, r, o, B, W, S, v: (
                        f(np.full(120, 1e-3 + 0j), r, 0.0, 0.0, W, 0.0, v)[-1],
                        v + 120 * np.pi * W * 1e-3 / r,
                    ),
                ),
                invariant(
                    "in the middle of its band a weak steady signal comes to gain times itself",
                    lambda f, e, r, o, B, W, S, v: (
                        abs(f(np.full(120, 1e-3 + 0j), 100.0, 0.0, B, W, 0.0, v)[-1]),
                        1e-3 * W / B,
                    ),
                ),
            ],
            published=[
                value(
                    "a swing that grows as van der Pol's does, to an amplitude of 2",
                    (STILL, 12e3, 0.0, -40.0, 0.0, 10.0, 0.1 + 0j),
                    GROWING + 0j,
                    relative(0.01, because="the growth is held for each step"),
                    source="B. van der Pol, Philosophical Magazine 2, 978 (1926), averaged",
                    known="memory",
                ),
            ],
            slips=[
                slip("turned the wrong way round for a circuit above the frame: exp(+2πj offset t)", turned_about),
                slip("taken half the bandwidth for the whole: the swing dies as exp(−π B t)", half_as_lossy),
                slip("left out the hardening", soft),
                slip("started from rest", from_rest),
            ],
        ),
        Question(
            asks=telephones,
            given={"grid": drawn(SWINGS, "120 values, up to 1 V"), "rate": hertz("12 kHz", "48 kHz")},
            gives="V",
            agrees_within=relative(2e-3, because="straight lines between a few hundred points", floor=2e-4),
            arrays=False,
            holds=[
                invariant(
                    "a carrier whose crest stands still is silent",
                    lambda f, grid, rate: (f(0.3 * np.exp(1j * np.angle(grid)), rate), np.zeros(len(grid))),
                ),
                invariant("only the crest counts, not the phase", lambda f, grid, rate: (f(np.abs(grid), rate), f(grid, rate))),
            ],
            no_published="The detector's parts are held to published figures in units 04 and 05.",
            slips=[
                slip(
                    "left the steady part in: no telephone moves for that",
                    lambda grid, rate: telephones(grid, rate) + operating_point(SUPPLY, LOAD, -0.4, *LAW)[0],
                ),
                slip("taken the real part for the crest", lambda grid, rate: telephones(np.real(grid), rate)),
                slip("left out the grid condenser", unsmoothed),
                slip(
                    "changed the sign: the anode's voltage rises as the grid goes down",
                    lambda grid, rate: -telephones(grid, rate),
                ),
            ],
        ),
        Question(
            asks=receiver,
            share=6,
            given={
                "emf": drawn([2 * SWINGS[0] * 1e-3, SWINGS[2] * 10e-3], "what is on the air near a station"),
                "rate": one_of(24e3),
                "frame": one_of(FREQUENCIES[GANNET_ROCK]),
                "frequency": one_of(FREQUENCIES[GANNET_ROCK]),
                "crest": one_of(CRESTS[GANNET_ROCK]),
            },
            gives="V",
            agrees_within=relative(1e-3, because=CHOSEN),
            arrays=False,
            no_published="It is measured.",
            measured=[
                measurement("tuning error", tuning_error, "a tenth of the band", "Hz", most=100.0),
                measurement("width at −3 dB", width, "narrower, speech is lost; wider, the local is not", "Hz", 500.0, 1500.0),
                measurement("width at −40 dB", foot_width, "two circuits, one of them with reaction", "Hz", most=32e3),
                measurement(
                    "level", level, "enough for telephones, and no more than a supply of 90 V can swing", "V", 0.02, 45.0
                ),
                measurement("wanted to unwanted", wanted_to_unwanted, "twice the voltage of any other", "dB", least=6.0),
                measurement("distortion", distortion, "common practice for speech, no source", "%", most=4.0),
                measurement("whistle", whistle, "a set that oscillates whistles louder than the programme", "dB", most=-20.0),
            ],
            slips=[
                slip("left the tuning where it stands without the throttle", built(retuned=False)),
                slip("set it to the channel below, 9 kHz away", built(shift=-9e3)),
                slip("left the reaction off", built(reaction=False)),
                slip("turned the reaction past the threshold: it oscillates", built(bandwidth=-300.0)),
                slip("let all that comes into the detector: turn the volume down for a strong station", built(swing=0.0)),
                slip("made the band so narrow that little but the carrier is left", built(bandwidth=100.0)),
            ],
        ),
    ],
    hints=[
        "Take the parts one by one: each of the first four functions is a few of your earlier ones, in a row. `receiver` works "
        "out both circuits for the station, then passes the e.m.f. through the one, the other, and `telephones`.",
        "knobs: set a throttle, work out with `tuned_to` what it makes of width and frequency, mend both, again. Near the edge "
        "the width falls nearly in proportion to the throttle. circuit_voltage: λ = −π(bandwidth + hardening |v|²) + 2πj "
        "offset, anew at each step. telephones: crest, bias, smoothed bias, anode, less its mean.",
        "knobs: tuning from 1/((2π × frequency)² × COIL), throttle NEAR_EDGE[0], then NEAR_EDGE[1]. In one loop, ROUNDS "
        "times: `tuned_to`, its `tuned` from second_coil(frequency); tuning × (found/frequency)²; throttle by the "
        "straight line through the last two, but never beyond LEAST or MOST. receiver: `first_circuit`; `knobs(frequency,"
        " 700)`; `tuned_to` and `gain` with those; the gain times AMPLIFICATION. Multiply emf by min(1, 0.4/(crest × both"
        " gains)). `circuit_voltage` with the first circuit's width at frequency − frame, gain × width, hardening 0; "
        "again with the second's and HARDENING; `telephones`.",
    ],
)
