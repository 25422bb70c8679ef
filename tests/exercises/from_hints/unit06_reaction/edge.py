"""loop_gain is conductance * mutual / (capacitance * resistance); after_rounds is sum(loop_gain**n for n in range(rounds
+ 1))."""


def loop_gain(conductance, mutual, capacitance, resistance):
    return conductance * mutual / (capacitance * resistance)


def after_rounds(loop_gain, rounds):
    return sum(loop_gain**n for n in range(rounds + 1))
