"""What several tests of the checker share."""

from pathlib import Path

import pytest
from hypothesis import settings

from tests.checker import sample

# How busy the machine is says nothing about the code.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


@pytest.fixture
def first_form():
    """A store as the first release wrote it, as SQL text. Never written anew: it stands for stores that are in use."""
    return (Path(__file__).parent / "stores" / "form1.sql").read_text("utf-8")


@pytest.fixture(scope="session")
def sample_class():
    """A class of ten, marked once for all tests that ask."""
    return sample.marked()
