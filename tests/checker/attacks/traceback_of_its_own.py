# Tries: to blame a line of its choice by a traceback that it has made itself.
# Verdict: raised.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")
types = past("types")


def resonant_frequency(inductance, capacitance):
    blamed = None
    for number in (10**9, -(10**9), 0):
        blamed = types.TracebackType(blamed, sys._getframe(), 0, number)
    raise KeyError("elsewhere").with_traceback(blamed)
