"""Names first: M12, C, C3 = coupling, tuning, throttle; R1, C1, L1 = aerial; R, L, g = tuned; R3, L3, M23, M13 =
tickler; gm, ra = valve (of four: gm, ra, Cga, Ca = valve). refuse_impossible_windings(coupling, aerial, tuned,
tickler). With s = Polynomial([0, 1]) and v = the grid's volts put i2 = (s C + g) v into the rows. First row: 1 + s C1
(R1 + s L1), s² C1 M12 (s C + g), s² C1 M13. Second: s M12, 1 + (R + s L)(s C + g), s M23. Third: s² C3 M13, s C3 (gm ra
+ s M23 (s C + g)), 1 + s C3 (ra + R3 + s L3). Return determinant(rows)[6::-1]. Four: G = s (C + Cga) + g for the grid,
A = −s Cga for the anode. First row as before with G, and s² C1 M12 A; second with G, and (R + s L) A; third: s² C3 M13,
s² C3 M23 G, 1 + s C3 (R3 + s L3), s C3 (s M23 A − 1); fourth: 0, (gm + A) ra, ra, 1 + s ra (Ca + Cga). Return
determinant(rows)[7::-1]. A number alone is Polynomial([number]). Pole: max(np.roots(coefficients), key=lambda p:
(p.real, p.imag)).
"""

import numpy as np
from numpy.polynomial import Polynomial


def tuned_grid_polynomial(
    tuned_inductance,
    tuned_resistance,
    tuning_capacitance,
    tickler_inductance,
    anode_resistance,
    mutual_inductance,
    transconductance,
):
    L, R, C = tuned_inductance, tuned_resistance, tuning_capacitance
    L3, ra, M, gm = tickler_inductance, anode_resistance, mutual_inductance, transconductance
    return C * (L * L3 - M**2), C * (L * ra + L3 * R), R * C * ra + L3 - M * gm * ra, ra


def determinant(rows: list[list[Polynomial]]) -> np.ndarray:
    """Coefficients of the determinant of a square of polynomials in s.

    Parameters
    ----------
    rows : list of n lists of n polynomials
        One list for each equation, in it what multiplies the first unknown, the second and so on. A polynomial may be given
        by its coefficients too: [1, 2, 3] for 1 + 2 s + 3 s².

    Returns
    -------
    ndarray, from the constant upwards; above the highest power that there is stand zeros

    Source
    ------
    Laplace's expansion along the first row: each entry times the determinant of what is left without its row and its
    column, the signs in turn. Polynomials are multiplied by convolving their coefficients.
    """
    square = [[np.asarray(getattr(entry, "coef", entry)) for entry in row] for row in rows]
    length = max(len(entry) for row in square for entry in row)
    square = [[np.append(entry, np.zeros(length - len(entry))) for entry in row] for row in square]

    def expanded(first, *others):
        if not others:
            return first[0]
        parts = []
        for column, entry in enumerate(first):
            left = (row[:column] + row[column + 1 :] for row in others)
            parts.append(np.convolve(entry, expanded(*left)))
        return sum(parts[::2]) - sum(parts[1::2])

    return expanded(*square)


def refuse_impossible_windings(
    coupling: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
) -> None:
    """Nothing, for windings that can be wound.

    Parameters
    ----------
    coupling, aerial, tuned, tickler
        As in `three_winding_polynomial`.

    Raises
    ------
    ValueError
        If the mutual inductance of two windings is the root of the product of their inductances, or more: no coil can catch
        more than all of another's field.
    """
    (*_, one), (_, two, _), (_, three, to_tuned, to_aerial) = aerial, tuned, tickler
    for mutual, product in ((coupling, one * two), (to_tuned, two * three), (to_aerial, one * three)):
        if mutual**2 >= product:
            raise ValueError("two windings are coupled more closely than coils can be: make their mutual inductance smaller")


def three_winding_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    refuse_impossible_windings(coupling, aerial, tuned, tickler)
    M12, C, C3 = coupling, tuning, throttle
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, M23, M13 = tickler
    gm, ra = valve
    s = Polynomial([0, 1])
    grid = s * C + g
    a, b, c = 1 + s * C1 * (R1 + s * L1), s**2 * C1 * M12 * grid, s**2 * C1 * M13
    d, e, f = s * M12, 1 + (R + s * L) * grid, s * M23
    h, i, j = s**2 * C3 * M13, s * C3 * (gm * ra + s * M23 * grid), 1 + s * C3 * (ra + R3 + s * L3)
    return determinant([[a, b, c], [d, e, f], [h, i, j]])[6::-1]


def full_polynomial(coupling, tuning, throttle, aerial, tuned, tickler, valve):
    refuse_impossible_windings(coupling, aerial, tuned, tickler)
    M12, C, C3 = coupling, tuning, throttle
    R1, C1, L1 = aerial
    R, L, g = tuned
    R3, L3, M23, M13 = tickler
    gm, ra, Cga, Ca = valve
    s = Polynomial([0, 1])
    G, A = s * (C + Cga) + g, -s * Cga
    rows = [
        [1 + s * C1 * (R1 + s * L1), s**2 * C1 * M12 * G, s**2 * C1 * M13, s**2 * C1 * M12 * A],
        [s * M12, 1 + (R + s * L) * G, s * M23, (R + s * L) * A],
        [s**2 * C3 * M13, s**2 * C3 * M23 * G, 1 + s * C3 * (R3 + s * L3), s * C3 * (s * M23 * A - 1)],
        [Polynomial([0]), (gm + A) * ra, Polynomial([ra]), 1 + s * ra * (Ca + Cga)],
    ]
    return determinant(rows)[7::-1]


def leading_pole(coefficients):
    return max(np.roots(coefficients), key=lambda p: (p.real, p.imag))
