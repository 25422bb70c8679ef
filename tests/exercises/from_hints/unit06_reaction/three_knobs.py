"""reaction_setting: least + (most − least) × crossing(polynomial at least, polynomial at most); crossing refuses by
itself. settings_for: tuning = 1/((2π × frequency)² × the inductance in `tuned`); five times: throttle =
reaction_setting(…); found = tuned_to(…)[0]; tuning = tuning × (found/frequency)².
"""

import numpy as np

from exercises.unit06_reaction.characteristic_polynomial import full_polynomial, leading_pole
from exercises.unit06_reaction.oscillation_point import crossing

ROUNDS = 5  # of setting reaction and tuning in turn


def tuned_to(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    pole = leading_pole(full_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, valve))
    return pole.imag / (2 * np.pi), -pole.real / np.pi


def detuning(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    far_tickler = (*tickler[:3], 0)
    here = tuned_to(coupling, tuning, throttle, aerial, tuned, tickler, valve)[0]
    far_away = tuned_to(0, tuning, throttle, aerial, tuned, far_tickler, valve)[0]
    return here - far_away


def reaction_setting(coupling, tuning, least, most, aerial, tuned, tickler, valve):
    plates_out = full_polynomial(coupling, tuning, least, aerial, tuned, tickler, valve)
    plates_in = full_polynomial(coupling, tuning, most, aerial, tuned, tickler, valve)
    return least + (most - least) * crossing(plates_out, plates_in)


def settings_for(frequency, coupling, least, most, aerial, tuned, tickler, valve):
    tuning = 1 / ((2 * np.pi * frequency) ** 2 * tuned[1])
    for _ in range(ROUNDS):
        throttle = reaction_setting(coupling, tuning, least, most, aerial, tuned, tickler, valve)
        found = tuned_to(coupling, tuning, throttle, aerial, tuned, tickler, valve)[0]
        tuning = tuning * (found / frequency) ** 2
    return tuning, throttle
