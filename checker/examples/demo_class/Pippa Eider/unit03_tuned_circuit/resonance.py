import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    print("L =", inductance, "C =", capacitance)
    f = 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
    print("f =", f)
    return f


def resonance_condition(inductance, capacitance):
    print("hello from the formula")
    return (inductance * capacitance) ** sympy.Rational(-1, 2)
