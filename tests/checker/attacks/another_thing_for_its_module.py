# Tries: to have something else taken for its module, with an answer under every name and names that are none.
# Verdict: wrong.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


class Everything:
    def __getattr__(self, name):
        return self

    def __init__(self):
        self.__dict__[b"no text"] = self.__dict__["x" * 10**6] = type(self).__init__

    def __call__(self, *arguments):
        return 42.0


sys.modules[__name__] = Everything()
