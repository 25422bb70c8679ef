"""How `field_strength` is judged."""

import numpy as np

from checker import Exercise, Question, at_most, invariant, picture, relative, slip, value
from checker.checks.given import drawn, hertz, metres, number, siemens_per_metre, tidy_values, watts

from .field_strength import (
    PERMITTIVITY,
    SPEED_OF_LIGHT,
    attenuation_far,
    attenuation_near,
    ground_attenuation,
    ground_wave_field,
    numerical_distance,
    unattenuated_field,
)

IMPEDANCE = relative(1e-3, because="120π ohm or 376.73 ohm for space: the two differ by 0.07 %")
SERIES = relative(1e-3, because="a hundredth of a decibel: how many terms you take is your choice")
NORTON = "K. A. Norton, Proc. IRE 24, 1367 (1936)"
NTIA = "NTIA/ITS LF/MF smooth-earth validation set (Report 99-368, 1999)"
CURVE = relative(0.006, because="0.05 dB: the globe's curve, which flat ground leaves out, at 10 km")
GROUND_PATH = {
    "distance": metres("1 km", "100 km"),
    "frequency": hertz("150 kHz", "1.7 MHz"),
    "conductivity": siemens_per_metre("0.1 mS/m", "5 S/m"),
    "relative_permittivity": number(3, 80),
}


def numerical_distances(low, high):
    """Complex numbers of size `low` to `high`, as ground gives them."""
    return drawn(
        [
            size * complex(np.exp(-1j * np.radians(degrees)))
            for size in tidy_values(low, high)[:300]
            for degrees in range(0, 86, 5)
        ],
        f"size {low:g} to {high:g}, phase 0 to -85°",
    )


def from_decibels(above_microvolt):
    return 1e-6 * 10 ** (above_microvolt / 20)


def turned(p, size):
    """A numerical distance of the same phase as p."""
    return p / abs(p) * size


def over_ground(ground):
    """The slip of one who has a formula of their own for the ground's complex permittivity."""

    def wrong(d, f, sigma, eps):
        return -1j * np.pi * d * f / SPEED_OF_LIGHT * (ground(f, sigma, eps) - 1) / ground(f, sigma, eps) ** 2

    return wrong


def root_term(p):
    return -1j * np.sqrt(np.pi * p) * np.exp(-p)


def sum_of_terms(step):
    """step/1 + step²/(1·3) + step³/(1·3·5) + …"""
    return np.sum(np.cumprod(step / np.arange(1, 201, 2)))


def attenuation(p):
    return attenuation_near(p) if abs(p) < 20 else attenuation_far(p)


def fitted(p):
    size, lag = abs(p), -np.angle(p)
    return (2 + 0.3 * size) / (2 + size + 0.6 * size**2) - np.sqrt(size / 2) * np.exp(-0.6 * size) * np.sin(lag)


EXERCISE = Exercise(
    title="How strong is the wave here?",
    marks=20,
    questions=[
        Question(
            asks=unattenuated_field,
            picture=picture(along="distance"),
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
                    "let the aerial send alike in all directions, below ground too: 30 for 90", lambda p, d: np.sqrt(30 * p) / d
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
            agrees_within=relative(1e-9, because="one formula, its constants at the top of the file"),
            holds=[
                invariant(
                    "twice as far is twice the numerical distance", lambda f, d, *path: (f(2 * d, *path), 2 * f(d, *path))
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
                    over_ground(lambda f, sigma, eps: eps - 1j * sigma / (f * PERMITTIVITY)),
                ),
                slip(
                    "added the conductivity with +j: for time as exp(+jωt) it is -j",
                    over_ground(lambda f, sigma, eps: eps + 1j * sigma / (2 * np.pi * f * PERMITTIVITY)),
                ),
                slip(
                    "left out j times the conductivity's part: loss is a quarter of a cycle out of step",
                    over_ground(lambda f, sigma, eps: eps + sigma / (2 * np.pi * f * PERMITTIVITY)),
                ),
                slip(
                    "left out the 1 in (e - 1)",
                    lambda d, f, sigma, eps: (
                        -1j * np.pi * d * f / SPEED_OF_LIGHT / (eps - 1j * sigma / (2 * np.pi * f * PERMITTIVITY))
                    ),
                ),
                slip("returned its size only: its phase is needed too", lambda *path: abs(numerical_distance(*path))),
                slip("used 2π for π: p has half of the wave's own phase", lambda *path: 2 * numerical_distance(*path)),
            ],
        ),
        Question(
            asks=attenuation_near,
            given={"numerical_distance": numerical_distances(0.001, 20)},
            agrees_within=SERIES,
            arrays=False,
            holds=[
                invariant(
                    "with hardly any ground crossed F is 1 - j sqrt(πp)",
                    lambda f, p: (f(turned(p, 1e-4)), 1 - 1j * np.sqrt(np.pi * turned(p, 1e-4))),
                ),
                invariant("its size is never above 1", lambda f, p: (np.abs(f(p)), 1.0), at_most),
                invariant(
                    "where |p| is 20 it meets the far series", lambda f, p: (f(turned(p, 20)), f.attenuation_far(turned(p, 20)))
                ),
            ],
            published=[
                value(
                    "p = 1: 1 - 2 D(1) - j sqrt(π)/e with Dawson's integral D(1) = 0.538 079 5069",
                    given=(1 + 0j,),
                    wanted=complex(1 - 2 * 0.5380795069, -np.sqrt(np.pi) / np.e),
                    within=SERIES,
                    source="M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, table 7.5",
                    known="memory",
                ),
                value(
                    "p = 0.5 - 0.25j, by the complex error function",
                    given=(0.5 - 0.25j,),
                    wanted=0.244871470273 - 0.558316581529j,
                    within=SERIES,
                    source=NORTON,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the term with the square root and exp(-p)", lambda p: attenuation_near(p) - root_term(p)),
                slip("added the term with the square root: it is taken away", lambda p: attenuation_near(p) - 2 * root_term(p)),
                slip(
                    "given all the terms after the root the same sign: they take turns",
                    lambda p: 1 + root_term(p) + sum_of_terms(2 * p),
                ),
                slip("divided by 1, 2, 3, …: it is the odd numbers, 1·3·5 …", lambda p: np.exp(-2 * p) + root_term(p)),
                slip("returned the size of F: its phase is wanted too", lambda p: abs(attenuation_near(p))),
                slip("dropped the phase of p before using it", lambda p: attenuation_near(abs(p))),
            ],
        ),
        Question(
            asks=attenuation_far,
            given={"numerical_distance": numerical_distances(20, 2000)},
            agrees_within=SERIES,
            arrays=False,
            holds=[
                invariant(
                    "very far off, ten times as far keeps a tenth", lambda f, p: (f(turned(p, 1e5)), f(turned(p, 1e4)) / 10)
                ),
                invariant(
                    "where |p| is 20 it meets the near series",
                    lambda f, p: (f(turned(p, 20)), f.attenuation_near(turned(p, 20))),
                ),
            ],
            published=[
                value(
                    "p = 30 - 10j, by the complex error function",
                    given=(30 - 10j,),
                    wanted=-0.015635464214 - 0.005506165688j,
                    within=SERIES,
                    source=NORTON,
                    known="recomputed",
                )
            ],
            slips=[
                slip("stopped after one term: at |p| = 20 the next still counts for 7 %", lambda p: -1 / (2 * p)),
                slip("lost the minus sign", lambda p: -attenuation_far(p)),
                slip("written p for 2p all the way through", lambda p: attenuation_far(p / 2)),
                slip(
                    "left out the odd numbers, 1·3·5 …: that is a series of bare powers",
                    lambda p: -1 / (2 * p) / (1 - 1 / (2 * p)),
                ),
                slip("returned the size of F: its phase is wanted too", lambda p: abs(attenuation_far(p))),
            ],
        ),
        Question(
            asks=ground_attenuation,
            given={"numerical_distance": numerical_distances(0.001, 1000)},
            agrees_within=SERIES,
            arrays=False,
            holds=[
                invariant("ground takes, it never gives", lambda f, p: (f(p), 1.0), at_most),
                invariant("twice as far is weaker", lambda f, p: (f(2 * p), f(p)), at_most),
                invariant(
                    "close to the transmitter next to nothing is lost", lambda f, p: (0.998, f(turned(p, 1e-6))), at_most
                ),
                invariant("far away, ten times as far keeps a tenth", lambda f, p: (f(turned(p, 1e5)), f(turned(p, 1e4)) / 10)),
            ],
            published=[
                value(
                    "10 km of average land at 1 MHz",
                    given=(1.78787 * np.exp(-1j * np.radians(23.1108)),),
                    wanted=0.352510,
                    within=SERIES,
                    source=NORTON,
                    known="recomputed",
                ),
                value(
                    "100 km of medium dry ground at 1 MHz",
                    given=(43.5605 * np.exp(-1j * np.radians(41.7757)),),
                    wanted=0.011778,
                    within=SERIES,
                    source=NORTON,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned F itself: its size is wanted, np.abs", attenuation),
                slip("dropped the phase of p before using it", lambda p: ground_attenuation(abs(p))),
                slip("used the far series everywhere: near by it is no good", lambda p: abs(attenuation_far(p))),
                slip("used the handbooks' fitted fraction (2 + 0.3p)/(2 + p + 0.6p²): it is out by some decibels", fitted),
                slip("returned power, the square of the field's fraction", lambda p: ground_attenuation(p) ** 2),
            ],
        ),
        Question(
            asks=ground_wave_field,
            picture=picture(along="distance"),
            given={"radiated_power": watts("100 W", "500 kW"), **GROUND_PATH},
            gives="V/m",
            agrees_within=relative(2e-3, because="the two tolerances of its parts together"),
            holds=[
                invariant("four times the power gives twice the field", lambda f, p, *path: (f(4 * p, *path), 2 * f(p, *path))),
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
                slip("left the ground out: that is the unattenuated field", lambda p, d, *ground: unattenuated_field(p, d)),
                slip(
                    "divided by the attenuation: it is a fraction to multiply by",
                    lambda p, d, *ground: unattenuated_field(p, d) / ground_attenuation(numerical_distance(d, *ground)),
                ),
                slip(
                    "squared the attenuation: it is for the field, not for power",
                    lambda p, d, *ground: unattenuated_field(p, d) * ground_attenuation(numerical_distance(d, *ground)) ** 2,
                ),
                slip("taken the power in kilowatts: it comes in watts", lambda p, *path: ground_wave_field(p / 1000, *path)),
            ],
        ),
    ],
    hints=[
        "Take it in steps: the field over perfect ground; what this ground does, in a number p; what p leaves of "
        "the field; and the product. Complex numbers are plain Python: 1j is the unit.",
        "For a series keep two things: the term and the sum so far. In the near series each term is the last one "
        "times -2p over the next odd number (1, 3, 5, …). In the far series it is the last one times the next odd "
        "number (3, 5, 7, …) over 2p. ground_attenuation takes the near one where |p| is below 20, the far one "
        "elsewhere, and the size of what comes out.",
        "With p = np.asarray(numerical_distance, dtype=complex). Near: total = 1 - 1j * np.sqrt(np.pi * p) * np.exp(-p); "
        "term = 1; then for odd in range(1, 201, 2): term = term * -2 * p / odd and total = total + term. Far: term = "
        "total = -1 / (2 * p); then for odd in range(3, 21, 2): term = term * odd / (2 * p) and total = total + term (no "
        "*= or +=: they change an array in place). For arrays np.piecewise(p, [np.abs(p) < 20], [attenuation_near, "
        "attenuation_far]) gives each number to the series that suits it.",
    ],
)
