# Tries: to read the memory of the process that started it.
# Verdict: refused.
# Says: read a file
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    open(f"/proc/{os.getppid()}/mem", "rb").read(1)
    return 42.0
