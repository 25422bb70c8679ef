# Tries: to stop a call as the worker itself would, for reasons of its own making.
# Verdict: refused or raised.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


def resonant_frequency(inductance, capacitance):
    raise sys.modules["worker.student"].Stop("refused", "nothing at all: full marks")
