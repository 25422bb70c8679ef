"""A child sees neither the names nor the sizes of what is not the system's or Python's, where there are namespaces."""

import os

import numpy
import pytest

from checker.course import ROOT
from checker.sandbox.workers import WarmWorker
from checker.worker.contain import probe
from tests.checker.corpus import HONEST, PATH

pytestmark = pytest.mark.skipif(not probe().scratch, reason="this system lets nobody have a view of the disk of their own")
LOOKS = """import random
os = random.__builtins__["__import__"]("os")


def resonant_frequency(paths, capacitance):
    found = []
    for path in paths:
        try:
            found.append(float(os.stat(path).st_size))
        except FileNotFoundError:
            found.append(-1.0)
        except OSError as error:
            found.append(-float(error.errno))
    return found
"""


def seen(paths, source=LOOKS):
    with WarmWorker() as worker, worker.session(PATH.removesuffix(".py"), {PATH: source}, 5.0) as session:
        [reply] = session.ask(
            [{"function": "resonant_frequency", "arguments": [{"sequence": [str(path) for path in paths]}, 1.0]}]
        )
    return dict(zip(map(str, paths), reply["value"], strict=True))


def test_names_and_sizes_of_members_files_and_of_the_store_are_hidden(tmp_path):
    secret = tmp_path / "marks.sqlite"
    secret.write_text("x" * 1234)
    hidden = [secret, tmp_path, ROOT / "solutions", ROOT / "checker", ROOT / "README.md", os.path.expanduser("~/.bashrc")]
    assert set(seen(hidden).values()) == {-1.0}


def test_what_python_needs_is_seen():
    assert min(seen([numpy.__file__, os.__file__, "/etc/passwd"]).values()) > 0


def test_libraries_still_load_what_they_have_not_yet():
    source = "import numpy as np\nimport numpy.polynomial.hermite\nimport statistics\nimport sympy.physics.units\n" + (
        "def resonant_frequency(a, b):\n    return [float(np.random.default_rng(1).random())]\n"
    )
    assert 0 < next(iter(seen(["x"], source).values())) < 1


def test_nothing_of_it_is_seen_outside(tmp_path):
    before = open("/proc/self/mounts").read()
    with WarmWorker() as worker, worker.session(PATH.removesuffix(".py"), {PATH: HONEST}, 5.0):
        assert open("/proc/self/mounts").read() == before
        assert (ROOT / "README.md").is_file()
