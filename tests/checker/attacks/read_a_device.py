# Tries: to read a disk and the terminal.
# Verdict: refused.
# Says: read a file
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    for device in ("/dev/tty", "/dev/mem", "/dev/vda", "/dev/sda"):
        open(device, "rb").read(1)
    return 42.0
