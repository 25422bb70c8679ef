# Tries: to put a watch of its own on Python.
# Verdict: refused.
# Says: put a watch
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


def resonant_frequency(inductance, capacitance):
    sys.addaudithook(print)
    return 42.0
