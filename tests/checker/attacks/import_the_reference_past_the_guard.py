# Tries: to import the reference answer with the unguarded import.
# Verdict: refused or raised.
import random

past = random.__builtins__["__import__"]  # the unguarded one

resonant_frequency = past("solutions.unit03_tuned_circuit.resonance", fromlist=["x"]).resonant_frequency
