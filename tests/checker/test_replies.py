"""Whatever comes over the line is a reply whose every field is what it should be, or `Malformed`; the judge lives on."""

import base64
import json

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from checker.budgets import BUDGET
from checker.judging.judge import judge
from checker.judging.verdict import NOT_JUDGED, PASSED, to_data
from checker.sandbox.replies import FIELDS, read_reply
from checker.text import clean
from checker.worker import wire
from checker.worker.wire import Expression, Malformed, Unusable
from tests.checker.corpus import OBEYED, PATH

ZERO = base64.b64encode(bytes(8)).decode()


def array(**changed):
    return {"value": {"array": {"dtype": "f8", "shape": [1], "data": ZERO} | changed}}


NAMED = {
    "dtype a list": array(dtype=[]),
    "dtype a dict": array(dtype={}),
    "dtype null": array(dtype=None),
    "dtype unknown": array(dtype="O"),
    "a huge axis beside an empty one": array(shape=[2**70, 0], data=""),
    "a huge axis": array(shape=[2**70]),
    "an axis that is a float": array(shape=[1.0]),
    "an axis that is true": array(shape=[True]),
    "an axis that is nan": array(shape=[float("nan")]),
    "a shape that is a number": array(shape=1),
    "many axes": array(shape=[1] * 65),
    "data that is bytes of nothing": array(data=""),
    "data that is no text": array(data=[0]),
    "data that is not base64": array(data="ß"),
    "truth values of 255": array(dtype="b1", data=base64.b64encode(b"\xff").decode()),
    "an array within": {"value": {"array": [1, 2]}},
    "a field too many": array(more=1),
    "complex of whole numbers": {"value": {"complex": [1, 2]}},
    "complex of texts": {"value": {"complex": ["1", "2"]}},
    "nested deep": {"value": json.loads('{"sequence":[' * 40 + "1" + "]}" * 40)},
    "an unknown tag": {"value": {"pickle": "gASV"}},
    "two tags": {"value": {"unusable": "x", "oversize": "y"}},
    "a bare list": {"value": [1, 2]},
    "a whole number of 2,000 bits": {"value": 1 << 2000},
    "a text too long": {"value": "x" * (wire.MAX_TEXT + 1)},
    "an expression without values": {"value": {"expression": "x"}},
    "an expression of numbers": {"value": {"expression": 1, "at": []}},
    "an expression of too many values": {"value": {"expression": "x", "at": [1.0] * 5000}},
    "neither": {"printed": "x"},
    "both": {"value": 1, "trouble": "raised"},
    "a field of no reply": {"value": 1, "verdict": "passed"},
    "a line that is nan": {"trouble": "raised", "line": float("nan")},
    "a line that is true": {"trouble": "raised", "line": True},
    "a line of 2⁷⁰": {"trouble": "raised", "line": 2**70},
    "a negative line": {"trouble": "raised", "line": -1},
    "names that are no texts": {"trouble": "no function", "names": [1]},
    "a trouble that is a list": {"trouble": []},
    "altered that is a dict": {"value": 1.0, "altered": {}},
    "altered places that are texts": {"value": 1.0, "altered": ["x"]},
    "altered places that are nan": {"value": 1.0, "altered": [float("nan")]},
    "altered in many places": {"value": 1.0, "altered": [0] * 5000},
    "an error that is null": {"trouble": "raised", "error": None},
    "printed that is a list": {"value": 1.0, "printed": ["x"]},
}


@pytest.mark.parametrize("name", NAMED)
def test_what_no_one_expects_is_malformed(name):
    with pytest.raises(Malformed):
        read_reply(json.dumps(NAMED[name]).encode())


@pytest.mark.parametrize(
    "raw", [b"", b"null", b"[]", b"\xff", b"{" * 100_000, b"1" * 5000, b'{"value": 1' + b"0" * 5000 + b"}"]
)
def test_what_is_no_message_is_malformed(raw):
    with pytest.raises(Malformed):
        read_reply(raw)


texts = st.text(max_size=12) | st.sampled_from(["\x1b[31m", "\u202e", "\ud800", "x" * 20_000, "\x00", "é" * 300])
leaves = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.integers(-(2**80), 2**1100)
    | st.floats()
    | texts
    | st.sampled_from(["f8", "b1", "c16", ZERO])
)
KEYS = ["complex", "sequence", "array", "expression", "at", "unusable", "oversize", "dtype", "shape", "data"]
anything = st.recursive(
    leaves,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(KEYS) | texts, inner, max_size=4),
    max_leaves=12,
)
arrays = st.fixed_dictionaries({"dtype": anything, "shape": anything, "data": anything}, optional={"x": leaves})
values = (
    anything | st.fixed_dictionaries({"array": arrays}) | st.fixed_dictionaries({"sequence": st.lists(anything, max_size=3)})
)
messages = st.dictionaries(st.sampled_from(sorted(FIELDS)) | texts, values, max_size=5) | st.fixed_dictionaries(
    {"value": values}, optional={"altered": values, "printed": values}
)


def checked(value):
    """Whether a decoded value is of the kinds that the judge knows, all of its texts clean."""
    if isinstance(value, list):
        return all(map(checked, value))
    if isinstance(value, Expression):
        return checked(value.text) and checked(value.at)
    if isinstance(value, Unusable):
        return checked(value.what)
    if isinstance(value, np.ndarray):
        return value.size <= wire.MAX_ELEMENTS and value.dtype in wire.DTYPES.values()
    if isinstance(value, str):
        return not OBEYED.search(value)
    return value is None or type(value) in (bool, int, float, complex)


@settings(max_examples=500)
@example({"value": {"array": {"dtype": [], "shape": [2**70], "data": ""}}})
@given(messages)
def test_any_message_is_a_clean_reply_or_malformed(message):
    try:
        reply = read_reply(json.dumps(message).encode())
    except Malformed:
        return
    assert set(reply) <= set(FIELDS) and ("value" in reply) != ("trouble" in reply)
    assert all(checked(value) for value in reply.values())


class Scripted:
    """A worker whose child answers every call with the same bytes, read as the session reads them."""

    ended = signal = None

    def __init__(self, raw):
        self.raw = raw

    def session(self, *asked):
        return self

    def __enter__(self):
        return self

    def __exit__(self, *exception):
        pass

    def ask(self, calls):
        return [read_reply(self.raw)] * len(calls)


@settings(max_examples=120)
@given(messages)
@pytest.mark.parametrize("path", [PATH.removesuffix(".py"), "unit03_tuned_circuit/tuning_range"])
def test_any_reply_comes_to_a_verdict_without_a_fault_of_ours(path, message):
    try:
        read_reply(json.dumps(message).encode())
    except Malformed:
        return
    verdict = judge(path, {f"{path}.py": "x"}, Scripted(json.dumps(message).encode()), 3)
    assert verdict.kind not in (PASSED, NOT_JUDGED), verdict.findings
    assert len(repr(to_data(verdict))) < 30_000


def test_the_child_s_own_limits_lie_within_the_judge_s():
    assert BUDGET.reply >= wire.MAX_REPLY and BUDGET.replies > wire.MAX_REPLIES


@given(texts, st.integers(1, 50), st.booleans())
def test_a_clean_text_shows_all_that_it_has(text, longest, lines):
    shown = clean(text, longest, lines)
    assert len(shown) <= longest + 1
    assert not OBEYED.search(shown) and (lines or "\n" not in shown)
    shown.encode("utf-8")
    assert clean(shown, longest + 1, lines) == shown


def test_marks_do_not_pile_up_on_a_letter():
    assert clean("a" + "\u0301" * 50) == "a" + "\u0301" * 3
    assert clean("Thị Ngọc, Çağla, हिन्दी") == "Thị Ngọc, Çağla, हिन्दी"
