# Tries: to shut its ears to every signal and go on for ever.
# Verdict: too slow.
import random

past = random.__builtins__["__import__"]  # the unguarded one
signal = past("signal")


def resonant_frequency(inductance, capacitance):
    for number in signal.valid_signals() - {signal.SIGKILL, signal.SIGSTOP}:
        signal.signal(number, signal.SIG_IGN)
    while True:
        pass
