# Tries: to stop in the debugger and wait for the instructor to type, as an honest student may by mistake.
# Verdict: raised or refused or wrong or ended early.
def resonant_frequency(inductance, capacitance):
    breakpoint()
    return 42.0
