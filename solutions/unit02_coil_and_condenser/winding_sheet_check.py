"""How `winding_sheet` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    exactly,
    henries,
    invariant,
    less,
    metres,
    number,
    refusal,
    relative,
    slip,
    value,
)

from .solenoid_inductance import MU_0, solenoid_inductance
from .winding_sheet import close_wound_inductance, turns_needed, whole_turns, wire_length

TURNS = number(5, 200)
FORMER = metres("40 mm", "100 mm")
COVERED = metres("200 µm", "1 mm")
WANTED = {"inductance": henries("20 µH", "500 µH"), "former_diameter": FORMER, "covered_diameter": COVERED}
WOUND = {"turns": TURNS, "former_diameter": FORMER, "covered_diameter": COVERED}
LONGEST = close_wound_inductance(21_000.0, 0.02, 1e-3)  # henry: a thousand diameters of 21 mm, turn by turn
TOO_MUCH = refusal("1 nH on a 75 mm tube: one turn is already more", (1e-9, 0.075, 0.5e-3))
JUST_TOO_MUCH = refusal(
    "less than one turn of 0.5 mm wire has on a 75 mm tube",
    (0.9 * close_wound_inductance(1.0, 0.075, 0.5e-3), 0.075, 0.5e-3),
    (0.999 * close_wound_inductance(1.0, 0.075, 0.5e-3), 0.075, 0.5e-3),
)
TOO_LITTLE = refusal(
    "14 mH of 1 mm wire on a 20 mm tube: it would be over a thousand diameters long",
    (14e-3, 0.02, 1e-3),
    (1.001 * LONGEST, 0.02, 1e-3),
)
# Just more than one turn gives, and just less than a coil a thousand diameters long.
ENDS = [
    lambda inductance, former_diameter, covered_diameter: (
        1.001 * close_wound_inductance(1.0, former_diameter, covered_diameter),
        former_diameter,
        covered_diameter,
    ),
    lambda inductance, former_diameter, covered_diameter: (0.999 * LONGEST, 0.02, 1e-3),
]
LYLE = "test values of an open numerical library, which cites T. R. Lyle, Phil. Trans. R. Soc. A 213, 1914, p. 429"


def very_long(L, former, wire):
    """Turns by the formula of a coil without ends."""
    return L * wire / (MU_0 * np.pi * (former + wire) ** 2 / 4)


def next_to_half_a_turn(share):
    """An inductance so far on the way from that of fifty turns to that of one more."""

    def edge(inductance, former_diameter, covered_diameter):
        fewer, more = close_wound_inductance(np.array([50.0, 51.0]), former_diameter, covered_diameter)
        return float(fewer + share * (more - fewer)), former_diameter, covered_diameter

    return edge


EXERCISE = Exercise(
    title="How many turns shall I wind?",
    questions=[
        Question(
            asks=close_wound_inductance,
            given=WOUND,
            gives="H",
            agrees_within=relative(1e-8, because="Nagaoka's coefficient is good to that"),
            holds=[
                invariant("one more turn is more inductance", lambda f, N, D, w: (f(N, D, w), f(N + 1, D, w)), less),
                invariant(
                    "three times as large in every direction is three times as much",
                    lambda f, N, D, w: (f(N, 3 * D, 3 * w), 3 * f(N, D, w)),
                ),
            ],
            published=[
                value(
                    "one turn of a strip a metre thick and wide on a metre's tube: radius 1 m, length 1 m",
                    given=(1.0, 1.0, 1.0),
                    wanted=20.7463e-7,
                    within=relative(5e-6, because="printed to six figures"),
                    source=LYLE,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "taken the tube's diameter: the wire's centre lies half a wire outside it",
                    lambda N, D, w: solenoid_inductance(N, D, N * w),
                ),
                slip(
                    "added the wire twice: from centre to centre it counts once",
                    lambda N, D, w: solenoid_inductance(N, D + 2 * w, N * w),
                ),
                slip(
                    "made the winding one wire long: it is turns times the wire",
                    lambda N, D, w: solenoid_inductance(N, D + w, w),
                ),
                slip(
                    "counted the pitches between the turns: the winding is N wires long, not N − 1",
                    lambda N, D, w: solenoid_inductance(N, D + w, (N - 1) * w),
                ),
            ],
        ),
        Question(
            asks=turns_needed,
            given=WANTED,
            edges=ENDS,
            gives="turns",
            arrays=False,
            agrees_within=relative(1e-6, because="halve the interval until it is a millionth of a turn"),
            holds=[
                invariant("more inductance wants more turns", lambda f, L, D, w: (f(L, D, w), f(1.1 * L, D, w)), less),
                invariant("a thicker wire wants more turns", lambda f, L, D, w: (f(L, D, w), f(L, D, 1.1 * w)), less),
                invariant(
                    "a coil three times as large has as many turns for three times the inductance",
                    lambda f, L, D, w: (f(3 * L, 3 * D, 3 * w), f(L, D, w)),
                ),
                invariant(
                    "the inductance of 2000 turns wants 2000 turns",
                    lambda f, L, D, w: (f(f.close_wound_inductance(2000.0, D, w), D, w), 2000.0),
                ),
                invariant(
                    "a turn and a half is a coil too", lambda f, L, D, w: (f(f.close_wound_inductance(1.5, D, w), D, w), 1.5)
                ),
            ],
            refuses=[TOO_MUCH, JUST_TOO_MUCH, TOO_LITTLE],
            no_published="It is close_wound_inductance, turned round.",
            slips=[
                slip("used the long coil's formula, μ₀ N² A / l without Nagaoka's coefficient", very_long),
                slip("rounded to whole turns: that is the next function", lambda L, D, w: float(whole_turns(L, D, w))),
                slip("taken the tube's diameter for the winding's", lambda L, D, w: turns_needed(L, D - w, w)),
            ],
        ),
        Question(
            asks=whole_turns,
            given=WANTED,
            edges=[
                *ENDS,
                next_to_half_a_turn(0.495),
                next_to_half_a_turn(0.505),
                *[lambda L, D, w: (1.05 * L, D, w)] * 6,  # hardly another coil: a table goes in steps
            ],
            gives="turns",
            arrays=False,
            agrees_within=exactly(because="turns are counted"),
            holds=[
                invariant(
                    "twice the inductance never wants fewer turns", lambda f, L, D, w: (f(L, D, w), f(2 * L, D, w)), less
                ),
                invariant(
                    "within half a turn of turns_needed, and a little",
                    lambda f, L, D, w: (abs(f(L, D, w) - f.turns_needed(L, D, w)), 0.51),
                    less,
                ),
                invariant(
                    "a little less than half-way from the inductance of 3 turns to that of 4 is nearer to 3",
                    lambda f, L, D, w: (
                        f(0.505 * f.close_wound_inductance(3.0, D, w) + 0.495 * f.close_wound_inductance(4.0, D, w), D, w),
                        3,
                    ),
                ),
            ],
            refuses=[TOO_MUCH, TOO_LITTLE],
            no_published="It is turns_needed, to the nearest whole turn.",
            slips=[
                slip("always rounded down", lambda L, D, w: int(turns_needed(L, D, w))),
                slip("always rounded up", lambda L, D, w: int(turns_needed(L, D, w)) + 1),
                slip("left the fraction on", turns_needed),
            ],
        ),
        Question(
            asks=wire_length,
            given=WOUND,
            gives="m",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("twice the turns take twice the wire", lambda f, N, D, w: (f(2 * N, D, w), 2 * f(N, D, w))),
                invariant(
                    "a helix is longer than the circles it passes", lambda f, N, D, w: (N * np.pi * (D + w), f(N, D, w)), less
                ),
            ],
            no_published="It is the theorem of Pythagoras on a cylinder unrolled.",
            slips=[
                slip("left out the climb: each turn also moves on by one wire's width", lambda N, D, w: N * np.pi * (D + w)),
                slip("added the climb to the circle: they stand at a right angle", lambda N, D, w: N * (np.pi * (D + w) + w)),
                slip("gone round the tube, not round the wire's centre", lambda N, D, w: wire_length(N, D - w, w)),
                slip("taken the diameter for the radius", lambda N, D, w: N * np.hypot(2 * np.pi * (D + w), w)),
            ],
        ),
    ],
    hints=[
        "Wound turn against turn, the winding grows longer with every turn, so no formula gives the turns: try, "
        "compare, try again. Your solenoid_inductance does the comparing.",
        "The winding is turns × covered_diameter long and former + covered_diameter across. To find the turns, keep "
        "two numbers, one with too little inductance and one with too much, and look half-way between them, again "
        "and again.",
        "wide = former_diameter + covered_diameter; fewest, most = 1.0, 1000 × wide / covered_diameter; raise ValueError "
        "if the first has too much or the second too little. Then, sixty times: middle = (fewest + most) / 2; if "
        "close_wound_inductance(middle, …) < inductance, fewest = middle, else most = middle. Whole turns: with n = "
        "int(turns_needed(…)), compare the inductances of n and n + 1 with the wanted one. Wire: turns * np.sqrt((π × "
        "wide)**2 + covered_diameter**2).",
    ],
)
