"""How `emission` is judged.

In the laws and slips: T the temperature, A the surface's constant, φ its work function, J a current density, h and d the
filament's length and diameter.
"""

import numpy as np

from checker import Exercise, Question, equal, invariant, less, metres, physical, refusal, relative, slip, value, volts

from .emission import COLDEST, HOTTEST, VOLTS_PER_KELVIN, emission_current, emission_density, temperature_for

CLOSE = relative(1e-9, because="one exponential, double precision")
DUSHMAN_EWALD = 'S. Dushman and J. W. Ewald, "Electron Emission from Thoriated Tungsten", Phys. Rev. 29, 857 (1927)'
THORIATED = (3.0e4, 30500 * 8.617333262145e-5)  # their 3 T² exp(-30500/T) ampere per square centimetre
SURFACE = {
    "constant": physical("A/(m² K²)", "100 A/(m² K²)", "600 kA/(m² K²)"),
    "work_function": volts("1 V", "4.6 V"),
}
HEAT = {"temperature": physical("K", "800 K", "2600 K"), **SURFACE}


def within_the_melting_point(density, constant, work_function):
    return emission_density(COLDEST, constant, work_function) < density < emission_density(HOTTEST, constant, work_function)


def exponent(T, φ):
    return np.exp(-φ / (VOLTS_PER_KELVIN * T))


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-4, because="a small error in the temperature is a larger one in the current"))


EXERCISE = Exercise(
    title="Where do the electrons come from?",
    questions=[
        Question(
            asks=emission_density,
            given=HEAT,
            gives="A/m²",
            agrees_within=CLOSE,
            holds=[
                invariant("a hotter surface always emits more", lambda f, T, A, φ: (f(T, A, φ), f(1.01 * T, A, φ)), less),
                invariant(
                    "twice the temperature with twice the work function emits four times as much",
                    lambda f, T, A, φ: (f(2 * T, A, 2 * φ), 4 * f(T, A, φ)),
                ),
                invariant(
                    "at one temperature φ and 2φ lie as far apart as 2φ and 3φ",
                    lambda f, T, A, φ: (f(T, A, φ) * f(T, A, 3 * φ), f(T, A, 2 * φ) ** 2),
                ),
            ],
            published=[
                value(
                    "thoriated tungsten at 1900 K: 1.16 A from each square centimetre",
                    given=(1900.0, *THORIATED),
                    wanted=11562.70,
                    within=relative(1e-6, because="printed to seven figures"),
                    source=DUSHMAN_EWALD,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the square of the temperature", lambda T, A, φ: A * exponent(T, φ)),
                slip(
                    "forgotten the minus sign: a higher work function holds electrons back",
                    lambda T, A, φ: A * T**2 / exponent(T, φ),
                ),
                slip(
                    "added 273 to a temperature that is in kelvin already", lambda T, A, φ: emission_density(T + 273.15, A, φ)
                ),
                slip(
                    "used powers of ten: the law wants powers of 2.718",
                    lambda T, A, φ: A * T**2 * 10 ** (-φ / (VOLTS_PER_KELVIN * T)),
                ),
                slip(
                    "multiplied the temperature into the work function instead of dividing by it",
                    lambda T, A, φ: A * T**2 * np.exp(-φ * VOLTS_PER_KELVIN * T),
                ),
            ],
        ),
        Question(
            asks=emission_current,
            given={**HEAT, "length": metres("5 mm", "100 mm"), "diameter": metres("20 µm", "500 µm")},
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "half the thickness and twice the length is the same surface",
                    lambda f, T, A, φ, h, d: (f(T, A, φ, 2 * h, d / 2), f(T, A, φ, h, d)),
                ),
                invariant(
                    "a filament twice as large in every direction has four times the surface",
                    lambda f, T, A, φ, h, d: (f(T, A, φ, 2 * h, 2 * d), 4 * f(T, A, φ, h, d)),
                ),
            ],
            no_published="The emission of each square metre, which has a figure, times a surface.",
            slips=[
                slip(
                    "taken the section of the wire: electrons leave round the outside",
                    lambda T, A, φ, h, d: emission_density(T, A, φ) * np.pi * d**2 / 4,
                ),
                slip("taken the diameter for the radius", lambda T, A, φ, h, d: 2 * emission_current(T, A, φ, h, d)),
                slip("left out π", lambda T, A, φ, h, d: emission_density(T, A, φ) * h * d),
                slip("left out the length", lambda T, A, φ, h, d: emission_density(T, A, φ) * np.pi * d),
            ],
        ),
        Question(
            asks=temperature_for,
            given={"density": physical("A/m²", "1 A/m²", "20 kA/m²"), **SURFACE},
            where=within_the_melting_point,
            edges=[
                lambda density, *surface: (1.01 * emission_density(300.0, *surface), *surface),
                lambda density, *surface: (emission_density(3999.0, *surface), *surface),
            ],
            gives="K",
            agrees_within=relative(1e-6, because="solved step by step"),
            holds=[
                invariant(
                    "at that temperature the surface emits what was wanted",
                    lambda f, J, A, φ: (f.emission_density(f(J, A, φ), A, φ), J),
                    nearly,
                ),
                invariant(
                    "ten times the current needs less than twice the temperature",
                    lambda f, J, A, φ: (f(J, A, φ), 2 * f(J / 10, A, φ)),
                    less,
                ),
            ],
            published=[
                value(
                    "thoriated tungsten that gives 1.16 A from each square centimetre",
                    given=(11562.70, *THORIATED),
                    wanted=1900.0,
                    within=relative(1e-6, because="worked back from seven figures"),
                    source=DUSHMAN_EWALD,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal(
                    "a current that the surface gives at no temperature below 4000 K",
                    (1e5, 100.0, 4.5),
                    (1.001 * emission_density(4000.0, 100.0, 4.5), 100.0, 4.5),
                ),
                refusal(
                    "a current that the surface exceeds in the cold",
                    (1e-12, 6e5, 1.0),
                    (0.999 * emission_density(300.0, 6e5, 1.0), 6e5, 1.0),
                ),
            ],
            slips=[
                slip(
                    "left the square of the temperature out of the law", lambda J, A, φ: φ / (VOLTS_PER_KELVIN * np.log(A / J))
                ),
                slip("returned degrees Celsius", lambda J, A, φ: temperature_for(J, A, φ) - 273.15),
                slip("kept the wrong half of the interval, so that it ends at its hot end", lambda J, A, φ: HOTTEST + 0 * J),
                slip(
                    "stopped after a few halvings: forty and more are needed",
                    lambda J, A, φ: np.round(temperature_for(J, A, φ), -1),
                ),
            ],
        ),
    ],
    hints=[
        "An electron needs a certain push to leave the metal. Heat gives every electron a random push, and the law counts "
        "how many get enough.",
        "J = A T² exp(−φ/(kT/e)), with kT/e in volts. The surface of a wire is its girth times its length. For the "
        "temperature try the middle of 300 K to 4000 K: does the surface emit more or less than wanted there?",
        "VOLTS_PER_KELVIN × temperature is what the work function is divided by. Girth: π × diameter. Raise ValueError if"
        " emission_density(300, …) > density or emission_density(4000, …) < density; then sixty times: middle = (low + "
        "high)/2, and where the emission at the middle is below density put low = middle, elsewhere high = middle "
        "(np.where does it for arrays).",
    ],
)
