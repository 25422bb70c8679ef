# Tries: to stop the worker where it asks what the function takes, by an answer that is of no use.
# Verdict: wrong.
def resonant_frequency(*anything):
    return 42.0


resonant_frequency.__signature__ = 42
