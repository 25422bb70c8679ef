# Tries: to bring a file in by a hard link.
# Verdict: refused.
# Says: change, move or remove
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.link(os.__file__, "inside.py")
    return 42.0
