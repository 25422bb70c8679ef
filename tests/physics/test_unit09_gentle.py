"""The step of a swing against an integrator of SciPy's; the bands against the universal resonance curve, and reaction's table."""

import csv
import tomllib

from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from checker.course import ROOT
from solutions.unit09_feedback_receivers.far_station import feedback, narrowest, widest
from solutions.unit09_feedback_receivers.swing_step import swing_step


@given(st.floats(0, 5), st.floats(0, 1e4), st.sampled_from([-1e4, -300.0, 50.0, 8e3]), st.floats(1e-6, 2e-4))
def test_a_step_is_what_an_integrator_finds(swing, push, growth, step):
    found = solve_ivp(lambda time, v: growth * v + push, (0, step), [swing], rtol=1e-10, atol=1e-12).y[0][-1]
    assert abs(swing_step(swing, push, growth, step) - found) < 1e-7


def test_bands_by_the_universal_resonance_curve():
    with open(ROOT / "tests/published/coils/universal_resonance_curve.csv", encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(rows) > 8
    for row in rows[1:]:  # the first is the middle, where nothing is lost
        band = 9e3 / float(row["a"])  # a is the distance in bands
        assert abs(widest(9e3, -float(row["response_dB"])) / band - 1) < 1e-8
        assert abs(narrowest(9e3, -float(row["response_dB"])) / band - 1) < 1e-8


def test_reaction_by_the_table():
    table = tomllib.loads((ROOT / "tests/published/valve/reaction.toml").read_text("utf-8"))["q_multiplication"]
    for k, band in zip(table["k"], table["bw_khz_for_f0_1mhz_q100"], strict=True):
        assert abs(feedback(1e6, 100.0, 1e3 * band) - k) < 1e-12
