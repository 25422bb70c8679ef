# Tries: to compute a number in one step that nothing can interrupt.
# Verdict: too slow or too big.
def resonant_frequency(inductance, capacitance):
    return 9 ** 9 ** 9
