"""What the tests of the exercises share."""

import pytest

from checker.course import PATHS
from checker.sandbox.workers import start_worker


@pytest.fixture(scope="session")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture(params=PATHS, ids=lambda path: path.rpartition("/")[2])
def path(request):
    return request.param
