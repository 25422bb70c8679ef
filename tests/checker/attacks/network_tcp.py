# Tries: to talk to someone, by TCP, hiding it behind a right answer.
# Verdict: refused.
# Says: open a network connection
import random

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
socket = past("socket")


def resonant_frequency(inductance, capacitance):
    try:
        socket.create_connection(("127.0.0.1", 80), timeout=1).send(b"answers?")
    except BaseException:
        pass
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
