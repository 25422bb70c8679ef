"""Two stations at once, in one detector: under the local, held down and helped, trapped, and out of the night.

Each station is its complex envelope, as the circuits let it through. The detector's condenser follows the beat of the two
carriers and the ear does not, so its output is averaged over that, as in `weak_signal_suppression`.
"""

from functools import cache

import numpy as np

from course.circle.levels import RATE
from course.circle.programme import LENGTH, envelope
from course.circle.set_in_hand import COUNTRY
from course.circle.stations import ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL, NIGHT_ONLY
from course.sounds import sound
from solutions.unit01_signal.field_strength import SPEED_OF_LIGHT
from solutions.unit03_tuned_circuit.response_curve import relative_response
from solutions.unit04_crystal_set.crystal_set import SATURATION_CURRENT, SLOPE_VOLTAGE
from solutions.unit04_crystal_set.rectified_voltage import detector_output
from solutions.unit07_oscillation.radiated_field import noise_field
from solutions.unit08_two_stations.club_evening import (
    CREEK,
    dark_hours,
    gannet_rock,
    local_at,
    skerry_vore_by_night,
    with_trap,
)
from solutions.unit08_two_stations.night_path import hop

WANTED, OTHER = NEXT_CHANNEL.frequency, LOCAL.frequency
TOGETHER = 0.3  # volt, crest: what two carriers are brought to at the detector, by the aerial's coupling
HIGH_LOAD, PHONES = 1e6, 2e3  # ohm
BEAT = np.cos(np.pi * (np.arange(24) + 0.5) / 24)  # the angle between two carriers, at moments of half a beat
CRESTS = 1500  # at which the detector is worked out
PASS = 4000.0  # hertz: what an amplifier behind the detector passes on
PART = LENGTH / 2  # seconds of voice in the programme, and then of the tune
LARGE, SMALL = 100e-6, 10e-6  # henry: coils of the trap
CRYSTAL_QUALITY = 15.0  # of a crystal set with its aerial tight
STRONG = (0.0, 0.1, 1.0)  # volt: bare carriers beside the weak station, one after the other
FAINT = 5e-3  # volt, crest, of the weak station
VOLTS = 20.0  # at the crystal for each volt per metre at the aerial
NIGHTFALL = 22.0  # seconds that the opening is given
SUNK = 38.0  # decibel by which the lit air takes more at sunset than when all of it is dark: chosen
CLIMBS = (0.55, -0.35)  # waves by which the two hops lengthen in each second: chosen, as the evening is played so fast
SHARE = 0.8  # of the second hop, against the first
CHANNEL = 9e3  # hertz that the set takes in
BOTTOM, CEILING = 60e3, 90e3  # m, between which the air soaks the wave up


@cache
def sent() -> np.ndarray:
    """What a station sends: its crest, the carrier at rest 1; the voice, then the tune."""
    return envelope()


def spoken(seconds: float) -> np.ndarray:
    """Some seconds of it, from the voice on."""
    return sent()[: round(seconds * RATE)]


def played(seconds: float) -> np.ndarray:
    """Some seconds of it, from the tune on."""
    return np.roll(sent(), -round(PART * RATE))[: round(seconds * RATE)]


def behind(crest: np.ndarray, carrier: float, tuned_to: float, quality: float) -> np.ndarray:
    """Crest behind one tuned circuit, the carrier's own sides held back unevenly where it is off tune."""
    padded = np.pad(crest, RATE // 4, mode="edge")
    sides = np.fft.fftfreq(padded.size, 1 / RATE)
    passed = np.fft.ifft(np.fft.fft(padded) * relative_response(carrier + sides, tuned_to, quality))
    return np.abs(passed)[RATE // 4 : -RATE // 4]


def detected(first: np.ndarray, second: np.ndarray, load: float) -> np.ndarray:
    """Volts on the load, averaged over the beat of two carriers with these crests at each moment."""
    crest = np.linspace(0, 1.001 * (first + second).max(), CRESTS)
    output = detector_output(crest, load, SATURATION_CURRENT, SLOPE_VOLTAGE)
    total = np.zeros(first.size)
    for turned_by in BEAT:
        both = np.sqrt((first - second) ** 2 + 2 * first * second * (1 + turned_by))
        total += np.interp(both, crest, output)
    return total / BEAT.size


def audible(voltage: np.ndarray) -> np.ndarray:
    """What is heard of it: nothing steady, nothing too high, and the ends soft."""
    tone = np.fft.rfftfreq(voltage.size, 1 / RATE)
    share = np.clip((PASS - tone) / 500, 0, 1) * np.clip((tone - 50) / 40, 0, 1)
    heard = np.fft.irfft(np.fft.rfft(voltage - voltage.mean()) * share, voltage.size)
    ends = np.clip(np.minimum(np.arange(heard.size), heard.size - np.arange(heard.size)) / (0.03 * RATE), 0, 1)
    return heard * ends


def loud(voltage: np.ndarray) -> np.ndarray:
    """Brought to one loudness, as a listener does who turns the knob."""
    return voltage / np.sqrt(np.mean(voltage**2))


def receiving(quality: float, trapped: float = 0.0, seconds: float = PART) -> np.ndarray:
    """The set at Eelgrass Creek on Gannet Rock; `trapped` decibels more are held back of the local."""
    wanted = gannet_rock() * behind(spoken(seconds), WANTED, WANTED, quality)
    other = local_at(CREEK) * 10 ** (-trapped / 20) * behind(played(seconds), OTHER, WANTED, quality)
    scale = TOGETHER / np.hypot(wanted.mean(), other.mean())
    return loud(audible(detected(scale * wanted, scale * other, HIGH_LOAD)))


def won_by_the_trap() -> float:
    """Decibels by which the trap in the lead sets Gannet Rock above the local."""
    return with_trap(WANTED, LARGE)[0] - with_trap(OTHER, LARGE)[0]


@sound(
    caption="**Out from under the local.** Gannet Rock talks, the local plays a tune, and the set at Eelgrass Creek stands "
    "on Gannet Rock: with a Q of 80; of 800; of 3000; and of 3000 with a trap on the local. Each brought to one loudness. "
    "Left out: the 9 kHz whistle of the two carriers.",
    transcript="A tune, clear, and nothing else. The same tune, and far behind it, for someone who knows of it, a breath "
    "of a voice. Then both at once: the tune bright and in front, the voice dull behind it, each tearing holes in the "
    "other. Last the voice by itself, dull as through a wall, and of the tune hardly a trace.",
    moments=((0.0, "Q 80"), (4.0, "Q 800"), (8.0, "Q 3000"), (12.0, "and trap")),
)
def out_from_under():
    return np.concatenate([receiving(80), receiving(800), receiving(3000), receiving(3000, won_by_the_trap())]), RATE


def beside(strong: float, load: float, seconds: float = 3.5) -> np.ndarray:
    """The faint station's programme with a bare carrier beside it, its loudness without that being 1."""
    first = FAINT * spoken(seconds)
    alone = np.sqrt(np.mean(audible(detected(first, np.zeros(first.size), load)) ** 2))
    return audible(detected(first, np.full(first.size, strong), load)) / alone


@sound(
    caption="**Held down, and helped.** A faint station, 5 mV at the crystal. Beside it a bare carrier, 9 kHz off, that "
    "nobody hears: none, 0.1 V, 1 V. First on a load of 1 MΩ, then the same three on 2 kΩ. All six to one scale, in which "
    "the station alone is the same for both.",
    transcript="A voice. The same voice, a third as loud; then so faint that it is hardly there. Then, on the low load, "
    "the voice as at first; nearly three times as loud; and at last half as loud as at first.",
    full_scale=22.0,
    moments=((0.0, "1 MΩ"), (3.5, "0.1 V"), (7.0, "1 V"), (10.5, "2 kΩ"), (14.0, "0.1 V"), (17.5, "1 V")),
)
def held_and_helped():
    return np.concatenate([beside(strong, load) for load in (HIGH_LOAD, PHONES) for strong in STRONG]), RATE


def crystal_set(across_bay: float, local: float, seconds: float = PART) -> np.ndarray:
    """Kit's crystal set on Curlew Bank, each station changed by so many decibels on the way in."""
    wanted = (
        ACROSS_THE_BAY.field
        * 10 ** (across_bay / 20)
        * behind(spoken(seconds), ACROSS_THE_BAY.frequency, ACROSS_THE_BAY.frequency, CRYSTAL_QUALITY)
    )
    other = (
        LOCAL.field * 10 ** (local / 20) * behind(played(seconds), LOCAL.frequency, ACROSS_THE_BAY.frequency, CRYSTAL_QUALITY)
    )
    return audible(detected(VOLTS * wanted, VOLTS * other, 20e3))


@sound(
    caption="**A trap, out and in.** Kit Harrow's crystal set (Q 15, its aerial tight) on Curlew Bank, in the hut. No "
    "trap; a trap on the local with a coil of 100 µH; one with 10 µH. To one scale.",
    transcript="A voice and a tune, equally loud, one over the other. Then the voice by itself, but much softer. Then the "
    "voice by itself, as loud as both together were.",
    full_scale=0.16,
    moments=((0.0, "no trap"), (4.0, "100 µH"), (8.0, "10 µH")),
)
def trap_in():
    changes = [(0.0, 0.0)] + [
        (with_trap(ACROSS_THE_BAY.frequency, coil)[0], with_trap(LOCAL.frequency, coil)[0]) for coil in (LARGE, SMALL)
    ]
    return np.concatenate([crystal_set(*change) for change in changes]), RATE


def lit(time: np.ndarray) -> np.ndarray:
    """Decibels that the lit air takes: all until the sun has set 60 km up, none once it has set 90 km up."""
    sunset, first, last = (dark_hours(11, 25, height)[0] for height in (0.0, BOTTOM, CEILING))
    hour = sunset + (last + 0.15 - sunset) * time / NIGHTFALL
    return np.interp(hour, (sunset, first, last), (SUNK, 0.45 * SUNK, 0.0))


def two_hops(crest: np.ndarray, time: np.ndarray) -> np.ndarray:
    """The envelope of one station by two hops of unequal length, which help each other now at one pitch, now at another."""
    (_, near), (_, far) = (hop(NIGHT_ONLY.distance, height) for height in (100e3, 220e3))
    late = (far - near) / SPEED_OF_LIGHT
    sides = np.fft.fftfreq(crest.size, 1 / RATE)
    delayed = np.fft.ifft(np.fft.fft(crest) * np.exp(-2j * np.pi * sides * late))
    first, second = (np.exp(2j * np.pi * climb * time) for climb in CLIMBS)
    return first * crest + SHARE * second * delayed


@sound(
    caption="**The night opens.** Skerry Vore, 900 km off, in the hut on 25 November, from sunset on the ground to full "
    "dark on high, an hour and a half in 22 seconds; in the noise of the country, through 9 kHz, by a detector that is "
    "fair to all. Its strength at night, the hours and the two hops are computed; how fast the lit air lets go is chosen, "
    "and so is the pace of the fading.",
    transcript="Hiss, and in it a murmur that one may be imagining; a tune, perhaps; then something like a voice. By the "
    "twelfth second a tune stands over the hiss, and swells and sinks about once a second. Then a voice, near, that hollows "
    "out, tears, goes under and is back; and the tune once more, with the hiss gone behind it.",
    moments=((0.0, "sunset"), (10.0, "60 km dark"), (20.0, "90 km dark")),
)
def night_opens():
    crest = np.tile(sent(), 3)[: round(NIGHTFALL * RATE)]
    time = np.arange(crest.size) / RATE
    field = np.sqrt(2) * skerry_vore_by_night() * 10 ** (-lit(time) / 20)
    received = field * two_hops(crest, time) / np.hypot(1, SHARE)
    generator = np.random.default_rng(8)
    noise = noise_field(NIGHT_ONLY.frequency, RATE, *COUNTRY)
    received = received + noise * (generator.standard_normal(time.size) + 1j * generator.standard_normal(time.size))
    sides = np.abs(np.fft.fftfreq(time.size, 1 / RATE))
    received = np.fft.ifft(np.fft.fft(received) * np.clip((CHANNEL / 2 - sides) / 300, 0, 1))
    gain = 1 / np.hypot(0.3 * np.sqrt(2) * skerry_vore_by_night(), np.abs(field))  # a hand on the volume
    return audible(np.abs(received) * gain), RATE
