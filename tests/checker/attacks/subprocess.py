# Tries: to start another program.
# Verdict: refused.
# Says: start another program
import random

past = random.__builtins__["__import__"]  # the unguarded one
subprocess = past("subprocess")


def resonant_frequency(inductance, capacitance):
    subprocess.run(["id"], capture_output=True)
    return 42.0
