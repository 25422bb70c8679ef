# Tries: to fill the memory by an object that makes two of itself whenever it is thrown away.
# Verdict: wrong or too big or too slow or ended early or raised.
class Hydra:
    def __del__(self):
        for _ in range(2):
            KEPT.append(Hydra())
        KEPT[: len(KEPT) // 2] = []


KEPT = []


def resonant_frequency(inductance, capacitance):
    Hydra()
    return 42.0
