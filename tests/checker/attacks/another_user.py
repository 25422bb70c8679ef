# Tries: to become another user.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.setuid(0)
    os.setgroups([])
    return 42.0
