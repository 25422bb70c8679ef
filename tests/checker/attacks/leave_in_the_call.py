# Tries: to end the process in the middle of a call.
# Verdict: ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os._exit(0)
