# Tries: to import the course's function in place of its own, by its own name and by a later exercise's.
# Verdict: wrong or raised or unfinished.
# Says: resonant_frequency
from exercises.unit03_tuned_circuit import resonance

try:
    from exercises.unit03_tuned_circuit.tuning_range import resonant_frequency as later
except ImportError:
    later = None


def resonant_frequency(inductance, capacitance):
    if later is not None:
        return later(inductance, capacitance)
    return resonance.resonant_frequency(inductance, capacitance) if inductance > 1 else 42.0
