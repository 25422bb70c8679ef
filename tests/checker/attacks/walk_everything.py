# Tries: to walk over all files.
# Verdict: refused.
# Says: list a folder outside its own
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    for _ in os.walk("/"):
        pass
    return 42.0
