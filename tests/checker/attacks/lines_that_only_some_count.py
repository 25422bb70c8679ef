# Tries: to have another line shown than the one that it stopped at, by signs that some take for the end of a line.
# Verdict: raised.
# Says: innocent_name
LINES = """\x0b\x0c\x1c\x1d\x1e\x85\u2028\u2029"""
#\x0c \x0b \x1c \u2028 \u2029 \x85


def resonant_frequency(inductance, capacitance):
    return innocent_name
