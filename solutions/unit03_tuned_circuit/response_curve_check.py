"""How `response_curve` is judged."""

import numpy as np

from checker import Exercise, Question, absolute, at_most, drawn, hertz, invariant, number, picture, relative, slip, value

from .response_curve import decibels, detuning_in_bandwidths, relative_response, universal_response

TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3, universal resonance curve"
BAND = {
    "frequency": hertz("500 kHz", "1600 kHz"),
    "resonant_frequency": hertz("500 kHz", "1600 kHz"),
    "quality_factor": number(10, 300),
}
RESPONSE = drawn(
    [
        size * turned
        for turned in (1, 0.6 + 0.8j, -1, 0.8 - 0.6j, 0.28 + 0.96j, -0.6 + 0.8j)
        for size in (0.1, 1, 10, 0.5, 2, 0.01, 0.05, 0.2, 0.7, 0.001, 0.003, 0.03, 0.3, 5, 20, 70, 100)
    ],
    "size 0.001 to 100, of any phase",
    stacks=True,
)


def uneven(f, f0):
    return f / f0 - f0 / f


EXERCISE = Exercise(
    title="How much of each station gets through?",
    questions=[
        Question(
            asks=relative_response,
            picture=picture(between=(950e3, 1050e3), points=101),
            given=BAND,
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("exactly 1 at resonance", lambda r, f, f0, Q: (r(f0, f0, Q), 1)),
                invariant("never more than at resonance", lambda r, f, f0, Q: (abs(r(f, f0, Q)), 1), at_most),
                invariant(
                    "twice the frequency and half of it come through alike, with the phase turned",
                    lambda r, f, f0, Q: (r(2 * f0, f0, Q), np.conj(r(f0 / 2, f0, Q))),
                ),
            ],
            published=[
                value(
                    "upper edge of the band of 1 MHz at Q 100: down by root two, 45° behind",
                    given=(1005012.49992, 1e6, 100.0),
                    wanted=0.5 - 0.5j,
                    within=relative(1e-7, because="the edge is printed to 12 figures, of which Q spends two"),
                    source="F. E. Terman, Radio Engineers' Handbook, 1943, section 3; tuned_circuits.toml",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used the universal curve, which is only close near resonance",
                    lambda f, f0, Q: universal_response(detuning_in_bandwidths(f, f0, Q)),
                ),
                slip(
                    "returned the size only: keep the phase, as a complex number",
                    lambda f, f0, Q: np.abs(relative_response(f, f0, Q)),
                ),
                slip(
                    "turned the phase the wrong way: above resonance the coil wins and the current lags",
                    lambda f, f0, Q: np.conj(relative_response(f, f0, Q)),
                ),
                slip("returned impedance over resistance: turn it over", lambda f, f0, Q: 1 + 1j * Q * uneven(f, f0)),
                slip(
                    "left out the j: resistance and reactance do not add as plain numbers",
                    lambda f, f0, Q: 1 / (1 + Q * uneven(f, f0)),
                ),
            ],
        ),
        Question(
            asks=detuning_in_bandwidths,
            picture=picture(between=(950e3, 1050e3)),
            given=BAND,
            agrees_within=relative(1e-9, because="one formula, double precision", floor=1e-12),
            holds=[
                invariant("at resonance it is nothing", lambda a, f, f0, Q: (a(f0, f0, Q), 0)),
                invariant(
                    "twice the Q is twice as many bandwidths off", lambda a, f, f0, Q: (a(f, f0, 2 * Q), 2 * a(f, f0, Q))
                ),
            ],
            published=[
                value(
                    "half a bandwidth above 1 MHz at Q 100",
                    given=(1.005e6, 1e6, 100.0),
                    wanted=0.5,
                    within=relative(1e-9, because="the rule has no rounding"),
                    source=f"{TERMAN}: f0/(2Q) off is a = 0.5",
                    known="memory",
                ),
            ],
            slips=[
                slip("left out the sign: below resonance it is negative", lambda f, f0, Q: Q * np.abs(f - f0) / f0),
                slip("counted in half bandwidths, 2QΔf/f0", lambda f, f0, Q: 2 * Q * (f - f0) / f0),
                slip("forgotten Q: that is the fraction off tune", lambda f, f0, Q: (f - f0) / f0),
                slip("taken f0 − f, which turns the sign", lambda f, f0, Q: Q * (f0 - f) / f0),
                slip("divided by the frequency instead of the resonant frequency", lambda f, f0, Q: Q * (f - f0) / f),
                slip("forgotten to take the resonant frequency off", lambda f, f0, Q: Q * f / f0),
            ],
        ),
        Question(
            asks=universal_response,
            given={"detuning": number(-10, 10)},
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("as far below as above: alike, with the phase turned", lambda u, a: (u(-a), np.conj(u(a)))),
                invariant("never more than at resonance", lambda u, a: (abs(u(a)), 1), at_most),
            ],
            published=[
                value(
                    "a whole bandwidth off: 44.7 %, 63.4° behind",
                    given=(1.0,),
                    wanted=0.4472135955 * np.exp(-1j * np.radians(63.4349488229)),
                    within=relative(1e-9, because="printed to 10 figures"),
                    source=f"{TERMAN}; universal_resonance_curve.csv, row a = 1",
                    known="recomputed",
                ),
                value(
                    "half a bandwidth off: 0.707, 45° behind",
                    given=(0.5,),
                    wanted=0.707 * np.exp(-0.25j * np.pi),
                    within=relative(1e-3, because="printed to three figures"),
                    source=TERMAN,
                    known="memory",
                ),
            ],
            slips=[
                slip("left out the 2: the edges lie half a bandwidth off, not a whole one", lambda a: 1 / (1 + 1j * a)),
                slip("returned the size only: keep the phase, as a complex number", lambda a: np.abs(1 / (1 + 2j * a))),
                slip("turned the phase the wrong way", lambda a: 1 / (1 - 2j * a)),
                slip("returned the power: that is the square of the size", lambda a: 1 / (1 + 4 * a**2)),
            ],
        ),
        Question(
            asks=decibels,
            picture=picture(between=(0.01, 1.0)),
            given={"response": RESPONSE},
            gives="dB",
            agrees_within=absolute(1e-9, because="a ratio of 1 is 0 dB"),
            holds=[
                invariant("ten times the ratio is 20 dB more", lambda dB, r: (dB(10 * r), dB(r) + 20)),
                invariant("the phase does not count", lambda dB, r: (dB(r * (0.6 + 0.8j)), dB(r))),
            ],
            published=[
                value(
                    "1/sqrt(2) of the current: −3.01 dB",
                    given=(0.707106781187,),
                    wanted=-3.010299957,
                    within=absolute(1e-8, because="printed to 10 figures"),
                    source=f"{TERMAN}; universal_resonance_curve.csv, row a = 0.5",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "written 10 log: that is for powers; for voltages and currents it is 20 log",
                    lambda r: 10 * np.log10(np.abs(r)),
                ),
                slip("used the natural logarithm, np.log, for np.log10", lambda r: 20 * np.log(np.abs(r))),
                slip("turned the sign: less than 1 is negative", lambda r: -20 * np.log10(np.abs(r))),
                slip("left out the size: of a complex ratio np.abs is wanted", lambda r: 20 * np.log10(r + 0j)),
                slip("left out the 20", lambda r: np.log10(np.abs(r))),
            ],
        ),
    ],
    hints=[
        "The current is the e.m.f. over the impedance. At resonance only the resistance is left, so the fraction is "
        "the resistance over the impedance.",
        "Divide the impedance R + j(2πfL - 1/(2πfC)) by R and write L and C in terms of Q and f0: the bracket becomes "
        "Q (f/f0 - f0/f). Near resonance f/f0 - f0/f is close to 2 (f - f0)/f0. In Python j is written 1j.",
        "relative_response is 1 / (1 + 1j * quality_factor * (frequency / resonant_frequency - resonant_frequency / "
        "frequency)); detuning_in_bandwidths is quality_factor * (frequency - resonant_frequency) / resonant_frequency; "
        "universal_response is 1 / (1 + 2j * detuning); decibels are 20 * np.log10(np.abs(response)).",
    ],
)
