# Tries: to make one file that is larger than the disk.
# Verdict: raised.
# Says: too large
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    with open("long", "wb") as file:
        os.ftruncate(file.fileno(), 1 << 40)
    return 42.0
