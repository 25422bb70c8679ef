"""Every sentence that the checker says, read for its form: of code that gave no answer, or not the one wanted, at its worst inputs;
and what the commands say around it, as their sources have it.

All of them can be printed and read: `python -m tests.checker.test_sentences`.
"""

import ast
import re
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from checker.checks.exercise import Exercise, Question, exactly, invariant, refusal
from checker.judging import explanations
from checker.judging.compare import difference
from checker.judging.judge import _finding
from checker.judging.plan import Case
from checker.judging.verdict import PASSED, Lent, Verdict
from checker.worker.denials import WORDS
from checker.worker.wire import ANSWER_ITSELF, Expression, Unusable
from tests.checker import said_by_commands

# What Python, or a stranger, says of an error: nothing, a question, a sentence, a list without an end.
TEXTS = ("", "name 'x' is not defined", "invalid syntax. Perhaps you forgot a comma?", "it ends.", "wait: ", "a!")
WHATS = ("", "pdb", *WORDS)
LAW = invariant("four times the capacitance halves the frequency", lambda: None)


def band_edges(low, high, middle):
    raise NotImplementedError


QUESTION = Question(band_edges, dict.fromkeys(("low", "high", "middle")), exactly("test"), no_published="test")
EXERCISE = Exercise("Where does it tune?", [QUESTION], ["", "", ""], seconds=1.0)
CASE = Case((), 0, 1.0, (("low", "1 kHz"),))
VALUES = (
    None,
    True,
    "5 MHz",
    1j,
    np.nan,
    -np.inf,
    10**307,
    [],
    [1.0],
    [1.0, "a"],
    [[1.0], [1.0, 2.0]],
    [None, 1.0],
    np.zeros(0),
    np.zeros((2, 3)),
    np.array([np.nan, 1.0]),
    np.array([1j, 1.0]),
    Expression("x*y", [None]),
    Expression("x", [2.0]),
    Unusable("list nested too deep"),
    Unusable("a sympy expression"),
    Unusable("array of Python objects"),
    Unusable("generator"),
    Unusable("Equality"),
    Unusable("more than 8 MB in all", oversize=True),
    Unusable("text of 12,000 characters", oversize=True),
    Unusable("a whole number of 1,500 bits", oversize=True),
)
WANTED = (1.0, True, "up", (1.0,), (1.0, 2.0), np.ones(2), Expression("x", [1.0]), ("up", 1.0))


def sentences():
    """Every sentence, each once."""
    said = []
    for trouble in ("signature", "no function", "not written", "not lent", *explanations._TROUBLES):
        for what in WHATS:
            for text in TEXTS:
                reply = {"trouble": trouble, "what": what, "text": text, "error": "ValueError", "names": ["band_edge"]}
                said.append(explanations.trouble_finding(QUESTION, CASE, reply, EXERCISE).says)
                said.append(
                    explanations.trouble_finding(QUESTION, None, {"trouble": trouble}, replace(EXERCISE, seconds=0.5)).says
                )
    for places in ([0], [0, 1], [0, 1, 2], [ANSWER_ITSELF], [9]):
        said.append(explanations.altered_sentence(QUESTION, places))
    for reply in ({"value": 1}, {"trouble": "raised", "error": "TypeError"}, {"trouble": "time", "error": "Stop"}):
        said.append(explanations.not_refused_sentence(QUESTION, refusal("a coil of no turns", ()), reply))
    said += [
        explanations.NO_FILE,
        explanations.FORGED,
        explanations.measured_sentence(["pull", "gain"]),
        explanations.law_broken_sentence(LAW),
        explanations.law_not_tried_sentence(LAW, "bandwidth"),
    ]
    for own in ("", *explanations._OWN):
        for names in (("drive",), ("drive", "anode_resistance"), ("triode_current",), ("",)):
            lent = tuple(Lent("unit05_valve/triode_current", name, own) for name in names)
            said += [
                line for kind in (PASSED, "wrong") for line in explanations.lent_sentences(Verdict("x", kind, 10, lent=lent))
            ]
    for file, name in (("unit05_valve/triode_current.py", "drive"), ("unit05_valve/triode_current.py", ""), ("", "other")):
        reply = {"trouble": "not written", "file": file, "what": name}
        said.append(explanations.trouble_finding(QUESTION, None, reply, EXERCISE).says)
    for why in ("slow", "died", "malformed"):
        for number in (None, *range(1, 32)):
            session = SimpleNamespace(ended=SimpleNamespace(why=why), signal=number)
            said.append(explanations.end_finding(EXERCISE, session).says)
    for wanted in WANTED:
        for got in (*VALUES, *([value] * 2 for value in VALUES)):
            apart = difference(got, wanted, exactly("test"))
            if apart and apart.says:
                said.append(_finding(QUESTION, CASE, apart, "", "").says)
    return list(dict.fromkeys(said))


@pytest.mark.parametrize("sentence", sentences())
def test_a_sentence_is_one(sentence):
    assert re.search(r"[.?!]$", sentence), sentence
    assert not re.search(r"[.?!:,;][.,;:!]|  | [.,;:?!]|\b1 \w+s\b|\bNone,|\{|Stop\b|\(\)$", sentence), sentence
    assert not re.search(r"\b(values|arrays|items) (was|is|changes)\b|\b(value|number|array) were\b", sentence), sentence
    assert ("imported?" in sentence) == ("is not defined" in sentence and "outside its own" not in sentence), sentence
    subject, _, rest = sentence.partition(" ")
    if subject == "band_edges":
        assert re.match(r"(returned|takes|stopped|is|should|changes|hands|had|cannot)\b", rest), sentence
    else:
        assert sentence[0].isupper(), sentence


OF_COMMANDS = said_by_commands.said()


def test_each_open_place_in_a_command_s_text_has_an_example_and_none_is_left_over():
    open_places = {ast.unparse(place) for _, text in said_by_commands.texts() for place in said_by_commands.open_places(text)}
    assert open_places == set(said_by_commands.EXAMPLES)


@pytest.mark.parametrize("command", ["amend", "hear", "hint", "mark", "pack", "read", "restore", "see", "sheet", "try_"])
def test_each_command_is_heard(command):
    assert f"cli/{command}.py" in OF_COMMANDS.values()


@pytest.mark.parametrize("said", OF_COMMANDS)
def test_what_a_command_says_is_well_formed(said):
    said_of = OF_COMMANDS[said]
    said = re.sub(r"\{(name|nmae|number|family|given|any)\}", r"\1", said)  # of a pattern for names
    assert not re.search(r"[?!:,;][.,;:!]|(?<!\.)\.[.,;:!]|\w  \w|\w [,;?!]|\b1 (?!of\b)\w+s\b|\bNone\b(?! of)|[{}]", said), (
        said
    )
    assert not re.search(r"\b1 [\w' ]*\b(are|were|have)\b|\b[02-9] of [\w' ]*\b(is|was|has)\b", said), said
    if not said_of.startswith("cli/"):
        assert re.search(r"[.?]$", said), said


if __name__ == "__main__":
    print("\n".join([*sentences(), *OF_COMMANDS]))
