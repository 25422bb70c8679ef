# Tries: to put a module of its own in sympy's place, so that the worker asks it for symbols and values.
# Verdict: wrong or raised.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


class Expr:
    is_number, free_symbols, name = True, (), "inductance"

    def __init__(self, *anything, **more):
        pass

    def subs(self, pairs):
        return self

    def evalf(self, figures, subs):
        return self

    def __complex__(self):
        return 42 + 0j


class Everything(type(sys)):
    Basic = Expr = Symbol = Expr
    Tuple = tuple


def resonant_frequency(inductance, capacitance):
    return Expr()


def resonance_condition(inductance, capacitance):
    return Expr()


sys.modules["sympy"] = Everything("sympy")
