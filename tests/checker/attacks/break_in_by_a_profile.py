# Tries: to stop the worker in the middle of its own work, by a profile function that raises there.
# Verdict: ended early or raised or refused.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


def interrupt(frame, event, argument):
    if frame.f_code.co_name in ("add", "send", "line"):
        raise SystemExit


def resonant_frequency(inductance, capacitance):
    sys.setprofile(interrupt)
    return 42.0
