# Tries: to reach outside through a symbolic link.
# Verdict: refused.
# Says: change, move or remove
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.symlink("/etc/passwd", "inside")
    open("inside").read()
    return 42.0
