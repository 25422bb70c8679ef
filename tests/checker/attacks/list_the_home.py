# Tries: to list the home of the instructor.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.listdir(os.path.expanduser("~root"))
    return 42.0
