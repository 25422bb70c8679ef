"""How `characteristic_polynomial` is judged.

In the laws and slips of the two meshes: L, R, C the tuned circuit, L3 the tickler, ra and gm the valve, M the mutual
inductance. Of the three: M the coupling, C the tuning, T the throttle, then aerial, tuned, tickler and valve.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    drawn,
    farads,
    henries,
    invariant,
    less,
    ohms,
    picture,
    refusal,
    relative,
    siemens,
    slip,
    value,
)

from .characteristic_polynomial import full_polynomial, leading_pole, three_winding_polynomial, tuned_grid_polynomial
from .given_sets import HELPING, SET, SIMPLE_SET, THE_AERIAL, THE_COIL, THE_VALVE

CLOSE = relative(1e-9, because="sums and products in double precision")
ROOTS = relative(1e-8, because="the roots of a polynomial, found in double precision")
TUNED_GRID = "tuned-grid oscillator of a type 30, exact threshold by Routh's condition; reaction.toml, example"
# reaction.toml, example: L, R, C, L3, ra, gm, M at the threshold, and the frequency of oscillation there.
L, R, C, L3, RA, GM, M, EDGE = 180e-6, 9.0, 1.40723866e-10, 30e-6, 10300.0, 0.9e-3, 1.40889934e-6, 999927.192
AT_EDGE = np.array([C * (L * L3 - M**2), C * (L * RA + L3 * R), R * C * RA + L3 - M * GM * RA, RA])
APART = (20e-6, 105e-12, 200e-12, THE_AERIAL, THE_COIL, (2.0, 48e-6, 0.0, 0.0))
ALIKE = 2.0**-13  # henry, 122 µH: squares of it have no rounding
OF_SETS = [  # to four figures: near those of a set, and no answer to what is asked beside it
    np.array(
        [float(f"{one:.4g}") for one in full_polynomial(15e-6, tuning, throttle, THE_AERIAL, THE_COIL, tickler, THE_VALVE)]
    )
    for tuning in (120e-12, 80e-12, 300e-12)
    for throttle in (50e-12, 200e-12)
    for tickler in HELPING
]
COEFFICIENTS = drawn(
    [np.array(few) for few in ([1.0, 2.0, 5.0], [2.0, 0.4, 50.0], [1.0, -2.0, 10.0], [1.0, 5.0, 17.0, 13.0])]
    + [AT_EDGE, AT_EDGE * [1, 1, 0.5, 1], AT_EDGE * [1, 1, 2, 1], *OF_SETS],
    "three to eight coefficients, of simple polynomials and of reaction sets",
)


def alone(C, T, aerial, tuned, tickler, valve):
    """The polynomial of the three circuits with nothing coupled: the product of each one's own."""
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, *_ = tickler
    _, ra = valve
    two = np.polymul([C1 * L1, C1 * R1, 1], [L * C, R * C + L * g, 1 + R * g])
    return np.polymul(two, [T * L3, T * (ra + R3), 1])


def full_alone(C, T, aerial, tuned, tickler, valve):
    """The same with capacitance from anode to earth, and none from anode to grid."""
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, *_ = tickler
    _, ra, _, Ca = valve
    two = np.polymul([C1 * L1, C1 * R1, 1], [L * C, R * C + L * g, 1 + R * g])
    return np.polymul(two, np.polyadd(np.polymul([T * L3, T * R3, 1], [ra * Ca, 1]), [T * ra, 0]))


def with_capacitances(valve, grid_anode, anode):
    return (*valve[:2], grid_anode * valve[2], anode * valve[3])


def with_mutual(tickler, to_tuned, to_aerial):
    return (*tickler[:2], to_tuned * tickler[2], to_aerial * tickler[3])


def nearly_too_close(one, two):
    """Two windings, each a set's "aerial", "tuned" or "tickler", whose mutual inductance is next to the most that coils can have."""

    def edge(coupling, tuning, throttle, aerial, tuned, tickler, valve):
        inductances = {"aerial": aerial[2], "tuned": tuned[1], "tickler": tickler[1]}
        mutual = 0.995 * np.sqrt(inductances[one] * inductances[two])
        if "tickler" not in (one, two):
            return mutual, tuning, throttle, aerial, tuned, tickler, valve
        mutuals = (mutual, tickler[3]) if "tuned" in (one, two) else (tickler[2], mutual)
        return coupling, tuning, throttle, aerial, tuned, (*tickler[:2], *mutuals), valve

    return edge


NEARLY_TOO_CLOSE = [nearly_too_close(*two) for two in (("aerial", "tuned"), ("tuned", "tickler"), ("aerial", "tickler"))]


def changed(place, change):
    """A wrong set of four formulas: one of them changed, given the symbols too."""

    def wrong(*symbols):
        formulas = list(tuned_grid_polynomial(*symbols))
        formulas[place] += change(*symbols)
        return tuple(formulas)

    return wrong


EXERCISE = Exercise(
    title="What does the set do when left alone?",
    seconds=5.0,
    questions=[
        Question(
            asks=tuned_grid_polynomial,
            picture=picture(none="Its four coefficients differ too much in size to share a picture."),
            given={
                "tuned_inductance": henries("100 µH", "400 µH"),
                "tuned_resistance": ohms("2 Ω", "30 Ω"),
                "tuning_capacitance": farads("40 pF", "500 pF"),
                "tickler_inductance": henries("5 µH", "60 µH"),
                "anode_resistance": ohms("4 kΩ", "30 kΩ"),
                "mutual_inductance": henries("1 µH", "20 µH"),
                "transconductance": siemens("100 µS", "3 mS"),
            },
            gives=("", "", "", ""),
            symbolic=True,
            agrees_within=relative(1e-9, because="a formula has no rounding"),
            no_published="A formula, not a figure; the roots that follow from it are held to one.",
            slips=[
                slip(
                    "turned the tickler round: wound so as to help, its M gm ra is taken away",
                    changed(2, lambda L, R, C, L3, ra, M, gm: 2 * M * gm * ra),
                ),
                slip(
                    "left out what the tuned circuit's current induces in the tickler",
                    changed(0, lambda L, R, C, L3, ra, M, gm: C * M**2),
                ),
                slip(
                    "forgotten that the valve drives with gm ra, not with gm",
                    changed(2, lambda L, R, C, L3, ra, M, gm: M * gm * (ra - 1)),
                ),
                slip(
                    "left out the tickler's own inductance",
                    lambda L, R, C, L3, ra, M, gm: tuned_grid_polynomial(L, R, C, 0 * L3, ra, M, gm),
                ),
                slip("returned them from the constant upwards", lambda *symbols: tuned_grid_polynomial(*symbols)[::-1]),
                slip(
                    "divided all by the first: take the determinant as it stands",
                    lambda *symbols: tuple(c / tuned_grid_polynomial(*symbols)[0] for c in tuned_grid_polynomial(*symbols)),
                ),
            ],
        ),
        Question(
            asks=three_winding_polynomial,
            given=SIMPLE_SET,
            edges=NEARLY_TOO_CLOSE,
            agrees_within=relative(1e-7, because="small differences of products, in double precision"),
            arrays=False,
            holds=[
                invariant(
                    "with nothing coupled it is the product of the three circuits' own",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(0.0, C, T, aerial, tuned, with_mutual(tickler, 0, 0), valve),
                        alone(C, T, aerial, tuned, tickler, valve),
                    ),
                ),
                invariant(
                    "the aerial's coil may be turned round: nothing is left alone in another way",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(-M, C, T, aerial, tuned, with_mutual(tickler, 1, -1), valve),
                        f(M, C, T, aerial, tuned, tickler, valve),
                    ),
                ),
                invariant(
                    "with a cold valve the tickler may be turned round too",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(M, C, T, aerial, tuned, with_mutual(tickler, -1, -1), (0.0, valve[1])),
                        f(M, C, T, aerial, tuned, tickler, (0.0, valve[1])),
                    ),
                ),
            ],
            no_published="A determinant; the figures are those of the thresholds that follow from it.",
            refuses=[
                refusal("a coupling of 130 µH with an aerial's winding of 40 µH", (130e-6, *APART[1:], THE_VALVE[:2])),
                refusal(
                    "a tickler of 48 µH that shares 100 µH with the tuned coil",
                    (*APART[:5], (2.0, 48e-6, 100e-6, 0.0), THE_VALVE[:2]),
                ),
                refusal(
                    "a tickler of 48 µH that shares 50 µH with the aerial's",
                    (*APART[:5], (2.0, 48e-6, 0.0, 50e-6), THE_VALVE[:2]),
                ),
                refusal(
                    "two windings wound wire by wire",
                    (ALIKE, *APART[1:3], (30.0, 160e-12, ALIKE), (6.0, ALIKE, 8e-6), APART[5], THE_VALVE[:2]),
                ),
            ],
            slips=[
                slip(
                    "turned the tickler round",
                    lambda M, C, T, aerial, tuned, tickler, valve: three_winding_polynomial(
                        M, C, T, aerial, tuned, with_mutual(tickler, -1, 1), valve
                    ),
                ),
                slip(
                    "left out the grid's conductance: i2 = (s C + g) v",
                    lambda M, C, T, aerial, tuned, tickler, valve: three_winding_polynomial(
                        M, C, T, aerial, (*tuned[:2], 0.0), tickler, valve
                    ),
                ),
                slip(
                    "left out the mutual inductance of tickler and aerial",
                    lambda M, C, T, aerial, tuned, tickler, valve: three_winding_polynomial(
                        M, C, T, aerial, tuned, with_mutual(tickler, 1, 0), valve
                    ),
                ),
                slip(
                    "driven the tickler with gm v: behind the anode resistance it is gm ra v",
                    lambda M, C, T, aerial, tuned, tickler, valve: three_winding_polynomial(
                        M, C, T, aerial, tuned, (tickler[0] + valve[1] - 1, *tickler[1:]), (valve[0], 1.0)
                    ),
                ),
                slip("returned them from the constant upwards", lambda *inputs: three_winding_polynomial(*inputs)[::-1]),
                slip(
                    "exchanged the tuning and the throttle condenser",
                    lambda M, C, T, *rest: three_winding_polynomial(M, T, C, *rest),
                ),
            ],
        ),
        Question(
            asks=full_polynomial,
            given=SET,
            edges=NEARLY_TOO_CLOSE,
            agrees_within=relative(1e-7, because="small differences of products, in double precision"),
            arrays=False,
            holds=[
                invariant(
                    "a valve without capacitance leaves the three windings' polynomial, with nothing for s⁷",
                    lambda f, *parts: (
                        f(*parts[:-1], with_capacitances(parts[-1], 0, 0)),
                        np.append(0.0, f.three_winding_polynomial(*parts[:-1], parts[-1][:2])),
                    ),
                ),
                invariant(
                    "with nothing coupled, by coils or by condenser, it is the product of the three circuits' own",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(0.0, C, T, aerial, tuned, with_mutual(tickler, 0, 0), with_capacitances(valve, 0, 1)),
                        full_alone(C, T, aerial, tuned, tickler, valve),
                    ),
                ),
                invariant(
                    "the aerial's coil may be turned round: nothing is left alone in another way",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(-M, C, T, aerial, tuned, with_mutual(tickler, 1, -1), valve),
                        f(M, C, T, aerial, tuned, tickler, valve),
                    ),
                ),
                invariant(
                    "with a cold valve everything dies away, however grid and anode are joined",
                    lambda f, *parts: (leading_pole(f(*parts[:-1], (0.0, *parts[-1][1:]))).real, 0.0),
                    less,
                ),
            ],
            no_published="A determinant; the figures are those of the thresholds that follow from it.",
            refuses=[
                refusal("a coupling of 130 µH with an aerial's winding of 40 µH", (130e-6, *APART[1:], THE_VALVE)),
                refusal(
                    "a tickler of 48 µH that shares 100 µH with the tuned coil",
                    (*APART[:5], (2.0, 48e-6, 100e-6, 0.0), THE_VALVE),
                ),
                refusal(
                    "a tickler of 48 µH that shares 50 µH with the aerial's", (*APART[:5], (2.0, 48e-6, 0.0, 50e-6), THE_VALVE)
                ),
                refusal(
                    "two windings wound wire by wire",
                    (ALIKE, *APART[1:3], (30.0, 160e-12, ALIKE), (6.0, ALIKE, 8e-6), APART[5], THE_VALVE),
                ),
            ],
            slips=[
                slip(
                    "turned the tickler round",
                    lambda M, C, T, aerial, tuned, tickler, valve: full_polynomial(
                        M, C, T, aerial, tuned, with_mutual(tickler, -1, 1), valve
                    ),
                ),
                slip(
                    "left out the condenser between grid and anode",
                    lambda *parts: full_polynomial(*parts[:-1], with_capacitances(parts[-1], 0, 1)),
                ),
                slip(
                    "left out the anode's capacitance to earth",
                    lambda *parts: full_polynomial(*parts[:-1], with_capacitances(parts[-1], 1, 0)),
                ),
                slip(
                    "left the condenser between grid and anode out of i2 = (s C + g) v + s Cga (v − va): v is on it too",
                    lambda M, C, T, *rest: full_polynomial(M, C - rest[-1][2], T, *rest),
                ),
                slip(
                    "turned the sign of the current from grid to anode: it is s Cga (v − va)",
                    lambda *parts: full_polynomial(*parts[:-1], with_capacitances(parts[-1], -1, 1)),
                ),
                slip(
                    "divided the anode's row by ra: take the equations as they stand",
                    lambda *parts: full_polynomial(*parts) / parts[-1][1],
                ),
                slip("returned them from the constant upwards", lambda *inputs: full_polynomial(*inputs)[::-1]),
            ],
        ),
        Question(
            asks=leading_pole,
            given={"coefficients": COEFFICIENTS},
            gives="rad/s",
            agrees_within=ROOTS,
            arrays=False,
            holds=[
                invariant("three times every coefficient changes no root", lambda f, c: (f(3 * c), f(c))),
                invariant(
                    "twice as fast a circuit has its pole twice as far out",
                    lambda f, c: (f(c / 2.0 ** np.arange(len(c))[::-1]), 2 * f(c)),
                ),
            ],
            published=[
                value(
                    "two meshes at their threshold: the pole stands on the axis, at 999.927 kHz",
                    given=(AT_EDGE,),
                    wanted=2j * np.pi * EDGE,
                    within=relative(1e-6, because="M is printed to nine figures"),
                    source=TUNED_GRID,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken the root farthest from 0: it is the one farthest to the right that outlasts the others",
                    lambda c: complex(max(np.roots(c), key=lambda s: (abs(s), s.real, s.imag))),
                ),
                slip("returned the pole with the negative imaginary part", lambda c: np.conj(leading_pole(c))),
                slip("read the coefficients from the constant upwards", lambda c: leading_pole(c[::-1])),
                slip("turned the sign of the real part: a pole to the left dies away", lambda c: -np.conj(leading_pole(c))),
                slip("returned hertz: a pole is in radians a second", lambda c: leading_pole(c) / (2 * np.pi)),
            ],
        ),
    ],
    hints=[
        "Put the equations in a square: one row for each, one column for each unknown. Left alone, nothing stands on the "
        "right-hand side; currents other than none are possible only if the determinant is 0.",
        "Two meshes: a d − b c, sorted by powers of s; sympy.Poly(determinant, s).all_coeffs() sorts it. Three, and four: each "
        "entry of the square is a polynomial. numpy.polynomial.Polynomial adds and multiplies them, starting from "
        "s = Polynomial([0, 1]); `determinant`, which is there already, takes the rows, each entry a polynomial, and gives the "
        "coefficients upwards from the constant. Sort i2 by what multiplies v and what multiplies va.",
        "Names first: M12, C, C3 = coupling, tuning, throttle; R1, C1, L1 = aerial; R, L, g = tuned; R3, L3, M23, M13 = "
        "tickler; gm, ra = valve (of four: gm, ra, Cga, Ca = valve). refuse_impossible_windings(coupling, aerial, tuned, "
        "tickler). With s = Polynomial([0, 1]) and v = the grid's volts put i2 = (s C + g) v into the rows. First row: 1 "
        "+ s C1 (R1 + s L1), s² C1 M12 (s C + g), s² C1 M13. Second: s M12, 1 + (R + s L)(s C + g), s M23. Third: s² C3 "
        "M13, s C3 (gm ra + s M23 (s C + g)), 1 + s C3 (ra + R3 + s L3). Return determinant(rows)[6::-1]. Four: G = s (C "
        "+ Cga) + g for the grid, A = −s Cga for the anode. First row as before with G, and s² C1 M12 A; second with G, "
        "and (R + s L) A; third: s² C3 M13, s² C3 M23 G, 1 + s C3 (R3 + s L3), s C3 (s M23 A − 1); fourth: 0, (gm + A) "
        "ra, ra, 1 + s ra (Ca + Cga). Return determinant(rows)[7::-1]. A number alone is Polynomial([number]). Pole: "
        "max(np.roots(coefficients), key=lambda p: (p.real, p.imag)).",
    ],
)
