# Tries: to match a pattern that takes longer than the universe has.
# Verdict: too slow.
import re


def resonant_frequency(inductance, capacitance):
    return float(bool(re.match("(a+)+$", "a" * 60 + "b")))
