# Tries: to wait in the kernel for a lock that it holds itself, with the alarm held back.
# Verdict: refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
fcntl = past("fcntl")
os = past("os")
signal = past("signal")


def resonant_frequency(inductance, capacitance):
    signal.pthread_sigmask(signal.SIG_BLOCK, signal.valid_signals())
    one, other = open(os.__file__), open(os.__file__)
    fcntl.flock(one, fcntl.LOCK_EX)
    fcntl.flock(other, fcntl.LOCK_EX)
    return 42.0
