# Tries: to send an array that claims to be larger than its data.
# Verdict: refused or wrong.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    for descriptor in range(3, 64):
        try:
            os.write(descriptor, b'{"value": {"array": {"dtype": "f8", "shape": [1000000000], "data": ""}}, "altered": []}\n')
        except OSError:
            pass
    return 42.0
