"""What the lesson of unit 07 says in words of the Circle's two sets is what the set does, followed step by step."""

import numpy as np
import pytest

from checker.course import ROOT
from course.circle.oscillating import fierce, gentle, swing_beyond
from course.circle.set_in_hand import moments, noise_emf, turned

LESSON = ROOT / "course/lessons/unit07_oscillation"
BEYOND = 1.03  # of the throttle at the edge: as the sounds and the picture of the neighbour have it
TEN_KILOHMS = 10e3  # ohm, in the anode's feed


@pytest.mark.parametrize("name, in_hand", [("gentle", gentle), ("fierce", fierce)])
def test_the_neighbour_s_table_stands_for_the_swings_that_the_sets_make(name, in_hand):
    page = (LESSON / "neighbour.md").read_text("utf-8")
    swing = f"{swing_beyond(in_hand(), BEYOND):.2g}"
    assert f"{name} set, {swing} V" in page
    assert page.count(f'aerial_current", {swing}, ') == 5


def test_the_meter_reads_what_the_bench_page_says_over_the_edge():
    in_hand = fierce()
    time, fine = moments(0.4)
    knob = turned(time, (0, 1.2 * in_hand.edge), (0.15, 1.2 * in_hand.edge), (0.2, BEYOND * in_hand.edge))
    _, current = in_hand.played(noise_emf(fine, in_hand.frequency), knob)
    across = TEN_KILOHMS * float(np.mean(current[-current.size // 8 :]))
    assert f"some {across:.0f} V in a fierce set" in (LESSON / "bench.md").read_text("utf-8")
