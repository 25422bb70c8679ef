# Tries: to find and read the reference answer beside the checker's own files.
# Verdict: refused.
# Says: read a file outside its own folder
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")
sys = past("sys")


def resonant_frequency(inductance, capacitance):
    folder = os.path.dirname(sys.modules["worker.contain"].__file__)
    open(os.path.join(folder, "..", "..", "solutions", "unit03_tuned_circuit", "resonance.py")).read()
    return 42.0
