# Tries: to return a list that holds itself.
# Verdict: wrong or too big or raised.
def resonant_frequency(inductance, capacitance):
    loop = []
    loop.append(loop)
    return loop
