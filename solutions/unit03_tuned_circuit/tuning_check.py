"""How `tuning` is judged. In the laws and slips: f the function asked for, hz the frequency, L the inductance."""

import numpy as np

from checker import Exercise, Question, henries, hertz, invariant, relative, slip, value

from .tuning import tuning_capacitance

EXERCISE = Exercise(
    title="Which condenser for this station?",
    questions=[
        Question(
            asks=tuning_capacitance,
            given={"frequency": hertz("150 kHz", "30 MHz"), "inductance": henries("1 µH", "5 mH")},
            gives="F",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("half the frequency takes four times the capacitance", lambda f, hz, L: (f(hz / 2, L), 4 * f(hz, L))),
                invariant("twice the coil takes half the capacitance", lambda f, hz, L: (f(hz, 2 * L), f(hz, L) / 2)),
            ],
            published=[
                value(
                    "the handbooks' constant: at 1 MHz, 100 µH wants 253.30 pF",
                    given=(1e6, 100e-6),
                    wanted=253.30e-12,
                    within=relative(2e-5, because="the constant 25 330 is printed to five figures"),
                    source="US National Bureau of Standards, Circular 74, 1924, and later handbooks",
                    known="memory",
                ),
                value(
                    "503.292121045 kHz with 200 µH: 500 pF",
                    given=(503.292121045e3, 200e-6),
                    wanted=500e-12,
                    within=relative(1e-9, because="printed to 12 figures"),
                    source="resonance_lc.csv, row 200 µH, 500 pF",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out 2π: it is 2πf that counts, squared", lambda hz, L: 1 / (hz**2 * L)),
                slip("left the 2π unsquared: square all of 2πf", lambda hz, L: 1 / (2 * np.pi * hz**2 * L)),
                slip("left out the square", lambda hz, L: 1 / (2 * np.pi * hz * L)),
                slip("left a root in: the root is gone when f is squared", lambda hz, L: 1 / (2 * np.pi * hz * np.sqrt(L))),
                slip("left the inductance unturned: it stands below the line", lambda hz, L: L / (2 * np.pi * hz) ** 2),
                slip("turned the fraction over", lambda hz, L: (2 * np.pi * hz) ** 2 * L),
                slip("written 1 / a * b, which Python reads as (1 / a) * b", lambda hz, L: 1 / (2 * np.pi) ** 2 * hz**2 * L),
                slip("returned picofarads: farads are wanted", lambda hz, L: 1e12 / ((2 * np.pi * hz) ** 2 * L)),
                slip("taken the frequency for kilohertz: it comes in hertz", lambda hz, L: 1e-6 / ((2 * np.pi * hz) ** 2 * L)),
            ],
        ),
    ],
    hints=[
        "It is the resonance of the section above, solved for the condenser: what is sought is now C, and f is given.",
        "(2πf)² = 1/(L C). Multiply by C, and divide by (2πf)².",
        "return 1 / ((2 * np.pi * frequency) ** 2 * inductance)",
    ],
)
