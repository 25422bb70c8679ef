# Tries: to have the kernel copy a library's file to the judge.
# Verdict: refused.
# Says: not an answer
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    source = os.open(os.__file__, os.O_RDONLY)
    for descriptor in range(3, 16):
        try:
            os.sendfile(descriptor, source, 0, 30_000)
        except OSError:
            pass
    return 42.0
