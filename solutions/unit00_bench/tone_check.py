"""How `tone` is judged. In the laws and slips: f the function asked for, t the time, hz the frequency, A the amplitude."""

import numpy as np

from checker import Exercise, Question, at_most, hertz, invariant, picture, relative, seconds, slip, value, volts

from .tone import tone

PITCH = "ISO 16:1975, Acoustics: Standard tuning frequency: the A is 440 Hz (from memory)"
EXACT = relative(1e-9, because="exact")

EXERCISE = Exercise(
    title="A tone of your own",
    questions=[
        Question(
            asks=tone,
            picture=picture(at={"frequency": 440.0}, between=(0.0, 5e-3), points=161),
            given={"time": seconds("0 s", "20 ms"), "frequency": hertz("50 Hz", "5 kHz"), "amplitude": volts("10 mV", "100 V")},
            gives="V",
            agrees_within=relative(
                1e-9, because="one sine, double precision, up to a hundred swings from the start", floor=1e-9
            ),
            holds=[
                invariant("the tone is never higher than its amplitude", lambda f, t, hz, A: (abs(f(t, hz, A)), A), at_most),
                invariant("one swing later it is where it was", lambda f, t, hz, A: (f(t + 1 / hz, hz, A), f(t, hz, A))),
                invariant(
                    "half a swing later it is on the other side", lambda f, t, hz, A: (f(t + 0.5 / hz, hz, A), -f(t, hz, A))
                ),
                invariant("at the start it is nothing", lambda f, t, hz, A: (f(0.0, hz, A), 0.0)),
                invariant("twice the amplitude is twice the voltage", lambda f, t, hz, A: (f(t, hz, 2 * A), 2 * f(t, hz, A))),
            ],
            published=[
                value(
                    "first crest of the A, a quarter of a swing from the start",
                    given=(1 / 1760, 440.0, 1.0),
                    wanted=1.0,
                    within=EXACT,
                    source=PITCH,
                    known="recomputed",
                ),
                value(
                    "a twelfth of a swing from the start, at 30 degrees: half the amplitude",
                    given=(1 / 5280, 440.0, 1.0),
                    wanted=0.5,
                    within=EXACT,
                    source=PITCH,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out 2π: a swing is 2π radians", lambda t, hz, A: A * np.sin(hz * t)),
                slip("left out the 2 of 2π", lambda t, hz, A: A * np.sin(np.pi * hz * t)),
                slip("given the sine degrees: np.sin wants radians", lambda t, hz, A: A * np.sin(360 * hz * t)),
                slip("used the cosine: at time 0 this tone is nothing", lambda t, hz, A: A * np.cos(2 * np.pi * hz * t)),
                slip("left out the amplitude", lambda t, hz, A: np.sin(2 * np.pi * hz * t)),
                slip("put the amplitude into the sine", lambda t, hz, A: np.sin(2 * np.pi * hz * t * A)),
                slip("divided by the frequency: more hertz, more swings", lambda t, hz, A: A * np.sin(2 * np.pi * t / hz)),
                slip("taken the amplitude from crest to trough", lambda t, hz, A: A / 2 * np.sin(2 * np.pi * hz * t)),
                slip("taken the amplitude for r.m.s.", lambda t, hz, A: np.sqrt(2) * A * np.sin(2 * np.pi * hz * t)),
            ],
        ),
    ],
    hints=[
        "A pure tone goes up and down like a sine. How many swings has it made by `time`? How many radians is that?",
        "It has made frequency times time swings, each of 2π radians. The sine of that lies between -1 and 1; the amplitude says "
        "how many volts 1 stands for.",
        "return amplitude * np.sin(2 * np.pi * frequency * time)",
    ],
)
