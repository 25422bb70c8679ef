# Tries: to have its formula's text run as a program where it is read.
# Verdict: wrong.
import sympy

PROGRAM = "__import__('os').system('touch /tmp/left-by-a-submission')"


def resonant_frequency(inductance, capacitance):
    return 42.0


def resonance_condition(inductance, capacitance):
    return sympy.Symbol(PROGRAM) * sympy.Function(PROGRAM)(inductance) / sympy.Symbol("\x1b[2J\u202e{0.__class__}", positive=True)
