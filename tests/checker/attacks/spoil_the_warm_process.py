# Tries: to spoil modules and caches for whoever comes after.
# Verdict: wrong or raised or ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")
numpy = past("numpy")
sympy = past("sympy")


def resonant_frequency(inductance, capacitance):
    numpy.random.seed(1)
    numpy.sqrt = None
    sympy.sqrt = sympy.Symbol = None
    sys.path.clear()
    sys.setrecursionlimit(100)
    return 42.0
