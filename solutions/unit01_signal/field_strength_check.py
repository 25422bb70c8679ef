"""How `field_strength` is judged."""

import numpy as np
from hypothesis import strategies as st

from checker import Exercise, Question, at_most, invariant, relative, slip, value
from checker.given import drawn, hertz, metres, number, siemens_per_metre, tidy_values, watts

from .field_strength import ground_attenuation, ground_wave_field, numerical_distance, unattenuated_field

IMPEDANCE = relative(1e-3, because="120π ohm or 376.73 ohm for space: the two differ by 0.07 %")
HUNDREDTH_DB = relative(1e-3, because="a hundredth of a decibel: where the series change over is yours to choose")
NORTON = "K. A. Norton, Proc. IRE 24, 1367 (1936)"
NTIA = "NTIA/ITS LF/MF smooth-earth validation set (Report 99-368, 1999)"
CURVE = relative(0.006, because="0.05 dB: the earth's curve, which flat ground leaves out, at 10 km")
GROUND_PATH = {
    "distance": metres("1 km", "100 km"),
    "frequency": hertz("150 kHz", "1.7 MHz"),
    "conductivity": siemens_per_metre("0.1 mS/m", "5 S/m"),
    "relative_permittivity": number(3, 80),
}
NUMERICAL_DISTANCE = drawn(
    st.builds(
        lambda size, degrees: size * complex(np.exp(-1j * np.radians(degrees))),
        st.sampled_from(tidy_values(0.001, 1000)),
        st.integers(0, 85),
    ),
    "size 0.001 to 1000, phase 0 to -85°",
)


def from_decibels(above_microvolt):
    return 1e-6 * 10 ** (above_microvolt / 20)


def turned(p, size):
    """A numerical distance of the same phase as p."""
    return p / abs(p) * size


def over_ground(ground):
    """The slip of one who has a formula of their own for the ground's complex permittivity."""

    def wrong(d, f, sigma, eps):
        return -1j * np.pi * d * f / 299_792_458 * (ground(f, sigma, eps) - 1) / ground(f, sigma, eps) ** 2

    return wrong


def fitted(p):
    size, lag = abs(p), -np.angle(p)
    return (2 + 0.3 * size) / (2 + size + 0.6 * size**2) - np.sqrt(size / 2) * np.exp(-0.6 * size) * np.sin(lag)


EXERCISE = Exercise(
    title="How strong is the wave here?",
    marks=20,
    questions=[
        Question(
            asks=unattenuated_field,
            given={"radiated_power": watts("100 W", "500 kW"), "distance": metres("1 km", "100 km")},
            gives="V/m",
            agrees_within=IMPEDANCE,
            holds=[
                invariant("four times the power gives twice the field", lambda f, p, d: (f(4 * p, d), 2 * f(p, d))),
                invariant("twice as far is half as strong", lambda f, p, d: (f(p, 2 * d), f(p, d) / 2)),
            ],
            published=[
                value(
                    "1 kW at 1 km",
                    given=(1000.0, 1000.0),
                    wanted=0.3,
                    within=IMPEDANCE,
                    source="Recommendation ITU-R P.368, Annex 1",
                    known="memory",
                ),
                value(
                    "1 kW at 1 km over sea",
                    given=(1000.0, 1000.0),
                    wanted=from_decibels(109.5367),
                    within=IMPEDANCE,
                    source=NTIA,
                    known="found",
                ),
            ],
            slips=[
                slip("taken the power in kilowatts: it comes in watts", lambda p, d: np.sqrt(90 * p / 1000) / d),
                slip("taken the distance in kilometres: it comes in metres", lambda p, d: np.sqrt(90 * p) / d * 1000),
                slip("left out the square root", lambda p, d: 90 * p / d),
                slip(
                    "divided by distance squared: that is how power thins out; the field is its root",
                    lambda p, d: np.sqrt(90 * p) / d**2,
                ),
                slip(
                    "let the aerial send alike in all directions, below ground too: 30 for 90",
                    lambda p, d: np.sqrt(30 * p) / d,
                ),
                slip(
                    "left the ground out, which turns all the power into the upper half of space: 45 for 90",
                    lambda p, d: np.sqrt(45 * p) / d,
                ),
                slip("returned the peak: the field is told in r.m.s.", lambda p, d: np.sqrt(180 * p) / d),
            ],
        ),
        Question(
            asks=numerical_distance,
            given=GROUND_PATH,
            agrees_within=relative(
                1e-6, because="one formula; only the figures kept of the permittivity of space differ"
            ),
            holds=[
                invariant(
                    "twice as far is twice the numerical distance",
                    lambda f, d, *path: (f(2 * d, *path), 2 * f(d, *path)),
                ),
                invariant(
                    "half as far at twice the frequency and twice the conductivity is the same",
                    lambda f, d, hz, sigma, eps: (f(d / 2, 2 * hz, 2 * sigma, eps), f(d, hz, sigma, eps)),
                ),
                invariant(
                    "its phase lies between 0 and -90°",
                    lambda f, *path: (np.abs(np.angle(f(*path)) + np.pi / 4), np.pi / 4),
                    at_most,
                ),
            ],
            published=[
                value(
                    "10 km of average land at 1 MHz",
                    given=(10e3, 1e6, 0.003, 22.0),
                    wanted=1.78787 * np.exp(-1j * np.radians(23.1108)),
                    within=relative(1e-5, because="six figures are given"),
                    source=NORTON,
                    known="recomputed",
                ),
                value(
                    "20 km of wet ground at 1 MHz",
                    given=(20e3, 1e6, 0.01, 30.0),
                    wanted=1.14904 * np.exp(-1j * np.radians(9.7856)),
                    within=relative(1e-5, because="six figures are given"),
                    source=NORTON,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used hertz for radians a second: ω is 2πf",
                    over_ground(lambda f, sigma, eps: eps - 1j * sigma / (f * 8.8541878128e-12)),
                ),
                slip(
                    "added the conductivity with +j: for time as exp(+jωt) it is -j",
                    over_ground(lambda f, sigma, eps: eps + 1j * sigma / (2 * np.pi * f * 8.8541878128e-12)),
                ),
                slip(
                    "left out j times the conductivity's part: loss is a quarter of a cycle out of step",
                    over_ground(lambda f, sigma, eps: eps + sigma / (2 * np.pi * f * 8.8541878128e-12)),
                ),
                slip(
                    "left out the 1 in (e - 1)",
                    lambda d, f, sigma, eps: (
                        -1j * np.pi * d * f / 299_792_458 / (eps - 1j * sigma / (2 * np.pi * f * 8.8541878128e-12))
                    ),
                ),
                slip("returned its size only: its phase is needed too", lambda *path: abs(numerical_distance(*path))),
                slip("used 2π for π: p has half of the wave's own phase", lambda *path: 2 * numerical_distance(*path)),
            ],
        ),
        Question(
            asks=ground_attenuation,
            given={"numerical_distance": NUMERICAL_DISTANCE},
            agrees_within=HUNDREDTH_DB,
            arrays=False,
            holds=[
                invariant("ground never helps by more than nothing", lambda f, p: (f(p), 1.0), at_most),
                invariant("twice as far is weaker", lambda f, p: (f(2 * p), f(p)), at_most),
                invariant(
                    "close to the aerial next to nothing is lost", lambda f, p: (0.998, f(turned(p, 1e-6))), at_most
                ),
                invariant(
                    "far away, ten times as far keeps a tenth", lambda f, p: (f(turned(p, 1e5)), f(turned(p, 1e4)) / 10)
                ),
            ],
            published=[
                value(
                    "10 km of average land at 1 MHz",
                    given=(1.78787 * np.exp(-1j * np.radians(23.1108)),),
                    wanted=0.352510,
                    within=HUNDREDTH_DB,
                    source=NORTON,
                    known="recomputed",
                ),
                value(
                    "100 km of medium dry ground at 1 MHz",
                    given=(43.5605 * np.exp(-1j * np.radians(41.7757)),),
                    wanted=0.011778,
                    within=HUNDREDTH_DB,
                    source=NORTON,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "dropped the phase of the numerical distance before using it", lambda p: ground_attenuation(abs(p))
                ),
                slip(
                    "used the first term of the far series everywhere: near by it is no good", lambda p: 1 / abs(2 * p)
                ),
                slip(
                    "stopped the far series after one term: at |p| = 20 the next still counts for 7 %",
                    lambda p: ground_attenuation(p) if abs(p) < 20 else 1 / abs(2 * p),
                ),
                slip(
                    "used the handbooks' fitted fraction (2 + 0.3p)/(2 + p + 0.6p²): it is out by some decibels",
                    fitted,
                ),
                slip("returned power, the square of the field's fraction", lambda p: ground_attenuation(p) ** 2),
            ],
        ),
        Question(
            asks=ground_wave_field,
            given={"radiated_power": watts("100 W", "500 kW"), **GROUND_PATH},
            gives="V/m",
            agrees_within=relative(2e-3, because="the two tolerances of its parts together"),
            holds=[
                invariant(
                    "four times the power gives twice the field", lambda f, p, *path: (f(4 * p, *path), 2 * f(p, *path))
                ),
                invariant(
                    "never more than over perfect ground",
                    lambda f, p, d, *ground: (f(p, d, *ground), f.unattenuated_field(p, d)),
                    at_most,
                ),
                invariant(
                    "twice as far is half as strong at the most",
                    lambda f, p, d, *ground: (f(p, 2 * d, *ground), f(p, d, *ground) / 2),
                    at_most,
                ),
            ],
            published=[
                value(
                    "1 kW, 10 km of average land at 1 MHz",
                    given=(1e3, 10e3, 1e6, 0.003, 22.0),
                    wanted=from_decibels(80.456212),
                    within=CURVE,
                    source=NTIA,
                    known="found",
                ),
                value(
                    "1 kW, 10 km of sea at 500 kHz",
                    given=(1e3, 10e3, 0.5e6, 5.0, 70.0),
                    wanted=from_decibels(89.514600),
                    within=CURVE,
                    source=NTIA,
                    known="found",
                ),
                value(
                    "1 kW, 10 km of medium dry ground at 1.5 MHz",
                    given=(1e3, 10e3, 1.5e6, 0.001, 15.0),
                    wanted=from_decibels(66.283159),
                    within=CURVE,
                    source=NTIA,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "left the ground out: that is the unattenuated field",
                    lambda p, d, *ground: unattenuated_field(p, d),
                ),
                slip(
                    "divided by the attenuation: it is a fraction to multiply by",
                    lambda p, d, *ground: unattenuated_field(p, d) / ground_attenuation(numerical_distance(d, *ground)),
                ),
                slip(
                    "squared the attenuation: it is for the field, not for power",
                    lambda p, d, *ground: (
                        unattenuated_field(p, d) * ground_attenuation(numerical_distance(d, *ground)) ** 2
                    ),
                ),
                slip(
                    "taken the power in kilowatts: it comes in watts",
                    lambda p, *path: ground_wave_field(p / 1000, *path),
                ),
            ],
        ),
    ],
    hints=[
        "Take it in four steps: the field over perfect ground; what this ground does in a number p; what p leaves "
        "of the field; and the product. Complex numbers are plain Python: 1j is the unit.",
        "For a series keep two things: the term and the sum so far. In the near series each term is the last one "
        "times -2p and over the next odd number (1, 3, 5, …). In the far series it is the last one times (2n + "
        "1)/(2p). Work out both for every p, then choose with np.where(np.abs(p) < 20, near, far); take np.abs of "
        "it last.",
        "Near: total = 1 - 1j * np.sqrt(np.pi * p) * np.exp(-p); term = 1; then for n in 1 … 100: term = term * -2 "
        "* p / (2 * n - 1) and total = total + term. Far: term = -1 / (2 * p); total = term; then for n in 1 … 9: "
        "term = term * (2 * n + 1) / (2 * p) and total = total + term. To keep the near series from growing out of "
        "bounds, give it np.where(np.abs(p) < 20, p, 1) for p.",
    ],
)
