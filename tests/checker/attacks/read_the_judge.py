# Tries: to read the checker's own code.
# Verdict: refused.
# Says: read a file outside its own folder
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


def resonant_frequency(inductance, capacitance):
    open(sys.modules["worker.child"].__file__).read()
    return 42.0
