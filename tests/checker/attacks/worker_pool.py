# Tries: to compute in several processes, as an honest student might.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
multiprocessing = past("multiprocessing")


def resonant_frequency(inductance, capacitance):
    with multiprocessing.Pool(2) as pool:
        pool.map(abs, [1, 2])
    return 42.0
