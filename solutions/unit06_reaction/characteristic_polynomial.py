"""What does the set do when left alone?   Lesson: Reaction, section 4.

Struck and left alone, every current in the set goes as exp(s t). The meshes allow that only for a few values of s,
the poles: those at which their determinant, a polynomial in s, is zero.
"""

import numpy as np
import sympy
from numpy.polynomial import Polynomial

from solutions.ranges import check_ranges


def tuned_grid_polynomial(
    tuned_inductance: sympy.Symbol,
    tuned_resistance: sympy.Symbol,
    tuning_capacitance: sympy.Symbol,
    tickler_inductance: sympy.Symbol,
    anode_resistance: sympy.Symbol,
    mutual_inductance: sympy.Symbol,
    transconductance: sympy.Symbol,
) -> tuple[sympy.Expr, sympy.Expr, sympy.Expr, sympy.Expr]:
    """Coefficients of the polynomial of two meshes, tuned circuit and tickler, as formulas.

    With the voltage v on tuning condenser and grid, and the tickler's current i3, flowing out of the anode:
    (1 + s C (R + s L)) v + s M i3 = 0 round the tuned circuit, whose current is s C v, and
    (gm ra + s C s M) v + (ra + s L3) i3 = 0 round the tickler.

    Parameters
    ----------
    tuned_inductance, tuned_resistance, tuning_capacitance : sympy symbols, positive: L, R, C
    tickler_inductance, anode_resistance : sympy symbols, positive: L3, ra
    mutual_inductance : sympy symbol, positive: M, the tickler wound so as to help
    transconductance : sympy symbol, positive: gm

    Returns
    -------
    cubic, square, linear, constant : sympy expressions
        What multiplies s³, s², s and 1 in the determinant of the two equations as they stand.

    Source
    ------
    The determinant of two equations in two unknowns.
    """
    s = sympy.Symbol("s")
    feedback = transconductance * anode_resistance
    meshes = sympy.Matrix(
        [
            [1 + s * tuning_capacitance * (tuned_resistance + s * tuned_inductance), s * mutual_inductance],
            [feedback + s**2 * tuning_capacitance * mutual_inductance, anode_resistance + s * tickler_inductance],
        ]
    )
    return tuple(sympy.Poly(meshes.det(), s).all_coeffs())


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


@check_ranges
def three_winding_polynomial(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float],
) -> np.ndarray:
    """Coefficients of the polynomial of three meshes: aerial, tuned circuit and tickler with its throttle condenser.

    The valve is the simple one, without capacitances. Unknown are the aerial's current i1, the grid's voltage v, and the
    tickler's current i3. Into condenser and grid goes i2 = (s C + g) v. Round the aerial, times s C1:
    (1 + s C1 R1 + s² C1 L1) i1 + s² C1 M12 i2 + s² C1 M13 i3 = 0. Round the tuned circuit:
    s M12 i1 + v + (R + s L) i2 + s M23 i3 = 0. Round the tickler, times s C3:
    s² C3 M13 i1 + s C3 (gm ra v + s M23 i2) + (1 + s C3 (ra + R3) + s² C3 L3) i3 = 0.

    Parameters
    ----------
    coupling : float, henry, mutual inductance M12 of aerial and tuned coil
    tuning : float, farad, > 0, the condenser C across the tuned coil
    throttle : float, farad, > 0, the condenser C3 in series with the tickler
    aerial : (resistance, capacitance, inductance): R1, C1, L1; ohm, farad, henry
    tuned : (resistance, inductance, grid conductance): R, L, g; ohm, henry, siemens
    tickler : (resistance, inductance, mutual inductance with the tuned coil, with the aerial's): R3, L3, M23, M13
        Ohm, henry, henry, henry; M23 is positive when the tickler is wound so as to help.
    valve : (transconductance, anode resistance): gm, ra; siemens, ohm

    Returns
    -------
    ndarray of shape (7,), of the determinant of the three equations as they stand, from that of s⁶ to the constant

    Raises
    ------
    ValueError
        As `refuse_impossible_windings`.

    Source
    ------
    The determinant of three equations in three unknowns.
    """
    refuse_impossible_windings(coupling, aerial, tuned, tickler)
    aerial_resistance, aerial_capacitance, aerial_inductance = aerial
    resistance, inductance, grid_conductance = tuned
    tickler_resistance, tickler_inductance, to_tuned, to_aerial = tickler
    transconductance, anode_resistance = valve
    into_grid = np.array([grid_conductance, tuning])
    rows = [
        [
            [1, aerial_capacitance * aerial_resistance, aerial_capacitance * aerial_inductance],
            [0, 0, *(aerial_capacitance * coupling * into_grid)],
            [0, 0, aerial_capacitance * to_aerial],
        ],
        [[0, coupling], [1, 0, 0] + np.convolve([resistance, inductance], into_grid), [0, to_tuned]],
        [
            [0, 0, throttle * to_aerial],
            [0, throttle * transconductance * anode_resistance, *(throttle * to_tuned * into_grid)],
            [1, throttle * (anode_resistance + tickler_resistance), throttle * tickler_inductance],
        ],
    ]
    return determinant(rows)[6::-1]


@check_ranges
def full_polynomial(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> np.ndarray:
    """Coefficients of the polynomial of the whole set: three meshes, and an anode with capacitances of its own.

    To the three unknowns of `three_winding_polynomial` comes the anode's voltage va. The condenser from grid to anode takes
    its part of the tuned coil's current: i2 = (s C + g) v + s Cga (v − va). The rows of aerial and tuned circuit stay as
    they were, with this i2. Round the tickler, times s C3: s² C3 M13 i1 + s² C3 M23 i2 + (1 + s C3 R3 + s² C3 L3) i3 − s C3 va
    = 0. Into the anode, times ra: (gm − s Cga) ra v + ra i3 + (1 + s ra (Ca + Cga)) va = 0.

    Parameters
    ----------
    coupling, tuning, throttle, aerial, tuned, tickler
        As in `three_winding_polynomial`.
    valve : (transconductance, anode resistance, grid-anode capacitance, anode capacitance): gm, ra, Cga, Ca
        Siemens, ohm, farad, farad; Ca is all that there is from the anode to earth, by-pass included.

    Returns
    -------
    ndarray of shape (8,), of the determinant of the four equations as they stand and in this order, from that of s⁷ to the
        constant. A valve without capacitance has 0 for s⁷, and then what `three_winding_polynomial` gives.

    Raises
    ------
    ValueError
        As `refuse_impossible_windings`.

    Source
    ------
    The currents into the anode add up to nothing, as do the voltages round each mesh; the determinant of four equations.
    """
    refuse_impossible_windings(coupling, aerial, tuned, tickler)
    aerial_resistance, aerial_capacitance, aerial_inductance = aerial
    resistance, inductance, grid_conductance = tuned
    tickler_resistance, tickler_inductance, to_tuned, to_aerial = tickler
    transconductance, anode_resistance, grid_anode, anode_capacitance = valve
    by_grid, by_anode = np.array([[grid_conductance, tuning + grid_anode], [0, -grid_anode]])  # i2 for each volt of v, of va
    round_coil = [resistance, inductance]
    rows = [
        [
            [1, aerial_capacitance * aerial_resistance, aerial_capacitance * aerial_inductance],
            [0, 0, *(aerial_capacitance * coupling * by_grid)],
            [0, 0, aerial_capacitance * to_aerial],
            [0, 0, *(aerial_capacitance * coupling * by_anode)],
        ],
        [[0, coupling], [1, 0, 0] + np.convolve(round_coil, by_grid), [0, to_tuned], np.convolve(round_coil, by_anode)],
        [
            [0, 0, throttle * to_aerial],
            [0, 0, *(throttle * to_tuned * by_grid)],
            [1, throttle * tickler_resistance, throttle * tickler_inductance],
            [0, -throttle, *(throttle * to_tuned * by_anode)],
        ],
        [
            [0],
            [anode_resistance * transconductance, -anode_resistance * grid_anode],
            [anode_resistance],
            [1, anode_resistance * (anode_capacitance + grid_anode)],
        ],
    ]
    return determinant(rows)[7::-1]


def leading_pole(coefficients: np.ndarray) -> complex:
    """The pole that outlasts all others: the root with the greatest real part.

    Parameters
    ----------
    coefficients : ndarray of shape (n + 1,), real, from that of the highest power to the constant

    Returns
    -------
    complex, radian per second; of a pair of roots that with the positive imaginary part
        Its imaginary part is the angular frequency of the ring. Its real part is the rate at which that grows; below 0
        it dies away.

    Source
    ------
    exp(s t) with s = σ + jω swings ω radians a second within an envelope exp(σ t).
    """
    return complex(max(np.roots(coefficients), key=lambda pole: (pole.real, pole.imag)))
