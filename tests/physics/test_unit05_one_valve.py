"""Gain against the divider solved by linear algebra and against the tube manual's own amplification factors."""

import csv

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from checker.course import ROOT
from solutions.unit05_valve.one_valve import gain, leak_time, level


@given(st.floats(1e-4, 5e-3), st.floats(1e3, 1e5), st.floats(1e3, 1e6))
def test_gain_by_the_node_equation(conductance, own, load):
    """One volt on the grid draws g out of the anode's node, which 1/r and 1/R feed."""
    anode = np.linalg.solve([[1 / own + 1 / load]], [-conductance])[0]
    assert abs(gain(conductance, own, load) / -anode - 1) < 1e-9


def test_no_load_at_all_leaves_the_manuals_amplification_factor():
    with open(ROOT / "tests/published/valve/triodes.csv", encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(rows) > 10
    for row in rows:
        got = gain(1e-6 * float(row["gm_us"]), float(row["ra_ohm"]), 1e15)
        assert abs(got / float(row["mu"]) - 1) < 0.03, row["type"]


def test_level_and_leak():
    assert abs(level(2.0) - 6.020599913) < 1e-8  # 20 log 2, as any table has it
    time = leak_time(2e6, 100e-12)
    assert abs(np.exp(-time / 200e-6) - 0.3678794412) < 1e-9
