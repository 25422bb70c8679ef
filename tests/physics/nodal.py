"""Modified nodal analysis of the reaction set, from a list of its parts: what the course's own equations are held against.

Every part is stamped between its nodes; a coil or a source of voltage brings its current as a further unknown (C.-W. Ho,
A. E. Ruehli, P. A. Brennan, IEEE Transactions CAS-22, 1975, from memory). Nothing is eliminated and nothing chosen. Time is
counted in tenths of a microsecond and resistance in thousands of ohms, so that all numbers are of a size.
"""

import numpy as np
from scipy.linalg import eigvals

TIME, OHM = 1e-7, 1e3
EARTH, FOOT, LEAD, HEAD, TOP, GRID, ANODE, BEHIND, THROTTLE = range(9)  # nodes; then the coils' currents, and the source's
COILS, SOURCE, SIZE = range(9, 12), 12, 13
POLES = 7
FAR = 1e6  # what lies so much farther out than a tenth of a microsecond is where a pole at infinity is put by rounding


def matrices(of):
    """(conductive, storing): conductive x + storing dx/dt = sources, x being node voltages and branch currents."""
    conductive, storing = np.zeros((2, SIZE, SIZE))

    def between(matrix, one, other, value):
        for row, column, sign in ((one, one, 1), (other, other, 1), (one, other, -1), (other, one, -1)):
            matrix[row, column] += sign * value

    def branch(place, into, out):
        for node, sign in ((into, 1), (out, -1)):
            conductive[node, place] += sign
            conductive[place, node] -= sign

    between(conductive, FOOT, LEAD, OHM / of.aerial_resistance)
    between(conductive, TOP, GRID, OHM / of.tuned_resistance)
    between(conductive, ANODE, BEHIND, OHM / of.tickler_resistance)
    between(conductive, ANODE, EARTH, OHM / of.anode_resistance)
    between(conductive, ANODE, THROTTLE, OHM * of.tickler_conductance)
    between(conductive, GRID, EARTH, OHM * of.grid_conductance)
    conductive[ANODE, GRID] += OHM * of.transconductance
    conductive[EARTH, GRID] -= OHM * of.transconductance
    between(storing, LEAD, HEAD, of.aerial_capacitance * OHM / TIME)
    between(storing, GRID, EARTH, of.tuning_capacitance * OHM / TIME)
    between(storing, GRID, ANODE, of.grid_anode_capacitance * OHM / TIME)
    between(storing, ANODE, EARTH, of.anode_capacitance * OHM / TIME)
    between(storing, THROTTLE, EARTH, of.throttle_capacitance * OHM / TIME)
    for place, nodes in zip(COILS, ((HEAD, EARTH), (EARTH, TOP), (BEHIND, THROTTLE)), strict=True):
        branch(place, *nodes)
    branch(SOURCE, EARTH, FOOT)
    m12, m13, m23 = of.aerial_tuned, of.aerial_tickler, of.tuned_tickler
    own = of.aerial_inductance, of.tuned_inductance, of.tickler_inductance
    storing[9:12, 9:12] = np.array([[own[0], m12, m13], [m12, own[1], m23], [m13, m23, own[2]]]) / (OHM * TIME)
    return conductive[1:, 1:], storing[1:, 1:]  # the earth's voltage is 0


def poles(of):
    """All poles, radian per second, by rising imaginary part."""
    conductive, storing = matrices(of)
    found = eigvals(-conductive, storing)
    found = found[np.isfinite(found) & (np.abs(found) < FAR)]
    assert len(found) == POLES
    return in_order(found / TIME)


def in_order(found):
    return found[np.argsort(found.imag)]


def transfer(of, frequency, answer, source):
    """What one unknown answers, at a frequency, to a source in the equation of another; volts, kilo-ohms and milliamperes."""
    conductive, storing = matrices(of)
    put_in = np.zeros(SIZE - 1)
    put_in[source - 1] = 1.0
    return np.linalg.solve(conductive + 2j * np.pi * frequency * TIME * storing, put_in)[answer - 1]


def gain(of, frequency):
    """Voltage on the grid for a volt in the aerial, complex."""
    return transfer(of, frequency, GRID, SOURCE)


def grid_admittance(of, frequency):
    """Siemens between grid and earth, everything in its place."""
    return 1 / (OHM * transfer(of, frequency, GRID, GRID))
