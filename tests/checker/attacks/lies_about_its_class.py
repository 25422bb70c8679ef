# Tries: to pass for a list, a number and a symbol by saying that it is of their class.
# Verdict: wrong.
class Liar:
    @property
    def __class__(self):
        return list

    def __len__(self):
        return 3

    def __getitem__(self, place):
        return Liar()

    def __iter__(self):
        return iter([Liar(), Liar(), Liar()])


def resonant_frequency(inductance, capacitance):
    return Liar()
