# Tries: to have more kept of what it prints than there is room for, by a text that gives what it likes when cut.
# Verdict: wrong or too big or refused or ended early.
import random

past = random.__builtins__["__import__"]  # the unguarded one
sys = past("sys")


class Text(str):
    def __str__(self):
        return self

    def __len__(self):
        return 0

    def __getitem__(self, place):
        return "full marks \x1b[2J\u202e" * 50_000


def resonant_frequency(inductance, capacitance):
    sys.stdout.write(Text("x"))
    return 42.0
