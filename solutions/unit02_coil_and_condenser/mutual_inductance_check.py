"""How `mutual_inductance` is judged."""

import numpy as np

from checker import Exercise, Question, henries, invariant, less, metres, refusal, relative, slip, value, whole

from .mutual_inductance import (
    coaxial_coils,
    coaxial_filaments,
    coupling_coefficient,
    mutual_from_series,
    turn_positions,
)
from .solenoid_inductance import MU_0, elliptic_integrals, solenoid_inductance

SP169 = "E. B. Rosa and F. W. Grover, US National Bureau of Standards, Scientific Paper 169, 1916"
SHEETS = "two current sheets by the method of F. W. Grover, Inductance Calculations, 1946, ch. 15"
FORMULA = relative(1e-9, because="one formula, double precision")
RADIUS = metres("10 mm", "100 mm")
WINDING = metres("10 mm", "40 mm")


def maxwell(r1, r2, d, size=np.sqrt, squared=False, swapped=False):
    """Maxwell's formula with one thing in it that may be wrong."""
    m = 4 * r1 * r2 / ((r1 + r2) ** 2 + d**2)
    k = np.sqrt(m)
    K, E = elliptic_integrals(m**2 if squared else m)[:: -1 if swapped else 1]
    return MU_0 * size(r1 * r2) * ((2 / k - k) * K - 2 / k * E)


def pairs(N1, D1, l1, N2, D2, l2, d):
    """Mutual inductance of every turn of the one coil with every turn of the other."""
    between = turn_positions(N1, l1)[:, np.newaxis] - turn_positions(N2, l2) - d
    return coaxial_filaments(D1 / 2, D2 / 2, between)


def most_they_could_share(N1, D1, l1, N2, D2, l2, d):
    return np.sqrt(solenoid_inductance(N1, D1, l1) * solenoid_inductance(N2, D2, l2))


EXERCISE = Exercise(
    title="How much of one coil's field does another catch?",
    seconds=5.0,
    questions=[
        Question(
            asks=coaxial_filaments,
            given={"radius_1": RADIUS, "radius_2": RADIUS, "distance": metres("2 mm", "100 mm")},
            gives="H",
            agrees_within=relative(1e-9, because="differences of nearly equal terms cost a few figures"),
            holds=[
                invariant(
                    "it does not matter which of the two carries the current", lambda f, r1, r2, d: (f(r1, r2, d), f(r2, r1, d))
                ),
                invariant("farther apart, they share less", lambda f, r1, r2, d: (f(r1, r2, 1.1 * d), f(r1, r2, d)), less),
                invariant(
                    "three times as large in every direction is three times as much",
                    lambda f, r1, r2, d: (f(3 * r1, 3 * r2, 3 * d), 3 * f(r1, r2, d)),
                ),
            ],
            published=[
                value(
                    "radii 25 cm and 20 cm, 10 cm apart",
                    given=(0.25, 0.20, 0.10),
                    wanted=248.7875e-9,
                    within=relative(1e-6, because="printed to seven figures"),
                    source=SP169,
                    known="memory",
                ),
                value(
                    "radii 10 cm and 5 cm in one plane",
                    given=(0.10, 0.05, 0.0),
                    wanted=54.8617947347e-9,
                    within=FORMULA,
                    source="Maxwell's formula, with 40 figures",
                    known="recomputed",
                ),
            ],
            refuses=[refusal("a turn that lies upon the other", (0.05, 0.05, 0.0))],
            slips=[
                slip("taken the radii for diameters", lambda r1, r2, d: coaxial_filaments(r1 / 2, r2 / 2, d)),
                slip("given the elliptic integrals m², not m = k²", lambda r1, r2, d: maxwell(r1, r2, d, squared=True)),
                slip("exchanged K and E", lambda r1, r2, d: maxwell(r1, r2, d, swapped=True)),
                slip("left out the root over r₁ r₂", lambda r1, r2, d: maxwell(r1, r2, d, size=lambda area: area)),
                slip("left out μ₀", lambda r1, r2, d: coaxial_filaments(r1, r2, d) / MU_0),
            ],
        ),
        Question(
            asks=turn_positions,
            given={"turns": whole(1, 60), "length": metres("5 mm", "100 mm")},
            gives="m",
            arrays=False,
            agrees_within=relative(1e-9, because="one formula, double precision", floor=1e-12),
            holds=[
                invariant("neighbouring turns are one pitch apart", lambda f, N, b: (np.diff(f(N, b)), b / N)),
                invariant(
                    "as much of the coil lies on one side of the middle as on the other",
                    lambda f, N, b: (f(N, b), -f(N, b)[::-1]),
                ),
            ],
            no_published="A matter of counting.",
            slips=[
                slip(
                    "set the first and the last turn at the very ends: each lies half a pitch inside",
                    lambda N, b: np.linspace(-b / 2, b / 2, N),
                ),
                slip("measured from the end of the winding, not from its middle", lambda N, b: (np.arange(N) + 0.5) * b / N),
                slip("left out the half: turn 0 lies half a pitch from the end", lambda N, b: np.arange(N) * b / N - b / 2),
            ],
        ),
        Question(
            asks=coaxial_coils,
            given={
                "turns_1": whole(10, 40),
                "diameter_1": metres("60 mm", "100 mm"),
                "length_1": WINDING,
                "turns_2": whole(10, 40),
                "diameter_2": metres("20 mm", "50 mm"),
                "length_2": WINDING,
                "distance": metres("0 mm", "100 mm"),
            },
            gives="H",
            arrays=False,
            agrees_within=relative(1e-9, because="a sum of a few hundred terms, each good to that"),
            holds=[
                invariant(
                    "it does not matter which coil carries the current",
                    lambda f, *coils: (f(*coils), f(*coils[3:6], *coils[:3], coils[6])),
                ),
                invariant("either side of the large coil is alike", lambda f, *coils: (f(*coils), f(*coils[:6], -coils[6]))),
                invariant(
                    "less than the root of the product of both inductances: k is below 1",
                    lambda f, *coils: (f(*coils), most_they_could_share(*coils)),
                    less,
                ),
            ],
            published=[
                value(
                    "50 turns on 75 mm, 50 mm long; 15 turns on 60 mm, 15 mm long, 30 mm from the middle",
                    given=(50, 0.075, 0.05, 15, 0.06, 0.015, 0.03),
                    wanted=17.8883912697e-6,
                    within=relative(3e-4, because="wires 1 mm apart are not quite a sheet"),
                    source=SHEETS,
                    known="recomputed",
                ),
            ],
            refuses=[refusal("a coil wound upon itself", (10, 0.05, 0.02, 10, 0.05, 0.02, 0.0))],
            slips=[
                slip(
                    "measured the distance between the near ends: it runs from middle to middle",
                    lambda N1, D1, l1, N2, D2, l2, d: coaxial_coils(N1, D1, l1, N2, D2, l2, d + (l1 + l2) / 2),
                ),
                slip(
                    "set all the turns of a coil at its middle",
                    lambda N1, D1, l1, N2, D2, l2, d: N1 * N2 * coaxial_filaments(D1 / 2, D2 / 2, d),
                ),
                slip(
                    "given diameters where coaxial_filaments wants radii",
                    lambda N1, D1, l1, N2, D2, l2, d: coaxial_coils(N1, 2 * D1, l1, N2, 2 * D2, l2, d),
                ),
                slip(
                    "paired each turn with one turn only: every turn of one coil acts on every turn of the other",
                    lambda *coils: np.trace(pairs(*coils)),
                ),
                slip("taken the mean over the pairs: it is their sum", lambda *coils: pairs(*coils).mean()),
            ],
        ),
        Question(
            asks=coupling_coefficient,
            given={
                "mutual_inductance": henries("1 µH", "20 µH"),
                "inductance_1": henries("20 µH", "500 µH"),
                "inductance_2": henries("20 µH", "500 µH"),
            },
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "it does not matter which coil is called the first", lambda f, M, L1, L2: (f(M, L1, L2), f(M, L2, L1))
                ),
                invariant(
                    "three times the turns on one coil leave it as it is",
                    lambda f, M, L1, L2: (f(3 * M, 9 * L1, L2), f(M, L1, L2)),
                ),
                invariant("a coil is fully coupled to itself", lambda f, M, L1, L2: (f(L1, L1, L1), 1.0)),
            ],
            published=[
                value(
                    "100 turns on 10 cm and 100 on 8 cm, both 10 cm long, one in the other",
                    given=(416.096007548e-6, 679.445879502e-6, 464.316131835e-6),
                    wanted=0.740814079625,
                    within=FORMULA,
                    source=SHEETS,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a coupling closer than any coils can have", (300e-6, 200e-6, 200e-6), (201e-6, 200e-6, 200e-6)),
                refusal("the same with one coil turned over", (-300e-6, 200e-6, 200e-6), (-201e-6, 200e-6, 200e-6)),
            ],
            slips=[
                slip("left out the root under the line", lambda M, L1, L2: M / (L1 * L2)),
                slip(
                    "divided by the mean of the inductances: it is the root of their product",
                    lambda M, L1, L2: 2 * M / (L1 + L2),
                ),
                slip("turned the fraction over", lambda M, L1, L2: np.sqrt(L1 * L2) / M),
                slip("squared it", lambda M, L1, L2: M**2 / (L1 * L2)),
            ],
        ),
        Question(
            asks=mutual_from_series,
            given={"inductance_aiding": henries("200 µH", "500 µH"), "inductance_opposing": henries("20 µH", "199 µH")},
            gives="H",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "two readings made from L₁ + L₂ ± 2M give M back",
                    lambda f, L1, L2: (f(L1 + L2 + L2 / 2, L1 + L2 - L2 / 2), L2 / 4),
                ),
                invariant("no difference, no mutual inductance", lambda f, L1, L2: (1 + f(L1, L1), 1.0)),
            ],
            no_published="It follows from L₁ + L₂ ± 2M.",
            slips=[
                slip("divided by 2: the readings differ by four times M", lambda aiding, opposing: (aiding - opposing) / 2),
                slip("left out the division by 4", lambda aiding, opposing: aiding - opposing),
                slip("added the readings: that is where M drops out", lambda aiding, opposing: (aiding + opposing) / 4),
                slip("taken them the wrong way round", lambda aiding, opposing: (opposing - aiding) / 4),
            ],
        ),
    ],
    hints=[
        "Two single turns come first: Maxwell's formula is in the docstring, and elliptic_integrals is yours "
        "already. A coil is so many single turns, each at its own place along the axis.",
        "m = 4 r₁ r₂ / ((r₁ + r₂)² + d²), k = sqrt(m), and K, E = elliptic_integrals(m). The places of the turns "
        "are (n + 1/2) l/N − l/2 with n = 0 … N − 1. Every turn of one coil acts on every turn of the other: N₁ N₂ "
        "pairs to add up.",
        "With m = 4 × radius_1 × radius_2/((radius_1 + radius_2)² + distance²), k = sqrt(m) and K, E = "
        "elliptic_integrals(m): MU_0 × sqrt(radius_1 × radius_2) × ((2/k − k) K − 2/k × E), ValueError where np.any(m >= "
        "1). For two coils: z1 = turn_positions(turns_1, length_1), z2 = distance + turn_positions(turns_2, length_2), "
        "then coaxial_filaments(diameter_1/2, diameter_2/2, z1[:, np.newaxis] − z2).sum(). Coupling: mutual_inductance / "
        "sqrt(inductance_1 × inductance_2), ValueError where the size of that is above 1 + 1e-9 (np.any, np.abs). In "
        "series the readings are both inductances plus, and less, twice the mutual one: their difference is four times "
        "it.",
    ],
)
