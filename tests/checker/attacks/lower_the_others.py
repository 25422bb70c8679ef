# Tries: to slow other processes down.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.setpriority(os.PRIO_USER, 0, 19)
    return 42.0
