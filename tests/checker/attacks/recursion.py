# Tries: to fill the stack.
# Verdict: raised.
# Says: calls itself without end
def resonant_frequency(inductance, capacitance):
    return resonant_frequency(inductance, capacitance)
