# Tries: to catch whatever would stop it.
# Verdict: too slow.
def resonant_frequency(inductance, capacitance):
    while True:
        try:
            while True:
                pass
        except BaseException:
            pass
