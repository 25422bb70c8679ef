# Tries: to change the rights on a file of Python's.
# Verdict: refused.
# Says: change, move or remove
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.chmod(os.__file__, 0o777)
    return 42.0
