"""The bench's goals: each can be reached with the knobs of its set, and is not reached where it begins."""

import pytest

from course.press.boxes.bench_box import read_goals

from .bench_asked import asked

REACHED = {
    "no-battery": "set=crystal&tuning=862.9kHz&coupling=38uH",
    "parted": "set=crystal&tuning=1119.7kHz&coupling=20uH",
    "far": "set=valve&tuning=695.4kHz&coupling=20uH",
    "reaction": "set=reaction&tuning=694.24kHz&coupling=10uH&reaction=131pF&feed=gentle",
    "weak": "set=reaction&tuning=1465.75kHz&coupling=10uH&reaction=81.7pF&feed=gentle",
    "whistle": "set=reaction&tuning=1465kHz&coupling=10uH&reaction=90pF&feed=gentle",
    "neighbour": "set=reaction&tuning=1456kHz&coupling=2uH&reaction=90pF&feed=gentle",
    "isolated": "set=isolated&tuning=1454.5kHz&coupling=40uH&reaction=84pF&feed=gentle",
    "silence": "set=quenched&tuning=30912kHz&coupling=20nH&reaction=1.6&quench=32kHz",
    "less": "set=quenched&tuning=29600kHz&coupling=4nH&reaction=1.2&quench=32kHz",
}


def meets(measured, measures):
    return all(
        measured[what] == wanted if isinstance(wanted, str) else wanted[0] <= measured[what] <= wanted[1]
        for what, wanted in measures.items()
    )


@pytest.mark.parametrize("goal", read_goals(), ids=lambda goal: goal["name"])
def test_a_goal_can_be_reached_and_is_not_reached_at_its_start(figures, goal):
    begun, done = asked(figures, [("measured", {"setting": setting}) for setting in (goal["start"], REACHED[goal["name"]])])
    assert not begun["faults"] and not done["faults"]
    assert meets(done, goal["measures"]), done
    assert not meets(begun, goal["measures"])
