"""How `solenoid_inductance` is judged."""

import numpy as np

from checker import Exercise, Question, absolute, at_most, invariant, metres, number, refusal, relative, slip, value

from .solenoid_inductance import MU_0, elliptic_integrals, nagaoka_coefficient, solenoid_inductance, wheeler_inductance

COIL = {"turns": number(10, 200), "diameter": metres("10 mm", "150 mm"), "length": metres("10 mm", "200 mm")}
GROVER = 'F. W. Grover, "Inductance Calculations", 1946, Table 36, p. 144'
NBS = "US National Bureau of Standards, Circular 74, 1924, Table 10"
LYLE = "T. R. Lyle, Phil. Trans. R. Soc. A 213, 1914, p. 429"
MICRO = 1e-6


def sheet(turns, diameter, length, coefficient=1.0, mu=MU_0):
    return mu * turns**2 * np.pi * diameter**2 / 4 / length * coefficient


EXERCISE = Exercise(
    title="How much inductance has a coil?",
    questions=[
        Question(
            asks=elliptic_integrals,
            given={"parameter": number(0, 0.999)},
            agrees_within=relative(1e-10, because="each round of the mean doubles the right figures"),
            holds=[
                invariant("the second kind is never more than the first", lambda f, m: (f(m)[1], f(m)[0]), at_most),
                invariant("at 0 both are π/2", lambda f, m: (f(0.0), (np.pi / 2, np.pi / 2))),
                invariant(
                    "Legendre's relation: E K' + E' K − K K' = π/2, where ' means at 1 − m",
                    lambda f, m: (legendre(f(0.25 + m / 2), f(0.75 - m / 2)), np.pi / 2),
                ),
            ],
            no_published="Nagaoka's coefficient, which is built on these, has the printed tables.",
            slips=[
                slip("taken the modulus k for the parameter m = k²", lambda m: elliptic_integrals(m**2)),
                slip("returned them the other way round", lambda m: elliptic_integrals(m)[::-1]),
                slip("started the mean from 1 − m instead of its root", lambda m: elliptic_integrals(1 - (1 - m) ** 2)),
            ],
        ),
        Question(
            asks=nagaoka_coefficient,
            given={"diameter_over_length": number(0.02, 50)},
            agrees_within=relative(1e-8, because="differences of nearly equal terms cost a few figures"),
            holds=[
                invariant("a shorter coil keeps less of it", lambda f, shape: (f(1.1 * shape), f(shape)), at_most),
                invariant("never more than 1", lambda f, shape: (f(shape), 1.0), at_most),
            ],
            published=[
                value(
                    "length over diameter 0.2, 0.5 and 1",
                    given=(np.array([5.0, 2.0, 1.0]),),
                    wanted=np.array([0.319825, 0.525510, 0.688423]),
                    within=absolute(2e-6, because="the printed table is off by up to 1.7e-6"),
                    source=GROVER,
                    known="found",
                ),
                value(
                    "diameter over length 0.1, 0.3 and 0.6",
                    given=(np.array([0.1, 0.3, 0.6]),),
                    wanted=np.array([0.9588, 0.8838, 0.7885]),
                    within=absolute(5e-5, because="printed to four figures"),
                    source=NBS,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("a coil of no diameter, or next to none", (0.0,), (0.000199,)),
                refusal("a coil more than five thousand times as wide as it is long", (1e4,), (5001.0,)),
            ],
            slips=[
                slip("turned the ratio over: diameter over length was given", lambda shape: nagaoka_coefficient(1 / shape)),
                slip("taken radius over length for diameter over length", lambda shape: nagaoka_coefficient(shape / 2)),
                slip(
                    "left the last − k out of the bracket", lambda shape: nagaoka_coefficient(shape) + 4 / (3 * np.pi) * shape
                ),
            ],
        ),
        Question(
            asks=solenoid_inductance,
            given=COIL,
            gives="H",
            agrees_within=relative(1e-8, because="Nagaoka's coefficient is good to that"),
            holds=[
                invariant(
                    "twice the turns on the same former is four times the inductance",
                    lambda f, N, D, l: (f(2 * N, D, l), 4 * f(N, D, l)),
                ),
                invariant(
                    "a coil three times as large in every direction has three times the inductance",
                    lambda f, N, D, l: (f(N, 3 * D, 3 * l), 3 * f(N, D, l)),
                ),
            ],
            published=[
                value(
                    "one turn of sheet, radius 1 m, length 1 m",
                    given=(1.0, 2.0, 1.0),
                    wanted=20.7463e-7,
                    within=relative(5e-6, because="printed to six figures"),
                    source=LYLE,
                    known="found",
                ),
                value(
                    "one turn of sheet, radius 1 m, length 0.5 m",
                    given=(1.0, 2.0, 0.5),
                    wanted=28.85335e-7,
                    within=relative(2e-6, because="printed to seven figures"),
                    source=LYLE,
                    known="found",
                ),
            ],
            slips=[
                slip("left out Nagaoka's coefficient: that is right only for a very long coil", sheet),
                slip("taken the diameter for the radius", lambda N, D, l: sheet(N, 2 * D, l, nagaoka_coefficient(D / l))),
                slip("not squared the turns", lambda N, D, l: solenoid_inductance(N, D, l) / N),
                slip("left out μ0", lambda N, D, l: sheet(N, D, l, nagaoka_coefficient(D / l), mu=1.0)),
                slip("returned microhenries", lambda N, D, l: solenoid_inductance(N, D, l) / MICRO),
            ],
        ),
        Question(
            asks=wheeler_inductance,
            given=COIL,
            where=lambda turns, diameter, length: length >= 0.4 * diameter,
            gives="H",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant(
                    "within 1 % of Nagaoka's coil where the coil is longer than 0.4 diameters",
                    lambda f, N, D, l: (abs(f(N, D, l) / f.solenoid_inductance(N, D, l) - 1), 0.01),
                    at_most,
                ),
            ],
            published=[
                value(
                    "radius 1 inch, length 2 inches, one turn",
                    given=(1.0, 0.0508, 0.0508),
                    wanted=1e-6 / 29,
                    within=relative(1e-9, because="a formula worked by hand: 1 / (9 + 20) µH"),
                    source='H. A. Wheeler, "Simple Inductance Formulas for Radio Coils", Proc. IRE 16, October 1928',
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "put metres where the formula wants inches", lambda N, D, l: 1e-6 * (D / 2 * N) ** 2 / (9 * D / 2 + 10 * l)
                ),
                slip("taken the diameter for the radius", lambda N, D, l: wheeler_inductance(N, 2 * D, l)),
                slip("returned microhenries", lambda N, D, l: wheeler_inductance(N, D, l) / MICRO),
            ],
        ),
    ],
    hints=[
        "Build upwards: the mean of two numbers gives the elliptic integrals, these give Nagaoka's coefficient, and that "
        "times the long coil's inductance gives the answer.",
        "Start from a = 1, b = sqrt(1 − m) and, eight times over, replace (a, b) by ((a + b)/2, sqrt(a b)); before each "
        "step add up 2ⁿ ((a − b)/2)² with n = 1, 2, … Then K = π/(2a) and E = K (1 − (m + sum)/2). "
        "The long coil is μ0 N² (area) / (length).",
        "Eight rounds, for n in range(1, 9), bring the two means together. With u = diameter_over_length: m = u²/(1 + "
        "u²), k = sqrt(m), h = 1/sqrt(1 + u²) and K, E = elliptic_integrals(m): coefficient = 4/(3 π h) × [(h²/m)(K − E) "
        "+ E − k], ValueError where np.any(u < 0.0002) or np.any(u > 5000). The inductance is MU_0 × turns² × π × "
        "diameter²/4 / length × coefficient. Wheeler: with r = diameter/2/INCH and w = length/INCH it is 1e-6 (r × "
        "turns)²/(9 r + 10 w).",
    ],
)


def legendre(of_m, of_rest):
    (K, E), (K_rest, E_rest) = of_m, of_rest
    return E * K_rest + E_rest * K - K * K_rest
