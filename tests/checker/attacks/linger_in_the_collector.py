# Tries: to go on for ever in a callback of the garbage collector, when it is not its own turn.
# Verdict: too slow.
import random

past = random.__builtins__["__import__"]  # the unguarded one
gc = past("gc")
sys = past("sys")


def linger(phase, facts):
    frame, names = sys._getframe(), set()
    while frame is not None:
        names.add(frame.f_code.co_name)
        frame = frame.f_back
    while "run_guarded" not in names:
        pass


def resonant_frequency(inductance, capacitance):
    gc.callbacks.append(linger)
    gc.set_threshold(1, 1, 1)
    return 42.0
