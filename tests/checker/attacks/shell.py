# Tries: to run a command of the system.
# Verdict: refused.
# Says: start another program
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.system("touch /tmp/left-by-a-submission")
    return 42.0
