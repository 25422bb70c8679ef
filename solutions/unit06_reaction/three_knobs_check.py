"""How `three_knobs` is judged.

In the laws and slips: F a station's frequency, M the coupling, C the tuning, T the throttle (least and most: its stops),
then the parts that stay as they are: aerial, tuned, tickler and valve.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    equal,
    farads,
    henries,
    hertz,
    invariant,
    less,
    refusal,
    relative,
    slip,
    value,
)

from .characteristic_polynomial import full_polynomial, leading_pole
from .given_sets import (
    AERIAL,
    CAPACITANCES,
    HELPING_TICKLER,
    SET,
    THE_AERIAL,
    THE_COIL,
    THE_TICKLER,
    THE_VALVE,
    TUNED,
    UNITS_OF_VALVE,
    parts,
    tuned_circuit_leads,
)
from .three_knobs import detuning, reaction_setting, settings_for, tuned_to

ROOTS = relative(1e-7, because="the roots of a polynomial, found in double precision", floor=1e-3)
SOLVED = relative(1e-6, because="solved step by step, from roots in double precision")
SHARPENED = "reaction.toml, q_multiplication: 1 MHz, Q 100, nine tenths of the loss taken away leave 1 kHz of 10"
THE_PARTS = (THE_AERIAL, THE_COIL, THE_TICKLER, THE_VALVE)
BY_THE_TICKLER = (0.0, 100e-12, 100e-12, THE_AERIAL, THE_COIL, (*THE_TICKLER[:3], 20e-6), THE_VALVE)
STOPS = {"least": farads("30 pF", "60 pF"), "most": farads("300 pF", "500 pF")}
LIVELY = parts(
    UNITS_OF_VALVE,
    f"transconductance 0.9 mS to 2 mS, anode resistance 8 kΩ to 15 kΩ, {CAPACITANCES}",
    THE_VALVE,
    (2e-3, 8e3, 8e-12, 300e-12),
    (1.5e-3, 10e3, 4e-12, 100e-12),
    (1.2e-3, 15e3, 1e-12, 30e-12),
)
REACTS = {"aerial": AERIAL, "tuned": TUNED, "tickler": HELPING_TICKLER, "valve": LIVELY}
# A circuit of Q 100 at 1 MHz; M gm = 0.9 R C; a valve so high in resistance that it loads nothing, a tickler of few turns.
CONDENSER = 1 / ((2 * np.pi * 1e6) ** 2 * 200e-6)
ALONE = (
    0.0,
    CONDENSER,
    100e-12,
    THE_AERIAL,
    (4 * np.pi, 200e-6, 0.0),
    (0.0, 1e-6, 0.9 * 4 * np.pi * CONDENSER / 1e-3, 0.0),
    (1e-3, 1e5, 0.0, 0.0),
)


def half_way(tuning, way):
    """The set of `ALONE` on another frequency, its tickler giving back half of the loss, or taking as much, by its way round."""
    tickler = (0.0, 1e-6, way * 0.5 * 4 * np.pi * tuning / 1e-3, 0.0)
    return (0.0, tuning, *ALONE[2:5], tickler, ALONE[6])


def reached(coupling, tuning, least, most, *rest):
    """Whether the set is silent at one stop of the throttle and oscillates at the other."""
    growth = [leading_pole(full_polynomial(coupling, tuning, stop, *rest)).real for stop in (least, most)]
    return growth[0] < 0 < growth[1]


def leads_near_and_far(M, C, T, aerial, tuned, tickler, valve):
    """Whether it is the tuned circuit that leads, both with the aerial's coil and without."""
    return tuned_circuit_leads(M, C, T, aerial, tuned, tickler, valve) and tuned_circuit_leads(
        0.0, C, T, aerial, tuned, (*tickler[:3], 0.0), valve
    )


def first_tuning(frequency, tuned):
    """The condenser that the coil alone would want."""
    return 1 / ((2 * np.pi * frequency) ** 2 * tuned[1])


def reached_on(frequency, coupling, least, most, aerial, tuned, *rest):
    """The same, well within the stops, near the tuning for a frequency."""
    return reached(coupling, first_tuning(frequency, tuned), 1.5 * least, 0.7 * most, aerial, tuned, *rest)


def coil_away(M, C, aerial, tuned, tickler, valve, *stops):
    """Inputs of `reaction_setting` with no coupling of aerial and tickler."""
    return (M, C, *stops, aerial, tuned, (*tickler[:3], 0.0), valve)


def a_little_less(left, right, tolerance):
    return at_most(left, right, relative(1e-6, because="solved step by step"))


def on_the_axis(bandwidth, frequency, tolerance):
    return at_most(abs(bandwidth), 1e-6 * frequency, tolerance)


def on_station(found, frequency, tolerance):
    return equal(found, frequency, absolute(1.0, because="to a hertz"))


EXERCISE = Exercise(
    title="What does each knob do to the others?",
    seconds=20.0,
    cases=2,
    questions=[
        Question(
            asks=tuned_to,
            given=SET,
            where=tuned_circuit_leads,
            gives=("Hz", "Hz"),
            agrees_within=ROOTS,
            arrays=False,
            holds=[
                invariant(
                    "more tuning condenser, lower frequency",
                    lambda f, M, C, *rest: (f(M, 1.1 * C, *rest)[0], f(M, C, *rest)[0]),
                    less,
                ),
                invariant(
                    # Asked of a circuit without aerial: with the tickler turned round another pole, mostly the aerial's,
                    # leads in a tenth of the sets drawn, and what was a broader band is that of the wrong circuit.
                    "a tickler wound the other way round leaves a broader band",
                    lambda f, M, C, *rest: (f(*half_way(C, 1))[1], f(*half_way(C, -1))[1]),
                    less,
                ),
            ],
            published=[
                value(
                    "nine tenths of the loss of a coil of Q 100 taken away at 1 MHz",
                    given=ALONE,
                    wanted=(1e6, 1e3),
                    within=relative(0.01, because="the valve and the tickler load and shift the circuit a little"),
                    source=SHARPENED,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a coupling of 130 µH with an aerial's winding of 40 µH", (130e-6, 105e-12, 100e-12, *THE_PARTS)),
            ],
            slips=[
                slip(
                    "returned radians a second: divide by 2π",
                    lambda *set_: (2 * np.pi * tuned_to(*set_)[0], tuned_to(*set_)[1]),
                ),
                slip(
                    "returned half the band: it reaches as far to either side",
                    lambda *set_: (tuned_to(*set_)[0], tuned_to(*set_)[1] / 2),
                ),
                slip(
                    "turned the sign of the bandwidth: the real part is below 0 while the set is silent",
                    lambda *set_: (tuned_to(*set_)[0], -tuned_to(*set_)[1]),
                ),
                slip(
                    "left the bandwidth in radians a second", lambda *set_: (tuned_to(*set_)[0], 2 * np.pi * tuned_to(*set_)[1])
                ),
            ],
        ),
        Question(
            asks=detuning,
            given=SET,
            where=leads_near_and_far,
            gives="Hz",
            agrees_within=relative(1e-6, because="a small difference of two frequencies", floor=0.1),
            arrays=False,
            holds=[
                invariant(
                    "an aerial that is not coupled detunes nothing",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(0.0, C, T, aerial, tuned, (*tickler[:3], 0.0), valve),
                        0.0,
                    ),
                ),
                invariant(
                    "an aerial that resonates far above the dial makes it tune lower",
                    lambda f, M, C, T, aerial, tuned, tickler, valve: (
                        f(M, C, T, (30.0, 50e-12, 30e-6), tuned, (*tickler[:3], 0.0), valve),
                        0.0,
                    ),
                    less,
                ),
                invariant(
                    "with no coupling, 20 µH from aerial to tickler still draw the set: both mutual inductances count",
                    lambda f, *set_: (f(*BY_THE_TICKLER), -1.0),
                    less,
                ),
            ],
            no_published="A difference of two roots, each of a polynomial that has its figures.",
            refuses=[
                refusal("a coupling of 130 µH with an aerial's winding of 40 µH", (130e-6, 105e-12, 100e-12, *THE_PARTS)),
            ],
            slips=[
                slip("subtracted the wrong way round", lambda *set_: -detuning(*set_)),
                slip(
                    "returned the change of the bandwidth",
                    lambda M, C, T, aerial, tuned, tickler, valve: (
                        tuned_to(M, C, T, aerial, tuned, tickler, valve)[1]
                        - tuned_to(0.0, C, T, aerial, tuned, (*tickler[:3], 0.0), valve)[1]
                    ),
                ),
                slip("returned radians a second", lambda *set_: 2 * np.pi * detuning(*set_)),
            ],
        ),
        Question(
            asks=reaction_setting,
            given={"coupling": henries("1 µH", "20 µH"), "tuning": farads("60 pF", "400 pF"), **STOPS, **REACTS},
            where=reached,
            gives="F",
            agrees_within=SOLVED,
            arrays=False,
            holds=[
                invariant(
                    "at that setting the band is narrowed to nothing",
                    lambda f, M, C, least, most, *rest: (
                        f.tuned_to(M, C, f(M, C, least, most, *rest), *rest)[1],
                        f.tuned_to(M, C, f(M, C, least, most, *rest), *rest)[0],
                    ),
                    on_the_axis,
                ),
                invariant(
                    "loosening the aerial brings oscillation nearer: the throttle wants less",
                    lambda f, *inputs: tuple(f(*coil_away(M, 126e-12, *THE_PARTS, 10e-12, 500e-12)) for M in (4e-6, 15e-6)),
                    a_little_less,
                ),
            ],
            no_published="The threshold of `oscillation_point`, which has its figure, found with another knob.",
            refuses=[
                refusal("a set that is silent with the plates all in", (20e-6, 105e-12, 10e-12, 80e-12, *THE_PARTS)),
                refusal("a set that oscillates with the plates all out", (20e-6, 105e-12, 200e-12, 500e-12, *THE_PARTS)),
                refusal(
                    "a tickler wound the wrong way round",
                    (
                        20e-6,
                        105e-12,
                        10e-12,
                        500e-12,
                        THE_AERIAL,
                        THE_COIL,
                        (2.0, 48e-6, -14e-6, 0.4e-6),
                        (0.5e-3, *THE_VALVE[1:]),
                    ),
                ),
            ],
            slips=[
                slip(
                    "returned the share of the way between the stops",
                    lambda M, C, least, most, *rest: (reaction_setting(M, C, least, most, *rest) - least) / (most - least),
                ),
                slip(
                    "counted the share from the condenser's nothing, not from its least",
                    lambda M, C, least, most, *rest: reaction_setting(M, C, least, most, *rest) - least,
                ),
                slip(
                    "exchanged the stops",
                    lambda M, C, least, most, *rest: least + most - reaction_setting(M, C, least, most, *rest),
                ),
                slip(
                    "left the aerial out of account",
                    lambda M, C, least, most, aerial, tuned, tickler, valve: reaction_setting(
                        0.0, C, 1e-12, 1e-9, aerial, tuned, (*tickler[:3], 0.0), valve
                    ),
                ),
            ],
        ),
        Question(
            asks=settings_for,
            given={"frequency": hertz("530 kHz", "1200 kHz"), "coupling": henries("1 µH", "20 µH"), **STOPS, **REACTS},
            where=reached_on,
            gives=("F", "F"),
            agrees_within=relative(1e-4, because="one knob set after the other, in rounds"),
            arrays=False,
            holds=[
                invariant(
                    "with these settings the set rings at the station's frequency, to a hertz",
                    lambda f, F, M, least, most, *rest: (f.tuned_to(M, *f(F, M, least, most, *rest), *rest)[0], F),
                    on_station,
                ),
                invariant(
                    "and just at the threshold: the band is all but nothing",
                    lambda f, F, M, least, most, *rest: (f.tuned_to(M, *f(F, M, least, most, *rest), *rest)[1], F),
                    on_the_axis,
                ),
            ],
            no_published="Two knobs set in turn, each by a function that has its figures.",
            refuses=[
                refusal("a station for which the throttle is too small", (530e3, 20e-6, 10e-12, 150e-12, *THE_PARTS)),
            ],
            slips=[
                slip(
                    "stopped after the first setting of the throttle: it moves the tuning",
                    lambda F, M, least, most, aerial, tuned, *rest: (
                        first_tuning(F, tuned),
                        reaction_setting(M, first_tuning(F, tuned), least, most, aerial, tuned, *rest),
                    ),
                ),
                slip("returned them the other way round", lambda *inputs: settings_for(*inputs)[::-1]),
                slip(
                    "left the aerial out of account",
                    lambda F, M, least, most, aerial, tuned, tickler, valve: settings_for(
                        F, 0.0, 1e-12, 1e-9, aerial, tuned, (*tickler[:3], 0.0), valve
                    ),
                ),
            ],
        ),
    ],
    hints=[
        "Everything is in the leading pole: its imaginary part says where the set is tuned, its real part how narrow a band it "
        "takes in. A knob that moves the one moves the other too.",
        "Frequency = imag/(2π), bandwidth = −real/π. To take the aerial away put both its mutual inductances to 0: the "
        "coupling, and the last number of the tickler. The throttle's setting is crossing(…) of the two polynomials at its "
        "stops, brought from a share to farads. For a station: set the throttle, see where the set now rings, correct the "
        "tuning, and again.",
        "reaction_setting: least + (most − least) × crossing(polynomial at least, polynomial at most); crossing refuses "
        "by itself. settings_for: tuning = 1/((2π × frequency)² × the inductance in `tuned`); five times: throttle = "
        "reaction_setting(…); found = tuned_to(…)[0]; tuning = tuning × (found/frequency)².",
    ],
)
