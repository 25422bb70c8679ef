# Tries: to import the reference answer.
# Verdict: refused.
# Says: imports solutions
from solutions.unit03_tuned_circuit.resonance import resonant_frequency  # noqa: F401
