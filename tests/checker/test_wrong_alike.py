"""Who is wrong in the same uncommon way across exercises is laid side by side; natural answers and usual slips accuse nobody."""

import json
import random
from collections import Counter
from datetime import date

import pytest
from lxml import html

from checker.judging.verdict import WRONG, Finding, Verdict
from checker.marks.run import wrong_answers
from checker.report.pages import write_reports
from checker.submissions.likeness import WRONG_ALIKE, Alike, alike_from_data, alike_to_data, compare_submissions
from checker.submissions.wrong_alike import ENOUGH, WrongAnswer, same_wrong
from tests.checker.test_likeness import CLASS, COMPARED, QUALITY, RESONANCE, SOLENOID, filled

INPUTS = (("inductance", "100 µH"), ("capacitance", "100 pF"))
SHORT = {
    RESONANCE: "    return np.pi / np.sqrt(inductance + capacitance)\n",
    QUALITY: "    return frequency / (inductance + resistance) ** 3\n",
    SOLENOID: "    return 3 * parameter**2, 7 - parameter\n",
}
OTHER_WORDS = {
    RESONANCE: "    both = inductance + capacitance\n    return np.pi * both**-0.5\n",
    QUALITY: "    return frequency * (resistance + inductance) ** -3\n",
    SOLENOID: "    square = parameter * parameter\n    return 3 * square, -parameter + 7\n",
}
LONG = (
    "    first = frequency * 3\n    second = first - resistance\n    return second / inductance + first * 7 - resistance**3\n"
)


def class_with(wrong, bodies_of, usual=False, got="1.234 kHz"):
    """The class with bodies of one's own, (member, path) → body, and for `wrong` members that wrong answer on each of those paths."""
    members = [(name, dict(files)) for name, files in CLASS[:18]]
    answers = [{} for _ in members]
    for (place, path), body in bodies_of.items():
        members[place][1][f"{path}.py"] = filled(path, body)
        if place in wrong:
            answers[place][path] = (WrongAnswer(path.rpartition("/")[2], INPUTS, got, usual),)
    found, faults = compare_submissions(members, COMPARED, answers)
    assert faults == {}
    return found


def of_pair(bodies, paths, pair=(3, 17)):
    return {(place, path): bodies[path] for place in pair for path in paths}


def test_the_same_words_and_the_same_uncommon_wrong_answers_on_two_exercises_are_listed():
    [alike] = class_with((3, 17), of_pair(SHORT, (RESONANCE, QUALITY)))
    assert alike.members == ("member 3", "member 17") and alike.wrong_on == 2
    assert {(on.exercise, on.manner, on.wrong, on.wrong_by) for on in alike.exercises} == {
        (RESONANCE, WRONG_ALIKE.name, ("resonance gave 1.234 kHz",), 2),
        (QUALITY, WRONG_ALIKE.name, ("quality_factor gave 1.234 kHz",), 2),
    }
    assert [side.member for side in alike.exercises[0].sides] == ["member 3", "member 17"]


def test_other_words_hide_nothing_where_three_are_wrong_alike():
    bodies = of_pair(SHORT, COMPARED, (3,)) | of_pair(OTHER_WORDS, COMPARED, (17,))
    [alike] = class_with((3, 17), bodies)
    assert alike.wrong_on == 3


def test_one_program_of_some_length_that_is_wrong_and_the_same_is_enough():
    [alike] = class_with((3, 17), {(place, QUALITY): LONG for place in (3, 17)})
    assert [on.exercise for on in alike.exercises] == [QUALITY]


def asked(*arguments, **named):
    return arguments, named


HONEST = {
    "one short wrong answer": asked((3, 17), of_pair(SHORT, (RESONANCE,))),
    "the same right answers": asked((), of_pair(SHORT, COMPARED)),
    "usual slips in the same words": asked((3, 17), of_pair(SHORT, COMPARED), usual=True),
    "usual slips in other words": asked(
        (3, 17), of_pair(SHORT, COMPARED, (3,)) | of_pair(OTHER_WORDS, COMPARED, (17,)), usual=True
    ),
    "two that are wrong in other words": asked(
        (3, 17), of_pair(SHORT, (RESONANCE, QUALITY), (3,)) | of_pair(OTHER_WORDS, (RESONANCE, QUALITY), (17,))
    ),
    "what five in the class have": asked(range(5), of_pair(SHORT, COMPARED, range(5))),
    "nought": asked((3, 17), of_pair(SHORT, COMPARED), got="0 Hz"),
    "one": asked((3, 17), of_pair(SHORT, COMPARED), got="(1.0, 0)"),
    "nothing": asked((3, 17), of_pair(SHORT, COMPARED), got="None"),
    "an input handed back": asked((3, 17), of_pair(SHORT, COMPARED), got="100 µH"),
    "a placeholder": asked((3, 17), {(place, path): "    return 42\n" for place in (3, 17) for path in COMPARED}),
}


@pytest.mark.parametrize("what", HONEST)
def test_nobody_is_listed_for(what):
    arguments, named = HONEST[what]
    assert class_with(*arguments, **named) == []


def test_pairs_that_are_wrong_alike_come_first():
    long_own = "".join(f"    step{n} = frequency * {n} - resistance / ({n} + inductance)\n" for n in range(9))
    bodies = of_pair(SHORT, (RESONANCE, SOLENOID)) | {(place, QUALITY): long_own for place in (5, 9)}
    assert [one.members for one in class_with((3, 17), bodies)] == [("member 3", "member 17"), ("member 5", "member 9")]


@pytest.mark.parametrize("chance", range(5))
def test_a_class_whose_members_each_make_the_usual_slips_in_their_own_spelling_accuses_nobody(chance):
    """Thirty who work alone; one answer in five is the exercise's usual slip, in one of four natural spellings. Seventy exercises."""
    draw, weights = random.Random(chance), Counter()
    for exercise in range(70):
        wrong = {
            member: (WrongAnswer("f", INPUTS, f"{exercise} Hz", usual=True),) for member in range(30) if draw.random() < 0.2
        }
        own = {member: [[(draw.choice("abcd"), 1)] * 12] for member in wrong}
        weights.update({pair: same.weight for pair, same in same_wrong(wrong, own, 4)})
    assert weights and max(weights.values()) < ENOUGH


def test_what_is_wrong_is_taken_from_the_verdict():
    slip = Finding(WRONG, "f", inputs=INPUTS, got="2 Hz", wanted="1 Hz", slip="forgotten to halve it")
    law = Finding(WRONG, "f", "Four times the capacitance halves the frequency.")
    raised = Finding("raised", "g", "It raised ValueError.")
    assert wrong_answers(Verdict(RESONANCE, WRONG, 10, (), (slip, law, raised))) == (WrongAnswer("f", INPUTS, "2 Hz", True),)


def test_pairs_are_kept_and_those_of_before_are_read():
    [alike] = class_with((3, 17), of_pair(SHORT, (RESONANCE, QUALITY)))
    data = json.loads(json.dumps(alike_to_data(alike)))
    assert alike_from_data(data) == alike
    for exercise in data["exercises"]:
        del exercise["wrong"], exercise["wrong_by"]
    assert isinstance(before := alike_from_data(data), Alike) and before.wrong_on == 0


def test_the_page_says_what_both_gave_and_shows_both(tmp_path):
    found = class_with((3, 17), of_pair(SHORT, (RESONANCE, QUALITY)))
    write_reports([], [RESONANCE, QUALITY], tmp_path, date(2026, 12, 1), found)
    page = html.fromstring((tmp_path / "alike.html").read_text("utf-8"))
    said = " ".join(page.text_content().split())
    assert "Wrong in the same way, for the same inputs: quality_factor gave 1.234 kHz. Only these two gave this." in said
    assert "words and signs, of" not in said and len(page.findall(".//figure")) == 4
