"""What the Circle's set has to hear through: the noise of the place by day and night, the set's own, and the ear's limit.

The set is the one-valve set of unit 05 on the club's aerial, with the aerial coil of the reaction set. Reaction multiplies
station and noise alike; so what is told here of its noise holds with and without. Noise is counted in a channel's 9 kHz.
"""

from statistics import NormalDist
from typing import NamedTuple

import numpy as np

from solutions.unit01_signal.aerial_voltage import aerial_capacitance, aerial_emf, effective_height
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit02_coil_and_condenser.club_coil import coil_resistance
from solutions.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit04_crystal_set.crystal_set import COIL, EARTH_RESISTANCE, HEIGHT, SENSITIVITY, TOP, WIRE_RADIUS
from solutions.unit04_crystal_set.phone_loudness import least_audible_power
from solutions.unit05_valve.grid_leak import audio_cutoff, rest_bias
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import (
    CONDENSER,
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    TONE_RESISTANCE,
    ZERO_CURRENT,
    detector_gain,
)
from solutions.unit05_valve.triode_current import mutual_conductance
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit08_two_stations.least_heard import (
    ROOM,
    circuit_noise,
    country_noise,
    least_field,
    noise_together,
    set_noise,
    shot_noise,
    thermal_noise,
)

BAND = 9e3  # hertz: both sidebands of a channel
# henry: wire and winding, and what they share with the tuned coil
AERIAL_COIL, COUPLING = SALTMARSH_SET.aerial_inductance, SALTMARSH_SET.aerial_tuned
AERIAL_HEIGHT = effective_height(HEIGHT, TOP)
TONE, DEPTH = 1e3, 0.3  # hertz, and a fraction: the usual depth of a test tone

# Recommendation ITU-R P.372: decibel at 1 MHz, fall in decibel a decade of frequency; medians (noise_p372.csv).
MAN_MADE = {"houses": (72.5, 27.7), "country": (67.2, 27.7), "quiet country": (53.6, 28.6)}
# The same Recommendation's world maps, read at the hut's place: medians at 0.5, 1 and 1.6 MHz of four hours of local time in
# a season (atmospheric_noise.csv).
SKY_MEGAHERTZ = 0.5, 1.0, 1.6
SKY = {
    "winter day": (47.7, 33.2, 25.6),
    "winter night": (78.8, 68.0, 62.2),
    "summer day": (57.4, 40.8, 32.0),
    "summer night": (79.2, 67.1, 61.1),
}
DECILES = {"country": (9.2, 4.6), "winter night": (10.3, 7.8)}  # decibel above and below the median, at 1 MHz
HALVINGS = 60

GRID = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
GRID_CURRENT = (LEAK_RETURN - GRID) / LEAK
GRID_CONDUCTANCE = 1 / LEAK + GRID_CURRENT / GRID_SLOPE
SLOPE = float(mutual_conductance(operating_point(HT, STEADY_RESISTANCE, GRID, *LAW)[0], GRID, *LAW))


class OwnParts(NamedTuple):
    """What the set's own noise is made of, each in volts r.m.s. in series with the aerial."""

    earth: float
    coil: float
    leak: float
    grid: float
    valve: float


def grid_current() -> float:
    """Current that the club's grid takes at rest, in amperes."""
    return GRID_CURRENT


def aerial_height() -> float:
    """Effective height of the club's aerial, in metres."""
    return AERIAL_HEIGHT


def valve_resistance() -> float:
    """Resistance before the grid that would be as noisy as the club's valve is at rest, in ohms."""
    return 2.5 / SLOPE


def man_made_figure(frequency: float, where: str = "country") -> float:
    """Noise figure of what people's machines and lines send out at a place, in decibels: a key of `MAN_MADE`."""
    level, fall = MAN_MADE[where]
    return level - fall * np.log10(frequency / 1e6)


def sky_figure(frequency: float, when: str) -> float:
    """Noise figure of the world's lightning at the hut, in decibels: a key of `SKY`; straight lines against log frequency."""
    return np.interp(np.log10(frequency / 1e6), np.log10(SKY_MEGAHERTZ), SKY[when])


def outside_figure(frequency: float, when: str, where: str = "country") -> float:
    """Noise figure of place and sky together, in decibels: the medians' powers added."""
    return 10 * np.log10(10 ** (man_made_figure(frequency, where) / 10) + 10 ** (sky_figure(frequency, when) / 10))


def outside_noise(frequency: float, when: str, where: str = "country") -> float:
    """The same in the club's aerial, in volts r.m.s."""
    return country_noise(outside_figure(frequency, when, where), frequency, BAND, AERIAL_HEIGHT)


def outside_field(frequency: float, when: str, where: str = "country") -> float:
    """The same as a field, in volts a metre r.m.s."""
    return outside_noise(frequency, when, where) / AERIAL_HEIGHT


def radiation_heat(frequency: float, when: str, where: str = "country") -> float:
    """How hot a resistor as large as the radiation resistance would be that makes as much, in kelvin."""
    return ROOM * 10 ** (outside_figure(frequency, when, where) / 10)


def place_to_place(frequency: float, when: str, here: str, there: str) -> float:
    """Decibels by which the noise falls when the aerial is moved from one kind of place to another."""
    return outside_figure(frequency, when, here) - outside_figure(frequency, when, there)


def aerial_circuit(frequency: float) -> complex:
    """Impedance round the aerial, in ohms."""
    resistance = EARTH_RESISTANCE + radiation_resistance(AERIAL_HEIGHT, frequency)
    return series_impedance(frequency, AERIAL_COIL, aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS), resistance)


def circuit(frequency: float) -> tuple[float, float, float]:
    """Of the tuned circuit: volts induced for each volt in the aerial, reactance in ohms, and Q with all that loads it."""
    reactance = 2 * np.pi * frequency * COIL
    aerial = aerial_circuit(frequency)
    loss = coil_resistance(frequency) + GRID_CONDUCTANCE * reactance**2
    induced = 2 * np.pi * frequency * COUPLING / np.abs(aerial)
    return induced, reactance, loaded_quality_factor(frequency, COUPLING, aerial, COIL, loss)


def plain_gain(frequency: float) -> float:
    """Volts on the grid for each volt in the aerial, without reaction."""
    induced, _, quality = circuit(frequency)
    return induced * quality


def own_noise(frequency: float) -> float:
    """All noise of the set by itself, before the detector, as volts r.m.s. in the aerial."""
    induced, reactance, quality = circuit(frequency)
    in_the_coil = circuit_noise(coil_resistance(frequency), reactance, LEAK, GRID_CURRENT, BAND)
    return set_noise(in_the_coil, quality, SLOPE, induced, EARTH_RESISTANCE, BAND)


def own_parts(frequency: float) -> OwnParts:
    """The same in its parts, whose squares add up to its square."""
    induced, reactance, quality = circuit(frequency)
    return OwnParts(
        earth=thermal_noise(EARTH_RESISTANCE, BAND, ROOM),
        coil=thermal_noise(coil_resistance(frequency), BAND, ROOM) / induced,
        leak=thermal_noise(LEAK, BAND, ROOM) / LEAK * reactance / induced,
        grid=shot_noise(GRID_CURRENT, BAND) * reactance / induced,
        valve=thermal_noise(valve_resistance(), BAND, ROOM) / quality / induced,
    )


def own_share(frequency: float, when: str, where: str = "country") -> float:
    """The set's own part of all the noise power that reaches its detector."""
    return noise_together(outside_noise(frequency, when, where), own_noise(frequency))[1]


def own_below(frequency: float, when: str, where: str = "country") -> float:
    """Decibels by which the set's own noise lies below that from outside."""
    return 20 * np.log10(outside_noise(frequency, when, where) / own_noise(frequency))


def least_through_noise(frequency: float, when: str, where: str = "country", ratio: float = 6.0, depth: float = DEPTH) -> float:
    """Field in volts a metre of a carrier whose programme stands `ratio` decibels above all the noise before the detector."""
    noise = noise_together(outside_noise(frequency, when, where), own_noise(frequency))[0]
    return least_field(noise, AERIAL_HEIGHT, depth, ratio)


def decibels_of(field: float) -> float:
    """A field in decibels above a microvolt per metre."""
    return 20 * np.log10(field / 1e-6)


def median_of_both() -> float:
    """Decibels by which the median of place and winter night together lies above the medians' sum, at 1 MHz.

    Each varies by itself from hour to hour and place to place; each side of a median falls off as a bell curve in decibels.
    """
    bell = np.array([NormalDist().inv_cdf(share) for share in np.linspace(0, 1, 401)[1:-1]])
    levels = [
        figure + bell / NormalDist().inv_cdf(0.9) * np.where(bell > 0, *DECILES[name])
        for name, figure in (("country", man_made_figure(1e6)), ("winter night", sky_figure(1e6, "winter night")))
    ]
    together = 10 * np.log10(10 ** (levels[0][:, None] / 10) + 10 ** (levels[1] / 10))
    return float(np.median(together)) - outside_figure(1e6, "winter night")


def stage_gain() -> float:
    """Volts at the telephones for each volt of tone on the grid."""
    return SLOPE / (1 / TONE_RESISTANCE + SLOPE / LAW[0])


def hiss() -> float:
    """Noise of detector and valve in the telephones with no station and no aerial, in volts r.m.s., up to half of `BAND`.

    Grid current and leak fluctuate at tones too, across the leak and the grid's slope; the grid condenser takes the treble.
    """
    top, cutoff = BAND / 2, audio_cutoff(CONDENSER, LEAK, GRID_CURRENT, GRID_SLOPE)
    passed = cutoff * np.arctan(top / cutoff)
    current = np.hypot(shot_noise(GRID_CURRENT, passed), thermal_noise(LEAK, passed, ROOM) / LEAK)
    return stage_gain() * np.hypot(current / GRID_CONDUCTANCE, thermal_noise(valve_resistance(), top, ROOM))


def faintest_tone() -> float:
    """Volts r.m.s. at the telephones of a tone that an ear can just hear when nothing else is to be heard."""
    return np.sqrt(least_audible_power(TONE, SENSITIVITY) * TONE_RESISTANCE)


def carrier_for(tone: float, depth: float = DEPTH) -> float:
    """Crest of carrier on the grid, in volts, that makes so many volts r.m.s. of tone at the telephones."""
    low, high = 1e-6, 1.0
    for _ in range(HALVINGS):
        middle = np.sqrt(low * high)
        if detector_gain(middle, TONE) * depth * middle / np.sqrt(2) < tone:
            low = middle
        else:
            high = middle
    return middle


def heard_level(above: float = 20.0) -> float:
    """Volts r.m.s. of tone at the telephones, so many decibels above the faintest."""
    return faintest_tone() * 10 ** (above / 20)


def clear_of_hiss(ratio: float = 6.0) -> float:
    """Volts r.m.s. of tone at the telephones, so many decibels above the detector's hiss."""
    return hiss() * 10 ** (ratio / 20)


def least_by_ear(gain: float, above: float = 20.0) -> float:
    """Field in volts a metre of a carrier whose tone, at that gain from aerial to grid, is so far above the faintest."""
    return carrier_for(heard_level(above)) / np.sqrt(2) / gain / AERIAL_HEIGHT


def least_by_hiss(gain: float, ratio: float = 6.0) -> float:
    """Field in volts a metre of a carrier whose tone, at that gain, is so far above the detector's hiss."""
    return carrier_for(clear_of_hiss(ratio)) / np.sqrt(2) / gain / AERIAL_HEIGHT


def gain_wanted(frequency: float, when: str, where: str = "country", above: float = 20.0) -> float:
    """Gain from aerial to grid with which a station that the noise just leaves audible is also loud enough for the ear."""
    emf = aerial_emf(least_through_noise(frequency, when, where), AERIAL_HEIGHT)
    return carrier_for(heard_level(above)) / np.sqrt(2) / emf


def reaction_wanted(frequency: float, when: str, where: str = "country", above: float = 20.0) -> float:
    """The same as a multiple of the gain without reaction; 1 or less asks for none."""
    return gain_wanted(frequency, when, where, above) / plain_gain(frequency)
