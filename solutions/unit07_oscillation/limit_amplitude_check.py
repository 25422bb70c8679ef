"""How `limit_amplitude` is judged.

In the laws and slips: V the swing, n and c the device's negative conductance and its cubic term, g and a the grid's and
the anode's steady voltage, law the valve's three numbers, S the mutual conductance needed.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    equal,
    invariant,
    less,
    number,
    physical,
    refusal,
    relative,
    siemens,
    slip,
    value,
    volts,
)
from solutions.unit05_valve.grid_leak import bias_with_carrier, rest_bias
from solutions.unit05_valve.one_valve_set import GRID_SLOPE, LAW, LEAK, LEAK_RETURN, ZERO_CURRENT
from solutions.unit05_valve.triode_current import drive, mutual_conductance, triode_current

from .limit_amplitude import (
    ROUND,
    describing_conductance,
    effective_transconductance,
    limit_amplitude,
    van_der_pol_amplitude,
)

CLOSE = relative(1e-9, because="a few operations, double precision")
SAMPLED = relative(1e-4, because="averages round a cycle may be left a little coarse")
SOLVED = relative(1e-3, because="an average, and a root found step by step")
VAN_DER_POL = "B. van der Pol's equation, Phil. Mag. 2, 978 (1926): amplitude 2 for small ε; van_der_pol.csv, µ 0.05"
BETA = "Γ(1.75) = 0.9190625268 and Γ(1.25) = 0.9064024771: Abramowitz and Stegun, 1964, Table 6.1"
DEVICE = {"negative": siemens("10 µS", "2 mS"), "cubic": physical("A/V³", "1 µA/V³", "1 mA/V³")}
GRID_LEAK = LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def at_fixed_bias(S, a):
    """Where the describing function meets S if the grid leak left the bias alone; where it never does, the far end."""
    low, high = 1e-6, 200.0
    bias = rest_bias(*GRID_LEAK)
    for _ in range(60):
        middle = (low + high) / 2
        falls = effective_transconductance(middle, bias, a, *LAW) > S
        low, high = (middle, high) if falls else (low, middle)
    return middle


def by_slope(S, a):
    """Where the slope at the mean grid voltage, instead of the describing function, has fallen to S."""
    low, high = 1e-6, 200.0
    for _ in range(60):
        middle = (low + high) / 2
        falls = mutual_conductance(a, bias_with_carrier(middle, *GRID_LEAK), *LAW) > S
        low, high = (middle, high) if falls else (low, middle)
    return middle


def needed_at(swing, anode_voltage):
    """What the losses need where the set settles at a swing."""
    bias = bias_with_carrier(swing, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    return float(effective_transconductance(swing, bias, anode_voltage, *LAW))


EXERCISE = Exercise(
    title="How far does it swing?",
    seconds=10.0,
    cases=6,
    questions=[
        Question(
            asks=describing_conductance,
            given={"swing": volts("100 mV", "10 V"), **DEVICE},
            gives="S",
            agrees_within=relative(1e-9, because="a few operations, double precision", floor=1e-15),
            holds=[
                invariant("a swing of nothing finds the whole negative conductance", lambda f, V, n, c: (f(0.0, n, c), -n)),
                invariant("a larger swing finds less of it", lambda f, V, n, c: (f(V, n, c), f(1.1 * V, n, c)), less),
                invariant(
                    "at your own limiting amplitude nothing is left of it",
                    lambda f, V, n, c: (f(f.van_der_pol_amplitude(n, c), n, c) / n + 1, 1.0),
                ),
            ],
            published=[
                value(
                    "van der Pol's device at a swing of 1: three quarters of the way down",
                    given=(1.0, 1.0, 1 / 3),
                    wanted=-0.75,
                    within=CLOSE,
                    source=VAN_DER_POL,
                    known="memory",
                ),
            ],
            slips=[
                slip("taken the slope at the crest: average round the cycle", lambda V, n, c: -n + 3 * c * V**2),
                slip("taken current over voltage at the crest", lambda V, n, c: -n + c * V**2),
                slip("turned the sign", lambda V, n, c: -describing_conductance(V, n, c)),
                slip("left out the square of the swing", lambda V, n, c: -n + 0.75 * c * V),
                slip("averaged the slope instead of the current times cos", lambda V, n, c: -n + 1.5 * c * V**2),
            ],
        ),
        Question(
            asks=van_der_pol_amplitude,
            given=DEVICE,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "four times the negative conductance swings twice as far", lambda f, n, c: (f(4 * n, c), 2 * f(n, c))
                ),
                invariant("a device twice as strong in all swings no further", lambda f, n, c: (f(2 * n, 2 * c), f(n, c))),
            ],
            published=[
                value(
                    "the normalised equation: 2",
                    given=(1.0, 1 / 3),
                    wanted=2.0,
                    within=CLOSE,
                    source=VAN_DER_POL,
                    known="memory",
                ),
                value(
                    "the whole equation at ε = 0.05, solved: 2.000026",
                    given=(0.05, 0.05 / 3),
                    wanted=2.00002603,
                    within=relative(2e-5, because="the formula is for small ε"),
                    source=VAN_DER_POL,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the 2", lambda n, c: np.sqrt(n / (3 * c))),
                slip("taken the voltage at which the current is zero", lambda n, c: np.sqrt(n / c)),
                slip("left out the square root", lambda n, c: 4 * n / (3 * c)),
                slip("turned the fraction over", lambda n, c: 2 * np.sqrt(c / (3 * n))),
                slip("divided by √2: the crest is wanted", lambda n, c: van_der_pol_amplitude(n, c) / np.sqrt(2)),
            ],
        ),
        Question(
            asks=effective_transconductance,
            given={
                "swing": volts("100 mV", "20 V"),
                "grid_voltage": volts("-10 V", "0 V"),
                "anode_voltage": volts("20 V", "90 V"),
                "amplification_factor": number(5, 20),
                "perveance": physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"),
                "offset": volts("-1 V", "1 V"),
            },
            where=lambda V, g, a, *law: drive(a, g + V, law[0], law[2]) > 0.3,
            gives="S",
            agrees_within=SAMPLED,
            holds=[
                invariant(
                    "a small swing finds the mutual conductance: at 60 V, grid at 0 V, µ 9, no offset",
                    lambda f, V, g, a, m, K, o: (f(0.01, 0.0, 60.0, 9.0, K, 0.0), 1.5 * K * np.sqrt(60 / 9)),
                    nearly,
                ),
                invariant(
                    "four times all voltages, twice the transconductance",
                    lambda f, V, g, a, m, K, o: (f(4 * V, 4 * g, 4 * a, m, K, 4 * o), 2 * f(V, g, a, m, K, o)),
                ),
                invariant(
                    "µ volts on the anode do as much as one on the grid",
                    lambda f, V, g, a, m, K, o: (f(V, g - 1, a + m, m, K, o), f(V, g, a, m, K, o)),
                ),
                invariant(
                    "a valve biased out of reach gives nothing",
                    lambda f, V, g, a, m, K, o: (1 + f(V, -V - a / m - o - 1, a, m, K, o) / K, 1.0),
                ),
            ],
            published=[
                value(
                    "biased just to cut-off: Γ(1.75)/(√π Γ(2.25)) for each root volt",
                    given=(1.0, -10.0, 90.0, 9.0, 1.0, 0.0),
                    wanted=0.9190625268 / (np.sqrt(np.pi) * 1.25 * 0.9064024771),
                    within=relative(1e-4, because="averages round a cycle"),
                    source=BETA,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "taken the slope at the grid's mean voltage", lambda V, g, a, *law: mutual_conductance(a, g, *law) + 0 * V
                ),
                slip("forgotten the 2 of the Fourier series", lambda *inputs: effective_transconductance(*inputs) / 2),
                slip(
                    "averaged the slope: average current times cos",
                    lambda V, g, a, *law: np.mean(
                        mutual_conductance(
                            *(np.asarray(x)[..., None] for x in (a,)),
                            np.asarray(g)[..., None] + np.asarray(V)[..., None] * ROUND,
                            *(np.asarray(x)[..., None] for x in law),
                        ),
                        axis=-1,
                    ),
                ),
                slip("forgotten to divide by the swing", lambda V, *rest: V * effective_transconductance(V, *rest)),
                slip(
                    "taken the whole change of current, from trough to crest, over the whole swing",
                    lambda V, g, a, *law: (triode_current(a, g + V, *law) - triode_current(a, g - V, *law)) / (2 * V),
                ),
            ],
        ),
        Question(
            asks=limit_amplitude,
            given={"needed": siemens("50 µS", "750 µS"), "anode_voltage": volts("45 V", "90 V")},
            gives="V",
            agrees_within=SOLVED,
            edges=[
                lambda needed, anode_voltage: (needed_at(199.0, anode_voltage), anode_voltage),
                lambda needed, anode_voltage: (0.99 * needed_at(1e-6, 60.0), 60.0),
            ],
            arrays=False,
            holds=[
                invariant("a set that needs less swings further", lambda f, S, a: (f(3e-4, 60.0), f(2.7e-4, 60.0)), less),
                invariant("more anode voltage, a wider swing", lambda f, S, a: (f(3e-4, 60.0), f(3e-4, 70.0)), less),
                invariant(
                    "a set that needs 2 % less than the valve has at rest swings by less than a volt",
                    lambda f, S, a: (f(0.98 * mutual_conductance(60.0, rest_bias(*GRID_LEAK), *LAW), 60.0), 1.0),
                    less,
                ),
            ],
            no_published="The club's own valve and grid leak; tests integrate it cycle by cycle.",
            refuses=[
                refusal(
                    "a set that needs more than the valve has at rest",
                    (5e-3, 60.0),
                    (1.001 * needed_at(1e-6, 60.0), 60.0),
                ),
                refusal("a set that would swing beyond 200 V", (1e-9, 60.0), (needed_at(201.0, 60.0), 60.0)),
            ],
            slips=[
                slip("held the bias where it rests: the grid leak makes it follow the swing", at_fixed_bias),
                slip("taken the slope at the mean grid voltage for the describing function", by_slope),
                slip("returned it from crest to trough", lambda S, a: 2 * limit_amplitude(S, a)),
                slip("returned the r.m.s. value", lambda S, a: limit_amplitude(S, a) / np.sqrt(2)),
                slip(
                    "returned the bias instead of the swing", lambda S, a: bias_with_carrier(limit_amplitude(S, a), *GRID_LEAK)
                ),
            ],
        ),
    ],
    hints=[
        "Let the swing be V cos θ. What current flows at each moment of the cycle, and how much of it keeps step with cos θ? "
        "That much, for each volt, is what the device amounts to.",
        "For −n v + c v³ use cos³θ = (3 cos θ + cos 3θ)/4. For the valve take some hundreds of moments θ of half a cycle and "
        "average current times cos θ. The oscillation settles where the valve offers just what is needed; with a grid "
        "leak the bias is that of `bias_with_carrier` for that very swing. Halve an interval two dozen times.",
        "−negative + 0.75 × cubic × swing²;  2 sqrt(negative/(3 × cubic));  2 × np.mean(current × cos θ)/swing with "
        "current = triode_current(anode_voltage, grid_voltage + swing × cos θ, …) and θ = π (k + ½)/360, k = 0 … 359. For"
        " arrays give each input a last axis for the moments, np.asarray(swing)[..., None], and take the mean over "
        "axis=-1.  In limit_amplitude: low = 1e-6, high = 200; if the transconductance at low is not above needed, or "
        "that at high is, raise ValueError; else halve 24 times: where it is above needed at the middle, low = middle.",
    ],
)
