"""Triodes of the valve manuals, and the three-halves law fitted to them.

`python -m solutions.unit05_valve.triodes` prints the fits and by how much each of them misses the manual.
"""

from functools import cache
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit05_valve.triode_current import (
    anode_resistance,
    law_from_manual,
    mutual_conductance,
    triode_current,
)

FIGURES = "anode_current", "amplification_factor", "anode_resistance", "mutual_conductance"
STEPS = 30
NUDGE = 1e-6


class Line(NamedTuple):
    """One line of a manual: volts, amperes, a pure number, ohms, siemens; and how the line is known."""

    anode_voltage: float
    grid_voltage: float
    anode_current: float
    amplification_factor: float
    anode_resistance: float
    mutual_conductance: float
    known: str


class Law(NamedTuple):
    """The three numbers of a triode's law, in the order in which `triode_current` takes them."""

    amplification_factor: float
    perveance: float
    offset: float


# RCA Receiving Tube Manual (RC-11, 1933, to RC-22, 1963) and RCA/Cunningham sheets: typical characteristics of types
# numbered by the RMA or before it. Grid volts count from the negative end of a filament. "found": read in a document
# that quotes the sheet; "memory": recalled from the manuals. All stand in tests/published/valve/triodes.csv too.
MANUAL = {
    "01-A": (
        Line(90, -4.5, 2.5e-3, 8.0, 11000, 725e-6, "memory"),
        Line(135, -9, 3.0e-3, 8.0, 10000, 800e-6, "memory"),
    ),
    "11 / 12 (WD-11)": (
        Line(90, -4.5, 2.5e-3, 6.6, 15500, 425e-6, "memory"),
        Line(135, -10.5, 3.0e-3, 6.6, 15000, 440e-6, "memory"),
    ),
    "12-A (112-A)": (
        Line(90, -4.5, 5.0e-3, 8.5, 5400, 1575e-6, "memory"),
        Line(180, -13.5, 7.7e-3, 8.5, 4700, 1800e-6, "found"),
    ),
    "30": (
        Line(90, -4.5, 2.5e-3, 9.3, 11000, 850e-6, "memory"),
        Line(135, -9, 3.0e-3, 9.3, 10300, 900e-6, "memory"),
        Line(180, -13.5, 3.1e-3, 9.3, 10300, 900e-6, "found"),
    ),
    "1H4-G": (
        Line(90, -4.5, 2.5e-3, 9.3, 11000, 850e-6, "memory"),
        Line(135, -9, 3.0e-3, 9.3, 10300, 900e-6, "memory"),
        Line(180, -13.5, 3.1e-3, 9.3, 10300, 900e-6, "memory"),
    ),
    "1LE3": (
        Line(90, 0, 4.5e-3, 14.5, 11200, 1300e-6, "memory"),
        Line(90, -3, 1.4e-3, 14.5, 19000, 760e-6, "memory"),
    ),
    "1E4-G": (
        Line(90, 0, 4.5e-3, 14.5, 11200, 1325e-6, "memory"),
        Line(90, -3, 1.5e-3, 14.0, 17000, 825e-6, "memory"),
    ),
    "27": (
        Line(135, -9, 4.5e-3, 9.0, 9000, 1000e-6, "memory"),
        Line(250, -21, 5.2e-3, 9.0, 9250, 975e-6, "memory"),
    ),
    "37": (
        Line(90, -6, 2.5e-3, 9.2, 11500, 800e-6, "memory"),
        Line(250, -18, 7.5e-3, 9.2, 8400, 1100e-6, "memory"),
    ),
    "6J5": (
        Line(90, 0, 10e-3, 20, 6700, 3000e-6, "memory"),
        Line(250, -8, 9.0e-3, 20, 7700, 2600e-6, "memory"),
    ),
}

# Picofarad: grid to plate, grid to filament (or cathode), plate to filament. RCA Receiving Tube Manual, all from memory, the
# valve alone: base and holder add one or two.
CAPACITANCES = {
    "01-A": (8.1, 3.1, 2.2),
    "11 / 12 (WD-11)": (3.3, 2.5, 2.5),
    "12-A (112-A)": (8.1, 4.2, 2.1),
    "30": (6.0, 3.0, 2.1),
    "1H4-G": (6.0, 3.5, 3.5),
    "1LE3": (1.7, 1.7, 3.0),
    "1E4-G": (2.4, 2.4, 6.0),
    "27": (3.3, 3.1, 2.3),
    "37": (2.0, 3.5, 2.9),
    "6J5": (3.4, 3.4, 3.6),
}


def capacitances(kind: str) -> tuple[float, float, float]:
    """A type's own capacitances.

    Parameters
    ----------
    kind : str
        As for `manual_line`.

    Returns
    -------
    grid_anode, grid_filament, anode_filament : float, farad

    Source
    ------
    RCA Receiving Tube Manual (from memory).
    """
    return tuple(1e-12 * value for value in CAPACITANCES[kind.removeprefix("type ")])


def misses(law: Law, lines: tuple[Line, ...]) -> np.ndarray:
    """By how much a law misses the manual's figures, as fractions of them.

    Parameters
    ----------
    law : Law
    lines : tuple of Line

    Returns
    -------
    ndarray of shape (lines, 4), a fraction, positive where the law gives more
        A column for each of `FIGURES`.
    """
    anode, grid, current, factor, resistance, slope = np.array([line[:6] for line in lines]).T
    here = (anode, grid, *law)
    given = np.transpose([current, factor, resistance, slope])
    alike = np.full_like(factor, law.amplification_factor)
    predicted = (triode_current(*here), alike, anode_resistance(*here), mutual_conductance(*here))
    return np.transpose(predicted) / given - 1


def fit(lines: tuple[Line, ...]) -> Law:
    """The law that comes nearest to all lines of a type: least squares of the relative misses, by Gauss and Newton.

    Current, amplification factor and mutual conductance count alike; the anode resistance follows from them.

    Parameters
    ----------
    lines : tuple of Line, one or more

    Returns
    -------
    Law
    """
    first = lines[0]
    perveance, offset = law_from_manual(
        first.anode_voltage, first.grid_voltage, first.anode_current, first.amplification_factor, first.mutual_conductance
    )
    scale = np.array([first.amplification_factor, perveance, 1.0])
    numbers = np.array([1.0, 1.0, offset])

    def logarithms(numbers):
        return np.log1p(misses(Law(*numbers * scale), lines)[:, [0, 1, 3]]).ravel()

    for _ in range(STEPS):
        missed = logarithms(numbers)
        slopes = [(logarithms(numbers + nudge) - missed) / NUDGE for nudge in NUDGE * np.eye(3)]
        numbers = numbers - np.linalg.lstsq(np.transpose(slopes), missed)[0]
    return Law(*map(float, numbers * scale))


@check_ranges
def manual_line(kind: str, number: int) -> Line:
    """One line of the manual.

    Parameters
    ----------
    kind : str
        As in `MANUAL`, with the word "type" before it or without: "type 30".
    number : int, from 0

    Returns
    -------
    Line
    """
    return MANUAL[kind.removeprefix("type ")][number]


@cache
@check_ranges
def fitted_law(kind: str) -> Law:
    """The law fitted to all lines of a type.

    Parameters
    ----------
    kind : str
        As for `manual_line`.

    Returns
    -------
    Law
    """
    return fit(MANUAL[kind.removeprefix("type ")])


@check_ranges
def miss(kind: str, number: int, figure: str) -> float:
    """Error of the fitted law against one figure of the manual.

    Parameters
    ----------
    kind, number
        As for `manual_line`.
    figure : str
        One of `FIGURES`.

    Returns
    -------
    float, a fraction, positive where the law gives more; to a thousandth, beyond which no manual goes
    """
    return round(float(misses(fitted_law(kind), (manual_line(kind, number),))[0, FIGURES.index(figure)]), 3)


def report() -> str:
    """The fits to all types of `MANUAL` and their misses, as a table in text.

    Returns
    -------
    str
    """
    rows = ["type               μ     µA/V^1.5  offset V   Va    Vg     misses in %: Ia    μ     ra    gm"]
    for name, lines in MANUAL.items():
        law = fit(lines)
        for line, missed in zip(lines, 100 * misses(law, lines), strict=True):
            rows.append(
                f"{name:16} {law.amplification_factor:5.2f} {1e6 * law.perveance:9.1f} {law.offset:9.2f}"
                f" {line.anode_voltage:7.0f} {line.grid_voltage:6.1f}        " + "".join(f" {m:+6.1f}" for m in missed)
            )
    return "\n".join(rows)


if __name__ == "__main__":
    print(report())
