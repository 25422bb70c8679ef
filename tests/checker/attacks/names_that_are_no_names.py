# Tries: to stop the worker where it lists what else the file has, by functions under keys that are no text.
# Verdict: wrong.
def other(inductance, capacitance):
    return 42.0


globals()[other] = globals()[(1, 2)] = globals()[42] = other
