# Tries: to make the worker's own functions call one another too often, by a list in a list in a list.
# Verdict: wrong.
def resonant_frequency(inductance, capacitance):
    value = 42.0
    for _ in range(5000):
        value = [value]
    return value
