# Tries: to write over its own file where it came from.
# Verdict: refused.
# Says: write outside
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")
sys = past("sys")


def resonant_frequency(inductance, capacitance):
    root = os.path.dirname(os.path.dirname(os.path.dirname(sys.modules["worker"].__file__)))
    open(os.path.join(root, "exercises", "unit03_tuned_circuit", "resonance.py"), "a").write("#")
    return 42.0
