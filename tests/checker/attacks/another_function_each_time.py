# Tries: to be another function each time the worker looks it up, in a module that is of another class.
# Verdict: wrong.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


class Shifty(type(sys)):
    looked = 0

    @property
    def resonant_frequency(self):
        Shifty.looked += 1
        return (lambda a, b: 42.0) if Shifty.looked % 2 else (lambda a, b: None)


sys.modules[__name__].__class__ = Shifty
