"""The sounds of single exercises: what each is made of, and what there is to hear in it.

A piece asks a member's own functions for all that the exercise is about, and does the rest itself: tunes, noise, a whistle at a
pitch that is told. Its constants are those of the Circle's sets; `tests/checker/test_hear_pieces.py` holds them to the course.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .listening import FAR, LOCAL, RATE, telephone_sound, tune
from .own import OwnFunctions, Unheard

NOTES = (440.0, 494.0, 554.0, 587.0, 659.0, 587.0, 554.0, 440.0)  # hertz: five steps up from the A, and back
SLOWED = 1000.0  # times that a carrier is slowed to be heard, and a dial's frequencies are lowered
OFF_DIAL = FAR - LOCAL  # hertz
QUALITY = 64.9  # of the reaction set's circuit on Gannet Rock, without reaction
LOCAL_CREST, FAR_CREST, NOISE = 78.5e-3, 3.72e-3, 61e-6  # volt, in the aerial on Tern Spit
WIDTH = FAR / QUALITY  # hertz
FIRST_WIDTH = 4.48e3  # hertz, of the first circuit, which is lent
STEPS = 3  # of a circuit to each sample, 72 kHz: the overtones of the local's beat fold onto each other, and not down among the tunes
TRIODE = 9.29, 267e-6, -0.67  # amplification factor, perveance, offset of the Circle's valve
GROWTH = 1492.0  # neper a second: Q 90 at 855 kHz, k = 1.05


@dataclass(frozen=True)
class Piece:
    """A sound: the exercise that it is made of, its title, what to listen for, and what plays it.

    `play(own, long)` gives samples at `RATE`; `long` shortens all of it alike.
    """

    exercise: str
    title: str
    says: str
    play: Callable[[OwnFunctions, float], np.ndarray]


def _moments(seconds: float, rate: float = RATE) -> np.ndarray:
    return np.arange(round(seconds * rate)) / rate


def _whistle(pitch: np.ndarray) -> np.ndarray:
    """A tone whose pitch, in hertz at each sample, moves."""
    return np.sin(2 * np.pi * np.cumsum(pitch) / RATE)


def _alike(passages: list[np.ndarray]) -> np.ndarray:
    """Passages one after another, each as loud as the others."""
    return np.concatenate([passage / (np.std(passage) or 1.0) for passage in passages])


def _dulled(sound: np.ndarray, edge: float) -> np.ndarray:
    """A sound without most of what is above an edge, hertz."""
    tones = np.fft.rfftfreq(sound.size, 1 / RATE)
    return np.fft.irfft(np.fft.rfft(sound) / (1 + (tones / edge) ** 8), sound.size)


def tone(own: OwnFunctions, long: float) -> np.ndarray:
    since = _moments(0.5 * long)
    swell = np.minimum(1.0, np.minimum(since, since[-1] - since) / 0.02)
    times, pitches = np.tile(since, len(NOTES)), np.repeat(NOTES, since.size)
    return np.tile(swell, len(NOTES)) * own.at_each("tone", "tone", times, pitches, 1.0)


def am_waveform(own: OwnFunctions, long: float) -> np.ndarray:
    time = _moments(3 * long) / SLOWED
    passages = [own.at_each("am_waveform", "am_waveform", time, LOCAL, 3e3, depth, 1.0) for depth in (0.3, 0.7, 1.0)]
    return np.concatenate(passages)


def condenser(own: OwnFunctions, long: float) -> np.ndarray:
    meshed = np.linspace(0.02, 1.0, 181)  # of the plates, as the dial is turned
    turned = own.at_each("condenser", "plates", np.full(meshed.size, 21.0), 1.03e-3 * meshed, 0.5e-3)
    capacitance = own.at_each("condenser", "parallel", turned, 35e-12)
    if np.min(capacitance) <= 0:
        raise Unheard("Your condensers come out at nothing, or below it, and tune to nothing.")
    frequency = 1 / (2 * np.pi * np.sqrt(200e-6 * capacitance)) / SLOWED
    if np.max(frequency) > RATE / 3:
        raise Unheard("Your condensers are so small that the pitch is too high to be heard: is it farads that they come in?")
    time = _moments(5 * long) / (5 * long)
    return _whistle(np.interp(np.minimum(1.2 * time, 1), np.linspace(0, 1, meshed.size), frequency))


def response_curve(own: OwnFunctions, long: float) -> np.ndarray:
    seconds = 3 * long
    left = [abs(own.value("response_curve", "relative_response", LOCAL, FAR, quality)) for quality in (30.0, 80.0, 200.0)]
    return np.concatenate([tune(2, seconds) + share * tune(1, seconds) for share in left])


def detect_step(own: OwnFunctions, long: float) -> np.ndarray:
    rate, carrier = 2.0 * RATE, 8e3
    time = _moments(2.5 * long, rate)
    melody = np.interp(time, np.arange(6) * 0.5 * long, (196.0, 220.0, 247.0, 262.0, 220.0, 196.0))
    programme = np.sin(2 * np.pi * np.cumsum(melody) / rate)
    wave = (1 + 0.6 * programme) * np.cos(2 * np.pi * carrier * time)
    held = [
        own.at_each("detect_step", "detect_step", np.zeros(time.size), wave, 1 / rate, constant, carry=0)
        for constant in (40e-6, 500e-6, 6e-3)
    ]
    return np.concatenate([(one - np.mean(one)).reshape(-1, 2).mean(axis=1) for one in held])


def triode_current(own: OwnFunctions, long: float) -> np.ndarray:
    grid = np.linspace(-12.0, 0.0, 481)
    current = own.at_each("triode_current", "triode_current", 90.0, grid, *TRIODE)
    pitch = np.repeat(NOTES[:6], round(0.5 * long * RATE))
    melody = _whistle(pitch)
    passages = [np.interp(-6.0 + swing * melody, grid, current) for swing in (0.5, 5.5)]
    return _alike([passage - np.mean(passage) for passage in passages])


def q_multiplication(own: OwnFunctions, long: float) -> np.ndarray:
    programme, passages = tune(2, 2 * long), []
    for share in (0.3, 0.5, 0.7, 0.82):
        gain, band = own.value("q_multiplication", "gain_and_bandwidth", FAR, QUALITY, share)
        if band <= 0:
            raise Unheard(f"gain_and_bandwidth gives a band of {band:g} Hz, and nothing comes through that.")
        passages.append(gain / QUALITY * _dulled(programme, band / 2))
    return np.concatenate(passages)


def build_up(own: OwnFunctions, long: float) -> np.ndarray:
    time = _moments(4 * long)
    swing = own.at_each("build_up", "amplitude", time / long / 300, 3e-6, 1.0, GROWTH)
    return swing * _whistle(np.full(time.size, 1000.0))


def beat_note(own: OwnFunctions, long: float) -> np.ndarray:
    middle = 1 / ((2 * np.pi * FAR) ** 2 * 200e-6)
    capacitance = middle + np.linspace(-1e-12, 1e-12, 401)
    pitch = own.at_each("beat_note", "dial_pitch", capacitance, 200e-6, FAR)
    if np.max(np.abs(pitch)) > RATE / 3:
        raise Unheard("Your whistle is too high to be heard, all along the dial.")
    time = _moments(5 * long) / (5 * long)
    return _whistle(np.interp(time, np.linspace(0, 1, pitch.size), pitch))


def signal_to_noise(own: OwnFunctions, long: float) -> np.ndarray:
    ladder = np.geomspace(1e-6, 1e-2, 121)
    decibels = own.at_each("signal_to_noise", "ratio", 1e-3, ladder)
    programme = tune(2, 2 * long)
    hiss = _dulled(np.random.default_rng(1).standard_normal(programme.size), 4e3)
    passages = []
    for wanted in (30.0, 20.0, 10.0, 0.0):
        if not (decibels[-1] <= wanted <= decibels[0] and np.all(np.diff(decibels) < 0)):
            raise Unheard(
                f"Its answers for a signal of 1 mV never fall through {wanted:g} dB as the noise grows from 1 µV to 10 mV."
            )
        noise = np.exp(np.interp(-wanted, -decibels, np.log(ladder)))
        passages.append(1e-3 * programme / np.std(programme) + noise * hiss / np.std(hiss))
    return _alike(passages)


def _circuit(own: OwnFunctions, emf: np.ndarray, band: np.ndarray) -> np.ndarray:
    """What telephones make of a circuit tuned to Gannet Rock, step by step through the member's own `swing_step`."""
    growth = -np.pi * band
    parts = [
        own.at_each("swing_step", "swing_step", np.zeros(emf.size), np.pi * WIDTH * part, growth, 1 / (STEPS * RATE), carry=0)
        for part in (emf.real, emf.imag)
    ]
    samples = emf.size // STEPS
    heard = np.fft.rfft(np.hypot(*parts))[: samples // 2 + 1]  # nothing above half of `RATE`
    return telephone_sound(np.fft.irfft(heard / STEPS, samples))


def _tern_spit(seconds: float) -> np.ndarray:
    """What a first circuit lets through on Gannet Rock's frequency, complex, volt: Gannet Rock, the local, and noise."""
    samples, generator = _moments(seconds), np.random.default_rng(1)
    time = _moments(samples.size / RATE, STEPS * RATE)
    near, far = (1 + 0.7 * np.interp(time, samples, tune(number, seconds)) for number in (1, 2))
    local = LOCAL_CREST / np.hypot(1, 2 * OFF_DIAL / FIRST_WIDTH) * near
    noise = NOISE * np.sqrt(STEPS) * (generator.standard_normal(time.size) + 1j * generator.standard_normal(time.size))
    return FAR_CREST * far + local * np.exp(-2j * np.pi * OFF_DIAL * time) + noise


def swing_step(own: OwnFunctions, long: float) -> np.ndarray:
    emf = _tern_spit(8 * long)
    at = np.linspace(0, 8, emf.size)
    band = np.exp(np.interp(at, (0, 2.5, 5, 8), np.log((WIDTH, WIDTH, 700.0, 700.0))))
    return _circuit(own, emf, band)


def far_station(own: OwnFunctions, long: float) -> np.ndarray:
    bands = (
        WIDTH,
        own.value("far_station", "widest", OFF_DIAL, 28.2),
        own.value("far_station", "narrowest", 300.0, 10.0),
    )
    shares = [own.value("far_station", "feedback", FAR, QUALITY, float(band)) for band in bands]
    if max(shares) >= 1:
        raise Unheard(f"feedback gives {max(shares):.4g}: from 1 on the set oscillates, and no station is heard.")
    emf = _tern_spit(3 * long)
    return np.concatenate([_circuit(own, emf, np.full(emf.size, WIDTH * (1 - share))) for share in shares])


PIECES = {
    piece.exercise: piece
    for piece in (
        Piece(
            "tone",
            "Your first tones",
            "Eight notes, from the A up five steps and back. Each sample is an answer of yours.",
            tone,
        ),
        Piece(
            "am_waveform",
            "Your own station, slowed a thousand times",
            "The carrier of 846 kHz is a steady whistle of 846 Hz now, and the tone of 3 kHz a throb, three times a second. Three "
            "passages: the depth is 30, 70 and 100 %. In the last the whistle falls silent at each throb.",
            am_waveform,
        ),
        Piece(
            "condenser",
            "Your condenser, turned in",
            "As the plates go in, the pitch falls, fast at first and then slowly. It is a thousandth of the frequency that your "
            "condenser would tune a coil of 200 µH to.",
            condenser,
        ),
        Piece(
            "response_curve",
            "A neighbour at Q 30, 80 and 200",
            "Gannet Rock plays high, the local low, 9 kHz away and just as strong. Three passages: the sharper your circuit, the less "
            "is left of the low tune.",
            response_curve,
        ),
        Piece(
            "detect_step",
            "A crystal with three condensers behind it",
            "The same slow tune three times. The time constant is too short: a piercing whistle of 8 kHz, the carrier, is left. Then it is "
            "right: the tune, clear, with little of it. Then too long: the condenser cannot fall as fast as the tune, which is rough.",
            detect_step,
        ),
        Piece(
            "triode_current",
            "A small swing and a large one",
            "The same notes twice, made equally loud. A swing of half a volt comes through pure. One of 5.5 V runs past both ends of the "
            "valve's bend, and the notes are harsh.",
            triode_current,
        ),
        Piece(
            "q_multiplication",
            "Louder, and duller",
            "The same tune four times, at reactions of 30, 50, 70 and 82 %. Each time it is louder, and each time its treble is less.",
            q_multiplication,
        ),
        Piece(
            "build_up",
            "Out of nothing, a whistle",
            "Oscillation grows from 3 µV, slowed three hundred times. Nothing is heard for a long while; then it is there, and stops growing "
            "at its limit. The pitch is lent: 1 kHz.",
            build_up,
        ),
        Piece(
            "beat_note",
            "Through zero beat",
            "The dial of an oscillating set is turned past Gannet Rock. The whistle falls from 2.5 kHz to nothing, and rises again.",
            beat_note,
        ),
        Piece(
            "signal_to_noise",
            "A tune in noise, at 30, 20, 10 and 0 dB",
            "At 30 dB the hiss is just there, at 20 dB it is plain, at 10 dB it is a nuisance, and at 0 dB it is as loud as the tune.",
            signal_to_noise,
        ),
        Piece(
            "swing_step",
            "Out from under the local",
            "Your circuit, step by step, is tuned to Gannet Rock. At first the local's low tune is on top. Reaction is advanced "
            "from the third second, the band narrows from 13 kHz to 700 Hz, and the high tune comes out from under it.",
            swing_step,
        ),
        Piece(
            "far_station",
            "The evening, by your three numbers",
            "Three passages. Without reaction the local is on top. With your reaction for the widest band that keeps it 28.2 dB down, Gannet "
            "Rock is clear. In the narrowest that leaves tones of 300 Hz it is alone, and dull. The circuit is your own swing_step.",
            far_station,
        ),
    )
}
