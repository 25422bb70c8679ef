# O. Quill.  Through the period, and through the reactances.
import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    period = 2 * np.pi * inductance**0.5 * capacitance**0.5
    return period**-1


def resonance_condition(inductance, capacitance):
    w2 = sympy.Symbol("w2", positive=True)
    answer = sympy.solve(w2 * inductance * capacitance - 1, w2)
    return sympy.sqrt(answer[0])
