"""No reader of what strangers wrote raises what it does not promise. `by_coverage.py` tries a million inputs; this, a few."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.readers import READERS, SEEDS


def near(seed):
    """A seed with a piece of it replaced."""
    cuts = st.tuples(st.integers(0, len(seed)), st.integers(0, 12), st.binary(max_size=12))
    return cuts.map(lambda cut: seed[: cut[0]] + cut[2] + seed[cut[0] + cut[1] :])


@settings(max_examples=60, deadline=None)
@pytest.mark.parametrize("name", READERS)
@given(data=st.data())
def test_reader(name, data):
    READERS[name](data.draw(st.binary(max_size=200) | st.one_of(*map(near, SEEDS.get(name, [b"x"])))))
