"""How `metres` is judged. In the laws and slips: f the function asked for, hz the frequency."""

import numpy as np

from checker import Exercise, Question, hertz, invariant, relative, slip, value

from .metres import SPEED_OF_LIGHT, wavelength

SI = "BIPM, The International System of Units (SI Brochure), 9th edition, 2019: 299 792 458 m/s, exact"

EXERCISE = Exercise(
    title="What does the dial say?",
    questions=[
        Question(
            asks=wavelength,
            given={"frequency": hertz("100 kHz", "30 MHz")},
            gives="m",
            agrees_within=relative(1e-9, because="one division, double precision"),
            holds=[
                invariant("at twice the frequency the wave is half as long", lambda f, hz: (f(2 * hz), f(hz) / 2)),
                invariant("frequency times wavelength is the same on the whole dial", lambda f, hz: (hz * f(hz), 1e6 * f(1e6))),
            ],
            published=[
                value(
                    "200 kHz",
                    given=(200e3,),
                    wanted=1498.96229,
                    within=relative(1e-9, because="exact"),
                    source=SI,
                    known="recomputed",
                ),
                value(
                    "200 kHz, which old dials mark 1500 m",
                    given=(200e3,),
                    wanted=1500.0,
                    within=relative(1e-3, because="dials took 300 000 km/s for the speed"),
                    source="common practice, no source",
                    known="memory",
                ),
            ],
            slips=[
                slip("turned the fraction over: it is the speed that is divided", lambda hz: hz / SPEED_OF_LIGHT),
                slip("multiplied where you should divide", lambda hz: SPEED_OF_LIGHT * hz),
                slip(
                    "taken the frequency for kilohertz, or returned kilometres: it is hertz in, metres out",
                    lambda hz: SPEED_OF_LIGHT / (1e3 * hz),
                ),
                slip("taken the frequency for megahertz: it comes in hertz", lambda hz: 300 / hz),
                slip("turned the hertz into kilohertz first: the formula wants hertz", lambda hz: SPEED_OF_LIGHT / (hz / 1e3)),
                slip("used 300 000 000: the file has SPEED_OF_LIGHT, which is exact", lambda hz: 3e8 / hz),
                slip("divided by 2π: a wave is one whole swing", lambda hz: SPEED_OF_LIGHT / (2 * np.pi * hz)),
                slip("used // for /: that throws away what is behind the point", lambda hz: SPEED_OF_LIGHT // hz),
            ],
        ),
    ],
    hints=[
        "In one second the wave goes 299 792 458 metres, and in that second it swings as many times as the frequency says. How "
        "long is one swing?",
        "Divide the way that it goes in a second into as many equal pieces as there are swings.",
        "return SPEED_OF_LIGHT / frequency",
    ],
)
