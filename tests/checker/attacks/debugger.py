# Tries: to stop in the debugger and wait for the instructor to type, as an honest student may by mistake.
# Verdict: refused.
# Says: breakpoint(), and waits for somebody to type
def resonant_frequency(inductance, capacitance):
    breakpoint()
    return 42.0
