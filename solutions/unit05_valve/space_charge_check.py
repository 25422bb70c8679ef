"""How `space_charge` is judged.

In the laws and slips: V the anode's voltage, d the gap, x a position in it, J what the cathode can emit.
"""

import numpy as np

from checker import Exercise, Question, at_most, invariant, less, metres, physical, relative, slip, value, volts

from .space_charge import CHARGE_TO_MASS, PERMITTIVITY, anode_density, gap_potential, space_charge_density, transit_time

CLOSE = relative(1e-9, because="one formula, double precision", floor=1e-12)
CODATA = "Child and Langmuir's constant from CODATA, 2.333951938 µA/V^1.5; emission.toml"
VOLTAGE, GAP = volts("1 V", "300 V"), metres("0.2 mm", "5 mm")


def drawn_by(V, d):
    return space_charge_density(np.maximum(V, 0), d)


EXERCISE = Exercise(
    title="Why does the current not grow with the heat?",
    questions=[
        Question(
            asks=space_charge_density,
            given={"voltage": VOLTAGE, "gap": GAP},
            gives="A/m²",
            agrees_within=CLOSE,
            holds=[
                invariant("four times the voltage gives eight times the current", lambda f, V, d: (f(4 * V, d), 8 * f(V, d))),
                invariant("half the gap gives four times the current", lambda f, V, d: (f(V, d / 2), 4 * f(V, d))),
            ],
            published=[
                value(
                    "100 V across a millimetre",
                    given=(100.0, 1e-3),
                    wanted=2333.951938,
                    within=relative(1e-8, because="constants of CODATA to nine figures"),
                    source=CODATA,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used Ohm's straight line: space charge gives the power 3/2",
                    lambda V, d: space_charge_density(V, d) / np.sqrt(V),
                ),
                slip("left out the 4/9", lambda V, d: 9 / 4 * space_charge_density(V, d)),
                slip("left out the 2 under the root", lambda V, d: space_charge_density(V, d) / np.sqrt(2)),
                slip("not squared the gap", lambda V, d: space_charge_density(V, d) * d),
                slip("turned charge over mass round", lambda V, d: space_charge_density(V, d) / CHARGE_TO_MASS),
            ],
        ),
        Question(
            asks=gap_potential,
            given={"position": metres("0.05 mm", "5 mm"), "voltage": VOLTAGE, "gap": GAP},
            where=lambda position, voltage, gap: position <= gap,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at the cathode it is nothing, at the anode the anode's",
                    lambda f, x, V, d: (np.array([f(0.0, V, d), f(d, V, d)]), np.array([0, V])),
                ),
                invariant(
                    "space charge holds it below the straight line of an empty gap",
                    lambda f, x, V, d: (f(x, V, d), V * x / d),
                    at_most,
                ),
                invariant(
                    "an eighth of the way it has a sixteenth of the voltage", lambda f, x, V, d: (f(d / 8, V, d), V / 16)
                ),
            ],
            no_published="A shape; the current that goes with it has the figure.",
            slips=[
                slip("drawn the straight line of a gap without electrons", lambda x, V, d: V * x / d),
                slip("turned the power over: it is 4/3", lambda x, V, d: V * (x / d) ** 0.75),
                slip("used the law's 3/2 for the shape too", lambda x, V, d: V * (x / d) ** 1.5),
                slip("counted the distance from the anode", lambda x, V, d: gap_potential(np.maximum(d - x, 0), V, d)),
            ],
        ),
        Question(
            asks=transit_time,
            given={"voltage": VOLTAGE, "gap": GAP},
            gives="s",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "current times time is the charge on the way, 4/3 of that on two empty plates",
                    lambda f, V, d: (f.space_charge_density(V, d) * f(V, d), 4 / 3 * PERMITTIVITY * V / d),
                ),
                invariant("a higher voltage hurries them", lambda f, V, d: (f(2 * V, d), f(V, d)), less),
            ],
            no_published="Held to the charge in the gap, which is known without it.",
            slips=[
                slip("taken the final speed for the whole way", lambda V, d: transit_time(V, d) / 3),
                slip(
                    "taken half the final speed for the mean: that is so in an empty gap",
                    lambda V, d: transit_time(V, d) * 2 / 3,
                ),
                slip("left out the 2 under the root", lambda V, d: transit_time(V, d) * np.sqrt(2)),
                slip("left out the root", lambda V, d: 3 * d / (2 * CHARGE_TO_MASS * V)),
            ],
        ),
        Question(
            asks=anode_density,
            given={"voltage": volts("-50 V", "300 V"), "gap": GAP, "emission": physical("A/m²", "10 A/m²", "10 kA/m²")},
            edges=[
                lambda voltage, gap, emission: (100.0, gap, 1.01 * space_charge_density(100.0, gap)),
                lambda voltage, gap, emission: (100.0, gap, 0.99 * space_charge_density(100.0, gap)),
            ],
            gives="A/m²",
            agrees_within=CLOSE,
            holds=[
                invariant("never more than the cathode can give", lambda f, V, d, J: (f(V, d, J), J), at_most),
                invariant("an anode below the cathode draws nothing", lambda f, V, d, J: (f(-abs(V), d, J), 0.0)),
                invariant(
                    "a volt too few for saturation still counts",
                    lambda f, V, d, J: (f(1.0, d, 1e9), f.space_charge_density(1.0, d)),
                ),
            ],
            no_published="The smaller of two limits that have their figures.",
            slips=[
                slip("taken the larger of the two limits", lambda V, d, J: np.maximum(drawn_by(V, d), J)),
                slip("forgotten that the cathode can run out of electrons", lambda V, d, J: drawn_by(V, d)),
                slip(
                    "forgotten that an anode below the cathode draws nothing",
                    lambda V, d, J: np.minimum(drawn_by(abs(V), d), J),
                ),
                slip("added the two limits", lambda V, d, J: drawn_by(V, d) + J),
            ],
        ),
    ],
    hints=[
        "The electrons in the gap are a negative cloud. It pushes later ones back until, just outside the cathode, nothing "
        "pulls any more: that, and not the heat, then sets the current.",
        "J = (4/9) ε0 √(2e/m) V^1.5/d², voltage on the way V (x/d)^(4/3). An electron that fell through V moves at "
        "√(2 (e/m) V); in this gap that is three times its mean speed. The anode gets the smaller of two currents.",
        "space_charge_density: 4/9 * PERMITTIVITY * np.sqrt(2 * CHARGE_TO_MASS) * voltage**1.5 / gap**2. Time: 3 * gap / "
        "np.sqrt(2 * CHARGE_TO_MASS * voltage). anode_density: np.minimum(space_charge_density(np.maximum(voltage, 0), "
        "gap), emission).",
    ],
)
