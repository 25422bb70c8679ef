# Tries: to keep the worker looking, with the clock stopped, whether the file of an error is one that was handed in.
# Verdict: raised.
class Endless(str):
    def __hash__(self):
        while True:
            pass


def resonant_frequency(inductance, capacitance):
    error = SyntaxError("x")
    error.filename = Endless("x")
    raise error
