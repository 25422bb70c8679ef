# Tries: to return a small thing that is large once it is written out, as each part stands in the next a hundred times.
# Verdict: too slow or too big or raised or ended early or wrong.
def resonant_frequency(inductance, capacitance):
    value = [42.0]
    for _ in range(6):
        value = [value] * 100
    return value
