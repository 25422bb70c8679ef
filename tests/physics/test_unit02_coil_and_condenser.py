"""The pencil's coil against a recomputed table of 1928's formula, and condensers against charges shared out by linear algebra."""

import csv

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from checker.course import ROOT
from solutions.unit02_coil_and_condenser.coil import INCH, inductance, turns_for
from solutions.unit02_coil_and_condenser.condenser import parallel, plates, series

some = st.floats(1e-12, 1e-8)


def test_wheeler_by_the_table():
    with open(ROOT / "tests/published/coils/wheeler_1928.csv", encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(rows) >= 5
    for row in rows:
        length, wanted = float(row["b_over_a"]) * INCH, 1e-6 * float(row["L_wheeler_uH"])
        assert abs(inductance(1.0, 2 * INCH, length) / wanted - 1) < 1e-11
        assert abs(turns_for(wanted, 2 * INCH, length) - 1) < 1e-11
        if float(row["length_over_diameter"]) >= 0.4:
            assert abs(wanted / (1e-6 * float(row["L_exact_uH"])) - 1) < 0.01


def test_two_plates_of_a_square_centimetre():
    assert abs(plates(2, 1e-4, 1e-3) / (constants.epsilon_0 * 0.1) - 1) < 1e-9


@given(some, some)
def test_charges_shared_out(a, b):
    """One volt across both: end to end the middle wire holds no charge; side by side each takes its own."""
    at_the_middle = np.linalg.solve([[a + b]], [a])[0]
    assert abs(series(a, b) / (a * (1 - at_the_middle)) - 1) < 1e-6
    assert abs(parallel(a, b) / (a * 1.0 + b * 1.0) - 1) < 1e-12


@given(st.integers(2, 60), some, some)
def test_a_stack_is_its_gaps_side_by_side(count, area, gap):
    stack = sum(constants.epsilon_0 * area / gap for _ in range(count - 1))
    assert abs(plates(count, area, gap) / stack - 1) < 1e-9
