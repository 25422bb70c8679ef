# Tries: to print without end.
# Verdict: too big.
def resonant_frequency(inductance, capacitance):
    while True:
        print("846 kHz " * 100)
