# Tries: to write its own memory past Python.
# Verdict: refused.
# Says: write outside
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    open("/proc/self/mem", "r+b").write(b"x")
    return 42.0
