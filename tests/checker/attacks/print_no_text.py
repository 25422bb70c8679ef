# Tries: to print what is no text, and terminal codes, beside a wrong answer.
# Verdict: wrong.
def resonant_frequency(inductance, capacitance):
    print("\ud800\x1b[31m\x00\r" * 20)
    return 42.0
