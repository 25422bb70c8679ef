"""What several tests of the checker share."""

from pathlib import Path

import pytest
from hypothesis import settings

from tests.checker import sample

# How busy the machine is says nothing about the code.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


@pytest.fixture(autouse=True, scope="session")
def own_cache(tmp_path_factory):
    """What is kept for a user is kept for the tests alone."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture
def first_form():
    """A store as the first release wrote it, as SQL text. Never written anew: it stands for stores that are in use."""
    return (Path(__file__).parent / "stores" / "form1.sql").read_text("utf-8")


@pytest.fixture(scope="session")
def sample_class():
    """A class of ten, marked once for all tests that ask."""
    return sample.marked()
