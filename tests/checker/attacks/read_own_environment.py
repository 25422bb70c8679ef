# Tries: to read the environment that the process was started with.
# Verdict: refused.
# Says: read a file
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    open("/proc/self/environ", "rb").read()
    return 42.0
