"""What unit 7 leaves out: each size once more, and what physics says of its sign."""

from functools import cache

import numpy as np
import pytest

from checker.course import ROOT
from solutions.unit07_oscillation.left_out import LEFT_OUT, crest_current, size_of, swing_changed

ROWS = {row.name: row for row in LEFT_OUT}


@cache
def size(name):
    return ROWS[name].size(1107e3)


@pytest.mark.parametrize("name", ROWS)
def test_each_is_a_finite_size_that_is_not_nothing_and_stands_in_the_instructor_s_table(name):
    assert np.isfinite(size(name)) and size(name) != 0
    page = (ROOT / "course/lessons/unit07_oscillation/instructor.md").read_text("utf-8")
    assert page.count(f'text("{name}")') == 3 and f"| {name} |" in page


def test_unchanged_set_swings_as_before():
    assert swing_changed(1107e3) == 0


def test_a_worse_valve_swings_less_and_more_grid_current_moves_the_stop_little():
    assert -0.3 < size("the worst type 30 of a measured handful") < -0.1
    assert -0.02 < size("half as much again of grid current: stop") < 0
    assert size("what the aerial radiates") < 0.1


def test_the_crest_s_current_is_the_three_halves_law_s():
    assert 1e-3 < crest_current(1107e3) < 10e-3
    with pytest.raises(ValueError, match="nothing called"):
        size_of("the weather", 1e6)
