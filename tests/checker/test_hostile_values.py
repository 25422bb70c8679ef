"""What a child sends may be forged: whatever it is, the judge comes to a verdict, in reasonable words and time."""

import time

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from checker.checks.exercise import absolute, relative
from checker.judging.compare import Difference, difference
from checker.judging.fingerprint import files_used
from checker.judging.judge import judge
from checker.judging.verdict import KINDS, PASSED, to_data
from checker.sandbox.replies import read_reply
from checker.worker.wire import Expression, Malformed, Unusable, line, to_wire

PATH = "unit03_tuned_circuit/resonance.py"
scalars = (
    st.none() | st.booleans() | st.integers(-(2**1023), 2**1023) | st.floats() | st.text(max_size=5) | st.complex_numbers()
)
arrays = hnp.arrays(st.sampled_from(["f8", "f4", "i8", "c16", "b1"]), hnp.array_shapes(min_dims=0, max_side=3))
whole = (
    scalars
    | arrays
    | st.builds(Expression, st.text(max_size=4), st.lists(scalars | arrays, max_size=3))
    | st.builds(Unusable, st.text(max_size=4), st.booleans())
)
answers = st.recursive(whole, lambda inner: st.lists(inner, max_size=4), max_leaves=8)
finite = st.floats(allow_nan=False)
references = (
    finite
    | st.complex_numbers(allow_nan=False)
    | st.booleans()
    | st.text(max_size=3)
    | arrays
    | st.builds(Expression, st.just("x"), st.lists(st.complex_numbers(), max_size=3))
    | st.lists(finite | st.text(max_size=2) | arrays, max_size=3).map(tuple)
)


TOLERANCES = relative(1e-9, because=""), absolute(1e-3, because="")


@settings(max_examples=400)
@given(answers, references, st.sampled_from(TOLERANCES), st.sampled_from(["", "Hz", "dB"]))
def test_any_answer_compares_with_any_that_is_wanted(got, wanted, tolerance, unit):
    assert isinstance(difference(got, wanted, tolerance, unit), Difference | None)


def test_answers_that_were_once_too_much_for_the_comparison():
    exact = relative(1e-9, because="")
    assert difference([2 + 1j, 2**500], np.array([1.0, 2.0]), exact).says
    assert difference(Expression("x", ["x"]), Expression("x", [1j]), exact).says


class Scripted:
    """A worker whose child answers every call with the same forged line."""

    ended = signal = None

    def __init__(self, reply):
        self.reply = reply

    def session(self, *asked):
        return self

    def __enter__(self):
        return self

    def __exit__(self, *exception):
        pass

    def ask(self, calls):
        return [read_reply(line(self.reply))] * len(calls)


texts = st.text(max_size=20) | st.sampled_from(["raised", "refused", "no function", "signature", "time", "x" * 100_000])
odd = st.none() | st.booleans() | st.integers() | texts | st.lists(st.integers() | st.text(max_size=3), max_size=3)
forged = st.fixed_dictionaries(
    {"trouble": texts},
    optional={
        "what": texts,
        "error": texts,
        "text": texts,
        "file": texts | st.none(),
        "line": st.none() | st.integers(),
        "names": st.lists(odd, max_size=3),
        "printed": texts,
    },
) | st.fixed_dictionaries({"value": answers.map(to_wire)}, optional={"altered": st.lists(odd, max_size=3), "printed": texts})


@settings(max_examples=100)
@given(forged)
@pytest.mark.parametrize("exercise", ["resonance", "prefixes", "solenoid_inductance"])
def test_any_reply_comes_to_a_verdict_of_a_reasonable_length(exercise, reply):
    path = {
        "resonance": PATH,
        "prefixes": "unit00_bench/prefixes.py",
        "solenoid_inductance": "unit02_coil_and_condenser/solenoid_inductance.py",
    }[exercise]
    try:
        verdict = judge(exercise, {path: "x"}, Scripted(reply), 3)
    except Malformed:
        return  # told from an answer before it came to the judge
    assert verdict.kind in set(KINDS) - {PASSED}
    assert len(repr(to_data(verdict))) < 30_000


def test_a_file_that_is_all_blanks_does_not_keep_the_reader_of_imports_busy():
    began = time.process_time()
    for text in ("from" + " " * 250_000, "from\\ " * 80_000, "from" * 60_000):
        files_used("a.py", {"a.py": text, "b.py": ""})
    assert time.process_time() - began < 5
