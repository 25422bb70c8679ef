"""What crosses between judge and worker arrives as it was sent, and nothing else gets through."""

import contextlib
import json

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from checker.sandbox.replies import read_reply
from checker.worker.wire import MAX_ELEMENTS, MAX_LINE, Malformed, Unusable, from_wire, line, parse_line, to_wire

scalars = st.none() | st.booleans() | st.integers(-(2**1000), 2**1000) | st.floats() | st.text(max_size=50)
values = st.recursive(scalars | st.complex_numbers(), lambda inner: st.lists(inner, max_size=4), max_leaves=10)
arrays = hnp.arrays(st.sampled_from(["f8", "f4", "i8", "c16", "b1"]), hnp.array_shapes(min_dims=0, max_side=4))
json_data = st.recursive(
    scalars, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4)
)


@given(values)
def test_values_survive_the_crossing(value):
    assert repr(from_wire(parse_line(line({"v": to_wire(value)}))["v"])) == repr(value)


@given(arrays)
def test_arrays_survive_the_crossing(array):
    back = from_wire(parse_line(line({"v": to_wire(array)}))["v"])
    assert back.dtype == array.dtype and back.shape == array.shape
    np.testing.assert_array_equal(back, array)


@given(json_data)
def test_any_json_is_a_value_or_malformed(data):
    with contextlib.suppress(Malformed):
        from_wire(data)


@given(st.binary(max_size=200) | json_data.map(lambda data: json.dumps(data).encode()))
def test_any_bytes_are_a_reply_or_malformed(raw):
    with contextlib.suppress(Malformed):
        read_reply(raw)


@pytest.mark.parametrize("raw", [b"[" * 100_000, b"1" * 5000, b'{"v": NaN', b"\xff\xfe{}", b"x" * (MAX_LINE + 1)])
def test_hostile_lines_are_malformed(raw):
    with pytest.raises(Malformed):
        parse_line(raw)


@pytest.mark.parametrize(
    "data",
    [
        {"array": {"dtype": "f8", "shape": [10**9], "data": ""}},
        {"array": {"dtype": "O", "shape": [1], "data": "AAAAAAAAAAA="}},
        {"array": {"dtype": "f8", "shape": [2], "data": "AAAAAAAAAAA="}},
        {"array": {"dtype": "f8", "shape": [-1], "data": ""}},
        {"array": {"dtype": "f8", "shape": [1], "data": 7}},
        {"complex": [1, 2]},
        {"complex": [1.0]},
        {"unusable": 3},
        {"a": 1, "b": 2},
        {"pickle": "gASVAAAA"},
        10**400,
    ],
)
def test_hostile_values_are_malformed(data):
    with pytest.raises(Malformed):
        from_wire(data)


def test_too_much_is_named_and_not_sent():
    assert to_wire(np.broadcast_to(0.0, (10**9,))) == {"oversize": "an array of 1,000,000,000 numbers, shape (1000000000,)"}
    assert "oversize" in to_wire([0] * (MAX_ELEMENTS + 1))
    assert "oversize" in to_wire("x" * 20_000)
    assert "oversize" in to_wire(1 << 2000)


def test_a_surprising_class_is_never_asked_to_describe_itself():
    class Surprise(float):
        def __repr__(self):
            raise AssertionError("asked")

        __eq__ = __float__ = __reduce__ = __repr__

    assert to_wire(Surprise(1.0)) == {"unusable": "Surprise"}
    assert isinstance(from_wire({"unusable": "Surprise"}), Unusable)
