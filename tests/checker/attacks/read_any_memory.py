# Tries: to read memory past Python.
# Verdict: refused.
# Says: ctypes
import random

past = random.__builtins__["__import__"]  # the unguarded one
ctypes = past("ctypes")


def resonant_frequency(inductance, capacitance):
    ctypes.string_at(id(inductance) - 4096, 8192)
    return 42.0
