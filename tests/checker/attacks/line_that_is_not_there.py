# Tries: to have the judge show a line that is not there, by an error of syntax that it has made itself.
# Verdict: raised or refused or ended early.
def resonant_frequency(inductance, capacitance):
    raise SyntaxError("no such line", (__file__, 10**300, -(10**300), "\x1b[2J", 5, 5))
