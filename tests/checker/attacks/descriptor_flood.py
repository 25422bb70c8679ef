# Tries: to open files until there are no more descriptors.
# Verdict: raised.
# Says: Too many open files
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    held = [open(os.devnull) for _ in range(100_000)]
    return 42.0
