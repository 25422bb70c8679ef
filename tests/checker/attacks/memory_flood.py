# Tries: to fill the memory, a bit at a time.
# Verdict: too big or too slow.
def resonant_frequency(inductance, capacitance):
    held = []
    while True:
        held.append(bytearray(1 << 20))
