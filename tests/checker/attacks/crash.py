# Tries: to crash Python.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.abort()
