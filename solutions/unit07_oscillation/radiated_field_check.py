"""How `radiated_field` is judged.

In the laws and slips: V the swing, f0 the frequency, C and M capacitance and mutual inductance, Z the aerial's impedance, i
its current, h its effective height, P a radiated power, d a distance, B a bandwidth, c and k the noise's level and fall,
E a wanted field, p its protection.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
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
    relative,
    slip,
    value,
    volts,
    volts_per_metre,
    watts,
)
from solutions.unit01_signal.radiation_resistance import radiation_resistance

from .radiated_field import (
    SPEED_OF_LIGHT,
    aerial_current,
    nearby_field,
    noise_field,
    radiated_power,
    spoiled_distance,
)

CLOSE = relative(1e-9, because="a few operations, double precision")
REFERENCE = "Recommendation ITU-R P.368: 300 mV/m at 1 km for 1 kW; planning.toml, groundwave.reference"
NOISE = "Recommendation ITU-R P.372 (constants as in the Study Group 3 software); noise_p372.csv"
PROTECTION = "Recommendation ITU-R BS.560-4 (1997): 40 dB, with P.368's 300 mV/m at 1 km for 1 kW; planning.toml"
HEIGHTS = "aerial_effective_height.csv: 1 m at 600 kHz is 6.325 mΩ (formula from memory)"
AERIAL = drawn(
    [complex(resistance, 50.0 * n) for n in (0, *range(-20, 0), *range(1, 21)) for resistance in (30, 10, 20, 50, 100)],
    "10 to 100 Ω of resistance, −1 kΩ to +1 kΩ of reactance",
    unit="Ω",
    stacks=True,
)
FREQUENCY, POWER, DISTANCE = hertz("500 kHz", "1.6 MHz"), watts("1 nW", "1 mW"), metres("10 m", "5 km")


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-2, because="a limit, nearly reached"))


def electrical(d, f0):
    return 2 * np.pi * d * f0 / SPEED_OF_LIGHT


EXERCISE = Exercise(
    title="What do the neighbours hear?",
    questions=[
        Question(
            asks=aerial_current,
            given={
                "swing": volts("100 mV", "20 V"),
                "frequency": FREQUENCY,
                "capacitance": farads("50 pF", "500 pF"),
                "mutual_inductance": henries("1 µH", "30 µH"),
                "aerial_impedance": AERIAL,
            },
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "coils drawn to half the coupling, half the current",
                    lambda f, V, f0, C, M, Z: (f(V, f0, C, M / 2, Z), f(V, f0, C, M, Z) / 2),
                ),
                invariant(
                    "a coil turned over drives as much", lambda f, V, f0, C, M, Z: (f(V, f0, C, -M, Z), f(V, f0, C, M, Z))
                ),
                invariant(
                    "an aerial tuned by a coil of its own carries most",
                    lambda f, V, f0, C, M, Z: (f(V, f0, C, M, Z.real + 300j), f(V, f0, C, M, Z.real + 0j)),
                    less,
                ),
                invariant(
                    "twice the frequency, four times the current, the impedance being the same",
                    lambda f, V, f0, C, M, Z: (f(V, 2 * f0, C, M, Z), 4 * f(V, f0, C, M, Z)),
                ),
            ],
            no_published="Ohm's law twice over; tests solve the two coupled circuits.",
            slips=[
                slip("returned the crest: r.m.s. is wanted", lambda *inputs: np.sqrt(2) * aerial_current(*inputs)),
                slip(
                    "left out the tuned coil's own current: ω M volts for each ampere of it",
                    lambda V, f0, C, M, Z: np.abs(2 * np.pi * f0 * M * V / np.sqrt(2) / Z) + 0 * C,
                ),
                slip(
                    "taken the aerial's resistance alone",
                    lambda V, f0, C, M, Z: (2 * np.pi * f0) ** 2 * M * C * V / np.sqrt(2) / np.real(Z),
                ),
                slip("left out 2π", lambda V, f0, C, M, Z: aerial_current(V, f0 / (2 * np.pi), C, M, Z)),
                slip(
                    "kept it complex: its size is wanted",
                    lambda V, f0, C, M, Z: (2 * np.pi * f0) ** 2 * M * C * V / np.sqrt(2) / Z,
                ),
            ],
        ),
        Question(
            asks=radiated_power,
            given={"current": amperes("1 µA", "50 mA"), "effective_height": metres("2 m", "20 m"), "frequency": FREQUENCY},
            gives="W",
            agrees_within=relative(1e-6, because="the speed of light may be taken to seven figures"),
            holds=[
                invariant("twice the current, four times the power", lambda f, i, h, f0: (f(2 * i, h, f0), 4 * f(i, h, f0))),
                invariant("twice the height, four times the power", lambda f, i, h, f0: (f(i, 2 * h, f0), 4 * f(i, h, f0))),
                invariant("height and wavelength count by their ratio", lambda f, i, h, f0: (f(i, h / 2, 2 * f0), f(i, h, f0))),
            ],
            published=[
                value(
                    "1 A, 1 m, 600 kHz: 6.325 mW",
                    given=(1.0, 1.0, 600e3),
                    wanted=6.325e-3,
                    within=relative(2e-3, because="120π ohm taken for space"),
                    source=HEIGHTS,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("halved it: the current is r.m.s. already", lambda *inputs: radiated_power(*inputs) / 2),
                slip("forgotten to square the current", lambda i, h, f0: i * radiation_resistance(h, f0)),
                slip(
                    "left out the square of the ratio of height and wavelength",
                    lambda i, h, f0: i**2 * 160 * np.pi**2 * h * f0 / SPEED_OF_LIGHT,
                ),
                slip("divided the current's square by the resistance", lambda i, h, f0: i**2 / radiation_resistance(h, f0)),
            ],
        ),
        Question(
            asks=nearby_field,
            given={"radiated_power": POWER, "distance": DISTANCE, "frequency": FREQUENCY},
            gives="V/m",
            agrees_within=relative(1e-6, because="the speed of light may be taken to seven figures"),
            holds=[
                invariant(
                    "far away it falls as the distance grows", lambda f, P, d, f0: (f(P, 40e3, f0), f(P, 20e3, f0) / 2), nearly
                ),
                invariant(
                    "very near, twice the distance leaves an eighth",
                    lambda f, P, d, f0: (f(P, 0.5, f0), f(P, 0.25, f0) / 8),
                    nearly,
                ),
                invariant("four times the power, twice the field", lambda f, P, d, f0: (f(4 * P, d, f0), 2 * f(P, d, f0))),
                invariant(
                    "a sixth of a wavelength away, where 2πd is one wave, it is the far field's, though near",
                    lambda f, P, d, f0: (
                        f(P, SPEED_OF_LIGHT / (2 * np.pi * f0), f0) / np.sqrt(90 * P) * SPEED_OF_LIGHT,
                        2 * np.pi * f0,
                    ),
                ),
            ],
            published=[
                value(
                    "1 kW at 1 km, on 1 MHz: 300 mV/m",
                    given=(1e3, 1e3, 1e6),
                    wanted=0.3,
                    within=relative(2e-3, because="at 1 km the near field still takes a thousandth"),
                    source=REFERENCE,
                    known="found",
                ),
            ],
            slips=[
                slip("left out the near field", lambda P, d, f0: np.sqrt(90 * P) / d + 0 * f0),
                slip(
                    "added the three parts without their phases",
                    lambda P, d, f0: np.sqrt(90 * P) / d * (1 + 1 / electrical(d, f0) + 1 / electrical(d, f0) ** 2),
                ),
                slip(
                    "taken the magnetic field's part, which has no third term",
                    lambda P, d, f0: np.sqrt(90 * P) / d * np.abs(1 - 1j / electrical(d, f0)),
                ),
                slip(
                    "left out 2π in x",
                    lambda P, d, f0: (
                        np.sqrt(90 * P) / d * np.abs(1 - 1j / (d * f0 / SPEED_OF_LIGHT) - 1 / (d * f0 / SPEED_OF_LIGHT) ** 2)
                    ),
                ),
                slip("left out the square root of the power", lambda P, d, f0: nearby_field(P, d, f0) * np.sqrt(90 * P)),
            ],
        ),
        Question(
            asks=noise_field,
            given={
                "frequency": FREQUENCY,
                "bandwidth": hertz("1 kHz", "20 kHz"),
                "level_at_1_mhz": number(50, 80),
                "fall": number(25, 30),
            },
            gives="V/m",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "four times the bandwidth, twice the field", lambda f, f0, B, c, k: (f(f0, 4 * B, c, k), 2 * f(f0, B, c, k))
                ),
                invariant(
                    "20 dB more noise, ten times the field", lambda f, f0, B, c, k: (f(f0, B, c + 20, k), 10 * f(f0, B, c, k))
                ),
                invariant("at 1 MHz the fall does not matter", lambda f, f0, B, c, k: (f(1e6, B, c, k + 1), f(1e6, B, c, k))),
                invariant(
                    "a noise that fell by 20 dB a decade would have one field at all frequencies",
                    lambda f, f0, B, c, k: (f(10 * f0, B, c, 20.0), f(f0, B, c, 20.0)),
                ),
            ],
            published=[
                value(
                    "among houses, 1 MHz, 9 kHz wide: 16.54 dB above 1 µV/m",
                    given=(1e6, 9e3, 72.5, 27.7),
                    wanted=1e-6 * 10 ** (16.54 / 20),
                    within=relative(1e-3, because="printed to 0.01 dB"),
                    source=NOISE,
                    known="recomputed",
                ),
                value(
                    "quiet country, 4.5 kHz wide: −5.37 dB above 1 µV/m",
                    given=(1e6, 4.5e3, 53.6, 28.6),
                    wanted=1e-6 * 10 ** (-5.37 / 20),
                    within=relative(1.5e-3, because="printed to 0.01 dB"),
                    source=NOISE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned microvolts per metre", lambda *inputs: 1e6 * noise_field(*inputs)),
                slip("used 10 log to come back: these are fields", lambda *inputs: 1e-6 * (noise_field(*inputs) * 1e6) ** 2),
                slip(
                    "used 20 log of the bandwidth: noise adds by power",
                    lambda f0, B, c, k: noise_field(f0, B, c, k) * np.sqrt(B),
                ),
                slip("let the noise rise with the frequency", lambda f0, B, c, k: noise_field(f0, B, c, -k)),
                slip(
                    "taken the frequency in hertz where megahertz are wanted",
                    lambda f0, B, c, k: noise_field(f0 * 1e6, B, c, k),
                ),
            ],
        ),
        Question(
            asks=spoiled_distance,
            given={
                "radiated_power": POWER,
                "wanted_field": volts_per_metre("100 µV/m", "100 mV/m"),
                "protection": decibels("0 dB", "60 dB"),
                "frequency": FREQUENCY,
            },
            gives="m",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "there its own field is as far below the station as it should be",
                    lambda f, P, E, p, f0: (f.nearby_field(P, f(P, E, p, f0), f0), E * 10 ** (-p / 20)),
                ),
                invariant(
                    "far off, a hundredth of the power reaches a tenth as far",
                    lambda f, P, E, p, f0: (f(10.0, 1e-4, p, f0) / 10, f(0.1, 1e-4, p, f0)),
                    nearly,
                ),
                invariant(
                    "very near, a thousandth of the station's field reaches ten times as far",
                    lambda f, P, E, p, f0: (f(1e-9, 30.0, 0.0, f0), f(1e-9, 30e3, 0.0, f0) * 10),
                    nearly,
                ),
            ],
            published=[
                value(
                    "1 kW against 300 mV/m on 1 MHz, to come in alike: 1 km",
                    given=(1e3, 0.3, 0.0, 1e6),
                    wanted=1e3,
                    within=relative(2e-3, because="at 1 km the near field still takes a thousandth"),
                    source=REFERENCE,
                    known="found",
                ),
                value(
                    "the same with 40 dB of protection: 100 km",
                    given=(1e3, 0.3, 40.0, 1e6),
                    wanted=100e3,
                    within=relative(1e-6, because="a round figure; next to nothing is left of the near field"),
                    source=PROTECTION,
                    known="found",
                ),
            ],
            slips=[
                slip("left out the near field", lambda P, E, p, f0: np.sqrt(90 * P) * 10 ** (p / 20) / E + 0 * f0),
                slip(
                    "taken the field's cube alone: good for the nearest yards",
                    lambda P, E, p, f0: np.cbrt(
                        np.sqrt(90 * P) * 10 ** (p / 20) / E * (SPEED_OF_LIGHT / (2 * np.pi * f0)) ** 2
                    ),
                ),
                slip(
                    "turned the protection round: the weaker the set must be, the further off",
                    lambda P, E, p, f0: spoiled_distance(P, E, -p, f0),
                ),
                slip("used 10 log: these are fields", lambda P, E, p, f0: spoiled_distance(P, E, 2 * p, f0)),
                slip("left out the protection", lambda P, E, p, f0: spoiled_distance(P, E, 0 * p, f0)),
                slip("left out the square root of the power", lambda P, E, p, f0: spoiled_distance(90 * P**2, E, p, f0)),
            ],
        ),
    ],
    hints=[
        "Follow the swing outwards: tuned coil, aerial, wave. Each step is one you have met, in units 01 and 03. Only the "
        "nearest hundred metres are new.",
        "The tuned coil carries ω C V; the aerial finds ω M times that round it, and its impedance lets through so much. "
        "Power: current squared times radiation resistance. Near by, the far field is multiplied by |1 − j/x − 1/x²|, "
        "x = 2πd/λ. Decibels of fields are 20 log, of bandwidth 10 log. The distance: no formula to turn round; but the field "
        "only falls with distance, so halve until it is right, or take Newton's steps.",
        "With w = 2π × frequency: abs(w × mutual_inductance × w × capacitance × swing/√2/aerial_impedance);  current² × "
        "radiation_resistance(effective_height, frequency);  with one = SPEED_OF_LIGHT/w and x = distance/one: "
        "unattenuated_field(radiated_power, distance) × abs(1 − 1j/x − 1/x²);  1e-6 × 10^(decibels/20) with decibels = "
        "level_at_1_mhz + (20 − fall) log10(frequency/1e6) + 10 log10(bandwidth) − 95.5;  with u = 1/x²: u − u² + u³ = h "
        "with h = (wanted_field × 10^(−protection/20) × one)²/(90 × radiated_power); begin at u = np.minimum(h, "
        "np.cbrt(h)), take a dozen steps u −= (u − u² + u³ − h)/(1 − 2 × u + 3 × u²), and the distance is one/sqrt(u).",
    ],
)
