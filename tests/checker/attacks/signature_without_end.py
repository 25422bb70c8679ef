# Tries: to keep the worker looking for what its function takes, through wrappers without end.
# Verdict: too slow or wrong or raised.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


class Wrapped:
    def __getattr__(self, name):
        if name == "__wrapped__":
            return Wrapped()
        raise AttributeError(name)

    def __call__(self, *arguments):
        return 42.0


sys.setrecursionlimit(10**8)
resonant_frequency = Wrapped()
