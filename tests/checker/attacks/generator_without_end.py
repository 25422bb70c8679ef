# Tries: to return a list without end.
# Verdict: wrong.
import itertools


def resonant_frequency(inductance, capacitance):
    return itertools.count()
