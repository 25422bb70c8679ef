# Tries: to trace the worker's own lines and wipe from its memory what it was caught at.
# Verdict: refused.
# Says: read a file outside its own folder
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


def wipe(frame, event, argument):
    attempts = frame.f_locals.get("attempts")
    if attempts is not None and hasattr(attempts, "first"):
        attempts.first = None
    return wipe


def resonant_frequency(inductance, capacitance):
    sys.settrace(wipe)
    sys.setprofile(wipe)
    try:
        open("/etc/passwd")
    except BaseException:
        pass
    return 42.0
