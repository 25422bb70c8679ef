# Tries: to raise an error whose text cannot be written as UTF-8.
# Verdict: raised.
def resonant_frequency(inductance, capacitance):
    raise ValueError("\ud800" * 100)
