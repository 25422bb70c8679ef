# Tries: to leave a file in a shared folder.
# Verdict: refused.
# Says: write outside its own folder (/tmp/left-by-a-submission)
import random

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    open("/tmp/left-by-a-submission", "w").write("x")
    return 42.0
